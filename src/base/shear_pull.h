/* Pieces of the shear group that one heading and all headings share. */
#ifndef SHEAR_PULL_H
#define SHEAR_PULL_H

#include "shear_group.h"

/* A horizontal force with its torsion about the centroid of the anchors [N, N mm]. */
struct pull { double x, y, torsion; };

/* Force on one anchor. Shigley, 9th ed., 8-12: primary shear V/n, secondary shear T r/J at right
 * angles to the radius from the centroid. Without a polar moment the direct share alone. */
struct vec2 shear_share(const struct base *base, size_t anchor, struct pull pull);
/* The same at a radius from the centroid [mm]. */
struct vec2 shear_share_at(const struct base *base, struct vec2 radius, struct pull pull);
/* The part of a load case that does not turn. */
struct pull shear_fixed(const struct base *base, const struct load_case *load_case);

/* Where a turning force may act, from the centroid [mm]: one place, or each corner of the hull. */
size_t shear_place_count(const struct base *base, const struct turning_force *turning);
struct vec2 shear_place(const struct base *base, const struct turning_force *turning, size_t index);

/* Whether the group can take the torsion at all; `size` is what it is measured against [N mm]. */
bool shear_can_twist(const struct base *base, double torsion, double size);

#endif
