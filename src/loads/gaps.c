/* What is not known of the loads. */
#include "gaps.h"

#include "../arm/arm_loads.h"
#include "../cell/load_model.h"
#include "earthquake.h"
#include <string.h>

static void gap(struct loads *loads, const char *path, enum gap_kind kind)
{
	for (size_t i = 0; i < loads->gap_count; i++)
		if (strcmp(loads->gaps[i].path, path) == 0)
			return;
	if (loads->gap_count < MAX_GAPS)
		loads->gaps[loads->gap_count++] = (struct gap){path, kind};
}

static void reaction_gaps(const struct reaction *r, const char *section, const char *const path[4],
                          struct loads *loads)
{
	const struct number *number[4] = {&r->vertical, &r->horizontal, &r->tilting, &r->twisting};
	if (!reaction_known(r)) {
		gap(loads, section, GAP_FAVOURABLE);
		return;
	}
	for (int k = 0; k < 4; k++)
		if (number[k]->given.origin == ABSENT)
			gap(loads, path[k], GAP_FAVOURABLE);
}

#define REACTION_PATHS(key) \
	{"arm.reactions." key, {"arm.reactions." key ".vertical", "arm.reactions." key ".horizontal", \
	 "arm.reactions." key ".tilting", "arm.reactions." key ".twisting"}}

static const struct arm_case_paths {
	const char *section;
	const char *path[4];
} case_paths[ARM_CASES] = {
	[ARM_NORMAL] = REACTION_PATHS("normal"),
	[ARM_EMERGENCY_STOP] = REACTION_PATHS("emergency_stop"),
};

static bool sheet_used(const struct arm *arm)
{
	return reaction_known(&arm->reaction[ARM_NORMAL]) ||
	       reaction_known(&arm->reaction[ARM_EMERGENCY_STOP]);
}

static bool covered(const struct cell *cell, enum arm_case arm_case)
{
	return arm_way_covers(cell, WAY_CHAIN, arm_case) ||
	       arm_way_covers(cell, WAY_SWING, arm_case) ||
	       arm_way_covers(cell, WAY_HISTORY, arm_case);
}

static void add_gap(void *loads, const char *path)
{
	/* heavier or turned otherwise, an arm may pull an anchor more or less */
	bool open = strcmp(path, "arm.weight.arm") == 0 || strcmp(path, "arm.turned") == 0;
	gap(loads, path, open ? GAP_OPEN : GAP_FAVOURABLE);
}

/* Every case must come from somewhere: the data sheet or the arm's own motion. */
static void case_gaps(const struct cell *cell, struct loads *loads)
{
	const struct arm *arm = &cell->arm;
	size_t before = loads->gap_count;
	if (own_motion_given(cell))
		arm_gaps(cell, add_gap, loads);
	bool told = loads->gap_count > before;
	for (int k = ARM_NORMAL; k <= ARM_EMERGENCY_STOP; k++) {
		const struct reaction *r = &arm->reaction[k];
		if (reaction_known(r) || !(covered(cell, (enum arm_case)k) || told))
			reaction_gaps(r, case_paths[k].section, case_paths[k].path, loads);
	}
}

/* Whether the weight moment of the stretched arm is taken from arm.weight.reach somewhere. */
static bool reach_used(const struct cell *cell)
{
	const struct arm *arm = &cell->arm;
	bool sheet = sheet_used(arm) || !own_motion_given(cell);
	bool used = sheet && (!is_known(arm->tilting_includes_weight) ||
	                      arm->tilting_includes_weight.value == NO);
	for (size_t i = 0; i < cell->loads.count; i++)
		used |= arm->chain.joints.count == 0 &&
		        ((const struct extra_load *)cell->loads.rows)[i].with.value == ARM_REST;
	used |= lasting_loads_due(cell) && !arm_way_covers(cell, WAY_CHAIN, ARM_REST);
	return used;
}

/* The word unknown, where a default would otherwise stand. */
static bool stated_unknown(const struct word *word)
{
	return word->given.origin != GIVEN && word->given.mark.line > 0;
}

/* A default that the file says is not known must not be taken: a ceiling arm is no floor arm. */
static void unknown_words(const struct cell *cell, struct loads *loads)
{
	const struct arm *arm = &cell->arm;
	const struct chain_joint *joint = arm->chain.joints.rows;
	if (own_motion_given(cell) && stated_unknown(&arm->mounting))
		gap(loads, "arm.mounting", GAP_OPEN);
	for (size_t i = 0; i < arm->chain.joints.count; i++)
		if (stated_unknown(&joint[i].kind))
			gap(loads, "arm.chain.joints[].kind", GAP_OPEN);
}

static void weight_gaps(const struct cell *cell, struct loads *loads)
{
	const struct arm *arm = &cell->arm;
	bool sheet = sheet_used(arm) || !own_motion_given(cell);
	bool chain_alone = !sheet && arm->history.count == 0 && !swing_given(cell);
	if (!is_known(arm->mount))
		gap(loads, "arm.mount", GAP_BLOCKING);
	if (!is_known(arm->mass) && !chain_alone)
		gap(loads, "arm.weight.arm", GAP_OPEN);
	if (!is_known(arm->payload) && !(chain_alone && is_known(arm->chain.payload_mass)))
		gap(loads, "arm.weight.payload", GAP_FAVOURABLE);
	if (sheet && !is_known(arm->vertical_includes_weight))
		gap(loads, "arm.reactions.vertical_includes_weight", GAP_FAVOURABLE);
	if (sheet && !is_known(arm->tilting_includes_weight))
		gap(loads, "arm.reactions.tilting_includes_weight", GAP_FAVOURABLE);
	if (!reach_used(cell))
		return;
	if (!is_known(arm->reach))
		gap(loads, "arm.weight.reach.arm", GAP_FAVOURABLE);
	if (!is_known(arm->payload_reach))
		gap(loads, "arm.weight.reach.payload", GAP_FAVOURABLE);
}

void find_gaps(const struct cell *cell, struct loads *loads)
{
	const struct part *part = cell->parts.rows;
	const struct extra_load *load = cell->loads.rows;
	if (cell->anchors.count == 0)
		gap(loads, "anchors.at", GAP_BLOCKING);
	if (cell->base.count == 0)
		gap(loads, "cell.base", GAP_BLOCKING);
	if (!is_known(cell->parts))
		gap(loads, "cell.parts", GAP_OPEN);
	for (size_t i = 0; i < cell->parts.count; i++) {
		if (!is_known(part[i].mass))
			gap(loads, "cell.parts[].mass", GAP_OPEN);
		if (!is_known(part[i].at) &&
		    !(is_known(part[i].box_from) && is_known(part[i].box_to)))
			gap(loads, "cell.parts[].at", GAP_OPEN);
	}
	case_gaps(cell, loads);
	unknown_words(cell, loads);
	weight_gaps(cell, loads);
	earthquake_gaps(cell, add_gap, loads);
	for (size_t i = 0; i < cell->loads.count; i++) {
		if (!is_known(load[i].force) && !is_known(load[i].force_vector))
			gap(loads, "loads[].force", GAP_FAVOURABLE);
		if (!is_known(load[i].at_height))
			gap(loads, "loads[].at_height", GAP_FAVOURABLE);
	}
}

