#include "trace.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

void trace_open(struct trace *trace, struct arena *arena)
{
	*trace = (struct trace){.arena = arena,
	                        .steps = arena_take(arena, MAX_STEPS, sizeof(struct step))};
}

static bool already_there(const struct trace *trace, const char *symbol, double value)
{
	for (size_t i = 0; i < trace->count; i++)
		if (strcmp(trace->steps[i].symbol, symbol) == 0)
			return memcmp(&trace->steps[i].value, &value, sizeof value) == 0;
	return false;
}

static void add(struct trace *trace, const struct step *step)
{
	if (!trace || !trace->steps || already_there(trace, step->symbol, step->value))
		return;
	if (trace->count == MAX_STEPS) {
		trace->full = true;
		return;
	}
	trace->steps[trace->count++] = *step;
}

double trace_step(struct trace *trace, const char *symbol, const char *expression, double value,
                  enum dimension dimension, const char *source, const char *meaning)
{
	if (trace)
		add(trace,
		    &(struct step){
			    symbol, expression, value, dimension, source, meaning, {0, 0, 0, 0}});
	return value;
}

double trace_input(struct trace *trace, const char *symbol, const struct number *number,
                   enum dimension dimension, const char *meaning)
{
	static const char *const source[] = {"not known", "default", "input", "assumed"};
	if (trace)
		add(trace,
		    &(struct step){symbol, "", number->value, dimension,
		                   source[number->given.origin], meaning, number->given.mark});
	return number->value;
}

const char *trace_text(struct trace *trace, const char *format, ...)
{
	char text[400];
	va_list arguments;
	if (!trace)
		return "";
	va_start(arguments, format);
	vsnprintf(text, sizeof text, format, arguments);
	va_end(arguments);
	const char *copy = arena_text(trace->arena, text, strlen(text));
	return copy ? copy : "";
}
