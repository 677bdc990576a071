/* The way from bytes to a cell: tree, map, missing keys, defaults, setups, validity. */
#include "reader.h"
#include "check_cell.h"
#include "read.h"
#include <stdio.h>
#include <string.h>

enum { FORMAT_VERSION = 1 };

/* The node of a dotted path as far as it goes, from the root; *whole says whether it goes all the
 * way. */
static const struct node *follow(const struct node *root, const char *path, bool *whole)
{
	const struct node *node = root;
	*whole = false;
	while (*path) {
		char key[PATH_ROOM];
		size_t length = strcspn(path, ".");
		snprintf(key, sizeof key, "%.*s", (int)length, path);
		const struct node *next = node_find(node, key);
		if (!next)
			return node;
		node = next;
		path += length + (path[length] == '.');
	}
	*whole = true;
	return node;
}

/* The mark is that of the map in which the key would stand: there is nothing better to point at. */
static void missing_key(struct reader *reader, const struct field *field, const struct node *parent)
{
	const char *dot = strrchr(field->path, '.'), *key = dot ? dot + 1 : field->path;
	/* a version is never unknown */
	bool may_be_unknown = field->low < field->high;
	struct place place;
	char hint[DIAGNOSTIC_HINT];
	snprintf(place.shown, sizeof place.shown, "%s", field->path);
	snprintf(hint, sizeof hint, "write %s: %s%s%s%.*s", key, field->example,
	         may_be_unknown ? ", or unknown" : "", dot ? ", below " : "",
	         dot ? (int)(dot - field->path) : 0, field->path);
	read_fault(reader, FAULT_MISSING_KEY, parent->key ? parent->key_mark : parent->mark, &place,
	           hint, "the key '%s' is missing", field->path);
}

static void check_missing(struct reader *reader, const struct node *root)
{
	for (size_t i = 0; i < field_count; i++) {
		bool whole;
		if (!fields[i].must)
			continue;
		const struct node *node = follow(root, fields[i].path, &whole);
		/* where another shape stands, that has been reported */
		if (!whole && (node->kind == NODE_MAP || node_is_blank(node)))
			missing_key(reader, &fields[i], node);
	}
}

/* Another version may mean other things by the same keys, so nothing else of it is read. */
static bool is_other_version(struct reader *reader, const struct node *root)
{
	const struct node *node = node_find(root, "standfast");
	struct quantity version;
	struct place place = {"standfast", "standfast"};
	if (!node || node->kind != NODE_SCALAR)
		return false;
	if (node_is_blank(node)) {
		read_fault(reader, FAULT_RANGE, node->mark, &place, "write standfast: 1",
		           "the version must be given");
		return false;
	}
	if (quantity_parse(node->text, node->length, DIM_COUNT, &version) != QUANTITY_OK ||
	    (version.value >= FORMAT_VERSION && version.value <= FORMAT_VERSION))
		return false;
	read_fault(reader, FAULT_RANGE, node->mark, &place,
	           "this program reads version 1: write standfast: 1, or take the program that wrote the file",
	           "version %.20s of the format", node->text);
	return true;
}

static void read_root(struct reader *reader, const struct node *root, struct cell *cell)
{
	struct place place = {"", ""};
	if (is_other_version(reader, root))
		return;
	read_map(reader, root, &place, cell);
	check_missing(reader, root);
	field_defaults(cell);
	read_setups(reader, cell);
	check_cells(reader, cell);
}

static const struct node *root_map(struct reader *reader, const struct node *root,
                                   struct node *empty)
{
	struct place place = {"", ""};
	if (root->kind == NODE_MAP)
		return root;
	if (!node_is_blank(root)) {
		read_shape_fault(reader, root, &place, "a map of keys", "standfast: 1");
		return NULL;
	}
	*empty = (struct node){.kind = NODE_MAP, .mark = root->mark};
	return empty;
}

/* libyaml takes memory past the arena, so its failures are found among the diagnostics. */
static bool memory_failed(const struct arena *arena, uint32_t file, struct diagnostics *to)
{
	for (size_t i = 0; i < to->count; i++)
		if (to->list[i].fault == FAULT_MEMORY && to->list[i].mark.file == file)
			return true;
	if (arena->failed)
		diagnose(to, ERROR, FAULT_MEMORY, (struct mark){.file = file}, "", "",
		         "out of memory");
	return arena->failed;
}

enum status cell_read(struct arena *arena, const void *bytes, size_t length, uint32_t file,
                      struct diagnostics *to, const struct cell **out)
{
	struct reader reader = {.arena = arena, .to = to};
	size_t errors = to->errors;
	*out = NULL;
	const struct node *root = tree_read(arena, bytes, length, file, to);
	struct node empty;
	if (root)
		root = root_map(&reader, root, &empty);
	struct cell *cell = root ? arena_take(arena, 1, sizeof *cell) : NULL;
	if (cell)
		read_root(&reader, root, cell);
	diagnostics_sort(to);
	if (memory_failed(arena, file, to))
		return NO_MEMORY;
	if (to->errors > errors)
		return BAD_INPUT;
	*out = cell;
	return DONE;
}
