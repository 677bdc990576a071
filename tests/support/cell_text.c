#include "cell_text.h"

#include <criterion/criterion.h>
#include <ctype.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_CHANGES = 24, LONGEST_TEXT = 1 << 15, MOST_PATHS = 2000 };

/* --- the tree of a text
 * --------------------------------------------------------------------------- */

static struct node *parse(struct arena *arena, const char *yaml)
{
	static struct diagnostics faults;
	memset(&faults, 0, sizeof faults);
	if (*yaml == 0) {
		struct node *blank = arena_take(arena, 1, sizeof *blank);
		blank->text = "";
		return blank;
	}
	struct node *root = tree_read(arena, yaml, strlen(yaml), 1, &faults);
	cr_assert(root && faults.errors == 0, "not readable: %s\n%s", faults.list[0].message, yaml);
	return root;
}

/* The child that the path enters, and what is left of the path behind it. Setups hold keys with
 * dots, so whole keys are compared, not parts between dots. */
static struct node **enter(struct node *node, const char **path)
{
	struct node **child = &node->first;
	if (node->kind == NODE_SEQUENCE) {
		char *end;
		size_t row = **path == '[' ? strtoul(*path + 1, &end, 10) : 0;
		cr_assert(row > 0 && *end == ']', "a list is entered by [1], not by '%s'", *path);
		*path = end + 1 + (end[1] == '.');
		while (*child && --row > 0)
			child = &(*child)->next;
		return child;
	}
	for (; *child; child = &(*child)->next) {
		size_t length = strlen((*child)->key);
		if (strncmp(*path, (*child)->key, length) == 0 && strchr(".[", (*path)[length])) {
			*path += length + ((*path)[length] == '.');
			return child;
		}
	}
	return child;
}

static struct node *add_key(struct arena *arena, struct node *map, struct node **end,
                            const char **path)
{
	size_t length = strcspn(*path, ".[");
	struct node *child = arena_take(arena, 1, sizeof *child);
	cr_assert(map->kind == NODE_MAP, "'%s' cannot be added to a list or word", *path);
	*child = (struct node){.kind = NODE_MAP, .key = arena_text(arena, *path, length)};
	*path += length + ((*path)[length] == '.');
	map->count++;
	return *end = child;
}

static void set(struct arena *arena, struct node *root, const struct change *change)
{
	const char *path = change->path;
	struct node *node = root, **link = NULL;
	while (*path) {
		link = enter(node, &path);
		struct node *next = *link           ? *link
		                    : change->value ? add_key(arena, node, link, &path)
		                                    : NULL;
		if (!next)
			return;      /* nothing there to be taken out */
		if (*path == 0 && !change->value) {
			*link = next->next;
			node->count--;
			return;
		}
		node = next;
	}
	struct node *value = parse(arena, change->value), *after = node->next;
	value->key = node->key;
	*node = *value;
	node->next = after;
}

/* --- back to a text
 * ------------------------------------------------------------------------------- */

struct output { char *text; size_t length, room; };

static void put(struct output *out, const char *text, size_t length)
{
	cr_assert(out->length + length < out->room, "the text outgrows its room");
	memcpy(out->text + out->length, text, length);
	out->length += length;
	out->text[out->length] = 0;
}

static void put_text(struct output *out, const char *text)
{
	put(out, text, strlen(text));
}

/* In flow style a comma or bracket would end a plain word. */
static bool is_plain(const struct node *node)
{
	for (const char *c = node->text; *c; c++)
		if (!isalnum((unsigned char)*c) && !strchr(" _./%+-", *c))
			return false;
	return !node->quoted;
}

static void put_scalar(struct output *out, const struct node *node)
{
	if (is_plain(node)) {
		put_text(out, node->text);
		return;
	}
	put_text(out, "\"");
	for (const char *c = node->text; *c; c++) {
		if (strchr("\"\\", *c))
			put_text(out, "\\");
		put(out, c, 1);
	}
	put_text(out, "\"");
}

static void put_node(struct output *out, const struct node *node, int depth)
{
	bool map = node->kind == NODE_MAP;
	if (node->kind == NODE_SCALAR) {
		put_scalar(out, node);
		return;
	}
	put_text(out, map ? "{" : "[");
	for (const struct node *child = node->first; child; child = child->next) {
		if (map) {
			put_text(out, child->key);
			put_text(out, ": ");
		}
		put_node(out, child, depth + 1);
		if (child->next)
			put_text(out, depth < 2 ? ",\n" : ", ");
	}
	put_text(out, map ? "}" : "]");
}

static const char *write_tree(struct arena *arena, const struct node *root)
{
	struct output out = {.room = LONGEST_TEXT};
	out.text = arena_take(arena, out.room, 1);
	cr_assert_not_null(out.text);
	put_node(&out, root, 0);
	return out.text;
}

const char *text_with(struct arena *arena, const char *yaml, const struct change *change,
                      size_t count)
{
	struct node *root = parse(arena, yaml);
	for (size_t i = 0; i < count; i++)
		set(arena, root, &change[i]);
	return write_tree(arena, root);
}

static void collect(struct arena *arena, const struct node *node, const char *path,
                    struct paths *out)
{
	size_t row = 0;
	for (const struct node *child = node->first; child; child = child->next) {
		const char *here = node->kind == NODE_MAP
			? arena_format(arena, "%s%s%s", path, *path ? "." : "", child->key)
			: arena_format(arena, "%s[%zu]", path, ++row);
		cr_assert(out->count < MOST_PATHS);
		out->list[out->count++] = here;
		collect(arena, child, here, out);
	}
}

struct paths text_paths(struct arena *arena, const char *yaml)
{
	struct paths out = {arena_take(arena, MOST_PATHS, sizeof *out.list), 0};
	cr_assert_not_null(out.list);
	collect(arena, parse(arena, yaml), "", &out);
	return out;
}

const char *file_text(struct arena *arena, const char *file)
{
	FILE *in = fopen(file, "rb");
	cr_assert(in, "%s cannot be opened", file);
	char *text = arena_take(arena, LONGEST_TEXT + 1, 1);
	cr_assert_not_null(text);
	size_t length = fread(text, 1, LONGEST_TEXT, in);
	cr_assert(length > 0 && length < LONGEST_TEXT, "%s: %zu bytes", file, length);
	fclose(in);
	return text;
}

/* --- trials
 * --------------------------------------------------------------------------------------- */

void trial_open(struct trial *trial, const char *yaml, const struct check_options *options)
{
	static const struct check_options plain;
	trial->result = NULL;
	reading_open(&trial->reading, yaml);
	if (trial->reading.status != DONE)
		return;
	enum status status = check_run(&trial->reading.arena, trial->reading.cell,
	                               options ? options : &plain, &trial->result);
	cr_assert_eq(status, DONE, "status %d of\n%s", (int)status, yaml);
}

void trial_close(struct trial *trial)
{
	reading_close(&trial->reading);
}

const struct check_result *trial_check(const struct trial *trial, const char *id)
{
	for (size_t i = 0; trial->result && i < trial->result->check_count; i++)
		if (strcmp(trial->result->checks[i].check->id, id) == 0)
			return &trial->result->checks[i];
	return NULL;
}

/* --- tests of one check
 * --------------------------------------------------------------------------- */

static struct trial current;
static struct arena texts;
static bool is_open;

static const char *changed(const char *yaml, va_list pairs)
{
	struct change change[MOST_CHANGES];
	size_t count = 0;
	for (const char *path = va_arg(pairs, const char *); path;
	     path = va_arg(pairs, const char *)) {
		cr_assert_lt(count, MOST_CHANGES);
		change[count++] = (struct change){path, va_arg(pairs, const char *)};
	}
	if (is_open) {
		trial_close(&current);
		arena_close(&texts);
	}
	arena_open(&texts, NULL, NULL);
	is_open = true;
	return text_with(&texts, yaml, change, count);
}

static void assert_read(const char *yaml)
{
	cr_assert_eq(current.reading.status, DONE, "%s\n%s", reading_faults(&current.reading),
	             yaml);
}

const struct check_result *judged(const char *yaml, const char *id, ...)
{
	va_list pairs;
	va_start(pairs, id);
	const char *text = changed(yaml, pairs);
	va_end(pairs);
	trial_open(&current, text, NULL);
	assert_read(text);
	const struct check_result *check = trial_check(&current, id);
	cr_assert(check, "%s is left out of\n%s", id, text);
	return check;
}

const struct loads *loads_of(const struct cell **cell, const char *yaml, ...)
{
	static struct loads loads;
	va_list pairs;
	va_start(pairs, yaml);
	const char *text = changed(yaml, pairs);
	va_end(pairs);
	reading_open(&current.reading, text);
	assert_read(text);
	cr_assert_eq(loads_build(current.reading.cell, NULL, &current.reading.arena, &loads), DONE);
	*cell = current.reading.cell;
	return &loads;
}

bool is_missing(const struct check_result *check, const char *path)
{
	for (size_t i = 0; i < check->finding.missing_count; i++)
		if (strcmp(check->finding.missing[i], path) == 0)
			return true;
	return false;
}

void expect_verdict_at(int line, enum verdict wanted, const struct check_result *check)
{
	static const char *const words[] = {"holds", "unproven", "fails"};
	const struct finding *f = &check->finding;
	cr_expect_eq(f->verdict, wanted,
	             "line %d: %s %s, expected %s (ratio %.17g, first missing %s; %s)", line,
	             check->check->id, words[f->verdict], words[wanted],
	             f->computed ? f->ratio : -1.0, f->missing_count ? f->missing[0] : "none",
	             f->reason);
}

void expect_near_at(int line, const char *what, double value, double wanted, double tolerance)
{
	cr_expect(fabs(value - wanted) <= tolerance,
	          "line %d: %s = %.12g, expected %.12g within %g", line, what, value, wanted,
	          tolerance);
}
