/* The forces of contact by a second way, for the residual: the clipped ring is written out, and
 * every triangle is integrated by the mid-edge rule, which is exact for polynomials of degree two.
 * It shares neither the clip nor the formulas nor the kept moments with the solver. */
#include "contact.h"

struct corner { struct vec2 at; double w; };

/* Writes out the part of the ring with w >= 0; returns its count of corners. */
static size_t keep_down(const struct bed_ring *ring, const double settle[3], struct corner out[])
{
	size_t count = 0;
	for (size_t i = 0; i < ring->count; i++) {
		struct vec2 a = ring->at[i], b = ring->at[i + 1 < ring->count ? i + 1 : 0];
		double wa = settle_at(settle, a), wb = settle_at(settle, b);
		if (wa >= 0)
			out[count++] = (struct corner){a, wa};
		if ((wa > 0 && wb < 0) || (wa < 0 && wb > 0)) {
			double share = wa / (wa - wb);
			struct vec2 at = {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
			out[count++] = (struct corner){at, 0};
		}
	}
	return count;
}

/* Adds the integrals over one triangle: area/3 times the sum over the middles of its edges. */
static void add_triangle(const struct corner *a, const struct corner *b, const struct corner *c,
                         double force[3])
{
	const struct corner *corner[4] = {a, b, c, a};
	double bx = b->at.x - a->at.x, by = b->at.y - a->at.y;
	double cx = c->at.x - a->at.x, cy = c->at.y - a->at.y;
	double area = (bx * cy - by * cx) / 2;
	for (int i = 0; i < 3; i++) {
		double w = (corner[i]->w + corner[i + 1]->w) / 2;
		force[0] += area / 3 * w;
		force[1] += area / 3 * w * (corner[i]->at.x + corner[i + 1]->at.x) / 2;
		force[2] += area / 3 * w * (corner[i]->at.y + corner[i + 1]->at.y) / 2;
	}
}

void contact_force(const struct bed_ring *ring, const double settle[3], double force[3],
                   double *peak)
{
	struct corner corner[2 * MAX_VERTICES];
	size_t count = keep_down(ring, settle, corner);
	for (size_t i = 2; i < count; i++)
		add_triangle(&corner[0], &corner[i - 1], &corner[i], force);
	for (size_t i = 0; i < count; i++)
		*peak = corner[i].w > *peak ? corner[i].w : *peak;
}
