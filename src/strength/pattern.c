/* Anchors and edges in one frame, and how far each edge is from each anchor. */
#include "pattern_parts.h"

/* The point of the edge that is nearest to the anchor. */
static struct vec2 nearest_point(const struct segment *edge, struct vec2 anchor)
{
	struct vec2 along = less(edge->to, edge->from);
	double length2 = dot(along, along);
	double share = length2 > 0 ? dot(less(anchor, edge->from), along) / length2 : 0;
	share = fmin(1, fmax(0, share));
	return (struct vec2){edge->from.x + share * along.x, edge->from.y + share * along.y};
}

/* HUGE_VAL where something stands before the edge's nearest point. What stands there is nearer
 * still, so that the nearest edge of an anchor is always seen. */
static double seen_distance(const struct pattern *pattern, size_t anchor, size_t edge)
{
	struct vec2 at = pattern->at[anchor];
	const struct segment *line = &pattern->edge[edge];
	double distance = plane_distance_to_segment(at, line->from, line->to);
	if (distance <= UPON)
		return 0;
	return sees_past(at, nearest_point(line, at), pattern->edge, pattern->edge_count, edge)
	               ? distance
	               : HUGE_VAL;
}

bool pattern_build(const struct vec2 at[], size_t count, double turned, const struct segment *edge,
                   size_t edge_count, double clear, struct arena *arena, struct pattern *out)
{
	*out = (struct pattern){.count = count, .turned = turned, .edge = edge,
	                        .edge_count = edge_count, .clear = clear,
	                        .distance = arena_take(arena, count * edge_count + 1,
	                                               sizeof *out->distance)};
	if (!out->distance)
		return false;
	for (size_t i = 0; i < count; i++)
		out->at[i] = at[i];
	for (size_t i = 0; i < count; i++)
		for (size_t e = 0; e < edge_count; e++)
			out->distance[i * edge_count + e] = seen_distance(out, i, e);
	return true;
}
