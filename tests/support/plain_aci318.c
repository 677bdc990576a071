/* ACI 318-19 computed plainly from the clauses. Written apart from src/strength. */
#include "plain_aci318.h"

#include <math.h>

#define INCH 25.4
#define POUND 4.4482216152605
#define PSI (POUND / (INCH * INCH))

/* The constants of the two editions. */
struct edition {
	double fc_cast, fc_drilled, futa_most, kc_cast, kc_drilled, bond, blowout, shear, ceiling,
		kcp_depth;
};
static const struct edition si = {70, 55, 860, 10, 7, 7.6, 13, 0.6, 3.7, 65};
static const struct edition us = {10000, 8000, 125000, 24, 17, 1100, 160, 7, 9, 2.5};

static double low(double a, double b) { return a < b ? a : b; }
static double high(double a, double b) { return a > b ? a : b; }

/* The same job in the units of the edition that counts. */
struct job { struct plain_aci p; struct edition e; double out; };

static struct job open_job(const struct plain_aci *from)
{
	struct job job = {*from, si, 1};
	if (!from->inch)
		return job;
	struct plain_aci *p = &job.p;
	double *const lengths[] = {&p->ha, &p->hef, &p->d, &p->eh, &p->cac, &p->le, &p->x_length,
	                           &p->y_length, &p->x0, &p->y0, &p->sx, &p->sy};
	double *const stresses[] = {&p->fc, &p->fya, &p->futa, &p->tau_cr, &p->tau_ucr};
	double *const forces[] = {&p->np_cr, &p->np_ucr, &p->np_eq, &p->v_eq};
	for (unsigned i = 0; i < sizeof lengths / sizeof *lengths; i++)
		*lengths[i] /= INCH;
	for (unsigned i = 0; i < sizeof stresses / sizeof *stresses; i++)
		*stresses[i] /= PSI;
	for (unsigned i = 0; i < sizeof forces / sizeof *forces; i++)
		*forces[i] /= POUND;
	p->ase /= INCH * INCH;
	p->abrg /= INCH * INCH;
	job.e = us;
	job.out = POUND;
	return job;
}

static bool is_cast(const struct plain_aci *p)
{
	return p->kind == ACI_HEADED || p->kind == ACI_HOOKED;
}

static double fc_of(const struct job *j)
{
	return low(j->p.fc, is_cast(&j->p) ? j->e.fc_cast : j->e.fc_drilled);
}

/* Table 17.2.4.1 */
static double lambda_of(const struct plain_aci *p, bool bond)
{
	if (p->light == 1)
		return 1;
	if (bond)
		return 0.6 * p->light;
	return (is_cast(p) || p->kind == ACI_UNDERCUT ? 1.0 : 0.8) * p->light;
}

/* Table 17.5.3(b), (c): tension of concrete */
static double phi_of(const struct plain_aci *p, bool tied)
{
	if (is_cast(p))
		return tied ? 0.75 : 0.70;
	return (tied ? 0.85 : 0.75) - 0.10 * p->category;
}

/* --- geometry ------------------------------------------------------------------------------- */

static void edges(const struct plain_aci *p, double c[4])
{
	c[0] = p->x0;
	c[1] = p->x_length - p->x0 - (p->nx - 1) * p->sx;
	c[2] = p->y0;
	c[3] = p->y_length - p->y0 - (p->ny - 1) * p->sy;
}

static double nearest(const struct plain_aci *p)
{
	double c[4];
	edges(p, c);
	return low(low(c[0], c[1]), low(c[2], c[3]));
}

/* what n intervals of +-half, s apart, cover between the two edges */
static double covered(double left, double right, int n, double s, double half)
{
	return low(left, half) + (n - 1) * low(s, 2 * half) + low(right, half);
}

static double area(const struct plain_aci *p, double half)
{
	double c[4];
	edges(p, c);
	return covered(c[0], c[1], p->nx, p->sx, half) * covered(c[2], c[3], p->ny, p->sy, half);
}

/* --- steel ---------------------------------------------------------------------------------- */

static double futa_of(const struct job *j)
{
	return low(j->p.futa, low(1.9 * j->p.fya, j->e.futa_most));
}

double plain_aci_steel_tension(const struct plain_aci *from)
{
	struct job j = open_job(from);
	return j.out * (j.p.ductile ? 0.75 : 0.65) * j.p.ase * futa_of(&j);
}

double plain_aci_steel_shear(const struct plain_aci *from, bool earthquake)
{
	struct job j = open_job(from);
	double v = earthquake && !is_cast(&j.p) ? j.p.v_eq : 0.6 * j.p.ase * futa_of(&j);
	return j.out * (j.p.ductile ? 0.65 : 0.60) * v;
}

double plain_aci_bent(const struct plain_aci *p, double tension, double arm, double alpha)
{
	double pi = acos(-1), d = sqrt(p->ase / (pi / 4));
	struct job j = open_job(p);
	double moment = low(p->fya, futa_of(&j)) * pi * pow(d, 3) / 32;
	double left = 1 - tension / plain_aci_steel_tension(p);
	return high(0, left) * (p->ductile ? 0.65 : 0.60) * alpha * moment / arm;
}

/* --- pullout -------------------------------------------------------------------------------- */

double plain_aci_pullout(const struct plain_aci *from, bool earthquake)
{
	struct job j = open_job(from);
	const struct plain_aci *p = &j.p;
	bool cracked = p->cracked || earthquake;
	double n = earthquake ? p->np_eq : p->cracked ? p->np_cr : p->np_ucr;
	if (p->kind == ACI_HEADED)
		n = 8 * p->abrg * fc_of(&j) * (cracked ? 1 : 1.4);
	if (p->kind == ACI_HOOKED)
		n = 0.9 * fc_of(&j) * low(p->eh, 4.5 * p->d) * p->d * (cracked ? 1 : 1.4);
	return j.out * phi_of(p, false) * n * (earthquake ? 0.75 : 1);
}

/* --- breakout and bond ---------------------------------------------------------------------- */

/* 17.6.2.1.2 */
static double depth_of(const struct plain_aci *p)
{
	double c[4], most = 0, s = high(p->nx > 1 ? p->sx : 0, p->ny > 1 ? p->sy : 0);
	int near = 0;
	edges(p, c);
	for (int k = 0; k < 4; k++)
		if (c[k] < 1.5 * p->hef) {
			near++;
			most = high(most, c[k]);
		}
	return near < 3 ? p->hef : low(p->hef, high(most / 1.5, s / 3));
}

static double cac_of(const struct plain_aci *p)
{
	if (p->cac > 0)
		return p->cac;
	return p->hef * (p->kind == ACI_UNDERCUT ? 2.5 : p->kind == ACI_ADHESIVE ? 2 : 4);
}

static double splitting(const struct plain_aci *p, bool cracked, double reach)
{
	double c = nearest(p);
	if (is_cast(p) || cracked || p->held || c >= cac_of(p))
		return 1;
	return low(1, high(c, reach) / cac_of(p));
}

static double edge_factor(double c, double reach)
{
	return c < reach ? 0.7 + 0.3 * c / reach : 1;
}

static double cone(const struct job *j, bool cracked)
{
	const struct plain_aci *p = &j->p;
	double h = depth_of(p), kc = is_cast(p) ? j->e.kc_cast : j->e.kc_drilled;
	double psi_c = cracked ? 1 : is_cast(p) ? 1.25 : 1.4;
	if (cracked && p->kc_cr > 0)
		kc = low(10, p->kc_cr);
	if (!cracked && p->kc_ucr > 0) {
		kc = low(10, p->kc_ucr);
		psi_c = 1;
	} else if (!cracked && p->kc_cr > 0) {
		kc = low(kc, p->kc_cr);
	}
	double single = kc * lambda_of(p, false) * sqrt(fc_of(j)) * pow(h, 1.5);
	return area(p, 1.5 * h) / (9 * h * h) * edge_factor(nearest(p), 1.5 * h) * psi_c *
	       splitting(p, cracked, 1.5 * h) * single;
}

double plain_aci_cone(const struct plain_aci *from, bool earthquake)
{
	struct job j = open_job(from);
	return j.out * phi_of(&j.p, j.p.tied) * cone(&j, j.p.cracked || earthquake) *
	       (earthquake ? 0.75 : 1);
}

static double bond_single(const struct plain_aci *p, bool earthquake)
{
	double tau = p->cracked ? p->tau_cr : p->tau_ucr;
	if (earthquake)
		tau = p->tau_cr * p->alpha;
	return lambda_of(p, true) * tau * acos(-1) * p->d * p->hef;
}

static double bond(const struct job *j, bool earthquake)
{
	const struct plain_aci *p = &j->p;
	double c = 10 * p->d * sqrt(p->tau_ucr / j->e.bond);
	return area(p, c) / (4 * c * c) * edge_factor(nearest(p), c) *
	       splitting(p, p->cracked || earthquake, c) * bond_single(p, earthquake);
}

double plain_aci_bond(const struct plain_aci *from, bool earthquake)
{
	struct job j = open_job(from);
	return j.out * phi_of(&j.p, j.p.tied) * bond(&j, earthquake) * (earthquake ? 0.75 : 1);
}

double plain_aci_sustained(const struct plain_aci *from)
{
	struct job j = open_job(from);
	return j.out * 0.55 * phi_of(&j.p, j.p.tied) * bond_single(&j.p, false);
}

double plain_aci_pryout(const struct plain_aci *from, bool earthquake)
{
	struct job j = open_job(from);
	const struct plain_aci *p = &j.p;
	double n = cone(&j, p->cracked || earthquake);
	double kcp = p->kcp > 0 ? p->kcp : p->hef < j.e.kcp_depth ? 1 : 2;
	if (p->kind == ACI_ADHESIVE)
		n = low(n, bond(&j, earthquake));
	return j.out * 0.70 * kcp * n;
}

/* --- blowout, edge -------------------------------------------------------------------------- */

double plain_aci_blowout(const struct plain_aci *from, bool earthquake)
{
	struct job j = open_job(from);
	const struct plain_aci *p = &j.p;
	double c[4], c1 = p->y0;
	edges(p, c);
	double c2 = low(c[0], c[1]);
	double n = j.e.blowout * c1 * sqrt(p->abrg) * lambda_of(p, false) * sqrt(fc_of(&j));
	n *= 1 + (p->nx - 1) * p->sx / (6 * c1);
	if (c2 < 3 * c1)
		n *= (1 + high(1, c2 / c1)) / 4;
	return j.out * phi_of(p, p->tied) * n * (earthquake ? 0.75 : 1);
}

static double basic_shear(const struct job *j, double c1)
{
	const struct plain_aci *p = &j->p;
	double le = p->le > 0 ? p->le : p->kind == ACI_TORQUE ? 2 * p->d : p->hef;
	double root = lambda_of(p, false) * sqrt(fc_of(j)) * pow(c1, 1.5);
	le = low(le, 8 * p->d);
	return low(j->e.shear * pow(le / p->d, 0.2) * sqrt(p->d), j->e.ceiling) * root;
}

double plain_aci_edge(const struct plain_aci *from, bool along, bool earthquake)
{
	struct job j = open_job(from);
	const struct plain_aci *p = &j.p;
	double c[4], c1 = p->y0;
	static const double bars[] = {1, 1.2, 1.4};
	edges(p, c);
	double far = high(c[0], c[1]), s = p->nx > 1 ? p->sx : 0;
	if (far < 1.5 * c1 && p->ha < 1.5 * c1)
		c1 = low(c1, high(far / 1.5, high(p->ha / 1.5, s / 3)));
	double face = covered(c[0], c[1], p->nx, p->sx, 1.5 * c1) * low(1.5 * c1, p->ha);
	double v = face / (4.5 * c1 * c1) * basic_shear(&j, c1);
	v *= p->cracked || earthquake ? bars[p->bars] : 1.4;
	v *= high(1, sqrt(1.5 * c1 / p->ha));
	v *= along ? 2 : edge_factor(low(c[0], c[1]), 1.5 * c1);
	return j.out * (p->tied ? 0.75 : 0.70) * v;
}
