/* Reading the case files, and comparing. */
#include "case_file.h"

#include <criterion/criterion.h>
#include <ctype.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_LINE = 1024 };

void case_fail(const struct test_case *test, unsigned line, const char *format, ...)
{
	char text[600];
	va_list list;
	va_start(list, format);
	vsnprintf(text, sizeof text, format, list);
	va_end(list);
	cr_assert_fail("%s:%u: %s: %s", test->file, line, test->title, text);
}

/* --- reading -------------------------------------------------------------------------------------
 */

static void trim(char *text)
{
	size_t length = strlen(text);
	while (length > 0 && isspace((unsigned char)text[length - 1]))
		text[--length] = '\0';
}

static void copy(const struct test_case *test, unsigned line, char *out, size_t room,
                 const char *text)
{
	if (strlen(text) >= room)
		case_fail(test, line, "longer than %zu characters", room);
	memcpy(out, text, strlen(text) + 1);
}

static void append(const struct test_case *test, unsigned line, char *out, size_t room,
                   const char *more)
{
	size_t length = strlen(out);
	if (length + strlen(more) + 2 >= room)
		case_fail(test, line, "longer than %zu characters", room);
	out[length] = ' ';
	memcpy(out + length + 1, more, strlen(more) + 1);
}

static struct case_line *add_line(struct test_case *test, struct case_line *list, size_t *count,
                                  const char *key, const char *value, unsigned line)
{
	if (*count == MAX_LINES)
		case_fail(test, line, "more than %d lines", MAX_LINES);
	struct case_line *added = &list[(*count)++];
	copy(test, line, added->key, sizeof added->key, key);
	copy(test, line, added->value, sizeof added->value, value);
	added->line = line;
	added->used = false;
	return added;
}

/* one "key: value" line; returns where a following indented line is to be appended */
static char *take_line(struct test_case *test, char *text, unsigned line, size_t *room)
{
	char *colon = strchr(text, ':');
	if (colon == NULL)
		case_fail(test, line, "no colon in \"%s\"", text);
	*colon = '\0';
	char *value = colon + 1 + strspn(colon + 1, " \t");
	*room = sizeof test->source;
	if (!strcmp(text, "source")) {
		copy(test, line, test->source, sizeof test->source, value);
		return test->source;
	}
	if (!strcmp(text, "kind")) {
		*room = sizeof test->kind;
		copy(test, line, test->kind, sizeof test->kind, value);
		return test->kind;
	}
	*room = MAX_VALUE;
	if (!strncmp(text, "expect ", 7))
		return add_line(test, test->expect, &test->expect_count, text + 7, value, line)
		        ->value;
	return add_line(test, test->input, &test->input_count, text, value, line)->value;
}

static FILE *open_cases(const char *file)
{
	FILE *in = fopen(file, "r");
	cr_assert_not_null(in, "%s cannot be read", file);
	return in;
}

void case_lines(const char *file, void (*visit)(void *user, const char *file, unsigned line),
                void *user)
{
	FILE *in = open_cases(file);
	char text[MAX_LINE];
	for (unsigned line = 1; fgets(text, sizeof text, in) != NULL; line++)
		if (!strncmp(text, "case:", 5))
			visit(user, file, line);
	fclose(in);
}

static void check_complete(const struct test_case *test)
{
	if (!*test->source)
		case_fail(test, test->line, "no source: say where the numbers are from");
	if (!*test->kind)
		case_fail(test, test->line, "no kind");
	if (test->expect_count == 0)
		case_fail(test, test->line, "nothing expected");
}

void case_read(const char *file, unsigned line, struct test_case *out)
{
	memset(out, 0, sizeof *out);
	out->file = file;
	out->line = line;
	FILE *in = open_cases(file);
	char text[MAX_LINE], *last = NULL;
	size_t room = 0;
	for (unsigned at = 1; fgets(text, sizeof text, in) != NULL; at++) {
		if (at < line)
			continue;
		trim(text);
		bool begins = !strncmp(text, "case:", 5);
		if (begins && at > line)
			break;
		if (begins)
			copy(out, at, out->title, sizeof out->title,
			     text + 5 + strspn(text + 5, " "));
		else if (*text == ' ' || *text == '\t') {
			if (last == NULL)
				case_fail(out, at, "an indented line that continues nothing");
			append(out, at, last, room, text + strspn(text, " \t"));
		} else if (*text && *text != '#')
			last = take_line(out, text, at, &room);
	}
	fclose(in);
	check_complete(out);
}

/* --- inputs
 * ---------------------------------------------------------------------------------------- */

static struct case_line *find(struct test_case *test, const char *key)
{
	for (size_t i = 0; i < test->input_count; i++)
		if (!strcmp(test->input[i].key, key)) {
			test->input[i].used = true;
			return &test->input[i];
		}
	case_fail(test, test->line, "kind %s needs \"%s\"", test->kind, key);
	return NULL;
}

bool case_has(const struct test_case *test, const char *key)
{
	for (size_t i = 0; i < test->input_count; i++)
		if (!strcmp(test->input[i].key, key))
			return true;
	return false;
}

static double number_of(const struct test_case *test, unsigned line, const char *text,
                        size_t length, enum dimension dimension)
{
	struct quantity quantity = {0};
	enum quantity_error error = quantity_parse(text, length, dimension, &quantity);
	if (error != QUANTITY_OK) {
		struct explanation why;
		quantity_explain(error, text, length, dimension, quantity.close, &why);
		case_fail(test, line, "%s; %s", why.wrong, why.remedy);
	}
	return quantity.value;
}

double case_number(struct test_case *test, const char *key, enum dimension dimension)
{
	const struct case_line *line = find(test, key);
	return number_of(test, line->line, line->value, strlen(line->value), dimension);
}

double case_number_or(struct test_case *test, const char *key, enum dimension dimension,
                      double otherwise)
{
	return case_has(test, key) ? case_number(test, key, dimension) : otherwise;
}

const char *case_word(struct test_case *test, const char *key)
{
	return find(test, key)->value;
}

const char *case_key(const struct test_case *test, const char *prefix, size_t k)
{
	size_t length = strlen(prefix);
	for (size_t i = 0; i < test->input_count; i++) {
		const char *key = test->input[i].key;
		if (!strncmp(key, prefix, length) && key[length] == ' ' && k-- == 0)
			return key;
	}
	return NULL;
}

/* Where the unit begins behind the numbers of a list. */
static char *skip_numbers(char *text)
{
	char *at = text + strspn(text, " ");
	while (*at && (isdigit((unsigned char)*at) || strchr("+-.", *at))) {
		at += strcspn(at, " ");
		at += strspn(at, " ");
	}
	return at;
}

/* the numbers of a list in file order, brackets and commas taken as blanks; their unit stands
 * behind */
size_t case_numbers(struct test_case *test, const char *key, enum dimension dimension, double *out,
                    size_t room)
{
	const struct case_line *line = find(test, key);
	char text[MAX_VALUE];
	memcpy(text, line->value, sizeof text);
	for (char *c = text; *c; c++)
		if (strchr("(),", *c))
			*c = ' ';
	char *behind = skip_numbers(text);
	const struct unit *close = NULL,
			  *unit = quantity_unit(behind, strlen(behind), dimension, &close);
	if (unit == NULL)
		case_fail(test, line->line, "\"%s\" is no unit of %s", behind,
		          dimension_name(dimension));
	size_t count = 0;
	for (char *at = text + strspn(text, " "); at < behind; at += strspn(at, " ")) {
		size_t length = strcspn(at, " ");
		if (count == room)
			case_fail(test, line->line, "more than %zu numbers", room);
		if (quantity_parse_bare(at, length, unit, &out[count++]) != QUANTITY_OK)
			case_fail(test, line->line, "\"%.*s\" is no number", (int)length, at);
		at += length;
	}
	return count;
}

size_t case_points(struct test_case *test, const char *key, enum dimension dimension,
                   struct vec2 *out, size_t room)
{
	double numbers[2 * MAX_CASE_POINTS];
	size_t count = case_numbers(test, key, dimension, numbers, 2 * MAX_CASE_POINTS);
	if (count % 2 || count / 2 > room)
		case_fail(test, find(test, key)->line, "%zu numbers are no points, or too many",
		          count);
	for (size_t i = 0; i < count / 2; i++)
		out[i] = (struct vec2){numbers[2 * i], numbers[2 * i + 1]};
	return count / 2;
}

/* --- outputs
 * --------------------------------------------------------------------------------------- */

static struct output *new_output(struct outputs *to)
{
	cr_assert_lt(to->count, (size_t)MAX_OUTPUTS, "more outputs than MAX_OUTPUTS");
	struct output *output = &to->list[to->count++];
	memset(output, 0, sizeof *output);
	return output;
}

void output_number(struct outputs *to, enum dimension dimension, double value, const char *format,
                   ...)
{
	struct output *output = new_output(to);
	va_list list;
	va_start(list, format);
	vsnprintf(output->name, sizeof output->name, format, list);
	va_end(list);
	output->value = value;
	output->dimension = dimension;
}

void output_word(struct outputs *to, const char *name, const char *word)
{
	struct output *output = new_output(to);
	snprintf(output->name, sizeof output->name, "%s", name);
	snprintf(output->word, sizeof output->word, "%s", word);
}

static const struct output *output_find(const struct outputs *outputs, const char *name)
{
	for (size_t i = 0; i < outputs->count; i++)
		if (!strcmp(outputs->list[i].name, name))
			return &outputs->list[i];
	return NULL;
}

/* "21.0 kN +- 0.05 kN" against a number */
static void judge_number(const struct test_case *test, const struct case_line *expect,
                         const struct output *output)
{
	const char *sign = strstr(expect->value, "+-");
	if (sign == NULL)
		case_fail(test, expect->line,
		          "no tolerance: write +- and how much, with its unit or in %%");
	size_t length = (size_t)(sign - expect->value);
	while (length > 0 && expect->value[length - 1] == ' ')
		length--;
	double wanted = number_of(test, expect->line, expect->value, length, output->dimension);
	const char *rest = sign + 2 + strspn(sign + 2, " ");
	bool relative = strchr(rest, '%') != NULL;
	double tolerance = number_of(test, expect->line, rest, strlen(rest),
	                             relative ? DIM_SHARE : output->dimension);
	if (relative)
		tolerance *= fabs(wanted);
	/* written so that a NaN fails */
	if (!(fabs(output->value - wanted) <= tolerance))
		case_fail(test, expect->line, "%s is %.9g, expected %.9g +- %.3g (base units)",
		          output->name, output->value, wanted, tolerance);
}

void case_judge(struct test_case *test, const struct outputs *outputs)
{
	for (size_t i = 0; i < test->input_count; i++)
		if (!test->input[i].used)
			case_fail(test, test->input[i].line, "kind %s does not know \"%s\"",
			          test->kind, test->input[i].key);
	for (size_t i = 0; i < test->expect_count; i++) {
		const struct case_line *expect = &test->expect[i];
		const struct output *output = output_find(outputs, expect->key);
		if (output == NULL)
			case_fail(test, expect->line, "kind %s does not give \"%s\"", test->kind,
			          expect->key);
		else if (*output->word && strcmp(output->word, expect->value) != 0)
			case_fail(test, expect->line, "%s is \"%s\"", output->name, output->word);
		else if (!*output->word)
			judge_number(test, expect, output);
	}
}
