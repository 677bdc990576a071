/* In-place concrete strength from what is known: a class, a specified strength, or cores.
 * A number and how it came to be; no verdict here. */
#ifndef STRENGTH_H
#define STRENGTH_H

#include "../cell/cell.h"
#include "../cell/trace.h"

struct concrete_strength {
	bool known;                  /* a number exists */
	bool shown;                  /* and its evidence is good enough to rest a verdict on */
	bool evidenced; /* it rests on cores or a delivery note: else it may be higher as well as
	                   lower */
	bool inch_pound_twin;        /* specified as 4000 psi: ACI 318's own pair of 28 MPa */
	double value;                /* cylinder strength [MPa] */
	double mean, variation;      /* of cores: [MPa], [-] */
	const char *basis;           /* "class", "specified, cylinder", "5 cores, ACI 562" or "" */
	const char *missing[6];      /* field paths of what is unknown or badly evidenced */
	size_t missing_count;
	const char *doubt;           /* why it is not shown although nothing is missing, or NULL */
	const char *remedy;          /* what then helps, or NULL */
};

void concrete_strength(const struct cell *cell, struct concrete_strength *out, struct trace *trace);

/* Equivalent specified strength of n cores, ACI 562-19 6.4.3 (clause number from memory):
 * 0.9 mean (1 - 1.28 sqrt((kc V)^2/n + 0.0015)). Negative or zero: the spread is too wide. n >= 2.
 */
double cores_equivalent_strength(size_t n, double mean, double variation);
double cores_factor_kc(size_t n); /* table of ACI 562; between rows the row of the smaller n */
double
cylinder_from_cube(double cube); /* [MPa], through the EN 206 Table 12 pairs, linear between */

#endif
