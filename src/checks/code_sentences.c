/* Findings of the codes' modes in words: whom they are about, by which clause, and what helps. */
#include "code_judging.h"
#include "judging.h"

#include <math.h>

#define LISTED 8         /* anchors named one by one; more are counted */
#define DEEPEST 4.0      /* an embedment worth proposing, in the one there is */
#define HALVINGS 40

/* Words of a mode. An anchor or a group carries it; the group of a code counts as one body. */
struct mode_words { const char *title[CODES], *clause[CODES]; bool of_group; };
static const struct mode_words words[CODE_MODES] = {
	[STEEL_TENSION] = {{"steel in tension", "steel in tension"},
	                   {"ACI 318-19 17.6.1", "EN 1992-4 7.2.1.3"}, false},
	[CONE] = {{"concrete breakout", "concrete cone failure"},
	          {"ACI 318-19 17.6.2", "EN 1992-4 7.2.1.4"}, true},
	[PULLOUT] = {{"pullout", "pull-out"}, {"ACI 318-19 17.6.3", "EN 1992-4 7.2.1.5"}, false},
	[BLOWOUT] = {{"side-face blowout", "blow-out"},
	             {"ACI 318-19 17.6.4", "EN 1992-4 7.2.1.8"}, true},
	[BOND] = {{"bond", "combined pull-out and concrete failure"},
	          {"ACI 318-19 17.6.5", "EN 1992-4 7.2.1.6"}, true},
	[SPLITTING] = {{"splitting", "splitting"}, {"ACI 318-19 17.9", "EN 1992-4 7.2.1.7"}, true},
	[BOND_SUSTAINED] = {{"bond under lasting tension", "bond under lasting tension"},
	                    {"ACI 318-19 17.5.2.2", "EN 1992-4 7.2.1.6"}, false},
	[STEEL_SHEAR] = {{"steel in shear", "steel in shear"},
	                 {"ACI 318-19 17.7.1", "EN 1992-4 7.2.2.3"}, false},
	[EDGE] = {{"shear breakout", "concrete edge failure"},
	          {"ACI 318-19 17.7.2", "EN 1992-4 7.2.2.5"}, true},
	[PRYOUT] = {{"pryout", "pry-out"}, {"ACI 318-19 17.7.3", "EN 1992-4 7.2.2.4"}, true}};

const char *mode_title(enum code code, enum code_mode mode)
{
	return words[mode].title[code];
}

const char *mode_clause(enum code code, enum code_mode mode)
{
	return words[mode].clause[code];
}

const char *anchors_named(const struct judging *judging, uint64_t anchors)
{
	const char *list = "";
	int count = 0;
	for (int i = 0; i < MAX_ANCHORS; i++) {
		if (!(anchors >> i & 1))
			continue;
		if (count++ < LISTED)
			list = sentence(judging, "%s%sA%d", list, count > 1 ? ", " : "", i + 1);
	}
	if (count > LISTED)
		list = sentence(judging, "%s and %d more", list, count - LISTED);
	return sentence(judging, "%s %s", count == 1 ? "anchor" : "anchors",
	                count ? list : "(none)");
}

/* Distance of the nearest of these anchors to an edge (number from 1); 0: not known [mm]. */
static double distance_to(const struct judging *judging, uint64_t anchors, unsigned edge)
{
	const struct setting *setting = judging->setting;
	double least = HUGE_VAL;
	if (edge == 0 || edge > setting->edge_count)
		return setting->edges_known ? 0 : setting->clear;
	for (size_t i = 0; i < judging->cell->anchors.count; i++)
		if (anchors >> i & 1)
			least = fmin(least,
			             setting->edge_distance[i * setting->edge_count + edge - 1]);
	return isfinite(least) ? least : 0;
}

/* " toward an edge 95 mm away", or nothing. */
static const char *edge_named(const struct judging *judging, const struct mode_ratio *r)
{
	const struct setting *setting = judging->setting;
	double distance = distance_to(judging, r->anchors, r->edge);
	if (r->edge > 0 && r->edge <= setting->edge_count)
		return sentence(judging, " at %s %s away",
		                setting->edges[r->edge - 1].joint >= 0 ? "a joint" : "an edge",
		                shown(judging, distance, DIM_LENGTH));
	return distance > 0 ? sentence(judging, " at an edge that may be %s away",
	                               shown(judging, distance, DIM_LENGTH))
	                    : "";
}

const char *mode_said(const struct judging *judging, enum code code, enum code_mode mode,
                      const struct mode_ratio *r)
{
	bool several = r->anchors & (r->anchors - 1),
	     steel = mode == STEEL_TENSION || mode == STEEL_SHEAR;
	const char *whom = !several               ? "on the anchor"
	                   : words[mode].of_group ? "on the group"
	                                          : "on each";
	return sentence(judging, "%s%s %s%s: %s %s, %s by %s", anchors_named(judging, r->anchors),
	                steel ? "," : " in", words[mode].title[code],
	                mode == EDGE || mode == BLOWOUT ? edge_named(judging, r) : "",
	                shown(judging, r->demand, DIM_FORCE), whom,
	                shown(judging, r->capacity, DIM_FORCE), words[mode].clause[code]);
}

/* --- what helps --- */

typedef void group_function(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                            bool earthquake, struct group_strength *out, struct trace *trace);

static group_function *of_embedment(enum code code, enum code_mode mode)
{
	bool aci = code == ACI318;
	return mode == CONE     ? aci ? aci_cone : en_cone
	       : mode == BOND   ? aci ? aci_bond : en_bond
	       : mode == PRYOUT ? aci ? aci_pryout : en_pryout
	                        : NULL;
}

/* Least embedment at which the same anchors carry the load, all else as it is; 0: none in reach.
 * The eccentricity counts as at the present depth, the safe side. [mm] */
static double needed_embedment(const struct judging *judging, enum code code, enum code_mode mode,
                               const struct mode_ratio *r)
{
	const struct code_strength *s = judging->setting->code[code];
	group_function *strength = of_embedment(code, mode);
	struct code_facts f = s->facts;
	struct group_strength g;
	bool earthquake = judging->load && judging->load->earthquake;
	double low = f.embedment, high = DEEPEST * f.embedment;
	if (f.thickness > 0)
		high = fmin(high, 0.8 * f.thickness);
	if (!strength || !(high > low))
		return 0;
	for (int i = 0; i <= HALVINGS; i++) {
		f.embedment = i == 0 ? high : (low + high) / 2;
		strength(&f, s->pattern, r->anchors, earthquake, &g, NULL);
		bool enough = (earthquake ? g.seismic : g.design) >= r->demand;
		if (i == 0 && !enough)
			return 0;
		*(enough ? &high : &low) = f.embedment;
	}
	return high;
}

static const char *deeper(const struct judging *judging, enum code code, enum code_mode mode,
                          const struct mode_ratio *r)
{
	double needed = needed_embedment(judging, code, mode, r);
	const char *times = percent(judging, r->ratio);
	if (!(needed > 0))
		return sentence(judging,
		                "%s of the strength is needed, more than depth alone gives here: anchors "
		                "farther apart and farther from edges, more of them, or less load",
		                times);
	return sentence(judging,
	                "an embedment of at least %s (now %s) with all else as it is, anchors farther "
	                "apart, more of them, or less load",
	                shown_up(judging, needed, DIM_LENGTH),
	                shown(judging, judging->setting->code[code]->facts.embedment, DIM_LENGTH));
}

static const char *pulled_out(const struct judging *judging, const struct code_facts *f,
                              const struct mode_ratio *r)
{
	/* ACI 318-19 (17.6.3.2.2a) and EN 1992-4 (7.11): proportional to the head */
	if (f->type_known && f->type == CAST_IN_HEADED)
		return sentence(judging, "a head with a bearing area of at least %s (now %s)",
		                shown_up(judging, f->head_area * r->ratio, DIM_AREA),
		                shown(judging, f->head_area, DIM_AREA));
	return sentence(judging, "an anchor with %s of this pullout strength, or less load",
	                percent(judging, r->ratio));
}

/* The strength grows at most with the power 1.5 of the distance, ACI 318-19 17.7.2.2.1 and EN
 * 1992-4 (7.41). */
static const char *farther(const struct judging *judging, const struct mode_ratio *r)
{
	double distance = distance_to(judging, r->anchors, r->edge);
	if (!(distance > 0))
		return "farther from edges and joints, or less load";
	return sentence(judging,
	                "at least %s from that edge (now %s), bars along the edge that stand on the "
	                "drawings, or less load",
	                shown_up(judging, distance * pow(r->ratio, 2.0 / 3.0), DIM_LENGTH),
	                shown(judging, distance, DIM_LENGTH));
}

const char *mode_remedy(const struct judging *judging, enum code code, enum code_mode mode,
                        const struct mode_ratio *r)
{
	const struct code_facts *f = &judging->setting->code[code]->facts;
	switch (mode) {
	case STEEL_SHEAR:
		if (f->lever_arm == LEVER_ARM)
			return stand_off_remedy(judging);
		/* fall through */
	case STEEL_TENSION:
		return sentence(judging,
		                "anchors with %s of this steel strength (thicker or stronger), or more "
		                "of them",
		                percent(judging, r->ratio));
	case CONE:
	case BOND:
	case PRYOUT:
		return deeper(judging, code, mode, r);
	case PULLOUT:
		return pulled_out(judging, f, r);
	case BOND_SUSTAINED:
		/* ACI 318-19 17.6.5.2.1: proportional to the embedment */
		return sentence(judging,
		                "an embedment of at least %s (now %s), or less lasting tension",
		                shown_up(judging, f->embedment * r->ratio, DIM_LENGTH),
		                shown(judging, f->embedment, DIM_LENGTH));
	case BLOWOUT:
		return sentence(judging, "at least %s from the edge: beyond it no side blows out",
		                shown_up(judging, mode_reach(f, BLOWOUT), DIM_LENGTH));
	case SPLITTING:
		return sentence(judging,
		                "at least %s from every edge and a slab of the anchor's least "
		                "thickness, or bars that hold splitting cracks to 0.3 mm",
		                shown_up(judging, mode_reach(f, SPLITTING), DIM_LENGTH));
	case EDGE:
		return farther(judging, r);
	default:
		return NULL;
	}
}

/* --- gap under the base --- */

const char *lever_said(const struct judging *judging, enum code code)
{
	const struct code_strength *s = judging->setting->code[code];
	const struct code_facts *f = &s->facts;
	bool earthquake = judging->load && judging->load->earthquake;
	struct code_facts flat = *f;
	if (f->lever_arm != LEVER_ARM && f->lever_arm != GROUT_PAD)
		return NULL;
	flat.lever_arm = NO_LEVER;
	flat.lever = flat.grout = 0;
	double with = code == ACI318 ? aci_steel_shear(f, 0, earthquake, NULL)
	                             : en_steel_shear(f, 0, earthquake, 1, NULL);
	double without = code == ACI318 ? aci_steel_shear(&flat, 0, earthquake, NULL)
	                                : en_steel_shear(&flat, 0, earthquake, 1, NULL);
	if (f->lever_arm == GROUT_PAD)
		return sentence(
			judging,
			"%s of grout under the base cost strength: grout crushes beside the "
		        "anchor, "
			"which then bends; the steel of one anchor carries %s in shear instead of "
			"%s flat on the concrete",
			shown(judging, f->grout, DIM_LENGTH), shown(judging, with, DIM_FORCE),
			shown(judging, without, DIM_FORCE));
	return sentence(judging,
	                "the gap under the base costs strength: the anchor stands free in it and bends "
	                "over %s like a cantilever; the steel of one anchor carries %s in shear "
	                "instead of %s flat on the concrete, and less beside tension",
	                shown(judging, f->lever, DIM_LENGTH), shown(judging, with, DIM_FORCE),
	                shown(judging, without, DIM_FORCE));
}
