#include "aci_case.h"

#include <criterion/criterion.h>
#include <math.h>

void aci_number(struct number *number, double value)
{
	*number = (struct number){{{0}, GIVEN}, value, NULL};
}

void aci_word(struct word *word, int value) { *word = (struct word){{{0}, GIVEN}, value}; }

void aci_text(struct text *text, const char *value) { *text = (struct text){{{0}, GIVEN}, value}; }

void aci_case_open(struct aci_case *it)
{
	*it = (struct aci_case){.clear = HUGE_VAL};
	arena_open(&it->arena, NULL, NULL);
	aci_number(&it->cell.slab.topping, 0);
	aci_number(&it->cell.stand_off.height, 0);
	aci_word(&it->cell.slab.concrete.cracked, YES);
}

void aci_case_close(struct aci_case *it) { arena_close(&it->arena); }

void aci_case_outline(struct aci_case *it, const struct vec2 corner[], size_t count)
{
	cr_assert_leq(count, (size_t)ACI_CASE_EDGES);
	for (size_t i = 0; i < count; i++)
		it->edge[i] = (struct segment){corner[i], corner[(i + 1) % count]};
	it->edge_count = count;
	it->clear = 0;
}

void aci_case_build(struct aci_case *it)
{
	arena_close(&it->arena);
	arena_open(&it->arena, NULL, NULL);
	code_facts_resolve(&it->cell, ACI318, it->concrete, &it->facts);
	cr_assert(pattern_build(it->at, it->count, it->turned, it->edge, it->edge_count, it->clear,
	                        &it->arena, &it->pattern));
	cr_assert(edge_views(&it->pattern, &it->arena, &it->view, &it->view_count));
}

uint64_t aci_case_all(const struct aci_case *it)
{
	return it->count < MAX_ANCHORS ? ((uint64_t)1 << it->count) - 1 : UINT64_MAX;
}

const struct edge_view *aci_case_view(const struct aci_case *it, double x, double y)
{
	const struct edge_view *best = NULL;
	double most = 0.9;
	for (size_t v = 0; v < it->view_count; v++) {
		double turn = it->view[v].toward.x * x + it->view[v].toward.y * y;
		if (turn > most) {
			most = turn;
			best = &it->view[v];
		}
	}
	cr_assert(best, "no edge toward (%g, %g)", x, y);
	return best;
}
