/* Shears between the two ends of what twists the cell: hull corners and signs of a twisting moment
 * give a range of torsion, and the shears of the anchors are linear over it.
 *
 * At an edge the ends need not be the worst: where an anchor just ceases to push outward, the face
 * that breaks out becomes smaller at once. So the places where that happens are looked at on both
 * sides, and a few more between. Shares run from 0, the lower end, to 1. */
#ifndef CHECK_TWIST_H
#define CHECK_TWIST_H

#include "strength/code_strength.h"

enum { MAX_TWISTS = 160 };

/* Shares between the ends to look at, without 0 and 1; none where the ends are the same. `low`,
 * `high`: shears at the ends, cell axes [N]. Returns their number; beyond the room none are given.
 */
size_t twist_shares(const struct code_strength *s, const struct vec2 low[],
                    const struct vec2 high[], double out[MAX_TWISTS]);
/* Shears at a share of the range. */
void twist_between(const struct vec2 low[], const struct vec2 high[], size_t count, double share,
                   struct vec2 out[]);

#endif
