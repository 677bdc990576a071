/* Rows of a history parsed a second, for three ways in which programs write numbers, beside a loop
 * of the C library's strtod over the same text; and the rates of what follows the parsing. */
#include "../../src/arm/cycle_tally.h"
#include "../../src/arm/history.h"
#include "../../src/arm/history_scan.h"
#include "../support/random_base.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { ROWS = 300000, ROUNDS = 9, ROW_ROOM = 200, BATCH = 64, BINS = 64, MEMORY = 4096 };

static const double pi = 3.14159265358979323846;

static double now(void)
{
	struct timespec time;
	clock_gettime(CLOCK_MONOTONIC, &time);
	return (double)time.tv_sec + (double)time.tv_nsec * 1e-9;
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

struct table { char *text; size_t length; };

enum way { FOUR_DECIMALS, SEVEN_DIGITS, SEVENTEEN_DIGITS, WAYS };

static int write_number(char *out, enum way way, double value)
{
	switch (way) {
	case SEVEN_DIGITS: return sprintf(out, "%.6e", value);
	case SEVENTEEN_DIGITS: return sprintf(out, "%.17g", value);
	default: return sprintf(out, "%.4f", value);
	}
}

/* A smooth motion with some noise, at 1 kHz. */
static void write_table(struct table *table, enum way way)
{
	struct dice dice = dice_open(1, 1);
	char *at = table->text;
	at += sprintf(at, "t [s],Fx [N],Fy [N],Fz [N],Mx [N m],My [N m],Mz [N m]\n");
	for (int i = 0; i < ROWS; i++) {
		double t = i * 1e-3, s = sin(2 * pi * t / 3), c = cos(2 * pi * t / 2.3);
		const double part[] = {300 * s, -250 * c, 120 * s * c - 620,
		                       410 * c, -380 * s, 90 * c * c};
		at += sprintf(at, "%.3f", t);
		for (int k = 0; k < 6; k++) {
			*at++ = ',';
			at += write_number(at, way, part[k] * dice_between(&dice, 0.99, 1.01));
		}
		*at++ = '\n';
	}
	*at = 0;
	table->length = (size_t)(at - table->text);
}

/* --- what is timed: each gives the number of rows, so that nothing is left out
 * ---------------------------- */

typedef size_t task(const struct table *table);

static void require(bool good)
{
	if (good)
		return;
	fputs("bench_history: an error where none belongs\n", stderr);
	exit(1);
}

static struct history open_table(const struct table *table)
{
	static struct diagnostics faults;
	struct history history;
	require(history_open(&history, table->text, table->length, 0, &faults));
	return history;
}

static size_t parse(const struct table *table)
{
	struct history_row row[BATCH];
	struct history history = open_table(table);
	size_t rows = 0;
	for (size_t count; (count = history_read(&history, row, BATCH)) > 0;)
		rows += count;
	return rows;
}

static size_t parse_with_strtod(const struct table *table)
{
	size_t numbers = 0;
	char *at = strchr(table->text, '\n') + 1;
	volatile double kept;
	while (*at) {
		kept = strtod(at, &at);
		at++;
		numbers++;
	}
	(void)kept;
	return numbers / 7;
}

static size_t scan(const struct table *table)
{
	static struct diagnostics faults;
	struct history_summary summary;
	faults.count = 0;
	require(history_scan(table->text, table->length, 0, &faults, &summary));
	return summary.rows;
}

/* Cycles of one moment beside the parsing. */
static size_t parse_and_count_cycles(const struct table *table)
{
	static double memory[MEMORY];
	struct history_row row[BATCH];
	struct cycle_bin bin[BINS];
	struct cycle_tally tally;
	struct rainflow rainflow;
	struct history history = open_table(table);
	size_t rows = 0;
	cycle_tally_open(&tally, 100, 0.01, bin, BINS);
	rainflow_open(&rainflow, memory, MEMORY, true, cycle_tally_add, &tally);
	for (size_t count; (count = history_read(&history, row, BATCH)) > 0; rows += count)
		for (size_t i = 0; i < count; i++)
			rainflow_add(&rainflow, row[i].wrench.moment[0]);
	require(rainflow_close(&rainflow));
	return rows;
}

/* Median of the time of one run [s]; the first run warms the caches. */
static double time_task(task *run, const struct table *table)
{
	double times[ROUNDS];
	for (int i = -1; i < ROUNDS; i++) {
		double start = now();
		require(run(table) == ROWS);
		if (i >= 0)
			times[i] = now() - start;
	}
	return median(times, ROUNDS);
}

static double show(const char *name, task *run, const struct table *table)
{
	double time = time_task(run, table);
	printf("  %-44s %10.2f million rows/s, %.0f MB/s\n", name, ROWS / time / 1e6,
	       (double)table->length / time / 1e6);
	return time;
}

int main(void)
{
	static const char *const ways[WAYS] = {
		[FOUR_DECIMALS] = "four decimals",
		[SEVEN_DIGITS] = "seven digits and a power",
		[SEVENTEEN_DIGITS] = "seventeen digits",
	};
	struct table table = {malloc((size_t)ROWS * ROW_ROOM + ROW_ROOM), 0};
	require(table.text != NULL);
	puts("history: rows of seven numbers, median");
	for (int i = 0; i < WAYS; i++) {
		write_table(&table, (enum way)i);
		double own = show(ways[i], parse, &table);
		double other = time_task(parse_with_strtod, &table);
		printf("  %-44s %10.2f million rows/s, %.1f times as long\n", "  with strtod",
		       ROWS / other / 1e6, other / own);
	}
	write_table(&table, FOUR_DECIMALS);
	show("scanned: faults, sampling, envelope", scan, &table);
	show("parsed, and cycles of one moment counted", parse_and_count_cycles, &table);
	free(table.text);
	return 0;
}
