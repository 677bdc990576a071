/* hole.depth: 85 mm deep, 70 mm of embedment, at least max(30 mm, 2 d0) of concrete left below it.
 */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "hole.depth"
#define HOLE "anchors.product.hole"

Test(hole_depth, three_verdicts)
{
	expect_verdict(HOLDS, sample_needs, ID);
	expect_near(judged(sample_needs, ID, NULL)->finding.demand, 115, 0);           /* 85 + 30 */
	expect_verdict(FAILS, sample_needs, ID, HOLE ".depth", "180 mm");
	static const char *const path[] = {HOLE ".depth", HOLE ".diameter",
	                                   "anchors.product.embedment", "slab.thickness.value"};
	for (size_t i = 0; i < sizeof path / sizeof path[0]; i++)
		expect_verdict(UNPROVEN, sample_needs, ID, path[i], "unknown");
}

/* 85 + 30 = 115 mm; with a hole of 20 mm 85 + 40 = 125 mm; of 15 mm both rules give 30 mm. */
Test(hole_depth, concrete_left_below)
{
	expect_verdict(HOLDS, sample_needs, ID, "slab.thickness.value", "115 mm");
	expect_verdict(FAILS, sample_needs, ID, "slab.thickness.value", "114.999 mm");
	expect_verdict(HOLDS, sample_needs, ID, "slab.thickness.value", "125 mm", HOLE ".diameter",
	               "20 mm");
	expect_verdict(FAILS, sample_needs, ID, "slab.thickness.value", "124.999 mm",
	               HOLE ".diameter", "20 mm");
	expect_verdict(HOLDS, sample_needs, ID, "slab.thickness.value", "115 mm", HOLE ".diameter",
	               "15 mm");
	expect_verdict(FAILS, sample_needs, ID, "slab.thickness.value", "115 mm", HOLE ".diameter",
	               "15.001 mm");
}

/* The hole must hold the embedment, whatever is known of the slab. */
Test(hole_depth, embedment)
{
	expect_verdict(HOLDS, sample_needs, ID, HOLE ".depth", "70 mm");
	expect_verdict(FAILS, sample_needs, ID, HOLE ".depth", "69.999 mm");
	expect_verdict(FAILS, sample_needs, ID, HOLE ".depth", "69 mm", "slab.thickness.value",
	               "unknown");
	/* the anchor's end, where the data sheet tells it from the effective embedment */
	expect_verdict(HOLDS, sample_needs, ID, "anchors.product.nominal_embedment", "85 mm");
	expect_verdict(FAILS, sample_needs, ID, "anchors.product.nominal_embedment", "85.001 mm");
}

/* The slab's thickness from a drawing proves nothing either way. */
Test(hole_depth, evidence)
{
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.thickness.evidence", "drawing");
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.thickness.evidence", "drawing",
	               "slab.thickness.value", "90 mm");
	expect_verdict(HOLDS, sample_needs, ID, "slab.thickness.evidence", "as_built");
}
