/* What can be seen from a point past straight obstacles, and the area that several regions cover
 * together. Pure geometry.
 *
 * Identities: with obstacles that form a convex ring around the point the seen part of a square is
 * the square clipped by the ring; one more obstacle never enlarges it; turning everything changes
 * no area. The union of equal regions is one of them; of regions apart it is their sum. */
#ifndef SIGHT_H
#define SIGHT_H

#include "plane.h"

struct segment { struct vec2 from, to; };
struct polygon { const struct vec2 *at; size_t count; };    /* anticlockwise, simple */

/* Most vertices of a seen region behind `blocks` obstacles: room that plane_seen needs, at most
 * PLANE_SEEN_MOST. Of a region that would need more the rest counts as unseen. */
enum { PLANE_SEEN_MOST = 1202 };
size_t plane_seen_room(size_t blocks);
/* The part of a square that is seen from its centre. `half`: half its side; `turned`: its sides
 * against the axes [rad]. An obstacle through the centre itself (nearer than 1e-9 half) hides all
 * behind its line: of its two sides the one that leaves less counts. Star-shaped about the centre,
 * anticlockwise; returns the vertices in out, 0 where nothing is seen. */
size_t plane_seen(struct vec2 centre, double half, double turned, const struct segment *block,
                  size_t blocks, struct vec2 *out);
/* Whether the straight line from a to b meets no obstacle. */
bool plane_sees(struct vec2 a, struct vec2 b, const struct segment *block, size_t blocks);
/* Area that the polygons cover together, overlaps counted once. Exact but for rounding, also where
 * edges of several polygons coincide. */
double plane_union_area(const struct polygon *list, size_t count);

#endif
