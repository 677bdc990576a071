#include "judging.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

const char *sentence(const struct judging *judging, const char *format, ...)
{
	char text[512];
	va_list arguments;
	if (!judging->arena)
		return "";
	va_start(arguments, format);
	vsnprintf(text, sizeof text, format, arguments);
	va_end(arguments);
	const char *copy = arena_text(judging->arena, text, strlen(text));
	return copy ? copy : "";
}

const char *shown(const struct judging *judging, double value, enum dimension dimension)
{
	char text[48];
	if (!judging->arena)
		return "";
	enum unit_system system = (enum unit_system)judging->cell->show.value;
	quantity_write(value, quantity_display_unit(dimension, system), 4, text, sizeof text);
	return sentence(judging, "%s", text);
}

const char *shown_up(const struct judging *judging, double value, enum dimension dimension)
{
	const struct unit *unit = quantity_display_unit(
		dimension, (enum unit_system)judging->cell->show.value);
	double number = value / unit->factor;
	if (!(number > 0))
		return shown(judging, value, dimension);
	double step = pow(10, floor(log10(number)) - 3);      /* four significant digits */
	return shown(judging, ceil(number / step * (1 - 1e-12)) * step * unit->factor, dimension);
}

const char *percent(const struct judging *judging, double share)
{
	char text[32];
	number_write(100 * share, 4, text, sizeof text);
	return sentence(judging, "%s %%", text);
}

bool needs_stated(const struct cell *cell)
{
	const struct needs *needs = &cell->anchors.needs;
	const struct given *given[] = {
		&needs->tension.given, &needs->shear.given, &needs->pattern_as_stated.given,
		&needs->all_setups_covered.given, &needs->both_at_once.given};
	for (size_t i = 0; i < sizeof given / sizeof given[0]; i++)
		if (given[i]->origin != ABSENT || given[i]->mark.line > 0)
			return true;
	return false;
}

const char *without_load_model(const struct cell *cell)
{
	return !load_model_given(cell) && needs_stated(cell)
	               ? "no load model in the file: the stated needs are judged instead"
	               : NULL;
}

bool engineer_stands(const struct engineer *engineer)
{
	return is_known(engineer->name) && is_known(engineer->reason);
}

const struct number *nominal_embedment(const struct product *product)
{
	return is_known(product->nominal_embedment) ? &product->nominal_embedment
	                                            : &product->embedment;
}

void judge_thickness_evidence(const struct judging *judging, struct finding *out)
{
	const struct word *evidence = &judging->cell->slab.thickness_evidence;
	if (is_known(*evidence) &&
	    (evidence->value == BY_MEASURED || evidence->value == BY_AS_BUILT))
		return;
	finding_lacks(out, "slab.thickness.evidence");
	out->never_fails = true;
}

void finding_lacks_edges(const struct judging *judging, double reach, struct finding *out)
{
	const struct slab *slab = &judging->cell->slab;
	if (!is_known(slab->outline) && !is_known(slab->joints)) {
		if (is_known(slab->clear) && reach > 0)
			finding_doubts(out,
			               sentence(judging,
			                        "clear of edges, joints and old holes by %s; %s would do",
			                        shown(judging, slab->clear.value, DIM_LENGTH),
			                        shown(judging, reach, DIM_LENGTH)),
			               "measure farther, or give outline, joints and old_holes and the "
			               "data sheet's edge table");
		else
			finding_lacks(out, "slab.clear");
		return;
	}
	if (!is_known(slab->outline))
		finding_lacks(out, "slab.outline");
	if (!is_known(slab->joints))
		finding_lacks(out, "slab.joints");
	if (!judging->setting->placed)
		finding_lacks(out,
		              is_known(judging->cell->standing_at) ? "cell.turned" : "cell.at");
}

void finding_lacks_strength(const struct judging *judging, struct finding *out)
{
	const struct concrete_strength *strength = &judging->setting->strength;
	for (size_t i = 0; i < strength->missing_count; i++)
		finding_lacks(out, strength->missing[i]);
	if (strength->doubt)
		finding_doubts(out, strength->doubt, strength->remedy);
}

double largest_clearance_hole(double shaft)
{
	/* EN 1992-4 Table 6.1: fastener diameter and diameter of the clearance hole [mm] */
	static const double row[][2] = {{6, 7},   {8, 9},   {10, 12}, {12, 14}, {14, 16}, {16, 18},
	                                {18, 20}, {20, 22}, {22, 24}, {24, 26}, {27, 30}, {30, 33}};
	enum { ROWS = sizeof row / sizeof row[0] };
	double clearance = 1;
	for (int i = 0; i < ROWS && row[i][0] <= shaft; i++)
		clearance = row[i][1] - row[i][0];
	/* between rows and above the table the clearance of the next smaller row: the safe side */
	return shaft + clearance;
}

enum stand_off_kind stand_off_kind(const struct judging *judging, struct finding *lacks)
{
	const struct stand_off *stand_off = &judging->cell->stand_off;
	const struct number *shaft = &judging->cell->anchors.product.shaft;
	const struct number *topping = &judging->cell->slab.topping;
	const char *missing = NULL;
	/* screed and tile are no concrete: the anchors bend in them as in a gap */
	if (is_known(*topping) && topping->value > 0)
		return ON_TOPPING;
	if (!is_known(*topping) && lacks)
		finding_lacks(lacks, "slab.topping");
	if (!is_known(stand_off->height))
		missing = "cell.stand_off";
	else if (stand_off->height.value == 0)
		return is_known(*topping) ? FLAT : STAND_OFF_UNKNOWN;
	else if (!is_known(stand_off->filled))
		missing = "cell.stand_off.filled";
	else if (stand_off->filled.value == NO)
		return THICK_OR_OPEN;
	else if (!is_known(*shaft))
		missing = "anchors.product.shaft";
	else if (stand_off->height.value > 0.5 * shaft->value)        /* EN 1992-4 6.2.2.3 */
		return THICK_OR_OPEN;
	else if (!is_known(stand_off->grout_strength))
		missing = "cell.stand_off.grout_strength";
	if (missing) {
		if (lacks)
			finding_lacks(lacks, missing);
		return STAND_OFF_UNKNOWN;
	}
	const struct concrete_strength *strength = &judging->setting->strength;
	if (stand_off->grout_strength.value <
	    fmax(30, strength->value)) /* EN 1992-4 6.2.2.3 [MPa] */
		return THICK_OR_OPEN;
	/* concrete that is not shown may be stronger than the grout */
	if (!strength->shown && lacks)
		finding_lacks_strength(judging, lacks);
	return is_known(*topping) && strength->shown ? FILLED_FLAT : STAND_OFF_UNKNOWN;
}

bool judge_base_holes(const struct judging *judging, struct finding *out)
{
	const struct anchors *anchors = &judging->cell->anchors;
	const struct number *shaft = &anchors->product.shaft;
	if (is_known(anchors->slotted)) {
		finding_doubts(out,
		               "the holes in the base are slotted: it is not known which anchors "
		               "take the shear",
		               "round holes with little clearance, or welded washers with round "
		               "holes, shown by the maker");
	} else if (!is_known(anchors->plate_hole) || !is_known(*shaft)) {
		finding_lacks(out, is_known(anchors->plate_hole) ? "anchors.product.shaft"
		                                                 : "anchors.plate_hole");
	} else if (anchors->plate_hole.value > largest_clearance_hole(shaft->value) + 1e-9) {
		finding_doubts(
			out,
			sentence(judging,
		                 "holes of %s are larger than %s: not every anchor may take its "
		                 "share of the shear",
		                 shown(judging, anchors->plate_hole.value, DIM_LENGTH),
		                 shown(judging, largest_clearance_hole(shaft->value), DIM_LENGTH)),
			"fill the holes, or weld washers with holes of the clearance table on the "
		        "base");
	} else {
		return true;
	}
	return false;
}

static void judge_holes(const struct judging *judging, int anchor, struct finding *out)
{
	size_t n = judging->cell->anchors.count, half = n > 1 ? n / 2 : 1;
	if (!judge_base_holes(judging, out) && judging->state && judging->arena)
		finding_notes(out, sentence(judging,
		                            "with half of the anchors taking the shear: about %s "
		                            "on this anchor",
		                            shown(judging,
		                                  judging->state->shear[anchor] * (double)n /
		                                          (double)half,
		                                  DIM_FORCE)));
}

const char *stand_off_remedy(const struct judging *judging)
{
	const struct number *shaft = &judging->cell->anchors.product.shaft;
	if (!is_known(*shaft))
		return "have an engineer check the anchors in bending";
	return sentence(judging,
	                "lower the base to a gap of at most %s and grout it whole with grout of at "
	                "least 30 MPa, or have an engineer check the anchors in bending",
	                shown(judging, 0.5 * shaft->value, DIM_LENGTH));
}

void judge_shear_conditions(const struct judging *judging, int anchor, struct finding *out)
{
	judge_holes(judging, anchor, out);
	enum stand_off_kind kind = stand_off_kind(judging, out);
	if (kind == ON_TOPPING)
		finding_doubts(out,
		               "the base stands on a topping: the anchors bend in it, and the "
		               "rating does not cover it",
		               "remove the topping below the base, or have an engineer check the "
		               "anchors in bending");
	else if (kind == THICK_OR_OPEN)
		finding_doubts(out,
		               "the base stands off the concrete: the anchors bend, and the rating "
		               "does not cover it",
		               stand_off_remedy(judging));
	if (judging->facts && judging->facts->torsion_on_one)
		finding_doubts(out, "a single anchor cannot resist twisting",
		               "two anchors or more");
}

void judge_bound(const struct judging *judging, const char *said, struct finding *out)
{
	out->never_fails = true;
	if (judging->facts && judging->facts->bound_uncarried)
		finding_doubts(out,
		               "under the guaranteed bound of the arm's motion over all poses base and "
		               "anchors have no balance at all",
		               "anchors on all sides, a wider base, more weight, or slower joints; or an "
		               "engineer who takes the swept poses as all there are (judged_by: sweep)");
	if (!out->computed)
		return;
	out->said_numbers = said;
	if (out->ratio > 1)
		finding_doubts(out, said,
		               "more poses under arm.motion (bound_poses), slower joints, an anchor that "
		               "carries more; or an engineer who takes the swept poses as all there are "
		               "(judged_by: sweep)");
}
