/* The cell before it is anchored, as a member of the result's object: kN, mm, deg. */
#include "json_parts.h"
#include "phrases.h"

#include <math.h>

static double degrees(double angle)
{
	return angle / quantity_display_unit(DIM_ANGLE, UNITS_METRIC)->factor;
}

static void key_bool(struct json *json, const char *key, bool value)
{
	json_key(json, key);
	json_bool(json, value);
}

static void setup_member(struct json *json, const char *key, const struct cell *cell,
                         uint16_t setup)
{
	json_key_text(json, key, setup < cell->setups.count ? setup_name(cell, setup) : NULL);
}

static void support_member(struct json *json, const char *key, const struct cell *cell,
                           const struct free_support *support)
{
	json_key(json, key);
	if (!support->computed) {
		json_null(json);
		return;
	}
	double toward = fmod(degrees(support->toward) + 720, 360);
	json_open(json, '{');
	key_bool(json, "stands", support->stands);
	json_key_number(json, "tilt_deg", true, degrees(support->tilt));
	key_bool(json, "withstands_10_deg", support->withstands_ten_degrees);
	json_key_number(json, "toward_deg", true, toward);
	setup_member(json, "setup", cell, support->setup);
	json_key_number(json, "push_kN", true, support->push / 1000);
	json_key_number(json, "push_height_mm", true, support->push_height);
	key_bool(json, "push_height_assumed", support->push_height_assumed);
	setup_member(json, "push_setup", cell, support->push_setup);
	json_trace_member(json, "tilt_trace", &support->tilt_trace);
	json_trace_member(json, "push_trace", &support->push_trace);
	json_close(json, '}');
}

void json_unanchored_member(struct json *json, const struct result *result)
{
	const struct unanchored *unanchored = &result->unanchored;
	json_key(json, "unanchored");
	if (!unanchored->told) {
		json_null(json);
		return;
	}
	json_open(json, '{');
	support_member(json, "on_base", result->cell, &unanchored->on_base);
	support_member(json, "on_casters", result->cell, &unanchored->on_casters);
	key_bool(json, "at_most", unanchored->at_most);
	json_key(json, "missing");
	json_open(json, '[');
	for (size_t i = 0; i < unanchored->missing_count; i++)
		json_text(json, unanchored->missing[i]);
	json_close(json, ']');
	json_key(json, "words");
	json_open(json, '[');
	for (size_t i = 0; i < unanchored->words.count; i++)
		json_text(json, unanchored->words.list[i]);
	json_close(json, ']');
	json_close(json, '}');
}
