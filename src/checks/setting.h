/* The setting: pattern, where the cell stands and the slab, without loads. Rebuilt when the cell is
 * moved. */
#ifndef SETTING_H
#define SETTING_H

#include "../cell/arena.h"
#include "../cell/cell.h"
#include "../floor/strength.h"
#include "../strength/code_strength.h"
#include "finding.h"

struct edge_line {
	struct vec2 from, to;
	int joint;
}; /* slab axes [mm]; joint index, -1 an outline edge */

struct setting {
	const struct cell *cell;
	bool placed;                               /* the cell's place on the slab is known */
	struct vec2 anchor[MAX_ANCHORS];           /* slab axes when placed, else cell axes [mm] */
	struct edge_line *edges;                   /* straight edges merged to one; joints behind */
	size_t edge_count;
	bool edges_known; /* the list is complete (outline and joints known, placed) */
	double clear;                              /* nothing nearer than this; 0 not stated [mm] */
	double *edge_distance;                     /* [anchor * edge_count + edge] [mm] */
	double nearest_edge[MAX_ANCHORS];          /* [mm]; huge where there is none */
	int nearest_edge_index[MAX_ANCHORS];
	double nearest_anchor[MAX_ANCHORS];        /* [mm]; huge for a single anchor */
	int nearest_anchor_index[MAX_ANCHORS];
	struct concrete_strength strength;
	/* allowed loads at the most favourable value of every unknown [N]; 0: cannot be computed */
	double allowed_tension[MAX_ANCHORS], allowed_shear[MAX_ANCHORS];
	/* code methods that the file asks for; NULL: not, or no anchors */
	struct pattern *pattern;
	struct code_strength *code[CODES];
};

enum status setting_build(const struct cell *cell, struct arena *arena, struct setting *out);

#endif
