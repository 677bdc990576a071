/* Writes down how a load case comes about, for a checker with a pencil. */
#include "arm_wrench.h"
#include "earthquake.h"
#include "extra.h"
#include "loads.h"
#include "set_wrench.h"
#include "weights.h"

#include <math.h>
#include <string.h>

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
	struct weights w = case_weights(cell, c);
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
	bool extra = c->source >= FIRST_EXTRA && c->source < FIRST_EXTRA + cell->loads.count;
	return extra ? (const struct extra_load *)cell->loads.rows + (c->source - FIRST_EXTRA)
	             : NULL;
}

/* What the arm adds to a case [N], [N mm]. */
struct arm_part { double down, fixed[2], turning; };

static struct arm_part trace_sheet(const struct cell *cell, const struct load_case *c,
                                   struct trace *trace)
{
	enum arm_case arm_case = (enum arm_case)c->arm_case;
	struct wrench w = arm_wrench(cell, arm_case, c, reading_of(cell, arm_case, c), trace);
	trace_point(trace, (const char *const[3]){"x_mount", "y_mount", "z_mount"},
	            &cell->arm.mount, "mounting face");
	if (arm_case == ARM_REST)
		trace_horizontal(cell, arm_case, c, trace);
	return (struct arm_part){w.down, {0, 0}, w.tilting + w.horizontal * cell->arm.mount.at[2]};
}

static struct arm_part trace_own(const struct cell *cell, const struct load_case *c,
                                 struct trace *trace)
{
	struct set_wrench w = set_wrench(cell, c->arm_load, c);
	struct arm_part out = {.down = w.down};
	trace_set_wrench(cell, c, trace);
	for (int k = 0; k < 2; k++) {
		struct number at = {cell->arm.mount.given, cell->arm.mount.at[k], NULL};
		trace_input(trace, k ? "y_mount" : "x_mount", &at, DIM_LENGTH, "mounting face");
	}
	if (c->arm_load->spin_to > c->arm_load->spin_from)
		out.turning = sqrt(w.first[0] * w.first[0] + w.first[1] * w.first[1]);
	else
		memcpy(out.fixed, w.first, sizeof out.fixed);
	return out;
}

void loads_trace_horizontal(const struct cell *cell, const struct load_case *c, struct trace *trace)
{
	const struct extra_load *extra = extra_of(cell, c);
	if (c->arm_load)
		trace_set_horizontal(cell, c, trace);
	else
		trace_horizontal(cell, (enum arm_case)c->arm_case, c, trace);
	if (extra)
		extra_trace(extra, case_factors(cell, c).moving, factor_sources(c).moving,
		            trace);
	if (c->earthquake)
		earthquake_trace(cell, c->earthquake, trace);
}

/* First moments that do not turn: weights, boxes, the arm's vertical force, what else stays. */
static void trace_fixed(const struct cell *cell, const struct load_case *c,
                        const struct arm_part *arm, bool extra, struct trace *trace)
{
	static const char *const further[] = {"S_x_further", "S_y_further"},
		*const fixed[] = {"S_x_fixed", "S_y_fixed"},
		*const of[] = {"S_x_parts + S_x_boxes + V * x_mount + S_x_further",
	                       "S_y_parts + S_y_boxes + V * y_mount + S_y_further"},
		*const of_own[] = {"S_x_parts + S_x_boxes + V * x_mount + S_x_arm + S_x_further",
	                           "S_y_parts + S_y_boxes + V * y_mount + S_y_arm + S_y_further"};
	struct weights parts = case_weights(cell, c);
	bool stays = c->arm_load && arm->turning == 0;
	double sign[2];
	corner_signs(c->corner, sign);
	for (int k = 0; k < 2; k++) {
		double without = parts.moment[k] + sign[k] * parts.half[k] +
		                 arm->down * cell->arm.mount.at[k] + arm->fixed[k];
		bool quake = c->earthquake != NULL;
		trace_step(trace, further[k], quake ? k ? "S_y_E" : "S_x_E" : "",
		           quake   ? c->earthquake->action.fixed[k]
		           : extra ? c->fixed[k] - without
		                   : 0,
		           DIM_MOMENT,
		           extra ? "further load, part that does not turn"
		           : quake ? c->name : "no further load", "");
	}
	for (int k = 0; k < 2; k++)
		trace_step(trace, fixed[k], stays ? of_own[k] : of[k], c->fixed[k], DIM_MOMENT, "",
		           k ? "" : "first moment that does not turn");
}

void loads_trace(const struct cell *cell, const struct load_case *c, double heading,
                 struct trace *trace)
{
	const struct extra_load *extra = extra_of(cell, c);
	double load[3];
	if (!trace)
		return;
	trace_parts(cell, c, trace);
	struct arm_part arm = c->arm_load ? trace_own(cell, c, trace) : trace_sheet(cell, c, trace);
	if (extra)
		extra_trace(extra, case_factors(cell, c).moving, factor_sources(c).moving,
		            trace);
	if (c->earthquake)
		earthquake_trace(cell, c->earthquake, trace);
	const struct extra_action *quake = c->earthquake ? &c->earthquake->action : NULL;
	double extra_down = c->down - (case_weights(cell, c).down + arm.down);
	trace_step(trace, "N_further", quake ? "N_E" : "",
	           quake ? quake->down : extra ? extra_down : 0, DIM_FORCE,
	           extra || quake ? c->name : "no further load", "");
	trace_step(trace, "N", "W_parts + V + N_further", c->down, DIM_FORCE, "",
	           "vertical force on the base, downward");
	trace_fixed(cell, c, &arm, extra != NULL, trace);
	bool any_side = extra && is_known(extra->any_direction);
	trace_step(trace, "S_turn_further", any_side ? "k_moving * F_further * z_further"
	                                          : quake ? "S_turn_E" : "",
	           quake ? quake->turning : extra ? c->turning - arm.turning : 0, DIM_MOMENT,
	           quake ? c->name : extra ? "further load from any side" : "no further load", "");
	bool stays = c->arm_load && arm.turning == 0;
	trace_step(trace, "S_turn",
	           stays         ? "S_turn_further"
	           : c->arm_load ? "S_arm + S_turn_further"
	                         : "M + H * z_mount + S_turn_further",
	           c->turning, DIM_MOMENT,
	           c->arm_load ? "wrench of one instant, turned by the first joint"
	                       : "tilting and horizontal force aligned",
	           "moment that turns with the heading");
	trace_step(trace, "c", "", cos(heading), DIM_FACTOR, "cosine of the heading", "");
	trace_step(trace, "s", "", sin(heading), DIM_FACTOR, "sine of the heading", "");
	load_at(c, heading, load);
	trace_step(trace, "S_x", "S_x_fixed + S_turn * c", load[1], DIM_MOMENT, "",
	           "sum of N x about the cell origin");
	trace_step(trace, "S_y", "S_y_fixed + S_turn * s", load[2], DIM_MOMENT, "", "sum of N y");
}
