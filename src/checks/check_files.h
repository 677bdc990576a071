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
JUDGE(aci318_interaction);
JUDGE(aci318_bound);
JUDGE(aci318_layout);
JUDGE(aci318_earthquake);
JUDGE(en1992_4_interaction_steel);
JUDGE(en1992_4_interaction_concrete);
JUDGE(en1992_4_bound);
JUDGE(en1992_4_layout);
JUDGE(en1992_4_earthquake);
#undef JUDGE

double rating_tension_ratio(const struct judging *judging, int anchor);
double rating_shear_ratio(const struct judging *judging, int anchor);
double rating_interaction_ratio(const struct judging *judging, int anchor);
double rating_bound_ratio(const struct judging *judging, int anchor);
const char *rating_bound_left_out(const struct cell *cell);
const char *anchor_gapping_left_out(const struct cell *cell);
const char *anchor_fatigue_left_out(const struct cell *cell);
const char *needs_left_out(const struct cell *cell);

/* --- ways of failing by a code: applies, ratio, judge (aci318.c, en1992_4.c) --- */
#define MODE(name) \
	const char *name##_left_out(const struct cell *cell); \
	double name##_ratio(const struct judging *judging, int anchor); \
	void name##_judge(const struct judging *judging, int anchor, struct finding *out)
MODE(aci318_steel_tension);
MODE(aci318_breakout);
MODE(aci318_pullout);
MODE(aci318_blowout);
MODE(aci318_bond);
MODE(aci318_sustained);
MODE(aci318_steel_shear);
MODE(aci318_edge);
MODE(aci318_pryout);
MODE(en1992_4_steel_tension);
MODE(en1992_4_cone);
MODE(en1992_4_pullout);
MODE(en1992_4_blowout);
MODE(en1992_4_bond);
MODE(en1992_4_splitting);
MODE(en1992_4_steel_shear);
MODE(en1992_4_edge);
MODE(en1992_4_pryout);
#undef MODE

double aci318_interaction_ratio(const struct judging *judging, int anchor);
double aci318_bound_ratio(const struct judging *judging, int anchor);
double en1992_4_interaction_steel_ratio(const struct judging *judging, int anchor);
double en1992_4_interaction_concrete_ratio(const struct judging *judging, int anchor);
double en1992_4_bound_ratio(const struct judging *judging, int anchor);
const char *aci318_earthquake_left_out(const struct cell *cell);
const char *en1992_4_earthquake_left_out(const struct cell *cell);

#endif
