/* Limits that EN 1992-4 and the anchor's sheet set to the layout: spacing, edge distance, thickness
 * and the scope of the equations. The numbers of the scope are from memory (S38). */
#include "en_values.h"
#include "layout.h"

#include <math.h>

#define PRODUCT "anchors.product."
#define STRENGTH PRODUCT "strength."

/* what the sheet asks of the layout */
static void sheet_rows(const struct code_facts *f, const struct pattern *p, bool edges_known,
                       struct limit_rows *rows)
{
	const struct anchor_strength *given = f->given;
	const struct number *slab = &f->cell->anchors.product.least_slab;
	bool headed = f->type_known && f->type == CAST_IN_HEADED;
	bool by_shaft = headed && !is_known(given->least_spacing) && f->shaft > 0;
	struct code_limit *row = limit_add(
		rows, "spacing of the anchors", "EN 1992-4 7.2.1.7 s_min", DIM_LENGTH,
		pattern_least_spacing(p),
		by_shaft ? EN_HEADED_SPACING * f->shaft : given->least_spacing.value);
	if (p->count > 1)
		limit_lacks(row, by_shaft || is_known(given->least_spacing),
		            STRENGTH "least_spacing");
	row = limit_add(rows, "distance to an edge or joint", "EN 1992-4 7.2.1.7 c_min", DIM_LENGTH,
	          pattern_least_edge(p), given->least_edge.value);
	/* clear of all edges by statement: nothing is near, whatever is asked */
	if (row->is < HUGE_VAL || !edges_known)
		limit_lacks(row, is_known(given->least_edge), STRENGTH "least_edge");
	limit_lacks(row, edges_known, "slab.clear");
	row = limit_add(rows, "thickness of the slab", "EN 1992-4 7.2.1.7 h_min", DIM_LENGTH,
	          f->thickness, slab->value);
	limit_lacks(row, is_known(*slab), PRODUCT "least_slab");
	limit_lacks(row, f->thickness > 0, "slab.thickness.value");
}

static void at_most(struct limit_rows *rows, const char *what, enum dimension dimension, double is,
                    double asked, const char *path)
{
	struct code_limit *row = limit_add(rows, what, "EN 1992-4 1; S38", dimension, is, asked);
	row->at_most = true;
	limit_lacks(row, is > 0, path);
}

static void at_least(struct limit_rows *rows, const char *what, enum dimension dimension, double is,
                     double asked, const char *path)
{
	struct code_limit *row = limit_add(rows, what, "EN 1992-4 1; S38", dimension, is, asked);
	limit_lacks(row, is > 0, path);
}

static void scope_rows(const struct code_facts *f, struct limit_rows *rows)
{
	at_least(rows, "embedment", DIM_LENGTH, f->embedment, EN_LEAST_EMBEDMENT,
	         PRODUCT "embedment");
	at_least(rows, "diameter of the anchor", DIM_LENGTH, f->shaft, EN_LEAST_SHAFT,
	         PRODUCT "shaft");
	at_most(rows, "diameter of the anchor", DIM_LENGTH, f->shaft, EN_GREATEST_SHAFT,
	        PRODUCT "shaft");
	at_least(rows, "strength of the concrete", DIM_STRESS, f->concrete, EN_LEAST_FCK,
	         "slab.concrete.strength");
	at_most(rows, "tensile strength of the steel", DIM_STRESS, f->ultimate,
	        EN_K6_HARD_ULTIMATE, STRENGTH "ultimate");
	if (f->type_known && f->type == ADHESIVE && f->embedment > 0 && f->shaft > 0) {
		at_least(rows, "embedment of a bonded anchor", DIM_LENGTH, f->embedment,
		         EN_BONDED_LEAST * f->shaft, PRODUCT "embedment");
		at_most(rows, "embedment of a bonded anchor", DIM_LENGTH, f->embedment,
		        EN_BONDED_MOST * f->shaft, PRODUCT "embedment");
	}
}

/* what is yes or no: 1 is asked */
static void kind_rows(const struct code_facts *f, struct limit_rows *rows)
{
	const struct number *light = &f->cell->slab.concrete.lightweight;
	const struct word *qualified = &f->cell->anchors.product.qualified_cracked;
	struct code_limit *row = limit_add(
		rows, "anchor of a type that the code covers (1: yes; hooked ones are not)",
		"EN 1992-4 1.2", DIM_COUNT, f->type_known && f->type == CAST_IN_HOOKED ? 0 : 1, 1);
	limit_lacks(row, f->type_known, PRODUCT "type");
	if (is_known(*light) && light->value < 1)
		limit_add(rows, "normal-weight concrete (1: yes)", "EN 1992-4 1.5", DIM_FACTOR,
		    light->value, 1);
	if (f->type_known && f->cast_in)
		return;
	if (!f->cracked)
		return;
	row = limit_add(rows, "anchor qualified for cracked concrete (1: yes)", "EN 1992-4 4.7",
	          DIM_COUNT, is_known(*qualified) && qualified->value == YES ? 1 : 0, 1);
	limit_lacks(row, is_known(*qualified), PRODUCT "qualified_cracked");
}

size_t en_layout(const struct code_facts *facts, const struct pattern *pattern, bool edges_known,
                 struct code_limit out[MAX_CODE_LIMITS])
{
	struct limit_rows rows = {out, 0};
	sheet_rows(facts, pattern, edges_known, &rows);
	scope_rows(facts, &rows);
	kind_rows(facts, &rows);
	return rows.count;
}
