/* Anchors, edges and joints as the codes' geometry sees them, without loads: which anchors break
 * out together, the area of their cones, and how they stand along an edge.
 *
 * Concrete behind an edge or a joint counts as none: a square around an anchor ends where the
 * anchor cannot see past an edge or joint (plane/sight.h), and anchors that do not see one another
 * are no group. The squares stand as the pattern does (cell axes); where the nearest edge within
 * reach is not parallel to them they are also turned with that edge, and the smaller area counts.
 * Units mm. All positions in one frame (slab axes where the cell is placed). */
#ifndef PATTERN_H
#define PATTERN_H

#include "../cell/arena.h"
#include "../cell/cell.h"
#include "../cell/trace.h"
#include "../plane/sight.h"

struct pattern {
	size_t count;
	struct vec2 at[MAX_ANCHORS];
	double turned;               /* cell axes against the frame [rad] */
	const struct segment *edge;  /* straight edges merged, joints behind */
	size_t edge_count;
	/* nothing is nearer to any anchor than this, where the edges themselves are not known;
	 * 0: not stated. HUGE_VAL: no edge anywhere (outline: none, joints: none) [mm] */
	double clear;
	double *distance;            /* [anchor * edge_count + edge]: to the segment; HUGE_VAL where
	                              * the anchor does not see the edge */
};
/* The caller keeps `edge`. False: no memory. */
bool pattern_build(const struct vec2 at[], size_t count, double turned, const struct segment *edge,
                   size_t edge_count, double clear, struct arena *arena, struct pattern *out);

/* One group of anchors in tension (or all, for pryout). */
struct group {
	uint64_t anchors;
	size_t count;
	struct vec2 centre; /* mean of the anchors, pattern axes about the frame's origin */
	double least_edge;           /* nearest edge of any of them; HUGE_VAL none */
	double most_edge;            /* largest distance of the near edges (struct group's near) */
	size_t near_edges;           /* edges nearer than `near`, each line counted once */
	double adjacent;             /* largest spacing of neighbours: longest leg of the minimum
	                              * spanning tree; 0 for one anchor */
	double least_spacing;        /* smallest distance of two of them; HUGE_VAL for one */
	double mean_spacing;         /* mean leg of that tree; 0 for one anchor */
};
/* Splits a set of anchors into groups: neighbours nearer than `limit` that see one another. Where
 * some that do not see one another yet share concrete around the end of a joint (squares of side
 * `limit`), the groups that this holds together follow as one more set: each counts by itself and
 * all together. Returns the number. */
size_t groups_split(const struct pattern *pattern, uint64_t anchors, double limit,
                    uint64_t out[MAX_ANCHORS]);
/* Where the edges are not known (`clear`), no edge is near beyond that distance. */
void group_measure(const struct pattern *pattern, uint64_t anchors, double near,
                   struct group *out);

/* Area that the squares of half side `half` around these anchors cover together, cut at edges and
 * joints; at most the number of anchors times a whole square. With a trace it writes how the area
 * comes about so that it can be followed on paper: where it is a rectangle, its sides from spacing
 * and edge distances; else the squares and the union. The step is named `symbol`. */
double group_area(const struct pattern *pattern, uint64_t anchors, double half,
                  const char *symbol, const char *source, struct trace *trace);

/* --- shear toward an edge ------------------------------------------------------------------- */

/* Anchors as seen from edge e: whom it concerns at all, from the nearest on. An edge counts for an
 * anchor that stands straight opposite to it, or, past an end where the concrete goes on (a joint's
 * end, a corner that points inward), within 1.5 times its distance. */
struct edge_view {
	unsigned edge;               /* number from 1, as struct subject */
	struct vec2 toward; /* unit vector at right angles to the edge, out of the concrete */
	struct vec2 along;           /* unit vector along the edge: toward turned by +90 deg */
	uint64_t anchors;            /* whom it concerns */
	size_t row_count;            /* rows, from the nearest */
	uint64_t row[MAX_ANCHORS];
	double row_distance[MAX_ANCHORS];    /* of the nearest anchor of the row */
	double x[MAX_ANCHORS];       /* place along the edge, from its end */
	double distance[MAX_ANCHORS];        /* at right angles to it */
};
/* Anchors whose distances differ by less than this share of the nearest one's stand in one row: a
 * base that is turned by a degree still has rows (own choice; the nearest distance counts for all).
 */
#define ROW_SHARE 0.1
/* Every edge that concerns an anchor. In the arena; NULL and *count 0 where there is none; false:
 * no memory. */
bool edge_views(const struct pattern *pattern, struct arena *arena, struct edge_view **out,
                size_t *count);

/* The face of concrete that some anchors of one row would push out. */
struct edge_front {
	/* union of +-1.5 c1 along the edge, cut at side edges. At an end where the concrete goes on
	 * it is not cut: a shorter joint would else make for less strength */
	double width;
	/* ca2 to either side, the least of any of the anchors: to an edge that crosses the band
	 * between them and this edge; [0] against `along`, [1] with it; HUGE_VAL none */
	double side[2];
	double spacing;              /* largest between neighbours along the edge; 0 for one */
	size_t count;
	double centre;               /* mean place along the edge */
};
void edge_front_measure(const struct pattern *pattern, const struct edge_view *view,
                        uint64_t anchors, double c1, struct edge_front *out);

#endif
