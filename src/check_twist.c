#include "check_twist.h"

/* Both sides of a place where an anchor ceases to push, as share of the range: far more than what
 * counts as not pushing at all (1e-9 of the largest shear). */
#define BESIDE 1e-6
#define PARTS 8                  /* of the range, besides */

static bool alike(const struct vec2 low[], const struct vec2 high[], size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (low[i].x != high[i].x || low[i].y != high[i].y)
			return false;
	return true;
}

static size_t add_share(double out[], size_t count, double share)
{
	if (share > 0 && share < 1 && count < MAX_TWISTS)
		out[count++] = share;
	return count;
}

size_t twist_shares(const struct code_strength *s, const struct vec2 low[],
                    const struct vec2 high[], double out[MAX_TWISTS])
{
	size_t count = 0, anchors = s->pattern->count;
	if (alike(low, high, anchors))
		return 0;
	for (int k = 1; k < PARTS; k++)
		count = add_share(out, count, (double)k / PARTS);
	for (size_t v = 0; v < s->view_count; v++) {
		struct vec2 toward = code_edge_toward(s, v);
		for (size_t i = 0; i < anchors; i++) {
			if (!(s->view[v].anchors >> i & 1))
				continue;
			double p = low[i].x * toward.x + low[i].y * toward.y;
			double q = high[i].x * toward.x + high[i].y * toward.y;
			if ((p > 0) == (q > 0))
				continue;
			count = add_share(out, count, p / (p - q) - BESIDE);
			count = add_share(out, count, p / (p - q) + BESIDE);
		}
	}
	return count;
}

void twist_between(const struct vec2 low[], const struct vec2 high[], size_t count, double share,
                   struct vec2 out[])
{
	for (size_t i = 0; i < count; i++)
		out[i] = (struct vec2){low[i].x + share * (high[i].x - low[i].x),
		                       low[i].y + share * (high[i].y - low[i].y)};
}
