/* A long computation cut in pieces, which the caller may run in threads and report on. */
#ifndef PIECES_H
#define PIECES_H

#include <stddef.h>

typedef void piece_of_work(void *job, size_t index);

/* Runs piece(job, i) for every i below count, each once, in any order and on any thread, and
 * returns when all are done. `what` names the work for a line of progress. NULL: one after the
 * other. Results never depend on it: pieces write apart and are merged in order. */
struct pieces {
	void (*run)(void *user, const char *what, size_t count, piece_of_work *piece, void *job);
	void *user;
};

static inline void pieces_run(const struct pieces *pieces, const char *what, size_t count,
                              piece_of_work *piece, void *job)
{
	if (pieces && pieces->run) {
		pieces->run(pieces->user, what, count, piece, job);
		return;
	}
	for (size_t i = 0; i < count; i++)
		piece(job, i);
}

#endif
