/* The load cycles of the anchors: a table for each history and each working cycle. */
#include "text_parts.h"

#include <stdio.h>

/* columns: where each number ends */
enum { RANGE = 18, MEAN = 30, ROUND = 43, ABOVE = 57, NOISE = 70, YEAR = 84, LIFE = 99 };

/* Seconds of a year, as units.c has it. */
#define YEAR_LENGTH (365 * 86400.0)

static void head(struct writer *writer, const char *name, const char *unit, size_t column)
{
	char text[48];
	snprintf(text, sizeof text, "%s%s%s", name, *unit ? " " : "", unit);
	writer_right(writer, text, column);
}

static void head_line(struct writer *writer, const struct cell *cell, enum unit_system units)
{
	const char *force = unit_name(DIM_FORCE, units);
	writer_pad(writer, 2);
	writer_text(writer, "id");
	head(writer, "range", force, RANGE);
	head(writer, "mean", force, MEAN);
	head(writer, "a round", "", ROUND);
	head(writer, is_known(cell->arm.range_limit) ? "above limit" : "", "", ABOVE);
	head(writer, "below 1 %", "", NOISE);
	head(writer, "a year", "", YEAR);
	head(writer, "in the life", "", LIFE);
	writer_newline(writer);
}

/* "-" where how often is not known. */
static void count_of(struct writer *writer, bool known, double count, size_t column)
{
	char text[32] = "-";
	if (known)
		number_write(count, 4, text, sizeof text);
	writer_right(writer, text, column);
}

static void anchor_line(struct writer *writer, const struct cell *cell,
                        const struct cycle_source *source, size_t i, enum unit_system units)
{
	const struct anchor_cycles *cycles = &source->anchor[i];
	const struct number *life = &cell->arm.service_life, *a_year = source->a_year;
	int places = units == UNITS_US ? 0 : 3;
	double yearly = (double)cycles->count * a_year->value;
	char id[32];
	snprintf(id, sizeof id, "A%zu", i + 1);
	writer_pad(writer, 2);
	writer_text(writer, id);
	writer_right(writer, phrase_fixed(cycles->range, DIM_FORCE, units, places).text, RANGE);
	writer_right(writer, phrase_fixed(cycles->mean, DIM_FORCE, units, places).text, MEAN);
	count_of(writer, true, (double)cycles->count, ROUND);
	if (is_known(cell->arm.range_limit))
		count_of(writer, true, (double)cycles->above, ABOVE);
	count_of(writer, true, (double)cycles->noise, NOISE);
	count_of(writer, is_known(*a_year), yearly, YEAR);
	count_of(writer, is_known(*a_year) && is_known(*life), yearly * life->value / YEAR_LENGTH,
	         LIFE);
	writer_newline(writer);
}

static void source_title(struct writer *writer, const struct result *result, size_t setup,
                         const struct cycle_source *source)
{
	char number[32];
	flow_begin(writer, 2);
	if (flow_setup(writer, result->cell, setup))
		flow(writer, ", ");
	flow(writer, source->name);
	if (is_known(*source->a_year)) {
		number_write(source->a_year->value, 6, number, sizeof number);
		flow(writer, ": ");
		flow(writer, number);
		flow(writer, " rounds a year");
	} else {
		flow(writer, ": how often a year is not known");
	}
	flow_end(writer);
}

static void source_table(struct writer *writer, const struct result *result, size_t setup,
                         const struct cycle_source *source)
{
	const struct cell *cell = setup_cell(result->cell, setup);
	source_title(writer, result, setup, source);
	if (!source->counted) {
		flow_begin(writer, 2);
		flow(writer, "not counted: ");
		flow(writer, source->why_not);
		flow_end(writer);
		return;
	}
	head_line(writer, cell, result_units(result));
	for (size_t i = 0; i < result->anchor_count; i++)
		anchor_line(writer, cell, source, i, result_units(result));
}

void text_cycles(struct writer *writer, const struct result *result)
{
	bool any = false;
	for (size_t s = 0; s < setup_count(result->cell); s++)
		any |= result->cycles[s].count > 0;
	if (!any)
		return;
	writer_title(writer, "Load cycles");
	paragraph(writer, "", 2,
	          "tension cycles of each anchor by rainflow counting (ASTM E1049, from memory), each "
	          "source as a round that repeats itself, full weights; every number is the worst of "
	          "the bed ratios and corners of boxed parts; cycles below 1 % of the largest range "
	          "are noise and not in the other numbers (common practice, no source)");
	for (size_t s = 0; s < setup_count(result->cell); s++)
		for (size_t i = 0; i < result->cycles[s].count; i++)
			source_table(writer, result, s, &result->cycles[s].list[i]);
}
