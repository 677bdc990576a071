/* en1992_4: one mode of EN 1992-4 for the anchors given. Every step of the written calculation is
 * an output by its symbol, so that intermediate results can be expected too. What is not stated is
 * as en_case_open has it: a torque-controlled anchor, cracked concrete, no edge. */
#include "kinds.h"

#include "../support/en_case.h"

#include <criterion/criterion.h>
#include <string.h>

static struct en_case it;

struct number_input { const char *key; enum dimension dimension; struct number *to; };

static void read_numbers(struct test_case *test)
{
	struct product *product = &it.cell.anchors.product;
	struct anchor_strength *strength = &product->strength;
	struct en1992_4_sheet *sheet = &strength->en;
	const struct number_input input[] = {
		{"embedment", DIM_LENGTH, &product->embedment}, {"shaft", DIM_LENGTH, &product->shaft},
		{"tensile_area", DIM_AREA, &product->tensile_area},
		{"least_slab", DIM_LENGTH, &product->least_slab},
		{"yield", DIM_STRESS, &strength->yield}, {"ultimate", DIM_STRESS, &strength->ultimate},
		{"head_area", DIM_AREA, &strength->head_area},
		{"elongation", DIM_SHARE, &strength->elongation},
		{"at_concrete", DIM_STRESS, &strength->at_concrete},
		{"thickness", DIM_LENGTH, &it.cell.slab.thickness},
		{"bar_spacing", DIM_LENGTH, &it.cell.slab.reinforcement.bar_spacing},
		{"installation_factor", DIM_FACTOR, &sheet->installation_factor},
		{"pullout", DIM_FORCE, &sheet->pullout.cracked},
		{"pullout_uncracked", DIM_FORCE, &sheet->pullout.uncracked},
		{"bond", DIM_STRESS, &sheet->bond.cracked},
		{"bond_uncracked", DIM_STRESS, &sheet->bond.uncracked},
		{"splitting_edge", DIM_LENGTH, &sheet->splitting_edge},
		{"pryout_factor", DIM_FACTOR, &sheet->pryout_factor}};
	for (size_t i = 0; i < sizeof input / sizeof *input; i++)
		if (case_has(test, input[i].key))
			en_case_number(input[i].to,
			               case_number(test, input[i].key, input[i].dimension));
	it.fck = case_number_or(test, "concrete", DIM_STRESS, it.fck);
	if (case_has(test, "lever")) {
		it.lever_arm = LEVER_ARM;
		it.lever = case_number(test, "lever", DIM_LENGTH);
	}
}

static void read_words(struct test_case *test)
{
	static const char *const types[] = {
		[CAST_IN_HEADED] = "cast_in_headed", [TORQUE_CONTROLLED] = "torque_controlled",
		[UNDERCUT] = "undercut", [SCREW] = "screw", [ADHESIVE] = "adhesive"};
	if (case_has(test, "cracked"))
		en_case_word(&it.cell.slab.concrete.cracked,
		             !strcmp(case_word(test, "cracked"), "yes") ? YES : NO);
	if (!case_has(test, "type"))
		return;
	const char *type = case_word(test, "type");
	for (size_t i = 0; i < sizeof types / sizeof *types; i++)
		if (types[i] && !strcmp(types[i], type)) {
			en_case_word(&it.cell.anchors.product.type, (int)i);
			return;
		}
	case_fail(test, test->line, "\"%s\" is no type here", type);
}

static void read_places(struct test_case *test)
{
	struct vec2 ring[EN_CASE_EDGES];
	if (case_has(test, "anchors"))
		it.cell.anchors.count = case_points(test, "anchors", DIM_LENGTH,
		                                    it.cell.anchors.at, MAX_ANCHORS);
	if (case_has(test, "outline"))
		en_case_outline(&it, ring,
		                case_points(test, "outline", DIM_LENGTH, ring, EN_CASE_EDGES));
}

typedef void group_function(const struct code_facts *, const struct pattern *, uint64_t, bool,
                            struct group_strength *, struct trace *);

/* the front row of the edge y = 0 */
static double edge_strength(const struct test_case *test, bool earthquake, struct trace *trace)
{
	struct edge_view *view;
	size_t count;
	struct edge_strength out;
	cr_assert(edge_views(&it.pattern, &it.arena, &view, &count));
	for (size_t i = 0; i < count; i++) {
		if (!(view[i].toward.y < -0.999))
			continue;
		en_edge(&it.facts, &it.pattern, &view[i], view[i].row[0], view[i].row_distance[0],
		        earthquake, &out, trace);
		return earthquake ? out.across_seismic : out.across;
	}
	case_fail(test, test->line, "no edge below the anchors");
	return 0;
}

static double strength_of(struct test_case *test, const char *mode, bool earthquake,
                          struct trace *trace)
{
	static const struct { const char *name; group_function *run; } groups[] = {
		{"cone", en_cone}, {"bond", en_bond}, {"splitting", en_splitting},
		{"pryout", en_pryout}};
	uint64_t all = en_case_all(&it);
	size_t n = it.cell.anchors.count;
	struct group_strength out;
	for (size_t i = 0; i < sizeof groups / sizeof *groups; i++)
		if (!strcmp(groups[i].name, mode)) {
			groups[i].run(&it.facts, &it.pattern, all, earthquake, &out, trace);
			return earthquake ? out.seismic : out.design;
		}
	if (!strcmp(mode, "steel_tension"))
		return en_steel_tension(&it.facts, earthquake, trace);
	if (!strcmp(mode, "pullout"))
		return en_pullout(&it.facts, earthquake, n, trace);
	if (!strcmp(mode, "steel_shear"))
		return en_steel_shear(&it.facts, case_number_or(test, "tension", DIM_FORCE, 0),
		                      earthquake, n, trace);
	if (!strcmp(mode, "edge"))
		return edge_strength(test, earthquake, trace);
	if (strcmp(mode, "blowout"))
		case_fail(test, test->line, "\"%s\" is no mode", mode);
	en_blowout(&it.facts, &it.pattern, all, 1, earthquake, &out, trace);
	return earthquake ? out.seismic : out.design;
}

void kind_en1992_4(struct test_case *test, struct outputs *out)
{
	struct arena arena;
	struct trace trace;
	arena_open(&arena, NULL, NULL);
	trace_open(&trace, &arena);
	en_case_open(&it);
	read_numbers(test);
	read_words(test);
	read_places(test);
	en_case_settle(&it);
	it.facts.sustained_tension = case_has(test, "sustained") &&
	                             !strcmp(case_word(test, "sustained"), "yes");
	bool earthquake = case_has(test, "earthquake") &&
	                  !strcmp(case_word(test, "earthquake"), "yes");
	double strength = strength_of(test, case_word(test, "mode"), earthquake, &trace);
	output_number(out, DIM_FORCE, strength, "strength");
	for (size_t i = 0; i < trace.count; i++)
		output_number(out, trace.steps[i].dimension, trace.steps[i].value, "%s",
		              trace.steps[i].symbol);
	en_case_close(&it);
	arena_close(&arena);
}

/* Loads as ratios of the design strengths. */
void kind_en1992_4_together(struct test_case *test, struct outputs *out)
{
	double tension = case_number(test, "tension_ratio", DIM_FACTOR),
	       shear = case_number(test, "shear_ratio", DIM_FACTOR);
	output_number(out, DIM_FACTOR, en_interaction_steel(tension, shear, false), "steel");
	output_number(out, DIM_FACTOR, en_interaction_concrete(tension, shear, false), "concrete");
	output_number(out, DIM_FACTOR, en_interaction_concrete(tension, shear, true),
	              "earthquake");
}
