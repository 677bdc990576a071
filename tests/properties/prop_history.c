/* Properties of histories as text: random numbers written and read back bit for bit, and random
 * damage that may give errors but nothing else. SEED and CASES may be set in the environment. */
#include "../../src/arm/decimal.h"
#include "../../src/arm/history.h"
#include "../../src/arm/history_scan.h"
#include "../support/cases.h"
#include "../support/random_base.h"

#include <criterion/criterion.h>
#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_ROWS = 40, TEXT_ROOM = 64 * 1024, PARTS = HISTORY_QUANTITIES };

/* --- one number
 * -------------------------------------------------------------------------------------- */

/* Any pattern of bits that is finite, or a value as a simulation has it. */
static double random_value(struct dice *dice)
{
	double value;
	if (dice_whole(dice, 0, 3) == 0)
		return dice_whole(dice, -2000000, 2000000) / 1000.0;
	if (dice_whole(dice, 0, 3) == 0)
		return (dice_whole(dice, 0, 1) ? 1 : -1) * dice_decades(dice, -20, 6);
	do {
		uint64_t bits = dice_next(dice);
		memcpy(&value, &bits, sizeof value);
	} while (!isfinite(value));
	return value;
}

/* As programs write numbers: shortest, many digits, too many, few; plain or with a power. */
static size_t write_value(double value, struct dice *dice, char *out, size_t room)
{
	bool plain = fabs(value) < 1e20 && fabs(value) > 1e-20;
	int digits = dice_whole(dice, 0, 25);
	if (dice_whole(dice, 0, 1))
		return number_write_exact(value, out, room);
	return (size_t)snprintf(out, room, plain && dice_whole(dice, 0, 1) ? "%.*f" : "%.*e",
	                        digits, value);
}

/* Halfway between two doubles, and one digit to either side of it. */
static void write_middle(struct dice *dice, char *out, size_t room)
{
	double value = ldexp((double)(dice_next(dice) >> 11), dice_whole(dice, -70, 70));
	long double middle = ((long double)value + nextafter(value, HUGE_VAL)) / 2;
	snprintf(out, room, "%.*Le", dice_whole(dice, 15, 30), middle);
}

/* The C library's own reading, in the C locale, is the reference. */
Test(prop_history, numbers_are_the_nearest_double)
{
	for (uint64_t n = 0, end = 100 * cases_count("nearest double", 1); n < end; n++) {
		char text[128];
		struct dice dice = dice_open(cases_seed(), n);
		if (n % 3 == 0)
			write_middle(&dice, text, sizeof text);
		else
			write_value(random_value(&dice), &dice, text, sizeof text);
		double expected = strtod(text, NULL), value;
		const char *behind = decimal_read(text, text + strlen(text), 0, &value);
		/* an overflow is refused */
		if (isinf(expected)) {
			cr_assert_null(behind);
			continue;
		}
		cr_assert(behind && *behind == 0, "case %" PRIu64 ": '%s'", n, text);
		cr_assert_eq(memcmp(&value, &expected, sizeof value), 0,
		             "case %" PRIu64 ": '%s' %a", n, text, value);
	}
}

/* --- whole histories
 * --------------------------------------------------------------------------------- */

struct made {
	char text[TEXT_ROOM];
	size_t length, rows;
	double value[MOST_ROWS][PARTS];
};

static void put(struct made *made, const char *text)
{
	size_t length = strlen(text);
	cr_assert_lt(made->length + length, (size_t)TEXT_ROOM);
	memcpy(made->text + made->length, text, length + 1);
	made->length += length;
}

static void shuffle(int order[PARTS], struct dice *dice)
{
	for (int i = 0; i < PARTS; i++)
		order[i] = i;
	for (int i = PARTS - 1; i > 0; i--) {
		int k = dice_whole(dice, 0, i), kept = order[i];
		order[i] = order[k];
		order[k] = kept;
	}
}

/* A table with columns in a random order, any separator, any line end, exact numbers. */
static void make(struct made *made, struct dice *dice)
{
	static const char *const separators[] = {",", ";", "\t", " , ", "; "};
	const char *separator = separators[dice_whole(dice, 0, 4)];
	const char *line_end = dice_whole(dice, 0, 1) ? "\n" : "\r\n";
	int order[PARTS];
	char text[64];
	shuffle(order, dice);
	made->length = 0;
	made->rows = (size_t)dice_whole(dice, 1, MOST_ROWS);
	for (int i = 0; i < PARTS; i++) {
		enum history_quantity quantity = (enum history_quantity)order[i];
		snprintf(text, sizeof text, dice_whole(dice, 0, 1) ? "%s%s [%s]" : "%s%s(%s)",
		         i ? separator : "", history_name(quantity), history_unit(quantity));
		put(made, text);
	}
	put(made, line_end);
	double t = dice_between(dice, -1, 1);
	for (size_t row = 0; row < made->rows; row++) {
		t += dice_decades(dice, -6, 0);
		if (dice_whole(dice, 0, 9) == 0)
			put(made, dice_whole(dice, 0, 1) ? "# 1,2,3\n" : line_end);
		for (int i = 0; i < PARTS; i++) {
			double value = order[i] == HISTORY_T ? t : random_value(dice);
			made->value[row][order[i]] = value;
			number_write_exact(value, text, sizeof text);
			put(made, i ? separator : "");
			put(made, text);
		}
		put(made, row + 1 < made->rows || dice_whole(dice, 0, 1) ? line_end : "");
	}
}

static void values_of(const struct history_row *row, double out[PARTS])
{
	out[HISTORY_T] = row->t;
	memcpy(out + HISTORY_FX, row->wrench.force, sizeof row->wrench.force);
	memcpy(out + HISTORY_MX, row->wrench.moment, sizeof row->wrench.moment);
}

/* A negative zero is written as 0. */
static bool same_value(double a, double b)
{
	return memcmp(&a, &b, sizeof a) == 0 || (a <= 0 && a >= 0 && b <= 0 && b >= 0);
}

Test(prop_history, written_and_read_back_bit_for_bit)
{
	static struct made made;
	static struct diagnostics faults;
	static struct history_row row[MOST_ROWS];
	for (uint64_t n = 0, end = cases_count("written and read back", 10); n < end; n++) {
		struct dice dice = dice_open(cases_seed(), n);
		struct history history;
		size_t count = 0, batch = (size_t)dice_whole(&dice, 1, MOST_ROWS);
		make(&made, &dice);
		faults.count = faults.errors = 0;
		cr_assert(history_open(&history, made.text, made.length, 0, &faults), "%s\n%s",
		          faults.list[0].message, made.text);
		for (size_t got = 1; got > 0; count += got) {
			size_t left = MOST_ROWS - count;
			got = left ? history_read(&history, row + count,
			                          batch < left ? batch : left)
			           : 0;
		}
		cr_assert_eq(count, made.rows, "case %" PRIu64 ": %s\n%s", n,
		             faults.list[0].message, made.text);
		for (size_t i = 0; i < count; i++) {
			double value[PARTS];
			values_of(&row[i], value);
			for (int k = 0; k < PARTS; k++)
				cr_assert(same_value(value[k], made.value[i][k]),
				          "case %" PRIu64 " row %zu part %d: %.17g, written %.17g", n, i + 1,
				          k, value[k], made.value[i][k]);
		}
	}
}

/* --- damage
 * ------------------------------------------------------------------------------------------ */

/* Bytes that mean something here, and any other. */
static char random_byte(struct dice *dice)
{
	static const char telling[] = ",;\t\n\r#\"[]() .-+eE0123456789nNif/\0\xC2\xB7\xE2\xEF\xFF";
	return dice_whole(dice, 0, 3) ? telling[dice_whole(dice, 0, (int)sizeof telling - 2)]
	                              : (char)dice_whole(dice, -128, 127);
}

/* Some bytes changed, put in or taken out, the end cut off. */
static void damage(struct made *made, struct dice *dice)
{
	for (int times = dice_whole(dice, 1, 12); times > 0 && made->length > 0; times--) {
		size_t at = (size_t)dice_whole(dice, 0, (int)made->length - 1);
		/* the header is short: meet it more often */
		at = dice_whole(dice, 0, 2) ? at : at % 80 % made->length;
		char *place = made->text + at;
		int kind = dice_whole(dice, 0, 3);
		if (kind == 0) {
			memmove(place, place + 1, made->length-- - at - 1);
		} else if (kind == 1 && made->length + 1 < TEXT_ROOM) {
			memmove(place + 1, place, made->length++ - at);
			*place = random_byte(dice);
		} else {
			*place = random_byte(dice);
		}
	}
	if (dice_whole(dice, 0, 4) == 0)
		made->length = (size_t)dice_whole(dice, 0, (int)made->length);
}

/* What is read is finite, its time rises, and every fault stands in the text. */
static void is_sane(const char *text, size_t length, uint64_t number)
{
	static struct diagnostics faults;
	struct history_summary summary;
	size_t lines = 1;
	for (size_t i = 0; i < length; i++)
		lines += text[i] == '\n';
	faults.count = faults.errors = faults.dropped = 0;
	bool good = history_scan(text, length, 3, &faults, &summary);
	cr_assert_eq(good, faults.errors == 0, "case %" PRIu64, number);
	for (size_t i = 0; i < faults.count; i++) {
		cr_assert_leq(faults.list[i].mark.line, lines, "case %" PRIu64, number);
		cr_assert_neq(faults.list[i].message[0], 0);
	}
	if (!good)
		return;
	cr_assert_gt(summary.rows, 0);
	cr_assert(isfinite(summary.from) && isfinite(summary.to) && summary.to >= summary.from);
	cr_assert_eq(summary.envelope.rows, summary.rows);
}

/* The text stands in memory of exactly its size, so that the sanitizers see a look behind it. */
Test(prop_history, damage_gives_errors_and_nothing_else)
{
	static struct made made;
	for (uint64_t n = 0, end = cases_count("damage", 1); n < end; n++) {
		struct dice dice = dice_open(cases_seed() + 1, n);
		make(&made, &dice);
		damage(&made, &dice);
		char *exact = malloc(made.length ? made.length : 1);
		cr_assert_not_null(exact);
		memcpy(exact, made.text, made.length);
		is_sane(exact, made.length, n);
		free(exact);
	}
}
