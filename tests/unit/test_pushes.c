/* What is said beside a stated push, a leaning person or a truck bump: the tabled figures, and
 * where the stated force is below them. */
#include "../../src/loads/pushes.h"
#include "../support/cell_text.h"

#include <criterion/criterion.h>
#include <string.h>

/* 60 + 40 + 10 kg: 20 % of 1078.7315 N is 215.7463 N, below the cap of 250 N. */
static const char cell_text[] =
	"standfast: 1\n"
	"cell:\n  parts: [{name: frame, mass: 60 kg, at: [0 mm, 0 mm, 500 mm]}]\n"
	"  base: [{outline: {unit: mm, points: [[-500, -400], [500, -400], [500, 400], [-500, 400]]}}]\n"
	"arm:\n"
	"  mount: [0 mm, 0 mm, 1000 mm]\n"
	"  weight: {arm: 40 kg, payload: 10 kg, reach: {arm: 500 mm, payload: 1000 mm}}\n"
	"loads: [{name: visitor, force: 200 N, direction: any, at_height: 1.5 m, kind: push}]\n"
	"anchors: {at: {unit: mm, points: [[-400, -300], [400, -300], [400, 300], [-400, 300]]}}\n";

struct heard { char caution[3000], other[3000]; };

static void hear(void *heard, bool caution, const char *sentence)
{
	struct heard *out = heard;
	char *to = caution ? out->caution : out->other;
	cr_assert_lt(strlen(to) + strlen(sentence) + 2, sizeof out->other);
	strcat(strcat(to, sentence), "\n");
}

static struct heard words_with(const struct change *change, size_t count)
{
	struct arena texts;
	struct reading reading;
	struct heard heard = {"", ""};
	arena_open(&texts, NULL, NULL);
	reading_open(&reading, text_with(&texts, cell_text, change, count));
	cr_assert_eq(reading.status, DONE, "%s", reading_faults(&reading));
	push_words(reading.cell, &reading.arena, hear, &heard);
	reading_close(&reading);
	arena_close(&texts);
	return heard;
}

static void expect_said(const char *text, const char *wanted)
{
	cr_expect(strstr(text, wanted), "no \"%s\" in\n%s", wanted, text);
}

Test(pushes, push_below_the_tabled_one)
{
	struct heard heard = words_with(NULL, 0);
	expect_said(heard.other, "'visitor' (0.2 kN at 1500 mm)");
	expect_said(heard.other, "20 % of the weight, at most 0.25 kN, at up to 2000 mm");
	expect_said(heard.other, "IEC 60950-1 4.1 and IEC 61010-1 7.4, from memory");
	expect_said(heard.other, "with the full masses here 0.216 kN");
	expect_said(heard.other, "two public commentaries differ");
	expect_said(heard.caution, "is smaller than the 0.216 kN");
}

Test(pushes, push_that_is_enough_or_too_low)
{
	struct change change[] = {{"loads[1].force", "220 N"}, {"cell.top", "1.6 m"}};
	/* 220 x 1.5 = 330 N m is below 215.7 x 1.6 = 345 N m, the top of the cell */
	struct heard heard = words_with(change, 2);
	expect_said(heard.caution, "tips less than 0.216 kN at 1600 mm would, the top of the cell");
	change[1].value = "1.5 m";
	heard = words_with(change, 2);
	cr_expect_str_eq(heard.caution, "");
	/* 2 m, where no top is known */
	heard = words_with(change, 1);
	expect_said(heard.caution, "at 2000 mm would, the highest place that standards name");
}

Test(pushes, push_without_masses_takes_the_cap)
{
	struct change change[] = {{"arm.weight.arm", "unknown"}, {"loads[1].force", "249 N"}};
	struct heard heard = words_with(change, 2);
	expect_said(heard.other, "not every mass is known, so 0.25 kN");
	expect_said(heard.caution, "is smaller than the 0.25 kN");
}

/* 0.5 kN: 0.625 m at 0.8 kN/m, 0.25 m at 2 kN/m (EN 1991-1-1 Table 6.12, E; from memory). */
Test(pushes, leaning)
{
	struct change change[] = {{"loads[1].kind", "leaning"}, {"loads[1].force", "0.5 kN"}};
	struct heard heard = words_with(change, 2);
	expect_said(heard.other, "at up to 1200 mm");
	expect_said(heard.other, "storage and industry (E) 0.8 kN/m to 2 kN/m");
	expect_said(heard.other, "crowds (C5) 3 kN/m to 5 kN/m");
	expect_said(heard.other, "250 mm of width gives at 2 kN/m, 625 mm at 0.8 kN/m");
	expect_said(heard.other, "EN 1991-1-1 Table 6.12, from memory");
	cr_expect_str_eq(heard.caution, "");
}

Test(pushes, truck_bump)
{
	struct change change[] = {{"loads[1].kind", "truck_bump"}, {"loads[1].force", "5 kN"}};
	struct heard heard = words_with(change, 2);
	expect_said(heard.caution, "155 kN (fork truck FL1: 31 kN loaded)");
	expect_said(heard.caution, "950 kN (fork truck FL6: 190 kN loaded) at 750 mm");
	expect_said(heard.caution, "give it to a protector or bollard");
	expect_said(heard.caution, "only be the residual");
	change[1].value = "160 kN";
	heard = words_with(change, 2);
	cr_expect_null(strstr(heard.caution, "residual behind"), "%s", heard.caution);
}

Test(pushes, says_nothing_of_other_loads)
{
	struct change change = {"loads[1].kind", "other"};
	struct heard heard = words_with(&change, 1);
	cr_expect_str_eq(heard.other, "");
	cr_expect_str_eq(heard.caution, "");
	change.value = "unknown";
	heard = words_with(&change, 1);
	cr_expect_str_eq(heard.other, "");
}

/* US: 2 kN/m is 137 lbf/ft, 0.25 kN 56.2 lbf. */
Test(pushes, in_the_units_of_the_file)
{
	struct change change[] = {{"show", "us"}, {"loads[1].kind", "leaning"}};
	struct heard heard = words_with(change, 2);
	expect_said(heard.other, "54.8 lbf/ft to 137 lbf/ft");
	heard = words_with(change, 1);
	expect_said(heard.other, "at most 56.2 lbf");
}
