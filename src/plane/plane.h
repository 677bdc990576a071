/* Plane geometry of polygons: no engineering words. Lengths in one unit, anticlockwise positive. */
#ifndef PLANE_H
#define PLANE_H

#include <stdbool.h>
#include <stddef.h>

struct vec2 { double x, y; };

/* Unit vector of a heading [rad]; along an axis its other part is 0 and no 6e-17. */
struct vec2 plane_heading(double heading);

/* Signed area of a closed ring of n points (the last edge runs back to the first). */
double plane_area(const struct vec2 *ring, size_t n);
/* Whether two edges of the ring cross or touch other than at their common point. */
bool plane_self_crossing(const struct vec2 *ring, size_t n);
/* Inside or on the edge (within `tolerance` of it). */
bool plane_contains(const struct vec2 *ring, size_t n, struct vec2 point, double tolerance);
double plane_distance_to_segment(struct vec2 point, struct vec2 from, struct vec2 to);
bool plane_segments_meet(struct vec2 a, struct vec2 b, struct vec2 c, struct vec2 d);
/* Whether the open insides of two simple rings share any area. */
bool plane_rings_overlap(const struct vec2 *a, size_t na, const struct vec2 *b, size_t nb);
/* Convex hull, anticlockwise, no three collinear points; `out` has room for n; returns a count. */
size_t plane_hull(const struct vec2 *points, size_t n, struct vec2 *out);
/* Drops points that lie on the straight line between their neighbours, so that one straight edge is
 * one edge. */
size_t plane_merge_straight(const struct vec2 *ring, size_t n, double tolerance, struct vec2 *out);

#endif
