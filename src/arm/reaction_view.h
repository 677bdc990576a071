/* One pose as one kind of reaction sees it: the terms of the wrench as vectors in a plane, scaled
 * to the limits of the joints, so that the kind's value is a distance. For the files of this
 * folder. */
#ifndef REACTION_VIEW_H
#define REACTION_VIEW_H

#include "../plane/plane.h"
#include "reaction_sweep.h"

/* A one-sided kind (uplift, downforce) is a coordinate, not a distance: its origin is moved so far
 * (shift) that the two have the same order. */
struct reaction_view {
	size_t count;
	/* weight, shift included; A_j x acceleration limit; B_jj x speed limit squared */
	struct vec2 still, turn[MAX_JOINTS_OF_ARM], square[MAX_JOINTS_OF_ARM];
	/* B_jk x both speed limits, j < k */
	struct vec2 cross[MAX_JOINTS_OF_ARM][MAX_JOINTS_OF_ARM];
	/* sums of lengths: of turn; of all speed terms that hold a joint from this one on; of
	 * everything, by which rounding is measured */
	double reach, rest[MAX_JOINTS_OF_ARM + 1], size;
	double shift;            /* distance of the moved origin */
};

void reaction_view_open(enum reaction_kind kind, const struct pose_terms *terms,
                        const struct motion_limits *limits, struct reaction_view *out);
/* Where the value lies for speeds as shares of their limits, without acceleration. */
struct vec2 reaction_view_at(const struct reaction_view *view, const double share[]);

static inline struct vec2 vec2_add_times(struct vec2 a, double by, struct vec2 b)
{
	return (struct vec2){a.x + by * b.x, a.y + by * b.y};
}

#endif
