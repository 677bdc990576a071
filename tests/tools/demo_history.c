/* Makes the demo histories: the arm of a cell file swings at full speed and brakes from a stated
 *pose. Invented data; the wrench comes from chain.h, in base-frame axes.
 *
 *	demo_history stop|round FILE POSE... SIGN...
 *
 * (a pose in deg, then a sign -1, 0, 1 of the speed, each joint.) stop: every joint brakes at its
 * stop deceleration. round: it brakes as in normal motion and goes back the same way, a working
 * round that repeats. Speeds rise from rest in normal motion's acceleration; accelerations come up
 * and go down over some milliseconds, since no drive and no brake bites at once. */
#include "../../src/arm/arm_of_cell.h"
#include "../../src/input/reader.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { STEPS_A_ROW = 10, MOST_ROWS = 10000 };
static double row_step = 0.001, onset = 0.02;
static const double tail = 0.1;

/* A joint's speed: up to full, full for a moment, down to 0; symmetric pulses of deceleration. */
struct course { double speed, up, down, start, stop; };

static double smooth(double x)       /* integral of a trapezium's edge, 0 to 1 */
{
	return x <= 0 ? 0 : x >= 1 ? 1 : x;
}

/* Share of the largest deceleration at t after the stop began, over `length` of full braking. */
static double braking(double t, double length)
{
	return smooth(t / onset) - smooth((t - length) / onset);
}

static double acceleration_at(const struct course *c, double t)
{
	if (t < c->stop) {
		double length = fabs(c->speed) / c->up;
		return (c->speed > 0 ? 1 : -1) * c->up * braking(t - c->start, length);
	}
	double length = fabs(c->speed) / c->down;
	return (c->speed > 0 ? -1 : 1) * c->down * braking(t - c->stop, length);
}

static char *read_all(const char *path, size_t *length)
{
	static char text[1 << 20];
	FILE *file = fopen(path, "rb");
	if (!file)
		return NULL;
	*length = fread(text, 1, sizeof text, file);
	fclose(file);
	return text;
}

static void print_row(size_t row, const struct base_wrench *w)
{
	printf("%.3f", (double)row * row_step);
	for (int k = 0; k < 3; k++)
		printf(",%.2f", w->force[k]);
	for (int k = 0; k < 3; k++)
		printf(",%.2f", w->moment[k]);
	printf("\n");
}

int main(int argc, char **argv)
{
	struct arena arena;
	struct diagnostics to = {0};
	const struct cell *cell = NULL;
	struct motion_limits normal, stop;
	struct prepared_chain prepared;
	struct chain chain;
	struct course course[MAX_JOINTS_OF_ARM];
	double q[MAX_JOINTS_OF_ARM], v[MAX_JOINTS_OF_ARM] = {0}, a[MAX_JOINTS_OF_ARM];
	double at_stop[MAX_JOINTS_OF_ARM], fixed = 0, longest = 0, last = 0;
	size_t length = 0;
	static struct base_wrench rows[MOST_ROWS];
	size_t count = 0;
	bool round = argc > 1 && strcmp(argv[1], "round") == 0;
	char *text = argc > 2 ? read_all(argv[2], &length) : NULL;
	if (round) {
		row_step = 0.002;
		onset = 0.05;
	}
	arena_open(&arena, NULL, NULL);
	if (!text || cell_read(&arena, text, length, 0, &to, &cell) != DONE)
		return 2;
	size_t n = cell->arm.chain.joints.count;
	if ((size_t)argc != 3 + 2 * n)
		return 2;
	arm_chain_of(cell, true, &chain);
	memset(chain.mounting, 0, sizeof chain.mounting);
	chain_prepare(&chain, &prepared);
	arm_limits_of(cell, ARM_NORMAL, &normal);
	arm_limits_of(cell, round ? ARM_NORMAL : ARM_EMERGENCY_STOP, &stop);
	arm_fixed_mass(cell, &fixed);
	for (size_t i = 0; i < n; i++) {
		at_stop[i] = atof(argv[3 + i]) * 3.14159265358979323846 / 180;
		course[i] = (struct course){atof(argv[3 + n + i]) * normal.speed[i],
		                            normal.acceleration[i], stop.acceleration[i], 0, 0};
		longest = fmax(longest, fabs(course[i].speed) / course[i].up + onset);
	}
	/* all joints reach full speed by then and brake together */
	for (size_t i = 0; i < n; i++) {
		course[i].stop = longest + 0.05;
		course[i].start = course[i].stop - 0.05 - fabs(course[i].speed) / course[i].up -
		                  onset;
		last = fmax(last, course[i].stop + fabs(course[i].speed) / course[i].down + onset);
	}
	/* two passes of the same steps: the first finds how far each joint goes before the stop */
	double step = row_step / STEPS_A_ROW, gone[MAX_JOINTS_OF_ARM] = {0};
	for (int pass = 0; pass < 2; pass++) {
		for (size_t i = 0; i < n; i++) {
			q[i] = pass ? at_stop[i] - gone[i] : 0;
			v[i] = 0;
		}
		for (long k = 0; (double)k * step <= last + tail; k++) {
			double t = (double)k * step;
			for (size_t i = 0; i < n; i++)
				a[i] = acceleration_at(&course[i], t);
			if (pass && k % STEPS_A_ROW == 0 && count < MOST_ROWS) {
				chain_wrench(&prepared, q, v, a, &rows[count], NULL);
				rows[count++].force[2] -= STANDARD_GRAVITY * fixed;
			}
			for (size_t i = 0; i < n; i++) {
				if (!pass && t < course[0].stop)
					gone[i] += v[i] * step + a[i] * step * step / 2;
				q[i] += v[i] * step + a[i] * step * step / 2;
				v[i] += a[i] * step;
			}
		}
	}
	printf("# demo: invented arm, %s, made by tests/tools/demo_history.c\n"
	       "t [s],Fx [N],Fy [N],Fz [N],Mx [N m],My [N m],Mz [N m]\n",
	       round ? "a working round" : "emergency stop");
	for (size_t k = 0; k < count; k++)
		print_row(k, &rows[k]);
	/* the same way back: positions and accelerations as they were, speeds the other way, and
	 * every speed comes in products of two */
	for (size_t k = count; round && k-- > 0;)
		print_row(2 * count - 1 - k, &rows[k]);
	arena_close(&arena);
	return 0;
}
