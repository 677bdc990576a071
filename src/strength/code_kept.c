/* Strengths that are kept: computed at the first state that loads this set of anchors. */
#include "code_cache.h"

/* A mean of places and the design function's centre agree within this [mm]; else the centre is no
 * mean. */
#define SAME_PLACE 1e-6
/* Anchors of a row farther apart along the edge than this many c1 break out apart: their +-1.5 c1
 * do not meet, ACI 318-19 17.5.1.3.1, 17.7.2.1.1; EN 1992-4 7.2.2.5. */
#define FRONT_REACH 3.0

typedef void group_function(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                            bool earthquake, struct group_strength *out, struct trace *trace);

void group_strength_of(const struct code_strength *s, enum code_mode mode, uint64_t anchors,
                       unsigned edge, bool earthquake, struct group_strength *out,
                       struct trace *trace)
{
	static group_function *const functions[CODE_MODES][CODES] = {
		[CONE] = {aci_cone, en_cone},
		[BOND] = {aci_bond, en_bond},
		[SPLITTING] = {NULL, en_splitting},
		[PRYOUT] = {aci_pryout, en_pryout}};
	const struct code_facts *f = &s->facts;
	*out = (struct group_strength){0};
	if (mode == BLOWOUT && f->code == ACI318)
		aci_blowout(f, s->pattern, anchors, edge, earthquake, out, trace);
	else if (mode == BLOWOUT)
		en_blowout(f, s->pattern, anchors, edge, earthquake, out, trace);
	else
		functions[mode][f->code](f, s->pattern, anchors, earthquake, out, trace);
	out->anchors = anchors;
}

void edge_strength_of(const struct code_strength *s, size_t view, uint64_t anchors, double c1,
                      bool earthquake, struct edge_strength *out, struct trace *trace)
{
	const struct edge_view *seen = view < s->view_count ? &s->view[view] : NULL;
	*out = (struct edge_strength){0};
	(s->facts.code == ACI318 ? aci_edge : en_edge)(&s->facts, s->pattern, seen, anchors, c1,
	                                               earthquake, out, trace);
}

double steel_shear_of(const struct code_strength *s, double tension, bool earthquake,
                      struct trace *trace)
{
	return s->facts.code == ACI318
	               ? aci_steel_shear(&s->facts, tension, earthquake, trace)
	               : en_steel_shear(&s->facts, tension, earthquake, s->pattern->count, trace);
}

double row_distance_of(const struct code_strength *s, size_t view, size_t row)
{
	return view < s->view_count ? s->view[view].row_distance[row] : s->pattern->clear;
}

/* --- groups --------------------------------------------------------------------------------- */

static void group_open(const struct code_strength *s, enum code_mode mode, uint64_t anchors,
                       unsigned edge, struct kept_group *out)
{
	const struct code_frame *frame = s->cache->frame;
	struct vec2 sum = {0, 0};
	*out = (struct kept_group){.count = 0};
	group_strength_of(s, mode, anchors, edge, false, &out->strength, NULL);
	out->strength.edge = edge;
	for (size_t i = 0; i < s->pattern->count; i++) {
		if (!(anchors >> i & 1))
			continue;
		out->anchor[out->count++] = (unsigned char)i;
		sum.x += frame->place[i].x;
		sum.y += frame->place[i].y;
	}
	struct vec2 given = {out->strength.centre.x - frame->shift.x,
	                     out->strength.centre.y - frame->shift.y};
	struct vec2 mean = {sum.x / (double)out->count, sum.y / (double)out->count};
	out->is_mean = fabs(given.x - mean.x) <= SAME_PLACE && fabs(given.y - mean.y) <= SAME_PLACE;
	out->centre = out->is_mean ? mean : given;
}

static bool blows_out(const struct code_strength *s, size_t anchor, size_t edge)
{
	double distance = s->pattern->distance[anchor * s->pattern->edge_count + edge];
	return s->facts.code == ACI318 ? aci_blows_out(&s->facts, distance)
	                               : en_blows_out(&s->facts, distance);
}

/* Splits anchors, given by their places along a line, where neighbours stand `limit` or more apart.
 * Returns the number of parts. */
static size_t split_along(const double x[], uint64_t anchors, double limit,
                          uint64_t out[MAX_ANCHORS])
{
	size_t order[MAX_ANCHORS], count = 0, parts = 0;
	for (size_t i = 0; i < MAX_ANCHORS; i++) {
		if (!(anchors >> i & 1))
			continue;
		size_t k = count++;
		for (; k > 0 && x[order[k - 1]] > x[i]; k--)
			order[k] = order[k - 1];
		order[k] = i;
	}
	for (size_t k = 0; k < count; k++) {
		if (k == 0 || x[order[k]] - x[order[k - 1]] >= limit)
			out[parts++] = 0;
		out[parts - 1] |= (uint64_t)1 << order[k];
	}
	return parts;
}

/* Rows of loaded anchors that blow out together at one edge. */
static size_t blowout_rows(const struct code_strength *s, size_t edge, uint64_t anchors,
                           uint64_t out[MAX_ANCHORS])
{
	const struct segment *line = &s->pattern->edge[edge];
	double length = hypot(line->to.x - line->from.x, line->to.y - line->from.y);
	double x[MAX_ANCHORS] = {0}, nearest = HUGE_VAL;
	uint64_t near = 0;
	for (size_t i = 0; i < s->pattern->count; i++) {
		if (!(anchors >> i & 1) || !blows_out(s, i, edge))
			continue;
		near |= (uint64_t)1 << i;
		nearest = fmin(nearest, s->pattern->distance[i * s->pattern->edge_count + edge]);
		x[i] = ((s->pattern->at[i].x - line->from.x) * (line->to.x - line->from.x) +
		        (s->pattern->at[i].y - line->from.y) * (line->to.y - line->from.y)) /
		       length;
	}
	double limit = s->facts.code == ACI318 ? aci_blowout_limit(nearest)
	                                       : en_blowout_limit(nearest);
	return near ? split_along(x, near, limit, out) : 0;
}

/* Keeps a list, also an empty one, whose pointer then is not NULL. */
static const struct kept *keep(struct code_strength *s, uint32_t kind, uint64_t anchors,
                               const void *list, size_t count)
{
	struct kept kept = {anchors, kind, (uint32_t)count, list};
	return cache_keep(s->cache, s->arena, &kept) ? cache_find(s->cache, kind, anchors) : NULL;
}

static const struct kept *open_blowout(struct code_strength *s, uint64_t anchors)
{
	uint64_t row[MAX_ANCHORS];
	size_t total = 0, at = 0;
	for (size_t e = 0; e < s->pattern->edge_count; e++)
		total += blowout_rows(s, e, anchors, row);
	struct kept_group *list = arena_take(s->arena, total + 1, sizeof *list);
	for (size_t e = 0; list && e < s->pattern->edge_count; e++) {
		size_t rows = blowout_rows(s, e, anchors, row);
		for (size_t k = 0; k < rows; k++)
			group_open(s, BLOWOUT, row[k], (unsigned)e + 1, &list[at++]);
	}
	return list ? keep(s, BLOWOUT, anchors, list, total) : NULL;
}

static double limit_of(const struct code_strength *s, enum code_mode mode)
{
	return s->facts.code == ACI318 ? aci_group_limit(&s->facts, mode)
	                               : en_group_limit(&s->facts, mode);
}

double pryout_limit(const struct code_strength *s)
{
	/* pryout is a cone pried up from behind, of adhesive anchors also their bond: groups reach
	 * as far as the wider of the two, so that no concrete counts twice */
	double limit = limit_of(s, CONE);
	return s->cache->frame->applies[BOND] ? fmax(limit, limit_of(s, BOND)) : limit;
}

static const struct kept *open_groups(struct code_strength *s, enum code_mode mode,
                                      uint64_t anchors)
{
	double limit = mode == PRYOUT ? pryout_limit(s) : limit_of(s, mode);
	uint64_t group[MAX_ANCHORS];
	size_t count = groups_split(s->pattern, anchors, limit, group);
	struct kept_group *list = arena_take(s->arena, count + 1, sizeof *list);
	for (size_t g = 0; list && g < count; g++)
		group_open(s, mode, group[g], 0, &list[g]);
	return list ? keep(s, mode, anchors, list, count) : NULL;
}

const struct kept_group *kept_groups(struct code_strength *s, enum code_mode mode,
                                     uint64_t anchors, size_t *count)
{
	const struct kept *kept = cache_find(s->cache, mode, anchors);
	if (!kept)
		kept = mode == BLOWOUT ? open_blowout(s, anchors) : open_groups(s, mode, anchors);
	*count = kept ? kept->count : 0;
	return kept ? kept->list : NULL;
}

/* --- edges ---------------------------------------------------------------------------------- */

/* The part of a split row that an anchor of any row stands nearest to along the edge. */
static size_t nearest_part(const double x[], const uint64_t part[], size_t parts, size_t anchor)
{
	size_t best = 0;
	double least = HUGE_VAL;
	for (size_t k = 0; k < parts; k++)
		for (size_t i = 0; i < MAX_ANCHORS; i++)
			if (part[k] >> i & 1 && fabs(x[i] - x[anchor]) < least) {
				least = fabs(x[i] - x[anchor]);
				best = k;
			}
	return best;
}

static const struct kept *open_fronts(struct code_strength *s, size_t view, size_t row,
                                      uint64_t anchors, uint32_t kind)
{
	double c1 = row_distance_of(s, view, row);
	uint64_t part[MAX_ANCHORS] = {anchors};
	size_t parts = view < s->view_count
	                       ? split_along(s->view[view].x, anchors, FRONT_REACH * c1, part)
	                       : 1;
	struct kept_front *list = arena_take(s->arena, parts + 1, sizeof *list);
	if (!list)
		return NULL;
	for (size_t k = 0; k < parts; k++) {
		list[k].anchors = part[k];
		edge_strength_of(s, view, part[k], c1, false, &list[k].strength, NULL);
	}
	for (size_t i = 0; view < s->view_count && i < s->pattern->count; i++)
		if (s->view[view].anchors >> i & 1)
			list[nearest_part(s->view[view].x, part, parts, i)].takes |= (uint64_t)1
			                                                             << i;
	return keep(s, kind, anchors, list, parts);
}

const struct kept_front *kept_fronts(struct code_strength *s, size_t view, size_t row,
                                     uint64_t anchors, size_t *count)
{
	uint32_t kind = (uint32_t)(CODE_MODES + view * MAX_ANCHORS + row);
	const struct kept *kept = cache_find(s->cache, kind, anchors);
	if (!kept)
		kept = open_fronts(s, view, row, anchors, kind);
	*count = kept ? kept->count : 0;
	return kept ? kept->list : NULL;
}

/* --- single anchors ------------------------------------------------------------------------- */

double kept_steel_tension(struct code_strength *s, bool earthquake)
{
	double *kept = &s->cache->single.steel_tension[earthquake];
	if (*kept < 0)
		*kept = (s->facts.code == ACI318 ? aci_steel_tension : en_steel_tension)(
			&s->facts, earthquake, NULL);
	return *kept;
}

double kept_pullout(struct code_strength *s, bool earthquake, size_t loaded)
{
	double *kept = &s->cache->single.pullout[earthquake][loaded];
	if (*kept < 0)
		*kept = s->facts.code == ACI318
		                ? aci_pullout(&s->facts, earthquake, NULL)
		                : en_pullout(&s->facts, earthquake, loaded, NULL);
	return *kept;
}

double kept_bond_sustained(struct code_strength *s)
{
	double *kept = &s->cache->single.bond_sustained;
	if (*kept < 0)
		*kept = aci_bond_sustained(&s->facts, NULL);
	return *kept;
}

double kept_steel_shear(struct code_strength *s, double tension, bool earthquake)
{
	/* only with a gap below the base does the anchor's tension count */
	if (s->facts.lever_arm != NO_LEVER)
		return steel_shear_of(s, tension, earthquake, NULL);
	double *kept = &s->cache->single.steel_shear[earthquake];
	if (*kept < 0)
		*kept = steel_shear_of(s, 0, earthquake, NULL);
	return *kept;
}
