/* The words around a result: departures, assumptions, cautions, what to measure. */
#ifndef CHECK_WORDS_H
#define CHECK_WORDS_H

#include "check_judge.h"

/* Departures from safe defaults that make a check at best unproven unless an engineer stands for
 * them. */
const char *load_departure(const struct cell *cell, const char **remedy);     /* reason, or NULL */

void write_words(const struct run *run, const struct lacking_list *lacking, struct result *result);

#endif
