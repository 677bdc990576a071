/* stand_off: the gap between base and concrete, with what it does to the anchors.
 *
 * Source: EN 1992-4 6.2.2.3: no lever arm only with direct contact, or mortar of at most half the
 * anchor's diameter, at least 30 MPa and as strong as the concrete. The reduced-shear exit of that
 * clause is closed to a base that has moment. Screed and tile count as a gap: they are no concrete
 * (own reading, safe side). Identities: has no ratio. */
#include "check_files.h"
#include "judging.h"

void stand_off_judge(const struct judging *judging, int anchor, struct finding *out)
{
	const struct stand_off *stand_off = &judging->cell->stand_off;
	(void)anchor;
	switch (stand_off_kind(judging, out)) {
	case FLAT:
		out->said_numbers = "the base bears directly on the concrete";
		break;
	case FILLED_FLAT:
		out->said_numbers = sentence(
			judging, "%s of grout count as flat (at most half the anchor's diameter)",
			shown(judging, stand_off->height.value, DIM_LENGTH));
		break;
	case THICK_OR_OPEN:
		finding_doubts(
			out,
			sentence(judging,
		                 "%s of %s: the anchors bend under shear, which costs strength "
		                 "that no rating shows",
		                 shown(judging, stand_off->height.value, DIM_LENGTH),
		                 is_known(stand_off->filled) && stand_off->filled.value == YES
		                         ? "grout"
		                         : "open gap"),
			stand_off_remedy(judging));
		break;
	case ON_TOPPING:
		finding_doubts(
			out,
			sentence(judging,
		                 "%s of topping below the base: the anchors bend in it as in a gap",
		                 shown(judging, judging->cell->slab.topping.value, DIM_LENGTH)),
			"remove the topping below the base, or have an engineer check the anchors "
		        "in bending");
		break;
	case STAND_OFF_UNKNOWN:
		break;
	}
}
