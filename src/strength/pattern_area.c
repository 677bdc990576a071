/* Area of the cones of a group: squares around its anchors, each as far as its anchor sees, joined.
 * Sources: ACI 318-19 17.6.2.1.1 and EN 1992-4 7.2.1.4(3) (a rectilinear shape, cut at edges; where
 * the anchors form no rectangle the codes say no more, and the union is never the larger reading).
 *
 * Identities: one anchor far from edges has one square; n anchors far apart have n; anchors upon
 * one another have one; a further edge never enlarges the area. */
#include "pattern_area.h"

#include <string.h>

/* The union is the rectangle of the outer squares if it differs by less than this share. */
#define RECTANGLE_SHARE 1e-9
/* Lengths that differ by less than this share of half a square's side are the same. */
#define SAME_SHARE 1e-9
/* Sine below which an edge is parallel to the squares. */
#define PARALLEL_SINE 1e-9

/* Corners that are kept: so many an anchor, the rest of the room going to whoever needs it first.
 * A region with more loses the corners that cut off least, so that it gets smaller. */
enum { CORNERS = 40, POOL = MAX_ANCHORS * CORNERS };

struct seen_squares {
	size_t count;
	struct polygon square[MAX_ANCHORS];
	struct vec2 pool[POOL + PLANE_SEEN_MOST];
};

/* --- the squares ---------------------------------------------------------------------------- */

static double turn_of(struct vec2 a, struct vec2 b, struct vec2 c)
{
	return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/* The corner whose loss takes away least; the region stays star-shaped. n where there is none. */
static size_t least_corner(const struct vec2 *ring, size_t n, struct vec2 centre)
{
	size_t best = n;
	double least = HUGE_VAL;
	for (size_t i = 0; i < n; i++) {
		struct vec2 a = ring[(i + n - 1) % n], b = ring[(i + 1) % n];
		double lost = turn_of(a, ring[i], b);
		if (lost >= 0 && lost < least && turn_of(centre, a, b) >= 0) {
			least = lost;
			best = i;
		}
	}
	return best;
}

static size_t drop_corners(struct vec2 *ring, size_t n, struct vec2 centre, size_t room)
{
	while (n > room) {
		size_t drop = least_corner(ring, n, centre);
		if (drop == n)
			return 0;
		n--;
		memmove(&ring[drop], &ring[drop + 1], (n - drop) * sizeof *ring);
	}
	return n;
}

static void see_squares(const struct pattern *pattern, uint64_t anchors, double half, double turned,
                        struct seen_squares *out)
{
	size_t used = 0, left = 0;
	for (size_t i = 0; i < pattern->count; i++)
		left += has_anchor(anchors, i);
	out->count = 0;
	for (size_t i = 0; i < pattern->count; i++) {
		if (!has_anchor(anchors, i))
			continue;
		struct vec2 *ring = out->pool + used;
		size_t room = POOL - used - CORNERS * --left;
		size_t n = plane_seen(pattern->at[i], half, turned, pattern->edge,
		                      pattern->edge_count, ring);
		n = drop_corners(ring, n, pattern->at[i], room);
		out->square[out->count++] = (struct polygon){ring, n};
		used += n;
	}
}

/* --- one position of the squares ------------------------------------------------------------ */

/* Grows the box by a point, seen in axes u and v. */
static void box_add(struct box *box, struct vec2 point, struct vec2 u, struct vec2 v)
{
	double x = dot(point, u), y = dot(point, v);
	box->low[0] = fmin(box->low[0], x);
	box->low[1] = fmin(box->low[1], y);
	box->high[0] = fmax(box->high[0], x);
	box->high[1] = fmax(box->high[1], y);
}

/* The edge that ends the reach to one side: parallel to that side, and so far from an anchor of the
 * group. */
static int ending_edge(const struct pattern *pattern, uint64_t anchors, double reach, double half,
                       struct vec2 outward)
{
	for (size_t e = 0; e < pattern->edge_count; e++) {
		struct vec2 along = less(pattern->edge[e].to, pattern->edge[e].from);
		if (fabs(dot(along, outward)) > PARALLEL_SINE * sqrt(dot(along, along)))
			continue;
		for (size_t i = 0; i < pattern->count; i++)
			if (has_anchor(anchors, i) && fabs(distance_of(pattern, i, e) - reach) <=
			                                      SAME_SHARE * half)
				return (int)e;
	}
	return -1;
}

/* The distance as the pattern has it, free of the clipping's rounding. */
static double edge_reach(const struct pattern *pattern, uint64_t anchors, int edge, double reach)
{
	double best = HUGE_VAL;
	for (size_t i = 0; edge >= 0 && i < pattern->count; i++) {
		double distance = distance_of(pattern, i, (size_t)edge);
		if (has_anchor(anchors, i) && fabs(distance - reach) < fabs(best - reach))
			best = distance;
	}
	return edge >= 0 ? best : reach;
}

static void measure_sides(const struct pattern *pattern, uint64_t anchors, double half,
                          const struct box *anchor, const struct box *all, struct cone_area *out)
{
	struct vec2 u = plane_heading(out->turned), v = {-u.y, u.x};
	for (int axis = 0; axis < 2; axis++) {
		struct vec2 way = axis ? v : u, back = {-way.x, -way.y};
		double spread = anchor->high[axis] - anchor->low[axis];
		out->spread[axis] = spread > SAME_SHARE * half ? spread : 0;
		for (int end = 0; end < 2; end++) {
			double reach = end ? all->high[axis] - anchor->high[axis]
			                   : anchor->low[axis] - all->low[axis];
			struct side *side = &out->side[axis][end];
			*side = (struct side){half, false, -1};
			if (reach >= half * (1 - SAME_SHARE))
				continue;
			side->is_cut = true;
			side->edge = ending_edge(pattern, anchors, reach, half, end ? way : back);
			side->reach = edge_reach(pattern, anchors, side->edge, reach);
		}
	}
}

/* Written as the trace writes it, so that both are the same bits. */
static double length_of(const struct cone_area *area, int axis)
{
	double low = area->side[axis][0].reach, high = area->side[axis][1].reach;
	return area->spread[axis] > 0 ? low + area->spread[axis] + high : low + high;
}

static void area_at(const struct pattern *pattern, uint64_t anchors, double half,
                    struct cone_area *out)
{
	struct seen_squares seen;
	struct vec2 u = plane_heading(out->turned), v = {-u.y, u.x};
	struct box anchor = {{HUGE_VAL, HUGE_VAL}, {-HUGE_VAL, -HUGE_VAL}}, all = anchor;
	see_squares(pattern, anchors, half, out->turned, &seen);
	out->area = plane_union_area(seen.square, seen.count);
	for (size_t i = 0; i < pattern->count; i++)
		if (has_anchor(anchors, i))
			box_add(&anchor, pattern->at[i], u, v);
	for (size_t k = 0, i = 0; k < seen.count; k++, i++) {
		for (size_t c = 0; c < seen.square[k].count; c++)
			box_add(&all, seen.square[k].at[c], u, v);
		while (!has_anchor(anchors, i))
			i++;
		out->single[i] = plane_area(seen.square[k].at, seen.square[k].count);
	}
	measure_sides(pattern, anchors, half, &anchor, &all, out);
	double rectangle = length_of(out, 0) * length_of(out, 1);
	/* nothing is seen from an anchor that stands in a corner */
	out->is_rectangle = out->area > 0 &&
	                    fabs(out->area - rectangle) <= RECTANGLE_SHARE * out->area;
	if (out->is_rectangle)
		out->area = rectangle;
}

/* --- the group ------------------------------------------------------------------------------ */

/* The nearest edge within reach, -1 none. */
static int nearest_edge(const struct pattern *pattern, uint64_t anchors, double half)
{
	int nearest = -1;
	double least = half;
	for (size_t e = 0; e < pattern->edge_count; e++)
		for (size_t i = 0; i < pattern->count; i++)
			if (has_anchor(anchors, i) && distance_of(pattern, i, e) < least) {
				least = distance_of(pattern, i, e);
				nearest = (int)e;
			}
	return nearest;
}

/* Direction of the edge [rad], or the pattern's own where the two are parallel or square. */
static double edge_turn(const struct pattern *pattern, int edge)
{
	struct vec2 along = less(pattern->edge[edge].to, pattern->edge[edge].from),
	            u = plane_heading(pattern->turned);
	double length = sqrt(dot(along, along));
	double cosine = fabs(dot(along, u)), sine = fabs(u.x * along.y - u.y * along.x);
	return fmin(cosine, sine) <= PARALLEL_SINE * length ? pattern->turned
	                                                    : atan2(along.y, along.x);
}

void cone_area_measure(const struct pattern *pattern, uint64_t anchors, double half,
                       struct cone_area *out)
{
	/* where no edge is known one may be so near on every side */
	double clear = pattern->clear > 0 ? pattern->clear : HUGE_VAL;
	double reach = fmin(half, clear);
	*out = (struct cone_area){.turned = pattern->turned, .by_edge = -1, .half = reach};
	area_at(pattern, anchors, reach, out);
	int edge = nearest_edge(pattern, anchors, reach);
	if (edge < 0 || edge_turn(pattern, edge) == pattern->turned)
		return;
	struct cone_area other = {.turned = edge_turn(pattern, edge), .by_edge = edge,
	                          .half = reach};
	area_at(pattern, anchors, reach, &other);
	if (other.area < out->area)
		*out = other;
}

double group_area(const struct pattern *pattern, uint64_t anchors, double half,
                  const char *symbol, const char *source, struct trace *trace)
{
	struct cone_area area;
	cone_area_measure(pattern, anchors, half, &area);
	if (trace)
		cone_area_trace(pattern, anchors, half, &area, symbol, source, trace);
	return area.area;
}
