/* Shear and torsion shared by equal anchors about their centroid: elastic bolt group, V/n + T r/J
 * (Shigley, Mechanical Engineering Design, 9th ed., 8-12). No friction is counted. */
#ifndef SHEAR_GROUP_H
#define SHEAR_GROUP_H

#include "base.h"

/* Shear on each anchor from one force (Fx, Fy) [N] and torsion about the cell origin [N mm]. False
 * where a single anchor would have to resist torsion (J = 0): then the direct share alone is given.
 */
bool shear_group_share(const struct base *base, const double force[3], struct vec2 shear[]);

/* The sizes of shear for a load case at one heading, the worse of both signs of the twisting parts.
 */
bool shear_group_at(const struct base *base, const struct load_case *load_case, double heading,
                    double shear[]);

/* Whether the torsion of a case may take any value of a range: hull corners, or twisting both ways.
 * Else both ends of shear_group_vectors are the same. */
bool shear_group_is_open(const struct load_case *load_case);

/* Vectors of shear on the anchors [N], each turning force of the case at a heading of its own
 * (heading[k] of turning_force[k]), the torsion at the upper (`high`) or lower end of what hull
 * corners and signs of the twisting parts allow. */
void shear_group_vectors(const struct base *base, const struct load_case *load_case,
                         const double heading[MAX_TURNING], bool high, struct vec2 shear[]);

/* The largest size over all headings of the horizontal forces, for each anchor, and the heading at
 * which it occurs. Several turning forces: the sum of their single maxima (a bound, as their
 * headings are free), and the heading of the largest of them. */
bool shear_group_bound(const struct base *base, const struct load_case *load_case, double shear[],
                       double heading[]);

#endif
