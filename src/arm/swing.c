#include "swing.h"

#include <math.h>

#define MM_PER_M 1000.0
enum { PITCH_STEPS = 360 };      /* of the quarter circle, see the header for what that gives */

/* --- what cannot be ------------------------------------------------------------------------- */

static bool is_size(double value)
{
	return isfinite(value) && value >= 0;
}

static const char *ramp_fault(const struct swing_ramp *ramp)
{
	if (!is_size(ramp->time) || !is_size(ramp->acceleration))
		return "time and acceleration of a ramp must be zero or positive";
	if (ramp->time == 0 && ramp->acceleration == 0)
		return "a moving axis needs the time or the mean acceleration of its ramp";
	if (ramp->time > 0 && ramp->acceleration > 0)
		return "a ramp takes its time or its mean acceleration, not both";
	if (!(ramp->peak >= 1 && ramp->peak <= 2))
		return "the peak factor of a ramp lies between 1 (uniform) and 2 (triangle)";
	return NULL;
}

static const struct swing_ramp *ramp_of(const struct swing_axis *axis, enum arm_case arm_case)
{
	return arm_case == ARM_EMERGENCY_STOP ? &axis->stop : &axis->normal;
}

static const char *axis_fault(const struct swing_axis *axis, enum arm_case arm_case)
{
	if (!isfinite(axis->speed) || axis->speed <= 0)
		return "the largest speed of a moving axis must be positive";
	return ramp_fault(ramp_of(axis, arm_case));
}

static const char *mass_fault(const struct swing *swing)
{
	if (!is_size(swing->fixed_mass) || !is_size(swing->moving_mass) ||
	    !is_size(swing->payload_mass))
		return "masses must be zero or positive";
	if (swing->moving_mass + swing->payload_mass <= 0)
		return "some mass must move: give the moving mass of the arm or the payload";
	if (!is_size(swing->moving_radius) || !is_size(swing->payload_radius))
		return "radii must be zero or positive";
	if ((swing->moving_mass > 0 && swing->moving_radius <= 0) ||
	    (swing->payload_mass > 0 && swing->payload_radius <= 0))
		return "a moving mass needs its radius; the full reach is the safe value";
	if (!is_size(swing->axis_height))
		return "the height of the horizontal axis above the mounting face must be zero or "
		       "positive";
	return NULL;
}

const char *swing_fault(const struct swing *swing, enum swing_axes axes, enum arm_case arm_case)
{
	const char *fault = mass_fault(swing);
	if (!fault && arm_case != ARM_NORMAL && arm_case != ARM_EMERGENCY_STOP)
		fault = "an arm at rest has no ramp: ask for normal motion or the emergency stop";
	if (!fault && axes != SWING_ABOUT_HORIZONTAL)
		fault = axis_fault(&swing->vertical, arm_case);
	if (!fault && axes != SWING_ABOUT_VERTICAL)
		fault = axis_fault(&swing->horizontal, arm_case);
	return fault;
}

/* --- forces and couples of one instant ------------------------------------------------------ */

/* Inertia forces [N] and couples [N mm] at full lever; index 1: vertical axis, 2: horizontal. */
struct inertia {
	double first, second;                   /* S1 [kg mm], S2 [kg mm2] */
	double height;                          /* of the horizontal axis [mm] */
	double speed[3], acceleration[3];       /* [rad/s], [rad/s2] */
	double pull[3], push[3];                /* S1 w^2, S1 b [N] */
	double pull_couple1;                    /* S2 w1^2 [N mm] */
	double push_couple[3];                  /* S2 b [N mm] */
	double cross, cross_couple;             /* Coriolis: 2 S1 w1 w2, 2 S2 w1 w2 */
};

static void trace_masses(const struct swing *swing, struct trace *trace)
{
	trace_step(trace, "g0", "", STANDARD_GRAVITY, DIM_FACTOR,
	           "NIST SP 811 B.8, standard acceleration of free fall, m/s2", "");
	trace_step(trace, "m_fixed", "", swing->fixed_mass, DIM_MASS, "input",
	           "mass of the arm without lever");
	trace_step(trace, "m_moving", "", swing->moving_mass, DIM_MASS, "input",
	           "moving mass of the arm");
	trace_step(trace, "r_moving", "", swing->moving_radius, DIM_LENGTH, "input", "its radius");
	trace_step(trace, "m_payload", "", swing->payload_mass, DIM_MASS, "input",
	           "gripper and work piece");
	trace_step(trace, "r_payload", "", swing->payload_radius, DIM_LENGTH, "input",
	           "its radius");
	trace_step(trace, "h_axis", "", swing->axis_height, DIM_LENGTH, "input",
	           "horizontal axis above the mounting face");
}

/* Speed and peak acceleration of axis k (1 or 2) where it moves; 0 else. */
static void axis_motion(const struct swing_axis *axis, enum arm_case arm_case, int k,
                        struct inertia *out, struct trace *trace)
{
	static const char *const speed[] = {"", "w_1", "w_2"}, *const peak[] = {"", "k_1", "k_2"},
				 *const time[] = {"", "t_1", "t_2"},
				 *const mean[] = {"", "b_mean1", "b_mean2"},
				 *const rate[] = {"", "b_1", "b_2"};
	const struct swing_ramp *ramp = ramp_of(axis, arm_case);
	trace_step(trace, speed[k], "", axis->speed, DIM_FACTOR, "input, rad/s",
	           k == 1 ? "speed about the vertical axis" : "speed about the horizontal axis");
	trace_step(trace, peak[k], "", ramp->peak, DIM_FACTOR, "input",
	           "largest over mean acceleration of the ramp");
	out->speed[k] = axis->speed;
	if (ramp->time > 0) {
		/* the average of a measured stop, times what its shape makes of it */
		out->acceleration[k] = ramp->peak * axis->speed / ramp->time;
		trace_step(trace, time[k], "", ramp->time, DIM_TIME, "input", "time of the ramp");
		trace_step(trace, rate[k], k == 1 ? "k_1 * w_1 / t_1" : "k_2 * w_2 / t_2",
		           out->acceleration[k], DIM_FACTOR, "rad/s2", "peak acceleration");
		return;
	}
	out->acceleration[k] = ramp->peak * ramp->acceleration;
	trace_step(trace, mean[k], "", ramp->acceleration, DIM_FACTOR, "input, rad/s2",
	           "mean acceleration of the ramp");
	trace_step(trace, rate[k], k == 1 ? "k_1 * b_mean1" : "k_2 * b_mean2",
	           out->acceleration[k], DIM_FACTOR, "rad/s2", "peak acceleration");
}

static void masses_of(const struct swing *swing, struct inertia *out, struct trace *trace)
{
	double m = swing->moving_mass, r = swing->moving_radius, payload = swing->payload_mass,
	       reach = swing->payload_radius;
	trace_masses(swing, trace);
	out->first = m * r + payload * reach;
	out->second = m * r * r + payload * reach * reach;
	out->height = swing->axis_height;
	trace_step(trace, "S_1", "m_moving * r_moving + m_payload * r_payload", out->first,
	           DIM_FACTOR, "kg mm", "first moment of the moving masses");
	trace_step(trace, "S_2", "m_moving * r_moving^2 + m_payload * r_payload^2", out->second,
	           DIM_FACTOR, "kg mm2", "second moment of the moving masses");
}

/* One axis: centrifugal and tangential force, and the couple of the latter. kg mm/s2 is mN. */
static void axis_forces(int k, struct inertia *it, struct trace *trace)
{
	double w = it->speed[k], b = it->acceleration[k];
	it->pull[k] = it->first * w * w / MM_PER_M;
	it->push[k] = it->first * b / MM_PER_M;
	it->push_couple[k] = it->second * b / MM_PER_M;
	trace_step(trace, k == 1 ? "F_c1" : "F_c2",
	           k == 1 ? "S_1 * w_1^2 / 1000" : "S_1 * w_2^2 / 1000", it->pull[k], DIM_FORCE, "",
	           "centrifugal force");
	trace_step(trace, k == 1 ? "F_t1" : "F_t2",
	           k == 1 ? "S_1 * b_1 / 1000" : "S_1 * b_2 / 1000", it->push[k], DIM_FORCE, "",
	           "tangential force");
	trace_step(trace, k == 1 ? "C_t1" : "C_t2",
	           k == 1 ? "S_2 * b_1 / 1000" : "S_2 * b_2 / 1000", it->push_couple[k], DIM_MOMENT,
	           "", "its moment about the axis");
}

/* What needs the vertical axis in motion, alone or with the other. */
static void cross_forces(struct inertia *it, enum swing_axes axes, struct trace *trace)
{
	double w1 = it->speed[1], w2 = it->speed[2];
	it->pull_couple1 = it->second * w1 * w1 / MM_PER_M;
	it->cross = 2 * it->first * w1 * w2 / MM_PER_M;
	it->cross_couple = 2 * it->second * w1 * w2 / MM_PER_M;
	if (axes != SWING_ABOUT_HORIZONTAL)
		trace_step(trace, "C_c1", "S_2 * w_1^2 / 1000", it->pull_couple1, DIM_MOMENT, "",
		           "centrifugal force times radius");
	if (axes != SWING_ABOUT_BOTH)
		return;
	trace_step(trace, "F_k", "2 * S_1 * w_1 * w_2 / 1000", it->cross, DIM_FORCE, "",
	           "Coriolis force of both axes");
	trace_step(trace, "C_k", "2 * S_2 * w_1 * w_2 / 1000", it->cross_couple, DIM_MOMENT, "",
	           "Coriolis force times radius");
}

static void inertia_of(const struct swing *swing, enum swing_axes axes, enum arm_case arm_case,
                       struct inertia *it, struct trace *trace)
{
	*it = (struct inertia){0};
	masses_of(swing, it, trace);
	if (axes != SWING_ABOUT_HORIZONTAL) {
		axis_motion(&swing->vertical, arm_case, 1, it, trace);
		axis_forces(1, it, trace);
	}
	if (axes != SWING_ABOUT_VERTICAL) {
		axis_motion(&swing->horizontal, arm_case, 2, it, trace);
		axis_forces(2, it, trace);
	}
	cross_forces(it, axes, trace);
}

/* --- the largest of each kind --------------------------------------------------------------- */

static void vertical_forces(const struct swing *swing, const struct inertia *it,
                            enum swing_axes axes, struct swing_reaction *out, struct trace *trace)
{
	bool pitching = axes != SWING_ABOUT_VERTICAL;
	double mass = swing->fixed_mass + swing->moving_mass + swing->payload_mass;
	out->weight = trace_step(trace, "W_swing", "g0 * (m_fixed + m_moving + m_payload)",
	                         STANDARD_GRAVITY * mass, DIM_FORCE, "", "weight of all masses");
	/* somewhere on the circle the whole inertia force of the horizontal axis is vertical */
	out->vertical_moving = trace_step(trace, "V_moving",
	                                  pitching ? "sqrt(F_c2^2 + F_t2^2)" : "",
	                                  hypot(it->pull[2], it->push[2]), DIM_FORCE,
	                                  pitching ? "" : "the pitch is still", "moving part");
	out->down = trace_step(trace, "V_down", "W_swing + V_moving",
	                       out->weight + out->vertical_moving, DIM_FORCE, "",
	                       "largest vertical force");
	out->up = trace_step(trace, "V_up", "V_moving - W_swing",
	                     out->vertical_moving - out->weight, DIM_FORCE, "",
	                     "uplift, negative: none");
}

/* Largest |u cos p + v sin p|: the larger half axis of the ellipse that u and v span. */
static double largest_of_ellipse(double ux, double uy, double vx, double vy)
{
	double uu = ux * ux + uy * uy, vv = vx * vx + vy * vy, uv = ux * vx + uy * vy;
	return sqrt((uu + vv + sqrt((uu - vv) * (uu - vv) + 4 * uv * uv)) / 2);
}

static void horizontal_force(const struct inertia *it, enum swing_axes axes,
                             struct swing_reaction *out, struct trace *trace)
{
	static const char *const alone[] = {"sqrt(F_c1^2 + F_t1^2)", "sqrt(F_c2^2 + F_t2^2)"};
	if (axes != SWING_ABOUT_BOTH) {
		int k = axes == SWING_ABOUT_VERTICAL ? 1 : 2;
		out->horizontal = trace_step(trace, "H_swing", alone[k - 1],
		                             hypot(it->pull[k], it->push[k]), DIM_FORCE,
		                             "own derivation", "largest horizontal force");
		return;
	}
	/* level, the arm throws outward what both axes pull; upright, it throws sideways what the
	 * second axis brakes and the Coriolis force takes; between, the two mix as on an ellipse */
	double pull = it->pull[1] + it->pull[2];
	double uu = pull * pull + it->push[1] * it->push[1];
	double vv = it->push[2] * it->push[2] + it->cross * it->cross;
	trace_step(trace, "Q_u", "(F_c1 + F_c2)^2 + F_t1^2", uu, DIM_FACTOR, "N2",
	           "square of the force, arm level");
	trace_step(trace, "Q_v", "F_t2^2 + F_k^2", vv, DIM_FACTOR, "N2",
	           "square of the level force, arm upright");
	trace_step(trace, "Q_uv", "(F_c1 + F_c2) * F_t2 + F_t1 * F_k",
	           pull * it->push[2] + it->push[1] * it->cross, DIM_FACTOR, "N2",
	           "their product, every sign the worse one");
	out->horizontal = trace_step(
		trace, "H_swing", "sqrt((Q_u + Q_v + sqrt((Q_u - Q_v)^2 + 4 * Q_uv^2)) / 2)",
		largest_of_ellipse(pull, it->push[1], it->push[2], it->cross), DIM_FORCE,
		"own derivation: larger half axis of an ellipse", "largest horizontal force");
}

static void twisting_moment(const struct inertia *it, enum swing_axes axes,
                            struct swing_reaction *out, struct trace *trace)
{
	/* C_t1 cos^2 p + C_k cos p sin p, largest over p */
	double value = (it->push_couple[1] + hypot(it->push_couple[1], it->cross_couple)) / 2;
	const char *expression = axes == SWING_ABOUT_BOTH
	                                 ? "(C_t1 + sqrt(C_t1^2 + C_k^2)) / 2"
	                         : axes == SWING_ABOUT_VERTICAL ? "C_t1"
	                                                        : "";
	out->twisting = trace_step(trace, "T_swing", expression, value, DIM_MOMENT,
	                           axes == SWING_ABOUT_HORIZONTAL ? "no motion about the vertical"
	                                                          : "own derivation",
	                           "largest twisting moment");
}

/* Tilting with the sine of the pitch s in [0, 1], every sign the worse one: along the arm's plane,
 * and across it. A negative sine or cosine only takes from the sums. */
static double tilting_at(const struct inertia *it, double s, double *along, double *across)
{
	double c = sqrt((1 - s) * (1 + s)), h = it->height;
	double level = STANDARD_GRAVITY * it->first + h * (it->pull[1] + it->pull[2]);
	*along = it->push_couple[2] + level * c + h * it->push[2] * s + it->pull_couple1 * s * c;
	*across = h * (it->push[1] * c + it->cross * s) + it->push_couple[1] * s * c +
	          it->cross_couple * s * s;
	return hypot(*along, *across);
}

static double tilting_at_pitch(const struct inertia *it, double pitch)
{
	double along, across;
	return tilting_at(it, sin(pitch), &along, &across);
}

/* Golden-section search between two grid points around the best one. */
static double refine_pitch(const struct inertia *it, double low, double high)
{
	const double golden = (sqrt(5) - 1) / 2;
	double a = high - golden * (high - low), b = low + golden * (high - low);
	double at_a = tilting_at_pitch(it, a), at_b = tilting_at_pitch(it, b);
	for (int i = 0; i < 60; i++) {
		if (at_a >= at_b) {
			high = b;
			b = a;
			at_b = at_a;
			a = high - golden * (high - low);
			at_a = tilting_at_pitch(it, a);
		} else {
			low = a;
			a = b;
			at_a = at_b;
			b = low + golden * (high - low);
			at_b = tilting_at_pitch(it, b);
		}
	}
	/* the peak is flat: the pitch is good to half the digits, the moment to all of them */
	return at_a >= at_b ? a : b;
}

static double worst_pitch(const struct inertia *it)
{
	const double step = acos(0) / PITCH_STEPS;
	double most = -1;
	int best = 0;
	for (int i = 0; i <= PITCH_STEPS; i++) {
		double value = tilting_at_pitch(it, i * step);
		if (value > most) {
			most = value;
			best = i;
		}
	}
	double low = best > 0 ? (best - 1) * step : 0,
	       high = (best < PITCH_STEPS ? best + 1 : best) * step,
	       refined = refine_pitch(it, low, high);
	/* never below the grid, whatever the search met */
	return tilting_at_pitch(it, refined) >= most ? refined : best * step;
}

static void trace_search(enum swing_axes axes, double s, double along, double across,
                         struct trace *trace)
{
	bool both = axes == SWING_ABOUT_BOTH;
	trace_step(trace, "s_pitch", "", s, DIM_FACTOR, "search over all pitch angles",
	           "sine of the pitch with the largest tilting");
	trace_step(trace, "c_pitch", "sqrt((1 - s_pitch) * (1 + s_pitch))",
	           sqrt((1 - s) * (1 + s)), DIM_FACTOR, "", "its cosine");
	trace_step(trace, "M_along",
	           both ? "C_t2 + (g0 * S_1 + h_axis * (F_c1 + F_c2)) * c_pitch + h_axis * F_t2 * "
	                  "s_pitch + C_c1 * s_pitch * c_pitch"
	                : "(g0 * S_1 + h_axis * F_c1) * c_pitch + C_c1 * s_pitch * c_pitch",
	           along, DIM_MOMENT, "own derivation", "in the arm's plane");
	trace_step(trace, "M_across",
	           both ? "h_axis * (F_t1 * c_pitch + F_k * s_pitch) + C_t1 * s_pitch * c_pitch + "
	                  "C_k * s_pitch^2"
	                : "h_axis * F_t1 * c_pitch + C_t1 * s_pitch * c_pitch",
	           across, DIM_MOMENT, "own derivation", "across it");
	trace_step(trace, "M_swing", "sqrt(M_along^2 + M_across^2)", hypot(along, across),
	           DIM_MOMENT, "", "largest tilting moment");
}

static void tilting_moment(const struct inertia *it, enum swing_axes axes,
                           struct swing_reaction *out, struct trace *trace)
{
	double weight = STANDARD_GRAVITY * it->first;
	out->weight_tilting = trace_step(trace, "M_weight", "g0 * S_1", weight, DIM_MOMENT, "",
	                                 "weight moment of the level arm");
	if (axes == SWING_ABOUT_HORIZONTAL) {
		/* the braking couple of the axis is there at any pitch; what is left turns with it
		 */
		double level = weight + it->height * it->pull[2],
		       upright = it->height * it->push[2];
		out->tilting_pitch = atan2(upright, level);
		out->tilting = trace_step(
			trace, "M_swing",
			"C_t2 + sqrt((M_weight + h_axis * F_c2)^2 + (h_axis * F_t2)^2)",
			it->push_couple[2] + hypot(level, upright), DIM_MOMENT, "own derivation",
			"largest tilting moment");
		return;
	}
	out->tilting_pitch = worst_pitch(it);
	/* by the sine, as the written calculation has no trigonometric functions */
	double s = sin(out->tilting_pitch), along, across;
	out->tilting = tilting_at(it, s, &along, &across);
	trace_search(axes, s, along, across, trace);
}

void swing_reactions(const struct swing *swing, enum swing_axes axes, enum arm_case arm_case,
                     struct swing_reaction *out, struct trace *trace)
{
	struct inertia it;
	*out = (struct swing_reaction){0};
	inertia_of(swing, axes, arm_case, &it, trace);
	vertical_forces(swing, &it, axes, out, trace);
	horizontal_force(&it, axes, out, trace);
	tilting_moment(&it, axes, out, trace);
	twisting_moment(&it, axes, out, trace);
}

struct swing swing_at_reach(const struct swing *swing, double reach)
{
	struct swing out = *swing;
	out.moving_radius = out.payload_radius = reach;
	return out;
}
