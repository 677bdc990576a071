/* aci318.layout, en1992_4.layout: spacing, edge distance and thickness that keep the concrete from
 * splitting when the anchors are set, the scope of the equations, and old holes.
 *
 * Source: strength/layout.h (ACI 318-19 17.3, 17.9; EN 1992-4 and the anchor's sheet); old holes:
 * installation practice, no source: the breakout body of 1.5 embedments must be concrete, and twice
 * the hole's depth as in anchor.edge. Range: one product for all anchors. Identities: independent
 * of loads; turning cell and slab together changes nothing. */
#include "../strength/layout.h"
#include "check_files.h"
#include "code_judging.h"
#include "judging.h"

#include <math.h>
#include <string.h>

#define HOLE_DEPTHS 2.0          /* distance to an old hole, in its depths */

/* --- old holes --- */

static void judge_hole(const struct judging *judging, double embedment, const struct old_hole *hole,
                       struct finding *out)
{
	const struct setting *setting = judging->setting;
	double reach = fmax(1.5 * embedment, HOLE_DEPTHS * hole->depth.value), least = HUGE_VAL;
	size_t nearest = 0;
	if (!is_known(hole->at))
		finding_lacks(out, "slab.old_holes[].at");
	if (!is_known(hole->depth))
		finding_lacks(out, "slab.old_holes[].depth");
	for (size_t i = 0; i < judging->cell->anchors.count; i++) {
		double distance = hypot(setting->anchor[i].x - hole->at.at[0],
		                        setting->anchor[i].y - hole->at.at[1]);
		nearest = distance < least ? i : nearest;
		least = fmin(least, distance);
	}
	if (!is_known(hole->at) || !(least < reach))
		return;
	if (!is_known(hole->filled))
		finding_lacks(out, "slab.old_holes[].filled");
	finding_doubts(out,
	               sentence(judging,
	                        "anchor A%zu is %s from an old hole: nearer than %s it stands in the "
	                        "concrete that would hold the anchor",
	                        nearest + 1, shown(judging, least, DIM_LENGTH),
	                        shown(judging, reach, DIM_LENGTH)),
	               is_known(hole->filled) && hole->filled.value == YES
	                       ? "move the cell, or ask the engineer whether the filled hole counts"
	                       : "move the cell, or fill the hole and ask the engineer");
}

static void judge_old_holes(const struct judging *judging, double embedment, struct finding *out)
{
	const struct setting *setting = judging->setting;
	const struct list *holes = &judging->cell->slab.old_holes;
	/* a measured clear distance speaks for old holes as far as it speaks for edges */
	bool clear = embedment > 0 && setting->clear >= 1.5 * embedment;
	if (!is_known(*holes) && !clear)
		finding_lacks(out, "slab.old_holes");
	if (holes->count > 0 && !setting->placed) {
		finding_lacks(out,
		              is_known(judging->cell->standing_at) ? "cell.turned" : "cell.at");
		return;
	}
	for (size_t i = 0; i < holes->count; i++)
		judge_hole(judging, embedment, (const struct old_hole *)holes->rows + i, out);
}

/* --- limits --- */

/* Rows of one code; and the same once more without what is badly evidenced: a row that then differs
 * rests on it. */
struct limits {
	size_t count;
	struct code_limit row[MAX_CODE_LIMITS];
	bool weak[MAX_CODE_LIMITS];
};

static size_t rows_of(const struct code_facts *f, const struct pattern *p, bool edges_known,
                      struct code_limit out[MAX_CODE_LIMITS])
{
	return (f->code == ACI318 ? aci_layout : en_layout)(f, p, edges_known, out);
}

static bool thickness_shown(const struct cell *cell)
{
	const struct word *evidence = &cell->slab.thickness_evidence;
	return is_known(*evidence) &&
	       (evidence->value == BY_MEASURED || evidence->value == BY_AS_BUILT);
}

static void find_limits(const struct judging *judging, const struct code_facts *f,
                        struct limits *out)
{
	const struct setting *setting = judging->setting;
	struct code_limit other[MAX_CODE_LIMITS];
	struct code_facts unshown = *f;
	struct pattern open = *setting->pattern;
	bool known = setting->edges_known || setting->clear > 0;
	*out = (struct limits){0};
	out->count = rows_of(f, setting->pattern, known, out->row);
	if (!thickness_shown(judging->cell))
		unshown.thickness = 0;
	if (!setting->strength.evidenced)
		unshown.concrete = 0;
	unshown.cracked = false;     /* nobody has shown cracks: they are only not ruled out */
	/* the nearest edge may be farther than what was measured clear */
	if (!setting->edges_known)
		open.clear = HUGE_VAL;
	size_t count = rows_of(&unshown, &open, known, other);
	for (size_t i = 0; i < out->count; i++) {
		const struct code_limit *a = &out->row[i], *b = &other[i];
		out->weak[i] = i >= count || a->known != b->known || a->is < b->is ||
		               a->is > b->is || a->asked < b->asked || a->asked > b->asked;
	}
}

/* How far a limit is used; kept within its own tolerance it is at most 1. */
static double used(const struct code_limit *l)
{
	double ratio = l->at_most ? l->is / l->asked : l->asked > 0 ? l->asked / l->is : 0;
	return code_limit_kept(l) ? fmin(ratio, 1) : ratio;
}

/* A row that asks for a yes: outside of it the code says nothing, which is no failure. */
static bool is_scope(const struct code_limit *l)
{
	return l->dimension == DIM_COUNT || l->dimension == DIM_FACTOR;
}

static const char *said(const struct judging *judging, const struct code_limit *l)
{
	if (is_scope(l))
		return sentence(judging, "not met: %s, %s", l->what, l->clause);
	return sentence(judging, "%s: %s, at %s %s by %s", l->what,
	                shown(judging, l->is, l->dimension), l->at_most ? "most" : "least",
	                shown(judging, l->asked, l->dimension), l->clause);
}

static void take_limit(const struct judging *judging, const struct code_limit *l,
                       struct finding *out)
{
	const char *remedy = l->at_most
	                             ? "an anchor of another size or embedment, or a thicker slab"
	                             : "anchors farther apart and farther from edges, or a "
	                               "smaller anchor";
	double demand = l->at_most ? l->is : l->asked, capacity = l->at_most ? l->asked : l->is;
	if (!isfinite(capacity)) {
		finding_numbers(out, 0, 1, DIM_FACTOR, "nothing is near that the code limits",
		                NULL);
		return;
	}
	if (code_limit_kept(l))
		demand = fmin(demand, capacity);
	finding_numbers(out, demand, capacity, l->dimension, said(judging, l), remedy);
	trace_step(judging->trace, "x_asked", "", l->at_most ? capacity : demand, l->dimension,
	           l->clause, l->at_most ? "at most" : "at least");
	trace_step(judging->trace, "x_is", "", l->at_most ? demand : capacity, l->dimension, "",
	           l->what);
	trace_step(judging->trace, "ratio", l->at_most ? "x_is / x_asked" : "x_asked / x_is",
	           out->ratio, DIM_FACTOR, "", "must be at most 1");
}

static void judge_limits(const struct judging *judging, const struct code_facts *f,
                         struct finding *out)
{
	struct limits limits;
	const struct code_limit *worst = NULL;
	find_limits(judging, f, &limits);
	for (size_t i = 0; i < limits.count; i++) {
		const struct code_limit *l = &limits.row[i];
		for (int k = 0; k < LIMIT_LACKS && l->lacks[k]; k++)
			finding_lacks(out, l->lacks[k]);
		if (!l->known)
			continue;
		/* what rests on a thickness or a clear distance that may be more fails nothing */
		if ((limits.weak[i] || is_scope(l)) && !code_limit_kept(l))
			finding_doubts(out, said(judging, l),
			               is_scope(l) ? "an anchor that the code covers here, or an "
			                             "engineer's own design"
			                           : "measure what it rests on, or an anchor that "
			                             "asks for less");
		else if (!is_scope(l) && (!worst || used(l) > used(worst)))
			worst = l;
	}
	if (worst)
		take_limit(judging, worst, out);
}

/* Whether some limit rests on this item of the slab at all: it lacks it where nothing is known. */
static bool matters(const struct judging *judging, const struct code_facts *f, const char *path)
{
	struct code_limit row[MAX_CODE_LIMITS];
	struct code_facts without = *f;
	without.thickness = without.concrete = 0;
	size_t count = rows_of(&without, judging->setting->pattern, true, row);
	for (size_t i = 0; i < count; i++)
		for (int k = 0; k < LIMIT_LACKS && row[i].lacks[k]; k++)
			if (strcmp(row[i].lacks[k], path) == 0)
				return true;
	return false;
}

void judge_layout(const struct judging *judging, enum code code, struct finding *out)
{
	struct code_facts f;
	judged_facts(judging, code, &f);
	judge_sheet_evidence(judging, out);
	judge_old_holes(judging, f.embedment, out);
	if (!judging->setting->pattern) {
		finding_lacks(out, "anchors.at");
		return;
	}
	if (matters(judging, &f, "slab.thickness.value") && !thickness_shown(judging->cell))
		finding_lacks(out, "slab.thickness.evidence");
	if (matters(judging, &f, "slab.concrete.strength"))
		finding_lacks_strength(judging, out);
	if (!judging->setting->edges_known && !(judging->setting->clear > 0))
		finding_lacks_edges(judging, 0, out);
	judge_limits(judging, &f, out);
}
