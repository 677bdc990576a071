/* The check table itself: every row whole, every path one of the field table. */
#include "../../src/cell/fields.h"
#include "../../src/checks/check_table.h"

#include <criterion/criterion.h>
#include <string.h>

Test(check_table, rows_are_whole)
{
	cr_expect_leq(check_count, MAX_CHECKS);
	for (size_t i = 0; i < check_count; i++) {
		const struct check *check = &checks[i];
		cr_expect(check->id && check->title && check->source && check->range &&
		                  check->judge,
		          "row %zu", i);
		cr_expect(*check->source && *check->range, "%s", check->id);
		cr_expect_eq(check_find(check->id), check, "%s stands twice", check->id);
		cr_expect_eq(check->stage == OF_STATE_ANCHOR, check->ratio != NULL,
		             "%s: a ratio for the sweep", check->id);
		for (size_t k = 0; check->needs[k]; k++)
			cr_expect_not_null(field_find(check->needs[k]), "%s: %s is no field",
			                   check->id, check->needs[k]);
	}
	cr_expect_null(check_find("no such check"));
}

Test(check_table, every_check_of_the_first_step)
{
	static const char *const ids[] = {
		"loads.given",  "rating.tension",    "rating.shear",       "rating.interaction",
		"needs",        "concrete.strength", "concrete.condition", "slab.thickness",
		"slab.carries", "hole.depth",        "anchor.length",      "anchor.spacing",
		"anchor.edge",  "base.stability",    "base.stiff",         "stand_off"};
	for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++)
		cr_expect_not_null(check_find(ids[i]), "%s", ids[i]);
}
