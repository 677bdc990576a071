/* Which numbers the arm's own motion still lacks, and which cases they keep from being computed.
 *
 * A case without any number of its own (no acceleration anywhere, no stop anywhere) is left out on
 * purpose where another way or the data sheet answers for it; else what it lacks is named. A peak
 * factor that is not known is a gap, but the case is computed with 1. */
#include "arm_of_cell.h"

#include "../cell/load_model.h"
#include "pose_grid.h"
#include <string.h>

static const double half_turn = 3.14159265358979323846 * (1 - 1e-12);

enum { MOST_GAPS = 48 };

/* Where the gaps go; `blocking` counts those without which nothing is computed. */
struct gaps {
	arm_gap *gap; /* NULL: only counted */
	void *user;
	const char *told[MOST_GAPS];
	size_t count, blocking;
};

static void tell(struct gaps *gaps, const char *path)
{
	for (size_t i = 0; i < gaps->count; i++)
		if (strcmp(gaps->told[i], path) == 0)
			return;
	if (gaps->count < MOST_GAPS)
		gaps->told[gaps->count++] = path;
	if (gaps->gap)
		gaps->gap(gaps->user, path);
}

static void want(struct gaps *gaps, bool have, const char *path)
{
	if (have)
		return;
	gaps->blocking++;
	tell(gaps, path);
}

/* --- the chain's body ----------------------------------------------------------------------- */

static void want_mounting(const struct arm *arm, struct gaps *gaps)
{
	bool tilted = arm->mounting.value == TILTED;
	if (tilted)
		want(gaps, is_known(arm->mounting_tilt), "arm.mounting_tilt");
	/* a face that leans nowhere has no heading */
	if (arm->mounting.value == ON_WALL || (tilted && arm->mounting_tilt.value > 0))
		want(gaps, is_known(arm->mounting_toward), "arm.mounting_toward");
}

static void want_frame(const struct chain_joint *joint, int convention, struct gaps *gaps)
{
	bool slides = joint->kind.value == PRISMATIC;
	if (convention == PLAIN_FRAMES) {
		/* a frame that is not turned needs no angles */
		want(gaps, is_known(joint->position), "arm.chain.joints[].position");
		return;
	}
	want(gaps, is_known(joint->a), "arm.chain.joints[].a");
	want(gaps, is_known(joint->alpha), "arm.chain.joints[].alpha");
	/* the one to which the joint's position is added may be left out */
	want(gaps, slides || is_known(joint->d), "arm.chain.joints[].d");
	want(gaps, !slides || is_known(joint->theta), "arm.chain.joints[].theta");
}

#define INERTIA_PATHS(of) \
	{of ".xx", of ".yy", of ".zz", of ".xy", of ".yz", of ".xz"}
static const char *const link_inertia_paths[6] = INERTIA_PATHS("arm.chain.joints[].inertia"),
			 *const payload_inertia_paths[6] = INERTIA_PATHS(
				 "arm.chain.payload.inertia");

/* The products of inertia may be left out, as papers that give principal axes do; the word unknown
 * is another thing. */
static void want_inertia(const struct inertia_given *inertia, const char *const path[6],
                         struct gaps *gaps)
{
	const struct number *moment[6] = {&inertia->xx, &inertia->yy, &inertia->zz,
	                                  &inertia->xy, &inertia->yz, &inertia->xz};
	for (int k = 0; k < 6; k++)
		want(gaps, is_known(*moment[k]) || (k > 2 && moment[k]->given.mark.line == 0),
		     path[k]);
}

/* A link without mass has no centre and no inertia. */
static void want_body(const struct chain_joint *joint, struct gaps *gaps)
{
	want(gaps, is_known(joint->mass), "arm.chain.joints[].mass");
	if (is_known(joint->mass) && joint->mass.value == 0)
		return;
	want(gaps, is_known(joint->centre), "arm.chain.joints[].centre");
	want_inertia(&joint->inertia, link_inertia_paths, gaps);
}

static void want_chain(const struct cell *cell, struct gaps *gaps)
{
	const struct arm_chain *chain = &cell->arm.chain;
	const struct chain_joint *joint = chain->joints.rows;
	const struct number *payload = arm_payload_mass(cell);
	double fixed;
	want(gaps, chain->joints.count > 0, "arm.chain.joints");
	if (chain->joints.count == 0)
		return;
	want(gaps, is_known(chain->convention), "arm.chain.convention");
	for (size_t i = 0; i < chain->joints.count; i++) {
		want_frame(&joint[i], chain->convention.value, gaps);
		want_body(&joint[i], gaps);
	}
	want(gaps, arm_fixed_mass(cell, &fixed), "arm.weight.arm");
	want(gaps, payload != NULL, "arm.weight.payload");
	if (payload && payload->value > 0) {
		want(gaps, is_known(chain->payload_centre), "arm.chain.payload.centre");
		want_inertia(&chain->payload_inertia, payload_inertia_paths, gaps);
	}
	want_mounting(&cell->arm, gaps);
}

bool arm_chain_known(const struct cell *cell)
{
	struct gaps gaps = {0};
	want_chain(cell, &gaps);
	return gaps.blocking == 0;
}

/* --- its motion ----------------------------------------------------------------------------- */

static void want_moving(const struct cell *cell, const struct joint_numbers *joint,
                        enum arm_case arm_case, struct gaps *gaps)
{
	want(gaps, is_known(*joint->speed), "arm.motion.joints[].speed");
	if (arm_case == ARM_NORMAL) {
		want(gaps, is_known(*joint->acceleration), "arm.motion.joints[].acceleration");
		return;
	}
	want(gaps, is_known(*joint->stop) || is_known(*joint->stop_time),
	     "arm.motion.joints[].stop");
	if (!is_known(*joint->stop) && is_known(*joint->stop_time) &&
	    !is_known(cell->arm.motion.peak_factor))
		tell(gaps, "arm.motion.peak_factor");
}

static void want_motion(const struct cell *cell, enum arm_case arm_case, struct gaps *gaps)
{
	struct joint_numbers joint;
	for (size_t i = 0; i < cell->arm.chain.joints.count; i++) {
		if (!arm_joint_numbers(cell, i, &joint)) {
			want(gaps, false, "arm.motion.joints");
			return;
		}
		want(gaps, is_known(*joint.from), "arm.motion.joints[].from");
		want(gaps, is_known(*joint.to), "arm.motion.joints[].to");
		if (arm_case != ARM_REST && !joint.fixed)
			want_moving(cell, &joint, arm_case, gaps);
	}
}

static bool motion_begun(const struct cell *cell, enum arm_case arm_case)
{
	struct joint_numbers joint;
	for (size_t i = 0; arm_joint_numbers(cell, i, &joint); i++)
		if (arm_case == ARM_NORMAL ? is_known(*joint.acceleration)
		                           : is_known(*joint.stop) || is_known(*joint.stop_time))
			return true;
	return false;
}

/* --- the lumped arm ------------------------------------------------------------------------- */

static void want_radius(const struct number *radius, const struct number *mass,
                        const struct arm_swing *swing, struct gaps *gaps)
{
	if (!is_known(*mass) || mass->value > 0)
		want(gaps, is_known(*radius) || is_known(swing->reach), "arm.swing.reach");
}

static void want_masses(const struct cell *cell, struct gaps *gaps)
{
	const struct arm *arm = &cell->arm;
	const struct arm_swing *swing = &arm->swing;
	want(gaps, is_known(swing->axes), "arm.swing.axes");
	want(gaps, is_known(arm->mass), "arm.weight.arm");
	want(gaps, is_known(arm->payload), "arm.weight.payload");
	want_radius(&swing->radius, is_known(swing->moving_mass) ? &swing->moving_mass : &arm->mass,
	            swing, gaps);
	want_radius(&swing->payload_radius, &arm->payload, swing, gaps);
	want(gaps, is_known(swing->axis_height), "arm.swing.axis_height");
	if (!is_known(swing->peak_factor))
		tell(gaps, "arm.swing.peak_factor");
}

static bool ramp_known(const struct swing_motion *motion, enum arm_case arm_case)
{
	return arm_case == ARM_NORMAL
	               ? is_known(motion->acceleration) || is_known(motion->start_time)
	               : is_known(motion->stop) || is_known(motion->stop_time);
}

#define AXIS_PATHS(key) \
	{ \
		"arm.swing." key ".speed", "arm.swing." key ".acceleration", \
			"arm.swing." key ".stop" \
	}

static void want_axis(const struct swing_motion *motion, const char *const path[3],
                      enum arm_case arm_case, struct gaps *gaps)
{
	want(gaps, is_known(motion->speed), path[0]);
	want(gaps, ramp_known(motion, arm_case), path[arm_case == ARM_NORMAL ? 1 : 2]);
}

static void want_swing(const struct cell *cell, enum arm_case arm_case, struct gaps *gaps)
{
	static const char *const vertical[3] = AXIS_PATHS("vertical_axis"),
				 *const horizontal[3] = AXIS_PATHS("horizontal_axis");
	const struct arm_swing *swing = &cell->arm.swing;
	if (!is_known(swing->axes))
		return;
	if (swing->axes.value != AXES_HORIZONTAL)
		want_axis(&swing->vertical, vertical, arm_case, gaps);
	if (swing->axes.value != AXES_VERTICAL)
		want_axis(&swing->horizontal, horizontal, arm_case, gaps);
}

/* --- cases ---------------------------------------------------------------------------------- */

static bool history_covers(const struct cell *cell, enum arm_case arm_case)
{
	const struct arm_history *row = cell->arm.history.rows;
	struct gaps gaps = {0};
	want_mounting(&cell->arm, &gaps);
	for (size_t i = 0; i < cell->arm.history.count; i++)
		if (is_known(row[i].of) && row[i].of.value == (int)arm_case && row[i].file.value &&
		    row[i].file.value[0])
			return gaps.blocking == 0;
	return false;
}

static void history_gaps(const struct cell *cell, struct gaps *gaps)
{
	const struct arm_history *row = cell->arm.history.rows;
	want_mounting(&cell->arm, gaps);
	for (size_t i = 0; i < cell->arm.history.count; i++)
		/* a working round must never stand for an emergency stop */
		want(gaps, is_known(row[i].of), "arm.history[].of");
}

bool arm_way_covers(const struct cell *cell, enum arm_way way, enum arm_case arm_case)
{
	struct gaps gaps = {0};
	if (way == WAY_HISTORY)
		return history_covers(cell, arm_case);
	if (!arm_way_given(cell, way))
		return false;
	if (way == WAY_CHAIN) {
		want_chain(cell, &gaps);
		want_motion(cell, arm_case, &gaps);
		return gaps.blocking == 0;
	}
	if (arm_case == ARM_REST || cell->arm.mounting.value != ON_FLOOR)
		return false;
	want_masses(cell, &gaps);
	want_swing(cell, arm_case, &gaps);
	return gaps.blocking == 0;
}

/* Whether that case, of which this way has no number, is answered for by something else. */
static bool elsewhere(const struct cell *cell, enum arm_way way, enum arm_case arm_case)
{
	enum arm_way other = way == WAY_CHAIN ? WAY_SWING : WAY_CHAIN;
	return reaction_known(&cell->arm.reaction[arm_case]) || history_covers(cell, arm_case) ||
	       arm_way_covers(cell, other, arm_case);
}

static void chain_gaps(const struct cell *cell, struct gaps *gaps)
{
	want_chain(cell, gaps);
	want_motion(cell, ARM_REST, gaps);
	for (int k = ARM_NORMAL; k <= ARM_EMERGENCY_STOP; k++)
		if (motion_begun(cell, (enum arm_case)k) ||
		    !elsewhere(cell, WAY_CHAIN, (enum arm_case)k))
			want_motion(cell, (enum arm_case)k, gaps);
}

static void swing_gaps(const struct cell *cell, struct gaps *gaps)
{
	const struct arm_swing *swing = &cell->arm.swing;
	want_masses(cell, gaps);
	for (int k = ARM_NORMAL; k <= ARM_EMERGENCY_STOP; k++)
		if (ramp_known(&swing->vertical, (enum arm_case)k) ||
		    ramp_known(&swing->horizontal, (enum arm_case)k) ||
		    !elsewhere(cell, WAY_SWING, (enum arm_case)k))
			want_swing(cell, (enum arm_case)k, gaps);
}

/* Whether a load depends on how the base frame is turned: not where joint 1 turns all of it through
 * at least half a circle, taken as every heading (arm_chain_source.c). */
static bool turn_matters(const struct cell *cell)
{
	struct motion_limits limits;
	struct prepared_chain prepared;
	struct chain chain;
	if (arm_way_given(cell, WAY_HISTORY))
		return true;
	struct joint_numbers first;
	/* what else is missing is named already */
	if (!arm_way_given(cell, WAY_CHAIN) || !arm_chain_known(cell) ||
	    !arm_joint_numbers(cell, 0, &first) || !is_known(*first.from) || !is_known(*first.to))
		return false;
	arm_chain_of(cell, true, &chain);
	chain_prepare(&chain, &prepared);
	arm_limits_of(cell, ARM_REST, &limits);
	return !first_joint_idle(&prepared) || limits.high[0] - limits.low[0] < half_turn;
}

void arm_gaps(const struct cell *cell, arm_gap *gap, void *user)
{
	struct gaps gaps = {.gap = gap, .user = user};
	if (arm_way_given(cell, WAY_CHAIN))
		chain_gaps(cell, &gaps);
	if (arm_way_given(cell, WAY_SWING))
		swing_gaps(cell, &gaps);
	if (arm_way_given(cell, WAY_HISTORY))
		history_gaps(cell, &gaps);
	if (!is_known(cell->arm.turned) && turn_matters(cell))
		tell(&gaps, "arm.turned");
}
