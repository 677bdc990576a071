/* Bytes before they are YAML: whether they are a text in UTF-8 whose lines an editor counts as we
 * do. */
#ifndef PLAIN_TEXT_H
#define PLAIN_TEXT_H

#include "../cell/diagnostic.h"

/* False with a diagnostic at the first byte that does not belong into such a text. */
bool plain_text_check(const void *bytes, size_t length, uint32_t file, struct diagnostics *to);

/* Whether text[0..length), valid UTF-8, holds a control character other than tab and line feed. */
bool plain_text_has_control(const char *text, size_t length);

#endif
