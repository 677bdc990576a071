/* Steel in tension and in shear, ACI 318-19 17.6.1 and 17.7.1, with the bending of anchors that
 * stand off (S11). */
#include "aci_parts.h"
#include "aci_values.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* 17.6.1.2: futa counts up to 1.9 fya and 860 MPa */
static double counted_ultimate(const struct code_facts *f, struct trace *trace)
{
	code_input(trace, "f_uta", &f->given->ultimate, f->ultimate, DIM_STRESS,
	          "tensile strength of the steel");
	code_input(trace, "f_ya", &f->given->yield, f->yield, DIM_STRESS, "yield strength of it");
	return trace_step(trace, "f_uta_1", "min(f_uta, 1.9 * f_ya, 860)",
	                  fmin(f->ultimate, fmin(ACI_FUTA_YIELDS * f->yield, ACI_FUTA_MOST)),
	                  DIM_STRESS, "ACI 318-19 17.6.1.2", "counts at most");
}

static double tensile_area(const struct code_facts *f, struct trace *trace)
{
	return code_input(trace, "A_se_N", &f->cell->anchors.product.tensile_area, f->tensile_area,
	                 DIM_AREA, "stressed area in tension");
}

double aci_nominal_tension(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->aci.steel_tension;
	if (is_known(*given))
		return trace_input(trace, "N_sa", given, DIM_FORCE, "steel, by the sheet");
	double area = tensile_area(f, trace), ultimate = counted_ultimate(f, trace);
	return trace_step(trace, "N_sa", "A_se_N * f_uta_1", area * ultimate, DIM_FORCE,
	                  "ACI 318-19 17.6.1.2", "steel");
}

/* Steel is not reduced in an earthquake, 17.10.5.4. */
double aci_steel_tension(const struct code_facts *f, bool earthquake, struct trace *trace)
{
	(void)earthquake;
	double strength = aci_nominal_tension(f, trace), phi = aci_phi_steel(f, true, trace);
	return trace_step(trace, "phi_N_sa", "phi_N * N_sa", phi * strength, DIM_FORCE,
	                  "ACI 318-19 17.5.2", "design strength");
}

/* --- shear ---------------------------------------------------------------------------------- */

static double bolt_shear(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->aci.steel_shear, *own = &f->given->shear_area;
	if (is_known(*given))
		return trace_input(trace, "V_sa_0", given, DIM_FORCE, "steel, by the sheet");
	double ultimate = counted_ultimate(f, trace);
	double area = code_input(trace, "A_se_V",
	                        is_known(*own) ? own : &f->cell->anchors.product.tensile_area,
	                        f->shear_area, DIM_AREA, "stressed area in shear");
	return trace_step(trace, "V_sa_0", "0.6 * A_se_V * f_uta_1",
	                  ACI_SHEAR_SHARE * area * ultimate, DIM_FORCE,
	                  "ACI 318-19 17.7.1.2b; S20", "steel");
}

/* Vsa, Vsa,eq of a post-installed anchor, with the grout pad of 17.7.1.2.1 */
static double nominal_shear(const struct code_facts *f, bool earthquake, struct trace *trace)
{
	bool by_sheet = earthquake && !f->cast_in;
	double flat = by_sheet ? trace_input(trace, "V_sa_0", &f->given->aci.steel_shear_seismic,
	                                     DIM_FORCE, "steel in earthquakes, by the sheet")
	                       : bolt_shear(f, trace);
	if (f->lever_arm != GROUT_PAD)
		return trace_step(trace, "V_sa", "V_sa_0", flat, DIM_FORCE, "ACI 318-19 17.7.1.2",
		                  "no grout pad");
	return trace_step(trace, "V_sa", "0.80 * V_sa_0", ACI_GROUT_PAD * flat, DIM_FORCE,
	                  "ACI 318-19 17.7.1.2.1; S13", "on a grout pad");
}

/* The shear that bends a round bar of the tensile area to its yield strength, S11. */
static double bending(const struct code_facts *f, double tension, double phi, struct trace *trace)
{
	double pulled = aci_steel_tension(f, false, trace);
	double area = tensile_area(f, trace), ultimate = counted_ultimate(f, trace);
	double d = trace_step(trace, "d_se", "sqrt(4 * A_se_N / 3.14159265358979323846)",
	                      sqrt(4 * area / pi), DIM_LENGTH, "S11",
	                      "diameter of the stressed area");
	double section = trace_step(trace, "S_se",
	                            "3.14159265358979323846 * d_se * d_se * d_se / 32",
	                            pi * d * d * d / 32, DIM_FACTOR, "mechanics; S11",
	                            "elastic section modulus [mm3]");
	bool held = is_known(f->given->held_at_base) && f->given->held_at_base.value == YES;
	double alpha = trace_step(trace, "alpha_M", "", held ? 2 : 1, DIM_FACTOR, "mechanics; S11",
	                          held ? "held against turning at the base" : "free to turn");
	double arm = trace_step(trace, "l_a", "", f->lever, DIM_LENGTH, "S11",
	                        "lever arm, a3 and half of the base plate counted in");
	trace_step(trace, "N_ua", "", tension, DIM_FORCE, "", "tension on this anchor");
	double left = trace_step(trace, "left", "max(0, 1 - N_ua / phi_N_sa)",
	                         fmax(0, 1 - tension / pulled), DIM_FACTOR, "mechanics; S11",
	                         "what the tension leaves");
	return trace_step(trace, "phi_V_bend",
	                  "phi_V * alpha_M * S_se * min(f_ya, f_uta_1) * left / l_a",
	                  phi * alpha * section * fmin(f->yield, ultimate) * left / arm, DIM_FORCE,
	                  "mechanics; S11", "bending across the gap");
}

double aci_steel_shear(const struct code_facts *f, double tension, bool earthquake,
                       struct trace *trace)
{
	double strength = nominal_shear(f, earthquake, trace);
	double phi = aci_phi_steel(f, false, trace);
	if (f->lever_arm != LEVER_ARM)
		return trace_step(trace, "phi_V_sa", "phi_V * V_sa", phi * strength, DIM_FORCE,
		                  "ACI 318-19 17.5.2", "design strength");
	double bent = bending(f, tension, phi, trace);
	return trace_step(trace, "phi_V_sa", "min(phi_V * V_sa, phi_V_bend)",
	                  fmin(phi * strength, bent), DIM_FORCE, "ACI 318-19 17.5.2; S11, S12",
	                  "design strength with the lever arm");
}
