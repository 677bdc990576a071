/* Properties of the whole flow on random cells: the same cell seen in other axes, in other units,
 * under other names; loads in proportion; better and worse anchors; more loads; more headings. SEED
 * and CASES may be set in the environment; a failure names its case, and shows the cell.
 *
 * Tolerance: a maximum over the headings is found to a millionth of a radian (check_sweep.c). Where
 * two states of contact meet, tension runs as steeply as its whole size over a few degrees, some
 * ten sizes a radian. So the same maximum, come upon from other headings, agrees to 1e-5 of the
 * largest tension, and not much better. */
#include "../support/cases.h"
#include "../support/cell_text.h"
#include "../support/random_cell.h"

#include <criterion/criterion.h>
#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

static const double pi = 3.14159265358979323846;
#define SAME 1e-5
/* A verdict may differ where the ratio is this near to 1. */
#define NEAR_ONE 1e-4

/* One cell with its answer; the text shows what failed. */
struct outcome { struct arena arena; const char *text; struct trial trial; };

static struct outcome first, second;
static struct plan plan, other;
static uint64_t number;

static void outcome_of_text(struct outcome *outcome, const char *text,
                            const struct check_options *options)
{
	outcome->text = text;
	trial_open(&outcome->trial, text, options);
	cr_assert_eq(outcome->trial.reading.status, DONE, "case %" PRIu64 ": %s\n%s", number,
	             reading_faults(&outcome->trial.reading), text);
}

static void outcome_open(struct outcome *outcome, const struct plan *from, bool us)
{
	arena_open(&outcome->arena, NULL, NULL);
	outcome_of_text(outcome, plan_write(&outcome->arena, from, us), NULL);
}

static void outcome_close(struct outcome *outcome)
{
	trial_close(&outcome->trial);
	arena_close(&outcome->arena);
}

static const struct check_result *check_of(const struct outcome *outcome, const char *id)
{
	const struct check_result *check = trial_check(&outcome->trial, id);
	cr_assert(check, "%s is left out", id);
	return check;
}

/* Where the base can tip, tensions near the tipping have no largest value, in one reading of the
 * weight flags at least: nothing can be compared. base.stability has properties of its own. */
static bool is_stable(const struct outcome *outcome)
{
	const struct check_result *check = check_of(outcome, "base.stability");
	return !check->finding.computed && check->finding.verdict == HOLDS;
}

static void throw_plan(struct plan *out, uint64_t stream, bool boxes)
{
	struct dice dice = dice_open(cases_seed() + 1000 * stream, number);
	plan_random(out, &dice, boxes);
}

/* Boxes take four times as long: every eighth cell has one where they are not the matter. */

/* A random stable cell into `plan` and `first`. False: it can tip; nothing stays open. */
static bool throw_stable(uint64_t stream, bool boxes)
{
	throw_plan(&plan, stream, boxes);
	outcome_open(&first, &plan, false);
	if (is_stable(&first))
		return true;
	outcome_close(&first);
	return false;
}

static double largest_tension(const struct outcome *outcome)
{
	double largest = 0;
	for (size_t i = 0; i < outcome->trial.result->anchor_count; i++)
		largest = fmax(largest, outcome->trial.result->anchor[i].tension);
	return largest;
}

static void near(const char *what, const char *of, double a, double b, double tolerance)
{
	cr_assert(fabs(a - b) <= tolerance,
	          "%s, seed %" PRIu64 " case %" PRIu64 ": %s %.12g and %.12g\n%s", what,
	          cases_seed(), number, of, a, b, first.text);
}

enum order { AS_IT_IS, TURNED_ROUND };

static void same_anchors(const char *what, double times, enum order order)
{
	const struct result *a = first.trial.result, *b = second.trial.result;
	double size = SAME * largest_tension(&first), shear = 0;
	for (size_t i = 0; i < a->anchor_count; i++)
		shear = fmax(shear, a->anchor[i].shear);
	for (size_t i = 0; i < a->anchor_count; i++) {
		const struct anchor_result *other_one =
			&b->anchor[order == TURNED_ROUND ? a->anchor_count - 1 - i : i];
		near(what, "tension", a->anchor[i].tension, other_one->tension / times, size);
		near(what, "shear", a->anchor[i].shear, other_one->shear / times, SAME * shear);
	}
}

/* Ratio and verdict of every check. The linear bed's pressure has no bound where a base pries on a
 * corner; above its limit it is unproven, however far. */
static void same_checks(const char *what)
{
	for (size_t i = 0; i < check_count; i++) {
		const struct check_result *a = trial_check(&first.trial, checks[i].id),
		                          *b = trial_check(&second.trial, checks[i].id);
		cr_assert_eq(!a, !b, "%s", checks[i].id);
		if (!a)
			continue;
		cr_assert_eq(a->finding.computed, b->finding.computed,
		             "%s, case %" PRIu64 ": %s\n%s", what, number, checks[i].id,
		             first.text);
		double ratio = a->finding.computed ? a->finding.ratio : 0;
		bool beyond = strcmp(checks[i].id, "slab.carries") == 0 && ratio > 1 &&
		              b->finding.ratio > 1;
		if (a->finding.computed && !beyond)
			near(what, checks[i].id, ratio, b->finding.ratio, SAME * fmax(ratio, 0.1));
		if (fabs(ratio - 1) > NEAR_ONE)
			cr_assert_eq(a->finding.verdict, b->finding.verdict,
			             "%s, case %" PRIu64 ": verdict of %s\n%s", what, number,
			             checks[i].id, first.text);
	}
}

/* --- the same cell
 * ------------------------------------------------------------------------------------- */

Test(prop_flow, other_axes)
{
	uint64_t count = cases_count("other axes", 100);
	for (number = 0; number < count; number++) {
		if (!throw_stable(1, false))
			continue;
		struct dice dice = dice_open(cases_seed() + 1, number);
		double turn = dice_between(&dice, -pi, pi), dx = dice_between(&dice, -2000, 2000);
		/* the squares of the codes' cones stand along the cell's axes (pattern.h) */
		if (plan.codes.asked)
			turn = pi / 2 * (double)(number / 8 % 4);
		plan_move(&plan, turn, number & 1, dx, dice_between(&dice, -2000, 2000), &other);
		outcome_open(&second, &other, false);
		same_anchors("other axes", 1, AS_IT_IS);
		same_checks("other axes");
		outcome_close(&second);
		outcome_close(&first);
	}
}

/* Boxes stand along the axes, so they turn by right angles alone. */
Test(prop_flow, boxes_in_other_axes)
{
	uint64_t count = cases_count("boxes in other axes", 400);
	for (number = 0; number < count; number++) {
		if (!throw_stable(2, true))
			continue;
		plan_move(&plan, 0, number & 1, 300, -700, &other);
		outcome_open(&second, &other, false);
		same_anchors("boxes", 1, AS_IT_IS);
		same_checks("boxes");
		outcome_close(&second);
		outcome_close(&first);
	}
}

Test(prop_flow, other_labels)
{
	uint64_t count = cases_count("other labels", 200);
	for (number = 0; number < count; number++) {
		if (!throw_stable(3, number % 8 == 0))
			continue;
		other = plan;
		plan_relabel(&other);
		outcome_open(&second, &other, false);
		same_anchors("labels", 1, TURNED_ROUND);
		same_checks("labels");
		outcome_close(&second);
		outcome_close(&first);
	}
}

Test(prop_flow, other_units)
{
	uint64_t count = cases_count("other units", 200);
	for (number = 0; number < count; number++) {
		if (!throw_stable(4, number % 8 == 0))
			continue;
		outcome_open(&second, &plan, true);
		same_anchors("units", 1, AS_IT_IS);
		same_checks("units");
		outcome_close(&second);
		outcome_close(&first);
	}
}

/* --- loads
 * ---------------------------------------------------------------------------------------------- */

/* s times all loads and weights give s times all tensions and shears. */
Test(prop_flow, in_proportion)
{
	uint64_t count = cases_count("in proportion", 200);
	for (number = 0; number < count; number++) {
		if (!throw_stable(5, number % 8 == 0))
			continue;
		struct dice dice = dice_open(cases_seed() + 5, number);
		double times = dice_decades(&dice, -0.5, 0.5);
		other = plan;
		plan_times(&other, times);
		outcome_open(&second, &other, false);
		same_anchors("proportion", times, AS_IT_IS);
		outcome_close(&second);
		outcome_close(&first);
	}
}

/* No ratio of the second is below the first's by more than the headings allow, nor its verdict
 * better. */
static void no_better(const char *what)
{
	for (size_t i = 0; i < check_count; i++) {
		const struct check_result *a = trial_check(&first.trial, checks[i].id),
		                          *b = trial_check(&second.trial, checks[i].id);
		if (!a || !b)
			continue;
		bool computed = a->finding.computed && b->finding.computed;
		if (computed)
			cr_assert_geq(b->finding.ratio, a->finding.ratio * (1 - SAME),
			              "%s, seed %" PRIu64 " case %" PRIu64
			              ": %s %.12g, then %.12g\n%s",
			              what, cases_seed(), number, checks[i].id, a->finding.ratio,
			              b->finding.ratio, first.text);
		if (!computed || fabs(a->finding.ratio - 1) > NEAR_ONE)
			cr_assert_geq(b->finding.verdict, a->finding.verdict,
			              "%s, case %" PRIu64 ": %s\n%s", what, number, checks[i].id,
			              first.text);
	}
}

/* One further load more, or the only one. */
Test(prop_flow, one_more_load)
{
	uint64_t count = cases_count("one more load", 200);
	for (number = 0; number < count; number++) {
		throw_plan(&plan, 6, number % 8 == 0);
		other = plan;
		plan.load_count = plan.load_count > 0 ? plan.load_count - 1 : 0;
		if (other.load_count == 0) {
			other.load[0] = (struct plan_load){.kind = ANY_SIDE,
			                                   .force = 300,
			                                   .at_height = 1500,
			                                   .with = "normal"};
			other.load_count = 1;
		}
		outcome_open(&first, &plan, false);
		outcome_open(&second, &other, false);
		if (is_stable(&first) && is_stable(&second))
			no_better("one more load");
		outcome_close(&second);
		outcome_close(&first);
	}
}

/* Shear on an anchor from a force in a heading with a twist, added to *shear: equal anchors about
 * their centroid (Shigley, 9th ed., 8-12). */
static void add_share(const struct plan *of, size_t anchor, const double *at, double force,
                      double heading, double twist, struct vec2 *shear)
{
	double n = (double)of->anchor_count, x = 0, y = 0, polar = 0;
	for (size_t i = 0; i < of->anchor_count; i++) {
		x += of->anchor[i].x / n;
		y += of->anchor[i].y / n;
	}
	for (size_t i = 0; i < of->anchor_count; i++)
		polar += pow(of->anchor[i].x - x, 2) + pow(of->anchor[i].y - y, 2);
	double fx = force * cos(heading), fy = force * sin(heading);
	double torsion = (at[0] - x) * fy - (at[1] - y) * fx + twist;
	shear->x += fx / n - torsion / polar * (of->anchor[anchor].y - y);
	shear->y += fy / n + torsion / polar * (of->anchor[anchor].x - x);
}

/* Shear on an anchor with the arm's force and a further load from any side each in a heading of its
 * own, as the dice fall; without a place the load pushes at any corner. */
static double thrown_shear(const struct plan *of, const struct plan_load *load, size_t anchor,
                           struct dice *dice)
{
	struct vec2 shear = {0, 0};
	const struct plan_ring *piece =
		&of->piece[dice_whole(dice, 0, (int)of->piece_count - 1)];
	const struct vec2 *corner = &piece->at[dice_whole(dice, 0, (int)piece->count - 1)];
	const double *mount = of->setup_count == 0
		? of->mount
		: of->setup[dice_whole(dice, 0, (int)of->setup_count - 1)].mount;
	const struct plan_reaction *arm = &of->reaction[strcmp(load->with, "normal") == 0 ? 0 : 1];
	double twist = dice_next(dice) & 1 ? arm->twisting : -arm->twisting;
	add_share(of, anchor, mount, arm->horizontal, dice_between(dice, -pi, pi), twist, &shear);
	add_share(of, anchor, load->placed ? load->at : (const double[]){corner->x, corner->y},
	          load->force, dice_between(dice, -pi, pi), 0, &shear);
	return hypot(shear.x, shear.y);
}

/* Paired or not, a further load from any side has a heading of its own: no pair of headings brings
 * more shear than the program says. */
Test(prop_flow, any_two_headings)
{
	uint64_t count = cases_count("two headings", 300), stable = 0;
	for (number = 0; number < count; number++) {
		throw_plan(&plan, 14, false);
		struct dice dice = dice_open(cases_seed() + 14, number);
		plan.paired = number % 4 ? "yes" : "no";
		plan.bed_ratio = 500;
		plan.load_count = 1;
		plan.load[0] = (struct plan_load){
			.kind = ANY_SIDE, .force = dice_between(&dice, 500, 2000),
			.placed = number & 1, .with = number % 3 ? "emergency_stop" : "normal",
			.at = {dice_between(&dice, -500, 500), dice_between(&dice, -500, 500)}};
		outcome_open(&first, &plan, false);
		const struct anchor_result *anchor = first.trial.result->anchor;
		stable += is_stable(&first);
		for (int k = 0; is_stable(&first) && k < 3000; k++) {
			size_t i = (size_t)k % plan.anchor_count;
			double by_hand = thrown_shear(&plan, &plan.load[0], i, &dice);
			cr_assert(by_hand <= anchor[i].shear * (1 + 1e-9),
			          "two headings, seed %" PRIu64 " case %" PRIu64
			          ": anchor %zu takes %.12g, the program says %.12g\n%s",
			          cases_seed(), number, i + 1, by_hand, anchor[i].shear,
			          first.text);
		}
		outcome_close(&first);
	}
	cr_assert(count < 10 || stable > count / 4, "%" PRIu64 " stable cells", stable);
}

/* --- anchors and slab
 * ------------------------------------------------------------------------------------ */

static void nearer_to_an_edge(struct plan *to)
{
	/* the lower edge moves up toward the cell, at most to 50 mm from its lowest anchor */
	double lowest = HUGE_VAL;
	for (size_t i = 0; i < to->anchor_count; i++)
		lowest = fmin(lowest, to->at[1] + sin(to->turned) * to->anchor[i].x +
		                              cos(to->turned) * to->anchor[i].y);
	to->outline.at[0].y = to->outline.at[1].y = fmax(0, lowest - 50);
}

/* Lower ratings, weaker concrete, nearer edges, nearer first rows: nothing gets better. */
Test(prop_flow, worse_anchors)
{
	uint64_t count = cases_count("worse anchors", 100);
	for (number = 0; number < count; number++) {
		if (!throw_stable(7, number % 8 == 0))
			continue;
		struct dice dice = dice_open(cases_seed() + 7, number);
		double less = dice_between(&dice, 0.5, 1);
		other = plan;
		switch (number % 5) {
		case 0: other.tension *= less; break;
		case 1: other.shear *= less; break;
		case 2: other.strength = fmax(15, other.strength * less); break;
		case 3: nearer_to_an_edge(&other); break;
		default: other.at_concrete /= less; break;
		}
		/* the concrete's strength also makes the bed: one ratio alone leaves the tensions
		 * as they are; a third edge that comes nearer may help (ACI 318-19 17.6.2.1.2) */
		bool bed = number % 5 == 2 && other.bed_ratio <= 0;
		if (bed || (number % 5 == 3 && plan.codes.asked)) {
			if (bed)
				other.bed_ratio = plan.bed_ratio = 500;
			else
				other.codes.asked = plan.codes.asked = false;
			outcome_close(&first);
			outcome_open(&first, &plan, false);
		}
		outcome_open(&second, &other, false);
		no_better("worse anchors");
		outcome_close(&second);
		outcome_close(&first);
	}
}

/* --- boxes
 * -----------------------------------------------------------------------------------------------
 */

/* A part anywhere in its box pulls no anchor harder than the box does, whose four corners stand for
 * it. */
Test(prop_flow, anywhere_in_the_box)
{
	uint64_t count = cases_count("anywhere in the box", 500);
	for (number = 0; number < count; number++) {
		if (!throw_stable(8, true))
			continue;
		struct dice dice = dice_open(cases_seed() + 8, number);
		for (int sample = 0; sample < 8; sample++) {
			other = plan;
			for (int k = 0; k < 2; k++)
				other.part[0].at[k] += dice_between(&dice, -1, 1) *
				                       plan.part[0].half[k];
			other.part[0].boxed = false;
			outcome_open(&second, &other, false);
			for (size_t i = 0; i < plan.anchor_count; i++)
				cr_assert_leq(
					second.trial.result->anchor[i].tension,
					first.trial.result->anchor[i].tension +
						SAME * largest_tension(&first),
					"seed %" PRIu64 " case %" PRIu64
					": anchor %zu %.12g, box %.12g, part at %.17g, %.17g\n%s",
					cases_seed(), number, i + 1,
					second.trial.result->anchor[i].tension,
					first.trial.result->anchor[i].tension, other.part[0].at[0],
					other.part[0].at[1], first.text);
			outcome_close(&second);
		}
		outcome_close(&first);
	}
}

/* --- the sweep
 * -------------------------------------------------------------------------------------------- */

/* 3 600 headings find nothing that the sweep has missed. */
static void no_more_than(const char *of, double fine, double sweep, double tolerance)
{
	cr_assert_leq(fine, sweep + tolerance,
	              "seed %" PRIu64 " case %" PRIu64 ": %s %.12g in the sweep, %.12g in "
	              "3600 headings\n%s",
	              cases_seed(), number, of, sweep, fine, first.text);
}

/* A millionth; of an anchor that hardly pulls a ten-thousandth of the one that pulls hardest, since
 * a hair of tension between two headings that are both slack decides nothing. */
static double allowed_more(double value, double largest)
{
	return value >= 0.1 * largest ? 1e-6 * value : 1e-4 * largest;
}

static void compare_headings(const struct result *sweep, const struct result *fine)
{
	double largest = largest_tension(&first);
	for (size_t i = 0; i < sweep->check_count; i++) {
		const struct check_result *a = &sweep->checks[i], *b = &fine->checks[i];
		/* the pressure of a base that pries on a corner has no bound; above 1 it is
		 * unproven, however far */
		bool beyond = strcmp(a->check->id, "slab.carries") == 0 && a->finding.ratio > 1;
		if (a->finding.computed && !beyond)
			no_more_than(a->check->id, b->finding.ratio, a->finding.ratio,
			             1e-6 * a->finding.ratio);
	}
	for (size_t i = 0; i < sweep->anchor_count; i++) {
		const struct anchor_result *a = &sweep->anchor[i], *b = &fine->anchor[i];
		no_more_than("tension", b->tension, a->tension, allowed_more(a->tension, largest));
		no_more_than("shear", b->shear, a->shear, 1e-6 * a->shear);
	}
	/* what `require` pairs: every group's own maximum */
	for (size_t i = 0; i < sweep->demand_count; i++)
		no_more_than("a group's tension", fine->demands[i].tension,
		             sweep->demands[i].tension,
		             allowed_more(sweep->demands[i].tension, largest));
}

Test(prop_flow, headings)
{
	const struct check_options many = {.headings = 3600};
	uint64_t count = cases_count("3600 headings", 400);
	for (number = 0; number < count; number++) {
		if (!throw_stable(9, false))
			continue;
		arena_open(&second.arena, NULL, NULL);
		outcome_of_text(&second, first.text, &many);
		compare_headings(first.trial.result, second.trial.result);
		outcome_close(&second);
		outcome_close(&first);
	}
}

/* Writing it down changes no bit. */
Test(prop_flow, trace_changes_nothing)
{
	const struct check_options traced = {.trace = true};
	uint64_t count = cases_count("trace", 200);
	for (number = 0; number < count; number++) {
		throw_plan(&plan, 10, number % 8 == 0);
		outcome_open(&first, &plan, false);
		arena_open(&second.arena, NULL, NULL);
		outcome_of_text(&second, first.text, &traced);
		for (size_t i = 0; i < first.trial.result->check_count; i++) {
			const struct finding *a = &first.trial.result->checks[i].finding,
			                     *b = &second.trial.result->checks[i].finding;
			cr_assert(memcmp(&a->ratio, &b->ratio, sizeof a->ratio) == 0 &&
			                  a->verdict == b->verdict &&
			                  memcmp(&a->demand, &b->demand, sizeof a->demand) == 0,
			          "case %" PRIu64 ": %s", number,
			          first.trial.result->checks[i].check->id);
			cr_assert_not(second.trial.result->checks[i].trace.full);
		}
		outcome_close(&second);
		outcome_close(&first);
	}
}

/* --- what governs
 * ------------------------------------------------------------------------------------------ */

/* The state of an occurrence, anew from its kept settlement. */
static void state_of(const struct occurrence *at, const struct base *base, struct state *out)
{
	*out = (struct state){
		.load_case = at->load_case, .heading = at->heading, .bed_ratio = at->bed_ratio};
	memcpy(out->settle, at->settle, sizeof out->settle);
	load_at(at->load_case, at->heading, out->load);
	base_fill(base, out);
}

/* Bed and anchors carry the load of every governing state, to the solver's own bound of 1e-9; and
 * the tension that was found is the one of that state, bit for bit. */
static void check_equilibrium(const struct outcome *outcome)
{
	static struct base base;
	const struct result *result = outcome->trial.result;
	for (size_t i = 0; i < result->anchor_count; i++) {
		const struct occurrence *at = &result->anchor[i].tension_at;
		struct arena scratch;
		struct state state;
		arena_open(&scratch, NULL, NULL);
		cr_assert_eq(base_prepare(setup_cell(result->cell, at->setup), &scratch, &base),
		             DONE);
		state_of(at, &base, &state);
		cr_assert_leq(state.residual, 1e-9, "case %" PRIu64 ": residual %g", number,
		              state.residual);
		cr_assert(memcmp(&state.tension[i], &result->anchor[i].tension, sizeof(double)) ==
		                  0,
		          "case %" PRIu64 ": anchor %zu %.17g, state %.17g", number, i + 1,
		          result->anchor[i].tension, state.tension[i]);
		arena_close(&scratch);
	}
}

Test(prop_flow, governing_states_are_in_equilibrium)
{
	uint64_t count = cases_count("equilibrium of what governs", 100);
	for (number = 0; number < count; number++) {
		if (!throw_stable(11, number % 8 == 0))
			continue;
		check_equilibrium(&first);
		outcome_close(&first);
	}
}

static double curve(bool five_thirds, double tension, double shear)
{
	return five_thirds ? pow(pow(tension, 5.0 / 3) + pow(shear, 5.0 / 3), 0.6)
	                   : tension + shear;
}

/* With shear free of the tilt, the interaction's ratio is the largest over the groups of the
 * group's largest tension with its largest shear: within one setup and case, in the most favourable
 * reading. */
static double paired_by_hand(const struct result *result, const struct check_result *tension,
                             const struct check_result *shear, unsigned reading)
{
	double largest = 0;
	for (size_t k = 0; k < result->demand_count; k++) {
		const struct demand *d = &result->demands[k];
		/* allowed loads from the ratios of the checks that judge one kind alone */
		double allowed_tension = tension->finding.capacity,
		       allowed_shear = shear->finding.capacity;
		if (d->reading == reading)
			largest = fmax(largest, curve(plan.five_thirds,
			                              fmax(d->tension, 0) / allowed_tension,
			                              d->shear / allowed_shear));
	}
	return largest;
}

Test(prop_flow, interaction_pairs_within_a_case)
{
	uint64_t count = cases_count("interaction", 200);
	for (number = 0; number < count; number++) {
		throw_plan(&plan, 12, number % 8 == 0);
		plan.paired = "no";
		/* wide spacing and a large slab, so that all anchors are allowed the same */
		plan.spacing[0].distance = 1;
		plan.spacing[1].distance = 2;
		plan.spacing[2].distance = 3;
		for (int i = 0; i < PLAN_ROWS; i++)
			plan.edge[i].distance = 1 + i;
		outcome_open(&first, &plan, false);
		if (is_stable(&first)) {
			const struct result *result = first.trial.result;
			const struct check_result *both = check_of(&first, "rating.interaction");
			double least = HUGE_VAL;
			for (unsigned r = 0; r < MAX_READINGS; r++)
				if (result->loads.readings & 1u << r)
					least = fmin(least,
					             paired_by_hand(
							     result,
							     check_of(&first, "rating.tension"),
							     check_of(&first, "rating.shear"), r));
			near("interaction", "ratio", both->finding.ratio, least, SAME * least);
		}
		outcome_close(&first);
	}
}

/* --- stability
 * ---------------------------------------------------------------------------------------------- */

/* The same ratio and verdict in other axes, also where the base can tip; s times the loads change
 * nothing. */
Test(prop_flow, stability)
{
	uint64_t count = cases_count("stability", 500), can_tip = 0;
	for (number = 0; number < count; number++) {
		throw_plan(&plan, 13, false);
		plan.bed_ratio = 500;
		struct dice dice = dice_open(cases_seed() + 13, number);
		for (size_t i = 0; i < plan.anchor_count; i++)
			plan.anchor[i].x = 1000 + 0.1 * plan.anchor[i].x;
		/* heavy enough that about half of them stand */
		plan.part[0].mass += 1500;
		plan.part[0].least_mass += 1500;
		plan_move(&plan, dice_between(&dice, -pi, pi), number & 1, 100, -50, &other);
		if (number % 3 == 0)
			plan_times(&other, 1.7);
		outcome_open(&first, &plan, false);
		outcome_open(&second, &other, false);
		const struct finding *a = &check_of(&first, "base.stability")->finding,
		                     *b = &check_of(&second, "base.stability")->finding;
		can_tip += a->verdict == FAILS;
		cr_assert_eq(a->computed, b->computed, "case %" PRIu64 "\n%s", number, first.text);
		if (a->computed)
			near("stability", "overturning", a->ratio, b->ratio, 1e-9 * a->ratio);
		if (!a->computed || fabs(a->ratio - 1) > 1e-6)
			cr_assert_eq(a->verdict, b->verdict, "case %" PRIu64 "\n%s", number,
			             first.text);
		outcome_close(&second);
		outcome_close(&first);
	}
	printf("stability: %" PRIu64 " tip\n", can_tip);
	cr_assert(count < 20 || (can_tip > 0 && can_tip < count),
	          "all or none tip: nothing is learnt");
}
