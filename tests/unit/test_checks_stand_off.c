/* stand_off: flat on the concrete, thin strong grout, or anything else. EN 1992-4 6.2.2.3. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "stand_off"
#define KEY "cell.stand_off"

/* It has no ratio and cannot fail: bending of the anchors is not in any rating. */
Test(stand_off, verdicts)
{
	expect_verdict(HOLDS, sample_needs, ID);
	expect_verdict(UNPROVEN, sample_needs, ID, KEY, "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, KEY, "{height: 8 mm, filled: no}");
	expect_verdict(HOLDS, sample_needs, ID, KEY, "{height: 0 mm}");
}

/* Grout of at most d/2 = 6 mm, of at least 30 MPa and the concrete's 40 MPa, counts as flat. */
Test(stand_off, grout)
{
	expect_verdict(HOLDS, sample_needs, ID, KEY,
	               "{height: 6 mm, filled: yes, grout_strength: 40 MPa}");
	expect_verdict(UNPROVEN, sample_needs, ID, KEY,
	               "{height: 6.001 mm, filled: yes, grout_strength: 40 MPa}");
	expect_verdict(UNPROVEN, sample_needs, ID, KEY,
	               "{height: 6 mm, filled: yes, grout_strength: 39.999 MPa}");
	expect_verdict(HOLDS, sample_needs, ID, KEY,
	               "{height: 6 mm, filled: yes, grout_strength: 30 MPa}",
	               "slab.concrete.strength.specified", "29 MPa");
	expect_verdict(UNPROVEN, sample_needs, ID, KEY,
	               "{height: 6 mm, filled: yes, grout_strength: 29.9 MPa}",
	               "slab.concrete.strength.specified", "29 MPa");
}

Test(stand_off, what_is_not_known)
{
	static const char *const row[][2] = {
		{"{height: 6 mm, grout_strength: 40 MPa}", "cell.stand_off.filled"},
		{"{height: 6 mm, filled: yes}", "cell.stand_off.grout_strength"},
		{"{filled: yes, grout_strength: 40 MPa}", "cell.stand_off"}};
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
		expect_verdict(UNPROVEN, sample_needs, ID, KEY, row[i][0]);
		cr_expect(is_missing(judged(sample_needs, ID, KEY, row[i][0], NULL), row[i][1]),
		          "%s", row[i][1]);
	}
	expect_verdict(UNPROVEN, sample_needs, ID, KEY,
	               "{height: 6 mm, filled: yes, grout_strength: 40 MPa}",
	               "anchors.product.shaft", "unknown");
}

/* Whether grout is as strong as the concrete cannot be said where the concrete is not shown. */
Test(stand_off, concrete_not_shown)
{
#define THIN KEY, "{height: 6 mm, filled: yes, grout_strength: 60 MPa}"
	expect_verdict(UNPROVEN, sample_needs, ID, THIN, "slab.concrete.strength", "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, THIN, "slab.concrete.strength.evidence",
	               "assumed");
	expect_verdict(UNPROVEN, sample_needs, ID, THIN, "slab.concrete.age", "20 days");
	expect_verdict(UNPROVEN, sample_needs, ID, THIN, "slab.concrete.strength",
		"{cores: {unit: MPa, values: [40, 41], diameter: 94 mm, length: 188 mm}}");
	/* flat on the concrete its strength does not matter */
	expect_verdict(HOLDS, sample_needs, ID, "slab.concrete.strength", "unknown");
}

/* Screed and tile are a gap, whatever else is known of it. */
Test(stand_off, topping)
{
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.topping", "{thickness: 20 mm}");
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.topping", "unknown");
	expect_verdict(HOLDS, sample_needs, ID, "slab.topping", "{thickness: 0 mm}");
	cr_expect(is_missing(judged(sample_needs, ID, "slab.topping", "unknown", NULL),
	                     "slab.topping"));
}
