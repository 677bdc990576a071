/* What people write instead of the format, or beside it: the word none, misplaced keys, decimal
 * commas. */
#include "../../src/cell/fields.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <string.h>

static struct reading reading;

static const struct cell *read_good(const char *text)
{
	reading_open(&reading, text);
	cr_assert_eq(reading.status, DONE, "%s\n%s", text, reading_faults(&reading));
	return reading.cell;
}

/* The word stands for a known nothing; its row may come before or behind the list's. */
Test(reader_slips, none_is_a_known_nothing)
{
	const struct cell *cell = read_good("standfast: 1\nanchors: {at: unknown}\nloads: none\n"
	                                    "setups: none\n");
	cr_assert_eq(cell->loads.given.origin, GIVEN);
	cr_assert_eq(cell->loads.given.mark.line, 3);
	cr_assert_eq(cell->loads.count, 0);
	cr_assert_eq(cell->setups.given.origin, GIVEN);
	cr_assert_eq(cell->setups.count, 0);
	reading_close(&reading);
	cell = read_good("standfast: 1\nanchors: {at: unknown}\nloads: []\nsetups: unknown\n");
	cr_assert_eq(cell->loads.given.origin, ABSENT, "nothing written is nothing known");
	cr_assert_eq(cell->setups.given.origin, ABSENT);
	reading_close(&reading);
	cell = read_good("standfast: 1\nanchors: {at: unknown}\n"
	                 "loads: [{force: 3 N, direction: any}]\n"
	                 "setups: [{name: a}, {name: b, loads: none}]\n");
	const struct setup *setup = cell->setups.rows;
	cr_assert_eq(setup[0].cell->loads.count, 1);
	cr_assert_eq(setup[1].cell->loads.count, 0, "a setup takes the load away");
	cr_assert_eq(setup[1].cell->loads.given.origin, GIVEN);
	reading_close(&reading);
}

/* Below `anchors`, which every row of test_reader.c has already. */
Test(reader_slips, a_misplaced_key_is_sent_to_the_nearest_place)
{
	reading_open(&reading, "standfast: 1\nanchors: {at: unknown, product: {tension: 50 kN}}\n");
	const struct diagnostic *one = reading_find(&reading, "anchors.product.tension");
	cr_assert_not_null(one);
	cr_assert_not_null(strstr(one->hint, "stands at anchors.product.rating.tension;"), "%s",
	                   one->hint);
	cr_assert_eq(reading.list.errors, 1);
	reading_close(&reading);
}

/* Where several numbers of a text are cut at once, none of their halves is taken for a key. */
Test(reader_slips, a_decimal_comma_between_braces_is_one_mistake_a_number)
{
	reading_open(&reading, "standfast: 1\nanchors: {at: unknown, product: {embedment: 7,5 cm, "
	                       "shaft: 1,5 cm, hole: {diameter: 1,2 cm}}}\n");
	cr_assert_eq(reading.list.errors, 3, "%s", reading_faults(&reading));
	cr_assert_not_null(reading_find(&reading, "anchors.product.shaft"));
	reading_close(&reading);
}
