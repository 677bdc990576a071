/* The judges of the check files, for the table alone. */
#ifndef CHECK_FILES_H
#define CHECK_FILES_H

#include "check_table.h"

#define JUDGE(name) \
	void name##_judge(const struct judging *judging, int anchor, struct finding *out)
JUDGE(loads_given);
JUDGE(rating_tension);
JUDGE(rating_shear);
JUDGE(rating_interaction);
JUDGE(rating_bound);
JUDGE(needs);
JUDGE(concrete_strength);
JUDGE(concrete_condition);
JUDGE(slab_thickness);
JUDGE(slab_carries);
JUDGE(hole_depth);
JUDGE(anchor_length);
JUDGE(anchor_spacing);
JUDGE(anchor_edge);
JUDGE(anchor_gapping);
JUDGE(anchor_fatigue);
JUDGE(base_stability);
JUDGE(base_stiff);
JUDGE(stand_off);
#undef JUDGE

double rating_tension_ratio(const struct judging *judging, int anchor);
double rating_shear_ratio(const struct judging *judging, int anchor);
double rating_interaction_ratio(const struct judging *judging, int anchor);
double rating_bound_ratio(const struct judging *judging, int anchor);
const char *rating_bound_left_out(const struct cell *cell);
const char *anchor_gapping_left_out(const struct cell *cell);
const char *anchor_fatigue_left_out(const struct cell *cell);
const char *needs_left_out(const struct cell *cell);

#endif
