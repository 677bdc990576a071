/* slab.carries: type, uplift as a whole, bed pressure against 0.85 f/2.5, joints below the base. It
 * never fails: what it cannot show is unproven. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "slab.carries"
/* 1000 kg on the base: 5883.99 N in the low run, more than the 4 kN of uplift */
#define HEAVY "cell.parts", "[{mass: 1000 kg, at: [0 mm, 0 mm, 0 mm]}]"

Test(slab_carries, type)
{
	expect_verdict(HOLDS, sample_lift, ID, HEAVY);
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, "slab.type", "suspended");
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, "slab.type", "unknown");
	/* without a load model the type alone is judged, and the text says so */
	expect_verdict(HOLDS, sample_needs, ID);
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.type", "suspended");
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.type", "unknown");
}

/* 0.6 m g = 4000 N at m = 679.811 kg: just heavier and just lighter. */
Test(slab_carries, uplift)
{
	expect_verdict(UNPROVEN, sample_lift, ID);
	expect_verdict(HOLDS, sample_lift, ID, "cell.parts",
	               "[{mass: 679.82 kg, at: [0 mm, 0 mm, 0 mm]}]");
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.parts",
	               "[{mass: 679.80 kg, at: [0 mm, 0 mm, 0 mm]}]");
}

/* All at rest in the middle of four pads of 50 x 50 mm: N = 1000 kg g0 + 4 kN = 13 806.65 N on 10
 * 000 mm2, 1.380665 MPa; allowed 0.85 x 40/2.5 = 13.6 MPa. On pads of 15.93 mm sides 13.6 MPa are
 * reached. */
#define FOUR(side) "cell.base", \
	"[{at: [-400 mm, -300 mm], size: [" side ", " side "]}, {at: [400 mm, -300 mm], size: [" side ", " side "]}, " \
	"{at: [400 mm, 300 mm], size: [" side ", " side "]}, {at: [-400 mm, 300 mm], size: [" side ", " side "]}]"
Test(slab_carries, pressure)
{
	const struct check_result *check = judged(sample_lift, ID, HEAVY, FOUR("50 mm"), NULL);
	expect_near(check->finding.demand, 1.380665, 1e-9);
	expect_near(check->finding.capacity, 13.6, 1e-12);
	cr_expect_eq(check->finding.verdict, HOLDS);
	expect_verdict(HOLDS, sample_lift, ID, HEAVY, FOUR("15.932 mm"));         /* 13.5984 MPa */
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, FOUR("15.930 mm"));      /* 13.6018 MPa */
}

/* What the pressure rests on must be shown. */
Test(slab_carries, missing)
{
	static const char *const path[] = {"slab.concrete.strength",
	                                   "slab.concrete.strength.evidence",
	                                   "slab.concrete.age",
	                                   "arm.reactions.emergency_stop",
	                                   "arm.weight.arm",
	                                   "arm.mount",
	                                   "cell.base",
	                                   "arm.reactions.vertical_includes_weight",
	                                   "slab.joints",
	                                   "cell.parts"};
	for (size_t i = 0; i < sizeof path / sizeof path[0]; i++)
		expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, path[i], "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, "slab.concrete.strength.evidence",
	               "drawing");
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, "slab.concrete.age", "20 days");
}

/* The plate reaches from 4.5 to 5.5 m in x and from 3.6 to 4.4 m in y. */
#define JOINT(from, to) "slab.joints", "[{from: [" from "], to: [" to "], type: saw_cut}]"
Test(slab_carries, joints)
{
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, JOINT("5 m, 0 m", "5 m, 8 m"));
	expect_verdict(HOLDS, sample_lift, ID, HEAVY, JOINT("5.51 m, 0 m", "5.51 m, 8 m"));
	expect_verdict(HOLDS, sample_lift, ID, HEAVY, JOINT("5 m, 0 m", "5 m, 3.59 m"));
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, JOINT("5 m, 0 m", "5 m, 3.61 m"));
	/* a short cut that lies wholly below the base */
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, JOINT("4.9 m, 4 m", "5.1 m, 4.1 m"));
	/* turned by 45 degrees the plate reaches to 4.364 m: its lower corner comes over this joint
	 */
	expect_verdict(HOLDS, sample_lift, ID, HEAVY, JOINT("0 m, 3.5 m", "9 m, 3.5 m"));
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, JOINT("0 m, 3.5 m", "9 m, 3.5 m"),
	               "cell.turned", "45 deg");
	/* a joint is known, the cell's place is not */
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, JOINT("0 m, 3.5 m", "9 m, 3.5 m"),
	               "cell.at", "unknown");
	expect_verdict(HOLDS, sample_lift, ID, HEAVY, "cell.at", "unknown");
}

/* A measured clear distance leaves no place for a joint where the discs of that radius about the
 * anchors cover the plate: its middle is 500 mm from every anchor, its lower edge's middle
 * hypot(400, 100) mm. */
Test(slab_carries, clear)
{
	expect_verdict(HOLDS, sample_lift, ID, HEAVY, "slab.joints", "unknown", "slab.clear",
	               "1.2 m");
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, "slab.joints", "unknown", "slab.clear",
	               "400 mm");
	expect_verdict(UNPROVEN, sample_lift, ID, HEAVY, "slab.joints", "unknown");
}
