/* The tables of the text page. The last column of each flows, so that no name can break the
 * page. */
#include "text_parts.h"
#include <stdio.h>
#include <string.h>

/* columns of the anchors' table: where each number ends, where the text begins */
enum { ANCHOR_X = 18, ANCHOR_Y = 28, ANCHOR_TENSION = 39, ANCHOR_SHEAR = 50, ANCHOR_WHERE = 52 };
/* columns of the checks' table; identities are at most 18 characters */
enum { CHECK_ID = 12, CHECK_DEMAND = 44, CHECK_CAPACITY = 57, CHECK_RATIO = 65, CHECK_WHERE = 67 };

static int length_decimals(enum unit_system units)
{
	return units == UNITS_US ? 2 : 1;
}

static int force_decimals(enum unit_system units)
{
	return units == UNITS_US ? 0 : 2;
}

static void heading_with_unit(struct writer *writer, const char *name, enum dimension dimension,
                              enum unit_system units, size_t column)
{
	char text[48];
	snprintf(text, sizeof text, "%s %s", name, unit_name(dimension, units));
	writer_right(writer, text, column);
}

/* Whether the papers ask for loads and none were computed: then these are all that is known. */
static bool only_needed(const struct result *result)
{
	const struct needs *needs = &result->cell->anchors.needs;
	return !result->loads_computed && (is_known(needs->tension) || is_known(needs->shear));
}

/* "6 kN tension" */
static void flow_needed(struct writer *writer, const struct number *need, const char *what,
                        enum unit_system units)
{
	if (is_known(*need)) {
		flow(writer, phrase_quantity(need->value, DIM_FORCE, units, 4).text);
		flow(writer, " ");
	}
	flow(writer, what);
	flow(writer, is_known(*need) ? "" : " not known");
}

static void needed_line(struct writer *writer, const struct result *result)
{
	const struct needs *needs = &result->cell->anchors.needs;
	flow_begin(writer, 2);
	flow(writer, "needed by the papers: ");
	flow_needed(writer, &needs->tension, "tension", result_units(result));
	flow(writer, ", ");
	flow_needed(writer, &needs->shear, "shear", result_units(result));
	flow(writer, " each; no load was computed");
	flow_end(writer);
}

static void anchors_head(struct writer *writer, const struct result *result)
{
	enum unit_system units = result_units(result);
	writer_title(writer, "Anchors");
	if (result->loads_computed)
		paragraph(writer, "", 2,
		          "largest service load of each over all setups, cases and headings; cell "
		          "axes");
	if (only_needed(result))
		needed_line(writer, result);
	writer_pad(writer, 2);
	writer_text(writer, "id");
	heading_with_unit(writer, "x", DIM_LENGTH, units, ANCHOR_X);
	heading_with_unit(writer, "y", DIM_LENGTH, units, ANCHOR_Y);
	if (!only_needed(result)) {
		heading_with_unit(writer, "tension", DIM_FORCE, units, ANCHOR_TENSION);
		heading_with_unit(writer, "shear", DIM_FORCE, units, ANCHOR_SHEAR);
		writer_pad(writer, ANCHOR_WHERE);
		writer_text(writer, result->loads_computed ? "where" : "");
	}
	writer_newline(writer);
}

static void flow_setup_and_case(struct writer *writer, const struct result *result,
                                const struct occurrence *at)
{
	if (flow_setup(writer, result->cell, at->setup))
		flow(writer, ", ");
	flow(writer, at->load_case->name);
}

static void flow_toward(struct writer *writer, const char *what, const struct occurrence *at)
{
	flow(writer, what);
	if (!at->has_heading)
		return;
	flow(writer, " toward ");
	flow(writer, phrase_heading(at->heading).text);
}

/* One phrase where tension and shear come from the same setup and case, else two. */
static void anchor_where(struct writer *writer, const struct result *result,
                         const struct anchor_result *anchor)
{
	const struct occurrence *tension = &anchor->tension_at, *shear = &anchor->shear_at;
	if (!(anchor->tension > 0))
		tension = NULL;
	if (tension && (!tension->load_case || !shear->load_case))
		return;
	if (!tension) {
		if (!shear->load_case)
			return;
		flow_toward(writer, "shear", shear);
		flow(writer, ": ");
		flow_setup_and_case(writer, result, shear);
		return;
	}
	bool same = tension->setup == shear->setup &&
	            tension->load_case->source == shear->load_case->source;
	flow_toward(writer, "tension", tension);
	if (!same) {
		flow(writer, ": ");
		flow_setup_and_case(writer, result, tension);
		flow(writer, ";");
	} else {
		flow(writer, ",");
	}
	flow_toward(writer, " shear", shear);
	flow(writer, ": ");
	flow_setup_and_case(writer, result, shear);
}

static void anchor_row(struct writer *writer, const struct result *result,
                       const struct anchor_result *anchor)
{
	enum unit_system units = result_units(result);
	int places = length_decimals(units);
	writer_pad(writer, 2);
	writer_text(writer, anchor->id);
	writer_right(writer, phrase_fixed(anchor->at[0], DIM_LENGTH, units, places).text, ANCHOR_X);
	writer_right(writer, phrase_fixed(anchor->at[1], DIM_LENGTH, units, places).text, ANCHOR_Y);
	if (anchor->computed) {
		places = force_decimals(units);
		writer_right(writer, phrase_fixed(anchor->tension, DIM_FORCE, units, places).text,
		             ANCHOR_TENSION);
		writer_right(writer, phrase_fixed(anchor->shear, DIM_FORCE, units, places).text,
		             ANCHOR_SHEAR);
		flow_begin(writer, ANCHOR_WHERE);
		anchor_where(writer, result, anchor);
		flow_end(writer);
	} else {
		const char *none = only_needed(result) ? "" : "-";
		writer_right(writer, none, ANCHOR_TENSION);
		writer_right(writer, none, ANCHOR_SHEAR);
		writer_newline(writer);
	}
}

void text_anchors(struct writer *writer, const struct result *result)
{
	if (result->anchor_count == 0)
		return;
	anchors_head(writer, result);
	for (size_t i = 0; i < result->anchor_count; i++)
		anchor_row(writer, result, &result->anchor[i]);
}

/* The governing check's anchor, or the one of the largest tension. */
static size_t spread_anchor(const struct result *result)
{
	const struct check_result *check = governing_check(result);
	size_t most = 0;
	for (size_t i = 0; i < result->anchor_count; i++) {
		if (check && check->subject.anchors == (uint64_t)1 << i)
			return i;
		if (result->anchor[i].computed &&
		    result->anchor[i].tension > result->anchor[most].tension)
			most = i;
	}
	return most;
}

/* Whether the softest bed that was tried gives the largest tension: an even softer one may give
 * more. */
static bool still_rises(const struct result *result, size_t anchor)
{
	const double *spread = result->spread[anchor], *ratio = result->bed_ratio;
	size_t softest = 0;
	for (size_t i = 1; i < result->bed_ratio_count; i++)
		if (ratio[i] > ratio[softest])
			softest = i;
	for (size_t i = 0; i < result->bed_ratio_count; i++)
		if (i != softest && !(spread[i] < spread[softest]))
			return false;
	return true;
}

static void flow_range(struct writer *writer, const struct result *result, size_t anchor)
{
	static const char *const counts[MAX_BED_RATIOS + 1] = {"", "", "two", "three", "four"};
	if (result->bed_ratio_count < 2) {
		flow(writer, " (stated in choices)");
		return;
	}
	flow(writer, "; the largest of the ");
	flow(writer, counts[result->bed_ratio_count]);
	flow(writer, " is used; ");
	if (still_rises(result, anchor))
		flow(writer, "tension still rises with a softer bed, ");
	flow(writer, "the range is an assumption (no source)");
}

void text_bed_ratios(struct writer *writer, const struct result *result)
{
	if (!result->loads_computed || result->bed_ratio_count == 0 || result->anchor_count == 0)
		return;
	enum unit_system units = result_units(result);
	size_t anchor = spread_anchor(result);
	flow_begin(writer, 2);
	flow(writer, "tension of ");
	flow(writer, result->anchor[anchor].id);
	flow(writer, " over the stiffness of anchor to bed: ");
	for (size_t i = 0; i < result->bed_ratio_count; i++) {
		flow(writer, i ? ", " : "");
		flow(writer, phrase_quantity(result->spread[anchor][i], DIM_FORCE, units, 3).text);
		flow(writer, " at ");
		flow(writer, phrase_quantity(result->bed_ratio[i], DIM_AREA, units, 3).text);
	}
	flow_range(writer, result, anchor);
	flow_end(writer);
}

static void checks_head(struct writer *writer)
{
	writer_title(writer, "Checks");
	writer_pad(writer, 2);
	writer_text(writer, "verdict");
	writer_pad(writer, CHECK_ID);
	writer_text(writer, "check");
	writer_right(writer, "demand", CHECK_DEMAND);
	writer_right(writer, "capacity", CHECK_CAPACITY);
	writer_right(writer, "ratio", CHECK_RATIO);
	writer_pad(writer, CHECK_WHERE);
	writer_text(writer, "where");
	writer_newline(writer);
}

/* title and source below the numbers, so that the source has the room it needs */
static void check_source(struct writer *writer, const struct check_result *check)
{
	writer_pad(writer, CHECK_ID);
	flow_begin(writer, CHECK_ID);
	flow(writer, check->check->title);
	flow(writer, " [");
	flow(writer, check->check->source);
	flow(writer, "]");
	flow_end(writer);
}

static void check_row(struct writer *writer, const struct result *result,
                      const struct check_result *check)
{
	const struct finding *finding = &check->finding;
	writer_pad(writer, 2);
	writer_style(writer, verdict_style(finding->verdict));
	writer_text(writer, verdict_word(finding->verdict));
	writer_style(writer, STYLE_PLAIN);
	writer_pad(writer, CHECK_ID);
	writer_text(writer, check->check->id);
	if (finding->computed) {
		struct phrase_pair pair = phrase_pair(finding, result_units(result));
		writer_right(writer, pair.demand.text, CHECK_DEMAND);
		writer_right(writer, pair.capacity.text, CHECK_CAPACITY);
	} else {
		writer_right(writer, "-", CHECK_DEMAND);
		writer_right(writer, "-", CHECK_CAPACITY);
	}
	writer_right(writer, phrase_ratio(finding).text, CHECK_RATIO);
	flow_begin(writer, CHECK_WHERE);
	flow_subject(writer, result->cell, check, true);
	flow_end(writer);
	check_source(writer, check);
	for (size_t i = 0; i < finding->note_count; i++)
		paragraph(writer, "", CHECK_ID, finding->notes[i]);
}

const char *left_out_reason(const struct result *result, const char *id)
{
	for (size_t i = 0; i < result->left_out_count; i++)
		if (strcmp(id, result->left_out[i].id) == 0)
			return result->left_out[i].why;
	return NULL;
}

void text_checks(struct writer *writer, const struct result *result, const char *only)
{
	if (result->check_count == 0 || (only && left_out_reason(result, only)))
		return;
	checks_head(writer);
	for (size_t i = 0; i < result->check_count; i++)
		if (!only || strcmp(only, result->checks[i].check->id) == 0)
			check_row(writer, result, &result->checks[i]);
}

void text_left_out(struct writer *writer, const struct result *result)
{
	if (result->left_out_count == 0)
		return;
	writer_title(writer, "Checks that do not apply");
	for (size_t i = 0; i < result->left_out_count; i++) {
		writer_pad(writer, 2);
		paragraph(writer, result->left_out[i].id, 24, result->left_out[i].why);
	}
}
