/* The farthest point of an ellipse from the origin: the largest shear over all headings. */
#ifndef FARTHEST_H
#define FARTHEST_H

#include "../plane/plane.h"

/* The largest |a + M e| over all unit vectors e = (cos t, sin t); columns of M are mx and my. Exact
 * to rounding. *heading becomes that t [rad]. */
double farthest_on_ellipse(struct vec2 a, struct vec2 mx, struct vec2 my, double *heading);

#endif
