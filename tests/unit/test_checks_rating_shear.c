/* rating.shear: 8 kN on four anchors, 2 kN each, against 25 % of 32 kN; holes by EN 1992-4
 * Table 6.1; stand-off by EN 1992-4 6.2.2.3. */
#include "../../src/checks/judging.h"
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

#define ID "rating.shear"
#define RATING "anchors.product.rating.shear"
#define STOP "arm.reactions.emergency_stop"

Test(rating_shear, three_verdicts)
{
	const struct check_result *check = judged(sample_lift, ID, NULL);
	expect_near(check->finding.demand, 2000, 1e-9);
	expect_near(check->finding.capacity, 8e3, 1e-9);
	cr_expect_eq(check->finding.verdict, HOLDS);
	expect_verdict(FAILS, sample_lift, ID, RATING, "7 kN");
	expect_verdict(UNPROVEN, sample_lift, ID, RATING, "unknown");
}

Test(rating_shear, boundary)
{
	expect_verdict(HOLDS, sample_lift, ID, RATING, "8.000008 kN");
	expect_verdict(FAILS, sample_lift, ID, RATING, "7.999992 kN");
}

/* Twisting of 1 kN m: J = 4 (400^2 + 300^2) = 1e6 mm2, r = 500 mm, T r/J = 500 N in line with the
 * direct 2000 N in some heading: 2500 N. At a mount 100 mm off the centre 8 kN add 0.8 kN m: 400 N
 * more at most. */
Test(rating_shear, twisting)
{
	expect_near(judged(sample_lift, ID, STOP ".twisting", "1 kN m", NULL)->finding.demand, 2500,
	            1e-6);
	double demand = judged(sample_lift, ID, STOP ".twisting", "1 kN m", "arm.mount",
	                       "[100 mm, 0 mm, 0 mm]", NULL)
	                        ->finding.demand;
	cr_expect(demand > 2500 && demand <= 2900 + 1e-6, "%g", demand);
	/* weights change nothing: no friction is counted */
	expect_near(judged(sample_lift, ID, "cell.parts",
	                   "[{mass: 900 kg, at: [0 mm, 0 mm, 0 mm]}]", NULL)
	                    ->finding.demand,
	            2000, 1e-9);
}

/* A further load beside the arm, from any side: 4 kN through the centre add 1 kN an anchor,
 * whatever the two headings; at a corner of the plate, hypot(500, 400) = 640.3 mm off, up to 4000 x
 * 640.3 x 500/1e6 = 1280.6 N of torsion more, a bit less as corner and anchor are not in line:
 * 4280.43 N by a search in steps of half a degree; in a fixed direction the arm turns to it, 3 kN
 * again. */
Test(rating_shear, further_load)
{
#define LOAD(rest) "loads", "[{force: 4 kN, at_height: 0 mm, with: emergency_stop, " rest "}]"
	expect_near(judged(sample_lift, ID, LOAD("direction: any, at: [0 mm, 0 mm]"), NULL)
	                    ->finding.demand,
	            3000, 1e-6);
	expect_near(judged(sample_lift, ID, LOAD("direction: any"), NULL)->finding.demand, 4280.43,
	            0.05);
	expect_near(judged(sample_lift, ID, LOAD("direction: 30 deg, at: [0 mm, 0 mm]"), NULL)
	                    ->finding.demand,
	            3000, 1e-6);
	expect_near(judged(sample_lift, ID, LOAD("direction: any, at: [0 mm, 0 mm]"),
	                   "arm.reactions.paired", "yes", NULL)
	                    ->finding.demand,
	            3000, 1e-6);
}

/* --- two forces with a heading of their own, worked out apart from the program ------------------
 */

enum { STEPS = 720, MOST = 4 };
static const double half_step = 3.14159265358979323846 / STEPS;

struct hole_pattern {
	const char *anchors, *mount, *twisting, *tilting;     /* as in the file */
	struct vec2 anchor[MOST], arm_at;                     /* the same [mm] */
	size_t count;
	double twist;                                         /* [N mm] */
};

/* Shear on one anchor from a force through `at` in each heading, with a twist: F/n, and T r/J
 * square to the arm r from the anchors' centroid (Shigley, 9th ed., 8-12) [N]. */
static void every_heading(const struct hole_pattern *of, size_t anchor, double force,
                          struct vec2 at, double twist, struct vec2 out[STEPS])
{
	double n = (double)of->count, x = 0, y = 0, polar = 0;
	for (size_t i = 0; i < of->count; i++) {
		x += of->anchor[i].x / n;
		y += of->anchor[i].y / n;
	}
	for (size_t i = 0; i < of->count; i++)
		polar += pow(of->anchor[i].x - x, 2) + pow(of->anchor[i].y - y, 2);
	for (int k = 0; k < STEPS; k++) {
		double fx = force * cos(2 * half_step * k), fy = force * sin(2 * half_step * k);
		double torsion = (at.x - x) * fy - (at.y - y) * fx + twist;
		out[k].x = fx / n - torsion / polar * (of->anchor[anchor].y - y);
		out[k].y = fy / n + torsion / polar * (of->anchor[anchor].x - x);
	}
}

/* Largest shear on an anchor: in any two headings, in the same heading for both, and of each force
 * alone, added [N]. */
struct largest { double pairs, same, added; };

static struct largest largest_by_hand(const struct hole_pattern *of, size_t anchor)
{
	static struct vec2 arm[STEPS], further[STEPS];
	struct largest out = {0, 0, 0};
	double arm_alone = 0, further_alone = 0;
	every_heading(of, anchor, 4000, (struct vec2){500, 400}, 0, further);
	for (int sign = -1; sign <= 1; sign += 2) {
		every_heading(of, anchor, 8000, of->arm_at, sign * of->twist, arm);
		for (int a = 0; a < STEPS; a++) {
			arm_alone = fmax(arm_alone, hypot(arm[a].x, arm[a].y));
			further_alone = fmax(further_alone, hypot(further[a].x, further[a].y));
			out.same = fmax(out.same,
			                hypot(arm[a].x + further[a].x, arm[a].y + further[a].y));
			for (int f = 0; f < STEPS; f++)
				out.pairs = fmax(out.pairs, hypot(arm[a].x + further[f].x,
				                                  arm[a].y + further[f].y));
		}
	}
	out.added = arm_alone + further_alone;
	return out;
}

/* Paired, the arm's force shares the heading of its own tilt, but a further load from any side has
 * a heading of its own. The program bounds every pair of headings by the sum of what each force
 * does at most. The sums here are over headings half a degree apart: between two of them, a force's
 * largest shear is more by a factor of at most 1/cos(half a step), as the shear is a constant part
 * and one that goes round, no larger than the whole in the worse sign of the constant one. In one
 * heading for both there would be 5 % to 25 % less than there is. */
Test(rating_shear, paired_with_a_free_further_load)
{
#define SQUARE "{unit: mm, points: [[-400, -300], [400, -300], [400, 300], [-400, 300]]}"
#define SQUARE_MM {{-400, -300}, {400, -300}, {400, 300}, {-400, 300}}
	static const struct hole_pattern patterns[] = {
		{SQUARE, "[-300 mm, -200 mm, 0 mm]", "0 N m", "0 N m", SQUARE_MM, {-300, -200}, 4, 0},
		{SQUARE, "[300 mm, -200 mm, 0 mm]", "1 kN m", "0 N m", SQUARE_MM, {300, -200}, 4, 1e6},
		/* tilt changes nothing in the shear, but the arm's heading is then swept */
		{SQUARE, "[0 mm, -350 mm, 500 mm]", "1 kN m", "2 kN m", SQUARE_MM, {0, -350}, 4, 1e6},
		{"{unit: mm, points: [[-400, -300], [400, -300], [100, 300]]}",
	         "[-200 mm, 100 mm, 0 mm]", "0.5 kN m", "0 N m",
	         {{-400, -300}, {400, -300}, {100, 300}}, {-200, 100}, 3, 5e5},
	};
	for (size_t p = 0; p < sizeof patterns / sizeof patterns[0]; p++) {
		const struct hole_pattern *of = &patterns[p];
		double pairs = 0, same = 0, added = 0;
		for (size_t i = 0; i < of->count; i++) {
			struct largest anchor = largest_by_hand(of, i);
			pairs = fmax(pairs, anchor.pairs);
			same = fmax(same, anchor.same);
			added = fmax(added, anchor.added);
		}
		double shear = judged(sample_lift, ID, "anchors.at", of->anchors, "arm.mount",
		                      of->mount, STOP ".twisting", of->twisting, STOP ".tilting",
		                      of->tilting, "arm.reactions.paired", "yes",
		                      LOAD("direction: any, at: [500 mm, 400 mm]"), NULL)
		                       ->finding.demand;
		cr_expect(shear >= pairs, "pattern %zu: %.9g, but some pair of headings has %.9g",
		          p, shear, pairs);
		cr_expect(shear >= added * (1 - 1e-12) &&
		                  shear <= added / cos(half_step) * (1 + 1e-12),
		          "pattern %zu: %.9g, the bound by hand is %.9g", p, shear, added);
		cr_expect(same < 0.97 * pairs, "pattern %zu tells nothing: %.9g and %.9g", p, same,
		          pairs);
	}
}

/* A single anchor cannot resist twisting; a push through it, it can. */
Test(rating_shear, single_anchor)
{
#define ONE "anchors.at", "{unit: mm, points: [[0, 0]]}"
	expect_verdict(HOLDS, sample_lift, ID, ONE, RATING, "64 kN");
	expect_near(judged(sample_lift, ID, ONE, NULL)->finding.demand, 8000, 1e-9);
	expect_verdict(UNPROVEN, sample_lift, ID, ONE, RATING, "64 kN", STOP ".twisting", "1 N m");
}

/* Holes in the base: within the clearance table all anchors share. */
Test(rating_shear, clearance_table)
{
	static const double row[][2] = {{6, 7},   {8, 9},   {10, 12}, {12, 14}, {14, 16}, {16, 18},
	                                {18, 20}, {20, 22}, {22, 24}, {24, 26}, {27, 30}, {30, 33}};
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++)
		expect_near(largest_clearance_hole(row[i][0]), row[i][1], 1e-12);
	/* between the rows and beyond them the clearance of the row below: the safe side */
	expect_near(largest_clearance_hole(5), 6, 1e-12);
	expect_near(largest_clearance_hole(9), 10, 1e-12);
	expect_near(largest_clearance_hole(12.7), 14.7, 1e-12);
	expect_near(largest_clearance_hole(26), 28, 1e-12);
	expect_near(largest_clearance_hole(36), 39, 1e-12);
	expect_verdict(HOLDS, sample_lift, ID, "anchors.plate_hole", "14 mm");
	expect_verdict(UNPROVEN, sample_lift, ID, "anchors.plate_hole", "14.001 mm");
	expect_verdict(HOLDS, sample_lift, ID, "anchors.plate_hole", "9/16 in",
	               "anchors.product.shaft", "1/2 in");
}

/* Larger, slotted or unknown: unproven, with the load on each of half of the anchors: 4 kN. Above 1
 * it fails even if all of them share. */
Test(rating_shear, holes)
{
	static const char *const hole[] = {"20 mm", "slotted", "unknown"};
	for (size_t i = 0; i < sizeof hole / sizeof hole[0]; i++) {
		expect_verdict(UNPROVEN, sample_lift, ID, "anchors.plate_hole", hole[i]);
		expect_verdict(FAILS, sample_lift, ID, "anchors.plate_hole", hole[i], RATING,
		               "7 kN");
		const struct finding *f =
			&judged(sample_lift, ID, "anchors.plate_hole", hole[i], NULL)->finding;
		cr_expect(f->note_count == 1 && strstr(f->notes[0], " 4 kN"), "%s: %s", hole[i],
		          f->note_count ? f->notes[0] : "");
	}
	expect_verdict(UNPROVEN, sample_lift, ID, "anchors.product.shaft", "unknown");
	/* of five anchors two: 8 kN / 5 x 5/2 = 4 kN again */
	const struct finding *f =
		&judged(sample_lift, ID, "anchors.plate_hole", "slotted", "anchors.at",
	                "{circle: {count: 5, radius: 300 mm, first: 0 deg, centre: [0 mm, 0 mm]}}",
	                NULL)
			 ->finding;
	cr_expect(f->note_count == 1 && strstr(f->notes[0], " 4 kN"), "%s",
	          f->note_count ? f->notes[0] : "");
}

/* A gap, a topping or thick grout: the anchors bend, which no rating shows. */
#define PADS \
	"cell.base", "[{at: [-400 mm, -300 mm], size: [150 mm, 150 mm]}, {at: [400 mm, -300 mm], " \
		     "size: [150 mm, 150 mm]}, {at: [400 mm, 300 mm], size: [150 mm, 150 mm]}, " \
	             "{at: [-400 mm, 300 mm], " \
		     "size: [150 mm, 150 mm]}]"
Test(rating_shear, stand_off)
{
	expect_verdict(UNPROVEN, sample_lift, ID, PADS, "cell.stand_off",
	               "{height: 8 mm, filled: no}");
	expect_verdict(FAILS, sample_lift, ID, PADS, "cell.stand_off", "{height: 8 mm, filled: no}",
	               RATING, "7 kN");
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.stand_off",
	               "{height: 8 mm, filled: yes, grout_strength: 60 MPa}");
	expect_verdict(HOLDS, sample_lift, ID, "cell.stand_off",
	               "{height: 6 mm, filled: yes, grout_strength: 60 MPa}");
	expect_verdict(UNPROVEN, sample_lift, ID, "cell.stand_off", "unknown");
	expect_verdict(UNPROVEN, sample_lift, ID, "slab.topping", "{thickness: 20 mm}");
	expect_verdict(UNPROVEN, sample_lift, ID, "slab.topping", "unknown");
	/* tension does not mind a gap */
	expect_verdict(HOLDS, sample_lift, "rating.tension", PADS, "cell.stand_off",
	               "{height: 8 mm, filled: no}");
}

/* Missing loads: without the emergency stop there are 250 N an anchor. */
Test(rating_shear, missing_loads)
{
	expect_verdict(UNPROVEN, sample_lift, ID, STOP, "unknown");
	expect_verdict(FAILS, sample_lift, ID, STOP, "unknown", RATING, "990 N");
	expect_verdict(UNPROVEN, sample_lift, ID, STOP ".twisting", "unknown");
	expect_verdict(FAILS, sample_lift, ID, STOP ".twisting", "unknown", RATING, "7 kN");
}
