/* A guaranteed upper bound over all poses.
 *
 * First: at fixed speeds and accelerations and in a fixed direction, the reaction is a
 * trigonometric polynomial of each revolute joint's angle, of degree 1 for forces and 2 for
 * moments. Momentum is a sum of rates of positions R(q) r, each of degree 1; its moment is a sum of
 * products of two of them, and of R I R^T omega; their rates keep the degree (own derivation). Of a
 * prismatic joint's position it is a plain polynomial of the same degree; with position = middle +
 * half range x cos(phi) it is a trigonometric one of phi.
 *
 * Second: such a polynomial f of degree d, with its largest |f| at x*, obeys
 *   |f(x)| >= |f(x*)| cos(d (x - x*)) for |x - x*| <= pi / d     (M. Riesz 1914, from memory).
 * Of N equally spaced points one is within pi / N of x*, so that, for N > 2 d,
 *   max |f| <= max over the points / cos(pi d / N)     (the form of Ehlich and Zeller 1964, from
 * memory). One factor a joint, since the others may be held fixed in turn.
 *
 * Third: at a point of the grid |f| is bounded over all directions, accelerations and speeds at
 * once, with each square of a speed in [0, limit^2] and each product of two in +-limit x limit, as
 * if they were free of each other. All these vectors span a zonogon, whose farthest corner is found
 * exactly.
 *
 * The weight is the same force in every pose: it is left out of the polynomial of the forces and
 * added behind. */
#include "reaction_sweep.h"

#include "pose_frames.h"
#include "pose_grid.h"
#include "reaction_view.h"
#include "zonogon.h"
#include <math.h>

/* Rounding of the whole way, with a thousand to spare. */
#define ROUNDING 1e-11

static const double pi = 3.14159265358979323846;

static bool is_force(enum reaction_kind kind)
{
	return kind == REACTION_HORIZONTAL || kind == REACTION_UPLIFT || kind == REACTION_DOWNFORCE;
}

/* All that speeds and accelerations can add, about `middle`. */
static size_t spread(const struct reaction_view *view, struct vec2 generator[], struct vec2 *middle)
{
	size_t count = 0;
	for (size_t k = 0; k < view->count; k++) {
		struct vec2 none = {0, 0};
		generator[count++] = view->turn[k];
		generator[count++] = vec2_add_times(none, 0.5, view->square[k]);
		*middle = vec2_add_times(*middle, 0.5, view->square[k]);
		for (size_t j = 0; j < k; j++)
			generator[count++] = view->cross[j][k];
	}
	return count;
}

/* Largest distance at one pose; `known` when it is not passed. */
static double peak_at(enum reaction_kind kind, const struct pose_terms *terms,
                      const struct motion_limits *limits, double known)
{
	struct reaction_view view;
	struct vec2 generator[MAX_GENERATORS], middle = {0, 0};
	struct zonogon zonogon;
	reaction_view_open(kind, terms, limits, &view);
	if (!is_force(kind))
		middle = view.still;
	/* the triangle inequality denies most poses; the slack keeps rounding from hiding an equal
	 */
	double most = sqrt(middle.x * middle.x + middle.y * middle.y) + view.reach + view.rest[0];
	if (most * (1 + ROUNDING) < known)
		return known;
	size_t count = spread(&view, generator, &middle);
	zonogon_build(generator, count, 0, &zonogon);
	return fmax(known, sqrt(zonogon_farthest(&zonogon, middle, NULL)));
}

static void raise_peaks(const struct pose_terms *terms, const struct motion_limits *limits,
                        struct reaction_extremes *into)
{
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		into->peak[kind] = peak_at((enum reaction_kind)kind, terms, limits,
		                           into->peak[kind]);
}

size_t reaction_bound_count(const struct chain *chain, const struct motion_limits *limits)
{
	struct prepared_chain prepared;
	struct pose_grid grid;
	chain_prepare(chain, &prepared);
	pose_grid_open(&prepared, limits, GRID_BOUND, &grid);
	return pose_grid_total(&grid);
}

void reaction_bound_sweep(const struct chain *chain, const struct motion_limits *limits,
                          size_t from, size_t to, struct reaction_extremes *into)
{
	struct prepared_chain prepared;
	struct pose_grid grid;
	struct grid_place place;
	struct pose_frames frames;
	struct pose_terms terms;
	chain_prepare(chain, &prepared);
	pose_grid_open(&prepared, limits, GRID_BOUND, &grid);
	pose_grid_place(&grid, from, &place);
	for (size_t pose = from, moved = 0; pose < to; pose++) {
		pose_frames_place(&prepared, place.q, moved, &frames);
		pose_frames_terms(&prepared, &frames, &terms);
		raise_peaks(&terms, limits, into);
		moved = pose_grid_next(&grid, &place);
	}
}

/* 1 / cos(pi d / N) of every joint that moves, multiplied. */
static double factor_of(const struct pose_grid *grid, double degree)
{
	double factor = 1;
	for (size_t i = 0; i < grid->count; i++) {
		size_t points = pose_grid_circle(&grid->joint[i]);
		if (points)
			factor /= cos(pi * degree / (double)points);
	}
	return factor;
}

void reaction_bound_from_peaks(const struct chain *chain, const struct motion_limits *limits,
                               struct reaction_extremes *extremes)
{
	struct prepared_chain prepared;
	struct pose_grid grid;
	double mass = 0;
	chain_prepare(chain, &prepared);
	pose_grid_open(&prepared, limits, GRID_BOUND, &grid);
	for (size_t i = 0; i < prepared.count; i++)
		mass += prepared.link[i].mass;
	struct base_wrench weight = {{mass * prepared.gravity.x, mass * prepared.gravity.y,
	                              mass * prepared.gravity.z}, {0, 0, 0}};
	double of_forces = factor_of(&grid, 1), of_moments = factor_of(&grid, 2);
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		double still = reaction_value((enum reaction_kind)kind, &weight);
		double factor = is_force((enum reaction_kind)kind) ? of_forces : of_moments;
		double moving = factor * extremes->peak[kind];
		extremes->bound[kind] = still + moving + ROUNDING * (fabs(still) + moving);
		if (extremes->peak[kind] < 0)
			extremes->bound[kind] = HUGE_VAL;
	}
}

void reaction_bound(const struct chain *chain, const struct motion_limits *limits,
                    struct reaction_extremes *extremes)
{
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		extremes->peak[kind] = -1;
	reaction_bound_sweep(chain, limits, 0, reaction_bound_count(chain, limits), extremes);
	reaction_bound_from_peaks(chain, limits, extremes);
}
