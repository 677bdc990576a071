/* What an arm, its motion, an earthquake and casters cannot be: each row is one contradiction with
 * its path and place, and a neighbour that is just possible. */
#include "../../src/cell/validity.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static struct reading reading;

static void read_with(const char *text)
{
	char whole[3000];
	snprintf(whole, sizeof whole, "standfast: 1\nanchors: {at: unknown%s}\n%s",
	         strncmp(text, "product", 7) == 0 ? ", product: {rating: unknown}" : "", text);
	reading_open(&reading, whole);
}

struct contradiction {
	const char *impossible;
	enum fault fault;
	const char *path;
	const char *there;           /* what stands in `impossible` where the fault is shown */
	const char *message, *possible;
};

/* The text behind two lines of its own, from the mark on; all letters are of one byte. */
static const char *at_mark(const char *text, struct mark mark)
{
	for (unsigned line = 3; line < mark.line && strchr(text, '\n'); line++)
		text = strchr(text, '\n') + 1;
	return mark.column <= strlen(text) + 1 ? text + mark.column - 1 : "";
}

static void assert_rows(const struct contradiction *rows, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		const struct contradiction *row = &rows[i];
		read_with(row->impossible);
		const struct diagnostic *one = reading_find(&reading, row->path);
		cr_assert(one, "%s\n%s", row->impossible, reading_faults(&reading));
		cr_expect_eq(one->fault, row->fault, "%s", reading_faults(&reading));
		cr_expect(strstr(one->message, row->message), "%s\n%s", row->message,
		          reading_faults(&reading));
		cr_expect_gt(strlen(one->hint), 0, "it says what to write");
		const char *there = at_mark(row->impossible, one->mark);
		cr_expect_eq(strncmp(there, row->there, strlen(row->there)), 0, "%s: %.9s\n%s",
		             row->there, there, reading_faults(&reading));
		cr_expect_eq(reading.list.errors, 1, "%s\n%s", row->impossible,
		             reading_faults(&reading));
		reading_close(&reading);
		read_with(row->possible);
		cr_expect_eq(reading.status, DONE, "%s\n%s", row->possible,
		             reading_faults(&reading));
		reading_close(&reading);
	}
}

#define CASE "{vertical: 1.1 kN, horizontal: 0.6 kN, tilting: 0.7 kN m, twisting: 0.4 kN m}"

static const struct contradiction mountings[] = {
	{"arm: {mounting: tilted, mounting_toward: 0 deg}", FAULT_MISSING_KEY, "arm.mounting_tilt", "tilted",
	 "mounting: tilted without mounting_tilt",
	 "arm: {mounting: tilted, mounting_toward: 0 deg, mounting_tilt: 30 deg}"},
	{"arm: {mounting: wall}", FAULT_MISSING_KEY, "arm.mounting_toward", "wall",
	 "mounting: wall without mounting_toward", "arm: {mounting: wall, mounting_toward: 0 deg}"},
	{"arm: {mounting: tilted, mounting_tilt: 30 deg}", FAULT_MISSING_KEY, "arm.mounting_toward", "tilted",
	 "mounting: tilted without mounting_toward",
	 "arm: {mounting: tilted, mounting_tilt: 30 deg, mounting_toward: 0 deg}"},
	{"arm: {mounting_tilt: 30 deg}", FAULT_CONTRADICTION, "arm.mounting_tilt", "30 deg",
	 "belongs to mounting: tilted", "arm: {turned: 30 deg}"},
	{"arm: {mounting: wall, mounting_toward: 0 deg, mounting_tilt: 90 deg}", FAULT_CONTRADICTION,
	 "arm.mounting_tilt", "90 deg", "belongs to mounting: tilted", "arm: {mounting: wall, mounting_toward: 0 deg}"},
	{"arm: {mounting: ceiling, mounting_toward: 0 deg}", FAULT_CONTRADICTION, "arm.mounting_toward", "0 deg",
	 "belongs to mounting: wall or tilted", "arm: {mounting: ceiling, mounting_toward: unknown}"},
	{"arm:\n  mounting: ceiling\n  reactions: {normal: " CASE "}", FAULT_CONTRADICTION, "arm.mounting", "ceiling",
	 "arm.reactions are read for an arm that stands on the floor",
	 "arm:\n  mounting: floor\n  reactions: {normal: " CASE "}"},
	{"arm:\n  swing: {reach: 1400 mm}\n  mounting: ceiling", FAULT_CONTRADICTION, "arm.mounting", "ceiling",
	 "arm.swing is made for an arm that stands on the floor",
	 "arm:\n  mounting: ceiling\n  history: [{file: stop.csv}]"},
};

Test(validity_arm, mountings)
{
	assert_rows(mountings, COUNT(mountings));
}

#define CHAIN(joints) "arm:\n  chain:\n    convention: standard_dh\n    joints: [" joints "]\n"
#define MASSES(fixed) \
	"arm:\n  weight: {arm: 41 kg}\n  chain:\n    convention: frames\n" \
	"    joints: [{mass: 21 kg}, {mass: 20 kg}]\n" fixed

static const struct contradiction chains[] = {
	{"arm: {chain: {joints: [{d: 400 mm}]}}", FAULT_MISSING_KEY, "arm.chain.convention",
         "[{d: 400", "without its convention",
         "arm: {chain: {convention: modified_dh, joints: [{d: 400 mm}]}}"},
	{"arm: {chain: {convention: unknown, joints: [{d: 400 mm}]}}", FAULT_MISSING_KEY,
         "arm.chain.convention", "unknown", "without its convention",
         "arm: {chain: {convention: unknown, joints: unknown}}"},
	{CHAIN("{d: 0 mm}, {a: 5 mm, roll: 0 deg}"), FAULT_CONTRADICTION,
         "arm.chain.joints[2].roll", "0 deg", "roll belongs to convention: frames",
         CHAIN("{d: 0 mm}, {a: 5 mm, roll: unknown}")},
	{"arm: {chain: {convention: frames, joints: [{position: [0 mm, 0 mm, 0 mm], theta: 0 "
         "deg}]}}",
         FAULT_CONTRADICTION, "arm.chain.joints[1].theta", "0 deg",
         "theta is a Denavit-Hartenberg value",
         "arm: {chain: {convention: frames, joints: [{position: [0 mm, 0 mm, 0 mm], yaw: 0 "
         "deg}]}}"},
	{"arm: {weight: {payload: 12 kg}, chain: {payload: {mass: 26 lb}}}", FAULT_CONTRADICTION,
         "arm.chain.payload.mass", "26 lb", "a payload of 26 lb here and of 12 kg",
         /* 26.46 lb are 12.002 kg */
         "arm: {weight: {payload: 12 kg}, chain: {payload: {mass: 26.46 lb}}}"},
	{MASSES("    fixed_mass: 1 kg"), FAULT_CONTRADICTION, "arm.chain.fixed_mass", "1 kg",
         "links and fixed_mass weigh 42 kg, arm.weight.arm is 41 kg",
         MASSES("    fixed_mass: 0.4 kg")},
	{"arm:\n  weight: {arm: 40.5 kg}\n  chain: {convention: frames, joints: [{mass: 21 kg}, "
         "{mass: 20 kg}]}",
         FAULT_CONTRADICTION, "arm.chain.joints", "[{mass: 21",
         "links weigh 41 kg, arm.weight.arm is 40.5 kg",
         "arm:\n  weight: {arm: 50 kg}\n  chain: {convention: frames, joints: [{mass: 21 kg}, "
         "{mass: 20 kg}]}"},
	{"arm:\n  weight: {arm: 50 kg}\n  chain: {convention: frames, fixed_mass: 8 kg, joints: "
         "[{mass: 41 kg}]}",
         FAULT_CONTRADICTION, "arm.chain.fixed_mass", "8 kg", "weigh 49 kg",
         "arm:\n  weight: {arm: 50 kg}\n  chain: {convention: frames, fixed_mass: 8 kg, joints: "
         "[{mass: unknown}]}"},
};

Test(validity_arm, chains)
{
	assert_rows(chains, COUNT(chains));
}

/* a turning, a sliding and a turning joint on the first three lines */
#define THREE \
	"arm:\n  chain: {convention: modified_dh, joints: [{d: 4 mm}, {kind: prismatic, a: 5 mm}, {d: 8 mm}]}\n" \
	"  motion:\n"
#define RANGES \
	"    joints: [{from: -170 deg, to: 170 deg}, {from: 0 mm, to: 800 mm}, {from: -1 rad, to: 1 rad}]\n"

static const struct contradiction motions[] = {
	{THREE "    joints: [{from: 0 deg}, {from: 0 mm}]", FAULT_CONTRADICTION,
         "arm.motion.joints", "[{from", "2 rows for the 3 joints",
         THREE "    joints: [{from: 0 deg}, {from: 0 mm}, {from: 0 deg}]"},
	{THREE "    joints: [{from: 0 deg}, {to: 90 deg}, {from: 0 deg}]", FAULT_CONTRADICTION,
         "arm.motion.joints[2].to", "90 deg", "joint 2 slides, but its to is 90 deg",
         THREE "    joints: [{from: 0 deg}, {to: 90 mm}, {from: 0 deg}]"},
	{THREE "    joints: [{from: 0 deg}, {from: 0 mm}, {speed: 1.5 m/s}]", FAULT_CONTRADICTION,
         "arm.motion.joints[3].speed", "1.5 m/s", "joint 3 turns, but its speed is 1.5 m/s",
         THREE "    joints: [{from: 0 deg}, {from: 0 mm}, {speed: 15 rpm}]"},
	{THREE "    joints: [{from: 0 deg}, {from: 0 mm}, {stop: 5 m/s2}]", FAULT_CONTRADICTION,
         "arm.motion.joints[3].stop", "5 m/s2", "its stop is 5 m/s2",
         THREE "    joints: [{from: 0 deg}, {from: 0 mm}, {stop: 5 rad/s2}]"},
	{THREE "    joints: [{from: 0 deg}, {from: 9 mm, to: 8 mm}, {from: 0 deg}]",
         FAULT_CONTRADICTION, "arm.motion.joints[2].from", "9 mm",
         "begins at 9 mm, above its end at 8 mm",
         THREE "    joints: [{from: 0 deg}, {from: 8 mm, to: 8 mm}, {from: 0 deg}]"},
	{THREE "    joints: [{from: 1 deg, to: -0.1 rad}, {from: 8 mm}, {from: 0 deg}]",
         FAULT_CONTRADICTION, "arm.motion.joints[1].from", "1 deg",
         "begins at 1 deg, above its end at -0.1 rad",
         THREE "    joints: [{from: -1 deg, to: 0.1 rad}, {from: 8 mm}, {from: 0 deg}]"},
	{THREE "    joints: [{from: 0 deg}, {stop: 5 m/s2, stop_time: 350 ms}, {from: 0 deg}]",
         FAULT_CONTRADICTION, "arm.motion.joints[2].stop_time", "350 ms",
         "stop and stop_time are both given",
         THREE "    joints: [{from: 0 deg}, {stop: unknown, stop_time: 350 ms}, {from: 0 deg}]"},
};

Test(validity_arm, motions)
{
	assert_rows(motions, COUNT(motions));
}

#define CYCLE(rows) THREE RANGES "    cycle: [" rows "]"
#define POSE "angles: [0 deg, 0 deg], slides: [0 mm]"

static const struct contradiction cycles[] = {
	{CYCLE("{at: 1 s, " POSE "}, {at: 2 s, " POSE "}"), FAULT_CONTRADICTION, "arm.motion.cycle[1].at", "1 s",
	 "the cycle begins at 1 s", CYCLE("{at: 0 s, " POSE "}, {at: 2 s, " POSE "}")},
	{CYCLE("{at: 0 s, " POSE "}, {at: 0 ms, " POSE "}"), FAULT_CONTRADICTION, "arm.motion.cycle[2].at", "0 ms",
	 "0 ms is not after the pose before it", CYCLE("{at: 0 s, " POSE "}, {at: unknown, " POSE "}")},
	{CYCLE("{at: 0 s, " POSE "}"), FAULT_CONTRADICTION, "arm.motion.cycle", "0 s", "one pose has no motion",
	 THREE RANGES "    cycle: unknown"},
	{CYCLE("{at: 0 s, " POSE "}, {at: 2 s, angles: [0 deg], slides: [0 mm]}"), FAULT_CONTRADICTION,
	 "arm.motion.cycle[2].angles", "[0 deg]", "1 angles for the 2 revolute joints",
	 CYCLE("{at: 0 s, " POSE "}, {at: 2 s, angles: [0 deg, 1 deg], slides: [0 mm]}")},
	{CYCLE("{at: 0 s, " POSE "}, {at: 2 s, angles: [0 deg, 0 deg]}"), FAULT_MISSING_KEY,
	 "arm.motion.cycle[2].slides", "2 s", "0 slides for the 1 prismatic joint",
	 CYCLE("{at: 0 s, " POSE "}, {at: 2 s, angles: [0 deg, 0 deg], slides: [1 mm]}")},
	{CYCLE("{at: 0 s, " POSE "}, {at: 2 s, angles: [0 deg, 0 deg], slides: [801 mm]}"), FAULT_CONTRADICTION,
	 "arm.motion.cycle[2].slides", "[801", "joint 2 at 801 mm is above its range, which ends at 800 mm",
	 CYCLE("{at: 0 s, " POSE "}, {at: 2 s, angles: [-170 deg, 1 rad], slides: [800 mm]}")},
	{CYCLE("{at: 0 s, " POSE "}, {at: 2 s, angles: [0 deg, -60 deg], slides: [0 mm]}"), FAULT_CONTRADICTION,
	 "arm.motion.cycle[2].angles", "[0 deg, -60", "joint 3 at -60 deg is below its range, which begins at -1 rad",
	 CYCLE("{at: 0 s, " POSE "}, {at: 2 s, angles: [0 deg, -57 deg], slides: [0 mm]}")},
};

Test(validity_arm, cycles)
{
	assert_rows(cycles, COUNT(cycles));
}

#define SWING(keys) "arm: {weight: {arm: 41 kg}, swing: {" keys "}}"

static const struct contradiction swings[] = {
	{SWING("vertical_axis: {acceleration: 4 rad/s2, start_time: 0.4 s}"), FAULT_CONTRADICTION,
	 "arm.swing.vertical_axis.start_time", "0.4 s", "acceleration and start_time are both given",
	 SWING("vertical_axis: {acceleration: 4 rad/s2, stop_time: 0.4 s}")},
	{SWING("horizontal_axis: {stop: 4 rad/s2, stop_time: 0.4 s}"), FAULT_CONTRADICTION,
	 "arm.swing.horizontal_axis.stop_time", "0.4 s", "stop and stop_time are both given",
	 SWING("horizontal_axis: {stop: 4 rad/s2, start_time: 0.4 s}")},
	{SWING("reach: 1.4 m, radius: 1401 mm"), FAULT_CONTRADICTION, "arm.swing.radius", "1401 mm",
	 "1401 mm is beyond the reach, 1.4 m", SWING("reach: 1.4 m, radius: 1400 mm")},
	{SWING("reach: 1.4 m, payload_radius: 5 ft"), FAULT_CONTRADICTION, "arm.swing.payload_radius", "5 ft",
	 "5 ft is beyond the reach", SWING("payload_radius: 5 ft")},
	{SWING("moving_mass: 42 kg"), FAULT_CONTRADICTION, "arm.swing.moving_mass", "42 kg",
	 "42 kg move of an arm of 41 kg", SWING("moving_mass: 41 kg")},
};

Test(validity_arm, swings)
{
	assert_rows(swings, COUNT(swings));
}

static const struct contradiction others[] = {
	{"arm: {history: [{file: a.csv, of: rest}]}", FAULT_CONTRADICTION, "arm.history[1].of", "rest", "at rest",
	 "arm: {history: [{file: a.csv, cycles_a_year: 5}]}"},
	{"arm: {history: [{file: a.csv}, {of: normal}]}", FAULT_MISSING_KEY, "arm.history[2].file", "normal",
	 "without its file", "arm: {history: [{file: a.csv}, {file: b.csv, of: normal}]}"},
	{"earthquake: {code: asce7_16, resonance: 1}", FAULT_CONTRADICTION, "earthquake.resonance", "1}",
	 "resonance is no number of code: asce7_16", "earthquake: {code: asce7_22, resonance: 1}"},
	{"earthquake: {code: en1998, sds: 0.5}", FAULT_CONTRADICTION, "earthquake.sds", "0.5",
	 "sds is no number of code: en1998", "earthquake: {code: en1998, ground_share: 0.5, height_share: 1}"},
	{"earthquake: {code: asce7_16, period_ratio: 1}", FAULT_CONTRADICTION, "earthquake.period_ratio", "1}",
	 "period_ratio is no number of code: asce7_16", "earthquake: {code: unknown, period_ratio: 1}"},
	{"earthquake: {code: asce7_22, building_response: 3}", FAULT_MISSING_KEY, "earthquake.building_importance",
	 "3}", "building_importance is missing beside it",
	 "earthquake: {code: asce7_22, building_response: 3, building_importance: 1, building_overstrength: 2}"},
	{"cell: {casters: [{at: [4 mm, 3 mm]}]}", FAULT_MISSING_KEY, "cell.casters[1]", "[4 mm", "without its trail",
	 "cell: {casters: [{at: [4 mm, 3 mm], trail: 0 mm}]}"},
	{"cell: {casters: [{trail: 3 mm}]}", FAULT_MISSING_KEY, "cell.casters[1]", "3 mm}", "without its place",
	 "cell: {casters: none}"},
	{"cell: {casters: [{at: [4 mm, 3 mm], trail: 1 mm}, {at: [4 mm, 3.5 mm], trail: 1 mm}]}", FAULT_GEOMETRY,
	 "cell.casters[2].at", "[4 mm, 3.5", "casters 1 and 2 stand on one spot",
	 "cell: {casters: [{at: [4 mm, 3 mm], trail: 1 mm}, {at: [4 mm, 5 mm], trail: 1 mm}]}"},
	{"cell: {top: 1.8 m}\narm: {mount: [0 mm, 0 mm, 1801 mm]}", FAULT_CONTRADICTION, "cell.top", "1.8 m}",
	 "the top, 1.8 m, is below", "cell: {top: 1.8 m}\narm: {mount: [0 mm, 0 mm, 1800 mm]}"},
	{"cell: {top: 1.8 m, parts: [{mass: 1 kg, box: {from: [0 m, 0 m, 0 m], to: [1 m, 1 m, 2 m]}}]}",
	 FAULT_CONTRADICTION, "cell.top", "1.8 m,", "at 2000 mm",
	 "cell: {top: 2 m, parts: [{mass: 1 kg, box: {from: [0 m, 0 m, 0 m], to: [1 m, 1 m, 2 m]}}]}"},
};

Test(validity_arm, histories_earthquakes_and_casters)
{
	assert_rows(others, COUNT(others));
}

Test(validity_arm, half_a_fatigue_rating_is_none)
{
#define FATIGUE(keys) \
	"standfast: 1\nanchors: {at: unknown, product: {rating: {fatigue: {" keys "}}}}\n"
	static const struct { const char *text, *path; } rows[] = {
		{FATIGUE("range: 4 kN"), "anchors.product.rating.fatigue.cycles"},
		{FATIGUE("cycles: 2000000"), "anchors.product.rating.fatigue.range"},
		{FATIGUE("range: 4 kN, cycles: 2000000"), NULL},
		{FATIGUE("range: 4 kN, cycles: unknown"),
	         "anchors.product.rating.fatigue.cycles"}};
	for (size_t i = 0; i < COUNT(rows); i++) {
		reading_open(&reading, rows[i].text);
		cr_expect_eq(reading.list.errors, rows[i].path ? 1 : 0, "%s",
		             reading_faults(&reading));
		if (rows[i].path) {
			const struct diagnostic *one = reading_find(&reading, rows[i].path);
			cr_assert(one, "%s", reading_faults(&reading));
			cr_expect_eq(one->fault, FAULT_MISSING_KEY);
			cr_expect_eq(one->mark.line, 2);
		}
		reading_close(&reading);
	}
}

/* A setup is checked as the cell that it makes, and the fault stands where the setup changed it. */
Test(validity_arm, setups_are_checked_at_their_own_place)
{
	read_with("arm:\n"
	          "  reactions: {normal: " CASE "}\n"
	          "setups:\n"
	          "  - {name: floor}\n"
	          "  - {name: ceiling, arm.mounting: ceiling}\n"
	          "  - {name: by file, arm.mounting: ceiling, arm.reactions: unknown,\n"
	          "     arm.history: [{file: stop.csv}]}\n");
	cr_assert_eq(reading.list.errors, 1, "%s", reading_faults(&reading));
	cr_expect_eq(reading.list.list[0].mark.line, 7);
	cr_expect_eq(reading.list.list[0].mark.column, 35);
	cr_expect(strstr(reading.list.list[0].message, "(setup 'ceiling')"));
	reading_close(&reading);
}

/* A cell that a program fills in has not gone through the reader. */
Test(validity_arm, limits_hold_without_the_reader)
{
	static struct cell cell;
	static struct arena arena;
	static struct diagnostics list;
	cell.casters.count = MAX_CASTERS + 1;
	cell.arm.chain.joints.count = MAX_CHAIN_JOINTS + 1;
	cell.arm.motion.joints.count = MAX_CHAIN_JOINTS + 1;
	cell.arm.motion.cycle.count = MAX_CYCLE_POSES + 1;
	cell.arm.history.count = MAX_HISTORIES + 1;
	arena_open(&arena, NULL, NULL);
	cell_validate(&cell, &arena, &list);
	arena_close(&arena);
	cr_assert_eq(list.count, 5);
	for (size_t i = 0; i < list.count; i++)
		cr_expect_eq(list.list[i].fault, FAULT_SIZE);
}
