/* The cell's arm in the units and shapes of the kernels. */
#include "arm_of_cell.h"

#include "../cell/load_model.h"
#include <math.h>
#include <string.h>

#define M_PER_MM 1e-3

static const double right_angle = 1.57079632679489661923;

static double known(const struct number *number)
{
	return number->given.origin == ABSENT ? 0 : number->value;
}

bool arm_way_given(const struct cell *cell, enum arm_way way)
{
	const struct arm *arm = &cell->arm;
	if (way == WAY_CHAIN)
		return chain_given(cell) || arm->motion.joints.count > 0;
	return way == WAY_SWING ? swing_given(cell) : history_given(cell);
}

/* --- rotations ------------------------------------------------------------------------------ */

/* Cosine and sine, exact where they are 0 or 1: a wall is a wall. */
static struct vec2 direction(double angle)
{
	double turns = angle / right_angle, whole = round(turns);
	if (fabs(turns - whole) > 1e-14 * (1 + fabs(whole)))
		return (struct vec2){cos(angle), sin(angle)};
	int quarter = (int)fmod(whole, 4);
	quarter = quarter < 0 ? quarter + 4 : quarter;
	static const struct vec2 exact[4] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
	return exact[quarter];
}

/* About one of the fixed axes, 0: x, 1: y, 2: z. */
static struct mat3 turn(int axis, double angle)
{
	struct vec2 d = direction(angle);
	double c = d.x, s = d.y;
	if (axis == 0)
		return (struct mat3){{{1, 0, 0}, {0, c, -s}, {0, s, c}}};
	if (axis == 1)
		return (struct mat3){{{c, 0, s}, {0, 1, 0}, {-s, 0, c}}};
	return (struct mat3){{{c, -s, 0}, {s, c, 0}, {0, 0, 1}}};
}

static void store(const struct mat3 *m, double out[9])
{
	for (int i = 0; i < 3; i++) {
		out[3 * i] = m->row[i].x;
		out[3 * i + 1] = m->row[i].y;
		out[3 * i + 2] = m->row[i].z;
	}
}

static double tilt_of(const struct arm *arm)
{
	switch (arm->mounting.value) {
	case ON_WALL:
		return right_angle;
	case ON_CEILING:
		return 2 * right_angle;
	case TILTED:
		return known(&arm->mounting_tilt);
	default:
		return 0;
	}
}

void arm_mounting_axes(const struct arm *arm, double rotation[9])
{
	double toward = known(&arm->mounting_toward);
	struct mat3 lean = turn(2, toward), tilt = turn(1, tilt_of(arm)), back = turn(2, -toward);
	struct mat3 turned = turn(2, known(&arm->turned));
	struct mat3 out = mat3_product(&lean, &tilt);
	out = mat3_product(&out, &back);
	out = mat3_product(&out, &turned);
	store(&out, rotation);
}

/* --- the chain ------------------------------------------------------------------------------ */

static void inertia_of(const struct inertia_given *given, double out[6])
{
	const struct number *const order[6] = {&given->xx, &given->yy, &given->zz,
	                                       &given->xy, &given->yz, &given->xz};
	for (int i = 0; i < 6; i++)
		out[i] = known(order[i]);
}

static void place_of(const struct point *point, double out[3])
{
	for (int i = 0; i < 3; i++)
		out[i] = is_known(*point) ? M_PER_MM * point->at[i] : 0;
}

static void link_of(const struct chain_joint *joint, struct link *out)
{
	out->kind = joint->kind.value == PRISMATIC ? JOINT_PRISMATIC : JOINT_REVOLUTE;
	out->a = M_PER_MM * known(&joint->a);
	out->alpha = known(&joint->alpha);
	out->d = M_PER_MM * known(&joint->d);
	out->theta = known(&joint->theta);
	/* about the fixed axes x, then y, then z: R = Rz(yaw) Ry(pitch) Rx(roll) */
	struct mat3 yaw = turn(2, known(&joint->yaw)), pitch = turn(1, known(&joint->pitch)),
		    roll = turn(0, known(&joint->roll));
	struct mat3 rotation = mat3_product(&yaw, &pitch);
	rotation = mat3_product(&rotation, &roll);
	store(&rotation, out->rotation);
	place_of(&joint->position, out->position);
	out->mass = known(&joint->mass);
	place_of(&joint->centre, out->centre);
	inertia_of(&joint->inertia, out->inertia);
}

const struct number *arm_payload_mass(const struct cell *cell)
{
	const struct arm *arm = &cell->arm;
	if (is_known(arm->chain.payload_mass))
		return &arm->chain.payload_mass;
	return is_known(arm->payload) ? &arm->payload : NULL;
}

static enum chain_convention convention_of(const struct arm_chain *chain)
{
	static const enum chain_convention same[] = {[STANDARD_DH] = CHAIN_STANDARD_DH,
	                                             [MODIFIED_DH] = CHAIN_MODIFIED_DH,
	                                             [PLAIN_FRAMES] = CHAIN_FRAMES};
	return same[chain->convention.value];
}

void arm_chain_of(const struct cell *cell, bool payload, struct chain *out)
{
	const struct arm_chain *chain = &cell->arm.chain;
	const struct chain_joint *joint = chain->joints.rows;
	const struct number *mass = arm_payload_mass(cell);
	memset(out, 0, sizeof *out);
	out->convention = convention_of(chain);
	out->count = chain->joints.count < MAX_JOINTS_OF_ARM ? chain->joints.count
	                                                     : MAX_JOINTS_OF_ARM;
	for (size_t i = 0; i < out->count; i++)
		link_of(&joint[i], &out->link[i]);
	if (payload && mass && mass->value > 0) {
		out->payload_mass = mass->value;
		place_of(&chain->payload_centre, out->payload_centre);
		inertia_of(&chain->payload_inertia, out->payload_inertia);
	}
	out->gravity[2] = -STANDARD_GRAVITY;
	arm_mounting_axes(&cell->arm, out->mounting);
}

bool arm_fixed_mass(const struct cell *cell, double *mass)
{
	const struct arm *arm = &cell->arm;
	const struct chain_joint *joint = arm->chain.joints.rows;
	*mass = known(&arm->chain.fixed_mass);
	if (is_known(arm->chain.fixed_mass))
		return true;
	double links = 0;
	for (size_t i = 0; i < arm->chain.joints.count; i++)
		links += known(&joint[i].mass);
	*mass = fmax(known(&arm->mass) - links, 0);
	return is_known(arm->mass);
}

/* --- its limits ----------------------------------------------------------------------------- */

bool arm_joint_numbers(const struct cell *cell, size_t index, struct joint_numbers *out)
{
	const struct arm *arm = &cell->arm;
	const struct chain_joint *joint = arm->chain.joints.rows;
	const struct joint_motion *m = arm->motion.joints.rows;
	if (index >= arm->motion.joints.count || index >= arm->chain.joints.count)
		return false;
	m += index;
	out->slides = joint[index].kind.value == PRISMATIC;
	out->from = out->slides ? &m->slide_from : &m->from;
	out->to = out->slides ? &m->slide_to : &m->to;
	out->speed = out->slides ? &m->slide_speed : &m->speed;
	out->acceleration = out->slides ? &m->slide_acceleration : &m->acceleration;
	out->stop = out->slides ? &m->slide_stop : &m->stop;
	out->stop_time = &m->stop_time;
	out->fixed = is_known(*out->from) && is_known(*out->to) &&
	             !(out->from->value < out->to->value);
	return true;
}

static double peak_of(const struct number *factor)
{
	return is_known(*factor) ? factor->value : 1;
}

/* [rad/s2] or [mm/s2] */
static double acceleration_of(const struct joint_numbers *joint, enum arm_case arm_case,
                              double peak)
{
	if (arm_case == ARM_NORMAL)
		return known(joint->acceleration);
	if (is_known(*joint->stop) || !is_known(*joint->stop_time))
		return known(joint->stop);
	/* loads by time have the mean; its peak is 1 (uniform) to 2 (triangle) times that */
	return peak * known(joint->speed) / joint->stop_time->value;
}

void arm_limits_of(const struct cell *cell, enum arm_case arm_case, struct motion_limits *out)
{
	const struct arm_motion *motion = &cell->arm.motion;
	struct joint_numbers joint;
	memset(out, 0, sizeof *out);
	out->poses = (size_t)motion->poses.value;
	out->bound_poses = (size_t)motion->bound_poses.value;
	for (size_t i = 0; i < MAX_JOINTS_OF_ARM && arm_joint_numbers(cell, i, &joint); i++) {
		double unit = joint.slides ? M_PER_MM : 1;
		out->low[i] = unit * known(joint.from);
		out->high[i] = unit * known(joint.to);
		if (arm_case == ARM_REST || joint.fixed)
			continue;
		out->speed[i] = unit * known(joint.speed);
		out->acceleration[i] = unit * acceleration_of(&joint, arm_case,
		                                              peak_of(&motion->peak_factor));
	}
}

/* --- the lumped arm ------------------------------------------------------------------------- */

static struct swing_axis axis_of(const struct swing_motion *motion, double peak)
{
	return (struct swing_axis){
		.speed = known(&motion->speed),
		.normal = {known(&motion->start_time), known(&motion->acceleration), peak},
		.stop = {known(&motion->stop_time), known(&motion->stop), peak}};
}

static double or_reach(const struct number *radius, const struct arm_swing *swing)
{
	return is_known(*radius) ? radius->value : known(&swing->reach);
}

void arm_swing_of(const struct cell *cell, struct swing *out, enum swing_axes *axes)
{
	static const enum swing_axes same[] = {[AXES_VERTICAL] = SWING_ABOUT_VERTICAL,
	                                       [AXES_HORIZONTAL] = SWING_ABOUT_HORIZONTAL,
	                                       [AXES_BOTH] = SWING_ABOUT_BOTH};
	const struct arm_swing *swing = &cell->arm.swing;
	double arm = known(&cell->arm.mass), peak = peak_of(&swing->peak_factor);
	double moving = is_known(swing->moving_mass) ? swing->moving_mass.value : arm;
	*axes = same[swing->axes.value];
	*out = (struct swing){.fixed_mass = fmax(arm - moving, 0),
	                      .moving_mass = moving,
	                      .moving_radius = or_reach(&swing->radius, swing),
	                      .payload_mass = known(&cell->arm.payload),
	                      .payload_radius = or_reach(&swing->payload_radius, swing),
	                      .axis_height = known(&swing->axis_height),
	                      .vertical = axis_of(&swing->vertical, peak),
	                      .horizontal = axis_of(&swing->horizontal, peak)};
}
