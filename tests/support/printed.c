#include "printed.h"
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

bool printed_write(void *user, const void *bytes, size_t length)
{
	struct printed *printed = user;
	printed->calls++;
	if (printed->most > 0 && printed->length + length > printed->most)
		return false;
	char *more = realloc(printed->text, printed->length + length + 1);
	if (!more)
		abort();
	printed->text = more;
	memcpy(printed->text + printed->length, bytes, length);
	printed->length += length;
	printed->text[printed->length] = 0;
	return true;
}

void printed_free(struct printed *printed)
{
	free(printed->text);
	*printed = (struct printed){0};
}

/* an independent and coarser count than src/pages/utf8.c: enough for the letters that the tests
 * use */
static size_t columns_of(const unsigned char *at, size_t *bytes)
{
	uint32_t code = *at;
	*bytes = code < 0x80 ? 1 : code < 0xE0 ? 2 : code < 0xF0 ? 3 : 4;
	if (*bytes > 1)
		code &= 0x7Fu >> *bytes;
	for (size_t i = 1; i < *bytes && at[i]; i++)
		code = code << 6 | (at[i] & 0x3Fu);
	if (code >= 0x300 && code <= 0x36F)
		return 0;
	return (code >= 0x3040 && code <= 0x9FFF) || (code >= 0xAC00 && code <= 0xD7A3) ? 2 : 1;
}

size_t printed_width(const char *text)
{
	size_t widest = 0, width = 0, bytes;
	for (const unsigned char *at = (const unsigned char *)text; *at; at += bytes) {
		if (*at == 0x1B) {
			bytes = strcspn((const char *)at, "m") + 1;
			continue;
		}
		size_t columns = columns_of(at, &bytes);
		width = *at == '\n' ? 0 : width + columns;
		widest = width > widest ? width : widest;
	}
	return widest;
}

bool printed_trails(const char *text)
{
	return strstr(text, " \n") != NULL;
}
