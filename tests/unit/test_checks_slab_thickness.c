/* slab.thickness: 200 mm of concrete against the 140 mm that the anchor asks for. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "slab.thickness"

Test(slab_thickness, three_verdicts)
{
	expect_verdict(HOLDS, sample_needs, ID);
	expect_verdict(FAILS, sample_needs, ID, "slab.thickness.value", "139 mm");
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.thickness.value", "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, "anchors.product.least_slab", "unknown");
	expect_near(judged(sample_needs, ID, NULL)->finding.ratio, 0.7, 1e-15);
}

Test(slab_thickness, boundary)
{
	expect_verdict(HOLDS, sample_needs, ID, "slab.thickness.value", "140 mm");
	expect_verdict(FAILS, sample_needs, ID, "slab.thickness.value", "139.999999 mm");
	expect_verdict(HOLDS, sample_needs, ID, "slab.thickness.value", "5 1/2 in",
	               "anchors.product.least_slab", "5.5 in");
}

/* A drawing shows what was meant, not what was poured: it may be more as well as less. Topping is
 * no concrete. */
Test(slab_thickness, evidence)
{
	static const char *const weak[] = {"drawing", "assumed", "unknown"};
	expect_verdict(HOLDS, sample_needs, ID, "slab.thickness.evidence", "as_built");
	for (size_t i = 0; i < sizeof weak / sizeof weak[0]; i++) {
		expect_verdict(UNPROVEN, sample_needs, ID, "slab.thickness.evidence", weak[i]);
		expect_verdict(UNPROVEN, sample_needs, ID, "slab.thickness.evidence", weak[i],
		               "slab.thickness.value", "100 mm");
	}
	expect_verdict(FAILS, sample_needs, ID, "slab.thickness.value", "130 mm", "slab.topping",
	               "{thickness: 40 mm}");
}
