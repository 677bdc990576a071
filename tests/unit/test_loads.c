/* The load cases of a cell, by hand. Everywhere g0 = 9.80665 m/s2, so that
 *   W_arm = 40 kg g0 = 392.266 N, W_payload = 10 kg g0 = 98.0665 N, W_frame = 200 kg g0 = 1961.33
 * N. Weights are multiplied by g = 0.6 in the low run, 1 in the full one and 0.9 in the one for
 * stability, in which the moving part is multiplied by 1.25. All are about the cell's origin on the
 * floor. */
#include "../support/cell_text.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static const char arm_cell[] =
	"standfast: 1\n"
	"cell:\n"
	"  parts: [{name: frame, mass: 200 kg, at: [10 mm, 20 mm, 100 mm]}]\n"
	"  base: [{outline: {unit: mm, points: [[-500, -400], [500, -400], [500, 400], [-500, 400]]}}]\n"
	"arm:\n"
	"  mount: [100 mm, -50 mm, 600 mm]\n"
	"  weight: {arm: 40 kg, payload: 10 kg, reach: {arm: 500 mm, payload: 1000 mm}}\n"
	"  reactions:\n"
	"    vertical_includes_weight: yes\n"
	"    tilting_includes_weight: yes\n"
	"    normal: {vertical: 1.1 kN, horizontal: 0.6 kN, tilting: 0.7 kN m, twisting: 0.4 kN m}\n"
	"    emergency_stop: {vertical: 1.6 kN, horizontal: 1.4 kN, tilting: 1.5 kN m, twisting: 0.9 kN m}\n"
	"anchors: {at: {unit: mm, points: [[-400, -300], [400, -300], [400, 300], [-400, 300]]}}\n";

enum { EMERGENCY_STOP, NORMAL_MOTION, REST, EXTRA };
#define FLAGS \
	"arm.reactions.vertical_includes_weight", v, "arm.reactions.tilting_includes_weight", t

/* The one case of a source, run and vertical extreme that belongs to the reading. */
static const struct load_case *find(const struct loads *loads, int source, enum weight_run run,
                                    enum vertical_run vertical, unsigned reading)
{
	const struct load_case *found = NULL;
	for (size_t i = 0; i < loads->count; i++) {
		const struct load_case *c = &loads->list[i];
		if (c->source != source || c->run != run || c->vertical != vertical ||
		    !(c->reading & 1u << reading))
			continue;
		cr_assert_null(found, "two cases of one kind");
		found = c;
	}
	cr_assert(found, "no case of source %d, run %d, vertical %d, reading %u", source, run,
	          vertical, reading);
	return found;
}

/* Vertical force of the arm: what is left when the frame is taken off [N]. */
static double arm_down(const struct load_case *c)
{
	static const double frame[] = {1176.798, 1961.33, 1765.197};
	return c->down - frame[c->run];
}

static const double weight_factor[] = {0.6, 1, 0.9};
struct figures { double least[3], most[3]; };      /* of the three runs [N] */

static void compare(const struct loads *loads, int source, unsigned reading,
                    const struct figures *by_hand)
{
	for (int run = RUN_LOW; run <= RUN_STABILITY; run++) {
		const struct load_case *least = find(loads, source, run, VERTICAL_LEAST, reading);
		const struct load_case *most = find(loads, source, run, VERTICAL_MOST, reading);
		expect_near(arm_down(least), by_hand->least[run], 1e-6);
		expect_near(arm_down(most), by_hand->most[run], 1e-6);
		/* first moments that stay: frame at (10, 20) mm, the arm's vertical force at (100,
		 * -50) mm */
		double frame = least->down - by_hand->least[run];
		expect_near(least->fixed[0], 10 * frame + 100 * by_hand->least[run], 1e-3);
		expect_near(least->fixed[1], 20 * frame - 50 * by_hand->least[run], 1e-3);
		cr_expect_eq(least->stability_only, run == RUN_STABILITY);
		expect_near(least->weight_factor, weight_factor[run], 0);
	}
}

/* Weight in the vertical force:
 *   V_most = W_arm + k (V - W_arm), V_least = g W_arm - k (V - W_arm), k = 1, 1, 1.25
 * emergency stop, low run: 1600 and 0.6 x 392.266 - 1207.734 = -972.3744 N
 *   stability: 392.266 + 1.25 x 1207.734 = 1901.9335 and 0.9 x 392.266 - 1.25 x 1207.734 =
 * -1156.6281 N */
static const struct figures stop_with = {{-972.3744, -815.468, -1156.6281},
                                         {1600, 1600, 1901.9335}};
static const struct figures normal_with = {{-472.3744, -315.468, -531.6281},
                                           {1100, 1100, 1276.9335}};
/* Weight not in it: V_most = W_arm + W_payload + k V, V_least = g W_arm - k V
 * emergency stop, low run: 392.266 + 98.0665 + 1600 = 2090.3325 and 235.3596 - 1600 = -1364.6404 N
 */
static const struct figures stop_without = {{-1364.6404, -1207.734, -1646.9606},
	{2090.3325, 2090.3325, 2490.3325}};
static const struct figures normal_without = {{-864.6404, -707.734, -1021.9606},
	{1590.3325, 1590.3325, 1865.3325}};

Test(loads, vertical_with_and_without_weight)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, NULL);
	cr_expect_eq(loads->count, 12, "two sources x three runs x two extremes: %zu",
	             loads->count);
	cr_expect_eq(loads->readings, 1u);
	cr_expect_eq(loads->gap_count, 0);
	compare(loads, EMERGENCY_STOP, 0, &stop_with);
	compare(loads, NORMAL_MOTION, 0, &normal_with);
	loads = loads_of(&cell, arm_cell, "arm.reactions.vertical_includes_weight", "no", NULL);
	compare(loads, EMERGENCY_STOP, 0, &stop_without);
	compare(loads, NORMAL_MOTION, 0, &normal_without);
}

/* Tilting: k M + k H z, and with the weight moment not in it, + g0 sum(m reach)
 *   = 392.266 x 500 + 98.0665 x 1000 = 294 199.5 N mm; z = 600 mm.
 * emergency stop: 1.5e6 + 1400 x 600 = 2.34e6; normal: 0.7e6 + 600 x 600 = 1.06e6 N mm. */
Test(loads, turning_moment)
{
	const struct cell *cell;
	for (int without = 0; without <= 1; without++) {
		double stretched = without ? 294199.5 : 0;
		const struct loads *loads = loads_of(&cell, arm_cell,
		                                     "arm.reactions.tilting_includes_weight",
		                                     without ? "no" : "yes", NULL);
		for (int vertical = VERTICAL_LEAST; vertical <= VERTICAL_MOST; vertical++) {
			expect_near(find(loads, EMERGENCY_STOP, RUN_LOW, vertical, 0)->turning,
			            2.34e6 + stretched, 1e-6);
			expect_near(find(loads, EMERGENCY_STOP, RUN_FULL, vertical, 0)->turning,
			            2.34e6 + stretched, 1e-6);
			expect_near(
				find(loads, EMERGENCY_STOP, RUN_STABILITY, vertical, 0)->turning,
				1.25 * 2.34e6 + stretched, 1e-6);
			expect_near(find(loads, NORMAL_MOTION, RUN_LOW, vertical, 0)->turning,
			            1.06e6 + stretched, 1e-6);
		}
	}
}

/* The horizontal force acts at the mounting face in plan, with the twisting moment in both signs.
 */
Test(loads, horizontal_force)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, NULL);
	for (int run = RUN_LOW; run <= RUN_STABILITY; run++) {
		const struct load_case *c = find(loads, EMERGENCY_STOP, run, VERTICAL_LEAST, 0);
		double k = run == RUN_STABILITY ? 1.25 : 1;
		cr_assert_eq(c->turning_count, 1);
		expect_near(c->turning_force[0].force, k * 1400, 1e-9);
		expect_near(c->turning_force[0].twist, k * 9e5, 1e-6);
		expect_near(c->turning_force[0].at[0], 100, 0);
		expect_near(c->turning_force[0].at[1], -50, 0);
		cr_expect_not(c->turning_force[0].at_hull);
		cr_expect_not(c->paired);
		expect_near(c->spin_to - c->spin_from, 2 * pi, 1e-12);
	}
	loads = loads_of(&cell, arm_cell, "arm.reactions.paired", "yes", NULL);
	cr_expect(find(loads, EMERGENCY_STOP, RUN_LOW, VERTICAL_LEAST, 0)->paired);
}

/* N, N + M cos, N + M sin at a heading of 0.3 rad. */
Test(loads, at_a_heading)
{
	const struct load_case c = {.down = 100, .fixed = {7, -8}, .turning = 50};
	double load[3];
	load_at(&c, 0.3, load);
	expect_near(load[0], 100, 0);
	expect_near(load[1], 7 + 50 * 0.955336489125606, 1e-12);
	expect_near(load[2], -8 + 50 * 0.29552020666133955, 1e-12);
}

/* --- readings of flags that are not known
 * ----------------------------------------------------------- */

Test(loads, readings)
{
	static const struct { const char *v, *t; unsigned readings; size_t cases; } row[] = {
		{"unknown", "yes", 0x3, 24}, {"unknown", "no", 0x3, 24}, {"yes", "unknown", 0x5, 24},
		{"no", "unknown", 0x5, 24}, {"unknown", "unknown", 0xf, 48}, {"no", "no", 0x1, 12}};
	const struct cell *cell;
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
		const char *v = row[i].v, *t = row[i].t;
		const struct loads *loads = loads_of(&cell, arm_cell, FLAGS, NULL);
		cr_expect_eq(loads->readings, row[i].readings, "%s, %s: %x", v, t, loads->readings);
		cr_expect_eq(loads->count, row[i].cases, "%s, %s: %zu cases", v, t, loads->count);
		for (unsigned r = 0; r < MAX_READINGS; r++) {
			if (!(row[i].readings & 1u << r))
				continue;
			bool v_without = strcmp(v, "no") == 0 || (r & 1),
			     t_without = strcmp(t, "no") == 0 || (r & 2);
			compare(loads, EMERGENCY_STOP, r, v_without ? &stop_without : &stop_with);
			expect_near(find(loads, EMERGENCY_STOP, RUN_LOW, VERTICAL_MOST, r)->turning,
			            2.34e6 + (t_without ? 294199.5 : 0), 1e-6);
		}
	}
}

/* 400 N in normal motion are below the weight of arm and payload, 490.3325 N, so they cannot hold
 * it: both readings then take them as without weight. V_least = 235.3596 - 400, V_most = 490.3325 +
 * 400 N. */
Test(loads, a_force_below_the_weight_cannot_hold_it)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell,
	                                     "arm.reactions.vertical_includes_weight", "unknown",
	                                     "arm.reactions.normal.vertical", "400 N", NULL);
	cr_expect_eq(loads->readings, 0x3u);
	cr_expect_eq(loads->count, 6 + 12);
	for (unsigned r = 0; r < 2; r++) {
		expect_near(arm_down(find(loads, NORMAL_MOTION, RUN_LOW, VERTICAL_LEAST, r)),
		            -164.6404, 1e-6);
		expect_near(arm_down(find(loads, NORMAL_MOTION, RUN_LOW, VERTICAL_MOST, r)),
		            890.3325, 1e-6);
	}
	compare(loads, EMERGENCY_STOP, 0, &stop_with);
	compare(loads, EMERGENCY_STOP, 1, &stop_without);
}

/* --- weights of the parts
 * --------------------------------------------------------------------------- */

/* The stock of 120 kg may be gone: 0.6 x 0, 1 x 1176.798, 0.9 x 0 N beside the frame, at x = 300
 * mm. */
Test(loads, least_mass)
{
	static const double stock[] = {0, 1176.798, 0};
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "cell.parts[2]", NULL, "cell.parts",
	                                     "[{mass: 200 kg, "
	                                     "at: [10 mm, 20 mm, 0 mm]}, {mass: 120 kg, "
	                                     "least_mass: 0 kg, at: [300 mm, 0 mm, 700 mm]}]",
	                                     NULL);
	for (int run = RUN_LOW; run <= RUN_STABILITY; run++) {
		const struct load_case *c = find(loads, EMERGENCY_STOP, run, VERTICAL_MOST, 0);
		expect_near(arm_down(c) - stock[run], stop_with.most[run], 1e-6);
		double frame = c->down - stop_with.most[run] - stock[run];
		expect_near(c->fixed[0], 10 * frame + 300 * stock[run] + 100 * stop_with.most[run],
		            1e-3);
	}
}

/* 50 kg somewhere in a box from (200, -100) to (400, 300) mm: 490.3325 N about (300, 100) mm, moved
 * by up to 100 and 200 mm. Low run: 294.1995 N, so the first moments lie at 88 259.85 +- 29 419.95
 * and 29 419.95 +- 58 839.9 N mm; all four corners are run. */
Test(loads, boxed_part)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "cell.parts",
		"[{mass: 50 kg, box: {from: [200 mm, -100 mm, 0 mm], to: [400 mm, 300 mm, 1 m]}}]",
		"arm.mount", "[0 mm, 0 mm, 600 mm]", NULL);
	unsigned seen = 0;
	cr_expect_eq(loads->count, 48);
	for (size_t i = 0; i < loads->count; i++) {
		const struct load_case *c = &loads->list[i];
		if (c->source != EMERGENCY_STOP || c->run != RUN_LOW ||
		    c->vertical != VERTICAL_LEAST)
			continue;
		int sx = c->corner & 1 ? 1 : -1, sy = c->corner & 2 ? 1 : -1;
		seen |= 1u << c->corner;
		expect_near(c->fixed[0], 88259.85 + sx * 29419.95, 1e-6);
		expect_near(c->fixed[1], 29419.95 + sy * 58839.9, 1e-6);
	}
	cr_expect_eq(seen, 0xfu);
	cr_expect_eq(
		find(loads_of(&cell, arm_cell, NULL), EMERGENCY_STOP, RUN_LOW, VERTICAL_LEAST, 0)
			->corner,
		-1);
}

/* 0.9 where the masses are weighed: V_least = 0.9 x 392.266 - 1207.734 = -854.6946 N, frame
 * 1765.197 N. */
Test(loads, stabilising_weight)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "choices.stabilising_weight", "0.9",
	                                     "choices.masses_weighed", "yes", NULL);
	const struct load_case *c = find(loads, EMERGENCY_STOP, RUN_LOW, VERTICAL_LEAST, 0);
	expect_near(c->down, 1765.197 - 854.6946, 1e-6);
	expect_near(find(loads, EMERGENCY_STOP, RUN_FULL, VERTICAL_LEAST, 0)->down,
	            1961.33 - 815.468, 1e-6);
}

/* --- what is not known
 * ------------------------------------------------------------------------------ */

static const struct gap *gap_of(const struct loads *loads, const char *path)
{
	for (size_t i = 0; i < loads->gap_count; i++)
		if (strcmp(loads->gaps[i].path, path) == 0)
			return &loads->gaps[i];
	return NULL;
}

/* What is left out is a gap; its kind says whether a ratio above 1 still fails. */
Test(loads, gaps)
{
	static const struct { const char *path, *gap; enum gap_kind kind; } row[] = {
		{"cell.parts", "cell.parts", GAP_OPEN}, {"cell.parts[1].mass", "cell.parts[].mass", GAP_OPEN},
		{"cell.parts[1].at", "cell.parts[].at", GAP_OPEN}, {"cell.base", "cell.base", GAP_BLOCKING},
		{"arm.mount", "arm.mount", GAP_BLOCKING}, {"arm.weight.arm", "arm.weight.arm", GAP_OPEN},
		{"arm.weight.payload", "arm.weight.payload", GAP_FAVOURABLE},
		{"arm.reactions.vertical_includes_weight", "arm.reactions.vertical_includes_weight", GAP_FAVOURABLE},
		{"arm.reactions.tilting_includes_weight", "arm.reactions.tilting_includes_weight", GAP_FAVOURABLE},
		{"arm.reactions.normal", "arm.reactions.normal", GAP_FAVOURABLE},
		{"arm.reactions.emergency_stop", "arm.reactions.emergency_stop", GAP_FAVOURABLE},
		{"arm.reactions.normal.vertical", "arm.reactions.normal.vertical", GAP_FAVOURABLE},
		{"arm.reactions.normal.horizontal", "arm.reactions.normal.horizontal", GAP_FAVOURABLE},
		{"arm.reactions.emergency_stop.tilting", "arm.reactions.emergency_stop.tilting", GAP_FAVOURABLE},
		{"arm.reactions.emergency_stop.twisting", "arm.reactions.emergency_stop.twisting", GAP_FAVOURABLE},
		{"anchors.at", "anchors.at", GAP_BLOCKING}};
	const struct cell *cell;
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
		const struct loads *loads = loads_of(&cell, arm_cell, row[i].path, "unknown", NULL);
		const struct gap *gap = gap_of(loads, row[i].gap);
		cr_expect(gap && gap->kind == row[i].kind, "%s", row[i].path);
		cr_expect_eq(loads_blocked(loads), row[i].kind == GAP_BLOCKING, "%s", row[i].path);
		cr_expect_eq(loads_bounding(loads), row[i].kind == GAP_FAVOURABLE, "%s",
		             row[i].path);
		cr_expect_eq(loads->count == 0, row[i].kind == GAP_BLOCKING, "%s: %zu cases",
		             row[i].path, loads->count);
	}
}

/* Reach matters where the weight moment is not in the papers' tilting moment, or the arm rests
 * under a load: the known one alone then counts, 392.266 x 500 = 196 133 N mm. */
Test(loads, reach)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "arm.weight.reach.payload", "unknown",
	                                     NULL);
	cr_expect_eq(loads->gap_count, 0, "the papers' moment holds it");
	loads = loads_of(&cell, arm_cell, "arm.weight.reach.payload", "unknown",
	                 "arm.reactions.tilting_includes_weight", "no", NULL);
	cr_expect(gap_of(loads, "arm.weight.reach.payload"));
	expect_near(find(loads, EMERGENCY_STOP, RUN_LOW, VERTICAL_LEAST, 0)->turning,
	            2.34e6 + 196133, 1e-6);
	loads = loads_of(&cell, arm_cell, "arm.weight.reach.arm", "unknown",
	                 "arm.reactions.tilting_includes_weight", "unknown", NULL);
	cr_expect(gap_of(loads, "arm.weight.reach.arm"));
	loads = loads_of(&cell, arm_cell, "arm.weight.reach.arm", "unknown", "loads",
	                 "[{force: 250 N, direction: any, at_height: 1 m, with: rest}]", NULL);
	cr_expect(gap_of(loads, "arm.weight.reach.arm"));
}

/* A missing emergency stop is a gap and no case: the values of normal motion never stand for it. */
Test(loads, missing_emergency_stop)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "arm.reactions.emergency_stop", NULL,
	                                     NULL);
	cr_expect_eq(loads->count, 6);
	for (size_t i = 0; i < loads->count; i++)
		cr_expect_eq(loads->list[i].source, NORMAL_MOTION);
	cr_expect(gap_of(loads, "arm.reactions.emergency_stop"));
	compare(loads, NORMAL_MOTION, 0, &normal_with);
}

/* Without any reaction the arm rests: V_least = g W_arm, V_most = W_arm + W_payload, tilting the
 * weight moment of the stretched arm, no horizontal force. */
Test(loads, arm_at_rest)
{
	static const struct figures rest = {{235.3596, 392.266, 353.0394},
	                                    {490.3325, 490.3325, 490.3325}};
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "arm.reactions", "unknown", NULL);
	cr_expect_eq(loads->count, 6);
	compare(loads, REST, 0, &rest);
	const struct load_case *c = find(loads, REST, RUN_STABILITY, VERTICAL_LEAST, 0);
	expect_near(c->turning, 294199.5, 1e-6);
	cr_expect_eq(c->turning_count, 0);
	cr_expect(gap_of(loads, "arm.reactions.normal") &&
	          gap_of(loads, "arm.reactions.emergency_stop"));
}

/* --- further loads
 * ------------------------------------------------------------------------------------ */

static size_t count_source(const struct loads *loads, int source)
{
	size_t count = 0;
	for (size_t i = 0; i < loads->count; i++)
		count += loads->list[i].source == source;
	return count;
}

/* From any side: 250 N x 1500 mm add to the moment that turns, beside the arm in normal motion; the
 * place is the corner of the base with the largest torsion, or the one stated. 1.25 times in the
 * stability run. */
Test(loads, from_any_side)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "loads",
		"[{force: 250 N, direction: any, at_height: 1.5 m, with: normal}]", NULL);
	cr_expect_eq(loads->count, 18);
	const struct load_case *c = find(loads, EXTRA, RUN_LOW, VERTICAL_LEAST, 0);
	expect_near(c->turning, 1.06e6 + 375e3, 1e-6);
	expect_near(arm_down(c), normal_with.least[RUN_LOW], 1e-6);
	cr_assert_eq(c->turning_count, 2);
	expect_near(c->turning_force[1].force, 250, 0);
	cr_expect(c->turning_force[1].at_hull);
	c = find(loads, EXTRA, RUN_STABILITY, VERTICAL_LEAST, 0);
	expect_near(c->turning, 1.25 * (1.06e6 + 375e3), 1e-6);
	expect_near(c->turning_force[1].force, 312.5, 1e-12);
	loads = loads_of(&cell, arm_cell, "loads",
		"[{force: 250 N, direction: any, at: [300 mm, -200 mm], at_height: 1.5 m, with: rest}]", NULL);
	c = find(loads, EXTRA, RUN_LOW, VERTICAL_LEAST, 0);
	expect_near(c->turning, 294199.5 + 375e3, 1e-6);
	cr_assert_eq(c->turning_count, 1);
	cr_expect_not(c->turning_force[0].at_hull);
	expect_near(c->turning_force[0].at[0], 300, 0);
	expect_near(c->turning_force[0].at[1], -200, 0);
}

/* What the arm does meanwhile: left out, an emergency stop, the worst; a case without values is
 * replaced by rest, the most favourable, and stays a gap. */
Test(loads, with_which_motion)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "loads",
		"[{force: 250 N, direction: any, at_height: 1.5 m}]", NULL);
	expect_near(find(loads, EXTRA, RUN_LOW, VERTICAL_LEAST, 0)->turning, 2.34e6 + 375e3, 1e-6);
	loads = loads_of(&cell, arm_cell, "loads",
	                 "[{force: 250 N, direction: any, at_height: 1.5 m, with: normal}]",
	                 "arm.reactions.normal", NULL, NULL);
	expect_near(find(loads, EXTRA, RUN_LOW, VERTICAL_LEAST, 0)->turning, 294199.5 + 375e3,
	            1e-6);
	cr_expect(gap_of(loads, "arm.reactions.normal"));
}

/* 100 N toward 30 degrees at 900 mm, at (200, 100) mm: F = (86.602540, 50) N, first moments 77
 * 942.286 and 45 000 N mm that do not turn, torsion 200 x 50 - 100 x 86.60254 = 1339.746 N mm. The
 * arm rests; its reach is 0, so that nothing turns. */
Test(loads, fixed_direction_at_a_place)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "arm.weight.reach.arm", "0 mm",
		"arm.weight.reach.payload", "0 mm", "loads",
		"[{force: 100 N, direction: 30 deg, at: [200 mm, 100 mm], at_height: 900 mm, with: rest}]", NULL);
	const struct load_case *c = find(loads, EXTRA, RUN_FULL, VERTICAL_MOST, 0);
	expect_near(c->fixed[0], 10 * 1961.33 + 100 * 490.3325 + 77942.2863, 1e-3);
	expect_near(c->fixed[1], 20 * 1961.33 - 50 * 490.3325 + 45000, 1e-3);
	expect_near(c->fixed_shear[0], 86.6025404, 1e-6);
	expect_near(c->fixed_shear[1], 50, 1e-9);
	expect_near(c->fixed_shear[2], 1339.7460, 1e-3);
	expect_near(c->turning, 0, 0);
	expect_near(c->spin_from, pi / 6, 1e-12);
	expect_near(c->spin_to, c->spin_from, 0);
}

/* Without a place the corner of the base with the largest torsion counts, both signs: 100 N in x at
 * a corner 400 mm off the anchors' centre: +-40 000 N mm. The moment does not depend on the corner,
 * so there are two ways, each in three runs and two extremes. */
Test(loads, fixed_direction_without_a_place)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "loads",
		"[{force: 100 N, direction: 0 deg, at_height: 900 mm, with: rest}]", NULL);
	bool seen[2] = {false, false};
	cr_expect_eq(count_source(loads, EXTRA), 12);
	for (size_t i = 0; i < loads->count; i++) {
		const struct load_case *c = &loads->list[i];
		if (c->source != EXTRA || c->run == RUN_STABILITY)
			continue;
		expect_near(fabs(c->fixed_shear[2]), 40e3, 1e-6);
		seen[c->fixed_shear[2] > 0] = true;
	}
	cr_expect(seen[0] && seen[1]);
}

/* The centre of the anchors, not the cell's origin, is what torsion is about: anchors moved by
 * (100, 50) mm leave 350 mm to the upper and 450 mm to the lower side; about the origin that is
 * another number. */
Test(loads, torsion_about_the_centre_of_the_anchors)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "anchors.at",
		"{unit: mm, points: [[-300, -250], [500, -250], [500, 350], [-300, 350]]}", "loads",
		"[{force: 100 N, direction: 0 deg, at_height: 900 mm, with: rest}]", NULL);
	for (size_t i = 0; i < loads->count; i++) {
		const struct load_case *c = &loads->list[i];
		/* T = T_centre + x_c F_y - y_c F_x = +-45 000 - 50 x 100 */
		if (c->source == EXTRA && c->run != RUN_STABILITY)
			expect_near(fabs(c->fixed_shear[2] + 5000), 45e3, 1e-6);
	}
}

/* A vector may press down: (30, 0, -40) N, 40 N downward. With a place, (200, 100) mm, height 1 m:
 * N + 40, first moments + 40 x 200 + 30 x 1000 and + 40 x 100. Without one the downward part is
 * tried at every corner of the hull with both signs of torsion: 4 x 2 ways. */
Test(loads, vector)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "loads",
		"[{force: [30 N, 0 N, -40 N], at: [200 mm, 100 mm], at_height: 1 m, with: rest}]", NULL);
	const struct load_case *c = find(loads, EXTRA, RUN_FULL, VERTICAL_MOST, 0);
	expect_near(arm_down(c), 490.3325 + 40, 1e-6);
	expect_near(c->fixed[0], 10 * 1961.33 + 100 * 490.3325 + 40 * 200 + 30e3, 1e-3);
	expect_near(c->fixed[1], 20 * 1961.33 - 50 * 490.3325 + 40 * 100, 1e-3);
	c = find(loads, EXTRA, RUN_STABILITY, VERTICAL_MOST, 0);
	expect_near(arm_down(c), 490.3325 + 50, 1e-6);
	loads = loads_of(&cell, arm_cell, "loads",
	                 "[{force: [30 N, 0 N, -40 N], at_height: 1 m, with: rest}]", NULL);
	cr_expect_eq(count_source(loads, EXTRA), 4 * 2 * 6);
	double least = 0, most = 0, base = 10 * 1961.33 + 100 * 490.3325;
	for (size_t i = 0; i < loads->count; i++)
		if (loads->list[i].source == EXTRA && loads->list[i].run == RUN_FULL &&
		    loads->list[i].vertical == VERTICAL_MOST) {
			least = fmin(least, loads->list[i].fixed[0] - base - 30e3);
			most = fmax(most, loads->list[i].fixed[0] - base - 30e3);
		}
	expect_near(least, -40 * 500, 1e-3);
	expect_near(most, 40 * 500, 1e-3);
}

/* --- setups and groups
 * --------------------------------------------------------------------------------- */

/* Every setup has all cases; 1.4 kN at 1350 mm: 1.5e6 + 1.89e6 N mm. */
Test(loads, setups)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "setups",
		"[{name: low}, {name: high, arm.mount: [0 mm, 0 mm, 1350 mm]}]", NULL);
	cr_expect_eq(loads->count, 24);
	cr_expect_eq(setup_count(cell), 2);
	cr_expect_str_eq(setup_name(cell, 1), "high");
	for (size_t i = 0; i < loads->count; i++) {
		const struct load_case *c = &loads->list[i];
		if (c->source == EMERGENCY_STOP && c->run == RUN_FULL)
			expect_near(c->turning, c->setup == 0 ? 2.34e6 : 3.39e6, 1e-6);
	}
}

/* Cases share a group where setup and horizontal loads are the same: low and full run of one
 * source; the stability run has groups of its own. */
Test(loads, groups)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(
		&cell, arm_cell, "setups", "[{name: a}, {name: b}]", "loads",
		"[{force: 100 N, direction: 0 deg, at_height: 900 mm, with: normal}]", NULL);
	cr_expect_eq(loads->group_count, 2 * (2 + 2 + 2 * 2), "%zu", loads->group_count);
	for (size_t i = 0; i < loads->count; i++)
		for (size_t k = 0; k < i; k++) {
			const struct load_case *a = &loads->list[i], *b = &loads->list[k];
			bool same = a->setup == b->setup && a->source == b->source &&
			            a->stability_only == b->stability_only &&
			            memcmp(a->fixed_shear, b->fixed_shear, sizeof a->fixed_shear) ==
			                    0;
			cr_expect_eq(a->group == b->group, same, "cases %zu and %zu", i, k);
		}
}

/* No load model at all is its own state: nothing is computed and nothing is a fault. */
Test(loads, no_model)
{
	const struct cell *cell;
	const struct loads *loads = loads_of(&cell, arm_cell, "arm", NULL, "cell", NULL, NULL);
	cr_expect_not(loads->given);
	cr_expect_eq(loads->count, 0);
}
