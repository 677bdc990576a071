/* The largest edge and pryout ratio of a load case over all headings of its horizontal forces, for
 * loads whose shear has a heading of its own, independent of the tilt.
 *
 * Between headings at which the set of anchors that push toward an edge changes, both ratios are
 * smooth but for kinks, and they may jump where it changes; so those headings are found and both
 * sides looked at. Range: one turning force is searched throughout; of two, a lattice of both
 * headings and then lines through its best points. Compared with fine sweeps in the tests. */
#ifndef CHECK_SHEAR_BOUND_H
#define CHECK_SHEAR_BOUND_H

#include "base/shear_group.h"
#include "strength/code_strength.h"

struct shear_peak {
	bool known;
	struct mode_ratio worst;
	const struct load_case *from;
	struct vec2 shear[MAX_ANCHORS];      /* that gives it, cell axes [N] */
	double heading;                      /* of the first turning force [rad] */
};

/* Raises a peak to this ratio, where it is larger. */
void shear_peak_raise(struct shear_peak *peak, const struct mode_ratio *ratio,
                      const struct load_case *from, double heading, const struct vec2 shear[],
                      size_t count);
/* Raises both peaks to the largest of this case. The case must outlive them. */
void shear_mode_bound(const struct base *base, struct code_strength *s, const struct load_case *c,
                      bool earthquake, struct shear_peak *edge, struct shear_peak *pryout);

#endif
