/* Numbers of the codes' modes: on the fast path from what the sweep has computed, else computed
 * again with their written calculation, the same bits. */
#include "code_judging.h"
#include "judging.h"

#include <math.h>

/* Whether the mode can be computed for this load. */
static bool is_ready(const struct code_strength *s, enum code_mode mode,
                     const struct anchor_load *load)
{
	return load->earthquake ? s->ready_seismic[mode] : s->ready[mode];
}

double mode_ratio_of(const struct judging *judging, enum code code, enum code_mode mode)
{
	const struct code_strength *s = judging->setting->code[code];
	double ratio = judging->ratios->mode[mode].ratio;
	return ratio < 0 && is_ready(s, mode, judging->load) ? 0 : ratio;
}

bool mode_is_in(enum code code, bool steel, enum code_mode mode)
{
	if (mode == BOND_SUSTAINED)
		return false;        /* of other loads: what always acts */
	return code == ACI318 || steel == (mode == STEEL_TENSION || mode == STEEL_SHEAR);
}

/* Whether every mode of the pair that applies can be computed. */
static bool all_ready(const struct judging *judging, enum code code, bool steel)
{
	const struct code_strength *s = judging->setting->code[code];
	for (int mode = 0; mode < CODE_MODES; mode++)
		if (mode_is_in(code, steel, (enum code_mode)mode) &&
		    !code_left_out(judging->cell, code, (enum code_mode)mode) &&
		    !is_ready(s, (enum code_mode)mode, judging->load))
			return false;
	return true;
}

double together_ratio_of(const struct judging *judging, enum code code, bool steel)
{
	const struct code_ratios *r = judging->ratios;
	double ratio = steel ? r->together_steel.ratio : r->together.ratio;
	return ratio < 0 && all_ready(judging, code, steel) ? 0 : ratio;
}

/* A ratio as the force and the strength that it is of, where they give its very bits. */
static void take_numbers(const struct mode_ratio *r, const char *said, const char *remedy,
                         struct finding *out)
{
	bool forces = r->capacity > 0 && !(r->demand / r->capacity < r->ratio) &&
	              !(r->demand / r->capacity > r->ratio);
	out->anchors = r->anchors;
	out->edge = r->edge;
	if (forces)
		finding_numbers(out, r->demand, r->capacity, DIM_FORCE, said, remedy);
	else
		finding_numbers(out, r->ratio, 1, DIM_FACTOR, said, remedy);
}

/* A mode that cannot happen in this state: nothing uses its strength. */
static void take_nothing(const struct judging *judging, enum code code, enum code_mode mode,
                         struct finding *out)
{
	finding_numbers(out, 0, 1, DIM_FACTOR,
	                sentence(judging,
	                         "%s does not occur here: no anchor is loaded so, no edge is near "
	                         "enough, or the code asks for no check (%s)",
	                         mode_title(code, mode), mode_clause(code, mode)),
	                NULL);
	trace_step(judging->trace, "ratio", "", 0, DIM_FACTOR, mode_clause(code, mode),
	           "does not occur here");
}

/* Where the edges are not known, one at the measured clear distance is computed. */
static void doubt_clear_edge(const struct judging *judging, const struct mode_ratio *r,
                             struct finding *out)
{
	const struct setting *setting = judging->setting;
	if (setting->edges_known || !(setting->clear > 0) || !(r->ratio > 1))
		return;
	finding_doubts(out,
	               sentence(judging,
	                        "an edge as near as the measured clear distance of %s would break "
	                        "out: %s needed, %s there",
	                        shown(judging, setting->clear, DIM_LENGTH),
	                        shown(judging, r->demand, DIM_FORCE),
	                        shown(judging, r->capacity, DIM_FORCE)),
	               "measure farther, or give slab: outline and joints");
}

void judge_mode(const struct judging *judging, enum code code, enum code_mode mode,
                struct finding *out)
{
	struct code_strength *s = judging->setting->code[code];
	struct mode_ratio r;
	judge_mode_evidence(judging, code, mode, out);
	if (!s || !judging->load || !is_ready(s, mode, judging->load))
		return;
	code_trace_mode(s, mode, judging->load, &r, judging->trace);
	/* an infinite strength, or none: nothing that could fail so */
	if (r.ratio < 0 || (r.ratio <= 0 && !(r.capacity > 0 && isfinite(r.capacity)))) {
		take_nothing(judging, code, mode, out);
		return;
	}
	take_numbers(&r, mode_said(judging, code, mode, &r),
	             r.ratio > 1 ? mode_remedy(judging, code, mode, &r) : NULL, out);
	const char *lever = mode == STEEL_SHEAR ? lever_said(judging, code) : NULL;
	if (lever)
		finding_notes(out, lever);
	if (mode == EDGE)
		doubt_clear_edge(judging, &r, out);
}

/* --- tension and shear together --- */

/* The most used mode of tension, or of shear; CODE_MODES: none. */
static enum code_mode most_used(enum code code, bool steel, bool shear,
                                const struct code_ratios *all)
{
	enum code_mode best = CODE_MODES;
	int from = shear ? FIRST_SHEAR_MODE : 0, to = shear ? CODE_MODES : FIRST_SHEAR_MODE;
	for (int mode = from; mode < to; mode++)
		if (mode_is_in(code, steel, (enum code_mode)mode) && all->mode[mode].ratio >= 0 &&
		    (best == CODE_MODES || all->mode[mode].ratio > all->mode[best].ratio))
			best = (enum code_mode)mode;
	return best;
}

/* Which pair it is, and whether its two halves belong to one heading. */
static const char *pair_said(const struct judging *judging, enum code code, bool steel,
                             const struct mode_ratio *r)
{
	struct code_ratios all;
	code_ratios(judging->setting->code[code], judging->load, &all);
	enum code_mode n = most_used(code, steel, false, &all),
		       v = most_used(code, steel, true, &all);
	bool paired = judging->state && judging->state->load_case->paired;
	const char *when = paired ? "both of one heading"
	                          : "the shear at its largest over all headings (a bound)";
	if (steel)
		return sentence(judging,
		                "%s, tension and shear of the steel together: %s of what is "
		                "allowed; %s; %s",
		                anchors_named(judging, r->anchors), percent(judging, r->ratio),
		                when, code == ACI318 ? "ACI 318-19 17.8" : "EN 1992-4 7.2.3");
	return sentence(judging,
	                "tension (%s, %s used) and shear (%s, %s used) together: %s of what is "
	                "allowed by %s; %s",
	                n < CODE_MODES ? mode_title(code, n) : "none",
	                percent(judging, n < CODE_MODES ? all.mode[n].ratio : 0),
	                v < CODE_MODES ? mode_title(code, v) : "none",
	                percent(judging, v < CODE_MODES ? all.mode[v].ratio : 0),
	                percent(judging, r->ratio),
	                code == ACI318 ? "ACI 318-19 17.8" : "EN 1992-4 7.2.3", when);
}

/* Less of the larger half helps most. */
static const char *pair_remedy(const struct judging *judging, enum code code, bool steel)
{
	struct code_ratios all;
	code_ratios(judging->setting->code[code], judging->load, &all);
	enum code_mode n = most_used(code, steel, false, &all),
		       v = most_used(code, steel, true, &all);
	if (n == CODE_MODES && v == CODE_MODES)
		return NULL;
	bool shear = n == CODE_MODES || (v < CODE_MODES && all.mode[v].ratio > all.mode[n].ratio);
	enum code_mode mode = shear ? v : n;
	const struct mode_ratio *r = &all.mode[mode];
	if (r->ratio > 1)
		return mode_remedy(judging, code, mode, r);
	return sentence(judging, "more strength in %s, the larger half (%s used), or less load",
	                mode_title(code, mode), percent(judging, r->ratio));
}

void judge_together(const struct judging *judging, enum code code, bool steel, struct finding *out)
{
	struct code_strength *s = judging->setting->code[code];
	struct mode_ratio r;
	for (int mode = 0; mode < CODE_MODES; mode++)
		if (mode_is_in(code, steel, (enum code_mode)mode) &&
		    !code_left_out(judging->cell, code, (enum code_mode)mode))
			judge_mode_evidence(judging, code, (enum code_mode)mode, out);
	if (!s || !judging->load)
		return;
	code_trace_together(s, steel, judging->load, &r, judging->trace);
	if (r.ratio < 0) {
		if (all_ready(judging, code, steel))
			finding_numbers(out, 0, 1, DIM_FACTOR,
			                "neither tension nor shear is on any anchor", NULL);
		return;
	}
	out->anchors = r.anchors;
	out->edge = r.edge;
	finding_numbers(out, r.ratio, 1, DIM_FACTOR, pair_said(judging, code, steel, &r),
	                r.ratio > 1 ? pair_remedy(judging, code, steel) : NULL);
	doubt_clear_edge(judging, &r, out);
}
