/* rating.tension: tension of each anchor against its derated rating.
 *
 * Source: data-sheet rating at a share of ultimate (common practice, no source); tension from the
 * rigid base on a one-way bed (base/base.h). Range: service loads; one product for all anchors; a
 * base that stays plane (base.stiff). Identities: the ratio is proportional to 1/rating; it does
 * not change when everything is turned. */
#include "check_files.h"
#include "judging.h"
#include "rating_strength.h"

double rating_tension_ratio(const struct judging *judging, int anchor)
{
	double allowed = judging->setting->allowed_tension[anchor];
	return allowed > 0 ? judging->state->tension[anchor] / allowed : -1;
}

void rating_tension_judge(const struct judging *judging, int anchor, struct finding *out)
{
	struct rating_factors f;
	rating_strength(judging, TENSION, anchor, &f, out, judging->trace);
	if (!judging->state || f.allowed <= 0)
		return;
	double tension = judging->state->tension[anchor], per_ultimate = f.allowed / f.ultimate;
	finding_numbers(out, tension, f.allowed, DIM_FORCE,
	                sentence(judging,
	                         "anchor A%d in tension: %s needed, %s allowed (%s of %s%s)",
	                         anchor + 1, shown(judging, tension, DIM_FORCE),
	                         shown(judging, f.allowed, DIM_FORCE), percent(judging, f.share),
	                         shown(judging, f.ultimate, DIM_FORCE),
	                         per_ultimate < f.share ? ", times factors" : ""),
	                sentence(judging, "an anchor with ultimate tension of at least %s here",
	                         shown_up(judging, tension / per_ultimate, DIM_FORCE)));
	trace_step(judging->trace, "ratio",
	           trace_text(judging->trace, "T_A%d / N_allowed", anchor + 1), out->ratio,
	           DIM_FACTOR, "", "must be at most 1");
}
