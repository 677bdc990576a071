#include "sample_cell.h"

#define SLAB \
	"standfast: 1\n" \
	"slab:\n" \
	"  type: on_ground\n" \
	"  thickness: {value: 200 mm, evidence: measured}\n" \
	"  topping: none\n" \
	"  concrete:\n" \
	"    strength: {specified: 40 MPa, specimen: cylinder, evidence: delivery_note}\n" \
	"    age: 100 days\n" \
	"    condition: sound\n" \
	"  outline: {unit: m, points: [[0, 0], [10, 0], [10, 8], [0, 8]]}\n" \
	"  joints: none\n" \
	"  old_holes: none\n" \
	"  scan: done\n"

#define ANCHORS \
	"anchors:\n" \
	"  at: {unit: mm, points: [[-400, -300], [400, -300], [400, 300], [-400, 300]]}\n" \
	"  plate_hole: 14 mm\n" \
	"  plate_thickness: 15 mm\n"

#define PRODUCT \
	"  product:\n" \
	"    type: torque_controlled\n" \
	"    shaft: 12 mm\n" \
	"    tensile_area: 84.3 mm2\n" \
	"    length: 120 mm\n" \
	"    projection: 18 mm\n" \
	"    embedment: 70 mm\n" \
	"    hole: {diameter: 12 mm, depth: 85 mm}\n" \
	"    least_slab: 140 mm\n" \
	"    qualified_cracked: yes\n" \
	"    rating:\n" \
	"      basis: ultimate\n" \
	"      tension: 40 kN\n" \
	"      shear: 32 kN\n" \
	"      at_concrete: 40 MPa\n" \
	"      at_embedment: 70 mm\n" \
	"      tested_in: cracked\n" \
	"      evidence: data_sheet\n" \
	"      spacing: [{distance: 100 mm, share: 50 %}, {distance: 200 mm, share: 80 %},\n" \
	"        {distance: 300 mm, share: 100 %}]\n" \
	"      edge: [{distance: 100 mm, tension: 60 %, shear: 40 %},\n" \
	"        {distance: 300 mm, tension: 100 %, shear: 100 %}]\n"

const char sample_needs[] = SLAB
	"cell: {at: [5 m, 4 m], turned: 0 deg, stand_off: none}\n" ANCHORS
	"  needs: {tension: 5 kN, shear: 2 kN, pattern_as_stated: yes, setups_covered: all,\n"
	"    both_at_once: no}\n" PRODUCT;

const char sample_lift[] = SLAB
	"cell:\n"
	"  at: [5 m, 4 m]\n"
	"  turned: 0 deg\n"
	"  parts: none\n"
	"  base: [{name: plate, outline: {unit: mm, points: [[-500, -400], [500, -400], [500, 400], [-500, 400]]}}]\n"
	"  base_stiff: maker\n"
	"  stand_off: none\n"
	"arm:\n"
	"  mount: [0 mm, 0 mm, 0 mm]\n"
	"  weight: {arm: 0 kg, payload: 0 kg, reach: {arm: 0 mm, payload: 0 mm}}\n"
	"  reactions:\n"
	"    vertical_includes_weight: no\n"
	"    tilting_includes_weight: no\n"
	"    normal: {vertical: 1 kN, horizontal: 1 kN, tilting: 0 N m, twisting: 0 N m}\n"
	"    emergency_stop: {vertical: 4 kN, horizontal: 8 kN, tilting: 0 N m, twisting: 0 N m}\n"
	ANCHORS PRODUCT;
