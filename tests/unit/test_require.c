/* The least rating of a substitute: every value printed holds when it is entered into the file, a
 * thousandth less does not; the same for every pair. Values are rounded up to five digits, a
 * ten-thousandth at most. */
#include "../../src/study/require.h"
#include "../support/cell_text.h"
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
struct ratios { double tension, shear, both, needs; };

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
	trial_open(&trial, text_with(&arena, yaml, change, 3), NULL);
	cr_assert_eq(trial.reading.status, DONE, "%s", reading_faults(&trial.reading));
	struct ratios out = {largest(&trial, "rating.tension"), largest(&trial, "rating.shear"),
	                     largest(&trial, "rating.interaction"), largest(&trial, "needs")};
	if (!trial.result->loads_computed)
		out.tension = out.shear = out.needs;
	trial_close(&trial);
	arena_close(&arena);
	return out;
}

static struct required required_of(const char *name, const char *yaml)
{
	struct trial trial;
	struct check_options options = {.trace = false};
	trial_open(&trial, yaml, &options);
	cr_assert_eq(trial.reading.status, DONE, "%s: %s", name, reading_faults(&trial.reading));
	cr_assert_eq(require_fill(&trial.reading.arena, trial.reading.cell, &options, trial.result),
	             DONE);
	cr_expect(trial.result->required.computed, "%s", name);
	struct required out = trial.result->required;
	trial_close(&trial);
	return out;
}

static void each_alone(const char *name, const char *yaml, const struct required *required)
{
	if (required->tension > 0) {
		double at = entered(yaml, required->tension, PLENTY).tension;
		double below = entered(yaml, less * required->tension, PLENTY).tension;
		cr_expect(at <= 1 && below > 1, "%s: tension %g N: %.9g, %.9g\n%s", name,
		          required->tension, at, below, yaml);
	}
	if (required->shear > 0) {
		double at = entered(yaml, PLENTY, required->shear).shear;
		double below = entered(yaml, PLENTY, less * required->shear).shear;
		cr_expect(at <= 1 && below > 1, "%s: shear %g N: %.9g, %.9g\n%s", name,
		          required->shear, at, below, yaml);
	}
}

static double worst(struct ratios ratios)
{
	return fmax(ratios.both, fmax(ratios.tension, ratios.shear));
}

static void each_pair(const char *name, const char *yaml, const struct required *required)
{
	for (size_t k = 0; k < required->pair_count; k++) {
		const struct required_pair *pair = &required->pair[k];
		double at = worst(entered(yaml, pair->tension, pair->shear));
		double below = worst(entered(yaml, pair->tension, less * pair->shear));
		double both_below = worst(entered(yaml, less * pair->tension, less * pair->shear));
		cr_expect(at <= 1 && below > 1 && both_below > 1,
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
	each_alone(name, yaml, &required);
	each_pair(name, yaml, &required);
	return required;
}

Test(require, every_example)
{
	glob_t found;
	size_t computed = 0;
	cr_assert_eq(glob("examples/*.yaml", 0, NULL, &found), 0);
	for (size_t i = 0; i < found.gl_pathc; i++) {
		struct arena arena;
		arena_open(&arena, NULL, NULL);
		computed += check_text(found.gl_pathv[i], file_text(&arena, found.gl_pathv[i]))
		                    .pair_count > 0;
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
