#include "code_words.h"

#include "../cell/load_model.h"
#include "../strength/code_facts.h"

/* Whether what the assumption needs to matter is there, or may be. */
static bool may_matter(const struct code_assumption *a, const struct cell *cell)
{
	const struct number *gap = &cell->stand_off.height, *topping = &cell->slab.topping;
	const struct word *type = &cell->anchors.product.type;
	switch (a->when) {
	case IN_EARTHQUAKES:
		return earthquake_stated(cell);
	case WITH_A_GAP:
		return !is_known(*gap) || gap->value > 0 || !is_known(*topping) ||
		       topping->value > 0;
	case OF_CAST_IN:
		return !is_known(*type) || type->value == CAST_IN_HEADED ||
		       type->value == CAST_IN_HOOKED;
	default:
		return true;
	}
}

/* Whether the assumption bears on something that this code computes for this cell. */
static bool bears_on(const struct code_assumption *a, const struct cell *cell, enum code code)
{
	if (!may_matter(a, cell) || (a->code != CODES && a->code != code) ||
	    !method_chosen(cell, (enum method)(METHOD_ACI318 + code)))
		return false;
	for (int mode = 0; mode < CODE_MODES; mode++)
		if (a->modes >> mode & 1 && !code_left_out(cell, code, (enum code_mode)mode))
			return true;
	return a->modes == 0;
}

size_t code_assumptions_used(const struct cell *cell, struct arena *arena, const char *out[],
                             size_t room)
{
	size_t count = 0;
	for (size_t i = 0; i < code_assumption_count && count < room; i++) {
		const struct code_assumption *a = &code_assumptions[i];
		if (!bears_on(a, cell, ACI318) && !bears_on(a, cell, EN1992_4))
			continue;
		const char *text = arena_format(arena, "%s %s", a->id, a->sentence);
		if (text)
			out[count++] = text;
	}
	return count;
}
