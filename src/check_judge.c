#include "check_judge.h"

#include "arm/history_doubt.h"
#include "base/trace_state.h"
#include "check_code.h"
#include "checks/judging.h"
#include "check_words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define MOST_RESIDUAL 1e-9 /* what an equilibrium may lack, relative to its load */
#define SAME_RATIO 1e-9      /* anchors whose ratios differ by less govern together */

static bool field_is_known(const struct cell *cell, const char *path)
{
	for (const struct field *f = field_find(path);
	     f && f < fields + field_count && strcmp(f->path, path) == 0; f++)
		if (f->kind != FIELD_SECTION && f->kind != FIELD_ALIAS &&
		    field_given(f, cell)->origin != ABSENT)
			return true;
	return false;
}

static void add_lacking(struct lacking_list *lacking, const char *path, const char *id)
{
	size_t i = 0;
	while (i < lacking->count && strcmp(lacking->list[i].path, path) != 0)
		i++;
	if (i == lacking->room)
		return;      /* room is the number of all fields: never reached by distinct paths */
	if (i == lacking->count)
		lacking->list[lacking->count++].path = path;
	struct lacking *row = &lacking->list[i];
	for (size_t k = 0; k < row->check_count; k++)
		if (strcmp(row->checks[k], id) == 0)
			return;
	if (row->check_count < MAX_CHECKS)
		row->checks[row->check_count++] = id;
}

/* A history that does not show what it is said to show. */
static void doubt_histories(const struct run *run, size_t setup, struct finding *out)
{
	const struct arm_loads *arm = run->arms[setup];
	for (size_t i = 0; arm && i < arm->count; i++) {
		const char *remedy, *why =
			arm->list[i].way == WAY_HISTORY
				? history_doubt(&arm->list[i], arm->weight, &remedy)
				: NULL;
		if (!why)
			continue;
		const char *text = arena_format(run->arena, "%s: %s", arm->list[i].name, why);
		finding_doubts(out, text ? text : why, remedy);
	}
}

/* The inputs that the table says the check needs, the gaps of the loads and the departures. */
static void judge_inputs(const struct run *run, const struct check *check, const struct cell *cell,
                         struct finding *out)
{
	for (size_t i = 0; check->needs[i]; i++)
		if (!field_is_known(cell, check->needs[i]))
			finding_lacks(out, check->needs[i]);
	if (!check->needs_loads || without_load_model(cell))
		return;
	for (size_t i = 0; i < run->loads.gap_count; i++)
		finding_lacks(out, run->loads.gaps[i].path);
	out->never_fails = !loads_bounding(&run->loads);
	const char *remedy, *departure = load_departure(cell, &remedy);
	if (departure)
		finding_doubts(out, departure, remedy);
}

/* Where the shear is free of the tilt, it is largest in a heading of its own. */
static double heading_of(const struct run *run, const struct worst *worst, bool by_shear,
                         size_t anchor)
{
	if (by_shear && !worst->load_case->paired)
		return run->bounds[worst->load_case->group].heading[anchor];
	return worst->heading;
}

static void write_state(const struct run *run, const struct judging *judging,
                        const struct check *check, size_t anchor, const struct worst *worst)
{
	struct trace *trace = judging->trace;
	double heading = heading_of(run, worst, true, anchor);
	/* where shear is free of the tilt, another wrench of the same source may give it */
	struct state sheared = *judging->state;
	if (!worst->load_case->paired)
		sheared.load_case = run->bounds[worst->load_case->group].from[anchor];
	if (check->by_shear) {
		loads_trace_horizontal(judging->cell, sheared.load_case, trace);
	} else {
		loads_trace(judging->cell, worst->load_case, worst->heading, trace);
		trace_equilibrium(judging->base, judging->state, trace);
	}
	if (check->by_shear || check->combines)
		trace_shear(judging->base, &sheared, (int)anchor, heading, trace);
}

static void judge_one(const struct run *run, const struct check *check, size_t setup, size_t anchor,
                      const struct worst *worst, struct trace *trace, struct finding *out)
{
	struct setup_run *s = &run->setups[setup];
	struct state state;
	struct anchor_load load;
	struct shear_peaks peaks;
	struct judging judging = {.cell = s->cell,
	                          .setting = &s->setting,
	                          .base = s->base,
	                          .arena = run->arena,
	                          .trace = trace,
	                          .facts = &s->facts};
	*out = (struct finding){0};
	judge_inputs(run, check, s->cell, out);
	if (worst && worst->known) {
		/* an estimate is no lower bound: alone it fails nothing */
		out->never_fails |= worst->load_case->estimate && !(worst->certain > 1);
		run_state(run, s, worst, &state);
		/* balance is verified by integrals of their own before anything rests on it */
		judging.state = state.residual <= MOST_RESIDUAL ? &state : NULL;
		if (code_of(s, worst->load_case->method)) {
			code_load(run, s, &state, &load, &peaks);
			load.shear_at = check->mode == EDGE ? peaks.edge.shear
			                : check->mode == PRYOUT ? peaks.pryout.shear : NULL;
			judging.load = judging.state ? &load : NULL;
		}
		if (trace && judging.state)
			write_state(run, &judging, check, anchor, worst);
	}
	check->judge(&judging, (int)anchor, out);
	/* behind what the check itself doubts, which says more */
	if (check->needs_loads)
		doubt_histories(run, setup, out);
	/* numbers that are due and missing without a named reason: no equilibrium, or no rating */
	if (check_of_states(check) && !out->computed && out->missing_count == 0)
		finding_doubts(out, "no equilibrium could be computed: see base.stability", NULL);
	finding_settle(out);
}

static bool worse(const struct finding *a, const struct finding *than)
{
	if (a->verdict != than->verdict)
		return a->verdict > than->verdict;
	if (a->computed != than->computed)
		return a->computed;
	return a->computed && a->ratio > than->ratio * (1 + SAME_RATIO);
}

/* The reading of unknown flags that favours the check: every reading's worst, the least of them. */
static unsigned favourable_reading(const struct run *run, size_t watch)
{
	unsigned best = 0;
	double least = HUGE_VAL;
	for (unsigned r = 0; r < MAX_READINGS; r++) {
		double most = -1;
		if (!(run->loads.readings & 1u << r))
			continue;
		for (size_t s = 0; s < run->setup_count; s++)
			for (size_t i = 0; i < run->anchor_count; i++) {
				const struct worst *worst = run_worst(run, watch, s, i, r);
				if (worst->known)
					most = fmax(most, worst->value);
			}
		if (most < least) {
			least = most;
			best = r;
		}
	}
	return best;
}

static struct occurrence occurrence_of(const struct run *run, const struct worst *worst,
                                       size_t setup, bool by_shear, size_t anchor)
{
	struct occurrence out = {.setup = (uint16_t)setup};
	if (!worst || !worst->known)
		return out;
	out.load_case = worst->load_case;
	out.has_heading = true;
	out.heading = heading_of(run, worst, by_shear, anchor);
	out.bed_ratio = worst->bed_ratio;
	memcpy(out.settle, worst->settle, sizeof out.settle);
	return out;
}

static size_t watch_of(const struct run *run, const struct check *check)
{
	for (size_t w = FIRST_CHECK_WATCH; w < run->watch_count; w++)
		if (run->watched[w] == check)
			return w;
	return 0;
}

/* Takes one subject's finding into the check's result. */
static void take(struct check_result *result, const struct finding *finding, size_t setup,
                 size_t anchor, bool first, const struct occurrence *at, bool per_anchor)
{
	uint64_t bit = per_anchor ? (uint64_t)1 << anchor : finding->anchors;
	if (finding->computed) {
		double *ratio = &result->setup_ratio[setup];
		*ratio = result->has_setup_ratio[setup] ? fmax(*ratio, finding->ratio)
		                                        : finding->ratio;
		result->has_setup_ratio[setup] = true;
	}
	if (first || worse(finding, &result->finding)) {
		result->finding = *finding;
		result->subject = (struct subject){bit, finding->edge};
		result->at = *at;
	} else if (finding->verdict == result->finding.verdict &&
	           !worse(&result->finding, finding) && result->at.setup == setup) {
		result->subject.anchors |= bit;
	}
}

static void trace_governing(const struct run *run, struct check_result *result,
                            const struct worst *worst)
{
	size_t anchor = 0;
	struct finding again;
	while (result->check->stage != OF_STATE && result->subject.anchors &&
	       !(result->subject.anchors >> anchor & 1))
		anchor++;
	trace_open(&result->trace, run->arena);
	judge_one(run, result->check, result->at.setup, anchor, worst, &result->trace, &again);
}

static void judge_check(const struct run *run, const struct check *check, struct check_result *out,
                        struct lacking_list *lacking)
{
	bool first = true, states = check_of_states(check) && run->worsts;
	bool whole = check->stage == OF_SETUP || check->stage == OF_STATE;
	size_t watch = states ? watch_of(run, check) : 0;
	unsigned reading = states ? favourable_reading(run, watch) : 0;
	size_t anchors = whole || run->anchor_count == 0 ? 1 : run->anchor_count;
	const struct worst *governing = NULL;
	*out = (struct check_result){.check = check};
	for (size_t s = 0; s < run->setup_count; s++)
		for (size_t i = 0; i < anchors; i++) {
			struct finding finding;
			if (check->left_out && check->left_out(run->setups[s].cell))
				continue;
			const struct worst *worst = states ? run_worst(run, watch, s, i, reading)
			                                   : NULL;
			/* without a pattern one nameless anchor stands for all, so that the rest is
			 * asked for too */
			judge_one(run, check, s, i, worst, NULL, &finding);
			for (size_t k = 0; k < finding.missing_count; k++)
				add_lacking(lacking, finding.missing[k], check->id);
			struct occurrence at = occurrence_of(run, worst, s, check->by_shear, i);
			bool governs = first || worse(&finding, &out->finding);
			take(out, &finding, s, i, first, &at,
			     !whole && run->anchor_count > 0);
			governing = governs ? worst : governing;
			first = false;
		}
	bool wanted = run->options->trace &&
	              (!run->options->only || strcmp(run->options->only, check->id) == 0);
	if (wanted)
		trace_governing(run, out, governing);
}

/* The largest value in any reading of unknown flags: what is shown of an anchor is never the
 * favourable half of what is not known. */
static void largest_of(const struct run *run, size_t watch, size_t anchor, double *value,
                       struct occurrence *at)
{
	for (size_t s = 0; s < run->setup_count; s++)
		for (unsigned r = 0; r < MAX_READINGS; r++) {
			const struct worst *worst = run_worst(run, watch, s, anchor, r);
			if (worst->known && (worst->value > *value || !at->load_case)) {
				*value = worst->value;
				*at = occurrence_of(run, worst, s, watch == WATCH_SHEAR, anchor);
			}
		}
}

static void list_anchors(const struct run *run, struct result *result)
{
	result->anchor_count = run->anchor_count;
	for (size_t i = 0; i < run->anchor_count; i++) {
		struct anchor_result *anchor = &result->anchor[i];
		snprintf(anchor->id, sizeof anchor->id, "A%u", (unsigned)(i + 1));
		anchor->at[0] = run->cell->anchors.at[i].x;
		anchor->at[1] = run->cell->anchors.at[i].y;
		if (!result->loads_computed)
			continue;
		largest_of(run, WATCH_TENSION, i, &anchor->tension, &anchor->tension_at);
		largest_of(run, WATCH_SHEAR, i, &anchor->shear, &anchor->shear_at);
		anchor->computed = anchor->tension_at.load_case != NULL;
	}
}

/* The largest tension and the largest shear of a history's rows as one pair: the safe side, and the
 * form that `require` can invert. */
static void list_row_demands(const struct run *run, struct result *result)
{
	size_t n = run->anchor_count, history = 0;
	struct required *required = &result->required;
	for (size_t s = 0; s < run->setup_count; s++)
		for (size_t k = 0; run->arms[s] && k < run->arms[s]->count; k++) {
			if (run->arms[s]->list[k].way != WAY_HISTORY)
				continue;
			size_t group = loads_history_group(&run->loads, run->cell, history++,
			                                   METHOD_RATING);
			for (size_t i = 0; i < n * MAX_READINGS; i++)
				if (run->loads.readings >> i % MAX_READINGS & 1)
					result->demands[result->demand_count++] = (struct demand){
						(uint16_t)s, i % MAX_READINGS, i / MAX_READINGS,
						run->group_tension[group * n * MAX_READINGS + i],
						run->bounds[group].size[i / MAX_READINGS], false};
		}
	if (history > 0)
		required->notes[required->note_count++] =
			"of a history the largest tension and the largest shear are paired though "
			"they belong to different rows: the safe side";
}

/* What every anchor must carry, a row a group of cases; complete where shear is free of the
 * heading. */
static bool list_demands(const struct run *run, struct result *result)
{
	size_t n = run->anchor_count;
	result->demands = arena_take(run->arena, run->loads.group_count * n * MAX_READINGS + 1,
	                             sizeof *result->demands);
	if (!result->demands)
		return false;
	for (size_t k = 0; k < run->loads.count; k++) {
		const struct load_case *c = &run->loads.list[k];
		result->paired = result->paired || c->paired;
		bool seen = k > 0 && run->loads.list[k - 1].group == c->group;
		if (c->method != METHOD_RATING)
			continue;
		if (c->stability_only || seen || !run->bounds[c->group].ready)
			continue;
		/* a bound that need not be carried asks for nothing */
		if (c->bound && run->setups[c->setup].cell->arm.motion.judged_by.value != BY_BOUND)
			continue;
		for (size_t i = 0; i < n; i++)
			for (unsigned r = 0; r < MAX_READINGS; r++)
				if (run->loads.readings & 1u << r)
					result->demands[result->demand_count++] = (struct demand){
						c->setup, r, i,
						run->group_tension[(c->group * n + i) *
					                                   MAX_READINGS +
					                           r],
						run->bounds[c->group].size[i], c->bound};
	}
	list_row_demands(run, result);
	return true;
}

/* Whether the check speaks before the best so far. Of several unproven checks the cause speaks
 * before what leans on it, and else the first in the table's order. One that combines others speaks
 * only where they do not. */
static bool speaks_before(const struct check_result *a, const struct check_result *best)
{
	if (a->finding.verdict != best->finding.verdict)
		return a->finding.verdict > best->finding.verdict;
	if (a->finding.verdict == UNPROVEN)
		return (best->check->leans || best->finding.background) &&
		       !(a->check->leans || a->finding.background);
	/* where all holds, what the anchors carry says more than what they stand in */
	if (a->finding.verdict == HOLDS && a->check->leans != best->check->leans)
		return a->check->leans && a->finding.computed;
	if (a->check->combines != best->check->combines && best->check->stage == a->check->stage)
		return best->check->combines;
	return worse(&a->finding, &best->finding);
}

static void choose_governing(struct result *result)
{
	for (size_t i = 0; i < result->check_count; i++) {
		const struct check_result *check = &result->checks[i];
		result->verdict = check->finding.verdict > result->verdict ? check->finding.verdict
		                                                           : result->verdict;
		if (speaks_before(check, &result->checks[result->governing]))
			result->governing = i;
	}
	/* where the combination fails too, only what mends it mends the file */
	struct finding *governing = &result->checks[result->governing].finding;
	for (size_t i = 0; i < result->check_count; i++)
		if (result->checks[i].check->combines &&
		    result->checks[i].finding.verdict == FAILS && governing->verdict == FAILS &&
		    check_of_states(result->checks[result->governing].check) &&
		    result->checks[i].check->method ==
		            result->checks[result->governing].check->method)
			governing->remedy = result->checks[i].finding.remedy;
}

/* Why a check does not apply to any setup, or NULL: one setup is enough for it to be due. */
static const char *left_out_of_all(const struct run *run, const struct check *check)
{
	const char *why = NULL;
	for (size_t s = 0; s < run->setup_count; s++) {
		why = check->left_out ? check->left_out(run->setups[s].cell) : NULL;
		if (!why)
			return NULL;
	}
	return why;
}

enum status judge_all(const struct run *run, struct result *result, struct lacking_list *lacking)
{
	lacking->room = field_count;
	lacking->list = arena_take(run->arena, lacking->room, sizeof *lacking->list);
	result->checks = arena_take(run->arena, check_count, sizeof *result->checks);
	result->left_out = arena_take(run->arena, check_count, sizeof *result->left_out);
	if (!lacking->list || !result->checks || !result->left_out)
		return NO_MEMORY;
	for (size_t i = 0; i < check_count; i++) {
		if (!check_is_due(&checks[i], run->cell))
			continue;
		const char *why = left_out_of_all(run, &checks[i]);
		if (why)
			result->left_out[result->left_out_count++] = (struct left_out){checks[i].id,
			                                                               why};
		else
			judge_check(run, &checks[i], &result->checks[result->check_count++],
			            lacking);
	}
	choose_governing(result);
	list_anchors(run, result);
	if (result->loads_computed && !list_demands(run, result))
		return NO_MEMORY;
	return run->arena->failed ? NO_MEMORY : DONE;
}
