#include "loads.h"

#include "arm_wrench.h"
#include "earthquake.h"
#include "extra.h"
#include "gaps.h"
#include "set_wrench.h"
#include "weights.h"
#include <math.h>
#include <string.h>

#define PI 3.14159265358979323846

size_t setup_count(const struct cell *cell) { return cell->setups.count ? cell->setups.count : 1; }

const struct cell *setup_cell(const struct cell *cell, size_t s)
{
	return cell->setups.count ? ((const struct setup *)cell->setups.rows)[s].cell : cell;
}

const char *setup_name(const struct cell *cell, size_t s)
{
	return cell->setups.count ? ((const struct setup *)cell->setups.rows)[s].name.value : "";
}

bool loads_blocked(const struct loads *loads)
{
	for (size_t i = 0; i < loads->gap_count; i++)
		if (loads->gaps[i].kind == GAP_BLOCKING)
			return true;
	return false;
}

bool loads_bounding(const struct loads *loads)
{
	for (size_t i = 0; i < loads->gap_count; i++)
		if (loads->gaps[i].kind != GAP_FAVOURABLE)
			return false;
	return true;
}

/* --- building
 * ------------------------------------------------------------------------------------- */

struct builder {
	struct loads *loads;
	const struct arm_loads *const *arms;       /* of the setups, or NULL */
	struct arena *arena;
	size_t room;
	bool unknown_vertical, unknown_tilting;    /* in any setup */
	enum method method;                        /* whose loads are being added */
};

static struct load_case *new_case(struct builder *b)
{
	struct loads *loads = b->loads;
	if (loads->count == b->room) {
		size_t room = b->room ? 2 * b->room : 64;
		struct load_case *list = arena_take(b->arena, room, sizeof *list);
		if (!list)
			return NULL;
		if (loads->count)
			memcpy(list, loads->list, loads->count * sizeof *list);
		loads->list = list;
		b->room = room;
	}
	return &loads->list[loads->count++];
}

/* "1.2D + 1.6L (ACI 318-19 5.3.1)": in the letters of the code. */
static const char *factored(struct arena *arena, const struct cell *cell, const struct load_case *c)
{
	struct run_factors k = case_factors(cell, c);
	bool aci = c->method == METHOD_ACI318, low = c->run == RUN_LOW;
	const char *motion = nothing_moves(c) ? ", arm at rest as " : " + ";
	char weight[24], moving[24];
	number_write(k.weight, 3, weight, sizeof weight);
	number_write(nothing_moves(c) ? k.own : k.moving, 3, moving, sizeof moving);
	return aci ? arena_format(arena, "%sD%s%sL (ACI 318-19 5.3.1%s)", weight, motion, moving,
	                          low ? ", 0.9D with L is an addition" : "")
	           : arena_format(arena, "%sG%s%sQ (EN 1990 6.10%s)", weight, motion, moving,
	                          low ? ", 1.0G lies between" : "");
}

/* Which of its two ways the arm's weight stands in the vertical force. */
static const char *vertical_words(const struct load_case *c)
{
	if (c->by_data_sheet)
		return c->vertical == VERTICAL_MOST ? ", largest vertical force"
		                                    : ", least vertical force";
	if (c->vertical == VERTICAL_LEAST)
		return "";
	return c->method == METHOD_RATING ? ", the arm's own in full"
	                                  : ", the arm's own as it presses";
}

const char *loads_combination(struct arena *arena, const struct cell *cell,
                              const struct load_case *c)
{
	static const char *const corner_name[] = {"toward -x -y", "toward +x -y", "toward -x +y",
	                                          "toward +x +y"};
	char factor[24];
	number_write(case_factors(cell, c).weight, 3, factor, sizeof factor);
	const char *weights = c->earthquake ? c->earthquake->combination
	                      : c->method != METHOD_RATING
	                              ? factored(arena, cell, c)
	                              : arena_format(arena, "weights x %s", factor);
	return arena_format(arena, "%s%s%s%s%s", weights ? weights : "",
	                    c->run == RUN_STABILITY ? ", moving part x 1.25" : "",
	                    vertical_words(c),
	                    c->corner >= 0 ? ", boxed parts " : "",
	                    c->corner >= 0 ? corner_name[c->corner] : "");
}

static void add_weights(const struct cell *cell, struct load_case *c)
{
	struct weights w = case_weights(cell, c);
	double sign[2];
	corner_signs(c->corner, sign);
	c->weight_factor = case_factors(cell, c).weight;
	c->down = w.down;
	for (int k = 0; k < 2; k++)
		c->fixed[k] = w.moment[k] + sign[k] * w.half[k];
}

static void add_arm(const struct cell *cell, struct load_case *c, const struct wrench *wrench)
{
	const double *mount = cell->arm.mount.at;
	c->down += wrench->down;
	c->fixed[0] += wrench->down * mount[0];
	c->fixed[1] += wrench->down * mount[1];
	/* tilting adds to horizontal force times height: the worst pairing of two free headings */
	c->turning = wrench->tilting + wrench->horizontal * mount[2];
	if (wrench->horizontal != 0 || wrench->twisting != 0)
		c->turning_force[c->turning_count++] = (struct turning_force){
			.force = wrench->horizontal, .at = {mount[0], mount[1]},
			.twist = wrench->twisting};
}

static void add_extra(struct load_case *c, const struct extra_action *action)
{
	c->down += action->down;
	c->turning += action->turning;
	for (int k = 0; k < 2; k++)
		c->fixed[k] += action->fixed[k];
	for (int k = 0; k < 3; k++)
		c->fixed_shear[k] += action->shear[k];
	if (action->turns)
		c->turning_force[c->turning_count++] = action->force;
}

/* A wrench of the arm's own motion brings its range; with a further load from any side every
 * heading is possible. */
static void set_spin(struct load_case *c, bool extra_turns)
{
	bool turns = c->turning != 0 || (c->paired && c->turning_count > 0);
	if (c->spin_to > c->spin_from && !extra_turns)
		return;
	c->spin_from = turns || (c->fixed_shear[0] == 0 && c->fixed_shear[1] == 0)
	               ? 0 : atan2(c->fixed_shear[1], c->fixed_shear[0]);
	c->spin_to = turns ? 2 * PI : c->spin_from;
}

/* The readings (bits) to which a case with this reading of the flags belongs. */
static uint16_t reading_mask(const struct builder *b, const struct cell *cell,
                             enum arm_case arm_case, struct weight_reading reading)
{
	bool vertical_open = !is_known(cell->arm.vertical_includes_weight) &&
	                     arm_case != ARM_REST && arm_vertical_can_include(cell, arm_case);
	bool tilting_open = !is_known(cell->arm.tilting_includes_weight) && arm_case != ARM_REST;
	unsigned mask = 0;
	for (unsigned r = 0; r < MAX_READINGS; r++) {
		if (!(b->loads->readings & 1u << r))
			continue;
		if (vertical_open && ((r & 1) != 0) != reading.vertical_without)
			continue;
		if (tilting_open && ((r & 2) != 0) != reading.tilting_without)
			continue;
		mask |= 1u << r;
	}
	return (uint16_t)mask;
}

/* Every reading of the flags that this case of the papers leaves open. */
static int list_readings(const struct cell *cell, enum arm_case arm_case,
                         struct weight_reading out[4])
{
	const struct arm *arm = &cell->arm;
	bool can_include = arm_vertical_can_include(cell, arm_case);
	int n = 0;
	for (int r = 0; r < 4; r++) {
		struct weight_reading reading = {r & 1, r & 2};
		if (arm_case == ARM_REST && r != 0)
			continue;
		if (is_known(arm->vertical_includes_weight)
		            ? (arm->vertical_includes_weight.value == NO) !=
		                      reading.vertical_without
		            : !reading.vertical_without && !can_include)
			if (arm_case != ARM_REST)
				continue;
		if (arm_case != ARM_REST && is_known(arm->tilting_includes_weight) &&
		    (arm->tilting_includes_weight.value == NO) != reading.tilting_without)
			continue;
		out[n++] = reading;
	}
	return n;
}

/* index: see weights.h. `set` NULL: the arm as its data sheet says. */
struct source {
	enum arm_case arm_case;
	const struct extra_load *extra;
	const struct earthquake_way *quake;
	const char *name;
	uint16_t index;
	const struct arm_load_set *set;
	bool bound, estimate;
	/* what always acts: the arm at rest under one name and index, without guaranteed bounds */
	bool alone;
	bool sustained;   /* and of the lasting loads */
};

static bool add_case(struct builder *b, const struct cell *cell, const struct load_case *head,
                     struct weight_reading reading, const struct source *source,
                     const struct extra_action *action)
{
	struct load_case *c = new_case(b);
	if (!c)
		return false;
	*c = *head;
	add_weights(cell, c);
	if (c->arm_load) {
		add_set_wrench(cell, c->arm_load, c);
	} else {
		struct wrench wrench = arm_wrench(cell, source->arm_case, c, reading, NULL);
		add_arm(cell, c, &wrench);
	}
	if (action)
		add_extra(c, action);
	c->by_data_sheet = !c->arm_load;
	c->arm_case = (int)source->arm_case;
	c->bound = source->bound;
	c->estimate = source->estimate;
	c->reading = reading_mask(b, cell, c->arm_load ? ARM_REST : source->arm_case, reading);
	/* a further load from any side has a heading of its own: only the bound over all headings
	 * of both forces covers it */
	c->paired = c->by_data_sheet && cell->arm.paired.value == YES &&
	            !(action && action->turns);
	c->name = source->name;
	c->stability_only = c->run == RUN_STABILITY;
	c->combination = loads_combination(b->arena, cell, c);
	set_spin(c, action && action->turns);
	return c->combination != NULL;
}

/* Corners of the boxed parts: from -1 (no box: once) or 0 to their number. */
struct corners { int from, to; };
static struct corners corners_of(const struct cell *cell, const struct load_case *head)
{
	/* boxes stand in the same corner for their weight and for the earthquake */
	if (head->earthquake)
		return (struct corners){head->earthquake->corner,
		                        head->earthquake->corner + 1};
	struct weights w = case_weights(cell, head);
	bool boxed = w.half[0] != 0 || w.half[1] != 0;
	return boxed ? (struct corners){0, 4} : (struct corners){-1, 0};
}

/* One way of one source by the data sheet: vertical extremes x corners x readings. */
static bool add_readings(struct builder *b, const struct cell *cell, const struct load_case *head,
                         const struct source *source, const struct extra_action *action)
{
	struct weight_reading readings[4];
	int reading_count = list_readings(cell, source->arm_case, readings);
	struct corners corners = corners_of(cell, head);
	for (int vertical = VERTICAL_LEAST; vertical <= VERTICAL_MOST; vertical++)
		for (int corner = corners.from; corner < corners.to; corner++)
			for (int r = 0; r < reading_count; r++) {
				struct load_case c = *head;
				c.vertical = (enum vertical_run)vertical;
				c.corner = corner;
				if (!add_case(b, cell, &c, readings[r], source, action))
					return false;
			}
	return true;
}

/* The same by the arm's own motion: wrenches x corners. */
static bool add_set(struct builder *b, const struct cell *cell, const struct load_case *head,
                    const struct source *source, const struct extra_action *action)
{
	struct weight_reading none = {false, false};
	struct corners corners = corners_of(cell, head);
	/* at full weights the arm's own is full either way, unless it counts as live load */
	struct run_factors k = case_factors(cell, head);
	bool apart = head->method == METHOD_RATING ? head->run != RUN_FULL : k.own > k.weight;
	size_t ways = apart ? 2 : 1;
	for (size_t i = 0; i < ways * source->set->count; i++)
		for (int corner = corners.from; corner < corners.to; corner++) {
			struct load_case c = *head;
			c.corner = corner;
			c.vertical = i < source->set->count ? VERTICAL_LEAST : VERTICAL_MOST;
			c.arm_load = &source->set->list[i % source->set->count];
			if (!add_case(b, cell, &c, none, source, action))
				return false;
		}
	return true;
}

static bool add_source(struct builder *b, const struct cell *cell, uint16_t setup,
                       const struct source *source)
{
	struct load_case head = {.setup = setup, .source = source->index, .method = b->method,
	                         .sustained = source->sustained};
	/* a code has no stability run; 1.4D alone none with reduced weights */
	int first_run = source->alone && !source->sustained ? RUN_FULL : RUN_LOW;
	int last_run = b->method == METHOD_RATING ? RUN_STABILITY : RUN_FULL;
	if (source->quake) {
		head.run = source->quake->run;
		head.earthquake = source->quake;
		head.group = (uint16_t)b->loads->group_count++;
		return (source->set ? add_set : add_readings)(b, cell, &head, source,
		                                              &source->quake->action);
	}
	for (int run = first_run; run <= last_run; run++) {
		struct extra_action *actions = NULL;
		size_t count = 0;
		head.run = (enum weight_run)run;
		if (source->extra && !extra_actions(cell, source->extra,
		                                    case_factors(cell, &head).moving, b->arena,
		                                    &actions, &count))
			return false;
		/* the horizontal loads, and so the shear bounds, are the same in all runs but the
		 * stability one */
		size_t ways = source->extra ? count : 1;
		size_t first = run == RUN_FULL && first_run == RUN_LOW
		                       ? b->loads->group_count - ways
		                       : b->loads->group_count;
		for (size_t way = 0; way < ways; way++) {
			const struct extra_action *action = source->extra ? &actions[way] : NULL;
			head.group = (uint16_t)(first + way);
			if (!(source->set ? add_set : add_readings)(b, cell, &head, source, action))
				return false;
		}
		b->loads->group_count = first + ways;
	}
	return true;
}

static const char *const arm_name[ARM_CASES] = {"arm at rest", "normal motion",
                                                  "emergency stop"};

/* What the arm's own motion gives for one of its cases, alone or with a further load. A history
 * alone is checked row by row (check_history.h); with a further load its separate maxima at once
 * stand for it, on the safe side. */
static bool add_own_motion(struct builder *b, const struct cell *cell, uint16_t setup,
                           const struct arm_source *own, struct source source)
{
	const char *name = source.name;
	if (!source.alone)
		source.name = name ? arena_format(b->arena, "%s with %s", name, own->name)
		                   : own->name;
	source.arm_case = own->arm_case;
	source.set = own->way == WAY_HISTORY ? &own->bound : &own->swept;
	source.estimate = own->way == WAY_SWING;
	if (own->way == WAY_HISTORY && !source.extra && !source.quake)
		return true;
	if (!source.name || !add_source(b, cell, setup, &source))
		return false;
	if (own->way != WAY_CHAIN || own->bound.count == 0 || source.alone)
		return true;
	source.set = &own->bound;
	source.bound = true;
	source.name = arena_format(b->arena, "%s, guaranteed bound", source.name);
	return source.name && add_source(b, cell, setup, &source);
}

/* Every way in which the arm is in that case. False: none, or no memory (*failed). */
static bool add_ways(struct builder *b, const struct cell *cell, uint16_t setup,
                     enum arm_case arm_case, struct source source, bool *failed)
{
	bool any = false;
	if (arm_case != ARM_REST && reaction_known(&cell->arm.reaction[arm_case])) {
		struct source sheet = source;
		sheet.arm_case = arm_case;
		sheet.name = source.name ? arena_format(b->arena, "%s with %s", source.name,
		                                        arm_name[arm_case])
		                         : arm_name[arm_case];
		any = true;
		*failed |= !sheet.name || !add_source(b, cell, setup, &sheet);
	}
	const struct arm_loads *own = b->arms ? b->arms[setup] : NULL;
	for (size_t i = 0; own && i < own->count && !*failed; i++) {
		struct source other = source;
		if (own->list[i].arm_case != arm_case)
			continue;
		any = true;
		if (!source.extra && !source.quake && !source.alone)
			other.index = (uint16_t)(FIRST_EXTRA + cell->loads.count + i);
		*failed |= !add_own_motion(b, cell, setup, &own->list[i], other);
	}
	return any;
}

/* The arm at rest, by its chain or by masses and reach. */
static bool add_rest(struct builder *b, const struct cell *cell, uint16_t setup,
                     struct source source)
{
	bool failed = false;
	if (add_ways(b, cell, setup, ARM_REST, source, &failed) || failed)
		return !failed;
	source.arm_case = ARM_REST;
	if (source.alone)
		return add_source(b, cell, setup, &source);
	source.name = source.name ? arena_format(b->arena, "%s with %s", source.name,
	                                         arm_name[ARM_REST])
	                          : arm_name[ARM_REST];
	return source.name && add_source(b, cell, setup, &source);
}

/* Every way of the earthquake, with the arm at rest or in each of its motions. */
static bool add_earthquake(struct builder *b, const struct cell *cell, uint16_t setup)
{
	const struct earthquake_way *way = NULL;
	size_t count = 0, own = b->arms && b->arms[setup] ? b->arms[setup]->count : 0;
	if (!earthquake_ways(cell, b->method, b->arena, &way, &count))
		return false;
	for (size_t i = 0; i < count; i++) {
		struct source source = {
			.quake = &way[i], .name = way[i].name,
			.index = (uint16_t)(FIRST_EXTRA + cell->loads.count + own + i)};
		bool any = false, failed = false;
		for (int k = ARM_EMERGENCY_STOP; way[i].arm_moves && k >= ARM_NORMAL; k--)
			any |= add_ways(b, cell, setup, (enum arm_case)k, source, &failed);
		if (failed || (!any && !add_rest(b, cell, setup, source)))
			return false;
	}
	return true;
}

bool lasting_loads_due(const struct cell *cell)
{
	const struct word *type = &cell->anchors.product.type;
	return code_chosen(cell) && (!is_known(*type) || type->value == ADHESIVE);
}

/* Whether a case of its own has the arm at rest and nothing else (case_factors knows it by its
 * source). */
static bool rests_already(const struct builder *b, uint16_t setup, bool moves)
{
	const struct arm_loads *own = b->arms ? b->arms[setup] : NULL;
	for (size_t i = 0; own && i < own->count; i++)
		if (own->list[i].arm_case == ARM_REST)
			return false;
	return !moves;
}

/* What always acts: under 1.4D of ACI 318-19 5.3.1(a), and as lasting loads. */
static bool add_alone(struct builder *b, const struct cell *cell, uint16_t setup, bool moves)
{
	struct source source = {.index = SOURCE_REST, .alone = true, .name = arm_name[ARM_REST]};
	if (b->method == METHOD_ACI318 && !rests_already(b, setup, moves) &&
	    !add_rest(b, cell, setup, source))
		return false;
	source.sustained = true;
	source.name = "lasting loads";
	return b->method == METHOD_RATING || !lasting_loads_due(cell) ||
	       add_rest(b, cell, setup, source);
}

static bool add_setup(struct builder *b, const struct cell *cell, uint16_t setup)
{
	bool any = false, failed = false;
	for (int k = ARM_EMERGENCY_STOP; k >= ARM_NORMAL; k--)
		any |= add_ways(b, cell, setup, (enum arm_case)k,
		                (struct source){.index = (uint16_t)(ARM_EMERGENCY_STOP - k)},
		                &failed);
	if (failed || (!any && !add_rest(b, cell, setup, (struct source){.index = SOURCE_REST})))
		return false;
	for (size_t i = 0; i < cell->loads.count; i++) {
		const struct extra_load *load = (const struct extra_load *)cell->loads.rows + i;
		struct source source = {.extra = load, .index = (uint16_t)(FIRST_EXTRA + i)};
		source.name = is_known(load->name) ? load->name.value : "further load";
		enum arm_case with = (enum arm_case)load->with.value;
		bool found = with != ARM_REST && add_ways(b, cell, setup, with, source, &failed);
		if (failed || (!found && !add_rest(b, cell, setup, source)))
			return false;
	}
	return add_earthquake(b, cell, setup) && add_alone(b, cell, setup, any);
}

static void choose_readings(struct builder *b, const struct cell *cell)
{
	for (size_t s = 0; s < setup_count(cell); s++) {
		const struct arm *arm = &setup_cell(cell, s)->arm;
		bool any = reaction_known(&arm->reaction[ARM_NORMAL]) ||
		           reaction_known(&arm->reaction[ARM_EMERGENCY_STOP]);
		b->unknown_vertical |= any && !is_known(arm->vertical_includes_weight);
		b->unknown_tilting |= any && !is_known(arm->tilting_includes_weight);
	}
	for (unsigned r = 0; r < MAX_READINGS; r++)
		if ((b->unknown_vertical || !(r & 1)) && (b->unknown_tilting || !(r & 2)))
			b->loads->readings |= 1u << r;
}

size_t loads_method_count(const struct cell *cell)
{
	return 1u + method_chosen(cell, METHOD_ACI318) + method_chosen(cell, METHOD_EN1992_4);
}

size_t loads_history_group(const struct loads *loads, const struct cell *cell, size_t history,
                           enum method method)
{
	size_t place = method == METHOD_RATING    ? 0
	               : method == METHOD_ACI318 ? 1
	                                         : 1u + method_chosen(cell, METHOD_ACI318);
	return loads->first_history + history * loads_method_count(cell) + place;
}

/* A group for each setup's history and method, whose rows are checked one by one. */
static void add_history_groups(struct builder *b, const struct cell *cell)
{
	struct loads *loads = b->loads;
	loads->first_history = loads->group_count;
	for (size_t s = 0; b->arms && s < setup_count(cell); s++)
		for (size_t i = 0; b->arms[s] && i < b->arms[s]->count; i++)
			if (b->arms[s]->list[i].way == WAY_HISTORY)
				loads->group_count += loads_method_count(cell);
}

enum status loads_build(const struct cell *cell, const struct arm_loads *const arms[],
                        struct arena *arena, struct loads *out)
{
	struct builder b = {.loads = out, .arms = arms, .arena = arena};
	*out = (struct loads){0};
	for (size_t s = 0; s < setup_count(cell); s++) {
		find_gaps(setup_cell(cell, s), out);
		out->given = out->given || load_model_given(setup_cell(cell, s));
	}
	choose_readings(&b, cell);
	if (!out->given || loads_blocked(out))
		return DONE;
	for (int m = METHOD_RATING; m < METHODS; m++) {
		b.method = (enum method)m;
		if (m != METHOD_RATING && !method_chosen(cell, b.method))
			continue;
		for (size_t s = 0; s < setup_count(cell); s++)
			if (!add_setup(&b, setup_cell(cell, s), (uint16_t)s))
				return NO_MEMORY;
	}
	add_history_groups(&b, cell);
	return DONE;
}

void load_at(const struct load_case *load_case, double heading, double load[3])
{
	load[0] = load_case->down;
	load[1] = load_case->fixed[0] + load_case->turning * cos(heading);
	load[2] = load_case->fixed[1] + load_case->turning * sin(heading);
}
