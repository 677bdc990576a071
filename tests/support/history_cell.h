/* sample_lift with the arm given by two histories, a.csv of normal motion and b.csv of an emergency
 * stop, and 1000 kg in the middle. Tests only. */
#ifndef HISTORY_CELL_H
#define HISTORY_CELL_H

#include "cell_text.h"

#define HISTORY_HEAD "t [s],Fx [N],Fy [N],Fz [N],Mx [N m],My [N m],Mz [N m]\n"
/* A history in which nothing happens. */
#define HISTORY_STILL HISTORY_HEAD "0,0,0,0,0,0,0\n"

/* Read and checked with changes. The texts must outlive the trial. */
void history_trial_open(struct trial *trial, const char *a, const char *b,
                        const struct change *change, size_t count);
/* The same with options of its own, whose histories are set here. */
void history_trial_with(struct trial *trial, const char *a, const char *b,
                        const struct change *change, size_t count, struct check_options *options);
/* The check `id`, as judged() of cell_text.h; valid until the next call. */
const struct check_result *history_judged(const char *a, const char *b, const char *id, ...)
	__attribute__((sentinel));
/* The result of the last history_judged. */
const struct result *history_result(void);

/* Whether a check would hold if the history had more rows: those of these tests have few. */
bool held_but_for_rows(const struct check_result *check);

#endif
