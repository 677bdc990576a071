/* The steepest ramps of a history. */
#include "ramps.h"
#include <math.h>
#include <string.h>

/* the part of a swing between 10 % and 90 %; the smallest swing as a share of the whole span */
static const double ramp_part = 0.8, least_share = 0.25;

static void parts_of(const struct base_wrench *wrench, double out[WRENCH_PARTS])
{
	memcpy(out, wrench->force, sizeof wrench->force);
	memcpy(out + 3, wrench->moment, sizeof wrench->moment);
}

/* --- first pass
 * ------------------------------------------------------------------------------------ */

void ramp_spans_add(struct ramp_spans *spans, const struct base_wrench *wrench)
{
	double part[WRENCH_PARTS];
	parts_of(wrench, part);
	if (!spans->any) {
		memcpy(spans->low, part, sizeof part);
		memcpy(spans->high, part, sizeof part);
		memcpy(spans->last, part, sizeof part);
		spans->any = true;
	}
	for (int i = 0; i < WRENCH_PARTS; i++) {
		double jump = fabs(part[i] - spans->last[i]);
		spans->low[i] = part[i] < spans->low[i] ? part[i] : spans->low[i];
		spans->high[i] = part[i] > spans->high[i] ? part[i] : spans->high[i];
		spans->jump[i] = jump > spans->jump[i] ? jump : spans->jump[i];
		spans->last[i] = part[i];
	}
}

static double span_of(const struct ramp_spans *spans, int part)
{
	return spans->high[part] - spans->low[part];
}

static enum history_quantity largest(const struct ramp_spans *spans, int from)
{
	int best = from;
	for (int i = from + 1; i < from + 3; i++)
		if (span_of(spans, i) > span_of(spans, best))
			best = i;
	return (enum history_quantity)(HISTORY_FX + best);
}

enum history_quantity ramp_largest_force(const struct ramp_spans *spans)
{
	return largest(spans, 0);
}

enum history_quantity ramp_largest_moment(const struct ramp_spans *spans)
{
	return largest(spans, 3);
}

/* Of so few steps at least one must be their mean; a millionth for the rounding of the sums. */
bool ramp_is_possible(const struct ramp_spans *spans, enum history_quantity quantity)
{
	int part = (int)quantity - HISTORY_FX;
	double least = ramp_part * least_share * span_of(spans, part) / (RAMP_SAMPLES - 1);
	return least > 0 && spans->jump[part] >= least * (1 - 1e-6);
}

/* --- second pass
 * ----------------------------------------------------------------------------------- */

void ramp_watch_open(struct ramp_watch *watch, const struct ramp_spans *spans,
                     enum history_quantity quantity)
{
	*watch = (struct ramp_watch){.quantity = quantity, .sign = 1, .samples = RAMP_SAMPLES};
	watch->least_swing = least_share * span_of(spans, (int)quantity - HISTORY_FX);
}

/* A window that starts before the swing changes by less than the shorter one that starts with it,
 * so only the ends of windows are kept within their swing. */
static void measure(struct ramp_watch *watch, double x)
{
	for (size_t k = 1; k <= watch->known && k < RAMP_SAMPLES; k++) {
		double change = watch->sign * (x - watch->recent[k - 1]);
		watch->along[k] = change > watch->along[k] ? change : watch->along[k];
		watch->back[k] = -change > watch->back[k] ? -change : watch->back[k];
	}
	memmove(watch->recent + 1, watch->recent, (RAMP_SAMPLES - 1) * sizeof *watch->recent);
	watch->recent[0] = x;
	watch->known += watch->known < RAMP_SAMPLES;
}

static void finish_swing(struct ramp_watch *watch)
{
	double part = ramp_part * fabs(watch->extreme - watch->start);
	for (uint32_t k = 1; k < watch->samples; k++)
		if (watch->best[k] >= part) {
			watch->samples = k;
			watch->at_row = watch->row;
			watch->at_line = watch->line;
		}
}

static void reach(struct ramp_watch *watch, double x, const struct history_row *row)
{
	watch->extreme = x;
	watch->row = row->row;
	watch->line = row->line;
	memcpy(watch->best, watch->along, sizeof watch->best);
	memset(watch->back, 0, sizeof watch->back);
}

/* The swing goes the other way from now on. */
static void turn(struct ramp_watch *watch, double start)
{
	watch->sign = -watch->sign;
	watch->start = start;
	memcpy(watch->along, watch->back, sizeof watch->along);
}

/* Before the first swing its direction is not known: start is the lowest, extreme the highest. */
static void look_for_swing(struct ramp_watch *watch, double x, const struct history_row *row)
{
	if (watch->known == 1 || x < watch->start) {
		watch->start = x;
		memset(watch->along, 0, sizeof watch->along);
	}
	if (watch->known == 1 || x > watch->extreme) {
		watch->extreme = x;
		memset(watch->back, 0, sizeof watch->back);
	}
	/* a component that never changes has no swings */
	if (watch->least_swing <= 0 || watch->extreme - watch->start < watch->least_swing)
		return;
	watch->swinging = true;
	/* fallen from the highest, or risen from the lowest */
	if (x <= watch->start)
		turn(watch, watch->extreme);
	reach(watch, x, row);
}

void ramp_watch_add(struct ramp_watch *watch, const struct history_row *row)
{
	double part[WRENCH_PARTS];
	parts_of(&row->wrench, part);
	double x = part[(int)watch->quantity - HISTORY_FX];
	measure(watch, x);
	if (!watch->swinging) {
		look_for_swing(watch, x, row);
	} else if (watch->sign * (x - watch->extreme) > 0) {
		reach(watch, x, row);
	} else if (watch->sign * (watch->extreme - x) >= watch->least_swing) {
		finish_swing(watch);
		turn(watch, watch->extreme);
		reach(watch, x, row);
	}
}

void ramp_watch_close(struct ramp_watch *watch)
{
	if (watch->swinging)
		finish_swing(watch);
}
