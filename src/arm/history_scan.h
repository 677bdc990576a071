/* A whole history looked over before it is used: every fault, what is doubtful about its sampling,
 * and its envelope. Nothing of a history is used before all of it has been read without an error.
 *
 * Warnings: a step more than 5 times the median (gap); a ramp of fewer than 20 rows (ramps.h). Both
 * limits are common practice, no source. Warnings are given only where there is no error. */
#ifndef HISTORY_SCAN_H
#define HISTORY_SCAN_H

#include "envelope.h"

/* A step of more than so many medians is a gap. */
enum { GAP_STEPS = 5 };

struct history_summary {
	uint32_t rows;
	double from, to;               /* time of the first and the last row [s] */
	double median_step;            /* [s], see step_sizes.h; 0 for a single row */
	double longest_step;           /* [s] */
	/* rows in the shortest ramp of the force and the moment of the largest span; RAMP_SAMPLES:
	 * no fewer */
	enum history_quantity largest_force, largest_moment;
	uint32_t force_ramp, moment_ramp;
	double force_span;             /* largest less least of the force of the largest span [N] */
	struct envelope envelope;
};

/* False when there is an error; then *out is not to be used. One pass over the text, a second one
 * where a short ramp is possible. */
bool history_scan(const char *text, size_t length, uint32_t file, struct diagnostics *to,
                  struct history_summary *out);

#endif
