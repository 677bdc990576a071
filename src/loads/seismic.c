#include "seismic.h"

#include <math.h>

/* how each line is known, as the trace prints it */
#define FP_16 "ASCE 7-16 13.3.1 (second-hand: a public calculation)"
#define FP_22 "ASCE 7-22 13.3.1 (second-hand: public code)"
#define FP_22_MEMORY "ASCE 7-22 13.3.1 (from memory)"
#define VERTICAL "ASCE 7 13.3.1 (from memory)"
#define ANCHORS_16 "ASCE 7-16 13.4.2 (from memory)"
#define ANCHORS_22 "ASCE 7-22 13.4.2, Tables 13.5-1 and 13.6-1 (from memory)"
#define FA "EN 1998-1 4.3.5.2 eq. (4.24) (symbols seen, expression from memory)"
#define SA "EN 1998-1 4.3.5.2 eq. (4.25) (symbols seen, expression from memory)"

/* --- what cannot be ------------------------------------------------------------------------- */

static bool within(double value, double low, double high)
{
	return isfinite(value) && value >= low && value <= high;
}

/* What both editions of ASCE 7 ask. */
static const char *asce7_fault(double sds, double importance, double height_share,
                               double overstrength)
{
	if (!within(sds, 0, 10))
		return "SDS is a share of g, zero or positive: 1.027, say";
	if (!within(importance, 1, 1.5))
		return "Ip lies between 1 and 1.5";
	if (!within(height_share, 0, 1))
		return "z/h lies between 0 (at the base or below) and 1 (roof and above)";
	if (!within(overstrength, 1, 10))
		return "the overstrength for anchors is 1 or more";
	return NULL;
}

const char *seismic_asce7_16_fault(const struct seismic_asce7_16 *site)
{
	const char *fault = asce7_fault(site->sds, site->importance, site->height_share,
	                                site->overstrength);
	if (fault)
		return fault;
	if (!within(site->amplification, 1, 2.5))
		return "ap lies between 1 (rigid) and 2.5 (flexible)";
	return within(site->response, 1, 20) ? NULL : "Rp is 1 or more";
}

const char *seismic_asce7_22_fault(const struct seismic_asce7_22 *site)
{
	const char *fault = asce7_fault(site->sds, site->importance, site->height_share,
	                                site->overstrength);
	if (fault)
		return fault;
	if (!within(site->resonance, 1, 10))
		return "CAR is 1 or more";
	if (!within(site->response, 1, 20))
		return "Rpo is 1 or more";
	if (!within(site->building_period, 0, 100))
		return "the building's period is positive, or 0 where it is not known";
	bool none = site->building_response == 0 && site->building_importance == 0 &&
	            site->building_overstrength == 0;
	bool all = within(site->building_response, 1, 20) &&
	           within(site->building_importance, 1, 1.5) &&
	           within(site->building_overstrength, 1, 10);
	return none || all ? NULL
	                   : "R, Ie and Om0 of the building are all 1 or more, or all 0 where its "
	                     "system is not known";
}

const char *seismic_en1998_fault(const struct seismic_en1998 *site)
{
	if (!within(site->ground_share, 0, 10))
		return "ag/g is zero or positive: 0.16, say";
	if (!within(site->soil, 1, 10))
		return "the soil factor S is 1 or more";
	if (!within(site->height_share, 0, 1))
		return "z/H lies between 0 (base) and 1 (top)";
	if (!within(site->period_ratio, 0, 1000))
		return "Ta/T1 is zero or positive; 1 is the worst";
	if (!within(site->importance, 1, 10))
		return "the importance factor of the element is 1 or more";
	return within(site->behaviour, 1, 2) ? NULL : "qa is 1 or 2 (Table 4.4)";
}

/* --- ASCE 7 --------------------------------------------------------------------------------- */

static void trace_common(double sds, double importance, double height_share, double weight,
                         struct trace *trace)
{
	trace_step(trace, "W_p", "", weight, DIM_FORCE, "", "weight of the component");
	trace_step(trace, "S_DS", "", sds, DIM_FACTOR, "input", "short-period acceleration over g");
	trace_step(trace, "I_p", "", importance, DIM_FACTOR, "input", "importance");
	trace_step(trace, "z_h", "", height_share, DIM_FACTOR, "input",
	           "height over that of the building");
}

/* The equation's value between its limits, and what goes with it. */
static void limit(double sds, double importance, double weight, const char *source,
                  struct seismic_force *out, struct trace *trace)
{
	/* ASCE 7 13.3.1, the two limits (second-hand in both editions) */
	out->least = trace_step(trace, "F_p_least", "0.3 * S_DS * I_p * W_p",
	                        0.3 * sds * importance * weight, DIM_FORCE, source, "not below");
	out->most = trace_step(trace, "F_p_most", "1.6 * S_DS * I_p * W_p",
	                       1.6 * sds * importance * weight, DIM_FORCE, source, "not above");
	out->governs = out->equation < out->least  ? SEISMIC_BY_LEAST
	               : out->equation > out->most ? SEISMIC_BY_MOST
	                                           : SEISMIC_BY_EQUATION;
	out->horizontal = trace_step(trace, "F_p", "max(F_p_least, min(F_p_most, F_p_equation))",
	                             fmax(out->least, fmin(out->most, out->equation)), DIM_FORCE,
	                             "", "horizontal, any heading");
	/* ASCE 7 13.3.1, from memory; it carries no Ip */
	out->vertical = trace_step(trace, "F_v", "0.2 * S_DS * W_p", 0.2 * sds * weight, DIM_FORCE,
	                           VERTICAL, "vertical with it, up and down");
}

static void for_anchors(double overstrength, const char *source, struct seismic_force *out,
                        struct trace *trace)
{
	trace_step(trace, "Om_0", "", overstrength, DIM_FACTOR, "input", "overstrength");
	/* from memory: on the horizontal force alone */
	out->for_anchors = trace_step(trace, "F_p_anchor", "Om_0 * F_p",
	                              overstrength * out->horizontal, DIM_FORCE, source,
	                              "for anchors in concrete");
}

void seismic_asce7_16(const struct seismic_asce7_16 *site, double weight, struct seismic_force *out,
                      struct trace *trace)
{
	*out = (struct seismic_force){0};
	trace_common(site->sds, site->importance, site->height_share, weight, trace);
	trace_step(trace, "a_p", "", site->amplification, DIM_FACTOR, "input",
	           "component amplification");
	trace_step(trace, "R_p", "", site->response, DIM_FACTOR, "input",
	           "component response modification");
	/* ASCE 7-16 13.3.1, first equation (second-hand) */
	out->equation = trace_step(trace, "F_p_equation",
	                           "0.4 * a_p * S_DS * W_p / (R_p / I_p) * (1 + 2 * z_h)",
	                           0.4 * site->amplification * site->sds * weight /
	                                   (site->response / site->importance) *
	                                   (1 + 2 * site->height_share),
	                           DIM_FORCE, FP_16, "");
	limit(site->sds, site->importance, weight, FP_16, out, trace);
	for_anchors(site->overstrength, ANCHORS_16, out, trace);
}

/* Products alone, so that every machine's library gives the same digits. */
static double tenth_power(double x)
{
	double square = x * x, fourth = square * square;
	return fourth * fourth * square;
}

/* Hf: how the building raises the motion of the ground at the component's height. */
static double height_factor(const struct seismic_asce7_22 *site, struct trace *trace)
{
	double x = site->height_share, period = site->building_period;
	const char *meaning = "amplification with height";
	/* from memory: at grade the building has not yet raised the motion */
	if (x == 0)
		return trace_step(trace, "H_f", "", 1, DIM_FACTOR, FP_22_MEMORY, "at grade");
	if (period == 0)
		return trace_step(trace, "H_f", "1 + 2.5 * z_h", 1 + 2.5 * x, DIM_FACTOR, FP_22,
		                  meaning);
	trace_step(trace, "T_a", "", period, DIM_TIME, "input", "period of the building");
	double a1 = trace_step(trace, "a_1", "min(2.5, 1 / T_a)", fmin(2.5, 1 / period), DIM_FACTOR,
	                       FP_22, "");
	double a2 = trace_step(trace, "a_2", "max(0, 1 - (0.4 / T_a)^2)",
	                       fmax(0, 1 - 0.4 / period * (0.4 / period)), DIM_FACTOR, FP_22, "");
	return trace_step(trace, "H_f", "1 + a_1 * z_h + a_2 * z_h^10",
	                  1 + a1 * x + a2 * tenth_power(x), DIM_FACTOR, FP_22, meaning);
}

/* Rmu: what the building's own yielding takes off. */
static double ductility_factor(const struct seismic_asce7_22 *site, struct trace *trace)
{
	const char *meaning = "reduction by the building's ductility";
	if (site->height_share == 0)
		return trace_step(trace, "R_mu", "", 1, DIM_FACTOR, FP_22_MEMORY, "at grade");
	if (site->building_response == 0)
		/* the least value that the clause allows, so the largest force */
		return trace_step(trace, "R_mu", "", 1.3, DIM_FACTOR, FP_22,
		                  "least value, the building's system is not known");
	trace_step(trace, "R_b", "", site->building_response, DIM_FACTOR, "input",
	           "R of the building");
	trace_step(trace, "I_e", "", site->building_importance, DIM_FACTOR, "input",
	           "Ie of the building");
	trace_step(trace, "Om_b", "", site->building_overstrength, DIM_FACTOR, "input",
	           "Om0 of the building");
	double root = sqrt(1.1 * site->building_response /
	                   (site->building_importance * site->building_overstrength));
	return trace_step(trace, "R_mu", "max(1.3, sqrt(1.1 * R_b / (I_e * Om_b)))",
	                  fmax(1.3, root), DIM_FACTOR, FP_22, meaning);
}

void seismic_asce7_22(const struct seismic_asce7_22 *site, double weight, struct seismic_force *out,
                      struct trace *trace)
{
	*out = (struct seismic_force){0};
	trace_common(site->sds, site->importance, site->height_share, weight, trace);
	trace_step(trace, "C_AR", "", site->resonance, DIM_FACTOR, "input",
	           "component resonance ductility");
	trace_step(trace, "R_po", "", site->response, DIM_FACTOR, "input",
	           "component strength factor");
	double height = height_factor(site, trace), ductility = ductility_factor(site, trace);
	/* ASCE 7-22 13.3.1, first equation (second-hand) */
	out->equation = trace_step(
		trace, "F_p_equation", "0.4 * S_DS * I_p * W_p * (H_f / R_mu) * (C_AR / R_po)",
		0.4 * site->sds * site->importance * weight * (height / ductility) *
			(site->resonance / site->response),
		DIM_FORCE, FP_22, "");
	limit(site->sds, site->importance, weight, FP_22, out, trace);
	for_anchors(site->overstrength, ANCHORS_22, out, trace);
}

/* --- EN 1998-1 ------------------------------------------------------------------------------ */

static void trace_en1998(const struct seismic_en1998 *site, double weight, struct trace *trace)
{
	trace_step(trace, "W_a", "", weight, DIM_FORCE, "", "weight of the element");
	trace_step(trace, "al", "", site->ground_share, DIM_FACTOR, "input",
	           "ground acceleration over g");
	trace_step(trace, "S", "", site->soil, DIM_FACTOR, "input", "soil factor");
	trace_step(trace, "z_H", "", site->height_share, DIM_FACTOR, "input",
	           "height over that of the building");
	trace_step(trace, "T_r", "", site->period_ratio, DIM_FACTOR, "input",
	           "period of the element over that of the building; 1 is the worst");
	trace_step(trace, "ga_a", "", site->importance, DIM_FACTOR, "input", "importance");
	trace_step(trace, "q_a", "", site->behaviour, DIM_FACTOR, "input",
	           "behaviour factor, EN 1998-1 Table 4.4");
}

void seismic_en1998(const struct seismic_en1998 *site, double weight, struct seismic_force *out,
                    struct trace *trace)
{
	*out = (struct seismic_force){.most = HUGE_VAL};
	double off = 1 - site->period_ratio, ground = site->ground_share * site->soil;
	double share = weight * site->importance / site->behaviour;
	trace_en1998(site, weight, trace);
	/* EN 1998-1 eq. (4.25), from memory */
	double equation = trace_step(
		trace, "S_a_equation", "al * S * (3 * (1 + z_H) / (1 + (1 - T_r)^2) - 0.5)",
		ground * (3 * (1 + site->height_share) / (1 + off * off) - 0.5), DIM_FACTOR, SA,
		"");
	trace_step(trace, "S_a_least", "al * S", ground, DIM_FACTOR, SA, "not below");
	double coefficient = trace_step(trace, "S_a", "max(S_a_least, S_a_equation)",
	                                fmax(ground, equation), DIM_FACTOR, SA,
	                                "seismic coefficient");
	out->equation = equation * share;
	out->least = ground * share;
	out->governs = equation < ground ? SEISMIC_BY_LEAST : SEISMIC_BY_EQUATION;
	/* EN 1998-1 eq. (4.24), from memory */
	out->horizontal = trace_step(trace, "F_a", "S_a * (W_a * ga_a / q_a)",
	                             coefficient * share, DIM_FORCE, FA, "horizontal, any heading");
	out->for_anchors = out->horizontal;
}

void seismic_action(double horizontal, double vertical, const double centre[3],
                    struct extra_action *out)
{
	*out = (struct extra_action){.down = vertical, .turns = true};
	out->fixed[0] = vertical * centre[0];
	out->fixed[1] = vertical * centre[1];
	out->turning = horizontal * centre[2];
	out->force = (struct turning_force){.force = horizontal, .at = {centre[0], centre[1]}};
}
