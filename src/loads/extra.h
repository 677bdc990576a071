/* A further load on the cell (a leaning person, a cart), as parts of a load case. */
#ifndef EXTRA_H
#define EXTRA_H

#include "../cell/arena.h"
#include "../cell/cell.h"
#include "../cell/load_case.h"
#include "../cell/trace.h"

/* One way in which the load may act: where its vertical part and its torsion are taken. */
struct extra_action {
	double down;                 /* [N] */
	double fixed[2];             /* first moments [N mm] */
	double turning;              /* first moment that turns [N mm] */
	double shear[3];             /* Fx, Fy [N], torsion about the cell origin [N mm] */
	bool turns;
	struct turning_force force;  /* when it turns */
};

/* All ways of one load: a single one where its place is given or its heading free (the place is
 * then found by the shear group), else both signs of the largest torsion that any corner of the
 * base's hull gives, with a vertical part tried at every such corner. `moving` scales it. False: no
 * memory. */
bool extra_actions(const struct cell *cell, const struct extra_load *load, double moving,
                   struct arena *arena, struct extra_action **out, size_t *count);
/* `source`: where the factor comes from. */
void extra_trace(const struct extra_load *load, double moving, const char *source,
                 struct trace *trace);

#endif
