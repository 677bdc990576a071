#include "input_file.h"

#include "../input/tree.h"
#include <sys/types.h>
#include <errno.h>
#include <fcntl.h>
#include <sha256.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static bool refuse(struct input_file *file, const char *what, int error)
{
	char cause[100] = "";
	if (error != 0 && strerror_r(error, cause, sizeof cause) != 0)
		cause[0] = 0;
	snprintf(file->reason, sizeof file->reason, "%s%s%s", what, *cause ? ": " : "", cause);
	return false;
}

/* What is asked of a file: how large it may be, and what is said of one that is none. */
struct input_kind { size_t most; const char *folder, *neither; };
static const struct input_kind cell_kind = {
	MAX_FILE_BYTES, "is a directory; name a cell file in it",
	"is neither a file nor a pipe; give - to read from standard input"};
static const struct input_kind history_kind = {MOST_HISTORY_BYTES,
                                               "is a directory; name a CSV file in it",
                                               "is neither a file nor a pipe"};

/* Why something cannot be read; NULL: it may be. A pipe is read as a file is. */
static const char *wrong_kind(const struct input_kind *kind, const struct stat *status)
{
	if (S_ISDIR(status->st_mode))
		return kind->folder;
	if (!S_ISREG(status->st_mode) && !S_ISFIFO(status->st_mode))
		return kind->neither;
	return NULL;
}

static int open_file(const struct input_kind *kind, const char *path, struct input_file *file)
{
	struct stat status;
	/* looked at before it is opened: opening alone does something to a tape or a terminal */
	if (stat(path, &status) != 0) {
		refuse(file, "cannot be opened", errno);
		return -1;
	}
	if (wrong_kind(kind, &status)) {
		refuse(file, wrong_kind(kind, &status), 0);
		return -1;
	}
	int descriptor = open(path, O_RDONLY | O_CLOEXEC | O_NOCTTY);
	if (descriptor < 0)
		refuse(file, "cannot be opened", errno);
	return descriptor;
}

/* Up to one byte more than the limit, so that a file beyond it is seen to be so. */
static bool read_bytes(const struct input_kind *kind, int descriptor, struct input_file *file)
{
	const size_t most = kind->most + 1;
	size_t room = 16384;
	file->bytes = malloc(room);
	while (file->bytes) {
		ssize_t got = read(descriptor, file->bytes + file->length, room - file->length);
		if (got < 0 && errno == EINTR)
			continue;
		if (got < 0)
			return refuse(file, "cannot be read", errno);
		if (got == 0)
			return true;
		file->length += (size_t)got;
		if (file->length == most)
			return true;
		if (file->length < room)
			continue;
		room = 4 * room < most ? 4 * room : most;
		char *more = realloc(file->bytes, room);
		if (!more)
			break;
		file->bytes = more;
	}
	return refuse(file, "out of memory", 0);
}

static bool finish(struct input_file *file)
{
	if (file->length == 0)
		return refuse(file, "the file is empty; begin with: standfast new", 0);
	/* the library says by itself what is too large, with the code of that fault */
	if (file->length > MAX_FILE_BYTES)
		return true;
	if (memchr(file->bytes, 0, file->length))
		return refuse(file, "this is not a text file; a cell file is plain text in UTF-8",
		              0);
	SHA256Data((const uint8_t *)file->bytes, file->length, file->sha256);
	return true;
}

bool input_file_read(const char *path, struct input_file *out)
{
	bool standard = strcmp(path, "-") == 0;
	*out = (struct input_file){.name = standard ? "stdin" : path};
	if (standard && isatty(STDIN_FILENO))
		fputs("standfast: reading the cell file from the terminal; end with control-D\n",
		      stderr);
	int descriptor = standard ? STDIN_FILENO : open_file(&cell_kind, path, out);
	if (descriptor < 0)
		return false;
	bool whole = read_bytes(&cell_kind, descriptor, out) && finish(out);
	if (!standard)
		close(descriptor);
	return whole;
}

bool input_file_read_history(const char *path, struct input_file *out)
{
	*out = (struct input_file){.name = path};
	int descriptor = open_file(&history_kind, path, out);
	if (descriptor < 0)
		return false;
	bool whole = read_bytes(&history_kind, descriptor, out);
	close(descriptor);
	if (whole && out->length > MOST_HISTORY_BYTES)
		return refuse(out, "is larger than 1 GiB; record fewer rows or cut it in parts", 0);
	if (whole)
		SHA256Data((const uint8_t *)out->bytes, out->length, out->sha256);
	return whole;
}
