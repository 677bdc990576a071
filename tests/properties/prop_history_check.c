/* Properties of histories against the anchors: random rows on random bases. SEED and CASES may be
 * set in the environment. */
#include "../support/cases.h"
#include "../support/history_cell.h"
#include "../support/random_base.h"

#include <criterion/criterion.h>
#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

enum { MOST_ROWS = 12, ROOM = 4096, ANCHORS = 4, PLACE_CHANGES = 7, RATIOS = 7 };
#define SAME 1e-7       /* relative: equilibria to 1e-12, worse where the base pries on a corner */

struct rows { double value[MOST_ROWS][6]; size_t count; };

static const double pi = 3.14159265358979323846;

static void random_rows(struct dice *dice, struct rows *rows)
{
	rows->count = (size_t)dice_whole(dice, 1, MOST_ROWS);
	for (size_t i = 0; i < rows->count; i++)
		for (int k = 0; k < 6; k++)
			rows->value[i][k] = dice_between(dice, -1, 1) * (k == 2 ? 2000 : 3000);
}

/* Rows from..to as a CSV. */
static const char *write_rows(const struct rows *rows, size_t from, size_t to, char *out)
{
	size_t length = (size_t)snprintf(out, ROOM, HISTORY_HEAD);
	for (size_t i = from; i < to; i++) {
		const double *v = rows->value[i];
		length += (size_t)snprintf(out + length, ROOM - length,
		                           "%zu,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g\n", i, v[0], v[1],
		                           v[2], v[3], v[4], v[5]);
	}
	return out;
}

/* A plate with four anchors and a boxed or a plain part, turned by an angle about the origin, the
 * arm turned with it. */
struct place {
	double half[2], in[2], angle;
	bool boxed;
	char text[5][512];
	struct change change[PLACE_CHANGES];
};

static void put_points(char *out, const double half[2], double angle)
{
	static const double sign[4][2] = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
	size_t length = (size_t)snprintf(out, 256, "{unit: mm, points: [");
	for (int i = 0; i < 4; i++) {
		double x = sign[i][0] * half[0], y = sign[i][1] * half[1];
		length += (size_t)snprintf(out + length, 256 - length, "%s[%.13g, %.13g]",
		                           i ? ", " : "", x * cos(angle) - y * sin(angle),
		                           x * sin(angle) + y * cos(angle));
	}
	snprintf(out + length, 256 - length, "]}");
}

static void set_place(struct place *place)
{
	char points[256];
	put_points(points, place->half, place->angle);
	snprintf(place->text[0], 512, "[{name: plate, outline: %s}]", points);
	put_points(place->text[1], place->in, place->angle);
	snprintf(place->text[2], 512, "%.17g deg", place->angle * 180 / pi);
	snprintf(place->text[3], 512, "%s",
	         place->boxed
	                 ? "[{mass: 600 kg, box: {from: [-200 mm, -100 mm, 0 mm], to: [300 mm, "
	                   "250 mm, 900 mm]}}]"
	                 : "[{mass: 600 kg, at: [0 mm, 0 mm, 300 mm]}]");
	snprintf(place->text[4], 512, "[0 mm, 0 mm, 700 mm]");
	static const char *const path[5] = {"cell.base", "anchors.at", "arm.turned", "cell.parts",
	                                    "arm.mount"};
	for (int i = 0; i < 5; i++)
		place->change[i] = (struct change){path[i], place->text[i]};
	/* the codes see each row too, with factors of their own */
	place->change[5] = (struct change){"methods", "[rating, aci318, en1992_4]"};
	place->change[6] = (struct change){
		"anchors.product.strength",
		"{yield: 560 MPa, ultimate: 700 MPa, ductile: yes, elongation: 15 %, "
		"sleeve_in_shear_plane: no, least_spacing: 70 mm, least_edge: 70 mm, "
		"at_concrete: 20 MPa, evidence: data_sheet, "
		"aci318: {category: 1, pullout: {cracked: 16 kN}, splitting_edge: 140 mm}, "
		"en1992_4: {installation_factor: 1.0, pullout: {cracked: 16 kN}, "
		"splitting_edge: 140 mm, bending: 100 N m}}"};
}

static void random_place(struct dice *dice, bool boxed, struct place *place)
{
	*place = (struct place){.boxed = boxed};
	for (int k = 0; k < 2; k++) {
		place->half[k] = dice_between(dice, 300, 700);
		place->in[k] = place->half[k] - dice_between(dice, 40, 150);
	}
	set_place(place);
}

/* What must agree. */
struct outcome { double tension[ANCHORS], shear[ANCHORS], ratio[RATIOS]; };
static const char *const ids[RATIOS] = {
	"rating.tension", "rating.shear", "rating.interaction", "aci318.breakout",
	"aci318.interaction", "en1992_4.both_steel", "en1992_4.both_concrete"};

static const struct finding *finding_of(struct trial *trial, const char *id)
{
	const struct finding *finding = &trial_check(trial, id)->finding;
	cr_assert(finding->computed, "%s is not computed", id);
	return finding;
}

static void find_outcome(const char *csv, const struct place *place, struct outcome *out)
{
	struct trial trial;
	history_trial_open(&trial, HISTORY_STILL, csv, place->change, PLACE_CHANGES);
	for (size_t i = 0; i < ANCHORS; i++) {
		out->tension[i] = trial.result->anchor[i].tension;
		out->shear[i] = trial.result->anchor[i].shear;
	}
	for (int k = 0; k < RATIOS; k++)
		out->ratio[k] = finding_of(&trial, ids[k])->ratio;
	trial_close(&trial);
}

static void same(const char *what, uint64_t number, const struct outcome *a,
                 const struct outcome *b)
{
	double tension = 1, shear = 1;
	for (size_t i = 0; i < ANCHORS; i++) {
		tension = fmax(tension, a->tension[i]);
		shear = fmax(shear, a->shear[i]);
	}
	for (size_t i = 0; i < ANCHORS; i++) {
		cr_assert_lt(fabs(a->tension[i] - b->tension[i]), SAME * tension,
		             "%s, case %" PRIu64 ": A%zu %.12g and %.12g", what, number, i + 1,
		             a->tension[i], b->tension[i]);
		cr_assert_lt(fabs(a->shear[i] - b->shear[i]), SAME * shear);
	}
	for (int k = 0; k < RATIOS; k++)
		cr_assert_lt(fabs(a->ratio[k] - b->ratio[k]), SAME * (1 + a->ratio[k]),
		             "%s, case %" PRIu64 ": %s %.12g and %.12g", what, number, ids[k],
		             a->ratio[k], b->ratio[k]);
}

/* The worst of a history is the worst of its rows, each checked alone. */
Test(prop_history_check, worst_of_single_rows)
{
	uint64_t count = cases_count("worst of single rows", 50);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed(), number);
		struct rows rows;
		struct place place;
		struct outcome whole, most = {0}, one;
		char csv[ROOM];
		random_rows(&dice, &rows);
		random_place(&dice, number & 1, &place);
		find_outcome(write_rows(&rows, 0, rows.count, csv), &place, &whole);
		for (size_t i = 0; i < rows.count; i++) {
			find_outcome(write_rows(&rows, i, i + 1, csv), &place, &one);
			for (size_t a = 0; a < ANCHORS; a++) {
				most.tension[a] = fmax(most.tension[a], one.tension[a]);
				most.shear[a] = fmax(most.shear[a], one.shear[a]);
			}
			for (int k = 0; k < RATIOS; k++)
				most.ratio[k] = fmax(most.ratio[k], one.ratio[k]);
		}
		same("worst of single rows", number, &whole, &most);
	}
}

/* Base, anchors and arm turned together: the same forces, whose axes turn with the arm. */
Test(prop_history_check, turned_with_the_cell)
{
	uint64_t count = cases_count("turned with the cell", 50);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed() + 1, number);
		struct rows rows;
		struct place place;
		struct outcome one, other;
		char csv[ROOM];
		random_rows(&dice, &rows);
		random_place(&dice, false, &place);
		write_rows(&rows, 0, rows.count, csv);
		find_outcome(csv, &place, &one);
		place.angle = dice_between(&dice, -pi, pi);
		set_place(&place);
		find_outcome(csv, &place, &other);
		same("turned with the cell", number, &one, &other);
	}
}

/* A row that comes again changes nothing, and neither does the order of the rows. */
Test(prop_history_check, order_of_rows)
{
	uint64_t count = cases_count("order of rows", 50);
	for (uint64_t number = 0; number < count; number++) {
		struct dice dice = dice_open(cases_seed() + 2, number);
		struct rows rows, turned;
		struct place place;
		struct outcome one, other;
		char csv[ROOM];
		random_rows(&dice, &rows);
		rows.count = rows.count < MOST_ROWS ? rows.count : MOST_ROWS - 1;
		random_place(&dice, number & 1, &place);
		find_outcome(write_rows(&rows, 0, rows.count, csv), &place, &one);
		for (size_t i = 0; i < rows.count; i++)
			memcpy(turned.value[i], rows.value[rows.count - 1 - i],
			       sizeof turned.value[i]);
		memcpy(turned.value[rows.count], turned.value[rows.count - 1],
		       sizeof turned.value[0]);
		turned.count = rows.count + 1;
		find_outcome(write_rows(&turned, 0, turned.count, csv), &place, &other);
		same("order of rows", number, &one, &other);
	}
}
