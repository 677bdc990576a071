/* The calculations that case files can ask for. A new kind is a function here, a row in kinds.c,
 * and a kinds_*.c that maps inputs to outputs and nothing else. */
#ifndef KINDS_H
#define KINDS_H

#include "case_file.h"

typedef void case_kind_function(struct test_case *test, struct outputs *out);

struct case_kind { const char *name; case_kind_function *run; };
extern const struct case_kind case_kinds[];
extern const size_t case_kind_count;

case_kind_function kind_conversion;         /* kinds_quantity.c */
case_kind_function kind_bolt_group;         /* kinds_base.c */
case_kind_function kind_base;
case_kind_function kind_base_rectangle;
case_kind_function kind_base_circle;
case_kind_function kind_concrete_strength;  /* kinds_floor.c */
case_kind_function kind_en1992_4;           /* kinds_en1992_4.c */
case_kind_function kind_en1992_4_together;
case_kind_function kind_aci318;             /* kinds_aci318.c */
case_kind_function kind_aci318_together;

#endif
