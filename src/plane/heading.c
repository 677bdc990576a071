#include "plane.h"

#include <math.h>

/* 90 degrees is not a whole number of radians. */
static double without_rounding(double value)
{
	return fabs(value) < 1e-15 ? 0 : value;
}

struct vec2 plane_heading(double heading)
{
	return (struct vec2){without_rounding(cos(heading)), without_rounding(sin(heading))};
}
