/* The cell from above, in characters: good enough to see a swapped sign or a wrong unit at a
 * glance. */
#include "show_parts.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

/* a character is about twice as high as wide; SUB sampling points a character in each direction */
enum { COLUMNS = 94, ROWS = 36, SUB = 3, LEFT = 2 };

static const char FACE = '.', SLAB_EDGE = '#', JOINT = '~', HOLE = 'o', ORIGIN = '+', MOUNT = 'M';

struct plan {
	double x, y;                       /* left and top of the window, cell axes [mm] */
	double step;                       /* width of a character [mm]; its height is twice that */
	int columns, rows;
	char at[ROWS + 1][COLUMNS + 1];
};

struct box { double least[2], most[2]; };

static void box_add(struct box *box, double x, double y)
{
	const double at[2] = {x, y};
	for (int k = 0; k < 2; k++) {
		box->least[k] = fmin(box->least[k], at[k]);
		box->most[k] = fmax(box->most[k], at[k]);
	}
}

static bool is_pad(const struct base_piece *piece)
{
	return piece->outline.count == 0 && is_known(piece->at) && is_known(piece->size);
}

/* The four corners of a pad, anticlockwise. */
static void pad_ring(const struct base_piece *pad, struct vec2 out[4])
{
	double hx = pad->size.at[0] / 2, hy = pad->size.at[1] / 2;
	const double *at = pad->at.at;
	out[0] = (struct vec2){at[0] - hx, at[1] - hy};
	out[1] = (struct vec2){at[0] + hx, at[1] - hy};
	out[2] = (struct vec2){at[0] + hx, at[1] + hy};
	out[3] = (struct vec2){at[0] - hx, at[1] + hy};
}

static struct box cell_box(const struct cell *cell)
{
	/* the origin is always in sight */
	struct box box = {{0, 0}, {0, 0}};
	const struct base_piece *pieces = cell->base.rows;
	for (size_t i = 0; i < cell->base.count; i++) {
		struct vec2 corners[4];
		for (size_t k = 0; k < pieces[i].outline.count; k++)
			box_add(&box, pieces[i].outline.points[k].x, pieces[i].outline.points[k].y);
		if (!is_pad(&pieces[i]))
			continue;
		pad_ring(&pieces[i], corners);
		for (int k = 0; k < 4; k++)
			box_add(&box, corners[k].x, corners[k].y);
	}
	for (size_t i = 0; i < cell->anchors.count; i++)
		box_add(&box, cell->anchors.at[i].x, cell->anchors.at[i].y);
	if (is_known(cell->arm.mount))
		box_add(&box, cell->arm.mount.at[0], cell->arm.mount.at[1]);
	return box;
}

static bool is_placed(const struct cell *cell)
{
	return is_known(cell->standing_at) && is_known(cell->turned);
}

static bool has_slab_marks(const struct cell *cell)
{
	const struct slab *slab = &cell->slab;
	return is_placed(cell) &&
	       (slab->outline.count > 0 || slab->joints.count > 0 || slab->old_holes.count > 0);
}

/* Smallest 1, 2 or 5 times a power of ten, in the unit of the page, at which all fits. */
static double choose_step(double width, double height, double unit)
{
	static const double factors[] = {1, 2, 5};
	for (double power = 0.01 * unit; power < 1e9; power *= 10)
		for (int i = 0; i < 3; i++) {
			double step = factors[i] * power;
			if (width / step <= COLUMNS - 4 && height / (2 * step) <= ROWS - 2)
				return step;
		}
	return 1e9;
}

/* With `around`, half the cell's size more on each side: near edges of the slab come into sight. */
static void plan_open(struct plan *plan, const struct cell *cell, double unit, bool around)
{
	struct box box = cell_box(cell);
	double width = box.most[0] - box.least[0], height = box.most[1] - box.least[1];
	double margin = around ? 0.5 * fmax(width, height) : 0;
	width += 2 * margin;
	height += 2 * margin;
	memset(plan->at, ' ', sizeof plan->at);
	plan->step = choose_step(width, height, unit);
	plan->columns = (int)ceil(width / plan->step) + 4;
	plan->rows = (int)ceil(height / (2 * plan->step)) + 2;
	plan->x = box.least[0] - margin - 2 * plan->step;
	plan->y = box.most[1] + margin + 2 * plan->step;
}

static void put(struct plan *plan, int row, int column, char c)
{
	if (row >= 0 && row < plan->rows && column >= 0 && column < plan->columns)
		plan->at[row][column] = c;
}

static int column_of(const struct plan *plan, double x)
{
	return (int)floor(fmin(fmax((x - plan->x) / plan->step, -1), COLUMNS));
}

static int row_of(const struct plan *plan, double y)
{
	return (int)floor(fmin(fmax((plan->y - y) / (2 * plan->step), -1), ROWS));
}

/* Where a ring crosses a level, inside turns to outside: the flips of the sampling points behind
 * it. */
static void flip(const struct plan *plan, const struct vec2 *ring, size_t count, double y,
                 bool flips[])
{
	const int samples = plan->columns * SUB;
	for (size_t i = 0; i < count; i++) {
		struct vec2 a = ring[i], b = ring[(i + 1) % count];
		if ((a.y > y) == (b.y > y))
			continue;
		double x = a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x);
		double sample = ceil((x - plan->x) / plan->step * SUB - 0.5);
		int first = sample < 0 ? 0 : sample > samples ? samples : (int)sample;
		flips[first] = !flips[first];
	}
}

static void fill_piece(struct plan *plan, const struct base_piece *piece)
{
	struct vec2 corners[4];
	const struct ring *holes = piece->holes.rows;
	for (int sub = 0; sub < plan->rows * SUB; sub++) {
		bool flips[(COLUMNS + 1) * SUB + 1] = {false}, inside = false;
		double y = plan->y - (sub + 0.5) * 2 * plan->step / SUB;
		flip(plan, piece->outline.points, piece->outline.count, y, flips);
		for (size_t k = 0; k < piece->holes.count; k++)
			flip(plan, holes[k].points, holes[k].count, y, flips);
		if (is_pad(piece)) {
			pad_ring(piece, corners);
			flip(plan, corners, 4, y, flips);
		}
		for (int i = 0; i < plan->columns * SUB; i++) {
			inside = inside != flips[i];
			if (inside)
				put(plan, sub / SUB, i / SUB, FACE);
		}
	}
}

/* Slab axes to cell axes. */
static struct vec2 to_cell(const struct cell *cell, struct vec2 slab)
{
	double x = slab.x - cell->standing_at.at[0], y = slab.y - cell->standing_at.at[1];
	double c = cos(cell->turned.value), s = sin(cell->turned.value);
	return (struct vec2){c * x + s * y, -s * x + c * y};
}

/* The part of a line from `from` to `to` within the window, as shares of its length
 * (Liang-Barsky). */
static bool clip(const struct plan *plan, struct vec2 from, struct vec2 to, double share[2])
{
	double right = plan->x + plan->columns * plan->step,
	       bottom = plan->y - 2 * plan->rows * plan->step;
	const double d[4] = {from.x - to.x, to.x - from.x, from.y - to.y, to.y - from.y};
	const double room[4] = {from.x - plan->x, right - from.x, from.y - bottom,
	                        plan->y - from.y};
	share[0] = 0;
	share[1] = 1;
	for (int i = 0; i < 4; i++) {
		if (d[i] < 0)
			share[0] = fmax(share[0], room[i] / d[i]);
		else if (d[i] > 0)
			share[1] = fmin(share[1], room[i] / d[i]);
		else if (room[i] < 0)
			return false;
	}
	return share[0] < share[1];
}

static void draw_line(struct plan *plan, struct vec2 from, struct vec2 to, char c)
{
	double share[2];
	if (!clip(plan, from, to, share))
		return;
	int steps = 2 * (plan->columns + 2 * plan->rows);
	for (int i = 0; i <= steps; i++) {
		double t = share[0] + (share[1] - share[0]) * i / steps;
		put(plan, row_of(plan, from.y + t * (to.y - from.y)),
		    column_of(plan, from.x + t * (to.x - from.x)), c);
	}
}

static void draw_slab(struct plan *plan, const struct cell *cell)
{
	const struct slab *slab = &cell->slab;
	const struct ring *outline = &slab->outline;
	const struct joint *joints = slab->joints.rows;
	const struct old_hole *holes = slab->old_holes.rows;
	if (!has_slab_marks(cell))
		return;
	for (size_t i = 0; i < outline->count; i++)
		draw_line(plan, to_cell(cell, outline->points[i]),
		          to_cell(cell, outline->points[(i + 1) % outline->count]), SLAB_EDGE);
	for (size_t i = 0; i < slab->joints.count; i++)
		draw_line(plan,
		          to_cell(cell, (struct vec2){joints[i].from.at[0], joints[i].from.at[1]}),
		          to_cell(cell, (struct vec2){joints[i].to.at[0], joints[i].to.at[1]}),
		          JOINT);
	for (size_t i = 0; i < slab->old_holes.count; i++) {
		struct vec2 at = to_cell(cell, (struct vec2){holes[i].at.at[0], holes[i].at.at[1]});
		put(plan, row_of(plan, at.y), column_of(plan, at.x), HOLE);
	}
}

static void draw_axes(struct plan *plan)
{
	int row = row_of(plan, 0), column = column_of(plan, 0);
	put(plan, row, column + 1, '-');
	put(plan, row, column + 2, '-');
	put(plan, row, column + 3, 'x');
	put(plan, row - 1, column, '|');
	put(plan, row - 2, column, 'y');
	put(plan, row, column, ORIGIN);
}

static void draw_anchors(struct plan *plan, const struct cell *cell)
{
	for (size_t i = 0; i < cell->anchors.count; i++) {
		char id[32];
		struct vec2 at = cell->anchors.at[i];
		int row = row_of(plan, at.y), column = column_of(plan, at.x);
		int length = snprintf(id, sizeof id, "A%zu", i + 1);
		/* the letter stands on the anchor; at the right edge the id moves in whole */
		if (column + length > plan->columns)
			column = plan->columns - length;
		for (int k = 0; k < length; k++)
			put(plan, row, column + k, id[k]);
	}
}

static void write_rows(struct writer *writer, const struct plan *plan)
{
	for (int row = 0; row < plan->rows; row++) {
		int last = plan->columns;
		while (last > 0 && plan->at[row][last - 1] == ' ')
			last--;
		if (last > 0)
			writer_pad(writer, LEFT);
		writer_bytes(writer, plan->at[row], (size_t)last);
		writer_newline(writer);
	}
}

static bool is_drawn(const struct plan *plan, char c)
{
	for (int row = 0; row < plan->rows; row++)
		if (memchr(plan->at[row], c, (size_t)plan->columns))
			return true;
	return false;
}

static void legend(struct writer *writer, const struct plan *plan, const struct cell *cell,
                   enum unit_system units)
{
	flow_begin(writer, LEFT);
	flow(writer, "one character is ");
	flow(writer, phrase_quantity(plan->step, DIM_LENGTH, units, 3).text);
	flow(writer, " wide and ");
	flow(writer, phrase_quantity(2 * plan->step, DIM_LENGTH, units, 3).text);
	flow(writer, " high; axes x and y begin at the origin");
	flow(writer, is_drawn(plan, FACE) ? ", . bears on the floor" : "");
	flow(writer, cell->anchors.count > 0 ? ", A anchors" : "");
	flow(writer, is_known(cell->arm.mount) ? ", M mounting face" : "");
	flow(writer, is_drawn(plan, SLAB_EDGE) ? ", # edge of the slab" : "");
	flow(writer, is_drawn(plan, JOINT) ? ", ~ joint" : "");
	flow(writer, is_drawn(plan, HOLE) ? ", o old hole" : "");
	if (has_slab_marks(cell) && !is_drawn(plan, SLAB_EDGE) && !is_drawn(plan, JOINT) &&
	    !is_drawn(plan, HOLE))
		flow(writer, "; edges, joints and old holes lie outside");
	flow_end(writer);
}

void show_plan(struct writer *writer, const struct cell *cell)
{
	struct plan plan;
	enum unit_system units = cell->show.value == UNITS_US ? UNITS_US : UNITS_METRIC;
	const struct base_piece *pieces = cell->base.rows;
	if (cell->base.count == 0 && cell->anchors.count == 0)
		return;
	double unit = quantity_display_unit(DIM_LENGTH, units)->factor;
	writer_title(writer, "Plan, cell axes");
	plan_open(&plan, cell, unit, has_slab_marks(cell));
	draw_slab(&plan, cell);
	if (!is_drawn(&plan, SLAB_EDGE) && !is_drawn(&plan, JOINT) && !is_drawn(&plan, HOLE))
		plan_open(&plan, cell, unit, false);
	for (size_t i = 0; i < cell->base.count; i++)
		fill_piece(&plan, &pieces[i]);
	draw_slab(&plan, cell);
	draw_axes(&plan);
	if (is_known(cell->arm.mount))
		put(&plan, row_of(&plan, cell->arm.mount.at[1]),
		    column_of(&plan, cell->arm.mount.at[0]), MOUNT);
	draw_anchors(&plan, cell);
	write_rows(writer, &plan);
	legend(writer, &plan, cell, units);
}
