/* The largest reactions where they can be written down: kinds, companions, speeds in between. */
#include "../../src/arm/reaction_sweep.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static void near(const char *what, double value, double wanted)
{
	cr_expect(fabs(value - wanted) <= 1e-9 * (1 + fabs(wanted)), "%s: %.12g, not %.12g", what,
	          value, wanted);
}

/* Joint 1 upright, joint 2 about the horizontal y at height h, 2 kg at r on it; 10 m/s2 down. */
static const double mass = 2, radius = 0.5, height = 0.3, gravity = 10;

static void open_two_links(struct chain *chain)
{
	const double upright[9] = {1, 0, 0, 0, 1, 0, 0, 0, 1},
		     lying[9] = {1, 0, 0, 0, 0, 1, 0, -1, 0};
	memset(chain, 0, sizeof *chain);
	chain->convention = CHAIN_FRAMES;
	chain->count = 2;
	chain->gravity[2] = -gravity;
	memcpy(chain->link[0].rotation, upright, sizeof upright);
	memcpy(chain->link[1].rotation, lying, sizeof lying);
	chain->link[1].position[2] = height;
	chain->link[1].mass = mass;
	chain->link[1].centre[0] = radius;
}

static void sweep(const struct chain *chain, const struct motion_limits *limits,
                  struct reaction_extremes *out)
{
	reaction_start(out);
	reaction_sweep(chain, limits, 0, reaction_sweep_count(chain, limits), out);
}

Test(reaction_sweep, kinds_of_a_wrench)
{
	const struct base_wrench wrench = {{3, -4, -7}, {5, 12, -2}};
	const double wanted[REACTION_KINDS] = {13, 5, -7, 7, 2};
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		cr_expect_eq(reaction_value((enum reaction_kind)kind, &wrench), wanted[kind]);
}

/* The arm held level, joint 2 fixed: what each joint adds is known (loads of a point mass on a
 * level arm). Joint 1 at v, a: centrifugal m r v^2 outward and m a r across; at height h both tilt,
 * the weight adds outward. Joint 2 lifts and lowers: m a r. */
Test(reaction_sweep, level_arm)
{
	struct chain chain;
	struct motion_limits limits = {.speed = {2}, .acceleration = {6, 8}, .poses = 16};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	sweep(&chain, &limits, &extremes);
	const struct reaction_at *at = extremes.exact;
	double out = mass * radius * 4, across = mass * radius * 6, lift = mass * radius * 8;
	near("horizontal", at[REACTION_HORIZONTAL].value, sqrt(out * out + across * across));
	near("downforce", at[REACTION_DOWNFORCE].value, mass * gravity + lift);
	near("uplift", at[REACTION_UPLIFT].value, lift - mass * gravity);
	near("twisting", at[REACTION_TWISTING].value, across * radius);
	double outward = mass * gravity * radius + height * out + lift * radius;
	near("tilting", at[REACTION_TILTING].value,
	     sqrt(outward * outward + height * across * height * across));
}

/* Joint 1 does not change the downforce; it moves all the same, and the companion says so. */
Test(reaction_sweep, idle_joints_enlarge_the_companion)
{
	struct chain chain;
	struct motion_limits limits = {.speed = {2}, .acceleration = {6, 8}, .poses = 16};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	sweep(&chain, &limits, &extremes);
	const struct reaction_at *down = &extremes.exact[REACTION_DOWNFORCE];
	near("joint 1", fabs(down->acceleration[0]), 6);
	near("joint 2", fabs(down->acceleration[1]), 8);
	near("speed of joint 1", fabs(down->speed[0]), 2);
	const double *moment = down->wrench.moment;
	double tilting = sqrt(moment[0] * moment[0] + moment[1] * moment[1]);
	near("companion", tilting, extremes.exact[REACTION_TILTING].value);
}

/* Joint 1 is left out of the grid only when it turns about the vertical through the origin. */
Test(reaction_sweep, joint_1_counts_unless_upright_in_the_middle)
{
	const double c = cos(1e-3), s = sin(1e-3);
	const double about_x[9] = {1, 0, 0, 0, c, -s, 0, s, c},
		     about_y[9] = {c, 0, s, 0, 1, 0, -s, 0, c};
	struct motion_limits limits = {.high = {1, 1}, .poses = 16};
	struct chain upright, other;
	open_two_links(&upright);
	cr_expect_eq(reaction_sweep_count(&upright, &limits), 16);
	other = upright;
	memcpy(other.link[0].rotation, about_x, sizeof about_x);
	cr_expect_eq(reaction_sweep_count(&other, &limits), 256, "tilted about x");
	memcpy(other.link[0].rotation, about_y, sizeof about_y);
	cr_expect_eq(reaction_sweep_count(&other, &limits), 256, "tilted about y");
	for (int i = 0; i < 2; i++) {
		other = upright;
		other.link[0].position[i] = 1e-3;
		cr_expect_eq(reaction_sweep_count(&other, &limits), 256, "beside the origin");
		other = upright;
		other.gravity[i] = 1e-3;
		cr_expect_eq(reaction_sweep_count(&other, &limits), 256, "base tilted");
	}
	other = upright;
	other.link[0].position[2] = 2;
	cr_expect_eq(reaction_sweep_count(&other, &limits), 16, "higher up");
	other.link[0].kind = JOINT_PRISMATIC;
	cr_expect_eq(reaction_sweep_count(&other, &limits), 256, "a slide");
}

/* At rest every pose weighs the same: the first of them is told. */
Test(reaction_sweep, first_of_equals_stands)
{
	struct chain chain;
	struct motion_limits limits = {.low = {0, -1}, .high = {0, 1}, .poses = 150};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	sweep(&chain, &limits, &extremes);
	near("downforce", extremes.exact[REACTION_DOWNFORCE].value, mass * gravity);
	cr_expect_eq(extremes.exact[REACTION_DOWNFORCE].pose, 0);
	near("position", extremes.exact[REACTION_DOWNFORCE].q[1], -1);
}

/* A quarter turn up from level, at the top: swinging joint 2 relieves the weight. The largest
 * downforce is that of the arm at rest in speed, and both 0 and the limit are tried. */
Test(reaction_sweep, rest_is_among_the_speeds)
{
	struct chain chain;
	struct motion_limits limits = {
		.low = {0, -pi / 2}, .high = {0, -pi / 2}, .speed = {0, 3}, .poses = 1};
	struct reaction_extremes extremes;
	open_two_links(&chain);
	sweep(&chain, &limits, &extremes);
	near("downforce", extremes.exact[REACTION_DOWNFORCE].value, mass * gravity);
	near("at rest", extremes.exact[REACTION_DOWNFORCE].speed[1], 0);
	near("uplift", extremes.exact[REACTION_UPLIFT].value, mass * radius * 9 - mass * gravity);
	near("at speed", fabs(extremes.exact[REACTION_UPLIFT].speed[1]), 3);
}

/* Two joints about one upright axis, masses on opposite sides: F = |M R u^2 - m r (u + w)^2|. The
 * largest may be at w = -u, between its limits: the grid misses it, refining does not. */
Test(reaction_sweep, refining_finds_speeds_in_between)
{
	struct chain chain;
	struct motion_limits limits = {.speed = {2, 5}, .poses = 1};
	struct reaction_extremes extremes;
	const double upright[9] = {1, 0, 0, 0, 1, 0, 0, 0, 1};
	open_two_links(&chain);
	chain.link[0].mass = 4;
	chain.link[0].centre[0] = -0.6;
	memcpy(chain.link[1].rotation, upright, sizeof upright);
	chain.link[1].position[2] = 0;
	chain.link[1].mass = 1;
	sweep(&chain, &limits, &extremes);
	/* both at their limits: 1 x 0.5 x 49 - 4 x 0.6 x 4 = 14.9 */
	near("on the grid", extremes.exact[REACTION_HORIZONTAL].value, 14.9);
	limits.speed[1] = 3;
	/* at most 9.6 - 0.5 (2 - 3)^2 = 9.1 at limits; at w = -2 nothing is taken off */
	sweep(&chain, &limits, &extremes);
	near("on the grid", extremes.exact[REACTION_HORIZONTAL].value, 9.1);
	reaction_refine(&chain, &limits, &extremes);
	near("refined", extremes.exact[REACTION_HORIZONTAL].value, 9.6);
	/* a top is flat: its place is known to the root of rounding */
	cr_expect_float_eq(fabs(extremes.exact[REACTION_HORIZONTAL].speed[1]), 2, 1e-6);
}
