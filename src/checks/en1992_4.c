/* en1992_4.*: the ways in which anchors fail by EN 1992-4:2018, a check each.
 *
 * Source: EN 1992-4 7.2.1 to 7.2.3, read second-hand: every clause and doubt beside its equation in
 * strength/en_*.c; numbered assumptions in strength/code_assumptions.c. Loads: EN 1990 combinations
 * with partial factors. Range: the anchor's approval; a stiff base (6.2.1, base.stiff). Which
 * loads: as aci318.c; steel is paired anchor by anchor (7.54), concrete by its most used modes
 * (7.55, 7.56). Identities: every ratio of one mode is proportional to the loads. */
#include "check_files.h"
#include "code_judging.h"

/* What the table asks of a mode: whether it applies, its ratio for the sweep, its judgement. */
#define MODE(name, mode) \
	const char *en1992_4_##name##_left_out(const struct cell *cell) \
	{ \
		return mode_left_out(cell, EN1992_4, mode); \
	} \
	double en1992_4_##name##_ratio(const struct judging *judging, int anchor) \
	{ \
		(void)anchor; \
		return mode_ratio_of(judging, EN1992_4, mode); \
	} \
	void en1992_4_##name##_judge(const struct judging *judging, int anchor, \
	                             struct finding *out) \
	{ \
		(void)anchor; \
		judge_mode(judging, EN1992_4, mode, out); \
	}

MODE(steel_tension, STEEL_TENSION)
MODE(cone, CONE)
MODE(pullout, PULLOUT)
MODE(blowout, BLOWOUT)
MODE(bond, BOND)
MODE(splitting, SPLITTING)
MODE(steel_shear, STEEL_SHEAR)
MODE(edge, EDGE)
MODE(pryout, PRYOUT)
#undef MODE

double en1992_4_interaction_steel_ratio(const struct judging *judging, int anchor)
{
	(void)anchor;
	return together_ratio_of(judging, EN1992_4, true);
}

void en1992_4_interaction_steel_judge(const struct judging *judging, int anchor,
                                      struct finding *out)
{
	(void)anchor;
	judge_together(judging, EN1992_4, true, out);
}

double en1992_4_interaction_concrete_ratio(const struct judging *judging, int anchor)
{
	(void)anchor;
	return together_ratio_of(judging, EN1992_4, false);
}

void en1992_4_interaction_concrete_judge(const struct judging *judging, int anchor,
                                         struct finding *out)
{
	(void)anchor;
	judge_together(judging, EN1992_4, false, out);
}

void en1992_4_layout_judge(const struct judging *judging, int anchor, struct finding *out)
{
	(void)anchor;
	judge_layout(judging, EN1992_4, out);
}
