/* The least ultimate ratings that a substitute must have, for this pattern, slab and share. */
#include "text_parts.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

/* where the two columns of the pairs end; each has room for "at least 123456.7 lbf" */
enum { PAIR_TENSION = 25, PAIR_SHEAR = 49 };

static size_t count_digits(const char *number)
{
	size_t count = 0;
	for (; *number; number++)
		count += *number >= '0' && *number <= '9';
	return count;
}

/* Every digit that was computed: in kN these are the five to which it was rounded up. In other
 * units the conversion brings more; there it is cut to seven, upward, so that what is printed still
 * holds. */
static struct phrase least_force(double value, enum unit_system units)
{
	struct phrase out;
	char number[48];
	const struct unit *unit = quantity_display_unit(DIM_FORCE, units);
	double shown = value / unit->factor;
	/* 15 digits: what the division itself leaves behind is no digit of the value */
	number_write(shown, 15, number, sizeof number);
	if (count_digits(number) > 8 && shown > 0) {
		double scale = pow(10, 6 - floor(log10(shown)));
		number_write(ceil(shown * scale) / scale, 8, number, sizeof number);
	}
	snprintf(out.text, sizeof out.text, "%s %s", number, unit->name);
	return out;
}

static void value_line(struct writer *writer, const char *label, double value, const char *behind,
                       const struct result *result)
{
	writer_pad(writer, 2);
	writer_text(writer, label);
	flow_begin(writer, 32);
	flow(writer, result->required.at_least ? "at least " : "");
	flow(writer, least_force(value, result_units(result)).text);
	flow(writer, behind);
	flow_end(writer);
}

static void pair_value(struct writer *writer, double value, size_t column,
                       const struct result *result)
{
	char text[128];
	snprintf(text, sizeof text, "%s%s", result->required.at_least ? "at least " : "",
	         least_force(value, result_units(result)).text);
	writer_right(writer, text, column);
}

/* Each single value was found with the other unlimited: an anchor that has just both may fail. */
static void not_together_line(struct writer *writer, const struct result *result)
{
	if (result->required.pair_count > 0)
		paragraph(writer, "", 2,
		          "these two are not enough together; take a pair below");
}

static void pair_lines(struct writer *writer, const struct result *result)
{
	const struct required *required = &result->required;
	if (required->pair_count == 0)
		return;
	writer_title(writer, required->at_least ? "Pairs, at least; not shown to be enough"
	                                        : "Pairs that are enough together");
	writer_right(writer, "tension", PAIR_TENSION);
	writer_right(writer, "shear", PAIR_SHEAR);
	writer_newline(writer);
	for (size_t i = 0; i < required->pair_count; i++) {
		pair_value(writer, required->pair[i].tension, PAIR_TENSION, result);
		pair_value(writer, required->pair[i].shear, PAIR_SHEAR, result);
		writer_newline(writer);
	}
}

static void values(struct writer *writer, const struct result *result)
{
	const struct required *required = &result->required;
	writer_style(writer, STYLE_TITLE);
	writer_text(writer, required->at_least
	                            ? "Least ultimate ratings; something is not known, so at least:"
	                            : "Least ultimate ratings");
	writer_style(writer, STYLE_PLAIN);
	writer_newline(writer);
	value_line(writer, "ultimate tension", required->tension, ", with shear unlimited", result);
	value_line(writer, "ultimate shear", required->shear, ", with tension unlimited", result);
	not_together_line(writer, result);
	pair_lines(writer, result);
}

static void nothing(struct writer *writer, const struct result *result)
{
	writer_style(writer, STYLE_UNPROVEN);
	writer_text(writer, "No rating can be named");
	writer_style(writer, STYLE_PLAIN);
	writer_newline(writer);
	if (!result->loads_computed)
		paragraph(writer, "", 2,
		          result->loads.given
		                  ? "the load model is not complete, so no loads were computed"
		                  : "the file has no load model, so no loads were computed");
}

bool page_require(const struct result *result, const struct page_options *options,
                  write_function *write, void *user)
{
	struct writer writer;
	const struct required *required = &result->required;
	writer_open(&writer, write, user, options->colour);
	if (required->computed)
		values(&writer, result);
	else
		nothing(&writer, result);
	if (required->note_count > 0)
		writer_title(&writer, "Notes");
	for (size_t i = 0; i < required->note_count; i++) {
		writer_right(&writer, "-", 4);
		paragraph(&writer, "", 5, required->notes[i]);
	}
	text_sentences(&writer, "Departures", &result->departures, false);
	if (!required->computed || required->at_least)
		text_to_measure(&writer, result);
	text_sentences(&writer, "Assumptions", &result->assumptions, true);
	text_sentences(&writer, "Cautions", &result->cautions, false);
	text_record(&writer, result);
	return writer_close(&writer);
}
