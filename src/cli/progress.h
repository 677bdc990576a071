/* One line on the terminal that says how far long work has come. It is there only while the work
 * runs, and only where standard error is a terminal. */
#ifndef PROGRESS_H
#define PROGRESS_H

#include <stdbool.h>
#include <stddef.h>
#include <time.h>

struct progress {
	bool terminal;               /* else nothing is ever written */
	bool shown;                  /* a line stands there */
	struct timespec last;        /* when it was written, or the work begun */
};

void progress_open(struct progress *progress);
/* At most every 0.2 s; work that ends sooner is never spoken of. */
void progress_show(struct progress *progress, const char *what, size_t done, size_t count);
/* Takes the line away. */
void progress_close(struct progress *progress);

#endif
