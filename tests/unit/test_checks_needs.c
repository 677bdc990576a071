/* needs: the loads of the machine's papers, 5 kN and 2 kN, against 10 kN and 8 kN allowed. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "needs"
#define NEEDS "anchors.needs."

Test(needs, three_verdicts)
{
	expect_verdict(HOLDS, sample_needs, ID);
	expect_near(judged(sample_needs, ID, NULL)->finding.ratio, 0.5, 1e-15);
	expect_verdict(FAILS, sample_needs, ID, NEEDS "tension", "11 kN");
	expect_verdict(UNPROVEN, sample_needs, ID, NEEDS "shear", "unknown");
}

/* Not both at once: the worse of tension and shear speaks; ratio exactly 1 holds. */
Test(needs, boundary)
{
	expect_verdict(HOLDS, sample_needs, ID, NEEDS "tension", "10 kN");
	expect_verdict(FAILS, sample_needs, ID, NEEDS "tension", "10.000001 kN");
	expect_verdict(HOLDS, sample_needs, ID, NEEDS "shear", "8 kN");
	expect_verdict(FAILS, sample_needs, ID, NEEDS "shear", "8.000001 kN");
	expect_near(judged(sample_needs, ID, NEEDS "shear", "6 kN", NULL)->finding.ratio, 0.75,
	            1e-15);
}

Test(needs, one_value_alone)
{
	expect_verdict(UNPROVEN, sample_needs, ID, NEEDS "tension", "unknown");
	expect_verdict(FAILS, sample_needs, ID, NEEDS "tension", "unknown", NEEDS "shear", "9 kN");
	struct trial trial;
	trial_open(&trial, sample_lift, NULL);
	cr_expect_null(trial_check(&trial, ID), "no needs, no check");
	trial_close(&trial);
}

/* 5/10 + 2/8 = 0.75 together, or by exponent 5/3 (0.5^(5/3) + 0.25^(5/3))^(3/5) = 0.58928; 7.5 kN
 * and 2 kN reach 1. Where the papers do not say, it is asked for as soon as both together are too
 * much. */
#define RATING "anchors.product.rating."
Test(needs, both_at_once)
{
#define BOTH NEEDS "both_at_once", "yes"
#define NOT_SAID NEEDS "both_at_once", "unknown"
	expect_near(judged(sample_needs, ID, BOTH, NULL)->finding.ratio, 0.75, 1e-15);
	expect_near(judged(sample_needs, ID, BOTH, RATING "interaction", "five_thirds", NULL)
	                    ->finding.ratio,
	            0.58928, 1e-5);
	expect_verdict(HOLDS, sample_needs, ID, BOTH, NEEDS "tension", "7.5 kN");
	expect_verdict(FAILS, sample_needs, ID, BOTH, NEEDS "tension", "7.500001 kN");
	expect_verdict(HOLDS, sample_needs, ID, NOT_SAID, NEEDS "tension", "7.5 kN");
	expect_verdict(UNPROVEN, sample_needs, ID, NOT_SAID, NEEDS "tension", "7.500001 kN");
	cr_expect(is_missing(judged(sample_needs, ID, NOT_SAID, NEEDS "tension", "8 kN", NULL),
	                     NEEDS "both_at_once"));
	expect_verdict(HOLDS, sample_needs, ID, NEEDS "tension", "8 kN");
	expect_verdict(FAILS, sample_needs, ID, NOT_SAID, NEEDS "tension", "11 kN");
}

/* The papers' loads are those of their pattern: in another one they may be lower too, so nothing
 * fails. Setups that they do not cover can only add. */
Test(needs, what_the_papers_cover)
{
	static const char *const weak[] = {"no", "unknown"};
	for (size_t i = 0; i < 2; i++) {
		expect_verdict(UNPROVEN, sample_needs, ID, NEEDS "pattern_as_stated", weak[i]);
		expect_verdict(UNPROVEN, sample_needs, ID, NEEDS "pattern_as_stated", weak[i],
		               NEEDS "tension", "20 kN");
	}
	expect_verdict(UNPROVEN, sample_needs, ID, NEEDS "setups_covered", "not_all");
	expect_verdict(UNPROVEN, sample_needs, ID, NEEDS "setups_covered", "unknown");
	expect_verdict(FAILS, sample_needs, ID, NEEDS "setups_covered", "not_all", NEEDS "tension",
	               "20 kN");
}

/* What makes shear unproven makes the needs unproven. */
Test(needs, shear_conditions)
{
	expect_verdict(UNPROVEN, sample_needs, ID, "cell.stand_off", "{height: 8 mm, filled: no}");
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.topping", "{thickness: 10 mm}");
	expect_verdict(UNPROVEN, sample_needs, ID, "anchors.plate_hole", "15 mm");
	expect_verdict(FAILS, sample_needs, ID, "anchors.plate_hole", "15 mm", NEEDS "tension",
	               "11 kN");
}

/* With a load model beside them both are judged. */
Test(needs, beside_a_load_model)
{
	expect_verdict(HOLDS, sample_lift, ID, "anchors.needs",
	               "{tension: 5 kN, shear: 2 kN, pattern_as_stated: yes, setups_covered: all}");
	expect_verdict(HOLDS, sample_lift, "rating.tension", "anchors.needs",
	               "{tension: 50 kN, shear: 2 kN, pattern_as_stated: yes, setups_covered: all}");
}

/* The weakest anchor speaks: a joint 100 mm right of A2 and A3 leaves 0.60 of the tension. */
Test(needs, weakest_anchor)
{
	const struct check_result *check = judged(
		sample_needs, ID, NEEDS "shear", "0 N", "slab.joints",
		"[{from: [5.5 m, 0 m], to: [5.5 m, 8 m], type: saw_cut}]", NULL);
	expect_near(check->finding.ratio, 5.0 / 6, 1e-9);
	cr_expect_eq(check->subject.anchors, 0x6u, "A2 and A3: %llx",
	             (unsigned long long)check->subject.anchors);
}
