/* What a word means: a key of the cell file, a check, the code of a fault, a verdict. */
#include "pages.h"
#include "phrases.h"
#include <stdio.h>
#include <string.h>

enum { INDENT = 2, TEXT_COLUMN = 16, LIST_COLUMN = 44, NEAREST = 6 };

#define FAULT_ROW(name, code, about) name,
static const enum fault all_faults[] = {FAULTS(FAULT_ROW)};
#undef FAULT_ROW
enum { FAULT_COUNT = sizeof all_faults / sizeof *all_faults };

struct verdict_meaning { enum verdict verdict; const char *meaning; };
static const struct verdict_meaning verdicts[] = {
	{HOLDS, "shown to be within its limit by values that are known and evidenced; exit status 0"},
	{FAILS, "beyond its limit even with everything unknown taken at its most favourable; exit status 1"},
	{UNPROVEN, "neither shown to hold nor shown to fail: something is not known, or its evidence is not enough; "
	           "exit status 3"},
};

static void entry(struct writer *writer, const char *label, const char *text)
{
	if (!text || !*text)
		return;
	writer_pad(writer, INDENT);
	paragraph(writer, label, TEXT_COLUMN, text);
}

static void head_line(struct writer *writer, const char *word, bool *first)
{
	if (!*first)
		writer_newline(writer);
	*first = false;
	writer_style(writer, STYLE_TITLE);
	writer_text(writer, word);
	writer_style(writer, STYLE_PLAIN);
	writer_newline(writer);
}

/* --- keys --- */

/* "cell.parts[2].mass" as `show` prints it means the row "cell.parts[].mass" of the table. */
static void without_indices(const char *word, char *out, size_t room)
{
	size_t n = 0;
	bool inside = false;
	for (; *word && n + 1 < room; word++) {
		inside = inside && *word != ']';
		if (!inside)
			out[n++] = *word;
		inside = inside || *word == '[';
	}
	out[n] = 0;
}

/* The whole path, or its last parts. */
static bool names_field(const char *word, const struct field *field)
{
	size_t length = strlen(word), whole = strlen(field->path);
	if (length == 0 || length > whole || strcmp(field->path + whole - length, word) != 0)
		return false;
	return length == whole || field->path[whole - length - 1] == '.';
}

static void choices_entry(struct writer *writer, const struct field *field)
{
	if (!field->words || (field->kind != FIELD_WORD && field->kind != FIELD_WORDS))
		return;
	writer_pad(writer, INDENT);
	writer_text(writer, "one of");
	flow_begin(writer, TEXT_COLUMN);
	for (size_t i = 0; field->words[i]; i++) {
		flow(writer, i ? ", " : "");
		flow(writer, field->words[i]);
	}
	flow(writer, "; or unknown");
	flow_end(writer);
}

/* A time may be milliseconds or years: its limits are told in the unit of its example. */
static const struct unit *limit_unit(const struct field *field)
{
	struct quantity example;
	bool own = field->dimension == DIM_TIME && field->example &&
	           quantity_parse(field->example, strlen(field->example), DIM_TIME, &example) ==
	                   QUANTITY_OK;
	return own ? example.unit : quantity_display_unit(field->dimension, UNITS_METRIC);
}

static void range_entry(struct writer *writer, const struct field *field)
{
	if (field->kind != FIELD_NUMBER || !(field->high > field->low))
		return;
	writer_pad(writer, INDENT);
	writer_text(writer, "range");
	flow_begin(writer, TEXT_COLUMN);
	char low[40], high[40];
	quantity_write(field->low, limit_unit(field), 6, low, sizeof low);
	quantity_write(field->high, limit_unit(field), 6, high, sizeof high);
	flow(writer, low);
	flow(writer, " to ");
	flow(writer, high);
	flow(writer, "; outside is an error");
	flow_end(writer);
}

/* The meaning, without what has an entry of its own. */
static void meaning_entry(struct writer *writer, const struct field *field, bool another)
{
	char meaning[400];
	const char *rest = field_when_left_out(field);
	size_t length = strlen(field->meaning);
	if (rest)
		length = (size_t)(rest - field->meaning) - strlen(FIELD_LEFT_OUT);
	snprintf(meaning, sizeof meaning, "%.*s", (int)length, field->meaning);
	entry(writer, another ? "or" : "meaning", meaning);
}

static void left_out_entry(struct writer *writer, const struct field *field)
{
	const char *text = "not known: a check that needs it cannot hold";
	struct phrase value;
	if (field_when_left_out(field)) {
		entry(writer, "left out", field_when_left_out(field));
		return;
	}
	bool judged = field->kind != FIELD_TEXT && field->kind != FIELD_NONE &&
	              field->kind != FIELD_SECTION && field->kind != FIELD_ALIAS &&
	              field->kind != FIELD_ANY && field->kind != FIELD_SETUPS;
	if (!judged)
		return;
	if (field->has_fallback && field->kind == FIELD_WORD) {
		entry(writer, "left out", field->words[(int)field->fallback]);
		return;
	}
	if (field->has_fallback) {
		value = phrase_quantity(field->fallback, field->dimension, UNITS_METRIC, 6);
		entry(writer, "left out", value.text);
		return;
	}
	if (field->kind == FIELD_WORDS)
		text = field->words[0];
	entry(writer, "left out", field->must ? "an error: the file cannot do without it" : text);
}

static bool is_needed_by(const struct check *check, const char *path)
{
	for (size_t i = 0; i < sizeof check->needs / sizeof *check->needs && check->needs[i]; i++)
		if (strcmp(check->needs[i], path) == 0)
			return true;
	return false;
}

static void needed_entry(struct writer *writer, const struct field *field)
{
	bool any = false;
	for (size_t i = 0; i < check_count; i++) {
		if (!is_needed_by(&checks[i], field->path))
			continue;
		if (!any) {
			writer_pad(writer, INDENT);
			writer_text(writer, "needed by");
			flow_begin(writer, TEXT_COLUMN);
		}
		flow(writer, any ? ", " : "");
		flow(writer, checks[i].id);
		any = true;
	}
	if (any)
		flow_end(writer);
}

/* The part of a path below a parent: "name" of "cell.parts[].name" below "cell.parts"; NULL when it
 * is not. */
static const char *below(const char *path, const char *parent)
{
	size_t length = strlen(parent);
	if (strncmp(path, parent, length) != 0 || (path[length] != '.' && path[length] != '['))
		return NULL;
	path += length;
	if (strncmp(path, "[]", 2) == 0)
		path += 2;
	return *path == '.' ? path + 1 : path;
}

static void keys_entry(struct writer *writer, const struct field *field)
{
	const char *before = "";
	bool any = false;
	for (size_t i = 0; i < field_count; i++) {
		const char *key = below(fields[i].path, field->path);
		bool direct = key && !strpbrk(key, ".[");
		if (!direct || strcmp(key, before) == 0 || fields[i].kind == FIELD_ALIAS)
			continue;
		if (!any) {
			writer_pad(writer, INDENT);
			writer_text(writer, "keys");
			flow_begin(writer, TEXT_COLUMN);
		}
		flow(writer, any ? ", " : "");
		flow(writer, key);
		before = key;
		any = true;
	}
	if (any)
		flow_end(writer);
}

static void dimension_entry(struct writer *writer, const struct field *field)
{
	if (!field->example || !*field->example)
		return;
	writer_pad(writer, INDENT);
	writer_text(writer, "write");
	flow_begin(writer, TEXT_COLUMN);
	flow(writer, field->example);
	if (field->kind == FIELD_NUMBER) {
		flow(writer, " (");
		flow(writer, dimension_name(field->dimension));
		flow(writer, ")");
	}
	flow_end(writer);
}

static void explain_row(struct writer *writer, const struct field *field, bool another)
{
	meaning_entry(writer, field, another);
	if (field->kind == FIELD_ALIAS) {
		entry(writer, "short for", field->alias);
		return;
	}
	dimension_entry(writer, field);
	choices_entry(writer, field);
	range_entry(writer, field);
	left_out_entry(writer, field);
	entry(writer, "found", field->where_found);
}

static bool is_row_of(const struct field *row, const struct field *first)
{
	return row < fields + field_count && strcmp(row->path, first->path) == 0;
}

/* none, any, slotted: a word in place of a value */
static bool is_word_row(const struct field *row)
{
	return row->kind == FIELD_NONE || row->kind == FIELD_ANY;
}

/* The row of a path that holds the value; its first where there are words alone. */
static const struct field *value_row(const struct field *first)
{
	for (const struct field *row = first; is_row_of(row, first); row++)
		if (!is_word_row(row))
			return row;
	return first;
}

/* All rows of one path together: the file may hold either shape. */
static void explain_field(struct writer *writer, const struct field *field, bool *first)
{
	bool another = false;
	head_line(writer, field->path, first);
	/* the value before the words that may stand in its place */
	for (int words = 0; words < 2; words++)
		for (const struct field *row = field; is_row_of(row, field); row++) {
			if (is_word_row(row) != (words == 1))
				continue;
			explain_row(writer, row, another);
			another = true;
		}
	keys_entry(writer, field);
	needed_entry(writer, field);
}

static void explain_fields(struct writer *writer, const char *word, bool *first)
{
	for (size_t i = 0; i < field_count; i++) {
		bool repeated = i > 0 && strcmp(fields[i].path, fields[i - 1].path) == 0;
		if (!repeated && names_field(word, &fields[i]))
			explain_field(writer, &fields[i], first);
	}
}

/* --- checks, faults, verdicts --- */

static void explain_check(struct writer *writer, const char *word, bool *first)
{
	const struct check *check = check_find(word);
	if (!check)
		return;
	head_line(writer, check->id, first);
	entry(writer, "check", check->title);
	entry(writer, "source", check->source);
	entry(writer, "range", check->range);
	if (check->needs_loads)
		entry(writer, "needs", "the loads: parts, base and the arm's reactions");
	if (!check->needs[0])
		return;
	writer_pad(writer, INDENT);
	writer_text(writer, "needs");
	flow_begin(writer, TEXT_COLUMN);
	for (size_t i = 0; i < sizeof check->needs / sizeof *check->needs && check->needs[i]; i++) {
		flow(writer, i ? ", " : "");
		flow(writer, check->needs[i]);
	}
	flow_end(writer);
}

static bool same_but_case(const char *a, const char *b)
{
	for (; *a && *b; a++, b++) {
		char x = *a >= 'a' && *a <= 'z' ? (char)(*a - 'a' + 'A') : *a;
		char y = *b >= 'a' && *b <= 'z' ? (char)(*b - 'a' + 'A') : *b;
		if (x != y)
			return false;
	}
	return *a == *b;
}

static void explain_fault(struct writer *writer, const char *word, bool *first)
{
	for (size_t i = 0; i < FAULT_COUNT; i++) {
		if (!same_but_case(word, fault_code(all_faults[i])))
			continue;
		head_line(writer, fault_code(all_faults[i]), first);
		entry(writer, "error", fault_about(all_faults[i]));
		entry(writer, "effect",
		      "nothing is computed, exit status 2; the message says what to write instead");
	}
}

static void explain_verdict(struct writer *writer, const char *word, bool *first)
{
	for (size_t i = 0; i < sizeof verdicts / sizeof *verdicts; i++) {
		if (!same_but_case(word, verdict_word(verdicts[i].verdict)))
			continue;
		head_line(writer, verdict_word(verdicts[i].verdict), first);
		entry(writer, "verdict", verdicts[i].meaning);
	}
}

/* --- what there is --- */

static void list_line(struct writer *writer, const char *word, const char *meaning)
{
	writer_pad(writer, INDENT);
	paragraph(writer, word, LIST_COLUMN, meaning ? meaning : "");
}

static void list_words(struct writer *writer)
{
	writer_style(writer, STYLE_TITLE);
	writer_text(writer, "Keys of the cell file");
	writer_style(writer, STYLE_PLAIN);
	writer_newline(writer);
	for (size_t i = 0; i < field_count; i++)
		if (i == 0 || strcmp(fields[i].path, fields[i - 1].path) != 0)
			list_line(writer, fields[i].path, value_row(&fields[i])->meaning);
	writer_title(writer, "Checks");
	for (size_t i = 0; i < check_count; i++)
		list_line(writer, checks[i].id, checks[i].title);
	writer_title(writer, "Codes of errors");
	for (size_t i = 0; i < FAULT_COUNT; i++)
		list_line(writer, fault_code(all_faults[i]), fault_about(all_faults[i]));
	writer_title(writer, "Verdicts");
	for (size_t i = 0; i < sizeof verdicts / sizeof *verdicts; i++)
		list_line(writer, verdict_word(verdicts[i].verdict), verdicts[i].meaning);
}

/* Words near the one asked for, by spelling or because they speak of it. */
struct near_words { const char *list[NEAREST]; size_t count; };

static void keep(struct near_words *near, const char *word)
{
	for (size_t i = 0; i < near->count; i++)
		if (strcmp(near->list[i], word) == 0)
			return;
	if (near->count < NEAREST)
		near->list[near->count++] = word;
}

static const char *last_part(const char *path)
{
	const char *dot = strrchr(path, '.');
	return dot ? dot + 1 : path;
}

static struct near_words find_near(const char *word)
{
	struct near_words near = {.count = 0};
	size_t apart;
	for (size_t i = 0; i < check_count; i++)
		if (word_is_near(word, checks[i].id, &apart))
			keep(&near, checks[i].id);
	for (size_t i = 0; i < field_count; i++)
		if (word_is_near(word, fields[i].path, &apart) ||
		    word_is_near(word, last_part(fields[i].path), &apart))
			keep(&near, fields[i].path);
	for (size_t i = 0; i < field_count && strlen(word) >= 3; i++)
		if (strstr(fields[i].path, word) ||
		    (fields[i].meaning && strstr(fields[i].meaning, word)))
			keep(&near, fields[i].path);
	return near;
}

static void nothing_found(struct writer *writer, const char *word)
{
	struct near_words near = find_near(word);
	flow_begin(writer, 0);
	flow(writer, "no key, check or code is called '");
	flow(writer, word);
	flow(writer, near.count ? "'; near to it: " : "'; explain without a word lists all");
	for (size_t i = 0; i < near.count; i++) {
		flow(writer, i ? ", " : "");
		flow(writer, near.list[i]);
	}
	flow_end(writer);
}

bool page_explain(const char *word, bool colour, write_function *write, void *user, bool *found)
{
	struct writer writer;
	char path[160];
	bool first = true;
	writer_open(&writer, write, user, colour);
	if (!word || !*word) {
		list_words(&writer);
		*found = true;
		return writer_close(&writer);
	}
	without_indices(word, path, sizeof path);
	explain_check(&writer, word, &first);
	explain_fields(&writer, path, &first);
	explain_fault(&writer, word, &first);
	explain_verdict(&writer, word, &first);
	*found = !first;
	if (first)
		nothing_found(&writer, word);
	return writer_close(&writer);
}
