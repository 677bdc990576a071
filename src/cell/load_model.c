#include "load_model.h"

bool reaction_known(const struct reaction *r)
{
	return is_known(r->vertical) || is_known(r->horizontal) || is_known(r->tilting) ||
	       is_known(r->twisting);
}

bool chain_given(const struct cell *cell)
{
	return cell->arm.chain.joints.count > 0;
}

static bool swing_motion_known(const struct swing_motion *m)
{
	return is_known(m->speed) || is_known(m->acceleration) || is_known(m->start_time) ||
	       is_known(m->stop) || is_known(m->stop_time);
}

bool swing_given(const struct cell *cell)
{
	const struct arm_swing *s = &cell->arm.swing;
	return is_known(s->axes) || is_known(s->moving_mass) || is_known(s->radius) ||
	       is_known(s->payload_radius) || is_known(s->reach) || is_known(s->axis_height) ||
	       is_known(s->peak_factor) || swing_motion_known(&s->vertical) ||
	       swing_motion_known(&s->horizontal);
}

bool history_given(const struct cell *cell)
{
	return cell->arm.history.count > 0;
}

bool own_motion_given(const struct cell *cell)
{
	return chain_given(cell) || swing_given(cell) || history_given(cell);
}

bool load_model_given(const struct cell *cell)
{
	const struct arm *arm = &cell->arm;
	/* the word none says that there is nothing, not that it will be counted */
	return cell->parts.count > 0 || cell->base.count > 0 || cell->loads.count > 0 ||
	       is_known(arm->mount) || is_known(arm->mass) || is_known(arm->payload) ||
	       reaction_known(&arm->reaction[ARM_NORMAL]) ||
	       reaction_known(&arm->reaction[ARM_EMERGENCY_STOP]) || own_motion_given(cell);
}

bool earthquake_stated(const struct cell *cell)
{
	const struct earthquake *q = &cell->earthquake;
	const struct given *given[] = {
		&q->code.given, &q->sds.given, &q->amplification.given, &q->response.given,
		&q->importance.given, &q->overstrength.given, &q->resonance.given,
		&q->building_period.given, &q->building_response.given,
		&q->building_importance.given, &q->building_overstrength.given,
		&q->ground_share.given, &q->soil.given, &q->behaviour.given,
		&q->height_share.given};
	/* a key with the word unknown states it too: then what is missing is missing */
	for (size_t i = 0; i < sizeof given / sizeof given[0]; i++)
		if (given[i]->origin != ABSENT || given[i]->mark.line > 0)
			return true;
	return q->period_ratio.given.origin > DEFAULT || q->period_ratio.given.mark.line > 0;
}
