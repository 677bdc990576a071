/* A cell file given as a string, read, with what was found. Tests only. */
#ifndef READING_H
#define READING_H

#include "../../src/input/reader.h"

struct reading {
	struct arena arena;
	struct diagnostics list;
	const struct cell *cell;     /* NULL unless status is DONE */
	enum status status;
};

/* `reading` must not be copied; close it in any case. */
void reading_open(struct reading *reading, const char *text);
void reading_close(struct reading *reading);
/* The first diagnostic of that path, or NULL. */
const struct diagnostic *reading_find(const struct reading *reading, const char *path);
/* All diagnostics, one a line, for a test's message; in a static buffer. */
const char *reading_faults(const struct reading *reading);

#endif
