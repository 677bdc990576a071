/* standfast: anchors of a robot cell on a concrete floor, as a library.
 *
 * One run: open, read a cell file, compute, ask or write pages, close.
 *
 *	struct standfast *run = standfast_open(NULL, NULL);
 *	if (run && standfast_read(run, bytes, length, "cell.yaml", NULL) == STANDFAST_DONE &&
 *	    standfast_compute(run, 0, NULL) == STANDFAST_DONE)
 *		standfast_page(run, STANDFAST_TEXT, 0, write, user);
 *	standfast_close(run);
 *
 * Memory comes from the caller's function alone; nothing is kept between runs, there are no
 * globals, no files, no clock, no locale: the same bytes in give the same bytes out. Runs are
 * independent of each other, so each thread may have its own; one run belongs to one thread at a
 * time.
 *
 * A verdict is not an error: a cell that fails is STANDFAST_DONE with the verdict STANDFAST_FAILS.
 * Errors mean that nothing was computed.
 *
 * A verdict of this library does not replace a licensed engineer, who must review and sign; local
 * codes govern.
 *
 * Units: N for forces, mm for lengths. Cell axes x and y lie on the floor, z up. Tension is
 * positive. */
#ifndef STANDFAST_H
#define STANDFAST_H

#include <stdbool.h>
#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

#if defined(__GNUC__)
#define STANDFAST_API __attribute__((visibility("default")))
#else
#define STANDFAST_API
#endif

enum standfast_status {
	STANDFAST_DONE,
	STANDFAST_BAD_INPUT, /* the file, see the diagnostics; or a call out of order */
	STANDFAST_NO_MEMORY,
	STANDFAST_NO_CONVERGENCE, /* an equilibrium could not be found to the accuracy asked for */
	STANDFAST_BROKEN_OUTPUT   /* the caller's write function refused bytes */
};

/* Rising: the verdict of a file is the largest of its checks. */
enum standfast_verdict { STANDFAST_HOLDS, STANDFAST_UNPROVEN, STANDFAST_FAILS };

/* As realloc: `old` NULL allocates, `size` 0 frees and returns NULL. Returns NULL when there is no
 * memory. */
typedef void *standfast_allocate(void *user, void *old, size_t size);
/* Takes `length` bytes; false when it cannot, and then no more are offered. */
typedef bool standfast_write(void *user, const void *bytes, size_t length);

struct standfast;               /* one run; hidden */

/* The release, as "0.1.0". */
STANDFAST_API const char *standfast_version(void);

/* --- a run --- */

/* `allocate` NULL: the C library's memory. NULL when there is none. */
STANDFAST_API struct standfast *standfast_open(standfast_allocate *allocate, void *user);
/* Gives back everything; NULL is allowed. */
STANDFAST_API void standfast_close(struct standfast *run);

/* Reads a cell file from bytes (YAML in UTF-8, at most 1 MiB), once a run. The bytes are copied.
 * `file` is the name for messages, `sha256` 64 hexadecimal digits that are printed for the record;
 * both may be NULL. */
STANDFAST_API enum standfast_status standfast_read(struct standfast *run, const void *bytes,
                                                   size_t length, const char *file,
                                                   const char *sha256);
/* Instead of standfast_read, for a file that could not be opened: the reason becomes a diagnostic,
 * so that pages speak of it like of any other fault. Returns STANDFAST_BAD_INPUT. */
STANDFAST_API enum standfast_status standfast_unreadable(struct standfast *run, const char *file,
                                                         const char *reason);

/* --- files that the cell file names (arm.history); after standfast_read --- */

/* How many different ones, over the file and all its setups. */
STANDFAST_API size_t standfast_file_count(const struct standfast *run);
/* As the file writes it, to be looked for beside the cell file; NULL behind the last. */
STANDFAST_API const char *standfast_file_name(const struct standfast *run, size_t index);
/* The bytes of one of them (CSV in UTF-8), looked over at once: what is wrong with them, or
 * doubtful, becomes diagnostics. They are NOT copied and must stay until standfast_close. `sha256`
 * as above. Every file must be given before standfast_compute, each once. */
STANDFAST_API enum standfast_status standfast_give_file(struct standfast *run, size_t index,
                                                        const void *bytes, size_t length,
                                                        const char *sha256);
/* Instead, for one that could not be opened. Returns STANDFAST_BAD_INPUT. */
STANDFAST_API enum standfast_status standfast_file_unreadable(struct standfast *run, size_t index,
                                                              const char *reason);

/* --- long work cut in pieces --- */

typedef void standfast_piece(void *job, size_t index);
/* Runs piece(job, i) for every i below count, each once, in any order and on any thread, and
 * returns when all are done. `what` names the work for a line of progress. A piece never asks for
 * memory and never cuts work up again. */
typedef void standfast_pool(void *user, const char *what, size_t count, standfast_piece *piece,
                            void *job);
/* How standfast_compute runs them; NULL, or never called: one after the other. The results are the
 * same bytes in every way. */
STANDFAST_API void standfast_pieces(struct standfast *run, standfast_pool *pool, void *user);

enum standfast_flags {
	STANDFAST_TRACE = 1,        /* compute: write down the steps; page: print them */
	STANDFAST_REQUIRED = 2,     /* compute: the least ratings of a substitute, too */
	STANDFAST_COLOUR = 4,       /* page: terminal sequences around verdicts and titles */
	STANDFAST_REACTIONS = 8     /* compute: the arm's reactions alone; nothing is judged, and
	                             * there are no pages but those of the reactions */
};

/* Computes loads, checks and verdict of the file that was read. `only` is the id of the one check
 * whose steps and row are wanted, or NULL; the verdict is that of all checks all the same. */
STANDFAST_API enum standfast_status standfast_compute(struct standfast *run, unsigned flags,
                                                      const char *only);

/* --- what came out; all of it after standfast_compute --- */

/* STANDFAST_UNPROVEN before anything was computed. */
STANDFAST_API enum standfast_verdict standfast_verdict(const struct standfast *run);

struct standfast_anchor {
	const char *id;             /* "A1" */
	double x, y;                /* cell axes [mm] */
	bool computed;              /* false: no loads were computed */
	double tension, shear;      /* largest service load over all cases, >= 0 [N] */
};
STANDFAST_API size_t standfast_anchor_count(const struct standfast *run);
/* False when there is no such anchor; index from 0. Texts live until standfast_close. */
STANDFAST_API bool standfast_anchor(const struct standfast *run, size_t index,
                                    struct standfast_anchor *out);

struct standfast_finding {
	const char *id, *title;     /* "rating.tension" */
	enum standfast_verdict verdict;
	bool computed;              /* false: ratio is no number */
	double ratio;               /* demand over capacity */
	const char *reason;         /* one sentence, or "" */
};
STANDFAST_API size_t standfast_finding_count(const struct standfast *run);
STANDFAST_API bool standfast_finding(const struct standfast *run, size_t index,
                                     struct standfast_finding *out);
/* Index of the finding that governs the verdict. */
STANDFAST_API size_t standfast_governing(const struct standfast *run);

struct standfast_required {
	double tension, shear;      /* least ultimate loads, the other unlimited [N] */
	bool at_least;              /* something is not known: they may have to be larger */
};
/* False unless STANDFAST_REQUIRED was asked for and the values could be computed. */
STANDFAST_API bool standfast_required(const struct standfast *run, struct standfast_required *out);

/* Whether the arm's reactions were computed, and no case of its chain, swing or history was left
 * out for want of a number. */
STANDFAST_API bool standfast_arm_whole(const struct standfast *run);

struct standfast_diagnostic {
	bool is_error;              /* else a warning or a note */
	unsigned line, column;      /* from 1, in characters; 0: nowhere in the file */
	const char *code;           /* "E09" */
	const char *path, *message, *hint;
	const char *file; /* in which the line is: as standfast_read has it, or a CSV beside it */
};
STANDFAST_API size_t standfast_diagnostic_count(const struct standfast *run);
STANDFAST_API bool standfast_diagnostic(const struct standfast *run, size_t index,
                                        struct standfast_diagnostic *out);

/* --- pages --- */

enum standfast_page {
	STANDFAST_TEXT, /* verdict, anchors, checks, what to measure; UTF-8, 100 columns */
	STANDFAST_JSON, /* one object on one line; before a result there is one: the diagnostics */
	STANDFAST_RATINGS,    /* the least ratings of a substitute */
	STANDFAST_UNDERSTOOD, /* what was read, key by key, load cases and a plan */
	STANDFAST_DIAGNOSTICS, /* with the lines of the file that they point to */
	STANDFAST_ARM,        /* the arm's reactions, and a block of them for a cell file */
	STANDFAST_ARM_JSON,   /* one object on one line, as STANDFAST_JSON */
	STANDFAST_ARM_CSV     /* one row a setup, source and kind */
};
/* STANDFAST_BAD_INPUT when there is nothing computed that such a page could show. */
STANDFAST_API enum standfast_status standfast_page(const struct standfast *run,
                                                   enum standfast_page page, unsigned flags,
                                                   standfast_write *write, void *user);

/* What a key, a check's id or a code means; NULL or "" lists all. *found is false when there is no
 * such word, and the page then names the nearest ones. */
STANDFAST_API enum standfast_status standfast_explain(const char *word, unsigned flags,
                                                      standfast_write *write, void *user,
                                                      bool *found);
/* A cell file to fill in; purpose is "need", "loads", "motion", "strength" or "survey". Another
 * word: STANDFAST_BAD_INPUT. */
STANDFAST_API enum standfast_status standfast_blank(const char *purpose, standfast_write *write,
                                                    void *user);
/* The id of check number `index`, from 0; NULL behind the last. */
STANDFAST_API const char *standfast_check_id(size_t index);

#ifdef __cplusplus
}
#endif

#endif
