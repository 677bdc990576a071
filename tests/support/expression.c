/* Recursive descent, one function a level of the grammar. A fault is kept once and ends the run. */
#include "expression.h"

#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_NESTING = 64 };

struct parser {
	const char *text, *at;
	expression_lookup *lookup;
	const void *user;
	char *fault;
	size_t room;
	int depth;
	bool failed;
};

static double parse_sum(struct parser *parser);

static double fail(struct parser *parser, const char *what)
{
	if (!parser->failed)
		snprintf(parser->fault, parser->room, "%s at \"%s\" in \"%s\"", what, parser->at,
		         parser->text);
	parser->failed = true;
	return (double)NAN;
}

static bool take(struct parser *parser, char wanted)
{
	while (*parser->at == ' ')
		parser->at++;
	if (*parser->at != wanted)
		return false;
	parser->at++;
	return true;
}

/* min, max, sqrt, abs: the list behind the name */
static double parse_call(struct parser *parser, const char *name, size_t length)
{
	bool is_min = length == 3 && !strncmp(name, "min", 3);
	bool is_max = length == 3 && !strncmp(name, "max", 3);
	double value = parse_sum(parser);
	while (!parser->failed && take(parser, ',')) {
		double next = parse_sum(parser);
		if (is_min)
			value = fmin(value, next);
		else if (is_max)
			value = fmax(value, next);
		else
			return fail(parser, "a second argument");
	}
	if (!take(parser, ')'))
		return fail(parser, "no closing parenthesis");
	if (is_min || is_max)
		return value;
	if (length == 4 && !strncmp(name, "sqrt", 4))
		return sqrt(value);
	if (length == 3 && !strncmp(name, "abs", 3))
		return fabs(value);
	return fail(parser, "an unknown function before");
}

static double parse_name(struct parser *parser)
{
	const char *name = parser->at;
	while (isalnum((unsigned char)*parser->at) || *parser->at == '_')
		parser->at++;
	size_t length = (size_t)(parser->at - name);
	if (take(parser, '('))
		return parse_call(parser, name, length);
	double value = 0;
	if (parser->lookup == NULL || !parser->lookup(parser->user, name, length, &value)) {
		parser->at = name;
		return fail(parser, "no earlier step of that name");
	}
	return value;
}

static double parse_atom(struct parser *parser)
{
	if (parser->failed)
		return (double)NAN;
	if (take(parser, '(')) {
		double value = parse_sum(parser);
		return take(parser, ')') ? value : fail(parser, "no closing parenthesis");
	}
	if (isalpha((unsigned char)*parser->at))
		return parse_name(parser);
	if (isdigit((unsigned char)*parser->at)) {
		char *end;
		double value = strtod(parser->at, &end);
		parser->at = end;
		return value;
	}
	return fail(parser, "neither a number nor a name");
}

static double parse_sign(struct parser *parser)
{
	if (++parser->depth > MAX_NESTING)
		return fail(parser, "nested too deep");
	double value;
	if (take(parser, '-')) {
		value = -parse_sign(parser);
	} else {
		value = parse_atom(parser);
		if (!parser->failed && take(parser, '^'))
			value = pow(value, parse_sign(parser));
	}
	parser->depth--;
	return value;
}

static double parse_product(struct parser *parser)
{
	double value = parse_sign(parser);
	while (!parser->failed) {
		if (take(parser, '*'))
			value *= parse_sign(parser);
		else if (take(parser, '/'))
			value /= parse_sign(parser);
		else
			break;
	}
	return value;
}

static double parse_sum(struct parser *parser)
{
	double value = parse_product(parser);
	while (!parser->failed) {
		if (take(parser, '+'))
			value += parse_product(parser);
		else if (take(parser, '-'))
			value -= parse_product(parser);
		else
			break;
	}
	return value;
}

bool expression_evaluate(const char *text, expression_lookup *lookup, const void *user,
                         double *value, char *fault, size_t room)
{
	struct parser parser = {.text = text, .at = text, .lookup = lookup, .user = user,
	                        .fault = fault, .room = room};
	*value = parse_sum(&parser);
	take(&parser, '\0');
	if (!parser.failed && parser.at < text + strlen(text))
		fail(&parser, "something left over");
	return !parser.failed;
}
