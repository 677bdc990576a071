/* EN 1992-4:2018 computed plainly from the clauses, for a grid of anchors in a rectangular slab:
 * the second route of the tests. Knows nothing of src/strength. Units N, mm, MPa. */
#ifndef PLAIN_EN1992_4_H
#define PLAIN_EN1992_4_H

#include <stdbool.h>

enum plain_kind { PLAIN_HEADED, PLAIN_UNDERCUT, PLAIN_MECHANICAL, PLAIN_BONDED };

struct plain_en {
	enum plain_kind kind;
	bool cracked, open_mesh, tied, stirrups, ductile, sustained;
	double fck, at, h, hmin, hef, d, as, fuk, fyk, ah, ginst;
	double p_cr, p_ucr, p_eq, tau_cr, tau_ucr, tau_eq, ccr_sp, n_eq, v_eq;
	double x_length, y_length;           /* slab from (0, 0) */
	double x0, y0, sx, sy;               /* first anchor, spacing */
	int nx, ny;
};

/* Each: design strength at rest, or in an earthquake [N]. */
double plain_steel_tension(const struct plain_en *p, bool earthquake);
double plain_steel_shear(const struct plain_en *p, bool earthquake);
double plain_bent(const struct plain_en *p, double tension, double arm, double alpha);
double plain_pullout(const struct plain_en *p, bool earthquake);
double plain_cone(const struct plain_en *p, bool earthquake);
double plain_bond(const struct plain_en *p, bool earthquake);
/* negative: no check is needed */
double plain_splitting(const struct plain_en *p, bool earthquake);
/* of the row along the edge y = 0 */
double plain_blowout(const struct plain_en *p, bool earthquake);
double plain_pryout(const struct plain_en *p, bool earthquake);
double plain_edge(const struct plain_en *p, bool earthquake);

#endif
