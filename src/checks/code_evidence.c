/* Evidence for what the codes' modes rest on: one place, so that weak evidence of one item makes
 * exactly those checks unproven that need it. */
#include "code_judging.h"
#include "judging.h"

#include <math.h>

#define STRENGTH "anchors.product.strength."

/* What a mode rests on beside the items that code_missing names. */
enum {
	CONCRETE = 1 << 0,           /* strength of the concrete and whether it cracks */
	NEAR_EDGES = 1 << 1,         /* edges within its reach */
	ANY_EDGE = 1 << 2,           /* edges however far */
	THICKNESS = 1 << 3,
	TESTED = 1 << 4,             /* pullout or bond of the sheet, in its concrete */
	SHEAR_SHARED = 1 << 5,       /* every anchor takes its share of the shear */
	GROUPED = 1 << 6             /* the reduced embedment near three edges */
};
static const unsigned rests_on[CODE_MODES] = {
	[CONE] = CONCRETE | NEAR_EDGES | GROUPED,
	[PULLOUT] = CONCRETE | TESTED,
	[BLOWOUT] = CONCRETE | NEAR_EDGES,
	[BOND] = CONCRETE | NEAR_EDGES | TESTED,
	[SPLITTING] = CONCRETE | NEAR_EDGES | THICKNESS | TESTED,
	[BOND_SUSTAINED] = CONCRETE | TESTED,
	[STEEL_SHEAR] = SHEAR_SHARED,
	[EDGE] = CONCRETE | ANY_EDGE | THICKNESS | SHEAR_SHARED,
	[PRYOUT] = CONCRETE | NEAR_EDGES | SHEAR_SHARED | GROUPED};

const char *mode_left_out(const struct cell *cell, enum code code, enum code_mode mode)
{
	const char *why = without_load_model(cell);
	return why ? why : code_left_out(cell, code, mode);
}

void judged_facts(const struct judging *judging, enum code code, struct code_facts *out)
{
	const struct code_strength *s = judging->setting->code[code];
	const struct concrete_strength *strength = &judging->setting->strength;
	if (s)
		*out = s->facts;
	else
		code_facts_resolve(judging->cell, code, strength->known ? strength->value : 0, out);
}

/* --- the anchor's sheet --- */

void judge_sheet_evidence(const struct judging *judging, struct finding *out)
{
	const struct word *evidence = &judging->cell->anchors.product.strength.evidence;
	if (!is_known(*evidence))
		finding_lacks(out, STRENGTH "evidence");
	else if (evidence->value == RATING_BY_ASSUMED)
		finding_doubts(out,
		               "the anchor's design values are assumed: no sheet or test shows them",
		               "the approval or data sheet of exactly this anchor, diameter and "
		               "embedment");
	else
		return;
	/* values that nobody has shown may be higher as well */
	out->never_fails = true;
}

static bool post_installed(const struct code_facts *f)
{
	return !f->type_known || !f->cast_in;
}

/* Pullout and bond do not follow the concrete in a way that the codes state. */
static void judge_tested_concrete(const struct judging *judging, const struct code_facts *f,
                                  struct finding *out)
{
	const struct concrete_strength *strength = &judging->setting->strength;
	const struct number *at = &f->given->at_concrete;
	if (!post_installed(f))
		return;      /* computed from head or hook, no test */
	if (!is_known(*at)) {
		finding_lacks(out, STRENGTH "at_concrete");
		return;
	}
	/* 4000 psi and 28 MPa are the same concrete in the two editions of ACI 318 */
	bool twin = strength->inch_pound_twin && at->value <= 28;
	if (strength->known && !twin && strength->value < at->value)
		finding_doubts(out,
		               sentence(judging,
		                        "concrete of %s, weaker than the %s for which pullout and "
		                        "bond are stated",
		                        shown(judging, strength->value, DIM_STRESS),
		                        shown(judging, at->value, DIM_STRESS)),
		               "the sheet's values for this concrete");
}

/* --- concrete --- */

static void judge_cracks(const struct judging *judging, const struct code_facts *f,
                         struct finding *out)
{
	const struct word *qualified = &judging->cell->anchors.product.qualified_cracked;
	/* in earthquakes all concrete counts as cracked, ACI 318-19 17.10.5.4, EN 1992-4 Annex C */
	bool cracked = f->cracked || earthquake_stated(judging->cell);
	if (!f->cracked && !engineer_stands(&judging->cell->slab.concrete.by_engineer))
		finding_doubts(out,
		               "the concrete is stated as uncracked and no engineer stands for it",
		               "leave slab: concrete: cracked out, or have an engineer stand for it "
		               "(slab: concrete: by_engineer)");
	if (!cracked || !post_installed(f))
		return;
	if (!is_known(*qualified))
		finding_lacks(out, "anchors.product.qualified_cracked");
	else if (qualified->value == NO)
		finding_doubts(
			out,
			"the anchor is not qualified for cracked concrete, and the slab may crack",
			"an anchor that is qualified for cracked concrete");
}

static void judge_concrete(const struct judging *judging, struct finding *out)
{
	finding_lacks_strength(judging, out);
	out->never_fails |= !judging->setting->strength.evidenced;
}

/* --- edges --- */

/* cac, ACI 318-19 17.9.5; of the table's defaults the largest, which any type is within [mm] */
static double splitting_reach(const struct code_facts *f)
{
	const struct number *cac = &f->given->aci.splitting_edge;
	if (f->code != ACI318 || f->cracked || f->cast_in)
		return 0;
	return is_known(*cac) ? cac->value : 4 * f->embedment;
}

double mode_reach(const struct code_facts *f, enum code_mode mode)
{
	double (*limit)(const struct code_facts *, enum code_mode) =
		f->code == ACI318 ? aci_group_limit : en_group_limit;
	double cone = 1.5 * f->embedment;    /* ACI 318-19 17.6.2.1; EN 1992-4 (7.3) */
	bool bonded = !f->type_known || f->type == ADHESIVE;
	switch (mode) {
	case CONE:
		return fmax(cone, splitting_reach(f));
	case BOND:
		return fmax(limit(f, BOND) / 2, splitting_reach(f));
	case PRYOUT:
		return fmax(fmax(cone, bonded ? limit(f, BOND) / 2 : 0), splitting_reach(f));
	case SPLITTING:
		/* EN 1992-4 7.2.1.7: a group is judged within 1.2 ccr,sp */
		return 1.2 * f->given->en.splitting_edge.value;
	case BLOWOUT:
		/* ACI 318-19 17.6.4: hef > 2.5 ca1; EN 1992-4 7.2.1.8: c1 < 0.5 hef */
		return f->code == ACI318 ? f->embedment / 2.5 : 0.5 * f->embedment;
	default:
		return 0;
	}
}

static void judge_near_edges(const struct judging *judging, const struct code_facts *f,
                             enum code_mode mode, struct finding *out)
{
	const struct setting *setting = judging->setting;
	double reach = mode_reach(f, mode);
	if (setting->edges_known || (setting->clear > 0 && setting->clear >= reach))
		return;      /* reach 0: the item that it needs is missing, and named */
	finding_lacks_edges(judging, reach, out);
}

static void judge_any_edge(const struct judging *judging, struct finding *out)
{
	const struct setting *setting = judging->setting;
	if (setting->edges_known)
		return;
	if (setting->clear > 0)
		/* an edge at that very distance is computed: the true one may be farther */
		out->never_fails = true;
	else
		finding_lacks_edges(judging, 0, out);
}

/* s of ACI 318-19 17.6.2.1.2 above the neighbours' own spacing is a departure. */
static void judge_group_spacing(const struct judging *judging, enum code code,
                                struct finding *out)
{
	const struct choices *choices = &judging->cell->choices;
	const struct pattern *pattern = judging->setting->pattern;
	struct group all;
	if (code != ACI318 || !is_known(choices->group_spacing) || !pattern ||
	    engineer_stands(&choices->by_engineer))
		return;
	group_measure(pattern,
	              pattern->count < 64 ? ((uint64_t)1 << pattern->count) - 1 : ~(uint64_t)0, 0,
	              &all);
	if (choices->group_spacing.value > all.adjacent * (1 + 1e-9))
		finding_doubts(out,
		               "the spacing of the reduced embedment is larger than that of "
		               "neighbours and no engineer stands for it",
		               "leave choices: group_spacing out, or have an engineer stand for it "
		               "(choices: by_engineer)");
}

/* --- shear --- */

/* EN 1992-4 6.2.2.3 asks of a grout that it be as strong as the concrete; ACI 318-19 17.7.1.2.1
 * does not. And 7.2.2.3.1 looks at the concrete where the anchor is short. */
static void judge_gap(const struct judging *judging, const struct code_facts *f,
                      struct finding *out)
{
	bool en = f->code == EN1992_4, is_short = f->embedment > 0 && f->embedment < 5 * f->shaft;
	if (en || f->lever_arm == LEVER_UNKNOWN)
		stand_off_kind(judging, out);
	if (en && (is_short || f->lever_arm == GROUT_PAD))
		judge_concrete(judging, out);
}

/* Of thin threads less is left than the share of the shaft that stands in for the stressed area, of
 * thick ones more: it shows nothing. */
static void judge_area(const struct judging *judging, const struct code_facts *f,
                       enum code_mode mode, struct finding *out)
{
	const struct aci318_sheet *aci = &f->given->aci;
	const struct en1992_4_sheet *en = &f->given->en;
	const struct number *tested = mode == STEEL_TENSION
	                                      ? f->code == ACI318 ? &aci->steel_tension
	                                                          : &en->steel_tension
	                              : f->code == ACI318 ? &aci->steel_shear
	                                                  : &en->steel_shear;
	if (is_known(*tested) || is_known(judging->cell->anchors.product.tensile_area) ||
	    (mode == STEEL_SHEAR && is_known(f->given->shear_area)))
		return;
	finding_lacks(out, "anchors.product.tensile_area");
	out->never_fails = true;
}

static void judge_shear_shared(const struct judging *judging, struct finding *out)
{
	const struct anchor_load *load = judging->load;
	bool all_take_part = judge_base_holes(judging, out);
	if (judging->facts && judging->facts->torsion_on_one)
		finding_doubts(out, "a single anchor cannot resist twisting",
		               "two anchors or more");
	if (all_take_part || !load || !load->shear || !judging->arena)
		return;
	double most = 0;
	for (size_t i = 0; i < load->count; i++)
		most = fmax(most, load->shear[i]);
	size_t half = load->count > 1 ? load->count / 2 : 1;
	finding_notes(out, sentence(judging,
	                            "with half of the anchors taking the shear: about %s on the "
	                            "most loaded one",
	                            shown(judging, most * (double)load->count / (double)half,
	                                  DIM_FORCE)));
}

/* --- all of it --- */

/* Bars are a fact of the drawings, and no verdict rests on a guess of them: they are told. */
static void note_bars(const struct judging *judging, enum code_mode mode, struct finding *out)
{
	const struct reinforcement *r = &judging->cell->slab.reinforcement;
	bool ties = r->supplementary.value == YES && mode != PULLOUT && mode != BOND_SUSTAINED &&
	            mode != SPLITTING;
	bool edge = mode == EDGE && r->edge.value != EDGE_BARS_NONE;
	bool cracks = r->against_splitting.value == YES &&
	              (mode == CONE || mode == BOND || mode == SPLITTING || mode == PRYOUT);
	if (ties || edge || cracks)
		finding_notes(out, "bars in the slab are counted as stated under slab: "
		                   "reinforcement; they must stand on the drawings");
}

void judge_mode_evidence(const struct judging *judging, enum code code, enum code_mode mode,
                         struct finding *out)
{
	const char *path[MAX_MISSING];
	unsigned on = rests_on[mode];
	struct code_facts f;
	judged_facts(judging, code, &f);
	bool quake = mode != BOND_SUSTAINED && earthquake_stated(judging->cell);
	size_t count = code_missing(&f, mode, quake, path, MAX_MISSING);
	for (size_t i = 0; i < count; i++)
		finding_lacks(out, path[i]);
	if (judging->cell->anchors.count == 0)
		finding_lacks(out, "anchors.at");
	judge_sheet_evidence(judging, out);
	if (on & CONCRETE) {
		judge_concrete(judging, out);
		judge_cracks(judging, &f, out);
		note_bars(judging, mode, out);
	}
	if (on & TESTED || (mode == PRYOUT && f.type_known && f.type == ADHESIVE))
		judge_tested_concrete(judging, &f, out);
	if (on & NEAR_EDGES)
		judge_near_edges(judging, &f, mode, out);
	if (on & ANY_EDGE)
		judge_any_edge(judging, out);
	/* EN 1992-4 7.2.1.8 cuts the body of a blow-out at the lower face of the slab */
	if (on & THICKNESS || (mode == BLOWOUT && code == EN1992_4))
		judge_thickness_evidence(judging, out);
	if (on & GROUPED)
		judge_group_spacing(judging, code, out);
	if (on & SHEAR_SHARED)
		judge_shear_shared(judging, out);
	if (mode == STEEL_TENSION || mode == STEEL_SHEAR)
		judge_area(judging, &f, mode, out);
	if (mode == STEEL_SHEAR)
		judge_gap(judging, &f, out);
}
