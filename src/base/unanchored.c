#include "unanchored.h"

#include <math.h>

/* tangent of 10 degrees, IEC 60950-1 4.1 and IEC 61010-1 7.4 (from memory) */
#define TAN_TEN_DEGREES 0.17632698070846498

const char *free_standing_fault(const struct free_standing *cell)
{
	if (!isfinite(cell->weight) || cell->weight <= 0)
		return "the weight of the cell must be positive";
	if (!isfinite(cell->centre[0]) || !isfinite(cell->centre[1]))
		return "the centre of mass must be known";
	if (!isfinite(cell->centre[2]) || cell->centre[2] <= 0)
		return "the centre of mass must lie above the floor";
	if (!isfinite(cell->push_height) || cell->push_height < 0)
		return "the height of the push must be zero (none asked) or positive";
	return NULL;
}

const char *wheel_fault(const struct wheel *caster, size_t count)
{
	if (count == 0)
		return "the cell must stand on something: give its casters";
	for (size_t i = 0; i < count; i++)
		if (!isfinite(caster[i].at.x) || !isfinite(caster[i].at.y) ||
		    !isfinite(caster[i].trail) || caster[i].trail < 0)
			return "the trail of a caster must be zero (fixed wheel) or positive";
	return NULL;
}

static void trace_load(const struct free_standing *cell, struct trace *trace)
{
	trace_step(trace, "W_free", "", cell->weight, DIM_FORCE, "", "weight that holds it down");
	trace_step(trace, "x_c", "", cell->centre[0], DIM_LENGTH, "", "centre of mass");
	trace_step(trace, "y_c", "", cell->centre[1], DIM_LENGTH, "", "");
	trace_step(trace, "z_c", "", cell->centre[2], DIM_LENGTH, "", "its height");
}

static void trace_point(struct vec2 at, bool second, struct trace *trace)
{
	trace_step(trace, second ? "x_t2" : "x_t1", "", at.x, DIM_LENGTH, "",
	           second ? "second point it tips about" : "first point it tips about");
	trace_step(trace, second ? "y_t2" : "y_t1", "", at.y, DIM_LENGTH, "", "");
}

static void compare_ten_degrees(double tangent, struct tip_over *out, struct trace *trace)
{
	out->withstands_ten_degrees = tangent > TAN_TEN_DEGREES;
	trace_step(trace, "tan_10", "", TAN_TEN_DEGREES, DIM_FACTOR,
	           "IEC 60950-1 4.1, IEC 61010-1 7.4 (from memory; a 10 degree test was seen for "
	           "another product standard)",
	           "tangent of the test's 10 degrees");
	if (out->stands)
		trace_step(trace, "r_10", "tan_10 / tan_tilt", TAN_TEN_DEGREES / tangent,
		           DIM_FACTOR, "", "below 1: does not tip at 10 degrees");
}

/* Tilt and push from the distance, which stands in the trace as d_tip. */
static void tip_from_distance(const struct free_standing *cell, struct tip_over *out,
                              struct trace *trace)
{
	/* the load's lever about the line over the height of what tips it: both are statics */
	double d = fmax(0, out->distance);
	out->stands = out->distance > 0;
	double tangent = trace_step(trace, "tan_tilt", "max(0, d_tip) / z_c", d / cell->centre[2],
	                            DIM_FACTOR, "", "tangent of the tilt at which it tips");
	out->tilt = trace_step(trace, "tilt", "", atan(tangent), DIM_ANGLE,
	                       "arc tangent of tan_tilt", "it tips at this slope of the floor");
	compare_ten_degrees(tangent, out, trace);
	out->push = HUGE_VAL;
	if (cell->push_height > 0) {
		trace_step(trace, "h_push", "", cell->push_height, DIM_LENGTH, "",
		           "height of the push");
		out->push = trace_step(trace, "F_tip", "W_free * max(0, d_tip) / h_push",
		                       cell->weight * d / cell->push_height, DIM_FORCE, "",
		                       "push that tips it");
	}
}

/* --- on a hull ------------------------------------------------------------------------------ */

/* Distance of the load inside the edge from a to b of an anticlockwise ring. */
static double inside_edge(struct vec2 a, struct vec2 b, const double centre[3])
{
	double x = b.x - a.x, y = b.y - a.y;
	return (x * (centre[1] - a.y) - y * (centre[0] - a.x)) / sqrt(x * x + y * y);
}

static void trace_edge(const struct vec2 *hull, const struct tip_over *out, struct trace *trace)
{
	struct vec2 a = hull[out->first], b = hull[out->second];
	trace_point(a, false, trace);
	trace_point(b, true, trace);
	trace_step(trace, "L_edge", "sqrt((x_t2 - x_t1)^2 + (y_t2 - y_t1)^2)",
	           sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y)), DIM_LENGTH, "",
	           "length of the nearest edge");
	trace_step(trace, "d_tip",
	           "((x_t2 - x_t1) * (y_c - y_t1) - (y_t2 - y_t1) * (x_c - x_t1)) / L_edge",
	           out->distance, DIM_LENGTH, "", "distance of the load inside it");
}

void tipping_on_hull(const struct vec2 *hull, size_t count, const struct free_standing *cell,
                     struct tip_over *out, struct trace *trace)
{
	if (count < 3) {
		/* a line or a point has no inside: feet without trail */
		struct wheel foot[2] = {{hull[0], 0}, {hull[count - 1], 0}};
		tipping_on_casters(foot, count, cell, out, trace);
		return;
	}
	*out = (struct tip_over){.distance = HUGE_VAL};
	for (size_t i = 0; i < count; i++) {
		size_t next = i + 1 < count ? i + 1 : 0;
		double distance = inside_edge(hull[i], hull[next], cell->centre);
		/* inside a convex hull the nearest edge's line is the nearest edge */
		if (distance >= out->distance)
			continue;
		out->distance = distance;
		out->first = i;
		out->second = next;
		/* outward normal of the edge */
		out->heading = atan2(hull[i].x - hull[next].x, hull[next].y - hull[i].y);
	}
	trace_load(cell, trace);
	trace_edge(hull, out, trace);
	tip_from_distance(cell, out, trace);
}

/* --- on casters ----------------------------------------------------------------------------- */

struct swivels {
	const struct wheel *caster;
	size_t count;
	const double *centre;
	double distance;             /* the least so far */
	struct vec2 toward;          /* in which direction */
	size_t first, second;
};

/* How far the support of one caster reaches beyond the load in the direction u at the least. */
static double reach_of(const struct swivels *it, size_t i, struct vec2 u)
{
	return (it->caster[i].at.x - it->centre[0]) * u.x +
	       (it->caster[i].at.y - it->centre[1]) * u.y - it->caster[i].trail;
}

/* Takes the direction when the whole support reaches less there than in any before. */
static void try_direction(struct swivels *it, struct vec2 u, size_t i, size_t j)
{
	size_t far = i;
	double reach = reach_of(it, i, u);
	for (size_t k = 0; k < it->count; k++)
		if (reach_of(it, k, u) > reach) {
			reach = reach_of(it, k, u);
			far = k;
		}
	if (reach >= it->distance)
		return;
	it->distance = reach;
	it->toward = u;
	it->first = far;
	it->second = far == i ? j : i;
}

/* The direction in which one caster alone reaches least: straight away from it. */
static void try_alone(struct swivels *it, size_t i)
{
	double x = it->centre[0] - it->caster[i].at.x, y = it->centre[1] - it->caster[i].at.y;
	double length = sqrt(x * x + y * y);
	struct vec2 away = {1, 0};    /* right above it: any direction */
	if (length > 0)
		away = (struct vec2){x / length, y / length};
	try_direction(it, away, i, i);
}

/* Both directions in which two casters reach equally far: (p_i - p_j).u = trail_i - trail_j. */
static void try_pair(struct swivels *it, size_t i, size_t j)
{
	const struct wheel *a = &it->caster[i], *b = &it->caster[j];
	double x = a->at.x - b->at.x, y = a->at.y - b->at.y, length = sqrt(x * x + y * y);
	double difference = a->trail - b->trail;
	if (length == 0 || fabs(difference) > length)
		return; /* one reaches less than the other in every direction, or both the same */
	double along = difference / length;
	double across = sqrt((1 - along) * (1 + along));
	for (int side = -1; side <= 1; side += 2) {
		struct vec2 u = {(x * along - side * y * across) / length,
		                 (y * along + side * x * across) / length};
		try_direction(it, u, i, j);
	}
}

static void trace_casters(const struct swivels *it, struct trace *trace)
{
	const struct wheel *a = &it->caster[it->first], *b = &it->caster[it->second];
	trace_point(a->at, false, trace);
	trace_step(trace, "trail_1", "", a->trail, DIM_LENGTH, "", "trail of its caster");
	trace_point(b->at, true, trace);
	trace_step(trace, "trail_2", "", b->trail, DIM_LENGTH, "", "trail of its caster");
	trace_step(trace, "u_x", "", it->toward.x, DIM_FACTOR, "least over all directions",
	           "direction toward which it tips");
	trace_step(trace, "u_y", "", it->toward.y, DIM_FACTOR, "", "");
	trace_step(trace, "d_1", "(x_t1 - x_c) * u_x + (y_t1 - y_c) * u_y - trail_1",
	           reach_of(it, it->first, it->toward), DIM_LENGTH, "",
	           "its wheel swivelled inward");
	trace_step(trace, "d_2", "(x_t2 - x_c) * u_x + (y_t2 - y_c) * u_y - trail_2",
	           reach_of(it, it->second, it->toward), DIM_LENGTH, "",
	           "its wheel swivelled inward");
	trace_step(trace, "d_tip", "max(d_1, d_2)", it->distance, DIM_LENGTH, "",
	           "distance of the load inside the wheels");
}

void tipping_on_casters(const struct wheel *caster, size_t count, const struct free_standing *cell,
                        struct tip_over *out, struct trace *trace)
{
	struct swivels it = {caster, count, cell->centre, HUGE_VAL, {1, 0}, 0, 0};
	for (size_t i = 0; i < count; i++) {
		try_alone(&it, i);
		for (size_t j = 0; j < i; j++)
			try_pair(&it, i, j);
	}
	/* the least of a maximum of cosines lies where two of them cross, or where one is least */
	*out = (struct tip_over){.distance = it.distance, .first = it.first, .second = it.second};
	out->heading = atan2(it.toward.y, it.toward.x);
	trace_load(cell, trace);
	trace_casters(&it, trace);
	tip_from_distance(cell, out, trace);
}
