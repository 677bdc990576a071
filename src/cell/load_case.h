/* The one load vocabulary. Whatever its origin (data sheet, push, later a chain or a history), a
 * load ends as a load case: a vertical force, first moments that stay and first moments that turn
 * with the heading, and the horizontal forces that go with them. All about the cell origin at floor
 * level, cell axes. */
#ifndef LOAD_CASE_H
#define LOAD_CASE_H

#include "cell.h"

enum { MAX_TURNING = 2 };

struct arm_load;             /* arm/arm_loads.h */
struct earthquake_way;       /* loads/earthquake.h */

/* A horizontal force that turns with the heading: at heading t it is force*(cos(t + lead),
 * sin(t + lead)) [N]. */
struct turning_force {
	double force;        /* [N] */
	double lead;         /* of the force ahead of the tilt that comes with it [rad] */
	double at[2];        /* where it acts in plan [mm]; unused with at_hull */
	bool at_hull;        /* at the hull vertex of the base of the largest torsion, both signs */
	double twist;        /* moment about the vertical that comes with it, both signs [N mm] */
	bool one_sign;       /* the twist has its own sign */
};

/* One wrench at a point, as the data sheet's reading or another source gives it. */
struct wrench {
	double down;         /* [N], downward positive */
	double horizontal;   /* [N] in the heading */
	double tilting;      /* [N mm], tips toward the heading */
	double twisting;     /* [N mm], both signs */
};

enum weight_run { RUN_LOW, RUN_FULL, RUN_STABILITY };
enum vertical_run { VERTICAL_LEAST, VERTICAL_MOST };

struct load_case {
	uint16_t setup;              /* index; 0 where the file has none */
	uint16_t reading;            /* which reading of unknown weight flags, see loads.h */
	uint16_t group; /* setup + source of the horizontal loads: shear bounds are shared within it
	                 */
	uint16_t source;             /* which data-sheet case or extra load; index into names */
	enum weight_run run;
	enum method method; /* whose factors: METHOD_RATING service loads; else the code's own */
	bool sustained;     /* what always acts alone: for bond under lasting tension */
	enum vertical_run vertical;
	int corner; /* corner of the boxes' first moments, -1 where there is no box */
	const char *name;            /* "emergency stop", "leaning person with normal motion" */
	const char *combination;     /* "weights x 0.6, least vertical force" */
	double weight_factor;        /* on the weights of parts [-] */
	double down;                 /* everything vertical [N] */
	double fixed[2];             /* first moments that do not turn: sum of N x, N y [N mm] */
	double turning;              /* first moment that turns with the heading [N mm] */
	double moved[3];             /* of down and fixed: the arm's own wrench where it stands */
	double fixed_shear[3];       /* Fx, Fy [N] and torsion about the cell origin [N mm] */
	struct turning_force turning_force[MAX_TURNING];
	int turning_count;
	double spin_from, spin_to;   /* range of the heading [rad]; equal: one heading */
	bool paired;                 /* horizontal force and tilt share the heading */
	bool stability_only;         /* judged by base.stability alone */
	bool bound;                  /* made of guaranteed bounds: judged by rating.bound alone */
	bool by_data_sheet;          /* the arm as its papers say; else `arm_load` */
	bool estimate;               /* by the lumped arm */
	int arm_case;                /* enum arm_case of the arm in it */
	const struct earthquake_way *earthquake;  /* NULL: none */
	uint32_t row;                /* of a history, from 1; 0: none */
	double time;                 /* of that row, or in a working cycle [s] */
	const struct arm_load *arm_load;  /* chain, swing, history: the wrench; NULL: data sheet */
};

#endif
