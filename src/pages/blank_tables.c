#include "blank_tables.h"

const struct blank_key blank_keys[] = {
	{"title", FOR_LOADS | FOR_SURVEY},
	{"record.site", FOR_LOADS | FOR_SURVEY}, {"record.prepared_by", FOR_LOADS | FOR_SURVEY}, {"record.revision", FOR_LOADS | FOR_SURVEY},
	{"record.date", FOR_LOADS | FOR_SURVEY},
	{"slab.type", FOR_ALL},
	{"slab.thickness.value", FOR_ALL}, {"slab.thickness.evidence", FOR_ALL},
	{"slab.topping", FOR_ALL},
	{"slab.concrete.strength.class", FOR_ALL}, {"slab.concrete.strength.specified", FOR_LOADS | FOR_SURVEY},
	{"slab.concrete.strength.specimen", FOR_LOADS | FOR_SURVEY}, {"slab.concrete.strength.evidence", FOR_ALL},
	{"slab.concrete.strength.cores", FOR_SURVEY},
	{"slab.concrete.age", FOR_ALL}, {"slab.concrete.condition", FOR_ALL},
	{"slab.clear", FOR_ALL}, {"slab.outline", FOR_SURVEY}, {"slab.joints", FOR_SURVEY}, {"slab.old_holes", FOR_SURVEY},
	{"slab.scan", FOR_ALL},
	{"cell.at", FOR_SURVEY}, {"cell.turned", FOR_SURVEY},
	{"cell.parts", FOR_LOADS}, {"cell.base", FOR_LOADS | FOR_SURVEY},
	{"cell.base_stiff.shown_by", FOR_LOADS}, {"cell.base_stiff.note", FOR_LOADS},
	{"cell.stand_off", FOR_ALL},
	{"arm.mount", FOR_LOADS}, {"arm.weight.arm", FOR_LOADS}, {"arm.weight.payload", FOR_LOADS},
	{"arm.weight.reach.arm", FOR_SHEET}, {"arm.weight.reach.payload", FOR_SHEET},
	{"arm.reactions.vertical_includes_weight", FOR_SHEET}, {"arm.reactions.tilting_includes_weight", FOR_SHEET},
	{"arm.reactions.normal.vertical", FOR_SHEET}, {"arm.reactions.normal.horizontal", FOR_SHEET},
	{"arm.reactions.normal.tilting", FOR_SHEET}, {"arm.reactions.normal.twisting", FOR_SHEET},
	{"arm.reactions.emergency_stop.vertical", FOR_SHEET}, {"arm.reactions.emergency_stop.horizontal", FOR_SHEET},
	{"arm.reactions.emergency_stop.tilting", FOR_SHEET}, {"arm.reactions.emergency_stop.twisting", FOR_SHEET},
	{"arm.chain.convention", FOR_MOTION}, {"arm.chain.joints", FOR_MOTION},
	{"arm.chain.fixed_mass", FOR_MOTION}, {"arm.chain.payload.centre", FOR_MOTION},
	{"arm.motion.joints", FOR_MOTION}, {"arm.motion.peak_factor", FOR_MOTION},
	{"setups", FOR_LOADS}, {"loads", FOR_LOADS}, {"earthquake", FOR_LOADS | FOR_SURVEY},
	{"anchors.at", FOR_ALL}, {"anchors.plate_hole", FOR_NEED | FOR_LOADS}, {"anchors.plate_thickness", FOR_NEED | FOR_LOADS},
	{"anchors.needs.tension", FOR_NEED}, {"anchors.needs.shear", FOR_NEED},
	{"anchors.needs.pattern_as_stated", FOR_NEED}, {"anchors.needs.setups_covered", FOR_NEED},
	{"anchors.product.label", FOR_LOADS}, {"anchors.product.type", FOR_NEED | FOR_LOADS},
	{"anchors.product.shaft", FOR_NEED | FOR_LOADS}, {"anchors.product.length", FOR_NEED | FOR_LOADS},
	{"anchors.product.projection", FOR_NEED | FOR_LOADS}, {"anchors.product.embedment", FOR_NEED | FOR_LOADS},
	{"anchors.product.hole.diameter", FOR_NEED | FOR_LOADS}, {"anchors.product.hole.depth", FOR_NEED | FOR_LOADS},
	{"anchors.product.least_slab", FOR_NEED | FOR_LOADS}, {"anchors.product.qualified_cracked", FOR_NEED | FOR_LOADS},
	{"anchors.product.rating.basis", FOR_NEED | FOR_LOADS}, {"anchors.product.rating.of_ultimate", FOR_NEED | FOR_LOADS},
	{"anchors.product.rating.tension", FOR_NEED | FOR_LOADS},
	{"anchors.product.rating.shear", FOR_NEED | FOR_LOADS}, {"anchors.product.rating.at_concrete", FOR_NEED | FOR_LOADS},
	{"anchors.product.rating.at_embedment", FOR_NEED | FOR_LOADS}, {"anchors.product.rating.tested_in", FOR_NEED | FOR_LOADS},
	{"anchors.product.rating.evidence", FOR_NEED | FOR_LOADS}, {"anchors.product.rating.document", FOR_LOADS},
	{"anchors.product.rating.spacing", FOR_LOADS}, {"anchors.product.rating.edge", FOR_LOADS},
};
const size_t blank_key_count = sizeof blank_keys / sizeof *blank_keys;

const char *const blank_inlined[] = {
	"slab.thickness", "slab.concrete.strength", "cell", "anchors.needs", "anchors.product.hole"};
const size_t blank_inlined_count = sizeof blank_inlined / sizeof *blank_inlined;

const struct blank_sample blank_samples[] = {
	{"slab.topping", "none | {thickness: 20 mm}", "slab.topping.thickness", NULL},
	{"slab.concrete.strength.cores", "{unit: MPa, values: [34.1, 31.8, 36.0], diameter: 94 mm, length: 188 mm}",
	 "slab.concrete.strength.cores.values", NULL},
	{"slab.outline", "none | {unit: m, points: [[0, 0], [14, 0], [14, 9], [0, 9]]}", NULL, NULL},
	{"slab.joints", "none | [{from: [5 m, 0 m], to: [5 m, 9 m], type: saw_cut}]", NULL, NULL},
	{"slab.old_holes", "none | [{at: [2 m, 3 m], depth: 80 mm, filled: yes}]", NULL, NULL},
	{"cell.parts", "none | [{name: base frame, mass: 380 kg, at: [0 mm, 0 mm, 120 mm]}]", NULL, NULL},
	{"cell.base", "[{name: pad 1, at: [-500 mm, -400 mm], size: [100 mm, 100 mm]}]", NULL, NULL},
	{"cell.stand_off", "none | {height: 8 mm, filled: yes, grout_strength: 40 MPa}", "cell.stand_off.height",
	 "none | {height: 8 mm, filled: yes}"},
	/* larger than those of normal motion, as on any data sheet */
	{"arm.reactions.emergency_stop.vertical", "1.6 kN", NULL, NULL},
	{"arm.reactions.emergency_stop.horizontal", "1.4 kN", NULL, NULL},
	{"arm.reactions.emergency_stop.tilting", "1.5 kN m", NULL, NULL},
	{"arm.reactions.emergency_stop.twisting", "0.9 kN m", NULL, NULL},
	{"arm.chain.joints", "[{name: turntable, a: 75 mm, alpha: 90 deg, d: 420 mm, mass: 16 kg, centre: [0 mm, -130 mm, 0 mm], "
	 "inertia: {xx: 0.2 kg m2, yy: 0.2 kg m2, zz: 0.2 kg m2}}]", NULL, NULL},
	{"arm.motion.joints", "[{from: -170 deg, to: 170 deg, speed: 140 deg/s, acceleration: 350 deg/s2, stop: 700 deg/s2}]",
	 NULL, NULL},
	{"earthquake", "none | {code: en1998, ground_share: 0.1, soil: 1.2, importance: 1, behaviour: 1}", NULL, NULL},
	{"loads", "[{name: leaning person, force: 250 N, direction: any, at_height: 1.5 m, with: normal}]", NULL, NULL},
	{"anchors.product.rating.spacing", "[{distance: 80 mm, share: 60 %}, {distance: 180 mm, share: 100 %}]", NULL, NULL},
	{"anchors.product.rating.edge",
	 "[{distance: 75 mm, tension: 70 %, shear: 45 %}, {distance: 250 mm, tension: 100 %, shear: 100 %}]", NULL, NULL},
};
const size_t blank_sample_count = sizeof blank_samples / sizeof *blank_samples;
