#include "arm_parts.h"
#include <math.h>
#include <string.h>

enum { DIGITS = 4 };

const char *arm_kind_word(enum reaction_kind kind)
{
	static const char *const words[REACTION_KINDS] = {
		[REACTION_TILTING] = "tilting",     [REACTION_HORIZONTAL] = "horizontal",
		[REACTION_UPLIFT] = "uplift",       [REACTION_DOWNFORCE] = "downforce",
		[REACTION_TWISTING] = "twisting",
	};
	return words[kind];
}

enum dimension arm_kind_dimension(enum reaction_kind kind)
{
	return kind == REACTION_TILTING || kind == REACTION_TWISTING ? DIM_MOMENT : DIM_FORCE;
}

const char *arm_way_word(enum arm_way way)
{
	static const char *const words[] = {
		[WAY_CHAIN] = "chain", [WAY_SWING] = "swing", [WAY_HISTORY] = "history"};
	return words[way];
}

const char *arm_case_word(enum arm_case arm_case)
{
	static const char *const words[ARM_CASES] = {[ARM_REST] = "rest",
	                                             [ARM_NORMAL] = "normal",
	                                             [ARM_EMERGENCY_STOP] = "emergency_stop"};
	return words[arm_case];
}

const char *arm_case_name(enum arm_case arm_case)
{
	static const char *const names[ARM_CASES] = {[ARM_REST] = "at rest",
	                                             [ARM_NORMAL] = "normal motion",
	                                             [ARM_EMERGENCY_STOP] = "emergency stop"};
	return names[arm_case];
}

bool arm_is_estimate(enum arm_way way)
{
	return way == WAY_SWING;
}

bool arm_has_companions(const struct arm_source *source)
{
	return source->way != WAY_SWING;
}

bool arm_has_bound(const struct arm_extreme *extreme)
{
	return extreme->bound < HUGE_VAL;
}

bool arm_sheet_known(const struct cell *cell, enum arm_case arm_case)
{
	const struct reaction *sheet = &cell->arm.reaction[arm_case];
	return arm_case != ARM_REST && (is_known(sheet->vertical) || is_known(sheet->horizontal) ||
	                                is_known(sheet->tilting) || is_known(sheet->twisting));
}

static bool same_extreme(const struct arm_extreme *one, const struct arm_extreme *other)
{
	return memcmp(&one->value, &other->value, sizeof one->value) == 0 &&
	       memcmp(&one->bound, &other->bound, sizeof one->bound) == 0 &&
	       memcmp(one->load.force, other->load.force, sizeof one->load.force) == 0 &&
	       memcmp(one->load.moment, other->load.moment, sizeof one->load.moment) == 0;
}

static bool same_source(const struct arm_source *one, const struct arm_source *other)
{
	bool same = one->way == other->way && one->arm_case == other->arm_case &&
	            one->joints == other->joints && strcmp(one->name, other->name) == 0;
	for (int kind = 0; same && kind < REACTION_KINDS; kind++)
		same = same_extreme(&one->extreme[kind], &other->extreme[kind]);
	return same;
}

bool arm_same_loads(const struct arm_loads *one, const struct arm_loads *other)
{
	if (!one || !other || one == other)
		return one == other;
	if (one->count != other->count)
		return false;
	for (size_t i = 0; i < one->count; i++)
		if (!same_source(&one->list[i], &other->list[i]))
			return false;
	return true;
}

size_t arm_most_joints(const struct result *result)
{
	size_t most = 0;
	for (size_t s = 0; s < setup_count(result->cell); s++)
		for (size_t i = 0; result->arm[s] && i < result->arm[s]->count; i++)
			if (result->arm[s]->list[i].joints > most)
				most = result->arm[s]->list[i].joints;
	return most;
}

bool arm_joint_slides(const struct cell *cell, size_t joint)
{
	const struct chain_joint *rows = cell->arm.chain.joints.rows;
	return joint < cell->arm.chain.joints.count && rows[joint].kind.value == PRISMATIC;
}

double arm_joint_shown(double value, bool slides)
{
	const double fine = 1e4, degree = quantity_display_unit(DIM_ANGLE, UNITS_METRIC)->factor;
	double rounded = round(fine * (slides ? 1000 * value : value / degree)) / fine;
	return rounded < 0 || rounded > 0 ? rounded : 0;
}

/* --- cautions --- */

static bool any_way(const struct result *result, enum arm_way way)
{
	for (size_t s = 0; s < setup_count(result->cell); s++)
		for (size_t i = 0; result->arm[s] && i < result->arm[s]->count; i++)
			if (result->arm[s]->list[i].way == way)
				return true;
	return false;
}

void arm_cautions(const struct result *result, struct sentences *out)
{
	out->count = 0;
	out->list[out->count++] =
		"a licensed engineer must review and sign this before anything is drilled or run; "
		"local codes govern";
	out->list[out->count++] =
		"no anchor is judged here: standfast check puts these reactions on the base";
	if (any_way(result, WAY_SWING))
		out->list[out->count++] =
			"ESTIMATE: the lumped arm (arm.swing) knows masses, radii, speeds and stopping "
			"times alone; ask for joint data or measure a stop before relying on it";
	if (any_way(result, WAY_CHAIN))
		out->list[out->count++] =
			"the chain moves within the limits stated, with rigid links; a collision, a hard "
			"end stop, a brake that grabs harder or a change of the limits is not in it";
	if (any_way(result, WAY_HISTORY))
		out->list[out->count++] =
			"a history holds what was recorded or simulated; a worse stop, a heavier payload "
			"or another program is not in it";
}

/* --- the block --- */

const char *arm_paste_key(int value)
{
	static const char *const keys[PASTE_VALUES] = {"vertical", "horizontal", "tilting",
	                                               "twisting"};
	return keys[value];
}

enum dimension arm_paste_dimension(int value)
{
	return value == PASTE_TILTING || value == PASTE_TWISTING ? DIM_MOMENT : DIM_FORCE;
}

static void raise_value(struct arm_paste_value *value, double swept, double bound)
{
	bool bounded = bound < HUGE_VAL;
	double pasted = bounded && bound > swept ? bound : swept;
	value->swept = value->known ? fmax(value->swept, swept) : swept;
	value->value = value->known ? fmax(value->value, pasted) : pasted;
	/* what several sources give is a bound where each of them gives one */
	value->bound = bounded && (!value->known || value->bound);
	value->known = true;
}

static void raise_kind(struct arm_paste_case *to, int value, const struct arm_extreme *extreme)
{
	raise_value(&to->value[value], extreme->value, extreme->bound);
}

/* The uplift is minus the least downforce: W + (W - least) = 2 W + uplift. */
static void raise_vertical(struct arm_paste_value *to, const struct arm_extreme kinds[],
                           const struct arm_paste *paste)
{
	const struct arm_extreme *up = &kinds[REACTION_UPLIFT], *down = &kinds[REACTION_DOWNFORCE];
	double included = paste->weight + paste->payload, twice = 2 * paste->weight;
	bool bounded = arm_has_bound(up) && arm_has_bound(down);
	double swept = fmax(included, fmax(down->value, twice + up->value));
	double bound = fmax(included, fmax(down->bound, twice + up->bound));
	if (paste->weight > 0)
		raise_value(to, swept, bounded ? bound : HUGE_VAL);
}

static double payload_weight(const struct arm *arm)
{
	double stated = is_known(arm->payload) ? arm->payload.value : 0;
	double in_chain = is_known(arm->chain.payload_mass) ? arm->chain.payload_mass.value : 0;
	return STANDARD_GRAVITY * fmax(stated, in_chain);
}

/* An arm_gap: user is the paste. */
static void note_peak(void *user, const char *path)
{
	struct arm_paste *paste = user;
	if (strstr(path, ".peak_factor"))
		paste->peak_open = true;
}

void arm_paste(const struct cell *cell, const struct arm_loads *loads, enum arm_way way,
               struct arm_paste *out)
{
	*out = (struct arm_paste){.known = false};
	if (!loads)
		return;
	out->weight = loads->weight;
	out->payload = payload_weight(&cell->arm);
	if (way != WAY_HISTORY)
		arm_gaps(cell, note_peak, out);
	for (size_t i = 0; i < loads->count; i++) {
		const struct arm_source *source = &loads->list[i];
		if (source->way != way || source->arm_case == ARM_REST)
			continue;
		struct arm_paste_case *to = &out->of[source->arm_case];
		raise_vertical(&to->value[PASTE_VERTICAL], source->extreme, out);
		raise_kind(to, PASTE_HORIZONTAL, &source->extreme[REACTION_HORIZONTAL]);
		raise_kind(to, PASTE_TILTING, &source->extreme[REACTION_TILTING]);
		raise_kind(to, PASTE_TWISTING, &source->extreme[REACTION_TWISTING]);
		out->known = to->known = true;
	}
}

struct arm_paste_text arm_paste_up(double value, enum dimension dimension, enum unit_system units)
{
	struct arm_paste_text out;
	const struct unit *unit = quantity_display_unit(dimension, units);
	double shown = value > 0 ? value / unit->factor : 0;
	if (shown > 0) {
		double scale = pow(10, DIGITS - 1 - floor(log10(shown)));
		/* a number that has four digits already is not raised by its own rounding */
		shown = ceil(shown * scale * (1 - 1e-12)) / scale;
	}
	quantity_write(shown * unit->factor, unit, DIGITS, out.text, sizeof out.text);
	return out;
}
