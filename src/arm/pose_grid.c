/* Positions of the joints on a grid, and the count in mixed radix that goes through them. */
#include "pose_grid.h"

#include <math.h>
#include <stdint.h>

static const double full_turn = 6.28318530717958647692;

/* a cosine that should be 0 comes out as 6e-17; a typed angle or offset is never that near by
 * chance */
#define STRAIGHT 1e-12

bool first_joint_idle(const struct prepared_chain *chain)
{
	if (!chain->count || chain->link[0].kind != JOINT_REVOLUTE)
		return false;
	const struct mat3 *r = &chain->link[0].rotation;
	const struct vec3 *p = &chain->link[0].position, *g = &chain->gravity;
	double weight = STRAIGHT * fabs(g->z);
	return fabs(r->row[0].z) <= STRAIGHT && fabs(r->row[1].z) <= STRAIGHT &&
	       fabs(p->x) <= STRAIGHT && fabs(p->y) <= STRAIGHT && fabs(g->x) <= weight &&
	       fabs(g->y) <= weight;
}

bool last_joint_idle(const struct prepared_chain *chain)
{
	if (!chain->count || chain->link[chain->count - 1].kind != JOINT_REVOLUTE)
		return false;
	const struct prepared_link *link = &chain->link[chain->count - 1];
	const struct vec3 *first = &link->first, *row = link->second.row;
	double moment = STRAIGHT * (fabs(first->x) + fabs(first->y) + fabs(first->z));
	double second = STRAIGHT * (fabs(row[0].x) + fabs(row[1].y) + fabs(row[2].z));
	return fabs(first->x) <= moment && fabs(first->y) <= moment &&
	       fabs(row[0].x - row[1].y) <= second && fabs(row[0].y) <= second &&
	       fabs(row[0].z) <= second && fabs(row[1].z) <= second;
}

static struct grid_joint one_pose(double at)
{
	return (struct grid_joint){1, at, 0, 0};
}

/* Both ends included; a full turn leaves out its end, which is its start. */
static struct grid_joint sweep_joint(enum joint_kind kind, double low, double high, size_t poses)
{
	if (poses <= 1)
		return one_pose((low + high) / 2);
	if (kind == JOINT_REVOLUTE && high - low >= full_turn * (1 - STRAIGHT))
		return (struct grid_joint){poses, low, full_turn / (double)poses, 0};
	return (struct grid_joint){poses, low, (high - low) / (double)(poses - 1), 0};
}

static struct grid_joint bound_joint(enum joint_kind kind, double low, double high, size_t poses)
{
	double step = full_turn / (double)poses;
	if (kind == JOINT_REVOLUTE)
		return (struct grid_joint){poses, low, step, 0};
	/* cos(phi) = cos(-phi): half the circle, its ends included, stands for all of it; an even
	 * number of points puts one on either end */
	poses += poses & 1;
	return (struct grid_joint){poses / 2 + 1, (low + high) / 2, full_turn / (double)poses,
	                           (high - low) / 2};
}

void pose_grid_open(const struct prepared_chain *chain, const struct motion_limits *limits,
                    enum grid_purpose purpose, struct pose_grid *out)
{
	bool idle = first_joint_idle(chain), round = last_joint_idle(chain);
	size_t circle = limits->bound_poses ? limits->bound_poses : limits->poses;
	circle = circle < BOUND_LEAST_POSES ? BOUND_LEAST_POSES : circle;
	out->count = chain->count;
	for (size_t i = 0; i < chain->count; i++) {
		enum joint_kind kind = chain->link[i].kind;
		double low = limits->low[i], high = limits->high[i];
		if (!(low < high) || (i == 0 && idle) || (i + 1 == chain->count && round))
			out->joint[i] = one_pose((low + high) / 2);
		else if (purpose == GRID_SWEEP)
			out->joint[i] = sweep_joint(kind, low, high, limits->poses);
		else
			out->joint[i] = bound_joint(kind, low, high, circle);
	}
}

size_t pose_grid_total(const struct pose_grid *grid)
{
	size_t total = 1;
	for (size_t i = 0; i < grid->count; i++) {
		if (total > SIZE_MAX / grid->joint[i].poses)
			return SIZE_MAX;
		total *= grid->joint[i].poses;
	}
	return total;
}

size_t pose_grid_circle(const struct grid_joint *joint)
{
	if (joint->poses <= 1)
		return 0;
	return joint->half != 0 ? 2 * (joint->poses - 1) : joint->poses;
}

static double position(const struct grid_joint *joint, size_t digit)
{
	double along = joint->step * (double)digit;
	return joint->start + (joint->half != 0 ? joint->half * cos(along) : along);
}

void pose_grid_place(const struct pose_grid *grid, size_t index, struct grid_place *out)
{
	for (size_t i = grid->count; i-- > 0;) {
		const struct grid_joint *joint = &grid->joint[i];
		out->digit[i] = index % joint->poses;
		out->q[i] = position(joint, out->digit[i]);
		index /= joint->poses;
	}
}

size_t pose_grid_next(const struct pose_grid *grid, struct grid_place *place)
{
	size_t i = grid->count;
	while (i-- > 0) {
		const struct grid_joint *joint = &grid->joint[i];
		bool carry = place->digit[i] + 1 == joint->poses;
		place->digit[i] = carry ? 0 : place->digit[i] + 1;
		place->q[i] = position(joint, place->digit[i]);
		if (!carry)
			return i;
	}
	return 0;
}

double joint_within(double q, double low, double high, enum joint_kind kind)
{
	if (kind == JOINT_REVOLUTE && high - low >= full_turn)
		return q < low ? q + full_turn : q > high ? q - full_turn : q;
	return fmin(fmax(q, low), high);
}
