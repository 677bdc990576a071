/* Concrete and anchor data that contradict themselves. */
#include "validity_parts.h"
#include <stdio.h>

/* Two statements on one concrete: which of them holds is not for a program to choose. */
static void check_strength(struct validity *validity)
{
	const struct concrete *concrete = &validity->cell->slab.concrete;
	const struct given *given[] = {&concrete->strength_class.given, &concrete->specified.given,
	                               &concrete->cores.given};
	const struct given *second = NULL;
	int count = 0;
	for (size_t i = 0; i < 3; i++)
		if (given[i]->origin != ABSENT) {
			second = given[i];
			count++;
		}
	if (count > 1)
		validity_fault(validity, FAULT_CONTRADICTION, second->mark,
		               "slab.concrete.strength",
		               "keep one; in a setup, write the other one as unknown",
		               "more than one of class, specified and cores");
}

/* Uncracked concrete carries more, so it is never taken without saying why. */
static void check_cracked(struct validity *validity)
{
	const struct concrete *concrete = &validity->cell->slab.concrete;
	if (!is_known(concrete->cracked) || concrete->cracked.value != NO ||
	    is_known(concrete->uncracked_reason))
		return;
	validity_fault(validity, FAULT_MISSING_KEY, concrete->cracked.given.mark,
	               "slab.concrete.cracked", "write cracked: {value: no, reason: what shows it}",
	               "concrete taken as uncracked without a reason");
}

/* An allowed value without its share is no error: the rating checks leave it unproven. */
static void check_basis(struct validity *validity)
{
	const struct rating *rating = &validity->cell->anchors.product.rating;
	if (!is_known(rating->basis) || rating->basis.value != BASIS_ALLOWED)
		return;
	if (is_known(rating->of_ultimate) &&
	    !(rating->of_ultimate.value > 0 && rating->of_ultimate.value <= 1))
		validity_fault(validity, FAULT_RANGE, rating->of_ultimate.given.mark,
		               "anchors.product.rating.of_ultimate",
		               "write a share from 1 % to 100 %",
		               "a share of ultimate that is not between 0 and 100 %%");
}

/* No anchor is made for less; "50.000 N" with a point for the thousands is the usual cause [N]. */
#define LEAST_FORCE 100.0

/* The thousandfold in the unit as written: what was meant where a point stands for thousands. */
void validity_force(struct validity *validity, const struct number *force, const char *path)
{
	if (!is_known(*force) || !(force->value > 0 && force->value < LEAST_FORCE))
		return;
	const struct unit *newton = quantity_unit("N", 1, DIM_FORCE, NULL);
	const struct unit *unit = force->unit ? force->unit : newton;
	char read[40], number[40], thousandfold[40], hint[DIAGNOSTIC_HINT];
	quantity_write(force->value, unit, 6, read, sizeof read);
	number_write(force->value / unit->factor, 6, number, sizeof number);
	quantity_write(1000 * force->value, unit, 6, thousandfold, sizeof thousandfold);
	if (unit == newton)
		snprintf(hint, sizeof hint,
		         "a point begins decimals, 50.000 N is 50 N: write %s kN or %s", number,
		         thousandfold);
	else
		snprintf(hint, sizeof hint, "check the unit; if %s is meant, write that",
		         thousandfold);
	validity_fault(validity, FAULT_RANGE, force->given.mark, path, hint,
	               "%s is too small for an anchor", read);
}

static void check_forces(struct validity *validity)
{
	const struct anchors *anchors = &validity->cell->anchors;
	const struct rating *rating = &anchors->product.rating;
	validity_force(validity, &anchors->needs.tension, "anchors.needs.tension");
	validity_force(validity, &anchors->needs.shear, "anchors.needs.shear");
	validity_force(validity, &rating->tension, "anchors.product.rating.tension");
	validity_force(validity, &rating->shear, "anchors.product.rating.shear");
}

/* A range without its number of cycles says nothing of how long it is carried, nor the reverse. */
static void check_fatigue(struct validity *validity)
{
	const struct rating *rating = &validity->cell->anchors.product.rating;
	bool range = is_known(rating->fatigue_range), cycles = is_known(rating->fatigue_cycles);
	if (range == cycles)
		return;
	validity_fault(validity, FAULT_MISSING_KEY,
	               range ? rating->fatigue_range.given.mark
	                     : rating->fatigue_cycles.given.mark,
	               range ? "anchors.product.rating.fatigue.cycles"
	                     : "anchors.product.rating.fatigue.range",
	               range ? "write cycles, the number for which the range is carried"
	                     : "write range, the highest less the lowest tension that is carried",
	               "a fatigue rating without its %s", range ? "cycles" : "range");
}

/* A table of the data sheet: one column of distances, one or two of shares. */
struct table {
	const char *path, *columns;
	const struct list *list;
	const struct number *(*column)(const struct list *list, size_t row, size_t column);
	size_t column_count;           /* distance first */
};

static const struct number *spacing_column(const struct list *list, size_t row, size_t column)
{
	const struct spacing_row *rows = list->rows;
	return column == 0 ? &rows[row].distance : &rows[row].share;
}

static const struct number *edge_column(const struct list *list, size_t row, size_t column)
{
	const struct edge_row *rows = list->rows;
	return column == 0   ? &rows[row].distance
	       : column == 1 ? &rows[row].tension
	                     : &rows[row].shear;
}

/* The first key of the row that stands in the file, else the list. */
static struct mark row_mark(const struct table *table, size_t row)
{
	struct mark mark = table->list->given.mark;
	for (size_t i = table->column_count; i-- > 0;)
		mark = validity_mark(table->column(table->list, row, i)->given.mark, mark);
	return mark;
}

static bool check_whole(struct validity *validity, const struct table *table, size_t row)
{
	for (size_t i = 0; i < table->column_count; i++) {
		if (is_known(*table->column(table->list, row, i)))
			continue;
		validity_fault(validity, FAULT_MISSING_KEY, row_mark(table, row),
		               validity_row(table->path, row, "").text, table->columns,
		               "a row of the table that is not whole");
		return false;
	}
	return true;
}

/* Values are interpolated between rows: distances must rise; more room never weakens an anchor. */
static void check_rising(struct validity *validity, const struct table *table, size_t row)
{
	for (size_t i = 0; i < table->column_count; i++) {
		double before = table->column(table->list, row - 1, i)->value;
		double now = table->column(table->list, row, i)->value;
		if (i == 0 ? now > before : now >= before)
			continue;
		validity_fault(validity, FAULT_CONTRADICTION, row_mark(table, row),
		               validity_row(table->path, row, "").text,
		               "order the rows by distance; at a greater distance the share is "
		               "never smaller",
		               i == 0 ? "a distance that is not above the one before"
		                      : "a share below the one before");
		return;
	}
}

/* Beyond the last row the full rating is used, so the table must reach it. */
static void check_last(struct validity *validity, const struct table *table)
{
	size_t last = table->list->count - 1;
	for (size_t i = 1; i < table->column_count; i++) {
		double share = table->column(table->list, last, i)->value;
		if (share >= 1 && share <= 1)
			continue;
		validity_fault(validity, FAULT_CONTRADICTION, row_mark(table, last),
		               validity_row(table->path, last, "").text,
		               "add the distance at which the full rating is reached, with 100 %",
		               "the last row has %s, not 100 %%",
		               validity_show(validity, share, DIM_SHARE).text);
		return;
	}
}

static void check_table(struct validity *validity, const struct table *table)
{
	bool whole = table->list->count > 0;
	for (size_t row = 0; row < table->list->count; row++)
		whole = check_whole(validity, table, row) && whole;
	if (!whole)
		return;
	for (size_t row = 1; row < table->list->count; row++)
		check_rising(validity, table, row);
	check_last(validity, table);
}

void validity_product(struct validity *validity)
{
	const struct rating *rating = &validity->cell->anchors.product.rating;
	const struct table spacing = {"anchors.product.rating.spacing",
	                              "write distance and share in every row", &rating->spacing,
	                              spacing_column, 2};
	const struct table edge = {"anchors.product.rating.edge",
	                           "write distance, tension and shear in every row", &rating->edge,
	                           edge_column, 3};
	check_strength(validity);
	check_cracked(validity);
	check_basis(validity);
	check_forces(validity);
	check_fatigue(validity);
	check_table(validity, &spacing);
	check_table(validity, &edge);
}
