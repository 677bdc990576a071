/* Local search for a farther wrench in one direction. For the files of this folder. */
#ifndef SUPPORT_REFINE_H
#define SUPPORT_REFINE_H

#include "pose_grid.h"
#include "support_view.h"

/* From a wrench of the grid over positions within the joint ranges, speeds within their limits and
 * all accelerations. Never lowers the value in the direction, which it writes to at->value. At most
 * some 10 000 evaluations of a pose, usually 1000. */
void support_refine(const struct prepared_chain *chain, const struct motion_limits *limits,
                    const struct pose_grid *grid, double height,
                    const struct support_direction *direction, struct reaction_at *at);

#endif
