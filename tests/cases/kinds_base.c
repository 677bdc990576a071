/* The rigid base on its bed, and the shear group. Loads as in src/base/base.h: N downward, Sx = My
 * = N ex, Sy = -Mx = N ey about the cell origin. */
#include "kinds.h"

#include "../../src/base/base.h"
#include "../../src/base/shear_group.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

enum { CASE_PIECES = 16, CASE_HOLES = 8 };

/* one base after another; each case runs in a process of its own */
static struct cell cell;
static struct base_piece pieces[CASE_PIECES];
static struct ring holes[CASE_PIECES][CASE_HOLES];
static struct vec2 vertices[CASE_PIECES * (CASE_HOLES + 1)][MAX_CASE_POINTS];
static size_t rings_used;

static const struct given known = {{0}, GIVEN};

static struct ring ring_of(const struct vec2 *points, size_t count)
{
	cr_assert_lt(rings_used, sizeof vertices / sizeof *vertices);
	struct vec2 *kept = vertices[rings_used++];
	memcpy(kept, points, count * sizeof *points);
	return (struct ring){known, kept, count};
}

static struct base_piece *add_piece(void)
{
	cr_assert_lt(cell.base.count, (size_t)CASE_PIECES);
	cell.base.given = known;
	cell.base.rows = pieces;
	struct base_piece *piece = &pieces[cell.base.count++];
	piece->touches = (struct word){known, TOUCHES_FLOOR};
	return piece;
}

static void add_outline(const struct vec2 *points, size_t count)
{
	add_piece()->outline = ring_of(points, count);
}

static void add_rectangle(double length, double width)
{
	double x = length / 2, y = width / 2;
	add_outline((const struct vec2[]){{-x, -y}, {x, -y}, {x, y}, {-x, y}}, 4);
}

static void add_hole(size_t to, const struct vec2 *points, size_t count)
{
	struct base_piece *piece = &pieces[to];
	cr_assert_lt(piece->holes.count, (size_t)CASE_HOLES);
	piece->holes.given = known;
	piece->holes.rows = holes[to];
	holes[to][piece->holes.count++] = ring_of(points, count);
}

static void add_anchor(double x, double y)
{
	cell.anchors.at_given = known;
	cell.anchors.at[cell.anchors.count++] = (struct vec2){x, y};
}

/* "outline NAME: points", "hole NAME: points" in the outline of that name, "pad NAME: (x, y) (a,
 * b)" */
static void read_base(struct test_case *test)
{
	struct vec2 points[MAX_CASE_POINTS];
	const char *key;
	for (size_t k = 0; (key = case_key(test, "outline", k)) != NULL; k++) {
		add_outline(points, case_points(test, key, DIM_LENGTH, points, MAX_CASE_POINTS));
		for (size_t h = 0; h < test->input_count; h++) {
			const char *hole = test->input[h].key;
			if (!strncmp(hole, "hole ", 5) && !strcmp(hole + 5, key + 8)) {
				size_t count = case_points(test, hole, DIM_LENGTH, points,
				                           MAX_CASE_POINTS);
				add_hole(cell.base.count - 1, points, count);
			}
		}
	}
	for (size_t k = 0; (key = case_key(test, "pad", k)) != NULL; k++) {
		cr_assert_eq(case_points(test, key, DIM_LENGTH, points, 2), 2,
		             "a pad is (x, y) (a, b)");
		struct base_piece *pad = add_piece();
		pad->at = (struct point){known, {points[0].x, points[0].y, 0}};
		pad->size = (struct point){known, {points[1].x, points[1].y, 0}};
	}
}

static void read_anchors(struct test_case *test)
{
	cell.anchors.at_given = known;
	cell.anchors.count = case_points(test, "anchors", DIM_LENGTH, cell.anchors.at, MAX_ANCHORS);
}

static const struct base *prepare(void)
{
	static struct base base;
	static struct arena arena;   /* lives as long as the base */
	arena_open(&arena, NULL, NULL);
	cr_assert_eq(base_prepare(&cell, &arena, &base), DONE);
	return &base;
}

/* solves from the linear start; the state stays until the next call */
static const struct state *solve(const struct test_case *test, const struct base *base,
                                 double bed_ratio, double n, double sx, double sy)
{
	static struct state state;
	state = (struct state){.bed_ratio = bed_ratio, .load = {n, sx, sy}};
	state.balance = base_balance(base, state.load);
	if (state.balance != BALANCED)
		return &state;
	base_start(base, bed_ratio, state.load, state.settle);
	if (base_solve(base, bed_ratio, state.load, state.settle, NULL) != DONE)
		case_fail(test, test->line, "no convergence");
	base_fill(base, &state);
	if (!(state.residual <= 1e-9))
		case_fail(test, test->line, "residual %g", state.residual);
	return &state;
}

static void give_balance(const struct state *state, struct outputs *out)
{
	static const char *const words[] = {
		[BALANCED] = "balanced", [LIMIT] = "limit", [NO_EQUILIBRIUM] = "none"};
	output_word(out, "balance", words[state->balance]);
}

void kind_base(struct test_case *test, struct outputs *out)
{
	read_base(test);
	read_anchors(test);
	double down = case_number(test, "N", DIM_FORCE);
	double mx = case_number_or(test, "Mx", DIM_MOMENT, 0),
	       my = case_number_or(test, "My", DIM_MOMENT, 0);
	double bed_ratio = case_number(test, "bed_ratio", DIM_AREA);
	const struct base *base = prepare();
	const struct state *state = solve(test, base, bed_ratio, down, my, -mx);
	give_balance(state, out);
	if (state->balance != BALANCED)
		return;
	for (size_t i = 0; i < base->anchor_count; i++)
		output_number(out, DIM_FORCE, state->tension[i], "tension_%zu", i + 1);
	for (size_t i = 0; i < cell.base.count; i++)
		output_number(out, DIM_FORCE, state->piece_force[i], "piece_%zu", i + 1);
	output_number(out, DIM_FORCE, state->bed_force, "bed_force");
	output_number(out, DIM_STRESS, state->pressure_max, "pressure");
}

/* The load point lies over the bed, so one anchor there stays without tension and changes nothing.
 */
static const struct state *solve_eccentric(struct test_case *test, const struct base **base)
{
	double down = case_number(test, "N", DIM_FORCE);
	double ex = case_number_or(test, "ex", DIM_LENGTH, 0),
	       ey = case_number_or(test, "ey", DIM_LENGTH, 0);
	add_anchor(ex, ey);
	*base = prepare();
	return solve(test, *base, 1000, down, down * ex, down * ey);
}

static void give_pressure(const struct state *state, struct outputs *out)
{
	give_balance(state, out);
	cr_assert_eq(state->tension[0], 0);
	output_number(out, DIM_STRESS, state->pressure_max, "pressure");
	output_number(out, DIM_FORCE, state->bed_force, "bed_force");
}

void kind_base_rectangle(struct test_case *test, struct outputs *out)
{
	double length = case_number(test, "length", DIM_LENGTH),
	       width = case_number(test, "width", DIM_LENGTH);
	add_rectangle(length, width);
	const struct base *base;
	const struct state *state = solve_eccentric(test, &base);
	give_pressure(state, out);
	/* along the edge y = 0 of a load on the x axis: from the line w' = 0 to the loaded side */
	if (state->settle[1] > 0) {
		double zero = base->centre[0] - base->size * state->settle[0] / state->settle[1];
		output_number(out, DIM_LENGTH, fmin(length, length / 2 - zero), "contact");
	}
}

void kind_base_circle(struct test_case *test, struct outputs *out)
{
	struct vec2 ring[MAX_CASE_POINTS];
	double radius = case_number(test, "radius", DIM_LENGTH),
	       step = 2 * acos(-1) / MAX_CASE_POINTS;
	for (int i = 0; i < MAX_CASE_POINTS; i++)
		ring[i] = (struct vec2){radius * cos(i * step), radius * sin(i * step)};
	add_outline(ring, MAX_CASE_POINTS);
	const struct base *base;
	give_pressure(solve_eccentric(test, &base), out);
}

void kind_bolt_group(struct test_case *test, struct outputs *out)
{
	struct vec2 force[1], at[1] = {{0, 0}}, shear[MAX_ANCHORS];
	read_anchors(test);
	cr_assert_eq(case_points(test, "force", DIM_FORCE, force, 1), 1);
	if (case_has(test, "at"))
		cr_assert_eq(case_points(test, "at", DIM_LENGTH, at, 1), 1);
	double torsion = case_number_or(test, "torsion", DIM_MOMENT, 0);
	torsion += at[0].x * force[0].y - at[0].y * force[0].x;
	add_rectangle(10000, 10000);   /* the shear group does not look at the bed */
	const struct base *base = prepare();
	bool shared = shear_group_share(base, (const double[3]){force[0].x, force[0].y, torsion},
	                                shear);
	output_word(out, "shared", shared ? "yes" : "no");
	for (size_t i = 0; i < base->anchor_count; i++) {
		output_number(out, DIM_FORCE, hypot(shear[i].x, shear[i].y), "shear_%zu", i + 1);
		output_number(out, DIM_FORCE, shear[i].x, "shear_x_%zu", i + 1);
		output_number(out, DIM_FORCE, shear[i].y, "shear_y_%zu", i + 1);
	}
}
