/* The earthquake's numbers against the code that they are for. */
#include "validity_parts.h"
#include <stdio.h>

enum { CODES = 3 };

static const char *const code_words[CODES] = {
	[QUAKE_ASCE7_16] = "asce7_16", [QUAKE_ASCE7_22] = "asce7_22", [QUAKE_EN1998] = "en1998"};

/* A number of the earthquake and the codes that read it, a bit each. */
struct quake_key { const char *key; const struct number *number; unsigned codes; };

enum {
	IN_7_16 = 1u << QUAKE_ASCE7_16,
	IN_7_22 = 1u << QUAKE_ASCE7_22,
	IN_EN = 1u << QUAKE_EN1998,
	IN_ASCE = IN_7_16 | IN_7_22
};

/* A number that the code does not know would be left out in silence. */
static void check_key(struct validity *validity, const struct quake_key *key)
{
	int code = validity->cell->earthquake.code.value;
	char path[DIAGNOSTIC_PATH], hint[DIAGNOSTIC_HINT], of[60] = "";
	if (key->number->given.origin != GIVEN || (key->codes & 1u << code))
		return;
	for (int i = 0; i < CODES; i++) {
		size_t at = 0;
		while (of[at])
			at++;
		if (key->codes & 1u << i)
			snprintf(of + at, sizeof of - at, "%s%s", at ? " or " : "", code_words[i]);
	}
	snprintf(path, sizeof path, "earthquake.%s", key->key);
	snprintf(hint, sizeof hint, "leave it out (in a setup: unknown), or write code: %s", of);
	validity_fault(validity, FAULT_CONTRADICTION, key->number->given.mark, path, hint,
	               "%s is no number of code: %s", key->key, code_words[code]);
}

/* ASCE 7-22 13.3.1, Rmu: R, Ie and the overstrength of the building stand in one expression. */
static void check_building(struct validity *validity)
{
	const struct earthquake *quake = &validity->cell->earthquake;
	const struct quake_key keys[] = {
		{"building_response", &quake->building_response, IN_7_22},
		{"building_importance", &quake->building_importance, IN_7_22},
		{"building_overstrength", &quake->building_overstrength, IN_7_22}};
	const struct number *given = NULL;
	for (size_t i = 0; i < 3; i++)
		given = is_known(*keys[i].number) ? keys[i].number : given;
	for (size_t i = 0; given && i < 3; i++) {
		char path[DIAGNOSTIC_PATH];
		if (is_known(*keys[i].number))
			continue;
		snprintf(path, sizeof path, "earthquake.%s", keys[i].key);
		validity_fault(validity, FAULT_MISSING_KEY, given->given.mark, path,
		               "write all three of building_response, building_importance and "
		               "building_overstrength, or none: the safe side is then taken",
		               "%s is missing beside it", keys[i].key);
		return;
	}
}

void validity_earthquake(struct validity *validity)
{
	const struct earthquake *quake = &validity->cell->earthquake;
	const struct quake_key keys[] = {
		{"sds", &quake->sds, IN_ASCE},
		{"amplification", &quake->amplification, IN_7_16},
		{"response", &quake->response, IN_ASCE},
		{"resonance", &quake->resonance, IN_7_22},
		{"overstrength", &quake->overstrength, IN_ASCE},
		{"building_period", &quake->building_period, IN_7_22},
		{"building_response", &quake->building_response, IN_7_22},
		{"building_importance", &quake->building_importance, IN_7_22},
		{"building_overstrength", &quake->building_overstrength, IN_7_22},
		{"ground_share", &quake->ground_share, IN_EN},
		{"soil", &quake->soil, IN_EN},
		{"period_ratio", &quake->period_ratio, IN_EN},
		{"behaviour", &quake->behaviour, IN_EN}};
	if (!is_known(quake->code))
		return;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
		check_key(validity, &keys[i]);
	if (quake->code.value == QUAKE_ASCE7_22)
		check_building(validity);
}
