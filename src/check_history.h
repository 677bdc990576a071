/* Every row of every history against the anchors: both service runs, each corner of boxed parts,
 * each bed ratio; and the overturning of the stability run.
 *
 * A row is one instant: its tilt, its horizontal force and its twist belong together, so that shear
 * is that of the row and no heading is free. Each equilibrium starts from that of the row before.
 * No row is left out; one whose six numbers are those of the row before gives the same state again.
 * A history's text is cut in pieces that may run at the same time, each with worsts of its own,
 * merged in their order: how many there are depends on the file alone, and so do the digits. */
#ifndef CHECK_HISTORY_H
#define CHECK_HISTORY_H

#include "check_sweep.h"

/* One run at one corner of the boxed parts: a load case that waits for its row. */
struct row_combination {
	struct load_case load_case;
	double down, fixed[2];               /* of the parts [N], [N mm] */
};
enum { MAX_CORNERS = 4, MAX_COMBINATIONS = (5 + 4 * (METHODS - 1)) * MAX_CORNERS };

/* The corners of one run; the number of them, 0 without memory. `head`: names, setup and group. */
size_t row_combinations(struct arena *arena, const struct cell *cell, enum weight_run run,
                        const struct load_case *head, struct row_combination out[]);
/* Puts the wrench of one instant into it. `load` must stay until the next one. */
void row_combination_set(struct row_combination *combination, const struct cell *cell,
                         const struct arm_load *load);

/* Visits all histories and counts all load cycles (check_cycles.h). NO_MEMORY. */
enum status run_histories(struct run *run);

#endif
