/* Preload of an anchor that clamps a base to its bed: from the torque, and what a tension makes of
 * it.
 *
 * Source: torque T = K F d, Shigley, Mechanical Engineering Design, 8-8; joint law, Shigley 8-7 and
 * VDI 2230 in its basic form (both from memory): anchor and clamped bed are two springs, C = ka /
 * (ka + kb) is the anchor's share of a tension F on the joint. Until the joint gaps the anchor has
 * F0 + C F and the bed F0 - (1 - C) F; from F = F0 / (1 - C) on the anchor has all of F.
 * Units: forces N, diameter mm, torque N mm, stiffness N/mm. Tension positive; a pressing load is
 * negative.
 * Range: K > 0, d > 0, stiffnesses >= 0 and not both zero, F0 >= 0, 0 <= C <= 1.
 * Identities: anchor - clamp = F at every load; both are continuous at gapping; with F0 = 0 the
 * anchor has F and the clamp nothing.
 * What it does not say: K is the caller's and depends on lubrication and rust; without a K shown
 * for the product the preload is unproven. A torque wrench scatters by 25 to 35 % (from memory), so
 * torque shows that an anchor was set rather than how much it clamps. In concrete the preload falls
 * with time (PRELOAD_LEFT). A preload does not raise the ultimate load of an anchor. */
#ifndef PRELOAD_H
#define PRELOAD_H

#include <stdbool.h>

/* What is left of the initial preload of an anchor in concrete after relaxation and creep: 0.4 to
 * 0.6 of it. Eligehausen, Mallee, Silva, Anchorage in Concrete Construction (from memory). The low
 * one is the safe side for clamping. */
#define PRELOAD_LEFT_LOW 0.4
#define PRELOAD_LEFT_HIGH 0.6

/* F = T / (K d) [N] */
double preload_of_torque(double torque, double torque_coefficient, double diameter);
/* T = K F d [N mm] */
double preload_torque(double preload, double torque_coefficient, double diameter);

struct preloaded_joint {
	double preload;                /* F0, what is left of it [N] */
	double share;                  /* C [-] */
};

/* C = ka / (ka + kb): of one anchor, and of the bed that it clamps [N/mm]. */
double preload_share(double anchor_stiffness, double bed_stiffness);

/* Tension on the joint at which the clamp is gone: F0 / (1 - C) [N]; HUGE_VAL where C = 1 and
 * F0 > 0: the bed follows without end. */
double preload_gapping_load(const struct preloaded_joint *joint);
/* Force in the bed under that anchor, pressing positive, never below 0 [N]. */
double preload_clamp(const struct preloaded_joint *joint, double tension);
/* Force in the anchor, never below 0 [N]: a pressing load of F0 / C and more slackens it. */
double preload_anchor_force(const struct preloaded_joint *joint, double tension);
/* Whether that tension opens the joint: the clamp is gone. */
bool preload_gaps(const struct preloaded_joint *joint, double tension);

#endif
