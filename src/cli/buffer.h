/* Output is gathered before it is printed, so that files worked on at once come out in order and
 * whole. */
#ifndef BUFFER_H
#define BUFFER_H

#include <stdbool.h>
#include <stddef.h>

struct buffer { char *bytes; size_t length, room; };      /* all zero: empty */

/* A write function of pages: user is a struct buffer. False without memory; what was there
 * stays. */
bool buffer_write(void *user, const void *bytes, size_t length);
void buffer_free(struct buffer *buffer);

#endif
