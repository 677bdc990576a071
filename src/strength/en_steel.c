/* Steel in tension and in shear without and with lever arm, EN 1992-4 7.2.1.3, 7.2.2.3. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

double en_steel_tension_characteristic(const struct code_facts *f, bool earthquake,
                                       struct trace *trace)
{
	const struct en1992_4_sheet *sheet = &f->given->en;
	const struct number *given = earthquake ? &sheet->steel_tension_seismic
	                                        : &sheet->steel_tension;
	if (earthquake || is_known(*given))
		return trace_input(trace, "N_Rk_s", given, DIM_FORCE, "steel, by the sheet");
	double area = code_input(trace, "A_s", &f->cell->anchors.product.tensile_area,
	                       f->tensile_area, DIM_AREA, "stressed area");
	double ultimate = code_input(trace, "f_uk", &f->given->ultimate, f->ultimate, DIM_STRESS,
	                           "tensile strength of the steel");
	return trace_step(trace, "N_Rk_s", "A_s * f_uk", area * ultimate, DIM_FORCE,
	                  "EN 1992-4 7.2.1.3", "steel");
}

double en_steel_tension(const struct code_facts *f, bool earthquake, struct trace *trace)
{
	double strength = en_steel_tension_characteristic(f, earthquake, trace);
	double gamma = en_gamma_ms_tension(f, trace);
	if (!earthquake)
		return trace_step(trace, "N_Rd_s", "N_Rk_s / gamma_Ms_N", strength / gamma,
		                  DIM_FORCE, "EN 1992-4 Table 4.1", "design strength");
	double alpha = en_alpha_eq(f, STEEL_TENSION, 1, trace);
	return trace_step(trace, "N_Rd_s_eq", "alpha_eq * N_Rk_s / gamma_Ms_N",
	                  alpha * strength / gamma, DIM_FORCE, "EN 1992-4 (C.8)",
	                  "design strength in an earthquake");
}

/* (7.34): V0Rk,s, short anchors in weak concrete less */
static double shear_single(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->en.steel_shear;
	double h = en_embedment(f, trace), d = en_shaft(f, trace), fck = en_fck(f, trace);
	bool brittle_base = h < EN_SHORT_ANCHOR * d && fck < EN_C20;
	double factor = trace_step(trace, "psi_short", "", brittle_base ? EN_SHORT_FACTOR : 1,
	                           DIM_FACTOR, "EN 1992-4 7.2.2.3.1",
	                           "0.8 for h_ef below 5 d in concrete below C20/25");
	if (is_known(*given)) {
		double stated = trace_input(trace, "V_s", given, DIM_FORCE, "V0_Rk,s of the sheet");
		return trace_step(trace, "V0_Rk_s", "psi_short * V_s", factor * stated, DIM_FORCE,
		                  "EN 1992-4 (7.34)", "steel of one anchor");
	}
	double area = code_input(trace, "A_sV",
	                       is_known(f->given->shear_area)
	                               ? &f->given->shear_area
	                               : &f->cell->anchors.product.tensile_area,
	                       f->shear_area, DIM_AREA, "stressed area in shear");
	double ultimate = code_input(trace, "f_uk", &f->given->ultimate, f->ultimate, DIM_STRESS,
	                           "tensile strength of the steel");
	double k = trace_step(trace, "k_6", "",
	                      ultimate <= EN_K6_SOFT_ULTIMATE ? EN_K6_SOFT : EN_K6_HARD, DIM_FACTOR,
	                      "EN 1992-4 (7.34)", "0.6 up to f_uk = 500 MPa, 0.5 up to 1000 MPa");
	return trace_step(trace, "V0_Rk_s", "psi_short * k_6 * A_sV * f_uk",
	                  factor * k * area * ultimate, DIM_FORCE, "EN 1992-4 (7.34)",
	                  "steel of one anchor");
}

static double group_ductility(const struct code_facts *f, size_t in_group, struct trace *trace)
{
	const struct number *given = &f->given->en.group_factor, *a5 = &f->given->elongation;
	if (in_group < 2)
		return trace_step(trace, "k_7", "", 1, DIM_FACTOR, "EN 1992-4 (7.35)",
		                  "one anchor");
	if (is_known(*given))
		return trace_input(trace, "k_7", given, DIM_FACTOR, "group");
	bool ductile = is_known(*a5) && a5->value > EN_K7_ELONGATION;
	return trace_step(trace, "k_7", "", ductile ? 1 : EN_K7_BRITTLE, DIM_FACTOR,
	                  "EN 1992-4 (7.35)",
	                  ductile ? "group of ductile steel, A5 above 8 %"
	                          : "group, steel not shown to be ductile");
}

/* VRk,s without lever arm, (7.35); a grout pad takes its share, (7.36). */
static double without_lever(const struct code_facts *f, size_t in_group, struct trace *trace)
{
	double single = shear_single(f, trace), k = group_ductility(f, in_group, trace);
	if (f->lever_arm != GROUT_PAD)
		return trace_step(trace, "V_Rk_s", "k_7 * V0_Rk_s", k * single, DIM_FORCE,
		                  "EN 1992-4 (7.35)", "steel without lever arm");
	double grout = code_input(trace, "t_grout", &f->cell->stand_off.height, f->grout,
	                          DIM_LENGTH, "thickness of the grout");
	return trace_step(trace, "V_Rk_s", "(1 - 0.01 * t_grout) * k_7 * V0_Rk_s",
	                  (1 - EN_GROUT_SHARE * grout) * k * single, DIM_FORCE, "EN 1992-4 (7.36)",
	                  "steel on a grout pad");
}

/* (7.38): what the tension leaves of the bending resistance [N mm] */
static double bending(const struct code_facts *f, double tension, struct trace *trace)
{
	const struct number *given = &f->given->en.bending;
	double whole;
	if (is_known(*given)) {
		whole = trace_input(trace, "M0_Rk_s", given, DIM_MOMENT, "bending, by the sheet");
	} else {
		double area = code_input(trace, "A_s", &f->cell->anchors.product.tensile_area,
		                       f->tensile_area, DIM_AREA, "stressed area");
		double d = en_shaft(f, trace);
		/* a thread bends in its stressed section, not in that of the shaft */
		double core = trace_step(trace, "d_s",
		                         "min(d, sqrt(4 * A_s / 3.14159265358979323846))",
		                         fmin(d, sqrt(4 * area / pi)), DIM_LENGTH, "S32",
		                         "diameter of the stressed section");
		double ultimate = code_input(trace, "f_uk", &f->given->ultimate, f->ultimate,
		                           DIM_STRESS, "tensile strength of the steel");
		whole = trace_step(trace, "M0_Rk_s",
		                   "1.2 * (3.14159265358979323846 * d_s * d_s * d_s / 32) * f_uk",
		                   EN_BENDING * (pi * core * core * core / 32) * ultimate,
		                   DIM_MOMENT, "EN 1992-4 7.2.2.3.2; S32",
		                   "bending, W_el = pi d_s^3/32");
	}
	double pulled = en_steel_tension(f, false, trace);
	trace_step(trace, "N_Ed", "", tension, DIM_FORCE, "", "tension on this anchor");
	return trace_step(trace, "M_Rk_s", "M0_Rk_s * max(0, 1 - N_Ed / N_Rd_s)",
	                  whole * fmax(0, 1 - tension / pulled), DIM_MOMENT, "EN 1992-4 (7.38)",
	                  "what the tension leaves");
}

/* (7.37): VRk,s,M */
static double with_lever(const struct code_facts *f, double tension, struct trace *trace)
{
	double moment = bending(f, tension, trace);
	const struct word *held = &f->given->held_at_base;
	bool fixed = is_known(*held) && held->value == YES;
	double alpha = trace_step(trace, "alpha_M", "", fixed ? 2 : 1, DIM_FACTOR,
	                          "EN 1992-4 7.2.2.3.2",
	                          fixed ? "held against turning at the base" : "free to turn");
	double arm = trace_step(trace, "l_a", "", f->lever, DIM_LENGTH, "EN 1992-4 7.2.2.3.2",
	                        "lever arm a3 + e1");
	return trace_step(trace, "V_Rk_sM", "alpha_M * M_Rk_s / l_a", alpha * moment / arm,
	                  DIM_FORCE, "EN 1992-4 (7.37)", "steel with lever arm");
}

static double seismic_shear(const struct code_facts *f, size_t in_group, struct trace *trace)
{
	double strength = trace_input(trace, "V_Rk_s", &f->given->en.steel_shear_seismic, DIM_FORCE,
	                              "steel in shear of the seismic category");
	double gamma = en_gamma_ms_shear(f, trace), gap = en_alpha_gap(f, trace);
	double alpha = en_alpha_eq(f, STEEL_SHEAR, in_group, trace);
	return trace_step(trace, "V_Rd_s_eq", "alpha_gap * alpha_eq * V_Rk_s / gamma_Ms_V",
	                  gap * alpha * strength / gamma, DIM_FORCE, "EN 1992-4 (C.8)",
	                  "design strength in an earthquake");
}

double en_steel_shear(const struct code_facts *f, double tension, bool earthquake, size_t in_group,
                      struct trace *trace)
{
	if (earthquake)
		return seismic_shear(f, in_group, trace);
	double flat = without_lever(f, in_group, trace);
	double gamma = en_gamma_ms_shear(f, trace);
	/* the exit (7.36) is closed to a base that has moment (S31): on a grout pad too anchors
	 * bend */
	if (f->lever_arm != LEVER_ARM && f->lever_arm != GROUT_PAD)
		return trace_step(trace, "V_Rd_s", "V_Rk_s / gamma_Ms_V", flat / gamma, DIM_FORCE,
		                  "EN 1992-4 Table 4.1", "design strength");
	double bent = with_lever(f, tension, trace);
	return trace_step(trace, "V_Rd_s", "min(V_Rk_s, V_Rk_sM) / gamma_Ms_V",
	                  fmin(flat, bent) / gamma, DIM_FORCE, "EN 1992-4 Table 4.1; S31, S32",
	                  "design strength, the lower of without and with lever arm");
}
