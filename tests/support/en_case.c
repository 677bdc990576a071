/* A cell for EN 1992-4 by plain numbers. */
#include "en_case.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

void en_case_number(struct number *number, double value)
{
	*number = (struct number){{{0}, GIVEN}, value, NULL};
}

void en_case_word(struct word *word, int value)
{
	*word = (struct word){{{0}, GIVEN}, value};
}

static void fill_sheet(struct en1992_4_sheet *sheet)
{
	en_case_number(&sheet->installation_factor, 1);
	en_case_number(&sheet->pullout.cracked, 16e3);
	en_case_number(&sheet->pullout.uncracked, 25e3);
	en_case_number(&sheet->pullout.seismic, 12e3);
	en_case_number(&sheet->bond.cracked, 6);
	en_case_number(&sheet->bond.uncracked, 12);
	en_case_number(&sheet->bond.seismic, 4);
	en_case_number(&sheet->splitting_edge, 140);
	en_case_word(&sheet->seismic, SEISMIC_C1);
	en_case_number(&sheet->steel_tension_seismic, 60e3);
	en_case_number(&sheet->steel_shear_seismic, 20e3);
}

void en_case_open(struct en_case *it)
{
	memset(it, 0, sizeof *it);
	struct product *product = &it->cell.anchors.product;
	it->clear = HUGE_VAL;
	it->fck = 20;
	en_case_word(&product->type, TORQUE_CONTROLLED);
	en_case_number(&product->shaft, 12);
	en_case_number(&product->embedment, 70);
	en_case_number(&product->tensile_area, 84.3);
	en_case_number(&product->least_slab, 140);
	en_case_number(&product->strength.yield, 640);
	en_case_number(&product->strength.ultimate, 800);
	en_case_number(&product->strength.head_area, 600);
	en_case_number(&product->strength.at_concrete, 20);
	en_case_number(&it->cell.slab.thickness, 200);
	en_case_word(&it->cell.slab.concrete.cracked, YES);
	it->cell.anchors.count = 1;
	fill_sheet(&product->strength.en);
}

void en_case_close(struct en_case *it) { arena_close(&it->arena); }

void en_case_outline(struct en_case *it, const struct vec2 *ring, size_t count)
{
	cr_assert_leq(count, (size_t)EN_CASE_EDGES);
	for (size_t i = 0; i < count; i++)
		it->edge[i] = (struct segment){ring[i], ring[(i + 1) % count]};
	it->edge_count = count;
	it->clear = 0;
}

static double shear_area(const struct product *product)
{
	const struct number *given = &product->strength.shear_area;
	return is_known(*given) ? given->value : product->tensile_area.value;
}

void en_case_settle(struct en_case *it)
{
	const struct cell *cell = &it->cell;
	const struct product *product = &cell->anchors.product;
	const struct anchor_strength *given = &product->strength;
	enum anchor_type type = (enum anchor_type)product->type.value;
	it->facts = (struct code_facts){
		.code = EN1992_4, .cell = cell, .given = given, .type_known = is_known(product->type),
		.type = type, .cast_in = type == CAST_IN_HEADED || type == CAST_IN_HOOKED,
		.cracked = cell->slab.concrete.cracked.value != NO, .concrete = it->fck,
		.lambda = 1, .thickness = cell->slab.thickness.value,
		.embedment = product->embedment.value, .shaft = product->shaft.value,
		.tensile_area = product->tensile_area.value, .shear_area = shear_area(product),
		.yield = given->yield.value, .ultimate = given->ultimate.value,
		.head_area = given->head_area.value, .lever_arm = it->lever_arm,
		.lever = it->lever, .grout = cell->stand_off.height.value};
	arena_close(&it->arena);
	arena_open(&it->arena, NULL, NULL);
	cr_assert(pattern_build(cell->anchors.at, cell->anchors.count, 0, it->edge,
	                        it->edge_count, it->clear, &it->arena, &it->pattern));
}

uint64_t en_case_all(const struct en_case *it)
{
	size_t count = it->cell.anchors.count;
	return count == 64 ? ~UINT64_C(0) : (UINT64_C(1) << count) - 1;
}
