/* Random whole cells, complete and well evidenced, kept as a plan of plain numbers from which a
 * cell file is written: so that the same cell can be seen in other axes, in other units, with other
 * loads. Tests only. */
#ifndef RANDOM_CELL_H
#define RANDOM_CELL_H

#include "../../src/cell/arena.h"
#include "random_base.h"

enum {
	PLAN_ANCHORS = 8,
	PLAN_CORNERS = 8,
	PLAN_PIECES = 4,
	PLAN_PARTS = 3,
	PLAN_LOADS = 2,
	PLAN_SETUPS = 3,
	PLAN_JOINTS = 2,
	PLAN_HOLES = 2,
	PLAN_ROWS = 3
};

struct plan_ring { struct vec2 at[PLAN_CORNERS]; size_t count; };
struct plan_part {
	double mass, least_mass;
	bool boxed;
	double at[2], half[2];
}; /* [kg, mm] */
enum plan_load_kind { ANY_SIDE, ONE_DIRECTION, VECTOR };
struct plan_load {
	enum plan_load_kind kind;
	double force, direction, vector[3], at_height;   /* [N, rad, mm] */
	bool placed;
	double at[2];
	const char *with;
};
struct plan_reaction {
	double vertical, horizontal, tilting, twisting;
}; /* [N, N mm] */
struct plan_setup { double mount[3]; };
struct plan_row { double distance, tension, shear; };
/* Code design values of the anchor, which both codes then judge beside the rating. */
struct plan_codes {
	bool asked;
	double yield, ultimate, at_concrete;             /* [MPa] */
	double pullout[2];           /* of ACI 318, EN 1992-4 [N]; 0: it does not govern */
	int category;
	double installation, splitting_edge, bending;    /* [-, mm, N mm] */
	const char *edge_bars, *supplementary;
};

/* N, mm, kg, rad, MPa. */
struct plan {
	struct vec2 anchor[PLAN_ANCHORS];
	size_t anchor_count;
	struct plan_ring piece[PLAN_PIECES];
	size_t piece_count;
	struct plan_part part[PLAN_PARTS];
	size_t part_count;
	double mount[3], arm, payload, reach, payload_reach;
	const char *vertical_flag, *tilting_flag, *paired;     /* yes, no, unknown */
	struct plan_reaction reaction[2];                       /* normal, emergency stop */
	struct plan_load load[PLAN_LOADS];
	size_t load_count;
	struct plan_setup setup[PLAN_SETUPS];
	size_t setup_count;
	double bed_ratio; /* used alone [mm2]; 0: left to the program */
	/* slab */
	struct plan_ring outline;
	struct vec2 joint[PLAN_JOINTS][2];
	size_t joint_count;
	struct vec2 hole[PLAN_HOLES];
	double hole_depth;
	size_t hole_count;
	double at[2], turned;
	double strength;                                        /* specified, cylinder [MPa] */
	/* product */
	double tension, shear, at_concrete;
	struct plan_row spacing[PLAN_ROWS], edge[PLAN_ROWS];    /* spacing: shares in `tension` */
	bool five_thirds;
	struct plan_codes codes;
};

/* Anchors mostly inside the base, one piece or several, up to three setups and two further loads;
 * mostly one ratio of anchor to bed stiffness, for speed. Boxed parts where `boxes`. Every eighth
 * asks for both codes. */
void plan_random(struct plan *plan, struct dice *dice, bool boxes);

/* Cell axes turned by `turn` (everything then stands at -turn against them), mirrored at the x axis
 * first if `mirror` with the slab, and the origin moved by (-dx, -dy): the same cell on the same
 * slab. */
void plan_move(const struct plan *from, double turn, bool mirror, double dx, double dy,
               struct plan *to);
/* All loads and weights `times`. */
void plan_times(struct plan *plan, double times);
/* The order of anchors, pieces, parts, joints and setups turned round. */
void plan_relabel(struct plan *plan);

/* As a cell file; `us`: in inches and pounds. */
const char *plan_write(struct arena *arena, const struct plan *plan, bool us);

#endif
