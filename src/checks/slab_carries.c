/* slab.carries: whether the slab below the base can be taken to carry it, as far as a look at type,
 * uplift, local pressure and joints goes.
 *
 * Source: local bearing 0.85 f'c with the ASD factor 2.50 (AISC Design Guide 1, 2nd ed., 3.1;
 * second-hand). Range: slab on ground under a base that is pressed down. Slab bending, soil and
 * punching are not checked. Identities: never fails; what it cannot show is unproven. */
#include "check_files.h"
#include "judging.h"
#include "run_facts.h"

#include <math.h>

#define BEARING_FACTOR (0.85 / 2.5)

static bool crosses_joint(const struct judging *judging)
{
	const struct setting *setting = judging->setting;
	const struct base *base = judging->base;
	double c = cos(judging->cell->turned.value), s = sin(judging->cell->turned.value);
	for (size_t e = 0; base && setting->placed && e < setting->edge_count; e++)
		for (size_t i = 0; setting->edges[e].joint >= 0 && i < base->hull_count; i++) {
			const struct vec2 *p = &base->hull[i],
					  *q = &base->hull[(i + 1) % base->hull_count];
			const double *at = judging->cell->standing_at.at;
			struct vec2 from = {at[0] + c * p->x - s * p->y,
			                    at[1] + s * p->x + c * p->y};
			struct vec2 to = {at[0] + c * q->x - s * q->y, at[1] + s * q->x + c * q->y};
			if (plane_segments_meet(from, to, setting->edges[e].from,
			                        setting->edges[e].to))
				return true;
		}
	return false;
}

static void judge_pressure(const struct judging *judging, struct finding *out)
{
	const struct concrete_strength *strength = &judging->setting->strength;
	const struct run_facts *facts = judging->facts;
	if (!facts || !facts->any_state)
		return;
	if (facts->least_down < 0)
		finding_doubts(out,
		               sentence(judging,
		                        "the base is pulled up as a whole by %s: the slab's weight "
		                        "is not checked",
		                        shown(judging, -facts->least_down, DIM_FORCE)),
		               "more weight on the base, or have an engineer check the slab "
		               "against uplift");
	if (!strength->known)
		return;
	double allowed = BEARING_FACTOR * strength->value;
	trace_step(judging->trace, "p_max", "", facts->pressure_max, DIM_STRESS,
	           "largest of all states", "bed pressure");
	trace_step(judging->trace, "f", "", strength->value, DIM_STRESS, strength->basis, "");
	trace_step(judging->trace, "p_allowed", "0.85 * f / 2.5", allowed, DIM_STRESS,
	           "AISC Design Guide 1, 3.1 (second-hand)", "");
	const char *said = sentence(
		judging,
		"largest bed pressure %s, %s allowed; slab bending and soil are not checked",
		shown(judging, facts->pressure_max, DIM_STRESS),
		shown(judging, allowed, DIM_STRESS));
	finding_numbers(out, facts->pressure_max, allowed, DIM_STRESS, said, "");
	out->never_fails =
		true; /* a linear bed overstates the peak: above the limit it is unproven */
	if (out->ratio > 1)
		finding_doubts(
			out, said,
			"larger bearing faces, or have an engineer check the concrete below them");
	trace_step(judging->trace, "ratio", "p_max / p_allowed", out->ratio, DIM_FACTOR, "",
	           "unproven above 1");
}

void slab_carries_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct slab *slab = &judging->cell->slab;
	(void)anchor;
	if (!is_known(slab->type))
		finding_doubts(out, "the slab's type is not known",
		               "find out whether it is suspended, and whether it is post-tensioned");
	else if (slab->type.value == SLAB_SUSPENDED)
		finding_doubts(out, "a suspended slab is for the engineer of record",
		               "find out whether it is post-tensioned, and ask the engineer of record");
	if (crosses_joint(judging))
		finding_doubts(out, "the base stands across a joint: the two sides move apart",
		               "move the cell off the joint, or ask the engineer");
	out->said_numbers = "pressed down on ground; slab bending and soil are not checked";
	judge_pressure(judging, out);
}
