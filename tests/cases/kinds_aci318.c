/* aci318: one mode of ACI 318-19 for one group of anchors. Every step of the written calculation is
 * an output by its symbol, so that intermediate results can be compared too. aci318_together: the
 * interaction of two ratios. */
#include "kinds.h"

#include "../support/aci_case.h"

#include <criterion/criterion.h>
#include <string.h>

static struct aci_case it;

static int find_word(struct test_case *test, const char *key, const char *const words[], int count)
{
	const char *word = case_word(test, key);
	for (int i = 0; i < count; i++)
		if (strcmp(words[i], word) == 0)
			return i;
	case_fail(test, test->line, "%s: \"%s\" is not known", key, word);
	return 0;
}

static bool says_yes(struct test_case *test, const char *key)
{
	return case_has(test, key) && strcmp(case_word(test, key), "yes") == 0;
}

/* a number of the cell by its key in the case; left out, it stays unknown */
struct entry { const char *key; enum dimension dimension; struct number *number; };

static void read_numbers(struct test_case *test)
{
	struct product *product = &it.cell.anchors.product;
	struct anchor_strength *s = &product->strength;
	const struct entry entries[] = {
		{"h_ef", DIM_LENGTH, &product->embedment}, {"d_a", DIM_LENGTH, &product->shaft},
		{"A_se", DIM_AREA, &product->tensile_area}, {"A_se_V", DIM_AREA, &s->shear_area},
		{"f_ya", DIM_STRESS, &s->yield}, {"f_uta", DIM_STRESS, &s->ultimate},
		{"A_brg", DIM_AREA, &s->head_area}, {"d_h", DIM_LENGTH, &s->head_diameter},
		{"e_h", DIM_LENGTH, &s->hook_length}, {"category", DIM_COUNT, &s->aci.category},
		{"N_sa", DIM_FORCE, &s->aci.steel_tension}, {"V_sa", DIM_FORCE, &s->aci.steel_shear},
		{"V_sa_eq", DIM_FORCE, &s->aci.steel_shear_seismic},
		{"kc_cracked", DIM_FACTOR, &s->aci.kc_cracked},
		{"kc_uncracked", DIM_FACTOR, &s->aci.kc_uncracked},
		{"N_p_cr", DIM_FORCE, &s->aci.pullout.cracked},
		{"N_p_uncr", DIM_FORCE, &s->aci.pullout.uncracked},
		{"N_p_eq", DIM_FORCE, &s->aci.pullout.seismic},
		{"tau_cr", DIM_STRESS, &s->aci.bond.cracked},
		{"tau_uncr", DIM_STRESS, &s->aci.bond.uncracked},
		{"alpha_N_seis", DIM_FACTOR, &s->aci.bond.seismic},
		{"c_ac", DIM_LENGTH, &s->aci.splitting_edge},
		{"k_cp", DIM_FACTOR, &s->aci.pryout_factor},
		{"l_e", DIM_LENGTH, &s->aci.shear_length},
		{"h_a", DIM_LENGTH, &it.cell.slab.thickness},
		{"lightweight", DIM_FACTOR, &it.cell.slab.concrete.lightweight},
		{"gap", DIM_LENGTH, &it.cell.stand_off.height},
		{"plate_thickness", DIM_LENGTH, &it.cell.anchors.plate_thickness},
		{"grout", DIM_STRESS, &it.cell.stand_off.grout_strength},
		{"group_spacing", DIM_LENGTH, &it.cell.choices.group_spacing}};
	for (size_t i = 0; i < sizeof entries / sizeof *entries; i++)
		if (case_has(test, entries[i].key))
			aci_number(entries[i].number,
			           case_number(test, entries[i].key, entries[i].dimension));
	it.concrete = case_number_or(test, "f_c", DIM_STRESS, 0);
}

static void read_words(struct test_case *test)
{
	static const char *const types[] = {"headed", "hooked", "torque_controlled",
	                                    "displacement_controlled", "undercut", "screw",
	                                    "adhesive"};
	static const char *const bars[] = {"none", "bars", "stirrups"};
	struct slab *slab = &it.cell.slab;
	aci_word(&it.cell.anchors.product.type, find_word(test, "type", types, 7));
	aci_word(&it.cell.anchors.product.qualified_cracked, YES);
	if (case_has(test, "ductile"))
		aci_word(&it.cell.anchors.product.strength.ductile, says_yes(test, "ductile"));
	if (says_yes(test, "uncracked")) {
		aci_word(&slab->concrete.cracked, NO);
		aci_text(&slab->concrete.uncracked_reason, "test");
	}
	aci_word(&slab->reinforcement.supplementary, says_yes(test, "supplementary"));
	aci_word(&slab->reinforcement.against_splitting, says_yes(test, "against_splitting"));
	aci_word(&slab->reinforcement.edge,
	         case_has(test, "edge_bars") ? find_word(test, "edge_bars", bars, 3) : 0);
	if (it.cell.stand_off.height.value > 0)
		aci_word(&it.cell.stand_off.filled, says_yes(test, "filled"));
}

static void read_places(struct test_case *test)
{
	struct vec2 corner[ACI_CASE_EDGES];
	it.count = 1;
	if (case_has(test, "anchors"))
		it.count = case_points(test, "anchors", DIM_LENGTH, it.at, MAX_ANCHORS);
	if (case_has(test, "outline"))
		aci_case_outline(&it, corner,
		                 case_points(test, "outline", DIM_LENGTH, corner, ACI_CASE_EDGES));
	else if (case_has(test, "clear"))
		it.clear = case_number(test, "clear", DIM_LENGTH);
}

/* The front row of the edge that the case looks at; of no outline the unseen edge. */
static void run_edge(struct test_case *test, bool earthquake, struct trace *trace)
{
	struct vec2 toward[1] = {{0, 0}};
	struct edge_strength out;
	if (!case_has(test, "toward")) {
		aci_edge(&it.facts, &it.pattern, NULL, 1, it.clear, earthquake, &out, trace);
		return;
	}
	cr_assert_eq(case_points(test, "toward", DIM_LENGTH, toward, 1), 1);
	const struct edge_view *view = aci_case_view(&it, toward[0].x, toward[0].y);
	size_t row = (size_t)case_number_or(test, "row", DIM_COUNT, 1) - 1;
	cr_assert_lt(row, view->row_count);
	aci_edge(&it.facts, &it.pattern, view, view->row[row], view->row_distance[row], earthquake,
	         &out, trace);
}

/* number of the edge nearest to the first anchor */
static unsigned nearest_edge(void)
{
	size_t best = 0;
	for (size_t e = 1; e < it.pattern.edge_count; e++)
		if (it.pattern.distance[e] < it.pattern.distance[best])
			best = e;
	return (unsigned)best + 1;
}

static void run_mode(struct test_case *test, enum code_mode mode, bool earthquake,
                     struct trace *trace)
{
	struct group_strength out;
	uint64_t all = aci_case_all(&it);
	double tension = case_number_or(test, "tension", DIM_FORCE, 0);
	if (mode == STEEL_TENSION)
		aci_steel_tension(&it.facts, earthquake, trace);
	else if (mode == PULLOUT)
		aci_pullout(&it.facts, earthquake, trace);
	else if (mode == STEEL_SHEAR)
		aci_steel_shear(&it.facts, tension, earthquake, trace);
	else if (mode == BOND_SUSTAINED)
		aci_bond_sustained(&it.facts, trace);
	else if (mode == CONE)
		aci_cone(&it.facts, &it.pattern, all, earthquake, &out, trace);
	else if (mode == BOND)
		aci_bond(&it.facts, &it.pattern, all, earthquake, &out, trace);
	else if (mode == PRYOUT)
		aci_pryout(&it.facts, &it.pattern, all, earthquake, &out, trace);
	else if (mode == BLOWOUT)
		aci_blowout(&it.facts, &it.pattern, all, nearest_edge(), earthquake, &out, trace);
	else
		run_edge(test, earthquake, trace);
}

void kind_aci318(struct test_case *test, struct outputs *out)
{
	static const char *const modes[] = {"steel_tension", "cone", "pullout", "blowout", "bond",
	                                    "splitting", "bond_sustained", "steel_shear", "edge",
	                                    "pryout"};
	struct trace trace;
	const char *path[1] = {""};
	enum code_mode mode = (enum code_mode)find_word(test, "mode", modes, CODE_MODES);
	bool earthquake = says_yes(test, "earthquake");
	aci_case_open(&it);
	read_numbers(test);
	read_words(test);
	read_places(test);
	aci_word(&it.cell.anchors.product.strength.aci.seismic, YES);
	/* what tests are stated for is judged elsewhere */
	aci_number(&it.cell.anchors.product.strength.at_concrete, 20);
	aci_word(&it.cell.anchors.product.strength.sleeve_in_shear_plane, NO);
	aci_case_build(&it);
	cr_assert_eq(code_missing(&it.facts, mode, earthquake, path, 1), 0, "%s: %s", test->title,
	             path[0]);
	trace_open(&trace, &it.arena);
	run_mode(test, mode, earthquake, &trace);
	for (size_t i = 0; i < trace.count; i++)
		output_number(out, trace.steps[i].dimension, trace.steps[i].value, "%s",
		              trace.steps[i].symbol);
}

void kind_aci318_together(struct test_case *test, struct outputs *out)
{
	static const char *const forms[] = {"straight", "five_thirds"};
	int form = find_word(test, "form", forms, 2);
	output_number(out, DIM_FACTOR,
	              aci_interaction((enum code_interaction)form,
	                              case_number(test, "tension", DIM_FACTOR),
	                              case_number(test, "shear", DIM_FACTOR)),
	              "ratio");
}
