/* Places, faults and questions about nodes. */
#include "read.h"
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static void join(char *out, size_t room, const char *parent, const char *key)
{
	int length = snprintf(out, room, "%s%s%s", parent, parent[0] ? "." : "", key);
	/* no row of the table has so long a path, so a cut one finds none */
	if (length < 0)
		out[0] = 0;
}

struct place place_key(const struct place *parent, const char *key)
{
	struct place place;
	join(place.table, sizeof place.table, parent->table, key);
	join(place.shown, sizeof place.shown, parent->shown, key);
	return place;
}

struct place place_row(const struct place *list, size_t index)
{
	struct place place;
	snprintf(place.table, sizeof place.table, "%.*s[]", PATH_ROOM - 3, list->table);
	/* people count from one, as in A1 */
	snprintf(place.shown, sizeof place.shown, "%.*s[%zu]", DIAGNOSTIC_PATH - 24, list->shown,
	         index + 1);
	return place;
}

void read_fault(struct reader *reader, enum fault fault, struct mark mark,
                const struct place *place, const char *hint, const char *format, ...)
{
	char message[DIAGNOSTIC_MESSAGE];
	va_list list;
	va_start(list, format);
	vsnprintf(message, sizeof message, format, list);
	va_end(list);
	diagnose(reader->to, ERROR, fault, mark, place->shown, hint, "%s", message);
}

void read_shape_fault(struct reader *reader, const struct node *node, const struct place *place,
                      const char *wanted, const char *example)
{
	static const char *const found[] = {"a single value", "a list", "a map of keys"};
	char hint[DIAGNOSTIC_HINT] = "";
	if (example && example[0])
		snprintf(hint, sizeof hint, "write it as %s", example);
	read_fault(reader, FAULT_SHAPE, node->mark, place, hint, "%s stands here, %s is wanted",
	           found[node->kind], wanted);
}

bool read_is_glued(const char *text, char hint[DIAGNOSTIC_HINT])
{
	int key = (int)strcspn(text, ":");
	if (key == 0 || text[key] == 0 || text[key + 1] == 0 || text[key + 1] == ' ')
		return false;
	snprintf(hint, DIAGNOSTIC_HINT, "write a space behind the colon: %.*s: %.40s", key, text,
	         text + key + 1);
	return true;
}

bool node_is_word(const struct node *node, const char *word)
{
	return node->kind == NODE_SCALAR && strcmp(node->text, word) == 0;
}

/* YAML's own words for nothing count unquoted only: a part may be named "null". */
bool node_is_blank(const struct node *node)
{
	if (node->kind != NODE_SCALAR)
		return node->count == 0;
	static const char *const nulls[] = {"~", "null", "Null", "NULL"};
	for (size_t i = 0; !node->quoted && i < sizeof nulls / sizeof nulls[0]; i++)
		if (node_is_word(node, nulls[i]))
			return true;
	return node->length == 0 || node_is_word(node, "unknown");
}

const struct node *node_find(const struct node *map, const char *key)
{
	if (map->kind != NODE_MAP)
		return NULL;
	for (const struct node *node = map->first; node; node = node->next)
		if (strcmp(node->key, key) == 0)
			return node;
	return NULL;
}

static bool is_one_of(const char *key, const char *const *keys)
{
	for (; *keys; keys++)
		if (strcmp(key, *keys) == 0)
			return true;
	return false;
}

/* "did you mean 'step'? keys here: columns, rows, step, centre" */
static void hint_keys(const char *key, const char *const *keys, char hint[DIAGNOSTIC_HINT])
{
	const char *nearest = NULL;
	size_t apart, least = 0;
	for (const char *const *known = keys; *known; known++)
		if (word_is_near(key, *known, &apart) && (!nearest || apart < least)) {
			nearest = *known;
			least = apart;
		}
	size_t at = 0;
	if (nearest)
		at = (size_t)snprintf(hint, DIAGNOSTIC_HINT, "did you mean '%s'? ", nearest);
	for (const char *const *known = keys; *known && at < DIAGNOSTIC_HINT; known++)
		at += (size_t)snprintf(hint + at, DIAGNOSTIC_HINT - at, "%s%s",
		                       known == keys ? "keys here: " : ", ", *known);
}

void read_check_keys(struct reader *reader, const struct node *map, const struct place *place,
                     const char *const *keys)
{
	const struct node *before = NULL;
	for (const struct node *node = map->first; node; before = node, node = node->next) {
		/* the second half of 8,5 mm: it is reported with the first */
		bool half = before && node_is_blank(node) && read_is_cut(before, node->key);
		if (half || is_one_of(node->key, keys))
			continue;
		char hint[DIAGNOSTIC_HINT];
		struct place here = place_key(place, node->key);
		hint_keys(node->key, keys, hint);
		read_fault(reader, FAULT_UNKNOWN_KEY, node->key_mark, &here, hint,
		           "unknown key '%.40s'", node->key);
	}
}
