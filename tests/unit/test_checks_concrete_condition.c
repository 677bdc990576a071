/* concrete.condition: sound, damaged, or not known. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "concrete.condition"

Test(concrete_condition, three_verdicts)
{
	expect_verdict(HOLDS, sample_needs, ID);
	expect_verdict(FAILS, sample_needs, ID, "slab.concrete.condition", "damaged");
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.concrete.condition", "unknown");
	cr_expect(is_missing(judged(sample_needs, ID, "slab.concrete.condition", NULL, NULL),
	                     "slab.concrete.condition"));
}
