/* The cell before it is anchored: what tips it, and how that was found. */
#include "text_parts.h"

void text_unanchored(struct writer *writer, const struct result *result)
{
	text_sentences(writer, "Before it is anchored", &result->unanchored.words, false);
}

static void one_trace(struct writer *writer, const char *title, const struct trace *trace,
                      enum unit_system units)
{
	if (trace->count == 0)
		return;
	writer_title(writer, title);
	text_steps(writer, trace, units);
}

void text_unanchored_trace(struct writer *writer, const struct result *result)
{
	const struct unanchored *unanchored = &result->unanchored;
	enum unit_system units = result_units(result);
	one_trace(writer, "not anchored: tilt on its base", &unanchored->on_base.tilt_trace, units);
	one_trace(writer, "not anchored: push on its base", &unanchored->on_base.push_trace, units);
	one_trace(writer, "not anchored: tilt on its casters", &unanchored->on_casters.tilt_trace,
	          units);
	one_trace(writer, "not anchored: push on its casters", &unanchored->on_casters.push_trace,
	          units);
}
