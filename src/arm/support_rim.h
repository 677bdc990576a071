/* Corners of a zonotope (all sums of s_i g_i with s_i in [-1, 1]) at which |(x, y)| + z can be
 * largest, wherever its centre lies. For the files of this folder. */
#ifndef SUPPORT_RIM_H
#define SUPPORT_RIM_H

#include "chain.h"

enum { MAX_RIM = 2 * MAX_JOINTS_OF_ARM };

struct support_rim {
	size_t count;                            /* of corners, at least one */
	struct vec3 corner[MAX_RIM];
	signed char sign[MAX_RIM][MAX_JOINTS_OF_ARM];    /* 0: generator left out */
};

/* Generators no longer than `least` are left out. At most MAX_JOINTS_OF_ARM. */
void support_rim_build(const struct vec3 generator[], size_t count, double least,
                       struct support_rim *out);
/* Largest |(x, y)| + z with the centre there; its corner to *corner, the first of equals. */
double support_rim_farthest(const struct support_rim *rim, struct vec3 centre, size_t *corner);

#endif
