/* The section earthquake as ways of loading a cell, by hand: masses, the code's force, factors of
 * the rows, and what is said where keys are missing. g0 = 9.80665 m/s2. */
#include "../../src/loads/earthquake.h"
#include "../support/cell_text.h"
#include "../support/random_base.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

/* 200 + 40 + 10 kg: W = 2451.6625 N. Centre: x = 200*100/250 = 80 mm. The shoulder is half the
 * payload's reach above the face, at 1500 mm; height with the arm upright
 * (200*500 + 50*1500 + 40*500 + 10*1000)/250 = 820 mm; the stretched arm moves it by
 * (40*500 + 10*1000)/250 = 120 mm. */
#define ARM_AND_BASE \
	"  base: [{outline: {unit: mm, points: [[-500, -400], [500, -400], [500, 400], [-500, 400]]}}]\n" \
	"arm:\n" \
	"  mount: [0 mm, 0 mm, 1000 mm]\n" \
	"  weight: {arm: 40 kg, payload: 10 kg, reach: {arm: 500 mm, payload: 1000 mm}}\n" \
	"anchors: {at: {unit: mm, points: [[-400, -300], [400, -300], [400, 300], [-400, 300]]}}\n"
#define QUAKE_16 \
	"earthquake: {code: asce7_16, height_share: 0, sds: 1, amplification: 1, response: 2.5, importance: 1,\n" \
	"  overstrength: 2}\n"
#define FRAME "cell:\n  parts: [{name: frame, mass: 200 kg, at: [100 mm, 0 mm, 500 mm]}]\n"
static const char plain[] = "standfast: 1\n" FRAME ARM_AND_BASE QUAKE_16;
static const char european[] =
	"standfast: 1\n" FRAME ARM_AND_BASE
	"earthquake: {code: en1998, height_share: 0, ground_share: 0.2, soil: 1.2, importance: 1, behaviour: 1}\n";
static const char boxed[] =
	"standfast: 1\ncell:\n  parts: [{name: rack, mass: 200 kg, least_mass: 50 kg,\n"
	"    box: {from: [-100 mm, -50 mm, 0 mm], to: [300 mm, 50 mm, 800 mm]}}]\n"
	ARM_AND_BASE QUAKE_16;

struct quake {
	struct arena texts;
	struct reading reading;
	const struct earthquake_way *way;
	size_t count;
};

static void quake_open(struct quake *quake, const char *yaml, const struct change *change,
                       size_t count)
{
	arena_open(&quake->texts, NULL, NULL);
	reading_open(&quake->reading, text_with(&quake->texts, yaml, change, count));
	cr_assert_eq(quake->reading.status, DONE, "%s", reading_faults(&quake->reading));
	cr_assert(earthquake_ways(quake->reading.cell, METHOD_RATING, &quake->reading.arena,
	                          &quake->way, &quake->count));
}

static void quake_close(struct quake *quake)
{
	reading_close(&quake->reading);
	arena_close(&quake->texts);
}

/* The only way whose combination begins so. */
static const struct earthquake_way *find(const struct quake *quake, const char *title)
{
	const struct earthquake_way *found = NULL;
	for (size_t i = 0; i < quake->count; i++)
		if (strncmp(quake->way[i].combination, title, strlen(title)) == 0) {
			cr_assert_null(found, "two ways %s", title);
			found = &quake->way[i];
		}
	cr_assert(found, "no way %s", title);
	return found;
}

static void expect_action(const struct earthquake_way *way, double down, double x, double turning,
                          double horizontal, double twist)
{
	expect_near(way->action.down, down, 1e-6);
	expect_near(way->action.fixed[0], x, 1e-3);
	expect_near(way->action.fixed[1], 0, 1e-9);
	expect_near(way->action.turning, turning, 1e-3);
	expect_near(way->action.force.force, horizontal, 1e-6);
	expect_near(way->action.force.twist, twist, 1e-3);
	cr_expect(way->action.turns);
	cr_expect_not(way->action.force.at_hull);
}

/* ASCE 7-16 13.3.1: 0.4 x 1/2.5 W = 0.16 W is below 0.3 W = 735.49875 N; anchors twice that,
 * 1470.9975 N; vertical 0.2 W = 490.3325 N. Times 0.7: 1029.69825 and 343.23275 N; times 0.525:
 * 772.2736875 and 257.4245625 N. Turning: H x 820 mm, and V x 120 mm where V presses. */
Test(earthquake, asce7_by_hand)
{
	struct quake quake;
	quake_open(&quake, plain, NULL, 0);
	cr_assert_eq(quake.count, 4);
	const struct earthquake_way *down = find(&quake, "D + 0.7Ev + 0.7Eh");
	expect_action(down, 343.23275, 27458.62, 844352.565 + 41187.93, 1029.69825, 123563.79);
	cr_expect_eq(down->run, RUN_FULL);
	cr_expect_not(down->arm_moves);
	expect_near(down->weight, 1, 0);
	expect_near(down->moving, 0, 0);
	const struct earthquake_way *up = find(&quake, "0.6D - 0.7Ev + 0.7Eh");
	expect_action(up, -343.23275, -27458.62, 844352.565, 1029.69825, 123563.79);
	cr_expect_eq(up->run, RUN_LOW);
	expect_near(up->weight, 0.6, 0);
	const struct earthquake_way *moving = find(&quake, "D + 0.525Ev + 0.525Eh + L");
	expect_action(moving, 257.4245625, 20593.965, 633264.42375 + 30890.9475, 772.2736875,
	              92672.8425);
	cr_expect(moving->arm_moves);
	expect_near(moving->moving, 1, 0);
	const struct earthquake_way *lifted = find(&quake, "0.6D - 0.525Ev + 0.525Eh + L");
	expect_action(lifted, -257.4245625, -20593.965, 633264.42375, 772.2736875, 92672.8425);
	cr_expect_eq(lifted->run, RUN_LOW);
	cr_expect_str_eq(down->name, "earthquake, ASCE 7-16 13.3.1");
	cr_expect_str_eq(down->combination,
	                 "D + 0.7Ev + 0.7Eh, ASCE 7 2.4.5 (from memory), weights x 1");
	cr_expect_str_eq(down->clause, "ASCE 7 2.4.5");
	quake_close(&quake);
}

/* A stabilising weight of 0.9 is a choice about weighed masses; the rows of the code still say 0.6:
 * 0.3 x 250 kg x g0 = 735.49875 N too much. Below 0.6 the choice stands. */
Test(earthquake, keeps_the_weights_of_its_row)
{
	struct change weighed[] = {{"choices.stabilising_weight", "0.9"},
	                           {"choices.masses_weighed", "yes"}};
	struct quake quake;
	quake_open(&quake, plain, weighed, 2);
	expect_action(find(&quake, "0.6D - 0.7Ev + 0.7Eh"), -343.23275 - 735.49875,
	              -27458.62 - 58839.9, 844352.565, 1029.69825, 123563.79);
	expect_action(find(&quake, "D + 0.7Ev + 0.7Eh"), 343.23275, 27458.62,
	              844352.565 + 41187.93, 1029.69825, 123563.79);
	quake_close(&quake);
	struct change low = {"choices.stabilising_weight", "0.5"};
	quake_open(&quake, plain, &low, 1);
	const struct earthquake_way *up = find(&quake, "0.6D - 0.7Ev + 0.7Eh");
	expect_near(up->weight, 0.5, 0);
	expect_near(up->action.down, -343.23275, 1e-6);
	cr_expect(strstr(up->combination, "weights x 0.5"), "%s", up->combination);
	quake_close(&quake);
}

/* EN 1998-1 in resonance at the base: Sa = 0.2 x 1.2 x (3 - 0.5) = 0.6, H = 0.6 W, no vertical
 * force; no row at service level, so the factor is 1. */
Test(earthquake, en1998_by_hand)
{
	struct quake quake;
	quake_open(&quake, european, NULL, 0);
	cr_assert_eq(quake.count, 2);
	double h = 0.6 * 2451.6625;
	expect_action(find(&quake, "G + Ed"), 0, 0, h * 820, h, h * 120);
	expect_action(find(&quake, "G - Ev"), 0, 0, h * 820, h, h * 120);
	for (size_t i = 0; i < 2; i++) {
		cr_expect(strstr(quake.way[i].combination, "strength level (safe side)"), "%s",
		          quake.way[i].combination);
		cr_expect(quake.way[i].arm_moves);
		cr_expect_eq(quake.way[i].upward, i == 1);
	}
	quake_close(&quake);
}

/* Box from x -100 to 300, y -50 to 50: corners at x, y; its top, 800 mm, is its height, and its
 * full mass is shaken. z = (200*800 + 50*1500 + 30000)/250 = 1060 mm. */
Test(earthquake, boxed_parts_at_every_corner)
{
	static const double at[4][2] = {{-80, -40}, {240, -40}, {-80, 40}, {240, 40}};
	struct quake quake;
	quake_open(&quake, boxed, NULL, 0);
	cr_assert_eq(quake.count, 16);
	for (size_t i = 0; i < quake.count; i++) {
		const struct earthquake_way *way = &quake.way[i];
		cr_assert(way->corner >= 0 && way->corner < 4);
		double v = fmax(0, way->action.down), h = way->action.force.force;
		for (int k = 0; k < 2; k++) {
			expect_near(way->action.force.at[k], at[way->corner][k], 1e-12);
			expect_near(way->action.fixed[k], way->action.down * at[way->corner][k],
			            1e-6);
		}
		expect_near(way->action.turning, 1060 * h + 120 * v, 1e-6);
	}
	quake_close(&quake);
}

/* Proportional to the masses; a higher mount, a longer reach or a higher shoulder tilts more. */
Test(earthquake, grows_with_masses_heights_and_reach)
{
	struct change change[] = {{"cell.parts[1].mass", "400 kg"},
	                          {"arm.weight.arm", "80 kg"},
	                          {"arm.weight.payload", "20 kg"}};
	struct quake quake, other;
	quake_open(&quake, plain, NULL, 0);
	quake_open(&other, plain, change, 3);
	for (size_t i = 0; i < quake.count; i++) {
		expect_near(other.way[i].action.turning, 2 * quake.way[i].action.turning, 1e-6);
		expect_near(other.way[i].action.force.force, 2 * quake.way[i].action.force.force,
		            1e-9);
	}
	quake_close(&other);
	static const struct change more[] = {{"arm.mount", "[0 mm, 0 mm, 1100 mm]"},
	                                     {"arm.weight.reach.arm", "700 mm"},
	                                     {"arm.swing.axis_height", "501 mm"}};
	for (size_t k = 0; k < 3; k++) {
		quake_open(&other, plain, &more[k], 1);
		for (size_t i = 0; i < quake.count; i++)
			cr_expect_gt(other.way[i].action.turning, quake.way[i].action.turning);
		quake_close(&other);
	}
	/* an arm that hangs is no higher than its face: 600 mm */
	struct change hangs = {"arm.mounting", "ceiling"};
	quake_open(&other, plain, &hangs, 1);
	expect_near(find(&other, "0.6D - 0.7Ev + 0.7Eh")->action.turning, 1029.69825 * 600, 1e-3);
	quake_close(&other);
	quake_close(&quake);
}

/* --- keys ----------------------------------------------------------------------------------- */

struct noted { char text[600]; };

static void note(void *noted, const char *path)
{
	struct noted *out = noted;
	cr_assert_lt(strlen(out->text) + strlen(path) + 2, sizeof out->text);
	strcat(out->text, path);
	strcat(out->text, " ");
}

static void expect_gaps(const char *yaml, const struct change *change, size_t count,
                        const char *wanted, size_t ways)
{
	struct quake quake;
	struct noted noted = {""};
	quake_open(&quake, yaml, change, count);
	earthquake_gaps(quake.reading.cell, note, &noted);
	cr_expect_str_eq(noted.text, wanted);
	cr_expect_eq(quake.count, ways, "%zu ways", quake.count);
	quake_close(&quake);
}

Test(earthquake, names_what_its_code_lacks)
{
	static const struct change lost[] = {{"earthquake.sds", "unknown"},
	                                     {"earthquake.overstrength", NULL}};
	static const struct change code = {"earthquake.code", "unknown"};
	static const struct change newer[] = {{"earthquake.code", "asce7_22"},
	                                      {"earthquake.amplification", NULL}};
	static const struct change reach = {"arm.weight.reach", NULL};
	static const struct change soil = {"earthquake.soil", ""};
	static const struct change none = {"earthquake", "none"}, gone = {"earthquake", NULL};
	expect_gaps(plain, NULL, 0, "", 4);
	expect_gaps(plain, lost, 2, "earthquake.sds earthquake.overstrength ", 0);
	expect_gaps(plain, &code, 1, "earthquake.code ", 0);
	expect_gaps(plain, newer, 2, "earthquake.resonance ", 0);
	expect_gaps(european, &soil, 1, "earthquake.soil ", 0);
	/* without a reach the ways are there, and favourable */
	expect_gaps(plain, &reach, 1, "arm.weight.reach.arm arm.weight.reach.payload ", 4);
	expect_gaps(plain, &none, 1, "", 0);
	expect_gaps(plain, &gone, 1, "", 0);
}

/* Without R, Ie and the overstrength of the building the safe side is taken (the reader refuses one
 * or two of them). z/h = 0.5: Hf = 2.25, Rmu = 1.3: 0.4 x 2.25/1.3 = 0.6923 of W. */
Test(earthquake, asce7_22_building_all_or_none)
{
	struct change change[] = {{"earthquake.code", "asce7_22"},
	                          {"earthquake.amplification", NULL},
	                          {"earthquake.resonance", "1"},
	                          {"earthquake.response", "1"},
	                          {"earthquake.height_share", "0.5"},
	                          {"earthquake.building_response", "8"},
	                          {"earthquake.building_importance", "1"},
	                          {"earthquake.building_overstrength", "2.5"}};
	struct quake quake;
	quake_open(&quake, plain, change, 5);
	double least = 0.7 * 2 * 0.4 * 2.25 / 1.3 * 2451.6625;
	expect_near(find(&quake, "D + 0.7Ev + 0.7Eh")->action.force.force, least, 1e-6);
	quake_close(&quake);
	quake_open(&quake, plain, change, 8);
	/* Rmu = sqrt(1.1 x 8/2.5) = 1.8762 */
	expect_near(find(&quake, "D + 0.7Ev + 0.7Eh")->action.force.force,
	            least * 1.3 / sqrt(1.1 * 8 / 2.5), 1e-6);
	quake_close(&quake);
}

static struct number random_number(struct dice *dice, const char *path)
{
	const struct field *field = field_find(path);
	while (field && field->kind != FIELD_NUMBER)
		field++;
	cr_assert(field);
	/* both ends too */
	double share = dice_whole(dice, 0, 3);
	double value = share == 0   ? field->low
	               : share == 1 ? field->high
	                            : dice_between(dice, field->low, field->high);
	return (struct number){{{0, 1, 1, 1}, GIVEN}, value, NULL};
}

/* The ranges of the keys leave no fault to a file that was read. */
Test(earthquake, key_ranges_are_within_the_formulas)
{
	for (uint64_t number = 0; number < 2000; number++) {
		struct dice dice = dice_open(77, number);
		struct cell cell = {0};
		struct earthquake *q = &cell.earthquake;
		q->code = (struct word){{{0, 1, 1, 1}, GIVEN}, dice_whole(&dice, 0, 2)};
		q->sds = random_number(&dice, "earthquake.sds");
		q->amplification = random_number(&dice, "earthquake.amplification");
		q->response = random_number(&dice, "earthquake.response");
		q->importance = random_number(&dice, "earthquake.importance");
		q->height_share = random_number(&dice, "earthquake.height_share");
		q->overstrength = random_number(&dice, "earthquake.overstrength");
		q->resonance = random_number(&dice, "earthquake.resonance");
		q->building_period = random_number(&dice, "earthquake.building_period");
		q->building_response = random_number(&dice, "earthquake.building_response");
		q->building_importance = random_number(&dice, "earthquake.building_importance");
		q->building_overstrength = random_number(&dice, "earthquake.building_overstrength");
		q->ground_share = random_number(&dice, "earthquake.ground_share");
		q->soil = random_number(&dice, "earthquake.soil");
		q->period_ratio = random_number(&dice, "earthquake.period_ratio");
		q->behaviour = random_number(&dice, "earthquake.behaviour");
		/* qa is 1 or 2 in the table; between them the formula takes any */
		cr_assert_null(earthquake_fault(&cell), "%s", earthquake_fault(&cell));
	}
	struct cell wrong = {0};
	const struct given given = {{0, 1, 1, 1}, GIVEN};
	wrong.earthquake.code = (struct word){given, QUAKE_EN1998};
	cr_assert_null(earthquake_fault(&wrong), "keys are missing, which is no fault");
	wrong.earthquake.ground_share = (struct number){given, 0.1, NULL};
	wrong.earthquake.soil = (struct number){given, 0.5, NULL};
	wrong.earthquake.height_share = (struct number){given, 0, NULL};
	wrong.earthquake.importance = wrong.earthquake.behaviour = (struct number){given, 1, NULL};
	cr_assert_not_null(earthquake_fault(&wrong), "S below 1");
}

/* --- the rows against their file ------------------------------------------------------------- */

/* Every service row of the file occurs with its factors, and no strength-level row of ASCE 7. */
Test(earthquake, rows_are_those_of_refdata)
{
	struct quake quake;
	size_t count = 0, found = 0;
	const struct rare_combination *row = rare_combinations(&count);
	quake_open(&quake, plain, NULL, 0);
	for (size_t i = 0; i < quake.count; i++)
		cr_expect_eq(quake.way[i].row->level, LEVEL_SERVICE);
	for (size_t i = 0; i < count; i++) {
		bool used = false;
		for (size_t k = 0; k < quake.count; k++)
			if (quake.way[k].row == &row[i]) {
				used = true;
				/* anchors carry twice 0.3 W, times the row's factor */
				expect_near(quake.way[k].action.force.force,
				            row[i].horizontal * 1470.9975, 1e-6);
			}
		cr_expect_eq(used, row[i].event == EVENT_EARTHQUAKE &&
		                           row[i].level == LEVEL_SERVICE, "%s", row[i].id);
		found += used;
	}
	cr_expect_eq(found, 3);
	quake_close(&quake);
}

/* --- written calculation and words ------------------------------------------------------------ */

static void expect_trace(const char *yaml, const struct change *change, size_t count)
{
	struct quake quake;
	quake_open(&quake, yaml, change, count);
	cr_assert_gt(quake.count, 0);
	for (size_t i = 0; i < quake.count; i++) {
		const struct earthquake_way *way = &quake.way[i];
		struct trace trace;
		trace_open(&trace, &quake.reading.arena);
		earthquake_trace(quake.reading.cell, way, &trace);
		cr_expect_geq(traced_expressions(&trace, way->combination), 15);
		cr_expect_eq(traced_value(&trace, "N_E"), way->action.down);
		cr_expect_eq(traced_value(&trace, "S_x_E"), way->action.fixed[0]);
		cr_expect_eq(traced_value(&trace, "S_y_E"), way->action.fixed[1]);
		cr_expect_eq(traced_value(&trace, "S_turn_E"), way->action.turning);
		cr_expect_eq(traced_value(&trace, "H_E"), way->action.force.force);
		cr_expect_eq(traced_value(&trace, "T_E"), way->action.force.twist);
	}
	earthquake_trace(quake.reading.cell, quake.way, NULL);
	quake_close(&quake);
}

Test(earthquake, written_calculation)
{
	static const struct change weighed[] = {{"choices.stabilising_weight", "0.9"},
	                                        {"choices.masses_weighed", "yes"},
	                                        {"arm.mounting", "ceiling"}};
	static const struct change raised = {"arm.swing.axis_height", "400 mm"};
	expect_trace(plain, NULL, 0);
	expect_trace(plain, weighed, 3);
	expect_trace(european, &raised, 1);
	expect_trace(boxed, weighed, 2);
}

struct heard { char caution[2000], other[2000]; };

static void hear(void *heard, bool caution, const char *sentence)
{
	struct heard *out = heard;
	char *to = caution ? out->caution : out->other;
	cr_assert_lt(strlen(to) + strlen(sentence) + 2, sizeof out->other);
	strcat(strcat(to, sentence), "\n");
}

static struct heard words_of(const char *yaml, const struct change *change, size_t count)
{
	struct quake quake;
	struct heard heard = {"", ""};
	quake_open(&quake, yaml, change, count);
	earthquake_words(quake.reading.cell, &quake.reading.arena, hear, &heard);
	quake_close(&quake);
	return heard;
}

Test(earthquake, says_how_it_is_counted_or_that_it_is_not)
{
	static const struct change gone = {"earthquake", NULL}, none = {"earthquake", "none"};
	static const struct change empty = {"earthquake", "{code: unknown, sds: unknown}"};
	static const struct change lost = {"earthquake.sds", "unknown"};
	struct heard heard = words_of(plain, &gone, 1);
	cr_expect(strstr(heard.caution, "no earthquake is counted"), "%s", heard.caution);
	cr_expect_str_eq(heard.other, "");
	heard = words_of(plain, &empty, 1);
	cr_expect(strstr(heard.caution, "no earthquake is counted"), "%s", heard.caution);
	heard = words_of(plain, &none, 1);
	cr_expect_str_eq(heard.caution, "");
	cr_expect(strstr(heard.other, "as stated"), "%s", heard.other);
	heard = words_of(plain, &lost, 1);
	cr_expect(strstr(heard.caution, "not known: earthquake.sds"), "%s", heard.caution);
	heard = words_of(plain, NULL, 0);
	cr_expect(strstr(heard.other, "overstrength for anchors") && strstr(heard.other, "0.7E"),
	          "%s", heard.other);
	cr_expect(strstr(heard.caution, "licensed engineer"), "%s", heard.caution);
	cr_expect_null(strstr(heard.other, "code methods"), "%s", heard.other);
	heard = words_of(european, NULL, 0);
	cr_expect(strstr(heard.other, "EN 1990 has no service combination"), "%s", heard.other);
	static const struct change code = {"methods", "[aci318]"};
	heard = words_of(plain, &code, 1);
	cr_expect(strstr(heard.other, "at strength level by ASCE 7 2.3.6"), "%s", heard.other);
	heard = words_of(european, &code, 1);
	cr_expect(strstr(heard.other, "the rows of EN 1990 6.12b"), "%s", heard.other);
}
