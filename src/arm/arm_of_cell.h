/* What the cell file states of the arm, as the kernels of this folder take it: mm to m, the
 * mounting as a rotation. Numbers that are not known count as 0 here; whoever asks has looked for
 * them before (arm_way_covers). For the files of this folder.
 *
 * Left out on purpose and so 0: roll, pitch and yaw of a frame; theta of a revolute joint and d of
 * a prismatic one; products of inertia. */
#ifndef ARM_OF_CELL_H
#define ARM_OF_CELL_H

#include "arm_loads.h"

/* Whether anything of that way stands in the file. */
bool arm_way_given(const struct cell *cell, enum arm_way way);

/* Whether body and mounting of the chain are known, whatever its motion (arm_gaps.c). */
bool arm_chain_known(const struct cell *cell);
/* The chain in cell axes about the mounting point, with or without its payload. */
void arm_chain_of(const struct cell *cell, bool payload, struct chain *out);
/* Of the foot, which no link has: fixed_mass, else arm.weight.arm less the links, not below 0.
 * False when neither is known. [kg] */
bool arm_fixed_mass(const struct cell *cell, double *mass);
/* NULL when not known. [kg] */
const struct number *arm_payload_mass(const struct cell *cell);

/* The numbers of one joint, angles or lengths as its kind asks. */
struct joint_numbers {
	const struct number *from, *to, *speed, *acceleration, *stop, *stop_time;
	bool slides; /* lengths [mm] */
	bool fixed;  /* both ends of the range known and equal */
};
/* False beyond the rows of arm.motion.joints. */
bool arm_joint_numbers(const struct cell *cell, size_t joint, struct joint_numbers *out);

/* Limits in one case; all speeds and accelerations 0 for ARM_REST and of fixed joints. An emergency
 * stop by its time has the mean deceleration speed / stop_time times the peak factor, 1 where that
 * is not known. */
void arm_limits_of(const struct cell *cell, enum arm_case arm_case, struct motion_limits *out);

/* The lumped arm; the peak factor is 1 where it is not known. */
void arm_swing_of(const struct cell *cell, struct swing *out, enum swing_axes *axes);

#endif
