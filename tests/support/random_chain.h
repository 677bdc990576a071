/* Random arms, and the published benchmark arm, for tests and benchmarks. Valid C++ as well. Tests
 * only. */
#ifndef RANDOM_CHAIN_H
#define RANDOM_CHAIN_H

#ifdef __cplusplus
extern "C" {
#endif

#include "../../src/arm/chain.h"
#include "random_base.h"

/* The arm on which two published sets of parameters exist; weight of 9.81 m/s2 on a floor, no
 * payload. */
enum chain_set {
	PUMA_1994,     /* standard DH; Corke and Armstrong-Helouvry 1994 */
	PUMA_1986      /* modified DH; Armstrong, Khatib and Burdick 1986 */
};
void chain_benchmark(struct chain *chain, enum chain_set set);
/* That arm with 2.5 kg at (0, 0, 0.15) m of the last link: the sample of the bound. */
void chain_sample(struct chain *chain);

/* One to `most` joints of any kind in any convention, bodies that can be, a payload, gravity from
 * anywhere. */
void chain_random(struct chain *chain, struct dice *dice, size_t most);
/* A body: mass, centre and inertia of a few point masses about `reach` apart. */
void body_random(struct dice *dice, double reach, double *mass, double centre[3],
                 double inertia[6]);
/* A rotation, row-major; every direction alike. */
void rotation_random(struct dice *dice, double rotation[9]);

/* Positions, speeds and accelerations of a random instant; at most MAX_JOINTS_OF_ARM of each. */
struct instant {
	double q[MAX_JOINTS_OF_ARM], speed[MAX_JOINTS_OF_ARM], acceleration[MAX_JOINTS_OF_ARM];
};
void instant_random(struct instant *instant, struct dice *dice);

#ifdef __cplusplus
}
#endif
#endif
