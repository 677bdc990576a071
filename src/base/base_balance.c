#include "facets.h"
#include <math.h>

static double moment_about(const double facet[3], const double load[3])
{
	return facet[0] * load[0] + facet[1] * load[1] + facet[2] * load[2];
}

/* What rounding and the reach of the contact solution leave open: a load nearer to the edge of the
 * cone than this would rest on a spot without size [N mm]. */
static double blur(const struct base *base, const double load[3])
{
	double x = load[1] - base->centre[0] * load[0], y = load[2] - base->centre[1] * load[0];
	return FACET_SHARE * (fabs(load[0]) * base->size + fabs(x) + fabs(y));
}

enum balance base_balance(const struct base *base, const double load[3])
{
	double near = blur(base, load);
	enum balance balance = BALANCED;
	for (size_t i = 0; i < base->facet_count; i++) {
		double moment = moment_about(base->facet[i], load);
		if (moment > near)
			return NO_EQUILIBRIUM;
		if (moment >= -near)
			balance = LIMIT;
	}
	return balance;
}

static const double full_turn = 6.28318530717958647692;

/* The heading within the range that is nearest to `best`, where a cosine about it is largest. */
static double nearest_heading(double best, double from, double to)
{
	double ahead = best - from - full_turn * floor((best - from) / full_turn);
	if (from + ahead <= to)
		return from + ahead;
	return cos(from - best) > cos(to - best) ? from : to;
}

/* Neither the one nor the other: on the edge of the cone. */
static double ratio_of(double over, double resisting)
{
	return resisting > 0 ? over / resisting : over > 0 ? HUGE_VAL : 1;
}

double base_overturning_within(const struct base *base, const double steady[3], double turning,
                               double from, double to, double *heading)
{
	bool round = to - from >= full_turn * (1 - 1e-12);
	double worst = 0;
	*heading = 0;
	for (size_t i = 0; i < base->facet_count; i++) {
		const double *n = base->facet[i];
		double moment = moment_about(n, steady);
		/* the turning moment is worst when it points straight across the line */
		double across = atan2(turning < 0 ? -n[2] : n[2], turning < 0 ? -n[1] : n[1]);
		double at = round ? across : nearest_heading(across, from, to);
		double part = round ? fabs(turning) : fabs(turning) * cos(at - across);
		double over = fmax(part, 0) + fmax(moment, 0);
		double resisting = fmax(-part, 0) + fmax(-moment, 0);
		double ratio = ratio_of(over, resisting);
		if (ratio > worst) {
			worst = ratio;
			*heading = at;
		}
	}
	return worst;
}

double base_overturning(const struct base *base, const double steady[3], double turning,
                        double *heading)
{
	return base_overturning_within(base, steady, turning, 0, full_turn, heading);
}

double base_overturning_apart(const struct base *base, const double steady[3],
                              const double moved[3], double *heading)
{
	double worst = 0;
	*heading = 0;
	for (size_t i = 0; i < base->facet_count; i++) {
		const double *n = base->facet[i];
		double one = moment_about(n, steady), other = moment_about(n, moved);
		double over = fmax(one, 0) + fmax(other, 0);
		double resisting = fmax(-one, 0) + fmax(-other, 0);
		double ratio = ratio_of(over, resisting);
		if (ratio > worst) {
			worst = ratio;
			*heading = atan2(n[2], n[1]);
		}
	}
	return worst;
}
