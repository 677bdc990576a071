/* Limits of ACI 318-19 17.9 (against splitting) and 17.3 (scope) for one pattern. Declared in
 * layout.h, as the other code's. */
#include "aci_values.h"
#include "layout.h"

#include <math.h>

#define PRODUCT "anchors.product."
#define STRENGTH PRODUCT "strength."

/* cast-in anchors count as torqued unless the torque is given as zero, S18 */
static bool is_torqued(const struct code_facts *f)
{
	const struct number *torque = &f->cell->anchors.product.setting_torque;
	return !f->cast_in || !is_known(*torque) || torque->value > 0;
}

/* --- spacing and edges, 17.9.2 -------------------------------------------------------------- */

static void spacing_row(const struct code_facts *f, const struct pattern *p,
                        struct limit_rows *rows)
{
	const struct number *tested = &f->given->least_spacing;
	double asked = (is_torqued(f) ? ACI_SPACING_TORQUED : ACI_SPACING_CAST_IN) * f->shaft;
	if (f->type == SCREW)
		asked = fmax(asked, ACI_SPACING_SCREW * f->embedment);
	/* a test replaces the rule of post-installed anchors; cast-in ones keep it as the least */
	bool by_test = is_known(*tested) && !f->cast_in;
	if (is_known(*tested))
		asked = by_test ? tested->value : fmax(asked, tested->value);
	struct code_limit *row = limit_add(rows, "spacing of the anchors",
	                             f->cast_in ? "ACI 318-19 Table 17.9.2(a); S18"
	                                        : "ACI 318-19 Table 17.9.2(a)",
	                             DIM_LENGTH, pattern_least_spacing(p), asked);
	if (p->count < 2)
		return;
	limit_lacks(row, by_test || f->shaft > 0, PRODUCT "shaft");
	if (f->type == SCREW)
		limit_lacks(row, by_test || f->embedment > 0, PRODUCT "embedment");
}

/* Least edge distance for the torque or expansion alone, in shafts; 0: none asked. */
static double edge_shafts(const struct code_facts *f)
{
	if (f->type == TORQUE_CONTROLLED)
		return ACI_EDGE_TORQUE;
	if (f->type == DISPLACEMENT_CONTROLLED)
		return ACI_EDGE_DISPLACEMENT;
	return is_torqued(f) ? ACI_EDGE_NEAR : 0;
}

static void edge_row(const struct code_facts *f, const struct pattern *p, bool edges_known,
                     struct limit_rows *rows)
{
	const struct number *tested = &f->given->least_edge;
	const struct number *aggregate = &f->cell->slab.concrete.aggregate;
	double grain = is_known(*aggregate) ? aggregate->value : ACI_DEFAULT_AGGREGATE;
	double asked = edge_shafts(f) * f->shaft;
	bool by_test = is_known(*tested) && !f->cast_in;
	if (is_known(*tested))
		asked = by_test ? tested->value : fmax(asked, tested->value);
	asked = fmax(asked, ACI_COVER);
	if (!f->cast_in)
		asked = fmax(asked, ACI_AGGREGATES * grain);
	struct code_limit *row = limit_add(rows, "distance to an edge or joint",
	                             f->cast_in ? "ACI 318-19 Table 17.9.2(a); S17, S18"
	                                        : "ACI 318-19 Table 17.9.2(b); S17",
	                             DIM_LENGTH, pattern_least_edge(p), asked);
	/* clear of all edges by statement: nothing is near, whatever is asked */
	if (row->is < HUGE_VAL || !edges_known)
		limit_lacks(row, by_test || f->shaft > 0 || edge_shafts(f) == 0, PRODUCT "shaft");
	limit_lacks(row, edges_known, "slab.clear");
}

/* --- thickness, 17.9.4 ---------------------------------------------------------------------- */

static void thickness_row(const struct code_facts *f, struct limit_rows *rows)
{
	const struct number *tested = &f->cell->anchors.product.least_slab;
	struct code_limit *row;
	if (f->cast_in)
		return;
	if (is_known(*tested)) {
		row = limit_add(rows, "thickness of the slab",
		          "ACI 318-19 17.9.4, least thickness by test", DIM_LENGTH, f->thickness,
		          tested->value);
	} else if (f->type == ADHESIVE) {
		row = limit_add(rows, "thickness of the slab", "least thickness by test",
		                DIM_LENGTH, f->thickness, 0);
		limit_lacks(row, false, PRODUCT "least_slab");
	} else {
		row = limit_add(rows, "embedment in a slab of this thickness", "ACI 318-19 17.9.4",
		          DIM_LENGTH, f->embedment,
		          fmax(ACI_DEPTH_SHARE * f->thickness, f->thickness - ACI_DEPTH_LEFT));
		row->at_most = true;
		limit_lacks(row, f->embedment > 0, PRODUCT "embedment");
	}
	limit_lacks(row, f->thickness > 0, "slab.thickness.value");
}

/* --- scope, 17.3 ---------------------------------------------------------------------------- */

static void embedment_rows(const struct code_facts *f, const char *what, const char *clause,
                           double least, double most, struct limit_rows *rows)
{
	for (int at_most = 0; at_most <= 1; at_most++) {
		struct code_limit *row = limit_add(rows, what, clause, DIM_LENGTH, f->embedment,
		                             at_most ? most : least);
		row->at_most = at_most;
		limit_lacks(row, f->embedment > 0, PRODUCT "embedment");
		limit_lacks(row, f->shaft > 0, PRODUCT "shaft");
	}
}

static void scope_rows(const struct code_facts *f, struct limit_rows *rows)
{
	struct code_limit *row = limit_add(rows, "diameter of the anchor", "ACI 318-19 17.3.2",
	                             DIM_LENGTH, f->shaft, ACI_GREATEST_SHAFT);
	row->at_most = true;
	limit_lacks(row, f->shaft > 0, PRODUCT "shaft");
	row = limit_add(rows, "strength of the concrete", "ACI 318-19 19.2.1.1; S19", DIM_STRESS,
	          f->concrete, ACI_LEAST_CONCRETE);
	limit_lacks(row, f->concrete > 0, "slab.concrete.strength");
	if (f->type == ADHESIVE)
		embedment_rows(f, "embedment of an adhesive anchor", "ACI 318-19 17.3.3",
		               ACI_ADHESIVE_LEAST * f->shaft, ACI_ADHESIVE_MOST * f->shaft, rows);
	if (f->type == SCREW)
		embedment_rows(f, "embedment of a screw", "ACI 318-19 17.3.4",
		               fmax(ACI_SCREW_LEAST * f->shaft, ACI_SCREW_EMBEDMENT),
		               ACI_SCREW_MOST * f->shaft, rows);
	if (f->type != CAST_IN_HOOKED)
		return;
	/* a longer hook counts up to 4.5 da and is no fault */
	row = limit_add(rows, "length of the hook", "ACI 318-19 17.6.3.2.2b", DIM_LENGTH,
	          f->given->hook_length.value, ACI_HOOK_LEAST * f->shaft);
	limit_lacks(row, is_known(f->given->hook_length), STRENGTH "hook_length");
	limit_lacks(row, f->shaft > 0, PRODUCT "shaft");
}

/* --- yes or no: 1 is asked ------------------------------------------------------------------ */

static void qualified_row(const char *what, const char *clause, const struct word *word,
                          const char *path, struct limit_rows *rows)
{
	bool yes = is_known(*word) && word->value == YES;
	limit_lacks(limit_add(rows, what, clause, DIM_COUNT, yes ? 1 : 0, 1), is_known(*word),
	            path);
}

static void qualified_rows(const struct code_facts *f, struct limit_rows *rows)
{
	if (f->cast_in)
		return;
	if (f->cracked)
		qualified_row("anchor qualified for cracked concrete (1: yes)", "ACI 318-19 17.1.2",
		              &f->cell->anchors.product.qualified_cracked,
		              PRODUCT "qualified_cracked", rows);
	/* the word none, or nothing said, asks for no earthquake */
	if (is_known(f->cell->earthquake.code))
		qualified_row("anchor qualified for earthquakes (1: yes)", "ACI 318-19 17.10.3",
		              &f->given->aci.seismic, STRENGTH "aci318.seismic", rows);
}

size_t aci_layout(const struct code_facts *facts, const struct pattern *pattern, bool edges_known,
                  struct code_limit out[MAX_CODE_LIMITS])
{
	struct limit_rows rows = {out, 0};
	if (!facts->type_known) {
		limit_lacks(limit_add(&rows, "limits of the anchor's type", "ACI 318-19 17.3, 17.9",
		                      DIM_COUNT, 0, 0),
		            false, PRODUCT "type");
		return rows.count;
	}
	spacing_row(facts, pattern, &rows);
	edge_row(facts, pattern, edges_known, &rows);
	thickness_row(facts, &rows);
	scope_rows(facts, &rows);
	qualified_rows(facts, &rows);
	return rows.count;
}
