/* JSON: texts and numbers that any reader takes, keys in their order, null where nothing was
 * computed. */
#include "../../src/pages/json_writer.h"
#include "../../src/pages/pages.h"
#include "../support/made_result.h"
#include "../support/printed.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const struct page_options plain = {.colour = false};

static void expect_text(const char *text, const char *wanted)
{
	struct printed out = {0};
	struct writer writer;
	writer_open(&writer, printed_write, &out, false);
	struct json json = {&writer, true};
	json_text(&json, text);
	cr_assert(writer_close(&writer));
	cr_expect_str_eq(out.text, wanted);
	printed_free(&out);
}

Test(json, escapes_texts)
{
	expect_text(NULL, "null");
	expect_text("", "\"\"");
	expect_text("a\"b\\c/d", "\"a\\\"b\\\\c/d\"");
	expect_text("\n\t\x01\x7f", "\"\\u000a\\u0009\\u0001\\u007f\"");
	expect_text("\u00e4\u6a5f", "\"\u00e4\u6a5f\"");
	expect_text("\u2028", "\"\\u2028\"");
	/* no UTF-8: one replacement a byte */
	expect_text("a\xff\xc3", "\"a\\ufffd\\ufffd\"");
}

Test(json, writes_numbers_that_read_back)
{
	static const double values[] = {
		0, -0.0, 1, -1.5, 1.0 / 3, 1e300, 5e-324, 0.1, 123456789012345678.0};
	for (size_t i = 0; i < sizeof values / sizeof *values; i++) {
		struct printed out = {0};
		struct writer writer;
		writer_open(&writer, printed_write, &out, false);
		struct json json = {&writer, true};
		json_number(&json, values[i]);
		cr_assert(writer_close(&writer));
		cr_expect(strtod(out.text, NULL) == values[i], "%s", out.text);
		printed_free(&out);
	}
}

Test(json, has_no_number_for_what_is_none)
{
	struct printed out = {0};
	struct writer writer;
	writer_open(&writer, printed_write, &out, false);
	struct json json = {&writer, true};
	json_open(&json, '[');
	json_number(&json, (double)NAN);
	json_number(&json, (double)INFINITY);
	json_bool(&json, true);
	json_open(&json, '{');
	json_key(&json, "k");
	json_null(&json);
	json_close(&json, '}');
	json_close(&json, ']');
	cr_assert(writer_close(&writer));
	cr_assert_str_eq(out.text, "[null,null,true,{\"k\":null}]");
	printed_free(&out);
}

/* The part of a page from `from` on must begin with `wanted`. */
static void expect_part(const char *page, const char *from, const char *wanted)
{
	const char *at = strstr(page, from);
	cr_assert(at, "no %s in %s", from, page);
	cr_expect_eq(strncmp(at, wanted, strlen(wanted)), 0, "expected %s\nfound %.400s", wanted,
	             at);
}

Test(json, has_the_keys_of_a_result_in_order)
{
	static const char *const keys[] = {"{\"standfast\":",
	                                   "\"input\":{\"file\":",
	                                   "\"sha256\":",
	                                   "\"verdict\":",
	                                   "\"governing\":{\"check\":",
	                                   "\"anchors\":[{\"id\":",
	                                   "\"checks\":[",
	                                   "\"required\":",
	                                   "\"left_out\":[",
	                                   "\"to_measure\":[",
	                                   "\"assumptions\":[",
	                                   "\"cautions\":["};
	struct made_result made;
	struct printed out = {0};
	made_result(&made);
	cr_assert(page_json(&made.result, &plain, printed_write, &out));
	const char *at = out.text;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		const char *next = strstr(at, keys[i]);
		cr_assert(next, "%s does not follow in %.300s", keys[i], at);
		at = next;
	}
	cr_assert_eq(strchr(out.text, '\n'), out.text + out.length - 1, "one line");
	printed_free(&out);
}

Test(json, has_values_in_the_units_of_the_page)
{
	struct made_result made;
	struct printed out = {0};
	made_result(&made);
	cr_assert(page_json(&made.result, &plain, printed_write, &out));
	expect_part(out.text, "\"id\":\"rating.tension\"",
	            "\"id\":\"rating.tension\",\"title\":\"anchor tension against its derated rating\","
	            "\"verdict\":\"fails\",\"demand\":10.5105,\"capacity\":10.5,\"unit\":\"kN\",\"ratio\":1.001,");
	expect_part(out.text, "\"anchors\":[\"A2\"]", "\"anchors\":[\"A2\"],\"edge\":3,\"setup\":");
	expect_part(out.text, "\"id\":\"slab.thickness\"",
	            "\"id\":\"slab.thickness\",\"title\":\"slab thick enough for the anchor\",\"verdict\":\"unproven\","
	            "\"demand\":null,\"capacity\":null,\"unit\":null,\"ratio\":null,");
	expect_part(out.text, "\"missing\":[\"slab",
	            "\"missing\":[\"slab.thickness.evidence\"],\"trace\":[]}");
	/* steps in base units, so that the expressions evaluate */
	expect_part(out.text, "\"trace\":[{",
	            "\"trace\":[{\"symbol\":\"N_ult\",\"expression\":\"\",\"value\":42000,\"unit\":\"N\",\"source\":\"input\","
	            "\"line\":14},{\"symbol\":\"N_allowed\",\"expression\":\"0.25 * N_ult\",\"value\":10500,\"unit\":\"N\","
	            "\"source\":\"rating\",\"line\":null}]");
	expect_part(out.text, "\"id\":\"A4\"",
	            "\"id\":\"A4\",\"x_mm\":300,\"y_mm\":-25.4,\"tension_kN\":null,\"shear_kN\":null,\"tension_at\":null,"
	            "\"shear_at\":null}]");
	expect_part(out.text, "\"required\"", "\"required\":null,");
	printed_free(&out);
}

Test(json, lists_one_check_alone_when_asked)
{
	struct page_options only = {.only = "rating.shear"};
	struct made_result made;
	struct printed out = {0};
	made_result(&made);
	cr_assert(page_json(&made.result, &only, printed_write, &out));
	expect_part(out.text, "\"checks\"", "\"checks\":[{\"id\":\"rating.shear\",");
	cr_expect_null(strstr(out.text, "\"id\":\"rating.tension\""), "%s", out.text);
	/* the verdict is that of all checks */
	cr_expect(strstr(out.text, "\"governing\":{\"check\":\"rating.tension\""), "%s", out.text);
	printed_free(&out);
}

Test(json, prints_departures_among_the_cautions)
{
	struct made_result made;
	struct printed out = {0};
	made_result(&made);
	cr_assert(page_json(&made.result, &plain, printed_write, &out));
	expect_part(out.text, "\"cautions\"",
	            "\"cautions\":[\"departure: a departure\",\"first caution\",\"second caution\"]}");
	printed_free(&out);
}

Test(json, has_a_heading_from_0_to_below_360)
{
	static const double headings[] = {-1e-20, -0.5, 6.283185307179586, 100, -100, 0};
	for (size_t i = 0; i < sizeof headings / sizeof *headings; i++) {
		struct made_result made;
		struct printed out = {0};
		made_result(&made);
		made.checks[0].at.heading = headings[i];
		cr_assert(page_json(&made.result, &plain, printed_write, &out));
		double heading = strtod(strstr(out.text, "\"heading_deg\":") + 14, NULL);
		cr_expect(heading >= 0 && heading < 360, "%g rad gives %g deg", headings[i],
		          heading);
		printed_free(&out);
	}
}

Test(json, says_what_was_wrong_with_a_file)
{
	struct printed out = {0};
	struct diagnostics list = {.count = 0};
	diagnose(&list, ERROR, FAULT_NUMBER, (struct mark){0, 3, 9, 4}, "slab.clear", "write 5 mm",
	         "a \"bare\" number");
	diagnose(&list, ERROR, FAULT_IO, (struct mark){0, 0, 0, 0}, "", NULL, "gone");
	cr_assert(page_json_faults("a.yaml", "", &list, printed_write, &out));
	expect_part(out.text, "\"input\"",
	            "\"input\":{\"file\":\"a.yaml\",\"sha256\":\"\"},\"error\":true,\"diagnostics\":[{\"line\":3,\"column\":9,"
	            "\"code\":\"E09\",\"path\":\"slab.clear\",\"message\":\"a \\\"bare\\\" number\",\"hint\":\"write 5 mm\"},"
	            "{\"line\":null,\"column\":null,\"code\":\"E01\",\"path\":\"\",\"message\":\"gone\",\"hint\":\"\"}]}\n");
	printed_free(&out);
}
