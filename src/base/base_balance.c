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

double base_overturning(const struct base *base, const double steady[3], double turning,
                        double *heading)
{
	double worst = 0;
	*heading = 0;
	for (size_t i = 0; i < base->facet_count; i++) {
		const double *n = base->facet[i];
		double moment = moment_about(n, steady);
		/* the turning moment is worst when it points straight across the line */
		double over = fabs(turning) + fmax(moment, 0), resisting = fmax(-moment, 0);
		/* neither the one nor the other: on the edge of the cone */
		double ratio = resisting > 0 ? over / resisting : over > 0 ? HUGE_VAL : 1;
		if (ratio > worst) {
			worst = ratio;
			*heading = atan2(turning < 0 ? -n[2] : n[2], turning < 0 ? -n[1] : n[1]);
		}
	}
	return worst;
}
