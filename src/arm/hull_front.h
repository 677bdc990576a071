/* The hull of the wrenches known so far in one space, and the directions still open. For the files
 * of this folder. */
#ifndef HULL_FRONT_H
#define HULL_FRONT_H

#include "hull_space.h"
#include "support_sweep.h"
#include "wrench_hull.h"

enum { MAX_CLOSED = 2 * MAX_HULL };

/* What is farther out than this is a new vertex; relative to `size`. A tenth of what the header
 * promises, since a point may lie beyond two neighbouring facets by as much. */
#define HULL_TOLERANCE 1e-10

/* Which question an ask is: an edge, a facet, or an axis of what the points span. */
struct hull_question {
	enum support_space space;
	enum { ASK_FIRST, ASK_AXIS, ASK_EDGE, ASK_FACET } kind;
	size_t edge[2], facet;
	double level;                            /* of what is known */
};

struct hull_front {
	enum support_space space;
	bool round;                              /* headings are not told apart */
	double height;                           /* [m] */
	double wide, high;                       /* sizes of (x, y) and z: [N m] and [N], or [N] and
	                                          * [N m] */
	struct vec3 point[MAX_HULL];            /* over those sizes; round: |(x, y)|, 0, z */
	size_t pose[MAX_HULL], count;
	/* what they span, where not round; 3 once `hull` stands */
	int span;
	struct vec3 axis[3];
	struct hull_space hull;
	size_t axes_asked;                       /* count at which the axes were asked last */
	size_t closed[MAX_CLOSED][2], closed_count;      /* edges with nothing beyond them */
};

void hull_front_open(enum support_space space, bool round, double height, struct hull_front *out);
/* The asks to begin with. Sizes are then taken from the wrenches that are added. */
void hull_front_first(const struct hull_front *front, struct support_sweep *sweep,
                      struct hull_question question[]);
/* Adds a wrench, in the same order to the fronts of all spaces. */
void hull_front_add(struct hull_front *front, const struct reaction_at *at);
void hull_front_size(struct hull_front *front, const struct reaction_at list[], size_t count);
/* Adds what is still open to the asks; false where there was no room for all of it. */
bool hull_front_ask(struct hull_front *front, struct support_sweep *sweep,
                    struct hull_question question[]);
/* Nothing lies beyond that edge or facet. */
void hull_front_close(struct hull_front *front, const struct hull_question *question);
/* Marks the vertices among the wrenches. */
void hull_front_vertices(struct hull_front *front, bool vertex[]);
/* Adds the edges between vertices that have a number (0 to MAX_HULL - 1, else MAX_HULL) to out,
 * where not round; diagonals of flat sides are edges too. At most `room`; the number of them. Call
 * hull_front_vertices before. */
size_t hull_front_edges(const struct hull_front *front, const size_t number[], size_t room,
                        struct hull_edge out[]);

#endif
