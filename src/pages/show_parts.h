/* The parts of the page that says what was understood (show.c). */
#ifndef SHOW_PARTS_H
#define SHOW_PARTS_H

#include "pages.h"
#include "phrases.h"

enum { SHOW_VALUE = 44 };        /* column where values begin, behind the longest path */

/* show_fields.c: every key with its value as given and in the other unit system */
void show_fields(struct writer *writer, const struct cell *cell);
/* show_value.c: one thing of the field table; false: nothing is known of it and nothing was
 * written */
bool flow_field_value(struct writer *writer, const struct cell *cell, const struct field *field,
                      const void *holder);
/* show_loads.c: the load cases and the bed ratios that are run */
void show_loads(struct writer *writer, const struct result *result);
/* show_plan.c: the cell from above, in characters */
void show_plan(struct writer *writer, const struct cell *cell);

#endif
