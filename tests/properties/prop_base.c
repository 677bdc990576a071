/* Properties of the rigid base on random bases: several outlines that need not be convex, openings,
 * pads, anchors on and off the bed. SEED and CASES may be set in the environment; a failure names
 * its case. */
#include "../support/cases.h"
#include "slow_base.h"

#include <criterion/criterion.h>
#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* --- one random case
 * ------------------------------------------------------------------------------- */

struct solved {
	struct base_case from;
	struct arena arena;
	struct base base;
	struct state state;
	enum status status;
	int iterations;
};

static void solve(struct solved *solved)
{
	arena_open(&solved->arena, NULL, NULL);
	cr_assert_eq(base_prepare(&solved->from.cell, &solved->arena, &solved->base), DONE);
	struct state *state = &solved->state;
	memset(state, 0, sizeof *state);
	state->bed_ratio = solved->from.bed_ratio;
	memcpy(state->load, solved->from.load, sizeof state->load);
	state->balance = base_balance(&solved->base, state->load);
	if (state->balance != BALANCED)
		return;
	base_start(&solved->base, state->bed_ratio, state->load, state->settle);
	solved->status = base_solve(&solved->base, state->bed_ratio, state->load, state->settle,
	                            &solved->iterations);
	base_fill(&solved->base, state);
}

static void throw_case(struct solved *solved, uint64_t number)
{
	struct dice dice = dice_open(cases_seed(), number);
	case_random(&solved->from, &dice);
}

/* Size of the load: moments about the base's middle over its size [N]. */
static double load_size(const struct solved *solved)
{
	const struct base *base = &solved->base;
	const double *load = solved->state.load;
	double x = load[1] - base->centre[0] * load[0], y = load[2] - base->centre[1] * load[0];
	return fabs(load[0]) + (fabs(x) + fabs(y)) / base->size;
}

/* Forces are compared relative to the larger of load and tension: a lever may make tension the
 * larger. */
static double force_size(const struct solved *solved)
{
	double size = load_size(solved);
	for (size_t i = 0; i < solved->base.anchor_count; i++)
		size = fmax(size, solved->state.tension[i]);
	return size;
}

/* The lack of equilibrium that rounding of the settlement alone can make, relative to the load:
 * large where a base pries on a spot, or hangs on anchors far stiffer than the bed. */
static double rounding(const struct solved *solved)
{
	const double *settle = solved->state.settle;
	double stiffness = solved->base.area +
	                   (double)solved->base.anchor_count * solved->from.bed_ratio;
	return 0x1p-53 * (fabs(settle[0]) + fabs(settle[1]) + fabs(settle[2])) * stiffness /
	       load_size(solved);
}

/* Whether the case can be compared: it has an equilibrium, and one that doubles can hold. The
 * others are left to the property about wild stiffness. */
static bool usable(const struct solved *solved)
{
	return solved->state.balance == BALANCED && solved->status == DONE &&
	       rounding(solved) < 1e-10;
}

static void same_tensions(const struct solved *a, const double tension[], double tolerance,
                          const char *what, uint64_t number)
{
	for (size_t i = 0; i < a->base.anchor_count; i++) {
		double off = fabs(a->state.tension[i] - tension[i]) / force_size(a);
		cr_assert_leq(off, tolerance,
		              "%s: seed %" PRIu64 " case %" PRIu64 " anchor %zu: %.12g and %.12g",
		              what, cases_seed(), number, i + 1, a->state.tension[i], tension[i]);
	}
}

static struct solved first, second;

/* --- properties
 * ------------------------------------------------------------------------------------ */

/* Against the slow way, which shares no code. */
Test(prop_base, slow_way)
{
	uint64_t compared = 0, beyond = 0, count = cases_count("slow way", 40);
	for (uint64_t number = 0; number < count; number++) {
		double tension[MAX_ANCHORS];
		throw_case(&first, number);
		solve(&first);
		if (usable(&first)) {
			bool found = slow_tensions(&first.from, tension);
			compared += found;
			beyond += !found;
			if (found)
				same_tensions(&first, tension, 1e-6, "slow way", number);
		}
		arena_close(&first.arena);
	}
	printf("slow way: %" PRIu64 " compared, %" PRIu64 " out of its range\n", compared, beyond);
	cr_assert_geq(compared * 10, count * 7, "too few could be compared");
}

/* Bed and anchors carry the load, piece by piece, for every state that is accepted. */
Test(prop_base, equilibrium)
{
	uint64_t count = cases_count("equilibrium", 2);
	for (uint64_t number = 0; number < count; number++) {
		throw_case(&first, number);
		solve(&first);
		const struct state *state = &first.state;
		if (state->balance == BALANCED && first.status == DONE) {
			cr_assert_leq(state->residual, 1e-9, "case %" PRIu64 ": residual %g",
			              number, state->residual);
			double sum = -state->load[0], pieces = 0;
			for (size_t i = 0; i < first.base.anchor_count; i++) {
				cr_assert_geq(state->tension[i], 0);
				sum -= state->tension[i];
			}
			for (size_t i = 0; i < first.base.piece_count; i++)
				pieces += state->piece_force[i];
			cr_assert_leq(fabs(sum + state->bed_force), 1e-8 * force_size(&first),
			              "case %" PRIu64, number);
			cr_assert_leq(fabs(pieces - state->bed_force), 1e-9 * force_size(&first));
		}
		arena_close(&first.arena);
	}
}

/* The same base in other axes has the same tensions. */
Test(prop_base, turned_mirrored_moved)
{
	uint64_t count = cases_count("turned, mirrored, moved", 4);
	for (uint64_t number = 0; number < count; number++) {
		throw_case(&first, number);
		solve(&first);
		if (usable(&first)) {
			struct dice dice = dice_open(cases_seed() + 1, number);
			double far = first.base.size;
			double turn = dice_between(&dice, 0, 2 * pi),
			       dx = dice_between(&dice, -far, far);
			case_move(&first.from, turn, number & 1, dx, dice_between(&dice, -far, far),
			          &second.from);
			solve(&second);
			cr_assert_eq(second.state.balance, BALANCED);
			same_tensions(&first, second.state.tension, 1e-7, "other axes", number);
			arena_close(&second.arena);
		}
		arena_close(&first.arena);
	}
}

/* The order in which pieces and anchors are written does not matter. */
Test(prop_base, relabelled)
{
	uint64_t count = cases_count("relabelled", 4);
	for (uint64_t number = 0; number < count; number++) {
		throw_case(&first, number);
		solve(&first);
		if (usable(&first)) {
			size_t pieces = first.from.cell.base.count,
			       anchors = first.from.cell.anchors.count;
			case_move(&first.from, 0, false, 0, 0, &second.from);
			for (size_t i = 0; i < pieces / 2; i++) {
				struct base_piece keep = second.from.piece[i];
				second.from.piece[i] = second.from.piece[pieces - 1 - i];
				second.from.piece[pieces - 1 - i] = keep;
			}
			for (size_t i = 0; i < anchors; i++)
				second.from.cell.anchors.at[i] =
					first.from.cell.anchors.at[anchors - 1 - i];
			solve(&second);
			double back[MAX_ANCHORS];
			for (size_t i = 0; i < anchors; i++)
				back[i] = second.state.tension[anchors - 1 - i];
			same_tensions(&first, back, 1e-7, "other labels", number);
			for (size_t i = 0; i < pieces; i++)
				cr_assert_leq(fabs(first.state.piece_force[i] -
				                   second.state.piece_force[pieces - 1 - i]),
				              1e-7 * force_size(&first));
			arena_close(&second.arena);
		}
		arena_close(&first.arena);
	}
}

/* c times the load gives c times the tensions; and a warm start ends where a cold one does. */
Test(prop_base, proportional)
{
	uint64_t count = cases_count("proportional", 2);
	for (uint64_t number = 0; number < count; number++) {
		throw_case(&first, number);
		solve(&first);
		if (usable(&first)) {
			struct dice dice = dice_open(cases_seed() + 2, number);
			double times = dice_decades(&dice, -2, 2), load[3], settle[3],
			       tension[MAX_ANCHORS];
			for (int k = 0; k < 3; k++)
				load[k] = times * first.state.load[k];
			memcpy(settle, first.state.settle, sizeof settle);
			cr_assert_eq(
				base_solve(&first.base, first.from.bed_ratio, load, settle, NULL),
				DONE);
			base_tensions(&first.base, first.from.bed_ratio, settle, tension);
			for (size_t i = 0; i < first.base.anchor_count; i++)
				tension[i] /= times;
			same_tensions(&first, tension, 1e-7, "proportional", number);
		}
		arena_close(&first.arena);
	}
}

/* --- existence
 * ------------------------------------------------------------------------------------- */

/* Whether the load is a sum of three of the vectors with factors that are not negative (Cramer's
 * rule). */
static bool within_three(const double a[3], const double b[3], const double c[3],
                         const double load[3])
{
	const double *column[3] = {a, b, c};
	double det[4];
	for (int k = 0; k < 4; k++) {
		const double *m[3] = {column[0], column[1], column[2]};
		if (k < 3)
			m[k] = load;
		det[k] = m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
		         - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
		         + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
	}
	if (det[3] == 0)
		return false;
	return det[0] / det[3] >= 0 && det[1] / det[3] >= 0 && det[2] / det[3] >= 0;
}

enum { MOST_VECTORS = CASE_PIECES * CASE_CORNERS + MAX_ANCHORS };

/* Forces that bed and anchors can give: up at each corner of the bed, down at each anchor. */
static size_t vectors(const struct solved *solved, double out[MOST_VECTORS][3])
{
	const struct base *base = &solved->base;
	size_t count = 0;
	for (size_t i = 0; i < base->ring_count; i++)
		for (size_t k = 0; k < base->ring[i].count && base->ring[i].moments[0] > 0;
		     k++, count++) {
			out[count][0] = 1;
			out[count][1] = base->ring[i].at[k].x;
			out[count][2] = base->ring[i].at[k].y;
		}
	for (size_t i = 0; i < base->anchor_count; i++, count++) {
		out[count][0] = -1;
		out[count][1] = -base->anchor[i].x;
		out[count][2] = -base->anchor[i].y;
	}
	return count;
}

/* Caratheodory: what can be carried at all can be carried by three of them. */
static bool carried(const struct solved *solved, const double load[3])
{
	static double vector[MOST_VECTORS][3];
	size_t count = vectors(solved, vector);
	for (size_t i = 0; i < count; i++)
		for (size_t k = i + 1; k < count; k++)
			for (size_t l = k + 1; l < count; l++)
				if (within_three(vector[i], vector[k], vector[l], load))
					return true;
	return false;
}

/* Few anchors and far out, or none: else nearly every load is carried. Half of the loads pull near
 * the line of two anchors, where the answer turns. */
static void throw_existence(struct base_case *base_case, struct dice *dice)
{
	struct anchors *anchors = &base_case->cell.anchors;
	case_random(base_case, dice);
	double far = sqrt(base_case->bed_ratio);
	anchors->count = (size_t)dice_whole(dice, 0, 3);
	for (size_t i = 0; i < anchors->count; i++) {
		anchors->at[i].x += dice_between(dice, 0, 3) * far;
		anchors->at[i].y += dice_between(dice, 0, 1) * far;
	}
	if (anchors->count < 2 || dice_whole(dice, 0, 1))
		return;
	struct vec2 a = anchors->at[0], b = anchors->at[1];
	double along = dice_between(dice, -0.2, 1.2), off = dice_between(dice, -0.1, 0.1);
	double x = a.x + along * (b.x - a.x) - off * (b.y - a.y),
	       y = a.y + along * (b.y - a.y) + off * (b.x - a.x);
	base_case->load[0] = -1;
	base_case->load[1] = -x;
	base_case->load[2] = -y;
}

/* The facets' answer against all triples. */
Test(prop_base, existence)
{
	uint64_t count = cases_count("existence", 10), answers[3] = {0, 0, 0};
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed() + 3, number);
		throw_existence(&first.from, &dice);
		arena_open(&first.arena, NULL, NULL);
		cr_assert_eq(base_prepare(&first.from.cell, &first.arena, &first.base), DONE);
		const struct base *base = &first.base;
		const double *load = first.from.load;
		const double scaled[3] = {load[0],
		                          (load[1] - base->centre[0] * load[0]) / base->size,
		                          (load[2] - base->centre[1] * load[0]) / base->size};
		enum balance balance = base_balance(base, load);
		answers[balance]++;
		if (balance != LIMIT)
			cr_assert_eq(balance == BALANCED, carried(&first, scaled),
			             "seed %" PRIu64 " case %" PRIu64, cases_seed(), number);
		arena_close(&first.arena);
	}
	printf("existence: %" PRIu64 " balanced, %" PRIu64 " limit, %" PRIu64 " none\n",
	       answers[BALANCED], answers[LIMIT], answers[NO_EQUILIBRIUM]);
	cr_assert(answers[BALANCED] > count / 5 && answers[NO_EQUILIBRIUM] > count / 5);
}

/* A load on the edge of the hull, with nothing to hold it, is the limit; a step in is balanced. */
Test(prop_base, edge_of_the_hull)
{
	uint64_t count = cases_count("edge of the hull", 10);
	for (uint64_t number = 0; number < count; number++) {
		throw_case(&first, number);
		first.from.cell.anchors.count = 0;
		arena_open(&first.arena, NULL, NULL);
		cr_assert_eq(base_prepare(&first.from.cell, &first.arena, &first.base), DONE);
		const struct base *base = &first.base;
		struct dice dice = dice_open(cases_seed() + 4, number);
		size_t edge = (size_t)dice_whole(&dice, 0, (int)base->hull_count - 1);
		struct vec2 a = base->hull[edge], b = base->hull[(edge + 1) % base->hull_count],
			    in = {0, 0};
		for (size_t i = 0; i < base->hull_count; i++) {
			in.x += base->hull[i].x / (double)base->hull_count;
			in.y += base->hull[i].y / (double)base->hull_count;
		}
		double share = dice_between(&dice, 0.1, 0.9), n = 1e3;
		struct vec2 at = {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
		const double steps[3] = {0, 1e-3, -1e-3};
		const enum balance expected[3] = {LIMIT, BALANCED, NO_EQUILIBRIUM};
		for (int k = 0; k < 3; k++) {
			double x = at.x + steps[k] * (in.x - at.x),
			       y = at.y + steps[k] * (in.y - at.y);
			cr_assert_eq(base_balance(base, (const double[]){n, n * x, n * y}),
			             expected[k], "case %" PRIu64 " step %g", number, steps[k]);
		}
		arena_close(&first.arena);
	}
}

/* --- headings
 * --------------------------------------------------------------------------------------- */

struct heading_load { double steady[3], turning; };

static bool tensions_at(const struct solved *solved, const struct heading_load *load,
                        double heading, double settle[3], double tension[])
{
	const double at[3] = {load->steady[0], load->steady[1] + load->turning * cos(heading),
	                      load->steady[2] + load->turning * sin(heading)};
	enum status status = base_solve(&solved->base, solved->from.bed_ratio, at, settle, NULL);
	base_tensions(&solved->base, solved->from.bed_ratio, settle, tension);
	return status == DONE;
}

/* Largest step of any tension between two headings; negative where one was refused. */
static double step_between(const struct solved *solved, const struct heading_load *load,
                           double from, double to, double settle[3])
{
	double a[MAX_ANCHORS], b[MAX_ANCHORS], most = 0;
	if (!tensions_at(solved, load, from, settle, a) ||
	    !tensions_at(solved, load, to, settle, b))
		return -1;
	for (size_t i = 0; i < solved->base.anchor_count; i++) {
		cr_assert(isfinite(a[i]) && isfinite(b[i]));
		most = fmax(most, fabs(a[i] - b[i]));
	}
	return most;
}

/* Tension over 3 600 headings is finite, and has no jump: a hundredth of a tenth of a degree
 * changes it by at most half as much. False where the base pries so hard that one is refused. */
static bool check_headings(const struct solved *solved, const struct heading_load *load,
                           uint64_t number)
{
	enum { HEADINGS = 3600 };
	double settle[3] = {0, 0, 0}, size = load->steady[0];
	for (int h = 0; h < HEADINGS; h++) {
		double from = 2 * pi * h / HEADINGS, step = 2 * pi / HEADINGS;
		double change = step_between(solved, load, from, from + step, settle);
		double fine = step_between(solved, load, from, from + step / 100, settle);
		if (change < 0 || fine < 0)
			return false;
		size = fmax(size, change);
		cr_assert_leq(fine, fmax(change, 1e-3 * size) / 2,
		              "case %" PRIu64 " heading %d: %g, %g", number, h, change, fine);
	}
	return true;
}

Test(prop_base, continuous_over_headings)
{
	uint64_t count = cases_count("continuous over headings", 500), done = 0, refused = 0;
	for (uint64_t number = 0; done < count; number++) {
		throw_case(&first, number);
		arena_open(&first.arena, NULL, NULL);
		cr_assert_eq(base_prepare(&first.from.cell, &first.arena, &first.base), DONE);
		double down = fabs(first.from.load[0]);
		struct heading_load load = {{down, 0, 0}, down * first.base.size / 2};
		load.steady[1] = down * first.base.centre[0];
		load.steady[2] = down * first.base.centre[1];
		if (first.base.facet_count == 0 && down > 0) {
			bool through = check_headings(&first, &load, number);
			done += through;
			refused += !through;
		}
		arena_close(&first.arena);
	}
	cr_assert_leq(refused * 20, count, "%" PRIu64 " of %" PRIu64 " refused", refused, count);
}

/* --- wild stiffness
 * --------------------------------------------------------------------------------- */

/* Stiffness ratios over seven decades, loads that pry on a spot: how the solver does. What it
 * refuses needs tilts 1e7 to 1e14 times those of full contact, which doubles cannot hold together
 * with the tension that hangs on their difference (seen by running the same code in quadruple
 * precision). It must be rare, and must not happen where the load presses inside the bed's hull and
 * the anchors are softer than the bed. */
Test(prop_base, wild_stiffness)
{
	uint64_t count = cases_count("wild stiffness", 1), solved = 0, refused = 0, loose = 0;
	double iterations = 0, worst_residual = 0;
	int most = 0;
	for (uint64_t number = 0; number < count; number++) {
		throw_case(&first, number);
		solve(&first);
		const struct state *state = &first.state;
		if (state->balance == BALANCED && first.status == DONE) {
			solved++;
			iterations += first.iterations;
			most = first.iterations > most ? first.iterations : most;
			worst_residual = fmax(worst_residual, state->residual);
			loose += state->residual > 1e-12;
		} else if (state->balance == BALANCED) {
			refused++;
			struct vec2 at = {state->load[1] / state->load[0],
			                  state->load[2] / state->load[0]};
			bool presses = state->load[0] > 0 &&
			               plane_contains(first.base.hull, first.base.hull_count, at,
			                              0);
			cr_assert_not(presses && state->bed_ratio < first.base.area,
			              "seed %" PRIu64 " case %" PRIu64, cases_seed(), number);
		}
		arena_close(&first.arena);
	}
	printf("wild stiffness: %" PRIu64
	       " solved, iterations mean %.2f, worst %d; residual worst %.2g, above "
	       "1e-12 in %" PRIu64 "; refused %" PRIu64 "\n",
	       solved, iterations / (double)solved, most, worst_residual, loose, refused);
	cr_assert_leq(refused, count / 200 + 3, "more than one in two hundred refused");
}

/* A base as people build it: a frame, a plate or four pads, anchors near the corners (two, three or
 * four of them), steel against concrete, any load up to ten times what turns the base over. */
static void throw_ordinary(struct base_case *base_case, struct dice *dice)
{
	double length = dice_between(dice, 300, 3000), width = dice_between(dice, 300, 3000);
	double margin = dice_between(dice, 10, 100);
	int kind = dice_whole(dice, 0, 2), left_out = dice_whole(dice, 0, 5);
	case_clear(base_case);
	if (kind == 0)
		case_rectangle(base_case, 0, 0, length, width);
	if (kind == 1) {
		double x = length / 2, y = width / 2, in = 1 - 2 * margin / fmin(length, width);
		const struct vec2 frame[] = {{-x, -y}, {x, -y}, {x, y}, {-x, y}};
		const struct vec2 opening[] = {
			{-x * in, -y * in}, {x * in, -y * in}, {x * in, y * in}, {-x * in, y * in}};
		case_outline(base_case, frame, 4, in > 0.05 ? opening : NULL, 4);
	}
	for (int i = 0; i < 4; i++) {
		double x = (i & 1 ? 1 : -1) * (length / 2 - margin),
		       y = (i & 2 ? 1 : -1) * (width / 2 - margin);
		if (kind == 2)
			case_pad(base_case, x, y, 2 * margin, 2 * margin);
		if (i != left_out && !(left_out == 3 && i == 0))
			case_anchor(base_case, x, y);
	}
	double size = fmax(length, width) / 2, force = dice_decades(dice, 2, 5);
	double moment = force * size * dice_decades(dice, -2, 1),
	       heading = dice_between(dice, 0, 2 * pi);
	/* half of the cases push straight or along a diagonal, where two corners act alike */
	if (dice_whole(dice, 0, 1))
		heading = pi / 4 * dice_whole(dice, 0, 7);
	base_case->bed_ratio = dice_decades(dice, 1.5, 4);
	base_case->load[0] = dice_whole(dice, 0, 4) ? force : -force;
	base_case->load[1] = moment * cos(heading);
	base_case->load[2] = moment * sin(heading);
}

/* None of them is refused, and hardly any is above 1e-12. */
Test(prop_base, ordinary_bases)
{
	uint64_t count = cases_count("ordinary bases", 1), loose = 0, balanced = 0;
	double iterations = 0, worst_residual = 0;
	int most = 0;
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed() + 5, number);
		throw_ordinary(&first.from, &dice);
		solve(&first);
		if (first.state.balance == BALANCED) {
			cr_assert_eq(first.status, DONE, "seed %" PRIu64 " case %" PRIu64,
			             cases_seed(), number);
			cr_assert_leq(first.state.residual, 1e-9);
			balanced++;
			iterations += first.iterations;
			most = first.iterations > most ? first.iterations : most;
			worst_residual = fmax(worst_residual, first.state.residual);
			loose += first.state.residual > 1e-12;
		}
		arena_close(&first.arena);
	}
	printf("ordinary bases: %" PRIu64
	       " balanced, iterations mean %.2f, worst %d; residual worst %.2g, above "
	       "1e-12 in %" PRIu64 "\n",
	       balanced, iterations / (double)balanced, most, worst_residual, loose);
	cr_assert_leq(loose * 50, count);
}
