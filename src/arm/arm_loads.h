/* The arm's reactions as its own motion makes them: from the chain and its limits, from the lumped
 * estimate, or from a history. All in cell axes (z up) about the point arm.mount, N and N mm.
 *
 * Source of the mechanics: chain.h, reaction_sweep.h, wrench_hull.h, swing.h, history_scan.h.
 * Data-sheet reactions are read by loads/arm_wrench.h and are not here.
 *
 * The sets. `swept`: wrenches that occur, reduced to those that can govern at floor level
 * (wrench_hull.h); the chain has one set with its payload and one with an empty gripper, joined.
 * `bound`: wrenches made of the guaranteed bounds of each kind, taken at once and aligned, so that
 * no motion within the limits is worse in any kind; they need not occur. */
#ifndef ARM_LOADS_H
#define ARM_LOADS_H

#include "../cell/arena.h"
#include "../cell/cell.h"
#include "../cell/diagnostic.h"
#include "../cell/pieces.h"
#include "history_scan.h"
#include "reaction_sweep.h"
#include "swing.h"

enum arm_way { WAY_CHAIN, WAY_SWING, WAY_HISTORY };

/* One wrench of the arm ON its mounting face. Right-handed, z up: force[2] < 0 presses. */
struct arm_load {
	double force[3];             /* [N] */
	double moment[3];            /* about the mounting point [N mm] */
	double weight;               /* of all that weighs in it, >= 0 [N] */
	double weight_moment[2];     /* Mx, My of that weight; 0, 0 where it is not told [N mm] */
	/* it may turn about the vertical through the mounting point by any angle of this range
	 * [rad]; equal: it stands as it is. 0 to 2 pi where joint 1 turns by half a turn or more;
	 * else the joint's range about its middle */
	double spin_from, spin_to;
};
struct arm_load_set { const struct arm_load *list; size_t count; };

/* The largest of one kind with its companions. */
struct arm_extreme {
	double value;                /* [N] or [N mm]; uplift and downforce as reaction_kind */
	double bound;                /* guaranteed; HUGE_VAL where there is none [N] or [N mm] */
	struct arm_load load;        /* the whole wrench at that instant */
	const struct reaction_at *at;/* chain: pose, speeds, signs; else NULL */
	/* chain: what each joint gives then [N m], a prismatic one [N] */
	double torque[MAX_JOINTS_OF_ARM];
	bool empty_gripper;          /* chain: found without the payload */
	uint32_t row;                /* history: from 1; else 0 */
	double time;                 /* history [s] */
};

/* One way's answer for one case of the arm. */
struct arm_source {
	enum arm_way way;
	enum arm_case arm_case;      /* ARM_REST: chain alone, no motion, for loads at rest */
	const char *name;            /* "emergency stop, chain", "emergency stop, stop.csv" */
	struct arm_extreme extreme[REACTION_KINDS];
	struct arm_load_set swept;   /* empty for a history: its rows are checked one by one */
	struct arm_load_set bound;   /* chain: guaranteed. Swing: empty. History: the separate
	                              * maxima at once, to be paired with further loads */
	/* chain: a hull was full (wrench_hull.h), vertices may miss; how far out they lie [-] */
	bool swept_cut;
	double swept_beyond;
	size_t poses;                /* chain: of the grid, in all; else 0 */
	size_t joints;               /* chain */
	const struct arm_history *history;        /* row of arm.history, or NULL */
	const struct history_file *file;          /* its bytes */
	struct history_summary summary;           /* history */
};
struct arm_loads {
	struct arm_source *list;     /* emergency stop before normal motion before rest */
	size_t count;
	double weight;               /* arm without payload [N]; 0 where not known */
};

/* The bytes of a CSV that a cell file names. */
struct history_file {
	const char *name;            /* as arm.history[].file */
	const char *text;
	size_t length;
	uint32_t file;               /* for marks */
	const char *sha256;          /* "" when not given */
};
struct history_files { const struct history_file *list; size_t count; };

/* What is wrong with chain and swing as the mechanics see it (a body that cannot be, a convention
 * that is missing, a ramp that cannot be), with the line; the rest is said by cell_validate. Every
 * setup of the file; what setups share is said once, and so is what `to` holds already. */
void arm_faults(const struct cell *cell, struct arena *scratch, struct diagnostics *to);

/* Of the cell of one setup, without faults and with every history's bytes scanned before
 * (history_scan). Leaves out a case of which a number is not known: arm_gaps names it. NO_MEMORY.
 */
enum status arm_loads_build(const struct cell *cell, const struct history_files *files,
                            const struct pieces *pieces, struct arena *arena,
                            struct arm_loads *out);

/* Whether two setups' cells have the same chain, motion, swing, histories, weights, mounting and
 * mount height, so that one result serves both. */
bool arm_loads_same(const struct cell *a, const struct cell *b);
/* The same but for the place and height of the mount: then the second is built from the first. At
 * another height the swept set alone is made anew, as extremes and bounds are those at the mounting
 * face. */
bool arm_loads_alike(const struct cell *a, const struct cell *b);
/* As arm_loads_build; `like` is the result of the cell `of`, which is alike and must last. */
enum status arm_loads_build_like(const struct cell *cell, const struct arm_loads *like,
                                 const struct cell *of, const struct history_files *files,
                                 const struct pieces *pieces, struct arena *arena,
                                 struct arm_loads *out);

/* Field paths ("arm.chain.joints[].mass", constants) of what keeps a case of the given ways from
 * being computed; called once for each. A case of which a way has no number of its own and for
 * which something else answers (another way, arm.reactions) is left out on purpose: no gap. A peak
 * factor is one, but the case is computed with 1. */
typedef void arm_gap(void *user, const char *path);
void arm_gaps(const struct cell *cell, arm_gap *gap, void *user);

/* Whether chain with motion, swing or history answers for that case: its numbers are all known, but
 * for a peak factor. */
bool arm_way_covers(const struct cell *cell, enum arm_way way, enum arm_case arm_case);

/* Rotation from the arm's base frame to cell axes, row-major:
 * Rz(toward) Ry(tilt) Rz(-toward) Rz(turned); tilt 0 floor, 90 deg wall, 180 deg ceiling. */
void arm_mounting_axes(const struct arm *arm, double rotation[9]);
/* A row of a history (base frame, N, N m) as an arm_load of this cell. */
void arm_load_of_row(const struct cell *cell, const struct base_wrench *wrench,
                     struct arm_load *out);

/* A working cycle by chain, with its payload: number of instants (0: none, or a number of it is not
 * known), and the wrench at one of them. Between two poses the joints go from rest to rest by the
 * quintic 10 s^3 - 15 s^4 + 6 s^5. Every move has as many instants, the last is the end. */
size_t arm_cycle_instants(const struct cell *cell);
void arm_cycle_wrench(const struct cell *cell, size_t instant, double *time, struct arm_load *out);

#endif
