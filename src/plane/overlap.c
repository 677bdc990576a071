/* Overlap of two simple rings, right on touching input. If the insides share area, then either the
 * edges cross, or some piece of one boundary lies inside the other ring, or the boundaries coincide
 * where both rings lie on the same side. Boundaries are cut at the other ring's vertices, so that a
 * piece lies inside, outside or upon the other as a whole and its middle point tells which. */
#include "turn.h"

/* Touching is judged to this share of the two rings' extent: pads set out edge to edge by sums of
 * decimal fractions miss each other by rounding only. */
#define TOUCH_SHARE 1e-9
/* Pieces shorter than so many touching distances say nothing: their middle is near a corner. */
#define SHORT_PIECE 4

struct span { struct vec2 low, high; };

static void span_add(struct span *span, const struct vec2 *ring, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		span->low.x = fmin(span->low.x, ring[i].x);
		span->low.y = fmin(span->low.y, ring[i].y);
		span->high.x = fmax(span->high.x, ring[i].x);
		span->high.y = fmax(span->high.y, ring[i].y);
	}
}

static double touch_distance(const struct vec2 *a, size_t na, const struct vec2 *b, size_t nb)
{
	struct span span = {a[0], a[0]};
	span_add(&span, a, na);
	span_add(&span, b, nb);
	return TOUCH_SHARE * plane_span(span.low, span.high);
}

/* Signed distance of the point from the line a-b, left positive. */
static double off_line(struct vec2 a, struct vec2 b, struct vec2 point)
{
	double length = plane_span(a, b);
	return length > 0 ? plane_cross(a, b, point) / length : 0;
}

/* Whether one end lies clearly left and the other clearly right. */
static bool straddles(struct vec2 a, struct vec2 b, struct vec2 c, struct vec2 d, double touch)
{
	double to_c = off_line(a, b, c), to_d = off_line(a, b, d);
	return (to_c > touch && to_d < -touch) || (to_c < -touch && to_d > touch);
}

static bool edges_cross(const struct vec2 *a, size_t na, const struct vec2 *b, size_t nb,
                        double touch)
{
	for (size_t i = 0; i < na; i++) {
		struct vec2 p = a[i], q = a[(i + 1) % na];
		for (size_t k = 0; k < nb; k++) {
			struct vec2 r = b[k], s = b[(k + 1) % nb];
			if (straddles(p, q, r, s, touch) && straddles(r, s, p, q, touch))
				return true;
		}
	}
	return false;
}

enum side { OUTSIDE, UPON_SAME, UPON_OTHER, INSIDE };

/* Where the point of a boundary that runs along `direction` lies in the ring. Upon an edge it
 * matters whether the ring's inside is on the same side; `sense` is the product of both rings'
 * orientations. */
static enum side side_of(struct vec2 point, struct vec2 direction, double sense,
                         const struct vec2 *ring, size_t n, double touch)
{
	for (size_t i = 0; i < n; i++) {
		struct vec2 a = ring[i], b = ring[(i + 1) % n];
		if (plane_distance_to_segment(point, a, b) > touch)
			continue;
		double along = direction.x * (b.x - a.x) + direction.y * (b.y - a.y);
		return along * sense > 0 ? UPON_SAME : UPON_OTHER;
	}
	return plane_contains(ring, n, point, 0) ? INSIDE : OUTSIDE;
}

/* The next place after `from` (share of p-q) where a vertex of the ring lies upon it; 1 if none. */
static double next_cut(struct vec2 p, struct vec2 q, double from, const struct vec2 *ring, size_t n,
                       double touch)
{
	double length2 = (q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y);
	double beyond = from + SHORT_PIECE * touch / sqrt(length2), next = 1;
	for (size_t k = 0; k < n; k++) {
		if (plane_distance_to_segment(ring[k], p, q) > touch)
			continue;
		double at = ((ring[k].x - p.x) * (q.x - p.x) + (ring[k].y - p.y) * (q.y - p.y)) /
		            length2;
		if (at > beyond && at < next)
			next = at;
	}
	return next;
}

static bool edge_shows_overlap(struct vec2 p, struct vec2 q, double sense, const struct vec2 *ring,
                               size_t n, double touch)
{
	if (plane_span(p, q) <= touch)
		return false;
	for (double from = 0, to; from < 1; from = to) {
		to = next_cut(p, q, from, ring, n, touch);
		if ((to - from) * plane_span(p, q) <= SHORT_PIECE * touch)
			continue;
		double half = (from + to) / 2;
		struct vec2 middle = {p.x + half * (q.x - p.x), p.y + half * (q.y - p.y)};
		struct vec2 direction = {q.x - p.x, q.y - p.y};
		enum side side = side_of(middle, direction, sense, ring, n, touch);
		if (side == INSIDE || side == UPON_SAME)
			return true;
	}
	return false;
}

bool plane_rings_overlap(const struct vec2 *a, size_t na, const struct vec2 *b, size_t nb)
{
	if (na < 3 || nb < 3)
		return false;
	double touch = touch_distance(a, na, b, nb);
	double sense = plane_area(a, na) * plane_area(b, nb);
	/* a ring without area has no inside */
	if (sense == 0)
		return false;
	if (edges_cross(a, na, b, nb, touch))
		return true;
	for (size_t i = 0; i < na; i++)
		if (edge_shows_overlap(a[i], a[(i + 1) % na], sense, b, nb, touch))
			return true;
	for (size_t k = 0; k < nb; k++)
		if (edge_shows_overlap(b[k], b[(k + 1) % nb], sense, a, na, touch))
			return true;
	return false;
}
