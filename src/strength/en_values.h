/* Numbers of EN 1992-4:2018, each with its source. None was read in the standard itself: "seen"
 * means quoted by a public text, "memory" that it was not seen at all. S numbers are those of
 * code_assumptions.c. */
#ifndef EN_VALUES_H
#define EN_VALUES_H

/* --- partial factors, Table 4.1, seen --- */
#define EN_GAMMA_C 1.5               /* of concrete; never the 1.2 of accidental actions */
#define EN_GAMMA_MS_TENSION 1.2      /* times fuk/fyk, at least the next */
#define EN_GAMMA_MS_TENSION_LEAST 1.4
#define EN_GAMMA_MS_SHEAR 1.0        /* times fuk/fyk, at least the next, within the two limits */
#define EN_GAMMA_MS_SHEAR_LEAST 1.25
#define EN_GAMMA_MS_SHEAR_ELSE 1.5
#define EN_SOFT_ULTIMATE 800.0       /* fuk up to which the lower factor in shear holds [MPa] */
#define EN_SOFT_YIELD 0.8            /* fyk/fuk up to which it holds [-] */

/* --- concrete --- */
#define EN_GREATEST_FCK 50.0         /* where data sheets end (C50/60), memory; S21 [MPa] */
#define EN_C20 20.0                  /* cylinder strength of C20/25 [MPa] */

/* --- cone, 7.2.1.4, seen --- */
#define EN_K1_HEADED_CRACKED 8.9     /* (7.2) [N, mm] */
#define EN_K1_HEADED_UNCRACKED 12.7
#define EN_K1_DRILLED_CRACKED 7.7
#define EN_K1_DRILLED_UNCRACKED 11.0
#define EN_CONE_REACH 1.5            /* ccr,N over hef, (7.3) */
#define EN_SPALLING_START 0.5        /* (7.5): 0.5 + hef/200 */
#define EN_SPALLING_DEPTH 200.0      /* [mm] */
#define EN_OPEN_MESH 150.0           /* bars so far apart: no reduction, (7.5) [mm] */
#define EN_OPEN_THIN_MESH 100.0      /* bars of at most 10 mm */
#define EN_THIN_BAR 10.0
#define EN_NARROW_EDGES 3            /* so many near edges: reduced embedment, 7.2.1.4(8) */

/* --- pull-out, (7.11), seen --- */
#define EN_K2_CRACKED 7.5
#define EN_K2_UNCRACKED 10.5

/* --- combined pull-out and cone, 7.2.1.6, seen --- */
#define EN_BOND_REACH 7.3            /* (7.15) */
#define EN_BOND_REACH_MOST 3.0       /* hef */
#define EN_SUSTAINED 0.6             /* psi0_sus where the sheet is silent, (7.14) */
#define EN_K3_CRACKED 7.7            /* (7.19) */
#define EN_K3_UNCRACKED 11.0

/* --- splitting, 7.2.1.7, seen in part --- */
#define EN_SPLITTING_GROUP 1.2       /* times ccr,sp: no check of a group beyond */
#define EN_SPLITTING_MOST 2.0        /* of psi_h,sp */

/* --- blow-out, 7.2.1.8, seen --- */
#define EN_BLOWOUT_SHARE 0.5         /* of hef: nearer to the edge it is checked */
#define EN_K5_CRACKED 8.7            /* (7.26) */
#define EN_K5_UNCRACKED 12.2
#define EN_BLOWOUT_REACH 2.0         /* c1 to each side */

/* --- steel in shear, 7.2.2.3, quoted from the standard's preview --- */
#define EN_K6_SOFT 0.6               /* (7.34), fuk up to the next */
#define EN_K6_SOFT_ULTIMATE 500.0    /* [MPa] */
#define EN_K6_HARD 0.5
#define EN_K6_HARD_ULTIMATE 1000.0   /* beyond it the sheet must state V0Rk,s [MPa] */
#define EN_SHORT_ANCHOR 5.0          /* hef/dnom below which weak concrete costs */
#define EN_SHORT_FACTOR 0.8
#define EN_K7_BRITTLE 0.8            /* (7.35), group, A5 up to the next */
#define EN_K7_ELONGATION 0.08
#define EN_GROUT_SHARE 0.01          /* a mm of grout, (7.36) */
#define EN_BENDING 1.2               /* M0Rk,s = 1.2 Wel fuk */
#define EN_BENDING_DEPTH 0.5         /* a3 in shafts, 6.2.2.3 */

/* --- pry-out, 7.2.2.4, quoted from the preview --- */
#define EN_K8_SHALLOW 1.0
#define EN_K8_DEEP 2.0
#define EN_K8_DEPTH 60.0             /* hef from which on it is 2 [mm] */
#define EN_PRYOUT_TIED 0.75          /* with supplementary reinforcement */

/* --- concrete edge, 7.2.2.5, quoted from the preview --- */
#define EN_K9_CRACKED 1.7            /* (7.41) */
#define EN_K9_UNCRACKED 2.4
#define EN_LENGTH_SHAFTS 12.0        /* lf up to so many shafts, dnom up to the next */
#define EN_LENGTH_SHAFT 24.0         /* [mm] */
#define EN_LENGTH_THICK_SHAFTS 8.0   /* thicker ones: max(8 dnom, 300 mm) */
#define EN_LENGTH_THICK 300.0
#define EN_EDGE_REACH 1.5            /* c1 to each side and downward, (7.44) */
#define EN_EDGE_ALONG 2.0            /* psi_alpha,V at 90 deg, (7.48) */
#define EN_EDGE_STIRRUPS 1.4         /* psi_re,V; doubtful, S33 */
#define EN_EDGE_STIRRUPS_LEAST 50.0  /* c1 that stirrups 100 mm apart suit: a <= 2 c1; memory */
#define EN_REMOTE_EMBEDMENTS 10.0    /* no check beyond; which of the two holds is doubtful, S34 */
#define EN_REMOTE_SHAFTS 60.0
#define EN_REMOTE_ANCHORS 4          /* 7.2.2.5, from memory: no more than these have the exit */

/* --- interaction, Table 7.3, seen --- */
#define EN_TOGETHER_POWER 1.5        /* (7.55) */
#define EN_TOGETHER_SUM 1.2          /* (7.56) */

/* --- earthquakes, Annex C; Table C.3 from memory, S37 --- */
#define EN_ALPHA_GAP 0.5 /* where the sheet is silent: with clearance in the hole, seen */
#define EN_ALPHA_STEEL_TENSION 1.0
#define EN_ALPHA_SINGLE 1.0          /* all that follow, one anchor */
#define EN_ALPHA_GROUP 0.85
#define EN_ALPHA_CONE_SINGLE 0.85    /* cone and pry-out, neither headed nor undercut */
#define EN_ALPHA_CONE_GROUP 0.75

/* --- scope, memory; S38 --- */
#define EN_LEAST_EMBEDMENT 40.0      /* [mm] */
#define EN_LEAST_SHAFT 6.0           /* [mm] */
#define EN_GREATEST_SHAFT 60.0       /* of (7.41) [mm] */
#define EN_LEAST_FCK 12.0            /* C12/15 [MPa] */
#define EN_GREATEST_CLASS 90.0       /* C90/105 [MPa] */
#define EN_BONDED_LEAST 4.0          /* hef in shafts */
#define EN_BONDED_MOST 20.0
#define EN_HEADED_SPACING 4.0        /* least spacing of headed ones in shafts, seen */

#endif
