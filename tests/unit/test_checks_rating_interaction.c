/* rating.interaction: b_N = 1/10, b_V = 2/8 of each anchor; straight line or exponent 5/3. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <math.h>

#define ID "rating.interaction"
#define RATING "anchors.product.rating."
#define STOP "arm.reactions.emergency_stop"
#define NORMAL "arm.reactions.normal"

Test(rating_interaction, three_verdicts)
{
	expect_verdict(HOLDS, sample_lift, ID);
	expect_near(judged(sample_lift, ID, NULL)->finding.ratio, 0.35, 1e-9);
	expect_verdict(FAILS, sample_lift, ID, RATING "tension", "5 kN", RATING "shear", "9 kN");
	expect_verdict(UNPROVEN, sample_lift, ID, RATING "shear", "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, RATING "tension", "unknown");
	cr_expect_not(judged(sample_lift, ID, RATING "tension", "unknown", NULL)->finding.computed);
}

/* 0.5 + 0.5 = 1; with exponent 5/3: (2 x 0.5^(5/3))^(3/5) = 2^(3/5) / 2 = 0.757858. */
Test(rating_interaction, curves)
{
#define HALF RATING "tension", "8 kN", RATING "shear", "16 kN"
	expect_near(judged(sample_lift, ID, HALF, NULL)->finding.ratio, 1, 1e-9);
	expect_verdict(HOLDS, sample_lift, ID, RATING "tension", "8.00001 kN", RATING "shear",
	               "16.00001 kN");
	expect_verdict(FAILS, sample_lift, ID, RATING "tension", "7.99999 kN", RATING "shear",
	               "15.99999 kN");
	expect_near(judged(sample_lift, ID, HALF, RATING "interaction", "five_thirds", NULL)
	                    ->finding.ratio,
	            0.757858283255199, 1e-9);
	/* 0.8 and 0.3, by (0.8^(5/3) + 0.3^(5/3))^(3/5): (0.689420 + 0.134442)^(3/5) = 0.890287 */
	expect_near(judged(sample_lift, ID, RATING "tension", "5 kN", RATING "shear",
	                   "26.666666667 kN", RATING "interaction", "five_thirds", NULL)
	                    ->finding.ratio,
	            0.890251, 1e-5);
}

/* At zero shear it is the tension's ratio, at zero tension the shear's, on both curves. */
Test(rating_interaction, ends)
{
	static const char *const curve[] = {"straight", "five_thirds"};
	for (size_t i = 0; i < 2; i++) {
		expect_near(judged(sample_lift, ID, STOP ".horizontal", "0 N", NORMAL ".horizontal",
		                   "0 N", RATING "interaction", curve[i], NULL)
		                    ->finding.ratio,
		            0.1, 1e-9);
		expect_near(judged(sample_lift, ID, STOP ".vertical", "0 N", NORMAL ".vertical",
		                   "0 N", RATING "interaction", curve[i], NULL)
		                    ->finding.ratio,
		            0.25, 1e-9);
	}
}

/* Tension and shear pair within one case: lifting alone in normal motion, pushing alone at
 * emergency stop, give the larger of 0.1 and 0.25, not their sum; in one case they add, though
 * their headings differ. */
Test(rating_interaction, pairing)
{
	expect_near(judged(sample_lift, ID, NORMAL,
	                   "{vertical: 4 kN, horizontal: 0 N, tilting: 0 N m, twisting: 0 N m}",
	                   STOP ".vertical", "0 N", NULL)
	                    ->finding.ratio,
	            0.25, 1e-9);
	/* and within one setup: the first lifts, the second pushes */
	expect_near(judged(sample_lift, ID, NORMAL,
	                   "{vertical: 0 N, horizontal: 0 N, tilting: 0 N m, twisting: 0 N m}",
	                   "setups",
	                   "[{name: lifts, arm.reactions.emergency_stop.horizontal: 0 N}, "
	                   "{name: pushes, arm.reactions.emergency_stop.vertical: 0 N}]",
	                   NULL)
	                    ->finding.ratio,
	            0.25, 1e-9);
	/* the papers' heading of shear and tilt: paired, the shear of the governing heading alone
	 * counts */
	double free_heading = judged(sample_lift, ID, STOP ".twisting", "1 kN m", STOP ".tilting",
	                             "2 kN m", NULL)
	                              ->finding.ratio;
	double paired = judged(sample_lift, ID, STOP ".twisting", "1 kN m", STOP ".tilting",
	                       "2 kN m", "arm.reactions.paired", "yes", NULL)
	                        ->finding.ratio;
	cr_expect(paired <= free_heading + 1e-12 && paired > 0.35, "%g, %g", paired, free_heading);
}

/* What makes shear unproven makes this unproven; a ratio above 1 still fails. */
Test(rating_interaction, shear_conditions)
{
	expect_verdict(UNPROVEN, sample_lift, ID, "anchors.plate_hole", "slotted");
	expect_verdict(UNPROVEN, sample_lift, ID, "slab.topping", "{thickness: 20 mm}");
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.stand_off", "unknown");
	expect_verdict(FAILS, sample_lift, ID, "anchors.plate_hole", "slotted", RATING "shear",
	               "8 kN");
	expect_verdict(UNPROVEN, sample_lift, ID, STOP, "unknown");
	expect_verdict(FAILS, sample_lift, ID, STOP, "unknown", RATING "shear", "1 kN");
}
