#include "load_cycles.h"

#include "judging.h"

/* The word unknown states that there are cycles, as a number does. */
static bool stated(const struct number *number)
{
	return is_known(*number) || number->given.mark.line > 0;
}

static bool stated_here(const struct cell *cell)
{
	const struct arm_history *history = cell->arm.history.rows;
	for (size_t i = 0; i < cell->arm.history.count; i++)
		if (stated(&history[i].cycles_a_year))
			return true;
	return cell->arm.motion.cycle.count > 0 || stated(&cell->arm.motion.cycles_a_year);
}

bool cycles_stated(const struct cell *cell)
{
	const struct setup *setup = cell->setups.rows;
	if (cell->setups.count == 0)
		return stated_here(cell);
	for (size_t s = 0; s < cell->setups.count; s++)
		if (stated_here(setup[s].cell))
			return true;
	return false;
}

bool judge_cycles_known(const struct judging *judging, struct finding *out)
{
	const struct cycle_sources *cycles = &judging->facts->cycles;
	for (size_t i = 0; i < cycles->count; i++) {
		const struct cycle_source *source = &cycles->list[i];
		if (!is_known(*source->a_year))
			finding_lacks(out, source->path);
		if (!source->counted)
			finding_doubts(
				out,
				sentence(judging, "the load cycles of %s are not counted: %s",
			                 source->name, source->why_not),
				"without them the number and range of all cycles is not known");
	}
	if (cycles->count == 0 && judging->base && out->missing_count == 0)
		finding_doubts(out, "no load cycles could be counted in this setup",
		               "give its history or its working cycle");
	return cycles->count > 0;
}
