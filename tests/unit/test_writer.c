/* Layout of pages: widths, wrapping, what may not reach a terminal, and writes that fail. */
#include "../../src/pages/utf8.h"
#include "../../src/pages/writer.h"
#include "../support/printed.h"

#include <criterion/criterion.h>
#include <string.h>

static struct printed out;
static struct writer writer;

static void begin(void)
{
	writer_open(&writer, printed_write, &out, false);
}

static void end(void)
{
	printed_free(&out);
}

TestSuite(writer, .init = begin, .fini = end);

static const char *closed(void)
{
	cr_assert(writer_close(&writer));
	return out.text ? out.text : "";
}

Test(writer, wraps_at_the_page_width_below_the_hang)
{
	writer_text(&writer, "label");
	flow_begin(&writer, 10);
	for (int i = 0; i < 40; i++)
		flow(&writer, "seven12 ");
	flow_end(&writer);
	const char *text = closed();
	cr_assert_eq(printed_width(text), 97,
	             "12 words of 7, 11 spaces and the hang are 105: 11 fit");
	cr_assert(strstr(text, "\n          seven12"), "%s", text);
	cr_assert_not(printed_trails(text));
}

Test(writer, keeps_a_number_with_its_unit)
{
	/* every position of the line's end within the phrase */
	for (size_t lead = 80; lead <= 100; lead++) {
		printed_free(&out);
		begin();
		flow_begin(&writer, 0);
		for (size_t i = 0; i < lead; i++)
			flow(&writer, "x");
		flow(&writer, " at 12.2 kN of load");
		flow_end(&writer);
		const char *text = closed();
		cr_assert(strstr(text, "12.2 kN"), "%s", text);
		cr_assert_leq(printed_width(text), PAGE_WIDTH);
	}
}

Test(writer, keeps_a_point_on_one_line)
{
	for (size_t lead = 60; lead < 100; lead++) {
		out.length = 0;
		writer_open(&writer, printed_write, &out, false);
		flow_begin(&writer, 0);
		for (size_t i = 0; i < lead; i++)
			flow(&writer, "x");
		flow(&writer, " at [-450, 350.5, 0] mm, [here, there]");
		flow_end(&writer);
		const char *text = closed();
		cr_assert(strstr(text, "[-450, 350.5, 0]"), "%s", text);
		cr_assert_leq(printed_width(text), PAGE_WIDTH);
	}
}

Test(writer, cuts_a_word_longer_than_the_line)
{
	flow_begin(&writer, 20);
	for (int i = 0; i < 1000; i++)
		flow(&writer, "w");
	flow_end(&writer);
	const char *text = closed();
	cr_assert_eq(printed_width(text), PAGE_WIDTH);
	size_t letters = 0;
	for (const char *at = text; *at; at++)
		letters += *at == 'w';
	cr_assert_eq(letters, 1000, "nothing may be lost");
}

Test(writer, counts_wide_and_joining_characters)
{
	flow_begin(&writer, 0);
	for (int i = 0; i < 90; i++)
		flow(&writer, "\u6A5F\u68B0"); /* two wide characters */
	for (int i = 0; i < 900; i++)
		flow(&writer, "e\u0301"); /* e with a joining accent */
	flow_end(&writer);
	cr_assert_leq(printed_width(closed()), PAGE_WIDTH);
	cr_assert_eq(utf8_width("e\u0301\u6A5F"), 3);
}

Test(writer, lets_nothing_through_that_moves_a_cursor)
{
	const char *bad = "a\x1b[31mb\x07\x7f\x80\xff\xc3(\xc2\x9b\u202e\u2028\ufeff\n\tz";
	writer_text(&writer, bad);
	writer_newline(&writer);
	flow_begin(&writer, 0);
	flow(&writer, bad);
	flow_end(&writer);
	for (const char *at = closed(); *at; at++)
		cr_assert(*at == '\n' || ((unsigned char)*at >= 0x20 && (unsigned char)*at < 0x7F),
		          "byte %02x", (unsigned char)*at);
	cr_assert(strstr(out.text, "a?[31mb????"), "%s", out.text);
}

Test(writer, refuses_what_is_no_utf8)
{
	static const char *const bad[] = {"\xC0\x80",    "\xED\xA0\x80", "\xF4\x90\x80\x80",
	                                  "\xE2\x82",    "\x80",         "\xF8\x88\x80\x80\x80",
	                                  "\xE0\x80\xAF"};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
		cr_assert_not(utf8_next(bad[i], strlen(bad[i])).valid, "%zu", i);
	cr_assert(utf8_next("\xF0\x9F\x98\x80", 4).valid);
	cr_assert_eq(utf8_next("\xF0\x9F\x98\x80", 4).code, 0x1F600);
}

Test(writer, aligns_and_leaves_no_trailing_spaces)
{
	writer_right(&writer, "1.5", 10);
	writer_right(&writer, "-", 20);
	writer_pad(&writer, 30);
	writer_newline(&writer);
	writer_text(&writer, "0123456789");
	writer_right(&writer, "x", 5); /* no room: one space at least */
	writer_newline(&writer);
	cr_assert_str_eq(closed(), "       1.5         -\n0123456789 x\n");
}

Test(writer, prefixes_every_line_of_a_comment)
{
	flow_begin_prefixed(&writer, 4, "# ");
	for (int i = 0; i < 50; i++)
		flow(&writer, "words ");
	flow_end(&writer);
	const char *text = closed();
	for (const char *line = text; *line; line = strchr(line, '\n') + 1)
		cr_assert_eq(strncmp(line, "    # words", 11), 0, "%s", line);
	cr_assert_leq(printed_width(text), PAGE_WIDTH);
}

Test(writer, colours_only_when_asked)
{
	writer_style(&writer, STYLE_FAILS);
	writer_text(&writer, "x");
	writer_style(&writer, STYLE_PLAIN);
	cr_assert_str_eq(closed(), "x");
	printed_free(&out);
	writer_open(&writer, printed_write, &out, true);
	writer_style(&writer, STYLE_FAILS);
	writer_text(&writer, "x");
	writer_style(&writer, STYLE_PLAIN);
	cr_assert_str_eq(closed(), "\x1b[1;31mx\x1b[0m");
}

Test(writer, stays_failed_after_a_failed_write)
{
	out.most = WRITER_ROOM + 10;
	for (int i = 0; i < 5 * WRITER_ROOM; i++)
		writer_text(&writer, "y");
	cr_assert_not(writer_close(&writer));
	cr_assert_eq(out.calls, 2, "no write is tried after a failed one");
	cr_assert_eq(out.length, WRITER_ROOM);
}
