/* anchor.length: 120 - 15 (base) - 0 (stand-off) - 0 (topping) - 18 (thread) = 87 mm for 70 mm of
 * embedment. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "anchor.length"
#define PRODUCT "anchors.product."

Test(anchor_length, three_verdicts)
{
	expect_verdict(HOLDS, sample_needs, ID);
	expect_near(judged(sample_needs, ID, NULL)->finding.capacity, 87, 1e-12);
	expect_verdict(FAILS, sample_needs, ID, PRODUCT "length", "100 mm");
	static const char *const path[] = {PRODUCT "length",    PRODUCT "projection",
	                                   PRODUCT "embedment", "anchors.plate_thickness",
	                                   "slab.topping",      "cell.stand_off"};
	for (size_t i = 0; i < sizeof path / sizeof path[0]; i++)
		expect_verdict(UNPROVEN, sample_needs, ID, path[i], "unknown");
}

/* Each layer takes from the length: 17 mm more of any of them leave exactly 70 mm. */
Test(anchor_length, boundary)
{
	static const char *const row[][3] = {{PRODUCT "length", "103 mm", "102.999 mm"},
		{"anchors.plate_thickness", "32 mm", "32.001 mm"}, {PRODUCT "projection", "35 mm", "35.001 mm"},
		{PRODUCT "embedment", "87 mm", "87.001 mm"},
		{"slab.topping", "{thickness: 17 mm}", "{thickness: 17.001 mm}"},
		{"cell.stand_off", "{height: 17 mm, filled: no}", "{height: 17.001 mm, filled: no}"}};
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
		expect_verdict(HOLDS, sample_needs, ID, row[i][0], row[i][1]);
		expect_verdict(FAILS, sample_needs, ID, row[i][0], row[i][2]);
	}
}

/* A fit that is exact on paper is exact: 2 - 3/16 - 1/4 = 1 9/16 in, whose sum in mm is a bit
 * above. */
Test(anchor_length, exact_fit_in_inches)
{
	const struct check_result *check = judged(
		sample_needs, ID, PRODUCT "length", "2 in", "anchors.plate_thickness", "3/16 in",
		PRODUCT "projection", "1/4 in", PRODUCT "embedment", "1 9/16 in", NULL);
	expect_near(check->finding.ratio, 1, 0);
	cr_expect_eq(check->finding.verdict, HOLDS);
}

/* Where the data sheet tells the anchor's end from its effective embedment, the end must be
 * reached. */
Test(anchor_length, nominal_embedment)
{
	expect_verdict(HOLDS, sample_needs, ID, PRODUCT "nominal_embedment", "87 mm");
	expect_verdict(FAILS, sample_needs, ID, PRODUCT "nominal_embedment", "87.001 mm");
	expect_verdict(HOLDS, sample_needs, ID, PRODUCT "nominal_embedment", "unknown");
}

/* Nothing left at all fails too, where no ratio can be formed. */
Test(anchor_length, nothing_left)
{
	expect_verdict(FAILS, sample_needs, ID, PRODUCT "length", "33 mm");
	expect_verdict(FAILS, sample_needs, ID, PRODUCT "length", "20 mm");
}
