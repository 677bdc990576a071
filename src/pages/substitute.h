/* The line with numbers of a written calculation, generated from a step's expression and the
 * earlier steps. Numbers stand in the base units (N, mm, MPa, N mm, kg, rad, s), in which the
 * expressions hold for the plain numbers too; so a line can be followed on paper as it stands,
 * empirical constants included. */
#ifndef SUBSTITUTE_H
#define SUBSTITUTE_H

#include "../cell/trace.h"
#include "writer.h"

enum { SUBSTITUTED_DIGITS = 4 };

/* Flow the expression of trace->steps[index] with even spacing. */
void flow_expression(struct writer *writer, const struct trace *trace, size_t index);
/* The same with every identifier replaced by the value of the last earlier step of that symbol,
 * four significant digits and its unit. An identifier without such a step stays as it is. */
void flow_substituted(struct writer *writer, const struct trace *trace, size_t index);
/* Whether the expression names anything that would be replaced. */
bool has_substitution(const struct trace *trace, size_t index);
/* The unit of factor 1 of a dimension: "N", "mm"; "" for pure numbers and shares. */
const char *base_unit_name(enum dimension dimension);

#endif
