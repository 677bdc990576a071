/* A serial arm and the wrench of its motion at the mounting face.
 *
 * Source: recursive Newton-Euler, Luh, Walker and Paul 1980; Craig, Introduction to Robotics,
 * ch. 6; composite bodies in fixed axes, Featherstone, Rigid Body Dynamics Algorithms, ch. 5 and 6
 * (all from memory; both forms derived again here and compared with each other by the tests).
 *
 * Units inside this folder: m, kg, s, rad, N, N m; the caller converts. The wrench is that of the
 * arm ON the mounting face, moment about the base frame's origin, in mounting-face axes (z away
 * from the face, right-handed). A still arm gives the force m g.
 *
 * Range: what moves, with rigid links and transmissions, in prescribed motion. The part of an arm
 * that never moves is no link: it is a weight of its own, and does not turn with joint 1. The spin
 * of fast rotors inside the links is left out (it adds a gyroscopic couple, rotor inertia x gear
 * ratio x joint speed x link's spin).
 *
 * Identities: the wrench is weight less the rate of change of momentum; turning or moving the base
 * turns or moves the wrench; splitting a link in two changes nothing; the power of the joint
 * torques is the rate of change of the energy. */
#ifndef CHAIN_H
#define CHAIN_H

#include "vec3.h"
#include <stdbool.h>
#include <stddef.h>

enum { MAX_JOINTS_OF_ARM = 12 };

/* How the frame of a link follows from the frame before it, and which axis the joint has. */
enum chain_convention {
	CHAIN_STANDARD_DH,       /* Rz(theta) Tz(d) Tx(a) Rx(alpha); z of the frame BEFORE */
	CHAIN_MODIFIED_DH,       /* Rx(alpha) Tx(a) Rz(theta) Tz(d) (Craig); z of the link's own
	                          * frame; alpha and a belong to the link before */
	CHAIN_FRAMES             /* position and rotation as given; z of the link's own frame */
};
enum joint_kind { JOINT_REVOLUTE, JOINT_PRISMATIC };

/* One joint and the link behind it. The joint's position is added to theta (revolute) or d
 * (prismatic). */
struct link {
	enum joint_kind kind;
	double a, alpha, d, theta;              /* [m], [rad]; not read with CHAIN_FRAMES */
	double rotation[9];                     /* CHAIN_FRAMES: row-major; its columns are the
	                                         * link's axes in the frame before */
	double position[3];                     /* CHAIN_FRAMES: in the frame before [m] */
	double mass;                            /* [kg] */
	double centre[3];                       /* centre of mass in the link's frame [m] */
	double inertia[6];                      /* xx yy zz xy yz xz about the centre of mass, in
	                                         * the axes of the link's frame; entries of the
	                                         * tensor: xy = - sum of m x y [kg m2] */
};

struct chain {
	enum chain_convention convention;
	struct link link[MAX_JOINTS_OF_ARM];
	size_t count;
	double payload_mass;                    /* a body like a link's, in the last link's frame */
	double payload_centre[3], payload_inertia[6];
	double gravity[3];                      /* in the axes of the wrench: (0, 0, -9.80665) on a
	                                         * floor [m/s2] */
	double mounting[9];                     /* rotation from the base frame to the axes of the
	                                         * wrench, row-major; all zero: none. With it the
	                                         * "mounting-face axes" of this folder are the
	                                         * caller's, about the base frame's origin */
};

struct base_wrench { double force[3], moment[3]; };             /* [N], [N m] */

/* Why a chain cannot be: NULL when it can, else half a sentence about it. *link is the index of the
 * link, `count` for the payload, `count` + 1 for the chain itself. Faults: no joint or too many; a
 * value that is not finite; a rotation or mounting that is none; a negative mass; an inertia that
 * no body can have, that is, not positive or outside the triangle inequality of principal moments
 * (slack: 0.1 % of the trace, the rounding of three typed digits). A zero mass may have zero
 * inertia. */
const char *chain_fault(const struct chain *chain, size_t *link);

/* The chain with everything that no motion changes worked out once: all conventions become one
 * (fixed offset, then the joint about or along the link's own z), the payload is part of the last
 * link, and inertias are second moments about the link's origin. */
struct prepared_link {
	struct mat3 rotation;                   /* link's axes to those before, joint at 0 */
	struct vec3 position;                   /* link's origin in the frame before [m] */
	struct mat3 second;                     /* sum of m r r^T about the link's origin [kg m2] */
	struct vec3 first;                      /* sum of m r [kg m] */
	double mass;                            /* [kg] */
	enum joint_kind kind;
};
struct prepared_chain {
	struct prepared_link link[MAX_JOINTS_OF_ARM];
	size_t count;
	struct vec3 gravity;                    /* [m/s2] */
};
void chain_prepare(const struct chain *chain, struct prepared_chain *out);

/* The wrench at positions, speeds and accelerations of the joints (`count` of each, [rad] or [m]
 * and their rates). torque, if not NULL: what each joint must give [N m], or as a force [N]. */
void chain_wrench(const struct prepared_chain *chain, const double q[], const double speed[],
                  const double acceleration[], struct base_wrench *out, double torque[]);

/* At one pose: wrench = g + sum of A_j acc_j + sum over j <= k of B_jk speed_j speed_k, exact.
 * Members of b below the diagonal, and beyond count, are not written. */
struct pose_terms {
	struct base_wrench g, a[MAX_JOINTS_OF_ARM], b[MAX_JOINTS_OF_ARM][MAX_JOINTS_OF_ARM];
	size_t count;
};
void chain_terms(const struct prepared_chain *chain, const double q[], struct pose_terms *out);
/* That sum. */
void terms_wrench(const struct pose_terms *terms, const double speed[], const double acceleration[],
                  struct base_wrench *out);

#endif
