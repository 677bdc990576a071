/* A wrench at the mounting face moved to floor level, in the three weight runs: by hand. */
#include "../../src/loads/set_wrench.h"
#include "../support/cell_text.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;
/* whole numbers and simple factors: some ten roundings at most, relative */
#define EXACT 1e-14

static struct cell cell;

/* 100 N along x, 200 N along y, 500 N down, of which 400 N weigh; mounting face at 300 mm. */
static const struct arm_load pushed = {.force = {100, 200, -500},
                                       .moment = {10000, 20000, 3000},
                                       .weight = 400,
                                       .weight_moment = {1000, 2000}};

static void mount_at(double x, double y, double z)
{
	memset(&cell, 0, sizeof cell);
	cell.arm.mount = (struct point){.at = {x, y, z}};
	cell.choices.stabilising_weight.value = 0.6;
}

/* As service loads. */
static struct set_wrench wrench_in(const struct arm_load *load, enum weight_run run,
                                   enum vertical_run vertical)
{
	const struct load_case c = {.run = run, .vertical = vertical};
	return set_wrench(&cell, load, &c);
}

static void expect_wrench(enum weight_run run, const double wanted[6])
{
	struct set_wrench w = wrench_in(&pushed, run, VERTICAL_LEAST);
	const double got[6] = {w.down, w.first[0], w.first[1], w.force[0], w.force[1], w.twist};
	for (int k = 0; k < 6; k++)
		cr_expect(fabs(got[k] - wanted[k]) <= EXACT * 1e5,
		          "run %d, number %d: %.17g, not %g", (int)run, k, got[k], wanted[k]);
}

/* Sx = My + h Fx = 20000 + 300 x 100, Sy = -Mx + h Fy = -10000 + 300 x 200. */
Test(set_wrench, full_run_is_the_wrench_itself)
{
	mount_at(0, 0, 300);
	expect_wrench(RUN_FULL, (const double[]){500, 50000, 50000, 100, 200, 3000});
}

/* Of the 500 N downward 400 N weigh: 0.6 x 400 + 100. The moment keeps its full size. */
Test(set_wrench, low_run_lowers_the_weight_alone)
{
	mount_at(0, 0, 300);
	expect_wrench(RUN_LOW, (const double[]){340, 50000, 50000, 100, 200, 3000});
	cell.choices.stabilising_weight.value = 1;
	expect_wrench(RUN_LOW, (const double[]){500, 50000, 50000, 100, 200, 3000});
}

/* V = 0.9 x 400 + 1.25 x 100. Mx = 1000 + 1.25 x 9000 = 12250, My = 2000 + 1.25 x 18000 = 24500;
 * Sx = 24500 + 300 x 125, Sy = -12250 + 300 x 250; T = 1.25 x 3000. */
Test(set_wrench, stability_run)
{
	mount_at(0, 0, 300);
	expect_wrench(RUN_STABILITY, (const double[]){485, 62000, 62750, 125, 250, 3750});
}

/* Lifted off by its motion, the weight is no smaller for it: V = 0.6 x 400 - (300 + 400). */
Test(set_wrench, uplift)
{
	struct arm_load up = pushed;
	mount_at(0, 0, 0);
	up.force[2] = 300;
	cr_expect(fabs(wrench_in(&up, RUN_LOW, VERTICAL_LEAST).down + 460) < 1e-11);
	cr_expect(fabs(wrench_in(&up, RUN_FULL, VERTICAL_LEAST).down + 300) < 1e-11);
}

/* The arm's weight in full beside lowered parts, as in a data sheet's largest vertical force: the
 * wrench itself, and with the moving part at 1.25 V = 400 - 1.25 x (300 + 400). */
Test(set_wrench, weight_in_full)
{
	struct arm_load up = pushed;
	mount_at(0, 0, 0);
	up.force[2] = 300;
	cr_expect(fabs(wrench_in(&up, RUN_LOW, VERTICAL_MOST).down + 300) < 1e-11);
	cr_expect(fabs(wrench_in(&up, RUN_STABILITY, VERTICAL_MOST).down + 475) < 1e-11);
}

/* M' = M + r x F about the cell origin with r = (50, -30, 300) mm: Mx' = 10000 + (-30)(-500) -
 * 300 x 200 = -35000, My' = 20000 + 300 x 100 - 50 x (-500) = 75000, Mz' = 3000 + 50 x 200 + 30 x
 * 100 = 16000. */
Test(set_wrench, standing_off_the_centre)
{
	struct load_case c = {.run = RUN_FULL, .down = 7, .fixed = {11, 13}};
	mount_at(50, -30, 300);
	add_set_wrench(&cell, &pushed, &c);
	expect_near(c.down, 507, 1e-9);
	expect_near(c.fixed[0], 75011, 1e-9);
	expect_near(c.fixed[1], 35013, 1e-9);
	expect_near(c.fixed_shear[0], 100, 1e-12);
	expect_near(c.fixed_shear[1], 200, 1e-12);
	expect_near(c.fixed_shear[2], 16000, 1e-9);
	cr_expect_eq(c.turning, 0);
	cr_expect_eq(c.turning_count, 0);
	cr_expect_eq(c.arm_load, &pushed);
	cr_expect_eq(c.spin_to, c.spin_from);
}

/* At the heading of the tilt the turning case is the standing one; range and lead come from it. The
 * part V x mount does not turn. */
Test(set_wrench, turning)
{
	struct load_case c = {.run = RUN_FULL};
	struct arm_load spun = pushed;
	double load[3], first = 50000 * sqrt(2);
	mount_at(50, -30, 300);
	spun.spin_from = -1;
	spun.spin_to = 1.75;
	add_set_wrench(&cell, &spun, &c);
	expect_near(c.turning, first, 1e-9);
	expect_near(c.spin_from, pi / 4 - 1, 1e-14);
	expect_near(c.spin_to, pi / 4 + 1.75, 1e-14);
	cr_assert_eq(c.turning_count, 1);
	const struct turning_force *f = &c.turning_force[0];
	expect_near(f->force, hypot(100, 200), 1e-11);
	expect_near(f->lead, atan2(200, 100) - pi / 4, 1e-14);
	expect_near(f->twist, 3000, 0);
	expect_near(f->at[0], 50, 0);
	expect_near(f->at[1], -30, 0);
	cr_expect(f->one_sign && !f->at_hull);
	expect_near(c.fixed[0], 500 * 50, 1e-9);
	expect_near(c.fixed[1], -500 * 30, 1e-9);
	load_at(&c, pi / 4, load);
	expect_near(load[0], 500, 1e-9);
	expect_near(load[1], 75000, 1e-9);
	expect_near(load[2], 35000, 1e-9);
	cr_expect_eq(c.fixed_shear[2], 0);
}

/* A wrench without a tilt takes the heading of its force; one without a force has no lead. */
Test(set_wrench, turning_without_tilt_or_force)
{
	struct arm_load push = {
		.force = {0, 50, 0}, .moment = {50 * 300.0, 0, 0}, .spin_to = 2 * pi};
	struct load_case c = {.run = RUN_FULL};
	mount_at(0, 0, 300);
	add_set_wrench(&cell, &push, &c);
	expect_near(c.turning, 0, 1e-11);
	expect_near(c.spin_from + c.turning_force[0].lead, pi / 2, 1e-14);
	struct arm_load twist = {.moment = {0, 5, -8}, .spin_to = 2 * pi};
	c = (struct load_case){.run = RUN_FULL};
	add_set_wrench(&cell, &twist, &c);
	cr_assert_eq(c.turning_count, 1);
	cr_expect_eq(c.turning_force[0].force, 0);
	cr_expect_eq(c.turning_force[0].twist, -8);
	struct arm_load still = {.moment = {0, 5, 0}, .spin_to = 2 * pi};
	c = (struct load_case){.run = RUN_FULL};
	add_set_wrench(&cell, &still, &c);
	cr_expect_eq(c.turning_count, 0);
	expect_near(c.turning, 5, 0);
}
