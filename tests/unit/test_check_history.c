/* Histories against the anchors: a row is one instant of the arm, with the shear of that instant.
 */
#include "../../src/check_cycles.h"
#include "../../src/check_history.h"
#include "../support/history_cell.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define CLOSE 1e-9     /* relative: two ways to the same equilibrium, each solved to 1e-12 */

static struct trial trial;

static const struct result *run(const char *a, const char *b, const struct change *change,
                                size_t count)
{
	history_trial_open(&trial, a, b, change, count);
	return trial.result;
}

/* A push of 3 kN along x, 1 kN along y and 0.5 kN up at [200, 100, 900] mm, once as a row of a
 * history (M = r x F about the mounting point at the origin: Mx = 100*500 - 900*1000 N mm, My =
 * 900*3000 - 200*500, Mz = 200*1000 - 100*3000), once as a further load beside an arm without
 * reactions. */
Test(check_history, one_row_is_a_fixed_load)
{
	static const struct change further[] = {
		{"cell.parts", "[{mass: 1000 kg, at: [0 mm, 0 mm, 0 mm]}]"},
		{"arm.reactions.normal", "{vertical: 0 N, horizontal: 0 N, tilting: 0 N m, twisting: 0 N m}"},
		{"arm.reactions.emergency_stop",
	         "{vertical: 0 N, horizontal: 0 N, tilting: 0 N m, twisting: 0 N m}"},
		{"loads", "[{name: push, force: [3 kN, 1 kN, 0.5 kN], at: [200 mm, 100 mm], "
	                  "at_height: 900 mm, with: rest}]"}};
	struct trial other;
	struct arena arena;
	const struct result *rows =
		run(HISTORY_STILL, HISTORY_HEAD "0,3000,1000,500,-850,2600,-100\n", NULL, 0);
	arena_open(&arena, NULL, NULL);
	trial_open(&other, text_with(&arena, sample_lift, further, 4), NULL);
	cr_assert_eq(other.reading.status, DONE, "%s", reading_faults(&other.reading));
	for (size_t i = 0; i < 4; i++) {
		const struct anchor_result *one = &rows->anchor[i], *two = &other.result->anchor[i];
		expect_near(one->tension, two->tension, CLOSE * 1e4);
		expect_near(one->shear, two->shear, CLOSE * 1e4);
		for (size_t k = 0; k < 4; k++)
			expect_near(rows->spread[i][k], other.result->spread[i][k], CLOSE * 1e4);
	}
	cr_expect_gt(rows->anchor[0].tension, 100);
	trial_close(&trial);
	trial_close(&other);
	arena_close(&arena);
}

/* The worst row is told with its number and time; rows before and behind it do not matter. */
Test(check_history, tells_the_row)
{
	const struct result *result = run(
		HISTORY_STILL,
		HISTORY_HEAD
		"# comment\n0.25,0,0,0,0,500,0\n0.5,0,0,0,0,4000,0\n0.75,0,0,0,0,-300,0\n",
		NULL, 0);
	const struct load_case *c = result->anchor[0].tension_at.load_case;
	cr_assert(c);
	cr_expect_eq(c->row, 2);
	expect_near(c->time, 0.5, 0);
	cr_expect_str_eq(c->name, "emergency stop, b.csv, row 2 at 0.5 s");
	expect_near(c->fixed[0], 4e6, 1e-6);
	cr_expect(c->arm_load && c->arm_load->moment[1] > 3.9e6);
	trial_close(&trial);
}

/* Kept row, bed ratio and settlement give the state back bit for bit. */
Test(check_history, bit_equal_states)
{
	char text[8192] = HISTORY_HEAD;
	size_t length = strlen(text);
	for (int i = 0; i < 100; i++)
		length += (size_t)snprintf(text + length, sizeof text - length,
		                           "%d,%g,%g,%g,%g,%g,%g\n", i, 900 * sin(i), 700 * cos(2 * i),
		                           400 * sin(3 * i), 3e3 * sin(0.7 * i), 4e3 * cos(1.3 * i),
		                           200 * sin(5 * i));
	const struct result *result = run(HISTORY_STILL, text, NULL, 0);
	struct base base;
	cr_assert_eq(base_prepare(trial.reading.cell, &trial.reading.arena, &base), DONE);
	for (size_t i = 0; i < 4; i++) {
		const struct occurrence *at = &result->anchor[i].tension_at;
		double shear[MAX_ANCHORS];
		struct state state = {.load_case = at->load_case, .bed_ratio = at->bed_ratio,
		                      .heading = at->heading};
		memcpy(state.settle, at->settle, sizeof state.settle);
		load_at(at->load_case, at->heading, state.load);
		base_fill(&base, &state);
		expect_near(state.tension[i], result->anchor[i].tension, 0);
		cr_expect_lt(state.residual, 1e-9);
		const struct occurrence *sheared = &result->anchor[i].shear_at;
		shear_group_at(&base, sheared->load_case, sheared->heading, shear);
		expect_near(shear[i], result->anchor[i].shear, 0);
	}
	trial_close(&trial);
}

/* Tension in one row and shear in another do not add: 2 kN an anchor in shear (0.25 of 8 kN) and
 * the tension of a tilt; together no more than the larger of both. But in one row they do. */
Test(check_history, shear_is_that_of_the_row)
{
	static const char apart[] = HISTORY_HEAD "0,8000,0,0,0,0,0\n1,0,0,0,0,6000,0\n",
			  both[] = HISTORY_HEAD "0,8000,0,0,0,6000,0\n";
	double tension, shear, together;
	tension = history_judged(HISTORY_STILL, apart, "rating.tension", NULL)->finding.ratio;
	shear = history_judged(HISTORY_STILL, apart, "rating.shear", NULL)->finding.ratio;
	together = history_judged(HISTORY_STILL, apart, "rating.interaction", NULL)->finding.ratio;
	expect_near(shear, 0.25, 1e-12);
	cr_expect_gt(tension, 0.05);
	expect_near(together, fmax(tension, shear), 1e-12);
	together = history_judged(HISTORY_STILL, both, "rating.interaction", NULL)->finding.ratio;
	expect_near(together, tension + shear, 1e-9);
	cr_expect_not(history_result()->paired);
}

/* What `require` inverts: the largest of both as a pair, and it says so. */
Test(check_history, demands)
{
	const struct result *result =
		run(HISTORY_STILL, HISTORY_HEAD "0,8000,0,0,0,0,0\n1,0,0,0,0,6000,0\n", NULL, 0);
	double tension = 0, shear = 0;
	cr_assert_eq(result->demand_count, 8);          /* two histories, four anchors */
	for (size_t k = 0; k < result->demand_count; k++) {
		tension = fmax(tension, result->demands[k].tension);
		shear = fmax(shear, result->demands[k].shear);
	}
	double most = 0;
	for (size_t i = 0; i < 4; i++)
		most = fmax(most, result->anchor[i].tension);
	expect_near(tension, most, 0);
	expect_near(shear, 2000, 1e-9);
	cr_assert_gt(result->required.note_count, 0);
	cr_expect(strstr(result->required.notes[0], "different rows"));
	trial_close(&trial);
}

/* Anchors in lugs beyond the edge at x = -500 mm: nothing holds the base that tips about it but the
 * weight, 9806.65 N x 0.5 m at 0.6: M up to 2942 N m; where the masses are weighed, 0.9
 * against 1.25 x M in the stability run: 3530 N m. */
Test(check_history, overturning)
{
	static const char more[] = HISTORY_HEAD "0,0,0,0,0,-100,0\n1,0,0,0,0,-2950,0\n",
			  less[] = HISTORY_HEAD "0,0,0,0,0,-100,0\n1,0,0,0,0,-2935,0\n";
	static const char *const where[] = {
		"anchors.at", "{unit: mm, points: [[-600, -300], [-600, 300], [-601, 0]]}"};
	cr_expect(held_but_for_rows(history_judged(HISTORY_STILL, less, "base.stability", where[0],
	                                           where[1], "anchors.lug", "yes", NULL)));
	cr_expect_eq(history_judged(HISTORY_STILL, more, "base.stability", where[0], where[1],
	                            "anchors.lug", "yes", NULL)->finding.verdict, FAILS);
	for (int k = 0; k < 2; k++)
		cr_expect_eq(history_judged(HISTORY_STILL,
		                            k ? HISTORY_HEAD "0,0,0,0,0,-3540,0\n"
		                              : HISTORY_HEAD "0,0,0,0,0,-3520,0\n",
		                            "base.stability", where[0], where[1], "anchors.lug",
		                            "yes", "choices.masses_weighed", "yes",
		                            "choices.stabilising_weight", "0.9", NULL)
		                     ->finding.verdict,
		             k ? FAILS : UNPROVEN);
}

/* Data-sheet cases, a further load and two setups beside it: groups do not mix. */
Test(check_history, setups_and_further_loads)
{
	static const struct change change[] = {
		{"setups", "[{name: low}, {name: high, arm.mount: [0 mm, 0 mm, 1000 mm]}]"},
		{"loads", "[{name: lean, force: 250 N, direction: any, at_height: 1500 mm, with: "
	                  "emergency_stop}]"}};
	static const char rows[] = HISTORY_HEAD "0,2000,0,0,0,1000,0\n1,-500,300,0,0,-200,50\n";
	const struct result *result = run(HISTORY_STILL, rows, change, 2);
	const struct check_result *check = trial_check(&trial, "rating.tension");
	cr_assert(check->has_setup_ratio[0] && check->has_setup_ratio[1]);
	cr_expect_gt(check->setup_ratio[1], check->setup_ratio[0]);
	cr_expect_eq(result->cycles[0].count, 2);
	cr_expect_eq(result->cycles[1].count, 2);
	trial_close(&trial);
	/* raised by hand: 2 kN at 1 m more is 2 kN m more */
	static const char raised[] = HISTORY_HEAD
		"0,2000,0,0,0,3000,0\n1,-500,300,0,-300,-700,50\n";
	static const struct change high = {"arm.mount", "[0 mm, 0 mm, 1000 mm]"};
	result = run(HISTORY_STILL, rows, &high, 1);
	double tension = result->anchor[0].tension;
	trial_close(&trial);
	result = run(HISTORY_STILL, raised, NULL, 0);
	expect_near(result->anchor[0].tension, tension, CLOSE * 1e4);
	cr_expect_gt(tension, 100);
	trial_close(&trial);
}

/* --- pieces --- */

static size_t pieces_seen;

/* The last first, as threads may. */
static void backwards(void *user, const char *what, size_t count, piece_of_work *piece, void *job)
{
	(void)user;
	pieces_seen = count;
	cr_expect(*what);
	for (size_t i = count; i-- > 0;)
		piece(job, i);
}

/* A history long enough for several pieces gives the same digits in whatever order they are done,
 * and names the row by its number in the whole file. */
Test(check_history, pieces)
{
	enum { ROWS = 130000, PEAK = 98765 };
	size_t room = (size_t)ROWS * 80, length;
	char *text = malloc(room);
	const struct pieces pieces = {backwards, NULL};
	struct check_options options = {.pieces = &pieces};
	struct trial again;
	cr_assert(text);
	length = (size_t)snprintf(text, room, HISTORY_HEAD);
	for (int i = 1; i <= ROWS; i++)
		length += (size_t)snprintf(text + length, room - length,
		                           "%.3f,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f\n", i * 1e-3,
		                           100 * sin(i * 0.01), 100 * cos(i * 0.02), -50.0,
		                           2000 * sin(i * 0.013),
		                           (i == PEAK ? 9000 : 3000) * cos(i * 0.0), 10.0);
	const struct result *one = run(HISTORY_STILL, text, NULL, 0);
	history_trial_with(&again, HISTORY_STILL, text, NULL, 0, &options);
	cr_expect_gt(length, 4000000);
	cr_expect_eq(one->anchor[0].tension_at.load_case->row, PEAK);
	for (size_t i = 0; i < 4; i++) {
		expect_near(again.result->anchor[i].tension, one->anchor[i].tension, 0);
		expect_near(again.result->anchor[i].shear, one->anchor[i].shear, 0);
	}
	/* emergency stop first */
	cr_expect_eq(memcmp(one->cycles[0].list[0].anchor, again.result->cycles[0].list[0].anchor,
	                    4 * sizeof one->cycles[0].list[0].anchor[0]), 0);
	cr_expect_eq(again.result->states, one->states);
	trial_close(&trial);
	trial_close(&again);
	free(text);
}

/* --- load cycles --- */

/* Tensions of ASTM E1049-85 Fig. 6 (-2 1 -3 5 -1 3 -4 4 -2, from memory), shifted by 4: as a
 * repeating history it has the ranges 9 (-4 to 5), 7 (-3 to 4), 4 (-1 to 3) and 3 (-2 to 1). */
static const double astm[] = {2, 5, 1, 9, 3, 7, 0, 8, 2};
enum { ASTM = sizeof astm / sizeof astm[0] };

static struct arena arena;
static struct cell cell;
static struct setup_run setup;

static void open_count(struct cycle_count *count, size_t open_points)
{
	cell.anchors.count = 1;
	cell.arm.range_limit = (struct number){.given = {.origin = GIVEN}, .value = 3.5};
	cr_assert(cycle_count_open(count, &arena, &cell, 1, open_points));
}

static void close_count(struct cycle_count *count, struct cycle_source *out)
{
	static double extreme[1][2] = {{HUGE_VAL, -HUGE_VAL}};
	setup = (struct setup_run){.bed_ratio = {500}, .bed_ratio_count = 1,
	                           .cycle_extreme = extreme};
	*out = (struct cycle_source){0};
	cycle_count_close(count, &setup, -1, out);
}

Test(check_cycles, standard_example)
{
	struct cycle_count count;
	struct cycle_source out;
	arena_open(&arena, NULL, NULL);
	open_count(&count, 16);
	for (size_t i = 0; i < ASTM; i++)
		cycle_count_add(&count, 0, &astm[i]);
	close_count(&count, &out);
	cr_assert(out.counted);
	cr_expect_eq(out.anchor[0].count, 4);
	cr_expect_eq(out.anchor[0].above, 3);
	cr_expect_eq(out.anchor[0].noise, 0);
	expect_near(out.anchor[0].range, 9, 0);
	expect_near(out.anchor[0].mean, 4.5, 0);
	expect_near(out.anchor[0].bed_ratio, 500, 0);
	expect_near(setup.facts.cycle_highest[0], 9, 0);
	expect_near(setup.facts.cycle_lowest[0], 0, 0);
	arena_close(&arena);
}

/* Cut anywhere, the same cycles. */
Test(check_cycles, joined_pieces)
{
	arena_open(&arena, NULL, NULL);
	for (size_t cut = 0; cut <= ASTM; cut++)
		for (size_t other = cut; other <= ASTM; other++) {
			struct cycle_count count, piece[3];
			struct cycle_source out;
			open_count(&count, 32);
			for (int p = 0; p < 3; p++)
				open_count(&piece[p], 16);
			for (size_t i = 0; i < ASTM; i++)
				cycle_count_add(&piece[i < cut     ? 0
				                       : i < other ? 1
				                                   : 2],
				                0, &astm[i]);
			for (int p = 0; p < 3; p++)
				cycle_count_join(&count, &piece[p]);
			close_count(&count, &out);
			cr_expect(out.counted && out.anchor[0].count == 4 &&
			                  out.anchor[0].above == 3 &&
			                  fabs(out.anchor[0].range - 9) <= 0,
			          "cut at %zu and %zu", cut, other);
		}
	arena_close(&arena);
}

/* Ranges of 0.5 % are noise, of 2 % are not. */
Test(check_cycles, noise)
{
	static const double tension[] = {0, 1000, 995, 1000, 980, 1000, 995, 1000};
	struct cycle_count count;
	struct cycle_source out;
	arena_open(&arena, NULL, NULL);
	open_count(&count, 32);
	for (size_t i = 0; i < sizeof tension / sizeof *tension; i++)
		cycle_count_add(&count, 0, &tension[i]);
	close_count(&count, &out);
	cr_expect_eq(out.anchor[0].count, 2);
	cr_expect_eq(out.anchor[0].noise, 2);
	arena_close(&arena);
}

/* A widening and narrowing history keeps all its turning points open: memory runs out, and no
 * number is told. The same for a tension that is not known. */
Test(check_cycles, never_silent)
{
	struct cycle_count count;
	struct cycle_source out;
	arena_open(&arena, NULL, NULL);
	open_count(&count, 16);
	for (int i = 0; i < 100; i++) {
		double tension = 1000 + (i % 2 ? 1 : -1) * (i < 50 ? i : 100 - i);
		cycle_count_add(&count, 0, &tension);
	}
	close_count(&count, &out);
	cr_expect_not(out.counted);
	open_count(&count, 16);
	cycle_count_add(&count, 0, astm);
	cycle_count_add(&count, 0, NULL);
	close_count(&count, &out);
	cr_expect_not(out.counted);
	arena_close(&arena);
}

/* A working cycle by chain has the cycles of the history of its own wrenches. */
Test(check_cycles, working_cycle_is_a_history)
{
	static const struct change chain[] = {
		{"arm.reactions", NULL},
		{"arm.weight", "{arm: 50 kg, payload: 10 kg}"},
		{"arm.mount", "[0 mm, 0 mm, 600 mm]"},
		{"arm.chain",
	         "{payload: {centre: [0 mm, 0 mm, 100 mm], inertia: {xx: 0 kg m2, yy: 0 kg m2, zz: 0 kg m2}}, convention: standard_dh, fixed_mass: 10 kg, joints: [{a: 0 mm, alpha: 90 deg, d: 400 "
	         "mm, mass: 20 kg, centre: [0 mm, -100 mm, 0 mm], inertia: {xx: 0.3 kg m2, yy: 0.3 kg "
	         "m2, zz: 0.3 kg m2}}, {a: 900 mm, alpha: 0 deg, d: 0 mm, mass: 20 kg, centre: [-400 "
	         "mm, 0 mm, 0 mm], inertia: {xx: 0.1 kg m2, yy: 1 kg m2, zz: 1 kg m2}}]}"},
		{"arm.motion",
	         "{joints: [{from: -170 deg, to: 170 deg, speed: 180 deg/s, acceleration: 500 deg/s2, "
	         "stop: 900 deg/s2}, {from: -40 deg, to: 90 deg, speed: 180 deg/s, acceleration: 500 "
	         "deg/s2, stop: 900 deg/s2}], poses: 5, cycles_a_year: 1000, cycle: [{at: 0 s, angles: "
	         "[0 deg, 0 deg]}, {at: 0.6 s, angles: [110 deg, 60 deg]}, "
	         "{at: 1.5 s, angles: [0 deg, 0 deg]}]}"}};
	static const struct change mount[] = {{"arm.mount", "[0 mm, 0 mm, 600 mm]"}};
	struct trial other;
	arena_open(&arena, NULL, NULL);
	trial_open(&other, text_with(&arena, sample_lift, chain, 5), NULL);
	cr_assert_eq(other.reading.status, DONE, "%s", reading_faults(&other.reading));
	size_t instants = arm_cycle_instants(other.reading.cell), room = instants * 200 + 100;
	char *csv = arena_take(&arena, room, 1);
	cr_assert(csv && instants > 100);
	size_t length = (size_t)snprintf(csv, room, HISTORY_HEAD);
	for (size_t i = 0; i < instants; i++) {
		struct arm_load load;
		double t;
		arm_cycle_wrench(other.reading.cell, i, &t, &load);
		length += (size_t)snprintf(
			csv + length, room - length, "%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g\n",
			t, load.force[0], load.force[1], load.force[2], load.moment[0] / 1000,
			load.moment[1] / 1000, load.moment[2] / 1000);
	}
	/* without the 1000 kg of the history's cell */
	static const struct change parts = {"cell.parts", "none"};
	history_trial_open(&trial, HISTORY_STILL, csv,
	                   (const struct change[]){mount[0], parts}, 2);
	cr_assert_eq(other.result->cycles[0].count, 1);
	const struct cycle_source *one = &other.result->cycles[0].list[0],
				  *two = &trial.result->cycles[0].list[0];
	cr_expect_str_eq(one->name, "working cycle");
	cr_assert(one->counted && two->counted);
	for (size_t i = 0; i < 4; i++) {
		cr_expect_gt(one->anchor[i].range, 10);
		expect_near(one->anchor[i].range, two->anchor[i].range, 1e-6);
		expect_near(one->anchor[i].mean, two->anchor[i].mean, 1e-6);
		cr_expect_eq(one->anchor[i].count, two->anchor[i].count);
	}
	cr_expect(trial_check(&other, "anchor.fatigue") != NULL);
	trial_close(&trial);
	trial_close(&other);
	/* what cannot be worked out is no cycle without tension */
	const struct change unknown = {"arm.chain.joints[2].mass", "unknown"};
	const char *text = text_with(&arena, sample_lift, chain, 5);
	trial_open(&other, text_with(&arena, text, &unknown, 1), NULL);
	cr_assert_eq(other.reading.status, DONE, "%s", reading_faults(&other.reading));
	const struct check_result *check = trial_check(&other, "anchor.fatigue");
	cr_expect_eq(check->finding.verdict, UNPROVEN);
	trial_close(&other);
	arena_close(&arena);
}

/* --- memory --- */

static long allowed;

static void *counted_allocate(void *user, void *old, size_t size)
{
	(void)user;
	if (size > 0 && allowed-- <= 0)
		return NULL;
	if (size == 0) {
		free(old);
		return NULL;
	}
	return realloc(old, size);
}

/* Whichever block is refused, the run ends with NO_MEMORY and no result. */
Test(check_history, no_memory)
{
	const struct result *whole =
		run(HISTORY_STILL, HISTORY_HEAD "0,1,0,0,0,6000,0\n1,0,0,0,0,10,0\n", NULL, 0);
	const struct cell *read = trial.reading.cell;
	struct history_file file[] = {{"a.csv", HISTORY_STILL, strlen(HISTORY_STILL), 1, ""},
	                              {"b.csv", HISTORY_HEAD "0,1,0,0,0,6000,0\n",
	                               strlen(HISTORY_HEAD "0,1,0,0,0,6000,0\n"), 2, ""}};
	const struct history_files files = {file, 2};
	const struct check_options options = {.histories = &files};
	long tries = 0;
	enum status status = NO_MEMORY;
	cr_assert(whole);
	for (; status != DONE && tries < 1000; tries++) {
		struct arena small;
		struct result *result = NULL;
		allowed = tries;
		arena_open(&small, counted_allocate, NULL);
		status = check_run(&small, read, &options, &result);
		cr_expect(status == DONE ? result != NULL : status == NO_MEMORY && !result,
		          "block %ld: status %d", tries, (int)status);
		arena_close(&small);
	}
	cr_expect(tries > 3 && tries < 1000);
	trial_close(&trial);
}
