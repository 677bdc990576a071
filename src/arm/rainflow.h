/* Rainflow counting of cycles, value by value.
 *
 * Source: ASTM E1049-85, 5.4.4 (rainflow) and 5.4.5 (repeating histories), from memory. Of the last
 * three turning points that are left, X is the last range and Y the one before: X >= Y counts Y,
 * as a half cycle where it contains the starting point, else as a full one; what is left at the end
 * counts as half cycles. A history that repeats itself for ever closes all its cycles: its end is
 * followed by its beginning, and there are full cycles only.
 * Units: those of the values; range >= 0, mean of the two turning points. Range of values: finite,
 * below 1e300.
 * Identities: twice the full cycles and the half cycles together are one fewer than the turning
 * points; mirroring or shifting the history keeps the ranges; points between two turning points
 * change nothing. Counting once, a history's largest range is a half cycle or two: whoever
 * multiplies by a number of repeats must count it as repeating.
 * Errors: too little memory. The turning points that wait are those of a narrowing history: rarely
 * more than a hundred, at worst as many as the history has. */
#ifndef RAINFLOW_H
#define RAINFLOW_H

#include <stdbool.h>
#include <stddef.h>

struct load_cycle {
	double range, mean;
	bool full;                     /* else a half cycle */
};
typedef void cycle_sink(void *user, const struct load_cycle *cycle);

struct rainflow {
	double *point;                 /* turning points not yet discarded; the caller's memory */
	size_t room, count;
	double last;                   /* newest value, not yet known to be a turning point */
	int direction;                 /* toward `last`; 0 before the first change */
	bool any, repeating;
	bool overflow;                 /* sticky */
	cycle_sink *sink;
	void *user;
};

/* memory[0..room), room at least 4, belongs to the count until it is closed. `sink` is called once
 * a cycle. Repeating needs about three times the memory. */
void rainflow_open(struct rainflow *rainflow, double memory[], size_t room, bool repeating,
                   cycle_sink *sink, void *user);
/* False when the memory does not suffice; then no result of this count is to be used. */
bool rainflow_add(struct rainflow *rainflow, double value);
/* After the last value: counts what is left. False as above. */
bool rainflow_close(struct rainflow *rainflow);

#endif
