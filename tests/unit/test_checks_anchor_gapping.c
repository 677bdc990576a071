/* anchor.gapping: largest service tension against what is left of the preload. */
#include "../support/history_cell.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <string.h>

#define ID "anchor.gapping"
#define OFTEN "arm.history[2].cycles_a_year", "1000"
/* 50 N m on a shaft of 12 mm with K = 0.2: 20 833.3 N, of which 0.4 is left: 8333.3 N */
#define TORQUE "anchors.product.setting_torque", "50 N m"
#define K "anchors.product.torque_coefficient", "0.2"
#define SHAFT "anchors.product.shaft", "12 mm"
#define LIFE "arm.service_life", "10 years"
/* 9806.65 N of weight at 0.6 hold 5883.99 N; lifting by 37 883.99 N leaves 8000 N for each of four
 * anchors, lifting by 45 883.99 N leaves 10 000 N */
#define LIFT_8 HISTORY_HEAD "0,0,0,37883.99,0,0,0\n"
#define LIFT_10 HISTORY_HEAD "0,0,0,45883.99,0,0,0\n"

Test(anchor_gapping, holds_below_the_clamp)
{
	const struct check_result *check =
		history_judged(HISTORY_STILL, LIFT_8, ID, OFTEN, TORQUE, K, SHAFT, LIFE,
	                       "arm.history[1].cycles_a_year", "1", NULL);
	expect_near(check->finding.demand, 8000, 1e-4);
	expect_near(check->finding.capacity, 8333.3333333, 1e-6);
	expect_near(check->finding.ratio, 0.96, 1e-7);
	cr_expect(held_but_for_rows(check), "%s", check->finding.reason);
}

/* No loss of strength: it never fails, and says by how much. */
Test(anchor_gapping, unproven_above_it)
{
	const struct check_result *check =
		history_judged(HISTORY_STILL, LIFT_10, ID, OFTEN, TORQUE, K, SHAFT, LIFE, NULL);
	expect_near(check->finding.ratio, 1.2, 1e-7);
	cr_expect_eq(check->finding.verdict, UNPROVEN);
	cr_expect(strstr(check->finding.reason, "1.667 kN more"), "%s", check->finding.reason);
}

Test(anchor_gapping, missing)
{
	static const char *const path[] = {"anchors.product.torque_coefficient",
	                                   "anchors.product.setting_torque", "anchors.product.shaft"};
	for (size_t i = 0; i < sizeof path / sizeof *path; i++) {
		const struct change change[] = {{OFTEN}, {TORQUE}, {K}, {SHAFT}, {path[i], NULL}};
		struct trial trial;
		history_trial_open(&trial, HISTORY_STILL, LIFT_8, change, 5);
		const struct check_result *check = trial_check(&trial, ID);
		cr_assert(check);
		cr_expect_eq(check->finding.verdict, UNPROVEN, "%s", path[i]);
		cr_expect(is_missing(check, path[i]), "%s", path[i]);
		cr_expect_not(check->finding.computed);
		trial_close(&trial);
	}
}

/* Twice the torque, half the coefficient: half the ratio each. */
Test(anchor_gapping, in_proportion)
{
	double one = history_judged(HISTORY_STILL, LIFT_8, ID, OFTEN, TORQUE, K, SHAFT, NULL)
	                     ->finding.ratio;
	double torque = history_judged(HISTORY_STILL, LIFT_8, ID, OFTEN,
	                               "anchors.product.setting_torque", "100 N m", K, SHAFT, NULL)
	                        ->finding.ratio;
	double coefficient = history_judged(HISTORY_STILL, LIFT_8, ID, OFTEN, TORQUE,
	                                    "anchors.product.torque_coefficient", "0.1", SHAFT, NULL)
	                             ->finding.ratio;
	expect_near(torque, one / 2, 1e-12);
	expect_near(coefficient, one / 2, 1e-12);
}

Test(anchor_gapping, left_out_without_cycles)
{
	struct trial trial;
	bool told = false;
	history_trial_open(&trial, HISTORY_STILL, LIFT_8, NULL, 0);
	cr_expect_null(trial_check(&trial, ID));
	for (size_t i = 0; i < trial.result->left_out_count; i++)
		told |= strcmp(trial.result->left_out[i].id, ID) == 0 &&
		        strstr(trial.result->left_out[i].why, "no load cycles are given");
	cr_expect(told);
	trial_close(&trial);
	/* stated in one setup alone is stated */
	const struct change setups = {
		"setups", "[{name: a}, {name: b, arm.history: [{file: b.csv, of: emergency_stop, "
			  "cycles_a_year: 5}, {file: a.csv, of: normal}]}]"};
	history_trial_open(&trial, HISTORY_STILL, LIFT_8, &setups, 1);
	cr_expect(trial_check(&trial, ID) != NULL);
	trial_close(&trial);
}
