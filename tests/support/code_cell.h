/* A cell whose anchors have every item that either code asks for, and its pattern among edges.
 * Invented values. Tests only. */
#ifndef CODE_CELL_H
#define CODE_CELL_H

#include "../../src/strength/code_strength.h"
#include "random_base.h"

/* Cylinder strength of its slab [MPa]. */
#define CODE_CELL_CONCRETE 30.0

/* Fills product, slab and stand-off; anchors and base are the caller's (case_anchor ...). */
void code_cell_fill(struct base_case *it, enum anchor_type type);

enum { CODE_CELL_EDGES = 8 };
/* Anchors of the cell moved and turned into the slab, and straight edges there. */
struct code_place {
	struct segment edge[CODE_CELL_EDGES];
	size_t edge_count;
	struct pattern pattern;
};
/* A rectangular slab about the cell's origin, its sides at these distances (x low, x high, y low,
 * y high; HUGE_VAL: none), all turned and then moved with the cell. */
void code_place_open(struct code_place *place, const struct base_case *it, const double side[4],
                     double turned, struct vec2 moved, struct arena *arena);
/* No edge known: nothing nearer than `clear`. */
void code_place_clear(struct code_place *place, const struct base_case *it, double clear,
                      struct arena *arena);

#endif
