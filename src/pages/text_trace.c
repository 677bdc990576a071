/* The written calculation: for each check its title and source, then step by step the expression,
 * the line with numbers and the value, so that a checker can follow it on paper. */
#include "text_parts.h"
#include "substitute.h"
#include <stdio.h>
#include <string.h>

enum { STEP_COLUMN = 4, COMMENT_COLUMN = 44 };

static void block_title(struct writer *writer, const struct result *result,
                        const struct check_result *check)
{
	writer_title(writer, check->check->id);
	flow_begin(writer, 2);
	flow(writer, check->check->title);
	flow(writer, " [");
	flow(writer, check->check->source);
	flow(writer, "]");
	flow_end(writer);
	if (!check->subject.anchors && !check->at.load_case && !is_of_setup(result->cell, check))
		return;
	flow_begin(writer, 2);
	flow_subject(writer, result->cell, check, false);
	if (check->at.load_case) {
		flow(writer, "; ");
		flow(writer, check->at.load_case->combination);
	}
	flow_end(writer);
}

/* "= 10500 N = 10.5 kN"; once where the display unit is the base unit */
static void flow_step_value(struct writer *writer, const struct step *step, enum unit_system units)
{
	char number[48];
	const char *base = base_unit_name(step->dimension);
	const char *shown = unit_name(step->dimension, units);
	number_write(step->value, SUBSTITUTED_DIGITS, number, sizeof number);
	flow(writer, "= ");
	flow(writer, number);
	if (*base) {
		flow(writer, " ");
		flow(writer, base);
	}
	if (strcmp(base, shown) == 0)
		return;
	flow(writer, " = ");
	flow(writer, phrase_quantity(step->value, step->dimension, units, SUBSTITUTED_DIGITS).text);
}

/* "ultimate tension [input, line 14]" */
static void flow_comment(struct writer *writer, const struct step *step)
{
	bool has_source = step->source && *step->source;
	flow(writer, step->meaning ? step->meaning : "");
	if (!has_source && step->input.line == 0)
		return;
	flow(writer, step->meaning && *step->meaning ? " [" : "[");
	flow(writer, has_source ? step->source : "input");
	if (step->input.line > 0) {
		char line[32];
		snprintf(line, sizeof line, ", line %u", (unsigned)step->input.line);
		flow(writer, line);
	}
	flow(writer, "]");
}

/* Behind the value, or below it where the value is long; ends the line. */
static void step_comment(struct writer *writer, const struct step *step)
{
	bool any = (step->meaning && *step->meaning) || (step->source && *step->source) ||
	           step->input.line > 0;
	flow_pause(writer);
	if (any && writer->column + 1 > COMMENT_COLUMN)
		writer_newline(writer);
	if (any) {
		flow_begin(writer, COMMENT_COLUMN);
		flow_comment(writer, step);
	}
	flow_end(writer);
}

static void expression_lines(struct writer *writer, const struct trace *trace, size_t index)
{
	size_t column = STEP_COLUMN + strlen(trace->steps[index].symbol) + 1;
	flow(writer, "= ");
	flow_expression(writer, trace, index);
	flow_end(writer);
	if (has_substitution(trace, index)) {
		flow_begin(writer, column);
		flow(writer, "= ");
		flow_substituted(writer, trace, index);
		flow_end(writer);
	}
	flow_begin(writer, column);
}

static void step_lines(struct writer *writer, const struct trace *trace, size_t index,
                       enum unit_system units)
{
	const struct step *step = &trace->steps[index];
	writer_pad(writer, STEP_COLUMN);
	writer_text(writer, step->symbol);
	flow_begin(writer, STEP_COLUMN + strlen(step->symbol) + 1);
	if (step->expression && *step->expression)
		expression_lines(writer, trace, index);
	flow_step_value(writer, step, units);
	step_comment(writer, step);
}

void text_steps(struct writer *writer, const struct trace *trace, enum unit_system units)
{
	for (size_t k = 0; k < trace->count; k++)
		step_lines(writer, trace, k, units);
}

static void block_verdict(struct writer *writer, const struct check_result *check,
                          enum unit_system units)
{
	const struct finding *finding = &check->finding;
	flow_begin(writer, 2);
	if (finding->computed) {
		struct phrase_pair pair = phrase_pair(finding, units);
		flow(writer, pair.demand.text);
		flow(writer, " against ");
		flow(writer, pair.capacity.text);
		flow(writer, ", ratio ");
		flow(writer, phrase_ratio(finding).text);
		flow(writer, ": ");
	}
	flow(writer, verdict_word(finding->verdict));
	if (finding->verdict != HOLDS && finding->reason && *finding->reason) {
		flow(writer, ", ");
		flow(writer, finding->reason);
	}
	flow_end(writer);
}

void text_trace(struct writer *writer, const struct result *result, const char *only)
{
	enum unit_system units = result_units(result);
	writer_title(writer, "Calculation");
	paragraph(writer, "", 2,
	          "Lines with numbers are in N, mm, MPa, N mm, kg, s and rad, rounded to four "
	          "digits; "
	          "every result comes from unrounded values. Line numbers are those of the file.");
	for (size_t i = 0; i < result->check_count; i++) {
		const struct check_result *check = &result->checks[i];
		if (check->trace.count == 0 || (only && strcmp(only, check->check->id) != 0))
			continue;
		block_title(writer, result, check);
		text_steps(writer, &check->trace, units);
		block_verdict(writer, check, units);
	}
	if (!only)
		text_unanchored_trace(writer, result);
}
