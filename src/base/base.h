/* A rigid base on a compression-only bed, held by tension-only anchors.
 *
 * Source: reference equations of one-way (unilateral) contact of a rigid body: the displacement
 * field w(x, y) = u0 + u1 x + u2 y  (downward positive), bed pressure p = k max(w, 0), anchor
 * tension T = ka max(-w, 0); equilibrium is the minimum of a convex energy (Winkler bed). Working
 * with w' = k w [MPa], only the ratio ka/k [mm2] of anchor stiffness to bed stiffness per area
 * matters for the forces. Load: N downward positive, Sx = sum of N x, Sy = sum of N y about the
 * cell origin (Sx = My, Sy = -Mx). Identities: N + sum T = bed force, Sx + sum T x = bed force * x
 * of its resultant, the same for y; T(c load) = c T(load); tension depends on ka/k only. Range: the
 * base must be stiff (base.stiff); prying of a thin plate is not covered. */
#ifndef BASE_H
#define BASE_H

#include "../cell/arena.h"
#include "../cell/cell.h"
#include "../cell/load_case.h"

enum { MAX_FACETS = 2 * (MAX_ANCHORS + MAX_RINGS * 8) };

/* One closed ring that touches the floor; a hole runs clockwise and counts negative. */
struct bed_ring {
	const struct vec2 *at;       /* scaled coordinates (see struct base) */
	size_t count;
	double moments[6]; /* integrals of 1, x, y, xx, xy, yy over the ring, signed, scaled */
	int piece;                   /* row of cell.base */
};

/* The base of one setup, prepared once and then constant. Inside, lengths are scaled: (x -
 * centre)/size. */
struct base {
	double centre[2], size;                 /* [mm] */
	struct bed_ring ring[MAX_RINGS];
	size_t ring_count, piece_count;
	struct vec2 anchor[MAX_ANCHORS];        /* scaled */
	struct vec2 anchor_mm[MAX_ANCHORS];     /* cell axes [mm] */
	size_t anchor_count;
	struct vec2 *hull;                      /* of all rings, anticlockwise, cell axes [mm] */
	size_t hull_count;
	/* cone of loads that can be carried: load.n < 0 for every facet normal n (none: every load
	 * can) */
	double (*facet)[3]; /* n for (N, Sx, Sy) with lengths in mm, |n| of order 1 */
	size_t facet_count;
	/* shear group: equal anchors that share (reference: elastic bolt group about the centroid)
	 */
	double shear_centre[2];                 /* [mm] */
	double shear_polar;                     /* sum of squared distances from it [mm2] */
	double area;                            /* contact area, holes taken off [mm2] */
};

enum balance { BALANCED, LIMIT, NO_EQUILIBRIUM };

/* One equilibrium. On the stack, never kept in bulk; a pure function of base, ratio, load case,
 * heading and settle, so that a kept `settle` gives it back bit for bit. Only the first
 * anchor_count entries are set. */
struct state {
	const struct load_case *load_case;
	double heading; /* of tilt and (if paired) horizontal force, cell axes [rad] */
	double bed_ratio;                /* anchor over bed stiffness [mm2] */
	double load[3];                  /* N [N], Sx, Sy [N mm] at the cell origin */
	double settle[3];                /* w' in scaled coordinates [MPa] */
	double tension[MAX_ANCHORS];     /* >= 0 [N] */
	double shear[MAX_ANCHORS]; /* size: of this heading if paired, else the bound of the group
	                              [N] */
	double piece_force[MAX_RINGS];   /* by base piece, compression [N] */
	double bed_force, bed_at[2];     /* resultant [N] and its point [mm] */
	double pressure_max;             /* [MPa] */
	double residual;                 /* equilibrium, relative to the load's size */
	uint64_t in_tension;             /* bit i = anchor i: above 1e-9 of the load */
	enum balance balance;
};

/* Prepares the base of a valid cell with a known base and anchors. NO_MEMORY, or DONE. */
enum status base_prepare(const struct cell *cell, struct arena *arena, struct base *out);

/* Whether the load can be carried at all: strictly inside the cone, on its edge, or not. Exact
 * facets. */
enum balance base_balance(const struct base *base, const double load[3]);
/* The largest of (load.n) over all facets as overturning over resisting part, for a load whose
 * first moment turns through all headings: `steady` (N, Sx, Sy) and `turning` [N mm]. 0 where no
 * facet exists; above 1 no equilibrium in some heading. Gives that heading [rad]. */
double base_overturning(const struct base *base, const double steady[3], double turning,
                        double *heading);
/* The same for headings from `from` to `to` alone [rad]; what turns then may also resist. */
double base_overturning_within(const struct base *base, const double steady[3], double turning,
                               double from, double to, double *heading);
/* For a load in two parts that stand as they are (N, Sx, Sy): what of the one overturns, the other
 * may resist. Above 1 no equilibrium. */
double base_overturning_apart(const struct base *base, const double steady[3],
                              const double moved[3], double *heading);

/* Solves for `settle` from the start value in it (any finite value; warm starts are fast). Returns
 * DONE with relative residual <= 1e-9, or NO_CONVERGENCE. `iterations` may be NULL. Does not
 * allocate. */
enum status base_solve(const struct base *base, double bed_ratio, const double load[3],
                       double settle[3], int *iterations);
/* What a solution leaves for the next one of the same base and bed ratio, so that contact is not
 * integrated twice at the same settlement. All zero: nothing yet. */
struct base_warm {
	bool ready;
	double settle[3];
	double force[3], stiffness[6];       /* of bed and anchors there */
};
/* As base_solve, from the solution in `warm` where it is ready, else from base_start. */
enum status base_solve_on(const struct base *base, double bed_ratio, const double load[3],
                          struct base_warm *warm, double settle[3]);
/* Start value: everything in contact, all anchors acting (linear). */
void base_start(const struct base *base, double bed_ratio, const double load[3], double settle[3]);

/* Fills tension, bed resultant, piece forces, pressure and residual from settle (bed_ratio, load
 * and settle must be set in *state). */
void base_fill(const struct base *base, struct state *state);
/* As base_fill, but the tensions alone: the fast path of a sweep. */
void base_tensions(const struct base *base, double bed_ratio, const double settle[3],
                   double tension[]);

#endif
