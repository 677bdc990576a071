/* What the files code_*.c share: strengths kept by the set of loaded anchors, and how a load uses
 * one of them. Not for other folders.
 *
 * Places of the anchors are taken along the pattern's axes, which are the cell's: where the pattern
 * is the cell's own they are the cell's coordinates, so that a checker reads those of the file. */
#ifndef CODE_PARTS_H
#define CODE_PARTS_H

#include "code_strength.h"
#include <math.h>

/* Anchors with less than this share of the largest are not loaded: rounding. */
#define LOADED_SHARE 1e-9

/* One edge as loads see it: its anchors in the order of the rows. */
struct edge_order {
	struct vec2 toward;          /* as the view's, cell axes */
	size_t count;
	unsigned char anchor[MAX_ANCHORS];
	size_t end[MAX_ANCHORS];     /* row k: anchor[end[k - 1]] to anchor[end[k] - 1] */
	bool takes_front_only[MAX_ANCHORS]; /* row k takes the load of itself and of those in front
	                                     */
};

/* Constant once built; copies share it. */
struct code_frame {
	struct vec2 place[MAX_ANCHORS];      /* [mm] */
	struct vec2 shift;           /* place = position along the pattern's axes - shift [mm] */
	struct edge_order *edge;     /* of each view */
	bool applies[CODE_MODES];
	double remote;               /* edges beyond it are not checked [mm] */
};

struct kept_group {
	struct group_strength strength;
	struct vec2 centre;          /* as places [mm] */
	bool is_mean;                /* the centre is the mean of the anchors' places */
	size_t count;
	unsigned char anchor[MAX_ANCHORS];
};
/* Anchors of one row that break out together. */
struct kept_front {
	struct edge_strength strength;
	uint64_t anchors;            /* the face that breaks out */
	uint64_t takes;              /* anchors of any row whose load it takes */
};

/* Strength of one anchor [N]; negative: not computed yet. */
struct kept_single {
	double steel_tension[2], bond_sustained;     /* [earthquake] */
	double steel_shear[2];       /* without a lever arm */
	double pullout[2][MAX_ANCHORS + 1];          /* by the number of loaded anchors */
};

struct kept { uint64_t anchors; uint32_t kind, count; const void *list; };
struct strength_cache {
	const struct code_frame *frame;
	struct kept *table;          /* open addressing; list NULL: free */
	size_t room, count;          /* room: a power of two */
	struct kept_single single;
};
/* An empty cache in the arena; NULL: no memory. */
struct strength_cache *cache_open(const struct code_frame *frame, struct arena *arena);

/* Groups of the loaded anchors and their strengths, NULL: no memory. CONE, BOND, SPLITTING,
 * BLOWOUT, PRYOUT. */
const struct kept_group *kept_groups(struct code_strength *s, enum code_mode mode,
                                     uint64_t anchors, size_t *count);
/* Fronts of the loaded anchors of one row; view == s->view_count: the virtual edge. */
const struct kept_front *kept_fronts(struct code_strength *s, size_t view, size_t row,
                                     uint64_t anchors, size_t *count);
double kept_steel_tension(struct code_strength *s, bool earthquake);
double kept_pullout(struct code_strength *s, bool earthquake, size_t loaded);
double kept_bond_sustained(struct code_strength *s);
double kept_steel_shear(struct code_strength *s, double tension, bool earthquake);

/* The functions of the code, with their written calculation. */
void group_strength_of(const struct code_strength *s, enum code_mode mode, uint64_t anchors,
                       unsigned edge, bool earthquake, struct group_strength *out,
                       struct trace *trace);
void edge_strength_of(const struct code_strength *s, size_t view, uint64_t anchors, double c1,
                      bool earthquake, struct edge_strength *out, struct trace *trace);
double steel_shear_of(const struct code_strength *s, double tension, bool earthquake,
                      struct trace *trace);
/* Distance of a row from its edge; of the virtual edge: the clear distance [mm]. */
double row_distance_of(const struct code_strength *s, size_t view, size_t row);

/* How a load uses a mode, with what its written calculation needs. */
struct mode_use {
	struct mode_ratio worst;
	uint64_t loaded;             /* anchors in tension */
	const struct kept_group *group;      /* of groups; NULL: none is loaded */
	double load;                 /* on the group [N] */
	struct vec2 at;              /* of its resultant, as places [mm] */
	double off_x, off_y;         /* of it from the group's centre, >= 0 [mm] */
	int anchor;                  /* of single anchors */
	/* pryout: the direction of the resultant, and whether n times the largest counts */
	struct vec2 along;
	bool by_largest;
	/* edge */
	const struct kept_front *front;
	size_t view, row, end;       /* anchors of edge_order up to `end` load it */
	double across, beside;       /* P with its eccentricity, Q [N] */
	double pushed, pushed_at;    /* P [N], where along the edge [mm] */
	double beside_all, beside_own;       /* sums of Q, with sign [N] */
};
/* One mode; ratio -1 where it is not ready. For EDGE and PRYOUT the vectors must be given. */
void mode_use(struct code_strength *s, enum code_mode mode, const struct anchor_load *load,
              struct mode_use *out);
/* `loaded`: as tension_mask gives it. */
void tension_use(struct code_strength *s, enum code_mode mode, const struct anchor_load *load,
                 uint64_t loaded, struct mode_use *out);
void steel_shear_use(struct code_strength *s, const struct anchor_load *load,
                     struct mode_use *out);
void edge_use(struct code_strength *s, const struct vec2 shear[], bool earthquake,
              struct mode_use *out);
void pryout_use(struct code_strength *s, const struct vec2 shear[], bool earthquake,
                struct mode_use *out);
/* A group under one load an anchor, with its eccentricity; the loads of others are not read. */
void use_group(const struct code_strength *s, const struct kept_group *group, const double load[],
               bool earthquake, struct mode_use *use);
uint64_t tension_mask(const double tension[], size_t count);

/* The governing pair of an interaction from the modes' ratios. */
struct pair {
	enum code_mode tension, shear;
	int anchor;                  /* steel by EN: of this one; else -1 */
	double tension_ratio, shear_ratio;
};
void together_use(struct code_strength *s, bool steel, const struct anchor_load *load,
                  const struct code_ratios *ratios, struct pair *pair, struct mode_ratio *out);

static inline bool mode_ready(const struct code_strength *s, enum code_mode mode, bool earthquake)
{
	return earthquake ? s->ready_seismic[mode] : s->ready[mode];
}

static inline double used(double demand, double capacity)
{
	return demand > 0 ? capacity > 0 ? demand / capacity : HUGE_VAL : 0;
}

#endif
