#include "earthquake_site.h"

enum { OF_16 = 1 << QUAKE_ASCE7_16, OF_22 = 1 << QUAKE_ASCE7_22, OF_EN = 1 << QUAKE_EN1998 };

void site_gaps(const struct earthquake *quake, found_gap *gap, void *user)
{
	const struct {
		const char *path;
		const struct number *number;
		int codes;
	} keys[] = {
		{"earthquake.sds", &quake->sds, OF_16 | OF_22},
		{"earthquake.amplification", &quake->amplification, OF_16},
		{"earthquake.resonance", &quake->resonance, OF_22},
		{"earthquake.response", &quake->response, OF_16 | OF_22},
		{"earthquake.importance", &quake->importance, OF_16 | OF_22 | OF_EN},
		{"earthquake.overstrength", &quake->overstrength, OF_16 | OF_22},
		{"earthquake.ground_share", &quake->ground_share, OF_EN},
		{"earthquake.soil", &quake->soil, OF_EN},
		{"earthquake.behaviour", &quake->behaviour, OF_EN},
		{"earthquake.height_share", &quake->height_share, OF_16 | OF_22 | OF_EN},
	};
	if (!is_known(quake->code)) {
		gap(user, "earthquake.code");
		return;
	}
	for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++)
		if (keys[i].codes >> quake->code.value & 1 && !is_known(*keys[i].number))
			gap(user, keys[i].path);
}

static struct seismic_asce7_16 site_16(const struct earthquake *quake)
{
	return (struct seismic_asce7_16){
		.sds = quake->sds.value,
		.amplification = quake->amplification.value,
		.response = quake->response.value,
		.importance = quake->importance.value,
		.height_share = quake->height_share.value,
		.overstrength = quake->overstrength.value};
}

static double or_zero(const struct number *number)
{
	return is_known(*number) ? number->value : 0;
}

static struct seismic_asce7_22 site_22(const struct earthquake *quake)
{
	/* R, Ie and overstrength of the building stand in one expression: without any one of them
	 * the safe side is taken, as without all */
	bool building = is_known(quake->building_response) &&
	                is_known(quake->building_importance) &&
	                is_known(quake->building_overstrength);
	return (struct seismic_asce7_22){
		.sds = quake->sds.value,
		.importance = quake->importance.value,
		.height_share = quake->height_share.value,
		.resonance = quake->resonance.value,
		.response = quake->response.value,
		.overstrength = quake->overstrength.value,
		.building_period = or_zero(&quake->building_period),
		.building_response = building ? quake->building_response.value : 0,
		.building_importance = building ? quake->building_importance.value : 0,
		.building_overstrength = building ? quake->building_overstrength.value : 0};
}

static struct seismic_en1998 site_en(const struct earthquake *quake)
{
	return (struct seismic_en1998){
		.ground_share = quake->ground_share.value,
		.soil = quake->soil.value,
		.height_share = quake->height_share.value,
		.period_ratio = quake->period_ratio.value,
		.importance = quake->importance.value,
		.behaviour = quake->behaviour.value};
}

const char *site_fault(const struct earthquake *quake)
{
	struct seismic_asce7_16 old = site_16(quake);
	struct seismic_asce7_22 new = site_22(quake);
	struct seismic_en1998 en = site_en(quake);
	return quake->code.value == QUAKE_ASCE7_16   ? seismic_asce7_16_fault(&old)
	       : quake->code.value == QUAKE_ASCE7_22 ? seismic_asce7_22_fault(&new)
	                                             : seismic_en1998_fault(&en);
}

void site_force(const struct earthquake *quake, double weight, struct seismic_force *out,
                struct trace *trace)
{
	if (quake->code.value == QUAKE_ASCE7_16) {
		struct seismic_asce7_16 site = site_16(quake);
		seismic_asce7_16(&site, weight, out, trace);
	} else if (quake->code.value == QUAKE_ASCE7_22) {
		struct seismic_asce7_22 site = site_22(quake);
		seismic_asce7_22(&site, weight, out, trace);
	} else {
		struct seismic_en1998 site = site_en(quake);
		seismic_en1998(&site, weight, out, trace);
	}
}

const char *site_clause(const struct earthquake *quake)
{
	static const char *const clause[] = {"ASCE 7-16 13.3.1", "ASCE 7-22 13.3.1",
	                                     "EN 1998-1 4.3.5"};
	return clause[quake->code.value];
}
