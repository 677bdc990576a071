#include "load_model.h"

bool reaction_known(const struct reaction *r)
{
	return is_known(r->vertical) || is_known(r->horizontal) || is_known(r->tilting) ||
	       is_known(r->twisting);
}

bool load_model_given(const struct cell *cell)
{
	const struct arm *arm = &cell->arm;
	/* the word none says that there is nothing, not that it will be counted */
	return cell->parts.count > 0 || cell->base.count > 0 || cell->loads.count > 0 ||
	       is_known(arm->mount) || is_known(arm->mass) || is_known(arm->payload) ||
	       reaction_known(&arm->reaction[ARM_NORMAL]) ||
	       reaction_known(&arm->reaction[ARM_EMERGENCY_STOP]);
}
