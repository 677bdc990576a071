/* What the check files share: short ways to sentences and to what is known. */
#ifndef JUDGING_H
#define JUDGING_H

#include "../cell/load_model.h"
#include "check_table.h"

/* A sentence in the arena; "" on the fast path or without memory. */
const char *sentence(const struct judging *judging, const char *format, ...)
	__attribute__((format(printf, 2, 3)));
/* Number with unit for a sentence, in the units the file asks for; valid until the arena closes. */
const char *shown(const struct judging *judging, double value, enum dimension dimension);
/* The same rounded up, for what is at least needed. */
const char *shown_up(const struct judging *judging, double value, enum dimension dimension);
const char *percent(const struct judging *judging, double share);

/* Whether the file takes the way of the papers' needs: any key below `needs`, even with an empty
 * value. */
bool needs_stated(const struct cell *cell);
const char *without_load_model(const struct cell *cell);     /* reason for `left_out`, or NULL */

/* An engineer stands for a departure with name and reason; one alone is no word given. */
bool engineer_stands(const struct engineer *engineer);

/* Depth of the anchor's end: the nominal embedment where it is given, else the effective one. */
const struct number *nominal_embedment(const struct product *product);
/* Only a measured or as-built thickness is evidence; without it the ratio is no bound either. */
void judge_thickness_evidence(const struct judging *judging, struct finding *out);

/* Names what keeps the edges from being known: the measured clear distance is the quickest thing to
 * ask for. */
void finding_lacks_edges(const struct judging *judging, double reach, struct finding *out);

/* Names what keeps the concrete's strength from being shown. */
void finding_lacks_strength(const struct judging *judging, struct finding *out);

/* Stand-off as the shear checks see it. */
enum stand_off_kind { FLAT, FILLED_FLAT, THICK_OR_OPEN, ON_TOPPING, STAND_OFF_UNKNOWN };
/* EN 1992-4 6.2.2.3: no lever arm with direct contact or mortar of at most d/2, at least 30 MPa and
 * the concrete's strength. Names what is missing in `lacks` (may be NULL). */
enum stand_off_kind stand_off_kind(const struct judging *judging, struct finding *lacks);
/* What helps against a gap that bends the anchors. */
const char *stand_off_remedy(const struct judging *judging);
/* What holes in the base mean for shear: whether they are small enough for every anchor to take its
 * share; else what is missing or doubted. */
bool judge_base_holes(const struct judging *judging, struct finding *out);
/* Lacks and doubts that concern every anchor in shear: holes in the base, stand-off. */
void judge_shear_conditions(const struct judging *judging, int anchor, struct finding *out);
/* Largest clearance hole with which all anchors share the shear, EN 1992-4 Table 6.1. [mm] */
double largest_clearance_hole(double shaft);

/* What the interaction under the guaranteed bound of the arm's motion means, behind its own
 * findings: above 1 nothing is shown, and nothing fails. `said`: the sentence with the ratio. */
void judge_bound(const struct judging *judging, const char *said, struct finding *out);

#endif
