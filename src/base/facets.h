/* The cone of loads that bed and anchors can carry, by its facets.
 *
 * Source: reference equations of one-way contact, existence test. The bed pushes up and carries the
 * loads (1, x, y) of its hull's points, an anchor pulls down and carries -(1, x, y); all sums of
 * these make the cone. A facet normal n is a straight line f(x, y) = n0 + n1 x + n2 y with the bed
 * on its side f <= 0 and every anchor on f >= 0: a line about which the base can tip with nothing
 * to hold it. load.n is the load's moment about the line [N mm], negative where it holds the base
 * down.
 * Identity: f <= 0 on the hull, f >= 0 at the anchors, n1^2 + n2^2 = 1. */
#ifndef FACETS_H
#define FACETS_H

#include "base.h"

/* Fills base->facet and facet_count from hull and anchors. NO_MEMORY, or DONE. */
enum status facets_find(struct base *base, struct arena *arena);

/* Lines, points and loads nearer than this count as touching [share of the base's size]. */
#define FACET_SHARE 1e-6

#endif
