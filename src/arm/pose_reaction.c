/* The largest reaction of one kind at one pose, over the signs of speed and all accelerations.
 *
 * The speeds form a tree, a joint a level, branches +, - and 0; a wrench does not change when all
 * speeds turn round, so the first that is not 0 is +. A branch is cut when the triangle inequality
 * shows that nothing in it can pass what is known. At each leaf the accelerations add a zonogon,
 * and a resultant, convex in them, is largest at one of its corners: 2 n of them instead of 2^n
 * signs. */
#include "pose_reaction.h"

#include "reaction_view.h"
#include "zonogon.h"
#include <math.h>
#include <string.h>

/* Rounding of a sum of some hundred terms, relative to the sum of their sizes, with a hundred to
 * spare. */
#define ROUNDING 1e-12
/* A joint that moves the value by less than this share of all terms is left to the companion. */
#define IDLE 1e-13

struct search {
	const struct reaction_view *view;
	struct zonogon accelerations;
	double reach;                            /* farthest corner of the zonogon */
	double slack;
	double best;                             /* largest distance so far; or what it must pass */
	double best_square;
	int sign[MAX_JOINTS_OF_ARM];             /* of the branch being looked at */
	int best_sign[MAX_JOINTS_OF_ARM];
	size_t best_corner;
	bool found;
	bool without_speed[MAX_JOINTS_OF_ARM];
};

/* Whether no speed term holds joint k: its speed is then a companion, not a choice. */
static bool without_speed(const struct reaction_view *view, size_t k)
{
	bool moves = view->square[k].x != 0 || view->square[k].y != 0;
	for (size_t j = 0; j < view->count; j++) {
		const struct vec2 *cross = j < k ? &view->cross[j][k] : &view->cross[k][j];
		if (j != k)
			moves = moves || cross->x != 0 || cross->y != 0;
	}
	return !moves;
}

static void search_open(struct search *search, const struct reaction_view *view, double floor)
{
	search->view = view;
	zonogon_build(view->turn, view->count, IDLE * view->size, &search->accelerations);
	struct vec2 middle = {0, 0};
	search->reach = sqrt(zonogon_farthest(&search->accelerations, middle, NULL));
	search->slack = ROUNDING * view->size;
	/* a distance of 0 must pass too where nothing acts at all: no slack is left there */
	search->best = floor > 0 ? floor : -1;
	search->best_square = floor > 0 ? floor * floor : -1;
	search->found = false;
	for (size_t k = 0; k < view->count; k++)
		search->without_speed[k] = without_speed(view, k);
}

/* Whether a branch, of which `sum` is fixed and the joints from `depth` on are open, can be left
 * out. */
static bool cut(const struct search *search, size_t depth, struct vec2 sum)
{
	double needed = search->best - search->view->rest[depth] - search->reach - search->slack;
	return needed > 0 && sum.x * sum.x + sum.y * sum.y < needed * needed;
}

static void leaf(struct search *search, struct vec2 sum)
{
	size_t corner = 0;
	double square = zonogon_farthest(&search->accelerations, sum, &corner);
	if (square <= search->best_square)
		return;
	search->best_square = square;
	search->best = sqrt(square);
	search->best_corner = corner;
	search->found = true;
	memcpy(search->best_sign, search->sign, sizeof search->sign);
}

/* What the speed of joint k adds per unit sign, given the signs before it. */
static struct vec2 coupling(const struct search *search, size_t k)
{
	struct vec2 sum = {0, 0};
	for (size_t j = 0; j < k; j++)
		sum = vec2_add_times(sum, search->sign[j], search->view->cross[j][k]);
	return sum;
}

/* `turned`: some speed before is not 0, so that the sign of this one matters. */
static void descend(struct search *search, size_t depth, struct vec2 sum, bool turned)
{
	const struct reaction_view *view = search->view;
	if (cut(search, depth, sum))
		return;
	if (depth == view->count) {
		leaf(search, sum);
		return;
	}
	search->sign[depth] = 1;
	if (search->without_speed[depth]) {
		descend(search, depth + 1, sum, turned);
		return;
	}
	struct vec2 own = view->square[depth], with = coupling(search, depth);
	struct vec2 moving = vec2_add_times(sum, 1, own);
	descend(search, depth + 1, vec2_add_times(moving, 1, with), true);
	if (turned) {
		search->sign[depth] = -1;
		descend(search, depth + 1, vec2_add_times(moving, -1, with), true);
	}
	search->sign[depth] = 0;
	descend(search, depth + 1, sum, turned);
}

/* --- companions --------------------------------------------------------------------------------
 */

/* Joints whose acceleration does not change the value get the one that makes the companion larger:
 * they do move in that instant, and no anchor is spared by leaving them out. */
static void settle_idle(enum reaction_kind kind, const struct pose_terms *terms,
                        const struct motion_limits *limits, const struct zonogon *active,
                        struct reaction_at *out)
{
	enum reaction_kind companion = kind == REACTION_TILTING ? REACTION_HORIZONTAL
	                                                        : REACTION_TILTING;
	struct vec2 generator[MAX_JOINTS_OF_ARM] = {{0, 0}};
	bool any = false;
	struct reaction_view view;
	for (size_t j = 0; j < terms->count; j++)
		any = any || (!active->side[j] && limits->acceleration[j] > 0);
	if (!any)
		return;
	reaction_view_open(companion, terms, limits, &view);
	for (size_t j = 0; j < terms->count; j++)
		if (!active->side[j])
			generator[j] = view.turn[j];
	struct zonogon idle;
	size_t corner;
	const double *force = out->wrench.force, *moment = out->wrench.moment;
	struct vec2 tilting = {moment[0], moment[1]}, horizontal = {force[0], force[1]};
	zonogon_build(generator, terms->count, IDLE * view.size, &idle);
	zonogon_farthest(&idle, companion == REACTION_TILTING ? tilting : horizontal, &corner);
	for (size_t j = 0; j < terms->count; j++)
		out->acceleration[j] += zonogon_sign(&idle, corner, j) * limits->acceleration[j];
	terms_wrench(terms, out->speed, out->acceleration, &out->wrench);
}

/* Accelerations of a corner, then wrench and value by the plain sum, whatever way the corner was
 * found. */
static void fill(enum reaction_kind kind, const struct pose_terms *terms,
                 const struct motion_limits *limits, const struct zonogon *accelerations,
                 size_t corner, struct reaction_at *out)
{
	for (size_t j = 0; j < terms->count; j++)
		out->acceleration[j] = zonogon_sign(accelerations, corner, j) *
		                       limits->acceleration[j];
	terms_wrench(terms, out->speed, out->acceleration, &out->wrench);
	settle_idle(kind, terms, limits, accelerations, out);
	out->value = reaction_value(kind, &out->wrench);
}

/* A distance that no speeds and accelerations pass. Squares of speeds only add one way: half of
 * them moves the middle, half is spread about it. */
static double farthest_at_most(const struct reaction_view *view)
{
	struct vec2 middle = view->still;
	double spread = view->reach + view->rest[0];
	for (size_t k = 0; k < view->count; k++) {
		struct vec2 square = view->square[k];
		middle = vec2_add_times(middle, 0.5, square);
		spread -= 0.5 * sqrt(square.x * square.x + square.y * square.y);
	}
	return sqrt(middle.x * middle.x + middle.y * middle.y) + spread;
}

/* --- the two questions -------------------------------------------------------------------------
 */

bool pose_reaction(enum reaction_kind kind, const struct pose_terms *terms,
                   const struct motion_limits *limits, double floor, struct reaction_at *out)
{
	struct reaction_view view;
	reaction_view_open(kind, terms, limits, &view);
	/* what must be passed, lowered so far that rounding cannot hide an equal */
	double passed = floor + view.shift - 10 * ROUNDING * view.size;
	if (farthest_at_most(&view) < passed)
		return false;
	struct search search;
	search_open(&search, &view, passed);
	descend(&search, 0, view.still, false);
	if (!search.found)
		return false;
	for (size_t j = 0; j < terms->count; j++)
		out->speed[j] = search.best_sign[j] * limits->speed[j];
	fill(kind, terms, limits, &search.accelerations, search.best_corner, out);
	return true;
}

void pose_reaction_at_speed(enum reaction_kind kind, const struct pose_terms *terms,
                            const struct motion_limits *limits, const double speed[],
                            struct reaction_at *out)
{
	struct reaction_view view;
	struct zonogon accelerations;
	double share[MAX_JOINTS_OF_ARM];
	size_t corner;
	reaction_view_open(kind, terms, limits, &view);
	for (size_t j = 0; j < terms->count; j++) {
		share[j] = limits->speed[j] > 0 ? speed[j] / limits->speed[j] : 0;
		out->speed[j] = speed[j];
	}
	zonogon_build(view.turn, view.count, IDLE * view.size, &accelerations);
	zonogon_farthest(&accelerations, reaction_view_at(&view, share), &corner);
	fill(kind, terms, limits, &accelerations, corner, out);
}
