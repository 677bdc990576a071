/* What is not known never helps. In every example, and in files in which as much as possible is
 * wrong, every value is taken out in turn, three ways: the key left out, an empty value, the word
 * unknown. No check may then pass from fails or unproven to holds, nor from holds to fails; and the
 * three ways must give the same answer. What is allowed to differ is listed below, each with its
 * reason. */
#include "../../src/cell/fields.h"
#include "../support/cell_text.h"
#include "../support/sample_cell.h"

#include <criterion/criterion.h>
#include <glob.h>
#include <stdio.h>
#include <string.h>

enum allowed {
	MAY_HOLD = 1,        /* fails or unproven may become holds */
	MAY_FAIL = 2,        /* holds may become fails */
	OUT_DIFFERS = 4      /* left out is another thing than unknown */
};

/* Paths with the numbers of rows taken out: "cell.parts[].mass". */
static const struct exception {
	const char *path;
	unsigned allowed;
	const char *reason;
} exceptions[] = {
	{"arm.chain.joints[].kind", OUT_DIFFERS,
         "left out a joint turns, as most do; unknown it may slide"},
	{"arm.mounting", OUT_DIFFERS, "left out the face looks up; unknown it may look anywhere"},
	{"anchors", OUT_DIFFERS,
         "the pattern must be written, if only as unknown: left out it is an error"},
	{"anchors.at", OUT_DIFFERS,
         "the pattern must be written, if only as unknown: left out it is an error"},
	{"anchors.at.points", OUT_DIFFERS,
         "half a list of points is a slip of the pen and an error"},
	{"slab.outline.points", OUT_DIFFERS,
         "half a list of points is a slip of the pen and an error"},
	{"cell.base[].holes[].points", OUT_DIFFERS | MAY_HOLD | MAY_FAIL,
         "as above; and see holes"},
	{"cell.base[].holes", MAY_HOLD | MAY_FAIL, "left out, the face has no opening"},
	{"setups", MAY_HOLD,
         "a file without setups states one cell: the ways of setting it up are the user's list"},
	{"setups[].arm.mount", OUT_DIFFERS,
         "left out of a setup a field is as in the file, not unknown"},
	{"loads", MAY_HOLD, "further loads are the user's list: none is asked for"},
	{"loads[].with", MAY_FAIL, "left out, the worst is taken: an emergency stop"},
	{"loads[].at", MAY_FAIL, "left out, the worst is taken: the corner of the largest torsion"},
	{"cell.parts[].least_mass", MAY_HOLD, "left out, the part always stands there"},
	{"arm.reactions.paired", MAY_FAIL,
         "left out, the safe side is taken: headings free of each other"},
	{"anchors.needs", MAY_HOLD, "without any needs the check is left out"},
	{"anchors.product.tensile_area", MAY_HOLD | MAY_FAIL,
         "left out, 0.78 of the shaft's area: the anchors' stiffness alone, named as an "
         "assumption"},
	{"methods", MAY_HOLD, "left out, the rating alone is judged: the codes are the user's choice"},
	{"anchors.product.rating.interaction", MAY_FAIL,
         "left out, the safe side is taken: the straight line"},
	{"anchors.product.rating.allowed_share", MAY_HOLD | MAY_FAIL,
         "left out, 25 %: the share that needs nobody's word"},
	{"choices", MAY_HOLD | MAY_FAIL,
         "left out, the safe defaults; stricter choices are the user's own"},
	{"choices.least_strength", MAY_HOLD | MAY_FAIL,
         "left out, 28 MPa; a higher one is the user's own"},
	{"choices.stabilising_weight", MAY_HOLD | MAY_FAIL,
         "left out, 0.6; a lower one is the user's own"},
};
enum { EXCEPTIONS = sizeof exceptions / sizeof exceptions[0] };

/* What a code takes itself where its sheet states nothing: lower or higher than the sheet's. */
static bool code_has_its_own(const char *path)
{
	static const char block[] = "anchors.product.strength.";
	const struct field *field = field_find(path);
	return strncmp(path, block, strlen(block)) == 0 && field && field_when_left_out(field);
}

static unsigned allowed_for(const char *path)
{
	if (code_has_its_own(path))
		return MAY_HOLD | MAY_FAIL;
	for (size_t i = 0; i < EXCEPTIONS; i++)
		if (strcmp(exceptions[i].path, path) == 0)
			return exceptions[i].allowed;
	return 0;
}

static void without_row_numbers(const char *path, char *out)
{
	for (bool inside = false; *path; path++) {
		inside = inside && *path != ']';
		if (!inside)
			*out++ = *path;
		inside = inside || *path == '[';
	}
	*out = 0;
}

static struct arena arena, scratch;

struct answer { struct trial trial; bool readable; };

static void answer_open(struct answer *answer, const char *yaml, const char *path,
                        const char *value)
{
	struct change change = {path, value};
	trial_open(&answer->trial, text_with(&scratch, yaml, &change, path != NULL), NULL);
	answer->readable = answer->trial.reading.status == DONE;
}

static const struct check_result *of(const struct answer *answer, const char *id)
{
	return trial_check(&answer->trial, id);
}

/* The verdict of the file is the worst of its checks. */
static void compare_verdict(const struct answer *answer, const char *where)
{
	const struct result *result = answer->trial.result;
	enum verdict worst = HOLDS;
	for (size_t i = 0; i < result->check_count; i++)
		worst = result->checks[i].finding.verdict > worst
		                ? result->checks[i].finding.verdict
		                : worst;
	cr_expect_eq(result->verdict, worst, "%s", where);
}

static void compare_before(const struct answer *before, const struct answer *after,
                           const char *where, unsigned allowed)
{
	for (size_t i = 0; i < check_count; i++) {
		const char *id = checks[i].id;
		const struct check_result *first = of(before, id), *then = of(after, id);
		if (!first || !then)
			continue;      /* left out, and listed as such with its reason */
		enum verdict was = first->finding.verdict, is = then->finding.verdict;
		cr_expect((allowed & MAY_HOLD) || was == HOLDS || is != HOLDS, "%s: %s holds now",
		          where, id);
		cr_expect((allowed & MAY_FAIL) || was != HOLDS || is != FAILS, "%s: %s fails now",
		          where, id);
	}
}

/* The same answer to the last bit, and the same left unknown. */
static void compare_same(const struct answer *a, const struct answer *b, const char *where)
{
	cr_expect_eq(a->readable, b->readable, "%s: one can be read, the other not:\n%s%s", where,
	             a->readable ? "" : reading_faults(&a->trial.reading),
	             b->readable ? "" : reading_faults(&b->trial.reading));
	for (size_t i = 0; a->readable && b->readable && i < check_count; i++) {
		const struct check_result *x = of(a, checks[i].id), *y = of(b, checks[i].id);
		bool same = !x == !y &&
		            (!x || (x->finding.verdict == y->finding.verdict &&
		                    x->finding.computed == y->finding.computed &&
		                    x->finding.missing_count == y->finding.missing_count &&
		                    memcmp(&x->finding.ratio, &y->finding.ratio,
		                           sizeof x->finding.ratio) == 0));
		cr_expect(same, "%s: %s differs", where, checks[i].id);
	}
}

/* The reader has one test for an empty value and the word unknown: every third path shows that it
 * is so. */
enum { EMPTY_EACH = 3 };

static void compare_empty(const char *yaml, const char *path, const struct answer *unknown,
                          const char *where)
{
	struct answer empty;
	answer_open(&empty, yaml, path, "");
	compare_same(unknown, &empty, where);
	trial_close(&empty.trial);
}

static void take_out(const char *name, const char *yaml, const struct answer *before,
                     const char *path, size_t index)
{
	struct answer unknown, out;
	char plain[200], where[400];
	without_row_numbers(path, plain);
	unsigned allowed = allowed_for(plain);
	snprintf(where, sizeof where, "%s without %s", name, path);
	arena_open(&scratch, NULL, NULL);
	answer_open(&unknown, yaml, path, "unknown");
	answer_open(&out, yaml, path, NULL);
	if (index % EMPTY_EACH == 0)
		compare_empty(yaml, path, &unknown, where);
	if (!(allowed & OUT_DIFFERS))
		compare_same(&unknown, &out, where);
	/* a value without which the rest makes no sense is an error, and no verdict */
	if (unknown.readable) {
		compare_before(before, &unknown, where, allowed);
		compare_verdict(&unknown, where);
	}
	trial_close(&unknown.trial);
	trial_close(&out.trial);
	arena_close(&scratch);
}

/* A key's value, not an element of a list. */
static bool is_key(const char *path)
{
	return path[strlen(path) - 1] != ']';
}

static void take_out_each(const char *name, const char *yaml)
{
	struct answer before;
	struct arena own;
	arena_open(&own, NULL, NULL);
	arena_open(&scratch, NULL, NULL);
	answer_open(&before, yaml, NULL, NULL);
	cr_assert(before.readable, "%s: %s", name, reading_faults(&before.trial.reading));
	compare_verdict(&before, name);
	arena_close(&scratch);
	struct paths paths = text_paths(&own, yaml);
	for (size_t i = 0; i < paths.count; i++)
		if (is_key(paths.list[i]))
			take_out(name, yaml, &before, paths.list[i], i);
	trial_close(&before.trial);
	arena_close(&own);
}

/* --- where much is wrong
 * ------------------------------------------------------------------------------ */

#define STOP "arm.reactions.emergency_stop"
#define RATING "anchors.product.rating."
enum { MOST = 20 };

/* Everything fails that can, and by little, so that a value that helped would show. */
static const struct change all_fails[MOST] = {
	{"slab.thickness.value", "114 mm"}, {"slab.concrete.strength.specified", "27.9 MPa"},
	{"slab.concrete.condition", "damaged"}, {"cell.at", "[5 m, 399 mm]"},
	{"slab.joints", "[{from: [5 m, 0 m], to: [5 m, 8 m], type: saw_cut}]"},
	{"slab.old_holes", "[{at: [5.4 m, 500 mm], depth: 80 mm, filled: no}]"},
	{"cell.stand_off", "{height: 8 mm, filled: yes, grout_strength: 40 MPa}"}, {"slab.topping", "{thickness: 10 mm}"},
	{"anchors.product.length", "112 mm"}, {"anchors.product.hole.depth", "69 mm"}, {"cell.base_stiff", "assumed"},
	{RATING "at_embedment", "71 mm"}, {RATING "tension", "10 kN"}, {RATING "shear", "20 kN"},
	{"anchors.plate_hole", "15 mm"}, {"anchors.needs",
	 "{tension: 30 kN, shear: 20 kN, pattern_as_stated: yes, setups_covered: all}"}};
/* Everything is unproven that can be. */
static const struct change all_unproven[MOST] = {
	{"slab.type", "suspended"}, {"slab.thickness.evidence", "drawing"}, {"slab.concrete.age", "27 days"},
	{"slab.joints", "[{from: [5 m, 0 m], to: [5 m, 8 m], type: saw_cut}]"}, {RATING "edge", "unknown"},
	{"slab.old_holes", "[{at: [5.4 m, 4.4 m], depth: 80 mm, filled: yes}]"}, {RATING "spacing", "unknown"},
	{"cell.stand_off", "{height: 6 mm, filled: yes, grout_strength: 35 MPa}"}, {"cell.base_stiff", "assumed"},
	{"anchors.product.embedment", "250 mm"}, {"anchors.plate_hole", "slotted"},
	{RATING "tested_in", "uncracked"}, {"anchors.product.qualified_cracked", "no"},
	{RATING "allowed_share", "26 %"}, {"choices", "{least_strength: 27 MPa, stabilising_weight: 0.7}"},
	{"anchors.needs", "{tension: 1 kN, shear: 1 kN, pattern_as_stated: no, setups_covered: not_all}"}};
/* The base tips off anchors that stand on one side of it. */
static const struct change tips[MOST] = {
	{"anchors.lug", "yes"}, {"anchors.at", "{unit: mm, points: [[-600, -300], [-600, 300]]}"},
	{"cell.parts", "[{mass: 100 kg, at: [0 mm, 0 mm, 0 mm]}, {mass: 20 kg, least_mass: 10 kg, box: "
	 "{from: [0 mm, 0 mm, 0 mm], to: [9 mm, 9 mm, 9 mm]}}]"}, {STOP ".vertical", "100 N"},
	{"arm.weight.arm", "9 kg"}, {"arm.weight.payload", "1 kg"}, {STOP ".horizontal", "50 N"}, {STOP ".tilting", "310 N m"},
	{"arm.reactions.normal", "{vertical: 100 N, horizontal: 0 N, tilting: 10 N m, twisting: 0 N m}"}};
/* All that can be said is said, with engineers, and holds. */
static const struct change departs[MOST] = {
	{"choices", "{least_strength: 25 MPa, stabilising_weight: 0.9, by_engineer: {name: demo, reason: demo}}"},
	{RATING "allowed_share", "30 %"}, {RATING "by_engineer", "{name: demo, reason: demo}"},
	{"slab.concrete.strength.specified", "26 MPa"}, {RATING "tested_in", "uncracked"},
	{"slab.concrete.cracked", "{value: no, reason: demo}"}, {"slab.concrete.by_engineer", "{name: demo, reason: demo}"},
	{"cell.parts", "[{mass: 900 kg, at: [0 mm, 0 mm, 0 mm]}]"},
	{"cell.stand_off", "{height: 5 mm, filled: yes, grout_strength: 35 MPa}"}};

struct sample { const char *name, *yaml; };

/* All texts: the examples, then the two samples as they are and changed. */
static size_t collect_texts(struct sample out[32])
{
	static const struct { const char *name, *yaml; const struct change *change; } own[] = {
		{"needs", sample_needs, NULL}, {"needs that fail", sample_needs, all_fails},
		{"needs unproven", sample_needs, all_unproven}, {"lift that fails", sample_lift, all_fails},
		{"lift unproven", sample_lift, all_unproven}, {"tips", sample_lift, tips}, {"departs", sample_lift, departs}};
	size_t count = 0;
	glob_t found;
	cr_assert_eq(glob("examples/*.yaml", 0, NULL, &found), 0);
	for (size_t i = 0; i < found.gl_pathc && count < 24; i++) {
		const char *name = arena_format(&arena, "%s", found.gl_pathv[i]);
		/* six joints take a second a run, so two stand for them; a record needs its file */
		if (strstr(name, "arm_chain") || strstr(name, "arm_history"))
			continue;
		out[count++] = (struct sample){name, file_text(&arena, name)};
	}
	globfree(&found);
	cr_assert_geq(count, 6, "the examples are not here");
	static const struct change mounted[] = {{"arm.mounting", "ceiling"}};
	out[count++] = (struct sample){
		"two joints",
		text_with(&arena, file_text(&arena, "tests/support/demo_two_joints.yaml"), mounted,
	                  1)};
	for (size_t i = 0; i < sizeof own / sizeof own[0]; i++) {
		size_t changes = 0;
		while (own[i].change && changes < MOST && own[i].change[changes].path)
			changes++;
		out[count++] = (struct sample){
			own[i].name, text_with(&arena, own[i].yaml, own[i].change, changes)};
	}
	return count;
}

/* In two halves, so that they may run side by side. */
static void take_out_all(size_t half)
{
	struct sample text[32];
	arena_open(&arena, NULL, NULL);
	size_t count = collect_texts(text);
	for (size_t i = half; i < count; i += 2)
		take_out_each(text[i].name, text[i].yaml);
	arena_close(&arena);
}

Test(prop_evidence, every_value_of_every_other_file)
{
	take_out_all(0);
}

Test(prop_evidence, every_value_of_the_files_between)
{
	take_out_all(1);
}

/* An exception that no file has any more would hide nothing: it must go. */
Test(prop_evidence, exceptions_are_met)
{
	bool met[EXCEPTIONS] = {false};
	struct sample text[32];
	arena_open(&arena, NULL, NULL);
	size_t count = collect_texts(text);
	for (size_t i = 0; i < count; i++) {
		struct paths paths = text_paths(&arena, text[i].yaml);
		for (size_t k = 0; k < paths.count; k++) {
			char plain[200];
			without_row_numbers(paths.list[k], plain);
			for (size_t e = 0; e < EXCEPTIONS; e++)
				met[e] = met[e] || strcmp(exceptions[e].path, plain) == 0;
		}
	}
	for (size_t e = 0; e < EXCEPTIONS; e++)
		cr_expect(met[e], "no file has %s (%s)", exceptions[e].path, exceptions[e].reason);
	arena_close(&arena);
}
