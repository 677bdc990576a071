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

static struct vec2 on_slab(const struct judging *judging, struct vec2 p)
{
	const double *at = judging->cell->standing_at.at;
	double c = cos(judging->cell->turned.value), s = sin(judging->cell->turned.value);
	return (struct vec2){at[0] + c * p.x - s * p.y, at[1] + s * p.x + c * p.y};
}

/* Whether a joint runs below the base: through the hull of all that bears, or within it. */
static bool lies_below(const struct judging *judging, const struct edge_line *joint)
{
	const struct base *base = judging->base;
	bool inside = base->hull_count > 0;
	for (size_t i = 0; i < base->hull_count; i++) {
		struct vec2 from = on_slab(judging, base->hull[i]);
		struct vec2 to = on_slab(judging, base->hull[(i + 1) % base->hull_count]);
		if (plane_segments_meet(from, to, joint->from, joint->to))
			return true;
		inside = inside && (to.x - from.x) * (joint->from.y - from.y) >
		                           (to.y - from.y) * (joint->from.x - from.x);
	}
	return inside;
}

static bool reaches(struct vec2 anchor, const struct vec2 triangle[3], double distance)
{
	for (int k = 0; k < 3; k++)
		if (hypot(triangle[k].x - anchor.x, triangle[k].y - anchor.y) > distance)
			return false;
	return true;
}

#define HALVINGS 6      /* of a triangle's sides, before it counts as not covered */

/* Whether every point of the triangle lies within the clear distance of some anchor: of one anchor,
 * or each of its four quarters so. */
static bool covered(const struct judging *judging, const struct vec2 t[3], int halvings)
{
	const struct base *base = judging->base;
	for (size_t k = 0; k < base->anchor_count; k++)
		if (reaches(base->anchor_mm[k], t, judging->setting->clear))
			return true;
	if (halvings == 0)
		return false;
	struct vec2 m[3];      /* m[k] halves the side opposite to corner k */
	for (int k = 0; k < 3; k++)
		m[k] = (struct vec2){0.5 * (t[(k + 1) % 3].x + t[(k + 2) % 3].x),
		                     0.5 * (t[(k + 1) % 3].y + t[(k + 2) % 3].y)};
	for (int k = 0; k < 3; k++)
		if (!covered(judging, (struct vec2[3]){t[k], m[(k + 1) % 3], m[(k + 2) % 3]},
		             halvings - 1))
			return false;
	return covered(judging, m, halvings - 1);
}

/* Whether the measured clear distance leaves no place for a joint below the base: every point of
 * its hull is nearer than that to some anchor. */
static bool clear_below(const struct judging *judging)
{
	const struct base *base = judging->base;
	if (judging->setting->clear <= 0)
		return false;
	for (size_t i = 1; i + 1 < base->hull_count; i++)
		if (!covered(judging,
		             (struct vec2[3]){base->hull[0], base->hull[i], base->hull[i + 1]},
		             HALVINGS))
			return false;
	return true;
}

static void judge_joints(const struct judging *judging, struct finding *out)
{
	const struct setting *setting = judging->setting;
	const struct list *joints = &judging->cell->slab.joints;
	if (!judging->base)
		return;      /* the loads lack it already */
	if (!is_known(*joints) && !clear_below(judging))
		finding_lacks(out, "slab.joints");
	if (joints->count > 0 && !setting->placed)
		finding_lacks(out,
		              is_known(judging->cell->standing_at) ? "cell.turned" : "cell.at");
	for (size_t e = 0; setting->placed && e < setting->edge_count; e++)
		if (setting->edges[e].joint >= 0 && lies_below(judging, &setting->edges[e]))
			finding_doubts(out,
			               "the base stands across a joint: the two sides move apart",
			               "move the cell off the joint, or ask the engineer");
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
	finding_lacks_strength(judging, out);
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
	judge_joints(judging, out);
	out->said_numbers =
		load_model_given(judging->cell)
			? "pressed down on ground; slab bending and soil are not checked"
			: "on ground; no loads were computed, so pressure, uplift, slab bending "
	                  "and soil are "
			  "not checked";
	judge_pressure(judging, out);
}
