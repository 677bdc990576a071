/* The codes' equations: design strengths of anchors and groups, with their written calculation.
 *
 * aci_*: ACI 318-19 chapter 17, phi times nominal, SI constants. en_*: EN 1992-4:2018,
 * characteristic over partial factor. Every function gives the same bits with and without a trace;
 * a NULL trace costs nothing. It may be called only where code_missing is 0 for its mode. Steps
 * carry the clause and, where an assumption is used, its id: "17.6.2.1.2; S3". */
#ifndef DESIGN_H
#define DESIGN_H

#include "code_facts.h"
#include "pattern.h"

/* Strength of one group before the eccentricity of its load: a load N whose resultant lies e away
 * from `centre` (per axis of the pattern) uses N (1 + |ex|/lever) (1 + |ey|/lever) of `design`.
 * lever HUGE_VAL: no eccentricity counts. */
struct group_strength {
	uint64_t anchors;
	size_t count;
	unsigned edge;               /* blowout: number of the edge; else 0 */
	struct vec2 centre;
	double lever;                /* [mm] */
	double design;               /* [N] */
	double seismic;              /* the same in a combination with an earthquake [N] */
};

/* Of one anchor [N]. `tension` of the same anchor matters for steel with a lever arm: shear is then
 * limited by what the tension leaves. */
double aci_steel_tension(const struct code_facts *f, bool earthquake, struct trace *trace);
double aci_pullout(const struct code_facts *f, bool earthquake, struct trace *trace);
double aci_bond_sustained(const struct code_facts *f, struct trace *trace);
double aci_steel_shear(const struct code_facts *f, double tension, bool earthquake,
                       struct trace *trace);
double en_steel_tension(const struct code_facts *f, bool earthquake, struct trace *trace);
double en_pullout(const struct code_facts *f, bool earthquake, size_t in_group,
                  struct trace *trace);
/* `in_group`: how many anchors take part, for k7 and the seismic factors */
double en_steel_shear(const struct code_facts *f, double tension, bool earthquake, size_t in_group,
                      struct trace *trace);

/* Of a group whose anchors are given; edge for blowout as number from 1. `trace` writes everything
 * up to `design` (symbols phi_N_cbg, N_Rd_c ...), or up to `seismic` where `earthquake`. */
void aci_cone(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
              bool earthquake, struct group_strength *out, struct trace *trace);
void aci_bond(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
              bool earthquake, struct group_strength *out, struct trace *trace);
void aci_blowout(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                 unsigned edge, bool earthquake, struct group_strength *out, struct trace *trace);
void en_cone(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
             bool earthquake, struct group_strength *out, struct trace *trace);
void en_bond(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
             bool earthquake, struct group_strength *out, struct trace *trace);
void en_splitting(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                  bool earthquake, struct group_strength *out, struct trace *trace);
void en_blowout(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                unsigned edge, bool earthquake, struct group_strength *out, struct trace *trace);
/* Pryout of a group of anchors in shear: kcp times the lower of cone and bond (phi of pryout);
 * `centre` and `lever` as the mode that gives it. */
void aci_pryout(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
                bool earthquake, struct group_strength *out, struct trace *trace);
void en_pryout(const struct code_facts *f, const struct pattern *p, uint64_t anchors,
               bool earthquake, struct group_strength *out, struct trace *trace);

/* Distance between anchors from which on they are no group [mm]: 3 hef, 2 cNa, scr,Np ... */
double aci_group_limit(const struct code_facts *f, enum code_mode mode);
double en_group_limit(const struct code_facts *f, enum code_mode mode);
/* Whether an anchor at this distance from an edge can blow out sideways. */
bool aci_blows_out(const struct code_facts *f, double edge_distance);
bool en_blows_out(const struct code_facts *f, double edge_distance);
/* Spacing along the edge below which they do so as a row: 6 ca1; 4 c1. */
double aci_blowout_limit(double edge_distance);
double en_blowout_limit(double edge_distance);

/* Shear of a row toward an edge: P at right angles to it and Q along it [N], P from anchors that
 * push outward. ratio = sqrt((P (1 + e/lever) / across)^2 + (Q / along)^2): the codes give the two
 * apart (ACI) or by psi_alpha (EN), which is this. */
struct edge_strength {
	double across, along;        /* design [N] */
	double across_seismic, along_seismic;
	double lever;                /* of the eccentricity along the edge [mm] */
	double centre;               /* along the edge */
};
/* `anchors`: of one row of the view, at c1 from the edge. A virtual edge at `clear` (pattern) is
 * asked for with view NULL: one anchor, sides at `clear` too. */
void aci_edge(const struct code_facts *f, const struct pattern *p, const struct edge_view *view,
              uint64_t anchors, double c1, bool earthquake, struct edge_strength *out,
              struct trace *trace);
void en_edge(const struct code_facts *f, const struct pattern *p, const struct edge_view *view,
             uint64_t anchors, double c1, bool earthquake, struct edge_strength *out,
             struct trace *trace);
/* Whether the load of row k goes to the front row as a whole (rows too near to one another) or to
 * the rows in front of it alone, ACI 318-19 R17.7.2.1b; EN: the front row takes all. */
bool aci_row_stands_alone(const struct edge_view *view, size_t row);
/* EN 1992-4 7.2.2.5: no check beyond this distance [mm]; ACI has none: HUGE_VAL. */
double en_remote_edge(const struct code_facts *f);

/* Tension and shear together, each as ratio of its design strength; at most 1 holds. */
double aci_interaction(enum code_interaction kind, double tension, double shear);
double en_interaction_steel(double tension, double shear, bool earthquake);
double en_interaction_concrete(double tension, double shear, bool earthquake);

#endif
