/* Properties of an arm's own motion against the anchors, on random cells: a wrench that may turn is
 * as good as all its headings by hand, the shear of a set is that of its worst wrench, a set made
 * of a data sheet's four numbers is the data sheet, and a guaranteed bound is one. SEED and CASES
 * may be set in the environment; a failure names its case, and shows the cell.
 *
 * Tolerance: as in prop_flow.c, a maximum over the headings is found to a millionth of a radian,
 * and tension may run some ten sizes a radian: 1e-5 of the largest tension. A standing wrench is
 * solved without a search, to 1e-9. */
#include "../../src/loads/weights.h"
#include "../support/cases.h"
#include "../support/own_motion.h"
#include "../support/random_cell.h"

#include <criterion/criterion.h>
#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

static const double pi = 3.14159265358979323846;
#define SAME 1e-5
#define SOLVED 1e-9
#define DEGREE (3.14159265358979323846 / 180)

enum { MOST_SET = 3, HAND_HEADINGS = 3600 };

static struct plan plan;
static struct arena texts;
static const char *text;             /* the cell without reactions */
static uint64_t number;
static struct arm_load set[MOST_SET], by_hand[HAND_HEADINGS + MOST_SET];
static size_t set_count;

/* The cell of `plan`, without what a data sheet would say of the arm. */
static void write_bare(void)
{
	static const struct change bare = {"arm.reactions", NULL};
	arena_open(&texts, NULL, NULL);
	text = text_with(&texts, plan_write(&texts, &plan, false), &bare, 1);
}

/* Sizes as those of prop_flow.c: up to some 4 kN and 3 kN m about the weight. */
static struct arm_load random_load(struct dice *dice)
{
	double weight = STANDARD_GRAVITY * (plan.arm + plan.payload);
	double push = dice_between(dice, 0, 3000), tilt = dice_between(dice, 0, 3e6);
	double held = STANDARD_GRAVITY *
	              (plan.arm * plan.reach + plan.payload * plan.payload_reach);
	double toward = dice_between(dice, -pi, pi), lean = dice_between(dice, -pi, pi);
	return (struct arm_load){
		.force = {push * cos(toward), push * sin(toward),
	                  -weight + dice_between(dice, -4000, 4000)},
		.moment = {tilt * cos(lean), tilt * sin(lean), dice_between(dice, -1.2e6, 1.2e6)},
		.weight = weight,
		.weight_moment = {held * cos(lean), held * sin(lean)},
		.spin_to = 2 * pi};
}

static void throw_cell(uint64_t stream, double spin_from, double spin_to)
{
	struct dice dice = dice_open(cases_seed() + 1000 * stream, number);
	plan_random(&plan, &dice, false);
	plan.load_count = 0;
	plan.setup_count = plan.setup_count > 2 ? 2 : plan.setup_count;
	set_count = (size_t)dice_whole(&dice, 1, MOST_SET);
	for (size_t i = 0; i < set_count; i++) {
		set[i] = random_load(&dice);
		set[i].spin_from = spin_from;
		set[i].spin_to = spin_to;
	}
}

static void open_set(struct trial *trial, const struct arm_load *list, size_t count)
{
	static struct own_motion own;
	own_motion_open(&own, list, count, NULL, 0);
	own_trial_open(trial, text, &own, false);
}

/* Where the base can tip, tensions near the tipping have no largest value (prop_flow.c). */
static bool is_stable(const struct trial *trial)
{
	const struct check_result *check = trial_check(trial, "base.stability");
	return !check->finding.computed && check->finding.verdict == HOLDS;
}

static double largest_tension(const struct trial *trial)
{
	double largest = 0;
	for (size_t i = 0; i < trial->result->anchor_count; i++)
		largest = fmax(largest, trial->result->anchor[i].tension);
	return largest;
}

static double largest_shear(const struct trial *trial)
{
	double largest = 0;
	for (size_t i = 0; i < trial->result->anchor_count; i++)
		largest = fmax(largest, trial->result->anchor[i].shear);
	return largest;
}

static void no_more(const char *what, size_t anchor, double value, double most, double allowed)
{
	cr_assert(value <= most + allowed,
	          "seed %" PRIu64 " case %" PRIu64 ", anchor %zu: %s %.12g by hand, %.12g by the "
	          "program\n%s",
	          cases_seed(), number, anchor + 1, what, value, most, text);
}

/* Every wrench of the set in as many headings of its range, both ends included. */
static size_t turn_by_hand(double spin_from, double spin_to)
{
	size_t count = 0, each = HAND_HEADINGS / set_count;
	for (size_t i = 0; i < set_count; i++)
		for (size_t k = 0; k <= each; k++)
			by_hand[count++] = turned_load(&set[i], spin_from + (spin_to - spin_from) *
			                                                            (double)k /
			                                                            (double)each);
	return count;
}

/* The heading that was told is one the wrench may take, and standing there it pulls as hard. */
static void told_heading(const struct trial *trial, size_t anchor, double spin_from,
                         double spin_to)
{
	const struct anchor_result *told = &trial->result->anchor[anchor];
	const struct load_case *c = told->tension_at.load_case;
	const struct cell *cell = setup_cell(trial->reading.cell, c->setup);
	double first[2], size = largest_tension(trial);
	struct trial standing;
	if (!(told->tension > 1e-3 * size))
		return;
	load_first(c->arm_load, cell->arm.mount.at[2], first);
	double spin = told->tension_at.heading - atan2(first[1], first[0]);
	if (spin_to - spin_from < 1.99 * pi) {
		spin -= 2 * pi * round((spin - 0.5 * (spin_from + spin_to)) / (2 * pi));
		cr_assert(spin >= spin_from - 1e-12 && spin <= spin_to + 1e-12,
		          "seed %" PRIu64 " case %" PRIu64 ": told at %.12g deg of %g to %g\n%s",
		          cases_seed(), number, spin / DEGREE, spin_from / DEGREE,
		          spin_to / DEGREE, text);
	}
	struct arm_load there = turned_load(c->arm_load, spin);
	open_set(&standing, &there, 1);
	no_more("the standing tension is", anchor, standing.result->anchor[anchor].tension,
	        told->tension, SAME * size);
	no_more("the turning tension is", anchor, told->tension,
	        standing.result->anchor[anchor].tension, SOLVED * size);
	trial_close(&standing);
}

static void turning_is_all_headings(uint64_t stream, double spin_from, double spin_to,
                                    bool all_round)
{
	struct trial turning, standing;
	throw_cell(stream, spin_from, spin_to);
	write_bare();
	open_set(&turning, set, set_count);
	open_set(&standing, by_hand, turn_by_hand(spin_from, spin_to));
	size_t anchors = is_stable(&turning) ? turning.result->anchor_count : 0;
	double tension = largest_tension(&turning), shear = largest_shear(&turning);
	/* between two headings by hand a half step may lie: of the size half its square; four
	 * times that for the twist */
	double step = (spin_to - spin_from) * (double)set_count / HAND_HEADINGS;
	for (size_t i = 0; i < anchors; i++) {
		const struct anchor_result *a = &turning.result->anchor[i],
		                           *b = &standing.result->anchor[i];
		no_more("tension", i, b->tension, a->tension, SAME * tension);
		no_more("shear", i, b->shear, a->shear, SOLVED * shear);
		if (all_round)
			no_more("the other way: shear", i, a->shear, b->shear,
			        (step * step + SOLVED) * shear);
		told_heading(&turning, i, spin_from, spin_to);
	}
	trial_close(&standing);
	trial_close(&turning);
	arena_close(&texts);
}

Test(prop_own_motion, all_round)
{
	uint64_t count = cases_count("turning all round", 200);
	for (number = 0; number < count; number++)
		turning_is_all_headings(1, 0, 2 * pi, true);
}

Test(prop_own_motion, within_a_range)
{
	uint64_t count = cases_count("turning within a range", 200);
	for (number = 0; number < count; number++)
		turning_is_all_headings(2, -60 * DEGREE, 100 * DEGREE, false);
	for (number = 0; number < count / 4; number++) {
		struct dice dice = dice_open(cases_seed() + 3, number);
		double from = dice_between(&dice, -pi, pi);
		turning_is_all_headings(3, from, from + dice_decades(&dice, -4, 0.75), false);
	}
}

/* --- shear with a further load
 * ------------------------------------------------------------------------------ */

/* Shear on an anchor from a force at a place with a twist, added to *shear (Shigley, 9th ed.,
 * 8-12).
 */
static void add_share(size_t anchor, const double at[2], const double force[2], double twist,
                      struct vec2 *shear)
{
	double n = (double)plan.anchor_count, x = 0, y = 0, polar = 0;
	for (size_t i = 0; i < plan.anchor_count; i++) {
		x += plan.anchor[i].x / n;
		y += plan.anchor[i].y / n;
	}
	for (size_t i = 0; i < plan.anchor_count; i++)
		polar += pow(plan.anchor[i].x - x, 2) + pow(plan.anchor[i].y - y, 2);
	double torsion = (at[0] - x) * force[1] - (at[1] - y) * force[0] + twist;
	shear->x += force[0] / n - torsion / polar * (plan.anchor[anchor].y - y);
	shear->y += force[1] / n + torsion / polar * (plan.anchor[anchor].x - x);
}

/* One wrench in any heading, the further load in any other: no pair of headings brings more shear
 * than the program says. */
Test(prop_own_motion, any_two_headings)
{
	uint64_t count = cases_count("own motion with a further load", 200);
	for (number = 0; number < count; number++) {
		struct trial trial;
		throw_cell(4, -60 * DEGREE, 100 * DEGREE);
		struct dice dice = dice_open(cases_seed() + 4, number);
		for (size_t i = 0; i < set_count && number & 1; i++)
			set[i].spin_from = set[i].spin_to = 0;
		plan.setup_count = 0;
		plan.load_count = 1;
		plan.load[0] = (struct plan_load){
			.kind = ANY_SIDE, .force = dice_between(&dice, 500, 2000), .placed = true,
			.with = "emergency_stop", .at_height = dice_between(&dice, 0, 1500),
			.at = {dice_between(&dice, -500, 500), dice_between(&dice, -500, 500)}};
		write_bare();
		open_set(&trial, set, set_count);
		for (size_t k = 0; is_stable(&trial) && k < 3000; k++) {
			size_t i = k % plan.anchor_count;
			const struct arm_load *one = &set[k % set_count];
			struct arm_load at = turned_load(
				one, dice_between(&dice, one->spin_from, one->spin_to + 1e-9));
			double b = dice_between(&dice, -pi, pi);
			const double push[2] = {plan.load[0].force * cos(b),
			                        plan.load[0].force * sin(b)};
			struct vec2 shear = {0, 0};
			add_share(i, plan.mount, at.force, at.moment[2], &shear);
			add_share(i, plan.load[0].at, push, 0, &shear);
			no_more("shear", i, hypot(shear.x, shear.y),
			        trial.result->anchor[i].shear, SOLVED * largest_shear(&trial));
		}
		trial_close(&trial);
		arena_close(&texts);
	}
}

/* --- a data sheet in other words
 * ---------------------------------------------------------------------------- */

/* Horizontal force and tilt aligned, the largest vertical force and the least one that arm_wrench.h
 * reads from it, both twists. */
static void sheet_as_set(const struct plan_reaction *r, double weight, struct arm_load out[4])
{
	for (int i = 0; i < 4; i++) {
		double down = i / 2 ? 2 * weight - r->vertical : r->vertical;
		out[i] = (struct arm_load){
			.force = {r->horizontal, 0, -down},
			.moment = {0, r->tilting, i % 2 ? -r->twisting : r->twisting},
			.weight = weight,
			.spin_to = 2 * pi};
	}
}

static void same(const char *what, size_t anchor, double a, double b, double allowed)
{
	cr_assert(fabs(a - b) <= allowed,
	          "seed %" PRIu64 " case %" PRIu64 ", anchor %zu: %s %.12g by data sheet, %.12g by "
	          "wrenches\n%s",
	          cases_seed(), number, anchor + 1, what, a, b, text);
}

/* Tension and shear of both; `centred`: with arm and parts over the middle of the pattern. */
static void compare_with_sheet(uint64_t stream, bool full_weight)
{
	struct trial sheet, wrenches;
	struct arm_load list[4];
	throw_cell(stream, 0, 2 * pi);
	plan.vertical_flag = plan.tilting_flag = "yes";
	plan.paired = "no";
	plan.reaction[0] = plan.reaction[1];
	write_bare();
	const char *bare = text;
	const char *with = plan_write(&texts, &plan, false);
	if (full_weight) {
		static const struct change full = {"choices.stabilising_weight", "1"};
		bare = text_with(&texts, bare, &full, 1);
		with = text_with(&texts, with, &full, 1);
	}
	text = bare;
	sheet_as_set(&plan.reaction[1], STANDARD_GRAVITY * plan.arm, list);
	open_set(&wrenches, list, 4);
	trial_open(&sheet, with, NULL);
	cr_assert_eq(sheet.reading.status, DONE);
	size_t anchors = is_stable(&wrenches) ? wrenches.result->anchor_count : 0;
	double tension = largest_tension(&sheet), shear = largest_shear(&sheet);
	for (size_t i = 0; i < anchors; i++) {
		const struct anchor_result *a = &sheet.result->anchor[i],
		                           *b = &wrenches.result->anchor[i];
		same("shear", i, a->shear, b->shear, SOLVED * shear);
		same("tension", i, a->tension, b->tension, SAME * tension);
	}
	trial_close(&sheet);
	trial_close(&wrenches);
	arena_close(&texts);
}

Test(prop_own_motion, data_sheet_as_wrenches_with_full_weight)
{
	uint64_t count = cases_count("data sheet as wrenches", 300);
	for (number = 0; number < count; number++)
		compare_with_sheet(5, true);
}

/* The data sheet's largest vertical force keeps the arm's full weight where the other weights are
 * lowered; so must the wrench that is the same. */
Test(prop_own_motion, data_sheet_as_wrenches)
{
	uint64_t count = cases_count("data sheet as wrenches, weights lowered", 300);
	for (number = 0; number < count; number++)
		compare_with_sheet(6, false);
}

/* --- other axes
 * --------------------------------------------------------------------------------------------- */

Test(prop_own_motion, other_axes)
{
	uint64_t count = cases_count("own motion in other axes", 200);
	for (number = 0; number < count; number++) {
		struct trial here, there;
		struct arm_load turned[MOST_SET];
		throw_cell(7, number & 1 ? 0 : -60 * DEGREE, number & 1 ? 2 * pi : 100 * DEGREE);
		struct dice dice = dice_open(cases_seed() + 7, number);
		double turn = dice_between(&dice, -pi, pi);
		write_bare();
		open_set(&here, set, set_count);
		struct plan moved;
		plan_move(&plan, turn, false, dice_between(&dice, -2000, 2000), 300, &moved);
		struct plan kept = plan;
		plan = moved;
		arena_close(&texts);
		write_bare();
		/* as plan_move turns everything that stands in them */
		for (size_t i = 0; i < set_count; i++) {
			turned[i] = turned_load(&set[i], turn);
			turned[i].spin_from = set[i].spin_from;
			turned[i].spin_to = set[i].spin_to;
		}
		open_set(&there, turned, set_count);
		for (size_t i = 0; is_stable(&here) && i < plan.anchor_count; i++) {
			same("tension", i, here.result->anchor[i].tension,
			     there.result->anchor[i].tension, SAME * largest_tension(&here));
			same("shear", i, here.result->anchor[i].shear,
			     there.result->anchor[i].shear, SAME * largest_shear(&here));
		}
		plan = kept;
		trial_close(&here);
		trial_close(&there);
		arena_close(&texts);
	}
}

/* --- chains
 * -------------------------------------------------------------------------------------------------
 */

static const char *random_joint(struct dice *dice)
{
	double mass = dice_between(dice, 2, 20), ball = mass * 1e-2 * dice_between(dice, 0.2, 2);
	return arena_format(&texts,
	                    "{a: %.0f mm, alpha: %d deg, d: %.0f mm, mass: %.3f kg, centre: [%.0f "
	                    "mm, %.0f mm, %.0f mm],"
	                    " inertia: {xx: %.6f kg m2, yy: %.6f kg m2, zz: %.6f kg m2}}",
	                    dice_between(dice, 0, 500), 90 * dice_whole(dice, -1, 1),
	                    dice_between(dice, 0, 300), mass, dice_between(dice, -300, 50),
	                    dice_between(dice, -100, 100), dice_between(dice, -100, 100), ball,
	                    ball, ball);
}

static const char *random_limits(struct dice *dice)
{
	double from = dice_between(dice, -180, 0), to = dice_between(dice, 1, 180);
	return arena_format(&texts,
	                    "{from: %.1f deg, to: %.1f deg, speed: %.1f deg/s, acceleration: %.1f "
	                    "deg/s2, stop: %.1f deg/s2}",
	                    from, to, dice_between(dice, 10, 200), dice_between(dice, 50, 500),
	                    dice_between(dice, 100, 1000));
}

/* An arm of one to three joints on floor, wall or ceiling; `text` with it. */
static void add_random_chain(struct dice *dice)
{
	static const char *const mounting[] = {"floor", "floor", "wall", "ceiling"};
	int joints = dice_whole(dice, 1, 3);
	const char *bodies = "", *limits = "";
	for (int i = 0; i < joints; i++) {
		bodies = arena_format(&texts, "%s%s%s", bodies, i ? ", " : "", random_joint(dice));
		limits = arena_format(&texts, "%s%s%s", limits, i ? ", " : "", random_limits(dice));
	}
	const struct change change[] = {
		{"arm.weight", NULL},
		{"arm.chain.convention", "standard_dh"},
		{"arm.chain.fixed_mass", "12 kg"},
		{"arm.chain.payload", "{mass: 3 kg, centre: [0 mm, 0 mm, 80 mm], inertia: {xx: "
	         "0.02 kg m2, yy: 0.02 kg m2, zz: 0.01 kg m2}}"},
		{"arm.chain.joints", arena_format(&texts, "[%s]", bodies)},
		{"arm.motion", arena_format(&texts, "{poses: 4, bound_poses: 8, joints: [%s]}", limits)},
		{"arm.mounting", mounting[dice_whole(dice, 0, 3)]},
		{"arm.turned", "20 deg"},
		{"arm.mounting_toward", "35 deg"}};
	size_t count = sizeof change / sizeof change[0];
	bool wall = strcmp(change[6].value, "wall") == 0;
	text = text_with(&texts, text, change, wall ? count : count - 1);
}

static double largest_ratio(const struct trial *trial, const char *id)
{
	const struct check_result *check = trial_check(trial, id);
	double most = 0;
	for (size_t s = 0; check && s < MAX_SETUPS; s++)
		if (check->has_setup_ratio[s])
			most = fmax(most, check->setup_ratio[s]);
	return most;
}

/* The bound is never below what was swept, and never fails. */
Test(prop_own_motion, bound_covers_the_sweep)
{
	uint64_t count = cases_count("guaranteed bound", 300), compared = 0;
	for (number = 0; number < count; number++) {
		struct trial trial;
		throw_cell(8, 0, 0);
		struct dice dice = dice_open(cases_seed() + 8, number);
		plan.load_count = number % 4 == 0;
		plan.load[0] = (struct plan_load){.kind = ANY_SIDE, .force = 300,
		                                  .at_height = 1500, .with = "normal"};
		plan.setup_count = 0;
		write_bare();
		add_random_chain(&dice);
		trial_open(&trial, text, NULL);
		cr_assert_eq(trial.reading.status, DONE, "%s\n%s", reading_faults(&trial.reading),
		             text);
		double bound = largest_ratio(&trial, "rating.bound");
		double swept = largest_ratio(&trial, "rating.interaction");
		cr_assert_neq(trial_check(&trial, "rating.bound")->finding.verdict, FAILS);
		if (is_stable(&trial) && swept > 0) {
			compared++;
			cr_assert(bound >= swept * (1 - SAME),
			          "seed %" PRIu64 " case %" PRIu64 ": bound %.9g, swept %.9g\n%s",
			          cases_seed(), number, bound, swept, text);
		}
		trial_close(&trial);
		arena_close(&texts);
	}
	cr_assert(count < 10 || compared > count / 4, "%" PRIu64 " compared", compared);
}
