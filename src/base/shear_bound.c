/* The largest shear over all headings. For one place of one turning force the shear on an anchor is
 * a + M (cos t, sin t), an ellipse, so its largest size is exact (farthest.h). */
#include "farthest.h"
#include "shear_pull.h"
#include <math.h>

struct largest { double size, heading; };

/* Largest size of the shear on one anchor from `steady` and one turning force, over all headings of
 * the force, places and signs of the twist. */
static struct largest largest_of(const struct base *base, size_t anchor, struct pull steady,
                                 const struct turning_force *turning)
{
	struct largest largest = {-1, 0};
	double force = turning->force;
	for (size_t i = 0; i < shear_place_count(base, turning); i++) {
		struct vec2 at = shear_place(base, turning, i);
		/* the force is (F, 0) with torsion -F y at heading 0, (0, F) with F x at 90 deg */
		struct vec2 mx = shear_share(base, anchor, (struct pull){force, 0, -force * at.y});
		struct vec2 my = shear_share(base, anchor, (struct pull){0, force, force * at.x});
		for (int sign = turning->one_sign ? 1 : -1; sign <= 1; sign += 2) {
			struct pull still = {steady.x, steady.y,
			                     steady.torsion + sign * turning->twist};
			double heading, size = farthest_on_ellipse(shear_share(base, anchor, still),
			                                           mx, my, &heading);
			if (size > largest.size)
				largest = (struct largest){size, heading};
		}
	}
	return largest;
}

/* Torsion that a turning force can bring in its worst heading and place. */
static double most_torsion(const struct base *base, const struct turning_force *turning)
{
	double most = 0;
	for (size_t i = 0; i < shear_place_count(base, turning); i++) {
		struct vec2 at = shear_place(base, turning, i);
		most = fmax(most, fabs(turning->force) * sqrt(at.x * at.x + at.y * at.y));
	}
	return most + fabs(turning->twist);
}

static bool bound_can_twist(const struct base *base, const struct load_case *load_case)
{
	struct pull fixed = shear_fixed(base, load_case);
	double torsion = fabs(fixed.torsion), force = fabs(fixed.x) + fabs(fixed.y);
	for (int k = 0; k < load_case->turning_count; k++) {
		torsion += most_torsion(base, &load_case->turning_force[k]);
		force += fabs(load_case->turning_force[k].force);
	}
	return shear_can_twist(base, torsion, force * base->size + fabs(load_case->fixed_shear[2]));
}

bool shear_group_bound(const struct base *base, const struct load_case *load_case, double shear[],
                       double heading[])
{
	struct pull fixed = shear_fixed(base, load_case), none = {0, 0, 0};
	/* a single force turns against the fixed part; several turn freely, so that their largest
	 * sizes add to the fixed part's (triangle inequality); the heading is the largest one's */
	bool single = load_case->turning_count == 1;
	for (size_t i = 0; i < base->anchor_count; i++) {
		struct vec2 still = shear_share(base, i, fixed);
		double sum = single ? 0 : sqrt(still.x * still.x + still.y * still.y), leader = 0;
		bool stands = load_case->turning_count == 0 && (fixed.x != 0 || fixed.y != 0);
		heading[i] = stands ? atan2(fixed.y, fixed.x) : 0;
		for (int k = 0; k < load_case->turning_count; k++) {
			const struct turning_force *turning = &load_case->turning_force[k];
			struct largest largest = largest_of(base, i, single ? fixed : none,
			                                    turning);
			sum += largest.size;
			if (largest.size > leader) {
				leader = largest.size;
				heading[i] = largest.heading;
			}
		}
		shear[i] = sum;
	}
	return bound_can_twist(base, load_case);
}
