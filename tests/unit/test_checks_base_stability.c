/* base.stability: overturning over resisting moment about any line that nothing holds.
 *
 * The anchors stand in lugs at x = -600 mm, beyond the plate that ends at x = -500 mm: about that
 * edge the base can tip toward -x, and they do not hold it. 100 kg stand in the middle: 980.665 N
 * at 500 mm. With a tilting moment M at emergency stop and no other force the ratio is low run M /
 * (500 x 0.6 x 980.665) = M / 294 199.5 N mm stability run  1.25 M / (500 x 0.9 x 980.665) = M /
 * 353 039.4 N mm. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "base.stability"
#define STOP "arm.reactions.emergency_stop"
#define STILL "{vertical: 0 N, horizontal: 0 N, tilting: 0 N m, twisting: 0 N m}"
#define LUGS "anchors.lug", "yes", "anchors.at", "{unit: mm, points: [[-600, -300], [-600, 300]]}"
#define WEIGHT "cell.parts", "[{mass: 100 kg, at: [0 mm, 0 mm, 0 mm]}]"
#define TILT(moment) \
	LUGS, WEIGHT, "arm.reactions.normal", STILL, STOP, STILL, STOP ".tilting", moment

Test(base_stability, three_verdicts)
{
	expect_verdict(HOLDS, sample_lift, ID, TILT("200 N m"));
	expect_verdict(FAILS, sample_lift, ID, TILT("400 N m"));
	expect_verdict(UNPROVEN, sample_lift, ID, TILT("200 N m"), STOP ".vertical", "unknown");
}

Test(base_stability, low_run)
{
	const struct check_result *check = judged(sample_lift, ID, TILT("147.09975 N m"), NULL);
	expect_near(check->finding.ratio, 0.5, 1e-9);
	expect_verdict(HOLDS, sample_lift, ID, TILT("294.1994 N m"));
	expect_verdict(FAILS, sample_lift, ID, TILT("294.1996 N m"));
}

/* Weighed masses, 0.9: then 1.25 on the moving part governs; on the limit itself there is no
 * margin. */
Test(base_stability, stability_run)
{
#define WEIGHED "choices.stabilising_weight", "0.9", "choices.masses_weighed", "yes"
	expect_near(judged(sample_lift, ID, TILT("176.5197 N m"), WEIGHED, NULL)->finding.ratio,
	            0.5, 1e-9);
	expect_verdict(HOLDS, sample_lift, ID, TILT("353.0393 N m"), WEIGHED);
	expect_verdict(FAILS, sample_lift, ID, TILT("353.0395 N m"), WEIGHED);
}

/* Nothing at all holds a base down without weight; without any load it stands on the very limit,
 * ratio 1, from which the least push tips it. */
Test(base_stability, nothing_resists)
{
	expect_near(
		judged(sample_lift, ID, TILT("0 N m"), "cell.parts", "none", NULL)->finding.ratio,
		1, 0);
	expect_verdict(FAILS, sample_lift, ID, TILT("0 N m"), "cell.parts", "none");
	expect_verdict(FAILS, sample_lift, ID, TILT("1 N m"), "cell.parts", "none");
}

/* Anchors round the base hold every load, so that loads that are missing do not matter. */
Test(base_stability, anchors_all_round)
{
	expect_verdict(HOLDS, sample_lift, ID);
	expect_verdict(HOLDS, sample_lift, ID, STOP, "unknown");
	expect_verdict(HOLDS, sample_lift, ID, "cell.parts", "unknown");
	cr_expect_not(judged(sample_lift, ID, NULL)->finding.computed);
	/* but without base or mounting place nothing is known */
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.base", "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, "arm.mount", "unknown");
}

/* A case that is missing can only add overturning; a weight that is missing could as well resist
 * it. */
Test(base_stability, missing_loads)
{
	expect_verdict(FAILS, sample_lift, ID, TILT("400 N m"), "arm.reactions.normal", "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, TILT("400 N m"), STOP, "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, TILT("400 N m"), "cell.parts", "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, TILT("400 N m"), "cell.parts[1].mass", "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, TILT("400 N m"), "cell.parts[1].at", "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, TILT("400 N m"), "arm.weight.arm", "unknown");
}

/* 1500 N with or without the weight of an arm of 100 kg. With it, low run: 588.399 - 519.335
 * = 69.064 N at 500 mm resist, 34 532 N mm; without it nothing does. Only what the favourable
 * reading shows fails. */
Test(base_stability, unknown_weight_flag)
{
#define FLAG STOP ".vertical", "1.5 kN", "cell.parts", "none", "arm.weight.arm", "100 kg", \
	"arm.reactions.vertical_includes_weight", "unknown"
	expect_near(judged(sample_lift, ID, TILT("20 N m"), FLAG, NULL)->finding.ratio,
	            20000 / 34532.0, 1e-5);
	expect_verdict(UNPROVEN, sample_lift, ID, TILT("20 N m"), FLAG);
	expect_verdict(FAILS, sample_lift, ID, TILT("40 N m"), FLAG);
	expect_verdict(FAILS, sample_lift, ID, TILT("20 N m"), FLAG,
	               "arm.reactions.vertical_includes_weight", "no");
}

/* One anchor holds a push through itself but no twisting, with no friction counted. */
Test(base_stability, single_anchor)
{
#define ONE "anchors.at", "{unit: mm, points: [[0, 0]]}"
	expect_verdict(HOLDS, sample_lift, ID, ONE);
	expect_verdict(FAILS, sample_lift, ID, ONE, STOP ".twisting", "1 N m");
}
