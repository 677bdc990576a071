#include "trace_state.h"

#include "shear_pull.h"

#include <math.h>
#include <string.h>

/* One anchor's tension from the plane; false where it is slack. */
static bool trace_tension(const struct base *base, const struct state *state, size_t i,
                          const double plane[3], struct trace *trace)
{
	struct vec2 at = base->anchor_mm[i];
	size_t id = i + 1;
	const char *symbol = trace_text(trace, "T_A%zu", id);
	if (!(state->in_tension >> i & 1)) {
		trace_step(trace, symbol, "", state->tension[i], DIM_FORCE,
		           "slack: the plane is not lifted there", "");
		return false;
	}
	trace_step(trace, trace_text(trace, "x_A%zu", id), "", at.x, DIM_LENGTH, "pattern", "");
	trace_step(trace, trace_text(trace, "y_A%zu", id), "", at.y, DIM_LENGTH, "pattern", "");
	trace_step(trace, trace_text(trace, "p_A%zu", id),
	           trace_text(trace, "p_0 + p_x * x_A%zu + p_y * y_A%zu", id, id),
	           plane[0] + plane[1] * at.x + plane[2] * at.y, DIM_STRESS, "",
	           "plane at the anchor, lifted");
	trace_step(trace, symbol, trace_text(trace, "rho * max(0 - p_A%zu, 0)", id),
	           state->tension[i], DIM_FORCE, "anchors only pull", "tension");
	return true;
}

void trace_equilibrium(const struct base *base, const struct state *state, struct trace *trace)
{
	const char *force = "N", *in_x = "S_x", *in_y = "S_y";
	double sum[3] = {state->load[0], state->load[1], state->load[2]};
	double plane[3] = {0, state->settle[1] / base->size, state->settle[2] / base->size};
	if (!trace)
		return;
	plane[0] = state->settle[0] - plane[1] * base->centre[0] - plane[2] * base->centre[1];
	trace_step(trace, "rho", "", state->bed_ratio, DIM_AREA,
	           "anchor stiffness over bed stiffness, one of those run", "");
	trace_step(trace, "p_0", "", plane[0], DIM_STRESS,
	           "solved: p = p_0 + p_x x + p_y y, pressing where positive; verified below",
	           "pressure below the rigid base, at the cell origin");
	trace_step(trace, "p_x", "", plane[1], DIM_FACTOR, "solved, MPa/mm", "its slope along x");
	trace_step(trace, "p_y", "", plane[2], DIM_FACTOR, "solved, MPa/mm", "its slope along y");
	for (size_t i = 0; i < base->anchor_count; i++) {
		size_t id = i + 1;
		if (!trace_tension(base, state, i, plane, trace))
			continue;
		sum[0] += state->tension[i];
		sum[1] += state->tension[i] * base->anchor_mm[i].x;
		sum[2] += state->tension[i] * base->anchor_mm[i].y;
		force = trace_text(trace, "%s + T_A%zu", force, id);
		in_x = trace_text(trace, "%s + T_A%zu * x_A%zu", in_x, id, id);
		in_y = trace_text(trace, "%s + T_A%zu * y_A%zu", in_y, id, id);
	}
	trace_step(trace, "C", force, sum[0], DIM_FORCE, "vertical equilibrium",
	           "compression that the bed must give");
	trace_step(trace, "C_bed", "", state->bed_force, DIM_FORCE,
	           "integral of p over the bearing faces where p is positive",
	           "what it gives: equal within 1e-9, as checked");
	if (!(sum[0] > 0) || !(state->bed_force > 0))
		return;
	trace_step(trace, "x_C", trace_text(trace, "(%s) / C", in_x), sum[1] / sum[0], DIM_LENGTH,
	           "moment equilibrium", "where it must act");
	trace_step(trace, "x_bed", "", state->bed_at[0], DIM_LENGTH,
	           "integral of p x over that of p", "where it acts: equal, as checked");
	trace_step(trace, "y_C", trace_text(trace, "(%s) / C", in_y), sum[2] / sum[0], DIM_LENGTH,
	           "moment equilibrium", "");
	trace_step(trace, "y_bed", "", state->bed_at[1], DIM_LENGTH,
	           "integral of p y over that of p", "");
}

/* --- shear
 * ------------------------------------------------------------------------------------------- */

/* One turning force caught in a heading: its place from the centroid and the sign of its twist. */
struct caught { double force, heading, at[2], twist; };

static struct vec2 share_of(const struct base *base, struct vec2 r, const struct caught *k)
{
	double c = cos(k->heading), s = sin(k->heading);
	struct pull pull = {k->force * c, k->force * s,
	                    k->force * (k->at[0] * s - k->at[1] * c) + k->twist};
	return shear_share_at(base, r, pull);
}

static double size_of(struct vec2 v) { return sqrt(v.x * v.x + v.y * v.y); }

/* The place and sign that make the shear largest beside what acts already; `side` 0: any, else only
 * the places and signs of the largest (+1) or least (-1) torsion. */
static struct caught catch_force(const struct base *base, const struct turning_force *f,
                                 double heading, struct vec2 r, struct vec2 beside, int side)
{
	struct caught best = {0};
	double most = -HUGE_VAL;
	size_t places = f->at_hull ? base->hull_count : 1;
	for (size_t i = 0; i < places; i++)
		for (int sign = f->one_sign ? 1 : -1; sign <= 1; sign += 2) {
			struct caught k = {
				f->force,
				heading,
				{(f->at_hull ? base->hull[i].x : f->at[0]) - base->shear_centre[0],
			         (f->at_hull ? base->hull[i].y : f->at[1]) - base->shear_centre[1]},
				sign * f->twist};
			struct vec2 v = share_of(base, r, &k);
			double torsion = k.force *
			                         (k.at[0] * sin(heading) - k.at[1] * cos(heading)) +
			                 k.twist;
			double value = side ? side * torsion
			                    : size_of((struct vec2){v.x + beside.x,
			                                            v.y + beside.y});
			if (value > most) {
				most = value;
				best = k;
			}
		}
	return best;
}

static struct vec2 trace_caught(const struct base *base, struct vec2 r, const struct caught *k,
                                int index, struct trace *trace)
{
	struct vec2 v = share_of(base, r, k);
	double c = cos(k->heading), s = sin(k->heading);
#define NAME(stem) trace_text(trace, stem "_%d", index)
	trace_step(trace, NAME("F"), "", k->force, DIM_FORCE, "horizontal force of the case", "");
	trace_step(trace, NAME("phi"), "", k->heading, DIM_ANGLE, "its worst heading", "");
	trace_step(trace, NAME("c"), "", c, DIM_FACTOR, "cosine of the heading", "");
	trace_step(trace, NAME("s"), "", s, DIM_FACTOR, "sine of the heading", "");
	trace_step(trace, NAME("a_x"), "", k->at[0], DIM_LENGTH,
	           "where it acts, from the anchors' centre", "");
	trace_step(trace, NAME("a_y"), "", k->at[1], DIM_LENGTH, "", "");
	trace_step(trace, NAME("T"), "", k->twist, DIM_MOMENT,
	           "twisting moment of the case, worse sign", "");
	double torsion = k->force * (k->at[0] * s - k->at[1] * c) + k->twist;
	trace_step(trace, NAME("T_c"),
	           trace_text(trace, "F_%d * (a_x_%d * s_%d - a_y_%d * c_%d) + T_%d", index, index,
	                      index, index, index, index),
	           torsion, DIM_MOMENT, "", "torsion about the anchors' centre");
	bool twists = base->shear_polar > 0;
	trace_step(trace, NAME("v_x"),
	           trace_text(trace,
	                      twists ? "F_%d * c_%d / n - T_c_%d * r_y / J" : "F_%d * c_%d / n",
	                      index, index, index),
	           v.x, DIM_FORCE, "elastic group, V/n + T r/J", "");
	trace_step(trace, NAME("v_y"),
	           trace_text(trace,
	                      twists ? "F_%d * s_%d / n + T_c_%d * r_x / J" : "F_%d * s_%d / n",
	                      index, index, index),
	           v.y, DIM_FORCE, "", "");
#undef NAME
	return v;
}

/* The part of the case that does not turn. */
static struct vec2 trace_fixed(const struct base *base, const struct load_case *c, struct vec2 r,
                               struct trace *trace)
{
	const double *f = c->fixed_shear;
	struct pull pull = shear_fixed(base, c);
	struct vec2 v = shear_share_at(base, r, pull);
	if (f[0] == 0 && f[1] == 0 && f[2] == 0)
		return v;
	bool twists = base->shear_polar > 0;
	trace_step(trace, "F_x0", "", f[0], DIM_FORCE, "force in a fixed direction", "");
	trace_step(trace, "F_y0", "", f[1], DIM_FORCE, "", "");
	trace_step(trace, "T_c0", "", pull.torsion, DIM_MOMENT,
	           "its torsion about the anchors' centre", "");
	trace_step(trace, "v_x0", twists ? "F_x0 / n - T_c0 * r_y / J" : "F_x0 / n", v.x, DIM_FORCE,
	           "", "");
	trace_step(trace, "v_y0", twists ? "F_y0 / n + T_c0 * r_x / J" : "F_y0 / n", v.y, DIM_FORCE,
	           "", "");
	return v;
}

static void trace_group(const struct base *base, struct vec2 r, struct trace *trace)
{
	trace_step(trace, "n", "", (double)base->anchor_count, DIM_FACTOR, "pattern",
	           "anchors that share the shear");
	trace_step(trace, "J", "", base->shear_polar, DIM_AREA,
	           "sum of squared distances from their centre", "");
	trace_step(trace, "r_x", "", r.x, DIM_LENGTH, "the anchor from their centre", "");
	trace_step(trace, "r_y", "", r.y, DIM_LENGTH, "", "");
}

/* All forces in one heading, or a single one: the parts add as vectors. */
static void trace_as_vectors(const struct base *base, const struct load_case *c, struct vec2 r,
                             double heading, const char *symbol, struct trace *trace)
{
	struct vec2 fixed = trace_fixed(base, c, r, trace), best = {0, 0};
	bool any_fixed = c->fixed_shear[0] != 0 || c->fixed_shear[1] != 0 || c->fixed_shear[2] != 0;
	struct caught caught[MAX_TURNING], chosen[MAX_TURNING];
	double most = -1;
	for (int side = c->turning_count == 1 ? 0 : -1; side <= (c->turning_count == 1 ? 0 : 1);
	     side += 2) {
		struct vec2 v = fixed;
		for (int k = 0; k < c->turning_count; k++) {
			const struct turning_force *f = &c->turning_force[k];
			/* where shear is free, the heading is the force's own */
			double at = heading + (c->paired ? f->lead : 0);
			caught[k] = catch_force(base, f, at, r, v, side);
			struct vec2 part = share_of(base, r, &caught[k]);
			v = (struct vec2){v.x + part.x, v.y + part.y};
		}
		if (size_of(v) > most) {
			most = size_of(v);
			best = v;
			memcpy(chosen, caught, sizeof chosen);
		}
	}
	const char *in_x = any_fixed ? "v_x0" : "", *in_y = any_fixed ? "v_y0" : "";
	for (int k = 0; k < c->turning_count; k++) {
		trace_caught(base, r, &chosen[k], k + 1, trace);
		in_x = trace_text(trace, "%s%sv_x_%d", in_x, *in_x ? " + " : "", k + 1);
		in_y = trace_text(trace, "%s%sv_y_%d", in_y, *in_y ? " + " : "", k + 1);
	}
	trace_step(trace, "v_x", in_x, best.x, DIM_FORCE, "", "");
	trace_step(trace, "v_y", in_y, best.y, DIM_FORCE, "", "");
	trace_step(trace, symbol, "sqrt(v_x * v_x + v_y * v_y)", size_of(best), DIM_FORCE, "",
	           "shear");
}

/* Several forces whose headings are free of each other: their largest sizes add (a bound). */
static void trace_as_bound(const struct base *base, const struct state *state, struct vec2 r,
                           const char *symbol, int anchor, struct trace *trace)
{
	const struct load_case *c = state->load_case;
	struct vec2 fixed = trace_fixed(base, c, r, trace);
	trace_step(trace, "V_0", "", size_of(fixed), DIM_FORCE,
	           "size of the part in a fixed direction", "");
	double rest = state->shear[anchor] - size_of(fixed);
	trace_step(trace, "V_turning", "", rest, DIM_FORCE,
	           "largest sizes of the turning forces, each in its own worst heading", "");
	trace_step(trace, symbol, "V_0 + V_turning", size_of(fixed) + rest, DIM_FORCE,
	           "triangle inequality: a bound", "shear");
}

void trace_shear(const struct base *base, const struct state *state, int anchor, double heading,
                 struct trace *trace)
{
	const struct load_case *c = state->load_case;
	struct vec2 r = {base->anchor_mm[anchor].x - base->shear_centre[0],
	                 base->anchor_mm[anchor].y - base->shear_centre[1]};
	const char *symbol = trace_text(trace, "V_A%d", anchor + 1);
	if (!trace)
		return;
	if (c->turning_count == 0 && c->fixed_shear[0] == 0 && c->fixed_shear[1] == 0 &&
	    c->fixed_shear[2] == 0) {
		trace_step(trace, symbol, "", 0, DIM_FORCE, "no horizontal force in this case", "");
		return;
	}
	trace_group(base, r, trace);
	if (c->paired || c->turning_count <= 1)
		trace_as_vectors(base, c, r, heading, symbol, trace);
	else
		trace_as_bound(base, state, r, symbol, anchor, trace);
}
