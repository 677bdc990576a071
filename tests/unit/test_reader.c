/* Tree to cell: what is understood, and what each mistake is answered with. */
#include "../../src/cell/fields.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static struct reading reading;

static const struct cell *read_good(const char *text)
{
	reading_open(&reading, text);
	cr_assert_eq(reading.status, DONE, "%s\n%s", text, reading_faults(&reading));
	cr_assert_not_null(reading.cell);
	return reading.cell;
}

static void assert_number(struct number number, double value, const char *unit)
{
	cr_assert_eq(number.given.origin, GIVEN);
	cr_assert_gt(number.given.mark.line, 0);
	cr_assert_eq(number.value, value, "%.17g", number.value);
	cr_assert_str_eq(number.unit ? number.unit->name : "", unit);
}

static void assert_word(struct word word, int value)
{
	cr_assert_eq(word.given.origin, GIVEN);
	cr_assert_eq(word.value, value);
}

/* a cell with every part of the format; demo data */
static const char whole[] =
	"standfast: 1\n"
	"title: Demo  cell,\n"
	"  east bay\n"
	"record: {revision: A, date: 2026-11-20, site: ''}\n"
	"show: us\n"
	"slab:\n"
	"  type: on_ground\n"
	"  thickness: {value: 160 mm, evidence: measured}\n"
	"  topping: none\n"
	"  concrete:\n"
	"    strength: {specified: 4000 psi, specimen: cylinder, evidence: delivery_note}\n"
	"    age: 90 days\n"
	"    cracked: {value: no, reason: demo analysis}\n"
	"  outline: {unit: m, points: [[0, 0], [14, 0], [14, 9], [0, 9], [0, 0]]}\n"
	"  joints: [{from: [5 m, 0 m], to: [5 m, 9 m], type: expansion}]\n"
	"  old_holes: none\n"
	"cell:\n"
	"  at: [2.4 m, 3.1 m]\n"
	"  turned: 30 deg\n"
	"  parts:\n"
	"    - {name: frame, mass: 380 kg, at: [0 mm, 10 mm, 120 mm]}\n"
	"    - {name: cabinet, mass: 90 kg, least_mass: unknown, box: {from: [0 mm, 0 mm, 0 mm], to: [1 m, 1 m, 2 m]}}\n"
	"  base:\n"
	"    - outline: [[-500 mm, -400 mm], [500 mm, -400 mm], [500 mm, 400 mm], [-500 mm, 400 mm]]\n"
	"      holes: [{unit: in, points: [[-6, -6], [6, -6], [0, 6]]}]\n"
	"    - {name: pad, at: [900 mm, 0 mm], size: [100 mm, 120 mm], touches: floor}\n"
	"  base_stiff: {shown_by: maker, note: drawing}\n"
	"  stand_off: none\n"
	"arm:\n"
	"  mount: [0 mm, 0 mm, 850 mm]\n"
	"  weight: {arm: 41 kg, payload: 12 kg, reach: {arm: 500 mm, payload: unknown}}\n"
	"  reactions:\n"
	"    vertical_includes_weight: yes\n"
	"    emergency_stop: {vertical: 1.6 kN, tilting: 1.5 kN m}\n"
	"loads:\n"
	"  - {name: push, force: 250 N, direction: any, at_height: 1.5 m, with: normal}\n"
	"  - {name: hose, force: [0 N, 50 N, -20 N]}\n"
	"anchors:\n"
	"  at: {unit: mm, points: [[-450, -350], [450, -350], [450, 350], [-450, 350]]}\n"
	"  plate_hole: slotted\n"
	"  product:\n"
	"    shaft: 1/2 in\n"
	"    rating:\n"
	"      spacing: [{distance: 80 mm, share: 60 %}, {distance: 180 mm, share: 100 %}]\n"
	"choices: {anchor_bed_ratio: 560 mm2}\n"
	"methods: [rating]\n";

Test(reader, understands_slab_and_record)
{
	const struct cell *cell = read_good(whole);
	cr_assert_str_eq(cell->title.value, "Demo cell, east bay", "texts are one line");
	cr_assert_str_eq(cell->record.date.value, "2026-11-20");
	cr_assert_not(is_known(cell->record.site), "an empty text is not known");
	cr_assert_str_eq(cell->record.site.value, "");
	assert_word(cell->show, UNITS_US);
	assert_number(cell->slab.thickness, 160, "mm");
	assert_word(cell->slab.thickness_evidence, BY_MEASURED);
	cr_assert_eq(cell->slab.topping.given.origin, GIVEN, "none is known to be nothing");
	cr_assert_eq(cell->slab.topping.value, 0);
	assert_number(cell->slab.concrete.specified, 4000 * 0.0068947572931683613, "psi");
	assert_number(cell->slab.concrete.age, 90 * 86400.0, "days");
	assert_word(cell->slab.concrete.cracked, NO);
	cr_assert_str_eq(cell->slab.concrete.uncracked_reason.value, "demo analysis");
	cr_assert_eq(cell->slab.outline.count, 4,
	             "a first point repeated at the end closes the ring");
	cr_assert_eq(cell->slab.outline.points[2].x, 14000);
	const struct joint *joint = cell->slab.joints.rows;
	cr_assert_eq(cell->slab.joints.count, 1);
	cr_assert_eq(joint->to.at[1], 9000);
	assert_word(joint->type, EXPANSION);
	cr_assert_eq(cell->slab.old_holes.given.origin, GIVEN);
	cr_assert_eq(cell->slab.old_holes.count, 0);
	cr_assert_eq(cell->slab.scan.given.origin, ABSENT);
	reading_close(&reading);
}

Test(reader, understands_cell_and_arm)
{
	const struct cell *cell = read_good(whole);
	cr_assert_eq(cell->standing_at.at[0], 2400);
	assert_number(cell->turned, 30 * 0.017453292519943295, "deg");
	const struct part *part = cell->parts.rows;
	cr_assert_eq(cell->parts.count, 2);
	cr_assert_eq(part[0].at.at[2], 120);
	cr_assert_not(is_known(part[0].box_from));
	cr_assert_eq(part[1].box_to.at[2], 2000);
	cr_assert_eq(part[1].least_mass.given.origin, ABSENT);
	cr_assert_eq(part[1].least_mass.given.mark.line, 22, "the word unknown keeps its place");
	const struct base_piece *piece = cell->base.rows;
	cr_assert_eq(piece[0].outline.count, 4);
	const struct ring *hole = piece[0].holes.rows;
	cr_assert_eq(hole[0].points[2].y, 152.4);
	cr_assert_eq(piece[1].size.at[1], 120);
	assert_word(piece[1].touches, TOUCHES_FLOOR);
	cr_assert_eq(piece[0].touches.given.origin, DEFAULT);
	assert_word(cell->base_stiff, STIFF_BY_MAKER);
	cr_assert_eq(cell->stand_off.height.given.origin, GIVEN);
	cr_assert_eq(cell->arm.mount.at[2], 850);
	assert_number(cell->arm.reach, 500, "mm");
	cr_assert_not(is_known(cell->arm.payload_reach));
	assert_word(cell->arm.vertical_includes_weight, YES);
	cr_assert_not(is_known(cell->arm.tilting_includes_weight));
	assert_number(cell->arm.reaction[ARM_EMERGENCY_STOP].tilting, 1.5e6, "kN m");
	cr_assert_not(is_known(cell->arm.reaction[ARM_NORMAL].tilting));
	reading_close(&reading);
}

Test(reader, understands_loads_and_anchors)
{
	const struct cell *cell = read_good(whole);
	const struct extra_load *load = cell->loads.rows;
	cr_assert_eq(cell->loads.count, 2);
	assert_number(load[0].force, 250, "N");
	cr_assert(is_known(load[0].any_direction));
	cr_assert_not(is_known(load[0].direction));
	cr_assert_eq(load[0].direction.given.mark.line, 0, "any is no unknown heading");
	assert_word(load[0].with, ARM_NORMAL);
	cr_assert(is_known(load[1].force_vector));
	cr_assert_not(is_known(load[1].force));
	cr_assert_eq(load[1].force_vector.at[2], -20);
	cr_assert_eq(load[1].with.given.origin, DEFAULT);
	cr_assert_eq(cell->anchors.count, 4);
	cr_assert_eq(cell->anchors.at_given.origin, GIVEN);
	cr_assert_eq(cell->anchors.at[3].y, 350);
	cr_assert_eq(cell->anchors.at_mark[1].line, 39);
	cr_assert(is_known(cell->anchors.slotted));
	cr_assert_not(is_known(cell->anchors.plate_hole));
	assert_number(cell->anchors.product.shaft, 12.7, "in");
	const struct spacing_row *row = cell->anchors.product.rating.spacing.rows;
	cr_assert_eq(row[0].share.value, 0.6);
	cr_assert_eq(cell->anchors.product.rating.allowed_share.given.origin, DEFAULT);
	assert_number(cell->choices.anchor_bed_ratio, 560, "mm2");
	cr_assert_eq(cell->methods.count, 1);
	cr_assert_eq(cell->setups.count, 0);
	reading_close(&reading);
}

Test(reader, two_keys_are_enough)
{
	const struct cell *cell = read_good("standfast: 1\nanchors: {at: unknown}\n");
	cr_assert_eq(cell->anchors.count, 0);
	cr_assert_eq(cell->anchors.at_given.origin, ABSENT);
	cr_assert_eq(cell->anchors.at_given.mark.line, 2);
	reading_close(&reading);
}

/* Every way in which a file can say that a thing is not known. */
Test(reader, not_known_has_many_words)
{
	static const char *const blanks[] = {"",   "~",       "null",      "NULL", "\"\"",
	                                     "''", "unknown", "'unknown'", "[]",   "{}"};
	for (size_t i = 0; i < COUNT(blanks); i++) {
		char text[400];
		snprintf(text, sizeof text,
		         "standfast: 1\nslab:\n  thickness: %s\n  outline: %s\n  joints: %s\n  "
		         "topping: %s\n"
		         "  type: %s\ncell:\n  at: %s\nanchors:\n  at: %s\n  plate_hole: "
		         "%s\ntitle: %s\nmethods: %s\n",
		         blanks[i], blanks[i], blanks[i], blanks[i], blanks[i], blanks[i],
		         blanks[i], blanks[i], blanks[i], blanks[i]);
		const struct cell *cell = read_good(text);
		cr_assert_not(is_known(cell->slab.thickness));
		cr_assert_not(is_known(cell->slab.outline));
		cr_assert_not(is_known(cell->slab.joints));
		cr_assert_not(is_known(cell->slab.topping), "not known is never none");
		cr_assert_not(is_known(cell->slab.type));
		cr_assert_not(is_known(cell->standing_at));
		cr_assert_not(is_known(cell->anchors.plate_hole));
		cr_assert_not(is_known(cell->anchors.slotted));
		cr_assert_str_eq(cell->title.value, "");
		cr_assert_eq(cell->slab.thickness.given.mark.line, 3, "%s", blanks[i]);
		cr_assert_eq(cell->slab.joints.given.mark.line, 5);
		cr_assert_eq(cell->methods.given.origin, DEFAULT);
		reading_close(&reading);
	}
}

Test(reader, a_point_with_an_unknown_number_is_unknown)
{
	const struct cell *cell = read_good(
		"standfast: 1\nanchors: {at: {unit: mm, points: [[0, unknown], [1, 2]]}}\n"
		"cell: {at: [unknown, 3 m]}\n");
	cr_assert_eq(cell->anchors.count, 0);
	cr_assert_not(is_known(cell->standing_at));
	cr_assert_eq(cell->standing_at.given.mark.line, 3);
	reading_close(&reading);
}

Test(reader, grid_runs_along_x_first)
{
	const struct cell *cell = read_good(
		"standfast: 1\n"
		"anchors: {at: {grid: {columns: 3, rows: 2, step: [450 mm, 700 mm], centre: [10 mm, 20 mm]}}}\n");
	static const struct vec2 places[] = {{-440, -330}, {10, -330}, {460, -330},
	                                     {-440, 370},  {10, 370},  {460, 370}};
	cr_assert_eq(cell->anchors.count, 6);
	for (size_t i = 0; i < 6; i++) {
		cr_assert_eq(cell->anchors.at[i].x, places[i].x);
		cr_assert_eq(cell->anchors.at[i].y, places[i].y);
		cr_assert_eq(cell->anchors.at_mark[i].line, 2);
	}
	reading_close(&reading);
}

Test(reader, circle_begins_at_first_and_runs_anticlockwise)
{
	const struct cell *cell = read_good(
		"standfast: 1\nanchors: {at: {circle: {count: 4, radius: 1 ft, first: 90 deg, centre: [0 mm, 0 mm]}}}\n");
	static const struct vec2 places[] = {{0, 304.8}, {-304.8, 0}, {0, -304.8}, {304.8, 0}};
	cr_assert_eq(cell->anchors.count, 4);
	for (size_t i = 0; i < 4; i++) {
		/* cosines of the library, radius 300: a few units of the last place */
		cr_assert_float_eq(cell->anchors.at[i].x, places[i].x, 1e-12 * 304.8);
		cr_assert_float_eq(cell->anchors.at[i].y, places[i].y, 1e-12 * 304.8);
	}
	cr_assert_eq(cell->anchors.at[0].x, 0, "what is zero but for rounding is zero");
	reading_close(&reading);
}

Test(reader, places_may_carry_their_units)
{
	const struct cell *cell = read_good(
		"standfast: 1\nanchors:\n  at:\n    - [0 mm, 1 in]\n    - [1 ft, 0 mm]\n");
	cr_assert_eq(cell->anchors.count, 2);
	cr_assert_eq(cell->anchors.at[0].y, 25.4);
	cr_assert_eq(cell->anchors.at_mark[1].line, 5);
	reading_close(&reading);
}

Test(reader, cores_take_their_unit_from_beside_them)
{
	const struct cell *cell = read_good(
		"standfast: 1\nanchors: {at: unknown}\nslab: {concrete: {strength: {cores: "
		"{values: [4000, 4500], unit: psi, diameter: 94 mm}}}}\n");
	cr_assert_eq(cell->slab.concrete.cores.count, 2);
	cr_assert_eq(cell->slab.concrete.cores.values[0], 4000 * 0.0068947572931683613);
	assert_number(cell->slab.concrete.core_diameter, 94, "mm");
	reading_close(&reading);
	cell = read_good("standfast: 1\nanchors: {at: unknown}\n"
	                 "slab: {concrete: {strength: {cores: {values: [34.1 MPa, 4500 psi]}}}}\n");
	cr_assert_eq(cell->slab.concrete.cores.values[0], 34.1);
	reading_close(&reading);
}

Test(reader, every_setup_is_a_whole_cell)
{
	const struct cell *cell = read_good(
		"standfast: 1\n"
		"setups:\n"
		"  - {name: high, arm.mount: [0 mm, 0 mm, 1350 mm], anchors.plate_hole: 14 mm}\n"
		"  - cell.parts: [{name: stock, mass: 120 kg}]\n"
		"    slab.thickness: unknown\n"
		"    cell.stand_off: none\n"
		"    arm: {weight: {payload: 3 kg}}\n"
		"arm: {mount: [0 mm, 0 mm, 850 mm], weight: {arm: 41 kg, payload: 12 kg}}\n"
		"cell: {stand_off: {height: 8 mm, filled: yes}}\n"
		"slab: {thickness: 160 mm}\n"
		"anchors: {at: [[0 mm, 0 mm]], plate_hole: slotted}\n");
	const struct setup *setup = cell->setups.rows;
	cr_assert_eq(cell->setups.count, 2);
	cr_assert_str_eq(setup[0].name.value, "high");
	cr_assert_eq(setup[0].cell->arm.mount.at[2], 1350);
	cr_assert_eq(setup[0].cell->arm.mass.value, 41,
	             "what is not overridden is the cell's, wherever it stands");
	cr_assert_eq(setup[0].cell->anchors.plate_hole.value, 14);
	cr_assert_not(is_known(setup[0].cell->anchors.slotted),
	              "a value replaces the word of the same key");
	cr_assert_eq(setup[0].cell->setups.count, 0);
	cr_assert_eq(setup[0].overridden.count, 2);
	cr_assert_str_eq(((struct text *)setup[0].overridden.rows)[1].value, "anchors.plate_hole");
	cr_assert_str_eq(setup[1].name.value, "setup 2");
	cr_assert_eq(setup[1].name.given.origin, DEFAULT);
	cr_assert_eq(setup[1].cell->setups.count, 0);
	cr_assert_eq(setup[1].cell->parts.count, 1);
	cr_assert_not(is_known(setup[1].cell->slab.thickness));
	cr_assert_eq(setup[1].cell->stand_off.height.value, 0);
	cr_assert_null(setup[1].cell->stand_off.height.unit);
	cr_assert_eq(setup[1].cell->arm.payload.value, 3);
	cr_assert_eq(setup[1].cell->arm.mass.value, 41, "a map overrides the keys that it holds");
	cr_assert_eq(setup[1].cell->choices.stabilising_weight.given.origin, DEFAULT);
	cr_assert_eq(cell->arm.mount.at[2], 850, "the cell itself is as it was");
	cr_assert_eq(cell->parts.count, 0);
	cr_assert(is_known(cell->anchors.slotted));
	reading_close(&reading);
}

/* One mistake a row behind "standfast: 1" and an unknown pattern: fault, path, and words of the
 * advice. */
static const struct {
	const char *text;
	enum fault fault;
	const char *path, *message, *hint;
} mistakes[] = {
	{"titel: x", FAULT_UNKNOWN_KEY, "titel", "unknown key 'titel'", "did you mean 'title'?"},
	{"cell: {parts: [{masss: 3 kg}]}", FAULT_UNKNOWN_KEY, "cell.parts[1].masss", "unknown key",
         "'mass'"},
	{"slab: {qqqq: 3}", FAULT_UNKNOWN_KEY, "slab.qqqq", "unknown key",
         "keys here: type, thickness"},
	{"slab: {value: 3}", FAULT_UNKNOWN_KEY, "slab.value", "unknown key",
         "stands at slab.thickness.value"},
	{"arm.mount: [0 mm, 0 mm, 0 mm]", FAULT_UNKNOWN_KEY, "arm.mount", "unknown key",
         "into setups"},
	{"\"cell.parts[].mass\": 3 kg", FAULT_UNKNOWN_KEY, "cell.parts[].mass", "unknown key", ""},
	{"slab: {type: on_ground, type: suspended}", FAULT_DUPLICATE_KEY, "slab",
         "'type' is written twice", "keep one"},
	{"slab: 3", FAULT_SHAPE, "slab", "a single value stands here, a map of keys is wanted",
         "{type: on_ground}"},
	{"slab: {type: [a]}", FAULT_SHAPE, "slab.type", "a list stands here", "on_ground"},
	{"slab: {topping: 20 mm}", FAULT_SHAPE, "slab.topping", "the word none or a map of keys",
         "{thickness: 20 mm}"},
	{"cell: {parts: {mass: 3 kg}}", FAULT_SHAPE, "cell.parts", "a map of keys stands here",
         "write it as [{name: "},
	{"cell: {parts: [3 kg]}", FAULT_SHAPE, "cell.parts[1]", "a row of keys", "{key: value"},
	{"cell: {at: 3 mm}", FAULT_SHAPE, "cell.at", "a point [x, y] is wanted", "[2.4 m, 3.1 m]"},
	{"cell: {at: [1,5 m, 2 m]}", FAULT_NUMBER, "cell.at", "'1,5 m' has a decimal comma",
         "write 1.5 m"},
	{"cell: {at: [3 m]}", FAULT_SHAPE, "cell.at", "1 value stands here", "[2.4 m, 3.1 m]"},
	{"cell: {at: [3 m, 2 m, 0 m]}", FAULT_SHAPE, "cell.at", "3 values stand here",
         "a point here has x and y only"},
	{"slab: {outline: {unit: mm, points: [[-350,350,0]]}}", FAULT_SHAPE,
         "slab.outline.points[1]", "3 values stand here", "x and y only"},
	{"slab: {outline: {unit: mm, points: [[-350; 350]]}}", FAULT_SHAPE,
         "slab.outline.points[1]", "1 value stands here", "separate with a comma"},
	{"cell: {at: [3, 2]}", FAULT_NUMBER, "cell.at", "the numbers have no unit",
         "[2.4 m, 3.1 m]"},
	{"slab: {outline: [[0, 0], [9, 0], [9, 9]]}", FAULT_NUMBER, "slab.outline",
         "the points have no unit", "{unit: mm, points: [["},
	{"slab: {outline: [[0 m, 0 m], [9, 0], [9, 9]]}", FAULT_NUMBER, "slab.outline",
         "the points have no unit", "name the unit once"},
	{"cell: {at: [1,5 m,2 m]}", FAULT_NUMBER, "cell.at", "'1,5 m' has", "write 1.5 m"},
	{"slab: {outline: {unit: m, points: [[1,5, 2]]}}", FAULT_NUMBER, "slab.outline.points[1]",
         "'1,5' has", "write 1.5"},
	{"loads: [{force: [8,5 kN, 0 kN]}]", FAULT_NUMBER, "loads[1].force", "'8,5 kN' has",
         "write 8.5 kN"},
	{"arm: {mount: [0, 0, 850]}", FAULT_NUMBER, "arm.mount", "the numbers have no unit",
         "[0 mm, 0 mm, 850 mm]"},
	{"slab:\n  thickness:\n    value:180 mm", FAULT_SHAPE, "slab.thickness",
         "'value:180 mm' stands here", "write a space behind the colon: value: 180 mm"},
	{"cell: {at: 1,5 m}", FAULT_SHAPE, "cell.at", "a point [x, y] is wanted", ""},
	{"loads: [{force: 8,5 kN, direction: any}]", FAULT_NUMBER, "loads[1].force",
         "'8,5 kN' has a decimal comma", "write 8.5 kN"},
	{"slab: {thickness: 1,500 mm}", FAULT_NUMBER, "slab.thickness", "a separator",
         "write 1500 mm or 1.500 mm"},
	{"slab: {concrete: {strength: {cores: {values: [30,5 MPa, 31 MPa]}}}}", FAULT_NUMBER,
         "slab.concrete.strength.cores.values[1]", "'30,5 MPa'", "write 30.5 MPa"},
	{"slab: {thickness: {value:180 mm}}", FAULT_UNKNOWN_KEY, "slab.thickness.value:180 mm",
         "unknown key", "write a space behind the colon: value: 180 mm"},
	{"slab:\n  topping:\n    thickness:0.6 m", FAULT_SHAPE, "slab.topping",
         "'thickness:0.6 m' stands here", "write a space behind the colon: thickness: 0.6 m"},
	{"tension: 50 kN", FAULT_UNKNOWN_KEY, "tension", "unknown key",
         "stands at anchors.needs.tension and at anchors.product.rating.tension"},
	{"slab: {concrete: {strength: {class: C30}}}", FAULT_WORD, "slab.concrete.strength.class",
         "not one of", "did you mean 'C30/37'"},
	{"setups: [{cell.stand_off.height: 8,5 mm}]", FAULT_NUMBER,
         "setups[1].cell.stand_off.height", "'8,5 mm' has a decimal comma", "write 8.5 mm"},
	{"setups: [{arm.name: x}]", FAULT_UNKNOWN_KEY, "setups[1].arm.name", "unknown path",
         "write name alone"},
	{"setups: [{arm.reason: x}]", FAULT_UNKNOWN_KEY, "setups[1].arm.reason", "unknown path",
         "write the whole path of a field"},
	{"setups: [{nmae: x}]", FAULT_UNKNOWN_KEY, "setups[1].nmae", "unknown path",
         "did you mean 'name'?"},
	{"title: [a, b]", FAULT_SHAPE, "title", "a text is wanted", ""},
	{"methods: rating", FAULT_SHAPE, "methods", "a list of words is wanted", "[rating]"},
	{"setups: 3", FAULT_SHAPE, "setups", "a list of rows", "high pedestal"},
	{"setups: [3]", FAULT_SHAPE, "setups[1]", "a row of keys", "high pedestal"},
	{"slab:\n  clear: 1,5 m", FAULT_NUMBER, "slab.clear", "decimal comma", "write 1.5 m"},
	{"slab: {thickness: 160}", FAULT_NUMBER, "slab.thickness", "no unit",
         "mm, cm, m, in or ft"},
	{"slab: {thickness: 28 MPa}", FAULT_NUMBER, "slab.thickness", "is a stress", "a length"},
	{"slab: {outline: {unit: m, points: [[0 m, 0]]}}", FAULT_NUMBER, "slab.outline.points[1]",
         "a unit where none", "without"},
	{"slab: {outline: {unit: M, points: [[0, 0]]}}", FAULT_NUMBER, "slab.outline.unit",
         "wrong case", "write m"},
	{"slab: {outline: {points: [[0, 0]]}}", FAULT_MISSING_KEY, "slab.outline",
         "unit of the numbers", "unit: mm"},
	{"slab: {outline: {unit: m}}", FAULT_MISSING_KEY, "slab.outline", "'points' is missing",
         "points: [["},
	{"slab: {outline: {unit: m, point: [[0, 0]], points: unknown}}", FAULT_UNKNOWN_KEY,
         "slab.outline.point", "unknown key", "'points'"},
	{"slab: {concrete: {strength: {cores: {unit: MPa, values: [30, x]}}}}", FAULT_NUMBER,
         "slab.concrete.strength.cores.values[2]", "not a number", "without a unit"},
	{"slab: {concrete: {strength: {cores: {unit: kg}}}}", FAULT_NUMBER,
         "slab.concrete.strength.cores.unit", "is a mass", "a stress"},
	{"loads: [{force: some, direction: any}]", FAULT_NUMBER, "loads[1].force", "not a number",
         "1.2 kN, or unknown"},
	{"loads: [{force: 3 N, direction: left}]", FAULT_NUMBER, "loads[1].direction",
         "not a number", "or any"},
	{"slab: {type: on_grond}", FAULT_WORD, "slab.type", "not one of the words",
         "did you mean 'on_ground'? write on_ground or suspended, or unknown"},
	{"arm: {reactions: {paired: true}}", FAULT_WORD, "arm.reactions.paired", "'true'",
         "write yes"},
	{"arm: {reactions: {paired: Off}}", FAULT_WORD, "arm.reactions.paired", "'Off'",
         "write no"},
	{"methods: [rating, rating]", FAULT_WORD, "methods[2]", "named twice", "once"},
	{"methods: [ratin]", FAULT_WORD, "methods[1]", "not one of", "'rating'"},
	{"cell: {parts: [{mass: -5 kg}]}", FAULT_RANGE, "cell.parts[1].mass",
         "'-5 kg' is too small", "from 0 kg to"},
	{"slab: {thickness: 1e6 ft}", FAULT_RANGE, "slab.thickness", "too large", "ft"},
	{"cell: {at: [2000 km, 3 m]}", FAULT_NUMBER, "cell.at", "not known", ""},
	{"cell: {at: [2000000 m, 3 m]}", FAULT_RANGE, "cell.at", "too large", "1000 m"},
	{"setups: [{anchors.at: unknown}]", FAULT_SETUP, "setups[1].anchors.at",
         "cannot override anchors.at", "second cell file"},
	{"setups: [{anchors: {at: unknown}}]", FAULT_SETUP, "setups[1].anchors.at",
         "cannot override", "second cell file"},
	{"setups: [{record.site: x}]", FAULT_SETUP, "setups[1].record.site",
         "cannot override record", "whole file"},
	{"setups: [{record: {site: x}}]", FAULT_SETUP, "setups[1].record", "cannot override record",
         "whole file"},
	{"setups: [{methods: [rating]}]", FAULT_SETUP, "setups[1].methods",
         "cannot override methods", "whole file"},
	{"setups: [{setups: []}]", FAULT_SETUP, "setups[1].setups", "cannot override setups",
         "whole file"},
	{"setups: [{standfast: 1}]", FAULT_SETUP, "setups[1].standfast",
         "cannot override standfast", "whole file"},
	{"setups: [{show: us}]", FAULT_SETUP, "setups[1].show", "cannot override show",
         "whole file"},
	{"setups: [{title: x}]", FAULT_SETUP, "setups[1].title", "cannot override title",
         "whole file"},
	{"setups: [{arm: {}, arm.mount: unknown}]", FAULT_SETUP, "setups[1].arm.mount",
         "overridden by 'arm' as well", "keep one"},
	{"setups:\n  - \"cell.parts[].mass\": 3 kg", FAULT_SETUP, "setups[1].cell.parts[].mass",
         "single row", "whole list"},
	{"setups: [{arm.mnt: unknown}]", FAULT_UNKNOWN_KEY, "setups[1].arm.mnt",
         "unknown path 'arm.mnt'", "arm.mount"},
	{"setups: [{mount: unknown}]", FAULT_UNKNOWN_KEY, "setups[1].mount", "unknown path",
         "'arm.mount'"},
	{"setups: [{arm: {mont: unknown}}]", FAULT_UNKNOWN_KEY, "setups[1].arm.mont", "unknown key",
         "'mount'"},
	{"setups: [{name: a}, {name: a}]", FAULT_CONTRADICTION, "setups[2]", "are named 'a'",
         "a name of its own"},
	{"slab: {concrete: {cracked: no}}", FAULT_MISSING_KEY, "slab.concrete.cracked",
         "without a reason", "reason:"},
};

Test(reader, each_mistake_is_answered)
{
	for (size_t i = 0; i < COUNT(mistakes); i++) {
		char text[600];
		snprintf(text, sizeof text, "standfast: 1\nanchors: {at: unknown}\n%s\n",
		         mistakes[i].text);
		reading_open(&reading, text);
		cr_assert_eq(reading.status, BAD_INPUT, "%s", mistakes[i].text);
		cr_assert_null(reading.cell);
		const struct diagnostic *one = reading_find(&reading, mistakes[i].path);
		cr_assert_not_null(one, "%s\n%s", mistakes[i].text, reading_faults(&reading));
		cr_assert_eq(one->fault, mistakes[i].fault, "%s\n%s", mistakes[i].text,
		             reading_faults(&reading));
		cr_assert_eq(one->severity, ERROR);
		cr_assert_geq(one->mark.line, 3, "%s", mistakes[i].text);
		cr_assert_gt(one->mark.width, 0);
		cr_assert_not_null(strstr(one->message, mistakes[i].message), "%s",
		                   reading_faults(&reading));
		cr_assert_not_null(strstr(one->hint, mistakes[i].hint), "%s",
		                   reading_faults(&reading));
		cr_assert_eq(reading.list.errors, 1, "one mistake, one message: %s",
		             reading_faults(&reading));
		reading_close(&reading);
	}
}

/* The same for the pattern. */
static const struct {
	const char *at;
	enum fault fault;
	const char *path, *message;
	size_t errors;
} patterns[] = {
	{"3", FAULT_SHAPE, "anchors.at", "a list of points, a grid or a circle is wanted", 1},
	{"{grid: 3}", FAULT_SHAPE, "anchors.at.grid", "a map of keys is wanted", 1},
	{"{circle: {count: 4, radius: 30,5 cm, first: 0 deg, centre: [0 m, 0 m]}}", FAULT_NUMBER,
         "anchors.at.circle.radius", "'30,5 cm' has a decimal comma", 1},
	{"{grid: {}, circle: {}}", FAULT_CONTRADICTION, "anchors.at", "beside other keys", 1},
	{"{grid: {columns: 3, rows: 2, step: [1 m, 1 m]}}", FAULT_MISSING_KEY, "anchors.at.grid",
         "'centre' is missing", 1},
	{"{grid: {columns: 3, rows: 2, step: [1 m, unknown], centre: [0 m, 0 m]}}",
         FAULT_MISSING_KEY, "anchors.at.grid.step", "both numbers", 1},
	{"{grid: {columns: 3, rows: 2, step: [1 m, 1 m], center: [0 m, 0 m]}}", FAULT_UNKNOWN_KEY,
         "anchors.at.grid.center", "unknown key", 1},
	{"{grid: {columns: 9, rows: 9, step: [1 m, 1 m], centre: [0 m, 0 m]}}", FAULT_SIZE,
         "anchors.at.grid", "81 anchors", 1},
	{"{grid: {columns: 2.5, rows: 2, step: [1 m, 1 m], centre: [0 m, 0 m]}}", FAULT_NUMBER,
         "anchors.at.grid.columns", "whole number", 1},
	{"{grid: {columns: 2, rows: 2, step: [-1 m, 1 m], centre: [0 m, 0 m]}}", FAULT_RANGE,
         "anchors.at.grid.step", "too small", 1},
	{"{circle: {count: 65, radius: 1 m, first: 0 deg, centre: [0 m, 0 m]}}", FAULT_RANGE,
         "anchors.at.circle.count", "too large", 1},
	{"{circle: {count: 6, radius: 1 m, centre: [0 m, 0 m]}}", FAULT_MISSING_KEY,
         "anchors.at.circle", "'first' is missing", 1},
	{"{points: [[0, 0]]}", FAULT_MISSING_KEY, "anchors.at", "the unit of the numbers", 1},
	{"[[0 mm, 0 mm], 3]", FAULT_SHAPE, "anchors.at[2]", "a point [x, y]", 1},
	{"[[0 mm, 0], [1, 2 mm]]", FAULT_NUMBER, "anchors.at[1]", "no unit", 2},
};

Test(reader, each_mistake_in_a_pattern_is_answered)
{
	for (size_t i = 0; i < COUNT(patterns); i++) {
		char text[300];
		snprintf(text, sizeof text, "standfast: 1\nanchors:\n  at: %s\n", patterns[i].at);
		reading_open(&reading, text);
		const struct diagnostic *one = reading_find(&reading, patterns[i].path);
		cr_assert_not_null(one, "%s\n%s", patterns[i].at, reading_faults(&reading));
		cr_assert_eq(one->fault, patterns[i].fault, "%s\n%s", patterns[i].at,
		             reading_faults(&reading));
		cr_assert_not_null(strstr(one->message, patterns[i].message), "%s",
		                   reading_faults(&reading));
		cr_assert_eq(reading.list.errors, patterns[i].errors, "%s",
		             reading_faults(&reading));
		reading_close(&reading);
	}
}

Test(reader, what_must_be_there_is_missed)
{
	static const struct { const char *text, *path; size_t errors; } missing[] = {
		{"", "standfast", 2}, {"", "anchors.at", 2}, {"---\n", "anchors.at", 2}, {"standfast: 1\n", "anchors.at", 1},
		{"standfast: 1\nanchors:\n", "anchors.at", 1}, {"anchors: {at: unknown}\n", "standfast", 1},
		{"standfast: unknown\nanchors: {at: unknown}\n", "standfast", 1}};
	for (size_t i = 0; i < COUNT(missing); i++) {
		reading_open(&reading, missing[i].text);
		const struct diagnostic *one = reading_find(&reading, missing[i].path);
		cr_assert_not_null(one, "%s", reading_faults(&reading));
		cr_assert_not_null(strstr(one->hint, "write "), "%s", one->hint);
		cr_assert_eq(reading.list.errors, missing[i].errors, "%s",
		             reading_faults(&reading));
		reading_close(&reading);
	}
	reading_open(&reading, "- 1\n");
	cr_assert_eq(reading.list.list[0].fault, FAULT_SHAPE);
	reading_close(&reading);
}

Test(reader, another_version_is_not_read)
{
	reading_open(&reading, "standfast: 2\nnew_key: 3\n");
	cr_assert_eq(reading.status, BAD_INPUT);
	cr_assert_eq(reading.list.errors, 1, "its keys are not judged: %s",
	             reading_faults(&reading));
	cr_assert_not_null(strstr(reading.list.list[0].hint, "this program reads version 1"));
	reading_close(&reading);
	reading_open(&reading, "standfast: one\nanchors: {at: unknown}\n");
	cr_assert_eq(reading.list.list[0].fault, FAULT_NUMBER);
	reading_close(&reading);
}

Test(reader, all_faults_come_in_one_run_sorted_by_line)
{
	reading_open(&reading, "standfast: 1\n"
	                       "choices: {least_strength: 3}\n"            /* no unit, read last but one */
	                       "anchors:\n"
	                       "  at: {unit: mm, points: [[0, 0], [0, 0]]}\n"   /* geometry, found last */
	                       "setups: [{anchors.at: unknown}]\n"
	                       "slab: {type: x}\n"
	                       "slab: {}\n");
	static const enum fault order[] = {FAULT_NUMBER, FAULT_GEOMETRY, FAULT_SETUP, FAULT_WORD,
	                                   FAULT_DUPLICATE_KEY};
	cr_assert_eq(reading.list.count, COUNT(order), "%s", reading_faults(&reading));
	for (size_t i = 0; i < COUNT(order); i++)
		cr_assert_eq(reading.list.list[i].fault, order[i], "%s", reading_faults(&reading));
	reading_close(&reading);
}

Test(reader, twenty_faults_are_kept_and_the_rest_counted)
{
	char text[2000] = "standfast: 1\nanchors: {at: unknown}\n";
	for (int i = 0; i < 30; i++)
		snprintf(text + strlen(text), sizeof text - strlen(text), "zzzz%d: 1\n", i);
	reading_open(&reading, text);
	cr_assert_eq(reading.list.count, MAX_DIAGNOSTICS);
	cr_assert_eq(reading.list.errors, 30);
	cr_assert_eq(reading.list.dropped, 10);
	reading_close(&reading);
}

/* A value that could not be read must not be missed a second time. */
Test(reader, no_fault_follows_from_another)
{
	static const char *const texts[] = {
		"cell: {base: [{at: [0 mm, 0 mm], size: [1, 2 mm]}]}",
		"cell: {base: [{outlin: 3}]}",
		"loads: [{force: 3 kg, direction: any}]",
		"slab: {joints: [{from: [0 m, 0 m], to: [x, 1 m]}]}",
		"anchors: {at: unknown, product: {rating: {spacing: [{distance: 80 mm, share: 60}]}}}"};
	for (size_t i = 0; i < COUNT(texts); i++) {
		char text[400];
		snprintf(text, sizeof text, "standfast: 1\n%s%s\n",
		         strncmp(texts[i], "anchors", 7) ? "anchors: {at: unknown}\n" : "",
		         texts[i]);
		reading_open(&reading, text);
		cr_assert_eq(reading.list.errors, 1, "%s\n%s", text, reading_faults(&reading));
		reading_close(&reading);
	}
}

Test(reader, a_fault_of_a_setup_names_it_and_is_said_once)
{
	reading_open(&reading, "standfast: 1\n"
	                       "cell: {base: [{at: [0 mm, 0 mm], size: [1 m, 1 m]}]}\n"
	                       "setups:\n"
	                       "  - {name: wide}\n"
	                       "  - {name: small, cell.base: [{at: [0 mm, 0 mm], size: [100 mm, 100 mm]}]}\n"
	                       "anchors: {at: [[0 mm, 0 mm], [400 mm, 0 mm], [900 mm, 0 mm]]}\n");
	cr_assert_eq(reading.list.errors, 2, "%s", reading_faults(&reading));
	cr_assert_not_null(
		strstr(reading_find(&reading, "anchors.at[2]")->message, "(setup 'small')"));
	cr_assert_null(strstr(reading_find(&reading, "anchors.at[3]")->message, "setup"));
	reading_close(&reading);
}

/* `row` times `count` between `before` and `after`; # in the row becomes its number. */
static char *rows_of(const char *before, const char *row, int count, const char *after)
{
	char *text = malloc(strlen(before) + strlen(after) + (size_t)count * (strlen(row) + 8) + 1);
	strcpy(text, before);
	size_t at = strlen(text);
	for (int i = 0; i < count; i++)
		for (const char *from = row; *from; from++)
			at += (size_t)(*from == '#' ? sprintf(text + at, "%d", i)
			                            : sprintf(text + at, "%c", *from));
	strcpy(text + at, after);
	return text;
}

Test(reader, limits_are_messages)
{
	static const struct { const char *before, *row, *after, *path; int limit; } lists[] = {
		{"cell: {parts: [", "{mass: # kg},", "]}\n", "cell.parts", MAX_PARTS},
		{"loads: [", "{force: # N, direction: any},", "]\n", "loads", MAX_LOADS},
		{"setups: [", "{name: s#},", "]\n", "setups", MAX_SETUPS},
		{"slab: {old_holes: [", "{depth: 1# mm},", "]}\n", "slab.old_holes", MAX_OLD_HOLES},
		{"slab: {outline: {unit: m, points: [", "[#, 0],", "]}}\n", "slab.outline.points", MAX_VERTICES},
		{"slab: {concrete: {strength: {cores: {unit: MPa, values: [", "3.#,", "]}}}}\n",
		 "slab.concrete.strength.cores.values", MAX_CORES},
		{"setups: [{", "x.a#: 1,", "}]\n", "setups[1]", 64},
	};
	for (size_t i = 0; i < COUNT(lists); i++)
		for (int over = 0; over <= 1; over++) {
			char before[200];
			snprintf(before, sizeof before, "standfast: 1\nanchors: {at: unknown}\n%s",
			         lists[i].before);
			char *text = rows_of(before, lists[i].row, lists[i].limit + over,
			                     lists[i].after);
			reading_open(&reading, text);
			const struct diagnostic *one = reading_find(&reading, lists[i].path);
			cr_assert_eq(one && one->fault == FAULT_SIZE, over == 1, "%s %d\n%s",
			             lists[i].path, over, reading_faults(&reading));
			reading_close(&reading);
			free(text);
		}
}

Test(reader, a_text_is_one_line_of_bounded_length)
{
	char *text = rows_of("standfast: 1\nanchors: {at: unknown}\ntitle: |\n", "  line #\n", 100,
	                     "");
	const struct cell *cell = read_good(text);
	cr_assert_null(strchr(cell->title.value, '\n'));
	cr_assert_eq(strncmp(cell->title.value, "line 0 line 1 ", 14), 0);
	reading_close(&reading);
	free(text);
	text = rows_of("standfast: 1\nanchors: {at: unknown}\ntitle: ", "word # ", 200, "\n");
	reading_open(&reading, text);
	cr_assert_eq(reading.list.list[0].fault, FAULT_SIZE);
	reading_close(&reading);
	free(text);
}

/* An allocator that fails at one call or from it on, and counts what is out. */
struct failing { int calls, live, fail_at; bool stays_failed; };

static void *allocate(void *user, void *old, size_t size)
{
	struct failing *failing = user;
	if (size == 0) {
		failing->live -= old != NULL;
		free(old);
		return NULL;
	}
	failing->calls++;
	if (failing->stays_failed ? failing->calls >= failing->fail_at
	                          : failing->calls == failing->fail_at)
		return NULL;
	failing->live += old == NULL;
	return realloc(old, size);
}

Test(reader, a_failing_allocation_is_no_memory_and_no_leak)
{
	char *text = rows_of(whole, "\n", 10, "setups: [{name: a}, {name: b}, {name: c}]\n");
	for (int stays_failed = 0; stays_failed <= 1; stays_failed++)
		for (int n = 1;; n++) {
			struct failing failing = {.fail_at = n, .stays_failed = stays_failed};
			struct arena arena;
			struct diagnostics list = {0};
			const struct cell *cell = NULL;
			arena_open(&arena, allocate, &failing);
			enum status status = cell_read(&arena, text, strlen(text), 1, &list, &cell);
			arena_close(&arena);
			cr_assert_eq(failing.live, 0);
			if (failing.calls < n) {
				cr_assert_eq(status, DONE);
				cr_assert_gt(n, 3, "the file needs some blocks");
				break;
			}
			cr_assert_eq(status, NO_MEMORY);
			cr_assert_null(cell);
			cr_assert_eq(list.list[list.count - 1].fault, FAULT_MEMORY);
		}
	free(text);
}

/* Every kind of fault can be provoked by a file; FAULT_IO alone belongs to the program that opens
 * it. */
Test(reader, every_fault_is_provoked)
{
	static const char *const texts[] = {
		"a: @", "a: *b", "titel: 1", "a: 1\na: 2", "standfast: 1", "slab: 3", "slab: {thickness: 3}", "slab: {type: x}",
		"standfast: 3", "standfast: 1\nanchors: {at: [[0 mm, 0 mm], [0 mm, 0 mm]]}", "setups: [{title: x}]",
		"standfast: 1\nanchors: {at: unknown}\nloads: [{force: [1 N, 1 N, 1 N], direction: any}]",
		"[[[[[[[[[[[[[[[[[[[[[[["};
	unsigned seen = 1u << FAULT_IO | 1u << FAULT_MEMORY;   /* memory: the test above */
	for (size_t i = 0; i < COUNT(texts); i++) {
		reading_open(&reading, texts[i]);
		for (size_t k = 0; k < reading.list.count; k++)
			seen |= 1u << reading.list.list[k].fault;
		reading_close(&reading);
	}
	cr_assert_eq(seen, (1u << FAULT_KINDS) - 1, "faults not seen: %x",
	             ~seen & ((1u << FAULT_KINDS) - 1));
}

Test(diagnostic, codes_are_stable_and_different)
{
	for (int i = 0; i < FAULT_KINDS; i++) {
		char code[16];
		snprintf(code, sizeof code, "E%02d", i + 1);
		cr_assert_str_eq(fault_code((enum fault)i), code);
		cr_assert_gt(strlen(fault_about((enum fault)i)), 5);
	}
}

Test(diagnostic, messages_are_cut_and_cleaned)
{
	static struct diagnostics list;
	char text[1000];
	memset(text, 'x', sizeof text);
	text[sizeof text - 1] = 0;
	diagnose(&list, ERROR, FAULT_YAML, (struct mark){1, 1, 1, 1}, text, text, "%s", text);
	cr_assert_eq(strlen(list.list[0].message), DIAGNOSTIC_MESSAGE - 1);
	cr_assert_eq(strlen(list.list[0].hint), DIAGNOSTIC_HINT - 1);
	cr_assert_eq(strlen(list.list[0].path), DIAGNOSTIC_PATH - 1);
	diagnose(&list, NOTE, FAULT_YAML, (struct mark){1, 1, 1, 1}, NULL, NULL,
	         "a\033[31m\xC2\x9B \xC3\xA4 \xE2\x82");
	cr_assert_str_eq(list.list[1].message, "a?[31m?? \xC3\xA4 ??");
	cr_assert_str_eq(list.list[1].hint, "");
	cr_assert_eq(list.errors, 1, "a note is no error");
}
