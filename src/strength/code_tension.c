/* How the tensions of a state use the tension modes. */
#include "code_parts.h"

/* Anchors within this of the most loaded one are named with it. */
#define AS_LOADED 1e-9

static const struct mode_ratio not_computed = {.ratio = -1};

uint64_t tension_mask(const double tension[], size_t count)
{
	double largest = 0;
	uint64_t mask = 0;
	for (size_t i = 0; i < count; i++)
		largest = fmax(largest, tension[i]);
	for (size_t i = 0; i < count; i++)
		if (tension[i] > LOADED_SHARE * largest)
			mask |= (uint64_t)1 << i;
	return mask;
}

/* Load of a group: its sum, and the point where the resultant acts. ACI 318-19 17.6.2.3.1, EN
 * 1992-4 (7.6): both divide the strength by (1 + e/lever) for each axis; here the load is
 * multiplied by it, so that the strength is kept without the load. */
static void load_group(const struct code_strength *s, const struct kept_group *group,
                       const double tension[], struct mode_use *use)
{
	const struct vec2 *place = s->cache->frame->place;
	double sum = 0, x = 0, y = 0;
	for (size_t k = 0; k < group->count; k++) {
		size_t i = group->anchor[k];
		sum += tension[i];
		x += tension[i] * place[i].x;
		y += tension[i] * place[i].y;
	}
	use->group = group;
	use->load = sum;
	use->at = sum > 0 ? (struct vec2){x / sum, y / sum} : group->centre;
	use->off_x = fabs(use->at.x - group->centre.x);
	use->off_y = fabs(use->at.y - group->centre.y);
}

void use_group(const struct code_strength *s, const struct kept_group *group, const double load[],
               bool earthquake, struct mode_use *use)
{
	load_group(s, group, load, use);
	double lever = group->strength.lever;
	double demand = use->load * (1 + use->off_x / lever) * (1 + use->off_y / lever);
	double capacity = earthquake ? group->strength.seismic : group->strength.design;
	use->worst = (struct mode_ratio){used(demand, capacity), group->strength.anchors,
	                                 group->strength.edge, demand, capacity};
}

static void worst_group(struct code_strength *s, enum code_mode mode,
                        const struct anchor_load *load, uint64_t loaded, struct mode_use *out)
{
	size_t count;
	const struct kept_group *list = kept_groups(s, mode, loaded, &count);
	if (!list) {
		out->worst = not_computed;
		return;
	}
	for (size_t g = 0; g < count; g++) {
		struct mode_use use = {.loaded = loaded};
		use_group(s, &list[g], load->tension, load->earthquake, &use);
		if (!out->group || use.worst.ratio > out->worst.ratio)
			*out = use;
	}
}

/* The groups of the loaded anchors, and the most loaded one as if alone: a neighbour that is hardly
 * loaded must not lend it concrete; S41. */
static void groups_and_leader(struct code_strength *s, enum code_mode mode,
                              const struct anchor_load *load, uint64_t loaded,
                              struct mode_use *out)
{
	size_t leader = 0;
	for (size_t i = 1; i < load->count; i++)
		if (load->tension[i] > load->tension[leader])
			leader = i;
	worst_group(s, mode, load, loaded, out);
	if (loaded & (loaded - 1) && !(out->worst.ratio < 0))
		worst_group(s, mode, load, (uint64_t)1 << leader, out);
}

static double single_strength(struct code_strength *s, enum code_mode mode, size_t loaded,
                              bool earthquake)
{
	if (mode == STEEL_TENSION)
		return kept_steel_tension(s, earthquake);
	return mode == PULLOUT ? kept_pullout(s, earthquake, loaded) : kept_bond_sustained(s);
}

static size_t count_of(uint64_t mask)
{
	size_t count = 0;
	for (; mask; mask &= mask - 1)
		count++;
	return count;
}

static void most_loaded(struct code_strength *s, enum code_mode mode,
                        const struct anchor_load *load, uint64_t loaded, struct mode_use *out)
{
	double capacity = single_strength(s, mode, count_of(loaded), load->earthquake), most = -1;
	uint64_t anchors = 0;
	for (size_t i = 0; i < load->count; i++)
		if (load->tension[i] > most) {
			most = load->tension[i];
			out->anchor = (int)i;
		}
	for (size_t i = 0; i < load->count; i++)
		if (load->tension[i] >= most * (1 - AS_LOADED))
			anchors |= (uint64_t)1 << i;
	out->worst = (struct mode_ratio){used(most, capacity), anchors, 0, most, capacity};
}

void tension_use(struct code_strength *s, enum code_mode mode, const struct anchor_load *load,
                 uint64_t loaded, struct mode_use *out)
{
	*out = (struct mode_use){.loaded = loaded};
	if (!mode_ready(s, mode, load->earthquake))
		out->worst = not_computed;
	else if (loaded && (mode == STEEL_TENSION || mode == PULLOUT || mode == BOND_SUSTAINED))
		most_loaded(s, mode, load, loaded, out);
	else if (loaded)
		groups_and_leader(s, mode, load, loaded, out);
}
