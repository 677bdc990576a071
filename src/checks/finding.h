/* What a check finds for one subject: numbers, what is missing, what is doubted; and the one place
 * where a verdict is made of them. */
#ifndef FINDING_H
#define FINDING_H

#include "../cell/given.h"

enum { MAX_MISSING = 48, MAX_NOTES = 6 };

/* bit i = anchor i; edge: its number from 1 in the order of the slab's outline, joints behind; 0:
 * none */
struct subject {
	uint64_t anchors;
	unsigned edge;
};

struct finding {
	bool computed;                       /* demand, capacity and ratio are numbers */
	double demand, capacity, ratio;      /* [base unit of dimension], [-] */
	enum dimension dimension;
	uint64_t anchors; /* OF_STATE: whom it is about, as in struct subject */
	unsigned edge; /* the edge or joint that it is about, as in struct subject */
	enum verdict verdict;                /* set by finding_settle alone */
	bool failed;                         /* fails whatever the ratio: damaged concrete */
	bool never_fails; /* the ratio is no lower bound: an input is open both ways or unevidenced
	                   */
	bool background;  /* says nothing that other unproven checks do not say better */
	bool doubted;                        /* cannot hold although nothing is missing */
	const char *missing[MAX_MISSING];    /* field paths, unknown or badly evidenced */
	size_t missing_count;
	const char *reason; /* set by finding_settle: why this verdict, one sentence, or "" */
	const char *remedy;                  /* set by finding_settle: what to do now, or "" */
	/* what was said on the way; finding_settle chooses the one that fits the verdict */
	const char *said_numbers, *said_numbers_remedy, *said_failure, *said_failure_remedy,
		*said_doubt, *said_doubt_remedy;
	const char *notes[MAX_NOTES];        /* said beside the result whatever the verdict */
	size_t note_count;
};

void finding_lacks(struct finding *finding, const char *path);          /* adds once */
/* Cannot hold for this reason; remedy may be NULL. The first reason is kept. */
void finding_doubts(struct finding *finding, const char *reason, const char *remedy);
void finding_fails(struct finding *finding, const char *reason, const char *remedy);
void finding_notes(struct finding *finding, const char *note);
/* `said` and `remedy` are the sentence for these numbers and what to do when the ratio is above 1.
 */
void finding_numbers(struct finding *finding, double demand, double capacity,
                     enum dimension dimension, const char *said, const char *remedy);
/* Fails: `failed`, or ratio > 1 with every unknown at its most favourable value. Else unproven if
 * anything is missing, doubted or not computed where numbers are due; else holds. */
void finding_settle(struct finding *finding);

#endif
