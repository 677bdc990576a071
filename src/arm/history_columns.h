/* The header line of a history: which column holds what, and in which unit.
 *
 * Format: the seven names t, Fx, Fy, Fz, Mx, My, Mz in any order, each once, each with its unit in
 * brackets or parentheses behind it: "t [s], Fx [N], Mx [N m]" or "t(s);Fx(kN);Mx(ft lbf)". Units
 * are those of src/quantity. Columns are separated by semicolons where the header holds one, else
 * by tabs where it holds one, else by commas. Names may stand in quotation marks.
 * Inside: s, N, N m (SI, as all of this folder). */
#ifndef HISTORY_COLUMNS_H
#define HISTORY_COLUMNS_H

#include "../cell/diagnostic.h"
#include "csv_line.h"

enum history_quantity {
	HISTORY_T, HISTORY_FX, HISTORY_FY, HISTORY_FZ, HISTORY_MX, HISTORY_MY, HISTORY_MZ,
	HISTORY_QUANTITIES
};

/* A number of this column times 10^shift (rounded once with the number) times factor is in s, N or
 * N m. Factor 1 for every unit that is a power of ten of these. */
struct history_column {
	enum history_quantity quantity;
	const struct unit *unit;       /* as written */
	int shift;
	double factor;
};

struct history_columns {
	char separator;
	struct history_column list[HISTORY_QUANTITIES];   /* in the order of the file */
};

/* "Fx" */
const char *history_name(enum history_quantity quantity);
/* "N" */
const char *history_unit(enum history_quantity quantity);

/* False with one or more errors when the line cannot be used. `mark` is the line's first
 * character. */
bool history_columns_read(struct slice line, struct mark mark, struct diagnostics *to,
                          struct history_columns *out);

#endif
