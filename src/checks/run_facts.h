/* What a judge sees of the whole run of one setup. */
#ifndef RUN_FACTS_H
#define RUN_FACTS_H

#include "../cell/cell.h"
#include "../cell/load_case.h"

/* Cycles of one anchor's tension in one round of a source, at full weights: the worst of every bed
 * ratio and corner of boxed parts. */
struct anchor_cycles {
	double range, mean;      /* the largest one [N] */
	double bed_ratio;        /* where [mm2] */
	int corner;              /* of the boxed parts there, as in struct load_case */
	uint64_t count;          /* a round, without those of noise */
	uint64_t above;          /* of them, range above arm.range_limit */
	uint64_t noise;          /* range below 1 % of the largest: counted apart */
};

/* What repeats itself: a history, or a working cycle of poses. */
struct cycle_source {
	const char *name;
	const char *path;               /* of the key that says how often a year */
	const struct number *a_year;    /* rounds a year */
	bool counted;                   /* false: no numbers */
	const char *why_not;            /* then: "an instant has no equilibrium ..." */
	struct anchor_cycles anchor[MAX_ANCHORS];
};
struct cycle_sources { struct cycle_source *list; size_t count; };

struct run_facts {
	bool any_state;                     /* at least one state was solved */
	double least_down;   /* least vertical force of any service case of the setup [N] */
	double pressure_max; /* largest bed pressure of any state of the setup [MPa] */
	/* largest over all cases of the setup in the reading of unknown weight flags that favours
	 * it, base_overturning [-] */
	double overturning;
	double overturning_heading;
	double overturning_certain; /* the same of what is no estimate of the arm [-] */
	const struct load_case *overturning_case;
	bool unsolved; /* some equilibrium exists that doubles cannot hold: see base.stability */
	bool bound_uncarried; /* some guaranteed bound of the arm's motion has no equilibrium */
	bool torsion_on_one;                /* a single anchor would have to resist twisting */
	double tension_max[MAX_ANCHORS];    /* over all service cases [N] */
	struct cycle_sources cycles;
	/* highest and lowest tension over all sources of cycles, where they lie farthest apart: the
	 * sources follow one another [N] */
	double cycle_highest[MAX_ANCHORS], cycle_lowest[MAX_ANCHORS];
};

#endif
