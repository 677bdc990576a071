/* Bytes to nodes: places, limits, and what of YAML is refused. */
#include "../../src/input/tree.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static struct arena arena;
static struct diagnostics list;

static struct node *read_bytes(const void *bytes, size_t length)
{
	memset(&list, 0, sizeof list);
	arena_open(&arena, NULL, NULL);
	return tree_read(&arena, bytes, length, 7, &list);
}

static struct node *read_text(const char *text)
{
	return read_bytes(text, strlen(text));
}

static void assert_mark(struct mark mark, uint32_t line, uint32_t column, uint32_t width)
{
	cr_assert_eq(mark.file, 7);
	cr_assert_eq(mark.line, line, "line %u", mark.line);
	cr_assert_eq(mark.column, column, "column %u", mark.column);
	cr_assert_eq(mark.width, width, "width %u", mark.width);
}

Test(tree, keeps_shape_text_and_places)
{
	struct node *root = read_text("standfast: 1\n"
	                              "caf\xC3\xA9: \"x y\"   # a comment\n"
	                              "list:\n"
	                              "  - [1 mm, '2']\n"
	                              "  - {k: }\n");
	cr_assert_not_null(root);
	cr_assert_eq(list.count, 0);
	cr_assert_eq(root->kind, NODE_MAP);
	cr_assert_eq(root->count, 3);
	struct node *version = root->first, *name = version->next, *rows = name->next;
	cr_assert_str_eq(version->key, "standfast");
	assert_mark(version->key_mark, 1, 1, 9);
	cr_assert_str_eq(version->text, "1");
	assert_mark(version->mark, 1, 12, 1);
	cr_assert_not(version->quoted);
	/* columns count characters, not bytes */
	assert_mark(name->key_mark, 2, 1, 4);
	assert_mark(name->mark, 2, 7, 5);
	cr_assert(name->quoted);
	cr_assert_eq(name->length, 3);
	cr_assert_eq(rows->kind, NODE_SEQUENCE);
	cr_assert_eq(rows->count, 2);
	cr_assert_null(rows->next);
	struct node *pair = rows->first;
	assert_mark(pair->mark, 4, 5, 1);
	assert_mark(pair->first->mark, 4, 6, 4);
	assert_mark(pair->first->next->mark, 4, 12, 3);
	cr_assert_null(pair->key);
	struct node *empty = pair->next->first;
	cr_assert_str_eq(empty->key, "k");
	cr_assert_eq(empty->length, 0);
	arena_close(&arena);
}

Test(tree, order_mark_and_carriage_returns_move_no_column)
{
	struct node *root = read_text("\xEF\xBB\xBF" "a: 1\r\nb: 22\r\n");
	cr_assert_not_null(root);
	assert_mark(root->first->mark, 1, 4, 1);
	assert_mark(root->first->next->mark, 2, 4, 2);
	cr_assert_str_eq(root->first->text, "1");
	arena_close(&arena);
}

Test(tree, an_empty_file_is_an_empty_map)
{
	const char *const empty[] = {"", "\n\n", "# nothing\n", "\xEF\xBB\xBF"};
	for (size_t i = 0; i < COUNT(empty); i++) {
		struct node *root = read_text(empty[i]);
		cr_assert_not_null(root);
		cr_assert_eq(root->kind, NODE_MAP);
		cr_assert_eq(root->count, 0);
		cr_assert_eq(list.errors, 0);
		arena_close(&arena);
	}
	cr_assert_not_null(read_bytes(NULL, 0));
	arena_close(&arena);
}

/* Faults behind which nothing can be read, each with the place of its first character. */
static const struct {
	const char *bytes;
	size_t length;
	enum fault fault;
	uint32_t line, column;
	const char *message, *hint;
} fatal[] = {
#define BYTES(text) text, sizeof text - 1
	{BYTES("a: 1\nb: \0\n"), FAULT_YAML, 2, 4, "NUL", "UTF-8"},
	{BYTES("\xFF\xFE" "a\0:\0"), FAULT_YAML, 1, 1, "UTF-16", "UTF-8"},
	{BYTES("\xFE\xFF\0a"), FAULT_YAML, 1, 1, "UTF-16", "UTF-8"},
	{BYTES("a: caf\xE9\n"), FAULT_YAML, 1, 7, "not UTF-8", "UTF-8"},
	{BYTES("a: \xC0\xAF\n"), FAULT_YAML, 1, 4, "not UTF-8", "UTF-8"},
	{BYTES("a: \xED\xA0\x80\n"), FAULT_YAML, 1, 4, "not UTF-8", "UTF-8"},
	{BYTES("a: \xF4\x90\x80\x80\n"), FAULT_YAML, 1, 4, "not UTF-8", "UTF-8"},
	{BYTES("a: \xE2\x82"), FAULT_YAML, 1, 4, "not UTF-8", "UTF-8"},
	{BYTES("a: b\x07\n"), FAULT_YAML, 1, 5, "control character", "delete"},
	{BYTES("a: b\x7F\n"), FAULT_YAML, 1, 5, "control character", "delete"},
	{BYTES("a: b\xC2\x9B\n"), FAULT_YAML, 1, 5, "control character", "delete"},
	{BYTES("a: b\rc: d\n"), FAULT_YAML, 1, 5, "carriage return", "LF"},
	{BYTES("a: b\xE2\x80\xA8 c\n"), FAULT_YAML, 1, 5, "line separator", "delete"},
	{BYTES("a: b\xC2\x85 c\n"), FAULT_YAML, 1, 5, "line separator", "delete"},
	{BYTES("a: b\xEF\xBB\xBF\n"), FAULT_YAML, 1, 5, "no text", "delete"},
	{BYTES("a: \"x\\0y\"\n"), FAULT_YAML, 1, 4, "control character", "escaped"},
	{BYTES("a: \"x\\ey\"\n"), FAULT_YAML, 1, 4, "control character", "escaped"},
	{BYTES("\"k\\ay\": 1\n"), FAULT_YAML, 1, 1, "control character", "escaped"},
	{BYTES("a: 1\n\tb: 2\n"), FAULT_YAML, 2, 1, "", "not with tabs"},
	{BYTES("a: [1, 2\n"), FAULT_YAML, 2, 1, "line 1", "close the ["},
	{BYTES("a: {b: 1\nc: 2\n"), FAULT_YAML, 2, 2, "", "close the {"},
	{BYTES("a: \"open\n"), FAULT_YAML, 1, 4, "never closed", "close the quote"},
	{BYTES("a: \"open"), FAULT_YAML, 1, 4, "never closed", "close the quote"},
	{BYTES("a: 1\nb: 'open\nc: 2\nd: 3\n"), FAULT_YAML, 2, 4, "never closed", "close the quote"},
	{BYTES("a: b: c\n"), FAULT_YAML, 1, 5, "", "quotes"},
	{BYTES("a:\n  b: 1\n c: 2\n"), FAULT_YAML, 3, 2, "", "one column"},
	{BYTES("a: @b\n"), FAULT_YAML, 1, 4, "", "in quotes"},
	{BYTES("? [a]\n: b\n"), FAULT_YAML, 1, 3, "where a key must stand", "a word before a colon"},
	{BYTES("a: 1\n---\nb: 1\n"), FAULT_YAML_FEATURE, 2, 1, "second document", "one cell a file"},
	{BYTES("*a : 1\n"), FAULT_YAML_FEATURE, 1, 1, "alias", "write the key out"},
};

Test(tree, stops_where_nothing_can_be_read)
{
	for (size_t i = 0; i < COUNT(fatal); i++) {
		cr_assert_null(read_bytes(fatal[i].bytes, fatal[i].length), "row %zu", i);
		cr_assert_eq(list.count, 1, "row %zu", i);
		const struct diagnostic *one = &list.list[0];
		cr_assert_eq(one->fault, fatal[i].fault, "row %zu", i);
		cr_assert_eq(one->mark.line, fatal[i].line, "row %zu: line %u", i, one->mark.line);
		cr_assert_eq(one->mark.column, fatal[i].column, "row %zu: column %u", i,
		             one->mark.column);
		cr_assert_not_null(strstr(one->message, fatal[i].message), "row %zu: %s", i,
		                   one->message);
		cr_assert_not_null(strstr(one->hint, fatal[i].hint), "row %zu: %s; %s", i,
		                   one->message, one->hint);
		arena_close(&arena);
	}
}

/* Faults that leave the rest readable: the tree is given, the fault is in the list. */
static const struct {
	const char *text;
	enum fault fault;
	uint32_t line, column;
	const char *path;
	size_t keys;
} mild[] = {
	{"a: &x 1\nb: 2\n", FAULT_YAML_FEATURE, 1, 4, "a", 2},
	{"a: 1\nb: *x\n", FAULT_YAML_FEATURE, 2, 4, "b", 2},
	{"a: !!str 1\n", FAULT_YAML_FEATURE, 1, 4, "a", 1},
	{"a: !mine {b: 1}\n", FAULT_YAML_FEATURE, 1, 4, "a", 1},
	{"a: [1, &x [2]]\n", FAULT_YAML_FEATURE, 1, 8, "a[2]", 1},
	{"%TAG ! tag:x,2000:\n---\na: 1\n", FAULT_YAML_FEATURE, 1, 1, "", 1},
	{"<<: {b: 1}\na: 1\n", FAULT_YAML_FEATURE, 1, 1, "<<", 1},
	{"{'': 1, a: 1}\n", FAULT_YAML, 1, 2, "", 1},
	{"a: 1\nb: 2\na: 3\n", FAULT_DUPLICATE_KEY, 3, 1, "", 2},
	{"c:\n  - {k: 1}\n  - {k: 1, j: 2, k: 3}\n", FAULT_DUPLICATE_KEY, 3, 18, "c[2]", 1},
};

Test(tree, goes_on_where_the_rest_can_be_read)
{
	for (size_t i = 0; i < COUNT(mild); i++) {
		struct node *root = read_text(mild[i].text);
		cr_assert_not_null(root, "row %zu", i);
		cr_assert_eq(list.errors, 1, "row %zu: %zu", i, list.errors);
		const struct diagnostic *one = &list.list[0];
		cr_assert_eq(one->fault, mild[i].fault, "row %zu", i);
		cr_assert_eq(one->mark.line, mild[i].line, "row %zu: line %u", i, one->mark.line);
		cr_assert_eq(one->mark.column, mild[i].column, "row %zu: column %u", i,
		             one->mark.column);
		cr_assert_str_eq(one->path, mild[i].path, "row %zu", i);
		cr_assert_eq(root->count, mild[i].keys, "row %zu", i);
		arena_close(&arena);
	}
}

Test(tree, the_first_of_two_keys_is_kept)
{
	struct node *root = read_text("a: 1\nb: 2\na: 3\na: 4\n");
	cr_assert_eq(list.errors, 2);
	cr_assert_not_null(strstr(list.list[0].hint, "line 1"));
	cr_assert_str_eq(root->first->text, "1");
	cr_assert_str_eq(root->first->next->text, "2");
	cr_assert_null(root->first->next->next);
	arena_close(&arena);
}

Test(tree, a_quoted_merge_key_and_a_start_mark_are_nothing_special)
{
	cr_assert_not_null(read_text("%YAML 1.1\n---\n\"<<\": 1\n...\n"));
	cr_assert_eq(list.errors, 0);
	arena_close(&arena);
}

static char *repeated(const char *piece, size_t times, const char *before)
{
	size_t length = strlen(piece), at = strlen(before);
	char *text = malloc(at + times * length + 1);
	strcpy(text, before);
	for (size_t i = 0; i < times; i++, at += length)
		memcpy(text + at, piece, length + 1);
	return text;
}

static void assert_size_fault(char *text)
{
	cr_assert_null(read_text(text));
	cr_assert_eq(list.list[0].fault, FAULT_SIZE, "%s", list.list[0].message);
	arena_close(&arena);
	free(text);
}

Test(tree, limits_are_kept)
{
	assert_size_fault(repeated("[", MAX_DEPTH + 1, ""));
	assert_size_fault(repeated("{a: ", MAX_DEPTH + 1, ""));
	assert_size_fault(repeated("- ", MAX_DEPTH + 1, ""));
	assert_size_fault(repeated("- 1\n", MAX_NODES, ""));
	assert_size_fault(repeated("# 3456789\n", MAX_FILE_BYTES / 10 + 1, ""));
	char *full = repeated("- 1\n", MAX_NODES - 1, "");
	cr_assert_not_null(read_text(full), "the limit itself is allowed");
	arena_close(&arena);
	free(full);
}

/* Twice 25 000 different keys: what grew with the square of their number would not end in time. */
Test(tree, many_keys_are_compared_quickly, .timeout = 20)
{
	char *text = malloc(2 * 24000 * 12 + 1);
	size_t at = 0;
	for (int i = 0; i < 2 * 24000; i++)
		at += (size_t)sprintf(text + at, "k%d: 1\n", i % 24000);
	struct node *root = read_text(text);
	cr_assert_eq(list.errors, 24000);
	cr_assert_eq(root->count, 24000);
	arena_close(&arena);
	free(text);
}

/* libyaml allocates by these functions of its own; a definition here takes their place in its
 * shared library. */
#define TAKES_THE_PLACE __attribute__((visibility("default")))
TAKES_THE_PLACE void *yaml_malloc(size_t size);
TAKES_THE_PLACE void *yaml_realloc(void *old, size_t size);
TAKES_THE_PLACE void yaml_free(void *block);
TAKES_THE_PLACE unsigned char *yaml_strdup(const unsigned char *text);

static int yaml_calls, yaml_fail_at, yaml_live;
static bool yaml_stays_failed;

static bool fails_now(void)
{
	yaml_calls++;
	return yaml_fail_at > 0 &&
	       (yaml_stays_failed ? yaml_calls >= yaml_fail_at : yaml_calls == yaml_fail_at);
}

void *yaml_malloc(size_t size)
{
	if (fails_now())
		return NULL;
	yaml_live++;
	return malloc(size > 0 ? size : 1);
}

void *yaml_realloc(void *old, size_t size)
{
	if (fails_now())
		return NULL;
	yaml_live += old == NULL;
	return realloc(old, size > 0 ? size : 1);
}

void yaml_free(void *block)
{
	yaml_live -= block != NULL;
	free(block);
}

unsigned char *yaml_strdup(const unsigned char *text)
{
	size_t size = text ? strlen((const char *)text) + 1 : 0;
	unsigned char *copy = text ? yaml_malloc(size) : NULL;
	return copy ? memcpy(copy, text, size) : NULL;
}

static void fail_every_call_in_turn(bool stays_failed)
{
	static const char text[] = "%TAG !x! tag:x,2000:\n---\na: {b: [1, \"two\", *c, &d e], f: "
	                           "!!str g}\nh: |\n  text\n";
	yaml_stays_failed = stays_failed;
	for (yaml_fail_at = 1;; yaml_fail_at++) {
		yaml_calls = yaml_live = 0;
		struct node *root = read_text(text);
		cr_assert_eq(yaml_live, 0, "call %d leaks", yaml_fail_at);
		bool memory = list.count > 0 && list.list[list.count - 1].fault == FAULT_MEMORY;
		cr_assert_eq(root == NULL, memory, "call %d", yaml_fail_at);
		arena_close(&arena);
		if (yaml_calls < yaml_fail_at)
			break;
		cr_assert(memory, "call %d fails without a word", yaml_fail_at);
	}
	cr_assert_gt(yaml_fail_at, 20, "the calls of libyaml come through here");
	yaml_fail_at = 0;
}

Test(tree, a_failing_allocation_of_libyaml_is_a_memory_fault)
{
	fail_every_call_in_turn(false);
	fail_every_call_in_turn(true);
}
