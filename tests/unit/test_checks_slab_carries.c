/* slab.carries: type, uplift as a whole, bed pressure against 0.85 f/2.5, joints below the base. It
 * never fails: what it cannot show is unproven. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <string.h>

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

#define POINTS(list) "anchors.at", "{unit: mm, points: [" list "]}"
#define TWO POINTS("[-400, 0], [400, 0]")
#define IN_LINE POINTS("[400, 0], [-400, 0], [0, 0]")
#define ONE POINTS("[400, 0]")
#define FAR_JOINT JOINT("1 m, 0 m", "1 m, 8 m")

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
	/* a joint may stand at the clear distance itself, here in the middle of two anchors */
	expect_verdict(HOLDS, sample_needs, ID, TWO, "slab.joints", "unknown", "slab.clear",
	               "400.1 mm");
	expect_verdict(UNPROVEN, sample_needs, ID, TWO, "slab.joints", "unknown", "slab.clear",
	               "400 mm");
}

static void expect_across(int line, const struct check_result *check)
{
	expect_verdict_at(line, UNPROVEN, check);
	cr_expect(strstr(check->finding.reason, "a joint runs through the anchor pattern"),
	          "line %d: %s", line, check->finding.reason);
}
#define expect_through(...) \
	expect_across(__LINE__, judged(sample_needs, ID, __VA_ARGS__, (const char *)0))

/* With the papers' needs alone there is no base; the anchors' hull stands for it: from 4.6 to 5.4 m
 * in x and from 3.7 to 4.3 m in y. */
Test(slab_carries, joint_through_the_pattern)
{
	expect_through(JOINT("5 m, 0 m", "5 m, 8 m"));
	expect_through(JOINT("0 m, 0 m", "10 m, 8 m"));
	/* one that ends below, one that lies wholly below, one that cuts off a corner */
	expect_through(JOINT("5 m, 0 m", "5 m, 3.71 m"));
	expect_through(JOINT("4.9 m, 4 m", "5.1 m, 4.1 m"));
	expect_through(JOINT("5.2 m, 4.6 m", "5.6 m, 3.9 m"));
	/* turned by 45 degrees the pattern reaches from 3.505 to 4.495 m in y */
	expect_through(JOINT("0 m, 3.6 m", "10 m, 3.6 m"), "cell.turned", "45 deg");
	expect_through(JOINT("0 m, 3.6 m", "10 m, 3.6 m"), "cell.at", "[5 m, 3.5 m]");
	/* the second of two joints */
	expect_through("slab.joints",
	               "[{from: [1 m, 0 m], to: [1 m, 8 m], type: saw_cut}, "
	               "{from: [5 m, 0 m], to: [5 m, 8 m], type: construction}]");
}

/* Beside the pattern it holds; what the plate covers beyond its anchors is not known, and said. */
Test(slab_carries, joint_beside_the_pattern)
{
	static const char *const beside[][2] = {
		{"5.41 m, 0 m", "5.41 m, 8 m"}, {"4.59 m, 0 m", "4.59 m, 8 m"},
		{"0 m, 3.69 m", "10 m, 3.69 m"}, {"5 m, 0 m", "5 m, 3.69 m"},
		{"5.3 m, 4.6 m", "5.7 m, 3.9 m"},
	};
	for (size_t i = 0; i < sizeof beside / sizeof beside[0]; i++) {
		char joint[120];
		snprintf(joint, sizeof joint, "[{from: [%s], to: [%s], type: saw_cut}]",
		         beside[i][0], beside[i][1]);
		const struct check_result *check = judged(sample_needs, ID, "slab.joints", joint,
		                                          NULL);
		expect_verdict_at(__LINE__, HOLDS, check);
		cr_expect(strstr(check->finding.reason, "no base is stated"), "%s",
		          check->finding.reason);
	}
	/* where there is no joint there is nothing to say */
	cr_expect_not(strstr(judged(sample_needs, ID, NULL)->finding.reason, "no base"));
}

/* A load model without its base: unproven in any case, and the joint is seen all the same. */
Test(slab_carries, joint_and_no_base_in_a_load_model)
{
	expect_across(__LINE__, judged(sample_lift, ID, "cell.base", NULL,
	                               JOINT("5 m, 0 m", "5 m, 8 m"), NULL));
	const struct check_result *check = judged(sample_lift, ID, "cell.base", NULL,
	                                          JOINT("5.41 m, 0 m", "5.41 m, 8 m"), NULL);
	expect_verdict_at(__LINE__, UNPROVEN, check);
	cr_expect(is_missing(check, "cell.base"));
	cr_expect_not(strstr(check->finding.reason, "joint"), "%s", check->finding.reason);
}

/* Two anchors span a segment, three in one line too; one is a point. */
Test(slab_carries, joint_through_few_anchors)
{
	/* from (4.6, 4) to (5.4, 4) */
	expect_through(TWO, JOINT("5 m, 0 m", "5 m, 8 m"));
	expect_through(TWO, JOINT("4.7 m, 3.9 m", "4.8 m, 4.1 m"));
	expect_through(TWO, JOINT("4 m, 4 m", "6 m, 4 m"));            /* along it */
	expect_through(TWO, JOINT("4.9 m, 4 m", "5.1 m, 4 m"));        /* within it */
	expect_through(TWO, JOINT("5 m, 0 m", "5 m, 4 m"));            /* up to it */
	expect_verdict(HOLDS, sample_needs, ID, TWO, JOINT("5 m, 0 m", "5 m, 3.99 m"));
	expect_verdict(HOLDS, sample_needs, ID, TWO, JOINT("0 m, 4.01 m", "10 m, 4.01 m"));
	expect_verdict(HOLDS, sample_needs, ID, TWO, JOINT("5.41 m, 4 m", "9 m, 4 m"));
	/* turned by 30 degrees the second one stands at 5.346 m, 4.2 m */
	expect_through(TWO, "cell.turned", "30 deg", JOINT("5.3 m, 0 m", "5.3 m, 8 m"));
	expect_verdict(HOLDS, sample_needs, ID, TWO, "cell.turned", "30 deg",
	               JOINT("5.35 m, 0 m", "5.35 m, 8 m"));

	expect_through(IN_LINE, JOINT("4.8 m, 3 m", "4.8 m, 5 m"));
	expect_through(IN_LINE, JOINT("5.2 m, 3 m", "5.2 m, 5 m"));
	expect_verdict(HOLDS, sample_needs, ID, IN_LINE, JOINT("5.41 m, 3 m", "5.41 m, 5 m"));

	expect_through(ONE, JOINT("5.4 m, 3 m", "5.4 m, 5 m"));
	expect_verdict(HOLDS, sample_needs, ID, ONE, JOINT("5.39 m, 3 m", "5.39 m, 5 m"));
	expect_verdict(HOLDS, sample_needs, ID, ONE, JOINT("0 m, 0 m", "1 m, 1 m"));
}

/* What is not known of joints and place, as with a base; a clear distance that covers the anchors'
 * hull stands for both. The middle of the pattern is 500 mm from every anchor. */
Test(slab_carries, joints_or_place_unknown_without_base)
{
	const struct check_result *check = judged(sample_needs, ID, "slab.joints", "unknown", NULL);
	expect_verdict_at(__LINE__, UNPROVEN, check);
	cr_expect(is_missing(check, "slab.joints"));
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.joints", "unknown", "slab.clear",
	               "490 mm");
	expect_verdict(HOLDS, sample_needs, ID, "slab.joints", "unknown", "slab.clear", "510 mm");
	expect_verdict(HOLDS, sample_needs, ID, ONE, "slab.joints", "unknown", "slab.clear",
	               "1 mm");
	check = judged(sample_needs, ID, FAR_JOINT, "cell.at", "unknown", NULL);
	expect_verdict_at(__LINE__, UNPROVEN, check);
	cr_expect(is_missing(check, "cell.at"));
	check = judged(sample_needs, ID, FAR_JOINT, "cell.turned", "unknown", NULL);
	expect_verdict_at(__LINE__, UNPROVEN, check);
	cr_expect(is_missing(check, "cell.turned"));
	expect_verdict(HOLDS, sample_needs, ID, FAR_JOINT, "cell.at", "unknown", "slab.clear",
	               "510 mm");
	/* without a pattern nobody knows what stands beside the joint */
	check = judged(sample_needs, ID, FAR_JOINT, "anchors.at", "unknown", NULL);
	expect_verdict_at(__LINE__, UNPROVEN, check);
	cr_expect(is_missing(check, "anchors.at"));
	check = judged(sample_needs, ID, "slab.joints", "unknown", "anchors.at", "unknown",
	               "slab.clear", "5 m", NULL);
	expect_verdict_at(__LINE__, UNPROVEN, check);
	cr_expect(is_missing(check, "slab.joints"));
	expect_verdict(HOLDS, sample_needs, ID, "anchors.at", "unknown");
}
