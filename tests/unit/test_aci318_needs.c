/* What ACI 318-19 asks of the cell: facts, missing items, modes that do not apply, layout. */
#include "../../src/strength/layout.h"
#include "../../src/strength/needs.h"
#include "../support/aci_case.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static struct aci_case it;

#define PRODUCT "anchors.product."
#define STRENGTH PRODUCT "strength."
#define SHEET STRENGTH "aci318."

static void open_case(void) { aci_case_open(&it); }
static void close_case(void) { aci_case_close(&it); }

TestSuite(aci318_needs, .init = open_case, .fini = close_case);

static void set_type(enum anchor_type type)
{
	aci_word(&it.cell.anchors.product.type, (int)type);
}

/* Exactly these paths, in any order; "" for none, blanks between. */
static void lacks(enum code_mode mode, bool earthquake, const char *wanted)
{
	const char *path[16];
	size_t count, found = 0;
	aci_case_build(&it);
	count = aci_missing(&it.facts, mode, earthquake, path, 16);
	for (size_t i = 0; i < count; i++) {
		const char *at = strstr(wanted, path[i]);
		size_t length = strlen(path[i]);
		cr_expect(at && (at[length] == ' ' || !at[length]), "mode %d asks for %s", mode,
		          path[i]);
		found += length + 1;
	}
	cr_expect_eq(found, strlen(wanted) + (*wanted ? 1 : 0), "mode %d: %zu paths, wanted %s",
	             mode, count, wanted);
}

Test(aci318_needs, unknown_type)
{
	lacks(CONE, false, PRODUCT "type");
	lacks(STEEL_SHEAR, true, PRODUCT "type");
	for (int mode = 0; mode < CODE_MODES; mode++)
		cr_expect((aci_left_out(&it.cell, (enum code_mode)mode) == NULL) ==
		          (mode != SPLITTING));
}

Test(aci318_needs, nothing_known_of_an_expansion_anchor)
{
	set_type(TORQUE_CONTROLLED);
	lacks(STEEL_TENSION, false,
	      STRENGTH "ductile " STRENGTH "ultimate " STRENGTH "yield " PRODUCT "tensile_area");
	lacks(CONE, false,
	      "slab.concrete.strength " PRODUCT "embedment " PRODUCT "qualified_cracked " SHEET
	      "category");
	lacks(PULLOUT, false,
	      "slab.concrete.strength " SHEET "pullout.cracked " STRENGTH "at_concrete " SHEET
	      "category");
	lacks(PULLOUT, true,
	      SHEET "seismic slab.concrete.strength " SHEET "pullout.seismic " STRENGTH
	            "at_concrete " SHEET "category");
	lacks(STEEL_SHEAR, false,
	      STRENGTH "ductile " STRENGTH "sleeve_in_shear_plane " STRENGTH "ultimate " STRENGTH
	               "yield " PRODUCT "tensile_area");
	lacks(STEEL_SHEAR, true, SHEET "seismic " STRENGTH "ductile " SHEET "steel_shear_seismic");
	lacks(EDGE, false, "slab.concrete.strength " PRODUCT "shaft slab.thickness.value");
	lacks(PRYOUT, false,
	      "slab.concrete.strength " PRODUCT "embedment " PRODUCT "qualified_cracked");
}

Test(aci318_needs, cast_in)
{
	set_type(CAST_IN_HEADED);
	lacks(PULLOUT, true, "slab.concrete.strength " STRENGTH "head_area");
	lacks(BLOWOUT, false, "slab.concrete.strength " PRODUCT "embedment " STRENGTH "head_area");
	lacks(CONE, true, "slab.concrete.strength " PRODUCT "embedment");
	set_type(CAST_IN_HOOKED);
	lacks(PULLOUT, false, "slab.concrete.strength " STRENGTH "hook_length " PRODUCT "shaft");
}

/* The reach of bond rests on tau_uncr even in cracked concrete. */
Test(aci318_needs, adhesive)
{
	set_type(ADHESIVE);
	aci_number(&it.cell.anchors.product.strength.aci.bond.cracked, 6);
	aci_number(&it.cell.anchors.product.strength.at_concrete, 20);
	aci_number(&it.cell.anchors.product.strength.aci.category, 1);
	lacks(BOND, false, PRODUCT "embedment " PRODUCT "shaft " SHEET "bond.uncracked");
	lacks(BOND_SUSTAINED, false, PRODUCT "embedment " PRODUCT "shaft");
	lacks(BOND, true,
	      SHEET "seismic " PRODUCT "embedment " PRODUCT "shaft " SHEET "bond.uncracked " SHEET
	            "bond.seismic");
}

Test(aci318_needs, room_is_kept)
{
	const char *path[2] = {NULL, "mine"};
	set_type(SCREW);
	aci_case_build(&it);
	cr_expect_eq(aci_missing(&it.facts, STEEL_TENSION, false, path, 1), 4);
	cr_expect_str_eq(path[0], STRENGTH "ductile");
	cr_expect_str_eq(path[1], "mine");
	cr_expect_eq(code_missing(&it.facts, STEEL_TENSION, false, path, 0), 4);
}

Test(aci318_needs, sleeve_in_the_shear_plane)
{
	set_type(UNDERCUT);
	aci_word(&it.cell.anchors.product.strength.ductile, YES);
	aci_word(&it.cell.anchors.product.strength.sleeve_in_shear_plane, YES);
	lacks(STEEL_SHEAR, false, SHEET "steel_shear");
	aci_number(&it.cell.anchors.product.strength.aci.steel_shear, 30e3);
	lacks(STEEL_SHEAR, false, "");
}

Test(aci318_needs, does_not_apply)
{
	static const struct { enum anchor_type type; unsigned out; } rows[] = {
		{CAST_IN_HEADED, 1u << BOND | 1u << BOND_SUSTAINED | 1u << SPLITTING},
		{CAST_IN_HOOKED,
	         1u << BOND | 1u << BOND_SUSTAINED | 1u << SPLITTING | 1u << BLOWOUT},
		{SCREW, 1u << BOND | 1u << BOND_SUSTAINED | 1u << SPLITTING | 1u << BLOWOUT},
		{ADHESIVE, 1u << PULLOUT | 1u << SPLITTING | 1u << BLOWOUT}};
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		set_type(rows[i].type);
		for (int mode = 0; mode < CODE_MODES; mode++)
			cr_expect_eq(aci_left_out(&it.cell, (enum code_mode)mode) != NULL,
			             rows[i].out >> mode & 1, "type %d, mode %d", rows[i].type,
			             mode);
	}
}

/* Pullout that does not govern is left out only where it does not in earthquakes either. */
Test(aci318_needs, pullout_does_not_govern)
{
	struct never_governs *never = &it.cell.anchors.product.strength.aci.no_pullout;
	set_type(SCREW);
	aci_word(&never->cracked, 0);
	cr_expect_null(aci_left_out(&it.cell, PULLOUT));
	aci_word(&never->seismic, 0);
	cr_expect_not_null(aci_left_out(&it.cell, PULLOUT));
	never->seismic = (struct word){0};
	it.cell.earthquake.given.origin = GIVEN;     /* the word none */
	cr_expect_not_null(aci_left_out(&it.cell, PULLOUT));
	aci_case_build(&it);
	cr_expect_eq(aci_pullout(&it.facts, false, NULL), HUGE_VAL);
}

/* --- facts ------------------------------------------------------------------------------------ */

static const struct code_facts *facts_of(enum code code)
{
	code_facts_resolve(&it.cell, code, it.concrete, &it.facts);
	return &it.facts;
}

Test(aci318_needs, concrete_counts_up_to_the_codes_limit)
{
	it.concrete = 90;
	set_type(CAST_IN_HEADED);
	cr_expect_eq(facts_of(ACI318)->concrete, 70);
	set_type(SCREW);
	cr_expect_eq(facts_of(ACI318)->concrete, 55);
	it.cell.anchors.product.type = (struct word){0};
	cr_expect_eq(facts_of(ACI318)->concrete, 55, "not known: the lower one");
}

/* Uncracked only where it is both stated and shown. */
Test(aci318_needs, cracked_unless_shown)
{
	aci_word(&it.cell.slab.concrete.cracked, NO);
	cr_expect(facts_of(ACI318)->cracked);
	aci_text(&it.cell.slab.concrete.uncracked_reason, "analysis no. 4");
	cr_expect_not(facts_of(ACI318)->cracked);
}

Test(aci318_needs, lightweight)
{
	aci_number(&it.cell.slab.concrete.lightweight, 0.85);
	set_type(UNDERCUT);
	cr_expect_float_eq(facts_of(ACI318)->lambda, 0.85, 1e-12);
	set_type(SCREW);
	cr_expect_float_eq(facts_of(ACI318)->lambda, 0.68, 1e-12);
	aci_number(&it.cell.slab.concrete.lightweight, 1);
	cr_expect_eq(facts_of(ACI318)->lambda, 1);
}

struct gap_row {
	double topping, height, grout;       /* negative: not known */
	int filled;                          /* -1: not known */
	enum lever_arm aci, en;
};

/* Shaft 16 mm, concrete 35 MPa: thin is up to 8 mm, thick up to 40 mm, strong from 35 MPa. */
Test(aci318_needs, gap_below_the_base)
{
	static const struct gap_row rows[] = {
		{0, 0, -1, -1, NO_LEVER, NO_LEVER},
		{-1, 0, -1, -1, LEVER_UNKNOWN, LEVER_UNKNOWN},
		{0, -1, -1, -1, LEVER_UNKNOWN, LEVER_UNKNOWN},
		{30, 0, -1, -1, LEVER_ARM, LEVER_ARM},
		{30, -1, -1, -1, LEVER_ARM, LEVER_ARM},
		{0, 20, -1, -1, LEVER_UNKNOWN, LEVER_UNKNOWN},
		{0, 20, -1, NO, LEVER_ARM, LEVER_ARM},
		{0, 20, -1, YES, LEVER_UNKNOWN, LEVER_UNKNOWN},
		{0, 20, 40, YES, GROUT_PAD, GROUT_PAD},
		{0, 8, 40, YES, GROUT_PAD, NO_LEVER},
		{0, 8, 32, YES, LEVER_ARM, LEVER_ARM},
		{0, 40, 40, YES, GROUT_PAD, GROUT_PAD},
		{0, 41, 40, YES, LEVER_ARM, LEVER_ARM}};
	aci_number(&it.cell.anchors.product.shaft, 16);
	it.concrete = 35;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct stand_off *gap = &it.cell.stand_off;
		*gap = (struct stand_off){{{{0}, ABSENT}, 0, NULL}, {{{0}, ABSENT}, 0},
		                          {{{0}, ABSENT}, 0, NULL}};
		it.cell.slab.topping = gap->height;
		if (rows[i].topping >= 0)
			aci_number(&it.cell.slab.topping, rows[i].topping);
		if (rows[i].height >= 0)
			aci_number(&gap->height, rows[i].height);
		if (rows[i].grout >= 0)
			aci_number(&gap->grout_strength, rows[i].grout);
		if (rows[i].filled >= 0)
			aci_word(&gap->filled, rows[i].filled);
		cr_expect_eq(facts_of(ACI318)->lever_arm, rows[i].aci, "row %zu, ACI", i);
		cr_expect_eq(facts_of(EN1992_4)->lever_arm, rows[i].en, "row %zu, EN", i);
	}
}

/* (7.37): topping, gap and half of the plate, and half a shaft below the surface. */
Test(aci318_needs, lever_arm)
{
	aci_number(&it.cell.anchors.product.shaft, 16);
	aci_number(&it.cell.slab.topping, 30);
	aci_number(&it.cell.stand_off.height, 20);
	cr_expect_eq(facts_of(ACI318)->lever, 0, "the plate is not known");
	aci_number(&it.cell.anchors.plate_thickness, 25);
	cr_expect_float_eq(facts_of(EN1992_4)->lever, 8 + 30 + 20 + 12.5, 1e-12);
	aci_word(&it.cell.anchors.product.strength.clamped, YES);
	cr_expect_float_eq(facts_of(ACI318)->lever, 30 + 20 + 12.5, 1e-12);
}

/* EN counts no more of a thin head than 6 th + d. */
Test(aci318_needs, head)
{
	struct anchor_strength *given = &it.cell.anchors.product.strength;
	const double pi = acos(-1);
	aci_number(&it.cell.anchors.product.shaft, 20);
	aci_number(&given->head_diameter, 60);
	cr_expect_float_eq(facts_of(ACI318)->head_area, pi / 4 * (3600 - 400), 1e-9);
	cr_expect_eq(facts_of(EN1992_4)->head_area, 0, "its thickness is not known");
	aci_number(&given->head_thickness, 5);
	cr_expect_float_eq(facts_of(EN1992_4)->head_area, pi / 4 * (2500 - 400), 1e-9);
}

/* --- layout -------------------------------------------------------------------------------------
 */

static const struct code_limit *limit(const char *what, size_t which)
{
	static struct code_limit list[MAX_CODE_LIMITS];
	aci_case_build(&it);
	size_t count = aci_layout(&it.facts, &it.pattern, true, list);
	cr_assert_leq(count, (size_t)MAX_CODE_LIMITS);
	for (size_t i = 0; i < count; i++)
		if (strstr(list[i].what, what) && which-- == 0)
			return &list[i];
	cr_assert_fail("no row \"%s\"", what);
	return NULL;
}

static void pair(double spacing, double edge)
{
	it.at[0] = (struct vec2){1000, edge};
	it.at[1] = (struct vec2){1000 + spacing, edge};
	it.count = 2;
	aci_case_outline(&it, (const struct vec2[]){{0, 0}, {5000, 0}, {5000, 5000}, {0, 5000}}, 4);
}

struct layout_row { enum anchor_type type; double spacing, edge; };

/* Table 17.9.2, da 20 mm, hef 150 mm, largest grain 16 mm. */
Test(aci318_needs, spacing_and_edge)
{
	static const struct layout_row rows[] = {
		{CAST_IN_HEADED, 120, 120}, {CAST_IN_HOOKED, 120, 120}, {TORQUE_CONTROLLED, 120, 160},
		{DISPLACEMENT_CONTROLLED, 120, 200}, {UNDERCUT, 120, 120}, {SCREW, 120, 120},
		{ADHESIVE, 120, 120}};
	pair(110, 130);
	aci_number(&it.cell.anchors.product.shaft, 20);
	aci_number(&it.cell.anchors.product.embedment, 150);
	aci_number(&it.cell.slab.concrete.aggregate, 16);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		set_type(rows[i].type);
		const struct code_limit *row = limit("spacing", 0);
		cr_expect_float_eq(row->asked, rows[i].spacing, 1e-9, "type %zu", i);
		cr_expect(row->known && !code_limit_kept(row));
		cr_expect_float_eq(row->is, 110, 1e-9);
		row = limit("distance", 0);
		cr_expect_float_eq(row->asked, rows[i].edge, 1e-9, "type %zu", i);
		cr_expect_eq(code_limit_kept(row), rows[i].edge <= 130);
	}
}

Test(aci318_needs, tests_replace_the_table)
{
	pair(60, 55);
	set_type(TORQUE_CONTROLLED);
	aci_number(&it.cell.anchors.product.strength.least_spacing, 60);
	aci_number(&it.cell.anchors.product.strength.least_edge, 55);
	aci_number(&it.cell.slab.concrete.aggregate, 16);
	cr_expect(code_limit_kept(limit("spacing", 0)));
	cr_expect(code_limit_kept(limit("distance", 0)));
	aci_number(&it.cell.slab.concrete.aggregate, 32);
	cr_expect_eq(limit("distance", 0)->asked, 64, "twice the largest grain");
	it.cell.slab.concrete.aggregate = (struct number){0};
	cr_expect_eq(limit("distance", 0)->asked, 64, "32 mm where it is not known");
	/* cast-in anchors keep the rule; without torque 4 da and the cover */
	set_type(CAST_IN_HEADED);
	aci_number(&it.cell.anchors.product.shaft, 20);
	aci_number(&it.cell.anchors.product.setting_torque, 0);
	cr_expect_eq(limit("spacing", 0)->asked, 80);
	cr_expect_eq(limit("distance", 0)->asked, 55);
}

Test(aci318_needs, depth_and_scope)
{
	pair(500, 500);
	set_type(SCREW);
	it.concrete = 16.9;
	aci_number(&it.cell.anchors.product.shaft, 14);
	aci_number(&it.cell.anchors.product.embedment, 141);
	aci_number(&it.cell.slab.thickness, 210);
	const struct code_limit *row = limit("embedment in a slab", 0);
	cr_expect_float_eq(row->asked, 140, 1e-9, "two thirds of 210 mm; 110 mm is less");
	cr_expect_not(code_limit_kept(row));
	cr_expect_float_eq(limit("embedment of a screw", 0)->asked, 70, 1e-9);
	row = limit("embedment of a screw", 1);
	cr_expect_float_eq(row->asked, 140, 1e-9);
	cr_expect(row->at_most && !code_limit_kept(row));
	cr_expect_not(code_limit_kept(limit("strength of the concrete", 0)));
	aci_number(&it.cell.anchors.product.least_slab, 200);
	cr_expect(code_limit_kept(limit("thickness of the slab", 0)));
	set_type(CAST_IN_HOOKED);
	aci_number(&it.cell.anchors.product.strength.hook_length, 41);
	cr_expect_not(code_limit_kept(limit("hook", 0)));
	set_type(ADHESIVE);
	cr_expect_float_eq(limit("embedment of an adhesive", 1)->asked, 280, 1e-9);
}

Test(aci318_needs, layout_names_what_it_lacks)
{
	struct code_limit list[MAX_CODE_LIMITS];
	pair(500, 500);
	aci_case_build(&it);
	cr_assert_eq(aci_layout(&it.facts, &it.pattern, false, list), 1);
	cr_expect_str_eq(list[0].lacks[0], PRODUCT "type");
	set_type(SCREW);
	const struct code_limit *row = limit("spacing", 0);
	cr_expect_not(row->known);
	cr_expect_str_eq(row->lacks[0], PRODUCT "shaft");
	cr_expect_str_eq(row->lacks[1], PRODUCT "embedment");
	row = limit("cracked", 0);
	cr_expect_str_eq(row->lacks[0], PRODUCT "qualified_cracked");
	aci_word(&it.cell.anchors.product.qualified_cracked, NO);
	row = limit("cracked", 0);
	cr_expect(row->known && !code_limit_kept(row));
	size_t count = aci_layout(&it.facts, &it.pattern, false, list);
	bool asks = false;
	for (size_t i = 0; i < count; i++)
		for (size_t k = 0; k < LIMIT_LACKS && list[i].lacks[k]; k++)
			asks = asks || strcmp(list[i].lacks[k], "slab.clear") == 0;
	cr_expect(asks, "edges that are not known");
}

/* --- assumptions
 * ---------------------------------------------------------------------------------- */

Test(aci318_needs, assumptions_are_numbered_once)
{
	cr_assert_gt(code_assumption_count, 20);
	for (size_t i = 0; i < code_assumption_count; i++) {
		const struct code_assumption *one = &code_assumptions[i];
		cr_expect(one->id[0] == 'S' && one->sentence[strlen(one->sentence) - 1] == '.');
		cr_expect(one->code >= ACI318 && one->code <= CODES);
		for (size_t k = 0; k < i; k++)
			cr_expect_str_neq(one->id, code_assumptions[k].id);
	}
}
