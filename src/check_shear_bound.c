#include "check_shear_bound.h"

#include "check_twist.h"

#include <math.h>
#include <string.h>

enum {
	HEADINGS = 72, /* of one turning force */
	LATTICE = 36,  /* of each of two */
	STARTS = 3,    /* best points of the lattice that lines start from */
	ROUNDS = 8,    /* of lines through such a point, at most */
	WINDOW = 4,    /* steps of such a line to either side */
	ROOT_STEPS = 60,
	CLIMB_STEPS = 60,
	PARTS = 8,          /* of a step near the top */
	HALVINGS = 5,       /* of a step in which two crossings may hide */
	TURN_HALVINGS = 7,  /* of a step in which a resultant turns fast */
	MAX_CROSSINGS = 64, /* within a step; more are not looked at */
	MAX_SAMPLES = 640,  /* on a line; what is beyond is looked at, but not climbed from */
	INSIDE_LATTICE = 16, /* of each of two, between the ends of the torsion */
	PEAKS = 2           /* edge and pryout */
};
/* A local maximum below this share of the best so far cannot pass it between two samples. */
#define HOPEFUL 0.8
#define NEAR_TOP 0.99            /* from here on steps are looked at more closely */
#define FAST_TURN 0.36           /* tangent of 20 degrees; a step alone has 5 */
#define NEAR_ENOUGH 1e-7         /* a maximum is found to this share of its value */
#define INSIDE_WIDTH 1e-4        /* between the ends a heading is found to this [rad] */
#define ROOT_WIDTH 1e-10         /* a crossing is found to this [rad] */
/* Both sides of a crossing are looked at this far from it [rad]: farther than what counts as not
 * pushing at all (1e-9 of the largest shear), and nothing of a ratio. */
#define ASIDE 1e-8
/* A sine wave of amplitude A bends away from its chord over a step h by at most A h^2/8. */
#define BEND 0.125

static const double full_turn = 6.28318530717958647692;
static const double golden = 0.61803398874989484820;

/* Headings on a line: that of turning force k is start + weight * t. */
struct line { double start[MAX_TURNING], weight[MAX_TURNING]; };

struct search {
	const struct base *base;
	struct code_strength *s;
	const struct load_case *load_case;
	bool earthquake, high;
	size_t group_count;          /* anchors that are pried out together */
	uint64_t group[MAX_ANCHORS];
	struct shear_peak *peak[PEAKS];
	double best[PEAKS];          /* of this end of the torsion alone */
	double best_at[PEAKS][MAX_TURNING];
};

struct sample {
	double t, ratio[PEAKS];
	bool jumps;                  /* between the sample before and this one the ratios jump */
};
struct samples { size_t count; struct sample list[MAX_SAMPLES]; };
struct crossings { size_t count; double t[MAX_CROSSINGS]; };

void shear_peak_raise(struct shear_peak *peak, const struct mode_ratio *ratio,
                      const struct load_case *from, double heading, const struct vec2 shear[],
                      size_t count)
{
	if (peak->known && !(ratio->ratio > peak->worst.ratio))
		return;
	peak->known = true;
	peak->worst = *ratio;
	peak->from = from;
	peak->heading = heading;
	memcpy(peak->shear, shear, count * sizeof *shear);
}

/* Both ratios of some shears: the peaks and the best of this pass are raised. */
static void take(struct search *search, const double heading[MAX_TURNING],
                 const struct vec2 shear[], double ratio[PEAKS])
{
	struct mode_ratio mode[PEAKS];
	code_shear_ratios(search->s, shear, search->earthquake, &mode[0], &mode[1]);
	for (int p = 0; p < PEAKS; p++) {
		shear_peak_raise(search->peak[p], &mode[p], search->load_case, heading[0], shear,
		                 search->base->anchor_count);
		ratio[p] = mode[p].ratio;
		if (mode[p].ratio > search->best[p]) {
			search->best[p] = mode[p].ratio;
			memcpy(search->best_at[p], heading, MAX_TURNING * sizeof *heading);
		}
	}
}

static void shear_on(const struct search *search, const struct line *line, double t,
                     double heading[MAX_TURNING], struct vec2 shear[])
{
	for (int k = 0; k < MAX_TURNING; k++)
		heading[k] = line->start[k] + line->weight[k] * t;
	shear_group_vectors(search->base, search->load_case, heading, search->high, shear);
}

/* Both ratios at a place of the line; the peaks are raised. */
static struct sample look(struct search *search, const struct line *line, double t)
{
	struct vec2 shear[MAX_ANCHORS];
	double heading[MAX_TURNING];
	struct sample sample = {.t = t};
	shear_on(search, line, t, heading, shear);
	take(search, heading, shear, sample.ratio);
	return sample;
}

/* --- where an anchor begins or ends to push toward an edge ---------------------------------- */

/* Of one anchor and one edge, on a line of headings. */
struct push { const struct search *search; const struct line *line; size_t view, anchor; };

static double pushes(const struct search *search, size_t view, size_t anchor,
                     const struct vec2 shear[])
{
	struct vec2 toward = code_edge_toward(search->s, view), v = shear[anchor];
	return v.x * toward.x + v.y * toward.y;
}

static double push_at(const struct push *push, double t)
{
	struct vec2 shear[MAX_ANCHORS];
	double heading[MAX_TURNING];
	shear_on(push->search, push->line, t, heading, shear);
	return pushes(push->search, push->view, push->anchor, shear);
}

/* Root between a and b, where the push has different signs: regula falsi, the kept end halved
 * (Illinois). */
static double crossing(const struct push *push, double a, double at_a, double b, double at_b)
{
	double t = a;
	for (int i = 0; i < ROOT_STEPS && b - a > ROOT_WIDTH; i++) {
		t = (a * at_b - b * at_a) / (at_b - at_a);
		/* beside an end: step over the root, so that the bracket closes */
		t = fmin(fmax(t, a + ROOT_WIDTH / 4), b - ROOT_WIDTH / 4);
		double value = push_at(push, t);
		if (value == 0)
			return t;
		if ((value > 0) == (at_b > 0)) {
			b = t;
			at_b = value;
			at_a /= 2;
		} else {
			a = t;
			at_a = value;
			at_b /= 2;
		}
	}
	return t;
}

static void add_crossing(struct crossings *list, double t)
{
	size_t i = list->count;
	for (size_t k = 0; k < list->count; k++)
		if (fabs(list->t[k] - t) <= 4 * ASIDE)
			return;
	if (list->count == MAX_CROSSINGS)
		return;
	for (; i > 0 && list->t[i - 1] > t; i--)
		list->t[i] = list->t[i - 1];
	list->t[i] = t;
	list->count++;
}

/* Crossings between a and b. `size`: of the shear there; a pair of crossings may hide where both
 * ends are near to nothing. */
static void cross_between(const struct push *push, double a, double at_a, double b, double at_b,
                          double size, int halvings, struct crossings *list)
{
	double step = b - a;
	if ((at_a > 0) != (at_b > 0)) {
		add_crossing(list, crossing(push, a, at_a, b, at_b));
		return;
	}
	/* twice the bend: the torsion's own waves are added to the force's */
	if (halvings == 0 || fmin(fabs(at_a), fabs(at_b)) > 2 * BEND * step * step * size)
		return;
	double middle = (a + b) / 2, at_middle = push_at(push, middle);
	cross_between(push, a, at_a, middle, at_middle, size, halvings - 1, list);
	cross_between(push, middle, at_middle, b, at_b, size, halvings - 1, list);
}

static void find_crossings(const struct search *search, const struct line *line, double from,
                           const struct vec2 at_from[], double to, const struct vec2 at_to[],
                           struct crossings *list)
{
	double size = 0;
	list->count = 0;
	for (size_t i = 0; i < search->base->anchor_count; i++)
		size = fmax(size, fabs(at_from[i].x) + fabs(at_from[i].y));
	for (size_t v = 0; v < search->s->view_count; v++)
		for (size_t i = 0; i < search->base->anchor_count; i++) {
			struct push push = {search, line, v, i};
			if (size > 0 && search->s->view[v].anchors >> i & 1)
				cross_between(&push, from, pushes(search, v, i, at_from), to,
				              pushes(search, v, i, at_to), size, HALVINGS, list);
		}
}

/* --- one line ------------------------------------------------------------------------------- */

static void add_sample(struct samples *all, struct sample sample, bool jumps)
{
	sample.jumps = jumps;
	if (all->count < MAX_SAMPLES)
		all->list[all->count++] = sample;
}

/* Headings at which the shears stand, on a line. */
struct station { double t; struct vec2 shear[MAX_ANCHORS]; };

static void stand_at(const struct search *search, const struct line *line, double t,
                     struct station *out)
{
	double heading[MAX_TURNING];
	out->t = t;
	shear_on(search, line, t, heading, out->shear);
}

static struct vec2 resultant(const struct search *search, uint64_t group,
                             const struct station *station)
{
	struct vec2 sum = {0, 0};
	for (size_t i = 0; i < search->base->anchor_count; i++)
		if (group >> i & 1) {
			sum.x += station->shear[i].x;
			sum.y += station->shear[i].y;
		}
	return sum;
}

/* Whether the resultant of some group turns fast from one station to the other, as it does where
 * the forces nearly cancel: pryout follows its direction. */
static bool turns_fast(const struct search *search, const struct station *from,
                       const struct station *to)
{
	for (size_t g = 0; g < search->group_count; g++) {
		struct vec2 a = resultant(search, search->group[g], from);
		struct vec2 b = resultant(search, search->group[g], to);
		double across = a.x * b.y - a.y * b.x, along = a.x * b.x + a.y * b.y;
		if (along < 0 || fabs(across) > FAST_TURN * along)
			return true;
	}
	return false;
}

/* Samples behind `from` up to and with `to`. */
static void sample_between(struct search *search, const struct line *line,
                           const struct station *from, const struct station *to, int halvings,
                           struct samples *out)
{
	struct crossings crossings;
	if (halvings > 0 && turns_fast(search, from, to)) {
		struct station middle;
		stand_at(search, line, (from->t + to->t) / 2, &middle);
		sample_between(search, line, from, &middle, halvings - 1, out);
		sample_between(search, line, &middle, to, halvings - 1, out);
		return;
	}
	find_crossings(search, line, from->t, from->shear, to->t, to->shear, &crossings);
	for (size_t k = 0; k < crossings.count; k++) {
		add_sample(out, look(search, line, crossings.t[k] - ASIDE), false);
		add_sample(out, look(search, line, crossings.t[k] + ASIDE), true);
	}
	add_sample(out, look(search, line, to->t), false);
}

static void sample_line(struct search *search, const struct line *line, double from, double step,
                        size_t count, struct samples *out)
{
	struct station station[2];
	out->count = 0;
	stand_at(search, line, from, &station[0]);
	add_sample(out, look(search, line, from), false);
	for (size_t j = 1; j < count; j++) {
		struct station *before = &station[(j - 1) % 2], *here = &station[j % 2];
		stand_at(search, line, from + step * (double)j, here);
		sample_between(search, line, before, here, TURN_HALVINGS, out);
	}
}

/* Climbs from a sample into the piece beside it, up to the next one: golden section, given up at
 * once where the first small step goes down. */
static void climb(struct search *search, const struct line *line, int p, const struct sample *top,
                  const struct sample *next)
{
	double a = top->t, b = next->t, at_a = top->ratio[p], at_b = next->ratio[p];
	double first = a + 1e-4 * (b - a);
	if (fabs(b - a) <= 2 * ASIDE || look(search, line, first).ratio[p] <= at_a)
		return;
	double left = b - golden * (b - a), right = a + golden * (b - a);
	double at_left = look(search, line, left).ratio[p];
	double at_right = look(search, line, right).ratio[p];
	for (int i = 0; i < CLIMB_STEPS; i++) {
		double high = fmax(at_left, at_right);
		if (high - fmin(at_a, at_b) <= NEAR_ENOUGH * high || fabs(b - a) <= ASIDE)
			return;
		if (at_left >= at_right) {
			b = right;
			at_b = at_right;
			right = left;
			at_right = at_left;
			left = b - golden * (b - a);
			at_left = look(search, line, left).ratio[p];
		} else {
			a = left;
			at_a = at_left;
			left = right;
			at_left = at_right;
			right = a + golden * (b - a);
			at_right = look(search, line, right).ratio[p];
		}
	}
}

/* Climbs from every sample that is the highest of its smooth neighbours and hopeful. */
static void climb_all(struct search *search, const struct line *line, int p,
                      const struct sample list[], size_t count)
{
	for (size_t i = 0; i < count; i++) {
		const struct sample *top = &list[i];
		const struct sample *left = i > 0 && !top->jumps ? top - 1 : NULL;
		const struct sample *right = i + 1 < count && !top[1].jumps ? top + 1 : NULL;
		double value = top->ratio[p];
		if (value < HOPEFUL * search->best[p] || (left && left->ratio[p] > value) ||
		    (right && right->ratio[p] > value))
			continue;
		if (left)
			climb(search, line, p, top, left);
		if (right)
			climb(search, line, p, top, right);
	}
}

/* A kink may part one step near the top into two hills: there in finer steps. */
static void climb_finely(struct search *search, const struct line *line, int p,
                         const struct sample *from, const struct sample *to)
{
	struct sample list[PARTS + 1] = {*from};
	list[0].jumps = false;
	for (int k = 1; k < PARTS; k++)
		list[k] = look(search, line, from->t + (to->t - from->t) * k / PARTS);
	list[PARTS] = *to;
	climb_all(search, line, p, list, PARTS + 1);
}

static void search_line(struct search *search, const struct line *line, double from, double step,
                        size_t count)
{
	struct samples all;
	sample_line(search, line, from, step, count, &all);
	for (int p = 0; p < PEAKS; p++) {
		climb_all(search, line, p, all.list, all.count);
		for (size_t i = 0; i + 1 < all.count; i++) {
			const struct sample *here = &all.list[i];
			double value = fmax(here->ratio[p], here[1].ratio[p]);
			if (!here[1].jumps && value >= NEAR_TOP * search->best[p])
				climb_finely(search, line, p, here, here + 1);
		}
	}
}

/* --- two turning forces --------------------------------------------------------------------- */

struct lattice { double ratio[LATTICE][LATTICE][PEAKS]; };

static bool is_top(const struct lattice *lattice, int p, int i, int j)
{
	for (int di = -1; di <= 1; di++)
		for (int dj = -1; dj <= 1; dj++)
			if (lattice->ratio[(i + di + LATTICE) % LATTICE]
			                  [(j + dj + LATTICE) % LATTICE][p] >
			    lattice->ratio[i][j][p])
				return false;
	return true;
}

/* The best tops of the lattice that are not in `taken` yet; false: no more. */
static bool next_top(const struct lattice *lattice, int p, bool taken[LATTICE][LATTICE],
                     double heading[MAX_TURNING])
{
	double most = -1;
	int at[2] = {0, 0};
	for (int i = 0; i < LATTICE; i++)
		for (int j = 0; j < LATTICE; j++)
			if (!taken[i][j] && lattice->ratio[i][j][p] > most &&
			    is_top(lattice, p, i, j)) {
				most = lattice->ratio[i][j][p];
				at[0] = i;
				at[1] = j;
			}
	taken[at[0]][at[1]] = true;
	for (int k = 0; k < 2; k++)
		heading[k] = full_turn * at[k] / LATTICE;
	return most > 0;
}

/* Lines through a point, each heading alone and both at once, as long as they find better ones. */
static void climb_from(struct search *search, int p, const double heading[MAX_TURNING])
{
	static const double ways[][MAX_TURNING] = {{1, 0}, {0, 1}, {1, 1}, {1, -1}};
	double step = full_turn / LATTICE / 2, at[MAX_TURNING];
	memcpy(at, heading, sizeof at);
	for (int round = 0; round < ROUNDS; round++) {
		double before = search->best[p];
		for (size_t w = 0; w < sizeof ways / sizeof *ways; w++) {
			struct line line;
			memcpy(line.start, at, sizeof at);
			memcpy(line.weight, ways[w], sizeof line.weight);
			double known = search->best[p];
			search_line(search, &line, -WINDOW * step, step, 2 * WINDOW + 1);
			if (search->best[p] > known)
				memcpy(at, search->best_at[p], sizeof at);
		}
		if (search->best[p] <= before * (1 + NEAR_ENOUGH))
			return;
	}
}

static void search_plane(struct search *search)
{
	struct lattice lattice;
	for (int i = 0; i < LATTICE; i++) {
		struct line line = {{full_turn * i / LATTICE, 0}, {0, 1}};
		for (int j = 0; j < LATTICE; j++) {
			struct sample sample = look(search, &line, full_turn * j / LATTICE);
			memcpy(lattice.ratio[i][j], sample.ratio, sizeof sample.ratio);
		}
	}
	for (int p = 0; p < PEAKS; p++) {
		bool taken[LATTICE][LATTICE] = {{false}};
		double heading[MAX_TURNING];
		for (int k = 0; k < STARTS && next_top(&lattice, p, taken, heading); k++)
			climb_from(search, p, heading);
	}
}

/* --- between the ends of the torsion ------------------------------------------------------- */

static void look_inside(struct search *search, const double heading[MAX_TURNING])
{
	struct vec2 low[MAX_ANCHORS], high[MAX_ANCHORS], shear[MAX_ANCHORS];
	double share[MAX_TWISTS], ratio[PEAKS];
	shear_group_vectors(search->base, search->load_case, heading, false, low);
	shear_group_vectors(search->base, search->load_case, heading, true, high);
	size_t count = twist_shares(search->s, low, high, share);
	for (size_t k = 0; k < count; k++) {
		twist_between(low, high, search->base->anchor_count, share[k], shear);
		take(search, heading, shear, ratio);
	}
}

/* From the best heading found so far by ever smaller steps of each heading. */
static void close_in(struct search *search, int p, double step)
{
	for (; step > INSIDE_WIDTH; step /= 2)
		for (int k = 0; k < search->load_case->turning_count; k++)
			for (int sign = -1; sign <= 1; sign += 2) {
				double heading[MAX_TURNING];
				memcpy(heading, search->best_at[p], sizeof heading);
				heading[k] += sign * step;
				look_inside(search, heading);
			}
}

static void search_inside(struct search *search)
{
	int turning = search->load_case->turning_count;
	int first = turning > 1 ? INSIDE_LATTICE : turning > 0 ? HEADINGS : 1;
	int second = turning > 1 ? INSIDE_LATTICE : 1;
	search->best[0] = search->best[1] = -1;
	for (int i = 0; i < first; i++)
		for (int j = 0; j < second; j++) {
			const double heading[MAX_TURNING] = {full_turn * i / first,
			                                     full_turn * j / second};
			look_inside(search, heading);
		}
	for (int p = 0; p < PEAKS && search->best[p] > 0; p++)
		close_in(search, p, full_turn / first / 2);
}

/* --- the case ------------------------------------------------------------------------------- */

/* Whether two cases push alike: weights and tilt may differ. */
static bool same_push(const struct load_case *a, const struct load_case *b)
{
	bool same = a->turning_count == b->turning_count &&
	            (a->earthquake != NULL) == (b->earthquake != NULL);
	for (int k = 0; k < 3; k++)
		same = same && a->fixed_shear[k] == b->fixed_shear[k];
	for (int k = 0; same && k < a->turning_count; k++) {
		const struct turning_force *x = &a->turning_force[k], *y = &b->turning_force[k];
		same = x->force == y->force && x->lead == y->lead && x->at_hull == y->at_hull &&
		       (x->at_hull || (x->at[0] == y->at[0] && x->at[1] == y->at[1])) &&
		       x->twist == y->twist && x->one_sign == y->one_sign;
	}
	return same;
}

void shear_mode_bound(const struct base *base, struct code_strength *s, const struct load_case *c,
                      bool earthquake, struct shear_peak *edge, struct shear_peak *pryout)
{
	struct search search = {.base = base, .s = s, .load_case = c, .earthquake = earthquake};
	const struct line whole = {{0, 0}, {1, 1}};
	/* most cases of a group differ in their weights alone */
	if (edge->known && pryout->known &&
	    (same_push(edge->from, c) || same_push(pryout->from, c)))
		return;
	const struct pattern *pattern = s->pattern;
	uint64_t all = pattern->count < MAX_ANCHORS ? ((uint64_t)1 << pattern->count) - 1
	                                            : UINT64_MAX;
	if (earthquake ? s->ready_seismic[PRYOUT] : s->ready[PRYOUT])
		search.group_count = groups_split(pattern, all, pryout_limit(s), search.group);
	search.peak[0] = edge;
	search.peak[1] = pryout;
	/* without a range of the torsion both of its ends are one */
	bool open = shear_group_is_open(c);
	for (int high = 0; high <= (open ? 1 : 0); high++) {
		search.high = high;
		search.best[0] = search.best[1] = -1;
		if (c->turning_count == 0)
			look(&search, &whole, 0);
		else if (c->turning_count == 1)
			/* one step more than a turn: each heading has both neighbours */
			search_line(&search, &whole, 0, full_turn / HEADINGS, HEADINGS + 2);
		else
			search_plane(&search);
	}
	if (open)
		search_inside(&search);
}
