/* Earthquake force on a component of a building, static forms of the codes.
 *
 * Sources, each line's own standing beside it in seismic.c and in the trace:
 *   ASCE 7-16 13.3.1   Fp = 0.4 ap SDS Wp/(Rp/Ip) (1 + 2 z/h), 0.3 SDS Ip Wp <= Fp <= 1.6 SDS Ip Wp
 *                      (second-hand: a public calculation with numbers);
 *   ASCE 7-22 13.3.1   Fp = 0.4 SDS Ip Wp (Hf/Rmu)(CAR/Rpo), same limits (second-hand: the forms in
 *                      public code); at grade Hf = Rmu = 1 (from memory);
 *   both               +-0.2 SDS Wp vertical with it, and overstrength on Fp for anchors in
 *                      concrete (from memory);
 *   EN 1998-1 4.3.5.2  Fa = Sa Wa ga/qa, Sa = al S (3 (1 + z/H)/(1 + (1 - Ta/T1)^2) - 0.5) >= al S
 *                      (symbols and equation numbers seen, the expression from memory).
 * Every one must be read in the standard before a result is signed.
 *
 * Range: a component fixed to a building or to its ground slab; forces at strength level, so an
 * allowable-load rating is compared under the service factors (rare_combination.h). Direction: the
 * horizontal force acts at the centre of mass in every heading, the vertical one up and down with
 * it. Sliding, displacement between floors and the base's own period are not covered.
 * Identities: forces are proportional to the weight; at the floor with unit factors ASCE 7-22 gives
 * 0.4 SDS Wp; EN gives al S Wa at the base for a rigid element, 2.5 al S Wa in resonance.
 * Units: N, s; all else plain numbers. Vertical force positive downward. */
#ifndef SEISMIC_H
#define SEISMIC_H

#include "../cell/trace.h"
#include "extra.h"

enum seismic_code { SEISMIC_ASCE7_16, SEISMIC_ASCE7_22, SEISMIC_EN1998 };

struct seismic_asce7_16 {
	double sds;                  /* short-period design acceleration over g [-] */
	double amplification;        /* ap, Table 13.5-1 or 13.6-1: 1 to 2.5 */
	double response;             /* Rp, the same tables: 1 or more */
	double importance;           /* Ip: 1 or 1.5 */
	double height_share;         /* z/h: 0 at or below the base, 1 at the roof and above */
	double overstrength;         /* Om0 of the tables, for anchors in concrete: 1 or more */
};

struct seismic_asce7_22 {
	double sds, importance, height_share;   /* as above; z/h 0: at or below grade */
	double resonance;            /* CAR, Table 13.5-1 or 13.6-1: 1 or more */
	double response;             /* Rpo, the same tables: 1 or more */
	double overstrength;         /* Om0p, the same tables: 1 or more */
	double building_period;      /* Ta of the building [s]; 0: not known, the larger form */
	/* R, Ie, Om0 of the building's system, all three or none (0): then Rmu is at its least */
	double building_response, building_importance, building_overstrength;
};

struct seismic_en1998 {
	double ground_share;         /* al = ag/g on ground type A [-] */
	double soil;                 /* S, soil factor: 1 or more */
	double height_share;         /* z/H: 0 at the base, 1 at the top */
	double period_ratio;         /* Ta/T1 of element and building; 1 (resonance) is the worst */
	double importance;           /* ga, 4.3.5.3: 1 or more */
	double behaviour;            /* qa, Table 4.4: 1 or 2 */
};

enum seismic_governs { SEISMIC_BY_EQUATION, SEISMIC_BY_LEAST, SEISMIC_BY_MOST };

struct seismic_force {
	double horizontal;           /* at the centre of mass, any heading [N] */
	double vertical;             /* both signs, together with it [N] */
	double for_anchors;          /* horizontal with overstrength, anchors in concrete [N] */
	double equation, least, most; /* before and at the limits [N]; EN: most HUGE_VAL */
	enum seismic_governs governs;
};

/* Why the numbers cannot be, with what to write; NULL when they can. */
const char *seismic_asce7_16_fault(const struct seismic_asce7_16 *site);
const char *seismic_asce7_22_fault(const struct seismic_asce7_22 *site);
const char *seismic_en1998_fault(const struct seismic_en1998 *site);

/* Of numbers without a fault; weight of the component with all that moves with it [N], >= 0. */
void seismic_asce7_16(const struct seismic_asce7_16 *site, double weight, struct seismic_force *out,
                      struct trace *trace);
void seismic_asce7_22(const struct seismic_asce7_22 *site, double weight, struct seismic_force *out,
                      struct trace *trace);
/* Gives no vertical force and no overstrength: 4.3.5 names neither. */
void seismic_en1998(const struct seismic_en1998 *site, double weight, struct seismic_force *out,
                    struct trace *trace);

/* As part of a load case about the cell origin: a horizontal force [N] that turns through all
 * headings at the centre of mass (x, y, height) [mm], and a vertical one, downward positive [N].
 * The caller has put the factors of the combination on both. */
void seismic_action(double horizontal, double vertical, const double centre[3],
                    struct extra_action *out);

#endif
