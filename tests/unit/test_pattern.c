/* Groups, areas of cones and faces toward edges. The expected values follow from the construction
 * of each figure; those of the shape of published examples name it. */
#include "../../src/strength/pattern.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const double pi = 3.14159265358979323846;
static struct arena arena;
static struct pattern pattern;

static void open_arena(void) { arena_open(&arena, NULL, NULL); }
static void close_arena(void) { arena_close(&arena); }
TestSuite(pattern, .init = open_arena, .fini = close_arena);

static void build(const struct vec2 *at, size_t count, const struct segment *edge, size_t edges)
{
	cr_assert(pattern_build(at, count, 0, edge, edges, edges ? 0 : HUGE_VAL, &arena, &pattern));
}

static double area_of(uint64_t anchors, double half)
{
	return group_area(&pattern, anchors, half, "A", "", NULL);
}

/* four anchors 200 by 150 about the origin */
static const struct vec2 four[] = {{-100, -75}, {100, -75}, {100, 75}, {-100, 75}};
/* the slab's corner 120 to the left and 90 below them, the rest far away */
static const struct segment corner[] = {{{-220, -165}, {5000, -165}},
                                        {{5000, -165}, {5000, 5000}},
                                        {{5000, 5000}, {-220, 5000}},
                                        {{-220, 5000}, {-220, -165}}};

/* --- groups --------------------------------------------------------------------------------- */

Test(pattern, distances)
{
	const struct segment edges[] = {{{-220, -165}, {5000, -165}}, {{-150, -500}, {-150, 500}},
	                                {{-220, -500}, {-220, 500}}, {{-50, -75}, {300, -75}}};
	build(four, 4, edges, COUNT(edges));
	cr_assert_eq(pattern.distance[0 * 4 + 0], 90);
	cr_assert_eq(pattern.distance[0 * 4 + 1], 50);
	cr_assert_eq(pattern.distance[0 * 4 + 2], HUGE_VAL, "the nearer joint hides it");
	cr_assert_eq(pattern.distance[1 * 4 + 3], 0, "through the anchor");
	cr_assert_eq(pattern.distance[0 * 4 + 3], 50, "its end");
	cr_assert_eq(pattern.distance[2 * 4 + 0], HUGE_VAL);
}

Test(pattern, groups_by_distance)
{
	uint64_t group[MAX_ANCHORS];
	build(four, 4, NULL, 0);
	cr_assert_eq(groups_split(&pattern, 15, 201, group), 1);
	cr_assert_eq(group[0], 15);
	cr_assert_eq(groups_split(&pattern, 15, 200, group), 2, "at the limit they are apart");
	cr_assert_eq(group[0], 1 | 8);
	cr_assert_eq(group[1], 2 | 4);
	cr_assert_eq(groups_split(&pattern, 15, 100, group), 4);
	cr_assert_eq(groups_split(&pattern, 1 | 4, 200, group), 2, "the loaded ones alone");
	cr_assert_eq(groups_split(&pattern, 0, 200, group), 0);
}

/* a joint that runs through between them parts them; a short one leaves concrete for both */
Test(pattern, groups_and_joints)
{
	const struct segment through = {{0, -5000}, {0, 5000}}, piece = {{0, -100}, {0, 100}};
	uint64_t group[MAX_ANCHORS];
	build(four, 4, &through, 1);
	cr_assert_eq(groups_split(&pattern, 15, 300, group), 2);
	cr_assert_eq(group[0], 1 | 8);
	cr_assert_eq(group[1], 2 | 4);
	build(four, 4, &piece, 1);
	cr_assert_eq(groups_split(&pattern, 15, 600, group), 3);
	cr_assert_eq(group[0], 1 | 8);
	cr_assert_eq(group[1], 2 | 4);
	cr_assert_eq(group[2], 15, "all together as well");
}

Test(pattern, measures)
{
	const struct vec2 row[] = {{0, 0}, {100, 0}, {250, 0}, {250, 60}};
	struct group group;
	build(row, 4, NULL, 0);
	group_measure(&pattern, 15, 100, &group);
	cr_assert_eq(group.count, 4);
	cr_assert_eq(group.centre.x, 150);
	cr_assert_eq(group.centre.y, 15);
	cr_assert_eq(group.adjacent, 150);
	cr_assert_eq(group.least_spacing, 60);
	cr_assert_float_eq(group.mean_spacing, 310.0 / 3, 1e-12);
	cr_assert_eq(group.least_edge, HUGE_VAL);
	cr_assert_eq(group.near_edges, 0);
	group_measure(&pattern, 2, 100, &group);
	cr_assert_eq(group.adjacent, 0);
	cr_assert_eq(group.mean_spacing, 0);
	cr_assert_eq(group.least_spacing, HUGE_VAL);
	cr_assert_eq(group.centre.x, 100);
}

/* along the pattern's own axes, about the frame's origin */
Test(pattern, centre_is_turned)
{
	const struct vec2 at[] = {{0, 100}, {0, 300}};
	struct group group;
	cr_assert(pattern_build(at, 2, pi / 2, NULL, 0, HUGE_VAL, &arena, &pattern));
	group_measure(&pattern, 3, 100, &group);
	cr_assert_float_eq(group.centre.x, 200, 1e-12);
	cr_assert_float_eq(group.centre.y, 0, 1e-12);
}

Test(pattern, near_edges)
{
	struct group group;
	build(four, 4, corner, COUNT(corner));
	group_measure(&pattern, 15, 150, &group);
	cr_assert_eq(group.near_edges, 2);
	cr_assert_eq(group.least_edge, 90);
	cr_assert_eq(group.most_edge, 120);
	group_measure(&pattern, 15, 120, &group);
	cr_assert_eq(group.near_edges, 1, "at the limit it is not near");
	group_measure(&pattern, 4, 150, &group);
	cr_assert_eq(group.near_edges, 0);
	cr_assert_eq(group.most_edge, 0);
	/* one line in two pieces is one edge */
	const struct segment pieces[] = {{{-220, -165}, {0, -165}}, {{20, -165}, {220, -165}},
	                                 {{-220, 200}, {220, 200}}};
	build(four, 4, pieces, COUNT(pieces));
	group_measure(&pattern, 15, 150, &group);
	cr_assert_eq(group.near_edges, 2);
	cr_assert_eq(group.most_edge, 125);
}

Test(pattern, edges_not_known)
{
	struct group group;
	cr_assert(pattern_build(four, 4, 0, NULL, 0, 130, &arena, &pattern));
	group_measure(&pattern, 15, 150, &group);
	cr_assert_eq(group.least_edge, 130);
	cr_assert_eq(group.most_edge, 130);
	cr_assert_eq(group.near_edges, 1);
	cr_assert_eq(area_of(1, 150), 260 * 260, "one may be so near on every side");
	cr_assert_eq(area_of(1, 120), 240 * 240);
}

/* --- areas ---------------------------------------------------------------------------------- */

Test(pattern, area_of_rectangles)
{
	build(four, 4, NULL, 0);
	cr_assert_eq(area_of(1, 150), 300 * 300);
	cr_assert_eq(area_of(15, 150), 500 * 450);
	cr_assert_eq(area_of(3, 150), 500 * 300);
	cr_assert_eq(area_of(15, 50), 4 * 100 * 100);
	build(four, 4, corner, COUNT(corner));
	cr_assert_eq(area_of(15, 150), (120 + 200 + 150) * (90 + 150 + 150));
	cr_assert_eq(area_of(1, 150), (120 + 150) * (90 + 150));
	/* past a joint there is nothing */
	const struct segment joint = {{20, -5000}, {20, 5000}};
	build(four, 4, &joint, 1);
	cr_assert_eq(area_of(1 | 8, 150), (150 + 120) * 450);
}

/* three in an L: squares of half 100 at 100 from one another */
Test(pattern, area_of_others)
{
	const struct vec2 angle[] = {{0, 0}, {100, 0}, {0, 100}};
	build(angle, 3, NULL, 0);
	cr_assert_float_eq(area_of(7, 100), 300 * 300 - 100 * 100, 1e-9);
	const struct vec2 anchor = {0, 0};
	build(&anchor, 1, NULL, 0);
	cr_assert_eq(area_of(1, 0), 0);
	cr_assert_eq(area_of(0, 100), 0, "of none");
}

/* An edge at 45 degrees, 60 from the anchor: the square that stands with it is cut to 160 by 200;
 * the one that stands with the pattern loses only its corner of height 100 sqrt(2) - 60. */
Test(pattern, area_turned_with_an_edge)
{
	const struct vec2 anchor = {0, 0};
	double along = 60 * sqrt(2);
	const struct segment edge = {{along - 5000, 5000}, {along + 5000, -5000}};
	build(&anchor, 1, &edge, 1);
	double height = 100 * sqrt(2) - 60;
	cr_assert_lt(160 * 200, 200 * 200 - height * height);
	cr_assert_float_eq(area_of(1, 100), 160 * 200, 1e-8);
}

/* an anchor upon an edge has half a square */
Test(pattern, area_upon_an_edge)
{
	const struct segment edge = {{-100, -5000}, {-100, 5000}};
	build(four, 4, &edge, 1);
	cr_assert_float_eq(area_of(1, 50), 50 * 100, 1e-9);
}

static const struct step *step_of(const struct trace *trace, const char *symbol)
{
	for (size_t i = trace->count; i-- > 0;)
		if (strcmp(trace->steps[i].symbol, symbol) == 0)
			return &trace->steps[i];
	return NULL;
}

static double traced_area(struct trace *trace, uint64_t anchors, double half)
{
	trace_open(trace, &arena);
	trace_step(trace, "c_cr", "", half, DIM_LENGTH, "", "");
	double area = group_area(&pattern, anchors, half, "A_N", "a clause", trace);
	traced_expressions(trace, "area");
	cr_assert_eq(traced_value(trace, "A_N"), area);
	cr_assert_eq(area_of(anchors, half), area, "the same bits without a trace");
	cr_assert_str_eq(step_of(trace, "A_N")->source, "a clause");
	return area;
}

Test(pattern, written_rectangle)
{
	struct trace trace;
	build(four, 4, corner, COUNT(corner));
	traced_area(&trace, 15, 150);
	cr_assert_str_eq(step_of(&trace, "A_N")->expression,
	                 "(A_N_left + A_N_sx + A_N_right) * (A_N_below + A_N_sy + A_N_above)");
	cr_assert_str_eq(step_of(&trace, "A_N_left")->expression, "min(c_cr, A_N_left_edge)");
	cr_assert_eq(traced_value(&trace, "A_N_left_edge"), 120);
	cr_assert_str_eq(step_of(&trace, "A_N_left_edge")->source, "distance from edge 4");
	cr_assert_str_eq(step_of(&trace, "A_N_above")->expression, "c_cr");
	cr_assert_eq(traced_value(&trace, "A_N_sy"), 150);
	cr_assert_str_eq(step_of(&trace, "A_N_sx")->meaning, "from A1 to A2 along x");
	traced_area(&trace, 1, 150);
	cr_assert_str_eq(step_of(&trace, "A_N")->expression,
	                 "(A_N_left + A_N_right) * (A_N_below + A_N_above)");
	cr_assert(pattern_build(four, 4, 0, NULL, 0, 130, &arena, &pattern));
	traced_area(&trace, 3, 150);
	cr_assert_str_eq(step_of(&trace, "A_N_reach")->expression, "min(c_cr, A_N_clear)");
}

Test(pattern, written_union)
{
	const struct vec2 angle[] = {{0, 0}, {100, 0}, {0, 100}};
	struct trace trace;
	build(angle, 3, NULL, 0);
	traced_area(&trace, 7, 100);
	cr_assert_str_eq(step_of(&trace, "A_N")->expression,
	                 "A_N_A1 + A_N_A2 + A_N_A3 - A_N_overlap");
	cr_assert_eq(traced_value(&trace, "A_N_whole"), 200 * 200);
	cr_assert_eq(traced_value(&trace, "A_N_count"), 3);
}

/* --- views of edges ------------------------------------------------------------------------- */

static struct edge_view *views(size_t *count)
{
	struct edge_view *list;
	cr_assert(edge_views(&pattern, &arena, &list, count));
	return list;
}

Test(pattern, no_edge)
{
	size_t count = 7;
	build(four, 4, NULL, 0);
	cr_assert_null(views(&count));
	cr_assert_eq(count, 0);
}

Test(pattern, rows)
{
	const struct segment edge = {{-300, -175}, {700, -175}};
	size_t count;
	build(four, 4, &edge, 1);
	const struct edge_view *view = views(&count);
	cr_assert_eq(count, 1);
	cr_assert_eq(view->edge, 1);
	cr_assert_eq(view->toward.x, 0);
	cr_assert_eq(view->toward.y, -1);
	cr_assert_eq(view->along.x, 1);
	cr_assert_eq(view->along.y, 0);
	cr_assert_eq(view->anchors, 15);
	cr_assert_eq(view->row_count, 2);
	cr_assert_eq(view->row[0], 1 | 2);
	cr_assert_eq(view->row[1], 4 | 8);
	cr_assert_eq(view->row_distance[0], 100);
	cr_assert_eq(view->row_distance[1], 250);
	cr_assert_eq(view->x[1], 400);
	cr_assert_eq(view->distance[2], 250);
}

/* within a tenth of the nearest distance they are one row, at a tenth no more */
Test(pattern, rows_that_are_not_quite_straight)
{
	const struct vec2 at[] = {{0, 109}, {100, 100}, {200, 110}, {300, 119}};
	const struct segment edge = {{-1000, 0}, {1000, 0}};
	size_t count;
	build(at, 4, &edge, 1);
	const struct edge_view *view = views(&count);
	cr_assert_eq(view->row_count, 2);
	cr_assert_eq(view->row[0], 1 | 2);
	cr_assert_eq(view->row[1], 4 | 8);
	cr_assert_eq(view->row_distance[0], 100);
	cr_assert_eq(view->row_distance[1], 110);
}

/* a joint is seen from both sides */
Test(pattern, both_sides_of_a_joint)
{
	const struct segment joint = {{20, -500}, {20, 500}};
	size_t count;
	build(four, 4, &joint, 1);
	const struct edge_view *view = views(&count);
	cr_assert_eq(count, 2);
	cr_assert_eq(view[0].edge, 1);
	cr_assert_eq(view[1].edge, 1);
	cr_assert_eq(view[0].anchors, 1 | 8);
	cr_assert_eq(view[0].toward.x, 1);
	cr_assert_eq(view[0].row_distance[0], 120);
	cr_assert_eq(view[0].along.y, 1);
	cr_assert_eq(view[1].anchors, 2 | 4);
	cr_assert_eq(view[1].toward.x, -1);
	cr_assert_eq(view[1].along.y, -1);
	cr_assert_eq(view[1].row_distance[0], 80);
}

/* past a joint's end within 1.5 times the distance from its line */
Test(pattern, past_the_end)
{
	const struct vec2 at[] = {{149, 100}, {151, 100}};
	const struct segment joint[] = {{{-500, 0}, {0, 0}}, {{1, -20}, {2, 60}}};
	size_t count;
	build(at, 2, joint, 1);
	const struct edge_view *view = views(&count);
	cr_assert_eq(count, 1);
	cr_assert_eq(view->anchors, 1);
	/* it breaks out as toward an edge that goes on */
	struct edge_front front;
	edge_front_measure(&pattern, view, 1, 100, &front);
	cr_assert_eq(front.width, 300);
	cr_assert_eq(front.side[0], HUGE_VAL);
	cr_assert_eq(front.side[1], HUGE_VAL);
	build(at, 2, joint, 2);
	view = views(&count);
	for (size_t k = 0; k < count; k++)
		cr_assert_neq(view[k].edge, 1, "something stands before its end");
}

/* Past an outward corner of 135 degrees the other edge stands opposite; past an inward one the
 * concrete goes on. */
Test(pattern, corners)
{
	const struct vec2 anchor = {80, 100};
	const struct segment outward[] = {{{-500, 0}, {0, 0}}, {{0, 0}, {500, 500}}},
	                     inward[] = {{{-500, 0}, {0, 0}}, {{0, 0}, {0, -500}}};
	size_t count;
	build(&anchor, 1, outward, 2);
	const struct edge_view *view = views(&count);
	cr_assert_eq(count, 1);
	cr_assert_eq(view->edge, 2);
	build(&anchor, 1, inward, 2);
	view = views(&count);
	cr_assert_eq(count, 2);
	cr_assert_eq(view[0].edge, 1);
	cr_assert_eq(view[0].anchors, 1);
	cr_assert_eq(view[0].distance[0], 100);
	cr_assert_eq(view[1].edge, 2);
	cr_assert_eq(view[1].distance[0], 80);
}

/* an anchor upon an edge is at 0 from it, on either side */
Test(pattern, upon_the_edge)
{
	const struct segment edge = {{-500, -75}, {500, -75}};
	size_t count;
	build(four, 4, &edge, 1);
	const struct edge_view *view = views(&count);
	cr_assert_eq(count, 2);
	cr_assert_eq(view[0].row_distance[0], 0);
	cr_assert_eq(view[0].row[0], 1 | 2);
	cr_assert_eq(view[0].row[1], 4 | 8);
	cr_assert_eq(view[1].anchors, 1 | 2);
}

/* --- faces ---------------------------------------------------------------------------------- */

Test(pattern, face)
{
	struct edge_front front;
	size_t count;
	build(four, 4, corner, COUNT(corner));
	const struct edge_view *view = views(&count);
	cr_assert_eq(view->edge, 1);
	cr_assert_eq(view->row_distance[0], 90);
	edge_front_measure(&pattern, view, view->row[0], 90, &front);
	cr_assert_eq(front.count, 2);
	cr_assert_eq(front.side[0], 120);
	cr_assert_float_eq(front.side[1], 4900, 1e-9);
	cr_assert_eq(front.spacing, 200);
	cr_assert_eq(front.centre, 220);
	cr_assert_eq(front.width, 120 + 200 + 135);
	edge_front_measure(&pattern, view, view->row[0], 60, &front);
	cr_assert_eq(front.width, 90 + 90 + 90 + 90, "two faces apart");
	edge_front_measure(&pattern, view, 2, 90, &front);
	cr_assert_eq(front.width, 270);
	cr_assert_eq(front.side[0], 320);
	cr_assert_eq(front.spacing, 0);
}

/* A joint across the band between two anchors ends the face of both. */
Test(pattern, face_with_a_joint_across)
{
	const struct segment edges[] = {{{-500, -175}, {500, -175}}, {{20, -400}, {20, 0}},
	                                {{-160, -70}, {-160, 500}}};
	struct edge_front front;
	size_t count;
	build(four, 4, edges, COUNT(edges));
	const struct edge_view *view = views(&count);
	edge_front_measure(&pattern, view, 3, 100, &front);
	cr_assert_eq(front.side[1], 120);
	cr_assert_eq(front.side[0], 80);
	cr_assert_eq(front.width, 150 + 120 + 80 + 150);
	/* the third ends behind the row: it is none of its sides */
	edge_front_measure(&pattern, view, 1, 100, &front);
	cr_assert_eq(front.side[0], HUGE_VAL);
}

/* A side edge that leans over the band counts where it is nearest; what runs on in line with the
 * edge, or away from an inward corner, is none. */
Test(pattern, face_with_leaning_sides)
{
	const struct vec2 anchor = {0, 100};
	const struct segment edges[] = {{{-300, 0}, {200, 0}}, {{200, 0}, {150, 100}},
	                                {{-300, 0}, {-300, -500}}, {{-900, 0}, {-400, 0}}};
	struct edge_front front;
	size_t count;
	build(&anchor, 1, edges, COUNT(edges));
	const struct edge_view *view = views(&count);
	edge_front_measure(&pattern, view, 1, 100, &front);
	cr_assert_eq(front.side[0], HUGE_VAL);
	cr_assert_float_eq(front.side[1], 150, 1e-12);
	cr_assert_float_eq(front.width, 300, 1e-12);
}
