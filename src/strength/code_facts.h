/* What the equations of a design code need to know of one cell, resolved to plain numbers once a
 * setup and code. Numbers, no verdicts.
 *
 * Sources: ACI 318-19 chapter 17 (SI constants, inch-pound ones in the tests), EN 1992-4:2018.
 * Units N, mm, MPa. A number that the cell does not give and that has no safe value of the code is
 * 0 here, and code_missing names its key. */
#ifndef CODE_FACTS_H
#define CODE_FACTS_H

#include "../cell/cell.h"
#include "../cell/trace.h"

enum code { ACI318, EN1992_4, CODES };

/* Ways in which anchors fail, in the order in which they are listed. */
enum code_mode {
	STEEL_TENSION,       /* of the most loaded anchor */
	CONE,                /* concrete breakout, cone: of a group */
	PULLOUT,             /* of the most loaded anchor */
	BLOWOUT,             /* side-face blowout, headed: of a row along an edge */
	BOND,                /* adhesive; EN: combined pull-out and cone: of a group */
	SPLITTING,           /* EN alone: of a group */
	BOND_SUSTAINED,      /* ACI alone: of the most loaded anchor under lasting tension */
	STEEL_SHEAR,         /* with or without lever arm: of the most loaded anchor */
	EDGE,                /* shear breakout toward an edge or joint */
	PRYOUT,              /* of a group */
	CODE_MODES
};
enum { FIRST_SHEAR_MODE = STEEL_SHEAR };

/* How a gap between base and concrete counts in shear. */
enum lever_arm { NO_LEVER, GROUT_PAD, LEVER_ARM, LEVER_UNKNOWN };

struct code_facts {
	enum code code;
	const struct cell *cell;
	const struct anchor_strength *given;
	bool type_known;
	enum anchor_type type;
	bool cast_in;                /* headed or hooked */
	bool cracked;                /* as the slab is stated; true unless shown */
	double concrete;             /* f'c or fck as the code limits it [MPa] */
	double lambda;               /* lambda_a of concrete failure [-] */
	double thickness;            /* of the structural concrete, ha or h [mm] */
	double embedment, shaft;     /* hef, da or d [mm] */
	double tensile_area, shear_area;     /* [mm2]; the tensile area is 0.78 of the shaft's where
	                                      * it is not given */
	double yield, ultimate;      /* as given [MPa]; futa is limited where it is used */
	double head_area;            /* Abrg or Ah [mm2] */
	enum lever_arm lever_arm;
	double lever;                /* la = a3 + e1, EN 1992-4 (7.37); with LEVER_ARM [mm] */
	double grout;                /* thickness of a grout pad [mm] */
	/* Some anchor is under tension from what always acts (lasting loads): set before anything
	 * is computed; EN 1992-4 (7.14), ACI 318-19 17.5.2.2 */
	bool sustained_tension;
};

/* `concrete`: cylinder strength of the slab, 0 where it is not known [MPa]. */
void code_facts_resolve(const struct cell *cell, enum code code, double concrete,
                        struct code_facts *out);
/* Field paths (constants) that the mode needs and the cell does not give; in an earthquake too.
 * Returns how many it put into path. 0: the mode can be computed. */
size_t code_missing(const struct code_facts *facts, enum code_mode mode, bool earthquake,
                    const char *path[], size_t room);
/* Why the mode does not apply to this cell ("no adhesive anchor"), or NULL. An unknown type applies
 * to everything. */
const char *code_left_out(const struct cell *cell, enum code code, enum code_mode mode);

/* A resolved value as a step: the input where the file states just it, else a value of its own. */
double code_input(struct trace *trace, const char *symbol, const struct number *number,
                  double value, enum dimension dimension, const char *meaning);

/* --- assumptions ---------------------------------------------------------------------------- */
/* Where a clause is doubtful, from memory or silent, the safe reading is taken: numbered, one list
 * for both codes (code_assumptions.c), each named constant beside its source. */
struct code_assumption {
	const char *id;              /* "S1" ... */
	enum code code;              /* CODES: both */
	unsigned modes;              /* bit of each mode that rests on it; 0: all of the code */
	const char *sentence;        /* whole, without the number */
	enum { ALWAYS, IN_EARTHQUAKES, WITH_A_GAP, OF_CAST_IN } when; /* what it needs to matter */
};
extern const struct code_assumption code_assumptions[];
extern const size_t code_assumption_count;

#endif
