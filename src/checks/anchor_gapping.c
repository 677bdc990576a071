/* anchor.gapping: whether the clamp under the base outlasts the largest service tension, so that
 * the joint neither gaps nor works loose under a working cell.
 *
 * Source: torque and joint law of base/preload.h (Shigley 8-7, 8-8, from memory); what is left of a
 * preload in concrete 0.4 (Eligehausen, Mallee, Silva, from memory). The joint opens at
 * F0 / (1 - C) >= F0; C = 0 is the safe side and needs no stiffness. Range: anchors set by torque;
 * the tension is that of a base without preload, which no preload raises. Identities: the ratio is
 * proportional to tension, to the torque coefficient and to the shaft, and to 1/torque.
 * Verdicts: gapping is no loss of strength, so that it never fails; it may loosen and wear. */
#include "../base/preload.h"
#include "check_files.h"
#include "judging.h"
#include "load_cycles.h"

const char *anchor_gapping_left_out(const struct cell *cell)
{
	return cycles_stated(cell)
	               ? NULL
	               : "no load cycles are given: gapping and loosening were not checked";
}

/* F0, what is left of it; 0: an input is lacking, which is named. [N] */
static double residual_preload(const struct judging *judging, struct finding *out)
{
	const struct product *product = &judging->cell->anchors.product;
	struct trace *trace = judging->trace;
	if (!is_known(product->setting_torque))
		finding_lacks(out, "anchors.product.setting_torque");
	if (!is_known(product->torque_coefficient))
		finding_lacks(out, "anchors.product.torque_coefficient");
	if (!is_known(product->shaft))
		finding_lacks(out, "anchors.product.shaft");
	if (!is_known(product->setting_torque) || !is_known(product->torque_coefficient) ||
	    !is_known(product->shaft))
		return 0;
	double preload = preload_of_torque(product->setting_torque.value,
	                                   product->torque_coefficient.value,
	                                   product->shaft.value);
	trace_input(trace, "T_set", &product->setting_torque, DIM_MOMENT, "setting torque");
	trace_input(trace, "K", &product->torque_coefficient, DIM_FACTOR, "torque coefficient");
	trace_input(trace, "d", &product->shaft, DIM_LENGTH, "shaft");
	trace_step(trace, "F_set", "T_set / (K * d)", preload, DIM_FORCE,
	           "Shigley 8-8, from memory", "preload when set");
	trace_step(trace, "k_left", "", PRELOAD_LEFT_LOW, DIM_FACTOR,
	           "Eligehausen, Mallee, Silva, from memory", "left of it in concrete, with time");
	return trace_step(trace, "F_left", "k_left * F_set", PRELOAD_LEFT_LOW * preload, DIM_FORCE,
	                  "", "residual clamp of one anchor");
}

void anchor_gapping_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct run_facts *facts = judging->facts;
	double left = residual_preload(judging, out);
	out->never_fails = out->background = true;
	if (!facts || !facts->any_state || !(left > 0))
		return;
	double tension = facts->tension_max[anchor];
	finding_numbers(out, tension, left, DIM_FORCE,
	                sentence(judging,
	                         "anchor A%d: tension up to %s against a clamp of %s that is left of "
	                         "the setting torque",
	                         anchor + 1, shown(judging, tension, DIM_FORCE),
	                         shown(judging, left, DIM_FORCE)),
	                NULL);
	if (out->ratio > 1)
		finding_doubts(out,
		               sentence(judging,
		                        "anchor A%d: a tension of %s is %s more than the clamp that is "
		                        "left of the setting torque: the base may gap there and the "
		                        "anchor work loose",
		                        anchor + 1, shown(judging, tension, DIM_FORCE),
		                        shown(judging, tension - left, DIM_FORCE)),
		               "anchors farther apart or more of them; or have an engineer judge the "
		               "joint, and check the torque at set times");
	trace_step(judging->trace, "T_max", "", tension, DIM_FORCE,
	           "largest over all service cases, see rating.tension", "tension of the anchor");
	trace_step(judging->trace, "ratio", "T_max / F_left", out->ratio, DIM_FACTOR,
	           "the joint opens at F_left / (1 - C), not below F_left", "clamped up to 1");
}
