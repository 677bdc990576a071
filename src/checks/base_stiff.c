/* base.stiff: the base stays plane, so that the anchors share as a rigid body makes them.
 *
 * Source: EN 1992-4 6.2.1 asks for a stiff fixture; a frame of sections is not one by itself.
 * Range: shown by calculation or by the maker's word. Prying of a thin base is not covered
 * otherwise. Identities: has no ratio. */
#include "check_files.h"
#include "judging.h"

void base_stiff_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct word *shown_by = &judging->cell->base_stiff;
	(void)anchor;
	if (is_known(*shown_by) && shown_by->value == STIFF_BY_ASSUMED)
		finding_doubts(out,
		               "the base's stiffness is assumed, not shown: a frame of sections is "
		               "not a rigid plate",
		               "ask the frame's maker for its stiffness, or have it calculated");
	out->said_numbers = "shown, as stated";
}
