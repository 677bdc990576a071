/* What each mode of ACI 318-19 needs from the cell, and where it does not apply. */
#include "aci_values.h"
#include "needs.h"


#define PRODUCT "anchors.product."
#define STRENGTH PRODUCT "strength."
#define SHEET STRENGTH "aci318."

static void need_embedment(const struct code_facts *f, struct lacking *lacking)
{
	need(lacking, f->embedment > 0, PRODUCT "embedment");
}

static void need_shaft(const struct code_facts *f, struct lacking *lacking)
{
	need(lacking, f->shaft > 0, PRODUCT "shaft");
}

static void need_concrete(const struct code_facts *f, struct lacking *lacking)
{
	need(lacking, f->concrete > 0, "slab.concrete.strength");
}

/* for phi of concrete in tension */
static void need_category(const struct code_facts *f, struct lacking *lacking)
{
	if (!f->cast_in)
		need_number(lacking, &f->given->aci.category, SHEET "category");
}

/* --- steel ---------------------------------------------------------------------------------- */

/* A thread's area is up to a tenth less than the usual 0.78 of the shaft's, an expansion anchor's
 * neck still less: a strength is not built on a guess. */
static void need_tensile_area(const struct code_facts *f, struct lacking *lacking)
{
	need(lacking, is_known(f->cell->anchors.product.tensile_area), PRODUCT "tensile_area");
}

static void need_steel_tension(const struct code_facts *f, struct lacking *lacking)
{
	need(lacking, is_known(f->given->ductile), STRENGTH "ductile");
	if (is_known(f->given->aci.steel_tension))
		return;
	need(lacking, f->ultimate > 0, STRENGTH "ultimate");
	need(lacking, f->yield > 0, STRENGTH "yield");
	need_tensile_area(f, lacking);
}

static bool has_sleeve(const struct code_facts *f)
{
	return f->type == TORQUE_CONTROLLED || f->type == DISPLACEMENT_CONTROLLED ||
	       f->type == UNDERCUT;
}

/* 0.6 of area times strength is that of a bolt without a sleeve in the shear plane, 17.7.1.2b */
static void need_bolt_shear(const struct code_facts *f, struct lacking *lacking)
{
	const struct word *sleeve = &f->given->sleeve_in_shear_plane;
	if (is_known(f->given->aci.steel_shear))
		return;
	if (is_known(*sleeve) && sleeve->value == YES) {
		lack(lacking, SHEET "steel_shear");
		return;
	}
	if (has_sleeve(f))
		need(lacking, is_known(*sleeve), STRENGTH "sleeve_in_shear_plane");
	need(lacking, f->ultimate > 0, STRENGTH "ultimate");
	need(lacking, f->yield > 0, STRENGTH "yield");
	if (!is_known(f->given->shear_area))
		need_tensile_area(f, lacking);
}

static void need_flatness(const struct code_facts *f, struct lacking *lacking)
{
	const struct stand_off *gap = &f->cell->stand_off;
	need(lacking, is_known(f->cell->slab.topping), "slab.topping");
	need(lacking, is_known(gap->height), "cell.stand_off");
	if (!is_known(gap->height) || gap->height.value == 0)
		return;
	need(lacking, is_known(gap->filled), "cell.stand_off.filled");
	if (is_known(gap->filled) && gap->filled.value == YES)
		need(lacking, is_known(gap->grout_strength), "cell.stand_off.grout_strength");
}

static void need_bending(const struct code_facts *f, struct lacking *lacking)
{
	need_steel_tension(f, lacking);
	need_tensile_area(f, lacking);
	need(lacking, f->ultimate > 0, STRENGTH "ultimate");
	need(lacking, f->yield > 0, STRENGTH "yield");
	need_shaft(f, lacking);
	need(lacking, is_known(f->cell->stand_off.height), "cell.stand_off");
	need(lacking, is_known(f->cell->anchors.plate_thickness), "anchors.plate_thickness");
}

static void need_steel_shear(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	need(lacking, is_known(f->given->ductile), STRENGTH "ductile");
	if (earthquake && !f->cast_in)
		need_number(lacking, &f->given->aci.steel_shear_seismic,
		            SHEET "steel_shear_seismic");
	else
		need_bolt_shear(f, lacking);
	if (f->lever_arm == LEVER_UNKNOWN)
		need_flatness(f, lacking);
	else if (f->lever_arm == LEVER_ARM)
		need_bending(f, lacking);
}

/* --- concrete ------------------------------------------------------------------------------- */

/* A sheet's own value for cracked concrete shows that the anchor was tested in it. */
static void need_cracked(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	const struct aci318_sheet *sheet = &f->given->aci;
	if (f->cast_in || !(f->cracked || earthquake) || is_known(sheet->kc_cracked) ||
	    is_known(sheet->pullout.cracked) || is_known(sheet->no_pullout.cracked) ||
	    is_known(sheet->bond.cracked))
		return;
	need(lacking, is_known(f->cell->anchors.product.qualified_cracked),
	     PRODUCT "qualified_cracked");
}

static void need_cone(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	need_concrete(f, lacking);
	need_embedment(f, lacking);
	need_cracked(f, earthquake, lacking);
}

static void need_test(const struct code_facts *f, const struct number *given,
                      const struct word *never, const char *path, struct lacking *lacking)
{
	if (is_known(*never))
		return;
	need_number(lacking, given, path);
	need_number(lacking, &f->given->at_concrete, STRENGTH "at_concrete");
}

static void need_pullout(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	const struct by_state *given = &f->given->aci.pullout;
	const struct never_governs *never = &f->given->aci.no_pullout;
	need_concrete(f, lacking);
	if (f->type == CAST_IN_HEADED) {
		need(lacking, f->head_area > 0, STRENGTH "head_area");
	} else if (f->type == CAST_IN_HOOKED) {
		need_number(lacking, &f->given->hook_length, STRENGTH "hook_length");
		need_shaft(f, lacking);
	} else if (earthquake) {
		need_test(f, &given->seismic, &never->seismic, SHEET "pullout.seismic", lacking);
	} else if (f->cracked) {
		need_test(f, &given->cracked, &never->cracked, SHEET "pullout.cracked", lacking);
	} else {
		need_test(f, &given->uncracked, &never->uncracked, SHEET "pullout.uncracked",
		          lacking);
	}
}

/* the reach of bond always rests on tau_uncr, 17.6.5.1.2 */
static void need_bond(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	const struct by_state *bond = &f->given->aci.bond;
	need_embedment(f, lacking);
	need_shaft(f, lacking);
	if (f->cracked || earthquake)
		need_number(lacking, &bond->cracked, SHEET "bond.cracked");
	need_number(lacking, &bond->uncracked, SHEET "bond.uncracked");
	if (earthquake)
		need_number(lacking, &bond->seismic, SHEET "bond.seismic");
	need_number(lacking, &f->given->at_concrete, STRENGTH "at_concrete");
}

static void need_sustained(const struct code_facts *f, struct lacking *lacking)
{
	const struct by_state *bond = &f->given->aci.bond;
	need_embedment(f, lacking);
	need_shaft(f, lacking);
	if (f->cracked)
		need_number(lacking, &bond->cracked, SHEET "bond.cracked");
	else
		need_number(lacking, &bond->uncracked, SHEET "bond.uncracked");
	need_number(lacking, &f->given->at_concrete, STRENGTH "at_concrete");
}

static void need_edge(const struct code_facts *f, struct lacking *lacking)
{
	need_concrete(f, lacking);
	need_shaft(f, lacking);
	need(lacking, f->thickness > 0, "slab.thickness.value");
	if (!is_known(f->given->aci.shear_length) && f->type != TORQUE_CONTROLLED)
		need_embedment(f, lacking);
}

/* --- the whole ------------------------------------------------------------------------------ */

static void gather(const struct code_facts *f, enum code_mode mode, bool earthquake,
                   struct lacking *lacking)
{
	switch (mode) {
	case STEEL_TENSION:
		need_steel_tension(f, lacking);
		return;
	case STEEL_SHEAR:
		need_steel_shear(f, earthquake, lacking);
		return;
	case EDGE:
		need_edge(f, lacking);
		return;
	case PRYOUT:
		need_cone(f, earthquake, lacking);
		if (f->type == ADHESIVE)
			need_bond(f, earthquake, lacking);
		return;
	case CONE:
		need_cone(f, earthquake, lacking);
		break;
	case PULLOUT:
		need_pullout(f, earthquake, lacking);
		break;
	case BLOWOUT:
		need_concrete(f, lacking);
		need_embedment(f, lacking);
		need(lacking, f->head_area > 0, STRENGTH "head_area");
		break;
	case BOND:
		need_bond(f, earthquake, lacking);
		break;
	case BOND_SUSTAINED:
		need_sustained(f, lacking);
		break;
	default:
		return;          /* SPLITTING is EN's */
	}
	need_category(f, lacking);
}

size_t aci_missing(const struct code_facts *facts, enum code_mode mode, bool earthquake,
                   const char *path[], size_t room)
{
	enum { MOST = 24 };
	const char *found[MOST];
	struct lacking lacking = {found, MOST, 0};
	need(&lacking, facts->type_known, PRODUCT "type");
	/* an unknown type asks for nothing else that only some types have */
	if (!facts->type_known)
		return lacking_each_once(&lacking, path, room);
	/* 17.10.3: qualified by test; a "no" lets the layout fail */
	if (earthquake && !facts->cast_in)
		need(&lacking, is_known(facts->given->aci.seismic), SHEET "seismic");
	gather(facts, mode, earthquake, &lacking);
	return lacking_each_once(&lacking, path, room);
}

/* Where the sheet says that pullout does not govern, in earthquakes too where there are any. */
static bool pullout_never_governs(const struct cell *cell)
{
	const struct never_governs *never = &cell->anchors.product.strength.aci.no_pullout;
	const struct concrete *c = &cell->slab.concrete;
	bool uncracked = is_known(c->cracked) && c->cracked.value == NO &&
	                 is_known(c->uncracked_reason);
	bool no_earthquake = cell->earthquake.given.origin == GIVEN;
	return is_known(*(uncracked ? &never->uncracked : &never->cracked)) &&
	       (no_earthquake || is_known(never->seismic));
}

const char *aci_left_out(const struct cell *cell, enum code_mode mode)
{
	const struct word *word = &cell->anchors.product.type;
	if (mode == SPLITTING)
		return "ACI 318 counts splitting within breakout and bond, and by least distances";
	if (!is_known(*word))
		return NULL;
	enum anchor_type type = (enum anchor_type)word->value;
	bool drilled = type != CAST_IN_HEADED && type != CAST_IN_HOOKED;
	if ((mode == BOND || mode == BOND_SUSTAINED) && type != ADHESIVE)
		return "no adhesive anchor";
	if (mode == PULLOUT && type == ADHESIVE)
		return "adhesive: bond is checked instead";
	if (mode == PULLOUT && drilled && pullout_never_governs(cell))
		return "the sheet says that pullout does not govern";
	if (mode == BLOWOUT && type != CAST_IN_HEADED)
		return "no headed anchor";
	return NULL;
}
