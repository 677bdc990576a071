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

static bool is_below(const char *path, const char *parent)
{
	size_t length = strlen(parent);
	return strncmp(path, parent, length) == 0 && (path[length] == '.' || path[length] == '[');
}

/* Whether a row may hold the value in whose place the word none stands: a row of the same path, or
 * of a key below it, in the same holder. */
static bool may_replace_none(const struct field *row, const struct field *none)
{
	bool near = strcmp(row->path, none->path) == 0 || is_below(row->path, none->path);
	return near && row->offset == none->offset && !strstr(row->path + strlen(none->path), "[]");
}

/* Whether the word none stands here: the thing is given and empty. */
static bool says_none(const struct field *none, const void *holder)
{
	const void *thing = field_given(none, holder);
	if (((const struct given *)thing)->origin != GIVEN)
		return false;
	bool shared = false;
	/* the row of values that shares the place tells which shape it is */
	for (const struct field *row = fields; row < fields + field_count; row++) {
		if (row->kind == FIELD_NONE || row->kind == FIELD_SECTION ||
		    !may_replace_none(row, none))
			continue;
		shared = true;
		if (row->kind == FIELD_NUMBER)
			return !(((const struct number *)thing)->value > 0);
		if (row->kind == FIELD_RING)
			return ((const struct ring *)thing)->count == 0;
		if (row->kind == FIELD_LIST)
			return ((const struct list *)thing)->count == 0;
	}
	/* nothing else stands in this place: it is the word's own mark */
	return !shared;
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

/* Keys that nothing waits for: another value or the program's own range does their part. */
static bool has_stand_in(const struct field *field)
{
	static const char *const paths[] = {"cell.at", "anchors.product.rating.of_ultimate",
	                                    "cell.casters", "cell.top", "arm.mounting_tilt",
	                                    "arm.mounting_toward", "arm.turned", "arm.history",
	                                    "arm.service_life", "arm.range_limit",
	                                    "arm.swing.moving_mass", "arm.swing.radius",
	                                    "arm.swing.payload_radius",
	                                    "earthquake.building_importance",
	                                    "earthquake.building_overstrength"};
	if (field_when_left_out(field))
		return true;
	for (size_t i = 0; i < sizeof paths / sizeof *paths; i++)
		if (strcmp(field->path, paths[i]) == 0)
			return true;
	return false;
}

static void not_known_line(struct walk *walk, const struct field *field, const char *key)
{
	bool stated = field_given(field, walk->holder)->mark.line > 0;
	if (walk->in_row && !stated)
		return;
	begin_line(walk, key);
	const char *text = field->kind == FIELD_TEXT ? "not given" : "not known";
	flow(walk->writer, !stated && has_stand_in(field) ? "left out" : text);
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

/* Among rows of one path the one that holds something; else the one of the usual shape. */
static const struct field *holding_row(const struct walk *walk, const struct field *first,
                                       size_t *rows)
{
	const struct field *chosen = NULL, *usual = first, *row = first;
	for (; row < fields + field_count && strcmp(row->path, first->path) == 0; row++) {
		/* an empty list looks given; the word none says why it is empty */
		if (row->kind == FIELD_NONE)
			chosen = says_none(row, walk->holder) ? row : chosen;
		else if (field_given(row, walk->holder)->origin != ABSENT)
			chosen = chosen ? chosen : row;
		if (row->kind != FIELD_NONE && row->kind != FIELD_ANY)
			usual = row;
	}
	*rows = (size_t)(row - first);
	return chosen ? chosen : usual;
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

/* Ways of giving the arm, and what not every file speaks of: where nothing of them is stated, one
 * line says so for all their keys. */
static bool is_left_out_block(const struct walk *walk, const char *path)
{
	static const char *const blocks[] = {
		"slab.reinforcement",
		"arm.chain",
		"arm.motion",
		"arm.swing",
		"earthquake",
		"anchors.product.rating.fatigue",
		"anchors.product.strength",
		"anchors.product.strength.aci318",
		"anchors.product.strength.aci318.pullout",
		"anchors.product.strength.aci318.bond",
		"anchors.product.strength.en1992_4",
		"anchors.product.strength.en1992_4.pullout",
		"anchors.product.strength.en1992_4.bond"};
	bool is_block = false;
	for (size_t i = 0; i < sizeof blocks / sizeof *blocks; i++)
		is_block = is_block || strcmp(blocks[i], path) == 0;
	for (size_t i = 0; i < field_count && is_block; i++) {
		const struct field *row = &fields[i];
		bool own = (is_below(row->path, path) || strcmp(row->path, path) == 0) &&
		           !strstr(row->path, "[]");
		if (!own || row->kind == FIELD_SECTION || row->kind == FIELD_ALIAS)
			continue;
		const struct given *given = field_given(row, walk->holder);
		if (given->origin == GIVEN || given->mark.line > 0)
			return false;
	}
	return is_block;
}

static void left_out_line(struct walk *walk, const char *path)
{
	begin_line(walk, path);
	flow(walk->writer, "left out");
	flow_end(walk->writer);
}

static void walk_fields(struct walk *walk)
{
	size_t rows = 1;
	const char *left_out = NULL;
	for (size_t i = 0; i < field_count; i += rows) {
		rows = 1;
		const struct field *field = &fields[i];
		const char *key = own_key(walk, field);
		bool has_value = field->kind != FIELD_SECTION && field->kind != FIELD_ALIAS;
		if (!key || (left_out && is_below(field->path, left_out)))
			continue;
		if (field->kind == FIELD_SECTION && is_left_out_block(walk, field->path)) {
			left_out = field->path;
			left_out_line(walk, key);
		}
		if (!has_value || field->kind == FIELD_SETUPS ||
		    (walk->none && is_below(field->path, walk->none)))
			continue;
		field = holding_row(walk, field, &rows);
		field_lines(walk, field, key);
	}
}

/* All keys of one override: the path itself, or the keys below it. */
static void override_lines(struct writer *writer, const struct cell *cell, const char *path)
{
	struct walk walk = {
		.writer = writer, .cell = cell, .holder = cell, .prefix = "", .shown = "  "};
	bool any = false;
	size_t rows = 1;
	for (size_t i = 0; i < field_count; i += rows) {
		const struct field *field = holding_row(&walk, &fields[i], &rows);
		bool named = strcmp(field->path, path) == 0 || is_below(field->path, path);
		if (!named || strstr(field->path, "[]") ||
		    field_given(field, cell)->origin != GIVEN)
			continue;
		if (field->kind == FIELD_SECTION || field->kind == FIELD_ALIAS ||
		    (field->kind == FIELD_NONE && !says_none(field, cell)))
			continue;
		field_lines(&walk, field, field->path);
		any = true;
	}
	if (!any) {
		/* the setup says unknown, of the key or of all below it */
		begin_line(&walk, path);
		flow(writer, "not known");
		flow_end(writer);
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
