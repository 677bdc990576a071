/* The arm's reactions for a reader: for each setup and each source a table of the five kinds with
 * what comes with them, where they occur, the ways side by side, and a block for a cell file. */
#include "arm_parts.h"
#include "text_parts.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

enum {
	UNIT = 20,           /* where the unit begins; the others end there */
	LARGEST = 36,
	BOUND = 46,
	WRENCH = 46,         /* the six components follow, each so wide: */
	COMPONENT = 9,
	JOINT_LABEL = 24,
	JOINT = 9,
	JOINTS_A_LINE = 8,
	WAY_COLUMN = 36,
	WAY_WIDTH = 15
};

struct arm_page {
	struct writer *writer;
	const struct result *result;
	const struct cell *cell;         /* of the setup at hand */
	enum unit_system units;
};

static int places(const struct arm_page *page)
{
	return page->units == UNITS_US ? 1 : 3;
}

/* Up to the last place shown, so that no page states less than was found. */
static struct phrase phrase_up(const struct arm_page *page, double value, enum dimension dimension)
{
	double step = quantity_display_unit(dimension, page->units)->factor *
	              pow(10, -places(page));
	double up = step * ceil(value / step - 1e-9);
	return phrase_fixed(up, dimension, page->units, places(page));
}

/* --- one source --- */

static void wrench_heads(const struct arm_page *page, bool companions)
{
	static const char *const names[] = {"Fx", "Fy", "Fz up", "Mx", "My", "Mz"};
	struct writer *writer = page->writer;
	writer_right(writer, "largest", LARGEST);
	writer_right(writer, "bound", BOUND);
	for (size_t i = 0; companions && i < 6; i++)
		writer_right(writer, names[i], WRENCH + COMPONENT * (i + 1));
	writer_newline(writer);
	if (!companions)
		return;
	for (size_t i = 0; i < 6; i++)
		writer_right(writer, unit_name(i < 3 ? DIM_FORCE : DIM_MOMENT, page->units),
		             WRENCH + COMPONENT * (i + 1));
	writer_newline(writer);
}

static const char *kind_title(enum reaction_kind kind, const struct arm_extreme *extreme)
{
	static const char *const titles[REACTION_KINDS] = {
		[REACTION_TILTING] = "tilting moment",  [REACTION_HORIZONTAL] = "horizontal force",
		[REACTION_UPLIFT] = "uplift",           [REACTION_DOWNFORCE] = "downforce",
		[REACTION_TWISTING] = "twisting moment"};
	return kind == REACTION_UPLIFT && !(extreme->value > 0) ? "least downforce" : titles[kind];
}

/* The least downforce is minus the uplift: raised as an uplift, then turned round. */
static void kind_value(const struct arm_page *page, enum reaction_kind kind, bool turned,
                       double value, size_t column)
{
	struct phrase text = phrase_up(page, value, arm_kind_dimension(kind));
	if (turned) {
		struct phrase minus = text;
		bool zero = strspn(minus.text, "-0.") == strlen(minus.text);
		snprintf(text.text, sizeof text.text, "%s%.90s",
		         minus.text[0] == '-' || zero ? "" : "-",
		         minus.text + (minus.text[0] == '-'));
	}
	writer_right(page->writer, text.text, column);
}

static void components(const struct arm_page *page, const struct arm_load *load)
{
	for (size_t i = 0; i < 6; i++) {
		enum dimension dimension = i < 3 ? DIM_FORCE : DIM_MOMENT;
		double value = i < 3 ? load->force[i] : load->moment[i - 3];
		writer_right(page->writer,
		             phrase_fixed(value, dimension, page->units, places(page)).text,
		             WRENCH + COMPONENT * (i + 1));
	}
}

static void kind_line(const struct arm_page *page, const struct arm_source *source,
                      enum reaction_kind kind)
{
	const struct arm_extreme *extreme = &source->extreme[kind];
	struct writer *writer = page->writer;
	bool turned = kind == REACTION_UPLIFT && !(extreme->value > 0);
	writer_pad(writer, 2);
	writer_text(writer, kind_title(kind, extreme));
	writer_pad(writer, UNIT);
	writer_text(writer, unit_name(arm_kind_dimension(kind), page->units));
	kind_value(page, kind, turned, extreme->value, LARGEST);
	if (arm_has_bound(extreme))
		kind_value(page, kind, turned, extreme->bound, BOUND);
	else
		writer_right(writer, "-", BOUND);
	if (arm_has_companions(source))
		components(page, &extreme->load);
	writer_newline(writer);
}

static struct phrase in_degrees(double angle)
{
	return phrase_fixed(angle, DIM_ANGLE, UNITS_METRIC, 1);
}

/* --- where: joints --- */

enum joint_row { ROW_POSITION, ROW_SPEED, ROW_ACCELERATION };

/* [rad], [m] and their rates, as the chain has them. */
static double joint_value(const struct reaction_at *at, enum joint_row row, size_t joint)
{
	return row == ROW_POSITION ? at->q[joint]
	       : row == ROW_SPEED  ? at->speed[joint]
	                           : at->acceleration[joint];
}

/* What the joints give, as moments; a sliding one's is a force. */
static void torque_line(const struct arm_page *page, const struct arm_extreme *extreme,
                        size_t from, size_t to)
{
	writer_pad(page->writer, 6);
	writer_text(page->writer, "gives, kN m");
	for (size_t i = from; i < to; i++) {
		double kilo = extreme->torque[i] / 1000;
		struct phrase text = phrase_fixed(
			arm_joint_slides(page->cell, i) ? 1e3 * kilo : 1e6 * kilo,
			arm_joint_slides(page->cell, i) ? DIM_FORCE : DIM_MOMENT, UNITS_METRIC, 3);
		writer_right(page->writer, text.text, JOINT_LABEL + JOINT * (i - from + 1));
	}
	writer_newline(page->writer);
}

static void joint_line(const struct arm_page *page, const struct reaction_at *at,
                       enum joint_row row, size_t from, size_t to)
{
	static const char *const labels[] = {"position", "speed", "acceleration"};
	writer_pad(page->writer, 6);
	writer_text(page->writer, labels[row]);
	for (size_t i = from; i < to; i++) {
		double value = joint_value(at, row, i);
		struct phrase text = arm_joint_slides(page->cell, i)
		                             ? phrase_fixed(1000 * value, DIM_LENGTH, UNITS_METRIC,
		                                            1)
		                             : in_degrees(value);
		writer_right(page->writer, text.text, JOINT_LABEL + JOINT * (i - from + 1));
	}
	writer_newline(page->writer);
}

static void joint_heads(const struct arm_page *page, size_t from, size_t to)
{
	writer_pad(page->writer, 6);
	writer_text(page->writer, "joint");
	for (size_t i = from; i < to; i++) {
		char head[40];
		snprintf(head, sizeof head, "%zu %s", i + 1,
		         arm_joint_slides(page->cell, i) ? "mm" : "deg");
		writer_right(page->writer, head, JOINT_LABEL + JOINT * (i - from + 1));
	}
	writer_newline(page->writer);
}

/* An arm at rest has no speed. */
static void joint_lines(const struct arm_page *page, const struct arm_source *source,
                        const struct arm_extreme *extreme)
{
	int last = source->arm_case == ARM_REST ? ROW_POSITION : ROW_ACCELERATION;
	size_t joints = source->joints;
	for (size_t from = 0; from < joints; from += JOINTS_A_LINE) {
		size_t to = joints - from > JOINTS_A_LINE ? from + JOINTS_A_LINE : joints;
		joint_heads(page, from, to);
		for (int row = ROW_POSITION; row <= last; row++)
			joint_line(page, extreme->at, (enum joint_row)row, from, to);
		torque_line(page, extreme, from, to);
	}
}

static void flow_turn(const struct arm_page *page, const struct arm_load *load)
{
	if (!(load->spin_to > load->spin_from))
		return;
	flow(page->writer, "; the whole may turn about the vertical by ");
	flow(page->writer, in_degrees(load->spin_from).text);
	flow(page->writer, " to ");
	flow(page->writer, in_degrees(load->spin_to).text);
	flow(page->writer, " deg");
}

static void kind_place(const struct arm_page *page, const struct arm_source *source,
                       enum reaction_kind kind, bool turn)
{
	const struct arm_extreme *extreme = &source->extreme[kind];
	struct writer *writer = page->writer;
	char text[64], time[32];
	writer_pad(writer, 4);
	flow_begin(writer, 4);
	flow(writer, kind_title(kind, extreme));
	if (extreme->row > 0) {
		number_write(extreme->time, 6, time, sizeof time);
		snprintf(text, sizeof text, ": row %u, t = %s s", (unsigned)extreme->row, time);
		flow(writer, text);
	}
	if (extreme->at)
		flow(writer, extreme->empty_gripper ? ", empty gripper" : ", with the payload");
	if (turn)
		flow_turn(page, &extreme->load);
	flow_end(writer);
	if (extreme->at)
		joint_lines(page, source, extreme);
}

/* Whether every kind may turn by the same angles: then it is said once. */
static bool turns_alike(const struct arm_source *source)
{
	const struct arm_load *first = &source->extreme[0].load;
	for (int kind = 1; kind < REACTION_KINDS; kind++) {
		const struct arm_load *load = &source->extreme[kind].load;
		if (memcmp(&load->spin_from, &first->spin_from, sizeof first->spin_from) != 0 ||
		    memcmp(&load->spin_to, &first->spin_to, sizeof first->spin_to) != 0)
			return false;
	}
	return true;
}

/* What an arm at rest never has is at its largest everywhere. */
static bool has_place(const struct arm_source *source, int kind)
{
	double value = source->extreme[kind].value;
	return value < 0 || value > 0;
}

static void place_lines(const struct arm_page *page, const struct arm_source *source)
{
	bool alike = turns_alike(source);
	struct writer *writer = page->writer;
	writer_pad(writer, 2);
	flow_begin(writer, 2);
	if (!arm_has_companions(source)) {
		flow(writer,
		     "separate maxima: the kinds need not occur at one instant, so none has "
		     "companions");
		flow_end(writer);
		return;
	}
	flow(writer, "where each occurs");
	if (source->way == WAY_CHAIN && source->arm_case != ARM_REST)
		flow(writer, "; speeds are per s, accelerations per s2, each with its sign");
	for (size_t i = 0; i < source->joints; i++)
		if (arm_joint_slides(page->cell, i)) {
			flow(writer, "; what a sliding joint gives is in kN");
			break;
		}
	if (alike)
		flow_turn(page, &source->extreme[0].load);
	flow(writer, ":");
	flow_end(writer);
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		if (has_place(source, kind))
			kind_place(page, source, (enum reaction_kind)kind, !alike);
}

static void flow_basis(const struct arm_page *page, const struct arm_source *source)
{
	char text[96], shown[32];
	struct writer *writer = page->writer;
	if (source->way == WAY_CHAIN && source->poses > 0) {
		snprintf(text, sizeof text, "; largest of %zu poses and a search around them",
		         source->poses);
		flow(writer, text);
		if (arm_has_bound(&source->extreme[REACTION_TILTING]))
			flow(writer, "; bound: no pose within the limits is worse");
	}
	if (source->way == WAY_HISTORY && source->summary.rows > 0) {
		number_write(source->summary.median_step, 3, shown, sizeof shown);
		snprintf(text, sizeof text, "; %u rows, median step %s s",
		         (unsigned)source->summary.rows, shown);
		flow(writer, text);
	}
}

static void source_lines(const struct arm_page *page, const struct arm_source *source)
{
	struct writer *writer = page->writer;
	bool estimate = arm_is_estimate(source->way);
	writer_newline(writer);
	if (estimate) {
		writer_style(writer, STYLE_UNPROVEN);
		writer_text(writer, "ESTIMATE ");
		writer_style(writer, STYLE_PLAIN);
	}
	flow_begin(writer, 2);
	flow(writer, source->name);
	flow(writer, estimate ? ": by the lumped arm, from masses, radii, speeds and times alone"
	                      : "");
	flow_basis(page, source);
	flow_end(writer);
	wrench_heads(page, arm_has_companions(source));
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		kind_line(page, source, (enum reaction_kind)kind);
	place_lines(page, source);
}

/* --- the ways side by side --- */

static void way_heads(const struct arm_page *page)
{
	for (int i = 0; i < PASTE_VALUES; i++) {
		char head[48];
		snprintf(head, sizeof head, "%s %s", arm_paste_key(i),
		         unit_name(arm_paste_dimension(i), page->units));
		writer_right(page->writer, head, WAY_COLUMN + WAY_WIDTH * ((size_t)i + 1));
	}
	writer_newline(page->writer);
}

static void way_label(const struct arm_page *page, enum arm_case arm_case, const char *way)
{
	writer_pad(page->writer, 2);
	writer_text(page->writer, arm_case_name(arm_case));
	writer_text(page->writer, ", ");
	writer_text(page->writer, way);
}

static void sheet_line(const struct arm_page *page, enum arm_case arm_case)
{
	const struct reaction *sheet = &page->cell->arm.reaction[arm_case];
	const struct number *const values[] = {&sheet->vertical, &sheet->horizontal,
	                                       &sheet->tilting, &sheet->twisting};
	if (!arm_sheet_known(page->cell, arm_case))
		return;
	way_label(page, arm_case, "data sheet");
	for (int i = 0; i < PASTE_VALUES; i++)
		writer_right(
			page->writer,
			is_known(*values[i])
				? phrase_up(page, values[i]->value, arm_paste_dimension(i)).text
				: "-",
			WAY_COLUMN + WAY_WIDTH * ((size_t)i + 1));
	writer_newline(page->writer);
}

static void way_line(const struct arm_page *page, const struct arm_paste *paste,
                     enum arm_case arm_case, const char *way, bool bound)
{
	const struct arm_paste_case *from = &paste->of[arm_case];
	bool any = false;
	for (int i = 0; i < PASTE_VALUES; i++)
		any = any || from->value[i].bound;
	if (!from->known || (bound && !any))
		return;
	way_label(page, arm_case, way);
	for (int i = 0; i < PASTE_VALUES; i++) {
		const struct arm_paste_value *value = &from->value[i];
		bool shown = value->known && (!bound || value->bound);
		double number = bound ? value->value : value->swept;
		writer_right(page->writer,
		             shown ? phrase_up(page, number, arm_paste_dimension(i)).text : "-",
		             WAY_COLUMN + WAY_WIDTH * ((size_t)i + 1));
	}
	writer_newline(page->writer);
}

static const char *flag_word(const struct word *flag)
{
	return !is_known(*flag) ? "not known" : flag->value == YES ? "yes" : "no";
}

static void sheet_note(const struct arm_page *page)
{
	const struct arm *arm = &page->cell->arm;
	flow_begin(page->writer, 2);
	flow(page->writer,
	     "vertical: the larger of the largest downforce and twice the arm's weight "
	     "less the least downforce, as a data sheet's is read both ways about that "
	     "weight");
	if (arm_sheet_known(page->cell, ARM_NORMAL) ||
	    arm_sheet_known(page->cell, ARM_EMERGENCY_STOP)) {
		flow(page->writer, "; the data sheet's includes the weight: vertical ");
		flow(page->writer, flag_word(&arm->vertical_includes_weight));
		flow(page->writer, ", tilting ");
		flow(page->writer, flag_word(&arm->tilting_includes_weight));
	}
	flow_end(page->writer);
}

static void side_by_side(const struct arm_page *page, const struct arm_paste paste[])
{
	static const char *const ways[] = {"chain, swept", "swing, ESTIMATE", "history"};
	writer_newline(page->writer);
	writer_text(page->writer, "Side by side, as the keys of arm.reactions");
	writer_newline(page->writer);
	way_heads(page);
	for (int c = ARM_EMERGENCY_STOP; c > ARM_REST; c--) {
		sheet_line(page, (enum arm_case)c);
		for (int way = WAY_CHAIN; way <= WAY_HISTORY; way++) {
			way_line(page, &paste[way], (enum arm_case)c, ways[way], false);
			way_line(page, &paste[way], (enum arm_case)c, "chain, bound", true);
		}
	}
	sheet_note(page);
}

/* --- the block --- */

enum { COMMENT = 34 };

static void block_value(const struct arm_page *page, int key, const struct arm_paste_value *value)
{
	enum dimension dimension = arm_paste_dimension(key);
	struct writer *writer = page->writer;
	writer_pad(writer, 6);
	writer_text(writer, arm_paste_key(key));
	writer_text(writer, ":");
	if (!value->known) {
		writer_pad(writer, COMMENT);
		writer_text(writer, "# not known without arm.weight.arm");
	} else {
		writer_text(writer, " ");
		writer_text(writer, arm_paste_up(value->value, dimension, page->units).text);
	}
	if (value->known && value->bound) {
		writer_pad(writer, COMMENT);
		writer_text(writer, "# guaranteed bound; swept ");
		writer_text(writer, arm_paste_up(value->swept, dimension, page->units).text);
	}
	writer_newline(writer);
}

static void block_case(const struct arm_page *page, const struct arm_paste *paste,
                       enum arm_case arm_case)
{
	struct writer *writer = page->writer;
	writer_pad(writer, 4);
	writer_text(writer, arm_case_word(arm_case));
	writer_text(writer, ":");
	if (!paste->of[arm_case].known) {
		writer_pad(writer, COMMENT);
		writer_text(writer, "# not computed");
	}
	writer_newline(writer);
	for (int i = 0; paste->of[arm_case].known && i < PASTE_VALUES; i++)
		block_value(page, i, &paste->of[arm_case].value[i]);
}

static void comment(const struct arm_page *page, const char *text)
{
	flow_begin_prefixed(page->writer, 4, "# ");
	flow(page->writer, text);
	flow_end(page->writer);
}

static void block_comments(const struct arm_page *page, const struct arm_paste *paste,
                           enum arm_way way)
{
	char text[200], arm[48], payload[48];
	const struct unit *unit = quantity_display_unit(DIM_MASS, page->units);
	if (arm_is_estimate(way))
		comment(page,
		        "ESTIMATE by the lumped arm, from masses, radii, speeds and times alone");
	if (paste->peak_open)
		comment(page, "a peak factor is not known and taken as 1: a stop can be harder "
		              "than this");
	if (!(paste->weight > 0))
		return;
	quantity_write(paste->weight / STANDARD_GRAVITY, unit, 6, arm, sizeof arm);
	quantity_write(paste->payload / STANDARD_GRAVITY, unit, 6, payload, sizeof payload);
	snprintf(text, sizeof text,
	         "vertical belongs to arm.weight: arm %s, payload up to %s; with others make it anew",
	         arm, payload);
	comment(page, text);
}

static void block(const struct arm_page *page, const struct arm_paste *paste, enum arm_way way)
{
	struct writer *writer = page->writer;
	writer_newline(writer);
	flow_begin(writer, 2);
	flow(writer, "By ");
	flow(writer, arm_way_word(way));
	flow(writer, arm_is_estimate(way) ? " (ESTIMATE)" : "");
	flow(writer, ", to paste below the line arm: of a cell file, in place of its reactions; "
	             "rounded up");
	flow(writer, way == WAY_CHAIN ? "; the guaranteed bound where there is one" : "");
	flow_end(writer);
	writer_newline(writer);
	writer_text(writer, "  reactions:");
	writer_newline(writer);
	block_comments(page, paste, way);
	writer_text(writer, "    vertical_includes_weight: yes");
	writer_newline(writer);
	writer_text(writer, "    tilting_includes_weight: yes");
	writer_newline(writer);
	block_case(page, paste, ARM_NORMAL);
	block_case(page, paste, ARM_EMERGENCY_STOP);
}

/* --- what is left out --- */

struct gap_lines { const struct arm_page *page; size_t count; };

/* An arm_gap. */
static void gap_line(void *user, const char *path)
{
	struct gap_lines *lines = user;
	const struct arm_page *page = lines->page;
	const struct field *field = field_find(path);
	if (lines->count++ == 0) {
		writer_newline(page->writer);
		paragraph(page->writer, "", 2,
		          "Not known; a case without its number is left out, a peak factor is taken "
		          "as 1, its least:");
	}
	writer_pad(page->writer, 2);
	flow_begin(page->writer, 4);
	flow(page->writer, path);
	if (field && field->meaning) {
		flow(page->writer, ": ");
		flow(page->writer, field->meaning);
	}
	flow_end(page->writer);
}

static void nothing_line(const struct arm_page *page)
{
	writer_newline(page->writer);
	paragraph(page->writer, "", 0,
	          "Nothing to compute: the file has neither arm.chain with arm.motion, nor arm.swing, "
	          "nor arm.history. standfast explain arm.chain says what they are.");
}

/* --- setups --- */

static void setup_blocks(const struct arm_page *page, const struct arm_loads *loads)
{
	struct arm_paste paste[WAY_HISTORY + 1];
	struct gap_lines gaps = {page, 0};
	for (size_t i = 0; loads && i < loads->count; i++)
		source_lines(page, &loads->list[i]);
	arm_gaps(page->cell, gap_line, &gaps);
	if (gaps.count == 0 && (!loads || loads->count == 0))
		nothing_line(page);
	for (int way = WAY_CHAIN; way <= WAY_HISTORY; way++)
		arm_paste(page->cell, loads, (enum arm_way)way, &paste[way]);
	side_by_side(page, paste);
	for (int way = WAY_CHAIN; way <= WAY_HISTORY; way++)
		if (paste[way].known)
			block(page, &paste[way], (enum arm_way)way);
}

/* The setup before `s` with the same sources and data sheet; `s` when there is none. */
static size_t same_before(const struct result *result, size_t s)
{
	const struct arm *own = &setup_cell(result->cell, s)->arm;
	for (size_t i = 0; i < s; i++) {
		const struct arm *arm = &setup_cell(result->cell, i)->arm;
		if (result->arm[s] && arm_same_loads(result->arm[i], result->arm[s]) &&
		    memcmp(own->reaction, arm->reaction, sizeof own->reaction) == 0)
			return i;
	}
	return s;
}

static void setup_part(struct arm_page *page, size_t s)
{
	struct writer *writer = page->writer;
	size_t same = same_before(page->result, s);
	page->cell = setup_cell(page->result->cell, s);
	if (page->result->cell->setups.count > 0) {
		writer_newline(writer);
		writer_style(writer, STYLE_TITLE);
		flow_begin(writer, 0);
		flow(writer, "Setup ");
		flow_setup(writer, page->result->cell, s);
		flow_pause(writer);
		writer_style(writer, STYLE_PLAIN);
		flow_end(writer);
	}
	if (same == s) {
		setup_blocks(page, page->result->arm[s]);
		return;
	}
	flow_begin(writer, 2);
	flow(writer, "the same reactions on its mounting face as ");
	flow_setup(writer, page->result->cell, same);
	flow_end(writer);
}

bool page_arm_text(const struct result *result, const struct page_options *options,
                   write_function *write, void *user)
{
	struct writer writer;
	struct sentences cautions;
	struct arm_page page = {&writer, result, result->cell, result_units(result)};
	writer_open(&writer, write, user, options->colour);
	writer_style(&writer, STYLE_TITLE);
	writer_text(&writer, "Reactions of the arm on its mounting face");
	writer_style(&writer, STYLE_PLAIN);
	writer_newline(&writer);
	paragraph(&writer, "", 2,
	          "forces and moments about the point arm.mount, along the cell axes, z up; Fz below 0 "
	          "presses; each kind at its largest with the whole wrench of that instant; a least "
	          "downforce below 0 lifts");
	for (size_t s = 0; s < setup_count(result->cell); s++)
		setup_part(&page, s);
	arm_cautions(result, &cautions);
	text_sentences(&writer, "Cautions", &cautions, false);
	text_record(&writer, result);
	return writer_close(&writer);
}
