/* The public library: a run from bytes to pages, memory and writes that fail, calls out of
 * order. */
#include "../../src/standfast.h"
#include "../support/printed.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static char bytes[1 << 20];

static size_t load(const char *path)
{
	FILE *file = fopen(path, "rb");
	cr_assert(file, "%s: run in the top folder", path);
	size_t length = fread(bytes, 1, sizeof bytes, file);
	fclose(file);
	return length;
}

static const char *const example = "examples/high_pedestal.yaml";

Test(library, goes_from_bytes_to_a_verdict)
{
	size_t length = load(example);
	struct standfast *run = standfast_open(NULL, NULL);
	struct standfast_finding finding;
	struct standfast_anchor anchor;
	struct standfast_required required;
	cr_assert_eq(standfast_read(run, bytes, length, "a.yaml", "ab"), STANDFAST_DONE);
	cr_assert_eq(standfast_verdict(run), STANDFAST_UNPROVEN, "before anything was computed");
	cr_assert_eq(standfast_compute(run, STANDFAST_REQUIRED, NULL), STANDFAST_DONE);
	cr_assert_eq(standfast_verdict(run), STANDFAST_FAILS);
	cr_assert(standfast_finding(run, standfast_governing(run), &finding));
	cr_assert_eq(finding.verdict, STANDFAST_FAILS);
	cr_assert(finding.computed && finding.ratio > 1 && *finding.reason);
	cr_assert(standfast_anchor_count(run) > 0 && standfast_anchor(run, 0, &anchor));
	cr_assert(anchor.computed && anchor.tension > 0 && strcmp(anchor.id, "A1") == 0);
	cr_assert(standfast_required(run, &required) && required.tension > 0);
	cr_assert_not(standfast_anchor(run, standfast_anchor_count(run), &anchor));
	cr_assert_not(standfast_finding(run, standfast_finding_count(run), &finding));
	standfast_close(run);
}

Test(library, gives_the_same_bytes_twice)
{
	size_t length = load(example);
	for (int page = STANDFAST_TEXT; page <= STANDFAST_UNDERSTOOD; page++) {
		struct printed out[2] = {{0}, {0}};
		for (int i = 0; i < 2; i++) {
			struct standfast *run = standfast_open(NULL, NULL);
			standfast_read(run, bytes, length, "a.yaml", NULL);
			standfast_compute(run, STANDFAST_REQUIRED | STANDFAST_TRACE, NULL);
			cr_assert_eq(standfast_page(run, (enum standfast_page)page, STANDFAST_TRACE,
			                            printed_write, &out[i]),
			             STANDFAST_DONE);
			standfast_close(run);
		}
		cr_assert_str_eq(out[0].text, out[1].text);
		printed_free(&out[0]);
		printed_free(&out[1]);
	}
}

Test(library, keeps_no_pointer_into_the_callers_bytes)
{
	size_t length = load("tests/golden/errors/bare_number.yaml");
	struct printed before = {0}, after = {0};
	struct standfast *run = standfast_open(NULL, NULL);
	char name[] = "name.yaml";
	cr_assert_eq(standfast_read(run, bytes, length, name, NULL), STANDFAST_BAD_INPUT);
	standfast_page(run, STANDFAST_DIAGNOSTICS, 0, printed_write, &before);
	memset(bytes, 'x', sizeof bytes);
	memset(name, 'x', sizeof name - 1);
	standfast_page(run, STANDFAST_DIAGNOSTICS, 0, printed_write, &after);
	cr_assert_str_eq(before.text, after.text);
	cr_assert(strstr(before.text, "name.yaml:"));
	printed_free(&before);
	printed_free(&after);
	standfast_close(run);
}

Test(library, tells_diagnostics_as_data)
{
	size_t length = load("tests/golden/errors/bare_number.yaml");
	struct standfast *run = standfast_open(NULL, NULL);
	struct standfast_diagnostic fault;
	cr_assert_eq(standfast_read(run, bytes, length, NULL, NULL), STANDFAST_BAD_INPUT);
	cr_assert_geq(standfast_diagnostic_count(run), 1);
	cr_assert(standfast_diagnostic(run, 0, &fault));
	cr_assert(fault.is_error && fault.line > 0 && fault.column > 0 && *fault.message &&
	          *fault.hint);
	cr_assert_str_eq(fault.code, "E09");
	cr_assert_not(standfast_diagnostic(run, standfast_diagnostic_count(run), &fault));
	standfast_close(run);
}

Test(library, refuses_calls_out_of_order)
{
	size_t length = load(example);
	struct printed out = {0};
	struct standfast *run = standfast_open(NULL, NULL);
	cr_expect_eq(standfast_compute(run, 0, NULL), STANDFAST_BAD_INPUT);
	cr_expect_eq(standfast_page(run, STANDFAST_TEXT, 0, printed_write, &out),
	             STANDFAST_BAD_INPUT);
	cr_expect_eq(standfast_read(run, bytes, length, NULL, NULL), STANDFAST_DONE);
	cr_expect_eq(standfast_read(run, bytes, length, NULL, NULL), STANDFAST_BAD_INPUT,
	             "once a run");
	cr_expect_eq(standfast_compute(run, 0, "no.such.check"), STANDFAST_BAD_INPUT);
	cr_expect_eq(standfast_compute(run, 0, "rating.tension"), STANDFAST_DONE);
	cr_expect_eq(standfast_compute(run, 0, NULL), STANDFAST_BAD_INPUT, "once a run");
	cr_expect_eq(standfast_blank("nothing", printed_write, &out), STANDFAST_BAD_INPUT);
	standfast_close(run);
	standfast_close(NULL);
	printed_free(&out);
}

Test(library, makes_json_of_what_could_not_be_read)
{
	struct printed out = {0};
	struct standfast *run = standfast_open(NULL, NULL);
	cr_assert_eq(standfast_unreadable(run, "gone.yaml", "cannot be opened"),
	             STANDFAST_BAD_INPUT);
	cr_assert_eq(standfast_page(run, STANDFAST_JSON, 0, printed_write, &out), STANDFAST_DONE);
	cr_assert(strstr(out.text, "\"error\":true") &&
	          strstr(out.text, "\"message\":\"cannot be opened\""));
	standfast_close(run);
	printed_free(&out);
}

/* --- memory that ends at call N --- */

struct failing { long calls, fail_at; bool sticky; long live; };

static void *failing_allocate(void *user, void *old, size_t size)
{
	struct failing *failing = user;
	if (size == 0) {
		failing->live -= old != NULL;
		free(old);
		return NULL;
	}
	failing->calls++;
	if (failing->sticky ? failing->calls >= failing->fail_at
	                    : failing->calls == failing->fail_at)
		return NULL;
	failing->live += old == NULL;
	return realloc(old, size);
}

/* One run; true when it came through with pages. */
static bool run_with(struct failing *failing, size_t length, struct printed *out)
{
	struct standfast *run = standfast_open(failing_allocate, failing);
	if (!run)
		return false;
	enum standfast_status status = standfast_read(run, bytes, length, "a.yaml", NULL);
	if (status == STANDFAST_DONE)
		status = standfast_compute(run, STANDFAST_TRACE | STANDFAST_REQUIRED, NULL);
	cr_expect(status == STANDFAST_DONE || status == STANDFAST_NO_MEMORY,
	          "status %d at call %ld", (int)status, failing->fail_at);
	if (status == STANDFAST_DONE)
		standfast_page(run, STANDFAST_TEXT, STANDFAST_TRACE, printed_write, out);
	else
		cr_expect_geq(standfast_diagnostic_count(run), 1, "no message at call %ld",
		              failing->fail_at);
	standfast_close(run);
	return status == STANDFAST_DONE;
}

Test(library, survives_memory_that_ends_at_any_call)
{
	size_t length = load(example);
	for (int sticky = 0; sticky < 2; sticky++) {
		bool through = false;
		for (long n = 1; !through; n++) {
			struct failing failing = {.fail_at = n, .sticky = sticky};
			struct printed out = {0};
			through = run_with(&failing, length, &out);
			cr_expect_eq(failing.live, 0, "%ld blocks left at call %ld", failing.live,
			             n);
			printed_free(&out);
			cr_assert_lt(n, 10000);
		}
	}
}

Test(library, tells_when_a_page_is_not_taken_whole)
{
	size_t length = load(example), whole = 1;
	struct standfast *run = standfast_open(NULL, NULL);
	struct printed all = {0};
	standfast_read(run, bytes, length, "a.yaml", NULL);
	standfast_compute(run, 0, NULL);
	standfast_page(run, STANDFAST_TEXT, 0, printed_write, &all);
	whole = all.length;
	for (size_t most = 1; most < whole; most += 997) {
		struct printed out = {.most = most};
		cr_expect_eq(standfast_page(run, STANDFAST_TEXT, 0, printed_write, &out),
		             STANDFAST_BROKEN_OUTPUT);
		printed_free(&out);
	}
	printed_free(&all);
	standfast_close(run);
}
