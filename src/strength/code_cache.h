/* The table in which code_parts.h keeps strengths: by kind (mode, or row of an edge) and the set of
 * loaded anchors. */
#ifndef CODE_CACHE_H
#define CODE_CACHE_H

#include "code_parts.h"

/* NULL: not kept yet. */
const struct kept *cache_find(const struct strength_cache *cache, uint32_t kind, uint64_t anchors);
/* Keeps what is not there yet; its list must not be NULL. False: no memory. */
bool cache_keep(struct strength_cache *cache, struct arena *arena, const struct kept *kept);

#endif
