/* Newton's method on the convex energy of the base (reference: one-way contact of a rigid body).
 * Unknown: settle, the displacement field in scaled coordinates times the bed's stiffness. The
 * gradient of the energy is the lack of equilibrium, its second derivative the stiffness of what
 * acts now.
 *
 * The step's length comes from the slope along it, gradient . step, which can only rise along the
 * step as the energy is convex. The energy itself cancels near the solution and would
 * stall there. */
#include "contact.h"
#include <math.h>
#include <string.h>

enum { MOST_ITERATIONS = 120, MOST_CUTS = 60, PATIENCE = 40 };

/* Residuals relative to the load: where the iteration stops, and what is still accepted: half of
 * what the state's own check allows, which sums in another order. */
#define AIM 1e-12
#define ACCEPTED 5e-10
/* A step is long enough when the slope along it has fallen to this share of its first value. */
#define SLOPE_LEFT 0.3
/* Below this share of its diagonal a pivot is rounding, and the matrix counts as singular. */
#define PIVOT_SHARE 1e-14

/* What does not change during one solution, in scaled coordinates. */
struct problem {
	const struct base *base;
	double anchor;               /* anchor stiffness over bed stiffness, scaled [-] */
	double load[3];              /* N, Sx, Sy, scaled [MPa] */
	double size;                 /* of the load [MPa] */
};

/* A trial settlement with what acts there. */
struct trial {
	double settle[3];
	double lack[3];              /* gradient: forces from below minus load */
	double stiffness[MOMENTS];
};

static struct problem pose(const struct base *base, double bed_ratio, const double load[3])
{
	double length = base->size, area = length * length;
	struct problem problem = {.base = base, .anchor = bed_ratio / area};
	problem.load[0] = load[0] / area;
	problem.load[1] = (load[1] - base->centre[0] * load[0]) / (area * length);
	problem.load[2] = (load[2] - base->centre[1] * load[0]) / (area * length);
	problem.size = fabs(problem.load[0]) + fabs(problem.load[1]) + fabs(problem.load[2]);
	return problem;
}

static inline void add_point(struct vec2 at, double weight, double moments[MOMENTS])
{
	double x = weight * at.x, y = weight * at.y;
	moments[OF_1] += weight;
	moments[OF_X] += x;
	moments[OF_Y] += y;
	moments[OF_XX] += x * at.x;
	moments[OF_XY] += x * at.y;
	moments[OF_YY] += y * at.y;
}

/* Fills lack and stiffness from the trial's settle. */
static void evaluate(const struct problem *problem, struct trial *trial)
{
	const struct base *base = problem->base;
	struct contact sum = {.force = {-problem->load[0], -problem->load[1], -problem->load[2]}};
	for (size_t i = 0; i < base->ring_count; i++)
		contact_add(&base->ring[i], trial->settle, &sum);
	for (size_t i = 0; i < base->anchor_count; i++) {
		double w = settle_at(trial->settle, base->anchor[i]);
		if (w >= 0)
			continue;
		/* an anchor pulls the base down, so its force counts against the bed's */
		double pull = problem->anchor * w;
		sum.force[0] += pull;
		sum.force[1] += pull * base->anchor[i].x;
		sum.force[2] += pull * base->anchor[i].y;
		add_point(base->anchor[i], problem->anchor, sum.moments);
	}
	memcpy(trial->lack, sum.force, sizeof trial->lack);
	memcpy(trial->stiffness, sum.moments, sizeof trial->stiffness);
}

/* Stiffness with everything in contact and all anchors acting. */
static void whole_stiffness(const struct problem *problem, double out[MOMENTS])
{
	const struct base *base = problem->base;
	memset(out, 0, MOMENTS * sizeof *out);
	for (size_t i = 0; i < base->ring_count; i++)
		for (int k = 0; k < MOMENTS; k++)
			out[k] += base->ring[i].moments[k];
	for (size_t i = 0; i < base->anchor_count; i++)
		add_point(base->anchor[i], problem->anchor, out);
}

/* Solves the symmetric system m x = right; false when a pivot is lost in rounding. */
static bool solve3(const double m[MOMENTS], const double right[3], double x[3])
{
	if (!(m[OF_1] > 0))
		return false;
	double inverse = 1 / m[OF_1];
	double lx = m[OF_X] * inverse, ly = m[OF_Y] * inverse;
	double xx = m[OF_XX] - lx * m[OF_X], xy = m[OF_XY] - lx * m[OF_Y],
	       yy = m[OF_YY] - ly * m[OF_Y];
	if (!(xx > PIVOT_SHARE * m[OF_XX]))
		return false;
	double lxy = xy / xx, last = yy - lxy * xy;
	if (!(last > PIVOT_SHARE * m[OF_YY]))
		return false;
	double rx = right[1] - lx * right[0];
	x[2] = (right[2] - ly * right[0] - lxy * rx) / last;
	x[1] = rx / xx - lxy * x[2];
	x[0] = right[0] * inverse - lx * x[1] - ly * x[2];
	return true;
}

static inline double dot(const double a[3], const double b[3])
{
	return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static inline double residual(const struct problem *problem, const struct trial *trial)
{
	double most = fmax(fabs(trial->lack[0]), fmax(fabs(trial->lack[1]), fabs(trial->lack[2])));
	return most / problem->size;
}

/* The step against the lack of equilibrium. A guard of 0 is Newton's step; else the whole base's
 * stiffness is added (Levenberg), scaled to what acts now, in that share. Where nothing acts it
 * stands alone. The guard rises to what makes the matrix regular: one anchor, or two, hold a base
 * that may still turn. */
static bool find_step(const struct problem *problem, const struct trial *at, double *guard,
                      double step[3])
{
	const double down[3] = {-at->lack[0], -at->lack[1], -at->lack[2]};
	if (*guard == 0 && solve3(at->stiffness, down, step))
		return true;
	double whole[MOMENTS], guarded[MOMENTS];
	whole_stiffness(problem, whole);
	double acting = at->stiffness[OF_1] + at->stiffness[OF_XX] + at->stiffness[OF_YY];
	double share = acting > 0 ? acting / (whole[OF_1] + whole[OF_XX] + whole[OF_YY]) : 1;
	if (*guard == 0)
		*guard = 1e-9;
	for (; *guard < 1e9; *guard *= 10) {
		for (int k = 0; k < MOMENTS; k++)
			guarded[k] = at->stiffness[k] + *guard * share * whole[k];
		if (solve3(guarded, down, step))
			return true;
	}
	return false;
}

/* How far along a step, and the slope there. */
struct reach { double length, slope; };

static struct reach try_length(const struct problem *problem, const struct trial *from,
                               const double step[3], double length, struct trial *to)
{
	for (int k = 0; k < 3; k++)
		to->settle[k] = from->settle[k] + length * step[k];
	evaluate(problem, to);
	return (struct reach){length, dot(to->lack, step)};
}

/* Where the slope vanishes between two lengths: regula falsi with the Illinois weight, and a
 * bisection every third time against slopes that bend too hard for it. */
static struct reach close_in(const struct problem *problem, const struct trial *from,
                             const double step[3], struct reach low, struct reach high,
                             double enough, struct trial *to)
{
	struct reach at = high;
	int side = 0;
	for (int cut = 1; cut < MOST_CUTS && fabs(at.slope) > enough; cut++) {
		double length = low.length -
		                low.slope * (high.length - low.length) / (high.slope - low.slope);
		if (cut % 3 == 0)
			length = (low.length + high.length) / 2;
		at = try_length(problem, from, step, length, to);
		if (at.slope > 0) {
			high = at;
			low.slope *= side > 0 ? 0.5 : 1;
			side = 1;
		} else {
			low = at;
			high.slope *= side < 0 ? 0.5 : 1;
			side = -1;
		}
	}
	return at;
}

/* Goes along the step to where the slope has nearly vanished or still falls at full length, as most
 * steps do; returns the length taken. */
static double search(const struct problem *problem, const struct trial *from, const double step[3],
                     struct trial *to)
{
	struct reach low = {0, dot(from->lack, step)};
	double enough = SLOPE_LEFT * -low.slope;
	struct reach at = try_length(problem, from, step, 1, to);
	if (at.slope > enough)
		at = close_in(problem, from, step, low, at, enough, to);
	return at.length;
}

void base_start(const struct base *base, double bed_ratio, const double load[3], double settle[3])
{
	struct problem problem = pose(base, bed_ratio, load);
	double whole[MOMENTS];
	whole_stiffness(&problem, whole);
	if (!solve3(whole, problem.load, settle))
		memset(settle, 0, 3 * sizeof *settle);
}

/* Iterates from *at, which is evaluated; leaves the best settlement found there, evaluated, and
 * returns its residual. */
static double iterate(const struct problem *problem, struct trial *at, int *iterations)
{
	struct trial next;
	double best[3], least = HUGE_VAL, guard = 0;
	int since_best = 0;
	memcpy(best, at->settle, sizeof best);
	for (int i = 0;; i++) {
		double now = residual(problem, at);
		since_best = now < least / 2 ? 0 : since_best + 1;
		if (now < least) {
			least = now;
			memcpy(best, at->settle, sizeof best);
		}
		/* at the floor of rounding the residual wanders: what is accepted is enough */
		bool stuck = least <= ACCEPTED && since_best > 3;
		if (now <= AIM || stuck || since_best > PATIENCE || i == MOST_ITERATIONS)
			break;
		double step[3];
		if (!find_step(problem, at, &guard, step))
			break;
		double length = search(problem, at, step, &next);
		*at = next;
		/* a step cut short met something that took hold; full steps need no guard */
		guard = length < 0.25 ? fmax(guard * 10, 1e-6) : guard > 1e-16 ? guard / 100 : 0;
		++*iterations;
	}
	/* so that forces and stiffness are always those of the settlement */
	if (memcmp(at->settle, best, sizeof best) != 0) {
		memcpy(at->settle, best, sizeof best);
		evaluate(problem, at);
	}
	return least;
}

enum status base_solve(const struct base *base, double bed_ratio, const double load[3],
                       double settle[3], int *iterations)
{
	struct problem problem = pose(base, bed_ratio, load);
	int count = 0;
	struct trial at;
	memcpy(at.settle, settle, sizeof at.settle);
	double least = 0;
	if (problem.size == 0) {
		/* no load: a base that just touches, without any force */
		memset(at.settle, 0, sizeof at.settle);
	} else {
		evaluate(&problem, &at);
		least = iterate(&problem, &at, &count);
		if (!(least <= ACCEPTED)) {
			/* a bad start; the linear solution is the safe one */
			base_start(base, bed_ratio, load, at.settle);
			evaluate(&problem, &at);
			least = iterate(&problem, &at, &count);
		}
	}
	memcpy(settle, at.settle, sizeof at.settle);
	if (iterations)
		*iterations = count;
	return least <= ACCEPTED ? DONE : NO_CONVERGENCE;
}

enum status base_solve_on(const struct base *base, double bed_ratio, const double load[3],
                          struct base_warm *warm, double settle[3])
{
	struct problem problem = pose(base, bed_ratio, load);
	struct trial at;
	int count = 0;
	if (!warm->ready || problem.size == 0) {
		warm->ready = false;
		base_start(base, bed_ratio, load, settle);
		if (problem.size == 0)
			return base_solve(base, bed_ratio, load, settle, NULL);
		memcpy(at.settle, settle, sizeof at.settle);
		evaluate(&problem, &at);
	} else {
		memcpy(at.settle, warm->settle, sizeof at.settle);
		memcpy(at.stiffness, warm->stiffness, sizeof at.stiffness);
		for (int k = 0; k < 3; k++)
			at.lack[k] = warm->force[k] - problem.load[k];
	}
	warm->ready = false;
	if (!(iterate(&problem, &at, &count) <= ACCEPTED)) {
		memcpy(settle, at.settle, sizeof at.settle);
		return base_solve(base, bed_ratio, load, settle, NULL);
	}
	memcpy(settle, at.settle, sizeof at.settle);
	memcpy(warm->settle, at.settle, sizeof at.settle);
	memcpy(warm->stiffness, at.stiffness, sizeof at.stiffness);
	for (int k = 0; k < 3; k++)
		warm->force[k] = at.lack[k] + problem.load[k];
	warm->ready = true;
	return DONE;
}
