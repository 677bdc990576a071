/* One parameterised test over every case of every .case file in tests/cases. */
#include "kinds.h"

#include <criterion/criterion.h>
#include <criterion/parameterized.h>
#include <glob.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_CASES = 2000 };

/* plain data: Criterion hands it to the test's own process */
struct place { char file[120]; unsigned line; };
struct places { struct place *list; size_t count; };

static void add_place(void *user, const char *file, unsigned line)
{
	struct places *places = user;
	if (places->count == MAX_CASES)
		abort();
	struct place *place = &places->list[places->count++];
	snprintf(place->file, sizeof place->file, "%s", file);
	place->line = line;
}

ParameterizedTestParameters(cases, published)
{
	struct places places = {cr_calloc(MAX_CASES, sizeof(struct place)), 0};
	glob_t found = {0};
	if (glob("tests/cases/*.case", 0, NULL, &found) == 0)
		for (size_t i = 0; i < found.gl_pathc; i++)
			case_lines(found.gl_pathv[i], add_place, &places);
	globfree(&found);
	return cr_make_param_array(struct place, places.list, places.count, NULL);
}

ParameterizedTest(struct place *place, cases, published)
{
	struct test_case *test = calloc(1, sizeof *test);
	struct outputs *outputs = calloc(1, sizeof *outputs);
	cr_assert(test != NULL && outputs != NULL);
	case_read(place->file, place->line, test);
	case_kind_function *run = NULL;
	for (size_t i = 0; i < case_kind_count; i++)
		if (!strcmp(case_kinds[i].name, test->kind))
			run = case_kinds[i].run;
	if (run == NULL)
		case_fail(test, test->line, "kind \"%s\" is not in tests/cases/kinds.c",
		          test->kind);
	run(test, outputs);
	case_judge(test, outputs);
	free(outputs);
	free(test);
}

/* the test above would pass with no file at all */
Test(cases, there_are_some)
{
	struct places places = {calloc(MAX_CASES, sizeof(struct place)), 0};
	glob_t found;
	cr_assert_eq(glob("tests/cases/*.case", 0, NULL, &found), 0, "run in the top folder");
	for (size_t i = 0; i < found.gl_pathc; i++)
		case_lines(found.gl_pathv[i], add_place, &places);
	cr_assert_gt(places.count, 20);
	globfree(&found);
	free(places.list);
}
