/* A history's rows. */
#include "history.h"
#include "decimal.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

/* digits of a number in a message */
enum { SHOWN_DIGITS = 9, NUMBER_ROOM = 32 };

static struct mark mark_at(const struct history *h, struct slice line, struct slice where)
{
	return (struct mark){h->file, h->line, csv_characters(line.at, where.at) + 1,
	                     csv_characters(where.at, where.end)};
}

static void refuse(struct history *h, enum fault fault, struct mark mark, const char *message,
                   const char *hint)
{
	if (h->to)
		diagnose(h->to, ERROR, fault, mark, "", hint, "%s", message);
}

static struct mark whole_file(const struct history *h)
{
	return (struct mark){.file = h->file};
}

/* --- lines that hold no numbers
 * ---------------------------------------------------------------- */

static void next_line(struct history *h, struct slice line)
{
	h->at = csv_next_line(line, h->end);
	h->line++;
}

static const char *skip_blanks(const char *at, const char *end)
{
	while (at < end && (*at == ' ' || *at == '\t'))
		at++;
	return at;
}

/* False at the end of the text. */
static bool skip_comments(struct history *h)
{
	while (h->at < h->end) {
		const char *at = skip_blanks(h->at, h->end);
		if (at < h->end && *at != '#' && *at != '\n' && *at != '\r')
			return true;
		struct slice line = csv_line(h->at, h->end);
		/* a carriage return that ends no line belongs to a row, and is refused there */
		if (at < line.end && *at == '\r')
			return true;
		next_line(h, line);
	}
	return false;
}

/* --- a row that is as it should be
 * ------------------------------------------------------------- */

/* Line end or end of the text behind a row's last number; NULL when something else stands there. */
static const char *line_end(const char *at, const char *end)
{
	if (at < end && *at == '\r')
		at++;
	if (at == end)
		return at;
	return *at == '\n' ? at + 1 : NULL;
}

/* Blanks around a number; a tab may be the separator. */
static const char *skip_around(const char *at, const char *end, char separator)
{
	while (at < end && (*at == ' ' || (*at == '\t' && separator != '\t')))
		at++;
	return at;
}

/* Seven plain numbers, separators and a line end: nearly every row. False when anything else stands
 * there; then nothing is taken. */
static bool read_plain(struct history *h, double value[HISTORY_QUANTITIES])
{
	const char *at = h->at, *end = h->end;
	char separator = h->columns.separator;
	for (int i = 0; i < HISTORY_QUANTITIES; i++) {
		const struct history_column *column = &h->columns.list[i];
		if (i > 0 && (at == end || *at++ != separator))
			return false;
		at = decimal_read(skip_around(at, end, separator), end, column->shift,
		                  &value[column->quantity]);
		if (!at)
			return false;
		value[column->quantity] *= column->factor;
		if (!isfinite(value[column->quantity]))
			return false;
		at = skip_around(at, end, separator);
	}
	at = line_end(at, end);
	if (!at)
		return false;
	h->at = at;
	h->line++;
	return true;
}

/* --- a row that is not
 * ------------------------------------------------------------------------- */

static bool has(struct slice text, char c)
{
	return text.at < text.end && memchr(text.at, c, (size_t)(text.end - text.at));
}

static size_t count_digits(struct slice text)
{
	size_t count = 0;
	for (; text.at < text.end; text.at++)
		count += *text.at >= '0' && *text.at <= '9';
	return count;
}

static void refuse_number(struct history *h, struct slice line, struct slice field,
                          enum history_quantity quantity, enum quantity_error error)
{
	char message[DIAGNOSTIC_MESSAGE];
	const char *hint = "write a number with a decimal point, such as -12.5 or 1.25e3";
	struct explanation why;
	quantity_explain(error, field.at, (size_t)(field.end - field.at), DIM_FACTOR, NULL, &why);
	const char *wrong = why.wrong;
	if (field.at == field.end)
		wrong = "the field is empty";
	else if (error == QUANTITY_NOT_A_NUMBER && count_digits(field) > MOST_DECIMAL_DIGITS)
		wrong = "the number has more than 60 digits";
	else if (error == QUANTITY_DECIMAL_COMMA || error == QUANTITY_SEPARATOR)
		hint = why.remedy;
	else if (error == QUANTITY_NOT_FINITE)
		hint = "every value must be a finite number: take the row out or repair it";
	else if (error == QUANTITY_UNIT_NOT_WANTED)
		hint = "units stand in the header alone";
	snprintf(message, sizeof message, "row %u, %s: %s", (unsigned)h->row,
	         history_name(quantity), wrong);
	refuse(h, FAULT_NUMBER, mark_at(h, line, field), message, hint);
}

/* Whatever src/quantity takes as a bare number, but for fractions: 1/2 is half a date here. */
static bool read_field(struct history *h, struct slice line, struct slice field,
                       const struct history_column *column, double *out)
{
	static const struct unit powers[] = {
		{"", DIM_FACTOR, 1e-3, "0.001", ""},
		{"", DIM_FACTOR, 1, "1", ""},
		{"", DIM_FACTOR, 1e3, "1000", ""},
	};
	enum quantity_error error = QUANTITY_NOT_A_NUMBER;
	if (!has(field, '/'))
		error = quantity_parse_bare(field.at, (size_t)(field.end - field.at),
		                            &powers[column->shift / 3 + 1], out);
	if (error == QUANTITY_OK) {
		*out *= column->factor;
		error = isfinite(*out) ? QUANTITY_OK : QUANTITY_NOT_FINITE;
	}
	if (error != QUANTITY_OK)
		refuse_number(h, line, field, column->quantity, error);
	return error == QUANTITY_OK;
}

static size_t count_fields(struct slice line, char separator)
{
	struct slice field;
	size_t count = 0;
	while (csv_field(&line, separator, &field))
		count++;
	return count;
}

static void refuse_count(struct history *h, struct slice line, size_t count)
{
	char message[DIAGNOSTIC_MESSAGE];
	const char *hint = "a row holds the seven columns of the header";
	bool commas = h->columns.separator == ',';
	/* 0,001,12,5,...: each decimal comma looks like a column */
	if (count > HISTORY_QUANTITIES && commas)
		hint = "commas separate columns: write decimals with a point, no comma at the end";
	else if (count == 1 && !commas && has(line, ','))
		hint = "use the same separator in every row as in the header";
	snprintf(message, sizeof message, "row %u has %zu column%s where the header has %d",
	         (unsigned)h->row, count, count == 1 ? "" : "s", (int)HISTORY_QUANTITIES);
	refuse(h, FAULT_SHAPE, mark_at(h, line, csv_trimmed(line)), message, hint);
}

/* Field by field, telling every fault of the row. */
static bool read_slowly(struct history *h, double value[HISTORY_QUANTITIES])
{
	struct slice line = csv_line(h->at, h->end), rest = line, field;
	size_t count = count_fields(line, h->columns.separator);
	bool good = count == HISTORY_QUANTITIES;
	if (!good)
		refuse_count(h, line, count);
	for (size_t i = 0; count == HISTORY_QUANTITIES && i < count; i++) {
		const struct history_column *column = &h->columns.list[i];
		csv_field(&rest, h->columns.separator, &field);
		good = read_field(h, line, field, column, &value[column->quantity]) && good;
	}
	next_line(h, line);
	return good;
}

/* --- time
 * ---------------------------------------------------------------------------------------- */

static void refuse_time(struct history *h, double t, const char *row)
{
	struct slice line = csv_line(row, h->end);
	char message[DIAGNOSTIC_MESSAGE], now[NUMBER_ROOM], before[NUMBER_ROOM];
	number_write(t, SHOWN_DIGITS, now, sizeof now);
	number_write(h->last_t, SHOWN_DIGITS, before, sizeof before);
	snprintf(message, sizeof message, "row %u: time %s from %s s to %s s", (unsigned)h->row,
	         t < h->last_t ? "goes back" : "stands still", before, now);
	/* the line is behind us already */
	struct mark mark = {h->file, h->line - 1, 1, csv_characters(line.at, line.end)};
	refuse(h, FAULT_CONTRADICTION, mark, message,
	       "time must rise from row to row: put one history into one file, with enough digits of t");
}

/* A restart is told once: the rows behind it are compared with it, not with what was before. */
static bool time_rises(struct history *h, double t, const char *row)
{
	bool rises = !h->any || t > h->last_t;
	if (!rises)
		refuse_time(h, t, row);
	h->any = true;
	h->last_t = t;
	return rises;
}

/* --- reading
 * ------------------------------------------------------------------------------------- */

static bool read_row(struct history *h, struct history_row *out)
{
	double value[HISTORY_QUANTITIES];
	const char *from = h->at;
	out->line = h->line;
	out->row = ++h->row;
	bool good = read_plain(h, value) || read_slowly(h, value);
	if (!good || !time_rises(h, value[HISTORY_T], from))
		return false;
	out->t = value[HISTORY_T];
	for (int k = 0; k < 3; k++) {
		out->wrench.force[k] = value[HISTORY_FX + k];
		out->wrench.moment[k] = value[HISTORY_MX + k];
	}
	return true;
}

/* The rest is left unread: after so many faults, or so many rows. */
static void give_up(struct history *h)
{
	struct mark mark = {h->file, h->line, 1, 1};
	char message[DIAGNOSTIC_MESSAGE];
	if (h->row >= MOST_HISTORY_ROWS) {
		h->faults++;
		snprintf(message, sizeof message, "more than %d rows", (int)MOST_HISTORY_ROWS);
		refuse(h, FAULT_SIZE, mark, message,
		       "cut the history into several files, or leave out what is no motion");
	} else if (h->to) {
		diagnose(h->to, NOTE, FAULT_SIZE, mark, "", "",
		         "%d rows have errors; the rest of the file was not read",
		         (int)MOST_HISTORY_FAULTS);
	}
	h->at = h->end;
}

/* Told once, when the end is reached for the first time. */
static void tell_empty(struct history *h)
{
	if (h->row == 0 && h->faults == 0) {
		h->faults++;
		refuse(h, FAULT_SHAPE, whole_file(h), "the history has no rows",
		       "write one row of seven numbers a line below the header");
	}
}

size_t history_read(struct history *h, struct history_row rows[], size_t room)
{
	size_t count = 0;
	while (count < room && skip_comments(h)) {
		if (h->row >= MOST_HISTORY_ROWS || h->faults >= MOST_HISTORY_FAULTS)
			give_up(h);
		else if (read_row(h, &rows[count]))
			count++;
		else
			h->faults++;
	}
	if (count == 0)
		tell_empty(h);
	return count;
}

/* --- opening
 * ------------------------------------------------------------------------------------- */

static bool starts_with(const struct history *h, const char *bytes, size_t count)
{
	return (size_t)(h->end - h->at) >= count && memcmp(h->at, bytes, count) == 0;
}

static bool is_utf16(const struct history *h)
{
	return starts_with(h, "\xFF\xFE", 2) || starts_with(h, "\xFE\xFF", 2);
}

bool history_open(struct history *h, const char *text, size_t length, uint32_t file,
                  struct diagnostics *to)
{
	const char *end = length ? text + length : text;
	*h = (struct history){.at = text, .end = end, .file = file, .line = 1, .to = to};
	if (is_utf16(h)) {
		refuse(h, FAULT_SHAPE, (struct mark){file, 1, 1, 1}, "the file is UTF-16",
		       "save the file as UTF-8");
		return false;
	}
	if (starts_with(h, "\xEF\xBB\xBF", 3))
		h->at += 3;
	if (!skip_comments(h)) {
		refuse(h, FAULT_SHAPE, whole_file(h), "the history is empty",
		       "write a header line and below it one row of seven numbers a line");
		return false;
	}
	struct slice line = csv_line(h->at, h->end);
	struct mark mark = {file, h->line, 1, 1};
	bool good = history_columns_read(line, mark, to, &h->columns);
	next_line(h, line);
	return good;
}
