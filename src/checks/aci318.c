/* aci318.*: the ways in which anchors fail by ACI 318-19 chapter 17, a check each.
 *
 * Source: ACI 318-19 17.5 to 17.8, read second-hand: every clause and doubt beside its equation in
 * strength/aci_*.c; numbered assumptions in strength/code_assumptions.c. Loads: strength level,
 * ASCE 7 2.3 combinations. Range: 17.3; one product for all anchors; a stiff base (base.stiff).
 * Which loads: tension modes, and with free shear the shear modes too, from any state; together
 * from one state. Identities: without a lever arm every ratio is proportional to the loads; that of
 * 17.8 is the largest of tension, shear, and their sum over 1.2. */
#include "check_files.h"
#include "code_judging.h"

/* What the table asks of a mode: whether it applies, its ratio for the sweep, its judgement. */
#define MODE(name, mode) \
	const char *aci318_##name##_left_out(const struct cell *cell) \
	{ \
		return mode_left_out(cell, ACI318, mode); \
	} \
	double aci318_##name##_ratio(const struct judging *judging, int anchor) \
	{ \
		(void)anchor; \
		return mode_ratio_of(judging, ACI318, mode); \
	} \
	void aci318_##name##_judge(const struct judging *judging, int anchor, struct finding *out) \
	{ \
		(void)anchor; \
		judge_mode(judging, ACI318, mode, out); \
	}

MODE(steel_tension, STEEL_TENSION)
MODE(breakout, CONE)
MODE(pullout, PULLOUT)
MODE(blowout, BLOWOUT)
MODE(bond, BOND)
MODE(sustained, BOND_SUSTAINED)
MODE(steel_shear, STEEL_SHEAR)
MODE(edge, EDGE)
MODE(pryout, PRYOUT)
#undef MODE

double aci318_interaction_ratio(const struct judging *judging, int anchor)
{
	(void)anchor;
	return together_ratio_of(judging, ACI318, false);
}

void aci318_interaction_judge(const struct judging *judging, int anchor, struct finding *out)
{
	(void)anchor;
	judge_together(judging, ACI318, false, out);
}

void aci318_layout_judge(const struct judging *judging, int anchor, struct finding *out)
{
	(void)anchor;
	judge_layout(judging, ACI318, out);
}
