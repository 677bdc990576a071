/* The command line, files worked on at once, and files that are written whole or not at all. */
#include "../../src/cli/input_file.h"
#include "../../src/cli/new_file.h"
#include "../../src/cli/options.h"
#include "../../src/cli/pool.h"
#include "../../src/cli/run_files.h"

#include <criterion/criterion.h>
#include <criterion/redirect.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* Words parted by single spaces; true when they were understood. */
static bool read_line(const char *text, struct command_line *out)
{
	static char words[400];
	static char *argv[32];
	int argc = 0;
	snprintf(words, sizeof words, "%s", text);
	for (char *word = strtok(words, " "); word; word = strtok(NULL, " "))
		argv[argc++] = word;
	argv[argc] = NULL;
	return command_line_read(argc, argv, out);
}

TestSuite(command_line, .init = cr_redirect_stderr);

Test(command_line, takes_options_before_and_behind_files)
{
	struct command_line line;
	cr_assert(read_line("standfast check a.yaml --json -j3 b.yaml --only rating.shear --trace "
	                    "--color=never",
	                    &line));
	cr_expect_eq(line.command, COMMAND_CHECK);
	cr_expect(line.json && line.trace && line.jobs == 3 && line.colour == COLOUR_NEVER);
	cr_expect_str_eq(line.only, "rating.shear");
	cr_expect_eq(line.operand_count, 2);
	cr_expect_str_eq(line.operands[1], "b.yaml");
}

Test(command_line, ends_options_at_two_dashes)
{
	struct command_line line;
	cr_assert(read_line("standfast check -- --json -", &line));
	cr_expect_not(line.json);
	cr_expect_eq(line.operand_count, 2);
}

Test(command_line, reads_the_other_commands)
{
	struct command_line line;
	cr_expect(read_line("standfast new --for need -o cell.yaml --force", &line) && line.force);
	cr_expect_str_eq(line.output, "cell.yaml");
	cr_expect_str_eq(line.purpose, "need");
	cr_expect(read_line("standfast new --for strength", &line));
	cr_expect_str_eq(line.purpose, "strength");
	cr_expect(read_line("standfast explain", &line) && line.operand_count == 0);
	cr_expect(read_line("standfast explain mass", &line) && line.operand_count == 1);
	cr_expect(read_line("standfast require --json a", &line) && line.json);
	cr_expect(read_line("standfast show a", &line) && line.command == COMMAND_SHOW);
	cr_expect(read_line("standfast arm --csv -j2 a b", &line) && line.csv);
	cr_expect(line.command == COMMAND_ARM && line.jobs == 2 && line.operand_count == 2);
	cr_expect(read_line("standfast arm --json a", &line) && line.json);
	cr_expect(read_line("standfast --help", &line) && line.help && line.command == NO_COMMAND);
	cr_expect(read_line("standfast -V", &line) && line.version);
	/* help asked for is no wrong call, whatever else is missing */
	cr_expect(read_line("standfast check --help", &line) && line.help &&
	          line.command == COMMAND_CHECK);
}

Test(command_line, refuses_what_it_does_not_know)
{
	static const char *const wrong[] = {
		/* abbreviations, in every way of giving a value */
		"standfast check --js a", "standfast check --onl rating.shear a", "standfast check --onl=rating.shear a",
		"standfast check --job 2 a", "standfast new --f", "standfast new --fo need", "standfast check a --j",
		"standfast", "standfast chek a", "standfast check", "standfast check --jsn a", "standfast check -x a",
		"standfast check --json=1 a", "standfast check a --only", "standfast check a --only rating.tensio",
		"standfast check a --jobs 0", "standfast check a --jobs 1000", "standfast check a --jobs 2x",
		"standfast check a --color red", "standfast new --for ned", "standfast new cell.yaml",
		"standfast explain a b", "standfast check - -", "standfast show --json a", "standfast a.yaml",
		"standfast arm", "standfast arm --csv --json a", "standfast arm --trace a", "standfast check --csv a",
		"standfast --json check a"};
	struct command_line line;
	for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++)
		cr_expect_not(read_line(wrong[i], &line), "%s", wrong[i]);
}

Test(command_line, names_the_nearest_command)
{
	struct command_line line;
	cr_assert_not(read_line("standfast chek", &line));
	fflush(stderr);
	cr_assert_stderr_eq_str("standfast: there is no command 'chek'; the nearest is 'check'\n"
	                        "usage: standfast check|require|arm|new|show|explain ...; more: standfast --help\n");
}

Test(command_line, names_the_option_that_was_abbreviated)
{
	struct command_line line;
	cr_assert_not(read_line("standfast check --json --tr=x a", &line));
	cr_assert_not(read_line("standfast check --json --only rating.shear --tra a", &line));
	fflush(stderr);
	cr_assert_stderr_eq_str("standfast: --tr=x: this option takes no value\n"
	                        "usage: standfast check FILE...; options: standfast check --help\n"
	                        "standfast: there is no option '--tra'; write '--trace'\n"
	                        "usage: standfast check FILE...; options: standfast check --help\n");
}

/* --- help and manual --- */

static char *text_of(FILE *file, char *text, size_t room)
{
	rewind(file);
	text[fread(text, 1, room - 1, file)] = 0;
	return text;
}

/* Each command's own statuses, and no verdict where there is none. */
Test(help, says_the_exit_statuses_of_the_command)
{
	static const char *const statuses[COMMANDS] = {
		[COMMAND_CHECK] = "0 holds, 1 fails, 3 unproven, 2 could not be computed;\n",
		[COMMAND_REQUIRE] = "0 ratings named, 3 named as \"at least\" or not at all, 2 ",
		[COMMAND_ARM] = "0 all computed, 3 a case left out or none there, 2 could not be "
	                        "computed;\n",
		[COMMAND_NEW] = "0 written, 2 not written.\n",
		[COMMAND_SHOW] = "0 shown, 2 could not be read or computed;\n",
		[COMMAND_EXPLAIN] = "0 explained, 2 there is no such word.\n"};
	for (int command = 0; command < COMMANDS; command++) {
		char text[4000];
		FILE *to = tmpfile();
		print_help(to, (enum command_id)command);
		const char *line = strstr(text_of(to, text, sizeof text), "Exit status: ");
		cr_assert(line, "%s", text);
		cr_expect_eq(strncmp(line + 13, statuses[command], strlen(statuses[command])), 0,
		             "%s", text);
		fclose(to);
	}
}

/* Every option that the help of any command names stands in the manual, and no other. */
Test(manual, lists_the_options_of_the_help)
{
	static char help[20000], manual[40000];
	FILE *to = tmpfile(), *page = fopen("src/cli/standfast.1", "r");
	cr_assert(to && page, "run in the top folder");
	for (int command = 0; command < COMMANDS; command++)
		print_help(to, (enum command_id)command);
	text_of(to, help, sizeof help);
	text_of(page, manual, sizeof manual);
	size_t named = 0;
	for (const char *at = help; (at = strstr(at, " --")); at++) {
		char entry[40];
		int length = (int)strspn(at + 3, "abcdefghijklmnopqrstuvwxyz");
		snprintf(entry, sizeof entry, "Fl -%.*s", length, at + 3);
		cr_expect(strstr(manual, entry), "%s", entry);
		named++;
	}
	cr_expect_geq(named, 10);
	for (const char *at = manual; (at = strstr(at, "Fl -")); at++) {
		char entry[40];
		int length = (int)strspn(at + 4, "abcdefghijklmnopqrstuvwxyz");
		snprintf(entry, sizeof entry, " --%.*s", length, at + 4);
		cr_expect(strstr(help, entry), "the manual has %s", entry);
	}
	fclose(to);
	fclose(page);
}

/* --- files --- */

/* What standard output holds after a call, through a file of its own. */
static char *output_of(const char *text, int *status)
{
	static char page[1 << 20];
	struct command_line line;
	FILE *file = tmpfile();
	cr_assert(file && read_line(text, &line));
	int descriptor = fileno(file), kept = dup(STDOUT_FILENO);
	fflush(stdout);
	dup2(descriptor, STDOUT_FILENO);
	*status = run_files(&line);
	fflush(stdout);
	dup2(kept, STDOUT_FILENO);
	close(kept);
	ssize_t length = pread(descriptor, page, sizeof page - 1, 0);
	page[length > 0 ? length : 0] = 0;
	fclose(file);
	return page;
}

Test(files, come_out_in_order_with_any_number_of_jobs, .init = cr_redirect_stderr)
{
	static char first[1 << 20];
	int status, again;
	const char *files = "examples/holds.yaml none.yaml examples/high_pedestal.yaml "
	                    "examples/substitute.yaml "
			    "examples/concrete_unknown.yaml examples/shim_pads.yaml";
	char text[400];
	snprintf(text, sizeof text, "standfast check -j1 %s", files);
	strcpy(first, output_of(text, &status));
	cr_assert_eq(status, EXIT_NOT_COMPUTED, "the worst is the file that is not there");
	cr_assert(strstr(first, "examples/shim_pads.yaml:\n"), "a failed file stops no other");
	for (int jobs = 2; jobs <= 16; jobs *= 2) {
		snprintf(text, sizeof text, "standfast check -j%d %s", jobs, files);
		cr_assert_str_eq(output_of(text, &again), first);
		cr_assert_eq(again, status);
	}
}

Test(files, give_the_worst_status, .init = cr_redirect_stderr)
{
	int status;
	output_of("standfast check examples/holds.yaml", &status);
	cr_expect_eq(status, EXIT_HOLDS);
	output_of("standfast check examples/holds.yaml examples/concrete_unknown.yaml", &status);
	cr_expect_eq(status, EXIT_UNPROVEN);
	output_of("standfast check examples/high_pedestal.yaml examples/concrete_unknown.yaml",
	          &status);
	cr_expect_eq(status, EXIT_FAILS);
	output_of("standfast check --json none.yaml examples/high_pedestal.yaml", &status);
	cr_expect_eq(status, EXIT_NOT_COMPUTED);
	output_of("standfast show examples/high_pedestal.yaml", &status);
	cr_expect_eq(status, EXIT_HOLDS);
}

Test(files, one_json_line_each_errors_too, .init = cr_redirect_stderr)
{
	int status;
	const char *page = output_of(
		"standfast check --json none.yaml examples/holds.yaml examples", &status);
	size_t lines = 0;
	for (const char *at = page; *at; at++)
		lines += *at == '\n';
	cr_expect_eq(lines, 3);
	cr_expect(strstr(page, "\"file\":\"none.yaml\",\"sha256\":\"\"},\"error\":true"));
	cr_expect(strstr(page, "is a directory"));
}

Test(files, are_hashed_and_limited)
{
	char name[32];
	FILE *made = tmpfile();
	int descriptor = fileno(made);
	struct input_file file;
	snprintf(name, sizeof name, "/dev/fd/%d", descriptor);
	/* the test vector "abc" of FIPS 180-2, appendix B.1 */
	cr_assert_eq(write(descriptor, "abc", 3), 3);
	cr_assert(input_file_read(name, &file));
	cr_expect_str_eq(file.sha256,
	                 "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
	free(file.bytes);
	/* far more than 1 MiB: read up to the byte that shows it, and hashed in no case */
	cr_assert_eq(ftruncate(descriptor, 3 << 20), 0);
	cr_expect(input_file_read(name, &file));
	cr_expect_eq(file.length, (1 << 20) + 1);
	cr_expect_str_eq(file.sha256, "");
	free(file.bytes);
	fclose(made);
}

static struct input_file file_of(const char *bytes, size_t length, char name[32])
{
	struct input_file file;
	FILE *made = tmpfile();
	snprintf(name, 32, "/dev/fd/%d", fileno(made));
	cr_assert_eq(write(fileno(made), bytes, length), (ssize_t)length);
	input_file_read(name, &file);
	free(file.bytes);
	fclose(made);
	return file;
}

Test(files, that_are_empty_or_no_text_are_told_so_once)
{
	char name[32];
	cr_expect_str_eq(file_of("", 0, name).reason,
	                 "the file is empty; begin with: standfast new");
	cr_expect_eq(strncmp(file_of("a\0b", 3, name).reason, "this is not a text file", 23), 0);
	cr_expect_str_eq(file_of("a: 1\n", 5, name).reason, "");
}

Test(files, that_are_too_large_get_the_code_of_it)
{
	char name[64], call[100];
	int status;
	FILE *made = tmpfile();
	cr_assert_eq(ftruncate(fileno(made), (1 << 20) + 1), 0);
	snprintf(name, sizeof name, "/dev/fd/%d", fileno(made));
	snprintf(call, sizeof call, "standfast check --json %s", name);
	cr_redirect_stderr();
	const char *page = output_of(call, &status);
	cr_expect_eq(status, EXIT_NOT_COMPUTED);
	cr_expect(strstr(page, "\"code\":\"E02\""), "%s", page);
	fclose(made);
}

/* --- the arm, histories and pieces --- */

Test(arm_command, tells_whether_every_case_was_computed, .init = cr_redirect_stderr)
{
	int status;
	const char *page = output_of("standfast arm tests/support/demo_arm.yaml", &status);
	cr_expect_eq(status, EXIT_HOLDS);
	cr_expect(strstr(page, "\n  reactions:\n"), "%s", page);
	output_of("standfast arm tests/support/demo_two_joints.yaml", &status);
	cr_expect_eq(status, EXIT_UNPROVEN, "normal motion lacks an acceleration");
	page = output_of("standfast arm examples/holds.yaml", &status);
	cr_expect_eq(status, EXIT_UNPROVEN, "a data sheet alone");
	cr_expect(strstr(page, "Nothing to compute"), "%s", page);
	page = output_of("standfast arm --json tests/golden/errors/history_missing.yaml", &status);
	cr_expect_eq(status, EXIT_NOT_COMPUTED);
	cr_expect(strstr(page, "\"error\":true"), "%s", page);
}

Test(arm_command, gives_the_same_bytes_with_any_number_of_threads, .init = cr_redirect_stderr)
{
	static char first[1 << 20];
	int status;
	char text[100];
	strcpy(first, output_of("standfast arm --json -j1 tests/support/demo_arm.yaml", &status));
	cr_assert_eq(status, EXIT_HOLDS);
	for (int jobs = 2; jobs <= 8; jobs *= 2) {
		snprintf(text, sizeof text,
		         "standfast arm --json -j%d tests/support/demo_arm.yaml", jobs);
		cr_assert_str_eq(output_of(text, &status), first);
	}
}

Test(histories, are_looked_for_beside_the_cell_file)
{
	static const struct { const char *file, *reason; } cases[] = {
		{"history_missing", "nowhere.csv: cannot be opened: No such file"},
		{"history_folder", "../expected: is a directory"},
		{"history_nan", "row 3, Fy"}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char text[100];
		int status;
		snprintf(text, sizeof text, "standfast check --json tests/golden/errors/%s.yaml",
		         cases[i].file);
		cr_redirect_stderr();
		const char *page = output_of(text, &status);
		cr_expect_eq(status, EXIT_NOT_COMPUTED);
		cr_expect(strstr(page, cases[i].reason), "%s", page);
	}
}

enum { PIECES = 1000 };
static int piece_done[PIECES];

static void mark_piece(void *job, size_t index)
{
	((int *)job)[index]++;
}

Test(pool, does_every_piece_once)
{
	static struct pool pool;
	for (unsigned threads = 1; threads <= 8; threads++) {
		pool_open(&pool, threads, NULL);
		memset(piece_done, 0, sizeof piece_done);
		for (size_t count = 0; count <= PIECES; count += count < 3 ? 1 : 331)
			pool_run(&pool, "pieces", count, mark_piece, piece_done);
		pool_close(&pool);
		/* counts 0, 1, 2, 3, 334, 665 and 996 */
		for (size_t i = 0; i < PIECES; i++)
			cr_assert_eq(piece_done[i], i < 1 ? 6 : i < 2 ? 5 : i < 3 ? 4 : i < 334 ? 3
			                            : i < 665 ? 2 : i < 996 ? 1 : 0,
			             "piece %zu, %u threads", i, threads);
	}
}

/* --- new files --- */

static char folder[] = "build/new-file-XXXXXX";

static size_t files_there(void)
{
	char command[100];
	size_t count = 0;
	snprintf(command, sizeof command, "ls -A %s", folder);
	FILE *list = popen(command, "r");
	for (int c; (c = fgetc(list)) != EOF;)
		count += c == '\n';
	pclose(list);
	return count;
}

static void expect_content(const char *path, const char *wanted)
{
	char text[100] = "";
	FILE *file = fopen(path, "r");
	cr_assert(file);
	text[fread(text, 1, sizeof text - 1, file)] = 0;
	fclose(file);
	cr_expect_str_eq(text, wanted);
}

Test(new_file, is_kept_unless_forced_and_leaves_nothing_else, .init = cr_redirect_stderr)
{
	char path[64], missing[80];
	struct buffer one = {"one", 3, 3}, two = {"two\n", 4, 4};
	struct stat status;
	mkdir("build", 0777);
	cr_assert(mkdtemp(folder), "run in the top folder");
	snprintf(path, sizeof path, "%s/cell.yaml", folder);
	snprintf(missing, sizeof missing, "%s/none/cell.yaml", folder);
	umask(022);
	cr_expect(new_file_write(path, &one, false));
	expect_content(path, "one");
	cr_expect(stat(path, &status) == 0 && (status.st_mode & 0777) == 0644,
	          "rights as any new file");
	cr_expect_not(new_file_write(path, &two, false));
	expect_content(path, "one");
	cr_expect(new_file_write(path, &two, true));
	expect_content(path, "two\n");
	cr_expect_not(new_file_write(missing, &one, false));
	cr_expect_not(new_file_write(folder, &one, true), "a folder is no file");
	cr_expect_eq(files_there(), 1, "no temporary file stays behind");
	unlink(path);
	rmdir(folder);
}
