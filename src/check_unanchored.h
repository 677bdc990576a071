/* The cell before it is anchored: tilt of the floor and push that tip it, on its base and on its
 * casters. Information with a warning, no check and no verdict.
 *
 * Source: base/unanchored.h for a given centre of mass. The arm's worst fixed pose: its centre of
 * mass, and so that of all, lies anywhere in a sphere about the shoulder, which moves the whole
 * centre by up to rho = (m r of arm and payload)/M. With the centre c at the distance d inside the
 * line and the height z, the line of sight from the edge that touches that sphere gives
 *   tilt = atan(d/z) - asin(rho/sqrt(d^2 + z^2)),     push height = W (d - rho)/F
 * (own derivation; exact for a sphere, a bound for a real arm). Weights are physical: factor 1, the
 * worse of least and full masses and of full and empty gripper; 0.6 or 0.9 would be a factor on a
 * figure that already has none to be compared with. Boxed parts at the worst corner, at the top of
 * their boxes.
 * Range: still arm, drives off, level rigid floor, slow push; nothing about sliding, rolling or a
 * running arm, which must not run. Identities: without a reach tilt = atan(d/z). */
#ifndef CHECK_UNANCHORED_H
#define CHECK_UNANCHORED_H

#include "check_sweep.h"

/* Height of a push where cell.top is not known; own choice, no source [mm]. */
#define ASSUMED_PUSH_HEIGHT 1500.0

/* Fills result->unanchored. Without memory it stays incomplete, and the arena has failed. */
void find_unanchored(const struct run *run, struct result *result);

#endif
