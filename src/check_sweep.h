/* Visiting states: every load case at every bed ratio through its headings, and finer around each
 * local maximum. Keeps the worst of everything that is watched, per setup, anchor and reading. */
#ifndef CHECK_SWEEP_H
#define CHECK_SWEEP_H

#include "base/shear_group.h"
#include "check.h"

enum { MAX_WATCHES = 2 + MAX_CHECKS, WATCH_TENSION = 0, WATCH_SHEAR = 1, FIRST_CHECK_WATCH = 2,
       WATCH_PRESSURE = MAX_WATCHES /* of the bed: one value a state, not one an anchor */ };

/* A watched value at its worst, with what gives the state back bit for bit. */
struct worst {
	bool known;
	double value;
	const struct load_case *load_case;
	double heading, bed_ratio, settle[3];
};

/* The largest overturning of all cases of one reading. */
struct tipping {
	double ratio, heading;
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
};

/* Shear that does not depend on the state: the largest over all headings of a group of load cases.
 */
struct shear_bound {
	bool ready, carried;
	uint16_t refined; /* readings (bits) in which a sweep has found its peaks */
	double size[MAX_ANCHORS], heading[MAX_ANCHORS];
};

struct run {
	struct arena *arena;
	const struct cell *cell;
	const struct check_options *options;
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

/* Visits everything; an equilibrium that cannot be found is a fact for base.stability. NO_MEMORY.
 */
enum status run_sweep(struct run *run);

/* The state of a record, complete and bit-equal to the one that was visited. */
void run_state(const struct run *run, const struct setup_run *setup, const struct worst *worst,
               struct state *out);

#endif
