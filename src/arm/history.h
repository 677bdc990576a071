/* A history of the arm's reactions as text (CSV), read row by row from memory; nothing is copied.
 *
 * Format: a header line (history_columns.h), then a row of seven numbers a line, decimal point,
 * time rising from row to row. Lines beginning with # and empty lines are left out. LF or CR LF,
 * UTF-8 with or without a byte order mark; a number may stand in quotation marks.
 * Wrench: of the arm ON the mounting face, moment about the face's origin, in mounting-face axes;
 * Fz < 0 presses the face down. SI inside: s, N, N m. Numbers in a unit that is s, N or N m times a
 * power of ten are the doubles nearest to the text; in other units the conversion rounds once more.
 * Errors: numbers that are none, not finite, with a decimal comma; rows with too few or too many
 * columns; time that does not rise; no rows; more rows than MOST_HISTORY_ROWS. Every faulty row is
 * told and left out, up to MOST_HISTORY_FAULTS: a history with an error must not be used. */
#ifndef HISTORY_H
#define HISTORY_H

#include "chain.h"
#include "history_columns.h"

enum { MOST_HISTORY_ROWS = 10000000, MOST_HISTORY_FAULTS = 10 };

struct history_row {
	double t;                      /* [s] */
	struct base_wrench wrench;     /* [N], [N m] */
	uint32_t row, line;            /* from 1: of the numbers, and of the text */
};

/* A place in the text. A copy of it reads on from there independently. */
struct history {
	const char *at, *end;
	uint32_t file, line;           /* of `at` */
	uint32_t row, faults;          /* rows so far, and those of them with an error */
	bool any;                      /* whether last_t is set */
	double last_t;
	struct history_columns columns;
	struct diagnostics *to;        /* NULL in a copy: errors are counted, not told */
};

/* Reads the header. False with an error when it cannot be used. text and *to must outlive the
 * history. `file` goes into every mark. */
bool history_open(struct history *history, const char *text, size_t length, uint32_t file,
                  struct diagnostics *to);

/* Reads up to `room` rows (at least one); the number read, 0 at the end. */
size_t history_read(struct history *history, struct history_row rows[], size_t room);

#endif
