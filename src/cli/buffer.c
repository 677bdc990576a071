#include "buffer.h"
#include <stdlib.h>
#include <string.h>

bool buffer_write(void *user, const void *bytes, size_t length)
{
	struct buffer *buffer = user;
	if (length > buffer->room - buffer->length) {
		size_t room = buffer->room ? buffer->room : 4096;
		while (room - buffer->length < length)
			room *= 2;
		char *more = realloc(buffer->bytes, room);
		if (!more)
			return false;
		buffer->bytes = more;
		buffer->room = room;
	}
	memcpy(buffer->bytes + buffer->length, bytes, length);
	buffer->length += length;
	return true;
}

void buffer_free(struct buffer *buffer)
{
	free(buffer->bytes);
	*buffer = (struct buffer){0};
}
