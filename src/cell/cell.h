/* The cell: plain data as the file states it. Constant once read. Every member can be asked for its
 * origin and mark (given.h). Lengths mm, forces N, moments N mm, stresses MPa, masses kg, angles
 * rad, times s. */
#ifndef CELL_H
#define CELL_H

#include "given.h"

enum {
	MAX_ANCHORS = 64,
	MAX_RINGS = 64,
	MAX_VERTICES = 512 /* a ring */,
	MAX_PARTS = 128,
	MAX_SETUPS = 16,
	MAX_LOADS = 16,
	MAX_JOINTS = 64,
	MAX_OLD_HOLES = 256,
	MAX_CORES = 256,
	MAX_CHAIN_JOINTS = 12,
	MAX_CYCLE_POSES = 64,
	MAX_HISTORIES = 8,
	MAX_CASTERS = 16,
	MAX_ROWS = 32 /* of a table */
};

enum { NO, YES };

/* --- slab ------------------------------------------------------------------------------------- */
enum slab_type { SLAB_ON_GROUND, SLAB_SUSPENDED };
enum evidence { BY_MEASURED, BY_AS_BUILT, BY_DRAWING, BY_ASSUMED };              /* of a length */
enum strength_evidence { BY_DELIVERY_NOTE, STRENGTH_BY_DRAWING, STRENGTH_BY_ASSUMED };
enum specimen { CYLINDER, CUBE };
enum condition { SOUND, DAMAGED };
enum joint_type { SAW_CUT, CONSTRUCTION, EXPANSION, FREE_EDGE };

struct engineer {
	struct text name, reason;
}; /* by_engineer: takes a departure on himself */

struct concrete {
	struct word strength_class;                     /* index into concrete_classes[] */
	struct number specified;                        /* [MPa] */
	struct word specimen, strength_evidence;
	struct numbers cores;                           /* single core strengths [MPa] */
	struct number core_diameter, core_length;       /* [mm] */
	struct number age;                              /* [s] */
	struct word condition;
	struct word cracked;                            /* NO | YES; default YES */
	struct number lightweight; /* ACI lambda: 1 normal-weight (default), less for lightweight */
	struct number aggregate;                        /* largest grain [mm] */
	struct text uncracked_reason;
	struct engineer by_engineer;
};
struct joint    { struct point from, to; struct word type; };
struct old_hole { struct point at; struct number depth; struct word filled; };
enum edge_bars { EDGE_BARS_NONE, EDGE_BARS, EDGE_BARS_WITH_STIRRUPS };
/* Bars in the slab as the code methods count them; each default is the safe one. */
struct reinforcement {
	struct word supplementary;   /* bars that tie a breakout body into the slab; default NO */
	struct word edge;            /* enum edge_bars; default none */
	struct word against_splitting; /* bars that hold splitting cracks to 0.3 mm; default NO */
	struct number bar_diameter, bar_spacing;        /* of the upper mesh [mm] */
};
struct slab {
	struct word type;
	struct number thickness;                        /* structural concrete alone [mm] */
	struct word thickness_evidence;
	struct number topping; /* thickness of screed or tile above; 0: none [mm] */
	struct concrete concrete;
	struct reinforcement reinforcement;
	struct number clear; /* nothing nearer to any anchor than this [mm] */
	struct ring outline;                            /* given and empty: the word none */
	struct list joints, old_holes;                  /* rows struct joint, struct old_hole */
	struct word scan;                               /* scan_done ... */
};
enum scan { SCAN_DONE, SCAN_NOT_DONE };

/* --- cell --------------------------------------------------------------------------------------
 */
struct part {
	struct text name;
	struct number mass, least_mass;                 /* [kg]; least_mass: in the low run */
	struct point at;                                /* centre of mass */
	struct point box_from, box_to;                  /* or anywhere inside */
};
enum touches { TOUCHES_FLOOR, TOUCHES_SHIMS };
struct base_piece {                                     /* an outline with holes, or a pad */
	struct text name;
	struct ring outline;
	struct list holes;                              /* rows struct ring */
	struct word touches;                            /* default TOUCHES_FLOOR */
	struct point at, size;                          /* pad: centre and side lengths */
};
enum base_stiff { STIFF_BY_CALCULATION, STIFF_BY_MAKER, STIFF_BY_ASSUMED };
struct stand_off {
	struct number height;                           /* 0: the word none [mm] */
	struct word filled;
	struct number grout_strength;                   /* [MPa] */
};

/* --- arm and loads ------------------------------------------------------------------------------
 */
struct reaction {
	struct number vertical, horizontal, tilting, twisting;
};                                                                     /* at the mounting face */
enum arm_case { ARM_REST, ARM_NORMAL, ARM_EMERGENCY_STOP, ARM_CASES }; /* words of loads: with */
enum arm_mounting { ON_FLOOR, ON_WALL, ON_CEILING, TILTED };
enum chain_words_convention { STANDARD_DH, MODIFIED_DH, PLAIN_FRAMES }; /* as arm/chain.h */
enum joint_words_kind { REVOLUTE, PRISMATIC };
/* About the centre of mass; xy is the tensor's entry, - sum of m x y [kg m2]. */
struct inertia_given { struct number xx, yy, zz, xy, yz, xz; };
struct chain_joint {                                    /* a joint and the link behind it */
	struct text name;
	struct word kind;
	struct number a, alpha, d, theta;               /* Denavit-Hartenberg [mm], [rad] */
	struct point position;                          /* plain frames: in the frame before [mm] */
	struct number roll, pitch, yaw; /* plain frames: about the fixed x, then y, then z [rad] */
	struct number mass;
	struct point centre;                            /* of mass, link's frame [mm] */
	struct inertia_given inertia;
};
struct arm_chain {
	struct word convention;
	struct list joints;                             /* rows struct chain_joint */
	struct number fixed_mass; /* of the arm's foot, which never moves [kg] */
	struct number payload_mass;
	struct point payload_centre;                    /* last link's frame [mm] */
	struct inertia_given payload_inertia;
};
/* A number of a joint is an angle of a revolute one or a length of a prismatic one: the unit
 * decides which of the two members it fills. */
struct joint_motion {
	struct number from, to, slide_from, slide_to;   /* range [rad], [mm] */
	struct number speed, slide_speed;               /* [rad/s], [mm/s] */
	struct number acceleration, slide_acceleration; /* in normal motion [rad/s2], [mm/s2] */
	struct number stop, slide_stop; /* peak deceleration of an emergency stop */
	struct number stop_time;                        /* or its time from full speed [s] */
};
struct cycle_pose {
	struct number at;                               /* when the arm is there [s] */
	struct numbers angles, slides; /* of the revolute, of the prismatic joints, in order */
};
enum judged_by { BY_BOUND, BY_SWEEP };
struct arm_motion {
	struct list joints;                             /* rows struct joint_motion */
	struct number peak_factor;                      /* largest over mean deceleration [-] */
	struct number poses, bound_poses;               /* a joint */
	struct word judged_by;
	struct list cycle;                              /* rows struct cycle_pose */
	struct number cycles_a_year;
};
enum swing_words_axes { AXES_VERTICAL, AXES_HORIZONTAL, AXES_BOTH }; /* as arm/swing.h */
struct swing_motion { struct number speed, acceleration, start_time, stop, stop_time; };
struct arm_swing {
	struct word axes;
	struct number moving_mass;                      /* [kg]; the rest of the arm stands still */
	struct number radius, payload_radius, reach;    /* [mm] */
	struct number axis_height;                      /* above the mounting face [mm] */
	struct number peak_factor;
	struct swing_motion vertical, horizontal;       /* about the vertical, the level axis */
};
struct arm_history {
	struct text file;
	struct word of;                                 /* enum arm_case: normal, emergency_stop */
	struct number cycles_a_year;                    /* how often the file happens a year */
};
struct arm {
	struct point mount;                             /* mounting face, cell axes */
	struct word mounting;                           /* default ON_FLOOR */
	struct number mounting_tilt;                    /* face's normal from the vertical [rad] */
	struct number mounting_toward; /* heading to which the normal leans, cell axes [rad] */
	struct number turned; /* base frame about its own normal, before it is tipped [rad] */
	struct number mass, payload;                    /* [kg] */
	struct number reach, payload_reach; /* horizontal, of the centres of mass [mm] */
	struct word vertical_includes_weight, tilting_includes_weight, paired;
	struct reaction reaction[ARM_CASES];            /* ARM_REST unused */
	struct arm_chain chain;
	struct arm_motion motion;
	struct arm_swing swing;
	struct list history;                            /* rows struct arm_history */
	struct number service_life;                     /* [s] */
	struct number range_limit; /* tension ranges above it are counted apart [N] */
};
struct extra_load {
	struct text name;
	struct number force;                            /* horizontal size; or */
	struct point force_vector;                      /* x, y, z up [N] */
	struct word any_direction;                      /* given: any horizontal heading */
	struct number direction;                        /* heading [rad] */
	struct number at_height;                        /* [mm] */
	struct point at;                                /* plane point */
	struct word with;                               /* enum arm_case */
	struct word kind;                               /* enum pushed_by */
};
enum pushed_by { LOAD_OTHER, LOAD_PUSH, LOAD_LEANING, LOAD_TRUCK_BUMP };
enum quake_code { QUAKE_ASCE7_16, QUAKE_ASCE7_22, QUAKE_EN1998 }; /* as loads/seismic.h */
struct earthquake {
	struct given given;                             /* GIVEN: the word none */
	struct word code;
	struct number sds, amplification, response, importance, height_share, overstrength;
	struct number resonance, building_period, building_response, building_importance,
		building_overstrength;                  /* ASCE 7-22; period [s] */
	struct number ground_share, soil, period_ratio, behaviour; /* EN 1998-1 */
};
struct caster { struct point at; struct number trail; };

/* --- anchors ------------------------------------------------------------------------------------
 */
enum anchor_type {
	CAST_IN_HEADED,
	CAST_IN_HOOKED,
	TORQUE_CONTROLLED,
	DISPLACEMENT_CONTROLLED,
	UNDERCUT,
	SCREW,
	ADHESIVE
};
enum basis { BASIS_ULTIMATE, BASIS_ALLOWED, BASIS_CHARACTERISTIC };
enum rating_evidence { BY_DATA_SHEET, BY_TEST, RATING_BY_ASSUMED };
enum interaction { STRAIGHT, FIVE_THIRDS };
enum tested_in { TESTED_CRACKED, TESTED_UNCRACKED };
struct spacing_row { struct number distance, share; };
struct edge_row { struct number distance, tension, shear; };
struct rating {
	struct word basis;
	struct number of_ultimate; /* share of ultimate that an allowed value is [-] */
	struct number tension, shear;                   /* [N] */
	struct number at_concrete, at_embedment;        /* [MPa], [mm] */
	struct word tested_in, evidence;
	struct text document;
	struct number allowed_share;                    /* default 0.25 */
	struct engineer by_engineer;
	struct word interaction;                        /* default STRAIGHT */
	struct list spacing, edge; /* rows struct spacing_row, struct edge_row */
	struct number fatigue_range, fatigue_cycles; /* tension range carried so often [N], [-] */
};
/* Pullout or bond of one code's sheet, by the state of the concrete. */
struct by_state { struct number cracked, uncracked, seismic; };
/* beside a number: the word does_not_govern */
struct never_governs { struct word cracked, uncracked, seismic; };
enum code_interaction { CODE_STRAIGHT, CODE_FIVE_THIRDS };
enum seismic_category { SEISMIC_NONE, SEISMIC_C1, SEISMIC_C2 };
/* What a sheet states for ACI 318-19 chapter 17, in its own terms. */
struct aci318_sheet {
	struct number category;                         /* 1, 2, 3 */
	struct number steel_tension, steel_shear;       /* Nsa, Vsa by test [N] */
	struct number kc_cracked, kc_uncracked;         /* SI, N and mm */
	struct by_state pullout;                        /* Np [N] */
	struct never_governs no_pullout;
	struct by_state bond;        /* tau [MPa]; seismic: factor alpha_N,seis [-] */
	struct number splitting_edge;                   /* cac [mm] */
	struct number pryout_factor;                    /* kcp */
	struct number shear_length;                     /* le [mm] */
	struct word seismic;                            /* qualified: NO | YES */
	struct number steel_shear_seismic;              /* Vsa,eq [N] */
	struct word interaction;                        /* enum code_interaction */
};
/* What a sheet states for EN 1992-4, in its own terms. */
struct en1992_4_sheet {
	struct number installation_factor;              /* gamma_inst */
	struct number steel_tension, steel_shear, bending; /* NRk,s, V0Rk,s [N], M0Rk,s [N mm] */
	struct number k_cracked, k_uncracked;           /* k1 */
	struct by_state pullout;                        /* NRk,p [N] */
	struct never_governs no_pullout;
	struct by_state bond;        /* tau_Rk [MPa]; seismic: tau_Rk,seis [MPa] */
	struct number sustained_factor;                 /* psi0_sus */
	struct number splitting_edge, splitting;        /* ccr,sp [mm], N0Rk,sp [N] */
	struct number pryout_factor;                    /* k8 */
	struct number group_factor;                     /* k7 */
	struct number shear_length;                     /* lf [mm] */
	struct word seismic;                            /* enum seismic_category */
	struct number steel_tension_seismic, steel_shear_seismic;  /* [N] */
	struct number gap_factor;                       /* alpha_gap */
};
/* Code design values of the anchor, for the ACI 318 and EN 1992-4 checks. */
struct anchor_strength {
	struct word evidence;                           /* enum rating_evidence */
	struct text document;
	struct number yield, ultimate;                  /* fya = fyk, futa = fuk [MPa] */
	struct word ductile;                            /* steel, ACI 318 2.3 */
	struct number elongation;                       /* A5 [-] */
	struct number shear_area;                       /* Ase,V; else the tensile area [mm2] */
	struct word sleeve_in_shear_plane;
	struct number head_diameter, head_thickness;    /* headed: dh, th [mm] */
	struct number head_area;                        /* Abrg, Ah [mm2] */
	struct number hook_length;                      /* eh [mm] */
	struct number least_spacing, least_edge;        /* smin; ca,min, cmin [mm] */
	struct number at_concrete; /* strength for which pullout and bond are stated [MPa] */
	struct word clamped; /* nut and washer clamp the anchor at the concrete: a3 = 0 */
	struct word held_at_base; /* the base holds the anchor against turning: alpha_M = 2 */
	struct aci318_sheet aci;
	struct en1992_4_sheet en;
};
struct product {
	struct text label;
	struct word type;
	struct number shaft, tensile_area, length, projection, embedment,
		nominal_embedment; /* [mm], [mm2] */
	struct number hole_diameter, hole_depth, least_slab, setting_torque;
	struct number torque_coefficient;               /* K of T = K F d [-] */
	struct word qualified_cracked;
	struct rating rating;
	struct anchor_strength strength;
};
struct needs {
	struct number tension, shear;
	struct word pattern_as_stated, all_setups_covered, both_at_once;
};
struct anchors {
	struct given at_given;                          /* the key `at` itself */
	struct vec2 at[MAX_ANCHORS];                    /* A1 is at[0] [mm] */
	struct mark at_mark[MAX_ANCHORS];
	size_t count;                                   /* 0: not known */
	struct word lug;                                /* anchors may stand outside the base */
	struct number plate_hole;                       /* clearance hole diameter [mm] */
	struct word slotted;                            /* plate_hole: slotted */
	struct number plate_thickness;
	struct needs needs;
	struct product product;
};

/* --- the whole ----------------------------------------------------------------------------------
 */
struct record { struct text site, prepared_by, revision, date; };
struct choices {
	struct number stabilising_weight;               /* default 0.6 */
	struct word masses_weighed;                     /* allows 0.9 */
	struct number anchor_bed_ratio;                 /* used alone [mm2] */
	struct number least_strength;                   /* default 28 MPa */
	struct number group_spacing; /* s of the reduced embedment, ACI 318-19 17.6.2.1.2 [mm] */
	struct engineer by_engineer;
};
struct setup {
	struct text name;
	const struct cell *cell;
	struct list overridden; /* rows struct text: paths */
};

struct cell {
	struct number version;
	struct text title;
	struct record record;
	struct word show;                               /* enum unit_system; default UNITS_METRIC */
	struct slab slab;
	struct point standing_at;                       /* cell origin on the slab */
	struct number turned;                           /* cell axes against slab axes [rad] */
	struct list parts; /* rows struct part; given and empty: the word none */
	struct list base;                               /* rows struct base_piece */
	struct list casters; /* rows struct caster; before it is anchored */
	struct number top;                              /* height of the highest part [mm] */
	struct word base_stiff;
	struct text base_stiff_note;
	struct stand_off stand_off;
	struct arm arm;
	struct list setups; /* rows struct setup; none: the file itself is one */
	struct list loads;                              /* rows struct extra_load */
	struct earthquake earthquake;
	struct anchors anchors;
	struct choices choices;
	struct list methods; /* rows struct word; default one row METHOD_RATING */
};
enum method { METHOD_RATING, METHOD_ACI318, METHOD_EN1992_4, METHODS };
/* Whether the file asks for it. */
bool method_chosen(const struct cell *cell, enum method method);
/* Whether it asks for any design code. */
bool code_chosen(const struct cell *cell);

#endif
