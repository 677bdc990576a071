/* Cell files to fill in: keys of the field table without values (not known), each with a comment
 * that says what to write, what it is and where it is found. */
#include "blank_tables.h"
#include "pages.h"
#include "phrases.h"
#include <stdio.h>
#include <string.h>

enum { COMPACT_COLUMN = 24, COMMENT_COLUMN = 36, COMMENT_ROOM = 640 };
/* letters of a list of words that are written out: in the long files, beside a key, within
 * braces */
enum { ALL_WORDS = 200, FEW_WORDS = 60, BRACED_WORDS = 16 };

static const struct blank_sample *sample_of(const char *path)
{
	for (size_t i = 0; i < blank_sample_count; i++)
		if (strcmp(blank_samples[i].path, path) == 0)
			return &blank_samples[i];
	return NULL;
}

/* The row whose meaning and place describe a key best: the one of its path that holds the value,
 * and no word in its place. */
static const struct field *describing_row(const char *path)
{
	const struct blank_sample *sample = sample_of(path);
	const struct field *first = field_find(
		sample && sample->described_by ? sample->described_by : path);
	const struct field *best = first, *row = first;
	for (; row && row < fields + field_count && strcmp(row->path, first->path) == 0; row++)
		if (row->kind != FIELD_NONE && row->kind != FIELD_ANY)
			best = row;
	return best;
}

/* --- comments --- */

struct comment { char text[COMMENT_ROOM]; size_t length; };

static void add(struct comment *comment, const char *text, size_t length)
{
	size_t room = comment->length < COMMENT_ROOM ? COMMENT_ROOM - 1 - comment->length : 0;
	if (length > room)
		length = room;
	memcpy(comment->text + comment->length, text, length);
	comment->length += length;
	comment->text[comment->length] = 0;
}

static void add_text(struct comment *comment, const char *text)
{
	add(comment, text, strlen(text));
}

/* "sound | damaged", or the example; of a list longer than `most` the example and that there is
 * more */
static void add_choices(struct comment *comment, const struct field *row, size_t most)
{
	size_t length = 0;
	for (size_t i = 0; row->words && row->words[i]; i++)
		length += strlen(row->words[i]) + 3;
	bool listed = row->kind == FIELD_WORD && row->words != concrete_classes && length > 0;
	if (!listed || length > most) {
		add_text(comment, row->example ? row->example : "");
		add_text(comment, listed ? " ..." : "");
		return;
	}
	for (size_t i = 0; row->words[i]; i++) {
		add_text(comment, i ? " | " : "");
		add_text(comment, row->words[i]);
	}
}

/* How much of a sentence is said: all of it, or up to a pause that leaves some sense. */
enum detail { WHOLE, CLAUSE, SHORT, NOTHING };

static size_t said_length(const char *text, enum detail detail)
{
	static const char *const stops[] = {
		[WHOLE] = "", [CLAUSE] = ";:", [SHORT] = ";:,", [NOTHING] = ""};
	const size_t least = 12;
	if (detail == NOTHING)
		return 0;
	if (detail == WHOLE || strlen(text) <= least)
		return strlen(text);
	return least + strcspn(text + least, stops[detail]);
}

static void add_part(struct comment *comment, const char *before, const char *text,
                     enum detail detail, const char *behind)
{
	size_t length = text ? said_length(text, detail) : 0;
	if (length == 0)
		return;
	add_text(comment, before);
	add(comment, text, length);
	add_text(comment, behind);
}

static struct comment compose(const char *path, size_t most, enum detail meaning, enum detail where)
{
	struct comment out = {.length = 0, .text = ""};
	const struct blank_sample *sample = sample_of(path);
	const struct field *row = describing_row(path);
	if (sample)
		add_text(&out, most < ALL_WORDS && sample->brief ? sample->brief : sample->text);
	else
		add_choices(&out, row, most);
	add_part(&out, out.length ? "; " : "", row->meaning, meaning, "");
	add_part(&out, out.length ? " (" : "(", row->where_found, where, ")");
	return out;
}

/* The richest comment that fits beside the key; what cannot be cut without harm wraps. */
static struct comment compose_compact(const char *path, size_t room)
{
	static const enum detail levels[][2] = {
		{CLAUSE, CLAUSE}, {CLAUSE, SHORT}, {NOTHING, CLAUSE}, {NOTHING, SHORT}, {NOTHING, NOTHING}};
	size_t last = sizeof levels / sizeof *levels - 1;
	/* the distance counts for edges, joints and holes alike: never said in half */
	if (strcmp(path, "slab.clear") == 0)
		return compose(path, FEW_WORDS, CLAUSE, SHORT);
	for (size_t i = 0; i < last; i++) {
		struct comment out = compose(path, FEW_WORDS, levels[i][0], levels[i][1]);
		if (out.length <= room)
			return out;
	}
	return compose(path, FEW_WORDS, levels[last][0], levels[last][1]);
}

static void comment_line(struct writer *writer, bool compact, const char *text)
{
	flow_begin_prefixed(writer, compact ? COMPACT_COLUMN : COMMENT_COLUMN, "# ");
	flow(writer, text);
	flow_end(writer);
}

/* --- keys --- */

static size_t depth_of(const char *path)
{
	size_t depth = 0;
	for (; *path; path++)
		depth += *path == '.';
	return depth;
}

/* Length of the path's first `parts` parts. */
static size_t prefix_length(const char *path, size_t parts)
{
	size_t length = 0;
	while (path[length] && (path[length] != '.' || --parts > 0))
		length++;
	return length;
}

static void open_section(struct writer *writer, const char *path, size_t parts, bool compact)
{
	char whole[128];
	size_t length = prefix_length(path, parts);
	snprintf(whole, sizeof whole, "%.*s", (int)length, path);
	const char *dot = strrchr(whole, '.');
	const struct field *row = field_find(whole);
	if (!compact && parts == 1)
		writer_newline(writer);
	writer_pad(writer, 2 * (parts - 1));
	writer_text(writer, dot ? dot + 1 : whole);
	writer_text(writer, ":");
	if (row && row->kind == FIELD_SECTION && (!compact || parts > 2))
		comment_line(writer, compact, row->meaning);
	else
		writer_newline(writer);
}

/* Opens the maps that the key stands in and that the key before it did not stand in. */
static void open_sections(struct writer *writer, const char *before, const char *path, size_t depth,
                          bool compact)
{
	for (size_t parts = 1; parts <= depth; parts++) {
		size_t length = prefix_length(path, parts);
		bool same = strncmp(before, path, length) == 0 &&
		            (before[length] == '.' || before[length] == 0);
		if (!same)
			open_section(writer, path, parts, compact);
	}
}

/* Of the few keys that do not stand empty. */
static void write_value(struct writer *writer, const char *path)
{
	for (size_t i = 0; i < blank_value_count; i++)
		if (strcmp(blank_values[i].path, path) == 0) {
			writer_text(writer, " ");
			writer_text(writer, blank_values[i].value);
		}
}

static void key_line(struct writer *writer, const char *path, bool compact)
{
	const char *dot = strrchr(path, '.');
	size_t depth = depth_of(path);
	if (depth == 0 && !compact)
		writer_newline(writer);
	writer_pad(writer, 2 * depth);
	writer_text(writer, dot ? dot + 1 : path);
	writer_text(writer, ":");
	write_value(writer, path);
	size_t column = writer->column + 1 > COMPACT_COLUMN ? writer->column + 1 : COMPACT_COLUMN;
	struct comment comment = compact ? compose_compact(path, PAGE_WIDTH - column - 2)
	                                 : compose(path, ALL_WORDS, WHOLE, WHOLE);
	comment_line(writer, compact, comment.text);
}

static bool is_inlined(const char *path)
{
	const char *dot = strrchr(path, '.');
	for (size_t i = 0; dot && i < blank_inlined_count; i++)
		if (strlen(blank_inlined[i]) == (size_t)(dot - path) &&
		    strncmp(blank_inlined[i], path, (size_t)(dot - path)) == 0)
			return true;
	return false;
}

static bool same_parent(const char *a, const char *b)
{
	const char *dot = strrchr(a, '.');
	size_t length = dot ? (size_t)(dot - a) + 1 : 0;
	return strncmp(a, b, length) == 0 && !strchr(b + length, '.');
}

static struct comment inline_comment(const char *const paths[], size_t count)
{
	struct comment out = {.length = 0, .text = ""};
	for (size_t i = 0; i < count; i++) {
		struct comment one = compose(paths[i], BRACED_WORDS, NOTHING, NOTHING);
		add_part(&out, i ? "; " : "", count > 1 ? strrchr(paths[i], '.') + 1 : "", WHOLE,
		         " ");
		add_text(&out, one.text);
	}
	add_part(&out, " (", describing_row(paths[0])->where_found, SHORT, ")");
	return out;
}

/* "hole: {diameter: , depth: }  # diameter 12 mm; depth 85 mm (the anchor's data sheet)"; the
 * comment stands above where there is no room beside. */
static void inline_line(struct writer *writer, const char *const paths[], size_t count)
{
	char line[PAGE_WIDTH + 1], parent[128];
	snprintf(parent, sizeof parent, "%.*s", (int)(strrchr(paths[0], '.') - paths[0]), paths[0]);
	const char *dot = strrchr(parent, '.');
	size_t indent = 2 * depth_of(parent);
	int length = snprintf(line, sizeof line, "%*s%s: {", (int)indent, "",
	                      dot ? dot + 1 : parent);
	for (size_t i = 0; i < count && length < PAGE_WIDTH; i++)
		length += snprintf(line + length, sizeof line - (size_t)length,
		                   "%s%s: ", i ? ", " : "", strrchr(paths[i], '.') + 1);
	struct comment comment = inline_comment(paths, count);
	bool beside = (size_t)length + 4 + comment.length <= PAGE_WIDTH;
	if (!beside) {
		flow_begin_prefixed(writer, indent, "# ");
		flow(writer, comment.text);
		flow_end(writer);
	}
	writer_text(writer, line);
	writer_text(writer, "}");
	if (beside)
		comment_line(writer, true, comment.text);
	else
		writer_newline(writer);
}

static size_t listed_keys(enum blank_purpose purpose, const char *out[])
{
	static const unsigned mask[] = {
		[BLANK_NEED] = FOR_NEED, [BLANK_LOADS] = FOR_SHEET, [BLANK_SURVEY] = FOR_SURVEY,
		[BLANK_MOTION] = FOR_MOTION, [BLANK_STRENGTH] = FOR_SHEET | FOR_STRENGTH};
	size_t count = 0;
	for (size_t i = 0; i < blank_key_count && count < MAX_BLANK_KEYS; i++)
		if (blank_keys[i].purposes & mask[purpose])
			out[count++] = blank_keys[i].path;
	return count;
}

static void write_keys(struct writer *writer, enum blank_purpose purpose)
{
	const char *paths[MAX_BLANK_KEYS], *before = "";
	size_t count = listed_keys(purpose, paths), used;
	bool compact = purpose == BLANK_NEED;
	for (size_t i = 0; i < count; i += used) {
		bool grouped = compact && is_inlined(paths[i]);
		size_t depth = depth_of(paths[i]);
		used = 1;
		while (grouped && i + used < count && same_parent(paths[i], paths[i + used]))
			used++;
		if (grouped)
			depth--;
		open_sections(writer, before, paths[i], depth, compact);
		if (grouped)
			inline_line(writer, paths + i, used);
		else
			key_line(writer, paths[i], compact);
		before = paths[i];
	}
}

const char *blank_purpose_word(enum blank_purpose purpose)
{
	static const char *const words[] = {
		[BLANK_NEED] = "need", [BLANK_LOADS] = "loads", [BLANK_SURVEY] = "survey",
		[BLANK_MOTION] = "motion", [BLANK_STRENGTH] = "strength"};
	return words[purpose];
}

static const char *purpose_text(enum blank_purpose purpose)
{
	static const char *const texts[] = {
		[BLANK_NEED] = "",
		[BLANK_LOADS] = "anchor loads from masses, reactions of the arm and the pattern, "
				"and the checks on them",
		[BLANK_SURVEY] = "the floor before the cell comes",
		[BLANK_MOTION] =
			"anchor loads from masses, the arm's own motion by its link values, and "
			"the pattern, and the checks on them",
		[BLANK_STRENGTH] =
			"anchor loads from masses, reactions of the arm and the pattern, and the "
			"ways in which anchors fail by the design codes"};
	return texts[purpose];
}

bool page_blank(enum blank_purpose purpose, write_function *write, void *user)
{
	struct writer writer;
	writer_open(&writer, write, user, false);
	writer_text(&writer, "standfast: 1");
	comment_line(&writer, true,
	             "an empty key is not known; more on a key: standfast explain KEY");
	if (purpose != BLANK_NEED) {
		flow_begin_prefixed(&writer, 0, "# ");
		flow(&writer, "for ");
		flow(&writer, purpose_text(purpose));
		flow_end(&writer);
	}
	write_keys(&writer, purpose);
	return writer_close(&writer);
}
