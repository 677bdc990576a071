/* What else keeps the cell from holding: one line for each reason, with the checks that share
 * it. */
#include "text_parts.h"
#include <string.h>

enum { MOST_LACKING = 3 };

/* Whether what is missing is the reason, and not some doubt or a number. */
static bool waits(const struct check_result *check)
{
	return check->finding.verdict == UNPROVEN && check->finding.missing_count > 0;
}

/* What tells reasons apart: the first thing that is missing, or the sentence, or the title. */
static const char *key_of(const struct check_result *check)
{
	if (waits(check))
		return check->finding.missing[0];
	const char *reason = check->finding.reason;
	return reason && *reason ? reason : check->check->title;
}

/* The word that the file gives at a path and that is not enough: "drawing"; NULL where nothing is
 * known. */
static const char *weak_word(const struct cell *cell, const char *path)
{
	const struct field *field = field_find(path);
	if (!field || strstr(path, "[]") || field->kind != FIELD_WORD)
		return NULL;
	const struct word *word = (const struct word *)(const void *)field_given(field, cell);
	return is_known(*word) ? field->words[word->value] : NULL;
}

/* "slab.thickness.evidence: drawing is not enough; anchors.at, slab.type not known" */
static void flow_missing(struct writer *writer, const struct cell *cell,
                         const struct finding *finding)
{
	size_t weak = 0, unknown = 0;
	for (size_t i = 0; i < finding->missing_count && weak < MOST_LACKING; i++) {
		const char *word = weak_word(cell, finding->missing[i]);
		if (!word)
			continue;
		flow(writer, weak++ ? "; " : "");
		flow(writer, finding->missing[i]);
		flow(writer, ": ");
		flow(writer, word);
		flow(writer, " is not enough");
	}
	for (size_t i = 0; i < finding->missing_count && unknown < MOST_LACKING; i++) {
		if (weak_word(cell, finding->missing[i]))
			continue;
		flow(writer, unknown ? ", " : weak ? "; " : "");
		flow(writer, finding->missing[i]);
		unknown++;
	}
	flow(writer, weak + unknown < finding->missing_count ? " and more" : "");
	flow(writer, unknown ? " not known" : "");
}

bool flow_reason(struct writer *writer, const struct cell *cell, const struct check_result *check)
{
	const struct finding *finding = &check->finding;
	if (finding->reason && *finding->reason) {
		flow(writer, finding->reason);
		return true;
	}
	if (!waits(check))
		return false;
	flow_missing(writer, cell, finding);
	return true;
}

static bool same_reason(const struct check_result *a, const struct check_result *b)
{
	return a->finding.verdict == b->finding.verdict && strcmp(key_of(a), key_of(b)) == 0;
}

/* What a check waits for, in short; else its reason. */
static void flow_obstacle(struct writer *writer, const struct cell *cell,
                          const struct check_result *check)
{
	if (waits(check))
		flow_missing(writer, cell, &check->finding);
	else if (!flow_reason(writer, cell, check))
		flow(writer, check->check->title);
}

/* Whether an earlier line, or the governing one, has already named this check's reason. */
static bool is_said(const struct result *result, size_t index)
{
	const struct check_result *check = &result->checks[index];
	const struct check_result *governing = governing_check(result);
	if (check == governing || (governing && same_reason(governing, check)))
		return true;
	for (size_t i = 0; i < index; i++)
		if (same_reason(&result->checks[i], check))
			return true;
	return false;
}

/* "rating.tension, rating.shear": all but the governing one that have this reason; false: none. */
static bool flow_sharers(struct writer *writer, const struct result *result,
                         const struct check_result *check)
{
	bool any = false;
	for (size_t i = 0; i < result->check_count; i++) {
		const struct check_result *other = &result->checks[i];
		if (other == governing_check(result) || !same_reason(other, check))
			continue;
		flow(writer, any ? ", " : "");
		flow(writer, other->check->id);
		any = true;
	}
	return any;
}

static void flow_verdict(struct writer *writer, const struct check_result *check)
{
	struct phrase ratio = phrase_ratio(&check->finding);
	flow(writer, verdict_word(check->finding.verdict));
	if (check->finding.verdict != FAILS || ratio.text[0] == '-')
		return;
	flow(writer, ", ratio ");
	flow(writer, ratio.text);
}

static void begin_line(struct writer *writer, bool *labelled)
{
	writer_text(writer, *labelled ? "" : "Also");
	*labelled = true;
	flow_begin(writer, LABEL_COLUMN);
}

/* The remedy without the key before it, which the obstacle has named already. */
static const char *behind_key(const struct finding *finding)
{
	const char *key = finding->missing_count > 0 ? finding->missing[0] : "";
	size_t length = strlen(key);
	if (length == 0 || strncmp(finding->remedy, key, length) != 0 ||
	    strncmp(finding->remedy + length, ": ", 2) != 0)
		return finding->remedy;
	return finding->remedy + length + 2;
}

static void also_lines(struct writer *writer, const struct result *result, enum verdict verdict,
                       bool *labelled)
{
	for (size_t i = 0; i < result->check_count; i++) {
		const struct check_result *check = &result->checks[i];
		if (check->finding.verdict != verdict || is_said(result, i))
			continue;
		begin_line(writer, labelled);
		flow_obstacle(writer, result->cell, check);
		if (check->finding.remedy && *check->finding.remedy) {
			flow(writer, ": ");
			flow(writer, behind_key(&check->finding));
		}
		flow(writer, " (");
		flow_sharers(writer, result, check);
		flow(writer, " ");
		flow_verdict(writer, check);
		flow(writer, ")");
		flow_end(writer);
	}
}

static bool has_sharers(const struct result *result, const struct check_result *check)
{
	for (size_t i = 0; i < result->check_count; i++)
		if (&result->checks[i] != check && same_reason(&result->checks[i], check))
			return true;
	return false;
}

/* The checks that wait for the same thing as the governing one. */
static void same_line(struct writer *writer, const struct result *result, bool *labelled)
{
	const struct check_result *governing = governing_check(result);
	if (!governing || governing->finding.verdict == HOLDS || !has_sharers(result, governing))
		return;
	begin_line(writer, labelled);
	flow(writer, waits(governing) ? governing->finding.missing[0] : "the same reason");
	flow(writer, waits(governing) ? " is missing for " : " holds for ");
	flow_sharers(writer, result, governing);
	flow(writer, waits(governing) ? ", too" : "");
	flow_end(writer);
}

/* A doubt that stands behind what is missing; NULL: none. */
static const char *hidden_doubt(const struct check_result *check)
{
	const char *doubt = check->finding.said_doubt;
	return waits(check) && doubt && *doubt ? doubt : NULL;
}

/* Whether an earlier check has this doubt, or any has it for its reason. */
static bool is_doubt_said(const struct result *result, size_t index)
{
	const char *doubt = hidden_doubt(&result->checks[index]);
	for (size_t i = 0; i < result->check_count; i++) {
		const struct check_result *other = &result->checks[i];
		const char *hidden = hidden_doubt(other), *said = hidden ? hidden : key_of(other);
		if ((i < index || !hidden) && strcmp(said, doubt) == 0)
			return true;
	}
	return false;
}

static void doubt_lines(struct writer *writer, const struct result *result, bool *labelled)
{
	for (size_t i = 0; i < result->check_count; i++) {
		const struct check_result *check = &result->checks[i];
		const char *remedy = check->finding.said_doubt_remedy;
		if (!hidden_doubt(check) || is_doubt_said(result, i))
			continue;
		begin_line(writer, labelled);
		flow(writer, hidden_doubt(check));
		flow(writer, remedy && *remedy ? ": " : "");
		flow(writer, remedy ? remedy : "");
		flow(writer, " (");
		flow(writer, check->check->id);
		flow(writer, ")");
		flow_end(writer);
	}
}

void text_also(struct writer *writer, const struct result *result)
{
	bool labelled = false;
	same_line(writer, result, &labelled);
	also_lines(writer, result, FAILS, &labelled);
	also_lines(writer, result, UNPROVEN, &labelled);
	doubt_lines(writer, result, &labelled);
}
