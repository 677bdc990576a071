/* Blow-out of headed anchors near an edge, EN 1992-4 7.2.1.8. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>

/* a row along its edge */
struct row {
	size_t count;
	double c1;               /* of the anchor nearest to the edge */
	double side[2];          /* to side edges, from the outer anchors; HUGE_VAL none */
	double spacing;          /* largest between neighbours along the edge */
	double width;            /* union of +-2 c1 along the edge, cut at side edges */
	struct vec2 centre;
};

bool en_blows_out(const struct code_facts *f, double edge_distance)
{
	return edge_distance <= EN_BLOWOUT_SHARE * f->embedment;
}

double en_blowout_limit(double edge_distance) { return 2 * EN_BLOWOUT_REACH * edge_distance; }

static double dot(struct vec2 a, struct vec2 b) { return a.x * b.x + a.y * b.y; }

static struct vec2 less(struct vec2 a, struct vec2 b)
{
	return (struct vec2){a.x - b.x, a.y - b.y};
}

/* Whether the ray from `at` in a direction meets the segment. */
static bool meets(struct vec2 at, struct vec2 ray, const struct segment *edge)
{
	struct vec2 left = {-ray.y, ray.x}, from = less(edge->from, at), to = less(edge->to, at);
	double a = dot(from, left), b = dot(to, left);
	if ((a > 0) == (b > 0))
		return false;
	double t = a / (a - b);
	return dot(from, ray) + t * (dot(to, ray) - dot(from, ray)) >= 0;
}

/* Distance of anchor i to the nearest edge that closes the concrete in that direction, at right
 * angles to it (never farther than along the ray). */
static double side_distance(const struct pattern *p, size_t i, unsigned edge, struct vec2 ray)
{
	double least = HUGE_VAL;
	for (size_t e = 0; e < p->edge_count; e++) {
		double distance = p->distance[i * p->edge_count + e];
		if (e != edge - 1 && distance < least && meets(p->at[i], ray, &p->edge[e]))
			least = distance;
	}
	return least;
}

static void sort_along(double x[], double low[], double high[], size_t n)
{
	for (size_t i = 1; i < n; i++)
		for (size_t k = i; k > 0 && x[k] < x[k - 1]; k--) {
			double swap[3] = {x[k], low[k], high[k]};
			x[k] = x[k - 1], low[k] = low[k - 1], high[k] = high[k - 1];
			x[k - 1] = swap[0], low[k - 1] = swap[1], high[k - 1] = swap[2];
		}
}

/* no edge known: a corner on both sides at the clear distance, of one anchor */
static void measure_virtual(const struct pattern *p, uint64_t anchors, struct row *out)
{
	out->c1 = out->side[0] = out->side[1] = p->clear;
	out->width = 2 * p->clear;
	for (size_t i = 0; i < p->count; i++)
		if (anchors >> i & 1) {
			out->centre = p->at[i];
			out->count++;
		}
}

/* Places along the edge with how far the body reaches to either side; returns their number. */
static size_t place_anchors(const struct pattern *p, uint64_t anchors, unsigned edge,
                            struct row *row, double x[], double low[], double high[])
{
	const struct segment *line = &p->edge[edge - 1];
	double length = hypot(line->to.x - line->from.x, line->to.y - line->from.y);
	struct vec2 along = {(line->to.x - line->from.x) / length,
	                     (line->to.y - line->from.y) / length};
	size_t n = 0;
	for (size_t i = 0; i < p->count; i++) {
		if (!(anchors >> i & 1))
			continue;
		x[n] = dot(less(p->at[i], line->from), along);
		low[n] = side_distance(p, i, edge, (struct vec2){-along.x, -along.y});
		high[n] = side_distance(p, i, edge, along);
		row->c1 = fmin(row->c1, p->distance[i * p->edge_count + edge - 1]);
		row->side[0] = fmin(row->side[0], low[n]);
		row->side[1] = fmin(row->side[1], high[n++]);
		row->centre.x += p->at[i].x;
		row->centre.y += p->at[i].y;
	}
	return n;
}

static struct row measure(const struct pattern *p, uint64_t anchors, unsigned edge)
{
	struct row row = {.c1 = HUGE_VAL, .side = {HUGE_VAL, HUGE_VAL}};
	double x[MAX_ANCHORS], low[MAX_ANCHORS], high[MAX_ANCHORS], end = -HUGE_VAL;
	if (edge == 0) {
		measure_virtual(p, anchors, &row);
		return row;
	}
	size_t n = row.count = place_anchors(p, anchors, edge, &row, x, low, high);
	row.centre.x /= (double)n;
	row.centre.y /= (double)n;
	sort_along(x, low, high, n);
	for (size_t i = 0; i < n; i++) {
		double reach = EN_BLOWOUT_REACH * row.c1, from = x[i] - fmin(reach, low[i]),
		       to = x[i] + fmin(reach, high[i]);
		row.width += fmax(0, to - fmax(from, end));
		end = fmax(end, to);
		if (i > 0)
			row.spacing = fmax(row.spacing, x[i] - x[i - 1]);
	}
	return row;
}

/* Ac,Nb: 2 c1 upward, downward no farther than the slab */
static double projected(const struct code_facts *f, const struct row *row, struct trace *trace)
{
	double h = en_embedment(f, trace);
	trace_step(trace, "h", "", f->thickness, DIM_LENGTH, "slab", "thickness");
	double below = trace_step(trace, "f_b", "min(2 * c_1, h - h_ef)",
	                          fmin(EN_BLOWOUT_REACH * row->c1, f->thickness - h), DIM_LENGTH,
	                          "EN 1992-4 7.2.1.8", "depth of the body below the head");
	trace_step(trace, "b_b", "", row->width, DIM_LENGTH, "EN 1992-4 7.2.1.8",
	           "width of the body: 2 c1 to each side of every head, overlaps once, cut at edges");
	return trace_step(trace, "A_c_Nb", "(2 * c_1 + f_b) * b_b",
	                  (EN_BLOWOUT_REACH * row->c1 + below) * row->width, DIM_AREA,
	                  "EN 1992-4 7.2.1.8", "body at the side face");
}

static double side_factor(const struct row *row, struct trace *trace)
{
	double side = fmin(row->side[0], row->side[1]);
	if (side >= EN_BLOWOUT_REACH * row->c1)
		return trace_step(trace, "psi_s_Nb", "", 1, DIM_FACTOR, "EN 1992-4 (7.28)",
		                  "no second edge within 2 c1");
	trace_step(trace, "c_2", "", side, DIM_LENGTH, "", "nearest second edge");
	return trace_step(trace, "psi_s_Nb", "0.7 + 0.3 * c_2 / (2 * c_1)",
	                  0.7 + 0.3 * side / (EN_BLOWOUT_REACH * row->c1), DIM_FACTOR,
	                  "EN 1992-4 (7.28)", "corner");
}

static double row_factor(const struct row *row, struct trace *trace)
{
	if (row->count < 2)
		return trace_step(trace, "psi_g_Nb", "", 1, DIM_FACTOR, "EN 1992-4 (7.29)",
		                  "one anchor");
	double n = trace_step(trace, "n", "", (double)row->count, DIM_COUNT, "", "anchors");
	trace_step(trace, "s_2", "", row->spacing, DIM_LENGTH, "",
	           "largest spacing along the edge");
	return trace_step(trace, "psi_g_Nb", "max(1, sqrt(n) + (1 - sqrt(n)) * s_2 / (4 * c_1))",
	                  fmax(1, sqrt(n) + (1 - sqrt(n)) * row->spacing /
	                                            (2 * EN_BLOWOUT_REACH * row->c1)),
	                  DIM_FACTOR, "EN 1992-4 (7.29)", "row");
}

static double characteristic(const struct code_facts *f, const struct row *row, bool cracked,
                             struct trace *trace)
{
	double k = trace_step(trace, "k_5", "", cracked ? EN_K5_CRACKED : EN_K5_UNCRACKED,
	                      DIM_FACTOR, "EN 1992-4 (7.26)",
	                      cracked ? "cracked concrete" : "uncracked concrete");
	double c1 = trace_step(trace, "c_1", "", row->c1, DIM_LENGTH, "",
	                       "nearest anchor to the edge");
	double head = code_input(trace, "A_h", &f->given->head_area, f->head_area, DIM_AREA,
	                       "bearing area of the head");
	double fck = en_fck(f, trace);
	double single = trace_step(trace, "N0_Rk_cb", "k_5 * c_1 * sqrt(A_h) * sqrt(f_ck)",
	                           k * c1 * sqrt(head) * sqrt(fck), DIM_FORCE, "EN 1992-4 (7.26)",
	                           "blow-out of one anchor far from corners");
	double whole = trace_step(trace, "A0_c_Nb", "4 * c_1 * 4 * c_1", 4 * c1 * 4 * c1, DIM_AREA,
	                          "EN 1992-4 (7.27)", "");
	double area = projected(f, row, trace);
	double side = side_factor(row, trace), together = row_factor(row, trace);
	return trace_step(trace, "N_Rk_cb", "N0_Rk_cb * A_c_Nb / A0_c_Nb * psi_s_Nb * psi_g_Nb",
	                  single * area / whole * side * together, DIM_FORCE, "EN 1992-4 (7.25)",
	                  "the eccentricity (7.30) is counted with the load");
}

void en_blowout(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                unsigned edge, bool earthquake, struct group_strength *out, struct trace *trace)
{
	struct row row = measure(p, anchors, edge);
	double c = cos(p->turned), s = sin(p->turned);
	/* along the pattern's axes, as struct group's centre */
	struct vec2 centre = {row.centre.x * c + row.centre.y * s,
	                      row.centre.y * c - row.centre.x * s};
	bool apart = !f->cracked;    /* an earthquake counts the concrete as cracked */
	double resting = characteristic(f, &row, f->cracked, apart && earthquake ? NULL : trace);
	double shaking = apart ? characteristic(f, &row, true, earthquake ? trace : NULL) : resting;
	*out = (struct group_strength){.anchors = anchors, .count = row.count, .edge = edge,
	                               .centre = centre, .lever = EN_BLOWOUT_REACH * row.c1};
	en_finish(f, BLOWOUT, resting, shaking, "N_Rd_cb", "N_Rk_cb", earthquake, out, trace);
}
