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
		cr_expect_eq(check->stage == OF_STATE_ANCHOR || check->stage == OF_STATE,
		             check->ratio != NULL, "%s: a ratio for the sweep", check->id);
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

/* A code's checks are of the code that their name says, and no other check is of a code. */
Test(check_table, checks_of_the_codes)
{
	size_t of_mode[CODES][CODE_MODES] = {{0}};
	for (size_t i = 0; i < check_count; i++) {
		const struct check *check = &checks[i];
		bool aci = strncmp(check->id, "aci318.", 7) == 0,
		     en = strncmp(check->id, "en1992_4.", 9) == 0;
		cr_expect_eq(aci, check->method == ONLY_ACI318, "%s", check->id);
		cr_expect_eq(en, check->method == ONLY_EN1992_4, "%s", check->id);
		if ((aci || en) && check->stage == OF_STATE && !check->combines)
			of_mode[en][check->mode]++;
		cr_expect(check->stage != OF_STATE || aci || en, "%s", check->id);
		cr_expect(check->stage != OF_STATE || (check->needs_loads && check->leans), "%s",
		          check->id);
	}
	/* every mode has one check; splitting is of EN alone, lasting tension of ACI alone */
	for (int mode = 0; mode < CODE_MODES; mode++) {
		cr_expect_eq(of_mode[ACI318][mode], mode == SPLITTING ? 0 : 1, "mode %d", mode);
		cr_expect_eq(of_mode[EN1992_4][mode], mode == BOND_SUSTAINED ? 0 : 1, "mode %d",
		             mode);
	}
}

Test(check_table, ratings_belong_to_their_method)
{
	static const char *const ids[] = {"rating.tension", "rating.shear",   "rating.interaction",
	                                  "rating.bound",   "anchor.spacing", "anchor.edge",
	                                  "stand_off"};
	for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++)
		cr_expect_eq(check_find(ids[i])->method, ONLY_RATING, "%s", ids[i]);
}
