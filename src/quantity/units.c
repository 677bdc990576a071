/* The units that a cell file may use, and how their names may be spelt.
 *
 * Source of the factors: NIST Special Publication 811 (2008), Appendix B.8 (alphabetical list) and
 * B.9 (by kind of quantity); SI prefixes from Table 5, units accepted for use with the SI from
 * Table 6. */
#include "quantity.h"
#include <string.h>

#define EXACT(name, dimension, factor, source) {name, dimension, factor, #factor, source}
#define ENDLESS(name, dimension, factor, source) {name, dimension, factor, NULL, source}

#define SI "SI unit and prefix, SP 811 Table 5, exact"
#define TABLE_6 "SP 811 Table 6, exact"
#define BOLD "SP 811 B.8, exact"
#define FROM_POUND "SP 811 B.8, exact by lb 0.453 592 37 kg and in 0.0254 m"
#define FROM_GRAVITY "SP 811 B.8, exact by lb 0.453 592 37 kg and standard gravity 9.806 65 m/s2"

static const struct unit units[] = {
	EXACT("%", DIM_SHARE, 0.01, "SP 811 7.10.2, exact"),
	EXACT("mm", DIM_LENGTH, 1, SI),
	EXACT("cm", DIM_LENGTH, 10, SI),
	EXACT("m", DIM_LENGTH, 1000, SI),
	EXACT("in", DIM_LENGTH, 25.4, BOLD),
	EXACT("ft", DIM_LENGTH, 304.8, BOLD),
	EXACT("mm2", DIM_AREA, 1, SI),
	EXACT("cm2", DIM_AREA, 100, SI),
	EXACT("in2", DIM_AREA, 645.16, BOLD),
	EXACT("N", DIM_FORCE, 1, SI),
	EXACT("kN", DIM_FORCE, 1000, SI),
	EXACT("lbf", DIM_FORCE, 4.4482216152605, FROM_GRAVITY),
	EXACT("kip", DIM_FORCE, 4448.2216152605, FROM_GRAVITY),
	EXACT("g", DIM_MASS, 0.001, SI),
	EXACT("kg", DIM_MASS, 1, SI),
	EXACT("t", DIM_MASS, 1000, TABLE_6),
	EXACT("lb", DIM_MASS, 0.45359237, BOLD),
	EXACT("N mm", DIM_MOMENT, 1, SI),
	EXACT("N m", DIM_MOMENT, 1000, SI),
	EXACT("kN m", DIM_MOMENT, 1000000, SI),
	EXACT("in lbf", DIM_MOMENT, 112.9848290276167, FROM_GRAVITY),
	EXACT("ft lbf", DIM_MOMENT, 1355.8179483314004, FROM_GRAVITY),
	EXACT("Pa", DIM_STRESS, 0.000001, SI),
	EXACT("kPa", DIM_STRESS, 0.001, SI),
	EXACT("MPa", DIM_STRESS, 1, SI),
	EXACT("N/mm2", DIM_STRESS, 1, SI),
	/* lbf over in2: 4.4482216152605 / 645.16, both exact, the quotient has no end */
	ENDLESS("psi", DIM_STRESS, 0.0068947572931683613, FROM_GRAVITY),
	ENDLESS("ksi", DIM_STRESS, 6.8947572931683613, FROM_GRAVITY),
	ENDLESS("deg", DIM_ANGLE, 0.017453292519943295769, "SP 811 Table 6: pi/180, exact"),
	EXACT("rad", DIM_ANGLE, 1, SI),
	EXACT("s", DIM_TIME, 1, SI),
	EXACT("ms", DIM_TIME, 0.001, SI),
	EXACT("min", DIM_TIME, 60, TABLE_6),
	EXACT("h", DIM_TIME, 3600, TABLE_6),
	EXACT("days", DIM_TIME, 86400, TABLE_6),
	EXACT("weeks", DIM_TIME, 604800, "seven days of SP 811 Table 6, exact"),
	EXACT("years", DIM_TIME, 31536000, "SP 811 B.8, year of 365 days, exact"),
	ENDLESS("deg/s", DIM_TURN_SPEED, 0.017453292519943295769, "SP 811 Table 6: pi/180, exact"),
	EXACT("rad/s", DIM_TURN_SPEED, 1, SI),
	ENDLESS("rpm", DIM_TURN_SPEED, 0.10471975511965977462, "SP 811 B.8: 2 pi/60, exact"),
	ENDLESS("deg/s2", DIM_TURN_ACCELERATION, 0.017453292519943295769, "SP 811 Table 6: pi/180, exact"),
	EXACT("rad/s2", DIM_TURN_ACCELERATION, 1, SI),
	EXACT("mm/s", DIM_SPEED, 1, SI),
	EXACT("m/s", DIM_SPEED, 1000, SI),
	EXACT("in/s", DIM_SPEED, 25.4, BOLD),
	EXACT("ft/s", DIM_SPEED, 304.8, BOLD),
	EXACT("mm/s2", DIM_ACCELERATION, 1, SI),
	EXACT("m/s2", DIM_ACCELERATION, 1000, SI),
	EXACT("in/s2", DIM_ACCELERATION, 25.4, BOLD),
	EXACT("ft/s2", DIM_ACCELERATION, 304.8, BOLD),
	EXACT("kg m2", DIM_INERTIA, 1, SI),
	EXACT("kg cm2", DIM_INERTIA, 0.0001, SI),
	EXACT("kg mm2", DIM_INERTIA, 0.000001, SI),
	EXACT("lb in2", DIM_INERTIA, 0.0002926396534292, FROM_POUND),
	EXACT("lb ft2", DIM_INERTIA, 0.0421401100938048, FROM_POUND),
};

enum { UNIT_COUNT = sizeof units / sizeof units[0], MAX_UNIT_NAME = 24 };

struct spelling { const char *written, *name; };

/* other spellings that mean the same and are read */
static const struct spelling same[] = {
	{"Nmm", "N mm"}, {"Nm", "N m"}, {"kNm", "kN m"}, {"day", "days"},
	{"week", "weeks"}, {"year", "years"},
	{"kgm2", "kg m2"}, {"kgcm2", "kg cm2"}, {"kgmm2", "kg mm2"}, {"rev/min", "rpm"}, {"r/min", "rpm"},
};

/* what people write when they mean a unit of the table: refused, with that unit named. A moment in
 * lb would make a force of a mass, so it is never read as lbf. */
static const struct spelling meant[] = {
	{"ft lb", "ft lbf"}, {"lb ft", "ft lbf"}, {"lbf ft", "ft lbf"}, {"ftlb", "ft lbf"}, {"ftlbf", "ft lbf"},
	{"ft lbs", "ft lbf"}, {"lbs ft", "ft lbf"},
	{"in lb", "in lbf"}, {"lb in", "in lbf"}, {"lbf in", "in lbf"}, {"inlb", "in lbf"}, {"inlbf", "in lbf"},
	{"in lbs", "in lbf"}, {"lbs in", "in lbf"},
	{"inch", "in"}, {"inches", "in"}, {"\"", "in"}, {"foot", "ft"}, {"feet", "ft"}, {"'", "ft"},
	{"sq in", "in2"}, {"lbs", "lb"}, {"pound", "lb"}, {"pounds", "lb"}, {"kips", "kip"},
	{"kilo", "kg"}, {"kilos", "kg"}, {"ton", "t"}, {"tons", "t"}, {"tonne", "t"}, {"tonnes", "t"},
	{"newton", "N"}, {"m N", "N m"}, {"mm N", "N mm"}, {"m kN", "kN m"}, {"N.m", "N m"}, {"kN.m", "kN m"},
	{"N.mm", "N mm"}, {"N*m", "N m"}, {"kN*m", "kN m"}, {"N*mm", "N mm"},
	{"degree", "deg"}, {"degrees", "deg"}, {"percent", "%"}, {"pct", "%"},
	{"sec", "s"}, {"minutes", "min"}, {"hour", "h"}, {"hours", "h"}, {"hr", "h"}, {"d", "days"},
	{"msec", "ms"}, {"millisecond", "ms"}, {"milliseconds", "ms"}, {"second", "s"}, {"seconds", "s"},
	{"deg/sec", "deg/s"}, {"degree/s", "deg/s"}, {"degrees/s", "deg/s"}, {"degrees/sec", "deg/s"}, {"dps", "deg/s"},
	{"rad/sec", "rad/s"}, {"revs/min", "rpm"}, {"rev/m", "rpm"},
	{"deg/sec2", "deg/s2"}, {"deg/s/s", "deg/s2"}, {"degrees/s2", "deg/s2"}, {"degrees/sec2", "deg/s2"},
	{"rad/sec2", "rad/s2"}, {"rad/s/s", "rad/s2"},
	{"mm/sec", "mm/s"}, {"m/sec", "m/s"}, {"mps", "m/s"}, {"in/sec", "in/s"}, {"ips", "in/s"}, {"ft/sec", "ft/s"},
	{"fps", "ft/s"}, {"mm/sec2", "mm/s2"}, {"mm/s/s", "mm/s2"}, {"m/sec2", "m/s2"}, {"m/s/s", "m/s2"},
	{"in/sec2", "in/s2"}, {"ft/sec2", "ft/s2"},
	{"kg*m2", "kg m2"}, {"kg.m2", "kg m2"}, {"m2 kg", "kg m2"}, {"kg*cm2", "kg cm2"}, {"kg.cm2", "kg cm2"},
	{"kg*mm2", "kg mm2"}, {"kg.mm2", "kg mm2"}, {"lbm in2", "lb in2"}, {"lbs in2", "lb in2"}, {"in2 lb", "lb in2"},
	{"lbm ft2", "lb ft2"}, {"lbs ft2", "lb ft2"}, {"ft2 lb", "lb ft2"},
	{"wk", "weeks"}, {"wks", "weeks"}, {"yr", "years"}, {"yrs", "years"}, {"a", "years"},
};

static char lower(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool same_but_case(const char *a, const char *b)
{
	while (*a && lower(*a) == lower(*b)) {
		a++;
		b++;
	}
	return !*a && !*b;
}

/* characters that stand for others in a unit's name */
static const struct spelling folds[] = {
	{"\xC2\xB7", " "}, {"\xE2\x8B\x85", " "},          /* middle dot, dot operator */
	{"\xC2\xA0", " "}, {"\xE2\x80\xAF", " "}, {"\xE2\x80\x89", " "},   /* no-break, narrow, thin space */
	{"\xC2\xB2", "2"}, {"^2", "2"}, {"\xC2\xB0", "deg"}, {"-", " "}, {"\t", " "},
};

/* One name for all spellings that differ in their dots and spaces only; false when it cannot be a
 * unit. */
static bool fold_name(const char *text, size_t length, char out[MAX_UNIT_NAME])
{
	size_t n = 0;
	for (size_t i = 0; i < length;) {
		char one[2] = {text[i], 0};
		const char *add = one;
		size_t step = 1;
		for (size_t k = 0; k < sizeof folds / sizeof folds[0]; k++) {
			size_t width = strlen(folds[k].written);
			if (width <= length - i && memcmp(text + i, folds[k].written, width) == 0) {
				add = folds[k].name;
				step = width;
				break;
			}
		}
		i += step;
		/* a separator stands between two parts, so neither first nor last */
		if (add[0] == ' ' && n == 0)
			return false;
		if (add[0] == ' ' && out[n - 1] == ' ')
			continue;
		if (n + strlen(add) >= MAX_UNIT_NAME)
			return false;
		memcpy(out + n, add, strlen(add));
		n += strlen(add);
	}
	out[n] = 0;
	return n > 0 && out[n - 1] != ' ';
}

typedef bool same_name(const char *a, const char *b);

static bool same_letters(const char *a, const char *b)
{
	return strcmp(a, b) == 0;
}

static const char *through(const struct spelling *list, size_t count, const char *name,
                           same_name *is_same)
{
	for (size_t i = 0; i < count; i++)
		if (is_same(list[i].written, name))
			return list[i].name;
	return NULL;
}

/* First the wanted dimension, then any. */
static const struct unit *find(const char *name, enum dimension wanted, same_name *is_same)
{
	const struct unit *any = NULL;
	const char *other = through(same, sizeof same / sizeof same[0], name, is_same);
	for (size_t i = 0; i < UNIT_COUNT; i++) {
		if (!is_same(units[i].name, name) && !(other && strcmp(units[i].name, other) == 0))
			continue;
		if (units[i].dimension == wanted)
			return &units[i];
		if (!any)
			any = &units[i];
	}
	return any;
}

/* From the best news to the worst: right, wrong dimension, wrong case, a word that people use for
 * it. */
static enum quantity_error look_up(const char *name, enum dimension wanted,
                                   const struct unit **found)
{
	*found = find(name, wanted, same_letters);
	if (*found)
		return (*found)->dimension == wanted ? QUANTITY_OK : QUANTITY_WRONG_DIMENSION;
	*found = find(name, wanted, same_but_case);
	if (*found)
		return (*found)->dimension == wanted ? QUANTITY_UNIT_CASE
		                                     : QUANTITY_WRONG_DIMENSION;
	const char *other = through(meant, sizeof meant / sizeof meant[0], name, same_but_case);
	if (other)
		*found = find(other, wanted, same_letters);
	return QUANTITY_UNIT_UNKNOWN;
}

enum quantity_error quantity_find_unit(const char *name, size_t length, enum dimension wanted,
                                       const struct unit **out, const struct unit **close)
{
	char folded[MAX_UNIT_NAME];
	const struct unit *found = NULL;
	enum quantity_error error = QUANTITY_UNIT_UNKNOWN;
	if (fold_name(name, length, folded))
		error = look_up(folded, wanted, &found);
	*out = error == QUANTITY_OK ? found : NULL;
	if (close)
		*close = error == QUANTITY_OK ? NULL : found;
	return error;
}

const struct unit *quantity_unit(const char *name, size_t length, enum dimension wanted,
                                 const struct unit **close)
{
	const struct unit *unit;
	quantity_find_unit(name, length, wanted, &unit, close);
	return unit;
}

const struct unit *quantity_units(size_t *count)
{
	*count = UNIT_COUNT;
	return units;
}

/* What a drawing or a data sheet of that system would carry. */
const struct unit *quantity_display_unit(enum dimension dimension, enum unit_system system)
{
	static const char *const names[DIMENSIONS][2] = {
		[DIM_SHARE] = {"%", "%"},      [DIM_LENGTH] = {"mm", "in"},
		[DIM_AREA] = {"mm2", "in2"},   [DIM_FORCE] = {"kN", "lbf"},
		[DIM_MASS] = {"kg", "lb"},     [DIM_MOMENT] = {"kN m", "ft lbf"},
		[DIM_STRESS] = {"MPa", "psi"}, [DIM_ANGLE] = {"deg", "deg"},
		[DIM_TIME] = {"days", "days"},
		[DIM_TURN_SPEED] = {"deg/s", "deg/s"},
		[DIM_TURN_ACCELERATION] = {"deg/s2", "deg/s2"},
		[DIM_SPEED] = {"m/s", "in/s"},
		[DIM_ACCELERATION] = {"m/s2", "in/s2"},
		[DIM_INERTIA] = {"kg m2", "lb in2"},
	};
	const char *name = names[dimension][system == UNITS_US];
	return name ? find(name, dimension, same_letters) : NULL;
}

const char *dimension_name(enum dimension dimension)
{
	static const char *const names[DIMENSIONS] = {
		"plain number", "whole number", "share", "length", "area", "force",
		"mass", "moment", "stress", "angle", "time", "angular speed", "angular acceleration",
		"speed", "acceleration", "moment of inertia"};
	return names[dimension];
}

const char *dimension_example(enum dimension dimension)
{
	static const char *const examples[DIMENSIONS] = {
		"0.6", "4", "25 %", "150 mm", "84.3 mm2", "1.2 kN", "12 kg", "54 N m", "28 MPa", "30 deg", "90 days",
		"120 deg/s", "400 deg/s2", "1.5 m/s", "5 m/s2", "0.12 kg m2"};
	return examples[dimension];
}
