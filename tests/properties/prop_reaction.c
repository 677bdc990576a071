/* Properties of the largest reactions on random arms, and the worked sample. SEED and CASES may be
 * set in the environment; a failure names its case. */
#include "../../src/arm/reaction_sweep.h"
#include "../support/random_limits.h"
#include "../support/cases.h"
#include "../support/random_chain.h"

#include <criterion/criterion.h>
#include <inttypes.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;
static const char *const kind_name[REACTION_KINDS] = {"tilting", "horizontal", "uplift",
                                                      "downforce", "twisting"};

enum mounted { UPRIGHT, TURNED, HANGING, TIPPED, WAYS_TO_MOUNT };

struct moving_arm {
	struct chain chain;
	enum mounted mounted;
	struct prepared_chain prepared;
	struct motion_limits limits;
	struct reaction_extremes extremes;
};


/* On a floor, turned on it, hanging from a ceiling or anyhow; a quarter of the arms each. */
static void mount_random(struct moving_arm *arm, struct dice *dice)
{
	double u = dice_between(dice, -pi, pi), c = cos(u), s = sin(u);
	const double turned[9] = {c, -s, 0, s, c, 0, 0, 0, 1};
	const double hanging[9] = {1, 0, 0, 0, -1, 0, 0, 0, -1};
	arm->mounted = (enum mounted)dice_whole(dice, 0, WAYS_TO_MOUNT - 1);
	if (arm->mounted == TURNED)
		memcpy(arm->chain.mounting, turned, sizeof turned);
	if (arm->mounted == HANGING)
		memcpy(arm->chain.mounting, hanging, sizeof hanging);
	if (arm->mounted == TIPPED)
		rotation_random(dice, arm->chain.mounting);
}

/* Half of the arms have joint 1 upright in their own axes, as most do, and a weight that comes
 * straight down on a floor; many have bodies on their axes. */
static void throw_arm(struct moving_arm *arm, struct dice *dice, size_t most)
{
	chain_random(&arm->chain, dice, most);
	if (dice_whole(dice, 0, 1)) {
		struct link *first = &arm->chain.link[0];
		first->alpha = arm->chain.convention == CHAIN_MODIFIED_DH ? 0 : first->alpha;
		const double upright[9] = {1, 0, 0, 0, 1, 0, 0, 0, 1};
		memcpy(first->rotation, upright, sizeof upright);
		if (arm->chain.convention == CHAIN_MODIFIED_DH)
			first->a = 0;
		first->position[0] = first->position[1] = 0;
		arm->chain.gravity[0] = arm->chain.gravity[1] = 0;
	}
	mount_random(arm, dice);
	limits_random(&arm->chain, dice, 5, &arm->limits);
	chain_prepare(&arm->chain, &arm->prepared);
	reaction_start(&arm->extremes);
}

static void sweep_all(struct moving_arm *arm)
{
	reaction_start(&arm->extremes);
	reaction_sweep(&arm->chain, &arm->limits, 0,
	               reaction_sweep_count(&arm->chain, &arm->limits), &arm->extremes);
}

/* Sum of the sizes of all terms at a pose, as a measure of rounding; forces and moments together.
 */
static double size_at(const struct moving_arm *arm, const double q[])
{
	struct pose_terms terms;
	struct base_wrench sum = {{0}, {0}};
	double total = 0;
	chain_terms(&arm->prepared, q, &terms);
	for (int i = 0; i < 3; i++) {
		sum.force[i] = fabs(terms.g.force[i]) + fabs(terms.g.moment[i]);
		for (size_t k = 0; k < terms.count; k++) {
			double v = arm->limits.speed[k], a = arm->limits.acceleration[k];
			sum.force[i] += a *
			                (fabs(terms.a[k].force[i]) + fabs(terms.a[k].moment[i]));
			for (size_t j = 0; j <= k; j++)
				sum.force[i] += arm->limits.speed[j] * v *
				                (fabs(terms.b[j][k].force[i]) +
				                 fabs(terms.b[j][k].moment[i]));
		}
		total += sum.force[i];
	}
	return total;
}

/* --- the worked sample
 * ---------------------------------------------------------------------------- */

/* The benchmark arm with 2.5 kg, three joints in motion, 16 x 16 poses of joints 2 and 3, joint 5
 * at 0.6: computed beforehand by a separate program in another language, printed to four digits. */
static void open_sample(struct moving_arm *arm)
{
	memset(arm, 0, sizeof *arm);
	chain_sample(&arm->chain);
	chain_prepare(&arm->chain, &arm->prepared);
	struct motion_limits limits = {.low = {-pi, -pi, -pi, 0, 0.6, 0},
	                               .high = {pi, pi, pi, 0, 0.6, 0},
	                               .speed = {1.5, 1, 1.5},
	                               .acceleration = {5, 5, 8},
	                               .poses = 16};
	arm->limits = limits;
	reaction_start(&arm->extremes);
}

Test(reaction, sample_on_its_grid)
{
	struct moving_arm arm;
	open_sample(&arm);
	cr_assert_eq(reaction_sweep_count(&arm.chain, &arm.limits), 256);
	sweep_all(&arm);
	const struct reaction_at *at = arm.extremes.exact;
	cr_expect_float_eq(at[REACTION_TILTING].value, 132.9, 0.05);
	cr_expect_float_eq(at[REACTION_HORIZONTAL].value, 97.1, 0.05);
	cr_expect_float_eq(at[REACTION_DOWNFORCE].value, 312.0, 0.05);
	cr_expect_float_eq(at[REACTION_TWISTING].value, 45.5, 0.05);
	cr_expect_eq(arm.extremes.poses, 256);
}

/* Largest term by term of a horizontal resultant over the grid by 24 directions and the polygon
 * outside them: a looser way that the sample was computed by. */
static double outer_polygon(const struct moving_arm *arm, bool moments)
{
	enum { DIRECTIONS = 24 };
	double most = 0;
	for (int pose = 0; pose < 256; pose++)
		for (int d = 0; d < DIRECTIONS; d++) {
			double q[6] = {0, pose / 16 * pi / 8 - pi, pose % 16 * pi / 8 - pi, 0, 0.6,
			               0};
			double c = cos(2 * pi * d / DIRECTIONS), s = sin(2 * pi * d / DIRECTIONS);
			struct pose_terms t;
			chain_terms(&arm->prepared, q, &t);
#define ALONG(w) \
	(moments ? c * (w).moment[0] + s * (w).moment[1] : c * (w).force[0] + s * (w).force[1])
			double sum = ALONG(t.g);
			for (size_t k = 0; k < t.count; k++) {
				double v = arm->limits.speed[k];
				sum += arm->limits.acceleration[k] * fabs(ALONG(t.a[k]));
				sum += fmax(0, v * v * ALONG(t.b[k][k]));
				for (size_t j = 0; j < k; j++)
					sum += arm->limits.speed[j] * v * fabs(ALONG(t.b[j][k]));
			}
#undef ALONG
			most = fmax(most, sum / cos(pi / DIRECTIONS));
		}
	return most;
}

Test(reaction, sample_bound)
{
	struct moving_arm arm;
	open_sample(&arm);
	reaction_bound(&arm.chain, &arm.limits, &arm.extremes);
	const double *bound = arm.extremes.bound;
	cr_expect_float_eq(bound[REACTION_DOWNFORCE], 314.3, 0.05);
	cr_expect_float_eq(bound[REACTION_TWISTING], 53.3, 0.05);
	/* the sample's 157.1 and 101.2 come from the outer polygon; the corners themselves are
	 * nearer */
	double of_force = pow(cos(pi / 16), -2), of_moment = pow(cos(pi / 8), -2);
	double tilting = of_moment * outer_polygon(&arm, true);
	double horizontal = of_force * outer_polygon(&arm, false);
	cr_expect_float_eq(tilting, 157.1, 0.05);
	cr_expect_float_eq(horizontal, 101.2, 0.05);
	cr_expect_leq(bound[REACTION_TILTING], tilting);
	cr_expect_leq(bound[REACTION_HORIZONTAL], horizontal);
	cr_expect_geq(bound[REACTION_TILTING], tilting * cos(pi / 24));
	cr_expect_geq(bound[REACTION_HORIZONTAL], horizontal * cos(pi / 24));
}

/* --- the grid
 * ------------------------------------------------------------------------------------- */

Test(reaction, poses_of_the_grid)
{
	struct chain chain;
	struct motion_limits limits = {.poses = 16};
	chain_benchmark(&chain, PUMA_1994);
	cr_expect_eq(reaction_sweep_count(&chain, &limits), 1, "all joints fixed");
	for (int i = 0; i < 6; i++)
		limits.high[i] = 1;
	cr_expect_eq(reaction_sweep_count(&chain, &limits), 65536,
	             "joint 1 upright, joint 6 turns what is round: 16^4");
	chain.payload_mass = 1;
	chain.payload_centre[0] = 0.1;
	cr_expect_eq(reaction_sweep_count(&chain, &limits), 1048576, "joint 1 upright: 16^5");
	cr_expect_eq(reaction_bound_count(&chain, &limits), 1048576);
	limits.bound_poses = 24;
	cr_expect_eq(reaction_bound_count(&chain, &limits), 7962624);
	chain.gravity[0] = 1;
	cr_expect_eq(reaction_sweep_count(&chain, &limits), 16777216, "tilted: 16^6");
	chain.gravity[0] = 0;
	chain.convention = CHAIN_MODIFIED_DH;
	chain.link[0].a = 0.3;
	chain.link[0].alpha = 0;
	cr_expect_eq(reaction_sweep_count(&chain, &limits), 16777216,
	             "upright, but beside the origin");
	limits.poses = SIZE_MAX / 4;
	cr_expect_eq(reaction_sweep_count(&chain, &limits), SIZE_MAX, "too many to count");
}

/* An upright joint 1 changes none of the five values. */
Test(reaction, upright_joint_1_does_not_matter)
{
	uint64_t count = cases_count("upright joint 1", 10);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct moving_arm arm;
		struct instant at;
		struct base_wrench one, other;
		do
			throw_arm(&arm, &dice, 6);
		while (arm.mounted == TIPPED || arm.chain.gravity[0] != 0 ||
		       arm.chain.link[0].kind != JOINT_REVOLUTE ||
		       arm.chain.convention == CHAIN_STANDARD_DH);
		arm.limits.low[0] = -pi;
		arm.limits.high[0] = pi;
		arm.limits.poses = 2;
		size_t moving = 0;
		for (size_t i = 1; i < arm.chain.count; i++)
			moving += arm.limits.low[i] < arm.limits.high[i];
		cr_assert_eq(reaction_sweep_count(&arm.chain, &arm.limits), (size_t)1 << moving);
		instant_random(&at, &dice);
		chain_wrench(&arm.prepared, at.q, at.speed, at.acceleration, &one, NULL);
		at.q[0] += dice_between(&dice, -3, 3);
		chain_wrench(&arm.prepared, at.q, at.speed, at.acceleration, &other, NULL);
		for (int kind = 0; kind < REACTION_KINDS; kind++) {
			double a = reaction_value((enum reaction_kind)kind, &one);
			double b = reaction_value((enum reaction_kind)kind, &other);
			cr_assert(fabs(a - b) <= 1e-10 * (1 + fabs(a)),
			          "case %" PRIu64 ": %s %g, %g", number, kind_name[kind], a, b);
		}
	}
}

/* --- exact on the grid
 * ---------------------------------------------------------------------------- */

/* Digit `joint` of a number to base `base`, less `shift`. */
static int digit(size_t number, size_t base, size_t joint, int shift)
{
	while (joint-- > 0)
		number /= base;
	return (int)(number % base) - shift;
}

static size_t power(size_t base, size_t exponent)
{
	size_t out = 1;
	while (exponent-- > 0)
		out *= base;
	return out;
}

/* Every combination of speeds and accelerations at one pose, one after the other, by the recursion.
 */
static void every_sign(const struct moving_arm *arm, const double q[], double most[REACTION_KINDS])
{
	size_t n = arm->chain.count;
	for (size_t v = 0; v < power(3, n); v++)
		for (size_t a = 0; a < power(2, n); a++) {
			double speed[MAX_JOINTS_OF_ARM], acceleration[MAX_JOINTS_OF_ARM];
			struct base_wrench wrench;
			for (size_t i = 0; i < n; i++) {
				speed[i] = digit(v, 3, i, 1) * arm->limits.speed[i];
				acceleration[i] = digit(a, 2, i, 0) ? arm->limits.acceleration[i]
				                                    : -arm->limits.acceleration[i];
			}
			chain_wrench(&arm->prepared, q, speed, acceleration, &wrench, NULL);
			for (int kind = 0; kind < REACTION_KINDS; kind++)
				most[kind] = fmax(
					most[kind],
					reaction_value((enum reaction_kind)kind, &wrench));
		}
}

/* Position of pose i of a joint, as the header says it. */
static double position(const struct moving_arm *arm, size_t joint, size_t i, size_t poses)
{
	double low = arm->limits.low[joint], wide = arm->limits.high[joint] - low;
	bool turns = arm->chain.link[joint].kind == JOINT_REVOLUTE && wide > 2 * pi - 1e-9;
	if (wide == 0)
		return low;
	return low + wide * (double)i / (double)(turns ? poses : poses - 1);
}

/* The sweep's cuts and corners lose nothing against trying everything. Joint 1 is tried at every
 * pose, so that leaving it out is tested too. */
Test(reaction, sweep_is_exact_on_its_grid)
{
	enum { POSES = 3 };
	uint64_t count = cases_count("exact on the grid", 50);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct moving_arm arm;
		throw_arm(&arm, &dice, 4);
		arm.limits.poses = POSES;
		double most[REACTION_KINDS], size = 0;
		for (int kind = 0; kind < REACTION_KINDS; kind++)
			most[kind] = -HUGE_VAL;
		for (size_t pose = 0; pose < power(POSES, arm.chain.count); pose++) {
			double q[MAX_JOINTS_OF_ARM];
			for (size_t i = 0; i < arm.chain.count; i++)
				q[i] = position(&arm, i, (size_t)digit(pose, POSES, i, 0), POSES);
			every_sign(&arm, q, most);
			size = fmax(size, size_at(&arm, q));
		}
		sweep_all(&arm);
		for (int kind = 0; kind < REACTION_KINDS; kind++)
			cr_assert(fabs(arm.extremes.exact[kind].value - most[kind]) <= 1e-11 * size,
			          "case %" PRIu64 ": %s %.15g, not %.15g", number, kind_name[kind],
			          arm.extremes.exact[kind].value, most[kind]);
	}
}

/* What stands beside a value makes it, within ranges and limits. */
static void expect_consistent(const struct moving_arm *arm, uint64_t number)
{
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		const struct reaction_at *at = &arm->extremes.exact[kind];
		struct base_wrench wrench;
		double size = size_at(arm, at->q);
		chain_wrench(&arm->prepared, at->q, at->speed, at->acceleration, &wrench, NULL);
		for (int i = 0; i < 3; i++) {
			cr_assert_leq(fabs(wrench.force[i] - at->wrench.force[i]), 1e-12 * size);
			cr_assert_leq(fabs(wrench.moment[i] - at->wrench.moment[i]), 1e-12 * size);
		}
		cr_assert_eq(at->value, reaction_value((enum reaction_kind)kind, &at->wrench));
		for (size_t i = 0; i < arm->chain.count; i++) {
			double low = arm->limits.low[i], high = arm->limits.high[i];
			cr_assert(at->q[i] >= low && at->q[i] <= high + 1e-14,
			          "case %" PRIu64 ": joint %zu at %g, range %g to %g", number, i, at->q[i], low,
			          high);
			cr_assert_leq(fabs(at->speed[i]), arm->limits.speed[i]);
			cr_assert_leq(fabs(at->acceleration[i]), arm->limits.acceleration[i]);
		}
	}
}

Test(reaction, values_come_from_their_motion_and_refining_never_lowers)
{
	uint64_t count = cases_count("motion behind a value", 200);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct moving_arm arm;
		throw_arm(&arm, &dice, 5);
		arm.limits.poses = 4;
		sweep_all(&arm);
		expect_consistent(&arm, number);
		struct reaction_extremes before = arm.extremes;
		reaction_refine(&arm.chain, &arm.limits, &arm.extremes);
		expect_consistent(&arm, number);
		for (int kind = 0; kind < REACTION_KINDS; kind++)
			cr_assert_geq(arm.extremes.exact[kind].value, before.exact[kind].value);
		cr_assert_eq(arm.extremes.poses, before.poses);
	}
}

/* --- ways to mount it
 * ----------------------------------------------------------------------------- */

static void sweep_and_bound(struct moving_arm *arm)
{
	chain_prepare(&arm->chain, &arm->prepared);
	sweep_all(arm);
	reaction_bound(&arm->chain, &arm->limits, &arm->extremes);
}

/* The rounding allowed is that of the sums at any pose of the grid; the first stands for all, with
 * levers of at most ten times its own to spare. */
static void expect_same_kind(uint64_t number, const struct moving_arm *one, enum reaction_kind kind,
                             const struct moving_arm *other, enum reaction_kind other_kind)
{
	double slack = 1e-12 * size_at(one, one->limits.low);
	double a = one->extremes.exact[kind].value, b = other->extremes.exact[other_kind].value;
	cr_assert(fabs(a - b) <= slack, "case %" PRIu64 ": %s %.15g, %.15g", number,
	          kind_name[kind], a, b);
	a = one->extremes.bound[kind];
	b = other->extremes.bound[other_kind];
	cr_assert(fabs(a - b) <= 10 * slack, "case %" PRIu64 ": bound of %s %.15g, %.15g", number,
	          kind_name[kind], a, b);
}

/* The mounting is as good as a first frame that stands so; turning by the vertical on top of it
 * changes no value. */
Test(reaction, mounting_is_a_first_frame_and_headings_are_alike)
{
	uint64_t count = cases_count("mounted sweep", 100);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct moving_arm arm, framed;
		do
			throw_arm(&arm, &dice, 4);
		while (arm.chain.convention != CHAIN_FRAMES || arm.mounted == UPRIGHT);
		arm.limits.poses = 4;
		arm.chain.gravity[0] = arm.chain.gravity[1] = 0;
		framed = arm;
		struct link *first = &framed.chain.link[0];
		double u = dice_between(&dice, -pi, pi), c = cos(u), s = sin(u);
		const double *r = arm.chain.mounting, *q = arm.chain.link[0].rotation,
			     *p = arm.chain.link[0].position;
		double turned[9], place[3];
		for (int i = 0; i < 9; i++)
			turned[i] = r[i / 3 * 3] * q[i % 3] + r[i / 3 * 3 + 1] * q[3 + i % 3] +
			            r[i / 3 * 3 + 2] * q[6 + i % 3];
		for (int i = 0; i < 3; i++)
			place[i] = r[3 * i] * p[0] + r[3 * i + 1] * p[1] + r[3 * i + 2] * p[2];
		memcpy(first->rotation, turned, sizeof turned);
		memcpy(first->position, place, sizeof place);
		const double heading[9] = {c, -s, 0, s, c, 0, 0, 0, 1};
		memcpy(framed.chain.mounting, heading, sizeof heading);
		sweep_and_bound(&arm);
		sweep_and_bound(&framed);
		for (int kind = 0; kind < REACTION_KINDS; kind++)
			expect_same_kind(number, &arm, (enum reaction_kind)kind, &framed,
			                 (enum reaction_kind)kind);
	}
}

/* From a ceiling everything is upside down: what pulls there presses on a floor where weight rises,
 * and the other three kinds are the same. */
Test(reaction, ceiling_swaps_uplift_and_downforce)
{
	static const enum reaction_kind swapped[REACTION_KINDS] = {
		[REACTION_TILTING] = REACTION_TILTING,
		[REACTION_HORIZONTAL] = REACTION_HORIZONTAL,
		[REACTION_UPLIFT] = REACTION_DOWNFORCE,
		[REACTION_DOWNFORCE] = REACTION_UPLIFT,
		[REACTION_TWISTING] = REACTION_TWISTING,
	};
	uint64_t count = cases_count("ceiling", 100);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct moving_arm ceiling, floor;
		do
			throw_arm(&ceiling, &dice, 4);
		while (ceiling.mounted != HANGING);
		ceiling.limits.poses = 4;
		floor = ceiling;
		memset(floor.chain.mounting, 0, sizeof floor.chain.mounting);
		floor.chain.gravity[1] *= -1;
		floor.chain.gravity[2] *= -1;
		sweep_and_bound(&ceiling);
		sweep_and_bound(&floor);
		for (int kind = 0; kind < REACTION_KINDS; kind++)
			expect_same_kind(number, &ceiling, (enum reaction_kind)kind, &floor,
			                 swapped[kind]);
	}
}

/* --- pieces
 * --------------------------------------------------------------------------------------- */

/* Cut at random, swept in random order into two heaps, merged the wrong way round: the same bytes.
 */
Test(reaction, any_cutting_gives_the_same_bytes)
{
	uint64_t count = cases_count("pieces", 50);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct moving_arm arm;
		enum { PIECES = 7 };
		size_t cut[PIECES + 1] = {0}, order[PIECES], bounds[PIECES + 1] = {0};
		/* every fourth is the sample, whose symmetries make equals in many poses */
		if (number % 4)
			throw_arm(&arm, &dice, 5);
		else
			open_sample(&arm);
		arm.limits.poses = 4;
		size_t total = reaction_sweep_count(&arm.chain, &arm.limits);
		size_t bound_total = reaction_bound_count(&arm.chain, &arm.limits);
		for (size_t i = 0; i < PIECES; i++) {
			size_t at = (size_t)dice_whole(&dice, 0, i ? (int)i : 0);
			order[i] = order[at];
			order[at] = i;
			double share = (double)(i + 1) / PIECES +
			               (i + 1 < PIECES ? dice_between(&dice, -.1, 0) : 0);
			cut[i + 1] = i + 1 < PIECES ? (size_t)(share * (double)total) : total;
			bounds[i + 1] = i + 1 < PIECES ? (size_t)(share * (double)bound_total)
			                               : bound_total;
		}
		struct reaction_extremes whole, heap[2];
		reaction_start(&whole);
		reaction_start(&heap[0]);
		reaction_start(&heap[1]);
		reaction_sweep(&arm.chain, &arm.limits, 0, total, &whole);
		reaction_bound(&arm.chain, &arm.limits, &whole);
		for (size_t i = 0; i < PIECES; i++) {
			struct reaction_extremes *into = &heap[dice_whole(&dice, 0, 1)];
			size_t k = order[i];
			reaction_sweep(&arm.chain, &arm.limits, cut[k], cut[k + 1], into);
			reaction_bound_sweep(&arm.chain, &arm.limits, bounds[k], bounds[k + 1],
			                     into);
		}
		reaction_merge(&heap[1], &heap[0]);
		reaction_bound_from_peaks(&arm.chain, &arm.limits, &heap[1]);
		cr_assert_eq(memcmp(&whole, &heap[1], sizeof whole), 0, "case %" PRIu64, number);
	}
}

/* --- the bound
 * ------------------------------------------------------------------------------------ */

/* A motion within limits; half of the time speeds and accelerations are at their limits. Revolute
 * joints anywhere on the circle, for that is what the bound claims. */
static void motion_random(const struct moving_arm *arm, struct dice *dice, struct instant *out)
{
	bool limit = dice_whole(dice, 0, 1);
	for (size_t i = 0; i < arm->chain.count; i++) {
		double low = arm->limits.low[i], high = arm->limits.high[i];
		bool circle = arm->chain.link[i].kind == JOINT_REVOLUTE && low < high;
		double v = dice_between(dice, -1, 1), a = dice_between(dice, -1, 1);
		out->q[i] = circle ? dice_between(dice, -pi, pi) : dice_between(dice, low, high);
		out->speed[i] = arm->limits.speed[i] * (limit ? (v > 0) - (v < 0) : v);
		out->acceleration[i] = arm->limits.acceleration[i] *
		                       (limit ? (a > 0) - (a < 0) : a);
	}
}

/* The slack is rounding: a value that ought to be zero may come out as 1e-17. */
static void expect_within(const struct moving_arm *arm, const double values[REACTION_KINDS],
                          uint64_t number)
{
	double slack = 1e-13 * size_at(arm, arm->limits.low);
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		cr_assert(values[kind] <= arm->extremes.bound[kind] + slack,
		          "case %" PRIu64 ": %s reaches %.9g, the bound is %.9g", number, kind_name[kind],
		          values[kind], arm->extremes.bound[kind]);
}

/* As many points a joint as the time allows, since a coarse grid's bound is loose and hard to miss:
 * of grids with at most MOST poses the finest, at least 8 a joint. */
static size_t fine_poses(size_t joints)
{
	enum { MOST = 30000, FINEST = 48 };
	size_t poses = 8;
	while (poses < FINEST && power(poses + 1, joints) <= MOST)
		poses++;
	return poses;
}

/* CASES samples of each of 20 arms: 10 000 unless set, 1e6 in `make check-long`. */
Test(reaction, bound_against_dense_random_search)
{
	uint64_t count = cases_count("samples an arm against the bound", 1);
	for (uint64_t number = 0; number < 20; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct moving_arm arm;
		double most[REACTION_KINDS];
		/* each number of joints from one to six in turn */
		do
			throw_arm(&arm, &dice, 6);
		while (arm.chain.count != number % 6 + 1);
		arm.limits.poses = fine_poses(arm.chain.count);
		reaction_bound(&arm.chain, &arm.limits, &arm.extremes);
		for (int kind = 0; kind < REACTION_KINDS; kind++)
			most[kind] = -HUGE_VAL;
		for (uint64_t k = 0; k < count; k++) {
			struct instant at;
			struct base_wrench wrench;
			motion_random(&arm, &dice, &at);
			chain_wrench(&arm.prepared, at.q, at.speed, at.acceleration, &wrench, NULL);
			for (int kind = 0; kind < REACTION_KINDS; kind++)
				most[kind] = fmax(
					most[kind],
					reaction_value((enum reaction_kind)kind, &wrench));
		}
		expect_within(&arm, most, number);
	}
}

/* Few joints, few points on the circle, a grid turned at random, and a sharp search on the other
 * side: here much of the factor is used up (test_reaction_bound.c uses up all of it). */
Test(reaction, bound_against_refined_extremes)
{
	uint64_t count = cases_count("bound against refined", 50);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct moving_arm arm;
		double refined[REACTION_KINDS];
		throw_arm(&arm, &dice, 3);
		for (size_t i = 0; i < arm.chain.count; i++)
			if (arm.chain.link[i].kind == JOINT_REVOLUTE &&
			    arm.limits.low[i] < arm.limits.high[i])
				arm.limits.high[i] = arm.limits.low[i] + 2 * pi;
		arm.limits.poses = 12;
		arm.limits.bound_poses = 8;
		sweep_all(&arm);
		reaction_refine(&arm.chain, &arm.limits, &arm.extremes);
		reaction_bound(&arm.chain, &arm.limits, &arm.extremes);
		for (int kind = 0; kind < REACTION_KINDS; kind++)
			refined[kind] = arm.extremes.exact[kind].value;
		expect_within(&arm, refined, number);
	}
}

/* More points, a nearer bound: down to what the terms' freedom leaves. */
Test(reaction, bound_closes_in)
{
	struct moving_arm arm;
	double before = HUGE_VAL;
	open_sample(&arm);
	sweep_all(&arm);
	reaction_refine(&arm.chain, &arm.limits, &arm.extremes);
	for (arm.limits.bound_poses = 8; arm.limits.bound_poses <= 128;
	     arm.limits.bound_poses *= 2) {
		reaction_bound(&arm.chain, &arm.limits, &arm.extremes);
		cr_expect_lt(arm.extremes.bound[REACTION_TILTING], before);
		before = arm.extremes.bound[REACTION_TILTING];
	}
	cr_expect_geq(before, arm.extremes.exact[REACTION_TILTING].value);
	cr_expect_leq(before, 1.02 * arm.extremes.exact[REACTION_TILTING].value);
}
