/* Numbers with units: parsing, and writing them back.
 *
 * Base units inside the program: N, mm, MPa (N/mm2), N mm, kg, rad, s and what follows from them,
 * but kg m2 for a moment of inertia; a share is a plain ratio.
 * Factors: NIST Special Publication 811 (2008), Appendix B.8 and B.9, exact where the table prints
 * them in bold (in, ft, lb, lbf from the standard acceleration of free fall, degree).
 * A number must carry its unit; the only bare numbers are those of DIM_FACTOR and DIM_COUNT. */
#ifndef QUANTITY_H
#define QUANTITY_H

#include <stdbool.h>
#include <stddef.h>

enum dimension {
	DIM_FACTOR,   /* pure number, no unit [-] */
	DIM_COUNT,    /* whole number, no unit [-] */
	DIM_SHARE,    /* written in %, kept as a ratio [-] */
	DIM_LENGTH,   /* [mm] */
	DIM_AREA,     /* [mm2] */
	DIM_FORCE,    /* [N] */
	DIM_MASS,     /* [kg] */
	DIM_MOMENT,   /* [N mm] */
	DIM_STRESS,   /* [MPa] */
	DIM_ANGLE,    /* [rad] */
	DIM_TIME,     /* [s] */
	DIM_TURN_SPEED,        /* [rad/s] */
	DIM_TURN_ACCELERATION, /* [rad/s2] */
	DIM_SPEED,             /* [mm/s] */
	DIM_ACCELERATION,      /* [mm/s2] */
	DIM_INERTIA,           /* [kg m2] */
	DIMENSIONS
};

/* standard acceleration of free fall, exact, NIST SP 811 B.8 [m/s2] */
#define STANDARD_GRAVITY 9.80665

struct unit {
	const char *name;          /* as it is printed: "N m", "ft lbf" */
	enum dimension dimension;
	double factor;             /* base units in one of this unit */
	const char
		*decimal; /* the same factor digit by digit; NULL where it has no end (psi, deg) */
	const char *source;        /* table of NIST SP 811 and whether exact there */
};

enum quantity_error {
	QUANTITY_OK,
	QUANTITY_NOT_A_NUMBER,    /* no digits, or words */
	QUANTITY_NO_UNIT,         /* bare number where a unit must stand */
	QUANTITY_UNIT_UNKNOWN,    /* unit not in the table; `close` names the nearest one or NULL */
	QUANTITY_UNIT_CASE,       /* right letters, wrong case (mpa); `close` names the right one */
	QUANTITY_WRONG_DIMENSION, /* a known unit of another dimension; `close` is that unit */
	QUANTITY_DECIMAL_COMMA,   /* 1,5 mm */
	QUANTITY_SEPARATOR,       /* 1,500.0 mm or 1 500 mm or 1_500 or 1'500 */
	QUANTITY_NOT_FINITE,      /* nan, inf, overflow */
	QUANTITY_HEX,             /* 0x10 */
	QUANTITY_NOT_WHOLE,       /* a count with a fraction */
	QUANTITY_UNIT_NOT_WANTED  /* a unit behind a pure number */
};

struct quantity {
	double value;              /* [base unit] */
	const struct unit *unit;   /* unit as written; NULL for pure numbers */
	const struct unit *close;  /* see the errors above, else NULL */
};

/* Parses text[0..length) as a number of the wanted dimension. Accepts "150 mm", "150mm", "2 3/4
 * in", "3/4 in", "1.2e3 N", ".5 in"; the parts of a moment's unit with a space, a dot (U+00B7,
 * U+22C5), a hyphen or nothing between them ("54 N m", "54 N-m", "54 Nm"; "40 ft lbf", "40
 * ft-lbf"); U+00B2 or ^2 for a square, U+00B0 for deg, U+2212 for minus, no-break spaces. Any
 * locale; correctly rounded where the unit has a `decimal`. */
enum quantity_error quantity_parse(const char *text, size_t length, enum dimension wanted,
                                   struct quantity *out);

/* The same for a bare number whose unit stands elsewhere (a list with `unit:`); NULL: a pure
 * number. */
enum quantity_error quantity_parse_bare(const char *text, size_t length, const struct unit *unit,
                                        double *out);

/* The unit of that name and dimension in any of the spellings above, or NULL; `close` as above when
 * not NULL. */
const struct unit *quantity_unit(const char *name, size_t length, enum dimension wanted,
                                 const struct unit **close);
/* The same, saying why: QUANTITY_OK with *out, else QUANTITY_UNIT_UNKNOWN, _UNIT_CASE or
 * _WRONG_DIMENSION. */
enum quantity_error quantity_find_unit(const char *name, size_t length, enum dimension wanted,
                                       const struct unit **out, const struct unit **close);

/* Half sentences, lower case and without a full stop: what is wrong, and what to write instead. */
struct explanation { char wrong[160], remedy[200]; };
void quantity_explain(enum quantity_error error, const char *text, size_t length,
                      enum dimension wanted, const struct unit *close, struct explanation *out);
/* The same where a number of either dimension may stand: neither is named alone. */
void quantity_explain_either(enum quantity_error error, const char *text, size_t length,
                             const enum dimension wanted[2], const struct unit *close,
                             struct explanation *out);

const char *dimension_name(enum dimension dimension);       /* "length" */
const char *dimension_example(enum dimension dimension);    /* "150 mm" */
const struct unit *
quantity_units(size_t *count); /* the whole table, for the manual and the tests */

enum unit_system { UNITS_METRIC, UNITS_US };
/* Unit in which pages print a dimension: kN, kN m, mm, MPa, deg ... or lbf, ft lbf, in, psi; NULL
 * for the pure numbers (factor, count). */
const struct unit *quantity_display_unit(enum dimension dimension, enum unit_system system);

/* Locale-free: writes value [base unit] in that unit with `digits` significant digits, no trailing
 * zeros, and the unit's name behind a space (no unit for NULL); returns the length written (cut to
 * room). Plain decimals from 1e-5 to 1e16, else with an exponent; a negative zero is 0. */
size_t quantity_write(double value, const struct unit *unit, int digits, char *out, size_t room);
/* The bare number, the same way. */
size_t number_write(double value, int digits, char *out, size_t room);
/* Shortest decimal that reads back to the same double; JSON-safe; "null" for a non-finite value. */
size_t number_write_exact(double value, char *out, size_t room);

#endif
