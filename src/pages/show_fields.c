/* Key by key, in the order of the field table: the value, whether it is a default, or that it is
 * not known. */
#include "show_parts.h"
#include <stdio.h>
#include <string.h>

/* Where a walk over the table stands: rows of one holder, below a prefix of paths. */
struct walk {
	struct writer *writer;
	const struct cell *cell;
	const void *holder;
	const char *prefix;          /* "" or "cell.parts[]." */
	const char *shown;           /* what is written in its place: "cell.parts[2]." */
	const char *none;            /* path of the word none, or NULL: its children are skipped */
	bool in_row;                 /* keys left out of a row may be alternatives: not listed */
};

/* The rest of the path when the row lies in the walk's holder itself, else NULL. */
static const char *own_key(const struct walk *walk, const struct field *field)
{
	size_t length = strlen(walk->prefix);
	if (strncmp(field->path, walk->prefix, length) != 0)
		return NULL;
	return strstr(field->path + length, "[]") ? NULL : field->path + length;
}

/* Whether the word none stands here: the thing is given and empty. */
static bool says_none(const struct field *none, const void *holder)
{
	const void *thing = field_given(none, holder);
	if (((const struct given *)thing)->origin != GIVEN)
		return false;
	/* the row of values that shares the place tells which shape it is */
	for (const struct field *row = none + 1; row < fields + field_count; row++) {
		if (row->offset != none->offset || row->kind == FIELD_SECTION ||
		    row->kind == FIELD_ALIAS)
			continue;
		if (row->kind == FIELD_NUMBER)
			return !(((const struct number *)thing)->value > 0);
		if (row->kind == FIELD_RING)
			return ((const struct ring *)thing)->count == 0;
		if (row->kind == FIELD_LIST)
			return ((const struct list *)thing)->count == 0;
	}
	return false;
}

static bool is_below(const char *path, const char *parent)
{
	size_t length = strlen(parent);
	return strncmp(path, parent, length) == 0 && (path[length] == '.' || path[length] == '[');
}

static void begin_line(struct walk *walk, const char *key)
{
	writer_text(walk->writer, walk->shown);
	writer_text(walk->writer, key);
	writer_pad(walk->writer, SHOW_VALUE);
	flow_begin(walk->writer, SHOW_VALUE);
}

static void walk_fields(struct walk *walk);

static void show_rows(struct walk *walk, const struct field *field, const struct list *list)
{
	for (size_t i = 0; i < list->count; i++) {
		char prefix[128], shown[160];
		snprintf(prefix, sizeof prefix, "%s[].", field->path);
		snprintf(shown, sizeof shown, "%s%s[%zu].", walk->shown,
		         field->path + strlen(walk->prefix), i + 1);
		struct walk row = {.writer = walk->writer,
		                   .cell = walk->cell,
		                   .prefix = prefix,
		                   .shown = shown,
		                   .holder = (const char *)list->rows + i * field->row_size,
		                   .in_row = true};
		walk_fields(&row);
	}
}

static void not_known_line(struct walk *walk, const struct field *field, const char *key)
{
	bool stated = field_given(field, walk->holder)->mark.line > 0;
	if (walk->in_row && !stated)
		return;
	begin_line(walk, key);
	flow(walk->writer, field->kind == FIELD_TEXT ? "not given" : "not known");
	flow_end(walk->writer);
}

static void value_line(struct walk *walk, const struct field *field, const char *key)
{
	begin_line(walk, key);
	flow_field_value(walk->writer, walk->cell, field, walk->holder);
	if (field_given(field, walk->holder)->origin == DEFAULT)
		flow(walk->writer, " (default)");
	flow_end(walk->writer);
}

/* Among rows of one path the one that holds something; none: the last, which names the usual
 * shape. */
static const struct field *holding_row(const struct walk *walk, const struct field *first,
                                       size_t *rows)
{
	const struct field *chosen = NULL, *row = first;
	for (; row < fields + field_count && strcmp(row->path, first->path) == 0; row++) {
		if (row->kind == FIELD_NONE ? says_none(row, walk->holder)
		                            : field_given(row, walk->holder)->origin != ABSENT)
			chosen = chosen ? chosen : row;
	}
	*rows = (size_t)(row - first);
	return chosen ? chosen : row - 1;
}

/* Keys of the whole file that are lists of rows: how many, then each row. */
static void list_lines(struct walk *walk, const struct field *field, const char *key)
{
	const struct list *list = (const struct list *)(const void *)field_given(field,
	                                                                         walk->holder);
	if (!is_known(*list)) {
		not_known_line(walk, field, key);
		return;
	}
	show_rows(walk, field, list);
}

static void field_lines(struct walk *walk, const struct field *field, const char *key)
{
	bool known = field_given(field, walk->holder)->origin != ABSENT;
	if (field->kind == FIELD_NONE) {
		if (!says_none(field, walk->holder))
			return;
		walk->none = field->path;
		value_line(walk, field, key);
	} else if (field->kind == FIELD_LIST) {
		list_lines(walk, field, key);
	} else if (known) {
		value_line(walk, field, key);
	} else {
		not_known_line(walk, field, key);
	}
}

static void walk_fields(struct walk *walk)
{
	size_t rows = 1;
	for (size_t i = 0; i < field_count; i += rows) {
		rows = 1;
		const struct field *field = &fields[i];
		const char *key = own_key(walk, field);
		bool has_value = field->kind != FIELD_SECTION && field->kind != FIELD_ALIAS;
		if (!key || !has_value || field->kind == FIELD_SETUPS ||
		    (walk->none && is_below(field->path, walk->none)))
			continue;
		field = holding_row(walk, field, &rows);
		field_lines(walk, field, key);
	}
}

/* All keys of one override: the path itself, or the keys below it. */
static void override_lines(struct writer *writer, const struct cell *cell, const char *path)
{
	bool any = false;
	for (size_t i = 0; i < field_count; i++) {
		const struct field *field = &fields[i];
		bool named = strcmp(field->path, path) == 0 || is_below(field->path, path);
		if (!named || strstr(field->path, "[]") ||
		    field_given(field, cell)->origin != GIVEN)
			continue;
		if (field->kind == FIELD_SECTION || field->kind == FIELD_ALIAS ||
		    (field->kind == FIELD_NONE && !says_none(field, cell)))
			continue;
		struct walk walk = {.writer = writer,
		                    .cell = cell,
		                    .holder = cell,
		                    .prefix = "",
		                    .shown = "  "};
		field_lines(&walk, field, field->path);
		any = true;
	}
	if (!any) {
		writer_pad(writer, 2);
		writer_text(writer, path);
		writer_newline(writer);
	}
}

static void setup_lines(struct writer *writer, const struct cell *cell)
{
	const struct setup *setups = cell->setups.rows;
	for (size_t i = 0; i < cell->setups.count; i++) {
		char head[40];
		snprintf(head, sizeof head, "setups[%zu].name", i + 1);
		paragraph(writer, head, SHOW_VALUE, setups[i].name.value);
		const struct text *paths = setups[i].overridden.rows;
		for (size_t k = 0; k < setups[i].overridden.count; k++)
			override_lines(writer, setups[i].cell, paths[k].value);
	}
}

void show_fields(struct writer *writer, const struct cell *cell)
{
	struct walk walk = {
		.writer = writer, .cell = cell, .holder = cell, .prefix = "", .shown = ""};
	walk_fields(&walk);
	setup_lines(writer, cell);
}
