#include "require.h"

#include <math.h>
#include <string.h>

#define UNLIMITED 1e12         /* a rating that never governs [N] */
#define MOST_ROUNDS 40         /* of the search on a paired file; each adds a governing state */
#define SHARP 1e-6             /* to which the least shear of a pair is found, relative */
#define DIGITS 5

/* A copy of the cell and its setups in which the product has these ultimate loads. */
static struct cell *with_rating(struct arena *arena, const struct cell *cell, double tension,
                                double shear)
{
	struct cell *copy = arena_take(arena, 1, sizeof *copy);
	if (!copy)
		return NULL;
	*copy = *cell;
	struct rating *rating = &copy->anchors.product.rating;
	rating->basis.given.origin = rating->tension.given.origin = rating->shear.given.origin =
		GIVEN;
	rating->basis.value = BASIS_ULTIMATE;
	rating->tension.value = tension;
	rating->shear.value = shear;
	if (!is_known(rating->evidence))
		rating->evidence = (struct word){{{0, 0, 0, 0}, GIVEN}, BY_DATA_SHEET};
	struct setup *setups = cell->setups.count
	                               ? arena_take(arena, cell->setups.count, sizeof *setups)
	                               : NULL;
	for (size_t s = 0; setups && s < cell->setups.count; s++) {
		setups[s] = ((const struct setup *)cell->setups.rows)[s];
		setups[s].cell = with_rating(arena, setups[s].cell, tension, shear);
	}
	copy->setups.rows = setups;
	return copy;
}

static const struct check_result *find(const struct result *result, const char *id)
{
	for (size_t i = 0; i < result->check_count; i++)
		if (strcmp(result->checks[i].check->id, id) == 0)
			return &result->checks[i];
	return NULL;
}

static double round_up(double value)
{
	if (!(value > 0))
		return 0;
	double step = pow(10, floor(log10(value)) - (DIGITS - 1));
	/* the small push keeps a value that is round already from failing by its last bit */
	return ceil(value * (1 + 1e-9) / step) * step;
}

/* Ratios of one trial; 0 where a check gives no number. */
struct trial { double tension, shear, both; const struct result *result; enum status status; };

static struct trial try_rating(struct arena *arena, const struct cell *cell,
                               const struct check_options *options, double tension, double shear)
{
	struct trial out = {0};
	struct check_options quiet = *options;
	quiet.trace = false;
	quiet.only = NULL;
	struct result *result = NULL;
	const struct cell *copy = with_rating(arena, cell, tension, shear);
	out.status = copy ? check_run(arena, copy, &quiet, &result) : NO_MEMORY;
	out.result = result;
	if (out.status != DONE)
		return out;
	const struct check_result *t = find(result, "rating.tension"),
				  *v = find(result, "rating.shear"),
				  *both = find(result, "rating.interaction"),
				  *bound = find(result, "rating.bound");
	for (size_t s = 0; s < setup_count(cell); s++) {
		if (t && t->has_setup_ratio[s])
			out.tension = fmax(out.tension, t->setup_ratio[s]);
		if (v && v->has_setup_ratio[s])
			out.shear = fmax(out.shear, v->setup_ratio[s]);
		if (both && both->has_setup_ratio[s])
			out.both = fmax(out.both, both->setup_ratio[s]);
		if (bound && bound->has_setup_ratio[s])
			out.both = fmax(out.both, bound->setup_ratio[s]);
	}
	return out;
}

/* The interaction's ratio at a rating, in memory of its own that is given back at once. */
static enum status ratio_at(struct arena *arena, const struct cell *cell,
                            const struct check_options *options, double tension, double shear,
                            double *ratio)
{
	struct arena scratch;
	arena_open(&scratch, arena->allocate, arena->user);
	struct trial trial = try_rating(&scratch, cell, options, tension, shear);
	*ratio = trial.both;
	arena_close(&scratch);
	return trial.status;
}

/* Least ultimate shear beside an ultimate tension. In x = 1/shear the interaction's ratio rises, so
 * the root of ratio = 1 is found by false position (Illinois form) between a rating that fails and
 * one that holds. */
static enum status least_shear(struct arena *arena, const struct cell *cell,
                               const struct check_options *options, double tension, double from,
                               double *out)
{
	double bad = 1 / from, good = bad, above, below;
	enum status status = ratio_at(arena, cell, options, tension, 1 / bad, &above);
	below = above;
	while (status == DONE && below > 1 && 1 / good < UNLIMITED) {
		good /= 4;
		status = ratio_at(arena, cell, options, tension, 1 / good, &below);
	}
	double weight_bad = above - 1, weight_good = below - 1;
	for (int round = 0;
	     status == DONE && round < MOST_ROUNDS && bad - good > SHARP * good && above > 1;
	     round++) {
		double x = (weight_bad * good - weight_good * bad) / (weight_bad - weight_good),
		       ratio;
		/* a hair to the side that holds, so that both ends close in */
		x = fmax(good, x - 0.1 * SHARP * x);
		status = ratio_at(arena, cell, options, tension, 1 / x, &ratio);
		if (ratio > 1) {
			bad = x;
			weight_bad = ratio - 1;
			weight_good *= 0.5;
		} else {
			bool close = 1 - ratio < 1e-6;
			good = x;
			weight_good = ratio - 1;
			weight_bad *= 0.5;
			if (close)
				break;
		}
	}
	*out = 1 / good;
	return status;
}

/* The same in closed form over what every anchor must carry, where shear is free of the heading. */
struct capacity { double tension, shear; };     /* allowed load for 1 N of ultimate load [-] */

static double least_shear_reading(const struct result *result, const struct capacity *capacity,
                                  size_t anchors, double tension, bool straight, unsigned reading)
{
	double most = 0;
	for (size_t k = 0; k < result->demand_count; k++) {
		if (result->demands[k].reading != reading)
			continue;
		const struct demand *d = &result->demands[k];
		const struct capacity *c = &capacity[d->setup * anchors + d->anchor];
		double used = d->tension / (c->tension * tension);
		double left = straight ? 1 - used : pow(1 - pow(used, 5.0 / 3.0), 0.6);
		if (d->shear > 0)
			most = fmax(most, left > 0 ? d->shear / (c->shear * left) : UNLIMITED);
	}
	return most;
}

/* Of several readings of the weight flags the most favourable one, as everywhere. */
static double least_shear_closed(const struct result *result, const struct capacity *capacity,
                                 size_t anchors, double tension, bool straight)
{
	double least = HUGE_VAL;
	for (unsigned r = 0; r < MAX_READINGS; r++)
		if (result->loads.readings & 1u << r)
			least = fmin(least, least_shear_reading(result, capacity, anchors, tension,
			                                        straight, r));
	return least;
}

static struct capacity *capacities(struct arena *arena, const struct cell *cell)
{
	size_t n = cell->anchors.count;
	struct capacity *out = arena_take(arena, setup_count(cell) * n + 1, sizeof *out);
	const struct cell *unit = with_rating(arena, cell, 1, 1);
	if (!out || !unit)
		return NULL;
	for (size_t s = 0; s < setup_count(cell); s++) {
		struct setting *setting = arena_take(arena, 1, sizeof *setting);
		if (!setting || setting_build(setup_cell(unit, s), arena, setting) != DONE)
			return NULL;
		for (size_t i = 0; i < n; i++)
			out[s * n + i] = (struct capacity){setting->allowed_tension[i],
			                                   setting->allowed_shear[i]};
	}
	return out;
}

static void note(struct required *required, const char *text)
{
	if (required->note_count < sizeof required->notes / sizeof required->notes[0])
		required->notes[required->note_count++] = text;
}

static void label(const struct cell *cell, const struct trial *trial, struct required *required)
{
	const struct rating *rating = &cell->anchors.product.rating;
	for (size_t i = 0; i < trial->result->check_count; i++) {
		const struct check_result *check = &trial->result->checks[i];
		/* what asks for no rating, such as the clamp under load, does not count */
		bool loads = check->check->needs_loads && check->check->stage == OF_STATE_ANCHOR;
		if ((loads || strcmp(check->check->id, "loads.given") == 0) &&
		    (check->finding.missing_count > 0 || check->finding.doubted))
			required->at_least = true;
	}
	if (required->at_least)
		note(required,
		     "at least: what is not known was taken at its most favourable value");
	if (!is_known(rating->tension) && !is_known(rating->shear))
		note(required, "no product rating in the file: factors that need one (concrete, "
		               "cracks, spacing, edges) are 1 unless given");
	note(required, "ultimate loads, mean at failure, in this concrete, at this embedment, "
	               "spacing and edge distance");
}

static enum status fill_pairs(struct arena *arena, const struct cell *cell,
                              const struct check_options *options, const struct result *result,
                              struct required *required)
{
	static const double factor[MAX_PAIRS] = {1.1, 1.25, 1.5, 2, 3};
	bool straight = cell->anchors.product.rating.interaction.value == STRAIGHT;
	const struct capacity *capacity = capacities(arena, cell);
	if (!capacity)
		return NO_MEMORY;
	for (size_t k = 0; k < MAX_PAIRS && required->tension > 0 && required->shear > 0; k++) {
		double tension = round_up(factor[k] * required->tension), shear = 0;
		enum status status = DONE;
		if (result->paired)
			status = least_shear(arena, cell, options, tension, required->shear,
			                     &shear);
		else
			shear = least_shear_closed(result, capacity, cell->anchors.count, tension,
			                           straight);
		if (status != DONE)
			return status;
		required->pair[required->pair_count++] = (struct required_pair){
			tension, round_up(fmax(shear, required->shear))};
	}
	return DONE;
}

/* Without a load model: the least ratings that the papers' needs ask of the weakest anchor. */
static enum status fill_from_needs(struct arena *arena, const struct cell *cell,
                                   struct result *result)
{
	const struct needs *needs = &cell->anchors.needs;
	struct required *required = &result->required;
	if (result->loads.given || cell->anchors.count == 0 ||
	    (!is_known(needs->tension) && !is_known(needs->shear)))
		return DONE;
	struct trial trial = try_rating(arena, cell, &(struct check_options){0}, UNLIMITED,
	                                UNLIMITED);
	const struct capacity *capacity = capacities(arena, cell);
	if (trial.status != DONE || !capacity)
		return NO_MEMORY;
	const struct check_result *judged = find(trial.result, "needs");
	for (size_t k = 0; k < setup_count(cell) * cell->anchors.count; k++) {
		required->tension = fmax(required->tension,
		                         needs->tension.value / capacity[k].tension);
		required->shear = fmax(required->shear, needs->shear.value / capacity[k].shear);
	}
	required->computed = true;
	required->tension = round_up(required->tension);
	required->shear = round_up(required->shear);
	required->at_least = judged &&
	                     (judged->finding.missing_count > 0 || judged->finding.doubted);
	if (required->at_least)
		note(required,
		     "at least: what is not known was taken at its most favourable value");
	note(required, "from the needs of the machine's papers, tension and shear each by itself");
	note(required,
	     "ultimate loads, mean at failure, in this concrete, at this embedment, spacing "
	     "and edge distance");
	return DONE;
}

/* A guaranteed bound of the arm's motion must be carried too, each anchor by itself. */
static enum status raise_to_bound(struct arena *arena, const struct cell *cell,
                                  const struct result *result, struct required *required)
{
	const struct capacity *capacity = capacities(arena, cell);
	double tension = 0, shear = 0;
	if (!capacity)
		return NO_MEMORY;
	for (size_t k = 0; k < result->demand_count; k++) {
		const struct demand *d = &result->demands[k];
		const struct capacity *c = &capacity[d->setup * cell->anchors.count + d->anchor];
		if (!d->bound)
			continue;
		tension = fmax(tension, d->tension / c->tension);
		shear = fmax(shear, d->shear / c->shear);
	}
	required->tension = fmax(required->tension, round_up(tension));
	required->shear = fmax(required->shear, round_up(shear));
	if (tension > 0 || shear > 0)
		note(required,
		     "the guaranteed bound of the arm's motion over all poses is covered");
	return DONE;
}

enum status require_fill(struct arena *arena, const struct cell *cell,
                         const struct check_options *options, struct result *result)
{
	struct required *required = &result->required;
	if (!result->loads_computed)
		return fill_from_needs(arena, cell, result);
	/* the arm's own motion does not depend on the rating */
	struct check_options again = *options;
	again.arms = result->arm;
	/* both ratios fall as 1/rating, so one trial gives both least ratings */
	double probe = 1e6;
	struct trial trial = try_rating(arena, cell, &again, probe, probe);
	if (trial.status != DONE)
		return trial.status;
	required->computed = true;
	required->tension = round_up(trial.tension * probe);
	required->shear = round_up(trial.shear * probe);
	enum status status = raise_to_bound(arena, cell, trial.result, required);
	if (status != DONE)
		return status;
	label(cell, &trial, required);
	return fill_pairs(arena, cell, &again, trial.result, required);
}
