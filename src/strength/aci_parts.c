/* Factors that several modes of ACI 318-19 share. */
#include "aci_parts.h"
#include "aci_values.h"

#include <math.h>

double aci_embedment(const struct code_facts *f, struct trace *trace)
{
	return code_input(trace, "h_ef", &f->cell->anchors.product.embedment, f->embedment,
	                 DIM_LENGTH, "effective embedment");
}

double aci_shaft(const struct code_facts *f, struct trace *trace)
{
	return code_input(trace, "d_a", &f->cell->anchors.product.shaft, f->shaft, DIM_LENGTH,
	                 "diameter of the anchor");
}

double aci_concrete(const struct code_facts *f, struct trace *trace)
{
	return trace_step(trace, "f_c", "", f->concrete, DIM_STRESS, "slab; ACI 318-19 17.3.1",
	                  f->cast_in ? "concrete strength, at most 70 MPa"
	                             : "concrete strength, at most 55 MPa");
}

double aci_lightweight(const struct code_facts *f, struct trace *trace)
{
	return trace_step(trace, "lambda_a", "", f->lambda, DIM_FACTOR,
	                  "ACI 318-19 Table 17.2.4.1; S16",
	                  f->lambda < 1 ? "lightweight concrete" : "normal-weight concrete");
}

double aci_head(const struct code_facts *f, struct trace *trace)
{
	if (is_known(f->given->head_area))
		return trace_input(trace, "A_brg", &f->given->head_area, DIM_AREA,
		                   "bearing area of the head");
	aci_shaft(f, trace);
	trace_input(trace, "d_h", &f->given->head_diameter, DIM_LENGTH, "diameter of the head");
	return trace_step(trace, "A_brg", "3.14159265358979323846 / 4 * (d_h * d_h - d_a * d_a)",
	                  f->head_area, DIM_AREA, "",
	                  "bearing area of the head, without the shaft");
}

/* --- phi, Table 17.5.3 ---------------------------------------------------------------------- */

double aci_phi_steel(const struct code_facts *f, bool tension, struct trace *trace)
{
	bool ductile = is_known(f->given->ductile) && f->given->ductile.value == YES;
	double of_tension = ductile ? ACI_PHI_TENSION_DUCTILE : ACI_PHI_TENSION_BRITTLE;
	double of_shear = ductile ? ACI_PHI_SHEAR_DUCTILE : ACI_PHI_SHEAR_BRITTLE;
	return trace_step(trace, tension ? "phi_N" : "phi_V", "", tension ? of_tension : of_shear,
	                  DIM_FACTOR, "ACI 318-19 Table 17.5.3",
	                  ductile ? "ductile steel" : "brittle steel");
}

double aci_phi_concrete(const struct code_facts *f, bool tied, struct trace *trace)
{
	static const double with[] = ACI_PHI_TIED, without[] = ACI_PHI_PLAIN;
	static const char *const kind[] = {"cast-in", "category 1", "category 2", "category 3"};
	const struct word *bars = &f->cell->slab.reinforcement.supplementary;
	size_t row = f->cast_in ? 0 : (size_t)f->given->aci.category.value;
	/* a category that is not known never comes here; the worst of them all the same */
	row = !f->cast_in && (row < 1 || row > 3) ? 3 : row;
	bool counts = tied && is_known(*bars) && bars->value == YES;
	return trace_step(trace, "phi", "", counts ? with[row] : without[row], DIM_FACTOR,
	                  "ACI 318-19 Table 17.5.3",
	                  trace_text(trace, "%s, %s supplementary reinforcement", kind[row],
	                             counts ? "with" : "without"));
}

double aci_phi_edge(const struct code_facts *f, struct trace *trace)
{
	const struct word *bars = &f->cell->slab.reinforcement.supplementary;
	bool tied = is_known(*bars) && bars->value == YES;
	return trace_step(trace, "phi", "", tied ? ACI_PHI_EDGE_TIED : ACI_PHI_EDGE_PLAIN,
	                  DIM_FACTOR, "ACI 318-19 Table 17.5.3",
	                  tied ? "shear breakout, with supplementary reinforcement"
	                       : "shear breakout, without supplementary reinforcement");
}

/* --- edges and splitting -------------------------------------------------------------------- */

double aci_edge_factor(double c, double reach, const char *symbol, const char *reach_is,
                       const char *clause, struct trace *trace)
{
	if (c >= reach)
		return trace_step(trace, symbol, "", 1, DIM_FACTOR, clause,
		                  "no edge or joint within reach");
	trace_step(trace, "c_a_min", "", c, DIM_LENGTH, "", "nearest edge or joint");
	return trace_step(trace, symbol,
	                  trace_text(trace, "0.7 + 0.3 * c_a_min / (%s)", reach_is),
	                  ACI_EDGE_START + ACI_EDGE_GROWTH * c / reach, DIM_FACTOR, clause,
	                  "disturbed by the edge");
}

/* cac: of the sheet, else Table 17.9.5 */
static double critical_edge(const struct code_facts *f, struct trace *trace)
{
	const struct number *given = &f->given->aci.splitting_edge;
	double share = f->type == ADHESIVE   ? ACI_CAC_ADHESIVE
	               : f->type == UNDERCUT ? ACI_CAC_UNDERCUT
	                                     : ACI_CAC_EXPANSION;
	if (is_known(*given))
		return trace_input(trace, "c_ac", given, DIM_LENGTH, "critical edge distance");
	double h = aci_embedment(f, trace);
	return trace_step(trace, "c_ac",
	                  share == ACI_CAC_EXPANSION  ? "4 * h_ef"
	                  : share == ACI_CAC_UNDERCUT ? "2.5 * h_ef"
	                                              : "2 * h_ef",
	                  share * h, DIM_LENGTH, "ACI 318-19 Table 17.9.5",
	                  "critical edge distance where no test states one");
}

double aci_splitting_factor(const struct code_facts *f, bool cracked, double c, double reach,
                            const char *symbol, const char *reach_is, const char *clause,
                            struct trace *trace)
{
	const struct word *bars = &f->cell->slab.reinforcement.against_splitting;
	bool held = is_known(*bars) && bars->value == YES;
	if (f->cast_in || cracked || held)
		return trace_step(trace, symbol, "", 1, DIM_FACTOR, clause,
		                  f->cast_in ? "cast in: no splitting"
		                  : cracked  ? "cracked concrete"
		                             : "bars hold splitting cracks");
	double critical = critical_edge(f, trace);
	if (c >= critical)
		return trace_step(trace, symbol, "", 1, DIM_FACTOR, clause,
		                  "no edge or joint within c_ac");
	trace_step(trace, "c_a_min", "", c, DIM_LENGTH, "", "nearest edge or joint");
	return trace_step(trace, symbol,
	                  trace_text(trace, "min(1, max(c_a_min, %s) / c_ac)", reach_is),
	                  fmin(1, fmax(c, reach) / critical), DIM_FACTOR, clause,
	                  "uncracked concrete may split toward the edge");
}

double aci_design(double phi, double nominal, bool earthquake, const char *symbol,
                  const char *from, struct trace *trace)
{
	if (!earthquake)
		return trace_step(trace, symbol, trace_text(trace, "phi * %s", from),
		                  phi * nominal, DIM_FORCE, "ACI 318-19 17.5.2",
		                  "design strength");
	return trace_step(trace, trace_text(trace, "%s_eq", symbol),
	                  trace_text(trace, "0.75 * phi * %s", from), ACI_SEISMIC * phi * nominal,
	                  DIM_FORCE, "ACI 318-19 17.10.5.4; S14, S15",
	                  "design strength in an earthquake");
}
