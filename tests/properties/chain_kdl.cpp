// Random arms against the general robotics library orocos-kdl (Debian liborocos-kdl-dev): base wrench and
// joint torques, agreement 1e-9 relative. CASES arms, 1000 if not set; SEED as elsewhere.
//
// Build and run, from the top of the repository, with the plain build's objects in build/obj:
//   make
//   for part in random_chain random_base cases; do
//     gcc -std=c17 -O2 -ffp-contract=off -c -o build/obj/$part.kdl.o tests/support/$part.c
//   done
//   g++ -std=c++17 -O2 -Wall -Wextra -isystem /usr/include/eigen3 -o build/tests/chain_kdl
//     tests/properties/chain_kdl.cpp tests/support/kdl_chain.cpp build/obj/*.kdl.o
//     build/obj/src/arm/chain*.o -lorocos-kdl -lm
//   build/tests/chain_kdl
// The last line is "N passed, N failed", as of the other suites.
#include "../support/kdl_chain.h"
#include "../support/random_chain.h"
extern "C" {
#include "../support/cases.h"
}

#include <cinttypes>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace {

const double tolerance = 1e-9;
enum { INSTANTS = 10 };

// The larger of two differences; one that is not a number is the worst and stays.
double worse(double a, double b)
{
	return std::isnan(a) || b <= a ? a : b;
}

// Largest difference, relative to the largest member of the same kind or to the weight at a metre.
double difference(const double mine[], const double other[], size_t count, double size)
{
	double most = 0;
	for (size_t i = 0; i < count; i++)
		size = worse(size, fabs(other[i]));
	for (size_t i = 0; i < count; i++)
		most = worse(most, fabs(mine[i] - other[i]) / size);
	return most;
}

double weight_of(const struct chain *chain)
{
	double mass = chain->payload_mass;
	for (size_t i = 0; i < chain->count; i++)
		mass += chain->link[i].mass;
	const double *g = chain->gravity;
	return mass * sqrt(g[0] * g[0] + g[1] * g[1] + g[2] * g[2]);
}

// Worst difference of one arm over some instants.
double one_arm(struct dice *dice)
{
	struct chain chain;
	struct prepared_chain prepared;
	double worst = 0;
	chain_random(&chain, dice, 7);
	chain_prepare(&chain, &prepared);
	struct kdl_chain *kdl = kdl_chain_open(&chain);
	for (int k = 0; k < INSTANTS; k++) {
		struct instant at;
		struct base_wrench mine, other;
		double torque[MAX_JOINTS_OF_ARM], theirs[MAX_JOINTS_OF_ARM], size = weight_of(&chain);
		instant_random(&at, dice);
		chain_wrench(&prepared, at.q, at.speed, at.acceleration, &mine, torque);
		if (!kdl_chain_wrench(kdl, at.q, at.speed, at.acceleration, &other, theirs))
			worst = INFINITY;
		worst = worse(worst, difference(mine.force, other.force, 3, size));
		worst = worse(worst, difference(mine.moment, other.moment, 3, size));
		worst = worse(worst, difference(torque, theirs, chain.count, size));
	}
	kdl_chain_close(kdl);
	return worst;
}

} // namespace

int main()
{
	uint64_t count = getenv("CASES") ? cases_count("chain_kdl", 1) : 1000;
	uint64_t passed = 0, failed = 0;
	double worst = 0;
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		double here = one_arm(&dice);
		worst = worse(worst, here);
		if (here <= tolerance) {
			passed++;
			continue;
		}
		failed++;
		printf("case %" PRIu64 ": relative difference %g\n", number, here);
	}
	printf("largest relative difference %.2g\n", worst);
	printf("%" PRIu64 " passed, %" PRIu64 " failed\n", passed, failed);
	return failed || !passed;
}
