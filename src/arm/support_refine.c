/* Coordinate search with steps that halve, as reaction_refine.c; the accelerations are exact at
 * every step. */
#include "support_refine.h"

#include "pose_support.h"
#include <math.h>
#include <string.h>

/* From half a grid step to 2^-25 of it, where a smooth top is flat to 1e-15. */
enum { HALVINGS = 24, MOST_ROUNDS = 200, MOST_RETURNS = 2 };

struct climb {
	const struct prepared_chain *chain;
	const struct motion_limits *limits;
	const struct support_direction *direction;
	double height;
	struct reaction_at *at;                  /* the best so far */
	double step[2 * MAX_JOINTS_OF_ARM];      /* of positions, then of speeds; 0: not varied */
};

static void open_view(const struct climb *climb, const struct pose_terms *terms,
                      struct support_view *view)
{
	support_view_open(climb->direction->space, climb->height, terms, climb->limits, view);
}

/* Takes the motion of the trial when it is farther. */
static bool keep_farther(struct climb *climb, const struct pose_terms *terms,
                         const struct support_choice *choice, struct reaction_at *trial)
{
	if (!(choice->value > climb->at->value))
		return false;
	pose_support_fill(terms, climb->limits, climb->height, climb->direction, choice, trial);
	/* the plain sum differs in the last digits; the search must rise all the same */
	if (!(trial->value > climb->at->value))
		return false;
	*climb->at = *trial;
	return true;
}

/* One coordinate, one step. */
static bool try_step(struct climb *climb, size_t coordinate, double step)
{
	struct reaction_at trial = *climb->at;
	const struct motion_limits *limits = climb->limits;
	size_t count = climb->chain->count, joint = coordinate % count;
	double share[MAX_JOINTS_OF_ARM], most = limits->speed[joint];
	if (coordinate < count)
		trial.q[joint] = joint_within(trial.q[joint] + step, limits->low[joint],
		                              limits->high[joint],
		                              climb->chain->link[joint].kind);
	else
		trial.speed[joint] = fmin(fmax(trial.speed[joint] + step, -most), most);
	for (size_t j = 0; j < count; j++)
		share[j] = limits->speed[j] > 0 ? trial.speed[j] / limits->speed[j] : 0;
	struct pose_terms terms;
	struct support_view view;
	struct support_choice choice;
	chain_terms(climb->chain, trial.q, &terms);
	open_view(climb, &terms, &view);
	pose_support_at_speed(&view, climb->direction, share, &choice);
	return keep_farther(climb, &terms, &choice, &trial);
}

static void climb_up(struct climb *climb)
{
	double scale = 1;
	int halvings = 0;
	for (int round = 0; round < MOST_ROUNDS && halvings < HALVINGS; round++) {
		bool moved = false;
		for (size_t i = 0; i < 2 * climb->chain->count; i++) {
			double step = scale * climb->step[i];
			if (step > 0)
				moved = try_step(climb, i, step) || try_step(climb, i, -step) ||
				        moved;
		}
		if (moved)
			continue;
		halvings++;
		scale /= 2;
	}
}

/* At the top another combination of speeds may be farther: then up again from there. */
static bool other_signs(struct climb *climb)
{
	struct reaction_at trial = *climb->at;
	struct pose_terms terms;
	struct support_view view;
	struct support_choice choice;
	chain_terms(climb->chain, trial.q, &terms);
	open_view(climb, &terms, &view);
	bool reaches;
	if (!pose_support(&view, climb->direction, trial.value, trial.value, &reaches, &choice))
		return false;
	for (size_t j = 0; j < terms.count; j++)
		trial.speed[j] = choice.speed[j] * climb->limits->speed[j];
	return keep_farther(climb, &terms, &choice, &trial);
}

void support_refine(const struct prepared_chain *chain, const struct motion_limits *limits,
                    const struct pose_grid *grid, double height,
                    const struct support_direction *direction, struct reaction_at *at)
{
	struct climb climb = {chain, limits, direction, height, at, {0}};
	bool idle = direction->round && first_joint_idle(chain);
	int returns = 0;
	for (size_t i = 0; i < chain->count; i++) {
		double range = limits->high[i] - limits->low[i];
		double wide = grid->joint[i].poses > 1 ? grid->joint[i].step : range / 2;
		climb.step[i] = range > 0 && !(i == 0 && idle) ? wide / 2 : 0;
		climb.step[chain->count + i] = limits->speed[i] / 2;
	}
	at->value = support_value(direction,
	                          support_seen(direction->space, height, &at->wrench));
	do
		climb_up(&climb);
	while (other_signs(&climb) && ++returns < MOST_RETURNS);
}
