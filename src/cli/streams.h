/* Standard output and standard error of the program: whether what was printed arrived, and in
 * colour or not. */
#ifndef STREAMS_H
#define STREAMS_H

#include "buffer.h"
#include <stdio.h>

enum colour { COLOUR_AUTO, COLOUR_ALWAYS, COLOUR_NEVER };
enum { EXIT_HOLDS = 0, EXIT_FAILS = 1, EXIT_NOT_COMPUTED = 2, EXIT_UNPROVEN = 3 };

/* Called first: a closed standard stream must not be taken by a file, and a closed pipe is an
 * error, no death. */
void streams_prepare(void);
/* Whether pages on this stream are in colour. */
bool stream_in_colour(FILE *stream, enum colour wish);
/* A write function of pages: user is a FILE. */
bool stream_write(void *user, const void *bytes, size_t length);
/* Prints and flushes; false with a message on standard error when it did not arrive. */
bool stream_print(FILE *stream, const struct buffer *buffer);
/* Closes standard output; EXIT_NOT_COMPUTED instead of `status` when anything was lost. */
int streams_finish(int status);
/* "standfast: ..." with a line end, on standard error. */
void complain(const char *format, ...) __attribute__((format(printf, 1, 2)));

#endif
