/* Area of a group's cones with how it comes about, for the one that measures and the one that
 * writes it down. Not for other folders. */
#ifndef PATTERN_AREA_H
#define PATTERN_AREA_H

#include "pattern_parts.h"

struct box { double low[2], high[2]; };

/* How far the squares reach past the outer anchors to one side. */
struct side {
	double reach;                /* [mm] */
	bool is_cut;                 /* it is less than half a square */
	int edge;                    /* that ends it, counted from 0; -1 none is at right angles */
};
struct cone_area {
	double turned;               /* how the squares stand [rad] */
	int by_edge;                 /* they are turned with this edge; -1 with the pattern */
	double half;                 /* half a side that counts */
	bool is_rectangle;           /* the area is the product of the two lengths */
	double spread[2];            /* between the outer anchors along both axes; 0: in line */
	struct side side[2][2];      /* [axis][low end, high end] */
	double single[MAX_ANCHORS];  /* what one anchor's square covers alone */
	double area;                 /* [mm2] */
};
void cone_area_measure(const struct pattern *pattern, uint64_t anchors, double half,
                       struct cone_area *out);
/* The steps of one area; the last one is named `symbol`. */
void cone_area_trace(const struct pattern *pattern, uint64_t anchors, double half,
                     const struct cone_area *area, const char *symbol, const char *source,
                     struct trace *trace);

#endif
