#include "contact.h"
#include "facets.h"
#include <math.h>
#include <string.h>

/* Corners nearer to the line of their neighbours are dropped [share of the outline's extent]. */
#define STRAIGHT_SHARE 1e-12

/* A box around points. */
struct box { double low[2], high[2]; };

static void box_add(struct box *box, struct vec2 at)
{
	box->low[0] = fmin(box->low[0], at.x);
	box->low[1] = fmin(box->low[1], at.y);
	box->high[0] = fmax(box->high[0], at.x);
	box->high[1] = fmax(box->high[1], at.y);
}

/* Adds a ring in mm; it is turned so that an outline runs anticlockwise and a hole clockwise. */
static enum status add_ring(struct base *base, struct arena *arena, const struct vec2 *ring,
                            size_t count, bool hole, size_t piece)
{
	if (base->ring_count == MAX_RINGS || count > MAX_VERTICES)
		return BAD_INPUT;
	struct vec2 *at = arena_take(arena, count, sizeof *at);
	if (!at)
		return NO_MEMORY;
	struct box box = {{HUGE_VAL, HUGE_VAL}, {-HUGE_VAL, -HUGE_VAL}};
	for (size_t i = 0; i < count; i++)
		box_add(&box, ring[i]);
	double extent = fmax(box.high[0] - box.low[0], box.high[1] - box.low[1]);
	count = plane_merge_straight(ring, count, STRAIGHT_SHARE * extent, at);
	double area = plane_area(at, count);
	if ((area < 0) != hole)
		for (size_t i = 0; i < count / 2; i++) {
			struct vec2 keep = at[i];
			at[i] = at[count - 1 - i];
			at[count - 1 - i] = keep;
		}
	base->area += hole ? -fabs(area) : fabs(area);
	struct bed_ring *ready = &base->ring[base->ring_count++];
	*ready = (struct bed_ring){.at = at, .count = count, .piece = (int)piece};
	return DONE;
}

static enum status add_pad(struct base *base, struct arena *arena, const struct base_piece *pad,
                           size_t piece)
{
	double x = pad->at.at[0], y = pad->at.at[1];
	double half[2] = {pad->size.at[0] / 2, pad->size.at[1] / 2};
	const struct vec2 corner[4] = {
		{x - half[0], y - half[1]}, {x + half[0], y - half[1]},
		{x + half[0], y + half[1]}, {x - half[0], y + half[1]},
	};
	return add_ring(base, arena, corner, 4, false, piece);
}

static enum status add_piece(struct base *base, struct arena *arena, const struct base_piece *piece,
                             size_t index)
{
	if (!is_known(piece->outline))
		return add_pad(base, arena, piece, index);
	enum status status = add_ring(base, arena, piece->outline.points, piece->outline.count,
	                              false, index);
	const struct ring *hole = piece->holes.rows;
	for (size_t i = 0; i < piece->holes.count && status == DONE; i++)
		status = add_ring(base, arena, hole[i].points, hole[i].count, true, index);
	return status;
}

static enum status find_hull(struct base *base, struct arena *arena)
{
	size_t count = 0, filled = 0;
	for (size_t i = 0; i < base->ring_count; i++)
		count += base->ring[i].count;
	struct vec2 *all = arena_take(arena, count, sizeof *all);
	base->hull = arena_take(arena, count, sizeof *base->hull);
	if (!all || !base->hull)
		return NO_MEMORY;
	for (size_t i = 0; i < base->ring_count; i++) {
		memcpy(all + filled, base->ring[i].at, base->ring[i].count * sizeof *all);
		filled += base->ring[i].count;
	}
	base->hull_count = plane_hull(all, count, base->hull);
	return DONE;
}

static struct vec2 scaled(const struct base *base, struct vec2 at)
{
	return (struct vec2){(at.x - base->centre[0]) / base->size,
	                     (at.y - base->centre[1]) / base->size};
}

/* Scaled coordinates lie within about -1 to 1, so that settlement and tilts are of one order. */
static void scale(struct base *base)
{
	struct box box = {{HUGE_VAL, HUGE_VAL}, {-HUGE_VAL, -HUGE_VAL}};
	for (size_t i = 0; i < base->hull_count; i++)
		box_add(&box, base->hull[i]);
	for (size_t i = 0; i < base->anchor_count; i++)
		box_add(&box, base->anchor_mm[i]);
	base->centre[0] = (box.low[0] + box.high[0]) / 2;
	base->centre[1] = (box.low[1] + box.high[1]) / 2;
	base->size = fmax(box.high[0] - box.low[0], box.high[1] - box.low[1]) / 2;
	for (size_t i = 0; i < base->ring_count; i++) {
		/* the rings are still this function's own to write */
		struct vec2 *at = (struct vec2 *)base->ring[i].at;
		for (size_t k = 0; k < base->ring[i].count; k++)
			at[k] = scaled(base, at[k]);
		contact_whole(&base->ring[i]);
	}
	for (size_t i = 0; i < base->anchor_count; i++)
		base->anchor[i] = scaled(base, base->anchor_mm[i]);
}

/* Centroid and polar moment of equal anchors (Shigley, 9th ed., 8-12). */
static void prepare_shear(struct base *base)
{
	double n = (double)base->anchor_count, x = 0, y = 0, polar = 0;
	if (base->anchor_count == 0)
		return;
	for (size_t i = 0; i < base->anchor_count; i++) {
		x += base->anchor_mm[i].x / n;
		y += base->anchor_mm[i].y / n;
	}
	for (size_t i = 0; i < base->anchor_count; i++) {
		double rx = base->anchor_mm[i].x - x, ry = base->anchor_mm[i].y - y;
		polar += rx * rx + ry * ry;
	}
	base->shear_centre[0] = x;
	base->shear_centre[1] = y;
	base->shear_polar = base->anchor_count > 1 ? polar : 0;
}

enum status base_prepare(const struct cell *cell, struct arena *arena, struct base *out)
{
	const struct base_piece *piece = cell->base.rows;
	enum status status = DONE;
	memset(out, 0, sizeof *out);
	out->piece_count = cell->base.count;
	for (size_t i = 0; i < cell->base.count && status == DONE; i++)
		status = add_piece(out, arena, &piece[i], i);
	if (status != DONE)
		return status;
	out->anchor_count = cell->anchors.count;
	memcpy(out->anchor_mm, cell->anchors.at, out->anchor_count * sizeof *out->anchor_mm);
	status = find_hull(out, arena);
	if (status != DONE)
		return status;
	scale(out);
	prepare_shear(out);
	return facets_find(out, arena);
}
