/* A cell for EN 1992-4 by plain numbers, with its facts and its pattern. Tests only. */
#ifndef EN_CASE_H
#define EN_CASE_H

#include "../../src/strength/design.h"

enum { EN_CASE_EDGES = 16 };

struct en_case {
	struct cell cell;
	struct code_facts facts;
	struct arena arena;
	struct pattern pattern;
	struct segment edge[EN_CASE_EDGES];
	size_t edge_count;
	double clear;            /* as in struct pattern; HUGE_VAL: no edge anywhere */
	double fck;
	enum lever_arm lever_arm;
	double lever;
};

/* A torque-controlled anchor 12 mm x 70 mm with all that a sheet can state, alone, cracked C20/25,
 * 200 mm thick, no edge. */
void en_case_open(struct en_case *it);
void en_case_close(struct en_case *it);
void en_case_number(struct number *number, double value);
void en_case_word(struct word *word, int value);
/* One ring of edges, anticlockwise. */
void en_case_outline(struct en_case *it, const struct vec2 *ring, size_t count);
/* Facts and pattern from what the case states; call again after every change. */
void en_case_settle(struct en_case *it);
/* Set of all its anchors. */
uint64_t en_case_all(const struct en_case *it);

#endif
