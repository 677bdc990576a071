#include "duplicates.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Equal keys side by side, in the order of the file, whatever the sort does with equals. */
static int by_key_and_place(const void *a, const void *b)
{
	const struct node *left = *(struct node *const *)a, *right = *(struct node *const *)b;
	int order = strcmp(left->key, right->key);
	if (order != 0)
		return order;
	if (left->key_mark.line != right->key_mark.line)
		return left->key_mark.line < right->key_mark.line ? -1 : 1;
	return left->key_mark.column < right->key_mark.column
	               ? -1
	               : left->key_mark.column > right->key_mark.column;
}

static void report(const struct node *again, const struct node *first, const char *path,
                   struct diagnostics *to)
{
	char hint[96];
	snprintf(hint, sizeof hint, "it stands in line %lu already: keep one of them",
	         (unsigned long)first->key_mark.line);
	diagnose(to, ERROR, FAULT_DUPLICATE_KEY, again->key_mark, path, hint,
	         "key '%.60s' is written twice", again->key);
}

/* Nodes to be dropped have lost their key. */
static void unlink_keyless(struct node *map)
{
	struct node **link = &map->first;
	while (*link) {
		if ((*link)->key) {
			link = &(*link)->next;
		} else {
			*link = (*link)->next;
			map->count--;
		}
	}
}

/* {force: 1,5 kN, at_height: 2,5 m}: the halves behind decimal commas are no keys of anybody's. */
static bool is_half_number(const struct node *node)
{
	return node->key[0] >= '0' && node->key[0] <= '9' && node->kind == NODE_SCALAR &&
	       node->length == 0;
}

bool duplicates_drop(struct arena *arena, struct node *map, const char *path,
                     struct diagnostics *to)
{
	if (map->count < 2)
		return true;
	struct node **sorted = arena_take(arena, map->count, sizeof *sorted);
	if (!sorted)
		return false;
	size_t n = 0;
	for (struct node *node = map->first; node; node = node->next)
		sorted[n++] = node;
	qsort(sorted, n, sizeof *sorted, by_key_and_place);
	const struct node *first = sorted[0];
	for (size_t i = 1; i < n; i++) {
		if (strcmp(sorted[i]->key, first->key) == 0 && !is_half_number(sorted[i])) {
			report(sorted[i], first, path, to);
			sorted[i]->key = NULL;
		} else {
			first = sorted[i];
		}
	}
	unlink_keyless(map);
	return true;
}
