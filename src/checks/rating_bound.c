/* rating.bound: the anchors under the guaranteed bounds of the arm's motion over all poses.
 *
 * Source: bounds of arm/reaction_sweep.h (trigonometric polynomial on a grid of the full circle),
 * each kind at its bound, all at once and aligned; tension and shear as rating.interaction. Range:
 * as rating.interaction; the swept wrenches themselves are judged by the other rating checks.
 * Verdicts: the bound need not occur, so a ratio above 1 is no failure: what lies between the poses
 * of the sweep is then not shown. Identities: the ratio is never below that of
 * rating.interaction for the same motion. */
#include "check_files.h"
#include "judging.h"
#include "rating_strength.h"

double rating_bound_ratio(const struct judging *judging, int anchor)
{
	return rating_interaction_ratio(judging, anchor);
}

const char *rating_bound_left_out(const struct cell *cell)
{
	const struct arm_motion *motion = &cell->arm.motion;
	if (cell->arm.chain.joints.count == 0 || motion->joints.count == 0)
		return "no chain with motion in the file: no bound over all poses is due";
	return motion->judged_by.value == BY_SWEEP
	               ? "arm.motion.judged_by: sweep takes the swept poses as all there are"
	               : NULL;
}

void rating_bound_judge(const struct judging *judging, int anchor, struct finding *out)
{
	rating_interaction_judge(judging, anchor, out);
	judge_bound(judging,
	            sentence(judging,
	                     "anchor A%d under the guaranteed bound of the arm's motion over all "
	                     "poses: %s of what tension and shear together allow",
	                     anchor + 1, percent(judging, out->ratio)),
	            out);
}
