/* The area of a group's cones written down: as a rectangle where it is one, else as the squares
 * less what they cover twice. */
#include "pattern_area.h"

#include <string.h>

/* Squares that are listed one by one. */
enum { MOST_LISTED = 12 };

struct writing {
	struct trace *trace;
	const char *symbol;          /* of the area: the stem of all its steps */
	const char *half;            /* symbol of half a square's side */
};

static const char *name(const struct writing *to, const char *part)
{
	return trace_text(to->trace, "%s_%s", to->symbol, part);
}

/* The caller's own symbol of half the side, where it wrote one, so that the area refers to it. */
static const char *half_symbol(const struct writing *to, double half)
{
	const struct trace *trace = to->trace;
	for (size_t i = trace->count; i-- > 0;)
		if (trace->steps[i].dimension == DIM_LENGTH &&
		    memcmp(&trace->steps[i].value, &half, sizeof half) == 0)
			return trace->steps[i].symbol;
	const char *symbol = name(to, "half");
	trace_step(to->trace, symbol, "", half, DIM_LENGTH, "", "half a square's side");
	return symbol;
}

static void write_half(struct writing *to, const struct pattern *pattern, double half,
                       const struct cone_area *area)
{
	to->half = half_symbol(to, half);
	if (!(area->half < half))
		return;
	trace_step(to->trace, name(to, "clear"), "", pattern->clear, DIM_LENGTH, "input",
	           "edges not known: one may be so near on every side");
	const char *reach = name(to, "reach");
	trace_step(to->trace, reach,
	           trace_text(to->trace, "min(%s, %s)", to->half, name(to, "clear")), area->half,
	           DIM_LENGTH, "", "half a side that counts");
	to->half = reach;
}

/* Two anchors between which the spread is measured: the outermost along the axis. */
static void outermost(const struct pattern *pattern, uint64_t anchors, struct vec2 axis,
                      size_t outer[2])
{
	double low = HUGE_VAL, high = -HUGE_VAL;
	for (size_t i = 0; i < pattern->count; i++) {
		double x = dot(pattern->at[i], axis);
		if (!has_anchor(anchors, i))
			continue;
		if (x < low - UPON) {
			low = x;
			outer[0] = i;
		}
		if (x > high + UPON) {
			high = x;
			outer[1] = i;
		}
	}
}

static const char *const axis_word[2] = {"x", "y"};
static const char *const end_symbol[2][2] = {{"left", "right"}, {"below", "above"}};

/* One end of one axis; returns the symbol of its reach. */
static const char *write_side(const struct writing *to, const struct side *side, int axis, int end)
{
	const char *symbol = name(to, end_symbol[axis][end]);
	const char *way = trace_text(to->trace, "toward %s%s", end ? "+" : "-", axis_word[axis]);
	if (side->edge < 0) {
		/* cut, but by no edge of its own: what stands before an edge hides it */
		trace_step(to->trace, symbol, side->is_cut ? "" : to->half, side->reach, DIM_LENGTH,
		           side->is_cut ? "exact, from the drawing" : "",
		           trace_text(to->trace, "reach %s%s", way,
		                      side->is_cut ? ", as far as it is seen" : ": no edge"));
		return symbol;
	}
	const char *distance = trace_text(to->trace, "%s_edge", symbol);
	trace_step(to->trace, distance, "", side->reach, DIM_LENGTH,
	           trace_text(to->trace, "distance from edge %d", side->edge + 1),
	           trace_text(to->trace, "from the outer anchors %s", way));
	trace_step(to->trace, symbol, trace_text(to->trace, "min(%s, %s)", to->half, distance),
	           side->reach, DIM_LENGTH, "", trace_text(to->trace, "reach %s", way));
	return symbol;
}

/* One length of the rectangle as an expression of its parts. */
static const char *write_length(const struct writing *to, const struct pattern *pattern,
                                uint64_t anchors, const struct cone_area *area, int axis)
{
	struct vec2 u = plane_heading(area->turned), v = {-u.y, u.x};
	const char *low = write_side(to, &area->side[axis][0], axis, 0);
	if (!(area->spread[axis] > 0))
		return trace_text(to->trace, "%s + %s", low,
		                  write_side(to, &area->side[axis][1], axis, 1));
	size_t outer[2] = {0, 0};
	outermost(pattern, anchors, axis ? v : u, outer);
	const char *spread = name(to, axis ? "sy" : "sx");
	trace_step(to->trace, spread, "", area->spread[axis], DIM_LENGTH, "pattern",
	           trace_text(to->trace, "from A%zu to A%zu along %s", outer[0] + 1, outer[1] + 1,
	                      axis_word[axis]));
	return trace_text(to->trace, "%s + %s + %s", low, spread,
	                  write_side(to, &area->side[axis][1], axis, 1));
}

static void write_rectangle(const struct writing *to, const struct pattern *pattern,
                            uint64_t anchors, const struct cone_area *area, const char *source)
{
	const char *x = write_length(to, pattern, anchors, area, 0);
	const char *y = write_length(to, pattern, anchors, area, 1);
	trace_step(to->trace, to->symbol, trace_text(to->trace, "(%s) * (%s)", x, y), area->area,
	           DIM_AREA, source, "rectangle of the outer squares, cut at edges and joints");
}

/* Each square by itself, and what several of them cover. */
static void write_union(const struct writing *to, const struct pattern *pattern, uint64_t anchors,
                        const struct cone_area *area, size_t count, const char *source)
{
	const char *sum = "";
	double alone = 0;
	for (size_t i = 0; i < pattern->count && count <= MOST_LISTED; i++) {
		if (!has_anchor(anchors, i))
			continue;
		const char *symbol = trace_text(to->trace, "%s_A%zu", to->symbol, i + 1);
		trace_step(to->trace, symbol, "", area->single[i], DIM_AREA,
		           "exact, from the drawing", "square of one anchor, cut where edges or "
		                                      "joints end its sight");
		sum = trace_text(to->trace, "%s%s%s", sum, *sum ? " + " : "", symbol);
		alone += area->single[i];
	}
	if (count > 1 && count <= MOST_LISTED) {
		const char *twice = name(to, "overlap");
		trace_step(to->trace, twice, "", alone - area->area, DIM_AREA,
		           "exact, from the drawing", "what several of the squares cover");
		sum = trace_text(to->trace, "%s - %s", sum, twice);
	}
	trace_step(to->trace, to->symbol, sum, area->area, DIM_AREA, source,
	           count > 1 ? "what the squares cover together, overlaps once, cut at edges and "
	                       "joints"
	                     : "what edges and joints leave of the square");
}

void cone_area_trace(const struct pattern *pattern, uint64_t anchors, double half,
                     const struct cone_area *area, const char *symbol, const char *source,
                     struct trace *trace)
{
	struct writing to = {.trace = trace, .symbol = symbol};
	size_t count = 0;
	for (size_t i = 0; i < pattern->count; i++)
		count += has_anchor(anchors, i);
	write_half(&to, pattern, half, area);
	if (area->by_edge >= 0)
		trace_step(trace, name(&to, "turn"), "", area->turned - pattern->turned, DIM_ANGLE,
		           trace_text(trace, "edge %d", area->by_edge + 1),
		           "x runs along this edge, not along the pattern: the smaller area");
	if (area->is_rectangle) {
		write_rectangle(&to, pattern, anchors, area, source);
		return;
	}
	trace_step(trace, name(&to, "count"), "", (double)count, DIM_COUNT, "pattern", "squares");
	double side = 2 * area->half;
	trace_step(trace, name(&to, "whole"),
	           trace_text(trace, "(2 * %s) * (2 * %s)", to.half, to.half), side * side,
	           DIM_AREA, "", "a whole square");
	write_union(&to, pattern, anchors, area, count, source);
}
