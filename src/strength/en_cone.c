/* Concrete cone, EN 1992-4 7.2.1.4. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>

/* embedment that counts, with its critical spacing and edge distance, as the trace names them */
struct reach { double depth, spacing, edge; const char *depth_is, *spacing_is, *edge_is; };

static double k1(const struct code_facts *f, bool cracked, struct trace *trace)
{
	const struct en1992_4_sheet *sheet = &f->given->en;
	const struct number *given = cracked ? &sheet->k_cracked : &sheet->k_uncracked;
	const char *state = cracked ? "cracked concrete" : "uncracked concrete";
	if (is_known(*given))
		return trace_input(trace, "k_1", given, DIM_FACTOR, state);
	double value = en_drilled(f)
		? (cracked ? EN_K1_DRILLED_CRACKED : EN_K1_DRILLED_UNCRACKED)
		: (cracked ? EN_K1_HEADED_CRACKED : EN_K1_HEADED_UNCRACKED);
	return trace_step(trace, "k_1", "", value, DIM_FACTOR, "EN 1992-4 (7.2)", state);
}

double en_cone_single(const struct code_facts *f, bool cracked, double depth,
                      const char *depth_symbol, struct trace *trace)
{
	double k = k1(f, cracked, trace), fck = en_fck(f, trace);
	return trace_step(trace, "N0_Rk_c",
	                  trace_text(trace, "k_1 * sqrt(f_ck) * %s * sqrt(%s)", depth_symbol,
	                             depth_symbol),
	                  k * sqrt(fck) * depth * sqrt(depth), DIM_FORCE, "EN 1992-4 (7.2)",
	                  "cone of one anchor far from edges");
}

static struct reach whole_reach(const struct code_facts *f, struct trace *trace)
{
	double h = en_embedment(f, trace);
	struct reach reach = {h, 3 * h, EN_CONE_REACH * h, "h_ef", "s_cr_N", "c_cr_N"};
	trace_step(trace, "s_cr_N", "3 * h_ef", reach.spacing, DIM_LENGTH, "EN 1992-4 (7.3)",
	           "critical spacing");
	trace_step(trace, "c_cr_N", "1.5 * h_ef", reach.edge, DIM_LENGTH, "EN 1992-4 (7.3)",
	           "critical edge distance");
	return reach;
}

/* Near three or more edges a shallower anchor would carry as much, 7.2.1.4(8): the whole formula is
 * taken for that embedment. smax: the largest spacing of neighbours, the lower reading (S24). */
static struct reach narrow_reach(const struct group *group, const struct reach *whole,
                                 struct trace *trace)
{
	double edge = fmin(group->most_edge, whole->edge), spacing = fmin(group->adjacent,
	                                                                  whole->spacing);
	double h = fmax(edge / whole->edge, spacing / whole->spacing) * whole->depth;
	trace_step(trace, "c_max", "", edge, DIM_LENGTH, "", "farthest of the near edges");
	trace_step(trace, "s_max", "", spacing, DIM_LENGTH, "S24", "largest spacing of neighbours");
	trace_step(trace, "h_ef_1", "max(c_max / c_cr_N, s_max / s_cr_N) * h_ef", h, DIM_LENGTH,
	           "EN 1992-4 7.2.1.4(8); S22, S24", "reduced embedment near three or more edges");
	struct reach reach = {h, 3 * h, EN_CONE_REACH * h, "h_ef_1", "s_cr_1", "c_cr_1"};
	trace_step(trace, "s_cr_1", "3 * h_ef_1", reach.spacing, DIM_LENGTH, "EN 1992-4 (7.3)", "");
	trace_step(trace, "c_cr_1", "1.5 * h_ef_1", reach.edge, DIM_LENGTH, "EN 1992-4 (7.3)", "");
	return reach;
}

double en_cone_characteristic(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                              bool cracked, struct group_strength *out, struct trace *trace)
{
	struct reach reach = whole_reach(f, trace);
	struct group group;
	group_measure(p, anchors, reach.edge, &group);
	if (group.near_edges >= EN_NARROW_EDGES && group.most_edge > 0)
		reach = narrow_reach(&group, &reach, trace);
	double single = en_cone_single(f, cracked, reach.depth, reach.depth_is, trace);
	double whole = trace_step(trace, "A0_c_N",
	                          trace_text(trace, "%s * %s", reach.spacing_is, reach.spacing_is),
	                          reach.spacing * reach.spacing, DIM_AREA, "EN 1992-4 (7.3)",
	                          "cone of one anchor at the surface");
	double area = group_area(p, anchors, reach.edge, "A_c_N", "EN 1992-4 7.2.1.4(3); S2",
	                         trace);
	double edge = en_edge_factor(group.least_edge, reach.edge, "psi_s_N", reach.edge_is,
	                             "EN 1992-4 (7.4)", trace);
	double spalling = en_spalling_factor(f, reach.depth, reach.depth_is, trace);
	trace_step(trace, "psi_M_N", "", 1, DIM_FACTOR, "EN 1992-4 (7.7); S25",
	           "help from pressure beside the cone: not counted");
	*out = (struct group_strength){.anchors = anchors, .count = group.count,
	                               .centre = group.centre, .lever = reach.edge};
	return trace_step(trace, "N_Rk_c",
	                  "N0_Rk_c * A_c_N / A0_c_N * psi_s_N * psi_re_N * psi_M_N",
	                  single * area / whole * edge * spalling, DIM_FORCE, "EN 1992-4 (7.1)",
	                  "cone; the eccentricity (7.6) is counted with the load");
}

void en_cone(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
             bool earthquake, struct group_strength *out, struct trace *trace)
{
	bool apart = !f->cracked;    /* an earthquake counts the concrete as cracked */
	double resting = en_cone_characteristic(f, p, anchors, f->cracked, out,
	                                        apart && earthquake ? NULL : trace);
	double shaking = apart ? en_cone_characteristic(f, p, anchors, true, out,
	                                                earthquake ? trace : NULL)
	                       : resting;
	en_finish(f, CONE, resting, shaking, "N_Rd_c", "N_Rk_c", earthquake, out, trace);
}
