/* Clock, medians and a pool of threads for the benchmarks. */
#ifndef TIMING_H
#define TIMING_H

#include "../../src/cell/pieces.h"
#include <pthread.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <time.h>

enum { POOL_THREADS = 2 };

static inline double now_seconds(void)
{
	struct timespec time;
	clock_gettime(CLOCK_MONOTONIC, &time);
	return (double)time.tv_sec + (double)time.tv_nsec * 1e-9;
}

/* Of this process, all threads: what other programs take is not in it. */
static inline double processor_seconds(void)
{
	struct timespec time;
	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
	return (double)time.tv_sec + (double)time.tv_nsec * 1e-9;
}

static inline int rising_doubles(const void *left, const void *right)
{
	double a = *(const double *)left, b = *(const double *)right;
	return (a > b) - (a < b);
}

/* Sorts the values. */
static inline double median_of(double values[], size_t count)
{
	qsort(values, count, sizeof *values, rising_doubles);
	return values[count / 2];
}

/* --- pieces of work on two threads, each takes the next that nobody has --- */

struct pool_work {
	atomic_size_t next;
	size_t count;
	piece_of_work *piece;
	void *job;
};

static inline void *pool_thread(void *user)
{
	struct pool_work *work = user;
	for (size_t i; (i = atomic_fetch_add(&work->next, 1)) < work->count;)
		work->piece(work->job, i);
	return NULL;
}

/* As the member `run` of struct pieces; needs no user. */
static inline void pool_run(void *user, const char *what, size_t count, piece_of_work *piece,
                            void *job)
{
	struct pool_work work = {.count = count, .piece = piece, .job = job};
	pthread_t thread[POOL_THREADS];
	(void)user;
	(void)what;
	for (int i = 0; i < POOL_THREADS; i++)
		if (pthread_create(&thread[i], NULL, pool_thread, &work) != 0)
			abort();
	for (int i = 0; i < POOL_THREADS; i++)
		pthread_join(thread[i], NULL);
}

#endif
