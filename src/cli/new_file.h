/* A file that is there whole or not at all. */
#ifndef NEW_FILE_H
#define NEW_FILE_H

#include "buffer.h"

/* Writes under another name in the same folder, then takes the right one. An existing file is kept
 * unless `replace`. False with a message on standard error. */
bool new_file_write(const char *path, const struct buffer *content, bool replace);

#endif
