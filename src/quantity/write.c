/* Numbers back to text, the same bytes in any locale. */
#include "quantity.h"
#include <float.h>
#include <limits.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_DIGITS = 17, PLAIN_FROM = -5, PLAIN_TO = 15, NUMBER_ROOM = 48 };

/* |value| = d.ddd * 10^exponent, without trailing zeros */
struct decimal {
	char digits[MOST_DIGITS + 1];
	int count, exponent;
};

/* The C library rounds; only its digits are taken, so that its decimal sign never matters. */
static struct decimal decimal_of(double value, int digits)
{
	char text[64];
	struct decimal out = {.count = 0};
	snprintf(text, sizeof text, "%.*e", digits - 1, fabs(value));
	const char *at = text;
	for (; *at && *at != 'e'; at++)
		if (*at >= '0' && *at <= '9' && out.count < MOST_DIGITS)
			out.digits[out.count++] = *at;
	if (*at == 'e')
		out.exponent = (int)strtol(at + 1, NULL, 10);
	while (out.count > 1 && out.digits[out.count - 1] == '0')
		out.count--;
	out.digits[out.count] = 0;
	return out;
}

/* digits and an exponent, no decimal sign: read the same in every locale */
static double value_of(const struct decimal *decimal)
{
	char text[MOST_DIGITS + 16];
	snprintf(text, sizeof text, "%se%d", decimal->digits,
	         decimal->exponent - (decimal->count - 1));
	return strtod(text, NULL);
}

static size_t put(char *out, size_t at, char c, int times)
{
	while (times-- > 0)
		out[at++] = c;
	return at;
}

static size_t put_digits(char *out, size_t at, const char *digits, int count)
{
	memcpy(out + at, digits, (size_t)count);
	return at + (size_t)count;
}

/* 0.00012, 123.4, 12000 */
static size_t lay_out_plain(const struct decimal *d, char *out, size_t n)
{
	if (d->exponent < 0) {
		n = put(out, n, '0', 1);
		n = put(out, n, '.', 1);
		n = put(out, n, '0', -d->exponent - 1);
		return put_digits(out, n, d->digits, d->count);
	}
	int whole = d->exponent + 1;
	int shown = whole < d->count ? whole : d->count;
	n = put_digits(out, n, d->digits, shown);
	n = put(out, n, '0', whole - shown);
	if (d->count > shown) {
		n = put(out, n, '.', 1);
		n = put_digits(out, n, d->digits + shown, d->count - shown);
	}
	return n;
}

/* 1.2e-9 */
static size_t lay_out_power(const struct decimal *d, char *out, size_t n)
{
	n = put_digits(out, n, d->digits, 1);
	if (d->count > 1) {
		n = put(out, n, '.', 1);
		n = put_digits(out, n, d->digits + 1, d->count - 1);
	}
	return n + (size_t)snprintf(out + n, NUMBER_ROOM - n, "e%d", d->exponent);
}

/* Powers of ten are for machines: up to sixteen digits a person reads plain ones faster. */
static size_t lay_out(bool negative, const struct decimal *d, char *out)
{
	size_t n = 0;
	if (negative)
		n = put(out, n, '-', 1);
	bool plain = d->exponent >= PLAIN_FROM && d->exponent <= PLAIN_TO;
	n = plain ? lay_out_plain(d, out, n) : lay_out_power(d, out, n);
	out[n] = 0;
	return n;
}

static size_t hand_over(const char *text, size_t length, char *out, size_t room)
{
	if (room == 0)
		return 0;
	if (length >= room)
		length = room - 1;
	memcpy(out, text, length);
	out[length] = 0;
	return length;
}

size_t number_write(double value, int digits, char *out, size_t room)
{
	char text[NUMBER_ROOM];
	if (isnan(value))
		return hand_over("nan", 3, out, room);
	if (isinf(value))
		return hand_over(value < 0 ? "-inf" : "inf", value < 0 ? 4 : 3, out, room);
	digits = digits < 1 ? 1 : digits > MOST_DIGITS ? MOST_DIGITS : digits;
	struct decimal decimal = decimal_of(value, digits);
	size_t length = lay_out(value < 0, &decimal, text);
	return hand_over(text, length, out, room);
}

size_t number_write_exact(double value, char *out, size_t room)
{
	char text[NUMBER_ROOM];
	if (!isfinite(value))
		return hand_over("null", 4, out, room);
	/* every normal double survives 17 digits and many 15; a subnormal one may do with a single
	 * digit */
	int digits = fabs(value) < DBL_MIN ? 1 : DBL_DIG;
	struct decimal decimal = decimal_of(value, digits);
	while (digits < MOST_DIGITS && value_of(&decimal) != fabs(value))
		decimal = decimal_of(value, ++digits);
	size_t length = lay_out(value < 0, &decimal, text);
	return hand_over(text, length, out, room);
}

size_t quantity_write(double value, const struct unit *unit, int digits, char *out, size_t room)
{
	char text[NUMBER_ROOM + 16];
	size_t length = number_write(unit ? value / unit->factor : value, digits, text,
	                             NUMBER_ROOM);
	if (unit) {
		text[length++] = ' ';
		length += hand_over(unit->name, strlen(unit->name), text + length,
		                    sizeof text - length);
	}
	return hand_over(text, length, out, room);
}
