/* The cell before it is anchored: hand solutions, every pose of the arm by brute force, what is not
 * known, and the member of the page. g0 = 9.80665 m/s2. */
#include "../../src/check_unanchored.h"
#include "../../src/loads/standing.h"
#include "../../src/pages/pages.h"
#include "../support/cell_text.h"
#include "../support/printed.h"
#include "../support/random_base.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Base 1000 x 600 mm. With payload 350 kg; shoulder half the payload's reach above the face, at
 * 1500 mm, the centre with the arm in it (300*500 + 50*1500)/350 = 642.8571 mm up; the pose moves
 * it by (40*500 + 10*1000)/350 = 85.7143 mm. */
#define FRAME "{name: frame, mass: 300 kg, at: [0 mm, 0 mm, 500 mm]}"
static const char cell_text[] =
	"standfast: 1\n"
	"cell:\n"
	"  parts: [" FRAME "]\n"
	"  base: [{outline: {unit: mm, points: [[-500, -300], [500, -300], [500, 300], [-500, 300]]}}]\n"
	"  top: 1.8 m\n"
	"arm:\n"
	"  mount: [0 mm, 0 mm, 1000 mm]\n"
	"  weight: {arm: 40 kg, payload: 10 kg, reach: {arm: 500 mm, payload: 1000 mm}}\n"
	"anchors: {at: {unit: mm, points: [[-400, -250], [400, -250], [400, 250], [-400, 250]]}}\n";
#define CASTERS \
	"[{at: [-400 mm, -250 mm], trail: 35 mm}, {at: [400 mm, -250 mm], trail: 35 mm}," \
	" {at: [400 mm, 250 mm], trail: 35 mm}, {at: [-400 mm, 250 mm], trail: 35 mm}]"

static const double degree = 0.017453292519943295;

struct free_cell { struct arena texts; struct reading reading; struct result result; };

static void find(struct free_cell *free_cell, bool trace)
{
	struct check_options options = {.trace = trace};
	const struct run run = {.arena = &free_cell->reading.arena,
	                        .cell = free_cell->reading.cell, .options = &options};
	free_cell->result = (struct result){.cell = free_cell->reading.cell};
	find_unanchored(&run, &free_cell->result);
}

static void free_open(struct free_cell *free_cell, const struct change *change, size_t count,
                      bool trace)
{
	arena_open(&free_cell->texts, NULL, NULL);
	reading_open(&free_cell->reading, text_with(&free_cell->texts, cell_text, change, count));
	cr_assert_eq(free_cell->reading.status, DONE, "%s", reading_faults(&free_cell->reading));
	find(free_cell, trace);
}

static void free_close(struct free_cell *free_cell)
{
	reading_close(&free_cell->reading);
	arena_close(&free_cell->texts);
}

/* Least tilt over every pose of an arm whose whole centre may move by rho, in steps of 0.01
 * degrees. */
static double tilt_over_poses(double distance, double height, double rho)
{
	double least = HUGE_VAL;
	for (int i = -9000; i <= 9000; i++) {
		double pose = i * 0.01 * degree;
		least = fmin(least, atan2(distance - rho * cos(pose), height + rho * sin(pose)));
	}
	return least;
}

/* Push: g0 (350*300 - 30000)/1800 = 408.6104 N with payload; without it 446.7 N. Tilt: the line of
 * sight from (300, 642.8571) touches the circle of 85.7143: 25.0169 - 6.9397 = 18.077 degrees. */
Test(check_unanchored, by_hand)
{
	struct free_cell f;
	free_open(&f, NULL, 0, false);
	const struct unanchored *u = &f.result.unanchored;
	cr_assert(u->told && u->on_base.computed && u->on_base.stands);
	expect_near(u->on_base.push, 9.80665 * (350 * 300 - 30000) / 1800, 1e-9);
	expect_near(u->on_base.tilt / degree, 18.077, 0.001);
	/* a step of 0.01 degrees beside the minimum is off by its square */
	expect_near(u->on_base.tilt, tilt_over_poses(300, 225000.0 / 350, 30000.0 / 350), 1e-8);
	expect_near(fabs(sin(u->on_base.toward)), 1, 1e-12);
	cr_expect(u->on_base.withstands_ten_degrees);
	expect_near(u->on_base.push_height, 1800, 0);
	cr_expect_not(u->on_base.push_height_assumed);
	cr_expect_not(u->on_casters.computed);
	cr_expect_not(u->at_most);
	cr_expect_eq(u->missing_count, 0);
	free_close(&f);
}

/* Swivelled inward, each caster takes its trail: 215 mm instead of 300. Push:
 * g0 (350*215 - 30000)/1800. */
Test(check_unanchored, on_casters)
{
	struct change casters[] = {{"cell.casters", CASTERS}};
	struct free_cell f;
	free_open(&f, casters, 1, false);
	const struct free_support *s = &f.result.unanchored.on_casters;
	cr_assert(s->computed && s->stands);
	expect_near(s->push, 9.80665 * (350 * 215 - 30000) / 1800, 1e-9);
	expect_near(s->tilt, tilt_over_poses(215, 225000.0 / 350, 30000.0 / 350), 1e-8);
	/* the reader asks for every trail; one that is not known is none all the same */
	((struct caster *)f.reading.cell->casters.rows)[1].trail.given.origin = ABSENT;
	find(&f, false);
	cr_expect_not(f.result.unanchored.on_casters.computed);
	cr_expect(f.result.unanchored.on_base.computed);
	cr_expect_eq(f.result.unanchored.missing_count, 1);
	cr_expect_str_eq(f.result.unanchored.missing[0], "cell.casters[].trail");
	free_close(&f);
	casters[0].value = "none";
	free_open(&f, casters, 1, false);
	cr_expect_not(f.result.unanchored.on_casters.computed);
	cr_expect_eq(f.result.unanchored.missing_count, 0);
	free_close(&f);
}

/* The worse of the least mass (less to push) and the full one (higher up). */
Test(check_unanchored, least_and_full_masses)
{
	struct change low = {"cell.parts[1].least_mass", "100 kg"};
	struct free_cell f;
	free_open(&f, &low, 1, false);
	expect_near(f.result.unanchored.on_base.push, 9.80665 * (150 * 300 - 30000) / 1800, 1e-9);
	expect_near(f.result.unanchored.on_base.tilt,
	            tilt_over_poses(300, 125000.0 / 150, 30000.0 / 150), 1e-8);
	free_close(&f);
	/* a magazine at the top that may be empty: full it tips at less tilt */
	struct change top[] = {
		{"cell.parts", "[" FRAME ", {name: magazine, mass: 200 kg, least_mass: 0 kg,"
	                       " at: [0 mm, 0 mm, 1700 mm]}]"}};
	free_open(&f, top, 1, false);
	expect_near(f.result.unanchored.on_base.tilt,
	            tilt_over_poses(300, (225000.0 + 340000) / 550, 30000.0 / 550), 1e-8);
	expect_near(f.result.unanchored.on_base.push, 9.80665 * (350 * 300 - 30000) / 1800, 1e-9);
	free_close(&f);
}

/* Box from -100 to 100 in x and y, 0 to 1000 mm high: its mass at y 100 mm and 1000 mm up. */
Test(check_unanchored, boxed_parts)
{
	struct change change[] = {
		{"cell.parts[1].at", NULL},
		{"cell.parts[1].box",
	         "{from: [-100 mm, -100 mm, 0 mm], to: [100 mm, 100 mm, 1000 mm]}"}};
	struct free_cell f;
	free_open(&f, change, 2, false);
	double d = 300 - 300 * 100.0 / 350;
	expect_near(f.result.unanchored.on_base.push,
	            9.80665 * (350 * d - 30000) / 1800, 1e-9);
	expect_near(f.result.unanchored.on_base.tilt,
	            tilt_over_poses(d, 375000.0 / 350, 30000.0 / 350), 1e-8);
	free_close(&f);
}

/* A long arm on a light, narrow cell falls by itself. */
Test(check_unanchored, falls_by_itself)
{
	struct change change[] = {{"cell.parts[1].mass", "20 kg"},
	                          {"arm.weight.reach.arm", "700 mm"}};
	struct free_cell f;
	free_open(&f, change, 2, false);
	const struct unanchored *u = &f.result.unanchored;
	cr_expect_not(u->on_base.stands);
	expect_near(u->on_base.tilt, 0, 0);
	expect_near(u->on_base.push, 0, 0);
	cr_expect_not(u->on_base.withstands_ten_degrees);
	cr_expect(strstr(u->words.list[1], "falls over by itself"), "%s", u->words.list[1]);
	free_close(&f);
}

static void expect_missing(const char *path, const char *value, const char *wanted)
{
	struct change change = {path, value};
	struct free_cell f;
	bool found = false;
	free_open(&f, &change, 1, false);
	const struct unanchored *u = &f.result.unanchored;
	for (size_t i = 0; i < u->missing_count; i++)
		found |= strcmp(u->missing[i], wanted) == 0;
	cr_expect(found, "%s", wanted);
	cr_expect_not(u->on_base.computed, "%s", wanted);
	cr_expect(strstr(u->words.list[0], "must not run"), "%s", u->words.list[0]);
	free_close(&f);
}

Test(check_unanchored, says_what_is_not_known)
{
	expect_missing("cell.parts[1].mass", "unknown", "cell.parts[].mass");
	expect_missing("cell.parts[1].at", NULL, "cell.parts[].at");
	expect_missing("cell.parts", NULL, "cell.parts");
	expect_missing("cell.base", "unknown", "cell.base");
	expect_missing("arm.mount", "unknown", "arm.mount");
	expect_missing("arm.weight.arm", "", "arm.weight.arm");
	expect_missing("arm.weight.payload", NULL, "arm.weight.payload");
}

/* Without a reach the figures are at most: those of an arm at its axis. */
Test(check_unanchored, without_a_reach)
{
	struct change change = {"arm.weight.reach", NULL};
	struct free_cell f;
	free_open(&f, &change, 1, false);
	const struct unanchored *u = &f.result.unanchored;
	cr_expect(u->at_most);
	/* the payload high up tips sooner, the lack of its weight is pushed over sooner */
	expect_near(u->on_base.tilt, atan(300 / (200000.0 / 350)), 1e-12);
	expect_near(u->on_base.push, 9.80665 * 340 * 300 / 1800, 1e-9);
	bool said = false;
	for (size_t i = 0; i < u->words.count; i++)
		said |= strstr(u->words.list[i], "reach is not known") != NULL;
	cr_expect(said);
	free_close(&f);
}

Test(check_unanchored, assumes_a_height_and_says_so)
{
	struct change change = {"cell.top", NULL};
	struct free_cell f;
	free_open(&f, &change, 1, false);
	const struct free_support *s = &f.result.unanchored.on_base;
	cr_expect(s->push_height_assumed);
	expect_near(s->push, 9.80665 * (350 * 300 - 30000) / 1500, 1e-9);
	cr_expect_str_eq(f.result.unanchored.words.list[1],
	                 "on its base it tips at a floor tilt of 18 deg, or by a push of 0.49 kN "
	                 "at 1500 mm (assumed, cell.top is not known)");
	free_close(&f);
}

/* The worst of all setups, and in which. */
Test(check_unanchored, worst_setup)
{
	struct change change = {
		"setups", "[{name: low, arm.mount: [0 mm, 0 mm, 600 mm]},"
		          " {name: high, arm.mount: [0 mm, 0 mm, 1400 mm]}]"};
	struct free_cell f;
	free_open(&f, &change, 1, false);
	const struct unanchored *u = &f.result.unanchored;
	cr_expect_eq(u->on_base.setup, 1);
	expect_near(u->on_base.tilt, tilt_over_poses(300, 245000.0 / 350, 30000.0 / 350), 1e-8);
	cr_expect(strstr(u->words.list[1], "(setup 'high')"), "%s", u->words.list[1]);
	free_close(&f);
}

/* No pose in space, no state of the masses and no corner of a box tips sooner, and some comes near:
 * the closed form against points on the sphere. */
Test(check_unanchored, no_pose_tips_sooner)
{
	struct change change[2] = {
		{"cell.parts", "[" FRAME ", {name: rack, mass: 120 kg, least_mass: 20 kg, box: "
	                       "{from: [-300 mm, -200 mm, 0 mm], to: [100 mm, 150 mm, 1200 mm]}}]"},
		{"arm.mount", NULL}};
	for (uint64_t number = 0; number < 20; number++) {
		struct dice dice = dice_open(5, number);
		struct free_cell f;
		char mount[80];
		snprintf(mount, sizeof mount, "[%d mm, %d mm, %d mm]", dice_whole(&dice, -150, 150),
		         dice_whole(&dice, -100, 100), dice_whole(&dice, 300, 1500));
		change[1].value = mount;
		free_open(&f, change, 2, false);
		const struct free_support *s = &f.result.unanchored.on_base;
		const double half[2] = {500, 300};
		double tilt = HUGE_VAL, push = HUGE_VAL;
		for (int i = 0; i < 20000; i++) {
			struct standing m = standing_mass(
				f.reading.cell,
				(struct standing_state){i & 1, i & 2, i >> 2 & 3});
			double up = dice_between(&dice, -1, 1);
			double turn = dice_between(&dice, 0, 6.2832), level = sqrt(1 - up * up);
			double c[3] = {level * cos(turn), level * sin(turn), up};
			for (int k = 0; k < 3; k++)
				c[k] = (m.first[k] + m.reach_moment * c[k]) / m.mass;
			for (int k = 0; k < 2; k++) {
				double d = half[k] - fabs(c[k]);
				tilt = fmin(tilt, atan2(d, c[2]));
				push = fmin(push, m.mass * STANDARD_GRAVITY * d / 1800);
			}
		}
		cr_assert(s->stands);
		cr_expect_leq(s->tilt, tilt + 1e-12);
		cr_expect_leq(s->push, push + 1e-9);
		cr_expect_geq(s->tilt, 0.97 * tilt);
		cr_expect_geq(s->push, 0.95 * push);
		free_close(&f);
	}
}

/* --- written calculation and page ------------------------------------------------------------- */

Test(check_unanchored, written_calculation)
{
	struct change casters = {"cell.casters", CASTERS};
	struct free_cell f;
	free_open(&f, &casters, 1, true);
	const struct free_support *support[] = {&f.result.unanchored.on_base,
	                                        &f.result.unanchored.on_casters};
	for (int i = 0; i < 2; i++) {
		cr_expect_geq(traced_expressions(&support[i]->tilt_trace, "tilt"), 3);
		cr_expect_geq(traced_expressions(&support[i]->push_trace, "push"), 3);
		cr_expect_eq(traced_value(&support[i]->tilt_trace, "tilt"), support[i]->tilt);
		cr_expect_eq(traced_value(&support[i]->push_trace, "F_tip"), support[i]->push);
	}
	free_close(&f);
}

static void expect_in(const char *page, const char *wanted)
{
	cr_expect(strstr(page, wanted), "no %s in\n%s", wanted, page);
}

Test(check_unanchored, stands_on_the_pages)
{
	static const struct page_options plain = {.colour = false};
	struct change casters = {"cell.casters", CASTERS};
	struct printed out = {0}, text = {0};
	struct free_cell f;
	free_open(&f, &casters, 1, false);
	cr_assert(page_json(&f.result, &plain, printed_write, &out));
	expect_in(out.text, "\"unanchored\":{\"on_base\":{\"stands\":true,\"tilt_deg\":18.07");
	expect_in(out.text, "\"withstands_10_deg\":true,\"toward_deg\":");
	expect_in(out.text, "\"push_height_mm\":1800,\"push_height_assumed\":false,");
	expect_in(out.text, "\"at_most\":false,\"missing\":[],\"words\":[\"the arm must not run");
	cr_assert(page_text(&f.result, &plain, printed_write, &text));
	expect_in(text.text, "Before it is anchored");
	expect_in(text.text, "push of 0.4 kN at 1800 mm");
	printed_free(&text);
	printed_free(&out);
	free_close(&f);
}

/* Papers' needs alone: nothing is known of what stands there, and nothing is said. */
Test(check_unanchored, nothing_without_a_load_model)
{
	struct change change[] = {{"cell", NULL}, {"arm", NULL}};
	static const struct page_options plain = {.colour = false};
	struct printed out = {0};
	struct free_cell f;
	free_open(&f, change, 2, false);
	cr_expect_not(f.result.unanchored.told);
	cr_expect_eq(f.result.unanchored.words.count, 0);
	cr_assert(page_json(&f.result, &plain, printed_write, &out));
	expect_in(out.text, "\"unanchored\":null");
	printed_free(&out);
	free_close(&f);
}

/* A cell without any mass has no tilt, and says why. */
Test(check_unanchored, without_any_weight)
{
	struct change change[] = {
		{"cell.parts", "none"}, {"arm.weight.arm", "0 kg"}, {"arm.weight.payload", "0 kg"}};
	struct free_cell f;
	free_open(&f, change, 3, false);
	const struct unanchored *u = &f.result.unanchored;
	cr_expect_not(u->on_base.computed);
	cr_expect_eq(u->missing_count, 0);
	cr_expect(strstr(u->words.list[1], "nothing that weighs"), "%s", u->words.list[1]);
	free_close(&f);
}
