/* Bytes through a caller's function, with the little layout that pages need: columns, right-aligned
 * numbers, and text that wraps at the page's width. Nothing is allocated. The first failed write is
 * sticky: everything after it is dropped, and writer_close tells. */
#ifndef WRITER_H
#define WRITER_H

#include <stdbool.h>
#include <stddef.h>

enum { PAGE_WIDTH = 100, WORD_ROOM = 512, WRITER_ROOM = 4096 };

/* Takes length bytes; false when they could not be taken. */
typedef bool write_function(void *user, const void *bytes, size_t length);

enum style { STYLE_PLAIN, STYLE_TITLE, STYLE_HOLDS, STYLE_UNPROVEN, STYLE_FAILS };

struct writer {
	write_function *write;
	void *user;
	bool failed;
	bool colour;                    /* styles are written as terminal sequences, or not */
	size_t column;                  /* of the next character, from 0 */
	size_t owed;                    /* spaces not yet written: no line ends in spaces */
	size_t hang;                    /* where the flowing text's further lines begin */
	const char *prefix;             /* "# " on each of them, before `hang`; or NULL */
	bool space;                     /* a space is due before the next word */
	char word[WORD_ROOM];           /* the flowing text's word that is not yet placed */
	size_t word_bytes, word_columns;
	char buffer[WRITER_ROOM];
	size_t used;
};

void writer_open(struct writer *writer, write_function *write, void *user, bool colour);
/* Hands over what is left; true when every byte was taken. */
bool writer_close(struct writer *writer);

/* Bytes as they are; the caller sees to columns. */
void writer_bytes(struct writer *writer, const void *bytes, size_t length);
/* Text on the current line; controls and bytes that are no UTF-8 become '?'. */
void writer_text(struct writer *writer, const char *text);
void writer_newline(struct writer *writer);
/* Spaces up to a column; at least one where the line is already there or beyond. */
void writer_pad(struct writer *writer, size_t column);
/* The text, right-aligned so that it ends before `column`. */
void writer_right(struct writer *writer, const char *text, size_t column);
void writer_style(struct writer *writer, enum style style);
/* A title on its own line, behind an empty one. */
void writer_title(struct writer *writer, const char *title);

/* Flowing text: words wrap at PAGE_WIDTH, further lines begin at `hang`. A number stays with its
 * unit, a point "[-450, 350]" on one line; a word longer than a line is cut. flow_end ends the
 * line. */
void flow_begin(struct writer *writer, size_t hang);
/* The same with a prefix on every line, the first included. */
void flow_begin_prefixed(struct writer *writer, size_t column, const char *prefix);
void flow(struct writer *writer, const char *text);
void flow_end(struct writer *writer);
/* Places what is still held back, so that `column` is true; the line goes on. */
void flow_pause(struct writer *writer);
/* A whole paragraph: the label, then the text from column `hang` on. */
void paragraph(struct writer *writer, const char *label, size_t hang, const char *text);

#endif
