/* Random limits of an arm's joints. Tests only. */
#ifndef RANDOM_LIMITS_H
#define RANDOM_LIMITS_H

#include "../../src/arm/reaction_sweep.h"
#include "random_base.h"

/* Ranges from a fixed joint to a full turn, limits from a joint that stands still up. One joint in
 * `shapes` + 1 is fixed, and one goes all round if it turns. Poses are left at 0. */
void limits_random(const struct chain *chain, struct dice *dice, int shapes,
                   struct motion_limits *limits);

#endif
