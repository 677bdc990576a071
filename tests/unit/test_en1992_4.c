/* EN 1992-4: against a plain computation from the clauses, at the limits of its formulas, and what
 * its written calculation says. */
#include "../../src/cell/fields.h"
#include "../../src/strength/design.h"
#include "../../src/strength/en_values.h"
#include "../../src/strength/layout.h"
#include "../../src/strength/needs.h"
#include "../support/routes.h"
#include "../support/cases.h"
#include "../support/en_case.h"
#include "../support/plain_en1992_4.h"
#include "../support/random_base.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static struct en_case it;

static void open_all(void)
{
	en_case_open(&it);
	route_open();
}

static void close_all(void)
{
	en_case_close(&it);
	route_close();
}

TestSuite(en1992_4, .init = open_all, .fini = close_all, .timeout = 60);

/* --- random cells ------------------------------------------------------------------------------
 */

static const enum anchor_type type_of[] = {CAST_IN_HEADED, UNDERCUT, SCREW, ADHESIVE};

/* Sheet and concrete over what is met in practice and beyond. */
static void random_anchor(struct dice *dice, struct plain_en *p)
{
	p->kind = (enum plain_kind)dice_whole(dice, 0, 3);
	p->cracked = dice_whole(dice, 0, 1);
	p->open_mesh = dice_whole(dice, 0, 1);
	p->tied = dice_whole(dice, 0, 1);
	p->stirrups = dice_whole(dice, 0, 1);
	p->ductile = dice_whole(dice, 0, 1);
	p->sustained = dice_whole(dice, 0, 1);
	p->fck = dice_between(dice, 12, 60);
	p->at = dice_between(dice, 15, 30);
	p->hef = dice_between(dice, 40, 250);
	p->d = dice_between(dice, 6, 36);
	p->h = p->hef + dice_between(dice, 20, 300);
	p->hmin = dice_between(dice, 0.5, 1.5) * p->h;
	p->as = dice_between(dice, 20, 800);
	p->fuk = dice_between(dice, 360, 1000);
	p->fyk = dice_between(dice, 0.5, 0.95) * p->fuk;
	p->ah = dice_between(dice, 100, 3000);
	p->ginst = dice_between(dice, 1, 1.4);
	p->p_cr = dice_between(dice, 5e3, 60e3);
	p->p_ucr = dice_between(dice, 1, 1.6) * p->p_cr;
	p->p_eq = dice_between(dice, 0.5, 1) * p->p_cr;
	p->tau_cr = dice_between(dice, 2, 10);
	p->tau_ucr = dice_between(dice, 1, 2) * p->tau_cr;
	p->tau_eq = dice_between(dice, 0.5, 1) * p->tau_cr;
	p->ccr_sp = dice_between(dice, 1, 3) * p->hef;
	p->n_eq = dice_between(dice, 20e3, 60e3);
	p->v_eq = dice_between(dice, 10e3, 30e3);
}

static void random_layout(struct dice *dice, struct plain_en *p)
{
	double near = dice_between(dice, 0.4, 6) * p->hef;
	p->nx = dice_whole(dice, 1, 4);
	p->ny = dice_whole(dice, 1, 3);
	p->sx = dice_between(dice, 0.2, 3.5) * p->hef;
	p->sy = dice_between(dice, 0.5, 3.5) * p->hef;
	p->x0 = dice_between(dice, 0.2, 1) * near;
	p->y0 = dice_between(dice, 0.1, 1) * near;
	p->x_length = p->x0 + (p->nx - 1) * p->sx + dice_between(dice, 0.2, 1) * near;
	p->y_length = p->y0 + (p->ny - 1) * p->sy + dice_between(dice, 0.2, 1) * near;
}

static void give_sheet(const struct plain_en *p)
{
	struct anchor_strength *strength = &it.cell.anchors.product.strength;
	struct en1992_4_sheet *sheet = &strength->en;
	en_case_number(&strength->yield, p->fyk);
	en_case_number(&strength->ultimate, p->fuk);
	en_case_number(&strength->head_area, p->ah);
	en_case_number(&strength->at_concrete, p->at);
	en_case_number(&strength->elongation, p->ductile ? 0.12 : 0.08);
	en_case_number(&sheet->installation_factor, p->ginst);
	sheet->pullout = (struct by_state){{{{0}, GIVEN}, p->p_cr, NULL},
	                                   {{{0}, GIVEN}, p->p_ucr, NULL},
	                                   {{{0}, GIVEN}, p->p_eq, NULL}};
	sheet->bond = (struct by_state){{{{0}, GIVEN}, p->tau_cr, NULL},
	                                {{{0}, GIVEN}, p->tau_ucr, NULL},
	                                {{{0}, GIVEN}, p->tau_eq, NULL}};
	en_case_number(&sheet->splitting_edge, p->ccr_sp);
	en_case_number(&sheet->steel_tension_seismic, p->n_eq);
	en_case_number(&sheet->steel_shear_seismic, p->v_eq);
}

static void give(const struct plain_en *p)
{
	struct product *product = &it.cell.anchors.product;
	struct reinforcement *bars = &it.cell.slab.reinforcement;
	en_case_word(&product->type, type_of[p->kind]);
	en_case_number(&product->shaft, p->d);
	en_case_number(&product->embedment, p->hef);
	en_case_number(&product->tensile_area, p->as);
	en_case_number(&product->least_slab, p->hmin);
	en_case_number(&it.cell.slab.thickness, p->h);
	en_case_word(&it.cell.slab.concrete.cracked, p->cracked ? YES : NO);
	en_case_word(&bars->supplementary, p->tied ? YES : NO);
	en_case_word(&bars->edge, p->stirrups ? EDGE_BARS_WITH_STIRRUPS : EDGE_BARS);
	en_case_number(&bars->bar_spacing, p->open_mesh ? 150 : 149);
	give_sheet(p);
	it.fck = p->fck;
	for (int i = 0; i < p->nx * p->ny; i++)
		it.cell.anchors.at[i] = (struct vec2){p->x0 + i % p->nx * p->sx,
		                                      p->y0 + i / p->nx * p->sy};
	it.cell.anchors.count = (size_t)(p->nx * p->ny);
	en_case_outline(&it, (const struct vec2[]){{0, 0}, {p->x_length, 0},
	                                           {p->x_length, p->y_length}, {0, p->y_length}}, 4);
	en_case_settle(&it);
	it.facts.sustained_tension = p->sustained;
}

typedef void group_function(const struct code_facts *, const struct pattern *, uint64_t, bool,
                            struct group_strength *, struct trace *);

/* Without trace; then with one at rest and in an earthquake: the same bits, every expression true
 * and the last step the strength. */
static struct group_strength of_group(group_function *mode, const char *symbol)
{
	struct group_strength quiet, told;
	mode(&it.facts, &it.pattern, en_case_all(&it), false, &quiet, NULL);
	for (int earthquake = 0; earthquake < 2; earthquake++) {
		char name[40];
		struct trace *written = route_trace_new();
		mode(&it.facts, &it.pattern, en_case_all(&it), earthquake, &told, written);
		double value = earthquake ? told.seismic : told.design;
		cr_assert(told.design == quiet.design && told.seismic == quiet.seismic &&
		                  told.lever == quiet.lever,
		          "%s: other bits with a trace", symbol);
		cr_assert_gt(traced_expressions(written, symbol) + !(value < HUGE_VAL), 0);
		strcpy(name, symbol);
		strcat(name, earthquake ? "_eq" : "");
		if (value < HUGE_VAL)
			cr_assert(traced_value(written, name) == value, "%s", name);
	}
	return quiet;
}

static void compare_group(const struct plain_en *p, group_function *mode, const char *symbol,
                          double (*plain)(const struct plain_en *, bool), uint64_t number)
{
	struct group_strength got = of_group(mode, symbol);
	double rest = plain(p, false), eq = plain(p, true);
	route_same(got.design, rest < 0 ? HUGE_VAL : rest, symbol, number);
	route_same(got.seismic, eq < 0 ? HUGE_VAL : eq, symbol, number);
	cr_assert_eq(got.count, it.cell.anchors.count);
	cr_assert(got.lever > 0);
}

static void compare_singles(const struct plain_en *p, uint64_t number)
{
	size_t n = it.cell.anchors.count;
	for (int eq = 0; eq < 2; eq++) {
		route_same(en_steel_tension(&it.facts, eq, route_trace_new()),
		           plain_steel_tension(p, eq), "steel tension", number);
		traced_expressions(&route_trace, "steel tension");
		route_same(en_steel_shear(&it.facts, 0, eq, n, route_trace_new()),
		           plain_steel_shear(p, eq), "steel shear", number);
		traced_expressions(&route_trace, "steel shear");
		if (p->kind == PLAIN_BONDED)
			continue;
		route_same(en_pullout(&it.facts, eq, n, route_trace_new()), plain_pullout(p, eq),
		           "pull-out", number);
		traced_expressions(&route_trace, "pull-out");
	}
	it.facts.lever_arm = LEVER_ARM;
	it.facts.lever = p->hef / 3;
	for (int alpha = 1; alpha <= 2; alpha++) {
		en_case_word(&it.cell.anchors.product.strength.held_at_base, alpha == 2 ? YES : NO);
		double tension = 0.4 * alpha * plain_steel_tension(p, false);
		route_same(en_steel_shear(&it.facts, tension, false, n, route_trace_new()),
		     plain_bent(p, tension, p->hef / 3, alpha), "lever arm", number);
		traced_expressions(&route_trace, "lever arm");
	}
	it.facts.lever_arm = NO_LEVER;
}

/* the view of the edge y = 0 */
static const struct edge_view *lower_edge(void)
{
	struct edge_view *view;
	size_t count;
	cr_assert(edge_views(&it.pattern, &it.arena, &view, &count));
	for (size_t i = 0; i < count; i++)
		if (view[i].toward.y < -0.999)
			return &view[i];
	cr_assert_fail("no view of the lower edge");
	return NULL;
}

static uint64_t first_row(const struct plain_en *p) { return (UINT64_C(1) << p->nx) - 1; }

static void compare_edge(const struct plain_en *p, uint64_t number)
{
	struct edge_strength quiet, told;
	const struct edge_view *view = lower_edge();
	en_edge(&it.facts, &it.pattern, view, first_row(p), p->y0, false, &quiet, NULL);
	route_same(quiet.across, plain_edge(p, false), "edge", number);
	route_same(quiet.across_seismic, plain_edge(p, true), "edge in an earthquake", number);
	cr_assert(quiet.along == 2 * quiet.across);
	for (int eq = 0; eq < 2; eq++) {
		en_edge(&it.facts, &it.pattern, view, first_row(p), p->y0, eq, &told,
		        route_trace_new());
		cr_assert(told.across == quiet.across && told.lever == quiet.lever &&
		          told.across_seismic == quiet.across_seismic);
		traced_expressions(&route_trace, "edge");
		cr_assert(traced_value(&route_trace, eq ? "V_Rd_c_eq" : "V_Rd_c") ==
		          (eq ? told.across_seismic : told.across));
	}
}

static void compare_blowout(const struct plain_en *p, uint64_t number)
{
	struct group_strength quiet, told;
	for (int eq = 0; eq < 2; eq++) {
		en_blowout(&it.facts, &it.pattern, first_row(p), 1, eq, &quiet, NULL);
		en_blowout(&it.facts, &it.pattern, first_row(p), 1, eq, &told, route_trace_new());
		cr_assert(quiet.design == told.design && quiet.seismic == told.seismic);
		route_same(quiet.design, plain_blowout(p, false), "blow-out", number);
		route_same(quiet.seismic, plain_blowout(p, true), "blow-out in an earthquake",
		           number);
		traced_expressions(&route_trace, "blow-out");
	}
	/* the centre stands in the pattern's axes, as every group's: the same anchors, seen from a
	 * cell that is turned on the slab */
	struct group centre;
	double turned = it.pattern.turned;
	it.pattern.turned = 0.7;
	group_measure(&it.pattern, first_row(p), 0, &centre);
	en_blowout(&it.facts, &it.pattern, first_row(p), 1, false, &quiet, NULL);
	it.pattern.turned = turned;
	cr_assert(fabs(quiet.centre.x - centre.centre.x) < 1e-9 &&
	          fabs(quiet.centre.y - centre.centre.y) < 1e-9);
}

Test(en1992_4, random_cells_against_the_clauses)
{
	uint64_t seed = cases_seed(), count = cases_count("EN 1992-4 against the clauses", 5);
	for (uint64_t i = 0; i < count; i++) {
		struct dice dice = dice_open(seed, i);
		struct plain_en p = {0};
		random_anchor(&dice, &p);
		random_layout(&dice, &p);
		give(&p);
		compare_singles(&p, i);
		compare_group(&p, en_cone, "N_Rd_c", plain_cone, i);
		if (p.kind == PLAIN_BONDED)
			compare_group(&p, en_bond, "N_Rd_p", plain_bond, i);
		compare_group(&p, en_splitting, "N_Rd_sp", plain_splitting, i);
		compare_group(&p, en_pryout, "V_Rd_cp", plain_pryout, i);
		compare_edge(&p, i);
		if (p.kind == PLAIN_HEADED && en_blows_out(&it.facts, p.y0))
			compare_blowout(&p, i);
	}
}

/* --- limits of the formulas ---------------------------------------------------------------------
 */

static double cone_of(uint64_t anchors)
{
	struct group_strength out;
	en_cone(&it.facts, &it.pattern, anchors, false, &out, NULL);
	return out.design;
}

static double bond_of(uint64_t anchors)
{
	struct group_strength out;
	en_bond(&it.facts, &it.pattern, anchors, false, &out, NULL);
	return out.design;
}

static void pair_apart(double spacing)
{
	it.cell.anchors.count = 2;
	it.cell.anchors.at[0] = (struct vec2){0, 0};
	it.cell.anchors.at[1] = (struct vec2){spacing, 0};
	en_case_settle(&it);
}

static void slab_around(double left, double right, double below, double above)
{
	en_case_outline(&it, (const struct vec2[]){{-left, -below}, {right, -below}, {right, above},
	                                           {-left, above}}, 4);
	en_case_settle(&it);
}

/* From 3 hef on two anchors carry twice what one does; at nothing they carry as one. */
Test(en1992_4, spacing_from_nothing_to_far)
{
	pair_apart(3 * 70);
	double one = cone_of(1);
	route_same(cone_of(3), 2 * one, "two cones apart", 0);
	pair_apart(1e-9);
	cr_assert_float_eq(cone_of(3), one, 1e-9 * one);
	double before = one;
	for (int i = 1; i <= 40; i++) {
		pair_apart(i * 6.0);
		cr_assert_geq(cone_of(3), before * (1 - 1e-12));
		before = cone_of(3);
	}
}

Test(en1992_4, bond_spacing_from_far)
{
	en_case_word(&it.cell.anchors.product.type, ADHESIVE);
	pair_apart(3 * 70);
	route_same(bond_of(3), 2 * bond_of(1), "two bonds apart", 0);
	cr_assert_leq(en_group_limit(&it.facts, BOND), 3 * 70);
	pair_apart(en_group_limit(&it.facts, BOND));
	route_same(bond_of(3), 2 * bond_of(1), "two bonds at the critical spacing", 0);
}

/* One edge that comes from far away: no jump at the critical distance, and never more. */
Test(en1992_4, edge_from_far)
{
	en_case_settle(&it);
	double free = cone_of(1), before = 0;
	for (int i = 1; i <= 60; i++) {
		slab_around(1e5, 1e5, i * 2.0, 1e5);
		cr_assert_gt(cone_of(1), before * (1 - 1e-12));
		before = cone_of(1);
	}
	route_same(before, free, "an edge at 120 mm of 105 mm", 0);
	slab_around(1e5, 1e5, 105 * (1 - 1e-9), 1e5);
	cr_assert_float_eq(cone_of(1), free, 1e-8 * free);
}

/* Where the third edge comes within 1.5 hef the reduced embedment begins at hef itself: no jump,
 * as long as one of the near edges is just there. */
Test(en1992_4, reduced_embedment_begins_at_the_whole_one)
{
	slab_around(80, 90, 105 * (1 + 1e-9), 1e5);
	double two = cone_of(1);
	slab_around(80, 90, 105 * (1 - 1e-9), 1e5);
	double three = cone_of(1);
	cr_assert_float_eq(three, two, 1e-7 * two);
}

/* CEN/TS 1992-4-2: hef 200 mm, c 110/100/120/80 mm, s 210 mm gives 80 mm; the same in the case
 * file. In shear c'1 100 mm. A shallower anchor then has no part in the strength: */
Test(en1992_4, deep_anchor_near_all_edges_gains_nothing)
{
	double at[2];
	en_case_number(&it.cell.slab.thickness, 400);
	for (int i = 0; i < 2; i++) {
		en_case_number(&it.cell.anchors.product.embedment, i ? 300 : 200);
		slab_around(80, 100, 110, 120);
		at[i] = cone_of(1);
	}
	route_same(at[1], at[0], "300 mm as 200 mm", 0);
}

static struct edge_strength edge_of(double c1)
{
	struct edge_strength out;
	en_edge(&it.facts, &it.pattern, lower_edge(), en_case_all(&it), c1, false, &out, NULL);
	return out;
}

/* Far from the edge it carries more, in a thick slab as much as it can, and no jump where the
 * member becomes thin and narrow. */
Test(en1992_4, concrete_edge_distances)
{
	double before = 0;
	for (int i = 1; i <= 100; i++) {
		slab_around(1e5, 1e5, 5.0 * i, 1e5);
		cr_assert_gt(edge_of(5.0 * i).across, before);
		before = edge_of(5.0 * i).across;
	}
	slab_around(225 * (1 + 1e-9), 100, 150, 1e5);
	double wide = edge_of(150).across;
	slab_around(225 * (1 - 1e-9), 100, 150, 1e5);
	cr_assert_float_eq(edge_of(150).across, wide, 1e-7 * wide);
}

/* Nothing is known but a clear distance: as a corner on both sides, never more than any real edge
 * there. */
Test(en1992_4, virtual_edge_is_the_lower)
{
	struct edge_strength virtual;
	it.clear = 150;
	en_case_settle(&it);
	en_edge(&it.facts, &it.pattern, NULL, 1, 150, false, &virtual, route_trace_new());
	traced_expressions(&route_trace, "virtual edge");
	slab_around(150, 150, 150, 150);
	route_same(virtual.across, edge_of(150).across, "corners on both sides", 0);
	slab_around(1e5, 150, 150, 1e5);
	cr_assert_lt(virtual.across, edge_of(150).across);
	cr_assert_eq(en_remote_edge(&it.facts), 720);
}

/* Longer lever, more tension: less; without any lever as without lever arm. */
Test(en1992_4, lever_arm)
{
	it.lever_arm = NO_LEVER;
	en_case_settle(&it);
	double flat = en_steel_shear(&it.facts, 0, false, 1, NULL), before = flat;
	it.facts.lever_arm = LEVER_ARM;
	for (int i = 1; i < 100; i++) {
		it.facts.lever = i;
		double bent = en_steel_shear(&it.facts, 0, false, 1, NULL);
		cr_assert_leq(bent, before);
		before = bent;
	}
	it.facts.lever = 1e-6;
	cr_assert_eq(en_steel_shear(&it.facts, 0, false, 1, NULL), flat);
	it.facts.lever = 20;
	double pulled = en_steel_tension(&it.facts, false, NULL);
	cr_assert_eq(en_steel_shear(&it.facts, pulled, false, 1, NULL), 0);
	cr_assert_eq(en_steel_shear(&it.facts, 2 * pulled, false, 1, NULL), 0);
	/* grout pad: bends too, and (7.36) stays the limit: 20 mm cost 20 % */
	double bent = en_steel_shear(&it.facts, 0, false, 1, NULL);
	it.facts.lever_arm = GROUT_PAD;
	it.facts.grout = 20;
	route_same(en_steel_shear(&it.facts, 0, false, 1, NULL), bent, "grout pad", 0);
	it.facts.lever = 1e-6;
	route_same(en_steel_shear(&it.facts, 0, false, 1, route_trace_new()), 0.8 * flat, "(7.36)",
	           0);
	traced_expressions(&route_trace, "grout pad");
}

/* --- where a mode says nothing ------------------------------------------------------------------
 */

Test(en1992_4, splitting_needs_no_check)
{
	struct group_strength out;
	slab_around(140, 140, 140, 140);
	en_splitting(&it.facts, &it.pattern, 1, false, &out, route_trace_new());
	cr_assert(out.design == HUGE_VAL && out.seismic == HUGE_VAL && out.lever == HUGE_VAL);
	cr_assert_eq(traced_value(&route_trace, "c_needed"), 140);
	/* a group needs 1.2 times as much; a thin slab a check */
	pair_apart(50);
	en_splitting(&it.facts, &it.pattern, 3, false, &out, NULL);
	cr_assert_lt(out.design, HUGE_VAL);
	it.cell.anchors.count = 1;
	en_case_number(&it.cell.slab.thickness, 139);
	en_case_settle(&it);
	en_splitting(&it.facts, &it.pattern, 1, false, &out, NULL);
	cr_assert_lt(out.design, HUGE_VAL);
	/* bars that hold the cracks */
	en_case_word(&it.cell.slab.reinforcement.against_splitting, YES);
	en_splitting(&it.facts, &it.pattern, 1, false, &out, route_trace_new());
	cr_assert_eq(out.design, HUGE_VAL);
	cr_assert_eq(traced_value(&route_trace, "w_k"), 0.3);
}

Test(en1992_4, pullout_that_does_not_govern)
{
	struct never_governs *never = &it.cell.anchors.product.strength.en.no_pullout;
	struct group_strength out;
	en_case_word(&never->cracked, 0);
	slab_around(60, 1e5, 1e5, 1e5);
	cr_assert_eq(en_pullout(&it.facts, false, 1, route_trace_new()), HUGE_VAL);
	cr_assert_eq(traced_value(&route_trace, "pull_out_governs"), 0);
	cr_assert_lt(en_pullout(&it.facts, true, 1, NULL), HUGE_VAL);
	en_splitting(&it.facts, &it.pattern, 1, false, &out, route_trace_new());
	cr_assert_eq(traced_value(&route_trace, "N0_Rk_sp"), traced_value(&route_trace, "N0_Rk_c"));
	traced_expressions(&route_trace, "splitting without pull-out");
}

/* --- tension with shear -------------------------------------------------------------------------
 */

/* At most 1 exactly where the clause is met, and proportional to the loads. */
Test(en1992_4, interaction)
{
	for (int i = 0; i <= 60; i++)
		for (int k = 0; k <= 60; k++) {
			double n = i * 0.0213, v = k * 0.0213;
			bool steel = n * n + v * v <= 1;
			bool concrete = n <= 1 && v <= 1 &&
			                (pow(n, 1.5) + pow(v, 1.5) <= 1 || n + v <= 1.2);
			cr_assert_eq(en_interaction_steel(n, v, false) <= 1, steel);
			cr_assert_eq(en_interaction_concrete(n, v, false) <= 1, concrete);
			cr_assert_eq(en_interaction_steel(n, v, true), n + v);
			cr_assert_eq(en_interaction_concrete(n, v, true), n + v);
			cr_assert_float_eq(en_interaction_concrete(3 * n, 3 * v, false),
			                   3 * en_interaction_concrete(n, v, false), 1e-13);
		}
	cr_assert_float_eq(en_interaction_concrete(1.1, 0, false), 1.1, 1e-15);
}

/* --- what is missing, what does not apply, limits of the layout ---------------------------------
 */

static bool lacks(enum code_mode mode, bool earthquake, const char *path)
{
	const char *found[20];
	size_t count = en_missing(&it.facts, mode, earthquake, found, 20);
	for (size_t i = 0; i < count; i++)
		if (strcmp(found[i], path) == 0)
			return true;
	return false;
}

Test(en1992_4, nothing_is_missing_where_all_is_given)
{
	const char *none[1];
	en_case_settle(&it);
	for (int mode = 0; mode < CODE_MODES; mode++)
		for (int eq = 0; eq < 2; eq++)
			cr_assert_eq(en_missing(&it.facts, (enum code_mode)mode, eq, none, 0), 0,
			             "mode %d", mode);
}

Test(en1992_4, exactly_what_needs_it_lacks_it)
{
	struct anchor_strength *strength = &it.cell.anchors.product.strength;
	const char *pullout = "anchors.product.strength.en1992_4.pullout.cracked",
		   *installation = "anchors.product.strength.en1992_4.installation_factor";
	strength->en.pullout.cracked = (struct number){0};
	strength->en.installation_factor = (struct number){0};
	en_case_settle(&it);
	for (int mode = 0; mode < CODE_MODES; mode++) {
		enum code_mode m = (enum code_mode)mode;
		cr_assert_eq(lacks(m, false, pullout), m == PULLOUT || m == SPLITTING);
		cr_assert_not(lacks(m, true, pullout));
		cr_assert_eq(lacks(m, false, installation),
		             m == CONE || m == PULLOUT || m == BLOWOUT || m == BOND ||
		                     m == SPLITTING || m == BOND_SUSTAINED);
	}
	en_case_word(&strength->en.no_pullout.cracked, 0);
	cr_assert_not(lacks(PULLOUT, false, pullout));
	en_case_word(&strength->en.seismic, SEISMIC_NONE);
	cr_assert(lacks(EDGE, true, "anchors.product.strength.en1992_4.seismic"));
	cr_assert_not(lacks(EDGE, false, "anchors.product.strength.en1992_4.seismic"));
	it.facts.lever_arm = LEVER_UNKNOWN;
	cr_assert(lacks(STEEL_SHEAR, false, "cell.stand_off"));
	cr_assert_not(lacks(EDGE, false, "cell.stand_off"));
}

/* Every path that can be missing is a field's. */
Test(en1992_4, missing_paths_are_fields)
{
	const char *found[24];
	memset(&it.cell.anchors.product, 0, sizeof it.cell.anchors.product);
	for (int type = 0; type <= ADHESIVE; type++) {
		en_case_word(&it.cell.anchors.product.type, type);
		en_case_settle(&it);
		it.facts.concrete = it.facts.thickness = 0;
		for (int k = 0; k < 2 * 2 * CODE_MODES; k++) {
			it.facts.lever_arm = k & 1 ? LEVER_UNKNOWN : LEVER_ARM;
			size_t count = en_missing(&it.facts, (enum code_mode)(k / 4), k & 2, found,
			                          24);
			for (size_t i = 0; i < count; i++)
				cr_assert(field_find(found[i]) != NULL, "%s is no field", found[i]);
		}
	}
}

Test(en1992_4, missing_counts_beyond_the_room)
{
	const char *found[2];
	struct anchor_strength *strength = &it.cell.anchors.product.strength;
	strength->en = (struct en1992_4_sheet){0};
	en_case_word(&it.cell.anchors.product.type, ADHESIVE);
	en_case_settle(&it);
	cr_assert_eq(en_missing(&it.facts, BOND, true, found, 2), 5);
	cr_assert_str_eq(found[0], "anchors.product.strength.en1992_4.seismic");
}

Test(en1992_4, left_out)
{
	struct word *type = &it.cell.anchors.product.type;
	static const struct { enum anchor_type type; bool pullout, bond, blowout, cone; } row[] = {
		{CAST_IN_HEADED, true, false, true, true}, {SCREW, true, false, false, true},
		{ADHESIVE, false, true, false, true}, {CAST_IN_HOOKED, false, false, false, false}};
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		en_case_word(type, row[i].type);
		cr_assert_eq(en_left_out(&it.cell, PULLOUT) == NULL, row[i].pullout);
		cr_assert_eq(en_left_out(&it.cell, BOND) == NULL, row[i].bond);
		cr_assert_eq(en_left_out(&it.cell, BLOWOUT) == NULL, row[i].blowout);
		cr_assert_eq(en_left_out(&it.cell, CONE) == NULL, row[i].cone);
		cr_assert_null(en_left_out(&it.cell, STEEL_SHEAR));
		cr_assert_not_null(en_left_out(&it.cell, BOND_SUSTAINED));
	}
	*type = (struct word){0};
	cr_assert_null(en_left_out(&it.cell, BLOWOUT));
}

static const struct code_limit *limit(struct code_limit row[], size_t count, const char *what)
{
	for (size_t i = 0; i < count; i++)
		if (strstr(row[i].what, what))
			return &row[i];
	cr_assert_fail("no row %s", what);
	return NULL;
}

Test(en1992_4, layout)
{
	struct code_limit row[MAX_CODE_LIMITS];
	struct anchor_strength *strength = &it.cell.anchors.product.strength;
	en_case_number(&strength->least_spacing, 60);
	en_case_number(&strength->least_edge, 60);
	it.cell.anchors.count = 2;
	it.cell.anchors.at[1] = (struct vec2){59, 0};
	slab_around(70, 130, 60, 1e5);
	size_t count = en_layout(&it.facts, &it.pattern, true, row);
	cr_assert_leq(count, (size_t)MAX_CODE_LIMITS);
	cr_assert_not(code_limit_kept(limit(row, count, "spacing")));
	cr_assert(code_limit_kept(limit(row, count, "distance to an edge")));
	cr_assert(code_limit_kept(limit(row, count, "thickness")));
	cr_assert_not(limit(row, count, "cracked")->known);
	count = en_layout(&it.facts, &it.pattern, false, row);
	cr_assert_str_eq(limit(row, count, "distance to an edge")->lacks[0], "slab.clear");
	/* a hooked anchor is beyond the code */
	en_case_word(&it.cell.anchors.product.type, CAST_IN_HOOKED);
	en_case_settle(&it);
	count = en_layout(&it.facts, &it.pattern, true, row);
	cr_assert_not(code_limit_kept(limit(row, count, "type")));
}
