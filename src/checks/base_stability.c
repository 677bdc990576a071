/* base.stability: there is an equilibrium in every case and heading, with the moving part at 1.25
 * and the weights at 0.9 too.
 *
 * Source: existence of a bounded minimum of the contact energy (recession test, base/base.h);
 * factors 0.9 as in ASCE 7 0.9D and EN 1990 EQU, 1.25 own choice, no source. Range: anchors count
 * as tension-only and as strong as needed: their strength is judged by rating.tension. Identities:
 * 0 where anchors and base surround every load; scaling all loads changes nothing. */
#include "check_files.h"
#include "judging.h"
#include "run_facts.h"

#define MOST_RATIO 1e6      /* above it there is nothing to resist */

/* Fails; where an unknown load may help as well as hurt, it cannot hold. */
static void tips(struct finding *out, const char *said, const char *remedy)
{
	if (out->never_fails)
		finding_doubts(out, said, remedy);
	else
		finding_fails(out, said, remedy);
}

void base_stability_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct run_facts *facts = judging->facts;
	(void)anchor;
	if (!facts || !facts->overturning_case)
		return;
	/* an estimate of the arm is no lower bound of its loads */
	out->never_fails |= facts->overturning_case->estimate && !(facts->overturning_certain >= 1);
	if (facts->torsion_on_one)
		tips(out, "a single anchor cannot resist twisting, and no friction is counted",
		     "two anchors or more");
	if (facts->unsolved)
		tips(out,
		     "so near the limit of balance that the anchors' forces grow beyond any use",
		     "anchors farther apart or on the other side, a wider base, or more weight");
	trace_step(judging->trace, "overturning", "", facts->overturning, DIM_FACTOR,
	           "largest overturning over resisting moment about any edge of what can carry", "");
	if (facts->overturning > MOST_RATIO) {
		tips(out, "nothing resists the overturning: the anchors are all on one side of it",
		     "anchors on the other side, a wider base, or more weight");
		return;
	}
	if (judging->base->facet_count == 0 && !out->failed && !facts->unsolved) {
		out->said_numbers = "anchors and base hold every load in balance, whatever its "
		                    "size and direction";
		out->missing_count = 0; /* so whatever is not known of the loads does not matter */
		out->doubted = false;
		return;
	}
	finding_numbers(out, facts->overturning, 1, DIM_FACTOR,
	                sentence(judging, "overturning %s of what base and anchors resist (%s, %s)",
	                         percent(judging, facts->overturning),
	                         facts->overturning_case->name,
	                         facts->overturning_case->combination),
	                "anchors on the other side, a wider base, or more weight");
	/* on the limit there is no margin at all: only a smaller moment is an equilibrium */
	if (facts->overturning >= 1)
		tips(out, out->said_numbers, out->said_numbers_remedy);
	trace_step(judging->trace, "ratio", "overturning / 1", out->ratio, DIM_FACTOR, "",
	           "must be below 1");
}
