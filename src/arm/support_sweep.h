/* One pass over the grid of poses with many directions at once: the farthest wrench in each. For
 * the files of this folder.
 *
 * Cut in pieces of fixed number that write apart; what a pose gives does not depend on what is
 * known beforehand, the larger value stands and of equals the first pose, so threads and their
 * order do not matter. */
#ifndef SUPPORT_SWEEP_H
#define SUPPORT_SWEEP_H

#include "../cell/arena.h"
#include "../cell/given.h"
#include "../cell/pieces.h"
#include "pose_grid.h"
#include "support_view.h"

/* Directions of one pass; pieces of a pass; blocks of poses that are looked at or left out. */
enum { MAX_ASKS = 1024, SUPPORT_PIECES = 32, MAX_BLOCKS = 65536 };

struct support_found {
	double value;                            /* -HUGE_VAL: nothing */
	size_t pose;
};
struct support_ask {
	struct support_direction direction;
	double floor;                            /* only what passes it is looked for */
	size_t seed[3];                          /* poses to look at first */
	size_t seeds;
	struct support_found found;
};

struct support_sweep {
	const struct motion_limits *limits;
	struct prepared_chain chain;
	struct pose_grid grid;
	double height;                           /* of the mounting point above the floor [m] */
	struct support_ask *ask;                 /* room for MAX_ASKS */
	size_t asks;
	bool wanted[SUPPORT_SPACES];             /* some ask is in that space */
	size_t total, block, blocks;             /* poses; poses of a block; blocks */
	unsigned char *dead;                     /* a block each: none of its poses can answer */
	bool drop;                               /* leave out from now on what cannot answer now */
	struct support_found *found;             /* [SUPPORT_PIECES][MAX_ASKS] */
};

/* NO_MEMORY, or DONE. *limits must stay. */
enum status support_sweep_open(const struct chain *chain, const struct motion_limits *limits,
                               double height, struct arena *arena, struct support_sweep *out);
/* Answers all asks, from the whole grid but the dead blocks. */
void support_sweep_run(struct support_sweep *sweep, const struct pieces *pieces);
/* The wrench behind an answer. */
void support_sweep_wrench(const struct support_sweep *sweep, const struct support_ask *ask,
                          struct reaction_at *out);

#endif
