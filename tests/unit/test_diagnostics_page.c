/* Diagnostics: place, message, the line with a caret under the right characters. */
#include "../../src/pages/pages.h"
#include "../support/printed.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static char *page(const char *bytes, struct mark mark, const char *path, const char *hint,
                  const char *message)
{
	struct printed out = {0};
	struct diagnostics list = {.count = 0};
	struct page_source source = {"cell.yaml", bytes, bytes ? strlen(bytes) : 0};
	diagnose(&list, ERROR, FAULT_NUMBER, mark, path, hint, "%s", message);
	cr_assert(page_diagnostics(&source, &list, false, printed_write, &out));
	return out.text;
}

static void expect_page(const char *bytes, struct mark mark, const char *path, const char *hint,
                        const char *wanted)
{
	char *text = page(bytes, mark, path, hint, "a bare number");
	cr_expect_str_eq(text, wanted);
	free(text);
}

#define COUNT "cell.yaml: 1 error; nothing was computed\n"

Test(diagnostics_page, shows_line_caret_path_and_hint)
{
	expect_page("standfast: 1\nslab:\n  clear: 1500\n", (struct mark){0, 3, 10, 4},
	            "slab.clear", "write 1500 mm or 1.5 m",
	            "cell.yaml:3:10: error: a bare number [E09]\n"
	            "    3 |   clear: 1500\n"
	            "      |          ^~~~\n"
	            "        in slab.clear: write 1500 mm or 1.5 m\n" COUNT);
}

Test(diagnostics_page, counts_characters_not_bytes)
{
	/* two letters of two bytes and one wide character of three before the mark */
	expect_page("t: \u00e4\u00f6\u6a5f: 5\n", (struct mark){0, 1, 9, 1}, "", "",
	            "cell.yaml:1:9: error: a bare number [E09]\n"
	            "    1 | t: \u00e4\u00f6\u6a5f: 5\n"
	            "      |          ^\n" COUNT);
}

Test(diagnostics_page, expands_tabs_to_stops_of_eight)
{
	expect_page("a:\t5\n", (struct mark){0, 1, 4, 1}, "", "",
	            "cell.yaml:1:4: error: a bare number [E09]\n"
	            "    1 | a:      5\n"
	            "      |         ^\n" COUNT);
}

Test(diagnostics_page, knows_crlf_byte_order_mark_and_last_line)
{
	expect_page("\xEF\xBB\xBF" "a: 5\r\nb: 6", (struct mark){0, 1, 4, 1}, "", "",
	            "cell.yaml:1:4: error: a bare number [E09]\n"
	            "    1 | a: 5\n"
	            "      |    ^\n" COUNT);
	expect_page("a: 5\r\nb: 6", (struct mark){0, 2, 4, 1}, "", "",
	            "cell.yaml:2:4: error: a bare number [E09]\n"
	            "    2 | b: 6\n"
	            "      |    ^\n" COUNT);
}

Test(diagnostics_page, points_behind_the_end_of_a_line)
{
	expect_page("a:\n", (struct mark){0, 1, 3, 1}, "", "",
	            "cell.yaml:1:3: error: a bare number [E09]\n"
	            "    1 | a:\n"
	            "      |   ^\n" COUNT);
}

Test(diagnostics_page, does_without_the_line)
{
	expect_page(NULL, (struct mark){0, 7, 3, 1}, "", "",
	            "cell.yaml:7:3: error: a bare number [E09]\n" COUNT);
	expect_page("a: 1\n", (struct mark){0, 7, 3, 1}, "", "",
	            "cell.yaml:7:3: error: a bare number [E09]\n" COUNT);
	/* nowhere in the file, and alone: all is said in one line */
	expect_page(NULL, (struct mark){0, 0, 0, 0}, "", "",
	            "cell.yaml: error: a bare number [E09]\n");
}

/* The column below which the caret stands must be that of the marked word, wherever the line is
 * cut. */
Test(diagnostics_page, cuts_long_lines_around_the_caret)
{
	for (size_t lead = 1; lead < 400; lead += 7)
		for (size_t behind = 0; behind < 200; behind += 33) {
			char line[800] = "";
			memset(line, 'a', lead);
			strcpy(line + lead, "WORD");
			memset(line + lead + 4, 'b', behind);
			char *text = page(line, (struct mark){0, 1, (uint32_t)lead + 1, 4}, "", "",
			                  "m");
			char *shown = strchr(text, '\n') + 1, *caret = strchr(shown, '\n') + 1;
			cr_assert_leq(printed_width(text), PAGE_WIDTH);
			cr_assert_eq(strcspn(shown, "W"), strcspn(caret, "^"),
			             "lead %zu behind %zu:\n%s", lead, behind, text);
			cr_assert_eq(strncmp(shown + strcspn(shown, "W"), "WORD", 4), 0, "%s",
			             text);
			free(text);
		}
}

Test(diagnostics_page, counts_errors_and_what_is_not_shown)
{
	struct printed out = {0};
	struct diagnostics list = {.count = 0};
	struct page_source source = {"a.yaml", "x: 1\n", 5};
	for (int i = 0; i < MAX_DIAGNOSTICS + 3; i++)
		diagnose(&list, ERROR, FAULT_RANGE, (struct mark){0, 1, 4, 1}, "x", "", "number %d",
		         i);
	cr_assert(page_diagnostics(&source, &list, false, printed_write, &out));
	cr_assert(strstr(out.text,
	                 "a.yaml: 23 errors, 3 further messages not shown; nothing was computed\n"),
	          "%s", out.text);
	printed_free(&out);
}

Test(diagnostics_page, has_one_blank_behind_a_short_name)
{
	struct printed out = {0};
	struct diagnostics list = {.count = 0};
	struct page_source source = {"stdin", "x: 1\n", 5};
	diagnose(&list, ERROR, FAULT_RANGE, (struct mark){0, 1, 4, 1}, "x", "", "odd");
	cr_assert(page_diagnostics(&source, &list, false, printed_write, &out));
	cr_assert(strstr(out.text, "\nstdin: 1 error; nothing was computed\n"), "%s", out.text);
	printed_free(&out);
}

Test(diagnostics_page, warnings_alone_say_nothing_of_errors)
{
	struct printed out = {0};
	struct diagnostics list = {.count = 0};
	struct page_source source = {"a.yaml", "x: 1\n", 5};
	diagnose(&list, WARNING, FAULT_RANGE, (struct mark){0, 1, 4, 1}, "x", "", "odd");
	cr_assert(page_diagnostics(&source, &list, false, printed_write, &out));
	cr_assert(strstr(out.text, "warning: odd"), "%s", out.text);
	cr_assert_null(strstr(out.text, "nothing was computed"));
	printed_free(&out);
}
