/* Tension with shear, EN 1992-4 7.2.3 and Annex C, and which anchors act as a group. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>

/* (C.9): the sum, without any bonus */
double en_interaction_steel(double tension, double shear, bool earthquake)
{
	if (earthquake)
		return tension + shear;
	return sqrt(tension * tension + shear * shear);    /* (7.54) */
}

double en_interaction_concrete(double tension, double shear, bool earthquake)
{
	if (earthquake)
		return tension + shear;
	double round = pow(pow(tension, EN_TOGETHER_POWER) + pow(shear, EN_TOGETHER_POWER),
	                   1 / EN_TOGETHER_POWER);         /* (7.55) */
	/* (7.56), with each of the two at most 1 */
	double straight = fmax((tension + shear) / EN_TOGETHER_SUM, fmax(tension, shear));
	return fmin(round, straight);
}

double en_group_limit(const struct code_facts *f, enum code_mode mode)
{
	switch (mode) {
	case CONE:
	case PRYOUT:    /* bonded: scr,Np is never above 3 hef */
		return 3 * f->embedment;
	case BOND:
		return en_bond_spacing(f);
	case SPLITTING:
		return 2 * f->given->en.splitting_edge.value;
	default:
		return 0;   /* single anchors, or rows along an edge */
	}
}
