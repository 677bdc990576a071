/* The ways to an arm's reactions, each for one case. For the files of this folder. */
#ifndef ARM_SOURCES_H
#define ARM_SOURCES_H

#include "arm_of_cell.h"
#include "wrench_hull.h"

/* A long computation is cut in so many pieces: enough for a line of progress, few enough that each
 * gains from what it has seen. */
enum { ARM_PIECES = 64 };
enum { PAYLOADS = 2 }; /* with the payload, with an empty gripper */

/* Room for one computation, used again for the next. */
struct arm_work {
	struct reaction_extremes piece[PAYLOADS * ARM_PIECES];
	struct wrench_hull hull;
};

struct arm_build {
	const struct cell *cell;
	const struct pieces *pieces;
	struct arena *arena;
	struct arena *scratch; /* closed behind the last source */
	struct arm_work *work; /* chain alone */
};

extern const char *const arm_case_names[ARM_CASES]; /* "emergency stop" */
/* "emergency stop: search"; "" without memory. */
const char *arm_work_name(struct arena *arena, enum arm_case arm_case, const char *what);

/* Four loads made of the largest of every kind at once, of either vertical force and either sense
 * of twist. The horizontal force H pushes toward +x and the moment M tips toward +x with it, so
 * that they add at the floor; turned through the whole circle. value: [N], [N mm], as
 * reaction_kind. */
struct arm_load_set arm_aligned_loads(struct arena *arena, const double value[REACTION_KINDS],
                                      double weight);

/* Each fills *out; false without memory. `like`: the same source of a cell that differs in the
 * place of its mount alone, or NULL. */
bool arm_chain_source(const struct arm_build *build, enum arm_case arm_case,
                      const struct arm_source *like, bool same_height, struct arm_source *out);
bool arm_swing_source(const struct arm_build *build, enum arm_case arm_case,
                      struct arm_source *out);
bool arm_history_source(const struct arm_build *build, const struct arm_history *row,
                        const struct history_file *file, struct arm_source *out);

#endif
