/* Evaluates every expression of a written calculation from the steps before it, so that what is
 * printed is what was computed. Tests only. */
#ifndef TRACED_H
#define TRACED_H

#include "../../src/cell/trace.h"

/* A Criterion failure for every step whose expression does not give its value, for a symbol of a
 * wrong form and for a trace that ran full; returns the number of expressions. */
size_t traced_expressions(const struct trace *trace, const char *where);
/* Value of the latest step of that symbol; a failure where there is none. */
double traced_value(const struct trace *trace, const char *symbol);

#endif
