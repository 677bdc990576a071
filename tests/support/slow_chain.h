/* A second way to the mechanics of a chain, slow and plain, for the tests to compare with: frames
 * from the words of each convention, one elementary motion after the other; positions and
 * velocities only. It shares the description of the chain with the program, and nothing else. Tests
 * only. */
#ifndef SLOW_CHAIN_H
#define SLOW_CHAIN_H

#include "../../src/arm/chain.h"

struct slow_state {
	double momentum[3];        /* sum of m v [kg m/s] */
	double spin[3]; /* its moment about the base origin, and the bodies' own [kg m2/s] */
	double weight[3],
		turning[3]; /* force of gravity and its moment about the base origin [N, N m] */
	double kinetic, potential; /* [J] */
};
void slow_state(const struct chain *chain, const double q[], const double speed[],
                struct slow_state *out);

/* Wrench on the base as weight less the rate of momentum and of its moment: central difference of
 * fourth order with step h [s] along q + speed t + acceleration t^2 / 2. *size: what rounding is
 * measured by, force and moment. */
void slow_wrench(const struct chain *chain, const double q[], const double speed[],
                 const double acceleration[], double h, struct base_wrench *out, double size[2]);

#endif
