/* explain and new: every word of the format is explained, every file to fill in can be read as it
 * stands. */
#include "../../src/cell/fields.h"
#include "../../src/pages/blank_tables.h"
#include "../../src/pages/pages.h"
#include "../../src/standfast.h"
#include "../support/printed.h"

#include <criterion/criterion.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* --- explain --- */

static char *explained(const char *word, bool *found)
{
	struct printed out = {0};
	cr_assert(page_explain(word, false, printed_write, &out, found));
	cr_expect_leq(printed_width(out.text), PAGE_WIDTH, "%s", out.text);
	cr_expect_not(printed_trails(out.text));
	return out.text;
}

static void expect_explained(const char *word, const char *head)
{
	bool found = false;
	char *page = explained(word, &found);
	char line[160];
	snprintf(line, sizeof line, "%s\n", head);
	cr_expect(found, "%s", word);
	cr_expect(strstr(page, line), "%s: %s", word, page);
	free(page);
}

Test(explain, knows_every_key_by_path_and_by_last_part)
{
	for (size_t i = 0; i < field_count; i++) {
		const char *dot = strrchr(fields[i].path, '.');
		expect_explained(fields[i].path, fields[i].path);
		expect_explained(dot ? dot + 1 : fields[i].path, fields[i].path);
	}
}

Test(explain, knows_checks_codes_and_verdicts)
{
	for (size_t i = 0; standfast_check_id(i); i++)
		expect_explained(standfast_check_id(i), standfast_check_id(i));
	for (int i = 0; i < FAULT_KINDS; i++)
		expect_explained(fault_code((enum fault)i), fault_code((enum fault)i));
	expect_explained("e09", "E09");
	expect_explained("unproven", "unproven");
	expect_explained("cell.parts[12].mass", "cell.parts[].mass");
}

Test(explain, says_all_that_the_table_says)
{
	bool found;
	char *page = explained("anchors.product.embedment", &found);
	cr_expect(strstr(page, "effective embedment in structural concrete"), "%s", page);
	cr_expect(strstr(page, "70 mm (length)") && strstr(page, "10 mm to 2500 mm"), "%s", page);
	cr_expect(strstr(page, "needed by     hole.depth"), "%s", page);
	free(page);
	page = explained("slab.thickness.evidence", &found);
	cr_expect(strstr(page, "one of        measured, as_built, drawing, assumed; or unknown"),
	          "%s", page);
	free(page);
	page = explained("allowed_share", &found);
	cr_expect(strstr(page, "left out      25 %"), "%s", page);
	free(page);
	/* what the meaning itself says is told once */
	page = explained("strength.shear_area", &found);
	cr_expect(strstr(page, "meaning       stressed area in shear\n"), "%s", page);
	cr_expect(strstr(page, "left out      the tensile area\n"), "%s", page);
	free(page);
	page = explained("slab.thickness.value", &found);
	cr_expect(strstr(page, "left out      not known: a check that needs it cannot hold"), "%s",
	          page);
	free(page);
}

static void expect_meaning(const char *word, const char *first, const char *other)
{
	bool found;
	char *page = explained(word, &found), *meaning = strstr(page, "  meaning "),
	     *or = strstr(page, "  or ");
	cr_assert(meaning && or && meaning < or, "%s", page);
	cr_expect(strstr(meaning, first) && strstr(meaning, first) < or, "%s", page);
	cr_expect(strstr(or, other), "%s", page);
	free(page);
}

Test(explain, says_what_the_value_is_before_the_word_in_its_place)
{
	expect_meaning("slab.joints", "joints and saw cuts", "no joint");
	expect_meaning("anchors.plate_hole", "diameter of the clearance holes", "slots");
}

Test(explain, names_what_is_near)
{
	bool found = true;
	char *page = explained("embedmnt", &found);
	cr_expect_not(found);
	cr_expect(strstr(page, "anchors.product.embedment"), "%s", page);
	free(page);
	page = explained("rating.tensoin", &found);
	cr_expect(!found && strstr(page, "near to it: rating.tension"), "%s", page);
	free(page);
	page = explained("zzzzzzzz\x1b[31m", &found);
	cr_expect(!found && strstr(page, "lists all") && !strchr(page, '\x1b'), "%s", page);
	free(page);
}

Test(explain, lists_all_without_a_word)
{
	bool found;
	char *page = explained("", &found);
	cr_expect(found);
	for (size_t i = 0; i < field_count; i++)
		cr_expect(strstr(page, fields[i].path), "%s", fields[i].path);
	cr_expect(strstr(page, "rating.interaction") && strstr(page, "E15"));
	free(page);
}

/* --- new --- */

static char *blank(enum blank_purpose purpose)
{
	struct printed out = {0};
	cr_assert(page_blank(purpose, printed_write, &out));
	return out.text;
}

static void expect_readable(const char *text, const char *what)
{
	struct printed out = {0};
	struct standfast *run = standfast_open(NULL, NULL);
	enum standfast_status status = standfast_read(run, text, strlen(text), "cell.yaml", NULL);
	standfast_page(run, STANDFAST_DIAGNOSTICS, 0, printed_write, &out);
	cr_expect_eq(status, STANDFAST_DONE, "%s: %s", what, out.text ? out.text : "");
	printed_free(&out);
	standfast_close(run);
}

Test(blank, reads_as_it_stands_and_is_unproven)
{
	for (int i = 0; i < BLANK_PURPOSES; i++) {
		char *text = blank((enum blank_purpose)i);
		struct standfast *run = standfast_open(NULL, NULL);
		expect_readable(text, blank_purpose_word((enum blank_purpose)i));
		cr_expect_eq(standfast_read(run, text, strlen(text), "", NULL), STANDFAST_DONE);
		cr_expect_eq(standfast_compute(run, 0, NULL), STANDFAST_DONE);
		cr_expect_eq(standfast_verdict(run), STANDFAST_UNPROVEN);
		standfast_close(run);
		free(text);
	}
}

Test(blank, fits_the_page_and_the_short_one_the_screen)
{
	for (int i = 0; i < BLANK_PURPOSES; i++) {
		char *text = blank((enum blank_purpose)i);
		cr_expect_leq(printed_width(text), PAGE_WIDTH, "%s", text);
		cr_expect_not(printed_trails(text));
		free(text);
	}
	size_t lines = 0;
	char *text = blank(BLANK_NEED);
	for (const char *at = text; *at; at++)
		lines += *at == '\n';
	cr_expect(lines >= 24 && lines <= 40, "%zu lines", lines);
	free(text);
}

Test(blank, names_only_keys_of_the_format)
{
	cr_expect_leq(blank_key_count, MAX_BLANK_KEYS);
	for (size_t i = 0; i < blank_key_count; i++)
		cr_expect(field_find(blank_keys[i].path), "%s", blank_keys[i].path);
	for (size_t i = 0; i < blank_inlined_count; i++)
		cr_expect(field_has_children(blank_inlined[i]), "%s", blank_inlined[i]);
	for (size_t i = 0; i < blank_sample_count; i++) {
		cr_expect(field_find(blank_samples[i].path), "%s", blank_samples[i].path);
		if (blank_samples[i].described_by)
			cr_expect(field_find(blank_samples[i].described_by), "%s",
			          blank_samples[i].described_by);
	}
}

/* The examples of a stop beside those of normal motion: nobody shall copy a stop that is milder. */
Test(blank, shows_a_stop_that_is_harder_than_normal_motion)
{
	static const char *const keys[] = {"vertical", "horizontal", "tilting", "twisting"};
	char *text = blank(BLANK_LOADS), *normal = strstr(text, "normal:"),
	     *stop = strstr(text, "emergency_stop:");
	cr_assert(normal && stop && normal < stop);
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		double of_normal = strtod(strchr(strstr(normal, keys[i]), '#') + 1, NULL);
		double of_stop = strtod(strchr(strstr(stop, keys[i]), '#') + 1, NULL);
		cr_expect(of_normal > 0 && of_stop > of_normal, "%s: %g and %g", keys[i],
		          of_normal, of_stop);
	}
	free(text);
}

/* The file for the codes asks for the codes: an empty key would leave the rating alone. */
Test(blank, for_strength_names_the_codes)
{
	char *text = blank(BLANK_STRENGTH), *loads = blank(BLANK_LOADS);
	cr_expect(strstr(text, "\nmethods: [rating, aci318, en1992_4]"), "%s", text);
	cr_expect(strstr(text, " installation_factor:") && strstr(text, " category:"));
	cr_expect(strstr(text, " reactions:"), "loads by the arm's data sheet");
	cr_expect_not(strstr(loads, "methods") || strstr(loads, "aci318"), "%s", loads);
	free(text);
	free(loads);
}

Test(blank, asks_for_the_share_beside_the_basis)
{
	for (int purpose = BLANK_NEED; purpose <= BLANK_LOADS; purpose++) {
		char *text = blank((enum blank_purpose)purpose);
		const char *basis = strstr(text, " basis:"), *share = strstr(text, " of_ultimate:");
		cr_expect(basis && share && basis < share && share < strstr(basis, " tension:"),
		          "%s", text);
		free(text);
	}
}

/* A file with one value at a path, below as many maps as it takes. */
static void file_with(const char *path, const char *value, size_t length, char *out, size_t room)
{
	bool anchors = strncmp(path, "anchors", 7) == 0;
	int n = snprintf(out, room, "standfast: 1\n");
	if (!anchors)
		n += snprintf(out + n, room - (size_t)n,
		              "anchors: {at: {unit: mm, points: [[0, 0]]}, lug: yes}\n");
	size_t depth = 0;
	for (const char *part = path; part; depth++) {
		const char *dot = strchr(part, '.');
		n += snprintf(out + n, room - (size_t)n, "%*s%.*s:%s", (int)(2 * depth), "",
		              (int)(dot ? dot - part : (int)strlen(part)), part, dot ? "\n" : " ");
		/* a chain cannot stand without its convention */
		if (depth == 1 && strncmp(path, "arm.chain.", 10) == 0)
			n += snprintf(out + n, room - (size_t)n, "    convention: standard_dh\n");
		/* the pattern is a key that must be there */
		if (anchors && depth == 0)
			n += snprintf(out + n, room - (size_t)n,
			              "  at: {unit: mm, points: [[0, 0]]}\n");
		part = dot ? dot + 1 : NULL;
	}
	snprintf(out + n, room - (size_t)n, "%.*s\n", (int)length, value);
}

static void expect_ways(const char *path, const char *text)
{
	char file[2000];
	while (text && *text) {
		const char *bar = strstr(text, " | ");
		file_with(path, text, bar ? (size_t)(bar - text) : strlen(text), file, sizeof file);
		expect_readable(file, file);
		text = bar ? bar + 3 : NULL;
	}
}

Test(blank, samples_in_comments_can_be_written_as_they_stand)
{
	for (size_t i = 0; i < blank_sample_count; i++) {
		expect_ways(blank_samples[i].path, blank_samples[i].text);
		expect_ways(blank_samples[i].path, blank_samples[i].brief);
	}
}
