/* Anchors as seen from each edge, and the face of concrete that some of them would push out. */
#include "pattern_parts.h"

#include <string.h>

/* Half the width of a face of concrete, and how far past an edge's end an anchor still uses it, in
 * distances from the edge: ACI 318-19 17.7.2.1.3, EN 1992-4 (7.44). */
#define FACE_REACH 1.5

/* The edge from one side: its end on the left when one looks out of the concrete is x = 0. */
struct face_axes { struct vec2 start, toward, along; double length; };

/* side +1: the concrete lies left of from -> to; -1: right. False: an edge without length. */
static bool axes_of(const struct segment *edge, int side, struct face_axes *out)
{
	struct vec2 way = less(edge->to, edge->from);
	out->length = sqrt(dot(way, way));
	if (!(out->length > UPON))
		return false;
	out->along = (struct vec2){side * way.x / out->length, side * way.y / out->length};
	out->toward = (struct vec2){out->along.y, -out->along.x};
	out->start = side > 0 ? edge->from : edge->to;
	return true;
}

/* Past an end the edge counts where the concrete goes on there: where the anchor sees the foot of
 * its perpendicular on the edge's line. Behind a corner that points outward the other edge hides
 * it. */
static bool concerns(const struct pattern *pattern, size_t i, size_t edge,
                     const struct face_axes *axes, double x, double distance)
{
	double past = fmax(fmax(-x, x - axes->length), 0);
	if (distance < 0 || distance_of(pattern, i, edge) == HUGE_VAL)
		return false;
	if (past <= UPON)
		return true;
	struct vec2 foot = {pattern->at[i].x + distance * axes->toward.x,
	                    pattern->at[i].y + distance * axes->toward.y};
	return past <= FACE_REACH * distance &&
	       sees_past(pattern->at[i], foot, pattern->edge, pattern->edge_count, edge);
}

/* Rows from the nearest on; each is as near as its nearest anchor. */
static void sort_rows(struct edge_view *view)
{
	uint64_t left = view->anchors;
	view->row_count = 0;
	while (left) {
		double nearest = HUGE_VAL;
		for (size_t i = 0; i < MAX_ANCHORS; i++)
			if (has_anchor(left, i))
				nearest = fmin(nearest, view->distance[i]);
		/* a hair less than the share, a hair more than none: decimal input in binary */
		double most = nearest + ROW_SHARE * nearest * (1 - END_SHARE) + END_SHARE;
		uint64_t row = 0;
		for (size_t i = 0; i < MAX_ANCHORS; i++)
			if (has_anchor(left, i) && view->distance[i] < most)
				row |= (uint64_t)1 << i;
		view->row[view->row_count] = row;
		view->row_distance[view->row_count++] = nearest;
		left &= ~row;
	}
}

/* False: no anchor stands on this side. */
static bool view_open(const struct pattern *pattern, size_t edge, int side, struct edge_view *out)
{
	struct face_axes axes;
	*out = (struct edge_view){.edge = (unsigned)edge + 1};
	if (!axes_of(&pattern->edge[edge], side, &axes))
		return false;
	out->toward = axes.toward;
	out->along = axes.along;
	for (size_t i = 0; i < pattern->count; i++) {
		struct vec2 from_start = less(pattern->at[i], axes.start);
		double x = dot(from_start, axes.along), distance = -dot(from_start, axes.toward);
		/* one upon the edge itself is on both sides */
		distance = fabs(distance) <= UPON ? 0 : distance;
		out->x[i] = x;
		out->distance[i] = distance;
		if (concerns(pattern, i, edge, &axes, x, distance))
			out->anchors |= (uint64_t)1 << i;
	}
	sort_rows(out);
	return out->anchors != 0;
}

bool edge_views(const struct pattern *pattern, struct arena *arena, struct edge_view **out,
                size_t *count)
{
	struct edge_view view;
	size_t views = 0;
	*out = NULL;
	*count = 0;
	for (size_t e = 0; e < pattern->edge_count; e++)
		for (int side = 1; side >= -1; side -= 2)
			views += view_open(pattern, e, side, &view);
	if (views == 0)
		return true;
	struct edge_view *list = arena_take(arena, views, sizeof *list);
	if (!list)
		return false;
	for (size_t e = 0; e < pattern->edge_count; e++)
		for (int side = 1; side >= -1; side -= 2)
			if (*count < views && view_open(pattern, e, side, &list[*count]))
				++*count;
	*out = list;
	return true;
}

/* --- the face that is pushed out ------------------------------------------------------------ */

/* The part of an obstacle that lies in the band 0 < distance from the edge <= deep, as its reach
 * along the edge. False: none of it. */
static bool in_band(const struct segment *block, const struct face_axes *axes, double deep,
                    double reach[2])
{
	struct vec2 a = less(block->from, axes->start), b = less(block->to, axes->start);
	double xa = dot(a, axes->along), ya = -dot(a, axes->toward);
	double xb = dot(b, axes->along), yb = -dot(b, axes->toward);
	if (fmax(ya, yb) <= UPON || fmin(ya, yb) > deep + UPON)
		return false;
	/* what goes on in line with the edge or away from it is none: above */
	double low = 0, high = 1, rise = yb - ya;
	if (fmin(ya, yb) < 0)
		*(ya < yb ? &low : &high) = (0 - ya) / rise;
	if (fmax(ya, yb) > deep && fmin(ya, yb) < deep)
		*(ya < yb ? &high : &low) = (deep - ya) / rise;
	double from = xa + low * (xb - xa), to = xa + high * (xb - xa);
	reach[0] = fmin(from, to);
	reach[1] = fmax(from, to);
	return true;
}

/* Free concrete to both sides of one anchor along the edge. */
static void free_sides(const struct pattern *pattern, const struct edge_view *view,
                       const struct face_axes *axes, size_t i, double side[2])
{
	double x = view->x[i], reach[2];
	side[0] = side[1] = HUGE_VAL;
	for (size_t e = 0; e < pattern->edge_count; e++) {
		if (e == view->edge - 1 ||
		    !in_band(&pattern->edge[e], axes, view->distance[i], reach))
			continue;
		/* one that runs over the anchor itself ends both */
		if (reach[0] <= x + UPON)
			side[0] = fmin(side[0], fmax(0, x - reach[1]));
		if (reach[1] >= x - UPON)
			side[1] = fmin(side[1], fmax(0, reach[0] - x));
	}
}

struct stretch { double x, from, to; };

/* The anchors in the order along the edge, each with its stretch of the face. */
static size_t stretches(const struct pattern *pattern, const struct edge_view *view,
                        uint64_t anchors, double c1, struct edge_front *out,
                        struct stretch list[MAX_ANCHORS])
{
	struct face_axes axes = {.toward = view->toward, .along = view->along};
	const struct segment *edge = &pattern->edge[view->edge - 1];
	size_t count = 0;
	axes.start = dot(less(edge->to, edge->from), view->along) > 0 ? edge->from : edge->to;
	for (size_t i = 0; i < pattern->count; i++) {
		if (!has_anchor(anchors, i))
			continue;
		double side[2];
		free_sides(pattern, view, &axes, i, side);
		out->side[0] = fmin(out->side[0], side[0]);
		out->side[1] = fmin(out->side[1], side[1]);
		struct stretch one = {view->x[i], view->x[i] - fmin(FACE_REACH * c1, side[0]),
		                      view->x[i] + fmin(FACE_REACH * c1, side[1])};
		size_t k = count++;
		for (; k > 0 && list[k - 1].x > one.x; k--)
			list[k] = list[k - 1];
		list[k] = one;
	}
	return count;
}

void edge_front_measure(const struct pattern *pattern, const struct edge_view *view,
                        uint64_t anchors, double c1, struct edge_front *out)
{
	struct stretch list[MAX_ANCHORS];
	*out = (struct edge_front){.side = {HUGE_VAL, HUGE_VAL}};
	out->count = stretches(pattern, view, anchors, c1, out, list);
	double sum = 0, end = -HUGE_VAL;
	for (size_t k = 0; k < out->count; k++) {
		sum += list[k].x;
		out->width += fmax(0, list[k].to - fmax(list[k].from, end));
		end = fmax(end, list[k].to);
		if (k > 0)
			out->spacing = fmax(out->spacing, list[k].x - list[k - 1].x);
	}
	if (out->count > 0)
		out->centre = sum / (double)out->count;
}
