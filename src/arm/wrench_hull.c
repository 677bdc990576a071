/* Rounds of questions to the grid, until no direction brings a new vertex; then a local search from
 * each.
 *
 * Why blocks of poses can be left out (support_sweep.c): a later direction is a positive sum of the
 * normals of the two edges (facets) at the same corner (edge), one of which sees the new vertex. A
 * pose beyond neither of them is not beyond what replaces them. */
#include "wrench_hull.h"

#include "hull_front.h"
#include "pose_support.h"
#include "support_refine.h"
#include "support_sweep.h"
#include <math.h>
#include <string.h>

/* Each round about doubles the vertices; the rest is for what rounding may do. */
enum { MOST_ROUNDS = 100 };

struct work {
	struct support_sweep sweep;
	struct hull_question question[MAX_ASKS];
	size_t order[MAX_ASKS];                  /* of answers, the farthest beyond first */
	struct hull_front front[SUPPORT_SPACES];
	struct reaction_at at[MAX_HULL];
	/* sums of those in which a wrench was the farthest, if it ever was */
	struct vec3 direction[MAX_GRID_HULL][SUPPORT_SPACES];
	bool answered[MAX_GRID_HULL][SUPPORT_SPACES];
	size_t count;
	bool full;
	double beyond;
};

/* --- rounds ------------------------------------------------------------------------------------
 */

static double beyond(const struct work *work, size_t ask)
{
	return work->sweep.ask[ask].found.value - work->question[ask].level;
}

static void sort_answers(struct work *work)
{
	for (size_t i = 0; i < work->sweep.asks; i++) {
		size_t at = i;
		for (; at > 0 && beyond(work, work->order[at - 1]) < beyond(work, i); at--)
			work->order[at] = work->order[at - 1];
		work->order[at] = i;
	}
}

static bool same_wrench(const struct base_wrench *a, const struct base_wrench *b)
{
	for (int i = 0; i < 3; i++)
		if (a->force[i] != b->force[i] || a->moment[i] != b->moment[i])
			return false;
	return true;
}

/* Number of a known wrench that is the same; count if there is none. */
static size_t known(const struct work *work, const struct reaction_at *at)
{
	size_t i = 0;
	while (i < work->count && !same_wrench(&work->at[i].wrench, &at->wrench))
		i++;
	return i;
}

static void add_wrench(struct work *work, const struct reaction_at *at)
{
	work->at[work->count++] = *at;
	for (int space = 0; space < SUPPORT_SPACES; space++)
		hull_front_add(&work->front[space], at);
}

/* In the sizes of the front, lest one component hide the others; the first round has none yet, so
 * its directions count by their heading alone. */
static void add_direction(const struct hull_front *front, struct vec3 d, struct vec3 *sum)
{
	struct vec3 own = {d.x * front->wide, d.y * front->wide, d.z * front->high};
	*sum = vec3_add(*sum, own);
}

/* One answer. `before`: wrenches known when it was asked. */
static void take_answer(struct work *work, size_t ask, size_t before)
{
	const struct hull_question *question = &work->question[ask];
	struct hull_front *front = &work->front[question->space];
	const struct support_ask *asked = &work->sweep.ask[ask];
	struct reaction_at at;
	if (question->kind != ASK_FIRST && !(beyond(work, ask) > HULL_TOLERANCE)) {
		hull_front_close(front, question);
		return;
	}
	support_sweep_wrench(&work->sweep, asked, &at);
	size_t is = known(work, &at);
	if (is < before)
		hull_front_close(front, question);
	if (is == MAX_GRID_HULL) {
		work->full = true;
		return;
	}
	if (is == work->count)
		add_wrench(work, &at);
	work->answered[is][question->space] = true;
	add_direction(front, asked->direction.d, &work->direction[is][question->space]);
}

static void take_answers(struct work *work)
{
	size_t before = work->count;
	sort_answers(work);
	for (size_t i = 0; i < work->sweep.asks; i++)
		take_answer(work, work->order[i], before);
}

static void first_round(struct work *work, const struct pieces *pieces)
{
	for (int space = 0; space < SUPPORT_SPACES; space++)
		hull_front_first(&work->front[space], &work->sweep, work->question);
	support_sweep_run(&work->sweep, pieces);
	take_answers(work);
	for (int space = 0; space < SUPPORT_SPACES; space++)
		hull_front_size(&work->front[space], work->at, work->count);
}

/* Asks for all that is open; false when nothing is. */
static bool ask_round(struct work *work, const struct pieces *pieces)
{
	bool all = true;
	work->sweep.asks = 0;
	for (int space = 0; space < SUPPORT_SPACES; space++)
		all = hull_front_ask(&work->front[space], &work->sweep, work->question) && all;
	/* what the axes of a flat set bring may turn the hull to any side */
	for (size_t i = 0; i < work->sweep.asks; i++)
		all = all && work->question[i].kind != ASK_AXIS;
	work->sweep.drop = all;
	if (work->sweep.asks)
		support_sweep_run(&work->sweep, pieces);
	return work->sweep.asks > 0;
}

/* With no room left: how far out the rest is. */
static void measure(struct work *work, const struct pieces *pieces)
{
	ask_round(work, pieces);
	for (size_t i = 0; i < work->sweep.asks; i++)
		work->beyond = fmax(work->beyond, beyond(work, i));
}

static void search_grid(struct work *work, const struct pieces *pieces)
{
	work->beyond = 10 * HULL_TOLERANCE;
	first_round(work, pieces);
	for (int round = 0; round < MOST_ROUNDS && ask_round(work, pieces); round++) {
		take_answers(work);
		if (work->full)
			break;
	}
	if (work->full)
		measure(work, pieces);
}

/* --- local search ------------------------------------------------------------------------------
 */

/* Where the search from a wrench in a space goes; false: it was no answer there. */
static bool refining_direction(const struct work *work, size_t index, enum support_space space,
                               struct support_direction *out)
{
	const struct hull_front *front = &work->front[space];
	struct vec3 d = work->direction[index][space];
	double size = sqrt(vec3_dot(d, d));
	/* directions that cancel, all round a single point: the resultant is what matters */
	if (size < 1e-9)
		d = (struct vec3){1, 0, 0};
	else
		d = vec3_scale(1 / size, d);
	out->space = space;
	out->round = front->round;
	out->d = (struct vec3){d.x / front->wide, d.y / front->wide, d.z / front->high};
	return work->answered[index][space];
}

/* A wrench and a space. */
static void refine_piece(void *job, size_t index)
{
	struct work *work = job;
	const struct support_sweep *sweep = &work->sweep;
	struct reaction_at *at = &work->at[work->count + index];
	struct support_direction direction;
	*at = work->at[index / SUPPORT_SPACES];
	if (!refining_direction(work, index / SUPPORT_SPACES,
	                        (enum support_space)(index % SUPPORT_SPACES), &direction))
		return;
	double from = support_value(&direction, support_seen(direction.space, sweep->height,
	                                                     &at->wrench));
	support_refine(&sweep->chain, sweep->limits, &sweep->grid, sweep->height, &direction, at);
	if (!(at->value > from + HULL_TOLERANCE))
		*at = work->at[index / SUPPORT_SPACES];
}

/* Adds those that are farther than where they came from; the others are known. */
static void refine(struct work *work, const struct pieces *pieces)
{
	size_t from = work->count;
	pieces_run(pieces, "wrenches that can govern, refined", SUPPORT_SPACES * from, refine_piece,
	           work);
	for (size_t i = 0; i < SUPPORT_SPACES * from; i++) {
		struct reaction_at at = work->at[from + i];
		if (known(work, &at) == work->count)
			add_wrench(work, &at);
	}
}

/* Those that are vertices in the end. */
static void keep_vertices(struct work *work, struct wrench_hull *out)
{
	bool vertex[MAX_HULL] = {false};
	size_t number[MAX_HULL];
	for (int space = 0; space < SUPPORT_SPACES; space++)
		hull_front_vertices(&work->front[space], vertex);
	out->count = 0;
	for (size_t i = 0; i < work->count; i++) {
		number[i] = vertex[i] ? out->count : MAX_HULL;
		if (vertex[i])
			out->at[out->count++] = work->at[i];
	}
	out->edges = hull_front_edges(&work->front[SPACE_TENSION], number, MAX_HULL_EDGES,
	                              out->edge);
}

enum status wrench_hull_build(const struct chain *chain, const struct motion_limits *limits,
                              double height, bool turns, bool refined,
                              const struct pieces *pieces, struct arena *arena,
                              struct wrench_hull *out)
{
	struct work *work = arena_take(arena, 1, sizeof *work);
	memset(out, 0, sizeof *out);
	if (!work || support_sweep_open(chain, limits, height, arena, &work->sweep) != DONE)
		return NO_MEMORY;
	for (int space = 0; space < SUPPORT_SPACES; space++)
		hull_front_open((enum support_space)space, turns, height, &work->front[space]);
	search_grid(work, pieces);
	out->full = work->full;
	out->beyond = work->beyond;
	if (refined)
		refine(work, pieces);
	keep_vertices(work, out);
	return DONE;
}
