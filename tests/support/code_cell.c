#include "code_cell.h"

#include <criterion/criterion.h>
#include <math.h>

#define FAR_SIDE 2e5             /* length of a side that meets no other [mm] */

static struct number number(double value)
{
	return (struct number){{{0, 0, 0, 0}, GIVEN}, value, NULL};
}

static struct word word(int value)
{
	return (struct word){{{0, 0, 0, 0}, GIVEN}, value};
}

static void fill_aci(struct aci318_sheet *out)
{
	out->category = number(1);
	out->kc_cracked = number(7);
	out->kc_uncracked = number(10);
	out->pullout = (struct by_state){number(16e3), number(20e3), number(14e3)};
	out->bond = (struct by_state){number(6), number(12), number(0.9)};
	out->splitting_edge = number(180);
	out->pryout_factor = number(2);
	out->shear_length = number(90);
	out->seismic = word(YES);
	out->steel_shear_seismic = number(18e3);
	out->interaction = word(CODE_STRAIGHT);
}

static void fill_en(struct en1992_4_sheet *out)
{
	out->installation_factor = number(1.2);
	out->k_cracked = number(7.7);
	out->k_uncracked = number(11);
	out->pullout = (struct by_state){number(16e3), number(20e3), number(14e3)};
	out->bond = (struct by_state){number(6), number(12), number(5)};
	out->sustained_factor = number(0.7);
	out->splitting_edge = number(180);
	out->splitting = number(25e3);
	out->pryout_factor = number(2);
	out->group_factor = number(1);
	out->shear_length = number(90);
	out->seismic = word(SEISMIC_C1);
	out->steel_tension_seismic = number(40e3);
	out->steel_shear_seismic = number(18e3);
	out->gap_factor = number(0.5);
}

void code_cell_fill(struct base_case *it, enum anchor_type type)
{
	struct cell *cell = &it->cell;
	struct product *product = &cell->anchors.product;
	struct anchor_strength *strength = &product->strength;
	product->type = word((int)type);
	product->shaft = number(12);
	product->tensile_area = number(84.3);
	product->embedment = number(90);
	product->least_slab = number(150);
	product->hole_diameter = number(14);
	product->qualified_cracked = word(YES);
	strength->yield = number(640);
	strength->ultimate = number(800);
	strength->ductile = word(YES);
	strength->elongation = number(0.12);
	strength->shear_area = number(84.3);
	strength->sleeve_in_shear_plane = word(NO);
	strength->head_diameter = number(24);
	strength->head_thickness = number(8);
	strength->head_area = number(339);
	strength->hook_length = number(40);
	strength->at_concrete = number(20);
	strength->clamped = word(NO);
	strength->held_at_base = word(NO);
	fill_aci(&strength->aci);
	fill_en(&strength->en);
	cell->anchors.plate_hole = number(14);
	cell->anchors.plate_thickness = number(15);
	cell->stand_off.height = number(0);
	cell->slab.topping = number(0);
	cell->slab.thickness = number(200);
	cell->slab.concrete.cracked = word(YES);
	cell->slab.concrete.lightweight = number(1);
	cell->slab.reinforcement.supplementary = word(NO);
	cell->slab.reinforcement.edge = word(EDGE_BARS_NONE);
	cell->slab.reinforcement.against_splitting = word(NO);
}

static struct vec2 moved_point(double x, double y, double turned, struct vec2 by)
{
	double c = cos(turned), s = sin(turned);
	return (struct vec2){by.x + c * x - s * y, by.y + s * x + c * y};
}

static void build(struct code_place *place, const struct base_case *it, double turned,
                  struct vec2 moved, double clear, struct arena *arena)
{
	struct vec2 at[MAX_ANCHORS];
	const struct anchors *anchors = &it->cell.anchors;
	for (size_t i = 0; i < anchors->count; i++)
		at[i] = moved_point(anchors->at[i].x, anchors->at[i].y, turned, moved);
	cr_assert(pattern_build(at, anchors->count, turned, place->edge, place->edge_count, clear,
	                        arena, &place->pattern));
}

void code_place_open(struct code_place *place, const struct base_case *it, const double side[4],
                     double turned, struct vec2 moved, struct arena *arena)
{
	double low_x = fmin(side[0], FAR_SIDE), high_x = fmin(side[1], FAR_SIDE);
	double low_y = fmin(side[2], FAR_SIDE), high_y = fmin(side[3], FAR_SIDE);
	/* anticlockwise, the slab on the left of each */
	const struct { bool there; double from[2], to[2]; } all[4] = {
		{side[2] < HUGE_VAL, {-low_x, -low_y}, {high_x, -low_y}},
		{side[1] < HUGE_VAL, {high_x, -low_y}, {high_x, high_y}},
		{side[3] < HUGE_VAL, {high_x, high_y}, {-low_x, high_y}},
		{side[0] < HUGE_VAL, {-low_x, high_y}, {-low_x, -low_y}}};
	place->edge_count = 0;
	for (int e = 0; e < 4; e++)
		if (all[e].there)
			place->edge[place->edge_count++] = (struct segment){
				moved_point(all[e].from[0], all[e].from[1], turned, moved),
				moved_point(all[e].to[0], all[e].to[1], turned, moved)};
	build(place, it, turned, moved, place->edge_count ? 0 : HUGE_VAL, arena);
}

void code_place_clear(struct code_place *place, const struct base_case *it, double clear,
                      struct arena *arena)
{
	place->edge_count = 0;
	build(place, it, 0, (struct vec2){0, 0}, clear, arena);
}
