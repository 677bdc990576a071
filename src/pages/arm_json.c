/* The arm's reactions as one JSON object: keys, order and units are those of
 * refdata/result.schema.json (reactions). */
#include "arm_parts.h"
#include "json_parts.h"
#include "pages.h"
#include <stdio.h>

static double shown(double value, enum dimension dimension)
{
	return value / quantity_display_unit(dimension, UNITS_METRIC)->factor;
}

static void three(struct json *json, const char *key, const double values[3],
                  enum dimension dimension)
{
	json_key(json, key);
	json_open(json, '[');
	for (int i = 0; i < 3; i++)
		json_number(json, shown(values[i], dimension));
	json_close(json, ']');
}

static void joint_object(struct json *json, const struct cell *cell,
                         const struct arm_extreme *extreme, size_t joint)
{
	const struct reaction_at *at = extreme->at;
	const struct chain_joint *rows = cell->arm.chain.joints.rows;
	bool known = joint < cell->arm.chain.joints.count, slides = arm_joint_slides(cell, joint);
	json_open(json, '{');
	json_key_text(json, "name", known && is_known(rows[joint].name) && *rows[joint].name.value
	                                    ? rows[joint].name.value
	                                    : NULL);
	json_key_text(json, "unit", slides ? "mm" : "deg");
	json_key_number(json, "position", true, arm_joint_shown(at->q[joint], slides));
	json_key_number(json, "speed", true, arm_joint_shown(at->speed[joint], slides));
	json_key_number(json, "acceleration", true,
	                arm_joint_shown(at->acceleration[joint], slides));
	json_key_number(json, "gives", true, extreme->torque[joint]);
	json_close(json, '}');
}

static void joints_member(struct json *json, const struct cell *cell,
                          const struct arm_source *source, const struct arm_extreme *extreme)
{
	json_key(json, "joints");
	if (!extreme->at) {
		json_null(json);
		return;
	}
	json_open(json, '[');
	for (size_t i = 0; i < source->joints; i++)
		joint_object(json, cell, extreme, i);
	json_close(json, ']');
}

/* The wrench of that instant; null where the maxima are separate ones. */
static void wrench_members(struct json *json, const struct arm_source *source,
                           const struct arm_load *load)
{
	json_key(json, "wrench");
	if (!arm_has_companions(source)) {
		json_null(json);
		return;
	}
	json_open(json, '{');
	three(json, "force_kN", load->force, DIM_FORCE);
	three(json, "moment_kNm", load->moment, DIM_MOMENT);
	json_key_number(json, "turn_from_deg", true, shown(load->spin_from, DIM_ANGLE));
	json_key_number(json, "turn_to_deg", true, shown(load->spin_to, DIM_ANGLE));
	json_close(json, '}');
}

static void kind_object(struct json *json, const struct cell *cell, const struct arm_source *source,
                        enum reaction_kind kind)
{
	const struct arm_extreme *extreme = &source->extreme[kind];
	enum dimension dimension = arm_kind_dimension(kind);
	json_open(json, '{');
	json_key_text(json, "kind", arm_kind_word(kind));
	json_key_text(json, "unit", dimension == DIM_MOMENT ? "kN m" : "kN");
	json_key_number(json, "largest", true, shown(extreme->value, dimension));
	json_key_number(json, "bound", arm_has_bound(extreme), shown(extreme->bound, dimension));
	wrench_members(json, source, &extreme->load);
	json_key(json, "empty_gripper");
	if (extreme->at)
		json_bool(json, extreme->empty_gripper);
	else
		json_null(json);
	joints_member(json, cell, source, extreme);
	json_key_number(json, "row", extreme->row > 0, extreme->row);
	json_key_number(json, "time_s", extreme->row > 0, extreme->time);
	json_close(json, '}');
}

static void source_object(struct json *json, const struct cell *cell,
                          const struct arm_source *source)
{
	json_open(json, '{');
	json_key_text(json, "case", arm_case_word(source->arm_case));
	json_key_text(json, "way", arm_way_word(source->way));
	json_key_text(json, "name", source->name);
	json_key(json, "estimate");
	json_bool(json, arm_is_estimate(source->way));
	json_key_text(json, "file", source->file ? source->file->name : NULL);
	json_key_number(json, "poses", source->poses > 0, (double)source->poses);
	json_key_number(json, "rows", source->way == WAY_HISTORY, source->summary.rows);
	json_key(json, "kinds");
	json_open(json, '[');
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		kind_object(json, cell, source, (enum reaction_kind)kind);
	json_close(json, ']');
	json_close(json, '}');
}

/* --- data sheet, and the block for a cell file --- */

static void value_member(struct json *json, int value, bool known, double number)
{
	char key[32];
	enum dimension dimension = arm_paste_dimension(value);
	snprintf(key, sizeof key, "%s_%s", arm_paste_key(value),
	         dimension == DIM_MOMENT ? "kNm" : "kN");
	json_key_number(json, key, known, shown(number, dimension));
}

static void sheet_member(struct json *json, const struct cell *cell)
{
	json_key(json, "data_sheet");
	json_open(json, '[');
	for (int c = ARM_EMERGENCY_STOP; c > ARM_REST; c--) {
		const struct reaction *sheet = &cell->arm.reaction[c];
		const struct number *const values[] = {&sheet->vertical, &sheet->horizontal,
		                                       &sheet->tilting, &sheet->twisting};
		if (!arm_sheet_known(cell, (enum arm_case)c))
			continue;
		json_open(json, '{');
		json_key_text(json, "case", arm_case_word((enum arm_case)c));
		for (int i = 0; i < PASTE_VALUES; i++)
			value_member(json, i, is_known(*values[i]), values[i]->value);
		json_close(json, '}');
	}
	json_close(json, ']');
}

static void paste_object(struct json *json, const struct arm_paste *paste, enum arm_way way,
                         enum arm_case arm_case)
{
	const struct arm_paste_case *from = &paste->of[arm_case];
	bool bound = !paste->peak_open;
	for (int i = 0; i < PASTE_VALUES; i++)
		bound = bound && from->value[i].bound;
	json_open(json, '{');
	json_key_text(json, "case", arm_case_word(arm_case));
	json_key_text(json, "way", arm_way_word(way));
	json_key(json, "guaranteed");
	json_bool(json, bound);
	for (int i = 0; i < PASTE_VALUES; i++)
		value_member(json, i, from->value[i].known, from->value[i].value);
	json_close(json, '}');
}

static void paste_member(struct json *json, const struct cell *cell, const struct arm_loads *loads)
{
	json_key(json, "reactions");
	json_open(json, '[');
	for (int way = WAY_CHAIN; way <= WAY_HISTORY; way++) {
		struct arm_paste paste;
		arm_paste(cell, loads, (enum arm_way)way, &paste);
		for (int c = ARM_EMERGENCY_STOP; c > ARM_REST; c--)
			if (paste.of[c].known)
				paste_object(json, &paste, (enum arm_way)way, (enum arm_case)c);
	}
	json_close(json, ']');
}

/* --- setups --- */

/* An arm_gap: user is the open list. */
static void gap_text(void *user, const char *path)
{
	json_text(user, path);
}

static void setup_object(struct json *json, const struct result *result, size_t s)
{
	const struct cell *cell = setup_cell(result->cell, s);
	const struct arm_loads *loads = result->arm[s];
	bool named = s < result->cell->setups.count, weighs = loads && loads->weight > 0;
	json_open(json, '{');
	json_key_text(json, "setup", named ? setup_name(result->cell, s) : NULL);
	json_key_number(json, "arm_weight_kN", weighs,
	                weighs ? shown(loads->weight, DIM_FORCE) : 0);
	json_key(json, "sources");
	json_open(json, '[');
	for (size_t i = 0; loads && i < loads->count; i++)
		source_object(json, cell, &loads->list[i]);
	json_close(json, ']');
	sheet_member(json, cell);
	paste_member(json, cell, loads);
	json_key(json, "left_out");
	json_open(json, '[');
	arm_gaps(cell, gap_text, json);
	json_close(json, ']');
	json_close(json, '}');
}

bool page_arm_json(const struct result *result, write_function *write, void *user)
{
	struct writer writer;
	struct sentences cautions;
	writer_open(&writer, write, user, false);
	struct json json = {&writer, true};
	json_open(&json, '{');
	json_key_text(&json, "standfast", release_version());
	json_input_member(&json, result);
	json_key(&json, "setups");
	json_open(&json, '[');
	for (size_t s = 0; s < setup_count(result->cell); s++)
		setup_object(&json, result, s);
	json_close(&json, ']');
	json_key(&json, "cautions");
	json_open(&json, '[');
	arm_cautions(result, &cautions);
	for (size_t i = 0; i < cautions.count; i++)
		json_text(&json, cautions.list[i]);
	json_close(&json, ']');
	json_close(&json, '}');
	writer_newline(&writer);
	return writer_close(&writer);
}
