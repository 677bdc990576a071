#include "turn.h"

/* Whether a point known to be in line with a and b lies between them, ends included. */
static bool between(struct vec2 a, struct vec2 b, struct vec2 point)
{
	double dx = b.x - a.x, dy = b.y - a.y;
	double along = (point.x - a.x) * dx + (point.y - a.y) * dy;
	double length2 = dx * dx + dy * dy;
	double slack = STRAIGHT_SINE * length2;
	return along >= -slack && along <= length2 + slack;
}

/* In line is judged from both ends, as a point near one end shows no turn from the other. */
static bool touches(struct vec2 a, struct vec2 b, struct vec2 point)
{
	return plane_turn(a, b, point) == 0 && plane_turn(b, a, point) == 0 && between(a, b, point);
}

bool plane_segments_meet(struct vec2 a, struct vec2 b, struct vec2 c, struct vec2 d)
{
	if (touches(a, b, c) || touches(a, b, d) || touches(c, d, a) || touches(c, d, b))
		return true;
	return plane_turn(a, b, c) * plane_turn(a, b, d) < 0 &&
	       plane_turn(c, d, a) * plane_turn(c, d, b) < 0;
}

/* Neighbouring edges a-b and b-c share b; they touch elsewhere only when c runs back over a-b. */
static bool folds_back(struct vec2 a, struct vec2 b, struct vec2 c)
{
	if (plane_turn(b, a, c) != 0)
		return false;
	double along = (a.x - b.x) * (c.x - b.x) + (a.y - b.y) * (c.y - b.y);
	/* zero only where two points coincide, which is a touch as well */
	return along >= 0;
}

bool plane_self_crossing(const struct vec2 *ring, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		struct vec2 a = ring[i], b = ring[(i + 1) % n];
		if (folds_back(a, b, ring[(i + 2) % n]))
			return true;
		/* the edge before the first is its neighbour too: left to the test above */
		size_t last = i == 0 ? n - 1 : n;
		for (size_t k = i + 2; k < last; k++)
			if (plane_segments_meet(a, b, ring[k], ring[(k + 1) % n]))
				return true;
	}
	return false;
}
