/* What the checks of the codes share: evidence for what a mode rests on, and its numbers in words.
 * One mode of one code is one check, so that whoever reads a finding knows the clause. */
#ifndef CODE_JUDGING_H
#define CODE_JUDGING_H

#include "check_table.h"

/* Why a mode is not judged: it does not apply, or there are no loads to judge it by; or NULL. */
const char *mode_left_out(const struct cell *cell, enum code code, enum code_mode mode);
/* The facts of the judging's code; without an anchor pattern they are resolved here. */
void judged_facts(const struct judging *judging, enum code code, struct code_facts *out);

/* --- evidence (code_evidence.c) --- */

/* Everything that keeps one mode from being shown, but not its numbers. */
void judge_mode_evidence(const struct judging *judging, enum code code, enum code_mode mode,
                         struct finding *out);
/* Whether the values of the anchor's sheet are shown at all. */
void judge_sheet_evidence(const struct judging *judging, struct finding *out);
/* Distance from the anchors within which an edge matters to the mode; 0 where it cannot be told
 * [mm]. */
double mode_reach(const struct code_facts *facts, enum code_mode mode);

/* --- numbers (code_numbers.c) --- */

/* Fast path. A mode that is ready and does not occur (no edge near enough) is used by nothing: 0.
 * -1: it cannot be computed. */
double mode_ratio_of(const struct judging *judging, enum code code, enum code_mode mode);
double together_ratio_of(const struct judging *judging, enum code code, bool steel);
/* Evidence and numbers of one mode, or of tension and shear together. `steel`: EN 1992-4 alone, the
 * pair of steel; else of concrete. */
void judge_mode(const struct judging *judging, enum code code, enum code_mode mode,
                struct finding *out);
void judge_together(const struct judging *judging, enum code code, bool steel, struct finding *out);
/* Whether the interaction is made of this mode. */
bool mode_is_in(enum code code, bool steel, enum code_mode mode);

/* --- sentences (code_sentences.c) --- */

/* "anchors A1, A3"; the first ones of many. */
const char *anchors_named(const struct judging *judging, uint64_t anchors);
/* "concrete breakout", in the words of the code; and its clause. */
const char *mode_title(enum code code, enum code_mode mode);
const char *mode_clause(enum code code, enum code_mode mode);
/* "anchors A1, A2 in concrete breakout: 24.1 kN on the group, 30.2 kN by ACI 318-19 17.6.2" */
const char *mode_said(const struct judging *judging, enum code code, enum code_mode mode,
                      const struct mode_ratio *ratio);
/* What would make the mode hold, computed where it is cheap. */
const char *mode_remedy(const struct judging *judging, enum code code, enum code_mode mode,
                        const struct mode_ratio *ratio);
/* Why a gap under the base costs strength in shear, and how much; NULL where there is none. */
const char *lever_said(const struct judging *judging, enum code code);

/* --- layout (code_layout.c) --- */

/* Every limit that the code sets to spacing, edges, thickness and scope, and old holes near an
 * anchor. */
void judge_layout(const struct judging *judging, enum code code, struct finding *out);

#endif
