/* Text to a number with its unit. */
#include "quantity.h"
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* longest run of digits, longest number of a fraction, largest power of ten that is looked at */
enum { MOST_DIGITS = 60, FRACTION_DIGITS = 6, MOST_POWER = 9999, FACTOR_DIGITS = 20 };

struct text { const char *at, *end; };

/* +- digits * 10^power / below, as it is written: nothing is rounded yet */
struct written {
	bool negative;
	char digits[MOST_DIGITS + FACTOR_DIGITS + 1];
	int count, power;
	uint32_t below;        /* 1 unless a fraction is written */
	bool fraction;
};

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static char lower(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* The word must be in lower case; the text may be in any. */
static bool next_is(struct text text, const char *word)
{
	for (; *word; word++, text.at++)
		if (text.at == text.end || lower(*text.at) != *word)
			return false;
	return true;
}

static bool skip(struct text *text, const char *word)
{
	if (!next_is(*text, word))
		return false;
	text->at += strlen(word);
	return true;
}

/* space, tab, no-break, narrow no-break and thin space: what a copy from a printed page holds */
static const char *const spaces[] = {" ", "\t", "\xC2\xA0", "\xE2\x80\xAF", "\xE2\x80\x89"};
enum { SPACES = sizeof spaces / sizeof spaces[0] };

static bool skip_space(struct text *text)
{
	for (size_t i = 0; i < SPACES; i++)
		if (skip(text, spaces[i]))
			return true;
	return false;
}

static void skip_spaces(struct text *text)
{
	while (skip_space(text)) { }
}

static struct text trimmed(const char *from, size_t length)
{
	struct text text = {from, from + length};
	skip_spaces(&text);
	for (size_t i = 0; i < SPACES;) {
		size_t width = strlen(spaces[i]);
		if ((size_t)(text.end - text.at) >= width &&
		    memcmp(text.end - width, spaces[i], width) == 0) {
			text.end -= width;
			i = 0;
		} else {
			i++;
		}
	}
	return text;
}

static bool digit_follows(struct text text)
{
	return text.at < text.end && is_digit(*text.at);
}

static bool digit_behind(struct text text, const char *word)
{
	return skip(&text, word) && digit_follows(text);
}

/* Adds the digits that stand here; false when there are too many. */
static bool take_digits(struct text *text, struct written *out)
{
	for (; digit_follows(*text); text->at++) {
		if (out->count == MOST_DIGITS)
			return false;
		out->digits[out->count++] = *text->at;
	}
	return true;
}

/* e-3: a power of ten, taken only if digits stand behind the e */
static void take_power(struct text *text, struct written *out)
{
	struct text look = *text;
	if (!skip(&look, "e"))
		return;
	bool negative = skip(&look, "-");
	if (!negative)
		skip(&look, "+");
	if (!digit_follows(look))
		return;
	int power = 0;
	for (; digit_follows(look); look.at++)
		if (power < MOST_POWER)
			power = power * 10 + (*look.at - '0');
	out->power += negative ? -power : power;
	*text = look;
}

/* Six digits: far more than any fraction of a ruler has, and products stay exact. */
static bool take_small(struct text *text, uint32_t *out)
{
	const char *from = text->at;
	*out = 0;
	for (; digit_follows(*text) && text->at - from < FRACTION_DIGITS; text->at++)
		*out = *out * 10 + (uint32_t)(*text->at - '0');
	return text->at > from && !digit_follows(*text);
}

/* "2 3/4" or "3/4" from its first digit on; false (and nothing taken) if none stands here. */
static bool take_fraction(struct text *text, struct written *out)
{
	struct text look = *text;
	uint32_t whole = 0, above, below;
	if (!take_small(&look, &above))
		return false;
	if (skip_space(&look)) {
		skip_spaces(&look);
		whole = above;
		if (!take_small(&look, &above))
			return false;
	}
	if (!skip(&look, "/") || !take_small(&look, &below) || next_is(look, "."))
		return false;
	uint64_t sum = (uint64_t)whole * below + above;
	out->count = snprintf(out->digits, sizeof out->digits, "%llu", (unsigned long long)sum);
	out->below = below;
	out->fraction = true;
	*text = look;
	return true;
}

/* 1,5 against 1,500 and 1,500.0: groups of three digits are thousands. `text` stands at the first
 * comma. */
static enum quantity_error comma_fault(struct text text, int digits_before)
{
	bool groups = digits_before <= 3;
	int commas = 0;
	for (; skip(&text, ","); commas++) {
		const char *from = text.at;
		while (digit_follows(text))
			text.at++;
		groups = groups && text.at - from == 3;
	}
	if (groups)
		return QUANTITY_SEPARATOR;
	return commas == 1 ? QUANTITY_DECIMAL_COMMA : QUANTITY_NOT_A_NUMBER;
}

/* What may not follow the digits of a number. */
static enum quantity_error fault_behind(struct text text, int digits_before, bool had_point)
{
	if (digit_behind(text, ","))
		return had_point ? QUANTITY_SEPARATOR : comma_fault(text, digits_before);
	if (digit_behind(text, "_") || digit_behind(text, "'") ||
	    digit_behind(text, "\xE2\x80\x99"))
		return QUANTITY_SEPARATOR;
	if (had_point && digit_behind(text, "."))
		return QUANTITY_SEPARATOR;
	if (skip_space(&text)) {
		skip_spaces(&text);
		const char *from = text.at;
		while (digit_follows(text))
			text.at++;
		if (text.at > from)
			return text.at - from == 3 ? QUANTITY_SEPARATOR : QUANTITY_NOT_A_NUMBER;
	}
	return QUANTITY_OK;
}

static enum quantity_error take_decimal(struct text *text, struct written *out)
{
	if (!take_digits(text, out))
		return QUANTITY_NOT_A_NUMBER;
	int before = out->count;
	bool point = digit_behind(*text, ".") || (before > 0 && next_is(*text, "."));
	if (point) {
		text->at++;
		if (!take_digits(text, out))
			return QUANTITY_NOT_A_NUMBER;
		out->power = before - out->count;
	}
	if (out->count == 0)
		return QUANTITY_NOT_A_NUMBER;
	enum quantity_error fault = fault_behind(*text, before, point);
	if (fault == QUANTITY_OK)
		take_power(text, out);
	return fault;
}

static bool is_letter(char c)
{
	return lower(c) >= 'a' && lower(c) <= 'z';
}

/* In all spellings of C and YAML; "infinite" or "nano" are words, not numbers. */
static bool not_finite(struct text text)
{
	skip(&text, ".");
	bool word = skip(&text, "infinity") || skip(&text, "inf") || skip(&text, "nan");
	return word && (text.at == text.end || !is_letter(*text.at));
}

/* A fraction is tried first: its first digits look like a number with a space behind it. */
static enum quantity_error take_number(struct text *text, struct written *out)
{
	*out = (struct written){.below = 1};
	out->negative = skip(text, "-") || skip(text, "\xE2\x88\x92");
	if (!out->negative)
		skip(text, "+");
	if (not_finite(*text))
		return QUANTITY_NOT_FINITE;
	if (next_is(*text, "0x"))
		return QUANTITY_HEX;
	if (!take_fraction(text, out)) {
		enum quantity_error fault = take_decimal(text, out);
		if (fault != QUANTITY_OK)
			return fault;
	}
	return out->below == 0 ? QUANTITY_NOT_FINITE : QUANTITY_OK;
}

/* digits := digits * factor, by hand as on paper, so that 6 in are exactly the double nearest to
 * 152.4 mm */
static void multiply(struct written *number, const char *factor)
{
	struct written by = {.below = 1};
	struct text text = {factor, factor + strlen(factor)};
	take_decimal(&text, &by);
	char product[sizeof number->digits + 1];
	int size = number->count + by.count;
	int carry = 0;
	for (int k = size - 1; k >= 0; k--) {
		/* place k of the product: all pairs of digits whose places add up to k - 1 */
		for (int i = 0; i < number->count; i++) {
			int j = k - 1 - i;
			if (j >= 0 && j < by.count)
				carry += (number->digits[i] - '0') * (by.digits[j] - '0');
		}
		product[k] = (char)('0' + carry % 10);
		carry /= 10;
	}
	memcpy(number->digits, product, (size_t)size);
	number->count = size;
	number->power += by.power;
}

/* The one rounding: digits and a power without a decimal sign are read alike in every locale. */
static double value_of(struct written number, const struct unit *unit)
{
	if (unit && unit->decimal)
		multiply(&number, unit->decimal);
	char text[sizeof number.digits + 16];
	snprintf(text, sizeof text, "%.*se%d", number.count, number.digits, number.power);
	double value = strtod(text, NULL);
	if (number.below > 1)
		value /= number.below;
	if (unit && !unit->decimal)
		value *= unit->factor;
	return number.negative ? -value : value;
}

/* "5-6 mm", "100 x 50 mm", "6 ft 2 in": more than one number */
static bool second_number(struct text unit)
{
	bool before = true;
	for (; unit.at < unit.end; unit.at++) {
		if (is_digit(*unit.at) && before)
			return true;
		before = *unit.at == ' ' || *unit.at == '-' || *unit.at == '+' || *unit.at == 'x' ||
		         *unit.at == '*';
	}
	return false;
}

static bool is_pure(enum dimension dimension)
{
	return dimension == DIM_FACTOR || dimension == DIM_COUNT;
}

/* A second number is told before the unit is judged, as "5-6 mm" has no unit of that name. */
static enum quantity_error take_unit(struct text text, enum dimension wanted, struct quantity *out)
{
	if (text.at == text.end)
		return is_pure(wanted) ? QUANTITY_OK : QUANTITY_NO_UNIT;
	if (second_number(text))
		return QUANTITY_NOT_A_NUMBER;
	if (is_pure(wanted))
		return QUANTITY_UNIT_NOT_WANTED;
	return quantity_find_unit(text.at, (size_t)(text.end - text.at), wanted, &out->unit,
	                          &out->close);
}

enum quantity_error quantity_parse(const char *from, size_t length, enum dimension wanted,
                                   struct quantity *out)
{
	struct text text = trimmed(from, length);
	struct written number;
	*out = (struct quantity){0};
	enum quantity_error fault = take_number(&text, &number);
	if (fault != QUANTITY_OK)
		return fault;
	skip_spaces(&text);
	fault = take_unit(text, wanted, out);
	if (fault != QUANTITY_OK)
		return fault;
	double value = value_of(number, out->unit);
	if (!isfinite(value))
		return QUANTITY_NOT_FINITE;
	if (wanted == DIM_COUNT && value != floor(value))
		return QUANTITY_NOT_WHOLE;
	out->value = value;
	return QUANTITY_OK;
}

enum quantity_error quantity_parse_bare(const char *from, size_t length, const struct unit *unit,
                                        double *out)
{
	struct text text = trimmed(from, length);
	struct written number;
	struct quantity ignored = {0};
	*out = 0;
	enum quantity_error fault = take_number(&text, &number);
	if (fault != QUANTITY_OK)
		return fault;
	skip_spaces(&text);
	fault = take_unit(text, DIM_FACTOR, &ignored);
	if (fault != QUANTITY_OK)
		return fault;
	double value = value_of(number, unit);
	if (!isfinite(value))
		return QUANTITY_NOT_FINITE;
	*out = value;
	return QUANTITY_OK;
}
