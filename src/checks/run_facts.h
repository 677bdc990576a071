/* What a judge sees of the whole run of one setup. */
#ifndef RUN_FACTS_H
#define RUN_FACTS_H

#include "../cell/load_case.h"

struct run_facts {
	bool any_state;                     /* at least one state was solved */
	double least_down;   /* least vertical force of any service case of the setup [N] */
	double pressure_max; /* largest bed pressure of any state of the setup [MPa] */
	/* largest over all cases of the setup in the reading of unknown weight flags that favours
	 * it, base_overturning [-] */
	double overturning;
	double overturning_heading;
	const struct load_case *overturning_case;
	bool unsolved; /* some equilibrium exists that doubles cannot hold: see base.stability */
	bool torsion_on_one;                /* a single anchor would have to resist twisting */
};

#endif
