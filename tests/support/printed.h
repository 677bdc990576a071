/* Bytes that a page wrote, for tests: kept as one text, or refused from some byte on. Tests
 * only. */
#ifndef PRINTED_H
#define PRINTED_H

#include <stdbool.h>
#include <stddef.h>

struct printed {
	char *text; /* NUL-terminated; NULL when nothing was written */
	size_t length;
	size_t most;  /* 0: no limit; else the write that would pass it fails */
	size_t calls; /* of the write function, failed ones included */
};

/* A write function of pages: user is a struct printed. */
bool printed_write(void *user, const void *bytes, size_t length);
void printed_free(struct printed *printed);
/* Columns of the widest line, East Asian wide characters counted twice, escape sequences not at
 * all. */
size_t printed_width(const char *text);
/* Whether any line ends in a space. */
bool printed_trails(const char *text);

#endif
