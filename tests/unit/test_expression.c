/* The evaluator that the other tests trust. */
#include "../support/expression.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static bool letters(const void *user, const char *name, size_t length, double *value)
{
	(void)user;
	if (length == 1 && *name >= 'a' && *name <= 'e') {
		*value = *name - 'a' + 1;   /* a = 1 ... e = 5 */
		return true;
	}
	if (length == 5 && !strncmp(name, "N_a_1", 5)) {
		*value = 100;
		return true;
	}
	return false;
}

static double value_of(const char *text)
{
	char fault[200] = "";
	double value = 0;
	cr_assert(expression_evaluate(text, letters, NULL, &value, fault, sizeof fault), "%s",
	          fault);
	return value;
}

static bool refused(const char *text)
{
	char fault[200] = "";
	double value = 0;
	return !expression_evaluate(text, letters, NULL, &value, fault, sizeof fault) && *fault;
}

Test(expression, precedence)
{
	cr_assert_eq(value_of("1 + 2 * 3"), 7);
	cr_assert_eq(value_of("(1 + 2) * 3"), 9);
	cr_assert_eq(value_of("8 / 4 / 2"), 1);
	cr_assert_eq(value_of("8 - 4 - 2"), 2);
	cr_assert_eq(value_of("2 ^ 3 ^ 2"), 512);
	cr_assert_eq(value_of("-2 ^ 2"), -4);
	cr_assert_eq(value_of("2 ^ -1"), 0.5);
	cr_assert_eq(value_of("2 * -3"), -6);
	cr_assert_eq(value_of("1.5e3 + 0.25"), 1500.25);
}

Test(expression, names_and_functions)
{
	cr_assert_eq(value_of("a + b * c - d / e"), 1 + 6 - 0.8);
	cr_assert_eq(value_of("N_a_1 / d"), 25);
	cr_assert_eq(value_of("sqrt(d) + abs(a - e)"), 6);
	cr_assert_eq(value_of("min(c, b, d) + max(a, e, d)"), 7);
	cr_assert_float_eq(value_of("b^(5/3)"), pow(2, 5.0 / 3.0), 1e-15);
}

Test(expression, refuses_what_it_cannot_read)
{
	cr_assert(refused(""));
	cr_assert(refused("1 +"));
	cr_assert(refused("(1 + 2"));
	cr_assert(refused("1 + 2)"));
	cr_assert(refused("x + 1"));
	cr_assert(refused("1 2"));
	cr_assert(refused("sqrt(1, 2)"));
	cr_assert(refused("sin(1)"));
	cr_assert(refused("2 % 3"));
}
