/* The slow way to the rigid base: no Newton, no clip, none of the program's code. Tests only.
 *
 * The energy is convex, so that its derivative by one unknown, with the others at their best, only
 * rises. Three nested searches for its zero find the equilibrium: settlement inside, the tilts
 * around it. The bed's force is summed over signed triangles, each with the closed form of its
 * pressed part. */
#ifndef SLOW_BASE_H
#define SLOW_BASE_H

#include "../support/random_base.h"

/* Tensions [N] of a case, read from the cell itself. False where a tilt beyond the search's range
 * (a base that pries on a spot without size) would be needed. */
bool slow_tensions(const struct base_case *base_case, double tension[]);

#endif
