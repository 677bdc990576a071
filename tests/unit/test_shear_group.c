/* Shear and torsion shared by equal anchors: a published bolt group, closed forms, and the largest
 * shear over all headings against a search. */
#include "../../src/base/farthest.h"
#include "../../src/base/shear_group.h"
#include "../support/random_base.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;
static struct base_case it;
static struct base base;

static struct arena arena;

static void release(void)
{
	arena_close(&arena);
}

/* Prepares the case anew; what was prepared before is gone. */
static void prepare(void)
{
	release();
	arena_open(&arena, NULL, NULL);
	cr_assert_eq(base_prepare(&it.cell, &arena, &base), DONE);
}

TestSuite(shear_published, .fini = release);
TestSuite(shear_group, .fini = release);

static void near(double value, double expected, double tolerance, const char *what)
{
	cr_assert(fabs(value - expected) <= tolerance, "%s: %.12g, expected %.12g within %g", what,
	          value, expected, tolerance);
}

static void four_anchors(double x, double y, double half_length, double half_width)
{
	case_clear(&it);
	case_rectangle(&it, x, y, 2 * half_length + 100, 2 * half_width + 100);
	for (int i = 0; i < 4; i++)
		case_anchor(&it, x + (i & 1 ? half_length : -half_length),
		            y + (i & 2 ? half_width : -half_width));
	prepare();
}

/* Shigley, Mechanical Engineering Design, 9th ed., section 8-12: 16 kN, M = 6800 N m, four bolts at
 * (+-75, +-60) mm (layout inferred): direct 4 kN, torsion 17.7 kN, resultants 21.0 and 14.8 kN.
 * Printed with three figures, from values rounded on the way: 0.5 %. */
Test(shear_published, eccentric_bolt_group)
{
	struct vec2 shear[MAX_ANCHORS];
	four_anchors(0, 0, 75, 60);
	cr_assert(shear_group_share(&base, (const double[]){0, -16e3, -6800e3}, shear));
	double right = hypot(shear[1].x, shear[1].y), left = hypot(shear[0].x, shear[0].y);
	near(right / 1e3, 21.0, 0.1, "toward the load");
	near(left / 1e3, 14.8, 0.1, "away from it");
	cr_assert(shear_group_share(&base, (const double[]){0, 0, 6800e3}, shear));
	near(hypot(shear[0].x, shear[0].y) / 1e3, 17.7, 0.05, "torsion alone");
	cr_assert(shear_group_share(&base, (const double[]){0, 16e3, 0}, shear));
	near(shear[2].y, 4e3, 1e-9, "direct");
}

/* Equilibrium: the shares add up to the force and its torsion about the origin. */
Test(shear_group, equilibrium)
{
	const double force[3] = {3e3, -2e3, 1.7e6};
	struct vec2 shear[MAX_ANCHORS];
	for (uint64_t number = 0; number < 200; number++) {
		struct dice dice = dice_open(7, number);
		case_random(&it, &dice);
		if (it.cell.anchors.count < 2)
			continue;
		prepare();
		cr_assert(shear_group_share(&base, force, shear));
		double sum[3] = {0, 0, 0};
		for (size_t i = 0; i < base.anchor_count; i++) {
			sum[0] += shear[i].x;
			sum[1] += shear[i].y;
			sum[2] += base.anchor_mm[i].x * shear[i].y -
			          base.anchor_mm[i].y * shear[i].x;
		}
		for (int k = 0; k < 3; k++)
			near(sum[k], force[k], 1e-9 * (k < 2 ? 3e3 : 3e3 * base.size + 1.7e6),
			     "sum");
	}
}

/* One anchor takes a force through itself; torsion it cannot take. */
Test(shear_group, one_anchor)
{
	struct vec2 shear[MAX_ANCHORS];
	struct load_case load_case = {.turning_count = 1,
	                              .turning_force = {{.force = 500, .at = {100, 50}}}};
	double size[MAX_ANCHORS], heading[MAX_ANCHORS];
	case_clear(&it);
	case_rectangle(&it, 0, 0, 400, 400);
	case_anchor(&it, 100, 50);
	prepare();
	cr_assert(shear_group_share(&base, (const double[]){10, 20, 100 * 20 - 50 * 10}, shear));
	cr_assert_eq(shear[0].x, 10);
	cr_assert_eq(shear[0].y, 20);
	cr_assert_not(shear_group_share(&base, (const double[]){10, 20, 0}, shear));
	cr_assert_eq(shear[0].x, 10, "the direct share alone");
	cr_assert(shear_group_bound(&base, &load_case, size, heading));
	near(size[0], 500, 1e-9, "bound");
	load_case.turning_force[0].twist = 1;
	cr_assert_not(shear_group_bound(&base, &load_case, size, heading));
	cr_assert_not(shear_group_at(&base, &load_case, 0.3, size));
	near(size[0], 500, 1e-9, "direct share");
}

/* A force at the centre with torsion on a symmetric group: V/n + T/(n r), at right angles to the
 * radius. */
Test(shear_group, bound_of_symmetric_group)
{
	struct load_case load_case = {.turning_count = 1};
	double size[MAX_ANCHORS], heading[MAX_ANCHORS];
	four_anchors(200, -300, 300, 300);
	load_case.turning_force[0] = (struct turning_force){
		.force = 1000, .at = {200, -300}, .twist = 2e5};
	cr_assert(shear_group_bound(&base, &load_case, size, heading));
	double radius = 300 * sqrt(2);
	for (int i = 0; i < 4; i++) {
		near(size[i], 250 + 2e5 / (4 * radius), 1e-9, "bound");
		double at[MAX_ANCHORS];
		shear_group_at(&base, &load_case, heading[i], at);
		near(at[i], size[i], 1e-9, "the heading gives it");
	}
}

/* With no horizontal load there is no shear, and with a fixed one alone it is that. */
Test(shear_group, fixed_part)
{
	struct load_case load_case = {.turning_count = 0};
	double size[MAX_ANCHORS], heading[MAX_ANCHORS];
	struct vec2 shear[MAX_ANCHORS];
	four_anchors(0, 0, 300, 200);
	cr_assert(shear_group_bound(&base, &load_case, size, heading));
	cr_assert_eq(size[0], 0);
	load_case.fixed_shear[0] = 300;
	load_case.fixed_shear[2] = 5e4;
	cr_assert(shear_group_bound(&base, &load_case, size, heading));
	shear_group_share(&base, load_case.fixed_shear, shear);
	for (int i = 0; i < 4; i++)
		near(size[i], hypot(shear[i].x, shear[i].y), 1e-9, "fixed");
}

static struct turning_force random_turning(struct dice *dice)
{
	struct turning_force turning = {.force = dice_between(dice, 0, 2e3),
	                                .at_hull = dice_whole(dice, 0, 1)};
	turning.at[0] = dice_between(dice, -1, 1) * base.size;
	turning.at[1] = dice_between(dice, -1, 1) * base.size;
	turning.twist = dice_whole(dice, 0, 1) ? dice_between(dice, 0, 1) * 2e3 * base.size : 0;
	return turning;
}

static void random_case(struct dice *dice, int turning, struct load_case *load_case)
{
	do
		case_random(&it, dice);
	while (it.cell.anchors.count < 2);
	prepare();
	memset(load_case, 0, sizeof *load_case);
	load_case->turning_count = turning;
	for (int k = 0; k < turning; k++)
		load_case->turning_force[k] = random_turning(dice);
	if (dice_whole(dice, 0, 1))
		for (int k = 0; k < 3; k++)
			load_case->fixed_shear[k] = dice_between(dice, -1, 1) *
			                            (k < 2 ? 1e3 : 1e3 * base.size);
}

/* The bound of a single turning force is the largest of a fine sweep: never below it, and above it
 * by no more than the sweep's step allows, (step/2)^2/2 of the size. */
Test(shear_group, bound_against_sweep)
{
	enum { HEADINGS = 720 };
	for (uint64_t number = 0; number < 150; number++) {
		struct dice dice = dice_open(11, number);
		struct load_case load_case;
		random_case(&dice, 1, &load_case);
		double size[MAX_ANCHORS], heading[MAX_ANCHORS], most[MAX_ANCHORS] = {0},
								at[MAX_ANCHORS];
		cr_assert(shear_group_bound(&base, &load_case, size, heading));
		for (int h = 0; h < HEADINGS; h++) {
			shear_group_at(&base, &load_case, 2 * pi * h / HEADINGS, at);
			for (size_t i = 0; i < base.anchor_count; i++)
				most[i] = fmax(most[i], at[i]);
		}
		for (size_t i = 0; i < base.anchor_count; i++) {
			double step = 2 * pi / HEADINGS;
			near(size[i], most[i], 4 * step * step * size[i], "bound");
			cr_assert_geq(size[i], most[i] * (1 - 1e-12));
			shear_group_at(&base, &load_case, heading[i], at);
			near(at[i], size[i], 1e-10 * size[i], "the heading gives it");
		}
	}
}

/* Two turning forces, each in its own heading, never pass the bound. */
Test(shear_group, bound_of_two)
{
	for (uint64_t number = 0; number < 100; number++) {
		struct dice dice = dice_open(13, number);
		struct load_case load_case;
		random_case(&dice, 2, &load_case);
		double size[MAX_ANCHORS], heading[MAX_ANCHORS], at[MAX_ANCHORS];
		cr_assert(shear_group_bound(&base, &load_case, size, heading));
		for (int h = 0; h < 90; h++) {
			shear_group_at(&base, &load_case, pi * h / 45, at);
			for (size_t i = 0; i < base.anchor_count; i++)
				cr_assert_leq(at[i], size[i] * (1 + 1e-12));
		}
	}
}

/* A force that runs ahead of its tilt, with a twist of its own sign: by the plain sum of its parts
 * at every heading, which the bound never passes below and which it reaches. */
Test(shear_group, lead_and_one_sign)
{
	enum { HEADINGS = 720 };
	for (uint64_t number = 0; number < 150; number++) {
		struct dice dice = dice_open(19, number);
		struct load_case load_case;
		random_case(&dice, 1, &load_case);
		struct turning_force *f = &load_case.turning_force[0];
		f->at_hull = false;
		f->one_sign = true;
		f->lead = dice_between(&dice, -pi, pi);
		f->twist = dice_between(&dice, -2e3, 2e3) * base.size;
		double size[MAX_ANCHORS], heading[MAX_ANCHORS], at[MAX_ANCHORS];
		double most[MAX_ANCHORS] = {0}, step = 2 * pi / HEADINGS;
		cr_assert(shear_group_bound(&base, &load_case, size, heading));
		for (int h = 0; h < HEADINGS; h++) {
			double x = f->force * cos(h * step + f->lead),
			       y = f->force * sin(h * step + f->lead);
			const double whole[3] = {load_case.fixed_shear[0] + x,
			                         load_case.fixed_shear[1] + y,
			                         load_case.fixed_shear[2] + f->twist +
			                                 f->at[0] * y - f->at[1] * x};
			struct vec2 share[MAX_ANCHORS];
			shear_group_share(&base, whole, share);
			shear_group_at(&base, &load_case, h * step, at);
			for (size_t i = 0; i < base.anchor_count; i++) {
				double by_hand = hypot(share[i].x, share[i].y);
				near(at[i], by_hand, 1e-10 * size[i], "at a heading");
				cr_assert_leq(by_hand, size[i] * (1 + 1e-11));
				most[i] = fmax(most[i], by_hand);
			}
		}
		for (size_t i = 0; i < base.anchor_count; i++)
			near(size[i], most[i], 4 * step * step * size[i], "reached");
	}
}

/* The bound's heading is that of the force, so the lead is in none of it; and the sign of a twist
 * that has but one matters: V/n - T/(n r) where it turns against the force's own torsion
 * everywhere. */
Test(shear_group, one_sign_by_hand)
{
	struct load_case load_case = {.turning_count = 1};
	double size[MAX_ANCHORS], heading[MAX_ANCHORS], at[MAX_ANCHORS];
	four_anchors(0, 0, 300, 300);
	/* 1 kN along x at (0, -200): torsion +2e5; with -2e5 of its own nothing twists: 250 N each
	 */
	load_case.turning_force[0] = (struct turning_force){
		.force = 1000, .lead = pi / 2, .at = {0, -200}, .twist = -2e5, .one_sign = true};
	cr_assert(shear_group_at(&base, &load_case, -pi / 2, at));
	for (int i = 0; i < 4; i++)
		near(at[i], 250, 1e-9, "it turns against");
	load_case.turning_force[0].one_sign = false;
	cr_assert(shear_group_at(&base, &load_case, -pi / 2, at));
	near(at[0], hypot(250 + 4e5 * 300 / 7.2e5, 4e5 * 300 / 7.2e5), 1e-9, "either sign");
	load_case.turning_force[0].lead = 0;
	load_case.turning_force[0].one_sign = true;
	cr_assert(shear_group_bound(&base, &load_case, size, heading));
	double of_no_lead = size[2];
	load_case.turning_force[0].lead = 1;
	cr_assert(shear_group_bound(&base, &load_case, size, heading));
	near(size[2], of_no_lead, 1e-9, "whatever its lead");
}

/* The farthest point of an ellipse against a fine search, in the awkward shapes too. */
Test(farthest, ellipses)
{
	for (uint64_t number = 0; number < 400; number++) {
		struct dice dice = dice_open(17, number);
		struct vec2 v[3];
		for (int k = 0; k < 3; k++)
			v[k] = (struct vec2){dice_between(&dice, -1, 1),
			                     dice_between(&dice, -1, 1)};
		switch (number % 8) {
		case 1: v[2] = (struct vec2){-v[1].y, v[1].x}; break;           /* a circle */
		case 2: v[2] = (struct vec2){2 * v[1].x, 2 * v[1].y}; break;    /* a line */
		case 3: v[0] = (struct vec2){0, 0}; break;                      /* centred */
		case 4:
			v[0] = (struct vec2){0, v[0].y};
			v[1].y = v[2].x = 0;
			break;                                                  /* on an axis */
		case 5: v[1] = v[2] = (struct vec2){0, 0}; break;               /* a point */
		case 6: v[0].x *= 1e-9; v[0].y *= 1e-9; break;                  /* nearly centred */
		default: break;
		}
		double heading, size = farthest_on_ellipse(v[0], v[1], v[2], &heading), most = 0;
		for (int h = 0; h < 20000; h++) {
			double c = cos(pi * h / 10000), s = sin(pi * h / 10000);
			most = fmax(most, hypot(v[0].x + v[1].x * c + v[2].x * s,
			                        v[0].y + v[1].y * c + v[2].y * s));
		}
		cr_assert_geq(size, most - 1e-12, "case %d: %.15g below %.15g", (int)number, size,
		              most);
		near(size, most, 1e-6, "farthest");
	}
}
