#include "seismic_component.h"

#include <string.h>

#define TABLE_16 "ASCE 7-16 Table 13.6-1"
#define TABLE_EN "EN 1998-1 Table 4.4"

/* ASCE 7-16: ap, Rp, Om0; EN 1998-1: 0, qa, 0. All of it from memory. */
static const struct seismic_component table[] = {
	{"asce7_16_other", SEISMIC_ASCE7_16, "other mechanical and electrical components", 1, 1.5,
	 2, TABLE_16, MARK_FROM_MEMORY,
	 "the row for what no other row names; the largest force of the rigid rows"},
	{"asce7_16_rotating", SEISMIC_ASCE7_16, "engines and pumps and the like", 1, 2.5, 2,
	 TABLE_16, MARK_FROM_MEMORY, "whether an arm counts as such is the engineer's to say"},
	{"asce7_16_cabinet", SEISMIC_ASCE7_16,
	 "cabinets of sheet-metal framing for controls and switch gear", 2.5, 6, 2, TABLE_16,
	 MARK_FROM_MEMORY, ""},
	{"asce7_16_conveyor", SEISMIC_ASCE7_16, "conveyors for goods", 2.5, 3, 2, TABLE_16,
	 MARK_FROM_MEMORY, ""},
	{"en1998_cantilever", SEISMIC_EN1998,
	 "masts and tanks on legs: cantilevers over more than half their height", 0, 1, 0, TABLE_EN,
	 MARK_FROM_MEMORY, "the table has no row for machines; 1 is the safe value"},
	{"en1998_cabinet", SEISMIC_EN1998,
	 "anchorage of permanent cabinets that stand on the floor", 0, 2, 0, TABLE_EN,
	 MARK_FROM_MEMORY, "the table has no row for machines; 1 is the safe value"},
};

const struct seismic_component *seismic_components(size_t *count)
{
	*count = sizeof table / sizeof table[0];
	return table;
}

const struct seismic_component *seismic_component(const char *id)
{
	for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
		if (strcmp(table[i].id, id) == 0)
			return &table[i];
	return NULL;
}
