/* What several modes of ACI 318-19 chapter 17 share: inputs and factors with their steps, and
 * nominal strengths before phi. Used by aci_*.c alone. `cracked` is an argument, since an
 * earthquake counts all concrete as cracked (S14). Every function takes a NULL trace. */
#ifndef ACI_PARTS_H
#define ACI_PARTS_H

#include "design.h"

/* Steps h_ef, d_a [mm], f_c [MPa], lambda_a. */
double aci_embedment(const struct code_facts *f, struct trace *trace);
double aci_shaft(const struct code_facts *f, struct trace *trace);
double aci_concrete(const struct code_facts *f, struct trace *trace);
double aci_lightweight(const struct code_facts *f, struct trace *trace);
/* Abrg [mm2]; step A_brg */
double aci_head(const struct code_facts *f, struct trace *trace);

/* Step phi, Table 17.5.3. */
double aci_phi_steel(const struct code_facts *f, bool tension, struct trace *trace);
/* concrete in tension; `tied`: supplementary reinforcement may count (not for pullout) */
double aci_phi_concrete(const struct code_facts *f, bool tied, struct trace *trace);
double aci_phi_edge(const struct code_facts *f, struct trace *trace);

/* 0.7 + 0.3 c/reach <= 1: step `symbol`, with c_a_min. `reach_is`: the reach in earlier symbols. */
double aci_edge_factor(double c, double reach, const char *symbol, const char *reach_is,
                       const char *clause, struct trace *trace);
/* Splitting of post-installed anchors, 17.6.2.6.1, 17.6.5.5.1: max(c, reach)/cac <= 1. */
double aci_splitting_factor(const struct code_facts *f, bool cracked, double c, double reach,
                            const char *symbol, const char *reach_is, const char *clause,
                            struct trace *trace);

/* Nsa, Vsa [N]; Vsa without a lever arm, with the grout pad; steps N_sa, V_sa. */
double aci_nominal_tension(const struct code_facts *f, struct trace *trace);
/* Ncbg [N], step N_cbg. Fills anchors, count, edge, centre and lever of out. */
double aci_nominal_cone(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                        bool cracked, struct group_strength *out, struct trace *trace);
/* Nba of one anchor [N], step N_ba. `earthquake`: tau_cr times alpha_N,seis. */
double aci_nominal_bond_single(const struct code_facts *f, bool cracked, bool earthquake,
                               struct trace *trace);
/* Nag [N], step N_ag. Fills out as above. */
double aci_nominal_bond(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                        bool cracked, bool earthquake, struct group_strength *out,
                        struct trace *trace);

/* phi times a nominal strength of concrete in tension: step `symbol`, or symbol_eq with the 0.75
 * of 17.10.5.4. `from`: step of the nominal strength. */
double aci_design(double phi, double nominal, bool earthquake, const char *symbol,
                  const char *from, struct trace *trace);

#endif
