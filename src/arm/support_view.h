/* What anchors feel of a wrench, as a point in a space of three coordinates, and one pose's terms
 * seen there. For the files of this folder.
 *
 *   tension  (tx, ty, Fz) with t = (My + h Fx, -Mx + h Fy), the first moment at floor level when
 *            the mounting face lies h above it (transfer of a moment: M' = M + r x F)
 *   shear    (Fx, Fy, Mz)
 * Units N, N m, m. A round direction does not tell headings apart: its value is x |(p.x, p.y)| +
 * z p.z with x >= 0. */
#ifndef SUPPORT_VIEW_H
#define SUPPORT_VIEW_H

#include "reaction_sweep.h"

enum support_space { SPACE_TENSION, SPACE_SHEAR, SUPPORT_SPACES };

struct support_direction {
	enum support_space space;
	bool round;
	struct vec3 d;           /* round: y unused */
};

/* The terms of a pose, scaled to the limits of the joints, as reaction_view.h. */
struct support_view {
	size_t count;
	struct vec3 still, turn[MAX_JOINTS_OF_ARM], square[MAX_JOINTS_OF_ARM];
	struct vec3 cross[MAX_JOINTS_OF_ARM][MAX_JOINTS_OF_ARM];         /* j < k */
};

/* An upright cylinder that holds every wrench of a pose, by the triangle inequality. */
struct support_outline {
	struct vec3 middle;
	double away;             /* of the middle from the axis of the space */
	double wide, high;       /* radius and half the height, rounding included */
};

struct vec3 support_seen(enum support_space space, double height, const struct base_wrench *wrench);
double support_value(const struct support_direction *direction, struct vec3 at);
void support_view_open(enum support_space space, double height, const struct pose_terms *terms,
                       const struct motion_limits *limits, struct support_view *out);
void support_outline_of(const struct support_view *view, struct support_outline *out);
/* Value that no wrench of the pose passes. */
double support_at_most(const struct support_direction *direction,
                       const struct support_outline *outline);

#endif
