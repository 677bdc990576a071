/* Outlines, openings and pads of the base; outline and joints of the slab. */
#include "../plane/plane.h"
#include "validity_parts.h"
#include <math.h>

/* An outline whose area is below this share of its extent squared is a line. */
#define FLAT_SHARE 1e-9
/* Edges meant to lie on one another may differ by the rounding of inches and metres [mm]. */
#define TOUCH 1e-6

/* Two wheels nearer than this are one wheel written twice [mm]. */
#define ONE_WHEEL 1.0

/* Metres for millimetres make such a base; no cell is so wide [mm]. */
#define WIDEST_BASE 100e3

struct extent { struct vec2 low, high; };

static struct extent extent_of(const struct vec2 *points, size_t count)
{
	struct extent extent = {points[0], points[0]};
	for (size_t i = 1; i < count; i++) {
		extent.low.x = fmin(extent.low.x, points[i].x);
		extent.low.y = fmin(extent.low.y, points[i].y);
		extent.high.x = fmax(extent.high.x, points[i].x);
		extent.high.y = fmax(extent.high.y, points[i].y);
	}
	return extent;
}

/* Most pieces are far from each other; their boxes tell it at once. */
static bool apart(const struct extent *a, const struct extent *b)
{
	return a->high.x <= b->low.x || b->high.x <= a->low.x || a->high.y <= b->low.y ||
	       b->high.y <= a->low.y;
}

/* Judged against the size of the figure, so that a small pad is not taken for a line. */
static bool is_flat(const struct vec2 *points, size_t count)
{
	struct extent extent = extent_of(points, count);
	double size = fmax(extent.high.x - extent.low.x, extent.high.y - extent.low.y);
	return fabs(plane_area(points, count)) <= FLAT_SHARE * size * size;
}

bool validity_ring(struct validity *validity, const struct vec2 *points, size_t count,
                   struct mark mark, const char *path)
{
	if (count < 3)
		validity_fault(validity, FAULT_GEOMETRY, mark, path,
		               "write three points or more, going round",
		               "an outline of %zu points", count);
	/* points on a line run back upon themselves and would cross too: the sentence on area is
	 * the clearer one */
	else if (is_flat(points, count))
		validity_fault(
			validity, FAULT_GEOMETRY, mark, path,
			"write the points in order, going round once",
			"an outline without area: its points lie on a line, or it crosses itself");
	else if (plane_self_crossing(points, count))
		validity_fault(validity, FAULT_GEOMETRY, mark, path,
		               "write the points in order, going round once",
		               "an outline that crosses or touches itself");
	else
		return true;
	return false;
}

/* One bearing face: the outline or the four corners of a pad. */
struct face {
	const struct vec2 *points;
	size_t count;
	struct extent extent;
	struct vec2 corner[4];
	bool good;
};

static void pad_corners(const struct base_piece *piece, struct vec2 out[4])
{
	double x = piece->at.at[0], y = piece->at.at[1];
	double dx = piece->size.at[0] / 2, dy = piece->size.at[1] / 2;
	out[0] = (struct vec2){x - dx, y - dy};
	out[1] = (struct vec2){x + dx, y - dy};
	out[2] = (struct vec2){x + dx, y + dy};
	out[3] = (struct vec2){x - dx, y + dy};
}

static struct mark piece_mark(const struct validity *validity, const struct base_piece *piece)
{
	struct mark mark = validity_mark(piece->outline.given.mark, piece->at.given.mark);
	mark = validity_mark(mark, piece->size.given.mark);
	mark = validity_mark(mark, piece->name.given.mark);
	return validity_mark(mark, validity->cell->base.given.mark);
}

/* An outline, or a pad with place and size: one of them, and whole. */
static bool check_kind(struct validity *validity, const struct base_piece *piece, size_t index)
{
	bool outline = is_known(piece->outline), at = is_known(piece->at),
	     size = is_known(piece->size);
	struct validity_path path = validity_row("cell.base", index, "");
	struct mark mark = piece_mark(validity, piece);
	if (outline && (at || size))
		validity_fault(validity, FAULT_CONTRADICTION, mark, path.text,
		               "keep outline, or at and size",
		               "a piece of the base with an outline and a pad");
	else if (!outline && !(at && size))
		validity_fault(validity, FAULT_MISSING_KEY, mark, path.text,
		               "write outline, or at and size; if the base is not known, write base: unknown",
		               "a piece of the base without %s",
		               at ? "its size" : size ? "its place" : "an outline or a pad");
	else if (!outline && piece->holes.count > 0)
		validity_fault(validity, FAULT_CONTRADICTION, piece->holes.given.mark, path.text,
		               "write the pad as an outline", "a pad with openings");
	else
		return true;
	return false;
}

static bool check_pad(struct validity *validity, const struct base_piece *piece, size_t index)
{
	if (piece->size.at[0] > 0 && piece->size.at[1] > 0)
		return true;
	struct validity_path path = validity_row("cell.base", index, "size");
	validity_fault(validity, FAULT_RANGE, piece->size.given.mark, path.text,
	               "write two lengths above 0", "a pad without area");
	return false;
}

/* Touching counts: what touches is not inside. */
static bool edges_meet(const struct vec2 *a, size_t na, const struct vec2 *b, size_t nb)
{
	for (size_t i = 0; i < na; i++)
		for (size_t k = 0; k < nb; k++)
			if (plane_segments_meet(a[i], a[(i + 1) % na], b[k], b[(k + 1) % nb]))
				return true;
	return false;
}

/* Strictly inside: no edge reaches the other's. */
static bool is_inside(const struct vec2 *inner, size_t ni, const struct vec2 *outer, size_t no)
{
	return plane_contains(outer, no, inner[0], 0) && !edges_meet(inner, ni, outer, no);
}

/* An opening that reaches out of its outline, or into another opening, would be taken off the area
 * twice. */
static bool check_holes(struct validity *validity, const struct base_piece *piece, size_t index)
{
	const struct ring *hole = piece->holes.rows;
	struct validity_path list = validity_row("cell.base", index, "holes");
	bool good = true;
	for (size_t i = 0; i < piece->holes.count; i++) {
		struct validity_path path = validity_row(list.text, i, "");
		if (!is_known(hole[i]) || !validity_ring(validity, hole[i].points, hole[i].count,
		                                         hole[i].given.mark, path.text)) {
			good = false;
			continue;
		}
		if (!is_inside(hole[i].points, hole[i].count, piece->outline.points,
		               piece->outline.count)) {
			validity_fault(validity, FAULT_GEOMETRY, hole[i].given.mark, path.text,
			               "move it inside, or draw the outline around it", "an opening that is not inside its outline");
			good = false;
		}
		for (size_t k = 0; k < i && good; k++)
			if (plane_rings_overlap(hole[i].points, hole[i].count, hole[k].points,
			                        hole[k].count)) {
				validity_fault(validity, FAULT_GEOMETRY, hole[i].given.mark,
				               path.text, "draw them as one opening",
				               "openings %zu and %zu overlap", k + 1, i + 1);
				good = false;
			}
	}
	return good;
}

/* With an open gap below it an outline bears on nothing. */
static void check_gap(struct validity *validity, const struct base_piece *piece, size_t index)
{
	const struct stand_off *gap = &validity->cell->stand_off;
	bool open = is_known(gap->height) && gap->height.value > 0 && is_known(gap->filled) &&
	            gap->filled.value == NO;
	bool shims = is_known(piece->touches) && piece->touches.value == TOUCHES_SHIMS;
	if (!open || shims || !is_known(piece->outline))
		return;
	struct validity_path path = validity_row("cell.base", index, "outline");
	validity_fault(validity, FAULT_CONTRADICTION, piece->outline.given.mark, path.text,
	               "write the shims as pads with at and size, or touches: shims if the whole outline is shimmed",
	               "an outline over an open stand-off touches nothing");
}

static void check_piece(struct validity *validity, const struct base_piece *piece, size_t index,
                        struct face *face)
{
	if (!check_kind(validity, piece, index))
		return;
	if (!is_known(piece->outline)) {
		face->good = check_pad(validity, piece, index);
		pad_corners(piece, face->corner);
		face->points = face->corner;
		face->count = 4;
	} else {
		struct validity_path path = validity_row("cell.base", index, "outline");
		face->points = piece->outline.points;
		face->count = piece->outline.count;
		face->good = validity_ring(validity, face->points, face->count,
		                           piece->outline.given.mark, path.text) &&
		             check_holes(validity, piece, index);
	}
	if (face->good)
		face->extent = extent_of(face->points, face->count);
}

/* A pad may stand in the opening of a frame; it may touch the rim. */
static bool stands_in_hole(const struct base_piece *frame, const struct face *face)
{
	const struct ring *hole = frame->holes.rows;
	for (size_t i = 0; i < frame->holes.count; i++) {
		bool inside = true;
		for (size_t k = 0; k < face->count && inside; k++) {
			struct vec2 a = face->points[k], b = face->points[(k + 1) % face->count];
			struct vec2 middle = {(a.x + b.x) / 2, (a.y + b.y) / 2};
			inside = plane_contains(hole[i].points, hole[i].count, a, TOUCH) &&
			         plane_contains(hole[i].points, hole[i].count, middle, TOUCH);
		}
		if (inside)
			return true;
	}
	return false;
}

/* Where two pieces overlap the bed would press twice on the same floor. */
static void check_overlap(struct validity *validity, const struct face *face, size_t count)
{
	const struct base_piece *piece = validity->cell->base.rows;
	for (size_t i = 0; i < count; i++)
		for (size_t k = 0; k < i; k++) {
			if (!face[i].good || !face[k].good ||
			    apart(&face[i].extent, &face[k].extent) ||
			    !plane_rings_overlap(face[i].points, face[i].count, face[k].points,
			                         face[k].count) ||
			    stands_in_hole(&piece[i], &face[k]) ||
			    stands_in_hole(&piece[k], &face[i]))
				continue;
			struct validity_path path = validity_row("cell.base", i, "");
			validity_fault(validity, FAULT_GEOMETRY, piece_mark(validity, &piece[i]),
			               path.text, "draw them as one outline, or move one",
			               "pieces %zu and %zu of the base overlap", k + 1, i + 1);
			/* one sentence a piece is enough */
			break;
		}
}

/* All pieces together. */
static void check_base_width(struct validity *validity, const struct face *face, size_t count)
{
	struct extent all = {{HUGE_VAL, HUGE_VAL}, {-HUGE_VAL, -HUGE_VAL}};
	for (size_t i = 0; i < count; i++) {
		if (!face[i].good)
			continue;
		all.low.x = fmin(all.low.x, face[i].extent.low.x);
		all.low.y = fmin(all.low.y, face[i].extent.low.y);
		all.high.x = fmax(all.high.x, face[i].extent.high.x);
		all.high.y = fmax(all.high.y, face[i].extent.high.y);
	}
	double width = fmax(all.high.x - all.low.x, all.high.y - all.low.y);
	if (width > WIDEST_BASE)
		validity_fault(validity, FAULT_RANGE, validity->cell->base.given.mark, "cell.base",
		               "check the unit", "a base %s wide",
		               validity_show(validity, width, DIM_LENGTH).text);
}

void validity_base(struct validity *validity)
{
	const struct list *base = &validity->cell->base;
	const struct base_piece *piece = base->rows;
	if (!is_known(*base) || base->count == 0)
		return;
	for (size_t i = 0; i < base->count; i++)
		check_gap(validity, &piece[i], i);
	/* a setup that leaves the base as it is has the very rows of the cell */
	if (validity->of && validity->of->base.rows == base->rows)
		return;
	struct face *face = arena_take(validity->scratch, base->count, sizeof *face);
	if (!face)
		return;
	for (size_t i = 0; i < base->count; i++)
		check_piece(validity, &piece[i], i, &face[i]);
	check_overlap(validity, face, base->count);
	check_base_width(validity, face, base->count);
}

/* Half a wheel is none: it would take a support away, or its swivel, in silence. */
static void check_caster(struct validity *validity, const struct caster *caster, size_t index)
{
	struct validity_path path = validity_row("cell.casters", index, "");
	struct mark mark = validity_mark(caster->at.given.mark, caster->trail.given.mark);
	mark = validity_mark(mark, validity->cell->casters.given.mark);
	if (!is_known(caster->at))
		validity_fault(validity, FAULT_MISSING_KEY, mark, path.text,
		               "write at, its swivel axis; if the places of the wheels are not "
		               "known, write casters: unknown",
		               "a caster without its place");
	else if (!is_known(caster->trail))
		validity_fault(validity, FAULT_MISSING_KEY, mark, path.text,
		               "write trail: 0 mm for a fixed wheel or a foot, else measure it",
		               "a caster without its trail");
}

/* Two rows of one wheel: most often a sign was forgotten. */
static void check_caster_spots(struct validity *validity)
{
	const struct list *casters = &validity->cell->casters;
	const struct caster *caster = casters->rows;
	for (size_t i = 0; i < casters->count; i++)
		for (size_t k = 0; k < i; k++) {
			double x = caster[i].at.at[0] - caster[k].at.at[0];
			double y = caster[i].at.at[1] - caster[k].at.at[1];
			if (!is_known(caster[i].at) || !is_known(caster[k].at) ||
			    hypot(x, y) >= ONE_WHEEL)
				continue;
			validity_fault(validity, FAULT_GEOMETRY, caster[i].at.given.mark,
			               validity_row("cell.casters", i, "at").text,
			               "write each wheel once; check the signs of its place",
			               "casters %zu and %zu stand on one spot", k + 1, i + 1);
			break;
		}
}

/* The arm's mounting face and the parts lie below the highest part, or it is not the highest. */
static void check_top(struct validity *validity)
{
	const struct cell *cell = validity->cell;
	const struct part *part = cell->parts.rows;
	double height = is_known(cell->arm.mount) ? cell->arm.mount.at[2] : 0;
	if (!is_known(cell->top))
		return;
	for (size_t i = 0; i < cell->parts.count; i++) {
		height = is_known(part[i].at) ? fmax(height, part[i].at.at[2]) : height;
		height = is_known(part[i].box_to) ? fmax(height, part[i].box_to.at[2]) : height;
	}
	if (height > cell->top.value + TOUCH)
		validity_fault(validity, FAULT_CONTRADICTION, cell->top.given.mark, "cell.top",
		               "write the height of the highest part, from the floor",
		               "the top, %s, is below a part or the arm's mounting face at %s",
		               validity_show_number(validity, &cell->top, DIM_LENGTH).text,
		               validity_show(validity, height, DIM_LENGTH).text);
}

void validity_casters(struct validity *validity)
{
	const struct list *casters = &validity->cell->casters;
	const struct caster *caster = casters->rows;
	for (size_t i = 0; i < casters->count; i++)
		check_caster(validity, &caster[i], i);
	check_caster_spots(validity);
	check_top(validity);
}

/* A joint is an edge for anchors; one without a place would be an edge nowhere, and pass unseen. */
static void check_joint(struct validity *validity, const struct joint *joint, size_t index)
{
	struct validity_path path = validity_row("slab.joints", index, "");
	struct mark mark = validity_mark(joint->from.given.mark, joint->to.given.mark);
	mark = validity_mark(mark, validity_mark(joint->type.given.mark,
	                                         validity->cell->slab.joints.given.mark));
	if (!is_known(joint->from) || !is_known(joint->to))
		validity_fault(validity, FAULT_MISSING_KEY, mark, path.text,
		               "write from and to; if the place of a joint is not known, write joints: unknown",
		               "a joint without both ends");
	else if (joint->from.at[0] == joint->to.at[0] && joint->from.at[1] == joint->to.at[1])
		validity_fault(validity, FAULT_GEOMETRY, mark, path.text,
		               "write two different ends", "a joint without length");
}

void validity_slab(struct validity *validity)
{
	const struct slab *slab = &validity->cell->slab;
	bool shared = validity->of && validity->of->slab.outline.points == slab->outline.points;
	if (is_known(slab->outline) && slab->outline.count > 0 && !shared)
		validity_ring(validity, slab->outline.points, slab->outline.count,
		              slab->outline.given.mark, "slab.outline");
	const struct joint *joint = slab->joints.rows;
	for (size_t i = 0; i < slab->joints.count; i++)
		check_joint(validity, &joint[i], i);
}
