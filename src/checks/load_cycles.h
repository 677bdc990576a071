/* What the checks of repeated loads share. */
#ifndef LOAD_CYCLES_H
#define LOAD_CYCLES_H

#include "check_table.h"

/* Whether any setup of the file says how often a history or a working cycle happens a year. */
bool cycles_stated(const struct cell *cell);

/* What is not known of the cycles of a judging's setup; false where there are none to judge. */
bool judge_cycles_known(const struct judging *judging, struct finding *out);

#endif
