#include "check_history.h"

#include "check_code.h"
#include "check_cycles.h"
#include "loads/arm_wrench.h"
#include "loads/set_wrench.h"
#include "loads/weights.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

enum {
	BATCH = 64,
	MOST_PIECES = 16,
	FRONT = 8,
	MAX_LANES = 4 * METHODS * MAX_CORNERS * MAX_BED_RATIOS
};
#define PIECE_BYTES 4000000u         /* of text, from which on it is worth a piece of its own */
#define SLAB_BYTES 2000000u          /* for the groups of one piece; far more than a state needs */
#define CYCLE_BYTES 64000000u        /* for the counts of all pieces together */

/* --- load cases of a row
 * ----------------------------------------------------------------------------- */

size_t row_combinations(struct arena *arena, const struct cell *cell, enum weight_run run,
                        const struct load_case *head, struct row_combination out[])
{
	struct weights w = parts_weights(cell, head->method, run);
	bool boxed = w.half[0] != 0 || w.half[1] != 0;
	size_t count = boxed ? MAX_CORNERS : 1;
	for (size_t k = 0; k < count; k++) {
		struct load_case *c = &out[k].load_case;
		double sign[2];
		*c = *head;
		c->run = run;
		c->corner = boxed ? (int)k : -1;
		c->weight_factor = run_factors(cell, head->method, run).weight;
		c->paired = true;
		c->stability_only = run == RUN_STABILITY;
		c->combination = loads_combination(arena, cell, c);
		corner_signs(c->corner, sign);
		out[k].down = w.down;
		for (int i = 0; i < 2; i++)
			out[k].fixed[i] = w.moment[i] + sign[i] * w.half[i];
		if (!c->combination)
			return 0;
	}
	return count;
}

void row_combination_set(struct row_combination *combination, const struct cell *cell,
                         const struct arm_load *load)
{
	struct load_case *c = &combination->load_case;
	c->down = combination->down;
	for (int i = 0; i < 2; i++)
		c->fixed[i] = combination->fixed[i];
	memset(c->fixed_shear, 0, sizeof c->fixed_shear);
	add_set_wrench(cell, load, c);
}

/* --- one piece of a history
 * -------------------------------------------------------------------------- */

/* Pairs of tension and shear of one anchor that have been judged: a pair that is no larger in both
 * than one of these is no worse in anything that is watched. */
struct front { double tension[FRONT], shear[FRONT]; size_t count, next; };

/* One run, corner and bed ratio. */
struct lane {
	struct visit visit;
	struct base_warm warm;
	double settle[3], most[MAX_ANCHORS];     /* largest tensions here [N] */
	size_t counted;                          /* lane of the load cycles from 1; 0: none */
};

/* A piece has worsts and facts of its own. In its run there is one setup and one group. */
struct piece {
	struct run run;
	struct setup_run setup;
	struct history rows;
	uint32_t row_count;
	struct row_combination combination[MAX_COMBINATIONS];
	size_t combination_count;
	uint16_t method_count;       /* each with a group of its own: service loads first */
	struct lane *lane;
	size_t lane_count, lanes_counted;
	struct front front[MAX_ANCHORS];
	struct arm_load load;                            /* of the row */
	double shear[METHODS][MAX_ANCHORS]; /* of the row, with each method's factor [N] */
	double shear_most[MAX_ANCHORS];     /* of service loads */
	size_t leader[METHODS]; /* a combination that stands for the method's horizontal load */
	bool uses[METHODS];
	/* of the codes' groups in this piece, for its thread alone: given out from one slab */
	struct arena arena;
	struct code_strength code[CODES];    /* as the setup has them */
	char *slab;
	size_t slab_used;
	bool out_of_memory;
	struct row_case tipped;                          /* row of the largest overturning */
	struct cycle_count cycles;
};

static bool dominated(const struct front *front, double tension, double shear)
{
	for (size_t k = 0; k < front->count; k++)
		if (tension <= front->tension[k] && shear <= front->shear[k])
			return true;
	return false;
}

static void front_add(struct front *front, double tension, double shear)
{
	front->tension[front->next] = tension;
	front->shear[front->next] = shear;
	front->count = front->count < FRONT ? front->count + 1 : FRONT;
	front->next = (front->next + 1) % FRONT;
}

/* Anchors (bits) of which this state must be judged. Every check that is watched rises with tension
 * and shear of its anchor (check_table.h), so that what is dominated cannot be worse. */
static uint64_t to_judge(struct piece *p, struct lane *lane)
{
	const struct state *state = &lane->visit.state;
	uint64_t anchors = 0;
	for (size_t i = 0; i < p->run.anchor_count; i++) {
		double tension = state->tension[i], shear = p->shear[METHOD_RATING][i];
		bool known = dominated(&p->front[i], tension, shear);
		if (!known)
			front_add(&p->front[i], tension, shear);
		/* the largest of each bed ratio is shown, too */
		if (tension > lane->most[i])
			lane->most[i] = tension;
		else if (known)
			continue;
		anchors |= (uint64_t)1 << i;
	}
	return anchors;
}

/* --- groups of the code methods
 * --------------------------------------------------------------------------- */

/* Memory of the piece's arena. The caller's allocator may not be one for threads. */
static void *from_slab(void *user, void *old, size_t size)
{
	struct piece *p = user;
	if (old || size > SLAB_BYTES - p->slab_used)
		return NULL;
	void *taken = p->slab + p->slab_used;
	p->slab_used += (size + sizeof(max_align_t) - 1) / sizeof(max_align_t) *
	                sizeof(max_align_t);
	p->slab_used = p->slab_used < SLAB_BYTES ? p->slab_used : SLAB_BYTES;
	return taken;
}

/* Groups and their strengths are kept as they are met, which no two threads may do in one place:
 * copies of the setup's codes that know none yet. False: no memory. */
static bool open_codes(struct piece *p)
{
	arena_open(&p->arena, from_slab, p);
	p->slab_used = 0;
	for (int k = 0; k < CODES; k++)
		if (p->code[k].arena && code_strength_copy(&p->code[k], &p->arena,
		                                           p->setup.setting.code[k]) != DONE)
			return false;
	return true;
}

static void visit_lane(struct piece *p, struct lane *lane)
{
	struct visit *v = &lane->visit;
	const struct load_case *c = v->load_case;
	v->state.load[0] = c->down;
	v->state.load[1] = c->fixed[0];
	v->state.load[2] = c->fixed[1];
	bool carried = visit_solve(v, lane->settle);
	if (lane->counted)
		cycle_count_add(&p->cycles, lane->counted - 1, carried ? v->state.tension : NULL);
	if (!carried)
		return;
	/* a group of anchors may be worse off with less tension on one of them: each row counts */
	bool service = c->method == METHOD_RATING;
	uint64_t anchors = service ? to_judge(p, lane) : UINT64_MAX;
	if (anchors == 0 && v->pressure <= p->setup.facts.pressure_max)
		return;
	/* where the row pushes, for whoever reads where it happens */
	v->state.heading = c->fixed_shear[0] == 0 && c->fixed_shear[1] == 0
	                           ? 0 : atan2(c->fixed_shear[1], c->fixed_shear[0]);
	memcpy(v->state.shear, p->shear[c->method],
	       p->run.anchor_count * sizeof v->state.shear[0]);
	visit_keep(v, anchors, NULL);
	/* where the slab is full, what was kept is given up and the state is looked at again */
	if (!service && p->arena.failed) {
		p->out_of_memory |= !open_codes(p);
		visit_keep(v, anchors, NULL);
		p->out_of_memory |= p->arena.failed;
	}
}

/* Without a line about which it can tip nothing overturns, whatever the row: the first one says so.
 */
static void weigh(struct piece *p, const struct load_case *c, bool first)
{
	struct run_facts *facts = &p->setup.facts;
	if (first || p->setup.base->facet_count > 0)
		visit_weigh(&p->run, c, &p->tipped);
	else if (!c->stability_only && c->method == METHOD_RATING)
		facts->least_down = fmin(facts->least_down, c->down);
}

static void visit_row(struct piece *p, const struct history_row *row)
{
	bool first = p->row_count == 0;
	arm_load_of_row(p->setup.cell, &row->wrench, &p->load);
	for (size_t k = 0; k < p->combination_count; k++) {
		struct load_case *c = &p->combination[k].load_case;
		row_combination_set(&p->combination[k], p->setup.cell, &p->load);
		c->row = row->row;
		c->time = row->t;
		weigh(p, c, first);
	}
	/* the horizontal load has one factor in both runs of a method */
	for (int m = 0; m < METHODS; m++)
		if (p->uses[m] &&
		    !shear_group_at(p->setup.base, &p->combination[p->leader[m]].load_case, 0,
		                    p->shear[m]))
			p->setup.facts.torsion_on_one = true;
	for (size_t i = 0; i < p->run.anchor_count; i++)
		p->shear_most[i] = fmax(p->shear_most[i], p->shear[METHOD_RATING][i]);
	for (size_t k = 0; k < p->lane_count; k++)
		visit_lane(p, &p->lane[k]);
	p->row_count = row->row;
}

static void visit_piece(void *job, size_t index)
{
	struct piece *p = &((struct piece *)job)[index];
	struct history_row row[BATCH];
	struct base_wrench last = {{0}, {0}};
	for (size_t count; (count = history_read(&p->rows, row, BATCH)) > 0;)
		for (size_t i = 0; i < count; i++) {
			/* the same wrench again is the same state again */
			if (p->row_count > 0 &&
			    memcmp(&last, &row[i].wrench, sizeof last) == 0)
				p->row_count = row[i].row;
			else
				visit_row(p, &row[i]);
			last = row[i].wrench;
		}
}

/* --- opening
 * ----------------------------------------------------------------------------------------- */

/* One history of one setup. */
struct job {
	struct run *run;
	size_t setup;
	size_t number;               /* of the history, over all setups */
	uint16_t group, source;      /* group of its service loads */
	const struct arm_source *history;
	struct piece *piece;
	size_t piece_count;
};

/* Whether the arm's weight may pull an anchor harder: not where it stands in the middle third of
 * what bears on the floor, in x and in y (own choice, no source: there it presses on all of it). */
static bool arm_weight_may_hurt(const struct setup_run *setup)
{
	const double *mount = setup->cell->arm.mount.at;
	for (int k = 0; k < 2; k++) {
		double low = HUGE_VAL, high = -HUGE_VAL;
		for (size_t i = 0; i < setup->base->hull_count; i++) {
			double at = k ? setup->base->hull[i].y : setup->base->hull[i].x;
			low = fmin(low, at);
			high = fmax(high, at);
		}
		if (fabs(mount[k] - (low + high) / 2) > (high - low) / 6)
			return true;
	}
	return false;
}

/* The runs of one method: service loads with the stability run, a code's loads without. */
static bool open_method(const struct job *job, struct piece *p, enum method method)
{
	static const struct { enum weight_run run; enum vertical_run vertical; } order[] = {
		{RUN_LOW, VERTICAL_LEAST}, {RUN_LOW, VERTICAL_MOST}, {RUN_FULL, VERTICAL_LEAST},
		{RUN_FULL, VERTICAL_MOST}, {RUN_STABILITY, VERTICAL_LEAST}, {RUN_STABILITY, VERTICAL_MOST}};
	bool hurts = arm_weight_may_hurt(&p->setup);
	struct load_case head = {.reading = (uint16_t)job->run->loads.readings,
	                         .source = job->source,
	                         .method = method,
	                         .group = p->method_count,
	                         .name = job->history->name};
	p->uses[method] = true;
	p->leader[method] = p->combination_count;
	for (size_t k = 0; k < sizeof order / sizeof *order; k++) {
		if (order[k].vertical == VERTICAL_MOST && !hurts)
			continue;
		/* at full service weights the arm's own is full either way; a code's factor on it
		 * is larger where it hurts (loads/factors.h) */
		if (order[k].run == RUN_STABILITY && method != METHOD_RATING)
			continue;
		if (order[k].run == RUN_FULL && order[k].vertical == VERTICAL_MOST &&
		    method == METHOD_RATING)
			continue;
		head.vertical = order[k].vertical;
		size_t count = row_combinations(job->run->arena, p->setup.cell, order[k].run, &head,
		                                &p->combination[p->combination_count]);
		p->combination_count += count;
		if (count == 0)
			return false;
	}
	p->method_count++;
	return true;
}

static bool open_combinations(const struct job *job, struct piece *p)
{
	for (int m = 0; m < METHODS; m++)
		if ((m == METHOD_RATING || method_chosen(p->setup.cell, (enum method)m)) &&
		    !open_method(job, p, (enum method)m))
			return false;
	return true;
}

/* The softest bed first: it mostly governs. */
static bool open_lanes(const struct job *job, struct piece *p)
{
	size_t ratios = p->setup.bed_ratio_count, corner = 0;
	p->lane = arena_take(job->run->arena, MAX_LANES, sizeof *p->lane);
	if (!p->lane)
		return false;
	for (size_t k = 0; k < p->combination_count; k++) {
		const struct load_case *c = &p->combination[k].load_case;
		bool counts = c->run == RUN_FULL && c->method == METHOD_RATING;
		for (size_t r = c->stability_only ? 0 : ratios; r-- > 0;) {
			struct lane *lane = &p->lane[p->lane_count++];
			lane->visit = (struct visit){.run = &p->run, .setup = &p->setup,
			                             .ratio_index = r, .load_case = c,
			                             .warm = &lane->warm};
			lane->visit.state.load_case = c;
			lane->visit.state.bed_ratio = p->setup.bed_ratio[r];
			lane->counted = counts ? corner * ratios + r + 1 : 0;
			for (size_t i = 0; i < p->run.anchor_count; i++)
				lane->most[i] = -1;
		}
		corner += counts;
	}
	p->lanes_counted = corner * ratios;
	return true;
}

/* Worsts of the piece, each with room for the row it comes from: no memory is asked for on the way.
 */
static bool open_worsts(struct piece *p)
{
	struct run *run = &p->run;
	size_t rows = run->watch_count * run->anchor_count,
	       tensions = p->method_count * run->anchor_count * MAX_READINGS;
	run->worsts = arena_take(run->arena, rows * MAX_READINGS, sizeof *run->worsts);
	run->group_tension = arena_take(run->arena, tensions, sizeof *run->group_tension);
	run->spread = arena_take(run->arena, run->anchor_count, sizeof *run->spread);
	if (!run->worsts || !run->group_tension || !run->spread)
		return false;
	for (size_t i = 0; i < tensions; i++)
		run->group_tension[i] = -1;
	for (size_t k = 0; k < rows * MAX_READINGS; k++) {
		if (!(run->loads.readings >> k % MAX_READINGS & 1))
			continue;
		run->worsts[k].own = arena_take(run->arena, 1, sizeof *run->worsts[k].own);
		if (!run->worsts[k].own)
			return false;
	}
	return true;
}

static bool copy_codes(const struct job *job, struct piece *p)
{
	bool any = false;
	for (int k = 0; k < CODES; k++) {
		const struct code_strength *from = p->setup.setting.code[k];
		if (!from)
			continue;
		any = true;
		p->code[k] = *from;
		p->setup.setting.code[k] = arena_take(job->run->arena, 1, sizeof *from);
		if (!p->setup.setting.code[k])
			return false;
	}
	if (!any)
		return true;
	p->slab = arena_take(job->run->arena, SLAB_BYTES, 1);
	return p->slab && open_codes(p);
}

static bool open_piece(const struct job *job, struct piece *p)
{
	struct setup_run *whole = &job->run->setups[job->setup];
	p->run = *job->run;
	p->setup = *whole;
	p->setup.facts = (struct run_facts){.least_down = HUGE_VAL};
	memset(p->setup.tipping, 0, sizeof p->setup.tipping);
	p->run.setups = &p->setup;
	p->run.setup_count = 1;
	p->run.states = 0;
	return open_combinations(job, p) && open_lanes(job, p) && open_worsts(p) &&
	       copy_codes(job, p) &&
	       cycle_count_open(&p->cycles, job->run->arena, whole->cell, p->lanes_counted,
	                        OPEN_POINTS_OF_PIECE);
}

/* Cuts the text behind the header at ends of lines; the last piece takes the rest. */
static void cut(struct job *job, const struct history *whole)
{
	size_t length = (size_t)(whole->end - whole->at);
	const char *from = whole->at;
	for (size_t k = 0; k < job->piece_count; k++) {
		const char *to = k + 1 == job->piece_count
		                         ? whole->end
		                         : whole->at + length / job->piece_count * (k + 1);
		to = to < from ? from : to;
		while (to < whole->end && to > whole->at && to[-1] != '\n')
			to++;
		job->piece[k].rows = *whole;
		job->piece[k].rows.at = from;
		job->piece[k].rows.end = to;
		from = to;
	}
}

static size_t piece_count(const struct job *job, size_t length)
{
	const struct setup_run *setup = &job->run->setups[job->setup];
	size_t bytes = cycle_count_bytes(MAX_CORNERS * setup->bed_ratio_count,
	                                 job->run->anchor_count, OPEN_POINTS_OF_PIECE);
	size_t count = length / PIECE_BYTES + 1, most = CYCLE_BYTES / bytes + 1;
	count = count < most ? count : most;
	return count < MOST_PIECES ? count : MOST_PIECES;
}

static enum status open_job(struct job *job)
{
	const struct history_file *file = job->history->file;
	struct diagnostics *told = arena_take(job->run->arena, 1, sizeof *told);
	struct history whole;
	job->piece_count = 0;
	/* every fault of the file was told when it was scanned */
	if (!told || !history_open(&whole, file->text, file->length, file->file, told))
		return told ? BAD_INPUT : NO_MEMORY;
	whole.to = NULL;
	job->piece_count = piece_count(job, file->length);
	job->piece = arena_take(job->run->arena, job->piece_count, sizeof *job->piece);
	for (size_t k = 0; job->piece && k < job->piece_count; k++)
		if (!open_piece(job, &job->piece[k]))
			return NO_MEMORY;
	if (!job->piece)
		return NO_MEMORY;
	cut(job, &whole);
	return DONE;
}

/* --- merging, in the order of the rows
 * ----------------------------------------------------------------------- */

/* A row's case as the whole run knows it: each method has a group of its own there, too. */
static void place(const struct job *job, uint32_t rows_before, struct load_case *c)
{
	c->setup = (uint16_t)job->setup;
	c->group = (uint16_t)loads_history_group(&job->run->loads, job->run->cell, job->number,
	                                         c->method);
	c->row += rows_before;
}

static void merge_worsts(const struct job *job, struct piece *p, uint32_t rows_before)
{
	struct run *run = job->run;
	for (size_t w = 0; w < run->watch_count; w++)
		for (size_t i = 0; i < run->anchor_count; i++)
			for (unsigned r = 0; r < MAX_READINGS; r++) {
				const struct worst *from = run_worst(&p->run, w, 0, i, r);
				struct worst *to = run_worst(run, w, job->setup, i, r);
				double certain = fmax(to->certain, from->certain);
				to->certain = certain;
				if (!from->known || (to->known && !(from->value > to->value)))
					continue;
				*to = *from;
				to->certain = certain;
				place(job, rows_before, &to->own->load_case);
			}
}

static void merge_tipping(const struct job *job, struct piece *p, uint32_t rows_before)
{
	place(job, rows_before, &p->tipped.load_case);
	for (unsigned r = 0; r < MAX_READINGS; r++) {
		const struct tipping *from = &p->setup.tipping[r];
		struct tipping *to = &job->run->setups[job->setup].tipping[r];
		bool unsolved = to->unsolved || from->unsolved;
		double certain = fmax(to->certain, from->certain);
		if (from->load_case && (!to->load_case || from->ratio > to->ratio))
			*to = *from;
		to->unsolved = unsolved;
		to->certain = certain;
	}
}

static void merge_facts(const struct job *job, const struct piece *p)
{
	struct run *run = job->run;
	const struct run_facts *from = &p->setup.facts;
	struct run_facts *to = &run->setups[job->setup].facts;
	struct shear_bound *bound = &run->bounds[job->group];
	to->any_state |= from->any_state;
	to->torsion_on_one |= from->torsion_on_one;
	to->least_down = fmin(to->least_down, from->least_down);
	to->pressure_max = fmax(to->pressure_max, from->pressure_max);
	bound->carried = !to->torsion_on_one;
	bound->ready = true;
	for (size_t i = 0; i < run->anchor_count; i++) {
		double *group =
			&run->group_tension[(job->group * run->anchor_count + i) * MAX_READINGS];
		bound->size[i] = fmax(bound->size[i], p->shear_most[i]);
		for (unsigned r = 0; r < MAX_READINGS; r++)
			group[r] = fmax(group[r], p->run.group_tension[i * MAX_READINGS + r]);
		for (size_t b = 0; b < MAX_BED_RATIOS; b++)
			run->spread[i][b] = fmax(run->spread[i][b], p->run.spread[i][b]);
	}
	run->states += p->run.states;
}

/* The name says which row it is: it is what every page prints of a case. */
static void name_row(const struct job *job, struct load_case *c)
{
	char time[32];
	if (c->row == 0 || c->name != job->history->name)
		return;
	number_write(c->time, 6, time, sizeof time);
	c->name = arena_format(job->run->arena, "%s, row %u at %s s", c->name, (unsigned)c->row,
	                       time);
}

static void name_rows(const struct job *job)
{
	struct run *run = job->run;
	for (size_t w = 0; w < run->watch_count; w++)
		for (size_t i = 0; i < run->anchor_count; i++)
			for (unsigned r = 0; r < MAX_READINGS; r++) {
				struct worst *worst = run_worst(run, w, job->setup, i, r);
				if (worst->own)
					name_row(job, &worst->own->load_case);
			}
	for (size_t k = 0; k < job->piece_count; k++)
		name_row(job, &job->piece[k].tipped.load_case);
}

static enum status merge_cycles(struct job *job)
{
	const struct piece *first = &job->piece[0];
	struct run *run = job->run;
	struct setup_run *setup = &run->setups[job->setup];
	size_t lanes = first->lanes_counted;
	struct cycle_count count;
	struct cycle_source *out = cycle_source_add(run, job->setup, lanes);
	if (!out || !cycle_count_open(&count, run->arena, setup->cell, lanes, OPEN_POINTS))
		return NO_MEMORY;
	out->name = job->history->name;
	out->path = "arm.history[].cycles_a_year";
	out->a_year = &job->history->history->cycles_a_year;
	for (size_t k = 0; k < job->piece_count; k++)
		cycle_count_join(&count, &job->piece[k].cycles);
	cycle_count_close(&count, setup, first->combination[0].load_case.corner, out);
	return DONE;
}

static enum status run_history(struct job *job)
{
	uint32_t rows = 0;
	enum status status = open_job(job);
	if (status != DONE)
		return status;
	pieces_run(job->run->options->pieces, job->history->name, job->piece_count, visit_piece,
	           job->piece);
	for (size_t k = 0; k < job->piece_count; k++) {
		struct piece *p = &job->piece[k];
		merge_worsts(job, p, rows);
		merge_tipping(job, p, rows);
		merge_facts(job, p);
		rows += p->row_count;
		if (p->out_of_memory)
			return NO_MEMORY;
	}
	name_rows(job);
	return merge_cycles(job);
}

enum status run_histories(struct run *run)
{
	struct job job = {.run = run};
	for (size_t s = 0; s < run->setup_count; s++) {
		const struct arm_loads *arm = run->arms[s];
		const struct cell *cell = run->setups[s].cell;
		enum status status = DONE;
		job.setup = s;
		for (size_t i = 0; arm && i < arm->count && status == DONE; i++) {
			if (arm->list[i].way != WAY_HISTORY)
				continue;
			job.history = &arm->list[i];
			job.source = (uint16_t)(FIRST_EXTRA + cell->loads.count + i);
			job.group = (uint16_t)loads_history_group(&run->loads, run->cell,
			                                          job.number, METHOD_RATING);
			status = run_history(&job);
			job.number++;
		}
		if (status == DONE)
			status = run_working_cycle(run, s);
		if (status != DONE)
			return status;
	}
	return run->arena->failed ? NO_MEMORY : DONE;
}
