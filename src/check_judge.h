/* Findings: every check judged at its worst, with sentences and, where asked for, the steps. */
#ifndef CHECK_JUDGE_H
#define CHECK_JUDGE_H

#include "check_sweep.h"

/* Fills checks, left_out, anchors, verdict and governing of the result; `lacking` collects every
 * missing field with the checks that wait for it, see check_words.h. */
struct lacking { const char *path; const char *checks[MAX_CHECKS]; size_t check_count; };
struct lacking_list { struct lacking *list; size_t count, room; };

enum status judge_all(const struct run *run, struct result *result, struct lacking_list *lacking);

#endif
