#include "routes.h"

#include <criterion/criterion.h>
#include <math.h>

static const double close_to = 1e-11;
static struct arena arena;

struct trace route_trace;

void route_open(void)
{
	arena_open(&arena, NULL, NULL);
}

void route_close(void)
{
	arena_close(&arena);
}

struct trace *route_trace_new(void)
{
	route_close();
	route_open();
	trace_open(&route_trace, &arena);
	return &route_trace;
}

void route_same(double value, double expected, const char *what, uint64_t number)
{
	cr_assert(value == expected || fabs(value - expected) <= close_to * fabs(expected),
	          "case %llu, %s: %.17g, plainly %.17g", (unsigned long long)number, what, value,
	          expected);
}
