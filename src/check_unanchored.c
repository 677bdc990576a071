#include "check_unanchored.h"

#include "base/unanchored.h"
#include "cell/bearing_hull.h"
#include "cell/load_model.h"
#include "loads/standing.h"

#include <math.h>
#include <string.h>

/* --- what is not known ---------------------------------------------------------------------- */

static void add_missing(void *to, const char *path)
{
	struct unanchored *out = to;
	for (size_t i = 0; i < out->missing_count; i++)
		if (strcmp(out->missing[i], path) == 0)
			return;
	if (out->missing_count < MAX_FREE_GAPS)
		out->missing[out->missing_count++] = path;
}

static bool casters_known(const struct cell *cell, struct unanchored *out)
{
	const struct caster *caster = cell->casters.rows;
	bool at = true, trail = true;
	for (size_t i = 0; i < cell->casters.count; i++) {
		at = at && is_known(caster[i].at);
		trail = trail && is_known(caster[i].trail);
	}
	if (!at)
		add_missing(out, "cell.casters[].at");
	if (!trail)
		add_missing(out, "cell.casters[].trail");
	return at && trail && cell->casters.count > 0;
}

/* --- supports ------------------------------------------------------------------------------- */

/* What the cell stands on: a hull, or wheels. */
struct support {
	const struct vec2 *hull;
	size_t hull_count;
	struct wheel wheel[MAX_CASTERS];
	size_t wheel_count;          /* 0: the hull */
};

static bool find_hull(const struct cell *cell, struct arena *arena, struct support *out)
{
	out->hull = bearing_hull(cell, arena, &out->hull_count);
	return out->hull != NULL;
}

static void find_wheels(const struct cell *cell, struct support *out)
{
	const struct caster *caster = cell->casters.rows;
	for (size_t i = 0; i < cell->casters.count; i++)
		out->wheel[out->wheel_count++] = (struct wheel){
			{caster[i].at.at[0], caster[i].at.at[1]}, caster[i].trail.value};
}

static void tip(const struct support *support, const struct free_standing *cell,
                struct tip_over *out, struct trace *trace)
{
	if (support->wheel_count > 0)
		tipping_on_casters(support->wheel, support->wheel_count, cell, out, trace);
	else
		tipping_on_hull(support->hull, support->hull_count, cell, out, trace);
}

/* --- the worst pose ------------------------------------------------------------------------- */

/* The cell with the arm's centre of mass in the shoulder, and how far a pose may move the whole
 * centre. */
struct bare { struct free_standing cell; double rho; };

static struct bare bare_cell(const struct cell *cell, struct standing_state state)
{
	struct standing s = standing_mass(cell, state);
	struct bare out = {.cell.weight = STANDARD_GRAVITY * s.mass};
	for (int k = 0; k < 3 && s.mass > 0; k++)
		out.cell.centre[k] = s.first[k] / s.mass;
	out.rho = s.mass > 0 ? s.reach_moment / s.mass : 0;
	out.cell.push_height = is_known(cell->top) ? cell->top.value : ASSUMED_PUSH_HEIGHT;
	return out;
}

/* The centre moved by rho toward the line about which it tips, raised by an angle. */
static struct free_standing posed(const struct bare *bare, double toward, double raised)
{
	struct free_standing out = bare->cell;
	struct vec2 along = plane_heading(toward);
	out.centre[0] += bare->rho * cos(raised) * along.x;
	out.centre[1] += bare->rho * cos(raised) * along.y;
	out.centre[2] += bare->rho * sin(raised);
	return out;
}

/* Tilt at which it tips in the worst pose; the arm is then square to the line of sight from the
 * edge to the centre, so raised by the very tilt. At 0 it falls. [rad] */
static double worst_raise(const struct bare *bare, double distance)
{
	double z = bare->cell.centre[2], sight = sqrt(distance * distance + z * z);
	if (distance <= 0 || bare->rho >= sight)
		return 0;
	return fmax(0, atan2(distance, z) - asin(bare->rho / sight));
}

struct place { uint16_t setup; bool height_assumed; struct arena *arena; };

/* Opens a trace in the place of one that a worse state has outlived. */
static struct trace *trace_anew(struct trace *trace, const struct place *place)
{
	if (!place->arena)
		return NULL;
	trace_open(trace, place->arena);
	return trace;
}

static void trace_pose(const struct bare *bare, double raised, struct trace *trace)
{
	trace_step(trace, "rho", "", bare->rho, DIM_LENGTH,
	           "arm.weight: masses of arm and payload times their reach, over all masses",
	           "how far the arm's pose moves the centre of all");
	trace_step(trace, "raised", "", raised, DIM_ANGLE,
	           raised > 0 ? "worst pose: square to the line from the edge to the centre"
	                      : "worst pose: level",
	           "the arm above the level; the centre below counts it");
}

static void keep_worse(const struct support *support, const struct bare *bare,
                       const struct place *place, struct free_support *out)
{
	struct tip_over still, tilted, pushed;
	tip(support, &bare->cell, &still, NULL);
	double raised = worst_raise(bare, still.distance);
	struct free_standing tilt_pose = posed(bare, still.heading, raised);
	struct free_standing push_pose = posed(bare, still.heading, 0);
	tip(support, &tilt_pose, &tilted, NULL);
	tip(support, &push_pose, &pushed, NULL);
	bool stands = raised > 0 && pushed.stands;
	double tilt = stands ? tilted.tilt : 0, push = stands ? pushed.push : 0;
	if (!out->computed || tilt < out->tilt) {
		out->tilt = tilt;
		out->stands = stands;
		out->withstands_ten_degrees = stands && tilted.withstands_ten_degrees;
		out->toward = still.heading;
		out->setup = place->setup;
		struct trace *trace = trace_anew(&out->tilt_trace, place);
		trace_pose(bare, raised, trace);
		tilt_pose.push_height = 0; /* no push in this pose */
		tip(support, &tilt_pose, &tilted, trace);
	}
	if (!out->computed || push < out->push) {
		out->push = push;
		out->push_height = bare->cell.push_height;
		out->push_height_assumed = place->height_assumed;
		out->push_setup = place->setup;
		struct trace *trace = trace_anew(&out->push_trace, place);
		trace_pose(bare, 0, trace);
		tip(support, &push_pose, &pushed, trace);
	}
	out->computed = true;
}

/* Least and full masses, full and empty gripper, every corner of the boxes. */
static void try_states(const struct cell *cell, const struct support *support,
                       const struct place *place, struct free_support *out)
{
	bool boxed = standing_boxed(cell);
	for (int full = 0; full < 2; full++)
		for (int payload = 0; payload < 2; payload++)
			for (int corner = boxed ? 0 : -1; corner < (boxed ? 4 : 0); corner++) {
				struct bare bare = bare_cell(
					cell, (struct standing_state){full, payload, corner});
				/* nothing that weighs has nothing to tip */
				if (!free_standing_fault(&bare.cell))
					keep_worse(support, &bare, place, out);
			}
}

static void count_gap(void *count, const char *path)
{
	(void)path;
	++*(size_t *)count;
}

static void try_setup(const struct run *run, size_t s, struct unanchored *out)
{
	const struct cell *cell = setup_cell(run->cell, s);
	struct support on_base = {0}, on_casters = {0};
	struct place place = {(uint16_t)s, !is_known(cell->top),
	                      run->options && run->options->trace ? run->arena : NULL};
	size_t reaches = 0, before = out->missing_count;
	standing_mass_gaps(cell, add_missing, out);
	standing_reach_gaps(cell, count_gap, &reaches);
	out->at_most |= reaches > 0;
	bool weighed = out->missing_count == before;
	bool wheels = casters_known(cell, out);
	if (cell->base.count == 0)
		add_missing(out, "cell.base");
	if (!weighed)
		return;
	if (cell->base.count > 0 && find_hull(cell, run->arena, &on_base))
		try_states(cell, &on_base, &place, &out->on_base);
	if (wheels) {
		find_wheels(cell, &on_casters);
		try_states(cell, &on_casters, &place, &out->on_casters);
	}
}

/* --- words ---------------------------------------------------------------------------------- */

/* Two significant digits, rounded down: no figure promises more than there is. */
static const char *shown_down(const struct run *run, double value, enum dimension dimension)
{
	enum unit_system system = (enum unit_system)run->cell->show.value;
	const struct unit *unit = quantity_display_unit(dimension, system);
	double number = value / unit->factor;
	char text[48];
	if (number > 0) {
		double step = pow(10, floor(log10(number)) - 1);
		/* what is whole but for the rounding of doubles stays it */
		number = floor(number / step * (1 + 1e-12)) * step;
	}
	quantity_write(number * unit->factor, unit, 2, text, sizeof text);
	const char *out = arena_format(run->arena, "%s", text);
	return out ? out : "";
}

static const char *shown(const struct run *run, double value, enum dimension dimension)
{
	enum unit_system system = (enum unit_system)run->cell->show.value;
	char text[48];
	quantity_write(value, quantity_display_unit(dimension, system), 4, text, sizeof text);
	const char *out = arena_format(run->arena, "%s", text);
	return out ? out : "";
}

static void add_word(struct unanchored *out, const char *text)
{
	if (text && out->words.count < MAX_SENTENCES)
		out->words.list[out->words.count++] = text;
}

static void word_support(const struct run *run, struct unanchored *out, const char *where,
                         const struct free_support *support)
{
	const char *in = run->cell->setups.count > 1
		? arena_format(run->arena, " (setup '%s')", setup_name(run->cell, support->setup))
		: "";
	if (!support->computed)
		return;
	if (!support->stands) {
		add_word(out, arena_format(run->arena,
		                           "%s it falls over by itself%s when the still arm is "
		                           "stretched the worst way: hold it by a hoist or props",
		                           where, in ? in : ""));
		return;
	}
	add_word(out, arena_format(
			      run->arena, "%s it tips at a floor tilt of %s%s%s, or by a push of "
			                  "%s at %s%s",
			      where, out->at_most ? "at most " : "",
			      shown_down(run, support->tilt, DIM_ANGLE), in ? in : "",
			      shown_down(run, support->push, DIM_FORCE),
			      shown(run, support->push_height, DIM_LENGTH),
			      support->push_height_assumed ? " (assumed, cell.top is not known)"
			                                   : ""));
}

static void word_ten_degrees(const struct run *run, struct unanchored *out)
{
	const struct free_support *base = &out->on_base, *casters = &out->on_casters;
	const char *of_base = !base->computed              ? ""
	                      : base->withstands_ten_degrees ? "on its base yes"
	                                                     : "on its base no";
	const char *of_casters = !casters->computed              ? ""
	                         : casters->withstands_ten_degrees ? "on its casters yes"
	                                                           : "on its casters no";
	if (!base->computed && !casters->computed)
		return;
	add_word(out, arena_format(run->arena,
	                           "for comparison, no check: standing equipment withstands a tilt "
	                           "of 10 deg (IEC 60950-1 4.1, IEC 61010-1 7.4, from memory): "
	                           "%s%s%s",
	                           of_base, *of_base && *of_casters ? ", " : "", of_casters));
}

static void word_missing(const struct run *run, struct unanchored *out)
{
	const char *list = "";
	for (size_t i = 0; i < out->missing_count && list; i++)
		list = arena_format(run->arena, "%s%s%s", list, i ? ", " : "", out->missing[i]);
	if (out->missing_count > 0 && list)
		add_word(out, arena_format(run->arena, "%s; not known: %s",
		                           out->on_base.computed || out->on_casters.computed
		                                   ? "not worked out everywhere"
		                                   : "when it tips is not worked out",
		                           list));
}

static void write_sentences(const struct run *run, struct unanchored *out)
{
	add_word(out, "the arm must not run: only a still arm, its drives off, is looked at here");
	word_support(run, out, "on its base", &out->on_base);
	word_support(run, out, "on its casters, swivelled the worst way,", &out->on_casters);
	if (out->at_most && (out->on_base.computed || out->on_casters.computed))
		add_word(out, "the arm's reach is not known (arm.weight.reach), so its share is "
		              "not in these figures: it tips sooner");
	if (!out->on_base.computed && !out->on_casters.computed && out->missing_count == 0)
		add_word(out, "when it tips is not worked out: nothing that weighs stands above "
		              "the floor");
	word_missing(run, out);
	word_ten_degrees(run, out);
	if (out->on_base.computed || out->on_casters.computed)
		add_word(out, "physical weights, no safety factor: least and full masses, with and "
		              "without payload, arm in the worst still pose (its shoulder half the "
		              "payload's reach above the face where arm.swing.axis_height is not "
		              "known), boxed parts at the worst corner and the tops of their "
		              "boxes; nothing about rolling or sliding");
}

void find_unanchored(const struct run *run, struct result *result)
{
	struct unanchored *out = &result->unanchored;
	for (size_t s = 0; s < setup_count(run->cell); s++)
		out->told |= load_model_given(setup_cell(run->cell, s));
	for (size_t s = 0; out->told && s < setup_count(run->cell); s++)
		try_setup(run, s, out);
	if (out->told)
		write_sentences(run, out);
}
