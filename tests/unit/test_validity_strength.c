/* What code design values and bars in the slab cannot be: each row is one contradiction with its
 * path and place, and a neighbour that is just possible. */
#include "../../src/cell/validity.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static struct reading reading;

static void read_with(const char *text)
{
	char whole[1000];
	snprintf(whole, sizeof whole, "standfast: 1\nanchors: {at: unknown}\n%s", text);
	/* one map of anchors alone */
	if (strncmp(text, "anchors", 7) == 0)
		snprintf(whole, sizeof whole, "standfast: 1\n#\n%s", text);
	reading_open(&reading, whole);
}

struct contradiction {
	const char *impossible;
	enum fault fault;
	const char *path;
	const char *there;           /* what stands in `impossible` where the fault is shown */
	const char *message, *possible;
};

/* The text behind two lines of its own, from the mark on; all letters are of one byte. */
static const char *at_mark(const char *text, struct mark mark)
{
	for (unsigned line = 3; line < mark.line && strchr(text, '\n'); line++)
		text = strchr(text, '\n') + 1;
	return mark.column <= strlen(text) + 1 ? text + mark.column - 1 : "";
}

static void assert_possible(const char *text)
{
	read_with(text);
	cr_expect_eq(reading.status, DONE, "%s\n%s", text, reading_faults(&reading));
	reading_close(&reading);
}

static void assert_rows(const struct contradiction *rows, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		const struct contradiction *row = &rows[i];
		read_with(row->impossible);
		const struct diagnostic *one = reading_find(&reading, row->path);
		cr_assert(one, "%s\n%s", row->impossible, reading_faults(&reading));
		cr_expect_eq(one->fault, row->fault, "%s", reading_faults(&reading));
		cr_expect(strstr(one->message, row->message), "%s\n%s", row->message,
		          reading_faults(&reading));
		cr_expect_gt(strlen(one->hint), 0, "it says what to write");
		const char *there = at_mark(row->impossible, one->mark);
		cr_expect_eq(strncmp(there, row->there, strlen(row->there)), 0, "%s: %.9s\n%s",
		             row->there, there, reading_faults(&reading));
		cr_expect_eq(reading.list.errors, 1, "%s\n%s", row->impossible,
		             reading_faults(&reading));
		reading_close(&reading);
		assert_possible(row->possible);
	}
}

#define ST "anchors.product.strength."
#define STRENGTH(items) "anchors: {at: unknown, product: {strength: {" items "}}}"
#define OF_TYPE(type, items) \
	"anchors: {at: unknown, product: {type: " type ", strength: {" items "}}}"
#define ON_SHAFT(items) \
	"anchors: {at: unknown, product: {type: cast_in_headed, shaft: 20 mm, strength: {" items \
	"}}}"

static const struct contradiction values[] = {
	{STRENGTH("yield: 810 MPa, ultimate: 800 MPa"), FAULT_CONTRADICTION, ST "yield", "810",
	 "yield, 810 MPa, is above ultimate, 800 MPa", STRENGTH("yield: 800 MPa, ultimate: 800 MPa")},
	{STRENGTH("aci318: {pullout: {cracked: 21 kN, uncracked: 20 kN}}"), FAULT_CONTRADICTION,
	 ST "aci318.pullout.cracked", "21 kN", "pullout.cracked, 21 kN, is above uncracked, 20 kN",
	 STRENGTH("aci318: {pullout: {cracked: 20 kN, uncracked: 20 kN}}")},
	{STRENGTH("en1992_4: {pullout: {cracked: 21 kN, uncracked: 20 kN}}"), FAULT_CONTRADICTION,
	 ST "en1992_4.pullout.cracked", "21 kN", "above uncracked",
	 STRENGTH("en1992_4: {pullout: {cracked: 21 kN, uncracked: does_not_govern}}")},
	{STRENGTH("aci318: {bond: {cracked: 12 MPa, uncracked: 6 MPa}}"), FAULT_CONTRADICTION,
	 ST "aci318.bond.cracked", "12 MPa", "bond.cracked, 12 MPa, is above uncracked, 6 MPa",
	 STRENGTH("aci318: {bond: {cracked: 6 MPa, uncracked: 12 MPa}}")},
	{STRENGTH("en1992_4: {bond: {cracked: 12 MPa, uncracked: 6 MPa}}"), FAULT_CONTRADICTION,
	 ST "en1992_4.bond.cracked", "12 MPa", "above uncracked",
	 STRENGTH("en1992_4: {bond: {cracked: 12 MPa, uncracked: unknown}}")},
	{STRENGTH("aci318: {kc_cracked: 10, kc_uncracked: 7}"), FAULT_CONTRADICTION,
	 ST "aci318.kc_cracked", "10", "kc_cracked, 10, is above kc_uncracked, 7",
	 STRENGTH("aci318: {kc_cracked: 7, kc_uncracked: 10}")},
	{STRENGTH("en1992_4: {k_cracked: 11, k_uncracked: 7.7}"), FAULT_CONTRADICTION,
	 ST "en1992_4.k_cracked", "11", "above k_uncracked, 7.7",
	 STRENGTH("en1992_4: {k_cracked: 7.7, k_uncracked: 11}")},
	{STRENGTH("aci318: {category: 1.5}"), FAULT_NUMBER, ST "aci318.category", "1.5",
	 "not a whole number", STRENGTH("aci318: {category: 3}")},
	{STRENGTH("aci318: {category: 4}"), FAULT_RANGE, ST "aci318.category", "4", "too large",
	 STRENGTH("aci318: {category: 1}")},
	/* a sheet may state a factor between those of the code */
	{STRENGTH("en1992_4: {installation_factor: 1.6}"), FAULT_RANGE,
	 ST "en1992_4.installation_factor", "1.6", "too large",
	 STRENGTH("en1992_4: {installation_factor: 1.35}")},
	/* 16.000 with a point for the thousands */
	{STRENGTH("aci318: {pullout: {seismic: 16.000 N}}"), FAULT_RANGE, ST "aci318.pullout.seismic",
	 "16.000 N", "16 N is too small for an anchor",
	 STRENGTH("aci318: {pullout: {seismic: 16.000 kN}}")},
	{STRENGTH("en1992_4: {steel_shear: 30 N}"), FAULT_RANGE, ST "en1992_4.steel_shear", "30 N",
	 "too small for an anchor", STRENGTH("en1992_4: {steel_shear: 100 N}")},
	{"slab: {reinforcement: {bar_diameter: 20 mm, bar_spacing: 20 mm}}", FAULT_GEOMETRY,
	 "slab.reinforcement.bar_spacing", "20 mm}}", "bars of 20 mm at every 20 mm",
	 "slab: {reinforcement: {bar_diameter: 20 mm, bar_spacing: 21 mm}}"},
};

Test(validity_strength, values)
{
	assert_rows(values, COUNT(values));
}

/* A shaft of 20 mm in a head of 40 mm leaves pi/4 (1600 - 400) = 942.5 mm2: 849 to 1036 may be. */
static const struct contradiction heads[] = {
	{ON_SHAFT("head_diameter: 20 mm"), FAULT_GEOMETRY, ST "head_diameter", "20 mm}",
	 "a head of 20 mm on a shaft of 20 mm", ON_SHAFT("head_diameter: 20.1 mm")},
	{ON_SHAFT("head_diameter: 15 mm, head_area: 500 mm2"), FAULT_GEOMETRY, ST "head_diameter",
	 "15 mm", "bears on nothing", ON_SHAFT("head_diameter: unknown, head_area: 500 mm2")},
	{ON_SHAFT("head_diameter: 40 mm, head_area: 1037 mm2"), FAULT_CONTRADICTION, ST "head_area",
	 "1037 mm2", "1037 mm2, but head_diameter and shaft make it 942.5 mm2",
	 ON_SHAFT("head_diameter: 40 mm, head_area: 1036 mm2")},
	{ON_SHAFT("head_diameter: 40 mm, head_area: 848 mm2"), FAULT_CONTRADICTION, ST "head_area",
	 "848 mm2", "942.5 mm2", ON_SHAFT("head_diameter: 40 mm, head_area: 849 mm2")},
	/* the whole disc, with the shaft */
	{ON_SHAFT("head_diameter: 40 mm, head_area: 1257 mm2"), FAULT_CONTRADICTION, ST "head_area",
	 "1257 mm2", "942.5 mm2",
	 OF_TYPE("cast_in_headed", "head_diameter: 40 mm, head_area: 1257 mm2")},
};

Test(validity_strength, heads)
{
	assert_rows(heads, COUNT(heads));
}

static const struct contradiction types[] = {
	{OF_TYPE("undercut", "head_diameter: 32 mm"), FAULT_CONTRADICTION, ST "head_diameter",
	 "32 mm", "head_diameter is an item of a headed anchor alone", STRENGTH("head_diameter: 32 mm")},
	{OF_TYPE("cast_in_hooked", "head_thickness: 9 mm"), FAULT_CONTRADICTION, ST "head_thickness",
	 "9 mm", "a headed anchor", OF_TYPE("cast_in_headed", "head_thickness: 9 mm")},
	{OF_TYPE("screw", "head_area: 590 mm2"), FAULT_CONTRADICTION, ST "head_area", "590 mm2",
	 "a headed anchor", OF_TYPE("screw", "head_area: unknown")},
	{OF_TYPE("cast_in_headed", "hook_length: 50 mm"), FAULT_CONTRADICTION, ST "hook_length",
	 "50 mm", "hook_length is an item of a hooked anchor alone",
	 OF_TYPE("cast_in_hooked", "hook_length: 50 mm")},
	{OF_TYPE("torque_controlled", "aci318: {bond: {cracked: 6 MPa}}"), FAULT_CONTRADICTION,
	 ST "aci318.bond.cracked", "6 MPa", "bond.cracked is an item of an adhesive anchor alone",
	 OF_TYPE("adhesive", "aci318: {bond: {cracked: 6 MPa}}")},
	{OF_TYPE("undercut", "aci318: {bond: {uncracked: 6 MPa}}"), FAULT_CONTRADICTION,
	 ST "aci318.bond.uncracked", "6 MPa", "an adhesive anchor",
	 OF_TYPE("adhesive", "aci318: {bond: {uncracked: 6 MPa}}")},
	{OF_TYPE("undercut", "aci318: {bond: {seismic: 0.8}}"), FAULT_CONTRADICTION,
	 ST "aci318.bond.seismic", "0.8", "an adhesive anchor",
	 OF_TYPE("adhesive", "aci318: {bond: {seismic: 0.8}}")},
	{OF_TYPE("screw", "en1992_4: {bond: {cracked: 6 MPa}}"), FAULT_CONTRADICTION,
	 ST "en1992_4.bond.cracked", "6 MPa", "an adhesive anchor",
	 OF_TYPE("adhesive", "en1992_4: {bond: {cracked: 6 MPa}}")},
	{OF_TYPE("screw", "en1992_4: {bond: {uncracked: 6 MPa}}"), FAULT_CONTRADICTION,
	 ST "en1992_4.bond.uncracked", "6 MPa", "an adhesive anchor",
	 OF_TYPE("adhesive", "en1992_4: {bond: {uncracked: 6 MPa}}")},
	{OF_TYPE("screw", "en1992_4: {bond: {seismic: 3 MPa}}"), FAULT_CONTRADICTION,
	 ST "en1992_4.bond.seismic", "3 MPa", "an adhesive anchor",
	 OF_TYPE("adhesive", "en1992_4: {bond: {seismic: 3 MPa}}")},
	{OF_TYPE("displacement_controlled", "en1992_4: {sustained_factor: 0.7}"), FAULT_CONTRADICTION,
	 ST "en1992_4.sustained_factor", "0.7", "an adhesive anchor",
	 OF_TYPE("adhesive", "en1992_4: {sustained_factor: 0.7}")},
	{OF_TYPE("cast_in_headed", "aci318: {category: 1}"), FAULT_CONTRADICTION, ST "aci318.category",
	 "1}", "category is an item of a post-installed anchor alone",
	 OF_TYPE("torque_controlled", "aci318: {category: 1}")},
	{OF_TYPE("cast_in_hooked", "en1992_4: {installation_factor: 1.2}"), FAULT_CONTRADICTION,
	 ST "en1992_4.installation_factor", "1.2", "a post-installed anchor",
	 OF_TYPE("adhesive", "en1992_4: {installation_factor: 1.2}")},
};

Test(validity_strength, types)
{
	assert_rows(types, COUNT(types));
}

/* A setup has a cell of its own: the fault names the setup, at the item in the file. */
Test(validity_strength, a_setup_of_another_type)
{
	read_with(
		"anchors: {at: unknown, product: {type: cast_in_headed, strength: {head_area: 590 "
		"mm2}}}\n"
		"setups: [{name: a}, {name: b, anchors.product.type: screw}]");
	const struct diagnostic *one = reading_find(&reading, ST "head_area");
	cr_assert(one, "%s", reading_faults(&reading));
	cr_expect(strstr(one->message, "(setup 'b')"), "%s", one->message);
	cr_expect_eq(one->mark.line, 3);
	cr_expect_eq(reading.list.errors, 1);
	reading_close(&reading);
	assert_possible("anchors: {at: unknown, product: {type: cast_in_headed, strength: "
	                "{head_area: 590 mm2}}}\n"
	                "setups: [{name: a}, {name: b, anchors.product.type: screw, "
	                "anchors.product.strength.head_area: unknown}]");
}

/* Nothing is asked for here: what a check lacks makes the check unproven. */
Test(validity_strength, what_is_not_asked_for_may_stand)
{
	assert_possible("methods: [aci318, en1992_4]");
	assert_possible("methods: [rating, aci318]\nslab: {reinforcement: {supplementary: yes}}");
	assert_possible(STRENGTH("evidence: data_sheet, yield: 640 MPa") "\nmethods: [rating]");
}

/* A number and the word are one key: the later statement of a setup takes the place of the other.
 */
Test(validity_strength, a_number_or_that_it_does_not_govern)
{
	read_with("anchors: {at: unknown, product: {strength: {aci318: {pullout: {cracked: 16 kN, "
	          "uncracked: does_not_govern}}}}}\n"
	          "setups: [{name: a}, {name: b, anchors.product.strength.aci318.pullout.cracked: "
	          "does_not_govern, anchors.product.strength.aci318.pullout.uncracked: 20 kN}]");
	cr_assert_eq(reading.status, DONE, "%s", reading_faults(&reading));
	const struct setup *setup = reading.cell->setups.rows;
	const struct aci318_sheet *a = &setup[0].cell->anchors.product.strength.aci;
	const struct aci318_sheet *b = &setup[1].cell->anchors.product.strength.aci;
	cr_expect(is_known(a->pullout.cracked) && !is_known(a->no_pullout.cracked));
	cr_expect(!is_known(b->pullout.cracked) && is_known(b->no_pullout.cracked));
	cr_expect(!is_known(a->pullout.uncracked) && is_known(a->no_pullout.uncracked));
	cr_expect(is_known(b->pullout.uncracked) && !is_known(b->no_pullout.uncracked));
	reading_close(&reading);
}

Test(validity_strength, methods)
{
	read_with("methods: [aci318, rating, aci318]");
	const struct diagnostic *one = reading_find(&reading, "methods[3]");
	cr_assert(one, "%s", reading_faults(&reading));
	cr_expect(strstr(one->message, "'aci318' is named twice"), "%s", one->message);
	reading_close(&reading);
	assert_possible("methods: [en1992_4, aci318, rating]");
}
