/* The cell without anchors: hand solutions, and brute force over tilt directions and over swivel
 * positions of casters. */
#include "../../src/base/unanchored.h"
#include "../support/random_base.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static void near(double value, double expected, double tolerance, const char *what)
{
	cr_assert(fabs(value - expected) <= tolerance, "%s: %.15g, expected %.15g", what, value,
	          expected);
}

static const struct vec2 rectangle[4] = {{-500, -300}, {500, -300}, {500, 300}, {-500, 300}};

/* 1000 x 600 mm, 4 kN in the middle, 900 mm up: over the long edges at atan(300/900), and by
 * 4 kN x 300/1500 at 1.5 m. */
Test(unanchored, rectangle)
{
	struct free_standing cell = {4000, {0, 0, 900}, 1500};
	struct tip_over tip;
	tipping_on_hull(rectangle, 4, &cell, &tip, NULL);
	cr_assert(tip.stands);
	near(tip.distance, 300, 1e-12, "distance");
	near(tip.tilt, atan(1.0 / 3), 1e-15, "tilt");
	near(tip.push, 800, 1e-12, "push");
	near(fabs(sin(tip.heading)), 1, 1e-15, "over a long edge");
	cr_assert(tip.withstands_ten_degrees);
	/* off the middle: the edge toward it */
	cell.centre[1] = 180;
	tipping_on_hull(rectangle, 4, &cell, &tip, NULL);
	near(tip.distance, 120, 1e-12, "distance");
	near(tip.heading, pi / 2, 1e-15, "heading");
	cr_assert_eq(tip.first, 2);
	cr_assert_eq(tip.second, 3);
	cr_assert_not(tip.withstands_ten_degrees, "120/900 is 7.6 degrees");
}

/* The 10 degrees: half a base of 0.1763 of the height is the limit, and at the limit it tips. */
Test(unanchored, ten_degrees)
{
	struct tip_over tip;
	struct free_standing cell = {1000, {0, 0, 300 / 0.1764}, 0};
	tipping_on_hull(rectangle, 4, &cell, &tip, NULL);
	cr_assert(tip.withstands_ten_degrees);
	cr_assert_gt(tip.tilt, 10 * pi / 180);
	cell.centre[2] = 300 / 0.1763;
	tipping_on_hull(rectangle, 4, &cell, &tip, NULL);
	cr_assert_not(tip.withstands_ten_degrees);
	cr_assert_lt(tip.tilt, 10 * pi / 180);
	cr_assert_eq(tip.push, HUGE_VAL, "none was asked");
	near(tan(10 * pi / 180), 0.17632698070846498, 1e-16, "the constant");
}

/* Beside its support, on its edge, on a line and on a point nothing stands. */
Test(unanchored, does_not_stand)
{
	struct tip_over tip;
	struct free_standing cell = {1000, {0, 301, 500}, 1000};
	tipping_on_hull(rectangle, 4, &cell, &tip, NULL);
	cr_assert_not(tip.stands);
	near(tip.distance, -1, 1e-12, "distance");
	cr_assert_eq(tip.tilt, 0);
	cr_assert_eq(tip.push, 0);
	cell.centre[1] = 300;
	tipping_on_hull(rectangle, 4, &cell, &tip, NULL);
	cr_assert_not(tip.stands, "on the edge");
	cell.centre[1] = -300;
	tipping_on_hull(rectangle, 2, &cell, &tip, NULL);
	near(tip.distance, 0, 1e-12, "on a line");
	cr_assert_not(tip.stands);
	tipping_on_hull(rectangle, 1, &cell, &tip, NULL);
	near(tip.distance, -500, 1e-12, "beside a point");
	cr_assert_not(tip.stands);
	cr_assert_not(tip.withstands_ten_degrees);
}

/* Equal trails take themselves off the hull's distance; fixed wheels take nothing. */
Test(unanchored, casters_of_equal_trail)
{
	struct free_standing cell = {4000, {120, -40, 900}, 1500};
	struct tip_over hull, tip;
	struct wheel caster[4];
	tipping_on_hull(rectangle, 4, &cell, &hull, NULL);
	for (int trail = 0; trail <= 60; trail += 20) {
		for (int i = 0; i < 4; i++)
			caster[i] = (struct wheel){rectangle[i], trail};
		tipping_on_casters(caster, 4, &cell, &tip, NULL);
		near(tip.distance, hull.distance - trail, 1e-12, "distance");
		near(tip.push, 4000 * (hull.distance - trail) / 1500, 1e-10, "push");
		near(tip.heading, hull.heading, 1e-15, "heading");
	}
}

/* Two swivel casters at the right, two fixed wheels at the left: over the right edge the load has
 * the trail less, over the left one it has all. */
Test(unanchored, fixed_and_swivel)
{
	struct free_standing cell = {1000, {0, 0, 500}, 0};
	const struct wheel caster[4] = {
		{{-200, -600}, 0}, {{200, -600}, 50}, {{200, 600}, 50}, {{-200, 600}, 0}};
	struct tip_over tip;
	tipping_on_casters(caster, 4, &cell, &tip, NULL);
	near(tip.distance, 150, 1e-12, "toward the swivels");
	near(tip.heading, 0, 1e-15, "heading");
	cell.centre[0] = -100;
	tipping_on_casters(caster, 4, &cell, &tip, NULL);
	near(tip.distance, 100, 1e-12, "toward the fixed wheels");
	near(fabs(tip.heading), pi, 1e-15, "heading");
}

/* --- brute force ---------------------------------------------------------------------------- */

/* How far the load can be shifted in a direction until it leaves the hull. */
static double way_out(const struct vec2 *hull, size_t count, const double centre[3], double heading)
{
	double low = 0, high = 1e5;
	for (int i = 0; i < 60; i++) {
		double middle = (low + high) / 2;
		struct vec2 at = {centre[0] + middle * cos(heading),
		                  centre[1] + middle * sin(heading)};
		if (plane_contains(hull, count, at, 0))
			low = middle;
		else
			high = middle;
	}
	return low;
}

static size_t random_hull(struct dice *dice, struct vec2 *hull, double centre[3])
{
	struct vec2 point[12];
	size_t count = 0;
	while (count < 3) {
		size_t points = (size_t)dice_whole(dice, 3, 12);
		for (size_t i = 0; i < points; i++)
			point[i] = (struct vec2){dice_between(dice, -900, 900),
			                         dice_between(dice, -600, 600)};
		count = plane_hull(point, points, hull);
	}
	double share = 0;
	centre[0] = centre[1] = 0;
	for (size_t i = 0; i < count; i++) {
		double weight = dice_between(dice, 0.05, 1);
		share += weight;
		centre[0] += weight * hull[i].x;
		centre[1] += weight * hull[i].y;
	}
	centre[0] /= share;
	centre[1] /= share;
	centre[2] = dice_between(dice, 200, 1500);
	return count;
}

/* A floor tilted toward every heading: the load's projection wanders by z tan(tilt). A push in
 * every heading at the height: its moment shifts the load by F h/W. Both meet the same distance.
 * Off the worst heading by half a step the way is longer by 1/cos. */
Test(unanchored, hull_against_all_headings)
{
	enum { HEADINGS = 1440 };
	for (uint64_t number = 0; number < 100; number++) {
		struct dice dice = dice_open(51, number);
		struct vec2 hull[12];
		struct free_standing cell = {dice_decades(&dice, 2, 5), {0}, 1200};
		size_t count = random_hull(&dice, hull, cell.centre);
		struct tip_over tip;
		double least = HUGE_VAL;
		cr_assert_null(free_standing_fault(&cell));
		tipping_on_hull(hull, count, &cell, &tip, NULL);
		for (int h = 0; h < HEADINGS; h++)
			least = fmin(least, way_out(hull, count, cell.centre,
			                            2 * pi * h / HEADINGS));
		cr_assert_leq(tip.distance, least + 1e-7);
		cr_assert_geq(tip.distance, least * cos(pi / HEADINGS) - 1e-7);
		near(way_out(hull, count, cell.centre, tip.heading), tip.distance, 1e-6,
		     "the heading is the worst");
		near(tip.tilt, atan2(tip.distance, cell.centre[2]), 1e-15, "tilt");
		near(tip.push * 1200, cell.weight * tip.distance, 1e-9 * tip.push * 1200, "push");
	}
}

static size_t random_casters(struct dice *dice, struct wheel *caster, double centre[3])
{
	struct vec2 hull[12];
	size_t count = random_hull(dice, hull, centre);
	for (size_t i = 0; i < count; i++)
		caster[i] = (struct wheel){hull[i],
		                            dice_whole(dice, 0, 2) * dice_between(dice, 0, 60)};
	return count;
}

/* Distance of the load inside the hull of the contacts, each swivelled to an angle of its own. */
static double inside_contacts(const struct wheel *caster, size_t count, const double swivel[],
                              const struct free_standing *cell)
{
	struct vec2 contact[12], hull[12];
	struct tip_over tip;
	for (size_t i = 0; i < count; i++)
		contact[i] = (struct vec2){caster[i].at.x + caster[i].trail * cos(swivel[i]),
		                           caster[i].at.y + caster[i].trail * sin(swivel[i])};
	tipping_on_hull(hull, plane_hull(contact, count, hull), cell, &tip, NULL);
	return tip.distance;
}

/* No random swivel position is worse than the one found; all wheels turned away from the heading
 * that it names is as bad; and turned alike in every direction none is worse. */
Test(unanchored, casters_against_swivels)
{
	enum { TRIES = 400, HEADINGS = 720 };
	for (uint64_t number = 0; number < 100; number++) {
		struct dice dice = dice_open(53, number);
		struct wheel caster[12];
		struct free_standing cell = {1000, {0}, 0};
		size_t count = random_casters(&dice, caster, cell.centre);
		struct tip_over tip;
		double swivel[12], alike = HUGE_VAL;
		cr_assert_null(wheel_fault(caster, count));
		tipping_on_casters(caster, count, &cell, &tip, NULL);
		for (int t = 0; t < TRIES; t++) {
			for (size_t i = 0; i < count; i++)
				swivel[i] = dice_between(&dice, 0, 2 * pi);
			cr_assert_leq(tip.distance,
			              inside_contacts(caster, count, swivel, &cell) + 1e-9);
		}
		for (int h = 0; h <= HEADINGS; h++) {
			for (size_t i = 0; i < count; i++)
				swivel[i] = pi + (h < HEADINGS ? 2 * pi * h / HEADINGS
				                               : tip.heading);
			alike = fmin(alike, inside_contacts(caster, count, swivel, &cell));
		}
		near(alike, tip.distance, 1e-9, "all turned away from the heading");
	}
}

/* More trail never makes it stand better; moving everything changes nothing. */
Test(unanchored, casters_properties)
{
	for (uint64_t number = 0; number < 300; number++) {
		struct dice dice = dice_open(57, number);
		struct wheel caster[12], moved[12];
		struct free_standing cell = {1000, {0}, 0}, there;
		size_t count = random_casters(&dice, caster, cell.centre);
		struct tip_over tip, more, other;
		double turn = dice_between(&dice, 0, 2 * pi), c = cos(turn), s = sin(turn);
		tipping_on_casters(caster, count, &cell, &tip, NULL);
		memcpy(moved, caster, sizeof moved);
		moved[number % count].trail += 30;
		tipping_on_casters(moved, count, &cell, &more, NULL);
		cr_assert_leq(more.distance, tip.distance + 1e-10);
		cr_assert_geq(more.distance, tip.distance - 30 - 1e-10);
		for (size_t i = 0; i < count; i++)
			moved[i] = (struct wheel){{c * caster[i].at.x - s * caster[i].at.y + 700,
			                            s * caster[i].at.x + c * caster[i].at.y - 90},
			                           caster[i].trail};
		there = cell;
		there.centre[0] = c * cell.centre[0] - s * cell.centre[1] + 700;
		there.centre[1] = s * cell.centre[0] + c * cell.centre[1] - 90;
		tipping_on_casters(moved, count, &there, &other, NULL);
		near(other.distance, tip.distance, 1e-9, "moved");
	}
}

/* --- the written calculation and the faults ------------------------------------------------- */

Test(unanchored, written_calculation)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	for (uint64_t number = 0; number < 60; number++) {
		struct dice dice = dice_open(59, number);
		struct wheel caster[12];
		struct vec2 hull[12];
		struct trace trace;
		struct free_standing cell = {2500, {0}, number % 3 ? 1500 : 0};
		size_t count = random_casters(&dice, caster, cell.centre);
		struct tip_over tip, plain;
		if (number % 5 == 0)
			cell.centre[0] += 2000;    /* does not stand */
		trace_open(&trace, &arena);
		tipping_on_casters(caster, count, &cell, &tip, &trace);
		tipping_on_casters(caster, count, &cell, &plain, NULL);
		cr_assert_eq(memcmp(&tip.distance, &plain.distance, sizeof plain.distance), 0);
		cr_assert_geq(traced_expressions(&trace, "casters"), 4);
		cr_assert_eq(traced_value(&trace, "d_tip"), tip.distance);
		cr_assert_eq(traced_value(&trace, "tilt"), tip.tilt);
		trace_open(&trace, &arena);
		for (size_t i = 0; i < count; i++)
			hull[i] = caster[i].at;
		tipping_on_hull(hull, count, &cell, &tip, &trace);
		cr_assert_geq(traced_expressions(&trace, "hull"), 3);
		cr_assert_eq(traced_value(&trace, "d_tip"), tip.distance);
		if (cell.push_height > 0)
			cr_assert_eq(traced_value(&trace, "F_tip"), tip.push);
	}
	arena_close(&arena);
}

Test(unanchored, faults)
{
	struct free_standing cell = {1000, {0, 0, 500}, 0};
	struct wheel caster = {{0, 0}, -1};
	cr_assert_null(free_standing_fault(&cell));
	cell.weight = 0;
	cr_assert_not_null(strstr(free_standing_fault(&cell), "weight"));
	cell = (struct free_standing){1000, {NAN, 0, 500}, 0};
	cr_assert_not_null(strstr(free_standing_fault(&cell), "centre of mass"));
	cell = (struct free_standing){1000, {0, 0, 0}, 0};
	cr_assert_not_null(strstr(free_standing_fault(&cell), "above the floor"));
	cell = (struct free_standing){1000, {0, 0, 500}, -1};
	cr_assert_not_null(strstr(free_standing_fault(&cell), "push"));
	cr_assert_not_null(strstr(wheel_fault(&caster, 1), "trail"));
	cr_assert_not_null(strstr(wheel_fault(&caster, 0), "stand on something"));
}
