/* Pullout, ACI 318-19 17.6.3: of a head or hook by the code, of a post-installed anchor by test. */
#include "aci_parts.h"
#include "aci_values.h"

#include <math.h>

/* HUGE_VAL where the sheet says that pullout does not govern */
static double by_sheet(const struct number *given, const struct word *never, struct trace *trace)
{
	if (is_known(*never)) {
		trace_step(trace, "pullout_governs", "", 0, DIM_COUNT, "input",
		           "the sheet says that pullout does not govern: no check");
		return HUGE_VAL;
	}
	double stated = trace_input(trace, "N_p", given, DIM_FORCE, "pullout by test");
	return trace_step(trace, "N_pn", "N_p", stated, DIM_FORCE, "ACI 318-19 17.6.3.2.1; S6",
	                  "pullout in this state of the concrete");
}

static double of_head(const struct code_facts *f, double fc, struct trace *trace)
{
	double area = aci_head(f, trace);
	return trace_step(trace, "N_p", "8 * A_brg * f_c", ACI_HEAD * area * fc, DIM_FORCE,
	                  "ACI 318-19 17.6.3.2.2a", "pullout of the head");
}

static double of_hook(const struct code_facts *f, double fc, struct trace *trace)
{
	double d = aci_shaft(f, trace);
	double hook = trace_input(trace, "e_h_0", &f->given->hook_length, DIM_LENGTH,
	                          "length of the hook");
	double counted = trace_step(trace, "e_h", "min(e_h_0, 4.5 * d_a)",
	                            fmin(hook, ACI_HOOK_MOST * d), DIM_LENGTH,
	                            "ACI 318-19 17.6.3.2.2b", "counts at most");
	return trace_step(trace, "N_p", "0.9 * f_c * e_h * d_a", ACI_HOOK * fc * counted * d,
	                  DIM_FORCE, "ACI 318-19 17.6.3.2.2b", "pullout of the hook");
}

static double cast_in(const struct code_facts *f, bool cracked, struct trace *trace)
{
	double fc = aci_concrete(f, trace);
	double basic = f->type == CAST_IN_HOOKED ? of_hook(f, fc, trace) : of_head(f, fc, trace);
	double state = trace_step(trace, "psi_c_P", "", cracked ? 1 : ACI_PULLOUT_UNCRACKED,
	                          DIM_FACTOR, "ACI 318-19 17.6.3.3",
	                          cracked ? "cracked concrete" : "uncracked concrete");
	return trace_step(trace, "N_pn", "psi_c_P * N_p", state * basic, DIM_FORCE,
	                  "ACI 318-19 17.6.3.1", "pullout");
}

static double nominal(const struct code_facts *f, bool earthquake, struct trace *trace)
{
	const struct by_state *given = &f->given->aci.pullout;
	const struct never_governs *never = &f->given->aci.no_pullout;
	if (f->cast_in)
		return cast_in(f, f->cracked || earthquake, trace);
	if (earthquake)
		return by_sheet(&given->seismic, &never->seismic, trace);
	if (f->cracked)
		return by_sheet(&given->cracked, &never->cracked, trace);
	return by_sheet(&given->uncracked, &never->uncracked, trace);
}

double aci_pullout(const struct code_facts *f, bool earthquake, struct trace *trace)
{
	double strength = nominal(f, earthquake, trace);
	if (!(strength < HUGE_VAL))
		return strength;
	double phi = aci_phi_concrete(f, false, trace);
	return aci_design(phi, strength, earthquake, "phi_N_pn", "N_pn", trace);
}
