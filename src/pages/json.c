/* The result as one JSON object. Keys, their order and their units are those of
 * refdata/result.schema.json: kN, kN m, mm, MPa, deg; null where a thing was not computed. */
#include "json_parts.h"
#include "pages.h"
#include "phrases.h"
#include "substitute.h"
#include <stdio.h>
#include <string.h>

/* a value in the unit of the page; shares and pure numbers as they are */
static double shown_value(double value, enum dimension dimension)
{
	const struct unit *unit = quantity_display_unit(dimension, UNITS_METRIC);
	return unit && dimension != DIM_SHARE ? value / unit->factor : value;
}

static const char *shown_unit(enum dimension dimension)
{
	const char *name = dimension == DIM_SHARE ? "" : unit_name(dimension, UNITS_METRIC);
	return *name ? name : NULL;
}

static void anchor_list(struct json *json, uint64_t mask)
{
	json_open(json, '[');
	for (int i = 0; i < MAX_ANCHORS; i++) {
		char id[32];
		snprintf(id, sizeof id, "A%d", i + 1);
		if (mask >> i & 1)
			json_text(json, id);
	}
	json_close(json, ']');
}

static double in_degrees(double heading)
{
	double degrees = shown_value(heading, DIM_ANGLE);
	while (degrees < 0)
		degrees += 360;
	while (degrees >= 360)
		degrees -= 360;
	return degrees;
}

/* setup, case and heading as members of the open object */
static void where_members(struct json *json, const struct cell *cell, const struct occurrence *at)
{
	bool named = at->setup < cell->setups.count;
	json_key_text(json, "setup", named ? setup_name(cell, at->setup) : NULL);
	json_key_text(json, "case", at->load_case ? at->load_case->name : NULL);
	bool known = at->load_case && at->has_heading;
	json_key_number(json, "heading_deg", known, known ? in_degrees(at->heading) : 0);
}

static void files_member(struct json *json, const struct history_files *files)
{
	json_key(json, "files");
	json_open(json, '[');
	for (size_t i = 0; files && i < files->count; i++) {
		json_open(json, '{');
		json_key_text(json, "file", files->list[i].name);
		json_key_text(json, "sha256", files->list[i].sha256);
		json_close(json, '}');
	}
	json_close(json, ']');
}

void json_input_member(struct json *json, const struct result *result)
{
	json_key(json, "input");
	json_open(json, '{');
	json_key_text(json, "file", result->file ? result->file : "");
	json_key_text(json, "sha256", result->sha256 ? result->sha256 : "");
	files_member(json, result->histories);
	json_close(json, '}');
}

static void governing_member(struct json *json, const struct result *result)
{
	json_key(json, "governing");
	if (result->governing >= result->check_count) {
		json_null(json);
		return;
	}
	const struct check_result *check = &result->checks[result->governing];
	json_open(json, '{');
	json_key_text(json, "check", check->check->id);
	json_key(json, "anchors");
	anchor_list(json, check->subject.anchors);
	where_members(json, result->cell, &check->at);
	json_key_number(json, "ratio", check->finding.computed, check->finding.ratio);
	json_close(json, '}');
}

static void occurrence_member(struct json *json, const char *key, const struct result *result,
                              const struct occurrence *at)
{
	json_key(json, key);
	if (!at->load_case) {
		json_null(json);
		return;
	}
	json_open(json, '{');
	where_members(json, result->cell, at);
	json_close(json, '}');
}

static void anchors_member(struct json *json, const struct result *result)
{
	static const struct occurrence nowhere = {.load_case = NULL};
	json_key(json, "anchors");
	json_open(json, '[');
	for (size_t i = 0; i < result->anchor_count; i++) {
		const struct anchor_result *anchor = &result->anchor[i];
		json_open(json, '{');
		json_key_text(json, "id", anchor->id);
		json_key_number(json, "x_mm", true, anchor->at[0]);
		json_key_number(json, "y_mm", true, anchor->at[1]);
		json_key_number(json, "tension_kN", anchor->computed,
		           shown_value(anchor->tension, DIM_FORCE));
		json_key_number(json, "shear_kN", anchor->computed,
		           shown_value(anchor->shear, DIM_FORCE));
		occurrence_member(json, "tension_at", result,
		                  anchor->computed ? &anchor->tension_at : &nowhere);
		occurrence_member(json, "shear_at", result,
		                  anchor->computed ? &anchor->shear_at : &nowhere);
		json_close(json, '}');
	}
	json_close(json, ']');
}

/* Steps stand in base units, so that a reader can evaluate each expression from the earlier
 * values. */
void json_trace_member(struct json *json, const char *key, const struct trace *trace)
{
	json_key(json, key);
	json_open(json, '[');
	for (size_t i = 0; i < trace->count; i++) {
		const struct step *step = &trace->steps[i];
		const char *unit = base_unit_name(step->dimension);
		json_open(json, '{');
		json_key_text(json, "symbol", step->symbol);
		json_key_text(json, "expression", step->expression ? step->expression : "");
		json_key_number(json, "value", true, step->value);
		json_key_text(json, "unit", *unit ? unit : NULL);
		json_key_text(json, "source", step->source ? step->source : "");
		json_key_number(json, "line", step->input.line > 0, step->input.line);
		json_close(json, '}');
	}
	json_close(json, ']');
}

static void numbers_members(struct json *json, const struct finding *finding)
{
	bool known = finding->computed;
	json_key_number(json, "demand", known, shown_value(finding->demand, finding->dimension));
	json_key_number(json, "capacity", known,
	                shown_value(finding->capacity, finding->dimension));
	json_key_text(json, "unit", known ? shown_unit(finding->dimension) : NULL);
	json_key_number(json, "ratio", known, finding->ratio);
}

static void check_object(struct json *json, const struct result *result,
                         const struct check_result *check)
{
	const struct finding *finding = &check->finding;
	json_open(json, '{');
	json_key_text(json, "id", check->check->id);
	json_key_text(json, "title", check->check->title);
	json_key_text(json, "verdict", verdict_word(finding->verdict));
	numbers_members(json, finding);
	json_key_text(json, "source", check->check->source);
	json_key(json, "anchors");
	anchor_list(json, check->subject.anchors);
	json_key_number(json, "edge", check->subject.edge > 0, check->subject.edge);
	where_members(json, result->cell, &check->at);
	json_key(json, "missing");
	json_open(json, '[');
	for (size_t i = 0; i < finding->missing_count; i++)
		json_text(json, finding->missing[i]);
	json_close(json, ']');
	json_trace_member(json, "trace", &check->trace);
	json_close(json, '}');
}

static void required_member(struct json *json, const struct required *required)
{
	json_key(json, "required");
	if (!required->computed) {
		json_null(json);
		return;
	}
	json_open(json, '{');
	json_key_number(json, "ultimate_tension_kN", true,
	                shown_value(required->tension, DIM_FORCE));
	json_key_number(json, "ultimate_shear_kN", true, shown_value(required->shear, DIM_FORCE));
	json_key(json, "pairs");
	json_open(json, '[');
	for (size_t i = 0; i < required->pair_count; i++) {
		json_open(json, '[');
		json_number(json, shown_value(required->pair[i].tension, DIM_FORCE));
		json_number(json, shown_value(required->pair[i].shear, DIM_FORCE));
		json_close(json, ']');
	}
	json_close(json, ']');
	json_key(json, "at_least");
	json_bool(json, required->at_least);
	json_close(json, '}');
}

static void lists_members(struct json *json, const struct result *result)
{
	json_key(json, "left_out");
	json_open(json, '[');
	for (size_t i = 0; i < result->left_out_count; i++) {
		json_open(json, '{');
		json_key_text(json, "id", result->left_out[i].id);
		json_key_text(json, "why", result->left_out[i].why);
		json_close(json, '}');
	}
	json_close(json, ']');
	json_key(json, "to_measure");
	json_open(json, '[');
	for (size_t i = 0; i < result->to_measure_count; i++) {
		json_open(json, '{');
		json_key_text(json, "what", result->to_measure[i].what);
		json_key_text(json, "why", result->to_measure[i].why);
		json_key_text(json, "how", result->to_measure[i].how);
		json_close(json, '}');
	}
	json_close(json, ']');
}

static void put_sentences(struct json *json, const struct sentences *sentences, const char *prefix)
{
	for (size_t i = 0; i < sentences->count; i++) {
		char text[1024];
		snprintf(text, sizeof text, "%s%s", prefix, sentences->list[i]);
		json_text(json, *prefix ? text : sentences->list[i]);
	}
}

static void sentences_members(struct json *json, const struct result *result)
{
	json_key(json, "assumptions");
	json_open(json, '[');
	put_sentences(json, &result->assumptions, "");
	json_close(json, ']');
	json_key(json, "cautions");
	json_open(json, '[');
	/* departures have no key of their own, and must be on every page */
	put_sentences(json, &result->departures, "departure: ");
	put_sentences(json, &result->cautions, "");
	json_close(json, ']');
}

static void checks_member(struct json *json, const struct result *result, const char *only)
{
	json_key(json, "checks");
	json_open(json, '[');
	for (size_t i = 0; i < result->check_count; i++)
		if (!only || strcmp(only, result->checks[i].check->id) == 0)
			check_object(json, result, &result->checks[i]);
	json_close(json, ']');
}

static void result_object(struct json *json, const struct result *result, const char *only)
{
	json_open(json, '{');
	json_key_text(json, "standfast", release_version());
	json_input_member(json, result);
	json_key_text(json, "verdict", verdict_word(result->verdict));
	governing_member(json, result);
	anchors_member(json, result);
	json_cycles_member(json, result);
	checks_member(json, result, only);
	required_member(json, &result->required);
	json_unanchored_member(json, result);
	lists_members(json, result);
	sentences_members(json, result);
	json_close(json, '}');
}

bool page_json(const struct result *result, const struct page_options *options,
               write_function *write, void *user)
{
	struct writer writer;
	writer_open(&writer, write, user, false);
	struct json json = {&writer, true};
	result_object(&json, result, options->only);
	writer_newline(&writer);
	return writer_close(&writer);
}

static void fault_object(struct json *json, const struct diagnostic *fault,
                         const struct page_source sources[], size_t count)
{
	bool placed = fault->mark.line > 0;
	json_open(json, '{');
	json_key_number(json, "line", placed, fault->mark.line);
	json_key_number(json, "column", placed, fault->mark.column);
	json_key_text(json, "code", fault_code(fault->fault));
	json_key_text(json, "path", fault->path);
	json_key_text(json, "message", fault->message);
	json_key_text(json, "hint", fault->hint);
	if (fault->mark.file > 0 && fault->mark.file < count)
		json_key_text(json, "file", sources[fault->mark.file].file);
	json_close(json, '}');
}

bool page_json_faults_of(const struct page_source sources[], size_t count, const char *sha256,
                         const struct diagnostics *faults, write_function *write, void *user)
{
	struct writer writer;
	writer_open(&writer, write, user, false);
	struct json json = {&writer, true};
	json_open(&json, '{');
	json_key_text(&json, "standfast", release_version());
	json_key(&json, "input");
	json_open(&json, '{');
	json_key_text(&json, "file", sources[0].file ? sources[0].file : "");
	json_key_text(&json, "sha256", sha256 ? sha256 : "");
	json_close(&json, '}');
	json_key(&json, "error");
	json_bool(&json, true);
	json_key(&json, "diagnostics");
	json_open(&json, '[');
	for (size_t i = 0; i < faults->count; i++)
		fault_object(&json, &faults->list[i], sources, count);
	json_close(&json, ']');
	json_close(&json, '}');
	writer_newline(&writer);
	return writer_close(&writer);
}

bool page_json_faults(const char *file, const char *sha256, const struct diagnostics *faults,
                      write_function *write, void *user)
{
	const struct page_source source = {file, NULL, 0};
	return page_json_faults_of(&source, 1, sha256, faults, write, user);
}
