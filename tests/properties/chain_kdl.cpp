// Random arms against the general robotics library orocos-kdl (Debian liborocos-kdl-dev): base
// wrench and joint torques, revolute and prismatic joints, all three conventions, mounted any way.
// `make kdl` builds and runs it; a tenth of CASES arms, 1000 of the 10000 that the Makefile sets,
// ten instants each; SEED as elsewhere. The last line is "N passed, N failed", as of the others.
//
// The tolerance, 1e-9 of the largest member of its kind, lies between what it must let through and
// what it must not: two orders of summation differ by 1e-13 of it at most, since a wrench is a sum
// of a few hundred products that cancel by two or three digits, while a term left out or a swapped
// sign is one of these products, in most arms a thousandth of the whole or more.
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
enum { INSTANTS = 10, CONVENTIONS = 3 };

// How many arms of each kind were compared: a property of the dice that the test rests on.
struct tally {
	uint64_t convention[CONVENTIONS], prismatic, mounted;
};

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

// Every other arm stands on the floor of its own axes.
void throw_arm(struct dice *dice, struct chain *chain, struct tally *tally)
{
	chain_random(chain, dice, 7);
	if (dice_whole(dice, 0, 1)) {
		rotation_random(dice, chain->mounting);
		tally->mounted++;
	}
	bool slides = false;
	for (size_t i = 0; i < chain->count; i++)
		slides = slides || chain->link[i].kind == JOINT_PRISMATIC;
	tally->prismatic += slides;
	tally->convention[chain->convention]++;
}

// Worst difference of one arm over some instants.
double one_arm(struct dice *dice, struct tally *tally)
{
	struct chain chain;
	struct prepared_chain prepared;
	double worst = 0;
	throw_arm(dice, &chain, tally);
	chain_prepare(&chain, &prepared);
	struct kdl_chain *kdl = kdl_chain_open(&chain, KDL_FELT);
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
	uint64_t count = cases_count("chain_kdl", 10);
	uint64_t passed = 0, failed = 0;
	struct tally tally = {{0, 0, 0}, 0, 0};
	double worst = 0;
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		double here = one_arm(&dice, &tally);
		worst = worse(worst, here);
		if (here <= tolerance) {
			passed++;
			continue;
		}
		failed++;
		printf("case %" PRIu64 ": relative difference %g\n", number, here);
	}
	printf("arms: %" PRIu64 " standard DH, %" PRIu64 " modified DH, %" PRIu64 " frames; %" PRIu64
	       " with a slide, %" PRIu64 " mounted otherwise than upright\n",
	       tally.convention[CHAIN_STANDARD_DH], tally.convention[CHAIN_MODIFIED_DH],
	       tally.convention[CHAIN_FRAMES], tally.prismatic, tally.mounted);
	printf("largest relative difference %.2g\n", worst);
	printf("%" PRIu64 " passed, %" PRIu64 " failed\n", passed, failed);
	return failed || !passed;
}
