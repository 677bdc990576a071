#include "check_code.h"

#include <string.h>

enum method check_loads(const struct check *check)
{
	if (!check || check->method == EVERY_METHOD)
		return METHOD_RATING;
	return (enum method)(METHOD_RATING + (check->method - ONLY_RATING));
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

static void raise_peak(struct shear_peak *peak, const struct mode_ratio *ratio,
                       const struct state *state, const struct vec2 shear[], size_t count)
{
	if (peak->known && !(ratio->ratio > peak->worst.ratio))
		return;
	peak->known = true;
	peak->worst = *ratio;
	peak->from = state->load_case;
	peak->heading = state->heading;
	memcpy(peak->shear, shear, count * sizeof *shear);
}

/* Shear at the heading of the tilt, the twist at either end of what it can be. */
static void paired_peaks(const struct setup_run *setup, struct code_strength *code,
                         const struct state *state, struct shear_peaks *peaks)
{
	const struct load_case *c = state->load_case;
	const double heading[MAX_TURNING] = {state->heading, state->heading};
	peaks->edge.known = peaks->pryout.known = false;
	/* what stands as it is has one torsion */
	for (int high = c->turning_count > 0 ? 0 : 1; high <= 1; high++) {
		struct vec2 shear[MAX_ANCHORS];
		struct mode_ratio edge, pryout;
		shear_group_vectors(setup->base, c, heading, high, shear);
		code_shear_ratios(code, shear, c->earthquake != NULL, &edge, &pryout);
		raise_peak(&peaks->edge, &edge, state, shear, setup->base->anchor_count);
		raise_peak(&peaks->pryout, &pryout, state, shear, setup->base->anchor_count);
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
