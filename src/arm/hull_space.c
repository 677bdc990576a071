/* Incremental hull (textbook): the facets that see a new point are replaced by those from their
 * outer edges to the point. */
#include "hull_space.h"

#include <math.h>

static struct vec3 between(struct vec3 from, struct vec3 to)
{
	return vec3_add(to, vec3_scale(-1, from));
}

static double length(struct vec3 v)
{
	return sqrt(vec3_dot(v, v));
}

static struct vec3 unit(struct vec3 v)
{
	double size = length(v);
	return size > 0 ? vec3_scale(1 / size, v) : v;
}

/* --- what the points span ----------------------------------------------------------------------
 */

/* Takes off what lies along the first axes. */
static struct vec3 rest_of(struct vec3 v, const struct vec3 axis[], int axes)
{
	for (int i = 0; i < axes; i++)
		v = vec3_add(v, vec3_scale(-vec3_dot(v, axis[i]), axis[i]));
	return v;
}

/* Some direction at right angles to the axes. */
static struct vec3 any_across(const struct vec3 axis[], int axes)
{
	const struct vec3 unit_of[3] = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
	struct vec3 best = {0, 0, 0};
	for (int i = 0; i < 3; i++) {
		struct vec3 candidate = rest_of(unit_of[i], axis, axes);
		if (length(candidate) > length(best))
			best = candidate;
	}
	return unit(best);
}

static size_t farthest(const struct vec3 point[], size_t count, size_t from,
                       const struct vec3 axis[], int axes)
{
	size_t best = from;
	double most = 0;
	for (size_t i = 0; i < count; i++) {
		double off = length(rest_of(between(point[from], point[i]), axis, axes));
		if (off > most) {
			most = off;
			best = i;
		}
	}
	return best;
}

int hull_space_span(const struct vec3 point[], size_t count, double least, size_t corner[4],
                    struct vec3 axis[3])
{
	int span = 0;
	corner[0] = farthest(point, count, 0, axis, 0);
	for (int i = 0; i < 3; i++) {
		corner[i + 1] = farthest(point, count, corner[0], axis, i);
		struct vec3 off = rest_of(between(point[corner[0]], point[corner[i + 1]]), axis, i);
		bool spans = span == i && length(off) > least;
		span += spans;
		/* once more, so that the axis is at right angles to the last digit */
		axis[i] = spans ? unit(rest_of(unit(off), axis, i)) : any_across(axis, i);
	}
	return span;
}

/* --- facets ------------------------------------------------------------------------------------
 */

static struct hull_facet facet_of(const struct vec3 point[], size_t a, size_t b, size_t c)
{
	struct vec3 p = point[a], q = point[b], r = point[c];
	struct vec3 normal = unit(vec3_cross(between(p, q), between(p, r)));
	double level = fmax(fmax(vec3_dot(normal, p), vec3_dot(normal, q)), vec3_dot(normal, r));
	struct hull_facet out = {{a, b, c}, normal, level, false};
	return out;
}

void hull_space_open(const struct vec3 point[], const size_t corner[4], struct hull_space *out)
{
	size_t a = corner[0], b = corner[1], c = corner[2], d = corner[3];
	struct hull_facet base = facet_of(point, a, b, c);
	if (vec3_dot(base.normal, point[d]) > base.level) {
		b = corner[2];
		c = corner[1];
	}
	out->facet[0] = facet_of(point, a, b, c);
	out->facet[1] = facet_of(point, a, d, b);
	out->facet[2] = facet_of(point, b, d, c);
	out->facet[3] = facet_of(point, c, d, a);
	out->count = 4;
}

struct directed_edge { size_t from, to; };

/* Whether a facet among `facets` has the edge the other way round. */
static bool shared(const struct hull_facet facet[], size_t facets, struct directed_edge edge)
{
	for (size_t f = 0; f < facets; f++)
		for (int i = 0; i < 3; i++)
			if (facet[f].corner[i] == edge.to &&
			    facet[f].corner[(i + 1) % 3] == edge.from)
				return true;
	return false;
}

/* Moves the facets that see the point to the end; the number of those that stay. */
static size_t part(struct vec3 at, double least, struct hull_space *hull)
{
	size_t stay = hull->count;
	for (size_t f = 0; f < stay;) {
		struct hull_facet facet = hull->facet[f];
		if (vec3_dot(facet.normal, at) <= facet.level + least) {
			f++;
			continue;
		}
		hull->facet[f] = hull->facet[--stay];
		hull->facet[stay] = facet;
	}
	return stay;
}

bool hull_space_add(const struct vec3 point[], size_t at, double least, struct hull_space *hull)
{
	struct directed_edge outer[MAX_HULL_FACETS];
	size_t stay = part(point[at], least, hull), edges = 0;
	const struct hull_facet *seeing = hull->facet + stay;
	size_t see = hull->count - stay;
	for (size_t f = 0; f < see; f++)
		for (int i = 0; i < 3; i++) {
			struct directed_edge edge = {seeing[f].corner[i],
			                             seeing[f].corner[(i + 1) % 3]};
			if (shared(seeing, see, edge))
				continue;
			if (stay + edges == MAX_HULL_FACETS)
				return false;
			outer[edges++] = edge;
		}
	if (!edges)
		return false;
	for (size_t i = 0; i < edges; i++)
		hull->facet[stay + i] = facet_of(point, outer[i].from, outer[i].to, at);
	hull->count = stay + edges;
	return true;
}
