#include "shear_pull.h"
#include <math.h>

/* Torsion below this share of force times size is rounding: the force passes through the centre. */
#define TORSION_SHARE 1e-9

/* Torsion that may take any value of a range [N mm]. */
struct range { double low, high; };

struct vec2 shear_share_at(const struct base *base, struct vec2 radius, struct pull pull)
{
	double n = (double)base->anchor_count;
	double per_arm = base->shear_polar > 0 ? pull.torsion / base->shear_polar : 0;
	return (struct vec2){pull.x / n - per_arm * radius.y, pull.y / n + per_arm * radius.x};
}

struct vec2 shear_share(const struct base *base, size_t anchor, struct pull pull)
{
	struct vec2 at = base->anchor_mm[anchor];
	return shear_share_at(base,
	                      (struct vec2){at.x - base->shear_centre[0],
	                                    at.y - base->shear_centre[1]},
	                      pull);
}

static struct pull about_centre(const struct base *base, const double force[3])
{
	double moved = base->shear_centre[0] * force[1] - base->shear_centre[1] * force[0];
	return (struct pull){force[0], force[1], force[2] - moved};
}

bool shear_can_twist(const struct base *base, double torsion, double size)
{
	return base->shear_polar > 0 || fabs(torsion) <= TORSION_SHARE * size;
}

bool shear_group_share(const struct base *base, const double force[3], struct vec2 shear[])
{
	struct pull pull = about_centre(base, force);
	for (size_t i = 0; i < base->anchor_count; i++)
		shear[i] = shear_share(base, i, pull);
	double size = (fabs(force[0]) + fabs(force[1])) * base->size + fabs(force[2]);
	return shear_can_twist(base, pull.torsion, size);
}

struct pull shear_fixed(const struct base *base, const struct load_case *load_case)
{
	return about_centre(base, load_case->fixed_shear);
}

size_t shear_place_count(const struct base *base, const struct turning_force *turning)
{
	return turning->at_hull ? base->hull_count : 1;
}

struct vec2 shear_place(const struct base *base, const struct turning_force *turning, size_t index)
{
	struct vec2 at = {turning->at[0], turning->at[1]};
	if (turning->at_hull)
		at = base->hull[index];
	return (struct vec2){at.x - base->shear_centre[0], at.y - base->shear_centre[1]};
}

/* Torsion about the centroid that a turning force can bring at a heading: any hull corner, either
 * sign of its own twist unless it has but one. */
static struct range torsion_range(const struct base *base, const struct turning_force *turning,
                                  double heading)
{
	double c = cos(heading + turning->lead), s = sin(heading + turning->lead);
	struct range range = {HUGE_VAL, -HUGE_VAL};
	for (size_t i = 0; i < shear_place_count(base, turning); i++) {
		struct vec2 at = shear_place(base, turning, i);
		double torsion = turning->force * (at.x * s - at.y * c);
		range.low = fmin(range.low, torsion);
		range.high = fmax(range.high, torsion);
	}
	range.low += turning->one_sign ? turning->twist : -fabs(turning->twist);
	range.high += turning->one_sign ? turning->twist : fabs(turning->twist);
	return range;
}

static double size_of(struct vec2 v)
{
	return sqrt(v.x * v.x + v.y * v.y);
}

/* Force and torsion of a load case with each turning force caught in a heading of its own. */
struct caught_pull {
	double x, y;                 /* [N] */
	struct range torsion;        /* about the anchors' centroid [N mm] */
	double force;                /* sum of sizes, to measure the torsion against [N] */
};

static struct caught_pull catch_pull(const struct base *base, const struct load_case *load_case,
                                     const double heading[MAX_TURNING])
{
	struct pull fixed = shear_fixed(base, load_case);
	struct caught_pull all = {fixed.x, fixed.y, {fixed.torsion, fixed.torsion},
	                          fabs(fixed.x) + fabs(fixed.y)};
	for (int k = 0; k < load_case->turning_count; k++) {
		const struct turning_force *turning = &load_case->turning_force[k];
		struct range range = torsion_range(base, turning, heading[k]);
		all.x += turning->force * cos(heading[k] + turning->lead);
		all.y += turning->force * sin(heading[k] + turning->lead);
		all.torsion.low += range.low;
		all.torsion.high += range.high;
		all.force += fabs(turning->force);
	}
	return all;
}

static void share_all(const struct base *base, const struct caught_pull *all, bool high,
                      struct vec2 shear[])
{
	struct pull pull = {all->x, all->y, high ? all->torsion.high : all->torsion.low};
	for (size_t i = 0; i < base->anchor_count; i++)
		shear[i] = shear_share(base, i, pull);
}

bool shear_group_is_open(const struct load_case *load_case)
{
	for (int k = 0; k < load_case->turning_count; k++) {
		const struct turning_force *turning = &load_case->turning_force[k];
		if (turning->at_hull || (turning->twist != 0 && !turning->one_sign))
			return true;
	}
	return false;
}

void shear_group_vectors(const struct base *base, const struct load_case *load_case,
                         const double heading[MAX_TURNING], bool high, struct vec2 shear[])
{
	struct caught_pull all = catch_pull(base, load_case, heading);
	share_all(base, &all, high, shear);
}

bool shear_group_at(const struct base *base, const struct load_case *load_case, double heading,
                    double shear[])
{
	double headings[MAX_TURNING];
	for (int k = 0; k < MAX_TURNING; k++)
		headings[k] = heading;
	struct caught_pull all = catch_pull(base, load_case, headings);
	struct vec2 low[MAX_ANCHORS], high[MAX_ANCHORS];
	share_all(base, &all, false, low);
	share_all(base, &all, true, high);
	/* the size of a vector is convex in the torsion, so an end of the range is the worst */
	for (size_t i = 0; i < base->anchor_count; i++)
		shear[i] = fmax(size_of(low[i]), size_of(high[i]));
	double size = all.force * base->size + fabs(load_case->fixed_shear[2]);
	return shear_can_twist(base, fmax(fabs(all.torsion.low), fabs(all.torsion.high)), size);
}
