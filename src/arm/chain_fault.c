/* What no arm can be. The inertia of a body is half the trace of its second moments less
 * themselves, and second moments are those of masses at places: no direction can have a negative
 * one. That is the triangle inequality of principal moments (each at most the sum of the other
 * two), and with it the tensor is positive (textbook; the equivalence is one line: eigenvalues of
 * trace/2 - I are half the sum of two principal moments less half the third). */
#include "chain.h"

#include <math.h>

/* Inertia as typed with three digits may break the inequality of a thin plate by this share of its
 * trace. */
#define INERTIA_ROUNDING 1e-3
/* Product of a rotation with its transpose against 1: five typed digits. */
#define ROTATION_ROUNDING 1e-5

static bool all_finite(const double values[], size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (!isfinite(values[i]))
			return false;
	return true;
}

/* Whether a symmetric matrix (xx yy zz xy yz xz) has no negative eigenvalue, `slack` aside: the
 * pivots of its elimination with slack on the diagonal. */
static bool no_negative(const double m[6], double slack)
{
	double xx = m[0] + slack, yy = m[1] + slack, zz = m[2] + slack;
	if (xx <= 0)
		return false;
	double lower_yy = yy - m[3] * m[3] / xx;
	double lower_zz = zz - m[5] * m[5] / xx, lower_yz = m[4] - m[3] * m[5] / xx;
	return lower_yy > 0 && lower_zz - lower_yz * lower_yz / lower_yy > 0;
}

static const char *inertia_fault(const double i[6])
{
	double trace = i[0] + i[1] + i[2], half = trace / 2;
	bool zero = true;
	for (int k = 0; k < 6; k++)
		zero = zero && i[k] == 0;
	if (zero)
		return NULL;
	double slack = INERTIA_ROUNDING * trace;
	if (trace <= 0 || !no_negative(i, slack))
		return "its inertia is not positive: about some axis it would be below zero";
	const double second[6] = {half - i[0], half - i[1], half - i[2], -i[3], -i[4], -i[5]};
	if (!no_negative(second, slack))
		return "one principal moment of its inertia is larger than the other two together";
	return NULL;
}

static const char *body_fault(double mass, const double centre[3], const double inertia[6])
{
	if (!isfinite(mass) || !all_finite(centre, 3) || !all_finite(inertia, 6))
		return "its mass, centre or inertia is not a finite number";
	if (mass < 0)
		return "its mass is negative";
	return inertia_fault(inertia);
}

static const char *rotation_fault(const double r[9])
{
	for (int i = 0; i < 3; i++)
		for (int j = 0; j <= i; j++) {
			const double *a = r + 3 * i, *b = r + 3 * j;
			double product = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
			if (fabs(product - (i == j)) > ROTATION_ROUNDING)
				return "its rotation is none: rows are not at right angles or not "
				       "of length 1";
		}
	struct vec3 across = vec3_cross(vec3_of(r), vec3_of(r + 3));
	if (vec3_dot(across, vec3_of(r + 6)) < 0)
		return "its rotation is a mirror image: its axes are left-handed";
	return NULL;
}

static const char *link_fault(enum chain_convention convention, const struct link *link)
{
	if (link->kind != JOINT_REVOLUTE && link->kind != JOINT_PRISMATIC)
		return "its joint is neither revolute nor prismatic";
	const char *fault = body_fault(link->mass, link->centre, link->inertia);
	if (fault)
		return fault;
	if (convention == CHAIN_FRAMES) {
		if (!all_finite(link->rotation, 9) || !all_finite(link->position, 3))
			return "its frame is not made of finite numbers";
		return rotation_fault(link->rotation);
	}
	const double dh[4] = {link->a, link->alpha, link->d, link->theta};
	return all_finite(dh, 4) ? NULL : "its DH parameters are not finite numbers";
}

/* All zero stands for none. */
static const char *mounting_fault(const double r[9])
{
	bool none = true;
	if (!all_finite(r, 9))
		return "its mounting is not made of finite numbers";
	for (int i = 0; i < 9; i++)
		none = none && r[i] == 0;
	if (none || !rotation_fault(r))
		return NULL;
	return "its mounting is no rotation: rows are not at right angles, not of length 1 or "
	       "left-handed";
}

/* Of the chain itself, which is no link's. */
static const char *whole_fault(const struct chain *chain)
{
	if (chain->count < 1)
		return "it has no joint";
	if (chain->count > MAX_JOINTS_OF_ARM)
		return "it has more than 12 joints";
	if (chain->convention != CHAIN_STANDARD_DH && chain->convention != CHAIN_MODIFIED_DH &&
	    chain->convention != CHAIN_FRAMES)
		return "its convention is not known";
	if (!all_finite(chain->gravity, 3))
		return "its gravity is not made of finite numbers";
	return mounting_fault(chain->mounting);
}

const char *chain_fault(const struct chain *chain, size_t *link)
{
	const char *fault = whole_fault(chain);
	*link = chain->count + 1;
	if (fault)
		return fault;
	for (size_t i = 0; i < chain->count; i++) {
		*link = i;
		fault = link_fault(chain->convention, &chain->link[i]);
		if (fault)
			return fault;
	}
	*link = chain->count;
	return body_fault(chain->payload_mass, chain->payload_centre, chain->payload_inertia);
}
