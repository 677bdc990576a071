#include "arm_wrench.h"

#define GRAVITY (STANDARD_GRAVITY)           /* [m/s2]: kg to N */

static double known(const struct number *number)
{
	return number->given.origin == ABSENT ? 0 : number->value;
}

bool arm_vertical_can_include(const struct cell *cell, enum arm_case arm_case)
{
	const struct number *vertical = &cell->arm.reaction[arm_case].vertical;
	double weight = GRAVITY * (known(&cell->arm.mass) + known(&cell->arm.payload));
	return vertical->given.origin == ABSENT || vertical->value >= weight;
}

static void trace_weights(const struct cell *cell, struct trace *trace)
{
	trace_step(trace, "g0", "", GRAVITY, DIM_FACTOR,
	           "NIST SP 811 B.8, standard acceleration of free fall, m/s2", "");
	trace_input(trace, "m_arm", &cell->arm.mass, DIM_MASS, "arm without payload");
	trace_input(trace, "m_payload", &cell->arm.payload, DIM_MASS, "gripper and work piece");
	trace_step(trace, "W_arm", "g0 * m_arm", GRAVITY * known(&cell->arm.mass), DIM_FORCE, "",
	           "");
	trace_step(trace, "W_payload", "g0 * m_payload", GRAVITY * known(&cell->arm.payload),
	           DIM_FORCE, "", "");
}

/* Both vertical extremes; the gripper may be empty, so the least one counts the arm's weight alone.
 */
static double vertical_force(const struct cell *cell, enum arm_case arm_case,
                             const struct load_case *c, bool without, struct trace *trace)
{
	struct run_factors factors = case_factors(cell, c);
	/* service loads take the weight once: no factor is written */
	bool service = c->method == METHOD_RATING;
	const struct number *given = &cell->arm.reaction[arm_case].vertical;
	double arm = GRAVITY * known(&cell->arm.mass),
	       payload = GRAVITY * known(&cell->arm.payload);
	double moving = 0;
	trace_weights(cell, trace);
	if (arm_case != ARM_REST && given->given.origin != ABSENT) {
		trace_input(trace, "V_sheet", given, DIM_FORCE, "vertical force of the data sheet");
		moving = without ? given->value : given->value - arm;
	}
	trace_step(trace, "V_moving",
	           arm_case == ARM_REST || given->given.origin == ABSENT ? ""
	           : without                                             ? "V_sheet"
	                                                                 : "V_sheet - W_arm",
	           moving, DIM_FORCE,
	           without ? "vertical force read as without weight"
	                   : "vertical force read as with weight",
	           "moving part");
	if (c->vertical == VERTICAL_LEAST)
		return trace_step(trace, "V", "k_weight * W_arm - k_moving * V_moving",
		                  factors.weight * arm - factors.moving * moving, DIM_FORCE,
		                  "least vertical force, empty gripper", "");
	if (without || arm_case == ARM_REST || given->given.origin == ABSENT)
		return trace_step(trace, "V",
		                  service ? "W_arm + W_payload + k_moving * V_moving"
		                          : "k_own * (W_arm + W_payload) + k_moving * V_moving",
		                  factors.own * (arm + payload) + factors.moving * moving,
		                  DIM_FORCE, "largest vertical force", "");
	return trace_step(trace, "V",
	                  service ? "W_arm + k_moving * V_moving"
	                          : "k_own * W_arm + k_moving * V_moving",
	                  factors.own * arm + factors.moving * moving, DIM_FORCE,
	                  "largest vertical force", "");
}

static double tilting_moment(const struct cell *cell, enum arm_case arm_case,
                             const struct load_case *c, bool without, struct trace *trace)
{
	struct run_factors factors = case_factors(cell, c);
	bool service = c->method == METHOD_RATING;
	const struct number *given = &cell->arm.reaction[arm_case].tilting;
	double arm = GRAVITY * known(&cell->arm.mass),
	       payload = GRAVITY * known(&cell->arm.payload);
	double stretched = arm * known(&cell->arm.reach) +
	                   payload * known(&cell->arm.payload_reach);
	double sheet = arm_case == ARM_REST ? 0 : known(given);
	if (arm_case != ARM_REST)
		trace_input(trace, "M_sheet", given, DIM_MOMENT,
		            "tilting moment of the data sheet");
	if (!without)
		return trace_step(trace, "M", "k_moving * M_sheet", factors.moving * sheet,
		                  DIM_MOMENT, "tilting moment read as with the weight moment", "");
	trace_weights(cell, trace);
	trace_input(trace, "r_arm", &cell->arm.reach, DIM_LENGTH,
	            "reach of the arm's centre of mass");
	trace_input(trace, "r_payload", &cell->arm.payload_reach, DIM_LENGTH,
	            "reach of the payload");
	trace_step(trace, "M_weight", "W_arm * r_arm + W_payload * r_payload", stretched,
	           DIM_MOMENT, "weight moment of the stretched arm", "");
	if (arm_case == ARM_REST)
		return trace_step(trace, "M", service ? "M_weight" : "k_own * M_weight",
		                  factors.own * stretched, DIM_MOMENT, "arm at rest", "");
	return trace_step(trace, "M",
	                  service ? "k_moving * M_sheet + M_weight"
	                          : "k_moving * M_sheet + k_own * M_weight",
	                  factors.moving * sheet + factors.own * stretched, DIM_MOMENT,
	                  "tilting moment read as without the weight moment", "");
}

void trace_horizontal(const struct cell *cell, enum arm_case arm_case, const struct load_case *c,
                      struct trace *trace)
{
	struct run_factors factors = case_factors(cell, c);
	const struct reaction *reaction = &cell->arm.reaction[arm_case];
	if (arm_case == ARM_REST) {
		trace_step(trace, "H", "", 0, DIM_FORCE, "arm at rest", "");
		return;
	}
	trace_step(trace, "k_moving", "", factors.moving, DIM_FACTOR,
	           factor_sources(c).moving, "factor on the moving part");
	trace_input(trace, "H_sheet", &reaction->horizontal, DIM_FORCE,
	            "horizontal force of the data sheet");
	trace_input(trace, "T_sheet", &reaction->twisting, DIM_MOMENT,
	            "twisting moment of the data sheet");
	trace_step(trace, "H", "k_moving * H_sheet", factors.moving * known(&reaction->horizontal),
	           DIM_FORCE, "", "");
	trace_step(trace, "T", "k_moving * T_sheet", factors.moving * known(&reaction->twisting),
	           DIM_MOMENT, "", "");
}

struct wrench arm_wrench(const struct cell *cell, enum arm_case arm_case,
                         const struct load_case *c, struct weight_reading reading,
                         struct trace *trace)
{
	struct run_factors factors = case_factors(cell, c);
	struct factor_sources source = factor_sources(c);
	const struct reaction *reaction = &cell->arm.reaction[arm_case];
	struct wrench out = {0};
	trace_step(trace, "k_weight", "", factors.weight, DIM_FACTOR, source.weight,
	           "factor on weights");
	trace_step(trace, "k_moving", "", factors.moving, DIM_FACTOR, source.moving,
	           "factor on the moving part");
	if (c->method != METHOD_RATING)
		trace_step(trace, "k_own", "", factors.own, DIM_FACTOR, source.own,
		           "factor on the arm's own weight where it presses or tilts");
	out.down = vertical_force(cell, arm_case, c, reading.vertical_without, trace);
	out.tilting = tilting_moment(cell, arm_case, c,
	                             reading.tilting_without || arm_case == ARM_REST, trace);
	if (arm_case == ARM_REST)
		return out;
	out.horizontal = factors.moving * known(&reaction->horizontal);
	out.twisting = factors.moving * known(&reaction->twisting);
	trace_horizontal(cell, arm_case, c, trace);
	return out;
}
