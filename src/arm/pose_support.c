/* The farthest is the largest over all headings u of u.(x, y) + z. Headings are looked at in
 * sectors that are halved: where |v| is seen from the middle of its sector of half width w, it is
 * at most u.v / cos w, and a sum of numbers is all that is left to bound. In a narrow sector that
 * can still pass what is known the speeds form a tree, as in pose_reaction.c, cut by the sizes of
 * what is open; at each leaf the accelerations add a zonotope of which only the rim can be
 * farthest. A wrench does not change when all speeds turn round, so the first that is not 0 is
 * +. */
#include "pose_support.h"

#include "support_rim.h"
#include "zonogon.h"
#include <math.h>
#include <string.h>

/* As in pose_reaction.c: rounding of a sum of some hundred terms, and what is no effect. */
#define ROUNDING 1e-12
#define IDLE 1e-13

enum {
	MAX_PAIRS = MAX_JOINTS_OF_ARM * (MAX_JOINTS_OF_ARM + 1) / 2,
	MAX_TERMS = MAX_JOINTS_OF_ARM + MAX_PAIRS
};

/* The view along one direction: the value of a point is |(x, y)| + z. Terms of the accelerations,
 * then those of pairs of speeds j <= k at k (k + 1) / 2 + j. */
struct search {
	size_t joints, terms;
	struct vec3 still;
	double x[MAX_TERMS], y[MAX_TERMS], z[MAX_TERMS];
	double seen[MAX_TERMS];                  /* from the middle of a sector */
	double rest[MAX_JOINTS_OF_ARM + 1];      /* there: what speeds from this joint on can add */
	double slack, floor, best;               /* value to reach; the best known */
	struct support_rim rim;
	bool rim_open, found, reaches;           /* the floor, as far as bounds tell */
	bool without_speed[MAX_JOINTS_OF_ARM];
	size_t corner;
	signed char sign[MAX_JOINTS_OF_ARM], best_sign[MAX_JOINTS_OF_ARM];
};

/* A linear direction is a round one that looks along z alone. */
static inline struct vec3 along(const struct support_direction *direction, struct vec3 p)
{
	struct vec3 d = direction->d;
	if (direction->round)
		return (struct vec3){d.x * p.x, d.x * p.y, d.z * p.z};
	return (struct vec3){0, 0, vec3_dot(d, p)};
}

static inline double across(struct vec3 v)
{
	return v.x == 0 && v.y == 0 ? 0 : sqrt(v.x * v.x + v.y * v.y);
}

static inline double most_of(struct vec3 v)
{
	return across(v) + fabs(v.z);
}

static inline void put_term(struct search *search, size_t at, struct vec3 term)
{
	search->x[at] = term.x;
	search->y[at] = term.y;
	search->z[at] = term.z;
}

static inline struct vec3 term_of(const struct search *search, size_t at)
{
	return (struct vec3){search->x[at], search->y[at], search->z[at]};
}

static inline size_t pair(const struct search *search, size_t j, size_t k)
{
	return search->joints + k * (k + 1) / 2 + j;
}

static void search_open(const struct support_view *view, const struct support_direction *direction,
                        double floor, double known, struct search *out)
{
	size_t n = view->count;
	out->joints = n;
	out->terms = n + n * (n + 1) / 2;
	out->still = along(direction, view->still);
	out->rim_open = out->found = out->reaches = false;
	double size = fabs(out->still.x) + fabs(out->still.y) + fabs(out->still.z);
	for (size_t k = 0; k < n; k++) {
		put_term(out, k, along(direction, view->turn[k]));
		for (size_t j = 0; j < k; j++)
			put_term(out, pair(out, j, k), along(direction, view->cross[j][k]));
		put_term(out, pair(out, k, k), along(direction, view->square[k]));
	}
	for (size_t i = 0; i < out->terms; i++)
		size += fabs(out->x[i]) + fabs(out->y[i]) + fabs(out->z[i]);
	out->slack = ROUNDING * size;
	/* lowered so far that rounding cannot hide an equal */
	out->floor = floor - 10 * out->slack;
	out->best = fmax(floor, known) - 10 * out->slack;
}

/* --- the tree of speeds ------------------------------------------------------------------------
 */

/* Whether no speed term holds joint k: its speed is then a companion, not a choice. */
static bool without_speed(const struct search *search, size_t k)
{
	double most = 0;
	for (size_t j = 0; j < search->joints; j++)
		most += most_of(term_of(search, j < k ? pair(search, j, k) : pair(search, k, j)));
	return most == 0;
}

/* What the tree needs beyond the bounds: once a pose, if at all. */
static void open_rim(struct search *search)
{
	struct vec3 turn[MAX_JOINTS_OF_ARM];
	for (size_t k = 0; k < search->joints; k++) {
		turn[k] = term_of(search, k);
		search->without_speed[k] = without_speed(search, k);
	}
	support_rim_build(turn, search->joints, IDLE / ROUNDING * search->slack, &search->rim);
	search->rim_open = true;
}

static void leaf(struct search *search)
{
	struct vec3 sum = search->still;
	for (size_t k = 0; k < search->joints; k++)
		for (size_t j = 0; j <= k; j++)
			sum = vec3_add(sum, vec3_scale(search->sign[j] * search->sign[k],
			                               term_of(search, pair(search, j, k))));
	size_t corner = 0;
	double value = support_rim_farthest(&search->rim, sum, &corner);
	if (value <= search->best)
		return;
	search->best = value;
	search->corner = corner;
	search->found = true;
	memcpy(search->best_sign, search->sign, sizeof search->sign);
}

/* `sum`: what is fixed, accelerations included. `turned`: some speed before is not 0, so that the
 * sign of this one matters. */
static void descend(struct search *search, size_t depth, double sum, bool turned)
{
	if (sum + search->rest[depth] + search->slack < search->best)
		return;
	if (depth == search->joints) {
		leaf(search);
		return;
	}
	search->sign[depth] = 1;
	if (search->without_speed[depth]) {
		descend(search, depth + 1, sum, turned);
		return;
	}
	const double *own = search->seen + pair(search, 0, depth);
	double with = 0;
	for (size_t j = 0; j < depth; j++)
		with += search->sign[j] * own[j];
	descend(search, depth + 1, sum + own[depth] + with, true);
	if (turned) {
		search->sign[depth] = -1;
		descend(search, depth + 1, sum + own[depth] - with, true);
	}
	search->sign[depth] = 0;
	descend(search, depth + 1, sum, turned);
}

/* --- sectors of headings -----------------------------------------------------------------------
 */

/* Cosine and sine of a sector's half width: 45 degrees, halved each time. */
struct half_width { double c, s; };
static const struct half_width sector_width[] = {
	{0.70710678118654752440, 0.70710678118654752440},
	{0.92387953251128675613, 0.38268343236508977173},
	{0.98078528040323044913, 0.19509032201612826785},
	{0.99518472667219688624, 0.098017140329560601994},
};
enum { LEVELS = sizeof sector_width / sizeof *sector_width };

/* Terms seen from the heading (x, y), their lengths stretched; what they add to the still one at
 * most. A square of a speed counts one way only. */
static double see(struct search *search, double x, double y)
{
	double sum = 0, other = 0;
	for (size_t i = 0; i < search->terms; i++)
		search->seen[i] = x * search->x[i] + y * search->y[i] + search->z[i];
	/* two sums, which the processor can add side by side */
	size_t even = search->terms & ~(size_t)1;
	for (size_t i = 0; i < even; i += 2) {
		sum += fabs(search->seen[i]);
		other += fabs(search->seen[i + 1]);
	}
	if (even < search->terms)
		sum += fabs(search->seen[even]);
	for (size_t k = 0; k < search->joints; k++) {
		double square = search->seen[pair(search, k, k)];
		sum += square < 0 ? square : 0;
	}
	return sum + other;
}

/* Once the sector cannot be left out: the tree of speeds in it. */
static void look_closely(struct search *search, double still)
{
	if (!search->rim_open)
		open_rim(search);
	for (size_t k = 0; k < search->joints; k++)
		still += fabs(search->seen[k]);
	search->rest[search->joints] = 0;
	for (size_t k = search->joints; k-- > 0;) {
		const double *own = search->seen + pair(search, 0, k);
		double sum = own[k] > 0 ? own[k] : 0;
		for (size_t j = 0; j < k; j++)
			sum += fabs(own[j]);
		search->rest[k] = search->rest[k + 1] + sum;
	}
	descend(search, 0, still, false);
}

/* The sector about heading (x, y), of that level of halving. */
static void look(struct search *search, double x, double y, size_t level)
{
	double stretch = level < LEVELS ? 1 / sector_width[level].c : 1;
	double ux = x * stretch, uy = y * stretch;
	double still = ux * search->still.x + uy * search->still.y + search->still.z;
	double most = still + see(search, ux, uy) + search->slack;
	if (most < (search->reaches ? search->best : search->floor))
		return;
	if (level + 1 < LEVELS) {
		struct half_width half = sector_width[level + 1];
		look(search, half.c * x - half.s * y, half.c * y + half.s * x, level + 1);
		look(search, half.c * x + half.s * y, half.c * y - half.s * x, level + 1);
		return;
	}
	search->reaches = true;
	if (most >= search->best)
		look_closely(search, still);
}

bool pose_support(const struct support_view *view, const struct support_direction *direction,
                  double floor, double known, bool *reaches, struct support_choice *out)
{
	struct search search;
	search_open(view, direction, floor, known, &search);
	if (direction->round && direction->d.x > 0) {
		look(&search, 1, 0, 0);
		look(&search, 0, 1, 0);
		look(&search, -1, 0, 0);
		look(&search, 0, -1, 0);
	} else {
		look(&search, 0, 0, LEVELS);
	}
	*reaches = search.reaches;
	if (!search.found)
		return false;
	out->value = search.best;
	memcpy(out->speed, search.best_sign, sizeof out->speed);
	memcpy(out->acceleration, search.rim.sign[search.corner], sizeof out->acceleration);
	return true;
}

void pose_support_at_speed(const struct support_view *view,
                           const struct support_direction *direction, const double share[],
                           struct support_choice *out)
{
	struct vec3 turn[MAX_JOINTS_OF_ARM], at = view->still;
	struct support_rim rim;
	size_t corner = 0;
	double size = 0;
	for (size_t k = 0; k < view->count; k++) {
		at = vec3_add(at, vec3_scale(share[k] * share[k], view->square[k]));
		for (size_t j = 0; j < k; j++)
			at = vec3_add(at, vec3_scale(share[j] * share[k], view->cross[j][k]));
		turn[k] = along(direction, view->turn[k]);
		size += most_of(turn[k]);
	}
	at = along(direction, at);
	support_rim_build(turn, view->count, IDLE * (size + most_of(at)), &rim);
	out->value = support_rim_farthest(&rim, at, &corner);
	memcpy(out->acceleration, rim.sign[corner], sizeof out->acceleration);
}

/* --- companions --------------------------------------------------------------------------------
 */

/* Gives the joints without acceleration, as far as they act there, the one that makes the resultant
 * in the plane of that space largest. */
static void settle_idle(enum support_space space, double height, const struct pose_terms *terms,
                        const struct motion_limits *limits, struct reaction_at *out)
{
	struct vec2 generator[MAX_JOINTS_OF_ARM] = {{0, 0}};
	struct vec3 at = support_seen(space, height, &out->wrench);
	struct vec2 centre = {at.x, at.y};
	struct zonogon idle;
	size_t corner = 0;
	double size = across(at);
	for (size_t j = 0; j < terms->count; j++) {
		struct vec3 turn = support_seen(space, height, &terms->a[j]);
		double most = limits->acceleration[j];
		size += most * across(turn);
		if (out->acceleration[j] == 0)
			generator[j] = (struct vec2){most * turn.x, most * turn.y};
	}
	zonogon_build(generator, terms->count, IDLE * size, &idle);
	if (!idle.count)
		return;
	zonogon_farthest(&idle, centre, &corner);
	for (size_t j = 0; j < terms->count; j++)
		out->acceleration[j] += zonogon_sign(&idle, corner, j) * limits->acceleration[j];
	terms_wrench(terms, out->speed, out->acceleration, &out->wrench);
}

void pose_support_fill(const struct pose_terms *terms, const struct motion_limits *limits,
                       double height, const struct support_direction *direction,
                       const struct support_choice *choice, struct reaction_at *out)
{
	enum support_space own = direction->space;
	for (size_t j = 0; j < terms->count; j++)
		out->acceleration[j] = choice->acceleration[j] * limits->acceleration[j];
	terms_wrench(terms, out->speed, out->acceleration, &out->wrench);
	settle_idle(own, height, terms, limits, out);
	settle_idle(own == SPACE_TENSION ? SPACE_SHEAR : SPACE_TENSION, height, terms, limits, out);
	out->value = support_value(direction, support_seen(own, height, &out->wrench));
}
