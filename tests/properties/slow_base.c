#include "slow_base.h"

#include <math.h>
#include <string.h>

/* Relative lack of equilibrium at which each search ends: the inner, the tighter. */
static const double lack_left[3] = {1e-13, 1e-11, 3e-10};
/* Settlements and tilts beyond this many times load over area count as out of range. */
#define FARTHEST 1e6

enum { MOST_TRIES = 200 };

struct slow {
	const struct base_case *from;
	double centre[2], length;      /* [mm] */
	double area;
	double load[3];                /* scaled by centre and length [N] */
	double size;                   /* of the load [N] */
	double at[3];                  /* settlement and tilts times bed stiffness [MPa] */
};

struct sum { double force[3]; };

/* Integral of w (1, x, y) over a triangle by the mid-edge rule; w at the corners. */
static void add_triangle(const struct vec2 at[3], const double w[3], double sign, struct sum *sum)
{
	double twice = (at[1].x - at[0].x) * (at[2].y - at[0].y) -
	               (at[1].y - at[0].y) * (at[2].x - at[0].x);
	for (int i = 0; i < 3; i++) {
		int k = (i + 1) % 3;
		double part = sign * twice / 6 * (w[i] + w[k]) / 2;
		sum->force[0] += part;
		sum->force[1] += part * (at[i].x + at[k].x) / 2;
		sum->force[2] += part * (at[i].y + at[k].y) / 2;
	}
}

/* The tip of a triangle on the one side of w = 0, when corner `tip` alone lies there. */
static void add_tip(const struct vec2 at[3], const double w[3], int tip, double sign,
                    struct sum *sum)
{
	struct vec2 corner[3] = {at[tip]};
	const double value[3] = {w[tip], 0, 0};
	for (int i = 1; i < 3; i++) {
		int k = (tip + i) % 3;
		double share = w[tip] / (w[tip] - w[k]);
		corner[i].x = at[tip].x + share * (at[k].x - at[tip].x);
		corner[i].y = at[tip].y + share * (at[k].y - at[tip].y);
	}
	add_triangle(corner, value, sign, sum);
}

/* Integral of max(w, 0) (1, x, y): a pressed tip, or all of it less an unpressed tip. */
static void add_pressed(const struct vec2 at[3], const double w[3], struct sum *sum)
{
	int pressed = (w[0] > 0) + (w[1] > 0) + (w[2] > 0);
	if (pressed == 0)
		return;
	if (pressed == 1) {
		add_tip(at, w, w[0] > 0 ? 0 : w[1] > 0 ? 1 : 2, 1, sum);
		return;
	}
	add_triangle(at, w, 1, sum);
	if (pressed == 2)
		add_tip(at, w, w[0] <= 0 ? 0 : w[1] <= 0 ? 1 : 2, -1, sum);
}

static double value_at(const struct slow *slow, struct vec2 at)
{
	return slow->at[0] + slow->at[1] * at.x + slow->at[2] * at.y;
}

static struct vec2 scaled(const struct slow *slow, struct vec2 at)
{
	return (struct vec2){(at.x - slow->centre[0]) / slow->length,
	                     (at.y - slow->centre[1]) / slow->length};
}

static double ring_area(const struct vec2 *ring, size_t count)
{
	double twice = 0;
	for (size_t i = 0; i < count; i++) {
		struct vec2 a = ring[i], b = ring[(i + 1) % count];
		twice += (a.x - b.x) * (a.y + b.y);
	}
	return twice / 2;
}

static void add_ring(const struct slow *slow, const struct vec2 *ring, size_t count, bool hole,
                     struct sum *sum)
{
	double sense = (ring_area(ring, count) > 0 ? 1 : -1) * (hole ? -1 : 1);
	struct sum own = {{0, 0, 0}};
	/* triangles from the middle of the corners, so that none is far from the ring */
	struct vec2 middle = {0, 0};
	for (size_t i = 0; i < count; i++) {
		middle.x += ring[i].x / (double)count;
		middle.y += ring[i].y / (double)count;
	}
	for (size_t i = 0; i < count; i++) {
		struct vec2 at[3] = {scaled(slow, middle), scaled(slow, ring[i]),
		                     scaled(slow, ring[(i + 1) % count])};
		const double w[3] = {value_at(slow, at[0]), value_at(slow, at[1]),
		                     value_at(slow, at[2])};
		add_pressed(at, w, &own);
	}
	for (int k = 0; k < 3; k++)
		sum->force[k] += sense * own.force[k] * slow->length * slow->length;
}

static void pad_corners(const struct base_piece *pad, struct vec2 out[4])
{
	const double *at = pad->at.at, *size = pad->size.at;
	out[0] = (struct vec2){at[0] - size[0] / 2, at[1] - size[1] / 2};
	out[1] = (struct vec2){at[0] + size[0] / 2, at[1] - size[1] / 2};
	out[2] = (struct vec2){at[0] + size[0] / 2, at[1] + size[1] / 2};
	out[3] = (struct vec2){at[0] - size[0] / 2, at[1] + size[1] / 2};
}

/* What pushes up less what pushes down, relative to the load. */
static void lack(const struct slow *slow, double out[3])
{
	struct sum sum = {{-slow->load[0], -slow->load[1], -slow->load[2]}};
	for (size_t i = 0; i < slow->from->cell.base.count; i++) {
		const struct base_piece *piece = &slow->from->piece[i];
		struct vec2 corner[4];
		if (piece->outline.count == 0) {
			pad_corners(piece, corner);
			add_ring(slow, corner, 4, false, &sum);
			continue;
		}
		add_ring(slow, piece->outline.points, piece->outline.count, false, &sum);
		if (piece->holes.count)
			add_ring(slow, slow->from->hole[i].points, slow->from->hole[i].count, true,
			         &sum);
	}
	for (size_t i = 0; i < slow->from->cell.anchors.count; i++) {
		struct vec2 at = scaled(slow, slow->from->cell.anchors.at[i]);
		double w = fmin(value_at(slow, at), 0) * slow->from->bed_ratio;
		sum.force[0] += w;
		sum.force[1] += w * at.x;
		sum.force[2] += w * at.y;
	}
	for (int k = 0; k < 3; k++)
		out[k] = sum.force[k] / slow->size;
}

static bool find(struct slow *slow, int unknown);

/* The lack along one unknown, when all unknowns before it are at their best. */
static bool best_lack(struct slow *slow, int unknown, double value, double *out)
{
	double all[3];
	slow->at[unknown] = value;
	if (unknown > 0 && !find(slow, unknown - 1))
		return false;
	lack(slow, all);
	*out = all[unknown];
	return true;
}

struct bracket { double low, high, at_low, at_high; };

/* Goes out from the present value until the lack changes its sign. */
static bool enclose(struct slow *slow, int unknown, struct bracket *bracket, bool *done)
{
	double from = slow->at[unknown], value, step = 0.1 * slow->size / slow->area;
	if (!best_lack(slow, unknown, from, &value))
		return false;
	*bracket = (struct bracket){from, from, value, value};
	*done = fabs(value) <= lack_left[unknown];
	if (*done)
		return true;
	for (;; step *= 3) {
		/* what is lacking below is pressed for by going down, and the other way round */
		double next = value < 0 ? bracket->high + step : bracket->low - step, found;
		if (fabs(next) > FARTHEST * slow->size / slow->area ||
		    !best_lack(slow, unknown, next, &found))
			return false;
		if (value < 0) {
			bracket->low = bracket->high;
			bracket->at_low = bracket->at_high;
			bracket->high = next;
			bracket->at_high = found;
		} else {
			bracket->high = bracket->low;
			bracket->at_high = bracket->at_low;
			bracket->low = next;
			bracket->at_low = found;
		}
		if ((found < 0) != (value < 0))
			return true;
	}
}

/* Sets the unknown (and all before it) to where its lack is zero: regula falsi, halving the weight
 * of an end that stays, and a bisection now and then. */
static bool find(struct slow *slow, int unknown)
{
	struct bracket in;
	bool done;
	if (!enclose(slow, unknown, &in, &done))
		return false;
	for (int i = 1, side = 0; !done && i < MOST_TRIES; i++) {
		double next = in.low - in.at_low * (in.high - in.low) / (in.at_high - in.at_low),
		       found;
		if (i % 4 == 0 || !(next > in.low && next < in.high))
			next = (in.low + in.high) / 2;
		if (!best_lack(slow, unknown, next, &found))
			return false;
		done = fabs(found) <= lack_left[unknown] || !(next > in.low && next < in.high);
		if (found < 0) {
			in.low = next;
			in.at_low = found;
			in.at_high *= side < 0 ? 0.5 : 1;
			side = -1;
		} else {
			in.high = next;
			in.at_high = found;
			in.at_low *= side > 0 ? 0.5 : 1;
			side = 1;
		}
	}
	return done;
}

/* Centre and size from the first piece and the anchors: any will do. */
static void set_scale(struct slow *slow)
{
	const struct base_piece *piece = slow->from->piece;
	struct vec2 corner[4];
	pad_corners(piece, corner);
	struct vec2 at = piece->outline.count ? piece->outline.points[0] : corner[0];
	slow->centre[0] = at.x;
	slow->centre[1] = at.y;
	slow->length = 1;
	for (size_t i = 0; i < slow->from->cell.anchors.count; i++) {
		struct vec2 anchor = slow->from->cell.anchors.at[i];
		slow->length = fmax(slow->length, hypot(anchor.x - at.x, anchor.y - at.y));
	}
	slow->area = slow->length * slow->length;
}

bool slow_tensions(const struct base_case *base_case, double tension[])
{
	struct slow slow = {.from = base_case};
	set_scale(&slow);
	slow.load[0] = base_case->load[0];
	for (int k = 0; k < 2; k++)
		slow.load[k + 1] = (base_case->load[k + 1] - slow.centre[k] * base_case->load[0]) /
		                   slow.length;
	slow.size = fabs(slow.load[0]) + fabs(slow.load[1]) + fabs(slow.load[2]);
	if (!find(&slow, 2))
		return false;
	for (size_t i = 0; i < base_case->cell.anchors.count; i++) {
		double w = value_at(&slow, scaled(&slow, base_case->cell.anchors.at[i]));
		tension[i] = fmax(-w, 0) * base_case->bed_ratio;
	}
	return true;
}
