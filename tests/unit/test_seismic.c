/* Earthquake force on a component: a published calculation, hand solutions, limits and identities
 * of the three codes. */
#include "../../src/loads/rare_combination.h"
#include "../../src/loads/seismic_component.h"
#include "../support/random_base.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static void near(double value, double expected, double tolerance, const char *what)
{
	cr_assert(fabs(value - expected) <= tolerance, "%s: %.15g, expected %.15g", what, value,
	          expected);
}

/* --- ASCE 7-16 ------------------------------------------------------------------------------ */

/* A public calculation with ASCE 7-16 13.3.1: ap 1, SDS 1.027, Ip 1, Wp 2.7 psf, Rp 2.5, z/h 0.573:
 * 0.952 psf, limits 4.437 and 0.832. Printed with three decimals; forces are proportional to the
 * weight, so its unit (psf there) is of no matter. */
Test(seismic, published_calculation)
{
	const struct seismic_asce7_16 site = {1.027, 1, 2.5, 1, 0.573, 2};
	struct seismic_force force;
	cr_assert_null(seismic_asce7_16_fault(&site));
	seismic_asce7_16(&site, 2.7, &force, NULL);
	near(force.horizontal, 0.952, 0.0005, "Fp");
	near(force.most, 4.437, 0.0005, "upper limit");
	near(force.least, 0.832, 0.0005, "lower limit");
	cr_assert_eq(force.governs, SEISMIC_BY_EQUATION);
	cr_assert_eq(force.horizontal, force.equation);
	near(force.vertical, 0.2 * 1.027 * 2.7, 1e-15, "vertical");
	near(force.for_anchors, 2 * force.horizontal, 1e-15, "overstrength");
}

/* At the floor a stiff and ductile component falls to the lower limit, at the roof a flexible and
 * brittle one to the upper. */
Test(seismic, asce7_16_limits)
{
	struct seismic_asce7_16 site = {1, 1, 6, 1.5, 0, 1};
	struct seismic_force force;
	seismic_asce7_16(&site, 1000, &force, NULL);
	near(force.equation, 100, 1e-12, "0.4 x 1.5/6");
	near(force.horizontal, 450, 1e-12, "0.3 x 1.5");
	cr_assert_eq(force.governs, SEISMIC_BY_LEAST);
	site = (struct seismic_asce7_16){1, 2.5, 1.5, 1, 1, 1};
	seismic_asce7_16(&site, 1000, &force, NULL);
	near(force.equation, 2000, 1e-12, "0.4 x 2.5/1.5 x 3");
	near(force.horizontal, 1600, 1e-12, "1.6");
	cr_assert_eq(force.governs, SEISMIC_BY_MOST);
}

/* --- ASCE 7-22 ------------------------------------------------------------------------------ */

/* Hand solution: a1 = 1/0.8, a2 = 1 - 0.25, Hf = 1.6257324, Rmu = sqrt(1.1 x 8/3) = 1.7126977,
 * 0.4 x 1.5 x Hf/Rmu x 1.4/1.5 = 0.531565009. */
Test(seismic, asce7_22_in_a_building)
{
	const struct seismic_asce7_22 site = {1, 1.5, 0.5, 1.4, 1.5, 2, 0.8, 8, 1, 3};
	struct seismic_force force;
	cr_assert_null(seismic_asce7_22_fault(&site));
	seismic_asce7_22(&site, 1000, &force, NULL);
	near(force.horizontal, 531.565009, 1e-6, "Fp");
	near(force.least, 450, 1e-12, "least");
	near(force.most, 2400, 1e-12, "most");
	near(force.for_anchors, 2 * 531.565009, 2e-6, "overstrength");
}

/* At grade Hf = Rmu = 1: 0.4 SDS Wp with unit factors, whatever is known of the building. */
Test(seismic, asce7_22_at_grade)
{
	struct seismic_asce7_22 site = {1.2, 1, 0, 1, 1, 1, 0, 0, 0, 0};
	struct seismic_force force;
	seismic_asce7_22(&site, 1000, &force, NULL);
	near(force.horizontal, 480, 1e-12, "0.4 SDS Wp");
	site.building_period = 0.6;
	site.building_response = 8;
	site.building_importance = 1;
	site.building_overstrength = 2.5;
	seismic_asce7_22(&site, 1000, &force, NULL);
	near(force.horizontal, 480, 1e-12, "0.4 SDS Wp");
}

/* What is not known of the building is taken so that knowing it never raises the force. */
Test(seismic, asce7_22_unknown_is_the_bound)
{
	for (uint64_t number = 0; number < 2000; number++) {
		struct dice dice = dice_open(61, number);
		struct seismic_asce7_22 unknown = {dice_between(&dice, 0, 2),
		                                   1,
		                                   dice_between(&dice, 0, 1),
		                                   dice_between(&dice, 1, 3),
		                                   dice_between(&dice, 1, 3),
		                                   2,
		                                   0,
		                                   0,
		                                   0,
		                                   0};
		struct seismic_asce7_22 known = unknown;
		struct seismic_force bound, force;
		known.building_period = dice_decades(&dice, -1, 1);
		known.building_response = dice_between(&dice, 1, 8);
		known.building_importance = dice_between(&dice, 1, 1.5);
		known.building_overstrength = dice_between(&dice, 1, 3);
		cr_assert_null(seismic_asce7_22_fault(&unknown));
		cr_assert_null(seismic_asce7_22_fault(&known));
		seismic_asce7_22(&unknown, 1000, &bound, NULL);
		seismic_asce7_22(&known, 1000, &force, NULL);
		cr_assert_leq(force.equation, bound.equation * (1 + 1e-14));
	}
}

/* --- EN 1998-1 ------------------------------------------------------------------------------ */

/* Closed forms of eq. (4.25): rigid at the base 1, in resonance 2.5 at the base and 5.5 at the top,
 * a very soft element the floor of al S. */
Test(seismic, en1998_closed_forms)
{
	static const struct { double height, period, expected; } form[] = {
		{0, 0, 1}, {0, 1, 2.5}, {1, 1, 5.5}, {0.5, 1, 4}, {1, 0, 2.5}, {0, 50, 1}, {1, 50, 1}};
	struct seismic_force force;
	for (size_t i = 0; i < sizeof form / sizeof form[0]; i++) {
		const struct seismic_en1998 site = {0.16, 1.15, form[i].height, form[i].period, 1,
		                                    1};
		cr_assert_null(seismic_en1998_fault(&site));
		seismic_en1998(&site, 1000, &force, NULL);
		near(force.horizontal, form[i].expected * 0.16 * 1.15 * 1000, 1e-10, "Fa");
		near(force.least, 0.16 * 1.15 * 1000, 1e-10, "least");
		cr_assert_eq(force.vertical, 0);
		cr_assert_eq(force.for_anchors, force.horizontal);
	}
	const struct seismic_en1998 site = {0.16, 1.15, 0, 1, 1.5, 2};
	seismic_en1998(&site, 1000, &force, NULL);
	near(force.horizontal, 2.5 * 0.16 * 1.15 * 1000 * 1.5 / 2, 1e-10, "ga/qa");
}

/* Resonance is the worst, a higher place never better. */
Test(seismic, en1998_properties)
{
	for (uint64_t number = 0; number < 2000; number++) {
		struct dice dice = dice_open(67, number);
		struct seismic_en1998 site = {dice_between(&dice, 0, 0.5),
		                              dice_between(&dice, 1, 1.8),
		                              dice_between(&dice, 0, 1),
		                              dice_between(&dice, 0, 4),
		                              dice_between(&dice, 1, 1.5),
		                              1 + dice_whole(&dice, 0, 1)};
		struct seismic_force here, resonant, above;
		seismic_en1998(&site, 1000, &here, NULL);
		site.height_share += 0.5 * (1 - site.height_share);
		seismic_en1998(&site, 1000, &above, NULL);
		cr_assert_geq(above.horizontal, here.horizontal * (1 - 1e-14));
		site.period_ratio = 1;
		seismic_en1998(&site, 1000, &resonant, NULL);
		cr_assert_geq(resonant.horizontal, above.horizontal * (1 - 1e-14));
		cr_assert_geq(here.horizontal, here.least);
	}
}

/* --- all codes ------------------------------------------------------------------------------ */

static struct seismic_asce7_16 random_16(struct dice *dice)
{
	return (struct seismic_asce7_16){dice_between(dice, 0, 2),   dice_between(dice, 1, 2.5),
	                                 dice_between(dice, 1, 12),  dice_between(dice, 1, 1.5),
	                                 dice_between(dice, 0, 1), dice_between(dice, 1, 3)};
}

/* Between the limits, proportional to the weight, rising with SDS and height. */
Test(seismic, asce7_16_properties)
{
	for (uint64_t number = 0; number < 2000; number++) {
		struct dice dice = dice_open(71, number);
		struct seismic_asce7_16 site = random_16(&dice);
		struct seismic_force force, twice, more;
		cr_assert_null(seismic_asce7_16_fault(&site));
		seismic_asce7_16(&site, 1000, &force, NULL);
		cr_assert_geq(force.horizontal, force.least);
		cr_assert_leq(force.horizontal, force.most);
		seismic_asce7_16(&site, 2000, &twice, NULL);
		near(twice.horizontal, 2 * force.horizontal, 1e-10, "weight");
		site.sds *= 1.1;
		site.height_share = 0.5 + 0.5 * site.height_share;
		seismic_asce7_16(&site, 1000, &more, NULL);
		cr_assert_geq(more.horizontal, force.horizontal);
	}
}

static void same_with_trace(struct arena *arena, int code, struct dice *dice)
{
	struct trace trace;
	struct seismic_force traced, plain;
	struct seismic_asce7_16 site_16 = random_16(dice);
	struct seismic_asce7_22 site_22 = {site_16.sds, site_16.importance, site_16.height_share,
	                                   2, 1.5, 2, dice_decades(dice, -1, 1), 8, 1, 2.5};
	struct seismic_en1998 site_en = {0.2, 1.2, site_16.height_share, site_16.sds, 1.2, 2};
	if (dice_whole(dice, 0, 1))
		site_22.building_period = 0;
	if (dice_whole(dice, 0, 1))
		site_22.building_response = site_22.building_importance =
			site_22.building_overstrength = 0;
	if (dice_whole(dice, 0, 3) == 0)
		site_22.height_share = 0;
	trace_open(&trace, arena);
	if (code == SEISMIC_ASCE7_16) {
		seismic_asce7_16(&site_16, 1234, &traced, &trace);
		seismic_asce7_16(&site_16, 1234, &plain, NULL);
	} else if (code == SEISMIC_ASCE7_22) {
		seismic_asce7_22(&site_22, 1234, &traced, &trace);
		seismic_asce7_22(&site_22, 1234, &plain, NULL);
	} else {
		seismic_en1998(&site_en, 1234, &traced, &trace);
		seismic_en1998(&site_en, 1234, &plain, NULL);
	}
	cr_assert_eq(traced.horizontal, plain.horizontal);
	cr_assert_eq(traced_value(&trace, code == SEISMIC_EN1998 ? "F_a" : "F_p"),
	             plain.horizontal);
	cr_assert_geq(traced_expressions(&trace, "seismic"), code == SEISMIC_EN1998 ? 4 : 6);
}

Test(seismic, written_calculation)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	for (uint64_t number = 0; number < 90; number++) {
		struct dice dice = dice_open(73, number);
		same_with_trace(&arena, (int)(number % 3), &dice);
	}
	arena_close(&arena);
}

/* What rests on memory says so in the written calculation. */
Test(seismic, sources_say_how_they_are_known)
{
	const struct seismic_asce7_16 site = {1, 1, 2.5, 1, 0, 2};
	struct seismic_force force;
	struct arena arena;
	struct trace trace;
	arena_open(&arena, NULL, NULL);
	trace_open(&trace, &arena);
	seismic_asce7_16(&site, 1000, &force, &trace);
	for (size_t i = 0; i < trace.count; i++) {
		const struct step *step = &trace.steps[i];
		if (strncmp(step->source, "ASCE", 4) == 0)
			cr_expect(strstr(step->source, "from memory") ||
			                  strstr(step->source, "second-hand"),
			          "%s: %s", step->symbol, step->source);
	}
	arena_close(&arena);
}

/* The force as part of a load case: at the centre of mass, turning, with its vertical part. */
Test(seismic, action)
{
	struct extra_action action;
	seismic_action(500, -80, (const double[]){100, -20, 700}, &action);
	cr_assert(action.turns);
	cr_assert_eq(action.down, -80);
	cr_assert_eq(action.fixed[0], -8000);
	cr_assert_eq(action.fixed[1], 1600);
	cr_assert_eq(action.turning, 350000);
	cr_assert_eq(action.force.force, 500);
	cr_assert_eq(action.force.at[0], 100);
	cr_assert_eq(action.force.at[1], -20);
	cr_assert_not(action.force.at_hull);
	cr_assert_eq(action.shear[0], 0);
}

/* Each level with an earthquake has a row that presses down and one that lifts; a row that lifts
 * never counts more weight than one that presses; only ASCE 7 has a service level. */
Test(seismic, combinations)
{
	size_t count;
	const struct rare_combination *row = rare_combinations(&count);
	double heavy[2] = {0, 0}, light[2] = {9, 9};
	for (size_t i = 0; i < count; i++) {
		if (row[i].event != EVENT_EARTHQUAKE)
			continue;
		double *weight = row[i].vertical > 0 ? heavy : light;
		cr_assert_eq(fabs(row[i].vertical), row[i].horizontal, "%s", row[i].id);
		if (row[i].vertical > 0)
			weight[row[i].level] = fmax(weight[row[i].level], row[i].weight);
		else
			weight[row[i].level] = fmin(weight[row[i].level], row[i].weight);
		if (row[i].level == LEVEL_SERVICE)
			cr_assert_eq(strncmp(row[i].id, "asce7_allowable", 15), 0);
	}
	cr_assert_eq(heavy[LEVEL_SERVICE], 1);
	cr_assert_eq(light[LEVEL_SERVICE], 0.6);
	cr_assert_eq(heavy[LEVEL_FACTORED], 1.2);
	cr_assert_eq(light[LEVEL_FACTORED], 0.9);
}

/* Every tabled component is within what the equations take. */
Test(seismic, components)
{
	size_t count;
	const struct seismic_component *row = seismic_components(&count);
	cr_assert_gt(count, 0);
	for (size_t i = 0; i < count; i++) {
		const struct seismic_asce7_16 site = {1, row[i].amplification, row[i].response, 1,
		                                      0, row[i].overstrength};
		const struct seismic_en1998 place = {0.2, 1, 0, 1, 1, row[i].response};
		cr_assert_null(row[i].code == SEISMIC_EN1998 ? seismic_en1998_fault(&place)
		                                             : seismic_asce7_16_fault(&site),
		               "%s", row[i].id);
		cr_assert_eq(seismic_component(row[i].id), &row[i]);
	}
	cr_assert_null(seismic_component("nothing"));
}

static void says(const char *fault, const char *words)
{
	cr_assert_not_null(fault, "nothing found of: %s", words);
	cr_assert_not_null(strstr(fault, words), "'%s' does not say: %s", fault, words);
}

Test(seismic, faults)
{
	struct seismic_asce7_16 a = {NAN, 1, 2.5, 1, 0, 2};
	says(seismic_asce7_16_fault(&a), "SDS");
	a = (struct seismic_asce7_16){1, 0.5, 2.5, 1, 0, 2};
	says(seismic_asce7_16_fault(&a), "ap");
	a = (struct seismic_asce7_16){1, 1, 0, 1, 0, 2};
	says(seismic_asce7_16_fault(&a), "Rp");
	a = (struct seismic_asce7_16){1, 1, 2.5, 0, 0, 2};
	says(seismic_asce7_16_fault(&a), "Ip");
	a = (struct seismic_asce7_16){1, 1, 2.5, 1, 1.2, 2};
	says(seismic_asce7_16_fault(&a), "z/h");
	a = (struct seismic_asce7_16){1, 1, 2.5, 1, 0, 0};
	says(seismic_asce7_16_fault(&a), "overstrength");
	struct seismic_asce7_22 b = {1, 1, 0, 0, 1.5, 2, 0, 0, 0, 0};
	says(seismic_asce7_22_fault(&b), "CAR");
	b = (struct seismic_asce7_22){1, 1, 0, 1, 0, 2, 0, 0, 0, 0};
	says(seismic_asce7_22_fault(&b), "Rpo");
	b = (struct seismic_asce7_22){1, 1, 0, 1, 1.5, 2, -1, 0, 0, 0};
	says(seismic_asce7_22_fault(&b), "period");
	b = (struct seismic_asce7_22){1, 1, 0, 1, 1.5, 2, 0, 8, 0, 0};
	says(seismic_asce7_22_fault(&b), "Om0");
	struct seismic_en1998 c = {-0.1, 1, 0, 1, 1, 1};
	says(seismic_en1998_fault(&c), "ag/g");
	c = (struct seismic_en1998){0.1, 0.5, 0, 1, 1, 1};
	says(seismic_en1998_fault(&c), "soil");
	c = (struct seismic_en1998){0.1, 1, -1, 1, 1, 1};
	says(seismic_en1998_fault(&c), "z/H");
	c = (struct seismic_en1998){0.1, 1, 0, -1, 1, 1};
	says(seismic_en1998_fault(&c), "Ta/T1");
	c = (struct seismic_en1998){0.1, 1, 0, 1, 0, 1};
	says(seismic_en1998_fault(&c), "importance");
	c = (struct seismic_en1998){0.1, 1, 0, 1, 1, 3};
	says(seismic_en1998_fault(&c), "qa");
}
