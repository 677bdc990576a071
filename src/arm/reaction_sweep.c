/* The sweep over the grid of poses, and the merge of its pieces.
 *
 * Every pose is placed and its terms are found; each kind then asks the pose for more than is
 * known, which most poses deny by their triangle inequality. A first pass over a few poses across
 * the piece raises what is known, so that the second has little to look into. Neither the order nor
 * what is known changes the answer: a pose gives the same one however it is asked, and of equals
 * the first in the grid stands. */
#include "reaction_sweep.h"

#include "pose_frames.h"
#include "pose_grid.h"
#include "pose_reaction.h"
#include <math.h>
#include <string.h>

/* One pose of this many is looked at first; a prime, so that it is no multiple of any usual grid.
 */
enum { SCOUTS = 61 };

void reaction_start(struct reaction_extremes *out)
{
	memset(out, 0, sizeof *out);
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		out->exact[kind].value = -HUGE_VAL;
		out->bound[kind] = HUGE_VAL;
		out->peak[kind] = -1;
	}
}

size_t reaction_sweep_count(const struct chain *chain, const struct motion_limits *limits)
{
	struct prepared_chain prepared;
	struct pose_grid grid;
	chain_prepare(chain, &prepared);
	pose_grid_open(&prepared, limits, GRID_SWEEP, &grid);
	return pose_grid_total(&grid);
}

/* Larger, or equal and earlier in the grid. */
static bool governs(const struct reaction_at *candidate, const struct reaction_at *known)
{
	return candidate->value > known->value ||
	       (candidate->value == known->value && candidate->pose < known->pose);
}

static void ask_pose(const struct pose_terms *terms, const struct motion_limits *limits,
                     size_t pose, const double q[], struct reaction_extremes *into)
{
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		struct reaction_at *known = &into->exact[kind];
		struct reaction_at candidate = {.pose = pose};
		if (!pose_reaction((enum reaction_kind)kind, terms, limits, known->value,
		                   &candidate))
			continue;
		memcpy(candidate.q, q, terms->count * sizeof *q);
		if (governs(&candidate, known))
			*known = candidate;
	}
}

void reaction_sweep(const struct chain *chain, const struct motion_limits *limits, size_t from,
                    size_t to, struct reaction_extremes *into)
{
	struct prepared_chain prepared;
	struct pose_grid grid;
	struct grid_place place;
	struct pose_frames frames;
	struct pose_terms terms;
	if (from >= to)
		return;
	chain_prepare(chain, &prepared);
	pose_grid_open(&prepared, limits, GRID_SWEEP, &grid);
	for (size_t pose = from; pose < to && to - pose > SCOUTS; pose += SCOUTS) {
		pose_grid_place(&grid, pose, &place);
		chain_terms(&prepared, place.q, &terms);
		ask_pose(&terms, limits, pose, place.q, into);
	}
	pose_grid_place(&grid, from, &place);
	for (size_t pose = from, moved = 0; pose < to; pose++) {
		pose_frames_place(&prepared, place.q, moved, &frames);
		pose_frames_terms(&prepared, &frames, &terms);
		ask_pose(&terms, limits, pose, place.q, into);
		moved = pose_grid_next(&grid, &place);
	}
	into->poses += to - from;
}

void reaction_merge(struct reaction_extremes *into, const struct reaction_extremes *piece)
{
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		if (governs(&piece->exact[kind], &into->exact[kind]))
			into->exact[kind] = piece->exact[kind];
		into->peak[kind] = fmax(into->peak[kind], piece->peak[kind]);
	}
	into->poses += piece->poses;
}
