/* explain: what a word of the cell file or of the program means. */
#ifndef RUN_EXPLAIN_H
#define RUN_EXPLAIN_H

#include "options.h"

int run_explain(const struct command_line *line);

#endif
