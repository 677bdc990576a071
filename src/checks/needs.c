/* needs: the loads that the machine's papers ask of every anchor against the allowed loads.
 *
 * Source: the machine's installation papers; rating as in rating.tension and rating.shear.
 * Range: only where the pattern is that of the papers and their values cover every setup.
 * Identities: the ratio is that of the weakest anchor; with a load model beside it both must hold.
 */
#include "check_files.h"
#include "judging.h"
#include "rating_strength.h"

#include <math.h>

const char *needs_left_out(const struct cell *cell)
{
	return needs_stated(cell) ? NULL : "the file states no needs of the machine's papers";
}

static const char *kind_word(enum load_kind kind) { return kind == TENSION ? "tension" : "shear"; }

static void conditions(const struct judging *judging, struct finding *out)
{
	const struct needs *needs = &judging->cell->anchors.needs;
	/* in another pattern the loads may be lower as well as higher */
	out->never_fails |= !is_known(needs->pattern_as_stated) ||
	                    needs->pattern_as_stated.value == NO;
	if (!is_known(needs->pattern_as_stated))
		finding_lacks(out, "anchors.needs.pattern_as_stated");
	else if (needs->pattern_as_stated.value == NO)
		finding_doubts(
			out,
			"the anchor pattern is not that of the papers: their loads do not hold for "
		        "it",
			"keep to the papers' pattern, or give a load model (cell, arm, base)");
	if (!is_known(needs->all_setups_covered))
		finding_lacks(out, "anchors.needs.setups_covered");
	else if (needs->all_setups_covered.value == NO)
		finding_doubts(out, "the papers' loads do not cover every setup of the cell",
		               "ask the machine's maker for the loads of every setup, or give a load model (cell, arm, base)");
	if (!is_known(needs->tension))
		finding_lacks(out, "anchors.needs.tension");
	if (!is_known(needs->shear))
		finding_lacks(out, "anchors.needs.shear");
}

/* Whether tension and shear together decide. The papers may mean either; where both at once are too
 * much for the anchor, they must say. */
static bool judge_both(const struct judging *judging, int anchor, const double ratio[2],
                       struct finding *out)
{
	const struct word *both_at_once = &judging->cell->anchors.needs.both_at_once;
	enum interaction kind =
		(enum interaction)judging->cell->anchors.product.rating.interaction.value;
	if (ratio[TENSION] < 0 || ratio[SHEAR] < 0 ||
	    (is_known(*both_at_once) && both_at_once->value == NO))
		return false;
	double both = combined_ratio(kind, ratio[TENSION], ratio[SHEAR]);
	if (!is_known(*both_at_once)) {
		if (both > 1)
			finding_lacks(out, "anchors.needs.both_at_once");
		return false;
	}
	trace_step(judging->trace, "b_N", "N_needed / N_allowed", ratio[TENSION], DIM_FACTOR, "",
	           "");
	trace_step(judging->trace, "b_V", "V_needed / V_allowed", ratio[SHEAR], DIM_FACTOR, "", "");
	finding_numbers(
		out, both, 1, DIM_FACTOR,
		sentence(judging,
	                 "anchor A%d, the papers' tension and shear together: %s of its "
	                 "tension and %s of its shear",
	                 anchor + 1, percent(judging, ratio[TENSION]),
	                 percent(judging, ratio[SHEAR])),
		"an anchor with a higher rating, or more anchors where the papers allow it");
	trace_step(judging->trace, "ratio",
	           kind == STRAIGHT ? "b_N + b_V" : "(b_N ^ (5 / 3) + b_V ^ (5 / 3)) ^ (3 / 5)",
	           out->ratio, DIM_FACTOR, "the file says that both act at once",
	           "must be at most 1");
	return true;
}

void needs_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct needs *needs = &judging->cell->anchors.needs;
	struct rating_factors f[2];
	double ratio[2] = {-1, -1};
	conditions(judging, out);
	judge_shear_conditions(judging, anchor, out);
	for (int k = TENSION; k <= SHEAR; k++) {
		const struct number *need = k == TENSION ? &needs->tension : &needs->shear;
		rating_strength(judging, (enum load_kind)k, anchor, &f[k], out, judging->trace);
		trace_input(judging->trace, k == TENSION ? "N_needed" : "V_needed", need, DIM_FORCE,
		            "the machine's papers");
		if (is_known(*need) && f[k].allowed > 0)
			ratio[k] = need->value / f[k].allowed;
	}
	int worse = ratio[SHEAR] > ratio[TENSION] ? SHEAR : TENSION;
	if (ratio[worse] < 0)
		return;
	if (judge_both(judging, anchor, ratio, out))
		return;
	double need = worse == TENSION ? needs->tension.value : needs->shear.value,
	       allowed = f[worse].allowed;
	finding_numbers(
		out, need, allowed, DIM_FORCE,
		sentence(judging,
	                 "anchor A%d in %s: the papers ask for %s, %s allowed (%s of %s%s)",
	                 anchor + 1, kind_word((enum load_kind)worse),
	                 shown(judging, need, DIM_FORCE), shown(judging, allowed, DIM_FORCE),
	                 percent(judging, f[worse].share),
	                 shown(judging, f[worse].ultimate, DIM_FORCE),
	                 allowed < f[worse].share * f[worse].ultimate ? ", times factors" : ""),
		sentence(judging, "an anchor with ultimate %s of at least %s here",
	                 kind_word((enum load_kind)worse),
	                 shown_up(judging, need * f[worse].ultimate / allowed, DIM_FORCE)));
	trace_step(judging->trace, "ratio",
	           worse == TENSION ? "N_needed / N_allowed" : "V_needed / V_allowed", out->ratio,
	           DIM_FACTOR, "", "must be at most 1");
}
