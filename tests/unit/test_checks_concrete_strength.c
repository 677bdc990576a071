/* concrete.strength: against 28 MPa by class, specified strength or cores. */
#include "../../src/floor/strength.h"
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <math.h>

#define ID "concrete.strength"
#define STRENGTH "slab.concrete.strength"
#define LEAST "choices.least_strength"

Test(concrete_strength, three_verdicts)
{
	expect_verdict(HOLDS, sample_needs, ID);                                       /* 40 MPa */
	expect_verdict(FAILS, sample_needs, ID, STRENGTH,
	               "{class: C25/30, evidence: delivery_note}");
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH, "unknown");
}

/* Ratio exactly 1 holds, just above fails; nothing has a tolerance. */
Test(concrete_strength, boundary)
{
	expect_verdict(HOLDS, sample_needs, ID, STRENGTH ".specified", "28 MPa");
	expect_near(judged(sample_needs, ID, STRENGTH ".specified", "28 MPa", NULL)->finding.ratio,
	            1, 0);
	expect_verdict(FAILS, sample_needs, ID, STRENGTH ".specified", "27.999999 MPa");
	expect_verdict(FAILS, sample_needs, ID, STRENGTH ".specified", "27.6 MPa");
	/* the least strength asked for may be higher: 40 MPa against 41 MPa */
	expect_verdict(FAILS, sample_needs, ID, LEAST, "41 MPa");
	expect_verdict(HOLDS, sample_needs, ID, LEAST, "40 MPa");
}

/* 4000 psi = 27.579 MPa, the inch-pound twin of 28 MPa: as a specified strength alone. */
Test(concrete_strength, inch_pound_twin)
{
	const struct check_result *check = judged(sample_needs, ID, STRENGTH ".specified",
	                                          "4000 psi", NULL);
	expect_verdict(HOLDS, sample_needs, ID, STRENGTH ".specified", "4000 psi");
	check = judged(sample_needs, ID, STRENGTH ".specified", "4000 psi", NULL);
	expect_near(check->finding.ratio, 1, 0);
	cr_expect_eq(check->finding.note_count, 1);
	expect_verdict(FAILS, sample_needs, ID, STRENGTH ".specified", "3999 psi");
	expect_verdict(FAILS, sample_needs, ID, STRENGTH ".specified", "4000 psi",
	               STRENGTH ".specimen", "cube");
	expect_verdict(FAILS, sample_needs, ID, STRENGTH ".specified", "4000 psi", LEAST,
	               "28.1 MPa");
	/* three cores alike of the mean that gives 27.579 MPa: no twin */
	expect_verdict(FAILS, sample_needs, ID, STRENGTH,
	               "{cores: {unit: psi, values: [4676, 4676, 4676], "
	               "diameter: 94 mm, length: 188 mm}}");
	/* weak evidence stays weak */
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH ".specified", "4000 psi",
	               STRENGTH ".evidence", "assumed");
}

/* EN 206 Table 12: a cube of 35 MPa is between C25/30 and C30/37, 25 + 5 x 5/7 = 28.571 MPa; the
 * cube that is 28 MPa as a cylinder is 30 + 7 x 3/5 = 34.2 MPa. */
Test(concrete_strength, cubes)
{
	const struct check_result *check = judged(sample_needs, ID, STRENGTH ".specimen", "cube",
	                                          STRENGTH ".specified", "35 MPa", NULL);
	expect_near(check->finding.capacity, 25 + 25.0 / 7, 1e-12);
	expect_verdict(HOLDS, sample_needs, ID, STRENGTH ".specimen", "cube", STRENGTH ".specified",
	               "34.2001 MPa");
	expect_verdict(FAILS, sample_needs, ID, STRENGTH ".specimen", "cube", STRENGTH ".specified",
	               "34.1999 MPa");
	expect_near(cylinder_from_cube(10), 8, 0);
	expect_near(cylinder_from_cube(37), 30, 1e-12);
	expect_near(cylinder_from_cube(5), 4, 1e-12);         /* below the table in proportion */
	expect_near(cylinder_from_cube(140), 100, 0);         /* above it no more than it shows */
	/* a specimen that is not known may be a cube; as a cylinder it would fail too */
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH ".specimen", "unknown");
	expect_verdict(FAILS, sample_needs, ID, STRENGTH ".specimen", "unknown",
	               STRENGTH ".specified", "27 MPa");
}

Test(concrete_strength, classes)
{
	expect_verdict(HOLDS, sample_needs, ID, STRENGTH,
	               "{class: C30/37, evidence: delivery_note}");
	expect_near(
		judged(sample_needs, ID, STRENGTH, "{class: C35/45, evidence: delivery_note}", NULL)
			->finding.capacity,
		35, 0);
}

/* ACI 562 equivalent strength: 0.9 f_mean (1 - 1.28 sqrt((kc V)^2/n + 0.0015)).
 * 36, 38, 40, 37, 39: mean 38, V = 1.58114/38 = 0.0416089, n = 5, kc = 1.20:
 *   0.9 x 38 x (1 - 1.28 x sqrt(0.00249307/5 + 0.0015)) = 34.2 x (1 - 1.28 x 0.0447059) = 32.24295
 * MPa */
Test(concrete_strength, cores)
{
	const struct check_result *check = judged(sample_needs, ID, STRENGTH,
		"{cores: {unit: MPa, values: [36, 38, 40, 37, 39], diameter: 94 mm, length: 188 mm}}", NULL);
	expect_near(check->finding.capacity, 32.24295, 1e-5);
	cr_expect_eq(check->finding.verdict, HOLDS);
	/* three alike: 0.9 f (1 - 1.28 sqrt(0.0015)) = 0.8553832 f; 28 MPa need 32.7338 MPa */
	expect_verdict(HOLDS, sample_needs, ID, STRENGTH,
		"{cores: {unit: MPa, values: [32.734, 32.734, 32.734], diameter: 94 mm, length: 188 mm}}");
	expect_verdict(FAILS, sample_needs, ID, STRENGTH,
		"{cores: {unit: MPa, values: [32.733, 32.733, 32.733], diameter: 94 mm, length: 188 mm}}");
	/* cores need no age and no note */
	expect_verdict(HOLDS, sample_needs, ID, "slab.concrete.age", "unknown", STRENGTH,
		"{cores: {unit: MPa, values: [36, 38, 40, 37, 39], diameter: 94 mm, length: 188 mm}}");
}

/* kc of ACI 562; between rows the one of fewer cores, which is the larger. */
Test(concrete_strength, kc)
{
	static const struct {
		size_t n;
		double kc;
	} row[] = {{2, 2.40},  {3, 1.47},  {4, 1.28},  {5, 1.20},  {6, 1.15},  {7, 1.15},
	           {8, 1.10},  {9, 1.10},  {10, 1.08}, {11, 1.08}, {12, 1.06}, {15, 1.06},
	           {16, 1.05}, {20, 1.03}, {24, 1.03}, {25, 1.02}, {200, 1.02}};
	for (size_t i = 0; i < sizeof row / sizeof row[0]; i++)
		expect_near(cores_factor_kc(row[i].n), row[i].kc, 0);
}

/* Too few cores, too wide a spread, too short ones, or of unknown size: never holds. */
Test(concrete_strength, weak_cores)
{
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH,
		"{cores: {unit: MPa, values: [50, 50], diameter: 94 mm, length: 188 mm}}");
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH,
		"{cores: {unit: MPa, values: [5, 60, 150], diameter: 94 mm, length: 188 mm}}");
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH,
		"{cores: {unit: MPa, values: [50, 50, 50], diameter: 100 mm, length: 174.9 mm}}");
	expect_verdict(HOLDS, sample_needs, ID, STRENGTH,
		"{cores: {unit: MPa, values: [50, 50, 50], diameter: 100 mm, length: 175 mm}}");
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH,
		"{cores: {unit: MPa, values: [50, 50, 50], diameter: 100 mm}}");
	expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH,
		"{cores: {unit: MPa, values: [50, 50, 50], length: 200 mm}}");
}

/* Paper alone: only a delivery note, 28 days old. Without evidence the strength may be higher too,
 * so that even a low one does not fail. */
Test(concrete_strength, evidence)
{
	static const char *const weak[] = {"drawing", "assumed", "unknown"};
	for (size_t i = 0; i < sizeof weak / sizeof weak[0]; i++) {
		expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH ".evidence", weak[i]);
		expect_verdict(UNPROVEN, sample_needs, ID, STRENGTH ".evidence", weak[i],
		               STRENGTH ".specified", "20 MPa");
		cr_expect(is_missing(judged(sample_needs, ID, STRENGTH ".evidence", weak[i], NULL),
		                     STRENGTH ".evidence"));
	}
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.concrete.age", "unknown");
	expect_verdict(UNPROVEN, sample_needs, ID, "slab.concrete.age", "27 days");
	expect_verdict(HOLDS, sample_needs, ID, "slab.concrete.age", "28 days");
	expect_verdict(FAILS, sample_needs, ID, "slab.concrete.age", "27 days",
	               STRENGTH ".specified", "20 MPa");
}

/* A least strength below 28 MPa is a departure: it holds only where an engineer stands for it, by
 * name and reason. */
Test(concrete_strength, departure)
{
	expect_verdict(UNPROVEN, sample_needs, ID, LEAST, "20 MPa", STRENGTH ".specified",
	               "25 MPa");
	expect_verdict(HOLDS, sample_needs, ID, LEAST, "20 MPa", STRENGTH ".specified", "25 MPa",
	               "choices.by_engineer", "{name: demo, reason: light cell}");
	expect_verdict(UNPROVEN, sample_needs, ID, LEAST, "20 MPa", STRENGTH ".specified", "25 MPa",
	               "choices.by_engineer", "{name: demo}");
	expect_verdict(UNPROVEN, sample_needs, ID, LEAST, "20 MPa", STRENGTH ".specified", "25 MPa",
	               "choices.by_engineer", "{reason: light cell}");
	expect_verdict(FAILS, sample_needs, ID, LEAST, "20 MPa", STRENGTH ".specified", "19 MPa",
	               "choices.by_engineer", "{name: demo, reason: light cell}");
}
