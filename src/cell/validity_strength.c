/* Code design values of an anchor that contradict one another or the anchor's type. What a mode
 * lacks is no error: its check is then unproven. */
#include "validity_parts.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

/* Round heads agree with their area but for rounding and chamfers; own choice [-]. */
#define AREA_TOLERANCE 0.10
#define PI 3.14159265358979324
#define STRENGTH "anchors.product.strength."

/* "pullout.cracked": a path without the block and the code, which the line in the file shows. */
static const char *item_name(const char *path)
{
	const char *name = path + strlen(STRENGTH);
	static const char *const codes[] = {"aci318.", "en1992_4."};
	for (size_t i = 0; i < sizeof codes / sizeof *codes; i++)
		if (strncmp(name, codes[i], strlen(codes[i])) == 0)
			return name + strlen(codes[i]);
	return name;
}

/* --- items of one type alone --- */

static bool is_headed(enum anchor_type type)
{
	return type == CAST_IN_HEADED;
}

static bool is_hooked(enum anchor_type type)
{
	return type == CAST_IN_HOOKED;
}

static bool is_adhesive(enum anchor_type type)
{
	return type == ADHESIVE;
}

static bool is_post_installed(enum anchor_type type)
{
	return type != CAST_IN_HEADED && type != CAST_IN_HOOKED;
}

/* An item of the sheet that only some types have. */
struct item {
	const char *path;
	const struct number *value;
	bool (*fits)(enum anchor_type type);
	const char *of, *type;   /* "a headed anchor", and what to write for one */
};

static void check_item(struct validity *validity, const struct item *item, enum anchor_type type)
{
	char hint[DIAGNOSTIC_HINT];
	if (!is_known(*item->value) || item->fits(type))
		return;
	snprintf(hint, sizeof hint, "leave it out (in a setup: unknown), or write %s",
	         item->type);
	validity_fault(validity, FAULT_CONTRADICTION, item->value->given.mark, item->path, hint,
	               "%s is an item of %s alone", item_name(item->path), item->of);
}

static void check_items(struct validity *validity, const struct item *items, size_t count)
{
	const struct word *type = &validity->cell->anchors.product.type;
	for (size_t i = 0; is_known(*type) && i < count; i++)
		check_item(validity, &items[i], (enum anchor_type)type->value);
}

#define HEADED is_headed, "a headed anchor", "type: cast_in_headed"
#define HOOKED is_hooked, "a hooked anchor", "type: cast_in_hooked"
#define BONDED is_adhesive, "an adhesive anchor", "type: adhesive"
#define DRILLED \
	is_post_installed, "a post-installed anchor", "the type of the post-installed anchor"

static void check_types(struct validity *validity)
{
	const struct anchor_strength *s = &validity->cell->anchors.product.strength;
	const struct item items[] = {
		{STRENGTH "head_diameter", &s->head_diameter, HEADED},
		{STRENGTH "head_thickness", &s->head_thickness, HEADED},
		{STRENGTH "head_area", &s->head_area, HEADED},
		{STRENGTH "hook_length", &s->hook_length, HOOKED},
		{STRENGTH "aci318.bond.cracked", &s->aci.bond.cracked, BONDED},
		{STRENGTH "aci318.bond.uncracked", &s->aci.bond.uncracked, BONDED},
		{STRENGTH "aci318.bond.seismic", &s->aci.bond.seismic, BONDED},
		{STRENGTH "en1992_4.bond.cracked", &s->en.bond.cracked, BONDED},
		{STRENGTH "en1992_4.bond.uncracked", &s->en.bond.uncracked, BONDED},
		{STRENGTH "en1992_4.bond.seismic", &s->en.bond.seismic, BONDED},
		{STRENGTH "en1992_4.sustained_factor", &s->en.sustained_factor, BONDED},
		{STRENGTH "aci318.category", &s->aci.category, DRILLED},
		{STRENGTH "en1992_4.installation_factor", &s->en.installation_factor, DRILLED}};
	check_items(validity, items, sizeof items / sizeof *items);
}

/* --- one value against another --- */

/* The lower of two values and what it cannot exceed, in the terms of the sheet. */
struct order {
	const char *path, *higher_key;
	const struct number *lower, *higher;
	enum dimension dimension;
};

static void check_order(struct validity *validity, const struct order *order)
{
	char hint[DIAGNOSTIC_HINT];
	const char *name = item_name(order->path);
	if (!is_known(*order->lower) || !is_known(*order->higher) ||
	    order->lower->value <= order->higher->value)
		return;
	snprintf(hint, sizeof hint,
	         "look at the sheet again: are %s and %s exchanged, or of two sizes?", name,
	         order->higher_key);
	validity_fault(validity, FAULT_CONTRADICTION, order->lower->given.mark, order->path, hint,
	               "%s, %s, is above %s, %s", name,
	               validity_show_number(validity, order->lower, order->dimension).text,
	               order->higher_key,
	               validity_show_number(validity, order->higher, order->dimension).text);
}

/* Steel yields before it breaks, and a crack never makes concrete hold better. */
static void check_orders(struct validity *validity)
{
	const struct anchor_strength *s = &validity->cell->anchors.product.strength;
	const struct aci318_sheet *aci = &s->aci;
	const struct en1992_4_sheet *en = &s->en;
	const struct order orders[] = {
		{STRENGTH "yield", "ultimate", &s->yield, &s->ultimate, DIM_STRESS},
		{STRENGTH "aci318.kc_cracked", "kc_uncracked", &aci->kc_cracked, &aci->kc_uncracked,
	         DIM_FACTOR},
		{STRENGTH "aci318.pullout.cracked", "uncracked", &aci->pullout.cracked,
	         &aci->pullout.uncracked, DIM_FORCE},
		{STRENGTH "aci318.bond.cracked", "uncracked", &aci->bond.cracked,
	         &aci->bond.uncracked, DIM_STRESS},
		{STRENGTH "en1992_4.k_cracked", "k_uncracked", &en->k_cracked, &en->k_uncracked,
	         DIM_FACTOR},
		{STRENGTH "en1992_4.pullout.cracked", "uncracked", &en->pullout.cracked,
	         &en->pullout.uncracked, DIM_FORCE},
		{STRENGTH "en1992_4.bond.cracked", "uncracked", &en->bond.cracked,
	         &en->bond.uncracked, DIM_STRESS}};
	for (size_t i = 0; i < sizeof orders / sizeof *orders; i++)
		check_order(validity, &orders[i]);
}

/* --- head --- */

/* The part of the head outside the shaft bears on the concrete: there must be some. */
static bool check_head_diameter(struct validity *validity)
{
	const struct product *product = &validity->cell->anchors.product;
	const struct number *head = &product->strength.head_diameter;
	if (!is_known(*head) || !is_known(product->shaft) || head->value > product->shaft.value)
		return true;
	validity_fault(validity, FAULT_GEOMETRY, head->given.mark, STRENGTH "head_diameter",
	               "write the outer diameter of the head, which bears on the concrete",
	               "a head of %s on a shaft of %s bears on nothing",
	               validity_show_number(validity, head, DIM_LENGTH).text,
	               validity_show_number(validity, &product->shaft, DIM_LENGTH).text);
	return false;
}

static void check_head_area(struct validity *validity)
{
	const struct product *product = &validity->cell->anchors.product;
	const struct number *head = &product->strength.head_diameter, *shaft = &product->shaft;
	const struct number *area = &product->strength.head_area;
	if (!is_known(*head) || !is_known(*area) || !is_known(*shaft))
		return;
	double ring = PI / 4 * (head->value * head->value - shaft->value * shaft->value);
	if (fabs(area->value - ring) <= AREA_TOLERANCE * ring)
		return;
	validity_fault(validity, FAULT_CONTRADICTION, area->given.mark, STRENGTH "head_area",
	               "write the area without the shaft; of a head that is not round keep "
	               "head_area alone",
	               "%s, but head_diameter and shaft make it %s",
	               validity_show_number(validity, area, DIM_AREA).text,
	               validity_show(validity, ring, DIM_AREA).text);
}

/* --- forces, bars --- */

static void check_forces(struct validity *validity)
{
	const struct aci318_sheet *aci = &validity->cell->anchors.product.strength.aci;
	const struct en1992_4_sheet *en = &validity->cell->anchors.product.strength.en;
	const struct { const char *path; const struct number *force; } forces[] = {
		{STRENGTH "aci318.steel_tension", &aci->steel_tension},
		{STRENGTH "aci318.steel_shear", &aci->steel_shear},
		{STRENGTH "aci318.pullout.cracked", &aci->pullout.cracked},
		{STRENGTH "aci318.pullout.uncracked", &aci->pullout.uncracked},
		{STRENGTH "aci318.pullout.seismic", &aci->pullout.seismic},
		{STRENGTH "aci318.steel_shear_seismic", &aci->steel_shear_seismic},
		{STRENGTH "en1992_4.steel_tension", &en->steel_tension},
		{STRENGTH "en1992_4.steel_shear", &en->steel_shear},
		{STRENGTH "en1992_4.pullout.cracked", &en->pullout.cracked},
		{STRENGTH "en1992_4.pullout.uncracked", &en->pullout.uncracked},
		{STRENGTH "en1992_4.pullout.seismic", &en->pullout.seismic},
		{STRENGTH "en1992_4.splitting", &en->splitting},
		{STRENGTH "en1992_4.steel_tension_seismic", &en->steel_tension_seismic},
		{STRENGTH "en1992_4.steel_shear_seismic", &en->steel_shear_seismic}};
	for (size_t i = 0; i < sizeof forces / sizeof *forces; i++)
		validity_force(validity, forces[i].force, forces[i].path);
}

/* The spacing is from axis to axis. */
static void check_bars(struct validity *validity)
{
	const struct reinforcement *bars = &validity->cell->slab.reinforcement;
	if (!is_known(bars->bar_diameter) || !is_known(bars->bar_spacing) ||
	    bars->bar_spacing.value > bars->bar_diameter.value)
		return;
	validity_fault(validity, FAULT_GEOMETRY, bars->bar_spacing.given.mark,
	               "slab.reinforcement.bar_spacing",
	               "write the distance from the axis of one bar to that of the next",
	               "bars of %s at every %s lie in one another",
	               validity_show_number(validity, &bars->bar_diameter, DIM_LENGTH).text,
	               validity_show_number(validity, &bars->bar_spacing, DIM_LENGTH).text);
}

void validity_strength(struct validity *validity)
{
	check_types(validity);
	check_orders(validity);
	if (check_head_diameter(validity))
		check_head_area(validity);
	check_forces(validity);
	check_bars(validity);
}
