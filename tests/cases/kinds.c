#include "kinds.h"

const struct case_kind case_kinds[] = {
	{"conversion", kind_conversion},
	{"bolt_group", kind_bolt_group},
	{"base", kind_base},
	{"base_rectangle", kind_base_rectangle},
	{"base_circle", kind_base_circle},
	{"concrete_strength", kind_concrete_strength},
};
const size_t case_kind_count = sizeof case_kinds / sizeof *case_kinds;
