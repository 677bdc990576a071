#include "cases.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>

static uint64_t from_environment(const char *name, uint64_t otherwise)
{
	const char *text = getenv(name);
	return text && *text ? strtoull(text, NULL, 10) : otherwise;
}

uint64_t cases_seed(void)
{
	return from_environment("SEED", 1);
}

uint64_t cases_count(const char *property, uint64_t part)
{
	uint64_t count = from_environment("CASES", 10000) / part;
	count = count ? count : 1;
	printf("%s: seed %" PRIu64 ", %" PRIu64 " cases\n", property, cases_seed(), count);
	fflush(stdout);
	return count;
}
