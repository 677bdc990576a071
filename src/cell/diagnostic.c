/* The list of faults of a run. */
#include "diagnostic.h"
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#define CODE(name, code, about) code,
#define ABOUT(name, code, about) about,
static const char *const codes[] = {FAULTS(CODE)};
static const char *const abouts[] = {FAULTS(ABOUT)};
#undef CODE
#undef ABOUT

const char *fault_code(enum fault fault)
{
	return codes[fault];
}

const char *fault_about(enum fault fault)
{
	return abouts[fault];
}

/* Bytes of the UTF-8 character at text, 0 where it is cut off or none. Overlong forms do not come
 * this far. */
static size_t character_width(const unsigned char *text)
{
	size_t width = text[0] < 0x80   ? 1
	               : text[0] < 0xC2 ? 0
	               : text[0] < 0xE0 ? 2
	               : text[0] < 0xF0 ? 3
	                                : 4;
	for (size_t i = 1; i < width; i++)
		if ((text[i] & 0xC0) != 0x80)
			return 0;
	return width;
}

/* A message quotes the file, so what would move a terminal's cursor or is no whole character
 * becomes '?'. */
static void make_printable(char *text)
{
	unsigned char *at = (unsigned char *)text;
	while (*at) {
		size_t width = character_width(at);
		bool control = *at < 0x20 || *at == 0x7F || (*at == 0xC2 && at[1] < 0xA0);
		if (width == 0 || control)
			memset(at, '?', width ? width : 1);
		at += width ? width : 1;
	}
}

static void copy(char *to, size_t room, const char *from)
{
	snprintf(to, room, "%s", from ? from : "");
	make_printable(to);
}

void diagnose(struct diagnostics *to, enum severity severity, enum fault fault, struct mark mark,
              const char *path, const char *hint, const char *format, ...)
{
	if (severity == ERROR)
		to->errors++;
	if (to->count == MAX_DIAGNOSTICS) {
		to->dropped++;
		return;
	}
	struct diagnostic *new = &to->list[to->count++];
	*new = (struct diagnostic){.severity = severity, .fault = fault, .mark = mark};
	copy(new->path, sizeof new->path, path);
	copy(new->hint, sizeof new->hint, hint);
	va_list list;
	va_start(list, format);
	vsnprintf(new->message, sizeof new->message, format, list);
	va_end(list);
	make_printable(new->message);
}

/* Faults of the whole file have line 0 and so come first. */
static bool stands_before(const struct mark *a, const struct mark *b)
{
	if (a->file != b->file)
		return a->file < b->file;
	return a->line != b->line ? a->line < b->line : a->column < b->column;
}

void diagnostics_sort(struct diagnostics *list)
{
	/* insertion keeps the order of those on one place; twenty at most */
	for (size_t i = 1; i < list->count; i++) {
		struct diagnostic moved = list->list[i];
		size_t k = i;
		for (; k > 0 && stands_before(&moved.mark, &list->list[k - 1].mark); k--)
			list->list[k] = list->list[k - 1];
		list->list[k] = moved;
	}
}
