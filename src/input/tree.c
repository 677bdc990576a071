/* libyaml's events to nodes. */
#include "tree.h"
#include "duplicates.h"
#include "plain_text.h"
#include <stdio.h>
#include <string.h>
#include <yaml.h>

struct level {
	struct node *node, *last;       /* the map or sequence that is open, and its newest child */
	const char *key;                /* of the child to come; NULL: a key is due */
	struct mark key_mark;
	bool drop;                      /* the child to come is not kept */
};

struct builder {
	struct arena *arena;
	struct diagnostics *to;
	uint32_t file;
	struct mark end;                /* behind the last character of the text */
	struct level levels[MAX_DEPTH];
	size_t depth, nodes, documents;
	struct node *root;
	bool stopped;                   /* a fault behind which nothing can be read */
};

/* libyaml counts lines and columns from 0, and columns in characters, as editors do. */
static struct mark mark_of(const struct builder *b, yaml_mark_t start, yaml_mark_t end)
{
	struct mark mark = {b->file, (uint32_t)start.line + 1, (uint32_t)start.column + 1, 1};
	/* libyaml gives a text without a line end one more line than it has */
	if (mark.line > b->end.line)
		return b->end;
	if (end.line == start.line && end.column > start.column)
		mark.width = (uint32_t)(end.column - start.column);
	return mark;
}

static struct mark event_mark(const struct builder *b, const yaml_event_t *event)
{
	return mark_of(b, event->start_mark, event->end_mark);
}

/* "loads[2].force": the maps and lists that are open; cut where it is long. Returns the length. */
static size_t write_open(const struct builder *b, char out[DIAGNOSTIC_PATH])
{
	size_t at = 0;
	out[0] = 0;
	for (size_t i = 1; i < b->depth && at < DIAGNOSTIC_PATH; i++) {
		const struct node *parent = b->levels[i - 1].node, *node = b->levels[i].node;
		int n = 0;
		if (parent->kind == NODE_SEQUENCE)
			n = snprintf(out + at, DIAGNOSTIC_PATH - at, "[%zu]", parent->count);
		else if (node->key)
			n = snprintf(out + at, DIAGNOSTIC_PATH - at, "%s%s", at ? "." : "",
			             node->key);
		at += n > 0 ? (size_t)n : 0;
	}
	return at;
}

/* The same with the node to come. */
static void write_path(const struct builder *b, char out[DIAGNOSTIC_PATH])
{
	size_t at = write_open(b, out);
	if (b->depth == 0 || at >= DIAGNOSTIC_PATH)
		return;
	const struct level *level = &b->levels[b->depth - 1];
	if (level->node->kind == NODE_SEQUENCE)
		snprintf(out + at, DIAGNOSTIC_PATH - at, "[%zu]", level->node->count + 1);
	else if (level->key)
		snprintf(out + at, DIAGNOSTIC_PATH - at, "%s%s", at ? "." : "", level->key);
}

static void report(struct builder *b, enum fault fault, struct mark mark, const char *hint,
                   const char *message)
{
	char path[DIAGNOSTIC_PATH];
	write_path(b, path);
	diagnose(b->to, ERROR, fault, mark, path, hint, "%s", message);
}

/* A fault after which a guess would only bring follow-on faults. */
static void stop(struct builder *b, enum fault fault, struct mark mark, const char *hint,
                 const char *message)
{
	report(b, fault, mark, hint, message);
	b->stopped = true;
}

static void out_of_memory(struct builder *b)
{
	stop(b, FAULT_MEMORY, (struct mark){.file = b->file}, "", "out of memory");
}

static struct level *top(struct builder *b)
{
	return b->depth > 0 ? &b->levels[b->depth - 1] : NULL;
}

/* Events do not say whether a scalar is a key; in a map every second one is. */
static bool key_is_due(struct builder *b)
{
	struct level *level = top(b);
	return level && level->node->kind == NODE_MAP && !level->key;
}

/* Hangs the node into what is open, under the key that was read. */
static void attach(struct builder *b, struct node *node)
{
	struct level *level = top(b);
	if (!level) {
		b->root = node;
		return;
	}
	node->key = level->key;
	node->key_mark = level->key_mark;
	level->key = NULL;
	if (level->drop) {
		level->drop = false;
		return;
	}
	if (level->last)
		level->last->next = node;
	else
		level->node->first = node;
	level->last = node;
	level->node->count++;
}

static struct node *new_node(struct builder *b, enum node_kind kind, struct mark mark)
{
	if (++b->nodes > MAX_NODES) {
		stop(b, FAULT_SIZE, mark, "a cell file has some hundred values",
		     "more values than a cell file can have");
		return NULL;
	}
	struct node *node = arena_take(b->arena, 1, sizeof *node);
	if (!node) {
		out_of_memory(b);
		return NULL;
	}
	node->kind = kind;
	node->mark = mark;
	node->text = "";
	return node;
}

/* Refused, but the value itself is kept: the rest of the file can still be judged. */
static void refuse_anchor_and_tag(struct builder *b, const yaml_event_t *event, const void *anchor,
                                  const void *tag)
{
	if (anchor)
		report(b, FAULT_YAML_FEATURE, event_mark(b, event),
		       "write the value out where it is used", "a YAML anchor (&)");
	if (tag)
		report(b, FAULT_YAML_FEATURE, event_mark(b, event), "leave the tag out",
		       "a YAML tag (!)");
}

/* The text of a scalar; NULL after a fault. */
static const char *text_of(struct builder *b, const yaml_event_t *event)
{
	const char *value = (const char *)event->data.scalar.value;
	size_t length = event->data.scalar.length;
	if (plain_text_has_control(value, length)) {
		stop(b, FAULT_YAML, event_mark(b, event), "leave the escaped character out",
		     "a control character in a text");
		return NULL;
	}
	const char *text = arena_text(b->arena, value, length);
	if (!text)
		out_of_memory(b);
	return text;
}

/* A dropped child is still read, so that its own faults are found. */
static void take_key(struct builder *b, const yaml_event_t *event)
{
	struct level *level = top(b);
	const char *key = text_of(b, event);
	if (!key)
		return;
	level->key = key;
	level->key_mark = event_mark(b, event);
	bool plain = event->data.scalar.style == YAML_PLAIN_SCALAR_STYLE;
	if (plain && strcmp(key, "<<") == 0) {
		report(b, FAULT_YAML_FEATURE, level->key_mark, "write the keys out",
		       "a YAML merge key (<<)");
		level->drop = true;
	} else if (key[0] == 0) {
		report(b, FAULT_YAML, level->key_mark, "write the key before the colon",
		       "a value without a key");
		level->drop = true;
	}
}

static void take_scalar(struct builder *b, const yaml_event_t *event)
{
	refuse_anchor_and_tag(b, event, event->data.scalar.anchor, event->data.scalar.tag);
	if (key_is_due(b)) {
		take_key(b, event);
		return;
	}
	const char *text = text_of(b, event);
	struct node *node = text ? new_node(b, NODE_SCALAR, event_mark(b, event)) : NULL;
	if (!node)
		return;
	node->text = text;
	node->length = event->data.scalar.length;
	node->quoted = event->data.scalar.style != YAML_PLAIN_SCALAR_STYLE;
	attach(b, node);
}

/* The depth is checked before anything is taken, so that a file of brackets costs nothing. */
static void open_level(struct builder *b, const yaml_event_t *event, enum node_kind kind)
{
	struct mark mark = event_mark(b, event);
	if (key_is_due(b)) {
		stop(b, FAULT_YAML, mark,
		     "a key is a word before a colon; text that begins with [ or { needs quotes",
		     "a list or a map where a key must stand");
		return;
	}
	if (b->depth == MAX_DEPTH) {
		stop(b, FAULT_SIZE, mark, "close the brackets or check the indentation",
		     "nested too deep");
		return;
	}
	struct node *node = new_node(b, kind, mark);
	if (!node)
		return;
	attach(b, node);
	b->levels[b->depth++] = (struct level){.node = node};
}

static void close_level(struct builder *b)
{
	struct node *node = top(b)->node;
	char path[DIAGNOSTIC_PATH];
	write_open(b, path);
	b->depth--;
	if (node->kind == NODE_MAP && !duplicates_drop(b->arena, node, path, b->to))
		out_of_memory(b);
}

/* The value that it stands for is not looked up; a blank takes its place. */
static void take_alias(struct builder *b, const yaml_event_t *event)
{
	struct mark mark = event_mark(b, event);
	if (key_is_due(b)) {
		stop(b, FAULT_YAML_FEATURE, mark, "write the key out", "a YAML alias (*) as a key");
		return;
	}
	report(b, FAULT_YAML_FEATURE, mark,
	       "write the value out, or put a text that begins with * in quotes",
	       "a YAML alias (*)");
	struct node *blank = new_node(b, NODE_SCALAR, mark);
	if (blank)
		attach(b, blank);
}

static void open_document(struct builder *b, const yaml_event_t *event)
{
	if (b->documents++ > 0)
		stop(b, FAULT_YAML_FEATURE, event_mark(b, event),
		     "write one cell a file; delete what follows", "a second document");
	else if (event->data.document_start.tag_directives.start !=
	         event->data.document_start.tag_directives.end)
		report(b, FAULT_YAML_FEATURE, event_mark(b, event), "leave it out",
		       "a YAML tag directive");
}

static void take_event(struct builder *b, const yaml_event_t *event)
{
	switch (event->type) {
	case YAML_DOCUMENT_START_EVENT: open_document(b, event); break;
	case YAML_ALIAS_EVENT: take_alias(b, event); break;
	case YAML_SCALAR_EVENT: take_scalar(b, event); break;
	case YAML_SEQUENCE_START_EVENT:
		refuse_anchor_and_tag(b, event, event->data.sequence_start.anchor,
		                      event->data.sequence_start.tag);
		open_level(b, event, NODE_SEQUENCE);
		break;
	case YAML_MAPPING_START_EVENT:
		refuse_anchor_and_tag(b, event, event->data.mapping_start.anchor,
		                      event->data.mapping_start.tag);
		open_level(b, event, NODE_MAP);
		break;
	case YAML_SEQUENCE_END_EVENT: case YAML_MAPPING_END_EVENT: close_level(b); break;
	default: break;
	}
}

/* What usually lies behind libyaml's sentences. */
static const char *hint_for(const char *problem, char found)
{
	static const struct { const char *part, *hint; } hints[] = {
		{"mapping values are not allowed", "check the indentation and the space behind each colon; a text that holds a colon and a space needs quotes"},
		{"did not find expected ',' or '}'", "close the { with }, with commas between the keys"},
		{"did not find expected ',' or ']'", "close the [ with ], with commas between the values"},
		{"could not find expected ':'", "write key: value, with a space behind the colon"},
		{"did not find expected key", "keys of one map stand in one column: check the indentation"},
		{"did not find expected '-'", "rows of one list begin in one column: check the indentation"},
		{"unexpected end of stream", "close the quote"},
		{"unknown escape character", "write the text in single quotes, or \\\\ for a backslash"},
		{"cannot start any token", "put a text that begins with this character in quotes"},
		{"undefined tag handle", "leave the tag out, or put a text that begins with ! in quotes"},
	};
	if (found == '\t')
		return "indent with spaces, not with tabs";
	for (size_t i = 0; i < sizeof hints / sizeof hints[0]; i++)
		if (strstr(problem, hints[i].part))
			return hints[i].hint;
	return "";
}

/* The byte that stands at a mark, 0 at the end. */
static char byte_at(yaml_mark_t mark, const char *bytes, size_t length)
{
	size_t at = 0;
	for (size_t line = 0; at < length && line < mark.line; at++)
		line += bytes[at] == '\n';
	for (size_t column = 0; at < length && column < mark.column; column++)
		do
			at++;
		while (at < length && ((unsigned char)bytes[at] & 0xC0) == 0x80);
	return at < length ? bytes[at] : 0;
}

static void report_parser(struct builder *b, const yaml_parser_t *parser, const char *bytes,
                          size_t length)
{
	if (parser->error == YAML_MEMORY_ERROR) {
		out_of_memory(b);
		return;
	}
	const char *problem = parser->problem ? parser->problem : "not YAML";
	const char *hint = hint_for(problem, byte_at(parser->problem_mark, bytes, length));
	struct mark mark = {.file = b->file};
	if (parser->error != YAML_READER_ERROR)
		mark = mark_of(b, parser->problem_mark, parser->problem_mark);
	/* an open quote runs to the end of the file: its own line is the place to mend */
	if (parser->context && strstr(problem, "unexpected end of stream")) {
		mark = mark_of(b, parser->context_mark, parser->context_mark);
		stop(b, FAULT_YAML, mark, hint, "a quote begins here and is never closed");
		return;
	}
	char message[DIAGNOSTIC_MESSAGE];
	/* what was being read may have begun far above */
	if (parser->context && parser->context_mark.line != parser->problem_mark.line)
		snprintf(message, sizeof message, "%s, %s that begins in line %zu", problem,
		         parser->context, parser->context_mark.line + 1);
	else
		snprintf(message, sizeof message, "%s", problem);
	stop(b, FAULT_YAML, mark, hint, message);
}

static void parse(struct builder *b, yaml_parser_t *parser, const char *bytes, size_t length)
{
	bool ended = false;
	yaml_parser_set_encoding(parser, YAML_UTF8_ENCODING);
	yaml_parser_set_input_string(parser, (const unsigned char *)bytes, length);
	while (!ended && !b->stopped) {
		yaml_event_t event;
		if (!yaml_parser_parse(parser, &event)) {
			report_parser(b, parser, bytes, length);
			return;
		}
		take_event(b, &event);
		ended = event.type == YAML_STREAM_END_EVENT;
		yaml_event_delete(&event);
	}
}

/* The place behind the last character, as an editor shows it. */
static struct mark end_of(const char *bytes, size_t length, uint32_t file)
{
	struct mark end = {file, 1, 1, 1};
	for (size_t at = 0; at < length; at++) {
		end.column += ((unsigned char)bytes[at] & 0xC0) != 0x80;
		if (bytes[at] == '\n') {
			end.line++;
			end.column = 1;
		}
	}
	return end;
}

/* Before libyaml sees them: its marks for such faults are byte offsets. */
static bool check_bytes(struct builder *b, const char *bytes, size_t length)
{
	if (length > MAX_FILE_BYTES) {
		stop(b, FAULT_SIZE, (struct mark){.file = b->file},
		     "a cell file has some kilobytes", "the file is larger than 1 MiB");
		return false;
	}
	return plain_text_check(bytes, length, b->file, b->to);
}

/* A byte order mark is no part of the first line. */
static void skip_order_mark(const char **bytes, size_t *length)
{
	if (*length < 3 || memcmp(*bytes, "\xEF\xBB\xBF", 3) != 0)
		return;
	*bytes += 3;
	*length -= 3;
}

struct node *tree_read(struct arena *arena, const void *bytes, size_t length, uint32_t file,
                       struct diagnostics *to)
{
	struct builder b = {.arena = arena, .to = to, .file = file};
	const char *text = length > 0 ? bytes : "";
	yaml_parser_t parser;
	if (!check_bytes(&b, text, length))
		return NULL;
	skip_order_mark(&text, &length);
	b.end = end_of(text, length, file);
	if (!yaml_parser_initialize(&parser)) {
		out_of_memory(&b);
		return NULL;
	}
	parse(&b, &parser, text, length);
	yaml_parser_delete(&parser);
	/* an empty file is an empty map: the reader then names the keys that it misses */
	if (!b.stopped && !b.root)
		b.root = new_node(&b, NODE_MAP, (struct mark){file, 1, 1, 1});
	return b.stopped ? NULL : b.root;
}
