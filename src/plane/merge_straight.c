#include "plane.h"

/* The leftmost (then lowest) point: a corner in any case, so a good place to start. */
static size_t corner(const struct vec2 *ring, size_t n)
{
	size_t best = 0;
	for (size_t i = 1; i < n; i++)
		if (ring[i].x < ring[best].x ||
		    (ring[i].x == ring[best].x && ring[i].y < ring[best].y))
			best = i;
	return best;
}

size_t plane_merge_straight(const struct vec2 *ring, size_t n, double tolerance, struct vec2 *out)
{
	if (n == 0)
		return 0;
	size_t start = corner(ring, n), count = 0;
	out[count++] = ring[start];
	for (size_t i = 1; i < n; i++) {
		struct vec2 point = ring[(start + i) % n], next = ring[(start + i + 1) % n];
		/* against the last point kept, so that a run of straight points is dropped as a
		 * whole; a point beyond the ends of its neighbours (a spike) is farther than the
		 * tolerance and stays */
		if (plane_distance_to_segment(point, out[count - 1], next) > tolerance)
			out[count++] = point;
	}
	return count;
}
