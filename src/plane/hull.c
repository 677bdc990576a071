/* Convex hull by the monotone chain, in the caller's array alone: lower chain from left to right,
 * then the upper chain over what is left, from right to left. */
#include "turn.h"
#include <stdlib.h>
#include <string.h>

static int rising(const void *left, const void *right)
{
	const struct vec2 *a = left, *b = right;
	if (a->x != b->x)
		return a->x < b->x ? -1 : 1;
	return (a->y > b->y) - (a->y < b->y);
}

static int falling(const void *left, const void *right)
{
	return rising(right, left);
}

static void swap(struct vec2 *a, struct vec2 *b)
{
	struct vec2 keep = *a;
	*a = *b;
	*b = keep;
}

/* Takes points [from, n) in their order onto the chain that ends at `top`; points that do not
 * belong to it stay in the array behind it. `floor` is the chain's first point. Returns the chain's
 * new end. */
static size_t extend(struct vec2 *at, size_t floor, size_t top, size_t from, size_t n)
{
	for (size_t i = from; i < n; i++) {
		while (top > floor + 1 && plane_turn(at[top - 2], at[top - 1], at[i]) <= 0)
			top--;
		/* a point upon the chain's end adds nothing */
		if (at[i].x == at[top - 1].x && at[i].y == at[top - 1].y)
			continue;
		swap(&at[top++], &at[i]);
	}
	return top;
}

size_t plane_hull(const struct vec2 *points, size_t n, struct vec2 *out)
{
	if (n == 0)
		return 0;
	memcpy(out, points, n * sizeof *out);
	qsort(out, n, sizeof *out, rising);
	size_t lower = extend(out, 0, 1, 1, n);
	qsort(out + lower, n - lower, sizeof *out, falling);
	size_t count = extend(out, lower - 1, lower, lower, n);
	/* the upper chain runs back into the first point */
	while (count > lower && plane_turn(out[count - 2], out[count - 1], out[0]) <= 0)
		count--;
	return count;
}
