/* A whole history looked over. */
#include "history_scan.h"
#include "ramps.h"
#include "step_sizes.h"
#include <stdio.h>

enum { BATCH = 64, SHOWN_DIGITS = 3, NUMBER_ROOM = 32 };

static void scan_rows(struct history history, struct history_summary *out,
                      struct step_sizes *sizes, struct ramp_spans *spans, uint32_t *faults)
{
	struct history_row row[BATCH];
	for (size_t count; (count = history_read(&history, row, BATCH)) > 0;)
		for (size_t i = 0; i < count; i++) {
			if (out->rows++ == 0)
				out->from = row[i].t;
			else
				step_sizes_add(sizes, row[i].t - out->to, row[i].row, row[i].line);
			out->to = row[i].t;
			ramp_spans_add(spans, &row[i].wrench);
			envelope_add(&out->envelope, &row[i]);
		}
	*faults = history.faults;
}

/* --- gaps
 * ----------------------------------------------------------------------------------------- */

static void tell_gap(const struct long_step *step, double median, uint32_t file,
                     struct diagnostics *to)
{
	char length[NUMBER_ROOM], usual[NUMBER_ROOM];
	struct mark mark = {file, step->line, 1, 1};
	number_write(step->step, SHOWN_DIGITS, length, sizeof length);
	number_write(median, SHOWN_DIGITS, usual, sizeof usual);
	diagnose(to, WARNING, FAULT_RANGE, mark, "",
	         "a peak within the gap is not seen: record the history without gaps",
	         "row %u: a gap of %s s before it, where the median step is %s s",
	         (unsigned)step->row, length, usual);
}

/* The longest ones are told one by one, the rest as a number. */
static void tell_gaps(const struct step_sizes *sizes, uint32_t file, struct diagnostics *to)
{
	double median = step_sizes_median(sizes), limit = GAP_STEPS * median;
	uint64_t told = 0;
	for (int i = 0; i < LONGEST_STEPS; i++)
		if (sizes->longest[i].step > limit) {
			tell_gap(&sizes->longest[i], median, file, to);
			told++;
		}
	uint64_t all = step_sizes_above(sizes, limit);
	if (told == LONGEST_STEPS && all > told)
		diagnose(to, WARNING, FAULT_RANGE, (struct mark){.file = file}, "", "",
		         "at least %llu further gaps", (unsigned long long)(all - told));
}

/* --- ramps
 * ---------------------------------------------------------------------------------------- */

static void tell_ramp(const struct ramp_watch *watch, uint32_t file, struct diagnostics *to)
{
	char hint[DIAGNOSTIC_HINT];
	struct mark mark = {file, watch->at_line, 1, 1};
	unsigned samples = (unsigned)watch->samples;
	if (samples >= RAMP_SAMPLES)
		return;
	snprintf(hint, sizeof hint,
	         "the peak may lie between two rows: sample at least %u times as fast",
	         (RAMP_SAMPLES + samples - 1) / samples);
	diagnose(to, WARNING, FAULT_RANGE, mark, "", hint,
	         "row %u: %s takes %u row%s from 10 %% to 90 %% of the swing that ends here, fewer than %d",
	         (unsigned)watch->at_row, history_name(watch->quantity), samples,
	         samples == 1 ? "" : "s", (int)RAMP_SAMPLES);
}

static void watch_ramps(struct history history, struct ramp_watch *force,
                        struct ramp_watch *moment)
{
	struct history_row row[BATCH];
	/* every fault has been told in the first pass */
	history.to = NULL;
	for (size_t count; (count = history_read(&history, row, BATCH)) > 0;)
		for (size_t i = 0; i < count; i++) {
			ramp_watch_add(force, &row[i]);
			ramp_watch_add(moment, &row[i]);
		}
	ramp_watch_close(force);
	ramp_watch_close(moment);
}

static void scan_ramps(struct history history, const struct ramp_spans *spans, uint32_t file,
                       struct diagnostics *to, struct history_summary *out)
{
	struct ramp_watch force, moment;
	out->largest_force = ramp_largest_force(spans);
	out->largest_moment = ramp_largest_moment(spans);
	out->force_span = spans->high[out->largest_force - HISTORY_FX] -
	                  spans->low[out->largest_force - HISTORY_FX];
	ramp_watch_open(&force, spans, out->largest_force);
	ramp_watch_open(&moment, spans, out->largest_moment);
	if (ramp_is_possible(spans, out->largest_force) ||
	    ramp_is_possible(spans, out->largest_moment))
		watch_ramps(history, &force, &moment);
	out->force_ramp = force.samples;
	out->moment_ramp = moment.samples;
	tell_ramp(&force, file, to);
	tell_ramp(&moment, file, to);
}

bool history_scan(const char *text, size_t length, uint32_t file, struct diagnostics *to,
                  struct history_summary *out)
{
	struct history history;
	struct step_sizes sizes = {0};
	struct ramp_spans spans = {0};
	uint32_t faults = 0;
	*out = (struct history_summary){0};
	if (!history_open(&history, text, length, file, to))
		return false;
	scan_rows(history, out, &sizes, &spans, &faults);
	if (faults > 0)
		return false;
	out->median_step = step_sizes_median(&sizes);
	out->longest_step = sizes.longest[0].step;
	tell_gaps(&sizes, file, to);
	scan_ramps(history, &spans, file, to, out);
	return true;
}
