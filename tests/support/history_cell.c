#include "history_cell.h"

#include "sample_cell.h"

#include <criterion/criterion.h>
#include <stdarg.h>
#include <string.h>

enum { MOST_CHANGES = 16 };

/* outlives the trials of one test */
static struct history_file file[2];
static struct history_files files = {file, 2};

void history_trial_with(struct trial *trial, const char *a, const char *b,
                        const struct change *change, size_t count, struct check_options *options)
{
	static const struct change base[] = {
		{"arm.reactions", NULL},
		{"arm.history", "[{file: a.csv, of: normal}, {file: b.csv, of: emergency_stop}]"},
		{"arm.turned", "0 deg"},
		{"cell.parts", "[{mass: 1000 kg, at: [0 mm, 0 mm, 0 mm]}]"}};
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	const char *text = text_with(&arena, sample_lift, base, 4);
	text = text_with(&arena, text, change, count);
	file[0] = (struct history_file){"a.csv", a, strlen(a), 1, ""};
	file[1] = (struct history_file){"b.csv", b, strlen(b), 2, ""};
	options->histories = &files;
	trial_open(trial, text, options);
	cr_assert_eq(trial->reading.status, DONE, "%s", reading_faults(&trial->reading));
	arena_close(&arena);
}

void history_trial_open(struct trial *trial, const char *a, const char *b,
                        const struct change *change, size_t count)
{
	struct check_options options = {0};
	history_trial_with(trial, a, b, change, count, &options);
}

static struct trial current;
static bool any;

const struct check_result *history_judged(const char *a, const char *b, const char *id, ...)
{
	struct change change[MOST_CHANGES];
	size_t count = 0;
	va_list pairs;
	va_start(pairs, id);
	for (const char *path; (path = va_arg(pairs, const char *)) && count < MOST_CHANGES;
	     count++)
		change[count] = (struct change){path, va_arg(pairs, const char *)};
	va_end(pairs);
	if (any)
		trial_close(&current);
	history_trial_open(&current, a, b, change, count);
	any = true;
	const struct check_result *check = trial_check(&current, id);
	cr_assert(check, "%s is left out", id);
	return check;
}

const struct result *history_result(void)
{
	return current.result;
}

bool held_but_for_rows(const struct check_result *check)
{
	return check->finding.verdict == UNPROVEN && check->finding.missing_count == 0 &&
	       strstr(check->finding.reason, "too few rows") != NULL;
}
