/* Numbers of ACI 318-19 chapter 17 in SI (N, mm, MPa), each with its clause. None was read in the
 * code itself: "seen" means confirmed in a public text that goes through the clause, "memory" that
 * it was not seen. S numbers are those of code_assumptions.c. The inch-pound twins stand in
 * tests/support/plain_aci318.c. */
#ifndef ACI_VALUES_H
#define ACI_VALUES_H

/* --- scope, 17.3, seen --- */
#define ACI_FC_CAST_IN 70.0          /* 17.3.1, f'c that counts at most [MPa] */
#define ACI_FC_POST_INSTALLED 55.0
#define ACI_GREATEST_SHAFT 100.0     /* 17.3.2 [mm] */
#define ACI_ADHESIVE_LEAST 4.0       /* 17.3.3, hef in shafts */
#define ACI_ADHESIVE_MOST 20.0
#define ACI_SCREW_LEAST 5.0          /* 17.3.4, hef in shafts */
#define ACI_SCREW_MOST 10.0
#define ACI_SCREW_EMBEDMENT 40.0     /* [mm] */
#define ACI_LEAST_CONCRETE 17.0      /* 19.2.1.1, memory; S19 [MPa] */

/* --- lightweight concrete, Table 17.2.4.1, seen; S16 --- */
#define ACI_LIGHT_DRILLED 0.8        /* expansion, screw, adhesive: concrete */
#define ACI_LIGHT_BOND 0.6

/* --- strength reduction, Table 17.5.3, seen --- */
#define ACI_PHI_TENSION_DUCTILE 0.75
#define ACI_PHI_TENSION_BRITTLE 0.65
#define ACI_PHI_SHEAR_DUCTILE 0.65
#define ACI_PHI_SHEAR_BRITTLE 0.60
#define ACI_PHI_TIED {0.75, 0.75, 0.65, 0.55}    /* cast-in, category 1, 2, 3 */
#define ACI_PHI_PLAIN {0.70, 0.65, 0.55, 0.45}   /* no supplementary reinforcement; pullout */
#define ACI_PHI_EDGE_TIED 0.75
#define ACI_PHI_EDGE_PLAIN 0.70
#define ACI_PHI_PRYOUT 0.70
#define ACI_SUSTAINED 0.55           /* 17.5.2.2 */
#define ACI_SEISMIC 0.75             /* 17.10.5.4 */

/* --- steel, 17.6.1.2, 17.7.1.2, seen --- */
#define ACI_FUTA_YIELDS 1.9          /* futa counts up to so many fya */
#define ACI_FUTA_MOST 860.0          /* [MPa] */
#define ACI_SHEAR_SHARE 0.6
#define ACI_GROUT_PAD 0.80           /* 17.7.1.2.1 */
#define ACI_LEVER_DEPTH 0.5          /* a3 in shafts, EN 1992-4 6.2.2.3; S11 */

/* --- breakout in tension, 17.6.2, seen --- */
#define ACI_REACH 1.5                /* ANco: 1.5 hef to each side, 17.6.2.1.4 */
#define ACI_NARROW_EDGES 3           /* 17.6.2.1.2 */
#define ACI_KC_CAST_IN 10.0          /* 17.6.2.2.1 */
#define ACI_KC_DRILLED 7.0
#define ACI_KC_MOST 10.0             /* S5 */
#define ACI_EDGE_START 0.7           /* psi_ed = 0.7 + 0.3 ca/reach */
#define ACI_EDGE_GROWTH 0.3
#define ACI_UNCRACKED_CAST_IN 1.25   /* psi_c,N, 17.6.2.5.1 */
#define ACI_UNCRACKED_DRILLED 1.4

/* --- cac where the sheet states none, Table 17.9.5, seen --- */
#define ACI_CAC_EXPANSION 4.0        /* hef; screws too */
#define ACI_CAC_UNDERCUT 2.5
#define ACI_CAC_ADHESIVE 2.0

/* --- pullout, 17.6.3, seen --- */
#define ACI_HEAD 8.0                 /* Abrg f'c */
#define ACI_HOOK 0.9                 /* f'c eh da */
#define ACI_HOOK_LEAST 3.0           /* eh in shafts */
#define ACI_HOOK_MOST 4.5
#define ACI_PULLOUT_UNCRACKED 1.4    /* psi_c,P; S6 */

/* --- side-face blowout, 17.6.4, seen --- */
#define ACI_BLOWOUT 13.0
#define ACI_BLOWOUT_DEPTH 2.5        /* checked where hef > 2.5 ca1 */
#define ACI_BLOWOUT_SPACING 6.0      /* ca1: closer anchors are a row */
#define ACI_BLOWOUT_CORNER 3.0       /* ca1: a nearer corner counts */

/* --- bond, 17.6.5, seen --- */
#define ACI_BOND_REACH 10.0          /* cNa = 10 da sqrt(tau_uncr/7.6) */
#define ACI_BOND_STRESS 7.6          /* [MPa] */

/* --- breakout in shear, 17.7.2, seen --- */
#define ACI_SHEAR_BASIC 0.6          /* 17.7.2.2.1a */
#define ACI_SHEAR_CEILING 3.7        /* 17.7.2.2.1b */
#define ACI_SHEAR_POWER 0.2
#define ACI_SHEAR_LENGTH 8.0         /* le in shafts at most */
#define ACI_SHEAR_LENGTH_SLEEVE 2.0  /* torque-controlled */
#define ACI_SHEAR_AREA 4.5           /* AVco in ca1 squared */
#define ACI_ALONG 2.0                /* 17.7.2.1(c) */
#define ACI_EDGE_BARS 1.2            /* psi_c,V, 17.7.2.5 */
#define ACI_EDGE_STIRRUPS 1.4
#define ACI_EDGE_UNCRACKED 1.4

/* --- pryout, 17.7.3, seen --- */
#define ACI_KCP_SHALLOW 1.0
#define ACI_KCP_DEEP 2.0
#define ACI_KCP_DEPTH 65.0           /* hef from which on it is 2 [mm] */

/* --- interaction, 17.8, seen --- */
#define ACI_TOGETHER 1.2

/* --- layout, 17.9, seen; cover from memory, S17 --- */
#define ACI_COVER 50.0               /* [mm] */
#define ACI_DEFAULT_AGGREGATE 32.0   /* as the file format's, where none is given [mm] */
#define ACI_AGGREGATES 2.0
#define ACI_SPACING_CAST_IN 4.0      /* shafts */
#define ACI_SPACING_TORQUED 6.0
#define ACI_SPACING_SCREW 0.6        /* hef */
#define ACI_EDGE_NEAR 6.0            /* shafts */
#define ACI_EDGE_TORQUE 8.0
#define ACI_EDGE_DISPLACEMENT 10.0
#define ACI_DEPTH_SHARE (2.0 / 3.0)  /* 17.9.4, of ha */
#define ACI_DEPTH_LEFT 100.0         /* [mm] */

#endif
