/* What else keeps the cell from holding: one line for each reason, with the checks that share
 * it. */
#include "text_parts.h"
#include <string.h>

/* What tells reasons apart: the sentence, or the first thing that is lacking, or the title. */
static const char *key_of(const struct check_result *check)
{
	const struct finding *finding = &check->finding;
	if (finding->reason && *finding->reason)
		return finding->reason;
	return finding->missing_count > 0 ? finding->missing[0] : check->check->title;
}

/* "slab.thickness.evidence: drawing is not enough", "anchors.at is not known" */
static void flow_lacking(struct writer *writer, const struct cell *cell, const char *path)
{
	const struct field *field = field_find(path);
	bool inside = field && !strstr(path, "[]") && field->kind != FIELD_SECTION &&
	              field->kind != FIELD_ALIAS;
	bool known = inside && field_given(field, cell)->origin != ABSENT;
	flow(writer, path);
	if (known && field->kind == FIELD_WORD) {
		const struct word *word = (const struct word *)(const void *)field_given(field,
		                                                                         cell);
		flow(writer, ": ");
		flow(writer, field->words[word->value]);
	}
	flow(writer, known ? " is not enough" : " is not known");
}

bool flow_reason(struct writer *writer, const struct cell *cell, const struct check_result *check)
{
	const struct finding *finding = &check->finding;
	if (finding->reason && *finding->reason) {
		flow(writer, finding->reason);
		return true;
	}
	if (finding->verdict != UNPROVEN || finding->missing_count == 0)
		return false;
	flow_lacking(writer, cell, finding->missing[0]);
	return true;
}

static bool same_reason(const struct check_result *a, const struct check_result *b)
{
	return a->finding.verdict == b->finding.verdict && strcmp(key_of(a), key_of(b)) == 0;
}

/* Whether an earlier line has already named this check. */
static bool is_said(const struct result *result, size_t index)
{
	const struct check_result *check = &result->checks[index];
	const struct check_result *governing = governing_check(result);
	if (check == governing)
		return true;
	for (size_t i = 0; i < index; i++)
		if (&result->checks[i] != governing && same_reason(&result->checks[i], check))
			return true;
	return false;
}

/* "rating.tension, rating.shear unproven" */
static void flow_sharers(struct writer *writer, const struct result *result, size_t index)
{
	const struct check_result *check = &result->checks[index];
	bool first = true;
	flow(writer, " (");
	for (size_t i = index; i < result->check_count; i++) {
		if (&result->checks[i] == governing_check(result) ||
		    !same_reason(&result->checks[i], check))
			continue;
		flow(writer, first ? "" : ", ");
		flow(writer, result->checks[i].check->id);
		first = false;
	}
	flow(writer, " ");
	flow(writer, verdict_word(check->finding.verdict));
	struct phrase ratio = phrase_ratio(&check->finding);
	if (check->finding.verdict == FAILS && ratio.text[0] != '-') {
		flow(writer, ", ratio ");
		flow(writer, ratio.text);
	}
	flow(writer, ")");
}

static void also_lines(struct writer *writer, const struct result *result, enum verdict verdict,
                       bool *labelled)
{
	for (size_t i = 0; i < result->check_count; i++) {
		const struct check_result *check = &result->checks[i];
		if (check->finding.verdict != verdict || is_said(result, i))
			continue;
		writer_text(writer, *labelled ? "" : "Also");
		*labelled = true;
		flow_begin(writer, LABEL_COLUMN);
		if (!flow_reason(writer, result->cell, check))
			flow(writer, check->check->title);
		if (check->finding.remedy && *check->finding.remedy) {
			flow(writer, ": ");
			flow(writer, check->finding.remedy);
		}
		flow_sharers(writer, result, i);
		flow_end(writer);
	}
}

void text_also(struct writer *writer, const struct result *result)
{
	bool labelled = false;
	also_lines(writer, result, FAILS, &labelled);
	also_lines(writer, result, UNPROVEN, &labelled);
}
