/* concrete.strength: the concrete's compressive strength against the least one asked for.
 *
 * Source: common practice for machine anchors, 28 MPa [4000 psi], no source; classes EN 206 Table
 * 12; cores ACI 562-19 6.4.3 (clause from memory); floor/strength.h. Range: normal-weight concrete,
 * 28 days and older, or cores from this slab. Identities: a cube strength counts as the cylinder
 * strength of its EN 206 pair; 4000 psi as a specified strength counts as 28 MPa, since ACI 318
 * pairs the two; nothing else has a tolerance. */
#include "check_files.h"
#include "judging.h"

#define LEAST_WITHOUT_ENGINEER 28.0      /* [MPa] */

void concrete_strength_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct choices *choices = &judging->cell->choices;
	struct concrete_strength strength;
	(void)anchor;
	concrete_strength(judging->cell, &strength, judging->trace);
	for (size_t i = 0; i < strength.missing_count; i++)
		finding_lacks(out, strength.missing[i]);
	if (strength.doubt)
		finding_doubts(out, strength.doubt, strength.remedy);
	out->never_fails = !strength.evidenced;
	if (choices->least_strength.value < LEAST_WITHOUT_ENGINEER &&
	    !engineer_stands(&choices->by_engineer))
		finding_doubts(out,
		               "the least strength asked for is below 28 MPa and no engineer "
		               "stands for it",
		               "leave choices: least_strength out, or have an engineer stand for "
		               "it (choices: by_engineer)");
	if (!strength.known)
		return;
	double least = trace_input(judging->trace, "f_least", &choices->least_strength, DIM_STRESS,
	                           "least strength asked for");
	bool twin = strength.inch_pound_twin && least == LEAST_WITHOUT_ENGINEER;
	finding_numbers(out, least, twin ? least : strength.value, DIM_STRESS,
	                sentence(judging, "concrete of %s (%s), %s asked for",
	                         shown(judging, strength.value, DIM_STRESS), strength.basis,
	                         shown(judging, least, DIM_STRESS)),
	                "another place, a stronger slab, or the engineer of record");
	if (twin)
		finding_notes(out, "4000 psi specified counts as 28 MPa: ACI 318 pairs the two");
	trace_step(judging->trace, "ratio", twin ? "" : "f_least / f", out->ratio, DIM_FACTOR,
	           twin ? "4000 psi counts as 28 MPa, ACI 318" : "", "must be at most 1");
}
