/* UTF-8 as far as pages need it: whole characters, their width in columns, and what may not reach a
 * terminal. */
#ifndef UTF8_H
#define UTF8_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* One character of text[0..length), length > 0. Bytes that are no UTF-8 come one by one with valid
 * false. */
struct character {
	uint32_t code;
	size_t bytes;       /* 1 to 4 */
	bool valid;
};

struct character utf8_next(const char *text, size_t length);
/* Columns on a terminal or a page of fixed pitch: 0 for marks that join, 2 for wide scripts,
 * else 1. */
size_t utf8_columns(uint32_t code);
/* Controls, line separators and marks that turn the direction of writing: they could fake a
 * page. */
bool utf8_is_control(uint32_t code);
/* Columns of a whole text, controls and bad bytes counted as the one '?' that stands for them. */
size_t utf8_width(const char *text);

#endif
