/* How the arm is mounted, its chain and its masses, histories of its reactions: what contradicts
 * itself without any mechanics. */
#include "load_model.h"
#include "validity_parts.h"
#include <math.h>
#include <stdio.h>

/* A payload said twice may differ by the rounding of pounds and kilograms [-]. */
#define SAME_PAYLOAD 1e-3
/* The sum of a dozen rounded link masses against the mass on the type plate [-]. */
#define SAME_ARM 1e-2

/* --- mounting --- */

static enum arm_mounting mounting_of(const struct arm *arm)
{
	return is_known(arm->mounting) ? (enum arm_mounting)arm->mounting.value : ON_FLOOR;
}

static void need_angle(struct validity *validity, const struct number *angle, const char *path,
                       const char *key, const char *hint)
{
	const struct arm *arm = &validity->cell->arm;
	static const char *const words[] = {"floor", "wall", "ceiling", "tilted"};
	if (!is_known(*angle))
		validity_fault(validity, FAULT_MISSING_KEY, arm->mounting.given.mark, path, hint,
		               "mounting: %s without %s", words[mounting_of(arm)], key);
}

static void check_tilt(struct validity *validity)
{
	const struct arm *arm = &validity->cell->arm;
	enum arm_mounting mounting = mounting_of(arm);
	if (mounting == TILTED)
		need_angle(validity, &arm->mounting_tilt, "arm.mounting_tilt", "mounting_tilt",
		           "write mounting_tilt: the angle between the face's normal and the "
		           "upward vertical, such as 30 deg");
	else if (is_known(arm->mounting_tilt))
		validity_fault(validity, FAULT_CONTRADICTION, arm->mounting_tilt.given.mark,
		               "arm.mounting_tilt",
		               "write mounting: tilted, or leave the angle out (in a setup: "
		               "unknown): floor, wall and ceiling have their own",
		               "mounting_tilt belongs to mounting: tilted");
}

static void check_toward(struct validity *validity)
{
	const struct arm *arm = &validity->cell->arm;
	enum arm_mounting mounting = mounting_of(arm);
	if (mounting == TILTED || mounting == ON_WALL)
		need_angle(validity, &arm->mounting_toward, "arm.mounting_toward",
		           "mounting_toward",
		           "write mounting_toward: the heading to which the face's normal leans, "
		           "cell axes, such as 90 deg");
	else if (is_known(arm->mounting_toward))
		validity_fault(validity, FAULT_CONTRADICTION, arm->mounting_toward.given.mark,
		               "arm.mounting_toward",
		               "write mounting: wall or tilted, or leave the heading out (in a "
		               "setup: unknown); to turn the arm about the face's normal, write "
		               "turned",
		               "mounting_toward belongs to mounting: wall or tilted");
}

/* The numbers of a data sheet are those of an arm that stands; so is the lumped arm. */
static void check_standing(struct validity *validity)
{
	const struct arm *arm = &validity->cell->arm;
	if (mounting_of(arm) == ON_FLOOR)
		return;
	bool papers = reaction_known(&arm->reaction[ARM_NORMAL]) ||
	              reaction_known(&arm->reaction[ARM_EMERGENCY_STOP]);
	if (papers)
		validity_fault(validity, FAULT_CONTRADICTION, arm->mounting.given.mark,
		               "arm.mounting",
		               "give the arm by chain or history, and leave reactions out (in a "
		               "setup, arm.reactions: unknown)",
		               "arm.reactions are read for an arm that stands on the floor");
	if (swing_given(validity->cell))
		validity_fault(validity, FAULT_CONTRADICTION, arm->mounting.given.mark,
		               "arm.mounting",
		               "give the arm by chain or history, and leave swing out (in a setup, "
		               "arm.swing: unknown)",
		               "arm.swing is made for an arm that stands on the floor");
}

/* --- chain --- */

/* Which way of stating a frame a key belongs to. */
struct frame_key { const char *key; const struct given *given; bool of_frames; };

/* One message a joint: the first key of the other way. */
static void check_frame(struct validity *validity, const struct chain_joint *joint, size_t index)
{
	const struct frame_key keys[] = {
		{"a", &joint->a.given, false},         {"alpha", &joint->alpha.given, false},
		{"d", &joint->d.given, false},         {"theta", &joint->theta.given, false},
		{"position", &joint->position.given, true}, {"roll", &joint->roll.given, true},
		{"pitch", &joint->pitch.given, true},  {"yaw", &joint->yaw.given, true}};
	bool frames = validity->cell->arm.chain.convention.value == PLAIN_FRAMES;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		if (keys[i].given->origin != GIVEN || keys[i].of_frames == frames)
			continue;
		validity_fault(validity, FAULT_CONTRADICTION, keys[i].given->mark,
		               validity_row("arm.chain.joints", index, keys[i].key).text,
		               frames ? "write position, roll, pitch and yaw, or convention: "
		                        "standard_dh or modified_dh"
		                      : "write a, alpha, d and theta, or convention: frames",
		               frames ? "%s is a Denavit-Hartenberg value, but the convention is "
		                        "frames"
		                      : "%s belongs to convention: frames, but the convention is "
		                        "Denavit-Hartenberg",
		               keys[i].key);
		return;
	}
}

static void check_chain(struct validity *validity)
{
	const struct arm_chain *chain = &validity->cell->arm.chain;
	const struct chain_joint *joint = chain->joints.rows;
	if (!chain_given(validity->cell))
		return;
	if (!is_known(chain->convention)) {
		validity_fault(validity, FAULT_MISSING_KEY,
		               validity_mark(chain->convention.given.mark,
		                             chain->joints.given.mark),
		               "arm.chain.convention",
		               "write convention: standard_dh, modified_dh or frames, whichever the "
		               "arm's table is made by; the two of Denavit-Hartenberg give other arms",
		               "a chain without its convention");
		return;
	}
	for (size_t i = 0; i < chain->joints.count; i++)
		check_frame(validity, &joint[i], i);
}

/* --- masses said twice --- */

static bool apart(double a, double b, double share)
{
	return fabs(a - b) > share * fmax(fabs(a), fabs(b));
}

static void check_payload(struct validity *validity)
{
	const struct arm *arm = &validity->cell->arm;
	const struct number *chain = &arm->chain.payload_mass;
	if (!is_known(*chain) || !is_known(arm->payload) ||
	    !apart(chain->value, arm->payload.value, SAME_PAYLOAD))
		return;
	validity_fault(validity, FAULT_CONTRADICTION, chain->given.mark, "arm.chain.payload.mass",
	               "write one mass in both, or leave this one out: arm.weight.payload is then "
	               "taken",
	               "a payload of %s here and of %s in arm.weight.payload",
	               validity_show_number(validity, chain, DIM_MASS).text,
	               validity_show_number(validity, &arm->payload, DIM_MASS).text);
}

/* The links alone may not weigh more than the arm; with the foot they must weigh as much. */
static void check_arm_mass(struct validity *validity)
{
	const struct arm *arm = &validity->cell->arm;
	const struct chain_joint *joint = arm->chain.joints.rows;
	bool whole = is_known(arm->chain.fixed_mass);
	double sum = whole ? arm->chain.fixed_mass.value : 0;
	for (size_t i = 0; i < arm->chain.joints.count; i++) {
		sum += is_known(joint[i].mass) ? joint[i].mass.value : 0;
		whole = whole && is_known(joint[i].mass);
	}
	if (!is_known(arm->mass) || !chain_given(validity->cell) ||
	    !apart(sum, arm->mass.value, SAME_ARM) || (sum < arm->mass.value && !whole))
		return;
	bool fixed = is_known(arm->chain.fixed_mass);
	validity_fault(validity, FAULT_CONTRADICTION,
	               validity_mark(arm->chain.fixed_mass.given.mark,
	                             arm->chain.joints.given.mark),
	               fixed ? "arm.chain.fixed_mass" : "arm.chain.joints",
	               "check the masses of the links, fixed_mass and arm.weight.arm, which is "
	               "without payload",
	               "links%s weigh %s, arm.weight.arm is %s", fixed ? " and fixed_mass" : "",
	               validity_show(validity, sum, DIM_MASS).text,
	               validity_show_number(validity, &arm->mass, DIM_MASS).text);
}

/* --- history --- */

static void check_history(struct validity *validity, const struct arm_history *history,
                          size_t index)
{
	struct mark list = validity->cell->arm.history.given.mark;
	struct mark mark = validity_mark(history->of.given.mark, history->cycles_a_year.given.mark);
	if (!is_known(history->file))
		validity_fault(validity, FAULT_MISSING_KEY,
		               validity_mark(history->file.given.mark, validity_mark(mark, list)),
		               validity_row("arm.history", index, "file").text,
		               "write file: the name of the CSV file beside this one, such as "
		               "stop.csv",
		               "a history without its file");
	if (is_known(history->of) && history->of.value == ARM_REST)
		validity_fault(validity, FAULT_CONTRADICTION, history->of.given.mark,
		               validity_row("arm.history", index, "of").text,
		               "write of: normal or of: emergency_stop",
		               "a history of an arm at rest");
}

void validity_arm(struct validity *validity)
{
	const struct list *histories = &validity->cell->arm.history;
	const struct arm_history *history = histories->rows;
	check_tilt(validity);
	check_toward(validity);
	check_standing(validity);
	check_chain(validity);
	check_payload(validity);
	check_arm_mass(validity);
	for (size_t i = 0; i < histories->count; i++)
		check_history(validity, &history[i], i);
}
