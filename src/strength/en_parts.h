/* What several modes of EN 1992-4 share: factors with their steps, and characteristic strengths
 * before the partial factor. Used by en_*.c alone. `cracked` is an argument, since an earthquake
 * counts all concrete as cracked (Annex C; S36). Every function takes a NULL trace. */
#ifndef EN_PARTS_H
#define EN_PARTS_H

#include "design.h"

/* Steps f_ck [MPa], h_ef, d [mm], gamma_Mc. `tension`: with gamma_inst. */
double en_fck(const struct code_facts *f, struct trace *trace);
double en_embedment(const struct code_facts *f, struct trace *trace);
double en_shaft(const struct code_facts *f, struct trace *trace);
double en_gamma_mc(const struct code_facts *f, bool tension, struct trace *trace);
double en_gamma_ms_tension(const struct code_facts *f, struct trace *trace);
double en_gamma_ms_shear(const struct code_facts *f, struct trace *trace);
/* NRk,s, of an earthquake's category or not [N] */
double en_steel_tension_characteristic(const struct code_facts *f, bool earthquake,
                                       struct trace *trace);

/* What the sheet states at `at_concrete` in weaker concrete: min(1, fck/at); S23. Step psi_f. */
double en_by_concrete(const struct code_facts *f, struct trace *trace);
/* psi_s = 0.7 + 0.3 c/reach <= 1. `reach_symbol` is an earlier step. */
double en_edge_factor(double c, double reach, const char *symbol, const char *reach_symbol,
                      const char *source, struct trace *trace);
/* (7.5), of a depth that stands in the trace as `depth_symbol` */
double en_spalling_factor(const struct code_facts *f, double depth, const char *depth_symbol,
                          struct trace *trace);
/* min(1, ...) of Table C.3: step alpha_eq */
double en_alpha_eq(const struct code_facts *f, enum code_mode mode, size_t count,
                   struct trace *trace);
double en_alpha_gap(const struct code_facts *f, struct trace *trace);
bool en_drilled(const struct code_facts *f);          /* post-installed */

/* (7.2) of a depth [N]; step N0_Rk_c */
double en_cone_single(const struct code_facts *f, bool cracked, double depth,
                      const char *depth_symbol, struct trace *trace);
/* (7.1); step N_Rk_c. Fills anchors, count, edge, centre and lever of out. */
double en_cone_characteristic(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                              bool cracked, struct group_strength *out, struct trace *trace);
/* N0Rk,p of a bonded anchor [N]; steps tau_Rk, psi_sus, N0_Rk_p */
double en_bond_single(const struct code_facts *f, bool cracked, bool earthquake,
                      struct trace *trace);
/* (7.13); step N_Rk_p. Fills out as above. */
double en_bond_characteristic(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                              bool cracked, bool earthquake, struct group_strength *out,
                              struct trace *trace);
/* NRk,p of an anchor that is not bonded [N]; HUGE_VAL where the sheet says that it does not
 * govern */
double en_pullout_characteristic(const struct code_facts *f, bool cracked, bool earthquake,
                                 struct trace *trace);

/* scr,Np [mm] */
double en_bond_spacing(const struct code_facts *f);

/* Ends a group's mode: divides by gamma_Mc, and the seismic twin times alpha_eq. Steps `symbol`,
 * or symbol_eq in an earthquake, from the step `from`. */
void en_finish(const struct code_facts *f, enum code_mode mode, double resting, double shaking,
               const char *symbol, const char *from, bool earthquake, struct group_strength *out,
               struct trace *trace);

#endif
