#include "earthquake.h"

#include "earthquake_site.h"
#include "factors.h"
#include "weights.h"

#include <math.h>
#include <string.h>

#define LOW_WEIGHT 0.6   /* ASCE 7 2.4.5: 0.6D, for the row that is an own addition */
#define LOW_FACTORED 0.9 /* ASCE 7 2.3.6: 0.9D, the same at strength level */
#define FEW_PARTS 6      /* more are summed without a line each */

void earthquake_gaps(const struct cell *cell, found_gap *gap, void *user)
{
	if (!earthquake_stated(cell))
		return;
	site_gaps(&cell->earthquake, gap, user);
	standing_reach_gaps(cell, gap, user);
}

static void count_gap(void *count, const char *path)
{
	(void)path;
	++*(size_t *)count;
}

/* Whether the code's formula can be evaluated. */
static bool is_complete(const struct cell *cell)
{
	size_t gaps = 0;
	if (!earthquake_stated(cell))
		return false;
	site_gaps(&cell->earthquake, count_gap, &gaps);
	return gaps == 0;
}

const char *earthquake_fault(const struct cell *cell)
{
	return is_complete(cell) ? site_fault(&cell->earthquake) : NULL;
}

/* --- the ways ------------------------------------------------------------------------------- */

/* Rows of the earthquake's own code: at service level for a rating, as far as there are any (EN
 * 1990 has none), at strength level for a code method. */
static bool row_applies(const struct rare_combination *row, const struct earthquake *quake,
                        enum method method)
{
	bool en = quake->code.value == QUAKE_EN1998;
	const char *code = en ? "EN 1990" : "ASCE 7";
	return row->event == EVENT_EARTHQUAKE && strncmp(row->source, code, strlen(code)) == 0 &&
	       row->level == (en || method != METHOD_RATING ? LEVEL_FACTORED : LEVEL_SERVICE);
}

/* What the action is made of: all that stands there, and the code's force on it. */
struct shaken {
	struct standing mass;
	double centre[3];            /* highest [mm] */
	double reach;                /* of all masses by the stretched arm [mm] */
	struct seismic_force force;
	double horizontal, vertical; /* with the factors of the row; downward positive [N] */
	double excess;               /* factor on the weights beyond way->weight, >= 0 [-] */
	struct standing low;         /* what that factor is on */
};

static struct shaken shake(const struct cell *cell, const struct earthquake_way *way,
                           struct trace *trace)
{
	struct shaken out = {0};
	out.mass = standing_mass(cell, (struct standing_state){true, true, way->corner});
	out.low = standing_mass(cell, (struct standing_state){false, true, way->corner});
	/* the weights of a code's case are those of the row already (factors.h) */
	out.excess = way->method == METHOD_RATING
	                     ? run_factors(cell, METHOD_RATING, way->run).weight - way->weight
	                     : 0;
	if (!(out.mass.mass > 0))
		return out;
	for (int k = 0; k < 3; k++)
		out.centre[k] = (out.mass.first[k] + (k == 2 ? out.mass.rise : 0)) / out.mass.mass;
	out.reach = out.mass.reach_moment / out.mass.mass;
	site_force(&cell->earthquake, STANDARD_GRAVITY * out.mass.mass, &out.force, trace);
	out.horizontal = way->row->horizontal * out.force.for_anchors;
	out.vertical = (way->upward ? -1 : 1) * fabs(way->row->vertical) * out.force.vertical;
	return out;
}

static void find_action(const struct cell *cell, struct earthquake_way *way)
{
	struct shaken s = shake(cell, way, NULL);
	struct extra_action *action = &way->action;
	double less = STANDARD_GRAVITY * s.excess;
	seismic_action(s.horizontal, s.vertical, s.centre, action);
	/* the stretched arm carries the vertical force as far out; an upward one would relieve and
	 * is left out: its weight moment keeps its full size in every run */
	action->turning += fmax(0, s.vertical) * s.reach;
	/* a force across the stretched arm twists about the mounting axis */
	action->force.twist = s.horizontal * s.reach;
	action->down -= less * s.low.mass;
	for (int k = 0; k < 2; k++)
		action->fixed[k] -= less * s.low.first[k];
}

/* The row as the trade writes it, with what this program adds. */
static const char *title_of(const struct earthquake_way *way)
{
	const struct rare_combination *row = way->row;
	bool added = way->upward && row->vertical > 0;
	if (added && row->level == LEVEL_FACTORED)
		return "0.9D - Ev + Eh + L (added here; no such row is printed)";
	if (added)
		return "0.6D - 0.525Ev + 0.525Eh + L (added here; no such row is printed)";
	if (row->moving > 0 && row->moving < 1)
		return "D + 0.525Ev + 0.525Eh + L (0.75L is printed)";
	return row->title;
}

/* Which level the row is of, and whether it is that of another code than the method's. */
static const char *level_of(const struct cell *cell, const struct earthquake_way *way)
{
	bool en = cell->earthquake.code.value == QUAKE_EN1998;
	if (way->method == METHOD_RATING)
		return way->row->level == LEVEL_FACTORED ? ", strength level (safe side)" : "";
	return en == (way->method == METHOD_EN1992_4)
	               ? ", strength level"
	               : ", strength level, row of the earthquake's own code";
}

static bool name_way(const struct cell *cell, struct arena *arena, struct earthquake_way *way)
{
	char factor[24];
	const struct rare_combination *row = way->row;
	number_write(way->weight, 3, factor, sizeof factor);
	way->clause = row->source;
	way->name = arena_format(arena, "earthquake, %s", site_clause(&cell->earthquake));
	way->combination = arena_format(
		arena, "%s, %s%s%s, weights x %s", title_of(way), row->source,
		row->mark == MARK_FROM_MEMORY ? " (from memory)" : "",
		level_of(cell, way), factor);
	return way->name && way->combination;
}

/* Factor on the weights. Service loads: that of the run, in an upward row no more than the row's
 * own. A code's loads: the row's own. */
static double row_weight(const struct cell *cell, const struct earthquake_way *way)
{
	const struct rare_combination *row = way->row;
	bool added = way->upward && row->vertical > 0;
	if (way->method != METHOD_RATING)
		return added ? LOW_FACTORED : row->weight;
	double weight = run_factors(cell, METHOD_RATING, way->run).weight;
	return way->upward ? fmin(weight, added ? LOW_WEIGHT : row->weight) : weight;
}

/* A row at every corner of the boxes. */
static bool add_row(const struct cell *cell, enum method method, struct arena *arena,
                    const struct rare_combination *row, bool upward, struct earthquake_way *list,
                    size_t *count)
{
	bool boxed = standing_boxed(cell);
	for (int corner = boxed ? 0 : -1; corner < (boxed ? 4 : 0); corner++) {
		struct earthquake_way *way = &list[(*count)++];
		way->row = row;
		way->method = method;
		way->corner = corner;
		way->upward = upward;
		way->arm_moves = row->moving > 0;
		way->moving = way->arm_moves;
		way->run = upward ? RUN_LOW : RUN_FULL;
		way->weight = row_weight(cell, way);
		find_action(cell, way);
		if (!name_way(cell, arena, way))
			return false;
	}
	return true;
}

bool earthquake_ways(const struct cell *cell, enum method method, struct arena *arena,
                     const struct earthquake_way **out, size_t *count)
{
	size_t row_count = 0;
	const struct rare_combination *row = rare_combinations(&row_count);
	*out = NULL;
	*count = 0;
	if (!is_complete(cell) || site_fault(&cell->earthquake) ||
	    !(standing_mass(cell, (struct standing_state){true, true, -1}).mass > 0))
		return true;
	struct earthquake_way *list = arena_take(arena, 8 * row_count, sizeof *list);
	if (!list)
		return false;
	for (size_t i = 0; i < row_count; i++) {
		if (!row_applies(&row[i], &cell->earthquake, method))
			continue;
		bool upward = row[i].vertical < 0;
		if (!add_row(cell, method, arena, &row[i], upward, list, count))
			return false;
		/* the arm's own motion relieves weight too: loads.h adds 0.6D + L the same way; EN
		 * 1990 has its motion in both rows */
		bool both = cell->earthquake.code.value != QUAKE_EN1998 && row[i].moving > 0 &&
		            !upward;
		if (both && !add_row(cell, method, arena, &row[i], true, list, count))
			return false;
	}
	*out = list;
	return true;
}

/* --- written calculation -------------------------------------------------------------------- */

struct sums { const char *mass, *first[3]; };

static const char *const axis[3] = {"x", "y", "z"};

/* Mass and place of one part, and the two as terms of the sums. */
static void trace_part(const struct cell *cell, size_t i, int corner, struct sums *sums,
                       struct trace *trace)
{
	const struct part *part = (const struct part *)cell->parts.rows + i;
	bool box = is_known(part->box_from) && is_known(part->box_to);
	double at[3];
	standing_part_centre(part, corner, at);
	const char *plus = i > 0 ? " + " : "";
	trace_input(trace, trace_text(trace, "mq_%zu", i + 1), &part->mass, DIM_MASS,
	            part->name.value);
	sums->mass = trace_text(trace, "%s%smq_%zu", sums->mass, plus, i + 1);
	for (int k = 0; k < 3; k++) {
		struct number number = {box ? part->box_to.given : part->at.given, at[k], NULL};
		trace_input(trace, trace_text(trace, "%sq_%zu", axis[k], i + 1), &number,
		            DIM_LENGTH,
		            !box     ? ""
		            : k == 2 ? "top of its box"
		                     : "its box, pushed to the corner that is tried");
		sums->first[k] = trace_text(trace, "%s%smq_%zu * %sq_%zu", sums->first[k], plus,
		                            i + 1, axis[k], i + 1);
	}
}

static void trace_masses(const struct cell *cell, const struct shaken *s, int corner,
                         struct trace *trace)
{
	struct sums sums = {"", {"", "", ""}};
	const struct arm *arm = &cell->arm;
	double other = s->mass.arm + s->mass.payload;
	double place[3] = {arm->mount.at[0], arm->mount.at[1], standing_shoulder(arm)};
	for (size_t i = 0; cell->parts.count <= FEW_PARTS && i < cell->parts.count; i++)
		trace_part(cell, i, corner, &sums, trace);
	trace_step(trace, "M_parts", sums.mass, s->mass.parts, DIM_MASS, "",
	           "full masses of the parts");
	trace_step(trace, "M_arm", "", s->mass.arm, DIM_MASS, "arm.weight or arm.chain", "arm");
	trace_step(trace, "M_payload", "", s->mass.payload, DIM_MASS, "arm.weight or arm.chain",
	           "gripper and work piece");
	trace_step(trace, "M_all", "M_parts + M_arm + M_payload", s->mass.mass, DIM_MASS, "",
	           "all that an earthquake takes hold of");
	for (int k = 0; k < 3; k++) {
		trace_step(trace, trace_text(trace, "%s_shoulder", axis[k]), "", place[k],
		           DIM_LENGTH,
		           k == 2 ? "arm.mount; arm.swing.axis_height or half the payload's reach"
		                  : "arm.mount",
		           "");
		trace_step(trace, trace_text(trace, "D_%s_parts", axis[k]), sums.first[k],
		           s->mass.first[k] - other * place[k], DIM_FACTOR, "",
		           "sum of mass times place of the parts, kg mm");
	}
}

static void trace_centre(const struct cell *cell, const struct shaken *s, struct trace *trace)
{
	trace_step(trace, "r_arm_q", "",
	           is_known(cell->arm.reach) ? cell->arm.reach.value : 0, DIM_LENGTH,
	           "arm.weight.reach.arm", "stretched");
	trace_step(trace, "r_payload_q", "",
	           is_known(cell->arm.payload_reach) ? cell->arm.payload_reach.value : 0,
	           DIM_LENGTH, "arm.weight.reach.payload", "");
	trace_step(trace, "r_q", "(M_arm * r_arm_q + M_payload * r_payload_q) / M_all", s->reach,
	           DIM_LENGTH, "", "how far the stretched arm moves the centre of all");
	for (int k = 0; k < 2; k++)
		trace_step(trace, trace_text(trace, "%s_q", axis[k]),
		           trace_text(trace, "(D_%s_parts + (M_arm + M_payload) * %s_shoulder) / "
		                             "M_all", axis[k], axis[k]),
		           s->centre[k], DIM_LENGTH, "", "centre of all masses");
	trace_step(trace, "r_up", "", s->mass.rise > 0 ? s->reach : 0, DIM_LENGTH,
	           s->mass.rise > 0 ? "arm upright" : "arm hangs, or has no reach", "");
	trace_step(trace, "z_q", "(D_z_parts + (M_arm + M_payload) * z_shoulder) / M_all + r_up",
	           s->centre[2], DIM_LENGTH, "", "its height, arm upright, boxes at their tops");
}

static void trace_action(const struct earthquake_way *way, const struct shaken *s,
                         struct trace *trace)
{
	const struct extra_action *a = &way->action;
	bool anchors = s->force.for_anchors != s->force.horizontal;
	bool vertical = s->force.vertical != 0;
	trace_step(trace, "k_Eh", "", way->row->horizontal, DIM_FACTOR, way->combination,
	           "factor on the horizontal force");
	trace_step(trace, "k_Ev", "", (way->upward ? -1 : 1) * fabs(way->row->vertical),
	           DIM_FACTOR, way->clause, "factor on the vertical force, downward positive");
	trace_step(trace, "H_E", anchors ? "k_Eh * F_p_anchor" : vertical ? "k_Eh * F_p"
	                                                                  : "k_Eh * F_a",
	           s->horizontal, DIM_FORCE, "", "horizontal, in every heading");
	trace_step(trace, "V_E", vertical ? "k_Ev * F_v" : "", s->vertical, DIM_FORCE,
	           vertical ? "" : "the clause names no vertical force", "");
	trace_step(trace, "T_E", "H_E * r_q", a->force.twist, DIM_MOMENT, "",
	           "twisting, force across the stretched arm, both ways");
	trace_step(trace, "W_less", "", STANDARD_GRAVITY * s->excess * s->low.mass, DIM_FORCE,
	           s->excess > 0 ? "choices.stabilising_weight above the factor of this row"
	                         : "weights stand as in this row",
	           "weight counted too much");
	trace_step(trace, "N_E", "V_E - W_less", a->down, DIM_FORCE, "", "downward");
	for (int k = 0; k < 2; k++) {
		trace_step(trace, trace_text(trace, "S_%s_less", axis[k]), "",
		           STANDARD_GRAVITY * s->excess * s->low.first[k], DIM_MOMENT, "", "");
		trace_step(trace, trace_text(trace, "S_%s_E", axis[k]),
		           trace_text(trace, "V_E * %s_q - S_%s_less", axis[k], axis[k]),
		           a->fixed[k], DIM_MOMENT, "", "its first moment that does not turn");
	}
	trace_step(trace, "S_turn_E", "H_E * z_q + max(0, V_E) * r_q", a->turning, DIM_MOMENT, "",
	           "and what turns with the heading");
}

void earthquake_trace(const struct cell *cell, const struct earthquake_way *way,
                      struct trace *trace)
{
	if (!trace)
		return;
	struct shaken s = shake(cell, way, NULL);
	trace_masses(cell, &s, way->corner, trace);
	trace_centre(cell, &s, trace);
	trace_step(trace, "g0", "", STANDARD_GRAVITY, DIM_FACTOR,
	           "NIST SP 811 B.8, standard acceleration of free fall, m/s2", "");
	trace_step(trace, "W_all", "g0 * M_all", STANDARD_GRAVITY * s.mass.mass, DIM_FORCE, "",
	           "weight of the component that the code speaks of");
	s = shake(cell, way, trace);
	trace_action(way, &s, trace);
}

/* --- words ---------------------------------------------------------------------------------- */

struct gap_text { struct arena *arena; const char *text; };

static void join_gap(void *user, const char *path)
{
	struct gap_text *out = user;
	const char *text = arena_format(out->arena, "%s%s%s", out->text, *out->text ? ", " : "",
	                                path);
	out->text = text ? text : "";
}

static void word_counted(const struct cell *cell, struct arena *arena, earthquake_word *word,
                         void *user)
{
	const struct earthquake *quake = &cell->earthquake;
	bool en = quake->code.value == QUAKE_EN1998;
	const char *how = arena_format(
		arena,
		"earthquake by %s%s on the full masses of all parts, arm and payload; the arm "
		"stretched for tilt and twist and upright for its height at once, boxed parts at "
		"the tops of their boxes (safe side); the arm's shoulder %s",
		site_clause(quake), en ? "" : ", with overstrength for anchors in concrete,",
		is_known(cell->arm.swing.axis_height)
			? "as high as arm.swing.axis_height says"
			: "half the payload's reach above its mounting face (own choice, no "
			  "source)");
	if (how)
		word(user, false, how);
	word(user, false,
	     en ? "EN 1990 has no service combination with an earthquake: its strength-level force "
	          "(factor 1) is compared with the service rating, on the safe side; 4.3.5 names "
	          "no vertical force and none is counted"
	        : "earthquake at service level by ASCE 7 2.4.5 (from memory): 0.7E with the arm at "
	          "rest, 0.525E with its motion; that motion is counted whole where 0.75 is "
	          "printed, and the vertical force lifts as well, which is an addition");
	if (code_chosen(cell))
		word(user, false,
		     en ? "for the code methods the earthquake counts with the rows of EN 1990 "
		          "6.12b (from memory), the arm's motion whole (psi2 = 1)"
		        : "for the code methods the earthquake counts at strength level by ASCE 7 "
		          "2.3.6, with the arm's motion whole; 0.9D - Ev + Eh + L is an addition");
	word(user, true,
	     "the earthquake formulas are second-hand or from memory: a licensed engineer must "
	     "read them in the code; sliding, floors that move apart and the shaking of loose "
	     "parts are not in them");
}

void earthquake_words(const struct cell *cell, struct arena *arena, earthquake_word *word,
                      void *user)
{
	struct gap_text gaps = {arena, ""};
	if (!earthquake_stated(cell)) {
		if (is_known(cell->earthquake))
			word(user, false, "no earthquake has to be counted at this place, as "
			                  "stated");
		else
			word(user, true,
			     "no earthquake is counted: the file does not say whether one must "
			     "be; ask the site's structural engineer and write earthquake: none, "
			     "or its code and values");
		return;
	}
	site_gaps(&cell->earthquake, join_gap, &gaps);
	if (!*gaps.text) {
		word_counted(cell, arena, word, user);
		return;
	}
	const char *text = arena_format(arena, "no earthquake is counted yet: not known: %s",
	                                gaps.text);
	if (text)
		word(user, true, text);
}
