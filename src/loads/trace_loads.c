/* Writes down how a load case comes about, for a checker with a pencil. */
#include "arm_wrench.h"
#include "extra.h"
#include "loads.h"
#include "weights.h"

#include <math.h>

#define FEW_PARTS 12     /* more are summed without a line each */

/* Mass and place of one part, with the lines of the file where they stand. */
static void trace_part(const struct part *part, size_t number, enum weight_run run,
                       struct trace *trace)
{
	bool box = is_known(part->box_from) && is_known(part->box_to);
	bool least = run != RUN_FULL && is_known(part->least_mass);
	trace_input(trace, trace_text(trace, "m_%zu", number),
	            least ? &part->least_mass : &part->mass, DIM_MASS, part->name.value);
	for (int k = 0; k < 2; k++) {
		const char *symbol = trace_text(trace, k ? "y_%zu" : "x_%zu", number);
		struct number at = {part->at.given, part->at.at[k], NULL};
		if (box)
			trace_step(trace, symbol, "",
			           0.5 * (part->box_from.at[k] + part->box_to.at[k]), DIM_LENGTH,
			           "centre of its box", "");
		else
			trace_input(trace, symbol, &at, DIM_LENGTH, "");
	}
}

/* The sums of weights and first moments, a line a part. */
static void trace_parts(const struct cell *cell, const struct load_case *c, struct trace *trace)
{
	struct weights w = parts_weights(cell, c->run);
	const char *down = "", *x = "", *y = "";
	const char *plus = "";
	double sign[2];
	trace_step(trace, "g0", "", STANDARD_GRAVITY, DIM_FACTOR,
	           "NIST SP 811 B.8, standard acceleration of free fall, m/s2", "");
	trace_step(trace, "k_weight", "", c->weight_factor, DIM_FACTOR, c->combination,
	           "factor on weights");
	bool few = cell->parts.count <= FEW_PARTS;
	for (size_t i = 0; few && i < cell->parts.count; i++) {
		trace_part((const struct part *)cell->parts.rows + i, i + 1, c->run, trace);
		down = trace_text(trace, "%s%sm_%zu", down, plus, i + 1);
		x = trace_text(trace, "%s%sm_%zu * x_%zu", x, plus, i + 1, i + 1);
		y = trace_text(trace, "%s%sm_%zu * y_%zu", y, plus, i + 1, i + 1);
		plus = " + ";
	}
	few = few && cell->parts.count > 0;
	trace_step(trace, "W_parts", few ? trace_text(trace, "k_weight * g0 * (%s)", down) : "",
	           w.down, DIM_FORCE, "", "weights of the parts");
	trace_step(trace, "S_x_parts", few ? trace_text(trace, "k_weight * g0 * (%s)", x) : "",
	           w.moment[0], DIM_MOMENT, "", "their first moment in x");
	trace_step(trace, "S_y_parts", few ? trace_text(trace, "k_weight * g0 * (%s)", y) : "",
	           w.moment[1], DIM_MOMENT, "", "and in y");
	corner_signs(c->corner, sign);
	trace_step(trace, "S_x_boxes", "", sign[0] * w.half[0], DIM_MOMENT,
	           "boxed parts pushed to the worse side", "");
	trace_step(trace, "S_y_boxes", "", sign[1] * w.half[1], DIM_MOMENT,
	           "boxed parts pushed to the worse side", "");
}

/* Which reading of the weight flags the case stands for (loads.h). */
static struct weight_reading reading_of(const struct cell *cell, enum arm_case arm_case,
                                        const struct load_case *c)
{
	const struct arm *arm = &cell->arm;
	struct weight_reading out;
	unsigned with_vertical = 1u << 0 | 1u << 2, with_tilting = 1u << 0 | 1u << 1;
	out.vertical_without = is_known(arm->vertical_includes_weight)
	                               ? arm->vertical_includes_weight.value == NO
	                               : !(c->reading & with_vertical) ||
	                                         !arm_vertical_can_include(cell, arm_case);
	out.tilting_without = is_known(arm->tilting_includes_weight)
	                              ? arm->tilting_includes_weight.value == NO
	                              : !(c->reading & with_tilting);
	if (arm_case == ARM_REST)
		out = (struct weight_reading){false, false};
	return out;
}

static void trace_point(struct trace *trace, const char *const symbol[3], const struct point *point,
                        const char *meaning)
{
	for (int k = 0; trace && k < 3; k++) {
		struct number number = {point->given, point->at[k], NULL};
		trace_input(trace, symbol[k], &number, DIM_LENGTH, meaning);
	}
}

static const struct extra_load *extra_of(const struct cell *cell, const struct load_case *c)
{
	return c->source < FIRST_EXTRA
	               ? NULL
	               : (const struct extra_load *)cell->loads.rows + (c->source - FIRST_EXTRA);
}

static enum arm_case arm_case_of(const struct cell *cell, const struct load_case *c)
{
	static const enum arm_case arm_of[] = {ARM_EMERGENCY_STOP, ARM_NORMAL, ARM_REST};
	const struct extra_load *extra = extra_of(cell, c);
	return extra ? case_with_load(cell, (enum arm_case)extra->with.value) : arm_of[c->source];
}

void loads_trace_horizontal(const struct cell *cell, const struct load_case *c, struct trace *trace)
{
	const struct extra_load *extra = extra_of(cell, c);
	struct run_factors factors = run_factors(cell, c->run);
	trace_horizontal(cell, arm_case_of(cell, c), factors, trace);
	if (extra)
		extra_trace(extra, factors.moving, trace);
}

void loads_trace(const struct cell *cell, const struct load_case *c, double heading,
                 struct trace *trace)
{
	const struct extra_load *extra = extra_of(cell, c);
	enum arm_case arm_case = arm_case_of(cell, c);
	double load[3];
	if (!trace)
		return;
	trace_parts(cell, c, trace);
	struct wrench w = arm_wrench(cell, arm_case, c->run, c->vertical,
	                             reading_of(cell, arm_case, c), trace);
	trace_point(trace, (const char *const[3]){"x_mount", "y_mount", "z_mount"},
	            &cell->arm.mount, "mounting face");
	if (arm_case == ARM_REST)
		trace_horizontal(cell, arm_case, run_factors(cell, c->run), trace);
	if (extra)
		extra_trace(extra, run_factors(cell, c->run).moving, trace);
	double extra_down = c->down - (parts_weights(cell, c->run).down + w.down);
	trace_step(trace, "N_further", "", extra ? extra_down : 0, DIM_FORCE,
	           extra ? c->name : "no further load", "");
	trace_step(trace, "N", "W_parts + V + N_further", c->down, DIM_FORCE, "",
	           "vertical force on the base, downward");
	struct weights parts = parts_weights(cell, c->run);
	double sign[2];
	corner_signs(c->corner, sign);
	for (int k = 0; k < 2; k++) {
		double without = parts.moment[k] + sign[k] * parts.half[k] +
		                 w.down * cell->arm.mount.at[k];
		trace_step(trace, k ? "S_y_further" : "S_x_further", "",
		           extra ? c->fixed[k] - without : 0, DIM_MOMENT,
		           extra ? "further load, part that does not turn" : "no further load", "");
	}
	trace_step(trace, "S_x_fixed", "S_x_parts + S_x_boxes + V * x_mount + S_x_further",
	           c->fixed[0], DIM_MOMENT, "", "first moment that does not turn");
	trace_step(trace, "S_y_fixed", "S_y_parts + S_y_boxes + V * y_mount + S_y_further",
	           c->fixed[1], DIM_MOMENT, "", "");
	double arm_turning = w.tilting + w.horizontal * cell->arm.mount.at[2];
	trace_step(trace, "S_turn_further",
	           extra && is_known(extra->any_direction) ? "k_moving * F_further * z_further"
	                                                   : "",
	           extra ? c->turning - arm_turning : 0, DIM_MOMENT,
	           extra ? "further load from any side" : "no further load", "");
	trace_step(trace, "S_turn", "M + H * z_mount + S_turn_further", c->turning, DIM_MOMENT,
	           "tilting and horizontal force aligned", "moment that turns with the heading");
	trace_step(trace, "c", "", cos(heading), DIM_FACTOR, "cosine of the heading", "");
	trace_step(trace, "s", "", sin(heading), DIM_FACTOR, "sine of the heading", "");
	load_at(c, heading, load);
	trace_step(trace, "S_x", "S_x_fixed + S_turn * c", load[1], DIM_MOMENT, "",
	           "sum of N x about the cell origin");
	trace_step(trace, "S_y", "S_y_fixed + S_turn * s", load[2], DIM_MOMENT, "", "sum of N y");
}
