#include "check_sweep.h"

#include "check_code.h"
#include "check_history.h"

#include <math.h>
#include <string.h>

#define PI 3.14159265358979323846
#define HEADINGS 48                 /* of the coarse sweep */
#define GOLDEN 0.61803398874989485
#define MOST_ROUNDS 60              /* of a search; it ends far earlier */
#define REFINED_WIDTH 1e-6          /* a maximum is found to this [rad] */
#define PARTS 4                     /* of a coarse step, where it is looked at more closely */
#define AGAIN 1                     /* how often such a part is divided once more */
#define LASTING 1e-9                /* tension above this share of the weight is one */
#define STEEPER 2.0 /* how much steeper than its mean between headings a value may run */

struct worst *run_worst(const struct run *run, size_t watch, size_t setup, size_t anchor,
                        unsigned reading)
{
	size_t row = (watch * run->setup_count + setup) * run->anchor_count + anchor;
	return &run->worsts[row * MAX_READINGS + reading];
}

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
	                          .load = &v->anchor_load,
	                          .ratios = &v->ratios,
	                          .facts = &v->setup->facts};
	return run->watched[watch]->ratio(&judging, (int)anchor);
}

void row_case_keep(struct row_case *own, const struct load_case *c)
{
	own->load_case = *c;
	own->arm_load = *c->arm_load;
	own->load_case.arm_load = &own->arm_load;
}

static void keep(struct run *run, struct worst *worst, double value, const struct state *state)
{
	const struct load_case *c = state->load_case;
	struct row_case *own = worst->own;
	if (!c->estimate)
		worst->certain = fmax(worst->certain, value);
	if (worst->known && !(value > worst->value))
		return;
	if (c->row > 0) {
		own = own ? own : arena_take(run->arena, 1, sizeof *own);
		if (!own)
			return;      /* the arena's failure is sticky: the run ends with it */
		row_case_keep(own, c);
		c = &own->load_case;
	}
	*worst = (struct worst){true, value, worst->certain, c, own, state->heading,
	                        state->bed_ratio,
	                        {state->settle[0], state->settle[1], state->settle[2]}};
}

static double pressure_max(const struct base *base, const double settle[3])
{
	double most = 0;
	for (size_t i = 0; i < base->hull_count; i++) {
		double x = (base->hull[i].x - base->centre[0]) / base->size,
		       y = (base->hull[i].y - base->centre[1]) / base->size;
		double w = settle[0] + settle[1] * x + settle[2] * y;
		most = w > most ? w : most;
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
		if (!v->load_case->bound && v->load_case->method == METHOD_RATING)
			*spread = tension > *spread ? tension : *spread;
		for (unsigned r = 0; r < MAX_READINGS; r++)
			if (v->load_case->reading & 1u << r && tension > group[r]) {
				group[r] = tension;
				larger |= (uint64_t)1 << i;
			}
	}
	return larger;
}

/* Whether a watch looks at cases of this kind: a guaranteed bound has a check of its own, and a
 * code's checks see its own loads. */
static bool watches(const struct run *run, size_t watch, const struct load_case *c)
{
	return watch == WATCH_PRESSURE || check_looks_at(run->watched[watch], c);
}

/* A check of groups is watched once a state, in the place of the first anchor. */
static bool once_a_state(const struct run *run, size_t watch)
{
	return watch >= FIRST_CHECK_WATCH && watch != WATCH_PRESSURE &&
	       run->watched[watch]->stage == OF_STATE;
}

/* Keeps whatever is the worst so far. Within a group of free shear, a check that follows tension
 * can only become worse where the tension does. */
static void keep_state(struct visit *v, uint64_t anchors, double *values)
{
	struct run *run = v->run;
	uint64_t larger = keep_tensions(v);
	struct code_strength *code = code_of(v->setup, v->load_case->method);
	if (code) {
		code_load(run, v->setup, &v->state, &v->anchor_load, NULL);
		code_ratios(code, &v->anchor_load, &v->ratios);
	}
	for (size_t w = 0; w < run->watch_count; w++) {
		bool follows = !v->load_case->paired &&
		               (w == WATCH_SHEAR ||
		                (w >= FIRST_CHECK_WATCH && run->watched[w]->follows_tension));
		bool once = once_a_state(run, w), looks = watches(run, w, v->load_case);
		for (size_t i = 0; i < run->anchor_count; i++) {
			double value = 0;
			bool due = looks && (once ? i == 0 : anchors >> i & 1);
			if (due && (!follows || (once ? larger != 0 : larger >> i & 1))) {
				value = watch_value(run, v, w, i);
				for (unsigned r = 0; r < MAX_READINGS; r++)
					if (v->load_case->reading & 1u << r)
						keep(run, run_worst(run, w, v->setup_index, i, r),
						     value, &v->state);
			}
			/* every group's tension is refined, whoever looks at it */
			if (w == WATCH_TENSION && !looks)
				value = v->state.tension[i];
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
	if (v->warm)
		return base_solve_on(base, state->bed_ratio, state->load, v->warm, settle) == DONE;
	if (base_solve(base, state->bed_ratio, state->load, settle, NULL) == DONE)
		return true;
	base_start(base, state->bed_ratio, state->load, settle);
	return base_solve(base, state->bed_ratio, state->load, settle, NULL) == DONE;
}

/* A range of headings that is no full circle has ends; the search may look past them, but what it
 * finds there is not kept. */
static bool in_range(const struct load_case *c, double heading)
{
	return heading >= c->spin_from && heading <= c->spin_to;
}

static bool full_circle(const struct load_case *c)
{
	return c->spin_to - c->spin_from >= 2 * PI * (1 - 1e-12);
}

bool visit_solve(struct visit *v, double settle[3])
{
	struct state *state = &v->state;
	if (base_balance(v->setup->base, state->load) != BALANCED) {
		/* base.stability fails on it; there is nothing to judge. A bound need not occur */
		v->setup->facts.bound_uncarried |= v->load_case->bound;
		return false;
	}
	if (!solve(v, settle)) {
		/* the forces outgrow what doubles can hold in balance: far beyond any use */
		v->setup->facts.bound_uncarried |= v->load_case->bound;
		for (unsigned r = 0; r < MAX_READINGS; r++)
			if (v->load_case->reading & 1u << r && !v->load_case->bound)
				v->setup->tipping[r].unsolved = true;
		return false;
	}
	v->run->states++;
	memcpy(state->settle, settle, sizeof state->settle);
	base_tensions(v->setup->base, state->bed_ratio, settle, state->tension);
	v->pressure = pressure_max(v->setup->base, settle);
	return true;
}

void visit_keep(struct visit *v, uint64_t anchors, double *values)
{
	v->setup->facts.any_state = true;
	if (!v->load_case->bound && v->load_case->method == METHOD_RATING)
		v->setup->facts.pressure_max = fmax(v->setup->facts.pressure_max, v->pressure);
	keep_state(v, anchors, values);
}

bool visit_heading(struct visit *v, double heading, double settle[3], double *values)
{
	v->state.heading = heading;
	load_at(v->load_case, heading, v->state.load);
	if (!visit_solve(v, settle))
		return false;
	if (v->load_case->paired)
		shear_of_state(v->run, v->setup, &v->state);
	if (full_circle(v->load_case) || in_range(v->load_case, heading))
		visit_keep(v, UINT64_MAX, values);
	return true;
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
	return visit_heading(v, heading, settle, NULL) ? watch_value(v->run, v, watch, anchor) : -1;
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
	if (!watches(v->run, watch, v->load_case))
		return watch != WATCH_TENSION; /* every group's tension is wanted */
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
 * it for every heading of the coarse sweep, `row` apart; a full circle goes on behind its end. */
static void refine_watch(struct visit *v, size_t watch, size_t anchor, const double *value,
                         size_t row, unsigned count, double step)
{
	struct run *run = v->run;
	bool round = full_circle(v->load_case);
	for (unsigned h = 0; h < (round ? count : count - 1); h++) {
		unsigned left = round ? (h + count - 1) % count : h > 0 ? h - 1 : h;
		unsigned right = round ? (h + 2) % count : h + 2 < count ? h + 2 : h + 1;
		double ends[2] = {value[h * row], value[(h + 1) % count * row]};
		double before = value[left * row], after = value[right * row];
		/* a kink between two headings rises no steeper than the sweep does around it */
		double drop = fmax(fabs(ends[1] - ends[0]),
		                   fmax(fabs(ends[0] - before), fabs(after - ends[1])));
		if (fmax(ends[0], ends[1]) > 0 &&
		    fmax(ends[0], ends[1]) + drop > to_beat(v, watch, anchor))
			look_between(v, watch, anchor, v->load_case->spin_from + h * step, step,
			             run->settles[h], ends, AGAIN);
	}
}

/* Headings of the coarse sweep, and the step between them: a range that is no full circle has its
 * ends among them. */
static unsigned sweep_headings(const struct run *run, const struct load_case *c, double *step)
{
	double range = c->spin_to - c->spin_from;
	unsigned count = heading_count(run);
	*step = 0;
	if (!(range > 0))
		return 1;
	if (full_circle(c)) {
		*step = range / count;
		return count;
	}
	unsigned steps = (unsigned)ceil(count * range / (2 * PI));
	*step = range / steps;
	return steps + 1;
}

static void sweep_case(struct visit *v)
{
	struct run *run = v->run;
	size_t row = run->watch_count * run->anchor_count;
	const struct load_case *c = v->load_case;
	double step, settle[3], load[3];
	unsigned count = sweep_headings(run, c, &step);
	bool turns = count > 1;
	load_at(c, c->spin_from, load);
	base_start(v->setup->base, v->state.bed_ratio, load, settle);
	for (unsigned h = 0; h < count; h++) {
		double *values = &run->values[h * row];
		/* the last heading of an open range must not fall outside it by rounding */
		double heading = fmin(c->spin_from + h * step, c->spin_to);
		bool carried = visit_heading(v, heading, settle, values);
		for (size_t k = 0; !carried && k < row; k++)
			values[k] = -1;
		memcpy(run->settles[h], settle, sizeof settle);
		run->pressures[h] = carried ? v->pressure : -1;
	}
	for (size_t w = 0; turns && w < run->watch_count; w++)
		for (size_t i = 0; i < (once_a_state(run, w) ? 1 : run->anchor_count) &&
		                   !peaks_elsewhere(v, w); i++)
			refine_watch(v, w, i, &run->values[w * run->anchor_count + i], row, count,
			             step);
	/* the bed's pressure rises with its stiffness: the stiffest alone can hold the largest */
	if (turns && v->ratio_index == 0 && !c->bound && c->method == METHOD_RATING)
		refine_watch(v, WATCH_PRESSURE, 0, run->pressures, 1, count, step);
	run->bounds[c->group].refined |= c->reading;
}

void visit_bound_shear(struct run *run, const struct load_case *c)
{
	struct setup_run *setup = &run->setups[c->setup];
	struct shear_bound *bound = &run->bounds[c->group];
	double size[MAX_ANCHORS], heading[MAX_ANCHORS];
	bool carried = shear_group_bound(setup->base, c, size, heading);
	for (size_t i = 0; i < run->anchor_count; i++) {
		if (bound->ready && !(size[i] > bound->size[i]))
			continue;
		bound->size[i] = size[i];
		bound->heading[i] = heading[i];
		bound->from[i] = c;
	}
	bound->carried = carried && (bound->carried || !bound->ready);
	bound->ready = true;
	if (c->bound)
		setup->facts.bound_uncarried |= !carried;
	else
		setup->facts.torsion_on_one |= !carried;
	struct code_strength *code = code_of(setup, c->method);
	if (code && !c->paired && !c->sustained)
		shear_mode_bound(setup->base, code, c, c->earthquake != NULL, &bound->edge,
		                 &bound->pryout);
}

/* Largest overturning of a case over the headings that it can take, and that heading. */
static double overturning_of(const struct base *base, const struct load_case *c, double *heading)
{
	const double all[3] = {c->down, c->fixed[0], c->fixed[1]};
	const double rest[3] = {all[0] - c->moved[0], all[1] - c->moved[1], all[2] - c->moved[2]};
	if (c->turning != 0 && c->spin_to > c->spin_from)
		return base_overturning_within(base, all, c->turning, c->spin_from, c->spin_to,
		                               heading);
	/* what stands still has no heading to choose; the arm's wrench against all else */
	if (c->arm_load)
		return base_overturning_apart(base, rest, c->moved, heading);
	return base_overturning(base, all, c->turning, heading);
}

void visit_weigh(struct run *run, const struct load_case *c, struct row_case *kept)
{
	struct setup_run *setup = &run->setups[c->setup];
	double heading, ratio = overturning_of(setup->base, c, &heading);
	if (c->bound)
		return;      /* need not occur: rating.bound alone judges it */
	for (unsigned r = 0; r < MAX_READINGS; r++) {
		struct tipping *tipping = &setup->tipping[r];
		if (!(c->reading & 1u << r))
			continue;
		if (!c->estimate)
			tipping->certain = fmax(tipping->certain, ratio);
		if (tipping->load_case && !(ratio > tipping->ratio))
			continue;
		if (kept)
			row_case_keep(kept, c);
		*tipping = (struct tipping){ratio, heading, tipping->certain,
		                            kept ? &kept->load_case : c, tipping->unsolved};
	}
	if (!c->stability_only && c->method == METHOD_RATING)
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
		facts->overturning_certain = tipping->certain;
		facts->overturning_case = tipping->load_case;
		facts->unsolved = tipping->unsolved;
	}
}

/* In any reading of unknown weight flags: what rests on it never fails, so the largest is the safe
 * side. */
static void keep_largest_tensions(struct run *run, size_t setup)
{
	struct run_facts *facts = &run->setups[setup].facts;
	for (size_t i = 0; i < run->anchor_count; i++)
		for (unsigned r = 0; r < MAX_READINGS; r++) {
			const struct worst *worst = run_worst(run, WATCH_TENSION, setup, i, r);
			if (worst->known)
				facts->tension_max[i] = fmax(facts->tension_max[i], worst->value);
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
	                         (heading_count(run) + 1) * run->watch_count * run->anchor_count,
	                         sizeof *run->values);
	run->settles = arena_take(run->arena, heading_count(run) + 1, sizeof *run->settles);
	run->pressures = arena_take(run->arena, heading_count(run) + 1, sizeof *run->pressures);
	if (!run->worsts || !run->bounds || !run->group_tension || !run->spread || !run->values ||
	    !run->settles || !run->pressures)
		return false;
	for (size_t i = 0; i < run->loads.group_count * run->anchor_count * MAX_READINGS; i++)
		run->group_tension[i] = -1; /* so that a slack anchor's first state is kept too */
	return true;
}

void visit_open(struct visit *v, struct run *run, const struct load_case *c)
{
	*v = (struct visit){.run = run,
	                    .setup = &run->setups[c->setup],
	                    .setup_index = c->setup,
	                    .load_case = c};
	v->state.load_case = c;
	if (!c->paired)
		shear_of_state(run, v->setup, &v->state);
}

static void sweep_bed_ratios(struct run *run, const struct load_case *c)
{
	struct visit v;
	visit_open(&v, run, c);
	/* the softest bed first: it mostly governs, and the rest then need no refinement */
	for (size_t r = v.setup->bed_ratio_count; r-- > 0;) {
		v.ratio_index = r;
		v.state.bed_ratio = v.setup->bed_ratio[r];
		sweep_case(&v);
	}
	/* bond weakens under lasting tension: what follows must know */
	for (size_t k = 0; c->sustained && k < run->anchor_count * MAX_READINGS; k++)
		code_of(v.setup, c->method)->facts.sustained_tension |=
			run->group_tension[c->group * run->anchor_count * MAX_READINGS + k] >
			LASTING * fabs(c->down);
}

/* Lasting loads, or all others. Wrenches of one source share their shear bound, so all of them come
 * before the first state. */
static void sweep_all(struct run *run, bool sustained)
{
	for (size_t k = 0; k < run->loads.count; k++) {
		const struct load_case *c = &run->loads.list[k];
		if (c->sustained != sustained)
			continue;
		visit_weigh(run, c, NULL);
		if (!c->stability_only)
			visit_bound_shear(run, c);
	}
	for (size_t k = 0; k < run->loads.count; k++)
		if (run->loads.list[k].sustained == sustained &&
		    !run->loads.list[k].stability_only)
			sweep_bed_ratios(run, &run->loads.list[k]);
}

enum status run_sweep(struct run *run)
{
	if (!open_scratch(run))
		return NO_MEMORY;
	sweep_all(run, true);
	sweep_all(run, false);
	enum status status = run_histories(run);
	for (size_t s = 0; s < run->setup_count; s++) {
		choose_tipping(&run->setups[s]);
		keep_largest_tensions(run, s);
	}
	return status;
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
