#include "history_doubt.h"

#include "ramps.h"

/* What a sensor's calibration may lack [-]; forces that differ by less than this are noise of one
 * pose. */
#define CALIBRATION 0.05

const char *history_doubt(const struct arm_source *source, double weight, const char **remedy)
{
	const struct history_summary *history = &source->summary;
	double pressing = source->extreme[REACTION_DOWNFORCE].value;
	*remedy = "record or compute the whole motion, from rest to rest, with at least 20 rows in "
		  "its shortest ramp";
	if (history->rows < RAMP_SAMPLES)
		return "too few rows for any motion";
	if (!(history->force_span > CALIBRATION * weight) || !(history->force_span > 0))
		return "hardly anything moves in it";
	if (history->force_ramp < RAMP_SAMPLES || history->moment_ramp < RAMP_SAMPLES)
		return "sampled too coarsely for its ramps: the peaks may lie between the rows";
	if (history->longest_step > GAP_STEPS * history->median_step)
		return "a gap between its rows may hide a peak";
	*remedy =
		"record it with the weight of the arm in it: a sensor must not be zeroed with the "
		"arm on it";
	if (pressing < (1 - CALIBRATION) * weight)
		return "it never presses as much as the arm weighs: its weight is not in it";
	return NULL;
}
