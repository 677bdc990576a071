/* Checks of the codes judged without loads of their own: what is on the anchors is given, so that a
 * test of evidence does not rest on load cases. Tests only. */
#ifndef CODE_JUDGED_H
#define CODE_JUDGED_H

#include "../../src/checks/check_table.h"

/* What is on every anchor alike: tension and shear along +x of the cell [N]. */
struct alike { double tension, shear; bool earthquake; };

/* The check `id` of the text with changes (pairs of path and value, ended by NULL), settled. Fails
 * the test where the text cannot be read or leaves the check out. Valid until the next call. */
const struct finding *code_judged(const char *yaml, const char *id, const struct alike *load, ...)
	__attribute__((sentinel));
/* Why the check is left out of the text with changes, or NULL. */
const char *code_left_out_of(const char *yaml, const char *id, ...) __attribute__((sentinel));
/* Whether a check stands in a list of names without their code, with blanks around each. */
bool check_named_in(const char *list, const char *id);
bool finding_misses(const struct finding *finding, const char *path);

#define expect_code(wanted, yaml, id, load, ...) \
	expect_code_at(__LINE__, wanted, id, \
	               code_judged(yaml, id, load, __VA_ARGS__, (const char *)0))
void expect_code_at(int line, enum verdict wanted, const char *id, const struct finding *finding);

#endif
