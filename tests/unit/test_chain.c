/* The recursion of an arm against published values and closed forms. */
#include "../support/cases.h"
#include "../support/random_chain.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* Rounding of some hundred operations on numbers of the order of `size`. */
static void near(const char *what, double value, double wanted, double size)
{
	cr_expect(fabs(value - wanted) <= 1e-12 * (1 + size), "%s: %.17g, not %.17g", what, value,
	          wanted);
}

static void run(const struct chain *chain, const struct instant *at, struct base_wrench *out,
                double torque[])
{
	struct prepared_chain prepared;
	chain_prepare(chain, &prepared);
	chain_wrench(&prepared, at->q, at->speed, at->acceleration, out, torque);
}

static void expect_wrench(const struct base_wrench *wrench, const double force[3],
                          const double moment[3], double size)
{
	for (int i = 0; i < 3; i++) {
		near("force", wrench->force[i], force[i], size);
		near("moment", wrench->moment[i], moment[i], size);
	}
}

/* A joint about or along z of the base, and a point mass; frames, so that nothing is turned. */
static void point_link(struct chain *chain, enum joint_kind kind, double mass, double x, double y,
                       double z)
{
	struct link *link = &chain->link[chain->count++];
	const double upright[9] = {1, 0, 0, 0, 1, 0, 0, 0, 1};
	memcpy(link->rotation, upright, sizeof upright);
	link->kind = kind;
	link->mass = mass;
	link->centre[0] = x;
	link->centre[1] = y;
	link->centre[2] = z;
}

/* --- published -----------------------------------------------------------------------------------
 */

/* At rest at q = (0, pi/4, pi, 0, pi/4, 0): set of Corke and Armstrong-Helouvry 1994, torques
 * published in the tests of a robotics text's toolbox, to four decimals. */
Test(chain, benchmark_torques_at_rest)
{
	const double wanted[6] = {0, 31.6399, 6.0351, 0, 0.0283, 0};
	struct chain chain;
	struct instant at = {.q = {0, pi / 4, pi, 0, pi / 4, 0}};
	struct base_wrench wrench;
	double torque[6];
	chain_benchmark(&chain, PUMA_1994);
	run(&chain, &at, &wrench, torque);
	for (int i = 0; i < 6; i++)
		cr_expect(fabs(torque[i] - wanted[i]) <= 0.5e-4, "joint %d: %.6f", i + 1,
		          torque[i]);
}

/* A still arm weighs the sum of its masses, 23.45 kg in either set: 230.0445 N at 9.81 m/s2. */
Test(chain, both_published_sets_weigh_the_same)
{
	for (int set = PUMA_1994; set <= PUMA_1986; set++) {
		struct chain chain;
		struct instant at = {.q = {0.3, 0.7, -1, 2, 0.4, 1}};
		struct base_wrench wrench;
		chain_benchmark(&chain, (enum chain_set)set);
		run(&chain, &at, &wrench, NULL);
		near("fx", wrench.force[0], 0, 230);
		near("fy", wrench.force[1], 0, 230);
		near("fz", wrench.force[2], -230.0445, 230);
	}
}

/* The set of 1986 by hand, stretched out at q = 0: axis 1 up, axis 2 along +y (alpha -90), so that
 * a positive turn of joint 2 lowers the arm. Centres of mass ahead of axis 2: link 2 at .068, link
 * 3 at .4318, the wrist at .4318 - .0203 with its masses on axis 4, which points along z of frame 2
 * turned, that is, downward or upward: no lever. */
Test(chain, second_published_set_by_hand)
{
	struct chain chain;
	struct instant at = {0};
	struct base_wrench wrench;
	double torque[6];
	chain_benchmark(&chain, PUMA_1986);
	run(&chain, &at, &wrench, torque);
	double levers = 17.4 * .068 + 4.8 * .4318 + (.82 + .34 + .09) * (.4318 - .0203);
	near("joint 1", torque[0], 0, 30);
	near("joint 2", torque[1], -9.81 * levers, 30);
	/* the weight turns the base the way it turns the arm: down in front, +My */
	near("base", wrench.moment[1], 9.81 * levers, 30);
}

/* --- one arm, two conventions --------------------------------------------------------------------
 */

/* Rx(alpha) v + (a, 0, 0) */
static void behind(const struct link *link, double v[3], bool moved)
{
	double c = cos(link->alpha), s = sin(link->alpha), y = v[1], z = v[2];
	v[0] += moved ? link->a : 0;
	v[1] = c * y - s * z;
	v[2] = s * y + c * z;
}

/* The set in standard DH rewritten in modified DH: each frame now lies at its joint, before Tx(a)
 * Rx(alpha), and a, alpha pass to the next link. Right angles only, so that inertia about x turned
 * by alpha swaps yy and zz. */
static void rewrite(const struct chain *from, struct chain *to)
{
	*to = *from;
	to->convention = CHAIN_MODIFIED_DH;
	for (size_t i = 0; i < from->count; i++) {
		const struct link *link = &from->link[i];
		to->link[i].a = i ? from->link[i - 1].a : 0;
		to->link[i].alpha = i ? from->link[i - 1].alpha : 0;
		behind(link, to->link[i].centre, true);
		if (link->alpha != 0) {
			to->link[i].inertia[1] = link->inertia[2];
			to->link[i].inertia[2] = link->inertia[1];
		}
	}
}

Test(chain, standard_and_modified_form_of_one_arm_agree)
{
	struct chain standard, modified;
	struct dice dice = dice_open(cases_seed(), 1);
	chain_benchmark(&standard, PUMA_1994);
	rewrite(&standard, &modified);
	for (int k = 0; k < 100; k++) {
		struct instant at;
		struct base_wrench a, b;
		double torque_a[6], torque_b[6];
		instant_random(&at, &dice);
		run(&standard, &at, &a, torque_a);
		run(&modified, &at, &b, torque_b);
		expect_wrench(&a, b.force, b.moment, 1e3);
		for (int i = 0; i < 6; i++)
			near("torque", torque_a[i], torque_b[i], 1e3);
	}
}

/* --- closed forms --------------------------------------------------------------------------------
 */

/* Two links with their masses at their ends, in a vertical plane: Craig, Introduction to Robotics,
 * ch. 6 (the example of the two-link arm; from memory). x ahead, y up in the plane. */
Test(chain, two_link_arm_of_craig)
{
	const double m1 = 3, m2 = 2, l1 = 0.8, l2 = 0.5, g = 9.81;
	struct chain chain = {.convention = CHAIN_FRAMES, .gravity = {0, -g, 0}};
	point_link(&chain, JOINT_REVOLUTE, m1, l1, 0, 0);
	point_link(&chain, JOINT_REVOLUTE, m2, l2, 0, 0);
	chain.link[1].position[0] = l1;
	struct dice dice = dice_open(cases_seed(), 2);
	for (int k = 0; k < 100; k++) {
		struct instant at;
		struct base_wrench wrench;
		double torque[2];
		instant_random(&at, &dice);
		run(&chain, &at, &wrench, torque);
		double c1 = cos(at.q[0]), c12 = cos(at.q[0] + at.q[1]);
		double c2 = cos(at.q[1]), s2 = sin(at.q[1]);
		double v1 = at.speed[0], v2 = at.speed[1];
		double a1 = at.acceleration[0], a2 = at.acceleration[1];
		double tau1 = m2 * l2 * l2 * (a1 + a2) + m2 * l1 * l2 * c2 * (2 * a1 + a2) +
		              (m1 + m2) * l1 * l1 * a1 - m2 * l1 * l2 * s2 * v2 * v2 -
		              2 * m2 * l1 * l2 * s2 * v1 * v2 + m2 * l2 * g * c12 +
		              (m1 + m2) * l1 * g * c1;
		double tau2 = m2 * l1 * l2 * c2 * a1 + m2 * l1 * l2 * s2 * v1 * v1 +
		              m2 * l2 * g * c12 + m2 * l2 * l2 * (a1 + a2);
		near("torque 1", torque[0], tau1, 200);
		near("torque 2", torque[1], tau2, 200);
		/* joint 1 stands at the origin: the base feels its torque, the other way */
		near("base", wrench.moment[2], -tau1, 200);
	}
}

/* Two links with their centres on them and moments of inertia about these, in a vertical plane:
 * Spong and Vidyasagar, Robot Dynamics and Control, ch. 6 (planar elbow arm; from memory). d11,
 * d12, d22 and h are that book's. */
Test(chain, two_link_arm_of_spong)
{
	const double m1 = 5, m2 = 3, l1 = 0.7, lc1 = 0.4, lc2 = 0.25, g = 9.81;
	const double i1 = 0.2, i2 = 0.06;
	struct chain chain = {.convention = CHAIN_STANDARD_DH, .gravity = {0, -g, 0}, .count = 2};
	/* the frame of standard DH stands at the link's far end */
	chain.link[0] = (struct link){.a = l1, .mass = m1, .centre = {lc1 - l1}};
	chain.link[1] = (struct link){.a = 0.6, .mass = m2, .centre = {lc2 - 0.6}};
	chain.link[0].inertia[2] = i1;
	chain.link[1].inertia[2] = i2;
	struct dice dice = dice_open(cases_seed(), 4);
	for (int k = 0; k < 100; k++) {
		struct instant at;
		struct base_wrench wrench;
		double torque[2];
		instant_random(&at, &dice);
		run(&chain, &at, &wrench, torque);
		double c1 = cos(at.q[0]), c12 = cos(at.q[0] + at.q[1]), c2 = cos(at.q[1]);
		double v1 = at.speed[0], v2 = at.speed[1];
		double a1 = at.acceleration[0], a2 = at.acceleration[1];
		double d11 = m1 * lc1 * lc1 + i1 + i2 +
		             m2 * (l1 * l1 + lc2 * lc2 + 2 * l1 * lc2 * c2);
		double d12 = m2 * (lc2 * lc2 + l1 * lc2 * c2) + i2, d22 = m2 * lc2 * lc2 + i2;
		double h = -m2 * l1 * lc2 * sin(at.q[1]);
		double tau1 = d11 * a1 + d12 * a2 + h * v2 * v2 + 2 * h * v1 * v2 +
		              (m1 * lc1 + m2 * l1) * g * c1 + m2 * lc2 * g * c12;
		double tau2 = d12 * a1 + d22 * a2 - h * v1 * v1 + m2 * lc2 * g * c12;
		near("torque 1", torque[0], tau1, 300);
		near("torque 2", torque[1], tau2, 300);
		near("base", wrench.moment[2], -tau1, 300);
	}
}

/* A turning joint and a slide outward on it, in a vertical plane, point masses at l1 and at the
 * slide's length d: Craig, Introduction to Robotics, ch. 6 (the arm of one turning and one sliding
 * joint; from memory), with point masses. */
Test(chain, turning_and_sliding_arm)
{
	const double m1 = 4, m2 = 2, l1 = 0.5, g = 9.81;
	struct chain chain = {.convention = CHAIN_FRAMES, .gravity = {0, -g, 0}};
	point_link(&chain, JOINT_REVOLUTE, m1, l1, 0, 0);
	point_link(&chain, JOINT_PRISMATIC, m2, 0, 0, 0);
	/* the slide's z along x of the turning link */
	const double ahead[9] = {0, 0, 1, 0, 1, 0, -1, 0, 0};
	memcpy(chain.link[1].rotation, ahead, sizeof ahead);
	struct dice dice = dice_open(cases_seed(), 5);
	for (int k = 0; k < 100; k++) {
		struct instant at;
		struct base_wrench wrench;
		double torque[2];
		instant_random(&at, &dice);
		run(&chain, &at, &wrench, torque);
		double c = cos(at.q[0]), s = sin(at.q[0]), d = at.q[1];
		double w = at.speed[0], v = at.speed[1];
		double al = at.acceleration[0], a = at.acceleration[1];
		double tau = (m1 * l1 * l1 + m2 * d * d) * al + 2 * m2 * d * w * v +
		             (m1 * l1 + m2 * d) * g * c;
		double force = m2 * (a - d * w * w + g * s);
		near("torque", torque[0], tau, 300);
		near("force", torque[1], force, 300);
		near("base", wrench.moment[2], -tau, 300);
		/* along the arm and across it, then into the axes of the base */
		double along = m2 * (a - d * w * w) - m1 * l1 * w * w;
		double across = (m1 * l1 + m2 * d) * al + 2 * m2 * w * v;
		near("fx", wrench.force[0], -(along * c - across * s), 300);
		near("fy", wrench.force[1], -(along * s + across * c + (m1 + m2) * g), 300);
	}
}

/* The same arm's push on its base: the opposite of both masses' accelerations, and their weight. */
Test(chain, two_link_arm_pushes_its_base)
{
	const double m1 = 3, m2 = 2, l1 = 0.8, l2 = 0.5, g = 9.81;
	struct chain chain = {.convention = CHAIN_FRAMES, .gravity = {0, -g, 0}};
	point_link(&chain, JOINT_REVOLUTE, m1, l1, 0, 0);
	point_link(&chain, JOINT_REVOLUTE, m2, l2, 0, 0);
	chain.link[1].position[0] = l1;
	struct instant at = {{0.4, -1.1}, {1.3, 2.1}, {-4, 7}};
	struct base_wrench wrench;
	run(&chain, &at, &wrench, NULL);
	double u = 0.4, w = 0.4 - 1.1, v1 = 1.3, v12 = 1.3 + 2.1, a1 = -4, a12 = -4 + 7.;
	double x1 = l1 * (-cos(u) * v1 * v1 - sin(u) * a1),
	       y1 = l1 * (-sin(u) * v1 * v1 + cos(u) * a1);
	double x2 = x1 + l2 * (-cos(w) * v12 * v12 - sin(w) * a12);
	double y2 = y1 + l2 * (-sin(w) * v12 * v12 + cos(w) * a12);
	near("fx", wrench.force[0], -m1 * x1 - m2 * x2, 100);
	near("fy", wrench.force[1], -m1 * y1 - m2 * y2 - (m1 + m2) * g, 100);
}

/* A pendulum, hanging at the angle u from straight down, swinging freely: pull m (g cos u + l v^2)
 * along the rod, nothing across it (textbook). */
Test(chain, free_pendulum)
{
	const double m = 4, l = 1.2, g = 9.81;
	struct chain chain = {.convention = CHAIN_FRAMES, .gravity = {0, -g, 0}};
	point_link(&chain, JOINT_REVOLUTE, m, 0, -l, 0);
	for (double u = -1.5; u < 1.6; u += 0.5) {
		struct instant at = {{u}, {2}, {-g / l * sin(u)}};
		struct base_wrench wrench;
		double torque[1], pull = m * (g * cos(u) + l * 4);
		run(&chain, &at, &wrench, torque);
		near("torque", torque[0], 0, 50);
		near("fx", wrench.force[0], pull * sin(u), 50);
		near("fy", wrench.force[1], -pull * cos(u), 50);
	}
}

/* A mass m at radius r and height h turns at w about the vertical: its pull m r w^2 goes round and
 * tilts the base by h; a product of inertia adds a couple (textbook). */
Test(chain, unbalanced_rotor)
{
	const double m = 2, r = 0.3, h = 0.7, w = 5, xz = -0.05;
	struct chain chain = {.convention = CHAIN_FRAMES};
	point_link(&chain, JOINT_REVOLUTE, m, r, 0, h);
	const double inertia[6] = {0.2, 0.2, 0.2, 0, 0, xz};
	memcpy(chain.link[0].inertia, inertia, sizeof inertia);
	for (double u = 0; u < 6; u += 1) {
		struct instant at = {{u}, {w}, {0}};
		struct base_wrench wrench;
		double pull = m * r * w * w;
		/* d(I w)/dt = w x I w with I w = xz w ahead; the base feels the opposite */
		double couple = -xz * w * w;
		run(&chain, &at, &wrench, NULL);
		const double force[3] = {pull * cos(u), pull * sin(u), 0};
		const double moment[3] = {-(h * pull + couple) * sin(u),
		                          (h * pull + couple) * cos(u), 0};
		expect_wrench(&wrench, force, moment, 100);
	}
}

/* A slide on a turntable: 2 m w v across the slide, m r w^2 along it (textbook; Coriolis). */
Test(chain, slide_on_a_turntable)
{
	const double m = 3, r = 0.5, w = 2, v = 0.8, a = 1.5;
	struct chain chain = {.convention = CHAIN_FRAMES};
	point_link(&chain, JOINT_REVOLUTE, 0, 0, 0, 0);
	point_link(&chain, JOINT_PRISMATIC, m, 0, 0, 0);
	/* the slide's z along x of the table */
	const double lying[9] = {0, 0, 1, 0, 1, 0, -1, 0, 0};
	memcpy(chain.link[1].rotation, lying, sizeof lying);
	struct instant at = {{0, r}, {w, v}, {0, a}};
	struct base_wrench wrench;
	double torque[2];
	run(&chain, &at, &wrench, torque);
	const double force[3] = {-m * (a - r * w * w), -2 * m * w * v, 0};
	const double moment[3] = {0, 0, -2 * m * w * v * r};
	expect_wrench(&wrench, force, moment, 50);
	near("drive", torque[1], m * (a - r * w * w), 50);
	near("table", torque[0], 2 * m * w * v * r, 50);
}

/* --- ways to mount it ----------------------------------------------------------------------------
 */

/* The weight in the axes of the mounting face: on a floor it presses, from a ceiling it pulls, on a
 * wall it shears, with the moment of its lever. The arm: 5 kg straight out from the face by 0.4 m.
 */
Test(chain, floor_ceiling_and_wall)
{
	static const struct { double gravity[3], force[3], moment[3]; } mount[] = {
		{{0, 0, -10}, {0, 0, -50}, {0, 0, 0}},
		{{0, 0, 10}, {0, 0, 50}, {0, 0, 0}},
		{{-10, 0, 0}, {-50, 0, 0}, {0, -20, 0}},
		{{0, -10, 0}, {0, -50, 0}, {20, 0, 0}},
	};
	struct chain chain = {.convention = CHAIN_FRAMES};
	struct instant at = {0};
	point_link(&chain, JOINT_REVOLUTE, 5, 0, 0, 0.4);
	for (size_t i = 0; i < sizeof mount / sizeof *mount; i++) {
		struct base_wrench wrench;
		memcpy(chain.gravity, mount[i].gravity, sizeof chain.gravity);
		run(&chain, &at, &wrench, NULL);
		expect_wrench(&wrench, mount[i].force, mount[i].moment, 50);
	}
}

/* The same told in the cell's axes, z up, by the way the arm is mounted: the weight always falls,
 * and the moment is that of where the mass then hangs. Joint 1 turns the mass, 0.1 m off its axis,
 * at 3 rad/s: 4.5 N outward, away from the axis. */
Test(chain, mounted_on_floor_ceiling_and_wall)
{
	static const struct {
		const char *name;
		double mounting[9], force[3], moment[3];
	} mount[] = {
		/* mass at (0.1, 0, 0.4) */
		{"floor", {1, 0, 0, 0, 1, 0, 0, 0, 1}, {4.5, 0, -50}, {0, 6.8, 0}},
		/* turned over about y, mass at (-0.1, 0, -0.4): pulled toward -x below the face */
		{"ceiling", {-1, 0, 0, 0, 1, 0, 0, 0, -1}, {-4.5, 0, -50}, {0, -3.2, 0}},
		/* the face looks along +x, its own x downward: mass at (0.4, 0, -0.1) */
		{"wall", {0, 0, 1, 0, 1, 0, -1, 0, 0}, {0, 0, -54.5}, {0, 21.8, 0}},
		/* the face looks along +y, its own x along +x: mass at (0.1, 0.4, 0) */
		{"wall y", {1, 0, 0, 0, 0, 1, 0, -1, 0}, {4.5, 0, -50}, {-20, 5, -1.8}},
	};
	struct chain chain = {.convention = CHAIN_FRAMES, .gravity = {0, 0, -10}};
	struct instant at = {.speed = {3}};
	point_link(&chain, JOINT_REVOLUTE, 5, 0.1, 0, 0.4);
	for (size_t i = 0; i < sizeof mount / sizeof *mount; i++) {
		struct base_wrench wrench;
		memcpy(chain.mounting, mount[i].mounting, sizeof chain.mounting);
		run(&chain, &at, &wrench, NULL);
		for (int k = 0; k < 3; k++) {
			near(mount[i].name, wrench.force[k], mount[i].force[k], 50);
			near(mount[i].name, wrench.moment[k], mount[i].moment[k], 50);
		}
	}
}
