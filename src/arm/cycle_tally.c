/* Totals, table and list of counted cycles. */
#include "cycle_tally.h"
#include <math.h>
#include <string.h>

void cycle_tally_open(struct cycle_tally *tally, double limit, double width,
                      struct cycle_bin bin[], size_t bins)
{
	memset(bin, 0, bins * sizeof *bin);
	*tally = (struct cycle_tally){.limit = limit, .width = width, .bin = bin, .bins = bins};
}

static void add_bin(struct cycle_bin *to, const struct cycle_bin *bin)
{
	to->halves += bin->halves;
	to->largest = fmax(to->largest, bin->largest);
	to->mean_sum += bin->mean_sum;
}

/* Bins 2i and 2i+1 become bin i. */
static void double_width(struct cycle_tally *tally)
{
	for (size_t i = 0; i < tally->bins; i++) {
		struct cycle_bin joined = {0};
		for (size_t k = 2 * i; k < 2 * i + 2 && k < tally->bins; k++)
			add_bin(&joined, &tally->bin[k]);
		tally->bin[i] = joined;
	}
	tally->width *= 2;
}

/* The bin of a range, after as many doublings as it needs. */
static struct cycle_bin *bin_for(struct cycle_tally *tally, double range)
{
	while (range / tally->width >= (double)tally->bins)
		double_width(tally);
	return &tally->bin[(size_t)(range / tally->width)];
}

void cycle_tally_add(void *user, const struct load_cycle *cycle)
{
	struct cycle_tally *tally = user;
	uint64_t halves = cycle->full ? 2 : 1;
	if (tally->halves == 0 || cycle->range > tally->largest.range)
		tally->largest = *cycle;
	tally->halves += halves;
	if (cycle->range > tally->limit)
		tally->halves_above += halves;
	struct cycle_bin bin = {halves, cycle->range, (double)halves * cycle->mean};
	add_bin(bin_for(tally, cycle->range), &bin);
}

void cycle_tally_merge(struct cycle_tally *into, const struct cycle_tally *piece)
{
	if (piece->halves > 0 &&
	    (into->halves == 0 || piece->largest.range > into->largest.range))
		into->largest = piece->largest;
	into->halves += piece->halves;
	into->halves_above += piece->halves_above;
	while (into->width < piece->width)
		double_width(into);
	/* the largest range of a bin stands for the bin's place */
	for (size_t i = 0; i < piece->bins; i++)
		if (piece->bin[i].halves > 0)
			add_bin(bin_for(into, piece->bin[i].largest), &piece->bin[i]);
}

void cycle_list_add(void *user, const struct load_cycle *cycle)
{
	struct cycle_list *list = user;
	if (list->count == list->room)
		list->overflow = true;
	else
		list->list[list->count++] = *cycle;
}
