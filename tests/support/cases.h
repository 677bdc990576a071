/* How many random cases, and from which seed: CASES and SEED of the environment. Tests only. */
#ifndef CASES_H
#define CASES_H

#include <stdint.h>

uint64_t cases_seed(void);
/* This property's part of CASES (10 000 unless set), at least one; prints seed and count. */
uint64_t cases_count(const char *property, uint64_t part);

#endif
