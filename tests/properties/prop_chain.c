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
