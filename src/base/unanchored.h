/* The cell before it is anchored, on its feet or on casters: at what tilt of the floor and by what
 * push it tips over.
 *
 * Source: statics of a rigid body about the edges of its support (own derivation). Level floor,
 * weight through the centre of mass at height z; d is the distance of its projection to the line
 * about which the cell tips:
 *   tilt about that line   tan(angle) = d / z,      push at height hp   F hp = W d.
 * Casters: the contact of each lies anywhere on a circle of its trail about its swivel axis, and
 * all may point the same way. In the direction u the support then reaches at least
 * max_i (p_i.u - trail_i), so the worst distance over all swivel positions and directions is
 *   d = min over u of max_i ((p_i - c).u - trail_i),
 * exact by trying the direction of every pair of casters that governs together, and of each alone.
 * The 10 degree comparison: IEC 60950-1 4.1 and IEC 61010-1 7.4 (from memory; a 10 degree test was
 * seen for another product standard).
 *
 * Range: rigid cell and floor, a still arm in the pose that tips the most (the caller finds it),
 * drives off; slow push; nothing about sliding, rolling, a step in the floor or a running arm.
 * Identities: without trail casters are their hull; equal trails take themselves off the hull's
 * distance; the push is proportional to the weight and to 1/height; 10 degrees need d >= 0.176 z.
 * Units: mm, N, rad. Errors: free_standing_fault, by name of what is wrong. */
#ifndef UNANCHORED_H
#define UNANCHORED_H

#include "../cell/trace.h"
#include "../plane/plane.h"

struct free_standing {
	double weight;               /* the least one counts [N] */
	double centre[3];            /* of mass: x, y, height above the floor [mm] */
	double push_height;          /* of a horizontal push above the floor [mm]; 0: none asked */
};

struct wheel {
	struct vec2 at;              /* swivel axis, or contact of a fixed wheel [mm] */
	double trail; /* of the contact behind the axis; 0: fixed wheel or foot [mm] */
};

struct tip_over {
	bool stands;                 /* without any push: the load lies inside its support */
	double distance;             /* to the worst line; negative: outside [mm] */
	double tilt; /* of the floor at which it tips; 0 where it does not stand [rad] */
	double push;                 /* that tips it; HUGE_VAL where none was asked [N] */
	double heading;              /* toward which it tips [rad] */
	size_t first, second;        /* corners or casters that it tips about */
	bool withstands_ten_degrees; /* tilt above 10 degrees; at 10 it is at its limit */
};

/* Why the numbers cannot be, with what to write; NULL when they can. */
const char *free_standing_fault(const struct free_standing *cell);
const char *wheel_fault(const struct wheel *caster, size_t count);

/* On the convex hull of what bears on the floor (plane_hull), at least one point. */
void tipping_on_hull(const struct vec2 *hull, size_t count, const struct free_standing *cell,
                     struct tip_over *out, struct trace *trace);
/* On casters in their worst swivel position, at least one. Time goes with the cube of the count. */
void tipping_on_casters(const struct wheel *caster, size_t count, const struct free_standing *cell,
                        struct tip_over *out, struct trace *trace);

#endif
