/* aci318.earthquake, en1992_4.earthquake: whether the anchor is qualified for earthquakes, and
 * which duties of the code's seismic clauses a program cannot take over.
 *
 * Source: ACI 318-19 17.10 (seismic design categories C to F); EN 1992-4 Annex C, Table C.1 (from
 * memory). Range: the forces are in the loads, the lower strengths in every mode's check. Verdicts:
 * the seismic category of the site is not in the file, so that an anchor without qualification is
 * unproven, not failed. Identities: independent of loads. */
#include "check_files.h"
#include "code_judging.h"
#include "judging.h"

#define STRENGTH "anchors.product.strength."
/* EN 1992-4 Table C.1, from memory: with ag S up to it, and no building of importance class IV,
 * category C1 does; above it C2 [g] */
#define C1_MOST 0.10
#define C1_IMPORTANCE 1.2        /* of importance class III, EN 1998-1 4.2.5 [-] */
#define ROUNDING 1e-9            /* 0.1 as a product of two numbers is still 0.1 */
/* ASCE 7 11.4: SDS is 2.5 times the ground's own acceleration, from memory [-] */
#define PEAK_OF_GROUND 2.5

static const char *without_earthquake(const struct cell *cell)
{
	const char *why = without_load_model(cell);
	return why                       ? why
	       : earthquake_stated(cell) ? NULL
	                                 : "no earthquake is stated in the file";
}

const char *aci318_earthquake_left_out(const struct cell *cell)
{
	return without_earthquake(cell);
}

const char *en1992_4_earthquake_left_out(const struct cell *cell)
{
	return without_earthquake(cell);
}

static bool is_cast_in(const struct cell *cell)
{
	const struct word *type = &cell->anchors.product.type;
	return is_known(*type) &&
	       (type->value == CAST_IN_HEADED || type->value == CAST_IN_HOOKED);
}

/* --- ACI 318-19 17.10 --- */

static void note_duties_aci(struct finding *out)
{
	finding_notes(out, "counted here: concrete modes in tension at 0.75 of their strength (ACI "
	                   "318-19 17.10.5.4), overstrength in the earthquake's force as 17.10.5.3(d) "
	                   "and 17.10.6.3(c) allow, cracked concrete unless shown otherwise");
	finding_notes(out,
	              "left to the engineer: that no anchor stands in a plastic hinge zone (ACI "
	              "318-19 17.10.2), and the seismic design category of the site");
	finding_notes(out, "left to the engineer: the base and what stands between it and the arm, "
	                   "which must carry the same forces (ACI 318-19 17.10.5.3, 17.10.6.3)");
	finding_notes(out,
	              "left to the engineer: anchor reinforcement, if breakout is to be left out "
	              "(ACI 318-19 17.10.5.5), and the special inspection of the anchors");
}

void aci318_earthquake_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct cell *cell = judging->cell;
	const struct word *qualified = &cell->anchors.product.strength.aci.seismic;
	const struct word *code = &cell->earthquake.code;
	(void)anchor;
	judge_sheet_evidence(judging, out);
	if (!is_known(cell->anchors.product.type))
		finding_lacks(out, "anchors.product.type");
	if (!is_cast_in(cell) && !is_known(*qualified))
		finding_lacks(out, STRENGTH "aci318.seismic");
	else if (!is_cast_in(cell) && qualified->value == NO)
		finding_doubts(out,
		               "the anchor is not qualified for earthquakes (ACI 355.2, 355.4), as ACI "
		               "318-19 17.10.3 asks in seismic design categories C to F",
		               "an anchor that is qualified for earthquakes, or an engineer who shows "
		               "that the site is of category A or B");
	if (!is_known(*code))
		finding_lacks(out, "earthquake.code");
	else if (code->value == QUAKE_EN1998)
		finding_doubts(out,
		               "an earthquake by EN 1998-1 has no overstrength, which ACI 318-19 "
		               "17.10.5.3(d) puts into the force",
		               "the earthquake by ASCE 7 (earthquake: code), or the method en1992_4");
	out->said_numbers = is_cast_in(cell)
	                            ? "cast-in anchors need no test for earthquakes; see the duties"
	                            : "the anchor is qualified for earthquakes; see the duties";
	note_duties_aci(out);
}

/* --- EN 1992-4 Annex C --- */

/* ag S as a share of g; 0: cannot be told. */
static double ground_motion(const struct earthquake *quake, struct finding *out)
{
	if (!is_known(quake->code)) {
		finding_lacks(out, "earthquake.code");
		return 0;
	}
	if (quake->code.value != QUAKE_EN1998) {
		if (!is_known(quake->sds))
			finding_lacks(out, "earthquake.sds");
		return is_known(quake->sds) ? quake->sds.value / PEAK_OF_GROUND : 0;
	}
	if (!is_known(quake->ground_share))
		finding_lacks(out, "earthquake.ground_share");
	if (!is_known(quake->soil))
		finding_lacks(out, "earthquake.soil");
	return is_known(quake->ground_share) && is_known(quake->soil)
	               ? quake->ground_share.value * quake->soil.value
	               : 0;
}

static void judge_c1(const struct judging *judging, double ground, struct finding *out)
{
	const struct earthquake *quake = &judging->cell->earthquake;
	bool important = is_known(quake->importance) && quake->importance.value > C1_IMPORTANCE;
	if (!is_known(quake->importance))
		finding_lacks(out, "earthquake.importance");
	if (ground > C1_MOST * (1 + ROUNDING) || important)
		finding_doubts(out,
		               sentence(judging,
		                        "the anchor is qualified for category C1; with the ground's "
		                        "acceleration at %s of g%s EN 1992-4 Table C.1 asks for C2",
		                        percent(judging, ground),
		                        important ? " and this importance" : ""),
		               "an anchor that is qualified for category C2, or an engineer who shows "
		               "that C1 does");
}

static void note_duties_en(struct finding *out)
{
	finding_notes(out,
	              "counted here: the factors alpha_eq and alpha_gap of EN 1992-4 Annex C in "
	              "every mode, the sheet's values of the seismic category, tension and shear "
	              "together by the straight line (C.9)");
	finding_notes(out,
	              "left to the engineer: that no anchor stands in a critical region of the "
	              "structure (EN 1992-4 C.2)");
	finding_notes(out,
	              "left to the engineer: the choice between design by capacity and elastic "
	              "design (EN 1992-4 C.3); the forces here are those of the elastic one, "
	              "with the behaviour factor of the file");
	finding_notes(out,
	              "left to the engineer: the displacements of anchors of category C2, if the "
	              "cell must stay in place or in use (EN 1992-4 C.6)");
}

void en1992_4_earthquake_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct cell *cell = judging->cell;
	const struct word *category = &cell->anchors.product.strength.en.seismic;
	(void)anchor;
	judge_sheet_evidence(judging, out);
	double ground = ground_motion(&cell->earthquake, out);
	if (!is_known(*category))
		finding_lacks(out, STRENGTH "en1992_4.seismic");
	else if (category->value == SEISMIC_NONE)
		finding_doubts(out,
		               "the anchor is not qualified for earthquakes, as EN 1992-4 Annex C asks "
		               "above ag S of 0.05 g",
		               "an anchor of category C1 or C2, or an engineer who shows that the site "
		               "is of very low seismicity");
	else if (category->value == SEISMIC_C1)
		judge_c1(judging, ground, out);
	out->said_numbers = "the anchor is qualified for earthquakes of this size; see the duties";
	note_duties_en(out);
}
