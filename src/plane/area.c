#include "plane.h"

double plane_area(const struct vec2 *ring, size_t n)
{
	/* from the first point: products about a far origin lose the digits of a small ring */
	double twice = 0;
	for (size_t i = 2; i < n; i++) {
		double ax = ring[i - 1].x - ring[0].x, ay = ring[i - 1].y - ring[0].y;
		double bx = ring[i].x - ring[0].x, by = ring[i].y - ring[0].y;
		twice += ax * by - ay * bx;
	}
	return twice / 2;
}
