/* The written calculation of one mode: the load that uses it, the strength, the ratio. The numbers
 * are those of mode_use, so both give the same bits. */
#include "code_parts.h"

#include <string.h>

enum { TERMS = 12,               /* of a sum in one expression */
       MANY = 16 };              /* anchors from which on a shear's own parts are left out */

/* How the sum over anchors is written: its terms' form, with the anchor's number in place of %d. */
typedef const char *term_function(struct trace *trace, int anchor);

/* Writes a sum over anchors as one expression; long ones in parts. Returns the expression of the
 * whole. `value` gives each term's value. */
static const char *sum_of(struct trace *trace, const char *symbol, const unsigned char anchor[],
                          size_t count, const double value[], enum dimension dimension,
                          term_function *term)
{
	const char *whole = "", *part = "";
	double sum = 0;
	for (size_t k = 0, in_part = 0; k < count; k++) {
		part = trace_text(trace, "%s%s%s", part, in_part ? " + " : "",
		                  term(trace, anchor[k] + 1));
		sum += value[k];
		in_part++;
		if (in_part < TERMS && k + 1 < count)
			continue;
		if (count > TERMS) {
			const char *name = trace_text(trace, "%s_part%zu", symbol, k / TERMS + 1);
			trace_step(trace, name, part, sum, dimension, "", "part of a sum");
			part = name;
		}
		whole = trace_text(trace, "%s%s%s", whole, *whole ? " + " : "", part);
		part = "";
		sum = 0;
		in_part = 0;
	}
	return whole;
}

static const char *tension_term(struct trace *t, int i) { return trace_text(t, "T_A%d", i); }
static const char *tension_x(struct trace *t, int i)
{
	return trace_text(t, "T_A%d * x_A%d", i, i);
}
static const char *tension_y(struct trace *t, int i)
{
	return trace_text(t, "T_A%d * y_A%d", i, i);
}
static const char *pry_term(struct trace *t, int i) { return trace_text(t, "a_A%d", i); }
static const char *pry_x(struct trace *t, int i) { return trace_text(t, "a_A%d * x_A%d", i, i); }
static const char *pry_y(struct trace *t, int i) { return trace_text(t, "a_A%d * y_A%d", i, i); }
static const char *place_x(struct trace *t, int i) { return trace_text(t, "x_A%d", i); }
static const char *place_y(struct trace *t, int i) { return trace_text(t, "y_A%d", i); }
static const char *shear_x(struct trace *t, int i) { return trace_text(t, "V_x_A%d", i); }
static const char *shear_y(struct trace *t, int i) { return trace_text(t, "V_y_A%d", i); }
static const char *push_term(struct trace *t, int i) { return trace_text(t, "P_A%d", i); }
static const char *push_x(struct trace *t, int i) { return trace_text(t, "P_A%d * l_A%d", i, i); }
static const char *beside_term(struct trace *t, int i) { return trace_text(t, "Q_A%d", i); }
static const char *place_along(struct trace *t, int i) { return trace_text(t, "l_A%d", i); }

/* The symbol under which the strength's own steps end: the latest of that value. */
static const char *symbol_of(struct trace *trace, double value, const char *otherwise,
                             const char *meaning)
{
	for (size_t i = trace->count; i-- > 0;)
		if (memcmp(&trace->steps[i].value, &value, sizeof value) == 0 &&
		    trace->steps[i].dimension == DIM_FORCE)
			return trace->steps[i].symbol;
	trace_step(trace, otherwise, "", value, DIM_FORCE, "", meaning);
	return otherwise;
}

static void trace_ratio(struct trace *trace, const char *demand, const struct mode_ratio *worst)
{
	const char *capacity = symbol_of(trace, worst->capacity, "R_d", "design strength");
	bool divides = worst->capacity > 0 && worst->capacity < HUGE_VAL;
	const char *otherwise = worst->capacity > 0 ? "" : "nothing of the strength is left";
	trace_step(trace, "ratio", divides ? trace_text(trace, "%s / %s", demand, capacity) : "",
	           worst->ratio, DIM_FACTOR, divides ? "" : otherwise, "must be at most 1");
}

/* --- tension -------------------------------------------------------------------------------- */

static void trace_tension(struct trace *trace, const struct anchor_load *load, size_t i)
{
	trace_step(trace, trace_text(trace, "T_A%zu", i + 1), "", load->tension[i], DIM_FORCE,
	           "equilibrium", "tension");
}

/* Whose eccentricity it is. */
static const char *eccentricity_clause(const struct code_strength *s, enum code_mode mode)
{
	static const char *const clause[CODE_MODES][CODES] = {
		[CONE] = {"1/psi_ec,N, ACI 318-19 17.6.2.3.1", "1/psi_ec,N, EN 1992-4 (7.6)"},
		[BOND] = {"1/psi_ec,Na, ACI 318-19 17.6.5.3.1", "1/psi_ec,Np, EN 1992-4 7.2.1.6"},
		[SPLITTING] = {"", "1/psi_ec,N, EN 1992-4 7.2.1.7"},
		[BLOWOUT] = {"ACI 318-19 17.6.4", "1/psi_ec,Nb, EN 1992-4 (7.30)"},
		[PRYOUT] = {"1/psi_ec of the shear, ACI 318-19 17.7.3.1",
	                    "1/psi_ec of the shear, EN 1992-4 7.2.2.4"}};
	return clause[mode][s->facts.code];
}

/* The stems that tell the load of a group in tension from one pried out. */
struct group_words {
	const char *sum, *demand, *meaning;
	term_function *term, *by_x, *by_y;
};
static const struct group_words in_tension = {"N_g",        "N_e",     "tension of the group",
                                              tension_term, tension_x, tension_y};
static const struct group_words pried_out = {"V_g",    "V_e", "shear of the group along u",
                                             pry_term, pry_x, pry_y};

static void trace_centre(const struct code_strength *s, const struct kept_group *group,
                         struct trace *trace)
{
	double x[MAX_ANCHORS], y[MAX_ANCHORS];
	for (size_t k = 0; k < group->count; k++) {
		int id = group->anchor[k] + 1;
		struct vec2 place = s->cache->frame->place[group->anchor[k]];
		x[k] = place.x;
		y[k] = place.y;
		trace_step(trace, trace_text(trace, "x_A%d", id), "", x[k], DIM_LENGTH, "pattern",
		           "");
		trace_step(trace, trace_text(trace, "y_A%d", id), "", y[k], DIM_LENGTH, "pattern",
		           "");
	}
	const char *in_x = sum_of(trace, "x_sum", group->anchor, group->count, x, DIM_LENGTH,
	                          place_x);
	const char *in_y = sum_of(trace, "y_sum", group->anchor, group->count, y, DIM_LENGTH,
	                          place_y);
	trace_step(trace, "x_g", group->is_mean ? trace_text(trace, "(%s) / n_g", in_x) : "",
	           group->centre.x, DIM_LENGTH, "", "centre of the group, along x");
	trace_step(trace, "y_g", group->is_mean ? trace_text(trace, "(%s) / n_g", in_y) : "",
	           group->centre.y, DIM_LENGTH, "", "along y");
}

/* Where the resultant of a group acts, and how far from the centre. */
static void trace_resultant(const struct code_strength *s, const struct mode_use *use,
                            const double load[], const struct group_words *words,
                            struct trace *trace)
{
	const struct kept_group *group = use->group;
	double x[MAX_ANCHORS], y[MAX_ANCHORS];
	trace_centre(s, group, trace);
	for (size_t k = 0; k < group->count; k++) {
		struct vec2 place = s->cache->frame->place[group->anchor[k]];
		x[k] = load[group->anchor[k]] * place.x;
		y[k] = load[group->anchor[k]] * place.y;
	}
	const char *in_x = sum_of(trace, "Tx_sum", group->anchor, group->count, x, DIM_MOMENT,
	                          words->by_x);
	const char *in_y = sum_of(trace, "Ty_sum", group->anchor, group->count, y, DIM_MOMENT,
	                          words->by_y);
	trace_step(trace, "x_r", trace_text(trace, "(%s) / %s", in_x, words->sum), use->at.x,
	           DIM_LENGTH, "", "where their resultant acts, along x");
	trace_step(trace, "y_r", trace_text(trace, "(%s) / %s", in_y, words->sum), use->at.y,
	           DIM_LENGTH, "", "along y");
	trace_step(trace, "e_x", "abs(x_r - x_g)", use->off_x, DIM_LENGTH, "",
	           "eccentricity along x");
	trace_step(trace, "e_y", "abs(y_r - y_g)", use->off_y, DIM_LENGTH, "",
	           "eccentricity along y");
}

/* Load on a group with its eccentricity. The strength's steps stand before: they name their own
 * lengths, and may not find these. */
static void trace_group_load(const struct code_strength *s, enum code_mode mode,
                             const struct mode_use *use, const double load[],
                             const struct group_words *words, struct trace *trace)
{
	const struct kept_group *group = use->group;
	double lever = group->strength.lever, value[MAX_ANCHORS];
	for (size_t k = 0; k < group->count; k++)
		value[k] = load[group->anchor[k]];
	trace_step(trace, "n_g", "", (double)group->count, DIM_FACTOR, "",
	           "anchors that break out together");
	trace_step(trace, words->sum,
	           sum_of(trace, "T_sum", group->anchor, group->count, value, DIM_FORCE,
	                  words->term),
	           use->load, DIM_FORCE, "", words->meaning);
	bool counts = use->load > 0 && lever < HUGE_VAL;
	double demand = use->load * (1 + use->off_x / lever) * (1 + use->off_y / lever);
	if (counts) {
		trace_resultant(s, use, load, words, trace);
		trace_step(trace, "s_e", "", lever, DIM_LENGTH, eccentricity_clause(s, mode),
		           "eccentricity that would double the load");
	}
	trace_step(trace, words->demand,
	           counts ? trace_text(trace, "%s * (1 + e_x / s_e) * (1 + e_y / s_e)", words->sum)
	                  : words->sum,
	           demand, DIM_FORCE, eccentricity_clause(s, mode),
	           counts ? "load with its eccentricity" : "no eccentricity counts");
}

static void trace_tension_group(struct code_strength *s, enum code_mode mode,
                                const struct anchor_load *load, const struct mode_use *use,
                                struct trace *trace)
{
	struct group_strength strength;
	for (size_t k = 0; k < use->group->count; k++)
		trace_tension(trace, load, use->group->anchor[k]);
	group_strength_of(s, mode, use->worst.anchors, use->worst.edge, load->earthquake,
	                  &strength, trace);
	trace_group_load(s, mode, use, load->tension, &in_tension, trace);
	trace_ratio(trace, "N_e", &use->worst);
}

static size_t count_of(uint64_t mask)
{
	size_t count = 0;
	for (; mask; mask &= mask - 1)
		count++;
	return count;
}

static void trace_single(struct code_strength *s, enum code_mode mode,
                         const struct anchor_load *load, const struct mode_use *use,
                         struct trace *trace)
{
	const struct code_facts *f = &s->facts;
	bool aci = f->code == ACI318;
	trace_tension(trace, load, (size_t)use->anchor);
	if (mode == STEEL_TENSION)
		(aci ? aci_steel_tension : en_steel_tension)(f, load->earthquake, trace);
	else if (mode == BOND_SUSTAINED)
		aci_bond_sustained(f, trace);
	else if (aci)
		aci_pullout(f, load->earthquake, trace);
	else
		en_pullout(f, load->earthquake, count_of(use->loaded), trace);
	trace_ratio(trace, trace_text(trace, "T_A%d", use->anchor + 1), &use->worst);
}

/* --- shear ---------------------------------------------------------------------------------- */

static void trace_steel_shear(struct code_strength *s, const struct anchor_load *load,
                              const struct mode_use *use, struct trace *trace)
{
	size_t i = (size_t)use->anchor;
	trace_step(trace, trace_text(trace, "V_A%zu", i + 1), "", load->shear[i], DIM_FORCE,
	           "elastic group, V/n + T r/J", "shear");
	double tension = s->facts.lever_arm == NO_LEVER ? 0 : load->tension[i];
	if (s->facts.lever_arm != NO_LEVER)
		trace_tension(trace, load, i);
	steel_shear_of(s, tension, load->earthquake, trace);
	trace_ratio(trace, trace_text(trace, "V_A%zu", i + 1), &use->worst);
}

static void trace_vector(const struct vec2 shear[], int i, struct trace *trace)
{
	trace_step(trace, trace_text(trace, "V_x_A%d", i + 1), "", shear[i].x, DIM_FORCE,
	           "elastic group, V/n + T r/J", "shear along x, cell axes");
	trace_step(trace, trace_text(trace, "V_y_A%d", i + 1), "", shear[i].y, DIM_FORCE, "",
	           "along y");
}

/* The shears' parts along their resultant; fills `load`. */
static void trace_pry_loads(const struct kept_group *group, const struct mode_use *use,
                            const struct vec2 shear[], double load[], struct trace *trace)
{
	double x[MAX_ANCHORS] = {0}, y[MAX_ANCHORS] = {0};
	struct vec2 sum = {0, 0};
	for (size_t k = 0; k < group->count; k++) {
		trace_vector(shear, group->anchor[k], trace);
		sum.x += x[k] = shear[group->anchor[k]].x;
		sum.y += y[k] = shear[group->anchor[k]].y;
	}
	trace_step(trace, "R_x", sum_of(trace, "Vx_sum", group->anchor, group->count, x, DIM_FORCE,
	                                shear_x),
	           sum.x, DIM_FORCE, "", "resultant, along x");
	trace_step(trace, "R_y", sum_of(trace, "Vy_sum", group->anchor, group->count, y, DIM_FORCE,
	                                shear_y),
	           sum.y, DIM_FORCE, "", "along y");
	double size = sqrt(sum.x * sum.x + sum.y * sum.y);
	trace_step(trace, "R", "sqrt(R_x * R_x + R_y * R_y)", size, DIM_FORCE, "", "resultant");
	trace_step(trace, "u_x", size > 0 ? "R_x / R" : "", use->along.x, DIM_FACTOR, "",
	           "its direction u");
	trace_step(trace, "u_y", size > 0 ? "R_y / R" : "", use->along.y, DIM_FACTOR, "", "");
	for (size_t k = 0; k < group->count; k++) {
		int i = group->anchor[k];
		load[i] = fmax(0, shear[i].x * use->along.x + shear[i].y * use->along.y);
		trace_step(trace, trace_text(trace, "a_A%d", i + 1),
		           trace_text(trace, "max(0, V_x_A%d * u_x + V_y_A%d * u_y)", i + 1, i + 1),
		           load[i], DIM_FORCE, "", "part of its shear along u");
	}
}

static void trace_pryout(struct code_strength *s, const struct anchor_load *load,
                         const struct mode_use *use, struct trace *trace)
{
	const struct kept_group *group = use->group;
	double part[MAX_ANCHORS], largest = -1;
	int most = 0;
	struct group_strength strength;
	group_strength_of(s, PRYOUT, use->worst.anchors, 0, load->earthquake, &strength, trace);
	trace_pry_loads(group, use, load->shear_at, part, trace);
	trace_group_load(s, PRYOUT, use, part, &pried_out, trace);
	for (size_t k = 0; k < group->count; k++) {
		struct vec2 v = load->shear_at[group->anchor[k]];
		if (v.x * v.x + v.y * v.y > largest) {
			largest = v.x * v.x + v.y * v.y;
			most = group->anchor[k] + 1;
		}
	}
	trace_step(trace, "V_max",
	           trace_text(trace, "sqrt(V_x_A%d * V_x_A%d + V_y_A%d * V_y_A%d)", most, most,
	                      most, most),
	           sqrt(largest), DIM_FORCE, "", "largest shear of one anchor");
	trace_step(trace, "V_p", "max(V_e, n_g * V_max)", use->worst.demand, DIM_FORCE,
	           "own safe choice: under torsion as if all had the largest",
	           "what pries the group out");
	trace_ratio(trace, "V_p", &use->worst);
}

/* --- edge ----------------------------------------------------------------------------------- */

/* Anchors whose load the front takes, with their parts of it. */
struct front_load {
	size_t count, own;           /* own: those of its own row */
	unsigned char anchor[MAX_ANCHORS], own_anchor[MAX_ANCHORS];
	double out[MAX_ANCHORS], out_x[MAX_ANCHORS], along[MAX_ANCHORS], own_along[MAX_ANCHORS];
};

static void trace_parts(const struct code_strength *s, const struct mode_use *use,
                        const struct vec2 shear[], size_t i, double least,
                        struct front_load *all, struct trace *trace)
{
	struct vec2 toward = s->cache->frame->edge[use->view].toward, v = shear[i];
	const struct edge_view *view = &s->view[use->view];
	double p = v.x * toward.x + v.y * toward.y, out = p > least ? p : 0;
	double along = v.y * toward.x - v.x * toward.y;
	int id = (int)i + 1;
	bool shown = s->cache->frame->edge[use->view].count <= MANY;
	if (shown)
		trace_vector(shear, (int)i, trace);
	trace_step(trace, trace_text(trace, "P_A%d", id),
	           shown && (out > 0 || p <= 0)
	                   ? trace_text(trace, "max(0, V_x_A%d * t_x + V_y_A%d * t_y)", id, id)
	                   : "",
	           out, DIM_FORCE, "outward alone", "shear toward the edge");
	trace_step(trace, trace_text(trace, "Q_A%d", id),
	           shown ? trace_text(trace, "V_y_A%d * t_x - V_x_A%d * t_y", id, id) : "", along,
	           DIM_FORCE, "", "shear along it");
	trace_step(trace, trace_text(trace, "l_A%d", id), "", view->x[i], DIM_LENGTH, "pattern",
	           "place along the edge");
	all->anchor[all->count] = (unsigned char)i;
	all->out[all->count] = out;
	all->out_x[all->count] = out * view->x[i];
	all->along[all->count++] = along;
	if (view->row[use->row] >> i & 1) {
		all->own_anchor[all->own] = (unsigned char)i;
		all->own_along[all->own++] = along;
	}
}

static void trace_centre_along(const struct code_strength *s, const struct mode_use *use,
                               struct trace *trace)
{
	const struct kept_front *front = use->front;
	unsigned char anchor[MAX_ANCHORS];
	double x[MAX_ANCHORS], sum = 0, largest = 0;
	size_t count = 0;
	for (size_t i = 0; i < s->pattern->count; i++)
		if (front->anchors >> i & 1) {
			anchor[count] = (unsigned char)i;
			sum += x[count] = s->view[use->view].x[i];
			largest = fmax(largest, fabs(x[count++]));
		}
	double mean = sum / (double)count;
	bool is_mean = fabs(mean - front->strength.centre) <= 1e-14 * largest;
	trace_step(trace, "n_f", "", (double)count, DIM_FACTOR, "",
	           "anchors of the row that push outward and break out together");
	const char *in = sum_of(trace, "l_sum", anchor, count, x, DIM_LENGTH, place_along);
	trace_step(trace, "l_c", is_mean ? trace_text(trace, "(%s) / n_f", in) : "",
	           front->strength.centre, DIM_LENGTH, "", "their centre along the edge");
}

static void trace_front_loads(const struct code_strength *s, const struct mode_use *use,
                              const struct vec2 shear[], struct trace *trace)
{
	const struct edge_order *edge = &s->cache->frame->edge[use->view];
	struct front_load all = {0};
	double largest = 0;
	for (size_t i = 0; i < s->pattern->count; i++)
		largest = fmax(largest, fmax(fabs(shear[i].x), fabs(shear[i].y)));
	trace_step(trace, "t_x", "", edge->toward.x, DIM_FACTOR,
	           "unit vector at right angles to the edge, outward", "toward the edge");
	trace_step(trace, "t_y", "", edge->toward.y, DIM_FACTOR, "", "");
	for (size_t k = 0; k < use->end; k++)
		if (use->front->takes >> edge->anchor[k] & 1)
			trace_parts(s, use, shear, edge->anchor[k], LOADED_SHARE * largest, &all,
			            trace);
	trace_step(trace, "P", sum_of(trace, "P_sum", all.anchor, all.count, all.out, DIM_FORCE,
	                              push_term),
	           use->pushed, DIM_FORCE, "", "shear of the front toward the edge");
	trace_step(trace, "Q_all", sum_of(trace, "Q_sum", all.anchor, all.count, all.along,
	                                  DIM_FORCE, beside_term),
	           use->beside_all, DIM_FORCE, "", "shear along the edge, all that it takes");
	const char *own = sum_of(trace, "Q_own", all.own_anchor, all.own, all.own_along, DIM_FORCE,
	                         beside_term);
	trace_step(trace, "Q_row", own, use->beside_own, DIM_FORCE, "", "of its own row");
	trace_step(trace, "Q", "max(abs(Q_all), abs(Q_row))",
	           fmax(fabs(use->beside_all), fabs(use->beside_own)), DIM_FORCE,
	           "own safe choice", "shear along the edge");
	if (!(use->pushed > 0))
		return;
	trace_centre_along(s, use, trace);
	trace_step(trace, "l_P",
	           trace_text(trace, "(%s) / P", sum_of(trace, "Pl_sum", all.anchor, all.count,
	                                                all.out_x, DIM_MOMENT, push_x)),
	           use->pushed_at, DIM_LENGTH, "", "where it acts along the edge");
	trace_step(trace, "e_V", "abs(l_P - l_c)", use->off_x, DIM_LENGTH, "", "eccentricity");
}

static void trace_edge(struct code_strength *s, const struct anchor_load *load,
                       const struct mode_use *use, struct trace *trace)
{
	struct edge_strength strength;
	const struct edge_strength *e = &use->front->strength;
	bool seen = use->view < s->view_count, quake = load->earthquake;
	const char *clause = s->facts.code == ACI318 ? "1/psi_ec,V, ACI 318-19 17.7.2.3.1"
	                                             : "1/psi_ec,V, EN 1992-4 7.2.2.5";
	if (seen)
		trace_front_loads(s, use, load->shear_at, trace);
	else
		trace_step(trace, "P", "", use->pushed, DIM_FORCE,
		           "edges not known: the shear of all anchors on one of them",
		           "shear toward an edge");
	bool turns = use->pushed > 0 && seen && e->lever < HUGE_VAL;
	if (turns)
		trace_step(trace, "s_e", "", e->lever, DIM_LENGTH, clause,
		           "eccentricity that would double the load");
	trace_step(trace, "P_e", turns ? "P * (1 + e_V / s_e)" : "P", use->across, DIM_FORCE,
	           turns ? clause : "", "load with its eccentricity");
	bool both = turns && s->facts.code == EN1992_4;
	if (both)
		trace_step(trace, "Q_e", "Q * (1 + e_V / s_e)", use->beside, DIM_FORCE, clause,
		           "the eccentricity lowers the strength in every direction");
	edge_strength_of(s, use->view, seen ? use->front->anchors : 1,
	                 row_distance_of(s, use->view, use->row), quake, &strength, trace);
	double across = quake ? e->across_seismic : e->across;
	double along = quake ? e->along_seismic : e->along;
	const char *of_p = symbol_of(trace, across, "R_across", "strength toward the edge");
	const char *form;
	if (use->beside > 0) {
		const char *of_q = symbol_of(trace, along, "R_along", "strength along the edge");
		form = trace_text(trace, both ? "sqrt((P_e / %s)^2 + (Q_e / %s)^2)"
		                              : "sqrt((P_e / %s)^2 + (Q / %s)^2)",
		                  of_p, of_q);
	} else {
		form = trace_text(trace, "P_e / %s", of_p);
	}
	trace_step(trace, "ratio", use->worst.ratio < HUGE_VAL ? form : "", use->worst.ratio,
	           DIM_FACTOR, "the two directions at right angles", "must be at most 1");
}

/* --- one mode ------------------------------------------------------------------------------- */

static void trace_shear_mode(struct code_strength *s, enum code_mode mode,
                             const struct anchor_load *load, const struct mode_use *use,
                             struct trace *trace)
{
	if (mode == STEEL_SHEAR)
		trace_steel_shear(s, load, use, trace);
	else if (load->shear_at && mode == EDGE && use->front)
		trace_edge(s, load, use, trace);
	else if (load->shear_at && mode == PRYOUT && use->group)
		trace_pryout(s, load, use, trace);
	else
		trace_step(trace, "ratio", "", use->worst.ratio, DIM_FACTOR,
		           load->shear_at ? "no edge takes any shear"
		                          : "the largest over all headings of the shear",
		           "must be at most 1");
}

void code_trace_mode(struct code_strength *s, enum code_mode mode, const struct anchor_load *load,
                     struct mode_ratio *out, struct trace *trace)
{
	struct mode_use use;
	mode_use(s, mode, load, &use);
	*out = use.worst;
	if (!trace || use.worst.ratio < 0)
		return;
	if (mode >= STEEL_SHEAR)
		trace_shear_mode(s, mode, load, &use, trace);
	else if (use.group)
		trace_tension_group(s, mode, load, &use, trace);
	else if (use.worst.capacity > 0 || use.worst.ratio > 0)
		trace_single(s, mode, load, &use, trace);
	else
		trace_step(trace, "ratio", "", use.worst.ratio, DIM_FACTOR,
		           use.loaded ? "no anchor in tension can fail so" : "no anchor in tension",
		           "must be at most 1");
}
