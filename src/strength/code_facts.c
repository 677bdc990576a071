/* One cell's facts as a code's equations take them, and which code answers what. */
#include "aci_values.h"
#include "needs.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* of the shaft's area; M16 and larger have more of it, smaller threads less: strengths ask for the
 * area itself */
#define THREAD_SHARE 0.78
#define LEAST_GROUT 30.0         /* EN 1992-4 6.2.2.3 [MPa] */
#define THIN_GROUT 0.5           /* shafts: up to there as if it bore flat */
#define THICK_GROUT 40.0         /* EN 1992-4 (7.36) [mm] */
#define THICK_GROUT_SHAFTS 5.0
#define HEAD_SLOPE 6.0           /* EN 1992-4 (7.11): a thin head bears up to dh = 6 th + d */

static double given_or_none(const struct number *number)
{
	return is_known(*number) ? number->value : 0;
}

static bool is_yes(const struct word *word) { return is_known(*word) && word->value == YES; }

/* --- anchor --------------------------------------------------------------------------------- */

static void resolve_anchor(const struct product *product, struct code_facts *out)
{
	const struct anchor_strength *given = &product->strength;
	out->type_known = is_known(product->type);
	out->type = (enum anchor_type)product->type.value;
	out->cast_in = out->type_known &&
	               (out->type == CAST_IN_HEADED || out->type == CAST_IN_HOOKED);
	out->embedment = given_or_none(&product->embedment);
	out->shaft = given_or_none(&product->shaft);
	out->tensile_area = is_known(product->tensile_area)
	                            ? product->tensile_area.value
	                            : THREAD_SHARE * (pi / 4) * out->shaft * out->shaft;
	out->shear_area = is_known(given->shear_area) ? given->shear_area.value : out->tensile_area;
	out->yield = given_or_none(&given->yield);
	out->ultimate = given_or_none(&given->ultimate);
}

/* A round head outside the shaft. EN counts no more of a thin one than its thickness spreads. */
static double head_area(const struct code_facts *f)
{
	const struct anchor_strength *given = f->given;
	double head = given_or_none(&given->head_diameter), d = f->shaft;
	if (is_known(given->head_area))
		return given->head_area.value;
	if (!(head > d) || !(d > 0))
		return 0;
	if (f->code == EN1992_4) {
		if (!is_known(given->head_thickness))
			return 0;
		head = fmin(head, HEAD_SLOPE * given->head_thickness.value + d);
	}
	return pi / 4 * (head * head - d * d);
}

/* --- concrete ------------------------------------------------------------------------------- */

static double aci_lambda(const struct code_facts *f, const struct number *lightweight)
{
	double lambda = is_known(*lightweight) ? lightweight->value : 1;
	if (lambda >= 1)
		return 1;
	bool whole = f->type_known && (f->cast_in || f->type == UNDERCUT);
	return whole ? lambda : ACI_LIGHT_DRILLED * lambda;
}

static void resolve_concrete(const struct slab *slab, double concrete, struct code_facts *out)
{
	const struct concrete *c = &slab->concrete;
	double most = out->cast_in ? ACI_FC_CAST_IN : ACI_FC_POST_INSTALLED;
	bool aci = out->code == ACI318;
	out->cracked = !(is_known(c->cracked) && c->cracked.value == NO &&
	                 is_known(c->uncracked_reason));
	out->concrete = aci ? fmin(concrete, most) : concrete;       /* 17.3.1 */
	out->lambda = aci ? aci_lambda(out, &c->lightweight) : 1;
	out->thickness = given_or_none(&slab->thickness);
}

/* --- gap below the base --------------------------------------------------------------------- */

/* What grout makes of a gap. `concrete`: as the slab has it, not as the code limits it. */
static enum lever_arm grouted(const struct code_facts *f, double concrete)
{
	const struct stand_off *gap = &f->cell->stand_off;
	double height = gap->height.value, d = f->shaft;
	if (!is_known(gap->grout_strength))
		return LEVER_UNKNOWN;
	/* concrete that is not known may be stronger than the grout */
	if (!(concrete > 0) || !(d > 0))
		return LEVER_UNKNOWN;
	if (gap->grout_strength.value < fmax(LEAST_GROUT, concrete))
		return LEVER_ARM;
	if (f->code == EN1992_4 && height <= THIN_GROUT * d)
		return NO_LEVER;
	/* ACI 318-19 17.7.1.2.1 names no limit to its grout pads: those of EN 1992-4 stand in; S13
	 */
	return height <= fmin(THICK_GROUT, THICK_GROUT_SHAFTS * d) ? GROUT_PAD : LEVER_ARM;
}

static enum lever_arm lever_arm(const struct code_facts *f, double concrete)
{
	const struct stand_off *gap = &f->cell->stand_off;
	const struct number *topping = &f->cell->slab.topping;
	if (is_known(*topping) && topping->value > 0)
		return LEVER_ARM;        /* S12 */
	if (!is_known(*topping) || !is_known(gap->height))
		return LEVER_UNKNOWN;
	if (gap->height.value == 0)
		return NO_LEVER;
	if (!is_known(gap->filled))
		return LEVER_UNKNOWN;
	return gap->filled.value == YES ? grouted(f, concrete) : LEVER_ARM;
}

/* EN 1992-4 (7.37): from the middle of the base plate down to a3 below the concrete, which a nut
 * clamped there makes zero. 0: something is not known. */
static double lever(const struct code_facts *f)
{
	const struct number *gap = &f->cell->stand_off.height;
	const struct number *plate = &f->cell->anchors.plate_thickness;
	if (!is_known(*gap) || !is_known(*plate) || !(f->shaft > 0))
		return 0;
	double fixed = is_yes(&f->given->clamped) ? 0 : ACI_LEVER_DEPTH * f->shaft;
	return fixed + given_or_none(&f->cell->slab.topping) + gap->value + plate->value / 2;
}

/* --- the whole ------------------------------------------------------------------------------ */

void code_facts_resolve(const struct cell *cell, enum code code, double concrete,
                        struct code_facts *out)
{
	const struct product *product = &cell->anchors.product;
	*out = (struct code_facts){.code = code, .cell = cell, .given = &product->strength};
	resolve_anchor(product, out);
	resolve_concrete(&cell->slab, concrete, out);
	out->head_area = head_area(out);
	out->lever_arm = lever_arm(out, concrete);
	if (out->lever_arm == LEVER_ARM || out->lever_arm == GROUT_PAD)
		out->lever = lever(out);
	if (out->lever_arm == GROUT_PAD)
		out->grout = cell->stand_off.height.value;
}

size_t code_missing(const struct code_facts *facts, enum code_mode mode, bool earthquake,
                    const char *path[], size_t room)
{
	return (facts->code == ACI318 ? aci_missing : en_missing)(facts, mode, earthquake, path,
	                                                           room);
}

const char *code_left_out(const struct cell *cell, enum code code, enum code_mode mode)
{
	return (code == ACI318 ? aci_left_out : en_left_out)(cell, mode);
}

double code_input(struct trace *trace, const char *symbol, const struct number *number,
                  double value, enum dimension dimension, const char *meaning)
{
	if (is_known(*number) && number->value == value)
		return trace_input(trace, symbol, number, dimension, meaning);
	return trace_step(trace, symbol, "", value, dimension, "", meaning);
}
