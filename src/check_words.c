#include "check_words.h"

#include "check_unanchored.h"
#include "checks/code_words.h"
#include "checks/judging.h"
#include "loads/earthquake.h"
#include "loads/pushes.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define SAFE_WEIGHT 0.6         /* ASCE 7 2.4.1, 0.6D */
#define WEIGHED_WEIGHT 0.9      /* where every mass is weighed; own choice, no source */

static void say(struct sentences *to, const char *text)
{
	for (size_t i = 0; i < to->count; i++)
		if (strcmp(to->list[i], text) == 0)
			return;
	if (text && to->count < MAX_SENTENCES)
		to->list[to->count++] = text;
}

/* The guaranteed bound over all poses is left out. */
static bool swept_alone(const struct cell *cell)
{
	return cell->arm.chain.joints.count > 0 && cell->arm.motion.joints.count > 0 &&
	       cell->arm.motion.judged_by.value == BY_SWEEP;
}

const char *load_departure(const struct cell *cell, const char **remedy)
{
	*remedy = "leave it out under choices, or have an engineer stand for it "
		  "(choices: by_engineer)";
	const struct choices *choices = &cell->choices;
	double most = choices->masses_weighed.value == YES ? WEIGHED_WEIGHT : SAFE_WEIGHT;
	if (engineer_stands(&choices->by_engineer))
		return NULL;
	if (choices->stabilising_weight.value > most)
		return "the stabilising weight is above the safe default and no engineer stands "
		       "for it";
	if (is_known(choices->anchor_bed_ratio))
		return "one ratio of anchor to bed stiffness is used alone and no engineer stands "
		       "for it";
	if (swept_alone(cell)) {
		*remedy = "leave judged_by out under arm.motion, or have an engineer stand for it "
			  "(choices: by_engineer)";
		return "the swept poses of the arm are taken as all there are and no engineer "
		       "stands "
		       "for it";
	}
	if (swing_given(cell)) {
		*remedy = "ask the arm's maker for its reactions or its link values, or measure a "
			  "stop; or have an engineer stand for the estimate (choices: by_engineer)";
		return "the arm's reactions are an estimate from masses, radii and stopping times, "
		       "and "
		       "no engineer stands for it";
	}
	return NULL;
}

/* --- departures
 * -------------------------------------------------------------------------------------- */

static void depart(const struct run *run, struct result *result, const char *what,
                   const struct engineer *engineer)
{
	const char *text =
		engineer_stands(engineer)
			? arena_format(run->arena, "%s; by engineer %s: %s", what,
	                               engineer->name.value, engineer->reason.value)
			: arena_format(run->arena, "%s; no engineer stands for it", what);
	if (text)
		say(&result->departures, text);
}

static const char *number_text(const struct run *run, double value, const char *before,
                               const char *after)
{
	char text[32];
	number_write(value, 4, text, sizeof text);
	const char *out = arena_format(run->arena, "%s%s%s", before, text, after);
	return out ? out : "";
}

static void list_departures(const struct run *run, const struct cell *cell, struct result *result)
{
	const struct choices *choices = &cell->choices;
	const struct rating *rating = &cell->anchors.product.rating;
	double weight = choices->stabilising_weight.value;
	if (rating->allowed_share.value > 0.25)
		depart(run, result,
		       number_text(run, 100 * rating->allowed_share.value,
		                   "allowed share of ultimate ", " % instead of 25 %"),
		       &rating->by_engineer);
	if (choices->least_strength.value < 28)
		depart(run, result,
		       number_text(run, choices->least_strength.value, "least concrete strength ",
		                   " MPa instead of 28 MPa"),
		       &choices->by_engineer);
	if (weight > SAFE_WEIGHT && choices->masses_weighed.value == YES &&
	    weight <= WEIGHED_WEIGHT)
		say(&result->departures,
		    number_text(run, weight, "stabilising weight ",
		                " instead of 0.6: every mass is stated as weighed"));
	else if (weight > SAFE_WEIGHT)
		depart(run, result,
		       number_text(run, weight, "stabilising weight ", " instead of 0.6"),
		       &choices->by_engineer);
	else if (weight < SAFE_WEIGHT)
		say(&result->departures,
		    number_text(run, weight, "stabilising weight ", " instead of 0.6 (safe side)"));
	if (is_known(choices->anchor_bed_ratio))
		depart(run, result,
		       number_text(run, choices->anchor_bed_ratio.value,
		                   "ratio of anchor to bed stiffness ",
		                   " mm2 used alone, instead of four values"),
		       &choices->by_engineer);
	if (swept_alone(cell))
		depart(run, result, "the swept poses of the arm are taken as all there are",
		       &choices->by_engineer);
	if (swing_given(cell))
		depart(run, result,
		       "ESTIMATE: the arm's reactions come from masses, radii, speeds and stopping "
		       "times alone (lumped arm)",
		       &choices->by_engineer);
	if (is_known(choices->group_spacing))
		depart(run, result,
		       number_text(run, choices->group_spacing.value,
		                   "spacing of the reduced embedment, ACI 318-19 17.6.2.1.2: ",
		                   " mm instead of the neighbours' largest"),
		       &choices->by_engineer);
	if (cell->slab.concrete.cracked.value == NO)
		depart(run, result, "concrete stated as uncracked",
		       &cell->slab.concrete.by_engineer);
}

/* --- assumptions
 * -------------------------------------------------------------------------------------- */

/* Whether any setup's arm is taken as its papers say. */
static bool sheet_used(const struct run *run)
{
	for (size_t k = 0; k < run->loads.count; k++)
		if (run->loads.list[k].by_data_sheet)
			return true;
	return false;
}

/* How the loads of the codes are made (loads/factors.h). */
static void assume_factors(const struct cell *cell, struct sentences *to)
{
	bool aci = method_chosen(cell, METHOD_ACI318), en = method_chosen(cell, METHOD_EN1992_4);
	if (aci)
		say(to,
		    "loads for ACI 318-19 (5.3.1, from memory): 1.2D + 1.6L and 0.9D + 1.6L, the "
		    "latter an addition, as no printed row pairs them; 1.4D where nothing moves");
	if (en)
		say(to, "loads for EN 1992-4 (EN 1990 6.10, from memory): 1.35G + 1.5Q and 0.9G + "
		        "1.5Q; the 1.0G of Table A1.2(B) lies between");
	if (!code_chosen(cell))
		return;
	say(to,
	    "in the codes' loads the arm's own weight with its payload counts as live load where "
	    "it presses or tilts, for it moves about (own choice), and as the other weights where "
	    "it holds down; choices.stabilising_weight has no part in them");
}

static void assume_loads(const struct run *run, const struct cell *cell, struct result *result)
{
	struct sentences *to = &result->assumptions;
	say(to, number_text(run, cell->choices.stabilising_weight.value,
	                    "service (unfactored) loads: weights x ",
	                    " and x 1.0, each with the least and the largest vertical force of the "
	                    "arm; weight reduced against the arm's own "
	                    "motion is a deliberate addition, no printed combination has it"));
	assume_factors(cell, to);
	bool sheet = sheet_used(run);
	if (sheet)
		say(to,
		    "horizontal force and tilting moment of the arm add in the same heading, and "
		    "every heading is run");
	if (result->paired)
		say(to,
		    "shear is taken in the heading of the tilt where the papers pair them; beside "
		    "a further load from any side it may point anywhere");
	else if (run->loads.count > 0)
		say(to, "shear may point in any heading whatever the tilt; tension and shear "
		        "together pair their maxima (a bound)");
	say(to,
	    sheet ? "twisting acts both ways and is carried in shear alone; no friction is counted"
	          : "twisting is carried in shear alone; no friction is counted");
	if (cell->loads.count > 0)
		say(to, "further loads act one at a time, each with the arm as stated");
	else if (!is_known(cell->loads))
		say(to, "no further load is stated (a leaning person, a cart): none is taken");
	if (!is_known(cell->setups))
		say(to, "no other setup is stated: the cell is taken as used in this one way");
	say(to, "the base is rigid on a bed that only presses, held by anchors that only pull; no "
	        "preload, no prying");
	if (!is_known(cell->choices.anchor_bed_ratio)) {
		say(to, number_text(run, run->setups[0].bed_ratio[1],
		                    "anchor stiffness over bed stiffness Es As / Ec = ",
		                    " mm2 (Es 200 GPa, Ec = 4700 sqrt(f), ACI 318-19 19.2.2.1), "
		                    "run at 1/4, 1, 4 and 16 times; the worst is used"));
	}
	if (!run->setups[0].setting.strength.known)
		say(to, "concrete of 28 MPa taken for the bed's stiffness alone, as its strength "
		        "is not known");
	const struct product *product = &cell->anchors.product;
	if (!is_known(product->tensile_area))
		say(to, is_known(product->shaft) ? "tensile area of the anchor taken as 0.78 of "
		                                   "its shaft's area, for its stiffness alone"
		                                 : "tensile area of the anchor taken as 84.3 mm2 "
		                                   "(12 mm thread), for its stiffness alone");
}

/* What each way of the arm's own motion supposes. */
static void assume_own_motion(const struct run *run, const struct arm_source *source,
                              struct result *result)
{
	struct sentences *to = &result->assumptions;
	if (source->way == WAY_CHAIN) {
		say(to,
		    "the arm's own motion by its chain: rigid links in prescribed motion, every "
		    "sign of speed and acceleration at a grid of poses and a search around the "
		    "largest; its least weight is lowered, the moment of its weight is not; poses "
		    "between are covered by the guaranteed bound (rating.bound)");
		say(to, "an arm that may turn half round or more about its first axis is taken as "
		        "turning all round");
	}
	if (source->way == WAY_CHAIN && source->swept_cut)
		say(to, number_text(run, 100 * source->swept_beyond,
		                    "the set of swept wrenches is cut at its limit: others lie up to ",
		                    " % beyond it; the guaranteed bound covers them"));
	if (source->way == WAY_HISTORY)
		say(to,
		    "the arm's own motion by history: each row as it stands, with the weights at "
		    "their factors; it shows the motions that were recorded and no others, and a "
		    "filter lowers its peaks");
	if (source->way == WAY_SWING)
		say(to, "ESTIMATE of the arm's own motion: two rigid axes at full speed and peak "
		        "deceleration at once, masses as points; elbow and wrist are not in it");
}

static void assume_arms(const struct run *run, struct result *result)
{
	for (size_t s = 0; s < run->setup_count; s++)
		for (size_t i = 0; run->arms[s] && i < run->arms[s]->count; i++)
			assume_own_motion(run, &run->arms[s]->list[i], result);
}

static void assume_rating(const struct cell *cell, struct result *result)
{
	struct sentences *to = &result->assumptions;
	const struct product *product = &cell->anchors.product;
	const struct word *basis = &product->rating.basis;
	say(to, "all anchors are of the product stated and set as its data sheet says");
	if (!method_chosen(cell, METHOD_RATING))
		return;
	if (is_known(*basis) && basis->value == BASIS_CHARACTERISTIC)
		say(to, "the rating is a characteristic (5 % fractile) load, used as ultimate: "
		        "safe side");
	if (is_known(product->rating.tested_in) &&
	    product->rating.tested_in.value == TESTED_UNCRACKED &&
	    is_known(product->qualified_cracked) && product->qualified_cracked.value == YES &&
	    cell->slab.concrete.cracked.value == YES)
		say(to, "rating found in uncracked concrete times 0.70 for a slab that may crack: "
		        "ratio of the codes' cone factors "
		        "(EN 1992-4 7.7/11.0, ACI 318-19 1/1.4), an assumption about this product");
	if (product->rating.spacing.count > 0 || product->rating.edge.count > 0)
		say(to, "spacing and edge shares multiply over all near neighbours and edges, "
		        "linear between rows (common practice, no source)");
	if (is_known(cell->anchors.needs.tension) || is_known(cell->anchors.needs.shear))
		say(to, "the papers' needs are allowed (service) loads of one anchor, tension and "
		        "shear each by itself");
}

/* The numbered assumptions of the codes come first, so that a clause's "S3" is quickly found. */
static void assume_codes(const struct run *run, struct result *result)
{
	const char *used[MAX_CODE_ASSUMPTIONS];
	for (size_t s = 0; s < run->setup_count; s++) {
		size_t count = code_assumptions_used(run->setups[s].cell, run->arena, used,
		                                     MAX_CODE_ASSUMPTIONS);
		for (size_t i = 0; i < count; i++)
			say(&result->assumptions, used[i]);
	}
}

/* --- cautions
 * ------------------------------------------------------------------------------------------ */

static bool is_checked(const struct result *result, const char *id)
{
	for (size_t i = 0; i < result->check_count; i++)
		if (strcmp(result->checks[i].check->id, id) == 0)
			return true;
	return false;
}

static void caution(const struct cell *cell, struct result *result)
{
	struct sentences *to = &result->cautions;
	say(to, "a licensed engineer must review and sign this before anything is drilled or run; "
	        "local codes govern");
	if (!is_known(cell->slab.scan) || cell->slab.scan.value == SCAN_NOT_DONE)
		say(to, "not scanned: do not drill before bars, post-tension tendons, conduit and "
		        "heating are found and marked");
	else
		say(to, "scan stated as done: keep to the marks; never drill or cut a tendon, bar, "
		        "conduit or heating line");
	say(to, "drilling raises silica dust: suction, mask, eye and ear protection; two people or "
	        "a hoist for heavy parts");
	say(to, "lock out all energy before work on the cell; nobody inside its reach while "
	        "anchors are loose");
	say(to, "torque and hole cleaning as the anchor's data sheet says; check torque again "
	        "after some weeks of running");
	if (!is_checked(result, "anchor.fatigue"))
		say(to, "not checked: fatigue and loosening under a working cell, for no load "
		        "cycles are given");
	else
		say(to, "fatigue is looked at for anchors in tension alone, from the cycles that "
		        "are given; not for shear, concrete, slab or base");
	bool by_code = code_chosen(cell);
	say(to,
	    by_code ? "not checked: impact of vehicles, slab bending, soil, fire, corrosion, "
	              "anchor "
	              "reinforcement, the base's own strength; of bonded anchors temperature and "
	              "wet holes, but for the bond value that the file takes from the sheet"
	            : "not checked: impact of vehicles, slab bending, soil, fire, corrosion, "
	              "anchor "
	              "reinforcement, the base's own strength; of bonded anchors sustained "
	              "tension, "
	              "temperature and wet holes");
}

/* A sentence of the loads, where it belongs. */
static void put_word(void *to, bool caution_word, const char *text)
{
	struct result *result = to;
	say(caution_word ? &result->cautions : &result->assumptions, text);
}

static void rare_words(const struct run *run, struct result *result)
{
	if (result->unanchored.told)
		say(&result->cautions, "the arm must not run before the cell is anchored: it can "
		                       "tip or walk");
	for (size_t s = 0; s < run->setup_count; s++)
		push_words(run->setups[s].cell, run->arena, put_word, result);
	earthquake_words(run->cell, run->arena, put_word, result);
}

/* --- to measure
 * ------------------------------------------------------------------------------------------ */

static const char *joined(const struct run *run, const struct lacking *row)
{
	const char *out = "";
	for (size_t i = 0; i < row->check_count && out; i++)
		out = arena_format(run->arena, "%s%s%s", out, i ? ", " : "", row->checks[i]);
	return out ? out : "";
}

/* What most checks wait for comes first; else the order in which the checks ask. */
static void list_to_measure(const struct run *run, const struct lacking_list *lacking,
                            struct result *result)
{
	const struct word *scan = &run->cell->slab.scan;
	result->to_measure = arena_take(run->arena, lacking->count + 1, sizeof *result->to_measure);
	/* decides no verdict, but comes before the first hole all the same */
	if (result->to_measure && (!is_known(*scan) || scan->value == SCAN_NOT_DONE))
		result->to_measure[result->to_measure_count++] = (struct to_measure){
			"slab.scan: bars, post-tension tendons, conduit and heating below the anchor "
			"places",
			"before any drilling", "a scan by a trained person; mark what is found"};
	for (size_t most = MAX_CHECKS; result->to_measure && most > 0; most--)
		for (size_t i = 0; i < lacking->count; i++) {
			const struct lacking *row = &lacking->list[i];
			const struct field *field = field_find(row->path);
			if (row->check_count != most)
				continue;
			while (field && field + 1 < fields + field_count &&
			       (!field->where_found || !*field->where_found) &&
			       strcmp(field[1].path, row->path) == 0)
				field++;
			const char *what = field && field->meaning
			                           ? arena_format(run->arena, "%s: %s", row->path,
			                                          field->meaning)
			                           : row->path;
			const char *how = field && field->where_found ? field->where_found
			                                              : "the machine's papers";
			result->to_measure[result->to_measure_count++] = (struct to_measure){
				what, joined(run, row), how};
		}
}

/* "slab.concrete.age and cell.base", and how many more. */
static const char *missing_words(const struct run *run, const struct finding *finding)
{
	size_t n = finding->missing_count;
	if (n == 1)
		return finding->missing[0];
	if (n == 2)
		return arena_format(run->arena, "%s and %s", finding->missing[0],
		                    finding->missing[1]);
	return arena_format(run->arena, "%s, %s and %zu more", finding->missing[0],
	                    finding->missing[1], n - 2);
}

/* An unproven check says what is not shown, and what to ask for first. */
static void remedies(const struct run *run, struct result *result)
{
	for (size_t i = 0; i < result->check_count; i++) {
		struct finding *finding = &result->checks[i].finding;
		if (finding->verdict != UNPROVEN || finding->doubted || finding->missing_count == 0)
			continue;
		const char *missing = missing_words(run, finding);
		const char *reason =
			missing ? arena_format(run->arena, "%s: not known or not shown: %s%s%s",
		                               result->checks[i].check->title, missing,
		                               finding->computed ? "; as far as known, " : "",
		                               finding->computed ? finding->reason : "")
				: NULL;
		finding->reason = reason ? reason : "";
		for (const struct field *f = field_find(finding->missing[0]);
		     f && f < fields + field_count && strcmp(f->path, finding->missing[0]) == 0;
		     f++)
			if (f->where_found && *f->where_found) {
				const char *remedy = arena_format(run->arena, "%s: %s",
				                                  finding->missing[0],
				                                  f->where_found);
				finding->remedy = remedy ? remedy : f->where_found;
			}
	}
}

/* A load fails in one setup and holds in another: say so, it may be the quickest way out. */
static void other_setups(const struct run *run, struct result *result)
{
	for (size_t i = 0; i < result->check_count; i++) {
		struct check_result *check = &result->checks[i];
		size_t best = check->at.setup;
		for (size_t s = 0; s < run->setup_count; s++)
			if (check->has_setup_ratio[s] &&
			    check->setup_ratio[s] < check->setup_ratio[best])
				best = s;
		if (check->finding.verdict != FAILS || !check->finding.computed ||
		    check->setup_ratio[best] > 1 || best == check->at.setup)
			continue;
		char ratio[24];
		number_write(ceil(100 * check->setup_ratio[best] * (1 - 1e-12)) / 100, 4, ratio,
		             sizeof ratio);
		const char *text = arena_format(
			run->arena, "%s%sthe setup '%s' (ratio %s)", check->finding.remedy,
			*check->finding.remedy ? ", or " : "", setup_name(run->cell, best), ratio);
		check->finding.remedy = text ? text : check->finding.remedy;
	}
}

void write_words(const struct run *run, const struct lacking_list *lacking, struct result *result)
{
	for (size_t s = 0; s < run->setup_count; s++)
		list_departures(run, run->setups[s].cell, result);
	assume_codes(run, result);
	if (result->loads_computed) {
		assume_loads(run, run->cell, result);
		assume_arms(run, result);
	}
	assume_rating(run->cell, result);
	caution(run->cell, result);
	find_unanchored(run, result);
	rare_words(run, result);
	list_to_measure(run, lacking, result);
	remedies(run, result);
	other_setups(run, result);
}
