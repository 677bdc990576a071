/* Concrete edge in shear, EN 1992-4 7.2.2.5. The angle of the load, (7.48), is counted by the
 * caller: along the edge the strength is twice that across it. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>

/* one row in front of its edge; c1 that counts, with its name in the trace */
struct face { double c1, width, least_side, most_side, spacing, centre; const char *c1_is; };

static struct face measure(const struct pattern *p, const struct edge_view *view, uint64_t anchors,
                           double c1, const char *name)
{
	if (!view) {    /* a virtual edge, sides as near */
		double reach = fmin(EN_EDGE_REACH * c1, p->clear);
		return (struct face){c1, 2 * reach, p->clear, p->clear, 0, 0, name};
	}
	struct edge_front front;
	edge_front_measure(p, view, anchors, c1, &front);
	return (struct face){c1, front.width, fmin(front.side[0], front.side[1]),
	                     fmax(front.side[0], front.side[1]), front.spacing, front.centre, name};
}

/* In a thin narrow member a face farther back would carry more than the real one, 7.2.2.5(9):
 * the whole formula is taken for that distance. smax: of neighbours along the edge (S24). */
static struct face narrow(const struct code_facts *f, const struct pattern *p,
                          const struct edge_view *view, uint64_t anchors, const struct face *face,
                          struct trace *trace)
{
	double c1 = fmax(fmax(face->most_side / 1.5, f->thickness / 1.5), face->spacing / 3);
	c1 = fmin(c1, face->c1);
	trace_step(trace, "c_2_max", "", face->most_side, DIM_LENGTH, "", "farther side edge");
	trace_step(trace, "s_max", "", face->spacing, DIM_LENGTH, "S24",
	           "largest spacing of neighbours along the edge");
	trace_step(trace, "c_1_1", "min(c_1, max(c_2_max / 1.5, h / 1.5, s_max / 3))", c1,
	           DIM_LENGTH, "EN 1992-4 7.2.2.5(9); S24",
	           "thin narrow member: the edge distance that counts");
	return measure(p, view, anchors, c1, "c_1_1");
}

static double shear_length(const struct code_facts *f, double d, struct trace *trace)
{
	const struct number *given = &f->given->en.shear_length;
	double h = en_embedment(f, trace);
	double whole = is_known(*given)
		? trace_input(trace, "l_sheet", given, DIM_LENGTH, "load-bearing length in shear")
		: trace_step(trace, "l_sheet", "h_ef", h, DIM_LENGTH, "EN 1992-4 7.2.2.5(6)",
	                     "load-bearing length in shear");
	if (d <= EN_LENGTH_SHAFT)
		return trace_step(trace, "l_f", "min(l_sheet, 12 * d)",
		                  fmin(whole, EN_LENGTH_SHAFTS * d), DIM_LENGTH,
		                  "EN 1992-4 7.2.2.5(6)", "");
	return trace_step(trace, "l_f", "min(l_sheet, max(8 * d, 300))",
	                  fmin(whole, fmax(EN_LENGTH_THICK_SHAFTS * d, EN_LENGTH_THICK)),
	                  DIM_LENGTH, "EN 1992-4 7.2.2.5(6)", "");
}

/* (7.41) */
static double single(const struct code_facts *f, bool cracked, const struct face *face,
                     struct trace *trace)
{
	double d = en_shaft(f, trace), length = shear_length(f, d, trace), c1 = face->c1,
	       fck = en_fck(f, trace);
	const char *is = face->c1_is;
	double k = trace_step(trace, "k_9", "", cracked ? EN_K9_CRACKED : EN_K9_UNCRACKED,
	                      DIM_FACTOR, "EN 1992-4 (7.41)",
	                      cracked ? "cracked concrete" : "uncracked concrete");
	double alpha = trace_step(trace, "alpha", trace_text(trace, "0.1 * sqrt(l_f / %s)", is),
	                          0.1 * sqrt(length / c1), DIM_FACTOR, "EN 1992-4 (7.42)", "");
	double beta = trace_step(trace, "beta", trace_text(trace, "0.1 * (d / %s) ^ 0.2", is),
	                         0.1 * pow(d / c1, 0.2), DIM_FACTOR, "EN 1992-4 (7.43)", "");
	return trace_step(trace, "V0_Rk_c",
	                  trace_text(trace,
	                             "k_9 * d ^ alpha * l_f ^ beta * sqrt(f_ck) * %s * sqrt(%s)",
	                             is, is),
	                  k * pow(d, alpha) * pow(length, beta) * sqrt(fck) * c1 * sqrt(c1),
	                  DIM_FORCE, "EN 1992-4 (7.41)", "edge of one anchor far from corners");
}

static double area_share(const struct code_facts *f, const struct face *face, struct trace *trace)
{
	double c1 = face->c1, depth = fmin(EN_EDGE_REACH * c1, f->thickness);
	const char *is = face->c1_is;
	double whole = trace_step(trace, "A0_c_V", trace_text(trace, "4.5 * %s * %s", is, is),
	                          4.5 * c1 * c1, DIM_AREA, "EN 1992-4 (7.44)", "");
	trace_step(trace, "b_V", "", face->width, DIM_LENGTH, "EN 1992-4 7.2.2.5(8)",
	           "width of the face: 1.5 c1 to each side of every anchor, overlaps once, cut at edges");
	double area = trace_step(trace, "A_c_V", trace_text(trace, "b_V * min(1.5 * %s, h)", is),
	                         face->width * depth, DIM_AREA, "EN 1992-4 7.2.2.5(8)",
	                         "face at the edge");
	return area / whole;
}

static double corner_factor(const struct face *face, struct trace *trace)
{
	if (face->least_side >= EN_EDGE_REACH * face->c1)
		return trace_step(trace, "psi_s_V", "", 1, DIM_FACTOR, "EN 1992-4 (7.45)",
		                  "no side edge within 1.5 c1");
	trace_step(trace, "c_2", "", face->least_side, DIM_LENGTH, "", "nearer side edge");
	return trace_step(trace, "psi_s_V",
	                  trace_text(trace, "0.7 + 0.3 * c_2 / (1.5 * %s)", face->c1_is),
	                  0.7 + 0.3 * face->least_side / (EN_EDGE_REACH * face->c1), DIM_FACTOR,
	                  "EN 1992-4 (7.45)", "corner");
}

/* Doubtful in the sources: 1.4 only in cracked concrete with closely spaced stirrups (S33). */
static double bars_factor(const struct code_facts *f, bool cracked, double c1, struct trace *trace)
{
	const struct word *edge = &f->cell->slab.reinforcement.edge;
	bool tied = cracked && is_known(*edge) && edge->value == EDGE_BARS_WITH_STIRRUPS &&
	            c1 >= EN_EDGE_STIRRUPS_LEAST;
	return trace_step(trace, "psi_re_V", "", tied ? EN_EDGE_STIRRUPS : 1, DIM_FACTOR,
	                  "EN 1992-4 7.2.2.5(12); S33",
	                  tied ? "edge bars with stirrups, cracked concrete"
	                       : "edge bars not counted");
}

/* (7.40) without eccentricity and angle; step V_Rk_c */
static double characteristic(const struct code_facts *f, bool cracked, const struct face *face,
                             struct trace *trace)
{
	double one = single(f, cracked, face, trace), share = area_share(f, face, trace);
	double corner = corner_factor(face, trace);
	double thin = trace_step(trace, "psi_h_V",
	                         trace_text(trace, "max(1, sqrt(1.5 * %s / h))", face->c1_is),
	                         fmax(1, sqrt(EN_EDGE_REACH * face->c1 / f->thickness)), DIM_FACTOR,
	                         "EN 1992-4 (7.46)", "thin slab");
	double bars = bars_factor(f, cracked, face->c1, trace);
	return trace_step(trace, "V_Rk_c",
	                  "V0_Rk_c * (A_c_V / A0_c_V) * psi_s_V * psi_h_V * psi_re_V",
	                  one * share * corner * thin * bars, DIM_FORCE, "EN 1992-4 (7.40)",
	                  "edge; eccentricity (7.47) and angle (7.48) are counted with the load");
}

/* the face that counts, written down where `trace` */
static struct face face_of(const struct code_facts *f, const struct pattern *p,
                           const struct edge_view *view, uint64_t anchors, double c1,
                           struct trace *trace)
{
	struct face face = measure(p, view, anchors, c1, "c_1");
	trace_step(trace, "c_1", "", c1, DIM_LENGTH, "", "edge distance of the row");
	trace_step(trace, "h", "", f->thickness, DIM_LENGTH, "slab", "thickness");
	if (face.most_side < EN_EDGE_REACH * c1 && f->thickness < EN_EDGE_REACH * c1)
		return narrow(f, p, view, anchors, &face, trace);
	return face;
}

static size_t members(uint64_t set)
{
	size_t count = 0;
	for (; set; set &= set - 1)
		count++;
	return count;
}

void en_edge(const struct code_facts *f, const struct pattern *p, const struct edge_view *view,
             uint64_t anchors, double c1, bool earthquake, struct edge_strength *out,
             struct trace *trace)
{
	struct face face = face_of(f, p, view, anchors, c1, trace);
	bool apart = !f->cracked;    /* an earthquake counts the concrete as cracked */
	double resting = characteristic(f, f->cracked, &face, apart && earthquake ? NULL : trace);
	double shaking = apart ? characteristic(f, true, &face, earthquake ? trace : NULL)
	                       : resting;
	double gamma = en_gamma_mc(f, false, trace);
	struct trace *shown = earthquake ? trace : NULL;
	/* all that push toward the edge are the group, though one row alone takes it */
	size_t group = view ? members(view->anchors) : p->count;
	double gap = en_alpha_gap(f, shown), alpha = en_alpha_eq(f, EDGE, group, shown);
	out->across = resting / gamma;
	out->across_seismic = gap * alpha * shaking / gamma;
	out->along = EN_EDGE_ALONG * out->across;
	out->along_seismic = EN_EDGE_ALONG * out->across_seismic;
	out->lever = EN_EDGE_REACH * face.c1;
	out->centre = face.centre;
	const char *symbol = earthquake ? "V_Rd_c_eq" : "V_Rd_c";
	trace_step(trace, symbol,
	           earthquake ? "alpha_gap * alpha_eq * V_Rk_c / gamma_Mc" : "V_Rk_c / gamma_Mc",
	           earthquake ? out->across_seismic : out->across, DIM_FORCE,
	           earthquake ? "EN 1992-4 (C.8)" : "EN 1992-4 Table 4.1",
	           "design strength at right angles to the edge");
	trace_step(trace, earthquake ? "V_Rd_c_along_eq" : "V_Rd_c_along",
	           trace_text(trace, "2 * %s", symbol),
	           earthquake ? out->along_seismic : out->along, DIM_FORCE, "EN 1992-4 (7.48); S35",
	           "along the edge: psi_alpha_V is 2");
}

double en_remote_edge(const struct code_facts *f)
{
	return fmax(EN_REMOTE_EMBEDMENTS * f->embedment, EN_REMOTE_SHAFTS * f->shaft);
}
