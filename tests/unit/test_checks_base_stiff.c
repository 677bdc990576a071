/* base.stiff: shown by calculation or by the maker, never assumed. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "base.stiff"

/* It has no ratio and cannot fail: a base that is too soft is not known to be. */
Test(base_stiff, verdicts)
{
	expect_verdict(HOLDS, sample_lift, ID, "cell.base_stiff", "maker");
	expect_verdict(HOLDS, sample_lift, ID, "cell.base_stiff",
	               "{shown_by: calculation, note: demo}");
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.base_stiff", "assumed");
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.base_stiff", "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.base_stiff", "{note: demo}");
}

Test(base_stiff, left_out_without_loads)
{
	struct trial trial;
	trial_open(&trial, sample_needs, NULL);
	cr_expect_null(trial_check(&trial, ID));
	trial_close(&trial);
}
