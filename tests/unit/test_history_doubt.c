/* What keeps a history from showing what it is said to show: each reason alone, and none. */
#include "../../src/arm/history_doubt.h"
#include "../../src/arm/ramps.h"

#include <criterion/criterion.h>
#include <string.h>

/* A fine record of an arm of 600 N. */
static struct arm_source fine(void)
{
	struct arm_source out = {.way = WAY_HISTORY};
	out.summary = (struct history_summary){.rows = 500, .median_step = 0.001,
	                                       .longest_step = 0.002, .force_ramp = RAMP_SAMPLES,
	                                       .moment_ramp = RAMP_SAMPLES, .force_span = 400};
	out.extreme[REACTION_DOWNFORCE].value = 800;
	return out;
}

static const char *doubt(const struct arm_source *source)
{
	const char *remedy = NULL, *why = history_doubt(source, 600, &remedy);
	cr_expect(!why || (remedy && *remedy));
	return why ? why : "";
}

Test(history_doubt, none)
{
	struct arm_source source = fine();
	cr_expect_str_eq(doubt(&source), "");
	const char *remedy;
	cr_expect_null(history_doubt(&source, 0, &remedy), "the arm's weight need not be known");
}

Test(history_doubt, few_rows)
{
	struct arm_source source = fine();
	source.summary.rows = RAMP_SAMPLES - 1;
	cr_expect(strstr(doubt(&source), "too few rows"));
}

/* 30 N of 600 N is what a calibration may lack. */
Test(history_doubt, nothing_moves)
{
	struct arm_source source = fine();
	source.summary.force_span = 29;
	cr_expect(strstr(doubt(&source), "hardly anything moves"));
	source.summary.force_span = 31;
	cr_expect_str_eq(doubt(&source), "");
}

Test(history_doubt, coarse)
{
	struct arm_source force = fine(), moment = fine();
	force.summary.force_ramp = RAMP_SAMPLES - 1;
	moment.summary.moment_ramp = RAMP_SAMPLES - 1;
	cr_expect(strstr(doubt(&force), "too coarsely"));
	cr_expect(strstr(doubt(&moment), "too coarsely"));
}

Test(history_doubt, gap)
{
	struct arm_source source = fine();
	source.summary.longest_step = 0.0051;
	cr_expect(strstr(doubt(&source), "gap"));
}

/* A sensor that was zeroed with the arm on it: 95 % of 600 N must press at some instant. */
Test(history_doubt, without_the_weight)
{
	struct arm_source source = fine();
	source.extreme[REACTION_DOWNFORCE].value = 569;
	cr_expect(strstr(doubt(&source), "weight is not in it"));
	source.extreme[REACTION_DOWNFORCE].value = 571;
	cr_expect_str_eq(doubt(&source), "");
}
