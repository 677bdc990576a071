/* The arm's loads through the cell file: closed forms of one mass on two axes, mountings as the
 * whole problem turned, what turns and what does not, payload and empty gripper, bounds, the lumped
 * arm by hand, histories, cycles, gaps and faults. All arms are invented. */
#include "../../src/arm/arm_of_cell.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { SOME_FILE = 9, TEXT_ROOM = 8192 };

static const double pi = 3.14159265358979323846, gravity = 9.80665;

/* Joint 1 upright, joint 2 about a level axis 0.3 m up, 2 kg at 0.5 m on it, a foot of 10 kg; 3 kg
 * more at the same place are the payload. */
#define BODY \
	"  chain:\n" \
	"    convention: frames\n" \
	"    joints:\n" \
	"      - {name: turn, position: [0 mm, 0 mm, 0 mm], mass: 0 kg}\n" \
	"      - {name: lift, position: [0 mm, 0 mm, 300 mm], roll: -90 deg, mass: 2 kg,\n" \
	"         centre: [500 mm, 0 mm, 0 mm], inertia: {xx: 0 kg m2,\n" \
	"         yy: 0 kg m2, zz: 0 kg m2}}\n" \
	"    fixed_mass: 10 kg\n"
#define PAYLOAD \
	"    payload: {mass: 3 kg, centre: [500 mm, 0 mm, 0 mm], inertia: {xx: 0 kg m2, yy: 0 kg " \
	"m2, zz: 0 kg m2}}\n"
#define HEAD "standfast: 1\nanchors: {at: unknown}\narm:\n  mount: [0 mm, 0 mm, 0 mm]\n"
#define NO_PAYLOAD "  weight: {arm: 12 kg, payload: 0 kg}\n"
#define LOADED "  weight: {arm: 12 kg, payload: 3 kg}\n"
#define TURN \
	"      - {from: -180 deg, to: 180 deg, speed: 2 rad/s, acceleration: 6 rad/s2,\n" \
	"         stop_time: 0.25 s}\n"
#define LEVEL "      - {from: 0 deg, to: 0 deg}\n"
#define ALL_ROUND \
	"      - {from: -180 deg, to: 180 deg, speed: 1 rad/s, acceleration: 4 rad/s2,\n" \
	"         stop: 5 rad/s2}\n"
#define MOTION "  motion:\n    peak_factor: 1.5\n    joints:\n"

/* A file that was read, its arena and its arm's loads. */
struct built { struct reading reading; struct arm_loads loads; };

static void open_with(struct built *built, const struct history_files *files, const char *yaml)
{
	reading_open(&built->reading, yaml);
	cr_assert_eq(built->reading.status, DONE, "%s", reading_faults(&built->reading));
	enum status status = arm_loads_build(built->reading.cell, files, NULL,
	                                     &built->reading.arena, &built->loads);
	cr_assert_eq(status, DONE);
}

static void open_built(struct built *built, const char *yaml)
{
	open_with(built, NULL, yaml);
}

static void close_built(struct built *built)
{
	reading_close(&built->reading);
}

static const struct arm_source *source(const struct built *built, enum arm_way way,
                                       enum arm_case arm_case)
{
	for (size_t i = 0; i < built->loads.count; i++)
		if (built->loads.list[i].way == way && built->loads.list[i].arm_case == arm_case)
			return &built->loads.list[i];
	return NULL;
}

static void near(const char *what, double value, double wanted, double tolerance)
{
	cr_expect(fabs(value - wanted) <= tolerance * (1 + fabs(wanted)), "%s: %.12g, not %.12g",
	          what, value, wanted);
}

/* The text with its one `what` replaced. */
static const char *replaced(const char *text, const char *what, const char *by)
{
	static char out[2][TEXT_ROOM];
	static int turn;
	const char *at = strstr(text, what);
	char *into = out[turn ^= 1];
	cr_assert(at != NULL, "no '%s' in the text", what);
	int length = snprintf(into, TEXT_ROOM, "%.*s%s%s", (int)(at - text), text, by,
	                      at + strlen(what));
	cr_assert(length < TEXT_ROOM);
	return into;
}

/* --- closed forms (loads of a point mass on a level arm, own derivation) --------------------- */

static const char turning[] = HEAD NO_PAYLOAD BODY MOTION TURN LEVEL;

static void expect_turning(const struct arm_source *source, double a)
{
	double m = 2, r = 0.5, h = 0.3, out = m * r * 4, across = m * r * a, weight = 12 * gravity;
	const struct arm_extreme *x = source->extreme;
	near("horizontal", x[REACTION_HORIZONTAL].value, hypot(out, across), 1e-9);
	near("tilting", x[REACTION_TILTING].value,
	     1e3 * hypot(m * gravity * r + h * out, h * across), 1e-9);
	near("twisting", x[REACTION_TWISTING].value, 1e3 * r * across, 1e-9);
	near("downforce", x[REACTION_DOWNFORCE].value, weight, 1e-9);
	near("uplift", x[REACTION_UPLIFT].value, -weight, 1e-9);
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		const struct arm_load *load = &x[kind].load;
		cr_expect(x[kind].bound >= x[kind].value);
		cr_expect(!x[kind].empty_gripper && x[kind].at != NULL);
		near("weight", load->weight, weight, 1e-12);
		near("force", load->force[2], -weight, 1e-12);
		near("weight moment", hypot(load->weight_moment[0], load->weight_moment[1]),
		     1e3 * m * gravity * r, 1e-12);
		cr_expect(load->spin_from == 0 && load->spin_to == 2 * pi);
	}
}

Test(arm_loads, level_arm_in_normal_motion)
{
	struct built built;
	open_built(&built, turning);
	const struct arm_source *normal = source(&built, WAY_CHAIN, ARM_NORMAL);
	expect_turning(normal, 6);
	cr_expect_str_eq(normal->name, "normal motion, chain");
	cr_expect_eq(normal->joints, 2);
	near("weight of the arm", built.loads.weight, 12 * gravity, 1e-12);
	close_built(&built);
}

Test(arm_loads, level_arm_in_a_stop_given_by_its_time)
{
	struct built built;
	open_built(&built, turning);
	expect_turning(source(&built, WAY_CHAIN, ARM_EMERGENCY_STOP), 1.5 * 2 / 0.25);
	close_built(&built);
}

/* Emergency stop, normal motion, rest; nothing moves at rest. */
Test(arm_loads, cases_in_their_order)
{
	struct built built;
	open_built(&built, turning);
	cr_assert_eq(built.loads.count, 3);
	cr_expect_eq(built.loads.list[0].arm_case, ARM_EMERGENCY_STOP);
	cr_expect_eq(built.loads.list[1].arm_case, ARM_NORMAL);
	const struct arm_source *rest = &built.loads.list[2];
	cr_expect_eq(rest->arm_case, ARM_REST);
	near("horizontal", rest->extreme[REACTION_HORIZONTAL].value, 0, 1e-9);
	near("tilting", rest->extreme[REACTION_TILTING].value, 1e3 * 2 * gravity * 0.5, 1e-9);
	close_built(&built);
}

/* At rest the lever of the weight is of degree 1 in each joint: the bound has three quarters
 * of 16 poses, is no more than 1 / cos(pi / 12) above the level arm, and never below it. */
Test(arm_loads, bound_at_rest)
{
	static const char yaml[] = HEAD NO_PAYLOAD BODY MOTION TURN ALL_ROUND;
	struct built built;
	open_built(&built, yaml);
	const struct arm_extreme *x =
		&source(&built, WAY_CHAIN, ARM_REST)->extreme[REACTION_TILTING];
	double level = 1e3 * 2 * gravity * 0.5;
	near("tilting", x->value, level, 1e-9);
	cr_expect(x->bound >= level && x->bound <= level / cos(pi / 12) * (1 + 1e-9));
	close_built(&built);
}

/* Joint 2 alone, all round: V = m (g +- s), loads of a point on a circle. */
Test(arm_loads, payload_and_empty_gripper)
{
	static const char yaml[] = HEAD LOADED BODY PAYLOAD MOTION
		"      - {from: 0 deg, to: 0 deg}\n" ALL_ROUND;
	struct built built;
	open_built(&built, yaml);
	const struct arm_extreme *x = source(&built, WAY_CHAIN, ARM_EMERGENCY_STOP)->extreme;
	double s = hypot(5 * 0.5, 1 * 0.5), arm = 12 * gravity;
	near("downforce", x[REACTION_DOWNFORCE].value, arm + 3 * gravity + 5 * s, 1e-9);
	cr_expect(!x[REACTION_DOWNFORCE].empty_gripper);
	near("weight", x[REACTION_DOWNFORCE].load.weight, arm + 3 * gravity, 1e-12);
	/* s < g: the payload presses more than it can lift */
	near("uplift", x[REACTION_UPLIFT].value, 2 * s - arm, 1e-9);
	cr_expect(x[REACTION_UPLIFT].empty_gripper);
	near("weight", x[REACTION_UPLIFT].load.weight, arm, 1e-12);
	near("force", x[REACTION_UPLIFT].load.force[2], 2 * s - arm, 1e-9);
	cr_expect(x[REACTION_UPLIFT].bound >= x[REACTION_UPLIFT].value);
	cr_expect_eq(x[REACTION_UPLIFT].load.spin_from, x[REACTION_UPLIFT].load.spin_to);
	close_built(&built);
}

/* Whether the set holds loads of that weight. */
static bool has_weight(const struct arm_load_set *set, double weight)
{
	for (size_t i = 0; i < set->count; i++)
		if (fabs(set->list[i].weight - weight) < 1e-9)
			return true;
	return false;
}

Test(arm_loads, swept_set_has_both_grippers)
{
	static const char yaml[] = HEAD LOADED BODY PAYLOAD MOTION TURN ALL_ROUND;
	struct built built;
	open_built(&built, yaml);
	const struct arm_load_set *swept = &source(&built, WAY_CHAIN, ARM_NORMAL)->swept;
	cr_expect(has_weight(swept, 12 * gravity) && has_weight(swept, 15 * gravity));
	close_built(&built);
}

/* --- a six-joint arm, standard DH (invented); two joints held, so that it is quick ----------- */

#define SIX_LINK(name, a, alpha, d, mass, x, y, z) \
	"      - {name: " name ", a: " a ", alpha: " alpha ", d: " d ", mass: " mass ",\n" \
	"         centre: [" x ", " y ", " z "],\n" \
	"         inertia: {xx: 0.2 kg m2, yy: 0.3 kg m2, zz: 0.25 kg m2, xy: 0.01 kg m2}}\n"
#define SIX_BODY \
	"  chain:\n    convention: standard_dh\n    joints:\n" SIX_LINK( \
		"j1", "80 mm", "-90 deg", "330 mm", "12 kg", "-40 mm", "90 mm", \
		"10 mm") SIX_LINK("j2", "440 mm", "0 deg", "0 mm", "9 kg", "-220 mm", "0 mm", \
	                          "60 mm") SIX_LINK("j3", "40 mm", "-90 deg", "0 mm", "6 kg", \
	                                            "-20 mm", "0 mm", "30 mm") \
		SIX_LINK("j4", "0 mm", "90 deg", "430 mm", "4 kg", "0 mm", "-120 mm", "5 mm") \
			SIX_LINK("j5", "0 mm", "-90 deg", "0 mm", "2 kg", "0 mm", "0 mm", "20 mm") \
				SIX_LINK("j6", "0 mm", "0 deg", "90 mm", "1 kg", "0 mm", "0 mm", \
	                                 "-20 mm") "    fixed_mass: 15 kg\n    payload: {centre: " \
	                                           "[0 mm, 20 mm, 120 mm], inertia: {xx: 0 kg m2, yy: 0 kg m2, zz: 0 kg m2}}\n"
#define SIX_JOINT(from, to, speed, stop) \
	"      - {from: " from ", to: " to ", speed: " speed ", acceleration: 300 deg/s2,\n" \
	"         stop: " stop "}\n"
#define SIX_MOTION(from, to) \
	"  motion:\n    poses: 4\n    bound_poses: 8\n    joints:\n" SIX_JOINT( \
		from, to, "150 deg/s", "900 deg/s2") SIX_JOINT("-100 deg", "60 deg", "130 deg/s", \
	                                                       "800 deg/s2") \
		SIX_JOINT("-80 deg", "150 deg", "150 deg/s", \
	                  "900 deg/s2") SIX_JOINT("20 deg", "20 deg", "250 deg/s", "1500 deg/s2") \
			SIX_JOINT("-110 deg", "110 deg", "250 deg/s", "1500 deg/s2") \
				SIX_JOINT("-35 deg", "-35 deg", "350 deg/s", "2000 deg/s2")
#define SIX_WEIGHT "  weight: {arm: 49 kg, payload: 5 kg}\n"

static const char six[] = HEAD SIX_WEIGHT SIX_BODY SIX_MOTION("-170 deg", "170 deg");

/* The wrench of one instant with the base frame's own axes: gravity turned back into them, no
 * mounting; then turned as a whole. Another route than arm_chain_of with its mounting. */
static void turned_wrench(const struct cell *cell, const struct arm_extreme *extreme,
                          const double axes[9], double force[3], double moment[3])
{
	struct chain chain;
	struct prepared_chain prepared;
	struct base_wrench w;
	double fixed;
	arm_chain_of(cell, !extreme->empty_gripper, &chain);
	memset(chain.mounting, 0, sizeof chain.mounting);
	for (int i = 0; i < 3; i++)
		chain.gravity[i] = -gravity * axes[6 + i];
	chain_prepare(&chain, &prepared);
	chain_wrench(&prepared, extreme->at->q, extreme->at->speed, extreme->at->acceleration, &w,
	             NULL);
	arm_fixed_mass(cell, &fixed);
	for (int i = 0; i < 3; i++) {
		force[i] = moment[i] = 0;
		for (int k = 0; k < 3; k++) {
			force[i] += axes[3 * i + k] * w.force[k];
			moment[i] += 1e3 * axes[3 * i + k] * w.moment[k];
		}
	}
	force[2] -= gravity * fixed;
}

static void expect_load(const struct arm_load *load, const double force[3], const double moment[3])
{
	for (int i = 0; i < 3; i++) {
		near("force", load->force[i], force[i], 1e-9);
		near("moment", load->moment[i], moment[i], 1e-9);
	}
}

static void expect_mounted(const char *mounting, const double axes[9])
{
	struct built built;
	double force[3], moment[3], found[9];
	open_built(&built, replaced(six, "  weight", mounting));
	const struct cell *cell = built.reading.cell;
	arm_mounting_axes(&cell->arm, found);
	for (int i = 0; i < 9; i++)
		near("mounting", found[i], axes[i], 1e-12);
	const struct arm_source *stop = source(&built, WAY_CHAIN, ARM_EMERGENCY_STOP);
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		const struct arm_extreme *x = &stop->extreme[kind];
		turned_wrench(cell, x, axes, force, moment);
		expect_load(&x->load, force, moment);
		cr_expect(x->bound >= x->value, "kind %d: %g above its bound %g", kind, x->value,
		          x->bound);
	}
	near("tilting is that of its load", stop->extreme[REACTION_TILTING].value,
	     hypot(stop->extreme[REACTION_TILTING].load.moment[0],
	           stop->extreme[REACTION_TILTING].load.moment[1]),
	     1e-9);
	near("downforce is that of its load", stop->extreme[REACTION_DOWNFORCE].value,
	     -stop->extreme[REACTION_DOWNFORCE].load.force[2], 1e-9);
	close_built(&built);
}

Test(arm_loads, standing)
{
	static const double axes[9] = {1, 0, 0, 0, 1, 0, 0, 0, 1};
	expect_mounted("  mounting: floor\n  weight", axes);
}

/* The face looks toward +y: base z is cell y, base y is cell -z ... turned by hand. */
Test(arm_loads, on_a_wall)
{
	static const double axes[9] = {1, 0, 0, 0, 0, 1, 0, -1, 0};
	expect_mounted("  mounting: wall\n  mounting_toward: 90 deg\n  weight", axes);
}

/* Half a turn about y. */
Test(arm_loads, on_a_ceiling)
{
	static const double axes[9] = {-1, 0, 0, 0, 1, 0, 0, 0, -1};
	expect_mounted("  mounting: ceiling\n  weight", axes);
}

/* Turned by 90 deg first, then leaning by 30 deg toward +x: base x is cell y. */
Test(arm_loads, tilted_and_turned)
{
	double c = sqrt(3) / 2, s = 0.5;
	const double axes[9] = {0, -c, s, 1, 0, 0, 0, s, c};
	expect_mounted("  mounting: tilted\n  mounting_tilt: 30 deg\n  mounting_toward: 0 deg\n"
	               "  turned: 90 deg\n  weight",
	               axes);
}

/* A ceiling arm is a floor arm whose gravity pulls the other way: what lifts there presses here. */
Test(arm_loads, ceiling_against_reversed_gravity)
{
	struct built built;
	struct chain chain;
	struct motion_limits limits;
	struct reaction_extremes other;
	open_built(&built, replaced(replaced(six, "  weight", "  mounting: ceiling\n  weight"),
	                            "payload: 5 kg", "payload: 0 kg"));
	const struct cell *cell = built.reading.cell;
	const struct arm_extreme *x = source(&built, WAY_CHAIN, ARM_NORMAL)->extreme;
	arm_chain_of(cell, false, &chain);
	arm_limits_of(cell, ARM_NORMAL, &limits);
	memset(chain.mounting, 0, sizeof chain.mounting);
	chain.gravity[2] = gravity;
	reaction_start(&other);
	reaction_sweep(&chain, &limits, 0, reaction_sweep_count(&chain, &limits), &other);
	reaction_refine(&chain, &limits, &other);
	double foot = 15 * gravity;
	/* the search climbs by other roundings: the same hill to a millionth */
	near("downforce", x[REACTION_DOWNFORCE].value, other.exact[REACTION_UPLIFT].value + foot,
	     1e-6);
	near("uplift", x[REACTION_UPLIFT].value, other.exact[REACTION_DOWNFORCE].value - foot,
	     1e-6);
	near("tilting", x[REACTION_TILTING].value, 1e3 * other.exact[REACTION_TILTING].value, 1e-6);
	close_built(&built);
}

/* --- what turns ------------------------------------------------------------------------------ */

/* The load of the chain at a pose like the extreme's but for joint 1. */
static void wrench_at(const struct cell *cell, const struct reaction_at *at, double q1,
                      double force[3], double moment[3])
{
	struct chain chain;
	struct prepared_chain prepared;
	struct base_wrench w;
	double q[MAX_JOINTS_OF_ARM], fixed;
	memcpy(q, at->q, sizeof q);
	q[0] = q1;
	arm_chain_of(cell, true, &chain);
	chain_prepare(&chain, &prepared);
	chain_wrench(&prepared, q, at->speed, at->acceleration, &w, NULL);
	arm_fixed_mass(cell, &fixed);
	for (int i = 0; i < 3; i++) {
		force[i] = w.force[i] - (i == 2 ? gravity * fixed : 0);
		moment[i] = 1e3 * w.moment[i];
	}
}

static struct arm_load spun(const struct arm_load *load, double by)
{
	struct arm_load out = *load;
	double c = cos(by), s = sin(by);
	out.force[0] = c * load->force[0] - s * load->force[1];
	out.force[1] = s * load->force[0] + c * load->force[1];
	out.moment[0] = c * load->moment[0] - s * load->moment[1];
	out.moment[1] = s * load->moment[0] + c * load->moment[1];
	return out;
}

/* Joint 1 from -30 to 100 deg. `down`: its axis points down, so that it turns the other way. */
static void expect_spin(const char *mounting, bool down)
{
	struct built built;
	double force[3], moment[3];
	open_built(&built,
	           replaced(replaced(replaced(six, "-170 deg", "-30 deg"), "170 deg", "100 deg"),
	                    "  weight", mounting));
	const struct arm_extreme *x =
		&source(&built, WAY_CHAIN, ARM_NORMAL)->extreme[REACTION_TILTING];
	double low = -30 * pi / 180, high = 100 * pi / 180;
	near("range", x->load.spin_to - x->load.spin_from, high - low, 1e-12);
	struct arm_load first = spun(&x->load, x->load.spin_from),
			last = spun(&x->load, x->load.spin_to);
	wrench_at(built.reading.cell, x->at, down ? high : low, force, moment);
	expect_load(&first, force, moment);
	wrench_at(built.reading.cell, x->at, down ? low : high, force, moment);
	expect_load(&last, force, moment);
	close_built(&built);
}

Test(arm_loads, spin_on_the_floor)
{
	expect_spin("  mounting: floor\n  weight", false);
}

Test(arm_loads, spin_on_the_ceiling)
{
	expect_spin("  mounting: ceiling\n  weight", true);
}

/* From half a turn on all headings count, and the set is complete. */
Test(arm_loads, wide_range_goes_all_round)
{
	struct built built;
	open_built(&built, six);
	const struct arm_source *normal = source(&built, WAY_CHAIN, ARM_NORMAL);
	cr_assert(normal->swept.count > 0);
	for (size_t i = 0; i < normal->swept.count; i++)
		cr_expect(normal->swept.list[i].spin_from == 0 &&
		          normal->swept.list[i].spin_to == 2 * pi);
	cr_expect(!normal->swept_cut && normal->swept_beyond <= 1e-8);
	close_built(&built);
}

Test(arm_loads, no_spin_on_a_wall)
{
	struct built built;
	open_built(&built, replaced(six, "  weight",
	                            "  mounting: wall\n  mounting_toward: 0 deg\n  weight"));
	const struct arm_source *normal = source(&built, WAY_CHAIN, ARM_NORMAL);
	for (size_t i = 0; i < normal->swept.count; i++)
		cr_expect_eq(normal->swept.list[i].spin_from, normal->swept.list[i].spin_to);
	/* the bounds hold for every heading, so they are taken in every one */
	for (size_t i = 0; i < normal->bound.count; i++)
		near("spin", normal->bound.list[i].spin_to, 2 * pi, 1e-15);
	close_built(&built);
}

/* --- bounds at once -------------------------------------------------------------------------- */

/* No swept wrench is worse in any kind, at the face and, with force and moment aligned, at any
 * height below it. */
Test(arm_loads, bound_set_covers_the_swept_set)
{
	struct built built;
	open_built(&built, six);
	const struct arm_source *stop = source(&built, WAY_CHAIN, ARM_EMERGENCY_STOP);
	const struct arm_load *b = stop->bound.list;
	cr_assert_eq(stop->bound.count, 4);
	cr_assert(stop->swept.count > 0);
	for (int height = 0; height <= 2000; height += 500)
		for (size_t i = 0; i < stop->swept.count; i++) {
			const struct arm_load *l = &stop->swept.list[i];
			cr_expect(hypot(l->moment[1] + height * l->force[0],
			                -l->moment[0] + height * l->force[1]) <=
			          b->moment[1] + height * b->force[0]);
			cr_expect(hypot(l->force[0], l->force[1]) <= b->force[0]);
			cr_expect(-l->force[2] <= -b[0].force[2] && -l->force[2] >= -b[2].force[2]);
			cr_expect(fabs(l->moment[2]) <= b->moment[2]);
		}
	cr_expect_eq(b[1].moment[2], -b[0].moment[2]);
	near("weight", b[0].weight, 54 * gravity, 1e-12);
	close_built(&built);
}

/* --- the lumped arm -------------------------------------------------------------------------- */

#define SWING \
	"  swing: {axes: vertical, moving_mass: 20 kg, radius: 600 mm, payload_radius: 1200 mm,\n" \
	"    axis_height: 400 mm, peak_factor: 1.5,\n" \
	"    vertical_axis: {speed: 2 rad/s, start_time: 0.5 s, stop: 8 rad/s2}}\n"

/* Two masses, 20 kg at 0.6 m and 5 kg at 1.2 m, 30 kg of foot; 1.5 x 8 rad/s2, by the sums of m r
 * and m r2 (loads of a level arm about an upright axis, own derivation). Level is not the worst
 * pitch of the tilting: that is only asked to be no less. */
Test(arm_loads, swing_by_hand)
{
	struct built built;
	open_built(&built, HEAD "  weight: {arm: 50 kg, payload: 5 kg}\n" SWING);
	const struct arm_source *stop = source(&built, WAY_SWING, ARM_EMERGENCY_STOP);
	double s1 = 20 * 0.6 + 5 * 1.2, s2 = 20 * 0.36 + 5 * 1.44, a = 12, w2 = 4, h = 0.4;
	cr_assert(stop != NULL);
	cr_expect_str_eq(stop->name, "emergency stop, swing");
	near("horizontal", stop->extreme[REACTION_HORIZONTAL].value, s1 * hypot(a, w2), 1e-12);
	near("twisting", stop->extreme[REACTION_TWISTING].value, 1e3 * s2 * a, 1e-12);
	near("downforce", stop->extreme[REACTION_DOWNFORCE].value, 55 * gravity, 1e-12);
	near("uplift", stop->extreme[REACTION_UPLIFT].value, -50 * gravity, 1e-12);
	cr_expect(stop->extreme[REACTION_TILTING].value >=
	          1e3 * hypot(s1 * gravity + h * s1 * w2, h * s1 * a) * (1 - 1e-12));
	cr_expect_eq(stop->extreme[REACTION_TILTING].bound, HUGE_VAL);
	cr_assert_eq(stop->swept.count, 4);
	cr_expect_eq(stop->bound.count, 0);
	near("least vertical", stop->swept.list[2].force[2], -50 * gravity, 1e-12);
	near("weight", stop->swept.list[2].weight, 55 * gravity, 1e-12);
	near("normal motion by its time",
	     source(&built, WAY_SWING, ARM_NORMAL)->extreme[REACTION_TWISTING].value,
	     1e3 * s2 * 1.5 * 2 / 0.5, 1e-12);
	cr_expect_null(source(&built, WAY_SWING, ARM_REST));
	close_built(&built);
}

/* All of the arm at full reach where nothing better is known. */
Test(arm_loads, swing_falls_back_to_the_reach)
{
	struct built built;
	open_built(&built, replaced(HEAD "  weight: {arm: 50 kg, payload: 5 kg}\n" SWING,
	                            "moving_mass: 20 kg, radius: 600 mm, payload_radius: 1200 mm",
	                            "reach: 1200 mm"));
	near("twisting",
	     source(&built, WAY_SWING, ARM_EMERGENCY_STOP)->extreme[REACTION_TWISTING].value,
	     1e3 * 55 * 1.44 * 12, 1e-12);
	close_built(&built);
}

/* --- histories ------------------------------------------------------------------------------- */

static const char rows[] = "t [s], Fx [N], Fy [N], Fz [N], Mx [N m], My [N m], Mz [N m]\n"
			   "0, 1, 2, 3, 4, 5, 6\n"
			   "1, 10, -20, -300, 7, 8, 9\n"
			   "2, 50, 5, -100, -1, 2, -40\n";
static const struct history_file file_list[] = {{"stop.csv", rows, sizeof rows - 1, SOME_FILE, ""}};
static const struct history_files files = {file_list, 1};

#define HISTORY "  turned: 0 deg\n  history: [{file: stop.csv, of: emergency_stop}]\n"
#define WALL "  mounting: wall\n  mounting_toward: 0 deg\n"

/* Base z is cell x, base x is cell -z: by hand. */
Test(arm_loads, row_of_a_history_on_a_wall)
{
	struct built built;
	struct arm_load load;
	const struct base_wrench wrench = {{1, 2, 3}, {4, 5, 6}};
	open_with(&built, &files, HEAD "  weight: {arm: 30 kg, payload: 2 kg}\n" WALL HISTORY);
	arm_load_of_row(built.reading.cell, &wrench, &load);
	expect_load(&load, (const double[]){3, 2, -1}, (const double[]){6000, 5000, -4000});
	near("weight", load.weight, 32 * gravity, 1e-12);
	cr_expect(load.weight_moment[0] == 0 && load.weight_moment[1] == 0);
	cr_expect(load.spin_from == 0 && load.spin_to == 0);
	close_built(&built);
}

static void expect_extreme(const struct arm_extreme *extreme, double value, unsigned row)
{
	near("value", extreme->value, value, 1e-12);
	cr_expect_eq(extreme->row, row);
	near("time", extreme->time, row - 1.0, 1e-15);
}

Test(arm_loads, largest_of_a_history)
{
	struct built built;
	open_with(&built, &files, HEAD NO_PAYLOAD HISTORY);
	const struct arm_source *stop = source(&built, WAY_HISTORY, ARM_EMERGENCY_STOP);
	cr_assert(stop != NULL);
	cr_expect_str_eq(stop->name, "emergency stop, stop.csv");
	cr_expect_eq(stop->summary.rows, 3);
	cr_expect_eq(stop->swept.count, 0);
	expect_extreme(&stop->extreme[REACTION_TILTING], 1e3 * hypot(7, 8), 2);
	expect_extreme(&stop->extreme[REACTION_HORIZONTAL], hypot(50, 5), 3);
	expect_extreme(&stop->extreme[REACTION_UPLIFT], 3, 1);
	expect_extreme(&stop->extreme[REACTION_DOWNFORCE], 300, 2);
	expect_extreme(&stop->extreme[REACTION_TWISTING], 40e3, 3);
	expect_load(&stop->extreme[REACTION_TWISTING].load, (const double[]){50, 5, -100},
	            (const double[]){-1000, 2000, -40e3});
	cr_assert_eq(stop->bound.count, 4);
	expect_load(&stop->bound.list[3], (const double[]){hypot(50, 5), 0, 3},
	            (const double[]){0, 1e3 * hypot(7, 8), -40e3});
	close_built(&built);
}

/* Each kind is that of the cell's vertical: here base x points down. */
Test(arm_loads, largest_of_a_history_on_a_wall)
{
	struct built built;
	open_with(&built, &files, HEAD NO_PAYLOAD WALL HISTORY);
	const struct arm_extreme *x = source(&built, WAY_HISTORY, ARM_EMERGENCY_STOP)->extreme;
	expect_extreme(&x[REACTION_DOWNFORCE], 50, 3);
	expect_extreme(&x[REACTION_UPLIFT], -1, 1);
	expect_extreme(&x[REACTION_HORIZONTAL], hypot(20, 300), 2);
	expect_extreme(&x[REACTION_TILTING], 1e3 * hypot(2, 40), 3);
	expect_extreme(&x[REACTION_TWISTING], 7e3, 2);
	close_built(&built);
}

Test(arm_loads, turned_history_keeps_its_values)
{
	struct built built;
	open_with(&built, &files, replaced(HEAD NO_PAYLOAD HISTORY, "turned: 0", "turned: 90"));
	const struct arm_extreme *x = source(&built, WAY_HISTORY, ARM_EMERGENCY_STOP)->extreme;
	expect_extreme(&x[REACTION_HORIZONTAL], hypot(50, 5), 3);
	expect_load(&x[REACTION_HORIZONTAL].load, (const double[]){-5, 50, -100},
	            (const double[]){-2000, -1000, -40e3});
	close_built(&built);
}

/* --- setups that share their arm ------------------------------------------------------------- */

static bool same_load(const struct arm_load *a, const struct arm_load *b)
{
	return memcmp(a->force, b->force, sizeof a->force) == 0 &&
	       memcmp(a->moment, b->moment, sizeof a->moment) == 0 && a->weight == b->weight &&
	       a->spin_from == b->spin_from && a->spin_to == b->spin_to;
}

static void expect_same(const struct arm_loads *a, const struct arm_loads *b)
{
	cr_assert_eq(a->count, b->count);
	for (size_t i = 0; i < a->count; i++) {
		const struct arm_source *x = &a->list[i], *y = &b->list[i];
		cr_expect_str_eq(x->name, y->name);
		for (int kind = 0; kind < REACTION_KINDS; kind++)
			cr_expect(x->extreme[kind].value == y->extreme[kind].value &&
			          x->extreme[kind].bound == y->extreme[kind].bound);
		cr_assert_eq(x->swept.count, y->swept.count);
		for (size_t k = 0; k < x->swept.count; k++)
			cr_expect(same_load(&x->swept.list[k], &y->swept.list[k]));
		cr_expect_eq(x->history, y->history);
	}
}

#define TWO_SETUPS \
	"setups:\n  - {name: here, arm.mount: [50 mm, 0 mm, 0 mm]}\n" \
	"  - {name: high, arm.mount: [0 mm, 100 mm, 900 mm]}\n" \
	"  - {name: heavy, arm.weight.payload: 7 kg}\n"

/* From the first setup or from nothing: the same bytes. */
Test(arm_loads, built_like_another)
{
	struct built built;
	struct arm_loads high, again;
	static char yaml[TEXT_ROOM];
	snprintf(yaml, sizeof yaml, "%s" SWING HISTORY TWO_SETUPS, six);
	open_with(&built, &files, yaml);
	const struct setup *setup = built.reading.cell->setups.rows;
	const struct cell *first = setup[0].cell, *other = setup[1].cell;
	cr_expect(arm_loads_alike(first, other));
	cr_expect(!arm_loads_same(first, other));
	cr_expect(arm_loads_same(first, first));
	cr_expect(!arm_loads_alike(first, setup[2].cell));
	cr_assert_eq(arm_loads_build(other, &files, NULL, &built.reading.arena, &again), DONE);
	cr_assert_eq(arm_loads_build_like(other, &built.loads, built.reading.cell, &files, NULL,
	                                  &built.reading.arena, &high),
	             DONE);
	cr_assert(high.count >= 6);
	expect_same(&again, &high);
	close_built(&built);
}

/* The work is cut in pieces that may run in any order: here the last first. */
static void backwards(void *user, const char *what, size_t count, piece_of_work *piece, void *job)
{
	size_t *calls = user;
	cr_expect(what[0] != 0);
	for (size_t i = count; i-- > 0;)
		piece(job, i);
	*calls += count;
}

Test(arm_loads, pieces_in_any_order)
{
	struct built built;
	struct arm_loads other;
	size_t calls = 0;
	const struct pieces pieces = {backwards, &calls};
	open_built(&built, six);
	cr_assert_eq(
		arm_loads_build(built.reading.cell, NULL, &pieces, &built.reading.arena, &other),
		DONE);
	cr_expect(calls > 0);
	expect_same(&built.loads, &other);
	close_built(&built);
}

/* --- cycles ---------------------------------------------------------------------------------- */

#define RAISED \
	"      - {from: -90 deg, to: 0 deg, speed: 2 rad/s, acceleration: 6 rad/s2,\n" \
	"         stop: 9 rad/s2}\n"
#define CYCLE \
	"    cycle:\n" \
	"      - {at: 0 s, angles: [0 deg, 0 deg]}\n" \
	"      - {at: 0.8 s, angles: [90 deg, -60 deg]}\n" \
	"      - {at: 2 s, angles: [0 deg, 0 deg]}\n"

static const char cycling[] = HEAD LOADED BODY PAYLOAD MOTION TURN RAISED CYCLE;

/* 5 kg in all at 0.5 m; joint 2 raises the arm by minus its angle. */
static void mass_at(double q1, double q2, double out[3])
{
	out[0] = 0.5 * cos(q2) * cos(q1);
	out[1] = 0.5 * cos(q2) * sin(q1);
	out[2] = 0.3 - 0.5 * sin(q2);
}

Test(arm_loads, cycle_rests_in_its_poses)
{
	struct built built;
	struct arm_load load;
	static const double q[3][2] = {{0, 0}, {90, -60}, {0, 0}}, time[3] = {0, 0.8, 2};
	double at, p[3];
	open_built(&built, cycling);
	size_t count = arm_cycle_instants(built.reading.cell);
	cr_assert_eq(count % 2, 1);
	for (size_t i = 0; i < 3; i++) {
		arm_cycle_wrench(built.reading.cell, i * (count - 1) / 2, &at, &load);
		mass_at(q[i][0] * pi / 180, q[i][1] * pi / 180, p);
		double weight = 5 * gravity;
		near("time", at, time[i], 1e-12);
		expect_load(&load, (const double[]){0, 0, -15 * gravity},
		            (const double[]){-1e3 * weight * p[1], 1e3 * weight * p[0], 0});
		near("weight", load.weight, 15 * gravity, 1e-12);
		near("weight moment", load.weight_moment[0], load.moment[0], 1e-9);
		near("weight moment", load.weight_moment[1], load.moment[1], 1e-9);
	}
	close_built(&built);
}

/* Where the mass is in the first move: the quintic written down again. */
static void moving_at(double t, double out[3])
{
	double u = t / 0.8, s = 10 * pow(u, 3) - 15 * pow(u, 4) + 6 * pow(u, 5);
	mass_at(s * pi / 2, -s * pi / 3, out);
}

/* Weight less the change of momentum and of its moment, by differences of the place alone. */
Test(arm_loads, cycle_against_momentum)
{
	struct built built;
	struct arm_load load;
	double t, p[3], before[3], after[3], f[3];
	const double h = 1e-4;
	open_built(&built, cycling);
	for (size_t instant = 17; instant < 200; instant += 45) {
		arm_cycle_wrench(built.reading.cell, instant, &t, &load);
		moving_at(t, p);
		moving_at(t - h, before);
		moving_at(t + h, after);
		for (int i = 0; i < 3; i++)
			f[i] = -5 * ((after[i] - 2 * p[i] + before[i]) / (h * h)) -
			       (i == 2 ? 5 * gravity : 0);
		double moment[3] = {p[1] * f[2] - p[2] * f[1], p[2] * f[0] - p[0] * f[2],
		                    p[0] * f[1] - p[1] * f[0]};
		/* the difference is good to h^2 of its fourth derivative and to rounding / h^2 */
		for (int i = 0; i < 3; i++) {
			near("force", load.force[i], f[i] - (i == 2 ? 10 * gravity : 0), 1e-5);
			near("moment", load.moment[i] / 1e3, moment[i], 1e-5);
		}
	}
	close_built(&built);
}

Test(arm_loads, a_cycle_of_other_joints_has_no_instants)
{
	struct built built;
	open_built(&built, turning);
	cr_expect_eq(arm_cycle_instants(built.reading.cell), 0);
	close_built(&built);
}
