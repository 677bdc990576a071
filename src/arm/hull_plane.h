/* Convex hull of points in a plane, as an outline of edges between numbered points. For the files
 * of this folder; plane_hull does not tell which point a corner is. */
#ifndef HULL_PLANE_H
#define HULL_PLANE_H

#include "../plane/plane.h"

/* Corners anticlockwise into corner[count]; of equal points the first, no point between two corners
 * on a line within rounding. order: room for 2 count. A count. */
size_t hull_plane_corners(const struct vec2 point[], size_t count, size_t order[],
                          size_t corner[]);

#endif
