#include "made_result.h"

/* no page may break on a name: longer than a line, no space in it, letters of two columns */
#define LONG_NAME \
	"a_name_without_a_single_space_that_is_longer_than_any_line_of_any_page_of_this_program_could_ever_be_made_to_be"
#define WIDE_NAME \
	"\u9ad8\u3044\u53f0\u5ea7\u9ad8\u3044\u53f0\u5ea7\u9ad8\u3044\u53f0\u5ea7 \"quoted\" " \
	"\x1b[31m"

static void make_cell(struct made_result *made)
{
	struct given given = {{0, 1, 1, 1}, GIVEN};
	made->setups[0] = (struct setup){.name = {given, LONG_NAME}, .cell = &made->setup_cell};
	made->setups[1] = (struct setup){.name = {given, WIDE_NAME}, .cell = &made->setup_cell};
	made->cell = (struct cell){.title = {given, LONG_NAME " " WIDE_NAME}};
	made->cell.slab.thickness_evidence = (struct word){given, BY_DRAWING};
	made->setup_cell = made->cell;
	made->cell.setups = (struct list){given, made->setups, 2};
	made->load_case = (struct load_case){
		.setup = 1, .name = LONG_NAME, .combination = "weights x 0.6"};
}

static void make_checks(struct made_result *made)
{
	struct occurrence at = {
		.load_case = &made->load_case, .setup = 1, .has_heading = true, .heading = -0.5};
	made->checks[0] = (struct check_result){
		.check = check_find("rating.tension"), .subject = {0x5, 0}, .at = at,
		.finding = {.computed = true, .demand = 10510.5, .capacity = 10500, .ratio = 1.001,
	                    .dimension = DIM_FORCE, .verdict = FAILS, .reason = "anchor A1 in tension: too much",
	                    .remedy = "a better one"},
		.has_setup_ratio = {true, true}, .setup_ratio = {0.8, 1.001}};
	made->checks[1] = (struct check_result){
		.check = check_find("rating.shear"), .subject = {0x2, 3}, .at = at,
		.finding = {.computed = true, .demand = 2000, .capacity = 2000, .ratio = 1,
	                    .dimension = DIM_FORCE, .verdict = HOLDS, .reason = "", .remedy = ""}};
	made->checks[2] = (struct check_result){
		.check = check_find("slab.thickness"), .subject = {0, 0},
		.finding = {.verdict = UNPROVEN, .missing = {"slab.thickness.evidence"}, .missing_count = 1,
	                    .reason = "", .remedy = "drill and measure"}};
	made->checks[3] = (struct check_result){.check = check_find("needs"), .subject = {0, 0},
	                                        .finding = {.verdict = UNPROVEN, .reason = LONG_NAME, .remedy = ""}};
	made->steps[0] = (struct step){"N_ult",         "",           42000, DIM_FORCE, "input",
	                               "ultimate load", {0, 14, 3, 1}};
	made->steps[1] = (struct step){"N_allowed", "0.25 * N_ult", 10500, DIM_FORCE, "rating",
	                               "",          {0, 0, 0, 0}};
	made->checks[0].trace = (struct trace){.steps = made->steps, .count = 2};
}

static void make_anchors(struct result *result, const struct load_case *load_case)
{
	struct occurrence at = {
		.load_case = load_case, .setup = 0, .has_heading = true, .heading = 3};
	result->anchor_count = 4;
	for (int i = 0; i < 4; i++)
		result->anchor[i] = (struct anchor_result){.id = {'A', (char)('1' + i), 0},
		                                           .at = {100.0 * i, -25.4},
		                                           .computed = i < 3,
		                                           .tension = 1234.5 * i,
		                                           .shear = 10,
		                                           .tension_at = at,
		                                           .shear_at = at};
}

void made_result(struct made_result *made)
{
	*made = (struct made_result){0};
	make_cell(made);
	make_checks(made);
	made->left_out[0] = (struct left_out){"stand_off", "the reason \"why\""};
	made->to_measure[0] = (struct to_measure){"the thickness", "slab.thickness",
	                                          "drill a hole"};
	made->result = (struct result){
		.cell = &made->cell, .file = "dir/" LONG_NAME ".yaml", .sha256 = "0123abcd", .verdict = FAILS,
		.loads_computed = true, .governing = 0, .checks = made->checks, .check_count = 4,
		.left_out = made->left_out, .left_out_count = 1, .to_measure = made->to_measure,
		.to_measure_count = 1, .departures = {{"a departure"}, 1}, .assumptions = {{"an assumption"}, 1},
		.cautions = {{"first caution", "second caution"}, 2}, .bed_ratio = {164, 655}, .bed_ratio_count = 2};
	make_anchors(&made->result, &made->load_case);
}
