/* Pryout, ACI 318-19 17.7.3; which anchors act as a group, 17.5.1.3; tension with shear, 17.8. */
#include "aci_parts.h"
#include "aci_values.h"

#include <math.h>

static double pry_factor(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->aci.pryout_factor;
	if (is_known(*given))
		return trace_input(trace, "k_cp", given, DIM_FACTOR, "pryout against breakout");
	double h = aci_embedment(f, trace);
	bool deep = h >= ACI_KCP_DEPTH;
	return trace_step(trace, "k_cp", "", deep ? ACI_KCP_DEEP : ACI_KCP_SHALLOW, DIM_FACTOR,
	                  "ACI 318-19 17.7.3.1", deep ? "65 mm deep or more" : "less than 65 mm deep");
}

/* Ncpg: breakout, of an adhesive anchor the lower of breakout and bond (S10). */
static double pried(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                    bool cracked, bool earthquake, struct group_strength *out,
                    struct trace *trace)
{
	double cone = aci_nominal_cone(f, p, anchors, cracked, out, trace);
	if (f->type != ADHESIVE)
		return trace_step(trace, "N_cpg", "N_cbg", cone, DIM_FORCE, "ACI 318-19 17.7.3.1",
		                  "breakout of all anchors of the group");
	struct group_strength by_bond;
	double bond = aci_nominal_bond(f, p, anchors, cracked, earthquake, &by_bond, trace);
	/* each of the two has a lever of its own: the shorter one with the lower strength is never
	 * above either */
	out->lever = fmin(out->lever, by_bond.lever);
	return trace_step(trace, "N_cpg", "min(N_cbg, N_ag)", fmin(cone, bond), DIM_FORCE,
	                  "ACI 318-19 17.7.3.1; S10", "lower of breakout and bond");
}

/* No 0.75 in shear, 17.10.6; the concrete counts as cracked, S14. */
void aci_pryout(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                bool earthquake, struct group_strength *out, struct trace *trace)
{
	struct trace *at_rest = earthquake ? NULL : trace, *in_quake = earthquake ? trace : NULL;
	double shaking = pried(f, p, anchors, true, true, out, in_quake);
	double resting = pried(f, p, anchors, f->cracked, false, out, at_rest);
	double k = pry_factor(f, trace);
	double phi = trace_step(trace, "phi", "", ACI_PHI_PRYOUT, DIM_FACTOR,
	                        "ACI 318-19 Table 17.5.3", "pryout");
	out->design = trace_step(at_rest, "phi_V_cpg", "phi * k_cp * N_cpg", phi * k * resting,
	                         DIM_FORCE, "ACI 318-19 17.7.3.1", "design strength");
	out->seismic = trace_step(in_quake, "phi_V_cpg_eq", "phi * k_cp * N_cpg",
	                          phi * k * shaking, DIM_FORCE, "ACI 318-19 17.7.3.1; S14, S15",
	                          "design strength in an earthquake");
}

double aci_group_limit(const struct code_facts *f, enum code_mode mode)
{
	double tau = f->given->aci.bond.uncracked.value;
	if (mode == BOND)
		return 2 * ACI_BOND_REACH * f->shaft * sqrt(tau / ACI_BOND_STRESS);
	return mode == CONE || mode == PRYOUT ? 2 * ACI_REACH * f->embedment : 0;
}

/* 17.8.1 to .3 ask for no more than one part up to 0.2 of the other; the ratio here has the same
 * limit at 1 and rises without a jump. */
double aci_interaction(enum code_interaction kind, double tension, double shear)
{
	if (kind == CODE_FIVE_THIRDS)        /* R17.8 */
		return pow(pow(tension, 5.0 / 3) + pow(shear, 5.0 / 3), 3.0 / 5);
	return fmax((tension + shear) / ACI_TOGETHER, fmax(tension, shear));
}
