/* The line with numbers: every identifier replaced by its earlier value, nothing else changed. */
#include "../../src/check.h"
#include "../../src/input/reader.h"
#include "../../src/pages/substitute.h"
#include "../support/expression.h"
#include "../support/printed.h"

#include <criterion/criterion.h>
#include <glob.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct step steps[] = {
	{"N", "", 42000, DIM_FORCE, "", "", {0}},
	{"share", "", 0.25, DIM_SHARE, "", "", {0}},
	{"h", "", 70.04999, DIM_LENGTH, "", "", {0}},
	{"M", "", -1.5e6, DIM_MOMENT, "", "", {0}},
	{"k", "", 2.0 / 3, DIM_FACTOR, "", "", {0}},
	{"N_2", "", 1e-7, DIM_FORCE, "", "", {0}},
	{"f", "", 28, DIM_STRESS, "", "", {0}},
	{"N", "", 9, DIM_FORCE, "", "", {0}}, /* a second value of N: later lines take it */
};
enum { STEPS = sizeof steps / sizeof *steps };

static const struct {
	const char *expression, *shown, *substituted;
} lines[] = {
	{"share*N", "share * N", "0.25 * 9 N"},
	{"share * k", "share * k", "0.25 * 0.6667"},
	{"h^1.5", "h^1.5", "(70.05 mm)^1.5"},
	{"k^(5/3)", "k^(5 / 3)", "0.6667^(5 / 3)"},
	{"M/h", "M / h", "(-1500000 N mm) / 70.05 mm"},
	{"N/M", "N / M", "9 N / (-1500000 N mm)"},
	{"-M", "-M", "-(-1500000 N mm)"},
	{"2*(-k+1e3)", "2 * (-k + 1e3)", "2 * (-0.6667 + 1e3)"},
	{"max(N,N_2, 0)", "max(N, N_2, 0)", "max(9 N, 1e-7 N, 0)"},
	{"4700*sqrt(f)", "4700 * sqrt(f)", "4700 * sqrt(28 MPa)"},
	{"min( k ,1)", "min(k, 1)", "min(0.6667, 1)"},
	{"unknown + k", "unknown + k", "unknown + 0.6667"},
	{"N_20 - N_2", "N_20 - N_2", "N_20 - 1e-7 N"},
	{"1.5e-3 - k", "1.5e-3 - k", "1.5e-3 - 0.6667"},
	{"5", "5", "5"},
};

static char *printed_line(const struct trace *trace, size_t index, bool substituted)
{
	struct printed out = {0};
	struct writer writer;
	writer_open(&writer, printed_write, &out, false);
	flow_begin(&writer, 0);
	if (substituted)
		flow_substituted(&writer, trace, index);
	else
		flow_expression(&writer, trace, index);
	flow_end(&writer);
	cr_assert(writer_close(&writer));
	/* one line again: wrapping is the writer's matter */
	for (char *at = out.text; *at; at++)
		if (*at == '\n')
			*at = at[1] ? ' ' : 0;
	return out.text;
}

Test(substitute, replaces_identifiers_and_spaces_operators)
{
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
		struct step all[STEPS + 1];
		memcpy(all, steps, sizeof steps);
		all[STEPS] = (struct step){"x", lines[i].expression, 0, DIM_FACTOR, "", "", {0}};
		struct trace trace = {.steps = all, .count = STEPS + 1};
		char *plain = printed_line(&trace, STEPS, false),
		     *numbers = printed_line(&trace, STEPS, true);
		cr_expect_str_eq(plain, lines[i].shown);
		cr_expect_str_eq(numbers, lines[i].substituted);
		cr_expect_eq(has_substitution(&trace, STEPS),
		             strcmp(lines[i].shown, lines[i].substituted) != 0);
		free(plain);
		free(numbers);
	}
}

Test(substitute, takes_no_value_from_later_steps)
{
	struct step two[] = {{"a", "b + 1", 0, DIM_FACTOR, "", "", {0}},
	                     {"b", "", 7, DIM_FACTOR, "", "", {0}}};
	struct trace trace = {.steps = two, .count = 2};
	char *line = printed_line(&trace, 0, true);
	cr_assert_str_eq(line, "b + 1");
	free(line);
}

/* --- on the examples: the printed line, read back, is the expression at the rounded values --- */

static double rounded(double value)
{
	char text[48];
	number_write(value, SUBSTITUTED_DIGITS, text, sizeof text);
	return strtod(text, NULL);
}

struct before { const struct step *steps; size_t count; };

static bool look_up(const void *user, const char *name, size_t length, double *value)
{
	const struct before *before = user;
	for (size_t i = before->count; i-- > 0;)
		if (strlen(before->steps[i].symbol) == length &&
		    !strncmp(before->steps[i].symbol, name, length)) {
			*value = rounded(before->steps[i].value);
			return true;
		}
	return false;
}

static void blank_out(char *text, const char *word)
{
	size_t length = strlen(word);
	for (char *at = text; (at = strstr(at, word)); at += length)
		if (!strchr("abcdefghijklmnopqrstuvwxyz", at[length]) || !at[length])
			memset(at, ' ', length);
}

/* The units of a substituted line, longest names first. */
static void without_units(char *line)
{
	static const char *const units[] = {" N mm", " mm2", " mm", " MPa",
	                                    " kg",   " rad", " N",  " s"};
	for (size_t i = 0; i < sizeof units / sizeof *units; i++)
		blank_out(line, units[i]);
}

static size_t compare_steps(const char *file, const struct trace *trace)
{
	size_t compared = 0;
	for (size_t i = 0; i < trace->count; i++) {
		const struct step *step = &trace->steps[i];
		if (!step->expression || !*step->expression)
			continue;
		struct before before = {trace->steps, i};
		char fault[200] = "", *line = printed_line(trace, i, true);
		double wanted = 0, found = 0;
		cr_assert(expression_evaluate(step->expression, look_up, &before, &wanted, fault,
		                              sizeof fault),
		          "%s: %s: %s", file, step->expression, fault);
		without_units(line);
		cr_expect(expression_evaluate(line, NULL, NULL, &found, fault, sizeof fault),
		          "%s: %s: '%s': %s", file, step->symbol, line, fault);
		/* the same operations on the same numbers */
		cr_expect(found == wanted || (isnan(found) && isnan(wanted)),
		          "%s: %s: '%s' is %.17g, not %.17g", file, step->symbol, line, found,
		          wanted);
		free(line);
		compared++;
	}
	return compared;
}

static size_t compare_file(const char *path)
{
	static char bytes[1 << 20];
	struct diagnostics list = {.count = 0};
	struct arena arena;
	const struct cell *cell;
	struct result *result;
	size_t compared = 0;
	FILE *file = fopen(path, "rb");
	cr_assert(file, "%s", path);
	size_t length = fread(bytes, 1, sizeof bytes, file);
	fclose(file);
	arena_open(&arena, NULL, NULL);
	cr_assert_eq(cell_read(&arena, bytes, length, 0, &list, &cell), DONE, "%s", path);
	cr_assert_eq(check_run(&arena, cell, &(struct check_options){.trace = true}, &result), DONE,
	             "%s", path);
	for (size_t i = 0; i < result->check_count; i++)
		compared += compare_steps(path, &result->checks[i].trace);
	arena_close(&arena);
	return compared;
}

Test(substitute, printed_lines_of_the_examples_are_what_was_computed)
{
	glob_t found;
	size_t compared = 0;
	cr_assert_eq(glob("examples/*.yaml", 0, NULL, &found), 0, "run in the top folder");
	for (size_t i = 0; i < found.gl_pathc; i++)
		compared += compare_file(found.gl_pathv[i]);
	globfree(&found);
	cr_assert_gt(compared, 100, "only %zu lines", compared);
}
