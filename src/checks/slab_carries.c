/* slab.carries: whether the slab below the base can be taken to carry it, as far as a look at type,
 * uplift, local pressure and joints goes.
 *
 * Source: local bearing 0.85 f'c with the ASD factor 2.50 (AISC Design Guide 1, 2nd ed., 3.1;
 * second-hand). Range: slab on ground under a base that is pressed down. Slab bending, soil and
 * punching are not checked; without a base the anchors' hull stands for it. Identities: never
 * fails; what it cannot show is unproven. */
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

/* What stands on the slab, in cell axes: the hull of all that bears. Without a base the hull of the
 * anchors, which any base covers at least: a segment with two anchors or with all in one line, a
 * point with one, nothing without a pattern. */
struct footprint {
	const struct vec2 *hull;
	size_t count;
	struct vec2 of_anchors[MAX_ANCHORS];
};

static void find_footprint(const struct judging *judging, struct footprint *out)
{
	const struct base *base = judging->base;
	const struct anchors *anchors = &judging->cell->anchors;
	out->hull = base ? base->hull : out->of_anchors;
	out->count = base ? base->hull_count
	                  : plane_hull(anchors->at, anchors->count, out->of_anchors);
}

#define TOUCHING 1e-6   /* a single anchor nearer to a joint stands on it [mm] */

/* Whether a joint runs below the footprint: through its rim, or within it. */
static bool lies_below(const struct judging *judging, const struct footprint *footprint,
                       const struct edge_line *joint)
{
	size_t n = footprint->count;
	bool inside = n > 2;
	/* segments that meet must have a length: a point does not */
	if (n == 1)
		return plane_distance_to_segment(on_slab(judging, footprint->hull[0]), joint->from,
		                                 joint->to) <= TOUCHING;
	for (size_t i = 0; i < n; i++) {
		struct vec2 from = on_slab(judging, footprint->hull[i]);
		struct vec2 to = on_slab(judging, footprint->hull[(i + 1) % n]);
		if (plane_segments_meet(from, to, joint->from, joint->to))
			return true;
		inside = inside && (to.x - from.x) * (joint->from.y - from.y) >
		                           (to.y - from.y) * (joint->from.x - from.x);
	}
	return inside;
}

/* Whether all of the triangle is nearer than that. A joint may stand at the distance itself. */
static bool reaches(struct vec2 anchor, const struct vec2 triangle[3], double distance)
{
	for (int k = 0; k < 3; k++)
		if (!(hypot(triangle[k].x - anchor.x, triangle[k].y - anchor.y) < distance))
			return false;
	return true;
}

#define HALVINGS 6      /* of a triangle's sides, before it counts as not covered */

/* Whether every point of the triangle lies within the clear distance of some anchor: of one anchor,
 * or each of its four quarters so. */
static bool covered(const struct judging *judging, const struct vec2 t[3], int halvings)
{
	const struct anchors *anchors = &judging->cell->anchors;
	for (size_t k = 0; k < anchors->count; k++)
		if (reaches(anchors->at[k], t, judging->setting->clear))
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

/* Whether the measured clear distance leaves no place for a joint below the footprint: every point
 * of it is nearer than that to some anchor. */
static bool clear_below(const struct judging *judging, const struct footprint *footprint)
{
	const struct vec2 *hull = footprint->hull;
	size_t n = footprint->count;
	if (n == 0 || judging->setting->clear <= 0)
		return false;
	/* a fan of triangles; of a segment or a point one, without area */
	for (size_t i = 1; i == 1 || i + 1 < n; i++)
		if (!covered(judging, (struct vec2[3]){hull[0], hull[i % n], hull[(i + 1) % n]},
		             HALVINGS))
			return false;
	return true;
}

static void judge_joints(const struct judging *judging, struct finding *out)
{
	const char *across =
		judging->base ? "the base stands across a joint: the two sides move apart"
			      : "a joint runs through the anchor pattern: the two sides move apart";
	const struct setting *setting = judging->setting;
	const struct list *joints = &judging->cell->slab.joints;
	struct footprint footprint;
	find_footprint(judging, &footprint);
	bool clear = clear_below(judging, &footprint);
	if (!clear && !is_known(*joints))
		finding_lacks(out, "slab.joints");
	if (joints->count > 0 && footprint.count == 0)
		finding_lacks(out, "anchors.at");
	if (!clear && joints->count > 0 && !setting->placed)
		finding_lacks(out,
		              is_known(judging->cell->standing_at) ? "cell.turned" : "cell.at");
	for (size_t e = 0; setting->placed && e < setting->edge_count; e++)
		if (setting->edges[e].joint >= 0 &&
		    lies_below(judging, &footprint, &setting->edges[e]))
			finding_doubts(out, across,
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

/* What holding means where no pressure is computed. Without a load model there is no base, and a
 * joint beside the anchors may still run below it. */
static const char *said_without_numbers(const struct judging *judging)
{
	if (load_model_given(judging->cell))
		return "pressed down on ground; slab bending and soil are not checked";
	if (judging->cell->slab.joints.count > 0)
		return "on ground, no joint between the anchors; no base is stated and no loads "
		       "were computed, so joints beside the anchors, pressure, uplift, slab "
		       "bending and soil are not checked";
	return "on ground; no loads were computed, so pressure, uplift, slab bending and soil are "
	       "not checked";
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
	out->said_numbers = said_without_numbers(judging);
	judge_pressure(judging, out);
}
