/* What the standards table for pushes, leaning people and trucks, beside the force that the user
 * states in loads[].kind: sentences, no verdict.
 *
 * Source: accidental.h, each figure with its source and doubt. The push counts with the full masses
 * of the cell, which gives the larger figure; without them its cap alone. Errors: none. */
#ifndef PUSHES_H
#define PUSHES_H

#include "../cell/arena.h"
#include "../cell/cell.h"

/* `caution`: it belongs among the cautions, else among the assumptions. */
typedef void push_word(void *user, bool caution, const char *sentence);
void push_words(const struct cell *cell, struct arena *arena, push_word *word, void *user);

#endif
