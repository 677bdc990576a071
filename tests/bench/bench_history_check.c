/* A history of 1e6 rows from its text to the anchors, through the public library: the file is read
 * over (faults, sampling, envelope) and every row is checked against the six anchors of a base.
 *
 * The history is invented: 500 moves of a point mass on a turning arm, each up to speed, along and
 * to a stop in 0.2 s, sampled at 1 kHz; no two moves have the same speed. */
#include "../../src/standfast.h"
#include "timing.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { ROWS = 1000000, ROW_ROOM = 96, ROWS_A_MOVE = 2000 };

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
	"  weight: {arm: 48 kg, payload: 12 kg, reach: {arm: 600 mm, payload: 1500 mm}}\n"
	"  history: [{file: stops.csv, of: emergency_stop}]\n"
	"anchors:\n"
	"  at: {grid: {columns: 3, rows: 2, step: [280 mm, 560 mm], centre: [0 mm, 0 mm]}}\n"
	"  plate_hole: 14 mm\n"
	"  plate_thickness: 20 mm\n"
	"  product: {type: torque_controlled, shaft: 12 mm, length: 125 mm, projection: 18 mm, embedment: 70 mm,\n"
	"    hole: {diameter: 12 mm, depth: 85 mm}, least_slab: 140 mm, qualified_cracked: yes,\n"
	"    rating: {basis: ultimate, tension: 42 kN, shear: 38 kN, at_concrete: 28 MPa, at_embedment: 70 mm,\n"
	"             tested_in: cracked, evidence: data_sheet}}\n";

static void require(bool good, const char *what)
{
	if (good)
		return;
	fprintf(stderr, "bench_history_check: %s\n", what);
	exit(1);
}

/* --- the history
 * ------------------------------------------------------------------------------------ */

/* Share of full speed t [s] after the start of a move: half a second up, to 1.5 s along, then
 * 0.2 s down; smooth, 3 s^2 - 2 s^3. */
static double share_of_speed(double t)
{
	double s = t < 1.5 ? t / 0.5 : (1.7 - t) / 0.2;
	s = fmin(fmax(s, 0), 1);
	return s * s * (3 - 2 * s);
}

static double full_speed(int move)
{
	double golden = 0.61803398874989485 * move;
	return (move % 2 ? -1 : 1) * (1 + 1.5 * (golden - floor(golden)));
}

/* One row: 60 kg at 0.9 m from the upright axis and 0.5 m up; centrifugal pull outward, the push
 * against the acceleration across, the weight. */
static int write_row(char *out, int row, double heading, double speed, double acceleration)
{
	const double mass = 60, radius = 0.9, height = 0.5, gravity = 9.80665;
	double c = cos(heading), s = sin(heading), out_pull = mass * radius * speed * speed;
	double across = -mass * radius * acceleration, down = -mass * gravity;
	double fx = out_pull * c - across * s, fy = out_pull * s + across * c;
	return sprintf(out, "%.3f,%.3f,%.3f,%.3f,%.4f,%.4f,%.4f\n", row * 1e-3, fx, fy, down,
	               radius * s * down - height * fy, height * fx - radius * c * down,
	               radius * across);
}

struct table { char *text; size_t length; };

static struct table write_table(void)
{
	struct table table = {malloc((size_t)ROWS * ROW_ROOM), 0};
	require(table.text != NULL, "no memory");
	char *at = table.text;
	double heading = 0, step = 1e-3;
	at += sprintf(at, "t [s],Fx [N],Fy [N],Fz [N],Mx [N m],My [N m],Mz [N m]\n");
	for (int row = 0; row < ROWS; row++) {
		double full = full_speed(row / ROWS_A_MOVE), t = row % ROWS_A_MOVE * step;
		double speed = full * share_of_speed(t);
		double ahead = full * share_of_speed(t + step / 2);
		double behind = full * share_of_speed(t - step / 2);
		at += write_row(at, row, heading, speed, (ahead - behind) / step);
		heading += ahead * step;
	}
	table.length = (size_t)(at - table.text);
	return table;
}

/* --- one run
 * ---------------------------------------------------------------------------------------- */

struct run_times { double look_over, compute, processor, tension, shear; };

static void show_faults(const struct standfast *run)
{
	struct standfast_diagnostic fault;
	for (size_t i = 0; standfast_diagnostic(run, i, &fault); i++)
		if (fault.is_error)
			fprintf(stderr, "%u:%u %s: %s\n", fault.line, fault.column, fault.path,
			        fault.message);
}

static void must(const struct standfast *run, enum standfast_status status, const char *what)
{
	if (status == STANDFAST_DONE)
		return;
	show_faults(run);
	require(false, what);
}

static struct run_times one_run(const struct table *table, standfast_pool *pool)
{
	struct run_times times = {0};
	struct standfast_anchor anchor;
	struct standfast *run = standfast_open(NULL, NULL);
	require(run != NULL, "no memory");
	must(run, standfast_read(run, cell_text, sizeof cell_text - 1, "cell.yaml", NULL),
	     "the cell file is not read");
	require(standfast_file_count(run) == 1, "one history is named");
	standfast_pieces(run, pool, NULL);
	double start = now_seconds(), processor = processor_seconds();
	must(run, standfast_give_file(run, 0, table->text, table->length, NULL),
	     "the history has faults");
	times.look_over = now_seconds() - start;
	start = now_seconds();
	must(run, standfast_compute(run, 0, NULL), "nothing was computed");
	times.compute = now_seconds() - start;
	times.processor = processor_seconds() - processor;
	for (size_t i = 0; standfast_anchor(run, i, &anchor); i++) {
		require(anchor.computed, "an anchor was not computed");
		times.tension = fmax(times.tension, anchor.tension);
		times.shear = fmax(times.shear, anchor.shear);
	}
	standfast_close(run);
	return times;
}

static void show(const char *name, const struct run_times *times)
{
	double all = times->look_over + times->compute;
	printf("  %-12s read over %5.2f s, checked %5.2f s, together %5.2f s: %.2f million rows/s, "
	       "%.2f s of processors\n",
	       name, times->look_over, times->compute, all, ROWS / all / 1e6, times->processor);
}

int main(void)
{
	struct table table = write_table();
	printf("history of %d rows (%.0f MB) on six anchors; target: 1e6 rows in at most 3 s\n",
	       ROWS, (double)table.length / 1e6);
	struct run_times one = one_run(&table, NULL);
	show("one thread", &one);
	struct run_times two = one_run(&table, pool_run);
	show("two threads", &two);
	require(memcmp(&one.tension, &two.tension, 2 * sizeof one.tension) == 0,
	        "threads change the result");
	printf("  largest tension %.0f N, largest shear %.0f N\n", one.tension, one.shear);
	free(table.text);
	return 0;
}
