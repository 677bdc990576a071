#include "check_cycles.h"

#include "check_history.h"

#include <math.h>
#include <string.h>

enum { BINS = 512 };
#define FIRST_WIDTH 0.0009765625     /* of a bin, 2^-10: it doubles as often as needed [N] */
#define NOISE_SHARE 0.01             /* of the largest range; common practice, no source */

static const char no_equilibrium[] = "an instant has no equilibrium: see base.stability";
static const char too_many_open[] =
	"too many turning points are open at once: smooth the history, or cut it into rounds";
static const char not_known[] = "a value of the chain or of its poses is not known";

/* --- counting
 * ---------------------------------------------------------------------------------------- */

size_t cycle_count_bytes(size_t lanes, size_t anchors, size_t open_points)
{
	size_t each = sizeof(struct rainflow) + sizeof(struct cycle_tally) + 2 * sizeof(double) +
	              BINS * sizeof(struct cycle_bin) + open_points * sizeof(double);
	return lanes * anchors * each;
}

bool cycle_count_open(struct cycle_count *count, struct arena *arena, const struct cell *cell,
                      size_t lanes, size_t open_points)
{
	size_t rows = lanes * cell->anchors.count;
	struct cycle_bin *bin = arena_take(arena, rows * BINS, sizeof *bin);
	double *points = arena_take(arena, rows * open_points, sizeof *points);
	const struct number *limit = &cell->arm.range_limit;
	*count = (struct cycle_count){.lanes = lanes, .anchors = cell->anchors.count};
	count->flow = arena_take(arena, rows, sizeof *count->flow);
	count->tally = arena_take(arena, rows, sizeof *count->tally);
	count->extreme = arena_take(arena, rows, sizeof *count->extreme);
	if (!bin || !points || !count->flow || !count->tally || !count->extreme)
		return false;
	for (size_t k = 0; k < rows; k++) {
		cycle_tally_open(&count->tally[k], is_known(*limit) ? limit->value : HUGE_VAL,
		                 FIRST_WIDTH, bin + k * BINS, BINS);
		rainflow_open(&count->flow[k], points + k * open_points, open_points, true,
		              cycle_tally_add, &count->tally[k]);
		count->extreme[k][0] = HUGE_VAL;
		count->extreme[k][1] = -HUGE_VAL;
	}
	return true;
}

static void widen(double extreme[2], double low, double high)
{
	extreme[0] = low < extreme[0] ? low : extreme[0];
	extreme[1] = high > extreme[1] ? high : extreme[1];
}

void cycle_count_add(struct cycle_count *count, size_t lane, const double tension[])
{
	if (!tension && !count->broken)
		count->broken = no_equilibrium;
	if (count->broken)
		return;
	size_t first = lane * count->anchors;
	for (size_t i = 0; i < count->anchors; i++) {
		widen(count->extreme[first + i], tension[i], tension[i]);
		rainflow_add(&count->flow[first + i], tension[i]);
	}
}

void cycle_count_join(struct cycle_count *count, const struct cycle_count *piece)
{
	if (!count->broken)
		count->broken = piece->broken;
	for (size_t k = 0; k < count->lanes * count->anchors && !count->broken; k++) {
		const struct rainflow *open = &piece->flow[k];
		count->broken = open->overflow ? too_many_open : NULL;
		for (size_t i = 0; i < open->count; i++)
			rainflow_add(&count->flow[k], open->point[i]);
		if (open->any)
			rainflow_add(&count->flow[k], open->last);
		cycle_tally_merge(&count->tally[k], &piece->tally[k]);
		widen(count->extreme[k], piece->extreme[k][0], piece->extreme[k][1]);
	}
}

/* --- summary
 * ---------------------------------------------------------------------------------------- */

/* Full cycles in the bins that lie wholly below the noise limit, for a repeating history has no
 * half ones. */
static uint64_t noise_of(const struct cycle_tally *tally)
{
	size_t below = (size_t)(NOISE_SHARE * tally->largest.range / tally->width);
	uint64_t halves = 0;
	for (size_t i = 0; i < below && i < tally->bins; i++)
		halves += tally->bin[i].halves;
	return halves / 2;
}

/* The worst of the lanes, each number by itself. */
static void summarize(const struct cycle_tally *tally, const struct setup_run *setup, size_t lane,
                      int corner, struct anchor_cycles *out)
{
	size_t ratios = setup->bed_ratio_count;
	uint64_t noise = noise_of(tally), count = tally->halves / 2 - noise;
	if (tally->largest.range > out->range) {
		out->range = tally->largest.range;
		out->mean = tally->largest.mean;
		out->bed_ratio = setup->bed_ratio[lane % ratios];
		out->corner = corner < 0 ? corner : corner + (int)(lane / ratios);
	}
	out->noise = noise > out->noise ? noise : out->noise;
	out->count = count > out->count ? count : out->count;
	out->above = tally->halves_above / 2 > out->above ? tally->halves_above / 2 : out->above;
}

/* The sources follow one another at the same bed and boxes, so that their extremes join by lanes.
 */
static void join_extremes(const struct cycle_count *count, struct setup_run *setup)
{
	struct run_facts *facts = &setup->facts;
	for (size_t k = 0; k < count->lanes * count->anchors; k++) {
		double *joined = setup->cycle_extreme[k];
		size_t anchor = k % count->anchors;
		widen(joined, count->extreme[k][0], count->extreme[k][1]);
		if (joined[1] - joined[0] >
		    facts->cycle_highest[anchor] - facts->cycle_lowest[anchor]) {
			facts->cycle_highest[anchor] = joined[1];
			facts->cycle_lowest[anchor] = joined[0];
		}
	}
}

void cycle_count_close(struct cycle_count *count, struct setup_run *setup, int corner,
                       struct cycle_source *out)
{
	size_t rows = count->lanes * count->anchors;
	for (size_t k = 0; k < rows && !count->broken; k++)
		count->broken = rainflow_close(&count->flow[k]) ? NULL : too_many_open;
	out->counted = !count->broken;
	out->why_not = count->broken;
	if (count->broken)
		return;
	for (size_t k = 0; k < rows; k++)
		summarize(&count->tally[k], setup, k / count->anchors, corner,
		          &out->anchor[k % count->anchors]);
	join_extremes(count, setup);
}

struct cycle_source *cycle_source_add(struct run *run, size_t setup, size_t lanes)
{
	struct setup_run *s = &run->setups[setup];
	struct cycle_sources *cycles = &s->facts.cycles;
	if (!cycles->list) {
		size_t rows = lanes * run->anchor_count;
		cycles->list = arena_take(run->arena, MAX_HISTORIES + 1, sizeof *cycles->list);
		s->cycle_extreme = arena_take(run->arena, rows, sizeof *s->cycle_extreme);
		if (!cycles->list || !s->cycle_extreme)
			return NULL;
		for (size_t k = 0; k < rows; k++) {
			s->cycle_extreme[k][0] = HUGE_VAL;
			s->cycle_extreme[k][1] = -HUGE_VAL;
		}
	}
	return &cycles->list[cycles->count++];
}

/* --- working cycle
 * ---------------------------------------------------------------------------------- */

/* Tensions of one instant in every lane, each from the instant before. */
static void visit_instant(struct setup_run *setup, struct row_combination combination[],
                          size_t corners, const struct arm_load *load, bool first,
                          double (*settle)[3], struct cycle_count *count)
{
	double tension[MAX_ANCHORS];
	size_t lane = 0;
	for (size_t k = 0; k < corners; k++) {
		const struct load_case *c = &combination[k].load_case;
		row_combination_set(&combination[k], setup->cell, load);
		double at[3] = {c->down, c->fixed[0], c->fixed[1]};
		for (size_t r = 0; r < setup->bed_ratio_count; r++, lane++) {
			double ratio = setup->bed_ratio[r];
			if (first)
				base_start(setup->base, ratio, at, settle[lane]);
			bool carried = base_balance(setup->base, at) == BALANCED &&
			               base_solve(setup->base, ratio, at, settle[lane], NULL) ==
			                       DONE;
			base_tensions(setup->base, ratio, settle[lane], tension);
			cycle_count_add(count, lane, carried ? tension : NULL);
		}
	}
}

enum status run_working_cycle(struct run *run, size_t s)
{
	struct setup_run *setup = &run->setups[s];
	const struct arm_motion *motion = &setup->cell->arm.motion;
	struct row_combination combination[MAX_CORNERS];
	struct load_case head = {.reading = (uint16_t)run->loads.readings, .name = "working cycle"};
	double settle[MAX_CORNERS * MAX_BED_RATIOS][3];
	struct cycle_count count;
	size_t instants = arm_cycle_instants(setup->cell);
	if (motion->cycle.count == 0)
		return DONE;
	size_t corners = row_combinations(run->arena, setup->cell, RUN_FULL, &head, combination);
	size_t lanes = corners * setup->bed_ratio_count;
	struct cycle_source *out = corners ? cycle_source_add(run, s, lanes) : NULL;
	if (!out || !cycle_count_open(&count, run->arena, setup->cell, lanes, OPEN_POINTS))
		return NO_MEMORY;
	out->name = head.name;
	out->path = "arm.motion.cycles_a_year";
	out->a_year = &motion->cycles_a_year;
	count.broken = instants == 0 ? not_known : NULL;
	for (size_t i = 0; i < instants; i++) {
		struct arm_load load;
		double time;
		arm_cycle_wrench(setup->cell, i, &time, &load);
		visit_instant(setup, combination, corners, &load, i == 0, settle, &count);
	}
	cycle_count_close(&count, setup, combination[0].load_case.corner, out);
	return DONE;
}
