/* Rainflow counting: the published example, closed cases, and properties against a second
 * implementation that works on the whole history at once. */
#include "../../src/arm/cycle_tally.h"
#include "../../src/arm/rainflow.h"
#include "../support/random_base.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { MOST = 512, BINS = 16, MEMORY = 3 * MOST + 8 };

static struct load_cycle cycles[MOST];
static struct cycle_list list;

/* Counts a history into `list`. */
static bool count_in(size_t room, const double value[], size_t count, bool repeating)
{
	static double memory[MEMORY];
	struct rainflow rainflow;
	list = (struct cycle_list){cycles, MOST, 0, false};
	rainflow_open(&rainflow, memory, room, repeating, cycle_list_add, &list);
	for (size_t i = 0; i < count; i++)
		rainflow_add(&rainflow, value[i]);
	return rainflow_close(&rainflow) && !list.overflow;
}

static void count_list(const double value[], size_t count, bool repeating)
{
	cr_assert(count_in(MEMORY, value, count, repeating));
}

/* Half cycles of exactly that range. */
static int halves_of(double range)
{
	int halves = 0;
	for (size_t i = 0; i < list.count; i++)
		if (cycles[i].range <= range && cycles[i].range >= range)
			halves += cycles[i].full ? 2 : 1;
	return halves;
}

static int all_halves(void)
{
	int halves = 0;
	for (size_t i = 0; i < list.count; i++)
		halves += cycles[i].full ? 2 : 1;
	return halves;
}

/* --- published
 * --------------------------------------------------------------------------------------- */

static const double published[] = {-2, 1, -3, 5, -1, 3, -4, 4, -2};

/* ASTM E1049-85, Fig. 6 (history and result from memory): ranges
 * 3: 0.5, 4: 1.5, 6: 0.5, 8: 1.0, 9: 0.5. Whole numbers: exact. */
Test(rainflow, published_example)
{
	count_list(published, COUNT(published), false);
	static const struct {
		double range;
		int halves;
	} expected[] = {{3, 1}, {4, 3}, {6, 1}, {8, 2}, {9, 1}};
	for (size_t i = 0; i < COUNT(expected); i++)
		cr_assert_eq(halves_of(expected[i].range), expected[i].halves, "range %g",
		             expected[i].range);
	cr_assert_eq(all_halves(), 8);
	/* the one full cycle is -1 to 3 */
	for (size_t i = 0; i < list.count; i++)
		if (cycles[i].full)
			cr_assert(cycles[i].range == 4 && cycles[i].mean == 1);
}

/* The same history repeated for ever (ASTM E1049-85 5.4.5, Fig. 7, from memory): 3, 4, 7 and 9
 * once. */
Test(rainflow, published_example_repeating)
{
	count_list(published, COUNT(published), true);
	cr_assert_eq(list.count, 4);
	for (size_t i = 0; i < list.count; i++)
		cr_assert(cycles[i].full);
	cr_assert(halves_of(3) == 2 && halves_of(4) == 2 && halves_of(7) == 2 && halves_of(9) == 2);
}

/* --- closed cases
 * ------------------------------------------------------------------------------------ */

Test(rainflow, nothing_to_count)
{
	static const double flat[] = {4, 4, 4, 4};
	for (int repeating = 0; repeating < 2; repeating++)
		for (size_t count = 0; count <= COUNT(flat); count++) {
			count_list(flat, count, repeating);
			cr_assert_eq(list.count, 0);
		}
}

/* One way up is half a cycle, and a whole one where it begins again from below. */
Test(rainflow, single_rise)
{
	static const double rise[] = {1, 2, 5};
	count_list(rise, COUNT(rise), false);
	cr_assert(list.count == 1 && halves_of(4) == 1 && cycles[0].mean == 3);
	count_list(rise, COUNT(rise), true);
	cr_assert(list.count == 1 && halves_of(4) == 2 && cycles[0].mean == 3);
}

/* n times up and down: 2 n half cycles of that range, n full ones when repeating. */
Test(rainflow, constant_amplitude)
{
	double wave[MOST];
	for (size_t i = 0; i < MOST; i++)
		wave[i] = i % 2 ? 7 : -1;
	count_list(wave, 101, false);
	cr_assert_eq(halves_of(8), 100);
	cr_assert_eq(all_halves(), 100);
	count_list(wave, 100, true);
	cr_assert_eq(halves_of(8), 100);
	cr_assert_eq(all_halves(), 100);
}

/* A slow cycle of 20 that carries fast ones of 2: all of these are full, for rainflow sees the
 * large cycle whole. */
Test(rainflow, small_cycles_on_a_large_one)
{
	static const double ride[] = {0, 4, 2, 8, 6, 20, 10, 12, 0};
	count_list(ride, COUNT(ride), true);
	cr_assert_eq(halves_of(20), 2);
	cr_assert_eq(halves_of(2), 6);
	cr_assert_eq(all_halves(), 8);
}

/* --- memory
 * ------------------------------------------------------------------------------------------ */

/* A narrowing history keeps all its points: exactly that many are needed, one fewer is an error. */
Test(rainflow, memory_that_does_not_suffice)
{
	double narrowing[40];
	for (int i = 0; i < 40; i++)
		narrowing[i] = (i % 2 ? 1 : -1) * (100.0 - i);
	cr_assert(count_in(40, narrowing, 40, false));
	cr_assert_eq(all_halves(), 39);
	cr_assert_not(count_in(39, narrowing, 40, false));
	cr_assert_not(count_in(4, narrowing, 40, true));
	cr_assert(count_in(3 * 40, narrowing, 40, true));
	cr_assert_not(count_in(40, narrowing, 40, true));
	/* a widening one, and a steady one of any length, need next to none */
	double widening[40];
	for (int i = 0; i < 40; i++)
		widening[i] = -narrowing[39 - i];
	cr_assert(count_in(4, widening, 40, false));
	double steady[MOST];
	for (int i = 0; i < MOST; i++)
		steady[i] = i % 2;
	cr_assert(count_in(4, steady, MOST, false));
	cr_assert(count_in(8, steady, MOST, true));
}

/* Every call says whether the count is still good, and none mends it. */
Test(rainflow, an_overflow_stays)
{
	double memory[4];
	struct rainflow rainflow;
	list = (struct cycle_list){cycles, MOST, 0, false};
	rainflow_open(&rainflow, memory, 4, false, cycle_list_add, &list);
	for (int i = 0; i < 5; i++) {
		cr_assert(rainflow_add(&rainflow, (i % 2 ? 1 : -1) * (9 - i)));
		cr_assert(rainflow_add(&rainflow, (i % 2 ? 1 : -1) * (9 - i)), "the same again");
	}
	cr_assert_not(rainflow_add(&rainflow, 1));
	cr_assert_not(rainflow_add(&rainflow, 1));
	cr_assert_not(rainflow_add(&rainflow, 100));
	cr_assert_not(rainflow_close(&rainflow));
}

/* --- the second implementation
 * ----------------------------------------------------------------------- */

/* Turning points of the whole history. */
static size_t turning_points(const double value[], size_t count, double out[])
{
	size_t n = 0;
	for (size_t i = 0; i < count; i++) {
		if (n > 0 && value[i] <= out[n - 1] && value[i] >= out[n - 1])
			continue;
		if (n > 1 && (out[n - 1] > out[n - 2]) == (value[i] > out[n - 1]))
			n--;
		out[n++] = value[i];
	}
	return n;
}

struct reference { double range[MOST]; int halves[MOST]; size_t count; };

static void note(struct reference *reference, double range, int halves)
{
	reference->range[reference->count] = range;
	reference->halves[reference->count++] = halves;
}

/* Four points at a time: the smallest inner range anywhere goes first, until no range is closed in
 * by its neighbours; what is left are half cycles. */
static void count_slowly(const double value[], size_t count, struct reference *out)
{
	double point[MOST];
	size_t n = turning_points(value, count, point);
	out->count = 0;
	for (;;) {
		size_t best = 0;
		for (size_t i = 1; i + 2 < n; i++) {
			double before = fabs(point[i] - point[i - 1]),
			       inner = fabs(point[i + 1] - point[i]),
			       behind = fabs(point[i + 2] - point[i + 1]);
			if (inner > before || inner > behind)
				continue;
			if (best == 0 || inner < fabs(point[best + 1] - point[best]))
				best = i;
		}
		if (best == 0)
			break;
		note(out, fabs(point[best + 1] - point[best]), 2);
		memmove(point + best, point + best + 2, (n - best - 2) * sizeof *point);
		n -= 2;
	}
	for (size_t i = 1; i < n; i++)
		note(out, fabs(point[i] - point[i - 1]), 1);
}

/* For a history that repeats itself: begun at its largest value and ended there, all is closed. */
static void count_slowly_repeating(const double value[], size_t count, struct reference *out)
{
	double turned[MOST + 1];
	size_t top = 0;
	for (size_t i = 1; i < count; i++)
		if (value[i] > value[top])
			top = i;
	for (size_t i = 0; i <= count; i++)
		turned[i] = value[(top + i) % count];
	count_slowly(turned, count + 1, out);
}

static int rising(const void *left, const void *right)
{
	double a = *(const double *)left, b = *(const double *)right;
	return (a > b) - (a < b);
}

/* The ranges, each as often as it has half cycles, in order. */
static size_t spread(const double range[], const int halves[], size_t count, double out[])
{
	size_t n = 0;
	for (size_t i = 0; i < count; i++)
		for (int k = 0; k < halves[i]; k++)
			out[n++] = range[i];
	qsort(out, n, sizeof *out, rising);
	return n;
}

static size_t spread_list(double out[])
{
	static double range[MOST];
	static int halves[MOST];
	for (size_t i = 0; i < list.count; i++) {
		range[i] = cycles[i].range;
		halves[i] = cycles[i].full ? 2 : 1;
	}
	return spread(range, halves, list.count, out);
}

static void same_as_slow(const double value[], size_t count, bool repeating, uint64_t number)
{
	static struct reference reference;
	static double a[2 * MOST], b[2 * MOST];
	count_list(value, count, repeating);
	if (repeating)
		count_slowly_repeating(value, count, &reference);
	else
		count_slowly(value, count, &reference);
	size_t n = spread(reference.range, reference.halves, reference.count, a);
	cr_assert_eq(n, spread_list(b), "case %d: %zu half cycles, expected %zu", (int)number,
	             spread_list(b), n);
	for (size_t i = 0; i < n; i++)
		cr_assert_eq(a[i], b[i], "case %d: range %zu is %g, expected %g", (int)number, i,
		             b[i], a[i]);
}

/* Few levels (equal ranges are frequent), many levels, or a random walk. */
static size_t random_history(double value[], struct dice *dice)
{
	size_t count = (size_t)dice_whole(dice, 1, 200);
	int kind = dice_whole(dice, 0, 2), levels = dice_whole(dice, 1, 9);
	double at = 0;
	for (size_t i = 0; i < count; i++) {
		at = kind == 2 ? at + dice_whole(dice, -5, 5) : 0;
		value[i] = kind == 0   ? dice_whole(dice, 0, levels)
		           : kind == 1 ? dice_between(dice, -1, 1)
		                       : at;
	}
	return count;
}

Test(rainflow, same_as_the_second_implementation)
{
	for (uint64_t number = 0; number < 20000; number++) {
		double value[MOST];
		struct dice dice = dice_open(49, number);
		size_t count = random_history(value, &dice);
		same_as_slow(value, count, false, number);
		same_as_slow(value, count, true, number);
	}
}

/* --- properties
 * -------------------------------------------------------------------------------------- */

/* A half cycle for every range between neighbouring turning points. */
Test(rainflow, total_of_half_cycles)
{
	for (uint64_t number = 0; number < 5000; number++) {
		double value[MOST], point[MOST];
		struct dice dice = dice_open(50, number);
		size_t count = random_history(value, &dice),
		       points = turning_points(value, count, point);
		count_list(value, count, false);
		cr_assert_eq((size_t)all_halves(), points - 1);
	}
}

/* Mirrored, or with points put in between: the same ranges. */
Test(rainflow, mirrored_and_refined_histories)
{
	static double plain[2 * MOST], other[2 * MOST];
	for (uint64_t number = 0; number < 5000; number++) {
		double value[MOST], changed[MOST];
		struct dice dice = dice_open(51, number);
		size_t count = random_history(value, &dice), more = 0;
		bool repeating = dice_whole(&dice, 0, 1);
		count_list(value, count, repeating);
		size_t n = spread_list(plain);
		for (size_t i = 0; i < count; i++)
			changed[i] = -value[i];
		count_list(changed, count, repeating);
		cr_assert_eq(spread_list(other), n);
		cr_assert_eq(memcmp(plain, other, n * sizeof *plain), 0, "mirrored, case %d",
		             (int)number);
		for (size_t i = 0; i < count; i++) {
			changed[more++] = value[i];
			if (i + 1 < count && dice_whole(&dice, 0, 1))
				changed[more++] = value[i] + (value[i + 1] - value[i]) / 2;
		}
		count_list(changed, more, repeating);
		cr_assert_eq(spread_list(other), n);
		cr_assert_eq(memcmp(plain, other, n * sizeof *plain), 0, "refined, case %d",
		             (int)number);
	}
}

/* A history that repeats itself has no beginning: it may start at any of its rows. */
Test(rainflow, repeating_history_starts_anywhere)
{
	static double plain[2 * MOST], other[2 * MOST];
	for (uint64_t number = 0; number < 5000; number++) {
		double value[MOST], turned[MOST];
		struct dice dice = dice_open(52, number);
		size_t count = random_history(value, &dice);
		size_t by = (size_t)dice_whole(&dice, 0, (int)count - 1);
		for (size_t i = 0; i < count; i++)
			turned[i] = value[(i + by) % count];
		count_list(value, count, true);
		size_t n = spread_list(plain);
		count_list(turned, count, true);
		cr_assert_eq(spread_list(other), n);
		cr_assert_eq(memcmp(plain, other, n * sizeof *plain), 0, "case %d", (int)number);
	}
}

/* --- tallies
 * ----------------------------------------------------------------------------------------- */

Test(cycle_tally, totals_and_bins)
{
	struct cycle_bin bin[BINS];
	struct cycle_tally tally;
	cycle_tally_open(&tally, 4, 1, bin, BINS);
	count_list(published, COUNT(published), false);
	for (size_t i = 0; i < list.count; i++)
		cycle_tally_add(&tally, &cycles[i]);
	cr_assert_eq(tally.halves, 8);
	/* above 4, not 4 itself: 6, 8, 8 and 9 */
	cr_assert_eq(tally.halves_above, 4);
	cr_assert(tally.largest.range == 9 && tally.largest.mean == 0.5 && !tally.largest.full);
	cr_assert(bin[3].halves == 1 && bin[4].halves == 3 && bin[6].halves == 1);
	cr_assert(bin[8].halves == 2 && bin[9].halves == 1 && bin[9].largest == 9);
	/* -3 to 1 once half, -1 to 3 once full */
	cr_assert_eq(bin[4].mean_sum, -1 + 2 * 1);
	cr_assert(bin[9].mean_sum == 0.5 && bin[8].mean_sum == 1);
}

/* From the finest bins to those that are needed, in whatever order the cycles come. */
Test(cycle_tally, width_grows_alike_in_any_order)
{
	for (uint64_t number = 0; number < 500; number++) {
		static struct load_cycle made[60];
		struct cycle_bin bin[3][BINS];
		struct cycle_tally there, back, half;
		struct dice dice = dice_open(53, number);
		cycle_tally_open(&there, 1, 0.1, bin[0], BINS);
		cycle_tally_open(&back, 1, 0.1, bin[1], BINS);
		cycle_tally_open(&half, 1, 0.1, bin[2], BINS);
		for (int i = 0; i < 60; i++) {
			made[i] = (struct load_cycle){dice_decades(&dice, -3, 3), 0,
			                              dice_whole(&dice, 0, 1)};
			cycle_tally_add(&there, &made[i]);
			if (i >= 30)
				cycle_tally_add(&half, &made[i]);
		}
		for (int i = 60; i-- > 0;)
			if (i < 30 || number % 2)
				cycle_tally_add(&back, &made[i]);
		if (number % 2 == 0)
			cycle_tally_merge(&back, &half);
		cr_assert(there.halves == back.halves && there.halves_above == back.halves_above);
		cr_assert(there.width == back.width && there.largest.range == back.largest.range);
		for (int i = 0; i < BINS; i++)
			cr_assert(bin[0][i].halves == bin[1][i].halves &&
			          bin[0][i].largest == bin[1][i].largest);
	}
}

/* A range at the upper end of the table is beyond it; of equal ranges the first is kept. */
Test(cycle_tally, ends_and_equal_ranges)
{
	struct cycle_bin bin[BINS], other[BINS];
	struct cycle_tally tally, piece;
	cycle_tally_open(&tally, 0, 1, bin, BINS);
	cycle_tally_open(&piece, 0, 1, other, BINS);
	cycle_tally_add(&tally, &(struct load_cycle){BINS, 3, false});
	cr_assert(tally.width == 2 && bin[BINS / 2].halves == 1);
	cycle_tally_add(&tally, &(struct load_cycle){BINS, 4, true});
	cycle_tally_add(&piece, &(struct load_cycle){BINS, 5, false});
	cycle_tally_merge(&tally, &piece);
	cr_assert(tally.largest.mean == 3 && tally.halves == 4);
	/* into an empty one everything goes, and from an empty one nothing */
	cycle_tally_open(&piece, 0, 1, other, BINS);
	cycle_tally_merge(&piece, &tally);
	cr_assert(piece.largest.mean == 3 && piece.halves == 4 && piece.width == 2);
	cycle_tally_open(&tally, 0, 1, bin, BINS);
	cycle_tally_merge(&piece, &tally);
	cr_assert(piece.largest.mean == 3 && piece.halves == 4);
}

/* Every range stands in the bin of its size, and none is lost. */
Test(cycle_tally, ranges_stand_in_their_bins)
{
	struct cycle_bin bin[BINS + 1];
	struct cycle_tally tally;
	cycle_tally_open(&tally, 0, 0.001, bin, BINS + 1);
	for (int i = 1; i <= 1000; i++)
		cycle_tally_add(&tally, &(struct load_cycle){i * 0.37, 0, true});
	uint64_t halves = 0;
	for (int i = 0; i <= BINS; i++) {
		halves += bin[i].halves;
		if (bin[i].halves > 0)
			cr_assert(bin[i].largest >= i * tally.width &&
			          bin[i].largest < (i + 1) * tally.width);
	}
	cr_assert_eq(halves, 2000);
	cr_assert_eq(tally.halves_above, 2000);
}

Test(cycle_tally, a_full_list_says_so)
{
	struct load_cycle room[2];
	struct cycle_list small = {room, 2, 0, false};
	for (int i = 0; i < 2; i++)
		cycle_list_add(&small, &(struct load_cycle){i, 0, true});
	cr_assert_not(small.overflow);
	cycle_list_add(&small, &(struct load_cycle){2, 0, true});
	cr_assert(small.overflow && small.count == 2);
}
