/* What is not known of the loads of one setup, and what that does to a result (loads.h). */
#ifndef GAPS_H
#define GAPS_H

#include "loads.h"

/* Adds each once. */
void find_gaps(const struct cell *cell, struct loads *loads);

#endif
