/* Factors that several modes of EN 1992-4 share. */
#include "en_parts.h"
#include "en_values.h"

#include <math.h>
#include <string.h>

bool en_drilled(const struct code_facts *f) { return !f->cast_in; }

double en_fck(const struct code_facts *f, struct trace *trace)
{
	return trace_step(trace, "f_ck", "", fmin(f->concrete, EN_GREATEST_FCK), DIM_STRESS,
	                  "slab; S21", "cylinder strength, at most that of C50/60");
}

double en_embedment(const struct code_facts *f, struct trace *trace)
{
	return code_input(trace, "h_ef", &f->cell->anchors.product.embedment, f->embedment,
	                DIM_LENGTH, "effective embedment");
}

double en_shaft(const struct code_facts *f, struct trace *trace)
{
	return code_input(trace, "d", &f->cell->anchors.product.shaft, f->shaft, DIM_LENGTH,
	                "diameter of the shaft, d_nom");
}

double en_gamma_mc(const struct code_facts *f, bool tension, struct trace *trace)
{
	if (!tension || !en_drilled(f))
		return trace_step(trace, "gamma_Mc", "", EN_GAMMA_C, DIM_FACTOR,
		                  "EN 1992-4 Table 4.1", "concrete; gamma_inst is 1");
	double installation = code_input(trace, "gamma_inst", &f->given->en.installation_factor,
	                               f->given->en.installation_factor.value, DIM_FACTOR,
	                               "sensitivity to installation");
	return trace_step(trace, "gamma_Mc", "1.5 * gamma_inst", EN_GAMMA_C * installation,
	                  DIM_FACTOR, "EN 1992-4 Table 4.1", "concrete");
}

static void steel_inputs(const struct code_facts *f, struct trace *trace)
{
	code_input(trace, "f_uk", &f->given->ultimate, f->ultimate, DIM_STRESS,
	         "tensile strength of the steel");
	code_input(trace, "f_yk", &f->given->yield, f->yield, DIM_STRESS, "yield strength of it");
}

double en_gamma_ms_tension(const struct code_facts *f, struct trace *trace)
{
	steel_inputs(f, trace);
	return trace_step(
		trace, "gamma_Ms_N", "max(1.2 * f_uk / f_yk, 1.4)",
		fmax(EN_GAMMA_MS_TENSION * f->ultimate / f->yield, EN_GAMMA_MS_TENSION_LEAST),
		DIM_FACTOR, "EN 1992-4 Table 4.1", "steel in tension");
}

double en_gamma_ms_shear(const struct code_facts *f, struct trace *trace)
{
	steel_inputs(f, trace);
	bool soft = f->ultimate <= EN_SOFT_ULTIMATE && f->yield <= EN_SOFT_YIELD * f->ultimate;
	if (!soft)
		return trace_step(trace, "gamma_Ms_V", "", EN_GAMMA_MS_SHEAR_ELSE, DIM_FACTOR,
		                  "EN 1992-4 Table 4.1",
		                  "steel in shear, f_uk above 800 MPa or f_yk/f_uk above 0.8");
	return trace_step(
		trace, "gamma_Ms_V", "max(1.0 * f_uk / f_yk, 1.25)",
		fmax(EN_GAMMA_MS_SHEAR * f->ultimate / f->yield, EN_GAMMA_MS_SHEAR_LEAST),
		DIM_FACTOR, "EN 1992-4 Table 4.1", "steel in shear");
}

double en_by_concrete(const struct code_facts *f, struct trace *trace)
{
	double fck = en_fck(f, trace);
	double at = code_input(trace, "f_at", &f->given->at_concrete, f->given->at_concrete.value,
	                     DIM_STRESS,
	                     "concrete strength that the sheet's values are stated for");
	return trace_step(trace, "psi_f", "min(1, f_ck / f_at)", fmin(1, fck / at), DIM_FACTOR,
	                  "S23", "no growth in stronger concrete, less in weaker");
}

double en_edge_factor(double c, double reach, const char *symbol, const char *reach_symbol,
                      const char *source, struct trace *trace)
{
	if (c >= reach)
		return trace_step(trace, symbol, "", 1, DIM_FACTOR, source,
		                  "no edge or joint within the critical distance");
	trace_step(trace, "c_min", "", c, DIM_LENGTH, "", "nearest edge or joint");
	return trace_step(trace, symbol, trace_text(trace, "0.7 + 0.3 * c_min / %s", reach_symbol),
	                  0.7 + 0.3 * c / reach, DIM_FACTOR, source, "disturbed by the edge");
}

/* bars so far apart that they do not split off the cover */
static bool is_open_mesh(const struct reinforcement *bars)
{
	if (!is_known(bars->bar_spacing))
		return false;
	bool thin = is_known(bars->bar_diameter) && bars->bar_diameter.value <= EN_THIN_BAR;
	return bars->bar_spacing.value >= (thin ? EN_OPEN_THIN_MESH : EN_OPEN_MESH);
}

double en_spalling_factor(const struct code_facts *f, double depth, const char *depth_symbol,
                          struct trace *trace)
{
	if (is_open_mesh(&f->cell->slab.reinforcement))
		return trace_step(trace, "psi_re_N", "", 1, DIM_FACTOR, "EN 1992-4 (7.5)",
		                  "upper bars at least 150 mm apart, or 100 mm up to 10 mm thick");
	bool reduced = strcmp(depth_symbol, "h_ef") != 0;
	return trace_step(trace, "psi_re_N",
	                  trace_text(trace, "min(1, 0.5 + %s / 200)", depth_symbol),
	                  fmin(1, EN_SPALLING_START + depth / EN_SPALLING_DEPTH), DIM_FACTOR,
	                  reduced ? "EN 1992-4 (7.5); S22" : "EN 1992-4 (7.5)",
	                  "shell spalling, dense upper bars");
}

double en_alpha_eq(const struct code_facts *f, enum code_mode mode, size_t count,
                   struct trace *trace)
{
	bool group = count > 1;
	bool by_head = f->type_known && (f->type == CAST_IN_HEADED || f->type == UNDERCUT);
	double alpha = group ? EN_ALPHA_GROUP : EN_ALPHA_SINGLE;
	if (mode == STEEL_TENSION)
		alpha = EN_ALPHA_STEEL_TENSION;
	else if ((mode == CONE || mode == PRYOUT) && !by_head)
		alpha = group ? EN_ALPHA_CONE_GROUP : EN_ALPHA_CONE_SINGLE;
	return trace_step(trace, "alpha_eq", "", alpha, DIM_FACTOR, "EN 1992-4 Table C.3; S37",
	                  group ? "earthquake, group" : "earthquake, one anchor");
}

double en_alpha_gap(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->en.gap_factor;
	if (is_known(*given))
		return trace_input(trace, "alpha_gap", given, DIM_FACTOR,
		                   "clearance of the holes in the base");
	return trace_step(trace, "alpha_gap", "", EN_ALPHA_GAP, DIM_FACTOR, "EN 1992-4 (C.8)",
	                  "with clearance of the holes in the base");
}

void en_finish(const struct code_facts *f, enum code_mode mode, double resting, double shaking,
               const char *symbol, const char *from, bool earthquake, struct group_strength *out,
               struct trace *trace)
{
	double gamma = en_gamma_mc(f, true, trace);
	double alpha = en_alpha_eq(f, mode, out->count, earthquake ? trace : NULL);
	out->design = resting / gamma;
	out->seismic = alpha * shaking / gamma;
	/* nothing to write where the mode cannot occur: an earlier step has said why */
	if (!((earthquake ? shaking : resting) < HUGE_VAL))
		return;
	if (earthquake)
		trace_step(trace, trace_text(trace, "%s_eq", symbol),
		           trace_text(trace, "alpha_eq * %s / gamma_Mc", from), out->seismic,
		           DIM_FORCE, "EN 1992-4 (C.8)", "design strength in an earthquake");
	else
		trace_step(trace, symbol, trace_text(trace, "%s / gamma_Mc", from), out->design,
		           DIM_FORCE, "EN 1992-4 Table 4.1", "design strength");
}
