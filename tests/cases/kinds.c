#include "kinds.h"

const struct case_kind case_kinds[] = {
	{"conversion", kind_conversion},
	{"bolt_group", kind_bolt_group},
	{"base", kind_base},
	{"base_rectangle", kind_base_rectangle},
	{"base_circle", kind_base_circle},
	{"concrete_strength", kind_concrete_strength},
	{"en1992_4", kind_en1992_4},
	{"en1992_4_together", kind_en1992_4_together},
	{"aci318", kind_aci318},
	{"aci318_together", kind_aci318_together},
};
const size_t case_kind_count = sizeof case_kinds / sizeof *case_kinds;
