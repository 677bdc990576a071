/* The arm's chain, motion, swing and histories from bytes to the cell: whole arms in each
 * convention, the unit that decides between two rows of numbers, and setups that take keys away. */
#include "../../src/cell/load_model.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <string.h>

#define HEAD "standfast: 1\nanchors: {at: unknown}\n"
#define DEG 0.017453292519943295

static struct reading reading;

static const struct cell *read_good(const char *text)
{
	reading_open(&reading, text);
	cr_assert_eq(reading.status, DONE, "%s\n%s", text, reading_faults(&reading));
	return reading.cell;
}

/* As given, but for one rounding of a factor with pi or of a power of ten. */
static void expect_value(const struct number *number, double value)
{
	cr_expect_eq(number->given.origin, GIVEN, "%g", value);
	cr_expect_float_eq(number->value, value, 4e-16 * (value < 0 ? -value : value),
	                   "%.17g, %.17g", number->value, value);
}

/* An invented arm of six turning joints. */
static const char *const by_table =
	HEAD
	"arm:\n"
	"  mount: [0 mm, 0 mm, 850 mm]\n"
	"  mounting: tilted\n"
	"  mounting_tilt: 30\xC2\xB0\n"
	"  mounting_toward: 90 deg\n"
	"  turned: -45 deg\n"
	"  weight: {arm: 41 kg, payload: 12 kg}\n"
	"  chain:\n"
	"    convention: standard_dh\n"
	"    fixed_mass: 9 kg\n"
	"    payload: {mass: 12 kg, centre: [0 mm, 0 mm, 180 mm], inertia: {xx: 500 kg cm2, yy: 0.05 kg m2, zz: 170 lb in2}}\n"
	"    joints:\n"
	"      - {name: turntable, d: 400 mm, alpha: 90 deg, mass: 12 kg, centre: [0 mm, -50 mm, 0 mm],\n"
	"         inertia: {xx: 0.12 kg m2, yy: 0.1 kg m2, zz: 0.1 kg m2, xy: -10 kg cm2, yz: 0 kg m2, xz: 5e3 kg mm2}}\n"
	"      - {name: shoulder, a: 560 mm, mass: 10 kg}\n"
	"      - {a: 35 mm, alpha: 90 deg, mass: 5 kg, inertia: unknown}\n"
	"      - {d: 515 mm, alpha: -90 deg, mass: 3 kg}\n"
	"      - {kind: revolute, alpha: 90 deg, mass: 1.5 kg}\n"
	"      - {d: 80 mm, theta: 1 rad, mass: 0.5 kg}\n"
	"  motion:\n"
	"    peak_factor: 2\n"
	"    joints:\n"
	"      - {from: -170 deg, to: 170 deg, speed: 170 deg/s, acceleration: 400 deg/s2, stop: 900 \xC2\xB0/s\xC2\xB2}\n"
	"      - {from: -190 deg, to: 45 deg, speed: 2.6 rad/s, acceleration: 7 rad/s^2, stop_time: 350 ms}\n"
	"      - {from: -120 deg, to: 156 deg, speed: 30 rpm, stop_time: 0.35 s}\n"
	"      - {from: -185 deg, to: 185 deg, speed: 360\xC2\xB0/s}\n"
	"      - {from: -2 rad, to: 2 rad, speed: unknown}\n"
	"      - {from: -350 deg, to: 350 deg, speed: 500 deg/s}\n"
	"    cycle:\n"
	"      - {at: 0 s, angles: [0 deg, -90 deg, 90 deg, 0 deg, 45 deg, 0 deg]}\n"
	"      - {at: 1200 ms, angles: [90 deg, -60 deg, 90 deg, 0 deg, 0.5 rad, 0 deg]}\n"
	"    cycles_a_year: 500000\n"
	"  service_life: 10 years\n"
	"  range_limit: 2 kN\n";

Test(reader_arm, a_table_of_six_joints)
{
	const struct arm *arm = &read_good(by_table)->arm;
	const struct chain_joint *joint = arm->chain.joints.rows;
	cr_assert_eq(arm->chain.joints.count, 6);
	cr_expect_eq(arm->chain.convention.value, STANDARD_DH);
	cr_expect_eq(arm->mounting.value, TILTED);
	expect_value(&arm->mounting_tilt, 30 * DEG);
	expect_value(&arm->turned, -45 * DEG);
	expect_value(&arm->chain.fixed_mass, 9);
	expect_value(&arm->chain.payload_inertia.xx, 0.05);
	expect_value(&arm->chain.payload_inertia.zz, 170 * 0.0002926396534292);
	cr_expect_eq(arm->chain.payload_centre.at[2], 180);
	cr_expect_str_eq(joint[0].name.value, "turntable");
	expect_value(&joint[0].d, 400);
	expect_value(&joint[0].alpha, 90 * DEG);
	expect_value(&joint[0].inertia.xy, -0.001);
	expect_value(&joint[0].inertia.xz, 0.005);
	cr_expect_eq(joint[0].centre.at[1], -50);
	cr_expect_eq(joint[1].kind.value, REVOLUTE);
	cr_expect_eq(joint[1].kind.given.origin, DEFAULT);
	cr_expect_str_eq(joint[2].name.value, "", "no page meets a NULL");
	cr_expect_eq(joint[2].inertia.zz.given.origin, ABSENT);
	cr_expect_eq(joint[3].inertia.zz.given.origin, ABSENT);
	expect_value(&joint[5].theta, 1);
	reading_close(&reading);
}

Test(reader_arm, its_motion)
{
	const struct arm *arm = &read_good(by_table)->arm;
	const struct joint_motion *motion = arm->motion.joints.rows;
	const struct cycle_pose *pose = arm->motion.cycle.rows;
	cr_assert_eq(arm->motion.joints.count, 6);
	expect_value(&motion[0].from, -170 * DEG);
	expect_value(&motion[0].stop, 900 * DEG);
	expect_value(&motion[1].acceleration, 7);
	expect_value(&motion[1].stop_time, 0.35);
	expect_value(&motion[2].speed, 3.1415926535897932);
	expect_value(&motion[3].speed, 6.2831853071795865);
	cr_expect_not(is_known(motion[0].slide_from) || is_known(motion[0].slide_stop));
	cr_expect_gt(motion[4].speed.given.mark.line, 0, "unknown, whichever it were");
	cr_expect_gt(motion[4].slide_speed.given.mark.line, 0);
	cr_assert_eq(arm->motion.cycle.count, 2);
	cr_assert_eq(pose[1].angles.count, 6);
	expect_value(&pose[1].at, 1.2);
	cr_expect_float_eq(pose[1].angles.values[1], -60 * DEG, 1e-15);
	cr_expect_eq(pose[1].angles.values[4], 0.5);
	cr_expect_eq(arm->motion.poses.value, 8);
	cr_expect_eq(arm->motion.judged_by.value, BY_BOUND);
	expect_value(&arm->service_life, 10 * 365 * 86400.0);
	expect_value(&arm->range_limit, 2000);
	cr_expect(chain_given(reading.cell) && load_model_given(reading.cell));
	cr_expect_not(swing_given(reading.cell) || history_given(reading.cell));
	reading_close(&reading);
}

/* The same place in a file holds an angle here and a length there. */
static const char *const by_frames =
	HEAD
	"arm:\n"
	"  chain:\n"
	"    convention: frames\n"
	"    joints:\n"
	"      - {position: [0 mm, 0 mm, 150 mm], mass: 12 kg, centre: [0 mm, 0 mm, 100 mm]}\n"
	"      - {position: [0 mm, 0 mm, 250 mm], roll: -90 deg, mass: 10 kg}\n"
	"      - {position: [22 in, 0 in, 0 in], yaw: 90 deg, mass: 5 kg}\n"
	"      - {position: [0 mm, 515 mm, 0 mm], roll: 90 deg, pitch: 0 deg, mass: 3 kg}\n"
	"      - {kind: prismatic, position: [0 mm, 0 mm, 0 mm], roll: -90 deg, mass: 2 kg}\n"
	"      - {position: [0 mm, 80 mm, 0 mm], roll: 90 deg, mass: 0.5 kg}\n"
	"  motion:\n"
	"    joints:\n"
	"      - {from: -170 deg, to: 170 deg, speed: 170 deg/s}\n"
	"      - {from: -190 deg, to: 45 deg, speed: 170 deg/s}\n"
	"      - {from: -120 deg, to: 156 deg, speed: 170 deg/s}\n"
	"      - {from: -185 deg, to: 185 deg, speed: 360 deg/s}\n"
	"      - {from: 0 mm, to: 31.5 in, speed: 60 in/s, acceleration: 5 m/s2, stop: 400 in/s^2}\n"
	"      - {from: -350 deg, to: 350 deg, speed: 500 deg/s}\n"
	"    cycle:\n"
	"      - {at: 0 s, angles: [0 deg, 0 deg, 0 deg, 0 deg, 0 deg], slides: [0 mm]}\n"
	"      - {at: 900 ms, angles: [0 deg, 0 deg, 0 deg, 0 deg, 0.1 rad], slides: [10 in]}\n"
	"earthquake: none\n"
	"setups:\n"
	"  - {name: as it stands}\n"
	"  - {name: still, arm.motion: unknown, earthquake: {code: en1998, soil: 1.2}}\n"
	"  - {name: other papers, arm.chain: unknown, arm.motion: unknown, arm.swing: {axes: both}}\n"
	"  - {name: open, earthquake: unknown}\n";

Test(reader_arm, frames_with_a_sliding_joint)
{
	const struct arm *arm = &read_good(by_frames)->arm;
	const struct chain_joint *joint = arm->chain.joints.rows;
	const struct joint_motion *slide = (const struct joint_motion *)arm->motion.joints.rows + 4;
	const struct cycle_pose *pose = arm->motion.cycle.rows;
	cr_expect_eq(arm->chain.convention.value, PLAIN_FRAMES);
	cr_expect_eq(joint[4].kind.value, PRISMATIC);
	cr_expect_float_eq(joint[2].position.at[0], 558.8, 1e-12);
	expect_value(&joint[2].yaw, 90 * DEG);
	expect_value(&slide->slide_from, 0);
	expect_value(&slide->slide_to, 800.1);
	expect_value(&slide->slide_speed, 1524);
	expect_value(&slide->slide_acceleration, 5000);
	expect_value(&slide->slide_stop, 10160);
	cr_expect_not(is_known(slide->from) || is_known(slide->to) || is_known(slide->speed) ||
	              is_known(slide->acceleration) || is_known(slide->stop));
	cr_expect_str_eq(slide->slide_speed.unit->name, "in/s");
	cr_expect_eq(pose[1].slides.values[0], 254);
	reading_close(&reading);
}

/* The word unknown takes back all that stands below it, and a map takes back none. */
Test(reader_arm, setups_take_whole_ways_away)
{
	const struct cell *cell = read_good(by_frames);
	const struct setup *setup = cell->setups.rows;
	cr_expect_eq(setup[0].cell->earthquake.given.origin, GIVEN);
	cr_expect_eq(setup[0].cell->arm.motion.joints.count, 6);
	cr_expect_eq(setup[1].cell->earthquake.given.origin, ABSENT);
	cr_expect_eq(setup[1].cell->earthquake.code.value, QUAKE_EN1998);
	cr_expect_eq(setup[1].cell->arm.motion.joints.count, 0);
	cr_expect_eq(setup[1].cell->arm.motion.cycle.given.origin, ABSENT);
	cr_expect(chain_given(setup[1].cell));
	cr_expect_not(chain_given(setup[2].cell));
	cr_expect(swing_given(setup[2].cell));
	cr_expect_eq(setup[3].cell->earthquake.given.origin, ABSENT, "no longer none");
	cr_expect_gt(setup[3].cell->earthquake.given.mark.line, 0, "where it says unknown");
	cr_expect_eq(cell->earthquake.given.origin, GIVEN, "the file's own cell stays");
	reading_close(&reading);
	cell = read_good("standfast: 1\nearthquake: {code: en1998, soil: 1.2}\n"
	                 "anchors: {at: {unit: mm, points: [[0, 0]]}, plate_hole: 14 mm}\n"
	                 "setups: [{name: a, earthquake: none}, {name: b, anchors: unknown}]\n");
	setup = cell->setups.rows;
	cr_expect_eq(setup[0].cell->earthquake.given.origin, GIVEN);
	cr_expect_not(is_known(setup[0].cell->earthquake.code));
	cr_expect_not(is_known(setup[1].cell->anchors.plate_hole));
	cr_expect_eq(setup[1].cell->anchors.at_given.origin, GIVEN, "holes are drilled once");
	reading_close(&reading);
}

Test(reader_arm, each_way_is_a_load_model)
{
	static const struct { const char *text; bool chain, swing, history, any; } rows[] = {
		{HEAD, false, false, false, false},
		{HEAD "arm: {mounting: ceiling, turned: 5 deg}\n", false, false, false, false},
		{HEAD "arm: {chain: {convention: frames, joints: [{mass: 1 kg}]}}\n", true, false, false, true},
		{HEAD "arm: {swing: {vertical_axis: {stop_time: 1 s}}}\n", false, true, false, true},
		{HEAD "arm: {swing: {horizontal_axis: {speed: 1 rpm}}}\n", false, true, false, true},
		{HEAD "arm: {swing: {reach: 1 m}}\n", false, true, false, true},
		{HEAD "arm: {swing: unknown}\n", false, false, false, false},
		{HEAD "arm: {history: [{file: stop.csv}]}\n", false, false, true, true}};
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		const struct cell *cell = read_good(rows[i].text);
		cr_expect_eq(chain_given(cell), rows[i].chain, "%s", rows[i].text);
		cr_expect_eq(swing_given(cell), rows[i].swing, "%s", rows[i].text);
		cr_expect_eq(history_given(cell), rows[i].history, "%s", rows[i].text);
		cr_expect_eq(load_model_given(cell), rows[i].any, "%s", rows[i].text);
		reading_close(&reading);
	}
}

#define JOINT(keys) \
	HEAD "arm: {chain: unknown,\n  motion: {joints: [{" keys "}]}}\n"

/* Neither of two dimensions: both are named; the limits are those of the one that was written. */
Test(reader_arm, a_number_of_neither_dimension)
{
	static const struct {
		const char *text, *path;
		unsigned column;
		const char *message, *hint;
	} rows[] = {
		{JOINT("speed: 12 kg"), "arm.motion.joints[1].speed", 29,
		 "'12 kg' is a mass, but an angular speed or a speed must stand here",
		 "write an angular speed such as 120 deg/s or a speed such as 1.5 m/s"},
		{JOINT("from: 90"), "arm.motion.joints[1].from", 28, "'90' has no unit",
		 "an angle such as 30 deg or a length such as 150 mm"},
		{JOINT("speed: 900 rad/s"), "arm.motion.joints[1].speed", 29, "too large", "from 0 rad/s to 200 rad/s"},
		{JOINT("speed: 90 m/s"), "arm.motion.joints[1].speed", 29, "too large", "from 0 m/s to 20 m/s"},
		{JOINT("speed: -3 m/s"), "arm.motion.joints[1].speed", 29, "too small", "from 0 m/s to 20 m/s"},
		{JOINT("stop: 5 m/s/s"), "arm.motion.joints[1].stop", 28, "a unit that is not known", "write 5 m/s2"},
		{JOINT("stop: 5 M/S2"), "arm.motion.joints[1].stop", 28, "in the wrong case", "write m/s2"},
		{JOINT("stop: 2,5 m/s2"), "arm.motion.joints[1].stop", 28, "a decimal comma", "write 2.5 m/s2"},
		{JOINT("stop: [1, 2]"), "arm.motion.joints[1].stop", 28, "a list stands here, a number is wanted", "write it as 900 deg/s2"},
		{HEAD "arm: {motion: {cycle: [{at: 0 s,\n  angles: [0, 90]}, {at: 1 s, angles: unknown}]}}\n",
		 "arm.motion.cycle[1].angles", 11, "the numbers have no unit", "write it behind each number"}};
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		reading_open(&reading, rows[i].text);
		const struct diagnostic *one = reading_find(&reading, rows[i].path);
		cr_assert(one, "%s\n%s", rows[i].text, reading_faults(&reading));
		cr_expect_eq(reading.list.errors, 1, "%s", reading_faults(&reading));
		cr_expect(strstr(one->message, rows[i].message), "%s", reading_faults(&reading));
		cr_expect(strstr(one->hint, rows[i].hint), "%s", reading_faults(&reading));
		cr_expect_eq(one->mark.line, 4, "%s", reading_faults(&reading));
		cr_expect_eq(one->mark.column, rows[i].column, "%s", reading_faults(&reading));
		reading_close(&reading);
	}
}
