/* ACI 318-19 chapter 17 computed plainly from the clauses, for a grid of anchors in a rectangular
 * slab: the second route of the tests. Knows nothing of src/strength. Its numbers are those of the
 * SI edition, or with `inch` those of the inch-pound edition in psi, inches and pounds; what goes
 * in and comes out is N, mm, MPa in both. */
#ifndef PLAIN_ACI318_H
#define PLAIN_ACI318_H

#include <stdbool.h>

/* in the order of the cell's types */
enum plain_aci_kind { ACI_HEADED, ACI_HOOKED, ACI_TORQUE, ACI_DISPLACEMENT, ACI_UNDERCUT, ACI_SCREW,
	              ACI_ADHESIVE };

struct plain_aci {
	enum plain_aci_kind kind;
	bool inch, cracked, ductile, tied, held;
	int category, bars;                  /* bars: 0, 1, 2 with stirrups */
	double fc, light, ha, hef, d, ase, fya, futa, abrg, eh;
	double np_cr, np_ucr, np_eq, tau_cr, tau_ucr, alpha, v_eq;
	double cac, kc_cr, kc_ucr, le, kcp;  /* 0: not stated */
	double x_length, y_length;           /* slab from (0, 0) */
	double x0, y0, sx, sy;               /* first anchor, spacing */
	int nx, ny;
};

/* Each: phi times nominal, at rest or in an earthquake [N]. */
double plain_aci_steel_tension(const struct plain_aci *p);
double plain_aci_steel_shear(const struct plain_aci *p, bool earthquake);
double plain_aci_bent(const struct plain_aci *p, double tension, double arm, double alpha);
double plain_aci_pullout(const struct plain_aci *p, bool earthquake);
double plain_aci_cone(const struct plain_aci *p, bool earthquake);
double plain_aci_bond(const struct plain_aci *p, bool earthquake);
double plain_aci_sustained(const struct plain_aci *p);
double plain_aci_pryout(const struct plain_aci *p, bool earthquake);
/* of the row along the edge y = 0 */
double plain_aci_blowout(const struct plain_aci *p, bool earthquake);
double plain_aci_edge(const struct plain_aci *p, bool along, bool earthquake);

#endif
