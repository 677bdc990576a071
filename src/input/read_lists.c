/* Lists: rows of maps, outlines, words, plain numbers. */
#include "read.h"
#include <stdio.h>
#include <string.h>

/* Whether a list of at most the field's limit stands here. */
static bool check_list(struct reader *reader, const struct field *field, const struct node *node,
                       const struct place *place, const char *wanted)
{
	if (node->kind != NODE_SEQUENCE) {
		read_shape_fault(reader, node, place, wanted, field->example);
		return false;
	}
	if (node->count <= field->limit)
		return true;
	read_fault(reader, FAULT_SIZE, node->mark, place, "", "%zu rows, at most %zu can be taken",
	           node->count, field->limit);
	return false;
}

/* Zeroed rows for a list that was checked; NULL when memory ran out. */
static void *new_rows(struct reader *reader, const struct node *node, size_t row_size,
                      struct list *out)
{
	void *rows = arena_take(reader->arena, node->count, row_size);
	if (!rows)
		return NULL;
	out->rows = rows;
	out->count = node->count;
	out->given.origin = GIVEN;
	return rows;
}

/* A row that is no map keeps its place, so that the numbers of the rows behind it are right. */
void read_list(struct reader *reader, const struct field *field, const struct node *node,
               const struct place *place, struct list *out)
{
	*out = (struct list){.given.mark = node->mark};
	if (!check_list(reader, field, node, place, "a list of rows"))
		return;
	char *row = new_rows(reader, node, field->row_size, out);
	size_t i = 0;
	for (const struct node *one = node->first; one && row;
	     one = one->next, i++, row += field->row_size) {
		struct place here = place_row(place, i);
		if (one->kind == NODE_MAP)
			read_map(reader, one, &here, row);
		else
			read_shape_fault(reader, one, &here, "a row of keys",
			                 "{key: value, key: value}");
	}
}

void read_rings(struct reader *reader, const struct field *field, const struct node *node,
                const struct place *place, struct list *out)
{
	*out = (struct list){.given.mark = node->mark};
	if (!check_list(reader, field, node, place, "a list of outlines"))
		return;
	/* the field's limit counts rings; each holds as many points as any other */
	struct field one_ring = *field;
	one_ring.limit = MAX_VERTICES;
	struct ring *ring = new_rows(reader, node, sizeof *ring, out);
	size_t i = 0;
	for (const struct node *one = node->first; one && ring; one = one->next, i++, ring++) {
		struct place here = place_row(place, i);
		read_ring(reader, &one_ring, one, &here, ring);
	}
}

static bool has_word(const struct list *list, size_t count, int value)
{
	const struct word *words = list->rows;
	for (size_t i = 0; i < count; i++)
		if (is_known(words[i]) && words[i].value == value)
			return true;
	return false;
}

/* A method named twice would be judged twice. */
void read_words(struct reader *reader, const struct field *field, const struct node *node,
                const struct place *place, struct list *out)
{
	*out = (struct list){.given.mark = node->mark};
	if (!check_list(reader, field, node, place, "a list of words"))
		return;
	struct word *word = new_rows(reader, node, sizeof *word, out);
	size_t i = 0;
	for (const struct node *one = node->first; one && word; one = one->next, i++, word++) {
		struct place here = place_row(place, i);
		read_word(reader, field, one, &here, word);
		if (is_known(*word) && has_word(out, i, word->value))
			read_fault(reader, FAULT_WORD, one->mark, &here, "name it once",
			           "'%.40s' is named twice", one->text);
	}
}

/* Numbers of this list that stand without a unit. */
static size_t count_bare(const struct node *list)
{
	double ignored;
	size_t count = 0;
	for (const struct node *node = list->first; node; node = node->next)
		count += node->kind == NODE_SCALAR &&
		         quantity_parse_bare(node->text, node->length, NULL, &ignored) ==
		                 QUANTITY_OK;
	return count;
}

/* Said once for the list: where its map may name the unit ("values"), or behind each number. */
static bool refuse_bare(struct reader *reader, const struct field *field, const struct node *node,
                        const struct place *place)
{
	const char *dot = strrchr(field->path, '.');
	char hint[DIAGNOSTIC_HINT];
	if ((dot && strcmp(dot, ".values") == 0) || count_bare(node) < 2)
		return false;
	snprintf(hint, sizeof hint, "write it behind each number: %s", field->example);
	read_fault(reader, FAULT_NUMBER, node->mark, place, hint, "the numbers have no unit");
	return true;
}

/* The unit stands beside the list, in the same map, or with each number. */
void read_numbers(struct reader *reader, const struct field *field, const struct node *node,
                  const struct node *map, const struct place *place, struct numbers *out)
{
	*out = (struct numbers){.given.mark = node->mark};
	if (!check_list(reader, field, node, place, "a list of numbers"))
		return;
	const struct unit *unit = NULL;
	if (node_find(map, "unit")) {
		unit = read_unit(reader, map, field->dimension, place);
		if (!unit)
			return;
	}
	if (!unit && refuse_bare(reader, field, node, place))
		return;
	double *values = arena_take(reader->arena, node->count, sizeof *values);
	bool good = values != NULL;
	size_t i = 0;
	for (const struct node *one = node->first; one && values; one = one->next, i++) {
		struct place here = place_row(place, i);
		/* 31,5 MPa is two values to YAML */
		bool cut = !unit && one->next && one->next->kind == NODE_SCALAR &&
		           read_is_cut(one, one->next->text);
		if (cut && quantity_parse(one->next->text, one->next->length, field->dimension,
		                          &(struct quantity){0}) == QUANTITY_OK) {
			read_comma_fault(reader, field, one, one->next->text, &here);
			one = one->next;
			good = false;
			continue;
		}
		good = read_value(reader, field, one, unit, &here, &values[i]) && good;
	}
	if (!good)
		return;
	out->values = values;
	out->count = node->count;
	out->given.origin = GIVEN;
}
