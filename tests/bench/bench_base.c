/* Time of one contact solution, warm: each heading of a sweep of 48 starts from its neighbour's
 * solution. With -DWITH_QP the same problem on a lattice bed is given to a general interior-point
 * solver (Debian coinor-libipopt-dev) as a quadratic program, in the same run, for comparison. */
#include "../support/random_base.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { HEADINGS = 48, SWEEPS = 401 };

static const double pi = 3.14159265358979323846;

/* weight, a tilting moment that lifts a corner, steel anchors on concrete */
static const double down = 8e3, turning = 6e6, bed_ratio = 560;

static double now(void)
{
	struct timespec time;
	clock_gettime(CLOCK_MONOTONIC, &time);
	return (double)time.tv_sec * 1e9 + (double)time.tv_nsec;
}

static int rising(const void *left, const void *right)
{
	double a = *(const double *)left, b = *(const double *)right;
	return (a > b) - (a < b);
}

static double median(double values[], size_t count)
{
	qsort(values, count, sizeof *values, rising);
	return values[count / 2];
}

static void load_at(int heading, double load[3])
{
	double angle = 2 * pi * heading / HEADINGS;
	load[0] = down;
	load[1] = turning * cos(angle);
	load[2] = turning * sin(angle);
}

static void six_anchors(struct base_case *base_case)
{
	for (int i = 0; i < 6; i++)
		case_anchor(base_case, 450 * (i % 3 - 1), i < 3 ? -350 : 350);
}

static void plate(struct base_case *base_case)
{
	case_rectangle(base_case, 0, 0, 1000, 800);
	six_anchors(base_case);
}

static void frame(struct base_case *base_case)
{
	const struct vec2 outside[] = {{-500, -400}, {500, -400}, {500, 400}, {-500, 400}};
	const struct vec2 inside[] = {{-400, -300}, {400, -300}, {400, 300}, {-400, 300}};
	case_outline(base_case, outside, 4, inside, 4);
	six_anchors(base_case);
}

static void pads(struct base_case *base_case)
{
	for (int i = 0; i < 4; i++) {
		double x = i & 1 ? 450 : -450, y = i & 2 ? 350 : -350;
		case_pad(base_case, x, y, 100, 100);
		case_anchor(base_case, x, y);
	}
}

/* Median of the time of one solution [ns]; the tensions of the last heading stay in `tension`. */
static double time_sweep(const struct base *base, double *iterations, double tension[])
{
	static double times[SWEEPS];
	double load[HEADINGS][3], settle[3];
	long total = 0;
	for (int h = 0; h < HEADINGS; h++)
		load_at(h, load[h]);
	base_start(base, bed_ratio, load[0], settle);
	for (int s = -20; s < SWEEPS; s++) {
		double start = now();
		for (int h = 0; h < HEADINGS; h++) {
			int count;
			if (base_solve(base, bed_ratio, load[h], settle, &count) != DONE)
				exit(1);
			total += s >= 0 ? count : 0;
		}
		/* the first sweeps warm the caches */
		if (s >= 0)
			times[s] = (now() - start) / HEADINGS;
	}
	base_tensions(base, bed_ratio, settle, tension);
	*iterations = (double)total / SWEEPS / HEADINGS;
	return median(times, SWEEPS);
}

#ifdef WITH_QP
#include <coin/IpStdCInterface.h>

/* The plate on a lattice of springs: unknowns u0 u1 u2 (in m), a compression s >= w for each cell
 * and a stretch t >= -w for each anchor; least of sum k a s^2/2 + sum ka t^2/2 - load . u, in bed
 * stiffness 1. */
enum { ACROSS = 20, ALONG = 16, CELLS = ACROSS * ALONG, ROWS = CELLS + 6, UNKNOWNS = 3 + ROWS };

struct program {
	double x[ROWS], y[ROWS], stiffness[ROWS], sign[ROWS];
	double load[3];
};

static Bool value(Index n, Number *at, Bool fresh, Number *out, UserDataPtr user)
{
	const struct program *program = user;
	(void)n;
	(void)fresh;
	*out = 0;
	for (int k = 0; k < 3; k++)
		*out -= program->load[k] * at[k];
	for (int i = 0; i < ROWS; i++)
		*out += program->stiffness[i] * at[3 + i] * at[3 + i] / 2;
	return TRUE;
}

static Bool gradient(Index n, Number *at, Bool fresh, Number *out, UserDataPtr user)
{
	const struct program *program = user;
	(void)n;
	(void)fresh;
	for (int k = 0; k < 3; k++)
		out[k] = -program->load[k];
	for (int i = 0; i < ROWS; i++)
		out[3 + i] = program->stiffness[i] * at[3 + i];
	return TRUE;
}

static Bool constraints(Index n, Number *at, Bool fresh, Index m, Number *out, UserDataPtr user)
{
	const struct program *program = user;
	(void)n;
	(void)m;
	(void)fresh;
	for (int i = 0; i < ROWS; i++)
		out[i] = at[3 + i] -
		         program->sign[i] * (at[0] + at[1] * program->x[i] + at[2] * program->y[i]);
	return TRUE;
}

static Bool jacobian(Index n, Number *at, Bool fresh, Index m, Index count, Index *row,
                     Index *column, Number *out, UserDataPtr user)
{
	const struct program *program = user;
	(void)n;
	(void)at;
	(void)m;
	(void)count;
	(void)fresh;
	for (int i = 0; i < ROWS; i++)
		for (int k = 0; k < 4; k++) {
			if (row) {
				row[4 * i + k] = i;
				column[4 * i + k] = k < 3 ? k : 3 + i;
			} else {
				const double entry[4] = {-program->sign[i],
				                         -program->sign[i] * program->x[i],
				                         -program->sign[i] * program->y[i], 1};
				out[4 * i + k] = entry[k];
			}
		}
	return TRUE;
}

static Bool second(Index n, Number *at, Bool fresh, Number factor, Index m, Number *multiplier,
                   Bool fresh_too, Index count, Index *row, Index *column, Number *out,
                   UserDataPtr user)
{
	const struct program *program = user;
	(void)n;
	(void)at;
	(void)fresh;
	(void)m;
	(void)multiplier;
	(void)fresh_too;
	(void)count;
	for (int i = 0; i < ROWS; i++) {
		if (row)
			row[i] = column[i] = 3 + i;
		else
			out[i] = factor * program->stiffness[i];
	}
	return TRUE;
}

/* The plate's bed as cells of 50 x 50 mm, and its anchors; lengths in m, forces in kN. */
static void pose(const struct base *base, struct program *program)
{
	for (int i = 0; i < CELLS; i++) {
		program->x[i] = (i % ACROSS + 0.5) / ACROSS - 0.5;
		program->y[i] = 0.8 * ((i / ACROSS + 0.5) / ALONG - 0.5);
		program->stiffness[i] = 0.8 / CELLS;
		program->sign[i] = 1;
	}
	for (size_t i = 0; i < base->anchor_count; i++) {
		program->x[CELLS + i] = base->anchor_mm[i].x / 1e3;
		program->y[CELLS + i] = base->anchor_mm[i].y / 1e3;
		program->stiffness[CELLS + i] = bed_ratio / 1e6;
		program->sign[CELLS + i] = -1;
	}
}

static IpoptProblem open_program(void)
{
	static double low[UNKNOWNS], high[UNKNOWNS], row_low[ROWS], row_high[ROWS];
	for (int i = 0; i < UNKNOWNS; i++) {
		low[i] = i < 3 ? -2e19 : 0;
		high[i] = 2e19;
	}
	for (int i = 0; i < ROWS; i++)
		row_high[i] = 2e19;
	IpoptProblem problem = CreateIpoptProblem(UNKNOWNS, low, high, ROWS, row_low, row_high,
	                                          4 * ROWS, ROWS, 0, value, constraints, gradient,
	                                          jacobian, second);
	AddIpoptIntOption(problem, "print_level", 0);
	AddIpoptStrOption(problem, "sb", "yes");
	AddIpoptNumOption(problem, "tol", 1e-9);
	AddIpoptStrOption(problem, "hessian_constant", "yes");
	AddIpoptStrOption(problem, "jac_d_constant", "yes");
	return problem;
}

/* Median of the time of one program [ns], each from its neighbour's solution; the last heading's
 * tensions. */
static double time_program(const struct base *base, double tension[])
{
	static struct program program;
	static double at[UNKNOWNS], times[HEADINGS];
	pose(base, &program);
	IpoptProblem problem = open_program();
	for (int h = 0; h < HEADINGS; h++) {
		double load[3], start = now(), least;
		load_at(h, load);
		program.load[0] = load[0] / 1e3;
		program.load[1] = load[1] / 1e6;
		program.load[2] = load[2] / 1e6;
		enum ApplicationReturnStatus status = IpoptSolve(problem, at, NULL, &least, NULL,
		                                                 NULL, NULL, &program);
		if (status != Solve_Succeeded && status != Solved_To_Acceptable_Level)
			exit(1);
		times[h] = now() - start;
	}
	FreeIpoptProblem(problem);
	for (size_t i = 0; i < base->anchor_count; i++)
		tension[i] = at[3 + CELLS + i] * bed_ratio / 1e6 * 1e3;
	return median(times, HEADINGS);
}

static void compare(const struct base *base, double own, const double tension[])
{
	double other[MAX_ANCHORS], off = 0, most = 0;
	double time = time_program(base, other);
	for (size_t i = 0; i < base->anchor_count; i++) {
		off = fmax(off, fabs(other[i] - tension[i]));
		most = fmax(most, tension[i]);
	}
	printf("  %-44s %10.0f ns, %.0f times as long; tension off by %.1f %%\n",
	       "as a quadratic program, lattice of 20 x 16", time, time / own, 100 * off / most);
}
#endif

int main(void)
{
	static const struct { const char *name; void (*make)(struct base_case *); } bases[] = {
		{"rectangle, 6 anchors", plate}, {"frame with an opening, 6 anchors", frame}, {"four pads, 4 anchors", pads},
	};
	puts("base: one contact solution, warm, median");
	for (size_t i = 0; i < sizeof bases / sizeof *bases; i++) {
		static struct base_case base_case;
		static struct base base;
		struct arena arena;
		double iterations, tension[MAX_ANCHORS];
		case_clear(&base_case);
		bases[i].make(&base_case);
		arena_open(&arena, NULL, NULL);
		if (base_prepare(&base_case.cell, &arena, &base) != DONE)
			return 1;
		double time = time_sweep(&base, &iterations, tension);
		printf("  %-44s %10.0f ns, %.1f iterations\n", bases[i].name, time, iterations);
#ifdef WITH_QP
		if (i == 0)
			compare(&base, time, tension);
#endif
		arena_close(&arena);
	}
	return 0;
}
