/* The one flow: which bed ratios are run, how setups and checks make the file's verdict, what is
 * left out. */
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static struct arena arena;
static struct trial trial;

static const struct result *run(const char *yaml, const struct change *change, size_t count,
                                const struct check_options *options)
{
	arena_open(&arena, NULL, NULL);
	trial_open(&trial, text_with(&arena, yaml, change, count), options);
	cr_assert_eq(trial.reading.status, DONE, "%s", reading_faults(&trial.reading));
	return trial.result;
}

static void done(void)
{
	trial_close(&trial);
	arena_close(&arena);
}

/* Es As / Ec = 200 000 x 84.3 / (4700 sqrt(40)) = 567.1915 mm2, run at 1/4, 1, 4 and 16 times. */
Test(check_run, bed_ratios)
{
	static const double times[] = {0.25, 1, 4, 16};
	const struct result *result = run(sample_lift, NULL, 0, NULL);
	cr_assert_eq(result->bed_ratio_count, 4);
	for (size_t k = 0; k < 4; k++)
		expect_near(result->bed_ratio[k], times[k] * 567.1915, 1e-3 * times[k]);
	done();
}

/* Without a tensile area 0.78 of the shaft's: 0.78 x pi/4 x 12^2 = 88.216 mm2: 593.54 mm2; without
 * concrete that of 28 MPa: 677.92 mm2; one ratio stated is run alone. */
Test(check_run, bed_ratio_by_default_and_by_choice)
{
	const struct change area = {"anchors.product.tensile_area", NULL};
	expect_near(run(sample_lift, &area, 1, NULL)->bed_ratio[1], 593.54, 0.01);
	done();
	const struct change concrete = {"slab.concrete.strength", NULL};
	expect_near(run(sample_lift, &concrete, 1, NULL)->bed_ratio[1], 677.92, 0.01);
	done();
	const struct change own = {"choices.anchor_bed_ratio", "100 mm2"};
	const struct result *result = run(sample_lift, &own, 1, NULL);
	cr_expect_eq(result->bed_ratio_count, 1);
	expect_near(result->bed_ratio[0], 100, 1e-12);
	done();
}

/* A soft bed pulls the corner anchor harder than a stiff one: the worst of the ratios is used, and
 * the spread shows them all. */
Test(check_run, spread)
{
	const struct change tilt = {"arm.reactions.emergency_stop.tilting", "10 kN m"};
	const struct result *result = run(sample_lift, &tilt, 1, NULL);
	for (size_t i = 0; i < 4; i++) {
		double most = 0;
		for (size_t k = 0; k < 4; k++)
			most = fmax(most, result->spread[i][k]);
		expect_near(most, result->anchor[i].tension, 0);
		cr_expect_lt(result->spread[i][0], result->spread[i][3]);
	}
	done();
}

/* The file's verdict is the worst of its checks, in any of its setups. */
Test(check_run, worst_of_checks_and_setups)
{
	static const struct { struct change change; enum verdict verdict; } row[] = {
		{{"slab.scan", "done"}, UNPROVEN},                   /* net uplift: slab.carries */
		{{"cell.parts", "[{mass: 1000 kg, at: [0 mm, 0 mm, 0 mm]}]"}, HOLDS},
		{{"slab.concrete.condition", "damaged"}, FAILS},
		{{"setups", "[{name: a}, {name: b, slab.concrete.condition: damaged}]"}, FAILS}};
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
		const struct result *result = run(sample_lift, &row[i].change, 1, NULL);
		cr_expect_eq(result->verdict, row[i].verdict, "row %zu: %d", i, result->verdict);
		cr_expect_eq(result->checks[result->governing].finding.verdict, result->verdict,
		             "row %zu", i);
		done();
	}
}

/* Checks that do not apply are listed apart, with the reason, and none is lost. */
Test(check_run, left_out)
{
	const char *const texts[] = {sample_needs, sample_lift};
	for (size_t t = 0; t < 2; t++) {
		const struct result *result = run(texts[t], NULL, 0, NULL);
		size_t due = 0;
		for (size_t i = 0; i < check_count; i++)
			due += checks[i].method == EVERY_METHOD || checks[i].method == ONLY_RATING;
		cr_expect_eq(result->check_count + result->left_out_count, due);
		for (size_t i = 0; i < result->left_out_count; i++)
			cr_expect(check_find(result->left_out[i].id) && *result->left_out[i].why);
		cr_expect_eq(result->loads_computed, t == 1);
		done();
	}
}

/* One check's steps alone may be asked for; the verdict is that of all. */
Test(check_run, trace_of_one_check)
{
	const struct check_options options = {.trace = true, .only = "slab.thickness"};
	const struct result *result = run(sample_lift, NULL, 0, &options);
	for (size_t i = 0; i < result->check_count; i++)
		cr_expect_eq(result->checks[i].trace.count > 0,
		             strcmp(result->checks[i].check->id, "slab.thickness") == 0, "%s",
		             result->checks[i].check->id);
	cr_expect_eq(result->verdict, UNPROVEN);
	done();
}
