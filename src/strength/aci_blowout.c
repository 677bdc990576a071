/* Side-face blowout of headed anchors deep beside an edge, ACI 318-19 17.6.4. */
#include "aci_parts.h"
#include "aci_values.h"

#include <math.h>

/* Edges that run within about 15 degrees of this one are its continuation or lie opposite: no
 * corner (own choice). */
#define CORNER_SINE 0.26

/* A row as one edge sees it: nearest distance, extent along it, nearest corner side. */
struct row { double near, from, to, corner; size_t count; struct vec2 sum; };

static struct vec2 direction(const struct segment *edge)
{
	double x = edge->to.x - edge->from.x, y = edge->to.y - edge->from.y, length = hypot(x, y);
	return length > 0 ? (struct vec2){x / length, y / length} : (struct vec2){1, 0};
}

static double corner_of(const struct pattern *p, size_t anchor, size_t edge, struct vec2 along)
{
	double nearest = HUGE_VAL;
	for (size_t e = 0; e < p->edge_count; e++) {
		struct vec2 other = direction(&p->edge[e]);
		double sine = fabs(along.x * other.y - along.y * other.x);
		if (e != edge && sine > CORNER_SINE)
			nearest = fmin(nearest, p->distance[anchor * p->edge_count + e]);
	}
	return nearest;
}

static struct row measure(const struct pattern *p, uint64_t anchors, size_t edge)
{
	struct row row = {HUGE_VAL, HUGE_VAL, -HUGE_VAL, HUGE_VAL, 0, {0, 0}};
	struct vec2 along = direction(&p->edge[edge]);
	double c = cos(p->turned), s = sin(p->turned);
	for (size_t i = 0; i < p->count; i++) {
		if (!(anchors >> i & 1))
			continue;
		struct vec2 at = p->at[i];
		double x = at.x * along.x + at.y * along.y;
		row.near = fmin(row.near, p->distance[i * p->edge_count + edge]);
		row.from = fmin(row.from, x);
		row.to = fmax(row.to, x);
		row.corner = fmin(row.corner, corner_of(p, i, edge, along));
		/* along the pattern's axes, as struct group's centre */
		row.sum.x += at.x * c + at.y * s;
		row.sum.y += at.y * c - at.x * s;
		row.count++;
	}
	return row;
}

/* 17.6.4.1.1, counted for a row too (S7) */
static double corner_factor(const struct row *row, struct trace *trace)
{
	double ratio = row->near > 0 ? row->corner / row->near : ACI_BLOWOUT_CORNER;
	if (ratio >= ACI_BLOWOUT_CORNER)
		return trace_step(trace, "corner", "", 1, DIM_FACTOR, "ACI 318-19 17.6.4.1.1",
		                  "no corner within 3 ca1");
	trace_step(trace, "c_a2", "", row->corner, DIM_LENGTH, "", "distance to the corner's side");
	return trace_step(trace, "corner", "(1 + max(1, c_a2 / c_a1)) / 4",
	                  (1 + fmax(1, ratio)) / 4, DIM_FACTOR, "ACI 318-19 17.6.4.1.1; S7",
	                  "near a corner");
}

static double nominal(const struct code_facts *f, const struct row *row, struct trace *trace)
{
	double c1 = trace_step(trace, "c_a1", "", row->near, DIM_LENGTH, "",
	                       "distance to the edge");
	double area = aci_head(f, trace), fc = aci_concrete(f, trace);
	double lambda = aci_lightweight(f, trace);
	double single = trace_step(trace, "N_sb",
	                           "13 * c_a1 * sqrt(A_brg) * lambda_a * sqrt(f_c)",
	                           ACI_BLOWOUT * c1 * sqrt(area) * lambda * sqrt(fc), DIM_FORCE,
	                           "ACI 318-19 17.6.4.1", "blowout of one anchor");
	double corner = corner_factor(row, trace);
	if (row->count < 2 || !(c1 > 0))
		return trace_step(trace, "N_sbg", "corner * N_sb", corner * single, DIM_FORCE,
		                  "ACI 318-19 17.6.4.1", "one anchor");
	double spread = trace_step(trace, "s", "", row->to - row->from, DIM_LENGTH, "",
	                           "distance between the outer anchors of the row");
	return trace_step(trace, "N_sbg", "(1 + s / (6 * c_a1)) * corner * N_sb",
	                  (1 + spread / (ACI_BLOWOUT_SPACING * c1)) * corner * single, DIM_FORCE,
	                  "ACI 318-19 17.6.4.2; S7", "row of anchors");
}

void aci_blowout(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                 unsigned edge, bool earthquake, struct group_strength *out, struct trace *trace)
{
	struct row row = measure(p, anchors, edge - 1);
	double n = (double)row.count;
	/* uncracked concrete counts for nothing here, so an earthquake is no other state */
	double strength = nominal(f, &row, trace), phi = aci_phi_concrete(f, true, trace);
	*out = (struct group_strength){.anchors = anchors, .count = row.count, .edge = edge,
	                               .centre = {row.sum.x / n, row.sum.y / n},
	                               .lever = HUGE_VAL};
	out->design = aci_design(phi, strength, false, "phi_N_sbg", "N_sbg",
	                         earthquake ? NULL : trace);
	out->seismic = aci_design(phi, strength, true, "phi_N_sbg", "N_sbg",
	                          earthquake ? trace : NULL);
}

bool aci_blows_out(const struct code_facts *f, double edge_distance)
{
	return f->embedment > ACI_BLOWOUT_DEPTH * edge_distance;
}

double aci_blowout_limit(double edge_distance) { return ACI_BLOWOUT_SPACING * edge_distance; }
