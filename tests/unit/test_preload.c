/* Preload: a published torque, and the joint law against its own springs. */
#include "../../src/base/preload.h"

#include <criterion/criterion.h>
#include <math.h>

static void near(double value, double expected, double tolerance, const char *what)
{
	cr_assert(fabs(value - expected) <= tolerance, "%s: %.12g, expected %.12g within %g", what,
	          value, expected, tolerance);
}

/* A public worked example: bolt M12 8.8, tensile area 84.3 mm2, proof stress 580 MPa, 70 % of it,
 * K 0.20: 34 kN and 82 N m. Printed with two figures: half of the last. */
Test(preload, published_torque)
{
	double preload = 0.70 * 580 * 84.3;
	near(preload / 1e3, 34, 0.5, "preload");
	near(preload_torque(preload, 0.20, 12) / 1e3, 82, 0.5, "torque");
	near(preload_of_torque(82e3, 0.20, 12) / 1e3, 34, 0.5, "preload of the torque");
}

Test(preload, torque_and_back)
{
	for (double coefficient = 0.1; coefficient < 0.4; coefficient += 0.05)
		near(preload_of_torque(preload_torque(12e3, coefficient, 16), coefficient, 16),
		     12e3, 1e-11, "there and back");
}

/* Two springs in series with the load between them, worked by hand: ka = 50, kb = 150 kN/mm, so C =
 * 1/4; F0 = 12 kN gaps at 16 kN. */
Test(preload, joint_by_hand)
{
	struct preloaded_joint joint = {12e3, preload_share(50e3, 150e3)};
	near(joint.share, 0.25, 0, "share");
	near(preload_gapping_load(&joint), 16e3, 0, "gapping");
	near(preload_anchor_force(&joint, 0), 12e3, 0, "anchor at rest");
	near(preload_clamp(&joint, 0), 12e3, 0, "clamp at rest");
	near(preload_anchor_force(&joint, 8e3), 14e3, 0, "anchor");
	near(preload_clamp(&joint, 8e3), 6e3, 0, "clamp");
	near(preload_anchor_force(&joint, 20e3), 20e3, 0, "anchor of the open joint");
	near(preload_clamp(&joint, 20e3), 0, 0, "clamp of the open joint");
	cr_assert(preload_gaps(&joint, 16e3) && !preload_gaps(&joint, 15.9e3));
	/* pressing: at 48 kN the anchor is slack */
	near(preload_anchor_force(&joint, -24e3), 6e3, 0, "anchor, pressing");
	near(preload_clamp(&joint, -24e3), 30e3, 0, "clamp, pressing");
	near(preload_anchor_force(&joint, -60e3), 0, 0, "slack anchor");
	near(preload_clamp(&joint, -60e3), 60e3, 0, "clamp beside a slack anchor");
}

/* Shared stretch u of both springs, anchor ka (u0 + u) >= 0, bed kb (v0 - u) >= 0, solved by
 * bisection: a second way to the same forces. */
static void by_bisection(double preload, double ka, double kb, double tension, double *anchor,
                         double *clamp)
{
	double low = -1e3, high = 1e3;
	for (int i = 0; i < 200; i++) {
		double u = (low + high) / 2;
		*anchor = fmax(preload + ka * u, 0);
		*clamp = fmax(preload - kb * u, 0);
		if (*anchor - *clamp < tension)
			low = u;
		else
			high = u;
	}
}

Test(preload, joint_law_against_two_springs)
{
	static const double stiffness[] = {1e3, 40e3, 2e6};
	for (int a = 0; a < 3; a++)
		for (int b = 0; b < 3; b++)
			for (int i = -40; i <= 40; i++) {
				double anchor, clamp, tension = i * 1e3;
				struct preloaded_joint joint = {
					9e3, preload_share(stiffness[a], stiffness[b])};
				by_bisection(9e3, stiffness[a], stiffness[b], tension, &anchor,
				             &clamp);
				/* u stays below 64 mm: doubles there are 7e-15 mm apart, times
				 * 2e6 N/mm */
				near(preload_anchor_force(&joint, tension), anchor, 1e-7, "anchor");
				near(preload_clamp(&joint, tension), clamp, 1e-7, "clamp");
			}
}

/* The identities of the header, on a grid of shares and loads. */
Test(preload, identities)
{
	for (double share = 0; share <= 1; share += 0.125)
		for (int i = -50; i <= 50; i++) {
			struct preloaded_joint joint = {10e3, share}, loose = {0, share};
			double tension = i * 512;
			near(preload_anchor_force(&joint, tension) - preload_clamp(&joint, tension),
			     tension, 1e-11, "equilibrium");
			cr_assert_eq(preload_gaps(&joint, tension),
			             preload_clamp(&joint, tension) <= 0, "share %g, %g N", share,
			             tension);
			near(preload_anchor_force(&loose, tension), fmax(tension, 0), 0,
			     "no preload");
			cr_assert_eq(preload_gaps(&loose, tension), tension > 0);
		}
}

/* Both forces pass the gap without a step. */
Test(preload, continuous_at_gapping)
{
	struct preloaded_joint joint = {7e3, 0.3};
	double at = preload_gapping_load(&joint);
	near(at, 1e4, 1e-11, "gapping");
	near(preload_anchor_force(&joint, at * (1 - 1e-12)), at, 1e-7, "anchor before");
	near(preload_anchor_force(&joint, at * (1 + 1e-12)), at, 1e-7, "anchor behind");
	near(preload_clamp(&joint, at * (1 - 1e-12)), 0, 1e-7, "clamp before");
	near(preload_clamp(&joint, at * (1 + 1e-12)), 0, 0, "clamp behind");
}

/* Ends of the range: a bed without stiffness follows for ever, an anchor without stiffness keeps
 * its force until the joint gaps. */
Test(preload, ends_of_the_range)
{
	struct preloaded_joint soft_bed = {5e3, preload_share(40e3, 0)};
	struct preloaded_joint soft_anchor = {5e3, preload_share(0, 40e3)};
	struct preloaded_joint none = {0, 1};
	cr_assert(isinf(preload_gapping_load(&soft_bed)));
	cr_assert_not(preload_gaps(&soft_bed, 1e9));
	near(preload_gapping_load(&soft_anchor), 5e3, 0, "soft anchor");
	near(preload_anchor_force(&soft_anchor, 4e3), 5e3, 0, "soft anchor");
	near(preload_gapping_load(&none), 0, 0, "nothing gaps at once");
	cr_assert(preload_gaps(&none, 0.5) && !preload_gaps(&none, 0));
	near(preload_gapping_load(&(struct preloaded_joint){0.5, 0.5}), 1, 0, "a small one");
}

/* Eligehausen, Mallee, Silva (from memory): 0.4 to 0.6 of the initial preload is left. */
Test(preload, what_is_left)
{
	near(PRELOAD_LEFT_LOW, 0.4, 0, "low");
	near(PRELOAD_LEFT_HIGH, 0.6, 0, "high");
}
