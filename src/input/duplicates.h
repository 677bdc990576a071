/* Keys written twice in one map. */
#ifndef DUPLICATES_H
#define DUPLICATES_H

#include "tree.h"

/* Reports every key of the map that stands there already and takes its node out of the map: the
 * first one is kept. n log n in the number of keys. False when memory ran out. */
bool duplicates_drop(struct arena *arena, struct node *map, const char *path,
                     struct diagnostics *to);

#endif
