#include "check_code.h"

#include "check_twist.h"

enum method check_loads(const struct check *check)
{
	if (!check || check->method == EVERY_METHOD)
		return METHOD_RATING;
	return (enum method)(METHOD_RATING + (check->method - ONLY_RATING));
}

bool check_is_due(const struct check *check, const struct cell *cell)
{
	return check->method == EVERY_METHOD || method_chosen(cell, check_loads(check));
}

bool check_of_states(const struct check *check)
{
	return check->stage == OF_STATE_ANCHOR || check->stage == OF_STATE;
}

bool check_looks_at(const struct check *check, const struct load_case *c)
{
	bool of_bound = check && check->of_bound, of_sustained = check && check->of_sustained;
	return c->method == check_loads(check) && c->bound == of_bound &&
	       c->sustained == of_sustained;
}

struct code_strength *code_of(const struct setup_run *setup, enum method method)
{
	return method == METHOD_RATING ? NULL
	                               : setup->setting.code[method - METHOD_ACI318];
}

/* Shear at the heading of the tilt, the twist anywhere in what it can be. */
static void paired_peaks(const struct setup_run *setup, struct code_strength *code,
                         const struct state *state, struct shear_peaks *peaks)
{
	const struct load_case *c = state->load_case;
	const double heading[MAX_TURNING] = {state->heading, state->heading};
	size_t count = setup->base->anchor_count, inside = 0;
	struct vec2 end[2][MAX_ANCHORS], between[MAX_ANCHORS];
	double share[MAX_TWISTS];
	peaks->edge.known = peaks->pryout.known = false;
	for (int high = 0; high <= 1; high++)
		shear_group_vectors(setup->base, c, heading, high, end[high]);
	bool open = shear_group_is_open(c);
	if (open)
		inside = twist_shares(code, end[0], end[1], share);
	for (size_t k = open ? 0 : 1; k < 2 + inside; k++) {
		struct mode_ratio edge, pryout;
		if (k >= 2)
			twist_between(end[0], end[1], count, share[k - 2], between);
		const struct vec2 *shear = k < 2 ? end[k] : between;
		code_shear_ratios(code, shear, c->earthquake != NULL, &edge, &pryout);
		shear_peak_raise(&peaks->edge, &edge, c, state->heading, shear, count);
		shear_peak_raise(&peaks->pryout, &pryout, c, state->heading, shear, count);
	}
}

void code_load(const struct run *run, const struct setup_run *setup, const struct state *state,
               struct anchor_load *out, struct shear_peaks *peaks)
{
	const struct load_case *c = state->load_case;
	struct code_strength *code = code_of(setup, c->method);
	const struct shear_bound *bound = c->paired ? NULL : &run->bounds[c->group];
	struct shear_peaks own;
	*out = (struct anchor_load){.count = setup->base->anchor_count,
	                            .tension = state->tension,
	                            .shear = state->shear,
	                            .earthquake = c->earthquake != NULL,
	                            .sustained = c->sustained};
	if (c->sustained)
		return;
	if (c->paired) {
		peaks = peaks ? peaks : &own;
		paired_peaks(setup, code, state, peaks);
		out->edge = peaks->edge.worst;
		out->pryout = peaks->pryout.worst;
		return;
	}
	out->edge = bound->edge.worst;
	out->pryout = bound->pryout.worst;
	if (peaks)
		*peaks = (struct shear_peaks){bound->edge, bound->pryout};
}
