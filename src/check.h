/* The one flow: cell -> load cases -> states -> findings -> result. No files, clock, threads or
 * globals. */
#ifndef CHECK_H
#define CHECK_H

#include "result.h"

struct check_options {
	bool trace;                 /* write down the steps of the governing subjects */
	const char *only; /* trace this check alone (id), or NULL; the verdict is always that of all
	                     checks */
	unsigned headings;          /* of the coarse sweep; 0: 48 */
	const struct pieces *pieces;        /* how long work is cut up; NULL: one after the other */
	const struct history_files *histories;  /* bytes of every file of arm.history, scanned */
	const struct arm_loads *const *arms; /* of the setups, from an earlier run; NULL: built */
};

/* NO_MEMORY leaves *out NULL. The result lives in the arena. */
enum status check_run(struct arena *arena, const struct cell *cell,
                      const struct check_options *options, struct result **out);

#endif
