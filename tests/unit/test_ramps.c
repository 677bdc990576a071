/* The steepest ramps of a history, against a search of every window of every swing. */
#include "../../src/arm/ramps.h"
#include "../support/random_base.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

enum { MOST = 300 };

static const double pi = 3.14159265358979323846;

/* One part of the wrench follows the values, the others stay. */
static struct history_row row_at(const double value[], size_t i, enum history_quantity quantity)
{
	struct history_row row = {
		(double)i, {{1, 2, 3}, {4, 5, 6}}, (uint32_t)i + 1, (uint32_t)i + 2};
	if (quantity < HISTORY_MX)
		row.wrench.force[quantity - HISTORY_FX] = value[i];
	else
		row.wrench.moment[quantity - HISTORY_MX] = value[i];
	return row;
}

static struct ramp_spans spans_of(const double value[], size_t count,
                                  enum history_quantity quantity)
{
	struct ramp_spans spans = {0};
	for (size_t i = 0; i < count; i++) {
		struct history_row row = row_at(value, i, quantity);
		ramp_spans_add(&spans, &row.wrench);
	}
	return spans;
}

static struct ramp_watch watch(const double value[], size_t count, enum history_quantity quantity)
{
	struct ramp_spans spans = spans_of(value, count, quantity);
	struct ramp_watch watch;
	ramp_watch_open(&watch, &spans, quantity);
	for (size_t i = 0; i < count; i++) {
		struct history_row row = row_at(value, i, quantity);
		ramp_watch_add(&watch, &row);
	}
	ramp_watch_close(&watch);
	return watch;
}

/* --- closed cases
 * ------------------------------------------------------------------------------------ */

/* 100 percent in n equal steps: 80 percent takes the next whole number above 0.8 n. Each of the six
 * parts, up and down. */
Test(ramps, a_straight_ramp)
{
	static double value[MOST];
	for (int part = HISTORY_FX; part <= HISTORY_MZ; part++)
		for (int n = 1; n <= 40; n++)
			for (int sign = -1; sign <= 1; sign += 2) {
				for (int i = 0; i < 100; i++)
					value[i] = 50 + sign * (i < 30       ? 0
					                        : i > 30 + n ? n
					                                     : i - 30);
				struct ramp_watch got = watch(value, 100,
				                              (enum history_quantity)part);
				uint32_t rows = (uint32_t)((8 * n + 9) / 10);
				cr_assert_eq(got.samples, rows < RAMP_SAMPLES ? rows : RAMP_SAMPLES,
				             "part %d, %d steps: %u", part, n, got.samples);
				if (rows < RAMP_SAMPLES)
					cr_assert(got.at_row == (uint32_t)(31 + n) &&
					          got.at_line == got.at_row + 1);
			}
}

/* The largest of the forces and of the moments; of equal ones the first. */
Test(ramps, largest_span)
{
	static const double value[] = {-9, 3};
	for (int part = HISTORY_FX; part <= HISTORY_MZ; part++) {
		struct ramp_spans spans = spans_of(value, 2, (enum history_quantity)part);
		bool force = part < HISTORY_MX;
		cr_assert_eq((int)ramp_largest_force(&spans), force ? part : HISTORY_FX);
		cr_assert_eq((int)ramp_largest_moment(&spans), force ? HISTORY_MX : part);
		int at = part - HISTORY_FX;
		cr_assert(spans.low[at] == -9 && spans.high[at] == 3 && spans.jump[at] == 12);
	}
	struct ramp_spans spans = {0};
	struct base_wrench a = {{0, 0, 0}, {0, 0, 0}}, b = {{1, 2, 2}, {1, 1, 1}};
	ramp_spans_add(&spans, &a);
	ramp_spans_add(&spans, &b);
	cr_assert_eq(ramp_largest_force(&spans), HISTORY_FY);
	cr_assert_eq(ramp_largest_moment(&spans), HISTORY_MX);
}

/* A swing is a quarter of the span or more: a fast one of 24 % is none, one of 26 % is. */
Test(ramps, smallest_swing)
{
	static double value[MOST];
	for (int percent = 24; percent <= 26; percent += 2) {
		for (int i = 0; i < MOST; i++)
			value[i] = 100 * sin(2 * pi * i / MOST);
		/* at its middle, 200 % of the amplitude being the span */
		value[MOST / 2] = value[MOST / 2 - 1] + 2.0 * percent;
		struct ramp_watch got = watch(value, MOST, HISTORY_MY);
		cr_assert_eq(got.samples, percent < 25 ? RAMP_SAMPLES : 1, "%d %%", percent);
	}
}

/* Without a jump of 0.2/19 of the span no ramp can be short: 95 even steps have it, 96 do not. */
Test(ramps, second_pass_only_where_it_can_find_something)
{
	static double value[MOST];
	for (int i = 0; i < MOST; i++)
		value[i] = i;
	struct ramp_spans spans = spans_of(value, 95 + 1, HISTORY_FZ);
	cr_assert(ramp_is_possible(&spans, HISTORY_FZ));
	cr_assert_not(ramp_is_possible(&spans, HISTORY_MX), "a constant part has no ramps");
	spans = spans_of(value, 96 + 1, HISTORY_FZ);
	cr_assert_not(ramp_is_possible(&spans, HISTORY_FZ));
}

/* --- against every window
 * ---------------------------------------------------------------------------- */

/* First place of the extreme in [from, to), the largest for sign 1. */
static size_t extreme(const double value[], size_t from, size_t to, int sign)
{
	size_t best = from;
	for (size_t i = from; i < to; i++)
		if (sign * value[i] > sign * value[best])
			best = i;
	return best;
}

/* First row from `from` on that has come back from the extreme by the least swing; count if none.
 */
static size_t come_back(const double value[], size_t from, size_t count, int sign, double least)
{
	for (size_t i = from; i < count; i++)
		if (sign * (value[extreme(value, from, i + 1, sign)] - value[i]) >= least)
			return i;
	return count;
}

static uint32_t fewest_rows(const double value[], size_t from, size_t to)
{
	uint32_t fewest = RAMP_SAMPLES;
	double part = 0.8 * fabs(value[to] - value[from]);
	for (size_t i = from; i <= to; i++)
		for (size_t k = i + 1; k <= to && k - i < fewest; k++)
			if ((value[k] - value[i]) * (value[to] > value[from] ? 1 : -1) >= part)
				fewest = (uint32_t)(k - i);
	return fewest;
}

static uint32_t search(const double value[], size_t count)
{
	double least = 0.25 *
	               (value[extreme(value, 0, count, 1)] - value[extreme(value, 0, count, -1)]);
	uint32_t fewest = RAMP_SAMPLES;
	if (least <= 0)
		return fewest;
	/* whatever goes a least swing away first tells the direction */
	size_t down = come_back(value, 0, count, 1, least),
	       up = come_back(value, 0, count, -1, least);
	int sign = up < down ? 1 : -1;
	size_t from = extreme(value, 0, (up < down ? up : down) + 1, -sign);
	while (from < count) {
		size_t back = come_back(value, from, count, sign, least);
		size_t to = extreme(value, from, back, sign);
		uint32_t rows = fewest_rows(value, from, to);
		fewest = rows < fewest ? rows : fewest;
		if (back == count)
			break;
		from = to;
		sign = -sign;
	}
	return fewest;
}

/* Smooth motion with noise, steps, or a walk on few levels, where equal values are frequent. */
static size_t random_values(double value[MOST], struct dice *dice)
{
	size_t count = (size_t)dice_whole(dice, 2, MOST);
	int kind = dice_whole(dice, 0, 2), period = dice_whole(dice, 3, 400);
	double at = 0, noise = dice_decades(dice, -4, 0);
	for (size_t i = 0; i < count; i++) {
		if (kind == 0)
			at = sin(2 * pi * (double)i / period) + noise * dice_between(dice, -1, 1);
		else if (kind == 1)
			at += dice_whole(dice, 0, 9) ? 0 : dice_whole(dice, -9, 9);
		else
			at += dice_whole(dice, -2, 2);
		value[i] = at;
	}
	return count;
}

Test(ramps, same_as_a_search_of_every_window)
{
	static double value[MOST];
	uint32_t shorter = 0;
	for (uint64_t number = 0; number < 4000; number++) {
		struct dice dice = dice_open(17, number);
		size_t count = random_values(value, &dice);
		enum history_quantity part = (enum history_quantity)dice_whole(&dice, HISTORY_FX,
		                                                               HISTORY_MZ);
		struct ramp_watch got = watch(value, count, part);
		uint32_t expected = search(value, count);
		cr_assert_eq(got.samples, expected, "case %d: %u rows, expected %u", (int)number,
		             got.samples, expected);
		struct ramp_spans spans = spans_of(value, count, part);
		cr_assert(expected == RAMP_SAMPLES || ramp_is_possible(&spans, part));
		shorter += expected > 1 && expected < RAMP_SAMPLES;
	}
	cr_assert_gt(shorter, 500, "the cases are of all kinds");
}
