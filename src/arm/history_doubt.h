/* What keeps a recorded or simulated history from showing what it is said to show. */
#ifndef HISTORY_DOUBT_H
#define HISTORY_DOUBT_H

#include "arm_loads.h"

/* Half a sentence and what helps, or NULL: a history of fewer rows than a single ramp takes
 * (RAMP_SAMPLES), one in which nothing happens, ramps sampled too coarsely, a gap between rows (all
 * of history_scan.h), or one that never presses as much as the arm weighs, so that its weight is
 * not in it: rigid mechanics of an arm that stands for a moment (own reasoning). `weight` of the
 * arm without payload [N]; 0: not known. */
const char *history_doubt(const struct arm_source *source, double weight, const char **remedy);

#endif
