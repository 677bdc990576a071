/* Histories as text: what is read, how every fault is told, and what is said of the sampling.
 * The texts are invented. Values are compared bit for bit: each is the double nearest to the
 * text. */
#include "../../src/arm/history.h"
#include "../../src/arm/history_scan.h"
#include "../../src/arm/ramps.h"
#include "../../src/arm/step_sizes.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define HEADER "t [s], Fx [N], Fy [N], Fz [N], Mx [N m], My [N m], Mz [N m]\n"

enum { SOME_FILE = 7 };

static const double pi = 3.14159265358979323846;
static struct diagnostics faults;
static struct history_row row[4096];

static void start(void)
{
	faults = (struct diagnostics){.count = 0};
}

/* All rows of a text, in batches of that size; the number of rows. */
static size_t read_all(const char *text, size_t batch)
{
	struct history history;
	size_t count = 0;
	start();
	if (!history_open(&history, text, strlen(text), SOME_FILE, &faults))
		return 0;
	for (size_t n; (n = history_read(&history, row + count, batch)) > 0;)
		count += n;
	return count;
}

static void is_row(const struct history_row *got, const double value[7])
{
	const double all[7] = {got->t, got->wrench.force[0], got->wrench.force[1],
	                       got->wrench.force[2], got->wrench.moment[0],
	                       got->wrench.moment[1], got->wrench.moment[2]};
	for (int i = 0; i < 7; i++)
		cr_assert_eq(all[i], value[i], "row %u, value %d: %.17g, expected %.17g",
		             (unsigned)got->row, i, all[i], value[i]);
}

/* --- golden samples: every one of these texts says the same two rows
 * ------------------------------- */

static const double two_rows[2][7] = {
	{0, 12.5, -3, -410.25, 120, -45.5, 6.125},
	{0.004, 13, -2.75, -409.5, 121.5, -44, 6},
};

static const char *const same_rows[] = {
	HEADER "0,12.5,-3,-410.25,120,-45.5,6.125\n0.004,13,-2.75,-409.5,121.5,-44,6\n",
	/* semicolons, parentheses, no space, no line end at the end */
	"t(s);Fx(N);Fy(N);Fz(N);Mx(Nm);My(Nm);Mz(Nm)\n0;12.5;-3;-410.25;120;-45.5;6.125\n"
	"4e-3;13;-2.75;-409.5;121.5;-44;6",
	/* tabs, CR LF, blanks around numbers */
	"t [s]\tFx [N]\tFy [N]\tFz [N]\tMx [N m]\tMy [N m]\tMz [N m]\r\n"
	"0\t12.5\t -3 \t-410.25\t120\t-45.5\t6.125\r\n 0.004\t13\t-2.75\t-409.5\t121.5\t-44\t6 \r\n",
	/* another order, other units, a byte order mark */
	"\xEF\xBB\xBFMz [N mm], My [kN m], Mx [N\xC2\xB7m], Fz [kN], Fy [N], Fx [N], t [s]\n"
	"6125,-0.0455,120,-0.41025,-3,12.5,0\n6000,-0.044,121.5,-0.4095,-2.75,13,0.004\n",
	/* comments and empty lines anywhere, quotation marks, signs */
	"# a demo history\n\n  # indented\n\"t [s]\",\"Fx [N]\",\"Fy [N]\",\"Fz [N]\",\"Mx [N m]\",\"My [N m]\",\"Mz [N m]\"\n"
	"# units as above\n\n\"0\",\"+12.5\",\"-3\",\"-410.25\",\"1.2e2\",\"-45.5\",\"6.125\"\n   \n"
	"4E-3 , 13. , -2.75 , \xE2\x88\x92"
	"409.5 , 1215e-1 , -44 , +6\n#\n# end",
};

Test(history, golden_samples)
{
	for (size_t i = 0; i < COUNT(same_rows); i++)
		for (size_t batch = 1; batch < 4; batch++) {
			size_t count = read_all(same_rows[i], batch);
			cr_assert_eq(count, 2, "sample %zu: %zu rows, %s", i, count,
			             faults.list[0].message);
			cr_assert_eq(faults.count, 0);
			is_row(&row[0], two_rows[0]);
			is_row(&row[1], two_rows[1]);
			cr_assert_eq(row[0].row, 1);
			cr_assert_eq(row[1].row, 2);
		}
	/* in the last sample */
	cr_assert_eq(row[0].line, 7);
	cr_assert_eq(row[1].line, 9);
}

/* Factors of NIST SP 811 (see src/quantity). A power of ten is rounded together with the number:
 * the double nearest to 0.0041, times 1000, is not the one nearest to 4.1. */
Test(history, units)
{
	cr_assert_eq(read_all("t [min],Fx [kN],Fy [lbf],Fz [kip],Mx [ft lbf],My [N mm],Mz [kN m]\n"
	                      "0.5,0.1,1,-1,1,1.1,0.0012345\n",
	                      1),
	             1);
	is_row(&row[0], (const double[]){30, 100, 4.4482216152605, -4448.2216152605,
	                                 1.3558179483314004, 0.0011, 1.2345});
	cr_assert_eq(read_all("t [s],Fx [kN],Fy [N],Fz [kN],Mx [kN m],My [N mm],Mz [N m]\n"
	                      "0,0.0041,0.0041,-0.0082,0.0059,0.0029,0.0029\n",
	                      1),
	             1);
	is_row(&row[0], (const double[]){0, 4.1, 0.0041, -8.2, 5.9, 2.9e-6, 0.0029});
	/* the odd spellings take the same care */
	cr_assert_eq(read_all("t [s],Fx [kN],Fy [kN],Fz [N],Mx [N m],My [N mm],Mz [kN m]\n"
	                      "0,\"0.0041\",\xE2\x88\x92"
	                      "0.0082,1,1,\"0.0029\",\"0.0059\"\n",
	                      1),
	             1);
	is_row(&row[0], (const double[]){0, 4.1, -8.2, 1, 1, 2.9e-6, 5.9});
}

/* A copy goes its own way. */
Test(history, a_copy_reads_on_independently)
{
	struct history first, second;
	start();
	cr_assert(history_open(&first, same_rows[0], strlen(same_rows[0]), 0, &faults));
	second = first;
	cr_assert_eq(history_read(&first, row, COUNT(row)), 2);
	cr_assert_eq(history_read(&first, row, COUNT(row)), 0);
	cr_assert_eq(history_read(&second, row + 2, 1), 1);
	is_row(&row[2], two_rows[0]);
	cr_assert_eq(history_read(&second, row + 2, COUNT(row) - 2), 1);
	is_row(&row[2], two_rows[1]);
}

/* --- faults
 * ------------------------------------------------------------------------------------------ */

struct bad {
	const char *text;
	enum fault fault;
	unsigned line, column;
	const char *message, *hint;            /* a part of each */
};

#define ROW "0,1,2,3,4,5,6\n"
#define SEMICOLONS "t [s];Fx [N];Fy [N];Fz [N];Mx [N m];My [N m];Mz [N m]\n"

static const struct bad bad[] = {
	/* the whole */
	{"", FAULT_SHAPE, 0, 0, "empty", "header line"},
	{"# nothing but words\n\n", FAULT_SHAPE, 0, 0, "empty", "header line"},
	{HEADER, FAULT_SHAPE, 0, 0, "no rows", "one row of seven numbers"},
	{HEADER "# none\n", FAULT_SHAPE, 0, 0, "no rows", ""},
	{"\xFF\xFEt", FAULT_SHAPE, 1, 1, "UTF-16", "UTF-8"},
	{"\xFE\xFF", FAULT_SHAPE, 1, 1, "UTF-16", "UTF-8"},
	{"\xEF\xBB\xBF", FAULT_SHAPE, 0, 0, "empty", ""},
	{ROW, FAULT_SHAPE, 1, 1, "no header line", "beginning with # is a comment"},
	{"# t [s], Fx [N]\n0.001,2", FAULT_SHAPE, 2, 1, "no header line", "t [s], Fx [N]"},
	{"t [s] Fx [N] Fy [N] Fz [N] Mx [N m] My [N m] Mz [N m]\n", FAULT_SHAPE, 1, 1, "one column", "semicolons"},
	{"t [s],Fx [N]\r0,1\r", FAULT_SHAPE, 1, 1, "carriage return alone", "LF"},
	/* the header */
	{"t [s], Fx [N], Fy [N], Fz [N], Mx [N m], My [N m]\n" ROW, FAULT_MISSING_KEY, 1, 1, "lacks Mz", "seven columns"},
	{"t [s], Fz [N]\n" ROW, FAULT_MISSING_KEY, 1, 1, "lacks Fx, Fy, Mx, My, Mz", ""},
	{"Fx [N]; Fy [N]\n" ROW, FAULT_MISSING_KEY, 1, 1, "lacks t, Fz, Mx, My, Mz", ""},
	{"t [s], fx [N]\n", FAULT_UNKNOWN_KEY, 1, 8, "column 2 is named 'fx'", "write Fx"},
	{"t [s], Fx [N], speed [m]\n", FAULT_UNKNOWN_KEY, 1, 16, "'speed'", "take it out"},
	{"# \xC3\xA4\nt [s], \xC3\xA4, x\n", FAULT_UNKNOWN_KEY, 2, 8, "'\xC3\xA4'", "take it out"},
	{"t [s], Fx [N],, Fy [N]\n", FAULT_UNKNOWN_KEY, 1, 15, "column 3 has no name", ""},
	{"t [s], Fx [N], Fx [N]\n", FAULT_DUPLICATE_KEY, 1, 16, "Fx is there twice", "keep one"},
	{"t [s], Fx [N], Mx\n", FAULT_NUMBER, 1, 18, "column Mx has no unit", "Mx [N m]"},
	{"t, Fx [N]\n", FAULT_NUMBER, 1, 2, "column t has no unit", "t [s]"},
	{"t [s], Fx [n]\n", FAULT_NUMBER, 1, 12, "wrong case", "write N"},
	{"t [s], Fx [N m]\n", FAULT_NUMBER, 1, 12, "is a moment", "force"},
	{"t [us], Fx [N]\n", FAULT_NUMBER, 1, 4, "'us' has a unit that is not known", "write s"},
	{"t [s], Mx [ft lb]\n", FAULT_NUMBER, 1, 12, "lb is a mass", "ft lbf"},
	/* numbers */
	{HEADER "0,nan,2,3,4,5,6\n", FAULT_NUMBER, 2, 3, "row 1, Fx: 'nan' is not a finite number", "finite"},
	{HEADER "0,1,2,3,4,-inf,6\n", FAULT_NUMBER, 2, 11, "row 1, My: '-inf'", "finite"},
	{HEADER "0,1,2,3,4,5,1e999\n", FAULT_NUMBER, 2, 13, "row 1, Mz: '1e999' is not a finite", "finite"},
	{HEADER ROW "1,1,x,3,4,5,6\n", FAULT_NUMBER, 3, 5, "row 2, Fy: 'x' is not a number", "decimal point"},
	{HEADER "0,1,,3,4,5,6\n", FAULT_NUMBER, 2, 5, "row 1, Fy: the field is empty", "decimal point"},
	{HEADER "0,1,2 N,3,4,5,6\n", FAULT_NUMBER, 2, 5, "has a unit", "header"},
	{HEADER "0,1,0x1,3,4,5,6\n", FAULT_NUMBER, 2, 5, "hexadecimal", ""},
	{HEADER "0,1,1/2,3,4,5,6\n", FAULT_NUMBER, 2, 5, "'1/2' is not a number", ""},
	{HEADER "0,1,1.5.2,3,4,5,6\n", FAULT_NUMBER, 2, 5, "1.5.2", ""},
	{HEADER "0,1,\"2,5\",3,4,5,6\n", FAULT_NUMBER, 2, 6, "decimal comma", "write 2.5"},
	{HEADER "0,1,1234567890123456789012345678901234567890123456789012345678901,3,4,5,6\n", FAULT_NUMBER, 2, 5, "more than 60 digits", ""},
	{SEMICOLONS "0;1,25;2;3;4;5;6\n", FAULT_NUMBER, 2, 3, "decimal comma", "write 1.25"},
	{SEMICOLONS "0;1,250;2;3;4;5;6\n", FAULT_NUMBER, 2, 3, "separator", "1250 or 1.250"},
	{HEADER "0,1,2,3,4,5,6\r7\n", FAULT_NUMBER, 2, 13, "row 1, Mz", ""},
	/* columns */
	{HEADER "0,1,2,3,4,5\n", FAULT_SHAPE, 2, 1, "row 1 has 6 columns where the header has 7", "seven columns of the header"},
	{HEADER "0,0,1,2,3,4,5,6\n", FAULT_SHAPE, 2, 1, "row 1 has 8 columns", "write decimals with a point"},
	{HEADER "0,1,2,3,4,5,6,\n", FAULT_SHAPE, 2, 1, "row 1 has 8 columns", "no comma at the end"},
	{HEADER "words\n", FAULT_SHAPE, 2, 1, "row 1 has 1 column where", ""},
	{SEMICOLONS "0;1;2;3;4;5,5\n", FAULT_SHAPE, 2, 1, "row 1 has 6 columns", "seven columns of the header"},
	{SEMICOLONS "words\n", FAULT_SHAPE, 2, 1, "row 1 has 1 column ", "seven columns of the header"},
	{SEMICOLONS ROW, FAULT_SHAPE, 2, 1, "row 1 has 1 column ", "same separator"},
	/* time */
	{HEADER ROW ROW, FAULT_CONTRADICTION, 3, 1, "row 2: time stands still from 0 s to 0 s", "rise"},
	{HEADER "0.5,1,2,3,4,5,6\n\n0.25,1,2,3,4,5,6", FAULT_CONTRADICTION, 4, 1, "row 2: time goes back from 0.5 s to 0.25 s", "rise"},
};

static void is_told(const struct bad *expected)
{
	const struct diagnostic *told = &faults.list[0];
	cr_assert_gt(faults.errors, 0, "no error in: %s", expected->text);
	cr_assert_eq(told->severity, ERROR);
	cr_assert_eq(told->fault, expected->fault, "%s: %s", fault_code(told->fault),
	             told->message);
	cr_assert_eq(told->mark.file, SOME_FILE);
	cr_assert_eq(told->mark.line, expected->line, "line %u: %s", told->mark.line,
	             told->message);
	cr_assert_eq(told->mark.column, expected->column, "column %u: %s", told->mark.column,
	             told->message);
	cr_assert_not_null(strstr(told->message, expected->message), "'%s' lacks '%s'",
	                   told->message, expected->message);
	cr_assert_not_null(strstr(told->hint, expected->hint), "'%s' lacks '%s'", told->hint,
	                   expected->hint);
}

Test(history, every_fault_is_told_with_its_place)
{
	for (size_t i = 0; i < COUNT(bad); i++) {
		read_all(bad[i].text, 8);
		is_told(&bad[i]);
	}
}

/* As of a file that is UTF-16 without a mark, or no text at all. */
Test(history, nul_bytes)
{
	static const char text[] = "t\0 \0[\0s\0]\0,\0F\0x\0\n\0";
	struct history history;
	start();
	cr_assert_not(history_open(&history, text, sizeof text - 1, SOME_FILE, &faults));
	cr_assert_not_null(strstr(faults.list[0].message, "NUL byte"), "%s",
	                   faults.list[0].message);
	static const char row_text[] = HEADER "0,1,2,3,4,5,\0006\n";
	start();
	cr_assert(history_open(&history, row_text, sizeof row_text - 1, SOME_FILE, &faults));
	cr_assert_eq(history_read(&history, row, 8), 0);
	cr_assert_eq(faults.errors, 1);
}

/* What cannot be opened is not scanned either. */
Test(history, a_header_that_cannot_be_used)
{
	static const char *const text[] = {"",  "# words\n",           "\xFF\xFEt",
	                                   ROW, "t [s], Fx [N]\n" ROW, "t [s], x\n"};
	for (size_t i = 0; i < COUNT(text); i++) {
		struct history history;
		struct history_summary out;
		start();
		cr_assert_not(history_open(&history, text[i], strlen(text[i]), 0, &faults), "'%s'",
		              text[i]);
		cr_assert_not(history_scan(text[i], strlen(text[i]), 0, &faults, &out), "'%s'",
		              text[i]);
		cr_assert_eq(faults.errors, 2, "'%s': once each", text[i]);
	}
}

/* A faulty row is left out, the others are read and counted on. */
Test(history, faulty_rows_are_left_out)
{
	size_t count = read_all(HEADER ROW "1,nan,inf,3,4,5,6\n2,1,2,3,4,5,6\nx\n3,1,2,3,4,5,6\n",
	                        2);
	cr_assert_eq(count, 3);
	cr_assert_eq(row[1].row, 3);
	cr_assert_eq(row[2].row, 5);
	cr_assert_eq(faults.errors, 3);
}

/* A restart of the clock is told once, not for every row behind it. */
Test(history, a_restart_is_told_once)
{
	read_all(HEADER "5,1,2,3,4,5,6\n" ROW "1,1,2,3,4,5,6\n2,1,2,3,4,5,6\n", 8);
	cr_assert_eq(faults.errors, 1);
}

Test(history, stops_after_ten_faulty_rows)
{
	static char text[2048] = HEADER;
	for (int i = 0; i < 30; i++)
		strcat(text, "x\n");
	read_all(text, 8);
	cr_assert_eq(faults.errors, MOST_HISTORY_FAULTS);
	cr_assert_eq(faults.count, MOST_HISTORY_FAULTS + 1);
	cr_assert_eq(faults.list[MOST_HISTORY_FAULTS].severity, NOTE);
	cr_assert_eq(faults.list[MOST_HISTORY_FAULTS].mark.line, MOST_HISTORY_FAULTS + 2);
}

/* The limit itself is allowed. The count is set, as ten million rows would take a second. */
Test(history, most_rows)
{
	struct history history;
	static const char text[] = HEADER ROW "1,1,2,3,4,5,6\n2,1,2,3,4,5,6\n";
	start();
	cr_assert(history_open(&history, text, strlen(text), 0, &faults));
	history.row = MOST_HISTORY_ROWS - 2;
	cr_assert_eq(history_read(&history, row, 8), 2);
	cr_assert_eq(row[1].row, MOST_HISTORY_ROWS);
	cr_assert_eq(faults.errors, 1);
	cr_assert_eq(faults.list[0].fault, FAULT_SIZE);
	cr_assert_eq(faults.list[0].mark.line, 4);
	cr_assert_eq(history_read(&history, row, 8), 0);
	cr_assert_eq(faults.errors, 1);
}

/* --- the whole history
 * ------------------------------------------------------------------------------ */

struct pen { char *text; size_t length, room; };

static void put(struct pen *pen, const char *format, ...) __attribute__((format(printf, 2, 3)));
static void put(struct pen *pen, const char *format, ...)
{
	va_list list;
	if (pen->room - pen->length < 512)
		pen->text = realloc(pen->text, pen->room = 2 * pen->room + 1024);
	va_start(list, format);
	pen->length += (size_t)vsnprintf(pen->text + pen->length, 512, format, list);
	va_end(list);
}

typedef double curve(double t);

/* Mx and Fz follow a curve, `count` rows at `step`. */
static bool scan_curve(curve *at, double step, int count, struct history_summary *out)
{
	struct pen pen = {0};
	put(&pen, HEADER);
	for (int i = 0; i < count; i++)
		put(&pen, "%.9f,0,0,%.6f,%.6f,0,0\n", i * step, at(i * step) - 400, at(i * step));
	start();
	bool good = history_scan(pen.text, pen.length, SOME_FILE, &faults, out);
	free(pen.text);
	return good;
}

/* A linear stop from 100 to 0 between 1 s and 1.2 s; 80 % of it takes 0.16 s. */
static double stop(double t)
{
	return t < 1 ? 100 : t > 1.2 ? 0 : 100 * (1.2 - t) / 0.2;
}

static double still(double t)
{
	(void)t;
	return 12;
}

/* Motion to and fro between +-80 in a second, and at 3 s a stop from 0 to 150 and back that is
 * shorter than all before. */
static double late_stop(double t)
{
	double since = t - 3;
	double bump = since > 0 && since < 0.1 ? 150 * sin(pi * since / 0.1) : 0;
	return (t < 3 ? 80 * sin(2 * pi * t) : 0) + bump;
}

Test(history_scan, summary)
{
	struct history_summary out;
	cr_assert(scan_curve(stop, 0.001, 2001, &out));
	cr_assert_eq(faults.count, 0, "%s", faults.list[0].message);
	cr_assert_eq(out.rows, 2001);
	cr_assert_eq(out.from, 0);
	cr_assert_eq(out.to, 2);
	/* nine decimals of t: steps are right to 1e-9 and the sum over one bin to far less */
	cr_assert_float_eq(out.median_step, 0.001, 1e-9);
	cr_assert_float_eq(out.longest_step, 0.001, 1e-9);
	cr_assert_eq(out.largest_force, HISTORY_FZ);
	cr_assert_eq(out.largest_moment, HISTORY_MX);
	cr_assert_eq(out.moment_ramp, RAMP_SAMPLES);
	cr_assert_eq(out.envelope.rows, 2001);
	cr_assert_eq(out.envelope.largest[REACTION_TILTING].value, 100);
}

/* 0.16 s from 10 % to 90 %: 20 rows at 8 ms, 16 at 10 ms; rows that miss both ends
 * of the stop count the whole of it. */
Test(history_scan, ramps_of_too_few_rows)
{
	static const struct { double step; uint32_t samples; } rate[] = {
		{0.001, RAMP_SAMPLES}, {0.008, RAMP_SAMPLES}, {0.01, 16}, {0.02, 8}, {0.04, 4}, {0.16, 2}, {0.5, 1},
	};
	for (size_t i = 0; i < COUNT(rate); i++) {
		struct history_summary out;
		int count = (int)(2 / rate[i].step);
		cr_assert(scan_curve(stop, rate[i].step, count, &out));
		cr_assert_eq(out.moment_ramp, rate[i].samples, "%g s: %u rows", rate[i].step,
		             out.moment_ramp);
		cr_assert_eq(out.force_ramp, rate[i].samples);
		cr_assert_eq(faults.count, rate[i].samples < RAMP_SAMPLES ? 2 : 0);
	}
}

Test(history_scan, a_coarse_ramp_is_told_with_its_row)
{
	struct history_summary out;
	cr_assert(scan_curve(stop, 0.02, 100, &out));
	const struct diagnostic *told = &faults.list[1];
	cr_assert_eq(told->severity, WARNING);
	/* 1.2 s is row 61, on line 62 below the header */
	cr_assert_eq(told->mark.line, 62);
	cr_assert_not_null(strstr(told->message, "row 61: Mx takes 8 rows from 10 % to 90 %"), "%s",
	                   told->message);
	cr_assert_not_null(strstr(told->hint, "3 times as fast"), "%s", told->hint);
	cr_assert(scan_curve(stop, 0.04, 50, &out));
	cr_assert_not_null(strstr(told->hint, "5 times as fast"), "%s", told->hint);
	cr_assert(scan_curve(stop, 0.5, 4, &out));
	cr_assert_not_null(strstr(told->message, "Mx takes 1 row from"), "%s", told->message);
	cr_assert_not_null(strstr(told->hint, "20 times as fast"), "%s", told->hint);
}

/* The stop is judged by itself: neither the slower motion before it nor its own offset hides it. */
Test(history_scan, a_short_stop_after_slow_motion_is_found)
{
	struct history_summary out;
	cr_assert(scan_curve(late_stop, 0.005, 800, &out));
	/* sin from 10 % to 90 % of a quarter of 0.2 s takes (asin 0.9 - asin 0.1)/pi 0.1 s,
	 * 0.0325 s; the rows of 5 ms can miss the ends by one */
	cr_assert(out.moment_ramp >= 6 && out.moment_ramp <= 8, "%u rows", out.moment_ramp);
	cr_assert(scan_curve(late_stop, 0.0005, 8000, &out));
	cr_assert_eq(out.moment_ramp, RAMP_SAMPLES);
	cr_assert_eq(faults.count, 0);
}

static double last_row_jumps(double t)
{
	return t > 6.35 ? 100 : 0;
}

/* However many rows are read at a time: the last one of 65 counts. */
Test(history_scan, a_jump_in_the_last_row)
{
	struct history_summary out;
	cr_assert(scan_curve(last_row_jumps, 0.1, 65, &out));
	cr_assert_eq(out.moment_ramp, 1);
	cr_assert_eq(out.force_ramp, 1);
	cr_assert_eq(faults.list[0].mark.line, 66);
}

Test(history_scan, what_never_changes_has_no_ramps)
{
	struct history_summary out;
	cr_assert(scan_curve(still, 0.5, 5, &out));
	cr_assert_eq(out.force_ramp, RAMP_SAMPLES);
	cr_assert_eq(faults.count, 0);
	start();
	cr_assert(history_scan(HEADER ROW, strlen(HEADER ROW), SOME_FILE, &faults, &out));
	cr_assert_eq(out.rows, 1);
	cr_assert_eq(out.median_step, 0);
}

/* `gaps` steps of `long_step` among a hundred of 10 ms. */
static void scan_gaps(int gaps, double long_step, struct history_summary *out)
{
	struct pen pen = {0};
	double t = 0;
	put(&pen, HEADER);
	for (int i = 0; i < 100; i++) {
		put(&pen, "%.6f,0,0,1,0,0,0\n", t);
		t += i >= 50 && i < 50 + gaps ? long_step : 0.01;
	}
	start();
	cr_assert(history_scan(pen.text, pen.length, SOME_FILE, &faults, out));
	free(pen.text);
}

Test(history_scan, gaps)
{
	struct history_summary out;
	scan_gaps(1, 0.0499, &out);
	cr_assert_eq(faults.count, 0, "%s", faults.list[0].message);
	scan_gaps(1, 0.0501, &out);
	cr_assert_eq(faults.count, 1);
	cr_assert_eq(faults.list[0].severity, WARNING);
	cr_assert_eq(faults.list[0].mark.line, 53);
	cr_assert_str_eq(faults.list[0].message,
	                 "row 52: a gap of 0.0501 s before it, where the median step is 0.01 s");
	cr_assert_float_eq(out.longest_step, 0.0501, 1e-9);
	/* the longest five by themselves, the others as a number */
	scan_gaps(9, 1, &out);
	cr_assert_eq(faults.count, LONGEST_STEPS + 1);
	cr_assert_str_eq(faults.list[LONGEST_STEPS].message, "at least 4 further gaps");
}

/* With an error nothing is said of the sampling, as the rows left out would look like gaps. */
Test(history_scan, errors_come_alone)
{
	static const char text[] = HEADER ROW "1,0,0,0,0,0,9\n2,nan,0,0,0,0,0\n50,0,0,0,0,0,0\n";
	struct history_summary out;
	start();
	cr_assert_not(history_scan(text, strlen(text), SOME_FILE, &faults, &out));
	cr_assert_eq(faults.count, 1);
	cr_assert_eq(faults.list[0].mark.line, 4);
}
