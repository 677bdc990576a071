/* The earthquake through the whole flow: its cases in every check, its written calculation, and
 * what an unknown key does to a verdict. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <string.h>

#define QUAKE \
	"{code: asce7_22, height_share: 0, sds: 1, resonance: 1, response: 1.5, importance: 1, overstrength: 2}"

/* A cell of 500 kg with an arm at its own weight alone, so that the earthquake governs. */
static const struct change still[] = {
	{"cell.parts", "[{name: frame, mass: 400 kg, at: [0 mm, 0 mm, 700 mm]}]"},
	{"arm.mount", "[0 mm, 0 mm, 900 mm]"},
	{"arm.weight", "{arm: 80 kg, payload: 20 kg, reach: {arm: 500 mm, payload: 1200 mm}}"},
	{"arm.reactions.normal", "{vertical: 1.2 kN, horizontal: 0.2 kN, tilting: 0.1 kN m, twisting: 0 N m}"},
	{"arm.reactions.emergency_stop", "{vertical: 1.3 kN, horizontal: 0.3 kN, tilting: 0.2 kN m, twisting: 0 N m}"},
	{"earthquake", QUAKE}};

static void run(struct trial *trial, struct arena *texts, const struct change *more, size_t count)
{
	struct check_options options = {.trace = true};
	arena_open(texts, NULL, NULL);
	const char *yaml = text_with(texts, sample_lift, still, sizeof still / sizeof still[0]);
	trial_open(trial, text_with(texts, yaml, more, count), &options);
	cr_assert(trial->result, "%s", reading_faults(&trial->reading));
}

static void finish(struct trial *trial, struct arena *texts)
{
	trial_close(trial);
	arena_close(texts);
}

Test(earthquake_flow, governs_and_can_be_followed_on_paper)
{
	static const struct change boxes = {
		"cell.parts", "[{name: frame, mass: 400 kg, least_mass: 100 kg, box: {from: [-300 mm, -200 mm, 0 mm],"
		" to: [300 mm, 200 mm, 900 mm]}}]"};
	for (size_t boxed = 0; boxed < 2; boxed++) {
		struct trial trial;
		struct arena texts;
		run(&trial, &texts, &boxes, boxed);
		const struct check_result *tension = trial_check(&trial, "rating.tension");
		cr_assert(tension && tension->at.load_case);
		cr_expect(strstr(tension->at.load_case->name, "earthquake, ASCE 7-22 13.3.1"), "%s",
		          tension->at.load_case->name);
		cr_expect(strstr(tension->at.load_case->combination, "ASCE 7 2.4.5"), "%s",
		          tension->at.load_case->combination);
		for (size_t i = 0; i < trial.result->check_count; i++)
			traced_expressions(&trial.result->checks[i].trace,
			                   trial.result->checks[i].check->id);
		cr_expect_eq(traced_value(&tension->trace, "N"), tension->at.load_case->down);
		finish(&trial, &texts);
	}
}

/* With an earthquake no anchor carries less; with the word none nothing changes. */
Test(earthquake_flow, adds_and_never_relieves)
{
	static const struct change none = {"earthquake", "none"}, gone = {"earthquake", NULL};
	struct trial with, without, absent;
	struct arena texts[3];
	run(&with, &texts[0], NULL, 0);
	run(&without, &texts[1], &none, 1);
	run(&absent, &texts[2], &gone, 1);
	for (size_t i = 0; i < with.result->anchor_count; i++) {
		cr_expect_gt(with.result->anchor[i].tension, without.result->anchor[i].tension);
		cr_expect_gt(with.result->anchor[i].shear, without.result->anchor[i].shear);
		cr_expect_eq(without.result->anchor[i].tension, absent.result->anchor[i].tension);
	}
	cr_expect_eq(without.result->verdict, absent.result->verdict);
	finish(&with, &texts[0]);
	finish(&without, &texts[1]);
	finish(&absent, &texts[2]);
}

/* A key of the code that is not known: no earthquake in the figures, and no check of them holds. */
Test(earthquake_flow, unknown_key_is_unproven)
{
	static const struct change lost = {"earthquake.sds", "unknown"};
	struct trial trial;
	struct arena texts;
	run(&trial, &texts, &lost, 1);
	const struct check_result *tension = trial_check(&trial, "rating.tension");
	cr_expect_eq(tension->finding.verdict, UNPROVEN);
	const struct check_result *given = trial_check(&trial, "loads.given");
	cr_expect(is_missing(given, "earthquake.sds"));
	finish(&trial, &texts);
}
