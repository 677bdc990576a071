/* The least rating that a substitute anchor must have for this pattern, slab and share.
 *
 * Every value is rounded up to five significant digits, so that it holds when entered; a thousandth
 * less fails. Pairs lie on the interaction curve that the file asks for. */
#ifndef REQUIRE_H
#define REQUIRE_H

#include "../check.h"

/* Fills result->required. `cell` and `options` are those of the run that made the result. */
enum status require_fill(struct arena *arena, const struct cell *cell,
                         const struct check_options *options, struct result *result);

#endif
