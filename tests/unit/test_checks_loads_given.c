/* loads.given: complete or not; never fails. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>

#define ID "loads.given"

Test(loads_given, every_gap_is_named)
{
	static const char *const row[][2] = {
		{"cell.parts", "cell.parts"}, {"cell.base", "cell.base"}, {"arm.mount", "arm.mount"},
		{"arm.weight.arm", "arm.weight.arm"}, {"arm.weight.payload", "arm.weight.payload"},
		{"arm.weight.reach.arm", "arm.weight.reach.arm"},
		{"arm.weight.reach.payload", "arm.weight.reach.payload"},
		{"arm.reactions.normal", "arm.reactions.normal"},
		{"arm.reactions.emergency_stop", "arm.reactions.emergency_stop"},
		{"arm.reactions.emergency_stop.vertical", "arm.reactions.emergency_stop.vertical"},
		{"arm.reactions.emergency_stop.horizontal", "arm.reactions.emergency_stop.horizontal"},
		{"arm.reactions.emergency_stop.tilting", "arm.reactions.emergency_stop.tilting"},
		{"arm.reactions.emergency_stop.twisting", "arm.reactions.emergency_stop.twisting"},
		{"arm.reactions.vertical_includes_weight", "arm.reactions.vertical_includes_weight"},
		{"arm.reactions.tilting_includes_weight", "arm.reactions.tilting_includes_weight"}};
	expect_verdict(HOLDS, sample_lift, ID);
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
		expect_verdict(UNPROVEN, sample_lift, ID, row[i][0], "unknown");
		cr_expect(is_missing(judged(sample_lift, ID, row[i][0], NULL, NULL), row[i][1]),
		          "%s", row[i][1]);
	}
}

Test(loads_given, nothing_at_all)
{
	struct trial trial;
	expect_verdict(UNPROVEN, sample_needs, ID, "anchors.needs", NULL);
	/* the needs of the machine's papers stand for a load model */
	trial_open(&trial, sample_needs, NULL);
	cr_expect_null(trial_check(&trial, ID));
	trial_close(&trial);
}

/* Departures under choices: more stabilising weight than the default, or one bed ratio alone. */
Test(loads_given, departures)
{
#define ENGINEER "choices.by_engineer", "{name: demo, reason: demo}"
	expect_verdict(HOLDS, sample_lift, ID, "choices.stabilising_weight", "0.6");
	expect_verdict(HOLDS, sample_lift, ID, "choices.stabilising_weight", "0.5");
	expect_verdict(UNPROVEN, sample_lift, ID, "choices.stabilising_weight", "0.61");
	expect_verdict(HOLDS, sample_lift, ID, "choices.stabilising_weight", "0.61", ENGINEER);
	expect_verdict(HOLDS, sample_lift, ID, "choices.stabilising_weight", "0.9",
	               "choices.masses_weighed", "yes");
	expect_verdict(UNPROVEN, sample_lift, ID, "choices.stabilising_weight", "0.91",
	               "choices.masses_weighed", "yes");
	expect_verdict(HOLDS, sample_lift, ID, "choices.stabilising_weight", "1", ENGINEER);
	expect_verdict(UNPROVEN, sample_lift, ID, "choices.anchor_bed_ratio", "560 mm2");
	expect_verdict(HOLDS, sample_lift, ID, "choices.anchor_bed_ratio", "560 mm2", ENGINEER);
	expect_verdict(UNPROVEN, sample_lift, ID, "choices.anchor_bed_ratio", "560 mm2",
	               "choices.by_engineer", "{name: demo}");
}
