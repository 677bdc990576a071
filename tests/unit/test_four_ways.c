/* One cell, its arm by history, by chain, by the four numbers that the chain gives, and by the
 * lumped estimate with all moving mass at full reach: each way supposes more than the one before
 * it, so no anchor is pulled or pushed less. Through the public library, as a user has it. */
#include "../../src/standfast.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <string.h>

enum { ANCHORS = 4, ROOM = 1 << 17, FILES = 2 };

struct way { double tension[ANCHORS], shear[ANCHORS]; };

static char yaml[ROOM], csv[FILES][ROOM];

static size_t read_example(const char *name, char *to)
{
	char path[80];
	snprintf(path, sizeof path, "examples/%s", name);
	FILE *file = fopen(path, "rb");
	cr_assert(file, "%s: run in the top folder", path);
	size_t length = fread(to, 1, ROOM, file);
	fclose(file);
	cr_assert_lt(length, ROOM);
	return length;
}

static struct way loads_of(const char *name)
{
	struct way out;
	size_t length = read_example(name, yaml);
	struct standfast *run = standfast_open(NULL, NULL);
	cr_assert_eq(standfast_read(run, yaml, length, name, NULL), STANDFAST_DONE);
	cr_assert_leq(standfast_file_count(run), FILES);
	for (size_t i = 0; i < standfast_file_count(run); i++) {
		length = read_example(standfast_file_name(run, i), csv[i]);
		cr_assert_eq(standfast_give_file(run, i, csv[i], length, NULL), STANDFAST_DONE);
	}
	cr_assert_eq(standfast_compute(run, 0, NULL), STANDFAST_DONE);
	cr_assert_eq(standfast_anchor_count(run), ANCHORS);
	for (size_t i = 0; i < ANCHORS; i++) {
		struct standfast_anchor anchor;
		cr_assert(standfast_anchor(run, i, &anchor) && anchor.computed);
		out.tension[i] = anchor.tension;
		out.shear[i] = anchor.shear;
	}
	standfast_close(run);
	return out;
}

static void expect_no_less(const struct way *more, const struct way *less, const char *what)
{
	for (size_t i = 0; i < ANCHORS; i++) {
		cr_expect_gt(more->tension[i], less->tension[i], "%s, tension of A%zu: %g, %g",
		             what, i + 1, more->tension[i], less->tension[i]);
		cr_expect_gt(more->shear[i], less->shear[i], "%s, shear of A%zu: %g, %g", what,
		             i + 1, more->shear[i], less->shear[i]);
	}
}

Test(four_ways, each_supposes_more)
{
	struct way history = loads_of("arm_history.yaml"), chain = loads_of("arm_chain.yaml"),
		   numbers = loads_of("arm_reactions.yaml"), estimate = loads_of("arm_swing.yaml");
	expect_no_less(&chain, &history, "chain above history");
	expect_no_less(&numbers, &chain, "four numbers above chain");
	expect_no_less(&estimate, &numbers, "estimate above four numbers");
	/* and they are of one size: the recorded stop is near one of the worst, and the bound of
	 * the numbers near what the motion does */
	cr_expect_gt(history.tension[0], 0.5 * chain.tension[0]);
	cr_expect_lt(numbers.tension[0], 1.6 * chain.tension[0]);
}
