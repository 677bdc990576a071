/* The largest reactions of a history. */
#include "envelope.h"
#include <math.h>

static void values_of(const struct base_wrench *wrench, double out[REACTION_KINDS])
{
	const double *f = wrench->force, *m = wrench->moment;
	out[REACTION_TILTING] = sqrt(m[0] * m[0] + m[1] * m[1]);
	out[REACTION_HORIZONTAL] = sqrt(f[0] * f[0] + f[1] * f[1]);
	out[REACTION_UPLIFT] = f[2];
	out[REACTION_DOWNFORCE] = -f[2];
	out[REACTION_TWISTING] = fabs(m[2]);
}

/* Larger, or as large and earlier: so that the order of pieces does not matter. */
static bool governs(double value, uint32_t row, const struct envelope_entry *over)
{
	return value > over->value || (value >= over->value && row < over->at.row);
}

void envelope_add(struct envelope *envelope, const struct history_row *row)
{
	double value[REACTION_KINDS];
	values_of(&row->wrench, value);
	bool first = envelope->rows++ == 0;
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		if (first || governs(value[kind], row->row, &envelope->largest[kind]))
			envelope->largest[kind] = (struct envelope_entry){value[kind], *row};
}

void envelope_merge(struct envelope *into, const struct envelope *piece)
{
	if (piece->rows == 0)
		return;
	bool first = into->rows == 0;
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		const struct envelope_entry *entry = &piece->largest[kind];
		if (first || governs(entry->value, entry->at.row, &into->largest[kind]))
			into->largest[kind] = *entry;
	}
	into->rows += piece->rows;
}
