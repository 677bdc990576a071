/* Setups: every row is the whole cell with some fields overridden by their paths. */
#include "read.h"
#include <stdio.h>
#include <string.h>

/* What belongs to the file and not to a way of setting the cell up. */
static const char *const shared[] = {"standfast", "title",   "record",     "show",
                                     "setups",    "methods", "anchors.at", NULL};

static bool is_at_or_below(const char *path, const char *parent)
{
	size_t length = strlen(parent);
	return strncmp(path, parent, length) == 0 && (path[length] == 0 || path[length] == '.');
}

bool read_refuse_override(struct reader *reader, const struct node *node, const struct place *place)
{
	for (const char *const *path = shared; *path; path++) {
		if (!is_at_or_below(place->table, *path))
			continue;
		bool holes = strcmp(*path, "anchors.at") == 0;
		read_fault(reader, FAULT_SETUP, node->key ? node->key_mark : node->mark, place,
		           holes ? "the holes are drilled once: write a second cell file for "
		                   "another pattern"
		                 : "it belongs to the whole file: take it out of the setup",
		           "a setup cannot override %s", *path);
		return true;
	}
	return false;
}

/* The nearest path with this last part that a setup may hold. Texts are no part of a way of setting
 * up: a setup's own name is no engineer's name. */
static const char *place_elsewhere(const char *parent, const char *key)
{
	const char *paths[8];
	size_t count = field_elsewhere(parent, key, paths, 8);
	for (size_t i = 0; i < count; i++)
		if (!strchr(paths[i], '[') && field_find(paths[i])->kind != FIELD_TEXT)
			return paths[i];
	return NULL;
}

/* The nearest known path to a misspelt one, as far as its last part goes. */
static void suggest_path(const char *path, char hint[DIAGNOSTIC_HINT])
{
	const char *dot = strrchr(path, '.');
	char parent[PATH_ROOM] = "";
	if (dot && (size_t)(dot - path) < sizeof parent)
		memcpy(parent, path, (size_t)(dot - path));
	const char *near = field_suggest(parent, dot ? dot + 1 : path);
	const char *elsewhere = place_elsewhere(parent, dot ? dot + 1 : path);
	size_t apart;
	if (dot && strcmp(dot, ".name") == 0)
		snprintf(hint, DIAGNOSTIC_HINT, "write name alone: it is the setup's own name");
	else if (!dot && word_is_near(path, "name", &apart))
		snprintf(hint, DIAGNOSTIC_HINT, "did you mean 'name'?");
	else if (near)
		snprintf(hint, DIAGNOSTIC_HINT, "did you mean '%s%s%s'?", parent, dot ? "." : "",
		         near);
	else if (elsewhere)
		snprintf(hint, DIAGNOSTIC_HINT, "write the whole path: did you mean '%s'?",
		         elsewhere);
	else
		snprintf(hint, DIAGNOSTIC_HINT,
		         "write the whole path of a field, such as arm.mount");
}

static void unknown_path(struct reader *reader, const struct node *node, const struct place *place)
{
	char hint[DIAGNOSTIC_HINT];
	if (strchr(node->key, '[')) {
		read_fault(reader, FAULT_SETUP, node->key_mark, place,
		           "write the whole list, such as cell.parts: [...]",
		           "a setup cannot override a single row");
		return;
	}
	suggest_path(node->key, hint);
	read_fault(reader, FAULT_UNKNOWN_KEY, node->key_mark, place, hint, "unknown path '%.60s'",
	           node->key);
}

/* arm and arm.mount in one setup: which of them holds would be a guess. */
static void check_overlap(struct reader *reader, const struct node *row, const struct node *node,
                          const struct place *place)
{
	for (const struct node *other = row->first; other; other = other->next)
		if (other != node && is_at_or_below(node->key, other->key))
			read_fault(reader, FAULT_SETUP, node->key_mark, place, "keep one of them",
			           "'%.40s' is overridden by '%.40s' as well", node->key, other->key);
}

/* The key is a path of the table, whatever map it stands in; a row of a list has no path of its
 * own. Returns the last node that was read. */
static const struct node *override(struct reader *reader, const struct node *row,
                                   const struct node *node, const struct place *setup,
                                   struct cell *cell)
{
	struct place here = place_key(setup, node->key);
	snprintf(here.table, sizeof here.table, "%s", node->key);
	const struct field *rows = strchr(node->key, '[') ? NULL : field_find(here.table);
	if (!rows) {
		unknown_path(reader, node, &here);
		return node;
	}
	check_overlap(reader, row, node, &here);
	if (read_cut_number(reader, rows, node, &here))
		return node->next;
	read_field(reader, rows, node, row, &here, cell);
	return node;
}

/* Results name the setup, so one without a name gets its number. */
static void read_name(struct reader *reader, const struct node *row, const struct place *place,
                      size_t index, struct text *out)
{
	const struct node *node = node_find(row, "name");
	struct place here = place_key(place, "name");
	*out = (struct text){.given.mark = row->mark};
	if (node && !node_is_blank(node))
		read_text(reader, node, &here, out);
	if (is_known(*out))
		return;
	out->value = arena_format(reader->arena, "setup %zu", index + 1);
	out->given.origin = DEFAULT;
}

static bool is_name(const struct node *node)
{
	return strcmp(node->key, "name") == 0;
}

/* Pages say what a setup changes, in the user's own words. */
static void note_overridden(struct reader *reader, const struct node *row, struct list *out)
{
	*out = (struct list){.given = {row->mark, GIVEN}};
	struct text *paths = arena_take(reader->arena, row->count, sizeof *paths);
	out->rows = paths;
	for (const struct node *node = row->first; node && paths; node = node->next)
		if (!is_name(node))
			paths[out->count++] = (struct text){{node->key_mark, GIVEN}, node->key};
}

/* Lists that are not overridden are shared with the cell: nothing of a cell changes once it is
 * read. */
static void read_setup(struct reader *reader, const struct node *row, const struct place *place,
                       size_t index, const struct cell *cell, struct setup *out)
{
	struct cell *copy = arena_take(reader->arena, 1, sizeof *copy);
	if (!copy)
		return;
	*copy = *cell;
	copy->setups = (struct list){.rows = NULL};
	read_name(reader, row, place, index, &out->name);
	for (const struct node *node = row->first; node; node = node->next)
		if (!is_name(node))
			node = override(reader, row, node, place, copy);
	field_defaults(copy);
	note_overridden(reader, row, &out->overridden);
	out->cell = copy;
}

static bool check_row(struct reader *reader, const struct node *row, const struct place *place)
{
	if (row->kind != NODE_MAP) {
		read_shape_fault(reader, row, place, "a row of keys",
		                 "{name: high pedestal, arm.mount: [0 mm, 0 mm, 1350 mm]}");
		return false;
	}
	if (row->count <= MAX_OVERRIDES)
		return true;
	read_fault(reader, FAULT_SIZE, row->mark, place, "",
	           "%zu keys, at most %d can be overridden", row->count, MAX_OVERRIDES);
	return false;
}

/* A result that names a setup must name one. */
static void check_names(struct reader *reader, const struct list *setups, const struct place *place)
{
	const struct setup *setup = setups->rows;
	for (size_t i = 0; i < setups->count; i++)
		for (size_t k = 0; k < i; k++)
			if (setup[i].name.value && setup[k].name.value &&
			    strcmp(setup[i].name.value, setup[k].name.value) == 0) {
				struct place here = place_row(place, i);
				read_fault(reader, FAULT_CONTRADICTION, setup[i].name.given.mark,
				           &here, "give each setup a name of its own",
				           "two setups are named '%.60s'", setup[i].name.value);
				break;
			}
}

/* The rows come last, whatever their place in the file, since each begins as the finished cell. */
void read_setups(struct reader *reader, struct cell *cell)
{
	const struct node *node = reader->setups;
	const struct field *field = field_find("setups");
	/* the word none may have a row of its own before the list's */
	while (field && field->kind != FIELD_SETUPS)
		field = field_next(field);
	struct place place = {"setups", "setups"};
	if (!node || !field)
		return;
	struct list *out = &cell->setups;
	*out = (struct list){.given.mark = node->mark};
	if (node->count > field->limit) {
		read_fault(reader, FAULT_SIZE, node->mark, &place, "",
		           "%zu setups, at most %zu can be taken", node->count, field->limit);
		return;
	}
	struct setup *setup = arena_take(reader->arena, node->count, sizeof *setup);
	if (!setup)
		return;
	out->rows = setup;
	reader->in_setup = true;
	for (const struct node *row = node->first; row; row = row->next, out->count++) {
		struct place here = place_row(&place, out->count);
		if (check_row(reader, row, &here))
			read_setup(reader, row, &here, out->count, cell, &setup[out->count]);
	}
	reader->in_setup = false;
	out->given.origin = GIVEN;
	check_names(reader, out, &place);
}
