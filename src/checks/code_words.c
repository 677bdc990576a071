#include "code_words.h"

#include "../strength/code_facts.h"

/* Whether the assumption bears on something that this code computes for this cell. */
static bool bears_on(const struct code_assumption *a, const struct cell *cell, enum code code)
{
	if ((a->code != CODES && a->code != code) ||
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
