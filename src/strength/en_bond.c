/* Combined pull-out and cone of bonded anchors, EN 1992-4 7.2.1.6. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* Share that lasting tension leaves, (7.14). Where some anchor is under lasting tension
 * all of it counts as lasting (alpha_sus = 1; S26). */
static double sustained_factor(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->en.sustained_factor;
	if (!f->sustained_tension)
		return trace_step(trace, "psi_sus", "", 1, DIM_FACTOR, "EN 1992-4 (7.14)",
		                  "no anchor is under lasting tension");
	double least = is_known(*given)
	                       ? trace_input(trace, "psi0_sus", given, DIM_FACTOR,
	                                     "share left under lasting tension")
	                       : trace_step(trace, "psi0_sus", "", EN_SUSTAINED, DIM_FACTOR,
	                                    "EN 1992-4 (7.14)", "where the sheet is silent");
	double share = trace_step(trace, "alpha_sus", "", 1, DIM_FACTOR, "S26",
	                          "all tension counts as lasting");
	return trace_step(trace, "psi_sus", "psi0_sus + (1 - alpha_sus)", least + (1 - share),
	                  DIM_FACTOR, "EN 1992-4 (7.14)", "");
}

/* tau_Rk in this state of the concrete */
static double bond_stress(const struct code_facts *f, bool cracked, bool earthquake,
                          const char *symbol, struct trace *trace)
{
	const struct by_state *bond = &f->given->en.bond;
	const struct number *given = earthquake ? &bond->seismic
		: cracked ? &bond->cracked : &bond->uncracked;
	double stated = trace_input(trace, trace_text(trace, "%s_sheet", symbol), given, DIM_STRESS,
	                            earthquake ? "bond stress of the seismic category"
	                            : cracked ? "bond stress, cracked concrete"
	                                      : "bond stress, uncracked concrete");
	double factor = en_by_concrete(f, trace);
	return trace_step(trace, symbol, trace_text(trace, "%s_sheet * psi_f", symbol),
	                  stated * factor, DIM_STRESS, "S23", "");
}

double en_bond_single(const struct code_facts *f, bool cracked, bool earthquake,
                      struct trace *trace)
{
	double d = en_shaft(f, trace), h = en_embedment(f, trace);
	double sustained = sustained_factor(f, trace);
	double tau = bond_stress(f, cracked, earthquake, "tau_Rk", trace);
	return trace_step(trace, "N0_Rk_p", "psi_sus * tau_Rk * 3.14159265358979323846 * d * h_ef",
	                  sustained * tau * pi * d * h, DIM_FORCE, "EN 1992-4 (7.14)",
	                  "bond of one anchor far from edges");
}

/* scr,Np [mm], of the bond stress in uncracked C20/25 */
static double critical_spacing(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->en.bond.uncracked;
	double d = en_shaft(f, trace), h = en_embedment(f, trace);
	double sustained = sustained_factor(f, trace), at = f->given->at_concrete.value;
	double stated = trace_input(trace, "tau_ucr_sheet", given, DIM_STRESS,
	                            "bond stress, uncracked concrete");
	code_input(trace, "f_at", &f->given->at_concrete, at, DIM_STRESS,
	         "concrete strength that the sheet's values are stated for");
	/* stated for more than C20/25: the larger value errs to the safe side here */
	double tau = trace_step(trace, "tau_ucr", "tau_ucr_sheet * max(1, 20 / f_at)",
	                        stated * fmax(1, EN_C20 / at), DIM_STRESS, "EN 1992-4 (7.15)",
	                        "bond stress in uncracked C20/25");
	return trace_step(trace, "s_cr_Np", "min(7.3 * d * sqrt(psi_sus * tau_ucr), 3 * h_ef)",
	                  fmin(EN_BOND_REACH * d * sqrt(sustained * tau), EN_BOND_REACH_MOST * h),
	                  DIM_LENGTH, "EN 1992-4 (7.15)", "critical spacing");
}

/* (7.17) to (7.19). The bond stress of rest counts in an earthquake too: the higher one gives the
 * lower factor. Spacing: the largest of neighbours (S27). */
static double group_factor(const struct code_facts *f, const struct group *group, bool cracked,
                           double critical, struct trace *trace)
{
	if (group->count < 2)
		return trace_step(trace, "psi_g_Np", "", 1, DIM_FACTOR, "EN 1992-4 (7.17)",
		                  "one anchor");
	double n = trace_step(trace, "n", "", (double)group->count, DIM_COUNT, "", "anchors");
	double s = trace_step(trace, "s", "", group->adjacent, DIM_LENGTH, "S27",
	                      "largest spacing of neighbours");
	double d = en_shaft(f, trace), h = en_embedment(f, trace), fck = en_fck(f, trace);
	double k = trace_step(trace, "k_3", "", cracked ? EN_K3_CRACKED : EN_K3_UNCRACKED,
	                      DIM_FACTOR, "EN 1992-4 (7.19)", "");
	double tau = bond_stress(f, cracked, false, "tau_g", trace);
	double limit = trace_step(trace, "tau_Rk_c",
	                          "k_3 / (3.14159265358979323846 * d) * sqrt(h_ef * f_ck)",
	                          k / (pi * d) * sqrt(h * fck), DIM_STRESS, "EN 1992-4 (7.19)",
	                          "bond stress at which the cone governs");
	double far = trace_step(trace, "psi0_g_Np",
	                        "max(1, sqrt(n) - (sqrt(n) - 1) * (tau_g / tau_Rk_c) ^ 1.5)",
	                        fmax(1, sqrt(n) - (sqrt(n) - 1) * pow(tau / limit, 1.5)),
	                        DIM_FACTOR, "EN 1992-4 (7.18)", "");
	return trace_step(trace, "psi_g_Np",
	                  "max(1, psi0_g_Np - sqrt(s / s_cr_Np) * (psi0_g_Np - 1))",
	                  fmax(1, far - sqrt(s / critical) * (far - 1)), DIM_FACTOR,
	                  "EN 1992-4 (7.17); S27", "group");
}

double en_bond_characteristic(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                              bool cracked, bool earthquake, struct group_strength *out,
                              struct trace *trace)
{
	double single = en_bond_single(f, cracked, earthquake, trace);
	double spacing = critical_spacing(f, trace);
	double reach = trace_step(trace, "c_cr_Np", "s_cr_Np / 2", spacing / 2, DIM_LENGTH,
	                          "EN 1992-4 (7.16)", "critical edge distance");
	struct group group;
	group_measure(p, anchors, reach, &group);
	double whole = trace_step(trace, "A0_p_N", "s_cr_Np * s_cr_Np", spacing * spacing, DIM_AREA,
	                          "EN 1992-4 7.2.1.6(3)", "");
	double area = group_area(p, anchors, reach, "A_p_N", "EN 1992-4 7.2.1.6(3); S2", trace);
	double together = group_factor(f, &group, cracked, spacing, trace);
	double edge = en_edge_factor(group.least_edge, reach, "psi_s_Np", "c_cr_Np",
	                             "EN 1992-4 (7.20)", trace);
	double spalling = en_spalling_factor(f, f->embedment, "h_ef", trace);
	*out = (struct group_strength){.anchors = anchors, .count = group.count,
	                               .centre = group.centre, .lever = reach};
	return trace_step(
		trace, "N_Rk_p", "N0_Rk_p * A_p_N / A0_p_N * psi_g_Np * psi_s_Np * psi_re_N",
		single * area / whole * together * edge * spalling, DIM_FORCE, "EN 1992-4 (7.13)",
		"pull-out and cone; the eccentricity (7.21) is counted with the load");
}

double en_bond_spacing(const struct code_facts *f) { return critical_spacing(f, NULL); }

void en_bond(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
             bool earthquake, struct group_strength *out, struct trace *trace)
{
	double resting = en_bond_characteristic(f, p, anchors, f->cracked, false, out,
	                                        earthquake ? NULL : trace);
	double shaking = en_bond_characteristic(f, p, anchors, true, true, out,
	                                        earthquake ? trace : NULL);
	en_finish(f, BOND, resting, shaking, "N_Rd_p", "N_Rk_p", earthquake, out, trace);
}
