/* The text page: what the reader must know first, then everything that it rests on. */
#include "text_parts.h"

enum unit_system result_units(const struct result *result)
{
	return result->cell->show.value == UNITS_US ? UNITS_US : UNITS_METRIC;
}

const struct check_result *governing_check(const struct result *result)
{
	return result->governing < result->check_count ? &result->checks[result->governing] : NULL;
}

/* What a page of all checks has more than a page of one. */
static void text_all(struct writer *writer, const struct result *result)
{
	text_also(writer, result);
	text_anchors(writer, result);
	text_bed_ratios(writer, result);
	text_cycles(writer, result);
	text_checks(writer, result, NULL);
	text_left_out(writer, result);
	text_to_measure(writer, result);
	text_sentences(writer, "Assumptions", &result->assumptions, true);
}

bool page_text(const struct result *result, const struct page_options *options,
               write_function *write, void *user)
{
	struct writer writer;
	writer_open(&writer, write, user, options->colour);
	text_verdict(&writer, result, options);
	if (options->only)
		text_checks(&writer, result, options->only);
	else
		text_all(&writer, result);
	text_sentences(&writer, "Cautions", &result->cautions, false);
	if (!options->only)
		text_unanchored(&writer, result);
	if (options->trace)
		text_trace(&writer, result, options->only);
	text_record(&writer, result);
	return writer_close(&writer);
}
