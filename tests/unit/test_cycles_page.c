/* The load cycles on the pages: what is counted, what is not known, and nothing where there are no
 * cycles. */
#include "../../src/pages/pages.h"
#include "../support/history_cell.h"
#include "../support/made_result.h"
#include "../support/printed.h"

#include <criterion/criterion.h>
#include <string.h>

/* Ranges of 2 kN and 1 kN an anchor: test_checks_anchor_fatigue.c. */
#define ROUND HISTORY_HEAD \
	"0,0,0,0,0,0,0\n1,0,0,17806.65,0,0,0\n2,0,0,13806.65,0,0,0\n3,0,0,17806.65,0,0,0\n"

static const struct page_options plain = {.colour = false};

static void expect_text(const struct printed *out, const char *wanted)
{
	cr_expect(strstr(out->text, wanted), "no %s in\n%s", wanted, out->text);
}

Test(cycles_page, text_and_json)
{
	static const struct change change[] = {{"arm.history[2].cycles_a_year", "1000"},
	                                       {"arm.service_life", "10 years"},
	                                       {"arm.range_limit", "1.5 kN"}};
	struct trial trial;
	struct printed text = {0}, json = {0};
	history_trial_open(&trial, HISTORY_STILL, ROUND, change, 3);
	cr_assert(page_text(trial.result, &plain, printed_write, &text));
	cr_assert(page_json(trial.result, &plain, printed_write, &json));
	expect_text(&text, "\nLoad cycles\n");
	expect_text(&text, "emergency stop, b.csv: 1000 rounds a year\n");
	/* range, mean, two a round, one above the limit, none of noise, a year, in the life */
	expect_text(&text, "  A1         2.000       1.000            2             1            0"
	                   "          2000          20000\n");
	expect_text(&text, "normal motion, a.csv: how often a year is not known\n");
	expect_text(&json, "\"cycles\":[{\"setup\":null,\"source\":\"emergency stop, b.csv\","
	                   "\"anchor\":\"A1\",\"range_kN\":");
	expect_text(&json, "\"a_round\":2,\"above_limit\":1,\"below_1_percent\":0,\"a_year\":2000,"
	                   "\"in_service_life\":20000}");
	expect_text(&json, "\"a_year\":null,\"in_service_life\":null}");
	printed_free(&text);
	printed_free(&json);
	trial_close(&trial);
}

Test(cycles_page, nothing_where_there_are_none)
{
	struct made_result made;
	struct printed text = {0}, json = {0};
	made_result(&made);
	cr_assert(page_text(&made.result, &plain, printed_write, &text));
	cr_assert(page_json(&made.result, &plain, printed_write, &json));
	cr_expect_null(strstr(text.text, "Load cycles"));
	expect_text(&json, "\"cycles\":[]");
	printed_free(&text);
	printed_free(&json);
}
