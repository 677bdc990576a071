/* Decimal numbers of a table. The expected value is that of the C library's strtod in the C locale,
 * which is correctly rounded: bit for bit, no tolerance. */
#include "../../src/arm/decimal.h"

#include <criterion/criterion.h>
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool same_bits(double a, double b)
{
	return memcmp(&a, &b, sizeof a) == 0;
}

static void reads(const char *text, int shift, double expected)
{
	double value;
	const char *end = text + strlen(text), *behind = decimal_read(text, end, shift, &value);
	cr_assert(behind == end, "'%s' is read to its end", text);
	cr_assert(same_bits(value, expected), "'%s': %a, expected %a", text, value, expected);
}

/* Each way, and numbers that stand near or on the middle between two doubles (hard cases as they
 * are generally known; 2^53 + 1 and 1 + 2^-53 are exact middles by arithmetic). */
static const char *const numbers[] = {
	"0", "-0", "+0", "0.0", "0e5", "000", "1", "-1", "+1", "12.5", "-12.5", ".5", "5.", "-.5", "1e3", "1E3", "1e+3",
	"1.25e-3", "0.001", "123456.789", "1e22", "1e-22", "1e23", "1e-23", "9007199254740992e22", "9007199254740993",
	"9007199254740992.5", "9007199254740993.0000000000000000001", "1.00000000000000011102230246251565",
	"1.00000000000000011102230246251565404236316680908203125", "1.000000000000000111022302462515654042363166809082031",
	"0.30000000000000004", "3.141592653589793238462643383279", "123.45678901234567", "-3.1234567890123456e-15",
	"1.7976931348623157e308", "2.2250738585072014e-308", "2.2250738585072011e-308", "5e-324", "4.9e-324", "2e-324",
	"1e-400", "6.02214076e23", "6929495644600919.5", "3.7455744005952583e15", "9999999999999999999", "99999999999999999999",
	"18446744073709551615", "18446744073709551616", "0.000000000000000000000000000000123456789012345678",
	"00000000000000000000000000000000000000000000000000000000000000000000001.5", "8.988465674311579e307",
	"1e44", "1234567890123456789e44", "1234567890123456789e-44", "1234567890123456789e45", "1e-45", "1e00000000000003",
};

Test(decimal, nearest_double)
{
	for (size_t i = 0; i < COUNT(numbers); i++)
		reads(numbers[i], 0, strtod(numbers[i], NULL));
}

/* Rounded once together with the power of ten, not after it. */
Test(decimal, shift_is_rounded_with_the_number)
{
	reads("0.1", 3, 100);
	reads("1.1", -3, 0.0011);
	reads("0.0012345", 3, 1.2345);
	reads("123456.78901234567", -3, 123.45678901234567);
	reads("9007199254740993e3", -3, 9007199254740992);
	reads("1e-325", 3, 1e-322);
}

Test(decimal, refuses_what_is_no_plain_number)
{
	static const char *const none[] = {
		"", "-", "+", ".", "-.", "e5", "nan", "inf", "-inf", "x", " 1", "--1", "+-1", ",5", "1e999", "-1e309",
		"1234567890123456789012345678901234567890123456789012345678901",
	};
	for (size_t i = 0; i < COUNT(none); i++) {
		double value = 7;
		cr_assert_null(decimal_read(none[i], none[i] + strlen(none[i]), 0, &value), "'%s'",
		               none[i]);
		cr_assert(same_bits(value, 0), "'%s' leaves 0", none[i]);
	}
}

/* A thousand digits are looked at, whatever they are; one more is refused. */
Test(decimal, longest_run)
{
	char text[1100] = "0.";
	memset(text + 2, '0', 998);
	strcpy(text + 1000, "1");
	reads(text, 0, 0);
	strcpy(text + 1000, "1e999");
	reads(text, 0, 1);
	double value;
	strcpy(text + 1000, "01");
	cr_assert_null(decimal_read(text, text + strlen(text), 0, &value));
}

/* What follows is the caller's. */
Test(decimal, ends_behind_the_number)
{
	static const struct { const char *text; size_t length; double value; } part[] = {
		{"1,5", 1, 1}, {"1.5.2", 3, 1.5}, {"2e", 1, 2}, {"2e+", 1, 2}, {"2ex", 1, 2}, {"3 4", 1, 3}, {"0x10", 1, 0},
		{"7;8", 1, 7}, {"1_000", 1, 1}, {"4N", 1, 4},
	};
	for (size_t i = 0; i < COUNT(part); i++) {
		const char *text = part[i].text;
		double value;
		const char *behind = decimal_read(text, text + strlen(text), 0, &value);
		cr_assert_eq(behind - text, (ptrdiff_t)part[i].length, "'%s'", text);
		cr_assert(same_bits(value, part[i].value), "'%s'", text);
	}
}

/* The end may stand anywhere within the number: nothing behind it is looked at. */
Test(decimal, stops_at_the_end)
{
	static const char text[] = "-12.5e-3";
	for (size_t length = 1; length < sizeof text; length++) {
		char cut[sizeof text] = "", *exact = malloc(length);
		memcpy(cut, text, length);
		memcpy(exact, text, length);
		char *stop;
		double expected = strtod(cut, &stop), value;
		const char *behind = decimal_read(exact, exact + length, 0, &value);
		if (length == 1)
			cr_assert_null(behind);
		else
			cr_assert_eq(behind - exact, stop - cut, "'%s'", cut);
		cr_assert(same_bits(value, length == 1 ? 0 : expected), "'%s'", cut);
		free(exact);
	}
}

/* All three ways of reading, in a locale whose decimal sign is a comma. */
Test(decimal, a_decimal_comma_locale_changes_nothing)
{
	char folder[] = "build/locale-XXXXXX", command[200];
	cr_assert_not_null(mkdtemp(folder));
	snprintf(command, sizeof command, "localedef -i de_DE -f UTF-8 %s/de_DE.UTF-8 >%s/log 2>&1",
	         folder, folder);
	cr_assert_eq(system(command), 0, "localedef needs the package locales");
	setenv("LOCPATH", folder, 1);
	cr_assert_not_null(setlocale(LC_ALL, "de_DE.UTF-8"));
	cr_assert_str_eq(localeconv()->decimal_point, ",", "the locale is a German one");
	reads("1.5", 0, 0x1.8p0);
	reads("0.30000000000000004", 0, 0x1.3333333333334p-2);
	reads("2.5e-310", 3, 0x1.6789e3750f791p-1019);
	snprintf(command, sizeof command, "rm -r %s", folder);
	cr_assert_eq(system(command), 0);
}
