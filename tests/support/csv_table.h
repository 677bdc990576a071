/* Reads a table of refdata: comma-separated, a header line, no quotes and no comma inside a text.
 * Tests only. */
#ifndef CSV_TABLE_H
#define CSV_TABLE_H

#include <stddef.h>

enum { CSV_ROWS = 64, CSV_COLUMNS = 16 };

struct csv_table {
	char text[32768];
	const char *column[CSV_COLUMNS];
	const char *cell[CSV_ROWS][CSV_COLUMNS];
	size_t column_count, row_count;
};

/* A Criterion failure for a file that is not there (run in the top folder), for a ragged row and
 * for anything that is not plain printable text. */
void csv_read(struct csv_table *table, const char *path);
/* The text of a named column in a row; a failure where there is no such column. */
const char *csv_text(const struct csv_table *table, size_t row, const char *column);
/* The same as a number; an empty cell is 0. */
double csv_number(const struct csv_table *table, size_t row, const char *column);

#endif
