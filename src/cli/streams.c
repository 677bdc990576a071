#include "streams.h"
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

void streams_prepare(void)
{
	/* the lowest free number is given to the next file: fill the gaps, the wrong way round, so
	 * that using them fails */
	for (int fd = 0; fd <= 2; fd++)
		if (fcntl(fd, F_GETFD) == -1 && errno == EBADF)
			if (open("/dev/null", fd == 0 ? O_WRONLY : O_RDONLY) == -1)
				break;
	signal(SIGPIPE, SIG_IGN);
}

bool stream_in_colour(FILE *stream, enum colour wish)
{
	const char *no_colour = getenv("NO_COLOR"), *terminal = getenv("TERM");
	if (wish != COLOUR_AUTO)
		return wish == COLOUR_ALWAYS;
	if ((no_colour && *no_colour) || !terminal || strcmp(terminal, "dumb") == 0)
		return false;
	return isatty(fileno(stream));
}

bool stream_write(void *user, const void *bytes, size_t length)
{
	return fwrite(bytes, 1, length, user) == length;
}

static void lost(int error)
{
	char reason[128] = "unknown error";
	if (strerror_r(error, reason, sizeof reason) != 0)
		reason[0] = 0;
	complain("standard output: %s", reason);
}

bool stream_print(FILE *stream, const struct buffer *buffer)
{
	errno = 0;
	bool whole = fwrite(buffer->bytes ? buffer->bytes : "", 1, buffer->length, stream) ==
	             buffer->length;
	if (fflush(stream) == 0 && whole)
		return true;
	if (stream == stdout)
		lost(errno);
	return false;
}

int streams_finish(int status)
{
	bool failed = ferror(stdout);
	errno = 0;
	if (fclose(stdout) == 0 && !failed)
		return status;
	/* a failed print has had its message */
	if (!failed)
		lost(errno);
	return EXIT_NOT_COMPUTED;
}

void complain(const char *format, ...)
{
	va_list list;
	va_start(list, format);
	fputs("standfast: ", stderr);
	vfprintf(stderr, format, list);
	fputc('\n', stderr);
	va_end(list);
}
