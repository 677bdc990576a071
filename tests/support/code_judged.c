#include "code_judged.h"

#include "cell_text.h"
#include "traced.h"

#include <criterion/criterion.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

enum { MOST_CHANGES = 24 };

static struct reading reading;
static struct arena texts;
static bool is_open;

static const struct cell *read_changed(const char *yaml, va_list pairs)
{
	struct change change[MOST_CHANGES];
	size_t count = 0;
	for (const char *path = va_arg(pairs, const char *); path;
	     path = va_arg(pairs, const char *)) {
		cr_assert_lt(count, MOST_CHANGES);
		change[count++] = (struct change){path, va_arg(pairs, const char *)};
	}
	if (is_open) {
		reading_close(&reading);
		arena_close(&texts);
	}
	arena_open(&texts, NULL, NULL);
	is_open = true;
	const char *text = text_with(&texts, yaml, change, count);
	reading_open(&reading, text);
	cr_assert_eq(reading.status, DONE, "%s\n%s", reading_faults(&reading), text);
	return reading.cell;
}

static const struct check *check_named(const char *id)
{
	const struct check *check = check_find(id);
	cr_assert(check, "%s", id);
	return check;
}

/* Both parts of a shear bound from the same vectors, as a paired state has them. */
static void fill_load(struct code_strength *code, const struct alike *alike, size_t count,
                      double tension[], double shear[], struct vec2 at[], struct anchor_load *out)
{
	for (size_t i = 0; i < count; i++) {
		tension[i] = alike->tension;
		shear[i] = alike->shear;
		at[i] = (struct vec2){alike->shear, 0};
	}
	*out = (struct anchor_load){.count = count, .tension = tension, .shear = shear,
	                            .shear_at = at, .earthquake = alike->earthquake};
	code_shear_ratios(code, at, alike->earthquake, &out->edge, &out->pryout);
}

/* The same judgement with the written calculation: the same bits, and every line worth its value.
 */
static void compare_traced(const struct check *check, struct judging judging,
                           const struct finding *plain)
{
	struct finding again = {0};
	struct trace trace;
	trace_open(&trace, &texts);
	judging.trace = &trace;
	check->judge(&judging, 0, &again);
	cr_expect_eq(again.computed, plain->computed, "%s", check->id);
	cr_expect(memcmp(&again.ratio, &plain->ratio, sizeof again.ratio) == 0,
	          "%s: %.17g, with the trace %.17g", check->id, plain->ratio, again.ratio);
	cr_expect_not(trace.full, "%s", check->id);
	traced_expressions(&trace, check->id);
}

const struct finding *code_judged(const char *yaml, const char *id, const struct alike *alike, ...)
{
	static struct finding out;
	static double tension[MAX_ANCHORS], shear[MAX_ANCHORS];
	static struct vec2 at[MAX_ANCHORS];
	static struct setting setting;
	const struct check *check = check_named(id);
	struct code_ratios ratios;
	struct anchor_load load;
	va_list pairs;
	va_start(pairs, alike);
	const struct cell *cell = read_changed(yaml, pairs);
	va_end(pairs);
	cr_assert(!check->left_out || !check->left_out(cell), "%s is left out: %s", id,
	          check->left_out ? check->left_out(cell) : "");
	cr_assert_eq(setting_build(cell, &texts, &setting), DONE);
	struct code_strength *code = setting.code[check->method - ONLY_ACI318];
	struct judging judging = {.cell = cell, .setting = &setting, .arena = &texts};
	if (alike && code) {
		fill_load(code, alike, cell->anchors.count, tension, shear, at, &load);
		load.sustained = check->of_sustained;
		code_ratios(code, &load, &ratios);
		judging.load = &load;
		judging.ratios = &ratios;
	}
	out = (struct finding){0};
	check->judge(&judging, 0, &out);
	compare_traced(check, judging, &out);
	/* the sweep and the judgement must agree to the bit */
	if (check->ratio && judging.load && out.computed) {
		double swept = check->ratio(&judging, 0);
		cr_expect(memcmp(&swept, &out.ratio, sizeof swept) == 0 ||
		                  (swept <= 0 && out.ratio <= 0),
		          "%s: swept %.17g, judged %.17g", id, swept, out.ratio);
	}
	/* as the flow does: a check of a state without numbers never holds */
	if (check->stage == OF_STATE && !out.computed && out.missing_count == 0)
		finding_doubts(&out, "no numbers", NULL);
	finding_settle(&out);
	return &out;
}

const char *code_left_out_of(const char *yaml, const char *id, ...)
{
	const struct check *check = check_named(id);
	va_list pairs;
	va_start(pairs, id);
	const struct cell *cell = read_changed(yaml, pairs);
	va_end(pairs);
	return check->left_out ? check->left_out(cell) : NULL;
}

bool finding_misses(const struct finding *finding, const char *path)
{
	for (size_t i = 0; i < finding->missing_count; i++)
		if (strcmp(finding->missing[i], path) == 0)
			return true;
	return false;
}

void expect_code_at(int line, enum verdict wanted, const char *id, const struct finding *f)
{
	static const char *const words[] = {"holds", "unproven", "fails"};
	cr_expect_eq(f->verdict, wanted,
	             "line %d: %s %s, expected %s (ratio %.17g, first missing %s; %s)", line, id,
	             words[f->verdict], words[wanted], f->computed ? f->ratio : -1.0,
	             f->missing_count ? f->missing[0] : "none", f->reason);
}

bool check_named_in(const char *list, const char *id)
{
	char name[64];
	snprintf(name, sizeof name, " %s ", strchr(id, '.') + 1);
	return strstr(list, name) != NULL;
}
