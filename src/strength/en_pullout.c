/* Pull-out of headed anchors and of mechanical ones, EN 1992-4 7.2.1.5. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>

/* the sheet's value; HUGE_VAL where it says that pull-out does not govern */
static double by_sheet(const struct code_facts *f, const struct number *given,
                       const struct word *never, struct trace *trace)
{
	if (is_known(*never)) {
		trace_step(trace, "pull_out_governs", "", 0, DIM_COUNT, "input",
		           "the sheet says that pull-out does not govern: no check");
		return HUGE_VAL;
	}
	double stated = trace_input(trace, "N_p", given, DIM_FORCE, "N_Rk,p of the sheet");
	double factor = en_by_concrete(f, trace);
	return trace_step(trace, "N_Rk_p", "N_p * psi_f", stated * factor, DIM_FORCE,
	                  "EN 1992-4 7.2.1.5; S23", "pull-out");
}

static double of_head(const struct code_facts *f, bool cracked, struct trace *trace)
{
	double k = trace_step(trace, "k_2", "", cracked ? EN_K2_CRACKED : EN_K2_UNCRACKED,
	                      DIM_FACTOR, "EN 1992-4 (7.11)",
	                      cracked ? "cracked concrete" : "uncracked concrete");
	double area = code_input(trace, "A_h", &f->given->head_area, f->head_area, DIM_AREA,
	                       "bearing area of the head");
	double fck = en_fck(f, trace);
	return trace_step(trace, "N_Rk_p", "k_2 * A_h * f_ck", k * area * fck, DIM_FORCE,
	                  "EN 1992-4 (7.11)", "pull-out");
}

double en_pullout_characteristic(const struct code_facts *f, bool cracked, bool earthquake,
                                 struct trace *trace)
{
	const struct by_state *given = &f->given->en.pullout;
	const struct never_governs *never = &f->given->en.no_pullout;
	if (earthquake)
		return by_sheet(f, &given->seismic, &never->seismic, trace);
	if (f->type_known && f->type == CAST_IN_HEADED)
		return of_head(f, cracked, trace);
	if (cracked)
		return by_sheet(f, &given->cracked, &never->cracked, trace);
	return by_sheet(f, &given->uncracked, &never->uncracked, trace);
}

double en_pullout(const struct code_facts *f, bool earthquake, size_t in_group,
                  struct trace *trace)
{
	struct group_strength one = {.count = in_group};
	double strength = en_pullout_characteristic(f, f->cracked, earthquake, trace);
	en_finish(f, PULLOUT, strength, strength, "N_Rd_p", "N_Rk_p", earthquake, &one, trace);
	return earthquake ? one.seismic : one.design;
}
