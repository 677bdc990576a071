/* anchor.spacing: distance to the next anchor against the first row of the data sheet's spacing
 * table.
 *
 * Source: the anchor's data sheet; without a table neighbours within 3 embedments influence each
 * other (ACI 318-19 17.5.1.3.1, EN 1992-4 7.2.1.4), which no rating covers. Identities: independent
 * of loads and of turning the cell. */
#include "check_files.h"
#include "judging.h"
#include "rating_strength.h"

void anchor_spacing_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct product *product = &judging->cell->anchors.product;
	const struct spacing_row *row = product->rating.spacing.rows;
	const struct setting *setting = judging->setting;
	double distance = setting->nearest_anchor[anchor], reach = spacing_reach(product);
	if (setting->nearest_anchor_index[anchor] < 0) {
		out->said_numbers = "a single anchor has no neighbour";
		return;
	}
	if (product->rating.spacing.count == 0) {
		if (reach == 0)
			finding_lacks(out, "anchors.product.embedment");
		else if (distance < reach)
			finding_lacks(out, "anchors.product.rating.spacing");
		out->said_numbers = sentence(judging,
		                             "anchors A%d and A%d are %s apart; from %s on they do "
		                             "not influence each other",
		                             anchor + 1, setting->nearest_anchor_index[anchor] + 1,
		                             shown(judging, distance, DIM_LENGTH),
		                             shown(judging, reach, DIM_LENGTH));
		return;
	}
	trace_step(judging->trace, "s_least", "", row[0].distance.value, DIM_LENGTH,
	           "spacing table, first row", "");
	trace_step(judging->trace, "s", "", distance, DIM_LENGTH, "pattern", "to the next anchor");
	finding_numbers(out, row[0].distance.value, distance, DIM_LENGTH,
	                sentence(judging, "anchors A%d and A%d are %s apart, at least %s asked for",
	                         anchor + 1, setting->nearest_anchor_index[anchor] + 1,
	                         shown(judging, distance, DIM_LENGTH),
	                         shown(judging, row[0].distance.value, DIM_LENGTH)),
	                "fewer anchors, or a pattern farther apart");
	trace_step(judging->trace, "ratio", "s_least / s", out->ratio, DIM_FACTOR, "",
	           "must be at most 1");
}
