/* Finding rows of the field table, and what a cell holds where the file says nothing. */
#include "fields.h"
#include <stdio.h>
#include <string.h>

enum { LONGEST_KEY = 48, LONGEST_PATH = 128 };

/* Some two hundred rows and as many keys in a file: a plain search takes a fraction of a
 * millisecond. */
const struct field *field_find(const char *path)
{
	for (size_t i = 0; i < field_count; i++)
		if (strcmp(fields[i].path, path) == 0)
			return &fields[i];
	return NULL;
}

bool field_has_children(const char *path)
{
	size_t length = strlen(path);
	for (size_t i = 0; i < field_count; i++) {
		const char *other = fields[i].path;
		if (strncmp(other, path, length) == 0 &&
		    (other[length] == '.' || other[length] == '['))
			return true;
	}
	return false;
}

/* The key of a row that stands directly below parent, else NULL. */
static const char *key_below(const struct field *field, const char *parent)
{
	size_t length = strlen(parent);
	const char *rest = field->path;
	if (length > 0) {
		if (strncmp(rest, parent, length) != 0 || rest[length] != '.')
			return NULL;
		rest += length + 1;
	}
	return strpbrk(rest, ".[") ? NULL : rest;
}

static size_t least(size_t a, size_t b)
{
	return a < b ? a : b;
}

/* Optimal string alignment: insertions, deletions, changes and swaps of neighbours, each letter
 * used once. */
static size_t distance(const char *a, const char *b)
{
	size_t rows[3][LONGEST_KEY + 1];
	size_t na = strlen(a), nb = strlen(b);
	for (size_t j = 0; j <= nb; j++)
		rows[0][j] = j;
	for (size_t i = 1; i <= na; i++) {
		size_t *now = rows[i % 3], *before = rows[(i + 2) % 3],
		       *two_before = rows[(i + 1) % 3];
		now[0] = i;
		for (size_t j = 1; j <= nb; j++) {
			size_t change = before[j - 1] + (a[i - 1] != b[j - 1]);
			now[j] = least(change, least(before[j], now[j - 1]) + 1);
			if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
				now[j] = least(now[j], two_before[j - 2] + 1);
		}
	}
	return rows[na % 3][nb];
}

bool word_is_near(const char *written, const char *word, size_t *apart)
{
	size_t length = strlen(written);
	if (length == 0 || length > LONGEST_KEY || strlen(word) > LONGEST_KEY)
		return false;
	*apart = distance(written, word);
	return *apart <= (length / 3 > 1 ? length / 3 : 1);
}

const char *field_suggest(const char *parent, const char *key)
{
	const char *nearest = NULL;
	size_t least_apart = 0;
	for (size_t i = 0; i < field_count; i++) {
		const char *known = key_below(&fields[i], parent);
		size_t apart;
		if (!known || !word_is_near(key, known, &apart))
			continue;
		if (!nearest || apart < least_apart) {
			nearest = known;
			least_apart = apart;
		}
	}
	return nearest;
}

size_t field_parts_shared(const char *a, const char *b)
{
	size_t parts = 0;
	bool open = false;             /* letters of a part that has not ended yet */
	for (; *a && *a == *b; a++, b++) {
		parts += *a == '.';
		open = *a != '.';
	}
	/* the last part counts where both paths end it here */
	if (open && strchr(".[", *a) && strchr(".[", *b))
		parts++;
	return parts;
}

static size_t dots(const char *path)
{
	size_t count = 0;
	for (; *path; path++)
		count += *path == '.';
	return count;
}

/* Whether a misplaced key below `parent` rather belongs to a than to b. */
static bool is_nearer(const char *parent, const char *a, const char *b)
{
	size_t shared_a = field_parts_shared(parent, a), shared_b = field_parts_shared(parent, b);
	bool row_a = strchr(a, '[') != NULL, row_b = strchr(b, '[') != NULL;
	if (shared_a != shared_b)
		return shared_a > shared_b;
	return row_a != row_b ? row_b : dots(a) < dots(b);
}

size_t field_elsewhere(const char *parent, const char *key, const char **out, size_t room)
{
	size_t count = 0;
	for (size_t i = 0; i < field_count; i++) {
		const char *path = fields[i].path, *dot = strrchr(path, '.');
		/* rows of one path stand together: the path counts once */
		if (!dot || strcmp(dot + 1, key) != 0 ||
		    (i > 0 && strcmp(path, fields[i - 1].path) == 0))
			continue;
		size_t at = count < room ? count++ : room;
		/* the farthest falls off the end */
		for (; at > 0 && is_nearer(parent, path, out[at - 1]); at--)
			if (at < room)
				out[at] = out[at - 1];
		if (at < room)
			out[at] = path;
	}
	return count;
}

/* Never written to, as nothing of a cell is once it is read. */
static const struct word default_word = {.given = {.origin = DEFAULT}};

/* A value with an origin is the user's, or was taken on purpose; only what is absent gets a
 * default. */
static void default_number(const struct field *field, struct number *number)
{
	if (!field->has_fallback || is_known(*number))
		return;
	number->value = field->fallback;
	number->given.origin = DEFAULT;
}

static void default_one_word(const struct field *field, struct word *word)
{
	if (!field->has_fallback || is_known(*word))
		return;
	word->value = (int)field->fallback;
	word->given.origin = DEFAULT;
}

/* A list of words without any is the first word of its row alone (methods: rating). */
static void default_words(struct list *list)
{
	if (is_known(*list))
		return;
	list->rows = (void *)&default_word;
	list->count = 1;
	list->given.origin = DEFAULT;
}

/* Pages print texts without asking, so none of them is NULL. */
static void default_text(struct text *text)
{
	if (!text->value)
		text->value = "";
}

static void default_field(const struct field *field, void *thing)
{
	switch (field->kind) {
	case FIELD_NUMBER: default_number(field, thing); break;
	case FIELD_WORD: default_one_word(field, thing); break;
	case FIELD_WORDS: default_words(thing); break;
	case FIELD_TEXT: default_text(thing); break;
	default: break;
	}
}

/* All rows of the table whose paths begin with `prefix` and that lie in this very holder. */
static void defaults_below(const char *prefix, void *holder)
{
	size_t length = strlen(prefix);
	for (size_t i = 0; i < field_count; i++) {
		const struct field *field = &fields[i];
		if (strncmp(field->path, prefix, length) != 0 || strchr(field->path + length, '['))
			continue;
		void *thing = field_at(field, holder);
		default_field(field, thing);
		if (field->kind != FIELD_LIST)
			continue;
		char below[LONGEST_PATH];
		snprintf(below, sizeof below, "%s[].", field->path);
		struct list *list = thing;
		for (size_t row = 0; row < list->count; row++)
			defaults_below(below, (char *)list->rows + row * field->row_size);
	}
}

void field_defaults(struct cell *cell)
{
	defaults_below("", cell);
}

const char *field_when_left_out(const struct field *field)
{
	const char *at = strstr(field->meaning, FIELD_LEFT_OUT);
	return at && !field->has_fallback ? at + strlen(FIELD_LEFT_OUT) : NULL;
}
