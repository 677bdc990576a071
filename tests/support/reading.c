#include "reading.h"
#include <stdio.h>
#include <string.h>

void reading_open(struct reading *reading, const char *text)
{
	memset(reading, 0, sizeof *reading);
	arena_open(&reading->arena, NULL, NULL);
	reading->status = cell_read(&reading->arena, text, strlen(text), 1, &reading->list,
	                            &reading->cell);
}

void reading_close(struct reading *reading)
{
	arena_close(&reading->arena);
}

const struct diagnostic *reading_find(const struct reading *reading, const char *path)
{
	for (size_t i = 0; i < reading->list.count; i++)
		if (strcmp(reading->list.list[i].path, path) == 0)
			return &reading->list.list[i];
	return NULL;
}

const char *reading_faults(const struct reading *reading)
{
	static char text[16384];
	size_t at = 0;
	text[0] = 0;
	for (size_t i = 0; i < reading->list.count && at < sizeof text; i++) {
		const struct diagnostic *one = &reading->list.list[i];
		at += (size_t)snprintf(text + at, sizeof text - at, "%u:%u %s %s: %s; %s\n",
		                       one->mark.line, one->mark.column, fault_code(one->fault),
		                       one->path, one->message, one->hint);
	}
	return text;
}
