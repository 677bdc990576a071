/* The lumped arm: closed forms of one mass, the kinematics of a rigid body over all pitch angles
 * and signs by another route, and what must not lower a result. */
#include "../../src/arm/swing.h"
#include "../support/random_base.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;
static const double gravity = 9.80665;

static void near(double value, double expected, double tolerance, const char *what)
{
	cr_assert(fabs(value - expected) <= tolerance * (fabs(expected) + 1e-9),
	          "%s: %.15g, expected %.15g", what, value, expected);
}

/* 20 kg at 1.2 m, axis 0.4 m up, 2 rad/s and 3 rad/s, stops of 0.25 s and 0.2 s (invented). */
static struct swing one_mass(void)
{
	return (struct swing){.moving_mass = 20,
	                      .moving_radius = 1200,
	                      .axis_height = 400,
	                      .vertical = {2, {0.5, 0, 1}, {0.25, 0, 1.5}},
	                      .horizontal = {3, {0, 6, 1}, {0.2, 0, 1.5}}};
}

/* --- closed forms of one mass: H = m s, V = m (g +- s), T = m at R ... in m, N m ------------ */

Test(swing, horizontal_axis_closed_form)
{
	struct swing swing = one_mass();
	struct swing_reaction r;
	double m = 20, R = 1.2, h = 0.4, at = 1.5 * 3 / 0.2 * R, ac = 9 * R,
	       s = sqrt(at * at + ac * ac);
	swing_reactions(&swing, SWING_ABOUT_HORIZONTAL, ARM_EMERGENCY_STOP, &r, NULL);
	near(r.horizontal, m * s, 1e-14, "horizontal");
	near(r.down, m * (gravity + s), 1e-14, "down");
	near(r.up, m * (s - gravity), 1e-14, "up");
	near(r.tilting / 1e3,
	     m * (at * R + sqrt(pow(gravity * R + ac * h, 2) + pow(at * h, 2))), 1e-14, "tilting");
	cr_assert_eq(r.twisting, 0);
	near(r.weight_tilting / 1e3, m * gravity * R, 1e-14, "weight moment");
}

Test(swing, vertical_axis_closed_form)
{
	struct swing swing = one_mass();
	struct swing_reaction r;
	double m = 20, R = 1.2, h = 0.4, at = 1.5 * 2 / 0.25 * R, ac = 4 * R;
	swing_reactions(&swing, SWING_ABOUT_VERTICAL, ARM_EMERGENCY_STOP, &r, NULL);
	near(r.horizontal, m * sqrt(at * at + ac * ac), 1e-14, "horizontal");
	near(r.twisting / 1e3, m * at * R, 1e-14, "twisting");
	near(r.down, m * gravity, 1e-14, "down");
	near(r.up, -m * gravity, 1e-14, "up");
	/* the level arm is not the worst: a raised one has more height for what it loses in radius
	 */
	double level = m * sqrt(pow(gravity * R + ac * h, 2) + pow(at * h, 2));
	cr_assert_gt(r.tilting / 1e3, level);
	cr_assert_gt(r.tilting_pitch, 0);
	cr_assert_lt(r.tilting_pitch, pi / 2);
}

/* Slow and without a stop the weight moment of the level arm is all that tilts. */
Test(swing, slow_limit)
{
	struct swing swing = one_mass();
	struct swing_reaction r;
	swing.vertical = (struct swing_axis){1e-6, {0, 1e-9, 1}, {0, 1e-9, 1}};
	swing_reactions(&swing, SWING_ABOUT_VERTICAL, ARM_NORMAL, &r, NULL);
	near(r.tilting, 20 * gravity * 1200, 1e-9, "tilting");
	/* flat about its largest value: half the digits of the pitch are left */
	cr_assert_lt(r.tilting_pitch, 1e-6);
}

/* Mass without lever adds weight alone. */
Test(swing, fixed_mass)
{
	struct swing swing = one_mass();
	struct swing_reaction without, with;
	swing_reactions(&swing, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP, &without, NULL);
	swing.fixed_mass = 35;
	swing_reactions(&swing, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP, &with, NULL);
	near(with.down, without.down + 35 * gravity, 1e-14, "down");
	near(with.up, without.up - 35 * gravity, 1e-14, "up");
	cr_assert_eq(with.tilting, without.tilting);
	cr_assert_eq(with.horizontal, without.horizontal);
	cr_assert_eq(with.twisting, without.twisting);
}

/* The ramp of normal motion and of the stop are different; a mean rate is w/t, the peak scales. */
Test(swing, ramps)
{
	struct swing swing = one_mass();
	struct swing_reaction normal, stop, rate;
	swing_reactions(&swing, SWING_ABOUT_VERTICAL, ARM_NORMAL, &normal, NULL);
	swing_reactions(&swing, SWING_ABOUT_VERTICAL, ARM_EMERGENCY_STOP, &stop, NULL);
	near(normal.twisting, 20 * 1.2 * 1.2 * 2 / 0.5 * 1e3, 1e-14, "normal");
	near(stop.twisting, 3 * normal.twisting, 1e-14, "half the time, 1.5 times the mean");
	swing.vertical.stop = (struct swing_ramp){0, 2 / 0.25, 1.5};
	swing_reactions(&swing, SWING_ABOUT_VERTICAL, ARM_EMERGENCY_STOP, &rate, NULL);
	near(rate.twisting, stop.twisting, 1e-15, "rate");
	near(rate.tilting, stop.tilting, 1e-15, "rate");
}

/* --- another route: a rigid body about a fixed point, a = al x r + w x (w x r) -------------- */

struct vec3 { double x, y, z; };

static struct vec3 cross(struct vec3 a, struct vec3 b)
{
	return (struct vec3){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

static struct vec3 sum(struct vec3 a, struct vec3 b)
{
	return (struct vec3){a.x + b.x, a.y + b.y, a.z + b.z};
}

static struct vec3 times(double k, struct vec3 a)
{
	return (struct vec3){k * a.x, k * a.y, k * a.z};
}

struct motion { double w[2], b[2]; };      /* vertical and horizontal axis [rad/s], [rad/s2] */

/* Force and moment on the face of one mass at `radius`, arm in the x z plane, m, N, N m. */
static void add_mass(double mass, double radius, double height, double pitch,
                     const struct motion *motion, struct vec3 *force, struct vec3 *moment)
{
	const struct vec3 up = {0, 0, 1}, side = {0, -1, 0};   /* a turn about it lifts the arm */
	struct vec3 r = {radius * cos(pitch), 0, radius * sin(pitch)};
	struct vec3 w = sum(times(motion->w[0], up), times(motion->w[1], side));
	struct vec3 al = sum(sum(times(motion->b[0], up), times(motion->b[1], side)),
	                     cross(times(motion->w[0], up), times(motion->w[1], side)));
	struct vec3 a = sum(cross(al, r), cross(w, cross(w, r)));
	struct vec3 f = times(-mass, sum(a, times(gravity, up)));
	*force = sum(*force, f);
	*moment = sum(*moment, cross(sum(r, times(height, up)), f));
}

static void take_larger(double *most, double value)
{
	*most = fmax(*most, value);
}

static void take_pose(const struct swing *swing, double pitch, const struct motion *motion,
                      struct swing_reaction *most)
{
	struct vec3 force = {0, 0, -gravity * swing->fixed_mass}, moment = {0, 0, 0};
	double height = swing->axis_height / 1e3;
	add_mass(swing->moving_mass, swing->moving_radius / 1e3, height, pitch, motion, &force,
	         &moment);
	add_mass(swing->payload_mass, swing->payload_radius / 1e3, height, pitch, motion, &force,
	         &moment);
	take_larger(&most->down, -force.z);
	take_larger(&most->up, force.z);
	take_larger(&most->horizontal, hypot(force.x, force.y));
	take_larger(&most->tilting, 1e3 * hypot(moment.x, moment.y));
	take_larger(&most->twisting, 1e3 * fabs(moment.z));
}

static double peak_of(const struct swing_axis *axis, enum arm_case arm_case)
{
	const struct swing_ramp *ramp = arm_case == ARM_NORMAL ? &axis->normal : &axis->stop;
	return ramp->peak * (ramp->time > 0 ? axis->speed / ramp->time : ramp->acceleration);
}

/* The largest of each kind over a full circle of pitch angles and all signs. */
static struct swing_reaction search(const struct swing *swing, enum swing_axes axes,
                                    enum arm_case arm_case, int steps)
{
	struct swing_reaction most = {.down = -HUGE_VAL, .up = -HUGE_VAL};
	bool first = axes != SWING_ABOUT_HORIZONTAL, second = axes != SWING_ABOUT_VERTICAL;
	for (int signs = 0; signs < 16; signs++) {
		struct motion motion = {
			{(signs & 1 ? 1 : -1) * first * swing->vertical.speed,
			 (signs & 2 ? 1 : -1) * second * swing->horizontal.speed},
			{(signs & 4 ? 1 : -1) * first * peak_of(&swing->vertical, arm_case),
			 (signs & 8 ? 1 : -1) * second * peak_of(&swing->horizontal, arm_case)}};
		for (int i = 0; i < steps; i++)
			take_pose(swing, 2 * pi * i / steps, &motion, &most);
	}
	return most;
}

static struct swing random_swing(struct dice *dice)
{
	struct swing swing = {.fixed_mass = dice_whole(dice, 0, 1) * dice_between(dice, 0, 200),
	                      .moving_mass = dice_decades(dice, 0, 2.7),
	                      .moving_radius = dice_between(dice, 100, 1500),
	                      .payload_mass = dice_whole(dice, 0, 1) * dice_between(dice, 0, 100),
	                      .payload_radius = dice_between(dice, 200, 3000),
	                      .axis_height = dice_whole(dice, 0, 3) * dice_between(dice, 0, 700)};
	struct swing_axis *axis[2] = {&swing.vertical, &swing.horizontal};
	for (int k = 0; k < 2; k++) {
		double peak = dice_between(dice, 1, 2);
		axis[k]->speed = dice_decades(dice, -1.5, 1);
		axis[k]->normal = (struct swing_ramp){0, dice_decades(dice, -1, 1.5), 1};
		axis[k]->stop = (struct swing_ramp){dice_decades(dice, -1.3, 0.5), 0, peak};
	}
	return swing;
}

/* `found` is a search with that many steps: never above, and below by no more than half a step's
 * worth of a second-degree trigonometric polynomial (its square for the resultants is of degree 4).
 */
static void compare(const struct swing_reaction *r, const struct swing_reaction *found, int steps,
                    const char *where)
{
	double slack = 8 * pow(pi / steps, 2), round = 1e-12;
	const double value[] = {r->down + r->weight, r->up + r->weight, r->horizontal, r->tilting,
	                        r->twisting},
	             most[] = {found->down + r->weight, found->up + r->weight, found->horizontal,
	                       found->tilting, found->twisting};
	static const char *const kind[] = {"down", "up", "horizontal", "tilting", "twisting"};
	for (int k = 0; k < 5; k++) {
		cr_assert_geq(value[k], most[k] - round * (most[k] + r->weight),
		              "%s, %s: %.15g below the search's %.15g", where, kind[k], value[k],
		              most[k]);
		cr_assert_leq(value[k], most[k] * (1 + slack) + round * r->weight,
		              "%s, %s: %.15g far above the search's %.15g", where, kind[k],
		              value[k], most[k]);
	}
}

Test(swing, against_rigid_body)
{
	enum { STEPS = 1440 };
	static const char *const where[] = {"vertical axis", "horizontal axis", "both axes"};
	for (uint64_t number = 0; number < 200; number++) {
		struct dice dice = dice_open(31, number);
		struct swing swing = random_swing(&dice);
		enum swing_axes axes = (enum swing_axes)(number % 3);
		enum arm_case arm_case = number % 2 ? ARM_NORMAL : ARM_EMERGENCY_STOP;
		struct swing_reaction r, found = search(&swing, axes, arm_case, STEPS);
		cr_assert_null(swing_fault(&swing, axes, arm_case));
		swing_reactions(&swing, axes, arm_case, &r, NULL);
		compare(&r, &found, STEPS, where[axes]);
	}
}

/* A slow turntable under a fast swing tilts most either nearly level, by the weight, or upright, by
 * the Coriolis force 2 w1 w2 r: two peaks, of which now one and now the other is the higher. */
Test(swing, two_peaks)
{
	enum { STEPS = 2880 };
	int level = 0, upright = 0;
	for (int i = 0; i < 20; i++) {
		struct swing swing = {.moving_mass = 10, .moving_radius = 1000};
		struct swing_reaction r, found;
		swing.vertical = (struct swing_axis){1, {0, 0.01, 1}, {0, 0.01, 1}};
		swing.horizontal = (struct swing_axis){4.5 + 0.05 * i, {0, 0.01, 1}, {0, 0.01, 1}};
		swing_reactions(&swing, SWING_ABOUT_BOTH, ARM_NORMAL, &r, NULL);
		found = search(&swing, SWING_ABOUT_BOTH, ARM_NORMAL, STEPS);
		compare(&r, &found, STEPS, "two peaks");
		level += r.tilting_pitch < pi / 8;
		upright += r.tilting_pitch > 3 * pi / 8;
	}
	cr_assert(level > 2 && upright > 2 && level + upright == 20);
}

/* The pitch that is said to tilt the most does so in the other route too. */
Test(swing, pitch_of_the_most)
{
	for (uint64_t number = 0; number < 300; number++) {
		struct dice dice = dice_open(37, number);
		struct swing swing = random_swing(&dice);
		struct swing_reaction r, at = {.down = -HUGE_VAL, .up = -HUGE_VAL};
		swing_reactions(&swing, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP, &r, NULL);
		for (int signs = 0; signs < 16; signs++) {
			struct motion motion = {
				{(signs & 1 ? 1 : -1) * swing.vertical.speed,
				 (signs & 2 ? 1 : -1) * swing.horizontal.speed},
				{(signs & 4 ? 1 : -1) * peak_of(&swing.vertical, ARM_EMERGENCY_STOP),
				 (signs & 8 ? 1 : -1) *
				         peak_of(&swing.horizontal, ARM_EMERGENCY_STOP)}};
			take_pose(&swing, r.tilting_pitch, &motion, &at);
		}
		near(at.tilting, r.tilting, 1e-12, "tilting");
	}
}

/* --- what must not lower a result ----------------------------------------------------------- */

static void not_below(const struct swing_reaction *larger, const struct swing_reaction *smaller,
                      const char *what)
{
	double round = 1 - 1e-12;
	cr_assert_geq(larger->vertical_moving, smaller->vertical_moving * round, "%s", what);
	cr_assert_geq(larger->horizontal, smaller->horizontal * round, "%s", what);
	cr_assert_geq(larger->tilting, smaller->tilting * round, "%s", what);
	cr_assert_geq(larger->twisting, smaller->twisting * round, "%s", what);
	cr_assert_geq(larger->up, smaller->up - 1e-12 * (smaller->weight + larger->down), "%s",
	              what);
}

Test(swing, both_axes_bound_each)
{
	for (uint64_t number = 0; number < 300; number++) {
		struct dice dice = dice_open(41, number);
		struct swing swing = random_swing(&dice);
		struct swing_reaction one, two, both;
		swing_reactions(&swing, SWING_ABOUT_VERTICAL, ARM_EMERGENCY_STOP, &one, NULL);
		swing_reactions(&swing, SWING_ABOUT_HORIZONTAL, ARM_EMERGENCY_STOP, &two, NULL);
		swing_reactions(&swing, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP, &both, NULL);
		not_below(&both, &one, "vertical axis");
		not_below(&both, &two, "horizontal axis");
		/* and the sum of the parts with the Coriolis force 2 m v1 v2/R bounds it */
		double coriolis = 2 *
		                  (swing.moving_mass * swing.moving_radius +
		                   swing.payload_mass * swing.payload_radius) *
		                  swing.vertical.speed * swing.horizontal.speed / 1e3;
		cr_assert_leq(both.horizontal,
		              (one.horizontal + two.horizontal + coriolis) * (1 + 1e-12));
	}
}

Test(swing, full_reach_bounds_every_radius)
{
	for (uint64_t number = 0; number < 300; number++) {
		struct dice dice = dice_open(43, number);
		struct swing swing = random_swing(&dice);
		struct swing stretched = swing_at_reach(&swing, 3000);
		enum swing_axes axes = (enum swing_axes)(number % 3);
		struct swing_reaction near_in, far_out;
		swing_reactions(&swing, axes, ARM_EMERGENCY_STOP, &near_in, NULL);
		swing_reactions(&stretched, axes, ARM_EMERGENCY_STOP, &far_out, NULL);
		not_below(&far_out, &near_in, "reach");
	}
}

/* Every reaction is proportional to the masses; the uplift is linear in the payload. */
Test(swing, linear_in_mass)
{
	struct swing swing = one_mass(), twice = swing;
	struct swing_reaction r, r2, none, half;
	swing.payload_mass = 10;
	swing.payload_radius = 1500;
	twice = swing;
	twice.moving_mass *= 2;
	twice.payload_mass *= 2;
	swing_reactions(&swing, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP, &r, NULL);
	swing_reactions(&twice, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP, &r2, NULL);
	near(r2.tilting, 2 * r.tilting, 1e-14, "tilting");
	near(r2.horizontal, 2 * r.horizontal, 1e-14, "horizontal");
	near(r2.down, 2 * r.down, 1e-14, "down");
	swing.payload_mass = 0;
	swing_reactions(&swing, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP, &none, NULL);
	swing.payload_mass = 5;
	swing_reactions(&swing, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP, &half, NULL);
	near(half.up, (none.up + r.up) / 2, 1e-13, "uplift");
}

/* --- the written calculation and the faults ------------------------------------------------- */

Test(swing, written_calculation)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	for (uint64_t number = 0; number < 120; number++) {
		struct dice dice = dice_open(47, number);
		struct swing swing = random_swing(&dice);
		enum swing_axes axes = (enum swing_axes)(number % 3);
		enum arm_case arm_case = number % 2 ? ARM_NORMAL : ARM_EMERGENCY_STOP;
		struct trace trace;
		struct swing_reaction plain, traced;
		trace_open(&trace, &arena);
		swing_reactions(&swing, axes, arm_case, &traced, &trace);
		swing_reactions(&swing, axes, arm_case, &plain, NULL);
		cr_assert_eq(memcmp(&plain, &traced, sizeof plain), 0);
		cr_assert_geq(traced_expressions(&trace, "swing"), 10);
		cr_assert_eq(traced_value(&trace, "M_swing"), plain.tilting);
		cr_assert_eq(traced_value(&trace, "H_swing"), plain.horizontal);
		cr_assert_eq(traced_value(&trace, "T_swing"), plain.twisting);
		cr_assert_eq(traced_value(&trace, "V_down"), plain.down);
		cr_assert_eq(traced_value(&trace, "V_up"), plain.up);
	}
	arena_close(&arena);
}

static void at_fault(const struct swing *swing, enum swing_axes axes, enum arm_case arm_case,
                     const char *words)
{
	const char *fault = swing_fault(swing, axes, arm_case);
	cr_assert_not_null(fault, "nothing found of: %s", words);
	cr_assert_not_null(strstr(fault, words), "'%s' does not say: %s", fault, words);
}

Test(swing, faults)
{
	struct swing good = one_mass(), bad;
	cr_assert_null(swing_fault(&good, SWING_ABOUT_BOTH, ARM_NORMAL));
	cr_assert_null(swing_fault(&good, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP));
	at_fault(&good, SWING_ABOUT_BOTH, ARM_REST, "at rest");
	bad = good;
	bad.fixed_mass = -1;
	at_fault(&bad, SWING_ABOUT_BOTH, ARM_NORMAL, "masses");
	bad = good;
	bad.moving_mass = 0;
	at_fault(&bad, SWING_ABOUT_BOTH, ARM_NORMAL, "must move");
	bad = good;
	bad.moving_radius = 0;
	at_fault(&bad, SWING_ABOUT_BOTH, ARM_NORMAL, "radius");
	bad = good;
	bad.payload_radius = NAN;
	at_fault(&bad, SWING_ABOUT_BOTH, ARM_NORMAL, "radii");
	bad = good;
	bad.axis_height = -1;
	at_fault(&bad, SWING_ABOUT_BOTH, ARM_NORMAL, "height");
	bad = good;
	bad.vertical.speed = 0;
	at_fault(&bad, SWING_ABOUT_BOTH, ARM_NORMAL, "speed");
	cr_assert_null(swing_fault(&bad, SWING_ABOUT_HORIZONTAL, ARM_NORMAL));
	/* a missing stop is never taken from the normal ramp */
	bad = good;
	bad.horizontal.stop = (struct swing_ramp){0, 0, 1};
	cr_assert_null(swing_fault(&bad, SWING_ABOUT_BOTH, ARM_NORMAL));
	at_fault(&bad, SWING_ABOUT_BOTH, ARM_EMERGENCY_STOP, "needs the time");
	bad = good;
	bad.vertical.stop.acceleration = 3;
	at_fault(&bad, SWING_ABOUT_VERTICAL, ARM_EMERGENCY_STOP, "not both");
	bad = good;
	bad.vertical.stop.peak = 0.9;
	at_fault(&bad, SWING_ABOUT_VERTICAL, ARM_EMERGENCY_STOP, "peak factor");
	bad = good;
	bad.vertical.stop.time = -1;
	at_fault(&bad, SWING_ABOUT_VERTICAL, ARM_EMERGENCY_STOP, "zero or positive");
}
