/* All modes of a state, and what tension and shear make together. */
#include "code_parts.h"

static const struct mode_ratio not_computed = {.ratio = -1};

void mode_use(struct code_strength *s, enum code_mode mode, const struct anchor_load *load,
              struct mode_use *out)
{
	*out = (struct mode_use){.worst = not_computed};
	if (load->sustained != (mode == BOND_SUSTAINED))
		return;
	if (mode < STEEL_SHEAR)
		tension_use(s, mode, load, tension_mask(load->tension, load->count), out);
	else if (mode == STEEL_SHEAR)
		steel_shear_use(s, load, out);
	else if (!load->shear_at)
		out->worst = mode == EDGE ? load->edge : load->pryout;
	else
		(mode == EDGE ? edge_use : pryout_use)(s, load->shear_at, load->earthquake, out);
}

/* --- together ------------------------------------------------------------------------------- */

/* The mode of [from, to) that is used most; false where one that applies could not be computed.
 * Bond under lasting tension has loads of its own and takes no part. */
static bool governing(const struct code_strength *s, const struct code_ratios *ratios,
                      enum code_mode from, int to, enum code_mode *out)
{
	double most = -1;
	for (int m = (int)from; m < to; m++) {
		double ratio = ratios->mode[m].ratio;
		if (m == BOND_SUSTAINED || !s->cache->frame->applies[m])
			continue;
		if (!(ratio >= 0))
			return false;
		if (ratio > most) {
			most = ratio;
			*out = (enum code_mode)m;
		}
	}
	return most >= 0;
}

/* What the steel carries in shear flat on the concrete, which stays the upper limit of bending. */
static double flat_steel_shear(const struct code_strength *s, bool earthquake)
{
	struct code_facts flat = s->facts;
	flat.lever_arm = NO_LEVER;
	return en_steel_shear(&flat, 0, earthquake, s->pattern->count, NULL);
}

/* Steel by EN 1992-4 7.2.3, anchor by anchor. */
static void steel_together(struct code_strength *s, const struct anchor_load *load,
                           struct pair *pair, struct mode_ratio *out)
{
	bool quake = load->earthquake, lever = s->facts.lever_arm == LEVER_ARM;
	if (!mode_ready(s, STEEL_TENSION, quake) || !mode_ready(s, STEEL_SHEAR, quake))
		return;
	double tension_strength = kept_steel_tension(s, quake);
	double flat = lever ? flat_steel_shear(s, quake) : 0;
	for (size_t i = 0; i < load->count; i++) {
		double strength = kept_steel_shear(s, load->tension[i], quake);
		double shear = used(load->shear[i], strength);
		double tension = used(load->tension[i], tension_strength);
		/* where the bending of a lever arm governs, (7.38) has taken the tension off */
		bool bent = lever && strength < flat;
		double ratio = bent ? shear : en_interaction_steel(tension, shear, quake);
		if (!(ratio > out->ratio))
			continue;
		*out = (struct mode_ratio){ratio, (uint64_t)1 << i, 0, ratio, 1};
		*pair = (struct pair){STEEL_TENSION, STEEL_SHEAR, (int)i, tension, shear};
	}
}

void together_use(struct code_strength *s, bool steel, const struct anchor_load *load,
                  const struct code_ratios *ratios, struct pair *pair, struct mode_ratio *out)
{
	bool aci = s->facts.code == ACI318;
	*out = not_computed;
	*pair = (struct pair){.anchor = -1};
	if (load->sustained || (steel && aci))
		return;
	if (steel) {
		steel_together(s, load, pair, out);
		return;
	}
	/* ACI 318-19 17.8: all modes; EN 1992-4 Table 7.3: concrete apart from steel, but in an
	 * earthquake all of them, (C.9); S43 */
	bool all = aci || load->earthquake;
	if (!governing(s, ratios, all ? STEEL_TENSION : CONE, STEEL_SHEAR, &pair->tension) ||
	    !governing(s, ratios, all ? STEEL_SHEAR : EDGE, CODE_MODES, &pair->shear))
		return;
	const struct mode_ratio *n = &ratios->mode[pair->tension], *v = &ratios->mode[pair->shear];
	pair->tension_ratio = n->ratio;
	pair->shear_ratio = v->ratio;
	double ratio = aci ? aci_interaction(
				     (enum code_interaction)s->facts.given->aci.interaction.value,
				     n->ratio, v->ratio)
	                   : en_interaction_concrete(n->ratio, v->ratio, load->earthquake);
	*out = (struct mode_ratio){ratio, n->anchors | v->anchors, v->edge ? v->edge : n->edge,
	                           ratio, 1};
}

void code_ratios(struct code_strength *s, const struct anchor_load *load, struct code_ratios *out)
{
	struct mode_use use;
	struct pair pair;
	uint64_t loaded = tension_mask(load->tension, load->count);
	for (int m = 0; m < CODE_MODES; m++)
		out->mode[m] = not_computed;
	for (int m = 0; m < FIRST_SHEAR_MODE; m++) {
		if (load->sustained != (m == BOND_SUSTAINED) ||
		    !mode_ready(s, (enum code_mode)m, load->earthquake))
			continue;
		tension_use(s, (enum code_mode)m, load, loaded, &use);
		out->mode[m] = use.worst;
	}
	for (int m = FIRST_SHEAR_MODE; m < CODE_MODES; m++) {
		mode_use(s, (enum code_mode)m, load, &use);
		out->mode[m] = use.worst;
	}
	together_use(s, false, load, out, &pair, &out->together);
	together_use(s, true, load, out, &pair, &out->together_steel);
}
