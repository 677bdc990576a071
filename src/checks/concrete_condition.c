/* concrete.condition: sound concrete where the anchors come.
 *
 * Source: common practice, no source: no rating holds in cracked-through, hollow or softened
 * concrete. Identities: has no ratio. */
#include "check_files.h"
#include "judging.h"

void concrete_condition_judge(const struct judging *judging, int anchor, struct finding *out)
{
	(void)anchor;
	out->said_numbers = "sound, as stated";
	if (is_known(judging->cell->slab.concrete.condition) &&
	    judging->cell->slab.concrete.condition.value == DAMAGED)
		finding_fails(out, "the concrete is damaged where the anchors come",
		              "another place, or a repair designed by an engineer; no anchor rating holds here");
}
