/* One value of the cell, by the kind of its row in the field table. */
#include "show_parts.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { GIVEN_DIGITS = 10, OTHER_DIGITS = 4 };

static enum unit_system system_of(const struct cell *cell)
{
	return cell->show.value == UNITS_US ? UNITS_US : UNITS_METRIC;
}

/* Metric units are powers of ten of the base units; degrees, days and shares belong to both
 * systems. */
static bool has_other_system(enum dimension dimension)
{
	return strcmp(unit_name(dimension, UNITS_METRIC), unit_name(dimension, UNITS_US)) != 0;
}

static enum unit_system unit_system_of(const struct unit *unit)
{
	double power = log10(unit->factor);
	return fabs(power - round(power)) < 1e-9 ? UNITS_METRIC : UNITS_US;
}

/* "150 mm = 5.906 in" */
static void flow_both(struct writer *writer, double value, const struct unit *unit,
                      enum dimension dimension)
{
	char text[64];
	quantity_write(value, unit, GIVEN_DIGITS, text, sizeof text);
	flow(writer, text);
	if (!unit || !has_other_system(dimension))
		return;
	enum unit_system other = unit_system_of(unit) == UNITS_US ? UNITS_METRIC : UNITS_US;
	flow(writer, " = ");
	flow(writer, phrase_quantity(value, dimension, other, OTHER_DIGITS).text);
}

static void flow_number(struct writer *writer, const struct cell *cell, const struct field *field,
                        const struct number *number)
{
	const struct unit *unit = number->unit;
	if (!unit)
		unit = quantity_display_unit(field->dimension, system_of(cell));
	flow_both(writer, number->value, unit, field->dimension);
}

/* All digits of a coordinate that was written in this unit, four of one that was converted. */
static int coordinate_digits(double value)
{
	const int most = 8;
	if (!(fabs(value) > 0))
		return OTHER_DIGITS;
	double scale = pow(10, most - 1 - floor(log10(fabs(value))));
	double rounded = round(value * scale) / scale;
	return fabs(rounded - value) <= 1e-12 * fabs(value) ? most : OTHER_DIGITS;
}

/* "[2400, 3100] mm" */
static void flow_coordinates(struct writer *writer, const double *at, int count,
                             const struct unit *unit)
{
	for (int i = 0; i < count; i++) {
		char text[48];
		double value = at[i] / unit->factor;
		number_write(value, coordinate_digits(value), text, sizeof text);
		flow(writer, i ? ", " : "[");
		flow(writer, text);
	}
	flow(writer, "]");
}

static void flow_points(struct writer *writer, const struct vec2 *points, size_t count,
                        const struct unit *unit)
{
	for (size_t i = 0; i < count; i++) {
		flow_coordinates(writer, (const double[]){points[i].x, points[i].y}, 2, unit);
		flow(writer, " ");
	}
	flow(writer, unit->name);
}

static void flow_ring(struct writer *writer, const struct ring *ring)
{
	flow_points(writer, ring->points, ring->count,
	            quantity_display_unit(DIM_LENGTH, UNITS_METRIC));
	flow(writer, " = ");
	flow_points(writer, ring->points, ring->count, quantity_display_unit(DIM_LENGTH, UNITS_US));
}

static void flow_point(struct writer *writer, const struct field *field, const struct point *point)
{
	int count = field->kind == FIELD_POINT3 ? 3 : 2;
	const struct unit *metric = quantity_display_unit(field->dimension, UNITS_METRIC);
	const struct unit *us = quantity_display_unit(field->dimension, UNITS_US);
	flow_coordinates(writer, point->at, count, metric);
	flow(writer, " ");
	flow(writer, metric->name);
	flow(writer, " = ");
	flow_coordinates(writer, point->at, count, us);
	flow(writer, " ");
	flow(writer, us->name);
}

static void flow_numbers(struct writer *writer, const struct field *field,
                         const struct numbers *numbers)
{
	int last = has_other_system(field->dimension) ? UNITS_US : UNITS_METRIC;
	for (int system = UNITS_METRIC; system <= last; system++) {
		const struct unit *unit = quantity_display_unit(field->dimension,
		                                                (enum unit_system)system);
		flow(writer, system == UNITS_US ? " = " : "");
		for (size_t i = 0; i < numbers->count; i++) {
			char text[48];
			number_write(numbers->values[i] / unit->factor, OTHER_DIGITS, text,
			             sizeof text);
			flow(writer, i ? ", " : "");
			flow(writer, text);
		}
		flow(writer, " ");
		flow(writer, unit->name);
	}
}

static void flow_words(struct writer *writer, const struct field *field, const struct list *list)
{
	const struct word *words = list->rows;
	for (size_t i = 0; i < list->count; i++) {
		flow(writer, i ? ", " : "");
		flow(writer, field->words[words[i].value]);
	}
}

static void flow_rings(struct writer *writer, const struct list *list)
{
	const struct ring *rings = list->rows;
	for (size_t i = 0; i < list->count; i++) {
		flow(writer, i ? "; " : "");
		flow_ring(writer, &rings[i]);
	}
}

/* "A1 [-450, -350] A2 [450, -350] mm = ..." */
static void flow_pattern(struct writer *writer, const struct anchors *anchors)
{
	for (int system = UNITS_METRIC; system <= UNITS_US; system++) {
		const struct unit *unit = quantity_display_unit(DIM_LENGTH,
		                                                (enum unit_system)system);
		flow(writer, system == UNITS_US ? " = " : "");
		for (size_t i = 0; i < anchors->count; i++) {
			char id[32];
			snprintf(id, sizeof id, "A%zu ", i + 1);
			flow(writer, id);
			flow_coordinates(writer,
			                 (const double[]){anchors->at[i].x, anchors->at[i].y}, 2,
			                 unit);
			flow(writer, " ");
		}
		flow(writer, unit->name);
	}
}

bool flow_field_value(struct writer *writer, const struct cell *cell, const struct field *field,
                      const void *holder)
{
	const struct given *given = field_given(field, holder);
	const void *thing = given;
	if (given->origin == ABSENT)
		return false;
	switch (field->kind) {
	case FIELD_NUMBER: flow_number(writer, cell, field, thing); break;
	case FIELD_WORD:
	case FIELD_ANY: flow(writer, field->words[((const struct word *)thing)->value]); break;
	case FIELD_TEXT: flow(writer, ((const struct text *)thing)->value); break;
	case FIELD_POINT2:
	case FIELD_POINT3: flow_point(writer, field, thing); break;
	case FIELD_RING: flow_ring(writer, thing); break;
	case FIELD_RINGS: flow_rings(writer, thing); break;
	case FIELD_NUMBERS: flow_numbers(writer, field, thing); break;
	case FIELD_WORDS: flow_words(writer, field, thing); break;
	case FIELD_PATTERN: flow_pattern(writer, &cell->anchors); break;
	case FIELD_NONE: flow(writer, "none"); break;
	default: return false;
	}
	return true;
}
