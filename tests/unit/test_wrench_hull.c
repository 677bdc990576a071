/* The wrenches that can govern where they can be written down, and that pieces do not matter. */
#include "../../src/arm/wrench_hull.h"
#include "../support/random_chain.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;
static const double upright[9] = {1, 0, 0, 0, 1, 0, 0, 0, 1};

static struct wrench_hull hull, other;

static void build(const struct chain *chain, const struct motion_limits *limits, double height,
                  bool turns, bool refined, const struct pieces *pieces, struct wrench_hull *out)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	cr_assert_eq(wrench_hull_build(chain, limits, height, turns, refined, pieces, &arena, out),
	             DONE);
	arena_close(&arena);
}

static void near(const char *what, double value, double wanted)
{
	cr_expect(fabs(value - wanted) <= 1e-9 * (1 + fabs(wanted)), "%s: %.12g, not %.12g", what,
	          value, wanted);
}

static double tilt(const struct base_wrench *wrench, double height)
{
	const double *f = wrench->force, *m = wrench->moment;
	return hypot(m[1] + height * f[0], -m[0] + height * f[1]);
}

/* 2 kg at 0.5 m, turning about the vertical through the base origin, 10 m/s2 down. */
static void open_turntable(struct chain *chain)
{
	memset(chain, 0, sizeof *chain);
	chain->convention = CHAIN_FRAMES;
	chain->count = 1;
	chain->gravity[2] = -10;
	memcpy(chain->link[0].rotation, upright, sizeof upright);
	chain->link[0].mass = 2;
	chain->link[0].centre[0] = 0.5;
}

/* Weight moment 10 N m outward, centrifugal 4 N outward and 6 N across at height h; both senses of
 * the torsion 3 N m. Nothing else can govern. */
Test(wrench_hull, mass_on_a_turntable)
{
	struct chain chain;
	const double height = 0.8;
	struct motion_limits limits = {
		.high = {1}, .speed = {2}, .acceleration = {6}, .poses = 5};
	open_turntable(&chain);
	build(&chain, &limits, height, true, false, NULL, &hull);
	cr_assert_geq(hull.count, 2);
	cr_expect_leq(hull.count, 3);
	cr_expect_not(hull.full);
	double least = 0, most = 0, tilting = 0;
	for (size_t i = 0; i < hull.count; i++) {
		const struct base_wrench *wrench = &hull.at[i].wrench;
		least = fmin(least, wrench->moment[2]);
		most = fmax(most, wrench->moment[2]);
		tilting = fmax(tilting, tilt(wrench, height));
		near("vertical", wrench->force[2], -20);
		near("horizontal", hypot(wrench->force[0], wrench->force[1]), hypot(4, 6));
	}
	near("tilting", tilting, hypot(10 + 4 * height, 6 * height));
	near("torsion one way", least, -3);
	near("torsion the other way", most, 3);
}

/* Without motion there is one wrench, whichever way it is asked for. */
Test(wrench_hull, one_pose_without_motion)
{
	struct chain chain;
	struct motion_limits limits = {.poses = 16};
	chain_benchmark(&chain, PUMA_1994);
	for (int turns = 0; turns < 2; turns++)
		for (int refined = 0; refined < 2; refined++) {
			build(&chain, &limits, 0.8, turns, refined, NULL, &hull);
			cr_assert_eq(hull.count, 1);
			cr_expect_eq(hull.edges, 0);
			near("weight", hull.at[0].wrench.force[2],
			     -9.81 * (17.4 + 4.8 + .82 + .34 + .09));
		}
}

/* Two upright parallel joints, point masses 3 kg at l1 = 0.4 m and 1 kg at l2 = 0.3 m beyond:
 * stretched, at rest, the force across is m1 l1 a1 + m2 ((l1 + l2) a1 + l2 a2), folded with l2 the
 * other way. The largest force over all speeds is outward, stretched: (v1 v1 l1 m1) + m2 (v1 v1 l1
 * + (v1 + v2)^2 l2), with its part across. */
static void open_planar(struct chain *chain)
{
	open_turntable(chain);
	chain->count = 2;
	chain->link[0].mass = 3;
	chain->link[0].centre[0] = 0.4;
	memcpy(chain->link[1].rotation, upright, sizeof upright);
	chain->link[1].position[0] = 0.4;
	chain->link[1].mass = 1;
	chain->link[1].centre[0] = 0.3;
}

Test(wrench_hull, planar_arm_stretched)
{
	struct chain chain;
	struct motion_limits limits = {
		.speed = {2, 3}, .acceleration = {5, 7}, .poses = 4};
	open_planar(&chain);
	build(&chain, &limits, 0, true, false, NULL, &hull);
	double outward = 3 * 0.4 * 4 + 0.4 * 4 + 0.3 * 25;
	double across = 3 * 0.4 * 5 + 0.7 * 5 + 0.3 * 7;
	double about = 3 * 0.4 * 0.4 * 5 + 0.7 * (0.7 * 5 + 0.3 * 7);
	/* Coriolis terms of parallel axes pull along the arm: no torsion when stretched */
	double force = 0, torsion = 0;
	for (size_t i = 0; i < hull.count; i++) {
		const struct base_wrench *wrench = &hull.at[i].wrench;
		force = fmax(force, hypot(wrench->force[0], wrench->force[1]));
		torsion = fmax(torsion, fabs(wrench->moment[2]));
		near("weight moment", tilt(wrench, 0), 10 * (3 * 0.4 + 0.7));
	}
	near("horizontal", force, hypot(outward, across));
	near("torsion", torsion, about);
}

/* A slide along x: a line of wrenches, its two ends are kept and joined by an edge. */
Test(wrench_hull, slide)
{
	struct chain chain;
	const double along_x[9] = {0, 0, 1, 0, 1, 0, -1, 0, 0};
	struct motion_limits limits = {
		.low = {-1}, .high = {1}, .speed = {2}, .acceleration = {0}, .poses = 5};
	open_turntable(&chain);
	chain.link[0].kind = JOINT_PRISMATIC;
	memcpy(chain.link[0].rotation, along_x, sizeof along_x);
	chain.link[0].centre[0] = 0;
	build(&chain, &limits, 0.5, false, false, NULL, &hull);
	cr_assert_eq(hull.count, 2);
	cr_assert_eq(hull.edges, 1);
	near("one end", fmin(hull.at[0].wrench.moment[1], hull.at[1].wrench.moment[1]), -20);
	near("other end", fmax(hull.at[0].wrench.moment[1], hull.at[1].wrench.moment[1]), 20);
}

/* Refining finds what lies between the poses of the grid: the arm of reach 0.5 level, where the
 * grid has +-60 degrees only. */
Test(wrench_hull, refining_finds_poses_in_between)
{
	struct chain chain;
	const double lying[9] = {1, 0, 0, 0, 0, 1, 0, -1, 0};
	struct motion_limits limits = {
		.low = {0, -pi / 3}, .high = {0, pi / 3}, .poses = 2};
	open_planar(&chain);
	chain.link[0].mass = 0;
	chain.link[1].position[0] = 0;
	memcpy(chain.link[1].rotation, lying, sizeof lying);
	for (int refined = 0; refined < 2; refined++) {
		double tilting = 0;
		build(&chain, &limits, 0.8, true, refined, NULL, &hull);
		for (size_t i = 0; i < hull.count; i++)
			tilting = fmax(tilting, tilt(&hull.at[i].wrench, 0.8));
		near("tilting", tilting, 10 * 0.3 * (refined ? 1 : 0.5));
	}
}

/* --- pieces
 * ------------------------------------------------------------------------------------ */

static void backwards(void *user, const char *what, size_t count, piece_of_work *piece, void *job)
{
	cr_expect_not_null(what);
	*(size_t *)user += count;
	while (count-- > 0)
		piece(job, count);
}

/* Odd numbers first, then even ones. */
static void zigzag(void *user, const char *what, size_t count, piece_of_work *piece, void *job)
{
	cr_expect_not_null(what);
	*(size_t *)user += count;
	for (size_t i = 1; i < count; i += 2)
		piece(job, i);
	for (size_t i = 0; i < count; i += 2)
		piece(job, i);
}

Test(wrench_hull, any_order_of_pieces_gives_the_same_bytes)
{
	struct chain chain;
	size_t ran = 0;
	const struct pieces way[2] = {{backwards, &ran}, {zigzag, &ran}};
	struct motion_limits limits = {.low = {-pi, -2, -2, 0, -1},
	                               .high = {pi, 1, 2, 0, 1},
	                               .speed = {1.5, 1, 1.5, 3, 3},
	                               .acceleration = {5, 5, 8, 10, 12},
	                               .poses = 4};
	chain_sample(&chain);
	for (int turns = 0; turns < 2; turns++) {
		build(&chain, &limits, 0.8, turns, true, NULL, &hull);
		for (int i = 0; i < 2; i++) {
			build(&chain, &limits, 0.8, turns, true, &way[i], &other);
			cr_expect_eq(memcmp(&hull, &other, sizeof hull), 0, "turns %d way %d",
			             turns, i);
		}
	}
	cr_expect_gt(ran, 32);
}

/* No wrench stands twice, and every one is made by its motion, within the limits. */
Test(wrench_hull, wrenches_come_from_their_motion)
{
	struct chain chain;
	struct prepared_chain prepared;
	struct motion_limits limits = {.low = {-pi, -2, -2, 0, -1},
	                               .high = {pi, 1, 2, 0, 1},
	                               .speed = {1.5, 1, 1.5, 3, 3},
	                               .acceleration = {5, 5, 8, 10, 12},
	                               .poses = 4};
	chain_sample(&chain);
	chain_prepare(&chain, &prepared);
	build(&chain, &limits, 0.8, true, true, NULL, &hull);
	for (size_t i = 0; i < hull.count; i++) {
		const struct reaction_at *at = &hull.at[i];
		struct base_wrench wrench;
		chain_wrench(&prepared, at->q, at->speed, at->acceleration, &wrench, NULL);
		for (int k = 0; k < 3; k++) {
			near("force", at->wrench.force[k], wrench.force[k]);
			near("moment", at->wrench.moment[k], wrench.moment[k]);
		}
		for (size_t j = 0; j < chain.count; j++) {
			cr_expect_geq(at->q[j], limits.low[j]);
			cr_expect_leq(at->q[j], limits.high[j]);
			cr_expect_leq(fabs(at->speed[j]), limits.speed[j]);
			cr_expect_leq(fabs(at->acceleration[j]), limits.acceleration[j]);
		}
		for (size_t j = 0; j < i; j++)
			cr_expect_neq(memcmp(&at->wrench, &hull.at[j].wrench, sizeof at->wrench),
			              0);
	}
}
