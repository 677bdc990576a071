/* The least rating of a substitute: every value printed holds when it is entered into the file, a
 * thousandth less does not; the same for every pair. Values are rounded up to five digits, a
 * ten-thousandth at most. */
#include "../../src/study/require.h"
#include "../support/own_motion.h"
#include "../support/random_cell.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <glob.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#define RATING "anchors.product.rating."
/* a rating that never governs */
#define PLENTY 1e7
static const double less = 0.999;

/* As the page writes it and a user copies it. */
static void written(double value, char out[40])
{
	char number[32];
	number_write(value / 1000, 6, number, sizeof number);
	snprintf(out, 40, "%s kN", number);
}

/* The largest ratio over the setups of one check; 0 where it has none. */
static double largest(const struct trial *trial, const char *id)
{
	const struct check_result *check = trial_check(trial, id);
	double most = 0;
	for (size_t s = 0; check && s < MAX_SETUPS; s++)
		if (check->has_setup_ratio[s])
			most = fmax(most, check->setup_ratio[s]);
	return most;
}

/* `needs`: of a file without a load model. */
struct ratios { double tension, shear, both, needs, bound; };

/* What the arm's own motion gives does not depend on the rating: worked out once a file. */
static const struct arm_loads *const *arms;

/* The file with these ultimate loads entered. */
static struct ratios entered(const char *yaml, double tension, double shear)
{
	char t[40], v[40];
	struct arena arena;
	struct trial trial;
	arena_open(&arena, NULL, NULL);
	written(tension, t);
	written(shear, v);
	const struct change change[] = {
		{RATING "basis", "ultimate"}, {RATING "tension", t}, {RATING "shear", v}};
	struct check_options options = {.arms = arms};
	trial_open(&trial, text_with(&arena, yaml, change, 3), &options);
	cr_assert_eq(trial.reading.status, DONE, "%s", reading_faults(&trial.reading));
	struct ratios out = {largest(&trial, "rating.tension"), largest(&trial, "rating.shear"),
	                     largest(&trial, "rating.interaction"), largest(&trial, "needs"), 0};
	out.bound = largest(&trial, "rating.bound");
	out.both = fmax(out.both, out.bound);
	if (!trial.result->loads_computed)
		out.tension = out.shear = out.needs;
	trial_close(&trial);
	arena_close(&arena);
	return out;
}

static struct required required_of(const char *name, const char *yaml)
{
	struct trial trial;
	struct check_options options = {.histories = example_histories()};
	trial_open(&trial, yaml, &options);
	cr_assert_eq(trial.reading.status, DONE, "%s: %s", name, reading_faults(&trial.reading));
	cr_assert_eq(require_fill(&trial.reading.arena, trial.reading.cell, &options, trial.result),
	             DONE);
	cr_expect(trial.result->required.computed, "%s", name);
	struct required out = trial.result->required;
	trial_close(&trial);
	return out;
}

/* Largest ratio of tension alone, with that of rating.bound, whose straight line takes in shear
 * too: twice the tension rating halves its tension's part and leaves the other. */
static double tension_alone(const char *yaml, double tension)
{
	struct ratios at = entered(yaml, tension, PLENTY);
	double bound = at.bound > 0 ? 2 * (at.bound - entered(yaml, 2 * tension, PLENTY).bound) : 0;
	return fmax(at.tension, bound);
}

static double shear_alone(const char *yaml, double shear)
{
	struct ratios at = entered(yaml, PLENTY, shear);
	double bound = at.bound > 0 ? 2 * (at.bound - entered(yaml, PLENTY, 2 * shear).bound) : 0;
	return fmax(at.shear, bound);
}

static void each_alone(const char *name, const char *yaml, const struct required *required)
{
	if (required->tension > 0) {
		double at = tension_alone(yaml, required->tension);
		double below = tension_alone(yaml, less * required->tension);
		cr_expect(at <= 1 && below > 1, "%s: tension %g N: %.9g, %.9g\n%s", name,
		          required->tension, at, below, yaml);
	}
	if (required->shear > 0) {
		double at = shear_alone(yaml, required->shear);
		double below = shear_alone(yaml, less * required->shear);
		cr_expect(at <= 1 && below > 1, "%s: shear %g N: %.9g, %.9g\n%s", name,
		          required->shear, at, below, yaml);
	}
}

static double worst(struct ratios ratios)
{
	return fmax(fmax(ratios.both, ratios.bound), fmax(ratios.tension, ratios.shear));
}

static void each_pair(const char *name, const char *yaml, const struct required *required)
{
	/* of a history the largest tension and shear are paired though they belong to different
	 * rows, as a note says: enough, but not the least */
	bool of_rows = strstr(yaml, "history:") != NULL;
	for (size_t k = 0; k < required->pair_count; k++) {
		const struct required_pair *pair = &required->pair[k];
		double at = worst(entered(yaml, pair->tension, pair->shear));
		double below = worst(entered(yaml, pair->tension, less * pair->shear));
		double both_below = worst(entered(yaml, less * pair->tension, less * pair->shear));
		cr_expect(at <= 1 && at > 0.9 && (of_rows || (below > 1 && both_below > 1)),
		          "%s: pair %g N, %g N: %.9g, %.9g, %.9g\n%s", name, pair->tension,
		          pair->shear, at, below, both_below, yaml);
		cr_expect(pair->tension >= required->tension && pair->shear >= required->shear,
		          "%s: pair %zu", name, k);
		/* more tension never asks for more shear */
		if (k > 0)
			cr_expect(pair->tension > pair[-1].tension && pair->shear <= pair[-1].shear,
			          "%s: pair %zu", name, k);
	}
}

static struct required check_text(const char *name, const char *yaml)
{
	struct required required = required_of(name, yaml);
	struct trial trial;
	const struct check_options options = {.histories = example_histories()};
	trial_open(&trial, yaml, &options);
	arms = trial.result->arm;
	each_alone(name, yaml, &required);
	each_pair(name, yaml, &required);
	arms = NULL;
	trial_close(&trial);
	return required;
}

/* The text with more lines behind the first one like that; as it is where there is none. */
static const char *with_line(struct arena *arena, const char *text, const char *line,
                             const char *more)
{
	const char *at = strstr(text, line);
	if (!at)
		return text;
	at += strlen(line);
	return arena_format(arena, "%.*s%s%s", (int)(at - text), text, more, at);
}

Test(require, every_example)
{
	glob_t found;
	size_t computed = 0;
	cr_assert_eq(glob("examples/*.yaml", 0, NULL, &found), 0);
	for (size_t i = 0; i < found.gl_pathc; i++) {
		struct arena arena;
		arena_open(&arena, NULL, NULL);
		const char *text = file_text(&arena, found.gl_pathv[i]);
		/* the arm's own motion on a coarse grid: it is worked out in each of many runs */
		const char *coarse = with_line(&arena, text, "  motion:\n",
		                               "    poses: 2\n    bound_poses: 8\n");
		computed += check_text(found.gl_pathv[i], coarse).pair_count > 0;
		arena_close(&arena);
	}
	globfree(&found);
	cr_expect_geq(computed, 5, "%zu examples have pairs", computed);
}

static void random_cell(uint64_t number, const char *paired)
{
	static struct plan plan;
	struct dice dice = dice_open(21, number);
	struct arena arena;
	char name[40];
	plan_random(&plan, &dice, true);
	plan.paired = paired;
	if (strcmp(paired, "yes") == 0)
		plan.load_count = plan.setup_count = 0; /* the search for pairs takes many runs */
	snprintf(name, sizeof name, "cell %u, paired %s", (unsigned)number, paired);
	arena_open(&arena, NULL, NULL);
	const char *yaml = plan_write(&arena, &plan, number & 1);
	struct trial trial;
	trial_open(&trial, yaml, NULL);
	/* where the base can tip, tensions near the tipping have no largest value */
	bool stable = trial_check(&trial, "base.stability")->finding.verdict == HOLDS;
	trial_close(&trial);
	if (stable)
		check_text(name, yaml);
	arena_close(&arena);
}

Test(require, random_cells)
{
	for (uint64_t number = 0; number < 10; number++)
		random_cell(number, "no");
}

Test(require, random_cells_with_paired_headings)
{
	for (uint64_t number = 100; number < 102; number++)
		random_cell(number, "yes");
}

/* By hand: 1 kN of tension and 2 kN of shear an anchor at a quarter of the ultimate load: 4 and 8
 * kN. On the straight line beside 1.25 x 4 = 5 kN of tension 0.8 is used, so 8/(1 - 0.8) = 40 kN of
 * shear. */
Test(require, by_hand)
{
	struct required required = check_text("lift", sample_lift);
	expect_near(required.tension, 4000, 0.5);
	expect_near(required.shear, 8000, 0.5);
	cr_assert_eq(required.pair_count, MAX_PAIRS);
	expect_near(required.pair[1].tension, 5000, 1);
	expect_near(required.pair[1].shear, 40000, 20);
	cr_expect_not(required.at_least);
}

/* Factors of the slab and the pattern are in it: in concrete of 30 MPa the rating at 40 MPa counts
 * sqrt(0.75), so 4/0.8660254 = 4.6188 kN are needed. */
Test(require, with_factors)
{
	struct arena arena;
	const struct change change = {"slab.concrete.strength.specified", "30 MPa"};
	arena_open(&arena, NULL, NULL);
	struct required required = check_text("weaker", text_with(&arena, sample_lift, &change, 1));
	expect_near(required.tension, 4618.802, 1);
	arena_close(&arena);
}

/* Without a load model the papers' needs stand for it: 5 kN and 2 kN at a quarter of ultimate. */
Test(require, from_the_papers_needs)
{
	struct required required = check_text("needs", sample_needs);
	expect_near(required.tension, 20000, 1);
	expect_near(required.shear, 8000, 1);
	cr_expect_eq(required.pair_count, 0);
}

/* Without a product the factors that need one are 1; with loads that are not complete the values
 * are labelled "at least". */
Test(require, without_a_product_and_with_missing_loads)
{
	static const struct change bare = {"anchors.product", NULL};
	static const struct change missing = {"arm.reactions.emergency_stop", "unknown"};
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	struct required required = required_of("bare", text_with(&arena, sample_lift, &bare, 1));
	cr_expect(required.computed);
	expect_near(required.tension, 4000, 0.5);
	expect_near(required.shear, 8000, 0.5);
	required = required_of("missing", text_with(&arena, sample_lift, &missing, 1));
	cr_expect(required.at_least);
	expect_near(required.tension, 1000, 0.5);      /* of normal motion alone: 250 N an anchor */
	arena_close(&arena);
}

/* --- the arm's own motion
 * ------------------------------------------------------------------------------------ */

/* The sample with more to carry: ratings below 100 N are refused. */
static const char *heavy_chain(struct arena *arena, const struct change *change, size_t count)
{
	static const struct change heavy[] = {
		{"arm.mount", "[0 mm, 0 mm, 900 mm]"},
		{"arm.chain.payload.mass", "20 kg"},
		{"arm.motion.joints[1].stop", "1200 deg/s2"},
		{"arm.motion.joints[2].stop", "1200 deg/s2"}};
	return text_with(arena, chain_sample_text(arena, heavy, 4), change, count);
}

static void check_chain(const char *name, const struct change *change, size_t count)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	const char *yaml = heavy_chain(&arena, change, count);
	struct required required = check_text(name, yaml);
	cr_expect_eq(required.pair_count, MAX_PAIRS, "%s", name);
	cr_expect_gt(required.tension, 0, "%s", name);
	arena_close(&arena);
}

/* Each rating entered makes tension, shear, interaction and the guaranteed bound hold, a thousandth
 * less does not. */
Test(require, chain)
{
	static const struct change off[] = {{"arm.mount", "[150 mm, -90 mm, 700 mm]"}};
	static const struct change wall[] = {{"arm.mounting", "wall"},
	                                     {"arm.mounting_toward", "30 deg"}};
	static const struct change push[] = {
		{"loads", "[{name: person, force: 500 N, direction: any, at_height: 1500 mm, with: "
	                  "normal}]"}};
	static const struct change curve[] = {{RATING "interaction", "five_thirds"}};
	check_chain("chain", NULL, 0);
	check_chain("chain off the centre", off, 1);
	check_chain("chain on a wall", wall, 2);
	check_chain("chain with a push", push, 1);
	check_chain("chain by the 5/3 curve", curve, 1);
}

/* Where the bound need not be carried it asks for nothing. */
Test(require, chain_judged_by_sweep)
{
	static const struct change sweep[] = {
		{"arm.motion.judged_by", "sweep"},
		{"choices.by_engineer", "{name: demo, reason: of a test}"}};
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	struct required swept = check_text("swept", heavy_chain(&arena, sweep, 2));
	struct required bound = required_of("bound", heavy_chain(&arena, NULL, 0));
	cr_expect_lt(swept.tension, bound.tension);
	cr_expect_lt(swept.shear, bound.shear);
	arena_close(&arena);
}

/* Normal motion by a data sheet that pairs its headings, the stop by chain: the pairs then come
 * from runs of the whole file, and the bound has its say in them too. */
Test(require, paired_sheet_beside_a_chain)
{
	static const struct change paired[] = {
		{"arm.weight", "{arm: 30 kg, payload: 20 kg}"},
		{"arm.reactions.vertical_includes_weight", "yes"},
		{"arm.reactions.tilting_includes_weight", "yes"},
		{"arm.reactions.paired", "yes"},
		{"arm.reactions.normal",
	         "{vertical: 0.6 kN, horizontal: 0.2 kN, tilting: 0.2 kN m, twisting: 0.1 kN m}"},
		{"arm.motion.joints[1].acceleration", NULL},
		{"arm.motion.joints[2].acceleration", NULL}};
	check_chain("paired sheet and chain", paired, 7);
}

/* A file whose arm stands as its history records it. */
Test(require, history_example)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	struct required required = check_text("history",
	                                      file_text(&arena, "examples/arm_history.yaml"));
	cr_expect_gt(required.tension, 0);
	arena_close(&arena);
}
