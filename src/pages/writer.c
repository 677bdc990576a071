#include "writer.h"
#include "utf8.h"
#include <string.h>

void writer_open(struct writer *writer, write_function *write, void *user, bool colour)
{
	memset(writer, 0, sizeof *writer);
	writer->write = write;
	writer->user = user;
	writer->colour = colour;
}

static void hand_over(struct writer *writer)
{
	if (!writer->failed && writer->used > 0)
		writer->failed = !writer->write(writer->user, writer->buffer, writer->used);
	writer->used = 0;
}

bool writer_close(struct writer *writer)
{
	hand_over(writer);
	return !writer->failed;
}

static void put(struct writer *writer, const char *from, size_t length)
{
	while (length > 0 && !writer->failed) {
		if (writer->used == WRITER_ROOM)
			hand_over(writer);
		size_t part = WRITER_ROOM - writer->used;
		if (part > length)
			part = length;
		memcpy(writer->buffer + writer->used, from, part);
		writer->used += part;
		from += part;
		length -= part;
	}
}

void writer_bytes(struct writer *writer, const void *bytes, size_t length)
{
	for (; length > 0 && writer->owed > 0; writer->owed--)
		put(writer, " ", 1);
	put(writer, bytes, length);
}

/* what a character is printed as: itself, or '?' */
static struct character printable(const char *text, size_t length, const char **bytes)
{
	struct character character = utf8_next(text, length);
	*bytes = text;
	if (!character.valid || utf8_is_control(character.code)) {
		*bytes = "?";
		character.code = '?';
	}
	return character;
}

void writer_text(struct writer *writer, const char *text)
{
	size_t length = strlen(text);
	while (length > 0) {
		const char *bytes;
		struct character character = printable(text, length, &bytes);
		writer_bytes(writer, bytes, bytes == text ? character.bytes : 1);
		writer->column += utf8_columns(character.code);
		text += character.bytes;
		length -= character.bytes;
	}
}

void writer_newline(struct writer *writer)
{
	writer->owed = 0;
	put(writer, "\n", 1);
	writer->column = 0;
}

void writer_pad(struct writer *writer, size_t column)
{
	if (writer->column >= column && writer->column > 0)
		column = writer->column + 1;
	if (column > writer->column) {
		writer->owed += column - writer->column;
		writer->column = column;
	}
}

void writer_right(struct writer *writer, const char *text, size_t column)
{
	size_t width = utf8_width(text);
	writer_pad(writer, width < column ? column - width : 0);
	writer_text(writer, text);
}

void writer_style(struct writer *writer, enum style style)
{
	/* bold, green, yellow, red of ECMA-48; the words carry the meaning without them */
	static const char *const sequence[] = {"\x1b[0m", "\x1b[1m", "\x1b[1;32m", "\x1b[1;33m",
	                                       "\x1b[1;31m"};
	if (writer->colour)
		writer_bytes(writer, sequence[style], strlen(sequence[style]));
}

void writer_title(struct writer *writer, const char *title)
{
	writer_newline(writer);
	writer_style(writer, STYLE_TITLE);
	writer_text(writer, title);
	writer_style(writer, STYLE_PLAIN);
	writer_newline(writer);
}

void flow_begin(struct writer *writer, size_t hang)
{
	if (writer->column < hang)
		writer_pad(writer, hang);
	writer->hang = hang;
	writer->prefix = NULL;
	writer->space = false;
	writer->word_bytes = writer->word_columns = 0;
}

void flow_begin_prefixed(struct writer *writer, size_t column, const char *prefix)
{
	if (column > 0)
		writer_pad(writer, column);
	writer_text(writer, prefix);
	flow_begin(writer, column + utf8_width(prefix));
	writer->prefix = prefix;
}

/* a further line of the flowing text */
static void wrap(struct writer *writer)
{
	size_t prefix = writer->prefix ? utf8_width(writer->prefix) : 0;
	writer_newline(writer);
	if (writer->hang > prefix)
		writer_pad(writer, writer->hang - prefix);
	if (prefix > 0)
		writer_text(writer, writer->prefix);
	writer->space = false;
}

static void place_word(struct writer *writer)
{
	/* a space that was kept for a unit which then did not come */
	while (writer->word_bytes > 0 && writer->word[writer->word_bytes - 1] == ' ') {
		writer->word_bytes--;
		writer->word_columns--;
		writer->space = true;
	}
	if (writer->word_bytes == 0)
		return;
	size_t due = writer->space ? 1 : 0;
	if (writer->column + due + writer->word_columns > PAGE_WIDTH &&
	    writer->column > writer->hang)
		wrap(writer);
	if (writer->space)
		writer_bytes(writer, " ", 1);
	writer->column += writer->space ? 1 : 0;
	writer_bytes(writer, writer->word, writer->word_bytes);
	writer->column += writer->word_columns;
	writer->space = false;
	writer->word_bytes = writer->word_columns = 0;
}

/* Whether the word so far is a bare number, which must not be parted from its unit. */
static bool is_number(const struct writer *writer)
{
	bool digits = false;
	for (size_t i = 0; i < writer->word_bytes; i++) {
		if (!strchr("0123456789.-+(", writer->word[i]))
			return false;
		digits = digits || (writer->word[i] >= '0' && writer->word[i] <= '9');
	}
	return digits;
}

/* Whether the word so far is the beginning of a point: "[-450,". A point stays on one line. */
static bool is_open_point(const struct writer *writer)
{
	size_t length = writer->word_bytes;
	if (length < 3 || writer->word[0] != '[' || writer->word[length - 1] != ',')
		return false;
	for (size_t i = 1; i < length; i++)
		if (!strchr("0123456789.-, ", writer->word[i]))
			return false;
	return true;
}

static void add_character(struct writer *writer, const char *bytes, size_t length, size_t columns)
{
	/* longer than a line, or a pile of joining marks: cut here */
	size_t room = PAGE_WIDTH > writer->hang ? PAGE_WIDTH - writer->hang : 1;
	if (writer->word_columns + columns > room || writer->word_bytes + length > WORD_ROOM)
		place_word(writer);
	memcpy(writer->word + writer->word_bytes, bytes, length);
	writer->word_bytes += length;
	writer->word_columns += columns;
}

static void add_space(struct writer *writer)
{
	if (is_number(writer) || is_open_point(writer)) {
		add_character(writer, " ", 1, 1);
		return;
	}
	place_word(writer);
	writer->space = writer->column > writer->hang;
}

void flow(struct writer *writer, const char *text)
{
	size_t length = strlen(text);
	while (length > 0) {
		const char *bytes;
		struct character character = printable(text, length, &bytes);
		if (*text == ' ' || *text == '\n' || *text == '\t')
			add_space(writer);
		else
			add_character(writer, bytes, bytes == text ? character.bytes : 1,
			              utf8_columns(character.code));
		text += character.bytes;
		length -= character.bytes;
	}
}

void flow_pause(struct writer *writer)
{
	place_word(writer);
}

void flow_end(struct writer *writer)
{
	place_word(writer);
	writer_newline(writer);
}

void paragraph(struct writer *writer, const char *label, size_t hang, const char *text)
{
	writer_text(writer, label);
	if (writer->column >= hang && writer->column > 0)
		writer_pad(writer, 0);
	flow_begin(writer, hang);
	flow(writer, text);
	flow_end(writer);
}
