/* anchor.length: the anchor is long enough to reach its embedment through base, stand-off and
 * topping.
 *
 * Source: geometry: length - base - stand-off - topping - projection >= embedment of
 * the anchor's end (nominal where the data sheet gives it, else effective). Topping and
 * screed hold no anchor. Range: through-setting anchors; cast-in and bonded rods by the same sum.
 * Identities: independent of loads. */
#include "check_files.h"
#include "judging.h"

void anchor_length_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct anchors *anchors = &judging->cell->anchors;
	const struct product *product = &anchors->product;
	const struct number *length = &product->length, *plate = &anchors->plate_thickness,
			    *projection = &product->projection;
	const struct number *stand_off = &judging->cell->stand_off.height,
			    *topping = &judging->cell->slab.topping;
	struct trace *trace = judging->trace;
	(void)anchor;
	if (!is_known(*length) || !is_known(*plate) || !is_known(*projection) ||
	    !is_known(*stand_off) || !is_known(*topping) || !is_known(product->embedment))
		return;      /* the table of checks lists them as needed */
	trace_input(trace, "l", length, DIM_LENGTH, "length of the anchor");
	trace_input(trace, "t_plate", plate, DIM_LENGTH, "base at the anchor");
	trace_input(trace, "t_gap", stand_off, DIM_LENGTH, "stand-off");
	trace_input(trace, "t_topping", topping, DIM_LENGTH, "screed, tile");
	trace_input(trace, "t_thread", projection, DIM_LENGTH, "thread above the base");
	double left = length->value - plate->value - stand_off->value - topping->value -
	              projection->value;
	trace_step(trace, "l_left", "l - t_plate - t_gap - t_topping - t_thread", left, DIM_LENGTH,
	           "", "left for embedment");
	const struct number *depth = nominal_embedment(product);
	trace_input(trace, "h_nom", depth, DIM_LENGTH, "embedment of the anchor's end");
	const char *said = sentence(judging, "%s of the anchor are left for the embedment of %s",
	                            shown(judging, left, DIM_LENGTH),
	                            shown(judging, depth->value, DIM_LENGTH));
	const char *remedy = sentence(judging, "an anchor at least %s longer%s",
	                              shown_up(judging, depth->value - left, DIM_LENGTH),
	                              topping->value > 0 ? ", or remove the topping below the base"
	                                                 : "");
	if (left <= 0) {
		finding_fails(out, said, remedy);
		return;
	}
	finding_numbers(out, depth->value, left, DIM_LENGTH, said, remedy);
	trace_step(trace, "ratio", "h_nom / l_left", out->ratio, DIM_FACTOR, "",
	           "must be at most 1");
}
