/* ACI 318-19 chapter 17: against a plain computation from the clauses, the SI edition against the
 * inch-pound one, limits, monotony, continuity, and what the written calculation says. */
#include "../../src/strength/design.h"
#include "../support/routes.h"
#include "../support/aci_case.h"
#include "../support/cases.h"
#include "../support/plain_aci318.h"
#include "../support/random_base.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>

#define FAR 1e6

static struct aci_case it;

static void open_all(void)
{
	aci_case_open(&it);
	route_open();
}

static void close_all(void)
{
	aci_case_close(&it);
	route_close();
}

TestSuite(aci318, .init = open_all, .fini = close_all, .timeout = 120);

/* --- one cell for both routes ---------------------------------------------------------------- */

static void give_layout(const struct plain_aci *p)
{
	it.count = 0;
	for (int k = 0; k < p->ny; k++)
		for (int i = 0; i < p->nx; i++)
			it.at[it.count++] = (struct vec2){p->x0 + i * p->sx, p->y0 + k * p->sy};
	aci_case_outline(&it,
	                 (const struct vec2[]){{0, 0},
	                                       {p->x_length, 0},
	                                       {p->x_length, p->y_length},
	                                       {0, p->y_length}},
	                 4);
}

static void give_optional(struct number *number, double value)
{
	*number = (struct number){0};
	if (value > 0)
		aci_number(number, value);
}

static void give_sheet(const struct plain_aci *p)
{
	struct anchor_strength *s = &it.cell.anchors.product.strength;
	const struct { struct number *number; double value; } entries[] = {
		{&s->yield, p->fya}, {&s->ultimate, p->futa}, {&s->head_area, p->abrg},
		{&s->hook_length, p->eh}, {&s->aci.category, p->category},
		{&s->aci.pullout.cracked, p->np_cr}, {&s->aci.pullout.uncracked, p->np_ucr},
		{&s->aci.pullout.seismic, p->np_eq}, {&s->aci.bond.cracked, p->tau_cr},
		{&s->aci.bond.uncracked, p->tau_ucr}, {&s->aci.bond.seismic, p->alpha},
		{&s->aci.steel_shear_seismic, p->v_eq}, {&s->aci.splitting_edge, p->cac},
		{&s->aci.kc_cracked, p->kc_cr}, {&s->aci.kc_uncracked, p->kc_ucr},
		{&s->aci.shear_length, p->le}, {&s->aci.pryout_factor, p->kcp},
		{&s->at_concrete, 20}};
	for (size_t i = 0; i < sizeof entries / sizeof *entries; i++)
		give_optional(entries[i].number, entries[i].value);
	aci_word(&s->ductile, p->ductile);
	aci_word(&s->sleeve_in_shear_plane, NO);
	aci_word(&s->aci.seismic, YES);
}

static void give(const struct plain_aci *p)
{
	struct product *product = &it.cell.anchors.product;
	struct slab *slab = &it.cell.slab;
	aci_word(&product->type, (int)p->kind);
	aci_word(&product->qualified_cracked, YES);
	aci_number(&product->shaft, p->d);
	aci_number(&product->embedment, p->hef);
	aci_number(&product->tensile_area, p->ase);
	aci_number(&slab->thickness, p->ha);
	aci_number(&slab->concrete.lightweight, p->light);
	aci_word(&slab->concrete.cracked, p->cracked);
	aci_text(&slab->concrete.uncracked_reason, "test");
	aci_word(&slab->reinforcement.supplementary, p->tied);
	aci_word(&slab->reinforcement.against_splitting, p->held);
	aci_word(&slab->reinforcement.edge, p->bars);
	it.concrete = p->fc;
	give_sheet(p);
	give_layout(p);
	aci_case_build(&it);
}

/* Four headed bolts far from everything, every property of a good sheet. */
static struct plain_aci ordinary(enum plain_aci_kind kind)
{
	return (struct plain_aci){.kind = kind, .cracked = true, .ductile = true, .category = 1,
	                          .fc = 30, .light = 1, .ha = 300, .hef = 100, .d = 16, .ase = 157,
	                          .fya = 640, .futa = 800, .abrg = 500, .eh = 60, .np_cr = 20e3,
	                          .np_ucr = 28e3, .np_eq = 18e3, .tau_cr = 7, .tau_ucr = 14,
	                          .alpha = 0.8, .v_eq = 30e3, .x_length = 2 * FAR,
	                          .y_length = 2 * FAR, .x0 = FAR, .y0 = FAR, .sx = 150, .sy = 120,
	                          .nx = 2, .ny = 2};
}

static void random_anchor(struct dice *dice, struct plain_aci *p)
{
	p->kind = (enum plain_aci_kind)dice_whole(dice, 0, 6);
	p->cracked = dice_whole(dice, 0, 1);
	p->ductile = dice_whole(dice, 0, 1);
	p->tied = dice_whole(dice, 0, 1);
	p->held = dice_whole(dice, 0, 3) == 0;
	p->category = dice_whole(dice, 1, 3);
	p->bars = dice_whole(dice, 0, 2);
	p->fc = dice_between(dice, 17, 90);
	p->light = dice_whole(dice, 0, 2) ? 1 : dice_between(dice, 0.75, 1);
	p->hef = dice_between(dice, 40, 300);
	p->ha = p->hef + dice_between(dice, 20, 300);
	p->d = dice_between(dice, 6, 36);
	p->ase = dice_between(dice, 20, 800);
	p->futa = dice_between(dice, 300, 1100);
	p->fya = dice_between(dice, 0.4, 0.98) * p->futa;
	p->abrg = dice_between(dice, 100, 3000);
	p->eh = dice_between(dice, 2, 6) * p->d;
	p->np_cr = dice_between(dice, 5e3, 60e3);
	p->np_ucr = dice_between(dice, 1, 1.6) * p->np_cr;
	p->np_eq = dice_between(dice, 0.5, 1) * p->np_cr;
	p->tau_cr = dice_between(dice, 2, 10);
	p->tau_ucr = dice_between(dice, 1, 2.5) * p->tau_cr;
	p->alpha = dice_between(dice, 0.4, 1);
	p->v_eq = dice_between(dice, 5e3, 60e3);
}

/* What a sheet may leave out. */
static void random_options(struct dice *dice, struct plain_aci *p)
{
	p->cac = dice_whole(dice, 0, 1) ? dice_between(dice, 1, 4) * p->hef : 0;
	p->kc_cr = dice_whole(dice, 0, 2) ? 0 : dice_between(dice, 5, 10);
	p->kc_ucr = dice_whole(dice, 0, 2) ? 0 : dice_between(dice, 7, 13);
	p->le = dice_whole(dice, 0, 1) ? 0 : dice_between(dice, 0.3, 1) * p->hef;
	p->kcp = dice_whole(dice, 0, 2) ? 0 : dice_between(dice, 1, 2.5);
	if (p->kind == ACI_HEADED || p->kind == ACI_HOOKED)
		p->kc_cr = p->kc_ucr = 0;
}

static void random_layout(struct dice *dice, struct plain_aci *p)
{
	double near = dice_between(dice, 0.4, 6) * p->hef;
	p->nx = dice_whole(dice, 1, 4);
	p->ny = dice_whole(dice, 1, 3);
	p->sx = dice_between(dice, 0.2, 3) * p->hef;
	p->sy = dice_between(dice, 0.5, 3) * p->hef;
	p->x0 = dice_between(dice, 0.2, 1) * near;
	p->y0 = dice_between(dice, 0.1, 1) * near;
	p->x_length = p->x0 + (p->nx - 1) * p->sx + dice_between(dice, 0.2, 1) * near;
	p->y_length = p->y0 + (p->ny - 1) * p->sy + dice_between(dice, 0.2, 1) * near;
}

static struct plain_aci random_case(struct dice *dice)
{
	struct plain_aci p = {0};
	random_anchor(dice, &p);
	random_options(dice, &p);
	random_layout(dice, &p);
	return p;
}

/* --- asking the code ------------------------------------------------------------------------- */

typedef void group_mode(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                        bool earthquake, struct group_strength *out, struct trace *trace);

static double of_group(group_mode *mode, bool earthquake)
{
	struct group_strength out;
	mode(&it.facts, &it.pattern, aci_case_all(&it), earthquake, &out, NULL);
	return earthquake ? out.seismic : out.design;
}

/* the front row toward y = 0 */
static struct edge_strength toward_edge(struct trace *into, bool earthquake)
{
	struct edge_strength out;
	const struct edge_view *view = aci_case_view(&it, 0, -1);
	aci_edge(&it.facts, &it.pattern, view, view->row[0], view->row_distance[0], earthquake,
	         &out, into);
	return out;
}

static double blowout(bool earthquake, struct trace *into)
{
	struct group_strength out;
	uint64_t row = it.count < 64 ? ((uint64_t)1 << it.count) - 1 : UINT64_MAX;
	for (size_t i = 0; i < it.count; i++)
		if (it.at[i].y > it.at[0].y)
			row &= ~((uint64_t)1 << i);
	/* the outline begins with the edge y = 0 */
	aci_blowout(&it.facts, &it.pattern, row, 1, earthquake, &out, into);
	return earthquake ? out.seismic : out.design;
}

/* The rows toward y = 0 are those of the grid where their distances are far enough apart. */
static bool rows_apart(const struct plain_aci *p)
{
	return p->ny == 1 || p->sy > 2 * ROW_SHARE * p->y0;
}

/* --- against the plain computation ------------------------------------------------------------ */

static void compare_modes(const struct plain_aci *p, bool quake, uint64_t n)
{
	route_same(aci_steel_tension(&it.facts, quake, NULL), plain_aci_steel_tension(p), "steel",
	           n);
	route_same(aci_steel_shear(&it.facts, 0, quake, NULL), plain_aci_steel_shear(p, quake),
	     "steel in shear", n);
	route_same(of_group(aci_cone, quake), plain_aci_cone(p, quake), "cone", n);
	route_same(of_group(aci_pryout, quake), plain_aci_pryout(p, quake), "pryout", n);
	if (p->kind != ACI_ADHESIVE)
		route_same(aci_pullout(&it.facts, quake, NULL), plain_aci_pullout(p, quake),
		           "pullout", n);
	else
		route_same(of_group(aci_bond, quake), plain_aci_bond(p, quake), "bond", n);
	if (p->kind == ACI_HEADED)
		route_same(blowout(quake, NULL), plain_aci_blowout(p, quake), "blowout", n);
	if (!rows_apart(p))
		return;
	struct edge_strength edge = toward_edge(NULL, quake);
	route_same(quake ? edge.across_seismic : edge.across, plain_aci_edge(p, false, quake),
	           "edge", n);
	route_same(quake ? edge.along_seismic : edge.along, plain_aci_edge(p, true, quake), "along",
	           n);
}

Test(aci318, plain_route)
{
	uint64_t seed = cases_seed(), count = cases_count("aci318 plain route", 10);
	for (uint64_t n = 0; n < count; n++) {
		struct dice dice = dice_open(seed, n);
		struct plain_aci p = random_case(&dice);
		give(&p);
		compare_modes(&p, false, n);
		compare_modes(&p, true, n);
		if (p.kind == ACI_ADHESIVE)
			route_same(aci_bond_sustained(&it.facts, NULL), plain_aci_sustained(&p),
			     "lasting", n);
	}
}

/* Bending across a gap, S11. */
Test(aci318, plain_lever_arm)
{
	for (uint64_t n = 0; n < 200; n++) {
		struct dice dice = dice_open(cases_seed(), n);
		struct plain_aci p = random_case(&dice);
		double gap = dice_between(&dice, 5, 60), plate = dice_between(&dice, 8, 40);
		double tension = dice_between(&dice, 0, 1.1) * plain_aci_steel_tension(&p);
		bool held = dice_whole(&dice, 0, 1), clamped = dice_whole(&dice, 0, 1);
		aci_number(&it.cell.stand_off.height, gap);
		aci_word(&it.cell.stand_off.filled, NO);
		aci_number(&it.cell.anchors.plate_thickness, plate);
		aci_word(&it.cell.anchors.product.strength.held_at_base, held);
		aci_word(&it.cell.anchors.product.strength.clamped, clamped);
		give(&p);
		double arm = (clamped ? 0 : p.d / 2) + gap + plate / 2;
		double bent = plain_aci_bent(&p, tension, arm, held ? 2 : 1);
		route_same(aci_steel_shear(&it.facts, tension, false, NULL),
		     fmin(plain_aci_steel_shear(&p, false), bent), "bent", n);
	}
}

/* --- the two editions --------------------------------------------------------------------------
 */

/* SI over inch-pound, the constants' own rounding: kc 10/24 and 7/17, tau 7.6/1100, 13/160, 0.6/7,
 * 3.7/9, f'c 70/10 000 and 55/8000, futa 860/125 000; kcp changes at 65 mm or 2.5 in. Concrete
 * strengths below these limits here, so that each band is that of its own constant. */
struct band { const char *what; double low, high; };

static void within(const struct band *band, double metric, double us, uint64_t n)
{
	double ratio = metric / us;
	cr_assert(ratio >= band->low && ratio <= band->high, "case %llu, %s: SI over inch-pound %g",
	          (unsigned long long)n, band->what, ratio);
}

Test(aci318, editions)
{
	static const struct band steel = {"steel, 860/125 000", 0.997, 1.000001},
	                         cast = {"cone, cast in, 10/24", 0.9955, 0.9965},
	                         drilled = {"cone, drilled, 7/17", 0.983, 0.985},
	                         bond = {"bond, 7.6/1100", 0.998, 1.0025},
	                         blow = {"blowout, 13/160", 0.978, 0.979},
	                         edge = {"edge, 0.6/7 and 3.7/9", 0.982, 1.033},
	                         pull = {"pullout", 0.999999, 1.000001};
	for (uint64_t n = 0; n < 2000; n++) {
		struct dice dice = dice_open(cases_seed(), n);
		struct plain_aci p = random_case(&dice), us;
		p.fc = fmin(p.fc, 50);
		p.kc_cr = p.kc_ucr = 0;
		us = p;
		us.inch = true;
		give(&p);
		within(&steel, aci_steel_tension(&it.facts, false, NULL),
		       plain_aci_steel_tension(&us), n);
		within(p.kind <= ACI_HOOKED ? &cast : &drilled, of_group(aci_cone, false),
		       plain_aci_cone(&us, false), n);
		if (p.kind == ACI_ADHESIVE)
			within(&bond, of_group(aci_bond, false), plain_aci_bond(&us, false), n);
		else
			within(&pull, aci_pullout(&it.facts, false, NULL),
			       plain_aci_pullout(&us, false), n);
		if (p.kind == ACI_HEADED)
			within(&blow, blowout(false, NULL), plain_aci_blowout(&us, false), n);
		if (rows_apart(&p))
			within(&edge, toward_edge(NULL, false).across,
			       plain_aci_edge(&us, false, false), n);
	}
}

/* --- limits ------------------------------------------------------------------------------------
 */

static double cone_of(struct plain_aci p)
{
	give(&p);
	return of_group(aci_cone, false);
}

Test(aci318, edge_far_away)
{
	struct plain_aci p = ordinary(ACI_HEADED);
	double far = cone_of(p);
	it.edge_count = 0;
	it.clear = HUGE_VAL;
	aci_case_build(&it);
	route_same(of_group(aci_cone, false), far, "no edge at all", 0);
	p.x0 = p.y0 = 1.5 * p.hef;
	route_same(cone_of(p), far, "edges at 1.5 hef", 1);
	p.x0 = 1.49 * p.hef;
	cr_expect_lt(cone_of(p), far);
}

Test(aci318, spacing_wide_and_none)
{
	struct plain_aci p = ordinary(ACI_HEADED), one = p;
	one.nx = one.ny = 1;
	double single = cone_of(one);
	p.sx = p.sy = 3 * p.hef;
	route_same(cone_of(p), 4 * single, "3 hef apart", 0);
	p.sx = p.sy = 1e-9;
	cr_expect_float_eq(cone_of(p) / single, 1, 1e-9, "in one place");
	/* and in shear: 3 ca1 along the edge */
	p = ordinary(ACI_HEADED);
	p.ny = one.ny = 1;
	p.y0 = one.y0 = 150;
	p.sx = 450;
	give(&one);
	double front = toward_edge(NULL, false).across;
	give(&p);
	route_same(toward_edge(NULL, false).across, 2 * front, "3 ca1 apart", 1);
	p.sx = 1e-9;
	give(&p);
	cr_expect_float_eq(toward_edge(NULL, false).across / front, 1, 1e-9, "in one place");
}

Test(aci318, bond_spacing_wide)
{
	struct plain_aci p = ordinary(ACI_ADHESIVE), one = p;
	one.nx = one.ny = 1;
	give(&one);
	double single = of_group(aci_bond, false);
	route_same(aci_group_limit(&it.facts, BOND), 2 * 10 * 16 * sqrt(14 / 7.6), "2 cNa", 0);
	p.sx = p.sy = aci_group_limit(&it.facts, BOND);
	give(&p);
	route_same(of_group(aci_bond, false), 4 * single, "2 cNa apart", 1);
	route_same(aci_group_limit(&it.facts, CONE), 300, "3 hef", 2);
	cr_expect_eq(aci_group_limit(&it.facts, PULLOUT), 0, "one by one");
}

/* An edge at which an anchor stands leaves nothing, and no NaN. */
Test(aci318, on_the_edge)
{
	struct plain_aci p = ordinary(ACI_HEADED);
	struct edge_strength out;
	give(&p);
	aci_edge(&it.facts, &it.pattern, aci_case_view(&it, 0, -1), 1, 0, false, &out,
	         route_trace_new());
	cr_expect_eq(out.across, 0);
	cr_expect_eq(out.along, 0);
	cr_expect(out.lever > 0);
}

/* --- monotony ----------------------------------------------------------------------------------
 */

struct strengths { double value[6]; };

static struct strengths all_of(const struct plain_aci *p)
{
	struct strengths out = {{0}};
	give(p);
	out.value[0] = of_group(aci_cone, false);
	out.value[1] = of_group(aci_pryout, true);
	out.value[2] = p->kind == ACI_ADHESIVE ? of_group(aci_bond, true)
	                                       : aci_pullout(&it.facts, false, NULL);
	out.value[3] = aci_steel_shear(&it.facts, 0, false, NULL);
	out.value[4] = rows_apart(p) ? toward_edge(NULL, false).across : 0;
	out.value[5] = rows_apart(p) ? toward_edge(NULL, false).along : 0;
	return out;
}

static void never_less(const struct plain_aci *weak, const struct plain_aci *strong,
                       const char *what, uint64_t n)
{
	struct strengths low = all_of(weak), high = all_of(strong);
	for (int k = 0; k < 6; k++)
		cr_assert(high.value[k] >= low.value[k] * (1 - 1e-12),
		          "case %llu, %s: strength %d falls from %g to %g", (unsigned long long)n,
		          what, k, low.value[k], high.value[k]);
}

Test(aci318, more_is_never_less)
{
	for (uint64_t n = 0; n < 500; n++) {
		struct dice dice = dice_open(cases_seed(), n);
		struct plain_aci p = random_case(&dice), q = p;
		q.fc *= 1.1;
		never_less(&p, &q, "stronger concrete", n);
		q = p;
		q.tied = true;
		never_less(&p, &q, "supplementary bars", n);
		q = p;
		q.cracked = false;
		/* a sheet's kc may be lower for uncracked concrete, and splitting counts there
		 * alone */
		p.held = q.held = true;
		p.kc_cr = p.kc_ucr = q.kc_cr = q.kc_ucr = 0;
		never_less(&p, &q, "uncracked", n);
		q = p;
		q.category = 1;
		never_less(&p, &q, "category", n);
		q = p;
		q.futa *= 1.1;
		never_less(&p, &q, "harder steel", n);
		q = p;
		q.light = 1;
		never_less(&p, &q, "normal-weight", n);
		/* two near edges at most: a fourth edge may raise the reduced embedment (listed) */
		p.y0 = 3 * p.hef;
		p.y_length = p.y0 + (p.ny - 1) * p.sy + 3 * p.hef;
		p.ha = 10 * p.hef;
		q = p;
		q.x_length += 0.3 * q.hef;
		never_less(&p, &q, "edge to the right farther away", n);
	}
}

/* An earthquake never gives more. */
Test(aci318, earthquake_is_never_more)
{
	for (uint64_t n = 0; n < 500; n++) {
		struct dice dice = dice_open(cases_seed(), n);
		struct plain_aci p = random_case(&dice);
		p.held = true;           /* else cracked concrete does not split toward the edge */
		p.kc_cr = p.kc_ucr = 0;
		give(&p);
		cr_assert_leq(of_group(aci_cone, true),
		              of_group(aci_cone, false) * 0.75 * 1.0000001);
		cr_assert_leq(of_group(aci_pryout, true), of_group(aci_pryout, false) * 1.0000001);
		if (p.kind == ACI_ADHESIVE)
			cr_assert_leq(of_group(aci_bond, true),
			              0.75000001 * of_group(aci_bond, false));
	}
}

/* --- continuity ---------------------------------------------------------------------------------
 */

/* Largest relative step of a strength while one number of `moved` goes evenly from `from` to `to`.
 * A smooth factor changes by some 1/STEPS, a jump by its own size. */
static struct plain_aci moved;
enum { STEPS = 2000 };

static double largest_step(double *number, double from, double to, double (*ask)(void))
{
	double before = 0, largest = 0;
	for (int k = 0; k <= STEPS; k++) {
		*number = from + (to - from) * k / STEPS;
		give(&moved);
		double now = ask();
		if (k > 0)
			largest = fmax(largest, fabs(now - before) / fmax(now, before));
		before = now;
	}
	return largest;
}

static double ask_cone(void) { return of_group(aci_cone, false); }
static double ask_bond(void) { return of_group(aci_bond, false); }
static double ask_edge(void) { return toward_edge(NULL, false).across; }
static double ask_pryout(void) { return of_group(aci_pryout, false); }
static double ask_blowout(void) { return blowout(false, NULL); }

Test(aci318, continuous)
{
	const double smooth = 5e-3;
	/* edges come in from beyond 1.5 hef, one after the other: two, then the third */
	moved = ordinary(ACI_HEADED);
	cr_expect_lt(largest_step(&moved.x0, 50, 200, ask_cone), smooth);
	moved.x0 = moved.y0 = 60;
	moved.x_length = 60 + 150 + 200;
	cr_expect_lt(largest_step(&moved.x_length, 60 + 150 + 100, 60 + 150 + 200, ask_cone),
	             smooth);
	cr_expect_lt(largest_step(&moved.sx, 50, 190, ask_cone), smooth);
	moved = ordinary(ACI_SCREW);
	moved.cracked = false;
	cr_expect_lt(largest_step(&moved.y0, 100, 500, ask_cone), smooth);
	cr_expect_lt(largest_step(&moved.cac, 100, 400, ask_cone), smooth);
	moved = ordinary(ACI_ADHESIVE);
	cr_expect_lt(largest_step(&moved.y0, 60, 500, ask_bond), smooth);
	cr_expect_lt(largest_step(&moved.tau_ucr, 7, 20, ask_bond), smooth);
	/* thin slab, narrow member */
	moved = ordinary(ACI_HEADED);
	moved.ny = 1;
	moved.y0 = 150;
	cr_expect_lt(largest_step(&moved.ha, 120, 400, ask_edge), smooth);
	cr_expect_lt(largest_step(&moved.x0, 100, 400, ask_edge), smooth);
	moved.ha = 160;
	moved.x0 = 120;
	cr_expect_lt(largest_step(&moved.x_length, 390, 600, ask_edge), smooth);
	moved.x_length = 400;
	cr_expect_lt(largest_step(&moved.y0, 80, 300, ask_edge), smooth);
	moved = ordinary(ACI_HEADED);
	moved.y0 = 35;
	moved.sx = 100;
	cr_expect_lt(largest_step(&moved.x0, 20, 200, ask_blowout), smooth);
}

/* The codes' own switches, listed: kcp doubles at 65 mm; a fourth near edge brings its own distance
 * into 17.6.2.1.2, and the reduced embedment jumps. */
Test(aci318, listed_jumps)
{
	moved = ordinary(ACI_HEADED);
	cr_expect_float_eq(largest_step(&moved.hef, 64, 66, ask_pryout), 0.5, 1e-2);
	moved = ordinary(ACI_HEADED);
	moved.nx = moved.ny = 1;
	moved.x0 = moved.y0 = 60;
	moved.x_length = 120;
	cr_expect_gt(largest_step(&moved.y_length, 180, 240, ask_cone), 0.05);
}

/* --- the whole pattern turned --------------------------------------------------------------------
 */

static struct vec2 turned_point(struct vec2 p, double turn)
{
	return (struct vec2){p.x * cos(turn) - p.y * sin(turn), p.x * sin(turn) + p.y * cos(turn)};
}

Test(aci318, turned)
{
	const double turn = 0.7;
	struct plain_aci p = ordinary(ACI_HEADED);
	p.x0 = 90;
	p.y0 = 35;
	p.sx = 120;
	give(&p);
	double cone = of_group(aci_cone, false), edge = toward_edge(NULL, false).across;
	double blow = blowout(false, NULL);
	for (size_t i = 0; i < it.count; i++)
		it.at[i] = turned_point(it.at[i], turn);
	for (size_t e = 0; e < it.edge_count; e++)
		it.edge[e] = (struct segment){turned_point(it.edge[e].from, turn),
		                              turned_point(it.edge[e].to, turn)};
	it.turned = turn;
	aci_case_build(&it);
	struct edge_strength out;
	struct group_strength row;
	const struct edge_view *view = aci_case_view(&it, sin(turn), -cos(turn));
	aci_edge(&it.facts, &it.pattern, view, view->row[0], view->row_distance[0], false, &out,
	         NULL);
	aci_blowout(&it.facts, &it.pattern, 3, 1, false, &row, NULL);
	/* coordinates of a slab of 2 km keep ten digits of an edge distance */
	cr_expect_float_eq(of_group(aci_cone, false) / cone, 1, 1e-7);
	cr_expect_float_eq(out.across / edge, 1, 1e-7);
	cr_expect_float_eq(row.design / blow, 1, 1e-7);
	cr_expect_eq(row.lever, HUGE_VAL);
}

/* --- the written calculation ---------------------------------------------------------------------
 */

/* Ends in the strength itself, every expression gives its value, and the bits are the same without.
 */
static void traced_group(group_mode *mode, bool quake, const char *symbol)
{
	struct group_strength with, without;
	struct trace *into = route_trace_new();
	mode(&it.facts, &it.pattern, aci_case_all(&it), quake, &with, into);
	mode(&it.facts, &it.pattern, aci_case_all(&it), quake, &without, NULL);
	cr_assert_eq(with.design, without.design);
	cr_assert_eq(with.seismic, without.seismic);
	cr_assert_gt(traced_expressions(into, symbol), 3);
	cr_assert_eq(traced_value(into, symbol), quake ? with.seismic : with.design);
}

static void traced_single(double value, struct trace *into, const char *symbol)
{
	cr_assert_eq(traced_value(into, symbol), value);
	cr_assert_gt(traced_expressions(into, symbol), 0);
}

static void trace_all(const struct plain_aci *p, bool quake)
{
	traced_group(aci_cone, quake, quake ? "phi_N_cbg_eq" : "phi_N_cbg");
	traced_group(aci_pryout, quake, quake ? "phi_V_cpg_eq" : "phi_V_cpg");
	if (p->kind == ACI_ADHESIVE)
		traced_group(aci_bond, quake, quake ? "phi_N_ag_eq" : "phi_N_ag");
	else
		traced_single(aci_pullout(&it.facts, quake, route_trace_new()), &route_trace,
		              quake ? "phi_N_pn_eq" : "phi_N_pn");
	traced_single(aci_steel_tension(&it.facts, quake, route_trace_new()), &route_trace,
	              "phi_N_sa");
	traced_single(aci_steel_shear(&it.facts, 5e3, quake, route_trace_new()), &route_trace,
	              "phi_V_sa");
	if (p->kind == ACI_HEADED)
		traced_single(blowout(quake, route_trace_new()), &route_trace,
		              quake ? "phi_N_sbg_eq" : "phi_N_sbg");
	struct edge_strength edge = toward_edge(route_trace_new(), quake);
	traced_single(quake ? edge.across_seismic : edge.across, &route_trace, "phi_V_cbg");
	traced_single(quake ? edge.along_seismic : edge.along, &route_trace, "phi_V_along");
}

Test(aci318, written_calculation)
{
	for (uint64_t n = 0; n < 300; n++) {
		struct dice dice = dice_open(cases_seed(), n);
		struct plain_aci p = random_case(&dice);
		aci_number(&it.cell.stand_off.height, n % 3 ? 20 : 0);
		aci_word(&it.cell.stand_off.filled, n % 3 == 1 ? NO : YES);
		aci_number(&it.cell.stand_off.grout_strength, 40);
		aci_number(&it.cell.anchors.plate_thickness, 20);
		give(&p);
		trace_all(&p, false);
		trace_all(&p, true);
	}
}

/* --- interaction
 * ---------------------------------------------------------------------------------- */

/* 17.8.1 to 17.8.3 word by word: whether the pair holds. */
static bool holds_plainly(double n, double v)
{
	if (n > 1 || v > 1)
		return false;
	return v <= 0.2 || n <= 0.2 || n + v <= 1.2;
}

Test(aci318, interaction_gives_the_codes_verdict)
{
	for (int i = 0; i <= 240; i++)
		for (int k = 0; k <= 240; k++) {
			double n = (i + 0.3) / 200, v = (k + 0.4) / 200;
			bool holds = aci_interaction(CODE_STRAIGHT, n, v) <= 1;
			cr_assert_eq(holds, holds_plainly(n, v), "%g and %g", n, v);
			cr_assert_eq(aci_interaction(CODE_FIVE_THIRDS, n, v) <= 1,
			             pow(n, 5.0 / 3) + pow(v, 5.0 / 3) <= 1, "%g and %g", n, v);
			cr_assert_geq(aci_interaction(CODE_STRAIGHT, n + 0.01, v),
			              aci_interaction(CODE_STRAIGHT, n, v));
		}
}

/* --- rows
 * ------------------------------------------------------------------------------------------ */

Test(aci318, rows_of_an_edge)
{
	struct edge_view view = {.row_count = 3, .row_distance = {100, 200, 250}};
	cr_expect(aci_row_stands_alone(&view, 0), "100 mm apart, edge distance 100 mm");
	cr_expect_not(aci_row_stands_alone(&view, 1), "50 mm apart, edge distance 200 mm");
	cr_expect_not(aci_row_stands_alone(&view, 2), "the last row takes all");
	view.row_distance[1] = 199;
	cr_expect_not(aci_row_stands_alone(&view, 0), "99 mm apart");
}

Test(aci318, blowout_reach)
{
	struct plain_aci p = ordinary(ACI_HEADED);
	give(&p);
	cr_expect(aci_blows_out(&it.facts, 39.9));
	cr_expect_not(aci_blows_out(&it.facts, 40), "hef = 2.5 ca1");
	cr_expect_eq(aci_blowout_limit(40), 240);
}
