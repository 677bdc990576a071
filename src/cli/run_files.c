#include "run_files.h"

#include "one_file.h"
#include <pthread.h>
#include <stdlib.h>

/* Jobs are taken in order; the main thread prints them in order as they become ready. */
struct shop {
	const struct command_line *line;
	struct file_job *jobs;
	size_t count;
	size_t next;                /* not yet taken */
	bool stop;                  /* output is broken: take no more */
	pthread_mutex_t lock;
	pthread_cond_t ready;
};

static int rank(int status)
{
	switch (status) {
	case EXIT_NOT_COMPUTED: return 3;
	case EXIT_FAILS: return 2;
	case EXIT_UNPROVEN: return 1;
	default: return 0;
	}
}

static struct file_job *take_job(struct shop *shop)
{
	struct file_job *job = NULL;
	pthread_mutex_lock(&shop->lock);
	if (!shop->stop && shop->next < shop->count)
		job = &shop->jobs[shop->next++];
	pthread_mutex_unlock(&shop->lock);
	return job;
}

static void *work(void *user)
{
	struct shop *shop = user;
	struct file_job *job;
	while ((job = take_job(shop))) {
		file_job_run(shop->line, job);
		pthread_mutex_lock(&shop->lock);
		job->done = true;
		pthread_cond_signal(&shop->ready);
		pthread_mutex_unlock(&shop->lock);
	}
	return NULL;
}

static void wait_for(struct shop *shop, struct file_job *job)
{
	pthread_mutex_lock(&shop->lock);
	while (!job->done)
		pthread_cond_wait(&shop->ready, &shop->lock);
	pthread_mutex_unlock(&shop->lock);
}

static void stop_work(struct shop *shop)
{
	pthread_mutex_lock(&shop->lock);
	shop->stop = true;
	pthread_mutex_unlock(&shop->lock);
}

/* Prints one job and gives its memory back; false when standard output is broken. */
static bool print_job(struct file_job *job)
{
	stream_print(stderr, &job->err);
	bool printed = stream_print(stdout, &job->out);
	if (job->no_memory)
		complain("%s: out of memory", job->path);
	buffer_free(&job->err);
	buffer_free(&job->out);
	return printed;
}

/* Without a thread at work the job is done here. */
static int print_all(struct shop *shop, size_t threads)
{
	int worst = EXIT_HOLDS;
	for (size_t i = 0; i < shop->count; i++) {
		struct file_job *job = &shop->jobs[i];
		if (threads > 0)
			wait_for(shop, job);
		else
			file_job_run(shop->line, job);
		if (!print_job(job)) {
			stop_work(shop);
			return EXIT_NOT_COMPUTED;
		}
		if (rank(job->status) > rank(worst))
			worst = job->status;
	}
	return worst;
}

static size_t wanted_threads(const struct command_line *line)
{
	size_t jobs = command_line_jobs(line);
	if (jobs > line->operand_count)
		jobs = line->operand_count;
	return jobs > 1 ? jobs : 0;
}

static int run_shop(struct shop *shop)
{
	pthread_t threads[MAX_JOBS];
	size_t wanted = wanted_threads(shop->line), started = 0;
	/* fewer threads than wanted do the same work */
	while (started < wanted && pthread_create(&threads[started], NULL, work, shop) == 0)
		started++;
	int status = print_all(shop, started);
	for (size_t i = 0; i < started; i++)
		pthread_join(threads[i], NULL);
	return status;
}

int run_files(const struct command_line *line)
{
	struct shop shop = {.line = line,
	                    .count = line->operand_count,
	                    .lock = PTHREAD_MUTEX_INITIALIZER,
	                    .ready = PTHREAD_COND_INITIALIZER};
	shop.jobs = calloc(shop.count, sizeof *shop.jobs);
	if (!shop.jobs) {
		complain("out of memory");
		return EXIT_NOT_COMPUTED;
	}
	for (size_t i = 0; i < shop.count; i++)
		shop.jobs[i].path = line->operands[i];
	int status = run_shop(&shop);
	/* jobs that were worked on but never printed */
	for (size_t i = 0; i < shop.count; i++) {
		buffer_free(&shop.jobs[i].out);
		buffer_free(&shop.jobs[i].err);
	}
	free(shop.jobs);
	return status;
}
