/* Cell to load cases: every setup, data-sheet case, weight run, vertical extreme, corner of boxed
 * parts and further load; service loads for ratings first, then the factored loads of each code
 * method that the file asks for, from the same sources.
 *
 * Source: service loads ASCE 7 allowable-stress form 0.6D + L and D + L (0.6D + L is a deliberate
 * addition: no printed combination lets a machine's own motion relieve its weight), factors in
 * README. Factored loads: factors.h; no stability run of their own. ACI 318 has the arm at rest as
 * a case beside its motions, for 1.4D. Lasting loads (load_case.sustained): all that always acts
 * and nothing that moves, once a method, where lasting_loads_due. Further loads (loads[]) are not
 * in them. Reading of unknown weight flags: bit r of load_case.reading says that the case belongs
 * to reading r; reading bit 0 set: the vertical force is read as without weight; bit 1: the tilting
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
	/* Groups from here on belong to the histories: history by history in the order of setups
	 * and of arm_loads.list, and within each service loads, then ACI 318, then EN 1992-4, as
	 * far as the file asks for them (loads_history_group). */
	size_t first_history;
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
/* Methods whose loads are cases: service loads always, with each code that the file asks for. */
size_t loads_method_count(const struct cell *cell);
/* Group of the nth history (counted over all setups, from 0) with the loads of a method, which must
 * be METHOD_RATING or a chosen code. */
size_t loads_history_group(const struct loads *loads, const struct cell *cell, size_t history,
                           enum method method);
/* Whether lasting loads are cases of their own: with a code method, for an anchor that is bonded or
 * of which it is not known. `cell` of a setup. */
bool lasting_loads_due(const struct cell *cell);

/* "weights x 0.6, least vertical force", "1.2D + 1.6L (ACI 318-19 5.3.1)": how a case of this run
 * is combined; NULL: no memory. */
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
