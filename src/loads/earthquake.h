/* The section earthquake of a cell as ways of loading it: the code's force on all that stands
 * there, in the combinations against which a rating at a share of ultimate (a service rating) or
 * the design strength of a code method is compared.
 *
 * Source: seismic.h for the force, rare_combination.h for the factors. ASCE 7: the rows of 2.4.5,
 * 0.7 of the strength-level force, with overstrength, as anchors in concrete ask. EN 1990 has no
 * row at service level: its strength-level row is compared with the service rating, on the safe
 * side. Code methods: the strength-level rows of the earthquake's own code, whichever the method
 * (ASCE 7 2.3.6 for ASCE 7, EN 1990 6.12b for EN 1998-1), each with the weights of its row. Own
 * additions, each on the safe side and in the words: a row with the arm's motion also with the
 * vertical force upward on reduced weights; the arm's motion whole where 0.75 of it is printed.
 * Masses: full masses of all parts with arm and payload for the force. Boxed parts at each corner
 * in plan and at the top of their boxes. The arm stretched for tilt and twist and upright for its
 * height, all at once.
 * Direction: horizontal in every heading, the tilt of the stretched arm with it; the arm's twist
 * both ways. Range: as seismic.h.
 * Identities: proportional to the masses; without vertical force nothing depends on its sign.
 * Units: N, N mm, mm; downward positive. */
#ifndef EARTHQUAKE_H
#define EARTHQUAKE_H

#include "../cell/arena.h"
#include "../cell/cell.h"
#include "../cell/load_case.h"
#include "../cell/trace.h"
#include "extra.h"
#include "rare_combination.h"
#include "standing.h"

/* One way in which an earthquake loads the cell. */
struct earthquake_way {
	const char *name;            /* "earthquake, ASCE 7-22 13.3.1" */
	const char *combination;     /* "0.6D - 0.7Ev + 0.7Eh, ASCE 7 2.4.5 (from memory)" */
	const char *clause;          /* of the combination: "ASCE 7 2.4.5" */
	const struct rare_combination *row;
	enum method method;          /* whose loads: service loads or those of a code method */
	enum weight_run run;         /* whose masses it goes with: RUN_LOW or RUN_FULL */
	int corner;                  /* of the boxes, for the weights as well; -1: no box */
	bool upward;                 /* the vertical force lifts */
	bool arm_moves;              /* in normal motion or an emergency stop; else it rests */
	double weight;               /* factor on all that stands there [-] */
	double moving;               /* factor on the arm's motion: 0 or 1 [-] */
	/* On top of the weights: the earthquake; and with service loads, where
	 * choices.stabilising_weight is above the row's factor, what the weights then count too
	 * much. */
	struct extra_action action;
};

/* Field paths of what the code asks for and the file does not give. None: the ways are complete. */
void earthquake_gaps(const struct cell *cell, found_gap *gap, void *user);
/* Why its numbers cannot be, with what to write; NULL when they can, or where a key is missing. The
 * ranges of the keys (cell/fields.c) leave nothing of it to a cell that was read. */
const char *earthquake_fault(const struct cell *cell);

/* All ways of one setup's cell without faults, for the loads of a method; none where a key is
 * missing, where no earthquake is stated, or with the word none. False: no memory. */
bool earthquake_ways(const struct cell *cell, enum method method, struct arena *arena,
                     const struct earthquake_way **out, size_t *count);

/* How the action comes about: masses, the code's force, H_E, T_E (twist), N_E, S_x_E, S_y_E and
 * S_turn_E. */
void earthquake_trace(const struct cell *cell, const struct earthquake_way *way,
                      struct trace *trace);

/* What the reader must know: how it was counted, or that it was not and why. `caution`: it belongs
 * among the cautions. */
typedef void earthquake_word(void *user, bool caution, const char *sentence);
void earthquake_words(const struct cell *cell, struct arena *arena, earthquake_word *word,
                      void *user);

#endif
