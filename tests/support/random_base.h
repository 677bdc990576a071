/* Random bases with their loads, for the properties and the benchmark. Tests only. */
#ifndef RANDOM_BASE_H
#define RANDOM_BASE_H

#include "../../src/base/base.h"

/* A stream of random numbers of its own (splitmix64), so that a case can be told by seed and
 * number. */
struct dice { uint64_t state; };

struct dice dice_open(uint64_t seed, uint64_t number);
uint64_t dice_next(struct dice *dice);
/* Even in [low, high). */
double dice_between(struct dice *dice, double low, double high);
/* Whole number in [low, high]. */
int dice_whole(struct dice *dice, int low, int high);
/* 10 to a power that is even in [low, high). */
double dice_decades(struct dice *dice, double low, double high);

enum { CASE_PIECES = 9, CASE_CORNERS = 12 };

/* A base as a cell states it. The pieces point into the case itself: do not copy it. */
struct base_case {
	struct cell cell;
	struct base_piece piece[CASE_PIECES];
	struct ring hole[CASE_PIECES];
	struct vec2 corner[CASE_PIECES][CASE_CORNERS], hole_corner[CASE_PIECES][CASE_CORNERS];
	double bed_ratio;      /* [mm2] */
	double load[3];        /* N, Sx, Sy [N, N mm] */
};

/* Empties the case. */
void case_clear(struct base_case *base_case);
/* Each adds one piece; corners and hole are copied. `hole` may be NULL. */
void case_outline(struct base_case *base_case, const struct vec2 *corner, size_t count,
                  const struct vec2 *hole, size_t hole_count);
void case_rectangle(struct base_case *base_case, double x, double y, double length, double width);
void case_pad(struct base_case *base_case, double x, double y, double length, double width);
void case_anchor(struct base_case *base_case, double x, double y);

/* Up to nine pieces (outlines that need not be convex, with or without holes, and pads), up to
 * twelve anchors, some of them off the bed, stiffness ratios over seven decades, any load. */
void case_random(struct base_case *base_case, struct dice *dice);

/* The same base and load seen in other axes: turned by `turn` [rad], mirrored at the x axis first
 * if `mirror`, then moved. Pads become outlines. */
void case_move(const struct base_case *from, double turn, bool mirror, double dx, double dy,
               struct base_case *to);

#endif
