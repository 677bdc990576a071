/* A result that was never computed, for tests of pages: two setups with awkward names, four
 * anchors, four checks. */
#ifndef MADE_RESULT_H
#define MADE_RESULT_H

#include "../../src/result.h"

struct made_result {
	struct cell cell, setup_cell;
	struct setup setups[2];
	struct load_case load_case;
	struct check_result checks[4];
	struct left_out left_out[1];
	struct to_measure to_measure[1];
	struct step steps[2];
	struct result result;
};

/* Must not be copied. Checks: rating.tension fails at 1.001 with a trace, rating.shear holds at 1,
 * slab.thickness is unproven and lacks its evidence, needs is unproven without numbers. */
void made_result(struct made_result *made);

#endif
