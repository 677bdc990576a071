/* Projection of the terms of a pose to what one kind of reaction measures. */
#include "reaction_view.h"

#include <math.h>

/* What the kind measures of a wrench. */
static inline struct vec2 seen(enum reaction_kind kind, const struct base_wrench *wrench)
{
	switch (kind) {
	case REACTION_TILTING:
		return (struct vec2){wrench->moment[0], wrench->moment[1]};
	case REACTION_HORIZONTAL:
		return (struct vec2){wrench->force[0], wrench->force[1]};
	case REACTION_UPLIFT:
		return (struct vec2){wrench->force[2], 0};
	case REACTION_DOWNFORCE:
		return (struct vec2){-wrench->force[2], 0};
	default:
		return (struct vec2){wrench->moment[2], 0};
	}
}

static inline double length(struct vec2 v)
{
	return v.y == 0 ? fabs(v.x) : sqrt(v.x * v.x + v.y * v.y);
}

static inline struct vec2 scaled(double by, struct vec2 v)
{
	return (struct vec2){by * v.x, by * v.y};
}

double reaction_value(enum reaction_kind kind, const struct base_wrench *wrench)
{
	struct vec2 at = seen(kind, wrench);
	return kind == REACTION_UPLIFT || kind == REACTION_DOWNFORCE ? at.x : length(at);
}

/* Speed terms of joint k with itself and those before it; the sum of their lengths. */
static inline double open_speeds(enum reaction_kind kind, const struct pose_terms *terms,
                                 const struct motion_limits *limits, size_t k,
                                 struct reaction_view *out)
{
	double v = limits->speed[k];
	out->square[k] = scaled(v * v, seen(kind, &terms->b[k][k]));
	double sum = length(out->square[k]);
	for (size_t j = 0; j < k; j++) {
		out->cross[j][k] = scaled(limits->speed[j] * v, seen(kind, &terms->b[j][k]));
		sum += length(out->cross[j][k]);
	}
	return sum;
}

void reaction_view_open(enum reaction_kind kind, const struct pose_terms *terms,
                        const struct motion_limits *limits, struct reaction_view *out)
{
	out->count = terms->count;
	out->still = seen(kind, &terms->g);
	out->reach = 0;
	out->rest[out->count] = 0;
	for (size_t k = out->count; k-- > 0;) {
		out->turn[k] = scaled(limits->acceleration[k], seen(kind, &terms->a[k]));
		out->reach += length(out->turn[k]);
		out->rest[k] = out->rest[k + 1] + open_speeds(kind, terms, limits, k, out);
	}
	out->size = length(out->still) + out->reach + out->rest[0];
	out->shift = kind == REACTION_UPLIFT || kind == REACTION_DOWNFORCE ? out->size : 0;
	out->still.x += out->shift;
}

struct vec2 reaction_view_at(const struct reaction_view *view, const double share[])
{
	struct vec2 at = view->still;
	for (size_t k = 0; k < view->count; k++) {
		at = vec2_add_times(at, share[k] * share[k], view->square[k]);
		for (size_t j = 0; j < k; j++)
			at = vec2_add_times(at, share[j] * share[k], view->cross[j][k]);
	}
	return at;
}
