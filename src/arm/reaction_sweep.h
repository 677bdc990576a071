/* The largest reactions of a moving arm: exact over a grid of poses with every sign of speed and acceleration,
 * refined by local search, and a guaranteed upper bound over all poses.
 *
 * Source: structure of the base wrench and trigonometric polynomial bound (Ehlich and Zeller, from memory;
 * own derivation): with P, H of degree at most 1 and 2 in each revolute angle,
 * max |f| <= max over N equally spaced points / cos(pi degree / N), a factor a joint; full circle of every
 * joint; revolute chains only. Tilting, twisting and horizontal force do not depend on joint 1 when it turns
 * about the vertical. */
#ifndef REACTION_SWEEP_H
#define REACTION_SWEEP_H

#include "chain.h"
#include <stdint.h>

enum reaction_kind { REACTION_TILTING, REACTION_HORIZONTAL, REACTION_UPLIFT, REACTION_DOWNFORCE, REACTION_TWISTING, REACTION_KINDS };

struct motion_limits {
	double low[MAX_JOINTS_OF_ARM], high[MAX_JOINTS_OF_ARM];     /* joint ranges [rad or m] */
	double speed[MAX_JOINTS_OF_ARM];                            /* largest [rad/s or m/s] */
	double acceleration[MAX_JOINTS_OF_ARM];                     /* largest [rad/s2 or m/s2] */
	size_t poses;                                               /* a joint, of the grid (joint 1 of a vertical axis: one) */
};

/* One wrench with what makes it. */
struct reaction_at {
	struct base_wrench wrench;
	double value;                                               /* of the kind it is the largest of */
	double q[MAX_JOINTS_OF_ARM], speed[MAX_JOINTS_OF_ARM], acceleration[MAX_JOINTS_OF_ARM];
};
struct reaction_extremes {
	struct reaction_at exact[REACTION_KINDS];
	double bound[REACTION_KINDS];                               /* guaranteed over all poses; HUGE_VAL where none is known */
	size_t poses;                                               /* evaluated */
};

/* A piece of the grid, for threads: poses [from, to) of reaction_sweep_count(). Merge is ordered and exact. */
size_t reaction_sweep_count(const struct chain *chain, const struct motion_limits *limits);
void reaction_sweep(const struct chain *chain, const struct motion_limits *limits, size_t from, size_t to,
                    struct reaction_extremes *out);
void reaction_merge(struct reaction_extremes *into, const struct reaction_extremes *piece);
/* Local search from each extreme, within the joint ranges. Never lowers a value. */
void reaction_refine(const struct chain *chain, const struct motion_limits *limits, struct reaction_extremes *extremes);
void reaction_bound(const struct chain *chain, const struct motion_limits *limits, struct reaction_extremes *extremes);

#endif
