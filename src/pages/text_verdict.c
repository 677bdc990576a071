/* The first block of the text page: the verdict with its reason, and what to do now. */
#include "text_parts.h"
#include <string.h>

/* The check's own sentence, or its title with its numbers. */
static void flow_reason_or_title(struct writer *writer, const struct result *result,
                                 const struct check_result *check)
{
	const struct finding *finding = &check->finding;
	if (flow_reason(writer, result->cell, check))
		return;
	flow(writer, check->check->title);
	if (!finding->computed)
		return;
	struct phrase_pair pair = phrase_pair(finding, result_units(result));
	flow(writer, ": ");
	flow(writer, pair.demand.text);
	flow(writer, " against ");
	flow(writer, pair.capacity.text);
}

/* "ratio 1.17", at the right edge of the reason's line where there is room, else on the next
 * line. */
static void verdict_ratio(struct writer *writer, const struct check_result *check)
{
	const struct finding *finding = &check->finding;
	struct phrase ratio = phrase_ratio(finding);
	if (ratio.text[0] == '-')
		return;
	const char *label = finding->verdict == UNPROVEN ? "ratio at best " : "ratio ";
	size_t width = strlen(label) + strlen(ratio.text);
	if (writer->column + 3 + width > PAGE_WIDTH)
		writer_newline(writer);
	writer_pad(writer, PAGE_WIDTH - width);
	writer_text(writer, label);
	writer_text(writer, ratio.text);
}

static void verdict_line(struct writer *writer, const struct result *result)
{
	const struct check_result *check = governing_check(result);
	writer_style(writer, verdict_style(result->verdict));
	writer_text(writer, verdict_capitals(result->verdict));
	writer_style(writer, STYLE_PLAIN);
	flow_begin(writer, LABEL_COLUMN);
	if (check) {
		flow_reason_or_title(writer, result, check);
		flow_pause(writer);
		verdict_ratio(writer, check);
	} else {
		flow(writer, "no check was judged");
	}
	flow_end(writer);
}

/* Paths of what keeps the loads from being computed. */
static void flow_blocking(struct writer *writer, const struct loads *loads)
{
	bool first = true;
	for (size_t i = 0; i < loads->gap_count; i++) {
		if (loads->gaps[i].kind != GAP_BLOCKING)
			continue;
		flow(writer, first ? "" : ", ");
		flow(writer, loads->gaps[i].path);
		first = false;
	}
	flow(writer, first ? "the base does not allow it" : " not known");
}

static void no_loads_line(struct writer *writer, const struct result *result)
{
	if (result->loads_computed)
		return;
	flow_begin(writer, LABEL_COLUMN);
	flow(writer, "No loads were computed: ");
	if (result->loads.given)
		flow_blocking(writer, &result->loads);
	else
		flow(writer, "the file has no load model; only what it states is compared");
	flow_end(writer);
}

static void where_line(struct writer *writer, const struct result *result)
{
	const struct check_result *check = governing_check(result);
	if (!check || (!check->at.load_case && !is_of_setup(result->cell, check)))
		return;
	flow_begin(writer, LABEL_COLUMN);
	if (is_of_setup(result->cell, check))
		flow_setup(writer, result->cell, check->at.setup);
	if (check->at.load_case) {
		flow(writer, is_of_setup(result->cell, check) ? ", " : "");
		flow_case(writer, &check->at, false);
	}
	flow_end(writer);
}

/* What is said beside the governing result: without it the numbers may look wrong. */
static void note_lines(struct writer *writer, const struct result *result)
{
	const struct check_result *check = governing_check(result);
	for (size_t i = 0; check && i < check->finding.note_count; i++)
		paragraph(writer, i ? "" : "Note", LABEL_COLUMN, check->finding.notes[i]);
}

static void only_line(struct writer *writer, const struct result *result,
                      const struct page_options *options)
{
	if (!options->only)
		return;
	writer_text(writer, "Note");
	flow_begin(writer, LABEL_COLUMN);
	const char *why = left_out_reason(result, options->only);
	flow(writer, "the verdict is that of all checks; ");
	flow(writer, why ? "" : "shown is ");
	flow(writer, options->only);
	flow(writer, why ? " does not apply: " : " alone");
	flow(writer, why ? why : "");
	flow_end(writer);
}

/* The governing check's ratio in each setup: often the quickest way out is another setup. */
static void setups_line(struct writer *writer, const struct result *result)
{
	const struct check_result *check = governing_check(result);
	size_t count = setup_count(result->cell);
	bool any = false;
	bool differ = check && count > 1 && is_of_setup(result->cell, check);
	for (size_t s = 0; differ && s < count; s++) {
		if (!check->has_setup_ratio[s])
			continue;
		if (!any) {
			writer_text(writer, "Setups");
			flow_begin(writer, LABEL_COLUMN);
		}
		flow(writer, any ? ", " : "ratio ");
		flow(writer, phrase_ratio_up(check->setup_ratio[s]).text);
		flow(writer, " in ");
		flow_setup(writer, result->cell, s);
		any = true;
	}
	if (any)
		flow_end(writer);
}

static void do_now_line(struct writer *writer, const struct result *result)
{
	const struct check_result *check = governing_check(result);
	const char *remedy = check && check->finding.remedy ? check->finding.remedy : "";
	if (result->verdict == HOLDS && !*remedy)
		return;
	if (!*remedy && result->to_measure_count == 0)
		return;
	writer_text(writer, "Do now");
	flow_begin(writer, LABEL_COLUMN);
	if (*remedy) {
		flow(writer, remedy);
	} else {
		flow(writer, result->to_measure[0].what);
		flow(writer, ": ");
		flow(writer, result->to_measure[0].how);
	}
	flow_end(writer);
}

/* Where the file says how something is known, in the order of weight. */
struct statement { const char *path, *of; };
static const struct statement evidences[] = {
	{"anchors.product.rating.evidence", "rating"},
	{"anchors.product.strength.evidence", "code design values"},
	{"slab.concrete.strength.evidence", "concrete strength"},
	{"slab.thickness.evidence", "slab thickness"},
	{"cell.base_stiff.shown_by", "stiffness of the base"},
	{"slab.concrete.condition", "concrete"},
};

static bool flow_evidence(struct writer *writer, const struct cell *cell)
{
	bool any = false;
	for (size_t i = 0; i < sizeof evidences / sizeof *evidences; i++) {
		const struct field *field = field_find(evidences[i].path);
		if (!field || field->kind != FIELD_WORD)
			continue;
		const struct word *word = (const struct word *)(const void *)field_given(field,
		                                                                         cell);
		if (!is_known(*word))
			continue;
		flow(writer, any ? ", " : "");
		flow(writer, evidences[i].of);
		flow(writer, ": ");
		flow(writer, field->words[word->value]);
		any = true;
	}
	return any;
}

/* The check with the largest ratio; NULL: none has a number. */
static const struct check_result *tightest_check(const struct result *result)
{
	const struct check_result *most = NULL;
	for (size_t i = 0; i < result->check_count; i++) {
		const struct finding *finding = &result->checks[i].finding;
		if (finding->computed && (!most || finding->ratio > most->finding.ratio))
			most = &result->checks[i];
	}
	return most;
}

/* Where all holds, the check with the least to spare: the one that is named above may have more. */
static void tightest_line(struct writer *writer, const struct result *result)
{
	const struct check_result *governing = governing_check(result);
	const struct check_result *tightest = tightest_check(result);
	if (result->verdict != HOLDS || !tightest || tightest == governing)
		return;
	if (governing && governing->finding.computed &&
	    !(tightest->finding.ratio > governing->finding.ratio))
		return;
	writer_text(writer, "Tightest");
	flow_begin(writer, LABEL_COLUMN);
	flow(writer, tightest->check->id);
	flow(writer, ", ratio ");
	flow(writer, phrase_ratio(&tightest->finding).text);
	flow_end(writer);
}

/* What a holding verdict rests on and where it ends. */
static void rests_on_lines(struct writer *writer, const struct result *result)
{
	if (result->verdict != HOLDS)
		return;
	writer_text(writer, "Rests on");
	flow_begin(writer, LABEL_COLUMN);
	if (flow_evidence(writer, result->cell))
		flow(writer, "; ");
	flow(writer, "every value as the file states it");
	if (result->assumptions.count > 0) {
		flow(writer, ", and the ");
		flow(writer,
		     phrase_count(result->assumptions.count, "assumption", "assumptions").text);
		flow(writer, " below");
	}
	flow_end(writer);
	writer_text(writer, "Leaves out");
	flow_begin(writer, LABEL_COLUMN);
	flow(writer, "what the cautions below name; a licensed engineer must review and sign");
	flow_end(writer);
}

static void departures_lines(struct writer *writer, const struct result *result)
{
	for (size_t i = 0; i < result->departures.count; i++)
		paragraph(writer, "Departs", LABEL_COLUMN, result->departures.list[i]);
}

/* A drill does not know of verdicts: whatever they are, the slab is scanned first. */
static void scan_line(struct writer *writer, const struct result *result)
{
	bool unknown = false, not_done = false;
	for (size_t s = 0; s < setup_count(result->cell); s++) {
		const struct word *scan = &setup_cell(result->cell, s)->slab.scan;
		unknown |= !is_known(*scan);
		not_done |= is_known(*scan) && scan->value == SCAN_NOT_DONE;
	}
	if (!unknown && !not_done)
		return;
	writer_text(writer, "Before");
	flow_begin(writer, LABEL_COLUMN);
	flow(writer, not_done ? "not scanned" : "not known to be scanned");
	flow(writer,
	     ": do not drill until bars, tendons, conduit and heating are found and marked");
	flow_end(writer);
}

void text_verdict(struct writer *writer, const struct result *result,
                  const struct page_options *options)
{
	verdict_line(writer, result);
	no_loads_line(writer, result);
	where_line(writer, result);
	note_lines(writer, result);
	departures_lines(writer, result);
	only_line(writer, result, options);
	do_now_line(writer, result);
	setups_line(writer, result);
	tightest_line(writer, result);
	rests_on_lines(writer, result);
	scan_line(writer, result);
}
