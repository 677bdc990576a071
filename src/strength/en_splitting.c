/* Splitting under load, EN 1992-4 7.2.1.7. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>

/* Bars hold the cracks and cone and pull-out count on cracked concrete, 7.2.1.7(2) b. */
static bool held_by_bars(const struct code_facts *f, bool cracked)
{
	const struct word *bars = &f->cell->slab.reinforcement.against_splitting;
	return cracked && is_known(*bars) && bars->value == YES;
}

/* 7.2.1.7(2): steps that say why no check is needed; false: it is. */
static bool no_check(const struct code_facts *f, const struct group *group, double critical,
                     bool cracked, struct trace *trace)
{
	double needed = (group->count > 1 ? EN_SPLITTING_GROUP : 1) * critical;
	if (held_by_bars(f, cracked)) {
		trace_step(trace, "w_k", "", 0.3, DIM_LENGTH, "EN 1992-4 7.2.1.7(2)",
		           "bars hold splitting cracks to this width: no check");
		return true;
	}
	if (!(group->least_edge >= needed &&
	      f->thickness >= f->cell->anchors.product.least_slab.value))
		return false;
	trace_step(trace, "c_needed", group->count > 1 ? "1.2 * c_cr_sp" : "c_cr_sp", needed,
	           DIM_LENGTH, "EN 1992-4 7.2.1.7(2)",
	           "every edge is at least so far, the slab at least h_min thick: no check");
	return true;
}

/* psi_h,sp: growth with the slab. Two limits are told, CEN/TS (2 hef/hmin)^(2/3) and EN 2018
 * max{1; ((hef + 1.5 c1)/hmin)^(2/3)} <= 2; the lower is taken (S28). */
static double thickness_factor(const struct code_facts *f, double c, double depth,
                               struct trace *trace)
{
	const struct number *least = &f->cell->anchors.product.least_slab;
	static const double power = 2.0 / 3;
	double thickness = trace_step(trace, "h", "", f->thickness, DIM_LENGTH, "slab",
	                              "thickness");
	double needed = trace_input(trace, "h_min", least, DIM_LENGTH, "least slab");
	double grown = pow(thickness / needed, power);
	double old = fmax(1, pow(2 * depth / needed, power));
	/* far edges do not limit: (hef + 1.5 c1)/hmin is then above what 2 allows */
	if (!(c < HUGE_VAL))
		return trace_step(trace, "psi_h_sp",
		                  "min((h / h_min) ^ (2 / 3), max(1, (2 * h_ef / h_min) ^ (2 / 3)), 2)",
		                  fmin(fmin(grown, old), EN_SPLITTING_MOST), DIM_FACTOR,
		                  "EN 1992-4 7.2.1.7; S28", "thickness");
	double by_edge = fmax(1, pow((depth + 1.5 * c) / needed, power));
	trace_step(trace, "c_1", "", c, DIM_LENGTH, "", "nearest edge or joint");
	trace_step(trace, "psi_limit", "max(1, ((h_ef + 1.5 * c_1) / h_min) ^ (2 / 3))", by_edge,
	           DIM_FACTOR, "EN 1992-4 7.2.1.7", "");
	return trace_step(trace, "psi_h_sp",
	                  "min((h / h_min) ^ (2 / 3), max(1, (2 * h_ef / h_min) ^ (2 / 3)), psi_limit, 2)",
	                  fmin(fmin(fmin(grown, old), by_edge), EN_SPLITTING_MOST), DIM_FACTOR,
	                  "EN 1992-4 7.2.1.7; S28", "thickness");
}

/* The sheet's value, never above it in an earthquake; else the lower of cone and pull-out. */
static double splitting_single(const struct code_facts *f, bool cracked, bool earthquake,
                               struct trace *trace)
{
	const struct number *given = &f->given->en.splitting;
	bool bonded = f->type_known && f->type == ADHESIVE, stated = is_known(*given);
	double by_sheet = HUGE_VAL;
	if (stated) {
		double whole = trace_input(trace, "N_sp", given, DIM_FORCE,
		                           "N0_Rk,sp of the sheet");
		double factor = en_by_concrete(f, trace);
		by_sheet = trace_step(trace, earthquake ? "N0_sp" : "N0_Rk_sp", "N_sp * psi_f",
		                      whole * factor, DIM_FORCE, "EN 1992-4 7.2.1.7; S23", "");
		if (!earthquake)
			return by_sheet;
	}
	double cone = en_cone_single(f, cracked, en_embedment(f, trace), "h_ef", trace);
	double pulled = bonded ? en_bond_single(f, cracked, earthquake, trace)
	                       : en_pullout_characteristic(f, cracked, earthquake, trace);
	const char *pulled_is = bonded ? "N0_Rk_p" : "N_Rk_p";
	const char *from = !(pulled < HUGE_VAL) ? stated ? "min(N0_Rk_c, N0_sp)" : "N0_Rk_c"
		: trace_text(trace, stated ? "min(N0_Rk_c, %s, N0_sp)" : "min(N0_Rk_c, %s)",
		             pulled_is);
	return trace_step(trace, "N0_Rk_sp", from, fmin(fmin(cone, pulled), by_sheet), DIM_FORCE,
	                  "EN 1992-4 7.2.1.7; S29", "splitting of one anchor far from edges");
}

static double splitting_characteristic(const struct code_facts *f, const struct pattern *p,
                                       uint64_t anchors, bool cracked, bool earthquake,
                                       struct group_strength *out, struct trace *trace)
{
	double reach = f->given->en.splitting_edge.value, spacing = 2 * reach;
	struct group group;
	group_measure(p, anchors, reach, &group);
	*out = (struct group_strength){.anchors = anchors, .count = group.count,
	                               .centre = group.centre, .lever = HUGE_VAL};
	if (is_known(f->given->en.splitting_edge))
		trace_input(trace, "c_cr_sp", &f->given->en.splitting_edge, DIM_LENGTH,
		            "critical edge distance against splitting");
	if (no_check(f, &group, reach, cracked, trace))
		return HUGE_VAL;
	out->lever = reach;
	trace_step(trace, "s_cr_sp", "2 * c_cr_sp", spacing, DIM_LENGTH, "EN 1992-4 7.2.1.7", "");
	double single = splitting_single(f, cracked, earthquake, trace);
	double whole = trace_step(trace, "A0_c_N", "s_cr_sp * s_cr_sp", spacing * spacing, DIM_AREA,
	                          "EN 1992-4 (7.3)", "with s_cr,sp");
	double area = group_area(p, anchors, reach, "A_c_N", "EN 1992-4 7.2.1.4(3); S2", trace);
	double edge = en_edge_factor(group.least_edge, reach, "psi_s_N", "c_cr_sp",
	                             "EN 1992-4 (7.4)", trace);
	double depth = en_embedment(f, trace);
	double spalling = en_spalling_factor(f, depth, "h_ef", trace);
	double thickness = thickness_factor(f, group.least_edge, depth, trace);
	return trace_step(trace, "N_Rk_sp",
	                  "N0_Rk_sp * A_c_N / A0_c_N * psi_s_N * psi_re_N * psi_h_sp",
	                  single * area / whole * edge * spalling * thickness, DIM_FORCE,
	                  "EN 1992-4 7.2.1.7", "the eccentricity is counted with the load");
}

void en_splitting(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                  bool earthquake, struct group_strength *out, struct trace *trace)
{
	struct group_strength quiet;
	double resting = splitting_characteristic(f, p, anchors, f->cracked, false, &quiet,
	                                          earthquake ? NULL : trace);
	double shaking = splitting_characteristic(f, p, anchors, true, true, out,
	                                          earthquake ? trace : NULL);
	/* where one of the two needs no check the other one's lever counts for both: safe side */
	if (quiet.lever < out->lever)
		out->lever = quiet.lever;
	en_finish(f, SPLITTING, resting, shaking, "N_Rd_sp", "N_Rk_sp", earthquake, out, trace);
}
