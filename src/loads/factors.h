/* The factors with which weights and the arm's motion stand in a load case.
 *
 * Source, service loads (ratings): loads.h. ACI 318-19 5.3.1: 1.2D + 1.6L, and 1.4D where nothing
 * moves; 0.9D + 1.6L is an addition, as the printed rows pair 0.9D with wind and earthquake alone.
 * EN 1990 6.10, Table A1.2(B): 1.35 G + 1.5 Q; the lower 0.9 G is that of Table A1.2(A), so that
 * the 1.0 G of (B) lies between. All from memory. choices.stabilising_weight has no part in a code.
 * Assumption (own choice, no source): the arm is a moving machine, and its own weight with its
 * payload counts as live load where it hurts; where it holds down it counts as the other weights.
 * An earthquake's rows (rare_combination.h) bring their own factors.
 * Units: none. Errors: none. */
#ifndef FACTORS_H
#define FACTORS_H

#include "../cell/cell.h"
#include "../cell/load_case.h"

struct run_factors {
	double weight;   /* on the parts; on the arm's weight in the least vertical force */
	double moving;   /* on the moving part and on further loads */
	double own;      /* on the arm's own weight and payload where they press or tilt */
};
/* Of a run with the arm in motion and no earthquake. RUN_STABILITY: of METHOD_RATING alone. */
struct run_factors run_factors(const struct cell *cell, enum method method, enum weight_run run);
/* Of a case as it stands. Reads method, run, source, sustained and earthquake. */
struct run_factors case_factors(const struct cell *cell, const struct load_case *c);

/* Where each factor comes from, for the written calculation (constants). */
struct factor_sources { const char *weight, *moving, *own; };
struct factor_sources factor_sources(const struct load_case *c);

/* Whether nothing acts in the case but what always does: parts and the arm at rest. */
bool nothing_moves(const struct load_case *c);

#endif
