/* EN 1992-4:2018 computed plainly from the clauses. Written apart from src/strength. */
#include "plain_en1992_4.h"

#include <math.h>
#include <stdlib.h>

enum { MOST = 64 };

static double low(double a, double b) { return a < b ? a : b; }
static double high(double a, double b) { return a > b ? a : b; }

/* --- geometry: a rectangular slab, a grid ----------------------------------------------------- */

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return (x > y) - (x < y);
}

/* Squares around the anchors, cut at the slab, counted cell by cell of their own sides. */
static double squares_together(const struct plain_en *p, double half)
{
	double x[2 * MOST], y[2 * MOST], area = 0;
	int nx = 0, ny = 0;
	for (int i = 0; i < p->nx; i++) {
		x[nx++] = high(0, p->x0 + i * p->sx - half);
		x[nx++] = low(p->x_length, p->x0 + i * p->sx + half);
	}
	for (int k = 0; k < p->ny; k++) {
		y[ny++] = high(0, p->y0 + k * p->sy - half);
		y[ny++] = low(p->y_length, p->y0 + k * p->sy + half);
	}
	qsort(x, (size_t)nx, sizeof *x, by_size);
	qsort(y, (size_t)ny, sizeof *y, by_size);
	for (int a = 0; a + 1 < nx; a++)
		for (int b = 0; b + 1 < ny; b++) {
			double mx = (x[a] + x[a + 1]) / 2, my = (y[b] + y[b + 1]) / 2;
			bool in_x = false, in_y = false;
			for (int i = 0; i < p->nx; i++)
				in_x |= fabs(mx - p->x0 - i * p->sx) < half;
			for (int k = 0; k < p->ny; k++)
				in_y |= fabs(my - p->y0 - k * p->sy) < half;
			if (in_x && in_y)
				area += (x[a + 1] - x[a]) * (y[b + 1] - y[b]);
		}
	return area;
}

/* left, right, below, above: from the nearest anchor */
static void edges(const struct plain_en *p, double c[4])
{
	c[0] = p->x0;
	c[1] = p->x_length - p->x0 - (p->nx - 1) * p->sx;
	c[2] = p->y0;
	c[3] = p->y_length - p->y0 - (p->ny - 1) * p->sy;
}

static double nearest(const struct plain_en *p)
{
	double c[4];
	edges(p, c);
	return low(low(c[0], c[1]), low(c[2], c[3]));
}

static double neighbours(const struct plain_en *p)
{
	return high(p->nx > 1 ? p->sx : 0, p->ny > 1 ? p->sy : 0);
}

/* --- shared factors ----------------------------------------------------------------------------
 */

static int count(const struct plain_en *p) { return p->nx * p->ny; }
static double f(const struct plain_en *p) { return low(p->fck, 50); }
static double weaker(const struct plain_en *p) { return low(1, f(p) / p->at); }
static double g_tension(const struct plain_en *p)
{
	return p->kind == PLAIN_HEADED ? 1.5 : 1.5 * p->ginst;
}
static double psi_s(double c, double ccr) { return low(1, 0.7 + 0.3 * c / ccr); }
static double psi_re(const struct plain_en *p, double hef)
{
	return p->open_mesh ? 1 : low(1, 0.5 + hef / 200);
}
static double alpha_group(const struct plain_en *p) { return count(p) > 1 ? 0.85 : 1; }
static double alpha_cone(const struct plain_en *p)
{
	if (p->kind == PLAIN_HEADED || p->kind == PLAIN_UNDERCUT)
		return alpha_group(p);
	return count(p) > 1 ? 0.75 : 0.85;
}

/* --- steel --------------------------------------------------------------------------------------
 */

double plain_steel_tension(const struct plain_en *p, bool earthquake)
{
	double gamma = high(1.4, 1.2 * p->fuk / p->fyk);
	return (earthquake ? p->n_eq : p->as * p->fuk) / gamma;
}

static double gamma_shear(const struct plain_en *p)
{
	if (p->fuk <= 800 && p->fyk / p->fuk <= 0.8)
		return high(1.25, p->fuk / p->fyk);
	return 1.5;
}

double plain_steel_shear(const struct plain_en *p, bool earthquake)
{
	if (earthquake)
		return 0.5 * alpha_group(p) * p->v_eq / gamma_shear(p);
	double v = (p->fuk <= 500 ? 0.6 : 0.5) * p->as * p->fuk;
	if (p->hef / p->d < 5 && p->fck < 20)
		v *= 0.8;
	if (count(p) > 1 && !p->ductile)
		v *= 0.8;
	return v / gamma_shear(p);
}

double plain_bent(const struct plain_en *p, double tension, double arm, double alpha)
{
	double core = low(p->d, 2 * sqrt(p->as / 3.14159265358979323846));
	double m0 = 1.2 * 3.14159265358979323846 * pow(core, 3) / 32 * p->fuk;
	double m = m0 * (1 - tension / plain_steel_tension(p, false));
	return low(plain_steel_shear(p, false), alpha * high(0, m) / arm / gamma_shear(p));
}

/* --- tension ------------------------------------------------------------------------------------
 */

static double cone_zero(const struct plain_en *p, bool cracked, double hef)
{
	double k1 = p->kind == PLAIN_HEADED ? (cracked ? 8.9 : 12.7) : (cracked ? 7.7 : 11.0);
	return k1 * sqrt(f(p)) * pow(hef, 1.5);
}

/* (7.1), 7.2.1.4(8) */
static double cone(const struct plain_en *p, bool cracked)
{
	double hef = p->hef, c[4], largest = 0;
	int near = 0;
	edges(p, c);
	for (int i = 0; i < 4; i++)
		if (c[i] < 1.5 * p->hef) {
			near++;
			largest = high(largest, c[i]);
		}
	if (near >= 3)
		hef = high(largest / 1.5, low(neighbours(p), 3 * p->hef) / 3);
	double scr = 3 * hef, ccr = 1.5 * hef;
	return cone_zero(p, cracked, hef) * squares_together(p, ccr) / (scr * scr) *
	       psi_s(nearest(p), ccr) * psi_re(p, hef);
}

double plain_cone(const struct plain_en *p, bool earthquake)
{
	if (earthquake)
		return alpha_cone(p) * cone(p, true) / g_tension(p);
	return cone(p, p->cracked) / g_tension(p);
}

static double pulled(const struct plain_en *p, bool cracked, bool earthquake)
{
	if (earthquake)
		return p->p_eq * weaker(p);
	if (p->kind == PLAIN_HEADED)
		return (cracked ? 7.5 : 10.5) * p->ah * f(p);
	return (cracked ? p->p_cr : p->p_ucr) * weaker(p);
}

double plain_pullout(const struct plain_en *p, bool earthquake)
{
	double alpha = earthquake ? alpha_group(p) : 1;
	return alpha * pulled(p, p->cracked, earthquake) / g_tension(p);
}

static double psi_sus(const struct plain_en *p) { return p->sustained ? 0.6 : 1; }

static double bond_zero(const struct plain_en *p, bool cracked, bool earthquake)
{
	double tau = weaker(p) * (earthquake ? p->tau_eq : cracked ? p->tau_cr : p->tau_ucr);
	return psi_sus(p) * tau * 3.14159265358979323846 * p->d * p->hef;
}

static double bond(const struct plain_en *p, bool cracked, bool earthquake)
{
	double n = count(p), pi = 3.14159265358979323846;
	double scr = low(7.3 * p->d * sqrt(psi_sus(p) * p->tau_ucr * high(1, 20 / p->at)),
	                 3 * p->hef);
	double tau = weaker(p) * (cracked ? p->tau_cr : p->tau_ucr);
	double tau_c = (cracked ? 7.7 : 11.0) / (pi * p->d) * sqrt(p->hef * f(p));
	double psi0 = high(1, sqrt(n) - (sqrt(n) - 1) * pow(tau / tau_c, 1.5));
	double psi_g = n > 1 ? high(1, psi0 - sqrt(neighbours(p) / scr) * (psi0 - 1)) : 1;
	return bond_zero(p, cracked, earthquake) * squares_together(p, scr / 2) / (scr * scr) *
	       psi_g * psi_s(nearest(p), scr / 2) * psi_re(p, p->hef);
}

double plain_bond(const struct plain_en *p, bool earthquake)
{
	double alpha = earthquake ? alpha_group(p) : 1;
	return alpha * bond(p, earthquake || p->cracked, earthquake) / g_tension(p);
}

double plain_splitting(const struct plain_en *p, bool earthquake)
{
	double ccr = p->ccr_sp, c1 = nearest(p);
	bool cracked = earthquake || p->cracked;
	if (c1 >= (count(p) > 1 ? 1.2 : 1) * ccr && p->h >= p->hmin)
		return -1;
	double zero = low(cone_zero(p, cracked, p->hef),
	                  p->kind == PLAIN_BONDED ? bond_zero(p, cracked, earthquake)
	                                          : pulled(p, cracked, earthquake));
	double grown = pow(p->h / p->hmin, 2.0 / 3);
	double older = low(grown, high(1, pow(2 * p->hef / p->hmin, 2.0 / 3)));
	double newer = low(grown, low(2, high(1, pow((p->hef + 1.5 * c1) / p->hmin, 2.0 / 3))));
	double n = zero * squares_together(p, ccr) / (4 * ccr * ccr) * psi_s(c1, ccr) *
	           psi_re(p, p->hef) * low(older, newer);
	return (earthquake ? alpha_group(p) : 1) * n / g_tension(p);
}

double plain_blowout(const struct plain_en *p, bool earthquake)
{
	bool cracked = earthquake || p->cracked;
	double c1 = p->y0, c[4], n = p->nx;
	edges(p, c);
	double zero = (cracked ? 8.7 : 12.2) * c1 * sqrt(p->ah * f(p));
	double width = 0;
	for (int i = 0; i < p->nx; i++) {
		double step = i + 1 < p->nx ? low(p->sx, 4 * c1) : 0;
		width += step;
	}
	width += low(2 * c1, c[0]) + low(2 * c1, c[1]);
	double area = width * (2 * c1 + low(2 * c1, p->h - p->hef));
	double psi_g = n > 1 ? high(1, sqrt(n) + (1 - sqrt(n)) * p->sx / (4 * c1)) : 1;
	double strength = zero * area / (16 * c1 * c1) * psi_s(low(c[0], c[1]), 2 * c1) * psi_g;
	return (earthquake && p->nx > 1 ? 0.85 : 1) * strength / 1.5;
}

/* --- shear --------------------------------------------------------------------------------------
 */

double plain_pryout(const struct plain_en *p, bool earthquake)
{
	bool cracked = earthquake || p->cracked;
	double n = cone(p, cracked);
	if (p->kind == PLAIN_BONDED)
		n = low(n, bond(p, cracked, earthquake));
	double k8 = p->hef < 60 ? 1 : 2;
	if (p->tied)
		k8 *= 0.75;
	return (earthquake ? 0.5 * alpha_cone(p) : 1) * k8 * n / 1.5;
}

/* (7.40) to (7.46) of the row nearest to y = 0 */
double plain_edge(const struct plain_en *p, bool earthquake)
{
	bool cracked = earthquake || p->cracked;
	double c[4], c1 = p->y0;
	edges(p, c);
	double side_low = low(c[0], c[1]), side_high = high(c[0], c[1]);
	if (side_high < 1.5 * c1 && p->h < 1.5 * c1)
		c1 = low(c1, high(high(side_high / 1.5, p->h / 1.5), p->nx > 1 ? p->sx / 3 : 0));
	double lf = low(p->hef, p->d <= 24 ? 12 * p->d : high(8 * p->d, 300));
	double a = 0.1 * sqrt(lf / c1), b = 0.1 * pow(p->d / c1, 0.2);
	double zero = (cracked ? 1.7 : 2.4) * pow(p->d, a) * pow(lf, b) * sqrt(f(p)) * pow(c1, 1.5);
	double width = low(1.5 * c1, c[0]) + low(1.5 * c1, c[1]);
	for (int i = 0; i + 1 < p->nx; i++)
		width += low(p->sx, 3 * c1);
	double v = zero * width * low(1.5 * c1, p->h) / (4.5 * c1 * c1);
	v *= psi_s(side_low, 1.5 * c1) * high(1, sqrt(1.5 * c1 / p->h));
	if (p->stirrups && cracked && c1 >= 50)
		v *= 1.4;
	return (earthquake ? 0.5 * alpha_group(p) : 1) * v / 1.5;
}
