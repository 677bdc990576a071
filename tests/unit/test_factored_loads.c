/* Factored loads of the code methods: factors and cases by hand, every case of every source and
 * method worked out anew, what always acts, groups, and the written calculation.
 * W_arm = 392.266 N, W_payload = 98.0665 N, W_frame = 1961.33 N, W_stock = 490.3325 N. Factors
 * (weight, moving part, the arm's own weight where it hurts), all from memory: ACI 318-19 5.3.1 0.9
 * or 1.2, 1.6, 1.6; EN 1990 Tables A1.2(A) and (B) 0.9 or 1.35, 1.5, 1.5. */
#include "../../src/loads/earthquake.h"
#include "../../src/loads/factors.h"
#include "../../src/loads/loads.h"
#include "../../src/loads/weights.h"
#include "../support/cell_text.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

#define G0 9.80665
/* some ten roundings of forces of 1e4 N and of moments of 1e7 N mm */
#define SAME_FORCE 1e-9
#define SAME_MOMENT 1e-6

static const char cell_text[] =
	"standfast: 1\n"
	"methods: [rating, aci318, en1992_4]\n"
	"cell:\n"
	"  parts:\n"
	"    - {name: frame, mass: 200 kg, at: [10 mm, 20 mm, 100 mm]}\n"
	"    - {name: stock, mass: 50 kg, least_mass: 10 kg, at: [300 mm, 0 mm, 700 mm]}\n"
	"  base: [{outline: {unit: mm, points: [[-500, -400], [500, -400], [500, 400], [-500, 400]]}}]\n"
	"arm:\n"
	"  mount: [100 mm, -50 mm, 600 mm]\n"
	"  weight: {arm: 40 kg, payload: 10 kg, reach: {arm: 500 mm, payload: 1000 mm}}\n"
	"  reactions:\n"
	"    vertical_includes_weight: yes\n"
	"    tilting_includes_weight: yes\n"
	"    normal: {vertical: 1.1 kN, horizontal: 0.6 kN, tilting: 0.7 kN m, twisting: 0.4 kN m}\n"
	"    emergency_stop: {vertical: 1.6 kN, horizontal: 1.4 kN, tilting: 1.5 kN m, twisting: 0.9 kN m}\n"
	"anchors:\n"
	"  at: {unit: mm, points: [[-400, -300], [400, -300], [400, 300], [-400, 300]]}\n"
	"  product: {type: torque_controlled}\n"
	"loads:\n"
	"  - {name: cart, force: 250 N, direction: any, at_height: 1.5 m, with: normal}\n"
	"  - {name: hose, force: [30 N, 0 N, -40 N], at: [200 mm, 100 mm], at_height: 1 m, with: rest}\n";

static const struct change bonded = {"anchors.product.type", "adhesive"};
static const struct change quakes[] = {
	{"earthquake", "{code: asce7_16, height_share: 0, sds: 1, amplification: 1, "
	               "response: 2.5, importance: 1, overstrength: 2}"},
	{"earthquake", "{code: en1998, height_share: 0, ground_share: 0.2, soil: 1.2, "
	               "importance: 1, behaviour: 1}"}};

/* Wrenches of an arm's own motion: one instant in which all numbers differ, one that turns, one at
 * rest; and two histories, which bring nothing here but their groups. */
static const struct arm_load motion[] = {
	{{100, 200, -500}, {1e4, 2e4, 3e3}, 490, {1e3, 2e3}, 0, 0},
	{{-50, 80, 300}, {-2e5, 1e5, -4e3}, 490, {-5e4, 3e4}, 0, 6.283185307179586}};
static const struct arm_load rest[] = {
	{{0, 0, -490}, {7e4, -2e4, 0}, 490, {7e4, -2e4}, 0, 6.283185307179586}};
static const struct arm_source sources[] = {
	{.way = WAY_CHAIN, .arm_case = ARM_EMERGENCY_STOP, .name = "emergency stop, chain",
	 .swept = {motion, 2}, .bound = {motion, 1}},
	{.way = WAY_HISTORY, .arm_case = ARM_EMERGENCY_STOP, .name = "stop.csv",
	 .bound = {motion, 1}},
	{.way = WAY_HISTORY, .arm_case = ARM_NORMAL, .name = "round.csv", .bound = {motion, 1}},
	{.way = WAY_CHAIN, .arm_case = ARM_REST, .name = "rest, chain", .swept = {rest, 1},
	 .bound = {rest, 1}}};
static const struct arm_loads own_motion = {(struct arm_source *)sources, 4, 392.266};
static const struct arm_loads *const own_of_all[MAX_SETUPS] = {
	&own_motion, &own_motion, &own_motion};

struct built { struct arena texts; struct reading reading; struct loads loads; };

static void build(struct built *built, const struct arm_loads *const arms[],
                  const struct change *change, size_t count)
{
	arena_open(&built->texts, NULL, NULL);
	reading_open(&built->reading, text_with(&built->texts, cell_text, change, count));
	cr_assert_eq(built->reading.status, DONE, "%s", reading_faults(&built->reading));
	cr_assert_eq(loads_build(built->reading.cell, arms, &built->reading.arena, &built->loads),
	             DONE);
}

static void unbuild(struct built *built)
{
	reading_close(&built->reading);
	arena_close(&built->texts);
}

/* What a case is asked for by; the only one. */
struct wanted {
	enum method method;
	int source;
	enum weight_run run;
	enum vertical_run vertical;
	bool sustained;
};

static const struct load_case *find(const struct loads *loads, struct wanted wanted)
{
	const struct load_case *found = NULL;
	for (size_t i = 0; i < loads->count; i++) {
		const struct load_case *c = &loads->list[i];
		if (c->method != wanted.method || c->source != wanted.source ||
		    c->run != wanted.run || c->vertical != wanted.vertical ||
		    c->sustained != wanted.sustained)
			continue;
		cr_assert_null(found, "two cases of one kind: %s, %s", c->name, c->combination);
		found = c;
	}
	cr_assert(found, "no case: method %d, source %d, run %d", (int)wanted.method,
	          wanted.source, (int)wanted.run);
	return found;
}

/* --- factors -------------------------------------------------------------------------------- */

static void expect_factors(const struct cell *cell, enum method method, enum weight_run run,
                           struct run_factors wanted)
{
	struct run_factors k = run_factors(cell, method, run);
	expect_near(k.weight, wanted.weight, 0);
	expect_near(k.moving, wanted.moving, 0);
	expect_near(k.own, wanted.own, 0);
}

Test(factored_loads, factors)
{
	struct cell cell = {0};
	cell.choices.stabilising_weight.value = 0.7;
	expect_factors(&cell, METHOD_RATING, RUN_LOW, (struct run_factors){0.7, 1, 1});
	expect_factors(&cell, METHOD_RATING, RUN_FULL, (struct run_factors){1, 1, 1});
	expect_factors(&cell, METHOD_RATING, RUN_STABILITY, (struct run_factors){0.9, 1.25, 1});
	expect_factors(&cell, METHOD_ACI318, RUN_LOW, (struct run_factors){0.9, 1.6, 1.6});
	expect_factors(&cell, METHOD_ACI318, RUN_FULL, (struct run_factors){1.2, 1.6, 1.6});
	expect_factors(&cell, METHOD_EN1992_4, RUN_LOW, (struct run_factors){0.9, 1.5, 1.5});
	expect_factors(&cell, METHOD_EN1992_4, RUN_FULL, (struct run_factors){1.35, 1.5, 1.5});
}

/* --- the data sheet by hand ------------------------------------------------------------------ */

/* Emergency stop, weight in the vertical force; stock 10 kg in the low run, 98.0665 N.
 * ACI low, least: 0.9 (1961.33 + 98.0665) + 0.9 x 392.266 - 1.6 x 1207.734 = 274.12185 N
 * ACI full, most: 1.2 (1961.33 + 490.3325) + 1.6 x 392.266 + 1.6 x 1207.734 = 5501.995 N
 * EN low, least: 2206.49625 - 1.5 x 1207.734 = 394.89525 N
 * EN full, most: 1.35 x 2451.6625 + 1.5 x 1600 = 5709.744375 N
 * Turning: 1.5e6 + 1400 x 600 = 2.34e6 N mm, times 1.6 and 1.5. */
Test(factored_loads, data_sheet_by_hand)
{
	struct built b;
	build(&b, NULL, NULL, 0);
	const struct load_case *c = find(&b.loads, (struct wanted){METHOD_ACI318,
		SOURCE_EMERGENCY_STOP, RUN_LOW, VERTICAL_LEAST, false});
	expect_near(c->down, 274.12185, 1e-8);
	expect_near(c->turning, 3.744e6, 1e-6);
	expect_near(c->turning_force[0].force, 2240, 1e-9);
	expect_near(c->turning_force[0].twist, 1.44e6, 1e-6);
	cr_expect_str_eq(c->combination, "0.9D + 1.6L (ACI 318-19 5.3.1, 0.9D with L is an "
	                                 "addition), least vertical force");
	c = find(&b.loads, (struct wanted){METHOD_ACI318, SOURCE_EMERGENCY_STOP, RUN_FULL,
	                                   VERTICAL_MOST, false});
	expect_near(c->down, 5501.995, 1e-8);
	cr_expect_str_eq(c->combination, "1.2D + 1.6L (ACI 318-19 5.3.1), largest vertical force");
	c = find(&b.loads, (struct wanted){METHOD_EN1992_4, SOURCE_EMERGENCY_STOP, RUN_LOW,
	                                   VERTICAL_LEAST, false});
	expect_near(c->down, 394.89525, 1e-8);
	expect_near(c->turning, 3.51e6, 1e-6);
	c = find(&b.loads, (struct wanted){METHOD_EN1992_4, SOURCE_EMERGENCY_STOP, RUN_FULL,
	                                   VERTICAL_MOST, false});
	expect_near(c->down, 5709.744375, 1e-8);
	cr_expect_str_eq(c->combination, "1.35G + 1.5Q (EN 1990 6.10), largest vertical force");
	unbuild(&b);
}

/* --- every case anew ------------------------------------------------------------------------- */

/* weight, moving, own */
static const double by_hand[METHODS][3][3] = {
	[METHOD_RATING] = {{0.6, 1, 1}, {1, 1, 1}, {0.9, 1.25, 1}},
	[METHOD_ACI318] = {{0.9, 1.6, 1.6}, {1.2, 1.6, 1.6}},
	[METHOD_EN1992_4] = {{0.9, 1.5, 1.5}, {1.35, 1.5, 1.5}}};

struct anew { double k[3], down, fixed[2], turning, horizontal, twist, shear[3]; };

static void put_down(struct anew *a, double force, double x, double y)
{
	a->down += force;
	a->fixed[0] += force * x;
	a->fixed[1] += force * y;
}

/* The arm by its papers, with the readings that these files state. */
static void put_sheet(struct anew *a, const struct load_case *c, bool without)
{
	static const double vertical[] = {0, 1100, 1600}, horizontal[] = {0, 600, 1400},
		tilting[] = {0, 0.7e6, 1.5e6}, twisting[] = {0, 0.4e6, 0.9e6};
	int k = c->arm_case;
	double arm = 40 * G0, payload = 10 * G0, v = vertical[k];
	bool moves = k != ARM_REST;
	if (c->vertical == VERTICAL_LEAST)
		put_down(a, a->k[0] * arm - (moves ? a->k[1] * (without ? v : v - arm) : 0), 100,
		         -50);
	else if (moves && !without)
		put_down(a, a->k[2] * arm + a->k[1] * (v - arm), 100, -50);
	else
		put_down(a, a->k[2] * (arm + payload) + a->k[1] * v, 100, -50);
	a->turning += a->k[1] * tilting[k] + a->k[1] * horizontal[k] * 600;
	if (without || !moves)
		a->turning += a->k[2] * (500 * arm + 1000 * payload);
	a->horizontal += a->k[1] * horizontal[k];
	a->twist += a->k[1] * twisting[k];
}

/* F' = -k W + m (F + W), M' = own Mw + m (M - Mw), moved down by 600 mm. */
static void put_own(struct anew *a, const struct load_case *c)
{
	const struct arm_load *l = c->arm_load;
	double weight = c->vertical == VERTICAL_MOST ? a->k[2] : a->k[0], m = a->k[1];
	double moment[2], first[2], force[2] = {m * l->force[0], m * l->force[1]};
	for (int k = 0; k < 2; k++)
		moment[k] = a->k[2] * l->weight_moment[k] +
		            m * (l->moment[k] - l->weight_moment[k]);
	first[0] = moment[1] + 600 * force[0];
	first[1] = 600 * force[1] - moment[0];
	put_down(a, weight * l->weight - m * (l->force[2] + l->weight), 100, -50);
	if (l->spin_to > l->spin_from) {
		a->turning += hypot(first[0], first[1]);
		a->horizontal += hypot(force[0], force[1]);
		a->twist += m * l->moment[2];
		return;
	}
	for (int k = 0; k < 2; k++) {
		a->fixed[k] += first[k];
		a->shear[k] += force[k];
	}
	a->shear[2] += m * l->moment[2] + 100 * force[1] + 50 * force[0];
}

static struct anew work_out(const struct load_case *c, bool without)
{
	struct anew a = {0};
	memcpy(a.k, by_hand[c->method][c->run], sizeof a.k);
	if (c->method == METHOD_ACI318 && c->run == RUN_FULL &&
	    (c->sustained || c->source == SOURCE_REST))
		a.k[0] = 1.4;
	if (c->earthquake && c->method != METHOD_RATING) {
		a.k[0] = c->earthquake->weight;
		a.k[1] = 1;
		a.k[2] = fmax(1, a.k[0]);
	}
	put_down(&a, a.k[0] * 200 * G0, 10, 20);
	put_down(&a, a.k[0] * (c->run == RUN_FULL ? 50 : 10) * G0, 300, 0);
	if (c->arm_load)
		put_own(&a, c);
	else
		put_sheet(&a, c, without);
	if (c->source == FIRST_EXTRA) {
		a.turning += a.k[1] * 250 * 1500;
		a.horizontal += a.k[1] * 250;
	} else if (c->source == FIRST_EXTRA + 1) {
		put_down(&a, a.k[1] * 40, 200, 100);
		a.fixed[0] += a.k[1] * 30 * 1000;
		a.shear[0] += a.k[1] * 30;
		a.shear[2] -= a.k[1] * 30 * 100;
	}
	if (c->earthquake) {
		const struct extra_action *action = &c->earthquake->action;
		a.down += action->down;
		a.turning += action->turning;
		a.horizontal += action->force.force;
		a.twist += action->force.twist;
		for (int k = 0; k < 2; k++)
			a.fixed[k] += action->fixed[k];
	}
	return a;
}

static void expect_case(const struct load_case *c, const struct anew *a)
{
	double horizontal = 0, twist = 0;
	for (int i = 0; i < c->turning_count; i++) {
		horizontal += c->turning_force[i].force;
		twist += c->turning_force[i].twist;
	}
	expect_near(c->weight_factor, a->k[0], 0);
	expect_near(c->down, a->down, SAME_FORCE);
	expect_near(c->turning, a->turning, SAME_MOMENT);
	expect_near(horizontal, a->horizontal, SAME_FORCE);
	expect_near(twist, a->twist, SAME_MOMENT);
	for (int k = 0; k < 2; k++) {
		expect_near(c->fixed[k], a->fixed[k], SAME_MOMENT);
		expect_near(c->fixed_shear[k], a->shear[k], SAME_FORCE);
	}
	expect_near(c->fixed_shear[2], a->shear[2], SAME_MOMENT);
	cr_expect_eq(c->stability_only, c->run == RUN_STABILITY);
	cr_expect(c->method == METHOD_RATING || !c->stability_only);
}

static void expect_all(const struct arm_loads *const arms[], const struct change *change,
                       size_t count, bool without)
{
	struct built b;
	size_t seen[METHODS] = {0};
	build(&b, arms, change, count);
	for (size_t i = 0; i < b.loads.count; i++) {
		const struct load_case *c = &b.loads.list[i];
		struct anew a = work_out(c, without);
		expect_case(c, &a);
		seen[c->method]++;
	}
	for (int m = 0; m < METHODS; m++)
		cr_expect_gt(seen[m], 15, "%zu cases of method %d", seen[m], m);
	unbuild(&b);
}

Test(factored_loads, every_case_worked_out_anew)
{
	static const struct change without[] = {
		{"arm.reactions.vertical_includes_weight", "no"},
		{"arm.reactions.tilting_includes_weight", "no"}};
	expect_all(NULL, NULL, 0, false);
	expect_all(NULL, without, 2, true);
	expect_all(NULL, &bonded, 1, false);
	expect_all(own_of_all, NULL, 0, false);
	expect_all(own_of_all, &bonded, 1, false);
	for (size_t k = 0; k < 2; k++) {
		expect_all(NULL, &quakes[k], 1, false);
		expect_all(own_of_all, &quakes[k], 1, false);
	}
}

/* A cell with all masses and forces multiplied by its factors has as service loads, full weights
 * and largest vertical force, what the code's loads are; all factors 1 leave the service loads. */
Test(factored_loads, a_cell_of_factored_quantities_has_them_as_service_loads)
{
	static const struct change grown[] = {
		{"cell.parts[1].mass", "240 kg"}, {"cell.parts[2].mass", "60 kg"},
		{"arm.weight.arm", "64 kg"}, {"arm.weight.payload", "16 kg"},
		{"arm.reactions.normal",
	         "{vertical: 1.76 kN, horizontal: 0.96 kN, tilting: 1.12 kN m, twisting: 0.64 kN m}"},
		{"arm.reactions.emergency_stop",
	         "{vertical: 2.56 kN, horizontal: 2.24 kN, tilting: 2.4 kN m, twisting: 1.44 kN m}"},
		{"loads[1].force", "400 N"}, {"loads[2].force", "[48 N, 0 N, -64 N]"}};
	struct built plain, other;
	build(&plain, NULL, NULL, 0);
	build(&other, NULL, grown, sizeof grown / sizeof grown[0]);
	static const int source[] = {SOURCE_EMERGENCY_STOP, SOURCE_NORMAL, FIRST_EXTRA,
	                             FIRST_EXTRA + 1};
	for (size_t i = 0; i < 4; i++) {
		const struct load_case *a = find(&plain.loads,
			(struct wanted){METHOD_ACI318, source[i], RUN_FULL, VERTICAL_MOST, false});
		const struct load_case *s = find(&other.loads,
			(struct wanted){METHOD_RATING, source[i], RUN_FULL, VERTICAL_MOST, false});
		expect_near(a->down, s->down, SAME_FORCE);
		expect_near(a->turning, s->turning, SAME_MOMENT);
		for (int k = 0; k < 2; k++)
			expect_near(a->fixed[k], s->fixed[k], SAME_MOMENT);
		for (int k = 0; k < 3; k++)
			expect_near(a->fixed_shear[k], s->fixed_shear[k], SAME_MOMENT);
		cr_assert_eq(a->turning_count, s->turning_count);
		for (int k = 0; k < a->turning_count; k++)
			expect_near(a->turning_force[k].force, s->turning_force[k].force,
			            SAME_FORCE);
	}
	unbuild(&plain);
	unbuild(&other);
}

/* --- service loads stay -------------------------------------------------------------------- */

/* Whatever codes are asked for: the same service cases, first and in the same groups. */
Test(factored_loads, service_loads_come_first_and_stay)
{
	static const struct change methods[] = {{"methods", "[rating]"}, {"methods", "[aci318]"},
	                                        {"methods", "[en1992_4]"}, bonded};
	struct built alone, other;
	build(&alone, own_of_all, &methods[0], 1);
	for (size_t i = 0; i < alone.loads.count; i++)
		cr_assert_eq(alone.loads.list[i].method, METHOD_RATING);
	for (size_t k = 1; k < 4; k++) {
		build(&other, own_of_all, &methods[k], 1);
		cr_assert_gt(other.loads.count, alone.loads.count);
		for (size_t i = 0; i < other.loads.count; i++) {
			const struct load_case *o = &other.loads.list[i];
			cr_assert_eq(o->method == METHOD_RATING, i < alone.loads.count);
			if (i >= alone.loads.count)
				continue;
			const struct load_case *a = &alone.loads.list[i];
			cr_expect_eq(a->group, o->group);
			cr_expect_eq(a->down, o->down);
			cr_expect_eq(a->turning, o->turning);
			cr_expect_arr_eq(a->fixed, o->fixed, sizeof a->fixed);
			cr_expect_str_eq(a->combination, o->combination);
		}
		unbuild(&other);
	}
	unbuild(&alone);
}

/* --- what always acts ----------------------------------------------------------------------- */

/* The arm at rest, W r = 294 199.5 N mm; ACI full 1.4 (1961.33 + 490.3325) = 3432.3275 N of parts
 * and 1.6 x 490.3325 = 784.532 N of the arm, in EN 1.35 and 1.5: 3309.744375 + 735.49875 N. */
Test(factored_loads, lasting_loads_by_hand)
{
	static const struct { enum method method; double down, turning; } row[] = {
		{METHOD_ACI318, 3432.3275 + 784.532, 1.6 * 294199.5},
		{METHOD_EN1992_4, 3309.744375 + 735.49875, 1.5 * 294199.5}};
	struct built b;
	build(&b, NULL, &bonded, 1);
	for (size_t i = 0; i < 2; i++) {
		const struct load_case *c = find(&b.loads, (struct wanted){row[i].method,
			SOURCE_REST, RUN_FULL, VERTICAL_MOST, true});
		expect_near(c->down, row[i].down, 1e-8);
		expect_near(c->turning, row[i].turning, 1e-6);
		cr_expect_eq(c->turning_count, 0);
		cr_expect_str_eq(c->name, "lasting loads");
	}
	/* the same without the name: 1.4D of a cell whose arm does not move */
	const struct load_case *dead = find(&b.loads, (struct wanted){METHOD_ACI318, SOURCE_REST,
		RUN_FULL, VERTICAL_MOST, false});
	expect_near(dead->down, row[0].down, 1e-8);
	cr_expect_str_eq(dead->name, "arm at rest");
	cr_expect_str_eq(dead->combination,
	                 "1.4D, arm at rest as 1.6L (ACI 318-19 5.3.1), largest vertical force");
	unbuild(&b);
}

static size_t lasting(const struct change *change, const struct arm_loads *const arms[],
                      enum method method)
{
	struct built b;
	size_t count = 0;
	build(&b, arms, change, 1);
	for (size_t i = 0; i < b.loads.count; i++) {
		const struct load_case *c = &b.loads.list[i];
		count += c->sustained && c->method == method;
		if (c->sustained) {
			cr_expect_neq(c->run, RUN_STABILITY);
			cr_expect_not(c->bound);
			cr_expect_eq(c->arm_case, ARM_REST);
			cr_expect_null(c->earthquake);
			expect_near(c->fixed_shear[0] + c->fixed_shear[1], 0, 0);
			cr_expect_eq(c->turning_count, 0);
		}
	}
	unbuild(&b);
	return count;
}

/* Two runs and two vertical extremes; of the chain the wrench at rest in two runs and two ways. */
Test(factored_loads, lasting_loads_are_for_bonded_and_unknown_anchors)
{
	static const struct change unknown = {"anchors.product.type", "unknown"},
				   wedge = {"anchors.product.type", "torque_controlled"},
				   one = {"methods", "[rating]"};
	cr_expect_eq(lasting(&bonded, NULL, METHOD_ACI318), 4);
	cr_expect_eq(lasting(&bonded, NULL, METHOD_EN1992_4), 4);
	cr_expect_eq(lasting(&bonded, own_of_all, METHOD_ACI318), 4);
	cr_expect_eq(lasting(&bonded, NULL, METHOD_RATING), 0);
	cr_expect_eq(lasting(&unknown, NULL, METHOD_EN1992_4), 4);
	cr_expect_eq(lasting(&wedge, NULL, METHOD_ACI318), 0);
	cr_expect_eq(lasting(&one, NULL, METHOD_ACI318), 0);
}

/* Stretched by its reach, a reach that is not known is missing; a chain at rest needs none. */
Test(factored_loads, lasting_loads_need_the_reach)
{
	static const struct change change[] = {{"arm.weight.reach", NULL},
	                                       {"anchors.product.type", "adhesive"},
	                                       {"loads", "none"}};
	for (size_t with = 1; with <= 3; with += 2) {
		struct built b;
		bool missing = false;
		const struct change wedge[] = {change[0], change[2]};
		build(&b, NULL, with == 1 ? wedge : change, with == 1 ? 2 : 3);
		for (size_t i = 0; i < b.loads.gap_count; i++)
			missing |= strcmp(b.loads.gaps[i].path, "arm.weight.reach.arm") == 0;
		cr_expect_eq(missing, with == 3);
		unbuild(&b);
	}
}

/* --- groups ---------------------------------------------------------------------------------- */

/* A group is of one setup, method and source, and its cases push alike; the groups of histories
 * follow, history by history, service loads first. */
Test(factored_loads, groups)
{
	static const struct change change[] = {{"setups", "[{name: a}, {name: b}]"}, bonded,
	                                       {"methods", "[en1992_4]"}};
	struct built b;
	build(&b, own_of_all, change, 2);
	for (size_t i = 0; i < b.loads.count; i++)
		for (size_t k = 0; k < i; k++) {
			const struct load_case *p = &b.loads.list[i], *q = &b.loads.list[k];
			bool same = p->setup == q->setup && p->source == q->source &&
			            p->method == q->method && p->bound == q->bound &&
			            p->sustained == q->sustained &&
			            p->by_data_sheet == q->by_data_sheet &&
			            p->stability_only == q->stability_only &&
			            strcmp(p->name, q->name) == 0;
			cr_assert_eq(p->group == q->group, same, "cases %zu and %zu", i, k);
		}
	size_t first = b.loads.first_history;
	for (size_t i = 0; i < b.loads.count; i++)
		cr_assert_lt(b.loads.list[i].group, first);
	/* two setups of two histories, three methods */
	cr_expect_eq(b.loads.group_count, first + 2 * 2 * 3);
	for (size_t h = 0; h < 4; h++)
		for (int m = 0; m < METHODS; m++)
			cr_expect_eq(loads_history_group(&b.loads, b.reading.cell, h,
			                                 (enum method)m),
			             first + 3 * h + (size_t)m);
	unbuild(&b);
	build(&b, own_of_all, &change[2], 1);
	cr_expect_eq(b.loads.group_count, b.loads.first_history + 2 * 2);
	cr_expect_eq(loads_history_group(&b.loads, b.reading.cell, 1, METHOD_EN1992_4),
	             b.loads.first_history + 3);
	unbuild(&b);
}

/* --- earthquake ------------------------------------------------------------------------------- */

static const struct earthquake_way *way_of(const struct loads *loads, enum method method,
                                           const char *title)
{
	const struct earthquake_way *found = NULL;
	for (size_t i = 0; i < loads->count; i++) {
		const struct load_case *c = &loads->list[i];
		if (c->method == method && c->earthquake &&
		    strncmp(c->earthquake->combination, title, strlen(title)) == 0)
			found = c->earthquake;
	}
	cr_assert(found, "no way %s", title);
	return found;
}

/* Masses 200 + 50 + 40 + 10 kg: 0.3 W = 882.5985 N, anchors twice that, vertical 0.2 W = 588.399
 * N (ASCE 7-16 13.3.1). At strength level the factors are 1, and no weight is taken off. */
Test(factored_loads, earthquake_at_strength_level)
{
	struct built b;
	build(&b, NULL, &quakes[0], 1);
	static const struct {
		const char *title;
		double weight, sign;
		bool moves;
	} row[] = {{"1.2D + Ev + Eh + L, ASCE 7 2.3.6", 1.2, 1, true},
	           {"0.9D - Ev + Eh, ASCE 7 2.3.6", 0.9, -1, false},
	           {"0.9D - Ev + Eh + L (added here", 0.9, -1, true}};
	for (size_t i = 0; i < 3; i++)
		for (int m = METHOD_ACI318; m < METHODS; m++) {
			const struct earthquake_way *way = way_of(&b.loads, (enum method)m,
			                                          row[i].title);
			expect_near(way->weight, row[i].weight, 0);
			expect_near(way->action.down, row[i].sign * 588.399, 1e-9);
			expect_near(way->action.force.force, 1765.197, 1e-9);
			cr_expect_eq(way->arm_moves, row[i].moves);
			cr_expect_eq(way->row->level, LEVEL_FACTORED);
			cr_expect_eq(strstr(way->combination, "earthquake's own code") != NULL,
			             m == METHOD_EN1992_4, "%s", way->combination);
		}
	way_of(&b.loads, METHOD_RATING, "D + 0.7Ev + 0.7Eh");
	unbuild(&b);
	build(&b, NULL, &quakes[1], 1);
	for (int m = METHOD_ACI318; m < METHODS; m++) {
		expect_near(way_of(&b.loads, (enum method)m, "G + Ed + psi2 Q")->weight, 1, 0);
		expect_near(way_of(&b.loads, (enum method)m, "G - Ev + Eh + psi2 Q")->weight, 1, 0);
	}
	unbuild(&b);
}

/* A weight that the user vouches for has no part in the loads of a code. */
Test(factored_loads, the_stabilising_weight_is_of_service_loads_alone)
{
	static const struct change weighed[] = {{"choices.stabilising_weight", "0.9"},
	                                        {"choices.masses_weighed", "yes"},
	                                        {"earthquake", "{code: asce7_16, height_share: 0, "
	                                         "sds: 1, amplification: 1, response: 2.5, "
	                                         "importance: 1, overstrength: 2}"}};
	struct built plain, other;
	build(&plain, NULL, &quakes[0], 1);
	build(&other, NULL, weighed, 3);
	cr_assert_eq(plain.loads.count, other.loads.count);
	for (size_t i = 0; i < plain.loads.count; i++)
		if (plain.loads.list[i].method != METHOD_RATING)
			cr_expect_eq(plain.loads.list[i].down, other.loads.list[i].down);
	unbuild(&plain);
	unbuild(&other);
}

/* --- written calculation -------------------------------------------------------------------- */

static void expect_written(const struct cell *cell, struct arena *arena, const struct load_case *c)
{
	struct trace trace, sideways;
	double heading = 0.5 * (c->spin_from + c->spin_to), load[3];
	load_at(c, heading, load);
	trace_open(&trace, arena);
	loads_trace(cell, c, heading, &trace);
	traced_expressions(&trace, c->combination);
	cr_expect_eq(traced_value(&trace, "N"), c->down);
	cr_expect_eq(traced_value(&trace, "S_x_fixed"), c->fixed[0]);
	cr_expect_eq(traced_value(&trace, "S_y_fixed"), c->fixed[1]);
	cr_expect_eq(traced_value(&trace, "S_turn"), c->turning);
	cr_expect_eq(traced_value(&trace, "S_x"), load[1]);
	cr_expect_eq(traced_value(&trace, "S_y"), load[2]);
	cr_expect_eq(traced_value(&trace, "k_weight"), c->weight_factor);
	trace_open(&sideways, arena);
	loads_trace_horizontal(cell, c, &sideways);
	traced_expressions(&sideways, c->combination);
	if (c->arm_case != ARM_REST && !c->arm_load)
		cr_expect_eq(traced_value(&sideways, "H"), c->turning_force[0].force);
	if (c->arm_load && c->arm_load->spin_to > c->arm_load->spin_from &&
	    c->arm_case != ARM_REST)
		cr_expect_eq(traced_value(&sideways, "T"), c->turning_force[0].twist);
	bool own = false;
	for (size_t i = 0; i < trace.count; i++)
		own |= strcmp(trace.steps[i].symbol, "k_own") == 0 && *trace.steps[i].source;
	cr_expect_eq(own, c->method != METHOD_RATING);
	loads_trace(cell, c, heading, NULL);
}

static void expect_all_written(const struct arm_loads *const arms[], const struct change *change,
                               size_t count)
{
	struct built b;
	build(&b, arms, change, count);
	for (size_t i = 0; i < b.loads.count; i++)
		expect_written(setup_cell(b.reading.cell, b.loads.list[i].setup), &b.reading.arena,
		               &b.loads.list[i]);
	unbuild(&b);
}

Test(factored_loads, written_calculation)
{
	static const struct change without[] = {
		{"arm.reactions.vertical_includes_weight", "no"},
		{"arm.reactions.tilting_includes_weight", "no"},
		{"cell.parts[1]", "{mass: 200 kg, box: {from: [-100 mm, -50 mm, 0 mm], "
	                          "to: [300 mm, 50 mm, 800 mm]}}"}};
	expect_all_written(own_of_all, &bonded, 1);
	expect_all_written(own_of_all, without, 3);
	expect_all_written(own_of_all, &quakes[0], 1);
	expect_all_written(NULL, &quakes[1], 1);
}
