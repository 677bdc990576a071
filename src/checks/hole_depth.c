/* hole.depth: the drilled hole is deep enough for the embedment and leaves concrete below it.
 *
 * Source: at least the larger of 30 mm and twice the hole's diameter left below the hole (EN 1992-4
 * practice for bonded anchors, from memory; common practice otherwise). The product's own value
 * governs where stricter. Identities: independent of loads. */
#include "check_files.h"
#include "judging.h"

#include <math.h>

void hole_depth_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct product *product = &judging->cell->anchors.product;
	const struct slab *slab = &judging->cell->slab;
	struct trace *trace = judging->trace;
	(void)anchor;
	judge_thickness_evidence(judging, out);
	const struct number *embedment = nominal_embedment(product);
	if (is_known(product->hole_depth) && is_known(*embedment) &&
	    product->hole_depth.value < embedment->value)
		finding_fails(out,
		              sentence(judging, "the hole is %s deep, the embedment %s",
		                       shown(judging, product->hole_depth.value, DIM_LENGTH),
		                       shown(judging, embedment->value, DIM_LENGTH)),
		              "drill deeper, as the data sheet says");
	if (!is_known(product->hole_depth) || !is_known(product->hole_diameter) ||
	    !is_known(slab->thickness))
		return;
	double depth = trace_input(trace, "h_hole", &product->hole_depth, DIM_LENGTH,
	                           "depth of the hole");
	double diameter = trace_input(trace, "d_hole", &product->hole_diameter, DIM_LENGTH,
	                              "diameter of the hole");
	double thickness = trace_input(trace, "h", &slab->thickness, DIM_LENGTH,
	                               "structural concrete");
	double left = trace_step(trace, "h_left", "max(30, 2 * d_hole)", fmax(30, 2 * diameter),
	                         DIM_LENGTH, "", "to be left below the hole");
	double needed = trace_step(trace, "h_needed", "h_hole + h_left", depth + left, DIM_LENGTH,
	                           "", "");
	finding_numbers(out, needed, thickness, DIM_LENGTH,
	                sentence(judging, "hole %s deep and %s to be left below it in a slab of %s",
	                         shown(judging, depth, DIM_LENGTH),
	                         shown(judging, left, DIM_LENGTH),
	                         shown(judging, thickness, DIM_LENGTH)),
	                "an anchor with less embedment, or a thicker slab");
	trace_step(trace, "ratio", "h_needed / h", out->ratio, DIM_FACTOR, "", "must be at most 1");
}
