/* The farthest wrench of one pose in one direction. For the files of this folder. */
#ifndef POSE_SUPPORT_H
#define POSE_SUPPORT_H

#include "support_view.h"

/* How the joints move there; signs of the limits, 0: at rest. An acceleration of 0 does not change
 * the value. */
struct support_choice {
	double value;
	signed char speed[MAX_JOINTS_OF_ARM], acceleration[MAX_JOINTS_OF_ARM];
};

/* Over every speed at -limit, 0 or +limit and all accelerations. False, when no value can pass
 * `floor` and `known` (one that reaches them within rounding may still be given). The value does
 * not depend on them; of equal ones another may be given. *reaches: whether some value may pass
 * `floor`, whatever is known. */
bool pose_support(const struct support_view *view, const struct support_direction *direction,
                  double floor, double known, bool *reaches, struct support_choice *out);
/* Over all accelerations at speeds that are shares of their limits; speed is not written. */
void pose_support_at_speed(const struct support_view *view,
                           const struct support_direction *direction, const double share[],
                           struct support_choice *out);
/* Accelerations and wrench from the signs of the choice, at the speeds of *out. Joints that do not
 * change the value get the acceleration that makes the companions larger: the resultant in the
 * plane of the direction's own space, then that of the other. */
void pose_support_fill(const struct pose_terms *terms, const struct motion_limits *limits,
                       double height, const struct support_direction *direction,
                       const struct support_choice *choice, struct reaction_at *out);

#endif
