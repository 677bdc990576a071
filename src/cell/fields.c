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
static const char *const words_methods[] = {"rating", NULL};

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
SECTION("slab.concrete.by_engineer", "a licensed engineer who takes responsibility for the departure (uncracked)"),
TEXT("slab.concrete.by_engineer.name", cell, slab.concrete.by_engineer.name, "name", "the engineer's name"),
TEXT("slab.concrete.by_engineer.reason", cell, slab.concrete.by_engineer.reason, "reason", "the engineer's reason"),
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

SECTION("choices", "departures from the defaults; each is written on every page"),
NUMBER_OR("choices.stabilising_weight", DIM_FACTOR, cell, choices.stabilising_weight, 0.01, 1, 0.6, "0.6",
          "factor on the weights where they help; 0.6 unless the masses are weighed, then up to 0.9", "leave it out"),
WORD_OR("choices.masses_weighed", cell, choices.masses_weighed, words_yes_no, NO, "no", "whether every mass in this file was weighed",
        "weighing notes of every part"),
NUMBER("choices.anchor_bed_ratio", DIM_AREA, cell, choices.anchor_bed_ratio, 1e-3, 1e7, 1e7, 1e-3, "560 mm2",
       "anchor stiffness over bed stiffness per area; left out: four values around Es As / Ec are run", "leave it out"),
NUMBER_OR("choices.least_strength", DIM_STRESS, cell, choices.least_strength, 5, 150, 28, "28 MPa",
          "least concrete strength asked for; below 28 MPa a departure", "leave it out"),
SECTION("choices.by_engineer", "a licensed engineer who takes responsibility for the departures under choices"),
TEXT("choices.by_engineer.name", cell, choices.by_engineer.name, "name", "the engineer's name"),
TEXT("choices.by_engineer.reason", cell, choices.by_engineer.reason, "reason", "the engineer's reason"),
{.path = "methods", .kind = FIELD_WORDS, .offset = IN(cell, methods), .row_size = sizeof(struct word), .limit = 4,
 .words = words_methods, .example = "[rating]", .meaning = "methods by which the anchors are judged; left out: rating",
 .where_found = "your choice"},
};

const size_t field_count = sizeof fields / sizeof fields[0];
