/* Bond of adhesive anchors, ACI 318-19 17.6.5, and under lasting tension, 17.5.2.2. */
#include "aci_parts.h"
#include "aci_values.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* tau of the state; the seismic factor is on that of cracked concrete */
static double stress(const struct code_facts *f, bool cracked, bool earthquake,
                     struct trace *trace)
{
	const struct by_state *bond = &f->given->aci.bond;
	if (!cracked && !earthquake)
		return trace_input(trace, "tau", &bond->uncracked, DIM_STRESS,
		                   "bond stress in uncracked concrete");
	if (!earthquake)
		return trace_input(trace, "tau", &bond->cracked, DIM_STRESS,
		                   "bond stress in cracked concrete");
	double still = trace_input(trace, "tau_cr", &bond->cracked, DIM_STRESS,
	                           "bond stress in cracked concrete");
	double factor = trace_input(trace, "alpha_N_seis", &bond->seismic, DIM_FACTOR,
	                            "factor on it in earthquakes");
	return trace_step(trace, "tau", "alpha_N_seis * tau_cr", factor * still, DIM_STRESS,
	                  "ACI 318-19 17.6.5.2", "bond stress in earthquakes");
}

static double lightweight(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->cell->slab.concrete.lightweight;
	double lambda = is_known(*given) ? given->value : 1;
	return trace_step(trace, "lambda_b", "", lambda < 1 ? ACI_LIGHT_BOND * lambda : 1,
	                  DIM_FACTOR, "ACI 318-19 Table 17.2.4.1; S16",
	                  lambda < 1 ? "bond in lightweight concrete" : "normal-weight concrete");
}

double aci_nominal_bond_single(const struct code_facts *f, bool cracked, bool earthquake,
                               struct trace *trace)
{
	double tau = stress(f, cracked, earthquake, trace), lambda = lightweight(f, trace);
	double d = aci_shaft(f, trace), h = aci_embedment(f, trace);
	return trace_step(trace, "N_ba", "lambda_b * tau * 3.14159265358979323846 * d_a * h_ef",
	                  lambda * tau * pi * d * h, DIM_FORCE, "ACI 318-19 17.6.5.2.1",
	                  "bond of one anchor far from edges");
}

static double reach(const struct code_facts *f, struct trace *trace)
{
	double d = aci_shaft(f, trace);
	double tau = trace_input(trace, "tau_uncr", &f->given->aci.bond.uncracked, DIM_STRESS,
	                         "bond stress in uncracked concrete");
	return trace_step(trace, "c_Na", "10 * d_a * sqrt(tau_uncr / 7.6)",
	                  ACI_BOND_REACH * d * sqrt(tau / ACI_BOND_STRESS), DIM_LENGTH,
	                  "ACI 318-19 17.6.5.1.2", "reach of one anchor");
}

double aci_nominal_bond(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                        bool cracked, bool earthquake, struct group_strength *out,
                        struct trace *trace)
{
	double single = aci_nominal_bond_single(f, cracked, earthquake, trace);
	double c = reach(f, trace);
	struct group group;
	group_measure(p, anchors, c, &group);
	double whole = trace_step(trace, "A_Nao", "(2 * c_Na) * (2 * c_Na)", (2 * c) * (2 * c),
	                          DIM_AREA, "ACI 318-19 17.6.5.1.2", "area of one anchor");
	double area = group_area(p, anchors, c, "A_Na", "ACI 318-19 17.6.5.1.1; S2", trace);
	double edge = aci_edge_factor(group.least_edge, c, "psi_ed_Na", "c_Na",
	                              "ACI 318-19 17.6.5.4.1", trace);
	double splitting = aci_splitting_factor(f, cracked, group.least_edge, c, "psi_cp_Na",
	                                        "c_Na", "ACI 318-19 17.6.5.5.1", trace);
	*out = (struct group_strength){.anchors = anchors, .count = group.count,
	                               .centre = group.centre, .lever = c};
	return trace_step(trace, "N_ag", "A_Na / A_Nao * psi_ed_Na * psi_cp_Na * N_ba",
	                  area / whole * edge * splitting * single, DIM_FORCE,
	                  "ACI 318-19 17.6.5.1",
	                  "bond; the eccentricity (17.6.5.3) is counted with the load");
}

void aci_bond(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
              bool earthquake, struct group_strength *out, struct trace *trace)
{
	/* alpha_N,seis is asked for only where there are earthquakes: else its strength is 0 */
	double shaking = aci_nominal_bond(f, p, anchors, true, true, out,
	                                  earthquake ? trace : NULL);
	double resting = aci_nominal_bond(f, p, anchors, f->cracked, false, out,
	                                  earthquake ? NULL : trace);
	double phi = aci_phi_concrete(f, true, trace);
	out->design = aci_design(phi, resting, false, "phi_N_ag", "N_ag",
	                         earthquake ? NULL : trace);
	out->seismic = aci_design(phi, shaking, true, "phi_N_ag", "N_ag",
	                          earthquake ? trace : NULL);
}

double aci_bond_sustained(const struct code_facts *f, struct trace *trace)
{
	double single = aci_nominal_bond_single(f, f->cracked, false, trace);
	double phi = aci_phi_concrete(f, true, trace);
	return trace_step(trace, "phi_N_ba_s", "0.55 * phi * N_ba", ACI_SUSTAINED * phi * single,
	                  DIM_FORCE, "ACI 318-19 17.5.2.2",
	                  "design strength under lasting tension");
}
