/* The code methods through the whole flow: few headings against many, so that no peak between two
 * of them is missed, and lasting loads. */
#include "../../src/check.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <string.h>

enum { ROOM = 1 << 16, MOST = MAX_CHECKS };

static char text[ROOM];

static void replace(const char *old, const char *new)
{
	char *at = strstr(text, old), rest[ROOM];
	cr_assert(at, "%s", old);
	snprintf(rest, sizeof rest, "%s", at + strlen(old));
	snprintf(at, ROOM - (size_t)(at - text), "%s%s", new, rest);
}

/* examples/code_checks.yaml with one piece of text replaced. */
static void read_example(const char *old, const char *new)
{
	FILE *file = fopen("examples/code_checks.yaml", "rb");
	cr_assert(file, "run in the top folder");
	size_t length = fread(text, 1, ROOM - 256, file);
	fclose(file);
	text[length] = 0;
	replace(old, new);
}

struct ratios { const char *id[MOST]; double ratio[MOST]; size_t count; };

static void run(unsigned headings, struct ratios *out)
{
	struct reading reading;
	struct arena arena;
	struct result *result;
	struct check_options options = {.headings = headings};
	arena_open(&arena, NULL, NULL);
	reading_open(&reading, text);
	cr_assert_eq(reading.status, DONE, "%s", reading_faults(&reading));
	cr_assert_eq(check_run(&arena, reading.cell, &options, &result), DONE);
	out->count = 0;
	for (size_t i = 0; i < result->check_count; i++) {
		const struct check_result *check = &result->checks[i];
		if (!check->finding.computed || check->check->stage != OF_STATE)
			continue;
		out->id[out->count] = check->check->id;
		out->ratio[out->count++] = check->finding.ratio;
	}
	reading_close(&reading);
	arena_close(&arena);
}

static void compare(void)
{
	struct ratios few, many;
	run(0, &few);
	run(2880, &many);
	cr_assert_eq(few.count, many.count);
	cr_assert_geq(few.count, 16);
	for (size_t i = 0; i < few.count; i++) {
		cr_assert_str_eq(few.id[i], many.id[i]);
		/* the search ends where less than a millionth could be gained */
		cr_expect_geq(few.ratio[i], many.ratio[i] * (1 - 2e-6), "%s: %.9g, %.9g", few.id[i],
		              few.ratio[i], many.ratio[i]);
	}
}

Test(code_flow, headings)
{
	read_example("turned: 0 deg", "turned: 10 deg");
	compare();
}

Test(code_flow, paired_headings)
{
	read_example("    normal:  ", "    paired: yes\n    normal:  ");
	compare();
}

/* Twisting at each heading: with shear paired the twist may lie anywhere between its signs. */
Test(code_flow, an_open_gap)
{
	read_example("stand_off: none", "stand_off: {height: 20 mm, filled: no}");
	replace("{name: frame, outline:", "{name: frame, touches: shims, outline:");
	compare();
}
