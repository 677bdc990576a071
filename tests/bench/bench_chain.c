/* Times of the arm's mechanics on the published benchmark arm: base wrench, terms of a pose, full
 * sweep, bound. Medians. The general robotics library orocos-kdl computes the same wrenches in the
 * same run, block by block in turn, and the ratio is printed; BENCH_KDL= leaves it out. */
#include "../../src/arm/reaction_sweep.h"
#include "../support/random_chain.h"
#include "timing.h"
#ifdef WITH_KDL
#include "../support/kdl_chain.h"
#endif

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { INSTANTS = 1024, BLOCKS = 301, SWEEP_PIECES = 64 };

static const double pi = 3.14159265358979323846;

/* --- one pose
 * ------------------------------------------------------------------------------------- */

struct arm_of_bench {
	struct chain chain;
	struct prepared_chain prepared;
	struct instant instant[INSTANTS];
	double sum;                  /* of what was computed, so that it cannot be left out */
	void *felt, *fixed;          /* the library's chains */
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

#ifdef WITH_KDL
static void library_wrench(struct arm_of_bench *arm, const struct instant *at)
{
	struct base_wrench wrench;
	double torque[MAX_JOINTS_OF_ARM];
	if (!kdl_chain_wrench(arm->felt, at->q, at->speed, at->acceleration, &wrench, torque))
		abort();
	arm->sum += wrench.force[2] + wrench.moment[0] + torque[1];
}

static void library_torques(struct arm_of_bench *arm, const struct instant *at)
{
	struct base_wrench none;
	double torque[MAX_JOINTS_OF_ARM];
	if (!kdl_chain_wrench(arm->fixed, at->q, at->speed, at->acceleration, &none, torque))
		abort();
	arm->sum += torque[1];
}
#endif

enum task { ALONE, BOTH, TERMS, LIBRARY_WRENCH, LIBRARY_TORQUES, TASKS };
static one_pose *const tasks[TASKS] = {
	[ALONE] = wrench_alone,
	[BOTH] = wrench_and_torques,
	[TERMS] = terms,
#ifdef WITH_KDL
	[LIBRARY_WRENCH] = library_wrench,
	[LIBRARY_TORQUES] = library_torques,
#endif
};

/* Median over blocks of the time a pose [ns], the tasks taking turns; by the processor's clock,
 * since other programs on the machine would count against the longer blocks more often. */
static void time_poses(struct arm_of_bench *arm, double median[TASKS])
{
	static double times[TASKS][BLOCKS];
	for (int block = 0; block < BLOCKS; block++)
		for (int task = 0; task < TASKS; task++) {
			double start = processor_seconds();
			for (int i = 0; tasks[task] && i < INSTANTS; i++)
				tasks[task](arm, &arm->instant[i]);
			times[task][block] = (processor_seconds() - start) * 1e9 / INSTANTS;
		}
	for (int task = 0; task < TASKS; task++)
		median[task] = median_of(times[task], BLOCKS);
}

static void bench_poses(struct arm_of_bench *arm)
{
	double time[TASKS];
#ifdef WITH_KDL
	arm->felt = kdl_chain_open(&arm->chain, KDL_FELT);
	arm->fixed = kdl_chain_open(&arm->chain, KDL_FIXED);
#endif
	time_poses(arm, time);
	printf("arm of six joints, medians of %d\n", BLOCKS);
	printf("  base wrench                    %8.1f ns a pose   target at most 500\n",
	       time[ALONE]);
	printf("  base wrench and joint torques  %8.1f ns a pose\n", time[BOTH]);
	printf("  all terms of a pose            %8.1f ns a pose\n", time[TERMS]);
#ifdef WITH_KDL
	printf("  orocos-kdl, wrench and torques %8.1f ns a pose   %.1f times as long, target at "
	       "least 3\n", time[LIBRARY_WRENCH], time[LIBRARY_WRENCH] / time[BOTH]);
	printf("  orocos-kdl, torques alone      %8.1f ns a pose   %.1f times as long as wrench "
	       "and torques\n", time[LIBRARY_TORQUES], time[LIBRARY_TORQUES] / time[BOTH]);
	kdl_chain_close(arm->felt);
	kdl_chain_close(arm->fixed);
#else
	puts("  orocos-kdl: left out");
#endif
}

/* --- the sweep
 * ------------------------------------------------------------------------------------ */

typedef void sweep_part(const struct chain *chain, const struct motion_limits *limits, size_t from,
                        size_t to, struct reaction_extremes *into);

struct sweep_job {
	const struct chain *chain;
	const struct motion_limits *limits;
	size_t total;
	sweep_part *part;
	struct reaction_extremes piece[SWEEP_PIECES];
};

static void sweep_piece(void *user, size_t index)
{
	struct sweep_job *job = user;
	size_t each = job->total / SWEEP_PIECES, from = each * index;
	size_t to = index + 1 < SWEEP_PIECES ? from + each : job->total;
	reaction_start(&job->piece[index]);
	job->part(job->chain, job->limits, from, to, &job->piece[index]);
}

/* Seconds of the whole grid; merges into *out. */
static double time_sweep(struct sweep_job *job, const struct pieces *pieces,
                         struct reaction_extremes *out)
{
	double start = now_seconds();
	pieces_run(pieces, "sweep", SWEEP_PIECES, sweep_piece, job);
	for (int i = 0; i < SWEEP_PIECES; i++)
		reaction_merge(out, &job->piece[i]);
	return now_seconds() - start;
}

/* On one thread and on two, which must give the same bytes. */
static void compare_threads(const char *name, const char *target, struct sweep_job *job,
                            struct reaction_extremes *out)
{
	const struct pieces pool = {pool_run, NULL};
	struct reaction_extremes other = *out;
	double one = time_sweep(job, NULL, out), two = time_sweep(job, &pool, &other);
	printf("  %-28s %10.2f s on one thread, %.2f s on two%s\n", name, one, two, target);
	if (memcmp(out, &other, sizeof other) != 0)
		abort();
}

static void bench_sweep(const struct chain *chain)
{
	static struct sweep_job job;
	struct motion_limits limits = {.speed = {1.5, 1, 1.5, 3, 3, 4},
	                               .acceleration = {5, 5, 8, 20, 20, 30},
	                               .poses = 16};
	struct reaction_extremes extremes;
	for (int i = 0; i < 6; i++) {
		limits.low[i] = -pi;
		limits.high[i] = pi;
	}
	reaction_start(&extremes);
	job = (struct sweep_job){.chain = chain, .limits = &limits, .part = reaction_sweep,
	                         .total = reaction_sweep_count(chain, &limits)};
	printf("full sweep of it: %zu poses, all signs, five kinds\n", job.total);
	compare_threads("exact on the grid", ", target at most 10", &job, &extremes);
	double start = now_seconds();
	reaction_refine(chain, &limits, &extremes);
	printf("  %-28s %10.2f s\n", "refined by local search", now_seconds() - start);
	job.part = reaction_bound_sweep;
	job.total = reaction_bound_count(chain, &limits);
	compare_threads("guaranteed bound", "", &job, &extremes);
	reaction_bound_from_peaks(chain, &limits, &extremes);
	printf("  largest tilting %.1f N m, bound %.1f N m\n",
	       extremes.exact[REACTION_TILTING].value, extremes.bound[REACTION_TILTING]);
}

int main(void)
{
	static struct arm_of_bench arm;
	struct dice dice = dice_open(1, 1);
	chain_sample(&arm.chain);
	/* beside the last axis, so that every joint counts */
	arm.chain.payload_centre[0] = 0.1;
	chain_prepare(&arm.chain, &arm.prepared);
	for (int i = 0; i < INSTANTS; i++)
		instant_random(&arm.instant[i], &dice);
	bench_poses(&arm);
	bench_sweep(&arm.chain);
	return isnan(arm.sum);
}
