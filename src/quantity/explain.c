/* What is wrong with a number and what to write instead: two half sentences an error. */
#include "quantity.h"
#include <stdio.h>
#include <string.h>

enum { SHOWN = 40, ROOM = 64 };

/* The user's words, cut where they are long, never inside a character. */
static void cut(const char *text, size_t length, char out[ROOM])
{
	bool whole = length <= SHOWN;
	size_t n = whole ? length : SHOWN;
	while (!whole && n > 0 && ((unsigned char)text[n] & 0xC0) == 0x80)
		n--;
	snprintf(out, ROOM, "%.*s%s", (int)n, text, whole ? "" : "...");
}

/* "mm, cm, m, in or ft" */
static void list_units(enum dimension dimension, char *out, size_t room)
{
	size_t count, left = 0, at = 0;
	const struct unit *units = quantity_units(&count);
	for (size_t i = 0; i < count; i++)
		left += units[i].dimension == dimension;
	size_t total = left;
	for (size_t i = 0; i < count && at < room; i++) {
		if (units[i].dimension != dimension)
			continue;
		const char *before = left == total ? "" : left == 1 ? " or " : ", ";
		at += (size_t)snprintf(out + at, room - at, "%s%s", before, units[i].name);
		left--;
	}
}

static size_t count_of(const char *text, char c)
{
	size_t n = 0;
	for (; *text; text++)
		n += *text == c;
	return n;
}

/* Whether this separator (not the decimal sign) stands at text, between two digits; its width. */
static size_t separator_at(const char *text, const char *start, char decimal)
{
	static const char *const separators[] = {
		",",           ".", "_", "'", "\xE2\x80\x99", " ", "\xC2\xA0", "\xE2\x80\xAF",
		"\xE2\x80\x89"};
	if (text == start || text[-1] < '0' || text[-1] > '9')
		return 0;
	for (size_t i = 0; i < sizeof separators / sizeof separators[0]; i++) {
		size_t width = strlen(separators[i]);
		if (strncmp(text, separators[i], width) != 0 || (width == 1 && *text == decimal))
			continue;
		if (text[width] >= '0' && text[width] <= '9')
			return width;
	}
	return 0;
}

/* Which sign is the decimal one: a single comma or point behind all other separators; 0 where there
 * is none. */
static char decimal_sign(const char *text)
{
	const char *last = NULL;
	size_t kinds = 0;
	for (const char *at = text; *at; at++) {
		if (!separator_at(at, text, 0))
			continue;
		kinds += !last || *last != *at;
		last = at;
	}
	if (!last || count_of(text, *last) != 1)
		return 0;
	return *last == '.' || (*last == ',' && kinds > 1) ? *last : 0;
}

/* The number without separators: 1,500.0 mm -> 1500.0 mm, 1.500,00 mm -> 1500.00 mm. */
static void without_separators(const char *text, char out[ROOM])
{
	char decimal = decimal_sign(text);
	size_t n = 0;
	for (const char *at = text; *at && n < ROOM - 1;) {
		size_t width = separator_at(at, text, decimal);
		at += width;
		if (width == 0) {
			out[n++] = *at == decimal && decimal ? '.' : *at;
			at++;
		}
	}
	out[n] = 0;
}

/* The user's own text with a point, ready to be copied. */
static void with_point(const char *text, char out[ROOM])
{
	snprintf(out, ROOM, "%s", text);
	char *comma = strchr(out, ',');
	if (comma)
		*comma = '.';
}

/* 1,500 may be fifteen hundred or one and a half: a single comma and nothing else */
static bool two_readings(const char *text)
{
	size_t separators = 0;
	for (const char *at = text; *at; at++)
		separators += separator_at(at, text, 0) > 0;
	return separators == 1 && count_of(text, ',') == 1;
}

static void explain_separator(const char *text, struct explanation *out)
{
	char plain[ROOM], point[ROOM];
	without_separators(text, plain);
	with_point(text, point);
	snprintf(out->wrong, sizeof out->wrong, "'%s' has a separator between its digits", text);
	if (two_readings(text))
		snprintf(out->remedy, sizeof out->remedy, "write %s or %s, whichever is meant",
		         plain, point);
	else
		snprintf(out->remedy, sizeof out->remedy, "write %s", plain);
}

static void explain_comma(const char *text, struct explanation *out)
{
	char point[ROOM];
	with_point(text, point);
	snprintf(out->wrong, sizeof out->wrong, "'%s' has a decimal comma", text);
	snprintf(out->remedy, sizeof out->remedy, "write %s", point);
}

/* Length of the number at the front, without the spaces behind it; 0: a unit alone. */
static int number_length(const char *text)
{
	const char *at = text;
	bool digit = false;
	for (; *at; at++) {
		bool power = digit && (*at == 'e' || *at == 'E') && at[1] &&
		             strchr("+-0123456789", at[1]);
		if (!power && !strchr("+-0123456789./ ", *at))
			break;
		digit = digit || (*at >= '0' && *at <= '9');
	}
	while (at > text && at[-1] == ' ')
		at--;
	return digit ? (int)(at - text) : 0;
}

/* lb for lbf gets a sentence of its own: it is the mistake that changes a result, not just a
 * spelling. */
static void explain_unknown_unit(const char *text, enum dimension wanted, const struct unit *close,
                                 struct explanation *out)
{
	snprintf(out->wrong, sizeof out->wrong, "'%s' has a unit that is not known", text);
	if (close && close->dimension == DIM_MOMENT && wanted != DIM_INERTIA &&
	    strstr(close->name, "lbf")) {
		snprintf(out->wrong, sizeof out->wrong, "'%s': lb is a mass, lbf a force", text);
		snprintf(out->remedy, sizeof out->remedy, "write %s for a moment", close->name);
	} else if (close && close->dimension == wanted) {
		int number = number_length(text);
		snprintf(out->remedy, sizeof out->remedy, "write %.*s%s%s", number, text,
		         number ? " " : "", close->name);
	} else {
		char list[ROOM];
		list_units(wanted, list, sizeof list);
		snprintf(out->remedy, sizeof out->remedy, "write %s", list);
	}
}

static const char *article(const char *word)
{
	return strchr("aeiou", word[0]) ? "an" : "a";
}

/* A mass where a force is wanted: the force that it weighs is ready to be copied. */
static bool offer_weight(const char *text, struct explanation *out)
{
	struct quantity mass;
	char weight[ROOM];
	if (quantity_parse(text, strlen(text), DIM_MASS, &mass) != QUANTITY_OK)
		return false;
	quantity_write(mass.value * STANDARD_GRAVITY,
	               quantity_display_unit(DIM_FORCE, UNITS_METRIC), 4, weight, sizeof weight);
	snprintf(out->remedy, sizeof out->remedy, "%s weighs %s: write that if it is meant", text,
	         weight);
	return true;
}

/* Mass for force is the usual one, so it is told apart. */
static void explain_dimension(const char *text, enum dimension wanted, const struct unit *close,
                              struct explanation *out)
{
	const char *is = dimension_name(close->dimension), *name = dimension_name(wanted);
	char list[ROOM];
	list_units(wanted, list, sizeof list);
	snprintf(out->wrong, sizeof out->wrong, "'%s' is %s %s, but %s %s must stand here", text,
	         article(is), is, article(name), name);
	if (wanted == DIM_FORCE && strcmp(close->name, "lb") == 0)
		snprintf(out->remedy, sizeof out->remedy, "lb is a mass: write lbf for a force");
	else if (wanted == DIM_FORCE && close->dimension == DIM_MASS && offer_weight(text, out))
		return;
	else if (wanted == DIM_MASS && strcmp(close->name, "lbf") == 0)
		snprintf(out->remedy, sizeof out->remedy, "lbf is a force: write lb for a mass");
	else if (wanted == DIM_SPEED && strcmp(close->name, "ms") == 0)
		snprintf(out->remedy, sizeof out->remedy,
		         "ms are milliseconds: write m/s for a speed");
	else if (wanted == DIM_TIME && strcmp(close->name, "m/s") == 0)
		snprintf(out->remedy, sizeof out->remedy,
		         "m/s is a speed: write ms for milliseconds, s for seconds");
	else
		snprintf(out->remedy, sizeof out->remedy, "write %s %s in %s, such as %s",
		         article(name), name, list, dimension_example(wanted));
}

static void explain_no_unit(const char *text, enum dimension wanted, struct explanation *out)
{
	char list[ROOM];
	list_units(wanted, list, sizeof list);
	snprintf(out->wrong, sizeof out->wrong, "'%s' has no unit", text);
	snprintf(out->remedy, sizeof out->remedy, "write the unit behind the number: %s", list);
}

/* M12 is a thread and C20/25 a class of concrete: both hold the number that is wanted. */
static bool explain_name(const char *text, enum dimension wanted, struct explanation *out)
{
	int digits = (int)strspn(text + (text[0] != 0), "0123456789");
	if (digits == 0 || digits > 3)
		return false;
	bool thread = wanted == DIM_LENGTH && text[0] == 'M' && strchr("xX", text[1 + digits]);
	bool class = wanted == DIM_STRESS && text[0] == 'C' && strchr("/", text[1 + digits]);
	if (thread)
		snprintf(out->remedy, sizeof out->remedy,
		         "write %.*s mm: %s is the size of a thread", digits, text + 1, text);
	else if (class)
		snprintf(out->remedy, sizeof out->remedy,
		         "write the class's cylinder strength, %.*s MPa", digits, text + 1);
	return thread || class;
}

static void explain_no_number(const char *text, enum dimension wanted, struct explanation *out)
{
	bool pure = wanted == DIM_FACTOR || wanted == DIM_COUNT;
	snprintf(out->wrong, sizeof out->wrong, "'%s' is not a number", text);
	if (explain_name(text, wanted, out))
		return;
	snprintf(out->remedy, sizeof out->remedy, "write one number%s such as %s, or unknown",
	         pure ? " without a unit" : " with its unit", dimension_example(wanted));
}

void quantity_explain(enum quantity_error error, const char *from, size_t length,
                      enum dimension wanted, const struct unit *close, struct explanation *out)
{
	static const struct { const char *wrong, *remedy;
	} plain[] = {
		[QUANTITY_NOT_FINITE] = {"is not a finite number",
	                                 "write a finite number, or unknown"},
		[QUANTITY_HEX] = {"is a hexadecimal number", "write it with decimal digits"},
		[QUANTITY_NOT_WHOLE] = {"is not a whole number", "write a whole number"},
		[QUANTITY_UNIT_NOT_WANTED] = {"has a unit where none belongs",
	                                      "write the number without a unit"},
	};
	char text[ROOM];
	cut(from, length, text);
	*out = (struct explanation){.wrong = ""};
	switch (error) {
	case QUANTITY_OK: break;
	case QUANTITY_NOT_A_NUMBER: explain_no_number(text, wanted, out); break;
	case QUANTITY_NO_UNIT: explain_no_unit(text, wanted, out); break;
	case QUANTITY_UNIT_UNKNOWN: explain_unknown_unit(text, wanted, close, out); break;
	case QUANTITY_UNIT_CASE:
		snprintf(out->wrong, sizeof out->wrong, "'%s' has its unit in the wrong case",
		         text);
		snprintf(out->remedy, sizeof out->remedy, "write %s", close->name);
		break;
	case QUANTITY_WRONG_DIMENSION: explain_dimension(text, wanted, close, out); break;
	case QUANTITY_DECIMAL_COMMA: explain_comma(text, out); break;
	case QUANTITY_SEPARATOR: explain_separator(text, out); break;
	case QUANTITY_NOT_FINITE:
	case QUANTITY_HEX:
	case QUANTITY_NOT_WHOLE:
	case QUANTITY_UNIT_NOT_WANTED:
		snprintf(out->wrong, sizeof out->wrong, "'%s' %s", text, plain[error].wrong);
		snprintf(out->remedy, sizeof out->remedy, "%s", plain[error].remedy);
		break;
	}
}

/* "an angle such as 30 deg or a length such as 150 mm" */
static void either(const enum dimension wanted[2], char *out, size_t room)
{
	const char *name[2] = {dimension_name(wanted[0]), dimension_name(wanted[1])};
	snprintf(out, room, "%s %s such as %s or %s %s such as %s", article(name[0]), name[0],
	         dimension_example(wanted[0]), article(name[1]), name[1],
	         dimension_example(wanted[1]));
}

void quantity_explain_either(enum quantity_error error, const char *from, size_t length,
                             const enum dimension wanted[2], const struct unit *close,
                             struct explanation *out)
{
	char text[ROOM], both[ROOM + ROOM];
	const char *name[2] = {dimension_name(wanted[0]), dimension_name(wanted[1])};
	cut(from, length, text);
	either(wanted, both, sizeof both);
	quantity_explain(error, from, length, wanted[0], close, out);
	bool named = close && (close->dimension == wanted[0] || close->dimension == wanted[1]);
	switch (error) {
	case QUANTITY_WRONG_DIMENSION:
		snprintf(out->wrong, sizeof out->wrong,
		         "'%s' is %s %s, but %s %s or %s %s must stand here", text,
		         article(dimension_name(close->dimension)),
		         dimension_name(close->dimension), article(name[0]), name[0],
		         article(name[1]), name[1]);
		if (strcmp(close->name, "ms") != 0 || wanted[1] != DIM_SPEED)
			snprintf(out->remedy, sizeof out->remedy, "write %s", both);
		else
			snprintf(out->remedy, sizeof out->remedy,
			         "ms are milliseconds: write %s", both);
		break;
	case QUANTITY_NO_UNIT:
	case QUANTITY_NOT_A_NUMBER:
		snprintf(out->remedy, sizeof out->remedy, "write %s, or unknown", both);
		break;
	case QUANTITY_UNIT_UNKNOWN:
		if (!named)
			snprintf(out->remedy, sizeof out->remedy, "write %s", both);
		break;
	default: break;
	}
}
