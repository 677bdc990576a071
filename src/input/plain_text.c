#include "plain_text.h"
#include <string.h>

struct place {
	const unsigned char *at, *end;
	struct mark mark;
};

/* One character of UTF-8 (RFC 3629: no overlong forms, no surrogates, at most U+10FFFF); width 0 if
 * it is not. */
static uint32_t decode(const unsigned char *at, const unsigned char *end, size_t *width)
{
	static const uint32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
	size_t n = at[0] < 0x80   ? 1
	           : at[0] < 0xC0 ? 0
	           : at[0] < 0xE0 ? 2
	           : at[0] < 0xF0 ? 3
	           : at[0] < 0xF8 ? 4
	                          : 0;
	*width = 0;
	if (n == 0 || (size_t)(end - at) < n)
		return 0;
	uint32_t c = n == 1 ? at[0] : at[0] & (0x7Fu >> n);
	for (size_t i = 1; i < n; i++) {
		if ((at[i] & 0xC0) != 0x80)
			return 0;
		c = c << 6 | (at[i] & 0x3F);
	}
	if (c < least[n] || (c >= 0xD800 && c < 0xE000) || c > 0x10FFFF)
		return 0;
	*width = n;
	return c;
}

static bool is_control(uint32_t c)
{
	return c < 0x20 || (c >= 0x7F && c < 0xA0);
}

struct fault_text { const char *message, *hint; };

/* What is wrong with a character, NULL if nothing. `next` is the byte behind it. */
static const struct fault_text *fault_of(uint32_t c, int next)
{
	static const struct fault_text nul = {"a NUL byte: this is no text file",
	                                      "save the file as plain text in UTF-8"},
				       control = {"a control character", "delete it"},
				       carriage = {"a carriage return without a line feed",
	                                           "save the file with line ends LF or CR LF"},
				       separator = {"a line separator that editors do not count",
	                                            "delete it or start a plain new line"},
				       none = {"a character that no text holds", "delete it"};
	if (c == '\t' || c == '\n' || (c == '\r' && next == '\n'))
		return NULL;
	if (c == 0)
		return &nul;
	if (c == '\r')
		return &carriage;
	/* YAML counts these three as line ends: marks would no longer be those of an editor */
	if (c == 0x85 || c == 0x2028 || c == 0x2029)
		return &separator;
	if (is_control(c))
		return &control;
	/* byte order mark within the text, and the two that are no characters */
	if (c == 0xFEFF || c == 0xFFFE || c == 0xFFFF)
		return &none;
	return NULL;
}

static bool report(struct diagnostics *to, struct mark mark, const char *message, const char *hint)
{
	diagnose(to, ERROR, FAULT_YAML, mark, "", hint, "%s", message);
	return false;
}

/* By its byte order mark; without one, the NUL bytes of its letters are found. */
static bool is_utf16(const unsigned char *at, size_t length)
{
	return length >= 2 &&
	       ((at[0] == 0xFF && at[1] == 0xFE) || (at[0] == 0xFE && at[1] == 0xFF));
}

bool plain_text_check(const void *bytes, size_t length, uint32_t file, struct diagnostics *to)
{
	struct place place = {bytes, (const unsigned char *)bytes + length, {file, 1, 1, 1}};
	if (is_utf16(bytes, length))
		return report(to, place.mark, "the file is UTF-16", "save the file as UTF-8");
	if (length >= 3 && memcmp(bytes, "\xEF\xBB\xBF", 3) == 0)
		place.at += 3;
	while (place.at < place.end) {
		size_t width;
		uint32_t c = decode(place.at, place.end, &width);
		if (width == 0)
			return report(to, place.mark, "bytes that are not UTF-8",
			              "save the file as UTF-8");
		place.at += width;
		const struct fault_text *fault = fault_of(c, place.at < place.end ? *place.at : -1);
		if (fault)
			return report(to, place.mark, fault->message, fault->hint);
		place.mark.column++;
		if (c == '\n') {
			place.mark.line++;
			place.mark.column = 1;
		}
	}
	return true;
}

bool plain_text_has_control(const char *text, size_t length)
{
	const unsigned char *at = (const unsigned char *)text, *end = at + length;
	while (at < end) {
		size_t width;
		uint32_t c = decode(at, end, &width);
		if (width == 0 || (is_control(c) && c != '\t' && c != '\n'))
			return true;
		at += width;
	}
	return false;
}
