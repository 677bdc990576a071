#include "weights.h"

#include "factors.h"

double part_mass(const struct part *part, enum weight_run run)
{
	/* least_mass where the weight helps: in the low and in the stability run */
	if (run != RUN_FULL && is_known(part->least_mass))
		return part->least_mass.value;
	return is_known(part->mass) ? part->mass.value : 0;
}

static struct weights weights_times(const struct cell *cell, enum weight_run run, double k_weight)
{
	double factor = k_weight * STANDARD_GRAVITY;
	struct weights out = {0};
	for (size_t i = 0; i < cell->parts.count; i++) {
		const struct part *part = (const struct part *)cell->parts.rows + i;
		double weight = factor * part_mass(part, run);
		bool box = is_known(part->box_from) && is_known(part->box_to);
		out.down += weight;
		for (int k = 0; k < 2; k++) {
			double from = part->box_from.at[k], to = part->box_to.at[k];
			out.moment[k] += weight * (box ? 0.5 * (from + to) : part->at.at[k]);
			out.half[k] += box ? weight * 0.5 * (to - from) : 0;
		}
	}
	return out;
}

struct weights parts_weights(const struct cell *cell, enum method method, enum weight_run run)
{
	return weights_times(cell, run, run_factors(cell, method, run).weight);
}

struct weights case_weights(const struct cell *cell, const struct load_case *c)
{
	return weights_times(cell, c->run, case_factors(cell, c).weight);
}

void corner_signs(int corner, double sign[2])
{
	sign[0] = corner < 0 ? 0 : corner & 1 ? 1 : -1;
	sign[1] = corner < 0 ? 0 : corner & 2 ? 1 : -1;
}

enum arm_case case_with_load(const struct cell *cell, enum arm_case wanted)
{
	return wanted != ARM_REST && reaction_known(&cell->arm.reaction[wanted]) ? wanted
	                                                                         : ARM_REST;
}
