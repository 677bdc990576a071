/* The envelope of a history: plain maxima with their rows, compared with a search by hand. */
#include "../../src/arm/envelope.h"
#include "../support/random_base.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

enum { ROWS = 400, PIECES = 4 };

static struct history_row row_of(uint32_t number, double fx, double fy, double fz, double mx,
                                 double my, double mz)
{
	return (struct history_row){
		number * 0.01, {{fx, fy, fz}, {mx, my, mz}}, number, number + 1};
}

static bool same(const struct history_row *a, const struct history_row *b)
{
	return a->row == b->row && a->line == b->line && a->t <= b->t && a->t >= b->t &&
	       memcmp(&a->wrench, &b->wrench, sizeof a->wrench) == 0;
}

/* By hand: 3-4-5 and 5-12-13 triangles. */
Test(envelope, each_kind_with_its_companions)
{
	const struct history_row row[] = {
		row_of(1, 0, 0, -500, 0, 0, 0),
		row_of(2, 30, -40, -410, 1, 1, -7),
		row_of(3, 1, 2, -900, -5, 12, 3),
		row_of(4, 0, 0, 25, 3, 4, 8),
		row_of(5, 0, 0, -1, 0, 0, -9),
	};
	struct envelope envelope = {0};
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		envelope_add(&envelope, &row[i]);
	static const struct { enum reaction_kind kind; double value; uint32_t row; } expected[] = {
		{REACTION_TILTING, 13, 3}, {REACTION_HORIZONTAL, 50, 2}, {REACTION_UPLIFT, 25, 4}, {REACTION_DOWNFORCE, 900, 3},
		{REACTION_TWISTING, 9, 5},
	};
	cr_assert_eq(envelope.rows, 5);
	for (int i = 0; i < REACTION_KINDS; i++) {
		const struct envelope_entry *entry = &envelope.largest[expected[i].kind];
		cr_assert_eq(entry->value, expected[i].value, "kind %d", (int)expected[i].kind);
		cr_assert(same(&entry->at, &row[expected[i].row - 1]), "kind %d: row %u",
		          (int)expected[i].kind, entry->at.row);
	}
}

/* An arm that never lifts has a negative uplift: the least press, not nothing. */
Test(envelope, least_press_is_a_negative_uplift)
{
	struct envelope envelope = {0};
	struct history_row a = row_of(1, 0, 0, -500, 0, 0, 0), b = row_of(2, 0, 0, -350, 0, 0, 0);
	envelope_add(&envelope, &a);
	envelope_add(&envelope, &b);
	cr_assert_eq(envelope.largest[REACTION_UPLIFT].value, -350);
	cr_assert_eq(envelope.largest[REACTION_UPLIFT].at.row, 2);
}

Test(envelope, of_equal_rows_the_first)
{
	struct envelope envelope = {0};
	for (uint32_t i = 1; i < 9; i++) {
		struct history_row row = row_of(i, 1, 0, -5, i % 2 ? 1 : -1, 0, 2);
		envelope_add(&envelope, &row);
	}
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		cr_assert_eq(envelope.largest[kind].at.row, 1);
}

/* Few different values, so that equal ones are frequent. */
static void random_rows(struct history_row row[ROWS], struct dice *dice)
{
	for (uint32_t i = 0; i < ROWS; i++) {
		double part[6];
		for (int k = 0; k < 6; k++)
			part[k] = dice_whole(dice, -6, 6);
		row[i] = row_of(i + 1, part[0], part[1], part[2], part[3], part[4], part[5]);
	}
}

static void same_envelope(const struct envelope *a, const struct envelope *b)
{
	cr_assert_eq(a->rows, b->rows);
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		cr_assert_eq(a->largest[kind].value, b->largest[kind].value);
		cr_assert(same(&a->largest[kind].at, &b->largest[kind].at), "kind %d", kind);
	}
}

/* Pieces of random lengths, some of them empty, merged in every order of four. */
Test(envelope, merging_does_not_depend_on_the_order)
{
	static struct history_row row[ROWS];
	for (uint64_t number = 0; number < 200; number++) {
		struct dice dice = dice_open(3, number);
		struct envelope whole = {0}, piece[PIECES] = {0};
		random_rows(row, &dice);
		for (int i = 0; i < ROWS; i++) {
			envelope_add(&whole, &row[i]);
			int into = i * PIECES / ROWS;
			envelope_add(&piece[number % 5 == 0 ? into & 1 : into], &row[i]);
		}
		struct envelope merged = {0};
		for (int used = 0; used < PIECES; used++)
			envelope_merge(&merged, &piece[(used * 3 + (int)number) % PIECES]);
		same_envelope(&whole, &merged);
	}
}

/* Every row a piece of its own. */
Test(envelope, merging_single_rows)
{
	static struct history_row row[ROWS];
	struct dice dice = dice_open(5, 0);
	struct envelope whole = {0}, merged = {0};
	random_rows(row, &dice);
	for (int i = 0; i < ROWS; i++) {
		struct envelope piece = {0};
		int at = i * 7 % ROWS;
		envelope_add(&whole, &row[i]);
		envelope_add(&piece, &row[at]);
		envelope_merge(&merged, &piece);
		if (i == 1)
			cr_assert_eq(merged.rows, 2);
	}
	same_envelope(&whole, &merged);
}

/* Turning about z: the largest values stay to rounding, a few ulp of the sums. */
Test(envelope, turning_about_the_vertical)
{
	static struct history_row row[ROWS];
	struct dice dice = dice_open(4, 0);
	random_rows(row, &dice);
	double c = cos(0.7), s = sin(0.7);
	struct envelope plain = {0}, turned = {0};
	for (int i = 0; i < ROWS; i++) {
		const double *f = row[i].wrench.force, *m = row[i].wrench.moment;
		struct history_row other = row_of(row[i].row, c * f[0] - s * f[1],
		                                  s * f[0] + c * f[1], f[2], c * m[0] - s * m[1],
		                                  s * m[0] + c * m[1], m[2]);
		envelope_add(&plain, &row[i]);
		envelope_add(&turned, &other);
	}
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		cr_assert_float_eq(plain.largest[kind].value, turned.largest[kind].value, 1e-14);
}
