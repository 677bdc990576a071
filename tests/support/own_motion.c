#include "own_motion.h"

#include "sample_cell.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { LONGEST_HISTORY = 1 << 20 };

void own_motion_open(struct own_motion *own, const struct arm_load *swept, size_t count,
                     const struct arm_load *bound, size_t bound_count)
{
	memset(own, 0, sizeof *own);
	own->source = (struct arm_source){.way = WAY_CHAIN,
	                                  .arm_case = ARM_EMERGENCY_STOP,
	                                  .name = "emergency stop, by hand",
	                                  .swept = {swept, count},
	                                  .bound = {bound, bound_count}};
	own->loads = (struct arm_loads){.list = &own->source, .count = 1};
	for (size_t s = 0; s < MAX_SETUPS; s++)
		own->arms[s] = &own->loads;
}

void own_trial_open(struct trial *trial, const char *yaml, const struct own_motion *own, bool trace)
{
	const struct check_options options = {.trace = trace, .arms = own->arms};
	trial_open(trial, yaml, &options);
	cr_assert_eq(trial->reading.status, DONE, "%s\n%s", reading_faults(&trial->reading), yaml);
}

static void turn(double v[2], double angle)
{
	double x = v[0], y = v[1];
	v[0] = x * cos(angle) - y * sin(angle);
	v[1] = x * sin(angle) + y * cos(angle);
}

struct arm_load turned_load(const struct arm_load *load, double angle)
{
	struct arm_load out = *load;
	turn(out.force, angle);
	turn(out.moment, angle);
	turn(out.weight_moment, angle);
	out.spin_from = out.spin_to = 0;
	return out;
}

void load_first(const struct arm_load *load, double height, double first[2])
{
	first[0] = load->moment[1] + height * load->force[0];
	first[1] = -load->moment[0] + height * load->force[1];
}

static const char *bytes_of(const char *path)
{
	FILE *in = fopen(path, "rb");
	cr_assert(in, "%s: run in the top folder", path);
	char *text = malloc(LONGEST_HISTORY);
	cr_assert_not_null(text);
	size_t length = fread(text, 1, LONGEST_HISTORY - 1, in);
	fclose(in);
	text[length] = 0;
	return text;
}

const struct history_files *example_histories(void)
{
	static struct history_file file[] = {{.name = "arm_stop.csv"}, {.name = "arm_round.csv"}};
	static struct history_files files = {file, sizeof file / sizeof file[0]};
	char path[80];
	/* read once a process; stays to its end */
	for (size_t i = 0; i < files.count && !file[i].text; i++) {
		snprintf(path, sizeof path, "examples/%s", file[i].name);
		file[i].text = bytes_of(path);
		file[i].length = strlen(file[i].text);
		file[i].file = (uint32_t)i + 1;
		file[i].sha256 = "";
	}
	return &files;
}

#define LINK(a, alpha, d, mass, centre, xx, yy) \
	"{a: " a ", alpha: " alpha ", d: " d ", mass: " mass ", centre: " centre \
	", inertia: {xx: " xx ", yy: " yy ", zz: " yy "}}"

const char *chain_sample_text(struct arena *arena, const struct change *change, size_t count)
{
	static const struct change chain[] = {
		{"arm.reactions", NULL},
		{"arm.mount", "[0 mm, 0 mm, 400 mm]"},
		{"arm.weight", NULL},
		{"cell.parts", "[{mass: 40 kg, at: [0 mm, 0 mm, 200 mm]}]"},
		{"arm.chain.convention", "standard_dh"},
		{"arm.chain.fixed_mass", "10 kg"},
		{"arm.chain.payload", "{mass: 2 kg, centre: [0 mm, 0 mm, 0 mm], "
		 "inertia: {xx: 0 kg m2, yy: 0 kg m2, zz: 0 kg m2}}"},
		{"arm.chain.joints",
	         "[" LINK("0 mm", "90 deg", "300 mm", "10 kg", "[0 mm, -50 mm, 0 mm]",
	                  "0.1 kg m2", "0.1 kg m2") ", "
	         LINK("600 mm", "0 deg", "0 mm", "10 kg", "[-300 mm, 0 mm, 0 mm]",
	              "0.01 kg m2", "0.3 kg m2") "]"},
		{"arm.motion",
	         "{poses: 5, bound_poses: 12, joints: ["
	         "{from: -180 deg, to: 180 deg, speed: 120 deg/s, acceleration: 300 deg/s2, stop: 600 deg/s2}, "
	         "{from: -30 deg, to: 90 deg, speed: 120 deg/s, acceleration: 300 deg/s2, stop: 600 deg/s2}]}"}};
	const char *text = text_with(arena, sample_lift, chain, sizeof chain / sizeof chain[0]);
	return text_with(arena, text, change, count);
}

const char *swing_sample_text(struct arena *arena, const struct change *change, size_t count)
{
	static const struct change swing[] = {
		{"arm.reactions", NULL},
		{"arm.mount", "[0 mm, 0 mm, 400 mm]"},
		{"arm.weight", "{arm: 30 kg, payload: 2 kg}"},
		{"cell.parts", "[{mass: 40 kg, at: [0 mm, 0 mm, 200 mm]}]"},
		{"arm.swing",
	         "{axes: both, reach: 600 mm, axis_height: 300 mm, peak_factor: 1.5, "
	         "vertical_axis: {speed: 120 deg/s, start_time: 0.4 s, stop_time: 0.3 s}, "
	         "horizontal_axis: {speed: 120 deg/s, start_time: 0.4 s, stop_time: 0.3 s}}"}};
	const char *text = text_with(arena, sample_lift, swing, sizeof swing / sizeof swing[0]);
	return text_with(arena, text, change, count);
}
