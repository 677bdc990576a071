#include "csv_table.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Cuts one line into its cells in place; returns how many. */
static size_t cut_line(char *line, const char *cell[CSV_COLUMNS], const char *path)
{
	size_t count = 0;
	for (char *from = line; from;) {
		cr_assert_lt(count, CSV_COLUMNS, "%s: too many columns", path);
		cell[count++] = from;
		from = strchr(from, ',');
		if (from)
			*from++ = '\0';
	}
	return count;
}

static void read_bytes(struct csv_table *table, const char *path)
{
	FILE *in = fopen(path, "rb");
	cr_assert_not_null(in, "%s: run in the top folder", path);
	size_t length = fread(table->text, 1, sizeof table->text - 1, in);
	fclose(in);
	table->text[length] = '\0';
	cr_assert(length > 0 && length < sizeof table->text - 1, "%s: empty or too long", path);
	cr_assert_eq(table->text[length - 1], '\n', "%s: the last line has no end", path);
	for (size_t i = 0; i < length; i++)
		cr_assert(table->text[i] == '\n' ||
		                  (table->text[i] >= ' ' && table->text[i] <= '~' &&
		                   table->text[i] != '"'),
		          "%s: byte %zu", path, i);
}

void csv_read(struct csv_table *table, const char *path)
{
	char *line = table->text;
	read_bytes(table, path);
	table->column_count = table->row_count = 0;
	while (*line) {
		char *end = strchr(line, '\n');
		*end = '\0';
		if (table->column_count == 0) {
			table->column_count = cut_line(line, table->column, path);
		} else {
			cr_assert_lt(table->row_count, CSV_ROWS, "%s: too many rows", path);
			cr_assert_eq(cut_line(line, table->cell[table->row_count++], path),
			             table->column_count, "%s: row %zu is ragged", path,
			             table->row_count);
		}
		line = end + 1;
	}
}

const char *csv_text(const struct csv_table *table, size_t row, const char *column)
{
	for (size_t i = 0; i < table->column_count; i++)
		if (strcmp(table->column[i], column) == 0)
			return table->cell[row][i];
	cr_assert_fail("no column %s", column);
	return "";
}

double csv_number(const struct csv_table *table, size_t row, const char *column)
{
	const char *text = csv_text(table, row, column);
	char *end;
	double value = strtod(text, &end);
	cr_assert(*end == '\0', "row %zu, %s: '%s' is no number", row + 1, column, text);
	return value;
}
