#include "random_chain.h"

#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* --- the published arm ---------------------------------------------------------------------------
 */

struct set_row { double a, alpha_right_angles, d, mass, inertia[3], centre[3]; };

/* Corke and Armstrong-Helouvry, A search for consensus among model parameters reported for the PUMA
 * 560 robot, 1994; standard DH. */
static const struct set_row set_1994[6] = {
	{0, 1, 0, 0, {0, .35, 0}, {0, 0, 0}},
	{.4318, 0, 0, 17.4, {.13, .524, .539}, {-.3638, .006, .2275}},
	{.0203, -1, .15005, 4.8, {.066, .086, .0125}, {-.0203, -.0141, .070}},
	{0, 1, .4318, .82, {1.8e-3, 1.3e-3, 1.8e-3}, {0, .019, 0}},
	{0, -1, 0, .34, {.3e-3, .4e-3, .3e-3}, {0, 0, 0}},
	{0, 0, 0, .09, {.15e-3, .15e-3, .04e-3}, {0, 0, .032}},
};

/* Armstrong, Khatib and Burdick, The explicit dynamic model and inertial parameters of the PUMA 560
 * arm, 1986; modified DH. */
static const struct set_row set_1986[6] = {
	{0, 0, 0, 0, {0, 0, .35}, {0, 0, 0}},
	{0, -1, .2435, 17.4, {.13, .524, .539}, {.068, .006, -.016}},
	{.4318, 0, -.0934, 4.8, {.066, .0125, .066}, {0, -.070, .014}},
	{-.0203, 1, .4331, .82, {1.8e-3, 1.8e-3, 1.3e-3}, {0, 0, -.019}},
	{0, -1, 0, .34, {.3e-3, .3e-3, .4e-3}, {0, 0, 0}},
	{0, 1, 0, .09, {.15e-3, .15e-3, .04e-3}, {0, 0, .032}},
};

void chain_benchmark(struct chain *chain, enum chain_set set)
{
	const struct set_row *row = set == PUMA_1994 ? set_1994 : set_1986;
	memset(chain, 0, sizeof *chain);
	chain->convention = set == PUMA_1994 ? CHAIN_STANDARD_DH : CHAIN_MODIFIED_DH;
	chain->count = 6;
	chain->gravity[2] = -9.81;
	for (size_t i = 0; i < chain->count; i++) {
		struct link *link = &chain->link[i];
		link->a = row[i].a;
		link->alpha = row[i].alpha_right_angles * pi / 2;
		link->d = row[i].d;
		link->mass = row[i].mass;
		memcpy(link->inertia, row[i].inertia, sizeof row[i].inertia);
		memcpy(link->centre, row[i].centre, sizeof row[i].centre);
	}
}

void chain_sample(struct chain *chain)
{
	chain_benchmark(chain, PUMA_1994);
	chain->payload_mass = 2.5;
	chain->payload_centre[2] = 0.15;
}

/* --- random ones ---------------------------------------------------------------------------------
 */

void body_random(struct dice *dice, double reach, double *mass, double centre[3], double inertia[6])
{
	enum { POINTS = 5 };
	double point[POINTS][3], weight[POINTS];
	*mass = 0;
	memset(centre, 0, 3 * sizeof *centre);
	memset(inertia, 0, 6 * sizeof *inertia);
	for (int p = 0; p < POINTS; p++) {
		weight[p] = dice_decades(dice, -2, 1);
		*mass += weight[p];
		for (int i = 0; i < 3; i++) {
			point[p][i] = dice_between(dice, -reach, reach);
			centre[i] += weight[p] * point[p][i];
		}
	}
	for (int i = 0; i < 3; i++)
		centre[i] /= *mass;
	for (int p = 0; p < POINTS; p++) {
		double x = point[p][0] - centre[0], y = point[p][1] - centre[1];
		double z = point[p][2] - centre[2], m = weight[p];
		double add[6] = {y * y + z * z, x * x + z * z, x * x + y * y,
		                 -x * y,        -y * z,        -x * z};
		for (int i = 0; i < 6; i++)
			inertia[i] += m * add[i];
	}
}

void rotation_random(struct dice *dice, double r[9])
{
	/* a unit quaternion from inside the ball */
	double k[4], square;
	do {
		square = 0;
		for (int i = 0; i < 4; i++) {
			k[i] = dice_between(dice, -1, 1);
			square += k[i] * k[i];
		}
	} while (square > 1 || square < 1e-3);
	double w = k[0], x = k[1], y = k[2], z = k[3], s = 2 / square;
	const double turn[9] = {1 - s * (y * y + z * z), s * (x * y - w * z), s * (x * z + w * y),
	                        s * (x * y + w * z), 1 - s * (x * x + z * z), s * (y * z - w * x),
	                        s * (x * z - w * y), s * (y * z + w * x), 1 - s * (x * x + y * y)};
	memcpy(r, turn, sizeof turn);
}

static void link_random(struct link *link, struct dice *dice)
{
	link->kind = dice_whole(dice, 0, 3) ? JOINT_REVOLUTE : JOINT_PRISMATIC;
	link->a = dice_between(dice, -0.6, 0.6);
	/* right angles are what real arms have */
	link->alpha = dice_whole(dice, 0, 1) ? dice_whole(dice, -2, 2) * pi / 2
	                                     : dice_between(dice, -pi, pi);
	link->d = dice_between(dice, -0.6, 0.6);
	link->theta = dice_between(dice, -pi, pi);
	rotation_random(dice, link->rotation);
	for (int i = 0; i < 3; i++)
		link->position[i] = dice_between(dice, -0.6, 0.6);
	body_random(dice, 0.3, &link->mass, link->centre, link->inertia);
	if (dice_whole(dice, 0, 7) == 0)
		link->mass = 0;
}

void chain_random(struct chain *chain, struct dice *dice, size_t most)
{
	memset(chain, 0, sizeof *chain);
	chain->convention = (enum chain_convention)dice_whole(dice, 0, 2);
	chain->count = (size_t)dice_whole(dice, 1, (int)most);
	for (size_t i = 0; i < chain->count; i++)
		link_random(&chain->link[i], dice);
	body_random(dice, 0.2, &chain->payload_mass, chain->payload_centre, chain->payload_inertia);
	for (int i = 0; i < 3; i++)
		chain->gravity[i] = dice_between(dice, -10, 10);
}

void instant_random(struct instant *instant, struct dice *dice)
{
	for (int i = 0; i < MAX_JOINTS_OF_ARM; i++) {
		instant->q[i] = dice_between(dice, -pi, pi);
		instant->speed[i] = dice_between(dice, -3, 3);
		instant->acceleration[i] = dice_between(dice, -10, 10);
	}
}
