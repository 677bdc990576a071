/* loads.given: whether the loads of the cell are complete.
 *
 * Source: what the load cases of loads/loads.h need; a missing emergency stop is never replaced by
 * the values of normal motion (common practice, no source). Identities: adding a missing value
 * never turns any check from fails to holds by itself. */
#include "check_files.h"
#include "judging.h"

void loads_given_judge(const struct judging *judging, int anchor, struct finding *out)
{
	(void)anchor; /* the load gaps are the missing inputs; they are added for every check that
	                 needs loads */
	out->background = !load_model_given(judging->cell);
	if (!load_model_given(judging->cell))
		finding_doubts(
			out,
			"the file holds neither a load model nor the needs of the machine's papers",
			"give cell, arm and base, or the papers' loads under anchors: needs");
	out->said_numbers = "weights, reactions and base are all given";
}
