/* The largest reactions of a history, each with its companions: the whole wrench at that instant.
 *
 * Wrench of the arm ON the mounting face, z away from it: tilting |(Mx, My)|, horizontal force
 * |(Fx, Fy)|, uplift Fz (negative where the arm never lifts: then its least press), downforce -Fz
 * (negative where it never presses), twisting |Mz|. [N], [N m]
 * Source: plain maxima. Range: components below 1e150, so that no square overflows.
 * Identities: turning about z changes no value; a history cut in pieces and merged, in any order,
 * gives the same bytes (of equal values the earlier row is kept). */
#ifndef ENVELOPE_H
#define ENVELOPE_H

#include "history.h"
#include "reaction_sweep.h"

struct envelope_entry {
	double value;                  /* of the kind */
	struct history_row at;         /* the row at which it occurs, all of it */
};

struct envelope {
	uint64_t rows;                 /* 0: the entries hold nothing */
	struct envelope_entry largest[REACTION_KINDS];
};

/* Zero-initialise before the first. Rows carry their own number. */
void envelope_add(struct envelope *envelope, const struct history_row *row);
void envelope_merge(struct envelope *into, const struct envelope *piece);

#endif
