/* rating.bound: the guaranteed bound of the arm's motion is judged by itself. It never fails, what
 * it does not show never holds, and no other check sees it. */
#include "../support/own_motion.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

#define RATING "anchors.product.rating."
#define ENGINEER {"choices.by_engineer", "{name: demo, reason: of a test}"}

static const double pi = 3.14159265358979323846;
static struct arena texts;
static struct trial trial;
static struct own_motion own;

static void start(void)
{
	arena_open(&texts, NULL, NULL);
}

static void finish(void)
{
	arena_close(&texts);
}

TestSuite(rating_bound, .init = start, .fini = finish);

static const struct result *run(const struct change *change, size_t count)
{
	const char *text = chain_sample_text(&texts, change, count);
	trial_open(&trial, text, NULL);
	cr_assert_eq(trial.reading.status, DONE, "%s\n%s", reading_faults(&trial.reading), text);
	return trial.result;
}

/* The chain's cell with wrenches by hand in its place. */
static const struct result *run_by_hand(const struct arm_load *swept, const struct arm_load *bound,
                                        size_t bound_count, const struct change *change,
                                        size_t count)
{
	own_motion_open(&own, swept, 1, bound, bound_count);
	own_trial_open(&trial, chain_sample_text(&texts, change, count), &own, false);
	return trial.result;
}

static const struct check_result *check(const char *id)
{
	const struct check_result *found = trial_check(&trial, id);
	cr_assert(found, "%s is left out", id);
	return found;
}

static const char *why_left_out(void)
{
	for (size_t i = 0; i < trial.result->left_out_count; i++)
		if (strcmp(trial.result->left_out[i].id, "rating.bound") == 0)
			return trial.result->left_out[i].why;
	return NULL;
}

Test(rating_bound, holds)
{
	run(NULL, 0);
	cr_expect_eq(check("rating.bound")->finding.verdict, HOLDS);
	cr_expect_gt(check("rating.bound")->finding.ratio,
	             check("rating.interaction")->finding.ratio);
	cr_expect(check("rating.bound")->at.load_case->bound);
	cr_expect(strstr(check("rating.bound")->at.load_case->name, "guaranteed bound") != NULL);
	cr_expect_null(why_left_out());
	trial_close(&trial);
}

/* A rating between what the sweep and what the bound asks for: nothing fails, the file is unproven;
 * far below both, the swept wrenches fail and the bound still does not. */
Test(rating_bound, above_one_is_unproven)
{
	static const struct change weak[] = {{RATING "tension", "100 N"},
	                                     {RATING "shear", "100 N"}};
	struct change between[] = {{RATING "tension", ""}, {RATING "shear", ""}};
	run(NULL, 0);
	double least = check("rating.interaction")->finding.ratio,
	       most = check("rating.bound")->finding.ratio, share = sqrt(least * most);
	trial_close(&trial);
	between[0].value = arena_format(&texts, "%.6f kN", 40 * share);
	between[1].value = arena_format(&texts, "%.6f kN", 32 * share);
	const struct result *result = run(between, 2);
	cr_expect_eq(check("rating.interaction")->finding.verdict, HOLDS);
	cr_expect_eq(check("rating.bound")->finding.verdict, UNPROVEN);
	/* the heading is searched until nothing that is watched can grow by more than this */
	expect_near(check("rating.bound")->finding.ratio, most / share, 1e-5);
	cr_expect_eq(result->verdict, UNPROVEN);
	cr_expect(strstr(check("rating.bound")->finding.remedy, "judged_by") != NULL);
	trial_close(&trial);
	run(weak, 2);
	cr_expect_eq(check("rating.interaction")->finding.verdict, FAILS);
	cr_expect_eq(check("rating.bound")->finding.verdict, UNPROVEN);
	trial_close(&trial);
}

Test(rating_bound, left_out_without_chain_or_motion)
{
	static const struct change no_motion = {"arm.motion", NULL};
	trial_open(&trial, sample_lift, NULL);
	cr_assert_not_null(why_left_out());
	cr_expect(strstr(why_left_out(), "no chain") != NULL);
	trial_close(&trial);
	trial_open(&trial, swing_sample_text(&texts, NULL, 0), NULL);
	cr_expect_not_null(why_left_out());
	trial_close(&trial);
	run(&no_motion, 1);
	cr_expect_not_null(why_left_out());
	for (size_t i = 0; i < trial.result->check_count; i++)
		cr_expect(!trial.result->checks[i].check->needs_loads ||
		                  strcmp(trial.result->checks[i].check->id, "base.stability") ==
		                          0 ||
		                  trial.result->checks[i].finding.verdict != HOLDS,
		          "%s", trial.result->checks[i].check->id);
	trial_close(&trial);
}

/* Leaving the bound out is a departure: nothing of the loads holds before an engineer stands for
 * it. */
Test(rating_bound, judged_by_sweep)
{
	static const struct change sweep[] = {{"arm.motion.judged_by", "sweep"}, ENGINEER};
	const struct result *result = run(sweep, 1);
	cr_expect_not_null(why_left_out());
	cr_expect(strstr(why_left_out(), "judged_by: sweep") != NULL);
	cr_expect_eq(check("rating.interaction")->finding.verdict, UNPROVEN);
	cr_expect_eq(check("rating.tension")->finding.verdict, UNPROVEN);
	cr_expect_eq(result->verdict, UNPROVEN);
	cr_assert_eq(result->departures.count, 1);
	cr_expect(strstr(result->departures.list[0], "no engineer stands for it") != NULL);
	trial_close(&trial);
	result = run(sweep, 2);
	cr_expect_not_null(why_left_out());
	cr_expect_eq(check("rating.interaction")->finding.verdict, HOLDS);
	cr_assert_eq(result->departures.count, 1);
	cr_expect(strstr(result->departures.list[0], "by engineer demo") != NULL);
	trial_close(&trial);
}

/* One setup that asks for the bound is enough: what the file says beside its setups is no way out.
 */
Test(rating_bound, due_in_one_setup)
{
	static const struct change setups[] = {
		{"arm.motion.judged_by", "sweep"},
		{"setups", "[{name: swept, arm.motion.judged_by: sweep}, "
	                   "{name: bounded, arm.motion.judged_by: bound}]"}};
	run(setups, 2);
	cr_expect_null(why_left_out());
	cr_expect(check("rating.bound")->finding.computed);
	cr_expect_eq(check("rating.bound")->at.setup, 1);
	cr_expect_eq(check("rating.tension")->finding.verdict, UNPROVEN,
	             "no engineer for the first");
	trial_close(&trial);
}

/* Sample of the four anchors: 4 kN of uplift and 8 kN of push through the middle are 1 kN and 2 kN
 * an anchor, of 10 kN and 8 kN allowed: 0.1 + 0.25. The swept wrench pushes 80 N. No parts, so that
 * nothing presses. */
Test(rating_bound, by_hand)
{
	static const struct change bare[] = {{"cell.parts", "none"},
	                                     {"arm.mount", "[0 mm, 0 mm, 0 mm]"}};
	const struct arm_load swept = {.force = {80, 0, 40}, .spin_to = 2 * pi},
	                      bound = {.force = {8000, 0, 4000}, .spin_to = 2 * pi};
	const struct result *result = run_by_hand(&swept, &bound, 1, bare, 2);
	expect_near(check("rating.bound")->finding.ratio, 0.35, 1e-9);
	expect_near(check("rating.interaction")->finding.ratio, 0.0035, 1e-11);
	for (size_t i = 0; i < 4; i++) {
		expect_near(result->anchor[i].tension, 10, 1e-8);
		expect_near(result->anchor[i].shear, 20, 1e-8);
		cr_expect_not(result->anchor[i].tension_at.load_case->bound);
		cr_expect_not(result->anchor[i].shear_at.load_case->bound);
		for (size_t r = 0; r < result->bed_ratio_count; r++)
			expect_near(result->spread[i][r], 10, 1e-8);
	}
	trial_close(&trial);
}

/* What every other check says is the same to the bit, with the bound and without. */
Test(rating_bound, nothing_else_sees_it)
{
	struct trial without;
	const struct arm_load swept = {.force = {500, 0, -300}, .moment = {0, 4e5, 1e5},
	                               .weight = 300, .spin_to = 2 * pi},
	                      bound = {.force = {5000, 0, 9000}, .moment = {0, 4e6, 1e6},
	                               .weight = 300, .spin_to = 2 * pi};
	const struct result *b = run_by_hand(&swept, NULL, 0, NULL, 0);
	without = trial;
	const struct result *a = run_by_hand(&swept, &bound, 1, NULL, 0);
	cr_assert_eq(a->check_count, b->check_count);
	for (size_t i = 0; i < a->check_count; i++) {
		const struct check_result *one = &a->checks[i], *two = &b->checks[i];
		if (strcmp(one->check->id, "rating.bound") == 0)
			continue;
		cr_expect(one->finding.verdict == two->finding.verdict &&
		                  one->finding.computed == two->finding.computed &&
		                  memcmp(&one->finding.ratio, &two->finding.ratio,
		                         sizeof(double)) == 0,
		          "%s: %.17g and %.17g", one->check->id, one->finding.ratio,
		          two->finding.ratio);
	}
	for (size_t i = 0; i < a->anchor_count; i++)
		cr_expect(memcmp(&a->anchor[i].tension, &b->anchor[i].tension, sizeof(double)) ==
		                  0 &&
		          memcmp(&a->anchor[i].shear, &b->anchor[i].shear, sizeof(double)) == 0 &&
		          memcmp(a->spread[i], b->spread[i], sizeof a->spread[i]) == 0);
	cr_expect_gt(check("rating.bound")->finding.ratio, 0.5);
	trial_close(&without);
	trial_close(&trial);
}

/* Two anchors on the edge of the base: about that edge weight alone resists. 600 kg over the middle
 * hold 500 mm x 0.6 x 5884 N = 1.77 kN m; the swept 0.2 kN m stay far below that, the bound of 4 kN
 * m tips the cell. A bound that cannot be carried is not shown to be carried. */
Test(rating_bound, that_tips_the_cell_is_not_shown)
{
	static const struct change edge[] = {
		{"anchors.at", "{unit: mm, points: [[500, -300], [500, 300]]}"}, {"anchors.lug", "yes"},
		{"cell.parts", "[{mass: 600 kg, at: [0 mm, 0 mm, 200 mm]}]"}};
	const struct arm_load swept = {.moment = {0, 2e5, 0}, .spin_to = 2 * pi},
	                      bound = {.moment = {0, 4e6, 0}, .spin_to = 2 * pi};
	run_by_hand(&swept, &bound, 1, edge, 3);
	cr_expect_eq(check("base.stability")->finding.verdict, HOLDS);
	cr_expect_neq(check("rating.bound")->finding.verdict, HOLDS, "ratio %g",
	              check("rating.bound")->finding.ratio);
	trial_close(&trial);
}

/* Near the limit of balance forces outgrow what doubles hold, which base.stability fails on; a
 * bound that comes there, in some heading, is none of its business. */
Test(rating_bound, near_the_limit_is_not_seen_by_stability)
{
	static const struct change edge[] = {
		{"anchors.at", "{unit: mm, points: [[500, -300], [500, 300]]}"}, {"anchors.lug", "yes"},
		{"cell.parts", "[{mass: 600 kg, at: [0 mm, 0 mm, 200 mm]}]"}};
	const struct arm_load swept = {.moment = {0, 2e5, 0}, .spin_to = 2 * pi};
	struct arm_load bound = {.spin_to = 2 * pi};
	for (int i = 0; i < 60; i++) {
		bound.moment[1] = 1.5e6 + 5e4 * i;
		bound.force[2] = 20.0 * i;
		run_by_hand(&swept, &bound, 1, edge, 3);
		cr_expect_eq(check("base.stability")->finding.verdict, HOLDS, "%g N m: %s",
		             bound.moment[1] / 1e3, check("base.stability")->finding.reason);
		trial_close(&trial);
	}
}

/* A single anchor cannot resist twisting: base.stability fails where the swept wrenches twist, not
 * where the bound alone does. */
Test(rating_bound, twist_on_a_single_anchor)
{
	static const struct change one = {"anchors.at", "{unit: mm, points: [[0, 0]]}"};
	const struct arm_load swept = {.force = {80, 0, 0}, .spin_to = 2 * pi},
	                      bound = {.force = {80, 0, 0}, .moment = {0, 0, 1e5},
	                               .spin_to = 2 * pi};
	run_by_hand(&swept, NULL, 0, &one, 1);
	cr_expect_eq(check("base.stability")->finding.verdict, HOLDS);
	trial_close(&trial);
	run_by_hand(&swept, &bound, 1, &one, 1);
	cr_expect_eq(check("base.stability")->finding.verdict, HOLDS, "%s",
	             check("base.stability")->finding.reason);
	cr_expect_neq(check("rating.bound")->finding.verdict, HOLDS, "no anchor takes the twist");
	trial_close(&trial);
}

/* Without a number of the chain there is no bound: it is named, and nothing holds. */
Test(rating_bound, missing_numbers)
{
	static const struct change missing[] = {{"arm.chain.joints[2].mass", "unknown"}};
	run(missing, 1);
	cr_expect_eq(check("rating.bound")->finding.verdict, UNPROVEN);
	cr_expect(is_missing(check("rating.bound"), "arm.chain.joints[].mass"));
	trial_close(&trial);
}

/* The further load comes with the bound too. */
Test(rating_bound, with_a_further_load)
{
	static const struct change push[] = {
		{"loads", "[{name: leaning person, force: 500 N, direction: any, at_height: 1500 mm, "
	                  "with: emergency_stop}]"}};
	run(NULL, 0);
	double alone = check("rating.bound")->finding.ratio;
	trial_close(&trial);
	run(push, 1);
	cr_expect_gt(check("rating.bound")->finding.ratio, alone * 1.01);
	cr_expect(strstr(check("rating.bound")->at.load_case->name, "leaning person") != NULL);
	trial_close(&trial);
}
