#include "facets.h"
#include <math.h>
#include <string.h>

/* Two kinds of line can be extreme: one along an edge of the bed's hull or of the anchors' hull,
 * and one through an anchor that just touches the bed's hull. Every candidate is tried against all
 * points. */
struct search {
	const struct base *base;
	struct vec2 anchor[MAX_ANCHORS];   /* hull of the anchors, anticlockwise [mm] */
	size_t anchor_count;
	double touch;                      /* [mm] */
	double (*facet)[3];
	size_t room, count;
};

static double value_at(const double n[3], struct vec2 at)
{
	return n[0] + n[1] * at.x + n[2] * at.y;
}

/* The line from a to b, normal to the right: an anticlockwise ring lies on the side f <= 0. */
static bool line_through(struct vec2 a, struct vec2 b, double least, double n[3])
{
	double dx = b.x - a.x, dy = b.y - a.y, length = sqrt(dx * dx + dy * dy);
	if (length <= least)
		return false;
	n[1] = dy / length;
	n[2] = -dx / length;
	n[0] = -(n[1] * a.x + n[2] * a.y);
	return true;
}

static bool separates(const struct search *search, const double n[3])
{
	const struct base *base = search->base;
	for (size_t i = 0; i < base->hull_count; i++)
		if (value_at(n, base->hull[i]) > search->touch)
			return false;
	for (size_t i = 0; i < search->anchor_count; i++)
		if (value_at(n, search->anchor[i]) < -search->touch)
			return false;
	return true;
}

/* Two lines are one when they run alike and pass the base's middle at the same distance. */
static bool same_line(const struct search *search, const double a[3], const double b[3])
{
	struct vec2 middle = {search->base->centre[0], search->base->centre[1]};
	return fabs(a[1] - b[1]) <= FACET_SHARE && fabs(a[2] - b[2]) <= FACET_SHARE
	       && fabs(value_at(a, middle) - value_at(b, middle)) <= search->touch;
}

static void consider(struct search *search, struct vec2 a, struct vec2 b)
{
	double n[3];
	if (!line_through(a, b, search->touch, n) || !separates(search, n) ||
	    search->count == search->room)
		return;
	for (size_t i = 0; i < search->count; i++)
		if (same_line(search, search->facet[i], n))
			return;
	memcpy(search->facet[search->count++], n, sizeof n);
}

static double turn(struct vec2 from, struct vec2 a, struct vec2 b)
{
	return (a.x - from.x) * (b.y - from.y) - (a.y - from.y) * (b.x - from.x);
}

/* The two points of the hull at which lines through `from` touch it. Seen from outside, the hull
 * lies within less than half a turn, so one pass that keeps the outermost points is enough. */
static void consider_tangents(struct search *search, struct vec2 from)
{
	const struct base *base = search->base;
	struct vec2 left = base->hull[0], right = base->hull[0];
	for (size_t i = 1; i < base->hull_count; i++) {
		struct vec2 at = base->hull[i];
		left = turn(from, left, at) > 0 ? at : left;
		right = turn(from, right, at) < 0 ? at : right;
	}
	consider(search, right, from);
	consider(search, from, right);
	consider(search, left, from);
	consider(search, from, left);
}

enum status facets_find(struct base *base, struct arena *arena)
{
	struct search search = {.base = base, .touch = FACET_SHARE * base->size};
	search.anchor_count = plane_hull(base->anchor_mm, base->anchor_count, search.anchor);
	/* a cone in three dimensions has no more facets than generators */
	search.room = base->hull_count + search.anchor_count;
	search.facet = arena_take(arena, search.room, sizeof *search.facet);
	if (!search.facet)
		return NO_MEMORY;
	for (size_t i = 0; i < base->hull_count; i++)
		consider(&search, base->hull[i], base->hull[(i + 1) % base->hull_count]);
	for (size_t i = 0; i < search.anchor_count; i++) {
		struct vec2 a = search.anchor[i], b = search.anchor[(i + 1) % search.anchor_count];
		/* the anchors lie on the other side than the bed */
		consider(&search, b, a);
		consider_tangents(&search, a);
	}
	base->facet = search.facet;
	base->facet_count = search.count;
	return DONE;
}
