/* Validity from limits to dates; the pieces by topic stand in the files validity_*.c. */
#include "validity.h"
#include "validity_parts.h"
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

void validity_fault(struct validity *validity, enum fault fault, struct mark mark, const char *path,
                    const char *hint, const char *format, ...)
{
	char message[DIAGNOSTIC_MESSAGE];
	va_list list;
	va_start(list, format);
	vsnprintf(message, sizeof message, format, list);
	va_end(list);
	diagnose(validity->to, ERROR, fault, mark, path, hint, "%s", message);
}

/* A row of a list has no mark of its own: its first key that has one stands for it. */
struct mark validity_mark(struct mark first, struct mark other)
{
	return first.line > 0 ? first : other;
}

struct shown validity_show(const struct validity *validity, double value, enum dimension dimension)
{
	struct shown shown;
	enum unit_system system = is_known(validity->cell->show)
	                                  ? (enum unit_system)validity->cell->show.value
	                                  : UNITS_METRIC;
	quantity_write(value, quantity_display_unit(dimension, system), 4, shown.text,
	               sizeof shown.text);
	return shown;
}

struct shown validity_show_number(const struct validity *validity, const struct number *number,
                                  enum dimension dimension)
{
	struct shown shown;
	if (!number->unit)
		return validity_show(validity, number->value, dimension);
	quantity_write(number->value, number->unit, 6, shown.text, sizeof shown.text);
	return shown;
}

struct validity_path validity_row(const char *list, size_t index, const char *key)
{
	struct validity_path path;
	snprintf(path.text, sizeof path.text, "%s[%zu]%s%s", list, index + 1, key[0] ? "." : "",
	         key);
	return path;
}

/* A pad counts as one ring, as an outline does; so does each opening. */
static size_t base_rings(const struct cell *cell)
{
	const struct base_piece *piece = cell->base.rows;
	size_t rings = 0;
	for (size_t i = 0; i < cell->base.count; i++)
		rings += 1 + piece[i].holes.count;
	return rings;
}

static size_t most_vertices(const struct cell *cell)
{
	const struct base_piece *piece = cell->base.rows;
	size_t most = cell->slab.outline.count;
	for (size_t i = 0; i < cell->base.count; i++) {
		const struct ring *hole = piece[i].holes.rows;
		most = piece[i].outline.count > most ? piece[i].outline.count : most;
		for (size_t k = 0; k < piece[i].holes.count; k++)
			most = hole[k].count > most ? hole[k].count : most;
	}
	return most;
}

/* The kernels have room for so much and no more; the reader has counted lists, a program may not
 * have. */
static bool check_limits(struct validity *validity)
{
	const struct cell *cell = validity->cell;
	const struct {
		const char *path, *what;
		struct mark mark;
		size_t count, limit;
	} limits[] = {
		{"anchors.at", "anchors", cell->anchors.at_given.mark, cell->anchors.count,
	         MAX_ANCHORS},
		{"cell.parts", "parts", cell->parts.given.mark, cell->parts.count, MAX_PARTS},
		{"cell.base", "outlines, holes and pads", cell->base.given.mark, base_rings(cell),
	         MAX_RINGS},
		{"cell.base", "points of one outline", cell->base.given.mark, most_vertices(cell),
	         MAX_VERTICES},
		{"setups", "setups", cell->setups.given.mark, cell->setups.count, MAX_SETUPS},
		{"loads", "further loads", cell->loads.given.mark, cell->loads.count, MAX_LOADS},
		{"slab.joints", "joints", cell->slab.joints.given.mark, cell->slab.joints.count,
	         MAX_JOINTS},
		{"slab.old_holes", "old holes", cell->slab.old_holes.given.mark,
	         cell->slab.old_holes.count, MAX_OLD_HOLES},
		{"cell.casters", "casters", cell->casters.given.mark, cell->casters.count,
	         MAX_CASTERS},
		{"arm.chain.joints", "joints of the arm", cell->arm.chain.joints.given.mark,
	         cell->arm.chain.joints.count, MAX_CHAIN_JOINTS},
		{"arm.motion.joints", "rows", cell->arm.motion.joints.given.mark,
	         cell->arm.motion.joints.count, MAX_CHAIN_JOINTS},
		{"arm.motion.cycle", "poses", cell->arm.motion.cycle.given.mark,
	         cell->arm.motion.cycle.count, MAX_CYCLE_POSES},
		{"arm.history", "histories", cell->arm.history.given.mark, cell->arm.history.count,
	         MAX_HISTORIES},
	};
	bool good = true;
	for (size_t i = 0; i < sizeof limits / sizeof limits[0]; i++) {
		if (limits[i].count <= limits[i].limit)
			continue;
		validity_fault(validity, FAULT_SIZE, limits[i].mark, limits[i].path, "",
		               "%zu %s, at most %zu can be taken", limits[i].count, limits[i].what,
		               limits[i].limit);
		good = false;
	}
	return good;
}

/* By hand, since the library's functions read signs and spaces too, which no date has. */
static int number_of(const char *text, size_t length)
{
	int number = 0;
	for (size_t i = 0; i < length; i++) {
		if (text[i] < '0' || text[i] > '9')
			return -1;
		number = number * 10 + (text[i] - '0');
	}
	return number;
}

static int days_in_month(int year, int month)
{
	static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
	bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
	return month == 2 && leap ? 29 : days[month - 1];
}

/* ISO 8601 calendar date, extended format */
static bool is_date(const char *text)
{
	if (strlen(text) != 10 || text[4] != '-' || text[7] != '-')
		return false;
	int year = number_of(text, 4), month = number_of(text + 5, 2), day = number_of(text + 8, 2);
	return year >= 1 && month >= 1 && month <= 12 && day >= 1 &&
	       day <= days_in_month(year, month);
}

static void check_record(struct validity *validity)
{
	const struct text *date = &validity->cell->record.date;
	if (is_known(*date) && !is_date(date->value))
		validity_fault(validity, FAULT_RANGE, date->given.mark, "record.date",
		               "write year-month-day, such as 2026-11-20", "'%.40s' is not a date", date->value);
}

static void check_choices(struct validity *validity)
{
	const struct number *weight = &validity->cell->choices.stabilising_weight;
	if (is_known(*weight) && !(weight->value > 0 && weight->value <= 1))
		validity_fault(validity, FAULT_RANGE, weight->given.mark,
		               "choices.stabilising_weight",
		               "write a factor above 0 and up to 1; the default is 0.6",
		               "the factor on stabilising weights is not between 0 and 1");
}

static void validate(struct validity *validity)
{
	check_record(validity);
	check_choices(validity);
	if (!check_limits(validity))
		return;
	validity_slab(validity);
	validity_base(validity);
	validity_casters(validity);
	validity_anchors(validity);
	validity_loads(validity);
	validity_product(validity);
	validity_strength(validity);
	validity_arm(validity);
	validity_motion(validity);
	validity_earthquake(validity);
}

void cell_validate(const struct cell *cell, struct arena *scratch, struct diagnostics *to)
{
	struct validity validity = {.cell = cell, .scratch = scratch, .to = to};
	validate(&validity);
}

void cell_validate_setup(const struct cell *cell, const struct cell *of, struct arena *scratch,
                         struct diagnostics *to)
{
	struct validity validity = {.cell = cell, .of = of, .scratch = scratch, .to = to};
	validate(&validity);
}
