/* All modes of one code for one setting, ready for states: a state costs no geometry, since groups
 * and their strengths are kept by the set of anchors that is loaded (tension mask).
 *
 * Which loads go together: tension of a state with the shear of the same state where the file pairs
 * them, else with the largest shear over all headings of the same source (a bound, base/
 * shear_group.h). The interaction takes the governing tension mode and the governing shear mode of
 * that state, whichever anchors they belong to (safe side); steel by EN anchor by anchor. */
#ifndef CODE_STRENGTH_H
#define CODE_STRENGTH_H

#include "design.h"

struct strength_cache;       /* code_strength.c */

struct code_strength {
	struct code_facts facts;
	const struct pattern *pattern;
	struct edge_view *view;
	size_t view_count;
	bool ready[CODE_MODES], ready_seismic[CODE_MODES];   /* applies and nothing is missing */
	struct strength_cache *cache;
	struct arena *arena;         /* for new groups; its failure is sticky */
};
enum status code_strength_build(const struct cell *cell, enum code code, double concrete,
                                const struct pattern *pattern, struct arena *arena,
                                struct code_strength *out);
/* A copy with a cache and an arena of its own, for another thread. NO_MEMORY. */
enum status code_strength_copy(const struct code_strength *from, struct arena *arena,
                               struct code_strength *out);

/* How far a mode is used, and by whom. ratio -1: it cannot be computed or does not occur. */
struct mode_ratio {
	double ratio;
	uint64_t anchors;
	unsigned edge;               /* number from 1; 0 none */
	double demand, capacity; /* [N]: what the ratio is of; with eccentricity in the demand */
};

/* What acts on the anchors in one instant. */
struct anchor_load {
	size_t count;
	const double *tension;       /* >= 0 [N] */
	const double *shear;         /* sizes: of this instant, or the bound over headings [N] */
	/* vectors of this instant, cell axes [N]; NULL: `edge` and `pryout` are given instead */
	const struct vec2 *shear_at;
	struct mode_ratio edge, pryout;
	bool earthquake;
	bool sustained;              /* lasting loads alone */
};
struct code_ratios {
	struct mode_ratio mode[CODE_MODES];
	/* ACI: all; EN: steel, concrete apart. ratio -1 where a part is missing */
	struct mode_ratio together, together_steel;
};
void code_ratios(struct code_strength *s, const struct anchor_load *load, struct code_ratios *out);
/* Distance from which on anchors are pried out apart [mm]. */
double pryout_limit(const struct code_strength *s);
/* Unit vector at right angles to the edge of a view, out of the concrete, cell axes. */
struct vec2 code_edge_toward(const struct code_strength *s, size_t view);
/* Edge and pryout alone, for a heading. */
void code_shear_ratios(struct code_strength *s, const struct vec2 shear_at[], bool earthquake,
                       struct mode_ratio *edge, struct mode_ratio *pryout);
/* One mode of a state again, the same bits, with its written calculation: loads on the group (T_A1
 * ... V_A1 are earlier steps where the caller wrote them), strength, ratio. */
void code_trace_mode(struct code_strength *s, enum code_mode mode, const struct anchor_load *load,
                     struct mode_ratio *out, struct trace *trace);
/* The interaction again, from the ratios of its two governing modes. */
void code_trace_together(struct code_strength *s, bool steel, const struct anchor_load *load,
                         struct mode_ratio *out, struct trace *trace);

#endif
