/* The arm's wrench at its mounting face, as the data sheet is read (README, "What is computed"). */
#ifndef ARM_WRENCH_H
#define ARM_WRENCH_H

#include "../cell/cell.h"
#include "../cell/load_case.h"
#include "../cell/trace.h"
#include "factors.h"

/* Which of the weight readings apply: bits of load_case.reading. */
struct weight_reading { bool vertical_without, tilting_without; };

/* With the factors and the vertical extreme of the case (factors.h). Unknown numbers are taken as
 * 0, the most favourable (loads.h lists them as gaps). */
struct wrench arm_wrench(const struct cell *cell, enum arm_case arm_case,
                         const struct load_case *c, struct weight_reading reading,
                         struct trace *trace);

/* The lines of the horizontal force and the twisting moment alone. */
void trace_horizontal(const struct cell *cell, enum arm_case arm_case, const struct load_case *c,
                      struct trace *trace);

/* Whether the papers' vertical force can hold the weight at all: not where it is below it. */
bool arm_vertical_can_include(const struct cell *cell, enum arm_case arm_case);

#endif
