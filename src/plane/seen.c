/* What is seen of a square from its centre: the boundary is kept as pieces in the order of their
 * direction, each upon one line (a side of the square, an obstacle). An obstacle takes over the
 * directions in which it is the nearest. Along a line 1/distance is linear in the direction vector,
 * so that nothing is divided by a small number. */
#include "sight.h"
#include "turn.h"

#include <stdint.h>
#include <string.h>

/* Pieces of one boundary; more than the corners of any outline. Where they do not suffice the rest
 * counts as unseen. */
enum { MOST_PIECES = (PLANE_SEEN_MOST - 2) / 2, SIDES = 4 };
/* An obstacle so near to the centre (share of half the side) goes through it. */
#define THROUGH_SHARE 1e-9
/* Points nearer than this share of half the side are one vertex. */
#define SAME_SHARE 1e-13
/* An obstacle that is seen under less than this sine is seen end on: it hides nothing, and its line
 * is not known. */
#define END_ON_SINE 1e-12
#define UNSEEN SIZE_MAX

struct piece { struct vec2 from; size_t line; }; /* ends where the next one begins */

struct sight {
	struct vec2 centre, corner[SIDES];           /* corners from the centre */
	const struct segment *block;
	double half;
	size_t count, room;
	struct piece piece[MOST_PIECES];
};

static double cross(struct vec2 a, struct vec2 b) { return a.x * b.y - a.y * b.x; }
static struct vec2 minus(struct vec2 a, struct vec2 b)
{
	return (struct vec2){a.x - b.x, a.y - b.y};
}

static size_t piece_room(size_t blocks)
{
	/* straight segments around a point: a boundary of n has less than 6 n pieces for any n
	 * that fits (Davenport-Schinzel sequences of order 3) */
	size_t room = SIDES + 8 * blocks;
	return blocks > MOST_PIECES || room > MOST_PIECES ? MOST_PIECES : room;
}

size_t plane_seen_room(size_t blocks)
{
	return 2 * piece_room(blocks) + 2;
}

/* The line's ends from the centre, anticlockwise. */
static struct segment line_of(const struct sight *sight, size_t line)
{
	if (line < SIDES)
		return (struct segment){sight->corner[line], sight->corner[(line + 1) % SIDES]};
	struct vec2 a = minus(sight->block[line - SIDES].from, sight->centre),
	            b = minus(sight->block[line - SIDES].to, sight->centre);
	return cross(a, b) >= 0 ? (struct segment){a, b} : (struct segment){b, a};
}

/* 1/distance of the line in this direction, in units of the direction's length. */
static double nearness(const struct segment *line, struct vec2 direction)
{
	return cross(direction, minus(line->to, line->from)) / cross(line->from, line->to);
}

static bool within(struct vec2 direction, struct vec2 low, struct vec2 high)
{
	return cross(low, direction) >= 0 && cross(direction, high) >= 0;
}

/* Writes the line over [from, to] of piece k; without room the whole piece is given up. */
static void take_over(struct sight *sight, size_t k, struct vec2 from, struct vec2 to, size_t line)
{
	struct piece old = sight->piece[k];
	struct vec2 end = sight->piece[(k + 1) % sight->count].from;
	bool before = cross(old.from, from) > 0, after = cross(to, end) > 0;
	size_t more = (size_t)before + (size_t)after;
	if (sight->count + more > sight->room) {
		sight->piece[k].line = UNSEEN;
		return;
	}
	memmove(&sight->piece[k + 1 + more], &sight->piece[k + 1],
	        (sight->count - k - 1) * sizeof old);
	sight->count += more;
	if (before)
		k++;
	sight->piece[k] = (struct piece){before ? from : old.from, line};
	if (after)
		sight->piece[k + 1] = (struct piece){to, old.line};
}

/* The part of piece k in which the obstacle is nearer. */
static void hide_piece(struct sight *sight, size_t k, const struct segment *by, size_t line)
{
	struct vec2 from = sight->piece[k].from, to = sight->piece[(k + 1) % sight->count].from;
	if (sight->piece[k].line == UNSEEN)
		return;
	if (within(by->from, from, to))
		from = by->from;
	else if (!within(from, by->from, by->to))
		return;
	if (within(by->to, sight->piece[k].from, to))
		to = by->to;
	else if (!within(to, by->from, by->to))
		return;
	if (cross(from, to) <= 0)
		return;
	struct segment is = line_of(sight, sight->piece[k].line);
	double first = nearness(by, from) - nearness(&is, from),
	       last = nearness(by, to) - nearness(&is, to);
	if (first <= 0 && last <= 0)
		return;
	if (first * last < 0) {      /* they cross between */
		double share = first / (first - last);
		struct vec2 at = {from.x + share * (to.x - from.x),
		                  from.y + share * (to.y - from.y)};
		*(first > 0 ? &to : &from) = at;
		if (cross(from, to) <= 0)
			return;
	}
	take_over(sight, k, from, to, line);
}

/* One obstacle leaves one piece where it hid several in a row. */
static void merge_pieces(struct sight *sight)
{
	size_t kept = 1;
	for (size_t k = 1; k < sight->count; k++)
		if (sight->piece[k].line != sight->piece[kept - 1].line)
			sight->piece[kept++] = sight->piece[k];
	/* the first may go on from the last, but a piece must stay below half a turn */
	sight->count = kept;
}

static bool is_through(const struct sight *sight, const struct segment *block)
{
	return plane_distance_to_segment(sight->centre, block->from, block->to) <=
	       THROUGH_SHARE * sight->half;
}

static void hide(struct sight *sight, size_t block)
{
	struct segment by = line_of(sight, SIDES + block);
	double product = sqrt((by.from.x * by.from.x + by.from.y * by.from.y) *
	                      (by.to.x * by.to.x + by.to.y * by.to.y));
	if (!(cross(by.from, by.to) > END_ON_SINE * product))
		return;
	for (size_t k = sight->count; k-- > 0;)
		hide_piece(sight, k, &by, SIDES + block);
	merge_pieces(sight);
}

static void sight_open(struct sight *sight, double turned)
{
	struct vec2 u = plane_heading(turned);
	double c = sight->half * u.x, s = sight->half * u.y;
	sight->corner[0] = (struct vec2){c + s, s - c};
	for (int k = 1; k < SIDES; k++)
		sight->corner[k] = (struct vec2){-sight->corner[k - 1].y, sight->corner[k - 1].x};
	for (size_t k = 0; k < SIDES; k++)
		sight->piece[k] = (struct piece){sight->corner[k], k};
	sight->count = SIDES;
}

/* --- vertices ------------------------------------------------------------------------------- */

static size_t add_vertex(const struct sight *sight, struct vec2 from_centre, struct vec2 *out,
                         size_t count)
{
	struct vec2 point = {sight->centre.x + from_centre.x, sight->centre.y + from_centre.y};
	double same = SAME_SHARE * sight->half;
	if (count > 0 && fabs(point.x - out[count - 1].x) <= same &&
	    fabs(point.y - out[count - 1].y) <= same)
		return count;
	out[count] = point;
	return count + 1;
}

static struct vec2 upon(const struct segment *line, struct vec2 direction)
{
	double near = nearness(line, direction);
	return (struct vec2){direction.x / near, direction.y / near};
}

static size_t write_vertices(const struct sight *sight, struct vec2 *out)
{
	size_t count = 0;
	for (size_t k = 0; k < sight->count; k++) {
		struct vec2 from = sight->piece[k].from,
		            to = sight->piece[(k + 1) % sight->count].from;
		if (sight->piece[k].line == UNSEEN) {
			count = add_vertex(sight, (struct vec2){0, 0}, out, count);
			continue;
		}
		struct segment line = line_of(sight, sight->piece[k].line);
		count = add_vertex(sight, upon(&line, from), out, count);
		count = add_vertex(sight, upon(&line, to), out, count);
	}
	double same = SAME_SHARE * sight->half;
	bool closes = count > 1 && fabs(out[0].x - out[count - 1].x) <= same &&
	              fabs(out[0].y - out[count - 1].y) <= same;
	return closes ? count - 1 : count;
}

/* --- obstacles through the centre ----------------------------------------------------------- */

/* Where the edge a -> b meets the line through the centre; side_a and side_b are off the line. */
static struct vec2 cut(struct vec2 a, struct vec2 b, double side_a, double side_b)
{
	double share = side_a / (side_a - side_b);
	return (struct vec2){a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

/* Area of what lies left of the direction. */
static double area_left(const struct vec2 *ring, size_t n, struct vec2 centre, struct vec2 along)
{
	double twice = 0;
	for (size_t i = 0; i < n; i++) {
		struct vec2 a = minus(ring[i], centre), b = minus(ring[(i + 1) % n], centre);
		double side_a = cross(along, a), side_b = cross(along, b);
		if (side_a < 0 && side_b < 0)
			continue;
		if (side_a < 0)
			a = cut(a, b, side_a, side_b);
		else if (side_b < 0)
			b = cut(a, b, side_a, side_b);
		twice += cross(a, b);
	}
	return twice / 2;
}

static void reverse(struct vec2 *at, size_t count)
{
	for (size_t i = 0; i + i + 1 < count; i++) {
		struct vec2 keep = at[i];
		at[i] = at[count - 1 - i];
		at[count - 1 - i] = keep;
	}
}

/* Keeps what lies left. The ring is star-shaped about the centre, so that what is kept is one run
 * of its vertices. */
static size_t keep_left(struct vec2 *ring, size_t n, size_t room, struct vec2 centre,
                        struct vec2 along)
{
	size_t first = n, run = 0;
	for (size_t i = 0; i < n; i++)
		if (cross(along, minus(ring[i], centre)) >= 0 &&
		    cross(along, minus(ring[(i + n - 1) % n], centre)) < 0)
			first = i;
	if (first == n)  /* no vertex right of it, or none left */
		return n > 0 && cross(along, minus(ring[0], centre)) >= 0 ? n : 0;
	while (run < n && cross(along, minus(ring[(first + run) % n], centre)) >= 0)
		run++;
	struct vec2 before = ring[(first + n - 1) % n], start = ring[first],
	            end = ring[(first + run - 1) % n], after = ring[(first + run) % n];
	if (run + 2 > room)
		return 0;
	reverse(ring, first);
	reverse(ring + first, n - first);
	reverse(ring, n);
	ring[run] = cut(end, after, cross(along, minus(end, centre)),
	                cross(along, minus(after, centre)));
	ring[run + 1] = cut(before, start, cross(along, minus(before, centre)),
	                    cross(along, minus(start, centre)));
	return run + 2;
}

/* Of the two sides of the obstacle's line the one with less to see counts: the safe one. */
static size_t halve(const struct sight *sight, const struct segment *block, struct vec2 *out,
                    size_t count, size_t room)
{
	struct vec2 along = minus(block->to, block->from), back = {-along.x, -along.y};
	double left = area_left(out, count, sight->centre, along),
	       right = area_left(out, count, sight->centre, back);
	return keep_left(out, count, room, sight->centre, left <= right ? along : back);
}

size_t plane_seen(struct vec2 centre, double half, double turned, const struct segment *block,
                  size_t blocks, struct vec2 *out)
{
	struct sight sight = {
		.centre = centre, .half = half, .block = block, .room = piece_room(blocks)};
	double reach = half * 1.5;   /* more than half a diagonal */
	if (!(half > 0))
		return 0;
	sight_open(&sight, turned);
	for (size_t b = 0; b < blocks; b++)
		if (plane_distance_to_segment(centre, block[b].from, block[b].to) < reach &&
		    !is_through(&sight, &block[b]))
			hide(&sight, b);
	size_t count = write_vertices(&sight, out);
	for (size_t b = 0; b < blocks; b++)
		if (is_through(&sight, &block[b]))
			count = halve(&sight, &block[b], out, count, plane_seen_room(blocks));
	return count >= 3 ? count : 0;
}

/* Whether the boxes around two segments are apart; `slack` covers what counts as a touch. */
static bool far_apart(struct vec2 a, struct vec2 b, const struct segment *block, double slack)
{
	return fmin(a.x, b.x) > fmax(block->from.x, block->to.x) + slack ||
	       fmax(a.x, b.x) < fmin(block->from.x, block->to.x) - slack ||
	       fmin(a.y, b.y) > fmax(block->from.y, block->to.y) + slack ||
	       fmax(a.y, b.y) < fmin(block->from.y, block->to.y) - slack;
}

bool plane_sees(struct vec2 a, struct vec2 b, const struct segment *block, size_t blocks)
{
	double slack = 1e-9 * plane_span(a, b);
	for (size_t i = 0; i < blocks; i++) {
		struct vec2 from = block[i].from, to = block[i].to;
		/* a point hides nothing */
		if (far_apart(a, b, &block[i], slack) || (from.x == to.x && from.y == to.y))
			continue;
		bool meets = a.x == b.x && a.y == b.y ? plane_distance_to_segment(a, from, to) == 0
		                                      : plane_segments_meet(a, b, from, to);
		if (meets)
			return false;
	}
	return true;
}
