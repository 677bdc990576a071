#include "random_limits.h"

#include <string.h>

static const double pi = 3.14159265358979323846;

void limits_random(const struct chain *chain, struct dice *dice, int shapes,
                   struct motion_limits *limits)
{
	memset(limits, 0, sizeof *limits);
	for (size_t i = 0; i < chain->count; i++) {
		bool revolute = chain->link[i].kind == JOINT_REVOLUTE;
		double low = dice_between(dice, -pi, 0), wide = dice_between(dice, 0, 2 * pi);
		int shape = dice_whole(dice, 0, shapes);
		if (shape == 0)
			wide = 0;
		if (shape == 1 && revolute)
			wide = 2 * pi;
		limits->low[i] = revolute ? low : low / 3;
		limits->high[i] = limits->low[i] + (revolute ? wide : wide / 6);
		limits->speed[i] = dice_whole(dice, 0, 5) ? dice_decades(dice, -1, 0.7) : 0;
		limits->acceleration[i] = dice_whole(dice, 0, 5) ? dice_decades(dice, 0, 1.3) : 0;
	}
}
