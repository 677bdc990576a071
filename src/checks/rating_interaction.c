/* rating.interaction: tension and shear of one anchor together.
 *
 * Source: straight line, or exponent 5/3 where the data sheet says so (ACI 318-19 R17.8 names it as
 * an alternative). Tension and shear are of one state, or, where their headings are free of each
 * other, the largest tension with the largest shear of the same setup, case and bed ratio (a
 * bound). Range: as rating.tension and rating.shear. Identities: at zero shear it is
 * rating.tension, at zero tension rating.shear; 5/3 never exceeds the line. */
#include "check_files.h"
#include "judging.h"
#include "rating_strength.h"

#include <math.h>

double rating_interaction_ratio(const struct judging *judging, int anchor)
{
	const struct setting *setting = judging->setting;
	if (setting->allowed_tension[anchor] <= 0 || setting->allowed_shear[anchor] <= 0)
		return -1;
	return combined_ratio(
		(enum interaction)judging->cell->anchors.product.rating.interaction.value,
		judging->state->tension[anchor] / setting->allowed_tension[anchor],
		judging->state->shear[anchor] / setting->allowed_shear[anchor]);
}

/* Ultimate tension that would do beside the shear rating as it is. */
static const char *remedy(const struct judging *judging, enum interaction kind, double tension,
                          double shear, double ultimate)
{
	double left = shear < 1 ? kind == STRAIGHT ? 1 - shear : pow(1 - pow(shear, 5.0 / 3.0), 0.6)
	                        : 0;
	if (left <= 0)
		return "an anchor with a higher shear rating, or more anchors";
	return sentence(judging,
	                "an anchor with ultimate tension of at least %s here, beside the shear "
	                "rating as it is",
	                shown_up(judging, ultimate * tension / left, DIM_FORCE));
}

void rating_interaction_judge(const struct judging *judging, int anchor, struct finding *out)
{
	struct rating_factors t, v;
	struct trace *trace = judging->trace;
	enum interaction kind =
		(enum interaction)judging->cell->anchors.product.rating.interaction.value;
	rating_strength(judging, TENSION, anchor, &t, out, trace);
	rating_strength(judging, SHEAR, anchor, &v, out, trace);
	judge_shear_conditions(judging, anchor, out);
	if (!judging->state || t.allowed <= 0 || v.allowed <= 0)
		return;
	double tension = judging->state->tension[anchor] / t.allowed,
	       shear = judging->state->shear[anchor] / v.allowed;
	trace_step(trace, "b_N", trace_text(trace, "T_A%d / N_allowed", anchor + 1), tension,
	           DIM_FACTOR, "", "tension used");
	trace_step(trace, "b_V", trace_text(trace, "V_A%d / V_allowed", anchor + 1), shear,
	           DIM_FACTOR, "", "shear used");
	finding_numbers(out, combined_ratio(kind, tension, shear), 1, DIM_FACTOR,
	                sentence(judging,
	                         "anchor A%d in tension and shear together: %s of its tension and "
	                         "%s of its shear",
	                         anchor + 1, percent(judging, tension), percent(judging, shear)),
	                remedy(judging, kind, tension, shear, t.ultimate));
	trace_step(trace, "ratio",
	           kind == STRAIGHT ? "b_N + b_V" : "(b_N ^ (5 / 3) + b_V ^ (5 / 3)) ^ (3 / 5)",
	           out->ratio, DIM_FACTOR,
	           kind == STRAIGHT ? "straight line" : "exponent 5/3, ACI 318-19 R17.8",
	           "must be at most 1");
}
