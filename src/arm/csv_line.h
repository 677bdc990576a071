/* Lines and fields of a table written as text (RFC 4180: fields between separators, a field may
 * stand in quotation marks). Views into the caller's bytes, nothing is copied. */
#ifndef CSV_LINE_H
#define CSV_LINE_H

#include <stdbool.h>
#include <stdint.h>

struct slice { const char *at, *end; };

/* The line that starts at `at`, without its end (LF or CR LF). */
struct slice csv_line(const char *at, const char *end);
/* Where the line behind that one starts; `end` behind the last. */
const char *csv_next_line(struct slice line, const char *end);

/* Takes the next field off the line: blanks around it and one pair of quotation marks left away.
 * False when none is left. An empty line has one empty field; afterwards line->at is NULL. */
bool csv_field(struct slice *line, char separator, struct slice *field);

/* Whether that character stands in the line outside quotation marks. */
bool csv_holds(struct slice line, char separator);

/* Without the blanks (space, tab) at both ends. */
struct slice csv_trimmed(struct slice text);

/* Characters (UTF-8) in text[from..to). */
uint32_t csv_characters(const char *from, const char *to);

#endif
