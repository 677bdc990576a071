/* Points, outlines, and the unit that a list of them may name once. */
#include "read.h"
#include <stdio.h>
#include <string.h>

/* Whether no space follows the comma between these two: "8,5" rather than "8, 5". */
static bool is_tight(const struct node *a, const struct node *b)
{
	return a->kind == NODE_SCALAR && a->mark.line == b->mark.line &&
	       b->mark.column == a->mark.column + a->mark.width + 1;
}

static bool is_bare(const struct node *node)
{
	double ignored;
	return node->kind == NODE_SCALAR &&
	       quantity_parse_bare(node->text, node->length, NULL, &ignored) == QUANTITY_OK;
}

/* The first half of a number that its decimal comma cuts in two. It shows by its second half alone
 * having a unit, and by its comma alone having no space behind it; where there is a value too many,
 * one of the two is enough. */
static const struct node *find_cut(const struct node *list, size_t size)
{
	const struct node *cut = NULL;
	bool loose = false;
	for (const struct node *node = list->first; node && node->next; node = node->next) {
		bool tight = is_tight(node, node->next);
		loose = loose || !tight;
		if (tight && !cut && node->next->kind == NODE_SCALAR &&
		    read_is_cut(node, node->next->text))
			cut = node;
	}
	if (!cut || list->count < size)
		return NULL;
	bool unit = !is_bare(cut->next);
	return list->count > size ? (unit || loose ? cut : NULL) : unit && loose ? cut : NULL;
}

static void wrong_count(struct reader *reader, const struct field *field, const struct node *node,
                        const struct place *place, size_t size)
{
	const struct node *first = node->first;
	const char *hint = field->example;
	if (node->count == 1 && first->kind == NODE_SCALAR && strchr(first->text, ';'))
		hint = "separate with a comma";
	else if (node->count > size)
		hint = size == 2 ? "a point here has x and y only"
		                 : "write decimals with a point: a comma begins the next number";
	read_fault(reader, FAULT_SHAPE, node->mark, place, hint, "%zu value%s here, %s is wanted",
	           node->count, node->count == 1 ? " stands" : "s stand",
	           size == 2 ? "a point [x, y]" : "a list [x, y, z]");
}

/* Numbers of this list that stand without a unit. */
static size_t count_bare(const struct node *list)
{
	size_t count = 0;
	for (const struct node *node = list->first; node; node = node->next)
		count += is_bare(node);
	return count;
}

/* The coordinates of one point; false after a fault, *blank if one is unknown. */
static bool read_coordinates(struct reader *reader, const struct field *field,
                             const struct node *node, const struct unit *unit,
                             const struct place *place, size_t size, double *at, bool *blank)
{
	const char *wanted = size == 2 ? "a point [x, y]" : "a list [x, y, z]";
	if (node->kind != NODE_SEQUENCE) {
		read_shape_fault(reader, node, place, wanted, unit ? "" : field->example);
		return false;
	}
	const struct node *cut = find_cut(node, size);
	if (cut) {
		read_comma_fault(reader, field, cut, cut->next->text, place);
		return false;
	}
	if (node->count != size) {
		wrong_count(reader, field, node, place, size);
		return false;
	}
	if (!unit && count_bare(node) > 1) {
		char hint[DIAGNOSTIC_HINT];
		snprintf(hint, sizeof hint, "write it behind each number: %s", field->example);
		read_fault(reader, FAULT_NUMBER, node->mark, place, hint,
		           "the numbers have no unit");
		return false;
	}
	bool good = true;
	for (const struct node *one = node->first; one; one = one->next, at++) {
		if (node_is_blank(one))
			*blank = true;
		else
			good = read_value(reader, field, one, unit, place, at) && good;
	}
	return good;
}

/* One unknown number makes the point unknown: half a place is no place. */
void read_point(struct reader *reader, const struct field *field, const struct node *node,
                const struct place *place, size_t size, struct point *out)
{
	*out = (struct point){.given.mark = node->mark};
	bool blank = false;
	double at[3] = {0};
	if (!read_coordinates(reader, field, node, NULL, place, size, at, &blank) || blank)
		return;
	memcpy(out->at, at, sizeof at);
	out->given.origin = GIVEN;
}

static bool is_bare_point(const struct node *node)
{
	return node->kind == NODE_SEQUENCE && node->count == 2 && count_bare(node) == 2;
}

/* Said once for all points of a list, at the first that lacks it. */
static void no_unit(struct reader *reader, const struct node *point, const struct place *list)
{
	read_fault(reader, FAULT_NUMBER, point->mark, list,
	           "name the unit once: {unit: mm, points: [[-450, -350], [450, -350], ...]}",
	           "the points have no unit");
}

bool read_points(struct reader *reader, const struct field *field, const struct node *list,
                 const struct unit *unit, const struct place *place, struct vec2 *at,
                 struct mark *marks, bool *blank)
{
	bool good = true;
	size_t i = 0;
	bool said = false;
	for (const struct node *node = list->first; node; node = node->next, i++) {
		struct place here = place_row(place, i);
		double xy[2] = {0};
		if (!unit && is_bare_point(node)) {
			if (!said)
				no_unit(reader, node, place);
			said = true;
			good = false;
			continue;
		}
		good = read_coordinates(reader, field, node, unit, &here, 2, xy, blank) && good;
		at[i] = (struct vec2){xy[0], xy[1]};
		if (marks)
			marks[i] = node->mark;
	}
	return good;
}

const struct unit *read_unit(struct reader *reader, const struct node *map,
                             enum dimension dimension, const struct place *place)
{
	const struct node *node = node_find(map, "unit");
	const struct unit *unit, *close;
	if (!node || node_is_blank(node)) {
		read_fault(reader, FAULT_MISSING_KEY, node ? node->mark : map->mark, place,
		           dimension == DIM_LENGTH ? "write unit: mm beside it"
		                                   : "write unit: MPa beside it",
		           "the unit of the numbers is missing");
		return NULL;
	}
	struct place here = place_key(place, "unit");
	if (node->kind != NODE_SCALAR) {
		read_shape_fault(reader, node, &here, "a unit", "");
		return NULL;
	}
	enum quantity_error error = quantity_find_unit(node->text, node->length, dimension, &unit,
	                                               &close);
	if (error != QUANTITY_OK) {
		struct explanation why;
		quantity_explain(error, node->text, node->length, dimension, close, &why);
		read_fault(reader, FAULT_NUMBER, node->mark, &here, why.remedy, "%s", why.wrong);
	}
	return unit;
}

/* Before memory is taken: the limit is what the kernels have room for. */
static bool check_count(struct reader *reader, const struct field *field, const struct node *list,
                        const struct place *place)
{
	if (list->kind != NODE_SEQUENCE) {
		read_shape_fault(reader, list, place, "a list of points", field->example);
		return false;
	}
	if (list->count <= field->limit)
		return true;
	read_fault(reader, FAULT_SIZE, list->mark, place, "",
	           "%zu points, at most %zu can be taken", list->count, field->limit);
	return false;
}

const struct node *read_points_map(struct reader *reader, const struct field *field,
                                   const struct node *node, const struct place *place,
                                   const struct unit **unit)
{
	static const char *const keys[] = {"unit", "points", NULL};
	*unit = NULL;
	if (node->kind != NODE_MAP)
		return check_count(reader, field, node, place) ? node : NULL;
	read_check_keys(reader, node, place, keys);
	const struct node *points = node_find(node, "points");
	if (!points) {
		read_fault(reader, FAULT_MISSING_KEY, node->mark, place, field->example,
		           "the key 'points' is missing");
		return NULL;
	}
	if (node_is_blank(points))
		return NULL;
	struct place here = place_key(place, "points");
	*unit = read_unit(reader, node, field->dimension, place);
	return *unit && check_count(reader, field, points, &here) ? points : NULL;
}

/* Exactly: a point a hair beside the first one is a mistake that must be seen. */
static bool same_point(struct vec2 a, struct vec2 b)
{
	return a.x == b.x && a.y == b.y;
}

void read_ring(struct reader *reader, const struct field *field, const struct node *node,
               const struct place *place, struct ring *out)
{
	*out = (struct ring){.given.mark = node->mark};
	const struct unit *unit;
	const struct node *list = read_points_map(reader, field, node, place, &unit);
	struct vec2 *points = list ? arena_take(reader->arena, list->count, sizeof *points) : NULL;
	struct place here = node->kind == NODE_MAP ? place_key(place, "points") : *place;
	bool blank = false;
	if (!points || !read_points(reader, field, list, unit, &here, points, NULL, &blank) ||
	    blank)
		return;
	out->points = points;
	out->count = list->count;
	/* the ring closes by itself: a first point that is repeated at the end means the same */
	if (out->count > 1 && same_point(points[0], points[out->count - 1]))
		out->count--;
	out->given.origin = GIVEN;
}
