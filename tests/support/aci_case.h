/* An anchor group in a slab as the ACI 318-19 equations see it, for tests: the cell's members are
 * set one by one, then facts and pattern are built from it. Tests only. */
#ifndef ACI_CASE_H
#define ACI_CASE_H

#include "../../src/strength/design.h"

enum { ACI_CASE_EDGES = 16 };

struct aci_case {
	struct cell cell;
	double concrete;             /* strength of the slab [MPa] */
	struct vec2 at[MAX_ANCHORS]; /* [mm] */
	size_t count;
	double turned;               /* of the pattern's axes [rad] */
	struct segment edge[ACI_CASE_EDGES];
	size_t edge_count;
	double clear;                /* as struct pattern's; HUGE_VAL: no edge anywhere */
	struct arena arena;
	struct code_facts facts;
	struct pattern pattern;
	struct edge_view *view;
	size_t view_count;
};

/* A base on flat structural concrete without edges; nothing of the anchor is known. */
void aci_case_open(struct aci_case *it);
void aci_case_close(struct aci_case *it);
void aci_number(struct number *number, double value);
void aci_word(struct word *word, int value);
void aci_text(struct text *text, const char *value);
/* Straight edges from corner to corner, closed. */
void aci_case_outline(struct aci_case *it, const struct vec2 corner[], size_t count);
/* Resolves facts and pattern anew; what was built before is gone. */
void aci_case_build(struct aci_case *it);
uint64_t aci_case_all(const struct aci_case *it);
/* The view that looks most nearly in this direction; a failure where there is none. */
const struct edge_view *aci_case_view(const struct aci_case *it, double x, double y);

#endif
