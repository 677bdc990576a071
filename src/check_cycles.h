/* Load cycles of the anchors: each anchor's tension at full weights, at each bed ratio and corner
 * of boxed parts (a lane), counted by rainflow as a history that repeats itself (arm/rainflow.h).
 *
 * Cycles of less than 1 % of the lane's largest range are noise of the measurement or of the
 * equilibrium and are counted apart (common practice, no source); the limit is rounded down to a
 * bin, so that it lies between 0.7 and 1 %.
 * A count may be made in pieces: cycles that close within a piece are closed whatever lies around
 * it, and what stays open is counted on in the order of the pieces. */
#ifndef CHECK_CYCLES_H
#define CHECK_CYCLES_H

#include "arm/cycle_tally.h"
#include "check_sweep.h"

struct cycle_count {
	size_t lanes, anchors;
	struct rainflow *flow;               /* [lane][anchor] */
	struct cycle_tally *tally;           /* [lane][anchor] */
	double (*extreme)[2];                /* lowest, highest tension [lane][anchor] [N] */
	const char *broken;                  /* why nothing can be told; NULL: it can */
};

/* Turning points that one count may have open. */
enum { OPEN_POINTS_OF_PIECE = 512, OPEN_POINTS = 2048 };
/* Bytes of one count, so that its caller may say how many it can have. */
size_t cycle_count_bytes(size_t lanes, size_t anchors, size_t open_points);
/* False without memory. `cell` is the setup's. */
bool cycle_count_open(struct cycle_count *count, struct arena *arena, const struct cell *cell,
                      size_t lanes, size_t open_points);
/* The next tensions of a lane; NULL where no equilibrium exists. */
void cycle_count_add(struct cycle_count *count, size_t lane, const double tension[]);
/* Goes on with a piece, which is used up by it. */
void cycle_count_join(struct cycle_count *count, const struct cycle_count *piece);

/* One more source of a setup, to be filled by cycle_count_close. NULL without memory. */
struct cycle_source *cycle_source_add(struct run *run, size_t setup, size_t lanes);
/* After the last tension: the numbers of each anchor, and the setup's extremes. lane = corner *
 * ratios + ratio; the first corner is `corner`. */
void cycle_count_close(struct cycle_count *count, struct setup_run *setup, int corner,
                       struct cycle_source *out);

/* Counts the working cycle of a setup's arm by its chain, where there is one. NO_MEMORY. */
enum status run_working_cycle(struct run *run, size_t setup);

#endif
