#include "pool.h"

void pool_open(struct pool *pool, unsigned threads, struct progress *progress)
{
	*pool = (struct pool){.progress = progress, .wanted = threads > 1 ? threads - 1 : 0};
	pthread_mutex_init(&pool->lock, NULL);
	pthread_cond_init(&pool->more, NULL);
	pthread_cond_init(&pool->done_all, NULL);
}

/* Does one piece; the lock is held before and after, but not meanwhile. */
static void do_piece(struct pool *pool)
{
	size_t index = pool->next++;
	standfast_piece *piece = pool->piece;
	void *job = pool->job;
	pthread_mutex_unlock(&pool->lock);
	piece(job, index);
	pthread_mutex_lock(&pool->lock);
	if (++pool->done == pool->count)
		pthread_cond_signal(&pool->done_all);
}

static void *work(void *user)
{
	struct pool *pool = user;
	pthread_mutex_lock(&pool->lock);
	while (!pool->stop) {
		if (pool->next < pool->count)
			do_piece(pool);
		else
			pthread_cond_wait(&pool->more, &pool->lock);
	}
	pthread_mutex_unlock(&pool->lock);
	return NULL;
}

/* Fewer threads than wanted do the same work. */
static void start(struct pool *pool)
{
	while (pool->started < pool->wanted &&
	       pthread_create(&pool->threads[pool->started], NULL, work, pool) == 0)
		pool->started++;
	pool->wanted = pool->started;
}

static void offer(struct pool *pool, const char *what, size_t count, standfast_piece *piece,
                  void *job)
{
	pool->what = what;
	pool->piece = piece;
	pool->job = job;
	pool->count = count;
	pool->next = pool->done = 0;
	pthread_cond_broadcast(&pool->more);
}

void pool_run(void *user, const char *what, size_t count, standfast_piece *piece, void *job)
{
	struct pool *pool = user;
	if (count > 1)
		start(pool);
	pthread_mutex_lock(&pool->lock);
	offer(pool, what, count, piece, job);
	while (pool->next < pool->count) {
		do_piece(pool);
		if (pool->progress)
			progress_show(pool->progress, what, pool->done, count);
	}
	while (pool->done < pool->count)
		pthread_cond_wait(&pool->done_all, &pool->lock);
	pthread_mutex_unlock(&pool->lock);
}

void pool_close(struct pool *pool)
{
	pthread_mutex_lock(&pool->lock);
	pool->stop = true;
	pthread_cond_broadcast(&pool->more);
	pthread_mutex_unlock(&pool->lock);
	for (size_t i = 0; i < pool->started; i++)
		pthread_join(pool->threads[i], NULL);
	pthread_cond_destroy(&pool->done_all);
	pthread_cond_destroy(&pool->more);
	pthread_mutex_destroy(&pool->lock);
}
