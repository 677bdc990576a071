/* anchor.spacing: the nearest neighbour against the first row of the spacing table, 100 mm; without
 * a table neighbours within 3 hef = 210 mm are not covered. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "anchor.spacing"
#define TABLE "anchors.product.rating.spacing"
#define TWO(apart) "anchors.at", "{unit: mm, points: [[0, 0], [" apart ", 0]]}"

Test(anchor_spacing, three_verdicts)
{
	expect_verdict(HOLDS, sample_needs, ID);
	expect_verdict(FAILS, sample_needs, ID, TWO("90"));
	expect_verdict(UNPROVEN, sample_needs, ID, TWO("200"), TABLE, "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, "anchors.at", "unknown");
}

Test(anchor_spacing, first_row)
{
	expect_verdict(HOLDS, sample_needs, ID, TWO("100"));
	expect_near(judged(sample_needs, ID, TWO("100"), NULL)->finding.ratio, 1, 0);
	expect_verdict(FAILS, sample_needs, ID, TWO("99.999999"));
	/* the nearest of all neighbours counts: A1 and A3 are 90 mm apart */
	expect_verdict(FAILS, sample_needs, ID, "anchors.at",
	               "{unit: mm, points: [[0, 0], [500, 0], [0, 90]]}");
}

Test(anchor_spacing, without_a_table)
{
	expect_verdict(HOLDS, sample_needs, ID, TABLE, "unknown", TWO("210"));
	expect_verdict(UNPROVEN, sample_needs, ID, TABLE, "unknown", TWO("209.999"));
	cr_expect(is_missing(judged(sample_needs, ID, TABLE, "unknown", TWO("209.999"), NULL),
	                     TABLE));
	/* without the embedment the reach is not known */
	expect_verdict(UNPROVEN, sample_needs, ID, TABLE, "unknown", "anchors.product.embedment",
	               "unknown");
	expect_verdict(HOLDS, sample_needs, ID, "anchors.product.embedment", "unknown");
}

Test(anchor_spacing, single_anchor)
{
	expect_verdict(HOLDS, sample_needs, ID, "anchors.at", "{unit: mm, points: [[0, 0]]}", TABLE,
	               "unknown");
}

/* A pattern turned on the slab keeps its distances. */
Test(anchor_spacing, turned)
{
	expect_near(
		judged(sample_needs, ID, "cell.turned", "33 deg", TWO("150"), NULL)->finding.ratio,
		100.0 / 150, 1e-12);
}
