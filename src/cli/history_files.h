/* The CSVs that a cell file names, read from its folder and given to the library. */
#ifndef HISTORY_FILES_CLI_H
#define HISTORY_FILES_CLI_H

#include "../standfast.h"
#include "input_file.h"

struct given_files { struct input_file *list; size_t count; };      /* all zero: none */

/* After standfast_read. `cell_path` as on the command line; "-": names are taken from the working
 * folder. Every file is tried, so that all faults are told in one run; false when there was any.
 * The bytes must stay until standfast_close. */
bool history_files_give(struct standfast *run, const char *cell_path, struct given_files *out);
void history_files_free(struct given_files *files);

#endif
