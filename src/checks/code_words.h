/* The numbered assumptions behind the checks of the codes, for the pages. */
#ifndef CODE_WORDS_H
#define CODE_WORDS_H

#include "../cell/arena.h"
#include "../cell/cell.h"

enum { MAX_CODE_ASSUMPTIONS = 64 };

/* "S3 the sentence": those of the codes that the file asks for and of the modes that apply to its
 * anchor, in the order of their numbers. In the arena; returns how many. */
size_t code_assumptions_used(const struct cell *cell, struct arena *arena, const char *out[],
                             size_t room);

#endif
