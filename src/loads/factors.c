#include "factors.h"

#include "earthquake.h"
#include "weights.h"

#define STABILITY_WEIGHT 0.9                 /* ASCE 7 2.3.1, 0.9D; EN 1990 EQU 0.90 */
#define STABILITY_MOVING 1.25                /* margin on the moving part; own choice, no source */
#define ACI_DEAD_ALONE 1.4                   /* ACI 318-19 5.3.1(a), 1.4D, from memory */

/* ACI 318-19 5.3.1(b), 1.2D + 1.6L, with 0.9D of (f) and (g); EN 1990 Table A1.2(B), the lower
 * weight of Table A1.2(A); all from memory. `own` is that of live load (factors.h). */
static const struct run_factors code_factors[METHODS][2] = {
	[METHOD_ACI318] = {[RUN_LOW] = {0.9, 1.6, 1.6}, [RUN_FULL] = {1.2, 1.6, 1.6}},
	[METHOD_EN1992_4] = {[RUN_LOW] = {0.9, 1.5, 1.5}, [RUN_FULL] = {1.35, 1.5, 1.5}}};

struct run_factors run_factors(const struct cell *cell, enum method method, enum weight_run run)
{
	if (run == RUN_STABILITY)
		return (struct run_factors){STABILITY_WEIGHT, STABILITY_MOVING, 1};
	if (method != METHOD_RATING)
		return code_factors[method][run];
	return (struct run_factors){run == RUN_LOW ? cell->choices.stabilising_weight.value : 1, 1,
	                            1};
}

bool nothing_moves(const struct load_case *c)
{
	return c->sustained || (c->source == SOURCE_REST && !c->earthquake);
}

struct run_factors case_factors(const struct cell *cell, const struct load_case *c)
{
	struct run_factors out = run_factors(cell, c->method, c->run);
	if (c->method == METHOD_RATING)
		return out;
	/* the row's weights; the arm's motion whole; its own weight never below its full size */
	if (c->earthquake)
		return (struct run_factors){c->earthquake->weight, 1,
		                            c->earthquake->weight > 1 ? c->earthquake->weight : 1};
	if (c->method == METHOD_ACI318 && c->run == RUN_FULL && nothing_moves(c))
		out.weight = ACI_DEAD_ALONE;
	return out;
}

static struct factor_sources service_sources(enum weight_run run)
{
	static const char *const weight[] = {[RUN_LOW] = "choices.stabilising_weight",
	                                     [RUN_FULL] = "full weight",
	                                     [RUN_STABILITY] = "stability run"};
	return (struct factor_sources){
		weight[run], run == RUN_STABILITY ? "stability run" : "service load",
		"full weight"};
}

struct factor_sources factor_sources(const struct load_case *c)
{
	bool low = c->run == RUN_LOW;
	if (c->method == METHOD_RATING)
		return service_sources(c->run);
	if (c->earthquake)
		return (struct factor_sources){c->earthquake->clause, c->earthquake->clause,
		                               c->earthquake->clause};
	if (c->method == METHOD_ACI318)
		return (struct factor_sources){
			low                ? "ACI 318-19 5.3.1, 0.9D; with 1.6L it is added here"
			: nothing_moves(c) ? "ACI 318-19 5.3.1(a), 1.4D"
			                   : "ACI 318-19 5.3.1(b), 1.2D + 1.6L",
			"ACI 318-19 5.3.1(b), 1.2D + 1.6L",
			"ACI 318-19 5.3.1(b), a moving machine is live load (own choice)"};
	return (struct factor_sources){
		low ? "EN 1990 Table A1.2(A), 0.90; the 1.00 of (B) lies between"
		    : "EN 1990 Table A1.2(B)",
		"EN 1990 Table A1.2(B)",
		"EN 1990 Table A1.2(B), a moving machine is variable load (own choice)"};
}
