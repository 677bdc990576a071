/* What the user gave: a value with where it stands in the file and how it came to be. */
#ifndef GIVEN_H
#define GIVEN_H

#include "../plane/plane.h"
#include "../quantity/quantity.h"
#include <stdint.h>

enum status { DONE, BAD_INPUT, NO_MEMORY, NO_CONVERGENCE, BROKEN_OUTPUT };
enum verdict { HOLDS, UNPROVEN, FAILS }; /* rising: a file's verdict is the maximum */

struct mark {
	uint32_t file, line, column, width;
}; /* 1-based line and column in characters; line 0: nowhere */

/* ABSENT with a line: the word `unknown` or an empty value stands there. ASSUMED: not the user's,
 * not a default of the format, but a value the program had to take. */
enum origin { ABSENT, DEFAULT, GIVEN, ASSUMED };

/* First member of everything a cell file can state, so that generic code can ask any of them. */
struct given { struct mark mark; enum origin origin; };

struct number {
	struct given given;
	double value;
	const struct unit *unit;
}; /* [base unit]; unit as written */
struct word {
	struct given given;
	int value;
}; /* index into the field's words */
struct text {
	struct given given;
	const char *value;
}; /* NUL-terminated, "" when absent */
struct point {
	struct given given;
	double at[3];
}; /* [base unit]; z 0 for plane points */
struct ring   { struct given given; const struct vec2 *points; size_t count; }; /* [mm] */
struct list {
	struct given given;
	void *rows;
	size_t count;
}; /* rows of the field's row type */
struct numbers { struct given given; double *values; size_t count; };           /* [base unit] */

#define is_known(thing) ((thing).given.origin != ABSENT)

#endif
