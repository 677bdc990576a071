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

/* --- files that the cell file names --- */

static const char *const with_history = "tests/support/demo_two_joints.yaml";
static char csv[1 << 16];

static size_t load_csv(void)
{
	FILE *file = fopen("tests/support/demo_arm.csv", "rb");
	cr_assert(file, "run in the top folder");
	size_t length = fread(csv, 1, sizeof csv, file);
	fclose(file);
	return length;
}

static struct standfast *open_with_history(void)
{
	size_t length = load(with_history);
	struct standfast *run = standfast_open(NULL, NULL);
	cr_assert_eq(standfast_read(run, bytes, length, "dir/a.yaml", NULL), STANDFAST_DONE);
	cr_assert_eq(standfast_file_count(run), 1);
	cr_assert_str_eq(standfast_file_name(run, 0), "demo_arm.csv");
	cr_assert_null(standfast_file_name(run, 1));
	return run;
}

Test(library_files, are_named_and_given)
{
	struct printed out = {0};
	size_t length = load_csv();
	struct standfast *run = open_with_history();
	cr_expect_eq(standfast_give_file(run, 1, csv, length, NULL), STANDFAST_BAD_INPUT);
	cr_expect_eq(standfast_give_file(run, 0, csv, length, "cd"), STANDFAST_DONE);
	cr_expect_eq(standfast_give_file(run, 0, csv, length, "cd"), STANDFAST_BAD_INPUT, "once");
	cr_assert_eq(standfast_compute(run, STANDFAST_REACTIONS, NULL), STANDFAST_DONE);
	cr_expect_not(standfast_arm_whole(run), "the second joint has no acceleration");
	cr_assert_eq(standfast_page(run, STANDFAST_ARM_JSON, 0, printed_write, &out),
	             STANDFAST_DONE);
	cr_expect(strstr(out.text, "\"files\":[{\"file\":\"demo_arm.csv\",\"sha256\":\"cd\"}]"));
	cr_expect(strstr(out.text, "\"left_out\":[\"arm.motion.joints[].acceleration\"]"), "%s",
	          out.text);
	cr_expect_eq(standfast_page(run, STANDFAST_TEXT, 0, printed_write, &out),
	             STANDFAST_BAD_INPUT, "nothing was judged");
	printed_free(&out);
	standfast_close(run);
}

Test(library_files, must_be_given_before_computing)
{
	struct standfast_diagnostic fault;
	struct standfast *run = open_with_history();
	cr_assert_eq(standfast_compute(run, 0, NULL), STANDFAST_BAD_INPUT);
	cr_assert_eq(standfast_diagnostic_count(run), 1);
	cr_assert(standfast_diagnostic(run, 0, &fault));
	cr_expect(fault.is_error && fault.line > 0 && strstr(fault.message, "demo_arm.csv"));
	cr_expect_str_eq(fault.path, "arm.history[].file");
	cr_expect_str_eq(fault.file, "dir/a.yaml");
	cr_assert_eq(standfast_compute(run, 0, NULL), STANDFAST_BAD_INPUT);
	cr_expect_eq(standfast_diagnostic_count(run), 1, "said once");
	standfast_close(run);
}

Test(library_files, that_are_missing_are_told_where_they_are_named)
{
	struct printed out = {0};
	struct standfast *run = open_with_history();
	cr_expect_eq(standfast_file_unreadable(run, 0, "cannot be opened"), STANDFAST_BAD_INPUT);
	standfast_page(run, STANDFAST_DIAGNOSTICS, 0, printed_write, &out);
	cr_expect(strstr(out.text, "dir/a.yaml:27:14: error: demo_arm.csv: cannot be opened [E01]"),
	          "%s", out.text);
	cr_expect_eq(standfast_compute(run, 0, NULL), STANDFAST_BAD_INPUT);
	printed_free(&out);
	standfast_close(run);
}

/* With the CSV's own name, its line and a caret; and in JSON the name, too. */
Test(library_files, with_faults_are_shown_at_their_line)
{
	static const char faulty[] = "t [s],Fx [N],Fy [N],Fz [N],Mx [N m],My [N m],Mz [N m]\n"
				     "0,1,2,3,4,5,6\n"
				     "0.1,1,2,3,4,5,6\n"
				     "0.2,1,nan,3,4,5,6\n";
	struct printed out = {0}, json = {0};
	struct standfast_diagnostic fault;
	struct standfast *run = open_with_history();
	cr_expect_eq(standfast_give_file(run, 0, faulty, sizeof faulty - 1, NULL),
	             STANDFAST_BAD_INPUT);
	cr_expect_eq(standfast_compute(run, 0, NULL), STANDFAST_BAD_INPUT);
	cr_assert(standfast_diagnostic(run, 0, &fault));
	cr_expect_str_eq(fault.file, "dir/demo_arm.csv");
	standfast_page(run, STANDFAST_DIAGNOSTICS, 0, printed_write, &out);
	cr_expect(strstr(out.text, "dir/demo_arm.csv:4:7: error: row 3, Fy"), "%s", out.text);
	cr_expect(strstr(out.text, "    4 | 0.2,1,nan,3,4,5,6\n      |       ^~~\n"), "%s",
	          out.text);
	standfast_page(run, STANDFAST_ARM_JSON, 0, printed_write, &json);
	cr_expect(strstr(json.text, "\"file\":\"dir/demo_arm.csv\"}]}"), "%s", json.text);
	printed_free(&out);
	printed_free(&json);
	standfast_close(run);
}

Test(library_files, that_are_no_text_are_refused)
{
	struct printed out = {0};
	struct standfast *run = open_with_history();
	cr_expect_eq(standfast_give_file(run, 0, "t [s],\xff", 7, NULL), STANDFAST_BAD_INPUT);
	standfast_page(run, STANDFAST_DIAGNOSTICS, 0, printed_write, &out);
	cr_expect(strstr(out.text, "dir/demo_arm.csv:1:7: error: bytes that are not UTF-8"), "%s",
	          out.text);
	printed_free(&out);
	standfast_close(run);
	run = open_with_history();
	cr_expect_eq(standfast_give_file(run, 0, NULL, 0, NULL), STANDFAST_BAD_INPUT, "empty");
	standfast_close(run);
}

/* --- work in pieces --- */

struct counted { size_t calls, pieces; };

/* The other way round: the order must not matter. */
static void backwards(void *user, const char *what, size_t count, standfast_piece *piece, void *job)
{
	struct counted *counted = user;
	cr_assert(what);
	counted->calls++;
	counted->pieces += count;
	for (size_t i = count; i-- > 0;)
		piece(job, i);
}

static void reactions_page(standfast_pool *pool, struct counted *counted, struct printed *out)
{
	size_t length = load_csv();
	struct standfast *run = open_with_history();
	standfast_pieces(run, pool, counted);
	standfast_give_file(run, 0, csv, length, NULL);
	cr_assert_eq(standfast_compute(run, STANDFAST_REACTIONS, NULL), STANDFAST_DONE);
	cr_assert_eq(standfast_page(run, STANDFAST_ARM_JSON, 0, printed_write, out),
	             STANDFAST_DONE);
	standfast_close(run);
}

Test(library, gives_the_same_bytes_for_pieces_in_any_order)
{
	struct printed plain = {0}, pieces = {0};
	struct counted counted = {0, 0};
	reactions_page(NULL, NULL, &plain);
	reactions_page(backwards, &counted, &pieces);
	cr_expect_geq(counted.calls, 1);
	cr_expect_geq(counted.pieces, counted.calls);
	cr_expect_str_eq(plain.text, pieces.text);
	printed_free(&plain);
	printed_free(&pieces);
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
static bool run_with(struct failing *failing, size_t length, size_t csv_length, struct printed *out)
{
	struct standfast *run = standfast_open(failing_allocate, failing);
	if (!run)
		return false;
	enum standfast_status status = standfast_read(run, bytes, length, "dir/a.yaml", NULL);
	if (status == STANDFAST_DONE && standfast_file_count(run) > 0)
		status = standfast_give_file(run, 0, csv, csv_length, "ab");
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

static void walk_memory(const char *file)
{
	size_t length = load(file), csv_length = load_csv();
	for (int sticky = 0; sticky < 2; sticky++) {
		bool through = false;
		for (long n = 1; !through; n++) {
			struct failing failing = {.fail_at = n, .sticky = sticky};
			struct printed out = {0};
			through = run_with(&failing, length, csv_length, &out);
			cr_expect_eq(failing.live, 0, "%ld blocks left at call %ld", failing.live,
			             n);
			printed_free(&out);
			cr_assert_lt(n, 10000);
		}
	}
}

Test(library, survives_memory_that_ends_at_any_call)
{
	walk_memory(example);
}

Test(library, survives_it_with_a_chain_and_a_history)
{
	walk_memory(with_history);
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
