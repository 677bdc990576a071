/* Median of time steps. */
#include "step_sizes.h"
#include <string.h>

/* IEEE 754: 52 digits behind the exponent, whose offset is 1023. The first four digits and the
 * exponent together number the bins, as positive doubles sort like their bits. */
enum { FRACTION_BITS = 52, BIN_BITS = 4, LOWEST_POWER = -30, EXPONENT_OFFSET = 1023 };

static const uint64_t first_bin = (uint64_t)(EXPONENT_OFFSET + LOWEST_POWER) << BIN_BITS;

static size_t bin_of(double step)
{
	uint64_t bits;
	memcpy(&bits, &step, sizeof bits);
	bits >>= FRACTION_BITS - BIN_BITS;
	if (bits < first_bin)
		return 0;
	bits -= first_bin;
	return bits < STEP_BINS ? (size_t)bits : STEP_BINS - 1;
}

static void keep_long(struct step_sizes *sizes, struct long_step step)
{
	struct long_step *list = sizes->longest;
	size_t at = LONGEST_STEPS - 1;
	/* of equal ones the first stays */
	for (; at > 0 && step.step > list[at - 1].step; at--)
		list[at] = list[at - 1];
	list[at] = step;
}

void step_sizes_add(struct step_sizes *sizes, double step, uint32_t row, uint32_t line)
{
	size_t bin = bin_of(step);
	sizes->total++;
	sizes->count[bin]++;
	sizes->sum[bin] += step;
	if (step > sizes->longest[LONGEST_STEPS - 1].step)
		keep_long(sizes, (struct long_step){step, row, line});
}

double step_sizes_median(const struct step_sizes *sizes)
{
	uint64_t before = 0;
	for (size_t i = 0; i < STEP_BINS; i++) {
		before += sizes->count[i];
		if (sizes->count[i] > 0 && 2 * before >= sizes->total)
			return sizes->sum[i] / sizes->count[i];
	}
	return 0;
}

uint64_t step_sizes_above(const struct step_sizes *sizes, double step)
{
	uint64_t count = 0;
	for (size_t i = bin_of(step) + 1; i < STEP_BINS; i++)
		count += sizes->count[i];
	return count;
}
