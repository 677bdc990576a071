/* Which anchors break out together, and the measures of such a group. */
#include "pattern_parts.h"

/* Regions that share less than this share of a square's half side squared share nothing. */
#define SHARED_SHARE 1e-6

static double apart(const struct pattern *pattern, size_t i, size_t k)
{
	struct vec2 between = less(pattern->at[i], pattern->at[k]);
	return sqrt(dot(between, between));
}

/* Anchors by number of their set; sets are merged by renumbering. */
struct sets { size_t of[MAX_ANCHORS]; };

static void merge(struct sets *sets, size_t i, size_t k)
{
	size_t from = sets->of[i], to = sets->of[k];
	for (size_t j = 0; j < MAX_ANCHORS; j++)
		if (sets->of[j] == from)
			sets->of[j] = to;
}

/* Whether two squares of this half side overlap, each as far as its own anchor sees. */
static bool share_concrete(const struct pattern *pattern, size_t i, size_t k, double half)
{
	struct vec2 corner[2][PLANE_SEEN_MOST];
	struct polygon seen[2] = {{corner[0], 0}, {corner[1], 0}};
	seen[0].count = plane_seen(pattern->at[i], half, pattern->turned, pattern->edge,
	                           pattern->edge_count, corner[0]);
	seen[1].count = plane_seen(pattern->at[k], half, pattern->turned, pattern->edge,
	                           pattern->edge_count, corner[1]);
	double sum = plane_area(corner[0], seen[0].count) + plane_area(corner[1], seen[1].count);
	return sum - plane_union_area(seen, 2) > SHARED_SHARE * half * half;
}

/* Adds every set of two or more sets of `parts` that `whole` holds together. */
static size_t add_merged(const struct sets *parts, const struct sets *whole, uint64_t anchors,
                         size_t count, uint64_t out[MAX_ANCHORS])
{
	for (size_t name = 0; name < MAX_ANCHORS; name++) {
		uint64_t members = 0;
		bool differs = false;
		for (size_t i = 0, first = MAX_ANCHORS; i < MAX_ANCHORS; i++) {
			if (!has_anchor(anchors, i) || whole->of[i] != name)
				continue;
			first = first == MAX_ANCHORS ? i : first;
			differs = differs || parts->of[i] != parts->of[first];
			members |= (uint64_t)1 << i;
		}
		if (differs && count < MAX_ANCHORS)
			out[count++] = members;
	}
	return count;
}

static size_t list_sets(const struct sets *sets, uint64_t anchors, uint64_t out[MAX_ANCHORS])
{
	size_t count = 0;
	uint64_t left = anchors;
	for (size_t i = 0; i < MAX_ANCHORS; i++) {
		if (!has_anchor(left, i))
			continue;
		out[count] = 0;
		for (size_t k = i; k < MAX_ANCHORS; k++)
			if (has_anchor(left, k) && sets->of[k] == sets->of[i])
				out[count] |= (uint64_t)1 << k;
		left &= ~out[count++];
	}
	return count;
}

size_t groups_split(const struct pattern *pattern, uint64_t anchors, double limit,
                    uint64_t out[MAX_ANCHORS])
{
	struct sets sets, whole;
	bool hidden = false;
	for (size_t i = 0; i < MAX_ANCHORS; i++)
		sets.of[i] = i;
	for (size_t i = 0; i < pattern->count; i++)
		for (size_t k = 0; has_anchor(anchors, i) && k < i; k++) {
			if (!has_anchor(anchors, k) || sets.of[i] == sets.of[k] ||
			    !(apart(pattern, i, k) < limit))
				continue;
			if (plane_sees(pattern->at[i], pattern->at[k], pattern->edge,
			               pattern->edge_count))
				merge(&sets, i, k);
			else
				hidden = true;
		}
	size_t count = list_sets(&sets, anchors, out);
	if (!hidden)
		return count;
	/* around the end of a joint two that do not see one another may yet use the same concrete:
	 * such sets count each by itself and together */
	whole = sets;
	for (size_t i = 0; i < pattern->count; i++)
		for (size_t k = 0; has_anchor(anchors, i) && k < i; k++)
			if (has_anchor(anchors, k) && whole.of[i] != whole.of[k] &&
			    apart(pattern, i, k) < limit &&
			    share_concrete(pattern, i, k, limit / 2))
				merge(&whole, i, k);
	return add_merged(&sets, &whole, anchors, count, out);
}

/* --- measures ------------------------------------------------------------------------------- */

static double nearest_of(const struct pattern *pattern, uint64_t anchors, size_t edge)
{
	double nearest = HUGE_VAL;
	for (size_t i = 0; i < pattern->count; i++)
		if (has_anchor(anchors, i))
			nearest = fmin(nearest, distance_of(pattern, i, edge));
	return nearest;
}

static double off_line(const struct segment *line, struct vec2 point)
{
	struct vec2 along = less(line->to, line->from), to = less(point, line->from);
	double length = sqrt(dot(along, along));
	return length > 0 ? fabs(along.x * to.y - along.y * to.x) / length : HUGE_VAL;
}

/* An edge in line with an earlier near one: it is no further edge. */
static bool is_counted(const struct pattern *pattern, uint64_t anchors, size_t edge, double near)
{
	const struct segment *line = &pattern->edge[edge];
	for (size_t e = 0; e < edge; e++)
		if (nearest_of(pattern, anchors, e) < near &&
		    off_line(&pattern->edge[e], line->from) <= UPON &&
		    off_line(&pattern->edge[e], line->to) <= UPON)
			return true;
	return false;
}

static void measure_edges(const struct pattern *pattern, uint64_t anchors, double near,
                          struct group *out)
{
	out->least_edge = HUGE_VAL;
	if (pattern->clear > 0 && pattern->clear < HUGE_VAL) {
		/* how many stand there is not known; one: the rule for three and more would only
		 * help */
		out->least_edge = out->most_edge = pattern->clear;
		out->near_edges = pattern->clear < near;
	}
	for (size_t e = 0; e < pattern->edge_count; e++) {
		double distance = nearest_of(pattern, anchors, e);
		out->least_edge = fmin(out->least_edge, distance);
		if (!(distance < near))
			continue;
		out->most_edge = fmax(out->most_edge, distance);
		out->near_edges += !is_counted(pattern, anchors, e, near);
	}
	if (!out->near_edges)
		out->most_edge = 0;
}

/* Minimum spanning tree by Prim: the shortest leg from the tree to an anchor beside it, again and
 * again. */
static void measure_spacing(const struct pattern *pattern, const size_t member[], struct group *out)
{
	double leg[MAX_ANCHORS], sum = 0;
	bool in[MAX_ANCHORS] = {true};
	for (size_t k = 0; k < out->count; k++)
		leg[k] = apart(pattern, member[0], member[k]);
	out->least_spacing = HUGE_VAL;
	for (size_t legs = 1; legs < out->count; legs++) {
		size_t next = 0;
		for (size_t k = 1; k < out->count; k++)
			if (!in[k] && (next == 0 || leg[k] < leg[next]))
				next = k;
		in[next] = true;
		sum += leg[next];
		out->adjacent = fmax(out->adjacent, leg[next]);
		out->least_spacing = fmin(out->least_spacing, leg[next]);
		for (size_t k = 0; k < out->count; k++)
			leg[k] = fmin(leg[k], apart(pattern, member[next], member[k]));
	}
	out->mean_spacing = out->count > 1 ? sum / (double)(out->count - 1) : 0;
}

void group_measure(const struct pattern *pattern, uint64_t anchors, double near, struct group *out)
{
	struct vec2 sum = {0, 0}, x = plane_heading(pattern->turned), y = {-x.y, x.x};
	size_t member[MAX_ANCHORS];
	*out = (struct group){.anchors = anchors};
	for (size_t i = 0; i < pattern->count; i++) {
		if (!has_anchor(anchors, i))
			continue;
		member[out->count++] = i;
		sum.x += dot(pattern->at[i], x);
		sum.y += dot(pattern->at[i], y);
	}
	measure_edges(pattern, anchors, near, out);
	if (out->count == 0)
		return;
	out->centre = (struct vec2){sum.x / (double)out->count, sum.y / (double)out->count};
	measure_spacing(pattern, member, out);
}
