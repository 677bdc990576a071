/* Where a clause is doubtful, known from memory alone or silent: what is done instead, always the
 * reading that gives the lower strength. S1 to S20: ACI 318 and both codes; S21 on: EN 1992-4. */
#include "code_facts.h"

#define BIT(mode) (1u << (mode))
#define CONES (BIT(CONE) | BIT(BOND) | BIT(SPLITTING) | BIT(PRYOUT))
#define EARTHQUAKES \
	(BIT(CONE) | BIT(PULLOUT) | BIT(BLOWOUT) | BIT(BOND) | BIT(EDGE) | BIT(PRYOUT))

const struct code_assumption code_assumptions[] = {
	{"S1", CODES, 0,
         "Clauses and constants are taken from published texts that go through the codes and partly "
         "from memory, not from the codes themselves; the checking engineer compares them with the "
         "code that governs.", ALWAYS},
	{"S2", CODES, CONES,
         "The projected area of a group of any shape is the area that the squares around its anchors "
         "cover together; the codes speak of the rectangle around them, which is never smaller.", ALWAYS},
	{"S3", ACI318, BIT(CONE) | BIT(PRYOUT),
         "Near three or more edges the reduced embedment counts the largest spacing of neighbouring "
         "anchors, not the extent of the group (17.6.2.1.2), unless choices.group_spacing says "
         "otherwise.", ALWAYS},
	{"S4", ACI318, BIT(CONE) | BIT(PRYOUT),
         "The higher breakout strength of cast-in anchors embedded from 280 to 635 mm (17.6.2.2.3) is "
         "not used.",
         OF_CAST_IN},
	{"S5", ACI318, BIT(CONE) | BIT(PRYOUT),
         "kc of a sheet counts up to 10 in cracked and in uncracked concrete (17.6.2.2.1); where the "
         "sheet states none for uncracked concrete, at most the code's own 7 times 1.4.", ALWAYS},
	{"S6", ACI318, BIT(PULLOUT),
         "The factor 1.4 for uncracked concrete (17.6.3.3) raises the pullout of cast-in anchors "
         "alone; a sheet's pullout holds for the state of the concrete that it names.", ALWAYS},
	{"S7", ACI318, BIT(BLOWOUT),
         "The reduction of side-face blowout near a corner (17.6.4.1.1) counts for a row of anchors "
         "too, although the code gives it for one anchor alone.", ALWAYS},
	{"S8", ACI318, BIT(EDGE),
         "Of two rows farther apart than the front row's edge distance the front row takes its own "
         "share and the rear row all; else the front row takes all (R17.7.2.1b, read second-hand). "
         "That a welded base may load the rear row alone is not used.", ALWAYS},
	{"S9", ACI318, BIT(EDGE),
         "Shear at a slant to an edge counts as the root of the squares of its two ratios, across and "
         "along the edge; the code compares them one by one.", ALWAYS},
	{"S10", ACI318, BIT(PRYOUT),
         "Pryout takes all anchors of a group and the eccentricity of their shear (from memory); of "
         "an adhesive anchor the lower of breakout and bond with the shorter lever of the two.", ALWAYS},
	{"S11", ACI318, BIT(STEEL_SHEAR),
         "The code has no equation for anchors that stand off: they are taken in bending by "
         "mechanics, alpha_M S fya over the lever arm of EN 1992-4 (7.37), elastic section of the "
         "tensile area, phi of steel in shear, less what the tension takes, and never above the "
         "strength without a gap.",
         WITH_A_GAP},
	{"S12", CODES, BIT(STEEL_SHEAR),
         "Screed or tile below the base counts as an open gap: the anchors bend in it.",
         WITH_A_GAP},
	{"S13", ACI318, BIT(STEEL_SHEAR),
         "Anchors in a grout pad keep 0.80 of their steel strength (17.7.1.2.1, which names no limit) "
         "where the grout has 30 MPa and the concrete's strength and is no thicker than 40 mm and 5 "
         "diameters, as in EN 1992-4 6.2.2.3; else they bend as in an open gap.",
         WITH_A_GAP},
	{"S14", ACI318, EARTHQUAKES,
         "In earthquakes all concrete counts as cracked, also where the slab is stated as uncracked "
         "(17.10.5.4), and the sheet's seismic pullout and bond are reduced by 0.75 as well.",
         IN_EARTHQUAKES},
	{"S15", ACI318, 0,
         "For earthquakes the raised load of 17.10.5.3(d) and 17.10.6.3(c) is used alone; that the "
         "anchors stand in no plastic hinge zone, and a ductile or yielding design, are the "
         "engineer's.",
         IN_EARTHQUAKES},
	{"S16", ACI318, 0,
         "The reductions of Table 17.2.4.1 count for lightweight concrete alone: normal-weight "
         "concrete has lambda_a = 1.", ALWAYS},
	{"S17", ACI318, 0,
         "Least edge distances count a concrete cover of 50 mm, as for a surface in weather or earth "
         "(Table 20.5.1.3.1, from memory); a side cast against earth needs 75 mm.", ALWAYS},
	{"S18", ACI318, 0,
         "Cast-in anchors count as torqued, with the larger spacing and edge distance of Table "
         "17.9.2(a), unless the setting torque is given as zero.",
         OF_CAST_IN},
	{"S19", ACI318, 0,
         "Concrete below 17 MPa is outside the code's scope (19.2.1.1, from memory).", ALWAYS},
	{"S20", ACI318, BIT(STEEL_SHEAR),
         "Every anchor counts as a bolt in shear, 0.6 of area times strength (17.7.1.2b); the full "
         "value of a headed stud welded to the base is not used.",
         OF_CAST_IN},
	/* EN 1992-4 from here on */
	{"S21", EN1992_4, 0,
         "Concrete stronger than C50/60 counts as C50/60, where data sheets end (from memory).", ALWAYS},
	{"S22", EN1992_4, BIT(CONE) | BIT(PRYOUT),
         "Near three or more edges the whole cone formula, shell spalling (7.5) too, is taken for the "
         "reduced embedment (7.2.1.4(8)).", ALWAYS},
	{"S23", EN1992_4, BIT(PULLOUT) | BIT(BOND) | BIT(SPLITTING) | BIT(PRYOUT),
         "A sheet's pull-out, bond and splitting values do not grow in stronger concrete than they are "
         "stated for, and shrink in proportion in weaker.", ALWAYS},
	{"S24", EN1992_4, BIT(CONE) | BIT(PRYOUT) | BIT(EDGE),
         "The largest spacing of a group near many edges (7.2.1.4(8), 7.2.2.5(9)) is that of "
         "neighbouring anchors, not the extent of the group.", ALWAYS},
	{"S25", EN1992_4, BIT(CONE) | BIT(PRYOUT),
         "The help of the pressure below the base (7.7) is not counted: psi_M,N = 1.", ALWAYS},
	{"S26", EN1992_4, BIT(BOND) | BIT(SPLITTING) | BIT(PRYOUT),
         "Where what always acts pulls on any anchor all tension on bonded anchors counts as lasting: "
         "alpha_sus = 1.", ALWAYS},
	{"S27", EN1992_4, BIT(BOND) | BIT(PRYOUT),
         "The group factor of bonded anchors (7.17) takes the largest spacing of neighbours, which "
         "gives less than the mean.", ALWAYS},
	{"S28", EN1992_4, BIT(SPLITTING),
         "Of the two limits told for psi_h,sp, (2 hef/hmin)^(2/3) of the older pre-standard and "
         "max{1; ((hef + 1.5 c1)/hmin)^(2/3)} at most 2, the lower counts, neither below 1.", ALWAYS},
	{"S29", EN1992_4, BIT(SPLITTING),
         "Splitting uses no reduced embedment near three or more edges; where the sheet states no "
         "N0Rk,sp the lower of cone and pull-out stands for it, of bonded anchors the bond of one.", ALWAYS},
	{"S30", EN1992_4, BIT(BLOWOUT),
         "Blow-out is checked for headed anchors alone; for others the least edge distance of their "
         "sheet stands for it.", ALWAYS},
	{"S31", EN1992_4, BIT(STEEL_SHEAR),
         "The exit (7.36) for grout pads is closed to a base that has moment: anchors in a pad "
         "thicker than half their diameter bend.",
         WITH_A_GAP},
	{"S32", EN1992_4, BIT(STEEL_SHEAR),
         "With a lever arm the strength without one stays an upper limit, and W_el is that of a round "
         "bar of the stressed area (or of the shaft, where that is less).",
         WITH_A_GAP},
	{"S33", EN1992_4, BIT(EDGE),
         "Edge bars count (psi_re,V = 1.4) only in cracked concrete, with stirrups at most 100 mm "
         "apart and an edge distance of 50 mm or more; the 1.2 that some sources give for bars alone "
         "is not used. That the bars lie shallow enough (hef at least 2.5 covers, from memory) is the "
         "engineer's.", ALWAYS},
	{"S34", EN1992_4, BIT(EDGE),
         "Edges are not checked for at most four anchors that have every edge beyond the larger of 10 "
         "hef and 60 d; sources disagree on which of the two holds, and the number is from memory.", ALWAYS},
	{"S35", EN1992_4, BIT(EDGE),
         "Along the edge the strength is twice that across it (7.48), with the corner factor psi_s,V "
         "kept.", ALWAYS},
	{"S36", EN1992_4, EARTHQUAKES | BIT(SPLITTING),
         "In earthquakes all concrete counts as cracked, and pull-out and bond are those of the "
         "sheet's seismic category; the group factor of bonded anchors stays that of rest.",
         IN_EARTHQUAKES},
	{"S37", EN1992_4, EARTHQUAKES | BIT(SPLITTING) | BIT(STEEL_SHEAR),
         "The factors alpha_eq of Table C.3 are from memory; alpha_gap is 0.5 unless the sheet says "
         "otherwise.",
         IN_EARTHQUAKES},
	{"S38", EN1992_4, 0,
         "Limits of scope (embedment 40 mm, diameters 6 to 60 mm, steel up to 1000 MPa, C12/15, bonded "
         "anchors 4 to 20 diameters deep) and the least spacing of headed anchors, 4 diameters, are "
         "from memory or second-hand.", ALWAYS},
	{"S39", EN1992_4, BIT(STEEL_SHEAR),
         "Annex C does not cover a base that stands off (from memory): steel in shear stays open there "
         "in earthquakes.",
         IN_EARTHQUAKES},
	{"S40", EN1992_4, 0,
         "Which of the categories C1 and C2 the site asks for, and the choice among capacity design, "
         "elastic and ductile design of Annex C, are the engineer's.",
         IN_EARTHQUAKES},
	{"S41", CODES, CONES | BIT(BLOWOUT),
         "Beside each group the most loaded anchor is also checked as if it stood alone: an anchor "
         "beside it that is hardly loaded must not lend it concrete (own choice).", ALWAYS},
	{"S42", CODES, BIT(EDGE) | BIT(PRYOUT),
         "Twisting may take any value between its two extremes; the ratios are looked at where an "
         "anchor just ceases to push toward an edge and at seven places between.", ALWAYS},
	{"S43", EN1992_4, 0,
         "In earthquakes the interaction (C.9) takes the largest ratios of tension and of shear over "
         "all modes, steel and concrete alike (from memory).", IN_EARTHQUAKES},
};
const size_t code_assumption_count = sizeof code_assumptions / sizeof *code_assumptions;
