/* Threads that share out the pieces of one file's work. They are started by the first work that has
 * more than one piece, so that a short run starts none. */
#ifndef POOL_H
#define POOL_H

#include "../standfast.h"
#include "options.h"
#include "progress.h"
#include <pthread.h>

struct pool {
	struct progress *progress;   /* NULL: nobody looks on */
	size_t wanted, started;      /* threads beside the caller's own */
	pthread_t threads[MAX_JOBS];
	pthread_mutex_t lock;        /* guards all below */
	pthread_cond_t more, done_all;
	const char *what;
	standfast_piece *piece;
	void *job;
	size_t count, next, done;
	bool stop;
};

/* `threads`: in all, the caller's included. It must not be moved while open. */
void pool_open(struct pool *pool, unsigned threads, struct progress *progress);
/* A standfast_pool: user is a struct pool. Returns when every piece is done. */
void pool_run(void *user, const char *what, size_t count, standfast_piece *piece, void *job);
/* Ends the threads. */
void pool_close(struct pool *pool);

#endif
