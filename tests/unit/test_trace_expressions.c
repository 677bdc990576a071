/* What is printed is what was computed: every expression of every written calculation, of every
 * example, is evaluated from the steps before it and compared with its value; and writing it down
 * changes no bit. */
#include "../../src/check.h"
#include "../../src/input/reader.h"
#include "../support/expression.h"

#include <criterion/criterion.h>
#include <glob.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* one multiplication rounds to 1.1e-16; the longest chains here are some hundred operations */
static const double tolerance = 1e-12;

struct earlier { const struct step *steps; size_t count; double *largest; };

static bool look_up(const void *user, const char *name, size_t length, double *value)
{
	const struct earlier *earlier = user;
	for (size_t i = earlier->count; i-- > 0;)
		if (strlen(earlier->steps[i].symbol) == length &&
		    !strncmp(earlier->steps[i].symbol, name, length)) {
			*value = earlier->steps[i].value;
			*earlier->largest = fmax(*earlier->largest, fabs(*value));
			return true;
		}
	return false;
}

static void compare_step(const char *where, const struct trace *trace, size_t at)
{
	const struct step *step = &trace->steps[at];
	/* the largest operand bounds the rounding of a small difference */
	double largest = 0, value = 0;
	struct earlier earlier = {trace->steps, at, &largest};
	char fault[300] = "";
	bool read = expression_evaluate(step->expression, look_up, &earlier, &value, fault,
	                                sizeof fault);
	cr_expect(read, "%s, %s: %s", where, step->symbol, fault);
	if (!read)
		return;
	bool is_sum = strpbrk(step->expression, "+-") != NULL;
	double size = fmax(fabs(value), is_sum ? largest : fabs(step->value));
	double allowed = tolerance * size;
	cr_expect(value == step->value || fabs(value - step->value) <= allowed,
	          "%s, %s = %s: printed %.17g, the expression gives %.17g", where, step->symbol,
	          step->expression, step->value, value);
}

static size_t compare_trace(const char *file, const struct check_result *check)
{
	char where[200];
	size_t expressions = 0;
	snprintf(where, sizeof where, "%s, %s", file, check->check->id);
	cr_expect(!check->trace.full, "%s: steps were lost, raise MAX_STEPS", where);
	for (size_t i = 0; i < check->trace.count; i++)
		if (*check->trace.steps[i].expression) {
			compare_step(where, &check->trace, i);
			expressions++;
		}
	return expressions;
}

static char *read_all(const char *file, size_t *length)
{
	FILE *in = fopen(file, "rb");
	cr_assert_not_null(in);
	char *bytes = malloc(MAX_FILE_BYTES);
	cr_assert_not_null(bytes);
	*length = fread(bytes, 1, MAX_FILE_BYTES, in);
	fclose(in);
	return bytes;
}

static struct result *run(struct arena *arena, const char *file, bool trace)
{
	size_t length;
	char *bytes = read_all(file, &length);
	static struct diagnostics faults;
	const struct cell *cell = NULL;
	cr_assert_eq(cell_read(arena, bytes, length, 0, &faults, &cell), DONE, "%s: %s", file,
	             faults.list[0].message);
	free(bytes);
	struct result *result = NULL;
	const struct check_options options = {.trace = trace};
	cr_assert_eq(check_run(arena, cell, &options, &result), DONE, "%s", file);
	return result;
}

static bool same_bits(double a, double b)
{
	return memcmp(&a, &b, sizeof a) == 0;
}

static void compare_runs(const char *file, const struct result *plain, const struct result *traced)
{
	cr_assert_eq(plain->check_count, traced->check_count);
	for (size_t i = 0; i < plain->check_count; i++) {
		const struct finding *a = &plain->checks[i].finding,
				     *b = &traced->checks[i].finding;
		cr_expect(a->verdict == b->verdict && a->computed == b->computed, "%s: %s", file,
		          plain->checks[i].check->id);
		cr_expect(!a->computed || same_bits(a->ratio, b->ratio),
		          "%s: %s is %.17g, with the trace %.17g", file, plain->checks[i].check->id,
		          a->ratio, b->ratio);
	}
}

Test(trace_expressions, every_example)
{
	glob_t found;
	size_t expressions = 0;
	cr_assert_eq(glob("examples/*.yaml", 0, NULL, &found), 0, "run in the top folder");
	for (size_t i = 0; i < found.gl_pathc; i++) {
		struct arena arena;
		arena_open(&arena, NULL, NULL);
		const struct result *plain = run(&arena, found.gl_pathv[i], false);
		const struct result *traced = run(&arena, found.gl_pathv[i], true);
		compare_runs(found.gl_pathv[i], plain, traced);
		for (size_t k = 0; k < traced->check_count; k++)
			expressions += compare_trace(found.gl_pathv[i], &traced->checks[k]);
		arena_close(&arena);
	}
	globfree(&found);
	cr_assert_gt(expressions, 50, "only %zu expressions in all examples", expressions);
}
