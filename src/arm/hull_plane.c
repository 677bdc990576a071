/* Monotone chain, Andrew 1979 (textbook). */
#include "hull_plane.h"

#include <stdbool.h>

static bool before(const struct vec2 point[], size_t a, size_t b)
{
	if (point[a].x != point[b].x)
		return point[a].x < point[b].x;
	if (point[a].y != point[b].y)
		return point[a].y < point[b].y;
	return a < b;
}

static double turn(struct vec2 a, struct vec2 b, struct vec2 c)
{
	return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/* Adds a point to the chain that starts at `first`; those that are no corner any more go. */
static size_t extend(const struct vec2 point[], size_t at, size_t first, size_t corner[],
                     size_t count)
{
	while (count >= first + 2 &&
	       turn(point[corner[count - 2]], point[corner[count - 1]], point[at]) <= 0)
		count--;
	corner[count] = at;
	return count + 1;
}

size_t hull_plane_corners(const struct vec2 point[], size_t count, size_t order[], size_t corner[])
{
	size_t corners = 0, kept = 0;
	for (size_t i = 0; i < count; i++) {
		size_t at = i;
		for (; at > 0 && before(point, i, order[at - 1]); at--)
			order[at] = order[at - 1];
		order[at] = i;
	}
	for (size_t i = 0; i < count; i++) {
		struct vec2 own = point[order[i]], last = kept ? point[order[kept - 1]] : own;
		if (!kept || own.x != last.x || own.y != last.y)
			order[kept++] = order[i];
	}
	for (size_t i = 0; i < kept; i++)
		corners = extend(point, order[i], 0, corner, corners);
	size_t upper = corners ? corners - 1 : 0;
	for (size_t i = kept; i-- > 1;)
		corners = extend(point, order[i - 1], upper, corner, corners);
	/* the chain ends where it began */
	return corners > 1 ? corners - 1 : corners;
}
