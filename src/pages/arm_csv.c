/* The arm's reactions for a spreadsheet: one row a setup, source and kind. Decimal points, commas,
 * quotes where a text needs them (RFC 4180), lines ended by a line feed; nothing where nothing is.
 * Metric units whatever the page of text has, so that files of several cells go together. */
#include "arm_parts.h"
#include "pages.h"
#include <stdio.h>
#include <string.h>

struct table {
	struct writer *writer;
	const struct result *result;
	size_t joints;
	bool begun;                      /* the row holds a field: a comma is due */
};

static void put(struct table *table, const char *text)
{
	writer_bytes(table->writer, text, strlen(text));
}

/* RFC 4180 2, rules 6 and 7. */
static void field(struct table *table, const char *text)
{
	if (table->begun)
		put(table, ",");
	table->begun = true;
	if (!strpbrk(text, ",\"\r\n")) {
		put(table, text);
		return;
	}
	put(table, "\"");
	for (; *text; text++)
		put(table, (char[]){*text, *text == '"' ? '"' : 0, 0});
	put(table, "\"");
}

static void number(struct table *table, bool known, double value)
{
	char text[40] = "";
	if (known)
		number_write_exact(value, text, sizeof text);
	field(table, text);
}

static void end_row(struct table *table)
{
	put(table, "\n");
	table->begun = false;
}

static double shown(double value, enum dimension dimension)
{
	return value / quantity_display_unit(dimension, UNITS_METRIC)->factor;
}

static void head_row(struct table *table)
{
	static const char *const heads[] = {
		"file",    "setup",   "case",      "way",       "source",    "kind",
		"unit",    "largest", "bound",     "Fx [kN]",   "Fy [kN]",   "Fz [kN]",
		"Mx [kN m]", "My [kN m]", "Mz [kN m]", "turn from [deg]", "turn to [deg]",
		"gripper", "row",     "time [s]"};
	static const char *const ofs[] = {"unit", "position", "speed", "acceleration"};
	for (size_t i = 0; i < sizeof heads / sizeof *heads; i++)
		field(table, heads[i]);
	for (size_t i = 0; i < table->joints; i++)
		for (size_t k = 0; k < sizeof ofs / sizeof *ofs; k++) {
			char head[64];
			snprintf(head, sizeof head, "joint %zu %s", i + 1, ofs[k]);
			field(table, head);
		}
	field(table, "note");
	end_row(table);
}

/* Every row carries what must not be parted from its numbers. */
static void note_field(struct table *table, bool estimate)
{
	const char *text = estimate
	                           ? "ESTIMATE by the lumped arm; a licensed engineer must review "
	                             "and sign, local codes govern"
	                           : "a licensed engineer must review and sign, local codes govern";
	field(table, text);
}

static void row_start(struct table *table, size_t s, enum arm_case arm_case, const char *way,
                      const char *source, const char *kind)
{
	const struct cell *cell = table->result->cell;
	field(table, table->result->file ? table->result->file : "");
	field(table, s < cell->setups.count ? setup_name(cell, s) : "");
	field(table, arm_case_word(arm_case));
	field(table, way);
	field(table, source);
	field(table, kind);
}

static void wrench_fields(struct table *table, bool known, const struct arm_load *load)
{
	for (int i = 0; i < 3; i++)
		number(table, known, shown(load->force[i], DIM_FORCE));
	for (int i = 0; i < 3; i++)
		number(table, known, shown(load->moment[i], DIM_MOMENT));
	number(table, known, shown(load->spin_from, DIM_ANGLE));
	number(table, known, shown(load->spin_to, DIM_ANGLE));
}

static void joint_fields(struct table *table, const struct cell *cell,
                         const struct reaction_at *at, size_t joints)
{
	for (size_t i = 0; i < table->joints; i++) {
		bool known = at && i < joints, slides = arm_joint_slides(cell, i);
		field(table, !known ? "" : slides ? "mm" : "deg");
		number(table, known, known ? arm_joint_shown(at->q[i], slides) : 0);
		number(table, known, known ? arm_joint_shown(at->speed[i], slides) : 0);
		number(table, known, known ? arm_joint_shown(at->acceleration[i], slides) : 0);
	}
}

static void kind_row(struct table *table, size_t s, const struct arm_source *source,
                     enum reaction_kind kind)
{
	const struct arm_extreme *extreme = &source->extreme[kind];
	enum dimension dimension = arm_kind_dimension(kind);
	row_start(table, s, source->arm_case, arm_way_word(source->way), source->name,
	          arm_kind_word(kind));
	field(table, dimension == DIM_MOMENT ? "kN m" : "kN");
	number(table, true, shown(extreme->value, dimension));
	number(table, arm_has_bound(extreme), shown(extreme->bound, dimension));
	wrench_fields(table, arm_has_companions(source), &extreme->load);
	field(table, !extreme->at ? "" : extreme->empty_gripper ? "empty" : "payload");
	number(table, extreme->row > 0, extreme->row);
	number(table, extreme->row > 0, extreme->time);
	joint_fields(table, setup_cell(table->result->cell, s), extreme->at, source->joints);
	note_field(table, arm_is_estimate(source->way));
	end_row(table);
}

/* A data sheet's vertical force is "vertical": with or without weight, as the file says. */
static void sheet_row(struct table *table, size_t s, enum arm_case arm_case, int value,
                      const struct number *given)
{
	enum dimension dimension = arm_paste_dimension(value);
	row_start(table, s, arm_case, "data sheet", "arm.reactions", arm_paste_key(value));
	field(table, dimension == DIM_MOMENT ? "kN m" : "kN");
	number(table, true, shown(given->value, dimension));
	field(table, "");
	wrench_fields(table, false, &(struct arm_load){.weight = 0});
	for (int i = 0; i < 3; i++)
		field(table, "");
	joint_fields(table, setup_cell(table->result->cell, s), NULL, 0);
	note_field(table, false);
	end_row(table);
}

static void sheet_rows(struct table *table, size_t s, enum arm_case arm_case)
{
	const struct reaction *sheet = &setup_cell(table->result->cell, s)->arm.reaction[arm_case];
	const struct number *const values[] = {&sheet->vertical, &sheet->horizontal,
	                                       &sheet->tilting, &sheet->twisting};
	for (int i = 0; i < PASTE_VALUES; i++)
		if (is_known(*values[i]))
			sheet_row(table, s, arm_case, i, values[i]);
}

static void setup_rows(struct table *table, size_t s)
{
	const struct arm_loads *loads = table->result->arm[s];
	for (size_t i = 0; loads && i < loads->count; i++)
		for (int kind = 0; kind < REACTION_KINDS; kind++)
			kind_row(table, s, &loads->list[i], (enum reaction_kind)kind);
	for (int c = ARM_EMERGENCY_STOP; c > ARM_REST; c--)
		sheet_rows(table, s, (enum arm_case)c);
}

bool page_arm_csv(const struct result *result, write_function *write, void *user)
{
	struct writer writer;
	writer_open(&writer, write, user, false);
	struct table table = {&writer, result, arm_most_joints(result), false};
	head_row(&table);
	for (size_t s = 0; s < setup_count(result->cell); s++)
		setup_rows(&table, s);
	return writer_close(&writer);
}
