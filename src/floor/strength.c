#include "strength.h"

#include "../cell/fields.h"
#include <math.h>

#define FEW_CORES 8      /* more are not written out one by one */
#define DAYS_28 (28 * 86400.0)
/* 4000 psi in MPa, the value that the reader makes of it (1 psi = 6894.757 Pa, NIST SP 811 B.8) */
#define PSI 6.894757293168361e-3

double cores_factor_kc(size_t n)
{
	/* ACI 562-19, coefficient kc for the uncertainty of the mean of n cores; 25 from memory */
	static const struct { size_t n; double kc; } row[] = {
		{2, 2.40}, {3, 1.47}, {4, 1.28}, {5, 1.20}, {6, 1.15}, {8, 1.10}, {10, 1.08}, {12, 1.06},
		{16, 1.05}, {20, 1.03}, {25, 1.02}};
	double kc = row[0].kc;
	for (size_t i = 0; i < sizeof row / sizeof row[0] && row[i].n <= n; i++)
		kc = row[i].kc;
	return kc;
}

double cores_equivalent_strength(size_t n, double mean, double variation)
{
	double spread = cores_factor_kc(n) * variation;
	/* ACI 562-19 6.4.3 (clause number from memory) */
	return 0.9 * mean * (1 - 1.28 * sqrt(spread * spread / (double)n + 0.0015));
}

double cylinder_from_cube(double cube)
{
	const struct concrete_class *row = concrete_class_strengths;
	size_t count = 0;
	while (concrete_classes[count])
		count++;
	if (cube <= row[0].cube)
		return row[0].cylinder * cube / row[0].cube;
	for (size_t i = 1; i < count; i++)
		if (cube <= row[i].cube)
			return row[i - 1].cylinder + (row[i].cylinder - row[i - 1].cylinder) *
			       (cube - row[i - 1].cube) / (row[i].cube - row[i - 1].cube);
	return row[count - 1].cylinder;    /* above the table: no more is taken than it shows */
}

static void lacks(struct concrete_strength *out, const char *path)
{
	if (out->missing_count < sizeof out->missing / sizeof out->missing[0])
		out->missing[out->missing_count++] = path;
}

/* Mean and coefficient of variation, a line a core while they are few. */
static void trace_cores(const struct concrete *concrete, const struct concrete_strength *out,
                        struct trace *trace)
{
	size_t n = concrete->cores.count;
	const char *sum = "", *squares = "", *plus = "";
	for (size_t i = 0; trace && n <= FEW_CORES && i < n; i++) {
		struct number core = {concrete->cores.given, concrete->cores.values[i], NULL};
		trace_input(trace, trace_text(trace, "f_%zu", i + 1), &core, DIM_STRESS, "core");
		sum = trace_text(trace, "%s%sf_%zu", sum, plus, i + 1);
		squares = trace_text(trace, "%s%s(f_%zu - f_mean) * (f_%zu - f_mean)", squares,
		                     plus, i + 1, i + 1);
		plus = " + ";
	}
	bool few = n <= FEW_CORES;
	trace_step(trace, "n_cores", "", (double)n, DIM_FACTOR, "input", "number of cores");
	trace_step(trace, "f_mean", few ? trace_text(trace, "(%s) / n_cores", sum) : "", out->mean,
	           DIM_STRESS, "", "mean of the cores");
	trace_step(trace, "V_cores",
	           few ? trace_text(trace, "sqrt((%s) / (n_cores - 1)) / f_mean", squares) : "",
	           out->variation, DIM_FACTOR, "coefficient of variation, n - 1", "");
}

static void from_cores(const struct concrete *concrete, struct concrete_strength *out,
                       struct trace *trace)
{
	size_t n = concrete->cores.count;
	double sum = 0, squares = 0;
	for (size_t i = 0; i < n; i++)
		sum += concrete->cores.values[i];
	out->mean = sum / (double)n;
	for (size_t i = 0; i < n; i++)
		squares += (concrete->cores.values[i] - out->mean) *
		           (concrete->cores.values[i] - out->mean);
	out->basis = "cores, ACI 562 equivalent strength";
	if (n < 3) {
		out->doubt = "fewer than three cores";
		out->remedy = "take at least three cores";
		return;
	}
	out->variation = sqrt(squares / (double)(n - 1)) / out->mean;
	out->value = cores_equivalent_strength(n, out->mean, out->variation);
	if (out->value <= 0) {
		out->value = 0;
		out->doubt = "the cores' spread is too wide for an equivalent strength";
		out->remedy = "separate the cores by pour, and take more";
		return;
	}
	out->known = out->evidenced = true;
	trace_cores(concrete, out, trace);
	trace_step(trace, "k_c", "", cores_factor_kc(n), DIM_FACTOR, "ACI 562, table of kc", "");
	trace_step(trace, "f",
	           "0.9 * f_mean * (1 - 1.28 * sqrt((k_c * V_cores) * (k_c * V_cores) / n_cores + "
	           "0.0015))",
	           out->value, DIM_STRESS, "ACI 562-19 6.4.3 (clause from memory)",
	           "equivalent specified strength");
	/* no correction for length is made, which is right from 1.75 diameters on (ASTM C42); the
	 * favourable factors for diameter, moisture and drilling damage are left out, which is the
	 * safe side */
	if (!is_known(concrete->core_diameter))
		lacks(out, "slab.concrete.strength.cores.diameter");
	if (!is_known(concrete->core_length))
		lacks(out, "slab.concrete.strength.cores.length");
	if (out->missing_count == 0 &&
	    concrete->core_length.value < 1.75 * concrete->core_diameter.value) {
		out->doubt = "the cores are shorter than 1.75 diameters: their strength needs a "
		             "length correction";
		out->remedy =
			"cores of twice their diameter, or the laboratory's corrected strengths";
	}
}

static void from_paper(const struct concrete *concrete, struct concrete_strength *out,
                       struct trace *trace)
{
	if (is_known(concrete->strength_class)) {
		out->value = concrete_class_strengths[concrete->strength_class.value].cylinder;
		out->known = true;
		out->basis = "strength class, cylinder strength by EN 206 Table 12";
		trace_step(trace, "f", "", out->value, DIM_STRESS,
		           "EN 206 Table 12, cylinder strength of the class", "");
	} else if (is_known(concrete->specified)) {
		double given = trace_input(trace, "f_specified", &concrete->specified, DIM_STRESS,
		                           "specified strength");
		bool cube = is_known(concrete->specimen) && concrete->specimen.value == CUBE;
		if (!is_known(concrete->specimen))
			lacks(out, "slab.concrete.strength.specimen");
		/* the inch-pound code has cylinders only, and 4000 psi is its own pair of 28 MPa */
		out->inch_pound_twin = !cube && fabs(given / PSI - 4000) < 1e-6 && given < 28;
		out->value = cube ? cylinder_from_cube(given) : given;
		out->known = true;
		out->basis = cube ? "specified cube strength, as a cylinder by the EN 206 pairs"
		                  : "specified cylinder strength";
		if (cube)
			trace_step(trace, "f", "", out->value, DIM_STRESS,
			           "EN 206 Table 12, cylinder for the cube strength", "");
		else
			trace_step(trace, "f", "f_specified", out->value, DIM_STRESS,
			           "specified, cylinder", "");
	}
	out->evidenced = is_known(concrete->strength_evidence) &&
	                 concrete->strength_evidence.value == BY_DELIVERY_NOTE;
	if (!out->evidenced)
		lacks(out, "slab.concrete.strength.evidence");
	if (!is_known(concrete->age))
		lacks(out, "slab.concrete.age");
	else if (concrete->age.value < DAYS_28)
	{
		out->doubt = "the concrete is younger than 28 days: its specified strength is not "
		             "reached yet";
		out->remedy = "wait until it is 28 days old, or take cores";
	}
}

void concrete_strength(const struct cell *cell, struct concrete_strength *out, struct trace *trace)
{
	const struct concrete *concrete = &cell->slab.concrete;
	*out = (struct concrete_strength){.basis = ""};
	if (is_known(concrete->cores) && concrete->cores.count > 0)
		from_cores(concrete, out, trace);
	else if (is_known(concrete->strength_class) || is_known(concrete->specified))
		from_paper(concrete, out, trace);
	else
		lacks(out, "slab.concrete.strength");
	out->shown = out->known && out->missing_count == 0 && !out->doubt;
}
