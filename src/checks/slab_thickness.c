/* slab.thickness: structural thickness of the slab against the anchor's least slab.
 *
 * Source: the anchor's data sheet. Measured or as-built thickness only: a drawing shows what was
 * meant. Range: topping and screed do not count. Identities: independent of loads. */
#include "check_files.h"
#include "judging.h"

void slab_thickness_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct slab *slab = &judging->cell->slab;
	const struct number *least = &judging->cell->anchors.product.least_slab;
	(void)anchor;
	judge_thickness_evidence(judging, out);
	if (!is_known(slab->thickness) || !is_known(*least))
		return;
	trace_input(judging->trace, "h_least", least, DIM_LENGTH, "least slab of the data sheet");
	trace_input(judging->trace, "h", &slab->thickness, DIM_LENGTH, "structural concrete");
	finding_numbers(out, least->value, slab->thickness.value, DIM_LENGTH,
	                sentence(judging, "slab %s thick, %s asked for by the anchor",
	                         shown(judging, slab->thickness.value, DIM_LENGTH),
	                         shown(judging, least->value, DIM_LENGTH)),
	                "an anchor with less embedment, or another place");
	trace_step(judging->trace, "ratio", "h_least / h", out->ratio, DIM_FACTOR, "",
	           "must be at most 1");
}
