/* Load combinations with a rare event (earthquake, accident), as data.
 *
 * Source: ASCE 7 2.3.6 (list seen in public code) and 2.4.5 (from memory); EN 1990 6.11b and 6.12b
 * (form seen, details from memory). Snow and wind are left out: a cell stands indoors. Vertical
 * signs are those of the printed list; both signs occur among the rows of each level.
 * The same rows stand in refdata/rare_combinations.csv, and a test compares the two.
 * Range: a rating at a share of ultimate is an allowable-load rating: LEVEL_SERVICE rows. Code
 * design strengths: LEVEL_FACTORED rows. EN 1990 has no service row with an earthquake.
 * ASCE 7-16 and 7-22 with overstrength: the same factors on the force for anchors. */
#ifndef RARE_COMBINATION_H
#define RARE_COMBINATION_H

#include "source_mark.h"
#include <stddef.h>

enum rare_event { EVENT_EARTHQUAKE, EVENT_ACCIDENT };
enum load_level { LEVEL_SERVICE, LEVEL_FACTORED };

struct rare_combination {
	const char *id;
	const char *title;           /* as the trade writes it: 0.6D - 0.7Ev + 0.7Eh */
	enum rare_event event;
	enum load_level level;
	double weight;               /* on everything that always stands there [-] */
	double moving;               /* on the arm's motion [-] */
	double horizontal;           /* on the event's horizontal force [-] */
	double vertical;             /* on its vertical force, downward positive [-] */
	const char *source;
	enum source_mark mark;
	const char *doubt;
};

const struct rare_combination *rare_combinations(size_t *count);

#endif
