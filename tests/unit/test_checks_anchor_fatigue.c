/* anchor.fatigue: number of cycles and largest range against the fatigue rating. */
#include "../support/history_cell.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <string.h>

#define ID "anchor.fatigue"
#define LIFE "arm.service_life", "10 years"
#define RANGE "anchors.product.rating.fatigue.range"
#define CYCLES "anchors.product.rating.fatigue.cycles"
/* at full weight 9806.65 N are held: lifting by 13 806.65 N leaves 1 kN an anchor, by 17 806.65 N
 * 2 kN. One round: from nothing to 2 kN, with 1 kN between twice: ranges 2 kN and 1 kN. */
#define ROUND HISTORY_HEAD \
	"0,0,0,0,0,0,0\n1,0,0,17806.65,0,0,0\n2,0,0,13806.65,0,0,0\n3,0,0,17806.65,0,0,0\n"
#define NEVER "arm.history[1].cycles_a_year", "0"
#define A_YEAR "arm.history[2].cycles_a_year"

static const struct check_result *judge(const char *a_year, const char *range, const char *cycles)
{
	return history_judged(HISTORY_STILL, ROUND, ID, NEVER, LIFE, A_YEAR, a_year, RANGE, range,
	                      CYCLES, cycles, NULL);
}

/* Two cycles a round and 10 years: 100 000 rounds a year are 2 million cycles, the most that asks
 * for no rating. */
Test(anchor_fatigue, without_a_rating)
{
	const struct check_result *check = judge("100000", "unknown", "unknown");
	cr_expect(held_but_for_rows(check), "%s", check->finding.reason);
	expect_near(check->finding.demand, 2e6, 0);
	expect_near(check->finding.ratio, 1, 0);
	cr_expect(strstr(check->finding.said_numbers, "no source"), "%s",
	          check->finding.said_numbers);
	cr_expect(check->finding.background);
	check = judge("100001", "unknown", "unknown");
	cr_expect_eq(check->finding.verdict, UNPROVEN);
	cr_expect(strstr(check->finding.reason, "no fatigue rating"), "%s", check->finding.reason);
	cr_expect(is_missing(check, RANGE) && is_missing(check, CYCLES));
}

Test(anchor_fatigue, with_a_rating)
{
	const struct check_result *check = judge("500000", "4 kN", "10000000");
	expect_near(check->finding.demand, 2000, 1e-5);
	expect_near(check->finding.ratio, 0.5, 1e-8);
	cr_expect(held_but_for_rows(check), "%s", check->finding.reason);
	cr_expect_eq(judge("500000", "1.9 kN", "10000000")->finding.verdict, UNPROVEN);
	/* more cycles than were shown: unproven, whatever the ratio */
	cr_expect_eq(judge("500001", "4 kN", "10000000")->finding.verdict, UNPROVEN);
	cr_expect_eq(judge("500001", "1.9 kN", "10000000")->finding.verdict, UNPROVEN);
}

/* Nothing fails by a number of cycles that is not known. */
Test(anchor_fatigue, missing)
{
	const struct check_result *check =
		history_judged(HISTORY_STILL, ROUND, ID, NEVER, A_YEAR, "500000", RANGE, "1.9 kN",
	                       CYCLES, "10000000", NULL);
	cr_expect_eq(check->finding.verdict, UNPROVEN);
	cr_expect(is_missing(check, "arm.service_life"));
	check = history_judged(HISTORY_STILL, ROUND, ID, LIFE, A_YEAR, "500000", RANGE, "1.9 kN",
	                       CYCLES, "10000000", NULL);
	cr_expect_eq(check->finding.verdict, UNPROVEN);
	cr_expect(is_missing(check, "arm.history[].cycles_a_year"));
	check = history_judged(HISTORY_STILL, ROUND, ID, LIFE, A_YEAR, "1", NULL);
	cr_expect_eq(check->finding.verdict, UNPROVEN);
}

/* Sources follow one another: from the lowest of one to the highest of the other. */
Test(anchor_fatigue, range_over_all_sources)
{
	static const char low[] = HISTORY_HEAD "0,0,0,13806.65,0,0,0\n1,0,0,15806.65,0,0,0\n",
			  high[] = HISTORY_HEAD "0,0,0,15806.65,0,0,0\n1,0,0,17806.65,0,0,0\n";
	const struct check_result *check =
		history_judged(low, high, ID, LIFE, NEVER, A_YEAR, "100", RANGE, "4 kN", CYCLES,
	                       "10000000", NULL);
	expect_near(check->finding.demand, 1000, 1e-5);
	const struct cycle_sources *cycles = &history_result()->cycles[0];
	cr_assert_eq(cycles->count, 2);
	expect_near(cycles->list[0].anchor[0].range, 500, 1e-5);
	expect_near(cycles->list[1].anchor[0].range, 500, 1e-5);
}

/* A cycle that has no equilibrium is not counted as none: all anchors beyond one edge, and the cell
 * tips about it. */
Test(anchor_fatigue, not_counted)
{
	const struct check_result *check = history_judged(
		HISTORY_STILL, HISTORY_HEAD "0,0,0,0,0,0,0\n1,0,0,0,0,-9000,0\n", ID, NEVER, LIFE,
		A_YEAR, "10", "anchors.at",
		"{unit: mm, points: [[-600, -300], [-600, 300], [-601, 0]]}", "anchors.lug", "yes",
		NULL);
	cr_expect_eq(check->finding.verdict, UNPROVEN);
	cr_expect(strstr(check->finding.reason, "are not counted: an instant"), "%s",
	          check->finding.reason);
}

Test(anchor_fatigue, left_out_without_cycles)
{
	struct trial trial;
	history_trial_open(&trial, HISTORY_STILL, ROUND, NULL, 0);
	cr_expect_null(trial_check(&trial, ID));
	cr_expect_eq(trial.result->cycles[0].count, 2); /* ranges are counted all the same */
	expect_near(trial.result->cycles[0].list[0].anchor[0].range, 2000, 1e-5);
	cr_expect_eq(trial.result->cycles[0].list[0].anchor[0].count, 2);
	trial_close(&trial);
	trial_open(&trial, sample_lift, NULL);
	cr_expect_null(trial_check(&trial, ID));
	trial_close(&trial);
}

/* Cycles of which nobody knows how many are no cycles that are not there. */
Test(anchor_fatigue, unknown_number_of_cycles)
{
	const struct check_result *check =
		history_judged(HISTORY_STILL, ROUND, ID, LIFE, A_YEAR, "unknown", NULL);
	cr_expect_eq(check->finding.verdict, UNPROVEN);
	cr_expect(is_missing(check, "arm.history[].cycles_a_year"));
}
