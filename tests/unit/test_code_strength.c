/* The kernel that makes ratios of a state's tensions and shears: against plain loops over the
 * design functions, turned axes, kept strengths, limits. The strengths themselves are tested where
 * they are written, the largest over all headings in test_check_shear_bound.c. */
#include "../support/cases.h"
#include "../support/code_cell.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double pi = 3.14159265358979323846;
static const double sides[4] = {420, 700, 500, 900};

static struct base_case it;
static struct code_place place;
static struct code_strength s;
static struct arena arena;

static void release(void)
{
	arena_close(&arena);
}

TestSuite(code_strength, .fini = release);

static void near(double value, double expected, double share, const char *what)
{
	cr_assert(value == expected || fabs(value - expected) <= share * fabs(expected),
	          "%s: %.17g, expected %.17g", what, value, expected);
}

/* Six anchors, the rows 700 apart. */
static void open_cell(enum anchor_type type)
{
	arena_close(&arena);
	arena_open(&arena, NULL, NULL);
	case_clear(&it);
	case_rectangle(&it, 0, 0, 1000, 800);
	for (int i = 0; i < 6; i++)
		case_anchor(&it, 150 * (i % 3 - 1), i < 3 ? -350 : 350);
	code_cell_fill(&it, type);
}

static void build(enum code code)
{
	cr_assert_eq(code_strength_build(&it.cell, code, CODE_CELL_CONCRETE, &place.pattern,
	                                 &arena, &s),
	             DONE);
}

static void open_strength(enum anchor_type type, enum code code, double turned, struct vec2 moved)
{
	open_cell(type);
	code_place_open(&place, &it, sides, turned, moved, &arena);
	build(code);
}

struct loads {
	double tension[MAX_ANCHORS], shear[MAX_ANCHORS];
	struct vec2 shear_at[MAX_ANCHORS];
	struct anchor_load load;
};

static void loads_of(struct dice *dice, struct loads *out)
{
	double tilt = dice_between(dice, 0, 2 * pi), heading = dice_between(dice, 0, 2 * pi);
	double twist = dice_between(dice, -2, 2);
	memset(out, 0, sizeof *out);
	for (size_t i = 0; i < it.cell.anchors.count; i++) {
		struct vec2 at = it.cell.anchors.at[i];
		double lift = 9e3 * (at.x * cos(tilt) / 150 + at.y * sin(tilt) / 350) - 1e3;
		out->tension[i] = fmax(0, lift);
		out->shear_at[i] = (struct vec2){2e3 * (cos(heading) - twist * at.y / 350),
		                                 2e3 * (sin(heading) + twist * at.x / 350)};
		out->shear[i] = sqrt(out->shear_at[i].x * out->shear_at[i].x +
		                     out->shear_at[i].y * out->shear_at[i].y);
	}
	out->load = (struct anchor_load){.count = it.cell.anchors.count,
	                                 .tension = out->tension,
	                                 .shear = out->shear,
	                                 .shear_at = out->shear_at};
}

/* --- plain loops ---------------------------------------------------------------------------- */

/* Position along the pattern's axes. */
static struct vec2 along_axes(struct vec2 v, double turned)
{
	return (struct vec2){v.x * cos(turned) + v.y * sin(turned),
	                     v.y * cos(turned) - v.x * sin(turned)};
}

static double plain_group(const struct group_strength *g, const double load[], bool earthquake)
{
	double sum = 0, x = 0, y = 0;
	for (size_t i = 0; i < place.pattern.count; i++)
		if (g->anchors >> i & 1) {
			struct vec2 at = along_axes(place.pattern.at[i], place.pattern.turned);
			sum += load[i];
			x += load[i] * (at.x - g->centre.x);
			y += load[i] * (at.y - g->centre.y);
		}
	if (sum == 0)
		return 0;
	return sum * (1 + fabs(x / sum) / g->lever) * (1 + fabs(y / sum) / g->lever) /
	       (earthquake ? g->seismic : g->design);
}

typedef void group_function(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                            bool earthquake, struct group_strength *out, struct trace *trace);

static double plain_groups(group_function *strength, double limit, uint64_t mask,
                           const double load[], bool earthquake)
{
	uint64_t group[MAX_ANCHORS];
	size_t count = groups_split(&place.pattern, mask, limit, group);
	double worst = 0;
	for (size_t g = 0; g < count; g++) {
		struct group_strength one;
		strength(&s.facts, &place.pattern, group[g], false, &one, NULL);
		one.anchors = group[g];
		worst = fmax(worst, plain_group(&one, load, earthquake));
	}
	return worst;
}

/* The same, and the most loaded anchor as if alone. */
static double plain_groups_and_leader(group_function *strength, double limit, uint64_t mask,
                                      const double load[], bool earthquake)
{
	size_t leader = 0;
	for (size_t i = 1; i < place.pattern.count; i++)
		leader = load[i] > load[leader] ? i : leader;
	uint64_t alone = mask & (uint64_t)1 << leader;
	return fmax(plain_groups(strength, limit, mask, load, earthquake),
	            plain_groups(strength, limit, alone, load, earthquake));
}

static uint64_t plain_mask(const double tension[])
{
	uint64_t mask = 0;
	for (size_t i = 0; i < place.pattern.count; i++)
		if (tension[i] > 0)
			mask |= (uint64_t)1 << i;
	return mask;
}

static double plain_pryout(const struct vec2 shear[], bool earthquake)
{
	bool aci = s.facts.code == ACI318;
	uint64_t group[MAX_ANCHORS], all = ((uint64_t)1 << place.pattern.count) - 1;
	size_t count = groups_split(&place.pattern, all,
	                            aci ? aci_group_limit(&s.facts, CONE)
	                                : en_group_limit(&s.facts, CONE),
	                            group);
	double worst = 0;
	for (size_t g = 0; g < count; g++) {
		struct group_strength one;
		struct vec2 sum = {0, 0};
		double load[MAX_ANCHORS] = {0}, most = 0, n = 0;
		(aci ? aci_pryout : en_pryout)(&s.facts, &place.pattern, group[g], false, &one,
		                               NULL);
		one.anchors = group[g];
		for (size_t i = 0; i < place.pattern.count; i++)
			if (group[g] >> i & 1) {
				sum = (struct vec2){sum.x + shear[i].x, sum.y + shear[i].y};
				most = fmax(most, hypot(shear[i].x, shear[i].y));
				n++;
			}
		double size = hypot(sum.x, sum.y);
		for (size_t i = 0; size > 0 && i < place.pattern.count; i++)
			load[i] = fmax(0, (shear[i].x * sum.x + shear[i].y * sum.y) / size);
		worst = fmax(worst, plain_group(&one, load, earthquake));
		worst = fmax(worst, n * most / (earthquake ? one.seismic : one.design));
	}
	return worst;
}

/* Anchors whose neighbours along the edge stand nearer than 3 c1 to one of `front`. */
static uint64_t grow_front(const struct edge_view *view, uint64_t mask, uint64_t front, double c1)
{
	for (uint64_t before = 0; before != front;) {
		before = front;
		for (size_t i = 0; i < MAX_ANCHORS; i++)
			for (size_t j = 0; j < MAX_ANCHORS; j++)
				if (front >> i & 1 && mask >> j & 1 &&
				    fabs(view->x[i] - view->x[j]) < 3 * c1)
					front |= (uint64_t)1 << j;
	}
	return front;
}

static double gap_to(const struct edge_view *view, uint64_t front, size_t anchor)
{
	double least = HUGE_VAL;
	for (size_t i = 0; i < MAX_ANCHORS; i++)
		if (front >> i & 1)
			least = fmin(least, fabs(view->x[i] - view->x[anchor]));
	return least;
}

static double plain_front(const struct edge_view *view, size_t row, uint64_t set, uint64_t mask,
                          uint64_t front, const double p[], const double q[], bool earthquake)
{
	struct edge_strength e;
	double c1 = view->row_distance[row], sum = 0, x = 0, all = 0, own = 0;
	(s.facts.code == ACI318 ? aci_edge : en_edge)(&s.facts, &place.pattern, view, front, c1,
	                                              false, &e, NULL);
	for (size_t i = 0; i < place.pattern.count; i++) {
		if (!(set >> i & 1) || gap_to(view, front, i) > gap_to(view, mask, i))
			continue;
		sum += p[i];
		x += p[i] * view->x[i];
		all += q[i];
		own += view->row[row] >> i & 1 ? q[i] : 0;
	}
	double off = sum > 0 ? fabs(x / sum - e.centre) : 0;
	/* EN 1992-4 (7.40) has psi_ec,V on the whole strength, ACI 318-19 17.7.2.1 across alone */
	double grown = 1 + off / e.lever, beside = s.facts.code == EN1992_4 ? grown : 1;
	return hypot(sum * grown / (earthquake ? e.across_seismic : e.across),
	             beside * fmax(fabs(all), fabs(own)) /
	                     (earthquake ? e.along_seismic : e.along));
}

/* Anchors whose load a row takes. */
static uint64_t plain_set(const struct edge_view *view, size_t row)
{
	uint64_t set = 0;
	bool alone = s.facts.code == ACI318 && row + 1 < view->row_count &&
	             aci_row_stands_alone(view, row);
	for (size_t k = 0; k < (alone ? row + 1 : view->row_count); k++)
		set |= view->row[k];
	return set;
}

static double plain_edge(const struct vec2 shear[], bool earthquake)
{
	double worst = 0;
	for (size_t v = 0; v < s.view_count; v++) {
		const struct edge_view *view = &s.view[v];
		struct vec2 t = along_axes(view->toward, place.pattern.turned);
		double p[MAX_ANCHORS], q[MAX_ANCHORS];
		bool aci = s.facts.code == ACI318;
		if (!aci && view->row_distance[0] > en_remote_edge(&s.facts))
			continue;
		for (size_t i = 0; i < place.pattern.count; i++) {
			p[i] = fmax(0, shear[i].x * t.x + shear[i].y * t.y);
			q[i] = shear[i].y * t.x - shear[i].x * t.y;
		}
		for (size_t row = 0; row < (aci ? view->row_count : 1); row++) {
			uint64_t mask = 0;
			for (size_t i = 0; i < place.pattern.count; i++)
				if (view->row[row] >> i & 1 && p[i] > 0)
					mask |= (uint64_t)1 << i;
			mask = mask ? mask : view->row[row];
			for (size_t i = 0; i < place.pattern.count; i++)
				if (mask >> i & 1)
					worst = fmax(worst,
					             plain_front(view, row, plain_set(view, row),
					                         mask,
					                         grow_front(view, mask,
					                                    (uint64_t)1 << i,
					                                    view->row_distance
					                                            [row]),
					                         p, q, earthquake));
		}
	}
	return worst;
}

/* Sums in another order: some 30 operations. */
static const double same = 1e-12;

static void compare_plain(const struct loads *l, bool glued)
{
	bool aci = s.facts.code == ACI318, quake = l->load.earthquake;
	uint64_t mask = plain_mask(l->tension);
	double most = 0, shear = 0;
	struct code_ratios r;
	code_ratios(&s, &l->load, &r);
	for (size_t i = 0; i < place.pattern.count; i++) {
		most = fmax(most, l->tension[i]);
		shear = fmax(shear, l->shear[i]);
	}
	near(r.mode[STEEL_TENSION].ratio,
	     most / (aci ? aci_steel_tension : en_steel_tension)(&s.facts, quake, NULL), same,
	     "steel in tension");
	near(r.mode[STEEL_SHEAR].ratio,
	     shear / (aci ? aci_steel_shear(&s.facts, 0, quake, NULL)
	                  : en_steel_shear(&s.facts, 0, quake, place.pattern.count, NULL)),
	     same, "steel in shear");
	near(r.mode[CONE].ratio,
	     plain_groups_and_leader(aci ? aci_cone : en_cone,
	                  (aci ? aci_group_limit : en_group_limit)(&s.facts, CONE), mask,
	                  l->tension, quake),
	     same, "cone");
	if (glued)
		near(r.mode[BOND].ratio,
		     plain_groups_and_leader(aci ? aci_bond : en_bond,
		                  (aci ? aci_group_limit : en_group_limit)(&s.facts, BOND), mask,
		                  l->tension, quake),
		     same, "bond");
	if (!aci)
		near(r.mode[SPLITTING].ratio,
		     plain_groups_and_leader(en_splitting, en_group_limit(&s.facts, SPLITTING),
		                             mask, l->tension, quake),
		     same, "splitting");
	near(r.mode[EDGE].ratio, plain_edge(l->shear_at, quake), same, "edge");
	near(r.mode[PRYOUT].ratio, plain_pryout(l->shear_at, quake), same, "pryout");
}

Test(code_strength, plain_loops)
{
	for (int code = 0; code < CODES; code++) {
		open_strength(ADHESIVE, (enum code)code, 0.4, (struct vec2){2000, 3000});
		cr_assert(s.ready[CONE] && s.ready[BOND] && s.ready[EDGE] && s.ready[PRYOUT]);
		uint64_t cases = cases_count("modes against plain loops", 50);
		for (uint64_t n = 0; n < cases; n++) {
			struct dice dice = dice_open(cases_seed(), n);
			struct loads l;
			loads_of(&dice, &l);
			l.load.earthquake = n % 3 == 0;
			compare_plain(&l, true);
		}
	}
}

/* --- axes ----------------------------------------------------------------------------------- */

/* Where the cell stands and how it is turned in its slab, edges with it, changes nothing. A thick
 * slab: in a thin one several rows may count with one and the same distance, and then rounding says
 * which of them is named. */
static void open_thick(enum code code, double turned, struct vec2 moved)
{
	open_cell(ADHESIVE);
	it.cell.slab.thickness.value = 2000;
	code_place_open(&place, &it, sides, turned, moved, &arena);
	build(code);
}

Test(code_strength, turned_slab)
{
	for (int code = 0; code < CODES; code++)
		for (uint64_t n = 0; n < 40; n++) {
			struct dice dice = dice_open(cases_seed(), n);
			struct loads l;
			struct code_ratios straight, turned;
			open_thick((enum code)code, 0, (struct vec2){0, 0});
			loads_of(&dice, &l);
			code_ratios(&s, &l.load, &straight);
			open_thick((enum code)code, dice_between(&dice, 0, 2 * pi),
			              (struct vec2){7e3, -4e3});
			code_ratios(&s, &l.load, &turned);
			/* coordinates of 1e4 mm against levers of 1e2 mm */
			for (int m = 0; m < CODE_MODES; m++) {
				near(turned.mode[m].ratio, straight.mode[m].ratio, 1e-9, "turned");
				cr_assert_eq(turned.mode[m].anchors, straight.mode[m].anchors);
				cr_assert_eq(turned.mode[m].edge, straight.mode[m].edge);
			}
			near(turned.together.ratio, straight.together.ratio, 1e-9, "together");
		}
}

/* --- groups and limits ---------------------------------------------------------------------- */

Test(code_strength, no_load_no_ratio)
{
	const double none[6] = {0};
	const struct vec2 still[6] = {{0, 0}};
	for (int code = 0; code < CODES; code++) {
		struct code_ratios r;
		open_strength(CAST_IN_HEADED, (enum code)code, 0, (struct vec2){0, 0});
		code_ratios(&s,
		            &(struct anchor_load){
				    .count = 6, .tension = none, .shear = none, .shear_at = still},
		            &r);
		for (int m = 0; m < CODE_MODES; m++)
			cr_assert_eq(r.mode[m].ratio, s.ready[m] && m != BOND_SUSTAINED ? 0 : -1,
			             "mode %d: %g", m, r.mode[m].ratio);
		cr_assert_eq(r.together.ratio, 0);
	}
}

/* The rows stand farther apart than 3 hef: two groups, and the worse one counts alone. */
Test(code_strength, worst_of_two_groups)
{
	struct loads l;
	struct dice dice = dice_open(1, 1);
	for (int code = 0; code < CODES; code++) {
		struct code_ratios both, one;
		open_strength(TORQUE_CONTROLLED, (enum code)code, 0, (struct vec2){0, 0});
		loads_of(&dice, &l);
		for (int i = 0; i < 6; i++)
			l.tension[i] = i < 3 ? 4e3 : 1e3;
		code_ratios(&s, &l.load, &both);
		cr_assert_eq(both.mode[CONE].anchors, 7);
		for (int i = 3; i < 6; i++)
			l.tension[i] = 0;
		code_ratios(&s, &l.load, &one);
		cr_assert_eq(both.mode[CONE].ratio, one.mode[CONE].ratio);
		cr_assert_eq(both.mode[STEEL_TENSION].anchors, 7);
		/* without one anchor the same load stands on a smaller group */
		l.tension[2] = 0;
		l.tension[0] = l.tension[1] = 6e3;
		code_ratios(&s, &l.load, &both);
		cr_assert_eq(both.mode[CONE].anchors, 3);
		cr_assert_gt(both.mode[CONE].ratio, one.mode[CONE].ratio);
	}
}

/* One anchor of a group has all: the eccentricity is its distance from the centre. */
Test(code_strength, eccentricity)
{
	struct group_strength g;
	struct code_ratios r;
	struct loads l;
	struct dice dice = dice_open(1, 2);
	open_strength(TORQUE_CONTROLLED, ACI318, 0, (struct vec2){0, 0});
	loads_of(&dice, &l);
	memset(l.tension, 0, sizeof l.tension);
	l.tension[0] = 1e3;
	l.tension[1] = l.tension[2] = 2e3;
	code_ratios(&s, &l.load, &r);
	aci_cone(&s.facts, &place.pattern, 7, false, &g, NULL);
	/* x: (-150 + 2 * 0 + 2 * 150) / 5 = 30 */
	near(r.mode[CONE].demand, 5e3 * (1 + 30 / g.lever), same, "N (1 + e/lever)");
	near(r.mode[CONE].capacity, g.design, 0, "design strength");
}

/* A tension of rounding size is none. */
Test(code_strength, rounding_loads_nothing)
{
	struct code_ratios exact, rounded;
	struct loads l;
	struct dice dice = dice_open(1, 3);
	open_strength(ADHESIVE, EN1992_4, 0, (struct vec2){0, 0});
	loads_of(&dice, &l);
	for (int i = 0; i < 6; i++)
		l.tension[i] = i == 0 ? 5e3 : 0;
	code_ratios(&s, &l.load, &exact);
	for (int i = 1; i < 6; i++)
		l.tension[i] = 1e-7;
	code_ratios(&s, &l.load, &rounded);
	cr_assert_eq(rounded.mode[CONE].anchors, 1);
	cr_assert_eq(rounded.mode[CONE].ratio, exact.mode[CONE].ratio);
}

Test(code_strength, unseen_edge)
{
	struct code_ratios r;
	struct loads l;
	struct dice dice = dice_open(1, 4);
	for (int code = 0; code < CODES; code++) {
		struct edge_strength e;
		double sum = 0, clear = 300;
		open_cell(TORQUE_CONTROLLED);
		code_place_clear(&place, &it, clear, &arena);
		build((enum code)code);
		loads_of(&dice, &l);
		code_ratios(&s, &l.load, &r);
		for (int i = 0; i < 6; i++)
			sum += l.shear[i];
		(code == ACI318 ? aci_edge : en_edge)(&s.facts, &place.pattern, NULL, 1, clear,
		                                      false, &e, NULL);
		near(r.mode[EDGE].ratio, sum / e.across, same, "all on one anchor");
		cr_assert_eq(r.mode[EDGE].anchors, 63);
		cr_assert_eq(r.mode[EDGE].edge, 0);
		/* none stated, none at all */
		for (int k = 0; k < 2; k++) {
			code_place_clear(&place, &it, k ? HUGE_VAL : 0, &arena);
			build((enum code)code);
			code_ratios(&s, &l.load, &r);
			cr_assert_eq(r.mode[EDGE].ratio, 0);
		}
	}
	/* EN 1992-4 7.2.2.5 frees at most four anchors from remote edges */
	for (size_t count = 4; count <= 6; count += 2) {
		it.cell.anchors.count = l.load.count = count;
		code_place_clear(&place, &it, en_remote_edge(&s.facts), &arena);
		build(EN1992_4);
		code_ratios(&s, &l.load, &r);
		cr_assert_eq(r.mode[EDGE].ratio > 0, count > 4, "remote, %zu anchors", count);
	}
}

/* A headed anchor deep and near an edge blows out there; which way an edge lies that is only known
 * to be no nearer cannot be told. */
Test(code_strength, blowout_needs_its_edge)
{
	static const double close[4] = {HUGE_VAL, HUGE_VAL, 380, HUGE_VAL};
	struct loads l;
	struct dice dice = dice_open(1, 5);
	for (int code = 0; code < CODES; code++) {
		struct code_ratios r;
		open_cell(CAST_IN_HEADED);
		code_place_open(&place, &it, close, 0, (struct vec2){0, 0}, &arena);
		build((enum code)code);
		loads_of(&dice, &l);
		for (int i = 0; i < 6; i++)
			l.tension[i] = 1e3 * (i + 1);
		code_ratios(&s, &l.load, &r);
		cr_assert_gt(r.mode[BLOWOUT].ratio, 0);
		cr_assert_eq(r.mode[BLOWOUT].edge, 1);
		cr_assert_eq(r.mode[BLOWOUT].anchors & ~UINT64_C(7), 0, "the far row does not");
		code_place_clear(&place, &it, 30, &arena);
		build((enum code)code);
		code_ratios(&s, &l.load, &r);
		cr_assert_eq(r.mode[BLOWOUT].ratio, -1);
		cr_assert_eq(r.together.ratio, -1);
	}
}

/* --- kept strengths ------------------------------------------------------------------------- */

static void expect_same(const struct mode_ratio *a, const struct mode_ratio *b)
{
	cr_assert(a->ratio == b->ratio && a->demand == b->demand && a->capacity == b->capacity &&
	          a->anchors == b->anchors && a->edge == b->edge);
}

static void expect_same_ratios(const struct code_ratios *a, const struct code_ratios *b)
{
	for (int m = 0; m < CODE_MODES; m++)
		expect_same(&a->mode[m], &b->mode[m]);
	expect_same(&a->together, &b->together);
	expect_same(&a->together_steel, &b->together_steel);
}

/* A hit, a miss, and a copy's own miss, in an order of its own. Enough sets that the table grows.
 */
Test(code_strength, kept_is_computed)
{
	enum { STATES = 300 };
	static struct loads l[STATES];
	static struct code_ratios first[STATES];
	for (int code = 0; code < CODES; code++) {
		struct code_strength copy;
		struct arena own;
		open_strength(ADHESIVE, (enum code)code, 0.3, (struct vec2){0, 0});
		for (int n = 0; n < STATES; n++) {
			struct dice dice = dice_open(cases_seed(), (uint64_t)n);
			loads_of(&dice, &l[n]);
			for (int i = 0; i < 6; i++)
				if (dice_whole(&dice, 0, 1))
					l[n].tension[i] = dice_between(&dice, 0, 1e4);
			l[n].load.tension = l[n].tension;
			code_ratios(&s, &l[n].load, &first[n]);
		}
		arena_open(&own, NULL, NULL);
		cr_assert_eq(code_strength_copy(&s, &own, &copy), DONE);
		for (int n = STATES; n-- > 0;) {
			struct code_ratios again;
			code_ratios(&s, &l[n].load, &again);
			expect_same_ratios(&first[n], &again);
			code_ratios(&copy, &l[n].load, &again);
			expect_same_ratios(&first[n], &again);
		}
		arena_close(&own);
	}
}

static void *fail_after(void *user, void *old, size_t size)
{
	int *left = user;
	if (size == 0) {
		free(old);
		return NULL;
	}
	return (*left)-- > 0 ? realloc(old, size) : NULL;
}

/* Without memory a new set of anchors is not computed, and the arena says why. */
Test(code_strength, out_of_memory)
{
	struct loads l;
	struct dice dice = dice_open(1, 6);
	struct code_strength copy;
	struct code_ratios r;
	struct arena own;
	int left = 0;
	open_strength(ADHESIVE, ACI318, 0, (struct vec2){0, 0});
	loads_of(&dice, &l);
	arena_open(&own, fail_after, &left);
	cr_assert_eq(code_strength_copy(&s, &own, &copy), NO_MEMORY);
	arena_close(&own);
	left = 1000;
	arena_open(&own, fail_after, &left);
	cr_assert_eq(code_strength_copy(&s, &own, &copy), DONE);
	own.failed = true;
	code_ratios(&copy, &l.load, &r);
	cr_assert_eq(r.mode[CONE].ratio, -1);
	cr_assert_eq(r.mode[EDGE].ratio, -1);
	cr_assert_eq(r.together.ratio, -1);
	arena_close(&own);
}

/* --- missing items -------------------------------------------------------------------------- */

/* What is taken out, and the modes that code_missing then names are those not ready. */
Test(code_strength, missing_items)
{
	struct anchor_strength *given = &it.cell.anchors.product.strength;
	struct product *product = &it.cell.anchors.product;
	struct given *const items[] = {
		&product->embedment.given,      &product->shaft.given,
		&given->ultimate.given,         &given->aci.bond.cracked.given,
		&given->en.bond.cracked.given,  &it.cell.slab.thickness.given,
		&given->aci.category.given,     &given->en.installation_factor.given,
		&given->en.splitting_edge.given};
	for (int code = 0; code < CODES; code++)
		for (size_t k = 0; k < sizeof items / sizeof *items; k++) {
			struct loads l;
			struct dice dice = dice_open(1, 7);
			struct code_ratios r;
			bool steel_whole = true, rest_whole = true;
			open_cell(ADHESIVE);
			items[k]->origin = ABSENT;
			code_place_open(&place, &it, sides, 0, (struct vec2){0, 0}, &arena);
			build((enum code)code);
			loads_of(&dice, &l);
			code_ratios(&s, &l.load, &r);
			for (int m = 0; m < CODE_MODES; m++) {
				const char *path[16];
				bool applies = !code_left_out(&it.cell, (enum code)code,
				                              (enum code_mode)m);
				bool lacks = code_missing(&s.facts, (enum code_mode)m, false, path,
				                          16) > 0;
				cr_assert_eq(s.ready[m], applies && !lacks, "item %zu, mode %d", k,
				             m);
				if (m == BOND_SUSTAINED)
					continue;
				cr_assert_eq(r.mode[m].ratio >= 0, applies && !lacks);
				bool steel = m == STEEL_TENSION || m == STEEL_SHEAR;
				*(steel ? &steel_whole : &rest_whole) &= !applies || !lacks;
			}
			/* ACI takes all modes together, EN steel and concrete apart */
			bool aci = code == ACI318;
			cr_assert_eq(r.together.ratio >= 0, rest_whole && (!aci || steel_whole));
			cr_assert_eq(r.together_steel.ratio >= 0, !aci && steel_whole);
		}
}

Test(code_strength, lasting_loads)
{
	struct loads l;
	struct dice dice = dice_open(1, 8);
	struct code_ratios r;
	for (int code = 0; code < CODES; code++) {
		open_strength(ADHESIVE, (enum code)code, 0, (struct vec2){0, 0});
		loads_of(&dice, &l);
		l.load.sustained = true;
		code_ratios(&s, &l.load, &r);
		for (int m = 0; m < CODE_MODES; m++)
			cr_assert_eq(r.mode[m].ratio >= 0, m == BOND_SUSTAINED && code == ACI318);
		cr_assert_eq(r.together.ratio, -1);
	}
}

/* --- together ------------------------------------------------------------------------------- */

Test(code_strength, together)
{
	for (uint64_t n = 0; n < 200; n++) {
		struct dice dice = dice_open(cases_seed(), n);
		struct loads l;
		struct code_ratios r;
		open_strength(ADHESIVE, ACI318, 0, (struct vec2){0, 0});
		loads_of(&dice, &l);
		code_ratios(&s, &l.load, &r);
		double tension = fmax(r.mode[STEEL_TENSION].ratio,
		                      fmax(r.mode[CONE].ratio, r.mode[BOND].ratio));
		double shear = fmax(r.mode[STEEL_SHEAR].ratio,
		                    fmax(r.mode[EDGE].ratio, r.mode[PRYOUT].ratio));
		cr_assert_eq(r.together.ratio, aci_interaction(CODE_STRAIGHT, tension, shear));
		cr_assert_eq(r.together_steel.ratio, -1);
		open_strength(ADHESIVE, EN1992_4, 0, (struct vec2){0, 0});
		code_ratios(&s, &l.load, &r);
		tension = fmax(r.mode[SPLITTING].ratio,
		               fmax(r.mode[CONE].ratio, r.mode[BOND].ratio));
		shear = fmax(r.mode[EDGE].ratio, r.mode[PRYOUT].ratio);
		cr_assert_eq(r.together.ratio, en_interaction_concrete(tension, shear, false));
		double steel = 0;
		for (int i = 0; i < 6; i++)
			steel = fmax(steel,
			             en_interaction_steel(
					     l.tension[i] / en_steel_tension(&s.facts, false, NULL),
					     l.shear[i] / en_steel_shear(&s.facts, 0, false, 6,
			                                                 NULL),
					     false));
		cr_assert_eq(r.together_steel.ratio, steel);
	}
}

/* A bent anchor has given up to the tension before: (7.38) is the interaction. */
Test(code_strength, lever_arm)
{
	struct loads l;
	struct dice dice = dice_open(1, 9);
	struct code_ratios r;
	open_cell(ADHESIVE);
	it.cell.stand_off.height.value = 20;
	it.cell.stand_off.filled.given.origin = GIVEN;
	it.cell.stand_off.filled.value = NO;
	code_place_open(&place, &it, sides, 0, (struct vec2){0, 0}, &arena);
	build(EN1992_4);
	cr_assert_eq(s.facts.lever_arm, LEVER_ARM);
	loads_of(&dice, &l);
	code_ratios(&s, &l.load, &r);
	double worst = 0;
	for (int i = 0; i < 6; i++)
		worst = fmax(worst, l.shear[i] / en_steel_shear(&s.facts, l.tension[i], false, 6,
		                                                NULL));
	cr_assert_eq(r.mode[STEEL_SHEAR].ratio, worst);
	cr_assert_eq(r.together_steel.ratio, worst);
	/* all of the steel is in tension: nothing is left, and no shear needs nothing */
	l.tension[2] = 2 * en_steel_tension(&s.facts, false, NULL);
	code_ratios(&s, &l.load, &r);
	cr_assert_eq(r.mode[STEEL_SHEAR].ratio, HUGE_VAL);
	l.shear[2] = 0;
	code_ratios(&s, &l.load, &r);
	cr_assert_lt(r.mode[STEEL_SHEAR].ratio, HUGE_VAL);
}

/* --- written calculations ------------------------------------------------------------------- */

static void compare_traces(const struct loads *l)
{
	struct code_ratios r;
	code_ratios(&s, &l->load, &r);
	for (int m = 0; m < CODE_MODES + 2; m++) {
		struct arena own;
		struct trace trace;
		struct mode_ratio out;
		arena_open(&own, NULL, NULL);
		trace_open(&trace, &own);
		if (m < CODE_MODES)
			code_trace_mode(&s, (enum code_mode)m, &l->load, &out, &trace);
		else
			code_trace_together(&s, m == CODE_MODES, &l->load, &out, &trace);
		const struct mode_ratio *same_bits = m < CODE_MODES ? &r.mode[m]
		                                     : m == CODE_MODES ? &r.together_steel
		                                                       : &r.together;
		expect_same(&out, same_bits);
		if (out.ratio >= 0) {
			traced_expressions(&trace, "mode");
			cr_assert_eq(traced_value(&trace, "ratio"), out.ratio);
		}
		arena_close(&own);
	}
}

Test(code_strength, traces)
{
	for (int code = 0; code < CODES; code++)
		for (int type = CAST_IN_HEADED; type <= ADHESIVE; type++) {
			open_strength((enum anchor_type)type, (enum code)code, 0.4,
			              (struct vec2){2e3, 3e3});
			for (uint64_t n = 0; n < 30; n++) {
				struct dice dice = dice_open(cases_seed(), n);
				struct loads l;
				loads_of(&dice, &l);
				l.load.earthquake = n % 4 == 1;
				l.load.sustained = n % 10 == 2;
				compare_traces(&l);
			}
		}
}
