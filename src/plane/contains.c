#include "turn.h"

double plane_distance_to_segment(struct vec2 point, struct vec2 from, struct vec2 to)
{
	double dx = to.x - from.x, dy = to.y - from.y;
	double px = point.x - from.x, py = point.y - from.y;
	double length2 = dx * dx + dy * dy;
	/* a segment without length is its point; clamping keeps the foot on the segment */
	double along = length2 > 0 ? (px * dx + py * dy) / length2 : 0;
	along = along < 0 ? 0 : along > 1 ? 1 : along;
	struct vec2 foot = {from.x + along * dx, from.y + along * dy};
	return plane_span(point, foot);
}

/* Whether the ray from the point toward +x crosses the edge. The half-open rule (one end counts,
 * the other does not) counts a ray through a vertex once. */
static bool ray_crosses(struct vec2 point, struct vec2 a, struct vec2 b)
{
	if ((a.y > point.y) == (b.y > point.y))
		return false;
	double cross = plane_cross(a, b, point);
	return b.y > a.y ? cross > 0 : cross < 0;
}

bool plane_contains(const struct vec2 *ring, size_t n, struct vec2 point, double tolerance)
{
	bool inside = false;
	for (size_t i = 0; i < n; i++) {
		struct vec2 a = ring[i], b = ring[i + 1 < n ? i + 1 : 0];
		if (plane_distance_to_segment(point, a, b) <= tolerance)
			return true;
		if (ray_crosses(point, a, b))
			inside = !inside;
	}
	return inside;
}
