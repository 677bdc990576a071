/* The lumped arm as loads of one case. An estimate: the largest of every kind at once. */
#include "arm_sources.h"

#include <math.h>

static const double full_turn = 6.28318530717958647692;

/* With or without its payload, whichever is larger of each kind; the uplift is linear in the
 * payload, so no load in between lifts more. */
static void swing_values(const struct cell *cell, enum arm_case arm_case,
                         double value[REACTION_KINDS], double *weight)
{
	struct swing swing;
	enum swing_axes axes;
	struct swing_reaction full, empty;
	arm_swing_of(cell, &swing, &axes);
	swing_reactions(&swing, axes, arm_case, &full, NULL);
	swing.payload_mass = 0;
	swing_reactions(&swing, axes, arm_case, &empty, NULL);
	value[REACTION_TILTING] = full.tilting;
	value[REACTION_HORIZONTAL] = full.horizontal;
	value[REACTION_DOWNFORCE] = full.down;
	value[REACTION_TWISTING] = full.twisting;
	value[REACTION_UPLIFT] = fmax(full.up, empty.up);
	*weight = full.weight;
}

bool arm_swing_source(const struct arm_build *build, enum arm_case arm_case, struct arm_source *out)
{
	double value[REACTION_KINDS], weight;
	*out = (struct arm_source){.way = WAY_SWING, .arm_case = arm_case};
	swing_values(build->cell, arm_case, value, &weight);
	out->name = arena_format(build->arena, "%s, swing", arm_case_names[arm_case]);
	out->swept = arm_aligned_loads(build->arena, value, weight);
	if (!out->swept.list)
		return false;
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		/* the model knows no companions but the largest of the other kinds */
		out->extreme[kind] = (struct arm_extreme){
			.value = value[kind],
			.bound = HUGE_VAL,
			.load = out->swept.list[kind == REACTION_UPLIFT ? 2 : 0]};
	return out->name != NULL;
}

/* --- the loads of separate maxima ----------------------------------------------------------- */

struct arm_load_set arm_aligned_loads(struct arena *arena, const double value[REACTION_KINDS],
                                      double weight)
{
	const double down[2] = {value[REACTION_DOWNFORCE], -value[REACTION_UPLIFT]};
	struct arm_load *list = arena_take(arena, 4, sizeof *list);
	if (!list)
		return (struct arm_load_set){NULL, 0};
	for (int i = 0; i < 4; i++) {
		double sense = i % 2 ? -1 : 1;
		/* first moment (My, -Mx) = (M, 0): tips toward +x, as the force pushes */
		list[i] = (struct arm_load){
			.force = {value[REACTION_HORIZONTAL], 0, -down[i / 2]},
			.moment = {0, value[REACTION_TILTING], sense * value[REACTION_TWISTING]},
			.weight = weight,
			.spin_to = full_turn};
	}
	return (struct arm_load_set){list, 4};
}
