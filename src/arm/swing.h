/* The lumped arm: reactions at the mounting face from masses, radii, speeds and stopping times
 * alone. An ESTIMATE, for when nothing better is known of the arm; its caller marks it so on every
 * page.
 *
 * Model: a straight rigid arm turns about a vertical axis through the origin of the mounting face
 * and about a horizontal axis that crosses it at the axis height. Its moving mass and its payload
 * are points on it; the fixed mass (base, turntable drive) has no lever and no motion. Both axes
 * run at full speed and at the peak of their ramp in one instant, which is the start of a stop.
 *
 * Source: own derivation. With the pitch p above the horizontal, a point at radius r of the arm has
 * cylindrical place (r cos p, z = h + r sin p), and its acceleration in those coordinates is
 *   radial r cos p (w1^2 + w2^2) + r sin p b2,   around r cos p b1 + 2 w1 w2 r sin p (Coriolis),
 *   up     r sin p w2^2 - r cos p b2
 * for speeds w1, w2 and accelerations b1, b2 of the vertical and the horizontal axis. Every sign of
 * b1, b2 and of the Coriolis part is allowed, so each result is the largest of its kind over all
 * pitch angles and all signs; the kinds need not occur together. Sums over the points need only
 * S1 = sum m r and S2 = sum m r^2.
 *   vertical    W +- sqrt(Fc2^2 + Ft2^2)                        Fc = S1 w^2, Ft = S1 b
 *   horizontal  largest |u cos p + v sin p|, u = (Fc1 + Fc2, Ft1), v = (Ft2, 2 S1 w1 w2)
 *   twisting    (S2 b1 + sqrt((S2 b1)^2 + (2 S2 w1 w2)^2)) / 2
 *   tilting     one axis horizontal alone: S2 b2 + sqrt((g S1 + h Fc2)^2 + (h Ft2)^2); else by a
 *               search over the pitch, which is exact to 2e-5 at the worst (Ehlich and Zeller, from
 *               memory: the square is a trigonometric polynomial of degree 4, on 1440 points of the
 *               circle) and to rounding where the best grid point neighbours the highest peak.
 *
 * Range: floor mounting. The own inertia of the links about their centres, the wrist, rotors and
 * gear play are not in it: a uniform rod put as a point at its middle loses a quarter of its
 * inertia, and a point at 0.58 of its length keeps it. A realistic arm has the centre of its moving
 * mass near 0.3 to 0.5 of its reach (common practice, no source); all of it at full reach is the
 * bound (swing_at_reach). A stop by a hard end stop or a grabbing brake may pass the peak factor.
 *
 * Identities: both axes at once is never below either alone; one mass at radius R with the arm
 * level gives H = m sqrt(at^2 + ac^2), T = m at R, M >= m sqrt((g R + ac h)^2 + (at h)^2).
 * Units: N, mm, N mm, kg, s, rad. Signs: vertical force positive downward. */
#ifndef SWING_H
#define SWING_H

#include "../cell/cell.h"
#include "../cell/trace.h"

enum swing_axes { SWING_ABOUT_VERTICAL, SWING_ABOUT_HORIZONTAL, SWING_ABOUT_BOTH };

/* From full speed to rest or the other way. One of time and acceleration is given, the other is 0.
 */
struct swing_ramp {
	double time;                 /* [s] */
	double acceleration;         /* mean over the ramp [rad/s2] */
	double peak;                 /* largest over mean: 1 (uniform) to 2 (triangle) [-] */
};

/* A point at radius r with speed v turns at v/r. */
struct swing_axis {
	double speed;                /* largest [rad/s]; 0: the axis does not move */
	struct swing_ramp normal, stop;
};

struct swing {
	double fixed_mass;           /* without lever [kg] */
	double moving_mass, moving_radius;      /* of the arm, beyond the axes [kg], [mm] */
	double payload_mass, payload_radius;    /* gripper and work piece [kg], [mm] */
	double axis_height;          /* of the horizontal axis above the mounting face [mm] */
	struct swing_axis vertical, horizontal;
};

struct swing_reaction {
	double weight;               /* of all masses [N] */
	double weight_tilting;       /* of the arm stretched level, contained in tilting [N mm] */
	double vertical_moving;      /* moving part of the vertical force, both signs [N] */
	double down;                 /* weight + vertical_moving [N] */
	double up;                   /* vertical_moving - weight; negative: never lifts [N] */
	double horizontal;           /* any heading [N] */
	double tilting;              /* about any level axis, with the weight [N mm] */
	double twisting;             /* about the vertical, both signs [N mm] */
	double tilting_pitch;        /* where the tilting is largest [rad] */
};

/* Why the numbers cannot be, with what to write; NULL when they can. `arm_case` is ARM_NORMAL or
 * ARM_EMERGENCY_STOP: whose ramp is asked. A missing ramp is a fault, never taken from the other.
 */
const char *swing_fault(const struct swing *swing, enum swing_axes axes, enum arm_case arm_case);

/* Of numbers without a fault. An empty gripper: call again with no payload; the uplift is linear in
 * the payload, so the larger of the two is its bound. */
void swing_reactions(const struct swing *swing, enum swing_axes axes, enum arm_case arm_case,
                     struct swing_reaction *out, struct trace *trace);

/* The same arm with moving mass and payload at full reach [mm]: no result is below those of any
 * radii within the reach. Where the split of the arm's mass is not known, give all of it as moving.
 */
struct swing swing_at_reach(const struct swing *swing, double reach);

#endif
