/* The whole program with an allocator that fails at call N, for every N until a run gets through.
 *
 * Linked with --wrap, so that every allocation of the program and of libyaml goes through here.
 * Each run is a process of its own. Whatever fails, the run must end with status 2 and a message,
 * or do without that block and give exactly what it gives otherwise; and it must free what it took.
 * Twice: one failure alone, and every call from N on (a machine that is out of memory stays so). */
#include <errno.h>
#include <stdatomic.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

int standfast_main(int argc, char **argv);   /* main of src/cli/main.c, renamed by the Makefile */

void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *old, size_t size);
void __real_free(void *block);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__wrap_realloc(void *old, size_t size);
void __wrap_free(void *block);
char *__wrap_strdup(const char *text);

/* --- the failing allocator
 * ------------------------------------------------------------------------ */

enum { MAX_LIVE = 1 << 16, MAX_CALLS = 200000 };

static long fail_at;                 /* 0: never */
static bool sticky, watching;
static atomic_long calls;
static char gone;                    /* stands where a block was */
static void *live[MAX_LIVE];         /* blocks taken and not yet freed, an open hash */
static long live_count;
static atomic_flag lock = ATOMIC_FLAG_INIT;

static size_t slot_of(const void *block)
{
	return (size_t)(((uintptr_t)block >> 4) * 0x9E3779B97F4A7C15u >> 40) % MAX_LIVE;
}

static void *remember(void *block)
{
	if (block == NULL || !watching)
		return block;
	while (atomic_flag_test_and_set(&lock))
		;
	size_t at = slot_of(block);
	while (live[at] != NULL && live[at] != &gone)
		at = (at + 1) % MAX_LIVE;
	live[at] = block;
	live_count++;
	atomic_flag_clear(&lock);
	return block;
}

/* blocks that the C library itself handed out are not in the table */
static void forget(const void *block)
{
	if (block == NULL || !watching)
		return;
	while (atomic_flag_test_and_set(&lock))
		;
	size_t at = slot_of(block);
	for (int steps = 0; live[at] != NULL && steps < MAX_LIVE; at = (at + 1) % MAX_LIVE, steps++)
		if (live[at] == block) {
			live[at] = &gone;
			live_count--;
			break;
		}
	atomic_flag_clear(&lock);
}

static bool fails(void)
{
	if (!watching)
		return false;
	long call = atomic_fetch_add(&calls, 1) + 1;
	bool now = fail_at > 0 && (call == fail_at || (sticky && call > fail_at));
	if (now)
		errno = ENOMEM;
	return now;
}

void *__wrap_malloc(size_t size)
{
	return fails() ? NULL : remember(__real_malloc(size));
}

void *__wrap_calloc(size_t count, size_t size)
{
	return fails() ? NULL : remember(__real_calloc(count, size));
}

void *__wrap_realloc(void *old, size_t size)
{
	if (size > 0 && fails())
		return NULL;
	forget(old);
	return remember(__real_realloc(old, size));
}

void __wrap_free(void *block)
{
	forget(block);
	__real_free(block);
}

char *__wrap_strdup(const char *text)
{
	char *copy = __wrap_malloc(strlen(text) + 1);
	return copy == NULL ? NULL : strcpy(copy, text);
}

/* --- one run in a process of its own
 * ----------------------------------------------------------------- */

struct report { long calls, live; };

static int report_to = -1;

/* runs however the program ends, but after its own atexit handlers */
static void send_report(void)
{
	watching = false;
	struct report report = {atomic_load(&calls), live_count};
	if (write(report_to, &report, sizeof report) != (ssize_t)sizeof report)
		_exit(99);
}

static void become_program(int argc, char **argv, FILE *out, FILE *err)
{
	if (dup2(fileno(out), STDOUT_FILENO) < 0 || dup2(fileno(err), STDERR_FILENO) < 0)
		_exit(98);
	atexit(send_report);
	watching = true;
	exit(standfast_main(argc, argv));
}

struct run {
	bool ended;              /* by itself, with a report */
	int status;
	struct report report;
	char out[1 << 18], err[1 << 14];
	size_t out_length;
};

static size_t slurp(FILE *file, char *into, size_t room)
{
	rewind(file);
	size_t length = fread(into, 1, room - 1, file);
	into[length] = '\0';
	return length;
}

static void run_once(int argc, char **argv, long at, bool stick, struct run *run)
{
	int ends[2];
	FILE *out = tmpfile(), *err = tmpfile();
	if (out == NULL || err == NULL || pipe(ends) < 0)
		abort();
	fflush(stdout);
	pid_t child = fork();
	if (child == 0) {
		fail_at = at;
		sticky = stick;
		report_to = ends[1];
		become_program(argc, argv, out, err);
	}
	close(ends[1]);
	int status = 0;
	ssize_t got = read(ends[0], &run->report, sizeof run->report);
	waitpid(child, &status, 0);
	close(ends[0]);
	run->ended = got == (ssize_t)sizeof run->report && WIFEXITED(status);
	run->status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
	run->out_length = slurp(out, run->out, sizeof run->out);
	slurp(err, run->err, sizeof run->err);
	fclose(out);
	fclose(err);
}

/* --- the loop
 * ---------------------------------------------------------------------------------------- */

static long passed, failed, every = 1;

static void complain(char **argv, long at, bool stick, const struct run *run, const char *what)
{
	failed++;
	if (failed > 20)
		return;
	printf("FAILED: %s", what);
	for (; *argv != NULL; argv++)
		printf(" %s", *argv);
	printf(", call %ld%s: status %d, %ld blocks not freed; standard error: %.400s\n", at,
	       stick ? " and all later" : "", run->status, run->report.live, run->err);
}

static const char *fault_of(const struct run *run, const struct run *normal)
{
	bool same = run->status == normal->status && run->out_length == normal->out_length &&
	            !memcmp(run->out, normal->out, run->out_length);
	if (!run->ended)
		return "it crashed:";
	if (run->report.live != 0)
		return "it leaked:";
	if (!same && run->status != 2)
		return "neither the usual result nor an error:";
	if (!same && strstr(run->err, "memory") == NULL)
		return "no message about memory:";
	return NULL;
}

static void try_every_call(int argc, char **argv, bool stick)
{
	static struct run normal, run;
	run_once(argc, argv, 0, false, &normal);
	if (!normal.ended || normal.report.live != 0 || normal.report.calls == 0) {
		complain(argv, 0, stick, &normal, "the undisturbed run:");
		return;
	}
	for (long at = 1; at <= MAX_CALLS; at += every) {
		run_once(argc, argv, at, stick, &run);
		const char *fault = fault_of(&run, &normal);
		if (fault != NULL)
			complain(argv, at, stick, &run, fault);
		else
			passed++;
		if (run.ended && run.report.calls < at)
			return;   /* call `at` was not reached: this was a clean run */
	}
	complain(argv, MAX_CALLS, stick, &run, "no end:");
}

int main(int argc, char **argv)
{
	static char *runs[][5] = {
		{"standfast", "check", "examples/holds.yaml", NULL},
		{"standfast", "check", "--json", "examples/holds.yaml", NULL},
		{"standfast", "require", "examples/holds.yaml", NULL},
		{"standfast", "show", "examples/holds.yaml", NULL},
		{"standfast", "check", "tests/golden/errors/unknown_key.yaml", NULL},
		{"standfast", "arm", "tests/support/demo_two_joints.yaml", NULL},
		{"standfast", "check", "tests/support/demo_two_joints.yaml", NULL},
		{"standfast", "check", "tests/golden/errors/history_nan.yaml", NULL},
	};
	/* --every N: only each Nth call, for builds in which a process is slow to start */
	if (argc > 2 && !strcmp(argv[1], "--every")) {
		every = strtol(argv[2], NULL, 10);
		argc -= 2;
		argv += 2;
	}
	if (argc > 1) {
		argv[0] = runs[0][0];
		try_every_call(argc, argv, false);
		try_every_call(argc, argv, true);
	}
	for (size_t i = 0; argc == 1 && i < sizeof runs / sizeof *runs; i++) {
		int count = 0;
		while (runs[i][count] != NULL)
			count++;
		try_every_call(count, runs[i], false);
		try_every_call(count, runs[i], true);
	}
	printf("allocation faults: %ld passed, %ld failed\n", passed, failed);
	return failed || passed == 0;
}
