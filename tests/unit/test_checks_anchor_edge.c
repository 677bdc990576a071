/* anchor.edge: nearest edge or joint against the first row of the edge table, 100 mm; without a
 * table edges within 1.5 hef = 105 mm in tension and max(6 hef, 30 d) = max(420, 360) mm in shear
 * are not covered; old holes at twice their depth. The slab is 10 x 8 m, the cell's origin at (5,
 * 4) m. */
#include "../../src/checks/setting.h"
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "anchor.edge"
#define TABLE "anchors.product.rating.edge"
/* the outermost anchors stand 300 mm off the origin, so the distance to the lower edge is y - 300
 */
#define AT(y) "cell.at", "[5 m, " y " mm]"

Test(anchor_edge, three_verdicts)
{
	expect_verdict(HOLDS, sample_needs, ID);
	expect_verdict(FAILS, sample_needs, ID, AT("390"));
	static const char *const path[] = {"slab.outline", "slab.joints", "slab.old_holes",
	                                   "cell.at", "cell.turned"};
	for (size_t i = 0; i < sizeof path / sizeof path[0]; i++)
		expect_verdict(UNPROVEN, sample_needs, ID, path[i], "unknown");
}

Test(anchor_edge, first_row)
{
	expect_verdict(HOLDS, sample_needs, ID, AT("400"));
	expect_verdict(FAILS, sample_needs, ID, AT("399.999"));
	expect_near(judged(sample_needs, ID, AT("400"), NULL)->finding.ratio, 1, 1e-12);
	/* an anchor on the edge itself */
	expect_verdict(FAILS, sample_needs, ID, AT("300"));
}

/* What is known of some edges still fails; what is not known of the others never holds. */
Test(anchor_edge, some_edges_known)
{
	expect_verdict(FAILS, sample_needs, ID, "slab.joints", "unknown", AT("390"));
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.joints", "unknown", AT("1000"));
	expect_verdict(HOLDS, sample_needs, ID, "slab.outline", "none");
	expect_verdict(HOLDS, sample_needs, ID, "slab.outline", "none", "cell.at", "unknown");
}

/* A joint is an edge: 90 mm right of the right-hand anchors, which stand at x = 5400 mm. */
Test(anchor_edge, joints)
{
	expect_verdict(FAILS, sample_needs, ID, "slab.joints",
	               "[{from: [5.49 m, 0 m], to: [5.49 m, 8 m], type: saw_cut}]");
	expect_verdict(HOLDS, sample_needs, ID, "slab.joints",
	               "[{from: [5.5 m, 0 m], to: [5.5 m, 8 m], type: saw_cut}]");
	/* a joint that ends before it comes near: its end at (5400, 3000) is 700 mm below the lower
	 * anchors */
	expect_near(judged(sample_needs, ID, "slab.joints",
	                   "[{from: [5.4 m, 0 m], to: [5.4 m, 3 m], type: construction}]", NULL)->finding.capacity,
	            700, 1e-9);
	/* a joint between the anchors, 50 mm from the left-hand ones */
	expect_verdict(FAILS, sample_needs, ID, "slab.joints",
	               "[{from: [4.65 m, 0 m], to: [4.65 m, 8 m], type: saw_cut}]");
}

/* 105 mm for tension alone would do, but shear reaches farther: 6 x 70 = 420 mm, or 30 x 20 = 600
 * mm. */
Test(anchor_edge, without_a_table)
{
	expect_verdict(HOLDS, sample_needs, ID, TABLE, "unknown", AT("720"));
	expect_verdict(UNPROVEN, sample_needs, ID, TABLE, "unknown", AT("719.999"));
	cr_expect(
		is_missing(judged(sample_needs, ID, TABLE, "unknown", AT("719.999"), NULL), TABLE));
	expect_verdict(HOLDS, sample_needs, ID, TABLE, "unknown", AT("900"),
	               "anchors.product.shaft", "20 mm");
	expect_verdict(UNPROVEN, sample_needs, ID, TABLE, "unknown", AT("899.999"),
	               "anchors.product.shaft", "20 mm");
	/* without embedment or shaft the reach is not known; near or far, nothing can fail */
	expect_verdict(UNPROVEN, sample_needs, ID, TABLE, "unknown", "anchors.product.embedment",
	               "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, TABLE, "unknown", "anchors.product.shaft",
	               "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, TABLE, "unknown", AT("310"));
}

/* A measured clear distance stands for edges, joints and old holes from the last row of the table,
 * 300 mm, on, or without a table from 420 mm. */
#define NOTHING_DRAWN \
	"slab.outline", NULL, "slab.joints", NULL, "slab.old_holes", NULL, "cell.at", NULL, \
		"cell.turned", NULL
Test(anchor_edge, clear)
{
	expect_verdict(HOLDS, sample_needs, ID, NOTHING_DRAWN, "slab.clear", "300 mm");
	expect_verdict(UNPROVEN, sample_needs, ID, NOTHING_DRAWN, "slab.clear", "299.999 mm");
	expect_verdict(HOLDS, sample_needs, ID, NOTHING_DRAWN, "slab.clear", "420 mm", TABLE,
	               "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, NOTHING_DRAWN, "slab.clear", "419.999 mm", TABLE,
	               "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, NOTHING_DRAWN, "slab.clear", "2 m", TABLE,
	               "unknown", "anchors.product.embedment", "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, NOTHING_DRAWN);
}

/* A clear distance that what is drawn contradicts does not hide an edge: the nearer counts. */
Test(anchor_edge, clear_against_what_is_drawn)
{
	expect_verdict(HOLDS, sample_needs, ID, "slab.clear", "1 m");
	expect_verdict(FAILS, sample_needs, ID, "slab.clear", "1 m", AT("390"));
	expect_verdict(FAILS, sample_needs, ID, "slab.clear", "1 m", "slab.old_holes",
	               "[{at: [5.4 m, 4.4 m], depth: 80 mm, filled: no}]");
}

/* An old hole of 80 mm counts within 160 mm: 100 mm above A3 at (5400, 4300) mm it does. */
#define HOLE(y, rest) "slab.old_holes", "[{at: [5.4 m, " y "]" rest "}]"
Test(anchor_edge, old_holes)
{
	expect_verdict(FAILS, sample_needs, ID, HOLE("4.4 m", ", depth: 80 mm, filled: no"));
	expect_verdict(HOLDS, sample_needs, ID, HOLE("4.46 m", ", depth: 80 mm, filled: no"));
	expect_verdict(FAILS, sample_needs, ID, HOLE("4.459999 m", ", depth: 80 mm, filled: no"));
	expect_verdict(UNPROVEN, sample_needs, ID, HOLE("4.4 m", ", depth: 80 mm, filled: yes"));
	expect_verdict(UNPROVEN, sample_needs, ID, HOLE("4.4 m", ", depth: 80 mm"));
	expect_verdict(UNPROVEN, sample_needs, ID, HOLE("6 m", ", filled: no"));
	expect_verdict(HOLDS, sample_needs, ID, HOLE("4.4 m", ", depth: 50 mm, filled: no"));
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.old_holes",
	               "[{depth: 80 mm, filled: no}]");
	/* where the cell stands is not known, so neither is the distance */
	expect_verdict(UNPROVEN, sample_needs, ID, HOLE("4.4 m", ", depth: 80 mm, filled: no"),
	               "cell.at", "unknown", "slab.outline", "none");
}

/* Turning the cell about its origin: at 90 degrees the anchors reach 400 mm down instead of 300. */
Test(anchor_edge, turned)
{
	expect_near(judged(sample_needs, ID, AT("700"), "cell.turned", "90 deg", NULL)
	                    ->finding.capacity,
	            300, 1e-9);
	expect_near(judged(sample_needs, ID, AT("700"), NULL)->finding.capacity, 400, 1e-9);
}

/* A straight edge drawn in two or more pieces is one edge; each real corner stays. */
Test(anchor_edge, straight_edges_are_merged)
{
	static const char *const outline[] = {
		"{unit: m, points: [[0, 0], [10, 0], [10, 8], [0, 8]]}",
		"{unit: m, points: [[0, 0], [5, 0], [10, 0], [10, 8], [0, 8]]}",
		"{unit: m, points: [[5, 0], [10, 0], [10, 4], [10, 8], [7, 8], [3, 8], [0, 8], [0, 0], [2, 0]]}"};
	for (size_t i = 0; i < sizeof outline / sizeof outline[0]; i++) {
		const struct cell *cell;
		struct setting setting;
		struct arena arena;
		loads_of(&cell, sample_needs, "slab.outline", outline[i], NULL);
		arena_open(&arena, NULL, NULL);
		cr_assert_eq(setting_build(cell, &arena, &setting), DONE);
		cr_expect_eq(setting.edge_count, 4, "outline %zu: %zu edges", i,
		             setting.edge_count);
		arena_close(&arena);
	}
}
