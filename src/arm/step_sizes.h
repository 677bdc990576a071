/* The median of very many time steps in bounded memory, and the longest of them.
 *
 * Method: steps are counted in bins, 16 to a doubling, so the bin of the median is found exactly; a
 * bin is no wider than 6.3 % of the steps in it. The median given is the mean of that bin's steps:
 * within 6.3 % of the true one, and the step itself (up to rounding) where all are alike.
 * Range: steps from 2^-30 s (1 ns) to 2^20 s (12 days); others count in the outermost bins. */
#ifndef STEP_SIZES_H
#define STEP_SIZES_H

#include <stddef.h>
#include <stdint.h>

enum { STEP_BINS = 50 * 16, LONGEST_STEPS = 5 };

struct long_step { double step; uint32_t row, line; };   /* [s], and where it ends */

struct step_sizes {
	uint64_t total;
	uint32_t count[STEP_BINS];
	double sum[STEP_BINS];                          /* [s] */
	struct long_step longest[LONGEST_STEPS];        /* falling; step 0 where there are fewer */
};

/* Zero-initialise before the first. step > 0 and finite [s]; fewer than 2^32 of them. */
void step_sizes_add(struct step_sizes *sizes, double step, uint32_t row, uint32_t line);

/* [s]; 0 without steps. Of an even number the lower of the two in the middle. */
double step_sizes_median(const struct step_sizes *sizes);

/* How many steps are surely longer than that: those of one bin around it are not counted. */
uint64_t step_sizes_above(const struct step_sizes *sizes, double step);

#endif
