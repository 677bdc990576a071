/* What the pieces of the reader share. Every piece reads nodes into things of the cell as the field
 * table says, reports what is wrong and goes on: a value that cannot be read stays ABSENT with its
 * mark. */
#ifndef READ_H
#define READ_H

#include "../cell/fields.h"
#include "reader.h"

enum {
	PATH_ROOM = 128,
	MAX_TEXT_BYTES = 1000,     /* a title, a note */
	MAX_OVERRIDES = 64         /* keys of one setup */
};

struct reader {
	struct arena *arena;
	struct diagnostics *to;
	bool in_setup;                      /* what the whole file shares cannot be overridden */
	const struct node *setups; /* read last, when the cell that they vary is complete */
};

/* Where a node stands: as a path of the field table, "cell.parts[].mass", and as the user counts,
 * "cell.parts[2].mass". */
struct place { char table[PATH_ROOM], shown[DIAGNOSTIC_PATH]; };

struct place place_key(const struct place *parent, const char *key);
struct place place_row(const struct place *list, size_t index);

void read_fault(struct reader *reader, enum fault fault, struct mark mark,
                const struct place *place, const char *hint, const char *format, ...)
	__attribute__((format(printf, 6, 7)));
/* The right shape is missing: `wanted` says which, as "a list of rows". */
void read_shape_fault(struct reader *reader, const struct node *node, const struct place *place,
                      const char *wanted, const char *example);

/* null, ~, nothing at all, an empty text, [] or {}, and the word unknown: not known */
bool node_is_blank(const struct node *node);
bool node_is_word(const struct node *node, const char *word);
const struct node *node_find(const struct node *map, const char *key);
/* Reports every key of the map that is not in the list (NULL-ended). */
void read_check_keys(struct reader *reader, const struct node *map, const struct place *place,
                     const char *const *keys);

/* A number cut in two by its decimal comma, "8,5 kN" within braces or brackets: reports it as one.
 * `behind` is the text behind the comma. */
void read_comma_fault(struct reader *reader, const struct field *field, const struct node *node,
                      const char *behind, const struct place *place);
/* Whether these are such halves: a bare number, and text that begins with a digit. */
bool read_is_cut(const struct node *node, const char *behind);
/* The same between braces, {tension: 8,5 kN}, where the second half has become the next key: true
 * if it was reported, so that this key is passed over. `rows` may be NULL. */
bool read_cut_number(struct reader *reader, const struct field *rows, const struct node *node,
                     const struct place *place);
/* "value:180 mm": no space behind the colon, so that it is one word to YAML; writes the hint. */
bool read_is_glued(const char *text, char hint[DIAGNOSTIC_HINT]);

/* read_map.c: a map whose keys are rows of the field table */
void read_map(struct reader *reader, const struct node *map, const struct place *place,
              void *holder);
/* One value; `rows` is the first row of its path, `map` the map in which it stands. */
void read_field(struct reader *reader, const struct field *rows, const struct node *node,
                const struct node *map, const struct place *place, void *holder);
/* The next row of the same path, or NULL. */
const struct field *field_next(const struct field *row);

/* read_values.c: single values; the mark is set and the thing cleared in any case */
void read_number(struct reader *reader, const struct field *field, const struct node *node,
                 const struct place *place, struct number *out);
void read_word(struct reader *reader, const struct field *field, const struct node *node,
               const struct place *place, struct word *out);
void read_text(struct reader *reader, const struct node *node, const struct place *place,
               struct text *out);
/* One number of a point or a list; with a unit named elsewhere it must be bare. False after a
 * fault. */
bool read_value(struct reader *reader, const struct field *field, const struct node *node,
                const struct unit *unit, const struct place *place, double *out);

/* read_points.c */
void read_point(struct reader *reader, const struct field *field, const struct node *node,
                const struct place *place, size_t size, struct point *out);
/* A list of [x, y] in one unit, or each number with its own (unit NULL). `at` and `marks` (may be
 * NULL) hold room for `limit`. False after a fault; *blank if a coordinate is unknown. */
bool read_points(struct reader *reader, const struct field *field, const struct node *list,
                 const struct unit *unit, const struct place *place, struct vec2 *at,
                 struct mark *marks, bool *blank);
/* The key `unit` of a map; NULL after a fault. */
const struct unit *read_unit(struct reader *reader, const struct node *map,
                             enum dimension dimension, const struct place *place);
/* {unit, points} or a bare list: the list and the unit. NULL after a fault or if the points are
 * unknown. */
const struct node *read_points_map(struct reader *reader, const struct field *field,
                                   const struct node *node, const struct place *place,
                                   const struct unit **unit);
void read_ring(struct reader *reader, const struct field *field, const struct node *node,
               const struct place *place, struct ring *out);

/* read_lists.c */
void read_rings(struct reader *reader, const struct field *field, const struct node *node,
                const struct place *place, struct list *out);
void read_numbers(struct reader *reader, const struct field *field, const struct node *node,
                  const struct node *map, const struct place *place, struct numbers *out);
void read_list(struct reader *reader, const struct field *field, const struct node *node,
               const struct place *place, struct list *out);
void read_words(struct reader *reader, const struct field *field, const struct node *node,
                const struct place *place, struct list *out);

/* read_pattern.c */
void read_pattern(struct reader *reader, const struct field *field, const struct node *node,
                  const struct place *place, struct anchors *out);

/* read_setups.c: the rows of `setups`, each into a copy of the cell with its defaults. */
void read_setups(struct reader *reader, struct cell *cell);
/* Whether this path is one that a setup cannot change; reports it. */
bool read_refuse_override(struct reader *reader, const struct node *node,
                          const struct place *place);

#endif
