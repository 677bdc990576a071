/* Time of all modes of both design codes, and of the largest shear ratios over all headings. A
 * pattern of 6 anchors between 4 edges, 720 headings of 3 setups and 2 cases, tension and shear
 * given. */
#include "../../src/check_shear_bound.h"
#include "../support/code_cell.h"
#include "timing.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

enum { RUNS = 41, HEADINGS = 720, SETUPS = 3, CASES = 2, ANCHORS = 6, 
       STATES = HEADINGS * SETUPS * CASES };

static const double pi = 3.14159265358979323846;

struct loads { double tension[ANCHORS], shear[ANCHORS]; struct vec2 shear_at[ANCHORS]; };
static struct loads loads[STATES];
static struct base_case it;
static struct code_place place;

static void fill_loads(void)
{
	for (int k = 0; k < STATES; k++) {
		double size = 1 + 0.5 * (k / HEADINGS),
		       heading = 2 * pi * (k % HEADINGS) / HEADINGS;
		double c = cos(heading), s = sin(heading), twist = 0.3 * (k / HEADINGS % 2);
		for (int i = 0; i < ANCHORS; i++) {
			struct vec2 at = it.cell.anchors.at[i];
			double lift = 5e3 * size * (at.x * c + at.y * s) / 450 - 1e3;
			struct vec2 v = {500 * size * (c - twist * at.y / 450),
			                 500 * size * (s + twist * at.x / 450)};
			loads[k].tension[i] = fmax(0, lift);
			loads[k].shear_at[i] = v;
			loads[k].shear[i] = sqrt(v.x * v.x + v.y * v.y);
		}
	}
}

/* All states of one code with strengths new for each setup; the sum keeps the work alive. */
static double time_code(enum code code, double *sum)
{
	double start = now_seconds();
	for (int setup = 0; setup < SETUPS; setup++) {
		struct arena arena;
		struct code_strength strength;
		arena_open(&arena, NULL, NULL);
		if (code_strength_build(&it.cell, code, CODE_CELL_CONCRETE, &place.pattern, &arena,
		                        &strength) != DONE)
			exit(1);
		for (int k = 0; k < HEADINGS * CASES; k++) {
			struct loads *l = &loads[setup * HEADINGS * CASES + k];
			struct anchor_load load = {.count = ANCHORS, .tension = l->tension,
			                           .shear = l->shear, .shear_at = l->shear_at};
			struct code_ratios ratios;
			code_ratios(&strength, &load, &ratios);
			*sum += ratios.together.ratio;
		}
		arena_close(&arena);
	}
	return now_seconds() - start;
}

static double time_bound(enum code code, struct base *base, double *sum)
{
	struct arena arena;
	struct code_strength strength;
	struct shear_peak edge = {.known = false}, pryout = {.known = false};
	struct load_case c = {.turning_count = 1,
	                      .turning_force = {{.force = 4e3, .at_hull = true, .twist = 5e5}}};
	arena_open(&arena, NULL, NULL);
	if (code_strength_build(&it.cell, code, CODE_CELL_CONCRETE, &place.pattern, &arena,
	                        &strength) != DONE)
		exit(1);
	double start = now_seconds();
	shear_mode_bound(base, &strength, &c, false, &edge, &pryout);
	double time = now_seconds() - start;
	*sum += edge.worst.ratio + pryout.worst.ratio;
	arena_close(&arena);
	return time;
}

int main(void)
{
	static const double side[4] = {600, 700, 500, 900};
	static double times[CODES][RUNS], both[RUNS], bounds[CODES][RUNS];
	struct arena arena;
	struct base base;
	double sum = 0;
	case_clear(&it);
	case_rectangle(&it, 0, 0, 1000, 800);
	for (int i = 0; i < ANCHORS; i++)
		case_anchor(&it, 450 * (i % 3 - 1), i < 3 ? -350 : 350);
	code_cell_fill(&it, ADHESIVE);
	arena_open(&arena, NULL, NULL);
	code_place_open(&place, &it, side, 0.4, (struct vec2){2000, 3000}, &arena);
	if (base_prepare(&it.cell, &arena, &base) != DONE)
		return 1;
	fill_loads();
	for (int run = 0; run < RUNS; run++) {
		both[run] = 0;
		for (int code = 0; code < CODES; code++) {
			times[code][run] = time_code((enum code)code, &sum);
			both[run] += times[code][run];
			bounds[code][run] = time_bound((enum code)code, &base, &sum);
		}
	}
	if (!(sum > 0) || !(sum < HUGE_VAL))
		return 1;
	printf("design codes: 6 adhesive anchors, 4 edges, %d states, strengths new for each "
	       "setup; "
	       "medians of %d runs\n",
	       STATES, RUNS);
	for (int code = 0; code < CODES; code++)
		printf("  %-22s %8.3f ms   %.2f us a state; largest shear ratios of a case %.3f "
		       "ms\n",
		       code == ACI318 ? "ACI 318-19 chapter 17" : "EN 1992-4",
		       1e3 * median_of(times[code], RUNS),
		       1e6 * median_of(times[code], RUNS) / STATES,
		       1e3 * median_of(bounds[code], RUNS));
	printf("  both                   %8.3f ms   target at most 20 ms\n",
	       1e3 * median_of(both, RUNS));
	arena_close(&arena);
	return 0;
}
