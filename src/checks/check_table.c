#include "check_table.h"

#include "check_files.h"
#include "judging.h"

#include <string.h>

#define PRODUCT "anchors.product."

const struct check checks[] = {
	{.id = "loads.given", .title = "loads are complete",
	 .source = "load cases of this program; a missing emergency stop is never replaced",
	 .range = "the weights, the arm's reactions at its mounting face and the base must all be given",
	 .stage = OF_SETUP, .needs_loads = true, .left_out = without_load_model, .judge = loads_given_judge},
	{.id = "rating.tension", .title = "anchor tension against its derated rating",
	 .source = "data-sheet rating x 25 %, common practice", .range = "service loads; one product; a stiff base",
	 .stage = OF_STATE_ANCHOR, .needs_loads = true, .leans = true, .follows_tension = true, .left_out = without_load_model,
	 .ratio = rating_tension_ratio, .judge = rating_tension_judge},
	{.id = "rating.shear", .title = "anchor shear against its derated rating",
	 .source = "data-sheet rating x 25 %, common practice; EN 1992-4 6.2.2",
	 .range = "flat base, holes within the clearance table; no friction is counted",
	 .stage = OF_STATE_ANCHOR, .needs_loads = true, .leans = true, .follows_tension = true, .by_shear = true,
	 .left_out = without_load_model, .ratio = rating_shear_ratio, .judge = rating_shear_judge},
	{.id = "rating.interaction", .title = "anchor tension and shear together",
	 .source = "straight line, or exponent 5/3 (ACI 318-19 R17.8)", .range = "as rating.tension and rating.shear",
	 .stage = OF_STATE_ANCHOR, .needs_loads = true, .leans = true, .follows_tension = true, .combines = true,
	 .left_out = without_load_model, .ratio = rating_interaction_ratio, .judge = rating_interaction_judge},
	{.id = "rating.bound", .title = "anchors under the bound of the arm's motion over all poses",
	 .source = "trigonometric polynomial bound (Ehlich and Zeller 1964, from memory); as rating.interaction",
	 .range = "revolute and prismatic joints within their speeds and accelerations; every pose, whatever the ranges",
	 .stage = OF_STATE_ANCHOR, .needs_loads = true, .leans = true, .follows_tension = true, .combines = true,
	 .of_bound = true, .left_out = rating_bound_left_out, .ratio = rating_bound_ratio, .judge = rating_bound_judge},
	{.id = "needs", .title = "loads asked for by the machine's papers", .source = "the machine's installation papers",
	 .range = "the papers' own pattern and setups", .stage = OF_ANCHOR, .leans = true, .needs = {"anchors.at"},
	 .left_out = needs_left_out, .judge = needs_judge},
	{.id = "concrete.strength", .title = "concrete strength", .source = "28 MPa, common practice; EN 206; ACI 562-19 6.4.3",
	 .range = "normal-weight concrete of 28 days and more, or cores from this slab", .stage = OF_SETUP, .judge = concrete_strength_judge},
	{.id = "concrete.condition", .title = "concrete sound at the anchors", .source = "common practice",
	 .range = "as seen and tapped at the anchor places", .stage = OF_SETUP, .needs = {"slab.concrete.condition"},
	 .judge = concrete_condition_judge},
	{.id = "slab.thickness", .title = "slab thick enough for the anchor", .source = "the anchor's data sheet",
	 .range = "structural concrete without topping", .stage = OF_SETUP,
	 .needs = {"slab.thickness.value", PRODUCT "least_slab"}, .judge = slab_thickness_judge},
	{.id = "slab.carries", .title = "slab below the base", .source = "AISC Design Guide 1, 3.1 (bearing, second-hand)",
	 .range = "slab on ground, pressed down; bending and soil are not checked", .stage = OF_SETUP,
	 .needs_loads = true, .needs = {"slab.type"}, .judge = slab_carries_judge},
	{.id = "hole.depth", .title = "hole deep enough, concrete left below it", .source = "common practice; EN 1992-4 (from memory)",
	 .range = "drilled holes", .stage = OF_SETUP,
	 .needs = {PRODUCT "hole.depth", PRODUCT "hole.diameter", PRODUCT "embedment", "slab.thickness.value"},
	 .judge = hole_depth_judge},
	{.id = "anchor.length", .title = "anchor long enough", .source = "geometry", .range = "anchors set through the base",
	 .stage = OF_SETUP,
	 .needs = {PRODUCT "length", "anchors.plate_thickness", "cell.stand_off", "slab.topping",
	           PRODUCT "projection", PRODUCT "embedment"},
	 .judge = anchor_length_judge},
	{.id = "anchor.spacing", .title = "distance between anchors", .source = "the anchor's data sheet; ACI 318-19 17.5.1.3.1",
	 .range = "one product for all anchors", .stage = OF_ANCHOR, .needs = {"anchors.at"}, .judge = anchor_spacing_judge},
	{.id = "anchor.edge", .title = "distance to edges, joints and old holes", .source = "the anchor's data sheet; EN 1992-4 7.2.2.5",
	 .range = "joints and saw cuts act as edges", .stage = OF_ANCHOR, .needs = {"anchors.at"}, .judge = anchor_edge_judge},
	{.id = "anchor.gapping", .title = "clamp of the base outlasts the working loads",
	 .source = "torque and joint law, Shigley 8-7, 8-8; 0.4 of the preload left (all from memory)",
	 .range = "anchors set by torque; the share of the anchor in the joint is left out, the safe side",
	 .stage = OF_ANCHOR, .needs_loads = true, .left_out = anchor_gapping_left_out,
	 .judge = anchor_gapping_judge},
	{.id = "anchor.fatigue", .title = "repeated tension against the anchor's fatigue rating",
	 .source = "rainflow counting, ASTM E1049 (from memory); 2 million cycles, common practice",
	 .range = "tension alone; every cycle counts as one of the largest range",
	 .stage = OF_ANCHOR, .needs_loads = true, .left_out = anchor_fatigue_left_out,
	 .judge = anchor_fatigue_judge},
	{.id = "base.stability", .title = "cell cannot tip off its anchors", .source = "equilibrium; 0.9 on weight, 1.25 on the moving part",
	 .range = "anchors as strong as needed: their strength is judged apart", .stage = OF_SETUP, .needs_loads = true,
	 .left_out = without_load_model, .judge = base_stability_judge},
	{.id = "base.stiff", .title = "base stays plane", .source = "EN 1992-4 6.2.1", .range = "shown by calculation or by the maker",
	 .stage = OF_SETUP, .needs = {"cell.base_stiff.shown_by"}, .left_out = without_load_model, .judge = base_stiff_judge},
	{.id = "stand_off", .title = "gap between base and concrete", .source = "EN 1992-4 6.2.2.3",
	 .range = "flat, or thin strong grout; else bending of the anchor is not covered", .stage = OF_SETUP, .judge = stand_off_judge},
};

const size_t check_count = sizeof checks / sizeof checks[0];

const struct check *check_find(const char *id)
{
	for (size_t i = 0; i < check_count; i++)
		if (strcmp(checks[i].id, id) == 0)
			return &checks[i];
	return NULL;
}
