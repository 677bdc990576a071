/* anchor.fatigue: the tension cycles of a working cell against the anchor's fatigue rating.
 *
 * Source: rainflow counting (ASTM E1049-85, from memory; check_cycles.h); 2 million cycles as the
 * number up to which no fatigue rating is asked for: common practice, no source. Range: tension
 * alone, at full weights; every cycle counts as one of the largest range, which is the safe side
 * (no damage sum: data sheets give one point). The sources of cycles follow one another, so that
 * the largest range reaches from the lowest tension of any to the highest of any. Identities: the
 * number of cycles is proportional to the service life. Verdicts: never fails, since a single
 * point of a rating cannot prove that fewer or smaller cycles are too many. More cycles than the
 * rating was found for are unproven, however small their range. */
#include "check_files.h"
#include "judging.h"
#include "load_cycles.h"

#define YEAR (365 * 86400.0)         /* as units.c [s] */
#define FEW_CYCLES 2e6               /* common practice, no source */

const char *anchor_fatigue_left_out(const struct cell *cell)
{
	return cycles_stated(cell) ? NULL : "no load cycles are given: fatigue was not checked";
}

/* What is counted of one anchor. */
struct life {
	double cycles, range;        /* in the service life, as far as known; largest [-], [N] */
	bool known;
};

/* Cycles a year of all sources, a line each. */
static double cycles_a_year(const struct judging *judging, int anchor, struct life *life)
{
	const struct cycle_sources *sources = &judging->facts->cycles;
	struct trace *trace = judging->trace;
	const char *sum = "", *plus = "";
	double all = 0;
	for (size_t i = 0; i < sources->count; i++) {
		const struct cycle_source *source = &sources->list[i];
		double count = (double)source->anchor[anchor].count;
		life->known = life->known && source->counted && is_known(*source->a_year);
		if (!source->counted || !is_known(*source->a_year))
			continue;
		const char *rounds = trace_text(trace, "n_%zu", i + 1);
		const char *cycles = trace_text(trace, "c_%zu", i + 1);
		trace_input(trace, rounds, source->a_year, DIM_COUNT, "rounds a year");
		trace_step(trace, cycles, "", count, DIM_FACTOR, source->name,
		           "tension cycles of the anchor in a round");
		sum = trace_text(trace, "%s%s%s * %s", sum, plus, rounds, cycles);
		plus = " + ";
		all += source->a_year->value * count;
	}
	return trace_step(trace, "c_year", sum, all, DIM_FACTOR, "", "cycles a year");
}

static struct life find_life(const struct judging *judging, int anchor)
{
	const struct run_facts *facts = judging->facts;
	const struct number *service = &judging->cell->arm.service_life;
	struct trace *trace = judging->trace;
	struct life life = {.known = is_known(*service)};
	double high = facts->cycle_highest[anchor], low = facts->cycle_lowest[anchor];
	double a_year = cycles_a_year(judging, anchor, &life);
	if (is_known(*service)) {
		trace_input(trace, "t_life", service, DIM_TIME, "service life");
		trace_step(trace, "t_year", "", YEAR, DIM_TIME, "365 days", "");
		life.cycles = trace_step(trace, "c_life", "c_year * t_life / t_year",
		                         a_year * service->value / YEAR, DIM_FACTOR, "",
		                         "cycles in the service life");
	}
	trace_step(trace, "T_high", "", high, DIM_FORCE, "all sources at one bed ratio",
	           "highest tension");
	trace_step(trace, "T_low", "", low, DIM_FORCE, "", "lowest tension");
	life.range = trace_step(trace, "T_range", "T_high - T_low", high - low, DIM_FORCE, "",
	                        "largest range");
	return life;
}

static const char *count_text(const struct judging *judging, double count)
{
	char text[32];
	number_write(count, 4, text, sizeof text);
	return sentence(judging, "%s", text);
}

static void judge_rated(const struct judging *judging, int anchor, const struct life *life,
                        struct finding *out)
{
	const struct rating *rating = &judging->cell->anchors.product.rating;
	double rated = rating->fatigue_range.value;
	finding_numbers(
		out, life->range, rated, DIM_FORCE,
		sentence(judging,
	                 "anchor A%d: tension ranges up to %s, %s times in the service life; "
	                 "%s are carried %s times",
	                 anchor + 1, shown(judging, life->range, DIM_FORCE),
	                 count_text(judging, life->cycles), shown(judging, rated, DIM_FORCE),
	                 count_text(judging, rating->fatigue_cycles.value)),
		"an anchor with a larger fatigue rating, more anchors, or a gentler motion");
	trace_input(judging->trace, "T_rated", &rating->fatigue_range, DIM_FORCE,
	            "range of the fatigue rating");
	trace_step(judging->trace, "ratio", "T_range / T_rated", out->ratio, DIM_FACTOR, "",
	           "must be at most 1");
	/* counting every cycle at the largest range proves that they are carried, never that not */
	out->never_fails = true;
	if (out->ratio > 1)
		finding_doubts(out, out->said_numbers, out->said_numbers_remedy);
	if (!(life->cycles > rating->fatigue_cycles.value))
		return;
	finding_doubts(out,
	               sentence(judging,
	                        "anchor A%d: %s cycles in the service life, more than the %s of its "
	                        "fatigue rating",
	                        anchor + 1, count_text(judging, life->cycles),
	                        count_text(judging, rating->fatigue_cycles.value)),
	               "ask the anchor's maker for a rating at that number, or plan its replacement");
}

static void judge_unrated(const struct judging *judging, int anchor, const struct life *life,
                          struct finding *out)
{
	const struct rating *rating = &judging->cell->anchors.product.rating;
	out->never_fails = true;
	if (!life->known)
		return;
	finding_numbers(out, life->cycles, FEW_CYCLES, DIM_FACTOR,
	                sentence(judging,
	                         "anchor A%d: %s tension cycles in the service life, up to 2 million "
	                         "no fatigue rating is asked for (common practice, no source)",
	                         anchor + 1, count_text(judging, life->cycles)),
	                NULL);
	trace_step(judging->trace, "c_few", "", FEW_CYCLES, DIM_FACTOR,
	           "common practice, no source", "up to which no fatigue rating is asked for");
	trace_step(judging->trace, "ratio", "c_life / c_few", out->ratio, DIM_FACTOR, "",
	           "above 1 a fatigue rating is needed");
	if (!(life->cycles > FEW_CYCLES))
		return;
	if (!is_known(rating->fatigue_range))
		finding_lacks(out, "anchors.product.rating.fatigue.range");
	if (!is_known(rating->fatigue_cycles))
		finding_lacks(out, "anchors.product.rating.fatigue.cycles");
	finding_doubts(out,
	               sentence(judging,
	                        "anchor A%d: no fatigue rating, and %s tension cycles in the service "
	                        "life with ranges up to %s",
	                        anchor + 1, count_text(judging, life->cycles),
	                        shown(judging, life->range, DIM_FORCE)),
	               "an anchor with a fatigue rating, from its data sheet or approval");
}

void anchor_fatigue_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct rating *rating = &judging->cell->anchors.product.rating;
	out->background = true;
	if (!is_known(judging->cell->arm.service_life))
		finding_lacks(out, "arm.service_life");
	if (!judging->facts || !judge_cycles_known(judging, out))
		return;
	struct life life = find_life(judging, anchor);
	if (is_known(rating->fatigue_range) && is_known(rating->fatigue_cycles))
		judge_rated(judging, anchor, &life, out);
	else
		judge_unrated(judging, anchor, &life, out);
}
