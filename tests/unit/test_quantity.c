/* Numbers with units. Conversion factors are those of NIST SP 811 (2008) B.8, its printed digits
 * from memory; the exact definitions (inch 25.4 mm, pound 0.453 592 37 kg, standard gravity 9.806
 * 65 m/s2) are international. */
#include "../../src/quantity/quantity.h"
#include "../support/random_base.h"

#include <criterion/criterion.h>
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

/* Exactly the double nearest to the decimal value: no tolerance. */
static const struct {
	const char *text;
	enum dimension dimension;
	double value;
	const char *unit;
} good[] = {
	{"150 mm", DIM_LENGTH, 150, "mm"},
	{"150mm", DIM_LENGTH, 150, "mm"},
	{"  150\tmm ", DIM_LENGTH, 150, "mm"},
	{"6 in", DIM_LENGTH, 152.4, "in"},
	{"2 3/4 in", DIM_LENGTH, 69.85, "in"},
	{"3/4in", DIM_LENGTH, 19.05, "in"},
	{"-2 3/4 in", DIM_LENGTH, -69.85, "in"},
	{"+.5 in", DIM_LENGTH, 12.7, "in"},
	{"5. ft", DIM_LENGTH, 1524, "ft"},
	{"1.5 m", DIM_LENGTH, 1500, "m"},
	{"0.3 cm", DIM_LENGTH, 3, "cm"},
	{"\xE2\x88\x92"
         "5 mm",
         DIM_LENGTH, -5, "mm"},
	{"5\xC2\xA0mm", DIM_LENGTH, 5, "mm"},
	{"1e3mm", DIM_LENGTH, 1000, "mm"},
	{"1e-400 mm", DIM_LENGTH, 0, "mm"},
	{"84.3 mm2", DIM_AREA, 84.3, "mm2"},
	{"84.3 mm\xC2\xB2", DIM_AREA, 84.3, "mm2"},
	{"84.3 mm^2", DIM_AREA, 84.3, "mm2"},
	{"1 in2", DIM_AREA, 645.16, "in2"},
	{"0.5 cm2", DIM_AREA, 50, "cm2"},
	{"1.2 kN", DIM_FORCE, 1200, "kN"},
	{"1.2e3 N", DIM_FORCE, 1200, "N"},
	{"1 lbf", DIM_FORCE, 4.4482216152605, "lbf"},
	{"10 kip", DIM_FORCE, 44482.216152605, "kip"},
	{"12 kg", DIM_MASS, 12, "kg"},
	{"265 lb", DIM_MASS, 120.20197805, "lb"},
	{"250 g", DIM_MASS, 0.25, "g"},
	{"1.2 t", DIM_MASS, 1200, "t"},
	{"54 N m", DIM_MOMENT, 54000, "N m"},
	{"54 Nm", DIM_MOMENT, 54000, "N m"},
	{"54 N\xC2\xB7m", DIM_MOMENT, 54000, "N m"},
	{"54 N\xE2\x8B\x85m", DIM_MOMENT, 54000, "N m"},
	{"54 N-m", DIM_MOMENT, 54000, "N m"},
	{"0.7 kNm", DIM_MOMENT, 700000, "kN m"},
	{"7 N mm", DIM_MOMENT, 7, "N mm"},
	{"40 ft lbf", DIM_MOMENT, 54232.717933256016, "ft lbf"},
	{"40 ft\xC2\xB7lbf", DIM_MOMENT, 54232.717933256016, "ft lbf"},
	{"40 ft-lbf", DIM_MOMENT, 54232.717933256016, "ft lbf"},
	{"1 in lbf", DIM_MOMENT, 112.9848290276167, "in lbf"},
	{"28 MPa", DIM_STRESS, 28, "MPa"},
	{"28 N/mm2", DIM_STRESS, 28, "N/mm2"},
	{"28000 kPa", DIM_STRESS, 28, "kPa"},
	{"5 Pa", DIM_STRESS, 5e-6, "Pa"},
	{"1 rad", DIM_ANGLE, 1, "rad"},
	{"57 %", DIM_SHARE, 0.57, "%"},
	{"25%", DIM_SHARE, 0.25, "%"},
	{"90 days", DIM_TIME, 7776000, "days"},
	{"1 day", DIM_TIME, 86400, "days"},
	{"2 h", DIM_TIME, 7200, "h"},
	{"3 min", DIM_TIME, 180, "min"},
	{"4 s", DIM_TIME, 4, "s"},
	{"0.35 s", DIM_TIME, 0.35, "s"},
	{"350 ms", DIM_TIME, 0.35, "ms"},
	{"350ms", DIM_TIME, 0.35, "ms"},
	{"2.6 rad/s", DIM_TURN_SPEED, 2.6, "rad/s"},
	{"7 rad/s^2", DIM_TURN_ACCELERATION, 7, "rad/s2"},
	{"7 rad/s\xC2\xB2", DIM_TURN_ACCELERATION, 7, "rad/s2"},
	{"1.5 m/s", DIM_SPEED, 1500, "m/s"},
	{"250 mm/s", DIM_SPEED, 250, "mm/s"},
	{"60 in/s", DIM_SPEED, 1524, "in/s"},
	{"5 ft/s", DIM_SPEED, 1524, "ft/s"},
	{"9.80665 m/s2", DIM_ACCELERATION, 9806.65, "m/s2"},
	{"5 m/s^2", DIM_ACCELERATION, 5000, "m/s2"},
	{"400 in/s2", DIM_ACCELERATION, 10160, "in/s2"},
	{"10 ft/s2", DIM_ACCELERATION, 3048, "ft/s2"},
	{"800 mm/s2", DIM_ACCELERATION, 800, "mm/s2"},
	{"0.12 kg m2", DIM_INERTIA, 0.12, "kg m2"},
	{"0.12 kg\xC2\xB7m\xC2\xB2", DIM_INERTIA, 0.12, "kg m2"},
	{"0.12 kgm^2", DIM_INERTIA, 0.12, "kg m2"},
	{"1200 kg cm2", DIM_INERTIA, 0.12, "kg cm2"},
	{"5e5 kg-mm2", DIM_INERTIA, 0.5, "kg mm2"},
	/* 0.453 592 37 kg x 0.0254^2 m2 and x 0.3048^2 m2, multiplied out by hand */
	{"1 lb in2", DIM_INERTIA, 0.0002926396534292, "lb in2"},
	{"1 lb-ft^2", DIM_INERTIA, 0.0421401100938048, "lb ft2"},
	{"0.6", DIM_FACTOR, 0.6, NULL},
	{"3/5", DIM_FACTOR, 0.6, NULL},
	{"3", DIM_COUNT, 3, NULL},
};

Test(quantity, reads_every_spelling_to_the_nearest_double)
{
	for (size_t i = 0; i < COUNT(good); i++) {
		struct quantity out;
		enum quantity_error error =
			quantity_parse(good[i].text, strlen(good[i].text), good[i].dimension, &out);
		cr_assert_eq(error, QUANTITY_OK, "%s: error %d", good[i].text, error);
		cr_assert_eq(out.value, good[i].value, "%s: %.17g", good[i].text, out.value);
		if (good[i].unit)
			cr_assert_str_eq(out.unit->name, good[i].unit, "%s", good[i].text);
		else
			cr_assert_null(out.unit, "%s", good[i].text);
	}
}

/* SP 811 B.8 prints seven digits; half a unit of the last one. */
static const struct {
	const char *text;
	enum dimension dimension;
	double printed, half;
} handbook[] = {
	{"1 psi", DIM_STRESS, 6.894757e-3, 0.5e-9},   {"1 ksi", DIM_STRESS, 6.894757, 0.5e-6},
	{"1 lbf", DIM_FORCE, 4.448222, 0.5e-6},       {"1 kip", DIM_FORCE, 4.448222e3, 0.5e-3},
	{"1 ft lbf", DIM_MOMENT, 1.355818e3, 0.5e-3}, {"1 in lbf", DIM_MOMENT, 1.129848e2, 0.5e-4},
	{"1 lb", DIM_MASS, 4.535924e-1, 0.5e-7},      {"1 deg", DIM_ANGLE, 1.745329e-2, 0.5e-8},
	{"4000 psi", DIM_STRESS, 27.579029, 0.5e-6},  {"1 lb in2", DIM_INERTIA, 2.926397e-4, 0.5e-10},
	{"1 lb ft2", DIM_INERTIA, 4.214011e-2, 0.5e-8}, {"1 rpm", DIM_TURN_SPEED, 1.047198e-1, 0.5e-7},
};

Test(quantity, agrees_with_the_handbook)
{
	for (size_t i = 0; i < COUNT(handbook); i++) {
		struct quantity out;
		cr_assert_eq(quantity_parse(handbook[i].text, strlen(handbook[i].text),
		                            handbook[i].dimension, &out),
		             QUANTITY_OK);
		cr_assert_float_eq(out.value, handbook[i].printed, handbook[i].half, "%s: %.17g",
		                   handbook[i].text, out.value);
	}
}

Test(quantity, table_is_whole)
{
	size_t count;
	const struct unit *units = quantity_units(&count);
	for (size_t i = 0; i < count; i++) {
		cr_assert_gt(units[i].factor, 0);
		cr_assert_not_null(strstr(units[i].source, "SP 811"), "%s", units[i].name);
		if (units[i].decimal)
			cr_assert_eq(strtod(units[i].decimal, NULL), units[i].factor, "%s",
			             units[i].name);
		for (size_t k = 0; k < i; k++)
			cr_assert_str_neq(units[i].name, units[k].name);
		/* every unit reads back under its own name, and only in its own dimension */
		for (int d = 0; d < DIMENSIONS; d++) {
			const struct unit *found = quantity_unit(
				units[i].name, strlen(units[i].name), (enum dimension)d, NULL);
			cr_assert_eq(found,
			             (enum dimension)d == units[i].dimension ? &units[i] : NULL,
			             "%s", units[i].name);
		}
	}
}

/* What a person may write by mistake: which error, and words that the advice must hold. */
static const struct {
	const char *text;
	enum dimension dimension;
	enum quantity_error error;
	const char *close, *remedy;
} bad[] = {
	{"", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "150 mm, or unknown"},
	{"abc", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "150 mm, or unknown"},
	{"~5 mm", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "one number"},
	{"5-6 mm", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "one number"},
	{"100 x 50 mm", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "one number"},
	{"6 ft 2 in", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "one number"},
	{"2.5 3/4 in", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "one number"},
	{"2 3/4.5 in", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "one number"},
	{"1,2,3 mm", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "one number"},
	{"- 5 mm", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "one number"},
	{".", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "one number"},
	{"150", DIM_LENGTH, QUANTITY_NO_UNIT, NULL, "mm, cm, m, in or ft"},
	{"0", DIM_ANGLE, QUANTITY_NO_UNIT, NULL, "deg or rad"},
	{"0.25", DIM_SHARE, QUANTITY_NO_UNIT, NULL, "%"},
	{"5 foo", DIM_LENGTH, QUANTITY_UNIT_UNKNOWN, NULL, "mm, cm, m, in or ft"},
	{"5 -mm", DIM_LENGTH, QUANTITY_UNIT_UNKNOWN, NULL, "mm, cm, m, in or ft"},
	{"5 inches", DIM_LENGTH, QUANTITY_UNIT_UNKNOWN, "in", "write 5 in"},
	{"265 lbs", DIM_MASS, QUANTITY_UNIT_UNKNOWN, "lb", "write 265 lb"},
	{"40 ft lb", DIM_MOMENT, QUANTITY_UNIT_UNKNOWN, "ft lbf", "write ft lbf"},
	{"40 ft-lb", DIM_MOMENT, QUANTITY_UNIT_UNKNOWN, "ft lbf", "write ft lbf"},
	{"40 lb-in", DIM_MOMENT, QUANTITY_UNIT_UNKNOWN, "in lbf", "write in lbf"},
	{"40 lbf ft", DIM_MOMENT, QUANTITY_UNIT_UNKNOWN, "ft lbf", "write ft lbf"},
	{"54 N.m", DIM_MOMENT, QUANTITY_UNIT_UNKNOWN, "N m", "write 54 N m"},
	{"28 mpa", DIM_STRESS, QUANTITY_UNIT_CASE, "MPa", "write MPa"},
	{"1.2 KN", DIM_FORCE, QUANTITY_UNIT_CASE, "kN", "write kN"},
	{"54 NM", DIM_MOMENT, QUANTITY_UNIT_CASE, "N m", "write N m"},
	{"12 Kg", DIM_MASS, QUANTITY_UNIT_CASE, "kg", "write kg"},
	{"28 MPa", DIM_LENGTH, QUANTITY_WRONG_DIMENSION, "MPa", "a length in mm, cm, m, in or ft"},
	{"28 mpa", DIM_LENGTH, QUANTITY_WRONG_DIMENSION, "MPa", "a length"},
	{"40 lb", DIM_FORCE, QUANTITY_WRONG_DIMENSION, "lb", "lb is a mass: write lbf"},
	{"40 lbf", DIM_MASS, QUANTITY_WRONG_DIMENSION, "lbf", "lbf is a force: write lb"},
	/* 5000 kg x 9.80665 m/s2 = 49.033 kN */
	{"5000 kg", DIM_FORCE, QUANTITY_WRONG_DIMENSION, "kg", "5000 kg weighs 49.03 kN"},
	{"40 mm", DIM_FORCE, QUANTITY_WRONG_DIMENSION, "mm", "a force in N, kN, lbf or kip"},
	{"9/16\"", DIM_LENGTH, QUANTITY_UNIT_UNKNOWN, "in", "write 9/16 in"},
	{"2 3/4 inches", DIM_LENGTH, QUANTITY_UNIT_UNKNOWN, "in", "write 2 3/4 in"},
	{"1.5e1 inch", DIM_LENGTH, QUANTITY_UNIT_UNKNOWN, "in", "write 1.5e1 in"},
	{"2 yrs", DIM_TIME, QUANTITY_UNIT_UNKNOWN, "years", "write 2 years"},
	{"3 ms", DIM_SPEED, QUANTITY_WRONG_DIMENSION, "ms", "milliseconds: write m/s"},
	{"3 m/s", DIM_TIME, QUANTITY_WRONG_DIMENSION, "m/s", "write ms for milliseconds"},
	{"3 MS", DIM_TIME, QUANTITY_UNIT_CASE, "ms", "write ms"},
	{"30 RPM", DIM_TURN_SPEED, QUANTITY_UNIT_CASE, "rpm", "write rpm"},
	{"120 deg/sec", DIM_TURN_SPEED, QUANTITY_UNIT_UNKNOWN, "deg/s", "write 120 deg/s"},
	{"120 deg", DIM_TURN_SPEED, QUANTITY_WRONG_DIMENSION, "deg", "an angular speed in deg/s, rad/s or rpm"},
	{"5 m/s/s", DIM_ACCELERATION, QUANTITY_UNIT_UNKNOWN, "m/s2", "write 5 m/s2"},
	{"5 g", DIM_ACCELERATION, QUANTITY_WRONG_DIMENSION, "g", "an acceleration in mm/s2"},
	{"0.1 kg m", DIM_INERTIA, QUANTITY_UNIT_UNKNOWN, NULL, "kg m2, kg cm2, kg mm2, lb in2 or lb ft2"},
	{"5 lb in", DIM_INERTIA, QUANTITY_UNIT_UNKNOWN, "in lbf", "lb in2 or lb ft2"},
	{"M12", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "write 12 mm"},
	{"M12x1.75", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "write 12 mm"},
	{"M12", DIM_FORCE, QUANTITY_NOT_A_NUMBER, NULL, "such as 1.2 kN"},
	{"M1200", DIM_LENGTH, QUANTITY_NOT_A_NUMBER, NULL, "such as 150 mm"},
	{"C20/25", DIM_STRESS, QUANTITY_NOT_A_NUMBER, NULL, "cylinder strength, 20 MPa"},
	{"C20", DIM_STRESS, QUANTITY_NOT_A_NUMBER, NULL, "cylinder strength, 20 MPa"},
	{"1,5 mm", DIM_LENGTH, QUANTITY_DECIMAL_COMMA, NULL, "write 1.5 mm"},
	{"1234,5 mm", DIM_LENGTH, QUANTITY_DECIMAL_COMMA, NULL, "write 1234.5 mm"},
	{"1,500 mm", DIM_LENGTH, QUANTITY_SEPARATOR, NULL, "1500 mm or 1.500 mm"},
	{"1,500.0 mm", DIM_LENGTH, QUANTITY_SEPARATOR, NULL, "write 1500.0 mm"},
	{"1.500,25 mm", DIM_LENGTH, QUANTITY_SEPARATOR, NULL, "write 1500.25 mm"},
	{"1.500.000 mm", DIM_LENGTH, QUANTITY_SEPARATOR, NULL, "write 1500000 mm"},
	{"1 500 mm", DIM_LENGTH, QUANTITY_SEPARATOR, NULL, "write 1500 mm"},
	{"12 345,67 mm", DIM_LENGTH, QUANTITY_SEPARATOR, NULL, "write 12345.67 mm"},
	{"1_500 mm", DIM_LENGTH, QUANTITY_SEPARATOR, NULL, "write 1500 mm"},
	{"1'500 mm", DIM_LENGTH, QUANTITY_SEPARATOR, NULL, "write 1500 mm"},
	{"1\xE2\x80\x99" "500 mm", DIM_LENGTH, QUANTITY_SEPARATOR, NULL, "write 1500 mm"},
	{"nan", DIM_LENGTH, QUANTITY_NOT_FINITE, NULL, "finite"},
	{"NaN mm", DIM_LENGTH, QUANTITY_NOT_FINITE, NULL, "finite"},
	{"-.inf mm", DIM_LENGTH, QUANTITY_NOT_FINITE, NULL, "finite"},
	{"infinity", DIM_FACTOR, QUANTITY_NOT_FINITE, NULL, "finite"},
	{"1e999 mm", DIM_LENGTH, QUANTITY_NOT_FINITE, NULL, "finite"},
	{"1e306 m", DIM_LENGTH, QUANTITY_NOT_FINITE, NULL, "finite"},
	{"1/0 in", DIM_LENGTH, QUANTITY_NOT_FINITE, NULL, "finite"},
	{"0x10 mm", DIM_LENGTH, QUANTITY_HEX, NULL, "decimal digits"},
	{"-0X1p3 mm", DIM_LENGTH, QUANTITY_HEX, NULL, "decimal digits"},
	{"1.5", DIM_COUNT, QUANTITY_NOT_WHOLE, NULL, "whole number"},
	{"60 %", DIM_FACTOR, QUANTITY_UNIT_NOT_WANTED, NULL, "without a unit"},
	{"3 mm", DIM_COUNT, QUANTITY_UNIT_NOT_WANTED, NULL, "without a unit"},
};

Test(quantity, refuses_each_mistake_with_its_own_advice)
{
	unsigned seen = 0;
	for (size_t i = 0; i < COUNT(bad); i++) {
		struct quantity out;
		struct explanation why;
		size_t length = strlen(bad[i].text);
		enum quantity_error error = quantity_parse(bad[i].text, length, bad[i].dimension,
		                                           &out);
		cr_assert_eq(error, bad[i].error, "'%s': error %d", bad[i].text, error);
		cr_assert_eq(out.value, 0, "no value beside an error");
		cr_assert_str_eq(out.close ? out.close->name : "", bad[i].close ? bad[i].close : "",
		                 "'%s'", bad[i].text);
		quantity_explain(error, bad[i].text, length, bad[i].dimension, out.close, &why);
		cr_assert_not_null(strstr(why.wrong, bad[i].text), "'%s': %s", bad[i].text,
		                   why.wrong);
		cr_assert_not_null(strstr(why.remedy, bad[i].remedy), "'%s': %s", bad[i].text,
		                   why.remedy);
		seen |= 1u << error;
	}
	/* every error of the list was provoked: bits 1 to the last */
	cr_assert_eq(seen, (1u << (QUANTITY_UNIT_NOT_WANTED + 1)) - 2);
}

/* SP 811 Table 6 and B.8: a turn is 360 degrees and 2 pi; a product with pi is rounded twice. */
Test(quantity, turns_are_rounded_to_the_last_digits)
{
	static const struct {
		const char *text;
		enum dimension dimension;
		double value;
	} turns[] = {{"360 deg/s", DIM_TURN_SPEED, 6.2831853071795865},
	             {"45\xC2\xB0/s", DIM_TURN_SPEED, 0.78539816339744831},
	             {"60 rpm", DIM_TURN_SPEED, 6.2831853071795865},
	             {"60 rev/min", DIM_TURN_SPEED, 6.2831853071795865},
	             {"90 deg/s\xC2\xB2", DIM_TURN_ACCELERATION, 1.5707963267948966},
	             {"90 \xC2\xB0/s^2", DIM_TURN_ACCELERATION, 1.5707963267948966}};
	for (size_t i = 0; i < COUNT(turns); i++) {
		struct quantity out;
		cr_assert_eq(quantity_parse(turns[i].text, strlen(turns[i].text),
		                            turns[i].dimension, &out),
		             QUANTITY_OK, "%s", turns[i].text);
		cr_assert_float_eq(out.value, turns[i].value, 4e-16 * turns[i].value, "%s: %.17g",
		                   turns[i].text, out.value);
	}
}

/* Where an angle or a length may stand, both are named; a near unit of either is enough. */
Test(quantity, either_of_two_dimensions_is_explained_with_both)
{
	static const enum dimension wanted[2] = {DIM_TURN_SPEED, DIM_SPEED};
	static const struct { const char *text, *wrong, *remedy; } rows[] = {
		{"12 kg", "a mass, but an angular speed or a speed must stand here", "120 deg/s or a speed such as 1.5 m/s"},
		{"12", "'12' has no unit", "120 deg/s or a speed such as 1.5 m/s, or unknown"},
		{"fast", "'fast' is not a number", "1.5 m/s, or unknown"},
		{"12 knots", "a unit that is not known", "write an angular speed such as 120 deg/s or"},
		{"12 deg/sec", "a unit that is not known", "write 12 deg/s"},
		{"3 ms", "'3 ms' is a time", "ms are milliseconds: write an angular"},
		{"1,5 m/s", "a decimal comma", "write 1.5 m/s"}};
	for (size_t i = 0; i < COUNT(rows); i++) {
		struct quantity out;
		struct explanation why;
		size_t length = strlen(rows[i].text);
		enum quantity_error error = quantity_parse(rows[i].text, length, wanted[0], &out);
		quantity_explain_either(error, rows[i].text, length, wanted, out.close, &why);
		cr_assert(strstr(why.wrong, rows[i].wrong), "%s: %s", rows[i].text, why.wrong);
		cr_assert(strstr(why.remedy, rows[i].remedy), "%s: %s", rows[i].text, why.remedy);
	}
}

Test(quantity, long_and_odd_texts_end_in_an_error)
{
	char digits[5000], letters[5000];
	struct quantity out;
	struct explanation why;
	memset(digits, '7', sizeof digits);
	memset(letters, 'x', sizeof letters);
	cr_assert_eq(quantity_parse(digits, sizeof digits, DIM_LENGTH, &out),
	             QUANTITY_NOT_A_NUMBER);
	letters[0] = '1';
	cr_assert_eq(quantity_parse(letters, sizeof letters, DIM_LENGTH, &out),
	             QUANTITY_UNIT_UNKNOWN);
	quantity_explain(QUANTITY_UNIT_UNKNOWN, letters, sizeof letters, DIM_LENGTH, NULL, &why);
	cr_assert_lt(strlen(why.wrong), 100, "the user's text is cut");
	/* cut between characters, never within one */
	quantity_explain(QUANTITY_NOT_A_NUMBER,
	                 "x\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4"
	                 "\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4"
	                 "\xC3\xA4\xC3\xA4\xC3\xA4"
	                 "\xC3\xA4\xC3\xA4",
	                 45, DIM_LENGTH, NULL, &why);
	cr_assert_not_null(strstr(why.wrong, "\xC3\xA4...'"), "%s", why.wrong);
}

Test(quantity, bare_numbers_take_the_unit_of_their_list)
{
	double value;
	const struct unit *inch = quantity_unit("in", 2, DIM_LENGTH, NULL);
	cr_assert_eq(quantity_parse_bare("6", 1, inch, &value), QUANTITY_OK);
	cr_assert_eq(value, 152.4);
	cr_assert_eq(quantity_parse_bare("2 3/4", 5, inch, &value), QUANTITY_OK);
	cr_assert_eq(value, 69.85);
	cr_assert_eq(quantity_parse_bare("1.5", 3, NULL, &value), QUANTITY_OK);
	cr_assert_eq(value, 1.5);
	cr_assert_eq(quantity_parse_bare("6 in", 4, inch, &value), QUANTITY_UNIT_NOT_WANTED);
	cr_assert_eq(quantity_parse_bare("1,5", 3, inch, &value), QUANTITY_DECIMAL_COMMA);
	cr_assert_eq(quantity_parse_bare("1e308", 5, inch, &value), QUANTITY_NOT_FINITE);
}

Test(quantity, finds_units_and_says_why_not)
{
	const struct unit *unit, *close;
	cr_assert_eq(quantity_find_unit("kN", 2, DIM_FORCE, &unit, &close), QUANTITY_OK);
	cr_assert_str_eq(unit->name, "kN");
	cr_assert_null(close);
	cr_assert_eq(quantity_find_unit("KN", 2, DIM_FORCE, &unit, &close), QUANTITY_UNIT_CASE);
	cr_assert_null(unit);
	cr_assert_str_eq(close->name, "kN");
	cr_assert_eq(quantity_find_unit("mm", 2, DIM_FORCE, &unit, &close),
	             QUANTITY_WRONG_DIMENSION);
	cr_assert_eq(quantity_find_unit("", 0, DIM_FORCE, &unit, &close), QUANTITY_UNIT_UNKNOWN);
	cr_assert_eq(quantity_find_unit("N ", 2, DIM_FORCE, &unit, &close), QUANTITY_UNIT_UNKNOWN);
}

/* n/1000 in is the whole number 254 n over 10000 mm, and that division is rounded once. */
Test(quantity, inches_are_rounded_once)
{
	struct dice dice = dice_open(20261120, 1);
	for (int i = 0; i < 20000; i++) {
		int n = dice_whole(&dice, 1, 999999999);
		char text[40];
		struct quantity out;
		snprintf(text, sizeof text, "%d.%03d in", n / 1000, n % 1000);
		cr_assert_eq(quantity_parse(text, strlen(text), DIM_LENGTH, &out), QUANTITY_OK);
		cr_assert_eq(out.value, 254.0 * n / 10000.0, "%s: %.17g", text, out.value);
	}
}

static const struct { double value; int digits; const char *text; } written[] = {
	{0, 4, "0"}, {-0.0, 4, "0"}, {1, 4, "1"}, {-1.5, 4, "-1.5"}, {1200, 2, "1200"}, {123456, 3, "123000"},
	{0.00012345, 3, "0.000123"}, {1e-5, 6, "0.00001"}, {1.25e-6, 6, "1.25e-6"}, {1e15, 3, "1000000000000000"},
	{1e16, 3, "1e16"}, {2.5e20, 3, "2.5e20"}, {0.1, 17, "0.10000000000000001"}, {99.96, 3, "100"}, {7, 0, "7"},
};

Test(quantity, writes_numbers)
{
	char text[64];
	for (size_t i = 0; i < COUNT(written); i++) {
		size_t length = number_write(written[i].value, written[i].digits, text,
		                             sizeof text);
		cr_assert_str_eq(text, written[i].text);
		cr_assert_eq(length, strlen(text));
	}
	cr_assert_eq(number_write(123.5, 6, text, 4), 3, "cut to the room");
	cr_assert_str_eq(text, "123");
	cr_assert_eq(number_write(123.5, 6, text, 0), 0);
	number_write(HUGE_VAL, 3, text, sizeof text);
	cr_assert_str_eq(text, "inf");
}

Test(quantity, writes_quantities)
{
	char text[64];
	quantity_write(152.4, quantity_unit("in", 2, DIM_LENGTH, NULL), 4, text, sizeof text);
	cr_assert_str_eq(text, "6 in");
	quantity_write(0.25, quantity_display_unit(DIM_SHARE, UNITS_METRIC), 4, text, sizeof text);
	cr_assert_str_eq(text, "25 %");
	quantity_write(1.5e6, quantity_display_unit(DIM_MOMENT, UNITS_METRIC), 4, text,
	               sizeof text);
	cr_assert_str_eq(text, "1.5 kN m");
	quantity_write(27.579029172673444, quantity_display_unit(DIM_STRESS, UNITS_US), 4, text,
	               sizeof text);
	cr_assert_str_eq(text, "4000 psi");
	quantity_write(0.6, quantity_display_unit(DIM_FACTOR, UNITS_US), 4, text, sizeof text);
	cr_assert_str_eq(text, "0.6");
	cr_assert_eq(quantity_write(152.4, quantity_unit("in", 2, DIM_LENGTH, NULL), 4, text, 4),
	             3);
	cr_assert_str_eq(text, "6 i");
}

Test(quantity, every_dimension_has_its_words)
{
	for (int d = 0; d < DIMENSIONS; d++) {
		struct quantity out;
		const char *example = dimension_example((enum dimension)d);
		bool pure = d == DIM_FACTOR || d == DIM_COUNT;
		cr_assert_eq(quantity_parse(example, strlen(example), (enum dimension)d, &out),
		             QUANTITY_OK, "%s", example);
		cr_assert_gt(strlen(dimension_name((enum dimension)d)), 3);
		for (int system = UNITS_METRIC; system <= UNITS_US; system++)
			cr_assert_eq(quantity_display_unit((enum dimension)d,
			                                   (enum unit_system)system) == NULL,
			             pure);
	}
}

static void assert_round_trip(double value)
{
	char text[64];
	number_write_exact(value, text, sizeof text);
	cr_assert_eq(strtod(text, NULL), value, "%.17g was written as %s", value, text);
}

Test(quantity, exact_numbers_come_back)
{
	const struct { double value; const char *text; } shortest[] = {
		{0.1, "0.1"}, {100, "100"}, {1.0 / 3, "0.3333333333333333"}, {5e-324, "5e-324"},
		{1.7976931348623157e308, "1.7976931348623157e308"}, {-2.5e-7, "-2.5e-7"}, {HUGE_VAL, "null"},
		{9007199254740993.0, "9007199254740992"}, {-0.0, "0"}, {2.2250738585072014e-308, "2.2250738585072014e-308"}};
	char text[64];
	for (size_t i = 0; i < COUNT(shortest); i++) {
		number_write_exact(shortest[i].value, text, sizeof text);
		cr_assert_str_eq(text, shortest[i].text);
	}
	number_write_exact(nan(""), text, sizeof text);
	cr_assert_str_eq(text, "null");
	struct dice dice = dice_open(20261120, 2);
	for (int i = 0; i < 100000; i++) {
		uint64_t bits = dice_next(&dice);
		double value;
		memcpy(&value, &bits, sizeof value);
		if (isfinite(value))
			assert_round_trip(value);
		assert_round_trip(dice_whole(&dice, -1000000, 1000000) / 1000.0);
	}
}

/* The locale is compiled into a folder of its own below build/, so that the test does not depend on
 * which ones are installed. */
Test(quantity, a_decimal_comma_locale_changes_nothing)
{
	char folder[] = "build/locale-XXXXXX", command[200], text[64];
	cr_assert_not_null(mkdtemp(folder));
	snprintf(command, sizeof command, "localedef -i de_DE -f UTF-8 %s/de_DE.UTF-8 >%s/log 2>&1",
	         folder, folder);
	cr_assert_eq(system(command), 0, "localedef needs the package locales");
	setenv("LOCPATH", folder, 1);
	cr_assert_not_null(setlocale(LC_ALL, "de_DE.UTF-8"));
	cr_assert_str_eq(localeconv()->decimal_point, ",", "the locale is a German one");
	struct quantity out;
	cr_assert_eq(quantity_parse("1.5 mm", 6, DIM_LENGTH, &out), QUANTITY_OK);
	cr_assert_eq(out.value, 1.5);
	cr_assert_eq(quantity_parse("1,5 mm", 6, DIM_LENGTH, &out), QUANTITY_DECIMAL_COMMA);
	number_write(1234.5, 6, text, sizeof text);
	cr_assert_str_eq(text, "1234.5");
	number_write_exact(0.1, text, sizeof text);
	cr_assert_str_eq(text, "0.1");
	snprintf(command, sizeof command, "rm -r %s", folder);
	cr_assert_eq(system(command), 0);
}
