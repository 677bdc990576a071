/* What is done with one cell file: read, computed, written into buffers. */
#ifndef ONE_FILE_H
#define ONE_FILE_H

#include "options.h"

struct file_job {
	const char *path;
	struct buffer out, err;     /* for standard output and standard error */
	int status;                 /* exit status of this file alone */
	bool no_memory;             /* not even the message could be written */
	bool done;                  /* guarded by the shop's lock */
};

void file_job_run(const struct command_line *line, struct file_job *job);

#endif
