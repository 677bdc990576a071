/* What the joints may do, the working cycle and the lumped arm: what contradicts itself without any
 * mechanics. */
#include "load_model.h"
#include "validity_parts.h"
#include <stdio.h>
#include <string.h>

/* A pose on the very end of its range: rounding of degrees and inches [rad] and [mm]. */
#define ON_THE_END 1e-9

/* --- joints --- */

/* Of a joint of the chain; a row that has no joint is told by its count. */
static const struct chain_joint *joint_of(const struct validity *validity, size_t index)
{
	const struct list *joints = &validity->cell->arm.chain.joints;
	return index < joints->count ? (const struct chain_joint *)joints->rows + index : NULL;
}

static bool slides(const struct chain_joint *joint)
{
	return joint->kind.value == PRISMATIC;
}

/* A number of a joint in both of its meanings. */
struct joint_number {
	const char *key;
	const struct number *turn, *slide;
	enum dimension turn_dimension, slide_dimension;
};

static void check_kind(struct validity *validity, const struct joint_number *number, size_t index)
{
	const struct chain_joint *joint = joint_of(validity, index);
	if (!joint)
		return;
	bool slide = slides(joint);
	const struct number *wrong = slide ? number->turn : number->slide;
	enum dimension wanted = slide ? number->slide_dimension : number->turn_dimension;
	char hint[DIAGNOSTIC_HINT];
	if (!is_known(*wrong))
		return;
	snprintf(hint, sizeof hint,
	         "write its %s, such as %s, or kind: %s at arm.chain.joints[%zu]",
	         dimension_name(wanted), dimension_example(wanted),
	         slide ? "revolute" : "prismatic", index + 1);
	validity_fault(validity, FAULT_CONTRADICTION, wrong->given.mark,
	               validity_row("arm.motion.joints", index, number->key).text, hint,
	               "joint %zu %s, but its %s is %s", index + 1, slide ? "slides" : "turns",
	               number->key,
	               validity_show_number(validity, wrong,
	                                    slide ? number->turn_dimension
	                                          : number->slide_dimension)
	                       .text);
}

static void check_kinds(struct validity *validity, const struct joint_motion *m, size_t index)
{
	const struct joint_number numbers[] = {
		{"from", &m->from, &m->slide_from, DIM_ANGLE, DIM_LENGTH},
		{"to", &m->to, &m->slide_to, DIM_ANGLE, DIM_LENGTH},
		{"speed", &m->speed, &m->slide_speed, DIM_TURN_SPEED, DIM_SPEED},
		{"acceleration", &m->acceleration, &m->slide_acceleration, DIM_TURN_ACCELERATION,
	         DIM_ACCELERATION},
		{"stop", &m->stop, &m->slide_stop, DIM_TURN_ACCELERATION, DIM_ACCELERATION}};
	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++)
		check_kind(validity, &numbers[i], index);
}

static void check_range(struct validity *validity, const struct number *from,
                        const struct number *to, enum dimension dimension, size_t index)
{
	if (!is_known(*from) || !is_known(*to) || from->value <= to->value)
		return;
	validity_fault(validity, FAULT_CONTRADICTION, from->given.mark,
	               validity_row("arm.motion.joints", index, "from").text,
	               "write the lower end as from and the upper one as to",
	               "the range begins at %s, above its end at %s",
	               validity_show_number(validity, from, dimension).text,
	               validity_show_number(validity, to, dimension).text);
}

/* Two statements of one ramp: which of them holds is not for a program to choose. `path` is that of
 * the time. */
static void check_ramp(struct validity *validity, const struct number *rate,
                       const struct number *time, const char *path, const char *key)
{
	const char *time_key = strrchr(path, '.') + 1;
	char hint[DIAGNOSTIC_HINT];
	if (!is_known(*rate) || !is_known(*time))
		return;
	snprintf(hint, sizeof hint,
	         "keep %s or %s, whichever the papers state; in a setup, write the other one as "
	         "unknown",
	         key, time_key);
	validity_fault(validity, FAULT_CONTRADICTION, time->given.mark, path, hint,
	               "%s and %s are both given", key, time_key);
}

static void check_joint(struct validity *validity, const struct joint_motion *motion, size_t index)
{
	const struct number *stop = is_known(motion->stop) ? &motion->stop : &motion->slide_stop;
	check_kinds(validity, motion, index);
	check_range(validity, &motion->from, &motion->to, DIM_ANGLE, index);
	check_range(validity, &motion->slide_from, &motion->slide_to, DIM_LENGTH, index);
	check_ramp(validity, stop, &motion->stop_time,
	           validity_row("arm.motion.joints", index, "stop_time").text, "stop");
}

static void check_count(struct validity *validity)
{
	const struct arm *arm = &validity->cell->arm;
	size_t rows = arm->motion.joints.count, joints = arm->chain.joints.count;
	/* without a chain it is the chain that is not known: no fault */
	if (rows > 0 && joints > 0 && rows != joints)
		validity_fault(validity, FAULT_CONTRADICTION, arm->motion.joints.given.mark,
		               "arm.motion.joints",
		               "write one row for each joint of arm.chain.joints, in its order",
		               "%zu row%s for the %zu joint%s of the chain", rows,
		               rows == 1 ? "" : "s", joints, joints == 1 ? "" : "s");
}

/* --- working cycle --- */

static struct mark pose_mark(const struct validity *validity, const struct cycle_pose *pose)
{
	struct mark mark = validity_mark(pose->at.given.mark, pose->angles.given.mark);
	return validity_mark(validity_mark(mark, pose->slides.given.mark),
	                     validity->cell->arm.motion.cycle.given.mark);
}

static void check_times(struct validity *validity, const struct list *cycle)
{
	const struct cycle_pose *pose = cycle->rows;
	const struct number *before = NULL;
	for (size_t i = 0; i < cycle->count; i++) {
		const struct number *at = &pose[i].at;
		if (!is_known(*at))
			continue;
		struct validity_path path = validity_row("arm.motion.cycle", i, "at");
		if (i == 0 && at->value > 0)
			validity_fault(validity, FAULT_CONTRADICTION, at->given.mark, path.text,
			               "write at: 0 s in the first row: times count from there",
			               "the cycle begins at %s",
			               validity_show_number(validity, at, DIM_TIME).text);
		if (before && at->value <= before->value)
			validity_fault(validity, FAULT_CONTRADICTION, at->given.mark, path.text,
			               "write the poses in the order of their times",
			               "%s is not after the pose before it, at %s",
			               validity_show_number(validity, at, DIM_TIME).text,
			               validity_show_number(validity, before, DIM_TIME).text);
		before = at;
	}
}

static size_t count_joints(const struct list *joints, enum joint_words_kind kind)
{
	const struct chain_joint *joint = joints->rows;
	size_t count = 0;
	for (size_t i = 0; i < joints->count; i++)
		count += slides(&joint[i]) == (kind == PRISMATIC);
	return count;
}

/* As many positions as joints of that kind: a pose of which half is not known is none. */
static bool check_positions(struct validity *validity, const struct cycle_pose *pose, size_t index,
                            enum joint_words_kind kind)
{
	const struct numbers *numbers = kind == PRISMATIC ? &pose->slides : &pose->angles;
	const char *key = kind == PRISMATIC ? "slides" : "angles";
	const char *word = kind == PRISMATIC ? "prismatic" : "revolute";
	size_t joints = count_joints(&validity->cell->arm.chain.joints, kind);
	struct validity_path path = validity_row("arm.motion.cycle", index, key);
	char hint[DIAGNOSTIC_HINT];
	if (numbers->count == joints)
		return true;
	snprintf(hint, sizeof hint, "write one for each %s joint of arm.chain.joints, in its order",
	         word);
	validity_fault(validity, is_known(*numbers) ? FAULT_CONTRADICTION : FAULT_MISSING_KEY,
	               validity_mark(numbers->given.mark, pose_mark(validity, pose)), path.text,
	               hint, "%zu %s for the %zu %s joint%s of the chain", numbers->count, key,
	               joints, word, joints == 1 ? "" : "s");
	return false;
}

/* A pose beyond the range: either of the two is wrong, and the sweep knows the range alone. */
static void check_within(struct validity *validity, const struct numbers *numbers, size_t index,
                         enum joint_words_kind kind)
{
	const struct arm *arm = &validity->cell->arm;
	const struct joint_motion *motion = arm->motion.joints.rows;
	size_t next = 0;
	for (size_t i = 0; i < arm->motion.joints.count && next < numbers->count; i++) {
		bool slide = slides(joint_of(validity, i));
		if (slide != (kind == PRISMATIC))
			continue;
		const struct number *from = slide ? &motion[i].slide_from : &motion[i].from;
		const struct number *to = slide ? &motion[i].slide_to : &motion[i].to;
		double at = numbers->values[next++];
		bool below = is_known(*from) && at < from->value - ON_THE_END;
		if (!below && !(is_known(*to) && at > to->value + ON_THE_END))
			continue;
		enum dimension dimension = slide ? DIM_LENGTH : DIM_ANGLE;
		const struct number *end = below ? from : to;
		validity_fault(
			validity, FAULT_CONTRADICTION, numbers->given.mark,
			validity_row("arm.motion.cycle", index, slide ? "slides" : "angles").text,
			"check the pose and arm.motion.joints", "joint %zu at %s is %s its range, which %s at %s",
			i + 1, validity_show(validity, at, dimension).text,
			below ? "below" : "above", below ? "begins" : "ends",
			validity_show_number(validity, end, dimension).text);
	}
}

static void check_pose(struct validity *validity, const struct cycle_pose *pose, size_t index)
{
	const struct arm *arm = &validity->cell->arm;
	bool angles = check_positions(validity, pose, index, REVOLUTE);
	bool positions = check_positions(validity, pose, index, PRISMATIC);
	if (arm->motion.joints.count != arm->chain.joints.count)
		return;
	if (angles)
		check_within(validity, &pose->angles, index, REVOLUTE);
	if (positions)
		check_within(validity, &pose->slides, index, PRISMATIC);
}

static void check_cycle(struct validity *validity)
{
	const struct list *cycle = &validity->cell->arm.motion.cycle;
	const struct cycle_pose *pose = cycle->rows;
	check_times(validity, cycle);
	if (cycle->count == 1)
		validity_fault(validity, FAULT_CONTRADICTION, pose_mark(validity, pose),
		               "arm.motion.cycle",
		               "write the poses and their times; the last row closes the cycle",
		               "a cycle of one pose has no motion");
	if (!chain_given(validity->cell))
		return;
	for (size_t i = 0; i < cycle->count; i++)
		check_pose(validity, &pose[i], i);
}

/* --- lumped arm --- */

static void check_radius(struct validity *validity, const struct number *radius, const char *path)
{
	const struct number *reach = &validity->cell->arm.swing.reach;
	if (!is_known(*radius) || !is_known(*reach) || radius->value <= reach->value)
		return;
	validity_fault(validity, FAULT_CONTRADICTION, radius->given.mark, path,
	               "reach is to the farthest point of arm and payload: no radius is larger",
	               "%s is beyond the reach, %s",
	               validity_show_number(validity, radius, DIM_LENGTH).text,
	               validity_show_number(validity, reach, DIM_LENGTH).text);
}

static void check_swing_axis(struct validity *validity, const struct swing_motion *motion,
                             const char *axis)
{
	char start[DIAGNOSTIC_PATH], stop[DIAGNOSTIC_PATH];
	snprintf(start, sizeof start, "arm.swing.%s.start_time", axis);
	snprintf(stop, sizeof stop, "arm.swing.%s.stop_time", axis);
	check_ramp(validity, &motion->acceleration, &motion->start_time, start, "acceleration");
	check_ramp(validity, &motion->stop, &motion->stop_time, stop, "stop");
}

static void check_swing(struct validity *validity)
{
	const struct arm *arm = &validity->cell->arm;
	const struct arm_swing *swing = &arm->swing;
	check_radius(validity, &swing->radius, "arm.swing.radius");
	check_radius(validity, &swing->payload_radius, "arm.swing.payload_radius");
	check_swing_axis(validity, &swing->vertical, "vertical_axis");
	check_swing_axis(validity, &swing->horizontal, "horizontal_axis");
	if (is_known(swing->moving_mass) && is_known(arm->mass) &&
	    swing->moving_mass.value > arm->mass.value)
		validity_fault(validity, FAULT_CONTRADICTION, swing->moving_mass.given.mark,
		               "arm.swing.moving_mass",
		               "write the part of arm.weight.arm that moves, or leave it out",
		               "%s move of an arm of %s",
		               validity_show_number(validity, &swing->moving_mass, DIM_MASS).text,
		               validity_show_number(validity, &arm->mass, DIM_MASS).text);
}

void validity_motion(struct validity *validity)
{
	const struct list *joints = &validity->cell->arm.motion.joints;
	const struct joint_motion *motion = joints->rows;
	check_count(validity);
	for (size_t i = 0; i < joints->count; i++)
		check_joint(validity, &motion[i], i);
	check_cycle(validity);
	check_swing(validity);
}
