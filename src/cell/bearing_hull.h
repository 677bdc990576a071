/* What a cell stands on, as one convex outline. */
#ifndef BEARING_HULL_H
#define BEARING_HULL_H

#include "arena.h"
#include "cell.h"

/* Hull of all outlines and pads of cell.base, anticlockwise, cell axes [mm]; *count 0 without any.
 * From the arena; NULL without memory. */
struct vec2 *bearing_hull(const struct cell *cell, struct arena *arena, size_t *count);

#endif
