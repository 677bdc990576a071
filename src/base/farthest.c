/* |a + M e|^2 = |a|^2 + 2 b.e + e.Q e with b = M'a and Q = M'M. On the unit circle it is largest
 * where (m I - Q) e = b with m at or above the larger eigenvalue of Q (Lagrange; the global maximum
 * of a quadratic form on a sphere). In the axes of Q, with l1 >= l2 and d = m - l1 >= 0, the length
 * condition is
 *   b1^2/d^2 + b2^2/(d + l1 - l2)^2 = 1.
 * Its left side falls with d, so that there is one root, between |b1| and |b|. */
#include "farthest.h"
#include <math.h>

enum { MOST_STEPS = 100 };

/* Root of the length condition: Newton on 1/length, nearly straight in d, kept in brackets. */
static double find_shift(double b1, double b2, double gap)
{
	double low = fabs(b1), high = sqrt(b1 * b1 + b2 * b2), d = high;
	for (int i = 0; i < MOST_STEPS && high - low > 1e-16 * high; i++) {
		double e1 = b1 / d, e2 = b2 / (d + gap);
		double length2 = e1 * e1 + e2 * e2, length = sqrt(length2);
		if (length > 1)
			low = d;
		else
			high = d;
		double slope = (e1 * e1 / d + e2 * e2 / (d + gap)) / (length2 * length);
		double next = d - (1 / length - 1) / slope;
		if (!(next > low && next < high))
			next = (low + high) / 2;
		if (fabs(next - d) <= 1e-16 * d)
			break;
		d = next;
	}
	return d;
}

/* Unit vector of the maximum, in the axes of Q. */
static struct vec2 best_direction(double b1, double b2, double gap)
{
	/* a round ellipse or none: along b, or anywhere */
	if (b1 == 0 && b2 == 0)
		return (struct vec2){1, 0};
	if (b1 == 0 && fabs(b2) <= gap) {
		/* m is the eigenvalue itself; both signs of the first part are as good */
		double e2 = b2 / gap;
		return (struct vec2){sqrt(1 - e2 * e2), e2};
	}
	double d = find_shift(b1, b2, gap);
	double e1 = b1 / d, e2 = b2 / (d + gap), length = sqrt(e1 * e1 + e2 * e2);
	return (struct vec2){e1 / length, e2 / length};
}

double farthest_on_ellipse(struct vec2 a, struct vec2 mx, struct vec2 my, double *heading)
{
	double xx = mx.x * mx.x + mx.y * mx.y, yy = my.x * my.x + my.y * my.y,
	       xy = mx.x * my.x + mx.y * my.y;
	double bx = mx.x * a.x + mx.y * a.y, by = my.x * a.x + my.y * a.y;
	/* axes of Q: the first one has the larger eigenvalue */
	double turn = atan2(2 * xy, xx - yy) / 2, c = cos(turn), s = sin(turn);
	double gap = sqrt((xx - yy) * (xx - yy) + 4 * xy * xy);
	struct vec2 e = best_direction(bx * c + by * s, by * c - bx * s, gap);
	double ex = e.x * c - e.y * s, ey = e.x * s + e.y * c;
	*heading = atan2(ey, ex);
	double x = a.x + mx.x * ex + my.x * ey, y = a.y + mx.y * ex + my.y * ey;
	return sqrt(x * x + y * y);
}
