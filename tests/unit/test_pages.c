/* The text pages: what stands first, how ratios are rounded, and that no name breaks a line. */
#include "../../src/pages/pages.h"
#include "../../src/pages/phrases.h"
#include "../support/made_result.h"
#include "../support/printed.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct page_options plain = {.colour = false};

/* --- phrases --- */

static void expect_ratio(double ratio, enum verdict verdict, const char *wanted)
{
	struct finding finding = {.computed = true, .ratio = ratio, .verdict = verdict};
	cr_expect_str_eq(phrase_ratio(&finding).text, wanted, "%.17g: %s", ratio,
	                 phrase_ratio(&finding).text);
}

Test(phrases, rounds_ratios_up)
{
	expect_ratio(1.001, FAILS, "1.01");
	expect_ratio(nextafter(1, 2), FAILS, "1.01");
	expect_ratio(1, HOLDS, "1.00");
	expect_ratio(nextafter(1, 0), HOLDS, "1.00");
	expect_ratio(0.9901, HOLDS, "1.00");
	expect_ratio(0.99, HOLDS, "0.99");
	expect_ratio(0.07, HOLDS, "0.07"); /* 0.07 * 100 is above 7 in doubles */
	expect_ratio(0.29, HOLDS, "0.29");
	expect_ratio(0, HOLDS, "0.00");
	expect_ratio(1e-9, HOLDS, "0.01");
	expect_ratio(12.341, FAILS, "12.35");
	expect_ratio(1e9, FAILS, "> 999");
	expect_ratio((double)INFINITY, FAILS, "> 999");
	expect_ratio((double)NAN, FAILS, "-");
	/* it fails for another reason than its ratio: none is shown */
	expect_ratio(0.5, FAILS, "-");
}

Test(phrases, never_shows_a_ratio_on_the_wrong_side_of_one)
{
	srand(7);
	for (int i = 0; i < 100000; i++) {
		double ratio = 1 + (rand() / (double)RAND_MAX - 0.5) * pow(10, -(rand() % 17));
		double shown = strtod(phrase_ratio_up(ratio).text, NULL);
		cr_assert(ratio > 1 ? shown > 1.005 : shown < 1.005, "%.17g is shown as %g", ratio,
		          shown);
		cr_assert(shown >= ratio - 1e-9 && shown < ratio + 0.01 + 1e-9,
		          "%.17g is shown as %g", ratio, shown);
	}
}

Test(phrases, tells_demand_and_capacity_apart)
{
	struct finding finding = {
		.computed = true, .demand = 10501, .capacity = 10500, .dimension = DIM_FORCE};
	struct phrase_pair pair = phrase_pair(&finding, UNITS_METRIC);
	cr_expect_str_eq(pair.demand.text, "10.501 kN");
	cr_expect_str_eq(pair.capacity.text, "10.5 kN");
	finding.demand = 10500;
	cr_expect_str_eq(phrase_pair(&finding, UNITS_METRIC).demand.text, "10.5 kN");
}

Test(phrases, shows_digits_that_agree_with_the_ratio)
{
	struct finding finding = {.computed = true,
	                          .demand = 1.2449,
	                          .capacity = 1,
	                          .ratio = 1.2449,
	                          .verdict = FAILS,
	                          .dimension = DIM_FACTOR};
	cr_expect_str_eq(phrase_pair(&finding, UNITS_METRIC).demand.text, "1.245");
	cr_expect_str_eq(phrase_ratio(&finding).text, "1.25");
}

Test(phrases, writes_fixed_decimals)
{
	cr_expect_str_eq(phrase_fixed(-450, DIM_LENGTH, UNITS_METRIC, 1).text, "-450.0");
	cr_expect_str_eq(phrase_fixed(0.04, DIM_LENGTH, UNITS_METRIC, 1).text, "0.0");
	cr_expect_str_eq(phrase_fixed(-0.04, DIM_LENGTH, UNITS_METRIC, 1).text, "0.0");
	cr_expect_str_eq(phrase_fixed(999.95, DIM_FORCE, UNITS_METRIC, 2).text, "1.00");
	cr_expect_str_eq(phrase_fixed(25.4, DIM_LENGTH, UNITS_US, 2).text, "1.00");
	cr_expect_str_eq(phrase_fixed(1e30, DIM_FACTOR, UNITS_US, 2).text, "1e30");
}

Test(phrases, turns_headings_into_0_to_359)
{
	const double pi = 3.14159265358979323846;
	cr_expect_str_eq(phrase_heading(-0.25 * pi).text, "315 deg");
	cr_expect_str_eq(phrase_heading(1.9999999 * pi).text, "0 deg");
	cr_expect_str_eq(phrase_heading(2.75 * pi).text, "135 deg");
}

/* --- the text page --- */

static char *text_of(struct made_result *made, const struct page_options *options)
{
	struct printed out = {0};
	cr_assert(page_text(&made->result, options, printed_write, &out));
	return out.text;
}

/* `first` stands before `second`, both are there. */
static void expect_order(const char *page, const char *first, const char *second)
{
	const char *a = strstr(page, first), *b = strstr(page, second);
	cr_expect(a && b && a < b, "'%s' should stand before '%s' in\n%s", first, second, page);
}

Test(text_page, begins_with_verdict_reason_ratio_and_place)
{
	struct made_result made;
	made_result(&made);
	char *page = text_of(&made, &plain);
	cr_expect_eq(strncmp(page, "FAILS       anchor A1 in tension: too much ", 43), 0, "%s",
	             page);
	const char *end = strchr(page, '\n');
	cr_expect_eq(strncmp(end - 10, "ratio 1.01", 10), 0, "%.*s", (int)(end - page), page);
	cr_expect_eq(end - page, PAGE_WIDTH);
	expect_order(page, "ratio 1.01", "pushing toward 331 deg (cell axes)");
	expect_order(page, "(cell axes)", "Departs     a departure\n");
	expect_order(page, "Departs", "Do now      a better one\n");
	expect_order(page, "Do now", "Setups      ratio 0.80 in\n");
	expect_order(
		page, "Setups",
		"Also        slab.thickness.evidence: drawing is not enough: drill and measure");
	expect_order(page, "Also ", "\nAnchors\n");
	expect_order(page, "\nAnchors\n", "\nChecks\n");
	expect_order(page, "\nChecks\n", "\nChecks that do not apply\n");
	expect_order(page, "\nChecks that do not apply\n", "\nTo measure");
	expect_order(page, "\nTo measure", "\nAssumptions\n   1 an assumption\n");
	expect_order(page, "\nAssumptions\n",
	             "\nCautions\n   - first caution\n   - second caution\n");
	free(page);
}

Test(text_page, keeps_within_the_page_whatever_the_names)
{
	struct made_result made;
	struct page_options options = {.trace = true};
	made_result(&made);
	for (int us = 0; us < 2; us++) {
		made.cell.show.value = us ? UNITS_US : UNITS_METRIC;
		char *page = text_of(&made, &options);
		cr_expect_leq(printed_width(page), PAGE_WIDTH, "%s", page);
		cr_expect_not(printed_trails(page));
		cr_expect_null(strchr(page, '\x1b'),
		               "a name must not reach the terminal's controls");
		free(page);
	}
}

Test(text_page, prints_in_inch_pound_units)
{
	struct made_result made;
	made_result(&made);
	made.cell.show.value = UNITS_US;
	char *page = text_of(&made, &plain);
	cr_expect(strstr(page, "x in"));
	cr_expect(strstr(page, "tension lbf"));
	/* 25.4 mm, 1234.5 N, 10510.5 N */
	cr_expect(strstr(page, "-1.00") && strstr(page, " 278 ") && strstr(page, "2363 lbf"), "%s",
	          page);
	cr_expect_null(strstr(page, "kN"));
	free(page);
}

Test(text_page, says_first_that_no_loads_were_computed)
{
	struct made_result made;
	made_result(&made);
	made.result.loads_computed = false;
	for (int i = 0; i < 4; i++)
		made.result.anchor[i].computed = false;
	made.checks[0].finding.reason = "short";
	char *page = text_of(&made, &plain);
	const char *second = strchr(page, '\n') + 1;
	cr_expect_eq(strncmp(second, "            No loads were computed: ", 36), 0, "%s", page);
	free(page);
}

Test(text_page, says_what_a_holding_verdict_rests_on)
{
	struct made_result made;
	made_result(&made);
	made.result.verdict = HOLDS;
	made.result.governing = 1;
	char *page = text_of(&made, &plain);
	cr_expect_eq(strncmp(page, "HOLDS       ", 12), 0);
	expect_order(page, "Rests on    slab thickness: drawing; every value as the file states it",
	             "Leaves out");
	free(page);
}

Test(text_page, shows_one_check_alone)
{
	struct made_result made;
	struct page_options only = {.only = "rating.shear"};
	made_result(&made);
	char *page = text_of(&made, &only);
	cr_expect(strstr(page, "the verdict is that of all checks; shown is rating.shear alone"));
	cr_expect(strstr(page, "\n  holds     rating.shear"));
	cr_expect_null(strstr(page, "\n  fails     rating.tension"));
	cr_expect(strstr(page, "first caution"), "cautions stand on every page");
	free(page);
}

Test(text_page, writes_the_calculation_step_by_step)
{
	struct made_result made;
	struct page_options options = {.trace = true};
	made_result(&made);
	char *page = text_of(&made, &options);
	cr_expect(strstr(page, "    N_ult = 42000 N = 42 kN                 ultimate load [input, "
	                       "line 14]\n"
	                       "    N_allowed = 0.25 * N_ult\n"
	                       "              = 0.25 * 42000 N\n"
	                       "              = 10500 N = 10.5 kN           [rating]\n"
	                       "  10.51 kN against 10.5 kN, ratio 1.01: fails, anchor A1 in "
	                       "tension: too much\n"),
	          "%s", page);
	free(page);
}

Test(text_page, gives_a_heading_to_the_anchor_that_it_belongs_to)
{
	struct made_result made;
	made_result(&made);
	made.load_case.name = "stop";
	made.cell.setups.count = 0;
	made.cell.anchors.count = 4;
	char *page = text_of(&made, &plain);
	cr_expect(strstr(page, "A1, stop toward 331 deg, equal in\n"), "%s", page);
	cr_expect_null(strstr(page, "A1, A3"));
	free(page);
	made.checks[0].subject.anchors = 0xf;
	page = text_of(&made, &plain);
	cr_expect(strstr(page, "A1, stop toward 331 deg, equal in\n"), "%s", page);
	cr_expect(strstr(page, " all\n"), "%s", page);
	free(page);
	/* nothing turns: no anchor stands out */
	made.checks[0].at.has_heading = false;
	page = text_of(&made, &plain);
	cr_expect(strstr(page, "A1, A2, A3, A4, stop\n"), "%s", page);
	free(page);
}

/* The page as one line: where it wraps is the writer's matter. */
static char *unwrapped(char *page)
{
	char *to = page;
	for (const char *from = page; *from; from++)
		if (*from != ' ' && *from != '\n')
			*to++ = *from;
		else if (to > page && to[-1] != ' ')
			*to++ = ' ';
	*to = 0;
	return page;
}

Test(text_page, says_which_bed_ratio_is_used_and_whether_more_may_come)
{
	struct made_result made;
	made_result(&made);
	made.result.spread[0][0] = 1000;
	made.result.spread[0][1] = 2000;
	made.checks[0].subject.anchors = 1;
	char *page = unwrapped(text_of(&made, &plain));
	cr_expect(strstr(page, "the largest of the two is used"), "%s", page);
	cr_expect(strstr(page, "rises with a softer bed"), "%s", page);
	free(page);
	made.result.spread[0][0] = 2000;
	page = unwrapped(text_of(&made, &plain));
	cr_expect(strstr(page, "the range is an assumption"), "%s", page);
	cr_expect_null(strstr(page, "rises with a softer bed"), "%s", page);
	free(page);
}

Test(text_page, names_the_tightest_check_of_a_cell_that_holds)
{
	struct made_result made;
	made_result(&made);
	made.result.verdict = HOLDS;
	made.checks[0].finding = (struct finding){
		.computed = true, .demand = 1, .capacity = 2, .ratio = 0.5, .dimension = DIM_FACTOR};
	char *page = text_of(&made, &plain);
	expect_order(page, "HOLDS ", "Tightest    rating.shear, ratio 1.00\n");
	free(page);
	made.result.governing = 1;
	page = text_of(&made, &plain);
	cr_expect_null(strstr(page, "Tightest"), "it governs: %s", page);
	free(page);
	made.result.verdict = FAILS;
	made.result.governing = 0;
	page = text_of(&made, &plain);
	cr_expect_null(strstr(page, "Tightest"), "%s", page);
	free(page);
}

Test(text_page, says_before_drilling_what_is_not_scanned)
{
	struct made_result made;
	made_result(&made);
	char *page = text_of(&made, &plain);
	cr_expect(strstr(page, "\nBefore      not known to be scanned: do not drill"), "%s", page);
	free(page);
	struct word scan = {{{0, 1, 1, 1}, GIVEN}, SCAN_NOT_DONE};
	made.cell.slab.scan = made.setup_cell.slab.scan = scan;
	page = text_of(&made, &plain);
	expect_order(page, "\nBefore      not scanned: do not drill until bars, tendons, conduit",
	             "\nAnchors\n");
	free(page);
	/* one setup stands on another slab, which nobody has scanned */
	made.cell.slab.scan.value = made.setup_cell.slab.scan.value = SCAN_DONE;
	struct cell other = made.cell;
	other.slab.scan.value = SCAN_NOT_DONE;
	made.setups[1].cell = &other;
	page = text_of(&made, &plain);
	cr_expect(strstr(page, "\nBefore      not scanned"), "%s", page);
	free(page);
	other.slab.scan.value = SCAN_DONE;
	page = text_of(&made, &plain);
	cr_expect_null(strstr(page, "\nBefore"), "%s", page);
	free(page);
}

Test(text_page, says_why_the_one_check_does_not_apply)
{
	struct made_result made;
	struct page_options only = {.only = "stand_off"};
	made_result(&made);
	char *page = text_of(&made, &only);
	cr_expect(strstr(page, "stand_off does not apply: the reason \"why\"\n"), "%s", page);
	cr_expect_null(strstr(page, "\nChecks\n"), "%s", page);
	free(page);
}

Test(text_page, lists_what_the_papers_ask_for_where_nothing_was_computed)
{
	struct made_result made;
	made_result(&made);
	made.result.loads_computed = false;
	for (int i = 0; i < 4; i++)
		made.result.anchor[i].computed = false;
	made.cell.anchors.needs.tension = (struct number){{{0, 1, 1, 1}, GIVEN}, 6000, NULL};
	char *page = text_of(&made, &plain);
	cr_expect(strstr(page, "needed by the papers: 6 kN tension, shear not known each;"), "%s",
	          page);
	cr_expect(strstr(page, "\n  A1           0.0     -25.4\n"), "%s", page);
	cr_expect_not(printed_trails(page));
	free(page);
	made.cell.anchors.needs.shear = (struct number){{{0, 1, 1, 1}, GIVEN}, 3000, NULL};
	page = text_of(&made, &plain);
	cr_expect(strstr(page, "6 kN tension, 3 kN shear each; no load was computed\n"), "%s",
	          page);
	free(page);
}

Test(text_page, uses_colour_only_when_asked_and_never_alone)
{
	struct made_result made;
	struct page_options colour = {.colour = true};
	made_result(&made);
	char *with = text_of(&made, &colour), *without = text_of(&made, &plain);
	cr_expect(strstr(with, "\x1b[1;31mFAILS\x1b[0m"));
	/* the sequences taken out, the pages are the same */
	char *to = with;
	for (char *from = with; *from; from++)
		if (*from == '\x1b')
			from += strcspn(from, "m");
		else
			*to++ = *from;
	*to = 0;
	cr_expect_str_eq(with, without);
	free(with);
	free(without);
}

/* --- the ratings of a substitute --- */

Test(require_page, prints_every_digit_that_was_rounded_to)
{
	struct made_result made;
	struct printed out = {0};
	made_result(&made);
	made.result.required = (struct required){.computed = true,
	                                         .tension = 6382.7,
	                                         .shear = 12345,
	                                         .pair = {{48123, 0.12345}},
	                                         .pair_count = 1,
	                                         .notes = {"a note"},
	                                         .note_count = 1};
	cr_assert(page_require(&made.result, &plain, printed_write, &out));
	cr_expect(strstr(out.text, " 6.3827 kN, with shear unlimited"), "%s", out.text);
	cr_expect(strstr(out.text, " 12.345 kN, with tension unlimited"), "%s", out.text);
	cr_expect(strstr(out.text, "48.123 kN") && strstr(out.text, "0.00012345 kN"), "%s",
	          out.text);
	cr_expect(strstr(out.text, "a note") && strstr(out.text, "first caution"));
	cr_expect_null(strstr(out.text, "at least"));
	printed_free(&out);
}

Test(require_page, rounds_up_in_other_units_and_says_at_least)
{
	struct made_result made;
	made_result(&made);
	made.cell.show.value = UNITS_US;
	for (double value = 1000; value < 1100; value += 0.1) {
		struct printed out = {0};
		made.result.required = (struct required){
			.computed = true, .at_least = true, .tension = value, .shear = value};
		cr_assert(page_require(&made.result, &plain, printed_write, &out));
		const char *line = strstr(out.text, "ultimate tension ");
		double shown = strtod(strstr(line, "at least ") + 9, NULL);
		/* enough, and less than a hundred-thousandth too much */
		cr_assert(shown * 4.4482216152605 >= value * (1 - 1e-15) &&
		                  shown * 4.4482216152605 < value * 1.00001,
		          "%.17g N shown as %.17g lbf", value, shown);
		printed_free(&out);
	}
}

/* A pair of least values is shown to be enough only where nothing is unknown. */
Test(require_page, promises_no_pair_that_is_not_shown_to_be_enough)
{
	struct made_result made;
	made_result(&made);
	for (int at_least = 0; at_least < 2; at_least++) {
		struct printed out = {0};
		made.result.required = (struct required){.computed = true,
		                                         .at_least = at_least == 1,
		                                         .tension = 6000,
		                                         .shear = 3000,
		                                         .pair = {{48123, 9000}},
		                                         .pair_count = 1};
		cr_assert(page_require(&made.result, &plain, printed_write, &out));
		expect_order(out.text, "tension unlimited\n",
		             "  these two are not enough together; take a pair below\n");
		expect_order(out.text, "take a pair below\n",
		             at_least ? "Pairs, at least; not shown to be enough\n"
		                      : "Pairs that are enough together\n");
		cr_expect_eq(!strstr(out.text, "enough together\n"), at_least == 1);
		cr_expect(strstr(out.text, at_least ? " at least 48.123 kN  " : " 48.123 kN  "));
		cr_expect(strstr(out.text, at_least ? " at least 9 kN\n" : "   9 kN\n"));
		cr_expect_leq(printed_width(out.text), PAGE_WIDTH);
		printed_free(&out);
	}
}

Test(require_page, says_why_nothing_can_be_named)
{
	struct made_result made;
	struct printed out = {0};
	made_result(&made);
	made.result.loads_computed = false;
	cr_assert(page_require(&made.result, &plain, printed_write, &out));
	cr_expect_eq(strncmp(out.text, "No rating can be named\n", 23), 0, "%s", out.text);
	cr_expect(strstr(out.text, "no load model"));
	cr_expect_leq(printed_width(out.text), PAGE_WIDTH);
	printed_free(&out);
}
