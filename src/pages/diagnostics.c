/* Diagnostics for a reader with an editor: file:line:column (GNU coding standards, error messages),
 * the line with a caret below, what to write instead. Lines longer than the page are cut around the
 * caret. */
#include "pages.h"
#include "phrases.h"
#include "utf8.h"
#include <stdio.h>
#include <string.h>

enum { GUTTER = 8, ROOM = PAGE_WIDTH - GUTTER, TAB_STOP = 8, MARGIN = 12 };

/* One line of the file, without its end. */
struct source_line { const char *at; size_t length; };

/* Where the caret stands in the printed line, tabs and wide characters counted. */
struct span { size_t from, to, end; };

static bool find_line(const struct page_source *source, uint32_t number, struct source_line *out)
{
	const char *at = source->bytes, *end = at ? at + source->length : NULL;
	if (!at || number == 0)
		return false;
	/* a byte order mark is no part of the first line */
	if (source->length >= 3 && memcmp(at, "\xEF\xBB\xBF", 3) == 0)
		at += 3;
	for (uint32_t line = 1; line < number; line++) {
		const char *stop = at < end ? memchr(at, '\n', (size_t)(end - at)) : NULL;
		if (!stop)
			return false;
		at = stop + 1;
	}
	const char *stop = at < end ? memchr(at, '\n', (size_t)(end - at)) : NULL;
	out->at = at;
	out->length = (size_t)((stop ? stop : end) - at);
	if (out->length > 0 && at[out->length - 1] == '\r')
		out->length--;
	return true;
}

/* Columns that a character takes when it stands at a column of the printed line. */
static size_t columns_at(const struct character *character, size_t column)
{
	if (character->code == '\t')
		return TAB_STOP - column % TAB_STOP;
	if (!character->valid || utf8_is_control(character->code))
		return 1;
	return utf8_columns(character->code);
}

static struct span find_span(const struct source_line *line, const struct mark *mark)
{
	struct span span = {0, 0, 0};
	size_t first = mark->column > 0 ? mark->column - 1 : 0,
	       last = first + (mark->width > 0 ? mark->width : 1);
	size_t column = 0, number = 0;
	for (size_t i = 0; i < line->length; number++) {
		struct character character = utf8_next(line->at + i, line->length - i);
		if (number == first)
			span.from = column;
		if (number == last)
			span.to = column;
		column += columns_at(&character, column);
		i += character.bytes;
	}
	/* behind the last character: something is missing there */
	if (number <= first)
		span.from = column;
	if (number <= last)
		span.to = column;
	if (span.to <= span.from)
		span.to = span.from + 1;
	span.end = column;
	return span;
}

/* First column to be shown, so that the caret is in sight. */
static size_t window_start(const struct span *span)
{
	size_t end = span->end > span->to ? span->end : span->to;
	if (end <= ROOM)
		return 0;
	size_t start = span->from > MARGIN ? span->from - MARGIN : 0;
	return start + ROOM > end ? end - ROOM : start;
}

static void put_character(struct writer *writer, const struct source_line *line, size_t at,
                          const struct character *character)
{
	char text[8] = {0};
	memcpy(text, line->at + at, character->bytes);
	writer_text(writer, text);
}

static void put_line(struct writer *writer, const struct source_line *line, size_t start)
{
	size_t column = 0;
	for (size_t i = 0; i < line->length;) {
		struct character character = utf8_next(line->at + i, line->length - i);
		size_t width = columns_at(&character, column);
		bool seen = column >= start && column + width <= start + ROOM;
		size_t place = GUTTER + column - start;
		/* a wide character cut off at the edge leaves a gap */
		if (seen && writer->column < place)
			writer_pad(writer, place);
		if (seen && character.code == '\t')
			writer_pad(writer, GUTTER + column + width - start);
		else if (seen)
			put_character(writer, line, i, &character);
		column += width;
		i += character.bytes;
	}
}

static void source_lines(struct writer *writer, const struct page_source *source,
                         const struct mark *mark)
{
	struct source_line line;
	char number[32];
	if (!find_line(source, mark->line, &line))
		return;
	struct span span = find_span(&line, mark);
	size_t start = window_start(&span), to = span.to < start + ROOM ? span.to : start + ROOM;
	snprintf(number, sizeof number, "%u", (unsigned)mark->line);
	writer_right(writer, number, GUTTER - 3);
	writer_text(writer, start > 0 ? " < " : " | ");
	put_line(writer, &line, start);
	writer_newline(writer);
	writer_pad(writer, GUTTER - 2);
	writer_text(writer, "| ");
	if (span.from > start)
		writer_pad(writer, GUTTER + span.from - start);
	writer_text(writer, "^");
	for (size_t i = span.from + 1; i < to; i++)
		writer_text(writer, "~");
	writer_newline(writer);
}

static const char *severity_word(enum severity severity)
{
	static const char *const words[] = {
		[NOTE] = "note", [WARNING] = "warning", [ERROR] = "error"};
	return words[severity];
}

static void message_line(struct writer *writer, const struct page_source *source,
                         const struct diagnostic *fault)
{
	char place[48];
	/* never wrapped: editors read this part */
	writer_text(writer, source->file);
	if (fault->mark.line > 0) {
		snprintf(place, sizeof place, ":%u:%u", (unsigned)fault->mark.line,
		         (unsigned)fault->mark.column);
		writer_text(writer, place);
	}
	writer_text(writer, ": ");
	writer_style(writer, fault->severity == ERROR ? STYLE_FAILS : STYLE_UNPROVEN);
	writer_text(writer, severity_word(fault->severity));
	writer_style(writer, STYLE_PLAIN);
	writer_text(writer, ": ");
	flow_begin(writer, GUTTER);
	flow(writer, fault->message);
	flow(writer, " [");
	flow(writer, fault_code(fault->fault));
	flow(writer, "]");
	flow_end(writer);
}

static void hint_line(struct writer *writer, const struct diagnostic *fault)
{
	if (!*fault->path && !*fault->hint)
		return;
	flow_begin(writer, GUTTER);
	if (*fault->path) {
		flow(writer, "in ");
		flow(writer, fault->path);
		flow(writer, *fault->hint ? ": " : "");
	}
	flow(writer, fault->hint);
	flow_end(writer);
}

static void count_line(struct writer *writer, const struct page_source *source,
                       const struct diagnostics *list)
{
	/* a file that could not be opened has said all in one line */
	bool told = list->count == 1 && list->list[0].mark.line == 0;
	if (list->errors == 0 || told)
		return;
	writer_text(writer, source->file);
	writer_text(writer, ": ");
	/* a name shorter than the gutter gets no second blank */
	flow_begin(writer, writer->column < GUTTER ? writer->column : GUTTER);
	flow(writer, phrase_count(list->errors, "error", "errors").text);
	if (list->dropped > 0) {
		flow(writer, ", ");
		flow(writer,
		     phrase_count(list->dropped, "further message", "further messages").text);
		flow(writer, " not shown");
	}
	flow(writer, "; nothing was computed");
	flow_end(writer);
}

bool page_diagnostics_of(const struct page_source sources[], size_t count,
                         const struct diagnostics *list, bool colour, write_function *write,
                         void *user)
{
	struct writer writer;
	writer_open(&writer, write, user, colour);
	for (size_t i = 0; i < list->count; i++) {
		uint32_t file = list->list[i].mark.file;
		const struct page_source *source = &sources[file < count ? file : 0];
		message_line(&writer, source, &list->list[i]);
		source_lines(&writer, source, &list->list[i].mark);
		hint_line(&writer, &list->list[i]);
	}
	count_line(&writer, sources, list);
	return writer_close(&writer);
}

bool page_diagnostics(const struct page_source *source, const struct diagnostics *list, bool colour,
                      write_function *write, void *user)
{
	return page_diagnostics_of(source, 1, list, colour, write, user);
}
