/* The turn of three points: the one predicate on which hull, crossing and overlap rest. */
#ifndef TURN_H
#define TURN_H

#include "plane.h"
#include <math.h>

/* Below this sine two directions count as one. Coordinates that were typed with a few digits and
 * then scaled or turned carry a relative rounding of 1e-16; the margin keeps edges of a small piece
 * far from the origin straight. */
#define STRAIGHT_SINE 1e-12

/* Twice the signed area of the triangle a, b, c: positive when c lies left of a -> b. */
static inline double plane_cross(struct vec2 a, struct vec2 b, struct vec2 c)
{
	return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static inline double plane_span(struct vec2 a, struct vec2 b)
{
	double dx = b.x - a.x, dy = b.y - a.y;
	return sqrt(dx * dx + dy * dy);
}

/* +1 left, -1 right, 0 straight on (or a point upon another). */
static inline int plane_turn(struct vec2 a, struct vec2 b, struct vec2 c)
{
	double cross = plane_cross(a, b, c);
	double straight = STRAIGHT_SINE * plane_span(a, b) * plane_span(a, c);
	return (cross > straight) - (cross < -straight);
}

#endif
