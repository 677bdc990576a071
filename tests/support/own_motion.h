/* Wrenches of an arm's own motion, made by hand instead of by a chain, and cells that stand under
 * them. Tests only. */
#ifndef OWN_MOTION_H
#define OWN_MOTION_H

#include "cell_text.h"

/* What stands in the place of an emergency stop by chain; `bound` may be empty. */
struct own_motion {
	struct arm_source source;
	struct arm_loads loads;
	const struct arm_loads *arms[MAX_SETUPS];
};
/* The lists must outlive the trials; every setup gets the same. Must not be copied. */
void own_motion_open(struct own_motion *own, const struct arm_load *swept, size_t count,
                     const struct arm_load *bound, size_t bound_count);
/* A cell without reactions of its own, read and checked with them. */
void own_trial_open(struct trial *trial, const char *yaml, const struct own_motion *own,
                    bool trace);

/* The wrench turned by hand about the vertical through the mounting point, standing there [rad]. */
struct arm_load turned_load(const struct arm_load *load, double angle);
/* First moments at floor level of a mounting point at that height, weights in full: sum of N x and
 * N y about the mounting point's foot (My + h Fx, -Mx + h Fy). */
void load_first(const struct arm_load *load, double height, double first[2]);

/* The CSV files of the examples, with which every example can be checked. */
const struct history_files *example_histories(void);

/* sample_lift with the arm by a chain of two joints and its motion, and 40 kg in the middle, so
 * that anchors pull; a hundredth of a second a run. Nothing is missing. */
const char *chain_sample_text(struct arena *arena, const struct change *change, size_t count);
/* The same arm by masses, speeds and stopping times. */
const char *swing_sample_text(struct arena *arena, const struct change *change, size_t count);

#endif
