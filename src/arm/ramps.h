/* Whether a history is sampled finely enough for its stops: how many rows its steepest ramps take.
 *
 * Method (own; common practice, no source: at least 20 samples in the shortest ramp between 10 %
 * and 90 %). A swing is the change of one component between two turning points; smaller changes
 * than a quarter of the component's whole span are no swings. Its ramp is the smallest number of
 * rows over which 80 % of the swing happens, as much as lies between 10 % and 90 %. Looked at are
 * the force and the moment of the largest span, as these make the anchors' loads.
 * Two passes: the spans must be known before a swing can be told. Most finely sampled histories
 * have no jump from row to row that a short ramp must have, and need the first pass alone.
 * Bounded memory; a low-pass filter that flattened the stop cannot be seen from the rows. */
#ifndef RAMPS_H
#define RAMPS_H

#include "history.h"

enum { RAMP_SAMPLES = 20, WRENCH_PARTS = 6 };

/* First pass: zero-initialise, add every row. Parts are in the order Fx ... Mz. */
struct ramp_spans {
	bool any;
	double low[WRENCH_PARTS], high[WRENCH_PARTS], last[WRENCH_PARTS];
	double jump[WRENCH_PARTS];     /* largest change from row to row */
};
void ramp_spans_add(struct ramp_spans *spans, const struct base_wrench *wrench);
/* The force (moment) of the largest span; Fx (Mx) where all are constant. */
enum history_quantity ramp_largest_force(const struct ramp_spans *spans);
enum history_quantity ramp_largest_moment(const struct ramp_spans *spans);
/* Whether a ramp of fewer than RAMP_SAMPLES rows is possible at all: then a second pass is due. */
bool ramp_is_possible(const struct ramp_spans *spans, enum history_quantity quantity);

/* Second pass, of one component. */
struct ramp_watch {
	enum history_quantity quantity;
	double least_swing;
	double recent[RAMP_SAMPLES];   /* the newest first */
	size_t known;                  /* of these */
	/* [k]: largest change over k rows in the swing's direction; as it was at the extreme; and
	 * against that direction, since the extreme */
	double along[RAMP_SAMPLES], best[RAMP_SAMPLES], back[RAMP_SAMPLES];
	bool swinging;
	double sign;                   /* of the swing's direction */
	double start, extreme;         /* before the first swing: the lowest and the highest */
	uint32_t row, line;            /* of the extreme */
	uint32_t samples;              /* rows of the shortest ramp; RAMP_SAMPLES: no shorter */
	uint32_t at_row, at_line;      /* where its swing ends */
};
void ramp_watch_open(struct ramp_watch *watch, const struct ramp_spans *spans,
                     enum history_quantity quantity);
void ramp_watch_add(struct ramp_watch *watch, const struct history_row *row);
/* After the last row. */
void ramp_watch_close(struct ramp_watch *watch);

#endif
