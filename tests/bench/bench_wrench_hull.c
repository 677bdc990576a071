/* Time of the wrenches that can govern an anchor, of the published benchmark arm with payload on a
 * pedestal, joints 2 to 6 on 8 and on 16 poses each. */
#include "../../src/arm/wrench_hull.h"
#include "../support/random_chain.h"
#include "timing.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const double pi = 3.14159265358979323846, pedestal = 0.85;

/* Seconds of one hull. */
static double time_hull(const struct chain *chain, const struct motion_limits *limits,
                        bool refined, const struct pieces *pieces, struct wrench_hull *out)
{
	struct arena arena;
	memset(out, 0, sizeof *out);
	arena_open(&arena, NULL, NULL);
	double start = now_seconds();
	enum status status = wrench_hull_build(chain, limits, pedestal, true, refined, pieces,
	                                       &arena, out);
	double time = now_seconds() - start;
	arena_close(&arena);
	if (status != DONE) {
		fputs("bench_wrench_hull: no memory\n", stderr);
		exit(1);
	}
	return time;
}

static struct motion_limits full_turns(size_t poses)
{
	struct motion_limits limits = {.speed = {1.5, 1, 1.5, 3, 3, 4},
	                               .acceleration = {5, 5, 8, 20, 20, 30},
	                               .poses = poses};
	for (int i = 0; i < 6; i++) {
		limits.low[i] = -pi;
		limits.high[i] = pi;
	}
	return limits;
}

/* On one thread and on two, which must give the same bytes. */
static void compare_threads(const struct chain *chain, const struct motion_limits *limits,
                            bool refined)
{
	static struct wrench_hull one, two;
	const struct pieces pool = {pool_run, NULL};
	double alone = time_hull(chain, limits, refined, NULL, &one);
	double pooled = time_hull(chain, limits, refined, &pool, &two);
	printf("  %2zu poses a joint, %7zu in all%s: %6.2f s on one thread, %.2f s on two; %zu "
	       "wrenches%s\n",
	       limits->poses, reaction_sweep_count(chain, limits), refined ? ", refined" : "",
	       alone, pooled, one.count, one.full ? ", FULL" : "");
	if (one.count != two.count || one.full != two.full ||
	    memcmp(one.at, two.at, one.count * sizeof *one.at) != 0) {
		fputs("bench_wrench_hull: threads change the result\n", stderr);
		exit(1);
	}
}

/* The large grid once, as the program runs it. */
static void time_pooled(const struct chain *chain, const struct motion_limits *limits)
{
	static struct wrench_hull hull;
	const struct pieces pool = {pool_run, NULL};
	double processor = processor_seconds();
	double time = time_hull(chain, limits, true, &pool, &hull);
	processor = processor_seconds() - processor;
	printf("  %2zu poses a joint, %7zu in all, refined: %6.2f s on two threads, target with "
	       "the full sweep at most 10; %.1f s of processors; %zu wrenches%s\n",
	       limits->poses, reaction_sweep_count(chain, limits), time, processor, hull.count,
	       hull.full ? ", FULL" : "");
}

int main(void)
{
	struct chain chain;
	struct motion_limits coarse = full_turns(8), fine = full_turns(16);
	chain_sample(&chain);
	/* beside the last axis, so that every joint counts */
	chain.payload_centre[0] = 0.1;
	puts("wrenches that can govern, arm of six joints");
	compare_threads(&chain, &coarse, false);
	compare_threads(&chain, &coarse, true);
	time_pooled(&chain, &fine);
	return 0;
}
