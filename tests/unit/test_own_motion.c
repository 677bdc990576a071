/* The arm's own motion in a whole run: what is missing is named, an estimate neither holds nor
 * fails by itself, every written calculation gives its values, and the same cell in other words
 * gives the same ratios. */
#include "../../src/pages/pages.h"
#include "../support/history_cell.h"
#include "../support/own_motion.h"
#include "../support/printed.h"
#include "../support/sample_cell.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static struct arena texts;
static struct trial trial;
static struct own_motion own;

static void start(void)
{
	arena_open(&texts, NULL, NULL);
}

static void finish(void)
{
	arena_close(&texts);
}

TestSuite(own_motion_gaps, .init = start, .fini = finish);
TestSuite(own_motion_swing, .init = start, .fini = finish);
TestSuite(own_motion_trace, .init = start, .fini = finish);
TestSuite(own_motion_cell, .init = start, .fini = finish);

static const struct result *run(const char *text, bool trace)
{
	static struct history_file file[2];
	static const struct history_files files = {file, 2};
	for (int i = 0; i < 2; i++)
		file[i] = (struct history_file){i ? "b.csv" : "a.csv", HISTORY_STILL,
		                                sizeof HISTORY_STILL - 1, (uint32_t)i + 1, ""};
	const struct check_options options = {.trace = trace, .histories = &files};
	trial_open(&trial, text, &options);
	cr_assert_eq(trial.reading.status, DONE, "%s\n%s", reading_faults(&trial.reading), text);
	return trial.result;
}

static const struct check_result *check(const char *id)
{
	const struct check_result *found = trial_check(&trial, id);
	cr_assert(found, "%s is left out", id);
	return found;
}

/* --- what is missing
 * ---------------------------------------------------------------------------------------- */

enum way { CHAIN, SWING, HISTORY, WAYS };
enum { MOST_CHANGES = 4, MOST_NAMED = 3 };

static const char *sample(enum way way, const struct change *change, size_t count)
{
	static const struct change history[] = {
		{"arm.chain", NULL}, {"arm.motion", NULL},
		{"arm.weight", "{arm: 30 kg, payload: 2 kg}"},
		{"arm.history", "[{file: a.csv, of: normal}, {file: b.csv, of: emergency_stop}]"},
		{"arm.turned", "0 deg"}};
	if (way == CHAIN)
		return chain_sample_text(&texts, change, count);
	if (way == SWING)
		return swing_sample_text(&texts, change, count);
	return text_with(&texts, chain_sample_text(&texts, history, 5), change, count);
}

#define SHEET "{vertical: 1 kN, horizontal: 1 kN, tilting: 10 N m, twisting: 10 N m}"
#define ACCELERATION(n) "arm.motion.joints[" #n "].acceleration"
#define WEIGHT {"arm.weight", "{arm: 30 kg, payload: 2 kg}"}
#define FLAGS \
	{"arm.reactions.vertical_includes_weight", "yes"}, \
	{"arm.reactions.tilting_includes_weight", "yes"}

static const struct row {
	enum way way;
	struct change change[6];
	const char *named[MOST_NAMED];
} rows[] = {
	{CHAIN, {{0}}, {0}},
	{SWING, {{0}}, {0}},
	{HISTORY, {{0}}, {0}},
	/* chain: its bodies */
	{CHAIN, {{"arm.chain.fixed_mass", NULL}}, {"arm.weight.arm"}},
	{CHAIN, {{"arm.chain.payload.mass", NULL}}, {"arm.weight.payload"}},
	{CHAIN, {{"arm.chain.joints[1].mass", "unknown"}}, {"arm.chain.joints[].mass"}},
	{CHAIN, {{"arm.chain.joints[2].inertia", NULL}},
	 {"arm.chain.joints[].inertia.xx", "arm.chain.joints[].inertia.yy",
	  "arm.chain.joints[].inertia.zz"}},
	{CHAIN, {{"arm.chain.payload.centre", NULL}}, {"arm.chain.payload.centre"}},
	{CHAIN, {{"arm.chain.joints[1].kind", "unknown"}}, {"arm.chain.joints[].kind"}},
	{CHAIN, {{"arm.mounting", "unknown"}}, {"arm.mounting"}},
	/* and its motion */
	{CHAIN, {{"arm.motion", NULL}}, {"arm.motion.joints"}},
	{CHAIN, {{ACCELERATION(1), NULL}}, {"arm.motion.joints[].acceleration"}},
	{CHAIN, {{ACCELERATION(1), NULL}, {ACCELERATION(2), NULL}},
	 {"arm.motion.joints[].acceleration"}},
	{CHAIN, {{"arm.motion.joints[1].stop", NULL}, {"arm.motion.joints[2].stop", NULL}},
	 {"arm.motion.joints[].stop"}},
	{CHAIN, {{"arm.motion.joints[2].stop", NULL}, {"arm.motion.joints[2].stop_time", "0.3 s"}},
	 {"arm.motion.peak_factor"}},
	{CHAIN, {{"arm.motion.joints[2].speed", "unknown"}}, {"arm.motion.joints[].speed"}},
	{CHAIN, {{"arm.motion.joints[1].from", "unknown"}}, {"arm.motion.joints[].from"}},
	/* one case by the data sheet, wholly or in part */
	{CHAIN, {{ACCELERATION(1), NULL}, {ACCELERATION(2), NULL}, {"arm.reactions.normal", SHEET},
	         WEIGHT, FLAGS}, {0}},
	{CHAIN, {{ACCELERATION(1), NULL}, {ACCELERATION(2), NULL},
	         {"arm.reactions.normal", "{vertical: 1 kN, tilting: 10 N m, twisting: 10 N m}"},
	         WEIGHT, FLAGS}, {"arm.reactions.normal.horizontal"}},
	{CHAIN, {{"arm.reactions.normal", SHEET}, {"arm.weight", "{payload: 2 kg}"}, FLAGS},
	 {"arm.weight.arm"}},
	/* and one by a history */
	{CHAIN, {{ACCELERATION(1), NULL}, {ACCELERATION(2), NULL}, WEIGHT,
	         {"arm.history", "[{file: a.csv, of: normal}]"}}, {"arm.turned"}},
	{HISTORY, {{"arm.history", "[{file: b.csv, of: emergency_stop}]"}}, {"arm.reactions.normal"}},
	{HISTORY, {{"arm.history", "[{file: a.csv, of: normal}]"}},
	 {"arm.reactions.emergency_stop"}},
	{HISTORY, {{"arm.history", "[{file: a.csv, of: normal}]"},
	           {"arm.reactions.emergency_stop", SHEET}, FLAGS}, {0}},
	{HISTORY, {{"arm.weight", "{payload: 2 kg}"}}, {"arm.weight.arm"}},
	{HISTORY, {{"arm.weight", "{arm: 30 kg}"}}, {"arm.weight.payload"}},
	{HISTORY, {{"arm.mounting", "unknown"}}, {"arm.mounting"}},
	{HISTORY, {{"arm.turned", "unknown"}}, {"arm.turned"}},
	{HISTORY, {{"arm.turned", NULL}}, {"arm.turned"}},
	{HISTORY, {{"arm.history[2].of", NULL}}, {"arm.history[].of"}},
	{HISTORY, {{"arm.history[1].of", "unknown"}}, {"arm.history[].of"}},
	{CHAIN, {{"arm.turned", "unknown"}}, {0}},
	{CHAIN, {{"arm.mounting", "wall"}, {"arm.mounting_toward", "0 deg"}}, {"arm.turned"}},
	{CHAIN, {{"arm.chain.payload.inertia", NULL}},
	 {"arm.chain.payload.inertia.xx", "arm.chain.payload.inertia.yy",
	  "arm.chain.payload.inertia.zz"}},
	/* the estimate */
	{SWING, {{"arm.weight", "{payload: 2 kg}"}}, {"arm.weight.arm"}},
	{SWING, {{"arm.swing.axes", NULL}}, {"arm.swing.axes"}},
	{SWING, {{"arm.swing.reach", NULL}}, {"arm.swing.reach"}},
	{SWING, {{"arm.swing.peak_factor", NULL}}, {"arm.swing.peak_factor"}},
	{SWING, {{"arm.swing.vertical_axis.speed", "unknown"}}, {"arm.swing.vertical_axis.speed"}},
	{SWING, {{"arm.swing.vertical_axis.stop_time", NULL},
	         {"arm.swing.horizontal_axis.stop_time", NULL}},
	 {"arm.swing.vertical_axis.stop", "arm.swing.horizontal_axis.stop"}},
	{SWING, {{"arm.swing.vertical_axis.start_time", NULL},
	         {"arm.swing.horizontal_axis.start_time", NULL}, {"arm.reactions.normal", SHEET},
	         FLAGS}, {0}},
};

static size_t count_changes(const struct row *row)
{
	size_t count = 0;
	while (count < 6 && row->change[count].path)
		count++;
	return count;
}

static bool has_gap(const struct loads *loads, const char *path)
{
	for (size_t i = 0; i < loads->gap_count; i++)
		if (strcmp(loads->gaps[i].path, path) == 0)
			return true;
	return false;
}

/* base.stability may hold: anchors all round hold every load in balance, known or not. */
static void nothing_holds(size_t number)
{
	for (size_t i = 0; i < trial.result->check_count; i++) {
		const struct check_result *one = &trial.result->checks[i];
		bool waits = one->check->needs_loads &&
		             strcmp(one->check->id, "base.stability") != 0;
		cr_expect(!waits || one->finding.verdict != HOLDS, "row %zu: %s holds", number,
		          one->check->id);
	}
	cr_expect_neq(trial.result->verdict, HOLDS, "row %zu", number);
}

static void check_row(size_t number)
{
	const struct row *row = &rows[number];
	const struct loads *loads =
		&run(sample(row->way, row->change, count_changes(row)), false)->loads;
	size_t wanted = 0;
	for (; wanted < MOST_NAMED && row->named[wanted]; wanted++)
		cr_expect(has_gap(loads, row->named[wanted]), "row %zu: %s is not named; %s is",
		          number, row->named[wanted],
		          loads->gap_count ? loads->gaps[0].path : "none");
	cr_expect_eq(loads->gap_count, wanted, "row %zu: %zu gaps, the last %s", number,
	             loads->gap_count,
	             loads->gap_count ? loads->gaps[loads->gap_count - 1].path : "none");
	if (wanted > 0)
		nothing_holds(number);
	else if (row->way == CHAIN) /* estimates doubt, and so do histories of a few rows */
		cr_expect_eq(check("loads.given")->finding.verdict, HOLDS, "row %zu", number);
	trial_close(&trial);
}

Test(own_motion_gaps, every_row)
{
	for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
		check_row(i);
}

/* --- the estimate
 * ------------------------------------------------------------------------------------------- */

#define ENGINEER {"choices.by_engineer", "{name: demo, reason: of a test}"}
#define RATING "anchors.product.rating."

static const char *page(bool json)
{
	static struct printed out;
	printed_free(&out);
	out = (struct printed){0};
	static const struct page_options plain = {.colour = false};
	if (json)
		page_json(trial.result, &plain, printed_write, &out);
	else
		page_text(trial.result, &plain, printed_write, &out);
	return out.text;
}

Test(own_motion_swing, unproven_without_an_engineer)
{
	const struct result *result = run(swing_sample_text(&texts, NULL, 0), false);
	cr_expect_eq(result->verdict, UNPROVEN);
	nothing_holds(0);
	cr_assert_eq(result->departures.count, 1);
	cr_expect(strstr(result->departures.list[0], "ESTIMATE") == result->departures.list[0]);
	cr_expect(strstr(page(false), "ESTIMATE: the arm's reactions") != NULL);
	cr_expect(strstr(page(true), "ESTIMATE: the arm's reactions") != NULL);
	trial_close(&trial);
}

Test(own_motion_swing, holds_with_an_engineer)
{
	static const struct change engineer = ENGINEER;
	const struct result *result = run(swing_sample_text(&texts, &engineer, 1), false);
	for (size_t i = 0; i < result->check_count; i++)
		cr_expect_eq(result->checks[i].finding.verdict, HOLDS, "%s",
		             result->checks[i].check->id);
	cr_assert_eq(result->departures.count, 1);
	cr_expect(strstr(page(false), "by engineer demo") != NULL);
	cr_expect(strstr(page(true), "ESTIMATE: the arm's reactions") != NULL);
	trial_close(&trial);
}

/* An estimate is no lower bound: however far above what is allowed, it fails nothing. */
Test(own_motion_swing, never_fails)
{
	static const struct change weak[] = {{RATING "tension", "100 N"}, {RATING "shear", "100 N"},
	                                     ENGINEER};
	for (size_t engineer = 0; engineer < 2; engineer++) {
		const struct result *result =
			run(swing_sample_text(&texts, weak, 2 + engineer), false);
		cr_expect_gt(check("rating.interaction")->finding.ratio, 1);
		for (size_t i = 0; i < result->check_count; i++)
			cr_expect_neq(result->checks[i].finding.verdict, FAILS, "%s",
			              result->checks[i].check->id);
		trial_close(&trial);
	}
}

/* Nor may it fail base.stability. Two anchors on one edge: about it weight alone resists, 60 kg
 * x 9.81 x 500 mm = 0.3 kN m, and the estimate says more than that. */
Test(own_motion_swing, tips_nothing_by_itself)
{
	static const struct change edge[] = {
		{"anchors.at", "{unit: mm, points: [[500, -300], [500, 300]]}"}, {"anchors.lug", "yes"},
		{"cell.parts", "[{mass: 60 kg, at: [0 mm, 0 mm, 200 mm]}]"}};
	run(swing_sample_text(&texts, edge, 3), false);
	cr_expect_gt(check("base.stability")->finding.ratio, 1);
	cr_expect_eq(check("base.stability")->finding.verdict, UNPROVEN);
	trial_close(&trial);
}

/* What fails by the data sheet fails, whatever is estimated beside it. */
Test(own_motion_swing, hides_no_failure)
{
	static const struct change beside[] = {
		{"arm.reactions.normal",
	         "{vertical: 4 kN, horizontal: 1 kN, tilting: 1 N m, twisting: 1 N m}"},
		FLAGS,
		{"arm.swing.vertical_axis.start_time", NULL},
		{"arm.swing.horizontal_axis.start_time", NULL},
		{"arm.swing.horizontal_axis.stop_time", "0.05 s"},
		{"cell.parts", "none"},
		{RATING "tension", "3 kN"}};
	const char *both = swing_sample_text(&texts, beside, 8);
	static const struct change without = {"arm.swing", NULL};
	run(text_with(&texts, both, &without, 1), false);
	cr_expect_eq(check("rating.tension")->finding.verdict, FAILS, "by the sheet alone, %g",
	             check("rating.tension")->finding.ratio);
	trial_close(&trial);
	run(both, false);
	cr_expect_eq(check("rating.tension")->finding.verdict, FAILS, "with an estimate beside, %g",
	             check("rating.tension")->finding.ratio);
	trial_close(&trial);
}

/* --- written calculations
 * ------------------------------------------------------------------------------------ */

#define WALL {"arm.mounting", "wall"}, {"arm.mounting_toward", "30 deg"}
#define OFF {"arm.mount", "[120 mm, -70 mm, 400 mm]"}
#define PUSH(direction, with) \
	{"loads", "[{name: person, force: 500 N, direction: " direction \
	          ", at: [300 mm, 50 mm], at_height: 1500 mm, with: " with "}]"}

static const struct traced_row {
	const char *name;
	enum way way;
	struct change change[6];
} traced_rows[] = {
	{"chain", CHAIN, {{0}}},
	{"chain off the centre", CHAIN, {OFF}},
	{"chain within a range", CHAIN, {OFF, {"arm.motion.joints[1].from", "-40 deg"},
	                                 {"arm.motion.joints[1].to", "100 deg"}}},
	{"chain on a wall", CHAIN, {OFF, WALL}},
	{"chain below a ceiling", CHAIN, {OFF, {"arm.mounting", "ceiling"}}},
	{"chain with a push from any side", CHAIN, {OFF, PUSH("any", "emergency_stop")}},
	{"chain with a push", CHAIN, {OFF, PUSH("30 deg", "normal")}},
	{"chain at rest with a push", CHAIN, {OFF, PUSH("30 deg", "rest")}},
	{"chain on a wall with a push from any side", CHAIN, {OFF, WALL, PUSH("any", "normal")}},
	{"chain in an earthquake", CHAIN,
	 {OFF, {"earthquake", "{code: asce7_16, height_share: 0, sds: 1, amplification: 1, response: 1.5, "
	                      "importance: 1, overstrength: 1}"}}},
	{"swing", SWING, {OFF}},
	{"swing with a push from any side", SWING, {OFF, PUSH("any", "emergency_stop")}},
	{"history", HISTORY, {OFF}},
	{"history with a push", HISTORY, {OFF, PUSH("any", "normal")}},
};

static size_t trace_row(const struct traced_row *row)
{
	size_t count = 0, expressions = 0;
	while (count < 6 && row->change[count].path)
		count++;
	const struct result *result = run(sample(row->way, row->change, count), true);
	for (size_t i = 0; i < result->check_count; i++)
		expressions += traced_expressions(
			&result->checks[i].trace,
			arena_format(&texts, "%s, %s", row->name, result->checks[i].check->id));
	trial_close(&trial);
	return expressions;
}

Test(own_motion_trace, every_row)
{
	for (size_t i = 0; i < sizeof traced_rows / sizeof traced_rows[0]; i++)
		cr_expect_gt(trace_row(&traced_rows[i]), 40, "%s", traced_rows[i].name);
}

/* --- the same cell in other words
 * ---------------------------------------------------------------------------- */

/* Checks of the place alone have tests of their own. The pressure of the bed below a standing arm
 * is largest somewhere on an edge of its hull, of which three points between two corners are kept,
 * whichever way the hull is cut: a thousandth at least. */
static void same_ratios(const char *what, const struct trial *a, const struct trial *b, double same)
{
	cr_assert_eq(a->result->check_count, b->result->check_count);
	for (size_t i = 0; i < a->result->check_count; i++) {
		const struct check_result *one = &a->result->checks[i],
					  *two = &b->result->checks[i];
		bool pressure = strcmp(one->check->id, "slab.carries") == 0;
		double tolerance = pressure && same > 0 ? fmax(same, 1e-3) : same;
		if (!one->check->needs_loads)
			continue;
		cr_expect(one->finding.verdict == two->finding.verdict &&
		                  one->finding.computed == two->finding.computed &&
		                  (!one->finding.computed ||
		                   fabs(one->finding.ratio - two->finding.ratio) <=
		                           tolerance * one->finding.ratio),
		          "%s: %s %.12g and %.12g", what, one->check->id, one->finding.ratio,
		          two->finding.ratio);
	}
}

/* The arm on its pedestal, its base and anchors moved by (200, -300) mm and turned by 90 degrees in
 * cell axes, by `mounted`; the cell moved and turned back on the slab. Searches end within 1e-6 rad
 * (prop_flow.c): 1e-5. */
static void in_other_words(const char *mounting, const char *toward, const char *toward_turned,
                           double tolerance)
{
	const struct change here[] = {{"arm.mount", "[100 mm, 50 mm, 400 mm]"},
	                              {"arm.mounting", mounting},
	                              {"arm.turned", "20 deg"},
	                              {"arm.mounting_toward", toward}};
	/* (x, y) -> (200 - y, x - 300); the slab sees the old place */
	const struct change there[] = {
		{"arm.mount", "[150 mm, -200 mm, 400 mm]"},
		{"arm.mounting", mounting},
		{"arm.turned", toward ? "20 deg" : "110 deg"},
		{"arm.mounting_toward", toward_turned},
		{"cell.parts", "[{mass: 40 kg, at: [200 mm, -300 mm, 200 mm]}]"},
		{"cell.base", "[{name: plate, outline: {unit: mm, points: [[-200, -800], [600, -800], [600, 200], [-200, 200]]}}]"},
		{"anchors.at", "{unit: mm, points: [[500, -700], [500, 100], [-100, 100], [-100, -700]]}"},
		{"cell.at", "[5.3 m, 4.2 m]"},
		{"cell.turned", "-90 deg"}};
	struct trial first;
	run(chain_sample_text(&texts, here, 4), false);
	first = trial;
	run(chain_sample_text(&texts, there, 9), false);
	same_ratios(mounting, &first, &trial, tolerance);
	trial_close(&first);
	trial_close(&trial);
}

Test(own_motion_cell, turned_and_moved)
{
	in_other_words("floor", NULL, NULL, 1e-5);
	in_other_words("ceiling", NULL, NULL, 1e-5);
	/* a standing arm's set is a sample of its hull, cut another way in other axes: what is lost
	 * (wrench_hull.h) is up to 0.4 % of the largest tension, more for another anchor */
	in_other_words("wall", "-120 deg", "-30 deg", 1e-2);
}

/* Turned on the slab alone, away from its edges, nothing changes to the bit. */
Test(own_motion_cell, turned_on_the_slab)
{
	static const struct change turned[] = {{"cell.turned", "37 deg"},
	                                       {"cell.at", "[5.5 m, 4.1 m]"}};
	struct trial first;
	run(chain_sample_text(&texts, NULL, 0), false);
	first = trial;
	run(chain_sample_text(&texts, turned, 2), false);
	for (size_t i = 0; i < 4; i++)
		cr_expect(first.result->anchor[i].tension == trial.result->anchor[i].tension &&
		          first.result->anchor[i].shear == trial.result->anchor[i].shear);
	same_ratios("turned", &first, &trial, 0);
	trial_close(&first);
	trial_close(&trial);
}

/* A wrench of a narrow range never tips the cell in a heading it cannot take. The two anchors stand
 * on the edge at +x, about which weight alone resists 1.77 kN m; tilting toward -x they hold
 * anything.
 */
Test(own_motion_cell, stability_within_the_range)
{
	static const struct change edge[] = {
		{"anchors.at", "{unit: mm, points: [[500, -300], [500, 300]]}"}, {"anchors.lug", "yes"},
		{"cell.parts", "[{mass: 600 kg, at: [0 mm, 0 mm, 200 mm]}]"}};
	struct arm_load load = {.moment = {0, 0, 0}, .spin_from = -40 * pi / 180,
	                        .spin_to = 40 * pi / 180};
	const double sides[2] = {4e6, -4e6};
	enum verdict verdict[2];
	for (int i = 0; i < 2; i++) {
		load.moment[1] = sides[i];
		own_motion_open(&own, &load, 1, NULL, 0);
		own_trial_open(&trial, chain_sample_text(&texts, edge, 3), &own, false);
		verdict[i] = check("base.stability")->finding.verdict;
		trial_close(&trial);
	}
	cr_expect_eq(verdict[0], FAILS);
	cr_expect_eq(verdict[1], HOLDS, "it tips in a heading that it cannot take");
}

/* However little the arm may turn, a further load from any side comes from every side: with all in
 * the middle the four anchors are pulled alike, by more than the arm alone. */
Test(own_motion_cell, push_from_any_side_of_a_narrow_range)
{
	static const struct change push[] = {
		{"loads", "[{name: person, force: 1 kN, direction: any, at: [0 mm, 0 mm], "
	                  "at_height: 1500 mm, with: emergency_stop}]"}};
	const struct arm_load load = {.force = {0, 0, -300}, .moment = {0, 2e5, 0}, .weight = 300,
	                              .spin_from = -0.1, .spin_to = 0.1};
	own_motion_open(&own, &load, 1, NULL, 0);
	own_trial_open(&trial, chain_sample_text(&texts, push, 1), &own, false);
	double most = trial.result->anchor[0].tension;
	cr_expect_gt(most, 500);
	for (size_t i = 1; i < 4; i++)
		expect_near(trial.result->anchor[i].tension, most, 1e-5 * most);
	trial_close(&trial);
}

/* Beside an arm that stands over the edge of the base the other weights help and its own does not.
 * By the data sheet (arm_wrench.h) the largest vertical force then keeps the arm's weight in full;
 * the same numbers as wrenches must not pull an anchor less. */
Test(own_motion_cell, arm_over_the_edge)
{
	struct change over[] = {
		{"arm.mount", "[480 mm, 0 mm, 0 mm]"},
		{"cell.parts", "[{mass: 200 kg, at: [-300 mm, 0 mm, 0 mm]}]"},
		{"arm.weight", "{arm: 400 kg, payload: 0 kg}"},
		FLAGS,
		{"arm.reactions.normal",
	         "{vertical: 5 kN, horizontal: 0 N, tilting: 1 kN m, twisting: 0 N m}"},
		{"arm.reactions.emergency_stop",
	         "{vertical: 5 kN, horizontal: 0 N, tilting: 1 kN m, twisting: 0 N m}"}};
	const double weight = 400 * 9.80665;
	struct arm_load list[2] = {{.force = {0, 0, -5000}, .moment = {0, 1e6, 0}, .weight = weight,
	                            .spin_to = 2 * pi}};
	list[1] = list[0];
	list[1].force[2] = -(2 * weight - 5000);
	trial_open(&trial, text_with(&texts, sample_lift, over, 7), NULL);
	cr_assert_eq(trial.reading.status, DONE, "%s", reading_faults(&trial.reading));
	double sheet[4];
	for (size_t i = 0; i < 4; i++)
		sheet[i] = trial.result->anchor[i].tension;
	trial_close(&trial);
	own_motion_open(&own, list, 2, NULL, 0);
	over[3] = (struct change){"arm.reactions", NULL};
	own_trial_open(&trial, text_with(&texts, sample_lift, over, 4), &own, false);
	for (size_t i = 0; i < 4; i++)
		expect_near(trial.result->anchor[i].tension, sheet[i], 1e-5 * sheet[i]);
	trial_close(&trial);
}
