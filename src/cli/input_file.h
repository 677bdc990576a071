/* The bytes of a cell file, or the reason why there are none. */
#ifndef INPUT_FILE_H
#define INPUT_FILE_H

#include <stdbool.h>
#include <stddef.h>

enum { REASON_ROOM = 200, MOST_HISTORY_BYTES = 1 << 30 };

struct input_file {
	const char *name;           /* for messages: the path, or "stdin" */
	char *bytes;                /* free it */
	size_t length;
	char sha256[65];
	char reason[REASON_ROOM];   /* why it could not be read, or "" */
};

/* `path` "-" is standard input. False with a reason: not there, no regular file, empty, no text. Of
 * a file above MAX_FILE_BYTES one byte more than that is read, and no digest is made. */
bool input_file_read(const char *path, struct input_file *out);

/* The same of a CSV that a cell file names: no standard input, up to MOST_HISTORY_BYTES, and
 * whether it is a text is the library's to say. `path` must outlive it. */
bool input_file_read_history(const char *path, struct input_file *out);

#endif
