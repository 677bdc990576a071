/* The anchor pattern: points, a grid or a circle. */
#include "read.h"
#include <math.h>
#include <stdio.h>

/* Numbers of a grid or circle are read as fields, so that they have ranges and examples as all
 * others. */
static const struct field columns = {.path = "columns",
                                     .kind = FIELD_NUMBER,
                                     .dimension = DIM_COUNT,
                                     .low = 1,
                                     .high = MAX_ANCHORS,
                                     .example = "3"};
static const struct field rows = {.path = "rows", .kind = FIELD_NUMBER, .dimension = DIM_COUNT,
	.low = 1, .high = MAX_ANCHORS, .example = "2"};
static const struct field step = {.path = "step", .kind = FIELD_POINT2, .dimension = DIM_LENGTH,
	.low = 0, .high = 1e6, .example = "[450 mm, 700 mm]"};
static const struct field centre = {.path = "centre", .kind = FIELD_POINT2, .dimension = DIM_LENGTH,
	.low = -1e6, .high = 1e6, .example = "[0 mm, 0 mm]"};
static const struct field count = {.path = "count", .kind = FIELD_NUMBER, .dimension = DIM_COUNT,
	.low = 1, .high = MAX_ANCHORS, .example = "6"};
static const struct field radius = {.path = "radius", .kind = FIELD_NUMBER, .dimension = DIM_LENGTH,
	.low = 1, .high = 1e6, .example = "300 mm"};
static const struct field first = {.path = "first", .kind = FIELD_NUMBER, .dimension = DIM_ANGLE,
	.low = -6.283185307179587, .high = 6.283185307179587, .example = "0 deg"};

/* Whether a key that is nearly this one stands there: it has been reported as unknown, with this
 * one named. */
static bool is_misspelt(const struct field *field, const struct node *map)
{
	size_t apart;
	for (const struct node *node = map->first; node; node = node->next)
		if (word_is_near(node->key, field->path, &apart))
			return true;
	return false;
}

/* A key of the map that must be known; NULL after a fault. */
static const struct node *need(struct reader *reader, const struct field *field,
                               const struct node *map, const struct place *place)
{
	const struct node *node = node_find(map, field->path);
	if (node && !node_is_blank(node))
		return node;
	if (!node && is_misspelt(field, map))
		return NULL;
	char hint[DIAGNOSTIC_HINT];
	snprintf(hint, sizeof hint, "write it as %s: %s", field->path, field->example);
	read_fault(reader, FAULT_MISSING_KEY, node ? node->mark : map->mark, place, hint,
	           "the key '%s' is missing", field->path);
	return NULL;
}

static bool need_number(struct reader *reader, const struct field *field, const struct node *map,
                        const struct place *place, double *out)
{
	const struct node *node = need(reader, field, map, place);
	struct place here = place_key(place, field->path);
	return node && !read_cut_number(reader, field, node, &here) &&
	       read_value(reader, field, node, NULL, &here, out);
}

/* A single unknown number leaves no pattern; at: unknown says that honestly. */
static bool need_point(struct reader *reader, const struct field *field, const struct node *map,
                       const struct place *place, struct vec2 *out)
{
	const struct node *node = need(reader, field, map, place);
	if (!node)
		return false;
	struct place here = place_key(place, field->path);
	struct point point;
	size_t errors = reader->to->errors;
	read_point(reader, field, node, &here, 2, &point);
	*out = (struct vec2){point.at[0], point.at[1]};
	if (!is_known(point) && reader->to->errors == errors)
		read_fault(reader, FAULT_MISSING_KEY, node->mark, &here,
		           "write at: unknown for a pattern that is not known",
		           "a pattern needs both numbers");
	return is_known(point);
}

static void set(struct anchors *out, size_t i, double x, double y, struct mark mark)
{
	/* what is zero but for rounding, as the cosine of a right angle, is zero: a millionth of a
	 * micrometre */
	out->at[i] = (struct vec2){fabs(x) < 1e-9 ? 0 : x, fabs(y) < 1e-9 ? 0 : y};
	out->at_mark[i] = mark;
}

/* A1 has the least x and y; along x first. */
static size_t read_grid(struct reader *reader, const struct node *map, const struct place *place,
                        struct anchors *out)
{
	static const char *const keys[] = {"columns", "rows", "step", "centre", NULL};
	double nx = 0, ny = 0;
	struct vec2 by = {0, 0}, middle = {0, 0};
	read_check_keys(reader, map, place, keys);
	bool good = need_number(reader, &columns, map, place, &nx);
	good = need_number(reader, &rows, map, place, &ny) && good;
	good = need_point(reader, &step, map, place, &by) && good;
	good = need_point(reader, &centre, map, place, &middle) && good;
	if (good && nx * ny > MAX_ANCHORS) {
		read_fault(reader, FAULT_SIZE, map->mark, place, "",
		           "%d anchors, at most %d can be taken", (int)(nx * ny), MAX_ANCHORS);
		good = false;
	}
	if (!good)
		return 0;
	size_t n = 0;
	for (int row = 0; row < (int)ny; row++)
		for (int column = 0; column < (int)nx; column++, n++)
			/* halves of whole steps, so that a centred grid is symmetric to the last
			 * bit */
			set(out, n, middle.x + (2 * column - (nx - 1)) * by.x / 2,
			    middle.y + (2 * row - (ny - 1)) * by.y / 2, map->mark);
	return n;
}

/* A1 stands at the angle `first`; anticlockwise. */
static size_t read_circle(struct reader *reader, const struct node *map, const struct place *place,
                          struct anchors *out)
{
	static const char *const keys[] = {"count", "radius", "first", "centre", NULL};
	double n = 0, r = 0, from = 0;
	struct vec2 middle = {0, 0};
	read_check_keys(reader, map, place, keys);
	bool good = need_number(reader, &count, map, place, &n);
	good = need_number(reader, &radius, map, place, &r) && good;
	good = need_number(reader, &first, map, place, &from) && good;
	good = need_point(reader, &centre, map, place, &middle) && good;
	if (!good)
		return 0;
	for (int i = 0; i < (int)n; i++) {
		double angle = from + 2 * 3.14159265358979323846 * i / n;
		set(out, (size_t)i, middle.x + r * cos(angle), middle.y + r * sin(angle),
		    map->mark);
	}
	return (size_t)n;
}

static size_t read_places(struct reader *reader, const struct field *field, const struct node *node,
                          const struct place *place, struct anchors *out)
{
	const struct unit *unit;
	bool blank = false;
	const struct node *list = read_points_map(reader, field, node, place, &unit);
	struct place here = node->kind == NODE_MAP ? place_key(place, "points") : *place;
	if (!list ||
	    !read_points(reader, field, list, unit, &here, out->at, out->at_mark, &blank) || blank)
		return 0;
	return list->count;
}

/* Whatever goes wrong, count stays 0, so that half a pattern is never judged. */
void read_pattern(struct reader *reader, const struct field *field, const struct node *node,
                  const struct place *place, struct anchors *out)
{
	out->at_given = (struct given){.mark = node->mark};
	const struct node *grid = node_find(node, "grid"), *circle = node_find(node, "circle");
	const struct node *chosen = grid ? grid : circle;
	struct place here = place_key(place, grid ? "grid" : "circle");
	if (!chosen)
		out->count = read_places(reader, field, node, place, out);
	else if (node->count > 1)
		read_fault(reader, FAULT_CONTRADICTION, node->mark, place,
		           "keep one of {unit, points}, {grid} and {circle}", "a grid or circle stands beside other keys");
	else if (node_is_blank(chosen))
		out->count = 0;
	else if (chosen->kind != NODE_MAP)
		read_shape_fault(
			reader, chosen, &here, "a map of keys",
			grid ? "{columns: 3, rows: 2, step: [450 mm, 700 mm], centre: [0 mm, 0 mm]}"
			     : "{count: 6, radius: 300 mm, first: 0 deg, centre: [0 mm, 0 mm]}");
	else
		out->count = grid ? read_grid(reader, chosen, &here, out)
		                  : read_circle(reader, chosen, &here, out);
	if (out->count > 0)
		out->at_given.origin = GIVEN;
}
