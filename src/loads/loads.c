#include "loads.h"

#include "arm_wrench.h"
#include "extra.h"
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

/* --- gaps ----------------------------------------------------------------------------------------
 */

static void gap(struct loads *loads, const char *path, enum gap_kind kind)
{
	for (size_t i = 0; i < loads->gap_count; i++)
		if (strcmp(loads->gaps[i].path, path) == 0)
			return;
	if (loads->gap_count < MAX_GAPS)
		loads->gaps[loads->gap_count++] = (struct gap){path, kind};
}

static void reaction_gaps(const struct reaction *r, const char *section, const char *const path[4],
                          struct loads *loads)
{
	const struct number *number[4] = {&r->vertical, &r->horizontal, &r->tilting, &r->twisting};
	if (!reaction_known(r)) {
		gap(loads, section, GAP_FAVOURABLE);
		return;
	}
	for (int k = 0; k < 4; k++)
		if (number[k]->given.origin == ABSENT)
			gap(loads, path[k], GAP_FAVOURABLE);
}

#define REACTION_PATHS(key) \
	"arm.reactions." key, (const char *const[4]){"arm.reactions." key ".vertical", "arm.reactions." key ".horizontal", \
	"arm.reactions." key ".tilting", "arm.reactions." key ".twisting"}

static void arm_gaps(const struct cell *cell, struct loads *loads)
{
	const struct arm *arm = &cell->arm;
	reaction_gaps(&arm->reaction[ARM_NORMAL], REACTION_PATHS("normal"), loads);
	reaction_gaps(&arm->reaction[ARM_EMERGENCY_STOP], REACTION_PATHS("emergency_stop"), loads);
	if (!is_known(arm->mount))
		gap(loads, "arm.mount", GAP_BLOCKING);
	if (!is_known(arm->mass))
		gap(loads, "arm.weight.arm", GAP_OPEN);
	if (!is_known(arm->payload))
		gap(loads, "arm.weight.payload", GAP_FAVOURABLE);
	if (!is_known(arm->vertical_includes_weight))
		gap(loads, "arm.reactions.vertical_includes_weight", GAP_FAVOURABLE);
	if (!is_known(arm->tilting_includes_weight))
		gap(loads, "arm.reactions.tilting_includes_weight", GAP_FAVOURABLE);
	bool stretched = !is_known(arm->tilting_includes_weight) ||
	                 arm->tilting_includes_weight.value == NO;
	for (size_t i = 0; i < cell->loads.count; i++)
		stretched |= ((const struct extra_load *)cell->loads.rows)[i].with.value ==
		             ARM_REST;
	if (stretched) {
		if (!is_known(arm->reach))
			gap(loads, "arm.weight.reach.arm", GAP_FAVOURABLE);
		if (!is_known(arm->payload_reach))
			gap(loads, "arm.weight.reach.payload", GAP_FAVOURABLE);
	}
}

static void find_gaps(const struct cell *cell, struct loads *loads)
{
	const struct part *part = cell->parts.rows;
	const struct extra_load *load = cell->loads.rows;
	if (cell->anchors.count == 0)
		gap(loads, "anchors.at", GAP_BLOCKING);
	if (cell->base.count == 0)
		gap(loads, "cell.base", GAP_BLOCKING);
	if (!is_known(cell->parts))
		gap(loads, "cell.parts", GAP_OPEN);
	for (size_t i = 0; i < cell->parts.count; i++) {
		if (!is_known(part[i].mass))
			gap(loads, "cell.parts[].mass", GAP_OPEN);
		if (!is_known(part[i].at) &&
		    !(is_known(part[i].box_from) && is_known(part[i].box_to)))
			gap(loads, "cell.parts[].at", GAP_OPEN);
	}
	arm_gaps(cell, loads);
	for (size_t i = 0; i < cell->loads.count; i++) {
		if (!is_known(load[i].force) && !is_known(load[i].force_vector))
			gap(loads, "loads[].force", GAP_FAVOURABLE);
		if (!is_known(load[i].at_height))
			gap(loads, "loads[].at_height", GAP_FAVOURABLE);
	}
}

/* --- building
 * ------------------------------------------------------------------------------------- */

struct builder {
	struct loads *loads;
	struct arena *arena;
	size_t room;
	bool unknown_vertical, unknown_tilting;    /* in any setup */
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

static const char *combination(struct arena *arena, const struct cell *cell,
                               const struct load_case *c)
{
	static const char *const corner_name[] = {"toward -x -y", "toward +x -y", "toward -x +y",
	                                          "toward +x +y"};
	char factor[24];
	number_write(run_factors(cell, c->run).weight, 3, factor, sizeof factor);
	return arena_format(arena, "weights x %s%s, %s vertical force%s%s", factor,
	                    c->run == RUN_STABILITY ? ", moving part x 1.25" : "",
	                    c->vertical == VERTICAL_LEAST ? "least" : "largest",
	                    c->corner >= 0 ? ", boxed parts " : "",
	                    c->corner >= 0 ? corner_name[c->corner] : "");
}

static void add_weights(const struct cell *cell, struct load_case *c)
{
	struct weights w = parts_weights(cell, c->run);
	double sign[2];
	corner_signs(c->corner, sign);
	c->weight_factor = run_factors(cell, c->run).weight;
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
			wrench->horizontal, {mount[0], mount[1]}, false, wrench->twisting};
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

static void set_spin(struct load_case *c)
{
	bool turns = c->turning != 0 || (c->paired && c->turning_count > 0);
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

/* index: 0 emergency stop, 1 normal motion, 2 rest, from FIRST_EXTRA on the further loads */
struct source {
	enum arm_case arm_case;
	const struct extra_load *extra;
	const char *name;
	uint16_t index;
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
	struct wrench wrench = arm_wrench(cell, source->arm_case, c->run, c->vertical, reading,
	                                  NULL);
	add_arm(cell, c, &wrench);
	if (action)
		add_extra(c, action);
	c->reading = reading_mask(b, cell, source->arm_case, reading);
	c->paired = cell->arm.paired.value == YES;
	c->name = source->name;
	c->stability_only = c->run == RUN_STABILITY;
	c->combination = combination(b->arena, cell, c);
	set_spin(c);
	return c->combination != NULL;
}

/* One way of one source: runs x vertical extremes x corners x readings. */
static bool add_runs(struct builder *b, const struct cell *cell, const struct load_case *head,
                     const struct source *source, enum weight_run run,
                     const struct extra_action *action)
{
	struct weight_reading readings[4];
	int reading_count = list_readings(cell, source->arm_case, readings);
	struct weights w = parts_weights(cell, run);
	bool boxed = w.half[0] != 0 || w.half[1] != 0;
	for (int vertical = VERTICAL_LEAST; vertical <= VERTICAL_MOST; vertical++)
		for (int corner = boxed ? 0 : -1; corner < (boxed ? 4 : 0); corner++)
			for (int r = 0; r < reading_count; r++) {
				struct load_case c = *head;
				c.run = run;
				c.vertical = (enum vertical_run)vertical;
				c.corner = corner;
				if (!add_case(b, cell, &c, readings[r], source, action))
					return false;
			}
	return true;
}

static bool add_source(struct builder *b, const struct cell *cell, uint16_t setup,
                       const struct source *source)
{
	struct load_case head = {.setup = setup, .source = source->index};
	for (int run = RUN_LOW; run <= RUN_STABILITY; run++) {
		struct extra_action *actions = NULL;
		size_t count = 0;
		if (source->extra && !extra_actions(cell, source->extra,
		                                    run_factors(cell, (enum weight_run)run).moving,
		                                    b->arena, &actions, &count))
			return false;
		/* the horizontal loads, and so the shear bounds, are the same in all runs but the
		 * stability one */
		size_t ways = source->extra ? count : 1;
		size_t first = run == RUN_FULL ? b->loads->group_count - ways
		                               : b->loads->group_count;
		for (size_t way = 0; way < ways; way++) {
			head.group = (uint16_t)(first + way);
			if (!add_runs(b, cell, &head, source, (enum weight_run)run,
			              source->extra ? &actions[way] : NULL))
				return false;
		}
		b->loads->group_count = first + ways;
	}
	return true;
}

static bool add_setup(struct builder *b, const struct cell *cell, uint16_t setup)
{
	static const char *const arm_name[] = {"arm at rest", "normal motion", "emergency stop"};
	uint16_t index = 0;
	for (int k = ARM_EMERGENCY_STOP; k >= ARM_NORMAL; k--) {
		struct source source = {(enum arm_case)k, NULL, arm_name[k], index++};
		if (reaction_known(&cell->arm.reaction[k]) && !add_source(b, cell, setup, &source))
			return false;
	}
	struct source rest = {ARM_REST, NULL, arm_name[ARM_REST], index++};
	if (!reaction_known(&cell->arm.reaction[ARM_NORMAL]) &&
	    !reaction_known(&cell->arm.reaction[ARM_EMERGENCY_STOP]) &&
	    !add_source(b, cell, setup, &rest))
		return false;
	for (size_t i = 0; i < cell->loads.count; i++) {
		const struct extra_load *load = (const struct extra_load *)cell->loads.rows + i;
		enum arm_case arm_case = case_with_load(cell, (enum arm_case)load->with.value);
		const char *name = is_known(load->name) ? load->name.value : "further load";
		struct source source = {
			arm_case, load,
			arena_format(b->arena, "%s with %s", name, arm_name[arm_case]), index++};
		if (!source.name || !add_source(b, cell, setup, &source))
			return false;
	}
	return true;
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

enum status loads_build(const struct cell *cell, struct arena *arena, struct loads *out)
{
	struct builder b = {.loads = out, .arena = arena};
	*out = (struct loads){0};
	for (size_t s = 0; s < setup_count(cell); s++) {
		find_gaps(setup_cell(cell, s), out);
		out->given = out->given || load_model_given(setup_cell(cell, s));
	}
	choose_readings(&b, cell);
	if (!out->given || loads_blocked(out))
		return DONE;
	for (size_t s = 0; s < setup_count(cell); s++)
		if (!add_setup(&b, setup_cell(cell, s), (uint16_t)s))
			return NO_MEMORY;
	return DONE;
}

void load_at(const struct load_case *load_case, double heading, double load[3])
{
	load[0] = load_case->down;
	load[1] = load_case->fixed[0] + load_case->turning * cos(heading);
	load[2] = load_case->fixed[1] + load_case->turning * sin(heading);
}
