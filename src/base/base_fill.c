#include "contact.h"
#include <math.h>
#include <string.h>

/* A tension below this share of the load cannot be told from none: it is what the equilibrium of an
 * accepted state may lack. */
#define TENSION_SHARE 1e-9

void base_tensions(const struct base *base, double bed_ratio, const double settle[3],
                   double tension[])
{
	for (size_t i = 0; i < base->anchor_count; i++) {
		double w = settle_at(settle, base->anchor[i]);
		tension[i] = w < 0 ? -w * bed_ratio : 0;
	}
}

/* Bed force and first moments about the base's centre [N, N mm], and the share of each piece. */
static void fill_bed(const struct base *base, struct state *state, double bed[3])
{
	double area = base->size * base->size;
	memset(state->piece_force, 0, base->piece_count * sizeof *state->piece_force);
	state->pressure_max = 0;
	memset(bed, 0, 3 * sizeof *bed);
	for (size_t i = 0; i < base->ring_count; i++) {
		double force[3] = {0, 0, 0};
		contact_force(&base->ring[i], state->settle, force, &state->pressure_max);
		state->piece_force[base->ring[i].piece] += force[0] * area;
		bed[0] += force[0] * area;
		bed[1] += force[1] * area * base->size;
		bed[2] += force[2] * area * base->size;
	}
	state->bed_force = bed[0];
	state->bed_at[0] = base->centre[0] + (bed[0] > 0 ? bed[1] / bed[0] : 0);
	state->bed_at[1] = base->centre[1] + (bed[0] > 0 ? bed[2] / bed[0] : 0);
}

/* Size of the load, moments about the base's centre over its size [N]. */
static double load_size(const struct base *base, const double load[3])
{
	double x = load[1] - base->centre[0] * load[0], y = load[2] - base->centre[1] * load[0];
	return fabs(load[0]) + (fabs(x) + fabs(y)) / base->size;
}

/* What bed and anchors lack to the load, relative to it. */
static double equilibrium(const struct base *base, const struct state *state, const double bed[3])
{
	double lack[3] = {bed[0] - state->load[0], 0, 0};
	lack[1] = bed[1] - (state->load[1] - base->centre[0] * state->load[0]);
	lack[2] = bed[2] - (state->load[2] - base->centre[1] * state->load[0]);
	for (size_t i = 0; i < base->anchor_count; i++) {
		lack[0] -= state->tension[i];
		lack[1] -= state->tension[i] * (base->anchor_mm[i].x - base->centre[0]);
		lack[2] -= state->tension[i] * (base->anchor_mm[i].y - base->centre[1]);
	}
	double most = fmax(fabs(lack[0]), fmax(fabs(lack[1]), fabs(lack[2])) / base->size);
	double size = load_size(base, state->load);
	/* forces without a load lack everything */
	return size > 0 ? most / size : most > 0 ? 1 : 0;
}

void base_fill(const struct base *base, struct state *state)
{
	double bed[3], least = TENSION_SHARE * load_size(base, state->load);
	base_tensions(base, state->bed_ratio, state->settle, state->tension);
	fill_bed(base, state, bed);
	state->residual = equilibrium(base, state, bed);
	state->in_tension = 0;
	for (size_t i = 0; i < base->anchor_count; i++)
		if (state->tension[i] > least)
			state->in_tension |= UINT64_C(1) << i;
}
