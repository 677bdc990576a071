/* Exact integrals over the part of one ring that presses on the bed (w > 0), in scaled coordinates.
 *
 * Source: integral of the product of two linear functions over a triangle of area A is
 * A/12 (sum f_i g_i + sum f_i sum g_i); a ring is a signed fan of triangles from one of its own
 * vertices. Holes run clockwise and count negative. */
#ifndef CONTACT_H
#define CONTACT_H

#include "base.h"

/* Order of the symmetric second moments everywhere in this folder. */
enum { OF_1, OF_X, OF_Y, OF_XX, OF_XY, OF_YY, MOMENTS };

/* Sums over contact: of w, w x, w y, and of 1, x, y, xx, xy, yy. */
struct contact { double force[3], moments[MOMENTS]; };

/* Displacement at a scaled point, downward positive, times the bed's stiffness [MPa]. */
static inline double settle_at(const double settle[3], struct vec2 at)
{
	return settle[0] + settle[1] * at.x + settle[2] * at.y;
}

/* Adds the ring's contact to `sum`. Rings wholly down use their kept moments. */
void contact_add(const struct bed_ring *ring, const double settle[3], struct contact *sum);

/* The forces alone, of w, w x and w y, always by integration: the way to check the one above. The
 * largest w of the ring is kept in *peak where it is larger. */
void contact_force(const struct bed_ring *ring, const double settle[3], double force[3],
                   double *peak);

/* Moments of the whole ring, whatever presses. */
void contact_whole(struct bed_ring *ring);

#endif
