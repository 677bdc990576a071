/* Area of a union by vertical strips: from vertex to vertex and from crossing to crossing no edge
 * begins, ends or changes its place among the others, so that the covered length grows linearly and
 * its middle value times the width is exact. Edges that coincide, or all but, change places within
 * a hair and with that by no area: nothing here has to decide whether two edges are the same. */
#include "sight.h"
#include "turn.h"

/* Edges that one upright line meets; polygons beyond are left out, which makes the area smaller. */
enum { MOST_ACTIVE = 1024 };

/* An edge across a strip: its heights at both ends; +1 where the polygon begins above it. */
struct active { double low, high; int sense; };
struct strip { double from, to; size_t count; struct active edge[MOST_ACTIVE]; };

/* Height of the edge a -> b. */
static double height(struct vec2 a, struct vec2 b, double x)
{
	return a.y + (b.y - a.y) * ((x - a.x) / (b.x - a.x));
}

static void add_polygon(struct strip *strip, const struct polygon *polygon, struct vec2 origin)
{
	size_t before = strip->count;
	for (size_t i = 0; i < polygon->count; i++) {
		struct vec2 a = polygon->at[i], b = polygon->at[i + 1 < polygon->count ? i + 1 : 0];
		bool spans = (a.x <= strip->from && b.x >= strip->to) ||
		             (b.x <= strip->from && a.x >= strip->to);
		if (!spans)
			continue;
		if (strip->count == MOST_ACTIVE) {
			strip->count = before;
			return;
		}
		strip->edge[strip->count++] = (struct active){height(a, b, strip->from) - origin.y,
		                                              height(a, b, strip->to) - origin.y,
		                                              a.x < b.x ? 1 : -1};
	}
}

static bool is_above(const struct active *a, const struct active *b)
{
	return a->low != b->low ? a->low > b->low : a->high > b->high;
}

/* By insertion: few edges, and mostly in order from one polygon to the next. */
static void sort(struct strip *strip)
{
	for (size_t i = 1; i < strip->count; i++) {
		struct active edge = strip->edge[i];
		size_t k = i;
		for (; k > 0 && is_above(&strip->edge[k - 1], &edge); k--)
			strip->edge[k] = strip->edge[k - 1];
		strip->edge[k] = edge;
	}
}

/* Length that is covered at this share of the strip's width, with the edges in their order there.
 */
static double covered(const struct strip *strip, double share)
{
	double length = 0, begun = 0;
	int depth = 0;
	for (size_t i = 0; i < strip->count; i++) {
		const struct active *edge = &strip->edge[i];
		double y = edge->low + (edge->high - edge->low) * share;
		if (depth <= 0 && depth + edge->sense > 0)
			begun = y;
		if (depth > 0 && depth + edge->sense <= 0)
			length += y - begun;
		depth += edge->sense;
	}
	return length;
}

/* The neighbours that change places next, and where (share of the width). Returns the lower one's
 * number, count where no more do. */
static size_t next_crossing(const struct strip *strip, double *share)
{
	size_t next = strip->count;
	*share = 1;
	for (size_t i = 0; i + 1 < strip->count; i++) {
		const struct active *a = &strip->edge[i], *b = &strip->edge[i + 1];
		if (!(a->high > b->high))
			continue;
		double apart = b->low - a->low, over = a->high - b->high;
		double at = apart > 0 ? apart / (apart + over) : 0;
		if (next == strip->count || at < *share) {
			*share = at;
			next = i;
		}
	}
	return next;
}

static double strip_area(struct strip *strip)
{
	double area = 0, from = 0;
	/* every change of places undoes one disorder of the right end, so they come to an end */
	for (;;) {
		double to;
		size_t k = next_crossing(strip, &to);
		to = fmax(from, to);
		area += (to - from) * covered(strip, (from + to) / 2);
		if (k == strip->count)
			return area * (strip->to - strip->from);
		from = to;
		struct active keep = strip->edge[k];
		strip->edge[k] = strip->edge[k + 1];
		strip->edge[k + 1] = keep;
	}
}

/* The leftmost vertex right of x; HUGE_VAL none. */
static double next_vertex(const struct polygon *list, size_t count, double x)
{
	double next = HUGE_VAL;
	for (size_t p = 0; p < count; p++)
		for (size_t i = 0; i < list[p].count; i++)
			if (list[p].at[i].x > x && list[p].at[i].x < next)
				next = list[p].at[i].x;
	return next;
}

double plane_union_area(const struct polygon *list, size_t count)
{
	struct strip strip;
	struct vec2 origin = {0, 0};
	double area = 0;
	for (size_t p = 0; p < count; p++)
		if (list[p].count > 0)
			origin = list[p].at[0];
	strip.from = next_vertex(list, count, -HUGE_VAL);
	for (; strip.from < HUGE_VAL; strip.from = strip.to) {
		strip.to = next_vertex(list, count, strip.from);
		if (!(strip.to < HUGE_VAL))
			break;
		strip.count = 0;
		for (size_t p = 0; p < count; p++)
			add_polygon(&strip, &list[p], origin);
		sort(&strip);
		area += strip_area(&strip);
	}
	return area;
}
