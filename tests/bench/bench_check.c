/* Time of reading a cell file, of one full check in the process, and of the least rating: a cell of
 * three setups, six anchors, both data-sheet cases, four pairs of weight and vertical force, all
 * headings, four ratios of anchor to bed stiffness. */
#include "../../src/input/reader.h"
#include "../../src/study/require.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { RUNS = 201 };

static const char cell_text[] =
	"standfast: 1\n"
	"slab:\n"
	"  type: on_ground\n"
	"  thickness: {value: 200 mm, evidence: measured}\n"
	"  topping: none\n"
	"  concrete: {strength: {class: C30/37, evidence: delivery_note}, age: 400 days, condition: sound}\n"
	"  clear: 2 m\n"
	"cell:\n"
	"  parts: [{name: frame, mass: 180 kg, at: [0 mm, 0 mm, 120 mm]}]\n"
	"  base: [{name: plate, outline: {unit: mm, points: [[-350, -350], [350, -350], [350, 350], [-350, 350]]}}]\n"
	"  base_stiff: calculation\n"
	"  stand_off: none\n"
	"arm:\n"
	"  mount: [0 mm, 0 mm, 850 mm]\n"
	"  weight: {arm: 64 kg, payload: 12 kg, reach: {arm: 600 mm, payload: 1500 mm}}\n"
	"  reactions:\n"
	"    vertical_includes_weight: no\n"
	"    tilting_includes_weight: no\n"
	"    normal: {vertical: 0.5 kN, horizontal: 0.9 kN, tilting: 0.9 kN m, twisting: 0.5 kN m}\n"
	"    emergency_stop: {vertical: 1.2 kN, horizontal: 2.9 kN, tilting: 2.8 kN m, twisting: 1.4 kN m}\n"
	"setups:\n"
	"  - {name: low, arm.mount: [0 mm, 0 mm, 450 mm]}\n"
	"  - {name: mid, arm.mount: [0 mm, 0 mm, 850 mm]}\n"
	"  - {name: high, arm.mount: [0 mm, 0 mm, 1350 mm]}\n"
	"anchors:\n"
	"  at: {grid: {columns: 3, rows: 2, step: [280 mm, 560 mm], centre: [0 mm, 0 mm]}}\n"
	"  plate_hole: 14 mm\n"
	"  plate_thickness: 20 mm\n"
	"  product: {type: torque_controlled, shaft: 12 mm, length: 125 mm, projection: 18 mm, embedment: 70 mm,\n"
	"    hole: {diameter: 12 mm, depth: 85 mm}, least_slab: 140 mm, qualified_cracked: yes,\n"
	"    rating: {basis: ultimate, tension: 42 kN, shear: 38 kN, at_concrete: 28 MPa, at_embedment: 70 mm,\n"
	"             tested_in: cracked, evidence: data_sheet}}\n";

static double now_ms(void)
{
	struct timespec time;
	clock_gettime(CLOCK_MONOTONIC, &time);
	return (double)time.tv_sec * 1e3 + (double)time.tv_nsec / 1e6;
}

static int rising(const void *left, const void *right)
{
	double a = *(const double *)left, b = *(const double *)right;
	return (a > b) - (a < b);
}

static double median(double values[])
{
	qsort(values, RUNS, sizeof *values, rising);
	return values[RUNS / 2];
}

int main(void)
{
	static double reading[RUNS], checking[RUNS], requiring[RUNS];
	size_t states = 0;
	for (int run = 0; run < RUNS; run++) {
		struct arena arena;
		struct diagnostics faults;
		const struct cell *cell = NULL;
		struct result *result = NULL;
		struct check_options options = {0};
		memset(&faults, 0, sizeof faults);
		arena_open(&arena, NULL, NULL);
		double start = now_ms();
		enum status status = cell_read(&arena, cell_text, sizeof cell_text - 1, 1, &faults,
		                               &cell);
		reading[run] = now_ms() - start;
		start = now_ms();
		if (status == DONE)
			status = check_run(&arena, cell, &options, &result);
		checking[run] = now_ms() - start;
		start = now_ms();
		if (status == DONE)
			status = require_fill(&arena, cell, &options, result);
		requiring[run] = now_ms() - start;
		if (status != DONE) {
			fprintf(stderr, "bench_check: status %d %s\n", (int)status,
			        faults.count ? faults.list[0].message : "");
			return 1;
		}
		states = result->states;
		arena_close(&arena);
	}
	printf("cell of 3 setups, 6 anchors, %zu equilibria; medians of %d runs\n", states, RUNS);
	printf("  read the file      %8.3f ms\n", median(reading));
	double check = median(checking);
	printf("  full check         %8.3f ms   target at most 7 ms; %.2f us an equilibrium, all "
	       "in\n",
	       check, 1e3 * check / (double)states);
	printf("  least rating       %8.3f ms\n", median(requiring));
	return 0;
}
