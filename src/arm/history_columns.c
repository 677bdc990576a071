/* The header line of a history. */
#include "history_columns.h"
#include <stdio.h>
#include <string.h>

/* What a column's text is cut into: Fx [N] */
struct heading { struct slice name, unit; };

/* The line being read, for its messages. */
struct reading {
	struct slice line;
	struct mark mark;
	struct diagnostics *to;
	struct history_columns *out;
	size_t count, good;            /* columns so far, and those of them without an error */
	bool seen[HISTORY_QUANTITIES];
	bool failed;
};

static const struct {
	const char *name, *unit;
	enum dimension dimension;
} quantities[HISTORY_QUANTITIES] = {
	[HISTORY_T] = {"t", "s", DIM_TIME},
	[HISTORY_FX] = {"Fx", "N", DIM_FORCE},
	[HISTORY_FY] = {"Fy", "N", DIM_FORCE},
	[HISTORY_FZ] = {"Fz", "N", DIM_FORCE},
	[HISTORY_MX] = {"Mx", "N m", DIM_MOMENT},
	[HISTORY_MY] = {"My", "N m", DIM_MOMENT},
	[HISTORY_MZ] = {"Mz", "N m", DIM_MOMENT},
};

static const char *const whole_header =
	"write the seven columns t [s], Fx [N], Fy [N], Fz [N], Mx [N m], My [N m], Mz [N m], in any order";

const char *history_name(enum history_quantity quantity)
{
	return quantities[quantity].name;
}

const char *history_unit(enum history_quantity quantity)
{
	return quantities[quantity].unit;
}

static int width_of(struct slice text)
{
	enum { SHOWN = 40 };
	return text.end - text.at > SHOWN ? SHOWN : (int)(text.end - text.at);
}

static void refuse(struct reading *r, struct slice where, enum fault fault, const char *message,
                   const char *hint)
{
	struct mark mark = r->mark;
	mark.column += csv_characters(r->line.at, where.at);
	mark.width = csv_characters(where.at, where.end);
	diagnose(r->to, ERROR, fault, mark, "", hint, "%s", message);
	r->failed = true;
}

/* --- name and unit of one column
 * --------------------------------------------------------------- */

/* The unit stands in the last pair of brackets or parentheses; without one it is empty. */
static struct heading cut(struct slice text)
{
	struct heading whole = {text, {text.end, text.end}};
	char last = text.end > text.at ? text.end[-1] : 0;
	char first = last == ']' ? '[' : last == ')' ? '(' : 0;
	for (const char *at = text.end; first && at > text.at; at--)
		if (at[-1] == first)
			return (struct heading){csv_trimmed((struct slice){text.at, at - 1}),
			                        csv_trimmed((struct slice){at, text.end - 1})};
	return whole;
}

static char lower(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool is_name(struct slice text, const char *name, bool exactly)
{
	for (; text.at < text.end && *name; text.at++, name++)
		if (exactly ? *text.at != *name : lower(*text.at) != lower(*name))
			return false;
	return text.at == text.end && !*name;
}

static bool find_name(struct slice text, bool exactly, enum history_quantity *out)
{
	for (int i = 0; i < HISTORY_QUANTITIES; i++)
		if (is_name(text, quantities[i].name, exactly)) {
			*out = (enum history_quantity)i;
			return true;
		}
	return false;
}

static void refuse_name(struct reading *r, struct slice name)
{
	char message[DIAGNOSTIC_MESSAGE], hint[DIAGNOSTIC_HINT];
	enum history_quantity meant;
	if (find_name(name, false, &meant))
		snprintf(hint, sizeof hint, "write %s", history_name(meant));
	else
		snprintf(hint, sizeof hint,
		         "take it out: a history holds t, Fx, Fy, Fz, Mx, My and Mz alone");
	if (name.at == name.end)
		snprintf(message, sizeof message, "column %zu has no name", r->count);
	else
		snprintf(message, sizeof message, "column %zu is named '%.*s'", r->count,
		         width_of(name), name.at);
	refuse(r, name, FAULT_UNKNOWN_KEY, message, hint);
}

static void refuse_unit(struct reading *r, struct slice unit, enum history_quantity quantity,
                        enum quantity_error error, const struct unit *close)
{
	char message[DIAGNOSTIC_MESSAGE], hint[DIAGNOSTIC_HINT];
	const char *name = history_name(quantity);
	struct explanation why;
	quantity_explain(error, unit.at, (size_t)(unit.end - unit.at),
	                 quantities[quantity].dimension, close, &why);
	snprintf(message, sizeof message, "column %s: %s", name, why.wrong);
	snprintf(hint, sizeof hint, "%s", why.remedy);
	if (error == QUANTITY_NO_UNIT) {
		snprintf(message, sizeof message, "column %s has no unit", name);
		snprintf(hint, sizeof hint, "write the unit behind the name, such as %s [%s]", name,
		         history_unit(quantity));
	}
	refuse(r, unit, FAULT_NUMBER, message, hint);
}

/* Moments are in N mm in src/quantity and in N m here. A power of ten is kept apart, so that it is
 * rounded together with the number: 0.1 kN is the double nearest to 100 N. */
static struct history_column column_of(enum history_quantity quantity, const struct unit *unit)
{
	static const struct { double factor; int shift; } powers[] = {{1e-3, -3}, {1, 0}, {1e3, 3}};
	double factor = unit->dimension == DIM_MOMENT ? unit->factor / 1e3 : unit->factor;
	struct history_column column = {quantity, unit, 0, factor};
	for (size_t i = 0; i < sizeof powers / sizeof *powers; i++)
		if (powers[i].factor >= factor && powers[i].factor <= factor) {
			column.shift = powers[i].shift;
			column.factor = 1;
		}
	return column;
}

static enum quantity_error find_unit(struct slice text, enum dimension dimension,
                                     const struct unit **unit, const struct unit **close)
{
	if (text.at == text.end)
		return QUANTITY_NO_UNIT;
	return quantity_find_unit(text.at, (size_t)(text.end - text.at), dimension, unit, close);
}

static void read_column(struct reading *r, struct slice field)
{
	struct heading heading = cut(field);
	enum history_quantity quantity;
	const struct unit *unit = NULL, *close = NULL;
	r->count++;
	if (!find_name(heading.name, true, &quantity)) {
		refuse_name(r, heading.name);
		return;
	}
	if (r->seen[quantity]) {
		char message[DIAGNOSTIC_MESSAGE];
		snprintf(message, sizeof message, "column %s is there twice",
		         history_name(quantity));
		refuse(r, heading.name, FAULT_DUPLICATE_KEY, message, "keep one of them");
		return;
	}
	r->seen[quantity] = true;
	enum quantity_error error =
		find_unit(heading.unit, quantities[quantity].dimension, &unit, &close);
	if (error != QUANTITY_OK)
		refuse_unit(r, heading.unit, quantity, error, close);
	else
		/* a name is good once, so no more than seven are */
		r->out->list[r->good++] = column_of(quantity, unit);
}

/* --- the whole line
 * ---------------------------------------------------------------------------- */

/* Numbers where names belong: the header is missing, or made a comment by the program that wrote
 * it. */
static bool has_no_names(struct slice line)
{
	static const char number_starts[] = "+-.0123456789";
	struct slice text = csv_trimmed(line);
	return text.at < text.end && memchr(number_starts, *text.at, sizeof number_starts - 1);
}

static void refuse_missing(struct reading *r)
{
	char message[DIAGNOSTIC_MESSAGE];
	int at = snprintf(message, sizeof message, "the header lacks");
	bool any = false;
	for (int i = 0; i < HISTORY_QUANTITIES; i++)
		if (!r->seen[i]) {
			at += snprintf(message + at, sizeof message - (size_t)at, "%s %s",
			               any ? "," : "", quantities[i].name);
			any = true;
		}
	if (any)
		refuse(r, r->line, FAULT_MISSING_KEY, message, whole_header);
}

static char separator_of(struct slice line)
{
	return csv_holds(line, ';') ? ';' : csv_holds(line, '\t') ? '\t' : ',';
}

/* True when the line is no header at all and has been refused as a whole. */
static bool refuse_whole(struct reading *r)
{
	size_t length = (size_t)(r->line.end - r->line.at);
	if (has_no_names(r->line))
		refuse(r, r->line, FAULT_SHAPE, "no header line stands above the numbers",
		       "write t [s], Fx [N], Fy [N], Fz [N], Mx [N m], My [N m], Mz [N m] above them; a line "
		       "beginning with # is a comment");
	else if (memchr(r->line.at, '\r', length))
		refuse(r, r->line, FAULT_SHAPE, "the lines end with a carriage return alone",
		       "save the file with line ends LF or CR LF");
	else if (memchr(r->line.at, 0, length))
		refuse(r, r->line, FAULT_SHAPE, "a NUL byte: this is no text file",
		       "save the file as plain text in UTF-8");
	else if (!csv_holds(r->line, separator_of(r->line)))
		refuse(r, r->line, FAULT_SHAPE, "the header has one column",
		       "separate the columns by semicolons, commas or tabs");
	return r->failed;
}

bool history_columns_read(struct slice line, struct mark mark, struct diagnostics *to,
                          struct history_columns *out)
{
	struct reading r = {.line = line, .mark = mark, .to = to, .out = out};
	struct slice rest = line, field;
	*out = (struct history_columns){.separator = separator_of(line)};
	if (refuse_whole(&r))
		return false;
	while (csv_field(&rest, out->separator, &field))
		read_column(&r, field);
	if (!r.failed)
		refuse_missing(&r);
	return !r.failed;
}
