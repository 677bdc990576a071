/* Concrete breakout in tension, ACI 318-19 17.6.2. */
#include "aci_parts.h"
#include "aci_values.h"

#include <math.h>

/* the embedment that counts, and 1.5 times it, as the trace names them */
struct depth { double h, reach; const char *is, *reach_is; };

/* Largest spacing for the reduced embedment: the user's, else of neighbours (S3). */
static double largest_spacing(const struct code_facts *f, const struct group *group,
                              struct trace *trace)
{
	const struct number *given = &f->cell->choices.group_spacing;
	if (is_known(*given))
		return trace_input(trace, "s_max", given, DIM_LENGTH, "choices.group_spacing");
	return trace_step(trace, "s_max", "", group->adjacent, DIM_LENGTH, "S3",
	                  "largest spacing of neighbours");
}

/* Near three or more edges a shallower anchor would carry as much, 17.6.2.1.2. */
static struct depth counted_depth(const struct code_facts *f, const struct group *group,
                                  struct trace *trace)
{
	double h = aci_embedment(f, trace), reach = ACI_REACH * h;
	struct depth whole = {h, reach, "h_ef", "1.5 * h_ef"};
	if (group->near_edges < ACI_NARROW_EDGES || !(group->most_edge > 0))
		return whole;
	double edge = trace_step(trace, "c_a_max", "", fmin(group->most_edge, reach), DIM_LENGTH,
	                         "", "farthest of the edges within 1.5 h_ef");
	double spacing = largest_spacing(f, group, trace);
	double less = fmin(h, fmax(edge / ACI_REACH, spacing / 3));
	trace_step(trace, "h_ef_1", "min(h_ef, max(c_a_max / 1.5, s_max / 3))", less, DIM_LENGTH,
	           "ACI 318-19 17.6.2.1.2; S3", "reduced embedment near three or more edges");
	return (struct depth){less, ACI_REACH * less, "h_ef_1", "1.5 * h_ef_1"};
}

/* kc and psi_c,N belong together. A sheet's kc for uncracked concrete has the factor in it. */
static double basic_factor(const struct code_facts *f, bool cracked, double *uncracked,
                           struct trace *trace)
{
	const struct aci318_sheet *sheet = &f->given->aci;
	double standard = f->cast_in ? ACI_KC_CAST_IN : ACI_KC_DRILLED, k = standard;
	const struct number *given = cracked ? &sheet->kc_cracked : &sheet->kc_uncracked;
	const char *source = "ACI 318-19 17.6.2.2.1";
	*uncracked = 1;
	if (is_known(*given)) {
		k = fmin(given->value, ACI_KC_MOST);
		source = "sheet, at most 10; S5";
	} else if (!cracked) {
		*uncracked = f->cast_in ? ACI_UNCRACKED_CAST_IN : ACI_UNCRACKED_DRILLED;
		/* psi_c,N = 1.4 is that of kc = 7; a lower one of the sheet counts all the same */
		if (is_known(sheet->kc_cracked) && sheet->kc_cracked.value < standard) {
			k = sheet->kc_cracked.value;
			source = "sheet, cracked; S5";
		}
	}
	trace_step(trace, "k_c", "", k, DIM_FACTOR, source,
	           f->cast_in ? "cast in" : "post-installed");
	trace_step(trace, "psi_c_N", "", *uncracked, DIM_FACTOR, "ACI 318-19 17.6.2.5.1",
	           cracked            ? "cracked concrete"
	           : *uncracked > 1 ? "uncracked concrete"
	                              : "uncracked concrete is in k_c already");
	return k;
}

double aci_nominal_cone(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                        bool cracked, struct group_strength *out, struct trace *trace)
{
	struct group group;
	double uncracked;
	group_measure(p, anchors, ACI_REACH * f->embedment, &group);
	struct depth depth = counted_depth(f, &group, trace);
	double k = basic_factor(f, cracked, &uncracked, trace);
	double fc = aci_concrete(f, trace), lambda = aci_lightweight(f, trace);
	double basic = trace_step(
		trace, "N_b",
		trace_text(trace, "k_c * lambda_a * sqrt(f_c) * %s * sqrt(%s)", depth.is, depth.is),
		k * lambda * sqrt(fc) * depth.h * sqrt(depth.h), DIM_FORCE,
		f->cast_in ? "ACI 318-19 17.6.2.2.1; S4" : "ACI 318-19 17.6.2.2.1",
		"breakout of one anchor far from edges");
	double whole = trace_step(trace, "A_Nco",
	                          trace_text(trace, "9 * %s * %s", depth.is, depth.is),
	                          9 * depth.h * depth.h, DIM_AREA, "ACI 318-19 17.6.2.1.4",
	                          "cone of one anchor at the surface");
	double area = group_area(p, anchors, depth.reach, "A_Nc", "ACI 318-19 17.6.2.1.1; S2",
	                         trace);
	double edge = aci_edge_factor(group.least_edge, depth.reach, "psi_ed_N", depth.reach_is,
	                              "ACI 318-19 17.6.2.4.1", trace);
	double splitting = aci_splitting_factor(f, cracked, group.least_edge, depth.reach,
	                                        "psi_cp_N", depth.reach_is,
	                                        "ACI 318-19 17.6.2.6.1", trace);
	*out = (struct group_strength){.anchors = anchors, .count = group.count,
	                               .centre = group.centre, .lever = depth.reach};
	return trace_step(trace, "N_cbg", "A_Nc / A_Nco * psi_ed_N * psi_c_N * psi_cp_N * N_b",
	                  area / whole * edge * uncracked * splitting * basic, DIM_FORCE,
	                  "ACI 318-19 17.6.2.1",
	                  "breakout; the eccentricity (17.6.2.3) is counted with the load");
}

void aci_cone(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
              bool earthquake, struct group_strength *out, struct trace *trace)
{
	bool apart = !f->cracked;    /* an earthquake counts the concrete as cracked, S14 */
	double resting = aci_nominal_cone(f, p, anchors, f->cracked, out,
	                                  apart && earthquake ? NULL : trace);
	double shaking = apart ? aci_nominal_cone(f, p, anchors, true, out,
	                                          earthquake ? trace : NULL)
	                       : resting;
	double phi = aci_phi_concrete(f, true, trace);
	out->design = aci_design(phi, resting, false, "phi_N_cbg", "N_cbg",
	                         earthquake ? NULL : trace);
	out->seismic = aci_design(phi, shaking, true, "phi_N_cbg", "N_cbg",
	                          earthquake ? trace : NULL);
}
