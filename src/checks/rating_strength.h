/* The allowed load of one anchor from a data sheet's rating:
 *   allowed = share * ultimate * concrete * state * spacing * edge.
 *
 * Source: common practice for data-sheet ratings (a quarter of the mean ultimate load), no source;
 * the concrete factor follows the square root of the strength as in ACI 318-19 17.6.2.2 and EN
 * 1992-4 7.2.1.4; the cracked factor 0.70 is the ratio of the codes' cone factors (EN
 * 1992-4: 7.7/11.0; ACI 318-19: 1/1.4). Range: product data of one anchor type, isotropic spacing
 * and edge tables. Every unknown is taken at its most favourable value and noted in `lacks`. */
#ifndef RATING_STRENGTH_H
#define RATING_STRENGTH_H

#include "../cell/trace.h"
#include "check_table.h"

enum load_kind { TENSION, SHEAR };

/* All of the factors of one anchor. */
struct rating_factors {
	bool has_ultimate;
	double share, ultimate, concrete, state, spacing, edge;   /* [-], [N], [-] ... */
	double allowed; /* [N]; 0 without an ultimate load */
};

/* finding and trace may be NULL. With an arena in `judging` the doubts are written as sentences. */
void rating_strength(const struct judging *judging, enum load_kind kind, int anchor,
                     struct rating_factors *out, struct finding *finding, struct trace *trace);

/* Shares from the tables at a distance, linear between rows; 1 beyond the last row. `below` is set
 * where the distance is less than the first row's. */
double spacing_share(const struct rating *rating, double distance, bool *below);
double edge_share(const struct rating *rating, enum load_kind kind, double distance, bool *below);

/* Distance from which an edge does not matter: last row of the table, else tension 1.5 hef, shear
 * max(6 hef, 30 d). 0 when it cannot be told (embedment or shaft unknown). [mm] */
double edge_reach(const struct product *product, enum load_kind kind);
/* The same for neighbours: last row, else 3 hef. */
double spacing_reach(const struct product *product);

/* Tension and shear together, each as its share of the allowed load: straight line, or exponent 5/3
 * (ACI 318-19 R17.8 names it as an alternative). */
double combined_ratio(enum interaction kind, double tension, double shear);

#endif
