/* new: a cell file to fill in, on standard output or in a file. */
#ifndef RUN_NEW_H
#define RUN_NEW_H

#include "options.h"

int run_new(const struct command_line *line);

#endif
