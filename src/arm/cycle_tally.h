/* What is kept of counted cycles: totals and a table of ranges in bounded memory, or a plain list.
 *
 * Bins: bin i holds ranges from i*width up to (i+1)*width. When a range lies beyond the last bin,
 * neighbours are joined and the width doubles, as often as needed; the result does not depend on
 * the order of the cycles. Everything is counted in half cycles, so that all counts are whole. */
#ifndef CYCLE_TALLY_H
#define CYCLE_TALLY_H

#include "rainflow.h"
#include <stdint.h>

struct cycle_bin {
	uint64_t halves;
	double largest;                /* range in this bin */
	double mean_sum;               /* of the cycles' means, a half cycle counting once */
};

struct cycle_tally {
	uint64_t halves;               /* all */
	double limit;                  /* set by the caller; ranges above it are counted apart */
	uint64_t halves_above;
	struct load_cycle largest;     /* of the largest range; of equal ones the first */
	double width;
	struct cycle_bin *bin;         /* the caller's memory */
	size_t bins;
};

/* bin[0..bins) is zeroed; width > 0 in the unit of the ranges, bins >= 2. */
void cycle_tally_open(struct cycle_tally *tally, double limit, double width,
                      struct cycle_bin bin[], size_t bins);
/* A cycle_sink whose user is a struct cycle_tally. */
void cycle_tally_add(void *tally, const struct load_cycle *cycle);
/* Sums of several histories, of the same limit; widths in a ratio of a power of two. */
void cycle_tally_merge(struct cycle_tally *into, const struct cycle_tally *piece);

struct cycle_list {
	struct load_cycle *list;       /* the caller's memory */
	size_t room, count;
	bool overflow;                 /* cycles were lost: the list is not to be used */
};
/* A cycle_sink whose user is a struct cycle_list. */
void cycle_list_add(void *list, const struct load_cycle *cycle);

#endif
