/* A pose denies nearly every direction by the cylinder that holds its wrenches; only the others are
 * looked into. A block of poses that denies them all is left out of later passes, whose directions
 * lie between the present ones (wrench_hull.c says why that loses nothing). */
#include "support_sweep.h"

#include "pose_frames.h"
#include "pose_support.h"
#include <math.h>
#include <string.h>

/* Poses looked at first where nothing is known, spread over the grid. */
enum { SCOUTS = 256 };

enum status support_sweep_open(const struct chain *chain, const struct motion_limits *limits,
                               double height, struct arena *arena, struct support_sweep *out)
{
	memset(out, 0, sizeof *out);
	out->limits = limits;
	out->height = height;
	chain_prepare(chain, &out->chain);
	pose_grid_open(&out->chain, limits, GRID_SWEEP, &out->grid);
	out->total = pose_grid_total(&out->grid);
	out->block = out->total / MAX_BLOCKS + 1;
	out->blocks = (out->total - 1) / out->block + 1;
	out->ask = arena_take(arena, MAX_ASKS, sizeof *out->ask);
	out->dead = arena_take(arena, out->blocks, sizeof *out->dead);
	out->found = arena_take(arena, (size_t)SUPPORT_PIECES * MAX_ASKS, sizeof *out->found);
	return out->ask && out->dead && out->found ? DONE : NO_MEMORY;
}

/* --- one pose ----------------------------------------------------------------------------------
 */

struct posed {
	const struct pose_terms *terms;
	struct support_view view[SUPPORT_SPACES];
	struct support_outline outline[SUPPORT_SPACES];
};

static void posed_open(const struct support_sweep *sweep, const struct pose_terms *terms,
                       struct posed *out)
{
	out->terms = terms;
	for (int space = 0; space < SUPPORT_SPACES; space++) {
		if (!sweep->wanted[space])
			continue;
		support_view_open((enum support_space)space, sweep->height, terms, sweep->limits,
		                  &out->view[space]);
		support_outline_of(&out->view[space], &out->outline[space]);
	}
}

/* Larger, or equal and earlier in the grid. */
static void keep_larger(struct support_found *known, double value, size_t pose)
{
	if (value > known->value || (value == known->value && pose < known->pose))
		*known = (struct support_found){value, pose};
}

/* Whether the pose may pass the floor of the ask. */
static bool ask_pose(const struct posed *posed, const struct support_ask *ask, size_t pose,
                     struct support_found *known)
{
	enum support_space space = ask->direction.space;
	struct support_choice choice;
	bool reaches;
	if (support_at_most(&ask->direction, &posed->outline[space]) < ask->floor)
		return false;
	if (pose_support(&posed->view[space], &ask->direction, ask->floor, known->value, &reaches,
	                 &choice))
		keep_larger(known, choice.value, pose);
	return reaches;
}

/* --- a piece -----------------------------------------------------------------------------------
 */

/* Where a walk through the grid stands; `moved`: the first joint not up to date. */
struct walk {
	struct grid_place place;
	struct pose_frames frames;
	size_t next, moved;
};

static void walk_to(const struct support_sweep *sweep, size_t pose, struct walk *walk)
{
	if (walk->next == pose)
		return;
	pose_grid_place(&sweep->grid, pose, &walk->place);
	walk->next = pose;
	walk->moved = 0;
}

static void walk_terms(const struct support_sweep *sweep, struct walk *walk, struct pose_terms *out)
{
	pose_frames_place(&sweep->chain, walk->place.q, walk->moved, &walk->frames);
	pose_frames_terms(&sweep->chain, &walk->frames, out);
	walk->next++;
	walk->moved = pose_grid_next(&sweep->grid, &walk->place);
}

/* Whether any of its poses may answer. */
static bool ask_block(const struct support_sweep *sweep, size_t block, struct walk *walk,
                      struct support_found known[])
{
	struct pose_terms terms;
	struct posed posed;
	bool alive = false;
	size_t from = block * sweep->block, to = from + sweep->block;
	walk_to(sweep, from, walk);
	for (size_t pose = from; pose < to && pose < sweep->total; pose++) {
		walk_terms(sweep, walk, &terms);
		posed_open(sweep, &terms, &posed);
		for (size_t i = 0; i < sweep->asks; i++)
			alive = ask_pose(&posed, &sweep->ask[i], pose, &known[i]) || alive;
	}
	return alive;
}

static void sweep_piece(void *job, size_t index)
{
	struct support_sweep *sweep = job;
	struct support_found *known = sweep->found + index * MAX_ASKS;
	struct walk walk = {.next = sweep->total};
	size_t from = index * sweep->blocks / SUPPORT_PIECES;
	size_t to = (index + 1) * sweep->blocks / SUPPORT_PIECES;
	for (size_t i = 0; i < sweep->asks; i++)
		known[i] = sweep->ask[i].found;
	for (size_t block = from; block < to; block++)
		if (!sweep->dead[block] && !ask_block(sweep, block, &walk, known) && sweep->drop)
			sweep->dead[block] = 1;
}

/* --- a pass ------------------------------------------------------------------------------------
 */

static void seed_pose(const struct support_sweep *sweep, size_t pose, struct support_ask *ask)
{
	struct grid_place place;
	struct pose_terms terms;
	struct posed posed;
	pose_grid_place(&sweep->grid, pose, &place);
	chain_terms(&sweep->chain, place.q, &terms);
	posed_open(sweep, &terms, &posed);
	ask_pose(&posed, ask, pose, &ask->found);
}

/* What is known early denies much: the ends of a chord, else poses from all over the grid. */
static void seed(const struct support_sweep *sweep, struct support_ask *ask)
{
	ask->found = (struct support_found){-HUGE_VAL, 0};
	for (size_t i = 0; i < ask->seeds; i++)
		seed_pose(sweep, ask->seed[i], ask);
	if (ask->seeds)
		return;
	size_t step = sweep->total / SCOUTS + 1;
	for (size_t pose = 0; pose < sweep->total; pose += step)
		seed_pose(sweep, pose, ask);
}

void support_sweep_run(struct support_sweep *sweep, const struct pieces *pieces)
{
	memset(sweep->wanted, 0, sizeof sweep->wanted);
	for (size_t i = 0; i < sweep->asks; i++)
		sweep->wanted[sweep->ask[i].direction.space] = true;
	for (size_t i = 0; i < sweep->asks; i++)
		seed(sweep, &sweep->ask[i]);
	pieces_run(pieces, "wrenches that can govern", SUPPORT_PIECES, sweep_piece, sweep);
	for (size_t piece = 0; piece < SUPPORT_PIECES; piece++)
		for (size_t i = 0; i < sweep->asks; i++) {
			const struct support_found *of = &sweep->found[piece * MAX_ASKS + i];
			keep_larger(&sweep->ask[i].found, of->value, of->pose);
		}
}

void support_sweep_wrench(const struct support_sweep *sweep, const struct support_ask *ask,
                          struct reaction_at *out)
{
	struct grid_place place;
	struct pose_terms terms;
	struct support_view view;
	struct support_choice choice;
	bool reaches;
	memset(out, 0, sizeof *out);
	pose_grid_place(&sweep->grid, ask->found.pose, &place);
	memcpy(out->q, place.q, sweep->chain.count * sizeof *out->q);
	out->pose = ask->found.pose;
	chain_terms(&sweep->chain, place.q, &terms);
	support_view_open(ask->direction.space, sweep->height, &terms, sweep->limits, &view);
	/* without a floor something is always found, were it not for overflow */
	if (!pose_support(&view, &ask->direction, -HUGE_VAL, -HUGE_VAL, &reaches, &choice))
		return;
	for (size_t j = 0; j < terms.count; j++)
		out->speed[j] = choice.speed[j] * sweep->limits->speed[j];
	pose_support_fill(&terms, sweep->limits, sweep->height, &ask->direction, &choice, out);
}
