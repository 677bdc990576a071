#include "rating_strength.h"

#include "judging.h"

#include <math.h>
#include <stdio.h>

#define CRACKED_FACTOR \
	0.70 /* EN 1992-4 cone factors 7.7/11.0; ACI 318-19 17.6.2.5.1 1/1.4; an assumption */
#define SAFE_SHARE 0.25          /* share of ultimate that needs nobody's word */
#define RATING "anchors.product.rating."

double spacing_share(const struct rating *rating, double distance, bool *below)
{
	const struct spacing_row *row = rating->spacing.rows;
	size_t n = rating->spacing.count;
	*below = n > 0 && distance < row[0].distance.value;
	if (n == 0 || distance >= row[n - 1].distance.value)
		return 1;
	if (*below)
		return row[0].share.value;
	size_t i = 1;
	while (distance >= row[i].distance.value)
		i++;
	double part = (distance - row[i - 1].distance.value) /
	              (row[i].distance.value - row[i - 1].distance.value);
	return row[i - 1].share.value + part * (row[i].share.value - row[i - 1].share.value);
}

static double edge_value(const struct edge_row *row, enum load_kind kind)
{
	return kind == TENSION ? row->tension.value : row->shear.value;
}

double edge_share(const struct rating *rating, enum load_kind kind, double distance, bool *below)
{
	const struct edge_row *row = rating->edge.rows;
	size_t n = rating->edge.count;
	*below = n > 0 && distance < row[0].distance.value;
	if (n == 0 || distance >= row[n - 1].distance.value)
		return 1;
	if (*below)
		return edge_value(&row[0], kind);
	size_t i = 1;
	while (distance >= row[i].distance.value)
		i++;
	double part = (distance - row[i - 1].distance.value) /
	              (row[i].distance.value - row[i - 1].distance.value);
	return edge_value(&row[i - 1], kind) +
	       part * (edge_value(&row[i], kind) - edge_value(&row[i - 1], kind));
}

double edge_reach(const struct product *product, enum load_kind kind)
{
	const struct edge_row *row = product->rating.edge.rows;
	if (product->rating.edge.count > 0)
		return row[product->rating.edge.count - 1].distance.value;
	if (!is_known(product->embedment))
		return 0;
	if (kind == TENSION)
		return 1.5 *
		       product->embedment.value; /* ACI 318-19 17.6.2.1.4, EN 1992-4 7.2.1.4 */
	if (!is_known(product->shaft))
		return 0;
	/* derived from the codes' edge equations: there the concrete edge carries what the steel
	 * does */
	return fmax(6 * product->embedment.value, 30 * product->shaft.value);
}

double spacing_reach(const struct product *product)
{
	const struct spacing_row *row = product->rating.spacing.rows;
	if (product->rating.spacing.count > 0)
		return row[product->rating.spacing.count - 1].distance.value;
	return is_known(product->embedment) ? 3 * product->embedment.value
	                                    : 0; /* ACI 318-19 17.5.1.3.1 */
}

static void lacks(struct finding *finding, const char *path)
{
	if (finding)
		finding_lacks(finding, path);
}

static void doubts(struct finding *finding, const char *reason, const char *remedy)
{
	if (finding)
		finding_doubts(finding, reason, remedy);
}

static double ultimate_load(const struct product *product, enum load_kind kind, bool *known,
                            struct finding *finding, struct trace *trace)
{
	const struct rating *rating = &product->rating;
	const struct number *given = kind == TENSION ? &rating->tension : &rating->shear;
	const char *symbol = kind == TENSION ? "N_rating" : "V_rating";
	const char *ultimate = kind == TENSION ? "N_ult" : "V_ult";
	bool unevidenced = !is_known(rating->evidence) ||
	                   rating->evidence.value == RATING_BY_ASSUMED;
	if (!is_known(rating->basis))
		lacks(finding, RATING "basis");
	if (unevidenced)
		lacks(finding, RATING "evidence");
	/* a rating that nobody has shown may be higher as well: then a ratio above 1 proves nothing
	 */
	if (finding && (unevidenced || !is_known(rating->basis)))
		finding->never_fails = true;
	*known = is_known(*given);
	if (!*known) {
		lacks(finding, kind == TENSION ? RATING "tension" : RATING "shear");
		return 0;
	}
	trace_input(trace, symbol, given, DIM_FORCE, "rating as stated");
	if (is_known(rating->basis) && rating->basis.value == BASIS_ALLOWED &&
	    !is_known(rating->of_ultimate)) {
		lacks(finding, RATING "of_ultimate");
		*known = false;
		return 0;
	}
	if (is_known(rating->basis) && rating->basis.value == BASIS_ALLOWED) {
		trace_input(trace, "of_ultimate", &rating->of_ultimate, DIM_SHARE,
		            "share of ultimate that it is");
		return trace_step(trace, ultimate,
		                  kind == TENSION ? "N_rating / of_ultimate"
		                                  : "V_rating / of_ultimate",
		                  given->value / rating->of_ultimate.value, DIM_FORCE,
		                  "basis: allowed", "ultimate load");
	}
	/* a characteristic value is a 5 % fractile: below the mean ultimate load, so the safe side
	 */
	return trace_step(trace, ultimate, symbol, given->value, DIM_FORCE,
	                  is_known(rating->basis) && rating->basis.value == BASIS_CHARACTERISTIC
	                          ? "basis: characteristic, used as ultimate (safe side)"
	                          : "basis: ultimate",
	                  "ultimate load");
}

static double allowed_share(const struct rating *rating, struct finding *finding,
                            struct trace *trace)
{
	double share = trace_input(trace, "share", &rating->allowed_share, DIM_SHARE,
	                           "allowed share of ultimate");
	if (share > SAFE_SHARE && !engineer_stands(&rating->by_engineer))
		doubts(finding,
		       "the allowed share is above 25 % of ultimate and no engineer stands for it",
		       "25 %, or have an engineer stand for it (rating: by_engineer)");
	return share;
}

static double concrete_factor(const struct judging *judging, const struct product *product,
                              struct finding *finding, struct trace *trace)
{
	const struct concrete_strength *strength = &judging->setting->strength;
	const struct rating *rating = &product->rating;
	for (size_t i = 0; i < strength->missing_count; i++)
		lacks(finding, strength->missing[i]);
	if (strength->doubt)
		doubts(finding, strength->doubt, strength->remedy);
	if (!is_known(rating->at_concrete))
		lacks(finding, RATING "at_concrete");
	/* 4000 psi and 28 MPa are the same concrete in the inch-pound and the SI edition of ACI 318
	 */
	bool twin = strength->inch_pound_twin && rating->at_concrete.value <= 28;
	double f = strength->value;
	if (!strength->shown || !is_known(rating->at_concrete) || twin ||
	    f >= rating->at_concrete.value)
		return trace_step(trace, "k_concrete", "", 1, DIM_FACTOR,
		                  strength->shown ? "concrete not weaker than the rating's"
		                                  : "concrete not shown: most favourable value",
		                  "");
	if (!is_known(product->type) || product->type.value == ADHESIVE) {
		/* bond does not follow the square root of the concrete's strength */
		if (is_known(product->type))
			doubts(finding,
			       "bonded anchor in concrete weaker than its rating's: no factor is "
			       "known",
			       "ask the anchor's maker for a rating in this concrete");
		else
			lacks(finding, "anchors.product.type");
		return trace_step(trace, "k_concrete", "", 1, DIM_FACTOR,
		                  "not known: most favourable value", "");
	}
	if (trace) {
		concrete_strength(judging->cell, &(struct concrete_strength){0}, trace);
		trace_input(trace, "f_rating", &rating->at_concrete, DIM_STRESS,
		            "concrete of the rating");
	}
	return trace_step(trace, "k_concrete", "sqrt(f / f_rating)",
	                  sqrt(f / rating->at_concrete.value), DIM_FACTOR,
	                  "as the cone equations of ACI 318-19 17.6.2.2 and EN 1992-4 7.2.1.4",
	                  "weaker concrete");
}

static bool shown_uncracked(const struct concrete *concrete)
{
	return concrete->cracked.value == NO && is_known(concrete->uncracked_reason);
}

static double state_factor(const struct judging *judging, const struct product *product,
                           struct finding *finding, struct trace *trace)
{
	const struct concrete *concrete = &judging->cell->slab.concrete;
	const char *why = "tested in cracked concrete";
	double factor = 1;
	if (shown_uncracked(concrete)) {
		why = "concrete stated as uncracked";
		if (!engineer_stands(&concrete->by_engineer))
			doubts(finding,
			       "the concrete is stated as uncracked and no engineer stands for it",
			       "leave slab: concrete: cracked out, or have an engineer stand for "
			       "it (slab: concrete: by_engineer)");
	} else if (!is_known(product->rating.tested_in)) {
		lacks(finding, RATING "tested_in");
		why = "not known: most favourable value";
	} else if (product->rating.tested_in.value == TESTED_UNCRACKED) {
		if (!is_known(product->qualified_cracked)) {
			lacks(finding, "anchors.product.qualified_cracked");
			why = "not known: most favourable value";
		} else if (product->qualified_cracked.value == NO) {
			doubts(finding,
			       "the anchor is not qualified for cracked concrete, and the slab may "
			       "crack",
			       "an anchor that is qualified for cracked concrete");
			why = "not known: most favourable value";
		} else if (!is_known(product->type)) {
			lacks(finding, "anchors.product.type");
			why = "not known: most favourable value";
		} else if (product->type.value == ADHESIVE) {
			/* the ratio is that of the cones; bond in cracks falls far more (ACI 318-19
			 * Table 17.6.5.2.5: 1.4 against 4.5 MPa outdoors) */
			doubts(finding,
			       "bonded anchor tested in uncracked concrete, and the slab may crack",
			       "ask the anchor's maker for a rating in cracked concrete");
			why = "not known: most favourable value";
		} else {
			factor = CRACKED_FACTOR;
			why = "tested in uncracked, qualified for cracked concrete: ratio of the "
			      "codes' cone factors, assumed";
		}
	}
	return trace_step(trace, "k_state", "", factor, DIM_FACTOR, why, "state of the concrete");
}

static void embedment(const struct product *product, struct finding *finding)
{
	if (!finding)
		return;
	if (!is_known(product->embedment))
		lacks(finding, "anchors.product.embedment");
	if (!is_known(product->rating.at_embedment))
		lacks(finding, RATING "at_embedment");
	else if (is_known(product->embedment) &&
	         product->rating.at_embedment.value > product->embedment.value)
		finding_fails(finding, "the rating holds at a deeper embedment than is installed",
		              "the rating for the embedment as installed, or a deeper embedment");
}

/* Multiplies one share into the product and writes it down; the expression grows by the new symbol.
 */
static double take_share(struct trace *trace, const char **expression, const char *symbol,
                         double product, double share, const char *source)
{
	if (trace) {
		trace_step(trace, symbol, "", share, DIM_FACTOR, source, "");
		*expression = **expression ? trace_text(trace, "%s * %s", *expression, symbol)
		                           : symbol;
	}
	return product * share;
}

static double spacing_factor(const struct judging *judging, const struct product *product,
                             int anchor, struct finding *finding, struct trace *trace)
{
	const struct setting *setting = judging->setting;
	double reach = spacing_reach(product), factor = 1;
	const char *expression = "";
	if (product->rating.spacing.count == 0 &&
	    setting->nearest_anchor[anchor] < (reach > 0 ? reach : HUGE_VAL)) {
		lacks(finding, RATING "spacing");
		return trace_step(trace, "k_spacing", "", 1, DIM_FACTOR,
		                  "no spacing table: most favourable value", "");
	}
	for (size_t j = 0; j < judging->cell->anchors.count; j++) {
		bool below;
		double distance = hypot(setting->anchor[j].x - setting->anchor[anchor].x,
		                        setting->anchor[j].y - setting->anchor[anchor].y);
		double share = (int)j == anchor ? 1
		                                : spacing_share(&product->rating, distance, &below);
		if (share < 1)
			factor = take_share(trace, &expression, trace_text(trace, "s_A%zu", j + 1),
			                    factor, share, "spacing table, linear between rows");
	}
	return trace_step(trace, "k_spacing", expression, factor, DIM_FACTOR,
	                  *expression ? "product over near neighbours"
	                              : "no neighbour within the table's reach",
	                  "");
}

static double edge_factor(const struct judging *judging, const struct product *product,
                          enum load_kind kind, int anchor, struct finding *finding,
                          struct trace *trace)
{
	const struct setting *setting = judging->setting;
	double reach = edge_reach(product, kind), factor = 1;
	const char *expression = "";
	if (setting->clear > 0 && reach > 0 && setting->clear >= reach)
		return trace_step(trace, "k_edge", "", 1, DIM_FACTOR,
		                  "measured clear of edges and joints", "");
	if (!setting->edges_known && finding)
		finding_lacks_edges(judging, reach, finding);
	if (product->rating.edge.count == 0) {
		if (setting->placed &&
		    setting->nearest_edge[anchor] < (reach > 0 ? reach : HUGE_VAL))
			lacks(finding, reach > 0 ? RATING "edge"
			               : is_known(product->embedment)
			                       ? "anchors.product.shaft"
			                       : "anchors.product.embedment");
		return trace_step(trace, "k_edge", "", 1, DIM_FACTOR,
		                  "no edge within reach is known", "");
	}
	for (size_t e = 0; setting->placed && e < setting->edge_count; e++) {
		bool below;
		double share = edge_share(
			&product->rating, kind,
			setting->edge_distance[(size_t)anchor * setting->edge_count + e], &below);
		if (share < 1)
			factor = take_share(
				trace, &expression,
				trace_text(trace, kind == TENSION ? "e_N%zu" : "e_V%zu", e + 1),
				factor, share,
				setting->edges[e].joint >= 0 ? "edge table at a joint"
							     : "edge table, linear between rows");
	}
	return trace_step(trace, "k_edge", expression, factor, DIM_FACTOR,
	                  *expression ? "product over near edges and joints"
	                              : "no edge within the table's reach",
	                  "");
}

void rating_strength(const struct judging *judging, enum load_kind kind, int anchor,
                     struct rating_factors *out, struct finding *finding, struct trace *trace)
{
	const struct product *product = &judging->cell->anchors.product;
	*out = (struct rating_factors){0};
	out->ultimate = ultimate_load(product, kind, &out->has_ultimate, finding, trace);
	out->share = allowed_share(&product->rating, finding, trace);
	out->concrete = concrete_factor(judging, product, finding, trace);
	out->state = state_factor(judging, product, finding, trace);
	embedment(product, finding);
	out->spacing = spacing_factor(judging, product, anchor, finding, trace);
	out->edge = edge_factor(judging, product, kind, anchor, finding, trace);
	if (!out->has_ultimate)
		return;
	out->allowed = out->share * out->ultimate * out->concrete * out->state * out->spacing *
	               out->edge;
	trace_step(trace, kind == TENSION ? "N_allowed" : "V_allowed",
	           kind == TENSION ? "share * N_ult * k_concrete * k_state * k_spacing * k_edge"
	                           : "share * V_ult * k_concrete * k_state * k_spacing * k_edge",
	           out->allowed, DIM_FORCE, "rating method", "allowed load of one anchor");
}

double combined_ratio(enum interaction kind, double tension, double shear)
{
	if (kind == STRAIGHT)
		return tension + shear;
	return pow(pow(tension, 5.0 / 3.0) + pow(shear, 5.0 / 3.0), 0.6);
}
