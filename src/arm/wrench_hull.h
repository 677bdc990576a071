/* The wrenches of a moving arm that can govern anchors at floor level.
 *
 * What an anchor feels of the arm is the vertical force and the first moment at floor level
 * (tension) or the horizontal force and the torsion (shear). Where joint 1 lets a wrench turn
 * through all headings, only the sizes matter:
 *   tension  (|t|, Fz)  with t = (My + h Fx, -Mx + h Fy), h the mounting face's height;
 *   shear    (|F|, Mz)  with F = (Fx, Fy).
 * The vertices of the convex hull of all swept wrenches in the two planes (upper half: |t|, |F|
 * large) are kept. Found by support in a direction: the largest of a |t| + b Fz is convex in the
 * wrench, hence at a vertex of the accelerations; every speed at -limit, 0 or +limit is tried
 * (as reaction_sweep.h). Between two neighbouring vertices the direction at right angles to their
 * chord is asked, until none brings a farther one: then the hull is complete.
 * Where the wrench cannot turn (wall, tilted, sliding first joint) the same in the space (tx, ty,
 * Fz) and (Fx, Fy, Mz), with directions at right angles to the facets.
 *
 * What it loses. Nothing for shear: a convex function of force and torsion is largest at a vertex.
 * Tension on a one-way bed is no convex function of the load: a diagonal tilt can pull a corner
 * anchor harder than the two straight ones it lies between. Found by comparing every wrench of a
 * grid with the reduced set on random bases, each anchor for itself:
 *   turning: nothing beyond rounding (2e-13 of the largest tension, several thousand cells), since
 * every heading is tried anyway; standing, vertices alone: up to 1.5 % of the largest tension, 9 %
 * of it for another anchor (3800 cells). A caller must then also take wrenches in between along the
 * edges of the hull in (tx, ty, Fz), see `edge`. With 7 to an edge a handful of some four thousand
 * cells still lost something, where an anchor's own largest lies inside a facet on a nearly
 * unloaded base: the largest tension 0.4 % (once), another anchor 5 % of it (once; it bore 6 % of
 * it). The guaranteed bound of reaction_sweep.h covers that. Wrenches in between occur where their
 * ends differ in accelerations alone; otherwise they need not, and err on the safe side.
 *   Between the poses of the grid: the search from each vertex may end on a lower hill. Of the demo
 *   arm four thousand other starts found 0.15 % more tension; the guaranteed bound covers it.
 * Identities: cutting the grid in pieces gives the same bytes; a set of one pose is its own
 * hull. */
#ifndef WRENCH_HULL_H
#define WRENCH_HULL_H

#include "../cell/arena.h"
#include "../cell/given.h"
#include "../cell/pieces.h"
#include "reaction_sweep.h"

/* Vertices of the grid's hull; with one or two refined from each; edges between them. */
enum { MAX_GRID_HULL = 256, MAX_HULL = 3 * MAX_GRID_HULL, MAX_HULL_EDGES = 3 * MAX_HULL };

/* Numbers of two kept wrenches that are neighbours. */
struct hull_edge { unsigned short from, to; };

struct wrench_hull {
	struct reaction_at at[MAX_HULL];         /* in the order found; no wrench twice. `value` is
	                                          * that in its direction: of no use elsewhere */
	size_t count;
	bool full;               /* MAX_GRID_HULL reached: `beyond` says what may be missing */
	/* how far a wrench of the grid can lie outside the kept hull, over the largest |t| and
	 * |Fz|, or |F| and |Mz| (at least 1e-6 of the largest component in N and N m: less is
	 * rounding); 1e-9 where it is complete [-] */
	double beyond;
	/* of the hull in (tx, ty, Fz), none where the wrench turns */
	struct hull_edge edge[MAX_HULL_EDGES];
	size_t edges;
};

/* `height` of the mounting point above the floor [m]. `turns`: joint 1 is free to turn the wrench
 * about the vertical through the base origin (first_joint_idle). Each vertex is refined by local
 * search within the limits when `refined`, at most 20 000 evaluations of a pose for each of them
 * and usually a tenth; it stays beside what it leads to as long as it is a vertex itself. Memory
 * for the work, some 2 MB, from the arena. NO_MEMORY, or DONE. */
enum status wrench_hull_build(const struct chain *chain, const struct motion_limits *limits,
                              double height, bool turns, bool refined,
                              const struct pieces *pieces, struct arena *arena,
                              struct wrench_hull *out);

#endif
