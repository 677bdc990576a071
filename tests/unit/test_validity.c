/* What a cell cannot be. Each row is one contradiction, and a neighbour that is just possible. */
#include "../../src/cell/validity.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static struct reading reading;

static void read_with(const char *text)
{
	char whole[2000];
	bool has_anchors = strncmp(text, "anchors", 7) == 0;
	snprintf(whole, sizeof whole, "standfast: 1\n%s\n%s",
	         has_anchors ? "" : "anchors: {at: unknown}", text);
	reading_open(&reading, whole);
}

static void assert_valid(const char *text)
{
	read_with(text);
	cr_assert_eq(reading.status, DONE, "%s\n%s", text, reading_faults(&reading));
	reading_close(&reading);
}

static void assert_fault(const char *text, enum fault fault, const char *path, const char *message)
{
	read_with(text);
	const struct diagnostic *one = reading_find(&reading, path);
	cr_assert_not_null(one, "%s\n%s", text, reading_faults(&reading));
	cr_assert_eq(one->fault, fault, "%s\n%s", text, reading_faults(&reading));
	cr_assert_not_null(strstr(one->message, message), "%s\n%s", text, reading_faults(&reading));
	cr_assert_gt(strlen(one->hint), 0, "it says what to write");
	cr_assert_geq(one->mark.line, 2);
	cr_assert_eq(reading.list.errors, 1, "%s\n%s", text, reading_faults(&reading));
	reading_close(&reading);
}

struct contradiction {
	const char *impossible;
	enum fault fault;
	const char *path, *message, *possible;
};

static void assert_rows(const struct contradiction *rows, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		assert_fault(rows[i].impossible, rows[i].fault, rows[i].path, rows[i].message);
		assert_valid(rows[i].possible);
	}
}

#define SQUARE "{unit: mm, points: [[-500, -400], [500, -400], [500, 400], [-500, 400]]}"
#define BASE(piece) "cell: {base: [" piece "]}"

static const struct contradiction outlines[] = {
	{BASE("{outline: {unit: mm, points: [[0, 0], [10, 0]]}}"), FAULT_GEOMETRY, "cell.base[1].outline", "2 points",
	 BASE("{outline: {unit: mm, points: [[0, 0], [10, 0], [0, 10]]}}")},
	{BASE("{outline: {unit: mm, points: [[0, 0], [10, 0], [20, 0]]}}"), FAULT_GEOMETRY, "cell.base[1].outline",
	 "without area", BASE("{outline: {unit: mm, points: [[0, 0], [10, 0], [20, 1]]}}")},
	{BASE("{outline: {unit: mm, points: [[0, 0], [0, 0], [0, 0]]}}"), FAULT_GEOMETRY, "cell.base[1].outline",
	 "", BASE("{outline: " SQUARE "}")},
	{BASE("{outline: {unit: mm, points: [[0, 0], [10, 10], [10, 0], [0, 9]]}}"), FAULT_GEOMETRY,
	 "cell.base[1].outline", "crosses or touches itself",
	 BASE("{outline: {unit: mm, points: [[0, 0], [10, 0], [10, 10], [0, 9]]}}")},
	{BASE("{outline: {unit: mm, points: [[0, 0], [0, 9], [10, 10], [10, 0], [5, 0], [10, 10]]}}"), FAULT_GEOMETRY,
	 "cell.base[1].outline", "crosses or touches itself",
	 BASE("{outline: {unit: mm, points: [[0, 0], [0, 9], [10, 10], [10, 0]]}}")},
	{"slab: {outline: {unit: m, points: [[0, 0], [9, 9], [9, 0], [0, 8]]}}", FAULT_GEOMETRY, "slab.outline",
	 "crosses", "slab: {outline: {unit: m, points: [[0, 0], [9, 0], [9, 9], [0, 8]]}}"},
	{BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[400, 0], [600, 0], [400, 100]]}]}"), FAULT_GEOMETRY,
	 "cell.base[1].holes[1]", "not inside",
	 BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[400, 0], [499, 0], [400, 100]]}]}")},
	{BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[600, 0], [700, 0], [600, 100]]}]}"), FAULT_GEOMETRY,
	 "cell.base[1].holes[1]", "not inside",
	 BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[0, 0], [100, 0], [0, 100]]}]}")},
	{BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[-900, -900], [900, -900], [900, 900], [-900, 900]]}]}"),
	 FAULT_GEOMETRY, "cell.base[1].holes[1]", "not inside", BASE("{outline: " SQUARE "}")},
	{BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[0, 0], [100, 0], [0, 100]]}, "
	      "{unit: mm, points: [[10, 10], [200, 10], [10, 200]]}]}"), FAULT_GEOMETRY, "cell.base[1].holes[2]", "overlap",
	 BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[0, 0], [100, 0], [0, 100]]}, "
	      "{unit: mm, points: [[110, 10], [200, 10], [110, 200]]}]}")},
	{BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[0, 0], [100, 0]]}]}"), FAULT_GEOMETRY,
	 "cell.base[1].holes[1]", "2 points",
	 BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[0, 0], [100, 0], [0, 100]]}]}")},
	{"slab: {joints: [{from: [1 m, 1 m], to: [1 m, 1 m]}]}", FAULT_GEOMETRY, "slab.joints[1]", "without length",
	 "slab: {joints: [{from: [1 m, 1 m], to: [1 m, 2 m]}]}"},
	{"slab: {joints: [{from: [1 m, 1 m], type: saw_cut}]}", FAULT_MISSING_KEY, "slab.joints[1]", "without both ends",
	 "slab: {joints: unknown}"},
};

Test(validity, outlines)
{
	assert_rows(outlines, COUNT(outlines));
}

static const struct contradiction pieces[] = {
	{BASE("{outline: " SQUARE ", at: [0 mm, 0 mm], size: [1 mm, 1 mm]}"), FAULT_CONTRADICTION, "cell.base[1]",
	 "an outline and a pad", BASE("{outline: " SQUARE ", at: unknown}")},
	{BASE("{name: frame}"), FAULT_MISSING_KEY, "cell.base[1]", "without an outline or a pad", "cell: {base: unknown}"},
	{BASE("{at: [0 mm, 0 mm]}"), FAULT_MISSING_KEY, "cell.base[1]", "without its size",
	 BASE("{at: [0 mm, 0 mm], size: [1 mm, 1 mm]}")},
	{BASE("{size: [1 mm, 1 mm], at: unknown}"), FAULT_MISSING_KEY, "cell.base[1]", "without its place",
	 BASE("{size: [1 mm, 1 mm], at: [0 mm, 0 mm]}")},
	{BASE("{at: [0 mm, 0 mm], size: [0 mm, 1 mm]}"), FAULT_RANGE, "cell.base[1].size", "without area",
	 BASE("{at: [0 mm, 0 mm], size: [0.1 mm, 1 mm]}")},
	{BASE("{at: [0 mm, 0 mm], size: [90 mm, 90 mm], holes: [" SQUARE "]}"), FAULT_CONTRADICTION, "cell.base[1]",
	 "a pad with openings", BASE("{at: [0 mm, 0 mm], size: [90 mm, 90 mm], holes: unknown}")},
	{BASE("{outline: " SQUARE "}, {at: [500 mm, 0 mm], size: [10 mm, 10 mm]}"), FAULT_GEOMETRY, "cell.base[2]",
	 "pieces 1 and 2 of the base overlap", BASE("{outline: " SQUARE "}, {at: [505 mm, 0 mm], size: [10 mm, 10 mm]}")},
	{BASE("{outline: " SQUARE "}, {at: [0 mm, 0 mm], size: [10 mm, 10 mm]}"), FAULT_GEOMETRY, "cell.base[2]", "overlap",
	 BASE("{outline: " SQUARE ", holes: [{unit: mm, points: [[-50, -50], [50, -50], [50, 50], [-50, 50]]}]}, "
	      "{at: [0 mm, 0 mm], size: [10 mm, 10 mm]}")},
	{BASE("{at: [0 mm, 0 mm], size: [10 mm, 10 mm]}, {at: [0 mm, 0 mm], size: [10 mm, 10 mm]}"), FAULT_GEOMETRY,
	 "cell.base[2]", "overlap",
	 BASE("{at: [0 mm, 0 mm], size: [0.4 in, 1 in]}, {at: [0.4 in, 0 mm], size: [0.4 in, 1 in]}")},
	{"cell: {stand_off: {height: 8 mm, filled: no}, base: [{outline: " SQUARE "}]}", FAULT_CONTRADICTION,
	 "cell.base[1].outline", "touches nothing",
	 "cell: {stand_off: {height: 8 mm, filled: no}, base: [{outline: " SQUARE ", touches: shims}]}"},
	{"cell: {stand_off: {height: 8 mm, filled: no}, base: [{outline: " SQUARE "}]}", FAULT_CONTRADICTION,
	 "cell.base[1].outline", "touches nothing", "cell: {stand_off: {height: 8 mm, filled: yes}, base: [{outline: " SQUARE "}]}"},
	{"cell: {stand_off: {height: 8 mm, filled: no}, base: [{outline: " SQUARE "}]}", FAULT_CONTRADICTION,
	 "cell.base[1].outline", "touches nothing", "cell: {stand_off: {height: 8 mm}, base: [{outline: " SQUARE "}]}"},
	{"cell: {stand_off: {height: 8 mm, filled: no}, base: [{outline: " SQUARE "}]}", FAULT_CONTRADICTION,
	 "cell.base[1].outline", "touches nothing",
	 "cell: {stand_off: {height: 8 mm, filled: no}, base: [{at: [0 mm, 0 mm], size: [50 mm, 50 mm]}]}"},
};

Test(validity, pieces_of_the_base)
{
	assert_rows(pieces, COUNT(pieces));
}

#define RIM "{unit: mm, points: [[-300, -200], [300, -200], [300, 200], [-300, 200]]}"
#define FRAME \
	"\ncell: {base: [{outline: " SQUARE ", holes: [" RIM \
	"]}, {at: [900 mm, 0 mm], size: [100 mm, 100 mm]}]}"
#define SLAB "\nslab: {outline: {unit: m, points: [[0, 0], [4, 0], [4, 3], [0, 3]]}}\n"

static const struct contradiction anchors[] = {
	{"anchors: {at: {unit: mm, points: [[0, 0], [100, 0], [0.5, 0.5]]}}", FAULT_GEOMETRY, "anchors.at[3]",
	 "anchors A1 and A3 stand on one spot (0.7071 mm apart)", "anchors: {at: {unit: mm, points: [[0, 0], [1, 0]]}}"},
	{"anchors: {at: {grid: {columns: 2, rows: 1, step: [0 mm, 0 mm], centre: [0 mm, 0 mm]}}}", FAULT_GEOMETRY,
	 "anchors.at[2]", "one spot", "anchors: {at: {grid: {columns: 1, rows: 1, step: [0 mm, 0 mm], centre: [0 mm, 0 mm]}}}"},
	{"anchors: {at: {unit: mm, points: [[501, 0]]}}" FRAME, FAULT_GEOMETRY, "anchors.at[1]", "A1 stands outside the base",
	 "anchors: {at: {unit: mm, points: [[500, 0]]}}" FRAME},
	{"anchors: {at: {unit: mm, points: [[299, 0]]}}" FRAME, FAULT_GEOMETRY, "anchors.at[1]", "in an opening",
	 "anchors: {at: {unit: mm, points: [[300, 0]]}}" FRAME},
	{"anchors: {at: {unit: mm, points: [[951, 0]]}}" FRAME, FAULT_GEOMETRY, "anchors.at[1]", "outside",
	 "anchors: {at: {unit: mm, points: [[950, -50]]}}" FRAME},
	{"anchors: {at: {unit: mm, points: [[950, 51]]}, lug: no}" FRAME, FAULT_GEOMETRY, "anchors.at[1]", "outside",
	 "anchors: {at: {unit: mm, points: [[950, 51]]}, lug: yes}" FRAME},
	/* turned by a quarter, the cell's +x is the slab's +y: 2.5 m + 0.6 m lies beyond 3 m */
	{"anchors: {at: {unit: mm, points: [[600, 0]]}}\ncell: {at: [3.9 m, 2.5 m], turned: 90 deg}" SLAB, FAULT_GEOMETRY,
	 "anchors.at[1]", "A1 stands outside the slab",
	 "anchors: {at: {unit: mm, points: [[500, 0]]}}\ncell: {at: [3.9 m, 2.5 m], turned: 90 deg}" SLAB},
	{"anchors: {at: {unit: mm, points: [[600, 0]]}}\ncell: {at: [3.9 m, 2.5 m], turned: 0 deg}" SLAB, FAULT_GEOMETRY,
	 "anchors.at[1]", "outside the slab",
	 "anchors: {at: {unit: mm, points: [[600, 0]]}}\ncell: {at: [3.9 m, 2.5 m]}" SLAB},
};

Test(validity, anchors)
{
	assert_rows(anchors, COUNT(anchors));
}

#define PART(keys) "cell: {parts: [{" keys "}]}"
#define BOX(from, to) "box: {from: [" from "], to: [" to "]}"

static const struct contradiction parts[] = {
	{PART("mass: 3 kg, at: [0 mm, 0 mm, 0 mm], " BOX("0 mm, 0 mm, 0 mm", "1 m, 1 m, 1 m")), FAULT_CONTRADICTION,
	 "cell.parts[1].box", "at and box", PART("mass: 3 kg, at: unknown, " BOX("0 mm, 0 mm, 0 mm", "1 m, 1 m, 1 m"))},
	{PART("mass: 3 kg, box: {from: [0 mm, 0 mm, 0 mm]}"), FAULT_MISSING_KEY, "cell.parts[1].box", "without its to corner",
	 PART("mass: 3 kg, box: unknown")},
	{PART("mass: 3 kg, box: {to: [0 mm, 0 mm, 0 mm]}"), FAULT_MISSING_KEY, "cell.parts[1].box",
	 "without its from corner", PART("mass: 3 kg")},
	{PART("mass: 3 kg, " BOX("0 mm, 2 m, 0 mm", "1 m, 1 m, 1 m")), FAULT_GEOMETRY, "cell.parts[1].box",
	 "ends before it begins along y", PART("mass: 3 kg, " BOX("0 mm, 1 m, 0 mm", "1 m, 1 m, 1 m"))},
	{PART("mass: 3 kg, least_mass: 4 kg"), FAULT_CONTRADICTION, "cell.parts[1].least_mass", "4 kg, is above the mass, 3 kg",
	 PART("mass: 3 kg, least_mass: 3 kg")},
};

Test(validity, parts)
{
	assert_rows(parts, COUNT(parts));
}

/* 53 kg weigh 519.75 N; 41 kg at 0.5 m and 12 kg at 1.4 m have a moment of 365.8 N m (9.80665
 * m/s2). */
#define ARM(weight, reactions) "arm: {weight: {" weight "}, reactions: {" reactions "}}"
#define MASSES "arm: 41 kg, payload: 12 kg"
#define REACH ", reach: {arm: 500 mm, payload: 1400 mm}"

static const struct contradiction reactions[] = {
	{ARM(MASSES, "vertical_includes_weight: yes, normal: {vertical: 519 N}"), FAULT_CONTRADICTION,
	 "arm.reactions.normal.vertical", "0.519 kN is below the weight of arm and payload, 0.5198 kN",
	 ARM(MASSES, "vertical_includes_weight: yes, normal: {vertical: 520 N}")},
	{ARM(MASSES, "vertical_includes_weight: yes, emergency_stop: {vertical: 519 N}"), FAULT_CONTRADICTION,
	 "arm.reactions.emergency_stop.vertical", "below the weight",
	 ARM(MASSES, "vertical_includes_weight: no, emergency_stop: {vertical: 519 N}")},
	{ARM(MASSES, "vertical_includes_weight: yes, emergency_stop: {vertical: 519 N}"), FAULT_CONTRADICTION,
	 "arm.reactions.emergency_stop.vertical", "below the weight",
	 ARM(MASSES, "vertical_includes_weight: unknown, emergency_stop: {vertical: 519 N}")},
	{ARM(MASSES, "vertical_includes_weight: yes, normal: {vertical: 10 N}"), FAULT_CONTRADICTION,
	 "arm.reactions.normal.vertical", "below the weight",
	 ARM("arm: 41 kg", "vertical_includes_weight: yes, normal: {vertical: 10 N}")},
	{ARM(MASSES REACH, "tilting_includes_weight: yes, normal: {tilting: 365 N m}"), FAULT_CONTRADICTION,
	 "arm.reactions.normal.tilting", "0.365 kN m is below the weight moment of the stretched arm, 0.3658 kN m",
	 ARM(MASSES REACH, "tilting_includes_weight: yes, normal: {tilting: 366 N m}")},
	{ARM(MASSES REACH, "tilting_includes_weight: yes, emergency_stop: {tilting: 365 N m}"), FAULT_CONTRADICTION,
	 "arm.reactions.emergency_stop.tilting", "below the weight moment",
	 ARM(MASSES REACH, "tilting_includes_weight: no, emergency_stop: {tilting: 365 N m}")},
	{ARM(MASSES REACH, "tilting_includes_weight: yes, normal: {tilting: 1 N m}"), FAULT_CONTRADICTION,
	 "arm.reactions.normal.tilting", "below the weight moment",
	 ARM(MASSES ", reach: {arm: 500 mm}", "tilting_includes_weight: yes, normal: {tilting: 1 N m}")},
	/* without a payload its reach does not matter: 41 kg at 0.5 m, 201.04 N m */
	{ARM("arm: 41 kg, payload: 0 kg, reach: {arm: 500 mm}", "tilting_includes_weight: yes, normal: {tilting: 201 N m}"),
	 FAULT_CONTRADICTION, "arm.reactions.normal.tilting", "below the weight moment",
	 ARM("arm: 41 kg, payload: 0 kg, reach: {arm: 500 mm}", "tilting_includes_weight: yes, normal: {tilting: 202 N m}")},
};

Test(validity, reactions)
{
	assert_rows(reactions, COUNT(reactions));
}

static const struct contradiction loads[] = {
	{"loads: [{name: push}]", FAULT_MISSING_KEY, "loads[1].force", "without a force",
	 "loads: [{name: push, force: 250 N, direction: any}]"},
	{"loads: [{force: unknown, direction: any}]", FAULT_MISSING_KEY, "loads[1].force", "without a force",
	 "loads: [{force: [1 N, 0 N, 0 N]}]"},
	{"loads: [{force: 250 N}]", FAULT_MISSING_KEY, "loads[1].direction", "without a direction",
	 "loads: [{force: 250 N, direction: 90 deg}]"},
	{"loads: [{force: [1 N, 0 N, 0 N], direction: any}]", FAULT_CONTRADICTION, "loads[1]", "two directions",
	 "loads: [{force: [1 N, 0 N, 0 N], direction: unknown}]"},
	{"loads: [{force: [1 N, 0 N, 0 N], direction: 30 deg}]", FAULT_CONTRADICTION, "loads[1]", "two directions",
	 "loads: unknown"},
};

static const struct contradiction sizes[] = {
	{"arm: {mount: [0 mm, 0 mm, 20.1 m]}", FAULT_RANGE, "arm.mount", "20100 mm above the floor",
	 "arm: {mount: [0 mm, 0 mm, 20 m]}"},
	{"anchors: {at: {unit: m, points: [[-450, 0], [450, 0]]}}", FAULT_RANGE, "anchors.at", "900000 mm wide",
	 "anchors: {at: {unit: m, points: [[-50, 0], [50, 0]]}}"},
	{BASE("{at: [0 m, 0 m], size: [1 m, 1 m]}, {at: [0 m, 100 m], size: [1 m, 1 m]}"), FAULT_RANGE, "cell.base",
	 "101000 mm wide", BASE("{at: [0 m, 0 m], size: [1 m, 1 m]}, {at: [0 m, 99 m], size: [1 m, 1 m]}")},
};

Test(validity, sizes_that_only_a_wrong_unit_makes)
{
	assert_rows(sizes, COUNT(sizes));
}

Test(validity, further_loads)
{
	assert_rows(loads, COUNT(loads));
}

#define RATING(keys) "anchors: {at: unknown, product: {rating: {" keys "}}}"
#define STRENGTH(keys) "slab: {concrete: {strength: {" keys "}}}"

static const struct contradiction products[] = {
	{RATING("basis: allowed, tension: 50.000 N"), FAULT_RANGE, "anchors.product.rating.tension",
	 "50 N is too small", RATING("basis: allowed, tension: 50000 N")},
	{RATING("shear: 99 N"), FAULT_RANGE, "anchors.product.rating.shear", "too small", RATING("shear: 100 N")},
	{"anchors: {at: unknown, needs: {tension: 6.000 lbf}}", FAULT_RANGE, "anchors.needs.tension", "6 lbf is too small",
	 "anchors: {at: unknown, needs: {tension: 6000 lbf}}"},
	{"anchors: {at: unknown, needs: {shear: 0.05 kN}}", FAULT_RANGE, "anchors.needs.shear", "0.05 kN is too small",
	 "anchors: {at: unknown, needs: {shear: 0 N}}"},
	{RATING("spacing: [{distance: 80 mm, share: 60 %}]"), FAULT_CONTRADICTION, "anchors.product.rating.spacing[1]",
	 "the last row has 60 %", RATING("spacing: [{distance: 80 mm, share: 100 %}]")},
	{RATING("spacing: [{distance: 80 mm, share: 60 %}, {distance: 80 mm, share: 100 %}]"), FAULT_CONTRADICTION,
	 "anchors.product.rating.spacing[2]", "not above the one before",
	 RATING("spacing: [{distance: 80 mm, share: 60 %}, {distance: 81 mm, share: 100 %}]")},
	{RATING("spacing: [{distance: 80 mm, share: 60 %}, {distance: 90 mm, share: 50 %}, {distance: 99 mm, share: 100 %}]"),
	 FAULT_CONTRADICTION, "anchors.product.rating.spacing[2]", "below the one before",
	 RATING("spacing: [{distance: 80 mm, share: 60 %}, {distance: 90 mm, share: 60 %}, {distance: 99 mm, share: 100 %}]")},
	{RATING("spacing: [{distance: 80 mm}]"), FAULT_MISSING_KEY, "anchors.product.rating.spacing[1]", "not whole",
	 RATING("spacing: unknown")},
	{RATING("edge: [{distance: 75 mm, tension: 100 %, shear: 45 %}]"), FAULT_CONTRADICTION,
	 "anchors.product.rating.edge[1]", "the last row has 45 %",
	 RATING("edge: [{distance: 75 mm, tension: 100 %, shear: 100 %}]")},
	{RATING("edge: [{distance: 75 mm, tension: 70 %, shear: 50 %}, {distance: 90 mm, tension: 100 %, shear: 45 %}, "
	        "{distance: 99 mm, tension: 100 %, shear: 100 %}]"), FAULT_CONTRADICTION, "anchors.product.rating.edge[2]",
	 "below the one before",
	 RATING("edge: [{distance: 75 mm, tension: 70 %, shear: 45 %}, {distance: 99 mm, tension: 100 %, shear: 100 %}]")},
	{RATING("edge: [{distance: 75 mm, tension: 100 %}]"), FAULT_MISSING_KEY, "anchors.product.rating.edge[1]", "not whole",
	 RATING("edge: []")},
	{STRENGTH("class: C30/37, specified: 30 MPa"), FAULT_CONTRADICTION, "slab.concrete.strength", "more than one",
	 STRENGTH("class: C30/37, specified: unknown")},
	{STRENGTH("class: C30/37, cores: {unit: MPa, values: [30, 31, 32]}"), FAULT_CONTRADICTION, "slab.concrete.strength",
	 "more than one", STRENGTH("cores: {unit: MPa, values: [30, 31, 32]}")},
	{"slab: {concrete: {cracked: {value: no}}}", FAULT_MISSING_KEY, "slab.concrete.cracked", "without a reason",
	 "slab: {concrete: {cracked: {value: no, reason: analysis}}}"},
	{"record: {date: 2026-02-29}", FAULT_RANGE, "record.date", "'2026-02-29' is not a date", "record: {date: 2028-02-29}"},
	{"record: {date: 20.11.2026}", FAULT_RANGE, "record.date", "not a date", "record: {date: unknown}"},
	{"record: {date: 2026-13-01}", FAULT_RANGE, "record.date", "not a date", "record: {date: 2026-12-31}"},
	{"record: {date: 2026-04-31}", FAULT_RANGE, "record.date", "not a date", "record: {date: 2026-04-30}"},
	{"record: {date: 1900-02-29}", FAULT_RANGE, "record.date", "not a date", "record: {date: 2000-02-29}"},
	{"choices: {stabilising_weight: 1.01}", FAULT_RANGE, "choices.stabilising_weight", "too large",
	 "choices: {stabilising_weight: 1}"},
	{"choices: {stabilising_weight: 0}", FAULT_RANGE, "choices.stabilising_weight", "too small",
	 "choices: {stabilising_weight: 0.9}"},
};

Test(validity, products_concrete_and_dates)
{
	assert_rows(products, COUNT(products));
}

/* A cell that a program fills in has not gone through the reader. */
static struct arena arena;
static struct diagnostics list;

static void validate(const struct cell *cell)
{
	memset(&list, 0, sizeof list);
	arena_open(&arena, NULL, NULL);
	cell_validate(cell, &arena, &list);
	arena_close(&arena);
}

Test(validity, limits_hold_without_the_reader)
{
	static struct cell cell;
	validate(&cell);
	cr_assert_eq(list.count, 0, "a cell of which nothing is known contradicts nothing");
	cell.anchors.count = MAX_ANCHORS + 1;
	cell.slab.outline.count = MAX_VERTICES + 1;
	cell.setups.count = MAX_SETUPS + 1;
	validate(&cell);
	cr_assert_eq(list.count, 3);
	for (size_t i = 0; i < list.count; i++)
		cr_assert_eq(list.list[i].fault, FAULT_SIZE);
}

Test(validity, openings_count_as_rings)
{
	static struct cell cell;
	static struct ring rings[MAX_RINGS];
	struct base_piece piece = {.holes = {{.origin = GIVEN}, rings, MAX_RINGS}};
	cell.base = (struct list){{.origin = GIVEN}, &piece, 1};
	validate(&cell);
	cr_assert_eq(list.list[0].fault, FAULT_SIZE);
	piece.holes.count = MAX_RINGS - 1;
	validate(&cell);
	cr_assert_neq(list.list[0].fault, FAULT_SIZE);
}

Test(validity, shares_outside_their_range_are_seen)
{
	static struct cell cell;
	cell.choices.stabilising_weight = (struct number){{.origin = GIVEN}, -0.5, NULL};
	cell.anchors.product.rating.basis = (struct word){{.origin = GIVEN}, BASIS_ALLOWED};
	cell.anchors.product.rating.of_ultimate = (struct number){{.origin = GIVEN}, 1.5, NULL};
	validate(&cell);
	cr_assert_eq(list.count, 2);
	cr_assert_eq(list.list[0].fault, FAULT_RANGE);
	cr_assert_eq(list.list[1].fault, FAULT_RANGE);
}

/* What a setup shares with its cell was looked at with the cell. */
Test(validity, a_setup_looks_at_what_it_changes)
{
	static struct cell cell, setup;
	static const struct vec2 crossed[] = {{0, 0}, {10, 10}, {10, 0}, {0, 9}};
	struct base_piece piece = {.outline = {{.origin = GIVEN}, crossed, 4}}, other = piece;
	cell.base = (struct list){{.origin = GIVEN}, &piece, 1};
	cell.slab.outline = piece.outline;
	validate(&cell);
	cr_assert_eq(list.count, 2);
	setup = cell;
	memset(&list, 0, sizeof list);
	arena_open(&arena, NULL, NULL);
	cell_validate_setup(&setup, &cell, &arena, &list);
	cr_assert_eq(list.count, 0);
	setup.base.rows = &other;
	cell_validate_setup(&setup, &cell, &arena, &list);
	cr_assert_eq(list.count, 1);
	arena_close(&arena);
}
