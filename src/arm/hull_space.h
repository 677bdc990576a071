/* Convex hull of points in space, grown point by point. For the files of this folder. */
#ifndef HULL_SPACE_H
#define HULL_SPACE_H

#include "vec3.h"
#include <stdbool.h>
#include <stddef.h>

enum { MAX_HULL_FACETS = 1536 };         /* 2 n - 4 of n points in general */

struct hull_facet {
	size_t corner[3];                /* anticlockwise from outside */
	struct vec3 normal;              /* outward, length 1; 0 where the corners lie on a line */
	double level;                    /* normal . corner */
	bool closed;                     /* the caller's: nothing lies beyond it */
};
struct hull_space {
	struct hull_facet facet[MAX_HULL_FACETS];
	size_t count;                    /* 0: not opened */
};

/* Numbers of points that span the set, the two ends of its longest axis first, each the farthest
 * from what those before it span, and an orthonormal frame along them. The number of directions in
 * which the points differ by more than `least`: 0 to 3. */
int hull_space_span(const struct vec3 point[], size_t count, double least, size_t corner[4],
                    struct vec3 axis[3]);
/* The tetrahedron of four points that span. */
void hull_space_open(const struct vec3 point[], const size_t corner[4], struct hull_space *out);
/* Takes in a point that lies beyond some facet by more than `least`. False: it does not, or there
 * is no room. */
bool hull_space_add(const struct vec3 point[], size_t at, double least, struct hull_space *hull);

#endif
