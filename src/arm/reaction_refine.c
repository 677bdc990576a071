/* Local search: coordinate steps over positions and speeds (the exploring part of Hooke and Jeeves
 * 1961, from memory), the accelerations exact at every trial. No gradient: the largest over the
 * accelerations has edges. It starts from the extreme of the grid and from poses spread over the
 * ranges, since the highest pose of a coarse grid need not stand on the highest hill. It can still
 * miss that; the bound cannot. */
#include "reaction_sweep.h"

#include "pose_frames.h"
#include "pose_grid.h"
#include "pose_reaction.h"
#include <math.h>
#include <string.h>

/* Steps are halved this often: to tell hills apart, and from a grid step to 1e-9 of it, where a
 * smooth top is flat to rounding. */
enum { COARSE_HALVINGS = 8, HALVINGS = 30, MOST_ROUNDS = 2000, MOST_RETURNS = 8 };
/* Poses to start from besides the grid's. Of 200 values of random arms ten times as many raised
 * one, by 0.03 %; the grid's extreme alone was short in one of eight, by up to 6 %. */
enum { STARTS = 40 };

struct climb {
	const struct prepared_chain *chain;
	const struct motion_limits *limits;
	enum reaction_kind kind;
	struct reaction_at *at;                  /* the best so far */
	double step[2 * MAX_JOINTS_OF_ARM];      /* of positions, then of speeds; 0: not varied */
};

/* Takes the trial when it is larger. */
static bool keep_larger(struct climb *climb, const struct reaction_at *trial)
{
	if (!(trial->value > climb->at->value))
		return false;
	*climb->at = *trial;
	return true;
}

/* One coordinate, one step. */
static bool try_step(struct climb *climb, size_t coordinate, double step)
{
	struct reaction_at trial = *climb->at;
	struct pose_terms terms;
	size_t count = climb->chain->count, joint = coordinate % count;
	const struct motion_limits *limits = climb->limits;
	double speed[MAX_JOINTS_OF_ARM], most = limits->speed[joint];
	memcpy(speed, trial.speed, sizeof speed);
	if (coordinate < count)
		trial.q[joint] = joint_within(trial.q[joint] + step, limits->low[joint],
		                              limits->high[joint],
		                              climb->chain->link[joint].kind);
	else
		speed[joint] = fmin(fmax(speed[joint] + step, -most), most);
	chain_terms(climb->chain, trial.q, &terms);
	pose_reaction_at_speed(climb->kind, &terms, limits, speed, &trial);
	return keep_larger(climb, &trial);
}

/* Steps as wide as the grid, since the top may lie anywhere between its poses. */
static void open_steps(struct climb *climb, const struct pose_grid *grid)
{
	const struct motion_limits *limits = climb->limits;
	for (size_t i = 0; i < grid->count; i++) {
		double range = limits->high[i] - limits->low[i];
		bool varied = range > 0 && !(i == 0 && first_joint_idle(climb->chain));
		double wide = grid->joint[i].poses > 1 ? grid->joint[i].step : range / 2;
		climb->step[i] = varied ? wide / 2 : 0;
		climb->step[grid->count + i] = limits->speed[i] / 2;
	}
}

static void climb_up(struct climb *climb, const struct pose_grid *grid, int most_halvings)
{
	open_steps(climb, grid);
	int halvings = 0;
	for (int round = 0; round < MOST_ROUNDS && halvings < most_halvings; round++) {
		bool moved = false;
		for (size_t i = 0; i < 2 * grid->count; i++) {
			double step = climb->step[i];
			if (step > 0)
				moved = try_step(climb, i, step) || try_step(climb, i, -step) ||
				        moved;
		}
		if (moved)
			continue;
		halvings++;
		for (size_t i = 0; i < 2 * grid->count; i++)
			climb->step[i] /= 2;
	}
}

/* At the top another combination of speeds may be larger: then up again from there. */
static bool other_signs(struct climb *climb)
{
	struct reaction_at trial = *climb->at;
	struct pose_terms terms;
	chain_terms(climb->chain, trial.q, &terms);
	return pose_reaction(climb->kind, &terms, climb->limits, trial.value, &trial) &&
	       keep_larger(climb, &trial);
}

/* To the top of the hill that the search stands on. */
static void to_the_top(struct climb *climb, const struct pose_grid *grid)
{
	int returns = 0;
	do
		climb_up(climb, grid, HALVINGS);
	while (other_signs(climb) && ++returns < MOST_RETURNS);
}

/* Pose `number` of a sequence that fills the ranges evenly, the fractions of number x sqrt(prime)
 * (Kronecker and Weyl, textbook): the same on every machine, since a square root is exact to the
 * last digit. */
static void spread_pose(const struct climb *climb, int number, double q[])
{
	static const int prime[MAX_JOINTS_OF_ARM] = {2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37};
	memcpy(q, climb->at->q, sizeof climb->at->q);
	for (size_t i = 0; i < climb->chain->count; i++) {
		double along = number * sqrt(prime[i]), low = climb->limits->low[i];
		double range = climb->limits->high[i] - low;
		if (climb->step[i] > 0)
			q[i] = low + range * (along - floor(along));
	}
}

/* Whether a climb from there ends higher; it is then taken. */
static bool higher_hill(struct climb *climb, const struct pose_grid *grid, int number)
{
	struct reaction_at trial = {.pose = climb->at->pose};
	struct climb other = *climb;
	struct pose_terms terms;
	other.at = &trial;
	spread_pose(climb, number, trial.q);
	chain_terms(climb->chain, trial.q, &terms);
	pose_reaction(climb->kind, &terms, climb->limits, -HUGE_VAL, &trial);
	climb_up(&other, grid, COARSE_HALVINGS);
	return keep_larger(climb, &trial);
}

void reaction_refine(const struct chain *chain, const struct motion_limits *limits,
                     struct reaction_extremes *extremes)
{
	struct prepared_chain prepared;
	struct pose_grid grid;
	chain_prepare(chain, &prepared);
	pose_grid_open(&prepared, limits, GRID_SWEEP, &grid);
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		struct climb climb = {.chain = &prepared, .limits = limits,
		                      .kind = (enum reaction_kind)kind, .at = &extremes->exact[kind]};
		if (climb.at->value == -HUGE_VAL)
			continue;
		to_the_top(&climb, &grid);
		bool higher = false;
		for (int number = 1; number <= STARTS; number++)
			higher = higher_hill(&climb, &grid, number) || higher;
		if (higher)
			to_the_top(&climb, &grid);
	}
}
