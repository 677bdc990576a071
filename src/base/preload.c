/* Torque, preload, clamp. */
#include "preload.h"
#include <math.h>

/* Shigley 8-8: T = K F d */
double preload_of_torque(double torque, double torque_coefficient, double diameter)
{
	return torque / (torque_coefficient * diameter);
}

double preload_torque(double preload, double torque_coefficient, double diameter)
{
	return torque_coefficient * preload * diameter;
}

double preload_share(double anchor_stiffness, double bed_stiffness)
{
	return anchor_stiffness / (anchor_stiffness + bed_stiffness);
}

double preload_gapping_load(const struct preloaded_joint *joint)
{
	if (joint->preload <= 0)
		return 0;
	/* 1 - C is exact near 1, and its zero gives the infinity that is meant */
	return joint->share < 1 ? joint->preload / (1 - joint->share) : HUGE_VAL;
}

/* The anchor cannot press: a load that pushes harder than F0 / C is the bed's alone. */
double preload_clamp(const struct preloaded_joint *joint, double tension)
{
	double slack = -tension;
	double clamp = joint->preload - (1 - joint->share) * tension;
	return fmax(fmax(clamp, slack), 0);
}

/* The bed cannot pull: a load beyond gapping is the anchor's alone. */
double preload_anchor_force(const struct preloaded_joint *joint, double tension)
{
	double anchor = joint->preload + joint->share * tension;
	return fmax(fmax(anchor, tension), 0);
}

bool preload_gaps(const struct preloaded_joint *joint, double tension)
{
	return tension > 0 && tension >= preload_gapping_load(joint);
}
