/* rating.shear: shear of each anchor against its derated rating.
 *
 * Source: data-sheet rating at a share of ultimate (common practice, no source); shear from the
 * elastic anchor group with torsion, no friction (base/shear_group.h); holes by EN 1992-4
 * Table 6.1. Range: base flat on the concrete or on thin grout (EN 1992-4 6.2.2.3); holes within
 * the clearance table. Identities: proportional to 1/rating; independent of weights. */
#include "check_files.h"
#include "judging.h"
#include "rating_strength.h"

double rating_shear_ratio(const struct judging *judging, int anchor)
{
	double allowed = judging->setting->allowed_shear[anchor];
	return allowed > 0 ? judging->state->shear[anchor] / allowed : -1;
}

void rating_shear_judge(const struct judging *judging, int anchor, struct finding *out)
{
	struct rating_factors f;
	rating_strength(judging, SHEAR, anchor, &f, out, judging->trace);
	judge_shear_conditions(judging, anchor, out);
	if (!judging->state || f.allowed <= 0)
		return;
	double shear = judging->state->shear[anchor], per_ultimate = f.allowed / f.ultimate;
	finding_numbers(out, shear, f.allowed, DIM_FORCE,
	                sentence(judging, "anchor A%d in shear: %s needed, %s allowed (%s of %s%s)",
	                         anchor + 1, shown(judging, shear, DIM_FORCE),
	                         shown(judging, f.allowed, DIM_FORCE), percent(judging, f.share),
	                         shown(judging, f.ultimate, DIM_FORCE),
	                         per_ultimate < f.share ? ", times factors" : ""),
	                sentence(judging, "an anchor with ultimate shear of at least %s here",
	                         shown_up(judging, shear / per_ultimate, DIM_FORCE)));
	trace_step(judging->trace, "ratio",
	           trace_text(judging->trace, "V_A%d / V_allowed", anchor + 1), out->ratio,
	           DIM_FACTOR, "", "must be at most 1");
}
