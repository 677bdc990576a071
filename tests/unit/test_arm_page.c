/* Pages of the arm's reactions, on results made by hand: what every page must say, the block that
 * is pasted into a cell file, JSON and CSV as any reader takes them. */
#include "../../src/loads/arm_wrench.h"
#include "../../src/pages/arm_parts.h"
#include "../../src/pages/pages.h"
#include "../support/cell_text.h"
#include "../support/printed.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define NAME "a \"quoted\" pedestal, high"

/* Two setups of one cell: a chain with a bound and the lumped arm in the first, the same chain in
 * the second. Must not be copied. */
struct made_arm {
	struct cell cell, setup_cell[2];
	struct setup setups[2];
	struct chain_joint joints[3];
	struct reaction_at at;
	struct arm_source sources[3];
	struct arm_loads loads[2];
	struct result result;
};

static void made_extremes(struct arm_source *source, const struct reaction_at *at, double grow)
{
	static const double values[REACTION_KINDS] = {
		[REACTION_TILTING] = 812345.6, [REACTION_HORIZONTAL] = 1012.3,
		[REACTION_UPLIFT] = 123.4,     [REACTION_DOWNFORCE] = 1400.2,
		[REACTION_TWISTING] = 412000};
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		source->extreme[kind] = (struct arm_extreme){
			.value = values[kind],
			.bound = grow > 0 ? grow * values[kind] : HUGE_VAL,
			.load = {.force = {600, 800, -700}, .moment = {-5e5, 6e5, 4e5}, .spin_to = 1},
			.at = at};
}

static void make_setups(struct made_arm *made, struct given given)
{
	for (int s = 0; s < 2; s++) {
		made->setup_cell[s] = made->cell;
		made->setups[s].name = (struct text){given, s ? NAME : "low pedestal"};
		made->setups[s].cell = &made->setup_cell[s];
	}
	made->cell.setups = (struct list){given, made->setups, 2};
}

static void make_arm(struct made_arm *made)
{
	struct given given = {{0, 1, 1, 1}, GIVEN};
	*made = (struct made_arm){0};
	made->joints[2].kind = (struct word){given, PRISMATIC};
	made->cell.arm.chain.joints = (struct list){given, made->joints, 3};
	made->cell.arm.mass = (struct number){given, 41, NULL};
	made->cell.arm.payload = (struct number){given, 12, NULL};
	made->cell.arm.reaction[ARM_EMERGENCY_STOP].vertical = (struct number){given, 2e3, NULL};
	make_setups(made, given);
	made->at = (struct reaction_at){.q = {0.5, -1, 0.25}, .speed = {2, -2, 1}};
	made->sources[0] = (struct arm_source){.way = WAY_CHAIN, .arm_case = ARM_EMERGENCY_STOP,
	                                       .name = "emergency stop, chain", .poses = 7, .joints = 3};
	made->sources[1] = (struct arm_source){
		.way = WAY_SWING, .arm_case = ARM_EMERGENCY_STOP, .name = "emergency stop, swing"};
	made_extremes(&made->sources[0], &made->at, 1.25);
	made_extremes(&made->sources[1], NULL, 0);
	made->sources[2] = made->sources[0];
	made->loads[0] = (struct arm_loads){made->sources, 2, 41 * STANDARD_GRAVITY};
	made->loads[1] = (struct arm_loads){made->sources + 2, 1, 41 * STANDARD_GRAVITY};
	made->result = (struct result){.cell = &made->cell, .file = "a.yaml", .sha256 = "",
	                               .arm = {&made->loads[0], &made->loads[1]}};
}

static void text_of(const struct made_arm *made, struct printed *out)
{
	const struct page_options plain = {.colour = false};
	cr_assert(page_arm_text(&made->result, &plain, printed_write, out));
}

Test(arm_page, fits_the_page_and_says_what_every_page_must)
{
	struct made_arm made;
	struct printed out = {0};
	make_arm(&made);
	text_of(&made, &out);
	cr_expect_leq(printed_width(out.text), PAGE_WIDTH);
	cr_expect_not(printed_trails(out.text));
	cr_expect(strstr(out.text, "licensed engineer"));
	cr_expect(strstr(out.text, "local codes"));
	cr_expect(strstr(out.text, "ESTIMATE emergency stop, swing"), "%s", out.text);
	cr_expect(strstr(out.text, "# ESTIMATE"), "the block carries its mark with it");
	printed_free(&out);
}

Test(arm_page, shows_value_bound_companions_and_joints)
{
	struct made_arm made;
	struct printed out = {0};
	make_arm(&made);
	text_of(&made, &out);
	/* values up to the last place: 812.3456 N m reads 0.813 kN m */
	cr_expect(strstr(out.text,
	                 "  tilting moment    kN m       0.813     1.016    0.600    0.800   -0.700"
	                 "   -0.500    0.600    0.400\n"),
	          "%s", out.text);
	/* 0.5 rad, -1 rad, and 0.25 m of the sliding joint */
	cr_expect(strstr(out.text, "position               28.6    -57.3    250.0\n"), "%s",
	          out.text);
	cr_expect(strstr(out.text, "speed                 114.6   -114.6   1000.0\n"), "%s",
	          out.text);
	printed_free(&out);
}

/* An arm that always presses has a least downforce, and its bound is the smaller one. */
Test(arm_page, turns_an_uplift_below_0_into_a_least_downforce)
{
	struct made_arm made;
	struct printed out = {0};
	make_arm(&made);
	made.sources[0].extreme[REACTION_UPLIFT].value = -400.7;
	made.sources[0].extreme[REACTION_UPLIFT].bound = 10.2;
	text_of(&made, &out);
	cr_expect(strstr(out.text, "  least downforce   kN         0.400    -0.011"), "%s",
	          out.text);
	printed_free(&out);
}

Test(arm_page, prints_setups_with_the_same_reactions_once)
{
	struct made_arm made;
	struct printed out = {0};
	make_arm(&made);
	made.result.arm[1] = &made.loads[0];
	text_of(&made, &out);
	cr_expect(strstr(out.text, "the same reactions on its mounting face as low pedestal"));
	cr_expect_null(strstr(strstr(out.text, "the same reactions"), "reactions:\n"));
	printed_free(&out);
}

/* --- the block --- */

/* What a reader pastes: from the line "  reactions:" to the empty one, into `to`. */
static const char *block_of(const char *page, char *to, size_t room)
{
	const char *from = strstr(page, "\n  reactions:\n");
	cr_assert(from, "%s", page);
	const char *end = strstr(from + 1, "\n\n");
	cr_assert(end && (size_t)(end - from) < room);
	memcpy(to, from + 1, (size_t)(end - from));
	to[end - from] = 0;
	return to;
}

#define AROUND_BEFORE \
	"standfast: 1\n" \
	"cell:\n" \
	"  parts: none\n" \
	"  base: [{name: plate, outline: {unit: mm, points: [[-500, -500], [500, -500], [500, 500]," \
	" [-500, 500]]}}]\n" \
	"  stand_off: none\n" \
	"anchors:\n" \
	"  at: {unit: mm, points: [[-400, -400], [400, -400], [400, 400], [-400, 400]]}\n" \
	"arm:\n" \
	"  mount: [0 mm, 0 mm, 400 mm]\n" \
	"  weight: {arm: 41 kg, payload: 12 kg, reach: {arm: 300 mm, payload: 900 mm}}\n"

static void expect_reads_back(const struct made_arm *made, enum unit_system units)
{
	static char yaml[8000], block[4000];
	struct printed out = {0};
	struct trial trial;
	struct arm_paste paste;
	text_of(made, &out);
	snprintf(yaml, sizeof yaml, "%s%s", AROUND_BEFORE, block_of(out.text, block, sizeof block));
	trial_open(&trial, yaml, NULL);
	cr_assert_eq(trial.reading.status, DONE, "%s\n%s", reading_faults(&trial.reading), yaml);
	cr_assert(trial.result && trial.result->loads_computed);
	arm_paste(made->result.cell, &made->loads[0], WAY_CHAIN, &paste);
	const struct reaction *read = &trial.reading.cell->arm.reaction[ARM_EMERGENCY_STOP];
	const double values[] = {read->vertical.value, read->horizontal.value, read->tilting.value,
	                         read->twisting.value};
	for (int i = 0; i < PASTE_VALUES; i++) {
		double meant = paste.of[ARM_EMERGENCY_STOP].value[i].value;
		/* never below, and above by no more than a unit of the fourth digit */
		cr_expect(values[i] >= meant * (1 - 1e-12) && values[i] <= meant * 1.001,
		          "%s: %.17g pasted, %.17g meant, units %d", arm_paste_key(i), values[i], meant,
		          (int)units);
	}
	trial_close(&trial);
	printed_free(&out);
}

Test(arm_page, gives_a_block_that_reads_back)
{
	struct made_arm made;
	make_arm(&made);
	expect_reads_back(&made, UNITS_METRIC);
	made.cell.show = (struct word){{{0, 1, 1, 1}, GIVEN}, UNITS_US};
	expect_reads_back(&made, UNITS_US);
}

/* What the reader makes of the pasted vertical force reaches both extremes of the arm. */
Test(arm_page, pastes_a_vertical_force_that_is_safe_both_ways)
{
	static const double lifts[] = {-500, -402, -100, 0, 300};
	static const double presses[] = {402, 520, 700, 1500};
	const struct weight_reading with = {false, false};
	for (size_t i = 0; i < 5; i++)
		for (size_t k = 0; k < 4; k++) {
			struct made_arm made;
			struct arm_paste paste;
			make_arm(&made);
			struct arm_extreme *kinds = made.sources[1].extreme;
			kinds[REACTION_UPLIFT].value = lifts[i];
			kinds[REACTION_DOWNFORCE].value = presses[k];
			arm_paste(&made.cell, &made.loads[0], WAY_SWING, &paste);
			struct number *given = &made.cell.arm.reaction[ARM_EMERGENCY_STOP].vertical;
			given->value = paste.of[ARM_EMERGENCY_STOP].value[PASTE_VERTICAL].value;
			const struct load_case low = {.run = RUN_FULL, .vertical = VERTICAL_LEAST},
				high = {.run = RUN_FULL, .vertical = VERTICAL_MOST};
			struct wrench least = arm_wrench(&made.cell, ARM_EMERGENCY_STOP, &low, with,
			                                 NULL);
			struct wrench most = arm_wrench(&made.cell, ARM_EMERGENCY_STOP, &high, with,
			                                NULL);
			cr_expect_leq(least.down, -lifts[i] + 1e-9);
			cr_expect_geq(most.down, presses[k] - 1e-9);
			cr_expect(arm_vertical_can_include(&made.cell, ARM_EMERGENCY_STOP));
		}
}

Test(arm_page, pastes_no_vertical_force_without_the_arms_weight)
{
	struct made_arm made;
	struct printed out = {0};
	char block[4000];
	make_arm(&made);
	made.loads[0].weight = 0;
	text_of(&made, &out);
	block_of(out.text, block, sizeof block);
	cr_expect(strstr(block, "vertical:                   # not known without arm.weight.arm"),
	          "%s", block);
	printed_free(&out);
}

Test(arm_page, rounds_up_what_is_pasted)
{
	static const struct { double value; const char *text; } cases[] = {
		{1234.5, "1.235 kN"}, {1234, "1.234 kN"}, {1.00001, "0.001001 kN"}, {0, "0 kN"},
		{99999, "100 kN"},    {-5, "0 kN"},       {1100, "1.1 kN"}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		cr_expect_str_eq(arm_paste_up(cases[i].value, DIM_FORCE, UNITS_METRIC).text,
		                 cases[i].text);
}

/* A stopping time without a peak factor: the deceleration may be larger than what was computed. */
Test(arm_page, guarantees_nothing_without_a_peak_factor)
{
	static const char *const peaks[] = {NULL, "2"};
	for (int known = 0; known < 2; known++) {
		struct reading reading;
		struct made_arm made;
		struct arena arena;
		struct printed json = {0}, text = {0};
		arena_open(&arena, NULL, NULL);
		const struct change changes[] = {
			{"arm.motion.joints[1].stop", NULL},
			{"arm.motion.joints[1].stop_time", "0.3 s"},
			{"arm.motion.peak_factor", peaks[known]}};
		reading_open(&reading,
		             text_with(&arena,
		                       file_text(&arena, "tests/support/demo_two_joints.yaml"),
		                       changes, known ? 3 : 2));
		cr_assert_eq(reading.status, DONE, "%s", reading_faults(&reading));
		make_arm(&made);
		made.result.cell = reading.cell;
		text_of(&made, &text);
		cr_expect_eq(strstr(text.text, "# a peak factor is not known") == NULL, known);
		cr_assert(page_arm_json(&made.result, printed_write, &json));
		cr_expect_eq(strstr(json.text, "\"guaranteed\":true") != NULL, known);
		printed_free(&text);
		printed_free(&json);
		reading_close(&reading);
		arena_close(&arena);
	}
}

/* --- JSON and CSV --- */

Test(arm_page, is_one_json_object_with_keys_in_order)
{
	static const char *const keys[] = {
		"{\"standfast\":", "\"input\":{\"file\":\"a.yaml\",\"sha256\":\"\",\"files\":[]}",
		"\"setups\":[{\"setup\":\"low pedestal\",\"arm_weight_kN\":0.402", "\"sources\":[{\"case\":\"emergency_stop\",\"way\":\"chain\"",
		"\"estimate\":false,\"file\":null,\"poses\":7,\"rows\":null",
		"\"kinds\":[{\"kind\":\"tilting\",\"unit\":\"kN m\",\"largest\":0.8123", "\"bound\":1.0154",
		"\"wrench\":{\"force_kN\":[0.6,0.8,-0.7],\"moment_kNm\":[-0.5,0.6,0.4]", "\"empty_gripper\":false",
		"\"joints\":[{\"name\":null,\"unit\":\"deg\",\"position\":28.6479,", "\"unit\":\"mm\",\"position\":250,\"speed\":1000,",
		"\"row\":null,\"time_s\":null", "\"way\":\"swing\"", "\"estimate\":true", "\"bound\":null,\"wrench\":null",
		"\"data_sheet\":[{\"case\":\"emergency_stop\",\"vertical_kN\":2,\"horizontal_kN\":null", "\"reactions\":[{",
		"\"guaranteed\":true,\"vertical_kN\":", "\"left_out\":[", "\"cautions\":[\"a licensed engineer"};
	struct made_arm made;
	struct printed out = {0};
	make_arm(&made);
	cr_assert(page_arm_json(&made.result, printed_write, &out));
	const char *at = out.text;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		const char *next = strstr(at, keys[i]);
		cr_assert(next, "%s does not follow in %.600s", keys[i], at);
		at = next;
	}
	cr_assert_eq(strchr(out.text, '\n'), out.text + out.length - 1, "one line");
	printed_free(&out);
}

/* Fields of a row by RFC 4180, quotes taken off; *at behind the row's end. */
static size_t csv_row(const char **at, char cells[][200], size_t room)
{
	size_t count = 0;
	for (bool more = true; more; count++) {
		size_t length = 0;
		bool quoted = **at == '"';
		cr_assert_lt(count, room);
		for (*at += quoted; **at; ++*at) {
			if (quoted && **at == '"' && (*at)[1] != '"')
				break;
			if (!quoted && (**at == ',' || **at == '\n'))
				break;
			*at += quoted && **at == '"';
			cr_assert_lt(length, 199);
			cells[count][length++] = **at;
		}
		cells[count][length] = 0;
		*at += quoted;
		more = **at == ',';
		cr_assert(more || **at == '\n', "%.40s", *at);
		++*at;
	}
	return count;
}

Test(arm_page, is_a_table_with_a_row_a_setup_source_and_kind)
{
	static char head[64][200], row[64][200];
	struct made_arm made;
	struct printed out = {0};
	size_t rows = 0, quoted = 0;
	make_arm(&made);
	cr_assert(page_arm_csv(&made.result, printed_write, &out));
	const char *at = out.text;
	size_t columns = csv_row(&at, head, 64);
	cr_expect_str_eq(head[9], "Fx [kN]");
	cr_expect_str_eq(head[columns - 1], "note");
	for (; *at; rows++) {
		cr_assert_eq(csv_row(&at, row, 64), columns, "row %zu", rows);
		cr_expect(strstr(row[columns - 1], "licensed engineer"));
		cr_expect_eq(strcmp(row[3], "swing") == 0,
		             strstr(row[columns - 1], "ESTIMATE") != NULL);
		quoted += strcmp(row[1], NAME) == 0;
	}
	/* three sources of five kinds, and a number of the data sheet in each setup */
	cr_expect_eq(rows, 3 * REACTION_KINDS + 2);
	cr_expect_eq(quoted, REACTION_KINDS + 1);
	printed_free(&out);
}

Test(arm_page, tells_when_it_is_not_taken_whole)
{
	const struct page_options plain = {.colour = false};
	struct made_arm made;
	make_arm(&made);
	for (int page = 0; page < 3; page++) {
		struct printed out = {.most = 100};
		bool whole = page == 0   ? page_arm_text(&made.result, &plain, printed_write, &out)
		             : page == 1 ? page_arm_json(&made.result, printed_write, &out)
		                         : page_arm_csv(&made.result, printed_write, &out);
		cr_expect_not(whole);
		printed_free(&out);
	}
}
