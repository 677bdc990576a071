#include "check_sweep.h"

#include <math.h>
#include <string.h>

#define PI 3.14159265358979323846
#define HEADINGS 48                 /* of the coarse sweep */
#define GOLDEN 0.61803398874989485
#define MOST_ROUNDS 60              /* of a search; it ends far earlier */
#define REFINED_WIDTH 1e-6          /* a maximum is found to this [rad] */
#define PARTS 4                     /* of a coarse step, where it is looked at more closely */
#define AGAIN 1                     /* how often such a part is divided once more */
#define STEEPER 2.0 /* how much steeper than its mean between headings a value may run */

struct worst *run_worst(const struct run *run, size_t watch, size_t setup, size_t anchor,
                        unsigned reading)
{
	size_t row = (watch * run->setup_count + setup) * run->anchor_count + anchor;
	return &run->worsts[row * MAX_READINGS + reading];
}

/* One place of a sweep: what is being solved, and its scratch state. */
struct visit {
	struct run *run;
	struct setup_run *setup;
	size_t setup_index, ratio_index;
	const struct load_case *load_case;
	struct state state;
	double pressure;                /* largest of the bed at this heading [MPa] */
	double shear[MAX_ANCHORS];      /* of the heading, where shear is paired with it */
};

static unsigned heading_count(const struct run *run)
{
	return run->options->headings ? run->options->headings : HEADINGS;
}

static void shear_of_state(const struct run *run, const struct setup_run *setup,
                           struct state *state)
{
	const struct load_case *c = state->load_case;
	const struct shear_bound *bound = &run->bounds[c->group];
	if (c->paired)
		shear_group_at(setup->base, c, state->heading, state->shear);
	else
		memcpy(state->shear, bound->size,
		       setup->base->anchor_count * sizeof state->shear[0]);
}

static double watch_value(const struct run *run, const struct visit *v, size_t watch, size_t anchor)
{
	if (watch == WATCH_TENSION)
		return v->state.tension[anchor];
	if (watch == WATCH_SHEAR)
		return v->state.shear[anchor];
	if (watch == WATCH_PRESSURE)
		return v->pressure;
	struct judging judging = {.cell = v->setup->cell,
	                          .setting = &v->setup->setting,
	                          .base = v->setup->base,
	                          .state = &v->state,
	                          .facts = &v->setup->facts};
	return run->watched[watch]->ratio(&judging, (int)anchor);
}

static void keep(struct worst *worst, double value, const struct state *state)
{
	if (worst->known && !(value > worst->value))
		return;
	*worst = (struct worst){true, value, state->load_case, state->heading, state->bed_ratio,
	                          {state->settle[0], state->settle[1], state->settle[2]}};
}

static double pressure_max(const struct base *base, const double settle[3])
{
	double most = 0;
	for (size_t i = 0; i < base->hull_count; i++) {
		double x = (base->hull[i].x - base->centre[0]) / base->size,
		       y = (base->hull[i].y - base->centre[1]) / base->size;
		most = fmax(most, settle[0] + settle[1] * x + settle[2] * y);
	}
	return most;
}

/* Raises the group's tensions to this state's; bit i of the answer: anchor i has a new largest one.
 */
static uint64_t keep_tensions(struct visit *v)
{
	struct run *run = v->run;
	uint64_t larger = 0;
	for (size_t i = 0; i < run->anchor_count; i++) {
		double tension = v->state.tension[i], *spread = &run->spread[i][v->ratio_index];
		double *group = &run->group_tension[(v->load_case->group * run->anchor_count + i) *
		                                    MAX_READINGS];
		*spread = tension > *spread ? tension : *spread;
		for (unsigned r = 0; r < MAX_READINGS; r++)
			if (v->load_case->reading & 1u << r && tension > group[r]) {
				group[r] = tension;
				larger |= (uint64_t)1 << i;
			}
	}
	return larger;
}

/* Keeps whatever is the worst so far. Within a group of free shear, a check that follows tension
 * can only become worse where the tension does. */
static void keep_state(struct visit *v, double *values)
{
	struct run *run = v->run;
	uint64_t larger = keep_tensions(v);
	for (size_t w = 0; w < run->watch_count; w++) {
		bool follows = !v->load_case->paired &&
		               (w == WATCH_SHEAR ||
		                (w >= FIRST_CHECK_WATCH && run->watched[w]->follows_tension));
		for (size_t i = 0; i < run->anchor_count; i++) {
			double value = 0;
			if (!follows || larger >> i & 1) {
				value = watch_value(run, v, w, i);
				for (unsigned r = 0; r < MAX_READINGS; r++)
					if (v->load_case->reading & 1u << r)
						keep(run_worst(run, w, v->setup_index, i, r), value,
						     &v->state);
			}
			if (values)
				*values++ = value;
		}
	}
}

/* From the neighbour's solution, and if that fails afresh. */
static bool solve(struct visit *v, double settle[3])
{
	const struct base *base = v->setup->base;
	const struct state *state = &v->state;
	if (base_solve(base, state->bed_ratio, state->load, settle, NULL) == DONE)
		return true;
	base_start(base, state->bed_ratio, state->load, settle);
	return base_solve(base, state->bed_ratio, state->load, settle, NULL) == DONE;
}

/* Solves at a heading (settle is the start and the result) and keeps whatever is the worst so far.
 * *carried tells whether there is an equilibrium; values may be NULL. */
static void visit_heading(struct visit *v, double heading, double settle[3], double *values,
                                 bool *carried)
{
	struct run *run = v->run;
	struct state *state = &v->state;
	state->heading = heading;
	load_at(v->load_case, heading, state->load);
	*carried = base_balance(v->setup->base, state->load) == BALANCED;
	if (!*carried)
		return;      /* base.stability fails on it; there is nothing to judge */
	if (!solve(v, settle)) {
		/* the forces outgrow what doubles can hold in balance: far beyond any use */
		for (unsigned r = 0; r < MAX_READINGS; r++)
			if (v->load_case->reading & 1u << r)
				v->setup->tipping[r].unsolved = true;
		*carried = false;
		return;
	}
	run->states++;
	memcpy(state->settle, settle, sizeof state->settle);
	base_tensions(v->setup->base, state->bed_ratio, settle, state->tension);
	if (v->load_case->paired)
		shear_of_state(run, v->setup, state);
	v->setup->facts.any_state = true;
	v->pressure = pressure_max(v->setup->base, settle);
	v->setup->facts.pressure_max = fmax(v->setup->facts.pressure_max, v->pressure);
	keep_state(v, values);
}

/* What a local maximum must be able to beat to be worth refining. Tension is refined for every
 * group, since `require` pairs the groups' maxima. */
static double to_beat(const struct visit *v, size_t watch, size_t anchor)
{
	const struct run *run = v->run;
	const double *group =
		&run->group_tension[(v->load_case->group * run->anchor_count + anchor) *
	                            MAX_READINGS];
	double least = HUGE_VAL;
	if (watch == WATCH_PRESSURE)
		return v->setup->facts.pressure_max;
	for (unsigned r = 0; r < MAX_READINGS; r++)
		if (v->load_case->reading & 1u << r)
			least = fmin(
				least,
				watch == WATCH_TENSION
					? group[r]
					: run_worst(run, watch, v->setup_index, anchor, r)->value);
	return least;
}

/* Solves at a heading and gives one watched value; -1 where there is no equilibrium. */
static double value_at(struct visit *v, size_t watch, size_t anchor, double heading,
                       double settle[3])
{
	bool carried;
	visit_heading(v, heading, settle, NULL, &carried);
	return carried ? watch_value(v->run, v, watch, anchor) : -1;
}

/* Heading of the top of the parabola through three points, relative to the middle one; HUGE_VAL
 * where they do not curve downward. */
static double parabola_top(double left, double right, double at_left, double at_middle,
                           double at_right)
{
	/* left < 0 < right are the outer headings relative to the middle one */
	double p = (at_left - at_middle) * right * right - (at_right - at_middle) * left * left;
	double q = 2 * ((at_left - at_middle) * right - (at_right - at_middle) * left);
	return q < 0 ? p / q : HUGE_VAL;
}

/* A local maximum between two headings: by parabolas through the three best points, and by golden
 * section where a parabola does not help (as Brent, Algorithms for Minimization without
 * Derivatives, 1973, ch. 5). `middle` lies between the ends and is no lower than they are. */
static void refine(struct visit *v, size_t watch, size_t anchor, double from, double middle,
                   double to, const double at[3], const double start[3], double slope)
{
	double goal = to_beat(v, watch, anchor), settle[3] = {start[0], start[1], start[2]};
	double low = at[0], best = at[1], high = at[2];
	/* given up where even the steepest slope cannot reach what is known already */
	for (int round = 0;
	     round < MOST_ROUNDS && to - from > REFINED_WIDTH && best + slope * (to - from) > goal;
	     round++) {
		double top = parabola_top(from - middle, to - middle, low, best, high);
		double longer = to - middle > middle - from ? to - middle : from - middle;
		/* every third step halves the longer side, so that both ends close in */
		double next = middle +
		              (round % 3 == 2 || !(top > from - middle && top < to - middle)
		                       ? (1 - GOLDEN) * longer
		                       : top);
		if (fabs(next - middle) < 0.25 * REFINED_WIDTH)
			next = middle + (longer > 0 ? 0.25 : -0.25) * REFINED_WIDTH;
		double value = value_at(v, watch, anchor, next, settle);
		bool right = next > middle;
		if (value > best) {
			*(right ? &from : &to) = middle;
			*(right ? &low : &high) = best;
			middle = next;
			best = value;
		} else {
			*(right ? &to : &from) = next;
			*(right ? &high : &low) = value;
		}
	}
}

/* Whether a watch needs no refinement of its own. Where shear is free, it does not change within a
 * load case, and what follows tension peaks with it. Where it is paired, it does not depend on
 * weights or bed, so that one sweep of the group finds its peaks. */
static bool peaks_elsewhere(const struct visit *v, size_t watch)
{
	const struct check *check = v->run->watched[watch];
	bool of_shear = watch == WATCH_SHEAR || (check && check->by_shear);
	unsigned refined = v->run->bounds[v->load_case->group].refined;
	if (v->load_case->paired)
		return of_shear && !(v->load_case->reading & ~refined);
	return of_shear || (check && check->follows_tension);
}

/* The maximum at the k-th of the parts, if it is one: neighbours beyond the ends are looked up. */
static void refine_part(struct visit *v, size_t watch, size_t anchor, double from, double part,
                        const double value[PARTS + 1], int k, const double settle[3])
{
	double start[3] = {settle[0], settle[1], settle[2]}, at[3] = {0, value[k], 0};
	double heading = from + k * part;
	at[0] = k > 0 ? value[k - 1] : value_at(v, watch, anchor, heading - part, start);
	at[2] = k < PARTS ? value[k + 1] : value_at(v, watch, anchor, heading + part, start);
	double steepest = fmax(fabs(at[1] - at[0]), fabs(at[2] - at[1]));
	if (at[1] > 0 && at[1] >= at[0] && at[1] >= at[2] &&
	    at[1] + steepest > to_beat(v, watch, anchor))
		refine(v, watch, anchor, heading - part, heading, heading + part, at, start,
		       STEEPER * steepest / part);
}

/* Looks at one stretch between two headings more closely, once more where a larger value could
 * still hide, and goes after each local maximum that shows. Two of them may lie nearer together
 * than the coarse headings. */
static void look_between(struct visit *v, size_t watch, size_t anchor, double from, double step,
                         const double start[3], const double ends[2], int again)
{
	double value[PARTS + 1] = {ends[0]}, settle[3] = {start[0], start[1], start[2]};
	double part = step / PARTS;
	value[PARTS] = ends[1];
	for (int k = 1; k < PARTS; k++)
		value[k] = value_at(v, watch, anchor, from + k * part, settle);
	for (int k = 0; again == 0 && k <= PARTS; k++)
		refine_part(v, watch, anchor, from, part, value, k, settle);
	for (int k = 0; again > 0 && k < PARTS; k++) {
		double drop = fabs(value[k + 1] - value[k]);
		drop = k > 0 ? fmax(drop, fabs(value[k] - value[k - 1])) : drop;
		drop = k + 1 < PARTS ? fmax(drop, fabs(value[k + 2] - value[k + 1])) : drop;
		if (fmax(value[k], value[k + 1]) + drop > to_beat(v, watch, anchor))
			look_between(v, watch, anchor, from + k * part, part, settle, &value[k],
			             again - 1);
	}
}

/* Looks closely wherever one watched value of one anchor could be the largest so far. `value` holds
 * it for every heading of the coarse sweep, `row` apart. */
static void refine_watch(struct visit *v, size_t watch, size_t anchor, const double *value,
                         size_t row, unsigned count, double step)
{
	struct run *run = v->run;
	for (unsigned h = 0; h < count; h++) {
		double ends[2] = {value[h * row], value[(h + 1) % count * row]};
		double before = value[(h + count - 1) % count * row],
		       after = value[(h + 2) % count * row];
		/* a kink between two headings rises no steeper than the sweep does around it */
		double drop = fmax(fabs(ends[1] - ends[0]),
		                   fmax(fabs(ends[0] - before), fabs(after - ends[1])));
		if (fmax(ends[0], ends[1]) > 0 &&
		    fmax(ends[0], ends[1]) + drop > to_beat(v, watch, anchor))
			look_between(v, watch, anchor, v->load_case->spin_from + h * step, step,
			             run->settles[h], ends, AGAIN);
	}
}

static void sweep_case(struct visit *v)
{
	struct run *run = v->run;
	size_t row = run->watch_count * run->anchor_count;
	const struct load_case *c = v->load_case;
	bool carried, turns = c->spin_to > c->spin_from;
	unsigned count = turns ? heading_count(run) : 1;
	double step = (c->spin_to - c->spin_from) / count, settle[3], load[3];
	load_at(c, c->spin_from, load);
	base_start(v->setup->base, v->state.bed_ratio, load, settle);
	for (unsigned h = 0; h < count; h++) {
		double *values = &run->values[h * row];
		visit_heading(v, c->spin_from + h * step, settle, values, &carried);
		for (size_t k = 0; !carried && k < row; k++)
			values[k] = -1;
		memcpy(run->settles[h], settle, sizeof settle);
		run->pressures[h] = carried ? v->pressure : -1;
	}
	for (size_t w = 0; turns && w < run->watch_count; w++)
		for (size_t i = 0; i < run->anchor_count && !peaks_elsewhere(v, w); i++)
			refine_watch(v, w, i, &run->values[w * run->anchor_count + i], row, count,
			             step);
	/* the bed's pressure rises with its stiffness: the stiffest alone can hold the largest */
	if (turns && v->ratio_index == 0)
		refine_watch(v, WATCH_PRESSURE, 0, run->pressures, 1, count, step);
	run->bounds[c->group].refined |= c->reading;
}

static void bound_shear(struct run *run, struct setup_run *setup, const struct load_case *c)
{
	struct shear_bound *bound = &run->bounds[c->group];
	if (bound->ready)
		return;
	bound->ready = true;
	bound->carried = shear_group_bound(setup->base, c, bound->size, bound->heading);
	setup->facts.torsion_on_one |= !bound->carried;
}

/* Overturning in every heading, in closed form; also the least vertical force. */
static void weigh(struct setup_run *setup, const struct load_case *c)
{
	double heading, ratio = base_overturning(setup->base,
	                                         (double[3]){c->down, c->fixed[0], c->fixed[1]},
	                                         c->turning, &heading);
	for (unsigned r = 0; r < MAX_READINGS; r++) {
		struct tipping *tipping = &setup->tipping[r];
		if (c->reading & 1u << r && (!tipping->load_case || ratio > tipping->ratio))
			*tipping = (struct tipping){ratio, heading, c, tipping->unsolved};
	}
	if (!c->stability_only)
		setup->facts.least_down = fmin(setup->facts.least_down, c->down);
}

/* Of several readings of the weight flags the most favourable one, as everywhere. */
static void choose_tipping(struct setup_run *setup)
{
	struct run_facts *facts = &setup->facts;
	for (unsigned r = 0; r < MAX_READINGS; r++) {
		const struct tipping *tipping = &setup->tipping[r];
		if (!tipping->load_case ||
		    (facts->overturning_case && tipping->ratio >= facts->overturning))
			continue;
		facts->overturning = tipping->ratio;
		facts->overturning_heading = tipping->heading;
		facts->overturning_case = tipping->load_case;
		facts->unsolved = tipping->unsolved;
	}
}

static bool open_scratch(struct run *run)
{
	size_t cells = run->watch_count * run->setup_count * run->anchor_count * MAX_READINGS;
	run->worsts = arena_take(run->arena, cells, sizeof *run->worsts);
	run->bounds = arena_take(run->arena, run->loads.group_count, sizeof *run->bounds);
	run->group_tension = arena_take(run->arena,
	                                run->loads.group_count * run->anchor_count * MAX_READINGS,
	                                sizeof *run->group_tension);
	run->spread = arena_take(run->arena, run->anchor_count, sizeof *run->spread);
	run->values = arena_take(run->arena,
	                         heading_count(run) * run->watch_count * run->anchor_count,
	                         sizeof *run->values);
	run->settles = arena_take(run->arena, heading_count(run), sizeof *run->settles);
	run->pressures = arena_take(run->arena, heading_count(run), sizeof *run->pressures);
	if (!run->worsts || !run->bounds || !run->group_tension || !run->spread || !run->values ||
	    !run->settles || !run->pressures)
		return false;
	for (size_t i = 0; i < run->loads.group_count * run->anchor_count * MAX_READINGS; i++)
		run->group_tension[i] = -1; /* so that a slack anchor's first state is kept too */
	return true;
}

enum status run_sweep(struct run *run)
{
	if (!open_scratch(run))
		return NO_MEMORY;
	for (size_t k = 0; k < run->loads.count; k++) {
		const struct load_case *c = &run->loads.list[k];
		struct setup_run *setup = &run->setups[c->setup];
		weigh(setup, c);
		if (c->stability_only)
			continue;
		bound_shear(run, setup, c);
		struct visit v = {
			.run = run, .setup = setup, .setup_index = c->setup, .load_case = c};
		v.state.load_case = c;
		shear_of_state(run, setup, &v.state);
		/* the softest bed first: it mostly governs, and the rest then need no refinement */
		for (size_t r = setup->bed_ratio_count; r-- > 0;) {
			v.ratio_index = r;
			v.state.bed_ratio = setup->bed_ratio[r];
			sweep_case(&v);
		}
	}
	for (size_t s = 0; s < run->setup_count; s++)
		choose_tipping(&run->setups[s]);
	return DONE;
}

void run_state(const struct run *run, const struct setup_run *setup, const struct worst *worst,
               struct state *out)
{
	*out = (struct state){.load_case = worst->load_case,
	                      .heading = worst->heading,
	                      .bed_ratio = worst->bed_ratio,
	                      .balance = BALANCED};
	memcpy(out->settle, worst->settle, sizeof out->settle);
	load_at(worst->load_case, worst->heading, out->load);
	base_fill(setup->base, out);
	shear_of_state(run, setup, out);
}
