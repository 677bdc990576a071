/* The allowed load of an anchor, share x ultimate x concrete x state x spacing x edge, seen through
 * the check of the papers' needs: its capacity is the allowed tension 0.25 x 40 = 10 kN times
 * factors, of the weakest anchor. Where the edge or the neighbours matter, shear may be the weaker:
 * then no shear is needed. */
#include "../../src/checks/rating_strength.h"
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <math.h>

#define ID "needs"
#define RATING "anchors.product.rating."
#define STRENGTH "slab.concrete.strength"
#define AT(y) "cell.at", "[5 m, " y " mm]"
#define NO_SHEAR "anchors.needs.shear", "0 N"
#define NO_TENSION "anchors.needs.tension", "0 N"
#define ALLOWED(...) (judged(sample_needs, ID, __VA_ARGS__, (const char *)0)->finding.capacity)

Test(rating_strength, basis)
{
	expect_near(ALLOWED(RATING "basis", "ultimate"), 10e3, 1e-9);
	/* 13 kN allowed at 20 % of ultimate are 65 kN ultimate; a quarter is 16.25 kN */
	expect_near(ALLOWED(RATING "basis", "allowed", RATING "of_ultimate", "20 %",
	                    RATING "tension", "13 kN", RATING "shear", "32 kN"),
	            16.25e3, 1e-9);
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "basis", "allowed");
	/* a characteristic value is used as if it were the ultimate one */
	expect_near(ALLOWED(RATING "basis", "characteristic"), 10e3, 1e-9);
	expect_verdict(HOLDS, sample_needs, ID, RATING "basis", "characteristic");
}

/* Without a basis or evidence the rating may be more as well as less: neither holds nor fails. */
Test(rating_strength, evidence_of_the_rating)
{
	static const char *const row[][2] = {{RATING "basis", "unknown"},
	                                     {RATING "evidence", "unknown"},
	                                     {RATING "evidence", "assumed"}};
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
		expect_verdict(UNPROVEN, sample_needs, ID, row[i][0], row[i][1]);
		expect_verdict(UNPROVEN, sample_needs, ID, row[i][0], row[i][1], RATING "tension",
		               "10 kN");
	}
	expect_verdict(HOLDS, sample_needs, ID, RATING "evidence", "test");
	expect_verdict(FAILS, sample_needs, ID, RATING "evidence", "test", RATING "tension",
	               "10 kN");
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "tension", "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "shear", "unknown");
	cr_expect(is_missing(judged(sample_needs, ID, RATING "shear", NULL, NULL), RATING "shear"));
}

Test(rating_strength, allowed_share)
{
	expect_near(ALLOWED(RATING "allowed_share", "20 %"), 8e3, 1e-9);
	expect_verdict(HOLDS, sample_needs, ID, RATING "allowed_share", "25 %");
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "allowed_share", "25.01 %");
	expect_verdict(HOLDS, sample_needs, ID, RATING "allowed_share", "40 %",
	               RATING "by_engineer", "{name: demo, reason: own tests}");
	expect_near(ALLOWED(RATING "allowed_share", "40 %", RATING "by_engineer",
	                    "{name: demo, reason: own tests}"),
	            16e3, 1e-9);
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "allowed_share", "40 %",
	               RATING "by_engineer", "{name: demo}");
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "allowed_share", "40 %",
	               RATING "by_engineer", "{reason: own tests}");
	/* 20 kN needed, 16 kN allowed even at 40 %: that fails */
	expect_verdict(FAILS, sample_needs, ID, RATING "allowed_share", "40 %",
	               "anchors.needs.tension", "20 kN");
	/* an engineer for something else does not stand for it */
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "allowed_share", "40 %",
	               "choices.by_engineer", "{name: demo, reason: other}");
}

/* sqrt(f/f_rating) below the rating's concrete of 40 MPa, never more than 1: sqrt(30/40) =
 * 0.8660254. */
Test(rating_strength, concrete)
{
	expect_near(ALLOWED(STRENGTH ".specified", "30 MPa"), 8660.254, 1e-3);
	expect_verdict(HOLDS, sample_needs, ID, STRENGTH ".specified", "30 MPa");
	expect_near(ALLOWED(STRENGTH ".specified", "60 MPa"), 10e3, 1e-9);
	expect_near(ALLOWED(STRENGTH ".specified", "40 MPa"), 10e3, 1e-9);
	/* not shown: factor 1, the most favourable, and never proven */
	expect_near(ALLOWED(STRENGTH ".specified", "30 MPa", STRENGTH ".evidence", "assumed"), 10e3,
	            1e-9);
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH ".specified", "30 MPa",
	               STRENGTH ".evidence", "assumed");
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH, "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.concrete.age", "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "at_concrete", "unknown");
	expect_verdict(FAILS, sample_needs, ID, STRENGTH, "unknown", "anchors.needs.tension",
	               "10.001 kN");
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH, "unknown", "anchors.needs.tension",
	               "10 kN");
}

/* 4000 psi specified against a rating at 28 MPa: the same concrete. 27.6 MPa and cores get no such
 * grace: sqrt(27.6/28) = 0.99283145. */
Test(rating_strength, inch_pound_twin)
{
	expect_near(ALLOWED(STRENGTH ".specified", "4000 psi", RATING "at_concrete", "28 MPa"),
	            10e3, 1e-9);
	expect_near(ALLOWED(STRENGTH ".specified", "27.6 MPa", RATING "at_concrete", "28 MPa"),
	            9928.3145, 1e-3);
	expect_near(ALLOWED(STRENGTH ".specified", "28 MPa", RATING "at_concrete", "4000 psi"),
	            10e3, 1e-9);
	/* a rating at 30 MPa is another matter: sqrt(27.57903/30) = 0.95880186 */
	expect_near(ALLOWED(STRENGTH ".specified", "4000 psi", RATING "at_concrete", "30 MPa"),
	            9588.0186, 1e-3);
}

/* A bonded anchor does not follow the root of the strength: weaker concrete is unproven, at
 * factor 1. */
Test(rating_strength, bonded_in_weaker_concrete)
{
#define BONDED "anchors.product.type", "adhesive"
	expect_verdict(HOLDS, sample_needs, ID, BONDED);
	expect_verdict(UNPROVEN, sample_needs, ID, BONDED, STRENGTH ".specified", "39.9 MPa");
	expect_near(ALLOWED(BONDED, STRENGTH ".specified", "30 MPa"), 10e3, 1e-9);
	expect_verdict(FAILS, sample_needs, ID, BONDED, STRENGTH ".specified", "30 MPa",
	               "anchors.needs.tension", "11 kN");
	expect_verdict(UNPROVEN, sample_needs, ID, "anchors.product.type", "unknown",
	               STRENGTH ".specified", "30 MPa");
	expect_verdict(HOLDS, sample_needs, ID, "anchors.product.type", "unknown");
	/* cast-in anchors do follow it */
	expect_near(
		ALLOWED("anchors.product.type", "cast_in_headed", STRENGTH ".specified", "30 MPa"),
		8660.254, 1e-3);
}

/* Tested in cracked concrete: 1. In uncracked and qualified for cracks: 0.70. Else unproven, at 1.
 */
Test(rating_strength, state_of_the_concrete)
{
#define UNCRACKED RATING "tested_in", "uncracked"
#define SHOWN "slab.concrete.cracked", "{value: no, reason: analysis 4}"
	expect_near(ALLOWED(UNCRACKED), 7e3, 1e-9);
	expect_verdict(HOLDS, sample_needs, ID, UNCRACKED);
	expect_verdict(UNPROVEN, sample_needs, ID, UNCRACKED, "anchors.product.qualified_cracked",
	               "no");
	expect_verdict(UNPROVEN, sample_needs, ID, UNCRACKED, "anchors.product.qualified_cracked",
	               "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "tested_in", "unknown");
	expect_near(ALLOWED(UNCRACKED, "anchors.product.qualified_cracked", "no"), 10e3, 1e-9);
	expect_verdict(HOLDS, sample_needs, ID, "anchors.product.qualified_cracked", "unknown");
	/* the cones' ratio says nothing of bond in cracks */
	expect_verdict(UNPROVEN, sample_needs, ID, UNCRACKED, BONDED);
	expect_verdict(UNPROVEN, sample_needs, ID, UNCRACKED, "anchors.product.type", "unknown");
	expect_near(ALLOWED(UNCRACKED, BONDED), 10e3, 1e-9);
	/* the slab shown uncracked: 1, where an engineer stands for it */
	expect_near(ALLOWED(UNCRACKED, SHOWN), 10e3, 1e-9);
	expect_verdict(UNPROVEN, sample_needs, ID, UNCRACKED, SHOWN);
	expect_verdict(HOLDS, sample_needs, ID, UNCRACKED, SHOWN, "slab.concrete.by_engineer",
	               "{name: demo, reason: demo}");
	expect_verdict(HOLDS, sample_needs, ID, UNCRACKED, SHOWN, "slab.concrete.by_engineer",
	               "{name: demo, reason: demo}", "anchors.product.qualified_cracked", "no");
	expect_verdict(UNPROVEN, sample_needs, ID, UNCRACKED, SHOWN, "slab.concrete.by_engineer",
	               "{name: demo}");
	expect_verdict(FAILS, sample_needs, ID, UNCRACKED, "anchors.needs.tension", "7.001 kN");
	expect_verdict(HOLDS, sample_needs, ID, UNCRACKED, "anchors.needs.tension", "6.999 kN");
}

/* A rating at a deeper embedment than the 70 mm installed is none. */
Test(rating_strength, embedment)
{
	expect_verdict(FAILS, sample_needs, ID, RATING "at_embedment", "70.001 mm");
	expect_verdict(HOLDS, sample_needs, ID, RATING "at_embedment", "70 mm");
	expect_verdict(HOLDS, sample_needs, ID, RATING "at_embedment", "60 mm");
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "at_embedment", "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, "anchors.product.embedment", "unknown");
}

/* --- spacing
 * -------------------------------------------------------------------------------------------- */

static struct rating tables;
static struct spacing_row spacing[3] = {{.distance = {.value = 100}, .share = {.value = 0.5}},
	{.distance = {.value = 200}, .share = {.value = 0.8}}, {.distance = {.value = 300}, .share = {.value = 1}}};
static struct edge_row edge[2] = {
	{.distance = {.value = 100}, .tension = {.value = 0.6}, .shear = {.value = 0.4}},
	{.distance = {.value = 300}, .tension = {.value = 1}, .shear = {.value = 1}}};

static void fill_tables(void)
{
	tables.spacing = (struct list){.rows = spacing, .count = 3};
	tables.edge = (struct list){.rows = edge, .count = 2};
}

/* Linear between rows, 1 beyond the last; below the first its share, and said so. */
Test(rating_strength, tables, .init = fill_tables)
{
	static const struct { double distance, share, tension, shear; bool below; } row[] = {
		{1, 0.5, 0.6, 0.4, true}, {99.999999, 0.5, 0.6, 0.4, true}, {100, 0.5, 0.6, 0.4, false},
		{150, 0.65, 0.7, 0.55, false}, {200, 0.8, 0.8, 0.7, false}, {250, 0.9, 0.9, 0.85, false},
		{300, 1, 1, 1, false}, {1e6, 1, 1, 1, false}};
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
		bool below[3];
		expect_near(spacing_share(&tables, row[i].distance, &below[0]), row[i].share,
		            1e-12);
		expect_near(edge_share(&tables, TENSION, row[i].distance, &below[1]),
		            row[i].tension, 1e-12);
		expect_near(edge_share(&tables, SHEAR, row[i].distance, &below[2]), row[i].shear,
		            1e-12);
		for (int k = 0; k < 3; k++)
			cr_expect_eq(below[k], row[i].below, "%g mm", row[i].distance);
	}
	struct rating empty = {.basis = {.value = 0}};
	bool below = true;
	expect_near(spacing_share(&empty, 1, &below), 1, 0);
	cr_expect_not(below);
}

/* The product over all neighbours nearer than the last row. Three in a row, 150 mm apart: the
 * middle one has 0.65 x 0.65 = 0.4225, the others 0.65 (300 mm is the last row). A square of 150
 * mm: 0.65^2 and the diagonal of 212.132 mm, 0.8 + 0.2 x 12.132/100 = 0.824264: 0.348252. */
Test(rating_strength, neighbours)
{
	expect_near(ALLOWED("anchors.at", "{unit: mm, points: [[0, 0], [150, 0], [300, 0]]}"), 4225,
	            1e-9);
	expect_near(ALLOWED("anchors.at", "{unit: mm, points: [[0, 0], [150, 0]]}"), 6500, 1e-9);
	expect_near(ALLOWED("anchors.at",
	                    "{unit: mm, points: [[0, 0], [150, 0], [150, 150], [0, 150]]}"),
	            3482.515, 1e-3);
	expect_near(ALLOWED("anchors.at",
	                    "{unit: mm, points: [[0, 0], [150, 0], [150, 150], [0, 150]]}",
	                    "cell.turned", "20 deg"),
	            3482.515, 1e-3);
	/* without a table: unproven within 3 hef = 210 mm, 1 beyond */
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "spacing", "unknown", "anchors.at",
	               "{unit: mm, points: [[0, 0], [209.999, 0]]}");
	expect_verdict(HOLDS, sample_needs, ID, RATING "spacing", "unknown", "anchors.at",
	               "{unit: mm, points: [[0, 0], [210, 0]]}");
	/* below the first row its share still shows a failure: 0.5 x 10 = 5 kN allowed */
	expect_verdict(FAILS, sample_needs, ID, "anchors.at",
	               "{unit: mm, points: [[0, 0], [90, 0]]}", "anchors.needs.tension",
	               "5.001 kN");
}

/* --- edges
 * ---------------------------------------------------------------------------------------------- */

/* The lower anchors are y - 300 mm from the lower edge: at y = 450 mm 150 mm, 0.70 in tension, 0.55
 * in shear (0.55 x 8 = 4.4 kN). */
Test(rating_strength, one_edge)
{
	expect_near(ALLOWED(AT("450"), NO_SHEAR), 7e3, 1e-6);
	expect_near(ALLOWED(AT("450"), NO_TENSION), 4.4e3, 1e-6);
	expect_near(ALLOWED(AT("600"), NO_SHEAR), 10e3, 1e-6);
	/* the same edge drawn in two pieces does not count twice */
	expect_near(ALLOWED(AT("450"), NO_SHEAR, "slab.outline",
	                    "{unit: m, points: [[0, 0], [5, 0], [10, 0], [10, 8], [0, 8]]}"), 7e3, 1e-6);
}

/* At (550, 500) mm the lower left anchor is 150 and 200 mm from two edges: 0.70 x 0.80 in tension,
 * 0.55 x 0.70 in shear. A joint at x = 5.5 m is 100 mm right of the right-hand anchors: 0.60 and
 * 0.40. */
Test(rating_strength, corner_and_joint)
{
	expect_near(ALLOWED("cell.at", "[550 mm, 500 mm]", NO_SHEAR), 5.6e3, 1e-6);
	expect_near(ALLOWED("cell.at", "[550 mm, 500 mm]", NO_TENSION), 0.55 * 0.70 * 8e3, 1e-6);
#define JOINT "slab.joints", "[{from: [5.5 m, 0 m], to: [5.5 m, 8 m], type: saw_cut}]"
	expect_near(ALLOWED(JOINT, NO_SHEAR), 6e3, 1e-6);
	expect_near(ALLOWED(JOINT, NO_TENSION), 3.2e3, 1e-6);
	expect_near(ALLOWED(JOINT, NO_SHEAR, AT("450")), 0.6 * 0.7 * 10e3, 1e-6);
}

/* Without a table: tension unproven within 1.5 hef = 105 mm, shear within max(6 hef, 30 d) = 420
 * mm. */
Test(rating_strength, edge_without_a_table)
{
	const struct cell *cell;
	expect_verdict(HOLDS, sample_needs, ID, RATING "edge", "unknown", AT("720"));
	expect_verdict(UNPROVEN, sample_needs, ID, RATING "edge", "unknown", AT("719.999"));
	loads_of(&cell, sample_needs, RATING "edge", "unknown", NULL);
	expect_near(edge_reach(&cell->anchors.product, TENSION), 105, 1e-12);
	expect_near(edge_reach(&cell->anchors.product, SHEAR), 420, 1e-12);
	expect_near(spacing_reach(&cell->anchors.product), 300, 0);
	loads_of(&cell, sample_needs, RATING "edge", "unknown", "anchors.product.shaft", "16 mm",
	         RATING "spacing", NULL, NULL);
	expect_near(edge_reach(&cell->anchors.product, SHEAR), 480, 1e-12);
	expect_near(spacing_reach(&cell->anchors.product), 210, 1e-12);
}

/* Edges that are not known: factor 1, never proven. */
Test(rating_strength, edges_not_known)
{
	static const char *const path[] = {"slab.outline", "slab.joints", "cell.at", "cell.turned"};
	for (size_t i = 0; i < sizeof path / sizeof path[0]; i++) {
		expect_verdict(UNPROVEN, sample_needs, ID, path[i], "unknown");
		expect_verdict(FAILS, sample_needs, ID, path[i], "unknown", "anchors.needs.tension",
		               "10.001 kN");
	}
	/* a measured clear distance beyond the table's reach makes them known */
	expect_verdict(HOLDS, sample_needs, ID, "slab.outline", NULL, "slab.joints", NULL,
	               "slab.clear", "300 mm");
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.outline", NULL, "slab.joints", NULL,
	               "slab.clear", "299 mm");
	/* but not where an edge is drawn nearer: 150 mm, 0.70 */
	expect_near(ALLOWED(AT("450"), NO_SHEAR, "slab.clear", "1 m"), 7e3, 1e-6);
}
