/* Decimal digits to a double. */
#include "decimal.h"
#include "../quantity/quantity.h"
#include <float.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

/* Digits that always fit 64 bits; powers of ten that are doubles; the longest run of digits that is
 * looked at (a number of more is no measured one); the largest power that is told apart from any
 * larger one. */
enum { SAFE_DIGITS = 19, EXACT_POWER = 22, LONGEST_RUN = 1000, MOST_POWER = 9999 };

static const uint64_t most_exact_whole = UINT64_C(1) << 53;

static const double tens[EXACT_POWER + 1] = {
	1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
	1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
};

/* their inverses, for what need not be exact */
static const double tenths[EXACT_POWER + 1] = {
	1e-0,  1e-1,  1e-2,  1e-3,  1e-4,  1e-5,  1e-6,  1e-7,  1e-8,  1e-9,  1e-10, 1e-11,
	1e-12, 1e-13, 1e-14, 1e-15, 1e-16, 1e-17, 1e-18, 1e-19, 1e-20, 1e-21, 1e-22,
};

/* As it is written: digits * 10^power. `whole` holds them while they are no more than
 * SAFE_DIGITS. */
struct written {
	const char *digits, *digits_end;    /* may hold one point */
	uint64_t whole;
	size_t count;                       /* digits, leading zeros included */
	int power;
	bool negative;
};

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* Adds the digits that stand here. On more than SAFE_DIGITS the sum wraps and is not used. */
static const char *take_digits(const char *at, const char *end, uint64_t *whole)
{
	uint64_t sum = *whole;
	for (; at < end && is_digit(*at); at++)
		sum = sum * 10 + (uint64_t)(*at - '0');
	*whole = sum;
	return at;
}

/* e-3, taken only if digits stand behind the e */
static const char *take_power(const char *at, const char *end, int *power)
{
	const char *look = at + 1;
	bool negative = look < end && *look == '-';
	if (negative || (look < end && *look == '+'))
		look++;
	if (look == end || !is_digit(*look))
		return at;
	int size = 0;
	for (; look < end && is_digit(*look); look++)
		if (size < MOST_POWER)
			size = size * 10 + (*look - '0');
	*power += negative ? -size : size;
	return look;
}

static const char *take_written(const char *at, const char *end, struct written *out)
{
	out->negative = at < end && *at == '-';
	if (out->negative || (at < end && *at == '+'))
		at++;
	out->digits = at;
	out->whole = 0;
	out->power = 0;
	at = take_digits(at, end, &out->whole);
	out->count = (size_t)(at - out->digits);
	if (at < end && *at == '.') {
		const char *point = at;
		at = take_digits(at + 1, end, &out->whole);
		size_t behind = (size_t)(at - point - 1);
		out->count += behind;
		out->power = behind <= LONGEST_RUN ? -(int)behind : 0;
	}
	out->digits_end = at;
	if (out->count == 0 || out->count > LONGEST_RUN)
		return NULL;
	return at < end && (*at == 'e' || *at == 'E') ? take_power(at, end, &out->power) : at;
}

/* --- the certified way
 * ------------------------------------------------------------------------- */

/* A number as the unrounded sum of two doubles, low some 2^-51 of high or less. */
struct twice { double high, low; };

/* a = upper + lower, each with half the digits, so that products of halves are exact (Veltkamp) */
static void split(double a, double *upper, double *lower)
{
	double c = 0x1.0000002p27 * a;
	*upper = c - (c - a);
	*lower = a - *upper;
}

/* a b without rounding (Dekker 1971, from memory) */
static struct twice product(double a, double b)
{
	double a1, a2, b1, b2, high = a * b;
	split(a, &a1, &a2);
	split(b, &b1, &b2);
	return (struct twice){high, ((a1 * b1 - high) + a1 * b2 + a2 * b1) + a2 * b2};
}

/* Times 10^power. */
static struct twice times(struct twice a, int power)
{
	struct twice out = product(a.high, tens[power]);
	out.low += a.low * tens[power];
	return out;
}

/* Over 10^power. The remainder of a rounded quotient is a double, so nothing is lost in it; its own
 * share of the quotient is small and may be rounded. */
static struct twice over(struct twice a, int power)
{
	double quotient = a.high / tens[power];
	struct twice back = product(quotient, tens[power]);
	double remainder = (a.high - back.high) - back.low;
	return (struct twice){quotient, (remainder + a.low) * tenths[power]};
}

/* low is at most 2^-51 of the value and errs by three roundings a step, so two steps err by less
 * than 2^-101 of the value. With eight times that to either side the rounded sum must be the same,
 * else the number stands too near the middle between two doubles. */
static bool rounds_surely(struct twice value, double *out)
{
	double margin = value.high * 0x1p-98;
	double below = value.high + (value.low - margin), above = value.high + (value.low + margin);
	*out = below;
	return below == above;
}

static bool certified(uint64_t whole, int power, double *out)
{
	/* the proof needs plain doubles: no wider registers */
	if (FLT_EVAL_METHOD != 0 || power > 2 * EXACT_POWER || power < -2 * EXACT_POWER)
		return false;
	double high = (double)whole;
	struct twice value = {high, (double)(int64_t)(whole - (uint64_t)high)};
	for (; power > 0; power -= power < EXACT_POWER ? power : EXACT_POWER)
		value = times(value, power < EXACT_POWER ? power : EXACT_POWER);
	for (; power < 0; power += -power < EXACT_POWER ? -power : EXACT_POWER)
		value = over(value, -power < EXACT_POWER ? -power : EXACT_POWER);
	return rounds_surely(value, out);
}

/* --- which way
 * --------------------------------------------------------------------------------- */

static bool fast(const struct written *number, int power, double *out)
{
	if (number->whole == 0) {
		*out = 0;
		return true;
	}
	if (FLT_EVAL_METHOD == 0 && number->whole <= most_exact_whole && power <= EXACT_POWER &&
	    power >= -EXACT_POWER) {
		double whole = (double)number->whole;
		*out = power < 0 ? whole / tens[-power] : whole * tens[power];
		return true;
	}
	return certified(number->whole, power, out);
}

/* Digits alone, without point and leading zeros; 0 where there are too many. */
static size_t bare_digits(const struct written *number, char out[MOST_DECIMAL_DIGITS])
{
	size_t n = 0;
	for (const char *at = number->digits; at < number->digits_end; at++) {
		if (*at == '.' || (n == 0 && *at == '0'))
			continue;
		if (n == MOST_DECIMAL_DIGITS)
			return 0;
		out[n++] = *at;
	}
	return n;
}

static bool slow(const struct written *number, int power, double *out)
{
	char digits[MOST_DECIMAL_DIGITS], text[MOST_DECIMAL_DIGITS + 16];
	size_t count = bare_digits(number, digits);
	if (count == 0)
		return false;
	int length = snprintf(text, sizeof text, "%.*se%d", (int)count, digits, power);
	return quantity_parse_bare(text, (size_t)length, NULL, out) == QUANTITY_OK;
}

/* Leading zeros take no room in `whole`. */
static bool is_short(const struct written *number)
{
	if (number->count <= SAFE_DIGITS)
		return true;
	size_t zeros = 0;
	for (const char *at = number->digits; at < number->digits_end; at++) {
		if (*at != '.' && *at != '0')
			break;
		zeros += *at == '0';
	}
	return number->count - zeros <= SAFE_DIGITS;
}

const char *decimal_read(const char *at, const char *end, int shift, double *out)
{
	struct written number;
	*out = 0;
	const char *behind = take_written(at, end, &number);
	if (!behind)
		return NULL;
	int power = number.power + shift;
	double value;
	if (!(is_short(&number) && fast(&number, power, &value)) && !slow(&number, power, &value))
		return NULL;
	*out = number.negative ? -value : value;
	return behind;
}
