/* The median of time steps, against sorting them all. */
#include "../../src/arm/step_sizes.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdlib.h>

static int rising(const void *left, const void *right)
{
	double a = *(const double *)left, b = *(const double *)right;
	return (a > b) - (a < b);
}

/* From all alike to over eight decades. */
Test(step_sizes, median_within_a_bin)
{
	static double step[2001];
	for (int round = 0; round < 200; round++) {
		struct step_sizes sizes = {0};
		size_t count = (size_t)(1 + round * 10);
		for (size_t i = 0; i < count; i++) {
			double turn = fmod((double)(i * 7919 + (size_t)round) * 0.6180339887, 1);
			step[i] = exp(-12 + 20 * turn * (round % 7) / 6);
			step_sizes_add(&sizes, step[i], (uint32_t)i, 0);
		}
		qsort(step, count, sizeof *step, rising);
		double exact = step[(count - 1) / 2];
		/* width of a bin: a sixteenth of the power of two below it */
		cr_assert_float_eq(step_sizes_median(&sizes), exact, exact / 16, "%zu steps",
		                   count);
		for (size_t i = 0; i < LONGEST_STEPS && i < count; i++)
			cr_assert_eq(sizes.longest[i].step, step[count - 1 - i]);
	}
}

/* Of two the lower, of three the middle one; of equal steps the first is the longest. */
Test(step_sizes, few_steps)
{
	struct step_sizes sizes = {0};
	cr_assert_eq(step_sizes_median(&sizes), 0);
	step_sizes_add(&sizes, 2, 1, 11);
	step_sizes_add(&sizes, 1, 2, 12);
	cr_assert_eq(step_sizes_median(&sizes), 1);
	step_sizes_add(&sizes, 2, 3, 13);
	cr_assert_eq(step_sizes_median(&sizes), 2);
	cr_assert(sizes.longest[0].row == 1 && sizes.longest[0].line == 11);
	cr_assert(sizes.longest[1].row == 3 && sizes.longest[2].row == 2);
	cr_assert_eq(sizes.longest[3].step, 0);
	for (uint32_t row = 4; row < 9; row++)
		step_sizes_add(&sizes, 2, row, row + 10);
	cr_assert(sizes.longest[2].row == 4 && sizes.longest[4].row == 6);
}

/* A step is surely longer from the next bin on: a sixteenth of the power of two below. */
Test(step_sizes, steps_above_a_limit)
{
	struct step_sizes sizes = {0};
	for (uint32_t i = 0; i < 32; i++)
		step_sizes_add(&sizes, 1 + i / 16.0, i, i);
	/* 1, 1 1/16 ... 2 each in a bin of its own, from 2 on by twos */
	cr_assert_eq(step_sizes_above(&sizes, 1), 31);
	cr_assert_eq(step_sizes_above(&sizes, 1.07), 30);
	cr_assert_eq(step_sizes_above(&sizes, 2.5), 6);
	cr_assert_eq(step_sizes_above(&sizes, 3), 0);
}

Test(step_sizes, outermost_bins_take_the_rest)
{
	struct step_sizes sizes = {0};
	step_sizes_add(&sizes, 1e-300, 1, 1);
	step_sizes_add(&sizes, 5e-324, 2, 2);
	cr_assert_float_eq(step_sizes_median(&sizes), 5e-301, 1e-310);
	cr_assert_eq(step_sizes_above(&sizes, 1e-9), 0);
	step_sizes_add(&sizes, 1e300, 3, 3);
	step_sizes_add(&sizes, 1e301, 4, 4);
	step_sizes_add(&sizes, 1e302, 5, 5);
	cr_assert_gt(step_sizes_median(&sizes), 1e299);
	cr_assert_eq(step_sizes_above(&sizes, 1), 3);
	/* nothing is surely longer than what shares the last bin */
	cr_assert_eq(step_sizes_above(&sizes, 1e7), 0);
	cr_assert_eq(sizes.longest[0].row, 5);
}
