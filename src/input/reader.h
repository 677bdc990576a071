/* Tree to cell, driven by the field table. All faults of one run are reported; a cell is given only
 * when there is no error. */
#ifndef READER_H
#define READER_H

#include "../cell/cell.h"
#include "tree.h"

/* BAD_INPUT or NO_MEMORY leave *out NULL. On DONE the cell, its setups and defaults are complete
 * and valid (cell/validity.h). */
enum status cell_read(struct arena *arena, const void *bytes, size_t length, uint32_t file,
                      struct diagnostics *to, const struct cell **out);

#endif
