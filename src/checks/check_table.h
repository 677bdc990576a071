/* The check table: one row a check, one file a check in this folder. Adding a check is adding a
 * row. */
#ifndef CHECK_TABLE_H
#define CHECK_TABLE_H

#include "../base/base.h"
#include "../cell/trace.h"
#include "finding.h"
#include "run_facts.h"
#include "setting.h"

enum { MAX_BED_RATIOS = 4, MAX_CHECKS = 56 };

/* Method of the file for which a check is due; a check of a code sees the loads of that code. */
enum check_method { EVERY_METHOD, ONLY_RATING, ONLY_ACI318, ONLY_EN1992_4 };

/* What a judge may look at. `state` is NULL for checks that use none. */
struct judging {
	const struct cell *cell;               /* of the setup */
	const struct setting *setting;
	const struct base *base;               /* NULL when it cannot be prepared */
	const struct state *state;
	struct arena *arena; /* for sentences; NULL on the fast path, which judges numbers only */
	struct trace *trace;                   /* or NULL */
	/* code methods: what acts on the anchors in the state, and (fast path alone) what each mode
	 * makes of it; NULL without a state */
	const struct anchor_load *load;
	const struct code_ratios *ratios;
	/* of the setup's whole run, for base.stability, slab.carries and the shear checks */
	const struct run_facts *facts;
};

enum stage {
	OF_SETUP,          /* judged once a setup */
	OF_ANCHOR,         /* judged once a setup and anchor, no state */
	OF_STATE_ANCHOR,   /* judged for every anchor in every state */
	OF_STATE           /* judged once a state: groups and most loaded anchors; the finding names
	                    * the anchors and the edge */
};

struct check {
	const char *id, *title;
	const char *source;                    /* clause or practice that it rests on */
	const char *range;                     /* where it is valid, for `explain` */
	enum stage stage;
	enum check_method method;              /* else it is not spoken of */
	enum code_mode mode;                   /* of a code's check: the one it is about */
	bool of_sustained; /* looks at lasting loads alone */
	bool needs_loads;                      /* gaps of the load model are its missing inputs */
	/* its ratio depends on the anchor's tension and shear alone and rises with both; so with
	 * free shear it peaks where the tension does */
	bool follows_tension;
	bool leans;    /* on inputs that other checks judge: when unproven, they speak first */
	bool combines; /* takes in what other checks judge apart: does not govern beside them */
	bool of_bound; /* looks at guaranteed bounds of the arm's motion alone */
	bool by_shear; /* it happens in the heading of the shear, not of the tilt */
	const char *needs[12];                 /* field paths it cannot do without; NULL-ended */
	/* NULL: it applies. Else the reason why it does not, listed apart. */
	const char *(*left_out)(const struct cell *cell);
	/* fast path of OF_STATE_ANCHOR and OF_STATE (anchor is 0): the ratio alone; judge must give
	 * the same bits */
	double (*ratio)(const struct judging *judging, int anchor);
	void (*judge)(const struct judging *judging, int anchor, struct finding *out);
};

extern const struct check checks[];
extern const size_t check_count;
const struct check *check_find(const char *id);

#endif
