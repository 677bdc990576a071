/* The written calculation: one step a line. The line with numbers is generated from the expression
 * and the earlier steps, and the tests evaluate every expression, so that what is printed is what
 * was computed. Every function takes a NULL trace and then does nothing.
 *
 * Expressions: identifiers of earlier steps, decimal numbers, + - * / ^ ( ), sqrt(a), min(a, b,
 * ...), max(a, b, ...), abs(a). Values in base units, so an expression holds for the plain numbers.
 */
#ifndef TRACE_H
#define TRACE_H

#include "arena.h"
#include "given.h"

struct step {
	const char *symbol;          /* identifier, [A-Za-z][A-Za-z0-9_]* */
	const char *expression;      /* "" for an input or a table value */
	double value;                /* [base unit] */
	enum dimension dimension;
	const char *source;          /* clause, table, "input" or "" */
	const char *meaning;         /* a few words, or "" */
	struct mark input;           /* line 0: not an input */
};

enum { MAX_STEPS = 256 };
struct trace {
	struct arena *arena;
	struct step *steps;          /* room for MAX_STEPS */
	size_t count;
	bool full; /* steps were lost: an internal fault that the tests look for */
};

void trace_open(struct trace *trace, struct arena *arena);
/* Adds a step; the strings must outlive the trace (literals, or trace_text). A symbol already there
 * is kept as it is when the value is the same bit for bit. Returns value, for use in line. */
double trace_step(struct trace *trace, const char *symbol, const char *expression, double value,
                  enum dimension dimension, const char *source, const char *meaning);
/* The same for an input: its place in the file is the source. */
double trace_input(struct trace *trace, const char *symbol, const struct number *number,
                   enum dimension dimension, const char *meaning);
/* Formatted text in the trace's arena, "" for a NULL trace. */
const char *trace_text(struct trace *trace, const char *format, ...)
	__attribute__((format(printf, 2, 3)));

#endif
