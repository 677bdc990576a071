/* Maps whose keys are rows of the field table: every key finds its row, every row its reader. */
#include "read.h"
#include <stdio.h>
#include <string.h>

const struct field *field_next(const struct field *row)
{
	const struct field *next = row + 1;
	return next < fields + field_count && strcmp(next->path, row->path) == 0 ? next : NULL;
}

/* Bytes of the thing that a row of this kind fills; 0: it fills none of its own. */
static size_t thing_size(enum field_kind kind)
{
	switch (kind) {
	case FIELD_NUMBER: return sizeof(struct number);
	case FIELD_WORD: case FIELD_ANY: return sizeof(struct word);
	case FIELD_TEXT: return sizeof(struct text);
	case FIELD_POINT2: case FIELD_POINT3: return sizeof(struct point);
	case FIELD_RING: return sizeof(struct ring);
	case FIELD_NUMBERS: return sizeof(struct numbers);
	case FIELD_RINGS:
	case FIELD_LIST:
	case FIELD_WORDS:
	case FIELD_SETUPS:
		return sizeof(struct list);
	case FIELD_PATTERN: return sizeof(struct given);
	case FIELD_SECTION: case FIELD_ALIAS: case FIELD_NONE: break;
	}
	return 0;
}

/* Length of a path as far as it names the struct that holds the thing: up to its last "[]". */
static size_t holder_length(const char *path)
{
	const char *end = strrchr(path, ']');
	return end ? (size_t)(end - path) + 1 : 0;
}

/* Offsets of different structs are no rivals: they count from different starts. */
static bool same_thing(const struct field *a, const struct field *b)
{
	size_t length = holder_length(a->path);
	return a->offset == b->offset && holder_length(b->path) == length &&
	       memcmp(a->path, b->path, length) == 0;
}

/* A row for `none` fills the thing of another row (a number, a list, an outline), or a mark of its
 * own (an earthquake). */
static const struct field *replaced_by_none(const struct field *none)
{
	for (size_t i = 0; i < field_count; i++)
		if (thing_size(fields[i].kind) > 0 && same_thing(&fields[i], none))
			return &fields[i];
	return NULL;
}

static size_t filled_size(const struct field *row)
{
	if (row->kind != FIELD_NONE)
		return thing_size(row->kind);
	const struct field *value = replaced_by_none(row);
	return value ? thing_size(value->kind) : sizeof(struct given);
}

static void clear_thing(const struct field *row, struct given given, void *holder)
{
	size_t size = filled_size(row);
	if (size == 0)
		return;
	memset(field_at(row, holder), 0, size);
	if (given.mark.line > 0)
		memcpy(field_at(row, holder), &given, sizeof given);
}

/* All keys of a map that lie in the same holder, as if they were left out; those of a list's rows
 * go with the list, and holes are drilled once for all setups. */
static void clear_below(const char *path, void *holder)
{
	size_t length = strlen(path);
	for (size_t i = 0; i < field_count; i++)
		if (strncmp(fields[i].path, path, length) == 0 && fields[i].path[length] == '.' &&
		    !strchr(fields[i].path + length, '[') && fields[i].kind != FIELD_PATTERN)
			clear_thing(&fields[i], (struct given){.origin = ABSENT}, holder);
}

/* Empties all that the rows of one path fill, so that a setup's value replaces whichever stood
 * there. */
static void clear(const struct field *rows, struct given given, void *holder)
{
	for (const struct field *row = rows; row; row = field_next(row)) {
		if (row->kind == FIELD_ALIAS)
			clear(field_find(row->alias), given, holder);
		if (row->kind == FIELD_SECTION || row->kind == FIELD_NONE)
			clear_below(row->path, holder);
		clear_thing(row, given, holder);
	}
}

/* A map of keys takes back the word none that a setup finds in the file, where no value shares its
 * place. */
static void take_back_none(const struct field *rows, void *holder)
{
	for (const struct field *row = rows; row; row = field_next(row))
		if (row->kind == FIELD_NONE && !replaced_by_none(row))
			memset(field_at(row, holder), 0, sizeof(struct given));
}

/* Whether the unit written belongs to this row: two rows of numbers may bear one path, an angle's
 * and a length's. */
static bool has_its_unit(const struct field *row, const struct node *node)
{
	struct quantity out;
	enum quantity_error error = quantity_parse(node->text, node->length, row->dimension, &out);
	return out.close ? out.close->dimension == row->dimension : error == QUANTITY_OK;
}

/* How well a row suits a scalar; the highest is taken, 0 never. */
static int scalar_rank(const struct field *row, const struct node *node)
{
	switch (row->kind) {
	case FIELD_NONE: return node_is_word(node, "none") ? 6 : 0;
	case FIELD_ANY: return node_is_word(node, row->words[0]) ? 6 : 0;
	case FIELD_WORD: return 5;
	case FIELD_NUMBER: return has_its_unit(row, node) ? 4 : 3;
	case FIELD_TEXT: return 2;
	case FIELD_ALIAS: return 1;
	default: return 0;
	}
}

static bool takes_sequence(enum field_kind kind)
{
	switch (kind) {
	case FIELD_POINT2: case FIELD_POINT3: case FIELD_RING: case FIELD_RINGS: case FIELD_NUMBERS:
	case FIELD_LIST: case FIELD_WORDS: case FIELD_PATTERN: case FIELD_SETUPS: return true;
	default: return false;
	}
}

static bool suits(const struct field *row, const struct node *node, int *rank)
{
	*rank = 1;
	if (node->kind == NODE_SCALAR)
		*rank = scalar_rank(row, node);
	else if (node->kind == NODE_SEQUENCE)
		*rank = takes_sequence(row->kind);
	else
		*rank = row->kind == FIELD_RING || row->kind == FIELD_PATTERN;
	return *rank > 0;
}

/* A path may have a row for the word none, one for a number and one for a list: the node's shape
 * chooses. */
static const struct field *row_for(const struct field *rows, const struct node *node)
{
	const struct field *best = NULL;
	int best_rank = 0, rank;
	for (const struct field *row = rows; row; row = field_next(row))
		if (suits(row, node, &rank) && rank > best_rank) {
			best = row;
			best_rank = rank;
		}
	return best;
}

static const char *shape_of(enum field_kind kind)
{
	switch (kind) {
	case FIELD_SECTION: return "a map of keys";
	case FIELD_ALIAS: return "a single value or a map of keys";
	case FIELD_NUMBER: return "a number";
	case FIELD_WORD: case FIELD_ANY: return "a word";
	case FIELD_TEXT: return "a text";
	case FIELD_NONE: return "the word none";
	case FIELD_POINT2: return "a point [x, y]";
	case FIELD_POINT3: return "a list [x, y, z]";
	case FIELD_RING: return "an outline";
	case FIELD_RINGS: return "a list of outlines";
	case FIELD_NUMBERS: return "a list of numbers";
	case FIELD_LIST: case FIELD_SETUPS: return "a list of rows";
	case FIELD_WORDS: return "a list of words";
	case FIELD_PATTERN: return "a list of points, a grid or a circle";
	}
	return "another shape";
}

/* Whether a map of keys may stand here: stand_off: none, or stand_off: {height: 8 mm}. */
static bool has_keys_below(const struct field *rows)
{
	for (const struct field *row = rows; row; row = field_next(row))
		if (row->kind == FIELD_LIST)
			return false;
	return field_has_children(rows->path);
}

/* "{height: 8 mm}": the first key below a path with its example */
static void example_below(const char *path, char *out, size_t room)
{
	size_t length = strlen(path);
	out[0] = 0;
	for (size_t i = 0; i < field_count; i++) {
		const char *key = fields[i].path + length + 1;
		if (strncmp(fields[i].path, path, length) != 0 || fields[i].path[length] != '.')
			continue;
		if (fields[i].example && !strpbrk(key, ".["))
			snprintf(out, room, "{%s: %s}", key, fields[i].example);
		return;
	}
}

/* "{height: 8 mm}", or "[{name: frame}]" where a list of rows is wanted */
static void example_of(const struct field *rows, char *out, size_t room)
{
	char row[DIAGNOSTIC_HINT];
	bool list = false;
	for (const struct field *one = rows; one; one = field_next(one))
		list = list || one->kind == FIELD_LIST;
	if (!list) {
		example_below(rows->path, out, room);
		return;
	}
	struct place place = {"", ""};
	place = place_key(&place, rows->path);
	example_below(place_row(&place, 0).table, row, sizeof row);
	out[0] = 0;
	if (row[0])
		snprintf(out, room, "[%.100s], one pair of braces or one dash a row", row);
}

/* "the word none or a list of rows", with the example that the table has */
static void wrong_shape(struct reader *reader, const struct field *rows, const struct node *node,
                        const struct place *place)
{
	char wanted[DIAGNOSTIC_MESSAGE] = "", below[DIAGNOSTIC_HINT];
	const char *example = NULL;
	bool map_named = !has_keys_below(rows);
	for (const struct field *row = rows; row; row = field_next(row)) {
		size_t at = strlen(wanted);
		/* a second number, of another unit, has the same shape */
		if (row > rows && row->kind == row[-1].kind)
			continue;
		snprintf(wanted + at, sizeof wanted - at, "%s%s", at ? " or " : "",
		         shape_of(row->kind));
		map_named = map_named || row->kind == FIELD_SECTION || row->kind == FIELD_ALIAS;
		if (row->example && row->kind != FIELD_NONE)
			example = row->example;
	}
	size_t at = strlen(wanted);
	if (!map_named)
		snprintf(wanted + at, sizeof wanted - at, " or a map of keys");
	if (!example) {
		example_of(rows, below, sizeof below);
		example = below;
	}
	read_shape_fault(reader, node, place, wanted, example);
}

/* The one place that knows which reader belongs to which kind of row. */
static void read_row(struct reader *reader, const struct field *row, const struct node *node,
                     const struct node *map, const struct place *place, void *holder)
{
	void *thing = field_at(row, holder);
	switch (row->kind) {
	case FIELD_ALIAS:
		read_field(reader, field_find(row->alias), node, map, place, holder);
		break;
	case FIELD_NUMBER: read_number(reader, row, node, place, thing); break;
	case FIELD_WORD: case FIELD_ANY: read_word(reader, row, node, place, thing); break;
	case FIELD_TEXT: read_text(reader, node, place, thing); break;
	case FIELD_NONE: *(struct given *)thing = (struct given){node->mark, GIVEN}; break;
	case FIELD_POINT2: read_point(reader, row, node, place, 2, thing); break;
	case FIELD_POINT3: read_point(reader, row, node, place, 3, thing); break;
	case FIELD_RING: read_ring(reader, row, node, place, thing); break;
	case FIELD_RINGS: read_rings(reader, row, node, place, thing); break;
	case FIELD_NUMBERS: read_numbers(reader, row, node, map, place, thing); break;
	case FIELD_LIST: read_list(reader, row, node, place, thing); break;
	case FIELD_WORDS: read_words(reader, row, node, place, thing); break;
	case FIELD_PATTERN:
		read_pattern(reader, row, node, place, &((struct cell *)holder)->anchors);
		break;
	case FIELD_SETUPS: reader->setups = node; break;
	case FIELD_SECTION: break;
	}
}

/* A line "clear:0.6 m" below stand_off is a text to YAML, where keys are wanted. */
static bool refuse_glued(struct reader *reader, const struct field *rows, const struct node *node,
                         const struct place *place)
{
	char hint[DIAGNOSTIC_HINT];
	if (node->kind != NODE_SCALAR || !has_keys_below(rows) || !read_is_glued(node->text, hint))
		return false;
	read_fault(reader, FAULT_SHAPE, node->mark, place, hint,
	           "'%.40s' stands here, a map of keys is wanted", node->text);
	return true;
}

/* A blank empties all that the path may fill; a map below a section keeps what it does not name, so
 * that a setup may override a single key of it. */
void read_field(struct reader *reader, const struct field *rows, const struct node *node,
                const struct node *map, const struct place *place, void *holder)
{
	if (reader->in_setup && read_refuse_override(reader, node, place))
		return;
	if (node_is_blank(node)) {
		clear(rows, (struct given){.mark = node->mark}, holder);
	} else if (node->kind == NODE_MAP && has_keys_below(rows)) {
		take_back_none(rows, holder);
		read_map(reader, node, place, holder);
	} else {
		clear(rows, (struct given){.origin = ABSENT}, holder);
		const struct field *row = row_for(rows, node);
		if (refuse_glued(reader, rows, node, place))
			return;
		if (row)
			read_row(reader, row, node, map, place, holder);
		else
			wrong_shape(reader, rows, node, place);
	}
}

/* Keys that may stand below a path, "at, turned, parts". */
static void list_keys(const char *parent, char *out, size_t room)
{
	size_t at = 0, length = strlen(parent);
	out[0] = 0;
	const char *last = "";
	for (size_t i = 0; i < field_count && at < room; i++) {
		const char *path = fields[i].path;
		if (strncmp(path, parent, length) != 0 || (length > 0 && path[length] != '.') ||
		    strcmp(path, last) == 0)
			continue;
		const char *key = path + length + (length > 0);
		if (strpbrk(key, ".["))
			continue;
		last = path;
		at += (size_t)snprintf(out + at, room - at, "%s%s", at ? ", " : "keys here: ", key);
	}
}

/* Where the key would stand: the nearest place in the same part of the file; at the top, two. */
static void name_elsewhere(const char *key, const char *parent, char *out, size_t room)
{
	const char *path[2];
	size_t count = field_elsewhere(parent, key, path, 2);
	if (count == 0 || (parent[0] && field_parts_shared(parent, path[0]) == 0))
		return;
	bool both = count > 1 && parent[0] == 0;
	snprintf(out, room, "a key of this name stands at %s%s%s; ", path[0],
	         both ? " and at " : "", both ? path[1] : "");
}

/* The most helpful thing that is known: a near key, the reason of the mistake, or the keys that
 * would do. */
static void unknown_key(struct reader *reader, const struct node *node, const struct place *parent)
{
	char hint[DIAGNOSTIC_HINT] = "";
	struct place here = place_key(parent, node->key);
	const char *near = field_suggest(parent->table, node->key);
	if (node_is_blank(node) && read_is_glued(node->key, hint)) {
		/* {value:180 mm} is a key without a value to YAML */
	} else if (near) {
		snprintf(hint, sizeof hint, "did you mean '%s'?", near);
	} else if (node->key[0] >= '0' && node->key[0] <= '9') {
		/* {clear: 1,5 m} is two keys to YAML */
		snprintf(hint, sizeof hint,
		         "write decimals with a point: a comma begins the next key");
	} else if (strchr(node->key, '.') && field_find(here.table)) {
		snprintf(hint, sizeof hint,
		         "write a map for each part before a dot; dotted paths belong into setups");
	} else {
		name_elsewhere(node->key, parent->table, hint, sizeof hint);
		size_t at = strlen(hint);
		list_keys(parent->table, hint + at, sizeof hint - at);
	}
	read_fault(reader, FAULT_UNKNOWN_KEY, node->key_mark, &here, hint, "unknown key '%.40s'",
	           node->key);
}

/* The row of the numbers for which a key `unit` stands in this map; NULL if it is no such key. */
static const struct field *numbers_of_unit(const struct node *node, const struct place *parent)
{
	struct place values = place_key(parent, "values");
	const struct field *row = strcmp(node->key, "unit") == 0 ? field_find(values.table) : NULL;
	while (row && row->kind != FIELD_NUMBERS)
		row = field_next(row);
	return row;
}

/* One key with its value; returns the last node that was read. */
static const struct node *read_key(struct reader *reader, const struct field *rows,
                                   const struct node *node, const struct node *map,
                                   const struct place *place, void *holder)
{
	const struct node *next = node->next;
	size_t errors = reader->to->errors;
	if (read_cut_number(reader, rows, node, place))
		return next;
	read_field(reader, rows, node, map, place, holder);
	/* {at: 1,5 m}: no list either; that has been said, and the other half is no key */
	bool half = next && node_is_blank(next) && read_is_cut(node, next->key);
	return half && reader->to->errors > errors ? next : node;
}

void read_map(struct reader *reader, const struct node *map, const struct place *place,
              void *holder)
{
	for (const struct node *node = map->first; node; node = node->next) {
		struct place here = place_key(place, node->key);
		/* a dot or bracket in a key would reach past this map into a struct that is not the
		 * holder */
		const struct field *rows = strpbrk(node->key, ".[]") ? NULL
		                                                     : field_find(here.table);
		const struct field *numbers = numbers_of_unit(node, place);
		if (rows)
			node = read_key(reader, rows, node, map, &here, holder);
		else if (!numbers)
			unknown_key(reader, node, place);
		else if (!node_find(map, "values"))
			/* with values, these look at their unit themselves */
			read_unit(reader, map, numbers->dimension, place);
	}
}
