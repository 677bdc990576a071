/* The written calculation of tension and shear together. */
#include "code_parts.h"

static const char *const mode_words[CODE_MODES] = {
	[STEEL_TENSION] = "steel in tension", [CONE] = "concrete breakout in tension",
	[PULLOUT] = "pullout",                [BLOWOUT] = "side-face blowout",
	[BOND] = "bond",                      [SPLITTING] = "splitting",
	[BOND_SUSTAINED] = "bond under lasting tension",
	[STEEL_SHEAR] = "steel in shear",     [EDGE] = "concrete edge in shear",
	[PRYOUT] = "pryout"};

/* Steel of one anchor by EN, from its loads on. */
static void trace_steel_parts(struct code_strength *s, const struct anchor_load *load,
                              const struct pair *pair, struct trace *trace)
{
	size_t i = (size_t)pair->anchor, id = i + 1;
	double tension = en_steel_tension(&s->facts, load->earthquake, trace);
	trace_step(trace, trace_text(trace, "T_A%zu", id), "", load->tension[i], DIM_FORCE,
	           "equilibrium", "tension");
	trace_step(trace, trace_text(trace, "V_A%zu", id), "", load->shear[i], DIM_FORCE,
	           "elastic group, V/n + T r/J", "shear");
	trace_step(trace, "N_d", "", tension, DIM_FORCE, "EN 1992-4 7.2.1.3",
	           "design strength of the steel in tension");
	trace_step(trace, "b_N", trace_text(trace, "T_A%zu / N_d", id), pair->tension_ratio,
	           DIM_FACTOR, "", "steel in tension");
	double shear = kept_steel_shear(s, load->tension[i], load->earthquake);
	steel_shear_of(s, s->facts.lever_arm == NO_LEVER ? 0 : load->tension[i], load->earthquake,
	               trace);
	trace_step(trace, "V_d", "", shear, DIM_FORCE, "EN 1992-4 7.2.2.3",
	           "design strength of the steel in shear");
	trace_step(trace, "b_V", shear > 0 ? trace_text(trace, "V_A%zu / V_d", id) : "",
	           pair->shear_ratio, DIM_FACTOR, "", "steel in shear");
}

static void trace_ratios(const struct pair *pair, struct trace *trace)
{
	trace_step(trace, "b_N", "", pair->tension_ratio, DIM_FACTOR,
	           "governing tension mode, see its own check", mode_words[pair->tension]);
	trace_step(trace, "b_V", "", pair->shear_ratio, DIM_FACTOR,
	           "governing shear mode, see its own check", mode_words[pair->shear]);
}

/* ACI 318-19 17.8 as the one of its forms that gave the ratio. */
static const char *aci_rule(const struct pair *pair, double ratio)
{
	double n = pair->tension_ratio, v = pair->shear_ratio;
	const struct { const char *rule; double value; } forms[] = {
		{"max(b_N, b_V)", fmax(n, v)},
		{"(b_N + b_V) / 1.2", (n + v) / 1.2},
		{"max((b_N + b_V) / 1.2, b_N, b_V)", fmax((n + v) / 1.2, fmax(n, v))},
		{"(b_N ^ (5 / 3) + b_V ^ (5 / 3)) ^ (3 / 5)",
	         pow(pow(n, 5.0 / 3) + pow(v, 5.0 / 3), 3.0 / 5)}};
	for (size_t k = 0; k < sizeof forms / sizeof *forms; k++)
		if (fabs(forms[k].value - ratio) <= 1e-14 * ratio)
			return forms[k].rule;
	return "";
}

/* Whether the bending of a lever arm governs, so that its strength has the tension in it. */
static bool bends(const struct code_strength *s, bool steel, const struct pair *pair, double ratio)
{
	return steel && s->facts.lever_arm == LEVER_ARM &&
	       fabs(ratio - pair->shear_ratio) <= 1e-14 * ratio;
}

/* The rule in words of the two ratios; "" where one of them is without bound. */
static const char *rule(const struct code_strength *s, bool steel, bool earthquake,
                        const struct pair *pair, double ratio)
{
	if (!(pair->tension_ratio < HUGE_VAL) || !(pair->shear_ratio < HUGE_VAL))
		return "";
	if (s->facts.code == ACI318)
		return aci_rule(pair, ratio);
	if (bends(s, steel, pair, ratio))
		return "b_V";
	if (earthquake)
		return "b_N + b_V";
	if (steel)
		return "sqrt(b_N * b_N + b_V * b_V)";
	return "min((b_N ^ 1.5 + b_V ^ 1.5) ^ (1 / 1.5), max((b_N + b_V) / 1.2, b_N, b_V))";
}

static const char *clause(const struct code_strength *s, bool steel, bool earthquake,
                          const struct pair *pair, double ratio)
{
	if (s->facts.code == ACI318)
		return "ACI 318-19 17.8";
	if (bends(s, steel, pair, ratio))
		return "EN 1992-4 (7.38): tension is in the bending strength already";
	if (earthquake)
		return "EN 1992-4 (C.9)";
	return steel ? "EN 1992-4 (7.54)" : "EN 1992-4 (7.55), (7.56)";
}

void code_trace_together(struct code_strength *s, bool steel, const struct anchor_load *load,
                         struct mode_ratio *out, struct trace *trace)
{
	struct code_ratios ratios;
	struct pair pair;
	code_ratios(s, load, &ratios);
	together_use(s, steel, load, &ratios, &pair, out);
	if (!trace || out->ratio < 0)
		return;
	if (steel)
		trace_steel_parts(s, load, &pair, trace);
	else
		trace_ratios(&pair, trace);
	trace_step(trace, "ratio", rule(s, steel, load->earthquake, &pair, out->ratio),
	           out->ratio, DIM_FACTOR, clause(s, steel, load->earthquake, &pair, out->ratio),
	           "must be at most 1");
}
