/* A working cycle: the chain from pose to pose, at rest in each. */
#include "arm_of_cell.h"

#include <math.h>

/* Instants of a move, each evenly after the one before. The quintic's acceleration changes by no
 * more than 5 % of its peak from one to the next: between two of them a smooth peak of the wrench
 * hides less than 1e-4 of itself. 63 moves make 12 601 instants. */
enum { MOVE_INSTANTS = 200 };

#define N_MM_PER_N_M 1e3
#define M_PER_MM 1e-3

struct instant {
	double time;
	double q[MAX_JOINTS_OF_ARM], speed[MAX_JOINTS_OF_ARM], acceleration[MAX_JOINTS_OF_ARM];
};

static bool pose_known(const struct cell *cell, const struct cycle_pose *pose)
{
	const struct chain_joint *joint = cell->arm.chain.joints.rows;
	size_t slides = 0, count = cell->arm.chain.joints.count;
	for (size_t i = 0; i < count; i++)
		slides += joint[i].kind.value == PRISMATIC;
	return is_known(pose->at) && pose->angles.count == count - slides &&
	       pose->slides.count == slides;
}

size_t arm_cycle_instants(const struct cell *cell)
{
	const struct list *cycle = &cell->arm.motion.cycle;
	const struct cycle_pose *pose = cycle->rows;
	if (cycle->count < 2 || !arm_chain_known(cell))
		return 0;
	for (size_t i = 0; i < cycle->count; i++)
		if (!pose_known(cell, &pose[i]) ||
		    (i > 0 && !(pose[i].at.value > pose[i - 1].at.value)))
			return 0;
	return (cycle->count - 1) * MOVE_INSTANTS + 1;
}

/* Positions of the joints in their own order, m and rad. */
static void positions(const struct cell *cell, const struct cycle_pose *pose, double q[])
{
	const struct chain_joint *joint = cell->arm.chain.joints.rows;
	size_t angle = 0, slide = 0;
	for (size_t i = 0; i < cell->arm.chain.joints.count; i++)
		q[i] = joint[i].kind.value == PRISMATIC ? M_PER_MM * pose->slides.values[slide++]
		                                        : pose->angles.values[angle++];
}

/* The share s(u) of the way and its rates by time; u = t / T in [0, 1]. */
static void quintic(double u, double period, double out[3])
{
	double u2 = u * u;
	out[0] = u * u2 * (10 - 15 * u + 6 * u2);
	out[1] = 30 * u2 * (1 - 2 * u + u2) / period;
	out[2] = 60 * u * (1 - 3 * u + 2 * u2) / (period * period);
}

static void instant_at(const struct cell *cell, size_t number, struct instant *out)
{
	const struct list *cycle = &cell->arm.motion.cycle;
	size_t move = number / MOVE_INSTANTS, last = cycle->count - 2;
	move = move > last ? last : move;
	double u = (double)(number - move * MOVE_INSTANTS) / MOVE_INSTANTS, share[3];
	const struct cycle_pose *from = (const struct cycle_pose *)cycle->rows + move,
				*to = from + 1;
	double start[MAX_JOINTS_OF_ARM], end[MAX_JOINTS_OF_ARM];
	double period = to->at.value - from->at.value;
	positions(cell, from, start);
	positions(cell, to, end);
	quintic(u, period, share);
	out->time = from->at.value + u * period;
	for (size_t i = 0; i < cell->arm.chain.joints.count; i++) {
		double way = end[i] - start[i];
		out->q[i] = start[i] + share[0] * way;
		out->speed[i] = share[1] * way;
		out->acceleration[i] = share[2] * way;
	}
}

void arm_cycle_wrench(const struct cell *cell, size_t number, double *time, struct arm_load *out)
{
	const double still[MAX_JOINTS_OF_ARM] = {0};
	struct instant at;
	struct chain chain;
	struct prepared_chain prepared;
	struct base_wrench wrench, weight;
	double fixed;
	arm_chain_of(cell, true, &chain);
	chain_prepare(&chain, &prepared);
	arm_fixed_mass(cell, &fixed);
	instant_at(cell, number, &at);
	chain_wrench(&prepared, at.q, at.speed, at.acceleration, &wrench, NULL);
	chain_wrench(&prepared, at.q, still, still, &weight, NULL);
	fixed *= STANDARD_GRAVITY;
	*out = (struct arm_load){.weight = fixed - weight.force[2]};
	for (int i = 0; i < 3; i++) {
		out->force[i] = wrench.force[i];
		out->moment[i] = N_MM_PER_N_M * wrench.moment[i];
	}
	out->force[2] -= fixed;
	out->weight_moment[0] = N_MM_PER_N_M * weight.moment[0];
	out->weight_moment[1] = N_MM_PER_N_M * weight.moment[1];
	*time = at.time;
}
