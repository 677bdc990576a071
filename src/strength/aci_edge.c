/* Concrete breakout in shear toward an edge, ACI 318-19 17.7.2. */
#include "aci_parts.h"
#include "aci_values.h"

#include <math.h>

/* No edge is known: one may be at `clear` on every side. */
static void unseen_front(double clear, double c1, struct edge_front *out)
{
	*out = (struct edge_front){.width = 2 * fmin(ACI_REACH * c1, clear), .side = {clear, clear},
	                           .count = 1};
}

static void front_of(const struct pattern *p, const struct edge_view *view, uint64_t anchors,
                     double c1, struct edge_front *out)
{
	if (view)
		edge_front_measure(p, view, anchors, c1, out);
	else
		unseen_front(p->clear, c1, out);
}

static double side_near(const struct edge_front *front)
{
	return fmin(front->side[0], front->side[1]);
}

/* 17.7.2.1.2: in a narrow thin member ca1 counts as less. */
static double counted_distance(const struct code_facts *f, const struct edge_front *front,
                               double c1, struct trace *trace)
{
	double far = fmax(front->side[0], front->side[1]), thick = f->thickness;
	trace_step(trace, "c_a1_0", "", c1, DIM_LENGTH, "", "distance to the edge");
	if (!(far < ACI_REACH * c1) || !(thick < ACI_REACH * c1))
		return trace_step(trace, "c_a1", "c_a1_0", c1, DIM_LENGTH, "ACI 318-19 17.7.2.1.2",
		                  "not narrow and thin at once");
	trace_step(trace, "c_a2_max", "", far, DIM_LENGTH, "", "farther one of the sides");
	trace_step(trace, "s_max", "", front->spacing, DIM_LENGTH, "",
	           "largest spacing in the row");
	return trace_step(
		trace, "c_a1", "min(c_a1_0, max(c_a2_max / 1.5, h_a / 1.5, s_max / 3))",
		fmin(c1, fmax(far / ACI_REACH, fmax(thick / ACI_REACH, front->spacing / 3))),
		DIM_LENGTH, "ACI 318-19 17.7.2.1.2", "narrow and thin member");
}

/* le, 17.7.2.2.1 */
static double bearing_length(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->aci.shear_length;
	double d = aci_shaft(f, trace), length;
	if (is_known(*given))
		length = trace_input(trace, "l_e_0", given, DIM_LENGTH, "load-bearing length");
	else if (f->type == TORQUE_CONTROLLED)
		length = trace_step(trace, "l_e_0", "2 * d_a", ACI_SHEAR_LENGTH_SLEEVE * d,
		                    DIM_LENGTH, "ACI 318-19 17.7.2.2.1",
		                    "torque-controlled: the sleeve's own stiffness is not known");
	else
		length = trace_step(trace, "l_e_0", "h_ef", aci_embedment(f, trace), DIM_LENGTH,
		                    "ACI 318-19 17.7.2.2.1", "constant stiffness");
	return trace_step(trace, "l_e", "min(l_e_0, 8 * d_a)", fmin(length, ACI_SHEAR_LENGTH * d),
	                  DIM_LENGTH, "ACI 318-19 17.7.2.2.1", "counts at most");
}

static double basic(const struct code_facts *f, double c1, struct trace *trace)
{
	double length = bearing_length(f, trace), d = aci_shaft(f, trace);
	double fc = aci_concrete(f, trace), lambda = aci_lightweight(f, trace);
	double root = lambda * sqrt(fc) * c1 * sqrt(c1);
	double stiff = trace_step(
		trace, "V_b_1",
		"0.6 * (l_e / d_a) ^ 0.2 * sqrt(d_a) * (lambda_a * sqrt(f_c) * c_a1 * sqrt(c_a1))",
		ACI_SHEAR_BASIC * pow(length / d, ACI_SHEAR_POWER) * sqrt(d) * root, DIM_FORCE,
		"ACI 318-19 17.7.2.2.1a", "");
	double ceiling = trace_step(
		trace, "V_b_2", "3.7 * (lambda_a * sqrt(f_c) * c_a1 * sqrt(c_a1))",
		ACI_SHEAR_CEILING * root, DIM_FORCE, "ACI 318-19 17.7.2.2.1b", "");
	return trace_step(trace, "V_b", "min(V_b_1, V_b_2)", fmin(stiff, ceiling), DIM_FORCE,
	                  "ACI 318-19 17.7.2.2.1", "one anchor in thick concrete, far from corners");
}

/* psi_c,V, 17.7.2.5 */
static double state_factor(const struct code_facts *f, bool cracked, struct trace *trace)
{
	const struct word *bars = &f->cell->slab.reinforcement.edge;
	int kind = is_known(*bars) ? bars->value : EDGE_BARS_NONE;
	double value = !cracked                          ? ACI_EDGE_UNCRACKED
	               : kind == EDGE_BARS_WITH_STIRRUPS ? ACI_EDGE_STIRRUPS
	               : kind == EDGE_BARS               ? ACI_EDGE_BARS
	                                                 : 1;
	return trace_step(trace, "psi_c_V", "", value, DIM_FACTOR,
	                  f->cracked == cracked ? "ACI 318-19 17.7.2.5"
	                                        : "ACI 318-19 17.7.2.5; S14",
	                  !cracked                          ? "uncracked concrete"
	                  : kind == EDGE_BARS_WITH_STIRRUPS ? "edge bars with stirrups"
	                  : kind == EDGE_BARS               ? "edge bars"
	                                                    : "cracked concrete, no edge bars");
}

/* How the width comes about, where the anchors' own widths meet: two ends and what lies between. */
static void trace_width(const struct edge_front *front, double c1, struct trace *trace)
{
	static const char *const side[] = {"c_a2_1", "c_a2_2"}, *const end[] = {"end_1", "end_2"};
	double reach = ACI_REACH * c1, ends = 0;
	if (!trace)
		return;
	for (int k = 0; k < 2; k++) {
		bool cut = front->side[k] < reach;
		if (cut)
			trace_step(trace, side[k], "", front->side[k], DIM_LENGTH, "",
			           "distance to a side");
		ends += trace_step(trace, end[k], cut ? side[k] : "1.5 * c_a1",
		                   fmin(front->side[k], reach), DIM_LENGTH, "",
		                   "beyond the outer anchor, along the edge");
	}
	trace_step(trace, "between", "", fmax(0, front->width - ends), DIM_LENGTH, "pattern",
	           front->spacing > 2 * reach
	                   ? "between the outer anchors, 3 ca1 at most from one to the next"
	                   : "between the outer anchors");
	trace_step(trace, "width", "end_1 + between + end_2", front->width, DIM_LENGTH,
	           "ACI 318-19 17.7.2.1.1", "width of the face");
}

static double area_factor(const struct code_facts *f, const struct edge_front *front, double c1,
                          struct trace *trace)
{
	double whole = trace_step(trace, "A_Vco", "4.5 * c_a1 * c_a1", ACI_SHEAR_AREA * c1 * c1,
	                          DIM_AREA, "ACI 318-19 17.7.2.1.3", "face of one anchor");
	trace_width(front, c1, trace);
	trace_step(trace, "n", "", (double)front->count, DIM_COUNT, "", "anchors in the row");
	double area = trace_step(trace, "A_Vc", "min(width * min(1.5 * c_a1, h_a), n * A_Vco)",
	                         fmin(front->width * fmin(ACI_REACH * c1, f->thickness),
	                              (double)front->count * whole),
	                         DIM_AREA, "ACI 318-19 17.7.2.1.1", "face that breaks out");
	return area / whole;
}

static double thickness_factor(const struct code_facts *f, double c1, struct trace *trace)
{
	bool thin = f->thickness < ACI_REACH * c1;
	return trace_step(trace, "psi_h_V", thin ? "sqrt(1.5 * c_a1 / h_a)" : "",
	                  thin ? sqrt(ACI_REACH * c1 / f->thickness) : 1, DIM_FACTOR,
	                  "ACI 318-19 17.7.2.6.1", thin ? "thin slab" : "slab of 1.5 ca1 or more");
}

/* Strength at right angles to the edge and along it, for one state of the concrete; phi counted. */
struct two { double across, along; };

static struct two strengths(const struct code_facts *f, const struct edge_front *front, double c1,
                            bool cracked, struct trace *trace)
{
	double area = area_factor(f, front, c1, trace), side = side_near(front);
	double edge = 1, reach = ACI_REACH * c1;
	if (side < reach)
		trace_step(trace, "c_a2", "", side, DIM_LENGTH, "", "nearer one of the sides");
	edge = trace_step(trace, "psi_ed_V", side < reach ? "0.7 + 0.3 * c_a2 / (1.5 * c_a1)" : "",
	                  side < reach ? ACI_EDGE_START + ACI_EDGE_GROWTH * side / reach : 1,
	                  DIM_FACTOR, "ACI 318-19 17.7.2.4.1",
	                  side < reach ? "disturbed by the side" : "no side within 1.5 ca1");
	double state = state_factor(f, cracked, trace), thin = thickness_factor(f, c1, trace);
	double one = basic(f, c1, trace), phi = aci_phi_edge(f, trace);
	double body = trace_step(trace, "V_c0", "A_Vc / A_Vco * psi_c_V * psi_h_V * V_b",
	                         area * state * thin * one, DIM_FORCE, "ACI 318-19 17.7.2.1",
	                         "breakout without psi_ed_V");
	struct two two;
	two.across = trace_step(trace, "phi_V_cbg", "phi * psi_ed_V * V_c0", phi * edge * body,
	                        DIM_FORCE, "ACI 318-19 17.7.2.1",
	                        "across the edge; the eccentricity (17.7.2.3) is counted with the load");
	two.along = trace_step(trace, "phi_V_along", "phi * 2 * V_c0", phi * ACI_ALONG * body,
	                       DIM_FORCE, "ACI 318-19 17.7.2.1(c)", "along the edge");
	return two;
}

void aci_edge(const struct code_facts *f, const struct pattern *p, const struct edge_view *view,
              uint64_t anchors, double c1, bool earthquake, struct edge_strength *out,
              struct trace *trace)
{
	struct edge_front front;
	front_of(p, view, anchors, c1, &front);
	*out = (struct edge_strength){.lever = HUGE_VAL, .centre = front.centre};
	if (!(c1 > 0)) {
		trace_step(trace, "phi_V_cbg", "", 0, DIM_FORCE, "ACI 318-19 17.7.2.1",
		           "the anchor stands on the edge");
		return;
	}
	trace_step(trace, "h_a", "", f->thickness, DIM_LENGTH, "slab", "thickness");
	double counted = counted_distance(f, &front, c1, trace);
	front_of(p, view, anchors, counted, &front);
	/* no 0.75 in shear, 17.10.6; the concrete counts as cracked, S14 */
	struct two resting = strengths(f, &front, counted, f->cracked, earthquake ? NULL : trace);
	struct two shaking = strengths(f, &front, counted, true, earthquake ? trace : NULL);
	*out = (struct edge_strength){resting.across, resting.along, shaking.across, shaking.along,
	                              ACI_REACH * counted, front.centre};
}

/* R17.7.2.1b: rows as far apart as the front row's edge distance, or farther, break out one after
 * the other (S8). */
bool aci_row_stands_alone(const struct edge_view *view, size_t row)
{
	if (row + 1 >= view->row_count)
		return false;
	return view->row_distance[row + 1] - view->row_distance[row] >= view->row_distance[row];
}
