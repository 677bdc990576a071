#include "standing.h"

#include "weights.h"

/* Height of a shoulder above its face over the payload's reach, where it is not known: more than
 * serial arms have; own choice, no source. */
#define SHOULDER_SHARE 0.5

static bool boxed(const struct part *part)
{
	return is_known(part->box_from) && is_known(part->box_to);
}

bool standing_boxed(const struct cell *cell)
{
	const struct part *part = cell->parts.rows;
	for (size_t i = 0; i < cell->parts.count; i++)
		if (boxed(&part[i]))
			return true;
	return false;
}

static bool chain_weighs(const struct arm_chain *chain)
{
	const struct chain_joint *joint = chain->joints.rows;
	for (size_t i = 0; i < chain->joints.count; i++)
		if (!is_known(joint[i].mass))
			return false;
	return chain->joints.count > 0 && is_known(chain->fixed_mass);
}

double standing_arm_mass(const struct arm *arm)
{
	const struct chain_joint *joint = arm->chain.joints.rows;
	double mass = arm->chain.fixed_mass.value;
	if (is_known(arm->mass))
		return arm->mass.value;
	if (!chain_weighs(&arm->chain))
		return 0;
	for (size_t i = 0; i < arm->chain.joints.count; i++)
		mass += joint[i].mass.value;
	return mass;
}

double standing_payload_mass(const struct arm *arm)
{
	return is_known(arm->payload)              ? arm->payload.value
	       : is_known(arm->chain.payload_mass) ? arm->chain.payload_mass.value
	                                           : 0;
}

double standing_shoulder(const struct arm *arm)
{
	bool upward = arm->mounting.value == ON_FLOOR || arm->mounting.value == TILTED;
	double above = is_known(arm->swing.axis_height) ? arm->swing.axis_height.value
	               : is_known(arm->payload_reach) ? SHOULDER_SHARE * arm->payload_reach.value
	                                              : 0;
	return arm->mount.at[2] + (upward ? above : 0);
}

void standing_part_centre(const struct part *part, int corner, double at[3])
{
	double sign[2];
	corner_signs(corner, sign);
	for (int k = 0; k < 3; k++) {
		double from = part->box_from.at[k], to = part->box_to.at[k];
		if (!boxed(part))
			at[k] = part->at.at[k];
		else
			at[k] = k == 2 ? to : 0.5 * (from + to) + 0.5 * sign[k] * (to - from);
	}
}

static void add_mass(struct standing *out, double mass, const double at[3])
{
	out->mass += mass;
	for (int k = 0; k < 3; k++)
		out->first[k] += mass * at[k];
}

struct standing standing_mass(const struct cell *cell, struct standing_state state)
{
	struct standing out = {0};
	const struct arm *arm = &cell->arm;
	double at[3];
	for (size_t i = 0; i < cell->parts.count; i++) {
		const struct part *part = (const struct part *)cell->parts.rows + i;
		standing_part_centre(part, state.corner, at);
		add_mass(&out, part_mass(part, state.full ? RUN_FULL : RUN_LOW), at);
	}
	out.parts = out.mass;
	out.arm = standing_arm_mass(arm);
	out.payload = state.payload ? standing_payload_mass(arm) : 0;
	double shoulder[3] = {arm->mount.at[0], arm->mount.at[1], standing_shoulder(arm)};
	add_mass(&out, out.arm + out.payload, shoulder);
	if (is_known(arm->reach))
		out.reach_moment += out.arm * arm->reach.value;
	if (is_known(arm->payload_reach))
		out.reach_moment += out.payload * arm->payload_reach.value;
	/* an arm that hangs from a ceiling is never above its face */
	out.rise = arm->mounting.value == ON_CEILING ? 0 : out.reach_moment;
	return out;
}

void standing_mass_gaps(const struct cell *cell, found_gap *gap, void *user)
{
	const struct part *part = cell->parts.rows;
	const struct arm *arm = &cell->arm;
	bool mass = false, at = false;
	if (!is_known(cell->parts))
		gap(user, "cell.parts");
	for (size_t i = 0; i < cell->parts.count; i++) {
		mass |= !is_known(part[i].mass);
		at |= !is_known(part[i].at) && !boxed(&part[i]);
	}
	if (mass)
		gap(user, "cell.parts[].mass");
	if (at)
		gap(user, "cell.parts[].at");
	if (!is_known(arm->mount))
		gap(user, "arm.mount");
	if (!is_known(arm->mass) && !chain_weighs(&arm->chain))
		gap(user, "arm.weight.arm");
	if (!is_known(arm->payload) && !is_known(arm->chain.payload_mass))
		gap(user, "arm.weight.payload");
}

void standing_reach_gaps(const struct cell *cell, found_gap *gap, void *user)
{
	const struct arm *arm = &cell->arm;
	if (!is_known(arm->reach) && standing_arm_mass(arm) > 0)
		gap(user, "arm.weight.reach.arm");
	if (!is_known(arm->payload_reach) && standing_payload_mass(arm) > 0)
		gap(user, "arm.weight.reach.payload");
}
