/* Rainflow counting. */
#include "rainflow.h"
#include <math.h>
#include <string.h>

void rainflow_open(struct rainflow *r, double memory[], size_t room, bool repeating,
                   cycle_sink *sink, void *user)
{
	*r = (struct rainflow){.point = memory, .room = room, .repeating = repeating,
	                       .sink = sink, .user = user};
}

static void emit(const struct rainflow *r, double from, double to, bool full)
{
	/* halves first: the sum of two large values of one sign may overflow */
	struct load_cycle cycle = {fabs(to - from), from / 2 + to / 2, full};
	r->sink(r->user, &cycle);
}

/* Size of the range that ends `back` points before the newest. */
static double range_of(const struct rainflow *r, size_t back)
{
	const double *end = r->point + r->count - 1 - back;
	return fabs(end[0] - end[-1]);
}

/* Y of the standard as a full cycle: both its points go, the newest stays. */
static void discard_two(struct rainflow *r)
{
	double *end = r->point + r->count - 1;
	emit(r, end[-2], end[-1], true);
	end[-2] = end[0];
	r->count -= 2;
}

/* ASTM E1049 5.4.4 (2) to (5). The starting point is always point[0], so that Y holds it when only
 * three points are left. */
static void count_once(struct rainflow *r)
{
	while (r->count >= 3 && range_of(r, 0) >= range_of(r, 1)) {
		if (r->count > 3) {
			discard_two(r);
		} else {
			emit(r, r->point[0], r->point[1], false);
			memmove(r->point, r->point + 1, 2 * sizeof *r->point);
			r->count = 2;
		}
	}
}

/* A range no larger than both its neighbours is a closed cycle, wherever the history starts. */
static void count_closed(struct rainflow *r)
{
	while (r->count >= 4 && range_of(r, 1) <= range_of(r, 0) &&
	       range_of(r, 1) <= range_of(r, 2))
		discard_two(r);
}

static void push(struct rainflow *r, double point)
{
	if (r->count == r->room) {
		r->overflow = true;
		return;
	}
	r->point[r->count++] = point;
	if (r->repeating)
		count_closed(r);
	else
		count_once(r);
}

bool rainflow_add(struct rainflow *r, double value)
{
	int direction = (value > r->last) - (value < r->last);
	if (r->overflow)
		return false;
	if (!r->any) {
		r->any = true;
	} else if (direction == 0) {
		return true;
	} else {
		/* the first value of all is a turning point, too */
		if (direction != r->direction)
			push(r, r->last);
		r->direction = direction;
	}
	r->last = value;
	return !r->overflow;
}

static void close_once(struct rainflow *r)
{
	push(r, r->last);
	for (size_t i = 1; i < r->count && !r->overflow; i++)
		emit(r, r->point[i - 1], r->point[i], false);
}

/* What is left is followed by itself once more: all that is still open closes in the second round,
 * and what is open after that would close in the next. The copy waits at the end of the memory. */
static void close_repeating(struct rainflow *r)
{
	push(r, r->last);
	size_t left = r->count;
	if (r->overflow || left > r->room - left) {
		r->overflow = true;
		return;
	}
	r->room -= left;
	double *copy = r->point + r->room;
	memcpy(copy, r->point, left * sizeof *copy);
	/* the last value turns only if the beginning goes the other way */
	r->count--;
	for (size_t i = 0; i < left; i++)
		rainflow_add(r, copy[i]);
	if (!r->overflow)
		push(r, r->last);
}

bool rainflow_close(struct rainflow *r)
{
	if (r->any && !r->overflow) {
		if (r->repeating)
			close_repeating(r);
		else
			close_once(r);
	}
	return !r->overflow;
}
