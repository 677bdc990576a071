/* Two routes to one number: the code's equation with its written calculation, and the same plainly
 * from the clause. Tests only. */
#ifndef ROUTES_H
#define ROUTES_H

#include "../../src/cell/trace.h"

/* The latest written calculation. */
extern struct trace route_trace;

void route_open(void);
void route_close(void);
/* An empty one in the place of the latest. */
struct trace *route_trace_new(void);
/* Some dozens of operations that round by 1e-16 each, and areas that are sums or differences over
 * the slab's size: equal within 1e-11. */
void route_same(double value, double expected, const char *what, uint64_t number);

#endif
