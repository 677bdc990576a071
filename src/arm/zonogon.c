/* Corners of a zonogon: turned into one half plane and sorted by direction, its generators are the
 * edges of one half of the outline, each twice; the other half is the first turned by half a turn.
 * (Textbook, own derivation.) */
#include "zonogon.h"

static double cross(struct vec2 a, struct vec2 b)
{
	return a.x * b.y - a.y * b.x;
}

/* +1 when the vector points into directions [0, pi), -1 when its opposite does. */
static int side_of(struct vec2 v)
{
	return v.y > 0 || (v.y == 0 && v.x > 0) ? 1 : -1;
}

static struct vec2 turned(struct vec2 v, int side)
{
	return (struct vec2){side * v.x, side * v.y};
}

/* Insertion sort: there are few, and angles are compared by a product, without an arctangent. */
static void insert(const struct vec2 generator[], size_t index, struct zonogon *zonogon)
{
	struct vec2 own = turned(generator[index], zonogon->side[index]);
	size_t at = zonogon->count++;
	while (at > 0) {
		size_t before = zonogon->order[at - 1];
		if (cross(turned(generator[before], zonogon->side[before]), own) >= 0)
			break;
		zonogon->order[at] = before;
		at--;
	}
	zonogon->order[at] = index;
}

void zonogon_build(const struct vec2 generator[], size_t count, double least, struct zonogon *out)
{
	struct vec2 corner = {0, 0};
	out->count = 0;
	for (size_t i = 0; i < count; i++) {
		struct vec2 g = generator[i];
		out->side[i] = 0;
		if (g.x * g.x + g.y * g.y <= least * least)
			continue;
		out->side[i] = side_of(g);
		corner.x -= out->side[i] * g.x;
		corner.y -= out->side[i] * g.y;
		insert(generator, i, out);
	}
	out->corner[0] = corner;
	for (size_t i = 1; i < out->count; i++) {
		size_t edge = out->order[i - 1];
		corner.x += 2 * out->side[edge] * generator[edge].x;
		corner.y += 2 * out->side[edge] * generator[edge].y;
		out->corner[i] = corner;
	}
}

double zonogon_farthest(const struct zonogon *zonogon, struct vec2 centre, size_t *corner)
{
	double best = -1;
	size_t half = zonogon->count ? zonogon->count : 1;
	for (size_t i = 0; i < half; i++) {
		struct vec2 c = zonogon->corner[i];
		double x = centre.x + c.x, y = centre.y + c.y, there = x * x + y * y;
		double u = centre.x - c.x, v = centre.y - c.y, opposite = u * u + v * v;
		if (there > best || opposite > best) {
			best = there >= opposite ? there : opposite;
			if (corner)
				*corner = there >= opposite ? i : half + i;
		}
	}
	return best;
}

int zonogon_sign(const struct zonogon *zonogon, size_t corner, size_t generator)
{
	size_t half = zonogon->count, first = corner < half ? corner : corner - half;
	if (!zonogon->side[generator])
		return 0;
	/* corner i has its first i edges forward */
	int along = -1;
	for (size_t i = 0; i < first; i++)
		if (zonogon->order[i] == generator)
			along = 1;
	return along * zonogon->side[generator] * (corner < half ? 1 : -1);
}
