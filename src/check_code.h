/* The code methods' part of a visit: which check looks at which loads, and what a state puts on the
 * anchors as the codes see it. */
#ifndef CHECK_CODE_H
#define CHECK_CODE_H

#include "check_sweep.h"

/* The method whose loads a check looks at: service loads where it belongs to no code. */
enum method check_loads(const struct check *check);
/* Whether the file asks for the method that the check belongs to; else nothing is said of it. */
bool check_is_due(const struct check *check, const struct cell *cell);
/* Whether it is judged in states, of an anchor or of all. */
bool check_of_states(const struct check *check);
/* Whether a check (NULL: tension and shear themselves) looks at cases of this kind. */
bool check_looks_at(const struct check *check, const struct load_case *load_case);
/* Prepared strengths of the code whose loads these are; NULL for service loads. */
struct code_strength *code_of(const struct setup_run *setup, enum method method);

/* What the state puts on the anchors. Where the shear is paired with the tilt its worst end of the
 * twist is looked for, for the edge and for pryout apart; else the group's bound stands for both.
 * `peaks`: takes the vectors of either, or NULL. */
struct shear_peaks { struct shear_peak edge, pryout; };
void code_load(const struct run *run, const struct setup_run *setup, const struct state *state,
               struct anchor_load *out, struct shear_peaks *peaks);

#endif
