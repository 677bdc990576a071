/* The load cases that are run, as a table: what presses down, what stays and what turns with the
 * heading. */
#include "show_parts.h"
#include <stdio.h>
#include <string.h>

enum {
	DOWN = 11,
	FIXED_X = 20,
	FIXED_Y = 29,
	TURNING = 38,
	HORIZONTAL = 46,
	TWISTING = 55,
	COMBINATION = 57
};

static void head(struct writer *writer, const char *name, enum dimension dimension,
                 enum unit_system units, size_t column)
{
	writer_right(writer, dimension == DIM_FACTOR ? name : unit_name(dimension, units), column);
}

static void head_line(struct writer *writer, enum unit_system units, bool with_units)
{
	static const char *const names[] = {"down",    "fixed x", "fixed y",
	                                    "turning", "horiz.",  "twisting"};
	static const enum dimension dimensions[] = {
		DIM_FORCE, DIM_MOMENT, DIM_MOMENT, DIM_MOMENT, DIM_FORCE, DIM_MOMENT};
	static const size_t columns[] = {DOWN, FIXED_X, FIXED_Y, TURNING, HORIZONTAL, TWISTING};
	for (int i = 0; i < 6; i++)
		head(writer, names[i], with_units ? dimensions[i] : DIM_FACTOR, units, columns[i]);
	writer_newline(writer);
}

static void case_numbers(struct writer *writer, const struct load_case *load,
                         enum unit_system units)
{
	double force = 0, twist = 0;
	int places = units == UNITS_US ? 0 : 3;
	for (int i = 0; i < load->turning_count; i++) {
		force += load->turning_force[i].force;
		twist += load->turning_force[i].twist;
	}
	writer_right(writer, phrase_fixed(load->down, DIM_FORCE, units, places).text, DOWN);
	writer_right(writer, phrase_fixed(load->fixed[0], DIM_MOMENT, units, places).text, FIXED_X);
	writer_right(writer, phrase_fixed(load->fixed[1], DIM_MOMENT, units, places).text, FIXED_Y);
	writer_right(writer, phrase_fixed(load->turning, DIM_MOMENT, units, places).text, TURNING);
	writer_right(writer, phrase_fixed(force, DIM_FORCE, units, places).text, HORIZONTAL);
	writer_right(writer, phrase_fixed(twist, DIM_MOMENT, units, places).text, TWISTING);
}

static bool is_zero(double value)
{
	return !(value > 0) && !(value < 0);
}

/* A force that keeps its direction, from a stated heading or vector. */
static void fixed_shear_line(struct writer *writer, const struct load_case *load,
                             enum unit_system units)
{
	const double *shear = load->fixed_shear;
	if (is_zero(shear[0]) && is_zero(shear[1]) && is_zero(shear[2]))
		return;
	flow_begin(writer, COMBINATION);
	flow(writer, "with a fixed force of ");
	flow(writer, phrase_quantity(shear[0], DIM_FORCE, units, 4).text);
	flow(writer, " along x, ");
	flow(writer, phrase_quantity(shear[1], DIM_FORCE, units, 4).text);
	flow(writer, " along y, twisting ");
	flow(writer, phrase_quantity(shear[2], DIM_MOMENT, units, 4).text);
	flow_end(writer);
}

static void source_title(struct writer *writer, const struct result *result,
                         const struct load_case *load)
{
	flow_begin(writer, 2);
	if (flow_setup(writer, result->cell, load->setup))
		flow(writer, ", ");
	flow(writer, load->name);
	flow(writer, load->estimate ? ", ESTIMATE by the lumped arm (arm.swing)" : "");
	flow(writer, load->paired ? " (horizontal force and tilting share the heading)" : "");
	flow_end(writer);
}

/* "; `vertical` read as without the weight", where a flag is unknown and this case takes it one
 * way. `flag` is its bit in the number of a reading. */
static void flow_reading(struct writer *writer, const struct loads *loads,
                         const struct load_case *load, unsigned flag, const char *key)
{
	bool open[2] = {false, false}, taken[2] = {false, false};
	for (unsigned r = 0; r < MAX_READINGS; r++) {
		int without = (r & flag) != 0;
		open[without] |= loads->readings >> r & 1;
		taken[without] |= load->reading >> r & 1;
	}
	if (!open[0] || !open[1] || taken[0] == taken[1])
		return;
	flow(writer, "; `");
	flow(writer, key);
	flow(writer, taken[1] ? "` read as without the weight" : "` read as including the weight");
}

static void flow_readings(struct writer *writer, const struct loads *loads,
                          const struct load_case *load)
{
	flow_reading(writer, loads, load, 1, "vertical");
	flow_reading(writer, loads, load, 2, "tilting");
}

/* Wrenches of the arm's own motion come by the dozen: the first few of the full run stand for
 * them. */
enum { FEW_WRENCHES = 6 };

/* Whether a line of its own is printed; else it is counted. */
static bool is_shown(const struct load_case *load, size_t shown)
{
	return !load->arm_load ||
	       (load->run == RUN_FULL && load->corner <= 0 && shown < FEW_WRENCHES);
}

static void left_out_line(struct writer *writer, size_t count)
{
	char text[160];
	if (count == 0)
		return;
	snprintf(text, sizeof text,
	         "and %zu more of this source: other instants, other factors on the weights, other "
	         "corners of boxed parts, the stability run",
	         count);
	paragraph(writer, "", 4, text);
}

static void case_line(struct writer *writer, const struct result *result,
                      const struct load_case *load, enum unit_system units)
{
	case_numbers(writer, load, units);
	flow_begin(writer, COMBINATION);
	flow(writer, load->combination);
	flow(writer, load->stability_only ? " (stability alone)" : "");
	flow_readings(writer, &result->loads, load);
	flow_end(writer);
	fixed_shear_line(writer, load, units);
}

static void case_lines(struct writer *writer, const struct result *result, enum unit_system units)
{
	const struct load_case *before = NULL;
	size_t shown = 0, hidden = 0;
	for (size_t i = 0; i < result->loads.count; i++) {
		const struct load_case *load = &result->loads.list[i];
		if (load->method != METHOD_RATING)
			break;
		if (!before || before->setup != load->setup || before->source != load->source ||
		    before->bound != load->bound) {
			left_out_line(writer, hidden);
			shown = hidden = 0;
			source_title(writer, result, load);
		}
		before = load;
		if (!is_shown(load, shown)) {
			hidden++;
			continue;
		}
		shown++;
		case_line(writer, result, load, units);
	}
	left_out_line(writer, hidden);
}

/* One line a source stands for the loads of a code: they are the same sources again. Of an
 * earthquake one a row of its code. */
static bool stands_for_all(const struct load_case *load, const struct load_case *last)
{
	if (load->corner > 0 || load->vertical != VERTICAL_LEAST ||
	    !(load->earthquake || load->run == RUN_FULL))
		return false;
	return !last || last->setup != load->setup || last->earthquake != load->earthquake ||
	       strcmp(last->name, load->name) != 0;
}

static void factored_lines(struct writer *writer, const struct result *result, enum method method,
                           enum unit_system units)
{
	static const char *const title[METHODS] = {
		[METHOD_ACI318] = "The same as factored loads of ACI 318-19 5.3, a line a source:",
		[METHOD_EN1992_4] = "The same as factored loads of EN 1990 6.10, a line a source:"};
	const struct load_case *last = NULL;
	size_t hidden = 0;
	char text[160];
	for (size_t i = 0; i < result->loads.count; i++) {
		const struct load_case *load = &result->loads.list[i];
		if (load->method != method)
			continue;
		if (!stands_for_all(load, last)) {
			hidden++;
			continue;
		}
		if (!last)
			paragraph(writer, "", 2, title[method]);
		if (!last || last->setup != load->setup || strcmp(last->name, load->name) != 0)
			source_title(writer, result, load);
		last = load;
		case_line(writer, result, load, units);
	}
	if (hidden == 0)
		return;
	snprintf(text, sizeof text,
	         "and %zu more: lower weights, the largest vertical force, other instants, other "
	         "corners of boxed parts", hidden);
	paragraph(writer, "", 4, text);
}

static void gap_lines(struct writer *writer, const struct loads *loads)
{
	static const char *const effects[] = {
		[GAP_FAVOURABLE] = "left out: a check that fails without it fails, none can hold",
		[GAP_OPEN] = "open both ways: nothing can fail or hold by the loads",
		[GAP_BLOCKING] = "without it no loads can be computed"};
	for (size_t i = 0; i < loads->gap_count; i++) {
		writer_pad(writer, 2);
		writer_text(writer, "not known: ");
		writer_text(writer, loads->gaps[i].path);
		paragraph(writer, "", SHOW_VALUE + 11, effects[loads->gaps[i].kind]);
	}
}

static void bed_ratio_line(struct writer *writer, const struct result *result,
                           enum unit_system units)
{
	if (result->bed_ratio_count == 0)
		return;
	flow_begin(writer, 2);
	flow(writer, "each is solved at these stiffnesses of anchor to bed: ");
	for (size_t i = 0; i < result->bed_ratio_count; i++) {
		flow(writer, i ? ", " : "");
		flow(writer, phrase_quantity(result->bed_ratio[i], DIM_AREA, units, 4).text);
	}
	flow_end(writer);
}

/* A history is no list of cases: each of its rows is one. */
static bool history_lines(struct writer *writer, const struct result *result)
{
	bool any = false;
	for (size_t s = 0; s < setup_count(result->cell); s++)
		for (size_t i = 0; result->arm[s] && i < result->arm[s]->count; i++) {
			const struct arm_source *source = &result->arm[s]->list[i];
			char rows[80];
			if (source->way != WAY_HISTORY)
				continue;
			any = true;
			flow_begin(writer, 2);
			if (flow_setup(writer, result->cell, (uint16_t)s))
				flow(writer, ", ");
			flow(writer, source->name);
			snprintf(rows, sizeof rows,
			         ": %u rows, each with every factor on the weights",
			         (unsigned)source->summary.rows);
			flow(writer, rows);
			flow_end(writer);
		}
	return any;
}

void show_loads(struct writer *writer, const struct result *result)
{
	enum unit_system units = result->cell->show.value == UNITS_US ? UNITS_US : UNITS_METRIC;
	writer_title(writer, "Load cases");
	bool histories = history_lines(writer, result);
	if (result->loads.count == 0 && histories) {
		gap_lines(writer, &result->loads);
		return;
	}
	if (result->loads.count == 0) {
		paragraph(writer, "", 2,
		          result->loads.given ? "none: the load model is not complete"
		                              : "none: the file has no load model");
		gap_lines(writer, &result->loads);
		return;
	}
	paragraph(writer, "", 2,
	          "service loads about the cell's origin at floor level; `fixed x` is the sum of "
	          "N x of what stays in its place, `fixed y` that of N y; `turning` is the moment "
	          "that follows the heading, tried all round where it is free");
	head_line(writer, units, false);
	head_line(writer, units, true);
	case_lines(writer, result, units);
	for (int m = METHOD_ACI318; m < METHODS; m++)
		factored_lines(writer, result, (enum method)m, units);
	bed_ratio_line(writer, result, units);
	gap_lines(writer, &result->loads);
}
