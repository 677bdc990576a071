/* "cycles": one object a source of load cycles and anchor. */
#include "json_parts.h"
#include "phrases.h"

#include <stdio.h>

#define N_PER_KN 1e3
#define YEAR (365 * 86400.0)          /* as units.c [s] */

static void cycles_object(struct json *json, const struct result *result, size_t setup,
                          const struct cycle_source *source, size_t anchor)
{
	const struct anchor_cycles *cycles = &source->anchor[anchor];
	const struct cell *cell = setup_cell(result->cell, setup);
	const struct number *life = &cell->arm.service_life, *a_year = source->a_year;
	bool counted = source->counted, often = counted && is_known(*a_year);
	double yearly = (double)cycles->count * a_year->value;
	char id[32];
	snprintf(id, sizeof id, "A%zu", anchor + 1);
	json_open(json, '{');
	json_key_text(json, "setup",
	              setup < result->cell->setups.count ? setup_name(result->cell, setup) : NULL);
	json_key_text(json, "source", source->name);
	json_key_text(json, "anchor", id);
	json_key_number(json, "range_kN", counted, cycles->range / N_PER_KN);
	json_key_number(json, "mean_kN", counted, cycles->mean / N_PER_KN);
	json_key_number(json, "bed_ratio_mm2", counted && cycles->range > 0, cycles->bed_ratio);
	json_key_number(json, "a_round", counted, (double)cycles->count);
	json_key_number(json, "above_limit", counted && is_known(cell->arm.range_limit),
	                (double)cycles->above);
	json_key_number(json, "below_1_percent", counted, (double)cycles->noise);
	json_key_number(json, "a_year", often, yearly);
	json_key_number(json, "in_service_life", often && is_known(*life),
	                yearly * life->value / YEAR);
	json_close(json, '}');
}

void json_cycles_member(struct json *json, const struct result *result)
{
	json_key(json, "cycles");
	json_open(json, '[');
	for (size_t s = 0; s < setup_count(result->cell); s++)
		for (size_t i = 0; i < result->cycles[s].count; i++)
			for (size_t a = 0; a < result->anchor_count; a++)
				cycles_object(json, result, s, &result->cycles[s].list[i], a);
	json_close(json, ']');
}
