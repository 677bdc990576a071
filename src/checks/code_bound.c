/* aci318.bound, en1992_4.bound: the anchors under the guaranteed bounds of the arm's motion over
 * all poses, with the code's own factors.
 *
 * Source: as rating.bound; tension and shear together as the code's interaction, which is at most 1
 * only where every mode of it is. Verdicts: the bound need not occur, so a ratio above 1 is no
 * failure. Identities: the ratio is never below that of the interaction for the same motion. */
#include "check_files.h"
#include "judging.h"

#include <math.h>

double aci318_bound_ratio(const struct judging *judging, int anchor)
{
	(void)anchor;
	return judging->ratios->together.ratio;
}

double en1992_4_bound_ratio(const struct judging *judging, int anchor)
{
	const struct code_ratios *r = judging->ratios;
	(void)anchor;
	if (r->together.ratio < 0 || r->together_steel.ratio < 0)
		return -1;
	return fmax(r->together.ratio, r->together_steel.ratio);
}

static void judge_code_bound(const struct judging *judging, struct finding *out)
{
	judge_bound(judging,
	            sentence(judging,
	                     "anchors under the guaranteed bound of the arm's motion over all poses: "
	                     "%s of what tension and shear together allow by the code",
	                     percent(judging, out->ratio)),
	            out);
}

void aci318_bound_judge(const struct judging *judging, int anchor, struct finding *out)
{
	aci318_interaction_judge(judging, anchor, out);
	judge_code_bound(judging, out);
}

void en1992_4_bound_judge(const struct judging *judging, int anchor, struct finding *out)
{
	struct code_ratios ratios;
	bool steel = false;
	if (judging->load) {
		code_ratios(judging->setting->code[EN1992_4], judging->load, &ratios);
		steel = ratios.together_steel.ratio > ratios.together.ratio;
	}
	(steel ? en1992_4_interaction_steel_judge : en1992_4_interaction_concrete_judge)(
		judging, anchor, out);
	judge_code_bound(judging, out);
}
