/* concrete_strength: a class, a specified strength with its specimen, or cores. */
#include "kinds.h"

#include "../../src/cell/fields.h"
#include "../../src/floor/strength.h"

#include <criterion/criterion.h>
#include <string.h>

static struct word class_word(struct test_case *test)
{
	const char *name = case_word(test, "class");
	for (int i = 0; concrete_classes[i] != NULL; i++)
		if (!strcmp(concrete_classes[i], name))
			return (struct word){{{0}, GIVEN}, i};
	case_fail(test, test->line, "\"%s\" is no class", name);
	return (struct word){0};
}

static struct number given_number(double value)
{
	return (struct number){{{0}, GIVEN}, value, NULL};
}

/* everything that is evidence is at its best, so that the number alone is tested */
static void state_evidence(struct concrete *concrete)
{
	concrete->strength_evidence = (struct word){{{0}, GIVEN}, BY_DELIVERY_NOTE};
	concrete->age = given_number(90.0 * 86400);
	concrete->condition = (struct word){{{0}, GIVEN}, SOUND};
}

void kind_concrete_strength(struct test_case *test, struct outputs *out)
{
	static struct cell cell;
	static double cores[MAX_CORES];
	memset(&cell, 0, sizeof cell);
	struct concrete *concrete = &cell.slab.concrete;
	state_evidence(concrete);
	if (case_has(test, "class"))
		concrete->strength_class = class_word(test);
	if (case_has(test, "specified")) {
		concrete->specified = given_number(case_number(test, "specified", DIM_STRESS));
		bool cube = !strcmp(case_word(test, "specimen"), "cube");
		concrete->specimen = (struct word){{{0}, GIVEN}, cube ? CUBE : CYLINDER};
	}
	if (case_has(test, "cores")) {
		size_t count = case_numbers(test, "cores", DIM_STRESS, cores, MAX_CORES);
		concrete->cores = (struct numbers){{{0}, GIVEN}, cores, count};
		concrete->core_diameter = given_number(94);
		concrete->core_length = given_number(188);
	}
	struct concrete_strength strength = {0};
	concrete_strength(&cell, &strength, NULL);
	output_word(out, "known", strength.known ? "yes" : "no");
	output_word(out, "shown", strength.shown ? "yes" : "no");
	output_number(out, DIM_STRESS, strength.value, "strength");
	output_number(out, DIM_STRESS, strength.mean, "mean");
	output_number(out, DIM_SHARE, strength.variation, "variation");
}
