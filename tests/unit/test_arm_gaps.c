/* What an arm in the file lacks, what it cannot be, and which cases are computed. The arms are
 * invented. */
#include "../../src/arm/arm_loads.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { TEXT_ROOM = 8192, SOME = 32 };

#define ZERO "inertia: {xx: 0.1 kg m2, yy: 0.1 kg m2, zz: 0.1 kg m2}"
static const char whole[] =
	"standfast: 1\n"
	"anchors: {at: unknown}\n"
	"arm:\n"
	"  mount: [0 mm, 0 mm, 0 mm]\n"
	"  weight: {arm: 20 kg, payload: 3 kg}\n"
	"  chain:\n"
	"    convention: standard_dh\n"
	"    joints:\n"
	"      - {name: base, a: 0 mm, alpha: 90 deg, d: 300 mm, mass: 6 kg,\n"
	"         centre: [0 mm, 0 mm, 1 mm], " ZERO "}\n"
	"      - {name: slide, kind: prismatic, a: 0 mm, alpha: 0 deg, theta: 10 deg, mass: 2 kg,\n"
	"         centre: [0 mm, 0 mm, 2 mm], " ZERO "}\n"
	"    payload: {centre: [0 mm, 0 mm, 3 mm], inertia: {xx: 0 kg m2, yy: 0 kg m2, zz: 0 kg m2}}\n"
	"  motion:\n"
	"    peak_factor: 1.5\n"
	"    poses: 4\n"
	"    bound_poses: 8\n"
	"    joints:\n"
	"      - {from: -170 deg, to: 180 deg, speed: 100 deg/s, acceleration: 300 deg/s2,\n"
	"         stop_time: 0.2 s}\n"
	"      - {from: 100 mm, to: 700 mm, speed: 1 m/s, acceleration: 3 m/s2, stop: 6 m/s2}\n";

static const char swinging[] =
	"standfast: 1\n"
	"anchors: {at: unknown}\n"
	"arm:\n"
	"  mount: [0 mm, 0 mm, 0 mm]\n"
	"  weight: {arm: 50 kg, payload: 5 kg}\n"
	"  swing:\n"
	"    axes: both\n"
	"    reach: 1200 mm\n"
	"    axis_height: 400 mm\n"
	"    peak_factor: 2\n"
	"    vertical_axis: {speed: 101 deg/s, acceleration: 302 deg/s2, stop_time: 0.31 s}\n"
	"    horizontal_axis: {speed: 102 deg/s, start_time: 0.42 s, stop: 902 deg/s2}\n";

static const char *replaced(const char *text, const char *what, const char *by)
{
	static char out[2][TEXT_ROOM];
	static int turn;
	const char *at = strstr(text, what);
	char *into = out[turn ^= 1];
	cr_assert(at != NULL, "no '%s' in the text", what);
	int length = snprintf(into, TEXT_ROOM, "%.*s%s%s", (int)(at - text), text, by,
	                      at + strlen(what));
	cr_assert(length < TEXT_ROOM);
	return into;
}

/* --- gaps ------------------------------------------------------------------------------------ */

struct found {
	const char *path[SOME];
	size_t count;
};

static void note(void *user, const char *path)
{
	struct found *found = user;
	cr_assert(found->count < SOME);
	found->path[found->count++] = path;
}

/* The gaps of the text, one behind the other. */
static const char *gaps_of(const char *yaml)
{
	static char text[TEXT_ROOM];
	struct reading reading;
	struct found found = {.count = 0};
	reading_open(&reading, yaml);
	cr_assert_eq(reading.status, DONE, "%s", reading_faults(&reading));
	arm_gaps(reading.cell, note, &found);
	text[0] = 0;
	for (size_t i = 0; i < found.count; i++)
		snprintf(text + strlen(text), sizeof text - strlen(text), "%s%s", i ? " " : "",
		         found.path[i]);
	reading_close(&reading);
	return text;
}

static void expect_gaps(const char *yaml, const char *what, const char *by, const char *wanted)
{
	const char *found = gaps_of(what ? replaced(yaml, what, by) : yaml);
	cr_expect_str_eq(found, wanted, "without '%s': '%s'", what ? what : "nothing", found);
}

Test(arm_gaps, nothing_lacks)
{
	expect_gaps(whole, NULL, NULL, "");
	expect_gaps(swinging, NULL, NULL, "");
	expect_gaps("standfast: 1\nanchors: {at: unknown}\n", NULL, NULL, "");
}

Test(arm_gaps, every_number_of_a_chain)
{
	static const char *const gap[][3] = {
		{"arm: 20 kg, ", "", "arm.weight.arm"},
		{", payload: 3 kg", "", "arm.weight.payload"},
		{"a: 0 mm, ", "", "arm.chain.joints[].a"},
		{"alpha: 90 deg, ", "", "arm.chain.joints[].alpha"},
		{"d: 300 mm, ", "", "arm.chain.joints[].d"},
		{"theta: 10 deg, ", "", "arm.chain.joints[].theta"},
		{"mass: 2 kg,", "", "arm.chain.joints[].mass"},
		{"centre: [0 mm, 0 mm, 2 mm], ", "", "arm.chain.joints[].centre"},
		{"xx: 0.1 kg m2, ", "", "arm.chain.joints[].inertia.xx"},
		{"yy: 0.1 kg m2, ", "", "arm.chain.joints[].inertia.yy"},
		{", zz: 0.1 kg m2", "", "arm.chain.joints[].inertia.zz"},
		{"centre: [0 mm, 0 mm, 3 mm], ", "", "arm.chain.payload.centre"},
		{"{xx: 0 kg m2, ", "{", "arm.chain.payload.inertia.xx"},
		{"0 kg m2, zz: 0 kg m2}", "0 kg m2}", "arm.chain.payload.inertia.zz"},
		{"zz: 0 kg m2}", "zz: 0 kg m2, xy: unknown}", "arm.chain.payload.inertia.xy"},
		{"from: -170 deg, ", "", "arm.motion.joints[].from"},
		{"to: 700 mm, ", "", "arm.motion.joints[].to"},
		{"speed: 1 m/s, ", "", "arm.motion.joints[].speed"},
		{"acceleration: 3 m/s2, ", "", "arm.motion.joints[].acceleration"},
		{", stop: 6 m/s2", "", "arm.motion.joints[].stop"},
		{"peak_factor: 1.5", "poses: 4", "arm.motion.peak_factor"},
	};
	for (size_t i = 0; i < COUNT(gap); i++) {
		const char *text = whole;
		if (strstr(gap[i][0], "peak_factor"))
			text = replaced(whole, "    poses: 4\n", "");
		expect_gaps(text, gap[i][0], gap[i][1], gap[i][2]);
	}
}

/* What may be left out: a link without mass has no centre, a foot that is stated needs no arm mass,
 * a gripper that carries nothing has no centre. */
Test(arm_gaps, what_may_be_left_out)
{
	expect_gaps(replaced(whole, "mass: 2 kg", "mass: 0 kg"), "centre: [0 mm, 0 mm, 2 mm], ", "",
	            "");
	expect_gaps(replaced(whole,
	                     "    payload: {centre: [0 mm, 0 mm, 3 mm], inertia: {xx: 0 kg m2, yy: "
	                     "0 kg m2, zz: 0 kg m2}}\n",
	                     ""),
	            "payload: 3 kg", "payload: 0 kg", "");
	expect_gaps(replaced(whole, "arm: 20 kg, ", ""), "    joints:\n",
	            "    fixed_mass: 12 kg\n    joints:\n", "");
	expect_gaps(replaced(whole, ", payload: 3 kg", ""), "payload: {", "payload: {mass: 3 kg, ",
	            "");
	/* a joint that stands still has no speed */
	expect_gaps(whole,
	            "from: 100 mm, to: 700 mm, speed: 1 m/s, acceleration: 3 m/s2, stop: 6 m/s2",
	            "from: 100 mm, to: 100 mm", "");
}

Test(arm_gaps, every_number_of_a_swing)
{
	static const char *const gap[][2] = {
		{"arm: 50 kg, ", "arm.weight.arm"},
		{", payload: 5 kg", "arm.weight.payload"},
		{"    axes: both\n", "arm.swing.axes"},
		{"    reach: 1200 mm\n", "arm.swing.reach"},
		{"    axis_height: 400 mm\n", "arm.swing.axis_height"},
		{"    peak_factor: 2\n", "arm.swing.peak_factor"},
		{"speed: 101 deg/s, ", "arm.swing.vertical_axis.speed"},
		{"acceleration: 302 deg/s2, ", "arm.swing.vertical_axis.acceleration"},
		{", stop_time: 0.31 s", "arm.swing.vertical_axis.stop"},
		{"start_time: 0.42 s, ", "arm.swing.horizontal_axis.acceleration"},
		{", stop: 902 deg/s2", "arm.swing.horizontal_axis.stop"},
	};
	for (size_t i = 0; i < COUNT(gap); i++)
		expect_gaps(swinging, gap[i][0], "", gap[i][1]);
}

/* No acceleration at all, and the data sheet answers for normal motion: nothing lacks. One
 * acceleration: the other is forgotten. */
Test(arm_gaps, a_case_that_is_answered_elsewhere)
{
	static char text[TEXT_ROOM];
	const char *stops = replaced(whole, ", acceleration: 300 deg/s2", "");
	snprintf(text, sizeof text, "%s", replaced(stops, ", acceleration: 3 m/s2", ""));
	expect_gaps(text, NULL, NULL, "arm.motion.joints[].acceleration");
	expect_gaps(text, "  chain:\n",
	            "  reactions:\n    normal: {vertical: 1 kN, horizontal: 1 kN, tilting: 1 N m, "
	            "twisting: 1 N m}\n  chain:\n",
	            "");
	expect_gaps(whole, ", acceleration: 300 deg/s2", "", "arm.motion.joints[].acceleration");
}

/* --- which cases are computed ---------------------------------------------------------------- */

static void expect_covers(const char *yaml, enum arm_way way, bool rest, bool normal, bool stop)
{
	struct reading reading;
	reading_open(&reading, yaml);
	cr_assert_eq(reading.status, DONE, "%s", reading_faults(&reading));
	cr_expect_eq(arm_way_covers(reading.cell, way, ARM_REST), rest);
	cr_expect_eq(arm_way_covers(reading.cell, way, ARM_NORMAL), normal);
	cr_expect_eq(arm_way_covers(reading.cell, way, ARM_EMERGENCY_STOP), stop);
	reading_close(&reading);
}

Test(arm_gaps, cases_that_are_covered)
{
	expect_covers(whole, WAY_CHAIN, true, true, true);
	expect_covers(whole, WAY_SWING, false, false, false);
	expect_covers(replaced(whole, ", stop: 6 m/s2", ""), WAY_CHAIN, true, true, false);
	expect_covers(replaced(whole, "from: -170 deg, ", ""), WAY_CHAIN, false, false, false);
	expect_covers(swinging, WAY_SWING, false, true, true);
	expect_covers(replaced(swinging, "speed: 101 deg/s, ", ""), WAY_SWING, false, false, false);
	expect_covers(replaced(swinging, "  swing:\n",
	                       "  history: [{file: a.csv, of: normal}]\n  swing:\n"),
	              WAY_HISTORY, false, true, false);
}

/* Without its peak factor a stop by its time is computed with the mean: said as a gap. */
Test(arm_gaps, stop_without_peak_factor)
{
	struct reading reading;
	struct arm_loads with, without;
	reading_open(&reading, whole);
	cr_assert_eq(arm_loads_build(reading.cell, NULL, NULL, &reading.arena, &with), DONE);
	struct reading other;
	reading_open(&other, replaced(whole, "    peak_factor: 1.5\n", ""));
	cr_assert_eq(arm_loads_build(other.cell, NULL, NULL, &other.arena, &without), DONE);
	cr_assert_eq(with.count, 3);
	cr_assert_eq(without.count, 3);
	cr_expect(without.list[0].extreme[REACTION_TWISTING].value <
	          with.list[0].extreme[REACTION_TWISTING].value);
	cr_expect_eq(without.list[1].extreme[REACTION_TWISTING].value,
	             with.list[1].extreme[REACTION_TWISTING].value);
	reading_close(&reading);
	reading_close(&other);
}

/* --- faults ---------------------------------------------------------------------------------- */

static struct diagnostics faults_of(const char *yaml)
{
	static struct diagnostics found;
	struct reading reading;
	found = (struct diagnostics){.count = 0};
	reading_open(&reading, yaml);
	cr_assert_eq(reading.status, DONE, "%s", reading_faults(&reading));
	arm_faults(reading.cell, &reading.arena, &found);
	reading_close(&reading);
	return found;
}

static void expect_fault(const char *yaml, unsigned line, const char *path, const char *message)
{
	struct diagnostics found = faults_of(yaml);
	cr_assert_eq(found.count, 1, "%zu faults", found.count);
	const struct diagnostic *one = &found.list[0];
	cr_expect_eq(one->severity, ERROR);
	cr_expect_eq(one->mark.line, line, "line %u", (unsigned)one->mark.line);
	cr_expect_str_eq(one->path, path, "%s", one->path);
	cr_expect(strstr(one->message, message) != NULL, "%s", one->message);
	cr_expect(one->hint[0] != 0);
}

Test(arm_faults, none)
{
	cr_expect_eq(faults_of(whole).count, 0);
	cr_expect_eq(faults_of(swinging).count, 0);
}

Test(arm_faults, triangle_inequality)
{
	expect_fault(replaced(whole, "zz: 0.1 kg m2", "zz: 0.5 kg m2"), 10,
	             "arm.chain.joints[1].inertia",
	             "the link of joint 1 'base' cannot be: one principal moment");
}

Test(arm_faults, not_positive)
{
	expect_fault(replaced(whole, "zz: 0.1 kg m2", "zz: 0.1 kg m2, xy: 0.3 kg m2"), 10,
	             "arm.chain.joints[1].inertia", "its inertia is not positive");
}

Test(arm_faults, every_faulty_link_is_told)
{
	const char *text = replaced(whole, "zz: 0.1 kg m2", "zz: 0.5 kg m2");
	struct diagnostics found = faults_of(replaced(text, "zz: 0.1 kg m2", "zz: 0.5 kg m2"));
	cr_assert_eq(found.count, 2);
	cr_expect_eq(found.list[1].mark.line, 12);
}

Test(arm_faults, payload)
{
	expect_fault(replaced(whole, "inertia: {xx: 0 kg m2, yy: 0 kg m2, zz: 0 kg m2}}\n",
	                      "inertia: {xx: 1 kg m2, yy: 1 kg m2, zz: 3 kg m2}}\n"),
	             13, "arm.chain.payload.inertia", "the payload cannot be");
}

/* An inertia of which a part is not known is a gap, not a fault. */
Test(arm_faults, unknown_is_no_fault)
{
	cr_expect_eq(faults_of(replaced(whole, "xx: 0.1 kg m2, ", "")).count, 0);
}

/* A cell that no file was read for: the reader would have said it already. */
Test(arm_faults, convention)
{
	struct reading reading;
	struct diagnostics found = {.count = 0};
	reading_open(&reading, whole);
	cr_assert_eq(reading.status, DONE);
	struct cell cell = *reading.cell;
	cell.arm.chain.convention = (struct word){.value = 0};
	arm_faults(&cell, &reading.arena, &found);
	arm_faults(&cell, &reading.arena, &found);
	cr_assert_eq(found.count, 1);
	cr_expect_eq(found.list[0].fault, FAULT_MISSING_KEY);
	cr_expect_eq(found.list[0].mark.line, 9);
	cr_expect_str_eq(found.list[0].path, "arm.chain.convention");
	cr_expect(!arm_way_covers(&cell, WAY_CHAIN, ARM_NORMAL));
	reading_close(&reading);
}

Test(arm_faults, swing)
{
	expect_fault(replaced(swinging, "speed: 101 deg/s", "speed: 0 deg/s"), 11, "arm.swing",
	             "speed of a moving axis must be positive");
}

/* Setups: what the file says is told once, what a setup says bears its name. */
Test(arm_faults, setups)
{
	static char text[TEXT_ROOM];
	snprintf(text, sizeof text,
	         "%ssetups:\n  - {name: low, arm.mount: [0 mm, 0 mm, 1 mm]}\n"
	         "  - {name: high, arm.mount: [0 mm, 0 mm, 9 mm]}\n",
	         replaced(whole, "zz: 0.1 kg m2", "zz: 0.5 kg m2"));
	expect_fault(text, 10, "arm.chain.joints[1].inertia", "one principal moment");
	snprintf(text, sizeof text,
	         "%ssetups:\n  - {name: low, arm.mount: [0 mm, 0 mm, 1 mm]}\n"
	         "  - {name: still, arm.swing.horizontal_axis.speed: 0 deg/s}\n",
	         swinging);
	expect_fault(text, 15, "arm.swing", "(setup 'still')");
}
