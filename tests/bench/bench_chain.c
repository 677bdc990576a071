/* Times of the arm's mechanics on the published benchmark arm: base wrench, terms of a pose, full
 * sweep, bound. Medians. With -DWITH_KDL the general robotics library orocos-kdl computes the same
 * wrenches in the same run (Debian liborocos-kdl-dev), and the ratio is printed: g++ -std=c++17 -O2
 * -isystem /usr/include/eigen3 -c -o build/obj/kdl_chain.o tests/support/kdl_chain.cpp gcc -std=c17
 * -O2 -ffp-contract=off -D_POSIX_C_SOURCE=200809L -DWITH_KDL -o build/bench/bench_chain
 *     tests/bench/bench_chain.c tests/support/random_chain.c tests/support/random_base.c
 *     build/obj/kdl_chain.o build/obj/src/arm/{chain,pose,reaction,zonogon}*.o
 *     -lorocos-kdl -lstdc++ -pthread -lm */
#include "../../src/arm/reaction_sweep.h"
#include "../support/random_chain.h"
#ifdef WITH_KDL
#include "../support/kdl_chain.h"
#endif

#include <math.h>
#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { INSTANTS = 1024, BLOCKS = 301, THREADS = 2, PIECES = 64 };

static const double pi = 3.14159265358979323846;

static double now(void)
{
	struct timespec time;
	clock_gettime(CLOCK_MONOTONIC, &time);
	return (double)time.tv_sec * 1e9 + (double)time.tv_nsec;
}

static int rising(const void *left, const void *right)
{
	double a = *(const double *)left, b = *(const double *)right;
	return (a > b) - (a < b);
}

/* --- one pose
 * ------------------------------------------------------------------------------------- */

struct arm_of_bench {
	struct chain chain;
	struct prepared_chain prepared;
	struct instant instant[INSTANTS];
	double sum;      /* of what was computed, so that it cannot be left out */
	void *other;     /* the library's chain */
};

typedef void one_pose(struct arm_of_bench *arm, const struct instant *at);

static void wrench_alone(struct arm_of_bench *arm, const struct instant *at)
{
	struct base_wrench wrench;
	chain_wrench(&arm->prepared, at->q, at->speed, at->acceleration, &wrench, NULL);
	arm->sum += wrench.force[2] + wrench.moment[0];
}

static void wrench_and_torques(struct arm_of_bench *arm, const struct instant *at)
{
	struct base_wrench wrench;
	double torque[MAX_JOINTS_OF_ARM];
	chain_wrench(&arm->prepared, at->q, at->speed, at->acceleration, &wrench, torque);
	arm->sum += wrench.force[2] + wrench.moment[0] + torque[1];
}

static void terms(struct arm_of_bench *arm, const struct instant *at)
{
	struct pose_terms terms;
	chain_terms(&arm->prepared, at->q, &terms);
	arm->sum += terms.b[1][2].moment[0];
}

/* Median over blocks of the time a pose [ns]. */
static double time_of(one_pose *pose, struct arm_of_bench *arm)
{
	double times[BLOCKS];
	for (int block = 0; block < BLOCKS; block++) {
		double start = now();
		for (int i = 0; i < INSTANTS; i++)
			pose(arm, &arm->instant[i]);
		times[block] = (now() - start) / INSTANTS;
	}
	qsort(times, BLOCKS, sizeof *times, rising);
	return times[BLOCKS / 2];
}

#ifdef WITH_KDL
static void wrench_of_library(struct arm_of_bench *arm, const struct instant *at)
{
	struct base_wrench wrench;
	double torque[MAX_JOINTS_OF_ARM];
	if (!kdl_chain_wrench(arm->other, at->q, at->speed, at->acceleration, &wrench, torque))
		abort();
	arm->sum += wrench.force[2] + wrench.moment[0] + torque[1];
}

static void compare_with_library(struct arm_of_bench *arm, double mine)
{
	arm->other = kdl_chain_open(&arm->chain);
	double theirs = time_of(wrench_of_library, arm);
	kdl_chain_close(arm->other);
	printf("  the same by orocos-kdl     %8.1f ns a pose, %.1f times as long\n", theirs,
	       theirs / mine);
}
#endif

/* --- the sweep
 * ------------------------------------------------------------------------------------ */

struct worker {
	pthread_t thread;
	const struct chain *chain;
	const struct motion_limits *limits;
	struct reaction_extremes extremes;
	size_t number, of;
};

/* Every `of`-th piece of the grid. */
static void *sweep_share(void *user)
{
	struct worker *worker = user;
	size_t total = reaction_sweep_count(worker->chain, worker->limits);
	reaction_start(&worker->extremes);
	for (size_t piece = worker->number; piece < PIECES; piece += worker->of)
		reaction_sweep(worker->chain, worker->limits, total / PIECES * piece,
		               piece + 1 < PIECES ? total / PIECES * (piece + 1) : total,
		               &worker->extremes);
	return NULL;
}

static double time_sweep(const struct chain *chain, const struct motion_limits *limits,
                         size_t threads, struct reaction_extremes *out)
{
	static struct worker worker[THREADS];
	double start = now();
	reaction_start(out);
	for (size_t i = 0; i < threads; i++) {
		worker[i] = (struct worker){
			.chain = chain, .limits = limits, .number = i, .of = threads};
		if (pthread_create(&worker[i].thread, NULL, sweep_share, &worker[i]) != 0)
			abort();
	}
	for (size_t i = 0; i < threads; i++) {
		pthread_join(worker[i].thread, NULL);
		reaction_merge(out, &worker[i].extremes);
	}
	return (now() - start) * 1e-9;
}

static void bench_sweep(struct arm_of_bench *arm)
{
	struct motion_limits limits = {.speed = {1.5, 1, 1.5, 3, 3, 4},
	                               .acceleration = {5, 5, 8, 20, 20, 30},
	                               .poses = 16};
	struct reaction_extremes extremes;
	for (int i = 0; i < 6; i++) {
		limits.low[i] = -pi;
		limits.high[i] = pi;
	}
	arm->chain.payload_centre[0] = 0.1;
	double one = time_sweep(&arm->chain, &limits, 1, &extremes);
	double two = time_sweep(&arm->chain, &limits, THREADS, &extremes);
	printf("full sweep, %zu poses, all signs\n", extremes.poses);
	printf("  one thread                 %8.2f s\n", one);
	printf("  two threads                %8.2f s\n", two);
	double start = now();
	reaction_refine(&arm->chain, &limits, &extremes);
	printf("  refining                   %8.2f s\n", (now() - start) * 1e-9);
	start = now();
	reaction_bound(&arm->chain, &limits, &extremes);
	printf("  bound, one thread          %8.2f s, tilting %.1f N m within %.1f\n",
	       (now() - start) * 1e-9, extremes.exact[REACTION_TILTING].value,
	       extremes.bound[REACTION_TILTING]);
}

int main(void)
{
	static struct arm_of_bench arm;
	struct dice dice = dice_open(1, 1);
	chain_sample(&arm.chain);
	chain_prepare(&arm.chain, &arm.prepared);
	for (int i = 0; i < INSTANTS; i++)
		instant_random(&arm.instant[i], &dice);
	printf("arm of six joints\n");
	double alone = time_of(wrench_alone, &arm);
	printf("  base wrench                %8.1f ns a pose\n", alone);
	double both = time_of(wrench_and_torques, &arm);
	printf("  base wrench and torques    %8.1f ns a pose\n", both);
#ifdef WITH_KDL
	compare_with_library(&arm, both);
#endif
	printf("  all terms of a pose        %8.1f ns a pose\n", time_of(terms, &arm));
	bench_sweep(&arm);
	return isnan(arm.sum);
}
