/* What `show` says: every key, as given and in the other system, defaults and unknowns marked, a
 * plan. */
#include "../../src/cell/fields.h"
#include "../../src/pages/pages.h"
#include "../../src/pages/writer.h"
#include "../../src/standfast.h"
#include "../support/printed.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static char *shown(const char *text)
{
	struct printed out = {0};
	struct standfast *run = standfast_open(NULL, NULL);
	if (standfast_read(run, text, strlen(text), "cell.yaml", NULL) != STANDFAST_DONE ||
	    standfast_compute(run, 0, NULL) != STANDFAST_DONE) {
		standfast_page(run, STANDFAST_DIAGNOSTICS, 0, printed_write, &out);
		cr_assert(false, "%s", out.text);
	}
	cr_assert_eq(standfast_page(run, STANDFAST_UNDERSTOOD, 0, printed_write, &out),
	             STANDFAST_DONE);
	standfast_close(run);
	cr_expect_leq(printed_width(out.text), PAGE_WIDTH, "%s", out.text);
	cr_expect_not(printed_trails(out.text));
	return out.text;
}

static void expect_line(const char *page, const char *key, const char *value)
{
	char line[200];
	snprintf(line, sizeof line, "%-44s%s\n", key, value);
	cr_expect(strstr(page, line), "no line '%s' in\n%s", line, page);
}

static const char *const file =
	"standfast: 1\n"
	"slab:\n"
	"  thickness: {value: 6 1/2 in, evidence: unknown}\n"
	"  topping: none\n"
	"  concrete: {strength: {cores: {unit: MPa, values: [34.1, 31.8]}}}\n"
	"cell:\n"
	"  parts:\n"
	"    - {name: frame, mass: 380 kg, at: [0 mm, 0 mm, 120 mm]}\n"
	"    - {name: box, mass: unknown, box: {from: [0 mm, 0 mm, 0 mm], to: [100 mm, 100 mm, 100 mm]}}\n"
	"  base: [{outline: {unit: mm, points: [[-500, -400], [500, -400], [500, 400], [-500, 400]]}}]\n"
	"arm: {mount: [0 mm, 0 mm, 850 mm]}\n"
	"setups: [{name: low, arm.mount: [0 mm, 0 mm, 500 mm]}, {name: high, slab.thickness: 200 mm}]\n"
	"anchors:\n"
	"  at: {unit: mm, points: [[-450, -350], [450, 350]]}\n"
	"  plate_hole: slotted\n";

Test(show, tells_values_defaults_and_unknowns)
{
	char *page = shown(file);
	expect_line(page, "slab.thickness.value", "6.5 in = 165.1 mm");
	expect_line(page, "slab.thickness.evidence", "not known");
	expect_line(page, "slab.topping", "none");
	cr_expect_null(strstr(page, "slab.topping.thickness"));
	expect_line(page, "slab.concrete.strength.cores.values", "34.1, 31.8 MPa = 4946, 4612 psi");
	expect_line(page, "slab.clear", "not known");
	expect_line(page, "cell.parts[1].mass", "380 kg = 837.8 lb");
	expect_line(page, "cell.parts[2].mass", "not known");
	expect_line(page, "cell.parts[2].box.to",
	            "[100, 100, 100] mm = [3.937, 3.937, 3.937] in");
	expect_line(page, "anchors.at", "A1 [-450, -350] A2 [450, 350] mm = A1 [-17.72, -13.78]\n"
	                                "                                            A2 [17.72, 13.78] in");
	expect_line(page, "anchors.plate_hole", "slotted");
	expect_line(page, "anchors.product.rating.allowed_share", "25 % (default)");
	expect_line(page, "anchors.product.label", "not given");
	expect_line(page, "anchors.product.tensile_area", "left out");
	expect_line(page, "anchors.product.rating.of_ultimate", "left out");
	expect_line(page, "choices.anchor_bed_ratio", "left out");
	expect_line(page, "cell.at", "left out");
	/* nobody has left out what he calls unknown */
	free(page);
	page = shown("standfast: 1\nchoices: {anchor_bed_ratio: unknown}\n"
	             "anchors: {at: {unit: mm, points: [[12345.678, 0], [0.125, 33.25]]}}\n");
	expect_line(page, "choices.anchor_bed_ratio", "not known");
	cr_expect(strstr(page, "A1 [12345.678, 0] A2 [0.125, 33.25] mm"),
	          "every digit that was given: %s", page);
	free(page);
}

Test(show, lists_setups_with_their_overrides)
{
	char *page = shown(file);
	expect_line(page, "setups[1].name", "low");
	expect_line(page, "  arm.mount", "[0, 0, 500] mm = [0, 0, 19.69] in");
	expect_line(page, "setups[2].name", "high");
	expect_line(page, "  slab.thickness.value", "200 mm = 7.874 in");
	free(page);
}

/* The word none, whatever shape the value in its place would have. */
Test(show, says_none_where_the_file_does)
{
	char *page = shown("standfast: 1\n"
	                   "slab: {topping: none, outline: none, joints: none, old_holes: none}\n"
	                   "cell: {parts: none, stand_off: none}\n"
	                   "anchors: {at: {unit: mm, points: [[0, 0]]}}\n");
	static const char *const keys[] = {"slab.topping",   "slab.outline", "slab.joints",
	                                   "slab.old_holes", "cell.parts",   "cell.stand_off"};
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
		expect_line(page, keys[i], "none");
	free(page);
	page = shown("standfast: 1\nsetups: [{name: low, slab.outline: none}, {name: high}]\n"
	             "anchors: {at: {unit: mm, points: [[0, 0]]}}\n");
	expect_line(page, "  slab.outline", "none");
	cr_expect_null(strstr(page, "mm = in"), "%s", page);
	free(page);
}

static const char *const weights_unknown =
	"standfast: 1\n"
	"cell:\n"
	"  parts: [{name: frame, mass: 380 kg, at: [0 mm, 0 mm, 120 mm]}]\n"
	"  base: [{outline: {unit: mm, points: [[-500, -400], [500, -400], [500, 400], [-500, 400]]}}]\n"
	"arm:\n"
	"  mount: [0 mm, 0 mm, 850 mm]\n"
	"  weight: {arm: 70 kg, payload: 10 kg, reach: {arm: 300 mm, payload: 900 mm}}\n"
	"  reactions:\n"
	"%s"
	"    normal: {vertical: 1.1 kN, horizontal: 0.6 kN, tilting: 0.7 kN m, twisting: 0.4 kN m}\n"
	"    emergency_stop: {vertical: 1.6 kN, horizontal: 1.4 kN, tilting: 1.5 kN m, twisting: 0.9 kN m}\n"
	"anchors: {at: {unit: mm, points: [[-450, -350], [450, -350], [450, 350], [-450, 350]]}}\n";

static char *shown_with_flags(const char *flags)
{
	char text[1500];
	snprintf(text, sizeof text, weights_unknown, flags);
	return shown(text);
}

/* The load cases of one source are told apart by what stands behind their numbers. */
Test(show, tells_the_readings_of_unknown_weight_flags)
{
	char *page = shown_with_flags("");
	cr_expect(strstr(page, "`fixed x` is the sum of N x"), "%s", page);
	cr_expect(strstr(page, "`vertical` read as including the weight"), "%s", page);
	cr_expect(strstr(page, "`vertical` read as without the weight"), "%s", page);
	cr_expect(strstr(page, "`tilting` read as without the weight"), "%s", page);
	free(page);
	page = shown_with_flags("    vertical_includes_weight: yes\n");
	cr_expect_null(strstr(page, "`vertical` read"), "%s", page);
	cr_expect(strstr(page, "`tilting`"), "%s", page);
	free(page);
	page = shown_with_flags("    vertical_includes_weight: yes\n"
	                        "    tilting_includes_weight: no\n");
	cr_expect_null(strstr(page, "read as"), "%s", page);
	free(page);
}

static const char *const arm_file =
	"standfast: 1\n"
	"arm:\n"
	"  chain:\n"
	"    convention: frames\n"
	"    joints:\n"
	"      - {mass: 5 kg, inertia: {xx: 1200 kg cm2, yy: 500 lb in2, zz: unknown}}\n"
	"      - {kind: prismatic}\n"
	"  motion:\n"
	"    joints:\n"
	"      - {from: -170 deg, to: 170 deg, speed: 170 deg/s, stop_time: 350 ms}\n"
	"      - {from: 0 mm, to: 800 mm, speed: 1.5 m/s, stop: unknown, stop_time: 0.35 s}\n"
	"    cycle: [{at: 0 s, angles: [0 deg], slides: [0 mm]}, {at: 1.2 s, angles: [0.5 rad], slides: [4 in]}]\n"
	"  service_life: 10 years\n"
	"earthquake: none\n"
	"setups: [{name: quake, earthquake: {code: en1998, soil: 1.2}}, {name: still, arm.motion: unknown}]\n"
	"anchors: {at: {unit: mm, points: [[0, 0]]}}\n";

/* Times stay in the unit written: a stop is never printed in days. */
Test(show, tells_the_arm_as_it_was_written)
{
	char *page = shown(arm_file);
	expect_line(page, "arm.mounting", "floor (default)");
	expect_line(page, "arm.turned", "left out");
	expect_line(page, "arm.chain.joints[1].inertia.xx", "1200 kg cm2 = 410.1 lb in2");
	expect_line(page, "arm.chain.joints[1].inertia.yy", "500 lb in2 = 0.1463 kg m2");
	expect_line(page, "arm.chain.joints[1].inertia.zz", "not known");
	expect_line(page, "arm.motion.joints[1].from", "-170 deg");
	expect_line(page, "arm.motion.joints[1].speed", "170 deg/s");
	expect_line(page, "arm.motion.joints[1].stop_time", "350 ms");
	expect_line(page, "arm.motion.joints[2].to", "800 mm = 31.5 in");
	expect_line(page, "arm.motion.joints[2].speed", "1.5 m/s = 59.06 in/s");
	expect_line(page, "arm.motion.joints[2].stop", "not known");
	expect_line(page, "arm.motion.joints[2].stop_time", "0.35 s");
	expect_line(page, "arm.motion.poses", "8 (default)");
	expect_line(page, "arm.motion.cycle[2].at", "1.2 s");
	/* 0.5 rad x 180/pi = 28.648 deg */
	expect_line(page, "arm.motion.cycle[2].angles", "28.65 deg");
	expect_line(page, "arm.motion.cycle[2].slides", "101.6 mm = 4 in");
	expect_line(page, "arm.swing", "left out");
	expect_line(page, "arm.service_life", "10 years");
	expect_line(page, "earthquake", "none");
	expect_line(page, "  earthquake.code", "en1998");
	expect_line(page, "  arm.motion", "not known");
	cr_expect_null(strstr(page, "arm.swing.reach"), "%s", page);
	cr_expect_null(strstr(page, "\nearthquake.code"), "%s", page);
	free(page);
	page = shown("standfast: 1\nearthquake: {sds: unknown}\n"
	             "anchors: {at: {unit: mm, points: [[0, 0]]}}\n");
	expect_line(page, "earthquake.sds", "not known");
	expect_line(page, "arm.chain", "left out");
	expect_line(page, "anchors.product.rating.fatigue", "left out");
	free(page);
}

static void expect_explained(const char *word, const char *const lines[])
{
	struct printed out = {0};
	bool found;
	cr_assert(page_explain(word, false, printed_write, &out, &found));
	cr_assert(found, "%s", word);
	for (size_t i = 0; lines[i]; i++)
		cr_expect(strstr(out.text, lines[i]), "no '%s' in\n%s", lines[i], out.text);
	free(out.text);
}

/* What show prints as written, explain must offer: both meanings of a joint's number, and limits of
 * a time in the unit of its example. */
Test(show, and_explain_speak_the_same_units)
{
	expect_explained("arm.motion.joints[].speed",
	                 (const char *const[]){"120 deg/s (angular speed)", "of a revolute joint",
	                                       "1.5 m/s (speed)", "of a prismatic joint",
	                                       "0 m/s to 20 m/s", NULL});
	expect_explained("arm.motion.joints[3].stop_time",
	                 (const char *const[]){"0.001 s to 60 s", NULL});
	expect_explained("arm.service_life",
	                 (const char *const[]){"0.01 years to 100 years", NULL});
	expect_explained("slab.concrete.age", (const char *const[]){"0 days to 73050 days", NULL});
}

/* "arm.swing  left out" stands for all keys below it. */
static bool is_left_out_above(const char *page, const char *path)
{
	char line[200];
	for (const char *dot = strchr(path, '.'); dot; dot = strchr(dot + 1, '.')) {
		int width = (int)(dot - path);
		snprintf(line, sizeof line, "\n%.*s%*sleft out\n", width, path, 44 - width, "");
		if (strstr(page, line))
			return true;
	}
	return false;
}

/* Whether every key of the file itself is named. */
Test(show, leaves_out_no_key)
{
	char *page = shown("standfast: 1\nanchors: {at: {unit: mm, points: [[0, 0]]}}\n");
	for (size_t i = 0; i < field_count; i++) {
		const struct field *field = &fields[i];
		char start[128];
		bool value = field->kind != FIELD_SECTION && field->kind != FIELD_ALIAS &&
		             field->kind != FIELD_NONE && field->kind != FIELD_SETUPS;
		snprintf(start, sizeof start, "\n%s ", field->path);
		if (value && !strstr(field->path, "[]"))
			cr_expect(strstr(page, start) || is_left_out_above(page, field->path),
			          "%s", field->path);
	}
	cr_expect(strstr(page, "none: the file has no load model"));
	free(page);
}

/* What a sheet does not state is mostly taken by the codes themselves, which is no gap. */
Test(show, tells_code_values_as_stated)
{
	char *page = shown("standfast: 1\nmethods: [rating, en1992_4]\n"
	                   "slab: {reinforcement: {bar_diameter: 10 mm}}\n"
	                   "anchors:\n  at: {unit: mm, points: [[0, 0]]}\n"
	                   "  product: {strength: {yield: 640 MPa, shear_area: unknown, "
	                   "en1992_4: {pullout: {cracked: does_not_govern}}}}\n");
	expect_line(page, "slab.reinforcement.supplementary", "no (default)");
	expect_line(page, "slab.reinforcement.bar_diameter", "10 mm = 0.3937 in");
	expect_line(page, "slab.reinforcement.bar_spacing", "left out");
	expect_line(page, "anchors.product.strength.yield", "640 MPa = 92820 psi");
	expect_line(page, "anchors.product.strength.ultimate", "not known");
	expect_line(page, "anchors.product.strength.shear_area", "not known");
	expect_line(page, "anchors.product.strength.aci318", "left out");
	cr_expect(strstr(page, "strength.en1992_4.pullout.cracked does_not_govern\n"), "%s", page);
	cr_expect(strstr(page, "strength.en1992_4.steel_tension left out\n"), "%s", page);
	expect_line(page, "anchors.product.strength.en1992_4.bond", "left out");
	expect_line(page, "methods", "rating, en1992_4");
	free(page);
	page = shown("standfast: 1\nanchors: {at: {unit: mm, points: [[0, 0]]}}\n");
	expect_line(page, "slab.reinforcement", "left out");
	expect_line(page, "anchors.product.strength", "left out");
	free(page);
}

Test(show, draws_the_plan_to_scale)
{
	char *page = shown(file);
	const char *plan = strstr(page, "Plan, cell axes\n"), *a2 = strstr(plan, "A2"),
		   *a1 = strstr(plan, "A1");
	cr_assert(a1 && a2 && a2 < a1, "A2 lies farther up: %s", plan);
	const char *line2 = a2, *line1 = a1;
	while (line2[-1] != '\n')
		line2--;
	while (line1[-1] != '\n')
		line1--;
	int rows = 0;
	for (const char *at = a2; at < a1; at++)
		rows += *at == '\n';
	/* 900 mm at 20 mm a character, 700 mm at 40 mm a row; half a character of rounding at each
	 * end */
	cr_expect(strstr(plan, "one character is 20 mm wide and 40 mm high"), "%s", plan);
	cr_expect_leq(labs((a2 - line2) - (a1 - line1) - 45), 1, "%s", plan);
	cr_expect_leq(abs(rows - 17), 1, "%s", plan);
	free(page);
}

Test(show, draws_edges_and_joints_that_are_near)
{
	char *page = shown("standfast: 1\n"
	                   "slab:\n"
	                   "  outline: {unit: m, points: [[0, 0], [14, 0], [14, 9], [0, 9]]}\n"
	                   "  joints: [{from: [1.8 m, 0 m], to: [1.8 m, 9 m], type: saw_cut}]\n"
	                   "  old_holes: [{at: [1.5 m, 1 m]}]\n"
	                   "cell: {at: [1 m, 0.5 m], turned: 0 deg}\n"
	                   "anchors: {at: {unit: mm, points: [[-450, -350], [450, -350], [450, 350], [-450, 350]]}, lug: yes}\n");
	const char *plan = strstr(page, "Plan, cell axes\n");
	cr_expect(strchr(plan, '#') && strchr(plan, '~') && strstr(plan, "o old hole"), "%s", plan);
	free(page);
}

Test(show, stands_any_size_of_cell)
{
	static const char *const sizes[] = {"10", "77", "1000", "100000"};
	for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
		char text[300];
		snprintf(text, sizeof text,
		         "standfast: 1\nanchors: {at: {unit: mm, points: [[0, 0], [%s, 0], [0, %s]]}}\n", sizes[i], sizes[i]);
		char *page = shown(text);
		cr_expect(strstr(page, "A2") && strstr(page, "A3"), "%s", page);
		free(page);
	}
}
