/* One plain decimal number to the double nearest to it, fast: the numbers of a long table.
 *
 * Source: own derivation. A number of up to 19 digits is a whole number times a power of ten. Up to
 * 2^53 and 10^22 both are doubles, and one division or multiplication rounds once (Clinger 1990,
 * from memory). Beyond that the quotient is carried with its remainder, about twice the digits of a
 * double; where even those do not tell to which side it rounds, the slow way of src/quantity does.
 * Range: any finite double; no more than MOST_DECIMAL_DIGITS digits behind the leading zeros.
 * Identities: the value of quantity_parse_bare, bit for bit; a minus mirrors it. No locale. */
#ifndef DECIMAL_H
#define DECIMAL_H

#include <stddef.h>

enum { MOST_DECIMAL_DIGITS = 60 };

/* Reads the number that starts at `at` ("-12.5", "+.5", "3.", "1.2e-3"; no blanks before it), times
 * 10^shift, rounded once. Returns the byte behind it; NULL and *out = 0 where no such number stands
 * or it is not finite. Never looks at `end` or beyond. */
const char *decimal_read(const char *at, const char *end, int shift, double *out);

#endif
