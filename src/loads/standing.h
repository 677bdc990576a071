/* All that stands there as masses and centres: parts, arm and payload, for what takes hold of mass
 * (earthquake.h) or of the bare weight (check_unanchored.h). No factor of a combination is in it.
 *
 * Source: sums of masses and first moments (statics). Assumptions: a boxed part is at the corner
 * asked for in plan and at the top of its box; the centre of mass of the arm, in any pose, is no
 * farther from its shoulder than stretched. The shoulder is taken on the axis of the mounting face
 * and, where the face looks up, arm.swing.axis_height above it, or half the payload's reach where
 * that is not known (own choice, no source; the safe side for serial arms).
 * Identities: masses add; moving every place moves the centre as far.
 * Units: kg, mm. Errors: none; what is not known counts 0 and standing_gaps names it. */
#ifndef STANDING_H
#define STANDING_H

#include "../cell/arena.h"
#include "../cell/cell.h"

/* Which mass of a part that has two; payload: whether the gripper holds one. */
struct standing_state { bool full, payload; int corner; };

struct standing {
	double parts, arm, payload;  /* [kg] */
	double mass;                 /* of all three [kg] */
	/* sums of m x, m y, m z, arm and payload in the shoulder [kg mm] */
	double first[3];
	double reach_moment;         /* m r of arm and payload, stretched [kg mm] */
	double rise;                 /* highest that they lift the third sum [kg mm] */
};

/* Corners as corner_signs: -1, or 0 to 3 where boxes are. */
struct standing standing_mass(const struct cell *cell, struct standing_state state);
/* Centre of a part, its box pushed to that corner; the top of the box. */
void standing_part_centre(const struct part *part, int corner, double at[3]);
bool standing_boxed(const struct cell *cell);
double standing_shoulder(const struct arm *arm);     /* height above the floor [mm] */
double standing_arm_mass(const struct arm *arm);     /* by weight, else by the chain [kg] */
double standing_payload_mass(const struct arm *arm);

/* Field paths of masses, places and reaches that are not known, each once. Without a reach the
 * figures are the most favourable; without any of the others there are none. */
typedef void found_gap(void *user, const char *path);
void standing_mass_gaps(const struct cell *cell, found_gap *gap, void *user);
void standing_reach_gaps(const struct cell *cell, found_gap *gap, void *user);

#endif
