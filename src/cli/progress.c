#include "progress.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define INTERVAL 0.2            /* [s] */

void progress_open(struct progress *progress)
{
	const char *terminal = getenv("TERM");
	*progress = (struct progress){.shown = false};
	/* the line is taken away by a control sequence (ECMA-48 EL) */
	progress->terminal = isatty(STDERR_FILENO) && terminal && strcmp(terminal, "dumb") != 0;
	clock_gettime(CLOCK_MONOTONIC, &progress->last);
}

static double seconds_between(const struct timespec *from, const struct timespec *to)
{
	return (double)(to->tv_sec - from->tv_sec) + 1e-9 * (double)(to->tv_nsec - from->tv_nsec);
}

void progress_show(struct progress *progress, const char *what, size_t done, size_t count)
{
	struct timespec now;
	if (!progress->terminal || count == 0)
		return;
	clock_gettime(CLOCK_MONOTONIC, &now);
	if (seconds_between(&progress->last, &now) < INTERVAL)
		return;
	progress->last = now;
	progress->shown = true;
	/* short enough for one line of any terminal, or it could not be taken away whole */
	fprintf(stderr, "\r\033[K%.60s, %u %%", what ? what : "",
	        (unsigned)(100 * (double)done / (double)count));
	fflush(stderr);
}

void progress_close(struct progress *progress)
{
	if (!progress->shown)
		return;
	fputs("\r\033[K", stderr);
	fflush(stderr);
	progress->shown = false;
}
