/* The validity of what was read (cell/validity.h), said once and only where its inputs could be
 * read. */
#ifndef CHECK_CELL_H
#define CHECK_CELL_H

#include "read.h"

/* Faults of the cell and, with the setup's name, those that each setup adds. A fault that follows
 * from a value that could not be read is left out: call it when all is read. */
void check_cells(struct reader *reader, const struct cell *cell);

#endif
