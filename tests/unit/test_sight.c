/* What is seen of a square past straight obstacles, and the area of unions. The expected values
 * follow from the construction of each figure. */
#include "../../src/plane/sight.h"

#include <criterion/criterion.h>
#include <math.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const double pi = 3.14159265358979323846;
static const struct vec2 origin = {0, 0};

static double seen_area(struct vec2 centre, double half, double turned, const struct segment *block,
                        size_t blocks)
{
	struct vec2 corner[PLANE_SEEN_MOST];
	cr_assert_leq(plane_seen_room(blocks), PLANE_SEEN_MOST);
	size_t count = plane_seen(centre, half, turned, block, blocks, corner);
	cr_assert_leq(count, plane_seen_room(blocks));
	return plane_area(corner, count);
}

Test(plane_seen, nothing_in_the_way)
{
	struct vec2 corner[PLANE_SEEN_MOST];
	cr_assert_eq(plane_seen(origin, 10, 0, NULL, 0, corner), 4);
	cr_assert_eq(plane_area(corner, 4), 400);
	cr_assert_float_eq(seen_area((struct vec2){1e6, -1e6}, 10, 0.3, NULL, 0), 400, 1e-6);
	cr_assert_eq(seen_area(origin, 0, 0, NULL, 0), 0, "a square without size");
}

/* an edge right through the square at 3: 13 of 20 are left */
Test(plane_seen, edge)
{
	const struct segment edge = {{3, -50}, {3, 50}}, back = {{3, 50}, {3, -50}},
	                     far = {{10, -50}, {10, 50}};
	cr_assert_float_eq(seen_area(origin, 10, 0, &edge, 1), 260, 1e-12);
	cr_assert_float_eq(seen_area(origin, 10, 0, &back, 1), 260, 1e-12, "either way round");
	cr_assert_float_eq(seen_area(origin, 10, 0, &far, 1), 400, 1e-12, "at the square's side");
}

/* A square of half side 10 on its corner, cut at 3 to the right: left of x = 3 lie all but a
 * triangle of height 10 sqrt(2) - 3, as wide as twice its height. */
Test(plane_seen, turned)
{
	const struct segment edge = {{3, -50}, {3, 50}};
	double height = 10 * sqrt(2) - 3;
	cr_assert_float_eq(seen_area(origin, 10, pi / 4, &edge, 1), 400 - height * height, 1e-10);
}

/* A wall from (5, -5) to (5, 5) hides what lies behind it in a quarter of the square: of the
 * triangle of 100 the nearer 25 remain. */
Test(plane_seen, shadow)
{
	const struct segment wall = {{5, -5}, {5, 5}}, half_wall = {{5, 0}, {5, 5}};
	cr_assert_float_eq(seen_area(origin, 10, 0, &wall, 1), 400 - 75, 1e-12);
	cr_assert_float_eq(seen_area(origin, 10, 0, &half_wall, 1), 400 - 37.5, 1e-12);
}

/* two walls that cross: in front of both, the roof of the nearer parts */
Test(plane_seen, crossing_walls)
{
	const struct segment wall[] = {{{4, -4}, {8, 8}}, {{4, 4}, {8, -8}}};
	/* they cross at (16/3, 0): seen are the triangles origin, (4, -4), (16/3, 0) and its mirror
	 * image */
	double seen = 2 * (4 * 16.0 / 3 / 2);
	cr_assert_float_eq(seen_area(origin, 10, 0, wall, 2), 300 + seen, 1e-12);
}

/* In a ring of obstacles the seen part is the ring itself. */
Test(plane_seen, ring)
{
	const struct vec2 ring[] = {{-7, -6}, {5, -8}, {9, 3}, {1, 9}, {-8, 4}};
	struct segment edge[COUNT(ring)];
	for (size_t i = 0; i < COUNT(ring); i++)
		edge[i] = (struct segment){ring[i], ring[(i + 1) % COUNT(ring)]};
	cr_assert_float_eq(seen_area(origin, 10, 0, edge, COUNT(ring)),
	                   plane_area(ring, COUNT(ring)), 1e-12);
	cr_assert_float_eq(seen_area((struct vec2){3, 1}, 20, 1, edge, COUNT(ring)),
	                   plane_area(ring, COUNT(ring)), 1e-12);
}

/* a round slab of as many corners as an outline may have, all of them seen */
Test(plane_seen, many_corners)
{
	enum { CORNERS = 512 };
	static struct segment edge[CORNERS];
	for (int i = 0; i < CORNERS; i++) {
		double a = 2 * pi * i / CORNERS, b = 2 * pi * (i + 1) / CORNERS;
		edge[i] = (struct segment){{100 * cos(a), 100 * sin(a)},
		                           {100 * cos(b), 100 * sin(b)}};
	}
	double ring = CORNERS * 100 * 100 * sin(2 * pi / CORNERS) / 2;
	cr_assert_float_eq(seen_area((struct vec2){20, -30}, 200, 0.2, edge, CORNERS), ring, 1e-8);
}

/* More pieces than there is room for: less is seen, never more, and nothing is overrun. */
Test(plane_seen, too_many_obstacles)
{
	enum { TEETH = 1500 };
	static struct segment tooth[TEETH];
	for (int i = 0; i < TEETH; i++) {
		double a = 2 * pi * i / TEETH, b = a + pi / TEETH;
		tooth[i] = (struct segment){{50 * cos(a), 50 * sin(a)},
		                            {50 * cos(b), 50 * sin(b)}};
	}
	double seen = seen_area(origin, 100, 0, tooth, TEETH);
	cr_assert_lt(seen, 40000 / 2 + pi * 50 * 50 / 2 + 100);
	cr_assert_gt(seen, 0);
}

Test(plane_seen, end_on)
{
	const struct segment away = {{2, 2}, {8, 8}};
	cr_assert_float_eq(seen_area(origin, 10, 0, &away, 1), 400, 1e-12);
}

/* Through the centre: one side is left; in a corner of 90 degrees a quarter, whichever way. */
Test(plane_seen, through_the_centre)
{
	const struct segment edge = {{0, -50}, {0, 50}}, short_edge = {{0, 0}, {0, 1}},
	                     corner[] = {{{0, 0}, {50, 0}}, {{0, 0}, {0, 50}}},
	                     beside[] = {{{0, -50}, {0, 50}}, {{-4, -50}, {-4, 50}}};
	cr_assert_float_eq(seen_area(origin, 10, 0, &edge, 1), 200, 1e-12);
	cr_assert_float_eq(seen_area(origin, 10, 0, &short_edge, 1), 200, 1e-12);
	cr_assert_float_eq(seen_area(origin, 10, 0, corner, 2), 100, 1e-12);
	cr_assert_float_eq(seen_area(origin, 10, 0, beside, 2), 80, 1e-12, "the lesser side");
	cr_assert_float_eq(seen_area(origin, 10, pi / 4, &edge, 1), 200, 1e-12);
}

Test(plane_sees, past_obstacles)
{
	const struct segment wall[] = {{{5, -5}, {5, 5}}, {{0, 20}, {10, 20}}};
	cr_assert_not(plane_sees(origin, (struct vec2){10, 0}, wall, 2));
	cr_assert(plane_sees(origin, (struct vec2){4, 0}, wall, 2));
	cr_assert(plane_sees(origin, (struct vec2){10, 11}, wall, 2));
	cr_assert_not(plane_sees(origin, (struct vec2){10, 10}, wall, 2), "a touch hides");
	cr_assert_not(plane_sees(origin, (struct vec2){0, 30}, wall, 2));
	cr_assert(plane_sees(origin, origin, wall, 2));
	const struct segment point = {{2, 0}, {2, 0}};
	cr_assert(plane_sees(origin, (struct vec2){4, 0}, &point, 1), "a point hides nothing");
}

/* --- unions --------------------------------------------------------------------------------- */

static struct vec2 square_corner[64][4];
static struct polygon square_at(size_t k, double x, double y, double half, double turned)
{
	double c = half * cos(turned), s = half * sin(turned);
	struct vec2 *at = square_corner[k];
	at[0] = (struct vec2){x - c + s, y - s - c};
	at[1] = (struct vec2){x + c + s, y + s - c};
	at[2] = (struct vec2){x + c - s, y + s + c};
	at[3] = (struct vec2){x - c - s, y - s + c};
	return (struct polygon){at, 4};
}

Test(plane_union_area, few_squares)
{
	struct polygon list[3] = {square_at(0, 0, 0, 10, 0)};
	cr_assert_eq(plane_union_area(list, 0), 0);
	cr_assert_eq(plane_union_area(list, 1), 400);
	list[1] = square_at(1, 0, 0, 10, 0);
	cr_assert_eq(plane_union_area(list, 2), 400, "one upon the other");
	list[1] = square_at(1, 20, 0, 10, 0);
	cr_assert_eq(plane_union_area(list, 2), 800, "side by side");
	list[1] = square_at(1, 5, 8, 10, 0);
	cr_assert_eq(plane_union_area(list, 2), 800 - 15 * 12);
	list[2] = square_at(2, 100, 1, 10, 0);
	cr_assert_eq(plane_union_area(list, 3), 1200 - 15 * 12);
	list[2] = (struct polygon){NULL, 0};
	cr_assert_eq(plane_union_area(list, 3), 800 - 15 * 12, "one without corners");
}

/* two squares of half 10 about one centre, one turned by 45 degrees: an eight-pointed star, whose
 * common part is a regular octagon of inner radius 10 */
Test(plane_union_area, star)
{
	struct polygon list[2] = {square_at(0, 0, 0, 10, 0), square_at(1, 0, 0, 10, pi / 4)};
	double octagon = 8 * 100 * tan(pi / 8);
	cr_assert_float_eq(plane_union_area(list, 2), 800 - octagon, 1e-10);
}

/* eight by eight squares on a grid that is turned by degrees that are no round number in radians */
Test(plane_union_area, grid)
{
	static struct polygon list[64];
	for (int degrees = 0; degrees < 90; degrees++) {
		double turned = degrees * pi / 180, c = cos(turned), s = sin(turned);
		for (size_t k = 0; k < 64; k++) {
			double x = 100.1 * (double)(k % 8), y = 100.1 * (double)(k / 8);
			list[k] = square_at(k, c * x - s * y, s * x + c * y, 150, turned);
		}
		double side = 7 * 100.1 + 300;
		cr_assert_float_eq(plane_union_area(list, 64) / (side * side), 1, 1e-13,
		                   "%d degrees", degrees);
	}
}

/* all of them clipped by one edge: their sides coincide along it */
Test(plane_union_area, clipped_by_one_edge)
{
	const struct segment edge = {{-1000, 31.7}, {1000, 87.3}};
	static struct vec2 corner[6][PLANE_SEEN_MOST];
	struct polygon list[6];
	double gone = 0;
	for (size_t k = 0; k < 6; k++) {
		list[k].at = corner[k];
		list[k].count = plane_seen((struct vec2){40.3 * (double)k, 0}, 100, 0, &edge, 1,
		                           corner[k]);
	}
	/* above the edge lies a trapezium that is as wide as the rectangle of all */
	double slope = (87.3 - 31.7) / 2000, width = 5 * 40.3 + 200;
	double left = 100 - (31.7 + 900 * slope), right = left - slope * width;
	gone = (left + right) / 2 * width;
	cr_assert_float_eq(plane_union_area(list, 6) / (width * 200 - gone), 1, 1e-13);
}

/* regions with a notch, once with an edge of the other in it */
Test(plane_union_area, notched)
{
	const struct vec2 notched[] = {{0, 0}, {10, 0}, {10, 10}, {6, 10}, {6, 4}, {4, 4},
	                               {4, 10}, {0, 10}};
	const struct vec2 bar[] = {{-2, 6}, {12, 6}, {12, 8}, {-2, 8}};
	const struct polygon list[] = {{notched, COUNT(notched)}, {bar, COUNT(bar)}};
	cr_assert_float_eq(plane_union_area(list, 1), 88, 1e-12);
	cr_assert_float_eq(plane_union_area(list, 2), 88 + 2 * 4 + 2 * 2, 1e-12);
}
