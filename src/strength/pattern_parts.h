/* What the files pattern*.c share. Not for others. */
#ifndef PATTERN_PARTS_H
#define PATTERN_PARTS_H

#include "pattern.h"
#include <math.h>

/* A point nearer to a line than this lies upon it: decimal input in binary [mm]. */
#define UPON 1e-6
/* A sight line is looked at without this share at both its ends, so that what it starts from or
 * ends upon does not hide it. */
#define END_SHARE 1e-9

static inline bool has_anchor(uint64_t anchors, size_t i) { return anchors >> i & 1; }

static inline double dot(struct vec2 a, struct vec2 b) { return a.x * b.x + a.y * b.y; }

static inline struct vec2 less(struct vec2 a, struct vec2 b)
{
	return (struct vec2){a.x - b.x, a.y - b.y};
}

static inline double distance_of(const struct pattern *pattern, size_t anchor, size_t edge)
{
	return pattern->distance[anchor * pattern->edge_count + edge];
}

/* Whether nothing but the edge itself stands between the anchor and a point upon its line. */
static inline bool sees_past(struct vec2 anchor, struct vec2 point, const struct segment *edge,
                             size_t edge_count, size_t but)
{
	struct vec2 way = less(point, anchor);
	struct vec2 from = {anchor.x + END_SHARE * way.x, anchor.y + END_SHARE * way.y},
	            to = {point.x - END_SHARE * way.x, point.y - END_SHARE * way.y};
	if (sqrt(dot(way, way)) <= UPON)
		return true;
	return plane_sees(from, to, edge, but) &&
	       plane_sees(from, to, edge + but + 1, edge_count - but - 1);
}

#endif
