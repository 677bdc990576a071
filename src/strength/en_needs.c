/* What each mode of EN 1992-4 needs from the cell, and where it does not apply. */
#include "en_values.h"
#include "needs.h"


#define PRODUCT "anchors.product."
#define STRENGTH PRODUCT "strength."
#define SHEET STRENGTH "en1992_4."

static void need_type(const struct code_facts *f, struct lacking *lacking)
{
	need(lacking, f->type_known, PRODUCT "type");
}

/* of every mode of concrete */
static void need_concrete(const struct code_facts *f, struct lacking *lacking)
{
	need(lacking, f->embedment > 0, PRODUCT "embedment");
	need(lacking, f->concrete > 0, "slab.concrete.strength");
}

static void need_thickness(const struct code_facts *f, struct lacking *lacking)
{
	need(lacking, f->thickness > 0, "slab.thickness.value");
}

/* gamma_inst of post-installed anchors */
static void need_installation(const struct code_facts *f, struct lacking *lacking)
{
	if (!f->cast_in)
		need_number(lacking, &f->given->en.installation_factor,
		            SHEET "installation_factor");
}

static void need_steel(const struct code_facts *f, struct lacking *lacking)
{
	need(lacking, f->ultimate > 0, STRENGTH "ultimate");
	need(lacking, f->yield > 0, STRENGTH "yield");
}

static void need_steel_tension(const struct code_facts *f, struct lacking *lacking)
{
	/* the area that the facts take from the shaft is too large for thin threads */
	if (!is_known(f->given->en.steel_tension))
		need_number(lacking, &f->cell->anchors.product.tensile_area,
		            PRODUCT "tensile_area");
}

static void need_at(const struct code_facts *f, struct lacking *lacking)
{
	need_number(lacking, &f->given->at_concrete, STRENGTH "at_concrete");
}

/* a head is given by its area, or by diameter and thickness */
static void need_head(const struct code_facts *f, struct lacking *lacking)
{
	bool half = is_known(f->given->head_diameter) && !is_known(f->given->head_thickness);
	need(lacking, f->head_area > 0, half ? STRENGTH "head_thickness" : STRENGTH "head_area");
}

static void need_pullout_of(const struct code_facts *f, struct lacking *lacking,
                            const struct number *given, const struct word *never,
                            const char *path)
{
	if (is_known(*never))
		return;
	need_number(lacking, given, path);
	need_at(f, lacking);
}

static void need_pullout(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	const struct by_state *given = &f->given->en.pullout;
	const struct never_governs *never = &f->given->en.no_pullout;
	if (earthquake)
		need_pullout_of(f, lacking, &given->seismic, &never->seismic,
		                SHEET "pullout.seismic");
	else if (f->type_known && f->type == CAST_IN_HEADED)
		need_head(f, lacking);
	else if (f->cracked)
		need_pullout_of(f, lacking, &given->cracked, &never->cracked,
		                SHEET "pullout.cracked");
	else
		need_pullout_of(f, lacking, &given->uncracked, &never->uncracked,
		                SHEET "pullout.uncracked");
}

/* the critical spacing rests on uncracked concrete, a group also on the stress at rest */
static void need_bond(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	const struct by_state *bond = &f->given->en.bond;
	need(lacking, f->shaft > 0, PRODUCT "shaft");
	if (f->cracked || earthquake)
		need_number(lacking, &bond->cracked, SHEET "bond.cracked");
	need_number(lacking, &bond->uncracked, SHEET "bond.uncracked");
	if (earthquake)
		need_number(lacking, &bond->seismic, SHEET "bond.seismic");
	need_at(f, lacking);
}

static bool is_bonded(const struct code_facts *f) { return f->type_known && f->type == ADHESIVE; }

static bool bars_hold(const struct slab *slab)
{
	const struct word *bars = &slab->reinforcement.against_splitting;
	return is_known(*bars) && bars->value == YES;
}

static void need_splitting(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	if (bars_hold(&f->cell->slab) && (f->cracked || earthquake))
		return;
	bool stated = is_known(f->given->en.splitting);
	need_number(lacking, &f->given->en.splitting_edge, SHEET "splitting_edge");
	need_number(lacking, &f->cell->anchors.product.least_slab, PRODUCT "least_slab");
	need_thickness(f, lacking);
	if (stated)
		need_at(f, lacking);
	if (stated && !earthquake)
		return;
	if (is_bonded(f))
		need_bond(f, earthquake, lacking);
	else
		need_pullout(f, earthquake, lacking);
}

/* what leaves it open whether the anchors bend */
static void need_flatness(const struct code_facts *f, struct lacking *lacking)
{
	const struct stand_off *gap = &f->cell->stand_off;
	size_t before = lacking->count;
	need(lacking, is_known(f->cell->slab.topping), "slab.topping");
	need(lacking, is_known(gap->height), "cell.stand_off");
	if (is_known(gap->height) && gap->height.value > 0) {
		need(lacking, is_known(gap->filled), "cell.stand_off.filled");
		if (is_known(gap->filled) && gap->filled.value == YES)
			need(lacking, is_known(gap->grout_strength),
			     "cell.stand_off.grout_strength");
	}
	/* grout is compared with the concrete and the shaft */
	need(lacking, f->concrete > 0, "slab.concrete.strength");
	need(lacking, f->shaft > 0, PRODUCT "shaft");
	if (lacking->count == before)
		lack(lacking, "cell.stand_off");
}

static void need_gap(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	if (f->lever_arm == NO_LEVER)
		return;
	if (f->lever_arm == LEVER_UNKNOWN) {
		need_flatness(f, lacking);
	} else if (earthquake) {
		lack(lacking, "cell.stand_off");     /* Annex C does not cover stand-off; S39 */
	} else if (!(f->lever > 0)) {
		need(lacking, is_known(f->cell->stand_off.height), "cell.stand_off");
		need(lacking, is_known(f->cell->anchors.plate_thickness),
		     "anchors.plate_thickness");
		need(lacking, f->shaft > 0, PRODUCT "shaft");
	}
}

/* a lever arm: the bent section, and what the steel bears in tension */
static void need_bending(const struct code_facts *f, struct lacking *lacking)
{
	need_steel_tension(f, lacking);
	if (!is_known(f->given->en.bending))
		need_number(lacking, &f->cell->anchors.product.tensile_area,
		            PRODUCT "tensile_area");
}

static void need_steel_shear(const struct code_facts *f, bool earthquake, struct lacking *lacking)
{
	const struct en1992_4_sheet *sheet = &f->given->en;
	need_steel(f, lacking);
	need_gap(f, earthquake, lacking);
	if (earthquake) {
		need_number(lacking, &sheet->steel_shear_seismic, SHEET "steel_shear_seismic");
		return;
	}
	need_concrete(f, lacking);
	need(lacking, f->shaft > 0, PRODUCT "shaft");
	if (!is_known(sheet->steel_shear)) {
		if (!is_known(f->given->shear_area))
			need_number(lacking, &f->cell->anchors.product.tensile_area,
			            PRODUCT "tensile_area");
		need(lacking, f->ultimate <= EN_K6_HARD_ULTIMATE, SHEET "steel_shear");
	}
	if (f->lever_arm == LEVER_ARM || f->lever_arm == GROUT_PAD)
		need_bending(f, lacking);
}

/* Which modes stand on what; the same path may come twice and is then dropped. */
static void gather(const struct code_facts *f, enum code_mode mode, bool earthquake,
                   struct lacking *lacking)
{
	bool steel = mode == STEEL_TENSION || mode == STEEL_SHEAR;
	if (!steel) {
		need_type(f, lacking);
		need_concrete(f, lacking);
	}
	if ((int)mode < FIRST_SHEAR_MODE && !steel)
		need_installation(f, lacking);
	if (mode == STEEL_TENSION) {
		need_steel(f, lacking);
		if (earthquake)
			need_number(lacking, &f->given->en.steel_tension_seismic,
			            SHEET "steel_tension_seismic");
		else
			need_steel_tension(f, lacking);
	} else if (mode == PULLOUT) {
		need_pullout(f, earthquake, lacking);
	} else if (mode == BLOWOUT) {
		need_head(f, lacking);
		need_thickness(f, lacking);
	} else if (mode == BOND || (mode == PRYOUT && is_bonded(f))) {
		need_bond(f, earthquake, lacking);
	} else if (mode == SPLITTING) {
		need_splitting(f, earthquake, lacking);
	} else if (mode == STEEL_SHEAR) {
		need_steel_shear(f, earthquake, lacking);
	} else if (mode == EDGE) {
		need(lacking, f->shaft > 0, PRODUCT "shaft");
		need_thickness(f, lacking);
	}
}

size_t en_missing(const struct code_facts *facts, enum code_mode mode, bool earthquake,
                  const char *path[], size_t room)
{
	enum { MOST = 24 };
	const char *found[MOST];
	struct lacking lacking = {found, MOST, 0};
	const struct word *category = &facts->given->en.seismic;
	if (earthquake)
		need(&lacking, is_known(*category) && category->value != SEISMIC_NONE,
		     SHEET "seismic");
	gather(facts, mode, earthquake, &lacking);
	return lacking_each_once(&lacking, path, room);
}

const char *en_left_out(const struct cell *cell, enum code_mode mode)
{
	const struct word *type = &cell->anchors.product.type;
	if (mode == BOND_SUSTAINED)
		return "EN 1992-4 counts lasting tension within combined pull-out and cone";
	if (mode == SPLITTING && bars_hold(&cell->slab) && cell->slab.concrete.cracked.value != NO)
		return "bars hold splitting cracks to 0.3 mm and the concrete counts as cracked";
	if (!is_known(*type))
		return NULL;
	/* en_layout lets the cell fail for it */
	if (type->value == CAST_IN_HOOKED && mode != STEEL_TENSION && mode != STEEL_SHEAR)
		return "EN 1992-4 does not cover hooked anchors";
	if (mode == BOND && type->value != ADHESIVE)
		return "the anchor is not bonded";
	if (mode == PULLOUT && type->value == ADHESIVE)
		return "bonded: pull-out is checked together with the cone";
	if (mode == BLOWOUT && type->value != CAST_IN_HEADED)
		return "the anchor is not headed";
	return NULL;
}
