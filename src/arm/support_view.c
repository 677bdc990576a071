/* Projection of the terms of a pose to a space of supports. */
#include "support_view.h"

#include <math.h>

/* Rounding of a sum of some hundred terms, relative to the sum of their sizes, with much to
 * spare. */
#define ROUNDING 1e-11

static inline struct vec3 seen(enum support_space space, double h, const struct base_wrench *wrench)
{
	const double *f = wrench->force, *m = wrench->moment;
	if (space == SPACE_SHEAR)
		return (struct vec3){f[0], f[1], m[2]};
	return (struct vec3){m[1] + h * f[0], h * f[1] - m[0], f[2]};
}

struct vec3 support_seen(enum support_space space, double height, const struct base_wrench *wrench)
{
	return seen(space, height, wrench);
}

static inline double across(struct vec3 v)
{
	return sqrt(v.x * v.x + v.y * v.y);
}

double support_value(const struct support_direction *direction, struct vec3 at)
{
	if (direction->round)
		return direction->d.x * across(at) + direction->d.z * at.z;
	return vec3_dot(direction->d, at);
}

void support_view_open(enum support_space space, double height, const struct pose_terms *terms,
                       const struct motion_limits *limits, struct support_view *out)
{
	out->count = terms->count;
	out->still = seen(space, height, &terms->g);
	for (size_t k = 0; k < terms->count; k++) {
		double v = limits->speed[k];
		out->turn[k] = vec3_scale(limits->acceleration[k],
		                          seen(space, height, &terms->a[k]));
		out->square[k] = vec3_scale(v * v, seen(space, height, &terms->b[k][k]));
		for (size_t j = 0; j < k; j++)
			out->cross[j][k] = vec3_scale(limits->speed[j] * v,
			                              seen(space, height, &terms->b[j][k]));
	}
}

static inline void widen(struct support_outline *outline, double share, struct vec3 by)
{
	outline->wide += share * across(by);
	outline->high += share * fabs(by.z);
}

/* Squares of speeds only add one way: half of them moves the middle, half is spread about it. */
void support_outline_of(const struct support_view *view, struct support_outline *out)
{
	*out = (struct support_outline){.middle = view->still};
	for (size_t k = 0; k < view->count; k++) {
		out->middle = vec3_add(out->middle, vec3_scale(0.5, view->square[k]));
		widen(out, 0.5, view->square[k]);
		widen(out, 1, view->turn[k]);
		for (size_t j = 0; j < k; j++)
			widen(out, 1, view->cross[j][k]);
	}
	out->away = across(out->middle);
	out->wide += ROUNDING * (across(view->still) + out->wide);
	out->high += ROUNDING * (fabs(view->still.z) + out->high);
}

double support_at_most(const struct support_direction *direction,
                       const struct support_outline *outline)
{
	struct vec3 d = direction->d;
	double upright = d.z * outline->middle.z + fabs(d.z) * outline->high;
	if (direction->round)
		return d.x * (outline->away + outline->wide) + upright;
	return d.x * outline->middle.x + d.y * outline->middle.y + across(d) * outline->wide +
	       upright;
}
