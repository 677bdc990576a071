/* What a run found: the one list from which every page is made. Also the umbrella through which
 * pages see the cell, the field table and the checks. */
#ifndef RESULT_H
#define RESULT_H

#include "arm/arm_loads.h"
#include "cell/cell.h"
#include "cell/diagnostic.h"
#include "cell/fields.h"
#include "cell/load_case.h"
#include "cell/trace.h"
#include "checks/check_table.h"
#include "loads/loads.h"

enum { MAX_PAIRS = 5, MAX_SENTENCES = 96 };

/* Where a number occurs. load_case NULL: it belongs to no load. */
struct occurrence {
	const struct load_case *load_case;
	uint16_t setup;
	bool has_heading;
	double heading;                     /* cell axes [rad] */
	double bed_ratio;                   /* [mm2] */
	double settle[3];                   /* gives the state back bit for bit */
};

struct anchor_result {
	char id[12];                         /* "A1" */
	double at[2];                       /* cell axes [mm] */
	bool computed;
	double tension, shear;              /* largest over all service cases [N] */
	struct occurrence tension_at, shear_at;
};

struct check_result {
	const struct check *check;
	struct subject subject;             /* the governing one */
	struct finding finding;
	struct occurrence at;
	bool has_setup_ratio[MAX_SETUPS];
	double setup_ratio[MAX_SETUPS];     /* governing ratio of each setup */
	struct trace trace;                 /* empty unless asked for */
};

struct left_out { const char *id, *why; };
struct to_measure { const char *what, *why, *how; };   /* why: the checks that wait for it */

struct required_pair { double tension, shear; };       /* ultimate [N] */
struct required {
	bool computed;
	bool at_least;                      /* the load side or a factor is unproven */
	double tension, shear;              /* least ultimate, the other unlimited [N] */
	struct required_pair pair[MAX_PAIRS];
	size_t pair_count;
	const char *notes[6];
	size_t note_count;
};

/* Largest tension of an anchor in one group of cases, with the shear that goes with it [N]. */
struct demand {
	uint16_t setup;
	unsigned reading;
	size_t anchor;
	double tension, shear;
	bool bound;              /* a guaranteed bound of the arm's motion */
};

/* A short text list; entries live in the arena or are literals. */
struct sentences { const char *list[MAX_SENTENCES]; size_t count; };

/* The cell on one support before it is anchored, at its worst over all setups. */
struct free_support {
	bool computed;
	bool stands;                        /* without any push, the arm in its worst pose */
	double tilt;                        /* of the floor at which it tips; 0: falls [rad] */
	bool withstands_ten_degrees;
	double toward;                      /* heading in which it tips, cell axes [rad] */
	uint16_t setup;                     /* in which it tips so */
	double push;                        /* horizontal, that tips it [N] */
	double push_height;                 /* of that push above the floor [mm] */
	bool push_height_assumed;           /* cell.top is not known */
	uint16_t push_setup;
	struct trace tilt_trace, push_trace;        /* empty unless asked for */
};
enum { MAX_FREE_GAPS = 12 };
/* check_unanchored.h; information, no check: it has no part in the verdict. */
struct unanchored {
	bool told;                          /* a load model is in the file */
	bool at_most;                       /* a reach is not known: it may tip sooner */
	const char *missing[MAX_FREE_GAPS]; /* field paths */
	size_t missing_count;
	struct free_support on_base, on_casters;
	struct sentences words;
};

struct result {
	const struct cell *cell;
	const char *file, *sha256;          /* given by the caller; "" when not */
	const struct history_files *histories;  /* CSVs that the file names; NULL: none */
	enum verdict verdict;
	bool loads_computed;                /* false: no load model, or blocked */
	size_t governing;                   /* index into checks */
	struct anchor_result anchor[MAX_ANCHORS];
	size_t anchor_count;
	struct check_result *checks;        /* in table order */
	size_t check_count;
	struct left_out *left_out;
	size_t left_out_count;
	struct to_measure *to_measure;      /* what decides the verdict first */
	size_t to_measure_count;
	struct sentences departures, assumptions, cautions;
	struct loads loads;
	/* the arm's own reactions; NULL where a setup has no chain, swing or history */
	const struct arm_loads *arm[MAX_SETUPS];
	double bed_ratio[MAX_BED_RATIOS];   /* ratios that were run [mm2] */
	size_t bed_ratio_count;
	double spread[MAX_ANCHORS]
		     [MAX_BED_RATIOS];      /* largest tension of each anchor at each ratio [N] */
	size_t states;                      /* equilibria that were solved */
	struct demand
		*demands; /* where shear is free of the heading: what every anchor must carry */
	size_t demand_count;
	struct cycle_sources cycles[MAX_SETUPS];    /* load cycles, by setup */
	bool paired; /* some case pairs shear with the heading of its tilt: demands is not all */
	struct required required;
	struct unanchored unanchored;
};

#endif
