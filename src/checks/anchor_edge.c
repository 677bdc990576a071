/* anchor.edge: distances to edges, joints and old holes.
 *
 * Source: first row of the data sheet's edge table; joints and saw cuts act as edges (common
 * practice, no source). Without a table: tension within 1.5 embedments, shear within the larger of
 * 6 embedments and 30 diameters is not covered by a rating (derived from the edge equations of EN
 * 1992-4 7.2.2.5). Old holes: at least twice their depth away, or nearer if filled with
 * high-strength mortar and the load not toward them (installation practice, from memory; an empty
 * hole at two diameters took up to 21 % of the tension in a published series of 60 tests, Chen,
 * Nassiri and Lamanna 2019). Identities: independent of loads; turning cell and slab together
 * changes nothing. */
#include "check_files.h"
#include "judging.h"
#include "rating_strength.h"

#include <math.h>

#define HOLE_DEPTHS 2.0      /* distance to an old hole, in its depths */

static void fails_at_hole(const struct judging *judging, double needed, double distance,
                          const char *said, struct finding *out)
{
	const char *remedy = "move the cell, or fill the hole and ask the engineer";
	finding_fails(out, said, remedy);
	if (distance <= 0)
		return;
	trace_step(judging->trace, "a_needed", "", needed, DIM_LENGTH, "twice the old hole's depth",
	           "");
	trace_step(judging->trace, "a", "", distance, DIM_LENGTH, "pattern, place and slab",
	           "to the old hole");
	finding_numbers(out, needed, distance, DIM_LENGTH, said, remedy);
	trace_step(judging->trace, "ratio", "a_needed / a", out->ratio, DIM_FACTOR, "",
	           "must be at most 1");
}

static void judge_hole(const struct judging *judging, int anchor, const struct old_hole *hole,
                       struct finding *out)
{
	const struct setting *setting = judging->setting;
	double distance = hypot(setting->anchor[anchor].x - hole->at.at[0],
	                        setting->anchor[anchor].y - hole->at.at[1]);
	if (!is_known(hole->at)) {
		finding_lacks(out, "slab.old_holes[].at");
	} else if (!is_known(hole->depth)) {
		finding_lacks(out, "slab.old_holes[].depth");
	} else if (distance < HOLE_DEPTHS * hole->depth.value) {
		const char *said = sentence(
			judging,
			"anchor A%d is %s from an old hole %s deep, nearer than twice its depth",
			anchor + 1, shown(judging, distance, DIM_LENGTH),
			shown(judging, hole->depth.value, DIM_LENGTH));
		if (!is_known(hole->filled))
			finding_lacks(out, "slab.old_holes[].filled");
		else if (hole->filled.value == NO)
			fails_at_hole(judging, HOLE_DEPTHS * hole->depth.value, distance, said,
			              out);
		else
			finding_doubts(out, said,
			               "move the cell, or ask the engineer whether the filled hole "
			               "counts");
	}
}

static void judge_old_holes(const struct judging *judging, int anchor, double reach,
                            struct finding *out)
{
	const struct list *holes = &judging->cell->slab.old_holes;
	/* a measured clear distance speaks for old holes as far as it speaks for edges */
	bool clear = reach > 0 && judging->setting->clear >= reach;
	if (!is_known(*holes) && !clear)
		finding_lacks(out, "slab.old_holes");
	if (holes->count > 0 && !judging->setting->placed) {
		finding_lacks(out,
		              is_known(judging->cell->standing_at) ? "cell.turned" : "cell.at");
		return;
	}
	for (size_t i = 0; i < holes->count; i++)
		judge_hole(judging, anchor, (const struct old_hole *)holes->rows + i, out);
}

/* Farthest distance at which an edge matters for this product; 0 when it cannot be told. */
static double reach_of_edges(const struct judging *judging, struct finding *out)
{
	const struct product *product = &judging->cell->anchors.product;
	double tension = edge_reach(product, TENSION), shear = edge_reach(product, SHEAR);
	if (tension == 0)
		finding_lacks(out, "anchors.product.embedment");
	else if (shear == 0)
		finding_lacks(out, "anchors.product.shaft");
	return tension > 0 && shear > 0 ? fmax(tension, shear) : 0;
}

void anchor_edge_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct setting *setting = judging->setting;
	const struct rating *rating = &judging->cell->anchors.product.rating;
	double reach = reach_of_edges(judging, out), nearest = setting->nearest_edge[anchor];
	bool any_edge = setting->placed && setting->nearest_edge_index[anchor] >= 0;
	judge_old_holes(judging, anchor, reach, out);
	if (out->failed)
		return;      /* the numbers are those of the old hole */
	if (reach > 0 && setting->clear >= reach) {
		out->said_numbers = sentence(
			judging,
			"clear of edges, joints and old holes by %s, more than the %s that matter",
			shown(judging, setting->clear, DIM_LENGTH),
			shown(judging, reach, DIM_LENGTH));
		return;
	}
	if (!setting->edges_known)
		finding_lacks_edges(judging, reach, out);
	if (!any_edge) {
		out->said_numbers = setting->edges_known ? "no edge or joint"
		                                         : "edges are not known";
		return;
	}
	out->edge = (unsigned)setting->nearest_edge_index[anchor] + 1;
	const char *what = setting->edges[setting->nearest_edge_index[anchor]].joint >= 0
	                           ? "a joint"
	                           : "an edge";
	if (rating->edge.count == 0) {
		if (nearest < reach)
			finding_lacks(out, "anchors.product.rating.edge");
		out->said_numbers = sentence(
			judging,
			"anchor A%d is %s from %s; within %s its rating needs an edge table",
			anchor + 1, shown(judging, nearest, DIM_LENGTH), what,
			shown(judging, reach, DIM_LENGTH));
		return;
	}
	double least = ((const struct edge_row *)rating->edge.rows)[0].distance.value;
	trace_step(judging->trace, "c_least", "", least, DIM_LENGTH, "edge table, first row", "");
	trace_step(judging->trace, "c_nearest", "", nearest, DIM_LENGTH, "pattern, place and slab",
	           "to the nearest edge or joint");
	if (nearest <= 0) {
		finding_fails(out, sentence(judging, "anchor A%d lies on %s", anchor + 1, what),
		              "move the cell");
		return;
	}
	finding_numbers(out, least, nearest, DIM_LENGTH,
	                sentence(judging, "anchor A%d is %s from %s, at least %s asked for",
	                         anchor + 1, shown(judging, nearest, DIM_LENGTH), what,
	                         shown(judging, least, DIM_LENGTH)),
	                "move the cell away from it");
	trace_step(judging->trace, "ratio", "c_least / c_nearest", out->ratio, DIM_FACTOR, "",
	           "must be at most 1");
}
