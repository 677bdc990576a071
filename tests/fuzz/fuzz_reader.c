/* Fuzz target: any bytes through the reader. It must return, leak nothing, place every mark inside
 * the text, and call a cell good only if what it promises of a good cell is there.
 *
 *   clang -fsanitize=fuzzer,address,undefined ... && ./fuzz_reader -max_len=4096 corpus */
#include "../../src/input/reader.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length);

static void require(bool condition, const char *what)
{
	if (condition)
		return;
	fprintf(stderr, "broken promise: %s\n", what);
	abort();
}

/* Characters of a line (1-based) as UTF-8; bytes that are not count each. -1: no such line. */
static long characters_of_line(const uint8_t *bytes, size_t length, uint32_t line)
{
	size_t at = length >= 3 && memcmp(bytes, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
	for (uint32_t now = 1; now < line; at++) {
		if (at >= length)
			return -1;
		now += bytes[at] == '\n';
	}
	long count = 0;
	for (; at < length && bytes[at] != '\n'; at++)
		count += (bytes[at] & 0xC0) != 0x80;
	return count;
}

static void check_mark(const uint8_t *bytes, size_t length, const struct mark *mark)
{
	if (mark->line == 0)
		return;
	long characters = characters_of_line(bytes, length, mark->line);
	require(characters >= 0, "a mark's line is in the text");
	require(mark->column >= 1 && (long)mark->column <= characters + 1,
	        "a mark's column is in its line");
	require(mark->width >= 1, "a mark has a width");
}

static void check_diagnostics(const uint8_t *bytes, size_t length, const struct diagnostics *list)
{
	for (size_t i = 0; i < list->count; i++) {
		const struct diagnostic *one = &list->list[i];
		check_mark(bytes, length, &one->mark);
		require(one->message[0] != 0, "a diagnostic says something");
		if (i > 0)
			require(one->mark.line >= list->list[i - 1].mark.line,
			        "diagnostics are sorted by line");
	}
}

static void check_cell(const uint8_t *bytes, size_t length, const struct cell *cell)
{
	require(is_known(cell->version) && cell->version.value >= 1 && cell->version.value <= 1,
	        "the version is 1");
	require(cell->anchors.at_given.mark.line > 0, "anchors.at stands in the file");
	require(cell->anchors.count <= MAX_ANCHORS, "anchors are within the limit");
	for (size_t i = 0; i < cell->anchors.count; i++) {
		require(isfinite(cell->anchors.at[i].x) && isfinite(cell->anchors.at[i].y),
		        "anchors are finite");
		check_mark(bytes, length, &cell->anchors.at_mark[i]);
	}
	const struct setup *setup = cell->setups.rows;
	for (size_t i = 0; i < cell->setups.count; i++)
		require(setup[i].cell && setup[i].name.value, "every setup has its cell and name");
	require(cell->title.value && cell->record.date.value,
	        "absent texts are empty, not missing");
	require(cell->methods.count > 0, "there is a method");
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length)
{
	static struct diagnostics list;
	struct arena arena;
	const struct cell *cell = NULL;
	arena_open(&arena, NULL, NULL);
	memset(&list, 0, sizeof list);
	enum status status = cell_read(&arena, bytes, length, 1, &list, &cell);
	check_diagnostics(bytes, length, &list);
	require((status == DONE) == (cell != NULL), "a cell comes with DONE only");
	require((status == DONE) == (list.errors == 0), "an error comes without DONE only");
	if (cell)
		check_cell(bytes, length, cell);
	arena_close(&arena);
	return 0;
}
