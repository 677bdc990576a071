/* The largest reaction of one kind at one pose. For the files of this folder. */
#ifndef POSE_REACTION_H
#define POSE_REACTION_H

#include "reaction_sweep.h"

/* Over every speed at -limit, 0 or +limit and all accelerations. Fills wrench, value, speed and
 * acceleration of *out and returns true; or returns false, when no value here can pass `floor` (one
 * that reaches it within rounding may still be given). What is given does not depend on floor. */
bool pose_reaction(enum reaction_kind kind, const struct pose_terms *terms,
                   const struct motion_limits *limits, double floor, struct reaction_at *out);
/* At given speeds within limits, over all accelerations. */
void pose_reaction_at_speed(enum reaction_kind kind, const struct pose_terms *terms,
                            const struct motion_limits *limits, const double speed[],
                            struct reaction_at *out);

#endif
