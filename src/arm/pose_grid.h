/* The grid of poses over a chain's joint ranges, the last joint fastest. For the files of this
 * folder. */
#ifndef POSE_GRID_H
#define POSE_GRID_H

#include "reaction_sweep.h"

/* SWEEP: positions that the arm can take. BOUND: those that the bound of reaction_bound.c asks for:
 * the full circle, and for a prismatic joint middle + half range x cos(phi), phi over a half
 * circle. */
enum grid_purpose { GRID_SWEEP, GRID_BOUND };
enum { BOUND_LEAST_POSES = 8 };

struct grid_joint {
	size_t poses;
	double start, step;      /* position of pose i: start + step i [rad or m]; ... */
	double half;             /* ... or, where not 0, start + half cos(step i) */
};
struct pose_grid {
	size_t count;            /* joints */
	struct grid_joint joint[MAX_JOINTS_OF_ARM];
};
struct grid_place { size_t digit[MAX_JOINTS_OF_ARM]; double q[MAX_JOINTS_OF_ARM]; };

void pose_grid_open(const struct prepared_chain *chain, const struct motion_limits *limits,
                    enum grid_purpose purpose, struct pose_grid *out);
/* Number of poses; SIZE_MAX when it is that or more. */
size_t pose_grid_total(const struct pose_grid *grid);
void pose_grid_place(const struct pose_grid *grid, size_t index, struct grid_place *out);
/* To the next pose; the first joint that moved. */
size_t pose_grid_next(const struct pose_grid *grid, struct grid_place *place);
/* A position brought into the joint's range; a joint that can go round goes round. For the local
 * searches between the poses. */
double joint_within(double q, double low, double high, enum joint_kind kind);
/* Points on the full circle that one joint's factor in the bound counts; 0: fixed, no factor. */
size_t pose_grid_circle(const struct grid_joint *joint);

/* Whether no wrench depends on where the last joint stands: it turns a body that looks the same all
 * round its axis. Its speed still counts. */
bool last_joint_idle(const struct prepared_chain *chain);
/* Whether joint 1 turns about the vertical through the base origin: then nothing that this folder
 * measures depends on its position. */
bool first_joint_idle(const struct prepared_chain *chain);

#endif
