#include "new_file.h"

#include "streams.h"
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static bool refuse(const char *path, int error)
{
	char reason[128] = "unknown error";
	if (error == EEXIST) {
		complain("%s is there already and was kept; --force replaces it", path);
		return false;
	}
	if (strerror_r(error, reason, sizeof reason) != 0)
		reason[0] = 0;
	complain("%s: %s", path, reason);
	return false;
}

static bool write_all(int descriptor, const struct buffer *content)
{
	size_t written = 0;
	while (written < content->length) {
		ssize_t part = write(descriptor, content->bytes + written,
		                     content->length - written);
		if (part < 0 && errno == EINTR)
			continue;
		if (part < 0)
			return false;
		written += (size_t)part;
	}
	return true;
}

/* mkstemp makes files for the owner alone; a cell file gets what any other new file gets. */
static bool usual_rights(int descriptor)
{
	mode_t mask = umask(0);
	umask(mask);
	return fchmod(descriptor, 0666 & ~mask) == 0;
}

static bool fill(int descriptor, const struct buffer *content)
{
	bool good = write_all(descriptor, content) && usual_rights(descriptor) &&
	            fsync(descriptor) == 0;
	int error = errno;
	if (close(descriptor) != 0 && good)
		return false;
	errno = error;
	return good;
}

/* link fails where the name is taken, in one step; file systems without it get the check in two. */
static bool take_name(const char *temporary, const char *path, bool replace)
{
	struct stat status;
	if (replace)
		return rename(temporary, path) == 0;
	if (link(temporary, path) == 0)
		return unlink(temporary) == 0;
	if (errno != EPERM && errno != EOPNOTSUPP && errno != ENOSYS)
		return false;
	if (lstat(path, &status) == 0) {
		errno = EEXIST;
		return false;
	}
	return rename(temporary, path) == 0;
}

bool new_file_write(const char *path, const struct buffer *content, bool replace)
{
	static const char ending[] = ".XXXXXX";
	size_t length = strlen(path);
	char *temporary = malloc(length + sizeof ending);
	if (!temporary)
		return refuse(path, ENOMEM);
	memcpy(temporary, path, length);
	memcpy(temporary + length, ending, sizeof ending);
	int descriptor = mkstemp(temporary);
	bool good = descriptor >= 0;
	if (good) {
		good = fill(descriptor, content) && take_name(temporary, path, replace);
		int error = errno;
		if (!good)
			unlink(temporary);
		errno = error;
	}
	if (!good)
		refuse(path, errno);
	free(temporary);
	return good;
}
