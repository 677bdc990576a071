/* Source of the encoding: RFC 3629. Wide and joining ranges: the blocks of Unicode 15 in which
 * nearly all characters are so; a page is at worst a column off. */
#include "utf8.h"
#include <string.h>

static bool continues(unsigned char byte)
{
	return (byte & 0xC0) == 0x80;
}

/* Bytes that a first byte announces; 0 for none (RFC 3629 leaves out C0, C1 and F5 on). */
static size_t announced(unsigned char first)
{
	if (first < 0x80)
		return 1;
	if (first < 0xC2 || first > 0xF4)
		return 0;
	return first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
}

struct character utf8_next(const char *text, size_t length)
{
	static const unsigned char kept[] = {0, 0x7F, 0x1F, 0x0F, 0x07};
	static const uint32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
	const struct character bad = {0xFFFD, 1, false};
	unsigned char first = (unsigned char)text[0];
	size_t bytes = announced(first);
	if (bytes == 0 || bytes > length)
		return bad;
	uint32_t code = first & kept[bytes];
	for (size_t i = 1; i < bytes; i++) {
		if (!continues((unsigned char)text[i]))
			return bad;
		code = code << 6 | ((unsigned char)text[i] & 0x3F);
	}
	/* overlong forms and halves of surrogate pairs are no characters */
	if (code < least[bytes] || (code >= 0xD800 && code <= 0xDFFF) || code > 0x10FFFF)
		return bad;
	return (struct character){code, bytes, true};
}

struct range { uint32_t from, to; };

static bool in_ranges(uint32_t code, const struct range *list, size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (code >= list[i].from && code <= list[i].to)
			return true;
	return false;
}

size_t utf8_columns(uint32_t code)
{
	static const struct range joining[] = {
		{0x300, 0x36F}, {0x483, 0x489}, {0x591, 0x5BD}, {0x610, 0x61A}, {0x64B, 0x65F}, {0x200B, 0x200D},
		{0x20D0, 0x20F0}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}};
	static const struct range wide[] = {
		{0x1100, 0x115F}, {0x2E80, 0x303E}, {0x3041, 0xA4CF}, {0xAC00, 0xD7A3}, {0xF900, 0xFAFF},
		{0xFE30, 0xFE6F}, {0xFF00, 0xFF60}, {0xFFE0, 0xFFE6}, {0x1F300, 0x1FAFF}, {0x20000, 0x3FFFD}};
	if (code < 0x300)
		return 1;
	if (in_ranges(code, joining, sizeof joining / sizeof *joining))
		return 0;
	return in_ranges(code, wide, sizeof wide / sizeof *wide) ? 2 : 1;
}

bool utf8_is_control(uint32_t code)
{
	static const struct range controls[] = {
		{0, 0x1F}, {0x7F, 0x9F}, {0x61C, 0x61C}, {0x200E, 0x200F}, {0x2028, 0x202E}, {0x2066, 0x2069},
		{0xFEFF, 0xFEFF}};
	return in_ranges(code, controls, sizeof controls / sizeof *controls);
}

size_t utf8_width(const char *text)
{
	size_t width = 0, length = strlen(text);
	while (length > 0) {
		struct character character = utf8_next(text, length);
		bool plain = character.valid && !utf8_is_control(character.code);
		width += plain ? utf8_columns(character.code) : 1;
		text += character.bytes;
		length -= character.bytes;
	}
	return width;
}
