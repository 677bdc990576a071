/* Pry-out, EN 1992-4 7.2.2.4. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>

static double k8(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->en.pryout_factor;
	const struct word *tied = &f->cell->slab.reinforcement.supplementary;
	double h = en_embedment(f, trace);
	double k = is_known(*given)
		? trace_input(trace, "k_8", given, DIM_FACTOR, "pry-out")
		: trace_step(trace, "k_8", "", h < EN_K8_DEPTH ? EN_K8_SHALLOW : EN_K8_DEEP,
	                     DIM_FACTOR, "EN 1992-4 7.2.2.4", "1 below 60 mm embedment, else 2");
	bool less = is_known(*tied) && tied->value == YES;
	return trace_step(trace, "k_cp", less ? "0.75 * k_8" : "k_8", less ? EN_PRYOUT_TIED * k : k,
	                  DIM_FACTOR, "EN 1992-4 7.2.2.4",
	                  less ? "with supplementary reinforcement"
	                       : "no supplementary reinforcement");
}

/* (7.39); step V_Rk_cp. Fills out as the mode that gives it. */
static double characteristic(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                             bool cracked, bool earthquake, struct group_strength *out,
                             struct trace *trace)
{
	double k = k8(f, trace), cone = en_cone_characteristic(f, p, anchors, cracked, out, trace);
	if (!(f->type_known && f->type == ADHESIVE))
		return trace_step(trace, "V_Rk_cp", "k_cp * N_Rk_c", k * cone, DIM_FORCE,
		                  "EN 1992-4 (7.39)", "pry-out");
	struct group_strength bonded;
	double bond = en_bond_characteristic(f, p, anchors, cracked, earthquake, &bonded, trace);
	/* the shorter lever of the two: eccentricity counts more, safe side */
	double lever = fmin(out->lever, bonded.lever);
	if (bond < cone)
		*out = bonded;
	out->lever = lever;
	return trace_step(trace, "V_Rk_cp", "k_cp * min(N_Rk_c, N_Rk_p)", k * fmin(cone, bond),
	                  DIM_FORCE, "EN 1992-4 (7.39)", "pry-out, bonded");
}

void en_pryout(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
               bool earthquake, struct group_strength *out, struct trace *trace)
{
	bool apart = !f->cracked || (f->type_known && f->type == ADHESIVE);
	double resting = characteristic(f, p, anchors, f->cracked, false, out,
	                                apart && earthquake ? NULL : trace);
	struct group_strength shaken = *out;
	double shaking = apart ? characteristic(f, p, anchors, true, true, &shaken,
	                                        earthquake ? trace : NULL)
	                       : resting;
	/* one lever serves both: the shorter */
	out->lever = fmin(out->lever, shaken.lever);
	double gamma = en_gamma_mc(f, false, trace);
	struct trace *shown = earthquake ? trace : NULL;
	double gap = en_alpha_gap(f, shown), alpha = en_alpha_eq(f, PRYOUT, out->count, shown);
	out->design = resting / gamma;
	out->seismic = gap * alpha * shaking / gamma;
	if (earthquake)
		trace_step(trace, "V_Rd_cp_eq", "alpha_gap * alpha_eq * V_Rk_cp / gamma_Mc",
		           out->seismic, DIM_FORCE, "EN 1992-4 (C.8)",
		           "design strength in an earthquake");
	else
		trace_step(trace, "V_Rd_cp", "V_Rk_cp / gamma_Mc", out->design, DIM_FORCE,
		           "EN 1992-4 Table 4.1", "design strength");
}
