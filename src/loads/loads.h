/* Cell to load cases (service loads, for ratings): every setup, data-sheet case, weight run,
 * vertical extreme, corner of boxed parts and further load.
 *
 * Source: combinations ASCE 7 allowable-stress form 0.6D + L and D + L (0.6D + L is a deliberate
 * addition: no printed combination lets a machine's own motion relieve its weight), factors in
 * README. Reading of unknown weight flags: bit r of load_case.reading says that the case belongs to
 * reading r; reading bit 0 set: the vertical force is read as without weight; bit 1: the tilting
 * moment is. Known flags put a case into all readings. A check is judged in the most favourable
 * reading. */
#ifndef LOADS_H
#define LOADS_H

#include "../arm/arm_loads.h"
#include "../cell/load_case.h"
#include "../cell/trace.h"

enum { MAX_READINGS = 4, MAX_GAPS = 32 };

/* What is not known of the loads, and what that does to a result. */
enum gap_kind {
	GAP_FAVOURABLE,   /* left out, which is the most favourable: a ratio above 1 still fails */
	GAP_OPEN,         /* left out, but no bound either way: never fails, never holds */
	GAP_BLOCKING      /* nothing can be computed */
};
struct gap { const char *path; enum gap_kind kind; };

struct loads {
	bool given;                        /* any load model at all is in the file */
	struct load_case *list;
	size_t count;
	size_t group_count;
	size_t first_history; /* groups from here on belong to the histories, in order of setups */
	unsigned readings; /* mask of the readings in use; 1 when nothing is ambiguous */
	struct gap gaps[MAX_GAPS];
	size_t gap_count;
};

/* Setup s of the file: the file itself where there is none. */
size_t setup_count(const struct cell *cell);
const struct cell *setup_cell(const struct cell *cell, size_t s);
const char *setup_name(const struct cell *cell, size_t s);      /* "" where there is none */

/* `arms`: of each setup what its own motion gives, NULL entries where there is none; NULL: none.
 * They must outlive the cases. */
enum status loads_build(const struct cell *cell, const struct arm_loads *const arms[],
                        struct arena *arena, struct loads *out);
/* "weights x 0.6, least vertical force": how a case of this run is combined; NULL: no memory. */
const char *loads_combination(struct arena *arena, const struct cell *cell,
                              const struct load_case *load_case);
bool loads_blocked(const struct loads *loads);                  /* any GAP_BLOCKING */
bool loads_bounding(const struct loads *loads); /* no gap worse than GAP_FAVOURABLE */

/* N, Sx, Sy of a case at a heading. */
void load_at(const struct load_case *load_case, double heading, double load[3]);

/* Writes how the case's numbers come about; the same code computed them, bit for bit. `cell` is the
 * setup's. */
/* For shear the horizontal part is all that counts. */
void loads_trace_horizontal(const struct cell *cell, const struct load_case *load_case,
                            struct trace *trace);
void loads_trace(const struct cell *cell, const struct load_case *load_case, double heading,
                 struct trace *trace);

#endif
