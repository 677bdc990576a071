/* Evaluates the expressions of a written calculation (src/cell/trace.h), so that tests can compare
 * what is printed with what was computed. Tests only.
 *
 * Grammar: identifiers, decimal numbers, + - * / ^ ( ), sqrt(a), abs(a), min(a, ...), max(a, ...).
 * ^ binds strongest and to the right, then the sign, then * and /, then + and -. */
#ifndef EXPRESSION_H
#define EXPRESSION_H

#include <stdbool.h>
#include <stddef.h>

/* Gives the value of an identifier, or false where there is none. */
typedef bool expression_lookup(const void *user, const char *name, size_t length, double *value);

/* True and *value, or false and one sentence in fault. `lookup` may be NULL. */
bool expression_evaluate(const char *text, expression_lookup *lookup, const void *user,
                         double *value, char *fault, size_t room);

#endif
