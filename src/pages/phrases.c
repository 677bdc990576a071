#include "phrases.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

struct phrase phrase_quantity(double value, enum dimension dimension, enum unit_system system,
                              int digits)
{
	struct phrase out;
	const struct unit *unit = quantity_display_unit(dimension, system);
	quantity_write(value, unit, digits, out.text, sizeof out.text);
	return out;
}

/* A whole number of tenths, hundredths ... with a point put in: no decimal sign of any locale comes
 * in. */
static void write_fixed(double value, int decimals, char *out, size_t room)
{
	char digits[32];
	double scale = 1;
	for (int i = 0; i < decimals; i++)
		scale *= 10;
	double scaled = round(fabs(value) * scale);
	if (!(scaled < 1e15)) {
		number_write(value, 6, out, room);
		return;
	}
	/* at least one digit before the point */
	int length = snprintf(digits, sizeof digits, "%07llu", (unsigned long long)scaled);
	int first = 0;
	while (digits[first] == '0' && length - first > decimals + 1)
		first++;
	int whole = length - decimals - first;
	snprintf(out, room, "%s%.*s%s%s", value < 0 && scaled > 0 ? "-" : "", whole, digits + first,
	         decimals > 0 ? "." : "", digits + first + whole);
}

struct phrase phrase_fixed(double value, enum dimension dimension, enum unit_system system,
                           int decimals)
{
	struct phrase out;
	const struct unit *unit = quantity_display_unit(dimension, system);
	write_fixed(unit ? value / unit->factor : value, decimals, out.text, sizeof out.text);
	return out;
}

const char *unit_name(enum dimension dimension, enum unit_system system)
{
	const struct unit *unit = quantity_display_unit(dimension, system);
	return unit ? unit->name : "";
}

struct phrase_pair phrase_pair(const struct finding *finding, enum unit_system system)
{
	struct phrase_pair out;
	int digits = 4;
	do {
		out.demand = phrase_quantity(finding->demand, finding->dimension, system, digits);
		out.capacity = phrase_quantity(finding->capacity, finding->dimension, system,
		                               digits);
		digits++;
	} while (digits <= 7 && finding->demand != finding->capacity &&
	         strcmp(out.demand.text, out.capacity.text) == 0);
	return out;
}

struct phrase phrase_ratio_up(double ratio)
{
	struct phrase out = {"-"};
	if (isnan(ratio))
		return out;
	if (ratio >= 1000) {
		snprintf(out.text, sizeof out.text, "> 999");
		return out;
	}
	double hundredths = ratio * 100, near = round(hundredths);
	/* what is a whole hundredth but for the rounding of doubles stays it */
	double up = fabs(hundredths - near) <= 1e-9 * fmax(1, fabs(hundredths)) ? near
	                                                                        : ceil(hundredths);
	if (ratio > 1 && up <= 100)
		up = 101;
	if (ratio <= 1 && up > 100)
		up = 100;
	write_fixed(up / 100, 2, out.text, sizeof out.text);
	return out;
}

struct phrase phrase_ratio(const struct finding *finding)
{
	bool other_reason = finding->verdict == FAILS && finding->ratio <= 1;
	if (!finding->computed || other_reason)
		return (struct phrase){"-"};
	return phrase_ratio_up(finding->ratio);
}

struct phrase phrase_heading(double heading)
{
	struct phrase out;
	const double turn = 360, degree = 57.29577951308232;
	double degrees = fmod(heading * degree, turn);
	if (degrees < 0)
		degrees += turn;
	double whole = round(degrees);
	snprintf(out.text, sizeof out.text, "%d deg", whole >= turn ? 0 : (int)whole);
	return out;
}

struct phrase phrase_count(size_t count, const char *one, const char *many)
{
	struct phrase out;
	snprintf(out.text, sizeof out.text, "%zu %s", count, count == 1 ? one : many);
	return out;
}

const char *verdict_word(enum verdict verdict)
{
	static const char *const words[] = {
		[HOLDS] = "holds", [UNPROVEN] = "unproven", [FAILS] = "fails"};
	return words[verdict];
}

const char *verdict_capitals(enum verdict verdict)
{
	static const char *const words[] = {
		[HOLDS] = "HOLDS", [UNPROVEN] = "UNPROVEN", [FAILS] = "FAILS"};
	return words[verdict];
}

enum style verdict_style(enum verdict verdict)
{
	static const enum style styles[] = {
		[HOLDS] = STYLE_HOLDS, [UNPROVEN] = STYLE_UNPROVEN, [FAILS] = STYLE_FAILS};
	return styles[verdict];
}

void flow_anchors(struct writer *writer, uint64_t mask)
{
	bool first = true;
	for (int i = 0; i < MAX_ANCHORS; i++) {
		char id[32];
		if (!(mask >> i & 1))
			continue;
		snprintf(id, sizeof id, "%sA%d", first ? "" : ", ", i + 1);
		flow(writer, id);
		first = false;
	}
}

bool flow_setup(struct writer *writer, const struct cell *cell, size_t setup)
{
	if (setup >= cell->setups.count)
		return false;
	const char *name = setup_name(cell, setup);
	char number[32];
	snprintf(number, sizeof number, "setup %zu", setup + 1);
	flow(writer, *name ? name : number);
	return true;
}

void flow_case(struct writer *writer, const struct occurrence *at, bool brief)
{
	flow(writer, at->load_case->name);
	if (!at->has_heading)
		return;
	flow(writer, brief ? " toward " : ", pushing toward ");
	flow(writer, phrase_heading(at->heading).text);
	flow(writer, brief ? "" : " (cell axes)");
}

bool is_of_setup(const struct cell *cell, const struct check_result *check)
{
	if (cell->setups.count < 2)
		return cell->setups.count == 1;
	if (check->at.load_case)
		return true;
	if (!check->finding.computed)
		return check->finding.verdict != HOLDS;
	for (size_t s = 1; s < cell->setups.count; s++) {
		double difference = check->setup_ratio[s] - check->setup_ratio[0];
		if (check->has_setup_ratio[s] != check->has_setup_ratio[0] || difference > 0 ||
		    difference < 0)
			return true;
	}
	return false;
}

/* The lowest bit alone. */
static uint64_t first_anchor(uint64_t mask)
{
	return mask & (~mask + 1);
}

static void flow_equals(struct writer *writer, const struct cell *cell, uint64_t mask)
{
	size_t count = cell->anchors.count;
	uint64_t all = count < MAX_ANCHORS ? ((uint64_t)1 << count) - 1 : ~(uint64_t)0;
	flow(writer, ", equal in ");
	if (mask == all)
		flow(writer, "all");
	else
		flow_anchors(writer, mask & ~first_anchor(mask));
}

bool flow_subject(struct writer *writer, const struct cell *cell, const struct check_result *check,
                  bool brief)
{
	uint64_t anchors = check->subject.anchors;
	bool of_setup = is_of_setup(cell, check), any = anchors != 0;
	/* a heading is that of the first anchor: in the others it is another one; a group has one
	 */
	bool apart = check->at.load_case && check->at.has_heading &&
	             check->check->stage != OF_STATE &&
	             anchors != first_anchor(anchors);
	flow_anchors(writer, apart ? first_anchor(anchors) : anchors);
	if (of_setup) {
		flow(writer, any ? ", " : "");
		flow_setup(writer, cell, check->at.setup);
		any = true;
	}
	if (check->at.load_case) {
		flow(writer, any ? ", " : "");
		flow_case(writer, &check->at, brief);
		any = true;
	}
	if (apart)
		flow_equals(writer, cell, anchors);
	return any;
}
