/* The rigid base on its one-way bed: published values and closed forms first, then the limits.
 * N downward, Sx = N ex and Sy = N ey about the cell origin. */
#include "../support/random_base.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* each test runs in a process of its own */
static struct base_case it;
static struct base base;
static struct state state;

static struct arena arena;

static void release(void)
{
	arena_close(&arena);
}

/* Prepares the case anew; what was prepared before is gone. */
static void prepare(void)
{
	release();
	arena_open(&arena, NULL, NULL);
	cr_assert_eq(base_prepare(&it.cell, &arena, &base), DONE);
}

TestSuite(base_published, .fini = release);
TestSuite(base_statics, .fini = release);
TestSuite(base_degenerate, .fini = release);
TestSuite(base_balance, .fini = release);
TestSuite(base_overturning, .fini = release);

/* Solves from the linear start and checks equilibrium. */
static void solve(double bed_ratio, double n, double sx, double sy)
{
	memset(&state, 0, sizeof state);
	state.bed_ratio = bed_ratio;
	state.load[0] = n;
	state.load[1] = sx;
	state.load[2] = sy;
	base_start(&base, bed_ratio, state.load, state.settle);
	cr_assert_eq(base_solve(&base, bed_ratio, state.load, state.settle, NULL), DONE);
	base_fill(&base, &state);
	cr_assert_leq(state.residual, 1e-10, "residual %g", state.residual);
}

static void near(double value, double expected, double tolerance, const char *what)
{
	cr_assert(fabs(value - expected) <= tolerance, "%s: %.12g, expected %.12g within %g", what,
	          value, expected, tolerance);
}

/* --- published values
 * ----------------------------------------------------------------------------- */

/* Rectangle under a load on one axis. Strength of materials, rectangle without tension: e <= L/6:
 * N/(BL)(1+6e/L); else contact c = 3(L/2-e), peak 2N/(Bc). Exact; 1e-9 covers the residual. */
Test(base_published, rectangle_on_one_axis)
{
	const double length = 900, width = 400, n = 30e3;
	case_clear(&it);
	case_rectangle(&it, 0, 0, length, width);
	prepare();
	for (double e = 0; e < 440; e += 20) {
		double contact = 3 * (length / 2 - e);
		double peak = e <= length / 6 ? n / (width * length) * (1 + 6 * e / length)
		                              : 2 * n / (width * contact);
		solve(1, n, n * e, 0);
		near(state.pressure_max, peak, 1e-9 * peak, "pressure");
		near(state.bed_at[0], e, 1e-9 * length, "resultant");
		solve(1, n, 0, -n * e / 10);
		near(state.bed_at[1], -e / 10, 1e-9 * length, "resultant, other axis");
	}
}

/* Corner triangle: a = Lx/2-ex, b = Ly/2-ey, legs 4a and 4b, peak 3N/(8ab), valid while the legs
 * fit: a triangular pyramid of pressure has its resultant at a quarter of the legs. */
Test(base_published, rectangle_corner_triangle)
{
	const double lx = 800, ly = 600, n = 12e3;
	case_clear(&it);
	case_rectangle(&it, 100, -50, lx, ly);
	prepare();
	for (double a = 20; 4 * a <= lx; a += 45)
		for (double b = 20; 4 * b <= ly; b += 30) {
			solve(1, n, n * (100 + lx / 2 - a), n * (-50 + ly / 2 - b));
			double peak = 3 * n / (8 * a * b);
			near(state.pressure_max, peak, 1e-9 * peak, "pressure");
		}
}

/* Circle: half-angle t of the contact segment, A = R^2 (t - sin t cos t), S = (2/3) R^3 sin^3 t,
 * I = R^4/4 (t - sin(4t)/4); N ~ S - x0 A, M ~ I - x0 S, x0 = R cos t. A polygon of 512 sides lies
 * within s = R (1 - cos(pi/512)) of its circle; the peak goes with about the power -5/2 of the
 * contact's depth, so that it may be off by 4 s/depth. */
Test(base_published, circle_segment)
{
	const double radius = 250, n = 40e3, sagitta = radius * (1 - cos(acos(-1) / MAX_VERTICES));
	static struct vec2 ring[MAX_VERTICES];
	for (int i = 0; i < MAX_VERTICES; i++) {
		double angle = 2 * acos(-1) * i / MAX_VERTICES;
		ring[i] = (struct vec2){radius * cos(angle), radius * sin(angle)};
	}
	case_clear(&it);
	it.cell.base.count = 1;
	it.piece[0].outline = (struct ring){{{0}, GIVEN}, ring, MAX_VERTICES};
	prepare();
	for (double t = 0.5; t < 3; t += 0.25) {
		double area = radius * radius * (t - sin(t) * cos(t)), zero = radius * cos(t);
		double first = 2.0 / 3 * pow(radius * sin(t), 3);
		double second = pow(radius, 4) / 4 * (t - sin(4 * t) / 4);
		double share = first - zero * area, moment = second - zero * first;
		solve(1, n, n * moment / share, 0);
		double peak = n * (radius - zero) / share;
		near(state.pressure_max, peak, 4 * sagitta / (radius - zero) * peak, "pressure");
	}
}

/* Root of f on [low, high] by bisection. */
static double root(double (*f)(double, const double[]), const double with[], double low,
                   double high)
{
	for (int i = 0; i < 200; i++) {
		double middle = (low + high) / 2;
		if ((f(middle, with) > 0) == (f(low, with) > 0))
			low = middle;
		else
			high = middle;
	}
	return low;
}

/* with: D, f, e, 6 n As/B */
static double plate_cubic(double y, const double with[])
{
	double d = with[0], f = with[1], e = with[2], k = with[3];
	return y * y * y + 3 * (e - d / 2) * y * y + k * (f + e) * y - k * (f + e) * (d / 2 + f);
}

/* The classic elastic base plate with one row of anchors in tension (Blodgett, Design of Welded
 * Structures, 3.3): Y^3 + 3(e-D/2)Y^2 + (6 n As/B)(f+e)Y - (6 n As/B)(f+e)(D/2+f) = 0, T = -P
 * (D/2-Y/3-e)/(D/2-Y/3+f). P = 200 kN, M = 60 kN m, plate 500 x 400 mm, f = 200 mm; any n As. */
Test(base_published, elastic_base_plate_cubic)
{
	const double p = 200e3, m = 60e6, d = 500, b = 400, f = 200, e = m / p;
	case_clear(&it);
	case_rectangle(&it, 0, 0, d, b);
	case_anchor(&it, -f, -150);
	case_anchor(&it, -f, 150);
	prepare();
	for (double nas = 500; nas < 2e5; nas *= 3) {
		const double with[] = {d, f, e, 6 * nas / b};
		double y = root(plate_cubic, with, 0, d);
		double tension = -p * (d / 2 - y / 3 - e) / (d / 2 - y / 3 + f);
		solve(nas / 2, p, m, 0);
		near(state.tension[0] + state.tension[1], tension, 1e-8 * tension, "tension");
		near(state.pressure_max, 2 * (p + tension) / (b * y), 1e-8 * state.pressure_max,
		     "pressure");
	}
}

/* Own case: frame 400 x 600 mm with an opening off centre, four anchors 50 kN/mm, bed 10 N/mm3.
 * CalculiX 2.20, rigid body on one-way springs (tests/properties/calculix_base.py writes the
 * model): lattices of 80 and 240 cells a side give 46104.74, 13413.35, 0, 13407.90 and 46100.91,
 * 13413.29, 0, 13406.56 N. The lattice's error falls with the square of its step, so that less than
 * 0.5 N is left at 240. */
Test(base_published, finite_element_lattice)
{
	const struct vec2 frame[] = {{-200, -300}, {200, -300}, {200, 300}, {-200, 300}};
	const struct vec2 opening[] = {{-120, -100}, {80, -100}, {80, 180}, {-120, 180}};
	const double expected[] = {46100.91, 13413.29, 0, 13406.56};
	case_clear(&it);
	case_outline(&it, frame, 4, opening, 4);
	case_anchor(&it, -160, -250);
	case_anchor(&it, 160, -250);
	case_anchor(&it, 160, 250);
	case_anchor(&it, -160, 250);
	prepare();
	solve(50e3 / 10, 20e3, 20e6, 30e6);
	for (int i = 0; i < 4; i++)
		near(state.tension[i], expected[i], 0.5, "tension");
}

/* How tension depends on the bed: 600 x 600 plate, four anchors 50 kN/mm at +-250, N = 10 kN, M =
 * 40 kN m, about one axis and about the diagonal. Values derived independently and printed with one
 * decimal (kN). */
Test(base_published, sensitivity_to_the_bed)
{
	static const struct { double k, row, corner, side; } rows[] = {
		{1, 42.3, 63.9, 2.6}, {10, 36.8, 43.3, 14.4}, {30, 35.5, 38.4, 15.6}, {100, 34.7, 35.0, 15.9},
		{1000, 33.8, 31.5, 15.9}, {1e6, 33.4, 29.0, 15.7},
	};
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 600);
	for (int i = 0; i < 4; i++)
		case_anchor(&it, i & 1 ? 250 : -250, i & 2 ? 250 : -250);
	prepare();
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double ratio = 50e3 / rows[i].k;
		solve(ratio, 10e3, 40e6, 0);
		near(state.tension[0] / 1e3, rows[i].row, 0.0501, "one axis");
		near(state.tension[0], state.tension[2], 1e-6, "both of the row");
		solve(ratio, 10e3, 40e6 * sqrt(0.5), 40e6 * sqrt(0.5));
		near(state.tension[0] / 1e3, rows[i].corner, 0.0501, "corner");
		near(state.tension[1] / 1e3, rows[i].side, 0.0501, "side");
	}
}

/* The same table on four pads of 100 x 100 mm under the anchors, k = 100 N/mm3. */
Test(base_published, sensitivity_on_pads)
{
	case_clear(&it);
	for (int i = 0; i < 4; i++) {
		case_pad(&it, i & 1 ? 250 : -250, i & 2 ? 250 : -250, 100, 100);
		case_anchor(&it, i & 1 ? 250 : -250, i & 2 ? 250 : -250);
	}
	prepare();
	solve(500, 10e3, 40e6, 0);
	near(state.tension[0] / 1e3, 35.4, 0.0501, "one axis");
	near(state.pressure_max, 11.0, 0.0501, "pressure");
	near(state.piece_force[0], 0, 1e-6, "the lifted pad");
	solve(500, 10e3, 40e6 * sqrt(0.5), 40e6 * sqrt(0.5));
	near(state.tension[0] / 1e3, 34.8, 0.0501, "corner");
	near(state.tension[1] / 1e3, 15.5, 0.0501, "side");
	near(state.pressure_max, 15.3, 0.0501, "pressure");
}

/* --- statics
 * -------------------------------------------------------------------------------------- */

static void four_anchors(double length, double width)
{
	case_clear(&it);
	case_rectangle(&it, 0, 0, length + 100, width + 100);
	for (int i = 0; i < 4; i++)
		case_anchor(&it, (i & 1 ? length : -length) / 2, (i & 2 ? width : -width) / 2);
	prepare();
}

/* Pure uplift: no bed acts, equal anchors as a bolt group: N/n + M x/sum x^2. */
Test(base_statics, uplift)
{
	four_anchors(500, 300);
	solve(700, -8e3, 0, 0);
	for (int i = 0; i < 4; i++)
		near(state.tension[i], 2e3, 1e-6, "tension");
	near(state.bed_force, 0, 1e-6, "bed");
	cr_assert_eq(state.pressure_max, 0);
	cr_assert_eq(state.in_tension, 15);
	solve(700, -8e3, -8e3 * 50, -8e3 * -20);
	for (int i = 0; i < 4; i++) {
		double x = i & 1 ? 250 : -250, y = i & 2 ? 150 : -150;
		near(state.tension[i], 2e3 + 400e3 * x / 250e3 - 160e3 * y / 90e3, 1e-6, "tension");
	}
}

/* On a very stiff bed the base tips about its edge: one row, T f' = M - N L/2 with f' from the
 * edge. */
Test(base_statics, stiff_bed_tips_about_the_edge)
{
	const double n = 5e3, m = 9e6;
	case_clear(&it);
	case_rectangle(&it, 0, 0, 800, 500);
	case_anchor(&it, -350, -200);
	case_anchor(&it, -350, 200);
	prepare();
	double limit = (m - n * 400) / 750;
	double before = HUGE_VAL;
	for (double ratio = 100; ratio > 1e-5; ratio /= 100) {
		solve(ratio, n, m, 0);
		double over = state.tension[0] + state.tension[1] - limit;
		cr_assert(over > 0 && over < before, "falls to the limit");
		before = over;
	}
	/* the contact's depth goes with the root of the ratio, and so does the distance from the
	 * limit */
	cr_assert_lt(before, 1e-3 * limit);
}

/* Full contact: nothing depends on the anchors. */
Test(base_statics, no_tension_inside_the_kern)
{
	four_anchors(500, 300);
	solve(700, 50e3, 50e3 * 40, 50e3 * 25);
	for (int i = 0; i < 4; i++)
		cr_assert_eq(state.tension[i], 0);
	cr_assert_eq(state.in_tension, 0);
	near(state.pressure_max, 50e3 / (600 * 400) * (1 + 6 * 40.0 / 600 + 6 * 25.0 / 400), 1e-12,
	     "pressure");
}

/* Pads that share an edge are one base. */
Test(base_statics, divided_base)
{
	four_anchors(700, 300);
	solve(560, 8e3, 6e6, 4e6);
	struct state whole = state;
	case_clear(&it);
	case_pad(&it, -200, 0, 400, 400);
	case_pad(&it, 200, 100, 400, 200);
	case_pad(&it, 200, -100, 400, 200);
	for (int i = 0; i < 4; i++)
		case_anchor(&it, i & 1 ? 350 : -350, i & 2 ? 150 : -150);
	prepare();
	solve(560, 8e3, 6e6, 4e6);
	for (int i = 0; i < 4; i++)
		near(state.tension[i], whole.tension[i], 1e-8 * whole.tension[0], "tension");
	near(state.piece_force[0] + state.piece_force[1] + state.piece_force[2], whole.bed_force,
	     1e-6, "bed");
	near(base.area, 800 * 400, 1e-6, "area");
}

/* Corners in the middle of an edge, and either sense of rotation, are the same outline. */
Test(base_statics, outline_as_it_is_written)
{
	const struct vec2 clockwise[] = {{-400, -200}, {-400, 0},  {-400, 200},
	                                 {0, 200},     {400, 200}, {400, -200}};
	const struct vec2 opening[] = {{-300, -100}, {300, -100}, {300, 100}, {-300, 100}};
	const struct vec2 gninepo[] = {
		{-300, 100}, {300, 100}, {300, -100}, {0, -100}, {-300, -100}};
	const struct vec2 frame[] = {{-400, -200}, {400, -200}, {400, 200}, {-400, 200}};
	for (int way = 0; way < 2; way++) {
		case_clear(&it);
		if (way)
			case_outline(&it, clockwise, 6, gninepo, 5);
		else
			case_outline(&it, frame, 4, opening, 4);
		prepare();
		cr_assert_eq(base.ring[0].count, 4);
		cr_assert_eq(base.ring[1].count, 4);
		near(base.area, 800 * 400 - 600 * 200, 1e-9, "area");
		solve(1, 9e3, 2e6, 1e6);
		near(state.bed_at[0], 2e6 / 9e3, 1e-6, "resultant");
	}
}

/* --- degenerate patterns
 * -------------------------------------------------------------------------- */

static void clear_of_nan(void)
{
	for (size_t i = 0; i < base.anchor_count; i++)
		cr_assert(isfinite(state.tension[i]) && state.tension[i] >= 0);
	cr_assert(isfinite(state.bed_at[0]) && isfinite(state.bed_at[1]) &&
	          isfinite(state.pressure_max));
	cr_assert(isfinite(state.residual) && isfinite(state.settle[0]));
}

/* Zero load: a base that just touches, no force anywhere. */
Test(base_degenerate, no_load)
{
	four_anchors(500, 300);
	solve(700, 0, 0, 0);
	clear_of_nan();
	cr_assert_eq(state.bed_force, 0);
	cr_assert_eq(state.in_tension, 0);
	cr_assert_eq(state.residual, 0);
}

/* One anchor inside: any load has its equilibrium; straight uplift goes all into it. */
Test(base_degenerate, one_anchor)
{
	case_clear(&it);
	case_rectangle(&it, 0, 0, 400, 400);
	case_anchor(&it, 30, -20);
	prepare();
	cr_assert_eq(base.facet_count, 0);
	solve(700, -5e3, -5e3 * 30, -5e3 * -20);
	clear_of_nan();
	near(state.tension[0], 5e3, 1e-6, "tension");
	/* off the anchor the edge pries */
	solve(700, -5e3, -5e3 * 60, 0);
	clear_of_nan();
	cr_assert_gt(state.tension[0], 5e3);
	near(state.tension[0], 5e3 + state.bed_force, 1e-6, "tension");
}

/* Two anchors: uplift on their line is shared by the lever rule, off the line the edge pries. */
Test(base_degenerate, two_anchors)
{
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	case_anchor(&it, -200, 0);
	case_anchor(&it, 200, 0);
	prepare();
	solve(700, -4e3, -4e3 * 100, 0);
	clear_of_nan();
	near(state.tension[0], 1e3, 1e-6, "tension");
	near(state.tension[1], 3e3, 1e-6, "tension");
	solve(700, -4e3, -4e3 * 100, -4e3 * 30);
	clear_of_nan();
	cr_assert_gt(state.bed_force, 0);
	near(state.tension[0] + state.tension[1], 4e3 + state.bed_force, 1e-6, "tension");
}

/* Collinear anchors: as one row; a moment along the row leaves them shared evenly. */
Test(base_degenerate, collinear_anchors)
{
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	for (int i = 0; i < 5; i++)
		case_anchor(&it, -200, -150 + 75 * i);
	prepare();
	solve(300, 2e3, 5e6, 0);
	clear_of_nan();
	for (int i = 1; i < 5; i++)
		near(state.tension[i], state.tension[0], 1e-6, "tension");
	solve(300, -3e3, 3e3 * 200, 0);
	clear_of_nan();
	for (int i = 0; i < 5; i++)
		near(state.tension[i], 600, 1e-6, "tension");
}

/* A load that nothing carries ends as NO_CONVERGENCE, not as numbers. */
Test(base_degenerate, beyond_equilibrium)
{
	const double load[3] = {1e3, 500e3, 0}, uplift[3] = {-1e3, 0, 0},
		     wild[3] = {NAN, 1, HUGE_VAL};
	double settle[3] = {0, 0, 0};
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	prepare();
	cr_assert_eq(base_solve(&base, 300, load, settle, NULL), NO_CONVERGENCE);
	cr_assert_eq(base_solve(&base, 300, uplift, settle, NULL), NO_CONVERGENCE);
	cr_assert_eq(base_solve(&base, 300, wild, settle, NULL), NO_CONVERGENCE);
}

/* Any finite start value leads to the same state. */
Test(base_degenerate, any_start)
{
	const double starts[][3] = {
		{0, 0, 0}, {1e12, 0, 0}, {-1e9, 1, 2}, {1e-30, 1e9, -1e9}, {0, 1e300, -1e300}};
	four_anchors(500, 300);
	solve(700, 8e3, 5e6, 2e6);
	for (size_t i = 0; i < sizeof starts / sizeof *starts; i++) {
		double settle[3], tension[MAX_ANCHORS];
		memcpy(settle, starts[i], sizeof settle);
		cr_assert_eq(base_solve(&base, 700, state.load, settle, NULL), DONE);
		base_tensions(&base, 700, settle, tension);
		for (int k = 0; k < 4; k++)
			near(tension[k], state.tension[k], 1e-6, "tension");
	}
}

/* A kept settle gives the state back bit for bit. */
Test(base_degenerate, same_bits_again)
{
	struct state again;
	double tension[MAX_ANCHORS];
	four_anchors(500, 300);
	solve(700, 8e3, 5e6, 2e6);
	memset(&again, 0, sizeof again);
	again.bed_ratio = state.bed_ratio;
	memcpy(again.load, state.load, sizeof again.load);
	memcpy(again.settle, state.settle, sizeof again.settle);
	base_fill(&base, &again);
	cr_assert(memcmp(&again, &state, sizeof state) == 0);
	base_tensions(&base, 700, state.settle, tension);
	cr_assert(memcmp(tension, state.tension, base.anchor_count * sizeof *tension) == 0);
}

/* A state with a wrong settle shows it in its residual: a tension and a bed force that are off. */
Test(base_degenerate, residual_tells)
{
	four_anchors(500, 300);
	solve(700, 8e3, 5e6, 2e6);
	for (int k = 0; k < 3; k++) {
		struct state wrong = state;
		wrong.settle[k] *= 1 + 1e-4;
		base_fill(&base, &wrong);
		cr_assert_gt(wrong.residual, 1e-6);
	}
}

/* --- existence
 * ------------------------------------------------------------------------------------ */

/* Without anchors the load must press inside the hull. */
Test(base_balance, free_standing)
{
	const double n = 4e3;
	case_clear(&it);
	case_pad(&it, -300, -200, 100, 100);
	case_pad(&it, 300, -200, 100, 100);
	case_pad(&it, 0, 250, 100, 100);
	prepare();
	cr_assert_eq(base_balance(&base, (const double[]){n, 0, 0}), BALANCED);
	cr_assert_eq(base_balance(&base, (const double[]){n, 0, n * -249.9}), BALANCED);
	cr_assert_eq(base_balance(&base, (const double[]){n, 0, n * -250}), LIMIT);
	cr_assert_eq(base_balance(&base, (const double[]){n, 0, n * -250.1}), NO_EQUILIBRIUM);
	cr_assert_eq(base_balance(&base, (const double[]){-n, 0, 0}), NO_EQUILIBRIUM);
	cr_assert_eq(base_balance(&base, (const double[]){0, 0, 0}), LIMIT);
	cr_assert_eq(base_balance(&base, (const double[]){0, 1e3, 0}), NO_EQUILIBRIUM);
}

/* Anchors inside the hull hold any load; on its edge, or all on one side outside, they do not. */
Test(base_balance, anchors)
{
	four_anchors(500, 300);
	cr_assert_eq(base.facet_count, 0);
	cr_assert_eq(base_balance(&base, (const double[]){-1e6, 1e9, 0}), BALANCED);
	cr_assert_eq(base_balance(&base, (const double[]){0, 0, 0}), BALANCED);
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	case_anchor(&it, 300, -100);
	case_anchor(&it, 300, 100);
	prepare();
	/* both on the right edge: only tipping over that edge is free */
	cr_assert_eq(base.facet_count, 1);
	cr_assert_eq(base_balance(&base, (const double[]){100, -1e9, 0}), BALANCED);
	cr_assert_eq(base_balance(&base, (const double[]){100, 100 * 299, 0}), BALANCED);
	cr_assert_eq(base_balance(&base, (const double[]){100, 100 * 301, 0}), NO_EQUILIBRIUM);
	cr_assert_eq(base_balance(&base, (const double[]){-100, -100 * 300, 0}), LIMIT);
	/* one lug far to the right: lines through it and the near or far corners */
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	case_anchor(&it, 500, 0);
	prepare();
	cr_assert_eq(base_balance(&base, (const double[]){100, -1e6, 0}), BALANCED);
	cr_assert_eq(base_balance(&base, (const double[]){100, 100 * 301, 0}), NO_EQUILIBRIUM);
	cr_assert_eq(base_balance(&base, (const double[]){-1, -1e3, 0}), BALANCED);
	cr_assert_eq(base_balance(&base, (const double[]){-1, -499, 0}), NO_EQUILIBRIUM);
	/* two lugs there: uplift beyond their line presses the bed, this side of it lifts the bed's
	 * side */
	case_anchor(&it, 500, 100);
	prepare();
	cr_assert_eq(base_balance(&base, (const double[]){-1, -501, -50}), BALANCED);
	cr_assert_eq(base_balance(&base, (const double[]){-1, -499, -50}), NO_EQUILIBRIUM);
}

/* Free-standing rectangle: overturning over resisting moment M/(N L/2), by the short way. */
Test(base_overturning, rectangle)
{
	const double n = 4e3, moment = 0.5e6;
	double heading;
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	prepare();
	double steady[3] = {n, 0, 0};
	near(base_overturning(&base, steady, moment, &heading), moment / (n * 200), 1e-12, "ratio");
	near(fabs(heading), acos(-1) / 2, 1e-12, "heading");
	/* weight off centre: the near edge governs */
	steady[1] = n * 200;
	near(base_overturning(&base, steady, moment, &heading), moment / (n * 100), 1e-12, "ratio");
	near(heading, 0, 1e-12, "heading");
	/* weight outside: nothing resists */
	steady[1] = n * 301;
	cr_assert_eq(base_overturning(&base, steady, moment, &heading), HUGE_VAL);
	/* held down on all sides */
	four_anchors(500, 300);
	cr_assert_eq(base_overturning(&base, steady, moment, &heading), 0);
}

/* Headings within a range alone: across the short way M/(N b/2), at 30 deg to it its cosine; turned
 * away, the moment resists beside the weight, here that of a weight off the centre. */
Test(base_overturning, within_a_range)
{
	const double n = 4e3, moment = 0.5e6, pi = acos(-1);
	const double steady[3] = {n, 0, 0}, outside[3] = {n, n * 400, 0};
	double heading;
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	prepare();
	near(base_overturning_within(&base, steady, moment, 0, 2 * pi, &heading),
	     moment / (n * 200), 1e-12, "all round");
	near(base_overturning_within(&base, steady, moment, 1.4, 1.7, &heading),
	     moment / (n * 200), 1e-12, "the worst heading is among them");
	near(heading, pi / 2, 1e-12, "heading");
	near(base_overturning_within(&base, steady, moment, pi / 2 + pi / 6, pi, &heading),
	     fmax(cos(pi / 6) * moment / (n * 200), moment / (n * 300)), 1e-12, "one end");
	/* over the far edge it would tip by 1e6/(700 N) = 0.36 alone */
	near(base_overturning_within(&base, outside, 1e6, pi, pi + 1e-9, &heading), n * 100 / 1e6,
	     1e-6, "turned away it resists");
}

/* Two parts that stand: what pushes toward the line against what holds back, either way. */
Test(base_overturning, in_two_parts)
{
	const double n = 4e3;
	const double weight[3] = {n, 0, 0}, push[3] = {0, 0.3e6, 0}, back[3] = {0, -1e6, 0};
	const double outside[3] = {n, n * 400, 0};
	double heading;
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	prepare();
	near(base_overturning_apart(&base, weight, push, &heading), 0.3e6 / (n * 300), 1e-12,
	     "over the edge at x = 300");
	near(heading, 0, 1e-12, "heading");
	near(base_overturning_apart(&base, outside, back, &heading), n * 100 / 1e6, 1e-12,
	     "held back by the other");
	cr_assert_eq(base_overturning_apart(&base, outside, push, &heading), HUGE_VAL);
	four_anchors(500, 300);
	cr_assert_eq(base_overturning_apart(&base, outside, push, &heading), 0);
}

/* The ratio passes 1 exactly where some heading loses equilibrium. */
Test(base_overturning, agrees_with_balance)
{
	const double steady[3] = {4e3, 2e5, -3e5};
	double heading;
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	case_rectangle(&it, 250, 350, 100, 100);
	case_anchor(&it, -300, 0);
	prepare();
	double ratio = base_overturning(&base, steady, 1e5, &heading);
	cr_assert_gt(ratio, 0);
	for (int over = 0; over < 2; over++) {
		double turning = 1e5 / ratio * (over ? 1.0001 : 0.9999);
		bool lost = false;
		for (int i = 0; i < 3600; i++) {
			double t = heading + acos(-1) * i / 1800;
			const double load[3] = {steady[0], steady[1] + turning * cos(t),
			                        steady[2] + turning * sin(t)};
			lost = lost || base_balance(&base, load) == NO_EQUILIBRIUM;
		}
		cr_assert_eq(lost, over == 1);
	}
}

/* Memory that runs out is told, at every request. */
static void *fail_after(void *user, void *old, size_t size)
{
	int *left = user;
	if (size == 0) {
		free(old);
		return NULL;
	}
	return (*left)-- > 0 ? realloc(old, size) : NULL;
}

Test(base_prepare, out_of_memory)
{
	case_clear(&it);
	case_rectangle(&it, 0, 0, 600, 400);
	case_anchor(&it, 100, 0);
	for (int allowed = 0, done = 0; !done; allowed++) {
		int left = allowed;
		arena_open(&arena, fail_after, &left);
		enum status status = base_prepare(&it.cell, &arena, &base);
		cr_assert(status == DONE || status == NO_MEMORY);
		done = status == DONE;
		cr_assert_lt(allowed, 100);
		arena_close(&arena);
	}
}
