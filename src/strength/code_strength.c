/* A code's modes made ready for one setting. */
#include "code_parts.h"
#include "en_values.h"

/* Places are the cell's own coordinates where the pattern is the cell's, moved and turned, within
 * this [mm]. */
#define SAME_PATTERN 1e-6

/* A vector of the frame along the pattern's axes. */
static struct vec2 along_pattern(const struct pattern *pattern, struct vec2 v)
{
	double c = cos(pattern->turned), s = sin(pattern->turned);
	return (struct vec2){v.x * c + v.y * s, v.y * c - v.x * s};
}

static void place_anchors(const struct cell *cell, const struct pattern *pattern,
                          struct code_frame *out)
{
	const struct vec2 *own = cell->anchors.at;
	bool same = cell->anchors.count == pattern->count && pattern->count > 0;
	for (size_t i = 0; i < pattern->count; i++)
		out->place[i] = along_pattern(pattern, pattern->at[i]);
	if (same)
		out->shift = (struct vec2){out->place[0].x - own[0].x, out->place[0].y - own[0].y};
	for (size_t i = 0; same && i < pattern->count; i++)
		same = fabs(out->place[i].x - own[i].x - out->shift.x) <= SAME_PATTERN &&
		       fabs(out->place[i].y - own[i].y - out->shift.y) <= SAME_PATTERN;
	if (!same)
		out->shift = (struct vec2){0, 0};
	for (size_t i = 0; same && i < pattern->count; i++)
		out->place[i] = own[i];
}

/* Anchors of a view in the order of its rows. ACI: a row behind others either stands alone with
 * what is in front of it, or takes all (aci_row_stands_alone); the last one always takes all. */
static void order_edge(const struct code_strength *s, const struct edge_view *view,
                       struct edge_order *out)
{
	out->toward = along_pattern(s->pattern, view->toward);
	for (size_t k = 0; k < view->row_count; k++) {
		for (size_t i = 0; i < s->pattern->count; i++)
			if (view->row[k] >> i & 1)
				out->anchor[out->count++] = (unsigned char)i;
		out->end[k] = out->count;
		out->takes_front_only[k] = s->facts.code == ACI318 && k + 1 < view->row_count &&
		                           aci_row_stands_alone(view, k);
	}
}

static void find_ready(const struct cell *cell, struct code_strength *s, struct code_frame *frame)
{
	enum code code = s->facts.code;
	for (int m = 0; m < CODE_MODES; m++) {
		enum code_mode mode = (enum code_mode)m;
		bool foreign = mode == (code == ACI318 ? SPLITTING : BOND_SUSTAINED);
		const char *path[1];
		frame->applies[m] = !foreign && !code_left_out(cell, code, mode);
		if (!frame->applies[m])
			continue;
		s->ready[m] = code_missing(&s->facts, mode, false, path, 1) == 0;
		s->ready_seismic[m] = code_missing(&s->facts, mode, true, path, 1) == 0;
	}
}

/* Blowout at an edge of which only the least distance is known cannot be told: which way it lies,
 * and which anchors stand in a row along it. */
static void bar_unseen_blowout(struct code_strength *s)
{
	bool unseen = s->pattern->edge_count == 0 && s->pattern->clear > 0 &&
	              s->pattern->clear < HUGE_VAL;
	if (!unseen || !(s->ready[BLOWOUT] || s->ready_seismic[BLOWOUT]))
		return;
	if (s->facts.code == ACI318 ? aci_blows_out(&s->facts, s->pattern->clear)
	                            : en_blows_out(&s->facts, s->pattern->clear))
		s->ready[BLOWOUT] = s->ready_seismic[BLOWOUT] = false;
}

/* EN 1992-4 7.2.2.5: no check of edges for at most four anchors with every edge beyond this
 * distance; else, and by ACI, every edge is checked. S34 */
static double remote_edge(const struct code_strength *s)
{
	if (s->facts.code != EN1992_4 || s->pattern->count > EN_REMOTE_ANCHORS ||
	    !(s->ready[EDGE] || s->ready_seismic[EDGE]))
		return HUGE_VAL;
	double distance = en_remote_edge(&s->facts);
	for (size_t v = 0; v < s->view_count; v++)
		if (s->view[v].row_distance[0] <= distance)
			return HUGE_VAL;
	return distance;
}

enum status code_strength_build(const struct cell *cell, enum code code, double concrete,
                                const struct pattern *pattern, struct arena *arena,
                                struct code_strength *out)
{
	*out = (struct code_strength){.pattern = pattern, .arena = arena};
	code_facts_resolve(cell, code, concrete, &out->facts);
	struct code_frame *frame = arena_take(arena, 1, sizeof *frame);
	if (!frame || !edge_views(pattern, arena, &out->view, &out->view_count))
		return NO_MEMORY;
	place_anchors(cell, pattern, frame);
	frame->edge = arena_take(arena, out->view_count + 1, sizeof *frame->edge);
	out->cache = cache_open(frame, arena);
	if (!frame->edge || !out->cache)
		return NO_MEMORY;
	for (size_t v = 0; v < out->view_count; v++)
		order_edge(out, &out->view[v], &frame->edge[v]);
	find_ready(cell, out, frame);
	bar_unseen_blowout(out);
	frame->remote = remote_edge(out);
	return DONE;
}

enum status code_strength_copy(const struct code_strength *from, struct arena *arena,
                               struct code_strength *out)
{
	*out = *from;
	out->arena = arena;
	out->cache = cache_open(from->cache->frame, arena);
	return out->cache ? DONE : NO_MEMORY;
}
