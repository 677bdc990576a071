/* rating.tension: 4 kN of uplift on four anchors, 1 kN each (no moment, no weight), against 25 % of
 * the ultimate load. The solver's residual is 1e-12 or better, so boundaries are tried a millionth
 * off. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "rating.tension"
#define RATING "anchors.product.rating.tension"
#define STOP "arm.reactions.emergency_stop"

Test(rating_tension, three_verdicts)
{
	const struct check_result *check = judged(sample_lift, ID, NULL);
	expect_near(check->finding.demand, 1000, 1e-6);
	expect_near(check->finding.capacity, 10e3, 1e-9);
	cr_expect_eq(check->finding.verdict, HOLDS);
	cr_expect_eq(check->subject.anchors, 0xfu, "all four govern");
	expect_verdict(FAILS, sample_lift, ID, RATING, "3 kN");
	expect_verdict(UNPROVEN, sample_lift, ID, RATING, "unknown");
}

Test(rating_tension, boundary)
{
	expect_verdict(HOLDS, sample_lift, ID, RATING, "4.000004 kN");
	expect_verdict(FAILS, sample_lift, ID, RATING, "3.999996 kN");
}

/* Weight holds down: 100 kg on the base are 980.665 N, 0.6 of them in the low run, so
 * T = (4000 - 588.399)/4 = 852.90025 N; weighed, 0.9: 779.35 N; as a stock that may be gone: 1000
 * N. */
Test(rating_tension, weights)
{
#define PART "cell.parts", "[{mass: 100 kg, at: [0 mm, 0 mm, 0 mm]}]"
	expect_near(judged(sample_lift, ID, PART, NULL)->finding.demand, 852.90025, 1e-6);
	expect_near(judged(sample_lift, ID, PART, "choices.stabilising_weight", "0.9",
	                   "choices.masses_weighed", "yes", NULL)
	                    ->finding.demand,
	            779.350375, 1e-6);
	expect_near(judged(sample_lift, ID, "cell.parts",
	                   "[{mass: 100 kg, least_mass: 0 kg, at: [0 mm, 0 mm, 0 mm]}]", NULL)->finding.demand, 1000, 1e-6);
}

/* Loads that are missing can only add: a ratio above 1 fails, one below is unproven. */
Test(rating_tension, missing_loads)
{
	expect_verdict(UNPROVEN, sample_lift, ID, STOP, "unknown");
	expect_near(judged(sample_lift, ID, STOP, "unknown", NULL)->finding.demand, 250,
	            1e-6); /* normal motion */
	expect_verdict(FAILS, sample_lift, ID, STOP, "unknown", RATING, "999 N");
	expect_verdict(UNPROVEN, sample_lift, ID, "arm.reactions.normal", "unknown");
	expect_verdict(FAILS, sample_lift, ID, "arm.reactions.normal", "unknown", RATING, "3.9 kN");
	/* a weight that is not known may hold more than is counted: never fails, never holds */
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.parts", "unknown", RATING, "3 kN");
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.parts", "[{at: [0 mm, 0 mm, 0 mm]}]",
	               RATING, "3 kN");
	expect_verdict(UNPROVEN, sample_lift, ID, "arm.weight.arm", "unknown", RATING, "3 kN");
	/* nothing can be computed without base or mounting place */
	cr_expect_not(judged(sample_lift, ID, "cell.base", "unknown", NULL)->finding.computed);
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.base", "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, "arm.mount", "unknown", RATING, "3 kN");
}

/* Whether 4 kN hold the weight of a 100 kg arm is not known. If they do, uplift is (4000 - 980.665)
 * - 588.399 = 2430.936 N, 607.734 N an anchor; if not, 4000 - 588.399 N, 852.900 N. Only what is
 * exceeded in the more favourable reading fails. */
Test(rating_tension, unknown_weight_flag)
{
#define FLAG "arm.weight.arm", "100 kg", "arm.reactions.vertical_includes_weight", "unknown"
	expect_near(judged(sample_lift, ID, FLAG, NULL)->finding.demand, 607.734, 1e-6);
	expect_verdict(UNPROVEN, sample_lift, ID, FLAG, RATING,
	               "2.5 kN"); /* 625 N: between the two */
	expect_verdict(UNPROVEN, sample_lift, ID, FLAG, RATING, "40 kN");
	expect_verdict(FAILS, sample_lift, ID, FLAG, RATING, "2.4 kN");          /* 600 N */
	expect_verdict(HOLDS, sample_lift, ID, "arm.weight.arm", "100 kg", RATING, "3.42 kN");
	expect_verdict(FAILS, sample_lift, ID, "arm.weight.arm", "100 kg", RATING, "3.4 kN");
}

Test(rating_tension, departures)
{
	expect_verdict(UNPROVEN, sample_lift, ID, "choices.stabilising_weight", "0.8");
	expect_verdict(HOLDS, sample_lift, ID, "choices.stabilising_weight", "0.8",
	               "choices.by_engineer", "{name: demo, reason: demo}");
	expect_verdict(FAILS, sample_lift, ID, "choices.stabilising_weight", "0.8", RATING, "3 kN");
}

/* The worst setup governs and is named: the second lifts 6 kN, 1500 N an anchor. */
Test(rating_tension, setups)
{
	const struct check_result *check = judged(sample_lift, ID, "setups",
		"[{name: light}, {name: heavy, arm.reactions.emergency_stop.vertical: 6 kN}]", NULL);
	expect_near(check->finding.demand, 1500, 1e-6);
	cr_expect_eq(check->at.setup, 1);
	expect_near(check->setup_ratio[0], 0.1, 1e-9);
	expect_near(check->setup_ratio[1], 0.15, 1e-9);
}

/* A horizontal force at a height tips: two rows of anchors at x = +-400 mm on pads 100 mm wide
 * under them. 8 kN at 500 mm are 4 kN m; with the bed's force at x = 400 +- 50 mm the anchors of
 * the other row carry, by moments about that point, no less than 4e6/(2 x 850) and no more than
 * 4e6/(2 x 750) N each. */
Test(rating_tension, tipping)
{
	const struct check_result *check = judged(
		sample_lift, ID, "arm.mount", "[0 mm, 0 mm, 500 mm]", STOP ".vertical", "0 N",
		"loads", NULL, "cell.base",
		"[{at: [-400 mm, 0 mm], size: [100 mm, 700 mm]}, {at: [400 mm, 0 mm], size: [100 "
	        "mm, 700 mm]}]",
		"anchors.at",
		"{unit: mm, points: [[-400, -300], [400, -300], [400, 300], [-400, 300]]}", NULL);
	cr_expect_geq(check->finding.demand, 4e6 / (2 * 850) - 1e-6);
	cr_expect(check->at.has_heading);
}
