#include "random_base.h"

#include <math.h>
#include <string.h>

static const struct given known = {{0}, GIVEN};

struct dice dice_open(uint64_t seed, uint64_t number)
{
	struct dice dice = {seed * UINT64_C(0x9e3779b97f4a7c15) + number};
	dice.state = dice_next(&dice);
	return dice;
}

uint64_t dice_next(struct dice *dice)
{
	uint64_t z = dice->state += UINT64_C(0x9e3779b97f4a7c15);
	z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
	z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
	return z ^ (z >> 31);
}

double dice_between(struct dice *dice, double low, double high)
{
	return low + (high - low) * (double)(dice_next(dice) >> 11) * 0x1p-53;
}

int dice_whole(struct dice *dice, int low, int high)
{
	return low + (int)(dice_next(dice) % (uint64_t)(high - low + 1));
}

double dice_decades(struct dice *dice, double low, double high)
{
	return exp(log(10) * dice_between(dice, low, high));
}

void case_clear(struct base_case *base_case)
{
	memset(base_case, 0, sizeof *base_case);
	base_case->cell.base = (struct list){known, base_case->piece, 0};
	base_case->cell.anchors.at_given = known;
}

void case_outline(struct base_case *base_case, const struct vec2 *corner, size_t count,
                  const struct vec2 *hole, size_t hole_count)
{
	size_t index = base_case->cell.base.count++;
	struct base_piece *piece = &base_case->piece[index];
	memcpy(base_case->corner[index], corner, count * sizeof *corner);
	piece->outline = (struct ring){known, base_case->corner[index], count};
	if (!hole)
		return;
	memcpy(base_case->hole_corner[index], hole, hole_count * sizeof *hole);
	base_case->hole[index] = (struct ring){known, base_case->hole_corner[index], hole_count};
	piece->holes = (struct list){known, &base_case->hole[index], 1};
}

void case_rectangle(struct base_case *base_case, double x, double y, double length, double width)
{
	double a = length / 2, b = width / 2;
	const struct vec2 corner[4] = {
		{x - a, y - b}, {x + a, y - b}, {x + a, y + b}, {x - a, y + b}};
	case_outline(base_case, corner, 4, NULL, 0);
}

void case_pad(struct base_case *base_case, double x, double y, double length, double width)
{
	struct base_piece *piece = &base_case->piece[base_case->cell.base.count++];
	piece->at = (struct point){known, {x, y, 0}};
	piece->size = (struct point){known, {length, width, 0}};
}

void case_anchor(struct base_case *base_case, double x, double y)
{
	struct anchors *anchors = &base_case->cell.anchors;
	anchors->at[anchors->count++] = (struct vec2){x, y};
}

/* A star-shaped ring about (x, y): simple, but seldom convex. */
static size_t star(struct dice *dice, double x, double y, double radius, struct vec2 out[])
{
	size_t count = (size_t)dice_whole(dice, 3, CASE_CORNERS);
	double first = dice_between(dice, 0, 6.28);
	for (size_t i = 0; i < count; i++) {
		/* less than half a turn from corner to corner keeps the centre inside */
		double angle = first + 6.283185307179586 *
		                               ((double)i + dice_between(dice, 0, 0.45)) /
		                               (double)count;
		double reach = radius * dice_between(dice, 0.35, 1);
		out[i] = (struct vec2){x + reach * cos(angle), y + reach * sin(angle)};
	}
	return count;
}

static void random_piece(struct base_case *base_case, struct dice *dice, double x, double y,
                         double radius)
{
	struct vec2 corner[CASE_CORNERS], hole[CASE_CORNERS];
	int kind = dice_whole(dice, 0, 3);
	if (kind == 0) {
		double length = radius * dice_between(dice, 0.3, 1.4),
		       width = radius * dice_between(dice, 0.3, 1.4);
		case_pad(base_case, x, y, length, width);
		return;
	}
	size_t count = star(dice, x, y, radius, corner);
	double shrink = dice_between(dice, 0.2, 0.9);
	for (size_t i = 0; i < count; i++)
		hole[i] = (struct vec2){x + shrink * (corner[i].x - x),
		                        y + shrink * (corner[i].y - y)};
	/* either sense of rotation may be written in a file */
	if (dice_whole(dice, 0, 1))
		for (size_t i = 0; i < count / 2; i++) {
			struct vec2 keep = corner[i];
			corner[i] = corner[count - 1 - i];
			corner[count - 1 - i] = keep;
		}
	case_outline(base_case, corner, count, kind == 1 ? hole : NULL, count);
}

static void random_pieces(struct base_case *base_case, struct dice *dice, double step)
{
	/* one piece a square of a 3 x 3 grid, so that they cannot overlap */
	unsigned taken = 0;
	int wanted = dice_whole(dice, 0, 2) ? dice_whole(dice, 1, 4)
	                                    : dice_whole(dice, 1, CASE_PIECES);
	double x0 = dice_between(dice, -2, 2) * step, y0 = dice_between(dice, -2, 2) * step;
	for (int i = 0; i < wanted; i++) {
		int square = dice_whole(dice, 0, 8);
		if (taken >> square & 1)
			continue;
		taken |= 1u << square;
		double x = x0 + step * (square % 3 - 1), y = y0 + step * (square / 3 - 1);
		random_piece(base_case, dice, x, y, step * dice_between(dice, 0.2, 0.49));
	}
}

void case_random(struct base_case *base_case, struct dice *dice)
{
	case_clear(base_case);
	double step = dice_decades(dice, 1.7, 3.3), middle[2] = {0, 0};
	random_pieces(base_case, dice, step);
	/* around the first piece, as far as its neighbours' squares */
	const struct base_piece *first = base_case->piece;
	for (int k = 0; k < 2; k++)
		middle[k] = is_known(first->outline)
		                    ? (k ? first->outline.points->y : first->outline.points->x)
		                    : first->at.at[k];
	int anchors = dice_whole(dice, 1, CASE_CORNERS);
	for (int i = 0; i < anchors; i++) {
		double x = middle[0] + step * dice_between(dice, -1.2, 1.2);
		double y = middle[1] + step * dice_between(dice, -1.2, 1.2);
		case_anchor(base_case, x, y);
	}
	base_case->bed_ratio = step * step * dice_decades(dice, -4, 3);
	double force = dice_decades(dice, 1, 6), angle = dice_between(dice, 0, 6.28);
	double moment = force * step * dice_decades(dice, -1.5, 1);
	base_case->load[0] = dice_whole(dice, 0, 3) ? force : dice_whole(dice, 0, 3) ? -force : 0;
	base_case->load[1] = base_case->load[0] * middle[0] + moment * cos(angle);
	base_case->load[2] = base_case->load[0] * middle[1] + moment * sin(angle);
}

struct motion { double c, s, sign, dx, dy; };

static struct vec2 moved(const struct motion *motion, double x, double y)
{
	y *= motion->sign;
	return (struct vec2){motion->c * x - motion->s * y + motion->dx,
	                     motion->s * x + motion->c * y + motion->dy};
}

static size_t move_ring(const struct motion *motion, const struct vec2 *ring, size_t count,
                        struct vec2 out[])
{
	for (size_t i = 0; i < count; i++)
		out[i] = moved(motion, ring[i].x, ring[i].y);
	return count;
}

static size_t pad_corners(const struct base_piece *pad, struct vec2 out[4])
{
	double a = pad->size.at[0] / 2, b = pad->size.at[1] / 2;
	for (int i = 0; i < 4; i++) {
		out[i].x = pad->at.at[0] + (i == 1 || i == 2 ? a : -a);
		out[i].y = pad->at.at[1] + (i >= 2 ? b : -b);
	}
	return 4;
}

void case_move(const struct base_case *from, double turn, bool mirror, double dx, double dy,
               struct base_case *to)
{
	struct motion motion = {cos(turn), sin(turn), mirror ? -1 : 1, dx, dy};
	case_clear(to);
	for (size_t i = 0; i < from->cell.base.count; i++) {
		const struct base_piece *piece = &from->piece[i];
		struct vec2 corner[CASE_CORNERS], hole[CASE_CORNERS];
		size_t count = piece->outline.count, holes = 0;
		if (count)
			move_ring(&motion, piece->outline.points, count, corner);
		else
			count = move_ring(&motion, corner, pad_corners(piece, corner), corner);
		if (piece->holes.count)
			holes = move_ring(&motion, from->hole_corner[i], from->hole[i].count, hole);
		case_outline(to, corner, count, holes ? hole : NULL, holes);
	}
	for (size_t i = 0; i < from->cell.anchors.count; i++) {
		struct vec2 at = moved(&motion, from->cell.anchors.at[i].x,
		                       from->cell.anchors.at[i].y);
		case_anchor(to, at.x, at.y);
	}
	to->bed_ratio = from->bed_ratio;
	struct motion turned = motion;
	turned.dx = from->load[0] * dx;
	turned.dy = from->load[0] * dy;
	struct vec2 moment = moved(&turned, from->load[1], from->load[2]);
	to->load[0] = from->load[0];
	to->load[1] = moment.x;
	to->load[2] = moment.y;
}
