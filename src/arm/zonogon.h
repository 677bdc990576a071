/* A zonogon: all sums of s_i g_i with s_i in [-1, 1], for vectors g_i in the plane. What the
 * accelerations (and, term by term, the speeds) of an arm's joints can add to a plane vector is
 * one. For the files of this folder. */
#ifndef ZONOGON_H
#define ZONOGON_H

#include "../plane/plane.h"
#include "chain.h"

/* A vector each for acceleration and speed squared of every joint, and for every pair of speeds. */
enum { MAX_GENERATORS = MAX_JOINTS_OF_ARM * (MAX_JOINTS_OF_ARM + 3) / 2 };

struct zonogon {
	size_t count;                            /* generators in use; half the number of corners */
	struct vec2 corner[MAX_GENERATORS];      /* one half; corner count + i is the opposite of
	                                          * corner i; without generators one, (0, 0) */
	size_t order[MAX_GENERATORS];            /* in use, by rising direction over a half turn */
	int side[MAX_GENERATORS];                /* of each: which way it counts, 0: not in use */
};

/* Generators no longer than `least` are left out. At most MAX_GENERATORS. */
void zonogon_build(const struct vec2 generator[], size_t count, double least, struct zonogon *out);
/* Square of the largest distance from (0, 0) when the zonogon's centre is at `centre`; a convex
 * function is largest at a corner. Its number to *corner if not NULL; the first of equals. */
double zonogon_farthest(const struct zonogon *zonogon, struct vec2 centre, size_t *corner);
/* The s_i of that corner; 0 for generators left out. */
int zonogon_sign(const struct zonogon *zonogon, size_t corner, size_t generator);

#endif
