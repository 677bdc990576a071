/* In the plane (round, or where all wrenches of a space lie in one) the open directions are at
 * right angles to the edges of the hull's outline, in space to its facets. Where headings are not
 * told apart the outline is closed by two points on the axis of z: (|t|, Fz) has no wrench of its
 * own there, but a smaller |t| is never farther. */
#include "hull_front.h"

#include "hull_plane.h"
#include <math.h>
#include <string.h>

/* Numbers of the two points on the axis in an edge, apart from all wrenches. */
enum { AXIS_LOW = MAX_HULL, AXIS_HIGH };

void hull_front_open(enum support_space space, bool round, double height, struct hull_front *out)
{
	memset(out, 0, sizeof *out);
	out->space = space;
	out->round = round;
	out->height = height;
	out->wide = out->high = 1;
}

static struct vec3 point_of(const struct hull_front *front, const struct reaction_at *at)
{
	struct vec3 p = support_seen(front->space, front->height, &at->wrench);
	if (front->round) {
		p.x = sqrt(p.x * p.x + p.y * p.y);
		p.y = 0;
	}
	return (struct vec3){p.x / front->wide, p.y / front->wide, p.z / front->high};
}

void hull_front_add(struct hull_front *front, const struct reaction_at *at)
{
	front->pose[front->count] = at->pose;
	front->point[front->count++] = point_of(front, at);
}

/* A size below which differences are rounding: an arm whose shear is nothing but that has no hull.
 * Levers are of the order of a metre, so N and N m may stand side by side here. */
static double least_size(const struct reaction_at list[], size_t count)
{
	double most = 0;
	for (size_t i = 0; i < count; i++)
		for (int k = 0; k < 3; k++)
			most = fmax(most, fmax(fabs(list[i].wrench.force[k]),
			                       fabs(list[i].wrench.moment[k])));
	return 1e-6 * most;
}

void hull_front_size(struct hull_front *front, const struct reaction_at list[], size_t count)
{
	double wide = least_size(list, count), high = wide;
	front->wide = front->high = 1;
	for (size_t i = 0; i < count; i++) {
		struct vec3 p = point_of(front, &list[i]);
		wide = fmax(wide, sqrt(p.x * p.x + p.y * p.y));
		high = fmax(high, fabs(p.z));
	}
	front->wide = wide > 0 ? wide : 1;
	front->high = high > 0 ? high : 1;
	front->count = 0;
	for (size_t i = 0; i < count; i++)
		hull_front_add(front, &list[i]);
}

/* --- questions ---------------------------------------------------------------------------------
 */

/* `d` in the sizes of the front; the value of a wrench is then that of its point. */
static struct support_ask *new_ask(const struct hull_front *front, struct vec3 d,
                                   struct support_sweep *sweep, struct hull_question question[],
                                   struct hull_question **own)
{
	if (sweep->asks == MAX_ASKS)
		return NULL;
	struct support_ask *ask = &sweep->ask[sweep->asks];
	*own = &question[sweep->asks++];
	memset(ask, 0, sizeof *ask);
	memset(*own, 0, sizeof **own);
	ask->direction.space = (*own)->space = front->space;
	ask->direction.round = front->round;
	ask->direction.d = (struct vec3){d.x / front->wide, d.y / front->wide, d.z / front->high};
	ask->floor = -HUGE_VAL;
	return ask;
}

/* What lies beyond the known is asked for; the ends of an edge are looked at first. */
static void set_level(const struct hull_front *front, double level, const size_t corner[],
                      size_t corners, struct support_ask *ask, struct hull_question *own)
{
	own->level = level;
	ask->floor = level + HULL_TOLERANCE;
	for (size_t i = 0; i < corners; i++)
		if (corner[i] < front->count)
			ask->seed[ask->seeds++] = front->pose[corner[i]];
}

void hull_front_first(const struct hull_front *front, struct support_sweep *sweep,
                      struct hull_question question[])
{
	static const struct vec3 direction[6] = {{0, 0, -1}, {0, 0, 1}, {1, 0, 0},
	                                         {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}};
	struct hull_question *own;
	for (int i = 0; i < (front->round ? 3 : 6); i++)
		if (new_ask(front, direction[i], sweep, question, &own))
			own->kind = ASK_FIRST;
}

/* Both ways along the axes of what the points span: whether there is more. */
static bool ask_axes(struct hull_front *front, struct support_sweep *sweep,
                     struct hull_question question[])
{
	for (int i = 0; i < 6; i++) {
		struct vec3 d = vec3_scale(i & 1 ? -1 : 1, front->axis[i / 2]);
		struct hull_question *own;
		struct support_ask *ask = new_ask(front, d, sweep, question, &own);
		double level = -HUGE_VAL;
		size_t best = 0;
		if (!ask)
			return false;
		for (size_t p = 0; p < front->count; p++) {
			double value = vec3_dot(d, front->point[p]);
			best = value > level ? p : best;
			level = fmax(level, value);
		}
		own->kind = ASK_AXIS;
		set_level(front, level, &best, 1, ask, own);
	}
	front->axes_asked = front->count;
	return true;
}

/* --- in the plane ------------------------------------------------------------------------------
 */

struct outline {
	struct vec2 point[MAX_HULL + 2];
	size_t count, order[MAX_HULL + 2], corner[2 * MAX_HULL + 5], corners;
};

static void outline_of(const struct hull_front *front, struct outline *out)
{
	double low = HUGE_VAL, high = -HUGE_VAL;
	for (size_t i = 0; i < front->count; i++) {
		struct vec3 p = front->point[i];
		out->point[i] = (struct vec2){vec3_dot(front->axis[0], p),
		                              vec3_dot(front->axis[1], p)};
		if (front->round)
			out->point[i] = (struct vec2){p.x, p.z};
		low = fmin(low, p.z);
		high = fmax(high, p.z);
	}
	out->count = front->count;
	if (front->round) {
		out->point[out->count++] = (struct vec2){0, low};
		out->point[out->count++] = (struct vec2){0, high};
	}
	out->corners = hull_plane_corners(out->point, out->count, out->order, out->corner);
}

/* As it is kept in the list of closed edges. */
static size_t end_number(const struct hull_front *front, size_t corner)
{
	return corner < front->count ? corner : AXIS_LOW + (corner - front->count);
}

static bool edge_closed(const struct hull_front *front, const size_t edge[2])
{
	for (size_t i = 0; i < front->closed_count; i++)
		if (front->closed[i][0] == edge[0] && front->closed[i][1] == edge[1])
			return true;
	return false;
}

/* Outward, length 1, in the plane; false for the edge along the axis. */
static bool edge_normal(const struct hull_front *front, struct vec2 from, struct vec2 to,
                        struct vec2 *out)
{
	double x = to.y - from.y, y = from.x - to.x, length = sqrt(x * x + y * y);
	*out = (struct vec2){x / length, y / length};
	if (!front->round)
		return true;
	bool inward = out->x < -1e-9;
	out->x = fmax(out->x, 0);
	return !inward;
}

static bool ask_edge(struct hull_front *front, const struct outline *outline, size_t index,
                     struct support_sweep *sweep, struct hull_question question[])
{
	const size_t end[2] = {outline->corner[index],
	                       outline->corner[(index + 1) % outline->corners]};
	const size_t edge[2] = {end_number(front, end[0]), end_number(front, end[1])};
	struct vec2 from = outline->point[end[0]], to = outline->point[end[1]], n;
	struct hull_question *own;
	if (edge_closed(front, edge) || !edge_normal(front, from, to, &n))
		return true;
	struct vec3 d = vec3_add(vec3_scale(n.x, front->axis[0]), vec3_scale(n.y, front->axis[1]));
	if (front->round)
		d = (struct vec3){n.x, 0, n.y};
	struct support_ask *ask = new_ask(front, d, sweep, question, &own);
	if (!ask)
		return false;
	own->kind = ASK_EDGE;
	memcpy(own->edge, edge, sizeof edge);
	double level = -HUGE_VAL;
	for (int i = 0; i < 2; i++) {
		struct vec2 at = outline->point[end[i]];
		level = fmax(level, end[i] < front->count ? vec3_dot(d, front->point[end[i]])
		                                          : n.x * at.x + n.y * at.y);
	}
	set_level(front, level, end, 2, ask, own);
	return true;
}

static bool ask_outline(struct hull_front *front, struct support_sweep *sweep,
                        struct hull_question question[])
{
	struct outline outline;
	outline_of(front, &outline);
	for (size_t i = 0; i < outline.corners && outline.corners > 1; i++)
		if (!ask_edge(front, &outline, i, sweep, question))
			return false;
	return true;
}

/* --- in space ----------------------------------------------------------------------------------
 */

/* Brings span and hull up to date with the points. */
static void update_hull(struct hull_front *front)
{
	size_t corner[4] = {0};
	if (front->span < 3) {
		front->span = hull_space_span(front->point, front->count, HULL_TOLERANCE, corner,
		                              front->axis);
		if (front->span < 3)
			return;
		hull_space_open(front->point, corner, &front->hull);
	}
	/* those inside are refused at once */
	for (size_t i = 0; i < front->count; i++)
		hull_space_add(front->point, i, HULL_TOLERANCE / 2, &front->hull);
}

static bool ask_facets(struct hull_front *front, struct support_sweep *sweep,
                       struct hull_question question[])
{
	for (size_t f = 0; f < front->hull.count; f++) {
		const struct hull_facet *facet = &front->hull.facet[f];
		struct hull_question *own;
		if (facet->closed || vec3_dot(facet->normal, facet->normal) == 0)
			continue;
		struct support_ask *ask = new_ask(front, facet->normal, sweep, question, &own);
		if (!ask)
			return false;
		own->kind = ASK_FACET;
		own->facet = f;
		set_level(front, facet->level, facet->corner, 3, ask, own);
	}
	return true;
}

bool hull_front_ask(struct hull_front *front, struct support_sweep *sweep,
                    struct hull_question question[])
{
	if (front->round)
		return ask_outline(front, sweep, question);
	update_hull(front);
	if (front->span == 3)
		return ask_facets(front, sweep, question);
	bool room = front->axes_asked == front->count || ask_axes(front, sweep, question);
	return ask_outline(front, sweep, question) && room;
}

void hull_front_close(struct hull_front *front, const struct hull_question *question)
{
	if (question->kind == ASK_FACET)
		front->hull.facet[question->facet].closed = true;
	if (question->kind == ASK_EDGE && front->closed_count < MAX_CLOSED)
		memcpy(front->closed[front->closed_count++], question->edge,
		       sizeof question->edge);
}

static size_t add_edge(size_t from, size_t to, const size_t number[], size_t room, size_t count,
                       struct hull_edge out[])
{
	if (from >= to || number[from] == MAX_HULL || number[to] == MAX_HULL || count == room)
		return count;
	out[count] = (struct hull_edge){(unsigned short)number[from], (unsigned short)number[to]};
	return count + 1;
}

size_t hull_front_edges(const struct hull_front *front, const size_t number[], size_t room,
                        struct hull_edge out[])
{
	struct outline outline;
	size_t count = 0;
	if (front->round)
		return 0;
	/* both ways in two facets: taken where it rises */
	for (size_t f = 0; f < front->hull.count && front->span == 3; f++)
		for (int i = 0; i < 3; i++)
			count = add_edge(front->hull.facet[f].corner[i],
			                 front->hull.facet[f].corner[(i + 1) % 3], number, room,
			                 count, out);
	if (front->span == 3)
		return count;
	outline_of(front, &outline);
	for (size_t i = 0; i < outline.corners; i++) {
		size_t from = outline.corner[i], to = outline.corner[(i + 1) % outline.corners];
		if (outline.corners == 2 && i == 1)
			break;
		count = add_edge(from < to ? from : to, from < to ? to : from, number, room, count,
		                 out);
	}
	return count;
}

void hull_front_vertices(struct hull_front *front, bool vertex[])
{
	struct outline outline;
	if (!front->round)
		update_hull(front);
	if (front->span == 3) {
		for (size_t f = 0; f < front->hull.count; f++)
			for (int i = 0; i < 3; i++)
				vertex[front->hull.facet[f].corner[i]] = true;
		return;
	}
	outline_of(front, &outline);
	for (size_t i = 0; i < outline.corners; i++)
		if (outline.corner[i] < front->count)
			vertex[outline.corner[i]] = true;
}
