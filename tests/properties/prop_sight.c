/* Areas of cones against a count of random points: random anchors, slabs that are convex or
 * L-shaped or none, joints anywhere. And what must not change an area, or not enlarge it. SEED and
 * CASES may be set in the environment; a failure names its case. */
#include "../../src/strength/pattern.h"
#include "../support/cases.h"
#include "../support/random_base.h"

#include <criterion/criterion.h>
#include <inttypes.h>
#include <math.h>
#include <stdio.h>

static const double pi = 3.14159265358979323846;

enum { MOST = 6, MOST_EDGES = 24, CELLS = 120 };

/* One random pattern, and its squares. */
struct thrown {
	size_t count, edges;
	struct vec2 at[MOST];
	struct segment edge[MOST_EDGES];
	double turned, half;
};

static uint64_t number;
static struct arena arena;

/* --- throwing ------------------------------------------------------------------------------- */

static void add_ring(struct thrown *to, const struct vec2 *ring, size_t n)
{
	for (size_t i = 0; i < n; i++)
		to->edge[to->edges++] = (struct segment){ring[i], ring[(i + 1) % n]};
}

/* A convex slab about the anchors, or an L, or none. */
static void throw_outline(struct thrown *to, struct dice *dice)
{
	double x = dice_between(dice, 300, 900), y = dice_between(dice, 300, 900);
	double in_x = dice_between(dice, -200, 200), in_y = dice_between(dice, -200, 200);
	const struct vec2 angle[] = {{-x, -y},     {x, -y},   {x, in_y},
	                             {in_x, in_y}, {in_x, y}, {-x, y}};
	struct vec2 ring[8];
	size_t corners = (size_t)dice_whole(dice, 3, 8);
	switch (dice_whole(dice, 0, 2)) {
	case 0:
		add_ring(to, angle, 6);
		break;
	case 1:
		for (size_t i = 0; i < corners; i++) {
			double heading = 2 * pi * (double)i / (double)corners + in_x;
			ring[i] = (struct vec2){x * cos(heading), y * sin(heading)};
		}
		add_ring(to, ring, corners);
		break;
	default: break;
	}
}

/* Whether an anchor stands upon an edge, within a hair: a count of points has no say there. */
static bool stands_upon(const struct thrown *of, const struct segment *edge)
{
	for (size_t i = 0; i < of->count; i++)
		if (plane_distance_to_segment(of->at[i], edge->from, edge->to) < 1e-3)
			return true;
	return false;
}

/* Every fourth stands on a coarse grid with joints upon it too, so that much coincides. */
static void throw_one(struct thrown *out, struct dice *dice)
{
	double grid = number % 4 == 0 ? 50 : 0;
	*out = (struct thrown){.count = (size_t)dice_whole(dice, 1, MOST),
	                       .half = grid > 0 ? 50 * dice_whole(dice, 1, 6)
	                                        : dice_between(dice, 50, 300)};
	for (size_t i = 0; i < out->count; i++)
		out->at[i] = grid > 0 ? (struct vec2){100 * dice_whole(dice, -2, 2),
		                                      100 * dice_whole(dice, -2, 2)}
		                      : (struct vec2){dice_between(dice, -250, 250),
		                                      dice_between(dice, -250, 250)};
	out->turned = number & 1 ? dice_between(dice, -pi, pi) : 0;
	throw_outline(out, dice);
	for (int joints = dice_whole(dice, 0, 8); joints > 0; joints--) {
		struct segment joint;
		if (grid > 0)
			joint = (struct segment){
				{grid * dice_whole(dice, -8, 8), grid * dice_whole(dice, -8, 8)},
				{grid * dice_whole(dice, -8, 8), grid * dice_whole(dice, -8, 8)}};
		else
			joint = (struct segment){
				{dice_between(dice, -500, 500), dice_between(dice, -500, 500)},
				{dice_between(dice, -500, 500), dice_between(dice, -500, 500)}};
		out->edge[out->edges++] = joint;
	}
	for (size_t e = 0; e < out->edges;)
		if (stands_upon(out, &out->edge[e]))
			out->edge[e] = out->edge[--out->edges];
		else
			e++;
}

/* The same seen in other axes. */
static struct thrown move(const struct thrown *from, double turn, double dx, double dy)
{
	struct thrown to = *from;
	double c = cos(turn), s = sin(turn);
	struct vec2 *point[MOST + 2 * MOST_EDGES];
	size_t points = 0;
	for (size_t i = 0; i < to.count; i++)
		point[points++] = &to.at[i];
	for (size_t e = 0; e < to.edges; e++) {
		point[points++] = &to.edge[e].from;
		point[points++] = &to.edge[e].to;
	}
	for (size_t k = 0; k < points; k++)
		*point[k] = (struct vec2){c * point[k]->x - s * point[k]->y + dx,
		                          s * point[k]->x + c * point[k]->y + dy};
	to.turned += turn;
	return to;
}

/* --- areas ---------------------------------------------------------------------------------- */

/* Of the squares as they stand, without the choice of the lesser of two positions. */
static double union_of(const struct thrown *of)
{
	static struct vec2 corner[MOST][PLANE_SEEN_MOST];
	struct polygon list[MOST];
	for (size_t i = 0; i < of->count; i++)
		list[i] = (struct polygon){corner[i], plane_seen(of->at[i], of->half, of->turned,
		                                                 of->edge, of->edges, corner[i])};
	return plane_union_area(list, of->count);
}

static double area_of(const struct thrown *of)
{
	struct pattern pattern;
	cr_assert(pattern_build(of->at, of->count, of->turned, of->edge, of->edges, 0, &arena,
	                        &pattern));
	return group_area(&pattern, ((uint64_t)1 << of->count) - 1, of->half, "A", "", NULL);
}

static double side_of(struct vec2 a, struct vec2 b, struct vec2 c)
{
	return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static bool is_covered(const struct thrown *of, struct vec2 point)
{
	double c = cos(of->turned), s = sin(of->turned);
	for (size_t i = 0; i < of->count; i++) {
		struct vec2 at = of->at[i];
		double dx = point.x - at.x, dy = point.y - at.y;
		bool in = fabs(c * dx + s * dy) <= of->half && fabs(c * dy - s * dx) <= of->half;
		for (size_t e = 0; in && e < of->edges; e++) {
			struct vec2 a = of->edge[e].from, b = of->edge[e].to;
			in = side_of(at, point, a) * side_of(at, point, b) >= 0 ||
			     side_of(a, b, at) * side_of(a, b, point) >= 0;
		}
		if (in)
			return true;
	}
	return false;
}

/* A point anywhere in each of CELLS times CELLS fields that lie over all squares; *doubt: one
 * standard deviation at most, where `border` fields are neither wholly in nor out. */
static double count_points(const struct thrown *of, struct dice *dice, double *doubt)
{
	double low[2] = {HUGE_VAL, HUGE_VAL}, high[2] = {-HUGE_VAL, -HUGE_VAL}, inside = 0;
	static bool in[CELLS][CELLS];
	for (size_t i = 0; i < of->count; i++) {
		low[0] = fmin(low[0], of->at[i].x - 1.5 * of->half);
		low[1] = fmin(low[1], of->at[i].y - 1.5 * of->half);
		high[0] = fmax(high[0], of->at[i].x + 1.5 * of->half);
		high[1] = fmax(high[1], of->at[i].y + 1.5 * of->half);
	}
	double wide = (high[0] - low[0]) / CELLS, deep = (high[1] - low[1]) / CELLS, border = 0;
	for (int i = 0; i < CELLS; i++)
		for (int k = 0; k < CELLS; k++) {
			struct vec2 point = {low[0] + wide * (i + dice_between(dice, 0, 1)),
			                     low[1] + deep * (k + dice_between(dice, 0, 1))};
			in[i][k] = is_covered(of, point);
			inside += in[i][k];
		}
	/* a field beside one of the other kind may hold the border */
	for (int i = 1; i < CELLS; i++)
		for (int k = 1; k < CELLS; k++)
			border += in[i][k] != in[i - 1][k] || in[i][k] != in[i][k - 1];
	*doubt = wide * deep * sqrt(2 * border + 4) / 2;
	return inside * wide * deep;
}

/* Ten standard deviations are never reached by chance; over many cases the mean tells a bias. */
Test(prop_sight, against_points)
{
	uint64_t count = cases_count("areas against points", 20);
	double sum = 0, variance = 0, worst = 0, apart = 0;
	for (number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed() + 30, number);
		struct thrown thrown;
		double doubt;
		throw_one(&thrown, &dice);
		double exact = union_of(&thrown), counted = count_points(&thrown, &dice, &doubt);
		cr_assert_float_eq(exact, counted, 10 * doubt,
		                   "seed %" PRIu64 " case %" PRIu64 ": %.12g, by points %.12g",
		                   cases_seed(), number, exact, counted);
		double whole = 4 * thrown.half * thrown.half;
		sum += exact - counted;
		variance += doubt * doubt;
		worst = fmax(worst, fabs(exact - counted) / whole);
		apart += fabs(exact - counted) / whole;
	}
	printf("areas against points: mean %.1e, worst %.1e of a square\n", apart / (double)count,
	       worst);
	cr_assert_leq(fabs(sum), 5 * sqrt(variance), "the mean is off by %g",
	              sum / (double)count);
}

static void same(const char *what, double a, double b, double whole)
{
	/* sums of some hundred products of coordinates up to ten half sides */
	cr_assert_float_eq(a, b, 1e-10 * whole,
	                   "%s, seed %" PRIu64 " case %" PRIu64 ": %.15g and %.15g", what,
	                   cases_seed(), number, a, b);
}

/* Other axes, and the anchors in another order, change no area. */
Test(prop_sight, other_axes)
{
	uint64_t count = cases_count("areas in other axes", 4);
	arena_open(&arena, NULL, NULL);
	for (number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed() + 31, number);
		struct thrown thrown, other;
		throw_one(&thrown, &dice);
		double whole = 4 * thrown.half * thrown.half;
		other = move(&thrown, dice_between(&dice, -pi, pi), 200, -300);
		same("turned", union_of(&thrown), union_of(&other), whole);
		/* which of two edges at the same distance is the nearest is a matter of rounding:
		 * on the grid it is left out */
		if (number % 4)
			same("turned, group", area_of(&thrown), area_of(&other), whole);
		other = thrown;
		for (size_t i = 0; i < thrown.count; i++)
			other.at[i] = thrown.at[thrown.count - 1 - i];
		same("order", union_of(&thrown), union_of(&other), whole);
	}
	arena_close(&arena);
}

/* A further joint never enlarges what is seen, and a larger square never lessens it. */
Test(prop_sight, a_further_joint)
{
	uint64_t count = cases_count("a further joint", 4);
	for (number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed() + 32, number);
		struct thrown thrown;
		throw_one(&thrown, &dice);
		double whole = 4 * thrown.half * thrown.half, before = union_of(&thrown);
		struct thrown other = thrown;
		other.edge[other.edges++] = (struct segment){
			{dice_between(&dice, -500, 500), dice_between(&dice, -500, 500)},
			{dice_between(&dice, -500, 500), dice_between(&dice, -500, 500)}};
		cr_assert_leq(union_of(&other), before + 1e-10 * whole,
		              "seed %" PRIu64 " case %" PRIu64, cases_seed(), number);
		thrown.half *= 1.1;
		cr_assert_geq(union_of(&thrown), before - 1e-10 * whole,
		              "seed %" PRIu64 " case %" PRIu64, cases_seed(), number);
	}
}

/* Upon one another the anchors have one square; far apart as many as they are. In between the area
 * lies between both. */
Test(prop_sight, spacing)
{
	uint64_t count = cases_count("spacing", 20);
	arena_open(&arena, NULL, NULL);
	for (number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed() + 33, number);
		struct thrown thrown;
		throw_one(&thrown, &dice);
		thrown.edges = 0;
		double whole = 4 * thrown.half * thrown.half, n = (double)thrown.count;
		double between = area_of(&thrown);
		cr_assert_leq(between, n * whole * (1 + 1e-12));
		cr_assert_geq(between, whole * (1 - 1e-12));
		for (size_t i = 0; i < thrown.count; i++)
			thrown.at[i] = (struct vec2){1e-9 * (double)i, 0};
		same("none", area_of(&thrown), whole, whole);
		for (size_t i = 0; i < thrown.count; i++)
			thrown.at[i] = (struct vec2){3 * thrown.half * (double)i,
			                             -2.9 * thrown.half * (double)i};
		same("far", area_of(&thrown), n * whole, whole);
	}
	arena_close(&arena);
}

/* A group has no more area than its anchors by themselves, and each of its anchors no more than
 * it; with an edge in the way the nearest edge is always one that is seen. */
Test(prop_sight, parts_of_a_group)
{
	uint64_t count = cases_count("parts of a group", 10);
	arena_open(&arena, NULL, NULL);
	for (number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed() + 34, number);
		struct thrown thrown;
		throw_one(&thrown, &dice);
		double whole = 4 * thrown.half * thrown.half, together = union_of(&thrown), sum = 0;
		struct pattern pattern;
		cr_assert(pattern_build(thrown.at, thrown.count, thrown.turned, thrown.edge,
		                        thrown.edges, 0, &arena, &pattern));
		for (size_t i = 0; i < thrown.count; i++) {
			struct thrown one = thrown;
			one.count = 1;
			one.at[0] = thrown.at[i];
			double alone = union_of(&one), least = HUGE_VAL, seen = HUGE_VAL;
			cr_assert_leq(alone, together + 1e-10 * whole);
			sum += alone;
			for (size_t e = 0; e < thrown.edges; e++) {
				least = fmin(least, plane_distance_to_segment(thrown.at[i],
				                                              thrown.edge[e].from,
				                                              thrown.edge[e].to));
				seen = fmin(seen, pattern.distance[i * thrown.edges + e]);
			}
			cr_assert_eq(least, seen, "seed %" PRIu64 " case %" PRIu64 ": %g, %g",
			             cases_seed(), number, least, seen);
		}
		cr_assert_leq(together, sum + 1e-10 * whole);
	}
	arena_close(&arena);
}
