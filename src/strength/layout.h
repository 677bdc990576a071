/* Limits that a code sets to a layout as a whole, whatever its loads: spacing, edge distance,
 * thickness, and the scope of the equations. Plain rows that a check walks through. */
#ifndef LAYOUT_H
#define LAYOUT_H

#include "code_facts.h"
#include "pattern.h"

enum { LIMIT_LACKS = 4, MAX_CODE_LIMITS = 16 };

struct code_limit {
	const char *what;            /* "spacing of the anchors" */
	const char *clause;          /* "17.9.2 Table 17.9.2(a); S9" */
	bool at_most;                /* `is` must be at most `asked`; else at least */
	bool known;                  /* both numbers are; else see lacks */
	double asked, is;            /* HUGE_VAL: nothing is near, or nothing is asked */
	enum dimension dimension;
	const char *lacks[LIMIT_LACKS];      /* paths of what is missing, NULL-ended if fewer */
};
static inline bool code_limit_kept(const struct code_limit *limit)
{
	/* a decimal in the file is not a binary number: 1e-9 of it is no fault */
	return limit->at_most ? limit->is <= limit->asked * (1 + 1e-9)
	                      : limit->is >= limit->asked * (1 - 1e-9);
}

/* For the two that fill the rows. */
struct limit_rows { struct code_limit *list; size_t count; };
struct code_limit *limit_add(struct limit_rows *rows, const char *what, const char *clause,
                             enum dimension dimension, double is, double asked);
/* Unless it is there, the row lacks what stands at the path. */
void limit_lacks(struct code_limit *row, bool there, const char *path);
/* Of any two anchors; of any anchor to an edge or joint that it sees, or the clear distance.
 * HUGE_VAL where there is none. [mm] */
double pattern_least_spacing(const struct pattern *pattern);
double pattern_least_edge(const struct pattern *pattern);

/* Rows that apply to the type of anchor; returns their number. `edges_known`: pattern's edges are
 * all there are (or its clear distance is stated); else rows about edges lack slab.clear. */
size_t aci_layout(const struct code_facts *facts, const struct pattern *pattern, bool edges_known,
                  struct code_limit out[MAX_CODE_LIMITS]);
size_t en_layout(const struct code_facts *facts, const struct pattern *pattern, bool edges_known,
                 struct code_limit out[MAX_CODE_LIMITS]);

#endif
