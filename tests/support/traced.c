#include "traced.h"

#include "expression.h"
#include <criterion/criterion.h>
#include <ctype.h>
#include <math.h>
#include <string.h>

/* one operation rounds to 1.1e-16, and a calculation here has some ten of them */
static const double tolerance = 1e-13;

struct earlier { const struct step *steps; size_t count; double *largest; };

static bool look_up(const void *user, const char *name, size_t length, double *value)
{
	const struct earlier *earlier = user;
	for (size_t i = earlier->count; i-- > 0;)
		if (strlen(earlier->steps[i].symbol) == length &&
		    strncmp(earlier->steps[i].symbol, name, length) == 0) {
			*value = earlier->steps[i].value;
			*earlier->largest = fmax(*earlier->largest, fabs(*value));
			return true;
		}
	return false;
}

static bool is_identifier(const char *symbol)
{
	if (!isalpha((unsigned char)*symbol))
		return false;
	for (; *symbol; symbol++)
		if (!isalnum((unsigned char)*symbol) && *symbol != '_')
			return false;
	return true;
}

static void compare(const char *where, const struct trace *trace, size_t at)
{
	const struct step *step = &trace->steps[at];
	double largest = 0, value = 0;
	struct earlier earlier = {trace->steps, at, &largest};
	char fault[300] = "";
	cr_assert(expression_evaluate(step->expression, look_up, &earlier, &value, fault,
	                              sizeof fault),
	          "%s, %s: %s", where, step->symbol, fault);
	/* a difference of large operands rounds by their size */
	bool is_sum = strpbrk(step->expression, "+-") != NULL;
	double size = fmax(fabs(value), is_sum ? largest : fabs(step->value));
	cr_expect(value == step->value || fabs(value - step->value) <= tolerance * size,
	          "%s, %s = %s: %.17g, the expression gives %.17g", where, step->symbol,
	          step->expression, step->value, value);
}

size_t traced_expressions(const struct trace *trace, const char *where)
{
	size_t count = 0;
	cr_expect(!trace->full, "%s: steps were lost", where);
	for (size_t i = 0; i < trace->count; i++) {
		cr_expect(is_identifier(trace->steps[i].symbol), "%s: %s", where,
		          trace->steps[i].symbol);
		if (!*trace->steps[i].expression)
			continue;
		compare(where, trace, i);
		count++;
	}
	return count;
}

double traced_value(const struct trace *trace, const char *symbol)
{
	for (size_t i = trace->count; i-- > 0;)
		if (strcmp(trace->steps[i].symbol, symbol) == 0)
			return trace->steps[i].value;
	cr_assert_fail("no step %s", symbol);
	return NAN;
}
