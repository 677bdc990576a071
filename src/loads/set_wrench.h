/* One wrench of the arm's own motion (arm/arm_loads.h) as it stands in a weight run, moved from the
 * mounting face to floor level.
 *
 * Source: transfer of a force to another point, M' = M + r x F (statics). Runs: weight at its
 * factor, all else at the factor of the moving part: F' = -k W + m (F + W), as a data sheet's
 * vertical force is read (arm_wrench.h: the least one; in the largest k is `own`, 1 for service
 * loads). The moment of the weight takes `own` in every run: reduced it would relieve. Where the
 * weight's moment is not told apart (a history) all of the moment takes the factor of the moving
 * part. Identities: with all factors 1 it is the wrench itself. */
#ifndef SET_WRENCH_H
#define SET_WRENCH_H

#include "../arm/arm_loads.h"
#include "../cell/load_case.h"
#include "../cell/trace.h"

struct set_wrench {
	double down;             /* [N] */
	double first[2];         /* sum of N x, N y about the mounting point's foot [N mm] */
	double force[2];         /* horizontal [N] */
	double twist;            /* about the vertical through the mounting point [N mm] */
};
/* With the factors of the case (factors.h). In VERTICAL_MOST the arm's own weight takes `own`, its
 * full size for service loads, which is the worse where it stands over an edge of the base. */
struct set_wrench set_wrench(const struct cell *cell, const struct arm_load *load,
                             const struct load_case *c);

/* Adds it to a case that holds the weights: turning with its range of headings, or as it stands. */
void add_set_wrench(const struct cell *cell, const struct arm_load *load, struct load_case *c);

/* How the wrench of a case comes about; for shear the horizontal part alone. */
void trace_set_wrench(const struct cell *cell, const struct load_case *c, struct trace *trace);
void trace_set_horizontal(const struct cell *cell, const struct load_case *c, struct trace *trace);

#endif
