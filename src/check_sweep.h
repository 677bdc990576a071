/* Visiting states: every load case at every bed ratio through its headings, and finer around each
 * local maximum. Keeps the worst of everything that is watched, per setup, anchor and reading. */
#ifndef CHECK_SWEEP_H
#define CHECK_SWEEP_H

#include "base/shear_group.h"
#include "check.h"
#include "check_shear_bound.h"

enum { MAX_WATCHES = 2 + MAX_CHECKS, WATCH_TENSION = 0, WATCH_SHEAR = 1, FIRST_CHECK_WATCH = 2,
       WATCH_PRESSURE = MAX_WATCHES /* of the bed: one value a state, not one an anchor */ };

/* Where a row of a history is kept: its case is gone when the next row is read. */
struct row_case {
	struct load_case load_case;
	struct arm_load arm_load;
};
void row_case_keep(struct row_case *own, const struct load_case *load_case);

/* A watched value at its worst, with what gives the state back bit for bit. */
struct worst {
	bool known;
	double value;
	double certain;              /* largest of what is no estimate; 0: none */
	const struct load_case *load_case;
	struct row_case *own;        /* of a history's row; else unused */
	double heading, bed_ratio, settle[3];
};

/* The largest overturning of all cases of one reading. */
struct tipping {
	double ratio, heading;
	double certain;              /* largest of what is no estimate */
	const struct load_case *load_case;
	bool unsolved;       /* some equilibrium exists that doubles cannot hold */
};

/* Everything of one setup that does not change while its states are visited. */
struct setup_run {
	const struct cell *cell;
	struct setting setting;
	struct base *base;                       /* NULL: cannot be prepared */
	double bed_ratio[MAX_BED_RATIOS];
	size_t bed_ratio_count;
	struct run_facts facts;
	struct tipping tipping[MAX_READINGS];
	double (*cycle_extreme)[2];      /* of all sources [lane][anchor], check_cycles.h */
};

/* Shear that does not depend on the state: the largest over all headings of a group of load cases.
 */
struct shear_bound {
	bool ready, carried;
	uint16_t refined; /* readings (bits) in which a sweep has found its peaks */
	double size[MAX_ANCHORS], heading[MAX_ANCHORS];
	const struct load_case *from[MAX_ANCHORS];   /* case of the group that gives it */
	struct shear_peak edge, pryout;      /* of a code's loads: the largest over all headings */
};

struct run {
	struct arena *arena;
	const struct cell *cell;
	const struct check_options *options;
	const struct arm_loads *arms[MAX_SETUPS];  /* what each setup's own motion gives, or NULL */
	struct loads loads;
	struct setup_run *setups;
	size_t setup_count, anchor_count;
	const struct check *watched[MAX_WATCHES];  /* NULL for tension and shear */
	size_t watch_count;
	struct worst *worsts;                    /* [watch][setup][anchor][reading] */
	struct shear_bound *bounds;                /* [group] */
	double *group_tension; /* [group][anchor][reading]: refined maximum [N] */
	double (*spread)[MAX_BED_RATIOS];          /* [anchor][ratio] [N] */
	double *values; /* scratch of one sweep: [heading][watch][anchor] */
	double (*settles)[3];                      /* scratch of one sweep: [heading] */
	double *pressures;                         /* scratch of one sweep: [heading] [MPa] */
	size_t states;
};

struct worst *run_worst(const struct run *run, size_t watch, size_t setup, size_t anchor,
                        unsigned reading);

/* One place of a sweep: what is being solved, and its scratch state. */
struct visit {
	struct run *run;
	struct setup_run *setup;
	size_t setup_index, ratio_index;
	const struct load_case *load_case;
	struct state state;
	double pressure;                /* largest of the bed at this heading [MPa] */
	struct anchor_load anchor_load; /* of a code's loads: what is on the anchors, and */
	struct code_ratios ratios;      /* what each way of failing makes of it */
	struct base_warm *warm;         /* rows of a history alone; else NULL */
};
/* Ready for the first of its bed ratios. The group's shear bound must stand. */
void visit_open(struct visit *v, struct run *run, const struct load_case *load_case);
/* Solves at a heading (settle is the start and the result) and keeps whatever is the worst so far.
 * False: no equilibrium, a fact for base.stability. `values`, if not NULL, takes every watched
 * value of every anchor. */
bool visit_heading(struct visit *v, double heading, double settle[3], double *values);
/* Its two halves, for states whose load and shear the caller sets (check_history.c): equilibrium
 * with tensions and pressure of v->state.load; and keeping what is the worst so far, of these
 * anchors (bits) alone: the others must be known to be no worse. */
bool visit_solve(struct visit *v, double settle[3]);
void visit_keep(struct visit *v, uint64_t anchors, double *values);
/* Overturning in every heading, in closed form; also the least vertical force. `kept`: where a
 * row's case stays as long as the run, the same for all rows of a piece; NULL where the case itself
 * stays. */
void visit_weigh(struct run *run, const struct load_case *load_case, struct row_case *kept);
/* Raises the shear bound of the case's group by it. */
void visit_bound_shear(struct run *run, const struct load_case *load_case);

/* Visits everything; an equilibrium that cannot be found is a fact for base.stability. NO_MEMORY.
 */
enum status run_sweep(struct run *run);

/* The state of a record, complete and bit-equal to the one that was visited. */
void run_state(const struct run *run, const struct setup_run *setup, const struct worst *worst,
               struct state *out);

#endif
