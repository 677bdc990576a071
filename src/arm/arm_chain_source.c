/* A chain and its limits as loads of one case: the largest of each kind with its guaranteed bound,
 * the swept wrenches that can govern, and the bounds taken at once.
 *
 * The gripper may be empty: everything is done with the payload and without it. The foot, which has
 * no link, adds its weight to every wrench, without a lever: where its centre lies is not told. */
#include "arm_sources.h"

#include "pose_grid.h"
#include <math.h>
#include <string.h>

#define N_MM_PER_N_M 1e3
/* Of the whole way, with a thousand to spare (reaction_bound.c). */
#define ROUNDING 1e-11

static const double full_turn = 6.28318530717958647692;

struct chain_case {
	const struct arm_build *build;
	enum arm_case arm_case;
	struct motion_limits limits;
	struct chain chain[PAYLOADS]; /* the second with an empty gripper */
	struct prepared_chain prepared[PAYLOADS];
	size_t count;                          /* of these; 1: there is no payload */
	double fixed_weight, weight[PAYLOADS]; /* of the foot; of everything [N] */
	double spin_from, spin_to;
	bool turns;                                   /* through the full circle */
	struct reaction_extremes *extremes[PAYLOADS]; /* the first piece of each */
};

/* --- what is asked -------------------------------------------------------------------------- */

/* From half a turn on, joint 1 is taken to go all round. That adds headings, so it is safe; and
 * only where all headings are alike do sizes alone matter (wrench_hull.h), so that the reduced set
 * is complete. The range of a joint that turns less is kept, and so is every wrench that reaches
 * farther in some heading, as far as there is room.
 *
 * The one pose of an idle joint 1 is the middle of its range: the range lies evenly to both sides,
 * whichever way the axis points. */
static void find_spin(struct chain_case *of)
{
	double range = of->limits.high[0] - of->limits.low[0];
	if (!first_joint_idle(&of->prepared[0]) || !(range > 0))
		return;
	of->turns = range >= full_turn / 2 * (1 - 1e-12);
	of->spin_from = of->turns ? 0 : -range / 2;
	of->spin_to = of->turns ? full_turn : range / 2;
}

static double mass_of(const struct prepared_chain *chain)
{
	double mass = 0;
	for (size_t i = 0; i < chain->count; i++)
		mass += chain->link[i].mass;
	return mass;
}

static void open_case(const struct arm_build *build, enum arm_case arm_case, struct chain_case *out)
{
	double fixed;
	*out = (struct chain_case){.build = build, .arm_case = arm_case};
	arm_limits_of(build->cell, arm_case, &out->limits);
	/* the factor of weight alone (tighten_at_rest) stays the smaller with fewer poses: 1.19
	 * with 12 for five joints, where motion has 1.48 with 16 */
	if (arm_case == ARM_REST)
		out->limits.bound_poses = out->limits.bound_poses * 3 / 4;
	arm_fixed_mass(build->cell, &fixed);
	out->fixed_weight = STANDARD_GRAVITY * fixed;
	arm_chain_of(build->cell, true, &out->chain[0]);
	arm_chain_of(build->cell, false, &out->chain[1]);
	out->count = out->chain[0].payload_mass > 0 ? PAYLOADS : 1;
	for (size_t i = 0; i < out->count; i++) {
		chain_prepare(&out->chain[i], &out->prepared[i]);
		out->weight[i] = out->fixed_weight + STANDARD_GRAVITY * mass_of(&out->prepared[i]);
	}
	find_spin(out);
}

/* --- in pieces ------------------------------------------------------------------------------ */

struct span {
	size_t from, to;
};

static struct span piece_of(size_t total, size_t index)
{
	size_t each = total / ARM_PIECES, rest = total % ARM_PIECES;
	size_t from = index * each + (index < rest ? index : rest);
	return (struct span){from, from + each + (index < rest)};
}

static void sweep_piece(void *job, size_t index)
{
	const struct chain_case *of = job;
	const struct chain *chain = &of->chain[index / ARM_PIECES];
	struct span span = piece_of(reaction_sweep_count(chain, &of->limits), index % ARM_PIECES);
	struct reaction_extremes *into = &of->build->work->piece[index];
	reaction_start(into);
	reaction_sweep(chain, &of->limits, span.from, span.to, into);
}

static void search_piece(void *job, size_t index)
{
	const struct chain_case *of = job;
	reaction_refine(&of->chain[index], &of->limits, of->extremes[index]);
}

/* Into a copy of its own: the extremes stand in the first pieces. */
static void bound_piece(void *job, size_t index)
{
	const struct chain_case *of = job;
	const struct chain *chain = &of->chain[index / ARM_PIECES];
	struct span span = piece_of(reaction_bound_count(chain, &of->limits), index % ARM_PIECES);
	struct reaction_extremes *into = &of->build->work->piece[index];
	if (index % ARM_PIECES)
		reaction_start(into);
	reaction_bound_sweep(chain, &of->limits, span.from, span.to, into);
}

static void merge_pieces(const struct chain_case *of)
{
	for (size_t i = 0; i < of->count; i++)
		for (size_t k = 1; k < ARM_PIECES; k++)
			reaction_merge(of->extremes[i], &of->extremes[i][k]);
}

/* What weight alone tilts is of degree 1 in every joint (its lever is a place), not of degree 2 as
 * what motion tilts: the smaller factor of reaction_bound.c holds. */
static void tighten_at_rest(const struct chain_case *of, size_t which)
{
	struct reaction_extremes *extremes = of->extremes[which];
	struct pose_grid grid;
	double factor = 1 + ROUNDING;
	pose_grid_open(&of->prepared[which], &of->limits, GRID_BOUND, &grid);
	for (size_t i = 0; i < grid.count; i++) {
		size_t points = pose_grid_circle(&grid.joint[i]);
		if (points)
			factor /= cos(full_turn / 2 / (double)points);
	}
	extremes->bound[REACTION_TILTING] = factor * extremes->peak[REACTION_TILTING];
}

static void find_extremes(struct chain_case *of)
{
	const struct arm_build *build = of->build;
	size_t pieces = of->count * ARM_PIECES;
	for (size_t i = 0; i < of->count; i++)
		of->extremes[i] = &build->work->piece[i * ARM_PIECES];
	pieces_run(build->pieces, arm_work_name(build->arena, of->arm_case, "sweep"), pieces,
	           sweep_piece, of);
	merge_pieces(of);
	pieces_run(build->pieces, arm_work_name(build->arena, of->arm_case, "search"), of->count,
	           search_piece, of);
	pieces_run(build->pieces, arm_work_name(build->arena, of->arm_case, "bound"), pieces,
	           bound_piece, of);
	merge_pieces(of);
	for (size_t i = 0; i < of->count; i++) {
		reaction_bound_from_peaks(&of->chain[i], &of->limits, of->extremes[i]);
		if (of->arm_case == ARM_REST)
			tighten_at_rest(of, i);
	}
}

/* --- in the cell's words -------------------------------------------------------------------- */

/* The foot presses: uplift loses its weight, downforce gains it. */
static double converted(const struct chain_case *of, enum reaction_kind kind, double value)
{
	if (kind == REACTION_TILTING || kind == REACTION_TWISTING)
		return N_MM_PER_N_M * value;
	if (kind == REACTION_HORIZONTAL)
		return value;
	return kind == REACTION_UPLIFT ? value - of->fixed_weight : value + of->fixed_weight;
}

static struct arm_load load_of(const struct chain_case *of, size_t which,
                               const struct reaction_at *at)
{
	const double still[MAX_JOINTS_OF_ARM] = {0};
	struct base_wrench weight;
	struct arm_load out = {
		.weight = of->weight[which], .spin_from = of->spin_from, .spin_to = of->spin_to};
	chain_wrench(&of->prepared[which], at->q, still, still, &weight, NULL);
	for (int i = 0; i < 3; i++) {
		out.force[i] = at->wrench.force[i];
		out.moment[i] = N_MM_PER_N_M * at->wrench.moment[i];
	}
	out.force[2] -= of->fixed_weight;
	for (int i = 0; i < 2; i++)
		out.weight_moment[i] = N_MM_PER_N_M * weight.moment[i];
	return out;
}

/* The larger of the two, with its whole wrench; the bound is the larger of both bounds. */
static void tell_extreme(const struct chain_case *of, enum reaction_kind kind,
                         struct reaction_at *kept, struct arm_extreme *out)
{
	struct reaction_extremes *const *all = of->extremes;
	size_t which = of->count > 1 && all[1]->exact[kind].value > all[0]->exact[kind].value;
	double bound = all[0]->bound[kind];
	for (size_t i = 1; i < of->count; i++)
		bound = fmax(bound, all[i]->bound[kind]);
	*kept = all[which]->exact[kind];
	*out = (struct arm_extreme){.value = converted(of, kind, kept->value),
	                            .bound = converted(of, kind, bound),
	                            .load = load_of(of, which, kept),
	                            .at = kept,
	                            .empty_gripper = which == 1};
	struct base_wrench again;
	chain_wrench(&of->prepared[which], kept->q, kept->speed, kept->acceleration, &again,
	             out->torque);
}

static bool tell_extremes(const struct chain_case *of, struct arm_source *out)
{
	struct reaction_at *kept = arena_take(of->build->arena, REACTION_KINDS, sizeof *kept);
	double bound[REACTION_KINDS];
	if (!kept)
		return false;
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		tell_extreme(of, (enum reaction_kind)kind, &kept[kind], &out->extreme[kind]);
		bound[kind] = out->extreme[kind].bound;
	}
	/* the weight of everything: with less of it, what a lower run takes off is less too */
	out->bound = arm_aligned_loads(of->build->arena, bound, of->weight[0]);
	return out->bound.list != NULL;
}

/* --- the swept set -------------------------------------------------------------------------- */

/* Wrenches in between on each edge of a standing arm's hull: an anchor may be pulled hardest by one
 * (wrench_hull.h: 3 leave 0.01 %). */
enum { ON_EDGE = 3 };

static double between(double from, double to, double share)
{
	return from + share * (to - from);
}

static struct arm_load load_between(const struct arm_load *from, const struct arm_load *to,
                                    double share)
{
	struct arm_load out = *from;
	for (int k = 0; k < 3; k++) {
		out.force[k] = between(from->force[k], to->force[k], share);
		out.moment[k] = between(from->moment[k], to->moment[k], share);
	}
	for (int k = 0; k < 2; k++)
		out.weight_moment[k] = between(from->weight_moment[k], to->weight_moment[k], share);
	return out;
}

/* The hull's wrenches and those on its edges; how many. */
static size_t tell_hull(const struct chain_case *of, size_t which, const struct wrench_hull *hull,
                        struct arm_load *list)
{
	size_t count = hull->count;
	for (size_t k = 0; k < hull->count; k++)
		list[k] = load_of(of, which, &hull->at[k]);
	for (size_t k = 0; k < hull->edges; k++)
		for (int i = 1; i <= ON_EDGE; i++)
			list[count++] = load_between(&list[hull->edge[k].from],
			                             &list[hull->edge[k].to],
			                             i / (ON_EDGE + 1.0));
	return count;
}

/* Both sets in one list, and the wrenches of the printed extremes: their own search may have gone
 * farther. */
static bool tell_swept(const struct chain_case *of, struct arm_source *out)
{
	size_t room = PAYLOADS * (MAX_HULL + ON_EDGE * MAX_HULL_EDGES) + REACTION_KINDS, count = 0;
	struct arm_load *list = arena_take(of->build->scratch, room, sizeof *list), *kept;
	struct wrench_hull *hull = &of->build->work->hull;
	double height = of->build->cell->arm.mount.at[2] / N_MM_PER_N_M;
	if (!list)
		return false;
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		list[count++] = out->extreme[kind].load;
	for (size_t i = 0; i < of->count; i++) {
		enum status status = wrench_hull_build(&of->chain[i], &of->limits, height,
		                                       of->turns, true, of->build->pieces,
		                                       of->build->scratch, hull);
		if (status != DONE)
			return false;
		count += tell_hull(of, i, hull, list + count);
		out->swept_cut |= hull->full;
		out->swept_beyond = fmax(out->swept_beyond, hull->beyond);
	}
	kept = arena_take(of->build->arena, count, sizeof *kept);
	if (!kept)
		return false;
	memcpy(kept, list, count * sizeof *kept);
	out->swept = (struct arm_load_set){kept, count};
	return true;
}

bool arm_chain_source(const struct arm_build *build, enum arm_case arm_case,
                      const struct arm_source *like, bool same_height, struct arm_source *out)
{
	struct chain_case of;
	if (like && same_height) {
		*out = *like;
		return true;
	}
	open_case(build, arm_case, &of);
	if (like) {
		*out = *like;
		out->swept_cut = false;
		out->swept_beyond = 0;
		return tell_swept(&of, out);
	}
	*out = (struct arm_source){.way = WAY_CHAIN, .arm_case = arm_case};
	out->joints = of.chain[0].count;
	out->poses = reaction_sweep_count(&of.chain[0], &of.limits);
	out->name = arena_format(build->arena, "%s, chain", arm_case_names[arm_case]);
	find_extremes(&of);
	return tell_extremes(&of, out) && tell_swept(&of, out) && out->name;
}
