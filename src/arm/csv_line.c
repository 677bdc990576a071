/* Lines and fields of a table. */
#include "csv_line.h"
#include <string.h>

struct slice csv_line(const char *at, const char *end)
{
	const char *stop = at < end ? memchr(at, '\n', (size_t)(end - at)) : NULL;
	struct slice line = {at, stop ? stop : end};
	if (line.end > line.at && line.end[-1] == '\r')
		line.end--;
	return line;
}

const char *csv_next_line(struct slice line, const char *end)
{
	const char *at = line.end;
	if (at < end && *at == '\r')
		at++;
	if (at < end && *at == '\n')
		at++;
	return at;
}

static bool is_blank(char c)
{
	return c == ' ' || c == '\t';
}

struct slice csv_trimmed(struct slice text)
{
	while (text.at < text.end && is_blank(*text.at))
		text.at++;
	while (text.end > text.at && is_blank(text.end[-1]))
		text.end--;
	return text;
}

/* The first separator outside quotation marks, or the line's end. */
static const char *find(struct slice line, char separator)
{
	bool quoted = false;
	for (; line.at < line.end; line.at++) {
		if (*line.at == '"')
			quoted = !quoted;
		else if (*line.at == separator && !quoted)
			break;
	}
	return line.at;
}

bool csv_holds(struct slice line, char separator)
{
	return find(line, separator) < line.end;
}

bool csv_field(struct slice *line, char separator, struct slice *field)
{
	if (!line->at)
		return false;
	const char *stop = find(*line, separator);
	*field = csv_trimmed((struct slice){line->at, stop});
	if (field->end - field->at >= 2 && *field->at == '"' && field->end[-1] == '"')
		*field = csv_trimmed((struct slice){field->at + 1, field->end - 1});
	line->at = stop < line->end ? stop + 1 : NULL;
	return true;
}

uint32_t csv_characters(const char *from, const char *to)
{
	uint32_t count = 0;
	for (; from < to; from++)
		count += ((unsigned char)*from & 0xC0) != 0x80;
	return count;
}
