#include "setting.h"

#include "rating_strength.h"
#include <math.h>

#define FAR 1e9                  /* stands for: there is none [mm] */
#define STRAIGHT_TOLERANCE \
	1e-6 /* a vertex nearer to the line of its neighbours is no corner [mm] */

static struct vec2 on_slab(const struct cell *cell, struct vec2 p)
{
	double c = cos(cell->turned.value), s = sin(cell->turned.value);
	return (struct vec2){cell->standing_at.at[0] + c * p.x - s * p.y,
	                     cell->standing_at.at[1] + s * p.x + c * p.y};
}

static void place_anchors(const struct cell *cell, struct setting *out)
{
	out->placed = is_known(cell->standing_at) && is_known(cell->turned);
	for (size_t i = 0; i < cell->anchors.count; i++)
		out->anchor[i] = out->placed ? on_slab(cell, cell->anchors.at[i])
		                             : cell->anchors.at[i];
}

static bool collect_edges(const struct cell *cell, struct arena *arena, struct setting *out)
{
	const struct ring *outline = &cell->slab.outline;
	const struct joint *joints = cell->slab.joints.rows;
	struct vec2 *corners = arena_take(arena, outline->count + 1, sizeof *corners);
	out->edges = arena_take(arena, outline->count + cell->slab.joints.count + 1,
	                        sizeof *out->edges);
	if (!corners || !out->edges)
		return false;
	/* a straight edge drawn in two pieces is one edge: it must not count twice */
	size_t n = outline->count ? plane_merge_straight(outline->points, outline->count,
	                                                 STRAIGHT_TOLERANCE, corners)
	                          : 0;
	for (size_t i = 0; i < n; i++)
		out->edges[out->edge_count++] = (struct edge_line){corners[i], corners[(i + 1) % n],
		                                                   -1};
	for (size_t i = 0; i < cell->slab.joints.count; i++)
		out->edges[out->edge_count++] = (struct edge_line){
			{joints[i].from.at[0], joints[i].from.at[1]}, {joints[i].to.at[0], joints[i].to.at[1]}, (int)i};
	bool any = out->edge_count > 0;
	out->edges_known = is_known(cell->slab.outline) && is_known(cell->slab.joints) &&
	                   (out->placed || !any);
	return true;
}

static bool measure(const struct cell *cell, struct arena *arena, struct setting *out)
{
	/* without a pattern one nameless anchor stands for all, far from everything */
	size_t n = cell->anchors.count, rows = n > 0 ? n : 1;
	out->edge_distance = arena_take(arena, rows * out->edge_count + 1,
	                                sizeof *out->edge_distance);
	if (!out->edge_distance)
		return false;
	for (size_t k = 0; k < rows * out->edge_count; k++)
		out->edge_distance[k] = FAR;
	for (size_t i = 0; i < MAX_ANCHORS; i++) {
		out->nearest_edge[i] = out->nearest_anchor[i] = FAR;
		out->nearest_edge_index[i] = out->nearest_anchor_index[i] = -1;
	}
	for (size_t i = 0; i < n; i++) {
		for (size_t e = 0; out->placed && e < out->edge_count; e++) {
			double d = plane_distance_to_segment(out->anchor[i], out->edges[e].from,
			                                     out->edges[e].to);
			out->edge_distance[i * out->edge_count + e] = d;
			if (d < out->nearest_edge[i]) {
				out->nearest_edge[i] = d;
				out->nearest_edge_index[i] = (int)e;
			}
		}
		for (size_t j = 0; j < n; j++) {
			double d = hypot(out->anchor[i].x - out->anchor[j].x,
			                 out->anchor[i].y - out->anchor[j].y);
			if (i != j && d < out->nearest_anchor[i]) {
				out->nearest_anchor[i] = d;
				out->nearest_anchor_index[i] = (int)j;
			}
		}
	}
	return true;
}

/* Anchors and edges as the codes' geometry sees them. Where not every edge is known, the measured
 * clear distance stands for all of them. */
static bool build_pattern(const struct cell *cell, struct arena *arena, struct setting *out)
{
	bool edges = out->placed && (out->edges_known || out->clear == 0);
	size_t count = edges ? out->edge_count : 0;
	struct segment *segment = arena_take(arena, count + 1, sizeof *segment);
	out->pattern = arena_take(arena, 1, sizeof *out->pattern);
	if (!segment || !out->pattern)
		return false;
	for (size_t e = 0; e < count; e++)
		segment[e] = (struct segment){out->edges[e].from, out->edges[e].to};
	double clear = !out->edges_known ? out->clear : count == 0 ? HUGE_VAL : 0;
	return pattern_build(out->anchor, cell->anchors.count,
	                     out->placed ? cell->turned.value : 0, segment, count, clear, arena,
	                     out->pattern);
}

static enum status build_codes(const struct cell *cell, struct arena *arena, struct setting *out)
{
	double concrete = out->strength.known ? out->strength.value : 0;
	if (cell->anchors.count == 0 || !code_chosen(cell))
		return DONE;
	if (!build_pattern(cell, arena, out))
		return NO_MEMORY;
	for (int code = 0; code < CODES; code++) {
		if (!method_chosen(cell, (enum method)(METHOD_ACI318 + code)))
			continue;
		out->code[code] = arena_take(arena, 1, sizeof *out->code[code]);
		enum status status =
			out->code[code] ? code_strength_build(cell, (enum code)code, concrete,
		                                              out->pattern, arena,
		                                              out->code[code])
					: NO_MEMORY;
		if (status != DONE)
			return status;
	}
	return DONE;
}

enum status setting_build(const struct cell *cell, struct arena *arena, struct setting *out)
{
	*out = (struct setting){.cell = cell,
	                        .clear = is_known(cell->slab.clear) ? cell->slab.clear.value : 0};
	place_anchors(cell, out);
	if (!collect_edges(cell, arena, out) || !measure(cell, arena, out))
		return NO_MEMORY;
	/* an edge that is drawn nearer than the measured clear distance contradicts it: the nearer
	 * counts */
	for (size_t i = 0; i < cell->anchors.count; i++)
		out->clear = fmin(out->clear, out->nearest_edge[i]);
	concrete_strength(cell, &out->strength, NULL);
	struct judging judging = {.cell = cell, .setting = out};
	for (size_t i = 0; i < cell->anchors.count; i++) {
		struct rating_factors factors;
		rating_strength(&judging, TENSION, (int)i, &factors, NULL, NULL);
		out->allowed_tension[i] = factors.allowed;
		rating_strength(&judging, SHEAR, (int)i, &factors, NULL, NULL);
		out->allowed_shear[i] = factors.allowed;
	}
	return build_codes(cell, arena, out);
}
