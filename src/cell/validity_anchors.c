/* Anchors among themselves, on the base and on the slab. */
#include "../plane/plane.h"
#include "validity_parts.h"
#include <math.h>

/* Two holes nearer than this are one hole written twice [mm]. */
#define ONE_SPOT 1.0
/* On the rim counts as on the face: rounding of inches and metres [mm]. */
#define RIM 1e-6

static double span(struct vec2 a, struct vec2 b)
{
	return hypot(a.x - b.x, a.y - b.y);
}

/* One message an anchor: three on one spot are two faults, not three. */
static void check_spots(struct validity *validity)
{
	const struct anchors *anchors = &validity->cell->anchors;
	for (size_t i = 0; i < anchors->count; i++)
		for (size_t k = 0; k < i; k++) {
			double apart = span(anchors->at[i], anchors->at[k]);
			if (apart >= ONE_SPOT)
				continue;
			struct validity_path path = validity_row("anchors.at", i, "");
			validity_fault(validity, FAULT_GEOMETRY, anchors->at_mark[i], path.text,
			               "write each anchor once",
			               "anchors A%zu and A%zu stand on one spot (%s apart)", k + 1,
			               i + 1, validity_show(validity, apart, DIM_LENGTH).text);
			break;
		}
}

/* An anchor on the very rim of an opening still has steel on one side; one beyond it hangs in the
 * air. */
static double rim_distance(const struct ring *ring, struct vec2 point)
{
	double least = HUGE_VAL;
	for (size_t i = 0; i < ring->count; i++)
		least = fmin(least, plane_distance_to_segment(point, ring->points[i],
		                                              ring->points[(i + 1) % ring->count]));
	return least;
}

static bool in_opening(const struct base_piece *piece, struct vec2 point)
{
	const struct ring *hole = piece->holes.rows;
	for (size_t i = 0; i < piece->holes.count; i++)
		if (hole[i].count >= 3 && plane_contains(hole[i].points, hole[i].count, point, 0) &&
		    rim_distance(&hole[i], point) > RIM)
			return true;
	return false;
}

static bool on_pad(const struct base_piece *piece, struct vec2 point)
{
	return fabs(point.x - piece->at.at[0]) <= piece->size.at[0] / 2 + RIM &&
	       fabs(point.y - piece->at.at[1]) <= piece->size.at[1] / 2 + RIM;
}

enum stands { STANDS_ON, STANDS_IN_OPENING, STANDS_OUTSIDE };

/* The best place that any piece offers: an opening of one may be filled by another piece. */
static enum stands where(const struct list *base, struct vec2 point)
{
	const struct base_piece *piece = base->rows;
	enum stands stands = STANDS_OUTSIDE;
	for (size_t i = 0; i < base->count; i++) {
		const struct ring *outline = &piece[i].outline;
		if (!is_known(*outline)) {
			if (on_pad(&piece[i], point))
				return STANDS_ON;
			continue;
		}
		if (!plane_contains(outline->points, outline->count, point, RIM))
			continue;
		if (!in_opening(&piece[i], point))
			return STANDS_ON;
		stands = STANDS_IN_OPENING;
	}
	return stands;
}

/* Whether every face can be asked: a faulty one is reported and would make anchors look lost. */
static bool faces_are_whole(const struct list *base)
{
	const struct base_piece *piece = base->rows;
	for (size_t i = 0; i < base->count; i++) {
		bool outline = is_known(piece[i].outline) && piece[i].outline.count >= 3;
		if (!outline && !(is_known(piece[i].at) && is_known(piece[i].size)))
			return false;
	}
	return is_known(*base) && base->count > 0;
}

static void check_on_base(struct validity *validity)
{
	const struct cell *cell = validity->cell;
	bool lug = is_known(cell->anchors.lug) && cell->anchors.lug.value == YES;
	if (lug || !faces_are_whole(&cell->base))
		return;
	for (size_t i = 0; i < cell->anchors.count; i++) {
		enum stands stands = where(&cell->base, cell->anchors.at[i]);
		if (stands == STANDS_ON)
			continue;
		struct validity_path path = validity_row("anchors.at", i, "");
		validity_fault(validity, FAULT_GEOMETRY, cell->anchors.at_mark[i], path.text,
		               "check its place and the base; if it stands in a lug that does not "
		               "bear on the floor, write lug: yes",
		               "anchor A%zu stands %s", i + 1,
		               stands == STANDS_IN_OPENING ? "in an opening of the base"
		                                           : "outside the base");
	}
}

/* Cell axes to slab axes: turned anticlockwise about the cell's origin, then moved to where it
 * stands. */
static struct vec2 on_slab(const struct cell *cell, struct vec2 at)
{
	double c = cos(cell->turned.value), s = sin(cell->turned.value);
	return (struct vec2){cell->standing_at.at[0] + c * at.x - s * at.y,
	                     cell->standing_at.at[1] + s * at.x + c * at.y};
}

/* Only where all of it is known: a cell whose place is open is not off the slab. */
static void check_on_slab(struct validity *validity)
{
	const struct cell *cell = validity->cell;
	const struct ring *outline = &cell->slab.outline;
	if (!is_known(*outline) || outline->count < 3 || !is_known(cell->standing_at) ||
	    !is_known(cell->turned))
		return;
	for (size_t i = 0; i < cell->anchors.count; i++) {
		if (plane_contains(outline->points, outline->count,
		                   on_slab(cell, cell->anchors.at[i]), RIM))
			continue;
		struct validity_path path = validity_row("anchors.at", i, "");
		validity_fault(validity, FAULT_GEOMETRY, cell->anchors.at_mark[i], path.text,
		               "check cell: at, turned and the slab's outline", "anchor A%zu stands outside the slab", i + 1);
	}
}

/* Metres for millimetres make such a pattern; no cell is so wide [mm]. */
#define WIDEST_PATTERN 100e3

static void check_width(struct validity *validity)
{
	const struct anchors *anchors = &validity->cell->anchors;
	if (anchors->count == 0)
		return;
	struct vec2 low = anchors->at[0], high = low;
	for (size_t i = 1; i < anchors->count; i++) {
		struct vec2 at = anchors->at[i];
		low = (struct vec2){fmin(low.x, at.x), fmin(low.y, at.y)};
		high = (struct vec2){fmax(high.x, at.x), fmax(high.y, at.y)};
	}
	double width = fmax(high.x - low.x, high.y - low.y);
	if (width > WIDEST_PATTERN)
		validity_fault(validity, FAULT_RANGE, anchors->at_given.mark, "anchors.at",
		               "check the unit", "an anchor pattern %s wide",
		               validity_show(validity, width, DIM_LENGTH).text);
}

void validity_anchors(struct validity *validity)
{
	check_width(validity);
	check_spots(validity);
	check_on_base(validity);
	check_on_slab(validity);
}
