/* The field table: one row a key of the format. It drives the reader, suggestions, `new`,
 * `explain`, `show`, the manual and the setups' overrides. Rows stand in the order of the file.
 *
 * A path is dotted; `[]` behind a list's path enters its rows: "cell.parts[].mass". Two rows may
 * bear one path where the file may hold either shape ("slab.joints" as NONE and as LIST): the
 * reader takes the row that accepts the node's shape, and for a scalar first a row of words, then a
 * number; of two numbers (a joint's angle or length) the one to which the written unit belongs. A
 * SECTION row has no value; it gives a map its meaning. An ALIAS row lets a scalar stand for the
 * map's main key (thickness: 160 mm is thickness: {value: 160 mm}); `alias` is that key's path. */
#ifndef FIELDS_H
#define FIELDS_H

#include "cell.h"

enum field_kind {
	FIELD_SECTION,
	FIELD_ALIAS,
	FIELD_NUMBER, /* struct number */
	FIELD_WORD,   /* struct word, one of `words` */
	FIELD_TEXT,   /* struct text */
	FIELD_NONE, /* the word none: the thing at `offset` becomes given and empty (number 0, list
	               of 0) */
	FIELD_ANY,  /* struct word: the one word of `words` ("any", "slotted") given beside a number
	               row */
	FIELD_POINT2, /* struct point: [x, y] */
	FIELD_POINT3, /* struct point: [x, y, z] */
	FIELD_RING,   /* struct ring: {unit: mm, points: [[x, y], ...]} or a list of [x mm, y mm] */
	FIELD_RINGS,  /* struct list of struct ring */
	FIELD_NUMBERS, /* struct numbers: the list `values` of a map that holds `unit`, or a list of
	                  quantities */
	FIELD_LIST,    /* struct list; rows of row_size bytes described by "path[].…" */
	FIELD_WORDS,   /* struct list of struct word: [rating] */
	FIELD_PATTERN, /* anchors.at: points, grid or circle */
	FIELD_SETUPS   /* setups: rows of a name and overrides by path */
};

struct field {
	const char *path;
	enum field_kind kind;
	enum dimension dimension;
	size_t offset;                 /* in struct cell, or in a row of the list it belongs to */
	size_t row_size, limit;        /* FIELD_LIST and kin: bytes a row, most rows */
	const char *const *words;      /* FIELD_WORD, FIELD_ANY, FIELD_WORDS: NULL-ended */
	const char *alias;
	double low, high;              /* FIELD_NUMBER: outside is an input error [base unit] */
	double worst, best;            /* credible range, for the survey [base unit] */
	double fallback;               /* value with origin DEFAULT when has_fallback */
	bool has_fallback;
	bool must;                     /* the file cannot do without it */
	const char *meaning;           /* one sentence: what it is, in which sense it is taken */
	const char *where_found; /* where on a data sheet, drawing or floor; how to measure it */
	const char *example;           /* as it would be written: "160 mm" */
};

extern const struct field fields[];
extern const size_t field_count;

/* The first row of that exact path, or NULL. Rows of one path stand together. */
const struct field *field_find(const char *path);
/* Whether any row's path begins with `path` followed by '.' or '[' (a map or list stands there). */
bool field_has_children(const char *path);
/* The thing of a row inside its holder (the cell or a list's row). */
static inline void *field_at(const struct field *field, void *holder)
{
	return (char *)holder + field->offset;
}
static inline const struct given *field_given(const struct field *field, const void *holder)
{
	return (const struct given *)(const void *)((const char *)holder + field->offset);
}
/* Nearest known key below `parent` ("" for the top) to a misspelt one, or NULL. */
const char *field_suggest(const char *parent, const char *key);
/* Paths of rows below other parents that bear exactly this key, the nearest to `parent` first: most
 * leading parts in common, then outside lists, then the shortest. Returns how many it has put into
 * out, at most room. */
size_t field_elsewhere(const char *parent, const char *key, const char **out, size_t room);
/* Behind these words of its meaning many a row says what is taken where the key is left out. */
#define FIELD_LEFT_OUT "; left out: "
/* What stands behind them; NULL where it does not say so, or has a fallback. */
const char *field_when_left_out(const struct field *field);
/* Leading parts that two dotted paths have in common. */
size_t field_parts_shared(const char *a, const char *b);
/* Whether a misspelt word may mean `word`: optimal string alignment distance (`apart`) of at most a
 * third of its letters, or one. */
bool word_is_near(const char *written, const char *word, size_t *apart);
/* Sets every absent number and word that has a fallback to it, origin DEFAULT, and every absent
 * text to ""; list rows too. The word `unknown` keeps its mark, so that pages can tell it from a
 * key left out. */
void field_defaults(struct cell *cell);

extern const char *const concrete_classes[];                         /* "C12/15" ... NULL-ended */
struct concrete_class { double cylinder, cube; };                    /* [MPa], EN 206 Table 12 */
extern const struct concrete_class concrete_class_strengths[];
extern const char *const words_yes_no[];

#endif
