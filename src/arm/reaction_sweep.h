/* The largest reactions of a moving arm: over a grid of poses with every sign of speed and
 * acceleration, refined by local search, and a guaranteed upper bound over all poses.
 *
 * What is exact. At each pose of the grid, over ALL accelerations within +-limit (a component is
 * linear in them, a resultant convex) and over every joint's speed at -limit, 0 or +limit in every
 * combination. A wrench is no convex function of the speeds, so one between these values can be
 * larger: reaction_refine searches them too, but only locally, and only reaction_bound covers them
 * for certain. Poses between those of the grid: the same.
 *
 * Source: structure of the base wrench (own derivation, pose_terms.c). Bound: a trigonometric
 * polynomial of degree d has max |f| <= max over N > 2 d equally spaced points / cos(pi d / N)
 * (Ehlich and Zeller 1964, from memory; proof in reaction_bound.c), a factor a joint.
 *
 * Identities: exact <= refined <= bound; any cutting of the grid into pieces, in any order, gives
 * the same bytes; turning all signs of the speeds changes nothing. */
#ifndef REACTION_SWEEP_H
#define REACTION_SWEEP_H

#include "chain.h"

/* Tilting: resultant moment about the horizontal axes; horizontal: resultant force in the face;
 * uplift: force along +z, away from the mounting face (negative: the arm always presses);
 * downforce: along -z; twisting: moment about z, either way. "Horizontal" and "z" are those of the
 * mounting face. */
enum reaction_kind {
	REACTION_TILTING,
	REACTION_HORIZONTAL,
	REACTION_UPLIFT,
	REACTION_DOWNFORCE,
	REACTION_TWISTING,
	REACTION_KINDS
};

/* What the joints may do. On either grid a fixed joint has one pose, and so has joint 1 when it
 * turns about the vertical through the base origin: no reaction depends on it then. */
struct motion_limits {
	double low[MAX_JOINTS_OF_ARM];           /* ends of the joint's range [rad or m] */
	double high[MAX_JOINTS_OF_ARM];          /* equal: the joint is fixed */
	double speed[MAX_JOINTS_OF_ARM];         /* largest, >= 0 [rad/s or m/s] */
	double acceleration[MAX_JOINTS_OF_ARM];  /* largest, >= 0 [rad/s2 or m/s2] */
	size_t poses;                            /* of the grid, a joint; ends of the range
	                                          * included, but a full turn has none */
	size_t bound_poses;                      /* for the bound, a joint, on the full circle;
	                                          * 0: as poses; never below 8 */
};

/* One wrench with what makes it. Joints that do not change the value have the acceleration that
 * makes the companion larger: tilting moment, or horizontal force beside the largest tilting
 * moment. */
struct reaction_at {
	struct base_wrench wrench;
	double value;                            /* of its kind [N] or [N m] */
	double q[MAX_JOINTS_OF_ARM], speed[MAX_JOINTS_OF_ARM], acceleration[MAX_JOINTS_OF_ARM];
	size_t pose;                             /* number in the grid of the one it came from */
};
struct reaction_extremes {
	struct reaction_at exact[REACTION_KINDS];  /* value -HUGE_VAL: nothing swept yet */
	double bound[REACTION_KINDS];            /* over all poses; HUGE_VAL: not known */
	double peak[REACTION_KINDS];             /* of reaction_bound_sweep; below 0: not swept */
	size_t poses;                            /* evaluated by reaction_sweep */
};

/* The value of a wrench in one kind. */
double reaction_value(enum reaction_kind kind, const struct base_wrench *wrench);

/* Empties the extremes. */
void reaction_start(struct reaction_extremes *out);
/* Number of poses of the grid; SIZE_MAX when it is that or more. */
size_t reaction_sweep_count(const struct chain *chain, const struct motion_limits *limits);
/* Raises the extremes by the poses [from, to) of the grid. For threads: extremes of its own for
 * each, any pieces in any order, then a merge in any order; every way gives the same bytes. */
void reaction_sweep(const struct chain *chain, const struct motion_limits *limits, size_t from,
                    size_t to, struct reaction_extremes *into);
void reaction_merge(struct reaction_extremes *into, const struct reaction_extremes *piece);

/* Local search, from each extreme and from 40 poses spread over the ranges, over positions within
 * the joint ranges, speeds within their limits and all accelerations. Never lowers a value. A tenth
 * of a second. */
void reaction_refine(const struct chain *chain, const struct motion_limits *limits,
                     struct reaction_extremes *extremes);

/* Sets the bound of every kind: never below the true largest over all positions of revolute joints
 * (the full circle, whatever their ranges), prismatic joints within their ranges, all speeds and
 * accelerations within limits. The looser, the fewer points a joint: a moment's factor is 1.082 a
 * joint with 16, 1.035 with 24, 1.020 with 32; a force's 1.020, 1.009, 1.005. In one call: */
void reaction_bound(const struct chain *chain, const struct motion_limits *limits,
                    struct reaction_extremes *extremes);
/* Or in pieces, as above: all poses [0, count) of the bound's grid, merged by reaction_merge; then
 * the bound from the peaks, HUGE_VAL where none was swept. */
size_t reaction_bound_count(const struct chain *chain, const struct motion_limits *limits);
void reaction_bound_sweep(const struct chain *chain, const struct motion_limits *limits,
                          size_t from, size_t to, struct reaction_extremes *into);
void reaction_bound_from_peaks(const struct chain *chain, const struct motion_limits *limits,
                               struct reaction_extremes *extremes);

#endif
