/* How the shears of a state use the shear modes. */
#include "code_parts.h"

#define AS_LOADED 1e-9           /* as in code_tension.c */

static const struct mode_ratio not_computed = {.ratio = -1};

void steel_shear_use(struct code_strength *s, const struct anchor_load *load,
                     struct mode_use *out)
{
	double ratio[MAX_ANCHORS], worst = -1;
	*out = (struct mode_use){.worst = not_computed};
	if (!mode_ready(s, STEEL_SHEAR, load->earthquake))
		return;
	for (size_t i = 0; i < load->count; i++) {
		double capacity = kept_steel_shear(s, load->tension[i], load->earthquake);
		ratio[i] = used(load->shear[i], capacity);
		if (ratio[i] > worst) {
			worst = ratio[i];
			out->anchor = (int)i;
			out->worst = (struct mode_ratio){worst, 0, 0, load->shear[i], capacity};
		}
	}
	for (size_t i = 0; i < load->count; i++)
		if (ratio[i] >= worst * (1 - AS_LOADED))
			out->worst.anchors |= (uint64_t)1 << i;
}

/* --- edges ---------------------------------------------------------------------------------- */

/* The shears as one edge sees them: toward it, outward alone, and along it [N]. */
struct edge_load { double out[MAX_ANCHORS], along[MAX_ANCHORS]; };

static double largest_part(const struct vec2 shear[], size_t count)
{
	double largest = 0;
	for (size_t i = 0; i < count; i++)
		largest = fmax(largest, fmax(fabs(shear[i].x), fabs(shear[i].y)));
	return largest;
}

static void see_loads(const struct edge_order *edge, const struct vec2 shear[], double least,
                      struct edge_load *out)
{
	for (size_t k = 0; k < edge->count; k++) {
		struct vec2 v = shear[edge->anchor[k]];
		double p = v.x * edge->toward.x + v.y * edge->toward.y;
		out->out[k] = p > least ? p : 0;
		out->along[k] = v.y * edge->toward.x - v.x * edge->toward.y;
	}
}

/* Loads of one front: of its own row and the others that it takes, up to use->end. */
static void load_front(const struct code_strength *s, const struct kept_front *front,
                       const struct edge_load *load, size_t first, size_t own_end,
                       struct mode_use *use)
{
	const struct edge_order *edge = &s->cache->frame->edge[use->view];
	const struct edge_view *view = &s->view[use->view];
	double p = 0, px = 0, all = 0, own = 0;
	for (size_t k = 0; k < use->end; k++) {
		size_t i = edge->anchor[k];
		if (!(front->takes >> i & 1))
			continue;
		p += load->out[k];
		px += load->out[k] * view->x[i];
		all += load->along[k];
		if (k >= first && k < own_end)
			own += load->along[k];
	}
	use->pushed = p;
	use->pushed_at = p > 0 ? px / p : front->strength.centre;
	use->beside_all = all;
	use->beside_own = own;
	/* torsion may let the rows' shears along the edge cancel; a row that breaks out does not
	 * know of the other one */
	use->beside = fmax(fabs(all), fabs(own));
	use->off_x = fabs(use->pushed_at - front->strength.centre);
}

/* Ratio of a front whose loads are known: the parts across and along the edge are at right angles
 * in the codes' direction rule, EN 1992-4 7.2.2.5 psi_alpha,V; ACI 318-19 17.7.2.1(c). */
static void rate_front(enum code code, const struct kept_front *front, bool earthquake,
                       struct mode_use *use)
{
	const struct edge_strength *e = &front->strength;
	double grown = 1 + use->off_x / e->lever;
	use->front = front;
	use->across = use->pushed * grown;
	/* EN 1992-4 (7.40): psi_ec,V is on the strength as a whole, whatever its direction */
	use->beside *= code == EN1992_4 ? grown : 1;
	double by_across = used(use->across, earthquake ? e->across_seismic : e->across);
	double by_along = used(use->beside, earthquake ? e->along_seismic : e->along);
	double ratio = sqrt(by_across * by_across + by_along * by_along);
	double demand = sqrt(use->across * use->across + use->beside * use->beside);
	double capacity = ratio > 0 ? demand / ratio : earthquake ? e->across_seismic : e->across;
	/* as one load against one strength, so that what is shown divides to what is judged */
	use->worst.ratio = used(demand, capacity);
	use->worst.demand = demand;
	use->worst.capacity = capacity;
	use->worst.anchors = front->anchors;
}

static void keep_worse(const struct mode_use *use, struct mode_use *out)
{
	if (!out->front || use->worst.ratio > out->worst.ratio)
		*out = *use;
}

/* One row of one edge; false: no memory. */
static bool use_row(struct code_strength *s, size_t view, size_t row, const struct edge_load *load,
                    bool earthquake, struct mode_use *out)
{
	const struct edge_order *edge = &s->cache->frame->edge[view];
	size_t first = row > 0 ? edge->end[row - 1] : 0, end = edge->end[row], count;
	uint64_t pushing = 0;
	for (size_t k = first; k < end; k++)
		if (load->out[k] > 0)
			pushing |= (uint64_t)1 << edge->anchor[k];
	/* where none pushes outward the whole row resists what runs along the edge */
	const struct kept_front *list = kept_fronts(
		s, view, row, pushing ? pushing : s->view[view].row[row], &count);
	for (size_t k = 0; k < count; k++) {
		struct mode_use use = {.view = view, .row = row};
		use.end = edge->takes_front_only[row] ? end : edge->count;
		load_front(s, &list[k], load, first, end, &use);
		rate_front(s->facts.code, &list[k], earthquake, &use);
		use.worst.edge = s->view[view].edge;
		keep_worse(&use, out);
	}
	return list != NULL;
}

/* Nothing is known of the edges but that none is nearer than `clear`: all shear pushes one anchor
 * toward an edge there. */
static bool use_unseen_edge(struct code_strength *s, const struct vec2 shear[], bool earthquake,
                            struct mode_use *out)
{
	size_t count;
	if (s->pattern->clear >= s->cache->frame->remote)
		return true;
	const struct kept_front *list = kept_fronts(s, s->view_count, 0, 1, &count);
	if (!list)
		return false;
	struct mode_use use = {.view = s->view_count};
	for (size_t i = 0; i < s->pattern->count; i++)
		use.pushed += sqrt(shear[i].x * shear[i].x + shear[i].y * shear[i].y);
	rate_front(s->facts.code, list, earthquake, &use);
	use.worst.anchors = s->pattern->count < MAX_ANCHORS
	                            ? ((uint64_t)1 << s->pattern->count) - 1
	                            : UINT64_MAX;
	keep_worse(&use, out);
	return true;
}

void edge_use(struct code_strength *s, const struct vec2 shear[], bool earthquake,
              struct mode_use *out)
{
	*out = (struct mode_use){.worst = not_computed};
	if (!mode_ready(s, EDGE, earthquake))
		return;
	const struct code_frame *frame = s->cache->frame;
	double least = LOADED_SHARE * largest_part(shear, s->pattern->count);
	bool kept = true;
	out->worst = (struct mode_ratio){.ratio = 0};
	for (size_t v = 0; v < s->view_count; v++) {
		struct edge_load load;
		/* EN 1992-4 6.2.2: the front row takes all, the others are not checked */
		size_t rows = s->facts.code == EN1992_4 ? 1 : s->view[v].row_count;
		if (s->view[v].row_distance[0] > frame->remote)
			continue;
		see_loads(&frame->edge[v], shear, least, &load);
		for (size_t row = 0; row < rows; row++)
			kept = use_row(s, v, row, &load, earthquake, out) && kept;
	}
	if (s->view_count == 0 && s->pattern->clear > 0 && s->pattern->clear < HUGE_VAL)
		kept = use_unseen_edge(s, shear, earthquake, out);
	if (!kept)
		out->worst = not_computed;
}

/* --- pryout --------------------------------------------------------------------------------- */

static struct mode_use pry_group(const struct code_strength *s, const struct kept_group *group,
                                 const struct vec2 shear[], bool earthquake)
{
	struct mode_use use = {.group = group};
	double load[MAX_ANCHORS], largest = 0;
	struct vec2 sum = {0, 0};
	for (size_t k = 0; k < group->count; k++) {
		struct vec2 v = shear[group->anchor[k]];
		sum.x += v.x;
		sum.y += v.y;
		largest = fmax(largest, v.x * v.x + v.y * v.y);
	}
	double size = sqrt(sum.x * sum.x + sum.y * sum.y);
	use.along = size > 0 ? (struct vec2){sum.x / size, sum.y / size} : (struct vec2){0, 0};
	for (size_t k = 0; k < group->count; k++) {
		struct vec2 v = shear[group->anchor[k]];
		load[group->anchor[k]] = fmax(0, v.x * use.along.x + v.y * use.along.y);
	}
	use_group(s, group, load, earthquake, &use);
	/* under torsion the resultant says little: then as if all had the largest one (own safe
	 * choice) */
	double all = (double)group->count * sqrt(largest);
	if (all > use.worst.demand) {
		use.by_largest = true;
		use.worst.demand = all;
		use.worst.ratio = used(all, use.worst.capacity);
	}
	return use;
}

void pryout_use(struct code_strength *s, const struct vec2 shear[], bool earthquake,
                struct mode_use *out)
{
	*out = (struct mode_use){.worst = not_computed};
	if (!mode_ready(s, PRYOUT, earthquake))
		return;
	size_t count, n = s->pattern->count;
	uint64_t all = n < MAX_ANCHORS ? ((uint64_t)1 << n) - 1 : UINT64_MAX;
	const struct kept_group *list = kept_groups(s, PRYOUT, all, &count);
	for (size_t g = 0; g < count; g++) {
		struct mode_use use = pry_group(s, &list[g], shear, earthquake);
		if (!out->group || use.worst.ratio > out->worst.ratio)
			*out = use;
	}
}

void code_shear_ratios(struct code_strength *s, const struct vec2 shear_at[], bool earthquake,
                       struct mode_ratio *edge, struct mode_ratio *pryout)
{
	struct mode_use use;
	edge_use(s, shear_at, earthquake, &use);
	*edge = use.worst;
	pryout_use(s, shear_at, earthquake, &use);
	*pryout = use.worst;
}

struct vec2 code_edge_toward(const struct code_strength *s, size_t view)
{
	return s->cache->frame->edge[view].toward;
}
