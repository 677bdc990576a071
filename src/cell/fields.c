/* The rows of the field table (fields.h), in the order in which a file is best read. */
#include "fields.h"

const char *const words_yes_no[] = {"no", "yes", NULL};
static const char *const words_show[] = {"metric", "us", NULL};
static const char *const words_slab_type[] = {"on_ground", "suspended", NULL};
static const char *const words_evidence[] = {"measured", "as_built", "drawing", "assumed", NULL};
static const char *const words_strength_evidence[] = {"delivery_note", "drawing", "assumed", NULL};
static const char *const words_specimen[] = {"cylinder", "cube", NULL};
static const char *const words_condition[] = {"sound", "damaged", NULL};
static const char *const words_joint[] = {"saw_cut", "construction", "expansion", "free_edge",
                                          NULL};
static const char *const words_scan[] = {"done", "not_done", NULL};
static const char *const words_touches[] = {"floor", "shims", NULL};
static const char *const words_stiff[] = {"calculation", "maker", "assumed", NULL};
static const char *const words_with[] = {"rest", "normal", "emergency_stop", NULL};
static const char *const words_any[] = {"any", NULL};
static const char *const words_slotted[] = {"slotted", NULL};
static const char *const words_covered[] = {"not_all", "all", NULL};
static const char *const words_anchor_type[] = {
	"cast_in_headed", "cast_in_hooked", "torque_controlled", "displacement_controlled", "undercut",
	"screw", "adhesive", NULL};
static const char *const words_basis[] = {"ultimate", "allowed", "characteristic", NULL};
static const char *const words_tested_in[] = {"cracked", "uncracked", NULL};
static const char *const words_rating_evidence[] = {"data_sheet", "test", "assumed", NULL};
static const char *const words_interaction[] = {"straight", "five_thirds", NULL};
static const char *const words_mounting[] = {"floor", "wall", "ceiling", "tilted", NULL};
static const char *const words_convention[] = {"standard_dh", "modified_dh", "frames", NULL};
static const char *const words_joint_kind[] = {"revolute", "prismatic", NULL};
static const char *const words_judged_by[] = {"bound", "sweep", NULL};
static const char *const words_axes[] = {"vertical", "horizontal", "both", NULL};
static const char *const words_load_kind[] = {"other", "push", "leaning", "truck_bump", NULL};
static const char *const words_quake[] = {"asce7_16", "asce7_22", "en1998", NULL};
static const char *const words_methods[] = {"rating", "aci318", "en1992_4", NULL};
static const char *const words_edge_bars[] = {"none", "bars", "bars_with_stirrups", NULL};
static const char *const words_seismic[] = {"none", "C1", "C2", NULL};
static const char *const words_never[] = {"does_not_govern", NULL};

/* EN 206 Table 12 (normal-weight concrete): cylinder and cube strength of each class */
const char *const concrete_classes[] = {
	"C8/10", "C12/15", "C16/20", "C20/25", "C25/30", "C30/37", "C35/45", "C40/50", "C45/55", "C50/60",
	"C55/67", "C60/75", "C70/85", "C80/95", "C90/105", "C100/115", NULL};
const struct concrete_class concrete_class_strengths[] = {
	{8, 10}, {12, 15}, {16, 20}, {20, 25}, {25, 30}, {30, 37}, {35, 45}, {40, 50}, {45, 55}, {50, 60},
	{55, 67}, {60, 75}, {70, 85}, {80, 95}, {90, 105}, {100, 115}};

#define DEG 0.017453292519943295
#define DAY 86400.0
#define IN(type, member) offsetof(struct type, member)

#define SECTION(p, m) {.path = p, .kind = FIELD_SECTION, .meaning = m}
#define ALIAS(p, target, m) {.path = p, .kind = FIELD_ALIAS, .alias = target, .meaning = m}
#define NUMBER(p, d, t, f, lo, hi, wo, be, e, m, w) \
	{.path = p, .kind = FIELD_NUMBER, .dimension = d, .offset = IN(t, f), .low = lo, .high = hi, \
	 .worst = wo, .best = be, .example = e, .meaning = m, .where_found = w}
#define NUMBER_OR(p, d, t, f, lo, hi, fall, e, m, w) \
	{.path = p, .kind = FIELD_NUMBER, .dimension = d, .offset = IN(t, f), .low = lo, .high = hi, \
	 .worst = fall, .best = fall, .fallback = fall, .has_fallback = true, .example = e, .meaning = m, \
	 .where_found = w}
#define WORD(p, t, f, ws, e, m, w) \
	{.path = p, .kind = FIELD_WORD, .offset = IN(t, f), .words = ws, .example = e, .meaning = m, .where_found = w}
#define WORD_OR(p, t, f, ws, fall, e, m, w) \
	{.path = p, .kind = FIELD_WORD, .offset = IN(t, f), .words = ws, .fallback = fall, .has_fallback = true, \
	 .example = e, .meaning = m, .where_found = w}
#define TEXT(p, t, f, e, m) \
	{ \
		.path = p, .kind = FIELD_TEXT, .offset = IN(t, f), .example = e, .meaning = m \
	}
#define NONE(p, t, f, m, w) \
	{.path = p, .kind = FIELD_NONE, .offset = IN(t, f), .example = "none", .meaning = m, .where_found = w}
#define ANY(p, t, f, ws, e, m) \
	{.path = p, .kind = FIELD_ANY, .offset = IN(t, f), .words = ws, .example = e, .meaning = m}
#define POINT2(p, t, f, e, m, w) \
	{.path = p, .kind = FIELD_POINT2, .dimension = DIM_LENGTH, .offset = IN(t, f), .low = -1e6, .high = 1e6, \
	 .example = e, .meaning = m, .where_found = w}
#define POINT3(p, d, t, f, e, m, w) \
	{.path = p, .kind = FIELD_POINT3, .dimension = d, .offset = IN(t, f), .low = -1e6, .high = 1e6, \
	 .example = e, .meaning = m, .where_found = w}
#define RING(p, t, f, e, m, w) \
	{.path = p, .kind = FIELD_RING, .dimension = DIM_LENGTH, .offset = IN(t, f), .limit = MAX_VERTICES, \
	 .low = -1e6, .high = 1e6, .example = e, .meaning = m, .where_found = w}
#define LIST(p, t, f, row, most, m, w) \
	{.path = p, .kind = FIELD_LIST, .offset = IN(t, f), .row_size = sizeof(struct row), .limit = most, \
	 .meaning = m, .where_found = w}

/* anchors.product.strength: paths, offsets and where the values are found */
#define ST "anchors.product.strength."
#define SA ST "aci318."
#define SN ST "en1992_4."
#define S_NUMBER(p, d, f, ...) NUMBER(p, d, cell, anchors.product.strength.f, __VA_ARGS__)
#define S_WORD(p, f, ...) WORD(p, cell, anchors.product.strength.f, __VA_ARGS__)
#define S_WORD_OR(p, f, ...) WORD_OR(p, cell, anchors.product.strength.f, __VA_ARGS__)
#define S_TEXT(p, f, ...) TEXT(p, cell, anchors.product.strength.f, __VA_ARGS__)
#define S_ANY(p, f, ...) ANY(p, cell, anchors.product.strength.f, __VA_ARGS__)
#define SHEET "the anchor's approval or data sheet"

const struct field fields[] = {
{.path = "standfast", .kind = FIELD_NUMBER, .dimension = DIM_COUNT, .offset = IN(cell, version), .low = 1, .high = 1,
 .worst = 1, .best = 1, .must = true, .example = "1", .meaning = "version of this file's format; always 1",
 .where_found = "write it as it is"},
TEXT("title", cell, title, "demo cell, east bay", "what this file is about; printed, never judged"),
SECTION("record", "who and where; printed, never judged"),
TEXT("record.site", cell, record.site, "hall 3", "where the cell stands"),
TEXT("record.prepared_by", cell, record.prepared_by, "initials", "who prepared this file"),
TEXT("record.revision", cell, record.revision, "A", "revision of this file"),
TEXT("record.date", cell, record.date, "2026-11-20", "date of this file, as YYYY-MM-DD"),
WORD_OR("show", cell, show, words_show, UNITS_METRIC, "metric", "units in which results are printed",
        "your choice"),

SECTION("slab", "the concrete floor: what is known and how it is known"),
WORD("slab.type", cell, slab.type, words_slab_type, "on_ground",
     "whether the slab lies on the ground or spans as a suspended floor",
     "the building drawings, or look whether there is a storey below; a suspended slab may be post-tensioned"),
ALIAS("slab.thickness", "slab.thickness.value", "thickness of the structural concrete"),
NUMBER("slab.thickness.value", DIM_LENGTH, cell, slab.thickness, 20, 3000, 80, 500, "160 mm",
       "thickness of the structural concrete alone, without screed, tile or topping",
       "the as-built record, a core's report, or measure at an edge, joint or opening; a new hole only after the scan"),
WORD("slab.thickness.evidence", cell, slab.thickness_evidence, words_evidence, "measured",
     "how the thickness is known; a drawing or an assumption is not evidence of what was poured",
     "take the as-built record or a core's report, or measure at an edge, joint or opening"),
NONE("slab.topping", cell, slab.topping, "screed, tile or other topping above the structural concrete, or none",
     "look into a core or at an edge; the finishes schedule of the drawings"),
NUMBER("slab.topping.thickness", DIM_LENGTH, cell, slab.topping, 0, 300, 80, 0, "20 mm",
       "thickness of screed, tile or topping; embedment counts structural concrete only",
       "look into a core, a drilled hole or an edge; the finishes schedule of the drawings"),
SECTION("slab.concrete", "strength, age and condition of the concrete"),
{.path = "slab.concrete.strength", .kind = FIELD_SECTION,
 .meaning = "strength of the concrete: one of class, specified, or cores",
 .where_found = "ask for the delivery note of the pour, or take three or more cores"},
WORD("slab.concrete.strength.class", cell, slab.concrete.strength_class, concrete_classes, "C30/37",
     "strength class by EN 206: cylinder over cube strength",
     "the delivery note of the pour, or take three or more cores"),
NUMBER("slab.concrete.strength.specified", DIM_STRESS, cell, slab.concrete.specified, 5, 150, 12, 50, "30 MPa",
       "specified compressive strength", "the delivery note of the pour, or take three or more cores"),
WORD("slab.concrete.strength.specimen", cell, slab.concrete.specimen, words_specimen, "cylinder",
     "specimen to which the specified strength refers; a cube gives a higher number for the same concrete",
     "stands beside the strength on the delivery note or specification"),
WORD("slab.concrete.strength.evidence", cell, slab.concrete.strength_evidence, words_strength_evidence,
     "delivery_note", "how the class or the specified strength is known",
     "ask for the delivery note of the pour, or take three or more cores"),
SECTION("slab.concrete.strength.cores", "strengths of single cores from this slab"),
{.path = "slab.concrete.strength.cores.values", .kind = FIELD_NUMBERS, .dimension = DIM_STRESS,
 .offset = IN(cell, slab.concrete.cores), .limit = MAX_CORES, .low = 5, .high = 200,
 .example = "[34.1, 31.8, 36.0]", .meaning = "strength of each core as tested, in the unit named by `unit`",
 .where_found = "the laboratory's report; three or more cores"},
NUMBER("slab.concrete.strength.cores.diameter", DIM_LENGTH, cell, slab.concrete.core_diameter, 25, 300, 50, 100,
       "94 mm", "diameter of the cores", "the laboratory's report"),
NUMBER("slab.concrete.strength.cores.length", DIM_LENGTH, cell, slab.concrete.core_length, 25, 600, 94, 188,
       "188 mm", "length of the cores as tested", "the laboratory's report"),
NUMBER("slab.concrete.age", DIM_TIME, cell, slab.concrete.age, 0, 200 * 365.25 * DAY, 1 * DAY, 365 * DAY, "90 days",
       "age of the concrete when the cell is installed", "date of the pour on the delivery note"),
WORD("slab.concrete.condition", cell, slab.concrete.condition, words_condition, "sound",
     "damaged: cracks, hollow sound, spalls, honeycomb or softened surface where the anchors come",
     "look, and tap each anchor place with a hammer: a dull sound is a hollow"),
ALIAS("slab.concrete.cracked", "slab.concrete.cracked.value", "whether the concrete may crack at the anchors"),
WORD_OR("slab.concrete.cracked.value", cell, slab.concrete.cracked, words_yes_no, YES, "yes",
        "yes unless an analysis shows that the concrete stays uncracked at the anchors over its life",
        "a calculation of the slab; a look at the surface shows nothing about it"),
TEXT("slab.concrete.cracked.reason", cell, slab.concrete.uncracked_reason, "analysis no. 4",
     "what shows that the concrete stays uncracked"),
NUMBER_OR("slab.concrete.lightweight", DIM_FACTOR, cell, slab.concrete.lightweight, 0.75, 1, 1, "1",
          "ACI 318 factor lambda: 1 for normal-weight concrete, 0.75 to less than 1 for lightweight",
          "the delivery note; leave it out for normal-weight concrete"),
NUMBER("slab.concrete.aggregate", DIM_LENGTH, cell, slab.concrete.aggregate, 2, 80, 32, 8, "16 mm",
       "largest grain of the aggregate; left out: 32 mm", "the delivery note of the pour, or look at a core"),
SECTION("slab.concrete.by_engineer", "a licensed engineer who takes responsibility for the departure (uncracked)"),
TEXT("slab.concrete.by_engineer.name", cell, slab.concrete.by_engineer.name, "name", "the engineer's name"),
TEXT("slab.concrete.by_engineer.reason", cell, slab.concrete.by_engineer.reason, "reason", "the engineer's reason"),
SECTION("slab.reinforcement", "bars in the slab as the code methods count them; what is left out counts as none"),
WORD_OR("slab.reinforcement.supplementary", cell, slab.reinforcement.supplementary, words_yes_no, NO, "no",
        "yes: bars tie the concrete that would break out into the slab (ACI 318-19 17.5.3)",
        "the reinforcement drawing and a scan; an engineer reads it"),
WORD_OR("slab.reinforcement.edge", cell, slab.reinforcement.edge, words_edge_bars, EDGE_BARS_NONE, "none",
        "bars along the edge between anchors and edge: 13 mm or more, without or with stirrups at most 100 mm apart",
        "the reinforcement drawing and a scan; an engineer reads it"),
WORD_OR("slab.reinforcement.against_splitting", cell, slab.reinforcement.against_splitting, words_yes_no, NO, "no",
        "yes: bars hold splitting cracks to 0.3 mm", "a calculation of the slab"),
NUMBER("slab.reinforcement.bar_diameter", DIM_LENGTH, cell, slab.reinforcement.bar_diameter, 3, 50, 20, 6, "10 mm",
       "diameter of the bars of the upper mesh", "the reinforcement drawing and a scan"),
NUMBER("slab.reinforcement.bar_spacing", DIM_LENGTH, cell, slab.reinforcement.bar_spacing, 20, 1000, 50, 300, "150 mm",
       "distance of the bars of the upper mesh; left out: dense, the safe side of EN 1992-4 7.2.1.4", "the reinforcement drawing and a scan"),
NUMBER("slab.clear", DIM_LENGTH, cell, slab.clear, 0, 1e6, 0, 1e6, "1.5 m",
       "measured: no edge, joint or old hole nearer to any anchor than this; stands for outline, joints and old_holes",
       "measure from each anchor place to the nearest edge, joint, saw cut and old hole, in all directions"),
RING("slab.outline", cell, slab.outline, "{unit: m, points: [[0, 0], [14, 0], [14, 9], [0, 9]]}",
     "edges of the slab, in slab axes", "measure the edges, or the floor drawing"),
NONE("slab.outline", cell, slab.outline, "no edge of the slab near the cell", "look and measure from the anchor places"),
LIST("slab.joints", cell, slab.joints, joint, MAX_JOINTS, "joints and saw cuts; each acts as an edge for anchors",
     "look for sawn lines and sealed gaps; measure from the anchor places"),
NONE("slab.joints", cell, slab.joints, "no joint or saw cut near the cell", "look and measure from the anchor places"),
POINT2("slab.joints[].from", joint, from, "[5 m, 0 m]", "one end of the joint, slab axes", "measure"),
POINT2("slab.joints[].to", joint, to, "[5 m, 9 m]", "other end of the joint, slab axes", "measure"),
WORD("slab.joints[].type", joint, type, words_joint, "saw_cut", "kind of joint", "look"),
LIST("slab.old_holes", cell, slab.old_holes, old_hole, MAX_OLD_HOLES, "abandoned holes near the anchors",
     "look, also below coatings; measure from the anchor places"),
NONE("slab.old_holes", cell, slab.old_holes, "no old hole near the anchors", "look and measure from the anchor places"),
POINT2("slab.old_holes[].at", old_hole, at, "[2 m, 3 m]", "centre of the hole, slab axes", "measure"),
NUMBER("slab.old_holes[].depth", DIM_LENGTH, old_hole, depth, 1, 2000, 200, 10, "80 mm", "depth of the old hole",
       "measure with a wire"),
WORD("slab.old_holes[].filled", old_hole, filled, words_yes_no, "yes", "whether it is filled with high-strength mortar",
     "look; ask who filled it and with what"),
WORD("slab.scan", cell, slab.scan, words_scan, "done",
     "whether the places were scanned for bars, tendons, conduit and heating",
     "a scan by a trained person before any drilling"),

SECTION("cell", "the robot cell: where it stands, what it weighs, how it touches the floor"),
POINT2("cell.at", cell, standing_at, "[2.4 m, 3.1 m]", "where the cell's origin stands on the slab, slab axes",
       "measure from the slab's corner that is [0 m, 0 m]"),
NUMBER("cell.turned", DIM_ANGLE, cell, turned, -360 * DEG, 360 * DEG, 0, 0, "30 deg",
       "how far the cell's axes are turned against the slab's, anticlockwise", "the layout drawing"),
LIST("cell.parts", cell, parts, part, MAX_PARTS, "everything that stands on the base, but the arm",
     "the cell's papers: mass and centre of each piece"),
NONE("cell.parts", cell, parts, "nothing but the arm", "the cell's papers"),
TEXT("cell.parts[].name", part, name, "base frame", "what it is"),
NUMBER("cell.parts[].mass", DIM_MASS, part, mass, 0, 1e6, 0, 1e4, "380 kg", "its mass", "type plate, papers, or weigh it"),
NUMBER("cell.parts[].least_mass", DIM_MASS, part, least_mass, 0, 1e6, 0, 1e4, "0 kg",
       "its mass when empty or taken away; used where weight helps", "type plate, papers, or weigh it"),
POINT3("cell.parts[].at", DIM_LENGTH, part, at, "[0 mm, 0 mm, 120 mm]", "its centre of mass, cell axes",
       "papers or a drawing; if not known, give the box that it fills"),
SECTION("cell.parts[].box", "a box that holds the part: its centre of mass is taken where it is worst"),
POINT3("cell.parts[].box.from", DIM_LENGTH, part, box_from, "[300 mm, -200 mm, 0 mm]", "one corner of the box", "measure"),
POINT3("cell.parts[].box.to", DIM_LENGTH, part, box_to, "[700 mm, 200 mm, 1600 mm]", "the opposite corner", "measure"),
LIST("cell.base", cell, base, base_piece, MAX_RINGS, "what touches the floor: outlines with holes, or pads",
     "the frame drawing: only faces that bear on the floor"),
TEXT("cell.base[].name", base_piece, name, "frame", "what it is"),
RING("cell.base[].outline", base_piece, outline, "{unit: mm, points: [[-500, -400], [500, -400], [500, 400], [-500, 400]]}",
     "outline of a bearing face, cell axes", "the frame drawing"),
{.path = "cell.base[].holes", .kind = FIELD_RINGS, .dimension = DIM_LENGTH, .offset = IN(base_piece, holes),
 .row_size = sizeof(struct ring), .limit = MAX_RINGS, .low = -1e6, .high = 1e6,
 .example = "[{unit: mm, points: [[-300, -200], [300, -200], [300, 200], [-300, 200]]}]",
 .meaning = "openings in the bearing face", .where_found = "the frame drawing"},
WORD_OR("cell.base[].touches", base_piece, touches, words_touches, TOUCHES_FLOOR, "shims",
        "shims: the whole outline bears on shims, so it may stand off the floor", "look, or the installation plan"),
POINT2("cell.base[].at", base_piece, at, "[-500 mm, -400 mm]", "centre of a pad, cell axes", "the frame drawing"),
POINT2("cell.base[].size", base_piece, size, "[100 mm, 100 mm]", "side lengths of the pad along x and y", "the frame drawing"),
LIST("cell.casters", cell, casters, caster, MAX_CASTERS,
     "wheels on which the cell stands before it is anchored; left out: it stands on its base", "look under the cell"),
NONE("cell.casters", cell, casters, "the cell has no wheels", "look under the cell"),
POINT2("cell.casters[].at", caster, at, "[400 mm, 300 mm]", "swivel axis of the caster, or contact of a fixed wheel, cell axes", "measure"),
NUMBER("cell.casters[].trail", DIM_LENGTH, caster, trail, 0, 500, 60, 0, "35 mm",
       "how far the wheel's contact stands off its swivel axis; 0 mm for a fixed wheel or a foot", "measure"),
NUMBER("cell.top", DIM_LENGTH, cell, top, 1, 2e4, 3000, 500, "1.8 m",
       "height of the highest part of the cell, where a push tips it most easily before it is anchored", "measure"),
ALIAS("cell.base_stiff", "cell.base_stiff.shown_by", "whether the base is stiff enough to stay plane"),
WORD("cell.base_stiff.shown_by", cell, base_stiff, words_stiff, "maker",
     "who has shown that the base stays plane under the loads; a frame of sections is not a rigid plate",
     "ask the frame's maker, or have it calculated"),
TEXT("cell.base_stiff.note", cell, base_stiff_note, "frame drawing", "the document that shows it"),
NONE("cell.stand_off", cell, stand_off.height, "gap between base and concrete; none: the base bears directly on it",
     "measure with feeler or ruler; the level survey gives the shim heights"),
NUMBER("cell.stand_off.height", DIM_LENGTH, cell, stand_off.height, 0, 500, 50, 0, "8 mm",
       "gap between the base and the concrete at the anchors: shims, levelling nuts, grout",
       "measure with feeler or ruler; the level survey gives the shim heights"),
WORD("cell.stand_off.filled", cell, stand_off.filled, words_yes_no, "yes", "whether the gap is filled with grout over the whole base",
     "look, or the installation plan"),
NUMBER("cell.stand_off.grout_strength", DIM_STRESS, cell, stand_off.grout_strength, 1, 200, 10, 60, "40 MPa",
       "compressive strength of the grout", "the grout's data sheet"),

SECTION("arm", "the robot arm: where it is mounted, what it weighs, how it pushes"),
POINT3("arm.mount", DIM_LENGTH, cell, arm.mount, "[0 mm, 0 mm, 850 mm]",
       "centre of the mounting face, cell axes, height from the floor surface", "the cell drawing"),
SECTION("arm.weight", "masses of arm and payload, and how far out they reach"),
NUMBER("arm.weight.arm", DIM_MASS, cell, arm.mass, 0, 1e5, 1, 1e4, "41 kg", "mass of the arm without payload",
       "the arm's data sheet or type plate"),
NUMBER("arm.weight.payload", DIM_MASS, cell, arm.payload, 0, 1e5, 0, 1e3, "12 kg", "mass of gripper and work piece together",
       "gripper's papers and the heaviest work piece"),
SECTION("arm.weight.reach", "horizontal distance of the centres of mass from the mounting axis, arm stretched out"),
NUMBER("arm.weight.reach.arm", DIM_LENGTH, cell, arm.reach, 0, 1e4, 2000, 0, "500 mm",
       "of the arm's own centre of mass", "the arm's papers; half the reach is a common guess, no source"),
NUMBER("arm.weight.reach.payload", DIM_LENGTH, cell, arm.payload_reach, 0, 1e4, 4000, 0, "1400 mm",
       "of the payload's centre of mass", "the arm's reach plus gripper"),
SECTION("arm.reactions", "forces of the arm at its mounting face, from its papers"),
WORD("arm.reactions.vertical_includes_weight", cell, arm.vertical_includes_weight, words_yes_no, "yes",
     "whether `vertical` includes the weight of arm and payload", "ask the arm's maker; a value below the weight cannot include it"),
WORD("arm.reactions.tilting_includes_weight", cell, arm.tilting_includes_weight, words_yes_no, "yes",
     "whether `tilting` includes the weight moment of the stretched arm", "ask the arm's maker"),
WORD_OR("arm.reactions.paired", cell, arm.paired, words_yes_no, NO, "no",
        "yes: horizontal force and tilting moment share a heading; no: each may point anywhere",
        "ask the arm's maker; no is the safe side"),
#define REACTION(key, index, label) \
SECTION("arm.reactions." key, label), \
NUMBER("arm.reactions." key ".vertical", DIM_FORCE, cell, arm.reaction[index].vertical, 0, 1e7, 1e5, 0, "1.1 kN", \
       "largest vertical force, downward, " label, "the arm's data sheet, forces at the base or mounting face"), \
NUMBER("arm.reactions." key ".horizontal", DIM_FORCE, cell, arm.reaction[index].horizontal, 0, 1e7, 1e5, 0, "0.6 kN", \
       "largest horizontal force, any direction, " label, "the arm's data sheet, forces at the base or mounting face"), \
NUMBER("arm.reactions." key ".tilting", DIM_MOMENT, cell, arm.reaction[index].tilting, 0, 1e10, 1e8, 0, "0.7 kN m", \
       "largest moment about a horizontal axis, " label, "the arm's data sheet, moments at the base or mounting face"), \
NUMBER("arm.reactions." key ".twisting", DIM_MOMENT, cell, arm.reaction[index].twisting, 0, 1e10, 1e8, 0, "0.4 kN m", \
       "largest moment about the vertical axis, " label, "the arm's data sheet, moments at the base or mounting face")
REACTION("normal", ARM_NORMAL, "in normal motion"),
REACTION("emergency_stop", ARM_EMERGENCY_STOP, "in an emergency stop"),

WORD_OR("arm.mounting", cell, arm.mounting, words_mounting, ON_FLOOR, "floor",
        "how the arm's mounting face looks: up (floor), sideways (wall), down (ceiling), or tilted; for chain and history",
        "the layout drawing"),
NUMBER("arm.mounting_tilt", DIM_ANGLE, cell, arm.mounting_tilt, 0, 180 * DEG, 0, 0, "30 deg",
       "with mounting: tilted: angle between the face's normal and the upward vertical", "the layout drawing"),
NUMBER("arm.mounting_toward", DIM_ANGLE, cell, arm.mounting_toward, -360 * DEG, 360 * DEG, 0, 0, "90 deg",
       "with mounting: wall or tilted: heading toward which the face's normal leans, cell axes", "the layout drawing"),
NUMBER("arm.turned", DIM_ANGLE, cell, arm.turned, -360 * DEG, 360 * DEG, 0, 0, "0 deg",
       "how far the arm's base frame is turned about the face's normal, before it is tipped, against the cell's axes; not needed where the first joint turns the arm half round or more about the vertical",
       "the layout drawing and the arm's drawing"),
SECTION("arm.chain", "the arm as joints and links, from its papers or a robot description file; the reactions then come from its own motion"),
WORD("arm.chain.convention", cell, arm.chain.convention, words_convention, "standard_dh",
     "how the joints' frames are stated: standard_dh: Rz(theta) Tz(d) Tx(a) Rx(alpha), the joint turns about z of the frame before; modified_dh (Craig): Rx(alpha) Tx(a) Rz(theta) Tz(d), about the link's own z; frames: position and roll, pitch, yaw of each joint, about the link's own z",
     "stands beside the table of link values; the two are often mixed up, so it must be known"),
LIST("arm.chain.joints", cell, arm.chain.joints, chain_joint, MAX_CHAIN_JOINTS, "joints from the mounting face outward, each with the link behind it",
     "the arm's papers, or a robot description file"),
TEXT("arm.chain.joints[].name", chain_joint, name, "shoulder", "what it is"),
WORD_OR("arm.chain.joints[].kind", chain_joint, kind, words_joint_kind, REVOLUTE, "revolute", "whether the joint turns or slides", "the arm's papers"),
NUMBER("arm.chain.joints[].a", DIM_LENGTH, chain_joint, a, -1e5, 1e5, 0, 0, "0 mm", "Denavit-Hartenberg a, along x", "the arm's table of link values"),
NUMBER("arm.chain.joints[].alpha", DIM_ANGLE, chain_joint, alpha, -360 * DEG, 360 * DEG, 0, 0, "90 deg", "Denavit-Hartenberg alpha, about x", "the arm's table of link values"),
NUMBER("arm.chain.joints[].d", DIM_LENGTH, chain_joint, d, -1e5, 1e5, 0, 0, "400 mm", "Denavit-Hartenberg d, along z; a prismatic joint's position is added", "the arm's table of link values"),
NUMBER("arm.chain.joints[].theta", DIM_ANGLE, chain_joint, theta, -360 * DEG, 360 * DEG, 0, 0, "0 deg", "Denavit-Hartenberg theta, about z; a revolute joint's position is added", "the arm's table of link values"),
POINT3("arm.chain.joints[].position", DIM_LENGTH, chain_joint, position, "[0 mm, 0 mm, 400 mm]", "convention frames: origin of the joint in the frame before", "a robot description file: origin of the joint"),
NUMBER("arm.chain.joints[].roll", DIM_ANGLE, chain_joint, roll, -360 * DEG, 360 * DEG, 0, 0, "0 deg", "convention frames: turn about the fixed x axis, first", "a robot description file"),
NUMBER("arm.chain.joints[].pitch", DIM_ANGLE, chain_joint, pitch, -360 * DEG, 360 * DEG, 0, 0, "90 deg", "convention frames: turn about the fixed y axis, second", "a robot description file"),
NUMBER("arm.chain.joints[].yaw", DIM_ANGLE, chain_joint, yaw, -360 * DEG, 360 * DEG, 0, 0, "0 deg", "convention frames: turn about the fixed z axis, third", "a robot description file"),
NUMBER("arm.chain.joints[].mass", DIM_MASS, chain_joint, mass, 0, 1e5, 0, 1e3, "12 kg", "mass of the link behind the joint", "the arm's papers, or a robot description file"),
POINT3("arm.chain.joints[].centre", DIM_LENGTH, chain_joint, centre, "[0 mm, 0 mm, 120 mm]", "its centre of mass, in the link's frame", "the arm's papers, or a robot description file"),
#define INERTIA(p, t, f, of) \
SECTION(p, "moments of inertia of " of " about its centre of mass, in the link's axes"), \
NUMBER(p ".xx", DIM_INERTIA, t, f.xx, 0, 1e6, 0, 0, "0.12 kg m2", "about x", "the arm's papers, or a robot description file"), \
NUMBER(p ".yy", DIM_INERTIA, t, f.yy, 0, 1e6, 0, 0, "0.12 kg m2", "about y", "the arm's papers, or a robot description file"), \
NUMBER(p ".zz", DIM_INERTIA, t, f.zz, 0, 1e6, 0, 0, "0.02 kg m2", "about z", "the arm's papers, or a robot description file"), \
NUMBER(p ".xy", DIM_INERTIA, t, f.xy, -1e6, 1e6, 0, 0, "0 kg m2", "entry xy of the tensor: minus the sum of m x y; left out: 0", "a robot description file; mind the sign"), \
NUMBER(p ".yz", DIM_INERTIA, t, f.yz, -1e6, 1e6, 0, 0, "0 kg m2", "entry yz, the same way", "a robot description file; mind the sign"), \
NUMBER(p ".xz", DIM_INERTIA, t, f.xz, -1e6, 1e6, 0, 0, "0 kg m2", "entry xz, the same way", "a robot description file; mind the sign")
INERTIA("arm.chain.joints[].inertia", chain_joint, inertia, "the link"),
NUMBER("arm.chain.fixed_mass", DIM_MASS, cell, arm.chain.fixed_mass, 0, 1e5, 0, 1e3, "14 kg",
       "the arm's foot, which never moves; left out: what arm.weight.arm has more than the links", "the arm's papers, or a robot description file: its base link"),
SECTION("arm.chain.payload", "gripper and work piece as a body in the last link's frame; its mass is arm.weight.payload"),
NUMBER("arm.chain.payload.mass", DIM_MASS, cell, arm.chain.payload_mass, 0, 1e5, 1e3, 0, "12 kg", "its mass; left out: arm.weight.payload", "weigh gripper and work piece"),
POINT3("arm.chain.payload.centre", DIM_LENGTH, cell, arm.chain.payload_centre, "[0 mm, 0 mm, 180 mm]", "its centre of mass, in the last link's frame", "the gripper's drawing"),
INERTIA("arm.chain.payload.inertia", cell, arm.chain.payload_inertia, "the payload"),
SECTION("arm.motion", "what the joints of the chain may do"),
LIST("arm.motion.joints", cell, arm.motion.joints, joint_motion, MAX_CHAIN_JOINTS, "a row for each joint of the chain, in the same order",
     "the arm's papers; the limits set in its controller"),
/* lo is the sign of the lower limits: -1 for a position, 0 for a size */
#define OF_JOINT(key, da, fa, ds, fs, lo, hi_a, hi_s, ea, es, m, w) \
NUMBER("arm.motion.joints[]." key, da, joint_motion, fa, (lo) * (hi_a), hi_a, 0, 0, ea, m ", of a revolute joint", w), \
NUMBER("arm.motion.joints[]." key, ds, joint_motion, fs, (lo) * (hi_s), hi_s, 0, 0, es, m ", of a prismatic joint", w)
OF_JOINT("from", DIM_ANGLE, from, DIM_LENGTH, slide_from, -1, 7200 * DEG, 1e5, "-170 deg", "0 mm", "lower end of the range", "the arm's papers, or the limits set in its controller"),
OF_JOINT("to", DIM_ANGLE, to, DIM_LENGTH, slide_to, -1, 7200 * DEG, 1e5, "170 deg", "800 mm", "upper end of the range", "the arm's papers, or the limits set in its controller"),
OF_JOINT("speed", DIM_TURN_SPEED, speed, DIM_SPEED, slide_speed, 0, 200, 2e4, "120 deg/s", "1.5 m/s", "largest speed, either way", "the arm's papers, or the limits set in its controller"),
OF_JOINT("acceleration", DIM_TURN_ACCELERATION, acceleration, DIM_ACCELERATION, slide_acceleration, 0, 5000, 2e5, "400 deg/s2", "5 m/s2", "largest acceleration in normal motion", "the controller's settings; else largest drive torque over inertia"),
OF_JOINT("stop", DIM_TURN_ACCELERATION, stop, DIM_ACCELERATION, slide_stop, 0, 5000, 2e5, "900 deg/s2", "10 m/s2", "peak deceleration in an emergency stop", "brake torque over inertia, or a measured stop"),
NUMBER("arm.motion.joints[].stop_time", DIM_TIME, joint_motion, stop_time, 1e-3, 60, 0.1, 2, "0.35 s",
       "or: time of an emergency stop from full speed; needs peak_factor", "the arm's papers, stopping time at full speed and load"),
NUMBER("arm.motion.peak_factor", DIM_FACTOR, cell, arm.motion.peak_factor, 1, 4, 2, 1, "2",
       "largest over mean deceleration where a stop is given by its time: 1 uniform, 2 triangular; brake onset or a hard end stop can be more",
       "ask the arm's maker for the peak, or measure a stop"),
NUMBER_OR("arm.motion.poses", DIM_COUNT, cell, arm.motion.poses, 2, 48, 8, "8", "poses of each joint in the sweep", "leave it out; more is slower and finer"),
NUMBER_OR("arm.motion.bound_poses", DIM_COUNT, cell, arm.motion.bound_poses, 8, 64, 16, "16", "poses of each joint for the guaranteed bound", "leave it out; more is slower and tighter"),
WORD_OR("arm.motion.judged_by", cell, arm.motion.judged_by, words_judged_by, BY_BOUND, "bound",
        "bound: the guaranteed bound over all poses must be carried too; sweep: the swept poses suffice, a departure that an engineer must stand for",
        "leave it out"),
LIST("arm.motion.cycle", cell, arm.motion.cycle, cycle_pose, MAX_CYCLE_POSES, "a working cycle: poses and when the arm is there, at rest; for the counting of load cycles",
     "the program of the arm"),
NUMBER("arm.motion.cycle[].at", DIM_TIME, cycle_pose, at, 0, 86400, 0, 0, "1.2 s", "time of this pose; the first is 0 s; the last closes the cycle", "the program of the arm"),
{.path = "arm.motion.cycle[].angles", .kind = FIELD_NUMBERS, .dimension = DIM_ANGLE, .offset = IN(cycle_pose, angles), .limit = MAX_CHAIN_JOINTS,
 .low = -7200 * DEG, .high = 7200 * DEG, .example = "[0 deg, -90 deg, 90 deg, 0 deg, 45 deg, 0 deg]", .meaning = "positions of the revolute joints, in order", .where_found = "the program of the arm"},
{.path = "arm.motion.cycle[].slides", .kind = FIELD_NUMBERS, .dimension = DIM_LENGTH, .offset = IN(cycle_pose, slides), .limit = MAX_CHAIN_JOINTS,
 .low = -1e5, .high = 1e5, .example = "[400 mm]", .meaning = "positions of the prismatic joints, in order", .where_found = "the program of the arm"},
NUMBER("arm.motion.cycles_a_year", DIM_COUNT, cell, arm.motion.cycles_a_year, 0, 1e9, 1e8, 1e3, "500000", "how often the cycle happens a year", "shifts and cycle time"),
SECTION("arm.swing", "an estimate of the reactions from masses, radii, speeds and stopping times alone, when nothing better is known"),
WORD("arm.swing.axes", cell, arm.swing.axes, words_axes, "both", "axes that move at the same time: vertical, horizontal or both", "both, unless the arm cannot"),
NUMBER("arm.swing.moving_mass", DIM_MASS, cell, arm.swing.moving_mass, 0, 1e5, 1e3, 0, "30 kg", "mass of the arm beyond its first two axes; left out: all of arm.weight.arm", "the arm's papers; left out it is on the safe side"),
NUMBER("arm.swing.radius", DIM_LENGTH, cell, arm.swing.radius, 0, 1e4, 2000, 0, "500 mm", "of its centre of mass from the axes, arm stretched; left out: the full reach", "the arm's papers; left out it is on the safe side"),
NUMBER("arm.swing.payload_radius", DIM_LENGTH, cell, arm.swing.payload_radius, 0, 1e4, 4000, 0, "1400 mm", "of the payload's centre from the axes, arm stretched; left out: the full reach", "the arm's reach plus gripper"),
NUMBER("arm.swing.reach", DIM_LENGTH, cell, arm.swing.reach, 1, 2e4, 4000, 300, "1400 mm", "farthest reach of the arm with its payload, from the axes", "the arm's papers plus gripper"),
NUMBER("arm.swing.axis_height", DIM_LENGTH, cell, arm.swing.axis_height, 0, 1e4, 1000, 0, "400 mm", "of the level axis (shoulder) above the mounting face", "the arm's drawing"),
NUMBER("arm.swing.peak_factor", DIM_FACTOR, cell, arm.swing.peak_factor, 1, 2, 2, 1, "2", "largest over mean deceleration: 1 uniform, 2 triangular", "ask the arm's maker for the peak, or measure a stop"),
#define SWING_AXIS(key, member, label) \
SECTION("arm.swing." key, "motion " label), \
NUMBER("arm.swing." key ".speed", DIM_TURN_SPEED, cell, arm.swing.member.speed, 0, 200, 10, 0, "120 deg/s", "largest speed " label, "the arm's papers"), \
NUMBER("arm.swing." key ".acceleration", DIM_TURN_ACCELERATION, cell, arm.swing.member.acceleration, 0, 5000, 100, 0, "400 deg/s2", "mean acceleration in normal motion " label, "the arm's papers"), \
NUMBER("arm.swing." key ".start_time", DIM_TIME, cell, arm.swing.member.start_time, 1e-3, 60, 0.1, 2, "0.4 s", "or: time from rest to full speed " label, "the arm's papers, or measure it"), \
NUMBER("arm.swing." key ".stop", DIM_TURN_ACCELERATION, cell, arm.swing.member.stop, 0, 5000, 100, 0, "900 deg/s2", "mean deceleration of an emergency stop " label, "the arm's papers"), \
NUMBER("arm.swing." key ".stop_time", DIM_TIME, cell, arm.swing.member.stop_time, 1e-3, 60, 0.1, 2, "0.35 s", "or: time of an emergency stop from full speed " label, "the arm's papers, or measure it")
SWING_AXIS("vertical_axis", vertical, "about the vertical axis"),
SWING_AXIS("horizontal_axis", horizontal, "about the level axis"),
LIST("arm.history", cell, arm.history, arm_history, MAX_HISTORIES, "measured or simulated reactions as CSV files: t, Fx, Fy, Fz, Mx, My, Mz of the arm on its mounting face",
     "a simulation of the arm, or a force sensor below it"),
TEXT("arm.history[].file", arm_history, file, "stop.csv", "the CSV file, beside this one; its header names each column with its unit, \"Fx [N]\""),
WORD("arm.history[].of", arm_history, of, words_with, "emergency_stop", "what the arm does in it: normal motion or an emergency stop", "how it was recorded; a working round is no stop"),
NUMBER("arm.history[].cycles_a_year", DIM_COUNT, arm_history, cycles_a_year, 0, 1e9, 1e8, 1e3, "500000", "how often it happens a year; the file is taken as one round that repeats", "shifts and cycle time"),
NUMBER("arm.service_life", DIM_TIME, cell, arm.service_life, 3.65 * DAY, 100 * 365 * DAY, 30 * 365 * DAY, 365 * DAY, "10 years", "how long the cell will work at this place; for the counting of load cycles", "your plan"),
NUMBER("arm.range_limit", DIM_FORCE, cell, arm.range_limit, 0, 1e7, 0, 0, "2 kN", "tension ranges of an anchor above it are counted apart and printed", "your choice"),

{.path = "setups", .kind = FIELD_SETUPS, .offset = IN(cell, setups), .row_size = sizeof(struct setup), .limit = MAX_SETUPS,
 .example = "[{name: high pedestal, arm.mount: [0 mm, 0 mm, 1350 mm]}]",
 .meaning = "ways in which the cell is set up; every one is checked instead of the file's own values, the worst governs; a row may override any field by its path",
 .where_found = "the cell's papers: pedestals, grippers, work pieces"},
NONE("setups", cell, setups, "the cell is used in one way only", "the cell's papers"),
LIST("loads", cell, loads, extra_load, MAX_LOADS, "further loads on the cell: a person leaning, a cart, a pull on a hose",
     "think of what may push the cell, and how hard"),
NONE("loads", cell, loads, "nothing else pushes the cell", "think of what may push the cell"),
TEXT("loads[].name", extra_load, name, "leaning person", "what it is"),
NUMBER("loads[].force", DIM_FORCE, extra_load, force, 0, 1e7, 1e4, 0, "250 N", "its size, horizontal", "estimate on the safe side, with its source"),
POINT3("loads[].force", DIM_FORCE, extra_load, force_vector, "[0 N, 250 N, -100 N]",
       "or its components x, y, z in cell axes, z up", "estimate on the safe side, with its source"),
NUMBER("loads[].direction", DIM_ANGLE, extra_load, direction, -360 * DEG, 360 * DEG, 0, 0, "90 deg",
       "heading in which it pushes, cell axes, anticlockwise from +x", "the layout drawing"),
ANY("loads[].direction", extra_load, any_direction, words_any, "any", "from any side"),
NUMBER("loads[].at_height", DIM_LENGTH, extra_load, at_height, 0, 1e5, 2000, 0, "1.5 m", "height above the floor where it acts", "measure"),
POINT2("loads[].at", extra_load, at, "[500 mm, 0 mm]",
       "where it acts in plan; left out: at the corner of the base that gives the largest twist", "measure"),
WORD_OR("loads[].with", extra_load, with, words_with, ARM_EMERGENCY_STOP, "normal",
        "what the arm does at the same time", "think: may a person lean on the cell while it runs?"),
WORD_OR("loads[].kind", extra_load, kind, words_load_kind, LOAD_OTHER, "push", "what pushes: with push, leaning or truck_bump the figures of the standards are printed beside yours",
        "think of what may push the cell"),
SECTION("earthquake", "seismic force on the cell as a component of the building"),
NONE("earthquake", cell, earthquake, "no earthquake has to be counted at this place", "the site's structural engineer"),
WORD("earthquake.code", cell, earthquake.code, words_quake, "asce7_22", "code by which the force is found", "the site's structural engineer"),
#define QUAKE(key, lo, hi, e, m, w) \
NUMBER("earthquake." #key, DIM_FACTOR, cell, earthquake.key, lo, hi, hi, lo, e, m, w)
QUAKE(sds, 0, 5, "0.5", "ASCE 7: short-period design acceleration over g, SDS", "the site's structural engineer"),
QUAKE(amplification, 1, 2.5, "1", "ASCE 7-16: ap of the component", "ASCE 7-16 Table 13.5-1 or 13.6-1"),
QUAKE(response, 1, 12, "2.5", "ASCE 7: Rp (7-16) or Rpo (7-22) of the component", "Table 13.5-1 or 13.6-1"),
QUAKE(resonance, 1, 4, "1", "ASCE 7-22: CAR of the component", "ASCE 7-22 Table 13.5-1 or 13.6-1"),
QUAKE(importance, 1, 1.5, "1", "ASCE 7: Ip; EN 1998-1: importance factor of the element", "the site's structural engineer"),
QUAKE(overstrength, 1, 3, "2", "ASCE 7: overstrength factor for anchors in concrete", "Table 13.5-1 or 13.6-1"),
NUMBER("earthquake.height_share", DIM_FACTOR, cell, earthquake.height_share, 0, 1, 1, 0, "0", "height of the floor over the building's, z/h: 0 at the ground", "the building's section"),
NUMBER("earthquake.building_period", DIM_TIME, cell, earthquake.building_period, 0.01, 20, 0.01, 0.01, "0.4 s", "ASCE 7-22: period of the building; left out: the larger form is taken", "the site's structural engineer"),
QUAKE(building_response, 1, 12, "3", "ASCE 7-22: R of the building, with its two companions; left out: the safe side", "the site's structural engineer"),
QUAKE(building_importance, 1, 1.5, "1", "ASCE 7-22: Ie of the building", "the site's structural engineer"),
QUAKE(building_overstrength, 1, 3, "2.5", "ASCE 7-22: overstrength of the building", "the site's structural engineer"),
QUAKE(ground_share, 0, 2, "0.2", "EN 1998-1: design ground acceleration over g", "the national annex, or the site's structural engineer"),
QUAKE(soil, 1, 2, "1.2", "EN 1998-1: soil factor S", "the national annex, or the site's structural engineer"),
NUMBER_OR("earthquake.period_ratio", DIM_FACTOR, cell, earthquake.period_ratio, 0, 10, 1, "1", "EN 1998-1: period of the cell over that of the building; left out: resonance, the worst", "leave it out"),
QUAKE(behaviour, 1, 2, "1", "EN 1998-1: behaviour factor qa", "EN 1998-1 Table 4.4"),

SECTION("anchors", "the anchors: pattern, holes in the base, the product in hand"),
{.path = "anchors.at", .kind = FIELD_PATTERN, .dimension = DIM_LENGTH, .offset = IN(cell, anchors.at_given),
 .limit = MAX_ANCHORS, .low = -1e6, .high = 1e6, .must = true,
 .example = "{unit: mm, points: [[-450, -350], [450, -350], [450, 350], [-450, 350]]}",
 .meaning = "places of the anchors in cell axes: points, or grid: {columns, rows, step, centre}, or circle: {count, radius, first, centre}",
 .where_found = "the frame drawing: anchor holes; or measure them on the base"},
WORD_OR("anchors.lug", cell, anchors.lug, words_yes_no, NO, "no", "yes: anchors may stand outside the bearing faces, in lugs",
        "the frame drawing"),
NUMBER("anchors.plate_hole", DIM_LENGTH, cell, anchors.plate_hole, 1, 300, 40, 13, "14 mm",
       "diameter of the clearance holes in the base", "the frame drawing, or measure with a caliper"),
ANY("anchors.plate_hole", cell, anchors.slotted, words_slotted, "slotted", "the holes in the base are slots"),
NUMBER("anchors.plate_thickness", DIM_LENGTH, cell, anchors.plate_thickness, 1, 500, 60, 5, "15 mm",
       "thickness of the base at the anchors", "the frame drawing, or measure with a caliper"),
SECTION("anchors.needs", "least allowed load of each anchor, from the machine's papers"),
NUMBER("anchors.needs.tension", DIM_FORCE, cell, anchors.needs.tension, 0, 1e7, 1e5, 0, "6 kN", "least allowed tension of one anchor",
       "the machine's installation papers"),
NUMBER("anchors.needs.shear", DIM_FORCE, cell, anchors.needs.shear, 0, 1e7, 1e5, 0, "3 kN", "least allowed shear of one anchor",
       "the machine's installation papers"),
WORD("anchors.needs.pattern_as_stated", cell, anchors.needs.pattern_as_stated, words_yes_no, "yes",
     "whether number and places of the anchors are those of the papers", "compare the papers with the base"),
WORD("anchors.needs.setups_covered", cell, anchors.needs.all_setups_covered, words_covered, "all",
     "whether the papers' values cover all ways in which the cell is used", "the machine's installation papers"),
WORD("anchors.needs.both_at_once", cell, anchors.needs.both_at_once, words_yes_no, "no",
     "whether the papers' tension and shear may act on one anchor at the same time; asked for where both together are too much",
     "the machine's installation papers, or its maker"),
SECTION("anchors.product", "the anchor in hand, from its data sheet"),
TEXT("anchors.product.label", cell, anchors.product.label, "substitute wedge anchor", "your own words for it"),
WORD("anchors.product.type", cell, anchors.product.type, words_anchor_type, "torque_controlled",
     "how it works: torque_controlled (wedge, sleeve), displacement_controlled (drop-in), adhesive (bonded, chemical), undercut, screw, or cast in",
     "the anchor's data sheet"),
NUMBER("anchors.product.shaft", DIM_LENGTH, cell, anchors.product.shaft, 3, 100, 6, 30, "12 mm", "diameter of the shaft", "the anchor's data sheet"),
NUMBER("anchors.product.tensile_area", DIM_AREA, cell, anchors.product.tensile_area, 5, 8000, 20, 500, "84.3 mm2",
       "tensile stress area of the thread; left out: 0.78 of the shaft's area", "the anchor's data sheet, or a thread table"),
NUMBER("anchors.product.length", DIM_LENGTH, cell, anchors.product.length, 10, 3000, 40, 300, "120 mm", "whole length", "the anchor's data sheet, or measure it"),
NUMBER("anchors.product.projection", DIM_LENGTH, cell, anchors.product.projection, 0, 1000, 60, 5, "18 mm",
       "thread above the base after setting: washer, nut and the rest", "the anchor's data sheet, or measure it"),
NUMBER("anchors.product.embedment", DIM_LENGTH, cell, anchors.product.embedment, 10, 2500, 30, 200, "70 mm",
       "effective embedment in structural concrete, as it will be installed", "the anchor's data sheet"),
NUMBER("anchors.product.nominal_embedment", DIM_LENGTH, cell, anchors.product.nominal_embedment, 10, 3000, 40, 220, "80 mm",
       "depth of the anchor's end in structural concrete; left out: taken as the effective embedment",
       "the anchor's data sheet, where it gives a nominal embedment beside the effective one"),
SECTION("anchors.product.hole", "the hole to be drilled"),
NUMBER("anchors.product.hole.diameter", DIM_LENGTH, cell, anchors.product.hole_diameter, 3, 200, 40, 6, "12 mm", "diameter of the drilled hole", "the anchor's data sheet"),
NUMBER("anchors.product.hole.depth", DIM_LENGTH, cell, anchors.product.hole_depth, 10, 3000, 30, 150, "85 mm",
       "depth of the drilled hole in structural concrete", "the anchor's data sheet; depth stop of the drill"),
NUMBER("anchors.product.least_slab", DIM_LENGTH, cell, anchors.product.least_slab, 20, 3000, 400, 80, "140 mm",
       "least slab thickness for this embedment", "the anchor's data sheet"),
NUMBER("anchors.product.setting_torque", DIM_MOMENT, cell, anchors.product.setting_torque, 0, 1e8, 0, 1e6, "54 N m", "setting torque; printed", "the anchor's data sheet"),
NUMBER("anchors.product.torque_coefficient", DIM_FACTOR, cell, anchors.product.torque_coefficient, 0.05, 0.6, 0.3, 0.1, "0.2",
       "K of torque = K x preload x diameter, shown for this product", "the anchor's data sheet or its maker; depends on lubrication"),
WORD("anchors.product.qualified_cracked", cell, anchors.product.qualified_cracked, words_yes_no, "yes",
     "whether it is qualified for cracked concrete", "the anchor's data sheet or approval"),
SECTION("anchors.product.rating", "what the data sheet says it carries"),
WORD("anchors.product.rating.basis", cell, anchors.product.rating.basis, words_basis, "ultimate",
     "ultimate: mean load at failure; allowed: already divided by a safety factor; characteristic: 5 % fractile, used as ultimate (safe side)",
     "the head of the data sheet's load table"),
NUMBER("anchors.product.rating.of_ultimate", DIM_SHARE, cell, anchors.product.rating.of_ultimate, 0.01, 1, 1, 0.2, "25 %",
       "with basis allowed: the share of ultimate that the table's values are", "the note below the data sheet's load table"),
NUMBER("anchors.product.rating.tension", DIM_FORCE, cell, anchors.product.rating.tension, 1, 1e7, 1e3, 1e6, "42 kN", "tension on that basis", "the anchor's data sheet"),
NUMBER("anchors.product.rating.shear", DIM_FORCE, cell, anchors.product.rating.shear, 1, 1e7, 1e3, 1e6, "38 kN", "shear on that basis", "the anchor's data sheet"),
NUMBER("anchors.product.rating.at_concrete", DIM_STRESS, cell, anchors.product.rating.at_concrete, 5, 150, 50, 15, "28 MPa",
       "concrete cylinder strength for which the values hold", "the head of the data sheet's load table"),
NUMBER("anchors.product.rating.at_embedment", DIM_LENGTH, cell, anchors.product.rating.at_embedment, 10, 2500, 200, 30, "70 mm",
       "embedment for which the values hold", "the data sheet's load table"),
WORD("anchors.product.rating.tested_in", cell, anchors.product.rating.tested_in, words_tested_in, "uncracked",
     "state of the concrete in which the values were found", "the data sheet's load table; if it does not say so, ask"),
WORD("anchors.product.rating.evidence", cell, anchors.product.rating.evidence, words_rating_evidence, "data_sheet", "where the values come from",
     "get the data sheet of exactly this anchor, diameter and embedment"),
TEXT("anchors.product.rating.document", cell, anchors.product.rating.document, "sheet number, date", "which document; printed"),
NUMBER_OR("anchors.product.rating.allowed_share", DIM_SHARE, cell, anchors.product.rating.allowed_share, 0.01, 1, 0.25, "25 %",
          "share of ultimate that may be used; above 25 % a departure", "25 %: leave it out"),
SECTION("anchors.product.rating.by_engineer", "a licensed engineer who takes responsibility for a larger share"),
TEXT("anchors.product.rating.by_engineer.name", cell, anchors.product.rating.by_engineer.name, "name", "the engineer's name"),
TEXT("anchors.product.rating.by_engineer.reason", cell, anchors.product.rating.by_engineer.reason, "reason", "the engineer's reason"),
WORD_OR("anchors.product.rating.interaction", cell, anchors.product.rating.interaction, words_interaction, STRAIGHT, "straight",
        "how tension and shear together are judged: straight line, or exponent 5/3 where the data sheet says so", "the anchor's data sheet"),
LIST("anchors.product.rating.spacing", cell, anchors.product.rating.spacing, spacing_row, MAX_ROWS,
     "share of the rating at a distance to the next anchor; rows rising, the last at 100 %", "the anchor's data sheet, spacing table"),
NUMBER("anchors.product.rating.spacing[].distance", DIM_LENGTH, spacing_row, distance, 1, 1e5, 1, 1e5, "80 mm", "distance centre to centre", "data sheet"),
NUMBER("anchors.product.rating.spacing[].share", DIM_SHARE, spacing_row, share, 0.01, 1, 0.01, 1, "60 %", "share of the rating, tension and shear", "data sheet"),
LIST("anchors.product.rating.edge", cell, anchors.product.rating.edge, edge_row, MAX_ROWS,
     "share of the rating at a distance to an edge; rows rising, the last at 100 %", "the anchor's data sheet, edge distance table"),
NUMBER("anchors.product.rating.edge[].distance", DIM_LENGTH, edge_row, distance, 1, 1e5, 1, 1e5, "75 mm", "distance to the edge", "data sheet"),
NUMBER("anchors.product.rating.edge[].tension", DIM_SHARE, edge_row, tension, 0.01, 1, 0.01, 1, "70 %", "share of the tension rating", "data sheet"),
NUMBER("anchors.product.rating.edge[].shear", DIM_SHARE, edge_row, shear, 0.01, 1, 0.01, 1, "45 %", "share of the shear rating", "data sheet"),
SECTION("anchors.product.rating.fatigue", "what the data sheet says about repeated tension"),
NUMBER("anchors.product.rating.fatigue.range", DIM_FORCE, cell, anchors.product.rating.fatigue_range, 1, 1e7, 1, 1e6, "4 kN", "range of tension (highest less lowest) that it carries", "the anchor's data sheet or approval, fatigue loading"),
NUMBER("anchors.product.rating.fatigue.cycles", DIM_COUNT, cell, anchors.product.rating.fatigue_cycles, 1, 1e10, 1, 1e10, "2000000", "number of cycles for which it holds", "the anchor's data sheet or approval, fatigue loading"),

SECTION("anchors.product.strength", "code design values of the anchor, for the methods aci318 and en1992_4"),
S_WORD(ST "evidence", evidence, words_rating_evidence, "data_sheet", "where the values come from",
     "get the approval or data sheet of exactly this anchor, diameter and embedment"),
S_TEXT(ST "document", document, "approval number, date", "which document; printed"),
S_NUMBER(ST "yield", DIM_STRESS, yield, 100, 2000, 240, 900, "640 MPa", "yield strength of the steel: fya of ACI 318, fyk of EN 1992-4", SHEET),
S_NUMBER(ST "ultimate", DIM_STRESS, ultimate, 150, 2500, 360, 1100, "800 MPa", "tensile strength of the steel: futa of ACI 318, fuk of EN 1992-4", SHEET),
S_WORD(ST "ductile", ductile, words_yes_no, "yes", "ductile steel by ACI 318: 14 % elongation and 30 % reduction of area at least", SHEET),
S_NUMBER(ST "elongation", DIM_SHARE, elongation, 0.001, 1, 0.05, 0.3, "12 %", "elongation after fracture A5 of the steel", SHEET),
S_NUMBER(ST "shear_area", DIM_AREA, shear_area, 5, 8000, 20, 500, "84.3 mm2", "stressed area in shear; left out: the tensile area", SHEET),
S_WORD(ST "sleeve_in_shear_plane", sleeve_in_shear_plane, words_yes_no, "no", "whether a sleeve reaches through the shear plane", SHEET),
S_NUMBER(ST "head_diameter", DIM_LENGTH, head_diameter, 4, 300, 10, 100, "32 mm", "headed: diameter of the head", SHEET),
S_NUMBER(ST "head_thickness", DIM_LENGTH, head_thickness, 1, 200, 3, 50, "10 mm", "headed: thickness of the head", SHEET),
S_NUMBER(ST "head_area", DIM_AREA, head_area, 10, 50000, 50, 5000, "590 mm2", "headed: bearing area of the head without the shaft (Abrg, Ah); left out: from head and shaft", SHEET),
S_NUMBER(ST "hook_length", DIM_LENGTH, hook_length, 5, 500, 20, 200, "50 mm", "hooked: eh, from the inside of the shaft to the tip", SHEET),
S_NUMBER(ST "least_spacing", DIM_LENGTH, least_spacing, 1, 3000, 300, 20, "70 mm", "least distance between anchors (smin)", SHEET),
S_NUMBER(ST "least_edge", DIM_LENGTH, least_edge, 1, 3000, 300, 20, "60 mm", "least distance to an edge (ca,min, cmin)", SHEET),
S_NUMBER(ST "at_concrete", DIM_STRESS, at_concrete, 5, 100, 50, 15, "20 MPa", "concrete cylinder strength for which pullout and bond are stated", SHEET),
S_WORD_OR(ST "clamped", clamped, words_yes_no, NO, "no", "with a gap: yes where a nut and washer clamp each anchor against the concrete", "look; the frame drawing"),
S_WORD_OR(ST "held_at_base", held_at_base, words_yes_no, NO, "no", "with a gap: yes where the base holds the anchors against turning (no clearance, base cannot turn)", "a calculation"),
SECTION(ST "aci318", "what the sheet states for ACI 318, in its terms"),
S_NUMBER(SA "category", DIM_COUNT, aci.category, 1, 3, 3, 1, "1", "post-installed: anchor category 1, 2 or 3 (sensitivity to installation)", SHEET),
S_NUMBER(SA "steel_tension", DIM_FORCE, aci.steel_tension, 1, 1e7, 1e3, 1e6, "60 kN", "Nsa by test: steel strength in tension; left out: area times futa", SHEET),
S_NUMBER(SA "steel_shear", DIM_FORCE, aci.steel_shear, 1, 1e7, 1e3, 1e6, "35 kN", "Vsa by test: steel strength in shear; left out: 0.6 area times futa", SHEET),
S_NUMBER(SA "kc_cracked", DIM_FACTOR, aci.kc_cracked, 4, 10, 7, 10, "7", "kc for cracked concrete (SI: N, mm); left out: 10 cast in, 7 post-installed", SHEET),
S_NUMBER(SA "kc_uncracked", DIM_FACTOR, aci.kc_uncracked, 4, 14, 7, 14, "10", "kc from tests in uncracked concrete (SI: N, mm); then psi_c,N is 1", SHEET),
SECTION(SA "pullout", "Np: 5 % fractile by test, in the concrete of at_concrete"),
S_NUMBER(SA "pullout.cracked", DIM_FORCE, aci.pullout.cracked, 1, 1e7, 1e3, 1e6, "16 kN", "Np,cr: pullout strength in cracked concrete", SHEET),
S_ANY(SA "pullout.cracked", aci.no_pullout.cracked, words_never, "does_not_govern", "the sheet says that pullout does not govern in cracked concrete"),
S_NUMBER(SA "pullout.uncracked", DIM_FORCE, aci.pullout.uncracked, 1, 1e7, 1e3, 1e6, "20 kN", "Np,uncr: pullout strength in uncracked concrete", SHEET),
S_ANY(SA "pullout.uncracked", aci.no_pullout.uncracked, words_never, "does_not_govern", "the sheet says that pullout does not govern in uncracked concrete"),
S_NUMBER(SA "pullout.seismic", DIM_FORCE, aci.pullout.seismic, 1, 1e7, 1e3, 1e6, "14 kN", "Np,eq: pullout strength in earthquakes", SHEET),
S_ANY(SA "pullout.seismic", aci.no_pullout.seismic, words_never, "does_not_govern", "the sheet says that pullout does not govern in earthquakes"),
SECTION(SA "bond", "adhesive: bond stress, in the concrete of at_concrete, this hole and temperature range"),
S_NUMBER(SA "bond.cracked", DIM_STRESS, aci.bond.cracked, 0.2, 40, 1, 15, "6 MPa", "tau_cr: bond stress in cracked concrete", SHEET),
S_NUMBER(SA "bond.uncracked", DIM_STRESS, aci.bond.uncracked, 0.2, 40, 3, 25, "12 MPa", "tau_uncr: bond stress in uncracked concrete", SHEET),
S_NUMBER(SA "bond.seismic", DIM_FACTOR, aci.bond.seismic, 0.1, 1, 0.4, 1, "0.8", "alpha_N,seis: factor on tau_cr in earthquakes", SHEET),
S_NUMBER(SA "splitting_edge", DIM_LENGTH, aci.splitting_edge, 5, 5000, 600, 30, "140 mm", "cac: critical edge distance against splitting; left out: ACI 318-19 Table 17.9.5", SHEET),
S_NUMBER(SA "pryout_factor", DIM_FACTOR, aci.pryout_factor, 0.5, 3, 1, 2, "1", "kcp: pryout against breakout; left out: 1 below 65 mm embedment, else 2", SHEET),
S_NUMBER(SA "shear_length", DIM_LENGTH, aci.shear_length, 3, 3000, 20, 200, "70 mm", "le, load-bearing length in shear; left out: the embedment, 2 shafts where torque-controlled", SHEET),
S_WORD(SA "seismic", aci.seismic, words_yes_no, "yes", "qualified for earthquakes (seismic design categories C to F)", SHEET),
S_NUMBER(SA "steel_shear_seismic", DIM_FORCE, aci.steel_shear_seismic, 1, 1e7, 1e3, 1e6, "25 kN", "Vsa,eq: steel strength in shear in earthquakes", SHEET),
S_WORD_OR(SA "interaction", aci.interaction, words_interaction, STRAIGHT, "straight",
        "tension and shear together: straight (17.8.3) or exponent 5/3 (R17.8)", "your choice"),
SECTION(ST "en1992_4", "what the sheet states for EN 1992-4, in its terms"),
S_NUMBER(SN "installation_factor", DIM_FACTOR, en.installation_factor, 1, 1.5, 1.4, 1, "1.2", "post-installed: gamma_inst, sensitivity to installation in tension", SHEET),
S_NUMBER(SN "steel_tension", DIM_FORCE, en.steel_tension, 1, 1e7, 1e3, 1e6, "60 kN", "NRk,s: steel strength in tension; left out: area times fuk", SHEET),
S_NUMBER(SN "steel_shear", DIM_FORCE, en.steel_shear, 1, 1e7, 1e3, 1e6, "30 kN", "V0Rk,s: steel strength in shear; left out: k6 area times fuk", SHEET),
S_NUMBER(SN "bending", DIM_MOMENT, en.bending, 1, 1e9, 1e3, 1e7, "100 N m", "M0Rk,s: bending strength of the shaft; left out: 1.2 Wel fuk", SHEET),
S_NUMBER(SN "k_cracked", DIM_FACTOR, en.k_cracked, 4, 13, 7.7, 8.9, "7.7", "k1 for cracked concrete; left out: 8.9 headed, 7.7 post-installed", SHEET),
S_NUMBER(SN "k_uncracked", DIM_FACTOR, en.k_uncracked, 4, 13, 11, 12.7, "11.0", "k1 for uncracked concrete; left out: 12.7 headed, 11.0 post-installed", SHEET),
SECTION(SN "pullout", "NRk,p, in the concrete of at_concrete"),
S_NUMBER(SN "pullout.cracked", DIM_FORCE, en.pullout.cracked, 1, 1e7, 1e3, 1e6, "16 kN", "NRk,p in cracked concrete", SHEET),
S_ANY(SN "pullout.cracked", en.no_pullout.cracked, words_never, "does_not_govern", "the sheet says that pull-out does not govern in cracked concrete"),
S_NUMBER(SN "pullout.uncracked", DIM_FORCE, en.pullout.uncracked, 1, 1e7, 1e3, 1e6, "20 kN", "NRk,p in uncracked concrete", SHEET),
S_ANY(SN "pullout.uncracked", en.no_pullout.uncracked, words_never, "does_not_govern", "the sheet says that pull-out does not govern in uncracked concrete"),
S_NUMBER(SN "pullout.seismic", DIM_FORCE, en.pullout.seismic, 1, 1e7, 1e3, 1e6, "12 kN", "NRk,p of the seismic category", SHEET),
S_ANY(SN "pullout.seismic", en.no_pullout.seismic, words_never, "does_not_govern", "the sheet says that pull-out does not govern in earthquakes"),
SECTION(SN "bond", "bonded: characteristic bond stress, in the concrete of at_concrete, this hole and temperature range"),
S_NUMBER(SN "bond.cracked", DIM_STRESS, en.bond.cracked, 0.2, 40, 1, 15, "6 MPa", "tau_Rk,cr: bond stress in cracked concrete", SHEET),
S_NUMBER(SN "bond.uncracked", DIM_STRESS, en.bond.uncracked, 0.2, 40, 3, 25, "12 MPa", "tau_Rk,ucr: bond stress in uncracked concrete C20/25", SHEET),
S_NUMBER(SN "bond.seismic", DIM_STRESS, en.bond.seismic, 0.1, 40, 0.5, 12, "4 MPa", "tau_Rk of the seismic category", SHEET),
S_NUMBER(SN "sustained_factor", DIM_FACTOR, en.sustained_factor, 0.1, 1, 0.4, 1, "0.7", "psi0_sus: bond that is left under lasting tension; left out: 0.6", SHEET),
S_NUMBER(SN "splitting_edge", DIM_LENGTH, en.splitting_edge, 5, 5000, 600, 30, "140 mm", "ccr,sp: edge distance from which splitting does not count", SHEET),
S_NUMBER(SN "splitting", DIM_FORCE, en.splitting, 1, 1e7, 1e3, 1e6, "16 kN", "N0Rk,sp: splitting strength; left out: the lower of cone and pull-out", SHEET),
S_NUMBER(SN "pryout_factor", DIM_FACTOR, en.pryout_factor, 0.5, 3, 1, 2, "1", "k8: pry-out against cone; left out: 1 below 60 mm embedment, else 2", SHEET),
S_NUMBER(SN "group_factor", DIM_FACTOR, en.group_factor, 0.5, 1, 0.8, 1, "1", "k7: group of anchors in shear; left out: 1 with A5 above 8 %, else 0.8", SHEET),
S_NUMBER(SN "shear_length", DIM_LENGTH, en.shear_length, 3, 3000, 20, 200, "70 mm", "lf, load-bearing length in shear; left out: the embedment", SHEET),
S_WORD(SN "seismic", en.seismic, words_seismic, "C1", "seismic category for which it is qualified", SHEET),
S_NUMBER(SN "steel_tension_seismic", DIM_FORCE, en.steel_tension_seismic, 1, 1e7, 1e3, 1e6, "60 kN", "NRk,s of the seismic category", SHEET),
S_NUMBER(SN "steel_shear_seismic", DIM_FORCE, en.steel_shear_seismic, 1, 1e7, 1e3, 1e6, "20 kN", "VRk,s of the seismic category", SHEET),
S_NUMBER(SN "gap_factor", DIM_FACTOR, en.gap_factor, 0.5, 1, 0.5, 1, "0.5", "alpha_gap: 1 with filled holes in the base, else 0.5; left out: 0.5", SHEET),

SECTION("choices", "departures from the defaults; each is written on every page"),
NUMBER_OR("choices.stabilising_weight", DIM_FACTOR, cell, choices.stabilising_weight, 0.01, 1, 0.6, "0.6",
          "factor on the weights where they help; 0.6 unless the masses are weighed, then up to 0.9", "leave it out"),
WORD_OR("choices.masses_weighed", cell, choices.masses_weighed, words_yes_no, NO, "no", "whether every mass in this file was weighed",
        "weighing notes of every part"),
NUMBER("choices.anchor_bed_ratio", DIM_AREA, cell, choices.anchor_bed_ratio, 1e-3, 1e7, 1e7, 1e-3, "560 mm2",
       "anchor stiffness over bed stiffness per area; left out: four values around Es As / Ec are run", "leave it out"),
NUMBER_OR("choices.least_strength", DIM_STRESS, cell, choices.least_strength, 5, 150, 28, "28 MPa",
          "least concrete strength asked for; below 28 MPa a departure", "leave it out"),
NUMBER("choices.group_spacing", DIM_LENGTH, cell, choices.group_spacing, 1, 1e5, 1, 1e5, "300 mm",
       "spacing s of ACI 318-19 17.6.2.1.2 near three or more edges; left out: the largest between neighbours, the lower reading", "leave it out"),
SECTION("choices.by_engineer", "a licensed engineer who takes responsibility for the departures under choices"),
TEXT("choices.by_engineer.name", cell, choices.by_engineer.name, "name", "the engineer's name"),
TEXT("choices.by_engineer.reason", cell, choices.by_engineer.reason, "reason", "the engineer's reason"),
{.path = "methods", .kind = FIELD_WORDS, .offset = IN(cell, methods), .row_size = sizeof(struct word), .limit = 4,
 .words = words_methods, .example = "[rating]", .meaning = "methods by which the anchors are judged; left out: rating",
 .where_found = "your choice"},
};

const size_t field_count = sizeof fields / sizeof fields[0];
