/* What a cell cannot be, beyond the single key: outlines that cross, anchors on one spot or off the
 * base, values that contradict each other. Faults go to `to`; setups are checked each as the cell
 * they make. */
#ifndef VALIDITY_H
#define VALIDITY_H

#include "arena.h"
#include "cell.h"
#include "diagnostic.h"

void cell_validate(const struct cell *cell, struct arena *scratch, struct diagnostics *to);
/* The same for the cell of a setup of the (checked) cell `of`: outlines that both share are not
 * looked at twice. */
void cell_validate_setup(const struct cell *cell, const struct cell *of, struct arena *scratch,
                         struct diagnostics *to);

#endif
