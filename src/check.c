#include "check.h"

#include "check_code.h"
#include "check_judge.h"
#include "check_sweep.h"
#include "cell/load_model.h"
#include "check_words.h"

#include <math.h>
#include <string.h>

#define STEEL_MODULUS 200000.0             /* Es [MPa] */
#define ASSUMED_AREA 84.3 /* tensile area without a product: a 12 mm thread [mm2] */
#define ASSUMED_STRENGTH 28.0              /* concrete for the bed's modulus when not known [MPa] */

/* Anchor over bed stiffness, Es As / Ec with Ec = 4700 sqrt(f) (ACI 318-19 19.2.2.1) [mm2]. */
static double default_bed_ratio(const struct setup_run *setup)
{
	const struct product *product = &setup->cell->anchors.product;
	double shaft = product->shaft.value;
	double area = is_known(product->tensile_area) ? product->tensile_area.value
	              : is_known(product->shaft)
	                      ? 0.78 * (3.14159265358979323846 / 4) * shaft * shaft
	                      : ASSUMED_AREA;
	double strength = setup->setting.strength.known ? setup->setting.strength.value
	                                                : ASSUMED_STRENGTH;
	return STEEL_MODULUS * area / (4700 * sqrt(strength));
}

static void choose_bed_ratios(struct setup_run *setup)
{
	static const double factor[] = {0.25, 1, 4, 16};
	const struct number *own = &setup->cell->choices.anchor_bed_ratio;
	if (is_known(*own)) {
		setup->bed_ratio[0] = own->value;
		setup->bed_ratio_count = 1;
		return;
	}
	double middle = default_bed_ratio(setup);
	for (size_t k = 0; k < sizeof factor / sizeof factor[0]; k++)
		setup->bed_ratio[setup->bed_ratio_count++] = factor[k] * middle;
}

static enum status open_setup(struct run *run, size_t s)
{
	struct setup_run *setup = &run->setups[s];
	setup->cell = setup_cell(run->cell, s);
	setup->facts.least_down = HUGE_VAL;
	enum status status = setting_build(setup->cell, run->arena, &setup->setting);
	if (status != DONE)
		return status;
	choose_bed_ratios(setup);
	if (setup->cell->base.count == 0 || setup->cell->anchors.count == 0)
		return DONE;
	setup->base = arena_take(run->arena, 1, sizeof *setup->base);
	return setup->base ? base_prepare(setup->cell, run->arena, setup->base) : NO_MEMORY;
}

/* Of one setup; from an earlier one that differs in the place of the mount alone, if there is one.
 */
static enum status build_arm(struct run *run, size_t s)
{
	const struct cell *cell = run->setups[s].cell;
	size_t like = 0;
	while (like < s && !(run->arms[like] && arm_loads_alike(run->setups[like].cell, cell)))
		like++;
	struct arm_loads *arm = arena_take(run->arena, 1, sizeof *arm);
	if (!arm)
		return NO_MEMORY;
	run->arms[s] = arm;
	if (like == s)
		return arm_loads_build(cell, run->options->histories, run->options->pieces,
		                       run->arena, arm);
	return arm_loads_build_like(cell, run->arms[like], run->setups[like].cell,
	                            run->options->histories, run->options->pieces, run->arena, arm);
}

/* What each setup's own motion gives. */
static enum status build_arms(struct run *run)
{
	enum status status = DONE;
	for (size_t s = 0; s < run->setup_count && status == DONE; s++) {
		if (run->options->arms)
			run->arms[s] = run->options->arms[s];
		else if (own_motion_given(run->setups[s].cell))
			status = build_arm(run, s);
	}
	return status;
}

static enum status open_run(struct run *run)
{
	run->setup_count = setup_count(run->cell);
	run->anchor_count = run->cell->anchors.count;
	run->setups = arena_take(run->arena, run->setup_count, sizeof *run->setups);
	if (!run->setups)
		return NO_MEMORY;
	for (size_t s = 0; s < run->setup_count; s++) {
		enum status status = open_setup(run, s);
		if (status != DONE)
			return status;
	}
	run->watch_count = FIRST_CHECK_WATCH;
	for (size_t i = 0; i < check_count; i++)
		if (check_of_states(&checks[i]) && check_is_due(&checks[i], run->cell))
			run->watched[run->watch_count++] = &checks[i];
	enum status status = build_arms(run);
	return status == DONE ? loads_build(run->cell, run->arms, run->arena, &run->loads) : status;
}

static void copy_facts(const struct run *run, struct result *out)
{
	out->loads = run->loads;
	memcpy(out->arm, run->arms, sizeof out->arm);
	out->states = run->states;
	out->bed_ratio_count = run->setups[0].bed_ratio_count;
	memcpy(out->bed_ratio, run->setups[0].bed_ratio, sizeof out->bed_ratio);
	for (size_t s = 0; s < run->setup_count; s++)
		out->cycles[s] = run->setups[s].facts.cycles;
	if (run->spread)
		memcpy(out->spread, run->spread, run->anchor_count * sizeof out->spread[0]);
}

enum status check_run(struct arena *arena, const struct cell *cell,
                      const struct check_options *options, struct result **out)
{
	struct run run = {.arena = arena, .cell = cell, .options = options};
	struct lacking_list lacking = {0};
	struct result *result = arena_take(arena, 1, sizeof *result);
	*out = NULL;
	if (!result)
		return NO_MEMORY;
	enum status status = open_run(&run);
	result->loads_computed =
		status == DONE &&
		(run.loads.count > 0 || run.loads.group_count > run.loads.first_history);
	if (result->loads_computed)
		status = run_sweep(&run);
	if (status != DONE)
		return status;
	result->cell = cell;
	result->file = result->sha256 = "";
	copy_facts(&run, result);
	status = judge_all(&run, result, &lacking);
	if (status != DONE)
		return status;
	write_words(&run, &lacking, result);
	if (arena->failed)
		return NO_MEMORY;
	*out = result;
	return DONE;
}
