/* Coefficients of components, a few rows of the code tables that a cell may fall under.
 *
 * Source: ASCE 7-16 Table 13.6-1, EN 1998-1 Table 4.4, all from memory: open the table before use.
 * The same rows stand in refdata/seismic.csv, and a test compares the two. ASCE 7-22 changed the
 * columns (CAR, Rpo, Om0p); no row of it is here, the user enters them.
 * Range: 1 <= amplification <= 2.5; response and overstrength 1 or more. */
#ifndef SEISMIC_COMPONENT_H
#define SEISMIC_COMPONENT_H

#include "seismic.h"
#include "source_mark.h"

struct seismic_component {
	const char *id;
	enum seismic_code code;
	const char *title;
	double amplification;        /* ap; 0: the code has none */
	double response;             /* Rp; EN 1998-1: qa */
	double overstrength;         /* Om0; 0: the code has none */
	const char *source;
	enum source_mark mark;
	const char *doubt;           /* "" where there is none beyond the mark */
};

const struct seismic_component *seismic_components(size_t *count);
/* NULL where no row has that id. */
const struct seismic_component *seismic_component(const char *id);

#endif
