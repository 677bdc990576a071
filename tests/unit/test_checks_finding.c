/* The one place where a verdict is made: every combination of what a judge can have said. */
#include "../../src/checks/finding.h"

#include <criterion/criterion.h>
#include <math.h>

/* Expected by the rule in words: fails when failed, or above 1 with every unknown at its most
 * favourable value and that value a bound; else unproven when anything is missing, doubted or above
 * 1; else holds. */
static enum verdict by_the_rule(bool failed, bool over, bool never_fails, bool missing,
                                bool doubted)
{
	if (failed || (over && !never_fails))
		return FAILS;
	return missing || doubted || over ? UNPROVEN : HOLDS;
}

Test(finding, every_combination)
{
	for (int bits = 0; bits < 64; bits++) {
		bool computed = bits & 1, over = computed && (bits & 2), never = bits & 4,
		     missing = bits & 8, doubted = bits & 16, failed = bits & 32;
		struct finding f = {.never_fails = never};
		if (computed)
			finding_numbers(&f, over ? 2 : 1, 1, DIM_FACTOR, "numbers", "remedy");
		if (missing)
			finding_lacks(&f, "slab.type");
		if (doubted)
			finding_doubts(&f, "doubt", "look again");
		if (failed)
			finding_fails(&f, "failure", "mend it");
		finding_settle(&f);
		cr_expect_eq(f.verdict, by_the_rule(failed, over, never, missing, doubted),
		             "bits %d: %d", bits, f.verdict);
		cr_expect(f.reason && f.remedy, "bits %d", bits);
	}
}

/* Exactly 1 holds, also where rounding of a sum of lengths is all that is above it; anything more
 * fails, and what is no number never holds. */
Test(finding, boundary)
{
	static const struct { double demand, capacity; enum verdict verdict; } row[] = {
		{1, 1, HOLDS}, {0, 1, HOLDS}, {0x1.0000000000001p0, 1, HOLDS}, {1 + 2e-13, 1, FAILS}, {0x1.fffffffffffffp-1, 1, HOLDS}};
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
		struct finding f = {.computed = false};
		finding_numbers(&f, row[i].demand, row[i].capacity, DIM_FORCE, "", "");
		finding_settle(&f);
		cr_expect_eq(f.verdict, row[i].verdict, "row %zu", i);
	}
	struct finding f = {.computed = false};
	finding_numbers(&f, 0, 0, DIM_FORCE, "", "");       /* 0/0 */
	finding_settle(&f);
	cr_expect_eq(f.verdict, FAILS);
	finding_numbers(&f, 1, 0, DIM_FORCE, "", "");
	finding_settle(&f);
	cr_expect_eq(f.verdict, FAILS);
}

/* A path is named once; more than there is room for is never lost: it cannot hold. */
Test(finding, missing_paths)
{
	static char paths[MAX_MISSING + 1][8];
	struct finding f = {.computed = false};
	for (int twice = 0; twice < 2; twice++)
		finding_lacks(&f, "slab.type");
	cr_expect_eq(f.missing_count, 1);
	f.missing_count = 0;
	for (int i = 0; i <= MAX_MISSING; i++) {
		paths[i][0] = (char)('A' + i % 26);
		paths[i][1] = (char)('a' + i / 26);
		finding_lacks(&f, paths[i]);
	}
	cr_expect_eq(f.missing_count, MAX_MISSING);
	cr_expect(f.doubted);
}

/* The first reason is kept, and the one that fits the verdict is said. */
Test(finding, reasons)
{
	struct finding f = {.computed = false};
	finding_numbers(&f, 2, 1, DIM_FORCE, "too much", "less of it");
	finding_doubts(&f, "first", "one");
	finding_doubts(&f, "second", "two");
	finding_settle(&f);
	cr_expect_str_eq(f.reason, "too much");
	cr_expect_str_eq(f.remedy, "less of it");
	f.never_fails = true;
	finding_settle(&f);
	cr_expect_str_eq(f.reason, "first");
	cr_expect_str_eq(f.remedy, "one");
	finding_fails(&f, "broken", "mend");
	finding_fails(&f, "broken again", "mend again");
	finding_settle(&f);
	cr_expect_str_eq(f.reason, "broken");
}
