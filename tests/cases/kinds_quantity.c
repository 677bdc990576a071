/* conversion: `value` in its unit, read as `dimension`, gives the plain number in the unit `to`. */
#include "kinds.h"

#include <criterion/criterion.h>
#include <string.h>

void kind_conversion(struct test_case *test, struct outputs *out)
{
	const char *to = case_word(test, "to");
	for (int dimension = DIM_SHARE; dimension < DIMENSIONS; dimension++) {
		const struct unit *close = NULL;
		const struct unit *unit = quantity_unit(to, strlen(to), (enum dimension)dimension,
		                                        &close);
		if (unit == NULL)
			continue;
		double value = case_number(test, "value", unit->dimension);
		output_number(out, DIM_FACTOR, value / unit->factor, "result");
		return;
	}
	case_fail(test, test->line, "\"%s\" is no unit", to);
}
