/* Properties of the recursion on random arms: revolute and prismatic joints, all conventions,
 * gravity from anywhere. SEED and CASES may be set in the environment; a failure names its case. */
#include "../support/cases.h"
#include "../support/random_chain.h"
#include "../support/slow_chain.h"

#include <criterion/criterion.h>
#include <inttypes.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

struct trial {
	struct chain chain;
	struct prepared_chain prepared;
	struct instant at;
	struct base_wrench wrench;
	double torque[MAX_JOINTS_OF_ARM];
};

static void run(struct trial *trial)
{
	chain_prepare(&trial->chain, &trial->prepared);
	chain_wrench(&trial->prepared, trial->at.q, trial->at.speed, trial->at.acceleration,
	             &trial->wrench, trial->torque);
}

static void throw_trial(struct trial *trial, struct dice *dice, size_t most)
{
	chain_random(&trial->chain, dice, most);
	instant_random(&trial->at, dice);
	run(trial);
}

static double length(const double v[3])
{
	return sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
}

/* Sizes that rounding is measured by: all bodies' weight and what they may accelerate, at the
 * levers that they may have. Coarse on purpose: rounding is 1e-16 of it times a few hundred. */
static void sizes(const struct trial *trial, double *force, double *moment)
{
	double lever = 1, mass = trial->chain.payload_mass, rate = 1;
	for (size_t i = 0; i < trial->chain.count; i++) {
		lever += 2 + fabs(trial->at.q[i]);
		mass += trial->chain.link[i].mass;
		rate += fabs(trial->at.speed[i]) * fabs(trial->at.speed[i]) +
		        fabs(trial->at.acceleration[i]);
	}
	*force = mass * (length(trial->chain.gravity) + rate * lever);
	*moment = *force * lever;
}

static void expect_same(uint64_t number, const char *what, const struct base_wrench *wrench,
                        const double force[3], const double moment[3], double of_force,
                        double of_moment)
{
	for (int i = 0; i < 3; i++) {
		cr_assert(fabs(wrench->force[i] - force[i]) <= of_force,
		          "%s, case %" PRIu64 ": force %d is %.15g, not %.15g", what, number, i,
		          wrench->force[i], force[i]);
		cr_assert(fabs(wrench->moment[i] - moment[i]) <= of_moment,
		          "%s, case %" PRIu64 ": moment %d is %.15g, not %.15g", what, number, i,
		          wrench->moment[i], moment[i]);
	}
}

/* --- the second way: momentum --------------------------------------------------------------------
 */

/* Weight less the rate of momentum; the difference quotient costs five of the fifteen digits. */
Test(prop_chain, wrench_is_weight_less_rate_of_momentum)
{
	uint64_t count = cases_count("rate of momentum", 10);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial trial;
		struct base_wrench slow;
		double size[2];
		throw_trial(&trial, &dice, 7);
		slow_wrench(&trial.chain, trial.at.q, trial.at.speed, trial.at.acceleration, 1e-5,
		            &slow, size);
		expect_same(number, "momentum", &trial.wrench, slow.force, slow.moment,
		            1e-9 * size[0], 1e-9 * size[1]);
	}
}

/* --- other axes ----------------------------------------------------------------------------------
 */

static void turn(const double r[9], const double v[3], double out[3])
{
	for (int i = 0; i < 3; i++)
		out[i] = r[3 * i] * v[0] + r[3 * i + 1] * v[1] + r[3 * i + 2] * v[2];
}

/* The chain seen from a base frame turned and moved: only its first offset and gravity know. */
static void move_base(struct chain *chain, const double r[9], const double by[3])
{
	struct link *first = &chain->link[0];
	double old[9], moved[3];
	memcpy(old, first->rotation, sizeof old);
	for (int j = 0; j < 3; j++) {
		const double column[3] = {old[j], old[3 + j], old[6 + j]};
		double turned[3];
		turn(r, column, turned);
		for (int i = 0; i < 3; i++)
			first->rotation[3 * i + j] = turned[i];
	}
	turn(r, first->position, moved);
	for (int i = 0; i < 3; i++)
		first->position[i] = moved[i] + by[i];
	turn(r, chain->gravity, moved);
	memcpy(chain->gravity, moved, sizeof moved);
}

/* Turning and moving the base frame turns the wrench and moves its moment; torques do not notice.
 */
Test(prop_chain, base_turned_and_moved)
{
	uint64_t count = cases_count("base turned and moved", 2);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial trial, moved;
		double r[9], by[3], force[3], moment[3], of_force, of_moment;
		do
			throw_trial(&trial, &dice, 7);
		while (trial.chain.convention != CHAIN_FRAMES);
		rotation_random(&dice, r);
		for (int i = 0; i < 3; i++)
			by[i] = dice_between(&dice, -2, 2);
		moved = trial;
		move_base(&moved.chain, r, by);
		run(&moved);
		turn(r, trial.wrench.force, force);
		turn(r, trial.wrench.moment, moment);
		moment[0] += by[1] * force[2] - by[2] * force[1];
		moment[1] += by[2] * force[0] - by[0] * force[2];
		moment[2] += by[0] * force[1] - by[1] * force[0];
		sizes(&trial, &of_force, &of_moment);
		expect_same(number, "moved", &moved.wrench, force, moment, 1e-13 * of_force,
		            1e-13 * (of_moment + 4 * of_force));
		for (size_t i = 0; i < trial.chain.count; i++)
			cr_assert(fabs(trial.torque[i] - moved.torque[i]) <= 1e-13 * of_moment,
			          "case %" PRIu64 ": torque %zu", number, i);
	}
}

/* --- ways to mount it ----------------------------------------------------------------------------
 */

static void turn_back(const double r[9], const double v[3], double out[3])
{
	for (int i = 0; i < 3; i++)
		out[i] = r[i] * v[0] + r[3 + i] * v[1] + r[6 + i] * v[2];
}

static void product(const double a[9], const double b[9], double out[9])
{
	for (int i = 0; i < 9; i++)
		out[i] = a[i / 3 * 3] * b[i % 3] + a[i / 3 * 3 + 1] * b[3 + i % 3] +
		         a[i / 3 * 3 + 2] * b[6 + i % 3];
}

/* About z or y. */
static void axis_turn(char axis, double angle, double out[9])
{
	double c = cos(angle), s = sin(angle);
	const double about_z[9] = {c, -s, 0, s, c, 0, 0, 0, 1};
	const double about_y[9] = {c, 0, s, 0, 1, 0, -s, 0, c};
	memcpy(out, axis == 'z' ? about_z : about_y, sizeof about_z);
}

/* Rz(toward) Ry(tilt) Rz(-toward) Rz(turned): the face's normal leans by tilt toward a heading;
 * tilt 0 is a floor, a right angle a wall, two of them a ceiling. */
static void mount_random(struct dice *dice, double r[9])
{
	double toward = dice_between(dice, -pi, pi), part[9], sum[9];
	double tilt = dice_whole(dice, 0, 1) ? dice_whole(dice, 0, 2) * pi / 2
	                                     : dice_between(dice, 0, pi);
	axis_turn('z', toward, r);
	axis_turn('y', tilt, part);
	product(r, part, sum);
	axis_turn('z', dice_between(dice, -pi, pi) - toward, part);
	product(sum, part, r);
}

/* The wrench of a mounted arm is that of the arm in its own axes, with the weight pulling from
 * where it then comes, turned; torques are the same. Every convention. */
Test(prop_chain, mounting_turns_the_result)
{
	uint64_t count = cases_count("mounting turns the result", 2);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial mounted, own;
		double force[3], moment[3], of_force, of_moment;
		throw_trial(&mounted, &dice, 7);
		mount_random(&dice, mounted.chain.mounting);
		own = mounted;
		memset(own.chain.mounting, 0, sizeof own.chain.mounting);
		turn_back(mounted.chain.mounting, mounted.chain.gravity, own.chain.gravity);
		run(&mounted);
		run(&own);
		turn(mounted.chain.mounting, own.wrench.force, force);
		turn(mounted.chain.mounting, own.wrench.moment, moment);
		sizes(&mounted, &of_force, &of_moment);
		expect_same(number, "mounted", &mounted.wrench, force, moment, 1e-13 * of_force,
		            1e-13 * of_moment);
		for (size_t i = 0; i < own.chain.count; i++)
			cr_assert(fabs(own.torque[i] - mounted.torque[i]) <= 1e-13 * of_moment,
			          "case %" PRIu64 ": torque %zu", number, i);
	}
}

/* On floor, wall, ceiling and in between with the weight straight down: the mounting is as good as
 * a first frame that stands so, and that chain's momentum, which knows of no mounting, agrees. */
Test(prop_chain, mounting_is_a_first_frame_that_stands_so)
{
	uint64_t count = cases_count("mounting as first frame", 10);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial mounted, framed;
		struct base_wrench slow;
		double r[9], size[2], of_force, of_moment;
		const double down[3] = {0, 0, -9.80665}, nowhere[3] = {0};
		do
			throw_trial(&mounted, &dice, 7);
		while (mounted.chain.convention != CHAIN_FRAMES);
		framed = mounted;
		mount_random(&dice, r);
		memcpy(mounted.chain.mounting, r, sizeof r);
		move_base(&framed.chain, r, nowhere);
		memcpy(mounted.chain.gravity, down, sizeof down);
		memcpy(framed.chain.gravity, down, sizeof down);
		run(&mounted);
		run(&framed);
		sizes(&mounted, &of_force, &of_moment);
		expect_same(number, "framed", &mounted.wrench, framed.wrench.force,
		            framed.wrench.moment, 1e-13 * of_force, 1e-13 * of_moment);
		slow_wrench(&framed.chain, framed.at.q, framed.at.speed, framed.at.acceleration,
		            1e-5, &slow, size);
		expect_same(number, "momentum", &mounted.wrench, slow.force, slow.moment,
		            1e-9 * size[0], 1e-9 * size[1]);
	}
}

/* However it is mounted, an arm at rest weighs its masses, straight down. */
Test(prop_chain, mounted_arm_weighs_the_same)
{
	uint64_t count = cases_count("weight of a mounted arm", 2);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial trial;
		throw_trial(&trial, &dice, 7);
		mount_random(&dice, trial.chain.mounting);
		memset(trial.at.speed, 0, sizeof trial.at.speed);
		memset(trial.at.acceleration, 0, sizeof trial.at.acceleration);
		const double down[3] = {0, 0, -9.80665};
		double mass = trial.chain.payload_mass;
		memcpy(trial.chain.gravity, down, sizeof down);
		for (size_t i = 0; i < trial.chain.count; i++)
			mass += trial.chain.link[i].mass;
		run(&trial);
		const double force[3] = {0, 0, -9.80665 * mass};
		/* the moment about the vertical of a weight is none */
		const double moment[3] = {trial.wrench.moment[0], trial.wrench.moment[1], 0};
		double of_force, of_moment;
		sizes(&trial, &of_force, &of_moment);
		expect_same(number, "weight", &trial.wrench, force, moment, 1e-13 * of_force,
		            1e-13 * of_moment);
	}
}

/* --- the same masses, put otherwise --------------------------------------------------------------
 */

/* A link that stands still on the one before, in the same place, without mass. */
static void insert_locked(struct trial *trial, size_t at)
{
	struct chain *chain = &trial->chain;
	const double upright[9] = {1, 0, 0, 0, 1, 0, 0, 0, 1};
	for (size_t i = chain->count; i > at; i--) {
		chain->link[i] = chain->link[i - 1];
		trial->at.q[i] = trial->at.q[i - 1];
		trial->at.speed[i] = trial->at.speed[i - 1];
		trial->at.acceleration[i] = trial->at.acceleration[i - 1];
	}
	chain->count++;
	memset(&chain->link[at], 0, sizeof chain->link[at]);
	memcpy(chain->link[at].rotation, upright, sizeof upright);
	trial->at.q[at] = trial->at.speed[at] = trial->at.acceleration[at] = 0;
}

/* The body of two, by Steiner's rule on the tensors. */
static void join(double mass[2], double centre[2][3], double inertia[2][6], struct link *out)
{
	out->mass = mass[0] + mass[1];
	memset(out->inertia, 0, sizeof out->inertia);
	for (int i = 0; i < 3; i++)
		out->centre[i] = (mass[0] * centre[0][i] + mass[1] * centre[1][i]) / out->mass;
	for (int b = 0; b < 2; b++) {
		double x = centre[b][0] - out->centre[0], y = centre[b][1] - out->centre[1];
		double z = centre[b][2] - out->centre[2];
		const double add[6] = {y * y + z * z, x * x + z * z, x * x + y * y,
		                       -x * y,        -y * z,        -x * z};
		for (int i = 0; i < 6; i++)
			out->inertia[i] += inertia[b][i] + mass[b] * add[i];
	}
}

/* A link of two bodies is as good as two links, the second locked to the first. */
Test(prop_chain, link_split_in_two)
{
	uint64_t count = cases_count("link split in two", 2);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial one, two;
		double mass[2], centre[2][3], inertia[2][6], of_force, of_moment;
		do
			throw_trial(&one, &dice, 7);
		while (one.chain.convention != CHAIN_FRAMES);
		for (int b = 0; b < 2; b++)
			body_random(&dice, 0.3, &mass[b], centre[b], inertia[b]);
		size_t at = (size_t)dice_whole(&dice, 0, (int)one.chain.count - 1);
		two = one;
		join(mass, centre, inertia, &one.chain.link[at]);
		run(&one);
		insert_locked(&two, at + 1);
		for (size_t b = 0; b < 2; b++) {
			struct link *link = &two.chain.link[at + b];
			link->mass = mass[b];
			memcpy(link->centre, centre[b], sizeof centre[b]);
			memcpy(link->inertia, inertia[b], sizeof inertia[b]);
		}
		run(&two);
		sizes(&one, &of_force, &of_moment);
		expect_same(number, "split", &two.wrench, one.wrench.force, one.wrench.moment,
		            1e-13 * of_force, 1e-13 * of_moment);
	}
}

/* A payload is as good as a locked link of its mass, in every convention. */
Test(prop_chain, payload_as_link)
{
	uint64_t count = cases_count("payload as link", 2);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial one, two;
		double of_force, of_moment;
		throw_trial(&one, &dice, 7);
		two = one;
		insert_locked(&two, two.chain.count);
		struct link *link = &two.chain.link[two.chain.count - 1];
		link->mass = one.chain.payload_mass;
		memcpy(link->centre, one.chain.payload_centre, sizeof link->centre);
		memcpy(link->inertia, one.chain.payload_inertia, sizeof link->inertia);
		two.chain.payload_mass = 0;
		memset(two.chain.payload_inertia, 0, sizeof two.chain.payload_inertia);
		run(&two);
		sizes(&one, &of_force, &of_moment);
		expect_same(number, "payload", &two.wrench, one.wrench.force, one.wrench.moment,
		            1e-13 * of_force, 1e-13 * of_moment);
	}
}

/* The frame in which a link is described is nobody's business: the last one turned and moved, its
 * bodies told in the new one. */
static void describe_otherwise(struct chain *chain, const double r[9], const double by[3])
{
	double *centre[2] = {chain->link[chain->count - 1].centre, chain->payload_centre};
	double *inertia[2] = {chain->link[chain->count - 1].inertia, chain->payload_inertia};
	for (int b = 0; b < 2; b++) {
		double moved[3], half[9], whole[9], *i = inertia[b];
		const double tensor[9] = {i[0], i[3], i[5], i[3], i[1], i[4], i[5], i[4], i[2]};
		const double back[9] = {r[0], r[3], r[6], r[1], r[4], r[7], r[2], r[5], r[8]};
		for (int k = 0; k < 3; k++)
			moved[k] = centre[b][k] - by[k];
		turn_back(r, moved, centre[b]);
		product(back, tensor, half);
		product(half, r, whole);
		const double told[6] = {whole[0], whole[4], whole[8], whole[1], whole[5], whole[2]};
		memcpy(i, told, sizeof told);
	}
}

/* A locked link whose frame stands otherwise carries the bodies instead. */
Test(prop_chain, frame_of_a_link_moved)
{
	uint64_t count = cases_count("frame of a link moved", 2);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial one, two;
		double r[9], by[3], of_force, of_moment;
		do
			throw_trial(&one, &dice, 7);
		while (one.chain.convention != CHAIN_FRAMES);
		rotation_random(&dice, r);
		for (int i = 0; i < 3; i++)
			by[i] = dice_between(&dice, -1, 1);
		two = one;
		size_t last = two.chain.count;
		insert_locked(&two, last);
		struct link *link = &two.chain.link[last], *before = &two.chain.link[last - 1];
		memcpy(link->rotation, r, sizeof r);
		memcpy(link->position, by, sizeof by);
		link->mass = before->mass;
		memcpy(link->centre, before->centre, sizeof link->centre);
		memcpy(link->inertia, before->inertia, sizeof link->inertia);
		before->mass = 0;
		memset(before->inertia, 0, sizeof before->inertia);
		describe_otherwise(&two.chain, r, by);
		run(&two);
		sizes(&one, &of_force, &of_moment);
		expect_same(number, "frame", &two.wrench, one.wrench.force, one.wrench.moment,
		            1e-13 * of_force, 1e-13 * of_moment);
	}
}

/* A payload of four points by its mass, centre and tensor is as good as four locked links that are
 * a point each: the tensor's sign and order are those of masses at places. */
Test(prop_chain, payload_as_points)
{
	enum { POINTS = 4 };
	uint64_t count = cases_count("payload as points", 2);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial one, two;
		struct link sum = {.mass = 0};
		double of_force, of_moment;
		throw_trial(&one, &dice, 7);
		two = one;
		for (int p = 0; p < POINTS; p++) {
			struct link point = {.mass = dice_decades(&dice, -2, 1)};
			for (int i = 0; i < 3; i++)
				point.centre[i] = dice_between(&dice, -0.3, 0.3);
			insert_locked(&two, two.chain.count);
			struct link *at = &two.chain.link[two.chain.count - 1];
			at->mass = point.mass;
			memcpy(at->centre, point.centre, sizeof at->centre);
			if (p == 0) {
				sum = point;
				continue;
			}
			double mass[2] = {sum.mass, point.mass}, centre[2][3];
			double inertia[2][6] = {{0}};
			memcpy(centre[0], sum.centre, sizeof sum.centre);
			memcpy(centre[1], point.centre, sizeof point.centre);
			memcpy(inertia[0], sum.inertia, sizeof sum.inertia);
			join(mass, centre, inertia, &sum);
		}
		one.chain.payload_mass = sum.mass;
		memcpy(one.chain.payload_centre, sum.centre, sizeof sum.centre);
		memcpy(one.chain.payload_inertia, sum.inertia, sizeof sum.inertia);
		two.chain.payload_mass = 0;
		memset(two.chain.payload_inertia, 0, sizeof two.chain.payload_inertia);
		run(&one);
		run(&two);
		sizes(&one, &of_force, &of_moment);
		expect_same(number, "points", &two.wrench, one.wrench.force, one.wrench.moment,
		            1e-13 * of_force, 1e-13 * of_moment);
	}
}

/* --- energy --------------------------------------------------------------------------------------
 */

/* Each joint a sine of its own. */
struct swing { double middle, size, rate, phase; };

static void swing_at(const struct swing swing[], size_t count, double t, struct instant *out)
{
	for (size_t i = 0; i < count; i++) {
		double w = swing[i].rate, u = w * t + swing[i].phase;
		out->q[i] = swing[i].middle + swing[i].size * sin(u);
		out->speed[i] = swing[i].size * w * cos(u);
		out->acceleration[i] = -swing[i].size * w * w * sin(u);
	}
}

/* Work of the joint torques over a second, Gauss-Legendre with five points in each of 100 steps. */
static double work(struct trial *trial, const struct swing swing[])
{
	static const double node[5] = {-0.90617984593866399, -0.53846931010568309, 0,
	                               0.53846931010568309, 0.90617984593866399};
	static const double weight[5] = {0.23692688505618909, 0.47862867049936647,
	                                 0.56888888888888889, 0.47862867049936647,
	                                 0.23692688505618909};
	enum { STEPS = 100 };
	double sum = 0;
	for (int step = 0; step < STEPS; step++)
		for (int k = 0; k < 5; k++) {
			swing_at(swing, trial->chain.count, (step + (1 + node[k]) / 2) / STEPS,
			         &trial->at);
			run(trial);
			for (size_t i = 0; i < trial->chain.count; i++)
				sum += weight[k] / 2 / STEPS * trial->torque[i] *
				       trial->at.speed[i];
		}
	return sum;
}

/* Over a motion the torques' work is what kinetic and potential energy gain. */
Test(prop_chain, work_is_energy_gained)
{
	uint64_t count = cases_count("energy balance", 200);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial trial;
		struct swing swing[MAX_JOINTS_OF_ARM];
		struct slow_state first, last;
		throw_trial(&trial, &dice, 7);
		for (size_t i = 0; i < trial.chain.count; i++)
			swing[i] = (struct swing){
				dice_between(&dice, -1, 1), dice_between(&dice, 0, 1),
				dice_between(&dice, 0, 4), dice_between(&dice, -pi, pi)};
		swing_at(swing, trial.chain.count, 0, &trial.at);
		slow_state(&trial.chain, trial.at.q, trial.at.speed, &first);
		swing_at(swing, trial.chain.count, 1, &trial.at);
		slow_state(&trial.chain, trial.at.q, trial.at.speed, &last);
		double gained = last.kinetic + last.potential - first.kinetic - first.potential;
		double size = 1 + first.kinetic + last.kinetic + fabs(first.potential) +
		              fabs(last.potential);
		double done = work(&trial, swing);
		cr_assert(fabs(done - gained) <= 1e-10 * size,
		          "case %" PRIu64 ": work %.12g, energy %.12g", number, done, gained);
	}
}

/* --- the terms at one pose
 * ------------------------------------------------------------------------ */

/* Composite bodies in fixed axes against the recursion: another order, other axes, the same wrench.
 */
Test(prop_chain, terms_give_the_wrench)
{
	uint64_t count = cases_count("terms give the wrench", 1);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial trial;
		struct pose_terms terms;
		struct base_wrench sum;
		double of_force, of_moment;
		throw_trial(&trial, &dice, MAX_JOINTS_OF_ARM);
		chain_terms(&trial.prepared, trial.at.q, &terms);
		terms_wrench(&terms, trial.at.speed, trial.at.acceleration, &sum);
		sizes(&trial, &of_force, &of_moment);
		expect_same(number, "terms", &sum, trial.wrench.force, trial.wrench.moment,
		            1e-13 * of_force, 1e-13 * of_moment);
	}
}

/* Torques are of no consequence to the wrench. */
Test(prop_chain, torques_may_be_left_out)
{
	uint64_t count = cases_count("torques left out", 10);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct trial trial;
		struct base_wrench alone;
		throw_trial(&trial, &dice, MAX_JOINTS_OF_ARM);
		chain_wrench(&trial.prepared, trial.at.q, trial.at.speed, trial.at.acceleration,
		             &alone, NULL);
		cr_assert_eq(memcmp(&alone, &trial.wrench, sizeof alone), 0);
	}
}
