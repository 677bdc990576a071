#include "substitute.h"
#include <stdio.h>
#include <string.h>

enum token_kind { TOKEN_END, TOKEN_NAME, TOKEN_FUNCTION, TOKEN_NUMBER, TOKEN_OPERATOR };

struct token {
	enum token_kind kind;
	const char *at;
	size_t length;
};

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static size_t name_length(const char *at)
{
	size_t n = 0;
	while (is_letter(at[n]) || is_digit(at[n]) || at[n] == '_')
		n++;
	return n;
}

static size_t number_length(const char *at)
{
	size_t n = 0;
	while (is_digit(at[n]) || at[n] == '.')
		n++;
	if (at[n] != 'e' && at[n] != 'E')
		return n;
	size_t sign = at[n + 1] == '-' || at[n + 1] == '+' ? 1 : 0;
	if (!is_digit(at[n + 1 + sign]))
		return n;
	n += 1 + sign;
	while (is_digit(at[n]))
		n++;
	return n;
}

static const char *skip_spaces(const char *at)
{
	while (*at == ' ')
		at++;
	return at;
}

static struct token next_token(const char *at)
{
	at = skip_spaces(at);
	if (!*at)
		return (struct token){TOKEN_END, at, 0};
	if (is_digit(*at) || *at == '.')
		return (struct token){TOKEN_NUMBER, at, number_length(at)};
	size_t length = name_length(at);
	if (length == 0)
		return (struct token){TOKEN_OPERATOR, at, 1};
	bool called = *skip_spaces(at + length) == '(';
	return (struct token){called ? TOKEN_FUNCTION : TOKEN_NAME, at, length};
}

static const struct step *earlier_step(const struct trace *trace, size_t index,
                                       const struct token *name)
{
	/* the last one before: a symbol may have been given a new value */
	while (index-- > 0) {
		const struct step *step = &trace->steps[index];
		if (strlen(step->symbol) == name->length &&
		    memcmp(step->symbol, name->at, name->length) == 0)
			return step;
	}
	return NULL;
}

const char *base_unit_name(enum dimension dimension)
{
	size_t count;
	const struct unit *units = quantity_units(&count);
	for (size_t i = 0; i < count; i++)
		if (units[i].dimension == dimension && !(units[i].factor < 1) &&
		    !(units[i].factor > 1))
			return units[i].name;
	return "";
}

static void flow_value(struct writer *writer, const struct step *step, const char *before,
                       const char *behind)
{
	char number[48];
	const char *unit = base_unit_name(step->dimension);
	number_write(step->value, SUBSTITUTED_DIGITS, number, sizeof number);
	/* a power or a divisor takes the unit with it, and a sign must not meet an operator */
	bool joined = *unit && (*behind == '^' || (before && *before == '/' && strchr(unit, ' ')));
	bool enclosed = joined || number[0] == '-';
	if (enclosed)
		flow(writer, "(");
	flow(writer, number);
	if (*unit) {
		flow(writer, " ");
		flow(writer, unit);
	}
	if (enclosed)
		flow(writer, ")");
}

static void flow_token(struct writer *writer, const struct token *token)
{
	char text[128];
	snprintf(text, sizeof text, "%.*s", (int)token->length, token->at);
	flow(writer, text);
}

/* A sign stands where a value is due; only between two values is it an operator. */
static bool is_sign(const struct token *operator, const struct token *before)
{
	if (*operator->at != '-' && *operator->at != '+')
		return false;
	return before->kind == TOKEN_END || (before->kind == TOKEN_OPERATOR && *before->at != ')');
}

static void flow_operator(struct writer *writer, const struct token *token,
                          const struct token *before)
{
	bool spaced = strchr("+-*/", *token->at) && !is_sign(token, before);
	if (spaced)
		flow(writer, " ");
	flow_token(writer, token);
	if (spaced || *token->at == ',')
		flow(writer, " ");
}

static void flow_tokens(struct writer *writer, const struct trace *trace, size_t index,
                        bool substituted)
{
	struct token before = {TOKEN_END, NULL, 0};
	struct token token = next_token(trace->steps[index].expression);
	while (token.kind != TOKEN_END) {
		const char *behind = skip_spaces(token.at + token.length);
		const struct step *step = NULL;
		if (substituted && token.kind == TOKEN_NAME)
			step = earlier_step(trace, index, &token);
		if (step)
			flow_value(writer, step, before.at, behind);
		else if (token.kind == TOKEN_OPERATOR)
			flow_operator(writer, &token, &before);
		else
			flow_token(writer, &token);
		before = token;
		token = next_token(behind);
	}
}

void flow_expression(struct writer *writer, const struct trace *trace, size_t index)
{
	flow_tokens(writer, trace, index, false);
}

void flow_substituted(struct writer *writer, const struct trace *trace, size_t index)
{
	flow_tokens(writer, trace, index, true);
}

bool has_substitution(const struct trace *trace, size_t index)
{
	struct token token = next_token(trace->steps[index].expression);
	while (token.kind != TOKEN_END) {
		if (token.kind == TOKEN_NAME && earlier_step(trace, index, &token))
			return true;
		token = next_token(token.at + token.length);
	}
	return false;
}
