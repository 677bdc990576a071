/* check, require, arm and show: every file by itself, several at a time, printed in the order in
 * which they were named; the same bytes for any number of jobs. */
#ifndef RUN_FILES_H
#define RUN_FILES_H

#include "options.h"

/* The exit status: the worst of all files in the order 2, 1, 3, 0. */
int run_files(const struct command_line *line);

#endif
