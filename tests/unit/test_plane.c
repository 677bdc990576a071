/* Plane geometry. The expected values follow from the construction of each figure. */
#include "../../src/plane/plane.h"

#include <criterion/criterion.h>
#include <math.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct vec2 square[] = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
/* an L: the square without its upper right quarter */
static const struct vec2 angle[] = {{0, 0}, {10, 0}, {10, 5}, {5, 5}, {5, 10}, {0, 10}};

static bool overlap_both_ways(const struct vec2 *a, size_t na, const struct vec2 *b, size_t nb)
{
	bool one = plane_rings_overlap(a, na, b, nb), other = plane_rings_overlap(b, nb, a, na);
	cr_assert_eq(one, other, "overlap is symmetric");
	struct vec2 back[16];
	for (size_t i = 0; i < nb; i++)
		back[i] = b[nb - 1 - i];
	cr_assert_eq(one, plane_rings_overlap(a, na, back, nb),
	             "overlap knows no sense of rotation");
	return one;
}

static void rectangle(double x, double y, double length, double width, struct vec2 out[4])
{
	out[0] = (struct vec2){x, y};
	out[1] = (struct vec2){x + length, y};
	out[2] = (struct vec2){x + length, y + width};
	out[3] = (struct vec2){x, y + width};
}

Test(plane_area, sign_and_size)
{
	const struct vec2 clockwise[] = {{0, 0}, {0, 10}, {10, 10}, {10, 0}};
	cr_assert_eq(plane_area(square, 4), 100);
	cr_assert_eq(plane_area(clockwise, 4), -100);
	cr_assert_eq(plane_area(angle, 6), 75);
	cr_assert_eq(plane_area(square, 2), 0);
	cr_assert_eq(plane_area(square, 0), 0);
}

/* a square of 1 mm at 1 km: products about the origin would lose six digits */
Test(plane_area, far_from_the_origin)
{
	struct vec2 far[4];
	rectangle(1e6, -1e6, 1, 1, far);
	cr_assert_float_eq(plane_area(far, 4), 1, 1e-12);
}

Test(plane_contains, inside_edge_and_outside)
{
	cr_assert(plane_contains(square, 4, (struct vec2){5, 5}, 0));
	cr_assert(plane_contains(square, 4, (struct vec2){10, 5}, 0), "the edge counts");
	cr_assert(plane_contains(square, 4, (struct vec2){10, 10}, 0), "a corner counts");
	cr_assert(plane_contains(square, 4, (struct vec2){10.5, 5}, 0.6),
	          "within the tolerance of an edge");
	cr_assert_not(plane_contains(square, 4, (struct vec2){10.5, 5}, 0.4));
	cr_assert_not(plane_contains(square, 4, (struct vec2){-5, 10}, 0), "in line with an edge");
	cr_assert_not(plane_contains(angle, 6, (struct vec2){7, 7}, 0), "in the notch");
	cr_assert_not(plane_contains(angle, 6, (struct vec2){-1, 5}, 0),
	              "the ray runs through a vertex");
	cr_assert(plane_contains(angle, 6, (struct vec2){1, 5}, 0), "the ray runs along an edge");
}

Test(plane_distance, to_a_segment)
{
	const struct vec2 a = {0, 0}, b = {10, 0};
	cr_assert_eq(plane_distance_to_segment((struct vec2){5, 3}, a, b), 3);
	cr_assert_eq(plane_distance_to_segment((struct vec2){13, 4}, a, b), 5);
	cr_assert_eq(plane_distance_to_segment((struct vec2){-3, -4}, a, b), 5);
	cr_assert_eq(plane_distance_to_segment((struct vec2){3, 4}, a, a), 5,
	             "a segment without length");
}

Test(plane_segments, meet)
{
	const struct vec2 o = {0, 0}, e = {10, 0}, n = {5, 5}, s = {5, -5}, on = {5, 0};
	cr_assert(plane_segments_meet(o, e, n, s), "a crossing");
	cr_assert(plane_segments_meet(o, e, n, on), "a touch");
	cr_assert(plane_segments_meet(o, e, e, n), "a common end");
	cr_assert(plane_segments_meet(o, e, on, (struct vec2){20, 0}), "a common stretch");
	cr_assert_not(plane_segments_meet(o, e, (struct vec2){11, 0}, (struct vec2){20, 0}),
	              "in line, apart");
	cr_assert_not(plane_segments_meet(o, e, n, (struct vec2){5, 0.001}), "just short of it");
	cr_assert_not(plane_segments_meet(o, e, (struct vec2){0, 1}, (struct vec2){10, 1}),
	              "parallel");
}

/* 0.1 + 0.2 is not 0.3, but the touch is one all the same */
Test(plane_segments, touch_in_decimal_fractions)
{
	const struct vec2 a = {0, 0.1 + 0.2}, b = {1, 0.1 + 0.2}, c = {0.5, 0.3}, d = {0.5, 0};
	cr_assert(plane_segments_meet(a, b, c, d));
}

Test(plane_self_crossing, rings)
{
	const struct vec2 bow[] = {{0, 0}, {10, 10}, {10, 0}, {0, 10}};
	const struct vec2 touch[] = {{0, 0}, {10, 0}, {10, 10}, {5, 0}, {0, 10}};
	const struct vec2 spike[] = {{0, 0}, {10, 0}, {5, 0}, {5, 10}};
	const struct vec2 twice[] = {{0, 0}, {10, 0}, {10, 0}, {5, 10}};
	const struct vec2 line[] = {{0, 0}, {10, 0}, {20, 0}};
	const struct vec2 straight[] = {{0, 0}, {5, 0}, {10, 0}, {10, 10}, {0, 10}};
	cr_assert_not(plane_self_crossing(square, COUNT(square)));
	cr_assert_not(plane_self_crossing(angle, COUNT(angle)));
	cr_assert_not(plane_self_crossing(straight, COUNT(straight)),
	              "a corner of 180 degrees is fine");
	cr_assert(plane_self_crossing(bow, COUNT(bow)));
	cr_assert(plane_self_crossing(touch, COUNT(touch)), "a vertex upon another edge");
	cr_assert(plane_self_crossing(spike, COUNT(spike)), "an edge that runs back");
	cr_assert(plane_self_crossing(twice, COUNT(twice)), "one point twice");
	cr_assert(plane_self_crossing(line, COUNT(line)), "no area");
}

Test(plane_overlap, apart_and_touching)
{
	struct vec2 other[4];
	rectangle(20, 0, 5, 5, other);
	cr_assert_not(overlap_both_ways(square, 4, other, 4), "apart");
	rectangle(10, 0, 10, 10, other);
	cr_assert_not(overlap_both_ways(square, 4, other, 4), "one edge in common");
	rectangle(10, 2, 5, 5, other);
	cr_assert_not(overlap_both_ways(square, 4, other, 4), "part of an edge in common");
	rectangle(10, 10, 5, 5, other);
	cr_assert_not(overlap_both_ways(square, 4, other, 4), "a corner in common");
	rectangle(5, 5, 5, 5, other);
	cr_assert_not(overlap_both_ways(angle, 6, other, 4), "a block that fills the notch");
}

Test(plane_overlap, sharing_area)
{
	struct vec2 other[4];
	const struct vec2 diamond[] = {{5, -5}, {15, 5}, {5, 15}, {-5, 5}};
	cr_assert(overlap_both_ways(square, 4, square, 4), "the same ring");
	rectangle(2, 2, 3, 3, other);
	cr_assert(overlap_both_ways(square, 4, other, 4), "one inside the other");
	rectangle(0, 0, 5, 5, other);
	cr_assert(overlap_both_ways(square, 4, other, 4), "inside, two edges in common");
	rectangle(0, 2, 10, 5, other);
	cr_assert(overlap_both_ways(square, 4, other, 4), "a band from edge to edge");
	rectangle(-5, 0, 20, 10, other);
	cr_assert(overlap_both_ways(square, 4, other, 4), "a longer band of the same width");
	rectangle(9.99, 9.99, 5, 5, other);
	cr_assert(overlap_both_ways(square, 4, other, 4), "a corner within");
	cr_assert(overlap_both_ways(square, 4, diamond, 4), "a diamond through all four corners");
}

/* a vertex of the one exactly upon a vertex of the other, the insides still overlap */
Test(plane_overlap, through_a_vertex)
{
	const struct vec2 wedge[] = {{-5, -5}, {5, 5}, {-5, 5}};
	const struct vec2 outside[] = {{-5, 5}, {5, -5}, {-5, -5}};
	cr_assert(overlap_both_ways(square, 4, wedge, 3));
	cr_assert_not(overlap_both_ways(square, 4, outside, 3),
	              "an edge that passes the corner outside");
}

/* pads set out edge to edge in decimal fractions touch, they do not overlap */
Test(plane_overlap, decimal_fractions)
{
	struct vec2 left[4], right[4];
	for (int i = 1; i < 50; i++) {
		rectangle(0, 0, 0.1 * i, 0.7, left);
		rectangle(0.1 * i - 1e-15, 0.1, 0.3, 0.2, right);
		cr_assert_not(overlap_both_ways(left, 4, right, 4));
		double c = cos(0.1 * i), s = sin(0.1 * i);
		for (int k = 0; k < 4; k++) {
			left[k] = (struct vec2){c * left[k].x - s * left[k].y,
			                        s * left[k].x + c * left[k].y};
			right[k] = (struct vec2){c * right[k].x - s * right[k].y,
			                         s * right[k].x + c * right[k].y};
		}
		cr_assert_not(overlap_both_ways(left, 4, right, 4), "turned");
	}
}

Test(plane_overlap, rings_without_area)
{
	const struct vec2 line[] = {{2, 2}, {8, 8}, {5, 5}};
	cr_assert_not(plane_rings_overlap(square, 4, line, 3));
	cr_assert_not(plane_rings_overlap(square, 4, line, 2));
	cr_assert_not(plane_rings_overlap(square, 0, square, 0));
}

static void check_hull(const struct vec2 *points, size_t n, size_t expected, double area)
{
	struct vec2 out[32];
	size_t count = plane_hull(points, n, out);
	cr_assert_eq(count, expected, "%zu corners, not %zu", count, expected);
	cr_assert_float_eq(plane_area(out, count), area, 1e-9);
	for (size_t i = 0; i < n && area > 0; i++)
		cr_assert(plane_contains(out, count, points[i], 1e-9));
}

Test(plane_hull, figures)
{
	const struct vec2 cloud[] = {{5, 5},  {0, 0}, {10, 0}, {3, 7}, {10, 10},
	                             {0, 10}, {5, 0}, {10, 5}, {0, 0}};
	const struct vec2 line[] = {{3, 3}, {1, 1}, {9, 9}, {1, 1}, {5, 5}};
	const struct vec2 same[] = {{2, 3}, {2, 3}, {2, 3}};
	check_hull(cloud, COUNT(cloud), 4, 100);
	check_hull(angle, COUNT(angle), 5, 87.5);
	check_hull(line, COUNT(line), 2, 0);
	check_hull(same, COUNT(same), 1, 0);
	check_hull(same, 1, 1, 0);
	check_hull(same, 0, 0, 0);
}

/* no sequence of points may matter: all orders of five points with one inside */
Test(plane_hull, any_order)
{
	const struct vec2 points[] = {{0, 0}, {10, 1}, {9, 9}, {4, 5}, {-1, 8}};
	int order[5] = {0, 1, 2, 3, 4};
	for (int swaps = 0; swaps < 120; swaps++) {
		struct vec2 shuffled[5];
		for (int i = 0; i < 5; i++)
			shuffled[i] = points[order[i]];
		check_hull(shuffled, 5, 4, 81);
		/* the next permutation in lexical order */
		int k = 3, l = 4;
		while (k >= 0 && order[k] > order[k + 1])
			k--;
		if (k < 0)
			break;
		while (order[l] < order[k])
			l--;
		int keep = order[k];
		order[k] = order[l];
		order[l] = keep;
		for (int a = k + 1, b = 4; a < b; a++, b--) {
			keep = order[a];
			order[a] = order[b];
			order[b] = keep;
		}
	}
}

Test(plane_merge_straight, drops_what_lies_on_an_edge)
{
	const struct vec2 ring[] = {{5, 0},  {10, 0}, {10, 5}, {10, 6}, {10, 10},
	                            {0, 10}, {0, 5},  {0, 0},  {0, 0}};
	struct vec2 out[16];
	cr_assert_eq(plane_merge_straight(ring, COUNT(ring), 1e-9, out), 4);
	cr_assert_eq(plane_area(out, 4), 100);
	cr_assert_eq(plane_merge_straight(angle, COUNT(angle), 1e-9, out), 6);
	cr_assert_eq(plane_area(out, 6), 75);
	cr_assert_eq(plane_merge_straight(ring, 0, 1e-9, out), 0);
}
