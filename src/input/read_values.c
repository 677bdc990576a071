/* Numbers, words and texts. */
#include "read.h"
#include <stdio.h>
#include <string.h>

/* ", or slotted": what else may stand where a number is wanted, from the other rows of its path */
static void add_alternatives(const struct field *field, char hint[DIAGNOSTIC_HINT])
{
	for (const struct field *row = field_find(field->path); row; row = field_next(row)) {
		const char *word = row->kind == FIELD_NONE  ? "none"
		                   : row->kind == FIELD_ANY ? row->words[0]
		                                            : NULL;
		size_t at = strlen(hint);
		if (word)
			snprintf(hint + at, DIAGNOSTIC_HINT - at, ", or %s", word);
	}
}

/* A second row of numbers of the same path, or NULL: a joint's speed is angular or linear. */
static const struct field *other_numbers(const struct field *field)
{
	for (const struct field *row = field_find(field->path); row; row = field_next(row))
		if (row->kind == FIELD_NUMBER && field->kind == FIELD_NUMBER &&
		    row->dimension != field->dimension)
			return row;
	return NULL;
}

/* What is wrong and what to write come from the unit table; what else may stand here from the field
 * table. */
static void number_fault(struct reader *reader, const struct field *field, const struct node *node,
                         enum dimension wanted, const struct place *place,
                         enum quantity_error error, const struct unit *close)
{
	struct explanation why;
	char hint[DIAGNOSTIC_HINT];
	const struct field *other = other_numbers(field);
	if (other)
		quantity_explain_either(error, node->text, node->length,
		                        (const enum dimension[2]){wanted, other->dimension}, close,
		                        &why);
	else
		quantity_explain(error, node->text, node->length, wanted, close, &why);
	snprintf(hint, sizeof hint, "%s", why.remedy);
	if (error == QUANTITY_NOT_A_NUMBER)
		add_alternatives(field, hint);
	read_fault(reader, FAULT_NUMBER, node->mark, place, hint, "%s", why.wrong);
}

bool read_is_cut(const struct node *node, const char *behind)
{
	double ignored;
	return node->kind == NODE_SCALAR && !node->quoted && behind[0] >= '0' && behind[0] <= '9' &&
	       quantity_parse_bare(node->text, node->length, NULL, &ignored) == QUANTITY_OK;
}

/* As one text again it is explained as any other decimal comma, thousands included. */
void read_comma_fault(struct reader *reader, const struct field *field, const struct node *node,
                      const char *behind, const struct place *place)
{
	char text[PATH_ROOM];
	struct quantity ignored;
	struct explanation why;
	snprintf(text, sizeof text, "%.60s,%.60s", node->text, behind);
	enum quantity_error error = quantity_parse(text, strlen(text), field->dimension, &ignored);
	quantity_explain(error == QUANTITY_SEPARATOR ? error : QUANTITY_DECIMAL_COMMA, text,
	                 strlen(text), field->dimension, NULL, &why);
	read_fault(reader, FAULT_NUMBER, node->mark, place, why.remedy, "%s", why.wrong);
}

bool read_cut_number(struct reader *reader, const struct field *rows, const struct node *node,
                     const struct place *place)
{
	const struct node *next = node->next;
	if (!rows || !next || next->kind != NODE_SCALAR || next->length > 0 || next->quoted ||
	    !read_is_cut(node, next->key))
		return false;
	while (rows && rows->kind != FIELD_NUMBER)
		rows = rows->kind == FIELD_ALIAS ? field_find(rows->alias) : field_next(rows);
	if (rows)
		read_comma_fault(reader, rows, node, next->key, place);
	return rows != NULL;
}

/* In the unit that the user wrote, so that the limits can be compared at a glance. */
static bool check_range(struct reader *reader, const struct field *field, const struct node *node,
                        const struct unit *unit, const struct place *place, double value)
{
	if (value >= field->low && value <= field->high)
		return true;
	char low[40], high[40], hint[DIAGNOSTIC_HINT];
	quantity_write(field->low, unit, 6, low, sizeof low);
	quantity_write(field->high, unit, 6, high, sizeof high);
	if (field->low < field->high)
		snprintf(hint, sizeof hint, "write a value from %s to %s", low, high);
	else
		snprintf(hint, sizeof hint, "write %s", low);
	read_fault(reader, FAULT_RANGE, node->mark, place, hint, "'%.40s' is %s", node->text,
	           value < field->low ? "too small" : "too large");
	return false;
}

/* A quantity with its unit, or in a unit that is named elsewhere. */
static bool parse(struct reader *reader, const struct field *field, const struct node *node,
                  const struct unit *named, const struct place *place, struct quantity *out)
{
	if (node->kind != NODE_SCALAR) {
		read_shape_fault(reader, node, place, "a number",
		                 named ? "" : dimension_example(field->dimension));
		return false;
	}
	enum quantity_error error;
	*out = (struct quantity){.unit = named};
	if (named)
		error = quantity_parse_bare(node->text, node->length, named, &out->value);
	else
		error = quantity_parse(node->text, node->length, field->dimension, out);
	if (error != QUANTITY_OK) {
		/* beside a named unit a plain number is wanted */
		number_fault(reader, field, node, named ? DIM_FACTOR : field->dimension, place,
		             error, out->close);
		return false;
	}
	return check_range(reader, field, node, out->unit, place, out->value);
}

bool read_value(struct reader *reader, const struct field *field, const struct node *node,
                const struct unit *unit, const struct place *place, double *out)
{
	struct quantity quantity;
	if (!parse(reader, field, node, unit, place, &quantity))
		return false;
	*out = quantity.value;
	return true;
}

void read_number(struct reader *reader, const struct field *field, const struct node *node,
                 const struct place *place, struct number *out)
{
	struct quantity quantity;
	*out = (struct number){.given.mark = node->mark};
	if (!parse(reader, field, node, NULL, place, &quantity))
		return;
	out->given.origin = GIVEN;
	out->value = quantity.value;
	out->unit = quantity.unit;
}

/* "a, b or c, or unknown" */
static void list_words(const char *const *words, char *out, size_t room)
{
	size_t at = 0;
	for (size_t i = 0; words[i] && at < room; i++) {
		const char *between = i == 0 ? "" : words[i + 1] ? ", " : " or ";
		at += (size_t)snprintf(out + at, room - at, "%s%s", between, words[i]);
	}
	if (at < room)
		snprintf(out + at, room - at, ", or unknown");
}

static const char *nearest_word(const char *written, const char *const *words)
{
	const char *nearest = NULL;
	size_t apart, least = 0;
	size_t length = strlen(written);
	for (; *words; words++) {
		/* C30 is the first half of C30/37 */
		if (length > 0 && strncmp(*words, written, length) == 0 && (*words)[length] == '/')
			return *words;
		if (word_is_near(written, *words, &apart) && (!nearest || apart < least)) {
			nearest = *words;
			least = apart;
		}
	}
	return nearest;
}

/* YAML itself reads these as yes and no; here the plain words stand, so that a text is never a
 * truth value */
static const char *truth_word(const struct node *node, const char *const *words)
{
	static const char *const truths[][2] = {
		{"true", "yes"}, {"True", "yes"}, {"TRUE", "yes"}, {"on", "yes"}, {"On", "yes"}, {"ON", "yes"},
		{"y", "yes"}, {"Y", "yes"}, {"Yes", "yes"}, {"YES", "yes"},
		{"false", "no"}, {"False", "no"}, {"FALSE", "no"}, {"off", "no"}, {"Off", "no"}, {"OFF", "no"},
		{"n", "no"}, {"N", "no"}, {"No", "no"}, {"NO", "no"}};
	for (size_t i = 0; words == words_yes_no && i < sizeof truths / sizeof truths[0]; i++)
		if (node_is_word(node, truths[i][0]))
			return truths[i][1];
	return NULL;
}

static void word_fault(struct reader *reader, const char *const *words, const struct node *node,
                       const struct place *place)
{
	char list[DIAGNOSTIC_HINT - 60], hint[DIAGNOSTIC_HINT];
	const char *nearest = nearest_word(node->text, words);
	const char *truth = truth_word(node, words);
	list_words(words, list, sizeof list);
	if (truth)
		snprintf(hint, sizeof hint, "write %s: the words are yes and no", truth);
	else if (nearest)
		snprintf(hint, sizeof hint, "did you mean '%s'? write %s", nearest, list);
	else
		snprintf(hint, sizeof hint, "write %s", list);
	read_fault(reader, FAULT_WORD, node->mark, place, hint, "'%.40s' is not one of the words",
	           node->text);
}

void read_word(struct reader *reader, const struct field *field, const struct node *node,
               const struct place *place, struct word *out)
{
	*out = (struct word){.given.mark = node->mark};
	if (node->kind != NODE_SCALAR) {
		read_shape_fault(reader, node, place, "a word", field->example);
		return;
	}
	for (int i = 0; field->words[i]; i++)
		if (node_is_word(node, field->words[i])) {
			out->given.origin = GIVEN;
			out->value = i;
			return;
		}
	word_fault(reader, field->words, node, place);
}

static bool is_white(char c)
{
	return c == ' ' || c == '\t' || c == '\n';
}

/* One line: every run of white space becomes one space, none at the ends. Pages set it in their own
 * lines. */
static void make_one_line(char *text)
{
	char *to = text;
	for (const char *from = text; *from; from++) {
		bool white = is_white(*from);
		if (!white)
			*to++ = *from;
		else if (to > text && to[-1] != ' ')
			*to++ = ' ';
	}
	if (to > text && to[-1] == ' ')
		to--;
	*to = 0;
}

/* Bounded, since every page prints it. */
void read_text(struct reader *reader, const struct node *node, const struct place *place,
               struct text *out)
{
	*out = (struct text){.given.mark = node->mark, .value = ""};
	if (node->kind != NODE_SCALAR) {
		read_shape_fault(reader, node, place, "a text", "");
		return;
	}
	if (node->length > MAX_TEXT_BYTES) {
		read_fault(reader, FAULT_SIZE, node->mark, place, "shorten it",
		           "a text of more than %d bytes", MAX_TEXT_BYTES);
		return;
	}
	char *text = arena_text(reader->arena, node->text, node->length);
	if (!text)
		return;
	make_one_line(text);
	out->value = text;
	out->given.origin = text[0] ? GIVEN : ABSENT;
}
