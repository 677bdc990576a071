/* |(x, y)| + z is the largest over all headings u of u.(x, y) + z. For one heading the best corner
 * takes each generator with the sign of u.(g.x, g.y) + g.z, so the corners that matter are those of
 * the arcs between the headings where such a sign turns: two a generator, none for one that is
 * steeper than it is wide. (Own derivation; for g.z = 0 the outline of zonogon.c.) */
#include "support_rim.h"

#include <math.h>

struct heading { double x, y, order; };

/* Rises with the angle over a full turn, without an arctangent. */
static inline double order_of(double x, double y)
{
	double along = x / (fabs(x) + fabs(y));
	return y >= 0 ? 1 - along : 3 + along;
}

/* Insertion sort: there are few. */
static void insert(struct heading list[], size_t at, double x, double y)
{
	struct heading own = {x, y, order_of(x, y)};
	while (at > 0 && list[at - 1].order > own.order) {
		list[at] = list[at - 1];
		at--;
	}
	list[at] = own;
}

/* Headings at which u.(g.x, g.y) + g.z = 0; 0 or 2. */
static size_t turning_headings(struct vec3 g, struct heading list[], size_t count)
{
	double wide = sqrt(g.x * g.x + g.y * g.y);
	if (fabs(g.z) >= wide)
		return count;
	double x = g.x / wide, y = g.y / wide, c = -g.z / wide;
	double s = sqrt((1 - c) * (1 + c));
	insert(list, count, c * x - s * y, c * y + s * x);
	insert(list, count + 1, c * x + s * y, c * y - s * x);
	return count + 2;
}

static void add_corner(const struct vec3 generator[], size_t count, double least, double ux,
                       double uy, struct support_rim *out)
{
	struct vec3 sum = {0, 0, 0};
	signed char *sign = out->sign[out->count];
	for (size_t i = 0; i < count; i++) {
		struct vec3 g = generator[i];
		sign[i] = 0;
		if (g.x * g.x + g.y * g.y + g.z * g.z <= least * least)
			continue;
		sign[i] = ux * g.x + uy * g.y + g.z >= 0 ? 1 : -1;
		sum = vec3_add(sum, vec3_scale(sign[i], g));
	}
	out->corner[out->count++] = sum;
}

void support_rim_build(const struct vec3 generator[], size_t count, double least,
                       struct support_rim *out)
{
	struct heading turn[MAX_RIM];
	size_t turns = 0;
	out->count = 0;
	for (size_t i = 0; i < count; i++) {
		struct vec3 g = generator[i];
		if (g.x * g.x + g.y * g.y + g.z * g.z > least * least)
			turns = turning_headings(g, turn, turns);
	}
	for (size_t i = 0; i < turns; i++) {
		/* at right angles to the chord of an arc: its middle, however wide it is. An arc
		 * of no width is a corner of its neighbours too */
		const struct heading *from = &turn[i], *to = &turn[(i + 1) % turns];
		double x = to->y - from->y, y = from->x - to->x, length = sqrt(x * x + y * y);
		if (length > 0)
			add_corner(generator, count, least, x / length, y / length, out);
	}
	if (!out->count)
		add_corner(generator, count, least, 0, 0, out);
}

double support_rim_farthest(const struct support_rim *rim, struct vec3 centre, size_t *corner)
{
	double best = -HUGE_VAL;
	for (size_t i = 0; i < rim->count; i++) {
		struct vec3 at = vec3_add(centre, rim->corner[i]);
		double there = sqrt(at.x * at.x + at.y * at.y) + at.z;
		if (there > best) {
			best = there;
			*corner = i;
		}
	}
	return best;
}
