#include "set_wrench.h"

#include "factors.h"
#include <math.h>

/* `weight`: on the arm's own weight in the vertical force. */
static struct run_factors arm_factors(const struct cell *cell, const struct load_case *c)
{
	struct run_factors k = case_factors(cell, c);
	if (c->vertical == VERTICAL_MOST)
		k.weight = k.own;
	return k;
}

struct set_wrench set_wrench(const struct cell *cell, const struct arm_load *load,
                             const struct load_case *c)
{
	struct run_factors k = arm_factors(cell, c);
	double height = cell->arm.mount.at[2], moment[2];
	struct set_wrench out;
	out.down = k.weight * load->weight - k.moving * (load->force[2] + load->weight);
	for (int i = 0; i < 2; i++) {
		moment[i] = k.own * load->weight_moment[i] +
		            k.moving * (load->moment[i] - load->weight_moment[i]);
		out.force[i] = k.moving * load->force[i];
	}
	/* sum of N x = My, sum of N y = -Mx (base.h); a force at a height tips toward its heading
	 */
	out.first[0] = moment[1] + height * out.force[0];
	out.first[1] = -moment[0] + height * out.force[1];
	out.twist = k.moving * load->moment[2];
	return out;
}

static double size_of(const double v[2])
{
	return sqrt(v[0] * v[0] + v[1] * v[1]);
}

static double heading_of(const double v[2])
{
	return v[0] == 0 && v[1] == 0 ? 0 : atan2(v[1], v[0]);
}

void add_set_wrench(const struct cell *cell, const struct arm_load *load, struct load_case *c)
{
	struct set_wrench w = set_wrench(cell, load, c);
	const double *mount = cell->arm.mount.at;
	c->arm_load = load;
	c->down += w.down;
	c->fixed[0] += w.down * mount[0];
	c->fixed[1] += w.down * mount[1];
	if (!(load->spin_to > load->spin_from)) {
		c->moved[0] = w.down;
		for (int k = 0; k < 2; k++) {
			c->fixed[k] += w.first[k];
			c->moved[k + 1] = w.first[k] + w.down * mount[k];
		}
		c->fixed_shear[0] += w.force[0];
		c->fixed_shear[1] += w.force[1];
		c->fixed_shear[2] += w.twist + mount[0] * w.force[1] - mount[1] * w.force[0];
		return;
	}
	double tilt = size_of(w.first) > 0 ? heading_of(w.first) : heading_of(w.force);
	c->turning += size_of(w.first);
	c->spin_from = tilt + load->spin_from;
	c->spin_to = tilt + load->spin_to;
	if (size_of(w.force) > 0 || w.twist != 0)
		c->turning_force[c->turning_count++] = (struct turning_force){
			.force = size_of(w.force),
			.lead = size_of(w.force) > 0 ? heading_of(w.force) - tilt : 0,
			.at = {mount[0], mount[1]},
			.twist = w.twist,
			.one_sign = true};
}

/* --- trace
 * ---------------------------------------------------------------------------------------------- */

static void trace_factors(const struct cell *cell, const struct load_case *c, struct trace *trace)
{
	struct run_factors k = arm_factors(cell, c);
	struct factor_sources source = factor_sources(c);
	trace_step(trace, "k_arm", "", k.weight, DIM_FACTOR,
	           c->vertical == VERTICAL_MOST ? source.own : source.weight,
	           "factor on the arm's own weight");
	trace_step(trace, "k_moving", "", k.moving, DIM_FACTOR, source.moving,
	           "factor on the moving part");
	if (c->method != METHOD_RATING)
		trace_step(trace, "k_own", "", k.own, DIM_FACTOR, source.own,
		           "factor on the moment of the arm's own weight");
}

void trace_set_horizontal(const struct cell *cell, const struct load_case *c, struct trace *trace)
{
	static const char *const force[] = {"F_x_arm", "F_y_arm"}, *const part[] = {"H_x", "H_y"},
		*const of[] = {"k_moving * F_x_arm", "k_moving * F_y_arm"};
	const struct arm_load *load = c->arm_load;
	struct set_wrench w = set_wrench(cell, load, c);
	trace_factors(cell, c, trace);
	for (int i = 0; i < 2; i++) {
		trace_step(trace, force[i], "", load->force[i], DIM_FORCE, c->name,
		           "of the arm on its mounting face");
		trace_step(trace, part[i], of[i], w.force[i], DIM_FORCE, "", "");
	}
	trace_step(trace, "M_z_arm", "", load->moment[2], DIM_MOMENT, c->name,
	           "about the vertical through the mounting point");
	trace_step(trace, "T", "k_moving * M_z_arm", w.twist, DIM_MOMENT, "", "");
	trace_step(trace, "H", "sqrt(H_x * H_x + H_y * H_y)", size_of(w.force), DIM_FORCE, "", "");
}

void trace_set_wrench(const struct cell *cell, const struct load_case *c, struct trace *trace)
{
	const struct arm_load *load = c->arm_load;
	struct set_wrench w = set_wrench(cell, load, c);
	trace_set_horizontal(cell, c, trace);
	trace_step(trace, "F_z_arm", "", load->force[2], DIM_FORCE, c->name,
	           "upward, of the arm on its mounting face");
	trace_step(trace, "W_arm", "", load->weight, DIM_FORCE, "weight of all that weighs in it",
	           "");
	trace_step(trace, "V", "k_arm * W_arm - k_moving * (F_z_arm + W_arm)", w.down, DIM_FORCE,
	           "", "vertical force, downward");
	struct number z = {cell->arm.mount.given, cell->arm.mount.at[2], NULL};
	trace_input(trace, "z_mount", &z, DIM_LENGTH, "mounting face");
	trace_step(trace, "M_x_arm", "", load->moment[0], DIM_MOMENT, c->name,
	           "about the mounting point");
	trace_step(trace, "M_y_arm", "", load->moment[1], DIM_MOMENT, c->name, "");
	bool service = c->method == METHOD_RATING;
	trace_step(trace, "M_x_weight", "", load->weight_moment[0], DIM_MOMENT,
	           service ? "part of it that is weight, full size in every run"
	                   : "part of it that is weight", "");
	trace_step(trace, "M_y_weight", "", load->weight_moment[1], DIM_MOMENT, "", "");
	trace_step(trace, "S_x_arm",
	           service ? "M_y_weight + k_moving * (M_y_arm - M_y_weight) + z_mount * H_x"
	                   : "k_own * M_y_weight + k_moving * (M_y_arm - M_y_weight) + "
	                     "z_mount * H_x", w.first[0],
	           DIM_MOMENT, "sum of N x = My at floor level", "");
	/* written as it is computed, so that the digits agree */
	trace_step(trace, "S_y_arm",
	           service ? "-(M_x_weight + k_moving * (M_x_arm - M_x_weight)) + z_mount * H_y"
	                   : "-(k_own * M_x_weight + k_moving * (M_x_arm - M_x_weight)) + "
	                     "z_mount * H_y", w.first[1],
	           DIM_MOMENT, "sum of N y = -Mx at floor level", "");
	trace_step(trace, "S_arm", "sqrt(S_x_arm * S_x_arm + S_y_arm * S_y_arm)", size_of(w.first),
	           DIM_MOMENT, "", "");
}
