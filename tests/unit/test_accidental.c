/* Accidental actions: hand solutions, and that the tables compiled in are those of refdata. */
#include "../../src/loads/accidental.h"
#include "../../src/loads/rare_combination.h"
#include "../../src/loads/seismic_component.h"
#include "../support/csv_table.h"
#include "../support/traced.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static void near(double value, double expected, double tolerance, const char *what)
{
	cr_assert(fabs(value - expected) <= tolerance, "%s: %.15g, expected %.15g", what, value,
	          expected);
}

static const struct accidental_load *row(const char *id)
{
	const struct accidental_load *found = accidental_load(id);
	cr_assert_not_null(found, "no row %s", id);
	return found;
}

/* --- the few computations ------------------------------------------------------------------- */

/* 20 % of the weight until 250 N is reached at 1250 N. */
Test(accidental, push)
{
	near(accidental_push(row("push_61010"), 600, NULL), 120, 1e-12, "share");
	near(accidental_push(row("push_61010"), 1250, NULL), 250, 1e-12, "both");
	near(accidental_push(row("push_61010"), 8000, NULL), 250, 1e-12, "cap");
	near(accidental_push(row("push_62368_2014"), 8000, NULL), 100, 1e-12, "cap");
	near(accidental_push(row("push_62368_2014"), 100, NULL), 13, 1e-12, "share");
}

/* FL2: 31 kN empty and 15 kN lifted give 230 kN (EN 1991-1-1 Table 6.5, from memory). */
Test(accidental, fork_truck)
{
	near(fork_truck_force(46e3, NULL), 230e3, 1e-9, "FL2");
	near(row("fork_truck_fl2")->high, 230e3, 0, "FL2");
	size_t count, trucks = 0;
	const struct accidental_load *list = accidental_loads(&count);
	for (size_t i = 0; i < count; i++)
		if (list[i].kind == ACCIDENT_FORK_TRUCK) {
			int loaded = 0;
			const char *words = strstr(list[i].title, ": ");
			for (words += 2; *words >= '0' && *words <= '9'; words++)
				loaded = 10 * loaded + (*words - '0');
			near(list[i].high, fork_truck_force(loaded * 1e3, NULL), 1e-9, list[i].id);
			cr_assert_not_null(strstr(list[i].advice, "protector"));
			trucks++;
		}
	cr_assert_eq(trucks, 6);
}

/* 1000 kg with 1 m/s on 1e6 N/m: sqrt(1e9) = 31.6 kN; by energy, m v^2/2 = F^2/(2 k). */
Test(accidental, hard_impact)
{
	double force = hard_impact_force(1000, 1000, 1000, NULL);
	near(force, sqrt(1e9), 1e-9, "F");
	near(force * force / (2 * 1e6), 0.5 * 1000 * 1 * 1, 1e-9, "energy");
	near(hard_impact_force(2000, 1000, 1000, NULL), 2 * force, 1e-9, "speed");
}

Test(accidental, leaning)
{
	near(accidental_leaning(row("leaning_e"), 1500, NULL), 3000, 1e-9, "2 kN/m on 1.5 m");
}

Test(accidental, written_calculation)
{
	struct arena arena;
	struct trace trace;
	arena_open(&arena, NULL, NULL);
	trace_open(&trace, &arena);
	double push = accidental_push(row("push_61010"), 600, &trace);
	double lean = accidental_leaning(row("leaning_e"), 1500, &trace);
	double truck = fork_truck_force(31e3, &trace);
	double impact = hard_impact_force(1234, 567, 890, &trace);
	cr_assert_eq(traced_expressions(&trace, "accidental"), 4);
	cr_assert_eq(traced_value(&trace, "F_push"), push);
	cr_assert_eq(traced_value(&trace, "F_lean"), lean);
	cr_assert_eq(traced_value(&trace, "F_truck"), truck);
	cr_assert_eq(traced_value(&trace, "F_impact"), impact);
	/* what is from memory says so */
	for (size_t i = 0; i < trace.count; i++)
		if (strcmp(trace.steps[i].symbol, "F_push") == 0)
			cr_assert_not_null(strstr(trace.steps[i].source, "(from memory)"));
	arena_close(&arena);
}

/* --- the table ------------------------------------------------------------------------------ */

Test(accidental, rows_make_sense)
{
	size_t count;
	const struct accidental_load *list = accidental_loads(&count);
	for (size_t i = 0; i < count; i++) {
		const struct accidental_load *it = &list[i];
		cr_assert(it->low > 0 && it->low <= it->high, "%s", it->id);
		cr_assert_geq(it->across, 0);
		cr_assert_leq(it->across, it->high);
		cr_assert_leq(it->from_height, it->to_height);
		cr_assert_eq(it->share > 0, it->kind == ACCIDENT_PUSH, "%s", it->id);
		cr_assert_eq(it->unit == UNIT_LINE_LOAD, it->kind == ACCIDENT_LEANING, "%s",
		             it->id);
		cr_assert(*it->source && *it->title, "%s", it->id);
		cr_assert_eq(accidental_load(it->id), it, "%s stands twice", it->id);
	}
	cr_assert_null(accidental_load("nothing"));
}

static struct csv_table file;

static void same_text(size_t at, const char *column, const char *expected)
{
	cr_assert_str_eq(csv_text(&file, at, column), expected, "row %zu, %s", at + 1, column);
}

static void same_number(size_t at, const char *column, double expected)
{
	near(csv_number(&file, at, column), expected, 1e-12 * fabs(expected), column);
}

static const char *mark_word(enum source_mark mark)
{
	return mark == MARK_SEEN ? "seen" : "from_memory";
}

Test(accidental, file_and_table_agree)
{
	static const char *const kind[] = {"fork_truck", "vehicle", "rack", "push", "leaning",
	                                   "tilt"},
				 *const unit[] = {"kN", "kN/m", "N m", "deg"};
	const double factor[] = {1e3, 1, 1e3, pi / 180};    /* to N, N/mm, N mm, rad */
	size_t count;
	const struct accidental_load *list = accidental_loads(&count);
	csv_read(&file, "refdata/accidental.csv");
	cr_assert_eq(file.row_count, count);
	for (size_t i = 0; i < count; i++) {
		same_text(i, "id", list[i].id);
		same_text(i, "kind", kind[list[i].kind]);
		same_text(i, "title", list[i].title);
		same_text(i, "unit", unit[list[i].unit]);
		same_number(i, "low", list[i].low / factor[list[i].unit]);
		same_number(i, "high", list[i].high / factor[list[i].unit]);
		same_number(i, "across_kN", list[i].across / 1e3);
		same_number(i, "share_percent", list[i].share * 100);
		same_number(i, "from_height_mm", list[i].from_height);
		same_number(i, "to_height_mm", list[i].to_height);
		same_text(i, "source", list[i].source);
		same_text(i, "mark", mark_word(list[i].mark));
		same_text(i, "doubt", list[i].doubt);
		same_text(i, "advice", list[i].advice);
	}
}

Test(seismic, file_and_table_agree)
{
	static const char *const code[] = {"ASCE 7-16", "ASCE 7-22", "EN 1998-1"};
	size_t count;
	const struct seismic_component *list = seismic_components(&count);
	csv_read(&file, "refdata/seismic.csv");
	cr_assert_eq(file.row_count, count);
	for (size_t i = 0; i < count; i++) {
		same_text(i, "id", list[i].id);
		same_text(i, "code", code[list[i].code]);
		same_text(i, "title", list[i].title);
		same_number(i, "amplification", list[i].amplification);
		same_number(i, "response", list[i].response);
		same_number(i, "overstrength", list[i].overstrength);
		same_text(i, "source", list[i].source);
		same_text(i, "mark", mark_word(list[i].mark));
		same_text(i, "doubt", list[i].doubt);
	}
}

Test(rare_combination, file_and_table_agree)
{
	size_t count;
	const struct rare_combination *list = rare_combinations(&count);
	csv_read(&file, "refdata/rare_combinations.csv");
	cr_assert_eq(file.row_count, count);
	for (size_t i = 0; i < count; i++) {
		same_text(i, "id", list[i].id);
		same_text(i, "title", list[i].title);
		same_text(i, "event",
		          list[i].event == EVENT_ACCIDENT ? "accident" : "earthquake");
		same_text(i, "level", list[i].level == LEVEL_SERVICE ? "service" : "factored");
		same_number(i, "weight", list[i].weight);
		same_number(i, "moving", list[i].moving);
		same_number(i, "horizontal", list[i].horizontal);
		same_number(i, "vertical", list[i].vertical);
		same_text(i, "source", list[i].source);
		same_text(i, "mark", mark_word(list[i].mark));
		same_text(i, "doubt", list[i].doubt);
	}
}
