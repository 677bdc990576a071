/* Where the bound is the truth itself: polynomials of full degree whose tops lie just between two
 * points of the grid, so that every digit of the factor is needed. Closed forms throughout. */
#include "../../src/arm/reaction_sweep.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* Joint 1 upright, joint 2 about the horizontal y through the origin, 3 kg at 0.8 m on it; no
 * gravity. */
static const double mass = 3, radius = 0.8;

static void open_two_links(struct chain *chain)
{
	const double upright[9] = {1, 0, 0, 0, 1, 0, 0, 0, 1};
	/* z of the second link along y */
	const double lying[9] = {1, 0, 0, 0, 0, 1, 0, -1, 0};
	memset(chain, 0, sizeof *chain);
	chain->convention = CHAIN_FRAMES;
	chain->count = 2;
	memcpy(chain->link[0].rotation, upright, sizeof upright);
	memcpy(chain->link[1].rotation, lying, sizeof lying);
	chain->link[1].mass = mass;
	chain->link[1].centre[0] = radius;
}

/* The whole bound with joint 2 on eight points from `first` on. */
static void bound_of(const struct chain *chain, struct motion_limits *limits, double first,
                     struct reaction_extremes *out)
{
	limits->low[1] = first;
	limits->high[1] = first + 2 * pi;
	limits->poses = 8;
	reaction_start(out);
	reaction_bound(chain, limits, out);
}

/* Rounding and the bound's own slack for it. */
static void expect_reached(double bound, double truth)
{
	cr_expect_geq(bound, truth * (1 - 1e-14));
	cr_expect_leq(bound, truth * (1 + 1e-10), "bound %.15g, truth %.15g", bound, truth);
}

/* Joint 1 accelerates: the mass at radius r cos q and height r sin q tilts the base by
 * m a r cos q r sin q = m a r^2 sin(2 q) / 2, of degree 2, largest at 45 degrees. */
Test(reaction_bound, moment_of_full_degree)
{
	struct chain chain;
	struct motion_limits limits = {.acceleration = {7}};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	bound_of(&chain, &limits, pi / 8, &extremes);
	expect_reached(extremes.bound[REACTION_TILTING], mass * 7 * radius * radius / 2);
	/* a grid that meets the top: the factor is a gift */
	bound_of(&chain, &limits, 0, &extremes);
	expect_reached(extremes.bound[REACTION_TILTING],
	               mass * 7 * radius * radius / 2 / cos(pi / 4));
}

/* Joint 2 accelerates: tangential push m a r, of which sin q is horizontal: degree 1, largest at 90
 * degrees. */
Test(reaction_bound, force_of_full_degree)
{
	struct chain chain;
	struct motion_limits limits = {.acceleration = {0, 7}};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	bound_of(&chain, &limits, pi / 8, &extremes);
	expect_reached(extremes.bound[REACTION_HORIZONTAL], mass * 7 * radius);
	expect_reached(extremes.bound[REACTION_DOWNFORCE], mass * 7 * radius);
	expect_reached(extremes.bound[REACTION_UPLIFT], mass * 7 * radius);
}

/* The weight is not multiplied: with it the vertical bounds move by m g and no more. */
Test(reaction_bound, weight_is_left_out_of_the_factor)
{
	struct chain chain;
	struct motion_limits limits = {.acceleration = {0, 7}};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	chain.gravity[2] = -10;
	bound_of(&chain, &limits, pi / 8, &extremes);
	expect_reached(extremes.bound[REACTION_DOWNFORCE], mass * (7 * radius + 10));
	cr_expect_float_eq(extremes.bound[REACTION_UPLIFT], mass * (7 * radius - 10), 1e-9);
}

/* A square of a speed pulls one way only: centrifugal m r v^2, at 10 rad/s down at the lowest pose.
 */
Test(reaction_bound, squares_of_speed_count_once)
{
	struct chain chain;
	struct motion_limits limits = {.speed = {0, 10}};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	bound_of(&chain, &limits, pi / 8, &extremes);
	expect_reached(extremes.bound[REACTION_HORIZONTAL], mass * radius * 100);
}

/* Both joints at speed, u and w: the moment of momentum m r^2 cos^2 q u about the vertical changes
 * by the twist m r^2 sin(2 q) u w alone, of degree 2, largest at 45 degrees. */
Test(reaction_bound, product_of_speeds_counts_in_full)
{
	struct chain chain;
	struct motion_limits limits = {.speed = {3, 2}};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	bound_of(&chain, &limits, pi / 8, &extremes);
	expect_reached(extremes.bound[REACTION_TWISTING], mass * radius * radius * 3 * 2);
}

/* A slide from -0.2 to 0.6 m along z of a table that accelerates about y: it tilts the base by m a
 * z^2, of degree 2 in z, largest at an end; both ends are points of the grid. */
Test(reaction_bound, prismatic_joint)
{
	struct chain chain;
	struct motion_limits limits = {
		.low = {0, -0.2}, .high = {0, 0.6}, .acceleration = {5}, .poses = 16};
	struct reaction_extremes extremes;
	const double y_axis[9] = {1, 0, 0, 0, 0, 1, 0, -1, 0},
		     back[9] = {1, 0, 0, 0, 0, -1, 0, 1, 0};
	open_two_links(&chain);
	memcpy(chain.link[0].rotation, y_axis, sizeof y_axis);
	memcpy(chain.link[1].rotation, back, sizeof back);
	chain.link[1].kind = JOINT_PRISMATIC;
	chain.link[1].centre[0] = 0;
	reaction_start(&extremes);
	reaction_bound(&chain, &limits, &extremes);
	cr_expect_eq(reaction_bound_count(&chain, &limits), 9, "half a circle of 16");
	expect_reached(extremes.bound[REACTION_TILTING], mass * 5 * 0.36 / cos(pi / 8));
	expect_reached(extremes.bound[REACTION_HORIZONTAL], mass * 5 * 0.6 / cos(pi / 16));
}

/* Nothing known before, and a fixed arm at rest: its weight. */
Test(reaction_bound, nothing_and_rest)
{
	struct chain chain;
	struct motion_limits limits = {.poses = 16};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	chain.gravity[2] = -10;
	reaction_start(&extremes);
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		cr_expect_eq(extremes.bound[kind], HUGE_VAL);
		cr_expect_eq(extremes.exact[kind].value, -HUGE_VAL);
	}
	reaction_bound_from_peaks(&chain, &limits, &extremes);
	cr_expect_eq(extremes.bound[0], HUGE_VAL, "no peak, no bound");
	reaction_refine(&chain, &limits, &extremes);
	cr_expect_eq(extremes.exact[0].value, -HUGE_VAL, "nothing swept, nothing to refine");
	reaction_sweep(&chain, &limits, 0, 0, &extremes);
	cr_expect_eq(extremes.poses, 0);
	reaction_sweep(&chain, &limits, 0, reaction_sweep_count(&chain, &limits), &extremes);
	reaction_bound(&chain, &limits, &extremes);
	const double truth[REACTION_KINDS] = {10 * mass * radius, 0, -10 * mass, 10 * mass, 0};
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		cr_expect_float_eq(extremes.exact[kind].value, truth[kind], 1e-12);
		cr_expect_float_eq(extremes.bound[kind], truth[kind], 1e-8);
	}
}
