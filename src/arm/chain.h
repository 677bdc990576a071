/* A serial arm and the wrench of its motion at the mounting face: recursive Newton-Euler.
 *
 * Source: Luh, Walker and Paul 1980; Craig, Introduction to Robotics, ch. 6 (from memory). SI inside this
 * folder: m, kg, s, rad, N, N m; the caller converts. The wrench is that of the arm ON the mounting face,
 * moment about the base frame's origin, in mounting-face axes. A still arm gives the force m g.
 * Identities: the same by the rate of change of momentum; splitting a link in two changes nothing. */
#ifndef CHAIN_H
#define CHAIN_H

#include <stdbool.h>
#include <stddef.h>

enum { MAX_JOINTS_OF_ARM = 12 };
enum chain_convention { CHAIN_STANDARD_DH, CHAIN_MODIFIED_DH, CHAIN_FRAMES };
enum joint_kind { JOINT_REVOLUTE, JOINT_PRISMATIC };

/* One joint and the link behind it. DH: a, alpha, d, theta (the moving one is added to by q). Frames: the
 * joint's frame in the frame before it at q = 0 (rotation row-major, position), moving about or along its z. */
struct link {
	enum joint_kind kind;
	double a, alpha, d, theta;              /* [m], [rad] */
	double rotation[9], position[3];        /* CHAIN_FRAMES */
	double mass;                            /* [kg] */
	double centre[3];                       /* centre of mass in the link's frame [m] */
	double inertia[6];                      /* xx yy zz xy yz xz about the centre of mass [kg m2] */
};

struct chain {
	enum chain_convention convention;
	struct link link[MAX_JOINTS_OF_ARM];
	size_t count;
	double payload_mass, payload_centre[3], payload_inertia[6];   /* in the last link's frame */
	double gravity[3];                      /* in mounting-face axes: (0, 0, -9.80665) on a floor [m/s2] */
};

struct base_wrench { double force[3], moment[3]; };             /* [N], [N m] */

/* Why a chain cannot be: NULL when it can. Inertia positive semidefinite and within the triangle inequality
 * of its principal moments; a zero mass may have zero inertia. */
const char *chain_fault(const struct chain *chain, size_t *link);

/* The wrench at positions, speeds and accelerations of the joints; torque of each joint if not NULL. */
void chain_wrench(const struct chain *chain, const double q[], const double speed[], const double acceleration[],
                  struct base_wrench *out, double torque[]);

/* At one pose: wrench = g + A acc + sum over j <= k of B_jk speed_j speed_k, exact. */
struct pose_terms {
	struct base_wrench g, a[MAX_JOINTS_OF_ARM], b[MAX_JOINTS_OF_ARM][MAX_JOINTS_OF_ARM];
	size_t count;
};
void chain_terms(const struct chain *chain, const double q[], struct pose_terms *out);

#endif
